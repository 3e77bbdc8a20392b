package stock

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"taperwright/profiles/geom"
)

// leanAt is the z where the leaning edge of a 95 degree tool reaches r, the
// nose centre being at c: from the end of the nose, R cos 5 left and R sin 5 up,
// at 5 degrees from the upright.
func leanAt(c geom.Point, nose, r float64) float64 {
	five := deg(5)
	return c.Z - nose*math.Cos(five) + (r-c.R-nose*math.Sin(five))*math.Tan(five)
}

// A pass to a shoulder with a 95 degree tool leaves a wedge over the edge. The
// boundary shows the highest metal: it steps where the edge comes out at the
// top, and the floor under the wedge is not seen. Leaving at 45 degrees
// touches nothing; going straight out shears the wedge off.
func TestWedgeOverALeaningEdge(t *testing.T) {
	const nose, depth, end = 0.8, 2.5, -40.0
	o := outlineOf(turning(nose, 95, 80))
	s := New(bar(25, 100, 0), nil, Hold{})
	lines(s, o, 1, pt(2, 25-depth), pt(end, 25-depth))
	sound(t, s)
	comes := leanAt(pt(end+nose, 25-depth+nose), nose, 25)
	near(t, 0.145674, comes-end, 1e-6) // 0.8 (1 - cos 5) + (1.7 - 0.8 sin 5) tan 5 = 0.003044 + 0.142630
	near(t, 25, radiusAt(s, comes-1e-6), 1e-12)
	assert.Less(t, radiusAt(s, comes+1e-6), 24.0)

	far := false
	out := s.Probe(o, o.Path(geom.Line(pt(end, 25-depth), pt(end+4, 29)), &far))
	assert.Zero(t, out.Area)
	assert.Zero(t, out.Depth)
	back := s.Probe(o, o.Path(geom.Line(pt(end, 25-depth), pt(2, 25-depth)), &far))
	assert.Zero(t, back.Area)
	assert.Zero(t, back.Depth)

	up := geom.Line(pt(end, 25-depth), pt(end, 27))
	probe := s.Probe(o, o.Path(up, &far))
	// The deepest point of the wedge is as far from its top as from the edge's
	// cut: w sin 5 / (1 + sin 5), w = 1.63 its height. What is told is no less,
	// and no more than the wedge is wide.
	w := 25 - (25 - depth + nose + nose*math.Sin(deg(5)))
	assert.GreaterOrEqual(t, probe.Depth, w*math.Sin(deg(5))/(1+math.Sin(deg(5)))-1e-9)
	assert.LessOrEqual(t, probe.Depth, comes-end+1e-9)
	r := s.Cut(o, o.Path(up, &far), 2)
	assert.Equal(t, probe.Depth, r.Depth)
	sound(t, s)
	// all in all: the floor, the nose's corner, the face at the end
	near(t, 100*25-(depth*-end-nose*nose*(1-math.Pi/4)), s.Area(), 1e-9)
	owners := map[int]bool{}
	for _, f := range s.Outside() {
		owners[f.Owner] = true
	}
	assert.Equal(t, map[int]bool{Raw: true, 1: true, 2: true}, owners)
}

// Levels to one shoulder, whatever their order, and the way up the wall leave
// the same. The wall is the last mover's only where it took something.
func TestLevelsToAShoulder(t *testing.T) {
	o := outlineOf(turning(0.8, 95, 80))
	var want string
	for _, order := range [][]int{{0, 1, 2, 3}, {3, 2, 1, 0}, {2, 0, 3, 1}} {
		s := New(bar(25, 100, 0), nil, Hold{})
		for _, i := range order {
			r := 24 - float64(i)
			lines(s, o, 7, pt(2, r), pt(-40, r))
			sound(t, s)
		}
		lines(s, o, 7, pt(-40, 21), pt(-40, 27))
		sound(t, s)
		if want == "" {
			want = s.String()
		}
		assert.Equal(t, want, s.String())
	}
	assert.Equal(t, `outside
  line (0.0000000, 0.0000000) (0.0000000, 21.0000000) raw
  line (0.0000000, 21.0000000) (-39.2000000, 21.0000000) 7
  cw (-39.2000000, 21.0000000) (-40.0000000, 21.8000000) round (-39.2000000, 21.8000000) 7
  line (-40.0000000, 21.8000000) (-40.0000000, 25.0000000) 7
  line (-40.0000000, 25.0000000) (-100.0000000, 25.0000000) raw
  line (-100.0000000, 25.0000000) (-100.0000000, 0.0000000) raw
`, want)
}

// A wall cut by levels belongs to each level for its height.
func TestWallInCourses(t *testing.T) {
	o := outlineOf(turning(0.4, 90, 80))
	s := New(bar(25, 100, 0), nil, Hold{})
	for i := range 3 {
		r := 24 - float64(i)
		lines(s, o, i, pt(2, r), pt(-40, r))
	}
	sound(t, s)
	var at []float64
	var owners []int
	for _, f := range s.Outside() {
		if f.Piece.From.Z == -40 && f.Piece.To.Z == -40 {
			at = append(at, f.Piece.From.R, f.Piece.To.R)
			owners = append(owners, f.Owner)
		}
	}
	assert.Equal(t, []int{2, 1, 0}, owners)
	// each level's wall begins where its nose ends, 0.4 above its floor
	require.Len(t, at, 6)
	for i, want := range []float64{22.4, 23.4, 23.4, 24.4, 24.4, 25} {
		near(t, want, at[i], 1e-9)
	}
}

// Deeper than the edge is long: the holder meets the metal. At 90 degrees the
// sharp corner lies R / tan 40 below the nose centre, the insert's upper corner
// 12.9 above that; the floor is R below the centre.
func TestBodyInMetal(t *testing.T) {
	const nose = 0.8
	o := outlineOf(turning(nose, 90, 80))
	high := 12.9 - nose/math.Tan(deg(40)) + nose
	for _, depth := range []float64{high - 0.01, high + 0.75} {
		s := New(bar(25, 100, 0), nil, Hold{})
		r := lines(s, o, 0, pt(2, 25-depth), pt(-40, 25-depth))
		near(t, max(0, depth-high)+1, r.Body+1, 1e-9)
		near(t, depth, r.Depth, 1e-9)
	}
	// a 95 degree edge alone is no body, however deep within its length
	s := New(bar(25, 100, 0), nil, Hold{})
	r := lines(s, outlineOf(turning(nose, 95, 80)), 0, pt(2, 14), pt(-40, 14))
	assert.Zero(t, r.Body)
	// nor is anything with the nose alone, but it is said
	flat, not := OutlineOf(noseOnly(nose))
	assert.Len(t, not, 2)
	s = New(bar(25, 100, 0), nil, Hold{})
	r = s.Cut(&flat, geom.Line(pt(2, 5), pt(-40, 5)), 0)
	assert.Zero(t, r.Body)
	near(t, 25-radiusAt(s, -20), 20.8, 1e-12)
}
