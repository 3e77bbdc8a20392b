package stock

// skin is the least metal above the new boundary that counts as metal, mm:
// where two boundaries run together, by design and but for rounding, nothing
// is cut and the surface keeps its maker. The finest printed figure is
// 0.0001 mm.
const skin = 1e-9

// edit is what a cut does to one chunk: out[from:to] in place of its spans lo
// to hi.
type edit struct {
	chunk, lo, hi int
	from, to      int
}

// scan lays a new lower boundary over a profile: it goes over the spans in the
// range of g, measures what g takes off and writes down the edits. The profile
// stays as it is until commit.
type scan struct {
	p     *profile
	g     []stretch
	gi    int
	low   float64 // g is nowhere lower
	owner int32
	floor *floor
	thin  bool // g may touch the floor
	blind bool // only the area counts: metal falling off, not cut
	tool  *tool
	res   *Removed

	courses, hiding int // what the profile held before

	edits []edit
	out   []span
	dirty bool
	voids []stretch // where nothing is left, by this cut

	left        curve // left of where out ends: the boundary as it will be
	leftWas     curve // and as it was
	leftChanged bool
	begins      *span // the span that begins at the next put; nil: none does
	i, k        int   // the span under the cut
}

// run scans [a, b].
func (k *scan) run() {
	p := k.p
	a, b := k.g[0].a, k.g[len(k.g)-1].b
	i, j := p.find(a)
	if s := &p.chunks[i].s[j]; a-s.z <= sliver {
		a = s.z
	} else if e := p.end(i, j); e-a <= sliver && e < farAway {
		a = e
		i, j, _ = p.next(i, j)
	}
	bi, bj := p.find(b)
	if s := &p.chunks[bi].s[bj]; b-s.z <= sliver {
		b = s.z
	} else if e := p.end(bi, bj); e-b <= sliver {
		b = e
	}
	if b-a <= sliver {
		return
	}
	if li, lj, ok := p.prev(i, j); ok {
		k.left = p.chunks[li].s[lj].c
	} else {
		k.left = level(0)
	}
	k.leftWas, k.leftChanged = k.left, false
	for l := 0; i < len(p.chunks) && p.first[i] < b; {
		k.res.Visited++
		if next, up := past(l, i); k.covers(p.top(l, i), i, next, a, b) {
			if k.leftChanged {
				k.rewall(i, 0)
			}
			i, j, l = min(next, len(p.chunks)), 0, up
			c := p.chunks[i-1]
			k.left = c.s[len(c.s)-1].c
			k.leftWas, k.leftChanged = k.left, false
			continue
		}
		if l > 0 {
			l--
			continue
		}
		j = k.chunk(i, j, a, b)
		if j < len(p.chunks[i].s) {
			break
		}
		i, j = i+1, 0
	}
	if k.leftChanged {
		if i == len(p.chunks) {
			return
		}
		if p.chunks[i].s[j].z == b {
			k.rewall(i, j)
		}
	}
}

// covers tells whether the chunks i to next, nowhere higher than top, lie
// below g all over what of [a, b] they hold.
func (k *scan) covers(top float64, i, next int, a, b float64) bool {
	if top <= k.low+skin {
		return true
	}
	a = max(a, k.p.first[i])
	if next < len(k.p.first) {
		b = min(b, k.p.first[next])
	}
	n := k.gi
	for n < len(k.g) && k.g[n].b <= a {
		n++
	}
	for ; a < b; n++ {
		if n == len(k.g) {
			return true
		}
		s := &k.g[n]
		if s.a >= b {
			return true
		}
		e := min(s.b, b)
		if s.c.low(max(a, s.a), e) < top-skin {
			return false
		}
		a = e
	}
	return true
}

// chunk scans the spans from j of chunk i that begin before b and returns
// where it stopped.
func (k *scan) chunk(i, j int, a, b float64) int {
	p := k.p
	s := p.chunks[i].s
	mark, from := len(k.out), j
	k.dirty = false
	for ; j < len(s) && s[j].z < b; j++ {
		sp := &s[j]
		k.res.Visited++
		k.i, k.k = i, j
		start, end := a, p.end(i, j)
		if sp.z < a {
			k.out = append(k.out, *sp)
			k.left, k.leftChanged, k.begins = sp.c, false, nil
		} else {
			start, k.begins = sp.z, sp
		}
		k.over(sp, start, min(end, b), mark)
		if end > b {
			k.begins = nil
			k.keep(sp, b, mark)
		}
		k.leftWas = sp.c
	}
	if k.dirty {
		k.edits = append(k.edits, edit{i, from, j, mark, len(k.out)})
	} else {
		k.out = k.out[:mark]
	}
	return j
}

