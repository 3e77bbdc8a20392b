package profiles

import (
	"taperwright/profiles/finding"
	"taperwright/profiles/geom"
	"taperwright/profiles/source"
)

var setupKeys = []source.Key{
	{Name: "name", Type: "text", Help: "what the sheet calls it"},
	{Name: "face", Type: "text", Help: `"front" or "back": the end that looks at the tailstock; its finished face is Z0`},
	{Name: "upto", Type: "text", Help: "last feature cut in this set-up; all when not given"},
	{Name: "hold", Type: "table", Help: "{ by = \"chuck\", on, grip }"},
	{Name: "zero", Type: "text or length", Help: `where Z0 of the program is: "face" when not given, "chuck" for the front of the jaws, or the z of the finished face`},
}

var holdKeys = []source.Key{
	{Name: "by", Type: "text", Help: `"chuck"`},
	{Name: "on", Type: "text", Help: `the feature that the jaws lie on, or "stock"`},
	{Name: "grip", Type: "length", Help: "length inside the jaws"},
	{Name: "support", Type: "text", Help: "a centre; not in this release"},
	{Name: "indicate", Type: "text", Help: "the feature to run true"},
}

// setups reads [[setup]]. This release cuts one, from the front; what a later
// one cuts is later.
func (r *reader) setups(s Stock, hasStock bool) {
	p := r.part
	if p.Features != nil && hasStock {
		r.fits(s)
	}
	tables := r.root.Tables("setup")
	if len(tables) == 0 {
		if r.root.Has("setup") {
			r.wrong = true
		}
		p.Setups = []Setup{{Name: "set-up 1", Hold: Hold{On: "stock"}}}
		r.assume("setup", "one, front face outward, held at the back end of the stock", finding.Span{})
		return
	}
	for i, t := range tables {
		face := "front"
		if t.Has("face") {
			w, ok := t.OneOf("face", "front", "back")
			if !ok {
				r.wrong = true
				w = "front"
			}
			face = w
		} else if i == 0 {
			r.assume("setup.face", "front", t.Span())
		}
		for _, key := range []string{"kind", "centre_hole"} {
			if t.Has(key) {
				t.Value(key)
				r.failAt(t.KeySpan(key), NotYet, "face and centre it before, and say so in [[later]]", "this release makes no centre holes")
			}
		}
		switch {
		case i == 0 && face == "back":
			r.fail(t, "face", NotYet, `begin with face = "front": list the part from its other end`, "this release does not cut from the back")
		case i == 0:
			p.Setups = []Setup{r.setup(t, s, hasStock)}
		default:
			r.another(t)
		}
		t.Only(setupKeys)
	}
}

// another reads a set-up that this release does not cut.
func (r *reader) another(t *source.Table) {
	name := r.text(t, "name")
	if name == "" {
		name = "a further set-up"
	}
	if r.part.Setups == nil || r.part.Setups[0].Upto == "" {
		r.failAt(t.Span(), NotYet, "say in the first set-up which feature it ends with: upto = \"NAME\"", "the first set-up cuts the whole part, and this release cuts one set-up only")
		return
	}
	r.into.Note(t.Span(), LeftForLater, "list that end first in a part file of its own to have it cut", "this release cuts the first set-up only: what %s cuts is later", name)
	r.part.Later = append(r.part.Later, Later{What: "set-up: " + name})
}

// setup reads the set-up that is cut.
func (r *reader) setup(t *source.Table, s Stock, hasStock bool) Setup {
	u := Setup{Name: r.text(t, "name"), Upto: r.text(t, "upto"), Span: t.Span()}
	if u.Name == "" {
		u.Name = "set-up 1"
	}
	end := r.upto(t, u.Upto)
	u.Hold = r.hold(t, s, hasStock, end)
	r.zero(t, &u, s, hasStock)
	return u
}

