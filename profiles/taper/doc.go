// Package taper is the arithmetic of one cone: any sufficient facts about it
// give the whole of it, and every figure a shop writes a taper in can be had
// from it: settings of a hand lathe, heights on a sine bar, distances of discs
// and balls. Facts that disagree are explained by the usual slip. It holds the
// published series.
//
// A cone is kept by its slope, the tangent of its half angle, so that 1:n,
// 7/24 and rates per foot stay exact; angles are derived. Radii and lengths
// are millimetres, angles radians; a diameter occurs only in what a Fact says
// and in messages.
package taper
