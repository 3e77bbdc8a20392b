package taper

import (
	"flag"
	"math"
	"os"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"taperwright/profiles/finding"
	"taperwright/profiles/geom"
)

// rapid prints the seed of a failure; its files carry the clock in their names.
func TestMain(m *testing.M) {
	for name, value := range map[string]string{"rapid.nofailfile": "true", "rapid.checks": "500"} {
		if err := flag.Set(name, value); err != nil { // the command line still wins
			panic(err)
		}
	}
	os.Exit(m.Run())
}

// said makes facts of lines as a part file has them: `large 45`, `ratio 1:10`,
// `gauge 44 from_small 60`. All point into one text.
func said(t *testing.T, lines string) []Fact {
	t.Helper()
	text := finding.NewText("part.toml", []byte(lines))
	var out []Fact
	at := 0
	for line := range strings.SplitSeq(lines, "\n") {
		key, value, ok := strings.Cut(line, " ")
		require.True(t, ok, line)
		kind := -1
		for k, name := range keys {
			if name == key {
				kind = k
			}
		}
		require.GreaterOrEqual(t, kind, 0, key)
		f := Fact{Kind: Kind(kind), Label: key}
		if f.Kind == Gauge {
			w := strings.Fields(value)
			require.Len(t, w, 3)
			value = w[0]
			f.At, f.From = float(t, w[2]), map[string]End{"from_small": FromSmall, "from_large": FromLarge}[w[1]]
		}
		if f.Kind == Ratio || f.Kind == RateOf || strings.Contains(value, "°") || value == "series" {
			f.Text = value
		} else {
			f.Value, f.Digits = float(t, value), value
		}
		start := at + len(key) + 1
		f.Span = text.Span(start, start+len(value))
		out = append(out, f)
		at += len(line) + 1
	}
	return out
}

func float(t *testing.T, s string) float64 {
	t.Helper()
	a, err := ParseAngle(strings.TrimPrefix(s, "-"))
	require.NoError(t, err, s)
	if strings.HasPrefix(s, "-") {
		return -a.Degrees()
	}
	return a.Degrees()
}

func lines(s string) string { return strings.ReplaceAll(s, "; ", "\n") }

