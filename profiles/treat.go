package profiles

import (
	"math"
	"strconv"

	"taperwright/profiles/finding"
	"taperwright/profiles/geom"
)

// edges is what [edges] says of corners that no feature treats.
type edges struct {
	least, most float64      // outside edges: broken to this, axial; most 0: left sharp
	outside     finding.Span // where that stands
	inside      float64      // fillet that an inside corner may keep
	known       bool         // inside is known
	from        finding.Span
}

// sharp is the cosine of 30 degrees: outside edges that turn less are not
// broken (definitions 6).
const sharp = 0.86602540378443865

// treated makes the rows of the part from its mains: takes chamfers, fillets
// and edge breaks out of them, and gives each inside corner that nothing
// treats a row. It returns false when there is no room for something.
func (r *reader) treated(mains, treats []*item, e edges) ([]Feature, bool) {
	ok := true
	var rows []Feature
	breaks := 0
	at := func(i int) *geom.Piece { return &mains[i].f.Piece }
	sharpEnds := make([]geom.Piece, len(mains)) // as they stand before anything is taken out
	for i := range mains {
		sharpEnds[i] = *at(i)
		mains[i].lead, mains[i].trail = at(i).From, at(i).To
	}
	for i, it := range mains {
		if i == 0 {
			rows = append(rows, Feature{}) // filled in below, once its corner is known
		}
		last := i+1 == len(mains)
		var between *Feature
		switch t := treats[i]; {
		case last && t != nil:
			between = r.later(it, t, &ok)
		case last:
		case t != nil:
			if i == 0 {
				r.ball(*at(i), *at(i + 1), mains[1].front, mains[1].play, &t.f)
			}
			between = r.treat(at(i), at(i+1), it, mains[i+1], t, &ok)
		case turnOf(*at(i), *at(i + 1)) == geom.CW && !it.step && !mains[i+1].step && e.known:
			between = &Feature{Name: "corner before " + mains[i+1].f.Name, Kind: Corner, Span: e.from,
				Piece: geom.Line(at(i).To, at(i).To), Fillet: Size{High: e.inside, Span: e.from}}
		case r.breaks(it, mains[i+1], e):
			breaks++
			between = r.edge(at(i), at(i+1), it, mains[i+1], e, breaks, &ok)
		}
		if !last {
			zones(it, mains[i+1], sharpEnds[i], sharpEnds[i+1], between, e)
		}
		it.f.Judged = it.judged() // its end is settled now
		rows[len(rows)-1] = it.f
		if between != nil {
			rows = append(rows, *between)
		}
		if !last {
			rows = append(rows, Feature{})
		}
	}
	for i := range rows {
		f := &rows[i]
		f.Arc = !f.Piece.IsLine()
		if f.Kind == Chamfer || f.Kind == Fillet || f.Kind == Corner {
			f.Judged = f.Piece
		}
	}
	if geom.Count(rows[0].Piece.Length(), 6) == 0 { // a ball end or a point: the face has gone
		rows = rows[1:]
	}
	return rows, ok
}

// treat takes t out of the corner of a and b.
func (r *reader) treat(a, b *geom.Piece, ia, ib, t *item, ok *bool) *Feature {
	f := &t.f
	if turnOf(*a, *b) == geom.Straight {
		r.failAt(t.table.Span(), NoCorner, "leave it out", "%s stands between %s and %s, which run on into one another", f.Name, ia.f.Name, ib.f.Name)
		*ok = false
		return f
	}
	var good bool
	if f.Kind == Fillet {
		var left, arc, right geom.Piece
		if left, arc, right, good = blend(*a, *b, f.Fillet.Aim); good {
			*a, f.Piece, *b = left, arc, right
		}
	} else {
		var left, line, right geom.Piece
		if left, line, right, good = bevel(*a, *b, f.Width.Aim, geom.Tan(f.Angle.Aim)); good {
			*a, f.Piece, *b = left, line, right
		}
	}
	if !good {
		r.noRoom(*a, *b, ia, ib, t)
		*ok = false
		return f
	}
	for _, side := range []struct {
		left geom.Piece
		of   *item
	}{{*a, ia}, {*b, ib}} {
		// of the front face, and of the back face, nothing may be left
		if side.of.table != nil && geom.Count(side.left.Length(), 6) == 0 {
			r.failAt(t.table.Span(), NoRoom, "make it smaller", "%s leaves nothing of %s", f.Name, side.of.f.Name)
			*ok = false
		}
	}
	return f
}

