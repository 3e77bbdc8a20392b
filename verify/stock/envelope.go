package stock

import (
	"math"

	"taperwright/profiles/geom"
)

// The sweep of a convex outline along a path, and its lower envelope.
//
// Along a line, or an arc that is hollow from above (a valley), the envelope
// is the sum of two convex boundaries: their pieces in order of slope, and
// where an arc of the path and an arc of the outline share slopes, one arc
// about the sum of their centres with the sum of their radii (merged).
//
// Along an arc that bulges up (a bump) the tool touches the envelope in the
// middle only where its nose is rounder than the path: h(s) = path(s) +
// nose(z - s) has h'' = 1/r - 1/rho there in the frame of the common tangent,
// a least value only when r < rho, and then the envelope is the arc of radius
// rho - r about the sum of the centres. An edge (1/r = 0) never touches but
// with its ends. So: the least of the outline at both ends, of those arcs, and
// of the paths of the outline's corners (least).
//
// Upper envelopes are lower envelopes of the mirrored outline on the mirrored
// path.

// facet is a piece of a convex lower boundary, left to right, with its outward
// (downward) unit normals.
type facet struct {
	from, to geom.Point
	n0, n1   geom.Point
	centre   geom.Point
	radius   float64 // 0: a line
	slope    float64 // of a line
}

func facets(ps []geom.Piece) []facet {
	fs := make([]facet, 0, len(ps))
	for _, p := range ps {
		if p.To.Z-p.From.Z <= sliver {
			continue
		}
		f := facet{from: p.From, to: p.To}
		if p.IsLine() {
			d := p.To.Sub(p.From)
			f.n0 = geom.Point{Z: d.R, R: -d.Z}.Unit()
			f.n1 = f.n0
			f.slope = d.R / d.Z
		} else {
			f.centre, f.radius = p.Center, p.Radius()
			f.n0, f.n1 = p.From.Sub(p.Center).Unit(), p.To.Sub(p.Center).Unit()
		}
		fs = append(fs, f)
	}
	return fs
}

// before tells whether downward normal m comes before n, left to right.
// Normals more than a quarter apart are told by their z: the two sides of a
// circle are opposite, and their cross product is nothing but rounding.
func before(m, n geom.Point) bool {
	if m.Dot(n) < 0 {
		return m.Z < n.Z
	}
	return m.Cross(n) > 0
}

// way is a path of the nose centre that is a graph over z, left to right.
type way struct {
	from, to geom.Point
	n0, n1   geom.Point // downward normals; of a bump the upward ones, turned round
	centre   geom.Point
	radius   float64 // 0: a line
	bump     bool
	upright  bool // no way along z
}

func wayOf(p geom.Piece) way {
	w := way{from: p.From, to: p.To}
	if p.To.Z < p.From.Z {
		w.from, w.to = p.To, p.From
	}
	d := w.to.Sub(w.from)
	if d.Z <= sliver {
		w.upright = true
		if w.to.R < w.from.R {
			w.from, w.to = w.to, w.from // lower end first
		}
		return w
	}
	if p.IsLine() {
		w.n0 = geom.Point{Z: d.R, R: -d.Z}.Unit()
		w.n1 = w.n0
		return w
	}
	w.centre, w.radius = p.Center, p.Radius()
	w.bump = (p.Turn == geom.CW) == (p.From.Z < p.To.Z)
	w.n0, w.n1 = w.from.Sub(w.centre).Unit(), w.to.Sub(w.centre).Unit()
	if w.bump {
		w.n0, w.n1 = w.n0.Times(-1), w.n1.Times(-1)
	}
	return w
}

// low returns the least r of the way.
func (w *way) low() float64 {
	r := min(w.from.R, w.to.R)
	if w.radius > 0 && !w.bump && !w.upright && w.from.Z < w.centre.Z && w.centre.Z < w.to.Z {
		return w.centre.R - w.radius
	}
	return r
}

// stretch is a curve over [a, b].
type stretch struct {
	a, b float64
	c    curve
	void bool // no metal is left here: c is the axis, or the bore
}

