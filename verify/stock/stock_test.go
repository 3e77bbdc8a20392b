package stock

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"taperwright/profiles/geom"
)

// A pass along a cylinder: bar of radius 25, tool at radius 23 from z 2 to
// z -40. The floor lies at 23 from z -40+0.8 (below the nose centre) to the
// face; the nose leaves its quarter, 0.8 high, and the edge at 90 degrees the
// wall. Cut: 2 x 40 less what stands in the corner, R^2 (1 - pi/4).
func TestCylinder(t *testing.T) {
	s := New(bar(25, 100, 0), nil, Hold{})
	near(t, 2500, s.Area(), 1e-9)
	o := outlineOf(turning(0.8, 90, 80))
	r := lines(s, o, 7, pt(2, 23), pt(-40, 23))
	near(t, 2*40-0.64*(1-math.Pi/4), r.Area, 1e-12)
	near(t, 2, r.Depth, 1e-12)
	assert.Zero(t, r.Body)
	assert.Empty(t, r.Loose)
	near(t, 2500-r.Area, s.Area(), 1e-9)
	sound(t, s)
	assert.Equal(t, `outside
  line (0.0000000, 0.0000000) (0.0000000, 23.0000000) raw
  line (0.0000000, 23.0000000) (-39.2000000, 23.0000000) 7
  cw (-39.2000000, 23.0000000) (-40.0000000, 23.8000000) round (-39.2000000, 23.8000000) 7
  line (-40.0000000, 23.8000000) (-40.0000000, 25.0000000) 7
  line (-40.0000000, 25.0000000) (-100.0000000, 25.0000000) raw
  line (-100.0000000, 25.0000000) (-100.0000000, 0.0000000) raw
`, s.String())
	again := lines(s, o, 9, pt(2, 23), pt(-40, 23))
	assert.Zero(t, again.Area)
	assert.Zero(t, again.Depth)
}

// Definitions 10: an uncompensated nose leaves 2Rt(1 - tan(a/2)) on a front
// cone and gouges 2Rt(1 + tan(a/2)) on a back cone, both on diameter.
func TestConesWithoutCompensation(t *testing.T) {
	const nose, length = 0.8, 30.0
	for _, half := range []float64{1, 2.862405226, 8.297144, 20, 44} { // 1:10 and 7/24 among them
		a := deg(half)
		tn, th := math.Tan(a), math.Tan(a/2)
		o := outlineOf(turning(nose, 93, 30)) // minor edge 57 degrees: it does not touch
		s := New(bar(60, 100, 0), nil, Hold{})
		lines(s, o, 0, pt(5, 12-5*tn), pt(-length, 12+length*tn))
		z := -length / 2
		near(t, 2*(12-z*tn)+2*nose*tn*(1-th), 2*radiusAt(s, z), 1e-11, half)

		s = New(bar(60, 100, 0), nil, Hold{})
		// down the back cone, from the front; first a groove of its width is
		// not needed: the nose alone touches
		lines(s, o, 0, pt(-10, 50), pt(-60, 50-50*tn))
		z = -30
		near(t, 2*(50+(z+10)*tn)-2*nose*tn*(1+th), 2*radiusAt(s, z), 1e-11, half)
		sound(t, s)
	}
}

// Facing 1 mm off the front, past the axis to -2R: nothing of the face is
// left, nothing stands in the middle, and below the axis there is nothing.
func TestFace(t *testing.T) {
	s := New(bar(20, 50, 1), nil, Hold{})
	o := outlineOf(turning(0.4, 95, 80))
	r := lines(s, o, 0, pt(0, 22), pt(0, -0.8))
	near(t, 20, r.Area, 1e-12)
	near(t, 1, r.Depth, 1e-12)
	assert.Empty(t, r.Loose)
	assert.Zero(t, r.Body)
	sound(t, s)
	assert.Equal(t, `outside
  line (0.0000000, 0.0000000) (0.0000000, 20.0000000) 0
  line (0.0000000, 20.0000000) (-49.0000000, 20.0000000) raw
  line (-49.0000000, 20.0000000) (-49.0000000, 0.0000000) raw
`, s.String())
}

