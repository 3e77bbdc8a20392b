package profiles

import (
	"math"

	"taperwright/profiles/geom"
)

// layout makes the contour of the mains: where each begins and ends, aim
// sizes, before corners are treated. It returns false when something does not
// fit together.
func (r *reader) layout(mains, treats []*item) ([]*item, []*item, bool) {
	ok := true
	var outM, outT []*item
	for i, it := range mains {
		outM, outT = append(outM, it), append(outT, treats[i])
		if i+1 == len(mains) {
			break
		}
		next := mains[i+1]
		if it.bad || next.bad {
			ok = false
			continue
		}
		fits, step := r.joint(it, next)
		if !fits {
			ok = false
			continue
		}
		if step != nil {
			if t := treats[i]; t != nil {
				r.failAt(t.table.Span(), NoCorner, "leave it out", "%s stands between %s and %s, which run on into one another", t.f.Name, it.f.Name, next.f.Name)
				ok = false
			}
			outT[len(outT)-1] = nil
			outM, outT = append(outM, step), append(outT, nil)
		}
	}
	if !ok || mains[len(mains)-1].bad {
		return nil, nil, false
	}
	for i, it := range outM {
		it.ends(i+1 == len(outM))
		if i > 0 && !r.standing(outM[i-1], it) {
			ok = false
		}
	}
	return outM, outT, ok
}

// joint settles where a and b meet, by setting where a ends and b begins. It
// returns the step between them where both are cylinders (or parallel cones)
// of one nominal size but not of one aim. False, with a finding, when they do
// not meet.
func (r *reader) joint(a, b *item) (bool, *item) {
	fa, fb := &a.f, &b.f
	switch {
	case fb.Kind == Shoulder && fa.Kind == Shoulder:
		return false, nil // refused by meets
	case fb.Kind == Shoulder:
		p := geom.Point{Z: fb.Z.Aim, R: a.rAt(fb.Z.Aim)}
		a.f.Piece.To, b.f.Piece.From = p, p
		b.front = a.back
		b.dir = geom.Point{R: 1}
		if b.back < a.back {
			b.dir.R = -1
		}
		return true, nil
	case fa.Kind == Shoulder:
		if a.table != nil && r.apart(a, b) { // the front face reaches wherever the first feature begins
			return r.stepped(a, b), nil
		}
		p := geom.Point{Z: fa.Z.Aim, R: b.rAt(fa.Z.Aim)}
		a.f.Piece.To, b.f.Piece.From = p, p
		return true, nil
	case r.apart(a, b):
		return r.stepped(a, b), nil
	}
	plane := fb.ZFrom
	p := geom.Point{Z: plane.Aim, R: a.rAt(plane.Aim)}
	q := geom.Point{Z: plane.Aim, R: b.rAt(plane.Aim)}
	if turn := a.dir.Cross(b.dir); math.Abs(turn) > straightOn {
		at, _ := geom.LinesMeet(a.at, a.dir, b.at, b.dir)
		if geom.Count(at.Z, 6) < geom.Count(plane.Low, 6) || geom.Count(at.Z, 6) > geom.Count(plane.High, 6) {
			r.failAt(b.table.Span(), PlaneMoves, "bring their aims together (tolerance, aim), widen the tolerance of the length, or put a shoulder between them",
				"cut to their aims, %s and %s meet %s from where the drawing has it; the plane may lie %s before and %s behind",
				fa.Name, fb.Name, r.say(math.Abs(at.Z-plane.Aim)), r.say(plane.High-plane.Aim), r.say(plane.Aim-plane.Low))
			return false, nil
		}
		fa.ZTo.Aim, fb.ZFrom.Aim = at.Z, at.Z
		p, q = at, at
	}
	fa.Piece.To, fb.Piece.From = p, q
	if geom.Count(p.R-q.R, 7) == 0 {
		fb.Piece.From = p
		return true, nil
	}
	step := &item{step: true, f: Feature{Name: "step before " + fb.Name, Kind: Shoulder, Z: plane, Span: fb.Span}, at: geom.Point{Z: plane.Aim}, dir: geom.Point{R: 1}}
	if q.R < p.R {
		step.dir.R = -1
	}
	step.f.Piece = geom.Line(p, q)
	step.front, step.back = a.back, b.front
	return true, step
}

// apart tells whether the nominal diameters of a's end and b's start differ
// by more than what they stand for.
func (r *reader) apart(a, b *item) bool {
	return geom.Count(math.Abs(a.back-b.front), 7) > geom.Count(a.play+b.play, 7)
}

// stepped adds the finding about nominals that differ. It returns false.
func (r *reader) stepped(a, b *item) bool {
	help := "put a shoulder of diameter " + r.say(2*b.front) + " between them, or mend a diameter"
	if a.f.Kind == Shoulder {
		help = "the shoulder is to reach " + r.say(2*b.front) + ", or mend " + b.f.Name
	}
	for _, it := range []*item{a, b} {
		other, mine := b.front, it.front // what it would offer if turned about
		if it == b {
			other, mine = a.back, it.back
		}
		if it.f.Cone != nil && geom.Count(math.Abs(other-mine), 7) <= geom.Count(a.play+b.play, 7) {
			help = "is " + it.f.Name + " the wrong way round? with its large_at the other way they would meet"
		}
	}
	r.failAt(b.table.Span(), DiameterStep, help, "%s ends at diameter %s and %s begins at diameter %s, with no shoulder between", a.f.Name, r.say(2*a.back), b.f.Name, r.say(2*b.front))
	return false
}

// ends fills in the radii at both ends, and where the last main ends:
// nothing behind it has said so.
func (it *item) ends(last bool) {
	f := &it.f
	switch {
	case last && f.Kind == Shoulder:
		f.Piece.To = geom.Point{Z: f.Z.Aim, R: it.back}
	case last:
		f.Piece.To = geom.Point{Z: f.ZTo.Aim, R: it.rAt(f.ZTo.Aim)}
	}
	exact := func(nominal, aim float64) Size { return Size{Nominal: nominal, Low: aim, Aim: aim, High: aim} }
	f.RFrom, f.RTo = exact(it.front, f.Piece.From.R), exact(it.back, f.Piece.To.R)
}

// standing tells, with a finding when not, whether it runs the way it is
// to: a shoulder has height, a journal or taper length, and the contour
// stays above the axis.
func (r *reader) standing(before, it *item) bool {
	p := it.f.Piece
	long := p.To.Sub(p.From).Dot(it.dir)
	switch {
	case geom.Count(min(p.From.R, p.To.R), 6) < 0:
		r.failAt(it.table.Span(), NoRoom, "make it shorter or thicker", "cut to its aim, %s would cross the axis", it.f.Name)
	case geom.Count(long, 6) > 0 || it.step:
		return true
	case it.f.Kind == Shoulder:
		r.failAt(it.table.Span(), BadNeighbours, "leave it out, or give another diameter", "%s has no height: %s ends at the same diameter", it.f.Name, before.f.Name)
	default:
		r.failAt(it.table.Span(), PlaneMoves, "look at its length and at the aims of its neighbours", "cut to its aim, %s has no length left", it.f.Name)
	}
	return false
}
