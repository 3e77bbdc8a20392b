package profiles

import (
	"errors"

	"taperwright/profiles/finding"
	"taperwright/profiles/shop"
	"taperwright/profiles/source"
)

// Opener opens a file that a part file names, by the name written there.
// ErrOutsideRoot tells that it may not be read.
type Opener func(name string) (*finding.Text, error)

// ErrOutsideRoot is what an Opener returns for a file above its root.
var ErrOutsideRoot = errors.New("outside the root folder")

var rootKeys = []source.Key{
	{Name: "title", Type: "text", Help: "what the part is"},
	{Name: "drawing", Type: "text", Help: "number of its drawing"},
	{Name: "unit", Type: `"mm" or "inch"`, Help: "unit of every length of this file; mm when not given"},
	{Name: "material", Type: "text", Help: "for the header and the setting sheet"},
	{Name: "shop", Type: "text", Help: "the shop file; or [machine] and [[tool]] in this file"},
	{Name: "general_tolerance", Type: "text", Help: `ISO 2768-1 class of what has no tolerance of its own: "fine", "medium", "coarse" or "very-coarse"`},
	{Name: "stock", Type: "table", Help: "the raw piece"},
	{Name: "edges", Type: "table", Help: "edges and corners that no feature names"},
	{Name: "outside", Type: "tables", Help: "features from front to back, each beginning where the last ended"},
	{Name: "inside", Type: "tables", Help: "features of a bore; not in this release"},
	{Name: "later", Type: "tables", Help: "work not cut and not judged here"},
	{Name: "setup", Type: "tables", Help: "how the part is held; one, face front, when not given"},
	{Name: "machine", Type: "table", Help: "what each word means on this lathe, instead of a shop file"},
	{Name: "tool", Type: "tables", Help: "one cutting edge each, instead of a shop file"},
	{Name: "hand_lathe", Type: "table", Help: "a lathe turned by hand, instead of a shop file"},
}

// Read reads a part file and, through open, the shop file that it names. All
// that is wrong is added to into in one run; the part is nil when any of it is
// an error. open may be nil: then no other file can be read.
func Read(text *finding.Text, open Opener, into *finding.List) *Part {
	before := errorsIn(into)
	root, ok := source.Parse(text, into)
	if !ok {
		return nil
	}
	r := &reader{into: into, open: open, root: root, part: &Part{Text: text}}
	r.head()
	r.shop()
	stock, hasStock := r.stock()
	e := r.edges()
	r.features(e)
	r.laterWork()
	r.setups(stock, hasStock)
	root.Only(rootKeys)
	if r.wrong || errorsIn(into) > before {
		return nil
	}
	r.part.Stock = stock
	r.part.Digest = digestOf(append([]*source.Table{root}, r.shopTable...)...)
	return r.part
}

func errorsIn(l *finding.List) (n int) {
	for _, f := range l.Sorted() {
		if f.Severity == finding.Error {
			n++
		}
	}
	return n
}

// assume lists a value that the file does not give.
func (r *reader) assume(what, value string, from finding.Span) {
	r.part.Assumed = append(r.part.Assumed, Assumption{What: what, Value: value, From: from})
}

// text reads a text that may be absent.
func (r *reader) text(t *source.Table, key string) string {
	v, ok := t.Text(key)
	if !ok && t.Has(key) {
		r.wrong = true
	}
	return v.Value
}

// head reads what stands above the tables.
func (r *reader) head() {
	p := r.part
	p.Title, p.Drawing, p.Material = r.text(r.root, "title"), r.text(r.root, "drawing"), r.text(r.root, "material")
	if w, ok := r.root.OneOf("unit", "mm", "inch"); ok && w == "inch" {
		r.unit = shop.Inch
	} else if !ok && !r.root.Has("unit") {
		r.assume("unit", "mm", finding.Span{})
	}
	p.Unit = r.unit
	r.class = 1
	if !r.root.Has("general_tolerance") {
		r.assume("general_tolerance", "medium (ISO 2768-1)", finding.Span{})
		return
	}
	if v, ok := r.root.Text("general_tolerance"); ok {
		if word, isLetter := generalLetters[v.Value]; isLetter {
			v.Value = word
		} else if v.Value, ok = r.root.OneOf("general_tolerance", generalClasses...); !ok {
			return
		}
		for i, w := range generalClasses {
			if w == v.Value {
				r.class = i
			}
		}
	}
}

// shop reads the shop file, or the tables of one in this file.
func (r *reader) shop() {
	in := r.root
	own := in.Has("machine") || in.Has("tool") || in.Has("hand_lathe")
	switch {
	case own && in.Has("shop"):
		r.fail(in, "shop", NoShop, "give one of them", "there are both a shop file and [machine] or [[tool]] in this file")
	case own:
		r.part.Shop = shop.ReadIn(in, r.unit, r.into)
	case !in.Has("shop"):
		r.missing(in, "shop", NoShop, `shop = "shop.toml", or write [machine] and [[tool]] here; taperwright new shop writes one to begin from`, "the part names no shop file")
	default:
		name, ok := in.Text("shop")
		if !ok {
			r.wrong = true
			return
		}
		r.openShop(name)
	}
}

