package toolpath

import (
	"taperwright/profiles/geom"
	"taperwright/profiles/shop"
)

// rider moves the nose centre of one tool in the part's frame and writes down
// the moves of the programmed point in the program's.
type rider struct {
	op     *Operation
	at     geom.Point // nose centre
	toTip  geom.Point // from the nose centre to the programmed point, and to the program's frame
	safeR  float64    // of the nose centre: over the stock by the clearance
	feed   float64    // mm/rev
	change geom.Point // of the nose centre, at the change point
}

// tipOf returns the programmed point seen from the nose centre: the corner of
// the nose's tangents parallel to the axes.
func tipOf(t *shop.Tool) geom.Point {
	return geom.Point{Z: float64(t.Nose * float64(t.TipZ)), R: float64(t.Nose * float64(t.TipX))}
}

// pass begins a new pass.
func (r *rider) pass(name string) {
	r.op.Passes = append(r.op.Passes, Pass{Name: name})
}

func (r *rider) add(p geom.Piece, rapid bool, feed float64, owner int) {
	if p.To.Sub(p.From).Len() <= geom.Near {
		return
	}
	if p.From.Sub(r.at).Len() <= 1e-6 {
		p.From = r.at // levels and flanks meet to within a count of 1e-7
	}
	m := Move{Path: p.Shift(r.toTip), Rapid: rapid, Feed: feed, Feature: max(owner, -1)}
	last := &r.op.Passes[len(r.op.Passes)-1]
	last.Moves = append(last.Moves, m)
	r.at = p.To
}

// rapidZ and rapidR move along one axis at a time: straight and dog-leg are
// then the same.
func (r *rider) rapidZ(z float64) {
	r.add(geom.Line(r.at, geom.Point{Z: z, R: r.at.R}), true, 0, lead)
}

func (r *rider) rapidR(to float64) {
	r.add(geom.Line(r.at, geom.Point{Z: r.at.Z, R: to}), true, 0, lead)
}

// cut feeds straight to q.
func (r *rider) cut(q geom.Point, owner int) { r.add(geom.Line(r.at, q), false, r.feed, owner) }

// enter feeds straight to q into metal: at half the feed, since nose and
// minor edge cut on both sides there (common practice).
func (r *rider) enter(q geom.Point) { r.add(geom.Line(r.at, q), false, r.feed/2, lead) }

// follow feeds along a path that begins where the rider stands.
func (r *rider) follow(path []edge) {
	for _, e := range path {
		r.add(e.Piece, false, r.feed, e.owner)
	}
}

// descend feeds down a flank into metal, slower where it is steep.
func (r *rider) descend(path []edge) {
	const steep = 0.25 // fall to length, about 15 degrees
	for _, e := range path {
		feed := r.feed
		if d := e.To.Sub(e.From); -d.R > steep*d.Len() {
			feed /= 2
		}
		r.add(e.Piece, false, feed, lead)
	}
}

// over moves the tool at rapid to q by way of r.safeR: up, along, down.
func (r *rider) over(q geom.Point) {
	r.rapidR(max(r.at.R, r.safeR))
	r.rapidZ(q.Z)
	r.rapidR(q.R)
}

// home moves the tool to the change point.
func (r *rider) home() { r.over(r.change) }
