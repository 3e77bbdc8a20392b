package verify

import (
	"math"

	"taperwright/profiles"
	"taperwright/profiles/geom"
)

// The decimals of printed figures (a promise: figures are rounded first, then
// compared, so that page and verdict cannot disagree).
const (
	lengthPlaces = 4
	anglePlaces  = 6
	ratioPlaces  = 6
)

// fault is one reason why a feature is out.
type fault struct {
	code   string
	amount float64 // mm as the finding says it
	at     reading
	text   string
	help   string
}

// judged is a row with what is wrong about it, before blame is laid.
type judged struct {
	row    Row
	faults []fault
	bits   []bit
	// gouged tells that metal is gone that no later cut can bring back
	gouged bool
}

// judge measures every feature of the set-ups given on bits.
func judge(part *profiles.Part, features []int, bits []bit) []judged {
	mains := locate(part, features, bits)
	cs := corners(part, features, mains, bits)
	findEdges(part, cs, bits)
	claim(mains, cs, bits)
	var out []judged
	at := map[int]*spot{}
	for _, s := range mains {
		at[s.index] = s
	}
	for _, i := range features {
		f := &part.Features[i]
		b := builder{part: part, f: f}
		b.row = Row{Name: f.Name, Kind: f.Kind, Inside: f.Inside, Feature: i, Verdict: In}
		if f.Setup >= 0 && f.Setup < len(part.Setups) {
			b.row.Setup = part.Setups[f.Setup].Name
		}
		switch {
		case at[i] != nil && f.Kind == profiles.Journal:
			b.journal(at[i])
		case at[i] != nil && f.Kind == profiles.Taper:
			b.taper(at[i])
		case at[i] != nil:
			b.shoulder(at[i])
		case f.Kind == profiles.Chamfer:
			b.chamfer(cornerOf(cs, i), bits, mains)
		case f.Kind == profiles.Fillet || f.Kind == profiles.Corner:
			b.fillet(cornerOf(cs, i), bits, mains)
		default: // a main without a piece: its treatments took it all
			b.row.Verdict = CannotJudge
		}
		out = append(out, judged{b.row, b.faults, b.bits, b.gouged})
	}
	return out
}

// cornerOf returns the corner that feature i treats, or nil at an end.
func cornerOf(cs []*corner, i int) *corner {
	for _, c := range cs {
		for _, t := range c.treats {
			if t == i {
				return c
			}
		}
	}
	return nil
}

// builder fills one row.
type builder struct {
	part   *profiles.Part
	f      *profiles.Feature
	row    Row
	faults []fault
	bits   []bit
	gouged bool
}

// z returns a z of the part as the program of the feature's set-up sees it.
func (b *builder) z(z float64) float64 {
	if b.f.Setup < 0 {
		return z
	}
	return ToProgram(b.part, b.f.Setup, geom.Point{Z: z}).Z
}

// figure adds a figure to wanted and cut. known false: null in cut.
func (b *builder) figure(key string, places int, wanted, cut float64, known bool) {
	b.row.Wanted = append(b.row.Wanted, Figure{key, geom.Round(wanted, places), true, places})
	b.row.Cut = append(b.row.Cut, Figure{key, geom.Round(cut, places), known && !math.IsNaN(cut), places})
}

// limit adds the limits of a figure and tells whether cut is inside.
func (b *builder) limit(key string, places int, low, high, cut float64) bool {
	if low > high {
		low, high = high, low
	}
	b.row.Limits = append(b.row.Limits, Limit{key, geom.Round(low, places), geom.Round(high, places), places})
	n := geom.Count(cut, places)
	return geom.Count(low, places) <= n && n <= geom.Count(high, places)
}

// off adds a figure of what is off.
func (b *builder) off(key string, places int, v float64, known bool) {
	b.row.Off = append(b.row.Off, Figure{key, geom.Round(v, places), known && !math.IsNaN(v), places})
}

// differ adds cut minus wanted, of the rounded figures, so that the page adds up.
func (b *builder) differ(key, of string, places int) {
	w, _ := b.row.Wanted.Get(of)
	c, known := b.row.Cut.Get(of)
	b.off(key, places, c-w, known)
}

