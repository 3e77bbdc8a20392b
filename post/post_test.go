package post

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"taperwright/profiles/finding"
	"taperwright/profiles/geom"
	"taperwright/profiles/shop"
	"taperwright/toolpath"
)

// The whole program of the plan by hand, mm, diameter, I K. Figures by hand:
// X 2*9.8610 = 19.722, 2*11.4805 = 22.961, 2*13.4805 = 26.961; the arc begins
// at z -30.390 r 11.4805 and its centre lies 2 above: I2.000 K0.000.
func TestWholeProgram(t *testing.T) {
	p, found := written(t, lathe(t, "g90-turns"))
	require.Empty(t, found)
	assert.Equal(t, `%
(part: Valve spindle)
(drawing: WW-0300)
(digest of the values read: 00ff)
(set-up: first end, 1 of 1)
(material: steel)
(stock: diameter 30.000 mm, length 120.000 mm, on the)
(  front face 1.000 mm)
(Z0: finished front face, Z rises away from the chuck)
(words: X is a diameter, lengths in mm, I K R as radii in)
(  mm, speed in m/min, feed per revolution)
(tool: station 3, offset 13, nose radius 0.400 mm,)
(  programmed point: X- Z- of the nose: finish)
(hold: chuck on stock, grip 30.000 mm)
(nose: compensated in the path, no control compensation)
(change point: X 200.000 mm, Z 150.000 mm)
(cuts: up to X 34.000 mm, down to Z -32.390 mm)
(not cut here: thread M8 ?6g? on back)
(note: made by hand, for a test)
(rounding: seat cone: half angle 0.00 sec, words can make)
(  3.50 sec, diameter at the gauge plane 0.00000 mm)
(coolant: no word is posted: switch it by hand)
(caution: look twice)
(caution: this plan is arithmetic, not permission: the)
(  person at the machine decides)
(caution: the manual of the machine and local rules come)
(  first)
(caution: guards and doors shut, chuck key out, no)
(  gloves, rags, rings, loose sleeves)
(caution: hold to the lowest speed that chuck, work and)
(  balance allow, set at the machine too)
(caution: bar behind the spindle: cut short, or supported)
(  over its full length)
(caution: turn by hand first: grip, jaws, turret and)
(  centre clear of each other)
(caution: first run without work, rapids low, then single)
(  block, first cut above size)
(caution: enter at the top of a tool block only, with the)
(  tool clear of the work)
(caution: no emery by hand, stop the spindle to measure)
(  and to clear chips, with a brush)
(digest of the blocks below: DIGEST)
(tool 3, finish: 180 m/min, at most 2500 rev/min)
N10 G21 G18 G40 G80 G99
N20 G0 X200.000
N30 G0 Z150.000
N40 T0313
N50 G50 S2500
N60 G96 S180 M4
(contour)
N70 G0 X200.000 Z2.000
N80 X19.722 Z2.000
(seat cone)
N90 G1 X22.961 Z-30.390 F0.100
(round)
N100 G2 X26.961 Z-32.390 I2.000 K0.000 F0.050
(clear)
N110 G1 X34.000 Z-32.390 F0.100
N120 G0 X34.000 Z150.000
N130 X200.000 Z150.000
(tool 3 done)
N140 M5
N150 M30
%
`, strings.Replace(string(p.Bytes), digest([]byte(body(p))), "DIGEST", 1))
	assert.Equal(t, 15, p.Blocks)
	assert.Equal(t, 1, p.Arcs)
	again, _ := written(t, lathe(t, "g90-turns"))
	assert.Equal(t, p, again)
}

