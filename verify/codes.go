package verify

import "embed"

// Pages holds a page for each code of this package.
//
//go:embed codes/*.md
var Pages embed.FS

// Findings.
const (
	CodeMetalLeft   = "metal-left"
	CodeGouge       = "gouge"
	CodeWrongAngle  = "wrong-angle"
	CodeWrongEdge   = "wrong-edge"
	CodeNotThere    = "not-there"
	CodeRapidIn     = "rapid-in-metal"
	CodeDogLegIn    = "dog-leg-in-metal"
	CodeBodyIn      = "body-in-metal"
	CodeNoCap       = "no-speed-cap"
	CodeNoSpindle   = "no-spindle"
	CodeWrongSpin   = "wrong-spindle"
	CodeParted      = "parted"
	CodeUnknownTool = "unknown-tool"
	CodeNoSetup     = "no-such-setup"
	CodeInternal    = "internal"
)

// Slips.
const (
	SlipNoseForgotten = "nose-forgotten"
	SlipNoseWrong     = "nose-wrong"
	SlipTip           = "tip-wrong"
	SlipX             = "x-mode"
	SlipUnit          = "unit-mixed"
	SlipPoint         = "missing-point"
	SlipZero          = "zero-shifted"
	SlipHalf          = "half-for-included"
	SlipIncluded      = "included-for-half"
	SlipPerSide       = "per-side"
	SlipOnDiameter    = "ratio-halved"
	SlipPerFoot       = "per-foot"
	SlipMinutes       = "minutes-as-decimals"
	SlipComplement    = "complement"
	SlipWrongEnd      = "wrong-end"
)
