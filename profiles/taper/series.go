package taper

import (
	_ "embed"
	"slices"
	"strconv"
	"strings"

	"taperwright/profiles/finding"
	"taperwright/profiles/geom"
)

// Series is one published taper.
type Series struct {
	Name     string // "Morse 3"
	Family   string // "Morse"
	Slope    Slope
	Rate     string // as published: "1:19.922", "0.624 in/ft", "60°"
	Source   string
	Seen     bool // false: from memory, the source was not seen
	reach    reach
	inch, mm float64 // gauge diameter as published, in inches and in mm; 0: not published
	plug, k  float64 // Morse: plug depth, and end of socket to keyway, inches; 0: not published
	common   bool    // its rate is also that of a whole family, which has an entry of its own
}

//go:embed series.tsv
var table string

var series = readTable(table)

// readTable reads the embedded table. Its columns stand in its first line; a
// line that begins with '#' is a remark. The rate is the 1:n column where that
// is published (definitions 3), else the taper per foot, else the angle.
func readTable(text string) []Series {
	var out []Series
	for line := range strings.Lines(text) {
		c := strings.Split(strings.TrimRight(line, "\r\n"), "\t")
		if strings.HasPrefix(line, "#") || c[0] == "family" {
			continue
		}
		s := Series{Family: c[0], Name: c[1], inch: number(c[5]), mm: number(c[6]), plug: number(c[7]), k: number(c[8]), Seen: c[9] == "seen", Source: c[10]}
		switch {
		case c[2] != "":
			r, err := ParseRatio(c[2])
			if err != nil {
				panic("series.tsv: " + err.Error()) // a test reads the whole table
			}
			s.Rate, s.reach = c[2], r.reach()
		case c[3] != "":
			v, h := number(c[3]), halfUnit(c[3])
			s.Rate, s.reach = c[3]+" in/ft", reach{v / 24, (v - h) / 24, (v + h) / 24}
		default:
			t := float64(FromIncludedAngle(geom.Radians(number(c[4]))))
			s.Rate, s.reach = c[4]+"°", reach{t, t, t}
		}
		s.Slope = Slope(s.reach.at)
		s.common = s.Family != "Morse" && s.inch+s.mm > 0
		out = append(out, s)
	}
	return out
}

func number(s string) float64 {
	v, _ := strconv.ParseFloat(s, 64) // an empty cell is 0
	return v
}

// All returns the published series in the order of the table.
func All() []*Series {
	out := make([]*Series, len(series))
	for i := range series {
		out[i] = &series[i]
	}
	return out
}

// GaugeRadius returns the radius of the series' gauge plane in mm: from the
// diameter published in the unit asked for where both are, else the other,
// converted exactly. False: the series has none.
func (s *Series) GaugeRadius(inches bool) (float64, bool) {
	switch {
	case s.inch > 0 && (inches || s.mm == 0):
		return float64(s.inch*inch) / 2, true
	case s.mm > 0:
		return s.mm / 2, true
	}
	return 0, false
}

// Named returns the series that name means, as users write it: case, "No."
// and blanks do not matter; "MT3" is Morse 3, "metric 80" is Metric 1:20 80.
func Named(name string) (*Series, bool) {
	key := folded(name)
	for i := range series {
		if folded(series[i].Name) == key {
			return &series[i], true
		}
	}
	return nil, false
}

// folded brings the ways in which people write a series to one: lower case,
// words with one blank between them, fillers left out.
func folded(name string) string {
	name = strings.ToLower(name)
	for _, p := range [][2]string{{"½", " 1/2"}, {"°", " deg "}, {"#", " "}, {"-", " "}, {"_", " "}, {"no.", " "}, {"nr.", " "}} {
		name = strings.ReplaceAll(name, p[0], p[1])
	}
	name = strings.Join(strings.Fields(name), " ")
	name = strings.ReplaceAll(strings.ReplaceAll(name, " :", ":"), ": ", ":")
	for _, p := range []string{"mt", "mk", "morse"} { // "mt3": the number may stand close
		if rest, ok := strings.CutPrefix(name, p); ok && rest != "" && (rest[0] == ' ' || rest[0] >= '0' && rest[0] <= '9') {
			name = "morse " + rest
		}
	}
	if rest, ok := strings.CutPrefix(name, "metric"); ok && rest != "" && rest[0] >= '0' && rest[0] <= '9' {
		name = "metric " + rest
	}
	words := slices.DeleteFunc(strings.Fields(name), func(w string) bool {
		return slices.Contains([]string{"no", "nr", "number", "taper", "cone", "size", "iso", "1119", "296", "297", "din", "228", "shank"}, w)
	})
	if len(words) > 1 && words[0] == "metric" && words[1] != "1:20" {
		words = slices.Insert(words, 1, "1:20")
	}
	if len(words) == 2 && words[0] == "morse" && words[1] == "4.5" {
		words = []string{"morse", "4", "1/2"}
	}
	for i, w := range words {
		switch w {
		case "degrees", "degree":
			words[i] = "deg"
		case "7/24":
			words[i] = "7:24"
		}
	}
	return strings.Join(words, " ")
}

// likely says what a name that means no series may have been meant for.
func likely(name string) string {
	key := folded(name)
	var names, keys []string
	for i := range series {
		names, keys = append(names, series[i].Name), append(keys, folded(series[i].Name))
	}
	heads, families := []string{"morse", "metric", "7:24"}, []string{"Morse", "Metric 1:20", "7:24"}
	head, _, _ := strings.Cut(key, " ")
	if i := slices.Index(heads, head); i >= 0 { // another number of the family is no slip of the pen
		return "there are " + list(names, families[i])
	}
	if near, ok := finding.Nearest(key, keys); ok {
		return "did you mean \"" + names[slices.Index(keys, near)] + "\"?"
	}
	if near, ok := finding.Nearest(head, heads); ok {
		return "there are " + list(names, families[slices.Index(heads, near)])
	}
	return "known are " + list(names, "Morse") + "; " + list(names, "Metric 1:20") + "; " + list(names, "7:24") +
		"; and the general cones of ISO 1119, like \"1:10\" or \"60 deg\""
}

// list returns the names of a family: "Morse 0, 1, 2".
func list(names []string, family string) string {
	var of []string
	for _, n := range names {
		if rest, ok := strings.CutPrefix(n, family+" "); ok {
			of = append(of, rest)
		}
	}
	return family + " " + strings.Join(of, ", ")
}

// Match is a published series beside a cone.
type Match struct {
	Series     *Series
	Difference float64 // half angle of the cone less that of the series, radians
}

// Nearest returns the n published rates nearest to s in half angle, best
// first. A family of one rate counts once, not once a size.
func Nearest(s Slope, n int) []Match {
	var out []Match
	half := s.HalfAngle()
	for i := range series {
		if !series[i].common {
			out = append(out, Match{&series[i], half - series[i].Slope.HalfAngle()})
		}
	}
	// equal rates keep the order of the table: compare counts of 1e-9 rad, a
	// tenth of what the page prints
	key := func(m Match) int64 { return geom.Count(max(m.Difference, -m.Difference)*100, 7) }
	slices.SortStableFunc(out, func(a, b Match) int {
		switch x, y := key(a), key(b); {
		case x < y:
			return -1
		case x > y:
			return 1
		}
		return 0
	})
	return out[:min(n, len(out))]
}
