package profiles

import (
	"math"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"taperwright/profiles/finding"
	"taperwright/profiles/geom"
	"taperwright/profiles/shop"
)

// head is what the parts of these tests have in common, seven lines.
const head = `title = "test shaft"
unit = "mm"
shop = "shop.toml"
[stock]
diameter = 100
length = 300
front = 0
`

// starterShop opens shop.toml as the shop file to begin from: its finishing
// tool has a nose of 0.4.
func starterShop(name string) (*finding.Text, error) {
	if name != "shop.toml" {
		return nil, os.ErrNotExist
	}
	return finding.NewText(name, shop.Starter()), nil
}

func readText(text string) (*Part, []finding.Finding) {
	var l finding.List
	p := Read(finding.NewText("part.toml", []byte(text)), starterShop, &l)
	return p, l.Sorted()
}

// good reads head and body, and expects nothing but notes and loose cones.
func good(t *testing.T, body string) *Part {
	t.Helper()
	p, found := readText(head + body)
	for _, f := range found {
		require.False(t, f.Severity == finding.Error, "%s: %s", f.Code, f.Message)
	}
	require.NotNil(t, p)
	return p
}

func row(t *testing.T, p *Part, name string) Feature {
	t.Helper()
	i := p.find(name)
	require.GreaterOrEqual(t, i, 0, "no row %q in\n%s", name, p)
	return p.Features[i]
}

func rowNames(p *Part) []string {
	var out []string
	for _, f := range p.Features {
		out = append(out, f.Name)
	}
	return out
}

// out writes one [[outside]] table.
func out(lines ...string) string { return "[[outside]]\n" + strings.Join(lines, "\n") + "\n" }

func journal(d, l string, more ...string) string {
	return out(append([]string{`kind = "journal"`, "diameter = " + d, "length = " + l}, more...)...)
}

func shoulder(d string) string { return out(`kind = "shoulder"`, "diameter = "+d) }
func fillet(r string) string   { return out(`kind = "fillet"`, "radius = "+r) }
func chamfer(w string, more ...string) string {
	return out(append([]string{`kind = "chamfer"`, "width = " + w}, more...)...)
}

// pieces compares the contour with wanted places, one after another: z r of
// the start, then z r of each end; arcs add their centre.
func contour(t *testing.T, p *Part, want string) {
	t.Helper()
	chain, _ := p.Contour(0)
	assert.LessOrEqual(t, chain.Gap(), geom.Near)
	assert.Equal(t, strings.TrimSpace(strings.ReplaceAll(want, "\t", "")), strings.TrimSpace(chain.String()))
}

