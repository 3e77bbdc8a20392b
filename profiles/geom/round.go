package geom

import (
	"math"
	"strconv"
)

// fine is the first step of every rounding: ten million counts to the unit.
// Two ways of computing one figure differ by less than 1e-9, so both give the
// same count, and a figure meant to lie on a tie (2.6755 is stored below it)
// is a tie again before it is rounded to the decimals wanted.
const fine = 7

// beyond is how much finer the first step is than the decimals wanted, where
// those are many: an angle of six decimals must not be rounded up twice.
const beyond = 3

// countLimit keeps counts inside int64 and away from its edge.
const countLimit = 1 << 62

// powers of ten that float64 and int64 both hold exactly.
var powers = [...]int64{1, 1e1, 1e2, 1e3, 1e4, 1e5, 1e6, 1e7, 1e8, 1e9, 1e10, 1e11, 1e12}

func place(decimals int) int { return min(max(decimals, 0), len(powers)-1) }

// Count returns x as a whole count of its last place, decimals behind the
// point (0 to 12): first to 1e-7 (three decimals finer than wanted where that
// is finer), then half away from zero. What is too large gives the largest count, NaN gives 0: the
// language leaves both open, and CPUs differ.
func Count(x float64, decimals int) int64 {
	d := place(decimals)
	first := place(max(d+beyond, fine))
	y := math.Round(x * float64(powers[first]))
	switch {
	case y != y:
		return 0
	case y >= countLimit:
		y = countLimit
	case y <= -countLimit:
		y = -countLimit
	}
	n := int64(y)
	step := powers[first-d]
	if n < 0 {
		return -((-n + step/2) / step)
	}
	return (n + step/2) / step
}

// Round returns x at the decimals given, by Count; never -0.
func Round(x float64, decimals int) float64 {
	return float64(Count(x, decimals)) / float64(powers[place(decimals)])
}

// Fixed returns Round(x, decimals) as decimal text with exactly that many
// decimals: no exponent, no "-0".
func Fixed(x float64, decimals int) string {
	d := place(decimals)
	n := Count(x, d)
	sign := ""
	if n < 0 {
		sign, n = "-", -n
	}
	s := strconv.FormatInt(n, 10)
	if d == 0 {
		return sign + s
	}
	for len(s) <= d {
		s = "0" + s
	}
	return sign + s[:len(s)-d] + "." + s[len(s)-d:]
}
