package verify

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"taperwright/profiles/finding"
)

// longProgram turns a bar down in many shallow passes, each of a hundred
// short moves along a gentle wave, then cuts the cone of frontCone(10).
func longProgram(moves int) string {
	var b strings.Builder
	b.WriteString("G21 G99\nG97 S800\nT0101\nM4\nF0.1\nG0 X64. Z2.\n")
	const per = 100
	passes := max(moves/(per+4), 1)
	for p := range passes {
		r := 40 - 1.5*float64(p+1)/float64(passes) // diameter: down to 38.5
		fmt.Fprintf(&b, "G0 X%.4f\n", r)
		for i := 1; i <= per; i++ {
			fmt.Fprintf(&b, "G1 X%.4f Z%.4f\n", r+0.0004*float64(i%7), 2-34*float64(i)/per)
		}
		b.WriteString("X44.\nG0 Z2.\n")
	}
	b.WriteString("G0 X19.722\nG1 X21.922 Z-20.\nX38.\nZ-32.\nX64.\nG0 X100. Z50.\nM30\n")
	return b.String()
}

// The pieces of the boundary that a check looks at grow hardly faster than
// the moves: 10 times the moves cost at most 12 times the visits.
func TestVisitsGrowWithMoves(t *testing.T) {
	part := partOf(t, 0.8, frontCone(10))
	visits := func(moves int) int {
		var found finding.List
		b := newBench(part, 0, &found)
		text := finding.NewText("long.nc", []byte(longProgram(moves)))
		require.True(t, b.run(text, 0, readOne(part, text, &found)))
		assert.Zero(t, b.judging)
		return b.visited
	}
	few, many := visits(2_000), visits(20_000)
	require.NotZero(t, few)
	assert.LessOrEqual(t, many, 12*few, "%d visits at 2,000 moves, %d at 20,000", few, many)
}

func BenchmarkCheck(b *testing.B) {
	part := partOf(b, 0.8, frontCone(10))
	for _, moves := range []int{1_000, 10_000, 100_000} {
		text := []byte(longProgram(moves))
		b.Run(fmt.Sprint(moves), func(b *testing.B) {
			b.ReportAllocs()
			n := 0
			for b.Loop() {
				var found finding.List
				v := Check([]*finding.Text{finding.NewText("long.nc", text)}, part, Options{}, &found)
				require.Equal(b, Good, v.State)
				n = v.Totals.Motions
			}
			b.ReportMetric(float64(n)*float64(b.N)/b.Elapsed().Seconds(), "moves/s")
		})
	}
}