// Hand-computed cones. 1:10 has t = 1/20 = 0.05: over 70 mm the radius changes
// by 3.5 mm, the diameter by 7.
func TestSolve(t *testing.T) {
	for _, c := range []struct {
		facts                                string
		inch                                 bool
		ratio, large, small, length, gaugeAt float64 // diameters, mm
	}{
		{"ratio 1:10; small 38; length 70", false, 10, 45, 38, 70, 70},
		{"ratio 1:10; large 45; length 70", false, 10, 45, 38, 70, 0},
		{"ratio 1:10; large 45; small 38", false, 10, 45, 38, 70, 0},
		{"large 45; small 38; length 70", false, 10, 45, 38, 70, 0},
		// 44 at 60 from the small end: 44 - 60/10 = 38 small; 10 before the large end
		{"ratio 1:10; gauge 44 from_small 60; length 70", false, 10, 45, 38, 70, 10},
		{"ratio 1:10; gauge 44 from_small 60; large 45", false, 10, 45, 38, 70, 10},
		{"small 38; gauge 44 from_small 60; length 70", false, 10, 45, 38, 70, 10},
		{"small 38; gauge 44 from_large 10; length 70", false, 10, 45, 38, 70, 10},
		{"large 45; gauge 44 from_large 10; small 38", false, 10, 45, 38, 70, 10},
		{"large 45; gauge 44 from_small 60; length 70", false, 10, 45, 38, 70, 10},
		// off the metal: 46 stands 10 in front of the large end
		{"ratio 1:10; gauge 46 from_large -10; length 70", false, 10, 45, 38, 70, -10},
		{"large 45; gauge 46 from_large -10; length 70", false, 10, 45, 38, 70, -10},
		{"small 38; gauge 36 from_small -20; length 70", false, 10, 45, 38, 70, 90},
		// 7:24 over 48 mm is 14 mm on diameter; 3.5 in per foot is the same rate
		{"ratio 7:24; large 44.45; length 48", false, 24.0 / 7, 44.45, 30.45, 48, 0},
		{"ratio 7/24; large 44.45; small 30.45", false, 24.0 / 7, 44.45, 30.45, 48, 0},
		{"taper_per_foot 3.5; large 44.45; length 48", false, 24.0 / 7, 44.45, 30.45, 48, 0},
		{"series 7:24 No. 40; gauge series from_large 0; length 48", false, 24.0 / 7, 44.45, 30.45, 48, 0},
		// half a turn of 90 deg: t = 1, the radius falls as fast as the axis runs
		{"half_angle 45; large 20; length 5", false, 0.5, 20, 10, 5, 0},
		{"included_angle 90; large 20; length 5", false, 0.5, 20, 10, 5, 0},
		{"included_angle 90°; small 10; length 5", false, 0.5, 20, 10, 5, 5},
		{"half_angle 45; large 20; small 0", false, 0.5, 20, 0, 10, 0},
		// 0.6 in per foot is 0.05 in per inch, 1:20: over 4 in 0.2 in
		{"taper_per_foot 0.6; large 1; length 4", true, 20, 25.4, 20.32, 101.6, 0},
		{"taper_per_inch 0.05; small 0.8; length 4", true, 20, 25.4, 20.32, 101.6, 101.6},
		// Morse 3 in inch takes the inch gauge diameter: 0.938 - 3.1875/19.922 = 0.778001
		{"series morse 3; gauge series from_large 0; length 3.1875", true, 19.922, 0.938 * 25.4, (0.938 - 3.1875/19.922) * 25.4, 80.9625, 0},
		// in mm it takes 23.825
		{"series morse 3; gauge series from_large 0; length 81", false, 19.922, 23.825, 23.825 - 81/19.922, 81, 0},
		// more than enough: the ratio wins over ends, ends over the angle
		{"ratio 1:10; large 45; small 38.0004; length 70", false, 10, 45, 38, 70, 0},
		{"large 45; small 38; length 70; half_angle 2.86", false, 10, 45, 38, 70, 0},
		{"large 45; small 38; length 70; half_angle 2°51'45\"; ratio 1:10; gauge 44 from_small 60", false, 10, 45, 38, 70, 10},
		// the gauge plane fixes the size before the ends do
		{"ratio 1:10; large 45.0004; gauge 44 from_large 10; length 70", false, 10, 45, 38, 70, 10},
	} {
		var l finding.List
		got, ok := Solve(said(t, lines(c.facts)), Ask{Inch: c.inch, Whole: true}, &l)
		require.True(t, ok, "%s: %v", c.facts, l.Sorted())
		near(t, c.ratio, got.Slope.Ratio(), 1e-9, c.facts, " ratio")
		near(t, c.large, 2*got.Large, 1e-9, c.facts, " large")
		near(t, c.small, 2*got.Small, 1e-9, c.facts, " small")
		near(t, c.length, got.Length, 1e-9, c.facts, " length")
		near(t, c.gaugeAt, got.GaugeAt, 1e-9, c.facts, " gauge at")
		near(t, got.Large-float64(got.Slope)*got.GaugeAt, got.Gauge, 1e-9, c.facts, " gauge")
		for _, k := range []Kind{Large, Small, Length, Gauge} {
			require.True(t, got.Knows(k), c.facts)
		}
	}
}

// Without Whole, what is not known stays unknown.
func TestSolvePart(t *testing.T) {
	for facts, known := range map[string][]Kind{
		"ratio 1:10":                                  {},
		"ratio 1:10; length 70":                       {Length},
		"ratio 1:10; small 38":                        {Small},
		"ratio 1:10; large 45":                        {Large, Gauge},
		"ratio 1:10; gauge 44 from_small 60":          {Small},
		"ratio 1:10; gauge 44 from_large 10":          {Large, Gauge},
		"small 38; gauge 44 from_small 60":            {Small},
		"large 45; small 38; gauge 44 from_large 10":  {Large, Small, Length, Gauge},
		"large 45; small 38; gauge 44 from_small 60":  {Large, Small, Length, Gauge},
		"ratio 1:10; large 45; gauge 44 from_small 6": {Large, Small, Length, Gauge},
	} {
		var l finding.List
		got, ok := Solve(said(t, lines(facts)), Ask{}, &l)
		require.True(t, ok, "%s: %v", facts, l.Sorted())
		for _, k := range []Kind{Large, Small, Length, Gauge} {
			assert.Equal(t, contains(known, k), got.Knows(k), "%s: %s", facts, keys[k])
		}
	}
	assert.False(t, Cone{}.Knows(Ratio))
}

