package post

import (
	"strconv"
	"strings"

	"taperwright/profiles/finding"
	"taperwright/profiles/geom"
	"taperwright/profiles/shop"
	"taperwright/toolpath"
)

// purposes names what a word is for in messages; needs says what to do when
// a lathe has none.
var purposes = map[shop.Purpose]string{
	shop.Rapid: "a rapid", shop.Feed: "a straight feed move", shop.ArcCW: "a clockwise arc", shop.ArcCCW: "a counterclockwise arc",
	shop.UnitMM: "mm", shop.UnitInch: "inch", shop.ProgramEnd: "the end of a program", shop.SpindleStop: "stopping the spindle",
	shop.ToolChange: "a tool change", shop.SurfaceSpeed: "surface speed", shop.SpeedCap: "capping the speed", shop.FeedPerRev: "feed per revolution",
}

var needs = map[shop.Purpose]string{
	shop.SurfaceSpeed: "give the tool rpm instead of surface_speed, or say the word",
	shop.SpeedCap:     "give the tool rpm instead of surface_speed, or say the word: toward the axis an uncapped spindle runs away",
	shop.FeedPerRev:   "give the tool rpm instead of surface_speed, so that feed can be told per minute, or say the word",
}

// operation writes one tool's work so that it can be entered from its top:
// every mode is said again, nothing from above is needed.
func (w *writer) operation(op *toolpath.Operation) {
	t := op.Tool
	w.say(-1, "tool "+strconv.Itoa(t.Station)+", "+op.Purpose+": "+w.speedText(op))
	w.safeStart()
	w.changePoint(op.Inside)
	w.block(w.call(t)...)
	w.spindle(op)
	for i := range op.Passes {
		w.pass(op, &op.Passes[i])
	}
	w.say(-1, "tool "+strconv.Itoa(t.Station)+" done")
	w.block(w.word(shop.SpindleStop))
	if op != &w.plan.Operations[len(w.plan.Operations)-1] {
		w.block(w.m.Words[shop.OptionalStop]) // to measure, or to look at the edge
	}
}

func (w *writer) speedText(op *toolpath.Operation) string {
	if op.Surface {
		return w.surface(op.Speed) + " " + w.surfaceUnit() + ", at most " + below(op.Cap) + " rev/min"
	}
	return whole(op.Speed) + " rev/min"
}

// safeStart writes the modes that a program may have left otherwise: units,
// plane, X mode, compensation and cycles off, absolute, each where this lathe
// has a word for it, then the words that the shop file adds.
func (w *writer) safeStart() {
	unit, x, feed := shop.UnitMM, shop.RadiusX, w.feedMode()
	if w.format.unit == shop.Inch {
		unit = shop.UnitInch
	}
	if w.format.diameter {
		x = shop.DiameterX
	}
	words := []string{w.word(unit)}
	for _, p := range []shop.Purpose{shop.PlaneZX, shop.Absolute, x, shop.NoseOff, shop.CycleCancel, feed} {
		words = append(words, w.m.Words[p])
	}
	w.block(words...)
	var more []string
	for _, s := range strings.Fields(w.m.SafeStart.Value) {
		if s, ok := shop.Word(s); ok { // never anything but a letter and a number
			more = append(more, s)
		}
	}
	w.block(more...)
}

// feedMode is per revolution wherever the lathe can.
func (w *writer) feedMode() shop.Purpose {
	if w.m.Words[shop.FeedPerRev] == "" && w.m.Feed.Value == shop.FeedPerMinute {
		return shop.FeedPerMinute
	}
	return shop.FeedPerRev
}

// changePoint goes to the change point one slide at a time, out of the work
// first: X for an outside tool, Z for an inside one. Where the slides stand
// when someone enters the program here is not known.
func (w *writer) changePoint(inside bool) {
	if !w.m.Change.Given && !w.refused[shop.Home] {
		w.refused[shop.Home] = true
		w.fail(w.m.Span, toolpath.CodeNoChangePoint, "give change = { diameter = ..., z = ... } clear of the stock", "[machine] has no change point")
	}
	c := w.m.Change.Value
	w.here = w.format.spot(geom.Point{Z: c.Z, R: c.R})
	first, then := w.format.x(w.here), w.format.z(w.here)
	if inside {
		first, then = then, first
	}
	w.motion, w.feed = w.word(shop.Rapid), ""
	w.block(w.motion, first)
	w.block(w.motion, then)
}

// call returns the words that bring a tool with its offset.
func (w *writer) call(t *shop.Tool) []string {
	n := w.m.OffsetDigits.Value
	if n == 0 { // T is the station alone; the tool change word acts
		return []string{"T" + strconv.Itoa(t.Station), w.word(shop.ToolChange)}
	}
	pad := func(x int) string {
		s := strconv.Itoa(x)
		return strings.Repeat("0", max(0, n-len(s))) + s
	}
	if len(pad(t.Offset)) > n {
		w.fail(t.Span, NoWord, "give an offset of "+strconv.Itoa(n)+" digits, or offset_digits", "offset %d does not fit into the T word of this lathe", t.Offset)
	}
	return []string{"T" + pad(t.Station) + pad(t.Offset)}
}

