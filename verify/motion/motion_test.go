package motion

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"taperwright/profiles/finding"
	"taperwright/profiles/geom"
	"taperwright/profiles/shop"
	"taperwright/verify/rs274"
)

// lathe is the shop of these tests: a starting column with three tools, the
// third with a sharp nose.
func lathe(t testing.TB, column string, set ...func(*shop.Machine)) *shop.Shop {
	t.Helper()
	m, ok := shop.Default(column)
	require.True(t, ok, column)
	for _, f := range set {
		f(&m)
	}
	return &shop.Shop{Machine: m, Tools: []shop.Tool{
		{Name: "T1", Station: 1, Offset: 1, Nose: 0.8, TipX: -1, TipZ: -1},
		{Name: "T2", Station: 2, Offset: 2, Nose: 0.4, TipX: -1, TipZ: -1},
		{Name: "T3", Station: 3, Offset: 3, Nose: 0, TipX: -1, TipZ: -1},
	}}
}

// home gives the lathe a reference place at Z400, X300 (diameter).
func home(m *shop.Machine) {
	m.HomeAt = shop.Setting[shop.Place]{Value: shop.Place{Z: 400, R: 150}, Given: true}
}

// run interprets a program and checks what must hold for every program.
func run(t testing.TB, s *shop.Shop, program string) (*Trace, []finding.Finding) {
	t.Helper()
	var found finding.List
	text := finding.NewText("p.nc", []byte(program))
	f := rs274.Parse(text, &found)
	before := f.String()
	trace := Interpret(f, s, &found)
	require.Equal(t, before, f.String(), "the program was changed")
	sound(t, trace, text)
	for _, x := range found.Sorted() {
		require.NotEqual(t, Internal, x.Code, x.Message)
		require.NotEmpty(t, x.Message)
		require.True(t, x.Span.Start >= 0 && x.Span.Start <= x.Span.End && x.Span.End <= len(program), x.Message)
	}
	if trace.Stopped {
		require.NotEmpty(t, trace.NotJudged)
		require.True(t, found.HasErrors(), "judgement stopped in silence")
	}
	return trace, found.Sorted()
}

// sound checks a trace: finite numbers, motions that follow one another,
// arcs whose ends are equally far from their centre.
func sound(t testing.TB, trace *Trace, text *finding.Text) {
	t.Helper()
	finite := func(x float64) { require.True(t, x-x == 0, "%v", x) }
	for i := range trace.Motions {
		m := &trace.Motions[i]
		for _, p := range []geom.Point{m.Path.From, m.Path.To, m.Path.Center} {
			finite(p.Z)
			finite(p.R)
		}
		finite(m.Feed)
		finite(m.Spin.Speed)
		require.Less(t, m.Block, len(trace.Blocks))
		require.Less(t, m.Tool, len(trace.Tools))
		b := trace.Blocks[m.Block].Span
		require.True(t, b.Start <= m.Span.Start && m.Span.End <= b.End && m.Span.Start < m.Span.End)
		if m.Kind == Jump {
			require.Equal(t, m.Path.From, m.Path.To)
			continue
		}
		require.Greater(t, m.Path.To.Sub(m.Path.From).Len(), 0.0)
		if i > 0 {
			require.Equal(t, trace.Motions[i-1].Path.To, m.Path.From, "motion %d does not begin where the one before ended", i)
			require.LessOrEqual(t, trace.Motions[i-1].Block, m.Block)
		}
		if !m.Path.IsLine() {
			a, b := m.Path.From.Sub(m.Path.Center).Len(), m.Path.To.Sub(m.Path.Center).Len()
			require.InEpsilon(t, a, b, 1e-9)
		}
	}
	for _, b := range trace.Blocks {
		require.Same(t, text, b.Span.Text)
	}
	totals := trace.Totals(3000, nil)
	finite(totals.Time)
	finite(totals.CutLength)
	finite(totals.PeakRPM)
}

// codes lists findings as "code line:column".
func codes(found []finding.Finding) []string {
	var out []string
	for _, x := range found {
		out = append(out, fmt.Sprintf("%s %d:%d", x.Code, x.Span.From().Line, x.Span.From().Column))
	}
	return out
}

