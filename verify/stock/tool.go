package stock

import "taperwright/profiles/geom"

// tool is an outline on its way. The envelopes that few moves need, of the
// leaning edge and of the insert's far side, are built when they are asked for.
type tool struct {
	o        *Outline
	way      way
	path     geom.Piece
	lean     []stretch // upper envelope of the leaning edge prolonged
	crown    []stretch // of the insert's far side
	leanIs   bool
	crownIs  bool
	forLean  envelopes
	forCrown envelopes
}

func (t *tool) set(o *Outline, path geom.Piece) {
	t.o, t.path, t.way = o, path, wayOf(path)
	t.leanIs, t.crownIs = false, false
}

func (t *tool) leans() bool   { return t.o.lean != nil }
func (t *tool) hasBody() bool { return t.o.upper != nil }

// leanLow and crownLow are no higher than the two envelopes.
func (t *tool) leanLow() float64  { return t.way.low() }
func (t *tool) crownLow() float64 { return t.way.low() + t.o.crown }

// leanOver returns the upper envelope of the leaning edge, ascending in z.
// Where it has none nothing overhangs.
func (t *tool) leanOver() []stretch {
	if t.leanIs {
		return t.lean
	}
	t.leanIs = true
	p := t.path.MirrorR()
	if t.o.right {
		p = p.MirrorZ()
	}
	w := wayOf(p)
	t.lean = upsideDown(t.lean[:0], t.forLean.lower(t.o.lean, &w))
	if t.o.right {
		for i, j := 0, len(t.lean)-1; i < j; i, j = i+1, j-1 {
			t.lean[i], t.lean[j] = t.lean[j], t.lean[i]
		}
		for i, s := range t.lean {
			t.lean[i] = stretch{a: -s.b, b: -s.a, c: s.c.mirrorZ()}
		}
	}
	return t.lean
}

// crownOver returns the upper envelope of the insert, ascending in z.
func (t *tool) crownOver() []stretch {
	if !t.crownIs {
		t.crownIs = true
		w := wayOf(t.path.MirrorR())
		t.crown = upsideDown(t.crown[:0], t.forCrown.lower(t.o.upper, &w))
	}
	return t.crown
}

func upsideDown(out, in []stretch) []stretch {
	for _, s := range in {
		s.c = s.c.mirrorR()
		out = append(out, s)
	}
	return out
}
