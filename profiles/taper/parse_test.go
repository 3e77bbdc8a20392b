package taper

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"taperwright/profiles/finding"
	"taperwright/profiles/geom"
)

func TestParseRatio(t *testing.T) {
	for text, want := range map[string]struct {
		slope, lo, hi float64
		prints        string
	}{
		"1:10":       {1.0 / 20, 1.0 / 20, 1.0 / 20, "1:10"},
		" 1 : 10 ":   {1.0 / 20, 1.0 / 20, 1.0 / 20, "1:10"},
		"7:24":       {7.0 / 48, 7.0 / 48, 7.0 / 48, "7:24"},
		"7/24":       {7.0 / 48, 7.0 / 48, 7.0 / 48, "7:24"},
		"1:19.922":   {1 / 39.844, 1 / 39.845, 1 / 39.843, "1:19.922"}, // n between 19.9215 and 19.9225
		"1:20.0":     {1.0 / 40, 1 / 40.1, 1 / 39.9, "1:20.0"},
		"0.5:5":      {1.0 / 20, 0.45 / 10, 0.55 / 10, "0.5:5"},
		"01:0010.50": {1.0 / 21, 1 / 21.01, 1 / 20.99, "1:10.50"},
		"1:.5":       {1, 1 / 1.1, 1 / 0.9, "1:0.5"},
	} {
		r, err := ParseRatio(text)
		require.NoError(t, err, text)
		near(t, want.slope, float64(r.Slope()), 1e-15, text)
		near(t, want.lo, r.reach().lo, 1e-14, text)
		near(t, want.hi, r.reach().hi, 1e-14, text)
		assert.Equal(t, want.prints, r.String())
	}
	r, err := ParseRatio("1:0.1") // between 1:0.05 and 1:0.15
	require.NoError(t, err)
	near(t, 10, r.reach().hi, 1e-12)
	r, err = ParseRatio("1:0.0000001")
	require.NoError(t, err)
	assert.False(t, math.IsNaN(r.reach().lo))
}

func TestBadRatio(t *testing.T) {
	for text, want := range map[string]Malformed{
		"":                      {From: 0, To: 0, Message: "rise on diameter: a number is wanted, here the text stops"},
		"1":                     {From: 1, To: 1, Message: "between rise and run stands ':' or '/', here the text stops"},
		"1:":                    {From: 2, To: 2, Message: "run along the axis: a number is wanted, here the text stops"},
		"1:1x":                  {From: 3, To: 4, Message: "behind the run here stands 'x'"},
		"1∶10":                  {From: 1, To: 4, Message: "between rise and run stands ':' or '/', here stands '∶'"},
		"1:19,922":              {From: 4, To: 5, Message: "run along the axis: the decimal sign is a point"},
		"-1:10":                 {From: 0, To: 1, Message: "rise on diameter: a number is wanted, here stands '-'"},
		"1:1e3":                 {From: 3, To: 4, Message: "behind the run here stands 'e'"},
		"1:1.2.3":               {From: 5, To: 6, Message: "behind the run here stands '.'"},
		"1:.":                   {From: 2, To: 3, Message: "run along the axis: a number is wanted, here stands '.'"},
		"0:10":                  {From: 0, To: 1, Message: "a rise of 0 is no taper"},
		"1:0.0":                 {From: 2, To: 5, Message: "a run of 0 is a face, not a taper"},
		"1:1234567890123456.5":  {From: 2, To: 20, Message: "run along the axis: more than 15 digits"},
		"0.00000000000000001:1": {From: 0, To: 19, Message: "rise on diameter: more than 15 digits"},
	} {
		_, err := ParseRatio(text)
		var m *Malformed
		require.ErrorAs(t, err, &m, text)
		want.Help = ratioHelp
		assert.Equal(t, want, *m, text)
	}
}

