package stock

import (
	"fmt"
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/require"

	"taperwright/profiles/geom"
)

// program returns about n moves as a program cuts: a bar of radius 50 and
// 400 mm is roughed by levels, n / 100 of them (in, along, out under 45
// degrees, back), to a cone with waves on it, then followed in short moves by
// three semi-finishing passes and a finishing one.
func program(n int) []move {
	o := outlineOf(turning(0.8, 95, 80))
	var ms []move
	at := pt(5, 55)
	to := func(z, r float64) {
		ms = append(ms, move{o, geom.Line(at, pt(z, r))})
		at = pt(z, r)
	}
	// the wanted path of the nose centre
	wanted := func(z float64) float64 { return 20.8 - 0.05*z + 0.5*math.Sin(z/15) - 0.01*math.Sin(z) }
	levels := n / 100
	for i := range levels {
		r := 51 - 30*float64(i+1)/float64(levels)
		z := 2.0 // how far the level may go
		for z > -398 && wanted(z)+0.4 <= r {
			z -= 0.37
		}
		to(3, r)
		to(z, r)
		to(z+1, r+1)
		to(3, r+1)
	}
	left := (n - len(ms)) / 4
	for _, skin := range []float64{0.3, 0.2, 0.1, 0} {
		to(3, 55)
		for i := range left {
			z := 2 - 400*float64(i)/float64(left)
			to(z, wanted(z)+skin)
		}
		to(-398, 55)
	}
	return ms
}

func orders(ms []move) map[string][]move {
	shuffled := append([]move(nil), ms...)
	rand.New(rand.NewPCG(1, 2)).Shuffle(len(ms), func(i, j int) { shuffled[i], shuffled[j] = shuffled[j], shuffled[i] })
	reversed := append([]move(nil), ms...)
	for i, j := 0, len(ms)-1; i < j; i, j = i+1, j-1 {
		reversed[i], reversed[j] = reversed[j], reversed[i]
	}
	return map[string][]move{"program": ms, "shuffled": shuffled, "reversed": reversed}
}

var orderNames = []string{"program", "shuffled", "reversed"}

func BenchmarkCut(b *testing.B) {
	for _, n := range []int{1e3, 1e4, 1e5} {
		all := orders(program(n))
		for _, name := range orderNames {
			b.Run(fmt.Sprintf("%s/%d", name, n), func(b *testing.B) {
				ms := all[name]
				var visited int
				for b.Loop() {
					s := New(bar(50, 420, 0), nil, Hold{})
					visited = 0
					for i, m := range ms {
						visited += s.Cut(m.o, m.path, i).Visited
					}
				}
				b.ReportMetric(float64(len(ms))*float64(b.N)/b.Elapsed().Seconds(), "moves/s")
				b.ReportMetric(float64(visited)/float64(len(ms)), "pieces/move")
			})
		}
	}
}

// ownPieces is what a move costs besides the pieces it visits: an envelope of
// about four pieces of its own.
const ownPieces = 4

// A cut visits only the pieces in its z range that it may cut. Ten times the
// moves cost at most twelve times as much.
func TestVisited(t *testing.T) {
	sizes := []int{1e4, 1e5}
	if testing.Short() {
		sizes = []int{1e3, 1e4}
	}
	cost := map[string][]int{}
	for _, n := range sizes {
		all := orders(program(n))
		area := 0.0
		for _, name := range orderNames {
			s := New(bar(50, 420, 0), nil, Hold{})
			visited := cutAll(s, all[name]).Visited
			t.Logf("%s, %d moves: %.2f pieces a move", name, n, float64(visited)/float64(n))
			require.LessOrEqual(t, visited, 12*n)
			cost[name] = append(cost[name], visited+ownPieces*n)
			if area == 0 {
				area = s.Area()
			}
			near(t, area, s.Area(), 1e-6, name)
			sound(t, s)
		}
	}
	for _, name := range orderNames {
		require.LessOrEqual(t, cost[name][1], 12*cost[name][0], name)
	}
}
