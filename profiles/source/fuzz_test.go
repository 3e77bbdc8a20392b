package source

import (
	"strings"
	"testing"
	"unicode/utf8"

	"taperwright/profiles/finding"
)

func FuzzParse(f *testing.F) {
	f.Add([]byte(shaft))
	f.Add([]byte("\ufeffa = [ 1, { b.c = 2, d = [[], [{}]] } ] # x\r\n[[t.u]]\r\n[t.u.v]\r\n"))
	suite(f, func(_ string, src []byte) {
		if len(src) < 400 {
			f.Add(src)
		}
	})
	f.Fuzz(func(t *testing.T, src []byte) { check(t, src) })
}

// check holds what is true of every text: an answer, exactly one finding when
// it is no, every place inside the text and at what it says, and the same
// answer twice.
func check(t *testing.T, src []byte) {
	t.Helper()
	var found finding.List
	text := finding.NewText("p.toml", src)
	root, ok := Parse(text, &found)
	if ok != (found.Len() == 0) || !ok && found.Len() != 1 {
		t.Fatalf("%q: %v with %d findings", src, ok, found.Len())
	}
	for _, g := range found.Sorted() {
		inside(t, text, g.Span)
		for _, p := range g.Places {
			inside(t, text, p.Span)
		}
		if g.Message == "" || strings.HasSuffix(g.Message, ".") || !utf8.ValidString(g.Message) {
			t.Fatalf("%q: message %q", src, g.Message)
		}
	}
	if !ok {
		return
	}
	first := dump(t, text, root, 0)
	var again finding.List
	root, _ = Parse(text, &again)
	if second := dump(t, text, root, 0); first != second {
		t.Fatalf("%q reads as\n%s\nand as\n%s", src, first, second)
	}
}

func inside(t *testing.T, text *finding.Text, s finding.Span) {
	t.Helper()
	if s.Text != text || s.Start < 0 || s.End < s.Start || s.End > len(text.Bytes) {
		t.Fatalf("%q: place %d to %d", text.Bytes, s.Start, s.End)
	}
}

// dump prints a table with every place, and checks each.
func dump(t *testing.T, text *finding.Text, in *Table, depth int) string {
	t.Helper()
	inside(t, text, in.Span())
	if depth > maxNesting+maxParts*(maxNesting+2) {
		t.Fatalf("%q: deeper than its limits", text.Bytes)
	}
	var b strings.Builder
	for _, k := range in.Keys() {
		e := in.entries[k]
		inside(t, text, e.key)
		if key := e.key.String(); key != k && !strings.HasPrefix(key, `"`) && !strings.HasPrefix(key, "'") {
			t.Fatalf("%q: the key %q stands where %q is", text.Bytes, k, key)
		}
		b.WriteString(strings.Repeat(" ", depth) + k + " " + where(e.key) + ":" + dumpValue(t, text, e.value, depth) + "\n")
	}
	return b.String()
}

func dumpValue(t *testing.T, text *finding.Text, v Value, depth int) string {
	t.Helper()
	inside(t, text, v.Span)
	s := v.Kind.String() + " " + v.Span.String()
	written := v.Span.String()
	switch v.Kind {
	case KindNumber:
		if v.Number.Span != v.Span || v.Number.Digits != written || strings.Trim(written, "+-0123456789abcdefABCDEFxo_.ntiINT") != "" {
			t.Fatalf("%q: digits %q where %q is", text.Bytes, v.Number.Digits, written)
		}
	case KindText:
		if q := written[0]; (q != '"' && q != '\'') || written[len(written)-1] != q || v.Text.Span != v.Span {
			t.Fatalf("%q: the text %q where %q is", text.Bytes, v.Text.Value, written)
		}
	case KindBool:
		if written != "true" && written != "false" || v.Bool.Value != (written == "true") {
			t.Fatalf("%q: %v where %q is", text.Bytes, v.Bool, written)
		}
	case KindList:
		if written[0] != '[' || written[len(written)-1] != ']' {
			t.Fatalf("%q: a list where %q is", text.Bytes, written)
		}
		for _, w := range v.List {
			s += "\n" + dumpValue(t, text, w, depth+1)
		}
	case KindTable:
		s += "\n" + dump(t, text, v.Table, depth+1)
	}
	return s
}