func TestParseAngle(t *testing.T) {
	for text, want := range map[string]struct {
		degrees, half float64
		prints        string
	}{
		"1.4377":         {1.4377, 0.00005, "1.4377"},
		"1.4377°":        {1.4377, 0.00005, "1.4377°"},
		"30":             {30, 0.5, "30"},
		".5":             {0.5, 0.05, "0.5"},
		`1°26'16"`:       {1 + 26.0/60 + 16.0/3600, 0.5 / 3600, `1°26'16"`},
		`1° 26' 16"`:     {1 + 26.0/60 + 16.0/3600, 0.5 / 3600, `1°26'16"`},
		`1°26'15.8"`:     {1 + 26.0/60 + 15.8/3600, 0.05 / 3600, `1°26'15.8"`},
		"1°26'":          {1 + 26.0/60, 0.5 / 60, "1°26'"},
		"1°26.25'":       {1 + 26.25/60, 0.005 / 60, "1°26.25'"},
		`01°06'06"`:      {1 + 6.0/60 + 6.0/3600, 0.5 / 3600, `1°6'6"`},
		`89°59'59.9999"`: {90 - 0.0001/3600, 0.00005 / 3600, `89°59'59.9999"`},
	} {
		a, err := ParseAngle(text)
		require.NoError(t, err, text)
		near(t, want.degrees, a.Degrees(), 1e-13, text)
		near(t, want.half, a.half(), 1e-15, text)
		assert.Equal(t, want.prints, a.String())
	}
}

func TestBadAngle(t *testing.T) {
	for text, want := range map[string]Malformed{
		"":             {From: 0, To: 0, Message: "degrees: a number is wanted, here the text stops"},
		"1,4":          {From: 1, To: 2, Message: "degrees: the decimal sign is a point"},
		"1 26 16":      {From: 2, To: 3, Message: "behind the degrees here stands '2'"},
		"1°26":         {From: 5, To: 5, Message: "minutes end with ', here the text stops"},
		"1°26′16″":     {From: 5, To: 8, Message: "minutes end with ', here stands '′'"},
		"1°26'16":      {From: 8, To: 8, Message: "seconds end with \", here the text stops"},
		"1°26'16\"x":   {From: 9, To: 10, Message: "behind the seconds here stands 'x'"},
		"1°60'":        {From: 3, To: 5, Message: "minutes are below 60"},
		"1°0'60\"":     {From: 5, To: 7, Message: "seconds are below 60"},
		"1.5°26'":      {From: 0, To: 3, Message: "only the last part has a decimal point"},
		"1°2.5'3\"":    {From: 3, To: 6, Message: "only the last part has a decimal point"},
		"1deg":         {From: 1, To: 2, Message: "behind the degrees here stands 'd'"},
		"-1":           {From: 0, To: 1, Message: "degrees: a number is wanted, here stands '-'"},
		"1º26'":        {From: 1, To: 3, Message: "behind the degrees here stands 'º'"}, // an ordinal sign, not a degree
		"1°x":          {From: 3, To: 4, Message: "minutes: a number is wanted, here stands 'x'"},
		"1°26'16\"°":   {From: 9, To: 11, Message: "behind the seconds here stands '°'"},
		"26'16\"":      {From: 2, To: 3, Message: "behind the degrees here stands '\\''"},
		"1°26'16.5.\"": {From: 10, To: 11, Message: "seconds end with \", here stands '.'"},
	} {
		_, err := ParseAngle(text)
		var m *Malformed
		require.ErrorAs(t, err, &m, text)
		want.Help = angleHelp
		assert.Equal(t, want, *m, text)
	}
}

func TestDegMinSec(t *testing.T) {
	for _, c := range []struct {
		deg      float64
		decimals int
		want     string
	}{
		{5.72481045, 4, `5°43'29.3176"`}, // 1:10, ISO 1119
		{5.72481045, 1, `5°43'29.3"`},
		{5.72481045, 0, `5°43'29"`},
		{0, 1, `0°00'00.0"`},
		{59.99999, 1, `60°00'00.0"`}, // 59°59'59.964": the carry goes all the way
		{-1.5, 0, `-1°30'00"`},
		{-0.000001, 1, `0°00'00.0"`},
		{1.0 / 60, 0, `0°01'00"`},
	} {
		assert.Equal(t, c.want, DegMinSec(geom.Radians(c.deg), c.decimals))
	}
}

