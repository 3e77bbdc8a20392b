package source

import (
	"errors"
	"strings"

	"github.com/pelletier/go-toml/v2/unstable"

	"taperwright/profiles/finding"
)

// how tells what made an entry, as far as later lines may add to it.
type how int

const (
	plain       how = iota // a value, or an inline table: closed
	implied                // a table implied by [a.b] or [[a.b]]: its own header may follow
	dotted                 // a table implied by a.b = 1: more such keys may follow in the same table
	header                 // [a]
	arrayHeader            // [[a]]
)

// index builds the tables of a text with every place, values still missing.
type index struct {
	text  *finding.Text
	into  *finding.List
	pairs []bracket
	base  int // what the text has before the part that is parsed
	root  *Table
	twice *duplicate // the first key that stands twice
}

type duplicate struct {
	at, first finding.Span
	message   string
}

func newIndex(text *finding.Text, into *finding.List, pairs []bracket, base int) *index {
	return &index{text: text, into: into, pairs: pairs, base: base}
}

var errLost = errors.New("its parts cannot be found again")

// read walks the expressions of src. A key that stands twice is kept in twice
// and skipped.
func (x *index) read(src []byte) error {
	x.root, x.twice = newTable(x.into, "", x.text.Span(0, 0)), nil
	p, table := unstable.Parser{}, x.root
	for p.Reset(src); p.NextExpression(); {
		n := p.Expression()
		if n.Kind == unstable.KeyValue {
			if x.pair(table, n) < 0 {
				return errLost
			}
			continue
		}
		table = x.header(n)
	}
	return p.Error()
}

// part is one part of a key.
type part struct {
	name string
	span finding.Span
}

func (x *index) parts(it unstable.Iterator) (out []part) {
	for it.Next() {
		raw := it.Node().Raw
		from := x.base + int(raw.Offset)
		out = append(out, part{string(it.Node().Data), x.text.Span(from, from+int(raw.Length))})
	}
	return out
}

// header opens the table of [a.b] or [[a.b]].
func (x *index) header(n *unstable.Node) *Table {
	keys := x.parts(n.Key())
	t := x.root
	for _, k := range keys[:len(keys)-1] {
		t = x.enter(t, k, implied)
	}
	last := keys[len(keys)-1]
	open := keys[0].span.Start - 1
	for open > 0 && (x.text.Bytes[open] == ' ' || x.text.Bytes[open] == '\t') {
		open--
	}
	if n.Kind == unstable.ArrayTable && open > 0 && x.text.Bytes[open-1] == '[' {
		open--
	}
	span := x.text.Span(open, endOf(x.pairs, open))
	e := t.entries[last.name]
	if n.Kind == unstable.ArrayTable {
		if e == nil {
			e = &entry{key: last.span, how: arrayHeader, value: Value{Kind: KindList, Span: span}}
			t.add(last.name, e)
		} else if e.how != arrayHeader {
			x.again(t, last, e)
		}
		in := newTable(x.into, item(t.join(last.name), len(e.value.List)), span)
		e.value.List = append(e.value.List, Value{Kind: KindTable, Table: in, Span: span})
		return in
	}
	if e == nil {
		in := newTable(x.into, t.join(last.name), span)
		t.add(last.name, &entry{key: last.span, how: header, value: Value{Kind: KindTable, Table: in, Span: span}})
		return in
	}
	if e.how != implied {
		x.again(t, last, e)
		return newTable(x.into, t.join(last.name), span)
	}
	e.how, e.key, e.value.Span, e.value.Table.span = header, last.span, span, span
	return e.value.Table
}

// enter returns the table that k names on the way to a longer key, made when
// it is missing.
func (x *index) enter(t *Table, k part, by how) *Table {
	e := t.entries[k.name]
	switch {
	case e == nil:
		in := newTable(x.into, t.join(k.name), k.span)
		t.add(k.name, &entry{key: k.span, how: by, value: Value{Kind: KindTable, Table: in, Span: k.span}})
		return in
	case e.how == arrayHeader && by == implied:
		return e.value.List[len(e.value.List)-1].Table
	case e.value.Kind != KindTable || e.how == plain || by == dotted && e.how != dotted && e.how != implied:
		x.again(t, k, e)
		return newTable(x.into, t.join(k.name), k.span)
	}
	return e.value.Table
}

// pair adds a key with its value to t and returns where the value ends in the
// text, or -1.
func (x *index) pair(t *Table, n *unstable.Node) int {
	keys := x.parts(n.Key())
	for _, k := range keys[:len(keys)-1] {
		t = x.enter(t, k, dotted)
	}
	last := keys[len(keys)-1]
	v, ok := x.value(n.Value(), t.join(last.name), last.span.End)
	if !ok {
		return -1
	}
	if e := t.entries[last.name]; e != nil {
		x.again(t, last, e)
	} else {
		t.add(last.name, &entry{key: last.span, value: v})
	}
	return v.Span.End
}

// value reads the value that begins behind from, where only blanks, line
// ends, comments, commas and '=' stand before it.
func (x *index) value(n *unstable.Node, name string, from int) (Value, bool) {
	at := x.skip(from)
	if at >= len(x.text.Bytes) {
		return Value{}, false
	}
	v := Value{Span: x.text.Span(at, at+int(n.Raw.Length))}
	switch n.Kind {
	case unstable.String:
		v.Kind = KindText
	case unstable.Integer, unstable.Float:
		v.Kind = KindNumber
	case unstable.Bool:
		v.Kind = KindBool
	case unstable.Array:
		v.Kind, v.Span.End = KindList, endOf(x.pairs, at)
		at++
		for it := n.Children(); it.Next(); {
			w, ok := x.value(it.Node(), item(name, len(v.List)), at)
			if !ok {
				return v, false
			}
			at = w.Span.End
			v.List = append(v.List, w)
		}
		return v, x.text.Bytes[v.Span.Start] == '[' && at < v.Span.End
	case unstable.InlineTable:
		v.Kind, v.Span.End = KindTable, endOf(x.pairs, at)
		v.Table = newTable(x.into, name, v.Span)
		for it := n.Children(); it.Next(); {
			if at = x.pair(v.Table, it.Node()); at < 0 {
				return v, false
			}
		}
		return v, x.text.Bytes[v.Span.Start] == '{' && at < v.Span.End
	default:
		v.Kind = KindDate
	}
	// the library's own place of a plain value holds mine
	return v, at == x.base+int(n.Raw.Offset)
}

// skip returns the place of the next thing that is no blank, line end, comma,
// '=' or comment.
func (x *index) skip(at int) int {
	src := x.text.Bytes
	for ; at < len(src); at++ {
		switch src[at] {
		case ' ', '\t', '\r', '\n', ',', '=':
		case '#':
			for at+1 < len(src) && src[at+1] != '\n' {
				at++
			}
		default:
			return at
		}
	}
	return at
}

// again keeps the first key that stands twice.
func (x *index) again(t *Table, k part, e *entry) {
	if x.twice != nil {
		return
	}
	what := t.join(k.name) + " is written twice"
	if e.value.Kind == KindTable && e.how == plain {
		what = strings.TrimSuffix(t.join(k.name), ".") + " is complete in its braces: nothing can be added"
	}
	x.twice = &duplicate{at: k.span, first: e.key, message: what}
}
