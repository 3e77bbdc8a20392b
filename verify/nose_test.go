package verify

import (
	"fmt"
	"math"
	"path/filepath"
	"strings"
	"testing"

	"github.com/BurntSushi/toml"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"taperwright/profiles/geom"
	"taperwright/profiles/shop"
	"taperwright/verify/stock"
)

type noseExample struct {
	ID, Topic, Formula, Source, Check string
	Inputs                            map[string]any
	Expected, Tolerance               float64
}

func noseExamples(t *testing.T) []noseExample {
	t.Helper()
	var all struct{ Example []noseExample }
	_, err := toml.DecodeFile(filepath.Join("..", "testdata", "values", "nose.toml"), &all)
	require.NoError(t, err)
	require.NotEmpty(t, all.Example)
	for _, e := range all.Example {
		require.NotEmpty(t, e.Source, e.ID)
		require.Equal(t, "ok", e.Check, e.ID)
	}
	return all.Example
}

func (e noseExample) in(t *testing.T, keys ...string) float64 {
	t.Helper()
	for _, k := range keys {
		if x, ok := e.Inputs[k].(float64); ok {
			return x
		}
	}
	require.Fail(t, "no input", "%s: %v", e.ID, keys)
	return 0
}

// Published figures of where the nose stands in its corner: from the sharp
// corner to the nose's tangents, which is where the programmed point lies.
// The corner is made here from the two edges as definitions 16 lays them.
func TestPublishedNoseShift(t *testing.T) {
	done := 0
	for _, e := range noseExamples(t) {
		along := ""
		for _, axis := range []string{"X", "Z"} {
			if strings.HasPrefix(e.Topic, "nose-tip shift per unit of nose-radius change, "+axis) || strings.HasPrefix(e.Topic, "sharp corner to nose tangent, "+axis) {
				along = axis
			}
		}
		if along == "" {
			continue
		}
		done++
		r := 1.0
		if _, ok := e.Inputs["r_real"]; ok {
			r = e.in(t, "r_real")
		}
		kappa, eps := geom.Radians(e.in(t, "cutting_edge_angle")), geom.Radians(e.in(t, "insert_angle"))
		tool := shop.Tool{Nose: r, Right: true, TipX: -1, TipZ: -1, CuttingAngle: shop.Setting[float64]{Value: kappa}, Included: shop.Setting[float64]{Value: eps}}
		minor := tool.MinorAngle()
		// up the edges: kappa from the direction toward the chuck, the minor angle from the other
		main, rear := geom.Point{Z: -geom.Cos(kappa), R: geom.Sin(kappa)}, geom.Point{Z: geom.Cos(minor), R: geom.Sin(minor)}
		tip, ok := geom.LinesMeet(main.Left().Times(r), main, rear.Left().Times(-r), rear)
		require.True(t, ok, e.ID)
		point := stock.Centre(&tool).Times(-1) // from nose centre to programmed point
		got := point.R - tip.R
		if along == "Z" {
			got = point.Z - tip.Z
		}
		assert.InDelta(t, e.Expected, got, e.Tolerance, "%s (%s)", e.ID, e.Source)
		assert.False(t, math.IsNaN(got))
	}
	assert.Equal(t, 36, done)
}

// The size left by a forgotten nose: published and derived figures against
// the formula of definitions 10, which is another form of theirs.
func TestForgottenNoseFigures(t *testing.T) {
	done := 0
	for _, e := range noseExamples(t) {
		if !strings.HasPrefix(e.Topic, "diameter error of an uncompensated nose on a front cone") {
			continue
		}
		done++
		r := e.in(t, "r")
		d, left := ForgottenNose(r, geom.Tan(geom.Radians(e.in(t, "A_deg"))), true)
		assert.True(t, left)
		// the angle is printed to 1e-6 degrees, half of that is 8.7e-9 rad; d/da < 2r
		assert.InDelta(t, e.Expected, d, e.Tolerance+2*r*8.8e-9, e.ID)
	}
	assert.Equal(t, 5, done)
	// by hand: t = 1/20, tan(a/2) = 20 (sqrt(1 + 1/400) - 1) = 0.0249844
	// 2*0.8*0.05*(1 + 0.0249844) = 0.0819988
	d, left := ForgottenNose(0.8, 0.05, false)
	assert.False(t, left)
	assert.InDelta(t, 0.0819988, d, 5e-8)
}

// frontCone is a part with a front cone of slope 1:n, 20 long, then a journal.
func frontCone(n float64) string {
	return fmt.Sprintf(`
title = "cone"
[stock]
diameter = 40
length = 100
[edges]
inside_at_most = 1.7
[[outside]]
name = "cone"
kind = "taper"
large_at = "back"
ratio = "1:%g"
small = 20
length = 20
gauge = { diameter = %.9f, from_small = 10, tolerance = 0.005 }
angle_tolerance = { half = [-10, 10], unit = "sec" }
[[outside]]
kind = "shoulder"
diameter = 38
[[outside]]
name = "journal"
kind = "journal"
diameter = 38
tolerance = 0.05
length = 10
`, n, 20+10/n)
}

// A whole check finds what a forgotten nose leaves, names it, and finds
// nothing wrong with the same path cut by a tool that has no nose to speak of.
func TestForgottenNoseIsNamed(t *testing.T) {
	for _, n := range []float64{1.5, 3.5, 5, 10, 16, 20} {
		for _, r := range []float64{0.2, 0.4, 0.8, 1.6} {
			t.Run(fmt.Sprintf("1:%.3g R%g", n, r), func(t *testing.T) {
				program := fmt.Sprintf(`G21 G40 G99
G97 S800
T0101
M4
G0 X64. Z2.
X%.3f
G1 X%.3f Z-20. F0.1
X38.
Z-32.
X64.
G0 X100. Z50.
M30
`, 20-2/n, 20+20/n)
				v := checkOf(t, partOf(t, r, frontCone(n)), program)
				want, _ := ForgottenNose(r, 1/(2*n), true)
				row := rowOf(t, v, "cone")
				require.Equal(t, Out, row.Verdict, page(t, v))
				// the words stand for half a unit of the third decimal on each end
				assert.InDelta(t, want, off(t, row, "diameter_mm"), 0.0005+0.0006)
				assert.InDelta(t, want*n, off(t, row, "standoff_mm"), (0.0005+0.0006)*n+0.0001)
				require.NotEmpty(t, v.Slips, page(t, v))
				assert.Equal(t, SlipNoseForgotten, v.Slips[0].Code)
				assert.Contains(t, v.Slips[0].Explains, "leaves "+size(want))
				assert.LessOrEqual(t, v.Slips[0].Residual, 0.002)
			})
		}
	}
}
