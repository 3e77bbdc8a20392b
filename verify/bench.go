package verify

import (
	"math"
	"slices"
	"strings"

	"taperwright/profiles"
	"taperwright/profiles/finding"
	"taperwright/profiles/geom"
	"taperwright/profiles/shop"
	"taperwright/verify/motion"
	"taperwright/verify/rs274"
	"taperwright/verify/stock"
)

// touch is how deep, in mm normal to the surface, a rapid or a holder may go
// before it counts as being in metal: rubbing along is not (definitions 19).
const touch = 0.0005

// tweak is what a trial reads otherwise than the files say. The zero tweak
// changes nothing.
type tweak struct {
	shop  *shop.Shop // read the programs for this lathe
	shift float64    // the programs' zero lies this much further from the chuck
	// tool returns the tool to cut a motion with; nil: the tool called
	tool func(run, motion int, t *shop.Tool) *shop.Tool
}

// bench is one cutting of all programs.
type bench struct {
	part   *profiles.Part
	tweak  tweak
	into   *finding.List // of hazards
	first  bool          // stop at the first error: a trial that failed
	runs   []Run
	owners []Owner
	stock  *stock.Stock
	at     finding.Span // the words being cut, for a fault of ours

	judging   int // judging errors raised
	stopped   bool
	stopAt    finding.Span
	spoiled   map[int]bool // owners that ran a body through metal
	loose     []stock.Loose
	notJudged []string
	assumed   []Assumption
	visited   int
}

// reading is one program parsed, kept for trials.
type program struct {
	file  *rs274.File
	trace *motion.Trace
}

func newBench(part *profiles.Part, first int, into *finding.List) *bench {
	return &bench{part: part, into: into, stock: startStock(part, first), spoiled: map[int]bool{}}
}

// startStock returns the raw stock in the part's frame. Set-ups before the
// first one judged have been cut as wanted.
func startStock(part *profiles.Part, first int) *stock.Stock {
	s := part.Stock
	front, back := s.Front, s.Front-s.Length
	var outer geom.Chain
	at := geom.Point{Z: front, R: s.Radius}
	raw := func(z float64) { // raw bar from where we are to z
		outer = append(outer, geom.Line(geom.Point{Z: at.Z, R: s.Radius}, geom.Point{Z: z, R: s.Radius}))
		at = geom.Point{Z: z, R: s.Radius}
	}
	begun := false
	for _, f := range part.Features {
		if f.Inside || f.Setup < 0 || f.Setup >= first || f.Piece.From == f.Piece.To {
			continue
		}
		if p := f.Piece; p.From.Z != p.To.Z || !p.IsLine() {
			if begun || p.From.Z < front {
				if !begun && !part.Setups[f.Setup].Back {
					at.Z = p.From.Z // the face was cut too
				}
				if p.From.Z < at.Z {
					raw(p.From.Z)
				}
			}
			outer, at, begun = append(outer, p), p.To, true
		}
	}
	last := back
	for _, f := range part.Features {
		if f.Setup >= 0 && f.Setup < first && part.Setups[f.Setup].Back {
			last = -part.Length // the back face was cut
		}
	}
	if at.Z > last {
		raw(last)
	}
	var inner geom.Chain
	if s.Bore > 0 {
		depth := s.BoreDepth
		if depth <= 0 {
			depth = s.Length
		}
		inner = geom.Chain{geom.Line(geom.Point{Z: front, R: s.Bore}, geom.Point{Z: front - depth, R: s.Bore})}
	}
	return stock.New(outer, inner, holdOf(part, first))
}

// holdOf returns the gripped range of a set-up.
func holdOf(part *profiles.Part, n int) stock.Hold {
	h := part.Setups[n].Hold
	front, back := part.Stock.Front, part.Stock.Front-part.Stock.Length
	for _, f := range part.Features {
		if h.On != "" && f.Name == h.On {
			lo, hi := f.Piece.Bounds()
			return stock.Hold{Known: true, Low: lo.Z, High: hi.Z}
		}
	}
	if part.Setups[n].Back {
		return stock.Hold{Known: true, Low: front - h.Grip, High: front}
	}
	return stock.Hold{Known: true, Low: back, High: back + h.Grip}
}