// The same plan in inch, radius, by R, with mirrored arcs, for a lathe of
// another column. 9.8610/25.4 = 0.38823, 11.4805/25.4 = 0.45199 (0.451988),
// 30.39/25.4 = 1.19646, 13.4805/25.4 = 0.53073, 32.39/25.4 = 1.27520,
// 17/25.4 = 0.66929, 2/25.4 = 0.07874; 0.1 mm/rev is 0.0039 in/rev, its
// half 0.001969: four decimals would change it by 1.6 %, so five. 180 m/min is 590.55
// ft/min.
func TestAnotherLathe(t *testing.T) {
	s := lathe(t, "g77-turns")
	m := &s.Machine
	m.Unit, m.Decimals, m.XIsDiameter = given(shop.Inch), given(4), given(false)
	m.Arcs, m.ArcSense, m.Comments = given("r"), given("mirrored"), given("semicolon")
	m.BlockNumbers, m.SafeStart, m.OffsetDigits = given(5), given("G54 G61"), given(0)
	p, found := written(t, s)
	require.Empty(t, found)
	assert.Equal(t, `; tool 3, finish: 591 ft/min, at most 2500 rev/min
N5 G20 G18 G90 G40 G80 G95
N10 G54 G61
N15 G0 X3.9370
N20 G0 Z5.9055
N25 T3 M6
N30 G92 S2500
N35 G96 S591 M4
; contour
N40 G0 X3.9370 Z0.0787
N45 X0.3882 Z0.0787
; seat cone
N50 G1 X0.4520 Z-1.1965 F0.0039
; round
N55 G3 X0.5307 Z-1.2752 R0.0787 F0.00197
; clear
N60 G1 X0.6693 Z-1.2752 F0.0039
N65 G0 X0.6693 Z5.9055
N70 X3.9370 Z5.9055
; tool 3 done
N75 M5
N80 M30
%
`, body(p))
	assert.Contains(t, string(p.Bytes), "; words: X is a radius, lengths in inch")
	ours, same := Untouched(p.Bytes)
	assert.True(t, ours && same)
}

func TestNoCommentsNoNumbers(t *testing.T) {
	s := lathe(t, "g90-turns")
	s.Machine.Comments, s.Machine.BlockNumbers = given("none"), given(0)
	p, _ := written(t, s)
	assert.True(t, strings.HasPrefix(string(p.Bytes), "%\nG21 G18 G40 G80 G99\nG0 X200.000\n"), "%s", p.Bytes)
	assert.NotContains(t, string(p.Bytes), "(")
	assert.Len(t, p.Lines, strings.Count(string(p.Bytes), "\n"))
}

// One line of the map for each line of the text; what a line says it is for.
func TestLineMap(t *testing.T) {
	p, _ := written(t, lathe(t, "g90-turns"))
	lines := strings.Split(strings.TrimSuffix(string(p.Bytes), "\n"), "\n")
	require.Len(t, p.Lines, len(lines))
	seen := map[string]Line{}
	for i, l := range p.Lines {
		if l.Block != "" {
			assert.True(t, strings.HasPrefix(lines[i], l.Block+" "), "%s: %s", l.Block, lines[i])
			seen[l.Block] = l
		} else {
			assert.True(t, lines[i] == "%" || strings.HasPrefix(lines[i], "("), lines[i])
		}
	}
	assert.Equal(t, Line{"N90", 1, "seat cone"}, seen["N90"])
	assert.Equal(t, Line{"N100", 2, "round"}, seen["N100"])
	assert.Equal(t, Line{"N110", -1, "clear"}, seen["N110"])
	assert.Equal(t, Line{"N70", -1, "contour"}, seen["N70"])
}

// A second tool is entered from its own top: nothing above is needed.
func TestEachToolBlockStandsAlone(t *testing.T) {
	s := lathe(t, "g77-turns")
	plan, part := socket(s)
	second := plan.Operations[0]
	second.Surface, second.Speed, second.Inside = false, 900.4, true
	plan.Operations = append(plan.Operations, second)
	p, found := write(t, plan, part)
	require.Empty(t, found)
	_, after, ok := strings.Cut(body(p), "N150 M1\n")
	require.True(t, ok, body(p))
	assert.True(t, strings.HasPrefix(after, `(tool 3, finish: 900 rev/min)
N160 G21 G18 G90 G40 G80 G95
N170 G0 Z150.000
N180 G0 X200.000
N190 T0313
N200 G97 S900 M4
(contour)
N210 G0 X200.000 Z2.000
`), after)
}

