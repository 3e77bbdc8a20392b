package post

import (
	"math"
	"strconv"
	"strings"

	"taperwright/profiles/geom"
	"taperwright/profiles/shop"
)

// format is how lengths become words on one lathe.
type format struct {
	unit     shop.Unit
	decimals int
	diameter bool
	one      float64 // mm in one count of the last place
}

// spot is a programmed point as X and Z words hold it: counts of the last
// place, X as a diameter or as a radius.
type spot struct{ x, z int64 }

func formatOf(m *shop.Machine) format {
	f := format{unit: m.Unit.Value, decimals: m.Decimals.Value, diameter: m.XIsDiameter.Value}
	f.one = f.unit.PerMM()
	for range f.decimals {
		f.one /= 10
	}
	return f
}

// length returns mm as counts of the last place.
func (f format) length(mm float64) int64 { return geom.Count(mm/f.unit.PerMM(), f.decimals) }

// spot rounds a point: here, once, and nowhere else.
func (f format) spot(p geom.Point) spot {
	if f.diameter {
		return spot{f.length(2 * p.R), f.length(p.Z)}
	}
	return spot{f.length(p.R), f.length(p.Z)}
}

// mm returns what n counts are. The conversion keeps a CPU from fusing the
// product with a sum that follows.
func (f format) mm(n int64) float64 { return float64(float64(n) * f.one) }

// point returns the point that s means, mm, radius.
func (f format) point(s spot) geom.Point {
	p := geom.Point{Z: f.mm(s.z), R: f.mm(s.x)}
	if f.diameter {
		p.R /= 2
	}
	return p
}

// step returns one unit of the X word as mm on radius.
func (f format) step() float64 {
	if f.diameter {
		return f.one / 2
	}
	return f.one
}

// number returns n counts as decimal text. There is always a point: without
// one, some lathes count increments.
func (f format) number(n int64) string { return decimal(n, f.decimals) }

func decimal(n int64, decimals int) string {
	sign := ""
	if n < 0 {
		sign, n = "-", -n
	}
	s := strconv.FormatInt(n, 10)
	if len(s) <= decimals {
		s = strings.Repeat("0", decimals+1-len(s)) + s
	}
	return sign + s[:len(s)-decimals] + "." + s[len(s)-decimals:]
}

// words returns X and Z of s.
func (f format) x(s spot) string { return "X" + f.number(s.x) }
func (f format) z(s spot) string { return "Z" + f.number(s.z) }

// feedWord returns F for a feed in mm/rev or mm/min: three decimals per
// revolution in mm, four in inch, one per minute, and more where rounding
// would change the feed by more than a hundredth.
func (f format) feedWord(mm float64, perMin bool) string {
	x, d := mm/f.unit.PerMM(), 3
	if f.unit == shop.Inch {
		d = 4
	}
	if perMin {
		d -= 2
	}
	for d < 7 && math.Abs(geom.Round(x, d)-x) > x/100 {
		d++
	}
	return "F" + decimal(geom.Count(x, d), d)
}

// show returns a length with its unit for a comment.
func (f format) show(mm float64) string {
	s := geom.Fixed(mm/f.unit.PerMM(), f.decimals)
	if f.unit == shop.Inch {
		return s + " in"
	}
	return s + " mm"
}

// whole returns x, a speed, as a whole number of at least 1.
func whole(x float64) string { return strconv.FormatInt(max(geom.Count(x, 0), 1), 10) }

// below returns the greatest whole number not above x: a cap is no rounding
// matter. 1e-6 rev/min takes up what the way there left.
func below(x float64) string { return strconv.FormatFloat(max(math.Floor(x+1e-6), 1), 'f', 0, 64) }
