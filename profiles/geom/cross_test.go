package geom

import (
	"math"
	"math/big"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/require"
)

func TestCrossingsByHand(t *testing.T) {
	// circle of radius 5 round (0, 0), all but a sliver at its right
	round := Arc(Point{4.8, 1.4}, Point{4.8, -1.4}, Point{0, 0}, CCW) // 1.4² + 4.8² = 25
	cap := Arc(Point{3, 4}, Point{-3, 4}, Point{0, 0}, CCW)
	for name, c := range map[string]struct {
		a, b Piece
		want []Point
	}{
		"lines cross":                {Line(Point{0, 0}, Point{4, 4}), Line(Point{0, 4}, Point{4, 0}), []Point{{2, 2}}},
		"lines miss":                 {Line(Point{0, 0}, Point{1, 1}), Line(Point{0, 4}, Point{4, 0}), nil},
		"lines parallel":             {Line(Point{0, 0}, Point{4, 0}), Line(Point{0, 1}, Point{4, 1}), nil},
		"end on the side":            {Line(Point{0, 0}, Point{4, 0}), Line(Point{1, 0}, Point{1, 5}), []Point{{1, 0}}},
		"end on end":                 {Line(Point{0, 0}, Point{4, 0}), Line(Point{4, 0}, Point{9, 3}), []Point{{4, 0}}},
		"overlap":                    {Line(Point{0, 0}, Point{4, 0}), Line(Point{7, 0}, Point{1, 0}), []Point{{1, 0}, {4, 0}}},
		"one within the other":       {Line(Point{7, 0}, Point{1, 0}), Line(Point{2, 0}, Point{4, 0}), []Point{{4, 0}, {2, 0}}},
		"end to end, one direction":  {Line(Point{0, 0}, Point{4, 0}), Line(Point{4, 0}, Point{9, 0}), []Point{{4, 0}}},
		"in line, apart":             {Line(Point{0, 0}, Point{4, 0}), Line(Point{5, 0}, Point{9, 0}), nil},
		"line through a circle":      {Line(Point{-10, 3}, Point{10, 3}), round, []Point{{-4, 3}, {4, 3}}},
		"back through it":            {Line(Point{10, 3}, Point{-10, 3}), round, []Point{{4, 3}, {-4, 3}}},
		"order along the arc":        {round, Line(Point{-10, 3}, Point{10, 3}), []Point{{4, 3}, {-4, 3}}},
		"order along the arc, back":  {round.Reverse(), Line(Point{-10, 3}, Point{10, 3}), []Point{{-4, 3}, {4, 3}}},
		"line ends inside":           {Line(Point{-10, 3}, Point{0, 3}), round, []Point{{-4, 3}}},
		"line touches":               {Line(Point{-9, 5}, Point{9, 5}), round, []Point{{0, 5}}},
		"line touches from a slant":  {Line(Point{-1, 7}, Point{7, 1}), round, []Point{{3, 4}}}, // square to 3, 4
		"line just off":              {Line(Point{-9, 5.00001}, Point{9, 5.00001}), round, nil},
		"line through the gap":       {Line(Point{4.9, -9}, Point{4.9, 9}), round, nil},
		"line meets the arc's end":   {Line(Point{0, 0}, Point{9, 12}), cap, []Point{{3, 4}}},
		"two circles, 6 apart":       {round, Arc(Point{6, 5}, Point{6, -5}, Point{6, 0}, CCW), []Point{{3, 4}, {3, -4}}},
		"circles touch outside":      {round, Arc(Point{-8, 3}, Point{-8, -3}, Point{-8, 0}, CW), []Point{{-5, 0}}},
		"circles touch inside":       {round, Arc(Point{-3, 2}, Point{-3, -2}, Point{-3, 0}, CCW), []Point{{-5, 0}}},
		"inside, the other way":      {Arc(Point{-3, 2}, Point{-3, -2}, Point{-3, 0}, CCW), round, []Point{{-5, 0}}},
		"circle within":              {round, Arc(Point{1, 0}, Point{-1, 0}, Point{0, 0}, CCW), nil},
		"same circle, overlap":       {cap, Arc(Point{0, 5}, Point{-5, 0}, Point{0, 0}, CCW), []Point{{0, 5}, {-3, 4}}},
		"same circle, overlap twice": {Arc(Point{3, 4}, Point{3, -4}, Point{0, 0}, CCW), Arc(Point{-3, -4}, Point{-3, 4}, Point{0, 0}, CCW), []Point{{3, 4}, {-3, 4}, {-3, -4}, {3, -4}}},
		"same circle, end to end":    {cap, Arc(Point{-3, 4}, Point{-5, 0}, Point{0, 0}, CCW), []Point{{-3, 4}}},
		"fillet meets its line":      {Line(Point{0, 0}, Point{0, 8}), Arc(Point{0, 8}, Point{-2, 10}, Point{-2, 8}, CCW), []Point{{0, 8}}},
		"a point on a line":          {Line(Point{2, 0}, Point{2, 0}), Line(Point{0, 0}, Point{4, 0}), []Point{{2, 0}}},
	} {
		got := Crossings(c.a, c.b)
		require.Len(t, got, len(c.want), "%s: %v", name, got)
		for i := range got {
			nearPoint(t, c.want[i], got[i], 1e-13, name)
		}
	}
}

