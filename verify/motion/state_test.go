package motion

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"taperwright/profiles/finding"
	"taperwright/profiles/shop"
)

// from is a place in a shop file, as assumed rows name it.
func from(line int) finding.Span {
	text := finding.NewText("shop.toml", []byte(strings.Repeat("\n", 20)))
	return text.Span(line-1, line-1)
}

// What the program never says is said as assumed, with the place in the shop
// file where it is given there.
func TestAssumed(t *testing.T) {
	for _, c := range []struct {
		name, column string
		set          []func(*shop.Machine)
		program      string
		want         []string
	}{
		{name: "nothing said", program: "T0101\nS100 M3\nG0 X10. Z5\nG1 U1. W-1. F.1\nG28\nM30", want: []string{
			"assumed tool words: the last 2 digits are the offset (default)",
			"assumed tool offsets: each puts its tip where the program means it (default)",
			"assumed speed mode: rev/min (default)",
			"assumed work frame: the one in force when the program starts (default)",
			"assumed unit: mm (default)",
			"assumed X words: diameters (default)",
			"assumed numbers without a decimal point: whole units (default)",
			"assumed feed mode: per revolution (default)",
			"assumed X increments: on diameter (default)",
			"assumed reference return without axis words: both axes go (default)",
		}},
		{name: "all said", program: "G21 G99 G97\nT0101\nS100 M3\nG54 G0 X10. Z5.\nG1 Z-1. F.1\nM30", want: []string{
			"assumed tool words: the last 2 digits are the offset (default)",
			"assumed tool offsets: each puts its tip where the program means it (default)",
			"assumed X words: diameters (default)",
		}},
		{name: "from the shop file", column: "g77-turns", set: []func(*shop.Machine){
			func(m *shop.Machine) {
				m.Unit = shop.Setting[shop.Unit]{Value: shop.Inch, Given: true, From: from(3)}
				m.XIsDiameter = shop.Setting[bool]{Given: true, From: from(4)}
				m.Feed = shop.Setting[shop.Purpose]{Value: shop.FeedPerMinute, Given: true, From: from(5)}
			}}, program: "G54 G0 X1. Z.5\nG1 Z0 F2\nM30", want: []string{
			"assumed distance mode: absolute (default)",
			"assumed unit: inch (shop.toml:3)",
			"assumed X words: radii (shop.toml:4)",
			"assumed feed mode: per minute (shop.toml:5)",
		}},
		{name: "a zero has no unit", program: "G54 G0 X0 Z0\nM30", want: nil},
		{name: "block delete", set: []func(*shop.Machine){assume("slash", "skip")}, program: "/G0 X5.\nM30", want: []string{"assumed block delete: blocks with / are skipped (default)"}},
		{name: "frame named late", program: "G21 G0 X0 Z5.\nG54 G0 Z6.\nM30", want: []string{
			"assumed work frame: the one in force when the program starts (default)",
			"assumed work frame before it is named: G54 (default)",
		}},
	} {
		t.Run(c.name, func(t *testing.T) {
			if c.column == "" {
				c.column = "g90-turns"
			}
			trace, found := run(t, lathe(t, c.column, c.set...), c.program+"\n")
			assert.Empty(t, found)
			var got []string
			for line := range strings.Lines(trace.String()) {
				if strings.HasPrefix(line, "assumed") {
					got = append(got, strings.TrimSuffix(line, "\n"))
				}
			}
			assert.Equal(t, c.want, got)
		})
	}
}

// state lists what each cut finds: feed and spindle.
func state(trace *Trace) []string {
	var out []string
	for i := range trace.Motions {
		if m := &trace.Motions[i]; m.Kind == Cut {
			s := m.String()
			out = append(out, s[strings.Index(s, ", tool ")+len(", tool "):])
		}
	}
	return out
}

