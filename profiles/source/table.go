package source

import (
	"taperwright/profiles/finding"
)

// Kind is what a value is in TOML.
type Kind int

const (
	KindText Kind = iota
	KindNumber
	KindBool
	KindDate // a date or a time: nothing here takes one
	KindList
	KindTable
)

// String names the kind as messages do.
func (k Kind) String() string {
	return [...]string{"text", "a number", "true or false", "a date or time", "a list", "a table"}[k]
}

// Text is a text value.
type Text struct {
	Value string
	Span  finding.Span // with its quotes
}

// Number is a number. It is finite.
type Number struct {
	Value  float64
	Digits string // as written, sign and underscores too
	Whole  bool   // written without point and exponent
	Span   finding.Span
}

// Bool is true or false.
type Bool struct {
	Value bool
	Span  finding.Span
}

// Whole is a number written without point and exponent.
type Whole struct {
	Value int
	Span  finding.Span
}

// Value is a value of any kind; the field of its Kind is set, and Span always.
type Value struct {
	Kind   Kind
	Text   Text
	Number Number
	Bool   Bool
	List   []Value // also the tables of [[x]]
	Table  *Table
	Span   finding.Span
}

// Table is a table: the whole file, below a [header], or inline.
type Table struct {
	into    *finding.List
	span    finding.Span
	name    string
	keys    []string // file order
	entries map[string]*entry
	known   map[string]bool
}

type entry struct {
	key     finding.Span
	value   Value
	how     how
	refused bool // a finding about the value's type stands already
}

// Span returns the table's header, the whole inline table, the key that
// implies the table, or the beginning of the file.
func (t *Table) Span() finding.Span { return t.span }

// Name returns the table's name for messages: "outside[2]" for the second
// [[outside]], "the file" for the whole.
func (t *Table) Name() string {
	if t.name == "" {
		return "the file"
	}
	return t.name
}

// Keys returns the keys as written, in file order.
func (t *Table) Keys() []string { return append([]string(nil), t.keys...) }

// Has tells whether the table has key.
func (t *Table) Has(key string) bool { return t.entries[key] != nil }

// KeySpan returns where key is written (where first, for [[key]]), or the
// table's own place when it is absent.
func (t *Table) KeySpan(key string) finding.Span {
	if e := t.entries[key]; e != nil {
		return e.key
	}
	return t.span
}

// ValueSpan returns where the value of key is written (the first header, for
// [[key]]), or the table's own place when it is absent.
func (t *Table) ValueSpan(key string) finding.Span {
	if e := t.entries[key]; e != nil {
		return e.value.Span
	}
	return t.span
}

// Error adds an error at the value of key, or at the table when it is absent.
func (t *Table) Error(key, code, help, format string, args ...any) {
	t.into.Error(t.ValueSpan(key), code, help, format, args...)
}

// join returns the name of a key of this table.
func (t *Table) join(key string) string {
	if t.name == "" {
		return key
	}
	return t.name + "." + key
}

func newTable(into *finding.List, name string, span finding.Span) *Table {
	return &Table{into: into, span: span, name: name, entries: map[string]*entry{}, known: map[string]bool{}}
}

func (t *Table) add(key string, e *entry) {
	t.keys = append(t.keys, key)
	t.entries[key] = e
}