func TestContour(t *testing.T) {
	exact := "tolerance = 0.02" // both ways: the aim is the nominal
	for _, c := range []struct{ name, body, want string }{
		{"a journal alone", journal("40", "30", exact), `
			line (0.0000000, 0.0000000) (0.0000000, 20.0000000)
			line (0.0000000, 20.0000000) (-30.0000000, 20.0000000)`},
		// first place: 20 - 2 on the face; last place: later, nothing is taken out
		{"chamfers at both ends", chamfer("2", "tolerance = 0.1") + journal("40", "30", exact) + chamfer("1", "tolerance = 0.1"), `
			line (0.0000000, 0.0000000) (0.0000000, 18.0000000)
			line (0.0000000, 18.0000000) (-2.0000000, 20.0000000)
			line (-2.0000000, 20.0000000) (-30.0000000, 20.0000000)`},
		// first place, outside: R 5 off both; inside R 3 between journal and face, outside R 2 at its top
		{"fillets", fillet("5") + journal("40", "30", exact) + fillet("3") + shoulder("60") + fillet("2") + journal("60", "10", exact), `
			line (0.0000000, 0.0000000) (0.0000000, 15.0000000)
			ccw (0.0000000, 15.0000000) (-5.0000000, 20.0000000) round (-5.0000000, 15.0000000)
			line (-5.0000000, 20.0000000) (-27.0000000, 20.0000000)
			cw (-27.0000000, 20.0000000) (-30.0000000, 23.0000000) round (-27.0000000, 23.0000000)
			line (-30.0000000, 23.0000000) (-30.0000000, 28.0000000)
			ccw (-30.0000000, 28.0000000) (-32.0000000, 30.0000000) round (-32.0000000, 28.0000000)
			line (-32.0000000, 30.0000000) (-40.0000000, 30.0000000)`},
		// the fillet is as large as the journal: the face has gone
		{"ball end", fillet("20") + journal("40", "30", exact), `
			ccw (0.0000000, 0.0000000) (-20.0000000, 20.0000000) round (-20.0000000, 0.0000000)
			line (-20.0000000, 20.0000000) (-30.0000000, 20.0000000)`},
		// the journal is cut to 39.99: the ball to 19.995, so that it still ends on the axis
		{"ball end of a journal below its nominal", fillet("20") + journal("40", "30", "tolerance = [-0.02, 0]"), `
			ccw (0.0000000, 0.0000000) (-19.9950000, 19.9950000) round (-19.9950000, 0.0000000)
			line (-19.9950000, 19.9950000) (-30.0000000, 19.9950000)`},
		// 3:2 on diameter grows 0.75 on radius per mm: directions (-0.8,0.6); at z -20 the cone is 10+15 = 25.
		// inside R 6 journal to cone: tan(turn/2) = 1/3, 2 on each: -10+2 and (-10,10) + 2 (-0.8,0.6);
		// outside R 6 cone to journal: (-30,25) - 2 (-0.8,0.6) = (-28.4,23.8)
		{"fillets on a cone", journal("20", "10", exact) + fillet("6") +
			out(`kind = "taper"`, `large_at = "back"`, `ratio = "3:2"`, "small = 20", "length = 20", "tolerance = 0.02", `angle_tolerance = "AT8/2"`) +
			fillet("6") + journal("50", "15", exact), `
			line (0.0000000, 0.0000000) (0.0000000, 10.0000000)
			line (0.0000000, 10.0000000) (-8.0000000, 10.0000000)
			cw (-8.0000000, 10.0000000) (-11.6000000, 11.2000000) round (-8.0000000, 16.0000000)
			line (-11.6000000, 11.2000000) (-28.4000000, 23.8000000)
			ccw (-28.4000000, 23.8000000) (-32.0000000, 25.0000000) round (-32.0000000, 19.0000000)
			line (-32.0000000, 25.0000000) (-45.0000000, 25.0000000)`},
		// chamfer 2 at 45° on the front of that cone: at z -2 it stands at 10+1.5, two lower on the face
		{"chamfer on a cone", chamfer("2") + out(`kind = "taper"`, `large_at = "back"`, `ratio = "3:2"`, "small = 20", "length = 20", "tolerance = 0.02", `angle_tolerance = "AT8/2"`), `
			line (0.0000000, 0.0000000) (0.0000000, 9.5000000)
			line (0.0000000, 9.5000000) (-2.0000000, 11.5000000)
			line (-2.0000000, 11.5000000) (-20.0000000, 25.0000000)`},
		// 50 +0.1..+0.2 and 50 -0.2..-0.1: cut to 50.15 and 49.85, the step stays at the nominal plane
		{"two cylinders of one nominal", journal("50", "20", "tolerance = [0.1, 0.2]") + journal("50", "10", "tolerance = [-0.2, -0.1]"), `
			line (0.0000000, 0.0000000) (0.0000000, 25.0750000)
			line (0.0000000, 25.0750000) (-20.0000000, 25.0750000)
			line (-20.0000000, 25.0750000) (-20.0000000, 24.9250000)
			line (-20.0000000, 24.9250000) (-30.0000000, 24.9250000)`},
		// 40 cut to 40.01 meets the cone 1:10 (0.05 on radius per mm) 0.005/0.05 = 0.1 behind the plane
		{"aims cross behind the plane", journal("40", "20", "tolerance = [0, 0.02]") +
			out(`kind = "taper"`, `large_at = "back"`, `ratio = "1:10"`, "small = 40", "length = 20", "tolerance = 0.02", `angle_tolerance = "AT8/2"`), `
			line (0.0000000, 0.0000000) (0.0000000, 20.0050000)
			line (0.0000000, 20.0050000) (-20.1000000, 20.0050000)
			line (-20.1000000, 20.0050000) (-40.0000000, 21.0000000)`},
		// a falling shoulder, and a back cone 1:5 (0.1 on radius per mm) from 30 to 26 over 20
		{"falling", journal("40", "10", exact) + shoulder("30") +
			out(`kind = "taper"`, `large_at = "front"`, `ratio = "1:5"`, "large = 30", "length = 20", "tolerance = 0.02", `angle_tolerance = "AT8/2"`), `
			line (0.0000000, 0.0000000) (0.0000000, 20.0000000)
			line (0.0000000, 20.0000000) (-10.0000000, 20.0000000)
			line (-10.0000000, 20.0000000) (-10.0000000, 15.0000000)
			line (-10.0000000, 15.0000000) (-30.0000000, 13.0000000)`},
		// a pointed end: 1:2 is 0.25 on radius per mm, 5 after 20
		{"a point", out(`kind = "taper"`, `large_at = "back"`, `ratio = "1:2"`, "small = 0", "large = 10", "length = 20", "tolerance = 0.02", `angle_tolerance = "AT8/2"`), `
			line (0.0000000, 0.0000000) (-20.0000000, 5.0000000)`},
		// lengths with [0, 0.2] are cut to 20.1 and 10.1
		{"lengths have aims too", journal("40", "20", exact, "length_tolerance = [0, 0.2]") + shoulder("50") + journal("50", "10", exact, "length_tolerance = [0, 0.2]"), `
			line (0.0000000, 0.0000000) (0.0000000, 20.0000000)
			line (0.0000000, 20.0000000) (-20.1000000, 20.0000000)
			line (-20.1000000, 20.0000000) (-20.1000000, 25.0000000)
			line (-20.1000000, 25.0000000) (-30.2000000, 25.0000000)`},
		{"ends from the front", journal("40", "20", exact) + shoulder("50") + out(`kind = "journal"`, "diameter = 50", exact, "end_from_front = 30", "end_tolerance = [-0.2, 0]"), `
			line (0.0000000, 0.0000000) (0.0000000, 20.0000000)
			line (0.0000000, 20.0000000) (-20.0000000, 20.0000000)
			line (-20.0000000, 20.0000000) (-20.0000000, 25.0000000)
			line (-20.0000000, 25.0000000) (-29.9000000, 25.0000000)`},
		// [edges] 0.4 means 0.2 to 0.4: 0.3 is cut, also at the front; not where the turn is 30° or less
		{"edge breaks", "[edges]\noutside = 0.4\n" + journal("40", "20", exact) + shoulder("50") + journal("50", "10", exact) + shoulder("44"), `
			line (0.0000000, 0.0000000) (0.0000000, 19.7000000)
			line (0.0000000, 19.7000000) (-0.3000000, 20.0000000)
			line (-0.3000000, 20.0000000) (-20.0000000, 20.0000000)
			line (-20.0000000, 20.0000000) (-20.0000000, 24.7000000)
			line (-20.0000000, 24.7000000) (-20.3000000, 25.0000000)
			line (-20.3000000, 25.0000000) (-29.7000000, 25.0000000)
			line (-29.7000000, 25.0000000) (-30.0000000, 24.7000000)
			line (-30.0000000, 24.7000000) (-30.0000000, 22.0000000)`},
	} {
		t.Run(c.name, func(t *testing.T) { contour(t, good(t, c.body), c.want) })
	}
}

