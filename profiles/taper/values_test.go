package taper

import (
	"fmt"
	"math"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"github.com/BurntSushi/toml"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"taperwright/profiles/finding"
	"taperwright/profiles/geom"
)

// Published values: each row of testdata/values carries its source; rows with
// seen = false are from memory. What a row's own figures contradict (check =
// "disagree") must come out as a contradiction here too.

type row map[string]any

func values(t *testing.T, file string) map[string][]row {
	t.Helper()
	out := map[string][]row{}
	_, err := toml.DecodeFile(filepath.Join("..", "..", "testdata", "values", file), &out)
	require.NoError(t, err)
	for group, rows := range out {
		for _, r := range rows {
			require.NotEmpty(t, r["source"], "%s %v", group, r["name"])
			require.IsType(t, true, r["seen"], "%s %v", group, r["name"])
		}
	}
	return out
}

func (r row) has(key string) bool { _, ok := r[key]; return ok }

func (r row) num(t *testing.T, key string) float64 {
	t.Helper()
	switch v := r[key].(type) {
	case float64:
		return v
	case int64:
		return float64(v)
	}
	t.Fatalf("%v: %s is no number: %v", r["name"], key, r[key])
	return 0
}

// fact makes a fact of a column, with the digits the table prints.
func (r row) fact(t *testing.T, kind Kind, key string) Fact {
	v := r.num(t, key)
	return Fact{Kind: kind, Value: v, Digits: strconv.FormatFloat(v, 'f', -1, 64), Label: keys[kind]}
}

// printed is half a unit of the last digit that the table prints, and a hair
// for figures that lie on a tie.
func (r row) printed(t *testing.T, key string) float64 {
	return halfUnit(r.fact(t, Ratio, key).Digits) * (1 + 1e-6)
}

// near refuses NaN and a tolerance that is none; InDelta passes both.
func near(t *testing.T, want, got, tolerance float64, what ...any) {
	t.Helper()
	if !(tolerance > 0) || !(math.Abs(want-got) <= tolerance) {
		t.Errorf("%s: want %.10g within %.3g, got %.10g", fmt.Sprint(what...), want, tolerance, got)
	}
}

func inchCone(t *testing.T, facts ...Fact) (Cone, []finding.Finding) {
	t.Helper()
	var l finding.List
	c, ok := Solve(facts, Ask{Inch: true}, &l)
	require.Equal(t, !ok, l.HasErrors())
	return c, l.Sorted()
}

func agrees(t *testing.T, r row, facts ...Fact) Cone {
	t.Helper()
	c, found := inchCone(t, facts...)
	require.Empty(t, found, "%v", r["name"])
	return c
}

// dms reads an angle as the tables write it, in degrees.
func dms(t *testing.T, text string) float64 {
	t.Helper()
	f := strings.FieldsFunc(text, func(c rune) bool { return strings.ContainsRune("° '\"", c) })
	v := 0.0
	for i, unit := range []float64{1, 60, 3600} {
		if i < len(f) {
			x, err := strconv.ParseFloat(f[i], 64)
			require.NoError(t, err, text)
			v += x / unit
		}
	}
	return v
}

const second = 1.0 / 3600

func halfDeg(s Slope) float64     { return geom.Degrees(s.HalfAngle()) }
func includedDeg(s Slope) float64 { return geom.Degrees(s.IncludedAngle()) }

