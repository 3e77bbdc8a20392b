// Package finding says what is wrong, where, and what would be right.
//
// What is wrong with the user's text is a Finding; what is wrong with the
// world (disk, arguments) is an error. Places are byte ranges in a Text and
// become line and column only when a finding is printed.
package finding

// Severity orders findings. The zero value is Error, so that forgetting to
// choose one never hides anything.
type Severity int

const (
	Error Severity = iota
	Warning
	Note
)

// Span is a byte range [Start, End) in Text. The zero Span is "nowhere".
type Span struct {
	Text       *Text
	Start, End int
}

// Place is a second place that a finding speaks of.
type Place struct {
	Span    Span
	Message string
}

// Finding is one thing wrong in one place. Message: lower case, no full stop,
// every length with its unit, X always said as diameter or radius. Help says
// what would be right.
type Finding struct {
	Code     string // lower-case words with hyphens; `taperwright explain CODE` tells more
	Severity Severity
	Span     Span
	Message  string
	Help     string
	Places   []Place
}
