package toolpath

import "embed"

// Pages holds a page for every finding code of this package.
//
//go:embed codes/*.md
var Pages embed.FS

// The finding codes of this package.
const (
	CodeNoTool          = "no-tool"
	CodeToolData        = "tool-data"
	CodeNoTopSpeed      = "no-top-speed"
	CodeNoChangePoint   = "no-change-point"
	CodeOutOfReach      = "out-of-reach"
	CodeFilletUnderNose = "fillet-under-nose"
	CodeCornerZone      = "corner-under-nose"
	CodeNarrow          = "narrow-for-nose"
	CodeStockTooSmall   = "stock-too-small"
	CodeNotPlanned      = "not-planned"
	CodeFeedOverNose    = "feed-over-nose"
	CodeInternal        = "internal"
)