// A lathe that only knows feed per minute gets it at a fixed speed: 0.1 mm/rev
// times 900 rev/min is 90 mm/min, 0.05 is 45; at a surface speed it is refused.
func TestFeedPerMinute(t *testing.T) {
	s := lathe(t, "no-cycles")
	delete(s.Machine.Words, shop.FeedPerRev)
	s.Machine.OffsetDigits = given(2)
	plan, part := socket(s)
	plan.Operations[0].Surface, plan.Operations[0].Speed = false, 900
	p, found := write(t, plan, part)
	require.Empty(t, found)
	assert.Contains(t, body(p), "N10 G21 G18 G90 G40 G80 G94\n")
	assert.Contains(t, body(p), "N50 S900 M4\n")
	assert.Contains(t, body(p), "Z-30.390 F90.0\n")
	assert.Contains(t, body(p), "K0.000 F45.0\n")
	assert.Contains(t, string(p.Bytes), "feed per minute")

	plan.Operations[0].Surface = true
	p, found = write(t, plan, part)
	assert.Nil(t, p)
	var said []string
	for _, f := range found {
		said = append(said, f.Code+": "+f.Message)
	}
	assert.ElementsMatch(t, []string{
		"no-word: the lathe has no word for capping the speed: word = { speed_cap = ... }",
		"no-word: the lathe has no word for surface speed: word = { surface_speed = ... }",
		"no-word: the lathe has no word for feed per revolution: word = { feed_per_rev = ... }",
	}, said)
}

func TestRefusals(t *testing.T) {
	for name, c := range map[string]struct {
		change func(*shop.Shop, *toolpath.Plan)
		code   string
	}{
		"spindle not given":    {func(s *shop.Shop, _ *toolpath.Plan) { s.Machine.Spindle = shop.Setting[string]{} }, NoSpindle},
		"change point missing": {func(s *shop.Shop, _ *toolpath.Plan) { s.Machine.Change.Given = false }, toolpath.CodeNoChangePoint},
		"no cap":               {func(_ *shop.Shop, p *toolpath.Plan) { p.Operations[0].Cap = 0 }, toolpath.CodeNoTopSpeed},
		"offset too long":      {func(s *shop.Shop, _ *toolpath.Plan) { s.Tools[0].Offset = 101 }, NoWord},
		"gap in the plan":      {func(_ *shop.Shop, p *toolpath.Plan) { p.Operations[0].Passes[0].Moves[2].Path.From.Z += 0.01 }, PlanGap},
		"one decimal": {func(s *shop.Shop, p *toolpath.Plan) {
			s.Machine.Decimals = given(1)
			m := p.Operations[0].Passes[0].Moves
			a := m[3].Path
			m[3].Path = geom.Arc(a.From, a.Center.Add(at(-2*geom.Sin(1), -2*geom.Cos(1))), a.Center, geom.CW)
			m[4].Path.From = m[3].Path.To
		}, ArcNotKept},
		"the tool's own way": {func(s *shop.Shop, _ *toolpath.Plan) {
			s.Machine.Spindle = shop.Setting[string]{}
			s.Tools[0].Spindle = given("M3")
		}, ""},
		"within the arc's tolerance": {func(s *shop.Shop, _ *toolpath.Plan) {
			s.Machine.Decimals, s.Machine.ArcTolerance = given(1), given(0.1)
		}, ""},
	} {
		s := lathe(t, "g90-turns")
		plan, part := socket(s)
		c.change(s, plan)
		p, found := write(t, plan, part)
		if c.code == "" {
			assert.True(t, p != nil, name)
			continue
		}
		assert.True(t, p == nil, name)
		refused := false
		for _, f := range found {
			if f.Code == c.code {
				refused = true
				assert.Equal(t, finding.Error, f.Severity, name)
				assert.True(t, f.Span.Valid(), name)
			}
		}
		assert.True(t, refused, name)
	}
}

