package profiles

import (
	"strconv"
	"strings"

	"taperwright/profiles/geom"
)

// The limits of ISO 286 as far as we hold a published table that others
// confirm: shaft letters f g h js k m, grades IT5 to IT11, sizes to 180 mm.
// What is not here is refused with a request for limits in figures: a guess
// would scrap the part.
//
// Sources: the grades stand in tables of h-shafts (precisemetal.in, h6 to h12
// to 180 mm; NBK technical data, h6 h7 and IT5); f and g in NBK technical
// data; k and m in the JIS B 0401 table of the Sumitomo handbook to 80 mm,
// above that from memory. testdata/values/limits.toml holds every figure with
// its source, and a test compares them all.

// sizeBands are the upper ends of the size ranges, mm, each included.
var sizeBands = [...]float64{3, 6, 10, 18, 30, 50, 80, 120, 180}

// grades are the widths IT5 to IT11 of each range, micrometres.
var grades = [...][7]float64{
	{4, 6, 10, 14, 25, 40, 60},
	{5, 8, 12, 18, 30, 48, 75},
	{6, 9, 15, 22, 36, 58, 90},
	{8, 11, 18, 27, 43, 70, 110},
	{9, 13, 21, 33, 52, 84, 130},
	{11, 16, 25, 39, 62, 100, 160},
	{13, 19, 30, 46, 74, 120, 190},
	{15, 22, 35, 54, 87, 140, 220},
	{18, 25, 40, 63, 100, 160, 250},
}

// letter is how a fundamental deviation is given.
type letter struct {
	upper bool // the deviation is the upper limit, else the lower
	um    [len(sizeBands)]float64
	most  int // highest grade it holds for; 0: all
}

var letters = map[string]letter{
	"f": {upper: true, um: [...]float64{-6, -10, -13, -16, -20, -25, -30, -36, -43}},
	"g": {upper: true, um: [...]float64{-2, -4, -5, -6, -7, -9, -10, -12, -14}},
	"h": {upper: true},
	// ISO 286-1 gives k another deviation (0) above IT7
	"k": {um: [...]float64{0, 1, 1, 1, 2, 2, 2, 3, 3}, most: 7},
	"m": {um: [...]float64{2, 4, 6, 7, 8, 9, 11, 13, 15}},
}

// isoClass returns the deviations, mm on diameter, of a shaft class such as
// k6 at a nominal diameter in mm, or why there are none.
func isoClass(class string, diameter float64) (low, high float64, no *refusal) {
	const figures = "give the limits in figures: tolerance = [low, high] on diameter"
	name, grade := class, ""
	if i := strings.IndexAny(class, "0123456789"); i > 0 {
		name, grade = class[:i], class[i:]
	}
	n, err := strconv.Atoi(grade)
	if err != nil || grade == "" || strings.Trim(name, "abcdefghjklmnprstuvxyzABCDEFGHJKLMNPRSTUVXYZ") != "" {
		return 0, 0, &refusal{BadTolerance, strconv.Quote(class) + " is no tolerance class", `write a class such as "k6", a plain number for both ways, or [low, high]`}
	}
	if strings.ToUpper(name) == name {
		return 0, 0, &refusal{BadTolerance, class + " is a class for bores, and this is outside work", "a shaft's class has a small letter: " + strings.ToLower(class)}
	}
	if geom.Count(diameter, 4) > geom.Count(sizeBands[len(sizeBands)-1], 4) {
		return 0, 0, &refusal{NoLimits, "the table of classes ends at 180 mm", figures}
	}
	if n < 5 || n > 11 {
		return 0, 0, &refusal{NoLimits, "the table of classes holds grades 5 to 11, not " + grade, figures}
	}
	band := 0
	for geom.Count(diameter, 4) > geom.Count(sizeBands[band], 4) {
		band++
	}
	it := grades[band][n-5] / 1000
	if name == "js" {
		return -it / 2, it / 2, nil
	}
	l, known := letters[name]
	switch {
	case !known:
		return 0, 0, &refusal{NoLimits, "the table of classes holds f, g, h, js, k and m, not " + name, figures}
	case l.most > 0 && n > l.most:
		return 0, 0, &refusal{NoLimits, "the table holds " + name + " for grades 5 to " + strconv.Itoa(l.most) + ", not " + grade, figures}
	case l.upper:
		return l.um[band]/1000 - it, l.um[band] / 1000, nil
	}
	return l.um[band] / 1000, l.um[band]/1000 + it, nil
}
