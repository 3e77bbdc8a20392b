package stock

// skin is the least metal above the new boundary that counts as metal, mm:
// where two boundaries run together, by design and but for rounding, nothing
// is cut and the surface keeps its maker. The finest printed figure is
// 0.0001 mm.
const skin = 1e-9

// edit is what a cut does to a run of spans: out[from:to] in place of those
// from a up to b.
type edit struct {
	a, b     place
	from, to int
}

// keptInside is how many untouched spans an edit may hold between two touched
// ones; where there are more, two edits are cheaper.
const keptInside = 8

// scan lays a new lower boundary over a profile: it goes over the spans in the
// range of g, measures what g takes off and writes down the edits. The profile
// stays as it is until commit.
type scan struct {
	p     *profile
	floor *floor
	g     []stretch
	gi    int // the stretch under the cut
	gl    int // the stretch where the next chunk begins
	looks int // how many chunks and runs of chunks were looked at
	owner int32
	thin  bool // g may touch the floor
	blind bool // only the area counts: metal falling off, not cut
	tool  *tool
	res   *Removed

	courses, hiding int // what the profile held before

	depth, shank deep // of the cut, of the body

	edits []edit
	out   []span
	voids []stretch // where this cut leaves nothing

	now      edit // the edit being written, to's end not known
	open     bool // something in it has changed
	kept     int  // untouched spans since
	dirty    bool // something has changed in the span under the cut
	under    place
	begins   *span // the span that begins at the next put; nil: none does
	left     curve // left of where out ends: the boundary as it will be
	leftWas  curve // and as it was
	moved    bool  // they differ
	leftGone bool  // neither is known: spans were passed over
}

// run scans the range of g.
func (k *scan) run() {
	p := k.p
	a, b := k.g[0].a, k.g[len(k.g)-1].b
	at := p.find(a)
	if s := p.at(at); a-s.z <= sliver {
		a = s.z
	} else if e := p.end(at); e-a <= sliver && e < farAway {
		a = e
		at, _ = p.next(at)
	}
	last := p.find(b)
	if s := p.at(last); b-s.z <= sliver {
		b = s.z
	} else if e := p.end(last); e-b <= sliver {
		b = e
	}
	if b-a <= sliver {
		return
	}
	k.leftGone, k.moved = true, false
	for l := 0; at.i < len(p.chunks) && p.first[at.i] < b; {
		k.looks++
		if next, up := past(l, at.i); k.passes(p.tops.of(l, at.i), at.i, next, a, b) {
			k.rewall(at)
			k.close()
			k.leftGone = true
			at, l = place{min(next, len(p.chunks)), 0}, up
			continue
		}
		if l > 0 {
			l--
			continue
		}
		s := p.chunks[at.i].s
		from := at.k
		for ; at.k < len(s) && s[at.k].z < b; at.k++ {
			k.span(at, a, b)
		}
		k.res.Visited += at.k - from
		if at.k < len(s) {
			break
		}
		at = place{at.i + 1, 0}
	}
	if at.i < len(p.chunks) {
		k.rewall(at)
	}
	k.close()
}

// passes tells whether g is nowhere below top over the chunks from i up to
// next.
func (k *scan) passes(top float64, i, next int, a, b float64) bool {
	a, b = max(a, k.p.first[i]), min(b, k.p.chunkEnd(min(next, len(k.p.chunks))-1))
	top -= skin
	for k.gl < len(k.g)-1 && k.g[k.gl].b <= a {
		k.gl++
	}
	for j := k.gl; j < len(k.g) && k.g[j].a < b; j++ {
		s := &k.g[j]
		if s.c.low(max(a, s.a), min(b, s.b)) < top {
			return false
		}
	}
	return true
}

// span scans one span over [a, b].
func (k *scan) span(at place, a, b float64) {
	sp := k.p.at(at)
	k.under, k.dirty = at, false
	if !k.open {
		k.now = edit{a: at, from: len(k.out)}
	}
	end := k.p.end(at)
	start := a
	if sp.z < a {
		k.out = append(k.out, *sp)
		k.left, k.leftGone, k.moved, k.begins = sp.c, false, false, nil
	} else {
		start, k.begins = sp.z, sp
	}
	k.over(sp, start, min(end, b))
	if end > b {
		k.begins = nil
		k.keep(sp, b)
	}
	k.leftWas, k.leftGone = sp.c, false
	k.done(place{at.i, at.k + 1})
}

