package taper

import "taperwright/profiles/geom"

// Slope is the tangent of a cone's half angle: how much the radius grows for
// each mm along the axis. It is above 0; which end is large is not its matter.
type Slope float64

// inch is one inch in mm, exact (ISO 31-1).
const inch = 25.4

// FromRatio returns the slope of a taper of rise on diameter in run along the
// axis: FromRatio(1, 10) for 1:10, FromRatio(7, 24) for 7:24.
func FromRatio(rise, run float64) Slope { return Slope(rise / (2 * run)) }

// FromPerFoot returns the slope of a taper of so many inches on diameter per
// foot of axial length.
func FromPerFoot(in float64) Slope { return Slope(in / 24) }

// FromHalfAngle returns the slope of a half angle in radians.
func FromHalfAngle(rad float64) Slope { return Slope(geom.Tan(rad)) }

// FromIncludedAngle returns the slope of an included angle in radians.
func FromIncludedAngle(rad float64) Slope { return Slope(geom.Tan(rad / 2)) }

// Ratio returns n of the rate of taper 1:n on diameter (ISO 3040).
func (s Slope) Ratio() float64 { return 1 / (2 * float64(s)) }

// HalfAngle returns the half angle in radians: also what a compound rest is
// swivelled to from the axis.
func (s Slope) HalfAngle() float64 { return geom.Atan(float64(s)) }

// IncludedAngle returns the included angle in radians.
func (s Slope) IncludedAngle() float64 { return 2 * geom.Atan(float64(s)) }

// PerFoot returns the taper on diameter in inches per foot.
func (s Slope) PerFoot() float64 { return 24 * float64(s) }

// PerInch returns the taper on diameter in inches per inch, which is also mm
// per mm.
func (s Slope) PerInch() float64 { return 2 * float64(s) }

// StandOff returns how far along the axis a mate moves for a difference on
// diameter: both in the same unit.
func (s Slope) StandOff(diameter float64) float64 { return diameter / (2 * float64(s)) }
