package toolpath

import (
	"math"
	"slices"

	"taperwright/profiles/geom"
	"taperwright/profiles/shop"
)

// relief is the least clearance between the minor edge and the work, radians:
// under 2 degrees it rubs (common practice).
const relief = 2 * math.Pi / 180

// steepBy is how much a direction may lie beyond a limit, as a sine, before it
// counts: a wall meant to stand square differs by 1e-16 from one computed, and
// 1e-9 over an edge of 20 mm is 2e-8 mm.
const steepBy = 1e-9

// reach is how steeply an insert can follow a contour, front to back.
//
// The insert is a corner between its main edge, at kappa from the direction
// toward the chuck, and its minor edge, rounded by the nose. It lies clear of
// the metal, all of it, exactly when no part of the contour rises more
// steeply toward the back than the main edge or falls more steeply than the
// minor edge: seen from the point touched, the contour ahead then stays under
// the main edge and the contour behind under the minor edge.
type reach struct {
	rise, fall float64 // greatest angle to the axis, radians, 0 to pi/2; fall below 0: not even a cylinder
}

func reachOf(t *shop.Tool) reach {
	if t.Round {
		return reach{math.Pi / 2, math.Pi / 2}
	}
	r := reach{rise: min(t.CuttingAngle.Value, math.Pi/2)}
	if !t.MinorFree {
		r.fall = min(t.MinorAngle()-relief, math.Pi/2)
	}
	return r
}

// shadow is a stretch of a contour that an insert cannot follow.
type shadow struct {
	owner    int     // feature that is too steep
	angle    float64 // its greatest angle to the axis, radians
	from, to geom.Point
	falls    bool // toward the back: the minor edge; else the main edge
}

// shaded returns what the insert makes of t at best: where t is too steep, a
// flank at the greatest angle stands in its stead, owner shade. The flank
// begins where t becomes too steep and ends where it meets t again.
func (t track) shaded(r reach) (track, []shadow) {
	out, falls := t.fallAtMost(r.fall)
	back, rises := out.turned().fallAtMost(r.rise)
	for i := range rises {
		s := &rises[i]
		s.falls = false
		s.from, s.to = mirror(s.to), mirror(s.from)
	}
	return back.turned(), append(falls, rises...)
}

func mirror(p geom.Point) geom.Point { return geom.Point{Z: 0 - p.Z, R: p.R} }

// turned returns t seen from the other side, still running with the metal on
// its left: what rose toward the back falls toward it.
func (t track) turned() track {
	out := make(track, len(t))
	for i, e := range t {
		out[len(t)-1-i] = edge{e.MirrorZ().Reverse(), e.owner}
	}
	return out
}

// fallAtMost puts flanks at angle over whatever falls more steeply.
func (t track) fallAtMost(angle float64) (track, []shadow) {
	limit := geom.Point{Z: -geom.Cos(angle), R: -geom.Sin(angle)}
	if angle >= math.Pi/2 {
		limit = geom.Point{R: -1}
	}
	beyond := func(d geom.Point) bool {
		// Directions here lie between straight out (0, 1) and straight in
		// (0, -1), turning by way of (-1, 0).
		return limit.Cross(d) > steepBy
	}
	var out track
	var found []shadow
	rest := slices.Clone(t)
	for len(rest) > 0 {
		e := rest[0]
		if !beyond(e.StartDir()) {
			if e.Turn <= 0 || !beyond(e.EndDir()) {
				out = append(out, e)
				rest = rest[1:]
				continue
			}
			// an outside arc that becomes too steep on the way
			head, end := e.Split(e.Center.Along(airSide(limit), e.Radius()))
			out = append(out, edge{head, e.owner})
			rest[0].Piece = end
		}
		v := rest[0].StartDir()
		s := shadow{owner: rest[0].owner, angle: geom.Atan2(-v.R, -v.Z), from: rest[0].From, falls: true}
		flank, left := rest.flank(limit)
		for _, d := range rest[:len(rest)-len(left)] {
			for _, v := range [...]geom.Point{d.StartDir(), d.EndDir()} {
				if a := geom.Atan2(-v.R, -v.Z); beyond(v) && a > s.angle {
					s.angle, s.owner = a, d.owner
				}
			}
		}
		s.to = flank.To
		found = append(found, s)
		out = append(out, edge{flank, shade})
		rest = left
	}
	return out, found
}

// flank returns the line from the start of t along d to where t comes up to
// it again, and what of t is left there. When t never does, the line ends
// over the end of t, or level with it, and nothing is left.
func (t track) flank(d geom.Point) (geom.Piece, track) {
	p := t[0].From
	lo, hi := t.chain().Bounds()
	ray := geom.Line(p, p.Along(d, 2*(hi.Z-lo.Z+hi.R-lo.R)+10))
	best, at := math.Inf(1), -1
	var where geom.Point
	for i, e := range t { // the first too: an inside arc that starts too steep comes round again
		var pts [4]geom.Point
		for _, q := range pts[:geom.Cross(ray, e.Piece, &pts)] {
			if l := q.Sub(p).Len(); l > geom.Near && l < best {
				best, at, where = l, i, q
			}
		}
	}
	if at < 0 {
		end := t[len(t)-1].To
		if p.Z-end.Z <= geom.Near { // t ends square up: as low as t
			end, _ = geom.LinesMeet(p, d, end, geom.Point{Z: 1})
		} else if q, ok := geom.LinesMeet(p, d, end, geom.Point{R: 1}); ok {
			end = q
		}
		return geom.Line(p, end), nil
	}
	left := slices.Clone(t[at:])
	_, left[0].Piece = left[0].Split(where)
	if left[0].To.Sub(left[0].From).Len() <= geom.Near {
		left = left[1:]
	}
	return geom.Line(p, where), left
}
