package shop

import (
	"math"
	"os"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"github.com/BurntSushi/toml"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"taperwright/profiles/geom"
)

// published is testdata/values/inserts.toml: entries with their sources;
// seen = false is from memory.
type published struct {
	Shape []struct {
		Letter   string
		Included float64 `toml:"included_deg"`
		Shape    string
		Seen     bool
		Check    string
		Note     string
	}
	Clearance []struct {
		Letter string
		Deg    *float64
		Seen   bool
	}
	Tolerance []struct {
		Letter string
		Seen   bool
	}
	Circle []struct {
		MM       float64
		Computed float64
		Inch     string
		Check    string
	} `toml:"inscribed_circle"`
	Edge []struct {
		Shape  string
		Values map[string]string
		Check  string
		Seen   bool
	} `toml:"edge_length_code"`
	Thickness []struct {
		Code string
		MM   float64
	}
	Nose []struct {
		ISO     string  `toml:"iso_code"`
		Nominal float64 `toml:"nominal_mm"`
		Real    float64 `toml:"real_mm"`
		ANSI    string  `toml:"ansi_code"`
		Check   string
	} `toml:"nose_radius"`
	InchExample []struct {
		ISO, ANSI string
		IC        string `toml:"ic_in"`
		Nose      string `toml:"nose_in"`
		Check     string
	} `toml:"inch_example"`
	Style []struct {
		Letter string
		Angle  float64 `toml:"cutting_edge_angle_deg"`
		Seen   bool
		Check  string
	} `toml:"holder_style"`
	Clamp  []struct{ Letter string } `toml:"holder_clamping"`
	Length []struct {
		Letter  string
		MM      float64
		Printed float64 `toml:"printed_mm"`
		Check   string
	} `toml:"holder_length"`
	Bar []struct{ Letters map[string]string } `toml:"holder_bar"`
	Tip []struct {
		Number int
		X      string `toml:"tip_x_from_centre"`
		Z      string `toml:"tip_z_from_centre"`
	} `toml:"tip_orientation"`
}

func values(t testing.TB) (p published) {
	t.Helper()
	b, err := os.ReadFile("../../testdata/values/inserts.toml")
	require.NoError(t, err)
	_, err = toml.Decode(string(b), &p)
	require.NoError(t, err)
	return p
}

// mark tells how our table marks a row.
func mark(seen bool) string {
	if seen {
		return "seen"
	}
	return "memory"
}

func last(kind, letter string) string {
	row := codeTable()[kind][letter]
	if row == nil {
		return ""
	}
	return row[len(row)-1]
}

func number1(t testing.TB, s string) float64 {
	t.Helper()
	x, err := strconv.ParseFloat(s, 64)
	require.NoError(t, err, s)
	return x
}

func TestPublishedLetters(t *testing.T) {
	p := values(t)
	require.Len(t, p.Shape, 18)
	for _, s := range p.Shape {
		if s.Check == "disagree" || strings.Contains(s.Note, "not in ISO 1832") {
			assert.False(t, known("shape", s.Letter), "%s is no letter of the standard", s.Letter)
			continue
		}
		assert.Equal(t, s.Included, number1(t, look("shape", s.Letter, 0)), s.Letter)
		assert.Equal(t, mark(s.Seen), last("shape", s.Letter), s.Letter)
	}
	require.Len(t, p.Clearance, 10)
	for _, c := range p.Clearance {
		if c.Deg != nil {
			assert.Equal(t, *c.Deg, number1(t, look("clearance", c.Letter, 0)), c.Letter)
		}
		assert.Equal(t, mark(c.Seen), last("clearance", c.Letter), c.Letter)
	}
	for _, c := range p.Tolerance {
		assert.Equal(t, mark(c.Seen), last("tolerance", c.Letter), c.Letter)
	}
	for _, c := range p.Thickness {
		assert.Equal(t, c.MM, number1(t, look("thickness", c.Code, 0)), c.Code)
	}
	require.Len(t, p.Style, 22)
	for _, s := range p.Style {
		if s.Check == "disagree" { // a maker's U of 95 deg: ISO 5608 has 93 (from memory)
			require.Equal(t, "U (as printed)", s.Letter)
			assert.Equal(t, 2.0, s.Angle-number1(t, look("style", "U", 0)))
			continue
		}
		assert.Equal(t, s.Angle, number1(t, look("style", s.Letter, 0)), s.Letter)
		assert.Equal(t, mark(s.Seen), last("style", s.Letter), s.Letter)
	}
	for _, c := range p.Clamp {
		assert.True(t, known("clamp", c.Letter), c.Letter)
	}
	for letter := range p.Bar[0].Letters {
		assert.True(t, known("bar", letter), letter)
	}
	require.Len(t, p.Length, 21)
	for _, l := range p.Length {
		ours := number1(t, look("length", l.Letter, 0))
		assert.Equal(t, l.MM, ours, l.Letter)
		if l.Check == "disagree" { // the page repeats its row above: G 80, W 400
			assert.NotEqual(t, l.Printed, ours, l.Letter)
			assert.Equal(t, "memory", last("length", l.Letter))
		} else {
			assert.Equal(t, l.Printed, ours, l.Letter)
		}
	}
	require.Len(t, p.Tip, 9)
	for _, n := range p.Tip {
		at := strconv.Itoa(n.Number)
		assert.Equal(t, strings.TrimSuffix(n.X, "X"), look("tip", at, 0), "tip %d x", n.Number)
		assert.Equal(t, strings.TrimSuffix(n.Z, "Z"), look("tip", at, 1), "tip %d z", n.Number)
	}
}

