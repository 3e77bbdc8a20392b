package toolpath

import (
	"cmp"
	"math"
	"slices"

	"taperwright/profiles/geom"
)

// roughing cuts metal in levels: straight passes along the axis, each at one
// radius of the nose centre, each ended by going up the flank it meets to the
// level before, so that the flanks are left even.
type roughing struct {
	free   profile // the nose centre may come down to here: contour, nose and skin
	metal  profile // the nose centre touches metal when it comes down to here
	depth  float64 // greatest depth of a level
	least  float64 // smallest
	clearZ float64 // of the nose centre: no metal before it
	stock  float64 // r of the nose centre when the nose touches the raw cylinder
	rest   bool    // what another tool left: travel over the stock only
	ride   *rider
	name   func(r float64) string

	frontEnd  geom.Point // where the first flank begins
	fromFront bool       // and rises
	left      []leaving  // flats whose layer was too thin for a level
	levels    int
	deep      int
	lost      bool // a fault of ours: stretches without end
}

// leaving is a flat over which roughing leaves metal up to top.
type leaving struct {
	edge int
	top  float64
}

// maxLevels bounds the work for a depth far too small for the stock.
const maxLevels = 5000

// stretch is a part of one level that meets metal.
type stretch struct {
	run
	zFront, zBack     float64
	airFront, airBack bool // ends where metal ends, not on the contour
}

// group is what is to be cut at one level between two flanks: one stretch, or
// several where another insert has been.
type group []stretch

func (g group) band() band { return band{g[0].front.q.Z, g[0].back.q.Z} }

// stretches returns what is to be cut at r within b, front to back.
func (w *roughing) stretches(r float64, b band) []group {
	var out []group
	metal := w.metal.above(r)
	for _, u := range w.free.below(r) {
		front, back := u.front.q.Z, u.back.q.Z
		if front < b.back || back > b.front || front-back > 1e-6 && min(front, b.front)-max(back, b.back) < 1e-7 {
			continue // beside b, or a neighbour that only touches it
		}
		var g group
		for _, m := range metal {
			s := stretch{run: u, zFront: front, zBack: back}
			if m.front < s.zFront {
				s.zFront, s.airFront = m.front, true
			}
			if m.back > s.zBack {
				s.zBack, s.airBack = m.back, true
			}
			if s.zFront < s.zBack {
				continue
			}
			if mid := (s.zFront + s.zBack) / 2; count(w.metal.at(mid)) <= count(r)+10 { // a sliver where both flanks are one
				continue
			}
			g = append(g, s)
		}
		if len(g) > 0 {
			out = append(out, g)
		}
	}
	return out
}

// floor is a radius that levels must end on: a flat, or a lowest place.
type floor struct {
	r    float64
	edge int // the flat; -1: a point
}

// floors returns the floors within b under top that carry metal, highest first.
func (w *roughing) floors(b band, top float64) []floor {
	var out []floor
	add := func(r, z float64, edge int) {
		if count(r) >= count(top) || z > b.front+geom.Near || z < b.back-geom.Near {
			return
		}
		if count(w.metal.at(z)) > count(r)+10 {
			out = append(out, floor{r, edge})
		}
	}
	for i, e := range w.free {
		a, c := count(e.From.R), count(e.To.R)
		if a == c && e.From.Z-e.To.Z > 1e-6 {
			add(e.From.R, max(min((e.From.Z+e.To.Z)/2, b.front), b.back), i)
			continue
		}
		if i > 0 && c > a {
			if p := w.free[i-1]; count(p.From.R) > count(p.To.R) {
				add(e.From.R, e.From.Z, -1)
			}
		}
		if i == len(w.free)-1 && c < a {
			add(e.To.R, e.To.Z, -1)
		}
	}
	if w.fromFront {
		add(w.frontEnd.R, w.frontEnd.Z, -1)
	}
	if w.rest { // what another insert left may stand on a slope: the lowest corner under it
		low := math.Inf(1)
		var z float64
		for _, e := range w.free {
			if count(w.metal.at(e.From.Z)) > count(e.From.R)+10 {
				if e.From.R < low {
					low, z = e.From.R, e.From.Z
				}
			} else if low < math.Inf(1) {
				add(low, z, -1)
				low = math.Inf(1)
			}
		}
	}
	slices.SortStableFunc(out, func(a, b floor) int { return cmp.Compare(b.r, a.r) })
	return out
}

// start finds where the first flank begins, or where the metal does if that
// is further back, and whether it rises from there: a level may then come in
// along it.
func (w *roughing) start() {
	for _, e := range w.free {
		if e.owner < 0 {
			continue
		}
		w.frontEnd, w.fromFront = e.From, count(e.To.R) > count(e.From.R)
		if front := w.metal[0].From.Z; w.fromFront && front < e.From.Z {
			w.frontEnd = geom.Point{Z: front, R: w.free.lowest(front)}
		}
		return
	}
}

