package finding

import (
	"cmp"
	"fmt"
	"slices"
	"strconv"
)

func itoa(n int) string { return strconv.Itoa(n) }

func (s Severity) String() string {
	switch s {
	case Error:
		return "error"
	case Warning:
		return "warning"
	case Note:
		return "note"
	}
	return "severity " + itoa(int(s))
}

// List collects findings. The zero List is ready for use; it is not safe for
// use by several goroutines.
type List struct {
	found []Finding
	texts []*Text // in the order in which they were first spoken of
}

// Add adds f.
func (l *List) Add(f Finding) {
	if t := f.Span.Text; t != nil && !slices.Contains(l.texts, t) {
		l.texts = append(l.texts, t)
	}
	l.found = append(l.found, f)
}

// Order says that findings about these texts are printed in this order,
// before those about any other text.
func (l *List) Order(texts ...*Text) {
	rest := l.texts
	l.texts = slices.Clone(texts)
	for _, t := range rest {
		if !slices.Contains(l.texts, t) {
			l.texts = append(l.texts, t)
		}
	}
}

// Error adds an error. Help may be empty.
func (l *List) Error(at Span, code, help, format string, args ...any) {
	l.Add(Finding{Code: code, Severity: Error, Span: at, Message: fmt.Sprintf(format, args...), Help: help})
}

// Warn adds a warning.
func (l *List) Warn(at Span, code, help, format string, args ...any) {
	l.Add(Finding{Code: code, Severity: Warning, Span: at, Message: fmt.Sprintf(format, args...), Help: help})
}

// Note adds a note.
func (l *List) Note(at Span, code, help, format string, args ...any) {
	l.Add(Finding{Code: code, Severity: Note, Span: at, Message: fmt.Sprintf(format, args...), Help: help})
}

// Len returns how many findings there are.
func (l *List) Len() int { return len(l.found) }

// HasErrors tells whether any finding is an error.
func (l *List) HasErrors() bool {
	return slices.ContainsFunc(l.found, func(f Finding) bool { return f.Severity == Error })
}

// Sorted returns the findings by text (in the order given), place, severity,
// code and message, each once. What has no place comes first.
func (l *List) Sorted() []Finding {
	type key struct{ text, start, end int }
	order := func(f Finding) key {
		return key{slices.Index(l.texts, f.Span.Text), f.Span.Start, f.Span.End}
	}
	out := slices.Clone(l.found)
	slices.SortStableFunc(out, func(a, b Finding) int {
		x, y := order(a), order(b)
		return cmp.Or(cmp.Compare(x.text, y.text), cmp.Compare(x.start, y.start), cmp.Compare(a.Severity, b.Severity),
			cmp.Compare(a.Code, b.Code), cmp.Compare(a.Message, b.Message), cmp.Compare(x.end, y.end))
	})
	return slices.CompactFunc(out, func(a, b Finding) bool {
		return a.Code == b.Code && a.Severity == b.Severity && a.Span == b.Span && a.Message == b.Message
	})
}
