package profiles

import (
	"strconv"
	"strings"

	"taperwright/profiles/finding"
	"taperwright/profiles/geom"
	"taperwright/profiles/source"
)

// kind is a kind of feature: what it is called, what may stand in its table
// and how that is read. To add a kind, write its file and its row in kinds,
// and its row and column in meets (pairs.go).
type kind struct {
	name Kind
	main bool // carries the contour; else it treats the corner between two that do
	keys []source.Key
	read func(r *reader, t *source.Table, it *item) bool
}

// kinds are the kinds of features that this release reads.
func kinds() []kind {
	return []kind{journalKind, taperKind, shoulderKind, chamferKind, filletKind}
}

// laterKinds are kinds that a part file may name one day.
var laterKinds = []string{"relief", "groove", "thread"}

// common are the keys of every feature.
var common = []source.Key{
	{Name: "kind", Type: "text", Help: "journal, taper, shoulder, chamfer or fillet"},
	{Name: "name", Type: "text", Help: "what reports call it; else its kind and number"},
}

// ends are the keys of features that have a length.
var ends = []source.Key{
	{Name: "length", Type: "length", Help: "along the axis, to sharp corners"},
	{Name: "length_tolerance", Type: "number or [low, high]", Help: "of length; else the general class"},
	{Name: "end_from_front", Type: "length", Help: "from the front face to the end of this feature, instead of length or besides it"},
	{Name: "end_tolerance", Type: "number or [low, high]", Help: "of end_from_front; the plane then has these limits and not the sum of the chain's"},
}

// item is one feature of a list while the part is being made.
type item struct {
	f     Feature
	kind  *kind
	table *source.Table // nil for what the file only implies
	bad   bool          // not read: a finding says why
	step  bool          // a step between two cylinders of one nominal diameter

	// mains: nominal radii of its ends, and what these stand for either way
	front, back, play float64
	// mains: the line its aim lies on, run front to back
	at, dir geom.Point
	// mains: where what is judged of it begins and ends
	lead, trail geom.Point
}

// rAt returns the radius of the aim line of a journal or taper at z.
func (it *item) rAt(z float64) float64 {
	return it.at.R + float64((z-it.at.Z)*(it.dir.R/it.dir.Z))
}

// list reads the tables of [[outside]]. What cannot be read is left out, and
// r.wrong says so.
func (r *reader) list(tables []*source.Table) []*item {
	var out []*item
	all := kinds()
	count := map[Kind]int{}
	var words []string
	for _, k := range all {
		words = append(words, string(k.name))
	}
	r.at, r.known = Size{}, true
	for _, t := range tables {
		k := r.kindOf(t, all, words)
		if k == nil {
			r.wrong, r.known = true, false
			out = append(out, &item{kind: &kind{main: true}, table: t, bad: true})
			continue
		}
		count[k.name]++
		it := &item{kind: k, table: t, f: Feature{Kind: k.name, Span: t.Span()}}
		it.f.Name = string(k.name) + " " + strconv.Itoa(count[k.name])
		r.name(t, it)
		ok := k.read(r, t, it)
		t.Only(append(append([]source.Key(nil), common...), k.keys...))
		if !ok {
			r.wrong, it.bad = true, true
		}
		if !ok && k.main && k.name != Shoulder && !t.Has("end_from_front") {
			r.known = false
		}
		out = append(out, it)
	}
	return out
}

// kindOf returns the kind that t names; nil, with a finding, when none.
func (r *reader) kindOf(t *source.Table, all []kind, words []string) *kind {
	if !t.Has("kind") {
		for _, key := range t.Keys() { // without a kind its other keys cannot be told right from wrong
			if _, near := finding.Nearest(key, []string{"kind"}); near || strings.EqualFold(key, "kind") {
				r.failAt(t.KeySpan(key), source.UnknownKey, "write kind", "%s has no key %q", t.Name(), key)
				return nil
			}
		}
		r.fail(t, "kind", MissingKey, "one of journal, taper, shoulder, chamfer, fillet", "%s has no kind", t.Name())
		return nil
	}
	word, ok := t.Text("kind")
	if !ok {
		return nil
	}
	for _, w := range laterKinds {
		if word.Value == w {
			r.fail(t, "kind", NotYet, "leave it out and say it in [[later]]", "this release does not cut a %s", w)
			return nil
		}
	}
	w, ok := t.OneOf("kind", words...)
	if !ok {
		return nil
	}
	for i := range all {
		if string(all[i].name) == w {
			return &all[i]
		}
	}
	return nil
}

