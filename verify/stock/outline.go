package stock

import (
	"taperwright/profiles/geom"
	"taperwright/profiles/shop"
)

// Outline is the outline of a cutting edge as a closed convex shape about its
// nose centre, mm: nose, main edge and minor edge tangent to it, and the
// parallelogram the edges span.
//
// Above the insert is holder or shank, with one exception: an edge that leans
// back over the nose (a tool cutting edge angle above 90 degrees) has nothing
// in front of it. Metal that overhangs such an edge is neither cut nor hit; it
// stays until a later move takes it.
type Outline struct {
	lower  []facet    // the part that cuts
	upper  []facet    // the insert's far side, mirrored (r -> -r); nil: not known, no body is judged
	lean   []facet    // the leaning edge prolonged, mirrored (r -> -r); nil: none leans
	flanks bool       // the edges are known
	right  bool       // it is the right edge that leans; lean is then mirrored in z too
	dip    float64    // the lowest point lies this far below the nose centre
	crown  float64    // the upper boundary is nowhere lower than this above the nose centre, a leaning edge apart
	tall   float64    // the cutting edge reaches this high above the nose centre
	shift  geom.Point // from programmed point to nose centre
}

// longEdge stands for the prolongation of a leaning edge, mm: longer than any
// bar is thick.
const longEdge = 1e4

// upright: an edge that leans less than this (direction, so radians) counts as
// upright; over the 13 mm of a usual edge it leans less than 2e-8 mm.
const upright = 1e-9

// assumedEdge is the height of the cutting edge where it is not given, mm
// (common practice: edges of 9 to 16 mm). It only decides when a tool counts
// as working beyond the axis.
const assumedEdge = 10

// OutlineOf returns the outline of a tool, and what of it cannot be judged
// because it is not given. With the nose alone a main edge at 90 degrees is
// assumed, the minor edge never touches, and no body is judged.
func OutlineOf(t *shop.Tool) (Outline, []string) {
	o := Outline{shift: Centre(t), dip: t.Nose, tall: assumedEdge}
	r := t.Nose
	disc := []geom.Piece{geom.Arc(geom.Point{Z: -r}, geom.Point{Z: r}, geom.Point{}, geom.CCW)}
	switch {
	case t.Round:
		o.lower, o.upper, o.tall, o.flanks = facets(disc), facets(disc), r, true
		return o, nil
	case !edgesKnown(t):
		o.lower = facets(disc)
		return o, []string{"insert flanks (a main edge at 90 degrees is assumed, the minor edge never touches)", "holder and shank"}
	}
	o.edges(t)
	return o, nil
}

// edgesKnown tells whether a tool's flanks are given and hold the nose.
func edgesKnown(t *shop.Tool) bool {
	e, main, minor := t.Included.Value, t.MainReach.Value, t.MinorReach.Value
	if !(t.CuttingAngle.Value > 0 && e > 0 && main > 0 && minor > 0 && t.MinorAngle() > 0) {
		return false
	}
	// The nose meets both edges R / tan(included/2) from the sharp corner.
	tangent := t.Nose / geom.Tan(e/2)
	return tangent < main && tangent < minor
}

// edges builds the corner between two edges and the parallelogram they span.
func (o *Outline) edges(t *shop.Tool) {
	r, main, minor := t.Nose, t.CuttingAngle.Value, t.MinorAngle()
	// A right-hand tool: directions up the two edges, and out of them.
	up := geom.Point{Z: 0 - geom.Cos(main), R: geom.Sin(main)}
	back := geom.Point{Z: geom.Cos(minor), R: geom.Sin(minor)}
	outMain := geom.Point{Z: -up.R, R: up.Z}
	outMinor := geom.Point{Z: back.R, R: -back.Z}
	a, b := outMain.Times(r), outMinor.Times(r) // ends of the nose
	corner := a.Along(up, -r/geom.Tan(t.Included.Value/2))
	c1, c2 := corner.Along(up, t.MainReach.Value), corner.Along(back, t.MinorReach.Value)
	far := c1.Along(back, t.MinorReach.Value)
	ring := []geom.Piece{
		geom.Line(c1, a), geom.Arc(a, b, geom.Point{}, geom.CCW),
		geom.Line(b, c2), geom.Line(c2, far), geom.Line(far, c1),
	}
	// The edge that leans, if any, as if it were the left one.
	from, along, leans := a, up, up.Z > upright
	if back.Z < -upright {
		from, along, leans, o.right = geom.Point{Z: -b.Z, R: b.R}, geom.Point{Z: -back.Z, R: back.R}, true, true
	}
	if !t.Right {
		for i, p := range ring {
			ring[i] = p.MirrorZ().Reverse()
		}
		o.right = o.right != leans
	}
	o.split(ring)
	if leans {
		side := geom.Point{Z: -r}
		o.lean = facets([]geom.Piece{
			geom.Arc(side, from, geom.Point{}, geom.CW).MirrorR(),
			geom.Line(from, from.Along(along, longEdge)).MirrorR(),
		})
	}
	o.flanks = true
	o.dip, o.tall = r, r
	for _, p := range []geom.Point{a, b, c1, c2} {
		o.dip, o.tall = max(o.dip, -p.R), max(o.tall, p.R)
	}
	o.crown = min(far.R, c1.R, c2.R)
}

