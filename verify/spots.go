package verify

import (
	"math"

	"taperwright/profiles"
	"taperwright/profiles/geom"
)

// spot is one wanted feature found again on the boundary that is left.
//
// Journals and tapers share the z axis out among themselves: each reaches from
// the corner with the one before to the corner with the one after, the corners
// being where the cut lines meet, not where the drawing has them. So a face
// cut 0.1 mm early costs its neighbours nothing, and no piece of the boundary
// goes unjudged except the corner zones, which have rows of their own.
type spot struct {
	f     *profiles.Feature
	index int
	want  line // along the wanted contour
	cut   line // as found; want when not found
	found bool
	bits  []bit   // its own metal, corner zones left out: what lines are fitted to
	room  []room  // the boundary that must lie within its permitted surfaces
	from  float64 // z of its corners as cut (a face: r), before treatments
	to    float64
	lead  geom.Point // where its metal begins and ends as cut
	trail geom.Point
	first int // a face: index of its bits in the boundary
	last  int
}

func (s *spot) face() bool { return s.f.Kind == profiles.Shoulder }

// main tells whether f carries the contour; chamfers, fillets and corners
// only treat what stands between two of these.
func main(f *profiles.Feature) bool {
	return f.Kind == profiles.Journal || f.Kind == profiles.Taper || f.Kind == profiles.Shoulder
}

// wantLine is the line that f's aim lies on; the zero line for arcs.
func wantLine(f *profiles.Feature) line { return lineOf(f.Piece) }

// locate finds the mains among features (indexes, contour order) on bits.
func locate(part *profiles.Part, features []int, bits []bit) []*spot {
	var mains []*spot
	for _, i := range features {
		if f := &part.Features[i]; main(f) && f.Piece.From != f.Piece.To {
			s := &spot{f: f, index: i, want: wantLine(f), first: -1}
			s.cut = s.want
			mains = append(mains, s)
		}
	}
	for _, s := range mains {
		if !s.face() {
			s.core(bits)
		}
	}
	for k, s := range mains {
		if s.face() {
			front, back := math.Inf(1), math.Inf(-1)
			if k > 0 {
				front = mid(mains[k-1], 0.75)
			}
			if k+1 < len(mains) {
				back = mid(mains[k+1], 0.25)
			}
			s.wall(bits, front, back)
		}
	}
	return mains
}

// mid returns the z at a share of the way along the wanted piece of s.
func mid(s *spot, share float64) float64 {
	p := s.f.Piece
	return p.From.Z + float64(share*(p.To.Z-p.From.Z))
}

// core finds the line of a journal or taper from the middle half of its
// length, where no neighbour's fault reaches.
func (s *spot) core(bits []bit) {
	if l, ok := fit(between(bits, mid(s, 0.25), mid(s, 0.75)), s.want); ok && l.d.Z < 0 {
		s.cut, s.found = l, true
	}
}

// wall finds a face: of the runs between front and back that rise (or fall)
// as the face does, the one that covers most of its height; of equals the
// nearest.
func (s *spot) wall(bits []bit, front, back float64) {
	low, high := s.f.Piece.From.R, s.f.Piece.To.R
	if low > high {
		low, high = high, low
	}
	steep := math.Sqrt2 / 2 // 45 degrees from the face: flatter is a neighbour's
	type run struct {
		first, last int
		cover, away float64
	}
	var best run
	have := false
	for i := 0; i < len(bits); i++ {
		if bits[i].chord().Dot(s.want.d) <= steep || bits[i].From.Z > front || bits[i].To.Z < back {
			continue
		}
		r := run{first: i, last: i}
		for r.last+1 < len(bits) && bits[r.last+1].chord().Dot(s.want.d) > steep {
			r.last++
		}
		i = r.last
		a, b := bits[r.first].From, bits[r.last].To
		r.cover = min(high, max(a.R, b.R)) - max(low, min(a.R, b.R))
		z := float64((a.Z + b.Z) / 2)
		r.away = math.Abs(z - s.f.Z.Aim)
		if geom.Count(r.cover, 3) <= 0 {
			continue
		}
		more := geom.Count(r.cover, 3) - geom.Count(best.cover, 3)
		if !have || more > 0 || more == 0 && geom.Count(r.away, 4) < geom.Count(best.away, 4) {
			best, have = r, true
		}
	}
	if !have {
		return
	}
	s.found, s.first, s.last = true, best.first, best.last
	longest := bits[best.first]
	for _, b := range bits[best.first : best.last+1] {
		if geom.Count(math.Abs(b.To.R-b.From.R), 7) > geom.Count(math.Abs(longest.To.R-longest.From.R), 7) {
			longest = b
		}
	}
	s.cut = line{geom.Point{Z: (longest.From.Z + longest.To.Z) / 2, R: longest.From.R}, s.want.d}
}