// Facing to X0 only: the nose leaves its corner R^2 (1 - pi/4) round the axis.
// It touches the axis, so the wedge under the minor edge falls off.
func TestFaceLeavesAPip(t *testing.T) {
	s := New(bar(20, 50, 1), nil, Hold{})
	r := lines(s, outlineOf(turning(0.4, 95, 80)), 0, pt(0, 22), pt(0, 0))
	require.Len(t, r.Loose, 1)
	assert.True(t, r.Loose[0].Chip)
	near(t, 0.16*(1-math.Pi/4), s.Area()-49*20, 1e-12)
	near(t, 20-0.16*(1-math.Pi/4), r.Area+r.Loose[0].Area, 1e-12)
	sound(t, s)
}

// A fillet of radius 3 cut by an arc of the nose centre: rho = 3 - 0.8 about
// the same centre; the surface is the arc of radius 3.
func TestFillet(t *testing.T) {
	s := New(bar(25, 100, 0), nil, Hold{})
	o := outlineOf(turning(0.8, 93, 55))
	// journal of radius 15 to z -30, fillet 3 up to the shoulder at z -33
	c := pt(-30, 18)
	s.Cut(o, geom.Line(pt(3, 15.8), pt(-30, 15.8)), 1)
	s.Cut(o, geom.Arc(pt(-30, 15.8), pt(-32.2, 18), c, geom.CW), 2)
	s.Cut(o, geom.Line(pt(-32.2, 18), pt(-32.2, 27)), 3)
	sound(t, s)
	assert.Equal(t, `outside
  line (0.0000000, 0.0000000) (0.0000000, 15.0000000) raw
  line (0.0000000, 15.0000000) (-30.0000000, 15.0000000) 1
  cw (-30.0000000, 15.0000000) (-33.0000000, 18.0000000) round (-30.0000000, 18.0000000) 2
  line (-33.0000000, 18.0000000) (-33.0000000, 25.0000000) 3
  line (-33.0000000, 25.0000000) (-100.0000000, 25.0000000) raw
  line (-100.0000000, 25.0000000) (-100.0000000, 0.0000000) raw
`, s.String())
	// left: 30 x 15, the quarter of the fillet 3 x 18 - pi 9/4, 67 x 25
	near(t, 30*15+3*18-math.Pi*9/4+67*25, s.Area(), 1e-9)
}

// A ball end of radius 10 through the axis: the centre runs on radius 10.4.
func TestBallEnd(t *testing.T) {
	s := New(bar(10, 40, 0.5), nil, Hold{})
	o := outlineOf(turning(0.4, 95, 80))
	r := s.Cut(o, geom.Line(pt(0.4, 15), pt(0.4, 0)), 0)
	r = plus(r, s.Cut(o, geom.Arc(pt(0.4, 0), pt(-10, 10.4), pt(-10, 0), geom.CCW), 1))
	sound(t, s)
	near(t, math.Pi*100/4+29.5*10, s.Area(), 1e-9)
	near(t, 40*10-s.Area(), r.Area, 1e-9)
	assert.Equal(t, `outside
  ccw (0.0000000, 0.0000000) (-10.0000000, 10.0000000) round (-10.0000000, 0.0000000) 1
  line (-10.0000000, 10.0000000) (-39.5000000, 10.0000000) raw
  line (-39.5000000, 10.0000000) (-39.5000000, 0.0000000) raw
`, s.String())
}