// openShop reads the shop file of a name. One that is not TOML is named and
// never quoted: it may be any file of this computer.
func (r *reader) openShop(name source.Text) {
	if r.open == nil {
		r.failAt(name.Span, CannotOpen, "write [machine] and [[tool]] in this file", "no other file can be read here")
		return
	}
	text, err := r.open(name.Value)
	switch {
	case errors.Is(err, ErrOutsideRoot):
		r.failAt(name.Span, OutsideRoot, "move it below, or name a higher folder with --root", "the shop file lies outside the folder that may be read")
		return
	case err != nil:
		r.failAt(name.Span, CannotOpen, "names are relative to the part file", "the shop file cannot be read: %v", err)
		return
	}
	var quiet finding.List
	root, ok := source.Parse(text, &quiet)
	if !ok {
		where := text.Name
		if found := quiet.Sorted(); len(found) > 0 {
			where = found[0].Span.Place()
		}
		r.failAt(name.Span, CannotOpen, "is it the right file? mend it there", "the shop file is not TOML: %s", where)
		return
	}
	// root adds what it finds later to quiet, in its own order
	r.part.Shop = shop.Read(root, &quiet)
	r.shopTable = []*source.Table{root}
	for _, f := range quiet.Sorted() {
		if f.Severity == finding.Error {
			r.wrong = true
		}
		r.into.Add(f)
	}
}

// edgeKeys are the keys of [edges].
var edgeKeys = []source.Key{
	{Name: "outside", Type: "length or [least, most]", Help: "break outside edges that name nothing; one number m means [m/2, m]"},
	{Name: "inside_at_most", Type: "length", Help: "fillet that an unnamed inside corner may keep; else the finish nose radius"},
}

// edges reads [edges]. What an inside corner may keep is the largest nose
// that finishes the outside, when not given (definitions 7).
func (r *reader) edges() edges {
	var e edges
	var in *source.Table
	if r.root.Has("edges") {
		t, ok := r.root.Table("edges")
		if !ok {
			r.wrong = true
			return e
		}
		in = t
		defer in.Only(edgeKeys)
		r.outsideEdges(in, &e)
	}
	if in != nil && in.Has("inside_at_most") {
		e.inside, e.known = r.length(in, "inside_at_most", from0)
		e.from = in.ValueSpan("inside_at_most")
		return e
	}
	if r.part.Shop == nil {
		return e
	}
	for _, finishing := range []bool{true, false} { // a shop without a finishing tool is for the planner to refuse
		for _, t := range r.part.Shop.Tools {
			if t.Kind == "turn" && !t.Inside && (t.Purpose != "rough") == finishing && (!e.known || t.Nose > e.inside) {
				e.inside, e.known = t.Nose, true
			}
		}
		if e.known {
			r.assume("edges.inside_at_most", r.say(e.inside)+", the finish nose radius", finding.Span{})
			return e
		}
	}
	r.assume("edges.inside_at_most", "not known: corners are not judged", finding.Span{})
	return e
}

// outsideEdges reads outside = m or [least, most].
func (r *reader) outsideEdges(in *source.Table, e *edges) {
	if !in.Has("outside") {
		return
	}
	e.outside = in.ValueSpan("outside")
	v, ok := in.Value("outside")
	if !ok {
		r.wrong = true
		return
	}
	if v.Kind != source.KindList {
		e.most, ok = r.length(in, "outside", from0)
		if !ok {
			r.wrong, e.most = true, 0
			return
		}
		e.least = e.most / 2
		return
	}
	n, ok := in.Numbers("outside")
	if !ok {
		r.wrong = true
		return
	}
	if len(n) != 2 || n[0].Value < 0 || n[0].Value > n[1].Value || r.mm(n[1].Value) > longest {
		r.fail(in, "outside", BadLength, "outside = [0.1, 0.3], or one number", "outside must be [least, most]")
		return
	}
	e.least, e.most = r.mm(n[0].Value), r.mm(n[1].Value)
}

// features reads [[outside]] and makes the contour.
func (r *reader) features(e edges) {
	if r.root.Has("inside") {
		r.root.Value("inside")
		r.failAt(r.root.KeySpan("inside"), NotYet, "take it out, or say it in [[later]]", "this release does not cut inside work")
	}
	tables := r.root.Tables("outside")
	if r.root.Has("outside") && tables == nil {
		r.wrong = true
		if v, _ := r.root.Value("outside"); v.Kind != source.KindList || len(v.List) > 0 {
			return // its type is wrong, and said so
		}
	}
	list := r.list(tables)
	mains, treats := r.mains(list)
	if len(mains) < 2 {
		return
	}
	mains, treats, ok := r.layout(mains, treats)
	for _, t := range treats {
		ok = ok && (t == nil || !t.bad)
	}
	if !ok {
		r.wrong = true
		return
	}
	rows, ok := r.treated(mains, treats, e)
	if !ok {
		r.wrong = true
		return
	}
	r.part.Features = rows
	r.part.Length = -mains[len(mains)-1].f.Piece.To.Z
	r.names()
}

// laterKeys are the keys of [[later]].
var laterKeys = []source.Key{
	{Name: "what", Type: "text", Help: "the work, as the sheet is to say it"},
	{Name: "on", Type: "text", Help: "the feature it is done on"},
}

func (r *reader) laterWork() {
	for _, t := range r.root.Tables("later") {
		what, on := r.text(t, "what"), r.text(t, "on")
		t.Only(laterKeys)
		if what == "" && !t.Has("what") {
			r.missing(t, "what", MissingKey, `what = "thread M30x2"`, "%s does not say what is done later", t.Name())
		}
		if on != "" {
			r.row(t, "on", on)
		}
		r.part.Later = append(r.part.Later, Later{What: what, On: on})
	}
}

// row returns the index of the feature that a key names; -1 with a finding.
func (r *reader) row(t *source.Table, key, name string) int {
	if r.part.Features == nil { // the list could not be read: it says why
		return -1
	}
	if i := r.part.find(name); i >= 0 {
		return i
	}
	var names []string
	for _, f := range r.part.Features {
		names = append(names, f.Name)
	}
	help := ""
	if near, ok := finding.Nearest(name, names); ok {
		help = "did you mean " + near + "?"
	}
	r.fail(t, key, UnknownName, help, "no feature is called %q", name)
	return -1
}