func TestRows(t *testing.T) {
	p := good(t, "[edges]\noutside = 0.4\n"+chamfer("2")+journal("40", "20")+shoulder("50")+journal("50", "10", `name = "seat"`)+
		fillet("1.6")+shoulder("60")+journal("60", "10")+chamfer("1"))
	assert.Equal(t, []string{"front face", "chamfer 1", "journal 1", "corner before shoulder 1", "shoulder 1", "edge 1", "seat", "fillet 1",
		"shoulder 2", "edge 2", "journal 3", "chamfer 2"}, rowNames(p))
	assert.Equal(t, 40.0, p.Length)

	// the edge behind the last feature is another set-up's
	last := row(t, p, "chamfer 2")
	assert.Equal(t, -1, last.Setup)
	near(t, pt(-39, 30), last.Piece.From)
	near(t, pt(-40, 29), last.Piece.To)
	near(t, pt(-40, 30), row(t, p, "journal 3").Piece.To)

	// corner zones: nose 0.4 at a square corner is 0.4 on each side; the fillet's
	// upper limit is 1.6 + 0.2 (medium, edges)
	corner := row(t, p, "corner before shoulder 1")
	assert.Equal(t, Size{High: 0.4}, corner.Fillet)
	near(t, pt(-20, 20), corner.Piece.From)
	near(t, pt(-19.6, 20), row(t, p, "journal 1").Judged.To)
	near(t, pt(-20, 20.4), row(t, p, "shoulder 1").Judged.From)
	near(t, pt(-28.4, 25), row(t, p, "seat").Piece.To)
	near(t, pt(-28.2, 25), row(t, p, "seat").Judged.To)
	near(t, pt(-30, 26.8), row(t, p, "shoulder 2").Judged.From)

	edge := row(t, p, "edge 1")
	assert.InDelta(t, 0.2, edge.Width.Low, 1e-12)
	assert.InDelta(t, 0.3, edge.Width.Aim, 1e-12)
	assert.InDelta(t, 0.4, edge.Width.High, 1e-12)

	// planes: 0.2 either way (medium, 6 to 30 mm) each, and they add up
	assert.InDelta(t, -20.2, row(t, p, "shoulder 1").Z.Low, 1e-12)
	assert.InDelta(t, -29.6, row(t, p, "shoulder 2").Z.High, 1e-12)
	assert.InDelta(t, -40.6, row(t, p, "journal 3").ZTo.Low, 1e-12)
}

