package verify

import (
	"cmp"
	"math"
	"slices"
	"sort"
	"strconv"
	"strings"

	"taperwright/profiles"
	"taperwright/profiles/finding"
	"taperwright/profiles/geom"
	"taperwright/profiles/shop"
	"taperwright/verify/motion"
)

// A slip explains what is out when the program, judged again under it, is in
// everywhere and no figure stays off by more than this, mm, or by one unit of
// the last place of the program's words (definitions 13).
const explained = 0.002

// trialMoves bounds the work: so many motions are cut again in all, about the
// time of ten checks of a program of 100,000 moves.
const trialMoves = 1_000_000

// sharp stands for a tool without a nose radius, mm: what it leaves other
// than a point would is a hundredth of the last printed place.
const sharp = 1e-6

// slips tries the usual slips one by one and returns those under which every
// feature is in, best first. read holds the programs as parsed.
func (b *bench) slips(read []program, first int, rows []judged) (found []Slip, spent bool) {
	t := &trials{bench: b, read: read, start: first, rows: rows, budget: trialMoves}
	t.misreadings()
	t.noses()
	t.tips()
	t.modes()
	t.zeros()
	slices.SortStableFunc(t.found, func(a, b Slip) int {
		return cmp.Compare(geom.Count(a.Residual, lengthPlaces), geom.Count(b.Residual, lengthPlaces))
	})
	return t.found, t.spent
}

type trials struct {
	*bench
	read   []program
	start  int // set-up of the first program
	rows   []judged
	budget int // motions that may still be cut
	spent  bool
	found  []Slip
}

// add keeps a slip; of two readings under one code the better.
func (t *trials) add(code string, residual float64, explains, cure string) {
	rest := "; that explains all"
	if geom.Count(residual, lengthPlaces) > 0 {
		rest = "; that explains all but " + size(residual)
	}
	s := Slip{code, explains + rest, geom.Round(residual, lengthPlaces), cure}
	i := slices.IndexFunc(t.found, func(x Slip) bool { return x.Code == code })
	switch {
	case i < 0:
		t.found = append(t.found, s)
	case geom.Count(s.Residual, lengthPlaces) < geom.Count(t.found[i].Residual, lengthPlaces):
		t.found[i] = s
	}
}

// cut cuts the programs again under a slip and judges them. It returns the
// largest figure that stays off, and false when something is still out.
func (t *trials) cut(tw tweak) (float64, bool) {
	var quiet finding.List
	n := newBench(t.part, t.start, &quiet)
	n.tweak, n.first = tw, true
	for i := range t.runs {
		p := t.read[i]
		if tw.shop != nil {
			p.trace = motion.Interpret(p.file, tw.shop, &quiet)
		}
		if t.budget -= len(p.trace.Motions); t.budget < 0 {
			t.spent = true
			return 0, false
		}
		if quiet.HasErrors() || !n.run(t.runs[i].Program, t.runs[i].Setup, p) {
			return 0, false
		}
	}
	return t.residual(n.rows(t.part, t.start, len(t.runs), false))
}

// residual returns the largest length that stays off when everything is in.
func (t *trials) residual(rows []judged) (float64, bool) {
	worst := 0.0
	for _, j := range rows {
		switch j.row.Verdict {
		case Later:
			continue
		case In:
		default:
			return 0, false
		}
		for _, x := range j.row.Off {
			if !strings.HasSuffix(x.Key, "_mm") || x.Key == "standoff_mm" {
				continue // the stand-off is the diameter told otherwise
			}
			if !x.Known {
				return 0, false
			}
			worst = max(worst, math.Abs(x.Value))
		}
	}
	word := 0.0 // one unit of the last place of the programs' words
	for _, p := range t.read {
		word = max(word, p.trace.Unit.Increment())
	}
	return worst, geom.Count(worst, lengthPlaces) <= geom.Count(max(explained, word), lengthPlaces)
}

// tools returns the tools that cut, in the order of their first cuts.
func (t *trials) tools() (tools []*shop.Tool) {
	for _, run := range t.runs {
		for i := range run.Trace.Motions {
			m := &run.Trace.Motions[i]
			if m.Kind != motion.Cut || m.Tool < 0 {
				continue
			}
			if tool := run.Trace.Tools[m.Tool].Tool; tool != nil && !slices.Contains(tools, tool) {
				tools = append(tools, tool)
			}
		}
	}
	return tools
}

