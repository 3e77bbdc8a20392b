package verify

import (
	"math"

	"taperwright/profiles"
	"taperwright/profiles/geom"
)

// sides returns the lines that a fillet or corner lies between, as cut. At an
// end of the contour the missing one is the aim's own tangent, moved to where
// the boundary begins or ends.
func (b *builder) sides(c *corner, bits []bit, mains []*spot) (x, y line) {
	if c != nil {
		return c.a.cut, c.b.cut
	}
	p := b.f.Piece
	x, y = line{p.From, p.StartDir()}, line{p.To, p.EndDir()}
	for _, s := range mains {
		if s.index > b.row.Feature && s.found {
			y = s.cut
			if len(bits) > 0 {
				x.p = bits[0].From
			}
			return x, y
		}
	}
	for _, s := range mains {
		if s.index < b.row.Feature && s.found {
			x = s.cut
		}
	}
	return x, y
}

// fillet judges a fillet, a rounding or an untreated inside corner.
func (b *builder) fillet(c *corner, bits []bit, mains []*spot) {
	x, y := b.sides(c, bits, mains)
	w, ok := newWedge(x, y)
	if b.f.Kind == profiles.Corner {
		b.row.Wanted = append(b.row.Wanted, Figure{Key: "radius_mm", Decimals: lengthPlaces})
	} else {
		b.row.Wanted = append(b.row.Wanted, Figure{"radius_mm", geom.Round(b.f.Fillet.Aim, lengthPlaces), true, lengthPlaces})
	}
	if !ok || c != nil && !(c.a.found && c.b.found) { // no corner without its two sides: their own rows say so
		b.row.Cut = append(b.row.Cut, Figure{Key: "radius_mm", Decimals: lengthPlaces})
		b.row.Verdict = CannotJudge
		return
	}
	if w.sign > 0 {
		b.hollow(c, w, bits)
	} else {
		b.rounding(c, w, bits, mains)
	}
}

// cutRadius writes the radius cut with its limits.
func (b *builder) cutRadius(r float64) (inside bool) {
	b.row.Cut = append(b.row.Cut, Figure{"radius_mm", geom.Round(r, lengthPlaces), true, lengthPlaces})
	low := b.f.Fillet.Low
	if b.f.Kind == profiles.Corner {
		low = 0
	} else {
		b.differ("radius_mm", "radius_mm", lengthPlaces)
	}
	return b.limit("radius_mm", lengthPlaces, low, b.f.Fillet.High, r)
}

// zone returns how far the corner zone reaches along each line:
// R tan(turn/2), R the most allowed; tan(turn/2) = cot(half the angle between
// the lines).
func (w wedge) zone(r float64) float64 { return r * math.Sqrt(w.k) }

// hollow judges metal left in an inside corner: the largest touching arc
// through any of it (definitions 7).
func (b *builder) hollow(c *corner, w wedge, bits []bit) {
	// three zones around: metal that only a far larger arc would touch counts
	zone := max(w.zone(b.f.Fillet.High), 0.05)
	wide := 3 * zone
	if c != nil {
		// but not as far as the corner at the neighbour's other end
		for _, s := range [2]*spot{c.a, c.b} {
			if !s.face() {
				wide = min(wide, s.f.Piece.Length()/2)
			}
		}
	}
	around := beside(bits, w.tip, wide, 3*zone)
	least, most, any := w.reach(around)
	b.bits = beside(bits, w.tip, min(wide, zone), zone)
	r := 0.0
	if any {
		r = most.value
	}
	inside := b.cutRadius(r)
	limit := size(b.f.Fillet.High)
	switch {
	case !inside && geom.Count(r, lengthPlaces) > geom.Count(b.f.Fillet.High, lengthPlaces):
		b.fault(fault{code: CodeMetalLeft, amount: r - b.f.Fillet.High, at: most,
			text: "keeps a radius of " + size(r) + ", at most " + limit + " is allowed",
			help: "the mate's edge would touch here first"})
	case b.f.Kind == profiles.Fillet && (!inside || geom.Count(least.value, lengthPlaces) < geom.Count(b.f.Fillet.Low, lengthPlaces)):
		b.fault(fault{code: CodeWrongEdge, amount: b.f.Fillet.Low - least.value, at: reading{at: w.tip, owner: ownerAt(b.bits)},
			text: "has a radius of " + size(least.value) + ", at least " + size(b.f.Fillet.Low) + " is wanted"})
	}
	b.notch(c, w)
}

// notch looks for metal gone behind the lines within the corner zone, which
// no other row speaks of.
func (b *builder) notch(c *corner, w wedge) {
	if c == nil {
		return
	}
	for _, side := range [2]struct {
		s *spot
		l line
	}{{c.a, w.a}, {c.b, w.b}} {
		least, _, ok := normalTo(side.l).extremes(b.bits)
		if ok && geom.Count(-least.value-max(side.s.lowRoom(), onLine), lengthPlaces) > 0 {
			b.fault(fault{code: CodeGouge, amount: -least.value, at: least,
				text: "is cut " + size(-least.value) + " behind " + side.s.f.Name + " at " + b.place(least.at)})
			return
		}
	}
}