func (b *builder) fault(f fault) {
	b.row.Verdict = Out
	b.faults = append(b.faults, f)
	if f.code == CodeGouge && f.at.owner >= 0 { // raw stock may be too small before it is cut at all
		b.gouged = true
	}
}

// missing makes the row out because the feature is not there at all.
func (b *builder) missing(keys ...string) {
	for _, k := range keys {
		b.off(k, lengthPlaces, 0, false)
	}
	mid := b.f.Piece.From.Add(b.f.Piece.To).Times(0.5)
	b.fault(fault{code: CodeNotThere, at: reading{at: mid, owner: -1}, amount: math.Inf(1),
		text: "is not there: the part that is left has no such " + string(b.f.Kind)})
}

// size returns a length for a message.
func size(mm float64) string { return geom.Fixed(mm, lengthPlaces) + " mm" }

// place returns where on the part a finding is, for a message.
func (b *builder) place(p geom.Point) string { return "Z" + geom.Fixed(b.z(p.Z), 3) }

func (b *builder) journal(s *spot) {
	f := b.f
	b.bits = s.bits
	mean, ok := meanR(s.bits)
	b.figure("diameter_mm", lengthPlaces, 2*f.Radius.Aim, 2*mean, ok)
	b.figure("z_from_mm", lengthPlaces, b.z(f.ZFrom.Aim), b.z(s.from), ok)
	b.figure("z_to_mm", lengthPlaces, b.z(f.ZTo.Aim), b.z(s.to), ok)
	inside := b.limit("diameter_mm", lengthPlaces, 2*f.Radius.Low, 2*f.Radius.High, 2*mean)
	b.differ("diameter_mm", "diameter_mm", lengthPlaces)
	if !ok {
		b.missing("most_left_diameter_mm", "deepest_gouge_diameter_mm", "straightness_mm")
		return
	}
	axis := ruler{n: geom.Point{R: 2}} // reads diameters
	least, most, _ := axis.extremes(s.all())
	b.extremes(2*f.Radius.Aim, least, most)
	b.straight(s)
	b.surfaces(s)
	if d, _ := b.row.Off.Get("diameter_mm"); !inside && len(b.faults) == 0 && d > 0 {
		b.fault(fault{code: CodeMetalLeft, amount: d, at: most, text: "is " + size(d) + " too large in the mean"})
	} else if !inside && len(b.faults) == 0 {
		b.fault(fault{code: CodeGouge, amount: -d, at: least, text: "is " + size(-d) + " too small in the mean"})
	}
}

// extremes adds the most left and the deepest gouge on diameter against aim.
func (b *builder) extremes(aim float64, least, most reading) {
	b.off("most_left_diameter_mm", lengthPlaces, max(0, most.value-aim), true)
	b.off("deepest_gouge_diameter_mm", lengthPlaces, max(0, aim-least.value), true)
}

func (b *builder) straight(s *spot) {
	if s.f.Kind == profiles.Shoulder && len(s.bits) == 1 && s.bits[0].From == s.bits[0].To {
		b.off("straightness_mm", lengthPlaces, 0, true)
		return
	}
	least, most, ok := normalTo(s.cut).extremes(s.bits)
	b.off("straightness_mm", lengthPlaces, max(-least.value, most.value), ok)
}

// surfaces adds the faults of points outside the permitted surfaces, as
// diameters.
func (b *builder) surfaces(s *spot) {
	slope := 0.0 // the wanted cone's, for the stand-off
	if s.f.Cone != nil {
		slope = math.Abs(s.f.Cone.Slope.Aim)
	}
	over, under := s.beyond()
	if geom.Count(over.value, lengthPlaces) > 0 {
		left, _ := b.row.Off.Get("most_left_diameter_mm")
		f := fault{code: CodeMetalLeft, amount: left, at: over, text: "is left " + size(left) + " too large on diameter at " + b.place(over.at) +
			", " + size(over.value) + " over its limit"}
		if slope != 0 {
			f.help = "the mate would stop " + geom.Fixed(left/(2*slope), 2) + " mm short"
		}
		b.fault(f)
	}
	if geom.Count(under.value, lengthPlaces) > 0 {
		gone, _ := b.row.Off.Get("deepest_gouge_diameter_mm")
		f := fault{code: CodeGouge, amount: gone, at: under, text: "is cut " + size(gone) + " too small on diameter at " + b.place(under.at) +
			", " + size(under.value) + " under its limit"}
		if slope != 0 {
			f.help = "the mate would go " + geom.Fixed(gone/(2*slope), 2) + " mm too far"
		}
		b.fault(f)
	}
}