func TestCornerZoneOblique(t *testing.T) {
	// journal to the cone 3:4 above: tan(turn/2) = 1/3, most 0.9: zone 0.3;
	// along the cone that is (-0.24, 0.18)
	p := good(t, "[edges]\ninside_at_most = 0.9\n"+journal("20", "10", "tolerance = 0.02")+
		out(`kind = "taper"`, `large_at = "back"`, `ratio = "3:2"`, "small = 20", "length = 20", "tolerance = 0.02", `angle_tolerance = "AT8/2"`))
	near(t, pt(-9.7, 10), row(t, p, "journal 1").Judged.To)
	near(t, pt(-10.24, 10.18), row(t, p, "taper 1").Judged.From)

	// a groove floor of 1 mm with 0.9 from both sides: nothing left to judge
	p = good(t, "[edges]\ninside_at_most = 0.9\n"+journal("20", "10")+shoulder("18")+journal("18", "1")+shoulder("20")+journal("20", "5"))
	floor := row(t, p, "journal 2")
	assert.Equal(t, floor.Judged.From, floor.Judged.To)
	assert.InDelta(t, 1, floor.Piece.Length(), 1e-12)

	// a chamfer 2 in an inside corner: two corners of 45 degrees, tan 22.5° = 0.41421356
	p = good(t, "[edges]\ninside_at_most = 1\n"+journal("40", "20", "tolerance = 0.02")+chamfer("2")+shoulder("60")+journal("60", "10"))
	near(t, pt(-18+0.41421356237, 20), row(t, p, "journal 1").Judged.To)
	near(t, pt(-20, 22.41421356237), row(t, p, "shoulder 1").Judged.From)
}

