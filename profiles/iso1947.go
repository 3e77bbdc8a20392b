package profiles

import (
	"strconv"
	"strings"

	"taperwright/profiles/geom"
)

// Cone angle grades AT4 to AT10 of ISO 1947: the whole width of the included
// angle's zone over the axial length of the cone. The source of the figures
// stands in testdata/values/limits.toml (from memory, confirmed by the worked
// examples there).

type coneGrades struct {
	to   float64 // upper end of the range of lengths, mm, included
	urad [7]float64
}

var coneAngleGrades = []coneGrades{
	{10, [7]float64{200, 315, 500, 800, 1250, 2000, 3150}},
	{16, [7]float64{160, 250, 400, 630, 1000, 1600, 2500}},
	{25, [7]float64{125, 200, 315, 500, 800, 1250, 2000}},
	{40, [7]float64{100, 160, 250, 400, 630, 1000, 1600}},
	{63, [7]float64{80, 125, 200, 315, 500, 800, 1250}},
	{100, [7]float64{63, 100, 160, 250, 400, 630, 1000}},
	{160, [7]float64{50, 80, 125, 200, 315, 500, 800}},
	{250, [7]float64{40, 63, 100, 160, 250, 400, 630}},
	{400, [7]float64{31.5, 50, 80, 125, 200, 315, 500}},
	{630, [7]float64{25, 40, 63, 100, 160, 250, 400}},
}

// coneGrade returns the deviations of the half angle, radians, that a grade
// such as "+AT6", "-AT6" or "AT6/2" leaves a cone of so many mm of axial
// length, or why there are none.
func coneGrade(text string, length float64) (low, high float64, no *refusal) {
	const (
		form    = `write "+AT6", "-AT6" or "AT6/2" (both ways), or { half = [-10, 10], unit = "sec" }`
		figures = `give the limits in figures: { half = [-10, 10], unit = "sec" }`
	)
	s, sign, both := text, "", false
	if strings.HasPrefix(s, "+") || strings.HasPrefix(s, "-") {
		sign, s = s[:1], s[1:]
	}
	if t, is := strings.CutSuffix(s, "/2"); is {
		s, both = t, true
	}
	digits, isGrade := strings.CutPrefix(s, "AT")
	n, err := strconv.Atoi(digits)
	switch {
	case !isGrade || err != nil || digits == "" || digits[0] == '+' || digits[0] == '-':
		return 0, 0, &refusal{BadTolerance, strconv.Quote(text) + " is no angle tolerance", form}
	case sign == "" && !both:
		return 0, 0, &refusal{BadTolerance, text + " does not say which way", `write "+` + text + `", "-` + text + `" or "` + text + `/2" (both ways)`}
	case sign != "" && both:
		return 0, 0, &refusal{BadTolerance, text + " says one way and both ways", form}
	case n < 4 || n > 10:
		return 0, 0, &refusal{NoLimits, "the table of grades holds AT4 to AT10, not AT" + digits, figures}
	case geom.Count(length, 4) <= geom.Count(6, 4) || geom.Count(length, 4) > geom.Count(630, 4):
		return 0, 0, &refusal{NoLimits, "the table of grades is for cones over 6 mm to 630 mm long; this one is " + geom.Fixed(length, 4) + " mm", figures}
	}
	row := 0
	for geom.Count(length, 4) > geom.Count(coneAngleGrades[row].to, 4) {
		row++
	}
	half := coneAngleGrades[row].urad[n-4] * 1e-6 / 2
	switch sign {
	case "+":
		return 0, half, nil
	case "-":
		return -half, 0, nil
	}
	return -half / 2, half / 2, nil
}
