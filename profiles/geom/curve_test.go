package geom

import (
	"math"
	"math/rand/v2"
	"testing"

	sf "github.com/peterstace/simplefeatures/geom"
	"github.com/stretchr/testify/require"
)

// quarter: radius 10 round (0, 0) from (10, 0) counterclockwise to (0, 10).
var quarter = Arc(Point{10, 0}, Point{0, 10}, Point{0, 0}, CCW)

func TestPieces(t *testing.T) {
	line := Line(Point{1, 2}, Point{4, 6}) // 3, 4, 5
	near(t, 5, line.Length(), 1e-15)
	nearPoint(t, Point{0.6, 0.8}, line.StartDir(), 1e-15)
	require.True(t, line.IsLine())
	require.Zero(t, line.Radius())
	require.Zero(t, line.Sweep())
	require.Equal(t, Line(Point{4, 6}, Point{1, 2}), line.Reverse())
	require.Equal(t, Line(Point{-1, 2}, Point{-4, 6}), line.MirrorZ())
	require.Equal(t, Line(Point{1, -2}, Point{4, -6}), line.MirrorR())

	near(t, 5*math.Pi, quarter.Length(), 1e-14)
	nearPoint(t, Point{0, 1}, quarter.StartDir(), 1e-15)
	nearPoint(t, Point{-1, 0}, quarter.EndDir(), 1e-15)
	back := quarter.Reverse()
	require.Equal(t, CW, back.Turn)
	nearPoint(t, Point{1, 0}, back.StartDir(), 1e-15)
	nearPoint(t, Point{0, -1}, back.EndDir(), 1e-15)
	near(t, 5*math.Pi, back.Length(), 1e-14)

	// the other three quarters
	rest := Arc(Point{0, 10}, Point{10, 0}, Point{0, 0}, CCW)
	near(t, 15*math.Pi, rest.Length(), 1e-13)
	near(t, 3*math.Pi/2, rest.Sweep(), 1e-14)
	half := Arc(Point{10, 0}, Point{-10, 0}, Point{0, 0}, CW)
	near(t, 10*math.Pi, half.Length(), 1e-13)

	lo, hi := rest.Bounds()
	nearPoint(t, Point{-10, -10}, lo, 1e-14)
	nearPoint(t, Point{10, 10}, hi, 1e-14)
	lo, hi = half.Bounds()
	nearPoint(t, Point{-10, -10}, lo, 1e-14)
	nearPoint(t, Point{10, 0}, hi, 1e-14)
}

func TestRAtAndZAt(t *testing.T) {
	line := Line(Point{0, 10}, Point{-20, 12}) // 1:10 per side
	near(t, 10.5, line.RAt(-5), 1e-14)
	near(t, 10, line.RAt(3), 1e-15)   // clamped
	near(t, 12, line.RAt(-30), 1e-15) // clamped
	near(t, -5, line.ZAt(10.5), 1e-13)

	near(t, 8, quarter.RAt(6), 1e-14) // 6, 8, 10
	near(t, 6, quarter.ZAt(8), 1e-14)
	near(t, 8, quarter.Reverse().RAt(6), 1e-14)
	near(t, 10, quarter.RAt(-1), 1e-15)
	lower := Arc(Point{-10, 0}, Point{10, 0}, Point{0, 0}, CCW)
	near(t, -8, lower.RAt(6), 1e-14)
	near(t, -8, lower.Reverse().RAt(6), 1e-14)
	left := Arc(Point{0, 10}, Point{0, -10}, Point{0, 0}, CCW)
	near(t, -6, left.ZAt(8), 1e-14)
	near(t, -6, left.ZAt(-8), 1e-14)
	near(t, -6, left.Reverse().ZAt(8), 1e-14)
	require.Zero(t, testing.AllocsPerRun(100, func() { quarter.RAt(6); quarter.ZAt(8); quarter.DirAt(quarter.To) }))
}