func contains(all []Kind, k Kind) bool {
	for _, x := range all {
		if x == k {
			return true
		}
	}
	return false
}

func refused(t *testing.T, facts string, ask Ask) finding.Finding {
	t.Helper()
	var l finding.List
	_, ok := Solve(said(t, lines(facts)), ask, &l)
	require.False(t, ok, facts)
	require.Len(t, l.Sorted(), 1, "one finding per cause: %s", facts)
	return l.Sorted()[0]
}

// Contradictions and the slip that explains each; figures by hand.
func TestContradictions(t *testing.T) {
	for _, c := range []struct {
		facts, place   string // place: what the finding underlines
		message, help  string
		secondMightFit bool
	}{
		// included 2 atan(1/20) = 5.7248 deg given as the half angle; tan 5.7248 deg = 0.100251, 1:4.9875
		{facts: "ratio 1:10; half_angle 5.7248", place: "5.7248", message: `1:10 and 1:4.9875, 10.0501 mm on diameter over 100.0000 mm, 100.5009 mm as stand-off`, help: `meant as the included angle: half_angle would be "2°51'44.7\""`},
		{facts: "ratio 1:10; included_angle 2.8624", place: "2.8624", message: "1:10 and 1:20.0125", help: `meant as the half angle: included_angle would be "5°43'29.3\""`},
		// 14 mm over 70 is 1:5, which is 1:10 per side: 7 mm too few, 70 mm of stand-off
		{facts: "ratio 1:10; large 52; small 38; length 70", place: "1:10", message: "1:10 and 1:5, 7.0000 mm on diameter over 70.0000 mm, 70.0000 mm as stand-off", help: "meant per side (on radius), not on diameter: ratio would be 1:5"},
		{facts: "taper_per_foot 0.6; large 1.4; small 1; length 4", place: "0.6", message: "0.2000 mm on diameter over 4.0000 mm", help: "taper_per_foot would be 1.20000 in/ft"},
		// 3.5 mm instead of 7 over 70: the rise counted on one side
		{facts: "ratio 1:10; large 41.5; small 38; length 70", place: "41.5", message: "3.5000 mm on diameter over 70.0000 mm, 35.0000 mm as stand-off", help: "counted on one side only: large would be 45.0000 mm on diameter"},
		{facts: "ratio 1:20; taper_per_inch 0.6", place: "0.6", message: "1:20 and 1:1.6667", help: "meant per foot: taper_per_inch would be 0.050000 in/in"},
		{facts: "ratio 1:20; taper_per_foot 0.05", place: "0.05", message: "1:20 and 1:240", help: "meant per inch: taper_per_foot would be 0.60000 in/ft"},
		// slant of 10 on radius over 30 at 1:3 (t = 1/6): 30 sqrt(1+1/36) = 30.4138
		{facts: "ratio 1:3; large 50; small 40; length 30.4138", place: "30.4138", message: "0.1379 mm on diameter", help: "along the slant, not along the axis: length would be 30.0000 mm"},
		{facts: "ratio 1:3; large 50; gauge 40 from_large 30.4138", place: "40", message: "0.1379 mm on diameter", help: "with its place along the slant"},
		{facts: "ratio 1:10; half_angle 87.1376", place: "87.1376", message: "1:10 and", help: `from the face, not from the axis: half_angle would be "2°51'44.7\""`},
		{facts: "ratio 1:10; included_angle 87.1376", place: "87.1376", message: "1:10 and", help: `from the face, not from the axis: included_angle would be "5°43'29.3\""`},
		{facts: "ratio 1:10; included_angle 174.2752", place: "174.2752", message: "1:10 and", help: "180° less the included angle"},
		{facts: "ratio 1:10; included_angle 5.43", place: "5.43", message: "1:10 and", help: "degrees and minutes, D.MM"},
		{facts: "ratio 1:10; included_angle 5.4329", place: "5.4329", message: "1:10 and", help: "degrees and minutes, D.MM"},
		// atan(7/24)/2 = 8.1301 deg is not the half angle of 7:24
		{facts: "ratio 7:24; half_angle 8.1301", place: "8.1301", message: "1:3.4286 and 1:3.5", help: `whose tangent is the rate on diameter (its half has no such tangent): half_angle would be "8°17'49.7\""`},
		{facts: "ratio 10:1; large 45; small 38; length 70", place: "10:1", message: "1:0.1 and 1:10", help: "run to rise: ratio would be 1:10"},
		{facts: "ratio 1:10; gauge 44 from_large 60; small 38; length 70", place: "44", message: "5.0000 mm on diameter over 10.0000 mm", help: "from the other end"},
		{facts: "ratio 1:10; large 45; small 19; length 70", place: "19", message: "19.0000 mm on diameter over 70.0000 mm", help: "as a radius, not as a diameter: small would be 38.0000 mm on diameter"},
		{facts: "ratio 1:10; large 1.7717; small 1.4961; length 70", place: "70", message: "on diameter over 70.0000 mm", help: "measure or look up again"}, // two facts in inch: no single slip
		{facts: "ratio 1:10; large 45; small 38; length 2.7559", place: "2.7559", message: "on diameter over 2.7559 mm", help: "in the other unit, inch or mm: length would be 69.9999 mm"},
		// no slip: 0.1 mm at one place, 1 mm of stand-off at 1:10
		{facts: "ratio 1:10; large 44; gauge 44.1 from_large 0", place: "44.1", message: "stand at one place and disagree: 0.1000 mm on diameter, 1.0000 mm as stand-off", help: "measure or look up again"},
		{facts: "large 44; gauge 44.1 from_large 0; small 40", place: "44.1", message: "stand at one place and disagree: 0.1000 mm on diameter", help: "measure"},
		{facts: "series morse 3; ratio 1:20", place: "1:20", message: `series "morse 3" and ratio "1:20" disagree: 1:19.922 and 1:20, 0.0196 mm on diameter over 100.0000 mm, 0.3900 mm as stand-off`, help: "measure"},
	} {
		f := refused(t, c.facts, Ask{})
		assert.Equal(t, OverDefined, f.Code, c.facts)
		assert.Contains(t, f.Message, c.message, c.facts)
		assert.Contains(t, f.Help, c.help, c.facts)
		if c.help != "measure or look up again" || c.place != "70" {
			assert.Equal(t, c.place, f.Span.String(), c.facts)
		}
		assert.NotEmpty(t, f.Places, c.facts)
	}
}

