package profiles

import "embed"

// Codes of the findings of this package; each has its page in codes.
const (
	NotYet            = "not-yet"
	LeftForLater      = "left-for-later"
	MissingKey        = "missing-key"
	BadLength         = "bad-length"
	BadTolerance      = "bad-tolerance"
	NoLimits          = "no-limits"
	AimOutside        = "aim-outside"
	LengthsDisagree   = "lengths-disagree"
	ChainedTolerances = "chained-tolerances"
	GaugePlace        = "gauge-place"
	BareAngle         = "bare-angle"
	LooseCone         = "loose-cone"
	BadName           = "bad-name"
	DuplicateName     = "duplicate-name"
	UnknownName       = "unknown-name"
	NoFeatures        = "no-features"
	BadNeighbours     = "bad-neighbours"
	DiameterStep      = "diameter-step"
	PlaneMoves        = "plane-moves"
	NoCorner          = "no-corner"
	NoRoom            = "no-room"
	NoStock           = "no-stock"
	OutsideStock      = "outside-stock"
	StockTooShort     = "stock-too-short"
	BadGrip           = "bad-grip"
	NoShop            = "no-shop"
	CannotOpen        = "cannot-open"
	OutsideRoot       = "outside-root"
)

// Pages holds the page of each code.
//
//go:embed codes/*.md
var Pages embed.FS
