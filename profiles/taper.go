package profiles

import (
	"math"
	"strconv"

	"taperwright/profiles/geom"
	"taperwright/profiles/shop"
	"taperwright/profiles/source"
	"taperwright/profiles/taper"
)

var taperKind = kind{
	name: Taper, main: true,
	keys: append([]source.Key{
		{Name: "large_at", Type: "text", Help: `which end is large, "front" or "back"; always needed`},
		{Name: "ratio", Type: "text", Help: `rise on diameter to run along the axis: "1:10", "7:24", "7/24"`},
		{Name: "taper_per_foot", Type: "number", Help: "inches on diameter per foot"},
		{Name: "taper_per_inch", Type: "number", Help: "inches on diameter per inch"},
		{Name: "half_angle", Type: "degrees or text", Help: `between the surface and the axis: 2.8624, or "2°51'45\""`},
		{Name: "included_angle", Type: "degrees or text", Help: "between the two sides, twice half_angle"},
		{Name: "series", Type: "text", Help: `rate of a published series: "morse 3"`},
		{Name: "small", Type: "length", Help: "diameter of the small end"},
		{Name: "large", Type: "length", Help: "diameter of the large end"},
		{Name: "gauge", Type: "table", Help: "diameter at a named place: { diameter, from_small | from_large | from_front, tolerance }"},
		{Name: "tolerance", Type: "text, number or [low, high]", Help: "without gauge: of the one diameter given, of large when both are"},
		{Name: "angle_tolerance", Type: "text or table", Help: `"+AT6", "-AT6", "AT6/2" (both ways), or { half = [-10, 10], unit = "sec" }`},
		{Name: "aim", Type: "table", Help: "{ gauge_diameter, half_angle } to cut to; else the middle of each tolerance"},
		{Name: "fits", Type: "table", Help: "the mate: { part, feature }; not judged by this release"},
	}, ends...),
	read: readTaper,
}

var gaugeKeys = []source.Key{
	{Name: "diameter", Type: `length or "series"`, Help: "diameter at the gauge plane"},
	{Name: "from_small", Type: "length", Help: "from the small end into the cone; below 0 off the metal"},
	{Name: "from_large", Type: "length", Help: "from the large end into the cone; below 0 off the metal"},
	{Name: "from_front", Type: "length", Help: "from the front face of the part"},
	{Name: "tolerance", Type: "text, number or [low, high]", Help: "of the diameter"},
}

var coneAimKeys = []source.Key{
	{Name: "gauge_diameter", Type: "length", Help: "diameter at the gauge plane to cut to"},
	{Name: "half_angle", Type: "degrees or text", Help: "half angle to cut to"},
}

var fitsKeys = []source.Key{
	{Name: "part", Type: "text", Help: "the mate's part file"},
	{Name: "feature", Type: "text", Help: "the mate's feature"},
}

// factKeys are the facts that stand alone under a key.
var factKeys = []struct {
	key  string
	kind taper.Kind
}{
	{"large", taper.Large}, {"small", taper.Small}, {"length", taper.Length},
	{"ratio", taper.Ratio}, {"taper_per_foot", taper.PerFoot}, {"taper_per_inch", taper.PerInch},
	{"half_angle", taper.HalfAngle}, {"included_angle", taper.IncludedAngle}, {"series", taper.RateOf},
}

// gaugePlace is where the gauge plane stands.
type gaugePlace struct {
	table *source.Table // nil: no gauge
	key   string        // from_small, from_large, from_front
	at    float64       // mm
}

func readTaper(r *reader, t *source.Table, it *item) bool {
	ok := true
	largeAt, given := "", t.Has("large_at")
	if given {
		largeAt, given = t.OneOf("large_at", "front", "back")
		ok = ok && given
	} else {
		r.missing(t, "large_at", MissingKey, `large_at = "back": the diameter grows toward the chuck; "front": it shrinks toward the chuck`, "a taper needs large_at: which end is large?")
		ok = false
	}
	if t.Has("angle") {
		t.Value("angle") // known, so that it is refused once
		r.failAt(t.KeySpan("angle"), BareAngle, "half_angle: between surface and axis; included_angle: between both sides, twice as large", "angle does not say which angle of the cone it is")
		ok = false
	}
	facts, okFacts := r.facts(t)
	place, okPlace := r.gaugeFact(t, largeAt, &facts)
	r.mate(t)
	if !ok || !okFacts || !okPlace {
		r.readEnds(t, it)
		return false
	}
	if !t.Has("length") && t.Has("end_from_front") && !r.known { // how long it is cannot be said: a finding stands before
		r.readEnds(t, it)
		return false
	}
	if end, has := r.length(t, "end_from_front", above0); has && !t.Has("length") {
		l := (end + r.at.Nominal) / r.unit.PerMM()
		if l > 0 {
			facts = append(facts, taper.Fact{Kind: taper.Length, Value: l, Digits: strconv.FormatFloat(geom.Round(l, 4), 'f', -1, 64),
				Span: t.ValueSpan("end_from_front"), Label: "length (from end_from_front)"})
		}
	}
	cone, solved := taper.Solve(facts, taper.Ask{Inch: r.unit == shop.Inch, Whole: true, Span: t.Span()}, r.into)
	if !solved {
		r.wrong = true
		r.readEnds(t, it)
		return false
	}
	if !r.sections(t, it, cone.Length) {
		return false
	}
	return r.cone(t, it, cone, largeAt == "front", place)
}

