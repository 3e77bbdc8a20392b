// Package toolpath plans how a part is cut: passes, nose compensation,
// lead-ins, clearances, feeds and speeds. What it cannot cut it refuses with
// the feature, the limit met and a tool that would do; never a best guess.
package toolpath

import (
	"taperwright/profiles/geom"
	"taperwright/profiles/shop"
)

// Move is one movement of the programmed point, mm, radius, in the set-up's
// program frame. A rapid is a line with Rapid set.
type Move struct {
	Path    geom.Piece
	Rapid   bool
	Feed    float64 // mm/rev; 0 for a rapid
	Feature int     // index into Part.Features; -1: none (approach, retract, roughing level)
}

// Operation is one tool's work, a block of the program that can be entered
// from its top: it begins and ends at the change point.
type Operation struct {
	Tool    *shop.Tool
	Purpose string // "face", "rough", "semi-finish", "finish"
	Inside  bool
	Passes  []Pass
	Surface bool    // surface speed mode
	Speed   float64 // m/min, or rev/min
	Cap     float64 // rev/min
	PeakRPM float64
}

// Pass is one run of moves with a name for the header and the line map.
type Pass struct {
	Name  string
	Moves []Move
}

// Plan is one set-up's whole work.
type Plan struct {
	Setup      int
	Operations []Operation
	Rough      Skin     // metal left by roughing, normal to the contour
	Skin       Skin     // metal that the finish pass meets
	Notes      []string // said in the header: assumptions, forecasts
	Cautions   []string
}

// Skin is the least and most metal normal to the contour, mm.
type Skin struct{ Least, Most float64 }
