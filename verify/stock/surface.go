package stock

import (
	"math"
	"strconv"
	"strings"

	"taperwright/profiles/geom"
)

// Outside returns the outer boundary from the axis (or the bore) at the front
// face to the back, and down the back face. Faces are vertical pieces. Each
// piece begins where the last ended, except over a gap where no metal is left.
func (s *Stock) Outside() []Surface {
	var out []Surface
	p := s.outer
	at := p.find(farAway)
	for {
		sp := p.at(at)
		if sp.owner != gone {
			b := p.end(at)
			from := geom.Point{Z: b, R: sp.c.tip(b)}
			if n := len(out); n > 0 && out[n-1].Piece.To.Z == b {
				from.R = out[n-1].Piece.To.R
			}
			to := geom.Point{Z: sp.z, R: sp.c.tip(sp.z)}
			out = append(out, Surface{sp.c.leftward(from, to), int(sp.owner)})
		}
		l, ok := p.prev(at)
		if !ok {
			return out
		}
		out = s.face(out, p.at(l), sp)
		at = l
	}
}

// face appends the step between two spans, run from right to left.
func (s *Stock) face(out []Surface, l, r *span) []Surface {
	z := r.z
	a, b := l.c.tip(z), r.c.tip(z)
	// The step is a face of the metal on its high side, down to that side's bore.
	high := l
	if b > a {
		high = r
	}
	if high.owner == gone {
		return out
	}
	lo, hi := max(min(a, b), s.floor.beside(z, high == r)), max(a, b)
	if hi-lo <= step {
		return out
	}
	n := len(out)
	s.outer.inCourses(r.wall, lo, hi, func(lo, hi float64, owner int32) {
		out = append(out, Surface{geom.Line(geom.Point{Z: z, R: lo}, geom.Point{Z: z, R: hi}), int(owner)})
	})
	if high == r { // run downward
		for i, j := n, len(out)-1; i <= j; i, j = i+1, j-1 {
			out[i], out[j] = out[j], out[i]
			out[i].Piece = out[i].Piece.Reverse()
			if i != j {
				out[j].Piece = out[j].Piece.Reverse()
			}
		}
	}
	return out
}

// upend: a piece that ends this near to the side of its circle, mm along z, is
// said to end there. Its end then lies this far off the circle at most; told
// from z it would be off by sqrt(2 R ulp(z)), 1e-7 mm, along the upright.
const upend = 1e-12

// tip is at for an end of a piece that is shown.
func (c *curve) tip(z float64) float64 {
	if c.bend != line && math.Abs(z-c.z) > c.k-upend {
		return c.r
	}
	return c.at(z)
}

// leftward returns the piece of a curve from from down to a lesser z.
func (c *curve) leftward(from, to geom.Point) geom.Piece {
	if c.bend == line {
		return geom.Line(from, to)
	}
	turn := geom.CW
	if c.bend == over {
		turn = geom.CCW
	}
	return geom.Arc(from, to, geom.Point{Z: c.z, R: c.r}, turn)
}

// Inside returns what is left of the bore, from its mouth to its back; nil
// when the stock is solid.
func (s *Stock) Inside() []Surface {
	var out []Surface
	add := func(p geom.Piece) { out = append(out, Surface{p, Raw}) }
	for i := len(s.floor.s) - 1; i >= 0; i-- {
		f := &s.floor.s[i]
		if !f.void {
			continue
		}
		s.metal(f.a, f.b, func(a, b float64) {
			from, to := geom.Point{Z: b, R: f.c.at(b)}, geom.Point{Z: a, R: f.c.at(a)}
			if s.solidAt(b, true) {
				if r := s.floor.beside(b, true); r-from.R > step || from.R-r > step {
					add(geom.Line(geom.Point{Z: b, R: r}, from))
				}
			}
			add(f.c.leftward(from, to))
			// A step to the next part of the bore adds itself; the bottom of
			// a blind bore has no next part.
			if r := s.floor.beside(a, false); i > 0 && !s.floor.s[i-1].void && s.solidAt(a, false) && to.R-r > step {
				add(geom.Line(to, geom.Point{Z: a, R: r}))
			}
		})
	}
	return out
}

// metal calls f for each part of [a, b] that holds metal, from the right.
func (s *Stock) metal(a, b float64, f func(a, b float64)) {
	p := s.outer
	at := p.find(b)
	hi, lo := b, b
	for ok := true; ok; at, ok = p.prev(at) {
		sp := p.at(at)
		u := max(a, sp.z)
		if sp.owner != gone {
			lo = u
		} else {
			if hi-lo > sliver {
				f(lo, hi)
			}
			hi, lo = u, u
		}
		if u <= a {
			break
		}
	}
	if hi-lo > sliver {
		f(lo, hi)
	}
}

// solidAt tells whether there is metal just right or left of z.
func (s *Stock) solidAt(z float64, right bool) bool {
	at := s.outer.find(z)
	if !right && z-s.outer.at(at).z <= sliver {
		at, _ = s.outer.prev(at)
	}
	return s.outer.at(at).owner != gone
}

// String dumps both boundaries for tests, mm: one piece a line with its owner.
func (s *Stock) String() string {
	var b strings.Builder
	for _, part := range []struct {
		name string
		s    []Surface
	}{{"outside", s.Outside()}, {"inside", s.Inside()}} {
		if len(part.s) > 0 {
			b.WriteString(part.name + "\n")
		}
		for _, f := range part.s {
			owner := "raw"
			if f.Owner != Raw {
				owner = strconv.Itoa(f.Owner)
			}
			b.WriteString("  " + f.Piece.String() + " " + owner + "\n")
		}
	}
	return b.String()
}
