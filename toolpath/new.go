package toolpath

import (
	"math"

	"taperwright/profiles"
	"taperwright/profiles/finding"
	"taperwright/profiles/geom"
	"taperwright/profiles/shop"
)

// job is the state of one New.
type job struct {
	part   *profiles.Part
	setup  int
	into   *finding.List
	errors int
	zero   float64 // z of the part's frame in the program's
	plan   *Plan
}

// New plans set-up n of part, outside work held at the back; nil when it
// cannot be cut as asked, with every reason as an error in into.
func New(part *profiles.Part, n int, into *finding.List) *Plan {
	j := &job{part: part, setup: n, into: into, plan: &Plan{Setup: n}}
	if !j.possible() {
		return nil
	}
	j.zero = part.Setups[n].Zero

	finisher, c := j.finisher()
	if finisher == nil {
		return nil
	}
	if !j.inStock(c) || !j.ready(finisher, false) {
		return nil
	}
	if !j.cutAll(finisher, c) || j.errors > 0 {
		return nil
	}
	j.say(finisher)
	return j.plan
}

// possible refuses what is not planned, or has no place to start from.
func (j *job) possible() bool {
	p := j.part
	if j.setup < 0 || j.setup >= len(p.Setups) {
		j.refuse(finding.Span{}, CodeNotPlanned, "", "there is no set-up %d", j.setup+1)
		return false
	}
	s := p.Setups[j.setup]
	if s.Back || j.setup > 0 {
		j.refuse(s.Span, CodeNotPlanned, "give one set-up with face = \"front\"; plan the other end as a part of its own",
			"a second set-up, turned end for end, is not planned yet")
	}
	for _, f := range p.Features {
		if f.Inside && f.Setup == j.setup {
			j.refuse(f.Span, CodeNotPlanned, "leave the bore to a [[later]] row", "%s: inside work is not planned yet", f.Name)
			break
		}
	}
	if p.Shop == nil {
		j.refuse(finding.Span{}, CodeNoTool, "name a shop file: shop = \"shop.toml\"", "the part names no shop, so there is no lathe and no tool")
		return false
	}
	m := &p.Shop.Machine
	if m.Compensation.Value == "control" {
		j.refuse(m.Compensation.From, CodeNotPlanned, "write compensation = \"tip-path\": the path is then the programmed point's, the nose radius worked in",
			"compensation by the control is not planned yet")
	}
	if !m.Change.Given {
		j.refuse(m.Span, CodeNoChangePoint, "give change = { diameter = ..., z = ... } clear of the stock",
			"[machine] has no change point, so no tool has a place to start from")
	} else if m.Change.Value.R < p.Stock.Radius+p.Stock.Oversize+clearance && m.Change.Value.Z-s.Zero < p.Stock.Front+p.Stock.Oversize+clearance {
		j.refuse(m.Change.From, CodeNoChangePoint, "move it beyond a diameter of "+j.mm(2*(p.Stock.Radius+p.Stock.Oversize+clearance))+", or in front of the stock",
			"the change point lies within %s of the stock", j.mm(clearance))
	}
	return j.errors == 0
}

// finisher returns the first tool of the file that reaches everything, and
// the contour it cuts.
func (j *job) finisher() (*shop.Tool, contour) {
	tools := j.tools("finish")
	if len(tools) == 0 {
		j.refuse(j.part.Shop.Machine.Span, CodeNoTool, "add a [[tool]] with kind = \"turn\", side = \"outside\", purpose = \"finish\" or \"both\", right hand",
			"the shop has no tool that finishes outside work toward the chuck")
		return nil, contour{}
	}
	var least []refusal
	for i, t := range tools {
		c := j.contourFor(t.Nose)
		if len(c.sides) == 0 {
			j.refuse(j.part.Setups[j.setup].Span, CodeNotPlanned, "give at least one feature that is cut in this set-up", "nothing is to be cut in this set-up")
			return nil, contour{}
		}
		if !(t.CuttingAngle.Value > 0) && !t.Round {
			if len(tools) == 1 {
				j.ready(t, false)
				return nil, contour{}
			}
			continue
		}
		why := j.fits(t, c)
		if len(why) == 0 {
			return t, c
		}
		if i == 0 || len(why) < len(least) || least == nil {
			least = why
		}
	}
	for _, r := range least {
		j.refuse(j.part.Features[r.feature].Span, r.code, r.help, "%s", r.message)
	}
	if least == nil {
		j.ready(tools[0], false)
	}
	return nil, contour{}
}

