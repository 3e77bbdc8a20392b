package motion

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"taperwright/profiles/finding"
	"taperwright/verify/rs274"
)

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