// done ends the work on a span; next is the place after it.
func (k *scan) done(next place) {
	switch {
	case k.dirty:
		k.open, k.kept = true, 0
		k.now.b, k.now.to = next, len(k.out)
	case !k.open:
		k.out = k.out[:k.now.from]
	default:
		if k.kept++; k.kept > keptInside {
			k.close()
		}
	}
}

// close ends an edit behind the last span that changed.
func (k *scan) close() {
	if k.open {
		k.edits = append(k.edits, k.now)
		k.out = k.out[:k.now.to]
		k.open = false
	}
}

// rewall takes up a span that stays but whose step may not.
func (k *scan) rewall(at place) {
	sp := k.p.at(at)
	if !k.moved || k.leftGone {
		return
	}
	k.under, k.dirty = at, false
	k.begins = sp
	k.keep(sp, sp.z)
	k.done(place{at.i, at.k + 1})
}

// over lays g over [a, e] of a span.
func (k *scan) over(sp *span, a, e float64) {
	for a < e {
		for k.gi < len(k.g) && k.g[k.gi].b-a <= sliver {
			k.gi++
		}
		if k.gi == len(k.g) {
			k.keep(sp, a)
			return
		}
		s := &k.g[k.gi]
		if s.a-a > sliver {
			k.keep(sp, a)
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
			if sp.c.over(&s.c, a, v) || k.blind && sp.owner != gone {
				k.bite(sp, s, a, v)
			} else {
				k.keep(sp, a)
			}
			a = v
		}
	}
}

// keep leaves a span as it is from z on.
func (k *scan) keep(sp *span, z float64) {
	k.put(span{z: z, c: sp.c, owner: sp.owner, under: sp.under}, false)
}

// put adds a span to the edit.
func (k *scan) put(s span, changed bool) {
	begins := k.begins
	k.begins = nil
	if changed || k.moved {
		k.dirty = true
		if begins != nil && k.leftGone {
			k.left = level(0)
			if q, ok := k.p.prev(k.under); ok {
				k.left = k.p.at(q).c
			}
			k.leftWas, k.leftGone = k.left, false
		}
		s.wall = k.p.wallAt(s.z, &k.left, &s.c, begins, &k.leftWas, k.owner)
	} else if begins != nil {
		s.wall = begins.wall
	}
	k.left, k.moved = s.c, changed
	if n := len(k.out); n > k.now.from {
		if l := &k.out[n-1]; l.c == s.c && l.owner == s.owner && k.p.alike(l.under, s.under) {
			k.dirty = k.dirty || begins != nil // one span less
			return
		}
	} else if changed && begins != nil && !k.open {
		if q, ok := k.p.prev(k.under); ok {
			if l := k.p.at(q); l.c == s.c && l.owner == s.owner && k.p.alike(l.under, s.under) {
				return // the span before reaches on
			}
		}
	}
	k.out = append(k.out, s)
}

// bite takes off what s takes from a span over [u, v].
func (k *scan) bite(sp *span, s *stretch, u, v float64) {
	if !k.blind && k.tool.leans() && sp.c.high(u, v) > k.tool.leanLow() {
		k.lean(sp, s, u, v)
		return
	}
	k.take(sp, s, u, v)
}

// take lowers a span to s over [u, v].
func (k *scan) take(sp *span, s *stretch, u, v float64) {
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
	k.settle(u, v, s.c, owner, sp.under)
}

// settle puts a curve that was cut, after the cuts that the metal above it hid.
func (k *scan) settle(u, v float64, c curve, owner int32, under hidden) {
	if owner == gone {
		k.voids = joined(k.voids, u, v)
		under = 0
	}
	if under != 0 && k.uncover(u, v, c, owner, under) {
		return
	}
	k.put(span{z: u, c: c, owner: owner, under: under}, true)
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
		more := i > 0 && k.edits[i-1].b.i == e.a.i
		k.p.replace(e.a, e.b, k.out[e.from:e.to], more)
	}
	k.p.tidy()
}