// spindle writes cap, then speed and direction: never surface speed before
// what bounds it.
func (w *writer) spindle(op *toolpath.Operation) {
	turn, from := w.m.Spindle.Value, w.m.Spindle.From
	if op.Tool.Spindle.Value != "" {
		turn, from = op.Tool.Spindle.Value, op.Tool.Spindle.From
	}
	if turn, ok := shop.Word(turn); !ok {
		if !w.refused[shop.SpindleForward] {
			w.refused[shop.SpindleForward] = true
			at := w.m.Span
			if from.Valid() {
				at = from
			}
			w.fail(at, NoSpindle, "give [machine] spindle: the word that turns it the cutting way for an outside tool",
				"which way the spindle must turn is not known")
		}
	} else if op.Surface {
		if !(op.Cap > 0) {
			w.fail(op.Tool.Span, toolpath.CodeNoTopSpeed, "give [machine] top_speed", "%s cuts at a surface speed that nothing caps", op.Tool.Name)
		}
		w.block(w.word(shop.SpeedCap), "S"+below(op.Cap))
		w.block(w.word(shop.SurfaceSpeed), "S"+w.surface(op.Speed), turn)
	} else {
		w.block(w.m.Words[shop.SpindleRPM], "S"+whole(op.Speed), turn)
	}
	w.perMin = 0
	if w.feedMode() == shop.FeedPerMinute {
		if w.perMin = op.Speed; op.Surface {
			w.word(shop.FeedPerRev) // refused: at a surface speed no feed per minute keeps the chip
		}
	}
}

// surface returns a surface speed in the lathe's unit.
func (w *writer) surface(metres float64) string {
	if w.format.unit == shop.Inch {
		return whole(metres / 0.3048)
	}
	return whole(metres)
}

func (w *writer) surfaceUnit() string {
	if w.format.unit == shop.Inch {
		return "ft/min"
	}
	return "m/min"
}

// pass writes the moves of a pass, named for what they cut.
func (w *writer) pass(op *toolpath.Operation, p *toolpath.Pass) {
	w.name = ""
	w.say(-1, ours.Replace(p.Name))
	w.motion, w.feed = "", ""
	for i := range p.Moves {
		m := &p.Moves[i]
		if m.Feature != w.feature {
			if m.Feature >= 0 {
				w.say(m.Feature, plain(w.part.Features[m.Feature].Name))
			} else {
				w.say(-1, "clear")
			}
		}
		w.move(op, m)
	}
}

// move writes one move, from where the words stand.
func (w *writer) move(op *toolpath.Operation, m *toolpath.Move) {
	if from := w.format.spot(m.Path.From); abs(from.x-w.here.x) > 1 || abs(from.z-w.here.z) > 1 {
		w.fail(finding.Span{}, PlanGap, "please report this part file", "internal: in %q a move begins at X%s Z%s, the tool stands at X%s Z%s",
			w.name, w.format.number(from.x), w.format.number(from.z), w.format.number(w.here.x), w.format.number(w.here.z))
		return
	}
	switch {
	case m.Rapid:
		w.line(shop.Rapid, w.format.spot(m.Path.To), "")
	case m.Path.IsLine():
		start := w.here
		if w.line(shop.Feed, w.format.spot(m.Path.To), w.feedText(m.Feed)) {
			w.cut = append(w.cut, cut{op: op, feature: m.Feature, exact: m.Path, rounded: geom.Line(w.place(start), w.place(w.here))})
		}
	default:
		w.arc(m)
	}
}

func (w *writer) feedText(perRev float64) string {
	if w.perMin > 0 {
		return w.format.feedWord(perRev*w.perMin, true)
	}
	return w.format.feedWord(perRev, false)
}

// line writes a straight move; false when its rounded ends are equal.
func (w *writer) line(kind shop.Purpose, to spot, feed string) bool {
	if to == w.here {
		w.program.LinesDropped++
		return false
	}
	w.moveTo(w.word(kind), to, feed)
	return true
}

// moveTo writes a move to a spot: the motion word and F where they change, X and
// Z always, so that each block can be held against the drawing by itself.
func (w *writer) moveTo(motion string, to spot, feed string, more ...string) {
	words := []string{"", w.format.x(to), w.format.z(to)}
	if motion != w.motion {
		words[0] = motion
	}
	words = append(words, more...)
	if feed != "" {
		if feed != w.feed {
			words = append(words, feed)
		}
		w.feed = feed
		w.extent(w.here)
		w.extent(to)
	}
	w.motion, w.here = motion, to
	w.block(words...)
}

// extent keeps the greatest X and the least Z that are cut at.
func (w *writer) extent(s spot) {
	if !w.moved {
		w.mostX, w.leastZ, w.moved = s.x, s.z, true
	}
	w.mostX, w.leastZ = max(w.mostX, s.x), min(w.leastZ, s.z)
}

func abs(n int64) int64 { return max(n, -n) }