func TestPublishedCircles(t *testing.T) {
	p := values(t)
	require.Len(t, p.Circle, 10)
	require.Len(t, circles(), 10)
	for i, c := range p.Circle {
		require.Equal(t, "ok", c.Check)
		// the page prints four decimals; the fraction of an inch is exact
		a, b, ok := strings.Cut(strings.TrimSuffix(c.Inch, " in"), "/")
		exact := number1(t, a) * 25.4
		if ok {
			exact /= number1(t, b)
		}
		near(t, c.MM, circles()[i], 0.00005+1e-9, c.Inch)
		near(t, exact, circles()[i], 1e-9, c.Inch)
	}
}

// The size codes and lengths of edges: "12 (12.90)" for shape C at circle 12.7.
func TestPublishedEdges(t *testing.T) {
	p := values(t)
	require.Len(t, p.Edge, 6)
	form := regexp.MustCompile(`^(\d\d) \((\d+\.\d\d)\)$`)
	tried := 0
	for _, e := range p.Edge {
		require.Equal(t, "ok", e.Check)
		for circle, text := range e.Values {
			tried++
			ic := number1(t, strings.Replace(strings.TrimPrefix(circle, "ic_"), "_", ".", 1))
			m := form.FindStringSubmatch(text)
			require.Len(t, m, 3, text)
			in, err := InsertOf(e.Shape + "NMG" + m[1] + "0408")
			if e.Shape == "R" {
				in, err = InsertOf("RNMG" + m[1] + "0400")
			}
			require.NoError(t, err, "%s %s", e.Shape, text)
			near(t, ic, in.Circle, 1e-9, e.Shape, text)
			if e.Shape == "R" {
				near(t, number1(t, m[2]), in.Circle, 0.005+1e-9, e.Shape, text)
			} else {
				near(t, number1(t, m[2]), in.Edge, 0.005+1e-9, e.Shape, text)
			}
		}
	}
	require.Equal(t, 30, tried)
}

// The list computes a triangle's code from 10.998, 21.997 and 32.996 mm as 10,
// 21, 32. Inserts are sold as 11, 22, 33 (TCMT110204, TNMG220408: common
// practice): the length is rounded to 11.00, 22.00, 33.00 first.
func TestTriangleCodesAsSold(t *testing.T) {
	for code, circle := range map[string]float64{"11": 6.35, "16": 9.525, "22": 12.7, "27": 15.875, "33": 19.05} {
		in, err := InsertOf("TNMG" + code + "0408")
		require.NoError(t, err, code)
		near(t, circle, in.Circle, 1e-9, code)
		near(t, circle*1.7320508075688772, in.Edge, 1e-12, code)
	}
}

