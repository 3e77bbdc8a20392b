package motion

import (
	"fmt"

	"taperwright/profiles/finding"
	"taperwright/profiles/geom"
	"taperwright/profiles/shop"
	"taperwright/verify/rs274"
)

// The order in which a block is worked off is that of NISTIR 6556 table 8, but
// that modes which tell how numbers are read come before the numbers: whoever
// writes G20 F0.01 means inches.

// modes sets units, diameter or radius, absolute or incremental, feed mode and
// speed mode.
func (r *reader) modes() bool {
	b := &r.b
	if w := b.by[unitGroup]; w != nil {
		inch := b.what[unitGroup] == shop.UnitInch
		if inch != r.inch && r.firstMove.Valid() {
			r.into.Add(finding.Finding{Code: UnitChange, Severity: finding.Warning, Span: w.Span, Help: "set the unit once, before the first motion",
				Message: fmt.Sprintf("the unit changes to %s in mid-program", map[bool]shop.Unit{true: shop.Inch, false: shop.MM}[inch]),
				Places:  []finding.Place{{Span: r.firstMove, Message: "the first motion, in the other unit"}}})
		}
		r.inch, r.unitSet = inch, true
	}
	if b.by[xGroup] != nil {
		r.xDiameter, r.xSet = b.what[xGroup] == shop.DiameterX, true
	}
	if b.by[distanceGroup] != nil {
		r.incremental, r.distanceSet = b.what[distanceGroup] == shop.Incremental, true
	}
	if w := b.by[feedGroup]; w != nil {
		perMin := b.what[feedGroup] == shop.FeedPerMinute
		if perMin != r.perMin { // the number given before counts something else
			r.feed, r.feedTold = 0, false
		}
		r.perMin, r.feedSet, r.feedMode = perMin, true, w.Span
	}
	if b.by[speedGroup] != nil {
		surface := b.what[speedGroup] == shop.SurfaceSpeed
		if surface != r.spin.Surface {
			r.spin.Speed, r.spin.SpeedSet = 0, false
		}
		r.spin.Surface, r.speedSet = surface, true
	}
	return true
}

// values takes F, S, T, and starts or stops the spindle.
func (r *reader) values() bool {
	b := &r.b
	if w := b.get('F'); w != nil {
		if w.Number.Neg && !w.Number.Zero() {
			return r.stop(w.Span, BadValue, "give a feed above 0", "%s: a feed below 0", w)
		}
		r.feed, r.feedTold = r.feedOf(w), false
	}
	if w := b.get('S'); w != nil {
		if w.Number.Neg && !w.Number.Zero() {
			return r.stop(w.Span, BadValue, "give a speed above 0", "%s: a speed below 0", w)
		}
		r.speed(w)
	}
	if !r.tools() {
		return false
	}
	switch b.what[spindleGroup] {
	case shop.SpindleForward, shop.SpindleReverse:
		r.spin.Turning = true
		r.spin.Word, _ = shop.Word(b.by[spindleGroup].String())
	case shop.SpindleStop:
		if b.any("XZUW") != nil {
			after := r.m.StopsAfter.Value
			r.assume("spindle stop with a move", map[bool]string{true: "behind the move", false: "before the move"}[after], r.m.StopsAfter.From)
			if after {
				break
			}
		}
		r.spin.Turning, r.spin.Word = false, ""
	}
	return true
}

// feedOf returns the feed of F in mm/rev or mm/min.
func (r *reader) feedOf(w *rs274.Word) float64 {
	r.assumeFeed()
	if r.perMin {
		return r.whole(w.Number) // F80 per minute is 80 of the unit, whatever a missing point means
	}
	return r.length(w.Number)
}

func (r *reader) assumeFeed() {
	if !r.feedSet && r.m.Words[shop.FeedPerRev] != "" {
		r.assume("feed mode", map[bool]string{true: "per minute", false: "per revolution"}[r.perMin], r.m.Feed.From)
	}
}

// speed takes S: the cap with the cap word, else rev/min or surface speed.
func (r *reader) speed(w *rs274.Word) {
	if r.b.what[oneShot] == shop.SpeedCap {
		r.spin.Cap = w.Number.Float()
		return
	}
	if !r.speedSet && r.m.Words[shop.SurfaceSpeed] != "" {
		r.assume("speed mode", map[bool]string{true: "surface speed", false: "rev/min"}[r.spin.Surface], r.m.Speed.From)
	}
	r.spin.Speed = w.Number.Float()
	if r.spin.Surface {
		r.assumeUnit()
		if r.inch { // ft/min
			r.spin.Speed = w.Number.Times(3048, 4)
		}
	}
	r.spin.SpeedSet = !w.Number.Zero()
}

