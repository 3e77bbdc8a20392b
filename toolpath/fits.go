package toolpath

import (
	"math"

	"taperwright/profiles"
	"taperwright/profiles/geom"
	"taperwright/profiles/shop"
)

// refusal is one reason why a tool cannot finish the contour.
type refusal struct {
	feature             int
	code, help, message string
}

// fits returns why t cannot finish c, nothing when it can.
func (j *job) fits(t *shop.Tool, c contour) []refusal {
	var out []refusal
	seen := map[[2]int]bool{}
	add := func(feature int, kind int, code, help, message string) {
		if !seen[[2]int{feature, kind}] {
			seen[[2]int{feature, kind}] = true
			out = append(out, refusal{feature, code, help, message})
		}
	}
	name := func(i int) string { return j.part.Features[i].Name }
	first, last := c.sides[0].owner, c.sides[len(c.sides)-1].owner
	limits := reachOf(t)
	a := j.finishAim(t, c)
	target := j.target(c, a)
	_, shadows := target.shaded(limits)
	for _, s := range shadows {
		switch s.owner {
		case lead:
			s.owner = first
		case tail:
			if s.from.Z <= c.sides[len(c.sides)-1].To.Z && s.to.Z <= c.sides[len(c.sides)-1].To.Z {
				continue // waste only
			}
			s.owner = last
		}
		if s.falls {
			has := "its minor edge stands at " + degrees(t.MinorAngle())
			if t.MinorFree {
				has = "the angle of its minor edge is not given"
			}
			add(s.owner, 1, CodeOutOfReach,
				"a tool whose minor edge stands at "+degrees(s.angle+relief)+" or more to the axis would do, or a cut from the other end",
				name(s.owner)+" falls toward the back at "+degrees(s.angle)+" to the axis; "+t.Name+" follows at most "+degrees(max(limits.fall, 0))+": "+
					has+", 2 deg of it are clearance")
			continue
		}
		add(s.owner, 2, CodeOutOfReach,
			"a tool with a cutting edge angle of "+degrees(s.angle)+" or more would do",
			name(s.owner)+" rises toward the back at "+degrees(s.angle)+" to the axis; the main edge of "+t.Name+" follows at most "+degrees(limits.rise))
	}
	if c.face != nil && j.facing(c) && limits.rise < math.Pi/2-steepBy {
		add(c.face.owner, 2, CodeOutOfReach, "a tool with a cutting edge angle of 90 deg or more would do",
			name(c.face.owner)+" stands square to the axis; the main edge of "+t.Name+" stands at "+degrees(limits.rise))
	}
	for _, e := range c.sides {
		if e.Turn < 0 && e.Radius() < t.Nose-geom.Near {
			add(e.owner, 3, CodeFilletUnderNose, "a tool with a nose radius of "+j.mm(e.Radius())+" or less would do",
				name(e.owner)+" has a radius of "+j.mm(e.Radius())+"; the nose radius of "+t.Name+" is "+j.mm(t.Nose))
		}
	}
	for i, f := range j.part.Features {
		if f.Kind != profiles.Corner || f.Inside || f.Setup != j.setup || !(f.Fillet.High > 0) {
			continue
		}
		if geom.Count(f.Fillet.High, 7) < geom.Count(t.Nose, 7) {
			add(i, 3, CodeCornerZone, "a tool with a nose radius of "+j.mm(f.Fillet.High)+" or less would do, or a larger inside_at_most",
				f.Name+" may keep a fillet of at most "+j.mm(f.Fillet.High)+"; "+t.Name+" leaves its nose radius, "+j.mm(t.Nose))
		}
	}
	if len(out) > 0 {
		return out
	}
	for _, i := range j.missed(target, a, c) {
		help := "a smaller nose would do"
		for _, r := range [...]float64{1.6, 1.2, 0.8, 0.4, 0.2, 0.1} { // nose radii of ISO 1832
			b := a
			b.nose, b.dist = r, r
			if r < t.Nose && len(j.missed(j.target(c, b), b, c)) == 0 {
				help = "a tool with a nose radius of " + j.mm(r) + " or less would do"
				break
			}
		}
		add(i, 4, CodeNarrow, help,
			"the nose of "+t.Name+", radius "+j.mm(t.Nose)+", finds no room to reach "+name(i)+" between its neighbours")
	}
	return out
}

// finishAim says how a finishing nose runs along the contour.
func (j *job) finishAim(t *shop.Tool, c contour) aim {
	return aim{nose: t.Nose, dist: t.Nose, clearZ: j.clearZ(t), endZ: c.sides[len(c.sides)-1].To.Z - pastEnd, rise: math.Pi / 2}
}

// clearZ is where a nose centre is clear of the raw front face.
func (j *job) clearZ(t *shop.Tool) float64 {
	return max(j.part.Stock.Front, 0) + j.part.Stock.Oversize + clearance + t.Nose
}

// missed returns the features that a nose running beside target does not
// touch along all that a verdict speaks of.
func (j *job) missed(target track, a aim, c contour) []int {
	path, err := a.path(target)
	if err != nil {
		return []int{c.sides[len(c.sides)-1].owner} // not even the last: the path has no end
	}
	chain := path.chain()
	var out []int
	for _, e := range c.sides {
		f := j.part.Features[e.owner]
		// where the nose centre stands when it touches q
		touches := func(p geom.Piece, q geom.Point) bool {
			return chain.Distance(q.Along(airSide(p.DirAt(q)), a.dist)) <= touchBy
		}
		ok := true
		if p := f.Judged; p.To.Sub(p.From).Len() > geom.Near {
			ok = touches(p, p.From) && touches(p, p.Middle()) && touches(p, p.To)
		} else {
			ok = false
			for _, g := range path {
				if g.owner == e.owner && math.Abs(e.Distance(g.Middle())-a.dist) <= touchBy {
					ok = true
				}
			}
		}
		if !ok && c.shut && e.owner == c.sides[len(c.sides)-1].owner {
			// its last R is corner zone
			p := f.Judged
			ok = touches(p, p.From) && p.From.Sub(p.To).Len() > a.nose
		}
		if !ok {
			out = append(out, e.owner)
		}
	}
	return out
}

// touchBy is how far a nose may stand off a place and still touch it, mm: the
// first step of rounding.
const touchBy = 1e-7