func TestHalfUnit(t *testing.T) {
	for digits, want := range map[string]float64{"10": 0.5, "1.5": 0.05, "0.60235": 0.000005, "1e1": 5, "1.25e-3": 0.000005, "1_000.0": 0.05, "+2.50": 0.005} {
		near(t, want, halfUnit(digits), 1e-18, digits)
	}
	assert.Zero(t, halfUnit("1e999999999999"))
}

func TestNamed(t *testing.T) {
	for name, want := range map[string]string{
		"morse 3": "Morse 3", "MORSE 3": "Morse 3", "Morse No. 3": "Morse 3", "morse no 3": "Morse 3", "morse #3": "Morse 3", "Morse taper 3": "Morse 3",
		"MT3": "Morse 3", "mt 3": "Morse 3", "morse3": "Morse 3", " morse   3 ": "Morse 3", "morse-3": "Morse 3",
		"morse 4-1/2": "Morse 4-1/2", "morse 4 1/2": "Morse 4-1/2", "Morse 4½": "Morse 4-1/2", "morse 4.5": "Morse 4-1/2",
		"metric 80": "Metric 1:20 80", "metric 1:20 80": "Metric 1:20 80", "Metric 1 : 20 No. 80": "Metric 1:20 80", "metric 1:20": "Metric 1:20", "metric80": "Metric 1:20 80",
		"7:24": "7:24", "7/24": "7:24", "7:24 40": "7:24 No. 40", "7:24 No. 40": "7:24 No. 40", "7/24 no.40": "7:24 No. 40",
		"1:10": "1:10", "ISO 1119 1:10": "1:10", "60 deg": "60 deg", "60°": "60 deg", "60 degrees": "60 deg",
		"": "", "morse": "", "morse 8": "", "metric": "", "iso": "", "3": "", "1:11": "",
	} {
		s, ok := Named(name)
		if assert.Equal(t, want != "", ok, name) && ok {
			assert.Equal(t, want, s.Name, name)
		}
	}
	seen := map[string]string{}
	for _, s := range All() {
		got, ok := Named(s.Name)
		require.True(t, ok, s.Name)
		require.Same(t, s, got, "%s and %s read the same", s.Name, seen[folded(s.Name)])
		seen[folded(s.Name)] = s.Name
		require.Greater(t, float64(s.Slope), 0.0)
		require.NotEmpty(t, s.Source)
		require.Contains(t, []string{"Morse", "Metric 1:20", "7:24", "ISO 1119"}, s.Family)
	}
	require.Len(t, seen, 9+8+8+21)
}

func TestNearest(t *testing.T) {
	names := func(s Slope, n int) (out []string) {
		for _, m := range Nearest(s, n) {
			out = append(out, m.Series.Name)
		}
		return out
	}
	// half angles: Morse 3 1.437701, 1:20 1.432096, Morse 2 1.430666 deg
	assert.Equal(t, []string{"Morse 3", "Metric 1:20", "1:20", "Morse 2"}, names(FromRatio(1, 19.922), 4))
	assert.Equal(t, []string{"7:24"}, names(FromRatio(7, 24), 1))
	assert.Equal(t, []string{"Metric 1:20", "1:20"}, names(FromRatio(1, 20), 2))
	m := Nearest(FromRatio(1, 19.922), 2)
	near(t, 1.437701-1.432096, geom.Degrees(m[1].Difference), 1.1e-6)
	assert.Len(t, Nearest(1, 1000), 46-7-7) // sizes of one rate count once
}

