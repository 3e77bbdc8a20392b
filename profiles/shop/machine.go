package shop

import (
	"strings"

	"taperwright/profiles/finding"
	"taperwright/profiles/geom"
	"taperwright/profiles/source"
)

// machineKeys are the keys of [machine].
var machineKeys = []row[Machine]{
	{Key: source.Key{Name: "name", Type: "text", Help: "what the shop calls this lathe"}, read: func(_ reader, t *source.Table, m *Machine) {
		if v, ok := t.Text("name"); ok {
			m.Name = v.Value
		}
	}},
	{Key: source.Key{Name: "words", Type: "starting column", Help: "the starting column of words that is nearest to this lathe, named by its single turning cycle"}, read: readColumn},
	{Key: source.Key{Name: "word", Type: "{ purpose = word }", Help: "single words that differ from the column: a word, a list of words (the first is posted), or \"\" for a purpose that has none here"}, read: readWords},
	{Key: source.Key{Name: "harmless", Type: "list of words", Help: "words that move nothing and change no mode here"}, read: readHarmless},
	pick("x", "X and U words are diameters or radii", func(m *Machine) *Setting[bool] { return &m.XIsDiameter }, option[bool]{"diameter", true}, option[bool]{"radius", false}),
	pick("unit", "unit that is posted, and of a program that names none; else the file's own", func(m *Machine) *Setting[Unit] { return &m.Unit }, option[Unit]{"mm", MM}, option[Unit]{"inch", Inch}),
	pick("missing_point", "what X50 without a point is: 50, or 50 least increments (0.050 mm, 0.0050 in)", func(m *Machine) *Setting[MissingPoint] { return &m.MissingPoint }, option[MissingPoint]{"whole", Whole}, option[MissingPoint]{"increment", Increment}),
	pick("feed", "what F is before a program says", func(m *Machine) *Setting[Purpose] { return &m.Feed }, option[Purpose]{"per-rev", FeedPerRev}, option[Purpose]{"per-minute", FeedPerMinute}),
	pick("speed", "what S is before a program says", func(m *Machine) *Setting[Purpose] { return &m.Speed }, option[Purpose]{"rpm", SpindleRPM}, option[Purpose]{"surface", SurfaceSpeed}),
	choice("dwell_p", "P of a dwell in milliseconds or seconds", func(m *Machine) *Setting[string] { return &m.DwellP }, "ms", "s"),
	choice("slash", "blocks that begin with / are run or skipped", func(m *Machine) *Setting[string] { return &m.Slash }, "run", "skip"),
	choice("increment_x", "incremental X as a diameter or a radius", func(m *Machine) *Setting[string] { return &m.IncrementX }, "diameter", "radius"),
	flag("increments_u_w", "U and W are increments of X and Z", func(m *Machine) *Setting[bool] { return &m.IncrementsUW }),
	flag("words_after_motion", "the words that stop spindle and coolant act after the motion of their block, not before it", func(m *Machine) *Setting[bool] { return &m.StopsAfter }),
	whole("offset_digits", "how many last digits of T are the offset: 2 in T0101; 0 when T is the station alone", func(m *Machine) *Setting[int] { return &m.OffsetDigits }, 0, 3),
	choice("bare_home", "the reference return without axis words moves both axes, or nothing", func(m *Machine) *Setting[string] { return &m.BareHome }, "both-axes", "nothing"),
	choice("long_arc", "an arc over half a turn may be written with a negative R, or not at all", func(m *Machine) *Setting[string] { return &m.LongArc }, "negative-r", "none"),
	choice("tool_side", "tool behind the axis or in front of it: changes the drawing only", func(m *Machine) *Setting[string] { return &m.ToolSide }, "rear", "front"),
	choice("arc_sense", "the sense of both arcs and of both compensation words: usual (tool behind the axis, ISO 841) or mirrored", func(m *Machine) *Setting[string] { return &m.ArcSense }, "usual", "mirrored"),
	{Key: source.Key{Name: "spindle", Type: "word", Help: "the word that turns the spindle the cutting way for an outside tool"}, read: func(_ reader, t *source.Table, m *Machine) {
		if w, ok := readWord(t, "spindle"); ok {
			m.Spindle = given(t, "spindle", w)
		}
	}},
	number("top_speed", "greatest spindle speed", turns, func(m *Machine, v Setting[float64]) { m.TopSpeed = v }),
	spot("change", "tool change point, in the frame of the program", func(m *Machine) *Setting[Place] { return &m.Change }),
	spot("home", "where the reference return ends, in the frame of the program", func(m *Machine) *Setting[Place] { return &m.HomeAt }),
	{Key: source.Key{Name: "travel", Type: "{ diameter = [least, most], z = [least, most] }", Help: "how far the slides go, in the frame of the program"}, read: readTravel},
	{Key: source.Key{Name: "frames", Type: "{ WORD = { diameter, z } }", Help: "further work offsets: where their zero lies in the frame of the first"}, read: readFrames},
	whole("decimals", "decimals of X and Z words; 3 in mm, 4 in inch", func(m *Machine) *Setting[int] { return &m.Decimals }, 1, 6),
	choice("compensation", "programs are written as the tip's path, or for the control to compensate", func(m *Machine) *Setting[string] { return &m.Compensation }, "tip-path", "control"),
	{Key: source.Key{Name: "control", Type: "table", Help: "how the control compensates the nose radius"}, read: func(r reader, t *source.Table, m *Machine) {
		if in, ok := t.Table("control"); ok {
			m.Control.Span = in.Span()
			readRows(r, in, controlKeys, &m.Control)
		}
	}},
	choice("arcs", "arcs are written with I and K, or with R", func(m *Machine) *Setting[string] { return &m.Arcs }, "ik", "r"),
	number("arc_tolerance", "how far an arc's ends may differ in radius; 0.002 mm, 0.0002 in", fine, func(m *Machine, v Setting[float64]) { m.ArcTolerance = v }),
	choice("rapid_path", "rapids go straight, or each slide at its own rate: then a hit on the dog-leg is an error", func(m *Machine) *Setting[string] { return &m.RapidPath }, "straight", "dog-leg"),
	{Key: source.Key{Name: "rapid_rate", Type: "{ x, z }", Help: "rapid rates of the slides themselves (x on radius) per minute; else taken as equally fast"}, read: readRates},
	whole("block_numbers", "step of N words; 0 for none", func(m *Machine) *Setting[int] { return &m.BlockNumbers }, 0, 1000),
	choice("comments", "how comments are posted: ( ), behind ;, or not at all", func(m *Machine) *Setting[string] { return &m.Comments }, "brackets", "semicolon", "none"),
	{Key: source.Key{Name: "safe_start", Type: "text", Help: "words of the safe-start line beyond the usual, blank between"}, read: readSafeStart},
	{Key: source.Key{Name: "chuck", Type: "table", Help: "the chuck's body; else not judged"}, read: func(r reader, t *source.Table, m *Machine) {
		in, ok := t.Table("chuck")
		if !ok {
			return
		}
		c := m.Chuck
		if c == nil {
			c = &Chuck{}
		}
		copy := *c
		copy.Span = in.Span()
		readRows(r, in, chuckKeys, &copy)
		if copy.Radius > 0 || needs(in, "diameter") {
			if copy.ThroughHole >= copy.Radius && copy.Radius > 0 {
				in.Error("through_hole", codeConflict, "both are diameters", "the through hole of the chuck is not smaller than the chuck")
			}
			m.Chuck = &copy
		}
	}},
	{Key: source.Key{Name: "centre", Type: "table", Help: "the tailstock centre; else not judged"}, read: func(r reader, t *source.Table, m *Machine) {
		in, ok := t.Table("centre")
		if !ok {
			return
		}
		c := Centre{PointAngle: geom.Radians(60)} // the usual centre: ISO 6411, common practice
		if m.Centre != nil {
			c = *m.Centre
		}
		c.Span = in.Span()
		readRows(r, in, centreKeys, &c)
		if c.BodyRadius > 0 || needs(in, "body_diameter") {
			m.Centre = &c
		}
	}},
}