// edgeOf is a tool ready to cut.
type edgeOf struct {
	tool    *shop.Tool
	outline stock.Outline
	far     bool
}

// run cuts one program. It returns false when the judgement stops in it.
func (b *bench) run(text *finding.Text, setup int, p program) bool {
	n := len(b.runs)
	b.runs = append(b.runs, Run{text, setup, p.trace})
	k := &cutter{bench: b, run: n, setup: setup, file: p.file, trace: p.trace, edges: map[*shop.Tool]*edgeOf{}, told: map[string]bool{}}
	for i := range p.trace.Motions {
		m := &p.trace.Motions[i]
		b.at = m.Span
		if !k.motion(i, m) {
			return false
		}
		if b.first && b.judging > 0 {
			return false
		}
	}
	if p.trace.Stopped {
		b.stop(p.trace.StoppedAt)
	} else if !p.trace.Ended && !p.file.Closed {
		// the text may be cut short: what is missing might have cut the rest
		at := finding.Span{Text: text}
		if l := len(p.trace.Blocks); l > 0 {
			at = p.trace.Blocks[l-1].Span
		}
		b.stop(at)
		b.notJudged = append(b.notJudged, "what the end of "+text.Name+" might have cut")
	}
	return !b.stopped
}

func (b *bench) stop(at finding.Span) { b.stopped, b.stopAt = true, at }

// error adds a judging error.
func (b *bench) error(at finding.Span, code, help, format string, args ...any) {
	b.judging++
	b.into.Error(at, code, help, format, args...)
}

// cutter is the state of one program being cut.
type cutter struct {
	*bench
	run, setup int
	file       *rs274.File
	trace      *motion.Trace
	edges      map[*shop.Tool]*edgeOf
	told       map[string]bool // said already: one finding per cause
	bare       int             // rapids before any tool was called
}

// once tells whether this is the first time key is said.
func (k *cutter) once(key string) bool {
	if k.told[key] {
		return false
	}
	k.told[key] = true
	return true
}

// edge returns the tool of a motion ready to cut, or nil when there is none.
func (k *cutter) edge(i int, m *motion.Motion) *edgeOf {
	if m.Tool < 0 {
		return nil
	}
	t := k.trace.Tools[m.Tool].Tool
	if t == nil {
		return nil
	}
	if k.tweak.tool != nil {
		t = k.tweak.tool(k.run, i, t)
	}
	if e := k.edges[t]; e != nil {
		return e
	}
	seen := *t
	if k.part.Setups[k.setup].Back {
		seen = mirrored(seen)
	}
	o, not := stock.OutlineOf(&seen)
	for _, what := range not {
		k.notJudged = append(k.notJudged, t.Name+": "+what)
	}
	if t.Tip == (finding.Span{}) {
		k.assumed = append(k.assumed, Assumption{What: t.Name + " programmed point", Value: tipWords(t)})
	}
	e := &edgeOf{tool: t, outline: o}
	k.edges[t] = e
	return e
}

// tipWords says where the programmed point of a tool lies.
func tipWords(t *shop.Tool) string {
	if t.TipX == 0 && t.TipZ == 0 {
		return "nose centre"
	}
	words := []string{}
	switch {
	case t.TipZ < 0:
		words = append(words, "toward the chuck")
	case t.TipZ > 0:
		words = append(words, "away from the chuck")
	}
	switch {
	case t.TipX < 0:
		words = append(words, "toward the axis")
	case t.TipX > 0:
		words = append(words, "away from the axis")
	}
	return "nose tangents " + strings.Join(words, " and ")
}

