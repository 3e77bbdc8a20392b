package profiles

import (
	"fmt"
	"math"
	"os"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"taperwright/profiles/finding"
	"taperwright/profiles/source"
)

// published returns the entries of a kind in testdata/values/limits.toml,
// where each has its source.
func published(t *testing.T, kind string) []*source.Table {
	t.Helper()
	b, err := os.ReadFile("../testdata/values/limits.toml")
	require.NoError(t, err)
	var l finding.List
	root, ok := source.Parse(finding.NewText("limits.toml", b), &l)
	require.True(t, ok)
	require.Empty(t, l.Sorted())
	out := root.Tables(kind)
	require.NotEmpty(t, out)
	return out
}

func figure(t *testing.T, e *source.Table, key string) float64 {
	t.Helper()
	n, ok := e.Number(key)
	require.True(t, ok, key)
	return n.Value
}

func word(e *source.Table, key string) string {
	s, _ := e.Text(key)
	return s.Value
}

// um is how near two printed micrometres are one: half a thousandth.
const um = 0.0005

func TestPublishedGrades(t *testing.T) {
	for _, e := range published(t, "it") {
		// just above the lower end, and at the upper end, which belongs to the range
		for _, d := range []float64{figure(t, e, "over") + 0.01, figure(t, e, "to")} {
			for n := 5; n <= 11; n++ {
				want := figure(t, e, fmt.Sprintf("IT%d", n))
				low, high, no := isoClass(fmt.Sprintf("h%d", n), d)
				require.Nil(t, no)
				assert.InDelta(t, -want, low*1000, um, "h%d at %v", n, d)
				assert.Zero(t, high)
				low, high, no = isoClass(fmt.Sprintf("js%d", n), d)
				require.Nil(t, no)
				assert.InDelta(t, want/2, high*1000, um)
				assert.InDelta(t, -want/2, low*1000, um)
			}
		}
	}
	// The formula 16 i of the standard does not give the lowest range: it
	// prints 10 for IT7 where the formula has 8.7.
	first := published(t, "it")[0]
	assert.Equal(t, "disagree", word(first, "check"))
	low, _, _ := isoClass("h7", 2)
	assert.Greater(t, math.Abs(-low*1000-figure(t, first, "computed_16i")), 1.0)
}

func TestPublishedClasses(t *testing.T) {
	seen := map[string]bool{}
	for _, e := range published(t, "class") {
		name := word(e, "name")
		require.Equal(t, "ok", word(e, "check"))
		low, high, no := isoClass(name, figure(t, e, "to"))
		if name[0] == 'H' { // a bore's: refused on a shaft, its width is the shaft grade's
			require.NotNil(t, no)
			assert.Equal(t, BadTolerance, no.code)
			low, high, no = isoClass("h"+name[1:], figure(t, e, "to"))
			require.Nil(t, no)
			assert.InDelta(t, figure(t, e, "es_um")-figure(t, e, "ei_um"), (high-low)*1000, um)
			continue
		}
		require.Nil(t, no, name)
		seen[name] = true
		assert.InDelta(t, figure(t, e, "es_um"), high*1000, um, "%s to %v", name, figure(t, e, "to"))
		assert.InDelta(t, figure(t, e, "ei_um"), low*1000, um, "%s to %v", name, figure(t, e, "to"))
	}
	assert.Len(t, seen, 7) // h6 h7 h8 g6 f7 k6 m6
}

// Web tables with misprints: ours has the standard's value and not the one
// printed there.
func TestMisprints(t *testing.T) {
	cases := map[string]struct {
		class    string
		diameter float64
	}{
		"special-steel.com h6 6-10": {"h6", 10}, "special-steel.com h6 10-18": {"h6", 18}, "special-steel.com h6 18-30": {"h6", 30},
		"special-steel.com h6 30-50": {"h6", 50}, "special-steel.com h6 50-80": {"h6", 80}, "special-steel.com h7 18-30": {"h7", 30},
		"deepri h6 18-30": {"h6", 30}, "zh-ss IT6 1-3": {"h6", 3}, "zh-ss IT7 1-3": {"h7", 3},
	}
	n := 0
	for _, e := range published(t, "trap") {
		c, ok := cases[word(e, "name")]
		require.True(t, ok, word(e, "name"))
		n++
		low, _, no := isoClass(c.class, c.diameter)
		require.Nil(t, no)
		width := -low * 1000
		assert.InDelta(t, math.Abs(figure(t, e, "standard_um")), width, um, word(e, "name"))
		assert.Greater(t, math.Abs(math.Abs(figure(t, e, "printed_um"))-width), 0.5, word(e, "name"))
	}
	assert.Equal(t, len(cases), n)
}

