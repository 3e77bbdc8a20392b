package motion

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"taperwright/profiles/finding"
	"taperwright/profiles/shop"
	"taperwright/verify/rs274"
)

// FuzzInterpret holds, for any text: no panic, places inside the text, finite
// coordinates, motions that follow one another (all in run), and a trace that
// does not depend on comments.
func FuzzInterpret(f *testing.F) {
	for _, s := range []string{
		head + "G1 Z-10. F.2\nG2 X46. Z-13. R3.\nG3 X50. Z-15. I0 K-2.\nM30\n",
		"G20 G96 S300 M4\nT2 M6\nG28 U0 W0\nG50 X4. Z5. S2000\nG0 X1. Z.1\nG1 X-.06 F.005\nT0200\nG0 X9.\nM99",
		"/2 G0 X1 (a) /Z2\nG4 X2\nG91 G1 X#1\nG53 X0\nG55\nO2", "G42 G1 X1.\nG41 T3\nM5 G0 X1 Z1", "G2 X0 Z0 R-5 F1\nG3 I1",
		"G50 X1.\nG54 X2. Z0\nG50 Z3.\nW-1. U2.\nG99 F1 G1 Z-999999", "G80 X1\nM98 P1\nG71 U1", "G0X5(",
	} {
		for column := range byte(5) {
			f.Add(s, column)
		}
	}
	f.Fuzz(func(t *testing.T, program string, column byte) {
		columns := shop.Columns()
		s := lathe(t, columns[int(column)%len(columns)])
		if column >= 128 {
			home(&s.Machine)
			s.Machine.Slash.Value = "skip"
			s.Machine.MissingPoint.Value = shop.Increment
			s.Machine.Frames = map[string]shop.Place{"G55": {Z: -30, R: 1}}
		}
		trace, found := run(t, s, program)
		if len(found) > 200 {
			t.Fatalf("%d findings", len(found))
		}
		blanked := blankComments(program, true)
		var dropped finding.List
		again := Interpret(rs274.Parse(finding.NewText("p.nc", []byte(blanked)), &dropped), s, &dropped)
		require.Equal(t, trace.String(), again.String(), blanked)
	})
}

// program makes n blocks as a planner posts them.
func program(n int) string {
	var s strings.Builder
	s.WriteString("%\nO1\nG21 G99 G54 T0101\nG50 S2500\nG96 S180 M4\nG0 X60. Z2.\nG1 Z0 F.25\n")
	for i := range n {
		if i%50 == 49 {
			fmt.Fprintf(&s, "N%d G3 X%d.%03d Z-%d.5 R400.\nG1\n", i+1, 40+i%20, i%1000, i%300)
		} else {
			fmt.Fprintf(&s, "N%d X%d.%03d Z-%d.%03d\n", i+1, 40+i%20, i%1000, i%300, (i*7)%1000)
		}
	}
	s.WriteString("M30\n%\n")
	return s.String()
}

func BenchmarkInterpret(b *testing.B) {
	const blocks = 100_000
	s := lathe(b, "g90-turns")
	text := finding.NewText("p.nc", []byte(program(blocks)))
	var found finding.List
	f := rs274.Parse(text, &found)
	b.ReportAllocs()
	motions := 0
	for b.Loop() {
		motions = len(Interpret(f, s, &found).Motions)
	}
	if motions < blocks*9/10 {
		b.Fatalf("%d motions: %v", motions, found.Sorted())
	}
	b.ReportMetric(float64(b.N)*float64(motions)/b.Elapsed().Seconds(), "motions/s")
}

func BenchmarkParseAndInterpret(b *testing.B) {
	const blocks = 100_000
	s := lathe(b, "g90-turns")
	text := finding.NewText("p.nc", []byte(program(blocks)))
	b.ReportAllocs()
	for b.Loop() {
		var found finding.List
		Interpret(rs274.Parse(text, &found), s, &found)
	}
	b.ReportMetric(float64(b.N)*blocks/b.Elapsed().Seconds(), "blocks/s")
}