// In inches the same, in inches; rates alone are compared over 10 in.
func TestContradictionInInches(t *testing.T) {
	g := refused(t, "ratio 1:10; ratio 1:20", Ask{Inch: true})
	assert.Contains(t, g.Message, "1:10 and 1:20, 0.5000 in on diameter over 10.0000 in, 5.0000 in as stand-off")
	f := refused(t, "series morse 2; large 0.7; small 0.572; length 2.5", Ask{Inch: true}) // K for P
	assert.Contains(t, f.Message, "on diameter over 2.5000 in")
	assert.Contains(t, f.Help, "length would be 2.5625 in")
}

func TestRefusals(t *testing.T) {
	whole := Ask{Whole: true}
	for _, c := range []struct {
		facts               string
		ask                 Ask
		code, message, help string
	}{
		{"large 45; length 70", Ask{}, UnderDefined, "only large 45 mm, length 70 mm", "one of ratio, taper_per_foot, taper_per_inch, half_angle, included_angle, series"},
		{"large 45; length 70", Ask{Flags: true}, UnderDefined, "", "--taper-per-foot"},
		{"large 45; small 38", Ask{}, UnderDefined, "", "the length between"},
		{"ratio 1:10; length 70", whole, UnderDefined, "no diameter is given", "add small, large or gauge"},
		{"ratio 1:10; large 45", whole, UnderDefined, "how long", "add length"},
		{"ratio 1:10; gauge 44 from_small 60", whole, UnderDefined, "how long", "add length"},
		{"large 38; small 45; length 70", Ask{}, NoCone, "grows toward the small end", "exchange large and small"},
		{"ratio 1:10; large 38; small 45; length 70", Ask{}, NoCone, "grows toward the small end", "exchange large and small"},
		{"ratio 1:10; large 22.5; small 38; length 70", Ask{}, NoCone, "grows toward the small end", "large 22.5 mm fits if it was meant as a radius"},
		{"ratio 1:10; gauge 3 from_large -100; length 70", Ask{}, NoCone, "the facts make the large diameter -7.0000 mm", "place of the gauge plane"},
		{"large 45; small 45; length 70", Ask{}, NoCone, "equal diameters are no taper", "journal"},
		{"small 38; gauge 32 from_small 60", Ask{}, NoCone, "grows toward the small end", "thicker"},
		{"ratio 1:10; large 38; small 45", Ask{}, NoCone, "the facts make its length -70.0000 mm", ""},
		{"ratio 1:2; large 10; length 30", Ask{}, NoCone, "comes to a point", "after 20.0000 mm"},
		{"ratio 1:10; large 0; length 70", Ask{}, NoCone, "above 0", ""},
		{"half_angle 90", Ask{}, NoCone, "between 0° and 90°", ""},
		{"half_angle 0", Ask{}, NoCone, "above 0", ""},
		{"half_angle 0°0'0\"", Ask{}, NoCone, "between 0° and 90°", ""},
		{"included_angle 180", Ask{}, NoCone, "between 0° and 180°", ""},
		{"ratio 1:10; gauge series from_large 0", Ask{}, NoDiameter, "no series is named", ""},
		{"series 1:10; gauge series from_large 0", Ask{}, NoDiameter, "1:10 is a rate without", "metric 1:20 80"},
		{"series mosre 3", Ask{}, UnknownSeries, `"mosre 3"`, `did you mean "Morse 3"?`},
		{"series morse 9", Ask{}, UnknownSeries, "", "there are Morse 0, 1, 2, 3, 4, 4-1/2, 5, 6, 7"},
		{"series mors", Ask{}, UnknownSeries, "", "there are Morse"},
		{"series self made", Ask{}, UnknownSeries, "", "ISO 1119"},
		{"ratio 1:0", Ask{}, BadRatio, "run of 0", "1:19.922"},
		{"half_angle 1°71'", Ask{}, BadAngle, "minutes are below 60", ""},
	} {
		f := refused(t, c.facts, c.ask)
		assert.Equal(t, c.code, f.Code, c.facts)
		assert.Contains(t, f.Message, c.message, c.facts)
		assert.Contains(t, f.Help, c.help, c.facts)
	}
	// all that cannot be read is told in one run
	var l finding.List
	_, ok := Solve(said(t, lines("ratio 1-10; half_angle 1°x; series no such; large 45")), Ask{}, &l)
	require.False(t, ok)
	require.Len(t, l.Sorted(), 3)
	for _, v := range []float64{math.NaN(), math.Inf(1), -1} {
		var l finding.List
		_, ok := Solve([]Fact{{Kind: Large, Value: v, Digits: "x", Label: "large"}, {Kind: Ratio, Text: "1:10", Label: "ratio"}}, Ask{}, &l)
		require.False(t, ok, v)
		require.Equal(t, NoCone, l.Sorted()[0].Code)
	}
	_, ok = Solve(nil, whole, &l)
	require.False(t, ok)
}

