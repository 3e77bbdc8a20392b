package verify

import (
	"math"
	"slices"

	"taperwright/profiles/geom"
)

// bit is a short run of the boundary that is left: one way in z and in r, no
// arc of it through a diagonal, so that it is clearly flat or clearly steep.
// Pieces go as the contour goes: out from the axis at the front, then back.
type bit struct {
	geom.Piece
	owner int // index into Verdict.Owners; -1 raw stock
}

// planeNoise is how near, in mm, a face may stand to a plane computed from
// crossing lines and still be at it: crossings carry about 1e-10 over the
// sine of their angle, and no angle we cross is under 1e-3; figures are
// printed at 1e-4. 1e-10/1e-3 < planeNoise = 1e-6 < 1e-4.
const planeNoise = 1e-6

// diagonals are where an arc turns from flat to steep.
var diagonals = [4]geom.Point{{Z: math.Sqrt2 / 2, R: math.Sqrt2 / 2}, {Z: -math.Sqrt2 / 2, R: math.Sqrt2 / 2},
	{Z: -math.Sqrt2 / 2, R: -math.Sqrt2 / 2}, {Z: math.Sqrt2 / 2, R: -math.Sqrt2 / 2}}

// cutUp returns the bits of one piece.
func cutUp(out []bit, p geom.Piece, owner int) []bit {
	for _, m := range p.Monotone() {
		if m.IsLine() {
			if m.From != m.To {
				out = append(out, bit{m, owner})
			}
			continue
		}
		r := m.Radius()
		for _, d := range diagonals { // at most one lies within a quarter
			at := m.Center.Along(d, r)
			if m.On(at) && at.Sub(m.From).Len() > geom.Near && at.Sub(m.To).Len() > geom.Near {
				var head geom.Piece
				head, m = m.Split(at)
				out = append(out, bit{head, owner})
				break
			}
		}
		out = append(out, bit{m, owner})
	}
	return out
}

// chord is the unit direction from end to end.
func (b bit) chord() geom.Point { return b.To.Sub(b.From).Unit() }

// between returns the bits with z in [back, front], cut at the planes. Faces
// at either plane belong to whoever stands beyond it and are left out.
func between(bits []bit, front, back float64) []bit {
	var out []bit
	for _, b := range bits {
		hi, lo := max(b.From.Z, b.To.Z), min(b.From.Z, b.To.Z)
		if hi-lo <= planeNoise {
			if lo > back+planeNoise && hi < front-planeNoise {
				out = append(out, b)
			}
			continue
		}
		if lo >= front-planeNoise || hi <= back+planeNoise {
			continue
		}
		if hi > front {
			b = b.keep(geom.Point{Z: front, R: b.RAt(front)}, func(q geom.Point) float64 { return -q.Z })
		}
		if lo < back {
			b = b.keep(geom.Point{Z: back, R: b.RAt(back)}, func(q geom.Point) float64 { return q.Z })
		}
		out = append(out, b)
	}
	return out
}

// ring returns the bits with r in [low, high], cut at those radii.
func ring(bits []bit, low, high float64) []bit {
	var out []bit
	for _, b := range bits {
		hi, lo := max(b.From.R, b.To.R), min(b.From.R, b.To.R)
		if hi-lo <= planeNoise {
			if lo > low+planeNoise && hi < high-planeNoise {
				out = append(out, b)
			}
			continue
		}
		if lo >= high-planeNoise || hi <= low+planeNoise {
			continue
		}
		if hi > high {
			b = b.keep(geom.Point{Z: b.ZAt(high), R: high}, func(q geom.Point) float64 { return -q.R })
		}
		if lo < low {
			b = b.keep(geom.Point{Z: b.ZAt(low), R: low}, func(q geom.Point) float64 { return q.R })
		}
		out = append(out, b)
	}
	return out
}

// keep cuts b at a point of it and returns the part where height is greater.
func (b bit) keep(at geom.Point, height func(geom.Point) float64) bit {
	head, tail := b.Split(at)
	if height(b.From) > height(b.To) {
		return bit{head, b.owner}
	}
	return bit{tail, b.owner}
}

