package post

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"taperwright/profiles/geom"
	"taperwright/profiles/shop"
)

// Random arcs of 0.1 to 60 mm, up to a half turn by I K and a quarter by R:
// start and end keep equally far from the centre within one unit of the words,
// and the middle of what a control cuts within 1.5 units of the wanted arc.
// Each end is off by at most half a unit each way, q/sqrt 2, and so is the
// chord; the centre, rounded by as much, adds to the gap what its two
// distances differ by, which the neighbours tried make small.
func TestArcsKeepTheirShape(t *testing.T) {
	seed := rand.Uint64()
	t.Logf("seed %d", seed)
	r := rand.New(rand.NewPCG(seed, 1))
	for _, f := range []format{
		{unit: shop.MM, decimals: 3, diameter: true, one: 0.001},
		{unit: shop.MM, decimals: 3, diameter: false, one: 0.001},
		{unit: shop.Inch, decimals: 4, diameter: true, one: 0.00254},
	} {
		worst := fitting{}
		for range 3000 {
			size := 0.1 * math.Exp(r.Float64()*math.Log(600))
			c := at(-100*r.Float64(), 60*r.Float64())
			turn := geom.Turn(1 - 2*r.IntN(2))
			a := 2 * math.Pi * r.Float64()
			sweep := (0.005 + 0.995*r.Float64()*r.Float64()) * math.Pi
			on := func(a float64) geom.Point { return c.Add(at(size*geom.Cos(a), size*geom.Sin(a))) }
			p := geom.Arc(on(a), on(a+float64(turn)*sweep), c, turn)
			from, to := f.point(f.spot(p.From)), f.point(f.spot(p.To))
			if from.Sub(to).Len() < 3*f.one {
				continue
			}
			_, _, fit := f.byCentre(p, from, to, 2*f.one)
			worst = fitting{max(worst.gap, fit.gap), max(worst.off, fit.off)}
			require.LessOrEqual(t, fit.gap, f.one, "%v", p)
			require.LessOrEqual(t, fit.off, 1.5*f.one, "%v", p)

			for _, q := range halves(p, int(math.Ceil(sweep/mostByR))) {
				from, to := f.point(f.spot(q.From)), f.point(f.spot(q.To))
				n, fit := f.byRadius(q, from, to)
				require.Greater(t, n, int64(0))
				require.LessOrEqual(t, fit.off, f.one, "%v", q)
				require.GreaterOrEqual(t, f.mm(n), from.Sub(to).Len()/2)
			}
		}
		t.Logf("%v: gap at most %.5f, off at most %.5f", f, worst.gap, worst.off)
	}
}

// The fits are no worse than plain rounding.
func TestFitIsNoWorseThanRounding(t *testing.T) {
	f := format{unit: shop.MM, decimals: 3, diameter: true, one: 0.001}
	p := geom.Arc(at(0, 10), at(0, 10).Add(at(1.2*geom.Sin(1)*-1, 1.2*(1-geom.Cos(1)))), at(0, 11.2), geom.CW)
	from, to := f.point(f.spot(p.From)), f.point(f.spot(p.To))
	i, k, fit := f.byCentre(p, from, to, 2*f.one)
	lead := p.Center.Sub(from)
	c := from.Add(geom.Point{R: f.mm(f.length(lead.R)), Z: f.mm(f.length(lead.Z))})
	rounded := fitting{math.Abs(c.Sub(from).Len() - c.Sub(to).Len()), off(p, centred(c, from, to, p.Turn))}
	assert.False(t, rounded.better(fit), "%v %v: %v, rounded %v", i, k, fit, rounded)
	// where ends and centre stand on the words already, they are kept
	p = geom.Arc(at(-3, 10), at(-4.2, 11.2), at(-3, 11.2), geom.CW)
	i, k, fit = f.byCentre(p, p.From, p.To, 0.002)
	assert.Equal(t, [2]int64{1200, 0}, [2]int64{i, k})
	near(t, 0, max(fit.gap, fit.off), 1e-12)
}

// By R no block turns more than a quarter; the parts join.
func TestHalves(t *testing.T) {
	p := geom.Arc(at(0, 10), at(0, 30), at(0, 20), geom.CW)
	near(t, math.Pi, p.Sweep(), 1e-12)
	got := halves(p, 3)
	require.Len(t, got, 4) // three would leave one above a quarter
	require.Len(t, halves(p, 2), 2)
	require.Len(t, halves(p, 1), 1)
	sum := 0.0
	for i, q := range got {
		sum += q.Sweep()
		if i > 0 {
			assert.Equal(t, got[i-1].To, q.From)
		}
	}
	near(t, math.Pi, sum, 1e-12)
}
