package motion

import (
	"math"

	"taperwright/profiles/geom"
	"taperwright/profiles/shop"
)

// arc makes the arc of the block from the tip to its end (definitions 18). The
// ends stand as written. It returns the zero Piece for an arc that is nothing.
func (r *reader) arc(to geom.Point) (geom.Piece, bool) {
	b := &r.b
	at := b.span("XZUWIKR", motionGroup)
	turn := geom.CW // G2 on the picture with Z to the right and X up, wherever the tool stands
	if r.mode == shop.ArcCCW {
		turn = geom.CCW
	}
	if r.m.ArcSense.Value == "mirrored" {
		turn = -turn
	}
	from := r.tip
	chord := to.Sub(from)
	half := float64(chord.Len() / 2)
	tolerance := r.m.ArcToleranceIn(r.unit())
	radius, i, k := b.get('R'), b.get('I'), b.get('K')
	centred := i != nil || k != nil
	switch {
	case radius != nil && centred:
		return geom.Piece{}, r.stop(at, ArcCentre, "give either R or I and K", "an arc with R and with I or K")
	case radius == nil && !centred:
		return geom.Piece{}, r.stop(at, ArcCentre, "give R, or I and K from the start to the centre", "an arc without R, I or K: its centre is not said")
	case 2*half <= geom.Near && centred:
		return geom.Piece{}, r.stop(at, ArcNoLength, "write two arcs of half a turn, or leave it out", "an arc that ends where it begins: a full circle, or nothing")
	case 2*half <= geom.Near: // every reading of it stays where it is, but for those that refuse it
		r.into.Error(at, ArcNoLength, "leave it out", "an arc by R that ends where it begins")
		r.arrive()
		return geom.Piece{}, true
	}
	middle := geom.Point{Z: float64((from.Z + to.Z) / 2), R: float64((from.R + to.R) / 2)}
	left := chord.Unit().Left()
	if radius != nil {
		return r.arcByRadius(to, middle, left, half, turn, tolerance)
	}
	centre := from
	if i != nil {
		centre.R += r.length(i.Number) // a radius, also where X is a diameter
	}
	if k != nil {
		centre.Z += r.length(k.Number)
	}
	start, end := centre.Sub(from).Len(), centre.Sub(to).Len()
	if start <= geom.Near {
		return geom.Piece{}, r.stop(at, ArcCentre, "I and K lead from the start to the centre", "an arc whose centre is its start")
	}
	if gap := math.Abs(start - end); geom.Count(gap, 7) > geom.Count(tolerance, 7) {
		return geom.Piece{}, r.stop(at, ArcMismatch, "I and K lead from the start to the centre, as radii; if it was meant so, say arc_tolerance",
			"the centre lies %s mm from the start and %s mm from the end: %s mm apart, %s mm allowed",
			geom.Fixed(start, 4), geom.Fixed(end, 4), geom.Fixed(gap, 4), geom.Fixed(tolerance, 4))
	}
	// the nearest point that is equally far from both ends
	return geom.Arc(from, to, middle.Along(left, centre.Sub(middle).Dot(left)), turn), true
}

// arcByRadius makes the arc by R: at most half a turn, or with R below 0 at
// least half a turn where the machine knows that. R short of half the chord by
// no more than the tolerance is a half circle.
func (r *reader) arcByRadius(to, middle, left geom.Point, half float64, turn geom.Turn, tolerance float64) (geom.Piece, bool) {
	w := r.b.get('R')
	long := w.Number.Neg && !w.Number.Zero()
	size := math.Abs(r.length(w.Number))
	if w.Number.Zero() {
		return geom.Piece{}, r.stop(w.Span, ArcCentre, "give the radius", "an arc with the radius 0")
	}
	if long && r.m.LongArc.Value == "none" {
		return geom.Piece{}, r.stop(w.Span, BadValue, "write it as two arcs, or with I and K", "%s: R below 0 has no meaning on this lathe", w)
	}
	away := 0.0 // of the centre from the chord, to its left
	if size < half {
		if geom.Count(half-size, 7) > geom.Count(tolerance, 7) {
			return geom.Piece{}, r.stop(r.b.span("XZUWR", motionGroup), ArcRadiusShort, "R is the radius, also where X is a diameter",
				"the ends are %s mm apart: no arc of radius %s mm joins them", geom.Fixed(2*half, 4), geom.Fixed(size, 4))
		}
	} else {
		away = math.Sqrt((size - half) * (size + half))
	}
	if (turn == geom.CW) != long { // less than half a turn counterclockwise has its centre on the left
		away = -away
	}
	return geom.Arc(r.tip, to, middle.Along(left, away), turn), true
}