// A nose as round as the path or rounder does not follow a bump: it touches
// with its ends only.
func TestBumpUnderARounderNose(t *testing.T) {
	s := New(bar(20, 40, 0), nil, Hold{})
	o := outlineOf(disc(6))
	// path: upper half circle of radius 2 about (-20, 20), disc of radius 6
	s.Cut(o, geom.Arc(pt(-18, 20), pt(-22, 20), pt(-20, 20), geom.CCW), 0)
	sound(t, s)
	near(t, 20-math.Sqrt(36-4), radiusAt(s, -20), 1e-12) // where the two discs meet
	near(t, 14, radiusAt(s, -18), 1e-12)
	near(t, 14, radiusAt(s, -22), 1e-12)
}

// Straight down with a disc of radius 3 to depth 5: the groove is the disc's
// lower half below straight walls; the upper half is above the metal, no body.
func TestPlungeWithADisc(t *testing.T) {
	s := New(bar(20, 40, 0), nil, Hold{})
	r := s.Cut(outlineOf(disc(3)), geom.Line(pt(-20, 30), pt(-20, 18)), 4)
	near(t, 6*2+math.Pi*9/2, r.Area, 1e-12)
	near(t, 5, r.Depth, 1e-12)
	assert.Zero(t, r.Body)
	sound(t, s)
	// along z at that depth the disc's upper half is in metal: the holder too
	r = s.Cut(outlineOf(disc(3)), geom.Line(pt(-20, 16), pt(-30, 16)), 5)
	assert.Positive(t, r.Body)
	sound(t, s)
}

// A fin 0.3 wide and 5 high, cut off at its foot: no place of the cut is farther
// than half the fin's width from its sides.
func TestDepthThroughAFin(t *testing.T) {
	fin := geom.Chain{
		geom.Line(pt(0, 15), pt(-19.85, 15)), geom.Line(pt(-19.85, 15), pt(-19.85, 20)),
		geom.Line(pt(-19.85, 20), pt(-20.15, 20)), geom.Line(pt(-20.15, 20), pt(-20.15, 15)),
		geom.Line(pt(-20.15, 15), pt(-50, 15)),
	}
	s := New(fin, nil, Hold{})
	r := lines(s, outlineOf(noseOnly(0.4)), 0, pt(-10, 15), pt(-30, 15))
	near(t, 1.5, r.Area, 1e-12)
	near(t, 0.15, r.Depth, 2e-3)
	near(t, -20, r.At.Z, 2e-3)
	near(t, 15, r.At.R, 1e-12)
	// a slab 0.0003 thick off a face 5 high
	s = New(fin, nil, Hold{})
	r = lines(s, outlineOf(noseOnly(0.4)), 0, pt(-19.8503, 22), pt(-19.8503, 15))
	near(t, 0.0003, r.Depth, 1e-6)
}

// A level cut that touches the bottom of a groove's nose just where the two are
// compared: half way between where they meet the rest.
func TestTouchAtTheMiddle(t *testing.T) {
	s := New(bar(20, 60, 0), nil, Hold{})
	s.Cut(outlineOf(turning(0.8, 62.5, 55)), geom.Line(pt(-30, 18), pt(-30, 19)), 0)
	s.Cut(outlineOf(noseOnly(0.8)), geom.Line(pt(-43, 18), pt(-26, 18)), 1)
	near(t, 17.2, radiusAt(s, -30.5), 1e-12)
	near(t, 17.2, radiusAt(s, -29.5), 1e-12)
	sound(t, s)
}

// A left-hand tool is the mirror image of a right-hand one.
func TestLeftHand(t *testing.T) {
	left := turning(0.8, 95, 80)
	left.Right, left.TipZ = false, 1
	r, l := outlineOf(turning(0.8, 95, 80)), outlineOf(left)
	a := New(bar(25, 100, 50), nil, Hold{Known: true, Low: -1, High: 1})
	b := New(bar(25, 100, 50), nil, Hold{Known: true, Low: -1, High: 1})
	ps := []geom.Point{pt(60, 22), pt(20, 22), pt(18, 18), pt(30, 30), pt(60, 15), pt(40, 14), pt(40, 28)}
	var mirrored []geom.Point
	for _, p := range ps {
		mirrored = append(mirrored, pt(-p.Z, p.R))
	}
	ra, rb := lines(a, r, 0, ps...), lines(b, l, 0, mirrored...)
	near(t, ra.Area, rb.Area, 1e-10)
	near(t, ra.Depth, rb.Depth, 1e-10)
	for z := -49.987; z < 50; z += 0.1 {
		near(t, radiusAt(a, z), radiusAt(b, -z), 1e-9, z)
	}
	sound(t, a)
	sound(t, b)
}

