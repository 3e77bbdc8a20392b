package stock

// Metal that overhangs.
//
// An edge that leans back over the nose (95 degrees are common) cuts under the
// metal ahead of it, which stays. The boundary holds the highest metal over
// each z, so it cannot show that cut; it is written down below the metal that
// hides it, and made when that metal goes. Whatever the order of the moves,
// the boundary is then the highest metal that is left.

// hidden is 0 or one more than an index into profile.hiding: a list of cuts
// below a span that are apart from one another. Lists share their tails and
// are never changed.
type hidden int32

// cutBelow is a cut from g up to top, over the whole span it hides under.
type cutBelow struct {
	g, top curve
	owner  int32
	next   hidden
}

// lean takes the bite (s, [u, v]) where the leaning edge reaches the top of
// the metal, and hides it where metal stands over the edge.
func (k *scan) lean(sp *span, s *stretch, u, v float64) {
	for _, e := range k.tool.leanOver() {
		if e.b-u <= sliver {
			continue
		}
		if v-u <= sliver || v-e.a <= sliver {
			break
		}
		if e.a-u > sliver { // nothing overhangs here
			k.take(sp, s, u, e.a)
			u = e.a
		}
		end := e.b
		if v-end <= sliver {
			end = v
		}
		n, x := roots(&sp.c, &e.c, u, end)
		for i := 0; i <= n; i++ {
			w := end
			if i < n {
				w = x[i]
			}
			if sp.c.over(&e.c, u, w) {
				k.hide(sp, s, &e.c, u, w)
			} else {
				k.take(sp, s, u, w)
			}
			u = w
		}
	}
	if v-u > sliver {
		k.take(sp, s, u, v)
	}
}

// hide leaves a span over [u, v] and writes the cut down below it. Where the
// edge does not reach up to s (below the axis) there is no cut.
func (k *scan) hide(sp *span, s *stretch, top *curve, u, v float64) {
	n, x := roots(top, &s.c, u, v)
	for i := 0; i <= n; i++ {
		w := v
		if i < n {
			w = x[i]
		}
		if top.over(&s.c, u, w) {
			k.fathom(sp, s, top, u, w)
			owner := k.owner
			if s.void {
				owner = gone
			}
			k.bury(sp, u, w, cutBelow{g: s.c, top: *top, owner: owner}, sp.under)
		} else {
			k.keep(sp, u)
		}
		u = w
	}
}

// bury adds a cut to a list below a span, as one with those it runs into. Each
// round takes one from the list or leaves it apart over a smaller part, so it
// ends.
func (k *scan) bury(sp *span, u, v float64, c cutBelow, list hidden) {
	p := k.p
	for n := list; n != 0; n = p.hiding[n-1].next {
		o := p.hiding[n-1]
		if above(&c.g, &o.g, u, v) && above(&o.top, &c.top, u, v) {
			k.cover(sp, u, list) // all of it was cut before
			return
		}
		var meets bool
		var x breaks
		x.add(&c.g, &o.top, u, v)
		x.add(&o.g, &c.top, u, v)
		x.each(u, v, func(u, v float64) {
			meets = meets || c.meets(&o, u, v)
		})
		if !meets {
			continue
		}
		rest := p.without(list, n)
		x.add(&c.g, &o.g, u, v)
		x.add(&c.top, &o.top, u, v)
		x.each(u, v, func(u, v float64) {
			if !c.meets(&o, u, v) {
				k.bury(sp, u, v, c, list)
				return
			}
			both := c
			if c.g.over(&o.g, u, v) {
				both.g, both.owner = o.g, o.owner
			}
			if o.top.over(&c.top, u, v) {
				both.top = o.top
			}
			k.bury(sp, u, v, both, rest)
		})
		return
	}
	c.next = list
	k.cover(sp, u, p.push(c))
}

// cover keeps a span from u on over a list of hidden cuts.
func (k *scan) cover(sp *span, u float64, list hidden) {
	k.put(span{z: u, c: sp.c, owner: sp.owner, under: list}, false)
	k.dirty = k.dirty || !k.p.alike(list, sp.under)
}

// meets tells whether two cuts run into one another between u and v, where
// they do not cross.
func (a *cutBelow) meets(b *cutBelow, u, v float64) bool {
	return !a.g.over(&b.top, u, v) && !b.g.over(&a.top, u, v)
}