// blamed names the block behind the first cone that is out, else behind the
// first thing that is.
func (t *trials) blamed() string {
	at := ""
	for _, r := range t.rows {
		if r.row.Verdict != Out || len(r.row.Blocks) == 0 {
			continue
		}
		if r.row.Kind == profiles.Taper {
			return t.name(r.row.Blocks[0])
		}
		if at == "" {
			at = t.name(r.row.Blocks[0])
		}
	}
	if at == "" {
		return "the program"
	}
	return at
}

// name names a block for a cure: its label if it has one, and its line.
func (t *trials) name(p Place) string {
	at := p.Text.Name + ":" + strconv.Itoa(p.Line)
	for _, run := range t.runs {
		if run.Program != p.Text {
			continue
		}
		blocks := run.Trace.Blocks // in the order of the text
		i := sort.Search(len(blocks), func(i int) bool { return blocks[i].Span.From().Line >= p.Line })
		if i < len(blocks) && blocks[i].Label != "" && blocks[i].Span.From().Line == p.Line {
			return blocks[i].Label + " (" + at + ")"
		}
	}
	return at
}

// instead returns a tweak that cuts with other in place of tool (nil: every
// tool changed by change).
func instead(tool *shop.Tool, change func(*shop.Tool)) tweak {
	made := map[*shop.Tool]*shop.Tool{}
	return tweak{tool: func(_, _ int, called *shop.Tool) *shop.Tool {
		if tool != nil && called != tool {
			return called
		}
		if made[called] == nil {
			other := *called
			change(&other)
			made[called] = &other
		}
		return made[called]
	}}
}

// noses tries a forgotten nose radius, of one tool or of all, and a wrong one.
func (t *trials) noses() {
	tools, at := t.tools(), t.blamed()
	tried := append([]*shop.Tool{}, tools...)
	if len(tools) > 1 {
		tried = append(tried, nil)
	}
	for _, tool := range tried {
		if tool != nil && tool.Nose <= sharp {
			continue
		}
		if r, ok := t.cut(instead(tool, func(x *shop.Tool) { x.Nose = sharp })); ok {
			t.add(SlipNoseForgotten, r, t.leaves(tool), "compensate the nose radius in the pass of "+at+
				"; an X offset would put every cylinder of the same tool off")
		}
	}
	// nose radii of ISO 1832 codes 02 to 24, and the inch sizes behind them
	for _, r := range [...]float64{0.2, 0.4, 0.5, 0.8, 1, 1.2, 1.6, 2, 2.4, 0.396875, 0.79375, 1.190625, 1.5875} {
		for _, tool := range tools {
			if geom.Count(tool.Nose-r, 3) == 0 || tool.Nose <= sharp {
				continue
			}
			if res, ok := t.cut(instead(tool, func(x *shop.Tool) { x.Nose = r })); ok {
				t.add(SlipNoseWrong, res, "the program was made for a nose radius of "+geom.Fixed(r, 3)+" mm, "+tool.Name+" has "+geom.Fixed(tool.Nose, 3)+" mm",
					"mount a nose of "+geom.Fixed(r, 3)+" mm, or compensate "+at+" for "+geom.Fixed(tool.Nose, 3)+" mm")
			}
		}
	}
}

// leaves tells what a forgotten nose radius leaves or gouges on the cones
// that are out: 2Rt(1 -/+ tan(a/2)) on diameter (definitions 10).
func (t *trials) leaves(tool *shop.Tool) string {
	text := "the nose radius was forgotten"
	for _, j := range t.rows {
		r := &j.row
		f := &t.part.Features[r.Feature]
		if r.Verdict != Out || f.Cone == nil || f.Setup < 0 {
			continue
		}
		own := tool
		if own == nil {
			own = t.toolOf(j.bits)
		}
		if own == nil {
			continue
		}
		d, left := ForgottenNose(own.Nose, math.Abs(f.Cone.Slope.Aim), f.Cone.LargeFront == t.part.Setups[f.Setup].Back)
		kind, does := "front", "leaves"
		if !left {
			kind, does = "back", "gouges"
		}
		text += ": R" + short(own.Nose) + " on " + f.Name + ", a " + kind + " cone of 1:" + short(1/(2*math.Abs(f.Cone.Slope.Aim))) +
			", " + does + " " + size(d) + " on diameter"
		if off, ok := r.Off.Get("diameter_mm"); ok {
			text += " (found " + geom.Fixed(off, lengthPlaces) + ")"
		}
	}
	return text
}