// Parting off with a round edge: what is right of the gap falls. It is larger
// than the groove, so it is parted, not a chip.
func TestParted(t *testing.T) {
	s := New(bar(10, 50, 0), nil, Hold{})
	r := s.Cut(outlineOf(disc(1)), geom.Line(pt(-20, 15), pt(-20, 0)), 3)
	require.Len(t, r.Loose, 1)
	l := r.Loose[0]
	assert.False(t, l.Chip)
	near(t, -20+1, l.Low, 0.3) // the disc is through where its lower half meets the axis
	near(t, 0, l.High, 1e-12)
	sound(t, s)
	near(t, 500, s.Area()+r.Area+l.Area, 1e-9)
	// held at the front instead, the back falls
	s = New(bar(10, 50, 0), nil, Hold{Known: true, Low: -10, High: 0})
	r = s.Cut(outlineOf(disc(1)), geom.Line(pt(-20, 15), pt(-20, 0)), 3)
	require.Len(t, r.Loose, 1)
	near(t, -50, r.Loose[0].Low, 1e-12)
	near(t, 500, s.Area()+r.Area+r.Loose[0].Area, 1e-9)
}

// A thin disc left in front of a cut to the axis falls as a chip.
func TestChip(t *testing.T) {
	s := New(bar(10, 50, 0), nil, Hold{})
	o := outlineOf(disc(1))
	r := s.Cut(o, geom.Line(pt(-1.5, 15), pt(-1.5, 0)), 3)
	require.Len(t, r.Loose, 1)
	assert.True(t, r.Loose[0].Chip)
	near(t, 500, s.Area()+r.Area+r.Loose[0].Area, 1e-9)
	sound(t, s)
}

// A tube: the cut ends at the bore, and a cut through the wall parts it.
func TestTube(t *testing.T) {
	bore := geom.Chain{geom.Line(pt(0, 6), pt(-50, 6))}
	s := New(bar(10, 50, 0), bore, Hold{})
	near(t, 200, s.Area(), 1e-9)
	o := outlineOf(disc(1))
	r := s.Cut(o, geom.Line(pt(-20, 15), pt(-20, 5)), 3)
	require.Len(t, r.Loose, 1)
	near(t, 200, s.Area()+r.Area+r.Loose[0].Area, 1e-9)
	sound(t, s)
	assert.Equal(t, 2, len(s.Outside())-1, s.String()) // groove's side, bar, back face
	chained(t, s.Inside())
	require.Len(t, s.Inside(), 1)

	// a drilled hole: its bottom is part of the inside
	s = New(bar(10, 50, 0), geom.Chain{geom.Line(pt(0, 4), pt(-15, 4)), geom.Line(pt(-15, 4), pt(-15, 0))}, Hold{})
	near(t, 500-60, s.Area(), 1e-9)
	assert.Equal(t, `outside
  line (0.0000000, 4.0000000) (0.0000000, 10.0000000) raw
  line (0.0000000, 10.0000000) (-50.0000000, 10.0000000) raw
  line (-50.0000000, 10.0000000) (-50.0000000, 0.0000000) raw
inside
  line (0.0000000, 4.0000000) (-15.0000000, 4.0000000) raw
  line (-15.0000000, 4.0000000) (-15.0000000, 0.0000000) raw
`, s.String())
}
