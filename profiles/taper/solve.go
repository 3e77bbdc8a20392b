package taper

import (
	"math"

	"taperwright/profiles/finding"
	"taperwright/profiles/geom"
)

// Solve returns the cone that the facts describe. Facts that disagree, do not
// suffice or cannot be read are added to into, each with what would be right,
// and make it false.
//
// A diameter or length stands for half a unit of the third decimal in mm, of
// the fourth in inch; an angle, rate or ratio for half a unit of its last
// written digit (a whole ratio is exact). Facts agree when these intervals
// overlap. Series, ratio and rates then give the slope, else diameters and
// lengths, else angles (definitions 5). The gauge plane fixes the size: the
// named one, else the large end, else the small (definitions 3).
func Solve(facts []Fact, ask Ask, into *finding.List) (Cone, bool) {
	items, ok := resolve(facts, ask, into)
	if !ok {
		return Cone{}, false
	}
	all := claims(items, ask)
	if contradicted(items, all, ask, into) {
		return Cone{}, false
	}
	if len(all) == 0 || all[0].level {
		missingSlope(items, ask, into)
		return Cone{}, false
	}
	c := size(Slope(all[0].slope.at), items)
	for _, it := range items {
		if it.series != nil {
			c.Series = it.series
		}
	}
	return c, sound(c, items, ask, into)
}

// item is a fact with what it stands for: a radius or a length in mm, or a
// slope.
type item struct {
	Fact
	reach  reach
	place  float64 // Gauge: its place, mm
	series *Series // RateOf
}

// find returns the item of a kind.
func find(items []item, k Kind) (item, bool) {
	for _, it := range items {
		if it.Kind == k {
			return it, true
		}
	}
	return item{}, false
}

// Limits of what is taken for a taper: none is longer than 100 m, flatter than
// 1:1,000,000 (a micrometre in a metre) or steeper than 0.2" off a face. They
// keep every sum here far from the ends of float64.
const (
	longest  = 100_000 // mm
	flattest = 5e-7
	steepest = 1e6
)

// resolve reads what each fact says. All that cannot be read is found in one
// run.
func resolve(facts []Fact, ask Ask, into *finding.List) ([]item, bool) {
	var items []item
	ok := true
	bad := func(f Fact, code, help, format string, args ...any) {
		into.Error(f.Span, code, help, format, args...)
		ok = false
	}
	_, unit := ask.unit()
	for _, f := range facts {
		it := item{Fact: f}
		if f.Kind != Ratio && f.Kind != RateOf && f.Text == "" && !(f.Value > 0 || f.Value == 0 && f.Kind == Small) { // NaN too
			bad(f, NoCone, "give a number above 0", "%s must be above 0, here %s", f.Label, f.Digits)
			continue
		}
		if f.Kind <= Gauge && f.Text == "" && f.Value*unit > longest || f.Kind == Gauge && !(math.Abs(f.At*unit) <= longest) {
			bad(f, NoCone, "check the unit of the file", "%s is beyond %s", f.Label, ask.say(longest))
			continue
		}
		switch f.Kind {
		case RateOf:
			s, known := Named(f.Text)
			if !known {
				bad(f, UnknownSeries, likely(f.Text), "no published series is called %q", f.Text)
				continue
			}
			it.series, it.reach = s, s.reach
		case Ratio:
			r, err := ParseRatio(f.Text)
			if m, is := err.(*Malformed); is {
				into.Error(f.within(m.From, m.To), BadRatio, m.Help, "%s: %s", f.Label, m.Message)
				ok = false
				continue
			}
			it.reach = r.reach()
		case HalfAngle, IncludedAngle:
			degrees, half := f.Value, halfUnit(f.Digits)
			if f.Text != "" {
				a, err := ParseAngle(f.Text)
				if m, is := err.(*Malformed); is {
					into.Error(f.within(m.From, m.To), BadAngle, m.Help, "%s: %s", f.Label, m.Message)
					ok = false
					continue
				}
				degrees, half = a.Degrees(), a.half()
			}
			most := 90.0
			if f.Kind == IncludedAngle {
				most = 180
			}
			if degrees <= 0 || degrees >= most {
				bad(f, NoCone, "a cylinder or a face is a feature of another kind", "%s lies between 0° and %g°, both excluded", f.Label, most)
				continue
			}
			to := func(d float64) float64 { // half the angle for an included one: 90 is then the end of both
				d = d * 90 / most
				switch {
				case d <= 0:
					return 0
				case d >= 90:
					return inf
				}
				return float64(FromHalfAngle(geom.Radians(d)))
			}
			it.reach = reach{to(degrees), to(degrees - half), to(degrees + half)}
		case PerFoot:
			it.reach = about(f.Value, halfUnit(f.Digits)).times(1.0 / 24)
		case PerInch:
			it.reach = about(f.Value, halfUnit(f.Digits)).times(1.0 / 2)
		case Length:
			it.reach = about(float64(f.Value*unit), ask.half())
		case Large, Small, Gauge:
			it.place = float64(f.At * unit)
			it.reach = about(float64(f.Value*unit)/2, ask.half()/2)
		}
		if f.Kind >= Ratio && !(it.reach.at >= flattest && it.reach.at <= steepest) {
			bad(f, NoCone, "a cylinder or a face is a feature of another kind", "%s is too close to a cylinder or to a face for a taper", f.Label)
			continue
		}
		if f.Kind == Length && geom.Count(it.reach.at, 7) == 0 {
			bad(f, NoCone, "give a number above 0", "%s must be above 0, here %s", f.Label, f.Digits)
			continue
		}
		items = append(items, it)
	}
	for i := range items {
		if it := &items[i]; it.Kind == Gauge && it.Text != "" {
			rate, has := find(items, RateOf)
			if it.Text != "series" {
				bad(it.Fact, NoDiameter, "give a number, or \"series\" for the diameter that a named series publishes", "%s is neither a number nor \"series\"", it.Label)
				continue
			}
			if !has {
				bad(it.Fact, NoDiameter, "name one: "+ask.call(RateOf)+" = \"morse 3\"", "the gauge diameter is to come from a series, but no series is named")
				continue
			}
			r, has := rate.series.GaugeRadius(ask.Inch)
			if !has {
				bad(it.Fact, NoDiameter, "give the diameter, or name a size such as \"metric 1:20 80\"", "%s is a rate without a gauge diameter of its own", rate.series.Name)
				continue
			}
			it.reach = about(r, ask.half()/2)
		}
	}
	return items, ok
}