// readEnds reads the length of a taper that cannot be solved, so that what is
// wrong there is said too and the planes behind it stay known.
func (r *reader) readEnds(t *source.Table, it *item) bool {
	if t.Has("length") || t.Has("end_from_front") {
		return r.sections(t, it, 0)
	}
	r.known = false
	return false
}

// facts collects what the keys say about the cone.
func (r *reader) facts(t *source.Table) ([]taper.Fact, bool) {
	var out []taper.Fact
	ok := true
	for _, k := range factKeys {
		if !t.Has(k.key) {
			continue
		}
		f := taper.Fact{Kind: k.kind, Span: t.ValueSpan(k.key), Label: k.key}
		switch k.kind {
		case taper.Large, taper.Small, taper.Length:
			low := above0
			if k.kind == taper.Small {
				low = from0
			}
			if _, good := r.length(t, k.key, low); !good {
				ok = false
				continue
			}
			n, _ := t.Number(k.key)
			f.Value, f.Digits = n.Value, n.Digits
		case taper.Ratio, taper.RateOf:
			s, good := t.Text(k.key)
			if !good {
				r.wrong, ok = true, false
				continue
			}
			f.Text = s.Value
			if s.Value == "" { // Solve would take it for a number
				f.Text = " "
			}
		default:
			v, good := t.Value(k.key)
			angle := k.kind == taper.HalfAngle || k.kind == taper.IncludedAngle
			switch {
			case good && v.Kind == source.KindNumber:
				f.Value, f.Digits = v.Number.Value, v.Number.Digits
			case good && v.Kind == source.KindText && angle && v.Text.Value != "":
				f.Text = v.Text.Value
			case angle && good:
				r.degrees(t, k.key)
				ok = false
				continue
			default:
				if good {
					t.Number(k.key) // says what is wrong with it
				}
				r.wrong, ok = true, false
				continue
			}
		}
		out = append(out, f)
	}
	return out, ok
}

// gaugeFact adds what gauge says to facts and returns where its plane stands.
func (r *reader) gaugeFact(t *source.Table, largeAt string, facts *[]taper.Fact) (gaugePlace, bool) {
	if !t.Has("gauge") {
		return gaugePlace{}, true
	}
	in, ok := t.Table("gauge")
	if !ok {
		r.wrong = true
		return gaugePlace{}, false
	}
	defer in.Only(gaugeKeys)
	if t.Has("tolerance") {
		r.fail(t, "tolerance", GaugePlace, "write it inside gauge = { .. }", "with a gauge plane the tolerance is that of its diameter")
		ok = false
	}
	p := gaugePlace{table: in}
	places := 0
	for _, key := range []string{"from_small", "from_large", "from_front"} {
		if !in.Has(key) {
			continue
		}
		places++
		at, good := r.length(in, key, any0)
		ok = ok && good
		p.key, p.at = key, at
	}
	if places != 1 {
		r.fail(in, "place", GaugePlace, "{ diameter = 44, from_small = 60 }: give one of from_small, from_large, from_front", "the gauge plane needs exactly one place, here are %d", places)
		ok = false
	}
	f := taper.Fact{Kind: taper.Gauge, Span: in.ValueSpan("diameter"), Label: "gauge diameter"}
	v, good := in.Value("diameter")
	switch {
	case !in.Has("diameter"):
		r.missing(in, "diameter", MissingKey, `diameter = 44, or "series"`, "the gauge plane has no diameter")
		ok = false
	case good && v.Kind == source.KindText && v.Text.Value == "series":
		f.Text = "series"
	case good && v.Kind == source.KindText:
		r.fail(in, "diameter", source.UnknownValue, `a number, or "series" for the gauge diameter of the series named`, "the gauge diameter cannot be %q", v.Text.Value)
		ok = false
	default:
		_, isLength := r.length(in, "diameter", above0)
		ok = ok && isLength
		f.Value, f.Digits = v.Number.Value, v.Number.Digits
	}
	if !ok || largeAt == "" {
		return p, false
	}
	at, fromFront := p.at, p.key == "from_front"
	if fromFront {
		if !r.known {
			return p, false
		}
		at += r.at.Nominal
	}
	f.From = taper.FromLarge
	if p.key == "from_small" || fromFront && largeAt == "back" {
		f.From = taper.FromSmall
	}
	f.At = at / r.unit.PerMM()
	*facts = append(*facts, f)
	return p, true
}