func TestMorse(t *testing.T) {
	v := values(t, "tapers.toml")
	require.Len(t, v["morse"], 9)
	for _, r := range v["morse"] {
		name := r["name"].(string)
		ends := []Fact{r.fact(t, Large, "large"), r.fact(t, Small, "small"), r.fact(t, Length, "plug_depth")}
		c := agrees(t, r, ends...)
		near(t, r.num(t, "computed_tpf"), c.Slope.PerFoot(), 0.000005, name)
		near(t, r.num(t, "computed_half_angle_deg"), halfDeg(c.Slope), 0.000005, name)
		near(t, dms(t, r["computed_half_angle_dms"].(string)), halfDeg(c.Slope), 0.05*second*1.001, name)
		// the printed rate and the named series agree with the printed ends
		all := append(ends, r.fact(t, PerFoot, "tpf"), Fact{Kind: RateOf, Text: name, Label: "series"})
		c = agrees(t, r, all...)
		require.NotNil(t, c.Series)
		if r.has("ratio_1_to") {
			near(t, r.num(t, "ratio_1_to"), c.Slope.Ratio(), 1e-9, name)
		} else {
			near(t, r.num(t, "tpf"), c.Slope.PerFoot(), 1e-9, name)
		}
		g, ok := c.Series.GaugeRadius(true)
		require.True(t, ok)
		near(t, r.num(t, "large"), 2*g/inch, 1e-9, name)
	}
	require.Len(t, v["morse_metric"], 7)
	for _, r := range v["morse_metric"] {
		s, ok := Named(r["name"].(string))
		require.True(t, ok)
		near(t, r.num(t, "ratio_1_to"), s.Slope.Ratio(), 1e-9, r["name"])
		g, ok := s.GaugeRadius(false)
		require.True(t, ok)
		near(t, r.num(t, "gauge_D"), 2*g, 1e-9, r["name"])
		g, _ = s.GaugeRadius(true)
		near(t, r.num(t, "computed_D_from_inch"), 2*g, 0.00005*1.001, r["name"])
		// diameters a before the gauge plane and l behind it
		for _, at := range []struct {
			place, printed, computed string
			sign                     float64
		}{{"a", "D1", "computed_D1", -1}, {"l1_drawn_end", "d_at_l1", "computed_d_at_l1", 1}, {"l3_tang", "d3_at_l3", "computed_d3", 1}} {
			d := r.num(t, "gauge_D") - at.sign*r.num(t, at.place)*s.Slope.PerInch()
			near(t, r.num(t, at.computed), d, 0.0005*1.001, r["name"], " ", at.printed)
			near(t, r.num(t, at.printed), d, 0.05*1.001, r["name"], " ", at.printed)
		}
	}
}

// K, the end of the socket to its keyway, stands beside the plug depth in some
// tables and is not the length of the taper.
func TestMorseTraps(t *testing.T) {
	traps := values(t, "tapers.toml")["morse_trap"]
	require.Len(t, traps, 9)
	for _, r := range traps {
		name, _, _ := strings.Cut(r["name"].(string), " with")
		name, _, _ = strings.Cut(name, " large")
		facts := []Fact{{Kind: RateOf, Text: name, Label: "series"}, r.fact(t, Large, "large")}
		if !r.has("k_end_of_socket_to_keyway") { // 0.3651: digits transposed
			facts = append(facts, Fact{Kind: Small, Value: 0.252, Digits: "0.252", Label: "small"}, Fact{Kind: Length, Value: 2, Digits: "2", Label: "length"})
			_, found := inchCone(t, facts...)
			require.Len(t, found, 1, name)
			require.Equal(t, OverDefined, found[0].Code)
			continue
		}
		ends := []Fact{r.fact(t, Large, "large"), r.fact(t, Small, "small"), r.fact(t, Length, "k_end_of_socket_to_keyway")}
		c := agrees(t, r, ends...)
		near(t, r.num(t, "computed_tpf_if_misused"), c.Slope.PerFoot(), 0.000005*1.001, name)
		require.Greater(t, c.Slope.PerFoot()-r.num(t, "true_tpf"), 0.01, name)
		_, found := inchCone(t, append(ends, facts[0])...)
		require.Len(t, found, 1, name)
		require.Equal(t, OverDefined, found[0].Code)
		require.Contains(t, found[0].Help, "K (end of socket to keyway)")
	}
}