func TestLinesMeet(t *testing.T) {
	q, ok := LinesMeet(Point{0, 0}, Point{1, 0}, Point{5, 5}, Point{0, -2})
	require.True(t, ok)
	nearPoint(t, Point{5, 0}, q, 1e-15)
	_, ok = LinesMeet(Point{0, 0}, Point{1, 0}, Point{5, 5}, Point{-3, 0})
	require.False(t, ok)
	_, ok = LinesMeet(Point{0, 0}, Point{1, 1e-13}, Point{5, 5}, Point{-3, 0})
	require.False(t, ok)
}

// bigOff returns how far q lies from the carrier of p, at 200 bits.
func bigOff(p Piece, q Point) float64 {
	b := func(v float64) *big.Float { return new(big.Float).SetPrec(200).SetFloat64(v) }
	sub := func(x, y float64) *big.Float { return b(0).Sub(b(x), b(y)) }
	mul := func(x, y *big.Float) *big.Float { return b(0).Mul(x, y) }
	length := func(z, r *big.Float) *big.Float { return b(0).Sqrt(b(0).Add(mul(z, z), mul(r, r))) }
	var d *big.Float
	if p.IsLine() {
		dz, dr := sub(p.To.Z, p.From.Z), sub(p.To.R, p.From.R)
		l := length(dz, dr)
		if l.Sign() == 0 {
			d = length(sub(q.Z, p.From.Z), sub(q.R, p.From.R))
		} else {
			d = b(0).Sub(mul(dz, sub(q.R, p.From.R)), mul(dr, sub(q.Z, p.From.Z)))
			d.Quo(d, l)
		}
	} else {
		r := func(e Point) *big.Float { return length(sub(e.Z, p.Center.Z), sub(e.R, p.Center.R)) }
		mean := b(0).Quo(b(0).Add(r(p.From), r(p.To)), b(2))
		d = b(0).Sub(r(q), mean)
	}
	f, _ := d.Abs(d).Float64()
	return f
}

// checkCrossings holds the laws of Cross for one pair.
func checkCrossings(t testing.TB, a, b Piece) {
	t.Helper()
	got := Crossings(a, b)
	// each lies on both carriers within Near (and a hair of rounding of the
	// measure itself) and within both pieces
	const bound = 2 * Near
	for _, q := range got {
		require.LessOrEqual(t, bigOff(a, q), bound, "%v off %v (and %v)", q, a, b)
		require.LessOrEqual(t, bigOff(b, q), bound, "%v off %v (and %v)", q, b, a)
		require.True(t, a.On(q) || a.Distance(q) <= bound, "%v not on %v", q, a)
		require.True(t, b.On(q) || b.Distance(q) <= bound, "%v not on %v", q, b)
	}
	// in order along a
	for i := 1; i < len(got); i++ {
		require.LessOrEqual(t, a.Progress(got[i-1]), a.Progress(got[i]))
	}
	// symmetric, and the same run backward
	for name, other := range map[string][]Point{
		"b with a":   Crossings(b, a),
		"a backward": Crossings(a.Reverse(), b),
		"b backward": Crossings(a, b.Reverse()),
	} {
		require.Len(t, other, len(got), "%s: %v with %v: %v, %v", name, a, b, got, other)
		for _, q := range got {
			d := math.Inf(1)
			for _, o := range other {
				d = math.Min(d, o.Sub(q).Len())
			}
			// a near tangency lets a crossing slide along the pieces, not off them
			require.True(t, d <= 1e-6 || offBoth(a, b, q) <= bound, "%s: %v with %v: %v not in %v", name, a, b, q, other)
		}
	}
}

func offBoth(a, b Piece, q Point) float64 { return math.Max(bigOff(a, q), bigOff(b, q)) }