// toolOf returns the tool that cut the first of bits.
func (t *trials) toolOf(bits []bit) *shop.Tool {
	for _, o := range owners(bits) {
		run := t.runs[t.owners[o].Run]
		if m := run.Trace.Motions[t.owners[o].Motion]; m.Tool >= 0 {
			return run.Trace.Tools[m.Tool].Tool
		}
	}
	return nil
}

// ForgottenNose returns what a nose of radius nose leaves (front cone: one
// that grows toward the chuck) or gouges (back cone) on diameter when the
// programmed point of a usual tool follows a cone of slope t = tan(a), a the
// half angle: 2Rt(1 -/+ tan(a/2)).
func ForgottenNose(nose, t float64, front bool) (diameter float64, left bool) {
	half := (math.Sqrt(1+float64(t*t)) - 1) / t // tan(a/2)
	if front {
		return 2 * nose * t * (1 - half), true
	}
	return 2 * nose * t * (1 + half), false
}

// tips tries the other programmed points.
func (t *trials) tips() {
	tools, at := t.tools(), t.blamed()
	for _, tool := range tools {
		for _, tip := range [...][2]int{{-1, -1}, {-1, 1}, {1, -1}, {1, 1}, {0, 0}} {
			if tip == [2]int{tool.TipX, tool.TipZ} || tool.Nose <= sharp {
				continue
			}
			point := *tool
			point.TipX, point.TipZ = tip[0], tip[1]
			if r, ok := t.cut(instead(tool, func(x *shop.Tool) { x.TipX, x.TipZ = tip[0], tip[1] })); ok {
				t.add(SlipTip, r, "the program was made for another programmed point: "+tipWords(&point)+", the shop says "+tipWords(tool)+" for "+tool.Name,
					"set tip in the [[tool]] of "+tool.Name+", or program "+at+" for the point that is set")
			}
		}
	}
}

// modes tries the other readings of the program's words.
func (t *trials) modes() {
	m := &t.part.Shop.Machine
	try := func(code, explains, cure string, assume ...string) {
		other := *t.part.Shop
		for i := 0; i+1 < len(assume); i += 2 {
			if other.Machine.Assume(assume[i], assume[i+1]) != nil {
				return
			}
		}
		if r, ok := t.cut(tweak{shop: &other}); ok {
			t.add(code, r, explains, cure)
		}
	}
	if m.XIsDiameter.Value {
		try(SlipX, "the X words are radii, and the lathe takes them as diameters", `double the X words, or set x = "radius" in [machine] if the lathe is set so`, "x", "radius")
	} else {
		try(SlipX, "the X words are diameters, and the lathe takes them as radii", `halve the X words, or set x = "diameter" in [machine] if the lathe is set so`, "x", "diameter")
	}
	mm, inch := m.Words[shop.UnitMM], m.Words[shop.UnitInch]
	unit := "inch"
	if m.Unit.Value == shop.Inch {
		unit = "mm"
	}
	swap := []string{"unit", unit}
	if mm != "" && inch != "" {
		swap = append(swap, "word", `{ mm = "`+inch+`", inch = "`+mm+`" }`)
	}
	try(SlipUnit, "the numbers are in the other unit than the program says", "state the unit the numbers are in: "+mm+" for mm, "+inch+" for inch", swap...)
	if m.MissingPoint.Value == shop.Whole {
		try(SlipPoint, "numbers without a point count least increments", `write the points, or set missing_point = "increment" in [machine]`, "missing_point", "increment")
	} else {
		try(SlipPoint, "numbers without a point are whole", `write the points, or set missing_point = "whole" in [machine]`, "missing_point", "whole")
	}
}

