package profiles

import (
	"taperwright/profiles/finding"
	"taperwright/profiles/geom"
	"taperwright/profiles/source"
)

var stockKeys = []source.Key{
	{Name: "diameter", Type: "length", Help: "of the bar or tube"},
	{Name: "length", Type: "length", Help: "of the whole raw piece"},
	{Name: "front", Type: "length", Help: "metal on the front face beyond Z0; 0: faced before"},
	{Name: "bore", Type: "length", Help: "diameter of a hole that is there already"},
	{Name: "bore_depth", Type: "length", Help: "of the hole, from the raw front; through when not given"},
	{Name: "oversize", Type: "length", Help: "on diameter: how much larger the raw piece may be; for clearances only, 0.5 mm when not given (common practice)"},
}

// laterStock are keys of [stock] for a later release.
var laterStock = []string{"from", "build_up", "outside", "inside"}

// oversize is what a bar may be larger than said, on radius, mm: hot rolled
// bars of 50 mm vary by 0.4 to 0.8 on diameter (common practice: 0.5).
const oversize = 0.25

// stock reads [stock].
func (r *reader) stock() (Stock, bool) {
	var s Stock
	if !r.root.Has("stock") {
		r.missing(r.root, "stock", NoStock, "[stock] with diameter and length", "the part has no stock to be cut from")
		return s, false
	}
	t, ok := r.root.Table("stock")
	if !ok {
		r.wrong = true
		return s, false
	}
	s.Span = t.Span()
	for _, key := range laterStock {
		if t.Has(key) {
			t.Value(key)
			r.failAt(t.KeySpan(key), NotYet, "give diameter and length of a bar or tube", "this release cuts from a bar or tube only")
		}
	}
	d, okD := r.needed(t, "diameter", "give the diameter of the bar")
	l, okL := r.needed(t, "length", "give the length of the raw piece")
	front, okF := r.length(t, "front", from0)
	if !t.Has("front") {
		r.assume("stock.front", "0: faced before", finding.Span{})
		okF = true
	}
	s.Radius, s.Length, s.Front, s.Oversize = d/2, l, front, oversize
	if over, ok := r.length(t, "oversize", from0); ok {
		s.Oversize = over / 2
	} else if !t.Has("oversize") {
		r.assume("stock.oversize", r.say(2*oversize)+" on diameter, for clearances", finding.Span{})
	}
	if bore, ok := r.length(t, "bore", from0); ok {
		s.Bore = bore / 2
	}
	depth, okB := r.length(t, "bore_depth", above0)
	if s.Bore > 0 {
		s.BoreDepth = l
		if okB {
			s.BoreDepth = min(depth, l)
		}
	} else if okB {
		r.fail(t, "bore_depth", MissingKey, "bore = its diameter", "bore_depth needs a bore")
	}
	t.Only(stockKeys)
	if !okD || !okL || !okF {
		return s, false
	}
	if s.Bore >= s.Radius {
		r.fail(t, "bore", OutsideStock, "the bore is smaller than the bar", "a bore of %s leaves nothing of a bar of %s", r.say(2*s.Bore), r.say(d))
		return s, false
	}
	return s, true
}

// fits sees that the part can be cut from its stock.
func (r *reader) fits(s Stock) {
	p := r.part
	back := s.Length - s.Front - p.Length
	if geom.Count(back, 6) < 0 {
		r.failAt(s.Span, StockTooShort, "length at least "+r.say(p.Length+s.Front), "the part is %s long and %s is faced off: %s of stock are missing", r.say(p.Length), r.say(s.Front), r.say(-back))
	}
	// of features that do not fit, the one furthest out: its size is the cure for all
	var thick, thin *Feature
	over, under := s.Radius, s.Bore
	for i := range p.Features {
		f := &p.Features[i]
		lo, hi := f.Piece.Bounds()
		if geom.Count(hi.R, 6) > geom.Count(over, 6) {
			thick, over = f, hi.R
		}
		if s.Bore == 0 || f.Kind == Corner {
			continue
		}
		if f.Kind == Shoulder && f.Piece.From.R == 0 { // a face from the axis: there is only metal outside the bore
			f.Judged.From.R = max(f.Judged.From.R, min(s.Bore, f.Judged.To.R))
			continue
		}
		if hi.Z > s.Front-s.BoreDepth+geom.Near && geom.Count(lo.R, 6) < geom.Count(under, 6) {
			thin, under = f, lo.R
		}
	}
	if thick != nil {
		r.failAt(blame(thick, s.Span), OutsideStock, "a bar of at least that, or a smaller feature", "%s reaches diameter %s, the stock is %s", thick.Name, r.say(2*over), r.say(2*s.Radius))
	}
	if thin != nil {
		r.failAt(blame(thin, s.Span), OutsideStock, "a smaller or shorter bore, or a larger feature", "%s comes down to diameter %s, where the stock has a bore of %s", thin.Name, r.say(2*under), r.say(2*s.Bore))
	}
}

// blame returns where f stands in the file, else other.
func blame(f *Feature, other finding.Span) finding.Span {
	if f.Span.Valid() {
		return f.Span
	}
	return other
}
