package taper

import "embed"

// Codes of the findings of this package; each has its page in codes.
const (
	OverDefined   = "over-defined"
	UnderDefined  = "under-defined"
	NoCone        = "no-cone"
	BadRatio      = "bad-ratio"
	BadAngle      = "bad-angle"
	UnknownSeries = "unknown-series"
	NoDiameter    = "no-series-diameter"
)

// Pages holds the page of each code.
//
//go:embed codes/*.md
var Pages embed.FS
