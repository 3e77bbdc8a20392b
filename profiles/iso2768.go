package profiles

import "taperwright/profiles/geom"

// General tolerances of ISO 2768-1, the class column first: f m c v. 0 in a
// table: the standard has none. testdata/values/limits.toml holds the figures
// with their sources.

// generalClasses are the words for the four classes and their letters.
var generalClasses = []string{"fine", "medium", "coarse", "very-coarse"}

var generalLetters = map[string]string{"f": "fine", "m": "medium", "c": "coarse", "v": "very-coarse"}

type generalRow struct {
	to float64 // upper end of the range, mm, included; 0: none
	pm [4]float64
}

var generalLinear = []generalRow{
	{3, [4]float64{0.05, 0.1, 0.2, 0}},
	{6, [4]float64{0.05, 0.1, 0.3, 0.5}},
	{30, [4]float64{0.1, 0.2, 0.5, 1}},
	{120, [4]float64{0.15, 0.3, 0.8, 1.5}},
	{400, [4]float64{0.2, 0.5, 1.2, 2.5}},
	{1000, [4]float64{0.3, 0.8, 2, 4}},
	{2000, [4]float64{0.5, 1.2, 3, 6}},
	{4000, [4]float64{0, 2, 4, 8}},
}

// generalEdges are for chamfer widths and fillet radii.
var generalEdges = []generalRow{
	{3, [4]float64{0.2, 0.2, 0.4, 0.4}},
	{6, [4]float64{0.5, 0.5, 1, 1}},
	{0, [4]float64{1, 1, 2, 2}},
}

// generalAngles are minutes of arc over the length of the shorter leg.
var generalAngles = []generalRow{
	{10, [4]float64{60, 60, 90, 180}},
	{50, [4]float64{30, 30, 60, 120}},
	{120, [4]float64{20, 20, 30, 60}},
	{400, [4]float64{10, 10, 15, 30}},
	{0, [4]float64{5, 5, 10, 20}},
}

// general returns the tolerance (both ways) of a size of so many mm; 0 when
// the standard has none. Sizes below 0.5 mm, of which it says nothing, get
// 0.1 (common practice).
func general(table []generalRow, class int, size float64) float64 {
	if size < 0 {
		size = -size
	}
	for _, row := range table {
		if row.to == 0 || geom.Count(size, 4) <= geom.Count(row.to, 4) {
			return row.pm[class]
		}
	}
	return 0
}

// generalLength is general for lengths, with what holds below 0.5 mm.
func generalLength(table []generalRow, class int, size float64) float64 {
	if geom.Count(size, 4) < geom.Count(0.5, 4) && geom.Count(size, 4) > geom.Count(-0.5, 4) {
		return 0.1
	}
	return general(table, class, size)
}
