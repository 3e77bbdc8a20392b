package profiles

import (
	"strings"

	"taperwright/profiles/finding"
	"taperwright/profiles/geom"
	"taperwright/profiles/shop"
	"taperwright/profiles/source"
)

// longest is the largest length or diameter read, mm: no lathe of a repair
// shop turns 10 m, and coordinates up to there keep geom's nanometre.
const longest = 10000

// reader carries what reading the tables of one part file needs.
type reader struct {
	into *finding.List
	open Opener
	root *source.Table
	part *Part

	shopTable []*source.Table // the root of the shop file, where there is one
	unit      shop.Unit
	class     int // general tolerance, an index into generalClasses

	at      Size // the plane where the next feature of the list begins
	known   bool // at is known: nothing before it was unreadable
	crowded bool // an edge has no room for its break: said once
	wrong   bool // something could not be read: there will be no part
}

// fail adds an error at the value of key in t (at t when it is absent), and
// remembers that there is one.
func (r *reader) fail(t *source.Table, key, code, help, format string, args ...any) {
	r.wrong = true
	t.Error(key, code, help, format, args...)
}

// missing is fail for a key that is not there. A key spelt nearly so is the
// cause, and is found as such: then nothing is added.
func (r *reader) missing(t *source.Table, key, code, help, format string, args ...any) {
	r.wrong = true
	for _, k := range t.Keys() {
		if _, near := finding.Nearest(k, []string{key}); near || strings.EqualFold(k, key) {
			return
		}
	}
	t.Error(key, code, help, format, args...)
}

// failAt is fail for a place.
func (r *reader) failAt(at finding.Span, code, help, format string, args ...any) {
	r.wrong = true
	r.into.Error(at, code, help, format, args...)
}

// mm returns a length of the file in mm.
func (r *reader) mm(x float64) float64 {
	if r.unit == shop.Inch {
		return x * 25.4
	}
	return x
}

// say writes a length for a message, in the file's unit.
func (r *reader) say(mm float64) string {
	if r.unit == shop.Inch {
		return geom.Fixed(mm/25.4, 4) + " in"
	}
	return geom.Fixed(mm, 4) + " mm"
}

// play is what a written length or diameter stands for, either way, mm: half
// a unit of the third decimal in mm, of the fourth in inch (definitions 5).
func (r *reader) play() float64 {
	if r.unit == shop.Inch {
		return 0.00005 * 25.4
	}
	return 0.0005
}

// least tells how small a number may be.
type least int

const (
	above0 least = iota
	from0
	any0
)

// length returns the length or diameter under key in mm. Absent is false
// without a finding.
func (r *reader) length(t *source.Table, key string, low least) (float64, bool) {
	if !t.Has(key) {
		return 0, false
	}
	n, ok := t.Number(key)
	if !ok {
		r.wrong = true
		return 0, false
	}
	mm := r.mm(n.Value)
	switch {
	case mm > longest || mm < -longest:
		r.fail(t, key, BadLength, "look for a lost decimal point", "%s = %s is larger than %s", key, n.Digits, r.say(longest))
	case low == above0 && mm <= 0:
		r.fail(t, key, BadLength, "write a length above 0", "%s must be above 0, not %s", key, n.Digits)
	case low == from0 && mm < 0:
		r.fail(t, key, BadLength, "write 0 or a length above it", "%s cannot be below 0, as %s is", key, n.Digits)
	default:
		return mm, true
	}
	return 0, false
}

// needed is length for a key that must be there.
func (r *reader) needed(t *source.Table, key, help string) (float64, bool) {
	if !t.Has(key) {
		r.missing(t, key, MissingKey, help, "%s has no %s", t.Name(), key)
		return 0, false
	}
	return r.length(t, key, above0)
}

// refusal says why a table has no limits.
type refusal struct{ code, why, help string }

// zone is a tolerance as deviations from the nominal size.
type zone struct {
	low, high float64
	class     string
	assumed   bool
	span      finding.Span
}