// Facts that agree in the sense of definitions 5 and must stay silent.
func TestAgreement(t *testing.T) {
	for _, c := range []struct {
		facts string
		inch  bool
	}{
		{"ratio 1:10; half_angle 2.8624; included_angle 5.7248", false},
		{"ratio 1:10; half_angle 3", false},         // a whole degree stands for half of one
		{"ratio 1:10; half_angle 2°52'", false},     // to the minute: 2°51'44.7"
		{"ratio 1:10; half_angle 2°51'45\"", false}, // to the second
		{"ratio 1:19.922; taper_per_foot 0.60235", false},
		{"series morse 1; taper_per_foot 0.59858", true}, // the published pair: 12/20.047 = 0.598593
		{"series morse 3; large 0.938; small 0.778; length 3.1875; taper_per_foot 0.60235; half_angle 1°26'16\"", true},
		// 0.0005 on each diameter: 7.001 over 70 still is 1:10
		{"ratio 1:10; large 45.001; small 38; length 70", false},
		{"large 44; gauge 44.001 from_large 0; ratio 1:10", false},
		{"large 44.001; gauge 44 from_large 0; small 40; length 40", false},
		{"ratio 7:24; taper_per_foot 3.5; half_angle 8°17'50\"; included_angle 16.5943", false},
	} {
		var l finding.List
		_, ok := Solve(said(t, lines(c.facts)), Ask{Inch: c.inch}, &l)
		require.True(t, ok, "%s: %v", c.facts, l.Sorted())
	}
	// and just outside: 7.002 over 70 is not 1:10
	refused(t, "ratio 1:10; large 45.0022; small 38; length 70", Ask{})
}

