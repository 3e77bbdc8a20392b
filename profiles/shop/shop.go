// Package shop tells what each word means on this lathe and what its tools
// look like. Lengths are mm, radii are radii, angles radians, feeds mm/rev or
// mm/min, surface speeds m/min, whatever unit the file was written in.
package shop

import (
	"taperwright/profiles/finding"
	"taperwright/profiles/source"
)

// Shop is one shop file, or the [machine] and [[tool]] of a part file.
type Shop struct {
	Text    *finding.Text
	Machine Machine
	Tools   []Tool
	Hand    *HandLathe // nil: not given
	Stock   *Stock     // [stock] of a shop file, for judging without a part; nil when not given
}

// Unit is the unit of a text.
type Unit int

const (
	MM Unit = iota
	Inch
)

// PerMM is the length of one unit in mm.
func (u Unit) PerMM() float64 {
	if u == Inch {
		return 25.4
	}
	return 1
}

func (u Unit) String() string {
	if u == Inch {
		return "inch"
	}
	return "mm"
}

// Setting is a value and where it comes from: given in a text, or a default
// that a report must say was assumed.
type Setting[T any] struct {
	Value T
	Given bool
	From  finding.Span // of the value when given
}

// Purpose is what a word does. The names are those of `word = { ... }` in a
// shop file. The starting columns map each purpose to words such as "G96".
type Purpose string

const (
	Rapid          Purpose = "rapid"
	Feed           Purpose = "feed"
	ArcCW          Purpose = "arc_cw"
	ArcCCW         Purpose = "arc_ccw"
	Dwell          Purpose = "dwell"
	PlaneZX        Purpose = "plane_zx"
	UnitInch       Purpose = "inch"
	UnitMM         Purpose = "mm"
	Home           Purpose = "home" // reference return through a point
	NoseOff        Purpose = "nose_off"
	NoseLeft       Purpose = "nose_left"
	NoseRight      Purpose = "nose_right"
	SpeedCap       Purpose = "speed_cap"    // with S; with axis words the frame preset
	FramePreset    Purpose = "frame_preset" // presets the frame only: columns without a word that caps speed
	SurfaceSpeed   Purpose = "surface_speed"
	SpindleRPM     Purpose = "spindle_rpm"
	FeedPerMinute  Purpose = "feed_per_minute"
	FeedPerRev     Purpose = "feed_per_rev"
	Absolute       Purpose = "absolute"
	Incremental    Purpose = "incremental"
	MachineFrame   Purpose = "machine_frame" // G53
	WorkFrame      Purpose = "work_frame"    // G54..G59
	DiameterX      Purpose = "x_diameter"
	RadiusX        Purpose = "x_radius"
	SpindleForward Purpose = "spindle_forward" // M3
	SpindleReverse Purpose = "spindle_reverse" // M4
	SpindleStop    Purpose = "spindle_stop"
	ToolChange     Purpose = "tool_change" // M6 where used
	ProgramStop    Purpose = "stop"
	OptionalStop   Purpose = "optional_stop"
	ProgramEnd     Purpose = "end"
	Coolant        Purpose = "coolant"
	CoolantOff     Purpose = "coolant_off"
	ReturnFromSub  Purpose = "return"
	CycleCancel    Purpose = "cycle_cancel" // G80 where it is no cycle
	PathMode       Purpose = "path_mode"
	// words of later rooms: known by name so that they are refused by name
	CycleTurn       Purpose = "turning_cycle"
	CycleFace       Purpose = "facing_cycle"
	CycleRough      Purpose = "rough_cycle"
	CycleRoughFace  Purpose = "rough_face_cycle"
	CycleRepeat     Purpose = "repeat_cycle"
	CycleFinish     Purpose = "finish_cycle"
	CycleThread     Purpose = "thread_cycle"
	ThreadMove      Purpose = "thread_move"
	CycleGroove     Purpose = "groove_cycle"
	CycleFaceGroove Purpose = "face_groove_cycle"
	CycleThreadMany Purpose = "thread_passes_cycle"
	CallSub         Purpose = "call"
)

