package stock

// Metal that overhangs.
//
// An edge that leans back over the nose (95 degrees are common) cuts under the
// metal ahead of it, which stays. The boundary holds the highest metal over
// each z, so it cannot show that cut; it is written down below the metal that
// hides it, and made when that metal goes. Whatever the order of the moves,
// the boundary is then the highest metal that is left.

// hidden is 0 or one more than an index into profile.hiding: a list of cuts
// below a span. Lists share their tails and are never changed.
type hidden int32

// cutBelow is a cut from g up to top, over the whole span it hides under.
type cutBelow struct {
	g, top curve
	owner  int32
	next   hidden
}

// lean takes the bite (s, [u, v]) where the leaning edge reaches the top of
// the metal, and hides it where metal stands over the edge.
func (k *scan) lean(sp *span, s *stretch, u, v float64, mark int) {
	for _, e := range k.tool.leanOver() {
		if e.b-u <= sliver {
			continue
		}
		if v-u <= sliver || v-e.a <= sliver {
			break
		}
		if e.a-u > sliver { // nothing overhangs here
			k.take(sp, s, u, e.a, mark)
			u = e.a
		}
		end := e.b
		if v-end <= sliver {
			end = v
		}
		parts(&sp.c, &e.c, u, end, func(a, b float64, stays bool) {
			if stays {
				k.hide(sp, s, &e.c, a, b, mark)
			} else {
				k.take(sp, s, a, b, mark)
			}
		})
		u = end
	}
	if v-u > sliver {
		k.take(sp, s, u, v, mark)
	}
}

// hide leaves a span over [u, v] and writes the cut down below it.
func (k *scan) hide(sp *span, s *stretch, top *curve, u, v float64, mark int) {
	owner := k.owner
	if s.void {
		owner = gone
	}
	p := k.p
	cut := cutBelow{g: s.c, top: *top, owner: owner}
	for n := sp.under; n != 0; n = p.hiding[n-1].next {
		if c := &p.hiding[n-1]; above(&cut.g, &c.g, u, v) && above(&c.top, &cut.top, u, v) {
			k.put(span{z: u, c: sp.c, owner: sp.owner, under: sp.under}, false, mark)
			return
		}
	}
	k.fathom(sp, s, top, u, v)
	cut.next = p.sift(sp.under, func(c *cutBelow) bool { return !cut.swallow(c, u, v) })
	k.put(span{z: u, c: sp.c, owner: sp.owner, under: p.push(cut)}, false, mark)
	k.dirty = true
}

func (p *profile) push(c cutBelow) hidden {
	p.hiding = append(p.hiding, c)
	return hidden(len(p.hiding))
}

// swallow makes c and d one where d lies within c, or is its prolongation up
// or down, all over [u, v]. The lower of the two made what remains.
func (c *cutBelow) swallow(d *cutBelow, u, v float64) bool {
	if !above(&c.top, &d.g, u, v) || !above(&d.top, &c.g, u, v) {
		return false // metal is left between them
	}
	low, high := c, c
	if !above(&d.g, &c.g, u, v) {
		if low = d; !above(&c.g, &d.g, u, v) {
			return false
		}
	}
	if !above(&c.top, &d.top, u, v) {
		if high = d; !above(&d.top, &c.top, u, v) {
			return false
		}
	}
	c.g, c.owner, c.top = low.g, low.owner, high.top
	return true
}

// sift returns a list with the cuts that stay. The tail that stays whole is
// shared, not copied.
func (p *profile) sift(list hidden, stays func(*cutBelow) bool) hidden {
	var kept []hidden // those before the last that goes
	rest, gone := list, 0
	var all []hidden
	for n := list; n != 0; n = p.hiding[n-1].next {
		if stays(&p.hiding[n-1]) {
			all = append(all, n)
		} else {
			rest, gone = p.hiding[n-1].next, len(all)
		}
	}
	kept = all[:gone]
	for i := len(kept) - 1; i >= 0; i-- {
		c := p.hiding[kept[i]-1]
		c.next = rest
		rest = p.push(c)
	}
	return rest
}

