package stock

import (
	"math"

	"taperwright/profiles/geom"
)

// bend is the kind of a curve.
type bend int8

const (
	line  bend = 0
	over  bend = 1  // upper half of a circle: r = centre + sqrt
	under bend = -1 // lower half
)

// curve is r over z without ends. Pieces of a boundary share curves and trim
// them only by the z where the next piece begins, so however often a surface
// is cut into, the numbers that say where it lies never change.
//
// A line runs through (z, r) with slope k; a circle has its centre at (z, r)
// and the radius k. A level line has z = 0, so that equal levels are equal
// curves.
type curve struct {
	z, r, k float64
	bend    bend
}

func level(r float64) curve { return curve{r: r} }

// lineThrough returns the line from p to q, p.Z < q.Z.
func lineThrough(p, q geom.Point) curve {
	if p.R == q.R {
		return level(p.R)
	}
	return curve{z: p.Z, r: p.R, k: (q.R - p.R) / (q.Z - p.Z)}
}

// at returns r at z. Off a circle's ends it clamps to them.
func (c *curve) at(z float64) float64 {
	u := z - c.z
	if c.bend == line {
		if c.k == 0 {
			return c.r
		}
		return c.r + float64(c.k*u)
	}
	return c.r + float64(float64(c.bend)*c.chord(u))
}

// chord is the half chord of a circle at distance u from its centre; the
// product form keeps its digits near the ends, where k*k - u*u would not.
func (c *curve) chord(u float64) float64 {
	h := (c.k - u) * (c.k + u)
	if h <= 0 {
		return 0
	}
	return math.Sqrt(h)
}

// mirrorR returns the curve of -r.
func (c curve) mirrorR() curve {
	c.r = -c.r
	if c.bend == line {
		c.k = -c.k
	}
	c.bend = -c.bend
	return c
}

// mirrorZ returns the curve over -z.
func (c curve) mirrorZ() curve {
	c.z = 0 - c.z // not -0, or equal levels would print as unequal
	if c.bend == line {
		c.k = 0 - c.k
	}
	return c
}

// low and high bound the curve over [a, b] from below and above.
func (c *curve) low(a, b float64) float64 {
	if c.bend == under && a < c.z && c.z < b {
		return c.r - c.k
	}
	return min(c.at(a), c.at(b))
}

func (c *curve) high(a, b float64) float64 {
	if c.bend == over && a < c.z && c.z < b {
		return c.r + c.k
	}
	return max(c.at(a), c.at(b))
}

// area is the integral of r dz over [a, b].
func (c *curve) area(a, b float64) float64 {
	if c.bend == line {
		return float64((c.at(a) + c.at(b)) * 0.5 * (b - a))
	}
	ua := max(-c.k, min(c.k, a-c.z))
	ub := max(-c.k, min(c.k, b-c.z))
	va, vb := c.chord(ua), c.chord(ub)
	// The sector between the two radii and the two triangles beside it.
	turn := geom.Atan2(float64(va*ub)-float64(ua*vb), float64(ua*ub)+float64(va*vb))
	half := 0.5 * (float64(c.k*c.k*turn) + float64(ub*vb) - float64(ua*va))
	return float64(c.r*(b-a)) + float64(float64(c.bend)*half)
}

// away returns the distance of p from the curve, taken as endless.
func (c *curve) away(p geom.Point) float64 {
	u, v := p.Z-c.z, p.R-c.r
	if c.bend == line {
		d := math.Abs(v - float64(c.k*u))
		if c.k == 0 {
			return d
		}
		return d / math.Sqrt(1+float64(c.k*c.k))
	}
	return math.Abs(math.Sqrt(float64(u*u)+float64(v*v)) - c.k)
}

