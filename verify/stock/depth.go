package stock

import (
	"math"

	"taperwright/profiles/geom"
)

// How deep a cut goes is told by its deepest point: the point of the new
// boundary farthest from the old one. That is the thickness taken off whatever
// way the surface faces: along a cylinder the radial depth, along a face the
// axial one, through a fin half its width.
//
// Where the piece right above is the nearest part of the old boundary the
// figure is exact. Where others are nearer the deepest place is searched for:
// between straight pieces to a hundredth; beside curved ones the search may
// stop short, but never below half (the middle is always tried). Of a boundary
// in very many pieces only those beside the cut are looked at; the figure may
// then come out too large. Beside metal that overhangs an earlier cut it is an
// estimate.

// lookAround is how many pieces to each side are looked at.
const lookAround = 24

// enough is how near, as a share, the search for the deepest place comes; it
// gives up after narrowing halvings.
const (
	enough    = 0.01
	narrowing = 12
)

// deep is the deepest point found so far.
type deep struct {
	d  float64
	at geom.Point
}

func (t *deep) take(z float64, c *curve, d float64) {
	if d > t.d {
		t.d, t.at = d, geom.Point{Z: z, R: c.at(z)}
	}
}

// fathom measures the new boundary s below span sp over [u, v]. A cut under
// metal that stays ends at limit; nil: it takes all that is above.
func (k *scan) fathom(sp *span, s *stretch, limit *curve, u, v float64) {
	k.deepest(&k.depth, sp, &s.c, u, v, func(z float64, p geom.Point, d float64) float64 {
		if sp.under != 0 {
			d = k.fresh(sp, limit, z, p, d)
		}
		return d
	})
}

// deepest looks for the point of c over [u, v] farthest below the old
// boundary. c lies below span sp; less tells what else limits a distance.
func (k *scan) deepest(to *deep, sp *span, c *curve, u, v float64, less func(z float64, p geom.Point, d float64) float64) {
	most := 0.0 // below span sp alone
	try := func(z float64) {
		p := geom.Point{Z: z, R: c.at(z)}
		d := min(sp.c.away(p), math.Abs(sp.c.at(z)-p.R))
		if most = max(most, d); d <= to.d {
			return
		}
		to.take(z, c, k.nearest(p, less(z, p, d)))
	}
	try(u)
	try(v)
	if z, ok := c.farthest(&sp.c); ok && u < z && z < v {
		try(z)
	}
	if most-to.d <= enough*most {
		return
	}
	at := func(z float64) float64 {
		p := geom.Point{Z: z, R: c.at(z)}
		return k.nearest(p, less(z, p, min(sp.c.away(p), math.Abs(sp.c.at(z)-p.R))))
	}
	m := float64(0.5 * (u + v))
	du, dm, dv := at(u), at(m), at(v)
	for range narrowing {
		to.take(m, c, dm)
		// Below straight pieces the distance is the least of linear ones, so
		// it bends down only: beyond m it stays under the line through m from
		// the other side.
		left := dm + float64((dm-dv)*((m-u)/(v-m)))
		right := dm + float64((dm-du)*((v-m)/(m-u)))
		if max(left, right) <= to.d*(1+enough) {
			return
		}
		if x := float64(0.5 * (m + v)); right > left {
			if d := at(x); d > dm {
				u, du, m, dm = m, dm, x, d
			} else {
				v, dv = x, d
			}
		} else {
			x = float64(0.5 * (u + m))
			if d := at(x); d > dm {
				v, dv, m, dm = m, dm, x, d
			} else {
				u, du = x, d
			}
		}
	}
}

// fresh lessens d, how deep p lies at z, where the metal above p was cut
// before, under what stayed.
func (k *scan) fresh(sp *span, limit *curve, z float64, p geom.Point, d float64) float64 {
	up := sp.c.at(z)
	if limit != nil {
		up = min(up, limit.at(z))
	}
	for n := sp.under; n != 0; n = k.p.hiding[n-1].next {
		c := &k.p.hiding[n-1]
		g, top := c.g.at(z), c.top.at(z)
		switch w := up - top; {
		case p.R < g-skin:
			d = min(d, c.g.away(p))
		case p.R > top+skin:
			d = min(d, c.top.away(p))
		case w <= skin:
			return 0
		default:
			// p was free before: of the metal above it what counts is a wedge
			// between the cut under it and its top. Its deepest point is as
			// far from the one as from the other: x below the top, and
			// (w - x) a/w from the cut.
			a := c.top.away(geom.Point{Z: z, R: up})
			d = min(d, float64(w*a)/(w+a))
		}
	}
	return d
}

// body measures how far the metal of span sp over [u, v] stands above the
// insert.
func (k *scan) body(sp *span, u, v float64) {
	if !k.tool.hasBody() || sp.c.high(u, v) <= k.tool.crownLow()+skin {
		return
	}
	all := func(_ float64, _ geom.Point, d float64) float64 { return d }
	for _, e := range k.tool.crownOver() {
		a, b := max(u, e.a), min(v, e.b)
		if b-a <= sliver {
			continue
		}
		parts(&sp.c, &e.c, a, b, func(u, v float64, over bool) {
			if over {
				k.deepest(&k.shank, sp, &e.c, u, v, all)
			}
		})
	}
}

// nearest returns the distance from p, a point below the span under the cut,
// to the old boundary, d being an upper bound.
func (k *scan) nearest(p geom.Point, d float64) float64 {
	pr := k.p
	at := k.under
	for range lookAround {
		s := pr.at(at)
		d = min(d, reach(&s.c, s.z, pr.end(at), p))
		if p.Z-s.z >= d {
			break
		}
		l, ok := pr.prev(at)
		if !ok {
			break
		}
		d = min(d, toWall(p, s.z, pr.at(l).c.at(s.z), s.c.at(s.z)))
		at = l
	}
	at = k.under
	for range lookAround {
		s, z := pr.at(at), pr.end(at)
		d = min(d, reach(&s.c, s.z, z, p))
		if z-p.Z >= d {
			break
		}
		r, ok := pr.next(at)
		if !ok {
			break
		}
		d = min(d, toWall(p, z, s.c.at(z), pr.at(r).c.at(z)))
		at = r
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