// lowRoom is how much deeper than its aim a feature may be, normal to it.
func (s *spot) lowRoom() float64 {
	switch s.f.Kind {
	case profiles.Journal:
		return s.f.Radius.Aim - s.f.Radius.Low
	case profiles.Taper:
		return s.f.Cone.Gauge.Aim - s.f.Cone.Gauge.Low
	}
	return s.f.Z.Aim - s.f.Z.Low
}

// beside returns the bits near p: within z of it along the axis and within r
// of it across.
func beside(bits []bit, p geom.Point, z, r float64) []bit {
	return ring(between(bits, p.Z+z, p.Z-z), p.R-r, p.R+r)
}

func ownerAt(bits []bit) int {
	if len(bits) == 0 {
		return -1
	}
	return bits[len(bits)/2].owner
}

// rounding judges an arc on an outside corner: its radius where it crosses
// the bisector, its form against the arc of that aim between the cut lines.
func (b *builder) rounding(c *corner, w wedge, bits []bit, mains []*spot) {
	f := b.f
	var e *edge
	if c != nil {
		e = c.edge
	} else {
		before, behind := beforeAndBehind(mains, b.row.Feature)
		if e = findEdge(f, before, behind, bits); e != nil && before == nil && behind != nil {
			e.bits = between(bits, math.Inf(1), behind.lead.Z) // all that stands before the first main is its own
		}
	}
	if e == nil {
		b.cutRadius(0)
		if geom.Count(f.Fillet.Low, lengthPlaces) > 0 {
			b.fault(fault{code: CodeWrongEdge, amount: f.Fillet.Aim, at: reading{at: f.Piece.From, owner: -1},
				text: "is not there: the edge was left sharp"})
		}
		return
	}
	b.bits = e.bits
	gain := 1/w.s - 1 // from the tip to the arc along the bisector, per unit of radius
	ray := geom.Line(w.tip, w.tip.Along(w.u, float64(3*f.Fillet.Aim*gain)+1))
	r := 0.0
	for _, x := range e.bits {
		for _, q := range geom.Crossings(ray, x.Piece) {
			r = max(r, q.Sub(w.tip).Len()/gain)
		}
	}
	inside := b.cutRadius(r)
	// the arc of the aim, touching the lines as cut
	centre := w.tip.Along(w.u, f.Fillet.Aim/w.s)
	left, gone, ok := roundness(e.bits, centre, f.Fillet.Aim)
	b.off("most_left_normal_mm", lengthPlaces, max(0, left.value), ok)
	b.off("deepest_gouge_normal_mm", lengthPlaces, max(0, gone.value), ok)
	switch {
	case !inside:
		b.fault(fault{code: CodeWrongEdge, amount: math.Abs(r - f.Fillet.Aim), at: gone,
			text: "has a radius of " + size(r) + ", wanted " + size(f.Fillet.Low) + " to " + size(f.Fillet.High)})
	case geom.Count(left.value-float64(gain*(f.Fillet.Aim-f.Fillet.Low)), lengthPlaces) > 0:
		b.fault(fault{code: CodeMetalLeft, amount: left.value, at: left,
			text: "stands " + size(left.value) + " proud of its arc at " + b.place(left.at)})
	case geom.Count(gone.value-float64(gain*(f.Fillet.High-f.Fillet.Aim)), lengthPlaces) > 0:
		b.fault(fault{code: CodeGouge, amount: gone.value, at: gone,
			text: "is cut " + size(gone.value) + " below its arc at " + b.place(gone.at)})
	}
}

// beforeAndBehind returns the mains next to feature i, nil at an end: a ball
// end stands behind no face, but before its stem.
func beforeAndBehind(mains []*spot, i int) (before, behind *spot) {
	for _, s := range mains {
		if s.index < i {
			before = s
		} else if s.index > i {
			return before, s
		}
	}
	return before, nil
}

// roundness returns how far bits stand outside the circle and how far inside
// it. On a line or an arc the distance from a centre is extreme at its ends
// and where the centre is square to it.
func roundness(bits []bit, centre geom.Point, r float64) (left, gone reading, ok bool) {
	for _, b := range bits {
		take := func(q geom.Point) {
			d := q.Sub(centre).Len() - r
			if !ok || geom.Count(d, 7) > geom.Count(left.value, 7) {
				left = reading{d, q, b.owner}
			}
			if !ok || geom.Count(-d, 7) > geom.Count(gone.value, 7) {
				gone = reading{-d, q, b.owner}
			}
			ok = true
		}
		take(b.From)
		take(b.To)
		if b.IsLine() {
			take(b.Nearest(centre))
			continue
		}
		if v := b.Center.Sub(centre); v.Len() > geom.Near {
			for _, s := range [2]float64{1, -1} {
				if q := b.Center.Along(v.Unit(), s*b.Radius()); b.On(q) {
					take(q)
				}
			}
		}
	}
	return left, gone, ok
}
