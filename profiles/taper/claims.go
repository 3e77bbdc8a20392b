package taper

import (
	"slices"
)

// claim is what one rate, or two diameters some way apart, say about the
// slope.
type claim struct {
	slope reach
	of    []int   // the items that say it
	base  float64 // axial distance of two diameters, mm; 0 for a rate
	// level: the two diameters stand at one place and only have to be equal;
	// slope is then their difference on radius, mm, and says nothing of a slope
	level bool
}

// rank orders the facts that give the slope: the first beats the others
// (definitions 5). Diameters and lengths (here: Large) stand between rates and
// angles.
func rank(k Kind) int {
	return slices.Index([]Kind{RateOf, Ratio, PerFoot, PerInch, Large, HalfAngle, IncludedAngle}, k)
}

// claims returns what the items say about the slope, the best first; what
// says nothing of it comes last.
func claims(items []item, ask Ask) []claim {
	var out []claim
	for i, it := range items {
		if it.Kind >= Ratio {
			out = append(out, claim{slope: it.reach, of: []int{i}})
		}
	}
	for _, pair := range [][2]Kind{{Large, Small}, {Large, Gauge}, {Gauge, Small}} {
		if c, ok := between(items, pair[0], pair[1], ask); ok {
			out = append(out, c)
		}
	}
	order := func(c claim) int {
		switch {
		case c.level:
			return 100
		case len(c.of) > 1:
			return rank(Large)
		}
		return rank(items[c.of[0]].Kind)
	}
	slices.SortStableFunc(out, func(a, b claim) int { return order(a) - order(b) })
	return out
}

// placed returns where a diameter stands from the large end, less the length
// of the cone where it is counted from the small end, and whether it is.
func (it item) placed(ask Ask) (at reach, fromSmall bool) {
	switch {
	case it.Kind == Large:
		return reach{}, false
	case it.Kind == Small:
		return reach{}, true
	case it.From == FromLarge:
		return about(it.place, ask.half()), false
	}
	return about(-it.place, ask.half()), true
}

// between returns what two diameters say about the slope; thick is to stand
// nearer the large end, unless the gauge plane lies off the metal.
func between(items []item, thick, thin Kind, ask Ask) (claim, bool) {
	index := func(k Kind) int { return slices.IndexFunc(items, func(it item) bool { return it.Kind == k }) }
	a, b, l := index(thick), index(thin), index(Length)
	if a < 0 || b < 0 {
		return claim{}, false
	}
	of := []int{a, b}
	p, fromSmallA := items[a].placed(ask)
	q, fromSmallB := items[b].placed(ask)
	apart := q.minus(p)
	if fromSmallA != fromSmallB {
		if l < 0 {
			return claim{}, false
		}
		of = append(of, l)
		if fromSmallB {
			apart = apart.plus(items[l].reach)
		} else {
			apart = apart.minus(items[l].reach)
		}
	}
	drop := items[a].reach.minus(items[b].reach)
	if apart.at < 0 {
		drop, apart = reach{}.minus(drop), reach{}.minus(apart)
	}
	if apart.lo <= 0 {
		return claim{slope: drop, of: of, level: true, base: apart.hi}, true
	}
	c := claim{slope: reach{drop.at / apart.at, drop.lo / apart.hi, drop.hi / apart.lo}, of: of, base: apart.at}
	if drop.lo < 0 {
		c.slope.lo = drop.lo / apart.lo
	}
	if drop.hi < 0 {
		c.slope.hi = drop.hi / apart.hi
	}
	return c, true
}

// dust, in mm, keeps diameters that touch by design touching: radii under
// 10,000 mm are rounded by 1e-12 at most, and no length is written to 1e-9.
const dust = 1e-9

// agree tells whether two claims agree; one that is level has to be within
// what the other's slope makes of its places.
func agree(a, b claim) bool {
	if a.level {
		a, b = b, a
	}
	switch {
	case a.level: // both
		return true
	case b.level:
		within := float64(max(a.slope.hi, 0) * b.base)
		return b.slope.meets(reach{0, -within - dust, within + dust})
	}
	return a.slope.meets(b.slope)
}

// quarrel returns the first two claims, in order of rank, that disagree. A
// claim that is wrong by itself is returned twice: a taper the wrong way
// round, or unequal diameters at one place and no slope that could part them.
func quarrel(all []claim) (a, b claim, found bool) {
	for j, c := range all {
		switch {
		case c.level && all[0].level && !c.slope.meets(reach{0, -dust, dust}),
			!c.level && (c.slope.hi <= 0 || j == 0 && c.slope.at < flattest):
			return c, c, true
		}
		for _, d := range all[:j] {
			if !agree(d, c) {
				return d, c, true
			}
		}
	}
	return claim{}, claim{}, false
}