// split sorts the pieces of a counterclockwise ring into the lower boundary
// and the upper one. Upright edges belong to neither.
func (o *Outline) split(ring []geom.Piece) {
	var lower, upper []geom.Piece
	for _, p := range ring {
		for _, q := range cutAtSides(p) {
			switch w := q.To.Z - q.From.Z; {
			case w > sliver:
				lower = append(lower, q)
			case w < -sliver:
				upper = append(upper, q.Reverse().MirrorR())
			}
		}
	}
	sortByZ(lower)
	sortByZ(upper)
	o.lower, o.upper = facets(lower), facets(upper)
}

func sortByZ(ps []geom.Piece) {
	for i := range ps { // a handful
		for j := i; j > 0 && ps[j].From.Z < ps[j-1].From.Z; j-- {
			ps[j], ps[j-1] = ps[j-1], ps[j]
		}
	}
}

// cutAtSides cuts an arc at the leftmost and rightmost point of its circle, so
// that each part is the graph of a function of z.
func cutAtSides(p geom.Piece) []geom.Piece {
	if p.IsLine() {
		return []geom.Piece{p}
	}
	var parts []geom.Piece
	for range 3 { // an arc of less than a circle passes the sides at most twice
		at, ok := nextSide(p)
		if !ok {
			break
		}
		parts = append(parts, geom.Arc(p.From, at, p.Center, p.Turn))
		p.From = at
	}
	return append(parts, p)
}

// sideSlip: an arc that ends this near to the side of its circle, mm along the
// arc, ends there. What is left out is sideSlip^2/2R wide in z, 5e-14 mm at
// R 0.1.
const sideSlip = 1e-7

// nextSide returns the first leftmost or rightmost point strictly inside an arc.
func nextSide(p geom.Piece) (geom.Point, bool) {
	r := p.Radius()
	right := geom.Point{Z: p.Center.Z + r, R: p.Center.R}
	left := geom.Point{Z: p.Center.Z - r, R: p.Center.R}
	whole := p.Sweep()
	first, found := geom.Point{}, false
	for _, q := range [2]geom.Point{right, left} {
		s := geom.Arc(p.From, q, p.Center, p.Turn).Sweep()
		// A side within a sliver of an end is that end.
		if float64(s*r) > sideSlip && float64(s*r) < float64(whole*r)-sideSlip {
			found, first, whole = true, q, s
		}
	}
	return first, found
}

// Centre returns what takes the programmed point to the nose centre:
// centre = point - R (sign z, sign x), componentwise.
func Centre(t *shop.Tool) geom.Point {
	return geom.Point{Z: 0 - float64(t.Nose*float64(t.TipZ)), R: 0 - float64(t.Nose*float64(t.TipX))}
}

// Path returns the path of the nose centre for a path of the programmed point.
//
// far says on which side of the axis the tool works: once its whole edge is
// beyond the axis (X < 0) it cuts as its mirror image, until its whole edge is
// back. Path reads *far for this move and sets it for the next.
func (o *Outline) Path(point geom.Piece, far *bool) geom.Piece {
	p := point
	if *far {
		p = p.MirrorR()
	}
	p = p.Shift(o.shift)
	// Highest point of the edge on the tool's own side after the move.
	if p.To.R+o.tall < 0 {
		*far = !*far
	}
	return p
}
