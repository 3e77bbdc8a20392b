package toolpath

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/require"

	"taperwright/profiles/geom"
)

// Corners of every sort, nose radius 1, summed by hand.
func TestOffsetByHand(t *testing.T) {
	h := math.Sqrt(0.5)
	for name, c := range map[string]struct {
		contour []geom.Piece
		want    []geom.Piece
	}{
		// A face up to 10 and a cylinder back: the nose rolls round (0, 10).
		"line-line, outside": {
			lines(at(0, 0), at(0, 10), at(-20, 10)),
			[]geom.Piece{
				geom.Line(at(1, 0), at(1, 10)),
				geom.Arc(at(1, 10), at(0, 11), at(0, 10), geom.CCW),
				geom.Line(at(0, 11), at(-20, 11)),
			},
		},
		// A cylinder of 10 and a shoulder at -20: stopped at (-19, 11).
		"line-line, inside": {
			lines(at(0, 10), at(-20, 10), at(-20, 20)),
			[]geom.Piece{geom.Line(at(0, 11), at(-19, 11)), geom.Line(at(-19, 11), at(-19, 20))},
		},
		// A front cone of 45 degrees from (0, 10): its offset is the line
		// through (h, 10+h); it meets r = 11 at z = h - (1-h) = 2h-1 before the
		// corner, by tan(22.5 deg) = 0.41421 = 2h-1.
		"line-line, inside, slanted": {
			lines(at(5, 10), at(0, 10), at(-10, 20)),
			[]geom.Piece{geom.Line(at(5, 11), at(2*h-1, 11)), geom.Line(at(2*h-1, 11), at(-10+h, 20+h))},
		},
		// The same corner outside: cone first, then cylinder.
		"line-line, outside, slanted": {
			lines(at(10, 0), at(0, 10), at(-10, 10)),
			[]geom.Piece{
				geom.Line(at(10+h, h), at(h, 10+h)),
				geom.Arc(at(h, 10+h), at(0, 11), at(0, 10), geom.CCW),
				geom.Line(at(0, 11), at(-10, 11)),
			},
		},
		// A tangent outside fillet of 3 grows to 4.
		"line-arc-line, tangent, outside": {
			[]geom.Piece{geom.Line(at(0, 0), at(0, 7)), geom.Arc(at(0, 7), at(-3, 10), at(-3, 7), geom.CCW), geom.Line(at(-3, 10), at(-9, 10))},
			[]geom.Piece{geom.Line(at(1, 0), at(1, 7)), geom.Arc(at(1, 7), at(-3, 11), at(-3, 7), geom.CCW), geom.Line(at(-3, 11), at(-9, 11))},
		},
		// A tangent inside fillet of 3 shrinks to 2.
		"line-arc-line, tangent, inside": {
			[]geom.Piece{geom.Line(at(9, 10), at(3, 10)), geom.Arc(at(3, 10), at(0, 13), at(3, 13), geom.CW), geom.Line(at(0, 13), at(0, 20))},
			[]geom.Piece{geom.Line(at(9, 11), at(3, 11)), geom.Arc(at(3, 11), at(1, 13), at(3, 13), geom.CW), geom.Line(at(1, 13), at(1, 20))},
		},
		// One of 1, the nose's own: a point, the lines meet.
		"inside fillet of the nose's own radius": {
			[]geom.Piece{geom.Line(at(9, 10), at(1, 10)), geom.Arc(at(1, 10), at(0, 11), at(1, 11), geom.CW), geom.Line(at(0, 11), at(0, 20))},
			[]geom.Piece{geom.Line(at(9, 11), at(1, 11)), geom.Line(at(1, 11), at(1, 20))},
		},
		// One of 0.5, smaller than the nose: the lines meet at the same place.
		"inside fillet under the nose": {
			[]geom.Piece{geom.Line(at(9, 10), at(0.5, 10)), geom.Arc(at(0.5, 10), at(0, 10.5), at(0.5, 10.5), geom.CW), geom.Line(at(0, 10.5), at(0, 20))},
			[]geom.Piece{geom.Line(at(9, 11), at(1, 11)), geom.Line(at(1, 11), at(1, 20))},
		},
		// A ball of 5 after a cylinder of 4: inside corner at (0, 4), centre
		// (-3, 0). Offset arc radius 6, line r = 5: z = -3 + sqrt(36-25).
		"line-arc, inside": {
			[]geom.Piece{geom.Line(at(9, 4), at(0, 4)), geom.Arc(at(0, 4), at(-3, 5), at(-3, 0), geom.CCW)},
			[]geom.Piece{
				geom.Line(at(9, 5), at(-3+math.Sqrt(11), 5)),
				geom.Arc(at(-3+math.Sqrt(11), 5), at(-3, 6), at(-3, 0), geom.CCW),
			},
		},
		// Outside: face to 3, then an arc of 5 round (-4, 0) from (0, 3); its
		// normal there is (0.8, 0.6).
		"line-arc, outside": {
			[]geom.Piece{geom.Line(at(0, 0), at(0, 3)), geom.Arc(at(0, 3), at(-4, 5), at(-4, 0), geom.CCW)},
			[]geom.Piece{
				geom.Line(at(1, 0), at(1, 3)),
				geom.Arc(at(1, 3), at(0.8, 3.6), at(0, 3), geom.CCW),
				geom.Arc(at(0.8, 3.6), at(-4, 6), at(-4, 0), geom.CCW),
			},
		},
		// Two balls of 5 round (4, 0) and (-4, 0) meet inside at (0, 3): their
		// offsets of 6 at (0, sqrt(36-16)).
		"arc-arc, inside": {
			[]geom.Piece{geom.Arc(at(4, 5), at(0, 3), at(4, 0), geom.CCW), geom.Arc(at(0, 3), at(-4, 5), at(-4, 0), geom.CCW)},
			[]geom.Piece{
				geom.Arc(at(4, 6), at(0, math.Sqrt(20)), at(4, 0), geom.CCW),
				geom.Arc(at(0, math.Sqrt(20)), at(-4, 6), at(-4, 0), geom.CCW),
			},
		},
		// Two hollows of 5 round (4, 10) and (-4, 10) meet outside at (0, 7):
		// normals there (0.8, 0.6) and (-0.8, 0.6); the hollows shrink to 4.
		"arc-arc, outside": {
			[]geom.Piece{geom.Arc(at(4, 5), at(0, 7), at(4, 10), geom.CW), geom.Arc(at(0, 7), at(-4, 5), at(-4, 10), geom.CW)},
			[]geom.Piece{
				geom.Arc(at(4, 6), at(0.8, 7.6), at(4, 10), geom.CW),
				geom.Arc(at(0.8, 7.6), at(-0.8, 7.6), at(0, 7), geom.CCW),
				geom.Arc(at(-0.8, 7.6), at(-4, 6), at(-4, 10), geom.CW),
			},
		},
		// A hollow run on tangent into a ball: no corner.
		"arc-arc, tangent": {
			[]geom.Piece{geom.Arc(at(5, 5), at(0, 10), at(5, 10), geom.CW), geom.Arc(at(0, 10), at(-3, 13), at(-3, 10), geom.CCW)},
			[]geom.Piece{geom.Arc(at(5, 6), at(1, 10), at(5, 10), geom.CW), geom.Arc(at(1, 10), at(-3, 14), at(-3, 10), geom.CCW)},
		},
		// A groove 1 wide: the nose, 2 wide, spans it from edge to edge,
		// (0, 10) and (-1, 10); the rolls cross at z -0.5, r 10 + sqrt(0.75).
		// Floor and walls are lost: a loop across three pieces.
		"groove narrower than the nose": {
			lines(at(5, 10), at(0, 10), at(0, 6), at(-1, 6), at(-1, 10), at(-5, 10)),
			[]geom.Piece{
				geom.Line(at(5, 11), at(0, 11)),
				geom.Arc(at(0, 11), at(-0.5, 10+math.Sqrt(0.75)), at(0, 10), geom.CCW),
				geom.Arc(at(-0.5, 10+math.Sqrt(0.75)), at(-1, 11), at(-1, 10), geom.CCW),
				geom.Line(at(-1, 11), at(-5, 11)),
			},
		},
		// A step of 0.2 up within the nose: roll of the edge (0, 10.2) meets
		// r = 11: z = sqrt(1 - 0.8²) = 0.6.
		"step lower than the nose": {
			lines(at(5, 10), at(0, 10), at(0, 10.2), at(-5, 10.2)),
			[]geom.Piece{
				geom.Line(at(5, 11), at(0.6, 11)),
				geom.Arc(at(0.6, 11), at(0, 11.2), at(0, 10.2), geom.CCW),
				geom.Line(at(0, 11.2), at(-5, 11.2)),
			},
		},
	} {
		got, err := ownedTrack(c.contour).offset(1)
		require.NoError(t, err, name)
		require.Len(t, got, len(c.want), "%s:\n%v", name, got.chain())
		for i, w := range c.want {
			require.Equal(t, w.Turn, got[i].Turn, name)
			nearPoint(t, w.From, got[i].From, 1e-13, name)
			nearPoint(t, w.To, got[i].To, 1e-13, name)
			if w.Turn != 0 {
				nearPoint(t, w.Center, got[i].Center, 1e-13, name)
			}
		}
	}
}

