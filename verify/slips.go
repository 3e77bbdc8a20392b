package verify

import (
	"math"
	"strconv"
	"strings"

	"taperwright/profiles"
	"taperwright/profiles/finding"
	"taperwright/profiles/geom"
	"taperwright/profiles/shop"
	"taperwright/verify/motion"
)

// explained is how far, in mm, a figure may stay off under a slip that is said
// to explain what is out (definitions 13).
const explained = 0.002

// trial is one usual slip: what would have to be true for the program to be
// right, and the edit that would cure it.
type trial struct {
	code, explains, cure string
	tweak                tweak
}

// slips tries the usual slips one by one and returns those under which every
// feature is in, best first. read holds the programs as parsed.
func (b *bench) slips(read []program, first int, rows []judged) []Slip {
	var out []Slip
	for _, t := range b.trials(rows) {
		if residual, ok := b.try(t, read, first); ok {
			out = append(out, Slip{t.code, t.explains, residual, t.cure})
		}
	}
	if s, ok := b.misread(rows); ok {
		out = append(out, s)
	}
	for i := 1; i < len(out); i++ { // few: by residual, the order of trials among equals
		for j := i; j > 0 && out[j].Residual < out[j-1].Residual; j-- {
			out[j], out[j-1] = out[j-1], out[j]
		}
	}
	return out
}

// try cuts the programs again under a slip. It returns the largest figure that
// stays off, and false when something is still out.
func (b *bench) try(t trial, read []program, first int) (float64, bool) {
	var quiet finding.List
	n := newBench(b.part, first, &quiet)
	n.tweak, n.first = t.tweak, true
	for i := range b.runs {
		p := read[i]
		if t.tweak.shop != nil {
			p.trace = motion.Interpret(p.file, t.tweak.shop, &quiet)
		}
		if !n.run(b.runs[i].Program, b.runs[i].Setup, p) {
			return 0, false
		}
	}
	residual := 0.0
	for _, r := range n.rows(b.part, first, len(b.runs), false) {
		switch r.row.Verdict {
		case Later:
			continue
		case In:
		default:
			return 0, false
		}
		for _, key := range []string{"diameter_mm", "z_mm", "radius_mm", "width_mm"} {
			if v, known := r.row.Off.Get(key); known {
				residual = max(residual, math.Abs(v))
			}
		}
	}
	return residual, geom.Count(residual, lengthPlaces) <= geom.Count(max(explained, b.word()), lengthPlaces)
}

// word is one unit of the last place of the machine's words, mm on diameter.
func (b *bench) word() float64 {
	m := &b.part.Shop.Machine
	w := m.Unit.Value.PerMM()
	for range m.Decimals.Value {
		w /= 10
	}
	return w
}

// noses are the nose radii of ISO 1832 that shops own, mm.
var noses = []float64{0.2, 0.4, 0.8, 1.2, 1.6, 2.4}

// trials returns the slips that one change of tool or machine stands for.
func (b *bench) trials(rows []judged) []trial {
	all := []trial{{SlipNoseForgotten, "the nose radius was forgotten: the program is right for a sharp point", b.noseCure(rows),
		tweak{tool: withNose(0)}}}
	for _, r := range noses {
		name := geom.Fixed(r, 1) + " mm"
		all = append(all, trial{SlipNoseWrong, "the program is right for a nose radius of " + name, "cut with a nose of " + name + ", or plan again for the one in the shop file", tweak{tool: withNose(r)}})
	}
	m := &b.part.Shop.Machine
	flip := func(code, explains, cure string, change func(*shop.Machine)) {
		s := *b.part.Shop
		change(&s.Machine)
		all = append(all, trial{code, explains, cure, tweak{shop: &s}})
	}
	other := map[bool]string{true: "a radius", false: "a diameter"}[m.XIsDiameter.Value]
	flip(SlipX, "the program is right when X is "+other, "set x in [machine], or write X as the machine reads it", func(m *shop.Machine) { m.XIsDiameter.Value = !m.XIsDiameter.Value })
	flip(SlipUnit, "the program is right in the other unit", "write the unit word, or set unit in [machine]", func(m *shop.Machine) { m.Unit.Value = shop.Inch - m.Unit.Value })
	point := map[shop.MissingPoint]shop.MissingPoint{shop.Whole: shop.Increment, shop.Increment: shop.Whole}[m.MissingPoint.Value]
	flip(SlipPoint, "the program is right when a number without a point is "+map[shop.MissingPoint]string{shop.Whole: "whole", shop.Increment: "a count of increments"}[point],
		"write the points, or set missing_point in [machine]", func(m *shop.Machine) { m.MissingPoint.Value = point })
	if f := b.part.Stock.Front; f > 0 {
		for _, shift := range []float64{f, -f} {
			all = append(all, trial{SlipZero, "Z0 was shifted by the metal on the front face, " + size(f), "set Z0 on the finished face", tweak{shift: shift}})
		}
	}
	return all
}

