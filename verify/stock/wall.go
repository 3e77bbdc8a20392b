package stock

// step is the least height of a wall, mm: curves that meet differ by rounding
// (1e-14 mm along z at slope 1e4), and where a circle runs upright by more,
// but there they meet a wall anyway.
const step = 1e-9

// wall tells who made a step: an owner, or (below gone) an index into the
// courses of a wall made in several goes. Where the step stands and how high
// it is follows from the spans on both sides.
type wall int32

// course is one part of a wall, from where the one below ends up to top.
type course struct {
	top   float64
	owner int32
	next  wall // the course above
}

// wallAt returns who made the step at z between the curves l and r. was is the
// span that began at z before the cut, wasLeft the curve on its left then;
// was is nil where nothing began. Of an old step what still stands keeps its
// makers; a cut below it adds a course of its own.
func (p *profile) wallAt(z float64, l, r *curve, was *span, wasLeft *curve, owner int32) wall {
	if was == nil {
		return wall(owner)
	}
	a, b := l.tip(z), r.tip(z)
	if a-b <= step && b-a <= step {
		return wall(owner)
	}
	wa, wb := wasLeft.tip(z), was.c.tip(z)
	foot := min(wa, wb)
	if max(wa, wb)-foot <= step || (a < b) != (wa < wb) || max(a, b) <= foot+step {
		return wall(owner) // there was no step, or none of it still stands
	}
	if min(a, b) >= foot-step || p.foot(was.wall) == owner {
		return was.wall
	}
	p.courses = append(p.courses, course{top: foot, owner: owner, next: was.wall})
	return gone - wall(len(p.courses))
}

// foot returns who made the lowest course of a wall.
func (p *profile) foot(w wall) int32 {
	if w < gone {
		return p.courses[gone-1-w].owner
	}
	return int32(w)
}

// inCourses calls f for each course of a wall between lo and hi, from below.
func (p *profile) inCourses(w wall, lo, hi float64, f func(lo, hi float64, owner int32)) {
	for lo < hi {
		if w >= gone {
			f(lo, hi, int32(w))
			return
		}
		c := p.courses[gone-1-w]
		if c.top-lo > step {
			f(lo, min(c.top, hi), c.owner)
			lo = c.top
		}
		w = c.next
	}
}
