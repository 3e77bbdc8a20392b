package stock

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"taperwright/profiles/geom"
)

// Definitions 15: centre = point - R (sign z, sign x).
func TestCentre(t *testing.T) {
	tool := turning(0.8, 95, 80)
	assert.Equal(t, pt(0.8, 0.8), Centre(tool)) // right-hand outside: x -, z -
	tool.TipZ = 1
	assert.Equal(t, pt(-0.8, 0.8), Centre(tool)) // left-hand
	tool.TipX, tool.TipZ = 0, 0
	assert.Equal(t, pt(0, 0), Centre(tool)) // tip = "centre"
}

// The outline of an 80 degree insert at 95 degrees, nose 0.8: 5 degrees of
// minor edge. The nose runs from 5 degrees over its left side to 5 degrees past
// its bottom; at the right the far edge leans out over the minor one's end.
func TestOutline(t *testing.T) {
	o, not := OutlineOf(turning(0.8, 95, 80))
	assert.Empty(t, not)
	c5, s5 := math.Cos(deg(5)), math.Sin(deg(5))
	require.Len(t, o.lower, 3) // nose below its left side, minor edge, far edge
	nose, minor := o.lower[0], o.lower[1]
	near(t, -0.8, nose.from.Z, 1e-12)
	near(t, 0.8*s5, nose.to.Z, 1e-12)
	near(t, -0.8*c5, nose.to.R, 1e-12)
	near(t, math.Tan(deg(5)), minor.slope, 1e-12)
	// length of the edge from the sharp corner 12.9, less R / tan 40 of nose
	near(t, 12.9-0.8/math.Tan(deg(40)), minor.to.Sub(minor.from).Len(), 1e-12)
	require.Len(t, o.lean, 2)
	assert.False(t, o.right)
	near(t, 0.8, o.dip, 1e-12)

	// left hand: the mirror image
	left := turning(0.8, 95, 80)
	left.Right = false
	m, _ := OutlineOf(left)
	require.Len(t, m.lower, 3)
	near(t, -o.lower[2].to.Z, m.lower[0].from.Z, 1e-12)
	assert.True(t, m.right)

	// 90 degrees: the main edge is upright, nothing leans
	o, _ = OutlineOf(turning(0.8, 90, 80))
	assert.Nil(t, o.lean)
	// 75 degrees: the main edge is part of the lower boundary
	o, _ = OutlineOf(turning(0.8, 75, 80))
	assert.Nil(t, o.lean)
	near(t, -math.Tan(deg(75)), o.lower[0].slope, 1e-11)

	// flanks that are not given, or do not hold the nose, are not judged
	o, not = OutlineOf(noseOnly(0.8))
	assert.Len(t, not, 2)
	assert.Nil(t, o.upper)
	short := turning(0.8, 95, 80)
	short.MinorReach.Value = 0.9 // R / tan 40 = 0.953
	_, not = OutlineOf(short)
	assert.Len(t, not, 2)
}

// A program that works at X < 0 cuts the mirror image: the whole edge is
// beyond the axis from the first approach until it is back.
func TestFarSide(t *testing.T) {
	o := outlineOf(turning(0.8, 95, 80))
	near, farther := New(bar(25, 100, 0), nil, Hold{}), New(bar(25, 100, 0), nil, Hold{})
	ps := []geom.Point{pt(50, 100), pt(2, 22), pt(-40, 22), pt(-38, 30), pt(2, 30), pt(0, 30), pt(-0.5, 0), pt(5, 3), pt(50, 100)}
	lines(near, o, 0, ps...)
	far := false
	// over the axis, clear of the bar, then the same at X < 0
	over := o.Path(geom.Line(pt(50, 100), pt(50, -100)), &far)
	assert.Equal(t, [2]geom.Point{pt(50.8, 100.8), pt(50.8, -99.2)}, [2]geom.Point{over.From, over.To})
	assert.True(t, far)
	for i := 1; i < len(ps); i++ {
		a, b := ps[i-1], ps[i]
		farther.Cut(o, o.Path(geom.Line(pt(a.Z, -a.R), pt(b.Z, -b.R)), &far), i-1)
		assert.True(t, far)
	}
	assert.Equal(t, near.String(), farther.String())
	o.Path(geom.Line(pt(50, -100), pt(50, 100)), &far)
	assert.False(t, far)
	// facing past the axis by 2R is not the far side
	o.Path(geom.Line(pt(0, 30), pt(0, -1.6)), &far)
	assert.False(t, far)
}