// rewall writes down a span that stays but whose step does not.
func (k *scan) rewall(i, j int) {
	sp := k.p.chunks[i].s[j]
	mark := len(k.out)
	k.begins = &sp
	k.keep(&sp, sp.z, mark)
	k.edits = append(k.edits, edit{i, j, j + 1, mark, mark + 1})
}

// over lays g over [a, e] of a span.
func (k *scan) over(sp *span, a, e float64, mark int) {
	for a < e {
		for k.gi < len(k.g) && k.g[k.gi].b-a <= sliver {
			k.gi++
		}
		if k.gi == len(k.g) {
			k.keep(sp, a, mark)
			return
		}
		s := &k.g[k.gi]
		if s.a-a > sliver {
			k.keep(sp, a, mark)
			a = min(s.a, e)
			continue
		}
		x := s.b
		if e-x <= sliver {
			x = e
		}
		n, cross := roots(&sp.c, &s.c, a, x)
		for i := 0; i <= n; i++ {
			v := x
			if i < n {
				v = cross[i]
			}
			if m := 0.5 * (a + v); sp.c.at(m)-s.c.at(m) > skin {
				k.bite(sp, s, a, v, mark)
			} else {
				k.keep(sp, a, mark)
			}
			a = v
		}
	}
}

// keep leaves a span as it is from z on.
func (k *scan) keep(sp *span, z float64, mark int) {
	k.put(span{z: z, c: sp.c, owner: sp.owner, under: sp.under}, false, mark)
}

// put appends a span to the chunk's new spans, which begin at mark.
func (k *scan) put(s span, changed bool, mark int) {
	begins := k.begins
	k.begins = nil
	if changed || k.leftChanged {
		k.dirty = true
		s.wall = k.p.wallAt(s.z, &k.left, &s.c, begins, &k.leftWas, k.owner)
	} else if begins != nil {
		s.wall = begins.wall
	}
	k.left, k.leftChanged = s.c, changed
	if n := len(k.out); n > mark {
		if l := &k.out[n-1]; l.c == s.c && l.owner == s.owner && l.under == s.under {
			return
		}
	}
	k.out = append(k.out, s)
}

// bite takes off what s takes from a span over [u, v].
func (k *scan) bite(sp *span, s *stretch, u, v float64, mark int) {
	if !k.blind && k.tool.leans() && sp.c.high(u, v) > k.tool.leanLow() {
		k.lean(sp, s, u, v, mark)
		return
	}
	k.take(sp, s, u, v, mark)
}

// take lowers a span to s over [u, v].
func (k *scan) take(sp *span, s *stretch, u, v float64, mark int) {
	if !k.blind {
		k.fathom(sp, s, nil, u, v)
		k.body(sp, u, v)
	}
	if k.thin && !s.void {
		k.touches(&s.c, u, v)
	}
	k.res.Area += sp.c.area(u, v) - s.c.area(u, v)
	owner := k.owner
	if s.void {
		owner = gone
	}
	k.settle(u, v, s.c, owner, sp.under, mark)
}

// settle puts a curve that was cut, after the cuts that the metal above it hid.
func (k *scan) settle(u, v float64, c curve, owner int32, under hidden, mark int) {
	if owner == gone {
		k.voids = joined(k.voids, u, v)
		under = 0
	}
	if under != 0 && k.uncover(u, v, c, owner, under, mark) {
		return
	}
	k.put(span{z: u, c: c, owner: owner, under: under}, true, mark)
}

// touches notes where a new boundary over [u, v] touches the floor: a ring
// without thickness holds nothing.
func (k *scan) touches(c *curve, u, v float64) {
	at := func(z float64) {
		if c.at(z)-k.floor.s[k.floor.find(z)].c.at(z) <= skin {
			k.voids = joined(k.voids, z, z)
		}
	}
	at(u)
	if c.bend == under && u < c.z && c.z < v {
		at(c.z)
	}
	at(v)
}

// joined appends [u, v] to ascending intervals.
func joined(ss []stretch, u, v float64) []stretch {
	if n := len(ss); n > 0 && u-ss[n-1].b <= sliver {
		ss[n-1].b = v
		return ss
	}
	return append(ss, stretch{a: u, b: v})
}

// commit makes the edits, last first, so that those before keep their places.
func (k *scan) commit() {
	for i := len(k.edits) - 1; i >= 0; i-- {
		e := k.edits[i]
		k.p.replace(e.chunk, e.lo, e.hi, k.out[e.from:e.to])
	}
	k.p.collect()
}