// upto makes what stands behind the feature named later work, and returns the
// z at which the set-up's contour ends.
func (r *reader) upto(t *source.Table, name string) float64 {
	last := len(r.part.Features) - 1
	if name != "" {
		if i := r.row(t, "upto", name); i >= 0 {
			last = i
		}
	}
	end := 0.0
	for i := range r.part.Features {
		f := &r.part.Features[i]
		if i > last {
			f.Setup = -1
		} else if f.Setup == 0 {
			end = min(end, f.Piece.To.Z)
		}
	}
	return end
}

// hold reads hold = { .. } and sees that the jaws lie on one cylinder that
// this set-up does not cut; end is where its contour ends.
func (r *reader) hold(t *source.Table, s Stock, hasStock bool, end float64) Hold {
	h := Hold{On: "stock", Span: t.Span()}
	if !t.Has("hold") {
		r.assume("setup.hold", "at the back end of the stock", t.Span())
		return h
	}
	in, ok := t.Table("hold")
	if !ok {
		r.wrong = true
		return h
	}
	defer in.Only(holdKeys)
	h.Span = in.Span()
	if in.Has("by") {
		if h.By, ok = in.OneOf("by", "chuck"); !ok {
			r.wrong = true
		}
	}
	if in.Has("support") {
		in.Value("support")
		r.failAt(in.KeySpan("support"), NotYet, "hold it without a centre, or cut this end by hand", "this release does not keep clear of a centre in the tailstock")
	}
	if in.Has("indicate") {
		if name := r.text(in, "indicate"); name != "" && name != "stock" {
			r.row(in, "indicate", name)
		}
	}
	if in.Has("on") {
		h.On = r.text(in, "on")
	}
	if grip, ok := r.length(in, "grip", above0); ok {
		h.Grip = grip
	}
	back := s.Front - s.Length // z of the stock's back end
	if h.On != "stock" && h.On != "" {
		i := r.row(in, "on", h.On)
		if i < 0 {
			return h
		}
		f := &r.part.Features[i]
		switch {
		case f.Kind != Journal:
			r.fail(in, "on", BadGrip, `name a journal, or "stock"`, "jaws lie on one cylinder, and %s is a %s", f.Name, f.Kind)
			return h
		case f.Setup == 0:
			r.fail(in, "on", BadGrip, `on = "stock", or end the set-up before it with upto`, "the jaws would lie on %s, which this set-up cuts", f.Name)
			return h
		}
		if geom.Count(h.Grip, 6) > geom.Count(f.Piece.Length(), 6) {
			r.fail(in, "grip", BadGrip, "at most its length", "%s is only %s long", f.Name, r.say(f.Piece.Length()))
		}
		return h
	}
	if hasStock && r.part.Features != nil && h.Grip > 0 && geom.Count(back+h.Grip, 6) > geom.Count(end, 6) {
		r.fail(in, "grip", BadGrip, "grip at most "+r.say(end-back)+", less what the tool needs behind the last feature",
			"jaws gripping %s would lie over what this set-up cuts", r.say(h.Grip))
	}
	return h
}

// zero reads where the program's Z0 is.
func (r *reader) zero(t *source.Table, u *Setup, s Stock, hasStock bool) {
	if !t.Has("zero") {
		return
	}
	v, ok := t.Value("zero")
	switch {
	case !ok:
		r.wrong = true
	case v.Kind == source.KindNumber:
		u.Zero, _ = r.length(t, "zero", any0)
	case v.Kind == source.KindText && v.Text.Value == "face":
	case v.Kind == source.KindText && v.Text.Value == "chuck":
		if u.Hold.Grip == 0 || u.Hold.On != "stock" {
			r.fail(t, "zero", MissingKey, `hold = { by = "chuck", on = "stock", grip = 40 }`, "zero at the chuck needs to know how much of the stock is gripped")
			return
		}
		if hasStock {
			u.Zero = s.Length - s.Front - u.Hold.Grip
		}
	default:
		r.fail(t, "zero", source.UnknownValue, `"face", "chuck", or the z of the finished face`, "zero must be a place")
	}
}