func TestMetricAndSteep(t *testing.T) {
	v := values(t, "tapers.toml")
	require.Len(t, v["metric_1_20"], 7)
	for _, r := range v["metric_1_20"] {
		s, ok := Named(r["name"].(string))
		require.True(t, ok, r["name"])
		require.False(t, s.Seen)
		near(t, 20, s.Slope.Ratio(), 1e-12)
		g, _ := s.GaugeRadius(false)
		near(t, r.num(t, "gauge_D"), 2*g, 1e-12)
		d := 2*g - r.num(t, "l1")*s.Slope.PerInch()
		near(t, r.num(t, "computed_d"), d, 1e-9, r["name"])
		near(t, r.num(t, "d"), d, 0.05*1.001, r["name"])
		near(t, r.num(t, "computed_D1"), 2*g+r.num(t, "a")*s.Slope.PerInch(), 1e-9, r["name"])
	}
	require.Len(t, v["steep_7_24"], 7)
	for _, r := range v["steep_7_24"] {
		s, ok := Named(r["name"].(string))
		require.True(t, ok, r["name"])
		near(t, r.num(t, "tpf"), s.Slope.PerFoot(), 1e-12)
		mm, _ := s.GaugeRadius(false)
		in, _ := s.GaugeRadius(true)
		near(t, r.num(t, "gauge_mm"), 2*mm, 1e-9)
		near(t, r.num(t, "gauge_inch"), 2*in/inch, 1e-9)
		near(t, dms(t, r["computed_included"].(string)), includedDeg(s.Slope), 0.005*second)
		near(t, dms(t, r["computed_half"].(string)), halfDeg(s.Slope), 0.005*second)
	}
}

// Tables of ends and length beside the rate: agreement in the sense of
// definitions 5, and the rate that the file computed.
func TestEndsAgainstRate(t *testing.T) {
	v := values(t, "tapers.toml")
	for group, n := range map[string]int{"brown_sharpe": 21, "jacobs": 10, "jarno": 19} {
		require.Len(t, v[group], n)
		for _, r := range v[group] {
			facts := []Fact{r.fact(t, Large, "large"), r.fact(t, Small, "small"), r.fact(t, Length, "length")}
			c := agrees(t, r, facts...)
			near(t, r.num(t, "computed_tpf"), c.Slope.PerFoot(), 0.000005*1.001, r["name"])
			if r.has("computed_half_angle_deg") {
				near(t, r.num(t, "computed_half_angle_deg"), halfDeg(c.Slope), 0.00005*1.001, r["name"])
			}
			_, found := inchCone(t, append(facts, r.fact(t, PerFoot, "tpf"))...)
			require.Equal(t, r["check"] == "ok", len(found) == 0, "%v: %v", r["name"], found)
		}
	}
}