// At every place of the offset the contour is exactly one radius away; and
// the offset stands as high as the highest of discs put on the contour's own
// points, found by trying them all.
func TestOffsetOfRandomContours(t *testing.T) {
	seed := uint64(11)
	t.Logf("seed %d", seed)
	r := rand.New(rand.NewPCG(seed, 1))
	for k := range 150 {
		pieces := randomContour(r, 1.2*r.Float64(), 0.05)
		d := 0.1 + 2*r.Float64()
		// an end that nothing stands in the way of
		end := pieces[len(pieces)-1].To
		pieces = append(pieces, geom.Line(end, end.Add(at(-3*d, 0))))
		tr := ownedTrack(pieces)
		got, err := tr.offset(d)
		require.NoError(t, err, "contour %d, %v\n%v", k, d, geom.Chain(pieces))
		whole := geom.Chain(pieces)
		require.LessOrEqual(t, got.chain().Gap(), 0.0)
		for _, e := range got {
			for i := range 9 {
				q := along(e.Piece, float64(i)/8)
				near(t, d, whole.Distance(q), 2e-8, "contour", k, e)
			}
			require.GreaterOrEqual(t, e.From.Z, e.To.Z-1e-9)
		}
		// the discs
		var dots []geom.Point
		for _, p := range pieces {
			n := int(p.Length()/0.002) + 1
			for i := range n + 1 {
				dots = append(dots, along(p, float64(i)/float64(n)))
			}
		}
		prof := got.profile()
		for range 20 {
			e := got[r.IntN(len(got))]
			z := along(e.Piece, 0.1+0.8*r.Float64()).Z
			high := math.Inf(-1)
			for _, w := range dots {
				if x := math.Abs(z - w.Z); x < d {
					high = math.Max(high, w.R+math.Sqrt(d*d-x*x))
				}
			}
			// under a wall the height at one z is a range: the top of it
			if up := prof.at(z); math.Abs(prof.at(z-1e-4)-prof.at(z+1e-4)) < 0.01 {
				near(t, high, up, 2e-4, "contour", k, "at z", z)
			}
		}
	}
}

// along returns the point at share k of a piece, by package math.
func along(p geom.Piece, k float64) geom.Point {
	if p.IsLine() {
		return p.From.Along(p.To.Sub(p.From), k)
	}
	a := p.From.Sub(p.Center)
	s, c := math.Sincos(float64(p.Turn) * p.Sweep() * k)
	return p.Center.Add(geom.Point{Z: a.Z*c - a.R*s, R: a.Z*s + a.R*c})
}
