package shop

import (
	"fmt"
	"math"

	"taperwright/profiles/geom"
	"taperwright/profiles/source"
)

// Defaults of the plan: common practice (definitions of the project).
const (
	leastDepth = 0.3  // mm on radius
	skin       = 0.25 // mm normal to the contour
)

// NoseOnly returns the tool of which only the nose radius (mm) is known: an
// outside right-hand turning tool whose main edge is taken to stand at 90 deg
// and whose minor edge never touches. Its flanks and body are not judged. Any
// station and offset may be set in it.
func NoseOnly(nose float64) Tool {
	return Tool{
		Name: "nose R" + brief(nose), Purpose: "both", Kind: "turn", Nose: nose, Right: true, TipX: -1, TipZ: -1,
		CuttingAngle: Setting[float64]{Value: math.Pi / 2}, MinorFree: true,
		LeastDepth: Setting[float64]{Value: leastDepth}, Skin: Setting[float64]{Value: skin},
	}
}

// readTool reads one [[tool]]. It returns false when the file does not say
// enough of the tool to use it at all; the findings then say why.
func readTool(r reader, t *source.Table, m *Machine) (Tool, bool) {
	var w written
	readRows(r, t, toolKeys, &w)
	b := build{reader: r, t: t, w: &w, ok: true}
	if !needs(t, "station") {
		return Tool{}, false
	}
	b.tool = Tool{
		Span: t.Span(), Station: w.station.Value, Offset: w.station.Value,
		Purpose: or(w.purpose, "both"), Kind: or(w.kind, "turn"), Inside: w.side.Value == "inside",
		SurfaceSpeed: w.speed, RPM: w.rpm, FeedRate: w.feed, Depth: w.depth, LeastDepth: w.leastDepth, Skin: w.skin,
		Spindle: w.spindle, Width: w.width, Reference: w.reference, Wear: w.wear, Reach: w.reach,
	}
	if w.offset.Given {
		b.tool.Offset = w.offset.Value
	}
	if !w.leastDepth.Given {
		b.tool.LeastDepth.Value = leastDepth
	}
	if !w.skin.Given {
		b.tool.Skin.Value = skin
	}
	b.codes()
	b.hand()
	b.nose()
	b.edges()
	b.body()
	b.tip()
	b.cutting(m)
	b.tool.Name = b.name()
	return b.tool, b.ok && w.station.Given
}

// build makes a Tool of what is written and of what the designations say.
type build struct {
	reader
	t      *source.Table
	w      *written
	insert *Insert
	holder *Holder
	tool   Tool
	ok     bool
}

// or returns the value of s, or another when it is not given.
func or[T any](s Setting[T], other T) T {
	if s.Given {
		return s.Value
	}
	return other
}

// wrong adds an error that makes the tool unusable.
func (b *build) wrong(key, code, help, format string, args ...any) {
	b.ok = false
	b.t.Error(key, code, help, format, args...)
}

// codes reads the two designations and whether they go together.
func (b *build) codes() {
	if v := b.w.insert; v.Given {
		in, err := InsertOf(v.Value)
		if err != nil {
			b.wrong("insert", codeInsert, "write it as on the box, such as CNMG120408, or give nose_radius, edge_length and included_angle instead",
				"insert %q is not understood: %s", v.Value, err)
		} else {
			b.insert = &in
		}
	}
	if v := b.w.holder; v.Given {
		h, err := HolderOf(v.Value)
		if err != nil {
			b.wrong("holder", codeHolder, "write it as on the shank, such as PCLNR2525M12, or give hand, cutting_edge_angle and shank instead",
				"holder %q is not understood: %s", v.Value, err)
		} else {
			b.holder = &h
		}
	}
	if b.insert != nil && b.holder != nil {
		if why := b.holder.takes(*b.insert); why != "" {
			b.wrong("insert", codeSeat, "one of the two designations is not that of this tool", "%s", why)
		}
	}
}

