package rs274

import "strconv"

// Decimal is a number exactly as written: Digits / 10^Scale, minus when Neg.
// Whether it had a point, and how many digits stood before it (leading zeros
// too), is kept: T0101 is not T101 to everyone, and X50 may be 0.05 mm.
type Decimal struct {
	Digits int64
	Scale  uint8 // digits behind the point, at most maxScale
	Whole  uint8 // digits before the point
	Neg    bool
	Point  bool
}

const (
	maxDigits = 18 // 10^18 < 2^63: always fits Digits
	maxScale  = 18 // so that 10^Scale fits an int64, and a float64 exactly (10^22 is the last that does)
	maxWhole  = 40 // digits written before the point, leading zeros included
)

var pow10 = [...]float64{1e0, 1e1, 1e2, 1e3, 1e4, 1e5, 1e6, 1e7, 1e8, 1e9, 1e10, 1e11, 1e12, 1e13, 1e14, 1e15, 1e16, 1e17, 1e18, 1e19, 1e20, 1e21, 1e22}

// Float returns the number. It is rounded once when it has at most 15
// significant digits.
func (d Decimal) Float() float64 { return d.Times(1, 0) }

// Times returns d * num / 10^scale with num above 0 and scale 0 to 4 (0 to 22 for
// a number without a point): a length
// in inches is Times(254, 1) mm. The product is made in whole numbers where it
// fits, so that the result is rounded once: 1.25 in is 31.75 mm exactly.
func (d Decimal) Times(num int64, scale int) float64 {
	n := d.Digits
	if d.Neg {
		n = -n
	}
	const exact = 1 << 53 // whole numbers up to here are float64s
	if n > -exact/num && n < exact/num {
		return float64(n*num) / pow10[int(d.Scale)+scale]
	}
	return float64(n) / pow10[d.Scale] * float64(num) / pow10[scale]
}

// Zero tells whether d is 0, with either sign.
func (d Decimal) Zero() bool { return d.Digits == 0 }

// Int returns d as a whole number; ok is false when it has a part behind the
// point or is beyond the 9 digits that any label, station or count needs.
func (d Decimal) Int() (n int, ok bool) {
	whole := d.Digits
	for range d.Scale {
		if whole%10 != 0 {
			return 0, false
		}
		whole /= 10
	}
	if whole > 999_999_999 {
		return 0, false
	}
	if d.Neg {
		whole = -whole
	}
	return int(whole), true
}

// String returns the digits as written, blanks and a plus sign left out.
func (d Decimal) String() string { return string(d.Append(nil)) }

// Append appends String to b.
func (d Decimal) Append(b []byte) []byte {
	if d.Neg {
		b = append(b, '-')
	}
	var room [20]byte
	digits := strconv.AppendInt(room[:0], d.Digits, 10)
	if d.Digits == 0 {
		digits = digits[:0]
	}
	width := int(d.Whole) + int(d.Scale)
	for i := range width {
		if i == int(d.Whole) {
			b = append(b, '.')
		}
		if at := i - (width - len(digits)); at >= 0 {
			b = append(b, digits[at])
		} else {
			b = append(b, '0')
		}
	}
	if d.Point && d.Scale == 0 {
		b = append(b, '.')
	}
	return b
}