func TestPinsPipesAndShafts(t *testing.T) {
	v := values(t, "tapers.toml")
	require.Len(t, v["taper_pin_inch"], 17)
	for _, r := range v["taper_pin_inch"] { // both columns are the same rate
		near(t, r.num(t, "ratio_1_to"), FromPerFoot(r.num(t, "tpf")).Ratio(), 1e-9)
	}
	for i, s := range []Slope{FromPerFoot(0.25), FromPerFoot(0.25), FromRatio(1, 50)} {
		r := v["taper_pin_rule"][i]
		ok := math.Abs(s.PerInch()-r.num(t, "factor")) <= r.printed(t, "factor")
		assert.Equal(t, r["check"] == "ok", ok, r["name"])
	}
	for _, r := range v["npt"] {
		switch {
		case r.has("half_angle"):
			near(t, dms(t, "1 47"), halfDeg(FromPerFoot(r.num(t, "tpf"))), 0.5/60, r["name"])
		case r.has("E1"): // the pitch cone grows by 1/16 over L1
			e0 := r.num(t, "computed_E0")
			e1 := e0 + r.num(t, "L1")*FromRatio(1, r.num(t, "ratio_1_to")).PerInch()
			near(t, r.num(t, "computed_E1"), e1, 0.000005*1.5, r["name"]) // E0 itself is rounded
			ok := math.Abs(e1-r.num(t, "E1")) <= 0.00001
			assert.Equal(t, r["check"] == "ok", ok, r["name"])
		default: // ASME B1.20.1: L2 = (0.80 D + 6.8)/threads per inch
			l2 := (0.80*r.num(t, "od") + 6.8) / r.num(t, "tpi")
			near(t, r.num(t, "computed_L2"), l2, 0.000005*1.001, r["name"])
			assert.Greater(t, math.Abs(l2-r.num(t, "L2")), 0.3, r["name"])
		}
	}
	require.Len(t, v["propeller_shaft_1_16"], 20)
	for _, r := range v["propeller_shaft_1_16"] {
		facts := []Fact{r.fact(t, Large, "shaft"), r.fact(t, Length, "taper_length"), {Kind: Ratio, Text: "1:16", Label: "ratio"}, r.fact(t, PerFoot, "tpf")}
		c := agrees(t, r, facts...)
		near(t, r.num(t, "computed_small_end"), 2*c.Small/inch, 0.00005*1.001, r["name"])
		require.Equal(t, "ok", r["check"])
		near(t, r.num(t, "small_end"), 2*c.Small/inch, 0.0005*1.001, r["name"])
	}
	rule := v["propeller_shaft_rule"][0]
	for key, n := range map[string]float64{"half_1_16": 16, "half_1_12": 12} {
		text := strings.NewReplacer("deg", "", "min", "", " s", "").Replace(rule[key].(string))
		near(t, dms(t, text), halfDeg(FromRatio(1, n)), second, key) // the page cuts, it does not round
	}
	require.Len(t, v["shaft_end_1_10_short"], 8)
	for _, r := range v["shaft_end_1_10_short"] {
		near(t, r.num(t, "d2_at_mid_length"), r.num(t, "d1")-r.num(t, "l2_taper")/2*FromRatio(1, r.num(t, "ratio_1_to")).PerInch(), 1e-9, r["name"])
	}
}

func TestConeSeries(t *testing.T) {
	v := values(t, "tapers.toml")
	require.Len(t, v["cone_series_general"], 21)
	for _, r := range v["cone_series_general"] {
		s, ok := Named(r["name"].(string))
		require.True(t, ok, r["name"])
		near(t, r.num(t, "cone_angle_deg"), includedDeg(s.Slope), 5e-9, r["name"])
		near(t, r.num(t, "ratio_1_to"), s.Slope.Ratio(), 5e-8, r["name"])
		if r.has("cone_angle_dms") {
			near(t, dms(t, r["cone_angle_dms"].(string)), includedDeg(s.Slope), 0.00005*second*1.01, r["name"])
			// our own writing of it, read again
			a, err := ParseAngle(DegMinSec(s.Slope.IncludedAngle(), 4))
			require.NoError(t, err)
			near(t, dms(t, r["cone_angle_dms"].(string)), a.Degrees(), 1e-10, r["name"])
		}
	}
	require.Len(t, v["cone_series_special"], 20)
	for _, r := range v["cone_series_special"] {
		rate, err := ParseRatio(r["name"].(string))
		require.NoError(t, err)
		near(t, dms(t, r["cone_angle_dms"].(string)), includedDeg(rate.Slope()), 0.05*second*1.001, r["name"])
		near(t, r.num(t, "computed_deg"), includedDeg(rate.Slope()), 5.001e-9, r["name"])
		near(t, r.num(t, "ratio_1_to"), rate.Slope().Ratio(), 5e-7, r["name"])
	}
}

