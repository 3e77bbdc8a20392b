package post

import (
	"math"

	"taperwright/profiles/finding"
	"taperwright/profiles/geom"
	"taperwright/profiles/shop"
	"taperwright/toolpath"
)

// An R word is rounded to half a unit q/2; the arc through its ends then has
// its middle off by q/2 (1/cos(s/2) - 1), s being the sweep: 0.2 q at a quarter
// turn, without bound toward a half. So by R no more than a quarter turn
// stands in one block.
const mostByR = math.Pi / 2

// arc writes an arc.
func (w *writer) arc(m *toolpath.Move) {
	if w.m.Arcs.Value == "r" && m.Path.Sweep() > mostByR+1e-9 {
		n := int(math.Ceil(m.Path.Sweep()/mostByR - 1e-9))
		for _, p := range halves(m.Path, n) {
			part := *m
			part.Path = p
			w.oneArc(&part)
		}
		return
	}
	w.oneArc(m)
}

// halves cuts an arc in two, again and again, until there are at least n parts.
func halves(p geom.Piece, n int) []geom.Piece {
	if n < 2 {
		return []geom.Piece{p}
	}
	a, b := p.Split(p.Middle())
	return append(halves(a, (n+1)/2), halves(b, (n+1)/2)...)
}

func (w *writer) oneArc(m *toolpath.Move) {
	p, to, feed := m.Path, w.format.spot(m.Path.To), w.feedText(m.Feed)
	chord := geom.Line(p.From, p.To)
	sagitta := p.Middle().Sub(chord.Middle()).Len()
	small := geom.Count(2*sagitta, 7) < geom.Count(w.format.one, 7)
	switch {
	case to == w.here && small:
		w.program.ArcsDropped++
		return
	case small:
		w.program.ArcsAsLines++
		w.line(shop.Feed, to, feed)
		return
	}
	from, end := w.place(w.here), w.place(to)
	word := shop.ArcCW
	if (p.Turn == geom.CCW) != (w.m.ArcSense.Value == "mirrored") {
		word = shop.ArcCCW
	}
	allowed := w.m.ArcToleranceIn(w.format.unit)
	var words []string
	fit := fitting{off: math.Inf(1)}
	if to == w.here {
		// an arc whose sagitta shows but whose ends do not differ: a full turn less a hair
	} else if w.m.Arcs.Value == "r" {
		var r int64
		r, fit = w.format.byRadius(p, from, end)
		words = []string{"R" + w.format.number(r)}
	} else {
		var i, k int64
		i, k, fit = w.format.byCentre(p, from, end, allowed)
		words = []string{"I" + w.format.number(i), "K" + w.format.number(k)}
	}
	// The tolerance is about the gap. The middle is our own matter: ends off by
	// q/sqrt 2 and a centre off by as much leave it within 1.5 units.
	if !within(fit.gap, allowed) || !within(fit.off, max(allowed, 1.5*w.format.one)) {
		at := finding.Span{}
		if m.Feature >= 0 {
			at = w.part.Features[m.Feature].Span
		}
		w.fail(at, ArcNotKept, "post with more decimals, or say arc_tolerance if the lathe takes more",
			"%s: rounded to %d decimals, the arc of radius %s does not keep within %s mm", w.name, w.format.decimals, w.format.show(p.Radius()), geom.Fixed(allowed, 4))
		return
	}
	w.program.Arcs++
	w.moveTo(w.word(word), to, feed, words...)
}

// fitting says how well rounded words keep an arc, mm: gap is how far start
// and end differ in their distance from the centre as written, off how far the
// middle of the arc that a control then cuts lies off the wanted arc.
type fitting struct{ gap, off float64 }

func (f fitting) better(g fitting) bool {
	a, b := geom.Count(max(f.gap, f.off), 7), geom.Count(max(g.gap, g.off), 7)
	return a < b || a == b && geom.Count(f.gap+f.off, 7) < geom.Count(g.gap+g.off, 7)
}

func within(x, limit float64) bool { return geom.Count(x, 7) <= geom.Count(limit, 7) }

// around is how many counts about the exact figure are tried.
const around = 2

// byCentre returns I and K, from the start to the centre as radii, that keep
// the arc best between its rounded ends; a gap above allowed only where there
// is no other way. The places tried lie about the wanted centre moved to be
// equally far from both ends: rounding them has moved it, on a short arc of a
// large radius by many counts.
func (f format) byCentre(p geom.Piece, from, to geom.Point, allowed float64) (i, k int64, best fitting) {
	lead := centred(p.Center, from, to, p.Turn).Center.Sub(from)
	ni, nk := f.length(lead.R), f.length(lead.Z)
	best = fitting{math.Inf(1), math.Inf(1)}
	for di := int64(-around); di <= around; di++ {
		for dk := int64(-around); dk <= around; dk++ {
			c := from.Add(geom.Point{R: f.mm(ni + di), Z: f.mm(nk + dk)})
			if c == from {
				continue
			}
			fit := fitting{gap: math.Abs(c.Sub(from).Len() - c.Sub(to).Len()), off: off(p, centred(c, from, to, p.Turn))}
			if kept, was := within(fit.gap, allowed), within(best.gap, allowed); kept && !was || kept == was && fit.better(best) {
				i, k, best = ni+di, nk+dk, fit
			}
		}
	}
	return i, k, best
}

// byRadius returns R likewise. An R short of half the chord by no more than
// the arc tolerance would be taken for a half circle; the smallest is therefore
// half the chord, rounded up.
func (f format) byRadius(p geom.Piece, from, to geom.Point) (r int64, best fitting) {
	half := to.Sub(from).Len() / 2
	n := f.length(p.Radius())
	best = fitting{math.Inf(1), math.Inf(1)}
	for d := int64(-around); d <= around; d++ {
		size := f.mm(n + d)
		if size < half || n+d <= 0 {
			continue
		}
		away := math.Sqrt(float64(size*size) - float64(half*half))
		left := to.Sub(from).Unit().Left().Times(float64(p.Turn)) // the centre of a short arc lies on the side it turns to
		c := geom.Line(from, to).Middle().Along(left, away)
		if fit := (fitting{off: off(p, geom.Arc(from, to, c, p.Turn))}); fit.better(best) {
			r, best = n+d, fit
		}
	}
	return r, best
}

// centred returns the arc that a control cuts: its centre moved to the nearest
// place that is equally far from both ends.
func centred(c, from, to geom.Point, turn geom.Turn) geom.Piece {
	middle, left := geom.Line(from, to).Middle(), to.Sub(from).Unit().Left()
	return geom.Arc(from, to, middle.Along(left, c.Sub(middle).Dot(left)), turn)
}

// off returns how far the middle of got lies off the circle of want.
func off(want, got geom.Piece) float64 {
	return math.Abs(got.Middle().Sub(want.Center).Len() - want.Radius())
}