// above tells whether f is nowhere below g over [u, v], but for a skin.
func above(f, g *curve, u, v float64) bool {
	if m := 0.5 * (u + v); g.at(m)-f.at(m) > skin {
		return false // most often
	}
	n, x := roots(f, g, u, v)
	for i := 0; i <= n; i++ {
		w := v
		if i < n {
			w = x[i]
		}
		if m := 0.5 * (u + w); g.at(m)-f.at(m) > skin {
			return false
		}
		u = w
	}
	return true
}

// uncover makes the hidden cuts that a boundary lowered to c lays open, and
// puts what comes of it; false when it lays none open. Each round makes one
// cut of the list or leaves it closed over a smaller part, so it ends. The
// lowest is made first: those above it then have nothing left to take.
func (k *scan) uncover(u, v float64, c curve, owner int32, under hidden, mark int) bool {
	p := k.p
	m := 0.5 * (u + v)
	var n hidden
	least := 0.0
	for h := under; h != 0; h = p.hiding[h-1].next {
		cut := &p.hiding[h-1]
		if lies(&c, &cut.top, u, v) {
			continue
		}
		if r := cut.g.at(m); n == 0 || r < least {
			n, least = h, r
		}
	}
	if n == 0 {
		return false
	}
	cut := p.hiding[n-1]
	parts(&c, &cut.top, u, v, func(u, v float64, stays bool) {
		if stays {
			k.settle(u, v, c, owner, under, mark)
			return
		}
		rest := p.without(under, n)
		parts(&c, &cut.g, u, v, func(u, v float64, lower bool) {
			if !lower {
				k.settle(u, v, c, owner, p.below(rest, &c, u, v), mark)
				return
			}
			k.res.Area += c.area(u, v) - cut.g.area(u, v)
			k.settle(u, v, cut.g, cut.owner, p.below(rest, &cut.g, u, v), mark)
		})
	})
	return true
}

// below returns a list without the cuts that take nothing below c.
func (p *profile) below(list hidden, c *curve, u, v float64) hidden {
	return p.sift(list, func(d *cutBelow) bool { return !above(&d.g, c, u, v) })
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
		m := 0.5 * (u + w)
		call(u, w, f.at(m)-g.at(m) > skin)
		u = w
	}
}

// lies tells whether f is above g all over [u, v].
func lies(f, g *curve, u, v float64) bool {
	all := true
	parts(f, g, u, v, func(_, _ float64, over bool) { all = all && over })
	return all
}

// without returns a list without its cut n.
func (p *profile) without(list, n hidden) hidden {
	return p.sift(list, func(c *cutBelow) bool { return c != &p.hiding[n-1] })
}

// collectAt: below so many cuts none are looked for that no span holds.
const collectAt = 4096

// collect drops the hidden cuts that no span holds any more, once they may be
// more than those in use: each is then dropped for one that was pushed.
func (p *profile) collect() {
	if len(p.hiding) < collectAt || len(p.hiding) < 2*p.kept {
		return
	}
	// A list runs from later to earlier cuts.
	to := make([]hidden, len(p.hiding))
	for _, c := range p.chunks {
		for k := range c.s {
			for n := c.s[k].under; n != 0 && to[n-1] == 0; n = p.hiding[n-1].next {
				to[n-1] = 1
			}
		}
	}
	kept := p.hiding[:0]
	for n, c := range p.hiding {
		if to[n] == 0 {
			continue
		}
		if c.next != 0 {
			c.next = to[c.next-1]
		}
		kept = append(kept, c)
		to[n] = hidden(len(kept))
	}
	p.hiding, p.kept = kept, max(len(kept), len(p.chunks)*chunkHalf)
	for _, c := range p.chunks {
		for k := range c.s {
			if n := c.s[k].under; n != 0 {
				c.s[k].under = to[n-1]
			}
		}
	}
}