// line is an unbounded line through p along the unit vector d.
type line struct{ p, d geom.Point }

func lineOf(p geom.Piece) line { return line{p.From, p.To.Sub(p.From).Unit()} }

// rAt returns the radius of the line at z. The line must not be vertical.
func (l line) rAt(z float64) float64 {
	return l.p.R + float64((z-l.p.Z)/l.d.Z*l.d.R)
}

// meets returns where two lines cross.
func (l line) meets(m line) (geom.Point, bool) { return geom.LinesMeet(l.p, l.d, m.p, m.d) }

// out is the unit normal of a line run as the contour runs: away from the
// metal. Run back along a cylinder (z falling) it points to greater r.
func (l line) out() geom.Point { return geom.Point{Z: l.d.R, R: -l.d.Z} }

// ruler measures places against a line: n . (q - p).
type ruler struct{ p, n geom.Point }

// normalTo measures the distance from l, above 0 where metal is left.
func normalTo(l line) ruler { return ruler{l.p, l.out()} }

// radialTo measures along r, above 0 where the part is too large. The line
// must run toward the back.
func radialTo(l line) ruler {
	return ruler{l.p, geom.Point{Z: l.d.R / -l.d.Z, R: 1}}
}

func (k ruler) at(q geom.Point) float64 { return k.n.Dot(q.Sub(k.p)) }

// reading is one extreme of a ruler over bits.
type reading struct {
	value float64
	at    geom.Point
	owner int
}

// extremes returns the least and the greatest reading of k over bits: at the
// ends of each, and on an arc where its tangent lies along the ruler's line.
// Of equals the first wins. ok is false when there are no bits.
func (k ruler) extremes(bits []bit) (least, most reading, ok bool) {
	n := k.n.Unit()
	for _, b := range bits {
		take := func(q geom.Point) {
			v := k.at(q)
			// a reading beats another by a count of 1e-7, so that two equal by
			// design do not change places with the last bit
			if !ok || geom.Count(v, 7) < geom.Count(least.value, 7) {
				least = reading{v, q, b.owner}
			}
			if !ok || geom.Count(v, 7) > geom.Count(most.value, 7) {
				most = reading{v, q, b.owner}
			}
			ok = true
		}
		take(b.From)
		take(b.To)
		if !b.IsLine() {
			r := b.Radius()
			for _, s := range [2]float64{r, -r} {
				if q := b.Center.Along(n, s); b.On(q) {
					take(q)
				}
			}
		}
	}
	return least, most, ok
}

// fit returns the least-squares line through bits, its distances taken
// normal to along and weighed by length along it (definitions 9).
func fit(bits []bit, along line) (line, bool) {
	n := along.out()
	turn := func(q geom.Point) geom.Point {
		q = q.Sub(along.p)
		return geom.Point{Z: q.Dot(along.d), R: q.Dot(n)}
	}
	var sum geom.Moments
	for _, b := range bits {
		// (d, out) is left-handed: what bends left bends right in it
		sum = sum.Add(geom.Piece{From: turn(b.From), To: turn(b.To), Center: turn(b.Center), Turn: -b.Turn}.Moments(geom.Point{}))
	}
	a, slope, ok := sum.Line()
	if !ok {
		return line{}, false
	}
	return line{along.p.Along(n, a), along.d.Along(n, slope).Unit()}, true
}

// meanR returns the mean radius of bits over their length in z.
func meanR(bits []bit) (float64, bool) {
	var area, length float64
	for _, b := range bits {
		area += b.AreaUnder()
		length += b.To.Z - b.From.Z
	}
	if geom.Count(length, 6) == 0 {
		return 0, false
	}
	return area / length, true
}

// owners returns the owners of bits, each once, in the order of their motions.
func owners(bits []bit) []int {
	seen := map[int]bool{}
	var out []int
	for _, b := range bits {
		if b.owner >= 0 && !seen[b.owner] {
			seen[b.owner] = true
			out = append(out, b.owner)
		}
	}
	slices.Sort(out)
	return out
}