// inStock refuses a contour that leaves the raw piece.
func (j *job) inStock(c contour) bool {
	ok := true
	s := j.part.Stock
	edges := c.sides
	if c.face != nil {
		edges = append(track{*c.face}, edges...)
	}
	for _, e := range edges {
		lo, hi := e.Bounds()
		f := j.part.Features[e.owner]
		switch {
		case geom.Count(hi.R, 6) > geom.Count(s.Radius, 6):
			j.refuse(f.Span, CodeStockTooSmall, "a stock diameter of "+j.mm(2*hi.R)+" or more would do",
				"%s needs a diameter of %s; the stock has %s", f.Name, j.mm(2*hi.R), j.mm(2*s.Radius))
		case geom.Count(hi.Z, 6) > geom.Count(s.Front, 6):
			j.refuse(f.Span, CodeStockTooSmall, "give the metal on the front face: [stock] front",
				"%s needs metal at z %s; the stock begins at %s", f.Name, j.mm(hi.Z), j.mm(s.Front))
		case geom.Count(lo.Z, 6) < geom.Count(s.Front-s.Length, 6):
			j.refuse(f.Span, CodeStockTooSmall, "a stock length of "+j.mm(s.Front-lo.Z)+" or more would do",
				"%s reaches to z %s; the stock ends at %s", f.Name, j.mm(lo.Z), j.mm(s.Front-s.Length))
		default:
			continue
		}
		ok = false
	}
	return ok
}

// torn reports a fault of ours: a contour whose offset does not close.
func (j *job) torn(t *shop.Tool, err error) bool {
	j.refuse(finding.Span{}, CodeInternal, "please report this part file", "internal: %s: %v", t.Name, err)
	return false
}

// facing tells whether there is a front face to cut: metal on it, or none of
// it left to a round end.
func (j *job) facing(c contour) bool { return geom.Count(j.part.Stock.Front, 6) > 0 }

// cutAll adds the operations.
func (j *job) cutAll(fin *shop.Tool, c contour) bool {
	rougher := fin
	if list := j.tools("rough"); len(list) > 0 {
		rougher = list[0]
	}
	skin := or(rougher.Skin, defaultSkin)

	front, ok := j.faceRough(rougher, fin, c, skin)
	if !ok {
		return false
	}
	// where the finished path runs
	fa := j.finishAim(fin, c)
	finish, err := fa.path(j.target(c, fa))
	if err != nil {
		return j.torn(fin, err)
	}
	var been []swept

	// level roughing
	first, ok := j.levels(rougher, fin, c, skin, front, nil)
	if !ok {
		return false
	}
	if first.path != nil {
		been = append(been, swept{first.path.chain(), rougher.Nose})
	}
	plan := j.skinUnder(finish, fin.Nose, front, been)
	least := or(rougher.LeastDepth, defaultLeast)
	if first.short && first.path != nil && rougher != fin && plan.Most > skin+least {
		// what the first insert does not reach, with the one that does
		was, err := first.path.offset(fin.Nose - rougher.Nose)
		if err != nil {
			return j.torn(rougher, err)
		}
		rest, ok := j.levels(fin, fin, c, skin, front, was.profile())
		if !ok {
			return false
		}
		if rest.path != nil {
			been = append(been, swept{rest.path.chain(), fin.Nose})
		}
		plan = j.skinUnder(finish, fin.Nose, front, been)
	}
	j.plan.Rough = plan

	// Even it out where more than half a skin too much was left. Where less
	// was left (stock that is small) no pass can add any.
	if plan.Most-skin > float64(skin/2)+1e-9 {
		sa := fa
		sa.dist += skin
		semi, err := sa.path(j.target(c, sa))
		if err != nil {
			return j.torn(fin, err)
		}
		r := j.operation(fin, "semi-finish")
		r.pass("even skin " + j.mm(skin))
		j.contourPass(r, sa, semi)
		j.done(r)
		been = append(been, swept{semi.chain(), fin.Nose})
		plan = j.skinUnder(finish, fin.Nose, front, been)
	}
	j.plan.Skin = plan

	r := j.operation(fin, "finish")
	if j.facing(c) {
		j.faceFinish(r, fin, c, skin)
	}
	r.pass("contour")
	j.contourPass(r, fa, finish)
	j.done(r)
	return true
}