func (b *builder) taper(s *spot) {
	f, c := b.f, b.f.Cone
	b.bits = s.bits
	ok := s.found
	slope := s.cut.d.R / s.cut.d.Z
	at := func(z float64) float64 { return 2 * s.cut.rAt(z) }
	aim := func(z float64) float64 { return 2 * (c.Gauge.Aim + float64(c.Slope.Aim*(z-c.GaugeZ))) }
	large, small := f.ZFrom.Aim, f.ZTo.Aim
	if !c.LargeFront {
		large, small = small, large
	}
	half := geom.Degrees(geom.Atan(math.Abs(slope)))
	ratio := 1 / (2 * math.Abs(slope))
	if (slope < 0) != (c.Slope.Aim < 0) { // it opens the wrong way
		half, ratio = -half, -ratio
	}
	b.figure("gauge_diameter_mm", lengthPlaces, 2*c.Gauge.Aim, at(c.GaugeZ), ok)
	b.figure("large_diameter_mm", lengthPlaces, aim(large), at(large), ok)
	b.figure("small_diameter_mm", lengthPlaces, aim(small), at(small), ok)
	b.figure("half_angle_deg", anglePlaces, geom.Degrees(c.HalfAngle.Aim), half, ok)
	b.figure("ratio_1_to", ratioPlaces, 1/(2*math.Abs(c.Slope.Aim)), ratio, ok && geom.Count(half, anglePlaces) != 0)
	b.figure("z_from_mm", lengthPlaces, b.z(f.ZFrom.Aim), b.z(s.from), ok)
	b.figure("z_to_mm", lengthPlaces, b.z(f.ZTo.Aim), b.z(s.to), ok)
	sizeIn := b.limit("gauge_diameter_mm", lengthPlaces, 2*c.Gauge.Low, 2*c.Gauge.High, at(c.GaugeZ))
	angleIn := b.limit("half_angle_deg", anglePlaces, geom.Degrees(c.HalfAngle.Low), geom.Degrees(c.HalfAngle.High), half)
	b.differ("diameter_mm", "gauge_diameter_mm", lengthPlaces)
	b.differ("half_angle_deg", "half_angle_deg", anglePlaces)
	if !ok {
		b.missing("standoff_mm", "most_left_diameter_mm", "deepest_gouge_diameter_mm", "straightness_mm")
		return
	}
	d, _ := b.row.Off.Get("diameter_mm")
	b.off("standoff_mm", lengthPlaces, d/(2*math.Abs(c.Slope.Aim)), true)
	want := line{geom.Point{Z: c.GaugeZ, R: c.Gauge.Aim}, geom.Point{Z: -1, R: -c.Slope.Aim}.Unit()}
	diameter := radialTo(want)
	diameter.n = diameter.n.Times(2)
	least, most, _ := diameter.extremes(s.all())
	b.extremes(0, least, most)
	b.straight(s)
	b.surfaces(s)
	if len(b.faults) > 0 {
		return
	}
	// every point within the extremes, but the line is not
	if !angleIn {
		off, _ := b.row.Off.Get("half_angle_deg")
		worst := most
		if -least.value > most.value {
			worst = least
		}
		b.fault(fault{code: CodeWrongAngle, amount: max(most.value, -least.value), at: worst,
			text: "has a half angle off by " + minutes(off) + ", more than its limits allow"})
	}
	if !sizeIn {
		code, worst, word := CodeMetalLeft, most, "large"
		if d < 0 {
			code, worst, word = CodeGouge, least, "small"
		}
		b.fault(fault{code: code, amount: math.Abs(d), at: worst,
			text: "is " + size(math.Abs(d)) + " too " + word + " at the gauge plane",
			help: "the mate stands off by " + geom.Fixed(d/(2*math.Abs(c.Slope.Aim)), 2) + " mm"})
	}
}

