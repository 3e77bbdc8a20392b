package motion

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"taperwright/profiles/geom"
)

// near refuses what InDelta lets pass.
func near(t testing.TB, want, got, tolerance float64, what string) {
	t.Helper()
	require.Greater(t, tolerance, 0.0)
	require.True(t, math.Abs(got-want) <= tolerance, "%s: want %v, got %v", what, want, got)
}

func TestTotals(t *testing.T) {
	// rev/min: 10 mm at 0.2 mm/rev and 500 rev/min is 0.1 min; 30 mm at 90 mm/min is 1/3 min
	trace, _ := run(t, lathe(t, "g90-turns"), "G21 G99 G54 T0101 G97 S500 M3 G0 X40. Z0\nG1 Z-10. F.2\nG98 G1 X100. F90\nG0 Z5.\nG4 P2.\nM30\n")
	s := trace.Totals(0, nil)
	assert.Equal(t, 6, s.Blocks)
	assert.Equal(t, 4, s.Motions)
	near(t, 40, s.CutLength, 1e-12, "length")
	near(t, 6+20, s.Time, 1e-9, "time")
	assert.True(t, s.TimeKnown)
	assert.Equal(t, 2.0, s.Dwell)
	assert.True(t, s.PeakKnown)
	assert.Equal(t, 500.0, s.PeakRPM)
	assert.Equal(t, 1, s.PeakBlock)
	assert.Equal(t, 50.0, s.Radius)
	assert.Equal(t, -10.0, s.LeastZ)
	assert.True(t, s.HasCuts)
	// the machine turns no faster than 400
	s = trace.Totals(400, nil)
	assert.Equal(t, 400.0, s.PeakRPM)
	near(t, 7.5+20, s.Time, 1e-9, "time")
	// one tool only
	s = trace.Totals(0, func(m *Motion) bool { return m.PerMin })
	near(t, 30, s.CutLength, 1e-12, "length")
}

func TestTotalsAtSurfaceSpeed(t *testing.T) {
	// v = 120 m/min, F 0.1 mm/rev.
	// Along Z at r20: n = 120000/(2 pi 20) = 954.93; 10 mm take 10/(0.1 n) min = 6.283185 s.
	trace, _ := run(t, lathe(t, "g90-turns"), "G21 G99 G54 T0101 G96 S120 M3 G0 X40. Z0\nG1 Z-10. F.1\nM30\n")
	s := trace.Totals(0, nil)
	near(t, 120_000/(2*math.Pi*20), s.PeakRPM, 1e-9, "peak")
	near(t, 2*math.Pi, s.Time, 1e-9, "time")

	// Facing from r20 to the axis: the integral of r is 200; 200 * 2 pi / (120000 * 0.1) min = 6.283185 s;
	// the peak has no bound.
	trace, _ = run(t, lathe(t, "g90-turns"), "G21 G99 G54 T0101 G96 S120 M3 G0 X40. Z0\nG1 X0 F.1\nM30\n")
	s = trace.Totals(0, nil)
	near(t, 2*math.Pi, s.Time, 1e-9, "time")
	assert.False(t, s.PeakKnown)
	assert.Equal(t, 1, s.PeakBlock)

	// With a cap of 6000/pi = 1909.859 the limit rules from r = 120000/(2 pi 6000/pi) = 10 inward:
	// from 20 to 10 the integral of r is 150: 150 2 pi / 12000 min = 4.712389 s; 10 mm at the cap: 10/(0.1 * 1909.859) min = 3.141593 s.
	capped := "G21 G99 G54 T0101 G50 S1909.859317 G96 S120 M3 G0 X40. Z0\n"
	capped = "G21 G99 G54 T0101 G96 S120 M3 G0 X40. Z0\nG50 S1909.859317\n"
	trace, _ = run(t, lathe(t, "g90-turns"), capped+"G1 X0 F.1\nM30\n")
	s = trace.Totals(0, nil)
	near(t, 1.5*math.Pi+math.Pi, s.Time, 1e-6, "time")
	assert.True(t, s.PeakKnown)
	near(t, 1909.859317, s.PeakRPM, 1e-9, "peak")
	// past the axis to r-5: 5 mm more at the cap, 1.570796 s
	trace, _ = run(t, lathe(t, "g90-turns"), capped+"G1 X-10. F.1\nM30\n")
	near(t, 3*math.Pi, trace.Totals(0, nil).Time, 1e-6, "time past the axis")
	// without a cap the machine's own top speed bounds it just so
	trace, _ = run(t, lathe(t, "g90-turns"), "G21 G99 G54 T0101 G96 S120 M3 G0 X40. Z0\nG1 X-10. F.1\nM30\n")
	near(t, 3*math.Pi, trace.Totals(1909.859317, nil).Time, 1e-6, "time with a top speed")

	// A quarter arc of R10 round (z-10, r20) from (z0, r20) to (z-10, r30): the integral of r ds is
	// 20 * 5 pi + 10 * 10 = 414.159265; times 2 pi / 12000 min = 13.0112 s.
	trace, _ = run(t, lathe(t, "g90-turns"), "G21 G99 G54 T0101 G96 S120 M3 G0 X40. Z0\nG3 X60. Z-10. R10. F.1\nM30\n")
	s = trace.Totals(0, nil)
	near(t, (100*math.Pi+100)*2*math.Pi/12000*60, s.Time, 1e-9, "time of an arc")
	near(t, 5*math.Pi, s.CutLength, 1e-9, "length of an arc")
	// the same arc the other way takes as long
	trace, _ = run(t, lathe(t, "g90-turns"), "G21 G99 G54 T0101 G96 S120 M3 G0 X60. Z-10.\nG2 X40. Z0 R10. F.1\nM30\n")
	near(t, s.Time, trace.Totals(0, nil).Time, 1e-9, "time of an arc")
}