func TestSizes(t *testing.T) {
	// 50 k6 is +0.018/+0.002: aim 50.010, on radius 25.005
	r := row(t, good(t, journal("50", "40", `tolerance = "k6"`)), "journal 1").Radius
	assert.InDelta(t, 25.001, r.Low, 1e-12)
	assert.InDelta(t, 25.005, r.Aim, 1e-12)
	assert.InDelta(t, 25.009, r.High, 1e-12)
	assert.Equal(t, "k6", r.Class)
	// an aim of one's own
	r = row(t, good(t, journal("50", "40", `tolerance = "k6"`, "aim = 50.004")), "journal 1").Radius
	assert.InDelta(t, 25.002, r.Aim, 1e-12)
	// the general class: 0.3 either way on diameter
	r = row(t, good(t, journal("50", "40")), "journal 1").Radius
	assert.InDelta(t, 24.85, r.Low, 1e-12)
	assert.True(t, r.Assumed)

	p := good(t, journal("38", "10")+out(`name = "cone"`, `kind = "taper"`, `large_at = "back"`, `ratio = "1:10"`, "small = 38", "length = 70",
		"gauge = { diameter = 44, from_small = 60, tolerance = [-0.02, 0] }", `angle_tolerance = "+AT6"`))
	c := row(t, p, "cone").Cone
	// 43.99 on diameter, 60 behind the small end at -10
	assert.InDelta(t, 21.995, c.Gauge.Aim, 1e-12)
	assert.InDelta(t, -70, c.GaugeZ, 1e-12)
	// atan(1/20) = 0.0499583957 rad; AT6 over 70 is 160 µrad included: 0 to 80 µrad half, aim 40
	assert.InDelta(t, 0.0499583957, c.HalfAngle.Low, 1e-9)
	assert.InDelta(t, 0.0499983957, c.HalfAngle.Aim, 1e-9)
	assert.InDelta(t, 0.0500383957, c.HalfAngle.High, 1e-9)
	// large end behind: the radius falls as z rises; tan grows by (1 + tan²) 40e-6
	assert.InDelta(t, -(0.05 + 40.1e-6), c.Slope.Aim, 1e-9)
	assert.Less(t, c.Slope.Low, c.Slope.Aim)
	assert.Less(t, c.Slope.Aim, c.Slope.High)
	assert.False(t, c.OffMetal)

	// both ways: the slope of the ratio stays exact
	p = good(t, out(`kind = "taper"`, `large_at = "front"`, `ratio = "7:24"`, "large = 50", "length = 60", "tolerance = 0.02", `angle_tolerance = { included = 20, unit = "sec" }`))
	c = row(t, p, "taper 1").Cone
	assert.Equal(t, 7.0/48, c.Slope.Aim)
	assert.InDelta(t, 10.0/3600, geom.Degrees(c.HalfAngle.High-c.HalfAngle.Aim), 1e-9)
	assert.Zero(t, c.GaugeZ)
	assert.True(t, c.LargeFront)
	assert.Contains(t, p.String(), "gauge plane: at the large end")

	// the gauge plane 5 in front of the part
	p = good(t, out(`kind = "taper"`, `large_at = "back"`, `ratio = "1:10"`, "length = 60", "gauge = { diameter = 40, from_small = -5, tolerance = 0.02 }", `angle_tolerance = "AT6/2"`))
	c = row(t, p, "taper 1").Cone
	assert.True(t, c.OffMetal)
	assert.InDelta(t, 5, c.GaugeZ, 1e-12)
	near(t, pt(0, 20.25), row(t, p, "taper 1").Piece.From) // 20 + 5/20

	// from the front face of the part, whatever the length's aim
	p = good(t, journal("40", "10", "length_tolerance = [0, 0.4]")+out(`kind = "taper"`, `large_at = "back"`, `ratio = "1:10"`, "small = 40", "length = 60",
		"gauge = { diameter = 44, from_front = 50, tolerance = 0.02 }", `angle_tolerance = "AT6/2"`))
	assert.InDelta(t, -50, row(t, p, "taper 1").Cone.GaugeZ, 1e-12)

	// an aim of one's own for both
	p = good(t, out(`kind = "taper"`, `large_at = "back"`, `ratio = "1:10"`, "length = 60", "gauge = { diameter = 40, from_small = 0, tolerance = 0.02 }",
		`angle_tolerance = { half = [-60, 60], unit = "sec" }`, `aim = { gauge_diameter = 40.01, half_angle = "2°52'" }`))
	c = row(t, p, "taper 1").Cone
	assert.InDelta(t, 20.005, c.Gauge.Aim, 1e-12)
	assert.InDelta(t, 2+52.0/60, geom.Degrees(c.HalfAngle.Aim), 1e-9)
	assert.InDelta(t, -math.Tan((2+52.0/60)*math.Pi/180), c.Slope.Aim, 1e-12)
}

func TestInch(t *testing.T) {
	text := strings.Replace(head, `"mm"`, `"inch"`, 1)
	text = strings.Replace(text, "diameter = 100\nlength = 300", "diameter = 4\nlength = 12", 1)
	p, found := readText(text + journal("1.125", "0.5", "tolerance = 0.002") + shoulder("2") + journal("2", "1", `tolerance = "h7"`))
	require.NotNil(t, p, "%v", found)
	near(t, pt(-12.7, 14.2875), row(t, p, "journal 1").Piece.To)
	// 2 in = 50.8 mm, h7: -30 µm on diameter
	assert.InDelta(t, 25.4-0.015, row(t, p, "journal 2").Radius.Low, 1e-12)
	assert.InDelta(t, 50.8, p.Stock.Radius, 1e-12)
}

