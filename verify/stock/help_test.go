package stock

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"

	"taperwright/profiles/geom"
	"taperwright/profiles/shop"
)

// near refuses NaN, which InDelta lets pass.
func near(t testing.TB, want, got, tol float64, msg ...any) {
	t.Helper()
	require.True(t, tol > 0 && math.Abs(want-got) <= tol, "want %v, got %v, off by %v (tolerance %v) %v", want, got, got-want, tol, msg)
}

func pt(z, r float64) geom.Point { return geom.Point{Z: z, R: r} }

func deg(a float64) float64 { return a * math.Pi / 180 }

// turning returns a right-hand outside tool; lengths of both edges 12.9 (80
// degrees, inscribed circle 12.7: 12.7 / sin 80 = 12.90).
func turning(nose, kappa, included float64) *shop.Tool {
	t := &shop.Tool{Nose: nose, Kind: "turn", Right: true, TipX: -1, TipZ: -1}
	t.CuttingAngle.Value, t.Included.Value = deg(kappa), deg(included)
	t.MainReach.Value, t.MinorReach.Value = 12.9, 12.9
	return t
}

func disc(nose float64) *shop.Tool {
	return &shop.Tool{Nose: nose, Round: true, Right: true}
}

func noseOnly(nose float64) *shop.Tool {
	return &shop.Tool{Nose: nose, Right: true, TipX: -1, TipZ: -1}
}

func outlineOf(t *shop.Tool) *Outline {
	o, _ := OutlineOf(t)
	return &o
}

// bar returns a solid bar of that radius from z = -length to z = front.
func bar(radius, length, front float64) geom.Chain {
	return geom.Chain{
		geom.Line(pt(front, 0), pt(front, radius)),
		geom.Line(pt(front, radius), pt(front-length, radius)),
		geom.Line(pt(front-length, radius), pt(front-length, 0)),
	}
}

// lines cuts along straight moves of the programmed point through ps, one
// owner after the other from first, and sums what they did.
func lines(s *Stock, o *Outline, first int, ps ...geom.Point) Removed {
	var sum Removed
	far := false
	for i := 1; i < len(ps); i++ {
		sum = plus(sum, s.Cut(o, o.Path(geom.Line(ps[i-1], ps[i]), &far), first+i-1))
	}
	return sum
}

func plus(a, b Removed) Removed {
	a.Area += b.Area
	a.Visited += b.Visited
	a.Loose = append(a.Loose, b.Loose...)
	if b.Depth > a.Depth {
		a.Depth, a.At = b.Depth, b.At
	}
	if b.Body > a.Body {
		a.Body, a.BodyAt = b.Body, b.BodyAt
	}
	return a
}

// radiusAt reads the outer boundary at z, just right of a step.
func radiusAt(s *Stock, z float64) float64 {
	return s.outer.at(s.outer.find(z)).c.at(z)
}

// sound holds the rules that every stock keeps.
func sound(t testing.TB, s *Stock) {
	t.Helper()
	p := s.outer
	last := math.Inf(-1)
	require.Equal(t, len(p.chunks), len(p.first))
	for i, c := range p.chunks {
		require.NotEmpty(t, c.s)
		require.LessOrEqual(t, len(c.s), chunkFull+chunkSmall)
		require.Equal(t, p.first[i], c.s[0].z)
		for k := range c.s {
			sp := &c.s[k]
			require.Greater(t, sp.z, last)
			if i+k > 0 && sp.z > -farAway {
				require.Greater(t, sp.z-last, 0.99*sliver, "sliver at %v", sp.z)
			}
			last = sp.z
			a, b := sp.z, p.end(place{i, k})
			lo, hi := sp.c.low(a, b), sp.c.high(a, b)
			require.False(t, math.IsNaN(lo) || math.IsNaN(hi))
			require.LessOrEqual(t, hi, p.tops.of(0, i)+1e-8)
			require.GreaterOrEqual(t, lo, -10*skin) // told at the middle of a piece, more at its ends
			if sp.owner == gone {
				continue
			}
			m := 0.5 * (a + b)
			require.Greater(t, sp.c.at(m), s.floor.s[s.floor.find(m)].c.at(m))
		}
	}
	for l := range p.tops { // runs reach as high as what they are made of
		for i := range p.chunks {
			require.GreaterOrEqual(t, p.tops.of(l, i), p.tops.of(0, i))
		}
	}
	chained(t, s.Outside())
}

// chained holds that surfaces follow one another, from front to back.
func chained(t testing.TB, ss []Surface) {
	t.Helper()
	for i := 1; i < len(ss); i++ {
		a, b := ss[i-1].Piece.To, ss[i].Piece.From
		require.LessOrEqual(t, b.Z, a.Z)
		if a.Z == b.Z {
			near(t, a.R, b.R, 2e-9, "gap between surfaces", i-1, i, a, b)
		}
	}
	for _, f := range ss {
		require.LessOrEqual(t, f.Piece.To.Z, f.Piece.From.Z)
	}
}