// The place of a fault inside a value in quotes, with and without escapes.
func TestPlaceInsideText(t *testing.T) {
	for _, c := range []struct{ raw, text, want string }{
		{`"1:1x"`, "1:1x", "x"},
		{`1:1x`, "1:1x", "x"},
		{`'1:1x'`, "1:1x", "x"},
		{`"1\u003a1x"`, "1:1x", `"1\u003a1x"`}, // cannot be laid side by side: all of it
	} {
		text := finding.NewText("p.toml", []byte("ratio = "+c.raw))
		var l finding.List
		Solve([]Fact{{Kind: Ratio, Text: c.text, Span: text.Span(8, 8+len(c.raw)), Label: "ratio"}}, Ask{}, &l)
		require.Len(t, l.Sorted(), 1)
		assert.Equal(t, c.want, l.Sorted()[0].Span.String(), c.raw)
	}
	raw := `"1°26'16\"x"` // one escape before the fault
	text := finding.NewText("p.toml", []byte("half_angle = "+raw))
	var l finding.List
	Solve([]Fact{{Kind: HalfAngle, Text: `1°26'16"x`, Span: text.Span(13, 13+len(raw)), Label: "half_angle"}}, Ask{}, &l)
	require.Len(t, l.Sorted(), 1)
	assert.Equal(t, "x", l.Sorted()[0].Span.String())
}

// Set-over by hand: 1:10 over 300 mm, t L = 15; L sin a = 15/sqrt(1.0025) =
// 14.9812851. A 3-4-5 triangle: t = 3/4, sin a = 3/5, sin 2a = 24/25.
func TestSettings(t *testing.T) {
	near(t, 14.9812851, FromRatio(1, 10).SetOver(300), 5e-8)
	near(t, 15, FromRatio(1, 10).SetOverHandbook(300), 1e-12)
	s := Slope(0.75)
	near(t, 60, s.SetOver(100), 1e-12)
	near(t, 96, s.SineBar(100), 1e-12)
	near(t, 10, s.Apart(11, 5), 1e-12) // (11 - 5)/0.6
	back, ok := FromSineBar(96, 100)
	require.True(t, ok)
	near(t, 0.75, float64(back), 1e-12)
	back, ok = FromTwo(11, 5, 10)
	require.True(t, ok)
	near(t, 0.75, float64(back), 1e-12)
	near(t, 0.01/1.5, s.StandOff(0.01), 1e-15)
	for _, bad := range [][2]float64{{0, 100}, {-1, 100}, {100, 100}, {1, 0}, {math.NaN(), 1}} {
		_, ok := FromSineBar(bad[0], bad[1])
		require.False(t, ok, bad)
		_, ok = FromTwo(bad[0], 0, bad[1])
		require.False(t, ok, bad)
	}
}

