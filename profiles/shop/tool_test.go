package shop

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"taperwright/profiles/geom"
)

// one reads a file with one [[tool]] that holds lines.
func one(t testing.TB, lines string) Tool {
	t.Helper()
	s, found := read(t, "[[tool]]\nstation = 3\n"+lines+"\n")
	require.Empty(t, found, lines)
	require.Len(t, s.Tools, 1, lines)
	return s.Tools[0]
}

// Angles in deg. -1: not given.
func TestTools(t *testing.T) {
	for _, c := range []struct {
		lines                      string
		nose, kappa, corner, minor float64
		edge                       float64
		right, inside, free, round bool
		tipX, tipZ                 int
	}{
		// 95 + 80 + 5 = 180; 93 + 55 + 32; 93 + 35 + 52
		{"insert = \"CNMG120408\"\nholder = \"PCLNR2525M12\"", 0.8, 95, 80, 5, 12.895918, true, false, false, false, -1, -1},
		{"insert = \"DNMG150404\"\nholder = \"PDJNR2525M15\"", 0.4, 93, 55, 32, 15.503837, true, false, false, false, -1, -1},
		{"insert = \"DNMG150404\"\nholder = \"PDJNL2525M15\"", 0.4, 93, 55, 32, 15.503837, false, false, false, false, -1, 1},
		{"insert = \"CCMT09T304\"\nholder = \"S20S-SCLCR09\"\nside = \"inside\"", 0.4, 95, 80, 5, 9.671938, true, true, false, false, 1, -1},
		{"insert = \"CCMT09T304\"\nholder = \"S20S-SCLCL09\"\nside = \"inside\"", 0.4, 95, 80, 5, 9.671938, false, true, false, false, 1, 1},
		// the measured nose radius, no finding
		{"insert = \"DNMG150404\"\nholder = \"PDJNR2525M15\"\nnose_radius = 0.397", 0.397, 93, 55, 32, 15.503837, true, false, false, false, -1, -1},
		// by keys alone; any two of the three angles
		{"nose_radius = 0.8\ncutting_edge_angle = 95\nincluded_angle = 80\nedge_length = 12.9", 0.8, 95, 80, 5, 12.9, true, false, false, false, -1, -1},
		{"nose_radius = 0.8\ncutting_edge_angle = 95\nminor_edge_angle = 5", 0.8, 95, 80, 5, 0, true, false, false, false, -1, -1},
		{"nose_radius = 0.8\nincluded_angle = 80\nminor_edge_angle = 5", 0.8, 95, 80, 5, 0, true, false, false, false, -1, -1},
		{"nose_radius = 0.8\ncutting_edge_angle = 95\nincluded_angle = 80\nminor_edge_angle = 5\nhand = \"left\"", 0.8, 95, 80, 5, 0, false, false, false, false, -1, 1},
		// exactly 180: the minor edge stands along the work
		{"nose_radius = 0.8\ncutting_edge_angle = 90\nincluded_angle = 90", 0.8, 90, 90, 0, 0, true, false, false, false, -1, -1},
		// one angle or none: the main edge is assumed at 90, the minor edge not known
		{"nose_radius = 0.8", 0.8, 90, -1, -1, 0, true, false, true, false, -1, -1},
		{"nose_radius = 0.8\ncutting_edge_angle = 93", 0.8, 93, -1, -1, 0, true, false, true, false, -1, -1},
		{"insert = \"CNMG120408\"", 0.8, 90, 80, -1, 12.895918, true, false, true, false, -1, -1},
		// a facing holder needs the angle along the work
		{"insert = \"CNMG120408\"\nholder = \"PCKNR2525M12\"\ncutting_edge_angle = 85", 0.8, 85, 80, 15, 12.895918, true, false, false, false, -1, -1},
		{"insert = \"RCMT1204M0\"", 6, 90, 180, -1, 0, true, false, false, true, -1, -1},
		{"insert = \"RCMT1204M0\"\ntip = \"centre\"", 6, 90, 180, -1, 0, true, false, false, true, 0, 0},
		// neutral: the programmed point must be said
		{"insert = \"VNMG160404\"\nholder = \"MVVNN2525M16\"\ntip = { x = \"-\", z = \"0\" }", 0.4, 72.5, 35, 72.5, 16.606331, true, false, false, false, -1, 0},
		{"nose_radius = 0.8\ntip = 3", 0.8, 90, -1, -1, 0, true, false, true, false, -1, -1},
		{"nose_radius = 0.8\ntip = 2", 0.8, 90, -1, -1, 0, true, false, true, false, 1, -1},
		{"nose_radius = 0.8\ntip = 8", 0.8, 90, -1, -1, 0, true, false, true, false, -1, 0},
		{"nose_radius = 0.2\nkind = \"groove\"\nwidth = 3\nreference = \"front\"", 0.2, 90, -1, -1, 0, true, false, true, false, -1, 1},
		{"nose_radius = 0.2\nkind = \"groove\"\nwidth = 3\nreference = \"back\"", 0.2, 90, -1, -1, 0, true, false, true, false, -1, -1},
	} {
		tool := one(t, c.lines)
		near(t, c.nose, tool.Nose, 1e-12, c.lines)
		near(t, c.kappa, geom.Degrees(tool.CuttingAngle.Value), 1e-9, c.lines)
		assert.Equal(t, c.corner >= 0, tool.Included.Given, c.lines)
		if c.corner >= 0 {
			near(t, c.corner, geom.Degrees(tool.Included.Value), 1e-9, c.lines)
		}
		if c.minor >= 0 {
			near(t, c.minor, geom.Degrees(tool.MinorAngle()), 1e-9, c.lines)
		}
		near(t, c.edge, tool.MainReach.Value, 5e-7, c.lines)
		near(t, c.edge, tool.MinorReach.Value, 5e-7, c.lines)
		assert.Equal(t, []any{c.right, c.inside, c.free, c.round, c.tipX, c.tipZ},
			[]any{tool.Right, tool.Inside, tool.MinorFree, tool.Round, tool.TipX, tool.TipZ}, c.lines)
	}
}