// ball makes a fillet at the front or back face, of the own nominal radius of
// the feature there, reach the axis exactly: the aim of a journal is not its
// nominal (definitions 6).
func (r *reader) ball(a, b geom.Piece, nominal, play float64, f *Feature) {
	tan := halfTurn(a, b)
	if f.Kind == Fillet && tan > 0 && math.Abs(float64(f.Fillet.Nominal*tan)-nominal) <= play+float64(r.play()*tan) {
		f.Fillet.Aim = a.To.R / tan
		f.Fillet.Low, f.Fillet.High = min(f.Fillet.Low, f.Fillet.Aim), max(f.Fillet.High, f.Fillet.Aim)
	}
}

// noRoom says why no treatment t fits between a and b.
func (r *reader) noRoom(a, b geom.Piece, ia, ib, t *item) {
	d, e := a.EndDir(), b.StartDir()
	need := func(of float64, what string) string {
		return what + " takes " + r.say(of)
	}
	var onA, onB float64
	if t.f.Kind == Fillet {
		onA = t.f.Fillet.Aim * halfTurn(a, b)
		onB = onA
	} else {
		// the chamfer v = s d + t e runs between the two directions, if any does
		tall := float64(t.f.Width.Aim * geom.Tan(t.f.Angle.Aim))
		found := false
		for _, v := range [4]geom.Point{{Z: -t.f.Width.Aim, R: tall}, {Z: -t.f.Width.Aim, R: -tall}, {Z: t.f.Width.Aim, R: tall}, {Z: t.f.Width.Aim, R: -tall}} {
			s, u := v.Cross(e)/d.Cross(e), d.Cross(v)/d.Cross(e)
			if s > 0 && u > 0 && (!found || s+u < onA+onB) {
				onA, onB, found = s, u, true
			}
		}
		if !found {
			r.failAt(t.table.Span(), NoRoom, "give an angle to the axis that lies between those of "+ia.f.Name+" ("+tilt(d)+") and "+ib.f.Name+" ("+tilt(e)+")",
				"no line at %s to the axis cuts the corner of %s and %s", geom.Fixed(geom.Degrees(t.f.Angle.Aim), 3)+"°", ia.f.Name, ib.f.Name)
			return
		}
	}
	short, of, has := ia.f.Name, onA, a.Length()
	if onA <= has || onB-b.Length() > onA-has {
		short, of, has = ib.f.Name, onB, b.Length()
	}
	r.failAt(t.table.Span(), NoRoom, "make it smaller, or "+short+" larger", "%s of %s, which has only %s left", need(of, t.f.Name), short, r.say(has))
}

// tilt writes the angle of a direction to the axis.
func tilt(d geom.Point) string {
	return geom.Fixed(geom.Degrees(geom.Atan2(math.Abs(d.R), math.Abs(d.Z))), 3) + "°"
}

// later makes the row of what treats the edge with the back face: another
// set-up cuts it, so that nothing is taken out of the last main here.
func (r *reader) later(it, t *item, ok *bool) *Feature {
	if it.f.Kind == Shoulder { // refused by mains
		return &t.f
	}
	a := it.f.Piece
	b := geom.Line(a.To, geom.Point{Z: a.To.Z})
	back := &item{f: Feature{Name: "the back face"}}
	r.ball(a, b, it.back, it.play, &t.f)
	f := r.treat(&a, &b, it, back, t, ok)
	f.Setup = -1
	return f
}