// whole returns a length in mm with every number meant as whole units.
func (r *reader) whole(d rs274.Decimal) float64 {
	if !d.Zero() {
		r.assumeUnit()
	}
	if r.inch {
		return d.Times(254, 1)
	}
	return d.Float()
}

// length returns a length in mm. A number without a point counts units or
// least increments (0.001 mm, 0.0001 in), as the machine says.
func (r *reader) length(d rs274.Decimal) float64 {
	if d.Point || d.Zero() {
		return r.whole(d)
	}
	count := r.m.MissingPoint.Value == shop.Increment
	value := "whole units"
	if count {
		value = "counts of 0.001 mm or 0.0001 in"
	}
	r.assume("numbers without a decimal point", value, r.m.MissingPoint.From)
	if !count {
		return r.whole(d)
	}
	r.assumeUnit()
	if r.inch {
		return d.Times(254, 5)
	}
	return d.Times(1, 3)
}

func (r *reader) assumeUnit() {
	if !r.unitSet {
		r.assume("unit", map[bool]shop.Unit{true: shop.Inch, false: shop.MM}[r.inch].String(), r.m.Unit.From)
	}
}

func (r *reader) unit() shop.Unit {
	if r.inch {
		return shop.Inch
	}
	return shop.MM
}

// tools takes T and the tool change word. T0101 calls station 1 with offset 1;
// T1 alone waits for the tool change word.
func (r *reader) tools() bool {
	b := &r.b
	change := b.by[toolGroup]
	if w := b.get('T'); w != nil {
		use, alone, ok := r.split(w)
		if !ok {
			return false
		}
		if alone && change == nil && use.Station != 0 {
			r.staged = &use
			return true
		}
		r.staged = nil
		return r.call(use, alone)
	}
	if change != nil && r.staged != nil {
		use := *r.staged
		r.staged = nil
		return r.call(use, true)
	}
	return true
}

// split takes a T word apart; alone tells that it names the station only.
func (r *reader) split(w *rs274.Word) (use Use, alone, ok bool) {
	n, whole := w.Number.Int()
	digits := r.m.OffsetDigits.Value
	width := int(w.Number.Whole)
	if !whole || w.Number.Neg || w.Number.Point || width > digits+2 && digits > 0 {
		return use, false, r.stop(w.Span, ToolWord, "write station and offset, as in T0101", "%s cannot be taken apart into station and offset", w)
	}
	if width <= digits || digits == 0 {
		return Use{Station: n, Span: w.Span}, true, true
	}
	r.assume("tool words", fmt.Sprintf("the last %d digits are the offset", digits), r.m.OffsetDigits.From)
	step := 1
	for range digits {
		step *= 10
	}
	return Use{Station: n / step, Offset: n % step, Span: w.Span}, false, true
}

// call puts a tool to work, or takes its offset away.
func (r *reader) call(use Use, alone bool) bool {
	var found []*shop.Tool
	for i := range r.s.Tools {
		if t := &r.s.Tools[i]; t.Station == use.Station && (alone || t.Offset == use.Offset || use.Offset == 0) {
			found = append(found, t)
		}
	}
	if alone && len(found) > 1 {
		return r.stop(use.Span, ToolWord, "name the offset in the T word", "station %d has %d offsets in the shop file: which of them is called is not said", use.Station, len(found))
	}
	r.newTool = true
	r.wear = geom.Point{}
	r.offsetOff = use.Station == 0 || use.Offset == 0 && !alone
	if use.Station == 0 {
		return true // the tool stays, its offset goes
	}
	if len(found) == 1 {
		use.Tool = found[0]
		if alone {
			use.Offset = use.Tool.Offset
		}
	}
	if !r.offsetOff {
		if use.Tool != nil && use.Tool.Wear.Given {
			r.wear = geom.Point{Z: use.Tool.Wear.Value.Z, R: use.Tool.Wear.Value.R}
		} else {
			r.assume("tool offsets", "each puts its tip where the program means it", finding.Span{})
		}
	}
	for i, u := range r.t.Tools {
		if u.Station == use.Station && u.Offset == use.Offset {
			r.tool = i
			return true
		}
	}
	r.t.Tools = append(r.t.Tools, use)
	r.tool = len(r.t.Tools) - 1
	return true
}
