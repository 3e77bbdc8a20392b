package verify

import (
	"math"

	"taperwright/profiles"
	"taperwright/profiles/geom"
)

// edge is a chamfer or a rounding found on an outside corner.
type edge struct {
	cut         line // of a chamfer
	lead, trail geom.Point
	bits        []bit
}

// findEdges looks for the chamfers and roundings of outside corners, so that
// one cut too large takes nothing from its neighbours' verdicts.
func findEdges(part *profiles.Part, cs []*corner, bits []bit) {
	for _, c := range cs {
		for _, i := range c.treats {
			f := &part.Features[i]
			if f.Kind == profiles.Chamfer || f.Kind == profiles.Fillet && !c.hollow {
				c.edge = findEdge(f, c.a, c.b, bits)
			}
		}
	}
}

// findEdge finds the treatment f between the lines of a and b (either may be
// nil at an end of the contour): the longest run of bits beside its place
// that points more its way than theirs.
func findEdge(f *profiles.Feature, a, b *spot, bits []bit) *edge {
	p := f.Piece
	dir := p.To.Sub(p.From).Unit()
	lo, hi := p.Bounds()
	// twice its own size around it, and half a millimetre for the smallest:
	// common practice breaks edges by 0.1 to 0.5 mm
	reach := 2*p.To.Sub(p.From).Len() + 0.5
	near := func(x bit) bool {
		l, h := x.Bounds()
		return l.Z < hi.Z+reach && h.Z > lo.Z-reach && l.R < hi.R+reach && h.R > lo.R-reach
	}
	its := func(x bit) bool {
		if !near(x) {
			return false
		}
		if f.Kind == profiles.Fillet && !x.IsLine() {
			return x.Turn == p.Turn
		}
		d := x.chord()
		own := d.Dot(dir)
		// Half of a fillet is as near to its neighbour as to 45 degrees: a tie
		// by design goes to the neighbour.
		more := func(than float64) bool { return geom.Count(own, 9) > geom.Count(than, 9) }
		return (a == nil || more(d.Dot(a.want.d))) && (b == nil || more(d.Dot(b.want.d))) && more(0)
	}
	type run struct{ first, last int }
	var main run
	var all []run
	best := 0.0
	for i := 0; i < len(bits); i++ {
		if !its(bits[i]) {
			continue
		}
		j, long := i, bits[i].Length()
		for j+1 < len(bits) && its(bits[j+1]) {
			j++
			long += bits[j].Length()
		}
		all = append(all, run{i, j})
		if geom.Count(long, 6) > geom.Count(best, 6) {
			main, best = run{i, j}, long
		}
		i = j
	}
	if len(all) == 0 {
		return nil
	}
	// A gouge or a ridge may part the edge in two: what lies between runs at
	// its wanted place is the edge's too, or nobody would judge it.
	slack := float64(p.To.Sub(p.From).Len()/4) + 0.1
	var own []bit
	whole := main
	for _, r := range all {
		l, h := bits[r.first].Bounds()
		for _, x := range bits[r.first : r.last+1] {
			xl, xh := x.Bounds()
			l, h = geom.Point{Z: min(l.Z, xl.Z), R: min(l.R, xl.R)}, geom.Point{Z: max(h.Z, xh.Z), R: max(h.R, xh.R)}
		}
		if r == main || l.Z > lo.Z-slack && h.Z < hi.Z+slack && l.R > lo.R-slack && h.R < hi.R+slack {
			whole = run{min(whole.first, r.first), max(whole.last, r.last)}
			own = append(own, bits[r.first:r.last+1]...)
		}
	}
	e := &edge{bits: bits[whole.first : whole.last+1], lead: bits[whole.first].From, trail: bits[whole.last].To}
	if f.Kind == profiles.Chamfer {
		l, ok := fit(own, lineOf(p))
		if !ok {
			return nil
		}
		e.cut = l
		// its ends are where its line meets theirs, when that is beside it
		e.lead = nearer(l, a, e.lead)
		e.trail = nearer(l, b, e.trail)
	}
	return e
}

// nearer returns where l meets the line of s if s was found and that place is
// within a few micrometres of at, else at: an edge and its neighbour may be
// parted by a burr, then the boundary itself says where it ends.
func nearer(l line, s *spot, at geom.Point) geom.Point {
	const beside = 0.005
	if s == nil || !s.found {
		return at
	}
	if q, ok := l.meets(s.cut); ok && q.Sub(at).Len() <= beside {
		return q
	}
	return at
}

