package verify

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"taperwright/profiles/geom"
)

func at(z, r float64) geom.Point { return geom.Point{Z: z, R: r} }

func TestCutUpArcs(t *testing.T) {
	// a half circle over the top, run back: extremes at the side, the top and
	// the other side, diagonals between: four bits of 45 degrees each
	bits := cutUp(nil, geom.Arc(at(5, 0), at(-5, 0), at(0, 0), geom.CCW), 3)
	require.Len(t, bits, 4)
	d := 5 * math.Sqrt2 / 2
	assert.InDelta(t, d, bits[0].To.Z, 1e-12)
	assert.InDelta(t, d, bits[0].To.R, 1e-12)
	assert.Equal(t, at(0, 5), bits[1].To)
	for _, b := range bits {
		assert.Equal(t, 3, b.owner)
	}
	assert.Empty(t, cutUp(nil, geom.Line(at(1, 1), at(1, 1)), 0), "no length, no bit")
}

func TestBetweenLeavesFacesAtItsPlanes(t *testing.T) {
	step := cutUp(cutUp(cutUp(nil, geom.Line(at(0, 10), at(-20, 10)), 0), geom.Line(at(-20, 10), at(-20, 15)), 1), geom.Line(at(-20, 15), at(-40, 15)), 2)
	front := between(step, 0, -20)
	require.Len(t, front, 1, "the face at the plane is the neighbour's")
	assert.Equal(t, geom.Line(at(0, 10), at(-20, 10)), front[0].Piece)
	across := between(step, -10, -30)
	require.Len(t, across, 3)
	assert.Equal(t, at(-10, 10), across[0].From)
	assert.Equal(t, at(-30, 15), across[2].To)
	high := ring(step, 12, 20)
	require.Len(t, high, 2)
	assert.Equal(t, at(-20, 12), high[0].From)
}

// The least-squares line of a line is itself; of two lines it is what the sum
// over their pieces says.
func TestFit(t *testing.T) {
	want := geom.Line(at(0, 20), at(-10, 21))
	l, ok := fit(cutUp(nil, want, 0), lineOf(geom.Line(at(0, 20), at(-10, 20))))
	require.True(t, ok)
	assert.InDelta(t, 20.5, l.rAt(-5), 1e-12)
	assert.InDelta(t, -0.1, l.d.R/l.d.Z, 1e-12)

	// r = 1 over half the length, 0 over the other half (with a step between):
	// least squares of a step of h over L: mean h/2, slope 3h/(2L)
	step := cutUp(cutUp(cutUp(nil, geom.Line(at(0, 0), at(-5, 0)), 0), geom.Line(at(-5, 0), at(-5, 1)), 0), geom.Line(at(-5, 1), at(-10, 1)), 0)
	l, ok = fit(step, lineOf(geom.Line(at(0, 0), at(-10, 0))))
	require.True(t, ok)
	assert.InDelta(t, 0.5, l.rAt(-5), 1e-12)
	assert.InDelta(t, -3.0/20, l.d.R/l.d.Z, 1e-12)

	_, ok = fit(nil, line{d: at(-1, 0)})
	assert.False(t, ok)
}