// Moves that the words cannot show: what is dropped, what becomes a line. An
// arc of radius 0.2 with a sweep s has the sagitta 0.2(1 - cos(s/2)): at
// s = 0.1 that is 0.00025 (below half a unit, a line of 0.02), at 0.2 0.001.
func TestTooSmallForTheWords(t *testing.T) {
	s := lathe(t, "g90-turns")
	arc := func(sweep float64) (*Program, []finding.Finding) {
		plan, part := socket(s)
		a := at(-5, 10)
		c := at(-5, 10.2)
		b := c.Add(at(-0.2*geom.Sin(sweep), -0.2*geom.Cos(sweep)))
		change := at(150, 100)
		plan.Operations[0].Passes[0].Moves = []toolpath.Move{
			{Path: geom.Line(change, a), Rapid: true, Feature: -1},
			{Path: geom.Line(a, a.Add(at(-0.0003, 0))), Feed: 0.1, Feature: -1},
			{Path: geom.Arc(a.Add(at(-0.0003, 0)), b, c, geom.CW), Feed: 0.1, Feature: 2},
			{Path: geom.Line(b, change), Rapid: true, Feature: -1},
		}
		return write(t, plan, part)
	}
	p, found := arc(0.1)
	require.Empty(t, found)
	assert.Equal(t, [4]int{0, 1, 0, 1}, [4]int{p.Arcs, p.ArcsAsLines, p.ArcsDropped, p.LinesDropped})
	assert.Contains(t, body(p), "G1 X20.002 Z-5.020 F0.100\n")
	assert.Contains(t, string(p.Bytes), "(rounding: too small for the words: 1 arc written as a)\n(  line, 0 arcs and 1 line left out)\n")
	p, found = arc(0.2)
	require.Empty(t, found)
	assert.Equal(t, [4]int{1, 0, 0, 1}, [4]int{p.Arcs, p.ArcsAsLines, p.ArcsDropped, p.LinesDropped})
	p, found = arc(0.002)
	require.Empty(t, found)
	assert.Equal(t, [4]int{0, 0, 1, 1}, [4]int{p.Arcs, p.ArcsAsLines, p.ArcsDropped, p.LinesDropped})
}

func TestNumbering(t *testing.T) {
	blocks := make([]block, 30_000)
	for i := range blocks {
		blocks[i].words = []string{"X1."}
	}
	blocks[0] = block{comment: "no number"}
	got := numbered(blocks, 10)
	assert.Equal(t, "", got[0].number)
	assert.Equal(t, "N3", got[1].number, "99999/29999 = 3")
	assert.Equal(t, "N89997", got[29_999].number)
	assert.Equal(t, "N1000", numbered([]block{{words: []string{"M5"}}}, 1000)[0].number)
}

func TestNumbersAsWords(t *testing.T) {
	mm := format{unit: shop.MM, decimals: 3, diameter: true, one: 0.001}
	for n, want := range map[int64]string{0: "0.000", 1: "0.001", -1: "-0.001", -999: "-0.999", 50000: "50.000", -123456: "-123.456"} {
		assert.Equal(t, want, mm.number(n))
	}
	assert.Equal(t, "50.", decimal(50, 0), "a point always")
	// rounded once, on the diameter: 2*10.00025 = 20.0005, half away from zero
	assert.Equal(t, spot{20001, -1}, mm.spot(at(-0.0005, 10.00025)))
	assert.Equal(t, spot{0, 0}, mm.spot(at(-0.0004999, 0.0002)))
	for feed, want := range map[float64]string{0.25: "F0.250", 0.125 / 2: "F0.063", 0.0023: "F0.0023", 1.5: "F1.500", 0.00051: "F0.00051"} {
		assert.Equal(t, want, mm.feedWord(feed, false))
	}
	assert.Equal(t, "F90.0", mm.feedWord(90, true))
	inch := format{unit: shop.Inch, decimals: 4, one: 0.00254}
	assert.Equal(t, "F0.0040", inch.feedWord(0.004*25.4, false))
	for x, want := range map[float64]string{2500.7: "2500", 2500: "2500", 2499.9999999: "2500", 0.2: "1"} {
		assert.Equal(t, want, below(x))
	}
}
