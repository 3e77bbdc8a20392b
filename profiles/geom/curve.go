package geom

import "math"

// Near is the distance, in mm, under which two places are one: ends that
// meet, a point that touches, lines that lie on one another.
//
// Coordinates up to 1e4 mm carry 2e-12; a place computed from a dozen of them
// is right to about 1e-10; programs speak of 1e-4 mm at the finest. Near lies
// between: rounding < 1e-10 < Near = 1e-9 < 1e-7 = the first step of Round.
const Near = 1e-9

// IsLine tells whether p is straight.
func (p Piece) IsLine() bool { return p.Turn == Straight }

// Radius returns the mean distance of both ends from the centre, mm; 0 for a line.
func (p Piece) Radius() float64 {
	if p.IsLine() {
		return 0
	}
	return (p.From.Sub(p.Center).Len() + p.To.Sub(p.Center).Len()) / 2
}

// DirAt returns the unit tangent at q, a point of the piece, the way the
// piece goes. A piece without length has none: the zero Point.
func (p Piece) DirAt(q Point) Point {
	if p.IsLine() {
		return p.To.Sub(p.From).Unit()
	}
	d := q.Sub(p.Center).Left().Unit()
	if p.Turn < 0 {
		return Point{-d.Z, -d.R}
	}
	return d
}

// StartDir returns the unit tangent at From.
func (p Piece) StartDir() Point { return p.DirAt(p.From) }

// EndDir returns the unit tangent at To.
func (p Piece) EndDir() Point { return p.DirAt(p.To) }

// Sweep returns the angle that an arc turns through, 0 to 2 pi, whichever way
// it turns; 0 for a line.
func (p Piece) Sweep() float64 {
	if p.IsLine() {
		return 0
	}
	a, b := p.From.Sub(p.Center), p.To.Sub(p.Center)
	s := Atan2(float64(p.Turn)*a.Cross(b), a.Dot(b))
	if s < 0 {
		s += 2 * pi
	}
	return s
}

// Length returns the length along the piece, mm.
func (p Piece) Length() float64 {
	if p.IsLine() {
		return p.To.Sub(p.From).Len()
	}
	return p.Radius() * p.Sweep()
}

// Reverse returns the piece run the other way.
func (p Piece) Reverse() Piece { return Piece{p.To, p.From, p.Center, -p.Turn} }

// Shift returns the piece moved by d.
func (p Piece) Shift(d Point) Piece {
	return Piece{p.From.Add(d), p.To.Add(d), p.Center.Add(d), p.Turn}
}

// MirrorZ returns the piece with z turned about: what bends left bends right.
func (p Piece) MirrorZ() Piece {
	m := func(q Point) Point { return Point{0 - q.Z, q.R} }
	return Piece{m(p.From), m(p.To), m(p.Center), -p.Turn}
}

// MirrorR returns the piece with r turned about: what bends left bends right.
func (p Piece) MirrorR() Piece {
	m := func(q Point) Point { return Point{q.Z, 0 - q.R} }
	return Piece{m(p.From), m(p.To), m(p.Center), -p.Turn}
}

// within tells whether the direction q from the centre of an arc lies in its
// sweep, ends included as exactly as float64 allows. A sweep of nothing holds
// nothing.
func (p Piece) within(q Point) bool {
	a, b := p.From.Sub(p.Center), p.To.Sub(p.Center)
	if p.Turn < 0 {
		a, b = b, a // the same points, run counterclockwise
	}
	ab := a.Cross(b)
	if ab < 0 { // more than half a turn: outside is what lies strictly between b and a
		return !(b.Cross(q) > 0 && q.Cross(a) > 0)
	}
	if a.Cross(q) < 0 || q.Cross(b) < 0 {
		return false
	}
	if a.Dot(b) > 0 { // under a quarter turn: keep the far side out
		return ab > 0 && a.Add(b).Dot(q) > 0
	}
	return true
}

// On tells whether q, known to lie on the carrier (line or circle) of p, lies
// within p, ends included (and Near beyond them).
func (p Piece) On(q Point) bool {
	if q.Sub(p.From).Len() <= Near || q.Sub(p.To).Len() <= Near {
		return true
	}
	if p.IsLine() {
		d := p.To.Sub(p.From)
		t := q.Sub(p.From).Dot(d)
		return t > 0 && t < d.Dot(d)
	}
	return p.within(q.Sub(p.Center))
}

// the four directions in which a circle has an extreme, counterclockwise.
var compass = [4]Point{{1, 0}, {0, 1}, {-1, 0}, {0, -1}}

// Bounds returns the corners of the smallest box round p, arcs with their extremes.
func (p Piece) Bounds() (lo, hi Point) {
	lo = Point{min(p.From.Z, p.To.Z), min(p.From.R, p.To.R)}
	hi = Point{max(p.From.Z, p.To.Z), max(p.From.R, p.To.R)}
	if p.IsLine() {
		return lo, hi
	}
	r := p.Radius()
	for _, d := range compass {
		if p.within(d) {
			q := p.Center.Along(d, r)
			lo = Point{min(lo.Z, q.Z), min(lo.R, q.R)}
			hi = Point{max(hi.Z, q.Z), max(hi.R, q.R)}
		}
	}
	return lo, hi
}

// Split cuts p at a point of it.
func (p Piece) Split(at Point) (Piece, Piece) {
	a, b := p, p
	a.To, b.From = at, at
	return a, b
}