// An arc's line against the sum of fine chords (another formulation), in a
// frame that is not the axis.
func TestFitArcAgainstChords(t *testing.T) {
	seed := uint64(20260714)
	t.Logf("seed %d", seed)
	rnd := rand.New(rand.NewPCG(seed, 0))
	for range 50 {
		c, r := at(rnd.Float64()*10-5, 20+rnd.Float64()*5), 2+rnd.Float64()*30
		a0 := math.Pi/2 - 0.6*rnd.Float64()
		a1 := a0 + 0.1 + 0.5*rnd.Float64()
		p := func(a float64) geom.Point { return at(c.Z+r*math.Cos(a), c.R+r*math.Sin(a)) }
		arc := geom.Arc(p(a0), p(a1), c, geom.CCW)
		along := line{p(a0), p(a1).Sub(p(a0)).Unit()}
		var chords []bit
		const n = 4000
		for i := range n {
			chords = append(chords, bit{geom.Line(p(a0+(a1-a0)*float64(i)/n), p(a0+(a1-a0)*float64(i+1)/n)), 0})
		}
		x, ok := fit(cutUp(nil, arc, 0), along)
		y, ok2 := fit(chords, along)
		require.True(t, ok && ok2)
		// a chord of angle w stands r w²/8 off its arc
		tol := r*math.Pow((a1-a0)/n, 2)/8 + 1e-9
		assert.InDelta(t, 0, normalTo(x).at(y.p), tol)
		assert.InDelta(t, 1, x.d.Dot(y.d), 1e-12)
	}
}

func TestExtremesOnArcs(t *testing.T) {
	// a dome of R5 over a flat line: highest where the tangent lies along it
	bits := cutUp(nil, geom.Arc(at(3, 4), at(-3, 4), at(0, 0), geom.CCW), 7)
	least, most, ok := normalTo(lineOf(geom.Line(at(3, 4), at(-3, 4)))).extremes(bits)
	require.True(t, ok)
	assert.InDelta(t, 1, most.value, 1e-12)
	assert.Equal(t, at(0, 5), most.at)
	assert.InDelta(t, 0, least.value, 1e-12)
	assert.Equal(t, 7, most.owner)
}

// The radius of the arc that touches both lines of a corner through a place,
// for right-angled and other corners, by hand and from the arc itself.
func TestWedge(t *testing.T) {
	w, ok := newWedge(line{at(0, 10), at(-1, 0)}, line{at(-20, 10), at(0, 1)})
	require.True(t, ok)
	assert.Equal(t, at(-20, 10), w.tip)
	assert.InDelta(t, 0.8, w.zone(0.8), 1e-12) // R tan 45
	// a, b from the lines: r = a + b + sqrt(2ab); 0.1 and 0.1: 0.2 + 0.1414214
	assert.InDelta(t, 0.3414214, w.radius(at(-19.9, 10.1)), 1e-7)
	// 0.05 and 0.2: 0.25 + 0.1414214
	assert.InDelta(t, 0.3914214, w.radius(at(-19.8, 10.05)), 1e-7)

	for _, turn := range []float64{10, 45, 80, 90, 120} {
		s, c := math.Sin(turn*math.Pi/180), math.Cos(turn*math.Pi/180)
		in, out := line{at(0, 10), at(-1, 0)}, line{at(-20, 10), at(-c, s)}
		w, ok := newWedge(in, out)
		require.True(t, ok)
		assert.InDelta(t, 1.2*math.Tan(turn*math.Pi/360), w.zone(1.2), 1e-12)
		zone := w.zone(1.2)
		arc := geom.Arc(at(-20+zone, 10), at(-20-zone*c, 10+zone*s), at(-20+zone, 11.2), geom.CW)
		_, most, any := w.reach(cutUp(nil, arc, 5))
		require.True(t, any)
		assert.InDelta(t, 1.2, most.value, 1e-6, "turn %v", turn)
		assert.Equal(t, 5, most.owner)
	}
	// a sharp corner keeps nothing
	_, _, any := w.reach(cutUp(cutUp(nil, geom.Line(at(-10, 10), at(-20, 10)), 0), geom.Line(at(-20, 10), at(-20, 20)), 0))
	assert.False(t, any)
	// a flat of 45 degrees across the corner, 0.5 along each line: its middle
	// is 0.25 from both, r = 0.5 + sqrt(2)/4 = 0.8535534
	_, most, any := w.reach(cutUp(nil, geom.Line(at(-19.5, 10), at(-20, 10.5)), 0))
	require.True(t, any)
	assert.InDelta(t, 0.8535534, most.value, 1e-7)
}
