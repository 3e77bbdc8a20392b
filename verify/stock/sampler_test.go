package stock

import (
	"flag"
	"math"
	"slices"
	"testing"

	"github.com/stretchr/testify/require"

	"taperwright/profiles/geom"
	"taperwright/profiles/shop"
)

// A second formulation, without envelopes: columns of metal at a few z, each a
// set of intervals of r; for each move the least and the greatest r of the
// edge over the column, found by search along the path.

// edge is the outline as the hull of the nose circle and three corners.
type edge struct {
	nose       float64
	hull       []geom.Point // corners besides the nose; none: nose alone
	round      bool
	left, righ float64 // its width
	chords     [][2]geom.Point
	mirror     bool
	main       float64 // cutting edge angle
	minor      float64
}

func edgeOf(t *shop.Tool) edge {
	e := edge{nose: t.Nose, left: -t.Nose, righ: t.Nose, round: t.Round, mirror: !t.Right}
	if t.Round || t.Included.Value == 0 {
		e.main, e.minor = math.Pi/2, math.Pi/2
		return e
	}
	k, inc := t.CuttingAngle.Value, t.Included.Value
	e.main, e.minor = k, math.Pi-k-inc
	// sharp corner: on the bisector of the edges, R / sin(included/2) away
	mid := math.Pi - k - inc/2 // direction of the bisector, into the insert
	s := geom.Point{Z: -math.Cos(mid), R: -math.Sin(mid)}.Times(t.Nose / math.Sin(inc/2))
	u := geom.Point{Z: -math.Cos(k), R: math.Sin(k)}
	v := geom.Point{Z: math.Cos(e.minor), R: math.Sin(e.minor)}
	a, b := s.Along(u, t.MainReach.Value), s.Along(v, t.MinorReach.Value)
	e.hull = []geom.Point{a, b, a.Add(b).Sub(s)}
	for i, p := range e.hull {
		e.chordsFrom(i)
		e.left, e.righ = min(e.left, p.Z), max(e.righ, p.Z)
	}
	return e
}

// chordsFrom adds the lines from corner i to the other corners, and those that touch the
// circle: the hull's lower boundary is among these and the circle.
func (e *edge) chordsFrom(i int) {
	p := e.hull[i]
	e.chords = append(e.chords, [2]geom.Point{p, p})
	add := func(q geom.Point) {
		if p.Z < q.Z {
			e.chords = append(e.chords, [2]geom.Point{p, q})
		} else {
			e.chords = append(e.chords, [2]geom.Point{q, p})
		}
	}
	for _, q := range e.hull[:i] {
		add(q)
	}
	if d := p.Len(); d > e.nose {
		b, a := math.Atan2(p.R, p.Z), math.Acos(e.nose/d)
		for _, t := range []float64{b - a, b + a} {
			add(geom.Point{Z: e.nose * math.Cos(t), R: e.nose * math.Sin(t)})
		}
	}
}

// lower returns the least r of the hull at x.
func (e *edge) lower(x float64) float64 {
	best := math.Inf(1)
	if math.Abs(x) <= e.nose {
		best = -math.Sqrt((e.nose - x) * (e.nose + x))
	}
	for _, c := range e.chords {
		if c[0].Z <= x && x <= c[1].Z {
			w := (x - c[0].Z) / max(c[1].Z-c[0].Z, 1e-300)
			best = min(best, c[0].R+w*(c[1].R-c[0].R))
		}
	}
	return best
}

// roof is how high metal over x is swept away, by edge, holder or shank.
func (e *edge) roof(x float64) float64 {
	over := func(x, angle float64) float64 {
		lean := angle - math.Pi/2
		if lean < 1e-8 {
			return math.Inf(1)
		}
		// circle up to where the edge is tangent, then the edge
		tz, tr := -e.nose*math.Cos(lean), e.nose*math.Sin(lean)
		if x <= tz {
			return math.Sqrt(max(0, (e.nose-x)*(e.nose+x)))
		}
		return tr + (x-tz)/math.Tan(lean)
	}
	return min(over(x, e.main), over(-x, e.minor))
}

type interval struct{ lo, hi float64 }

// column is the metal at one z, from the axis up.
type column struct {
	z     float64
	metal []interval
}

func (c *column) cut(lo, hi float64) {
	var out []interval
	for _, m := range c.metal {
		if a := min(m.hi, lo); a > m.lo {
			out = append(out, interval{m.lo, a})
		}
		if b := max(m.lo, hi); b < m.hi {
			out = append(out, interval{b, m.hi})
		}
	}
	c.metal = out
}

func (c *column) top() float64 {
	if len(c.metal) == 0 {
		return 0
	}
	return c.metal[len(c.metal)-1].hi
}

// along returns the point of a path at t in [0, 1].
func along(p geom.Piece, t float64) geom.Point {
	if p.IsLine() {
		return p.From.Along(p.To.Sub(p.From), t)
	}
	a := p.From.Sub(p.Center)
	s := p.Sweep() * t * float64(p.Turn)
	return p.Center.Add(geom.Point{Z: a.Z*math.Cos(s) - a.R*math.Sin(s), R: a.R*math.Cos(s) + a.Z*math.Sin(s)})
}