func TestPublishedGeneral(t *testing.T) {
	check := func(e *source.Table, table []generalRow, over, size float64, keys [4]string) {
		for class, key := range keys {
			want := 0.0
			if e.Has(key) {
				want = figure(t, e, key)
			}
			for _, at := range []float64{over + 0.01, size} {
				assert.Equal(t, want, general(table, class, at), "%s at %v", key, at)
			}
		}
	}
	open := func(to float64) float64 {
		if to == 0 {
			return 3000
		}
		return to
	}
	letters := [4]string{"f", "m", "c", "v"}
	for _, e := range published(t, "iso2768_linear") {
		check(e, generalLinear, figure(t, e, "over"), figure(t, e, "to"), letters)
	}
	for _, e := range published(t, "iso2768_chamfer_radius") {
		check(e, generalEdges, figure(t, e, "over"), open(figure(t, e, "to")), letters)
	}
	for _, e := range published(t, "iso2768_angle") {
		check(e, generalAngles, figure(t, e, "short_leg_over"), open(figure(t, e, "to")), [4]string{"f_m_min", "f_m_min", "c_min", "v_min"})
	}
	assert.Zero(t, general(generalLinear, 1, 4000.1), "beyond the standard")
	assert.Equal(t, 0.1, generalLength(generalLinear, 0, 0.4), "below 0.5: common practice")
}

func TestPublishedConeGrades(t *testing.T) {
	for _, e := range published(t, "cone_angle_AT") {
		for _, l := range []float64{figure(t, e, "over") + 0.01, figure(t, e, "to")} {
			for n := 4; n <= 10; n++ {
				urad := figure(t, e, fmt.Sprintf("AT%d", n))
				// the grade is the whole width of the included angle's zone: half of it on the half angle
				low, high, no := coneGrade(fmt.Sprintf("+AT%d", n), l)
				require.Nil(t, no)
				assert.Zero(t, low)
				assert.InDelta(t, urad/2, high*1e6, 1e-9)
				low, high, no = coneGrade(fmt.Sprintf("-AT%d", n), l)
				require.Nil(t, no)
				assert.InDelta(t, -urad/2, low*1e6, 1e-9)
				assert.Zero(t, high)
				low, high, no = coneGrade(fmt.Sprintf("AT%d/2", n), l)
				require.Nil(t, no)
				assert.InDelta(t, urad/4, high*1e6, 1e-9)
				assert.InDelta(t, -urad/4, low*1e6, 1e-9)
			}
		}
	}
	// AT_D = AT L: 315 µrad over 63 mm, printed 20, is 19.845 µm; over 50 mm 15.75
	for _, e := range published(t, "cone_angle_AT_example") {
		l := figure(t, e, "L")
		_, high, no := coneGrade("+"+word(e, "grade"), l)
		require.Nil(t, no)
		assert.InDelta(t, figure(t, e, "computed_AT_D"), 2*high*l*1000, um)
	}
	// definitions: 70 mm, AT6: 160 µrad, 33" included, 16.5" half
	_, high, _ := coneGrade("+AT6", 70)
	assert.InDelta(t, 16.5, high/geomDegree*3600, 0.05)
}

func TestRefusedTolerances(t *testing.T) {
	for _, c := range []struct {
		class string
		d     float64
		code  string
	}{
		{"p6", 50, NoLimits}, {"k8", 50, NoLimits}, {"h12", 50, NoLimits}, {"h4", 50, NoLimits}, {"h7", 180.01, NoLimits},
		{"H7", 50, BadTolerance}, {"7h", 50, BadTolerance}, {"h", 50, BadTolerance}, {"", 50, BadTolerance}, {"h-7", 50, BadTolerance}, {"h99999999999999999999", 50, BadTolerance},
	} {
		_, _, no := isoClass(c.class, c.d)
		if assert.NotNil(t, no, c.class) {
			assert.Equal(t, c.code, no.code, c.class)
		}
	}
	for _, c := range []struct {
		grade string
		l     float64
		code  string
	}{
		{"AT6", 70, BadTolerance}, {"+AT6/2", 70, BadTolerance}, {"AT", 70, BadTolerance}, {"+-6", 70, BadTolerance}, {"AT+6/2", 70, BadTolerance},
		{"AT3/2", 70, NoLimits}, {"AT11/2", 70, NoLimits}, {"AT6/2", 6, NoLimits}, {"AT6/2", 630.1, NoLimits},
	} {
		_, _, no := coneGrade(c.grade, c.l)
		if assert.NotNil(t, no, c.grade) {
			assert.Equal(t, c.code, no.code, c.grade)
		}
	}
}