func TestPerFootAngles(t *testing.T) {
	v := values(t, "taper_angles.toml")
	require.Len(t, v["tpf"], 61)
	const table = 3.5 * second // printed from five-figure tangents
	for _, r := range v["tpf"] {
		s := FromPerFoot(r.num(t, "tpf_decimal"))
		near(t, dms(t, r["computed_included"].(string)), includedDeg(s), 0.05*second*1.01, r["name"])
		near(t, dms(t, r["computed_centre"].(string)), halfDeg(s), 0.05*second*1.01, r["name"])
		ok := math.Abs(dms(t, r["included"].(string))-includedDeg(s)) <= table && math.Abs(dms(t, r["centre"].(string))-halfDeg(s)) <= table
		assert.Equal(t, r["check"] == "ok", ok, r["name"])
	}
	require.Len(t, v["tpf_partial"], 5)
	for _, r := range v["tpf_partial"] { // degrees and minutes legible, seconds not
		s := FromPerFoot(r.num(t, "tpf_decimal"))
		near(t, dms(t, r["computed_included"].(string)), includedDeg(s), 0.05*second*1.01, r["name"])
		near(t, dms(t, r["computed_centre"].(string)), halfDeg(s), 0.05*second*1.01, r["name"])
		f := strings.Fields(r["printed_degrees_minutes"].(string))
		ours := strings.FieldsFunc(DegMinSec(s.IncludedAngle(), 1), func(c rune) bool { return c == '°' || c == '\'' })
		for i := range 2 {
			a, _ := strconv.Atoi(f[i])
			b, _ := strconv.Atoi(ours[i])
			assert.Equal(t, a, b, r["name"])
		}
	}
	require.Len(t, v["degrees_to_taper"], 11)
	for _, r := range v["degrees_to_taper"] {
		s := FromIncludedAngle(geom.Radians(r.num(t, "included_deg")))
		near(t, r.num(t, "computed_per_inch"), s.PerInch(), 0.000005*1.01, r["name"])
		if r.has("computed_per_foot") {
			near(t, r.num(t, "computed_per_foot"), s.PerFoot(), 0.000005*1.01, r["name"])
		}
		// the table doubles a tangent cut after five figures: low by up to 2e-5
		// per inch, 12 times that per foot
		off := s.PerInch() - r.num(t, "taper_per_inch")
		ok := off > -0.000005 && off < 0.00002
		if r.has("taper_per_foot") && ok {
			off = s.PerFoot() - r.num(t, "taper_per_foot")
			ok = off > -0.00006 && off < 0.00024
		}
		assert.Equal(t, r["check"] == "ok", ok, r["name"])
	}
}

// Worked examples, each by the rule of its topic: a new row of a known topic
// needs no new code here.
func TestWorkedExamples(t *testing.T) {
	examples := values(t, "checks.toml")["example"]
	require.Len(t, examples, 40)
	for _, r := range examples {
		in := row(r["inputs"].(map[string]any))
		in["name"] = r["id"]
		got, ok := worked(t, r["topic"].(string), r["unit"].(string), in)
		require.True(t, ok, "no rule for %v: %v", r["id"], r["topic"])
		if r["check"] == "ok" {
			near(t, r.num(t, "expected"), got, r.num(t, "tolerance")*1.000001, r["id"])
		} else {
			assert.Greater(t, math.Abs(r.num(t, "expected")-got), r.num(t, "tolerance"), r["id"])
		}
		// npt_half_angle: the source's own slip, see TestHalvedTangent
		near(t, r.num(t, "computed"), got, max(1e-6, 1e-7*math.Abs(got)), r["id"])
	}
}