// deviations reads a tolerance: a class (where classes says so), a plain
// number for both ways, or [low, high]; from the general class when key is
// absent. nominal and the deviations are mm, on diameter where nominal is.
func (r *reader) deviations(t *source.Table, key, of string, nominal float64, classes bool, table []generalRow) (zone, bool) {
	z := zone{span: t.ValueSpan(key)}
	if !t.Has(key) {
		class := generalClasses[r.class]
		g := generalLength(table, r.class, nominal)
		if g == 0 {
			r.failAt(t.ValueSpan(of), NoLimits, "give "+key+" a number, or [low, high]",
				"ISO 2768-1 %s has no general tolerance for %s", class, r.say(nominal))
			return z, false
		}
		return zone{-g, g, class, true, t.ValueSpan(of)}, true
	}
	v, ok := t.Value(key)
	if !ok {
		r.wrong = true
		return z, false
	}
	switch {
	case v.Kind == source.KindText && classes:
		low, high, no := isoClass(v.Text.Value, nominal)
		if no != nil {
			r.fail(t, key, no.code, no.help, "%s: %s", key, no.why)
			return z, false
		}
		z.low, z.high, z.class = low, high, v.Text.Value
	case v.Kind == source.KindNumber:
		if v.Number.Value < 0 {
			r.fail(t, key, BadTolerance, "a plain number counts both ways; for one way write [low, high]", "%s cannot be below 0, as %s is", key, v.Number.Digits)
			return z, false
		}
		z.high = r.mm(v.Number.Value)
		z.low = -z.high
	case v.Kind == source.KindList:
		n, ok := t.Numbers(key)
		if !ok {
			r.wrong = true
			return z, false
		}
		if len(n) != 2 || n[0].Value > n[1].Value {
			r.fail(t, key, BadTolerance, "write the two deviations, the lower first: [-0.02, 0]", "%s must be [low, high]", key)
			return z, false
		}
		z.low, z.high = r.mm(n[0].Value), r.mm(n[1].Value)
	default:
		help := "write a plain number for both ways, or [low, high]"
		if classes {
			help = `write a class such as "k6", a plain number for both ways, or [low, high]`
		}
		r.fail(t, key, BadTolerance, help, "%s cannot be %s", key, v.Kind)
		return z, false
	}
	return z, true
}

// size makes a size of a nominal and its zone; the aim is the middle.
func (z zone) size(nominal float64) Size {
	return Size{
		Nominal: nominal, Low: nominal + z.low, Aim: nominal + float64((z.low+z.high)/2), High: nominal + z.high,
		Class: z.class, Assumed: z.assumed, Span: z.span,
	}
}

// half returns a size on diameter as a radius.
func (s Size) half() Size {
	s.Nominal, s.Low, s.Aim, s.High = s.Nominal/2, s.Low/2, s.Aim/2, s.High/2
	return s
}

// aim sets the aim of s to what key says, in the words of the file: an
// absolute size inside the limits.
func (r *reader) aim(t *source.Table, key string, s *Size) bool {
	if !t.Has(key) {
		return true
	}
	x, ok := r.length(t, key, above0)
	if !ok {
		return false
	}
	if geom.Count(x, 7) < geom.Count(s.Low, 7) || geom.Count(x, 7) > geom.Count(s.High, 7) {
		r.fail(t, key, AimOutside, "an aim is the size itself, not a deviation", "%s %s lies outside the limits %s and %s", key, r.say(x), r.say(s.Low), r.say(s.High))
		return false
	}
	s.Aim = x
	return true
}

// diameter reads a diameter with its tolerance and aim as a radius.
func (r *reader) diameter(t *source.Table, key string) (Size, bool) {
	d, ok := r.needed(t, key, "every "+t.Name()+" needs one")
	if !ok {
		return Size{}, false
	}
	z, ok := r.deviations(t, "tolerance", key, d, true, generalLinear)
	if !ok {
		return Size{}, false
	}
	s := z.size(d)
	if s.Low <= 0 {
		r.fail(t, "tolerance", BadTolerance, "narrow it", "the tolerance reaches down to %s on diameter: nothing would be left", r.say(s.Low))
		return Size{}, false
	}
	ok = r.aim(t, "aim", &s)
	return s.half(), ok
}