// beats warns that an explicit key says otherwise than a designation; the key
// holds.
func (b *build) beats(key, code, says, is string) {
	b.into.Warn(b.t.ValueSpan(key), codeContradicts, "leave "+key+" out, or correct the "+code,
		"%s is %s here, but the %s says %s; the key is used", key, is, code, says)
}

func (b *build) hand() {
	hand := or(b.w.hand, "")
	if b.holder != nil {
		if hand == "" {
			hand = b.holder.Hand
		} else if hand != b.holder.Hand {
			b.beats("hand", "holder", b.holder.Hand, hand)
		}
	}
	b.tool.Right = hand != "left"
	b.tool.Neutral = hand == "neutral"
}

// nose takes the nose radius: the key, else the nominal one of the insert.
// A nose radius that differs from the code is no contradiction: a real insert
// has its own.
func (b *build) nose() {
	b.tool.NoseFrom = b.w.nose.From
	switch {
	case b.w.nose.Given:
		b.tool.Nose = b.w.nose.Value
	case b.insert != nil:
		b.tool.Nose, b.tool.NoseFrom = b.insert.Nose, b.w.insert.From
		if b.insert.Nose == 0 && b.tool.Kind == "turn" {
			b.wrong("insert", codeNoNose, "give nose_radius: a real edge has one, 0.05 mm for instance", "insert %q has a sharp corner", b.w.insert.Value)
		}
	case b.tool.Kind == "turn" && !b.t.Has("nose_radius") && !b.t.Has("insert"):
		b.wrong("station", codeNoNose, "add insert = \"CNMG120408\", or nose_radius = 0.8", "nothing says the nose radius of this tool")
	case b.tool.Kind == "turn":
		b.ok = false // its finding stands already
	}
	if b.tool.Nose == 0 || b.insert == nil || !b.insert.Round {
		return
	}
	if b.w.nose.Given && geom.Count(b.tool.Nose, 3) != geom.Count(b.insert.Circle/2, 3) {
		b.beats("nose_radius", "insert", b.len(b.insert.Circle/2), b.len(b.tool.Nose))
	}
}

// len prints a length in the file's unit.
func (b *build) len(mm float64) string {
	return brief(mm/b.unit.PerMM()) + " " + b.unit.String()
}

// deg prints an angle given in radians.
func deg(rad float64) string { return brief(geom.Degrees(rad)) + " deg" }

// sameAngle tells whether two angles are the same: designations give half
// degrees at the finest, so a quarter of a degree tells them apart.
func sameAngle(a, b float64) bool { return math.Abs(a-b) < math.Pi/720 }