// moves lists the motions without tool, feed and speed.
func moves(trace *Trace) []string {
	var out []string
	for i := range trace.Motions {
		s := trace.Motions[i].String()
		if at := strings.Index(s, ", "); at >= 0 {
			s = s[:at]
		}
		out = append(out, s)
	}
	return out
}

// A whole program, word for word. X words are diameters.
func TestWholeProgram(t *testing.T) {
	trace, found := run(t, lathe(t, "g90-turns"), `%
O0100 (pump shaft, coupling end)
N10 G21 G18 G40 G99
N20 T0101
N30 G50 S2500
N40 G96 S180 M4
N50 G54 G0 X52. Z2. M8
N60 X44.
N70 G1 Z-20. F0.25
N80 X50. Z-50.
N90 G2 X56. Z-53. R3.
N100 G0 X60. Z2. M9
N110 G97 S900
N120 G1 X58. F.1
N130 G4 P500
N140 G0 X200. Z150. M5
N150 M30
%
`)
	assert.Empty(t, found)
	assert.Equal(t, `blocks 16, motions 8, unit mm, x diameter, ended
assumed tool words: the last 2 digits are the offset (default)
assumed tool offsets: each puts its tip where the program means it (default)
assumed X words: diameters (default)
assumed dwell P: milliseconds (default)
assumed spindle stop with a move: behind the move (default)
not judged: rapids from a place that is not known (line 7)
tool 0: station 1 offset 1, line 4, T1
dwell 0.5 s, line 15 N130
line 7 N50 jump to z2 r26, tool 0
line 8 N60 rapid z2 r26 to z2 r22, straight, tool 0
line 9 N70 cut z2 r22 to z-20 r22, tool 0, 0.25 mm/rev, M4 180 m/min cap 2500
line 10 N80 cut z-20 r22 to z-50 r25, tool 0, 0.25 mm/rev, M4 180 m/min cap 2500
line 11 N90 cut cw z-50 r25 to z-53 r28 round z-50 r28, tool 0, 0.25 mm/rev, M4 180 m/min cap 2500
line 12 N100 rapid z-53 r28 to z2 r30, tool 0
line 14 N120 cut z2 r30 to z2 r29, tool 0, 0.1 mm/rev, M4 900 rev/min
line 16 N140 rapid z2 r29 to z150 r100, tool 0
`, trace.String())
}

// head brings tool 1 to Z2, X40; the line below it is line 2.
const head = "G21 G99 G54 T0101 G97 S1000 M4 G0 X40. Z2.\n"

// give gives one setting of the lathe.
func give[T any](field func(*shop.Machine) *shop.Setting[T], value T) func(*shop.Machine) {
	return func(m *shop.Machine) { *field(m) = shop.Setting[T]{Value: value, Given: true} }
}

// assume gives a setting that is one word of a shop file.
func assume(key, value string) func(*shop.Machine) {
	return func(m *shop.Machine) {
		text := shop.Setting[string]{Value: value, Given: true}
		switch key {
		case "x":
			m.XIsDiameter = shop.Setting[bool]{Value: value == "diameter", Given: true}
		case "missing_point":
			m.MissingPoint = shop.Setting[shop.MissingPoint]{Value: shop.MissingPoint(value), Given: true}
		case "increment_x":
			m.IncrementX = text
		case "arc_sense":
			m.ArcSense = text
		case "long_arc":
			m.LongArc = text
		case "bare_home":
			m.BareHome = text
		case "slash":
			m.Slash = text
		case "dwell_p":
			m.DwellP = text
		default:
			panic(key)
		}
	}
}