func TestMonotone(t *testing.T) {
	require.Equal(t, []Piece{quarter}, quarter.Monotone())
	rest := Arc(Point{0, 10}, Point{10, 0}, Point{0, 0}, CCW)
	require.Len(t, rest.Monotone(), 3)
	require.Len(t, rest.Reverse().Monotone(), 3)
	r := rand.New(rand.NewPCG(3, 4))
	for range 3000 {
		p := randomArc(r)
		var chain Chain = p.Monotone()
		require.LessOrEqual(t, len(chain), 5)
		require.Zero(t, chain.Gap())
		require.Equal(t, p.From, chain[0].From)
		require.Equal(t, p.To, chain[len(chain)-1].To)
		nearPoint(t, middle(p), p.Middle(), 1e-9*(1+p.Radius()))
		near(t, p.Length(), chain.Length(), 1e-9*(1+p.Radius()))
		area := 0.0
		for _, m := range chain {
			area += m.AreaUnder()
			d, e := m.StartDir(), m.EndDir()
			const flat = 1e-7 // an extreme's tangent is square to within rounding of the place
			require.True(t, d.Z*e.Z >= -flat && d.R*e.R >= -flat, "%v turns back", m)
			mid := m.DirAt(middle(m))
			require.True(t, d.Z*mid.Z >= -flat && d.R*mid.R >= -flat, "%v turns back", m)
			q := middle(m)
			if math.Abs(q.R-p.Center.R) > 1e-3*p.Radius() {
				near(t, q.R, m.RAt(q.Z), 1e-6)
			}
			if math.Abs(q.Z-p.Center.Z) > 1e-3*p.Radius() {
				near(t, q.Z, m.ZAt(q.R), 1e-6)
			}
		}
		near(t, p.AreaUnder(), area, 1e-9*(1+p.Radius()*p.Radius()))
	}
}

// middle returns the middle of a piece, by trigonometry.
func middle(p Piece) Point { return at(p, 0.5) }

// at returns the point at share k of an arc, by package math.
func at(p Piece, k float64) Point {
	a := p.From.Sub(p.Center)
	s, c := math.Sincos(float64(p.Turn) * p.Sweep() * k)
	return p.Center.Add(Point{a.Z*c - a.R*s, a.Z*s + a.R*c})
}

func randomArc(r *rand.Rand) Piece {
	radius := math.Pow(10, r.Float64()*4-1)
	c := Point{r.Float64()*100 - 50, r.Float64()*100 - 50}
	a := r.Float64() * 2 * math.Pi
	if r.IntN(4) == 0 {
		a = float64(r.IntN(4)) * math.Pi / 2
	}
	b := a + (0.001+0.998*r.Float64())*2*math.Pi
	turn := CCW
	if r.IntN(2) == 0 {
		turn = CW
	}
	on := func(w float64) Point { return c.Add(Point{radius * math.Cos(w), radius * math.Sin(w)}) }
	return Arc(on(a), on(b), c, turn)
}

func TestNearest(t *testing.T) {
	near(t, 2, quarter.Distance(Point{7.2, 9.6}), 1e-14) // (6, 8) times 1.2: 12 from the centre
	nearPoint(t, Point{6, 8}, quarter.Nearest(Point{7.2, 9.6}), 1e-14)
	nearPoint(t, Point{10, 0}, quarter.Nearest(Point{5, -5}), 1e-15) // beyond the start
	near(t, math.Sqrt(50), quarter.Distance(Point{5, -5}), 1e-14)
	line := Line(Point{0, 0}, Point{10, 0})
	near(t, 5, line.Distance(Point{13, 4}), 1e-15) // 3, 4, 5
	near(t, 4, line.Distance(Point{3, -4}), 1e-15)
	require.True(t, line.On(Point{10, 0}))
	require.False(t, line.On(Point{10.001, 0}))
	require.True(t, quarter.On(Point{6, 8}))
	require.False(t, quarter.On(Point{6, -8}))
	require.False(t, quarter.On(Point{-6, -8}))
	dot := Line(Point{1, 1}, Point{1, 1})
	near(t, 5, dot.Distance(Point{4, 5}), 1e-15)
	r := rand.New(rand.NewPCG(5, 6))
	for range 2000 { // against dense points
		p := randomArc(r)
		q := p.Center.Add(Point{(r.Float64() - 0.5) * 4 * p.Radius(), (r.Float64() - 0.5) * 4 * p.Radius()})
		best := math.Inf(1)
		for k := range 401 {
			best = math.Min(best, at(p, float64(k)/400).Sub(q).Len())
		}
		d := p.Distance(q)
		near(t, d, p.Nearest(q).Sub(q).Len(), 1e-10*(1+p.Radius()))
		step := p.Length() / 400
		require.True(t, d <= best+1e-9 && d >= best-step, "%v to %v: %g, sampled %g", p, q, d, best)
	}
}

func TestAreaUnder(t *testing.T) {
	near(t, 12*(2+6)/2.0, Line(Point{0, 2}, Point{12, 6}).AreaUnder(), 1e-13)
	near(t, -25*math.Pi, quarter.AreaUnder(), 1e-12) // a quarter of the disc, run backward
	near(t, 25*math.Pi, quarter.Reverse().AreaUnder(), 1e-12)
	// a flat arc: radius 1e4 over 1 mm; the segment is about s³r²/12 = 1/(12 r)
	h := 1e4 - math.Sqrt(1e8-0.25)
	flat := Arc(Point{0.5, 0}, Point{-0.5, 0}, Point{0, -1e4 + h}, CCW)
	near(t, -1/(12*1e4), flat.AreaUnder(), 1e-11)
}