// edge returns the z at which the wall begins (start) or ends, on the
// boundary itself.
func (s *spot) edge(bits []bit, start bool) float64 {
	switch {
	case !s.found:
		return s.f.Z.Aim
	case start:
		return bits[s.first].From.Z
	}
	return bits[s.last].To.Z
}

// corner is where two mains meet, a before b.
type corner struct {
	a, b   *spot
	want   geom.Point // where their aims meet
	cut    geom.Point // where the cut ones do
	sharp  bool       // the aims meet at all
	hollow bool       // an inside corner
	treats []int      // features between: chamfers, fillets, corner rows
	edge   *edge      // the treatment found on an outside corner
}

// corners returns the corners between neighbouring mains.
func corners(part *profiles.Part, features []int, mains []*spot, bits []bit) []*corner {
	var out []*corner
	for k := 0; k+1 < len(mains); k++ {
		a, b := mains[k], mains[k+1]
		c := &corner{a: a, b: b}
		c.want, c.sharp = a.want.meets(b.want)
		if !c.sharp {
			c.want = a.f.Piece.To
		}
		c.hollow = a.want.d.Cross(b.want.d) < 0
		c.cut = c.meet(bits)
		for _, i := range features {
			if i > a.index && i < b.index {
				c.treats = append(c.treats, i)
			}
		}
		out = append(out, c)
	}
	return out
}

// meet returns where the cut lines of a and b meet.
func (c *corner) meet(bits []bit) geom.Point {
	a, b := c.a, c.b
	switch {
	case a.face() && b.face():
		return c.want
	case b.face():
		z := b.cut.p.Z
		if !c.hollow || !b.found {
			z = b.edge(bits, true)
		}
		return geom.Point{Z: z, R: a.cut.rAt(z)}
	case a.face():
		z := a.cut.p.Z
		if !c.hollow || !a.found {
			z = a.edge(bits, false)
		}
		return geom.Point{Z: z, R: b.cut.rAt(z)}
	}
	// Lines nearly along one another may meet anywhere: no further than a
	// quarter of the shorter one, the part its core did not look at.
	at, ok := a.cut.meets(b.cut)
	reach := min(a.f.Piece.Length(), b.f.Piece.Length()) / 4
	if !ok || !a.found || !b.found || math.Abs(at.Z-c.want.Z) > reach {
		return geom.Point{Z: c.want.Z, R: a.cut.rAt(c.want.Z)}
	}
	return at
}

