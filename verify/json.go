package verify

import (
	"bytes"
	"encoding/json"
	"io"
	"strconv"

	"taperwright/profiles/finding"
	"taperwright/profiles/geom"
)

// Object is a verdict as JSON: a promise to users' scripts. Keys in the order
// of the fields; what cannot be known is null.
type Object struct {
	Format    int            `json:"format"`
	Part      string         `json:"part"`
	Programs  []string       `json:"programs"`
	Verdict   State          `json:"verdict"`
	Assumed   []assumedItem  `json:"assumed"`
	NotJudged []string       `json:"not_judged"`
	Features  []RowItem      `json:"features"`
	Slips     []slipItem     `json:"slips"`
	Findings  []finding.Item `json:"findings"`
	Totals    figureMap      `json:"totals"`
}

type assumedItem struct {
	What  string `json:"what"`
	Value string `json:"value"`
	From  string `json:"from"`
}

// RowItem is a judged feature as JSON.
type RowItem struct {
	Name    string      `json:"name"`
	Kind    string      `json:"kind"`
	Side    string      `json:"side"`
	Setup   string      `json:"setup"`
	Verdict State       `json:"verdict"`
	Wanted  figureMap   `json:"wanted"`
	Limits  limitMap    `json:"limits"`
	Cut     figureMap   `json:"cut"`
	Off     figureMap   `json:"off"`
	Blocks  []placeItem `json:"blocks"`
}

type placeItem struct {
	File string `json:"file"`
	Line int    `json:"line"`
}

type slipItem struct {
	Code     string          `json:"code"`
	Explains string          `json:"explains"`
	Residual json.RawMessage `json:"residual_mm"`
	Cure     string          `json:"cure"`
}

// figureMap prints figures in their own order and decimals.
type figureMap Figures

func (f figureMap) MarshalJSON() ([]byte, error) {
	var b bytes.Buffer
	b.WriteByte('{')
	for i, x := range f {
		if i > 0 {
			b.WriteByte(',')
		}
		b.WriteString(strconv.Quote(x.Key) + ":" + x.text("null"))
	}
	b.WriteByte('}')
	return b.Bytes(), nil
}

type limitMap []Limit

func (l limitMap) MarshalJSON() ([]byte, error) {
	var b bytes.Buffer
	b.WriteByte('{')
	for i, x := range l {
		if i > 0 {
			b.WriteByte(',')
		}
		b.WriteString(strconv.Quote(x.Key) + ":[" + geom.Fixed(x.Low, x.Decimals) + "," + geom.Fixed(x.High, x.Decimals) + "]")
	}
	b.WriteByte('}')
	return b.Bytes(), nil
}

// text prints a figure, or what stands for an unknown one.
func (x Figure) text(unknown string) string {
	if !x.Known {
		return unknown
	}
	return geom.Fixed(x.Value, x.Decimals)
}

// Object returns the verdict as JSON prints it.
func (v *Verdict) Object() Object {
	o := Object{Format: 1, Part: v.PartName, Programs: v.Programs, Verdict: v.State, Assumed: []assumedItem{}, NotJudged: v.NotJudged,
		Features: v.Features(), Slips: []slipItem{}, Findings: finding.Items(v.Findings)}
	if o.NotJudged == nil {
		o.NotJudged = []string{}
	}
	for _, a := range v.Assumed {
		from := a.From.Place()
		if from == "" {
			from = "default"
		}
		o.Assumed = append(o.Assumed, assumedItem{a.What, a.Value, from})
	}
	for _, s := range v.Slips {
		o.Slips = append(o.Slips, slipItem{s.Code, s.Explains, json.RawMessage(geom.Fixed(s.Residual, lengthPlaces)), s.Cure})
	}
	t := v.Totals
	count := func(key string, n int) Figure { return Figure{key, float64(n), true, 0} }
	o.Totals = figureMap{count("blocks", t.Blocks), count("motions", t.Motions), {"cut_length_mm", t.CutLength, true, lengthPlaces}, t.Time, t.PeakRPM, t.LargestDiameter, t.LeastZ}
	return o
}

// Features returns the rows as JSON prints them.
func (v *Verdict) Features() []RowItem {
	out := []RowItem{}
	for _, r := range v.Rows {
		it := RowItem{Name: r.Name, Kind: string(r.Kind), Side: "outside", Setup: r.Setup, Verdict: r.Verdict, Wanted: figureMap(r.Wanted),
			Limits: limitMap(r.Limits), Cut: figureMap(r.Cut), Off: figureMap(r.Off), Blocks: []placeItem{}}
		if r.Inside {
			it.Side = "inside"
		}
		for _, p := range r.Blocks {
			it.Blocks = append(it.Blocks, placeItem{p.Text.Name, p.Line})
		}
		out = append(out, it)
	}
	return out
}

// JSON prints the verdict as one object with a final newline.
func (v *Verdict) JSON(w io.Writer) error {
	enc := json.NewEncoder(w)
	enc.SetEscapeHTML(false)
	enc.SetIndent("", "  ")
	return enc.Encode(v.Object())
}
