package main

import (
	"fmt"
	"math"
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"taperwright/verify/motion"
)

// agreement is how far verifier and sampler may differ: 1 micrometre, normal
// to the surface.
const agreement = 0.001

// disagree returns the places where the verifier's stock and the sampler's
// differ by more than agreement, and how many were compared.
func disagree(t testing.TB, j judged, step float64) (bad []string, compared int) {
	t.Helper()
	zero := j.part.Setups[0].Zero
	s := newSampler(j.program, j.part.Shop, j.part.Stock.Radius)
	back := j.part.Stock.Front - j.part.Stock.Length
	surfaces := j.verdict.Stock.Outside()
	for _, f := range surfaces {
		a, b := f.Piece.From, f.Piece.To
		if a.Z == b.Z {
			if len := math.Abs(a.R - b.R); len > 0.02 && a.Z > back+1e-9 && a.Z < j.part.Stock.Front-1e-9 && f.Owner >= 0 {
				inner, outer := a.Z-0.3, a.Z+0.3 // metal behind, none in front
				if a.R > b.R {
					inner, outer = outer, inner
				}
				mid := (a.R + b.R) / 2
				if hIn, _ := s.at(inner + zero); hIn < mid {
					continue // the metal behind is thinner than the search
				}
				if hOut, _ := s.at(outer + zero); hOut >= mid {
					continue // a groove narrower than the search
				}
				compared++
				if z := s.wall(mid, inner+zero, outer+zero) - zero; !(math.Abs(z-a.Z) <= agreement) {
					bad = append(bad, fmt.Sprintf("face at Z%.4f (R%.3f): sampler %.4f", a.Z, mid, z))
				}
			}
			continue
		}
		// whole multiples of the step plus an odd offset: never on a wall by design
		for n := math.Ceil(b.Z / step); n*step+0.00137*step < a.Z; n++ {
			z := n*step + 0.00137*step
			if z <= b.Z+2*agreement || z >= a.Z-2*agreement {
				continue // a station this near a wall measures the wall
			}
			compared++
			want := f.Piece.RAt(z)
			got, line := s.at(z + zero)
			slope := 0.0
			if d := f.Piece.RAt(z+1e-6) - f.Piece.RAt(z-1e-6); d != 0 {
				slope = d / 2e-6
			}
			if off := (got - want) / math.Sqrt(1+slope*slope); !(math.Abs(off) <= agreement) {
				bad = append(bad, fmt.Sprintf("Z%.4f: verifier R%.5f, sampler R%.5f (line %d)", z, want, got, line))
			}
		}
	}
	return bad, compared
}

func first(list []string, n int) []string { return list[:min(n, len(list))] }

// Verifier and sampler, which share no line, leave the same metal of every
// example: to a micrometre at every station of 0.02 mm.
func TestSamplerAgreesOnExamples(t *testing.T) {
	t.Chdir(top(t))
	step := 0.02
	if testing.Short() {
		step = 0.5
	}
	for _, ex := range examples(t) {
		t.Run(ex.name, func(t *testing.T) {
			t.Parallel()
			bad, compared := disagree(t, judgeFile(t, ex.part, ex.program), step)
			assert.Empty(t, first(bad, 10), "%d of %d", len(bad), compared)
			assert.Greater(t, compared, 100)
			t.Logf("%d places compared", compared)
		})
	}
}

// The same on the plain G0 to G3 twin of every hand-written program, which
// cuts the very same paths.
func TestSamplerAgreesOnHandWrittenPrograms(t *testing.T) {
	names, err := filepath.Glob(filepath.Join(top(t), "testdata", "programs", "*.nc"))
	require.NoError(t, err)
	require.NotEmpty(t, names)
	step := 0.02
	if testing.Short() {
		step = 0.5
	}
	for _, name := range names {
		t.Run(filepath.Base(name), func(t *testing.T) {
			t.Parallel()
			text, err := os.ReadFile(name)
			require.NoError(t, err)
			w := readWants(t, name, string(text))
			if w.verdict == "cannot-judge" {
				return // nothing was cut to the end
			}
			var assume []string
			for i, a := range w.args {
				if a == "--assume" {
					assume = append(assume, w.args[i+1])
				}
			}
			program, twin := judge(t, w.part, name, string(text), assume...), judgeFile(t, w.part, w.twin)
			assert.Equal(t, cuts(twin), cuts(program), "the twin cuts other paths")
			twin.verdict = program.verdict
			bad, compared := disagree(t, twin, step)
			assert.Empty(t, first(bad, 10), "%d of %d", len(bad), compared)
			assert.Greater(t, compared, 20)
		})
	}
}

// cuts returns the paths of a program's feed moves, to 1e-7 mm.
func cuts(j judged) (paths []string) {
	for _, m := range j.verdict.Runs[0].Trace.Motions {
		if m.Kind == motion.Cut {
			paths = append(paths, m.Path.String())
		}
	}
	return paths
}
