package main

import (
	"flag"
	"math"
	"math/rand/v2"
	"sort"
	"testing"

	"github.com/stretchr/testify/assert"

	"taperwright/profiles"
	"taperwright/verify"
)

var everyPlace = flag.Bool("every-place", false, "try every mutant, not three places of each kind and example")

// The shares that the sweep must reach: of the mutants that count, how many
// are caught, and of those how many are blamed on the right line.
const (
	leastCaught = 0.95
	leastBlamed = 0.90
)

// moved is how far, in mm, a feature must move in the sampler's eyes for a
// mutant to count.
const moved = 0.005

// outline reads a sampler at the stations of every feature.
func outline(j judged, program string) []float64 {
	s := newSampler(program, j.part.Shop, j.part.Stock.Radius)
	zero := j.part.Setups[0].Zero
	var out []float64
	for _, f := range j.part.Features {
		a, b := f.Judged.From, f.Judged.To
		if f.Kind == profiles.Corner || a == b {
			continue
		}
		const stations = 24
		for i := range stations {
			t := (float64(i) + 0.5) / stations
			if a.Z == b.Z {
				if i%6 == 0 {
					r := a.R + t*(b.R-a.R)
					out = append(out, s.wall(r, a.Z-2+zero, a.Z+2+zero))
				}
				continue
			}
			h, _ := s.at(a.Z + t*(b.Z-a.Z) + zero)
			out = append(out, h)
		}
	}
	return out
}

func furthest(a, b []float64) (most float64) {
	for i := range a {
		most = math.Max(most, math.Abs(a[i]-b[i]))
	}
	return most
}

// One fault in a good program is caught, and blamed on its line or a
// neighbour. Survivors are logged, a line each.
func TestMutantsAreCaught(t *testing.T) {
	t.Chdir(top(t))
	const seed = 20261125
	t.Logf("seed %d", seed)
	rng := rand.New(rand.NewPCG(seed, 1))
	count, caught, blamed, kinds := 0, 0, 0, map[string]bool{}
	var survivors []string
	for _, ex := range examples(t) {
		good := judgeFile(t, ex.part, ex.program)
		before := outline(good, good.program)
		for _, kind := range mutantKinds {
			all := kind.mutants(good.program)
			if kind.hazard == "no-speed-cap" && len(all) > 1 {
				all = all[:1] // a later cap only repeats the first: nothing is lost with it
			}
			places := 3
			if testing.Short() {
				places = 1
			}
			if !*everyPlace && len(all) > places {
				rng.Shuffle(len(all), func(i, j int) { all[i], all[j] = all[j], all[i] })
				all = all[:places]
				sort.Slice(all, func(i, j int) bool { return all[i].line < all[j].line })
			}
			for _, m := range all {
				j := judge(t, ex.part, ex.program, m.program)
				if kind.hazard == "" && furthest(before, outline(good, m.program)) <= moved {
					continue // no feature moves: not a fault that the part shows
				}
				if kind.hazard == "rapid-in-metal" && furthest(before, outline(good, m.program)) <= moved && !hazard(j.verdict, kind.hazard) {
					continue // the pass met no metal
				}
				count++
				kinds[kind.name] = true
				shown := shows(good.verdict, j.verdict)
				if j.verdict.State == verify.Good && !hazard(j.verdict, kind.hazard) && len(shown) == 0 {
					survivors = append(survivors, ex.name+": "+m.String())
					continue
				}
				caught++
				if named(j.verdict, shown, m.line) {
					blamed++
				} else {
					survivors = append(survivors, ex.name+": blamed elsewhere: "+m.String())
				}
			}
		}
	}
	t.Logf("%d mutants of %d kinds count; caught %.1f %%, blamed %.1f %%", count, len(kinds), 100*float64(caught)/float64(count), 100*float64(blamed)/float64(caught))
	for _, s := range survivors {
		t.Log(s)
	}
	assert.GreaterOrEqual(t, len(kinds), 20)
	assert.GreaterOrEqual(t, float64(caught), leastCaught*float64(count))
	assert.GreaterOrEqual(t, float64(blamed), leastBlamed*float64(caught))
}

func hazard(v *verify.Verdict, code string) bool {
	for _, f := range v.Findings {
		if code != "" && f.Code == code {
			return true
		}
	}
	return false
}

// shows returns the rows whose figures differ by more than a micrometre
// between two verdicts: what a move inside the tolerance shows itself by.
func shows(a, b *verify.Verdict) map[int]bool {
	out := map[int]bool{}
	for i := range min(len(a.Rows), len(b.Rows)) {
		for _, pair := range [][2]verify.Figures{{a.Rows[i].Cut, b.Rows[i].Cut}, {a.Rows[i].Off, b.Rows[i].Off}} {
			for _, x := range pair[0] {
				if y, known := pair[1].Get(x.Key); known != x.Known || math.Abs(x.Value-y) > 0.001 {
					out[i] = true
				}
			}
		}
	}
	return out
}

// named tells whether a finding, a place it speaks of, or the blocks of a row
// that is not in or has moved name the line or a neighbour of it.
func named(v *verify.Verdict, shown map[int]bool, line int) bool {
	near := func(n int) bool { return n >= line-1 && n <= line+1 }
	for _, f := range v.Findings {
		if f.Span.Valid() && near(f.Span.From().Line) {
			return true
		}
		for _, p := range f.Places {
			if p.Span.Valid() && near(p.Span.From().Line) {
				return true
			}
		}
	}
	for i, r := range v.Rows {
		if r.Verdict == verify.In && !shown[i] {
			continue
		}
		for _, p := range r.Blocks {
			if near(p.Line) {
				return true
			}
		}
	}
	return false
}
