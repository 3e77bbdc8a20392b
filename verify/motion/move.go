package motion

import (
	"fmt"

	"taperwright/profiles/finding"
	"taperwright/profiles/geom"
	"taperwright/profiles/shop"
)

// What cannot be judged, as reports say it.
const (
	lostStart  = "rapids from a place that is not known"
	lostHome   = "the way to the reference place, which is not given"
	lostFrame  = "moves in the machine's own frame"
	lostOffset = "moves with the tool offset cancelled"
)

// farthest is the largest coordinate read, mm: the longest lathes turn some
// 20 m. wellFar is where a missing decimal point or a wrong unit is likelier.
const (
	farthest = 100_000
	wellFar  = 10_000
)

// frames turns compensation on and off and chooses the work offset.
func (r *reader) frames() bool {
	b := &r.b
	if w := b.by[noseGroup]; w != nil {
		r.compWord = w.Span
		switch b.what[noseGroup] {
		case shop.NoseOff:
			r.comp = 0
		case shop.NoseLeft:
			r.comp = -1
		case shop.NoseRight:
			r.comp = +1
		}
	}
	w := b.by[frameGroup]
	if w == nil {
		return true
	}
	word, _ := shop.Word(w.String())
	place, given := r.m.Frames[word]
	switch {
	case word == r.frame:
		return true
	case r.preset:
		return r.stop(w.Span, FrameUnknown, "use either work offsets or a preset", "%s after a frame preset: where that frame lies is not known", w)
	case r.frame == "" && r.placed && word != r.m.Words[shop.WorkFrame] && !given:
		return r.stopAt(finding.Finding{Code: FrameUnknown, Span: w.Span, Help: "call the work offset before the first motion",
			Message: fmt.Sprintf("%s is called after motions in a frame that was not named", w),
			Places:  []finding.Place{{Span: r.firstMove, Message: "the first motion"}}})
	case r.frame == "" && !given:
		if r.placed {
			r.assume("work frame before it is named", word, finding.Span{})
		}
		r.frame = word
		return true
	case !given:
		return r.stop(w.Span, FrameUnknown, fmt.Sprintf("say where its zero lies: [machine.frames] %s = { diameter = ..., z = ... }", word),
			"%s is not the first work offset called, %s, and where it lies is not known", w, r.frame)
	}
	r.frame = word
	r.shift = geom.Point{Z: place.Z, R: place.R}
	return true
}

// act does the one-shot word of the block, or else its motion.
func (r *reader) act() bool {
	b := &r.b
	r.mode = r.modeOf(b)
	axis := b.any("XZUW")
	switch b.what[oneShot] {
	case shop.Dwell:
		return r.dwell()
	case shop.Home:
		return r.home()
	case shop.SpeedCap, shop.FramePreset:
		return axis == nil || r.setFrame()
	case shop.MachineFrame:
		if axis == nil {
			return true
		}
		if !r.compensated() {
			return false
		}
		r.lose(lostFrame)
		r.jump(r.tip, axes{z: r.known.z && b.get('Z') == nil, r: r.known.r && b.get('X') == nil}, "XZ")
		return true
	}
	arc := r.mode == shop.ArcCW || r.mode == shop.ArcCCW
	if axis == nil {
		if w := b.any("IKR"); w != nil && arc {
			return r.stop(w.Span, ArcNoLength, "give the end of the arc", "an arc without an end: a full circle, or nothing")
		}
		return true
	}
	to, known, ok := r.goal()
	if !ok {
		return false
	}
	switch r.mode {
	case shop.Rapid:
		return r.rapid(to, known, "XZUW")
	case shop.Feed:
		return r.cut(to, known, "XZUW")
	case shop.ArcCW, shop.ArcCCW:
		return r.cut(to, known, "XZUWIKR")
	}
	return r.stop(axis.Span, NoMotionWord, fmt.Sprintf("say %s or %s before the first axis word", r.m.Words[shop.Rapid], r.m.Words[shop.Feed]),
		"axis words before any motion word: whether this is a rapid or a cut is not said")
}