// beyond returns how far, on diameter, the boundary over s rises above and
// falls below what is permitted, and where it does so most.
func (s *spot) beyond() (over, under reading) {
	over.value, under.value = math.Inf(-1), math.Inf(-1)
	take := func(o, u reading) {
		if geom.Count(o.value, 7) > geom.Count(over.value, 7) {
			over = o
		}
		if geom.Count(u.value, 7) > geom.Count(under.value, 7) {
			under = u
		}
	}
	for _, r := range s.room {
		if r.or == nil {
			take(permitted(r.bits, s.f))
			continue
		}
		for i := range r.bits { // bit by bit: each may follow either
			one := r.bits[i : i+1]
			o, u := permitted(one, s.f)
			p, v := permitted(one, r.or.f)
			if p.value < o.value {
				o = p
			}
			if v.value < u.value {
				u = v
			}
			take(o, u)
		}
	}
	return over, under
}

// permitted returns how far, on diameter, bits leave the room between the
// lowest and the highest surface of a journal or taper. A cone's are what
// gauge diameter and angle allow together, about the gauge plane
// (definitions 9).
func permitted(bits []bit, f *profiles.Feature) (over, under reading) {
	over.value, under.value = math.Inf(-1), math.Inf(-1)
	take := func(bits []bit, z, high, up, low, down float64) {
		surface := func(r, slope float64) ruler {
			k := radialTo(line{geom.Point{Z: z, R: r}, geom.Point{Z: -1, R: -slope}.Unit()})
			k.n = k.n.Times(2)
			return k
		}
		if _, m, ok := surface(high, up).extremes(bits); ok && geom.Count(m.value, 7) > geom.Count(over.value, 7) {
			over = m
		}
		if l, _, ok := surface(low, down).extremes(bits); ok && geom.Count(-l.value, 7) > geom.Count(under.value, 7) {
			under = reading{-l.value, l.at, l.owner}
		}
	}
	c := f.Cone
	if c == nil {
		take(bits, 0, f.Radius.High, 0, f.Radius.Low, 0)
		return over, under
	}
	take(between(bits, math.Inf(1), c.GaugeZ), c.GaugeZ, c.Gauge.High, c.Slope.High, c.Gauge.Low, c.Slope.Low)
	take(between(bits, c.GaugeZ, math.Inf(-1)), c.GaugeZ, c.Gauge.High, c.Slope.Low, c.Gauge.Low, c.Slope.High)
	return over, under
}

func (b *builder) shoulder(s *spot) {
	f := b.f
	b.bits = s.bits
	ok := s.found && len(s.bits) > 0
	z := meanZ(s.bits)
	b.figure("z_mm", lengthPlaces, b.z(f.Z.Aim), b.z(z), ok)
	b.figure("diameter_from_mm", lengthPlaces, 2*f.RFrom.Aim, 2*max(s.from, 0), ok)
	b.figure("diameter_to_mm", lengthPlaces, 2*f.RTo.Aim, 2*max(s.to, 0), ok)
	b.limit("z_mm", lengthPlaces, b.z(f.Z.Low), b.z(f.Z.High), b.z(z))
	b.differ("z_mm", "z_mm", lengthPlaces)
	if !ok {
		b.missing("most_left_z_mm", "deepest_gouge_z_mm", "straightness_mm")
		return
	}
	want := line{geom.Point{Z: f.Z.Aim}, s.want.d}
	least, most, _ := normalTo(want).extremes(s.bits)
	b.off("most_left_z_mm", lengthPlaces, max(0, most.value), true)
	b.off("deepest_gouge_z_mm", lengthPlaces, max(0, -least.value), true)
	b.straight(s)
	leave, gone := f.Z.High-f.Z.Aim, f.Z.Aim-f.Z.Low // of metal, for a face that looks to the front
	if s.want.d.R < 0 {
		leave, gone = gone, leave
	}
	if geom.Count(most.value-leave, lengthPlaces) > 0 {
		b.fault(fault{code: CodeMetalLeft, amount: most.value, at: most,
			text: "has " + size(most.value) + " too much metal on it at " + b.place(most.at) + ", diameter " + geom.Fixed(2*most.at.R, 3) + " mm"})
	}
	if geom.Count(-least.value-gone, lengthPlaces) > 0 {
		b.fault(fault{code: CodeGouge, amount: -least.value, at: least,
			text: "is cut " + size(-least.value) + " too deep at " + b.place(least.at) + ", diameter " + geom.Fixed(2*least.at.R, 3) + " mm"})
	}
}