func TestSetups(t *testing.T) {
	p := good(t, journal("40", "20")+shoulder("50")+journal("50", "20", `name = "seat"`)+shoulder("30")+journal("30", "10", `name = "stub"`)+`
[[setup]]
name = "front"
upto = "seat"
hold = { by = "chuck", on = "stub", grip = 8 }
[[setup]]
name = "other end"
face = "back"
`)
	assert.Len(t, p.Setups, 1)
	assert.Equal(t, -1, row(t, p, "stub").Setup)
	chain, owner := p.Contour(0)
	assert.Len(t, chain, 4)
	assert.Equal(t, "seat", p.Features[owner[3]].Name)
	assert.Equal(t, "stub", p.Setups[0].Hold.On)

	// zero at the jaws: 300 long, 60 gripped: the face stands 240 from them
	p = good(t, journal("40", "20")+"[[setup]]\nhold = { on = \"stock\", grip = 60 }\nzero = \"chuck\"\n")
	assert.Equal(t, 240.0, p.Setups[0].Zero)
}

func TestTube(t *testing.T) {
	p, found := readText(strings.Replace(head, "front = 0", "front = 0\nbore = 20", 1) + journal("40", "20"))
	require.NotNil(t, p, "%v", found)
	near(t, pt(0, 10), row(t, p, FrontFace).Judged.From)
	near(t, pt(0, 0), row(t, p, FrontFace).Piece.From)
}

func TestStarter(t *testing.T) {
	p, found := readText(string(Starter()))
	require.Empty(t, found)
	require.NotNil(t, p)
	assert.Equal(t, "Pump shaft, coupling end", p.Title)
	assert.Contains(t, rowNames(p), "coupling cone")
	// its commented lines read too, once the marks are taken off
	open := regexpComment.ReplaceAllString(string(Starter()), "$1")
	p, found = readText(open)
	require.Empty(t, found)
	require.NotNil(t, p)
}

func TestExamplesRead(t *testing.T) {
	files, err := filepath.Glob("../testdata/parts/*/*.toml")
	require.NoError(t, err)
	require.NotEmpty(t, files)
	for _, path := range files {
		b, err := os.ReadFile(path)
		require.NoError(t, err)
		open := func(name string) (*finding.Text, error) {
			b, err := os.ReadFile(filepath.Join(filepath.Dir(path), name))
			return finding.NewText(name, b), err
		}
		var l finding.List
		p := Read(finding.NewText(filepath.ToSlash(path), b), open, &l)
		for _, f := range l.Sorted() {
			t.Logf("%s: %s", f.Span.Place(), f.Message)
		}
		require.NotNil(t, p, path)
		chain, _ := p.Contour(0)
		assert.LessOrEqual(t, chain.Gap(), geom.Near, path)
	}
}

func TestDigest(t *testing.T) {
	one := good(t, journal("40", "20", "tolerance = 0.02")).Digest
	assert.Len(t, one, 16)
	same := good(t, "\n# another layout\n[[outside]]\ntolerance=0.020\nlength   = 2e1\nkind = 'journal'\ndiameter = 40.0\n").Digest
	assert.Equal(t, one, same)
	assert.NotEqual(t, one, good(t, journal("40", "20", "tolerance = 0.021")).Digest)
}

func TestLooseCone(t *testing.T) {
	_, found := readText(head + out(`kind = "taper"`, `large_at = "back"`, `ratio = "1:10"`, "small = 38", "length = 70"))
	require.Len(t, found, 1)
	assert.Equal(t, LooseCone, found[0].Code)
	assert.Equal(t, finding.Warning, found[0].Severity)
	// tan 20' = 0.00581783: tan(a + 20') = 0.05581783/(1 - 0.05 x 0.00581783) = 0.05583407;
	// 2 x 70 x 0.00583407 = 0.8168
	assert.Contains(t, found[0].Message, "0.8168 mm on diameter over 70.0000 mm")
}

// regexpComment finds commented-out lines of TOML: a key or a header.
var regexpComment = regexp.MustCompile(`(?m)^# ((?:\w+ +=|\[\[).*)$`)
