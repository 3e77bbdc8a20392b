package shop

import (
	"slices"
	"strconv"
	"strings"

	"taperwright/profiles/finding"
	"taperwright/profiles/geom"
	"taperwright/profiles/source"
)

// row is one key of a table that describes an S: what the schema says of it,
// how a column's default fills it and how a file's value is read. Reading is
// called only when the key is there.
type row[S any] struct {
	source.Key
	fill func(s *S, text string)
	read func(r reader, t *source.Table, s *S)
}

// reader carries what reading a table depends on.
type reader struct {
	unit Unit          // of lengths and feeds
	into *finding.List // for findings at other places than a key's value
}

// readRows reads every row that t has, in the order of the rows, and refuses
// the keys that have none.
func readRows[S any](r reader, t *source.Table, rows []row[S], s *S) {
	for _, w := range rows {
		if t.Has(w.Name) {
			w.read(r, t, s)
		}
	}
	t.Only(keysOf(rows))
}

func keysOf[S any](rows []row[S]) []source.Key {
	keys := make([]source.Key, len(rows))
	for i, w := range rows {
		keys[i] = w.Key
	}
	return keys
}

// given makes the setting of a value that stands in t.
func given[T any](t *source.Table, key string, value T) Setting[T] {
	return Setting[T]{Value: value, Given: true, From: t.ValueSpan(key)}
}

// option is one word of a key and what it stands for.
type option[T any] struct {
	word  string
	value T
}

// pick is a key that takes one of a few words.
func pick[S, T any](name, help string, field func(*S) *Setting[T], options ...option[T]) row[S] {
	words := make([]string, len(options))
	for i, o := range options {
		words[i] = o.word
	}
	find := func(word string) (T, bool) {
		if i := slices.Index(words, word); i >= 0 {
			return options[i].value, true
		}
		var none T
		return none, false
	}
	return row[S]{
		Key: source.Key{Name: name, Type: `"` + strings.Join(words, `" or "`) + `"`, Help: help},
		fill: func(s *S, text string) {
			if f := field(s); !f.Given {
				f.Value, _ = find(text)
			}
		},
		read: func(_ reader, t *source.Table, s *S) {
			if word, ok := t.OneOf(name, words...); ok {
				v, _ := find(word)
				*field(s) = given(t, name, v)
			}
		},
	}
}

// choice is pick for words that stand for themselves.
func choice[S any](name, help string, field func(*S) *Setting[string], words ...string) row[S] {
	options := make([]option[string], len(words))
	for i, w := range words {
		options[i] = option[string]{w, w}
	}
	return pick(name, help, field, options...)
}

// flag is a key that is true or false.
func flag[S any](name, help string, field func(*S) *Setting[bool]) row[S] {
	return row[S]{
		Key: source.Key{Name: name, Type: "true or false", Help: help},
		fill: func(s *S, text string) {
			if f := field(s); !f.Given {
				f.Value = text == "true"
			}
		},
		read: func(_ reader, t *source.Table, s *S) {
			if b, ok := t.Bool(name); ok {
				*field(s) = given(t, name, b.Value)
			}
		},
	}
}

// whole is a key that takes a whole number from least to most.
func whole[S any](name, help string, field func(*S) *Setting[int], least, most int) row[S] {
	return row[S]{
		Key: source.Key{Name: name, Type: "whole number", Help: help},
		fill: func(s *S, text string) {
			if f := field(s); !f.Given {
				f.Value, _ = strconv.Atoi(text)
			}
		},
		read: func(_ reader, t *source.Table, s *S) {
			n, ok := t.Whole(name)
			if !ok {
				return
			}
			if n.Value < least || n.Value > most {
				t.Error(name, codeSize, "give a whole number from "+strconv.Itoa(least)+" to "+strconv.Itoa(most),
					"%s = %d cannot be", full(t, name), n.Value)
				return
			}
			*field(s) = given(t, name, n.Value)
		},
	}
}

// text is a key that takes any text.
func text[S any](name, help string, field func(*S) *Setting[string]) row[S] {
	return row[S]{
		Key: source.Key{Name: name, Type: "text", Help: help},
		read: func(_ reader, t *source.Table, s *S) {
			if v, ok := t.Text(name); ok {
				*field(s) = given(t, name, v.Value)
			}
		},
	}
}

// quantity is what a number in the file means: its unit as printed, in mm and
// inch files, what one of it is inside, and the least and the most that can
// be, inside. Zero is refused unless zero is set.
type quantity struct {
	kind        string
	mm, inch    string
	scale       [2]float64 // by Unit
	least, most float64
	zero        bool
}