func TestPublishedNoses(t *testing.T) {
	p := values(t)
	require.Len(t, p.Nose, 8)
	for _, n := range p.Nose {
		in, err := InsertOf("CNMG1204" + n.ISO)
		require.NoError(t, err, n.ISO)
		near(t, n.Nominal, in.Nose, 1e-15, n.ISO)
		code := strings.Trim(n.ANSI, "()")
		inch, err := InsertOf("CNMG43" + code)
		require.NoError(t, err, n.ANSI)
		if code != "0" {
			// printed to 0.001; one page prints 0.008 in where the real radius is 1/128 in
			near(t, n.Real, inch.Nose, 0.0005+1e-9, n.ANSI)
			assert.Equal(t, "ok", n.Check)
		}
	}
}

func TestPublishedInchExamples(t *testing.T) {
	p := values(t)
	require.Len(t, p.InchExample, 2)
	over := func(s string) float64 {
		a, b, _ := strings.Cut(s, "/")
		return number1(t, a) / number1(t, b) * 25.4
	}
	for _, e := range p.InchExample {
		in, err := InsertOf(e.ANSI)
		require.NoError(t, err, e.ANSI)
		near(t, over(e.IC), in.Circle, 1e-12, e.ANSI)
		near(t, over(e.Nose), in.Nose, 1e-12, e.ANSI)
		assert.True(t, in.Inch)
		if e.Check == "ok" { // the same insert in both forms, but for the nominal nose: 0.8 and 1/32 in
			iso, err := InsertOf(e.ISO)
			require.NoError(t, err)
			near(t, iso.Circle, in.Circle, 1e-12)
			near(t, iso.Edge, in.Edge, 1e-12)
			near(t, 0.8-0.79375, iso.Nose-in.Nose, 1e-12)
		}
	}
}

func TestInserts(t *testing.T) {
	deg := math.Pi / 180
	for _, c := range []struct {
		code                 string
		included, edge, nose float64
		as                   string
	}{
		// 12.7/sin 80 = 12.7/0.984807753 = 12.895918; 12.7/sin 55 = 12.7/0.819152044 = 15.503837
		{"CNMG120408", 80, 12.895918, 0.8, "CNMG120408"},
		{"DNMG150404", 55, 15.503837, 0.4, "DNMG150404"},
		{"dnmg 15 06 08-XY3", 55, 15.503837, 0.8, "DNMG150608"},
		// 9.525/sin 35 = 9.525/0.573576436 = 16.606331
		{"VBMT160404", 35, 16.606331, 0.4, "VBMT160404"},
		// trigon 12.7: 12.7/2 (cot 40 + cot 80) = 6.35 (1.191753593 + 0.176326981) = 8.687312
		{"WNMG080408", 80, 8.687312, 0.8, "WNMG080408"},
		{"SNMG120412", 90, 12.7, 1.2, "SNMG120412"},
		{"CCMT09T304E", 80, 9.671938, 0.4, "CCMT09T304"}, // 9.525/0.984807753
		{"KNUX160405", 55, 0, 0.5, "KNUX160405"},         // a parallelogram: its code does not give both edges
		{"CCMT 32.51", 80, 9.671938, 0.396875, "CCMT32.51"},
		{"CNMG 432", 80, 12.895918, 0.79375, "CNMG432"},
		{"HNMG050408", 120, 5.499261, 0.8, "HNMG050408"}, // 9.525 tan 30 = 5.499261
	} {
		in, err := InsertOf(c.code)
		require.NoError(t, err, c.code)
		near(t, c.included*deg, in.Included, 1e-12, c.code)
		near(t, c.edge, in.Edge, 5e-7, c.code)
		near(t, c.nose, in.Nose, 1e-12, c.code)
		assert.Equal(t, c.as, in.Code)
	}
	for _, c := range []struct {
		code   string
		radius float64
	}{{"RCMT1204M0", 6}, {"RNMG120400", 6.35}, {"RCMT0602M0", 3}, {"RNMG 432", 6.35}} {
		in, err := InsertOf(c.code)
		require.NoError(t, err, c.code)
		assert.True(t, in.Round)
		near(t, c.radius, in.Nose, 1e-12, c.code)
	}
	for code, why := range map[string]string{
		"":             "four letters",
		"CNM":          "four letters",
		"C1MG120408":   "four letters",
		"XNMG120408":   "no shape has the letter X",
		"CXMG120408":   "no clearance has the letter X",
		"CNXG120408":   "no tolerance has the letter X",
		"CNMG1204":     "neither metric",
		"CNMG120808":   "no thickness has the code 08",
		"CNMG130408":   "no inscribed circle gives the size 13",
		"CNMG1204M0":   "M0 belongs to round inserts",
		"CNMG040204":   "fits two inscribed circles",
		"CNMG 132":     "neither metric",
		"CNMG 932":     "neither metric",
		"CNMG 437":     "no nose radius has the inch code 7",
		"KNUX 332":     "neither metric",
		"CNMG":         "neither metric",
		"CNMG12040808": "", // digits behind are read as the maker's own
	} {
		_, err := InsertOf(code)
		if why == "" {
			assert.NoError(t, err, code)
			continue
		}
		require.Error(t, err, code)
		assert.Contains(t, err.Error(), why, code)
	}
}