// goal reads the axis words of the block: where they lead, and what of it is
// known. An axis without a word stays where it is.
func (r *reader) goal() (to geom.Point, known axes, ok bool) {
	b := &r.b
	to, known = r.tip, r.known
	r.named()
	if !r.incremental && b.any("XZ") != nil {
		r.placed = true
	}
	if x, u := b.get('X'), b.get('U'); x != nil && u != nil {
		return to, known, r.twice(LetterTwice, x, u, "X and U both move X")
	}
	if z, w := b.get('Z'), b.get('W'); z != nil && w != nil {
		return to, known, r.twice(LetterTwice, z, w, "Z and W both move Z")
	}
	if w := b.any("XU"); w != nil {
		x := r.length(w.Number)
		if r.incremental || w.Letter == 'U' {
			to.R += r.half(x, r.m.IncrementX.Value != "radius")
			if r.xDiameter && !w.Number.Zero() {
				r.assume("X increments", map[bool]string{true: "on radius", false: "on diameter"}[r.m.IncrementX.Value == "radius"], r.m.IncrementX.From)
			}
		} else {
			to.R, known.r = r.half(x, true)+r.shift.R+r.wear.R, true
		}
		if !r.xSet && !w.Number.Zero() {
			r.assume("X words", map[bool]string{true: "diameters", false: "radii"}[r.xDiameter], r.m.XIsDiameter.From)
		}
	}
	if w := b.any("ZW"); w != nil {
		z := r.length(w.Number)
		if r.incremental || w.Letter == 'W' {
			to.Z += z
		} else {
			to.Z, known.z = z+r.shift.Z+r.wear.Z, true
		}
	}
	far := max(to.Z, -to.Z, to.R, -to.R)
	if far > farthest {
		return to, known, r.stop(b.span("XZUW"), BadValue, "is a decimal point missing, or the unit another?", "a place more than 100 m away")
	}
	if far > wellFar && !r.said[AbsurdLength] {
		r.said[AbsurdLength] = true
		r.into.Warn(b.span("XZUW"), AbsurdLength, "if numbers without a decimal point count 0.001 mm here, say missing_point = \"increment\"; else look at the unit",
			"a place more than 10 m away: no lathe is that long")
	}
	return to, known, true
}

// named says what is assumed of the frame and the distance mode when axis
// words are used.
func (r *reader) named() {
	if !r.distanceSet && r.m.Words[shop.Incremental] != "" && r.b.any("XZ") != nil {
		r.assume("distance mode", "absolute", finding.Span{})
	}
	if r.frame == "" && !r.preset && !r.said["work frame before it is named"] {
		r.assume("work frame", "the one in force when the program starts", finding.Span{})
	}
}

// half turns a diameter into a radius where X words are diameters.
func (r *reader) half(x float64, diameter bool) float64 {
	if r.xDiameter && diameter {
		return float64(x / 2)
	}
	return x
}

// rapid moves to a place at rapid.
func (r *reader) rapid(to geom.Point, known axes, letters string) bool {
	switch {
	case !r.compensated():
		return false
	case r.offsetOff:
		r.lose(lostOffset)
		r.jump(to, axes{}, letters)
	case !r.known.both() || !known.both():
		r.lose(lostStart)
		r.jump(to, known, letters)
	case to.Sub(r.tip).Len() <= geom.Near:
		r.arrive()
	default:
		one := geom.Count(to.Z, 7) == geom.Count(r.tip.Z, 7) || geom.Count(to.R, 7) == geom.Count(r.tip.R, 7)
		r.emit(Motion{Kind: Rapid, Path: geom.Line(r.tip, to), Straight: one}, letters)
	}
	return true
}

