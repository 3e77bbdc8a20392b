package taper

import "math"

// SetOver returns how far a tailstock is set over for work of this length
// between its centre points, both in the same unit: L sin a, exact because the
// work turns about the line through its centre points, which is the hypotenuse.
func (s Slope) SetOver(between float64) float64 {
	return float64(float64(s)*between) / s.secant()
}

// SetOverHandbook returns the form that handbooks print: t L. It is larger
// than SetOver by the secant of the half angle.
func (s Slope) SetOverHandbook(between float64) float64 { return float64(s) * between }

// secant returns 1/cos of the half angle.
func (s Slope) secant() float64 { return math.Sqrt(1 + float64(s*s)) }

// SineBar returns the height of the blocks under a sine bar of this length
// that bring the upper line of the cone level: bar times the sine of the
// included angle, 2t/(1+t²).
func (s Slope) SineBar(bar float64) float64 {
	return 2 * float64(s) * bar / (1 + float64(s*s))
}

// FromSineBar returns the slope of a cone whose upper line is level on a sine
// bar of this length with blocks of this height below: tan(x/2) = sin x/(1+cos
// x). False: the height is not between 0 and the bar.
func FromSineBar(height, bar float64) (Slope, bool) {
	sine := height / bar
	if !(sine > 0 && sine < 1) {
		return 0, false
	}
	return Slope(sine / (1 + math.Sqrt(1-float64(sine*sine)))), true
}

// FromTwo returns the slope of a cone that touches two discs or balls of these
// radii whose centres are so far apart on its axis: sin a = (R - r)/apart.
// False: no such cone.
func FromTwo(large, small, apart float64) (Slope, bool) {
	sine := (large - small) / apart
	if !(sine > 0 && sine < 1) {
		return 0, false
	}
	return Slope(sine / math.Sqrt(1-float64(sine*sine))), true
}

// Apart returns how far apart the centres of two discs or balls of these radii
// stand when both touch the cone: (R - r)/sin a.
func (s Slope) Apart(large, small float64) float64 {
	return float64((large-small)*s.secant()) / float64(s)
}
