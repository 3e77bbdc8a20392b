package taper

import (
	"math"
	"slices"
	"strconv"
	"strings"

	"taperwright/profiles/geom"
)

// slip is a usual mistake: how a fact would read had it been meant otherwise.
type slip struct {
	kinds  []Kind
	meant  string // "NAME fits if it was meant ..."
	change func(it *item, all []item, ask Ask) bool
}

// slips are the usual mistakes, the likeliest first (common practice). Each
// changes one fact; it explains a contradiction when nothing disagrees then.
// With t the tangent of an angle a: tan(a/2) = t/(1+sqrt(1+t²)), tan 2a =
// 2t/(1-t²), tan(90°-a) = 1/t.
var slips = []slip{
	{[]Kind{HalfAngle}, "as the included angle", slope(func(t float64) float64 { return t / (1 + math.Sqrt(1+float64(t*t))) })},
	{[]Kind{IncludedAngle}, "as the half angle", slope(double)},
	{[]Kind{Ratio, PerFoot, PerInch}, "per side (on radius), not on diameter", slope(func(t float64) float64 { return 2 * t })},
	{[]Kind{Large, Small}, "with the difference of the diameters counted on one side only", oneSide},
	{[]Kind{PerInch}, "per foot", slope(func(t float64) float64 { return t / 12 })},
	{[]Kind{PerFoot}, "per inch", slope(func(t float64) float64 { return 12 * t })},
	{[]Kind{Length}, "as the Morse sizes' K (end of socket to keyway), not as the length of the taper", keyway},
	{[]Kind{Length}, "along the slant, not along the axis", func(it *item, all []item, ask Ask) bool {
		t, ok := lean(all, ask)
		it.reach = it.reach.times(1 / math.Sqrt(1+float64(t*t)))
		return ok
	}},
	{[]Kind{Gauge}, "from the other end", func(it *item, _ []item, _ Ask) bool { it.From = FromLarge + FromSmall - it.From; return true }},
	{[]Kind{Gauge}, "with its place along the slant, not along the axis", func(it *item, all []item, ask Ask) bool {
		t, ok := lean(all, ask)
		it.place /= math.Sqrt(1 + float64(t*t))
		return ok
	}},
	{[]Kind{Large, Small, Gauge}, "as a radius, not as a diameter", func(it *item, _ []item, _ Ask) bool { it.reach = it.reach.times(2); return it.Text == "" }},
	{[]Kind{HalfAngle, IncludedAngle}, "as degrees and minutes, D.MM", sexagesimal},
	{[]Kind{HalfAngle}, "from the face, not from the axis", slope(func(t float64) float64 { return 1 / t })},
	{[]Kind{IncludedAngle}, "from the face, not from the axis", slope(func(t float64) float64 { return (1 - float64(t*t)) / (2 * t) })},
	{[]Kind{IncludedAngle}, "as 180° less the included angle", slope(func(t float64) float64 { return 1 / t })},
	{[]Kind{HalfAngle, IncludedAngle}, "as the angle whose tangent is the rate on diameter (its half has no such tangent)", slope(func(t float64) float64 { return double(t) / 2 })},
	{[]Kind{Ratio}, "the other way round, run to rise", slope(func(t float64) float64 { return 1 / (4 * t) })},
	{[]Kind{Large, Small, Gauge, Length}, "in the other unit, inch or mm", func(it *item, _ []item, ask Ask) bool {
		k := inch
		if ask.Inch {
			k = 1 / inch
		}
		it.reach = it.reach.times(k)
		return it.Text == ""
	}},
}

// double returns the tangent of twice the angle, at most a right angle.
func double(t float64) float64 {
	if t >= 1 {
		return inf
	}
	return 2 * t / (1 - float64(t*t))
}

// slope makes a change of a slip that maps one slope to another; the interval
// is mapped with it.
func slope(f func(float64) float64) func(*item, []item, Ask) bool {
	return func(it *item, _ []item, _ Ask) bool {
		x, y := f(it.reach.lo), f(it.reach.hi)
		it.reach = reach{f(it.reach.at), min(x, y), max(x, y)}
		return !math.IsInf(it.reach.at, 0) && it.reach.at > 0
	}
}

// lean returns the slope that an item other than a length gives.
func lean(all []item, ask Ask) (float64, bool) {
	for _, c := range claims(all, ask) {
		if !c.level && c.slope.at > 0 && !slices.ContainsFunc(c.of, func(i int) bool { return all[i].Kind == Length }) {
			return c.slope.at, true
		}
	}
	return 0, false
}