// size places a cone of this slope by the items.
func size(t Slope, items []item) Cone {
	c := Cone{Slope: t}
	large, hasLarge := find(items, Large)
	small, hasSmall := find(items, Small)
	length, hasLength := find(items, Length)
	gauge, hasGauge := find(items, Gauge)
	fromSmall := hasGauge && gauge.From == FromSmall
	if hasLength {
		c.Length, c.known[Length] = length.reach.at, true
	} else if l, ok := lengthOf(float64(t), large, small, gauge, hasLarge, hasSmall, hasGauge); ok {
		c.Length, c.known[Length] = l, true
	}
	drop := float64(float64(t) * c.Length)
	switch {
	case hasGauge && fromSmall:
		c.Gauge = gauge.reach.at
		c.Small, c.known[Small] = c.Gauge-float64(float64(t)*gauge.place), true
		if c.known[Length] {
			c.GaugeAt, c.known[Gauge] = c.Length-gauge.place, true
			c.Large, c.known[Large] = c.Small+drop, true
		}
	case hasGauge:
		c.Gauge, c.GaugeAt, c.known[Gauge] = gauge.reach.at, gauge.place, true
		c.Large, c.known[Large] = c.Gauge+float64(float64(t)*gauge.place), true
	case hasLarge:
		c.Gauge, c.known[Gauge] = large.reach.at, true
		c.Large, c.known[Large] = c.Gauge, true
	case hasSmall:
		c.Gauge, c.Small, c.known[Small] = small.reach.at, small.reach.at, true
		if c.known[Length] {
			c.GaugeAt, c.known[Gauge] = c.Length, true
			c.Large, c.known[Large] = c.Small+drop, true
		}
	}
	if c.known[Large] && c.known[Length] && !c.known[Small] {
		c.Small, c.known[Small] = c.Large-drop, true
	}
	return c
}

// lengthOf returns the length between two ends that two diameters fix.
func lengthOf(t float64, large, small, gauge item, hasLarge, hasSmall, hasGauge bool) (float64, bool) {
	switch {
	case hasGauge && gauge.From == FromLarge && hasSmall:
		return gauge.place + (gauge.reach.at-small.reach.at)/t, true
	case hasGauge && gauge.From == FromSmall && hasLarge:
		return gauge.place + (large.reach.at-gauge.reach.at)/t, true
	case hasLarge && hasSmall:
		return (large.reach.at - small.reach.at) / t, true
	}
	return 0, false
}

// reach is a value with the interval it stands for.
type reach struct{ at, lo, hi float64 }

var inf = math.Inf(1)

// about returns x with half a unit either side. Both may come as products
// (a halving is one to the compiler), hence the conversions.
func about(x, half float64) reach {
	x, half = float64(x), float64(half)
	return reach{x, x - half, x + half}
}

func (r reach) times(k float64) reach {
	return reach{float64(r.at * k), float64(r.lo * k), float64(r.hi * k)}
}

func (r reach) plus(q reach) reach  { return reach{r.at + q.at, r.lo + q.lo, r.hi + q.hi} }
func (r reach) minus(q reach) reach { return reach{r.at - q.at, r.lo - q.hi, r.hi - q.lo} }

// hair keeps intervals that touch by design touching on every machine: a
// slope is the result of fewer than 20 roundings, each at most 2^-53 of it,
// so 1e-12 is 400 times what they can add up to, and a thousandth of a second
// of arc is 5e-9.
const hair = 1e-12

func (r reach) meets(q reach) bool {
	return r.lo <= q.hi+float64(hair*math.Abs(q.hi)) && q.lo <= r.hi+float64(hair*math.Abs(r.hi))
}
