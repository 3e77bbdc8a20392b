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

// Judgement stops where it must, and says what else will not be read.
func TestStopNamesTheRest(t *testing.T) {
	trace, found := run(t, lathe(t, "g90-turns"), head+"G1 Z0 F.1\nM41\nG1 Z-5.\nG71 U1. R1.\nM41\nM42 X#1\nX#2\nM30\nM77\n")
	assert.Equal(t, []string{"unknown-word 3:1", "cycle-not-read 5:1", "unknown-word 7:1", "variable-not-read 7:5"}, codes(found))
	assert.True(t, trace.Stopped)
	assert.Equal(t, 3, trace.StoppedAt.From().Line)
	assert.Equal(t, []string{"rapids from a place that is not known (line 1)", "everything from line 3 on"}, trace.NotJudged)
	assert.Len(t, trace.Motions, 2)
	assert.Len(t, trace.Blocks, 3)

	var many strings.Builder
	for i := range 200 {
		fmt.Fprintf(&many, "M%d\n", 100+i)
	}
	_, found = run(t, lathe(t, "g90-turns"), many.String())
	require.Len(t, found, 1+mostRefused+1)
	assert.Equal(t, "189 more words that are not read, the last here", found[len(found)-1].Message)
}

// Help names the column that has the word.
func TestHelpNamesTheColumn(t *testing.T) {
	for program, want := range map[string]string{
		"G21 G90 G95":       `in g77-turns, g20-turns, g80-turns, no-cycles G90 is absolute coordinates: set words = "g77-turns", or word = { absolute = "G90" } beside the column you have`,
		"G95":               `in g77-turns, g20-turns, no-cycles G95 is feed per revolution: set words = "g77-turns", or word = { feed_per_rev = "G95" } beside the column you have`,
		"G92 S3000":         `in g77-turns, g20-turns G92 is the speed cap (or the frame preset): set words = "g77-turns", or word = { speed_cap = "G92" } beside the column you have`,
		"G90 X40. Z-5. F.2": "give the program written out, in G0 to G3",
		"G70 P1 Q2":         "give the program written out, in G0 to G3",
		"M93":               `if it moves nothing and changes no mode here, say [machine] harmless = ["M93"]`,
	} {
		_, found := run(t, lathe(t, "g90-turns"), program+"\nM30\n")
		require.NotEmpty(t, found, program)
		assert.Equal(t, want, found[0].Help, program)
	}
}

func TestPlacesOfFindings(t *testing.T) {
	_, found := run(t, lathe(t, "g90-turns"), head+"G41\nM8\nG0 X50.\nM30\n")
	require.Len(t, found, 1)
	require.Len(t, found[0].Places, 1)
	assert.Equal(t, "G41", found[0].Span.String())
	assert.Equal(t, "G0 X50.", found[0].Places[0].Span.String())
	_, found = run(t, lathe(t, "g90-turns"), "G1 X10. X20.\nM30\n")
	require.Len(t, found[0].Places, 1)
	assert.Equal(t, "X10.", found[0].Places[0].Span.String())
	assert.Equal(t, "X20.", found[0].Span.String())
}

// A motion's span covers the words that made it.
func TestSpans(t *testing.T) {
	trace, _ := run(t, lathe(t, "g90-turns"), head+"N20 M8 G2 X46. F.2 Z-1. R3. (x)\nM30\n")
	assert.Equal(t, "G2 X46. F.2 Z-1. R3.", trace.Motions[1].Span.String())
	assert.Equal(t, "N20 M8 G2 X46. F.2 Z-1. R3. (x)", trace.Blocks[1].Span.String())
	assert.Equal(t, "N20", trace.Blocks[1].Label)
	assert.True(t, trace.XDiameter)
}

// Comments are never facts: blanked or taken out, the trace is the same.
func TestCommentsAreNeverRead(t *testing.T) {
	program := "%\nO1 (G20)\n(G71)\nG21(G20)G99 G54 ;M3\nT0101 (T0202)\nG0 X40.(X50.)Z2.\n(M30)\nG1 Z-1. F.2 ; Z-2.\nM30 (X)\n%\n"
	want, found := run(t, lathe(t, "g90-turns"), program)
	require.Empty(t, found)
	for _, signs := range []bool{true, false} {
		got, found := run(t, lathe(t, "g90-turns"), blankComments(program, signs))
		require.Empty(t, found)
		assert.Equal(t, want.String(), got.String())
	}
}

// blankComments writes blanks over every comment; with signs the signs that
// bound it stay (without them X1(a)5 would become X15).
func blankComments(program string, signs bool) string {
	var dropped finding.List
	b := []byte(program)
	f := rs274.Parse(finding.NewText("p.nc", []byte(program)), &dropped)
	for i := range f.Blocks {
		for _, c := range f.Blocks[i].Comments {
			from, to := c.Span.Start, c.Span.End
			if signs && b[from] == '(' {
				from, to = from+1, to-1
			} else if signs && b[from] == ';' {
				from++
			}
			for k := from; k < to; k++ {
				b[k] = ' '
			}
		}
	}
	return string(b)
}

// A program and its twin in other spelling move the same.
func TestTwins(t *testing.T) {
	want := []string{"jump to z2 r20", "cut z2 r20 to z-10 r20", "cut cw z-10 r20 to z-13 r23 round z-10 r23", "cut z-13 r23 to z-13 r25"}
	for _, program := range []string{
		"G21 G99 G54 T0101 G0 X40. Z2.\nG1 Z-10. F.2\nG2 X46. Z-13. R3.\nG1 X50.\nM30",
		"G21 G99 G54 T0101 G0 X40. Z2.\nG1 W-12. F.2\nG2 U6. W-3. I3. K0\nG1 U4.\nM30",
		"n1g21g99g54t0101g0x40.z2.\nn2g1z-10.f.2;\nn3g2x46.z-13.i3.\nn4g1x50.\nn5m30",
		"G21 (mm)\nG99\nG54\nT101\nG00 X40 Z2\nG01 Z-10 F0.2\nG02 X46 Z-13 R3\nG01 X50\nM30",
		"G20 G99 G54 T0101 G0 X1.5748031496063 Z.0787401574803\nG1 Z-.3937007874016 F.0078740157480\nG2 X1.8110236220472 Z-.5118110236220 R.1181102362205\nG1 X1.9685039370079\nM30",
	} {
		trace, _ := run(t, lathe(t, "g90-turns"), program+"\n")
		assert.Equal(t, want, moves(trace), program)
	}
}

// A fault of ours is a finding at the block, never a panic.
func TestInternal(t *testing.T) {
	var found finding.List
	f := rs274.Parse(finding.NewText("p.nc", []byte("G0 X1.\nG1 X2.\nM30\n")), &found)
	f.Blocks[1].Words[0].Letter = '!' // no parser gives this
	trace := Interpret(f, lathe(t, "g90-turns"), &found)
	require.True(t, trace.Stopped)
	assert.Equal(t, []string{"internal 2:1"}, codes(found.Sorted()))
	assert.Equal(t, []string{"rapids from a place that is not known (line 1)", "everything from line 2 on"}, trace.NotJudged)
}
