package stock

import "slices"

// shed takes away what a cut has parted from the hold: to the right of a gap
// that reaches past the right end of the hold, and to the left of one that
// reaches past its left end. What was left before was joined to the hold, so
// nothing else can have come loose.
func (s *Stock) shed(voids []stretch, owner int32, res *Removed) {
	for _, v := range voids {
		if v.b >= s.high {
			s.fall(v.b, farAway, owner, res)
			break
		}
	}
	for i := len(voids) - 1; i >= 0; i-- {
		if v := voids[i]; v.a <= s.low {
			s.fall(-farAway, v.a, owner, res)
			break
		}
	}
}

// dust is metal too little to name, mm^2: what rounding leaves standing, a
// sliver wide and a skin high, is a millionth of it.
const dust = 1e-12

// fall takes away all metal over [a, b] and names its pieces.
func (s *Stock) fall(a, b float64, owner int32, res *Removed) {
	p := s.outer
	first := len(res.Loose)
	joins := false
	at := p.find(a)
	for ok := true; ok; at, ok = p.next(at) {
		sp := p.at(at)
		u, v := max(a, sp.z), min(b, p.end(at))
		if u >= b {
			break
		}
		if sp.owner == gone || v-u <= sliver {
			joins = false
			continue
		}
		area := sp.c.area(u, v)
		for _, f := range s.floor.over(nil, u, v) {
			area -= f.c.area(f.a, f.b)
		}
		if !joins {
			res.Loose = append(res.Loose, Loose{Low: u})
			joins = true
		}
		l := &res.Loose[len(res.Loose)-1]
		l.High = v
		l.Area += area
	}
	if len(res.Loose) == first {
		return
	}
	low, high := res.Loose[first].Low, res.Loose[len(res.Loose)-1].High
	res.Loose = append(res.Loose[:first], slices.DeleteFunc(res.Loose[first:], func(l Loose) bool { return l.Area <= dust })...)
	var not Removed
	s.clipped = s.floor.over(s.clipped[:0], low, high)
	k := s.start(s.clipped, 0, owner, &not)
	k.blind = true
	k.run()
	k.commit()
	res.Visited += not.Visited
}