// MissingPoint is what a number without a decimal point means on this lathe.
type MissingPoint string

const (
	Whole     MissingPoint = "whole"     // X50 is 50 mm
	Increment MissingPoint = "increment" // X50 is 0.050 mm (0.0050 in)
)

// Place is a named place of the slides, in the set-up's frame, mm, radius.
type Place struct{ Z, R float64 }

// Machine is what each word means on this lathe. Every field has a key of
// [machine]; a field whose Given is false is said as assumed where it matters.
// Make one with Read, ReadIn or Default.
type Machine struct {
	Name         string
	Span         finding.Span       // of [machine]; zero when there is none
	Lengths      Unit               // unit of lengths in the file, and in Assume
	Column       Setting[string]    // words = "g90-turns"
	Words        map[Purpose]string // purpose -> word as posted; no entry: no such word here. Meaning is the reverse
	Harmless     []string           // words that move nothing and change no mode here
	XIsDiameter  Setting[bool]
	Unit         Setting[Unit] // posted, and of a program that names none
	MissingPoint Setting[MissingPoint]
	Feed         Setting[Purpose]     // FeedPerRev or FeedPerMinute before a program says
	Speed        Setting[Purpose]     // SpindleRPM or SurfaceSpeed before a program says
	DwellP       Setting[string]      // "ms" or "s"
	Slash        Setting[string]      // "run" or "skip"
	IncrementX   Setting[string]      // G91 X (and U) as "diameter" or "radius"
	IncrementsUW Setting[bool]        // U and W are increments of X and Z
	ToolSide     Setting[string]      // "rear" or "front": the drawing only
	ArcSense     Setting[string]      // "usual" or "mirrored"
	Spindle      Setting[string]      // "M3" or "M4": turns it the cutting way for an outside tool; not given: not judged
	TopSpeed     Setting[float64]     // rev/min; not given: 0
	Change       Setting[Place]       // tool change point; not given: not known
	HomeAt       Setting[Place]       // where the reference return ends; not given: not known
	BareHome     Setting[string]      // the reference return without axis words: "both-axes" or "nothing"
	Travel       Setting[[2]Place]    // least and greatest place; not given: not judged
	Frames       map[string]Place     // further work offsets: the place of their zero in the first one's frame
	Decimals     Setting[int]         // of X and Z words
	Compensation Setting[string]      // "tip-path" or "control"
	Control      Control              // how the control compensates
	Arcs         Setting[string]      // "ik" or "r"
	LongArc      Setting[string]      // an arc over half a turn by R: "negative-r" or "none"
	ArcTolerance Setting[float64]     // mm; use ArcToleranceIn
	RapidPath    Setting[string]      // "straight" or "dog-leg"
	RapidRate    Setting[[2]float64]  // X (of the slide, on radius) and Z, mm/min; not given: equally fast, said
	StopsAfter   Setting[bool]        // M5 and M9 act after the motion of their block
	OffsetDigits Setting[int]         // last digits of T that are the offset; 0: T is the station alone
	BlockNumbers Setting[int]         // step of N; 0: none
	Comments     Setting[string]      // "brackets", "semicolon" or "none": as posted
	SafeStart    Setting[string]      // words of the safe-start line beyond the usual, blank between
	Chuck        *Chuck               // nil: not given
	Centre       *Centre              // nil: not given
	own          map[Purpose][]string // words set otherwise than in the column
	means        map[string]Purpose   // the reverse of Words, with the further words of a purpose
	ownAt        map[Purpose]finding.Span
	harmlessAt   []finding.Span
	framesAt     *source.Table
}

// Control is how the lathe's own control compensates the nose radius. What is
// not given is not known.
type Control struct {
	Span      finding.Span
	Start     Setting[string] // first move after switching on ends "square" to the contour's start or "tangent" to it
	Corner    Setting[string] // round an outside corner by an "arc" or by "extended" lines
	LookAhead Setting[int]    // blocks
	Short     Setting[string] // inside move shorter than the radius: "alarm" or "gouge"
}

