package geom

import "math"

// The functions of this file follow the portable ones of Go's package math
// (Copyright 2009 and 2011 The Go Authors; BSD-style licence, in full at
// https://go.dev/LICENSE), which follow the Cephes Mathematical Library of
// Stephen L. Moshier. The one change: every product that is summed stands in
// float64(), so that no CPU fuses it and all give the same bits.
//
// The licence's conditions, for those functions:
//
// Copyright 2009 The Go Authors.
//
// Redistribution and use in source and binary forms, with or without
// modification, are permitted provided that the following conditions are met:
//
//   - Redistributions of source code must retain the above copyright notice,
//     this list of conditions and the following disclaimer.
//   - Redistributions in binary form must reproduce the above copyright
//     notice, this list of conditions and the following disclaimer in the
//     documentation and/or other materials provided with the distribution.
//   - Neither the name of Google LLC nor the names of its contributors may be
//     used to endorse or promote products derived from this software without
//     specific prior written permission.
//
// THIS SOFTWARE IS PROVIDED BY THE COPYRIGHT HOLDERS AND CONTRIBUTORS "AS IS"
// AND ANY EXPRESS OR IMPLIED WARRANTIES, INCLUDING, BUT NOT LIMITED TO, THE
// IMPLIED WARRANTIES OF MERCHANTABILITY AND FITNESS FOR A PARTICULAR PURPOSE
// ARE DISCLAIMED. IN NO EVENT SHALL THE COPYRIGHT OWNER OR CONTRIBUTORS BE
// LIABLE FOR ANY DIRECT, INDIRECT, INCIDENTAL, SPECIAL, EXEMPLARY, OR
// CONSEQUENTIAL DAMAGES (INCLUDING, BUT NOT LIMITED TO, PROCUREMENT OF
// SUBSTITUTE GOODS OR SERVICES; LOSS OF USE, DATA, OR PROFITS; OR BUSINESS
// INTERRUPTION) HOWEVER CAUSED AND ON ANY THEORY OF LIABILITY, WHETHER IN
// CONTRACT, STRICT LIABILITY, OR TORT (INCLUDING NEGLIGENCE OR OTHERWISE)
// ARISING IN ANY WAY OUT OF THE USE OF THIS SOFTWARE, EVEN IF ADVISED OF THE
// POSSIBILITY OF SUCH DAMAGE.

const pi = math.Pi

// Degrees turns radians into degrees.
func Degrees(rad float64) float64 { return rad * (180 / pi) }

// Radians turns degrees into radians.
func Radians(deg float64) float64 { return deg * (pi / 180) }

// poly is the value of c[0]*x^n + ... + c[n], by Horner's rule.
func poly(x float64, c ...float64) float64 {
	y := c[0]
	for _, k := range c[1:] {
		y = float64(y*x) + k
	}
	return y
}

// atanSmall is the arctangent of 0 to 0.66.
func atanSmall(x float64) float64 {
	z := x * x
	z = z * poly(z,
		-8.750608600031904122785e-01,
		-1.615753718733365076637e+01,
		-7.500855792314704667340e+01,
		-1.228866684490136173410e+02,
		-6.485021904942025371773e+01) / poly(z, 1,
		+2.485846490142306297962e+01,
		+1.650270098316988542046e+02,
		+4.328810604912902668951e+02,
		+4.853903996359136964868e+02,
		+1.945506571482613964425e+02)
	return float64(x*z) + x
}

// atanPositive is the arctangent of what is above 0.
func atanPositive(x float64) float64 {
	const (
		moreBits = 6.123233995736765886130e-17 // pi/2 = the nearest float64 + moreBits
		tan3pi8  = 2.41421356237309504880      // tan(3 pi/8)
	)
	if x <= 0.66 {
		return atanSmall(x)
	}
	if x > tan3pi8 {
		return pi/2 - atanSmall(1/x) + moreBits
	}
	return pi/4 + atanSmall((x-1)/(x+1)) + 0.5*moreBits
}

// Atan returns the arctangent of x, in radians.
func Atan(x float64) float64 {
	switch {
	case x == 0:
		return x
	case x > 0:
		return atanPositive(x)
	}
	return -atanPositive(-x)
}