func FuzzParseRatio(f *testing.F) {
	for _, s := range []string{"1:10", "7/24", "1:19.922", " 1 : 0.50", "1:", "", "1:1\xff"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		r, err := ParseRatio(s)
		if err != nil {
			m := err.(*Malformed)
			if m.From < 0 || m.To < m.From || m.To > len(s) {
				t.Fatalf("%q: place [%d,%d)", s, m.From, m.To)
			}
			return
		}
		again, err := ParseRatio(r.String())
		if err != nil || again != r || again.String() != r.String() {
			t.Fatalf("%q prints as %q, read as %v, %v", s, r, again, err)
		}
		if x := r.reach(); !(x.at > 0) || !(x.lo <= x.at && x.at <= x.hi) || float64(r.Slope()) != x.at {
			t.Fatalf("%q: %v", s, x)
		}
	})
}

func FuzzParseAngle(f *testing.F) {
	for _, s := range []string{"1.4377", `1°26'16"`, "1°26.5'", "1°", `0°00'00.000"`, "1 26", "1°26′"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		a, err := ParseAngle(s)
		if err != nil {
			m := err.(*Malformed)
			if m.From < 0 || m.To < m.From || m.To > len(s) {
				t.Fatalf("%q: place [%d,%d)", s, m.From, m.To)
			}
			return
		}
		again, err := ParseAngle(a.String())
		if err != nil || again.String() != a.String() || again.Degrees() != a.Degrees() || again.half() != a.half() {
			t.Fatalf("%q prints as %q, read as %v, %v", s, a, again, err)
		}
		// our own d-m-s of it is read back to within half its last digit
		if d := a.Degrees(); d < 180 {
			back, err := ParseAngle(DegMinSec(geom.Radians(d), 4))
			if err != nil || !(math.Abs(back.Degrees()-d) <= 0.0000501/3600) {
				t.Fatalf("%q: %v comes back as %v, %v", s, d, back, err)
			}
		}
	})
}

// Whatever is said, Solve ends, without a panic, and a cone it returns is one;
// a refusal always has a finding inside the text.
func FuzzSolve(f *testing.F) {
	f.Add("1:10", "morse 3", 45.0, 38.0, 70.0, 44.0, 60.0, 2.86, uint16(0x3ff))
	f.Add("7/24", "", 1e-300, 1e300, 5e-324, -1.0, -60.0, 180.0, uint16(0x155))
	f.Fuzz(func(t *testing.T, ratio, name string, large, small, length, gauge, at, angle float64, which uint16) {
		text := finding.NewText("f", []byte(ratio+name))
		all := []Fact{
			{Kind: Ratio, Text: ratio, Span: text.Span(0, len(ratio))}, {Kind: RateOf, Text: name, Span: text.Span(len(ratio), len(ratio)+len(name))},
			{Kind: Large, Value: large}, {Kind: Small, Value: small}, {Kind: Length, Value: length}, {Kind: Gauge, Value: gauge, At: at, From: End(which >> 10 & 1)},
			{Kind: HalfAngle, Value: angle, Digits: "1.00"}, {Kind: IncludedAngle, Text: ratio}, {Kind: PerFoot, Value: angle, Digits: "1.0"}, {Kind: PerInch, Value: angle, Digits: "1.0"},
		}
		var facts []Fact
		for i := range all {
			if which>>i&1 == 1 {
				facts = append(facts, all[i])
			}
		}
		var l finding.List
		c, ok := Solve(facts, Ask{Inch: which>>11&1 == 1, Whole: which>>12&1 == 1, Span: text.Span(0, 0)}, &l)
		if ok == l.HasErrors() {
			t.Fatalf("%v with %v", ok, l.Sorted())
		}
		for _, x := range l.Sorted() {
			if x.Message == "" || x.Help == "" {
				t.Fatalf("%+v", x)
			}
			if x.Span.Valid() && (x.Span.Start < 0 || x.Span.End < x.Span.Start || x.Span.End > len(text.Bytes)) {
				t.Fatalf("%+v", x.Span)
			}
		}
		if ok && !(c.Slope > 0) {
			t.Fatalf("%+v", c)
		}
		if ok && c.Knows(Large) && c.Knows(Small) && c.Knows(Length) && !(c.Large >= c.Small && c.Length > 0 && c.Small > -1e-7) {
			t.Fatalf("%+v", c)
		}
	})
}
