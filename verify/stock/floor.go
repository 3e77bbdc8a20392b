package stock

import (
	"sort"

	"taperwright/profiles/geom"
)

// floor is what no outside cut goes below: the axis, or the bore. Its
// stretches cover the whole axis without gaps.
type floor struct {
	s   []stretch // void: within the bore
	top float64
}

func newFloor(bore []stretch) *floor {
	f := &floor{}
	z := -farAway
	axis := func(to float64) {
		if to > z {
			f.s = append(f.s, stretch{a: z, b: to, c: level(0)})
		}
	}
	for _, s := range bore {
		axis(s.a)
		f.s = append(f.s, stretch{a: s.a, b: s.b, c: s.c, void: true})
		f.top = max(f.top, s.c.high(s.a, s.b))
		z = s.b
	}
	axis(farAway)
	return f
}

func (f *floor) find(z float64) int {
	return max(sort.Search(len(f.s), func(i int) bool { return f.s[i].a > z })-1, 0)
}

// beside returns the floor's r on the left or right of z.
func (f *floor) beside(z float64, right bool) float64 {
	i := f.find(z)
	if !right && z-f.s[i].a <= sliver && i > 0 {
		i--
	} else if right && f.s[i].b-z <= sliver && i+1 < len(f.s) {
		i++
	}
	return f.s[i].c.at(z)
}

// clip appends g, nowhere lower than the floor; where it would be, or comes
// within a skin of it, the floor is left and no metal.
func (f *floor) clip(out, g []stretch) []stretch {
	for _, s := range g {
		if s.c.low(s.a, s.b) > f.top+skin {
			out = append(out, s)
			continue
		}
		a := s.a
		for i := f.find(a); i < len(f.s) && f.s[i].a < s.b; i++ {
			b := min(f.s[i].b, s.b)
			if s.b-b <= sliver {
				b = s.b
			}
			if b-a <= 0 {
				continue
			}
			parts(&s.c, &f.s[i].c, a, b, func(u, v float64, over bool) {
				if over {
					out = append(out, stretch{a: u, b: v, c: s.c})
				} else {
					out = append(out, stretch{a: u, b: v, c: f.s[i].c, void: true})
				}
			})
			a = b
		}
	}
	return out
}

// over appends the floor itself over [a, b].
func (f *floor) over(out []stretch, a, b float64) []stretch {
	for i := f.find(a); i < len(f.s) && f.s[i].a < b; i++ {
		out = append(out, stretch{a: max(a, f.s[i].a), b: min(b, f.s[i].b), c: f.s[i].c, void: true})
	}
	return out
}

// stretches turns a chain into curves ascending in z. Faces are left out: they
// follow from what is beside them. Where a chain runs back over itself the
// upper part is taken: what overhangs counts as solid.
func stretches(c geom.Chain) []stretch {
	var out []stretch
	for _, p := range c {
		for _, q := range cutAtSides(p) {
			w := wayOf(q)
			if w.upright {
				continue
			}
			s := stretch{a: w.from.Z, b: w.to.Z}
			switch {
			case w.radius == 0:
				s.c = lineThrough(w.from, w.to)
			case w.bump:
				s.c = curve{z: w.centre.Z, r: w.centre.R, k: w.radius, bend: over}
			default:
				s.c = curve{z: w.centre.Z, r: w.centre.R, k: w.radius, bend: under}
			}
			out = append(out, s)
		}
	}
	if len(out) > 1 && out[0].a > out[len(out)-1].a {
		for i, j := 0, len(out)-1; i < j; i, j = i+1, j-1 {
			out[i], out[j] = out[j], out[i]
		}
	}
	for i := 1; i < len(out); i++ {
		switch d := out[i].a - out[i-1].b; {
		case d < -sliver:
			return solid(out)
		case d <= sliver:
			out[i].a = out[i-1].b
		}
	}
	return out
}

// solid is the upper envelope of curves in any order.
func solid(in []stretch) []stretch {
	var out []stretch
	for _, s := range in {
		out = extreme(nil, out, []stretch{s}, false)
	}
	return out
}