// Middle returns the point halfway along p.
func (p Piece) Middle() Point {
	if p.IsLine() {
		return Point{(p.From.Z + p.To.Z) / 2, (p.From.R + p.To.R) / 2}
	}
	a, b := p.From.Sub(p.Center), p.To.Sub(p.Center)
	// square to the chord, on the side the arc bulges: no digits are lost for
	// any sweep but one near nothing, where the chord's own middle will do
	v := b.Sub(a).Unit().Left().Times(-float64(p.Turn))
	if v.Len() == 0 {
		return p.From
	}
	return p.Center.Along(v, p.Radius())
}

// Monotone cuts an arc at its extremes in z and r, so that each part runs one
// way in both; a line is itself. Parts shorter than Near are not made.
func (p Piece) Monotone() []Piece {
	if p.IsLine() {
		return []Piece{p}
	}
	var out []Piece
	rest, r := p, p.Radius()
	first := quadrant(p.From.Sub(p.Center), p.Turn)
	for i := range 4 { // an arc of less than a full circle passes at most four extremes
		k := first + i*int(p.Turn)
		q := p.Center.Along(compass[((k%4)+4)%4], r)
		if q.Sub(rest.From).Len() <= Near {
			continue
		}
		if q.Sub(rest.To).Len() <= Near || !rest.within(q.Sub(p.Center)) {
			break
		}
		var head Piece
		head, rest = rest.Split(q)
		out = append(out, head)
	}
	return append(out, rest)
}

// quadrant returns the index in compass of the first extreme met from the
// direction d, turning by turn.
func quadrant(d Point, turn Turn) int {
	var k int // d lies from compass[k] up to compass[k+1]
	switch {
	case d.Z > 0 && d.R >= 0:
		k = 0
	case d.Z <= 0 && d.R > 0:
		k = 1
	case d.Z < 0 && d.R <= 0:
		k = 2
	default:
		k = 3
	}
	if turn > 0 {
		return k + 1
	}
	return k
}

// half returns the height of a circle of radius r over its chord at distance
// x from the centre; 0 beyond it.
func half(r, x float64) float64 {
	r, x = float64(r), float64(x) // a product when inlined
	if q := (r - x) * (r + x); q > 0 {
		return math.Sqrt(q)
	}
	return 0
}

// RAt returns r at z of a piece that runs one way in z. Outside its range the
// nearer end's r. A vertical line gives the r of From.
func (p Piece) RAt(z float64) float64 {
	a, b := p.From, p.To
	if a.Z > b.Z {
		a, b = b, a
	}
	switch {
	case z <= a.Z:
		if a.Z == b.Z {
			return p.From.R
		}
		return a.R
	case z >= b.Z:
		return b.R
	}
	if p.IsLine() {
		// from the nearer end, so that both ends are met exactly
		slope := (b.R - a.R) / (b.Z - a.Z)
		if z-a.Z < b.Z-z {
			return a.R + float64(slope*(z-a.Z))
		}
		return b.R - float64(slope*(b.Z-z))
	}
	h := half(p.Radius(), z-p.Center.Z)
	if (p.Turn > 0) == (p.From.Z < p.To.Z) { // counterclockwise toward higher z is the lower half
		h = -h
	}
	return p.Center.R + h
}

// ZAt returns z at r of a piece that runs one way in r. Outside its range the
// nearer end's z. A line of one r gives the z of From.
func (p Piece) ZAt(r float64) float64 {
	// turning the plane about the diagonal swaps z and r and the turn
	swap := func(q Point) Point { return Point{q.R, q.Z} }
	return Piece{swap(p.From), swap(p.To), swap(p.Center), -p.Turn}.RAt(r)
}

// Nearest returns the point of p nearest to q. From the centre of an arc all
// are equally near: it gives From.
func (p Piece) Nearest(q Point) Point {
	if p.IsLine() {
		d := p.To.Sub(p.From)
		l := d.Dot(d)
		t := q.Sub(p.From).Dot(d)
		switch {
		case t <= 0 || l == 0:
			return p.From
		case t >= l:
			return p.To
		}
		return p.From.Along(d, t/l)
	}
	v := q.Sub(p.Center)
	if l := v.Len(); l > 0 && p.within(v) {
		return p.Center.Along(v, p.Radius()/l)
	}
	if q.Sub(p.To).Len() < q.Sub(p.From).Len() {
		return p.To
	}
	return p.From
}

// Distance returns how far q lies from p, mm.
func (p Piece) Distance(q Point) float64 {
	if p.IsLine() {
		return p.Nearest(q).Sub(q).Len()
	}
	v := q.Sub(p.Center)
	if p.within(v) { // exact on the circle, where Nearest would round twice
		return math.Abs(v.Len() - p.Radius())
	}
	return min(q.Sub(p.From).Len(), q.Sub(p.To).Len())
}

// String gives the piece for a test to read: mm at 1e-7, (z, r).
func (p Piece) String() string {
	switch {
	case p.IsLine():
		return "line " + p.From.String() + " " + p.To.String()
	case p.Turn > 0:
		return "ccw " + p.From.String() + " " + p.To.String() + " round " + p.Center.String()
	}
	return "cw " + p.From.String() + " " + p.To.String() + " round " + p.Center.String()
}

// String gives the point as (z, r), mm at 1e-7.
func (p Point) String() string { return "(" + Fixed(p.Z, 7) + ", " + Fixed(p.R, 7) + ")" }
