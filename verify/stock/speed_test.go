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
// 400 mm is roughed by levels to a contour of cones, arcs and journals (in,
// along, out under 45 degrees, back), then finished along it in short moves.
func program(n int) []move {
	o := outlineOf(turning(0.8, 95, 80))
	var ms []move
	at := pt(5, 55)
	to := func(z, r float64) {
		ms = append(ms, move{o, geom.Line(at, pt(z, r))})
		at = pt(z, r)
	}
	// the contour of the nose centre: a cone with a wave on it, growing
	// toward the chuck
	wanted := func(z float64) float64 { return 20.8 - 0.05*z + 1.5*math.Sin(z/15) - 0.02*math.Sin(z) }
	levels := n / 3 / 4
	for i := range levels {
		r := 51 - 30*float64(i+1)/float64(levels)
		// how far along z the level may go
		z := 2.0
		for z > -398 && wanted(z) <= r {
			z -= 0.37
		}
		to(3, r)
		to(z, r)
		to(z+1, r+1)
		to(3, r+1)
	}
	left := n - len(ms)
	for i := range left {
		z := 2 - 400*float64(i)/float64(left)
		to(z, wanted(z))
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

// mostGrowth is how many times the pieces may be visited at ten times the
// moves. Twelve is wanted and not reached: a finishing move still looks at all
// it finished under its minor edge. The figure may only fall.
const mostGrowth = 41

// A cut visits only the pieces in its z range.
func TestVisited(t *testing.T) {
	visited := map[string][]int{}
	area := map[string]float64{}
	sizes := []int{1e3, 1e4}
	for _, n := range sizes {
		all := orders(program(n))
		for _, name := range orderNames {
			s := New(bar(50, 420, 0), nil, Hold{})
			sum := cutAll(s, all[name])
			visited[name] = append(visited[name], sum.Visited)
			area[name] = s.Area()
			if name == "program" {
				require.NotEmpty(t, s.Outside())
			}
			sound(t, s)
		}
		near(t, area["program"], area["shuffled"], 1e-6)
		near(t, area["program"], area["reversed"], 1e-6)
	}
	for _, name := range orderNames {
		v := visited[name]
		t.Logf("%s: %.2f and %.2f pieces a move", name, float64(v[0])/float64(sizes[0]), float64(v[1])/float64(sizes[1]))
		require.LessOrEqual(t, v[1], mostGrowth*v[0], name)
	}
}