// Each body follows head and is followed by M30; wanted are the motions behind
// the first jump.
func TestMoves(t *testing.T) {
	for _, c := range []struct {
		name, column string
		set          []func(*shop.Machine)
		body         string
		want         []string
		found        []string
	}{
		{name: "modal straight feed", body: "G1 Z-10. F.2\nX50.",
			want: []string{"cut z2 r20 to z-10 r20", "cut z-10 r20 to z-10 r25"}},
		{name: "feed and rapid in turn", body: "G01 Z0 F.2\nG00 X50.\nZ2.",
			want: []string{"cut z2 r20 to z0 r20", "rapid z0 r20 to z0 r25", "rapid z0 r25 to z2 r25"}},
		{name: "order of words is free", body: "F.2 Z-5. X42. G1",
			want: []string{"cut z2 r20 to z-5 r21"}},
		// U4 is 2 on radius; from Z2 W-3 leads to Z-1
		{name: "U and W beside X and Z", body: "G1 U4. F.2\nW-3.\nX46. W-1.\nU-2. Z-4.",
			want: []string{"cut z2 r20 to z2 r22", "cut z2 r22 to z-1 r22", "cut z-1 r22 to z-2 r23", "cut z-2 r23 to z-4 r22"}},
		{name: "G91 where the column has it", column: "g77-turns", body: "G91 G1 X4. Z-3. F.2\nZ-1.\nG90 Z0",
			want: []string{"cut z2 r20 to z-1 r22", "cut z-1 r22 to z-2 r22", "cut z-2 r22 to z0 r22"}},
		{name: "G91 X on radius", column: "g77-turns", set: []func(*shop.Machine){assume("increment_x", "radius")}, body: "G91 G1 X4. F.2",
			want: []string{"cut z2 r20 to z2 r24"}},
		{name: "G91 and U W", column: "g80-turns", body: "G91 G1 U4. W-3. F200",
			want: []string{"cut z2 r20 to z-1 r22"}},
		{name: "U where the column has none", column: "g77-turns", body: "G1 U4. F.2", found: []string{"unknown-word 2:4"}},
		{name: "X and U", body: "G1 X40. U4. F.2", found: []string{"letter-twice 2:9"}},
		{name: "Z and W", body: "G1 Z40. W4. F.2", found: []string{"letter-twice 2:9"}},
		{name: "no move, no motion", body: "G0 X40. Z2.\nG1 Z2. F.2\nU0 W0", want: nil},
		// quarter of R3, outward: from r22 z-10, G2 is clockwise with Z to the right and X up
		{name: "G2 by R", body: "G1 Z-10. F.2\nG2 X46. Z-13. R3.",
			want: []string{"cut z2 r20 to z-10 r20", "cut cw z-10 r20 to z-13 r23 round z-10 r23"}},
		{name: "G3 by R", body: "G1 Z-10. F.2\nG3 X46. Z-13. R3.",
			want: []string{"cut z2 r20 to z-10 r20", "cut ccw z-10 r20 to z-13 r23 round z-13 r20"}},
		{name: "G2 by I and K", body: "G1 Z-10. F.2\nG2 X46. Z-13. I3. K0",
			want: []string{"cut z2 r20 to z-10 r20", "cut cw z-10 r20 to z-13 r23 round z-10 r23"}},
		{name: "G3 by K alone", body: "G1 Z-10. F.2\nG3 X46. Z-13. K-3.",
			want: []string{"cut z2 r20 to z-10 r20", "cut ccw z-10 r20 to z-13 r23 round z-13 r20"}},
		{name: "mirrored", set: []func(*shop.Machine){assume("arc_sense", "mirrored")}, body: "G1 Z-10. F.2\nG3 X46. Z-13. R3.",
			want: []string{"cut z2 r20 to z-10 r20", "cut cw z-10 r20 to z-13 r23 round z-10 r23"}},
		// language.md 5: |(12,-24)-(0,-15)| = 15 from r0 z0: a ball of R15 through more than a quarter
		{name: "G3 over a quarter", body: "G0 X0\nG1 Z0 F.2\nG3 X24. Z-24. R15.",
			want: []string{"rapid z2 r20 to z2 r0", "cut z2 r0 to z0 r0", "cut ccw z0 r0 to z-24 r12 round z-15 r0"}},
		// ends (z0 r20) and (z-6 r20): half the chord 3; R-5 is the long way round a centre 4 off the chord.
		// chord toward -z, its left is -r: the short clockwise arc has its centre at r24, the long one at r16
		{name: "R below 0", body: "G1 Z0 F.2\nG2 X40. Z-6. R5.\nG0 Z0\nG2 X40. Z-6. R-5. ",
			want: []string{"cut z2 r20 to z0 r20", "cut cw z0 r20 to z-6 r20 round z-3 r24", "rapid z-6 r20 to z0 r20", "cut cw z0 r20 to z-6 r20 round z-3 r16"}},
		{name: "R below 0 refused", set: []func(*shop.Machine){assume("long_arc", "none")}, body: "G2 X40. Z-6. R-5. F.2", found: []string{"bad-value 2:14"}},
		// half the chord is 3; R2.999 falls short by 0.001 <= 0.002: half a turn
		{name: "half a turn", body: "G1 Z0 F.2\nG3 X40. Z-6. R2.999",
			want: []string{"cut z2 r20 to z0 r20", "cut ccw z0 r20 to z-6 r20 round z-3 r20"}},
		{name: "half a turn at the limit", body: "G1 Z0 F.2\nG3 X40. Z-6. R2.998",
			want: []string{"cut z2 r20 to z0 r20", "cut ccw z0 r20 to z-6 r20 round z-3 r20"}},
		{name: "R too short", body: "G1 Z0 F.2\nG3 X40. Z-6. R2.997", want: []string{"cut z2 r20 to z0 r20"}, found: []string{"arc-radius-short 3:1"}},
		// ends (0, 20) (-6, 20), centre said (-3.001, 20): 3.001 and 2.999 from them, 0.002 apart: moved to (-3, 20)
		{name: "centre moved to the bisector", body: "G1 Z0 F.2\nG3 X40. Z-6. I0 K-3.001",
			want: []string{"cut z2 r20 to z0 r20", "cut ccw z0 r20 to z-6 r20 round z-3 r20"}},
		{name: "centre too far off", body: "G1 Z0 F.2\nG3 X40. Z-6. I0 K-3.002", want: []string{"cut z2 r20 to z0 r20"}, found: []string{"arc-mismatch 3:1"}},
		{name: "wider tolerance", set: []func(*shop.Machine){give(func(m *shop.Machine) *shop.Setting[float64] { return &m.ArcTolerance }, 0.05)}, body: "G1 Z0 F.2\nG3 X40. Z-6. I0 K-3.02",
			want: []string{"cut z2 r20 to z0 r20", "cut ccw z0 r20 to z-6 r20 round z-3 r20"}},
		{name: "R and I", body: "G3 X40. Z-6. R5. I1. F.2", found: []string{"arc-centre 2:1"}},
		{name: "neither R nor I nor K", body: "G3 X40. Z-6. F.2", found: []string{"arc-centre 2:1"}},
		{name: "centre on the start", body: "G3 X40. Z-6. I0 K0 F.2", found: []string{"arc-centre 2:1"}},
		{name: "R0", body: "G3 X40. Z-6. R0 F.2", found: []string{"arc-centre 2:14"}},
		{name: "arc by R back to its start is passed over", body: "G3 X40. Z2. R5. F.2\nG1 Z0", want: []string{"cut z2 r20 to z0 r20"}, found: []string{"arc-no-length 2:1"}},
		{name: "full circle", body: "G3 X40. Z2. I5. K0 F.2\nG1 Z0", found: []string{"arc-no-length 2:1"}},
		{name: "arc without an end", body: "G3 I5. F.2", found: []string{"arc-no-length 2:4"}},
		{name: "modal arc", body: "G1 Z0 F.2\nG3 X46. Z-3. R3.\nX40. Z-6. R3.",
			want: []string{"cut z2 r20 to z0 r20", "cut ccw z0 r20 to z-3 r23 round z-3 r20", "cut ccw z-3 r23 to z-6 r20 round z-3 r20"}},
		{name: "R on a straight move", body: "G1 X40. Z-6. R5. F.2", found: []string{"corner-word 2:14"}},
		{name: "comma corner", body: "G1 X40. Z-6. ,R5. F.2", found: []string{"corner-word 2:14"}},
		{name: "chamfer letter", body: "G1 X40. Z-6. C1. F.2", found: []string{"corner-word 2:14"}},
		{name: "below the axis", body: "G1 X-1.6 F.2", want: []string{"cut z2 r20 to z2 r-0.8"}},
		{name: "radius X", set: []func(*shop.Machine){assume("x", "radius")}, body: "G1 X22. F.2\nG3 X25. Z-1. R3.",
			want: []string{"cut z2 r40 to z2 r22", "cut ccw z2 r22 to z-1 r25 round z-1 r22"}},
		{name: "radius by word", column: "g80-turns", body: "G37 G1 X22. F200\nG36 X22.", want: []string{"cut z2 r20 to z2 r22", "cut z2 r22 to z2 r11"}},
		// 1 in on diameter is 12.7 on radius; 0.125 in is 3.175
		{name: "inch", body: "G20\nG1 X1. Z.125 F.01", want: []string{"cut z2 r20 to z3.175 r12.7"}, found: []string{"unit-change 2:1"}},
		{name: "other unit words", column: "g20-turns", body: "G71 G1 X42. F.2", want: []string{"cut z2 r20 to z2 r21"}, found: nil},
		{name: "dwell takes X", body: "G4 X2.\nG1 Z0 F.2", want: []string{"cut z2 r20 to z0 r20"}},
		{name: "dwell and motion", body: "G1 G4 X2.", found: []string{"axis-claim 2:7"}},
		{name: "dwell by F", body: "G4 F2.", found: []string{"unknown-word 2:4"}},
		{name: "reference return, place not known", body: "G28 U0 W0\nG0 X50. Z5.\nX60.",
			want: []string{"jump to z2 r20", "jump to z5 r25", "rapid z5 r25 to z5 r30"}},
		{name: "reference return in X only", body: "G28 U0\nG0 X50.", want: []string{"jump to z2 r20", "jump to z2 r25"}},
		{name: "with G0 in its block", body: "G28 G0 U0 W0", want: []string{"jump to z2 r20"}},
		{name: "with G1 in its block", body: "G28 G1 U0 W0", found: []string{"axis-claim 2:8"}},
		{name: "through a place", set: []func(*shop.Machine){home}, body: "G28 X50. W0\nG0 Z2.",
			want: []string{"rapid z2 r20 to z2 r25", "rapid z2 r25 to z400 r150", "rapid z400 r150 to z2 r150"}},
		{name: "in X only, known", set: []func(*shop.Machine){home}, body: "G28 U10.", want: []string{"rapid z2 r20 to z2 r25", "rapid z2 r25 to z2 r150"}},
		{name: "bare", set: []func(*shop.Machine){home}, body: "G28", want: []string{"rapid z2 r20 to z400 r150"}},
		{name: "bare and ignored", set: []func(*shop.Machine){home, assume("bare_home", "nothing")}, body: "G28\nG0 Z5.", want: []string{"rapid z2 r20 to z5 r20"}},
		{name: "cut after an unknown place", body: "G28 U0\nG1 Z-5. F.2", want: []string{"jump to z2 r20"}, found: []string{"unknown-start 3:1"}},
		{name: "machine frame", body: "G53 G0 X0\nG53 Z0\nG0 X50. Z5.", want: []string{"jump to z2 r20", "jump to z2 r20", "jump to z5 r25"}},
		{name: "machine frame alone", body: "G53\nG0 X50.", want: []string{"rapid z2 r20 to z2 r25"}},
		{name: "arc in the machine's frame", body: "G53 G2 X0 Z0", found: []string{"axis-claim 2:5"}},
		{name: "cap is no preset", body: "G50 S2000\nG0 X50.", want: []string{"rapid z2 r20 to z2 r25"}},
		// the tool stands at r20 and is told it is at X60: 10 less from now on
		{name: "preset after motions", body: "G50 X60.\nG0 X62.", want: []string{"rapid z2 r20 to z2 r21"}},
		{name: "preset with cap", body: "G50 X60. S2000\nG0 X62.", want: []string{"rapid z2 r20 to z2 r21"}},
		{name: "preset behind a tool call", body: "G0 Z5.\nT0202\nG50 X60.\nG0 X62.", want: []string{"rapid z2 r20 to z5 r20"}, found: []string{"frame-unknown 4:1"}},
		{name: "preset of the same place", body: "T0202\nG50 X40. Z2.\nG0 X62.", want: []string{"rapid z2 r20 to z2 r31"}},
		{name: "preset from an unknown place", body: "G0 Z5.\nG28 U0 W0\nG50 X60. Z5.", want: []string{"rapid z2 r20 to z5 r20", "jump to z5 r20"}, found: []string{"frame-unknown 4:1"}},
		{name: "preset with a motion", body: "G50 G0 X60.", found: []string{"axis-claim 2:8"}},
		{name: "cap word alone", body: "G50", found: []string{"unknown-word 2:1"}},
		{name: "preset word with S alone", column: "g80-turns", body: "G92 S2000", found: []string{"unknown-word 2:1"}},
		{name: "the same work offset again", body: "G54 G0 X50.", want: []string{"rapid z2 r20 to z2 r25"}},
		{name: "another work offset", body: "G55 G0 X50.", found: []string{"frame-unknown 2:1"}},
		// G55 lies 30 toward the chuck and on the axis
		{name: "another work offset, known", set: []func(*shop.Machine){func(m *shop.Machine) { m.Frames = map[string]shop.Place{"G55": {Z: -30}} }},
			body: "G55 G0 X50.\nZ5.\nG54", want: []string{"rapid z2 r20 to z2 r25", "rapid z2 r25 to z-25 r25"}, found: []string{"frame-unknown 4:1"}},
		{name: "offset cancelled", body: "T0100\nG0 X100. Z100.\nT0202\nG0 X50. Z2.\nX52.", want: []string{"jump to z100 r50", "jump to z2 r25", "rapid z2 r25 to z2 r26"}},
		{name: "cut with the offset cancelled", body: "T0100\nG1 Z-5. F.2", found: []string{"offset-off 3:1"}},
		{name: "compensation", body: "G42 G1 Z0 F.2\nX50.", found: []string{"control-compensation 2:1"}},
		{name: "compensation standing alone", body: "G1 Z0 F.2\nG41\nX50.", want: []string{"cut z2 r20 to z0 r20"}, found: []string{"control-compensation 3:1"}},
		{name: "compensation on and off", body: "G41\nG40\nG1 Z0 F.2", want: []string{"cut z2 r20 to z0 r20"}},
		{name: "compensation of a sharp nose", body: "T0303\nG42 G1 Z0 F.2", want: []string{"cut z2 r20 to z0 r20"}},
		{name: "compensation of an unknown tool", body: "T0909\nG42 G1 Z0 F.2", found: []string{"control-compensation 3:1"}},
		{name: "compensation at rapid", body: "G42 G0 Z0", found: []string{"control-compensation 2:1"}},
		{name: "plane, path mode, cancel, coolant, stops", body: "G18\nG64\nM8 M7\nM9\nM0\nM1\nG1 Z0 F.2", want: []string{"cut z2 r20 to z0 r20"}},
		{name: "other plane", body: "G17", found: []string{"unknown-word 2:1"}},
		{name: "harmless", set: []func(*shop.Machine){func(m *shop.Machine) { m.Harmless = []string{"M41"} }}, body: "M41 G1 Z0 F.2", want: []string{"cut z2 r20 to z0 r20"}},
		{name: "not harmless", body: "M41 G1 Z0 F.2", found: []string{"unknown-word 2:1"}},
		{name: "unknown letter", body: "G1 Z0 F.2 H5", found: []string{"unknown-word 2:11"}},
		{name: "unknown axis", body: "G1 Y2.", found: []string{"unknown-word 2:4"}},
		{name: "letter twice", body: "G1 X10. X20.", found: []string{"letter-twice 2:9"}},
		{name: "group twice", body: "G0 G1 X20.", found: []string{"group-twice 2:4"}},
		{name: "the same word twice", body: "G1 G01 Z0 F.2", want: []string{"cut z2 r20 to z0 r20"}},
		{name: "M3 and M4", body: "M3 M4", found: []string{"group-twice 2:4"}},
		{name: "two work offsets", body: "G54 G55", found: []string{"group-twice 2:5"}},
		{name: "two one-shot words", body: "G28 G4 U0", found: []string{"group-twice 2:5"}},
		{name: "roughing cycle", body: "G71 U2. R1.", found: []string{"cycle-not-read 2:1"}},
		{name: "thread move", body: "G32 Z-5. F1.5", found: []string{"cycle-not-read 2:1"}},
		{name: "subprogram", body: "M98 P200 L3", found: []string{"subprogram-not-read 2:1"}},
		{name: "variable", body: "G1 X#1", found: []string{"variable-not-read 2:4"}},
		{name: "setting", body: "#1=5", found: []string{"variable-not-read 2:1"}},
		{name: "flow", body: "GOTO10", found: []string{"flow-not-read 2:1"}},
		{name: "unreadable block", body: "G1 X,5\nG1 Z0", found: []string{"bad-number 2:4"}},
		{name: "feed missing, once", body: "G1 Z0\nX50.", want: []string{"cut z2 r20 to z0 r20", "cut z0 r20 to z0 r25"}, found: []string{"feed-missing 2:1"}},
		{name: "feed lost with the mode", body: "G1 Z0 F.2\nG98\nX50.", want: []string{"cut z2 r20 to z0 r20", "cut z0 r20 to z0 r25"}, found: []string{"feed-missing 4:1"}},
		{name: "F0", body: "G1 Z0 F0", want: []string{"cut z2 r20 to z0 r20"}, found: []string{"feed-missing 2:1"}},
		{name: "F below 0", body: "G1 Z0 F-1", found: []string{"bad-value 2:7"}},
		{name: "S below 0", body: "S-1", found: []string{"bad-value 2:1"}},
		{name: "wait below 0", body: "G4 P-1", found: []string{"bad-value 2:4"}},
		{name: "T of six digits", body: "T010203", found: []string{"tool-word 2:1"}},
		{name: "T with a point", body: "T1.", found: []string{"tool-word 2:1"}},
		{name: "cycle end leaves no mode", body: "G80\nX50.", found: []string{"no-motion-word 3:1"}},
		{name: "far", body: "G0 X42000 Z2000", want: []string{"rapid z2 r20 to z2000 r21000"}, found: []string{"absurd-length 2:4"}},
		{name: "too far", body: "G0 X400000", found: []string{"bad-value 2:4"}},
		{name: "block delete is run", body: "/G1 Z0 F.2\n/2 X50.", want: []string{"cut z2 r20 to z0 r20", "cut z0 r20 to z0 r25"}},
		{name: "block delete is skipped", set: []func(*shop.Machine){assume("slash", "skip")}, body: "/G1 Z0 F.2\n/2 X50.\nG1 Z1. /X44. F.2", want: []string{"cut z2 r20 to z1 r20"}, found: []string{"feed-missing 4:1"}},
		{name: "another program", body: "O2 G0 X50.", found: []string{"second-program 2:1"}},
		{name: "numbers and labels", body: "N10 :5 G1 Z0 F.2 (N2)", want: []string{"cut z2 r20 to z0 r20"}},
		{name: "lower case and blanks", body: "g1 z - 1 0. f.2", want: []string{"cut z2 r20 to z-10 r20"}, found: []string{"blank-in-number 2:6"}},
	} {
		t.Run(c.name, func(t *testing.T) {
			if c.column == "" {
				c.column = "g90-turns"
			}
			start := head
			if c.column != "g90-turns" {
				start = "G54 T0101 G97 S1000 M4 G0 X40. Z2.\n"
			}
			trace, found := run(t, lathe(t, c.column, c.set...), start+c.body+"\nM30\n")
			assert.Equal(t, c.found, codes(found), "%v", found)
			require.NotEmpty(t, trace.Motions)
			got := moves(trace)
			assert.Equal(t, c.want, append([]string(nil), got[1:]...))
		})
	}
}