// Chuck is the chuck's body, mm; radii.
type Chuck struct {
	Span        finding.Span
	Radius      float64
	ThroughHole float64 // radius
	JawReach    float64
}

// Centre is the tailstock centre, mm; angle radians.
type Centre struct {
	Span       finding.Span
	PointAngle float64 // included
	BodyRadius float64
}

// Tool is one cutting edge in its holder. Directions: Z away from the chuck,
// X away from the axis on the tool's own side.
type Tool struct {
	Span         finding.Span
	Name         string // "T3 (PCLNR, R0.8)" style, safe text, for messages
	Station      int
	Offset       int
	Purpose      string // "rough", "finish", "both"
	Kind         string // "turn", "groove", "thread", "drill"
	Inside       bool
	Nose         float64          // nose radius, mm
	NoseFrom     finding.Span     // of the key or the insert that says it; zero: NoseOnly
	CuttingAngle Setting[float64] // tool cutting edge angle kappa: of the main edge, from the direction toward the chuck (right hand) (ISO 3002)
	Included     Setting[float64] // of the insert's corner; Pi and Round for a round insert
	MinorFree    bool             // nothing is known of the minor edge: it never touches, and that is not judged
	Round        bool
	MinorReach   Setting[float64] // length of the minor edge from the sharp corner, mm; Value 0: not known, not judged
	MainReach    Setting[float64] // length of the main edge from the sharp corner, mm; Value 0: not known, not judged
	Right        bool             // right hand: cuts toward the chuck
	Neutral      bool             // cuts both ways; Right is set
	TipX, TipZ   int              // programmed point: -1 the nose's tangent toward the axis / chuck, +1 the other, 0 level with the nose centre
	Tip          finding.Span     // where that was said; zero: the default of its side and hand
	SurfaceSpeed Setting[float64] // m/min
	RPM          Setting[float64] // rev/min
	FeedRate     Setting[float64] // mm/rev
	Depth        Setting[float64] // greatest depth of cut, on radius, mm
	LeastDepth   Setting[float64]
	Skin         Setting[float64] // finish allowance left normal to the contour, mm
	Spindle      Setting[string]  // overrides the machine's; not given: the machine's
	Width        Setting[float64] // grooving: blade width, mm
	Reference    Setting[string]  // grooving: edge of the programmed point, "front" or "back"
	Wear         Setting[Place]   // offset added by the control to this tool, radius; not given: 0
	Shank        Setting[float64] // width of a square shank, mm
	BarRadius    Setting[float64] // inside tools; not given: not judged
	Reach        Setting[float64] // from the tip to the holder, mm; not given: not judged
}

// ArcToleranceIn returns the arc tolerance, mm, for a program in unit u: the
// one given, else that of NISTIR 6556 3.5.3 (0.002 mm, 0.0002 in).
func (m *Machine) ArcToleranceIn(u Unit) float64 {
	if m.ArcTolerance.Given {
		return m.ArcTolerance.Value
	}
	if u == Inch {
		return 0.0002 * 25.4
	}
	return 0.002
}

// Increment is the length of one least increment in mm: 0.001 mm or 0.0001 in.
func (u Unit) Increment() float64 {
	if u == Inch {
		return 0.0001 * 25.4
	}
	return 0.001
}

// MinorAngle returns the angle of the minor edge from the direction away from
// the chuck (right hand): pi - kappa - included.
func (t Tool) MinorAngle() float64 {
	return 3.14159265358979323846 - t.CuttingAngle.Value - t.Included.Value
}

// Stock is raw material without a part: radii, mm.
type Stock struct {
	Span            finding.Span
	Radius, Length  float64
	Front           float64 // metal on the front face beyond Z0
	Bore, BoreDepth float64 // radius; depth 0 with a bore: through
}
