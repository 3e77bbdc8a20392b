package toolpath

import (
	"math"
	"math/rand/v2"

	"taperwright/profiles/geom"
)

// randomContour draws a contour from the axis at the front to the back:
// a face, then cylinders, cones both ways (falling at most at fall radians),
// shoulders, arcs that meet their neighbours at corners, and corners rounded
// by tangent arcs, inside and outside. Arcs inside are no smaller than least.
func randomContour(r *rand.Rand, fall, least float64) []geom.Piece {
	q := at(0, 3+17*r.Float64())
	pts := []geom.Point{at(0, 0), q}
	n := 2 + r.IntN(9)
	for range n {
		dz := -(0.3 + 12*r.Float64()*r.Float64())
		if r.IntN(3) == 0 {
			dz = -(5 + 20*r.Float64())
		}
		next := q
		switch r.IntN(6) {
		case 0, 1:
			next = q.Add(at(dz, 0))
		case 2:
			next = q.Add(at(dz, -dz*math.Tan(0.01+1.4*r.Float64()*r.Float64())))
		case 3:
			next = q.Add(at(dz, dz*math.Tan(fall*r.Float64())))
		case 4:
			next = q.Add(at(0, 0.2+6*r.Float64()))
		case 5:
			next = q.Add(at(dz, -dz*0.05*r.Float64()))
		}
		if next.R < 2 || next.R > 60 {
			continue
		}
		q = next
		pts = append(pts, q)
	}
	if len(pts) < 3 || pts[len(pts)-1].Z > -1 {
		pts = append(pts, q.Add(at(-10, 0)))
	}
	out := lines(pts...)
	// bulge some lines into arcs that stay within the directions allowed
	for i := 1; i < len(out); i++ {
		p := out[i]
		if r.IntN(6) != 0 || p.StartDir().Z > -0.1 {
			continue
		}
		// centre on the bisector; the sweep is small, so directions change little
		l := p.Length()
		rad := l * (1.5 + 6*r.Float64())
		m := p.Middle()
		side := p.StartDir().Left()
		turn := geom.CCW
		if r.IntN(2) == 0 {
			side, turn = side.Times(-1), geom.CW
		}
		c := m.Along(side, math.Sqrt(rad*rad-l*l/4))
		a := geom.Arc(p.From, p.To, c, turn)
		ok := true
		for _, d := range []geom.Point{a.StartDir(), a.EndDir()} {
			if v := math.Atan2(-d.R, -d.Z); v > fall || d.Z > -0.05 {
				ok = false
			}
		}
		if turn == geom.CW && rad < least {
			ok = false
		}
		if ok {
			out[i] = a
		}
	}
	// round some corners between lines
	for i := 1; i < len(out); i++ {
		a, b := out[i-1], out[i]
		if !a.IsLine() || !b.IsLine() || r.IntN(3) != 0 {
			continue
		}
		d, e := a.StartDir(), b.StartDir()
		x, dot := d.Cross(e), d.Dot(e)
		if math.Abs(x) < 1e-3 {
			continue
		}
		half := math.Abs(x) / (1 + dot) // tan(turn/2)
		most := 0.45 * math.Min(a.Length(), b.Length()) / half
		rad := most * r.Float64()
		if rad < 0.05 || x < 0 && rad < least {
			continue
		}
		p := a.To.Along(d, -rad*half)
		s := b.From.Along(e, rad*half)
		turn, side := geom.CCW, d.Left()
		if x < 0 {
			turn, side = geom.CW, d.Left().Times(-1)
		}
		arc := geom.Arc(p, s, p.Along(side, rad), turn)
		out[i-1].To, out[i].From = p, s
		out = append(out[:i], append([]geom.Piece{arc}, out[i:]...)...)
		i++
	}
	return out
}

// ownedTrack gives each piece its index as owner.
func ownedTrack(pieces []geom.Piece) track {
	var t track
	for i, p := range pieces {
		t = append(t, edge{p, i})
	}
	return t
}
