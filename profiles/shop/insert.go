package shop

import (
	_ "embed"
	"fmt"
	"math"
	"strconv"
	"strings"
	"sync"

	"taperwright/profiles/geom"
)

//go:embed inserts.tsv
var insertsTSV string

// codeTable returns the rows of inserts.tsv by their kind, then by their letter or
// code; the value is what stands behind it.
var codeTable = sync.OnceValue(func() map[string]map[string][]string {
	all := map[string]map[string][]string{}
	for line := range strings.Lines(insertsTSV) {
		cells := strings.Split(strings.TrimSuffix(line, "\n"), "\t")
		if strings.HasPrefix(line, "#") {
			continue
		}
		if all[cells[0]] == nil {
			all[cells[0]] = map[string][]string{}
		}
		all[cells[0]][cells[1]] = cells[2:]
	}
	return all
})

// look returns cell n behind the letter of a kind; "" when there is none.
func look(kind, letter string, n int) string {
	if row := codeTable()[kind][letter]; n < len(row) {
		return row[n]
	}
	return ""
}

func known(kind, letter string) bool { return codeTable()[kind][letter] != nil }

// Insert is what an insert's designation says, by ISO 1832 or the inch form of
// it: lengths mm, angles radians.
type Insert struct {
	Code      string  // as understood: "CNMG120408"
	Shape     byte    // letter: 'C'
	Clearance byte    // letter: 'N'
	Included  float64 // of the cutting corner; Pi for a round one
	Circle    float64 // diameter of the inscribed circle; 0: the code does not say
	Edge      float64 // length of an edge from the sharp corner (a trigon's: half of it); 0: the code does not say
	EdgeCode  int     // whole millimetres of the edge, as a metric code says
	Nose      float64 // nominal nose radius; a round one: half its circle
	Round     bool
	Inch      bool
}

// InsertOf reads a designation such as "CNMG120408", "CNMG 120408-XX" or, in
// inch form, "CNMG 432". The error says what in it is not understood.
//
// Source: ISO 1832, by the tables in testdata/values/inserts.toml; the metric
// edge code is the whole millimetres of the edge, from memory.
func InsertOf(code string) (Insert, error) {
	s := strings.ToUpper(strings.Join(strings.Fields(code), ""))
	if len(s) < 4 || strings.Trim(s[:4], "ABCDEFGHIJKLMNOPQRSTUVWXYZ") != "" {
		return Insert{}, fmt.Errorf("it does not begin with the four letters of shape, clearance, tolerance and form")
	}
	in := Insert{Code: s[:4], Shape: s[0], Clearance: s[1]}
	rule := look("shape", s[:1], 1)
	switch {
	case rule == "":
		return in, fmt.Errorf("no shape has the letter %c", s[0])
	case !known("clearance", s[1:2]):
		return in, fmt.Errorf("no clearance has the letter %c", s[1])
	case !known("tolerance", s[2:3]):
		return in, fmt.Errorf("no tolerance has the letter %c", s[2])
	}
	angle, _ := strconv.ParseFloat(look("shape", s[:1], 0), 64)
	in.Included, in.Round = geom.Radians(angle), rule == "round"
	if in.Round {
		in.Included = math.Pi
	}
	size := s[4:]
	if end := strings.IndexFunc(size, func(r rune) bool { return (r < '0' || r > '9') && r != '.' && r != 'T' && r != 'M' }); end >= 0 {
		size = size[:end]
	}
	if metric(size) {
		in.Code += size[:6]
		err := in.metric(size[:6], rule, angle)
		return in, err
	}
	size = strings.TrimRight(size, "TM")
	in.Code += size
	err := in.inch(size, rule, angle)
	return in, err
}

// metric tells whether a size is of the form 120408, 16T308 or 1204M0.
func metric(size string) bool {
	return len(size) >= 6 && digits(size[:2]) && (size[2] == 'T' || digits(size[2:3])) && digits(size[3:4]) &&
		(size[4] == 'M' || digits(size[4:5])) && digits(size[5:6])
}

// edge returns the length of an edge over its inscribed circle, 0 when the
// shape does not tell.
func edge(rule string, deg float64) float64 {
	switch rule {
	case "rhombus":
		return 1 / geom.Sin(geom.Radians(deg))
	case "regular": // n = 360/(180-deg) edges, each spanning 360/n deg of the circle
		return geom.Tan(geom.Radians((180 - deg) / 2))
	case "trigon": // corners of 80 and 160 deg in turn, all six half edges touch the circle
		return (1/geom.Tan(geom.Radians(40)) + 1/geom.Tan(geom.Radians(80))) / 2
	case "round":
		return 1
	}
	return 0
}

func (in *Insert) metric(size, rule string, deg float64) error {
	code, _ := strconv.Atoi(size[:2])
	nose, _ := strconv.Atoi(strings.TrimPrefix(size[4:], "M"))
	in.EdgeCode = code
	switch {
	case !known("thickness", size[2:4]):
		return fmt.Errorf("no thickness has the code %s", size[2:4])
	case in.Round && size[4:] == "M0": // metric circle: the code itself
		in.Circle = float64(code)
	case size[4] == 'M':
		return fmt.Errorf("M0 belongs to round inserts")
	case rule != "other":
		ratio := edge(rule, deg)
		for _, c := range circles() {
			// The length is first rounded as catalogues print it: a triangle of
			// circle 12.7 has 21.997 mm, printed 22.00, code 22. The bare whole
			// part (21) is understood as well.
			l := c * ratio
			if wholePart(l, 2) != code && int(l) != code {
				continue
			}
			if in.Circle > 0 {
				return fmt.Errorf("the size %s fits two inscribed circles, %s and %s mm", size[:2], brief(in.Circle), brief(c))
			}
			in.Circle = c
		}
		if in.Circle == 0 {
			return fmt.Errorf("no inscribed circle gives the size %s", size[:2])
		}
	}
	in.Edge = in.Circle * edge(rule, deg)
	in.Nose = float64(nose) / 10
	if in.Round {
		in.Nose, in.Edge = in.Circle/2, 0
	}
	return nil
}

// wholePart returns the whole part of x once rounded to decimals.
func wholePart(x float64, decimals int) int {
	return int(geom.Round(x, decimals))
}

// circles returns the inscribed circles, mm, smallest first.
var circles = sync.OnceValue(func() (all []float64) {
	for line := range strings.Lines(insertsTSV) {
		if cells := strings.Split(line, "\t"); cells[0] == "circle" {
			c, _ := strconv.ParseFloat(cells[1], 64)
			all = append(all, c)
		}
	}
	return all
})

// inch reads "432" or "32.51": circle in eighths of an inch from 1/4 in to
// 1 in, thickness in sixteenths, nose radius in sixty-fourths.
func (in *Insert) inch(size, rule string, deg float64) error {
	in.Inch = true
	if len(size) == 5 && size[2:4] == ".5" { // half sixteenths of thickness
		size = size[:2] + size[4:]
	}
	if len(size) != 3 || !digits(size) || size[0] < '2' || size[0] > '8' || size[1] == '0' || rule == "other" {
		return fmt.Errorf("its size is neither metric (120408) nor inch (432)")
	}
	if !known("inchnose", size[2:]) {
		return fmt.Errorf("no nose radius has the inch code %s", size[2:])
	}
	in.Circle = float64(size[0]-'0') * 3.175
	in.Edge = in.Circle * edge(rule, deg)
	in.Nose = float64(size[2]-'0') * 25.4 / 64
	if in.Round {
		in.Nose, in.Edge = in.Circle/2, 0
	}
	return nil
}