func TestFeedAndSpeed(t *testing.T) {
	for _, c := range []struct {
		name, column string
		set          []func(*shop.Machine)
		body         string
		want         []string
		found        []string
	}{
		{name: "modal", body: "G1 Z0 F.2\nX50. S500\nZ-5. F.1", want: []string{"0, 0.2 mm/rev, M4 1000 rev/min", "0, 0.2 mm/rev, M4 500 rev/min", "0, 0.1 mm/rev, M4 500 rev/min"}},
		{name: "per minute", body: "G98 G1 Z0 F80", want: []string{"0, 80 mm/min, M4 1000 rev/min"}},
		{name: "other words for it", column: "g77-turns", body: "G94 G1 Z0 F80", want: []string{"0, 80 mm/min, M4 1000 rev/min"}},
		// 0.01 in = 0.254 mm; 300 ft/min = 91.44 m/min
		{name: "inch", body: "G20 G96 S300\nG1 Z0 F.01", want: []string{"0, 0.254 mm/rev, M4 91.44 m/min"}, found: []string{"unit-change 2:1"}},
		{name: "cap", body: "G50 S2000\nG96 S180 M3\nG1 Z0 F.2\nG50 S1500\nX50.", want: []string{"0, 0.2 mm/rev, M3 180 m/min cap 2000", "0, 0.2 mm/rev, M3 180 m/min cap 1500"}},
		{name: "cap by G92", column: "g77-turns", body: "G92 S2000\nG96 S180 M3\nG1 Z0 F.2", want: []string{"0, 0.2 mm/rev, M3 180 m/min cap 2000"}},
		{name: "speed lost with the mode", body: "G96\nG1 Z0 F.2\nG97 S800\nX50.", want: []string{"0, 0.2 mm/rev, M4 no speed", "0, 0.2 mm/rev, M4 800 rev/min"}},
		{name: "mode said again", body: "G97\nG1 Z0 F.2", want: []string{"0, 0.2 mm/rev, M4 1000 rev/min"}},
		{name: "spindle stops", body: "M5\nG1 Z0 F.2\nM3 X50.", want: []string{"0, 0.2 mm/rev, spindle still", "0, 0.2 mm/rev, M3 1000 rev/min"}},
		{name: "stop behind the motion", body: "G1 Z0 F.2 M5\nX50.", want: []string{"0, 0.2 mm/rev, M4 1000 rev/min", "0, 0.2 mm/rev, spindle still"}},
		{name: "stop before the motion", set: []func(*shop.Machine){func(m *shop.Machine) { m.StopsAfter = shop.Setting[bool]{Given: true} }},
			body: "G1 Z0 F.2 M5\nX50.", want: []string{"0, 0.2 mm/rev, spindle still", "0, 0.2 mm/rev, spindle still"}},
		// the feed word counts what the block's own mode says: NISTIR 6556 table 8
		{name: "F before its mode in the block", body: "F80 G98 G1 Z0", want: []string{"0, 80 mm/min, M4 1000 rev/min"}},
		{name: "S before its mode in the block", body: "S180 G96 G1 Z0 F.2", want: []string{"0, 0.2 mm/rev, M4 180 m/min"}},
		// F200 counts 0.001 mm per revolution, but whole mm per minute
		{name: "missing point", set: []func(*shop.Machine){assume("missing_point", "increment")}, body: "G1 Z0 F200\nG98 Z-1. F200",
			want: []string{"0, 0.2 mm/rev, M4 1000 rev/min", "0, 200 mm/min, M4 1000 rev/min"}},
		{name: "tool", body: "T0202 G1 Z0 F.2\nT101 Z-1.", want: []string{"1, 0.2 mm/rev, M4 1000 rev/min", "0, 0.2 mm/rev, M4 1000 rev/min"}},
	} {
		t.Run(c.name, func(t *testing.T) {
			start := head
			if c.column == "" {
				c.column = "g90-turns"
			} else {
				start = "G54 T0101 G97 S1000 M4 G0 X40. Z2.\n"
			}
			trace, found := run(t, lathe(t, c.column, c.set...), start+c.body+"\nM30\n")
			assert.Equal(t, c.found, codes(found), "%v", found)
			assert.Equal(t, c.want, state(trace))
		})
	}
}

// X42000 is 42 mm on diameter where numbers without a point count 0.001 mm,
// and 4.2 in (106.68 mm, 53.34 on radius) where they count 0.0001 in.
func TestMissingPoint(t *testing.T) {
	counts := assume("missing_point", "increment")
	trace, found := run(t, lathe(t, "g90-turns", counts), "G21 G99 G54 T0101\nG97 S600 M03\nG00 X42000 Z2000\nG01 Z-20000 F200\nX44.\nM30\n")
	assert.Empty(t, found)
	assert.Equal(t, []string{"jump to z2 r21", "cut z2 r21 to z-20 r21", "cut z-20 r21 to z-20 r22"}, moves(trace))
	trace, _ = run(t, lathe(t, "g90-turns", counts), "G20 G99 G54 T0101\nG00 X42000 Z10000\nM30\n")
	assert.Equal(t, []string{"jump to z25.4 r53.34"}, moves(trace))
}