// claim gives every main its metal: from corner to corner, less the corner
// zones that Judged leaves out of Piece, moved to where the corners are.
func claim(mains []*spot, cs []*corner, bits []bit) {
	for k, s := range mains {
		lead, trail := s.f.Judged.From, s.f.Judged.To
		if lead == trail { // nothing but corner zone: judge where it is farthest from the corner
			lead, trail = s.f.Piece.From, s.f.Piece.To
			if k > 0 && cs[k-1].hollow && !(k < len(cs) && cs[k].hollow) {
				lead = trail
			} else if k < len(cs) && cs[k].hollow {
				trail = lead
			}
		}
		s.from, s.to = s.along(s.f.Piece.From), s.along(s.f.Piece.To)
		if k > 0 {
			c := cs[k-1]
			s.from = s.along(c.cut)
			lead = lead.Add(c.cut.Sub(c.want))
			if c.edge != nil {
				lead = c.edge.trail
			}
		}
		if k < len(cs) {
			c := cs[k]
			s.to = s.along(c.cut)
			trail = trail.Add(c.cut.Sub(c.want))
			if c.edge != nil {
				trail = c.edge.lead
			}
		}
		s.lead, s.trail = lead, trail
		if s.face() {
			s.takeFace(bits, k == 0)
		} else {
			s.bits = between(bits, lead.Z, trail.Z)
			s.rooms(bits, k, mains, cs)
			if l, ok := fit(s.bits, s.want); ok && l.d.Z < 0 {
				s.cut, s.found = l, true
			} else {
				s.found = false
			}
		}
	}
}

// room is a stretch of the boundary over a feature. Within the length
// tolerance of a plane that two cones or cylinders share, the boundary may
// follow either of them.
type room struct {
	bits []bit
	or   *spot // the neighbour it may follow instead; nil: none
}

// rooms shares out the boundary over a journal or taper: from plane to plane
// as wanted where a cone or cylinder is its neighbour, so that a cone which
// comes too early cannot hide in a shorter journal; from edge to edge as cut
// where a face or a chamfer is, whose own row speaks of its place.
func (s *spot) rooms(bits []bit, k int, mains []*spot, cs []*corner) {
	front, back := s.lead.Z, s.trail.Z
	var before, after *spot
	if k > 0 && cs[k-1].edge == nil && !mains[k-1].face() {
		before, front = mains[k-1], s.f.Judged.From.Z
	}
	if k < len(cs) && cs[k].edge == nil && !mains[k+1].face() {
		after, back = mains[k+1], s.f.Judged.To.Z
	}
	lo, hi := back, front
	if before != nil {
		hi = max(min(hi, s.f.ZFrom.Low), lo)
	}
	if after != nil {
		lo = min(max(lo, s.f.ZTo.High), hi)
	}
	s.room = []room{{between(bits, hi, lo), nil}}
	if before != nil && hi < front {
		s.room = append([]room{{between(bits, front, hi), before}}, s.room...)
	}
	if after != nil && lo > back {
		s.room = append(s.room, room{between(bits, lo, back), after})
	}
}

// all returns the boundary over s.
func (s *spot) all() []bit {
	if len(s.room) == 0 {
		return s.bits
	}
	var out []bit
	for _, r := range s.room {
		out = append(out, r.bits...)
	}
	return out
}

// along returns the coordinate of a place along s: z, on a face r.
func (s *spot) along(p geom.Point) float64 {
	if s.face() {
		return p.R
	}
	return p.Z
}

// takeFace takes the wall's bits between its ends. The front face is all that
// the boundary has before it turns back, pips included.
func (s *spot) takeFace(bits []bit, front bool) {
	if !s.found {
		return
	}
	first := s.first
	low, high := min(s.lead.R, s.trail.R), max(s.lead.R, s.trail.R)
	if front && s.f.Piece.From.R == 0 {
		first, low = 0, -1
	}
	own := bits[first : s.last+1]
	s.bits = ring(own, low, high)
	if len(s.bits) == 0 { // all corner zone: the end that is farthest from it
		b := own[len(own)-1]
		if geom.Count(s.trail.R, 4) != geom.Count(s.f.Piece.To.R, 4) {
			b = own[0]
			b.To = b.From
		} else {
			b.From = b.To
		}
		b.Turn = geom.Straight
		s.bits = []bit{b}
	}
	if l, ok := fit(s.bits, s.want); ok {
		s.cut = l
	} else {
		s.cut = line{s.bits[0].From, s.want.d}
	}
}