// mate reads the keys of fits; nothing is judged from them.
func (r *reader) mate(t *source.Table) {
	if !t.Has("fits") {
		return
	}
	in, ok := t.Table("fits")
	if !ok {
		r.wrong = true
		return
	}
	for _, key := range []string{"part", "feature"} {
		if _, ok := in.Text(key); in.Has(key) && !ok {
			r.wrong = true
		}
	}
	in.Only(fitsKeys)
	r.into.Note(t.KeySpan("fits"), LeftForLater, "compare the two parts' gauge planes by hand", "how the taper fits its mate is not judged by this release")
}

// cone turns a solved cone into the limits and the aim of the taper. Gauge
// plane and half angle fix it, aim lengths its planes (definitions 3).
func (r *reader) cone(t *source.Table, it *item, c taper.Cone, largeFront bool, place gaugePlace) bool {
	f := &it.f
	nominal := c.Slope.HalfAngle()
	half, loose, ok := r.halfAngle(t, nominal, -f.ZTo.Nominal+f.ZFrom.Nominal)
	from, key := t, "tolerance"
	of := "large"
	if !c.Knows(taper.Large) || !t.Has("large") {
		of = "small"
	}
	if place.table != nil {
		from, of = place.table, "diameter"
	}
	z, okZone := r.deviations(from, key, of, 2*c.Gauge, true, generalLinear)
	if !ok || !okZone {
		return false
	}
	gauge := z.size(2 * c.Gauge)
	if gauge.Low <= 0 {
		r.fail(from, key, BadTolerance, "narrow it", "the tolerance reaches down to %s on diameter", r.say(gauge.Low))
		return false
	}
	aimed, ok := r.coneAim(t, &gauge, &half)
	if !ok {
		return false
	}
	sign := -1.0 // the radius shrinks with z: large end behind
	if largeFront {
		sign = 1
	}
	slope := Size{
		Nominal: sign * float64(c.Slope), Low: sign * geom.Tan(half.Low), High: sign * geom.Tan(half.High),
		Class: half.Class, Assumed: half.Assumed, Span: half.Span,
	}
	slope.Aim = slope.Nominal
	if aimed || math.Abs(half.Aim-half.Nominal) > 1e-15 { // else the ratio stays exact
		slope.Aim = sign * geom.Tan(half.Aim)
	}
	if slope.Low > slope.High {
		slope.Low, slope.High = slope.High, slope.Low
	}
	k := &Cone{Gauge: gauge.half(), Slope: slope, HalfAngle: half, LargeFront: largeFront, Loose: loose}
	if c.Series != nil {
		k.Series = c.Series.Name
	}
	large, small, in := f.ZTo.Aim, f.ZFrom.Aim, 1.0 // where the ends are, and which way in from the large one
	if largeFront {
		large, small, in = small, large, -1
	}
	switch {
	case place.key == "from_front":
		k.GaugeZ = -place.at
	case place.key == "from_large":
		k.GaugeZ = large + float64(in*place.at)
	case place.key == "from_small":
		k.GaugeZ = small - float64(in*place.at)
	case of == "large":
		k.GaugeZ = large
		r.assume(f.Name+": gauge plane", "at the large end", t.ValueSpan(of))
	default:
		k.GaugeZ = small
		r.assume(f.Name+": gauge plane", "at the small end", t.ValueSpan(of))
	}
	k.OffMetal = k.GaugeZ > f.ZFrom.Aim+geom.Near || k.GaugeZ < f.ZTo.Aim-geom.Near
	f.Cone = k
	it.front, it.back = c.Small, c.Large
	if largeFront {
		it.front, it.back = c.Large, c.Small
	}
	// an end derived over the length is as sure as the diameter and the length are
	it.play = float64(r.play()/2) + float64(float64(c.Slope)*r.play())
	it.at, it.dir = geom.Point{Z: k.GaugeZ, R: k.Gauge.Aim}, geom.Point{Z: -1, R: -slope.Aim}.Unit()
	return true
}

// coneAim reads aim = { gauge_diameter, half_angle }; aimed tells whether the
// half angle's aim was given.
func (r *reader) coneAim(t *source.Table, gauge, half *Size) (aimed, ok bool) {
	if !t.Has("aim") {
		return false, true
	}
	in, ok := t.Table("aim")
	if !ok {
		r.wrong = true
		return false, false
	}
	defer in.Only(coneAimKeys)
	ok = r.aim(in, "gauge_diameter", gauge)
	if !in.Has("half_angle") {
		return false, ok
	}
	d, isAngle := r.degrees(in, "half_angle")
	if !isAngle {
		return false, false
	}
	a := geom.Radians(d)
	if geom.Count(a, 10) < geom.Count(half.Low, 10) || geom.Count(a, 10) > geom.Count(half.High, 10) {
		r.fail(in, "half_angle", AimOutside, "an aim is the angle itself, not a deviation", "half_angle %s lies outside the limits %s and %s",
			taper.DegMinSec(a, 1), taper.DegMinSec(half.Low, 1), taper.DegMinSec(half.High, 1))
		return false, false
	}
	half.Aim = a
	return true, ok
}