// breaks tells whether the corner of a and b is an edge to be broken.
func (r *reader) breaks(a, b *item, e edges) bool {
	if e.most <= 0 || a.step || b.step || turnOf(a.f.Piece, b.f.Piece) != geom.CCW {
		return false
	}
	return geom.Count(a.f.Piece.EndDir().Dot(b.f.Piece.StartDir()), 9) < geom.Count(sharp, 9)
}

// edge breaks an edge: at 45° by the middle of what is allowed; where no line
// at 45° cuts that corner, by one that takes the same length of both.
func (r *reader) edge(a, b *geom.Piece, ia, ib *item, e edges, n int, ok *bool) *Feature {
	width := (e.least + e.most) / 2
	f := &Feature{Name: "edge " + strconv.Itoa(n), Kind: Chamfer, Span: e.outside,
		Width: Size{Nominal: width, Low: e.least, Aim: width, High: e.most, Span: e.outside},
		// how an edge is broken is left to the shop: ISO 13715 gives a size and no shape
		Angle: Size{Nominal: geom.Radians(45), Low: 0, Aim: geom.Radians(45), High: geom.Radians(90)},
	}
	left, line, right, good := bevel(*a, *b, width, 1)
	if !good {
		chord := a.EndDir().Add(b.StartDir())
		slope := math.Abs(chord.R / chord.Z)
		if math.Abs(chord.Z) > 1e-6 {
			left, line, right, good = bevel(*a, *b, width, slope)
			f.Angle.Nominal, f.Angle.Aim = geom.Atan(slope), geom.Atan(slope)
		}
	}
	if !good || geom.Count(left.Length(), 6) == 0 || geom.Count(right.Length(), 6) == 0 {
		if !r.crowded { // one size for all: the first that it does not fit stands for the rest
			r.failAt(e.outside, NoRoom, "break edges less, or give this one a chamfer of its own", "the edge of %s and %s has no room for a break of %s", ia.f.Name, ib.f.Name, r.say(width))
		}
		r.crowded, *ok = true, false
		return f
	}
	*a, f.Piece, *b = left, line, right
	return f
}

// zones leaves out of what is judged of two neighbours the corner zone of an
// inside corner: R tan(turn/2) from the sharp corner along each, R being the
// most that may stay there, never the radius found (definitions 7). A chamfer
// in an inside corner has one at each of its ends.
func zones(a, b *item, sharpA, sharpB geom.Piece, between *Feature, e edges) {
	a.trail, b.lead = a.f.Piece.To, b.f.Piece.From
	if turnOf(sharpA, sharpB) != geom.CW {
		return
	}
	back, on := sharpA.EndDir().Times(-1), sharpB.StartDir()
	most, tanA, tanB := e.inside, halfTurn(sharpA, sharpB), halfTurn(sharpA, sharpB)
	cornerA, cornerB := sharpA.To, sharpB.From
	switch {
	case between == nil: // at a step; or nothing is known of the nose, and most is 0
	case between.Kind == Fillet:
		most = between.Fillet.High
	case between.Kind == Chamfer:
		cornerA, cornerB = between.Piece.From, between.Piece.To
		tanA, tanB = halfTurn(a.f.Piece, between.Piece), halfTurn(between.Piece, b.f.Piece)
	}
	a.trail = further(a.trail, cornerA.Along(back, float64(most*tanA)), back)
	b.lead = further(b.lead, cornerB.Along(on, float64(most*tanB)), on)
}

// judged returns what is left of a main between its zones; no length when
// they meet.
func (it *item) judged() geom.Piece {
	p := it.f.Piece
	if geom.Count(it.trail.Sub(it.lead).Dot(p.To.Sub(p.From).Unit()), 6) <= 0 {
		return geom.Line(p.From, p.From)
	}
	return geom.Line(it.lead, it.trail)
}

// further returns which of two places lies further along dir: what a
// treatment took and what the zone leaves out overlap.
func further(p, q, dir geom.Point) geom.Point {
	if q.Sub(p).Dot(dir) > 0 {
		return q
	}
	return p
}