// An edge is where the inscribed circle is touched from: R cot(e/2) on each
// side of a corner; summed over the two corners of an edge this is a second
// way to every length.
func TestEdgesASecondWay(t *testing.T) {
	cot := func(d float64) float64 { return 1 / math.Tan(d*math.Pi/180) }
	for _, c := range []struct {
		rule          string
		corner, other float64
	}{{"rhombus", 80, 100}, {"rhombus", 55, 125}, {"rhombus", 35, 145}, {"rhombus", 75, 105}, {"rhombus", 86, 94},
		{"regular", 90, 90}, {"regular", 60, 60}, {"regular", 120, 120}, {"regular", 135, 135}, {"regular", 108, 108}, {"trigon", 80, 160}} {
		near(t, (cot(c.corner/2)+cot(c.other/2))/2, edge(c.rule, c.corner), 1e-12, c.rule, c.corner)
	}
	assert.Zero(t, edge("other", 55))
}

func TestHolders(t *testing.T) {
	for _, c := range []struct {
		code         string
		shape, style byte
		deg          float64
		hand         string
		shank, bar   float64
		length       float64
		size         int
		faces        bool
	}{
		{"PCLNR2525M12", 'C', 'L', 95, "right", 25, 0, 150, 12, false},
		{"PDJNL 2020 K15", 'D', 'J', 93, "left", 20, 0, 125, 15, false},
		{"MVVNN2525M16", 'V', 'V', 72.5, "neutral", 25, 0, 150, 16, false},
		{"PCKNR3225P16-X", 'C', 'K', 75, "right", 25, 0, 170, 16, true}, // faces
		{"PWLNR2525X08", 'W', 'L', 95, "right", 25, 0, 0, 8, false},     // X: special length
		{"PCLNR2525M", 'C', 'L', 95, "right", 25, 0, 150, 0, false},
		{"S25R-PCLNR12", 'C', 'L', 95, "right", 0, 25, 200, 12, false},
		{"a16r sdqcl07", 'D', 'Q', 107.5, "left", 0, 16, 200, 7, false},
		{"S12M-STFCR11", 'T', 'F', 90, "right", 0, 12, 150, 11, false}, // end style, along a bar's end
		{"S20S-SDJCR11", 'D', 'J', 93, "right", 0, 20, 250, 11, true},  // side style on a bar
	} {
		h, err := HolderOf(c.code)
		require.NoError(t, err, c.code)
		assert.Equal(t, []any{c.shape, c.style, c.hand, c.shank, c.bar, c.length, c.size, c.faces},
			[]any{h.Shape, h.Style, h.Hand, h.Shank, h.Bar, h.Length, h.EdgeCode, h.Faces}, c.code)
		near(t, c.deg, geom.Degrees(h.Angle), 1e-9, c.code)
	}
	for code, why := range map[string]string{
		"": "five letters", "PCLN": "five letters", "XCLNR2525M12": "no clamp", "PXLNR2525M12": "no insert shape", "PCXNR2525M12": "no style",
		"PCLXR2525M12": "no clearance", "PCLNX2525M12": "the hand is R, L or N", "PCLNR25": "shank height", "PCLNR2525I12": "shank height",
		"PCLNR2500M12": "0 mm wide", "PCLNR2525M1": "two digits", "S00R-PCLNR12": "a bar begins with", "S25PCLNR12": "",
	} {
		_, err := HolderOf(code)
		if why == "" {
			assert.Error(t, err, code)
			continue
		}
		require.Error(t, err, code)
		assert.Contains(t, err.Error(), why, code)
	}
}
