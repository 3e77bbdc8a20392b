package rs274

import "embed"

// Pages holds a page for each code.
//
//go:embed codes/*.md
var Pages embed.FS

// Codes of the findings that Parse adds.
const (
	BadCharacter  = "bad-character"
	BadExpression = "bad-expression"
	BadNumber     = "bad-number"
	BareText      = "bare-text"
	BehindEnd     = "behind-end"
	BlankInNumber = "blank-in-number"
	EmptyProgram  = "empty-program"
	MoreFaults    = "more-faults"
	NestedComment = "nested-comment"
	NotText       = "not-text"
	OpenComment   = "open-comment"
)