// roughed is what a tool has done in levels.
type roughed struct {
	path  track // the lowest places of its nose centre; nothing when it had nothing to do
	short bool  // its edges do not reach everything
}

// levels adds the roughing operation of tool t, if there is anything for it
// to do. metal says where its nose centre touches what an earlier tool left;
// nil is the raw stock, front its face.
func (j *job) levels(t, fin *shop.Tool, c contour, skin, front float64, metal profile) (roughed, bool) {
	var none roughed
	waste := pastEnd + max(t.Nose, fin.Nose) + wasteGap + skin
	a := aim{nose: t.Nose, dist: t.Nose + skin, clearZ: front + j.part.Stock.Oversize + clearance + t.Nose, beyond: waste, wall: true, rise: reachOf(t).rise}
	target, shadows := j.target(c, a).shaded(reachOf(t))
	path, err := a.path(target)
	if err != nil {
		return none, j.torn(t, err)
	}
	w := &roughing{
		free:   path.profile(),
		depth:  t.Depth.Value,
		least:  or(t.LeastDepth, defaultLeast),
		clearZ: a.clearZ,
		stock:  j.part.Stock.Radius + t.Nose,
		name:   func(r float64) string { return "level, diameter " + j.mm(2*(r-t.Nose)) },
	}
	end := path[len(path)-1].To.Z - 1
	w.metal, w.rest = metal, metal != nil
	if !w.rest {
		w.metal = profile{{geom.Line(geom.Point{Z: front + t.Nose, R: w.stock}, geom.Point{Z: end, R: w.stock}), tail}}
	}
	w.start()
	r := j.operation(t, "rough")
	w.ride = r
	all := band{max(a.clearZ, w.free[0].From.Z), end}
	top := min(w.metal.highest(all), w.stock)
	if count(top) > count(w.lowestFloor(all, top)) && w.depth <= 0 {
		// there is something to rough: now the depth must be known
		j.ready(t, true)
		return none, false
	}
	w.work(all, top, math.Inf(1))
	if w.lost {
		return none, j.torn(t, errEndless)
	}
	if w.levels >= maxLevels {
		j.refuse(t.Span, CodeToolData, "give a greater depth", "%s: a depth of %s would take more than %d levels", t.Name, j.mm(w.depth), maxLevels)
		return none, false
	}
	done := roughed{short: len(shadows) > 0}
	if w.levels == 0 {
		return done, true
	}
	if !j.ready(t, true) {
		return none, false
	}
	j.done(r)
	done.path = w.reached()
	return done, true
}

// lowestFloor is the lowest place that levels would go down to, top when
// there is none worth one.
func (w *roughing) lowestFloor(b band, top float64) float64 {
	low := top
	for _, f := range w.floors(b, top) {
		if geom.Count(top-f.r, 6) >= geom.Count(w.least, 6) {
			low = min(low, f.r)
		}
	}
	return low
}

// contourPass cuts along path in one go: begun in the air on the extension
// of the first flank, so that X already moves the cutting way at the metal,
// and left at 45 degrees past the end.
func (j *job) contourPass(r *rider, a aim, path track) {
	start := path[0].From
	r.over(geom.Point{Z: max(a.clearZ, start.Z), R: start.R})
	r.cut(start, lead)
	r.follow(path)
	r.cut(r.at.Add(geom.Point{Z: retract, R: retract}), lead)
}
