package source

import (
	"bytes"
	"errors"
	"strings"
	"unicode/utf8"

	"github.com/BurntSushi/toml"
	gotoml "github.com/pelletier/go-toml/v2"

	"taperwright/profiles/finding"
)

// Parse reads a TOML text: limits, then validity (one library), then places
// (the same), then values (the other). It returns false, with one finding,
// when nothing can be read. Findings of the table's getters go to into.
func Parse(text *finding.Text, into *finding.List) (*Table, bool) {
	if at := firstNotText(text.Bytes); at >= 0 {
		into.Error(text.Span(at, at+1), NotUTF8, "save it as plain text in UTF-8", "the file is not text in UTF-8")
		return nil, false
	}
	pairs, ok := within(text, into)
	if !ok {
		return nil, false
	}
	base := 0
	if bytes.HasPrefix(text.Bytes, []byte("\ufeff")) {
		base = len("\ufeff")
	}
	src := text.Bytes[base:]
	x := newIndex(text, into, pairs, base)

	var ignored map[string]any
	if err := gotoml.Unmarshal(src, &ignored); err != nil {
		refuse(text, into, x, src, base, err)
		return nil, false
	}
	values := map[string]any{}
	if _, err := toml.Decode(string(src), &values); err != nil {
		at, message := base, err.Error()
		if e := (toml.ParseError{}); errors.As(err, &e) {
			at, message = base+e.Position.Start, e.Message
		}
		refuseSyntax(text, into, at, message)
		return nil, false
	}
	if err := x.read(src); err != nil {
		refuseSyntax(text, into, base, err.Error())
		return nil, false
	}
	if at, ok := fill(x.root, values); !ok {
		into.Error(at, Syntax, "write it in another way", "this can be read in two ways")
		return nil, false
	}
	return x.root, true
}

// firstNotText returns where src stops being text in UTF-8, or -1. A NUL is
// what UTF-16 looks like.
func firstNotText(src []byte) int {
	for i := 0; i < len(src); {
		if src[i] == 0 {
			return i
		}
		if src[i] < utf8.RuneSelf {
			i++
			continue
		}
		r, n := utf8.DecodeRune(src[i:])
		if r == utf8.RuneError && n == 1 {
			return i
		}
		i += n
	}
	return -1
}

// refuse adds the finding for what the judging library said.
func refuse(text *finding.Text, into *finding.List, x *index, src []byte, base int, err error) {
	at, message := base, err.Error()
	if e := (*gotoml.DecodeError)(nil); errors.As(err, &e) {
		line, column := e.Position()
		at, message = base+offset(src, line, column), strings.TrimPrefix(e.Error(), "toml: ")
	}
	// The places know where a key stands twice; the library names the
	// expression only.
	if x.read(src) == nil && x.twice != nil {
		d := x.twice
		into.Add(finding.Finding{Code: DuplicateKey, Span: d.at, Message: d.message,
			Help: "remove one of the two", Places: []finding.Place{{Span: d.first, Message: "first written here"}}})
		return
	}
	refuseSyntax(text, into, at, message)
}

// offset returns the byte offset of a line and a column in bytes, both from 1.
func offset(src []byte, line, column int) int {
	at := 0
	for ; line > 1; line-- {
		n := bytes.IndexByte(src[at:], '\n')
		if n < 0 {
			return len(src)
		}
		at += n + 1
	}
	return min(at+column-1, len(src))
}
