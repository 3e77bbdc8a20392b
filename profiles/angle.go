package profiles

import (
	"errors"

	"taperwright/profiles/geom"
	"taperwright/profiles/source"
	"taperwright/profiles/taper"
)

// degrees reads an angle: decimal degrees, or a text such as "1°26'16\"".
func (r *reader) degrees(t *source.Table, key string) (float64, bool) {
	v, ok := t.Value(key)
	if !ok {
		r.wrong = true
		return 0, false
	}
	switch v.Kind {
	case source.KindNumber:
		return v.Number.Value, true
	case source.KindText:
		a, err := taper.ParseAngle(v.Text.Value)
		var bad *taper.Malformed
		if errors.As(err, &bad) {
			r.fail(t, key, taper.BadAngle, bad.Help, "%s: %s", key, bad.Message)
			return 0, false
		}
		return a.Degrees(), true
	}
	r.fail(t, key, source.WrongType, `decimal degrees, or a text such as "1°26'16\""`, "%s must be an angle, not %s", key, v.Kind)
	return 0, false
}

// pair reads deviations that are no lengths: a plain number for both ways, or
// [low, high].
func (r *reader) pair(t *source.Table, key string) (low, high float64, ok bool) {
	v, ok := t.Value(key)
	if !ok {
		r.wrong = true
		return 0, 0, false
	}
	switch {
	case v.Kind == source.KindNumber && v.Number.Value >= 0:
		return -v.Number.Value, v.Number.Value, true
	case v.Kind == source.KindList:
		n, ok := t.Numbers(key)
		if ok && len(n) == 2 && n[0].Value <= n[1].Value {
			return n[0].Value, n[1].Value, true
		}
		if !ok {
			r.wrong = true
			return 0, 0, false
		}
	}
	r.fail(t, key, BadTolerance, "write a plain number for both ways, or [low, high]", "%s cannot be read as a tolerance", key)
	return 0, 0, false
}

// angleUnits are the units of an angle tolerance, in radians.
var angleUnits = []struct {
	word string
	rad  float64
}{{"sec", geomDegree / 3600}, {"min", geomDegree / 60}, {"deg", geomDegree}}

const geomDegree = 3.14159265358979323846 / 180

var angleToleranceKeys = []source.Key{
	{Name: "half", Type: "number or [low, high]", Help: "of the half angle"},
	{Name: "included", Type: "number or [low, high]", Help: "of the included angle, instead of half"},
	{Name: "unit", Type: "text", Help: `"sec", "min" or "deg"`},
}

// halfAngle reads the tolerance of a cone's half angle, radians; nominal is
// the half angle, length the axial length of the cone, mm. A cone with none is
// judged by the general class, which no fit can live with: a warning.
func (r *reader) halfAngle(t *source.Table, nominal, length float64) (s Size, loose, ok bool) {
	const key = "angle_tolerance"
	z := zone{span: t.ValueSpan(key)}
	if !t.Has(key) {
		g := float64(geom.Radians(general(generalAngles, r.class, length) / 60))
		spread := 2 * length * (geom.Tan(nominal+g) - geom.Tan(nominal))
		r.into.Warn(t.Span(), LooseCone, `give angle_tolerance: "+AT6", "-AT6", "AT6/2" (both ways), or { half = [-10, 10], unit = "sec" }`,
			"this taper has no angle_tolerance: the general class %s leaves the half angle %s either way, %s on diameter over %s",
			generalClasses[r.class], taper.DegMinSec(g, 0), r.say(spread), r.say(length))
		z = zone{-g, g, generalClasses[r.class], true, t.Span()}
		return z.size(nominal), true, true
	}
	v, ok := t.Value(key)
	if !ok {
		r.wrong = true
		return Size{}, false, false
	}
	switch v.Kind {
	case source.KindText:
		low, high, no := coneGrade(v.Text.Value, length)
		if no != nil {
			r.fail(t, key, no.code, no.help, "%s: %s", key, no.why)
			return Size{}, false, false
		}
		z.low, z.high, z.class = low, high, v.Text.Value
	case source.KindTable:
		if !r.angleFigures(v.Table, &z) {
			return Size{}, false, false
		}
	default:
		r.fail(t, key, BadTolerance, `write "+AT6", "-AT6", "AT6/2" (both ways), or { half = [-10, 10], unit = "sec" }`, "%s cannot be %s: of which angle, in which unit?", key, v.Kind)
		return Size{}, false, false
	}
	if nominal+z.low <= 0 || nominal+z.high >= geomDegree*90 {
		r.fail(t, key, BadTolerance, "narrow it; is the unit right?", "the tolerance is wider than the half angle itself, %s", taper.DegMinSec(nominal, 0))
		return Size{}, false, false
	}
	return z.size(nominal), false, true
}

// angleFigures reads { half | included, unit } into z.
func (r *reader) angleFigures(in *source.Table, z *zone) bool {
	defer in.Only(angleToleranceKeys)
	share, key := 1.0, "half"
	if in.Has("included") {
		share, key = 0.5, "included"
	}
	if in.Has("half") == in.Has("included") {
		r.fail(in, "included", BadTolerance, "{ half = [-10, 10], unit = \"sec\" }", "give one of half and included")
		return false
	}
	low, high, ok := r.pair(in, key)
	if !in.Has("unit") {
		r.missing(in, "unit", MissingKey, `unit = "sec", "min" or "deg"`, "%s has no unit", in.Name())
		return false
	}
	var words []string
	for _, u := range angleUnits {
		words = append(words, u.word)
	}
	word, okUnit := in.OneOf("unit", words...)
	if !ok || !okUnit {
		r.wrong = true
		return false
	}
	for _, u := range angleUnits {
		if u.word == word {
			z.low, z.high = low*u.rad*share, high*u.rad*share
		}
	}
	return true
}