// Atan2 returns the angle of the direction (x, y), -pi to pi; 0 for no direction.
func Atan2(y, x float64) float64 {
	switch {
	case y != y || x != x:
		return math.NaN()
	case y == 0:
		if x >= 0 && !math.Signbit(x) {
			return math.Copysign(0, y)
		}
		return math.Copysign(pi, y)
	case x == 0:
		return math.Copysign(pi/2, y)
	case math.IsInf(x, 0) && math.IsInf(y, 0):
		if x > 0 {
			return math.Copysign(pi/4, y)
		}
		return math.Copysign(3*pi/4, y)
	case math.IsInf(y, 0):
		return math.Copysign(pi/2, y)
	}
	q := Atan(y / x)
	if x < 0 {
		// y/x may come out as -0 or 0 for a y far smaller than x: the side is y's
		if y > 0 {
			return q + pi
		}
		return q - pi
	}
	return q
}

// Asin returns the arcsine of x, in radians; NaN outside -1 to 1.
func Asin(x float64) float64 {
	if x == 0 {
		return x
	}
	a := math.Abs(x)
	if a != a || a > 1 {
		return math.NaN()
	}
	y := math.Sqrt(1 - float64(a*a))
	if a > 0.7 {
		y = pi/2 - atanSmallOr(y/a)
	} else {
		y = atanSmallOr(a / y)
	}
	return math.Copysign(y, x)
}

func atanSmallOr(x float64) float64 {
	if x == 0 {
		return 0
	}
	return atanPositive(x)
}

// Acos returns the arccosine of x, in radians; NaN outside -1 to 1.
func Acos(x float64) float64 { return pi/2 - Asin(x) }

// octant splits x >= 0 into an even count of pi/4 and a rest of at most pi/4
// either way. pi/4 is taken in three parts, which loses nothing below 2^29;
// angles of this program are a few turns at most, so larger ones are NaN.
func octant(x float64) (j uint64, rest float64) {
	const (
		limit = 1 << 29
		part1 = 7.85398125648498535156e-1
		part2 = 3.77489470793079817668e-8
		part3 = 2.69515142907905952645e-15
	)
	if !(x < limit) {
		return 0, math.NaN()
	}
	j = uint64(x * (4 / pi))
	y := float64(j)
	if j&1 == 1 {
		j++
		y++
	}
	return j, ((x - float64(y*part1)) - float64(y*part2)) - float64(y*part3)
}

func sinSmall(z float64) float64 {
	zz := z * z
	return z + float64(float64(z*zz)*poly(zz,
		1.58962301576546568060e-10,
		-2.50507477628578072866e-8,
		2.75573136213857245213e-6,
		-1.98412698295895385996e-4,
		8.33333333332211858878e-3,
		-1.66666666666666307295e-1))
}

func cosSmall(z float64) float64 {
	zz := z * z
	return 1.0 - float64(0.5*zz) + float64(float64(zz*zz)*poly(zz,
		-1.13585365213876817300e-11,
		2.08757008419747316778e-9,
		-2.75573141792967388112e-7,
		2.48015872888517045348e-5,
		-1.38888888888730564116e-3,
		4.16666666666665929218e-2))
}

// Cos returns the cosine of x radians; NaN at 2^29 and beyond.
func Cos(x float64) float64 {
	j, z := octant(math.Abs(x))
	j &= 7
	minus := false
	if j > 3 {
		j -= 4
		minus = !minus
	}
	var y float64
	if j == 2 {
		minus = !minus
		y = sinSmall(z)
	} else {
		y = cosSmall(z)
	}
	if minus {
		return -y
	}
	return y
}

// Sin returns the sine of x radians; NaN at 2^29 and beyond.
func Sin(x float64) float64 {
	if x == 0 {
		return x
	}
	j, z := octant(math.Abs(x))
	j &= 7
	minus := x < 0
	if j > 3 {
		j -= 4
		minus = !minus
	}
	var y float64
	if j == 2 {
		y = cosSmall(z)
	} else {
		y = sinSmall(z)
	}
	if minus {
		return -y
	}
	return y
}

// Tan returns the tangent of x radians; NaN at 2^29 and beyond.
func Tan(x float64) float64 {
	if x == 0 {
		return x
	}
	j, z := octant(math.Abs(x))
	zz := z * z
	y := z
	if zz > 1e-14 {
		p := poly(zz,
			-1.30936939181383777646e4,
			1.15351664838587416140e6,
			-1.79565251976484877988e7)
		q := poly(zz, 1,
			1.36812963470692954678e4,
			-1.32089234440210967447e6,
			2.50083801823357915839e7,
			-5.38695755929454629881e7)
		y = z + float64(z*(zz*p/q))
	}
	if j&2 == 2 {
		y = -1 / y
	}
	if x < 0 {
		return -y
	}
	return y
}