// The area of a closed chain against polygons of fine chords from a library
// that knows nothing of arcs: chords lie inside by s²/6 of the segment, so
// with n chords to an arc the polygon is short by about segment * (s/n)²/4.
func TestAreaAgainstPolygons(t *testing.T) {
	r := rand.New(rand.NewPCG(7, 8))
	for range 100 {
		p := randomArc(r)
		const n = 3000
		var flat []float64
		for k := range n + 1 {
			q := at(p, float64(k)/n)
			flat = append(flat, q.Z, q.R)
		}
		flat = append(flat, flat[0], flat[1])
		ring := sf.NewLineString(sf.NewSequence(flat, sf.DimXY))
		want := sf.NewPolygon([]sf.LineString{ring}).Area()
		got := math.Abs(p.AreaUnder() + Line(p.To, p.From).AreaUnder())
		near(t, want, got, 2e-6*(want+p.Radius()*p.Radius()*1e-3), p)
	}
}

// Moments against the midpoint rule, and their least-squares line against a
// line known beforehand.
func TestMoments(t *testing.T) {
	r := rand.New(rand.NewPCG(9, 10))
	for range 50 {
		p := randomArc(r)
		o := Point{r.Float64() * 20, r.Float64() * 20}
		got := p.Moments(o)
		var want Moments
		const n = 20000
		before := p.From
		for k := range n {
			after := at(p, float64(k+1)/n)
			q := at(p, (float64(k)+0.5)/n).Sub(o)
			dz := after.Z - before.Z
			want = want.Add(Moments{1, q.Z, q.Z * q.Z, q.R, q.Z * q.R, q.R * q.R}.Times(dz))
			before = after
		}
		size := p.Radius() + 100
		for i, pair := range [][2]float64{{want.L, got.L}, {want.Z, got.Z}, {want.ZZ, got.ZZ}, {want.R, got.R}, {want.ZR, got.ZR}, {want.RR, got.RR}} {
			near(t, pair[0], pair[1], 1e-6*size*size*size, i, p)
		}
		back := p.Reverse().Moments(o)
		near(t, -got.RR, back.RR, 1e-9*size*size*size)
	}
	// r = 20 + z/20 in two pieces and back comes the same line
	m := Line(Point{0, 20}, Point{-30, 18.5}).Moments(Point{}).Add(Line(Point{-30, 18.5}, Point{-70, 16.5}).Moments(Point{}))
	a, b, ok := m.Times(-1).Line()
	require.True(t, ok)
	near(t, 20, a, 1e-12)
	near(t, 0.05, b, 1e-14)
	// a step of 0.02 in the middle of a level line of 2: the slope of the
	// least-squares line is (3/2) * step / length = 0.015, by hand from
	// integral of z r over z from -1 to 1 = 0.01, over 2/3
	m = Line(Point{-1, 5}, Point{0, 5}).Moments(Point{}).Add(Line(Point{0, 5.02}, Point{1, 5.02}).Moments(Point{}))
	a, b, _ = m.Line()
	near(t, 5.01, a, 1e-14)
	near(t, 0.015, b, 1e-14)
	_, _, ok = Line(Point{0, 1}, Point{0, 2}).Moments(Point{}).Line()
	require.False(t, ok)
}

func TestChain(t *testing.T) {
	c := Chain{Line(Point{0, 0}, Point{0, 5}), Line(Point{0, 5}, Point{-10, 5}), Arc(Point{-10, 5}, Point{-12, 7}, Point{-10, 7}, CW)}
	require.Zero(t, c.Gap())
	near(t, 15+math.Pi, c.Length(), 1e-13)
	lo, hi := c.Bounds()
	nearPoint(t, Point{-12, 0}, lo, 1e-14)
	nearPoint(t, Point{0, 7}, hi, 1e-14)
	require.Equal(t, c, c.Reverse().Reverse())
	require.Equal(t, 3.0, Chain{c[0], c[1].Shift(Point{0, 3})}.Gap())
	require.Equal(t, "line (0.0000000, 0.0000000) (0.0000000, 5.0000000)\n"+
		"line (0.0000000, 5.0000000) (-10.0000000, 5.0000000)\n"+
		"cw (-10.0000000, 5.0000000) (-12.0000000, 7.0000000) round (-10.0000000, 7.0000000)\n", c.String())
	near(t, 2, c.Distance(Point{2, 3}), 1e-15)
	require.True(t, math.IsInf(Chain{}.Distance(Point{}), 1))
}