var controlKeys = []row[Control]{
	choice("start", "the first move after switching on ends square to the next one, or on its extension", func(c *Control) *Setting[string] { return &c.Start }, "square", "extended"),
	choice("corner", "outside corners are rounded by an arc, or lines are extended", func(c *Control) *Setting[string] { return &c.Corner }, "arc", "extended"),
	whole("look_ahead", "how many blocks the control looks ahead", func(c *Control) *Setting[int] { return &c.LookAhead }, 1, 1000),
	choice("short_inside", "an inside move shorter than the radius stops with an alarm, or gouges", func(c *Control) *Setting[string] { return &c.Short }, "alarm", "gouge"),
}

var chuckKeys = []row[Chuck]{
	number("diameter", "diameter of the chuck's body", diameter, func(c *Chuck, v Setting[float64]) { c.Radius = v.Value }),
	number("through_hole", "diameter of the hole through chuck and spindle", diameter, func(c *Chuck, v Setting[float64]) { c.ThroughHole = v.Value }),
	number("jaw_reach", "axial length of the jaws in front of the chuck's face", extent, func(c *Chuck, v Setting[float64]) { c.JawReach = v.Value }),
}

var centreKeys = []row[Centre]{
	number("point_angle", "included angle of the point; 60", degrees, func(c *Centre, v Setting[float64]) { c.PointAngle = geom.Radians(v.Value) }),
	number("body_diameter", "diameter of the body behind the point", diameter, func(c *Centre, v Setting[float64]) { c.BodyRadius = v.Value }),
}