// wedge is the room between the two lines of a corner: metal in it that
// should not be there is measured by the arc that touches both lines.
type wedge struct {
	tip  geom.Point
	a, b line       // both run as the contour runs
	u    geom.Point // bisector of the open side
	s    float64    // sine of half the angle between the lines
	k    float64    // 1/s² - 1
	sign float64    // +1 for an inside corner: distances count into the open side
}

func newWedge(a, b line) (wedge, bool) {
	tip, ok := a.meets(b)
	if !ok {
		return wedge{}, false
	}
	w := wedge{tip: tip, a: a, b: b, sign: 1}
	if a.d.Cross(b.d) > 0 {
		w.sign = -1 // an outside corner: the arc lies on the metal's side
	}
	back, on := a.d.Times(-1), b.d
	w.u = back.Add(on).Unit()
	// half the angle between back and on: sin² = (1 - cos)/2
	w.s = math.Sqrt((1 - back.Dot(on)) / 2)
	if w.s < 1e-6 || w.s > 1-1e-12 { // no corner to speak of: a turn under 1e-6 rad
		return wedge{}, false
	}
	w.k = 1/float64(w.s*w.s) - 1
	return w, true
}

// sides returns how far q lies from each line, into the room between them.
func (w wedge) sides(q geom.Point) (a, b float64) {
	return w.sign * normalTo(w.a).at(q), w.sign * normalTo(w.b).at(q)
}

// radius returns the radius of the arc that touches both lines and passes
// through q on the corner's side of its centre: |q - tip - u r/s| = r, the
// larger root. 0 when none does.
func (w wedge) radius(q geom.Point) float64 {
	v := q.Sub(w.tip)
	h := v.Dot(w.u) / w.s
	root := float64(h*h) - float64(w.k*v.Dot(v))
	if h <= 0 || root < 0 {
		return 0
	}
	return (h + math.Sqrt(root)) / w.k
}

// onLine is the distance from a line, in mm, under which metal is the line's
// own and not left in the corner. Touching arcs lie within it near their
// ends, where a radius would be noise: the arc's radius changes there by
// sqrt(zone/onLine) times what the line is off, 20 times for a zone of 0.8.
const onLine = 0.002

// reach returns the largest and the least radius that touching arcs through
// the boundary in the wedge have, ends left out, and where the largest is.
// ok is false when nothing stands off both lines: a sharp corner.
func (w wedge) reach(bits []bit) (least, most reading, ok bool) {
	for _, b := range bits {
		take := func(q geom.Point) float64 {
			x, y := w.sides(q)
			if x <= onLine || y <= onLine {
				return 0
			}
			r := w.radius(q)
			if r <= 0 {
				return 0
			}
			if !ok || geom.Count(r, 6) > geom.Count(most.value, 6) {
				most = reading{r, q, b.owner}
			}
			// the least is only looked for where both lines are well away
			if mid := min(x, y) > 0.3*max(x, y); mid && (least.value == 0 || geom.Count(r, 6) < geom.Count(least.value, 6)) {
				least = reading{r, q, b.owner}
			}
			ok = true
			return r
		}
		take(b.From)
		take(b.To)
		w.inner(b, take)
	}
	return least, most, ok
}

// inner looks inside a bit for the largest radius. Along a line or a short
// arc the radius has one peak or none, so a golden section finds it; 60 steps
// bring the bracket under 1e-12 of the bit.
func (w wedge) inner(b bit, take func(geom.Point) float64) {
	at := func(t float64) geom.Point {
		q := b.From.Along(b.To.Sub(b.From), t)
		if b.IsLine() {
			return q
		}
		v := q.Sub(b.Center)
		return b.Center.Along(v, b.Radius()/v.Len())
	}
	const golden = 0.6180339887498949
	lo, hi := 0.0, 1.0
	value := func(t float64) float64 {
		q := at(t)
		if x, y := w.sides(q); x <= 0 || y <= 0 {
			return min(x, y)
		}
		return w.radius(q)
	}
	for range 60 {
		x, y := hi-float64(golden*(hi-lo)), lo+float64(golden*(hi-lo))
		if value(x) < value(y) {
			lo = x
		} else {
			hi = y
		}
	}
	take(at((lo + hi) / 2))
	take(at(0.5))
}