// What is not known is not summed as known.
func TestTotalsNotKnown(t *testing.T) {
	for name, program := range map[string]string{
		"no feed":    "G97 S500 M3 G0 X40. Z0\nG1 Z-10.\nM30\n",
		"no speed":   "M3 G0 X40. Z0\nG1 Z-10. F.1\nM30\n",
		"no spindle": "G97 S500 G0 X40. Z0\nG1 Z-10. F.1\nM30\n",
	} {
		trace, _ := run(t, lathe(t, "g90-turns"), "G21 G99 G54 T0101\n"+program)
		s := trace.Totals(0, nil)
		assert.False(t, s.TimeKnown, name)
		assert.True(t, s.HasCuts)
		if name != "no feed" {
			assert.False(t, s.PeakKnown, name)
			assert.Equal(t, -1, s.PeakBlock)
		}
	}
	trace, _ := run(t, lathe(t, "g90-turns"), "M30\n")
	s := trace.Totals(0, nil)
	assert.True(t, s.TimeKnown)
	assert.False(t, s.HasCuts)
	assert.False(t, s.PeakKnown)
}

// The closed form of an arc against the sum over 100,000 chords.
func TestMomentArc(t *testing.T) {
	for _, p := range []geom.Piece{
		geom.Arc(geom.Point{Z: 3, R: 0}, geom.Point{Z: 0, R: 3}, geom.Point{}, geom.CCW),
		geom.Arc(geom.Point{Z: 3, R: 0}, geom.Point{Z: 0, R: 3}, geom.Point{}, geom.CW),
		geom.Arc(geom.Point{Z: -2, R: 21}, geom.Point{Z: 0, R: 22}, geom.Point{Z: 0.75, R: 18.0}, geom.CW),
	} {
		sum, n := 0.0, 100_000
		start := math.Atan2(p.From.R-p.Center.R, p.From.Z-p.Center.Z)
		step := p.Sweep() / float64(n)
		if p.Turn == geom.CW {
			step = -math.Abs(step)
		} else {
			step = math.Abs(step)
		}
		for i := range n {
			sum += (p.Center.R + p.Radius()*math.Sin(start+step*(float64(i)+0.5))) * p.Radius() * math.Abs(step)
		}
		near(t, sum, momentArc(p), 1e-6, p.String())
	}
}