// breaks is a small ascending list of places.
type breaks struct {
	n int
	x [8]float64
}

// add adds the crossings of f and g in [u, v].
func (b *breaks) add(f, g *curve, u, v float64) {
	n, x := roots(f, g, u, v)
	for _, z := range x[:n] {
		i := b.n
		for ; i > 0 && b.x[i-1] > z; i-- {
			b.x[i] = b.x[i-1]
		}
		b.x[i] = z
		b.n++
	}
}

// each calls f for the parts of [u, v] between the breaks.
func (b breaks) each(u, v float64, f func(u, v float64)) {
	for _, z := range b.x[:b.n] {
		if z-u > sliver && v-z > sliver {
			f(u, z)
			u = z
		}
	}
	f(u, v)
}

// above tells whether f is nowhere below g over [u, v], but for a skin.
func above(f, g *curve, u, v float64) bool {
	if *f == *g {
		return true
	}
	n, x := roots(f, g, u, v)
	for i := 0; i <= n; i++ {
		w := v
		if i < n {
			w = x[i]
		}
		if g.over(f, u, w) {
			return false
		}
		u = w
	}
	return true
}

// uncover makes the hidden cuts that a boundary lowered to c lays open, and
// puts what comes of it; false when it lays none open. Each round makes one
// cut of the list or leaves it closed over a smaller part, so it ends.
func (k *scan) uncover(u, v float64, c curve, owner int32, list hidden) bool {
	p := k.p
	for n := list; n != 0; n = p.hiding[n-1].next {
		o := p.hiding[n-1]
		if !k.opens(&c, &o.top, u, v) {
			continue
		}
		rest := p.without(list, n)
		parts(&c, &o.top, u, v, func(u, v float64, stays bool) {
			if stays {
				k.settle(u, v, c, owner, list)
				return
			}
			parts(&c, &o.g, u, v, func(u, v float64, lower bool) {
				if !lower {
					k.settle(u, v, c, owner, rest)
					return
				}
				k.res.Area += c.area(u, v) - o.g.area(u, v)
				k.settle(u, v, o.g, o.owner, rest)
			})
		})
		return true
	}
	return false
}

// opens tells whether a boundary at c comes down to top anywhere in [u, v].
func (k *scan) opens(c, top *curve, u, v float64) (yes bool) {
	parts(c, top, u, v, func(_, _ float64, over bool) { yes = yes || !over })
	return yes
}

// parts cuts [u, v] where f crosses g and tells for each part whether f is
// above.
func parts(f, g *curve, u, v float64, call func(u, v float64, over bool)) {
	n, x := roots(f, g, u, v)
	for i := 0; i <= n; i++ {
		w := v
		if i < n {
			w = x[i]
		}
		call(u, w, f.over(g, u, w))
		u = w
	}
}

func (p *profile) push(c cutBelow) hidden {
	p.hiding = append(p.hiding, c)
	return hidden(len(p.hiding))
}

// without returns a list without its cut n.
func (p *profile) without(list, n hidden) hidden {
	c := p.hiding[list-1]
	if list == n {
		return c.next
	}
	c.next = p.without(c.next, n)
	return p.push(c)
}

// alike tells whether two lists hold the same cuts in the same order.
func (p *profile) alike(a, b hidden) bool {
	for a != b {
		if a == 0 || b == 0 {
			return false
		}
		c, d := p.hiding[a-1], p.hiding[b-1]
		a, b = c.next, d.next
		c.next, d.next = 0, 0
		if c != d {
			return false
		}
	}
	return true
}

// forget takes back what a scan that is not committed has written.
func (p *profile) forget(k *scan) {
	p.courses, p.hiding = p.courses[:k.courses], p.hiding[:k.hiding]
}

// tidy drops the lists that no span holds any more, when there are many.
func (p *profile) tidy() {
	if len(p.hiding) < p.crowded {
		return
	}
	var all []cutBelow
	var was, is hidden
	for _, c := range p.chunks {
		for i := range c.s {
			s := &c.s[i]
			if s.under == 0 {
				continue
			}
			if s.under != was {
				was, is = s.under, 0
				for n := was; n != 0; n = p.hiding[n-1].next {
					o := p.hiding[n-1]
					o.next = is
					all = append(all, o)
					is = hidden(len(all))
				}
			}
			s.under = is
		}
	}
	p.hiding = all
	p.crowded = max(1<<12, 2*len(all))
}