// Between two ends clear of the other's carrier a line crosses that carrier
// an odd or even number of times, which the sides of the ends tell.
func checkParity(t testing.TB, a, b Piece) {
	t.Helper()
	clear := 1e-6
	var side func(Point) float64
	if b.IsLine() {
		d := b.To.Sub(b.From).Unit()
		side = func(q Point) float64 { return d.Cross(q.Sub(b.From)) }
	} else {
		side = func(q Point) float64 { return q.Sub(b.Center).Len() - b.Radius() }
	}
	s, e := side(a.From), side(a.To)
	if math.Abs(s) < clear || math.Abs(e) < clear {
		return
	}
	// the whole carrier of b, so far as it can meet a
	var whole Piece
	if b.IsLine() {
		d := b.To.Sub(b.From).Unit()
		if d.Len() == 0 {
			return
		}
		reach := 10 + a.Length() + a.From.Sub(b.From).Len() + a.Radius()*2
		whole = Line(b.From.Along(d, -reach), b.From.Along(d, reach))
	} else {
		// two halves make the whole circle; points at their seam count once
		r := b.Radius()
		l, rr := b.Center.Along(Point{1, 0}, r), b.Center.Along(Point{-1, 0}, r)
		if s*e < 0 {
			n := len(Crossings(a, Arc(l, rr, b.Center, CCW))) + len(Crossings(a, Arc(rr, l, b.Center, CCW)))
			require.NotZero(t, n, "%v runs through %v", a, b)
		}
		return
	}
	n := len(Crossings(a, whole))
	if s*e < 0 {
		require.Equal(t, 1, n%2, "%v runs through %v", a, whole)
	} else if n == 1 { // a touch
		q := Crossings(a, whole)[0]
		d := a.DirAt(q)
		require.Less(t, math.Abs(d.Cross(whole.StartDir())), 1e-3, "%v touches %v", a, whole)
	}
}

// Pairs drawn on a log scale toward every degeneracy: angles between lines,
// gaps at tangency, distances of centres, differences of radii.
func TestCrossingsNearDegeneracy(t *testing.T) {
	seed := uint64(20)
	r := rand.New(rand.NewPCG(seed, 21))
	t.Logf("seed %d", seed)
	tiny := func() float64 {
		v := math.Pow(10, -16*r.Float64())
		switch r.IntN(8) {
		case 0:
			return 0
		case 1, 2, 3:
			return -v
		}
		return v
	}
	place := func() Point { return Point{r.Float64()*200 - 100, r.Float64() * 100} }
	unit := func() Point {
		w := r.Float64() * 2 * math.Pi
		if r.IntN(3) == 0 {
			w = float64(r.IntN(4)) * math.Pi / 2
		}
		return Point{math.Cos(w), math.Sin(w)}
	}
	arc := func(c Point, radius float64) Piece {
		a, b := unit(), unit()
		turn := CCW
		if r.IntN(2) == 0 {
			turn = CW
		}
		return Arc(c.Along(a, radius), c.Along(b, radius), c, turn)
	}
	for range 20000 {
		p, u := place(), unit()
		radius := math.Pow(10, 4*r.Float64()-1)
		l := math.Pow(10, 5*r.Float64()-2)
		var a, b Piece
		switch r.IntN(5) {
		case 0: // lines at a tiny angle, through or past a common point
			e := u.Add(u.Left().Times(tiny())).Unit()
			q := p.Along(u.Left(), tiny())
			a = Line(p.Along(u, -l*r.Float64()), p.Along(u, l*r.Float64()))
			b = Line(q.Along(e, -l*r.Float64()), q.Along(e, l*r.Float64()))
		case 1: // a line by a tangent
			m := p.Along(u.Left(), radius*(1+tiny()))
			a = Line(m.Along(u, -l*r.Float64()), m.Along(u, l*r.Float64()))
			b = arc(p, radius)
		case 2: // circles touching outside
			s := math.Pow(10, 4*r.Float64()-1)
			a, b = arc(p, radius), arc(p.Along(u, radius+s+tiny()), s)
		case 3: // inside
			s := math.Pow(10, 4*r.Float64()-1)
			a, b = arc(p, radius), arc(p.Along(u, radius-s+tiny()), s)
		case 4: // nearly the same circle
			a, b = arc(p, radius), arc(p.Along(u, tiny()), radius+tiny())
		}
		checkCrossings(t, a, b)
		checkParity(t, a, b)
	}
}

