package geom

import "math"

// LinesMeet returns where the lines p + t d and q + s e meet; false when they
// are parallel to within 1e-12 (over 1e4 mm such lines part by 1e-8 mm, and
// their meeting place is noise).
func LinesMeet(p, d, q, e Point) (Point, bool) {
	const parallel = 1e-12
	x := d.Cross(e)
	if math.Abs(x) <= parallel*d.Len()*e.Len() {
		return Point{}, false
	}
	return p.Along(d, q.Sub(p).Cross(e)/x), true
}

// Crossings returns the points inside both a and b, ends included, in order
// along a: see Cross.
func Crossings(a, b Piece) []Point {
	var out [4]Point
	n := Cross(a, b, &out)
	return append([]Point(nil), out[:n]...)
}

// Cross puts the points that a and b share into out, in order along a, and
// returns how many. Each lies within Near of both (coordinates and radii up
// to 1e4 mm). An end of one that lies within Near of the other is given as it
// stands, to the bit, and stands for the crossing beside it. Pieces that lie
// on one another give the ends of what they share: two, or four for arcs that
// overlap twice.
func Cross(a, b Piece, out *[4]Point) int {
	c := crossing{a: a, b: b, out: out}
	if !a.IsLine() {
		c.ra = a.Radius()
	}
	if !b.IsLine() {
		c.rb = b.Radius()
	}
	c.ends()
	c.nEnds = c.n
	switch {
	case a.IsLine() && b.IsLine():
		c.lines()
	case a.IsLine():
		c.lineArc(a, b, c.rb)
	case b.IsLine():
		c.lineArc(b, a, c.ra)
	default:
		c.arcs()
	}
	if c.n > 1 {
		c.sort()
	}
	return c.n
}

// crossing is the state of one Cross.
type crossing struct {
	a, b   Piece
	ra, rb float64
	out    *[4]Point
	n      int
	nEnds  int // the first so many are ends
}

// ends adds the ends of either that lie on the other.
func (c *crossing) ends() {
	for _, q := range [...]Point{c.a.From, c.a.To} {
		if c.b.touches(q, c.rb) {
			c.add(q)
		}
	}
	for _, q := range [...]Point{c.b.From, c.b.To} {
		if c.a.touches(q, c.ra) {
			c.add(q)
		}
	}
}

// touches is p.Distance(q) <= Near, for a p of known radius, quick to say no.
func (p Piece) touches(q Point, radius float64) bool {
	if p.IsLine() {
		if d := p.To.Sub(p.From); math.Abs(d.Cross(q.Sub(p.From))) > Near*d.Len() {
			return false
		}
	} else if math.Abs(q.Sub(p.Center).Len()-radius) > Near {
		return false
	}
	return p.On(q)
}

func (c *crossing) add(q Point) {
	for i := range c.n {
		if c.out[i].Sub(q).Len() <= Near {
			return
		}
	}
	if c.n < len(c.out) {
		c.out[c.n] = q
		c.n++
	}
}

// take adds q, a point of both carriers, if it lies within both pieces and
// no end stands for it: one within Near, or one from which the pieces part by
// no more than Near on the way to q. There q is noise: pieces that meet at an
// angle w are within Near of one another over Near/w.
func (c *crossing) take(q Point) {
	if !c.a.On(q) || !c.b.On(q) {
		return
	}
	for _, e := range c.out[:c.nEnds] {
		if m, ok := c.a.between(e, q, c.ra); ok && c.b.touches(m, c.rb) {
			return
		}
		if m, ok := c.b.between(e, q, c.rb); ok && c.a.touches(m, c.ra) {
			return
		}
	}
	c.add(q)
}

// between returns the place of p halfway between two of its points; false
// when they lie more than a third of a circle apart, where pieces that are
// not one circle have parted.
func (p Piece) between(e, q Point, radius float64) (Point, bool) {
	if p.IsLine() {
		return Point{(e.Z + q.Z) / 2, (e.R + q.R) / 2}, true
	}
	v := e.Sub(p.Center).Add(q.Sub(p.Center))
	l := v.Len()
	if l <= radius {
		return Point{}, false
	}
	return p.Center.Along(v, radius/l), true
}