// meanZ returns the mean z of bits over their height.
func meanZ(bits []bit) float64 {
	var sum, height float64
	for _, b := range bits {
		// by parts: the integral of z dr is [z r] less that of r dz
		sum += float64(b.To.Z*b.To.R) - float64(b.From.Z*b.From.R) - b.AreaUnder()
		height += b.To.R - b.From.R
	}
	switch {
	case len(bits) == 0:
		return math.NaN()
	case geom.Count(height, 6) == 0:
		return bits[0].From.Z
	}
	return sum / height
}

func (b *builder) chamfer(c *corner, bits []bit, mains []*spot) {
	f := b.f
	var e *edge
	if c != nil {
		e = c.edge
	} else {
		e = findEdge(f, nil, nil, bits)
	}
	width, angle, ok := 0.0, math.NaN(), e != nil
	if ok {
		b.bits = e.bits
		width = math.Abs(e.trail.Z - e.lead.Z)
		angle = geom.Degrees(geom.Atan2(math.Abs(e.cut.d.R), math.Abs(e.cut.d.Z)))
	}
	b.figure("width_mm", lengthPlaces, f.Width.Aim, width, true)
	b.figure("angle_deg", anglePlaces, geom.Degrees(f.Angle.Aim), angle, ok)
	wide := b.limit("width_mm", lengthPlaces, f.Width.Low, f.Width.High, width)
	tilt := b.limit("angle_deg", anglePlaces, geom.Degrees(f.Angle.Low), geom.Degrees(f.Angle.High), angle)
	b.differ("width_mm", "width_mm", lengthPlaces)
	b.differ("angle_deg", "angle_deg", anglePlaces)
	worst := reading{at: f.Piece.From, owner: -1}
	var least, most reading
	if ok {
		least, most, _ = normalTo(e.cut).extremes(e.bits)
		b.off("straightness_mm", lengthPlaces, max(-least.value, most.value), true)
		worst = most
	}
	// a wider chamfer is a line further in: width times the sine of its angle
	sine := 0.0
	if ok {
		sine = math.Abs(e.cut.d.R)
	}
	switch {
	case !ok && geom.Count(f.Width.Low, lengthPlaces) > 0:
		b.fault(fault{code: CodeWrongEdge, amount: f.Width.Aim, at: worst, text: "is not there: the edge was left sharp"})
	case ok && !wide:
		b.fault(fault{code: CodeWrongEdge, amount: math.Abs(width - f.Width.Aim), at: worst,
			text: "is " + size(width) + " wide, wanted " + size(f.Width.Low) + " to " + size(f.Width.High)})
	case ok && !tilt:
		b.fault(fault{code: CodeWrongEdge, amount: math.Abs(width - f.Width.Aim), at: worst,
			text: "stands at " + geom.Fixed(angle, 3) + " degrees to the axis, wanted " + geom.Fixed(geom.Degrees(f.Angle.Low), 3) +
				" to " + geom.Fixed(geom.Degrees(f.Angle.High), 3)})
	case ok && geom.Count(most.value-float64((width-f.Width.Low)*sine), lengthPlaces) > 0:
		b.fault(fault{code: CodeMetalLeft, amount: most.value, at: most, text: "stands " + size(most.value) + " proud of its line at " + b.place(most.at)})
	case ok && geom.Count(-least.value-float64((f.Width.High-width)*sine), lengthPlaces) > 0:
		b.fault(fault{code: CodeGouge, amount: -least.value, at: least, text: "is cut " + size(-least.value) + " below its line at " + b.place(least.at)})
	}
}

// minutes returns an angle in degrees as minutes or seconds of arc.
func minutes(deg float64) string {
	if sec := math.Abs(deg) * 3600; sec < 120 {
		return geom.Fixed(sec, 1) + `"`
	}
	return geom.Fixed(math.Abs(deg)*60, 2) + "'"
}
