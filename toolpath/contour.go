package toolpath

import (
	"math"

	"taperwright/profiles"
	"taperwright/profiles/geom"
)

// Distances of the plan, mm, all common practice.
const (
	clearance = 2.0 // beyond the stock, where rapids end; half the oversize on top
	lift      = 0.5 // off the last level while going back for the next
	retract   = 1.0 // off the finished surface, at feed and 45 degrees
	pastEnd   = 0.5 // how far past its end the last surface is cut whole
	wasteGap  = 0.2 // roughing clears the waste this much further than finishing goes
)

// contour is what a set-up cuts, in the part's frame.
type contour struct {
	face  *edge // the front face, nil when the part begins with a round or a point
	sides track // from the face outward and back
	// shut: the next contour, cut elsewhere, stands higher than the end of
	// the last feature, so that no nose goes past it.
	shut bool
}

// contourFor returns the contour of the set-up for a finishing nose of radius r.
func (j *job) contourFor(r float64) contour {
	var c contour
	chain, owners := j.part.Contour(j.setup)
	for i, p := range chain {
		if p.To.Sub(p.From).Len() <= geom.Near {
			continue
		}
		e := edge{p, owners[i]}
		if len(c.sides) == 0 && c.face == nil && p.IsLine() && p.From.R <= geom.Near && -p.StartDir().Z < level {
			c.face = &e
			continue
		}
		c.sides = append(c.sides, e)
	}
	if n := len(c.sides); n > 0 {
		c.shut = j.shut(c.sides[n-1], r+pastEnd)
	}
	return c
}

// level is the z part of a direction, per unit, under which it stands square
// to the axis: 1e-6 over 100 mm is 0.0001 mm, the last place of a program.
const level = 1e-6

// shut tells whether what follows last, cut elsewhere, stands in the way of a
// cut that runs straight on for a length of past along z.
func (j *job) shut(last edge, past float64) bool {
	d := last.EndDir()
	if -d.Z < level { // a face: it runs on outward, over everything
		return false
	}
	end := last.To
	limit := geom.Line(end, end.Along(d, past/-d.Z))
	for _, f := range j.part.Features[last.owner+1:] {
		if f.Inside || f.Kind == profiles.Corner || f.Piece.From == f.Piece.To {
			continue
		}
		places := [...]geom.Point{f.Piece.From, f.Piece.Middle(), f.Piece.To}
		for _, q := range places {
			if q.Z < limit.To.Z { // where the feature passes the end of the cut
				q = geom.Point{Z: limit.To.Z, R: f.Piece.RAt(limit.To.Z)}
			}
			if geom.Count(q.R, 7) > geom.Count(limit.RAt(q.Z), 7) {
				return true
			}
		}
		if f.Piece.To.Z <= limit.To.Z {
			return false
		}
	}
	return false
}

// aim says how target draws the contour for one nose.
type aim struct {
	nose   float64 // radius, mm
	dist   float64 // from the contour to the nose centre
	clearZ float64 // of the nose centre: no metal at it or before it
	endZ   float64 // of the nose centre, where the path ends without a wall
	wall   bool    // ended by a wall up out of the stock
	beyond float64 // how far past the end of the last feature that stands, along z
	rise   float64 // greatest angle of that wall
}

// target returns the contour begun on the extension of its first flank and
// carried on past its end.
func (j *job) target(c contour, a aim) track {
	first, last := c.sides[0], c.sides[len(c.sides)-1]
	var t track

	// Front. Far enough out that the path beside it reaches the clearance
	// plane; but not past the axis by more than half the nose, where the
	// whole edge would work on the far side.
	d := first.StartDir()
	length := min(clearance, first.From.R+float64(a.nose/2)) // begins up the face
	if -d.Z >= level {
		length = (a.clearZ + a.dist - first.From.Z) / -d.Z
		if d.R > 0 {
			length = min(length, (first.From.R+float64(a.nose/2))/d.R)
		}
	}
	t = append(t, edge{geom.Line(first.From.Along(d, -length), first.From), lead})
	t = append(t, c.sides...)

	// Back.
	top := j.part.Stock.Radius + j.part.Stock.Oversize + clearance + a.dist + 1
	e, end := last.EndDir(), last.To
	up := geom.Point{R: 1}
	switch {
	case c.shut:
	case -e.Z < level:
		if end.R < top {
			t = append(t, edge{geom.Line(end, geom.Point{Z: end.Z, R: top}), tail})
		}
		return t
	default:
		past := a.beyond
		if !a.wall { // path cuts off what is too much: at the end of a track no nose may be in the way of its neighbours
			past += 2 * a.dist
		}
		end = end.Along(e, past/-e.Z)
		t = append(t, edge{geom.Line(last.To, end), tail})
		if a.rise < math.Pi/2 {
			up = geom.Point{Z: -geom.Cos(a.rise), R: geom.Sin(a.rise)}
		}
	}
	if a.wall || c.shut {
		top = max(top, end.R+2*a.dist) // higher than a nose that touches its foot
		t = append(t, edge{geom.Line(end, end.Along(up, (top-end.R)/up.R)), tail})
	}
	return t
}

// path returns the way of the nose centre beside t, begun at clearZ and ended
// at endZ when not by a wall.
func (a aim) path(t track) (track, error) {
	p, err := t.offset(a.dist)
	if err != nil {
		return nil, err
	}
	if last := t[len(t)-1]; !a.wall && last.owner == tail && -last.EndDir().Z >= level {
		for len(p) > 0 && p[len(p)-1].From.Z <= a.endZ {
			p = p[:len(p)-1]
		}
		if n := len(p) - 1; n >= 0 {
			for _, m := range p[n].Monotone() {
				if m.To.Z < a.endZ {
					p[n].To = geom.Point{Z: a.endZ, R: m.RAt(a.endZ)}
					break
				}
			}
		}
	}
	for len(p) > 0 && p[0].owner < 0 && p[0].To.Z > a.clearZ {
		p = p[1:]
	}
	if len(p) > 0 && p[0].IsLine() && p[0].From.Z > a.clearZ {
		p[0].From = geom.Point{Z: a.clearZ, R: p[0].RAt(a.clearZ)}
	}
	if len(p) == 0 {
		return nil, errTorn
	}
	return p, nil
}
