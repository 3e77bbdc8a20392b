package profiles

import (
	"math"

	"taperwright/profiles/geom"
)

// A corner is where one piece ends and the next begins. The contour runs with
// the metal on its left: a left turn is an outside corner, a right turn an
// inside one.

// straightOn is the sine of the turn under which two pieces run on into one
// another: over 1 m that is a micrometre, and two lines that meet by design
// differ by rounding only, some 1e-15.
const straightOn = 1e-9

// turnOf returns +1 for an outside corner, -1 for an inside one, 0 where b
// runs straight on from a or straight back.
func turnOf(a, b geom.Piece) geom.Turn {
	switch c := a.EndDir().Cross(b.StartDir()); {
	case c > straightOn:
		return geom.CCW
	case c < -straightOn:
		return geom.CW
	}
	return geom.Straight
}

// halfTurn returns tan(turn/2) of the corner, turn being the angle by which
// the contour changes its direction: sin/(1 + cos). A cut back on itself has
// +Inf.
func halfTurn(a, b geom.Piece) float64 {
	d, e := a.EndDir(), b.StartDir()
	return math.Abs(d.Cross(e)) / (1 + d.Dot(e))
}

// carrier is the line or circle that a piece, moved sideways, lies on.
type carrier struct {
	at, dir geom.Point // line: a place and its direction; circle: its centre
	radius  float64    // circle; 0 for a line
}

// beside returns the carrier of p moved to its left by d (right: below 0);
// false when an arc has no such neighbour because its centre is nearer.
func beside(p geom.Piece, d float64) (carrier, bool) {
	if p.IsLine() {
		dir := p.StartDir()
		return carrier{at: p.From.Along(dir.Left(), d), dir: dir}, true
	}
	r := p.Radius() - float64(float64(p.Turn)*d)
	return carrier{at: p.Center, radius: r}, r > geom.Near
}

// foot returns the point of p's own carrier that is nearest to q.
func foot(p geom.Piece, q geom.Point) geom.Point {
	if p.IsLine() {
		dir := p.StartDir()
		return p.From.Along(dir, q.Sub(p.From).Dot(dir))
	}
	return p.Center.Along(q.Sub(p.Center).Unit(), p.Radius())
}

// meets returns where two carriers cross, at most two places.
func (c carrier) meets(d carrier) []geom.Point {
	switch {
	case c.radius == 0 && d.radius == 0:
		if q, ok := geom.LinesMeet(c.at, c.dir, d.at, d.dir); ok {
			return []geom.Point{q}
		}
		return nil
	case c.radius > 0 && d.radius > 0:
		between := d.at.Sub(c.at)
		l := between.Len()
		if l <= geom.Near {
			return nil
		}
		along := (float64(l*l) + float64(c.radius*c.radius) - float64(d.radius*d.radius)) / (2 * l)
		u := between.Unit()
		return aside(c.at.Along(u, along), u.Left(), float64(c.radius*c.radius)-float64(along*along))
	case c.radius > 0:
		return d.meets(c)
	}
	t := d.at.Sub(c.at).Dot(c.dir)
	mid := c.at.Along(c.dir, t)
	off := d.at.Sub(mid)
	return aside(mid, c.dir, float64(d.radius*d.radius)-off.Dot(off))
}

// aside returns mid moved both ways along dir by the root of square. A square
// that misses 0 by what Near of play would give is a touch.
func aside(mid, dir geom.Point, square float64) []geom.Point {
	if square < 0 {
		if square < -geom.Near {
			return nil
		}
		square = 0
	}
	h := math.Sqrt(square)
	return []geom.Point{mid.Along(dir, h), mid.Along(dir, -h)}
}

// blend returns the arc of a radius that leaves a, runs on into b tangent to
// both, and replaces the corner between them: what is left of a, the arc, what
// is left of b. Its centre lies radius to the left of both at an outside
// corner, to the right at an inside one. ok is false when there is no corner,
// or no such arc touches both within their length.
func blend(a, b geom.Piece, radius float64) (left, arc, right geom.Piece, ok bool) {
	turn := turnOf(a, b)
	if turn == geom.Straight {
		return a, arc, b, false
	}
	side := float64(turn) * radius
	c, okA := beside(a, side)
	d, okB := beside(b, side)
	if !okA || !okB {
		return a, arc, b, false
	}
	best := math.Inf(1)
	for _, centre := range c.meets(d) {
		p, q := foot(a, centre), foot(b, centre)
		if !a.On(p) || !b.On(q) {
			continue
		}
		// of two, the one that takes less of the corner
		if far := p.Sub(a.To).Len(); !ok || far < best-geom.Near {
			p, q = snap(p, a.From), snap(q, b.To)
			best, ok = far, true
			arc = geom.Arc(p, q, centre, turn)
		}
	}
	if !ok {
		return a, arc, b, false
	}
	left, _ = a.Split(arc.From)
	_, right = b.Split(arc.To)
	return left, arc, right, true
}

// bevel returns the chamfer that replaces the corner between a and b: the
// line whose ends lie one on each and differ by v, or by v mirrored.
func bevel(a, b geom.Piece, width, slope float64) (left, line, right geom.Piece, ok bool) {
	best := math.Inf(1)
	tall := float64(width * slope)
	for _, v := range [4]geom.Point{{Z: -width, R: tall}, {Z: -width, R: -tall}, {Z: width, R: tall}, {Z: width, R: -tall}} {
		// p on a with p + v on b: p lies on a and on b moved by -v
		for _, p := range geom.Crossings(a, b.Shift(v.Times(-1))) {
			q := p.Add(v)
			cut := geom.Line(p, q)
			// both its corners turn the way the corner it replaces turns: a line
			// from a to b round the other way is none
			turn := turnOf(a, b)
			if near := p.Sub(a.To).Len(); turn == geom.Straight || near <= geom.Near && q.Sub(b.From).Len() <= geom.Near {
				continue
			}
			if float64(turn)*a.DirAt(p).Cross(cut.StartDir()) <= 0 || float64(turn)*cut.EndDir().Cross(b.DirAt(q)) <= 0 {
				continue
			}
			if far := p.Sub(a.To).Len() + q.Sub(b.From).Len(); !ok || far < best-geom.Near {
				best, ok = far, true
				line = geom.Line(snap(p, a.From), snap(q, b.To))
			}
		}
	}
	if !ok {
		return a, line, b, false
	}
	left, _ = a.Split(line.From)
	_, right = b.Split(line.To)
	return left, line, right, true
}

// snap returns end where q is one place with it, else q.
func snap(q, end geom.Point) geom.Point {
	if q.Sub(end).Len() <= geom.Near {
		return end
	}
	return q
}