// withNose returns tools as they are but for the nose radius. The edges keep
// their place, so the programmed point keeps its.
func withNose(r float64) func(run, motion int, t *shop.Tool) *shop.Tool {
	made := map[*shop.Tool]*shop.Tool{}
	return func(_, _ int, t *shop.Tool) *shop.Tool {
		if t.Round || t.Nose == r {
			return t
		}
		if made[t] == nil {
			other := *t
			other.Nose = r
			made[t] = &other
		}
		return made[t]
	}
}

// noseCure says what to do about a forgotten nose.
func (b *bench) noseCure(rows []judged) string {
	cure := "compensate the path for the nose radius (see 'taperwright explain " + SlipNoseForgotten + "')"
	for _, r := range rows {
		if off, known := r.row.Off.Get("diameter_mm"); known && r.row.Kind == profiles.Taper && r.row.Verdict == Out {
			return cure + "; an X offset of " + geom.Fixed(-off, 3) + " mm on diameter would make the cylinders wrong"
		}
	}
	return cure
}

// misread looks for a cone whose angle is another reading of the drawing's.
func (b *bench) misread(rows []judged) (Slip, bool) {
	var cone *judged
	for i := range rows {
		r := &rows[i]
		switch {
		case r.row.Verdict != Out:
		case r.row.Kind == profiles.Taper && cone == nil:
			cone = r
		default:
			return Slip{}, false // something else is out too
		}
	}
	if cone == nil {
		return Slip{}, false
	}
	cut, known := cone.row.Cut.Get("half_angle_deg")
	f := &b.part.Features[cone.row.Feature]
	if !known || f.Cone == nil {
		return Slip{}, false
	}
	t := math.Abs(f.Cone.Slope.Aim)
	half := geom.Degrees(geom.Atan(t))
	length := math.Abs(f.Piece.To.Z - f.Piece.From.Z)
	for _, r := range []struct {
		code, explains string
		half           float64
	}{
		{SlipHalf, "the half angle was taken for the included angle and halved again", half / 2},
		{SlipIncluded, "the included angle was used as the half angle", float64(2 * half)},
		{SlipPerSide, "the taper on diameter was taken per side", geom.Degrees(geom.Atan(2 * t))},
		{SlipOnDiameter, "the taper on diameter was halved once too often", geom.Degrees(geom.Atan(t / 2))},
		{SlipPerFoot, "taper per foot was read per inch", geom.Degrees(geom.Atan(12 * t))},
		{SlipPerFoot, "taper per inch was read per foot", geom.Degrees(geom.Atan(t / 12))},
		{SlipMinutes, "degrees and minutes were written as decimals", decimalMinutes(half)},
		{SlipComplement, "the angle was taken from the other zero of the rest", 90 - half},
	} {
		d := 2 * length * math.Abs(geom.Tan(geom.Radians(r.half))-geom.Tan(geom.Radians(cut)))
		if r.half > 0 && r.half < 89 && geom.Count(d, lengthPlaces) <= geom.Count(max(2*explained, 2*b.word()), lengthPlaces) {
			return Slip{r.code, r.explains + ": " + degrees(r.half) + " for " + degrees(half), geom.Round(d, lengthPlaces), "cut the half angle " + degrees(half) + ": " + slopeWords(t)}, true
		}
	}
	return Slip{}, false
}

// decimalMinutes returns 5.43 for 5 degrees 43 minutes.
func decimalMinutes(half float64) float64 {
	whole := math.Floor(half)
	return whole + float64(math.Round(float64((half-whole)*60))/100)
}

func degrees(d float64) string { return geom.Fixed(d, anglePlaces) + " deg" }

// slopeWords says a slope as a machinist moves it.
func slopeWords(t float64) string {
	return geom.Fixed(2*t*10, lengthPlaces) + " mm on diameter in 10 mm of Z"
}

func quoted(names []string) string {
	for i, n := range names {
		names[i] = strconv.Quote(n)
	}
	return strings.Join(names, ", ")
}
