package profiles

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"taperwright/profiles/geom"
)

func pt(z, r float64) geom.Point { return geom.Point{Z: z, R: r} }

// The sums use the triangles 3-4-5, 5-12-13 and 8-15-17, so that each place
// can be followed with pencil and paper.
func TestBlend(t *testing.T) {
	line := func(a, b geom.Point) geom.Piece { return geom.Line(a, b) }
	for _, c := range []struct {
		name            string
		a, b            geom.Piece
		radius          float64
		from, to, round geom.Point
		turn            geom.Turn
	}{
		// R in from each line
		{"line line, outside, square", line(pt(0, 0), pt(0, 20)), line(pt(0, 20), pt(-30, 20)), 3, pt(0, 17), pt(-3, 20), pt(-3, 17), geom.CCW},
		// R away from each line on the air side
		{"line line, inside, square", line(pt(0, 20), pt(-30, 20)), line(pt(-30, 20), pt(-30, 35)), 2, pt(-28, 20), pt(-30, 22), pt(-28, 22), geom.CW},
		// directions (-1,0) and (-0.8,0.6): tan(turn/2) = 0.6/(1+0.8) = 1/3, 6/3 = 2 on each:
		// (-30,20) + 2 (-0.8,0.6) = (-31.6,21.2); centre 6 above (-28,20); 3.6² + 4.8² = 6²
		{"line line, inside, oblique", line(pt(0, 20), pt(-30, 20)), line(pt(-30, 20), pt(-50, 35)), 6, pt(-28, 20), pt(-31.6, 21.2), pt(-28, 26), geom.CW},
		// the same from a cone to a journal: (-30,20) - 2 (-0.8,0.6) = (-28.4,18.8)
		{"line line, outside, oblique", line(pt(-10, 5), pt(-30, 20)), line(pt(-30, 20), pt(-60, 20)), 6, pt(-28.4, 18.8), pt(-32, 20), pt(-32, 14), geom.CCW},
		// circle of 10 round (-50,18), centre 10+3 = 13 from it and 3 above the line r 20:
		// 23-18 = 5, so 12 in z: (-38,23); on the circle (-50,18) + 10/13 (12,5)
		{"line arc, inside", line(pt(0, 20), pt(-50+9.797958971132712, 20)), geom.Arc(pt(-50+9.797958971132712, 20), pt(-50, 28), pt(-50, 18), geom.CCW), 3,
			pt(-38, 20), pt(-40.7692307692, 21.8461538462), pt(-38, 23), geom.CW},
		// circle of 13 round (-20,10), centre 13-3 = 10 from it and 3 below the line r 21:
		// 18-10 = 8, so 6 in z: (-14,18); on the circle (-20,10) + 1.3 (6,8)
		{"arc line, outside", geom.Arc(pt(-7, 10), pt(-20+6.928203230275509, 21), pt(-20, 10), geom.CCW), line(pt(-20+6.928203230275509, 21), pt(-40, 21)), 3,
			pt(-12.2, 20.4), pt(-14, 21), pt(-14, 18), geom.CCW},
		// circles of 10 round (-20,10) and (-36,10), 16 apart, meet 6 above, at (-28,16);
		// centre 10+7 = 17 from both: 8 in z, 15 up; on them (-20,10) + 10/17 (-8,15), and mirrored
		{"arc arc, inside", geom.Arc(pt(-10, 10), pt(-28, 16), pt(-20, 10), geom.CCW), geom.Arc(pt(-28, 16), pt(-46, 10), pt(-36, 10), geom.CCW), 7,
			pt(-24.7058823529, 18.8235294118), pt(-31.2941176471, 18.8235294118), pt(-28, 25), geom.CW},
		// the same upside down: two hollows meet in a ridge at (-28,34)
		{"arc arc, outside", geom.Arc(pt(-20, 30), pt(-28, 34), pt(-20, 40), geom.CW), geom.Arc(pt(-28, 34), pt(-36, 30), pt(-36, 40), geom.CW), 7,
			pt(-24.7058823529, 31.1764705882), pt(-31.2941176471, 31.1764705882), pt(-28, 25), geom.CCW},
	} {
		t.Run(c.name, func(t *testing.T) {
			left, arc, right, ok := blend(c.a, c.b, c.radius)
			require.True(t, ok)
			near(t, c.from, arc.From)
			near(t, c.to, arc.To)
			near(t, c.round, arc.Center)
			assert.Equal(t, c.turn, arc.Turn)
			assert.Equal(t, c.a.From, left.From)
			assert.Equal(t, arc.From, left.To)
			assert.Equal(t, arc.To, right.From)
			assert.Equal(t, c.b.To, right.To)
		})
	}
	_, _, _, ok := blend(line(pt(0, 0), pt(0, 20)), line(pt(0, 20), pt(-30, 20)), 20.001)
	assert.False(t, ok, "the face is 20 high")
	_, _, _, ok = blend(line(pt(0, 20), pt(-30, 20)), line(pt(-30, 20), pt(-50, 20)), 1)
	assert.False(t, ok, "no corner")
}