// farthest returns the z of g at which it runs parallel to f: where, between
// crossings, it is farthest from f. ok is false when there is none.
func (g *curve) farthest(f *curve) (z float64, ok bool) {
	switch {
	case g.bend == line && f.bend == line:
		return 0, false
	case g.bend == line:
		// foot of the perpendicular from f's centre on g
		u, v := f.z-g.z, f.r-g.r
		return g.z + (u+float64(g.k*v))/(1+float64(g.k*g.k)), true
	case f.bend == line:
		// lower half: normal (k, -1), upper half: (-k, 1)
		return g.z - float64(float64(g.bend)*g.k*f.k)/math.Sqrt(1+float64(f.k*f.k)), true
	}
	u, v := g.z-f.z, g.r-f.r
	l := math.Sqrt(float64(u*u) + float64(v*v))
	if l == 0 {
		return 0, false
	}
	if (v < 0) != (g.bend == under) {
		u = -u
	}
	return g.z + float64(g.k*u)/l, true
}

// roots returns where f and g may cross strictly between a and b, ascending.
// It may name a place where they do not cross (the other half of a circle, a
// touch): callers look at the middle of what lies between, so that costs
// nothing. It never misses a crossing by more than rounding.
func roots(f, g *curve, a, b float64) (n int, x [2]float64) {
	var z [2]float64
	var m int
	switch {
	case f.bend == line && g.bend == line:
		if f.k == g.k {
			return
		}
		p, q := f.at(a)-g.at(a), f.at(b)-g.at(b)
		if (p < 0) == (q < 0) {
			return
		}
		z[0], m = a+float64((b-a)*(p/(p-q))), 1
	case f.bend == line:
		m, z = lineCircle(f, g)
	case g.bend == line:
		m, z = lineCircle(g, f)
	default:
		m, z = circles(f, g)
	}
	for _, c := range z[:m] {
		if c > a+sliver && c < b-sliver {
			x[n] = c
			n++
		}
	}
	if n == 2 {
		if x[0] > x[1] {
			x[0], x[1] = x[1], x[0]
		}
		if x[1]-x[0] <= sliver {
			n = 1
		}
	}
	return
}

// aboutMiddle and offMiddle are where two curves that do not cross are compared:
// at the middle, and, as they may touch just there, off it.
const (
	aboutMiddle = 0.5
	offMiddle   = 0.28
)

// over tells whether f is above g between a and b by more than a skin. They
// must not cross there.
func (f *curve) over(g *curve, a, b float64) bool {
	w := b - a
	m := a + float64(w*aboutMiddle)
	switch d := f.at(m) - g.at(m); {
	case d > skin:
		return true
	case d < -skin:
		return false
	}
	m = a + float64(w*offMiddle)
	return f.at(m)-g.at(m) > skin
}

// lineCircle returns the z of the crossings of line f with the whole circle of g.
func lineCircle(f, g *curve) (int, [2]float64) {
	q := (f.r - g.r) + float64(f.k*(g.z-f.z)) // height of the line over the centre
	w := 1 + float64(f.k*f.k)
	s := math.Sqrt(w)
	h := q / s // distance of the line from the centre
	d := (g.k - h) * (g.k + h)
	if d < 0 {
		return 0, [2]float64{}
	}
	foot, half := g.z-float64(q*f.k)/w, math.Sqrt(d)/s
	return 2, [2]float64{foot - half, foot + half}
}

// circles returns the z of the crossings of two whole circles.
func circles(f, g *curve) (int, [2]float64) {
	u, v := g.z-f.z, g.r-f.r
	d2 := float64(u*u) + float64(v*v)
	if d2 == 0 {
		return 0, [2]float64{}
	}
	d := math.Sqrt(d2)
	// distance of the common chord from f's centre
	x := float64((d + float64((f.k-g.k)*((f.k+g.k)/d))) * 0.5)
	y2 := (f.k - x) * (f.k + x)
	if y2 < 0 {
		return 0, [2]float64{}
	}
	y := math.Sqrt(y2)
	m, h := f.z+float64(x*u)/d, float64(y*v)/d
	return 2, [2]float64{m - h, m + h}
}