// The limits are far outside what any lathe has; they catch slips of unit and
// point, and keep later sums far from losing digits (1e5 mm is 1e12 counts of
// 1e-7 mm, below 2^53).
var (
	length   = quantity{"length", "mm", "in", [2]float64{1, 25.4}, 0, 1e5, false}
	extent   = quantity{"length", "mm", "in", [2]float64{1, 25.4}, 0, 1e5, true}
	place    = quantity{"length", "mm", "in", [2]float64{1, 25.4}, -1e5, 1e5, true}
	diameter = quantity{"diameter", "mm", "in", [2]float64{0.5, 12.7}, 0, 1e5, false}
	across   = quantity{"diameter", "mm", "in", [2]float64{0.5, 12.7}, -1e5, 1e5, true}
	small    = quantity{"length", "mm", "in", [2]float64{1, 25.4}, 0, 100, false}
	skinDeep = quantity{"length", "mm", "in", [2]float64{1, 25.4}, 0, 100, true}
	fine     = quantity{"length", "mm", "in", [2]float64{1, 25.4}, 0, 1, false}
	perRev   = quantity{"feed", "mm/rev", "in/rev", [2]float64{1, 25.4}, 0, 25, false}
	perMin   = quantity{"rate", "mm/min", "in/min", [2]float64{1, 25.4}, 0, 1e6, false}
	surface  = quantity{"surface speed", "m/min", "ft/min", [2]float64{1, 0.3048}, 0, 5000, false}
	turns    = quantity{"speed", "rev/min", "rev/min", [2]float64{1, 1}, 0, 1e5, false}
	degrees  = quantity{"angle", "deg", "deg", [2]float64{1, 1}, 0, 179.9, false} // 180 would be a straight edge
)

// in returns n as a value inside, with a finding at span when it cannot be.
func (q quantity) in(r reader, key string, n source.Number) (float64, bool) {
	v := n.Value * q.scale[r.unit]
	low := v < q.least || v <= q.least && !q.zero
	if !low && v <= q.most {
		return v, true
	}
	name := q.mm
	if r.unit == Inch {
		name = q.inch
	}
	from := "above "
	if q.zero {
		from = "from "
	}
	help := "give a " + q.kind + " " + from + brief(q.least/q.scale[r.unit]) + " to " + brief(q.most/q.scale[r.unit]) + " " + name
	if q.kind == "angle" {
		help = "give an angle above 0 and below 180 deg"
	}
	r.into.Error(n.Span, codeSize, help, "%s = %s %s cannot be", key, n.Digits, name)
	return 0, false
}

// brief prints x with at most three decimals and no needless zeros.
func brief(x float64) string {
	s := geom.Fixed(x, 3)
	if strings.Contains(s, ".") {
		s = strings.TrimRight(strings.TrimRight(s, "0"), ".")
	}
	return s
}

// number is a key that takes a number of a quantity.
func number[S any](name, help string, q quantity, set func(*S, Setting[float64])) row[S] {
	return row[S]{
		Key: source.Key{Name: name, Type: q.kind, Help: help},
		read: func(r reader, t *source.Table, s *S) {
			if n, ok := t.Number(name); ok {
				if v, ok := q.in(r, full(t, name), n); ok {
					set(s, given(t, name, v))
				}
			}
		},
	}
}

// spot is a key that takes { diameter, z }, both needed.
func spot[S any](name, help string, field func(*S) *Setting[Place]) row[S] {
	rows := []row[[2]Setting[float64]]{
		number("diameter", "X as a diameter", across, func(p *[2]Setting[float64], v Setting[float64]) { p[0] = v }),
		number("z", "axial place", place, func(p *[2]Setting[float64], v Setting[float64]) { p[1] = v }),
	}
	return row[S]{
		Key: source.Key{Name: name, Type: "{ diameter, z }", Help: help},
		read: func(r reader, t *source.Table, s *S) {
			in, ok := t.Table(name)
			if !ok {
				return
			}
			var p [2]Setting[float64]
			readRows(r, in, rows, &p)
			if needs(in, "diameter") && needs(in, "z") && p[0].Given && p[1].Given {
				*field(s) = given(t, name, Place{R: p[0].Value, Z: p[1].Value})
			}
		},
	}
}

// full names a key of t for messages: "tool[2].feed".
func full(t *source.Table, key string) string {
	if t.Name() == "the file" {
		return key
	}
	return t.Name() + "." + key
}

// needs tells whether t has key, with a finding when it has not.
func needs(t *source.Table, key string) bool {
	if !t.Has(key) {
		t.Error(key, codeMissing, "add "+key+" = ...", "%s has no %s", t.Name(), key)
		return false
	}
	return true
}