// envelopes builds envelopes in scratch space that is used again.
type envelopes struct {
	one, two, tmp []stretch
}

// lower returns the lower envelope of the sweep of a chain along a way,
// ascending in z. It is valid until the next call.
func (e *envelopes) lower(chain []facet, w *way) []stretch {
	if w.upright {
		e.one = placed(e.one[:0], chain, w.from)
		return e.one
	}
	if w.bump {
		return e.least(chain, w)
	}
	m := merger{out: e.one[:0], w: w, at: w.from, n: w.n0, z: w.from.Z + chain[0].from.Z}
	m.merged(chain)
	e.one = m.out
	return e.one
}

// placed returns the chain moved by d.
func placed(out []stretch, chain []facet, d geom.Point) []stretch {
	m := merger{out: out, at: d, z: d.Z + chain[0].from.Z, done: true}
	m.merged(chain)
	return m.out
}

// merger sums a chain and a way in order of slope.
type merger struct {
	out  []stretch
	w    *way
	at   geom.Point // how far the way has been run
	n    geom.Point // its normal there
	done bool       // the way is run to its end
	z    float64    // how far out reaches
}

// put adds a curve up to z. A step narrower than a sliver is left out; what
// follows brings its own curve.
func (m *merger) put(c curve, z float64) {
	if z-m.z <= sliver {
		return
	}
	m.out = append(m.out, stretch{a: m.z, b: z, c: c})
	m.z = z
}

func (m *merger) merged(chain []facet) {
	for i := range chain {
		f := &chain[i]
		if !m.done && before(m.n, f.n0) {
			m.run(f.from, f.n0)
		}
		if f.radius == 0 {
			p := m.at.Add(f.from)
			c := curve{z: p.Z, r: p.R, k: f.slope}
			if f.slope == 0 {
				c = level(p.R)
			}
			m.put(c, m.at.Z+f.to.Z)
			continue
		}
		m.round(f)
	}
	if !m.done {
		m.run(chain[len(chain)-1].to, geom.Point{})
	}
}

// run runs the way on, from a corner v of the outline, until its normal is
// stop; stop zero: to its end.
func (m *merger) run(v, stop geom.Point) {
	w := m.w
	if w.radius == 0 {
		m.put(lineThrough(m.at.Add(v), w.to.Add(v)), w.to.Z+v.Z)
		m.at, m.done = w.to, true
		return
	}
	c := w.centre.Add(v)
	k := curve{z: c.Z, r: c.R, k: w.radius, bend: under}
	m.n = stop
	if (stop == geom.Point{}) || !before(stop, w.n1) {
		m.at, m.n, m.done = w.to, w.n1, true
	} else {
		m.at = w.centre.Along(stop, w.radius)
	}
	m.put(k, m.at.Z+v.Z)
}

// round adds an arc of the outline and what of the way shares its slopes.
func (m *merger) round(f *facet) {
	arc := func() curve {
		c := m.at.Add(f.centre)
		return curve{z: c.Z, r: c.R, k: f.radius, bend: under}
	}
	if !m.done && before(m.n, f.n1) {
		touch := f.centre.Along(m.n, f.radius)
		if before(f.n0, m.n) {
			m.put(arc(), m.at.Z+touch.Z)
		}
		w := m.w
		if w.radius == 0 {
			m.put(lineThrough(m.at.Add(touch), w.to.Add(touch)), w.to.Z+touch.Z)
			m.at, m.done = w.to, true
		} else {
			c := w.centre.Add(f.centre)
			both := curve{z: c.Z, r: c.R, k: w.radius + f.radius, bend: under}
			if before(f.n1, w.n1) {
				m.n, m.at = f.n1, w.centre.Along(f.n1, w.radius)
				m.put(both, m.at.Z+f.to.Z)
				return
			}
			m.n, m.at, m.done = w.n1, w.to, true
			m.put(both, m.at.Z+f.centre.Z+float64(w.n1.Z*f.radius))
			if !before(w.n1, f.n1) {
				return
			}
		}
	}
	m.put(arc(), m.at.Z+f.to.Z)
}

