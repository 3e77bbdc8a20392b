package source

import (
	"math"
	"strconv"
	"strings"

	"taperwright/profiles/finding"
)

// Text returns the text under key. ok is false when it is absent or, with a
// finding, not a text.
func (t *Table) Text(key string) (Text, bool) {
	v, ok := t.want(key, KindText)
	return v.Text, ok
}

// Number returns the number under key.
func (t *Table) Number(key string) (Number, bool) {
	v, ok := t.want(key, KindNumber)
	return v.Number, ok
}

// Bool returns the true or false under key.
func (t *Table) Bool(key string) (Bool, bool) {
	v, ok := t.want(key, KindBool)
	return v.Bool, ok
}

// Whole returns the whole number under key: written without point or exponent.
func (t *Table) Whole(key string) (Whole, bool) {
	v, ok := t.want(key, KindNumber)
	if !ok {
		return Whole{}, false
	}
	if !v.Number.Whole || math.Abs(v.Number.Value) > math.MaxInt32 {
		t.refuse(t.entries[key], v.Span, WrongType, "write it without a point", "%s must be a whole number, not %s", t.join(key), v.Number.Digits)
		return Whole{}, false
	}
	return Whole{Value: int(v.Number.Value), Span: v.Span}, true
}

// Numbers returns the list of numbers under key.
func (t *Table) Numbers(key string) ([]Number, bool) {
	list, ok := t.listOf(key, KindNumber)
	if !ok {
		return nil, false
	}
	out := make([]Number, len(list))
	for i, v := range list {
		out[i] = v.Number
	}
	return out, true
}

// Texts returns the list of texts under key.
func (t *Table) Texts(key string) ([]Text, bool) {
	list, ok := t.listOf(key, KindText)
	if !ok {
		return nil, false
	}
	out := make([]Text, len(list))
	for i, v := range list {
		out[i] = v.Text
	}
	return out, true
}

// Table returns the table under key: [key], key = { } or key.x = .
func (t *Table) Table(key string) (*Table, bool) {
	v, ok := t.want(key, KindTable)
	return v.Table, ok
}

// Tables returns the tables under key in file order: [[key]], or a list of
// inline tables. None when key is absent or, with a finding, something else.
func (t *Table) Tables(key string) []*Table {
	list, ok := t.listOf(key, KindTable)
	if !ok {
		return nil
	}
	out := make([]*Table, len(list))
	for i, v := range list {
		out[i] = v.Table
	}
	return out
}

// Value returns the value under key, of whatever kind. ok is false when it is
// absent or, with a finding, a number that cannot be used.
func (t *Table) Value(key string) (Value, bool) {
	t.known[key] = true
	e := t.entries[key]
	if e == nil || !t.usable(e, t.join(key), e.value) {
		return Value{}, false
	}
	return e.value, true
}

// OneOf returns the text under key when it is one of words; the finding
// otherwise names the word most likely meant.
func (t *Table) OneOf(key string, words ...string) (string, bool) {
	v, ok := t.Text(key)
	if !ok {
		return "", false
	}
	quoted := make([]string, len(words))
	for i, w := range words {
		if v.Value == w {
			return w, true
		}
		quoted[i] = strconv.Quote(w)
	}
	help := "one of " + strings.Join(quoted, ", ")
	if near, ok := nearest(v.Value, words); ok {
		help = "did you mean " + strconv.Quote(near) + "? " + help
	}
	t.refuse(t.entries[key], v.Span, UnknownValue, help, "%s cannot be %q", t.join(key), v.Value)
	return "", false
}

// want returns the value under key when it is of kind.
func (t *Table) want(key string, kind Kind) (Value, bool) {
	t.known[key] = true
	e := t.entries[key]
	if e == nil || !t.is(e, t.join(key), e.value, kind) || !t.usable(e, t.join(key), e.value) {
		return Value{}, false
	}
	return e.value, true
}

// listOf returns the list under key when everything in it is of kind.
func (t *Table) listOf(key string, kind Kind) ([]Value, bool) {
	t.known[key] = true
	e := t.entries[key]
	if e == nil {
		return nil, false
	}
	if e.value.Kind == KindTable && kind == KindTable {
		t.refuse(e, e.value.Span, WrongType, "write [["+key+"]]: there may be several", "%s must be a list of tables, not one table", t.join(key))
		return nil, false
	}
	if !t.is(e, t.join(key), e.value, KindList) {
		return nil, false
	}
	for i, v := range e.value.List {
		if !t.is(e, item(t.join(key), i), v, kind) {
			return nil, false
		}
	}
	return e.value.List, t.usable(e, t.join(key), e.value)
}

// is tells whether v is of kind, with a finding when it is not.
func (t *Table) is(e *entry, name string, v Value, kind Kind) bool {
	if v.Kind == kind {
		return true
	}
	help := ""
	switch _, err := strconv.ParseFloat(v.Text.Value, 64); {
	case kind == KindNumber && v.Kind == KindText && err == nil:
		help = "write " + v.Text.Value + " without quotes"
	case kind == KindText && (v.Kind == KindNumber || v.Kind == KindBool || v.Kind == KindDate):
		help = "write \"" + v.Span.String() + "\" in quotes"
	case kind == KindBool && v.Kind == KindText:
		help = "write true or false without quotes"
	case kind == KindTable && v.Kind == KindList && e.how == arrayHeader:
		help = "write it once, in single brackets"
	case kind == KindTable:
		help = "write it as { key = value }"
	case kind == KindList:
		help = "write it in brackets: [" + clip(v.Span.String()) + "]"
	}
	t.refuse(e, v.Span, WrongType, help, "%s must be %s, not %s", name, kind, v.Kind)
	return false
}

// usable tells whether the numbers of v, in lists too, can be used, with a
// finding when not.
func (t *Table) usable(e *entry, name string, v Value) bool {
	switch n := v.Number; {
	case v.Kind == KindList:
		for i, w := range v.List {
			if !t.usable(e, item(name, i), w) {
				return false
			}
		}
		return true
	case v.Kind != KindNumber:
		return true
	case math.IsNaN(n.Value) || math.IsInf(n.Value, 0):
		t.refuse(e, v.Span, NotFinite, "write a number", "%s cannot be %s", name, n.Digits)
	case strings.ContainsAny(n.Digits, "xob"):
		t.refuse(e, v.Span, NotDecimal, "write it in decimal digits", "%s = %s is not decimal", name, n.Digits)
	case n.Whole && math.Abs(n.Value) >= 1<<53:
		t.refuse(e, v.Span, NumberRange, "no figure here needs more than 15 digits", "%s = %s has more digits than can be kept", name, n.Digits)
	case n.Value == 0 && strings.ContainsAny(mantissa(n.Digits), "123456789"):
		t.refuse(e, v.Span, NumberRange, "write 0, or a number that is meant", "%s = %s is too near 0 to be kept", name, n.Digits)
	default:
		return true
	}
	return false
}

func mantissa(digits string) string {
	m, _, _ := strings.Cut(strings.ToLower(digits), "e")
	return m
}

// refuse adds a finding about the value of e, once.
func (t *Table) refuse(e *entry, at finding.Span, code, help, format string, args ...any) {
	if !e.refused {
		e.refused = true
		t.into.Error(at, code, help, format, args...)
	}
}

func item(name string, i int) string { return name + "[" + strconv.Itoa(i+1) + "]" }

// clip shortens s for a message.
func clip(s string) string {
	if r := []rune(s); len(r) > 40 {
		return string(r[:40]) + "..."
	}
	return s
}
