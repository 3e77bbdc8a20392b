// Package post writes a plan as the text of a part program: plain RS-274
// words, longhand, no cycles, so that it reads the same on every lathe and can
// be checked line by line.
//
// What each word is called comes from the machine's table of words; nothing
// here knows a lathe by name. Numbers are rounded once, at the word, and
// everything said of a program (arcs, cones, limits) is said of the rounded
// figures. Text from a user enters a program through plain alone.
package post

import (
	"strconv"

	"taperwright/profiles"
	"taperwright/profiles/finding"
	"taperwright/profiles/geom"
	"taperwright/profiles/shop"
	"taperwright/toolpath"
)

// Program is one set-up's program and what was noticed while writing it.
type Program struct {
	Bytes []byte // every line ends in a line feed
	Lines []Line // one for each line of Bytes
	Cones []Cone // what rounding did to each, in the order of Part.Features

	Blocks       int // blocks with words
	Arcs         int // arcs written as arcs
	ArcsAsLines  int // arcs whose sagitta is below half a unit
	ArcsDropped  int // arcs whose rounded ends are equal
	LinesDropped int // lines whose rounded ends are equal
}

// Line says what one line of a program is for.
type Line struct {
	Block   string // "N310"; "" for a line without a number
	Feature int    // index into Part.Features; -1: none
	Name    string // of the feature or the pass, as in the comment above it; "" in the header
}

// Write posts a plan for the machine of the part's shop. It returns nil, with
// errors in into, when the machine has no word for what the plan needs, or an
// arc does not survive rounding within the machine's arc tolerance.
func Write(plan *toolpath.Plan, part *profiles.Part, into *finding.List) *Program {
	w := &writer{plan: plan, part: part, m: &part.Shop.Machine, into: into, program: &Program{}, refused: map[shop.Purpose]bool{}}
	w.format = formatOf(w.m)
	for i := range plan.Operations {
		w.operation(&plan.Operations[i])
	}
	w.name = "end"
	w.block(w.word(shop.ProgramEnd))
	w.program.Cones = w.cones()
	if w.failed {
		return nil
	}
	w.program.assemble(w.m.Comments.Value, w.header(), numbered(w.blocks, w.m.BlockNumbers.Value))
	return w.program
}

// writer is the state of one Write.
type writer struct {
	plan    *toolpath.Plan
	part    *profiles.Part
	m       *shop.Machine
	into    *finding.List
	program *Program
	format  format
	refused map[shop.Purpose]bool // purposes without a word, said once
	failed  bool

	blocks  []block
	feature int    // of the blocks to come
	name    string // of their pass or feature
	here    spot   // programmed point as the words say it
	motion  string // motion word in force; "": to be restated
	feed    string // F in force; "": to be restated
	perMin  float64
	cut     []cut
	mostX   int64 // greatest X and least Z of the feed moves, in counts
	leastZ  int64
	moved   bool
}

// block is one line of the body: words, or a comment when there are none.
type block struct {
	number  string
	words   []string
	comment string
	feature int
	name    string
}

// block adds a block of the words that are not empty.
func (w *writer) block(words ...string) {
	b := block{feature: w.feature, name: w.name}
	for _, s := range words {
		if s != "" {
			b.words = append(b.words, s)
		}
	}
	if len(b.words) > 0 {
		w.program.Blocks++
		w.blocks = append(w.blocks, b)
	}
}

// say adds a comment above the blocks of something and names them after it.
func (w *writer) say(feature int, text string) {
	if name := plain(text); name == w.name {
		w.feature = feature // a pass named for the one feature it cuts
		return
	}
	w.feature, w.name = feature, plain(text)
	for _, line := range wrapped(text) {
		w.blocks = append(w.blocks, block{comment: line, feature: feature, name: w.name})
	}
}

func (w *writer) fail(at finding.Span, code, help, form string, args ...any) {
	w.failed = true
	if !at.Valid() {
		at.Text = w.part.Text
	}
	w.into.Error(at, code, help, form, args...)
}

// word returns the lathe's word for a purpose that the program cannot do
// without.
func (w *writer) word(p shop.Purpose) string {
	s := w.m.Words[p]
	if s == "" && !w.refused[p] {
		w.refused[p] = true
		w.fail(w.m.Span, NoWord, needs[p], "the lathe has no word for %s: word = { %s = ... }", purposes[p], p)
	}
	return s
}

// largestNumber is the greatest N of NISTIR 6556 (3.3.2).
const largestNumber = 99999

// numbered gives every block with words its N, step apart; closer where the
// numbers would not do.
func numbered(blocks []block, step int) []block {
	n := 0
	for _, b := range blocks {
		if len(b.words) > 0 {
			n++
		}
	}
	if n > 0 {
		step = min(step, largestNumber/n)
	}
	if step <= 0 {
		return blocks
	}
	at := 0
	for i := range blocks {
		if len(blocks[i].words) > 0 {
			at += step
			blocks[i].number = "N" + strconv.Itoa(at)
		}
	}
	return blocks
}

// place returns the point that a spot's words mean, mm, radius.
func (w *writer) place(s spot) geom.Point { return w.format.point(s) }