// least returns the lower envelope along a bump.
func (e *envelopes) least(chain []facet, w *way) []stretch {
	e.one = placed(e.one[:0], chain, w.from)
	e.two = placed(e.two[:0], chain, w.to)
	e.fold()
	// Normals of the outline fall from w.n0 to w.n1 as the way is run.
	last := geom.Point{Z: -1}
	for i := range chain {
		f := &chain[i]
		e.corner(w, f.from, last, f.n0)
		if f.radius > 0 && f.radius < w.radius {
			c := w.centre.Add(f.centre)
			e.touch(w, curve{z: c.Z, r: c.R, k: w.radius - f.radius, bend: over}, f.centre, f.radius, f.n0, f.n1)
		}
		last = f.n1
	}
	e.corner(w, chain[len(chain)-1].to, last, geom.Point{Z: 1})
	return e.one
}

// corner folds in the path of a corner v whose normals run from m to n.
func (e *envelopes) corner(w *way, v, m, n geom.Point) {
	if !before(m, n) {
		return
	}
	c := w.centre.Add(v)
	e.touch(w, curve{z: c.Z, r: c.R, k: w.radius, bend: over}, v, 0, m, n)
}

// touch folds in the part of c that a rounding about v of radius r leaves with
// its normals from m to n while the way is run.
func (e *envelopes) touch(w *way, c curve, v geom.Point, r float64, m, n geom.Point) {
	// The way's normals, turned round, fall from n0 to n1.
	hi, lo := w.n0, w.n1
	if before(hi, m) || before(n, lo) {
		return
	}
	if before(n, hi) {
		hi = n
	}
	if before(lo, m) {
		lo = m
	}
	a := w.centre.Z + v.Z - float64(hi.Z*(w.radius-r))
	b := w.centre.Z + v.Z - float64(lo.Z*(w.radius-r))
	if b-a <= sliver {
		return
	}
	e.two = append(e.two[:0], stretch{a: a, b: b, c: c})
	e.fold()
}

// fold makes one the least of one and two.
func (e *envelopes) fold() {
	e.tmp = extreme(e.tmp[:0], e.one, e.two, true)
	e.one, e.tmp = e.tmp, e.one
}

// extreme appends to out the lower or the upper of p and q where both are, and
// whichever there is elsewhere. Both ascend in z.
func extreme(out, p, q []stretch, lower bool) []stretch {
	i, j := 0, 0
	z := math.Inf(-1)
	add := func(a, b float64, s *stretch) {
		if n := len(out); n > 0 && out[n-1].b == a && out[n-1].c == s.c && out[n-1].void == s.void {
			out[n-1].b = b
			return
		}
		out = append(out, stretch{a: a, b: b, c: s.c, void: s.void})
	}
	for i < len(p) || j < len(q) {
		switch {
		case i < len(p) && p[i].b-z <= sliver:
			i++
		case j < len(q) && q[j].b-z <= sliver:
			j++
		case j == len(q) || i < len(p) && max(z, p[i].a) < q[j].a:
			b := p[i].b
			if j < len(q) {
				b = min(b, q[j].a)
			}
			add(max(z, p[i].a), b, &p[i])
			z = b
		case i == len(p) || max(z, q[j].a) < p[i].a:
			b := q[j].b
			if i < len(p) {
				b = min(b, p[i].a)
			}
			add(max(z, q[j].a), b, &q[j])
			z = b
		default:
			a, b := max(z, p[i].a, q[j].a), min(p[i].b, q[j].b)
			n, x := roots(&p[i].c, &q[j].c, a, b)
			for k := 0; k <= n; k++ {
				end := b
				if k < n {
					end = x[k]
				}
				s, t := &p[i], &q[j]
				if s.c.over(&t.c, a, end) == lower {
					s = t
				}
				add(a, end, s)
				a = end
			}
			z = b
		}
	}
	return out
}