// Every key of [[tool]] once, and what it becomes inside.
func TestEveryKeyOfTool(t *testing.T) {
	s, found := read(t, `[[tool]]
station = 5
offset = 15
purpose = "finish"
kind = "turn"
side = "inside"
insert = "CCMT09T304"
holder = "S20S-SCLCR09"
nose_radius = 0.41
edge_length = 9.6
included_angle = 80
cutting_edge_angle = 95
minor_edge_angle = 5
hand = "right"
bar_diameter = 20
reach = 80
tip = { x = "+", z = "-" }
spindle = "M03"
surface_speed = 140
feed = 0.1
depth = 1
least_depth = 0.2
skin = 0.15
wear = { diameter = -0.02, z = 0.05 }
[[tool]]
station = 6
kind = "groove"
nose_radius = 0.2
shank = 25
width = 3
reference = "back"
rpm = 400
`)
	require.Empty(t, found)
	require.Len(t, s.Tools, 2)
	a, b := s.Tools[0], s.Tools[1]
	assert.Equal(t, []any{5, 15, "finish", "turn", true, true, 1, -1, "M3", "T5 offset 15 (CCMT09T304, R0.41 mm)"},
		[]any{a.Station, a.Offset, a.Purpose, a.Kind, a.Inside, a.Right, a.TipX, a.TipZ, a.Spindle.Value, a.Name})
	for _, c := range []struct{ want, got float64 }{{0.41, a.Nose}, {9.6, a.MainReach.Value}, {10, a.BarRadius.Value}, {80, a.Reach.Value}, {140, a.SurfaceSpeed.Value},
		{0.1, a.FeedRate.Value}, {1, a.Depth.Value}, {0.2, a.LeastDepth.Value}, {0.15, a.Skin.Value}, {-0.01, a.Wear.Value.R}, {0.05, a.Wear.Value.Z},
		{3, b.Width.Value}, {25, b.Shank.Value}, {400, b.RPM.Value}, {0.3, b.LeastDepth.Value}, {0.25, b.Skin.Value}} {
		near(t, c.want, c.got, 1e-12)
	}
	assert.Equal(t, "shop.toml:9", a.NoseFrom.Place())
	assert.Equal(t, "shop.toml:17", a.Tip.Place())
	assert.Equal(t, []any{6, 6, "both", "groove", "back", false, false}, []any{b.Station, b.Offset, b.Purpose, b.Kind, b.Reference.Value, b.LeastDepth.Given, b.Skin.Given})
	written := map[string]bool{}
	for _, key := range []string{"station", "offset", "purpose", "kind", "side", "insert", "holder", "nose_radius", "edge_length", "included_angle", "cutting_edge_angle",
		"minor_edge_angle", "hand", "bar_diameter", "reach", "tip", "spindle", "surface_speed", "feed", "depth", "least_depth", "skin", "wear", "shank", "width", "reference", "rpm"} {
		written[key] = true
	}
	for _, k := range toolKeys {
		assert.True(t, written[k.Name], "%s has no case", k.Name)
	}
}

// A key beats a designation; what it contradicts is said in a warning and the
// tool stays usable.
func TestKeysBeatDesignations(t *testing.T) {
	s, found := read(t, "[[tool]]\nstation = 1\ninsert = \"CNMG120408\"\nholder = \"PCLNR2525M12\"\nminor_edge_angle = 12\n")
	require.Len(t, found, 1)
	assert.Contains(t, found[0], "warning: minor_edge_angle is 12 deg here, but the holder says 5 deg; the key is used")
	near(t, 88, geom.Degrees(s.Tools[0].CuttingAngle.Value), 1e-9) // 180 - 80 - 12
	s, found = read(t, "[[tool]]\nstation = 1\ninsert = \"CNMG120408\"\nholder = \"PCLNR2525M12\"\ncutting_edge_angle = 95\nminor_edge_angle = 30\n")
	require.Len(t, found, 1)
	near(t, 55, geom.Degrees(s.Tools[0].Included.Value), 1e-9) // 180 - 95 - 30
	s, found = read(t, "[[tool]]\nstation = 1\ninsert = \"CNMG120408\"\nholder = \"PCLNR2525M12\"\nhand = \"left\"\n")
	require.Len(t, found, 1)
	assert.False(t, s.Tools[0].Right)
}

func TestTwoOffsetsOfOneStation(t *testing.T) {
	s, found := read(t, "[[tool]]\nstation = 3\nnose_radius = 0.4\n[[tool]]\nstation = 3\noffset = 13\nnose_radius = 0.4\n")
	require.Empty(t, found)
	assert.Len(t, s.Tools, 2)
}

func TestNoseOnly(t *testing.T) {
	tool := NoseOnly(0.8)
	assert.Equal(t, []any{0.8, true, true, false, false, -1, -1, "both", "turn"},
		[]any{tool.Nose, tool.Right, tool.MinorFree, tool.CuttingAngle.Given, tool.Included.Given, tool.TipX, tool.TipZ, tool.Purpose, tool.Kind})
	assert.Equal(t, math.Pi/2, tool.CuttingAngle.Value)
	assert.Zero(t, tool.MainReach.Value)
}