// zeros tries a zero shifted by the metal on the face, or set at the back.
func (t *trials) zeros() {
	front := t.part.Stock.Front
	for _, z := range [...]struct {
		by         float64
		what, cure string
	}{
		{-front, "the program counts Z from the finished face, its zero was taken with the front stock still to come off", "shift Z by " + size(-front)},
		{front, "the program counts Z from the raw face", "set the zero to the finished face, or shift every Z by " + size(front)},
		{-t.part.Length, "the program counts Z from the other end of the part", `set zero in [[setup]], or shift every Z by ` + size(-t.part.Length)},
	} {
		if geom.Count(z.by, lengthPlaces) == 0 {
			continue
		}
		if r, ok := t.cut(tweak{shift: z.by}); ok {
			t.add(SlipZero, r, z.what, z.cure)
		}
	}
}

// misreading is a cone as someone may have read it off the drawing.
type misreading struct {
	code  string
	slope func(c *profiles.Cone) float64 // magnitude
	text  string
}

var misreadings = []misreading{
	{SlipHalf, func(c *profiles.Cone) float64 { return geom.Tan(c.HalfAngle.Aim / 2) }, "the half angle was taken for the included angle, and halved"},
	{SlipIncluded, func(c *profiles.Cone) float64 { return geom.Tan(c.HalfAngle.Aim * 2) }, "the included angle was taken for the half angle"},
	{SlipPerSide, func(c *profiles.Cone) float64 { return 2 * math.Abs(c.Slope.Aim) }, "the rate on diameter was taken per side"},
	{SlipOnDiameter, func(c *profiles.Cone) float64 { return math.Abs(c.Slope.Aim) / 2 }, "the rate was halved once too often: 1:n is on diameter already"},
	{SlipPerFoot, func(c *profiles.Cone) float64 { return math.Abs(c.Slope.Aim) * 12 }, "the taper per foot was taken per inch"},
	{SlipPerFoot, func(c *profiles.Cone) float64 { return math.Abs(c.Slope.Aim) / 12 }, "the taper per inch was taken per foot"},
	{SlipMinutes, func(c *profiles.Cone) float64 { return geom.Tan(asDecimals(c.HalfAngle.Aim)) }, "the minutes of the half angle were typed as decimals of a degree"},
	{SlipMinutes, func(c *profiles.Cone) float64 { return geom.Tan(asDecimals(2*c.HalfAngle.Aim) / 2) }, "the minutes of the included angle were typed as decimals of a degree"},
	{SlipComplement, func(c *profiles.Cone) float64 { return 1 / math.Abs(c.Slope.Aim) }, "the angle was counted from the face, not from the axis"},
}

// asDecimals returns the angle that d degrees m minutes s seconds make when
// typed as d.mmss.
func asDecimals(rad float64) float64 {
	s := geom.Count(geom.Degrees(rad)*3600, 0)
	return geom.Radians(float64(s/3600) + float64(s/60%60)/100 + float64(s%60)/10000)
}

// misreadings tries cones as they may have been misread: all that are out at
// once, right at the gauge plane, at the front end or at the back end.
func (t *trials) misreadings() {
	var cones []int
	for _, j := range t.rows {
		r := &j.row
		if r.Verdict == Out && t.part.Features[r.Feature].Cone != nil {
			cones = append(cones, r.Feature)
		}
	}
	if len(cones) == 0 {
		return
	}
	try := func(code, text string, change func(f *profiles.Feature) (gauge, slope float64, ok bool)) {
		part := *t.part
		part.Features = slices.Clone(part.Features)
		for _, i := range cones {
			gauge, slope, ok := change(&part.Features[i])
			if !ok {
				return
			}
			recone(&part, i, gauge, slope)
		}
		if r, ok := t.residual(t.on(&part)); ok {
			t.add(code, r, text, t.coneCure(cones))
		}
	}
	for _, m := range misreadings {
		for plane := range 3 {
			try(m.code, m.text, func(f *profiles.Feature) (float64, float64, bool) {
				c := f.Cone
				z := [3]float64{c.GaugeZ, f.ZFrom.Aim, f.ZTo.Aim}[plane]
				slope := m.slope(c)
				if !(slope > 0 && slope < 100) {
					return 0, 0, false
				}
				if c.Slope.Aim < 0 {
					slope = -slope
				}
				at := c.Gauge.Aim + float64(c.Slope.Aim*(z-c.GaugeZ))
				return at + float64(slope*(c.GaugeZ-z)), slope, true
			})
		}
	}
	try(SlipWrongEnd, "the large end was put at the small end's place", func(f *profiles.Feature) (float64, float64, bool) {
		c := f.Cone
		mid := float64((f.ZFrom.Aim + f.ZTo.Aim) / 2)
		at := c.Gauge.Aim + float64(c.Slope.Aim*(mid-c.GaugeZ))
		return at - float64(c.Slope.Aim*(c.GaugeZ-mid)), -c.Slope.Aim, true
	})
	try(SlipWrongEnd, "the gauge plane was counted from the wrong end", func(f *profiles.Feature) (float64, float64, bool) {
		c := f.Cone
		there := f.ZFrom.Aim + f.ZTo.Aim - c.GaugeZ
		return c.Gauge.Aim + float64(c.Slope.Aim*(c.GaugeZ-there)), c.Slope.Aim, true
	})
}