// motion cuts one motion. False: nothing beyond can be judged.
func (k *cutter) motion(i int, m *motion.Motion) bool {
	if m.Kind == motion.Jump {
		return true // the trace has it under not judged
	}
	e := k.edge(i, m)
	if e == nil {
		return k.toolless(m)
	}
	path := toPart(k.part, k.setup, m.Path)
	if k.tweak.shift != 0 {
		path = path.Shift(geom.Point{Z: k.tweak.shift})
	}
	if m.Kind == motion.Rapid {
		k.rapid(i, m, e, path)
		return true
	}
	k.speedCap(m)
	far := e.far
	res := k.stock.Cut(&e.outline, e.outline.Path(path, &far), k.owner(i))
	e.far = far
	k.visited += res.Visited
	if geom.Count(res.Area, 6) > 0 {
		k.cutting(m, e)
	}
	k.body(m, e, res)
	k.fell(m, res)
	return true
}

// owner names motion i as an owner of surfaces.
func (k *cutter) owner(i int) int {
	k.owners = append(k.owners, Owner{k.run, i})
	return len(k.owners) - 1
}

// toolless deals with a motion whose tool is not known: rapids before the
// first call are only said, anything else ends the judgement.
func (k *cutter) toolless(m *motion.Motion) bool {
	if m.Tool < 0 {
		if m.Kind == motion.Rapid {
			if k.bare++; k.bare == 1 {
				k.notJudged = append(k.notJudged, "rapids before a tool is called ("+m.Span.Place()+")")
			}
			return true
		}
		k.into.Error(m.Span, CodeUnknownTool, "call a tool before the first cut", "no tool has been called when this cut begins")
		k.stop(m.Span)
		return false
	}
	use := k.trace.Tools[m.Tool]
	var have []string
	for i := range k.part.Shop.Tools {
		have = append(have, k.part.Shop.Tools[i].Name)
	}
	help := "give it a [[tool]] in the shop file"
	if len(have) > 0 {
		help += "; it knows " + strings.Join(have, ", ")
	}
	k.into.Error(use.Span, CodeUnknownTool, help, "the shop has no tool at station %d with offset %d: nothing can be judged from here on", use.Station, use.Offset)
	k.stop(use.Span)
	return false
}

// rapid tests a rapid straight and, when both slides move, dog-leg. Only the
// straight path removes metal.
func (k *cutter) rapid(i int, m *motion.Motion, e *edgeOf, path geom.Piece) {
	far := e.far
	centre := e.outline.Path(path, &far)
	res := k.stock.Probe(&e.outline, centre)
	k.visited += res.Visited
	if geom.Count(res.Depth-touch, 7) > 0 {
		k.error(m.Span, CodeRapidIn, "move it clear of the metal, or feed", "the rapid goes %s deep into metal at %s",
			size(res.Depth), k.spot(res.At))
		res = k.stock.Cut(&e.outline, centre, k.owner(i))
		k.fell(m, res)
		k.body(m, e, res)
		e.far = far
		return
	}
	before := e.far
	e.far = far
	if geom.Count(res.Body-touch, 7) > 0 {
		res = k.stock.Cut(&e.outline, centre, k.owner(i))
		k.fell(m, res)
		k.body(m, e, res)
		return
	}
	mach := &k.machine().Machine
	if m.Straight || mach.RapidPath.Given && mach.RapidPath.Value == "straight" {
		return
	}
	if !mach.RapidRate.Given {
		k.assume("slides at rapid", "both equally fast, straight or dog-leg", finding.Span{})
	}
	side := before
	for _, leg := range dogLeg(path, mach) {
		res := k.stock.Probe(&e.outline, e.outline.Path(leg, &side))
		k.visited += res.Visited
		deep := max(res.Depth, res.Body)
		if geom.Count(deep-touch, 7) <= 0 {
			continue
		}
		at := res.At
		if res.Body > res.Depth {
			at = res.BodyAt
		}
		text := "straight, this rapid is clear; with the slides one after the other it goes " + size(deep) + " deep into metal at " + k.spot(at)
		help := "move one slide at a time, or further from the work"
		if mach.RapidPath.Value == "dog-leg" {
			k.error(m.Span, CodeDogLegIn, help, "%s", text)
		} else {
			k.into.Warn(m.Span, CodeDogLegIn, help, "%s", text)
		}
		return
	}
}