// readColumn takes the starting column; the settings not given follow it.
func readColumn(_ reader, t *source.Table, m *Machine) {
	v, ok := t.Text("words")
	if !ok {
		return
	}
	if _, all := tables(); all[v.Value].words == nil {
		help := "one of " + strings.Join(Columns(), ", ")
		if near, ok := finding.Nearest(strings.ToLower(v.Value), Columns()); ok {
			help = "did you mean " + near + "? " + help
		}
		t.Error("words", codeColumn, help, "no starting column is named %q", v.Value)
		return
	}
	m.Column = given(t, "words", v.Value)
}

// readTravel takes the ends of the slides' travel.
func readTravel(r reader, t *source.Table, m *Machine) {
	in, ok := t.Table("travel")
	if !ok {
		return
	}
	var ends [2][2]float64
	good := true
	for i, k := range []struct {
		name string
		q    quantity
	}{{"diameter", across}, {"z", place}} {
		list, ok := in.Numbers(k.name)
		if !ok {
			good = needs(in, k.name) && false
			continue
		}
		if len(list) != 2 || list[0].Value >= list[1].Value {
			in.Error(k.name, codeConflict, "write [least, most]", "%s is not a least and a greatest value", full(in, k.name))
			good = false
			continue
		}
		for j, n := range list {
			v, ok := k.q.in(r, full(in, k.name), n)
			ends[i][j], good = v, good && ok
		}
	}
	in.Only([]source.Key{{Name: "diameter"}, {Name: "z"}})
	if good {
		m.Travel = given(t, "travel", [2]Place{{R: ends[0][0], Z: ends[1][0]}, {R: ends[0][1], Z: ends[1][1]}})
	}
}

// readFrames takes the places of further work offsets. Whether each word is
// one is asked when the words are known.
func readFrames(r reader, t *source.Table, m *Machine) {
	in, ok := t.Table("frames")
	if !ok {
		return
	}
	frames := map[string]Place{}
	for w, p := range m.Frames {
		frames[w] = p
	}
	for _, key := range in.Keys() {
		w, ok := Word(key)
		if !ok {
			in.Table(key)
			r.into.Error(in.KeySpan(key), codeWord, "write a word such as G55", "%q is not a word", key)
			continue
		}
		var s Setting[Place]
		spot(key, "", func(s *Setting[Place]) *Setting[Place] { return s }).read(r, in, &s)
		if s.Given {
			frames[w] = s.Value
		}
	}
	m.Frames, m.framesAt = frames, in
}

func readRates(r reader, t *source.Table, m *Machine) {
	in, ok := t.Table("rapid_rate")
	if !ok {
		return
	}
	var rates [2]Setting[float64]
	readRows(r, in, []row[[2]Setting[float64]]{
		number("x", "rate of the cross slide, on radius", perMin, func(p *[2]Setting[float64], v Setting[float64]) { p[0] = v }),
		number("z", "rate of the carriage", perMin, func(p *[2]Setting[float64], v Setting[float64]) { p[1] = v }),
	}, &rates)
	if needs(in, "x") && needs(in, "z") && rates[0].Given && rates[1].Given {
		m.RapidRate = given(t, "rapid_rate", [2]float64{rates[0].Value, rates[1].Value})
	}
}