// on judges what was cut against another part.
func (t *trials) on(part *profiles.Part) []judged {
	return t.bench.rows(part, t.start, len(t.runs), false)
}

// recone gives feature i of part, a taper, another radius at its gauge plane
// and another signed slope, and moves the ends of its neighbours with it.
func recone(part *profiles.Part, i int, gauge, slope float64) {
	f := &part.Features[i]
	c := *f.Cone
	move := func(s profiles.Size, to float64) profiles.Size {
		d := to - s.Aim
		s.Low, s.Aim, s.High = s.Low+d, to, s.High+d
		return s
	}
	r := func(z float64) float64 { return gauge + float64(slope*(z-c.GaugeZ)) }
	c.Gauge, c.Slope = move(c.Gauge, gauge), move(c.Slope, slope)
	c.HalfAngle = move(c.HalfAngle, geom.Atan(math.Abs(slope)))
	f.Cone = &c
	from, to := f.Piece.From, f.Piece.To
	for _, p := range [2]*geom.Piece{&f.Piece, &f.Judged} {
		p.From.R, p.To.R = r(p.From.Z), r(p.To.Z)
	}
	shift := func(k int, by float64, end func(*geom.Piece) *geom.Point) {
		for k >= 0 && k < len(part.Features) {
			g := &part.Features[k]
			if g.Kind == profiles.Shoulder {
				end(&g.Piece).R += by
				end(&g.Judged).R += by
				return
			}
			if main(g) {
				return
			}
			g.Piece, g.Judged = g.Piece.Shift(geom.Point{R: by}), g.Judged.Shift(geom.Point{R: by})
			if k < i {
				k--
			} else {
				k++
			}
		}
	}
	shift(i-1, f.Piece.From.R-from.R, func(p *geom.Piece) *geom.Point { return &p.To })
	shift(i+1, f.Piece.To.R-to.R, func(p *geom.Piece) *geom.Point { return &p.From })
}

// coneCure tells what the cones that are out should be, and which block to edit.
func (t *trials) coneCure(cones []int) string {
	var out []string
	for _, j := range t.rows {
		r := &j.row
		if !slices.Contains(cones, r.Feature) {
			continue
		}
		f := &t.part.Features[r.Feature]
		at := "the program"
		if len(r.Blocks) > 0 {
			at = t.name(r.Blocks[len(r.Blocks)-1])
		}
		a, b := ToProgram(t.part, max(f.Setup, 0), f.Piece.From), ToProgram(t.part, max(f.Setup, 0), f.Piece.To)
		c := f.Cone
		d := func(z float64) string {
			return geom.Fixed(2*(c.Gauge.Aim+float64(c.Slope.Aim*(z-c.GaugeZ))), 3)
		}
		out = append(out, at+": "+f.Name+" must run from diameter "+d(f.Piece.From.Z)+" mm at Z"+geom.Fixed(a.Z, 3)+" to "+d(f.Piece.To.Z)+" mm at Z"+geom.Fixed(b.Z, 3)+
			", 1:"+short(1/(2*math.Abs(c.Slope.Aim)))+" on diameter, half angle "+geom.Fixed(geom.Degrees(c.HalfAngle.Aim), 4)+" degrees (before nose compensation)")
	}
	return strings.Join(out, "; ")
}

// short prints a number with as few decimals as it has, three at most.
func short(x float64) string {
	s := geom.Fixed(x, 3)
	return strings.TrimSuffix(strings.TrimRight(s, "0"), ".")
}

func quoted(names []string) string {
	for i, n := range names {
		names[i] = strconv.Quote(n)
	}
	return strings.Join(names, ", ")
}
