package motion

import (
	"fmt"

	"taperwright/profiles/finding"
	"taperwright/profiles/geom"
	"taperwright/profiles/shop"
	"taperwright/verify/rs274"
)

// Interpret reads the blocks of f as the control of s would, up to the
// program's end or to the first block that could mean something not read here:
// Stopped then tells that nothing beyond can be judged. Comments, N and O
// numbers are never facts. Neither f nor s is changed.
func Interpret(f *rs274.File, s *shop.Shop, into *finding.List) (t *Trace) {
	r := &reader{file: f, s: s, m: &s.Machine, into: into, t: &Trace{}, said: map[string]bool{}, text: string(f.Text.Bytes)}
	r.begin()
	t = r.t
	defer func() {
		if fault := recover(); fault != nil {
			if r.b.in == nil {
				r.b.in = &rs274.Block{Span: f.Text.Span(0, 0)}
			}
			r.stop(r.b.in.Span, Internal, "this is a fault of ours, not of the program", "this block could not be read: %v", fault)
			r.finish()
		}
	}()
	r.run()
	r.finish()
	return t
}

// reader is the control's memory.
type reader struct {
	file *rs274.File
	s    *shop.Shop
	m    *shop.Machine
	into *finding.List
	t    *Trace
	text string

	b     block
	begun bool // a word other than N and O has been read
	cache [2][1000]meaning
	said  map[string]bool // assumptions and refusals made already
	lost  []lost

	mode        shop.Purpose // motion mode, "" before a program says
	inch        bool
	unitSet     bool // by a word
	xDiameter   bool
	xSet        bool
	incremental bool
	distanceSet bool

	feed     float64 // mm/rev or mm/min; 0: not given since the mode was set
	perMin   bool
	feedSet  bool         // the mode, by a word
	feedMode finding.Span // that word
	feedTold bool         // that feed is missing
	spin     Spin
	speedSet bool // the mode, by a word

	tool      int // index into Trace.Tools
	staged    *Use
	newTool   bool // called since the last motion
	wear      geom.Point
	offsetOff bool

	comp     Comp
	compWord finding.Span

	// tip is where the programmed point stands in the frame of the first work
	// offset; what the program says is tip - shift - wear.
	tip       geom.Point
	known     axes
	shift     geom.Point
	frame     string // the work offset in force, "" before one is called
	preset    bool   // the frame was set by a preset
	placed    bool   // places in the frame of the first work offset have been used
	firstMove finding.Span
}

// axes holds one fact for each axis.
type axes struct{ z, r bool }

func (a axes) both() bool { return a.z && a.r }

// block is one block taken apart.
type block struct {
	index  int // in Trace.Blocks
	in     *rs274.Block
	words  []rs274.Word
	by     [groups]*rs274.Word
	what   [groups]shop.Purpose
	letter [26]*rs274.Word
}

func (b *block) get(letter byte) *rs274.Word { return b.letter[letter-'A'] }

func (b *block) any(letters string) *rs274.Word {
	for i := range len(letters) {
		if w := b.get(letters[i]); w != nil {
			return w
		}
	}
	return nil
}

// span covers the words of the block that are among the letters, and the
// words of the given groups.
func (b *block) span(letters string, of ...group) finding.Span {
	var s finding.Span
	take := func(w *rs274.Word) {
		switch {
		case w == nil:
		case !s.Valid():
			s = w.Span
		default:
			s.Start, s.End = min(s.Start, w.Span.Start), max(s.End, w.Span.End)
		}
	}
	for i := range len(letters) {
		take(b.get(letters[i]))
	}
	for _, g := range of {
		take(b.by[g])
	}
	if !s.Valid() {
		return b.in.Span
	}
	return s
}

// begin sets what a lathe is taken to be in before a program says anything.
func (r *reader) begin() {
	r.tool = -1
	r.inch = r.m.Unit.Value == shop.Inch
	r.xDiameter = r.m.XIsDiameter.Value
	r.perMin = r.m.Feed.Value == shop.FeedPerMinute
	r.spin.Surface = r.m.Speed.Value == shop.SurfaceSpeed
}

func (r *reader) run() {
	if r.file.Unreadable {
		r.t.Stopped = true
		return
	}
	r.room()
	for i := range r.file.Blocks {
		in := &r.file.Blocks[i]
		if !in.HasWords() {
			continue
		}
		r.enter(in)
		if in.Fault { // rs274 has said what is wrong
			r.t.Stopped, r.t.StoppedAt = true, in.Span
		} else {
			r.block()
		}
		if r.t.Stopped {
			r.scan(i + 1)
			return
		}
		if r.t.Ended {
			r.behind(i + 1)
			return
		}
	}
	r.noEnd()
}

