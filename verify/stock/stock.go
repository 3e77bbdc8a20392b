// Package stock cuts a bar, move by move, with the real insert, and keeps what
// remains: in the half plane (z, r) the metal between an inner and an outer
// boundary, each a chain of exact lines and arcs over z with steps.
//
// A turning tool only translates, so its sweep along a line or an arc is
// bounded by lines and arcs (envelope.go). A cut lowers the outer boundary to
// the lower envelope of that sweep and visits only the pieces in its z range
// (cut.go, profile.go). It knows neither the program nor the wanted part, and
// raises no findings: it measures.
package stock

import (
	"math"

	"taperwright/profiles/geom"
)

// Raw is the owner of a surface that no move has made.
const Raw = -1

// Hold is what keeps the work: metal no longer joined to it falls off. The
// zero Hold means the stock's back end (its least z).
type Hold struct {
	Known     bool
	Low, High float64 // the gripped z range, mm
}

// Stock is what remains of the material. It is not safe for concurrent use.
type Stock struct {
	outer     *profile
	floor     *floor
	low, high float64 // the held z range
	scan      scan
	tool      tool
	clipped   []stretch
	cut       envelopes
}

// New returns stock between the outer chain (r over z, front to back or back
// to front, with or without its end faces) and the inner one (a bore, nil when
// solid). Where the outer chain overhangs, what is under it counts as solid;
// where it leaves a gap in z there is no metal.
func New(outer, inner geom.Chain, hold Hold) *Stock {
	s := &Stock{floor: newFloor(stretches(inner))}
	var spans []span
	z := -farAway
	void := func(to float64) {
		for _, f := range s.floor.over(nil, z, to) {
			spans = append(spans, span{z: f.a, c: f.c, owner: gone, wall: Raw})
		}
	}
	s.low, s.high = farAway, farAway
	for _, o := range s.floor.clip(nil, stretches(outer)) {
		if o.a > z {
			void(o.a)
		}
		p := span{z: o.a, c: o.c, owner: Raw, wall: Raw}
		if o.void {
			p.owner = gone
		} else if s.low == farAway {
			s.low, s.high = o.a, o.a
		}
		spans = append(spans, p)
		z = o.b
	}
	void(farAway)
	s.outer = newProfile(spans)
	if hold.Known {
		s.low, s.high = hold.Low, hold.High
	}
	return s
}

// Removed is what one move did, or would do.
type Removed struct {
	Area    float64    // section area cut, mm^2; without loose metal, and without what is cut under metal that stays, which counts when that goes
	Depth   float64    // deepest point of the cut below the surface it met, normal to that, mm
	At      geom.Point // where
	Body    float64    // how deep holder or shank were in metal, mm; 0: they were not
	BodyAt  geom.Point // where
	Loose   []Loose    // metal that fell off; Probe does not tell
	Visited int        // pieces of the boundary that were looked at
}

// Loose is metal that fell off the held work.
type Loose struct {
	Low, High float64 // its extent along z, mm
	Area      float64 // section area, mm^2
	Chip      bool    // no larger than what the same move cut: a chip; else parted. With unknown flanks also a slice no longer than the edge assumed: the ring that facing with the nose alone leaves standing
}

// Surface is one piece of the boundary and the move that last made it.
type Surface struct {
	Piece geom.Piece
	Owner int // as given to Cut; Raw: raw stock
}

// Cut removes what the outline sweeps along the path of its nose centre, in
// the name of owner (0 to 2^31-1).
func (s *Stock) Cut(o *Outline, path geom.Piece, owner int) Removed {
	return s.sweep(o, path, int32(owner), true)
}

// Probe tells what Cut would do, loose metal apart, and changes nothing.
func (s *Stock) Probe(o *Outline, path geom.Piece) Removed {
	if !path.IsLine() && len(cutAtSides(path)) > 1 {
		s = s.Clone() // later parts of the arc must find the earlier ones cut
	}
	res := s.sweep(o, path, 0, false)
	res.Loose = nil
	return res
}

// Clone returns a copy that shares nothing with s.
func (s *Stock) Clone() *Stock {
	return &Stock{outer: s.outer.clone(), floor: s.floor, low: s.low, high: s.high}
}

func (s *Stock) sweep(o *Outline, path geom.Piece, owner int32, commit bool) (res Removed) {
	if !finite(path) || len(o.lower) == 0 {
		return res
	}
	if path.IsLine() {
		s.part(o, path, owner, commit, &res)
	} else {
		ps := cutAtSides(path)
		for _, p := range ps {
			s.part(o, p, owner, commit || len(ps) > 1, &res)
		}
	}
	for i := range res.Loose {
		l := &res.Loose[i]
		l.Chip = l.Area <= res.Area || !o.flanks && l.High-l.Low <= assumedEdge
	}
	return res
}

// finite tells whether a path is one: numbers, within the axis.
func finite(p geom.Piece) bool {
	for _, q := range [3]geom.Point{p.From, p.To, p.Center} {
		if !(math.Abs(q.Z) < farAway/2 && math.Abs(q.R) < farAway/2) {
			return false
		}
	}
	return true
}

// part cuts along a path that is a graph over z.
func (s *Stock) part(o *Outline, path geom.Piece, owner int32, commit bool, res *Removed) {
	s.tool.set(o, path)
	w := &s.tool.way
	low := w.low() - o.dip
	a := w.from.Z + o.lower[0].from.Z
	b := w.to.Z + o.lower[len(o.lower)-1].to.Z
	if s.outer.clears(a, b, max(low, 0)+skin) {
		return
	}
	g := s.cut.lower(o.lower, w)
	if low <= s.floor.top+skin {
		s.clipped = s.floor.clip(s.clipped[:0], g)
		g = s.clipped
	}
	if len(g) == 0 {
		return
	}
	k := s.start(g, low, owner, res)
	k.run()
	if k.depth.d > res.Depth {
		res.Depth, res.At = k.depth.d, k.depth.at
	}
	if k.shank.d > res.Body {
		res.Body, res.BodyAt = k.shank.d, k.shank.at
	}
	if !commit {
		s.outer.forget(k)
		return
	}
	k.commit()
	s.shed(k.voids, owner, res)
}

// start readies the scan, keeping its scratch space.
func (s *Stock) start(g []stretch, low float64, owner int32, res *Removed) *scan {
	k := &s.scan
	*k = scan{
		p: s.outer, floor: s.floor, g: g, owner: owner, tool: &s.tool, res: res,
		thin:  low <= s.floor.top+skin,
		edits: k.edits[:0], out: k.out[:0], voids: k.voids[:0],
		depth: deep{d: res.Depth}, shank: deep{d: res.Body},
		courses: len(s.outer.courses), hiding: len(s.outer.hiding),
	}
	return k
}

// Area returns the section area left, mm^2.
func (s *Stock) Area() float64 {
	var sum float64
	for i, c := range s.outer.chunks {
		for k := range c.s {
			if sp := &c.s[k]; sp.owner != gone {
				a, b := sp.z, s.outer.end(place{i, k})
				sum += sp.c.area(a, b)
				for _, f := range s.floor.over(nil, a, b) {
					sum -= f.c.area(f.a, f.b)
				}
			}
		}
	}
	return sum
}
