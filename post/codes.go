package post

import "embed"

// Codes of the findings of this package; each has its page in codes.
const (
	NoWord       = "no-word"
	NoSpindle    = "no-spindle-word"
	RoundingEats = "rounding-eats-tolerance"
	ArcNotKept   = "arc-not-kept"
	PlanGap      = "plan-gap"
)

// Pages holds the page of each code.
//
//go:embed codes/*.md
var Pages embed.FS