// The crossing of two segments at 200 bits, where they cross clearly.
func TestCrossingsAgainstBig(t *testing.T) {
	r := rand.New(rand.NewPCG(30, 31))
	b := func(v float64) *big.Float { return new(big.Float).SetPrec(200).SetFloat64(v) }
	for range 3000 {
		p := Point{r.Float64() * 100, r.Float64() * 100}
		angle := math.Pow(10, -6*r.Float64())
		d, e := Point{50 * r.Float64(), 1}, Point{}
		e = d.Add(d.Left().Times(angle))
		x := Line(p.Along(d, -r.Float64()), p.Along(d, r.Float64()))
		y := Line(p.Along(e, -r.Float64()), p.Along(e, r.Float64()))
		got := Crossings(x, y)
		require.Len(t, got, 1)
		// t = (y0 - x0) x e / (d x e)
		v := func(q, o float64) *big.Float { return b(0).Sub(b(q), b(o)) }
		cross := func(az, ar, bz, br *big.Float) *big.Float {
			return b(0).Sub(b(0).Mul(az, br), b(0).Mul(ar, bz))
		}
		dz, dr := v(x.To.Z, x.From.Z), v(x.To.R, x.From.R)
		ez, er := v(y.To.Z, y.From.Z), v(y.To.R, y.From.R)
		s := b(0).Quo(cross(v(y.From.Z, x.From.Z), v(y.From.R, x.From.R), ez, er), cross(dz, dr, ez, er))
		z, _ := b(0).Add(b(x.From.Z), b(0).Mul(s, dz)).Float64()
		rr, _ := b(0).Add(b(x.From.R), b(0).Mul(s, dr)).Float64()
		nearPoint(t, Point{z, rr}, got[0], 1e-12/angle)
	}
}

func FuzzCrossings(f *testing.F) {
	f.Add(0.0, 0.0, 4.0, 4.0, 0.0, 0.0, int8(0), 0.0, 4.0, 4.0, 0.0, 0.0, 0.0, int8(0))
	f.Add(10.0, 0.0, 0.0, 10.0, 0.0, 0.0, int8(1), -20.0, 6.0, 20.0, 6.0, 0.0, 0.0, int8(0))
	f.Add(10.0, 0.0, 0.0, 10.0, 0.0, 0.0, int8(1), 16.0, 0.0, 6.0, 10.0, 6.0, 0.0, int8(-1))
	f.Add(10.0, 0.0, 0.0, 10.0, 0.0, 0.0, int8(1), 10.0, 0.0, -10.0, 0.0, 0.0, 0.0, int8(1))
	f.Fuzz(func(t *testing.T, az, ar, bz, br, cz, cr float64, turnA int8, dz, dr, ez, er, gz, gr float64, turnB int8) {
		a, ok := sound(Point{az, ar}, Point{bz, br}, Point{cz, cr}, turnA)
		b, ok2 := sound(Point{dz, dr}, Point{ez, er}, Point{gz, gr}, turnB)
		if !ok || !ok2 {
			return
		}
		checkCrossings(t, a, b)
		checkParity(t, a, b)
	})
}

// sound makes a piece that the program could meet: coordinates under 1e4 mm,
// an arc's centre on the bisector of its ends.
func sound(from, to, c Point, turn int8) (Piece, bool) {
	for _, v := range [...]float64{from.Z, from.R, to.Z, to.R, c.Z, c.R} {
		if !(math.Abs(v) < 1e4) {
			return Piece{}, false
		}
	}
	if turn%3 == 0 {
		return Line(from, to), true
	}
	d := to.Sub(from)
	if d.Len() < 1e-6 {
		return Piece{}, false
	}
	m := Point{(from.Z + to.Z) / 2, (from.R + to.R) / 2}
	u := d.Left().Unit()
	c = m.Along(u, c.Sub(m).Dot(u))
	if c.Sub(from).Len() > 1e4 {
		return Piece{}, false
	}
	if turn%3 < 0 {
		return Arc(from, to, c, CW), true
	}
	return Arc(from, to, c, CCW), true
}

func BenchmarkCross(b *testing.B) {
	var out [4]Point
	line, other := Line(Point{-10, 3}, Point{10, 3}), Line(Point{-3, -9}, Point{2, 9})
	round := Arc(Point{0, 5}, Point{0, -5}, Point{0, 0}, CW)
	for name, pair := range map[string][2]Piece{"lines": {line, other}, "line-arc": {line, round}, "arcs": {round, Arc(Point{6, 5}, Point{6, -5}, Point{6, 0}, CCW)}} {
		b.Run(name, func(b *testing.B) {
			for b.Loop() {
				Cross(pair[0], pair[1], &out)
			}
		})
	}
}