func TestTools(t *testing.T) {
	for _, c := range []struct {
		name, program string
		set           []func(*shop.Machine)
		want          []string // tools, then the tool of each cut
		cuts          []int
		found         []string
	}{
		{name: "four digits", program: "T0202 G0 X1. Z1.\nG1 Z0 F.1", want: []string{"2/2 T2"}, cuts: []int{0}},
		{name: "three digits", program: "T202 G0 X1. Z1.\nG1 Z0 F.1", want: []string{"2/2 T2"}, cuts: []int{0}},
		{name: "not in the shop", program: "T0909 G0 X1. Z1.\nG1 Z0 F.1", want: []string{"9/9 -"}, cuts: []int{0}},
		{name: "other offset", program: "T0209 G0 X1. Z1.\nG1 Z0 F.1", want: []string{"2/9 -"}, cuts: []int{0}},
		{name: "station and change word", program: "T2 M6 G0 X1. Z1.\nG1 Z0 F.1", want: []string{"2/2 T2"}, cuts: []int{0}},
		{name: "change word first", program: "M06 T0202\nG0 X1. Z1.\nG1 Z0 F.1", want: []string{"2/2 T2"}, cuts: []int{0}},
		{name: "station, change word later", program: "T0101\nG0 X1. Z1.\nT2\nG1 Z0 F.1\nM6\nZ-1.", want: []string{"1/1 T1", "2/2 T2"}, cuts: []int{0, 1}},
		{name: "station never changed to", program: "T2\nG0 X1. Z1.\nG1 Z0 F.1", found: []string{"tool-word 2:1"}},
		{name: "cancelled", program: "T0202\nG0 X1. Z1.\nG1 Z0 F.1\nT0200", want: []string{"2/2 T2", "2/0 T2"}, cuts: []int{0}},
		{name: "T0", program: "T0202\nG0 X1. Z1.\nG1 Z0 F.1\nT0", want: []string{"2/2 T2"}, cuts: []int{0}},
		{name: "T0000 at the head", program: "T0000\nT0202\nG0 X1. Z1.\nG1 Z0 F.1", want: []string{"2/2 T2"}, cuts: []int{0}},
		{name: "called again", program: "T0202\nG0 X1. Z1.\nT0101\nT0202\nG1 Z0 F.1", want: []string{"2/2 T2", "1/1 T1"}, cuts: []int{0}},
		{name: "station alone by setting", set: []func(*shop.Machine){func(m *shop.Machine) { m.OffsetDigits = shop.Setting[int]{Given: true} }},
			program: "T2 M6\nG0 X1. Z1.\nG1 Z0 F.1", want: []string{"2/2 T2"}, cuts: []int{0}},
		{name: "no tool", program: "G0 X1. Z1.\nG1 Z0 F.1", cuts: []int{-1}},
	} {
		t.Run(c.name, func(t *testing.T) {
			trace, found := run(t, lathe(t, "g90-turns", c.set...), "G21 G99 G54\n"+c.program+"\nM30\n")
			assert.Equal(t, c.found, codes(found), "%v", found)
			var tools []string
			for _, u := range trace.Tools {
				name := "-"
				if u.Tool != nil {
					name = u.Tool.Name
				}
				tools = append(tools, fmt.Sprintf("%d/%d %s", u.Station, u.Offset, name))
			}
			assert.Equal(t, c.want, tools)
			var cuts []int
			for _, m := range trace.Motions {
				if m.Kind == Cut {
					cuts = append(cuts, m.Tool)
				}
			}
			assert.Equal(t, c.cuts, cuts)
		})
	}
}

// Two offsets for one station: the station alone does not say which.
func TestStationWithTwoOffsets(t *testing.T) {
	s := lathe(t, "g90-turns")
	s.Tools = append(s.Tools, shop.Tool{Name: "T1b", Station: 1, Offset: 11})
	_, found := run(t, s, "T1 M6\nM30\n")
	assert.Equal(t, []string{"tool-word 1:1"}, codes(found))
	trace, found := run(t, s, "T0111\nM30\n")
	assert.Empty(t, found)
	assert.Equal(t, "T1b", trace.Tools[0].Tool.Name)
}

// A wear of 0.02 on radius and -0.1 in Z moves all that the tool does.
func TestWear(t *testing.T) {
	s := lathe(t, "g90-turns")
	s.Tools[1].Wear = shop.Setting[shop.Place]{Value: shop.Place{Z: -0.1, R: 0.02}, Given: true}
	trace, found := run(t, s, "G21 G99 G54 T0101 G0 X40. Z2.\nG1 Z0 F.1\nT0202\nX42. Z1.\nW-3.\nM30\n")
	assert.Empty(t, found)
	assert.Equal(t, []string{"jump to z2 r20", "cut z2 r20 to z0 r20", "cut z0 r20 to z0.9 r21.02", "cut z0.9 r21.02 to z-2.1 r21.02"}, moves(trace))
}