// edges takes the insert's outline: corner, cutting edge and minor edge
// angle, of which two give the third, and the edges' lengths.
func (b *build) edges() {
	t := &b.tool
	if b.insert != nil && b.insert.Round {
		t.Round, t.Included = true, Setting[float64]{Value: math.Pi, Given: true, From: b.w.insert.From}
		t.CuttingAngle = Setting[float64]{Value: math.Pi / 2}
		return
	}
	kappa, corner, minor := radians(b.w.cutting), radians(b.w.included), radians(b.w.minor)
	if b.insert != nil {
		if !corner.Given {
			corner = Setting[float64]{Value: b.insert.Included, Given: true, From: b.w.insert.From}
		} else if !sameAngle(corner.Value, b.insert.Included) {
			b.beats("included_angle", "insert", deg(b.insert.Included), deg(corner.Value))
		}
	}
	if b.holder != nil && !b.holder.Faces {
		if !kappa.Given {
			kappa = Setting[float64]{Value: b.holder.Angle, Given: true, From: b.w.holder.From}
		} else if !sameAngle(kappa.Value, b.holder.Angle) {
			b.beats("cutting_edge_angle", "holder", deg(b.holder.Angle), deg(kappa.Value))
		}
	}
	if b.holder != nil && b.holder.Faces && !kappa.Given && t.Kind == "turn" {
		b.wrong("holder", codeHolder, "add cutting_edge_angle = ..., as the main edge stands to the feed along the work",
			"a holder of style %c feeds across the work; its angle says nothing of turning along it", b.holder.Style)
		return
	}
	if kappa.Given && corner.Given && minor.Given {
		if sum := kappa.Value + corner.Value + minor.Value; !sameAngle(sum, math.Pi) {
			if b.w.cutting.Given && b.w.included.Given {
				b.wrong("minor_edge_angle", codeEdges, "leave one of the three out",
					"cutting edge angle, corner and minor edge angle make %s; they must make 180 deg", deg(sum))
				return
			}
			// a key beats a code: what comes from a code gives way
			if b.w.cutting.Given {
				b.beats("minor_edge_angle", "insert", deg(math.Pi-kappa.Value-corner.Value), deg(minor.Value))
				corner.Value = math.Pi - kappa.Value - minor.Value
			} else {
				b.beats("minor_edge_angle", "holder", deg(math.Pi-kappa.Value-corner.Value), deg(minor.Value))
				kappa.Value = math.Pi - corner.Value - minor.Value
			}
		}
	}
	switch {
	case kappa.Given && corner.Given:
	case kappa.Given && minor.Given:
		corner = Setting[float64]{Value: math.Pi - kappa.Value - minor.Value, Given: true, From: minor.From}
	case corner.Given && minor.Given:
		kappa = Setting[float64]{Value: math.Pi - corner.Value - minor.Value, Given: true, From: minor.From}
	default: // one of three, or none: the main edge is assumed, the minor edge not known
		t.MinorFree = true
		if !kappa.Given {
			kappa.Value = math.Pi / 2
		}
	}
	t.CuttingAngle, t.Included = kappa, corner
	// 95 + 85 deg may be a last bit above Pi; half a second of angle is no matter
	const slack = 2e-6
	if !t.MinorFree && (kappa.Value+corner.Value > math.Pi+slack || corner.Value <= 0 || kappa.Value <= 0) {
		key := "cutting_edge_angle"
		if !b.t.Has(key) {
			key = "holder"
		}
		b.wrong(key, codeEdges, "cutting edge angle and corner together are at most 180 deg",
			"a cutting edge angle of %s and a corner of %s leave no angle for the minor edge: it would stand in the work", deg(kappa.Value), deg(corner.Value))
		return
	}
	b.lengths()
}

func radians(s Setting[float64]) Setting[float64] {
	s.Value = geom.Radians(s.Value)
	return s
}

// lengths takes the lengths of the edges, and whether the nose fits between
// them: its circle lies inside the parallelogram that the edges span, whose
// inscribed circle has the diameter edge x sin(corner), and inside the
// insert's own inscribed circle where the code says it.
func (b *build) lengths() {
	t := &b.tool
	reach := b.w.edge
	if b.insert != nil && b.insert.Edge > 0 {
		if !reach.Given {
			reach = Setting[float64]{Value: b.insert.Edge, Given: true, From: b.w.insert.From}
		} else if math.Abs(reach.Value-b.insert.Edge) > 1 { // a code holds whole millimetres
			b.beats("edge_length", "insert", b.len(b.insert.Edge), b.len(reach.Value))
		}
	}
	t.MainReach, t.MinorReach = reach, reach
	if !reach.Given || !t.Included.Given || t.Nose == 0 {
		return
	}
	most := reach.Value * geom.Sin(t.Included.Value) / 2
	if b.insert != nil && b.insert.Circle > 0 {
		most = min(most, b.insert.Circle/2)
	}
	if t.Nose > most {
		key := "nose_radius"
		if !b.t.Has(key) {
			key = "insert"
		}
		b.wrong(key, codeNose, fmt.Sprintf("at most %s fits edges of %s at a corner of %s", b.len(most), b.len(reach.Value), deg(t.Included.Value)),
			"a nose radius of %s is larger than the insert", b.len(t.Nose))
	}
}