// machine returns the shop that the programs are read for.
func (b *bench) machine() *shop.Shop {
	if b.tweak.shop != nil {
		return b.tweak.shop
	}
	return b.part.Shop
}

// spot says where a place is, as the program counts it.
func (k *cutter) spot(p geom.Point) string {
	q := ToProgram(k.part, k.setup, p)
	return "Z" + geom.Fixed(q.Z-k.tweak.shift, 3) + ", diameter " + geom.Fixed(2*q.R, 3) + " mm"
}

// dogLeg returns the legs of a rapid whose slides each run at their own speed
// (equally fast on radius and Z unless the rates are given): together until
// one has arrived, then the other alone.
func dogLeg(path geom.Piece, m *shop.Machine) []geom.Piece {
	vr, vz := 1.0, 1.0
	if m.RapidRate.Given && m.RapidRate.Value[0] > 0 && m.RapidRate.Value[1] > 0 {
		vr, vz = m.RapidRate.Value[0], m.RapidRate.Value[1]
	}
	d := path.To.Sub(path.From)
	tr, tz := math.Abs(d.R)/vr, math.Abs(d.Z)/vz
	if tr == 0 || tz == 0 {
		return nil
	}
	knee := path.From
	if tr < tz {
		knee.R, knee.Z = path.To.R, path.From.Z+float64(d.Z*(tr/tz))
	} else {
		knee.Z, knee.R = path.To.Z, path.From.R+float64(d.R*(tz/tr))
	}
	if knee.Sub(path.To).Len() <= geom.Near {
		return nil // both arrive together: straight
	}
	return []geom.Piece{geom.Line(path.From, knee), geom.Line(knee, path.To)}
}

// body reports holder or shank in metal.
func (k *cutter) body(m *motion.Motion, e *edgeOf, res stock.Removed) {
	if geom.Count(res.Body-touch, 7) <= 0 {
		return
	}
	k.spoiled[len(k.owners)-1] = true
	k.error(m.Span, CodeBodyIn, "what stands above the cutting edge must stay clear of metal",
		"holder or shank of %s go %s deep into metal at %s", e.tool.Name, size(res.Body), k.spot(res.BodyAt))
}

// fell reports metal that was parted off and is more than a chip.
func (k *cutter) fell(m *motion.Motion, res stock.Removed) {
	for _, l := range res.Loose {
		if l.Chip {
			continue
		}
		k.loose = append(k.loose, l)
		a, b := ToProgram(k.part, k.setup, geom.Point{Z: l.High}).Z, ToProgram(k.part, k.setup, geom.Point{Z: l.Low}).Z
		var on []string
		for i := range k.part.Features {
			if f := &k.part.Features[i]; main(f) && !f.Inside && overlaps(f, l) {
				on = append(on, f.Name)
			}
		}
		what := "no feature lies on it"
		if len(on) > 0 {
			what = "on it lie " + strings.Join(on, ", ")
		}
		k.error(m.Span, CodeParted, "what is parted off is no longer held", "this cut parts off the work from Z%s to Z%s: %s",
			geom.Fixed(a, 3), geom.Fixed(b, 3), what)
	}
}

// overlaps tells whether a feature lies on loose metal.
func overlaps(f *profiles.Feature, l stock.Loose) bool {
	lo, hi := f.Piece.Bounds()
	return hi.Z > l.Low+planeNoise && lo.Z < l.High-planeNoise || hi.Z == lo.Z && hi.Z >= l.Low-planeNoise && lo.Z <= l.High+planeNoise
}