// The old way: the first preset is the frame.
func TestFirstPreset(t *testing.T) {
	for name, c := range map[string]struct {
		program string
		want    []string
		found   []string
	}{
		"at the head":                     {"G21 G99 T0100\nG50 X200. Z150.\nG0 X40. Z2.\nG1 Z0 F.1", []string{"rapid z150 r100 to z2 r20", "cut z2 r20 to z0 r20"}, nil},
		"behind the reference return":     {"G21 G99\nG28 U0 W0\nG50 X200. Z150.\nT0101\nG0 X40. Z2.", []string{"jump to z0 r0", "jump to z150 r100", "rapid z150 r100 to z2 r20"}, nil},
		"in Z only":                       {"G21 G99\nG50 Z150.\nG0 X40. Z2.\nZ5.", []string{"jump to z2 r20", "rapid z2 r20 to z5 r20"}, nil},
		"work offset behind it":           {"G21\nG50 X200. Z150.\nG54", nil, []string{"frame-unknown 3:1"}},
		"with increments":                 {"G21\nG50 U2.", nil, []string{"frame-unknown 2:5"}},
		"behind another work offset":      {"G21\nG55\nG50 X2.", nil, []string{"frame-unknown 3:1"}},
		"work offset not G54, named late": {"G21 G0 X0 Z5.\nG55 Z6.", []string{"jump to z5 r0"}, []string{"frame-unknown 2:1"}},
		"work offset not G54, at once":    {"G21 G55 G0 X0 Z5.\nZ6.", []string{"jump to z5 r0", "rapid z5 r0 to z6 r0"}, nil},
	} {
		t.Run(name, func(t *testing.T) {
			trace, found := run(t, lathe(t, "g90-turns"), c.program+"\nM30\n")
			assert.Equal(t, c.found, codes(found))
			assert.Equal(t, c.want, moves(trace))
		})
	}
}

func TestDwells(t *testing.T) {
	for program, want := range map[string]float64{"G4 P500": 0.5, "G4 P3.": 3, "G4 X2.": 2, "G4 U1.5": 1.5, "G4 X2": 2, "G4": 0} {
		trace, found := run(t, lathe(t, "g90-turns"), program+"\nM30\n")
		assert.Empty(t, found)
		assert.Equal(t, want, trace.Totals(0, nil).Dwell, program)
	}
	trace, _ := run(t, lathe(t, "g90-turns", assume("dwell_p", "s")), "G4 P2\nM30\n")
	assert.Equal(t, 2.0, trace.Totals(0, nil).Dwell)
	trace, _ = run(t, lathe(t, "g90-turns", assume("missing_point", "increment")), "G4 X500\nM30\n")
	assert.Equal(t, 0.5, trace.Totals(0, nil).Dwell)
}

func TestEnds(t *testing.T) {
	for name, c := range map[string]struct {
		program string
		ended   bool
		blocks  int
		found   []string
	}{
		"M30":                       {"G0 X1.\nM30\n", true, 2, nil},
		"M02":                       {"M02", true, 1, nil},
		"with a motion":             {"G54 G0 X1. M30", true, 1, nil},
		"M99":                       {"G0 X1.\nM99\n", true, 2, []string{"program-repeats 2:1"}},
		"M99 with P":                {"M99 P10\n", false, 1, []string{"unknown-word 1:5"}},
		"cut short":                 {"G0 X1.\nG0 X", false, 2, []string{"bad-number 2:4"}},
		"cut short between blocks":  {"G0 X1.\n", false, 1, []string{"no-end-word 1:1"}},
		"between marks":             {"%\nG0 X1.\n%\n", false, 1, []string{"no-end-word 2:1"}},
		"behind the end":            {"M30\nG0 X1.\nG0 X2.", true, 1, []string{"never-reached 2:1"}},
		"subprograms behind it":     {"M30\nO200\nG0 X1.\nM99\n", true, 1, nil},
		"end in a block with slash": {"/M30\nM30", true, 1, []string{"never-reached 2:1"}},
		"empty":                     {"", false, 0, []string{"empty-program 1:1"}},
		"binary":                    {"\x00\x01", false, 0, []string{"not-text 1:1"}},
		"axis words and no motion":  {"T0101\nX20. Z2.", false, 2, []string{"no-motion-word 2:1"}},
	} {
		t.Run(name, func(t *testing.T) {
			trace, found := run(t, lathe(t, "g90-turns"), c.program)
			assert.Equal(t, c.ended, trace.Ended)
			assert.Len(t, trace.Blocks, c.blocks)
			assert.Equal(t, c.found, codes(found), "%v", found)
		})
	}
}