func worked(t *testing.T, topic, unit string, in row) (float64, bool) {
	num := func(key string) float64 { return in.num(t, key) }
	ends := func(length string) Slope { // any unit: the slope has none
		var l finding.List
		c, ok := Solve([]Fact{in.fact(t, Large, "D"), in.fact(t, Small, "d"), in.fact(t, Length, length)}, Ask{}, &l)
		require.True(t, ok, l.Sorted())
		return c.Slope
	}
	var s Slope
	switch {
	case in.has("ratio_1_to"):
		s = FromRatio(1, num("ratio_1_to"))
	case in.has("tpf"):
		s = FromPerFoot(num("tpf"))
	case in.has("D") && in.has("d") && in.has("L_taper"):
		s = ends("L_taper")
	case in.has("D") && in.has("d") && in.has("L"):
		s = ends("L")
	}
	switch topic {
	case "tailstock set-over":
		between := "L"
		if in.has("L_total") {
			between = "L_total"
		}
		return s.SetOverHandbook(num(between)), true // the form these sources print
	case "taper per foot":
		return s.PerFoot(), true
	case "taper in mm per metre":
		return 1000 * s.PerInch(), true
	case "compound-rest angle":
		return halfDeg(s), true
	case "small end":
		return num("D") - s.PerInch()*num("L_taper"), true
	case "bore at depth on a pipe taper":
		return num("D") - FromRatio(1, 16).PerInch()*num("L"), true
	case "taper angle":
		return halfDeg(FromPerFoot(2 * num("rise_on_radius_per_foot"))), true
	case "pipe taper": // halves the angle whose tangent is the taper on diameter
		return halfDeg(FromHalfAngle(Slope(s.PerInch()).HalfAngle() / 2)), true
	case "angle from tangent, printed loosely":
		return halfDeg(Slope(num("tan_half"))), true
	case "tangent of half of 3 deg":
		return float64(FromIncludedAngle(geom.Radians(num("included_deg")))), true
	case "right triangle":
		return halfDeg(Slope(num("opp") / num("adj"))), true
	case "angle from two points":
		return halfDeg(Slope(math.Abs((num("X2") - num("X1")) / 2 / (num("Z2") - num("Z1"))))), true
	case "sine bar":
		return FromIncludedAngle(geom.Radians(num("angle_deg") + num("angle_min")/60)).SineBar(num("L")), true
	case "sine bar on a taper (bar under included angle)":
		s, ok := FromSineBar(num("sin_included"), 1)
		return includedDeg(s), ok
	case "two discs: taper":
		s, ok := FromTwo(num("D")/2, num("d")/2, num("C"))
		return s.PerFoot(), ok
	case "two discs: centre distance for a taper":
		return s.Apart(num("D")/2, num("d")/2), true
	case "two discs: centre distance for an angle":
		return FromIncludedAngle(geom.Radians(num("angle_deg"))).Apart(num("D")/2, num("d")/2), true
	case "two discs: centre distance, taper from one side": // the whole angle lies on one side of the line through the centres' base
		return FromIncludedAngle(Slope(s.PerInch()).HalfAngle()).Apart(num("D")/2, num("d")/2), true
	case "taper ring gauge by two balls":
		big, small := num("D_large")/2, num("d_small")/2
		s, ok := FromTwo(big, small, (num("face_to_top_of_small")+small)-(big-num("large_protrudes")))
		if strings.HasSuffix(unit, "included") {
			return includedDeg(s), ok
		}
		return halfDeg(s), ok
	case "axial deviation factor relative to a 1:10 cone":
		return s.StandOff(1) / FromRatio(1, 10).StandOff(1), true
	case "same, page's printed answer": // centres of a probing ball: the wall lies r/cos a farther out
		s := Slope((num("d2") - num("d1")) / 2 / (num("z2") - num("z1")))
		return num("d1") - num("z1")*s.PerInch() + num("probe_d")*s.secant(), true
	}
	return 0, false
}

// npt_half_angle halves atan(0.75/12); the exact half angle is atan(1/32) =
// 1.78991 deg, and the slip is named when both are given.
func TestHalvedTangent(t *testing.T) {
	near(t, 1.78991, halfDeg(FromPerFoot(0.75)), 0.000005)
	_, found := inchCone(t, Fact{Kind: PerFoot, Value: 0.75, Digits: "0.7500", Label: "taper_per_foot"}, Fact{Kind: HalfAngle, Value: 1.7882, Digits: "1.7882", Label: "half_angle"})
	require.Len(t, found, 1)
	require.Contains(t, found[0].Help, "the angle whose tangent is the rate on diameter")
	require.Contains(t, found[0].Help, `"1°47'23.7\""`)
}