// Progress returns a number that grows along the piece, for putting points of
// it in order: 0 at From; of an arc a measure of the angle, under 4, made
// without trigonometry.
func (p Piece) Progress(q Point) float64 {
	if p.IsLine() {
		return q.Sub(p.From).Dot(p.To.Sub(p.From))
	}
	if q == p.From {
		return 0
	}
	a, v := p.From.Sub(p.Center), q.Sub(p.Center)
	y, x := float64(p.Turn)*a.Cross(v), a.Dot(v)
	s := math.Abs(x) + math.Abs(y)
	if s == 0 {
		return 0
	}
	switch {
	case x >= 0 && y >= 0:
		return y / s
	case x < 0 && y >= 0:
		return 1 - x/s
	case x < 0:
		return 2 - y/s
	case q.Sub(p.From).Len() <= Near:
		return 0 // a hair before the start
	}
	return 3 + x/s
}

func (c *crossing) sort() {
	var key [4]float64
	for i := range c.n {
		key[i] = c.a.Progress(c.out[i])
		for j := i; j > 0 && key[j] < key[j-1]; j-- {
			key[j], key[j-1] = key[j-1], key[j]
			c.out[j], c.out[j-1] = c.out[j-1], c.out[j]
		}
	}
}

func (c *crossing) lines() {
	d, e := c.a.To.Sub(c.a.From), c.b.To.Sub(c.b.From)
	x := d.Cross(e)
	w := c.b.From.Sub(c.a.From)
	dl, el := d.Len(), e.Len()
	if dl == 0 || el == 0 {
		return // a point: ends found it
	}
	// On one another: both ends of the shorter within Near of the longer's carrier.
	if dl >= el {
		if math.Abs(d.Cross(w)) <= Near*dl && math.Abs(d.Cross(w.Add(e))) <= Near*dl {
			return // ends found what they share
		}
	} else if math.Abs(e.Cross(w)) <= Near*el && math.Abs(e.Cross(w.Sub(d))) <= Near*el {
		return
	}
	if x == 0 {
		return
	}
	// The place along each, measured from its nearer end: of the two, the one
	// on the shorter piece carries the smaller error.
	t, s := w.Cross(e)/x, w.Cross(d)/x
	var q Point
	switch {
	case dl <= el && t <= 0.5:
		q = c.a.From.Along(d, t)
	case dl <= el:
		q = c.a.To.Along(d, c.b.From.Sub(c.a.To).Cross(e)/x)
	case s <= 0.5:
		q = c.b.From.Along(e, s)
	default:
		q = c.b.To.Along(e, c.b.To.Sub(c.a.From).Cross(d)/x)
	}
	c.take(q)
}

func (c *crossing) lineArc(line, arc Piece, r float64) {
	d := line.To.Sub(line.From)
	l := d.Len()
	if l == 0 {
		return
	}
	u := Point{d.Z / l, d.R / l}
	w := line.From.Sub(arc.Center)
	off := u.Cross(w) // signed distance of the line from the centre, along u.Left()
	gap := r - math.Abs(off)
	if gap < -Near {
		return
	}
	// The foot is taken from the centre, so that its distance from the carrier
	// does not depend on how far away the line begins.
	foot := arc.Center.Along(u.Left(), off)
	if gap <= Near {
		// tangent: the point of the circle, half the gap off the line at most
		c.take(foot)
		return
	}
	h := half(r, off)
	c.take(foot.Along(u, -h))
	c.take(foot.Along(u, h))
}

func (c *crossing) arcs() {
	a, b := c.a, c.b
	r, s := c.ra, c.rb
	v := b.Center.Sub(a.Center)
	d := v.Len()
	if d+math.Abs(r-s) <= Near { // one circle: ends found what they share
		return
	}
	if d == 0 {
		return
	}
	outer, inner := r+s-d, d-math.Abs(r-s)
	if outer < -Near || inner < -Near {
		return
	}
	u := Point{v.Z / d, v.R / d}
	switch {
	case outer <= Near: // apart, touching
		c.take(a.Center.Along(u, r-float64(outer/2)))
		return
	case inner <= Near && r >= s: // b inside a, touching
		c.take(a.Center.Along(u, r+float64(inner/2)))
		return
	case inner <= Near:
		c.take(a.Center.Along(u, -r-float64(inner/2)))
		return
	}
	// x: from a's centre along u to the common chord. r² - s² as a product:
	// equal squares would cancel all digits.
	x := (d + float64((r-s)*(r+s))/d) / 2
	h := half(r, x)
	m := a.Center.Along(u, x)
	c.take(m.Along(u.Left(), -h))
	c.take(m.Along(u.Left(), h))
}