// cut moves to a place at feed, along a line or an arc.
func (r *reader) cut(to geom.Point, known axes, letters string) bool {
	at := r.b.span(letters, motionGroup)
	arc := r.mode == shop.ArcCW || r.mode == shop.ArcCCW
	switch {
	case r.offsetOff:
		return r.stop(at, OffsetOff, "call the tool with its offset, as in T0101", "a cut with the tool offset cancelled: where the tip is cannot be told")
	case !r.known.both() || !known.both():
		return r.stop(at, UnknownStart, "bring the tool to a place in X and Z by "+r.m.Words[shop.Rapid]+" first", "a cut from a place that is not known")
	case r.tool < 0 && r.staged != nil:
		return r.stop(r.staged.Span, ToolWord, fmt.Sprintf("add %s, or write station and offset as in T0101", r.m.Words[shop.ToolChange]),
			"a tool is named and never changed to before the first cut")
	case to.Sub(r.tip).Len() <= geom.Near && !arc:
		r.arrive()
		return true
	case !r.compensated():
		return false
	}
	piece := geom.Line(r.tip, to)
	if arc {
		var ok bool
		if piece, ok = r.arc(to); !ok || piece == (geom.Piece{}) {
			return ok
		}
	}
	r.assumeFeed()
	if r.feed == 0 && !r.feedTold {
		r.feedTold = true
		f := finding.Finding{Code: FeedMissing, Span: at, Message: "a cut without a feed", Help: "give F"}
		if r.feedMode.Valid() {
			f.Places = []finding.Place{{Span: r.feedMode, Message: "what F counts was last set here"}}
		}
		r.into.Add(f)
	}
	r.emit(Motion{Kind: Cut, Path: piece}, letters)
	return true
}

// compensated refuses a motion that the control's nose compensation would
// change: every one while it is on, unless the nose is known to be sharp.
func (r *reader) compensated() bool {
	if r.comp == 0 || r.offsetOff {
		return true
	}
	if r.tool >= 0 {
		if t := r.t.Tools[r.tool].Tool; t != nil && geom.Count(t.Nose, 7) == 0 {
			return true
		}
	}
	return r.stopAt(finding.Finding{Code: ControlCompensation, Span: r.compWord,
		Message: fmt.Sprintf("%s turns on the control's nose compensation, which is not read yet: where the tool goes from here cannot be told", r.compWord),
		Help:    "give the tip path, without compensation",
		Places:  []finding.Place{{Span: r.b.in.Span, Message: "the first motion that it changes"}}})
}

// emit adds a motion and goes to its end.
func (r *reader) emit(m Motion, letters string) {
	m.Block = r.b.index
	m.Span = r.b.span(letters, motionGroup)
	m.Tool, m.Feed, m.PerMin, m.Spin, m.Comp = r.tool, r.feed, r.perMin, r.spin, r.comp
	if !r.firstMove.Valid() {
		r.firstMove = m.Span
	}
	r.placed = r.placed || m.Kind != Jump
	r.t.Motions = append(r.t.Motions, m)
	r.tip = m.Path.To
	r.arrive()
}

func (r *reader) arrive() { r.newTool = false }

// jump adds a motion of which nothing is known but, perhaps, its end.
func (r *reader) jump(to geom.Point, known axes, letters string) {
	r.emit(Motion{Kind: Jump, Path: geom.Line(to, to)}, letters)
	r.known = known
}

// home goes to the reference place: by rapid through the point that the axis
// words give, then on in the axes named.
func (r *reader) home() bool {
	b := &r.b
	x, z := b.any("XU") != nil, b.any("ZW") != nil
	if !x && !z {
		both := r.m.BareHome.Value != "nothing"
		r.assume("reference return without axis words", map[bool]string{true: "both axes go", false: "nothing moves"}[both], r.m.BareHome.From)
		if !both {
			return true
		}
		x, z = true, true
	} else {
		to, known, ok := r.goal()
		if !ok || (to != r.tip || known != r.known) && !r.rapid(to, known, "XZUW") {
			return false
		}
	}
	if !r.compensated() {
		return false
	}
	if r.m.HomeAt.Given && !r.offsetOff {
		to, known, at := r.tip, r.known, r.m.HomeAt.Value
		if x {
			to.R, known.r = at.R, true
		}
		if z {
			to.Z, known.z = at.Z, true
		}
		return r.rapid(to, known, "XZUW")
	}
	r.lose(lostHome)
	r.jump(r.tip, axes{z: r.known.z && !z, r: r.known.r && !x}, "XZUW")
	return true
}