// name reads the name of a feature.
func (r *reader) name(t *source.Table, it *item) {
	if !t.Has("name") {
		return
	}
	switch n, ok := t.Text("name"); {
	case !ok:
		r.wrong = true
	case n.Value == "":
		r.fail(t, "name", BadName, "leave the key out, or give a name", "a name cannot be empty")
	default:
		it.f.Name = n.Value
	}
}

// sections reads how far a feature reaches along the axis and moves r.at to
// its end. nominal is its length where the facts of a cone gave it, else 0.
// The planes are sums of the chain, unless end_from_front has its own
// tolerance (definitions 1).
func (r *reader) sections(t *source.Table, it *item, nominal float64) bool {
	length, hasL := r.length(t, "length", above0)
	end, hasE := r.length(t, "end_from_front", above0)
	if t.Has("length") && !hasL || t.Has("end_from_front") && !hasE {
		return false
	}
	ofE := hasE && !hasL
	if nominal > 0 && !hasL && !hasE {
		length, hasL = nominal, true
	}
	if !hasL && !hasE {
		r.missing(t, "length", MissingKey, "give length, or end_from_front", "%s has no length", t.Name())
		return false
	}
	if ofE && t.Has("length_tolerance") {
		r.fail(t, "length_tolerance", MissingKey, "call it end_tolerance, or give length", "length_tolerance needs a length")
		return false
	}
	if !hasE && t.Has("end_tolerance") {
		r.fail(t, "end_tolerance", MissingKey, "call it length_tolerance, or give end_from_front", "end_tolerance needs end_from_front")
		return false
	}
	from := r.at
	var to Size
	if hasL {
		z, ok := r.deviations(t, "length_tolerance", "length", length, false, generalLinear)
		if !ok {
			return false
		}
		l := z.size(length)
		if l.Low <= 0 {
			r.fail(t, "length_tolerance", BadTolerance, "narrow it", "the tolerance of the length reaches down to %s", r.say(l.Low))
			return false
		}
		to = Size{
			Nominal: from.Nominal - l.Nominal, Low: from.Low - l.High, Aim: from.Aim - l.Aim, High: from.High - l.Low,
			Assumed: from.Assumed || l.Assumed, Span: l.Span,
		}
		to.Class = chainClass(from, l)
	}
	if hasE && hasL && r.known {
		if off := from.Nominal - length + end; geom.Count(off, 7) > geom.Count(2*r.play(), 7) || geom.Count(-off, 7) > geom.Count(2*r.play(), 7) {
			r.fail(t, "end_from_front", LengthsDisagree, "give one of the two, or mend it: the chain of lengths ends at "+r.say(length-from.Nominal),
				"end_from_front %s and length %s disagree by %s", r.say(end), r.say(length), r.say(max(off, -off)))
			return false
		}
	}
	if ofE || hasE && t.Has("end_tolerance") {
		z, ok := r.deviations(t, "end_tolerance", "end_from_front", end, false, generalLinear)
		if !ok {
			return false
		}
		e := z.size(end)
		if hasL && (geom.Count(-e.High, 7) > geom.Count(to.Low, 7) || geom.Count(-e.Low, 7) < geom.Count(to.High, 7)) {
			r.into.Note(t.ValueSpan("end_tolerance"), ChainedTolerances, "the plane is judged by end_tolerance; narrow the lengths if each matters too",
				"the chain of lengths would let this plane lie anywhere from %s to %s from the front face, end_from_front from %s to %s",
				r.say(-to.High), r.say(-to.Low), r.say(e.Low), r.say(e.High))
		}
		to = Size{Nominal: -e.Nominal, Low: -e.High, Aim: -e.Aim, High: -e.Low, Class: e.Class, Assumed: e.Assumed, Span: e.Span}
	}
	it.f.ZFrom, it.f.ZTo = from, to
	r.at = to
	if r.known && geom.Count(from.Aim-to.Aim, 6) <= 0 {
		r.fail(t, "end_from_front", LengthsDisagree, "the feature before ends at "+r.say(-from.Nominal), "%s would end %s from the front face, before it begins", t.Name(), r.say(-to.Aim))
		return false
	}
	if hasE && ofE {
		r.known = true // whatever was unreadable before, the place of this plane is said
	}
	return true
}

// chainClass names the general class when it made a part of the sum.
func chainClass(a, b Size) string {
	if b.Class != "" {
		return b.Class
	}
	return a.Class
}
