package finding

import (
	"slices"
	"sync"
	"unicode/utf8"
)

// Text is a user's text under the name the user gave it ('/' between parts).
// Its lines are found once, when the first place in it is asked for.
type Text struct {
	Name  string
	Bytes []byte
	once  sync.Once
	lines []int // byte offset of each line's start
}

// NewText returns b under name. It keeps b.
func NewText(name string, b []byte) *Text { return &Text{Name: name, Bytes: b} }

// Position is a place in a text as people count: both from 1, columns in
// Unicode code points.
type Position struct{ Line, Column int }

// Position returns the line and column of a byte offset; offsets outside the
// text are moved to its nearer end. A byte that is no valid UTF-8 counts as
// one code point.
func (t *Text) Position(offset int) Position {
	offset = min(max(offset, 0), len(t.Bytes))
	line := t.lineOf(offset)
	return Position{line + 1, utf8.RuneCount(t.Bytes[t.lines[line]:offset]) + 1}
}

// lineOf returns the index of the line that holds offset.
func (t *Text) lineOf(offset int) int {
	t.once.Do(func() {
		t.lines = append(t.lines, 0)
		for i, b := range t.Bytes {
			if b == '\n' {
				t.lines = append(t.lines, i+1)
			}
		}
	})
	at, found := slices.BinarySearch(t.lines, offset)
	if !found {
		at--
	}
	return at
}

// line returns line n (from 1) without its line end.
func (t *Text) line(n int) []byte {
	t.lineOf(0)
	if n < 1 || n > len(t.lines) {
		return nil
	}
	end := len(t.Bytes)
	if n < len(t.lines) {
		end = t.lines[n] - 1
	}
	b := t.Bytes[t.lines[n-1]:end]
	if len(b) > 0 && b[len(b)-1] == '\r' {
		b = b[:len(b)-1]
	}
	return b
}

// Span returns the range [start, end) of t.
func (t *Text) Span(start, end int) Span { return Span{Text: t, Start: start, End: end} }

// Valid tells whether s is somewhere.
func (s Span) Valid() bool { return s.Text != nil }

// From returns the place where s begins; 0, 0 for the zero Span.
func (s Span) From() Position {
	if s.Text == nil {
		return Position{}
	}
	return s.Text.Position(s.Start)
}

// To returns the place just behind s; 0, 0 for the zero Span.
func (s Span) To() Position {
	if s.Text == nil {
		return Position{}
	}
	return s.Text.Position(s.End)
}

// String returns the bytes of s.
func (s Span) String() string {
	if s.Text == nil || s.Start < 0 || s.End > len(s.Text.Bytes) || s.Start > s.End {
		return ""
	}
	return string(s.Text.Bytes[s.Start:s.End])
}

// Place returns "file:line" of where s begins, as reports name a source, or
// "" for the zero Span.
func (s Span) Place() string {
	if s.Text == nil {
		return ""
	}
	return s.Text.Name + ":" + itoa(s.From().Line)
}
