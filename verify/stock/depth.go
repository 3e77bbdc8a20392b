package stock

import (
	"math"

	"taperwright/profiles/geom"
)

// How deep a cut goes is told by its deepest point: the point of the new
// boundary farthest from the old one. That is the thickness taken off whatever
// way the surface faces: along a cylinder the radial depth, along a face the
// axial one. Where the old boundary is made of very many pieces only the
// nearest are looked at, so the figure may come out too large, never too small.

// lookAround is how many pieces to each side are looked at.
const lookAround = 24

// fathom measures the new boundary s below span sp over [u, v]. A cut under
// metal that stays ends at limit; nil: it takes all that is above.
func (k *scan) fathom(sp *span, s *stretch, limit *curve, u, v float64) {
	k.sound(sp, s, limit, u)
	k.sound(sp, s, limit, v)
	if z, ok := s.c.farthest(&sp.c); ok && u < z && z < v {
		k.sound(sp, s, limit, z)
	}
}

func (k *scan) sound(sp *span, s *stretch, limit *curve, z float64) {
	p := geom.Point{Z: z, R: s.c.at(z)}
	up := sp.c.at(z)
	d := min(sp.c.away(p), math.Abs(up-p.R))
	if d <= k.res.Depth {
		return
	}
	if limit != nil {
		up = min(up, limit.at(z))
	}
	for n := sp.under; n != 0 && d > k.res.Depth; {
		c := &k.p.hiding[n-1]
		n = c.next
		g, top := c.g.at(z), c.top.at(z)
		switch w := up - top; {
		case p.R < g-skin:
			d = min(d, c.g.away(p))
		case p.R > top+skin:
			d = min(d, c.top.away(p))
		case w <= skin:
			d = 0 // all this was cut before
		default:
			// p was free before: of the metal above it what counts is a wedge
			// between the cut under it and its top. Its deepest point is as
			// far from the one as from the other: w - x above, x cos below.
			lean := 1 / math.Sqrt(1+float64(c.top.k*c.top.k))
			if c.top.bend != line {
				lean = 1
			}
			d = min(d, float64(w*lean)/(1+lean))
		}
	}
	if d = k.nearest(p, d); d > k.res.Depth {
		k.res.Depth, k.res.At = d, p
	}
}

// body measures how far the metal of span sp over [u, v] stands above the
// insert.
func (k *scan) body(sp *span, u, v float64) {
	if !k.tool.hasBody() || sp.c.high(u, v) <= k.tool.crownLow()+skin {
		return
	}
	for _, e := range k.tool.crownOver() {
		a, b := max(u, e.a), min(v, e.b)
		if b-a <= sliver {
			continue
		}
		parts(&sp.c, &e.c, a, b, func(u, v float64, over bool) {
			if !over {
				return
			}
			at := [3]float64{u, v, u}
			if z, ok := e.c.farthest(&sp.c); ok && u < z && z < v {
				at[2] = z
			}
			for _, z := range at {
				p := geom.Point{Z: z, R: e.c.at(z)}
				d := min(sp.c.away(p), math.Abs(sp.c.at(z)-p.R))
				if d <= k.res.Body {
					continue
				}
				if d = k.nearest(p, d); d > k.res.Body {
					k.res.Body, k.res.BodyAt = d, p
				}
			}
		})
	}
}

// nearest returns the distance from p, a point below the span under the cut,
// to the old boundary, d being an upper bound.
func (k *scan) nearest(p geom.Point, d float64) float64 {
	pr := k.p
	i, j := k.i, k.k
	for range lookAround {
		s := &pr.chunks[i].s[j]
		d = min(d, reach(&s.c, s.z, pr.end(i, j), p))
		if p.Z-s.z >= d {
			break
		}
		li, lj, ok := pr.prev(i, j)
		if !ok {
			break
		}
		l := &pr.chunks[li].s[lj]
		d = min(d, toWall(p, s.z, l.c.at(s.z), s.c.at(s.z)))
		i, j = li, lj
	}
	i, j = k.i, k.k
	for range lookAround {
		s := &pr.chunks[i].s[j]
		z := pr.end(i, j)
		d = min(d, reach(&s.c, s.z, z, p))
		if z-p.Z >= d {
			break
		}
		ri, rj, ok := pr.next(i, j)
		if !ok {
			break
		}
		r := &pr.chunks[ri].s[rj]
		d = min(d, toWall(p, z, s.c.at(z), r.c.at(z)))
		i, j = ri, rj
	}
	return d
}

// reach is the distance from p to the inside of a piece; its ends belong to
// the walls beside it.
func reach(c *curve, a, b float64, p geom.Point) float64 {
	u, v := p.Z-c.z, p.R-c.r
	var z float64
	if c.bend == line {
		z = c.z + (u+float64(c.k*v))/(1+float64(c.k*c.k))
	} else {
		if (v < 0) != (c.bend == under) {
			return math.Inf(1)
		}
		l := math.Sqrt(float64(u*u) + float64(v*v))
		if l == 0 {
			return c.k
		}
		z = c.z + float64(c.k*u)/l
	}
	if z < a || z > b {
		return math.Inf(1)
	}
	return c.away(p)
}

// toWall is the distance from p to the step at z between r = a and r = b.
func toWall(p geom.Point, z, a, b float64) float64 {
	u := z - p.Z
	v := max(min(a, b)-p.R, p.R-max(a, b), 0)
	return math.Sqrt(float64(u*u) + float64(v*v))
}
