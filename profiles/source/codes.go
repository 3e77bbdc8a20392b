package source

import "embed"

// Codes of the findings of this package; each has its page in codes.
const (
	TooLarge     = "too-large"
	TooDeep      = "too-deep"
	LongKey      = "long-key"
	TooManyKeys  = "too-many-keys"
	NotUTF8      = "not-utf8"
	Syntax       = "syntax"
	DuplicateKey = "duplicate-key"
	WrongType    = "wrong-type"
	NotFinite    = "not-finite"
	NotDecimal   = "not-decimal"
	NumberRange  = "number-range"
	UnknownKey   = "unknown-key"
	CaseKey      = "case-key"
	UnknownValue = "unknown-value"
)

// Pages holds the page of each code.
//
//go:embed codes/*.md
var Pages embed.FS
