package taper

import (
	"strconv"
	"strings"

	"taperwright/profiles/finding"
	"taperwright/profiles/geom"
)

// Kind is what a fact speaks of.
type Kind int

const (
	Large         Kind = iota // diameter of the large end
	Small                     // diameter of the small end
	Length                    // along the axis
	Gauge                     // diameter at a named place
	Ratio                     // rise on diameter to run along the axis: text "1:10", "7:24", "7/24"
	PerFoot                   // inches on diameter per foot
	PerInch                   // inches on diameter per inch
	HalfAngle                 // degrees, or text 1°26'16"
	IncludedAngle             // degrees, or text
	RateOf                    // rate of a published series: text "morse 3"
)

// End is where the place of a gauge plane is counted from; both count into
// the cone, and may lie beyond its metal or below 0.
type End int

const (
	FromLarge End = iota
	FromSmall
)

// Fact is one thing said about a cone. Numbers carry Value and Digits (as
// written, for the interval they stand for); what was written as text carries
// Text and nothing else of the two. A Gauge fact with Text "series" takes the
// diameter of the series that a RateOf fact names.
type Fact struct {
	Kind   Kind
	Value  float64      // diameter or length in the unit of Ask, rate, or degrees
	Digits string       // Value as written
	Text   string       // ratio, angle or series as written; Value and Digits are then ignored
	At     float64      // Gauge: its place along the axis, in the unit of Ask
	From   End          // Gauge: the end At is counted from
	Span   finding.Span // where it stands
	Label  string       // what the user calls it: "small", "--small"
}

// Ask is what Solve is to find.
type Ask struct {
	Inch  bool         // diameters and lengths are inches, else mm
	Whole bool         // both ends and the length are wanted, else what the facts give
	Span  finding.Span // the cone as a whole, for what is missing
	Flags bool         // facts are called as on the command line in help, else as in a part file
}

// keys are the names of the kinds in a part file.
var keys = [...]string{"large", "small", "length", "gauge", "ratio", "taper_per_foot", "taper_per_inch", "half_angle", "included_angle", "series"}

// call returns what the user calls a kind.
func (a Ask) call(k Kind) string {
	switch {
	case !a.Flags:
		return keys[k]
	case k == Gauge:
		return "--gauge-diameter"
	}
	return "--" + strings.ReplaceAll(keys[k], "_", "-")
}

// unit returns the word for the unit, and how many mm one is.
func (a Ask) unit() (string, float64) {
	if a.Inch {
		return "in", inch
	}
	return "mm", 1
}

// half returns half a unit of the third decimal in mm, of the fourth in inch
// (definitions 5), in mm: what any diameter or length stands for.
func (a Ask) half() float64 {
	if a.Inch {
		return 0.00005 * inch
	}
	return 0.0005
}

// say writes a length in mm as the user would, with its unit.
func (a Ask) say(mm float64) string {
	word, scale := a.unit()
	return geom.Fixed(mm/scale, 4) + " " + word
}

// say returns a fact as the user wrote it: `small 38 mm`, `ratio "1:10"`.
func (f Fact) say(a Ask) string {
	word, _ := a.unit()
	switch {
	case f.Kind == Gauge:
		what := f.Digits + " " + word
		if f.Text != "" {
			what = strconv.Quote(f.Text)
		}
		end := " from the large end"
		if f.From == FromSmall {
			end = " from the small end"
		}
		return f.Label + " " + what + " at " + trimmed(f.At, 4) + " " + word + end
	case f.Text != "":
		return f.Label + " " + strconv.Quote(f.Text)
	case f.Kind < Gauge:
		return f.Label + " " + f.Digits + " " + word
	case f.Kind == PerFoot:
		return f.Label + " " + f.Digits + " in/ft"
	case f.Kind == PerInch:
		return f.Label + " " + f.Digits + " in/in"
	}
	return f.Label + " " + f.Digits + "°"
}

// within returns the place of the bytes [from, to) of f.Text in the user's
// text. There the value may stand in quotes and hold escapes; where the two
// cannot be laid side by side it is the whole value.
func (f Fact) within(from, to int) finding.Span {
	raw := f.Span.String()
	if at := strings.Index(raw, f.Text); at >= 0 {
		return finding.Span{Text: f.Span.Text, Start: f.Span.Start + at + from, End: f.Span.Start + at + to}
	}
	if len(raw) < 2 || raw[0] != '"' {
		return f.Span
	}
	place := make([]int, 0, len(raw)) // offset in raw of each byte of the text
	for i := 1; i < len(raw)-1; i++ {
		place = append(place, i)
		if raw[i] == '\\' {
			i++ // \" and \\ stand for one byte; other escapes end in a mismatch below
		}
	}
	place = append(place, len(raw)-1)
	if len(place) != len(f.Text)+1 {
		return f.Span
	}
	return finding.Span{Text: f.Span.Text, Start: f.Span.Start + place[from], End: f.Span.Start + place[to]}
}

// Cone is one cone. What the facts did not give is 0; Knows tells.
type Cone struct {
	Slope        Slope
	Large, Small float64 // radii of its ends, mm
	Length       float64 // along the axis, mm
	Gauge        float64 // radius at the gauge plane, mm: the named plane, else the large end, else the small
	GaugeAt      float64 // place of the gauge plane, from the large end toward the small, mm
	Series       *Series // named by a fact; nil when none was
	known        [Gauge + 1]bool
}

// Knows tells whether the facts gave Large, Small, Length or Gauge (with its
// place). The slope of a Cone is always known.
func (c Cone) Knows(k Kind) bool { return k >= 0 && int(k) < len(c.known) && c.known[k] }
