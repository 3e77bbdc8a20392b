package stock

import (
	"flag"
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"github.com/stretchr/testify/require"

	"taperwright/profiles/geom"
	"taperwright/profiles/shop"
)

var seed = flag.Uint64("seed", 1, "first seed of the random tests")

func seeded(t testing.TB, i uint64) *rand.Rand {
	s := *seed + i
	t.Logf("seed %d", s)
	return rand.New(rand.NewPCG(s, 2))
}

// allTools are edges of all sorts: upright, slanted and leaning edges, both
// hands, a disc, the nose alone, a sharp corner.
func allTools() []*shop.Tool {
	left := turning(0.8, 93, 55)
	left.Right = false
	lean := turning(0.4, 50, 35) // the minor edge leans: 180 - 50 - 35 = 95
	return []*shop.Tool{
		turning(0.8, 95, 80), turning(0.4, 93, 55), turning(1.2, 75, 80), turning(0.8, 62.5, 55),
		turning(0.8, 90, 80), turning(0, 93, 55), turning(0.4, 107.5, 55), left, lean, disc(3), disc(6), noseOnly(0.8),
	}
}

// randomPath is a line or an arc of the nose centre near a bar of radius 20
// from z -59 to 1. On a coarse grid moves coincide often.
func randomPath(r *rand.Rand, grid float64) geom.Piece {
	at := func() geom.Point {
		p := pt(-50+55*r.Float64(), 1+25*r.Float64())
		if grid > 0 && r.IntN(3) > 0 {
			p = pt(math.Round(p.Z/grid)*grid, math.Round(p.R/grid)*grid)
		}
		return p
	}
	a, b := at(), at()
	switch r.IntN(6) {
	case 0:
		b.R = a.R
	case 1:
		b.Z = a.Z
	case 2, 3:
		return randomArc(r, a)
	}
	if d := b.Sub(a).Len(); d > 25 {
		b = a.Along(b.Sub(a), 25/d)
	}
	return geom.Line(a, b)
}

func randomArc(r *rand.Rand, a geom.Point) geom.Piece {
	radius := 0.2 + 12*r.Float64()*r.Float64()
	if r.IntN(2) == 0 {
		radius = 1 + float64(r.IntN(8))
	}
	turn := geom.CCW
	if r.IntN(2) == 0 {
		turn = geom.CW
	}
	quarter := func() float64 {
		if r.IntN(2) == 0 {
			return float64(r.IntN(4)) * math.Pi / 2
		}
		return 2 * math.Pi * r.Float64()
	}
	f, g := quarter(), quarter()
	if f == g {
		g += 1
	}
	on := func(w float64) geom.Point {
		c, s := math.Cos(w), math.Sin(w)
		if w == math.Round(w/(math.Pi/2))*(math.Pi/2) {
			c, s = math.Round(c), math.Round(s)
		}
		return a.Add(pt(radius*c, radius*s))
	}
	return geom.Arc(on(f), on(g), a, turn)
}

type move struct {
	o    *Outline
	path geom.Piece
}

func randomMoves(r *rand.Rand, n int) []move {
	tools := allTools()
	grid := []float64{0, 0.001, 1}[r.IntN(3)]
	var ms []move
	for range n {
		m := move{outlineOf(tools[r.IntN(len(tools))]), randomPath(r, grid)}
		if len(ms) > 0 && r.IntN(3) == 0 {
			// an earlier move again, off by as little as rounding or as a
			// digit of a program
			m = ms[r.IntN(len(ms))]
			d := math.Pow(10, -3-11*r.Float64())
			m.path = m.path.Shift([]geom.Point{pt(0, 0), pt(d, 0), pt(-d, 0), pt(0, d), pt(0, -d), pt(d, -d)}[r.IntN(6)])
			if r.IntN(2) == 0 {
				m.path = m.path.Reverse()
			}
		}
		ms = append(ms, m)
	}
	return ms
}

func cutAll(s *Stock, ms []move) (sum Removed) {
	for i, m := range ms {
		sum = plus(sum, s.Cut(m.o, m.path, i))
	}
	return sum
}