// Any sufficient facts of a cone give that cone back, in any order, in mm and
// in inch; and everything that is true of it at once is no contradiction.
func TestAnySufficientFacts(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		inches := rapid.Bool().Draw(rt, "inch")
		unit := 1.0
		if inches {
			unit = inch
		}
		n := rapid.Float64Range(0.6, 60).Draw(rt, "n")
		slope := FromRatio(1, n)
		large := rapid.Float64Range(8, 300).Draw(rt, "large") / unit
		length := rapid.Float64Range(0.05, 0.9).Draw(rt, "share") * large * n
		small := large - length/n
		at := rapid.Float64Range(0.2, 0.8).Draw(rt, "at") * length
		number := func(k Kind, v float64) Fact {
			return Fact{Kind: k, Value: v, Digits: geom.Fixed(v, 12), Label: keys[k]}
		}
		deg := geom.Degrees(slope.HalfAngle())
		rates := []Fact{{Kind: Ratio, Text: "1:" + geom.Fixed(n, 12), Label: "ratio"}, number(PerFoot, 12/n), number(PerInch, 1/n), number(HalfAngle, deg), number(IncludedAngle, 2*deg)}
		gauges := []Fact{number(Gauge, large-at/n), number(Gauge, large-at/n)}
		gauges[0].At, gauges[0].From = at, FromLarge
		gauges[1].At, gauges[1].From = length-at, FromSmall
		g := gauges[rapid.IntRange(0, 1).Draw(rt, "gauge")]
		rate := rates[rapid.IntRange(0, len(rates)-1).Draw(rt, "rate")]
		L, S, N := number(Large, large), number(Small, small), number(Length, length)
		sets := [][]Fact{{rate, L, N}, {rate, S, N}, {rate, L, S}, {rate, g, N}, {L, S, N}, {L, g, N}, {S, g, N},
			append([]Fact{L, S, N, g}, rates...)}
		if g.From == FromLarge {
			sets = append(sets, []Fact{rate, g, S}, []Fact{L, g, S})
		} else {
			sets = append(sets, []Fact{rate, g, L}, []Fact{S, g, L})
		}
		facts := rapid.Permutation(sets[rapid.IntRange(0, len(sets)-1).Draw(rt, "set")]).Draw(rt, "facts")
		var l finding.List
		c, ok := Solve(facts, Ask{Inch: inches, Whole: true}, &l)
		if !ok {
			rt.Fatalf("%v", l.Sorted())
		}
		// relative: slopes through angles and differences of diameters lose
		// some digits where the cone is short
		close := func(what string, want, got float64) {
			if !(math.Abs(want-got) <= 1e-8*(math.Abs(want)+1)) {
				rt.Fatalf("%s: want %.12g, got %.12g", what, want, got)
			}
		}
		close("ratio", n, c.Slope.Ratio())
		close("large", large*unit, 2*c.Large)
		close("small", small*unit, 2*c.Small)
		close("length", length*unit, c.Length)
		close("gauge", 2*(c.Large-float64(c.Slope)*c.GaugeAt), 2*c.Gauge)
	})
}

// A factor of two anywhere is never taken for agreement, and is told.
func TestFactorOfTwoIsNamed(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		n := float64(rapid.IntRange(3, 50).Draw(rt, "n"))
		half := geom.Degrees(FromRatio(1, n).HalfAngle())
		f := Fact{Kind: HalfAngle, Value: 2 * half, Digits: geom.Fixed(2*half, 4), Label: "half_angle"}
		want := "meant as the included angle"
		if rapid.Bool().Draw(rt, "other") {
			f = Fact{Kind: IncludedAngle, Value: half, Digits: geom.Fixed(half, 4), Label: "included_angle"}
			want = "meant as the half angle"
		}
		f.Value = geom.Round(f.Value, 4)
		var l finding.List
		_, ok := Solve([]Fact{{Kind: Ratio, Text: "1:" + geom.Fixed(n, 0), Label: "ratio"}, f}, Ask{}, &l)
		if ok || !strings.Contains(l.Sorted()[0].Help, want) {
			rt.Fatalf("1:%g with %s: %v", n, f.Digits, l.Sorted())
		}
	})
}