// work cuts everything within b that stands under top, the first level no
// higher than first. Where a level falls into several stretches each is
// finished before the next, from the front.
func (w *roughing) work(b band, top, first float64) {
	w.deep++
	defer func() { w.deep-- }()
	if w.deep > maxLevels {
		w.lost = true
	}
	for w.levels < maxLevels && !w.lost {
		floors := w.floors(b, top)
		// The next floor that is worth a level. A flat less than the least
		// depth down is left to the next pass.
		aim := -1
		for i, f := range floors {
			if geom.Count(top-f.r, 6) >= geom.Count(w.least, 6) {
				aim = i
				break
			}
			if f.edge >= 0 && !slices.ContainsFunc(w.left, func(l leaving) bool { return l.edge == f.edge }) {
				e := w.free[f.edge]
				w.left = append(w.left, leaving{f.edge, min(top, w.metal.highest(band{e.From.Z, e.To.Z}))})
			}
		}
		if aim < 0 {
			return
		}
		down := top - floors[aim].r
		n := math.Ceil(down/w.depth - 1e-9)
		r := floors[aim].r
		if n > 1 {
			r = top - down/n
		}
		r = min(r, first)
		groups := w.stretches(r, b)
		if len(groups) > 1 {
			for _, g := range groups {
				w.work(g.band(), top, r)
			}
			return
		}
		for _, g := range groups { // one or none: all of it may stand lower already
			for _, s := range g {
				w.level(s, r, top)
			}
			b = g.band()
		}
		top, first = r, math.Inf(1)
	}
}

// level cuts one stretch at r, metal standing up to top.
func (w *roughing) level(s stretch, r, top float64) {
	w.levels++
	w.ride.pass(w.name(r))
	travel := top + lift
	if w.rest || count(top) >= count(w.stock) {
		travel = w.ride.safeR
	}
	const air = 1.0 // before and after metal
	open := s.front.i == 0 && s.front.q == w.free[0].From && (!w.rest || !s.airFront)
	arrive := func(q geom.Point, metal bool) {
		w.ride.rapidR(max(w.ride.at.R, travel))
		w.ride.rapidZ(q.Z)
		if metal {
			// The flank may end under the level before: metal stands up to top.
			if over := max(q.R, top) + lift; w.ride.at.R > over {
				w.ride.rapidR(over)
			}
			w.ride.enter(q)
		} else {
			w.ride.rapidR(q.R)
		}
	}
	switch {
	case open && w.fromFront && count(w.frontEnd.R) < count(r) && geom.Count(r-w.frontEnd.R, 6) < geom.Count(w.least, 6):
		// The layer below is too thin for a level of its own (an edge break,
		// mostly): come in along it instead.
		way := w.free.climb(spot{0, w.free[0].From}, r)
		arrive(geom.Point{Z: max(w.clearZ, w.free[0].From.Z), R: w.free[0].From.R}, false)
		w.ride.cut(w.free[0].From, lead)
		w.ride.follow(unowned(way))
		w.ride.cut(geom.Point{Z: w.ride.at.Z, R: r}, lead)
	case open:
		arrive(geom.Point{Z: max(w.clearZ, s.front.q.Z), R: r}, false)
	case s.airFront && s.front.q.Z > s.zFront+air:
		arrive(geom.Point{Z: s.zFront + air, R: r}, true)
	default:
		way := w.free.descend(s.front, top)
		q := geom.Point{Z: s.front.q.Z, R: r}
		if len(way) > 0 {
			q = way[0].From
		}
		arrive(q, true)
		w.ride.descend(way)
	}
	if s.airBack && s.back.q.Z < s.zBack-air {
		w.ride.cut(geom.Point{Z: s.zBack - air, R: r}, lead)
	} else {
		w.ride.cut(geom.Point{Z: s.back.q.Z, R: r}, lead)
		w.ride.follow(unowned(w.free.climb(s.back, top)))
	}
	w.ride.cut(w.ride.at.Add(geom.Point{Z: lift, R: lift}), lead)
}

// unowned marks a path as no feature's: roughing makes none.
func unowned(path []edge) []edge {
	for i := range path {
		path[i].owner = lead
	}
	return path
}

// reached returns the lowest places of the nose centre after the work: the
// free profile, but over a flat that was left the level above it, from where
// the nose last came down to the flat's height to where it left that level.
func (w *roughing) reached() track {
	t := track(slices.Clone(w.free))
	for _, l := range w.left {
		flat := w.free[l.edge]
		i := slices.Index(t, flat)
		if i < 0 || count(l.top) <= count(flat.From.R) {
			continue
		}
		front, back := t[:i:i], t[i+1:]
		start, end := geom.Point{Z: flat.From.Z, R: l.top}, geom.Point{Z: flat.To.Z, R: l.top}
		for len(front) > 0 { // a flank that falls to the flat was not followed down
			e := front[len(front)-1]
			if count(e.From.R) < count(e.To.R) {
				front = append(front, edge{geom.Line(e.To, geom.Point{Z: e.To.Z, R: l.top}), shade})
				break
			}
			front = front[:len(front)-1]
			start.Z = e.From.Z
			if count(e.From.R) >= count(l.top) {
				start.Z = e.ZAt(l.top)
				e.Piece, _ = e.Split(start)
				front = append(front, e)
				break
			}
		}
		for len(back) > 0 { // nor was one that rises from it followed up
			e := back[0]
			if count(e.To.R) < count(e.From.R) {
				back = append(track{edge{geom.Line(geom.Point{Z: e.From.Z, R: l.top}, e.From), shade}}, back...)
				break
			}
			back = back[1:]
			end.Z = e.To.Z
			if count(e.To.R) >= count(l.top) {
				end.Z = e.ZAt(l.top)
				_, e.Piece = e.Split(end)
				back = append(track{e}, back...)
				break
			}
		}
		t = append(append(front, edge{geom.Line(start, end), shade}), back...)
	}
	return slices.DeleteFunc(t, func(e edge) bool { return e.To.Sub(e.From).Len() <= geom.Near })
}