// oneSide takes the difference to the other diameter for one on radius. It
// changes the large end where there is one, so that it is told once.
func oneSide(it *item, all []item, _ Ask) bool {
	if _, has := find(all, Large); has && it.Kind == Small {
		return false
	}
	other, ok := find(all, Small)
	if !ok || it.Kind == Small {
		other, ok = find(all, Gauge)
	}
	it.reach = reach{2*it.reach.at - other.reach.at, 2*it.reach.lo - other.reach.hi, 2*it.reach.hi - other.reach.lo}
	return ok && it.reach.lo > 0
}

// keyway takes K, which tables print beside the Morse sizes, for what it is.
func keyway(it *item, all []item, ask Ask) bool {
	rate, ok := find(all, RateOf)
	if !ok || rate.series.k == 0 || !it.reach.meets(about(float64(rate.series.k*inch), ask.half())) {
		return false
	}
	it.reach = about(float64(rate.series.plug*inch), ask.half())
	return true
}

// sexagesimal reads 5.43 as 5°43' and 5.4329 as 5°43'29".
func sexagesimal(it *item, _ []item, _ Ask) bool {
	written := it.Digits
	if it.Text != "" {
		written = it.Text
	}
	whole, behind, ok := strings.Cut(written, ".")
	if !ok || len(behind) != 2 && len(behind) != 4 {
		return false
	}
	text := whole + "°" + behind[:2] + "'"
	if len(behind) == 4 {
		text += behind[2:] + `"`
	}
	a, err := ParseAngle(text)
	if err != nil {
		return false
	}
	k := 1.0
	if it.Kind == IncludedAngle {
		k = 0.5
	}
	to := func(d float64) float64 { return float64(FromHalfAngle(geom.Radians(d * k))) }
	it.reach = reach{to(a.Degrees()), to(a.Degrees() - a.half()), to(a.Degrees() + a.half())}
	return a.Degrees() > a.half()
}

// explained is a slip that makes all facts agree.
type explained struct {
	item int // the fact that slipped
	text string
}

// swapped tells whether all facts agree with the two ends exchanged.
func swapped(items []item, ask Ask) bool {
	large := slices.IndexFunc(items, func(it item) bool { return it.Kind == Large })
	small := slices.IndexFunc(items, func(it item) bool { return it.Kind == Small })
	if large < 0 || small < 0 {
		return false
	}
	turned := slices.Clone(items)
	turned[large].reach, turned[small].reach = items[small].reach, items[large].reach
	_, _, still := quarrel(claims(turned, ask))
	return !still
}

// explain returns the slips that make all facts agree, the likeliest first.
func explain(items []item, ask Ask) []explained {
	var out []explained
	before := len(claims(items, ask))
	for _, s := range slips {
		for i := range items {
			if !slices.Contains(s.kinds, items[i].Kind) {
				continue
			}
			cured := slices.Clone(items)
			if !s.change(&cured[i], items, ask) {
				continue
			}
			after := claims(cured, ask)
			if _, _, still := quarrel(after); still || len(after) < before {
				continue // no peace either, or only because there is less to compare
			}
			text := items[i].say(ask) + " fits if it was meant " + s.meant
			if cured[i].Kind >= Ratio { // say what the best of the facts makes it
				cured[i].reach.at = after[0].slope.at
			}
			if cure := cured[i].cure(ask); cure != items[i].cure(ask) {
				text += ": " + items[i].Label + " would be " + cure
			}
			out = append(out, explained{i, text})
		}
	}
	return out
}

// cure returns what the fact would have to say, in its own terms.
func (it item) cure(ask Ask) string {
	t := Slope(it.reach.at)
	switch it.Kind {
	case Large, Small, Gauge:
		return ask.say(2*it.reach.at) + " on diameter"
	case Length:
		return ask.say(it.reach.at)
	case PerFoot:
		return geom.Fixed(t.PerFoot(), 5) + " in/ft"
	case PerInch:
		return geom.Fixed(t.PerInch(), 6) + " in/in"
	case HalfAngle:
		return strconv.Quote(DegMinSec(t.HalfAngle(), 1))
	case IncludedAngle:
		return strconv.Quote(DegMinSec(t.IncludedAngle(), 1))
	}
	return "1:" + trimmed(t.Ratio(), 4)
}

// trimmed writes x with at most so many decimals.
func trimmed(x float64, decimals int) string {
	return strings.TrimRight(strings.TrimRight(geom.Fixed(x, decimals), "0"), ".")
}
