package geom

import (
	"math"
	"math/big"
	"math/rand/v2"
	"strconv"
	"testing"

	"github.com/stretchr/testify/require"
)

// near refuses NaN and infinities, which InDelta lets through.
func near(t testing.TB, want, got, tol float64, msg ...any) {
	t.Helper()
	require.Greater(t, tol, 0.0)
	if !(math.Abs(want-got) <= tol) {
		require.Failf(t, "not near", "want %.17g, got %.17g, off by %g > %g: %v", want, got, got-want, tol, msg)
	}
}

func nearPoint(t testing.TB, want, got Point, tol float64, msg ...any) {
	t.Helper()
	near(t, want.Z, got.Z, tol, append(msg, "z")...)
	near(t, want.R, got.R, tol, append(msg, "r")...)
}

func TestFixed(t *testing.T) {
	for _, c := range []struct {
		x        float64
		decimals int
		want     string
	}{
		{0, 3, "0.000"},
		{math.Copysign(0, -1), 3, "0.000"},
		{-0.0004, 3, "0.000"},
		{-0.0005, 3, "-0.001"},
		{2.6755, 3, "2.676"}, // stored as 2.67549999999999998934: a tie as written
		{-2.6755, 3, "-2.676"},
		{2.67549994, 3, "2.675"}, // 26754999.4 counts of 1e-7 is 26754999: below the tie
		{2.67549996, 3, "2.676"}, // 26754999.6 is 26755000: the tie, away from zero
		{1.00049999999, 3, "1.001"},
		{12.3456789, 7, "12.3456789"},
		{1, 0, "1"},
		{0.5, 0, "1"},
		{-0.5, 0, "-1"},
		{1e9, 4, "1000000000.0000"},
		{0.05, 4, "0.0500"},
		{1.5, -2, "2"},
		{0.0001234567, 9, "0.000123457"},
		{math.NaN(), 3, "0.000"},
		{math.Inf(1), 7, "461168601.8427388"},
	} {
		require.Equal(t, c.want, Fixed(c.x, c.decimals), "%v at %d", c.x, c.decimals)
	}
	require.False(t, math.Signbit(Round(-0.0001, 3)))
	require.Equal(t, int64(2676), Count(2.6755, 3))
}

// What Fixed prints reads back as Round, lies within half a unit and a first
// step, and counts the same.
func FuzzFixed(f *testing.F) {
	f.Add(2.6755, uint8(3))
	f.Add(-1e-9, uint8(0))
	f.Add(99999.99999995, uint8(7))
	f.Fuzz(func(t *testing.T, x float64, d uint8) {
		if !(math.Abs(x) < 1e6) {
			return
		}
		n := int(d % 13)
		s := Fixed(x, n)
		back, err := strconv.ParseFloat(s, 64)
		require.NoError(t, err)
		require.Equal(t, math.Float64bits(Round(x, n)), math.Float64bits(back), s)
		require.LessOrEqual(t, math.Abs(back-x), 0.5*math.Pow(10, -float64(n))+0.50001e-7+1e-9)
		require.Equal(t, Fixed(-x, n), Fixed(-back, n), "the same both ways")
		require.NotContains(t, s, "e")
	})
}

// The functions against math (whose portable code they follow, on a CPU where
// math has none of its own) and against 200-bit series.
func TestTrig(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 2))
	for range 20000 {
		x := (r.Float64() - 0.5) * 20
		y := (r.Float64() - 0.5) * math.Pow(10, r.Float64()*12-6)
		for name, f := range map[string][2]float64{
			"sin": {Sin(x), math.Sin(x)}, "cos": {Cos(x), math.Cos(x)}, "atan": {Atan(y), math.Atan(y)},
			"atan2": {Atan2(y, x), math.Atan2(y, x)}, "asin": {Asin(x / 10), math.Asin(x / 10)},
			"acos": {Acos(x / 10), math.Acos(x / 10)},
		} {
			near(t, f[1], f[0], 4e-16*max(1, math.Abs(f[1])), name, x, y)
		}
		want := math.Tan(x)
		near(t, want, Tan(x), 4e-16*max(1, want*want), "tan", x)
	}
	for range 200 {
		x := (r.Float64() - 0.5) * 7
		sin, _ := bigSine(x).Float64()
		near(t, sin, Sin(x), 1.2e-16*2, "sin", x)
	}
}

// bigSine sums the series at 200 bits: x - x³/3! + x⁵/5! - ...
func bigSine(x float64) *big.Float {
	b := func(v float64) *big.Float { return new(big.Float).SetPrec(200).SetFloat64(v) }
	term, sum := b(x), b(x)
	xx := b(0).Mul(b(x), b(x))
	for k := 1; k < 60; k++ {
		term.Mul(term, xx)
		term.Quo(term, b(-float64(2*k*(2*k+1))))
		sum.Add(sum, term)
	}
	return sum
}

func TestTrigAtTheEdges(t *testing.T) {
	// angles of the trade, from a table of functions: tan 45, sin 30, cos 60
	near(t, 1, Tan(Radians(45)), 2e-16)
	near(t, 0.5, Sin(Radians(30)), 2e-16)
	near(t, 0.5, Cos(Radians(60)), 2e-16)
	near(t, 45, Degrees(Atan(1)), 1e-14)
	for _, c := range [][3]float64{{0, 1, 0}, {0, -1, math.Pi}, {1, 0, math.Pi / 2}, {-1, 0, -math.Pi / 2}, {1, 1, math.Pi / 4}, {-1, -1, -3 * math.Pi / 4}, {1e-300, -1e300, math.Pi}, {-1e-300, -1e300, -math.Pi}} {
		near(t, c[2], Atan2(c[0], c[1]), 1e-15, c)
	}
	require.Equal(t, 0.0, Atan2(0, 0))
	near(t, math.Pi/2, Asin(1), 1e-15)
	near(t, -math.Pi/2, Asin(-1), 1e-15)
	near(t, math.Pi, Acos(-1), 1e-15)
	for _, x := range []float64{math.NaN(), math.Inf(1), math.Inf(-1), 1e10} {
		require.True(t, math.IsNaN(Sin(x)) && math.IsNaN(Cos(x)) && math.IsNaN(Tan(x)))
		require.True(t, math.IsNaN(Asin(x)))
	}
}
