// Package motion reads blocks as a control would: modal state, units, diameter
// or radius, absolute and incremental, arcs, tools and offsets. It knows the
// machine, never the wanted part.
package motion

import (
	"taperwright/profiles/finding"
	"taperwright/profiles/geom"
	"taperwright/profiles/shop"
)

// Kind is the kind of a motion.
type Kind int8

const (
	Rapid Kind = iota
	Cut        // line or arc at feed
	Jump       // from or to a place that is not known: nothing can be said of the way. Path has no length and stands where the motion ends, as far as that is known
)

// Spin is the spindle as a motion finds it.
type Spin struct {
	Turning  bool
	Surface  bool    // surface speed mode
	SpeedSet bool    // Speed was given since the mode was set
	Word     string  // "M3" or "M4" as understood; "" while it stands
	Speed    float64 // rev/min, or m/min in surface speed mode; 0: not given
	Cap      float64 // rev/min; 0: none given by the program
}

// Motion is one movement of the programmed point of the tool in force, mm,
// radius, in the frame of the first work offset, with the tool's wear in it. It
// begins where the one before it ended; a Jump begins and ends in one place.
type Motion struct {
	Kind     Kind
	Straight bool         // a rapid known to go straight (one slide only moves)
	PerMin   bool         // Feed is per minute
	Comp     Comp         // the control's own compensation in force
	Block    int          // index into Trace.Blocks
	Tool     int          // index into Trace.Tools; -1: none called yet
	Span     finding.Span // the words that caused it
	Path     geom.Piece   // never without length, Jumps aside
	Feed     float64      // mm/rev, or mm/min when PerMin; 0: never set since its mode was
	Spin     Spin
}

// Comp is the control's own compensation in force: 0 off, -1 left (G41), +1 right (G42).
type Comp int8

// Block is one block of the program as it was read.
type Block struct {
	Span  finding.Span // the whole block without its line end
	Label string       // "N310" as written, or ""
}

// Use is one tool as the program called it.
type Use struct {
	Station, Offset int
	Tool            *shop.Tool   // nil: the shop has none with that station and offset
	Span            finding.Span // of the call
}

// Dwell is a wait.
type Dwell struct {
	Block   int
	Seconds float64
}

// Assumption is state the program never set.
type Assumption struct {
	What, Value string
	From        finding.Span // in the shop file; zero: default
}

// Trace is everything a program does, in order.
type Trace struct {
	Blocks    []Block // those with words, up to the end or to where judgement stops
	Motions   []Motion
	Tools     []Use // in the order of the calls
	Dwells    []Dwell
	Assumed   []Assumption
	NotJudged []string
	Unit      shop.Unit // the program's, as last set
	XDiameter bool
	Ended     bool         // reached its end word
	Stopped   bool         // judgement stops after the last motion: cannot judge beyond
	StoppedAt finding.Span // the block that could not be read; zero when the text is no program
}