// setFrame reads a preset: from now on the place where the tool stands has
// the coordinates given.
func (r *reader) setFrame() bool {
	b := &r.b
	w := b.by[oneShot]
	if b.any("UW") != nil || r.incremental {
		return r.stop(b.span("XZUW"), FrameUnknown, "preset with X and Z", "%s with increments is not read", w)
	}
	if r.frame != "" && r.frame != r.m.Words[shop.WorkFrame] {
		return r.stop(w.Span, FrameUnknown, "use either work offsets or a preset", "%s after %s: which frame it sets is not known", w, r.frame)
	}
	first := !r.placed
	set := func(value float64, tip, shift *float64, wear float64, known *bool) bool {
		says := *tip - *shift - wear
		switch {
		case *known && geom.Count(says, 7) == geom.Count(value, 7):
			return true
		case first: // the first frame of the program
			*shift, *tip, *known = 0, value+wear, true
			return true
		case !*known:
			return r.stop(b.in.Span, FrameUnknown, "use work offsets, or say where home is", "%s sets the frame from a place that is not known, after motions in another frame", w)
		case r.newTool:
			return r.stop(b.in.Span, FrameUnknown, "use tool offsets", "%s after a tool call may hold the length of the tool: where the frame lies is not known", w)
		}
		*shift = *tip - wear - value
		return true
	}
	if x := b.get('X'); x != nil {
		if !r.xSet && !x.Number.Zero() {
			r.assume("X words", map[bool]string{true: "diameters", false: "radii"}[r.xDiameter], r.m.XIsDiameter.From)
		}
		if !set(r.half(r.length(x.Number), true), &r.tip.R, &r.shift.R, r.wear.R, &r.known.r) {
			return false
		}
	}
	if z := b.get('Z'); z != nil && !set(r.length(z.Number), &r.tip.Z, &r.shift.Z, r.wear.Z, &r.known.z) {
		return false
	}
	r.preset = true
	if n := len(r.t.Motions); n > 0 && r.t.Motions[n-1].Path.To != r.tip { // motions follow one another
		r.jump(r.tip, r.known, "XZ")
	}
	if r.known.both() {
		r.offsetOff = false // the tip's place has been told, offset or not
	}
	return true
}

// dwell reads a wait: P in ms or s as the machine says, in s with a point; X
// and U in s, without a point in ms where numbers count increments.
func (r *reader) dwell() bool {
	b := &r.b
	w := b.any("PXU")
	if w == nil {
		if f := b.get('F'); f != nil {
			return r.stop(f.Span, UnknownWord, "give the wait by P, X or U", "%s with a dwell is not read", f)
		}
		return true
	}
	seconds := w.Number.Float()
	switch {
	case w.Number.Neg && !w.Number.Zero():
		return r.stop(w.Span, BadValue, "", "%s: a wait below 0", w)
	case w.Number.Point:
	case w.Letter == 'P':
		unit := r.m.DwellP.Value
		r.assume("dwell P", map[bool]string{true: "seconds", false: "milliseconds"}[unit == "s"], r.m.DwellP.From)
		if unit != "s" {
			seconds = w.Number.Times(1, 3)
		}
	case r.m.MissingPoint.Value == shop.Increment:
		seconds = w.Number.Times(1, 3)
	}
	r.t.Dwells = append(r.t.Dwells, Dwell{Block: b.index, Seconds: seconds})
	return true
}
