package verify

import (
	"taperwright/profiles"
	"taperwright/profiles/finding"
	"taperwright/profiles/geom"
	"taperwright/profiles/shop"
	"taperwright/verify/motion"
	"taperwright/verify/stock"
)

// State is a verdict: of a whole check (good, wrong, cannot-judge) or of one
// feature (in, out, cannot-judge, later).
type State string

const (
	Good        State = "good"
	Wrong       State = "wrong"
	CannotJudge State = "cannot-judge"
	In          State = "in"
	Out         State = "out"
	Later       State = "later"
)

// Figure is one figure of a row, already rounded to its printed decimals.
// Known is false for what cannot be known: JSON null.
type Figure struct {
	Key      string
	Value    float64
	Known    bool
	Decimals int
}

// Figures are the figures of one column, in the order they are printed.
type Figures []Figure

// Get returns the figure named key; false when absent or unknown.
func (f Figures) Get(key string) (float64, bool) {
	for _, x := range f {
		if x.Key == key {
			return x.Value, x.Known
		}
	}
	return 0, false
}

// Limit is what a figure may be, rounded as the figure is.
type Limit struct {
	Key       string
	Low, High float64
	Decimals  int
}

// Place is a line of a program.
type Place struct {
	Text *finding.Text
	Line int
}

// Row is one feature judged.
type Row struct {
	Name    string
	Kind    profiles.Kind
	Inside  bool
	Setup   string
	Feature int // index into Part.Features
	Verdict State
	Wanted  Figures
	Limits  []Limit
	Cut     Figures
	Off     Figures
	Blocks  []Place
}

// Slip is a usual mistake that explains all that is out.
type Slip struct {
	Code     string
	Explains string
	Residual float64 // mm: the largest figure that stays off
	Cure     string
}

// Totals are of the programmed point over feed moves; times without rapids.
type Totals struct {
	Blocks, Motions int
	CutLength       float64 // mm
	Time            Figure  // s
	PeakRPM         Figure  // rev/min
	LargestDiameter Figure  // mm
	LeastZ          Figure  // mm, program frame
	PeakAt          finding.Span
}

// Assumption is something taken that nobody said.
type Assumption struct {
	What, Value string
	From        finding.Span // zero: a default
}

// Run is one program as it was read and cut.
type Run struct {
	Program *finding.Text
	Setup   int // index into Part.Setups
	Trace   *motion.Trace
}

// Owner says which motion made a piece of the part: owners of the stock's
// surfaces are indexes into Verdict.Owners; -1 is raw stock.
type Owner struct {
	Run    int // index into Verdict.Runs
	Motion int // index into its Trace.Motions
}

// Verdict is the whole judgement.
type Verdict struct {
	State     State
	Part      *profiles.Part
	PartName  string
	Programs  []string
	Assumed   []Assumption
	NotJudged []string
	Rows      []Row
	Slips     []Slip
	Findings  []finding.Finding
	Totals    Totals

	Runs   []Run
	Owners []Owner
	Stock  *stock.Stock // what is left, part frame; nil when nothing was cut
}

// ToProgram returns p, a place of the part, as the program of set-up n sees it.
func ToProgram(part *profiles.Part, n int, p geom.Point) geom.Point {
	s := part.Setups[n]
	if s.Back {
		return geom.Point{Z: s.Zero - part.Length - p.Z, R: p.R}
	}
	return geom.Point{Z: s.Zero + p.Z, R: p.R}
}

// toPart returns a motion's path as the part sees it.
func toPart(part *profiles.Part, n int, p geom.Piece) geom.Piece {
	s := part.Setups[n]
	if s.Back {
		return p.MirrorZ().Shift(geom.Point{Z: s.Zero - part.Length})
	}
	return p.Shift(geom.Point{Z: -s.Zero})
}

// mirrored returns t as it is seen from the other end of the part.
func mirrored(t shop.Tool) shop.Tool {
	t.Right, t.TipZ = !t.Right, -t.TipZ
	return t
}