// body takes shank or bar.
func (b *build) body() {
	b.tool.Shank, b.tool.BarRadius = b.w.shank, b.w.bar
	if b.holder == nil {
		return
	}
	if h := b.holder.Shank; h > 0 {
		if !b.w.shank.Given {
			b.tool.Shank = Setting[float64]{Value: h, Given: true, From: b.w.holder.From}
		} else if math.Abs(h-b.w.shank.Value) > 0.5 {
			b.beats("shank", "holder", b.len(h), b.len(b.w.shank.Value))
		}
	}
	if h := b.holder.Bar; h > 0 {
		if !b.w.bar.Given {
			b.tool.BarRadius = Setting[float64]{Value: h / 2, Given: true, From: b.w.holder.From}
		} else if math.Abs(float64(h/2)-b.w.bar.Value) > 0.25 {
			b.beats("bar_diameter", "holder", b.len(h), b.len(2*b.w.bar.Value))
		}
	}
}

// tip takes the programmed point; by default where the tangents of the nose
// meet that a tool of this side and hand is set by.
func (b *build) tip() {
	t := &b.tool
	if b.w.tip.Given {
		t.TipX, t.TipZ, t.Tip = b.w.tip.Value[0], b.w.tip.Value[1], b.w.tip.From
		return
	}
	t.TipX, t.TipZ = -1, -1
	if t.Inside {
		t.TipX = 1
	}
	switch {
	case b.t.Has("tip"):
		b.ok = false // its finding stands already
	case b.w.reference.Value == "front":
		t.TipZ = 1
	case b.w.reference.Value == "back":
	case !t.Right:
		t.TipZ = 1
	case t.Neutral && t.Kind == "turn":
		key := "hand"
		if !b.t.Has(key) {
			key = "holder"
		}
		b.wrong(key, codeTip, "add tip = { x = \"-\", z = \"-\" } when it is touched off like a right-hand tool, or tip = \"centre\"",
			"a neutral tool has no usual programmed point")
	}
}

// cutting judges the cutting data and the spindle.
func (b *build) cutting(m *Machine) {
	w := b.w
	if w.speed.Given && w.rpm.Given {
		b.wrong("rpm", codeConflict, "leave one of them out", "this tool has both surface_speed and rpm")
	}
	if m.TopSpeed.Given && w.rpm.Given && w.rpm.Value > m.TopSpeed.Value {
		b.wrong("rpm", codeConflict, "top_speed is "+brief(m.TopSpeed.Value)+" rev/min", "rpm = %s is above the top speed of the machine", brief(w.rpm.Value))
	}
	if w.depth.Given && w.leastDepth.Given && w.leastDepth.Value > w.depth.Value {
		b.wrong("least_depth", codeConflict, "both are on radius", "the least depth of cut is above the greatest")
	}
	if w.depth.Given && !w.leastDepth.Given {
		b.tool.LeastDepth.Value = min(leastDepth, w.depth.Value)
	}
	if b.tool.MainReach.Given && w.depth.Given && w.depth.Value > b.tool.MainReach.Value {
		b.wrong("depth", codeConflict, "the edge is "+b.len(b.tool.MainReach.Value)+" long", "the depth of cut is more than the edge is long")
	}
	if w.spindle.Given {
		m.judgeSpindle(w.spindle, b.into)
	}
	if !b.tool.Inside && w.bar.Given {
		b.wrong("bar_diameter", codeConflict, "add side = \"inside\", or leave bar_diameter out", "a tool for outside work has a bar_diameter")
	}
	if b.tool.Kind != "groove" {
		for _, key := range []string{"width", "reference"} {
			if b.t.Has(key) {
				b.wrong(key, codeConflict, "add kind = \"groove\", or leave "+key+" out", "%s belongs to a grooving tool", key)
			}
		}
	}
}

// name names the tool for messages: "T3 (DNMG150404, R0.4 mm)".
func (b *build) name() string {
	s := "T" + itoa(b.tool.Station)
	if b.tool.Offset != b.tool.Station {
		s += " offset " + itoa(b.tool.Offset)
	}
	s += " ("
	if b.insert != nil {
		s += b.insert.Code + ", "
	}
	return s + "R" + brief(b.tool.Nose) + " mm)"
}