// sweep cuts the column with one move. An arc may reach a column twice, with
// metal between: it is cut in short parts.
func (c *column) sweep(e *edge, path geom.Piece, n int) {
	if path.IsLine() {
		c.part(e, path, n)
		return
	}
	const parts = 12
	for i := range parts {
		p := geom.Arc(along(path, float64(i)/parts), along(path, float64(i+1)/parts), path.Center, path.Turn)
		c.part(e, p, n/8)
	}
}

// part samples along the path, then searches round every sample that is better
// than its neighbours.
func (c *column) part(e *edge, path geom.Piece, n int) {
	w := max(-e.left, e.righ)
	if lo, hi := path.Bounds(); c.z < lo.Z-w || c.z > hi.Z+w {
		return
	}
	x := func(t float64) (float64, geom.Point) {
		p := along(path, t)
		if e.mirror {
			return p.Z - c.z, p
		}
		return c.z - p.Z, p
	}
	in := func(d float64) bool { return d >= e.left && d <= e.righ }
	lower := func(t float64) float64 {
		d, p := x(t)
		if !in(d) {
			return math.Inf(1)
		}
		return p.R + e.lower(d)
	}
	roof := func(t float64) float64 {
		d, p := x(t)
		if !in(d) {
			return math.Inf(1)
		}
		return -(p.R + e.roof(d))
	}
	lo, hi := least(lower, n), -least(roof, n)
	if !math.IsInf(lo, 1) {
		c.cut(lo, hi)
	}
}

// least is the least value of f over [0, 1]: f is inf outside some interval.
func least(f func(float64) float64, n int) float64 {
	best := math.Inf(1)
	at := func(i int) float64 { return float64(i) / float64(n) }
	vals := make([]float64, n+1)
	for i := range vals {
		vals[i] = f(at(i))
	}
	for i, v := range vals {
		best = min(best, v)
		before, after := math.Inf(1), math.Inf(1)
		if i > 0 {
			before = vals[i-1]
		}
		if i < n {
			after = vals[i+1]
		}
		if math.IsInf(v, -1) {
			return v
		}
		// an interval narrower than a step lies between two infinities
		if v <= before && v <= after {
			a, b := max(0, at(i-1)), min(1, at(i+1))
			a, b = edgeOfDomain(f, at(i), a), edgeOfDomain(f, at(i), b)
			for range 60 {
				p, q := a+(b-a)/3, b-(b-a)/3
				if f(p) <= f(q) {
					b = q
				} else {
					a = p
				}
			}
			best = min(best, f(a), f(b), f((a+b)/2))
		}
	}
	return best
}

// edgeOfDomain moves b toward a, where f is finite, until f is finite there.
func edgeOfDomain(f func(float64) float64, a, b float64) float64 {
	if math.IsInf(f(a), 0) || !math.IsInf(f(b), 0) {
		return b
	}
	good := a
	for range 60 {
		m := (good + b) / 2
		if math.IsInf(f(m), 0) {
			b = m
		} else {
			good = m
		}
	}
	return good
}

// compare holds the model against columns: within tol, or within tol of what
// the model is just beside it, where it is steep.
func compare(t testing.TB, s *Stock, cols []column, tol float64) {
	t.Helper()
	for _, c := range cols {
		lo, hi := math.Inf(1), math.Inf(-1)
		for _, d := range []float64{-1e-6, -5e-7, 0, 5e-7, 1e-6} {
			r := radiusAt(s, c.z+d)
			lo, hi = min(lo, r), max(hi, r)
		}
		if got := c.top(); got < lo-tol || got > hi+tol {
			require.Fail(t, "model and sampler differ", "z %v: model %v, sampler %v %v\n%v", c.z, radiusAt(s, c.z), got, c.metal, s)
		}
	}
}

// loosen drops columns that are no longer joined to the back: right of an
// empty one. Columns stand too far apart to see every gap, so only the model's
// own word for it is taken: metal is compared where the model has any.
func loosen(s *Stock, cols []column) {
	for i := range cols {
		if radiusAt(s, cols[i].z) == 0 {
			cols[i].metal = nil
		}
	}
}

var samples = flag.Int("samples", 12, "rounds of the sampler")

func TestSampler(t *testing.T) {
	for i := range uint64(*samples) {
		r := seeded(t, i)
		tools := allTools()
		s := New(bar(20, 60, 1), nil, Hold{})
		var cols []column
		for range 40 {
			cols = append(cols, column{z: -59 + 60*r.Float64(), metal: []interval{{0, 20}}})
		}
		slices.SortFunc(cols, func(a, b column) int { return int(math.Copysign(1, a.z-b.z)) })
		for j := range 12 {
			tool := tools[r.IntN(len(tools))]
			path := randomPath(r, 1)
			s.Cut(outlineOf(tool), path, j)
			e := edgeOf(tool)
			for c := range cols {
				cols[c].sweep(&e, path, 120)
			}
			sound(t, s)
			loosen(s, cols)
			compare(t, s, cols, 2e-7)
		}
	}
}
