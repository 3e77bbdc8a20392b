package post

import (
	"strconv"
	"strings"

	"taperwright/profiles/geom"
	"taperwright/profiles/shop"
)

// cautions stand in every program: neutral words; the machine's manual, local
// rules and the person at the machine decide.
var cautions = []string{
	"this plan is arithmetic, not permission: the person at the machine decides",
	"the manual of the machine and local rules come first",
	"guards and doors shut, chuck key out, no gloves, rags, rings, loose sleeves",
	"hold to the lowest speed that chuck, work and balance allow, set at the machine too",
	"bar behind the spindle: cut short, or supported over its full length",
	"turn by hand first: grip, jaws, turret and centre clear of each other",
	"first run without work, rapids low, then single block, first cut above size",
	"enter at the top of a tool block only, with the tool clear of the work",
	"no emery by hand, stop the spindle to measure and to clear chips, with a brush",
}

// header returns the comments above the blocks. No clock, user, host or path
// stands in it: the same part gives the same bytes.
func (w *writer) header() []string {
	var out []string
	add := func(name, text string) {
		if text != "" {
			out = append(out, wrapped(name+": "+text)...)
		}
	}
	p, f := w.part, w.format
	add("part", plain(p.Title))
	add("drawing", plain(p.Drawing))
	add("digest of the values read", plain(p.Digest))
	set := p.Setups[w.plan.Setup]
	name := plain(set.Name) + ", "
	if set.Name == "" || set.Name == "set-up "+strconv.Itoa(w.plan.Setup+1) {
		name = ""
	}
	add("set-up", name+strconv.Itoa(w.plan.Setup+1)+" of "+strconv.Itoa(len(p.Setups)))
	add("material", plain(p.Material))
	stock := "diameter " + f.show(2*p.Stock.Radius) + ", length " + f.show(p.Stock.Length) + ", on the front face " + f.show(p.Stock.Front)
	if p.Stock.Bore > 0 {
		stock += ", bore diameter " + f.show(2*p.Stock.Bore)
		if p.Stock.BoreDepth > 0 {
			stock += " to a depth of " + f.show(p.Stock.BoreDepth)
		}
	}
	add("stock", stock)
	face := "front"
	if set.Back {
		face = "back"
	}
	if geom.Count(set.Zero, 7) == 0 {
		add("Z0", "finished "+face+" face, Z rises away from the chuck")
	} else {
		add("Z0", "the finished "+face+" face stands at Z "+f.show(set.Zero)+", Z rises away from the chuck")
	}
	add("words", w.wordsText())
	for _, t := range w.tools() {
		add("tool", t)
	}
	add("hold", w.hold())
	add("nose", "compensated in the path, no control compensation")
	change := w.m.Change.Value
	add("change point", "X "+f.show(w.xOf(change.R))+", Z "+f.show(change.Z))
	if w.moved {
		add("cuts", "up to X "+f.show(f.mm(w.mostX))+", down to Z "+f.show(f.mm(w.leastZ)))
	}
	for _, l := range p.Later {
		add("not cut here", plain(l.What)+" on "+plain(l.On))
	}
	for _, a := range p.Assumed {
		add("assumed", plain(a.What)+" = "+plain(a.Value))
	}
	for _, n := range w.plan.Notes {
		add("note", ours.Replace(n))
	}
	for _, c := range w.program.Cones {
		add("rounding", plain(p.Features[c.Feature].Name)+": half angle "+signed(seconds(c.HalfAngle))+" sec, words can make "+seconds(c.Allowance)+
			" sec, diameter at the gauge plane "+signed(geom.Fixed(c.Diameter, 5))+" mm")
	}
	if n := w.program; n.ArcsAsLines+n.ArcsDropped+n.LinesDropped > 0 {
		add("rounding", "too small for the words: "+count(n.ArcsAsLines, "arc")+" written as a line, "+count(n.ArcsDropped, "arc")+" and "+count(n.LinesDropped, "line")+" left out")
	}
	add("coolant", "no word is posted: switch it by hand")
	said := map[string]bool{}
	for _, list := range [][]string{w.plan.Cautions, cautions} {
		for _, c := range list {
			if !said[c] {
				said[c] = true
				add("caution", ours.Replace(c))
			}
		}
	}
	return out
}

func count(n int, what string) string {
	if n != 1 {
		what += "s"
	}
	return strconv.Itoa(n) + " " + what
}

func signed(s string) string {
	if strings.HasPrefix(s, "-") || strings.Trim(s, "0.") == "" {
		return s
	}
	return "+" + s
}

func (w *writer) xOf(r float64) float64 {
	if w.format.diameter {
		return 2 * r
	}
	return r
}

func (w *writer) wordsText() string {
	s := "X is a radius"
	if w.format.diameter {
		s = "X is a diameter"
	}
	s += ", lengths in " + w.format.unit.String()
	if w.format.unit == shop.Inch {
		s += ", I K R as radii in inch, speed in ft/min"
	} else {
		s += ", I K R as radii in mm, speed in m/min"
	}
	if w.feedMode() == shop.FeedPerMinute {
		return s + ", feed per minute"
	}
	return s + ", feed per revolution"
}

// tools returns a line for each tool in the order of use.
func (w *writer) tools() []string {
	var order []*shop.Tool
	jobs := map[*shop.Tool][]string{}
	for i := range w.plan.Operations {
		op := &w.plan.Operations[i]
		if jobs[op.Tool] == nil {
			order = append(order, op.Tool)
		}
		jobs[op.Tool] = append(jobs[op.Tool], op.Purpose)
	}
	out := make([]string, len(order))
	for i, t := range order {
		tip := "programmed point: nose centre"
		if t.TipX != 0 || t.TipZ != 0 {
			tip = "programmed point: X" + sign(t.TipX) + " Z" + sign(t.TipZ) + " of the nose"
		}
		out[i] = "station " + strconv.Itoa(t.Station) + ", offset " + strconv.Itoa(t.Offset) + ", nose radius " + w.format.show(t.Nose) + ", " + tip + ": " + strings.Join(jobs[t], ", ")
	}
	return out
}

func sign(n int) string {
	switch {
	case n < 0:
		return "-"
	case n > 0:
		return "+"
	}
	return "0"
}

func (w *writer) hold() string {
	h := w.part.Setups[w.plan.Setup].Hold
	if h.By == "" {
		return "not given: taken as held at the back end of the stock"
	}
	s := plain(h.By)
	if h.On != "" {
		s += " on " + plain(h.On)
	}
	if h.Grip > 0 {
		s += ", grip " + w.format.show(h.Grip)
	}
	if h.Support != "" {
		s += ", support " + plain(h.Support)
	}
	return s
}