// alike holds that two boundaries are the same but for tol: at stations, or
// where steep just beside them.
func alike(t testing.TB, a, b *Stock, at func(z float64) float64, tol float64) {
	t.Helper()
	for z := -59.5; z < 1.5; z += 0.0137 {
		lo, hi := math.Inf(1), math.Inf(-1)
		for _, d := range []float64{-1e-7, 0, 1e-7} {
			r := radiusAt(b, at(z+d))
			lo, hi = min(lo, r), max(hi, r)
		}
		got := radiusAt(a, z)
		require.True(t, got >= lo-tol && got <= hi+tol, "z %v: %v against %v to %v", z, got, lo, hi)
	}
}

var rounds = flag.Int("rounds", 100, "rounds of each random test")

// Removed and left is what was before; a cut never adds; the same cut again
// cuts nothing.
func TestCutKeepsTheBooks(t *testing.T) {
	for i := range uint64(*rounds) {
		r := seeded(t, i)
		s := New(bar(20, 60, 1), nil, Hold{})
		for j, m := range randomMoves(r, 20) {
			before := s.Area()
			was := s.String()
			probe := s.Probe(m.o, m.path)
			require.Equal(t, was, s.String(), "a probe changed something")
			res := s.Cut(m.o, m.path, j)
			require.Equal(t, probe.Area, res.Area)
			require.Equal(t, probe.Depth, res.Depth)
			require.GreaterOrEqual(t, res.Area, -1e-12)
			loose := 0.0
			for _, l := range res.Loose {
				require.Positive(t, l.Area)
				require.Less(t, l.Low, l.High)
				loose += l.Area
			}
			near(t, before, s.Area()+res.Area+loose, 1e-9, "move", j)
			sound(t, s)
			was = s.String()
			again := s.Cut(m.o, m.path, 1000)
			require.LessOrEqual(t, again.Area, 1e-9, "move %d again", j)
			require.LessOrEqual(t, again.Depth, 2e-5, "move %d again", j) // a sliver beside the upright side of a circle
			if again.Area == 0 {
				require.Equal(t, was, s.String())
			}
		}
	}
}

// The order of moves does not matter.
func TestOrder(t *testing.T) {
	for i := range uint64(*rounds) {
		r := seeded(t, i)
		ms := randomMoves(r, 15)
		a := New(bar(20, 60, 1), nil, Hold{})
		cutAll(a, ms)
		b := New(bar(20, 60, 1), nil, Hold{})
		r.Shuffle(len(ms), func(i, j int) { ms[i], ms[j] = ms[j], ms[i] })
		cutAll(b, ms)
		// of moves that nearly coincide either may leave its skin
		alike(t, a, b, func(z float64) float64 { return z }, 4*skin)
		alike(t, b, a, func(z float64) float64 { return z }, 4*skin)
		near(t, a.Area(), b.Area(), 1e-7) // a skin of 1e-9 along 100 mm of boundary
	}
}

// Cutting the mirror image with the other hand, or all of it shifted, gives
// the mirror image, or the same shifted.
func TestMirrorAndShift(t *testing.T) {
	for i := range uint64(*rounds) {
		r := seeded(t, i)
		a := New(bar(20, 60, 1), nil, Hold{})
		b := New(bar(20, 60, 59), nil, Hold{Known: true, Low: 59, High: 59})
		c := New(bar(20, 60, 1+17.25), nil, Hold{})
		tools := allTools()
		leans := i%2 == 0
		if !leans {
			tools = slices.DeleteFunc(tools, func(t *shop.Tool) bool { return outlineOf(t).lean != nil })
		}
		for j := range 15 {
			tool := *tools[r.IntN(len(tools))]
			other := tool
			other.Right = !tool.Right
			path := randomPath(r, 1)
			ra := a.Cut(outlineOf(&tool), path, j)
			rb := b.Cut(outlineOf(&other), path.MirrorZ(), j)
			rc := c.Cut(outlineOf(&tool), path.Shift(pt(17.25, 0)), j)
			near(t, ra.Area, rb.Area, 1e-8)
			near(t, ra.Area, rc.Area, 1e-8)
			// beside metal that overhangs depths are estimates; else the search
			// for the deepest place is not symmetric, and may stop at half
			if leans {
				continue
			}
			for _, d := range [][2]float64{{ra.Depth, rb.Depth}, {ra.Depth, rc.Depth}, {ra.Body, rb.Body}} {
				near(t, d[0], d[1], 1e-7+0.6*max(d[0], d[1]))
			}
		}
		alike(t, a, b, func(z float64) float64 { return -z }, 1e-9)
		alike(t, a, c, func(z float64) float64 { return z + 17.25 }, 1e-9)
	}
}
