package motion

import "embed"

// Pages holds a page for each code.
//
//go:embed codes/*.md
var Pages embed.FS

// Codes of the findings that Interpret adds. All but those marked stop the
// judgement at their block.
const (
	AbsurdLength        = "absurd-length" // warning, does not stop
	ArcCentre           = "arc-centre"
	ArcMismatch         = "arc-mismatch"
	ArcNoLength         = "arc-no-length" // error that does not stop when given by R
	ArcRadiusShort      = "arc-radius-short"
	AxisClaim           = "axis-claim"
	BadValue            = "bad-value"
	ControlCompensation = "control-compensation"
	CornerWord          = "corner-word"
	CycleNotRead        = "cycle-not-read"
	FeedMissing         = "feed-missing" // error, does not stop: a judging error
	FlowNotRead         = "flow-not-read"
	FrameUnknown        = "frame-unknown"
	GroupTwice          = "group-twice"
	Internal            = "internal"
	LetterTwice         = "letter-twice"
	MoreWords           = "more-words"    // note, does not stop
	NeverReached        = "never-reached" // note, does not stop
	NoEndWord           = "no-end-word"   // does not stop
	NoMotionWord        = "no-motion-word"
	OffsetOff           = "offset-off"
	ProgramRepeats      = "program-repeats" // note, does not stop
	SecondProgram       = "second-program"
	SubprogramNotRead   = "subprogram-not-read"
	ToolWord            = "tool-word"
	UnitChange          = "unit-change" // warning, does not stop
	UnknownStart        = "unknown-start"
	UnknownWord         = "unknown-word"
	VariableNotRead     = "variable-not-read"
)
