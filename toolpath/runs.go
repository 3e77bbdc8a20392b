package toolpath

import (
	"math"

	"taperwright/profiles/geom"
)

// profile is a track cut up so that every edge runs one way in z and in r,
// front to back, z never growing.
type profile []edge

func (t track) profile() profile {
	var out profile
	for _, e := range t {
		if e.IsLine() {
			out = append(out, e)
			continue
		}
		for _, p := range e.Monotone() {
			out = append(out, edge{p, e.owner})
		}
	}
	return out
}

// spot is a place on a profile: the edge and the point of it.
type spot struct {
	i int
	q geom.Point
}

// count turns a radius into the integer that decides which of two is higher:
// levels and surfaces are equal by design, and floats would tell them apart.
func count(r float64) int64 { return geom.Count(r, 7) }

// run is a stretch of a profile, from its front to its back end.
type run struct{ front, back spot }

// below returns the stretches that do not stand higher than r, front to back;
// a lowest place that just reaches r is a stretch without length.
func (p profile) below(r float64) []run {
	var out []run
	n := count(r)
	var open bool
	var cur run
	for i, e := range p {
		a, b := count(e.From.R) <= n, count(e.To.R) <= n
		if a && !open {
			cur.front, open = spot{i, e.From}, true
		}
		switch {
		case !a && b:
			q := e.To
			if count(e.To.R) != n {
				q = geom.Point{Z: e.ZAt(r), R: r}
			}
			cur.front, open = spot{i, q}, true
		case a && !b:
			q := e.From
			if count(e.From.R) != n {
				q = geom.Point{Z: e.ZAt(r), R: r}
			}
			cur.back, open = spot{i, q}, false
			out = append(out, cur)
		}
	}
	if open {
		last := len(p) - 1
		cur.back = spot{last, p[last].To}
		out = append(out, cur)
	}
	return out
}

// band is a range of z.
type band struct{ front, back float64 }

// above returns the ranges of z over which p stands higher than r.
func (p profile) above(r float64) []band {
	if len(p) == 0 {
		return nil
	}
	var out []band
	z := p[0].From.Z
	for _, u := range p.below(r) {
		if u.front.q.Z-u.back.q.Z <= 1e-7 {
			continue // it dips to r at one place, no further
		}
		if z > u.front.q.Z {
			out = append(out, band{z, u.front.q.Z})
		}
		z = u.back.q.Z
	}
	if end := p[len(p)-1].To.Z; z > end {
		out = append(out, band{z, end})
	}
	return out
}

// highest returns the greatest r of p over a range of z; -Inf beside it.
func (p profile) highest(b band) float64 {
	top := math.Inf(-1)
	for _, e := range p {
		if e.To.Z > b.front || e.From.Z < b.back {
			continue
		}
		r := max(e.RAt(min(e.From.Z, b.front)), e.RAt(max(e.To.Z, b.back)))
		if e.From.Z == e.To.Z {
			r = max(e.From.R, e.To.R)
		}
		top = max(top, r)
	}
	return top
}

// at returns the greatest r of p at z.
func (p profile) at(z float64) float64 { return p.highest(band{z, z}) }

// lowest returns the least r of p at z; +Inf beside it.
func (p profile) lowest(z float64) float64 {
	low := math.Inf(1)
	for _, e := range p {
		if e.From.Z >= z && z >= e.To.Z {
			low = min(low, e.RAt(z))
			if e.From.Z == e.To.Z {
				low = min(low, e.To.R)
			}
		}
	}
	return low
}

// climb returns the way up p from s toward the back, as long as it rises and
// up to r: the flank along which a level is left.
func (p profile) climb(s spot, r float64) []edge {
	var out []edge
	n := count(r)
	for i := s.i; i < len(p); i++ {
		e := p[i]
		if i == s.i {
			_, e.Piece = e.Split(s.q)
		}
		a, b := count(e.From.R), count(e.To.R)
		if a >= n {
			break
		}
		if b < a || b == a && e.To.Sub(e.From).Len() > 1e-7 {
			break
		}
		if b > n {
			e.Piece, _ = e.Split(geom.Point{Z: e.ZAt(r), R: r})
		}
		if e.To.Sub(e.From).Len() > geom.Near {
			out = append(out, e)
		}
		if b >= n {
			break
		}
	}
	return out
}

// descend returns the way down p to s from the front, begun where the
// flank above s reaches r or ends: the flank along which a level is entered.
func (p profile) descend(s spot, r float64) []edge {
	up := track(p[:s.i+1]).turned()
	e, q := up[0], mirror(s.q)
	_, e.Piece = e.Split(q)
	up[0] = e
	way := track(profile(up).climb(spot{0, q}, r))
	return way.turned()
}