// cutting checks the spindle of a motion that removes metal; a missing feed is
// found where motions are read.
func (k *cutter) cutting(m *motion.Motion, e *edgeOf) {
	mach := &k.machine().Machine
	turn := strings.TrimSpace(mach.Words[shop.SpindleForward] + " or " + mach.Words[shop.SpindleReverse])
	switch s := m.Spin; {
	case !s.Turning:
		if k.once(CodeNoSpindle) {
			k.judging++
			k.into.Add(finding.Finding{Code: CodeNoSpindle, Span: m.Span, Message: "this move cuts, and the spindle does not turn",
				Help: "start the spindle with " + turn + " before the first cut", Places: k.places(m, "a speed is chosen here", shop.SurfaceSpeed, shop.SpindleRPM)})
		}
		return
	case !s.SpeedSet || s.Speed <= 0:
		if k.once(CodeNoSpindle) {
			k.error(m.Span, CodeNoSpindle, "give S before the first cut", "this move cuts, and no spindle speed has been given")
		}
		return
	}
	delete(k.told, CodeNoSpindle)
	want := e.tool.Spindle
	if !want.Given {
		want = mach.Spindle
	}
	if !want.Given {
		k.cannot("which way the spindle must turn (spindle in [machine])")
		return
	}
	if word, ok := shop.Word(want.Value); ok && word != m.Spin.Word && k.once(CodeWrongSpin+e.tool.Name+m.Spin.Word) {
		k.judging++
		k.into.Add(finding.Finding{Code: CodeWrongSpin, Span: m.Span, Help: "turn it with " + want.Value,
			Message: e.tool.Name + " cuts while the spindle turns by " + m.Spin.Word + ": the shop says " + want.Value + " turns it the cutting way",
			Places:  k.places(m, "turned on here", shop.SpindleForward, shop.SpindleReverse)})
	}
}

// speedCap warns of surface speed without a cap, at the word that chose it.
func (k *cutter) speedCap(m *motion.Motion) {
	if !m.Spin.Surface || !m.Spin.Turning || m.Spin.Cap > 0 {
		delete(k.told, CodeNoCap)
		return
	}
	if !k.once(CodeNoCap) {
		return
	}
	help := "the smaller the diameter, the faster it turns: give a cap before the first cut"
	if w := k.machine().Machine.Words[shop.SpeedCap]; w != "" {
		help += ", for example " + w + " S2000"
	}
	k.into.Warn(k.lastWord(m, shop.SurfaceSpeed), CodeNoCap, help, "surface speed without a speed cap")
}

// places speaks of the word that last had one of the purposes before m.
func (k *cutter) places(m *motion.Motion, message string, purposes ...shop.Purpose) []finding.Place {
	if at := k.lastWord(m, purposes...); at != m.Span {
		return []finding.Place{{Span: at, Message: message}}
	}
	return nil
}

// lastWord returns the word that last had one of the purposes before m, or
// the words of m when none had.
func (k *cutter) lastWord(m *motion.Motion, purposes ...shop.Purpose) finding.Span {
	mach := &k.machine().Machine
	at, end := m.Span, k.trace.Blocks[m.Block].Span.End
	for i := range k.file.Blocks {
		b := &k.file.Blocks[i]
		if b.Span.Start >= end {
			break
		}
		for _, w := range b.Words {
			if w.Letter != 'G' && w.Letter != 'M' || w.Value != nil {
				continue
			}
			if p, ok := mach.Meaning(strings.ToUpper(strings.ReplaceAll(w.Span.String(), " ", ""))); ok && slices.Contains(purposes, p) {
				at = w.Span
			}
		}
	}
	return at
}

// cannot adds to what is not judged, once.
func (b *bench) cannot(what string) {
	if !slices.Contains(b.notJudged, what) {
		b.notJudged = append(b.notJudged, what)
	}
}

func (b *bench) assume(what, value string, from finding.Span) {
	a := Assumption{what, value, from}
	if !slices.Contains(b.assumed, a) {
		b.assumed = append(b.assumed, a)
	}
}