func TestBevel(t *testing.T) {
	for _, c := range []struct {
		name         string
		a, b         geom.Piece
		width, slope float64
		from, to     geom.Point
	}{
		{"front edge", geom.Line(pt(0, 0), pt(0, 20)), geom.Line(pt(0, 20), pt(-30, 20)), 1.5, 1, pt(0, 18.5), pt(-1.5, 20)},
		// 3 tan 30° = 1.7320508
		{"front edge, 30 degrees", geom.Line(pt(0, 0), pt(0, 20)), geom.Line(pt(0, 20), pt(-30, 20)), 3, 0.57735026919, pt(0, 18.2679491924), pt(-3, 20)},
		// the cone grows 3 in 4: 1.5 in 2, so it stands at 21.5; 45 degrees down from there is 19.5
		{"front edge of a cone", geom.Line(pt(0, 0), pt(0, 20)), geom.Line(pt(0, 20), pt(-40, 50)), 2, 1, pt(0, 19.5), pt(-2, 21.5)},
		// 1 in 4 between a cone 3 in 4 and a journal: 4 wide, 1 high; 1 high on the cone is 4/3 long
		{"cone to journal", geom.Line(pt(-10, 5), pt(-30, 20)), geom.Line(pt(-30, 20), pt(-60, 20)), 4, 0.25, pt(-28.6666666667, 19), pt(-32.6666666667, 20)},
		{"back edge", geom.Line(pt(0, 20), pt(-30, 20)), geom.Line(pt(-30, 20), pt(-30, 5)), 2, 1, pt(-28, 20), pt(-30, 18)},
		{"inside corner", geom.Line(pt(0, 20), pt(-30, 20)), geom.Line(pt(-30, 20), pt(-30, 35)), 2, 1, pt(-28, 20), pt(-30, 22)},
		// circle of 10 round (-8,0) begins at (0,6); (-2,8) is on it; 2 wide and 3 high from (0,5)
		{"line arc, outside", geom.Line(pt(0, 0), pt(0, 6)), geom.Arc(pt(0, 6), pt(-8, 10), pt(-8, 0), geom.CCW), 2, 1.5, pt(0, 5), pt(-2, 8)},
		// circles as in the blend: (-20,10) + (-6,8) to (-36,10) + (2.8,9.6): 7.2 wide, 1.6 high
		{"arc arc, inside", geom.Arc(pt(-10, 10), pt(-28, 16), pt(-20, 10), geom.CCW), geom.Arc(pt(-28, 16), pt(-46, 10), pt(-36, 10), geom.CCW), 7.2, 1.6 / 7.2, pt(-26, 18), pt(-33.2, 19.6)},
	} {
		t.Run(c.name, func(t *testing.T) {
			left, line, right, ok := bevel(c.a, c.b, c.width, c.slope)
			require.True(t, ok)
			near(t, c.from, line.From)
			near(t, c.to, line.To)
			assert.Equal(t, line.From, left.To)
			assert.Equal(t, line.To, right.From)
		})
	}
	_, _, _, ok := bevel(geom.Line(pt(-10, 5), pt(-30, 20)), geom.Line(pt(-30, 20), pt(-60, 20)), 1, 1)
	assert.False(t, ok, "45 degrees does not lie between 36.87 and 0")
	_, _, _, ok = bevel(geom.Line(pt(0, 18), pt(0, 20)), geom.Line(pt(0, 20), pt(-30, 20)), 2.001, 1)
	assert.False(t, ok, "the face is 2 high")
}

func near(t *testing.T, want, got geom.Point) {
	t.Helper()
	// the sums are written with ten decimals
	assert.LessOrEqual(t, got.Sub(want).Len(), 1e-9, "want %v, got %v", want, got)
}