// room makes room for what the program can hold at most: growing a trace of
// 100,000 motions step by step costs more than reading it.
func (r *reader) room() {
	blocks, motions := 0, 0
	for i := range r.file.Blocks {
		b := &r.file.Blocks[i]
		if !b.HasWords() {
			continue
		}
		blocks++
		for k := range b.Words {
			if l := b.Words[k].Letter; l == 'X' || l == 'Z' || l == 'U' || l == 'W' {
				motions++
				break
			}
		}
	}
	r.t.Blocks = make([]Block, 0, blocks)
	r.t.Motions = make([]Motion, 0, motions)
}

// enter makes in the block being read.
func (r *reader) enter(in *rs274.Block) {
	r.b = block{index: len(r.t.Blocks), in: in, words: in.Words}
	label := ""
	for i := range in.Words {
		if w := &in.Words[i]; w.Letter == 'N' {
			label = r.text[w.Span.Start:w.Span.End]
			break
		}
	}
	r.t.Blocks = append(r.t.Blocks, Block{Span: in.Span, Label: label})
	if in.Slash.Set {
		skip := r.m.Slash.Value == "skip"
		r.assume("block delete", map[bool]string{true: "blocks with / are skipped", false: "blocks with / are run"}[skip], r.m.Slash.From)
		if skip {
			r.b.words = in.Words[:in.Slash.From]
		}
	}
}

// block reads the block that was entered.
func (r *reader) block() {
	if r.sort() && r.claims() && r.modes() && r.values() && r.frames() && r.act() {
		r.after()
	}
	for i := range r.b.words {
		if l := r.b.words[i].Letter; l != 'N' && l != 'O' && l != ':' {
			r.begun = true
		}
	}
}

// noEnd says that the text ends before the program does.
func (r *reader) noEnd() {
	at := r.b.in.Span
	end := r.m.Words[shop.ProgramEnd]
	help := "end the program with " + end
	if r.file.Closed { // NISTIR 6556: a file between two % needs no end word
		r.into.Warn(at, NoEndWord, help, "the program has no end word before its closing %%")
		return
	}
	r.into.Error(at, NoEndWord, help, "the text stops without an end word: it may be cut short")
}

// behind notes words that come after the end, subprograms aside.
func (r *reader) behind(from int) {
	for i := from; i < len(r.file.Blocks); i++ {
		b := &r.file.Blocks[i]
		if !b.HasWords() {
			continue
		}
		if len(b.Words) > 0 && (b.Words[0].Letter == 'O' || b.Words[0].Letter == ':') {
			return
		}
		r.into.Add(finding.Finding{Code: NeverReached, Severity: finding.Note, Span: b.Span,
			Message: "this block and those behind it are never reached",
			Places:  []finding.Place{{Span: r.b.in.Span, Message: "the program ends here"}}})
		return
	}
}

// finish writes down what a reader of the trace wants to know besides motions.
func (r *reader) finish() {
	r.t.Unit = shop.MM
	if r.inch {
		r.t.Unit = shop.Inch
	}
	r.t.XDiameter = r.xDiameter
	for _, l := range r.lost {
		line := l.first.From().Line
		if l.n == 1 {
			r.t.NotJudged = append(r.t.NotJudged, fmt.Sprintf("%s (line %d)", l.what, line))
		} else {
			r.t.NotJudged = append(r.t.NotJudged, fmt.Sprintf("%s (%d times, first in line %d)", l.what, l.n, line))
		}
	}
	switch {
	case r.t.Stopped && r.t.StoppedAt.Valid():
		r.t.NotJudged = append(r.t.NotJudged, fmt.Sprintf("everything from line %d on", r.t.StoppedAt.From().Line))
	case r.t.Stopped:
		r.t.NotJudged = append(r.t.NotJudged, "the whole program")
	}
}

// lost is something that cannot be judged, and how often it came.
type lost struct {
	what  string
	n     int
	first finding.Span
}

func (r *reader) lose(what string) {
	for i := range r.lost {
		if r.lost[i].what == what {
			r.lost[i].n++
			return
		}
	}
	r.lost = append(r.lost, lost{what, 1, r.b.in.Span})
}

// assume writes down, once, what the program never said.
func (r *reader) assume(what, value string, from finding.Span) {
	if r.said[what] {
		return
	}
	r.said[what] = true
	r.t.Assumed = append(r.t.Assumed, Assumption{what, value, from})
}
