package finding

import (
	"bytes"
	"fmt"
	"io"
	"strings"
	"unicode/utf8"
)

// Style is how findings are printed.
type Style int

const (
	Short  Style = iota // one line each
	Window              // with the line, what is meant in it, and the help
)

// windowWidth is how many code points of a long line are shown.
const windowWidth = 100

// Write prints findings, in the order given, as lines of text that are safe
// on a terminal.
func Write(w io.Writer, found []Finding, style Style) error {
	var b bytes.Buffer
	for i, f := range found {
		if i > 0 && style == Window {
			b.WriteByte('\n')
		}
		fmt.Fprintf(&b, "%s%s: %s [%s]\n", head(f.Span), f.Severity, Clean(f.Message), f.Code)
		if style == Short {
			continue
		}
		window(&b, f.Span)
		for _, p := range f.Places {
			fmt.Fprintf(&b, "%snote: %s\n", head(p.Span), Clean(p.Message))
			window(&b, p.Span)
		}
		if f.Help != "" {
			fmt.Fprintf(&b, "help: %s\n", Clean(f.Help))
		}
	}
	_, err := w.Write(b.Bytes())
	return err
}

// head returns "file:line:column: " or nothing when s is nowhere.
func head(s Span) string {
	if !s.Valid() {
		return ""
	}
	p := s.From()
	return fmt.Sprintf("%s:%d:%d: ", Clean(s.Text.Name), p.Line, p.Column)
}

// window prints the line of s with what s means in it underlined. A long line
// is cut on both sides so that the beginning of s stays in sight.
func window(b *bytes.Buffer, s Span) {
	if !s.Valid() {
		return
	}
	at := s.From()
	line := []rune(strings.ToValidUTF8(string(s.Text.line(at.Line)), "\ufffd"))
	from := at.Column - 1
	to := len(line)
	if end := s.To(); end.Line == at.Line {
		to = end.Column - 1
	}
	from = min(from, len(line))
	to = min(max(to, from+1), len(line)+1)
	left := 0
	if len(line) > windowWidth {
		left = min(max(from-windowWidth/2, 0), len(line)-windowWidth)
	}
	right := min(left+windowWidth, len(line))
	to = min(to, right+1)
	text, blank, mark := Clean(string(line[left:right])), Clean(string(line[left:from])), ""
	if to > from {
		mark = strings.Repeat("^", max(utf8.RuneCountInString(Clean(string(line[from:min(to, right)]))), 1))
	}
	number := itoa(at.Line)
	fmt.Fprintf(b, "%5s | %s\n      | %s%s\n", number, text, strings.Repeat(" ", utf8.RuneCountInString(blank)), mark)
}

// Clean returns s as one line that cannot act on a terminal: control
// characters, those that turn the reading direction and those without width
// are shown as \u{..}. A tab becomes one blank.
func Clean(s string) string {
	var b strings.Builder
	for _, r := range s {
		switch {
		case r == '\t':
			b.WriteByte(' ')
		case hidden(r):
			fmt.Fprintf(&b, `\u{%x}`, r)
		default:
			b.WriteRune(r)
		}
	}
	return b.String()
}

// hidden tells whether a terminal would act on r, or show nothing for it
// (Unicode 15: C0, C1, format characters that join, hide or turn text).
func hidden(r rune) bool {
	switch {
	case r < 0x20, r >= 0x7f && r < 0xa0, r == 0xad, r == 0x61c, r == 0x180e:
		return true
	case r >= 0x200b && r <= 0x200f, r >= 0x2028 && r <= 0x202e, r >= 0x2060 && r <= 0x206f:
		return true
	case r == 0xfeff, r >= 0xfff9 && r <= 0xfffb, r >= 0xe0000 && r <= 0xe007f:
		return true
	}
	return false
}
