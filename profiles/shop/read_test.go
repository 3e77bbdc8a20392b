package shop

import (
	"bytes"
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"taperwright/profiles/finding"
	"taperwright/profiles/geom"
	"taperwright/profiles/source"
)

// read reads a shop file; the findings are short lines.
func read(t testing.TB, text string) (*Shop, []string) {
	t.Helper()
	var l finding.List
	table, ok := source.Parse(finding.NewText("shop.toml", []byte(text)), &l)
	require.True(t, ok, "%v", l.Sorted())
	s := Read(table, &l)
	var b bytes.Buffer
	require.NoError(t, finding.Write(&b, l.Sorted(), finding.Short))
	if b.Len() == 0 {
		return s, nil
	}
	return s, strings.Split(strings.TrimSuffix(b.String(), "\n"), "\n")
}

// near refuses NaN, which assert.InDelta passes.
func near(t testing.TB, want, got, tol float64, about ...any) {
	t.Helper()
	if d := got - want; !(d <= tol && -d <= tol) {
		t.Errorf("want %v, got %v (%v)", want, got, about)
	}
}

// Every key of [machine]: its line, and what it becomes inside (diameters are
// halved, inch is 25.4 mm).
var machineCases = []struct {
	key, line string
	got       func(m *Machine) any
	want      any
}{
	{"name", `name = "bay 2"`, func(m *Machine) any { return m.Name }, "bay 2"},
	{"words", `words = "g80-turns"`, func(m *Machine) any { return m.Column.Value }, "g80-turns"},
	{"word", `word = { speed_cap = "G92" }`, func(m *Machine) any { return m.Words[SpeedCap] }, "G92"},
	{"harmless", `harmless = ["M41", "M042"]`, func(m *Machine) any { return m.Harmless }, []string{"M41", "M42"}},
	{"x", `x = "radius"`, func(m *Machine) any { return m.XIsDiameter.Value }, false},
	{"unit", `unit = "inch"`, func(m *Machine) any { return [2]any{m.Unit.Value, m.Decimals.Value} }, [2]any{Inch, 4}},
	{"missing_point", `missing_point = "increment"`, func(m *Machine) any { return m.MissingPoint.Value }, Increment},
	{"feed", `feed = "per-minute"`, func(m *Machine) any { return m.Feed.Value }, FeedPerMinute},
	{"speed", `speed = "surface"`, func(m *Machine) any { return m.Speed.Value }, SurfaceSpeed},
	{"dwell_p", `dwell_p = "s"`, func(m *Machine) any { return m.DwellP.Value }, "s"},
	{"slash", `slash = "skip"`, func(m *Machine) any { return m.Slash.Value }, "skip"},
	{"increment_x", `increment_x = "radius"`, func(m *Machine) any { return m.IncrementX.Value }, "radius"},
	{"increments_u_w", `increments_u_w = false`, func(m *Machine) any { return m.IncrementsUW }, Setting[bool]{false, true, finding.Span{}}},
	{"words_after_motion", `words_after_motion = false`, func(m *Machine) any { return m.StopsAfter }, Setting[bool]{false, true, finding.Span{}}},
	{"offset_digits", `offset_digits = 0`, func(m *Machine) any { return m.OffsetDigits }, Setting[int]{0, true, finding.Span{}}},
	{"bare_home", `bare_home = "nothing"`, func(m *Machine) any { return m.BareHome.Value }, "nothing"},
	{"long_arc", `long_arc = "none"`, func(m *Machine) any { return m.LongArc.Value }, "none"},
	{"tool_side", `tool_side = "front"`, func(m *Machine) any { return m.ToolSide.Value }, "front"},
	{"arc_sense", `arc_sense = "mirrored"`, func(m *Machine) any { return m.ArcSense.Value }, "mirrored"},
	{"spindle", `spindle = "M04"`, func(m *Machine) any { return m.Spindle.Value }, "M4"},
	{"top_speed", `top_speed = 2_800`, func(m *Machine) any { return m.TopSpeed.Value }, 2800.0},
	{"change", `change = { diameter = 200, z = 150 }`, func(m *Machine) any { return m.Change.Value }, Place{R: 100, Z: 150}},
	{"home", `home = { diameter = 300, z = -4.5 }`, func(m *Machine) any { return m.HomeAt.Value }, Place{R: 150, Z: -4.5}},
	{"travel", `travel = { diameter = [-20, 300], z = [-500, 10] }`, func(m *Machine) any { return m.Travel.Value }, [2]Place{{R: -10, Z: -500}, {R: 150, Z: 10}}},
	{"frames", `frames = { G055 = { diameter = 0, z = -120 } }`, func(m *Machine) any { return m.Frames }, map[string]Place{"G55": {Z: -120}}},
	{"decimals", `decimals = 2`, func(m *Machine) any { return m.Decimals.Value }, 2},
	{"compensation", `compensation = "control"`, func(m *Machine) any { return m.Compensation.Value }, "control"},
	{"control", `control = { start = "square", corner = "arc", look_ahead = 2, short_inside = "alarm" }`,
		func(m *Machine) any {
			return []any{m.Control.Start.Value, m.Control.Corner.Value, m.Control.LookAhead.Value, m.Control.Short.Value}
		}, []any{"square", "arc", 2, "alarm"}},
	{"arcs", `arcs = "r"`, func(m *Machine) any { return m.Arcs.Value }, "r"},
	{"arc_tolerance", `arc_tolerance = 0.01`, func(m *Machine) any { return [2]float64{m.ArcTolerance.Value, m.ArcToleranceIn(Inch)} }, [2]float64{0.01, 0.01}},
	{"rapid_path", `rapid_path = "dog-leg"`, func(m *Machine) any { return m.RapidPath.Value }, "dog-leg"},
	{"rapid_rate", `rapid_rate = { x = 8000, z = 12000 }`, func(m *Machine) any { return m.RapidRate.Value }, [2]float64{8000, 12000}},
	{"block_numbers", `block_numbers = 0`, func(m *Machine) any { return m.BlockNumbers }, Setting[int]{0, true, finding.Span{}}},
	{"comments", `comments = "semicolon"`, func(m *Machine) any { return m.Comments.Value }, "semicolon"},
	{"safe_start", `safe_start = "g054  G40"`, func(m *Machine) any { return m.SafeStart.Value }, "G54 G40"},
	{"chuck", `chuck = { diameter = 200, through_hole = 52, jaw_reach = 40 }`, func(m *Machine) any { c := *m.Chuck; c.Span = finding.Span{}; return c }, Chuck{Radius: 100, ThroughHole: 26, JawReach: 40}},
	{"centre", `centre = { body_diameter = 42 }`, func(m *Machine) any { c := *m.Centre; c.Span = finding.Span{}; return c }, Centre{PointAngle: geom.Radians(60), BodyRadius: 21}},
}

func TestEveryKeyOfMachine(t *testing.T) {
	tried := map[string]bool{}
	for _, c := range machineCases {
		tried[c.key] = true
		s, found := read(t, "[machine]\n"+c.line+"\n")
		require.Empty(t, found, c.key)
		got := c.got(&s.Machine)
		switch v := got.(type) { // the span is held below
		case Setting[bool]:
			v.From = finding.Span{}
			got = v
		case Setting[int]:
			v.From = finding.Span{}
			got = v
		}
		assert.Equal(t, c.want, got, c.key)
	}
	for _, k := range machineKeys {
		assert.True(t, tried[k.Name], "%s has no case", k.Name)
		assert.NotEmpty(t, k.Help, k.Name)
		assert.NotEmpty(t, k.Type, k.Name)
	}
}

func TestSettingsKnowWhereTheyStand(t *testing.T) {
	s, found := read(t, "unit = \"mm\"\n[machine]\nx = \"radius\"\n  feed = 'per-minute'\n")
	require.Empty(t, found)
	m := s.Machine
	assert.Equal(t, "shop.toml:3", m.XIsDiameter.From.Place())
	assert.Equal(t, finding.Position{Line: 4, Column: 10}, m.Feed.From.From())
	assert.Equal(t, "'per-minute'", m.Feed.From.String())
	assert.Equal(t, "[machine]", m.Span.String())
	assert.False(t, m.Speed.Given)
	assert.False(t, m.Speed.From.Valid())
}

func TestUnits(t *testing.T) {
	s, found := read(t, `unit = "inch"
[machine]
change = { diameter = 8, z = 6 }
rapid_rate = { x = 100, z = 200 }
arc_tolerance = 0.0003
[machine.chuck]
diameter = 8
[[tool]]
station = 1
nose_radius = 0.03125
surface_speed = 600
feed = 0.01
depth = 0.1
least_depth = 0.01
skin = 0.02
[stock]
diameter = 2.5
length = 12
front = 0.125
`)
	require.Empty(t, found)
	m := s.Machine
	assert.Equal(t, Inch, m.Unit.Value, "what is posted follows the file, as an assumption")
	assert.False(t, m.Unit.Given)
	assert.Equal(t, 4, m.Decimals.Value)
	near(t, 101.6, m.Change.Value.R, 1e-12) // 8 in / 2 * 25.4
	near(t, 152.4, m.Change.Value.Z, 1e-12)
	near(t, 2540, m.RapidRate.Value[0], 1e-9)
	near(t, 0.00762, m.ArcTolerance.Value, 1e-15)
	near(t, 101.6, m.Chuck.Radius, 1e-12)
	tool := s.Tools[0]
	near(t, 0.79375, tool.Nose, 1e-15)             // 1/32 in
	near(t, 182.88, tool.SurfaceSpeed.Value, 1e-9) // 600 ft/min * 0.3048
	near(t, 0.254, tool.FeedRate.Value, 1e-15)
	near(t, 2.54, tool.Depth.Value, 1e-12)
	near(t, 0.254, tool.LeastDepth.Value, 1e-15)
	near(t, 0.508, tool.Skin.Value, 1e-15)
	near(t, 31.75, s.Stock.Radius, 1e-12)
	near(t, 304.8, s.Stock.Length, 1e-9)
	near(t, 3.175, s.Stock.Front, 1e-12)
	near(t, 0.002, mustDefault(t).ArcToleranceIn(MM), 1e-18)
	near(t, 0.00508, mustDefault(t).ArcToleranceIn(Inch), 1e-15) // 0.0002 in
	near(t, 0.00254, Inch.Increment(), 1e-15)
	near(t, 0.001, MM.Increment(), 1e-18)
}

func mustDefault(t testing.TB) *Machine {
	m, ok := Default(DefaultColumn)
	require.True(t, ok)
	return &m
}

func TestNothingGiven(t *testing.T) {
	s, found := read(t, "")
	require.Empty(t, found)
	assert.Equal(t, DefaultColumn, s.Machine.Column.Value)
	assert.False(t, s.Machine.Column.Given)
	assert.Empty(t, s.Tools)
	assert.Nil(t, s.Stock)
	assert.Nil(t, s.Hand)
	assert.Nil(t, s.Machine.Chuck)
}

// A part file's own tables: nothing but the shop's is looked at, and lengths
// are in the part's unit.
func TestReadInAPart(t *testing.T) {
	var l finding.List
	table, ok := source.Parse(finding.NewText("part.toml", []byte("title = 5\nunit = \"mm\"\nstock = 1\n[machine]\nchange = { diameter = 2, z = 1 }\n")), &l)
	require.True(t, ok)
	s := ReadIn(table, Inch, &l)
	assert.Zero(t, l.Len())
	near(t, 25.4, s.Machine.Change.Value.R, 1e-12)
	assert.Equal(t, "part.toml", s.Text.Name)
}

func TestHandLathe(t *testing.T) {
	s, found := read(t, `[hand_lathe]
rest_travel = 75
attachment_length = 250
attachment_rate = "1:4"
set_over = 12
cross_dial = "diameter"
cross_division = 0.05
rest_division = 0.02
backlash = 0.1
`)
	require.Empty(t, found)
	h := s.Hand
	assert.Equal(t, []any{75.0, 250.0, 0.25, 12.0, "diameter", 0.05, 0.02, 0.1},
		[]any{h.RestTravel.Value, h.AttachmentLength.Value, h.AttachmentRate.Value, h.SetOver.Value, h.CrossDial.Value, h.CrossDivision.Value, h.RestDivision.Value, h.Backlash.Value})
}

func TestStarterReadsClean(t *testing.T) {
	s, found := read(t, string(Starter()))
	require.Empty(t, found)
	require.Len(t, s.Tools, 2)
	assert.Equal(t, "T1 (CNMG120408, R0.8 mm)", s.Tools[0].Name)
	// The examples commented out must be true as well: all of them at once.
	var open []string
	for line := range strings.Lines(string(Starter())) {
		if rest, ok := strings.CutPrefix(line, "# "); ok && (strings.Contains(rest, " = ") || strings.HasPrefix(rest, "[")) {
			line = rest
		}
		open = append(open, line)
	}
	s, found = read(t, strings.Join(open, ""))
	require.Empty(t, found)
	require.Len(t, s.Tools, 3)
	assert.True(t, s.Tools[2].Inside)
	near(t, 10, s.Tools[2].BarRadius.Value, 0)
	assert.NotNil(t, s.Machine.Centre)
	assert.True(t, s.Machine.IsHarmless("M41"))
}

func TestKeysNameEveryTable(t *testing.T) {
	seen := map[string]bool{}
	for _, l := range Keys() {
		require.False(t, seen[l.Table], l.Table)
		seen[l.Table] = true
		names := map[string]bool{}
		for _, k := range l.Keys {
			require.False(t, names[k.Name], "%s.%s", l.Table, k.Name)
			names[k.Name] = true
			assert.NotEmpty(t, k.Help, "%s.%s", l.Table, k.Name)
			assert.NotEmpty(t, k.Type, "%s.%s", l.Table, k.Name)
		}
	}
}

// wrong are faults with the one finding each gives: line and column of the
// value, code.
var wrong = []struct{ text, want string }{
	// [machine]
	{"[machine]\nwords = \"g91-turns\"\n", "2:9 unknown-column"},
	{"[machine]\nwords = 5\n", "2:9 wrong-type"},
	{"[machine]\nX = \"radius\"\n", "2:1 case-key"},
	{"[machine]\nwrods = \"g90-turns\"\n", "2:1 unknown-key"},
	{"[machine]\nx = \"diametre\"\n", "2:5 unknown-value"},
	{"[machine]\nword = { speed_limit = \"G92\" }\n", "2:10 unknown-purpose"},
	{"[machine]\nword = { speed_cap = \"G\" }\n", "2:22 malformed-word"},
	{"[machine]\nword = { coolant = [\"M8\", 7] }\n", "2:27 malformed-word"},
	{"[machine]\nword = { feed = \"G0\" }\n", "2:17 word-twice"},
	{"[machine]\nword = { speed_cap = \"G92\", feed_per_rev = \"G92\" }\n", "2:44 word-twice"},
	{"[machine]\nharmless = [\"M41\", \"M3\"]\n", "2:20 harmless-purpose"},
	{"[machine]\nharmless = [\"M41\", \"41\"]\n", "2:20 malformed-word"},
	{"[machine]\nspindle = \"M5\"\n", "2:11 malformed-word"},
	{"[machine]\nspindle = \"reverse\"\n", "2:11 malformed-word"},
	{"[machine]\ntop_speed = 0\n", "2:13 size-range"},
	{"[machine]\ntop_speed = -3000\n", "2:13 size-range"},
	{"[machine]\ntop_speed = 1e9\n", "2:13 size-range"},
	{"[machine]\ntop_speed = nan\n", "2:13 not-finite"},
	{"[machine]\ntop_speed = \"3000\"\n", "2:13 wrong-type"},
	{"[machine]\nchange = { diameter = 200 }\n", "2:10 key-missing"},
	{"[machine]\nchange = { diameter = 200, z = 1e9 }\n", "2:32 size-range"},
	{"[machine]\nchange = { diameter = 200, z = 1, x = 2 }\n", "2:35 unknown-key"},
	{"[machine]\nhome = 300\n", "2:8 wrong-type"},
	{"[machine]\ntravel = { diameter = [300, 0], z = [0, 1] }\n", "2:23 keys-conflict"},
	{"[machine]\ntravel = { diameter = [0, 300] }\n", "2:10 key-missing"},
	{"[machine]\ntravel = { diameter = [0, 300], z = [-500, 100] }\nhome = { diameter = 400, z = 0 }\n", "3:8 keys-conflict"},
	{"[machine]\nframes = { G96 = { diameter = 0, z = 1 } }\n", "2:12 malformed-word"},
	{"[machine]\nframes = { second = { diameter = 0, z = 1 } }\n", "2:12 malformed-word"},
	{"[machine]\ndecimals = 9\n", "2:12 size-range"},
	{"[machine]\ndecimals = 3.0\n", "2:12 wrong-type"},
	{"[machine]\ncontrol = { look_ahead = 0 }\n", "2:26 size-range"},
	{"[machine.control]\ncorners = \"arc\"\n", "2:1 unknown-key"},
	{"[machine]\nrapid_rate = { x = 8000 }\n", "2:14 key-missing"},
	{"[machine]\nrapid_rate = { x = 8000, z = -1 }\n", "2:30 size-range"},
	{"[machine]\narc_tolerance = 5\n", "2:17 size-range"},
	{"[machine]\nsafe_start = \"G40 G28\"\n", "2:14 harmless-purpose"},
	{"[machine]\nsafe_start = \"G40 M77\"\n", "2:14 harmless-purpose"},
	{"[machine]\nsafe_start = \"G40 (x)\"\n", "2:14 malformed-word"},
	{"[machine.chuck]\njaw_reach = 40\n", "1:1 key-missing"},
	{"[machine.chuck]\ndiameter = 50\nthrough_hole = 52\n", "3:16 keys-conflict"},
	{"[machine.centre]\nbody_diameter = 40\npoint_angle = 180\n", "3:15 size-range"},
	{"unit = \"cm\"\n", "1:8 unknown-value"},
	{"macine = 1\n", "1:1 unknown-key"},
	{"machine = 1\n", "1:11 wrong-type"},
	// [[tool]]: the second element, so that the place is its own
	{good + "[[tool]]\nnose_radius = 0.4\n", "4:1 key-missing"},
	{good + "[[tool]]\nstation = 0\nnose_radius = 0.4\n", "5:11 size-range"},
	{good + "[[tool]]\nstation = 1\nnose_radius = 0.4\n", "5:11 tool-twice"},
	{good + "[[tool]]\nstation = 2\n", "5:11 nose-unknown"},
	{good + "[[tool]]\nstation = 2\ninsert = \"CNMG120400\"\n", "6:10 nose-unknown"},
	{good + "[[tool]]\nstation = 2\nnose_radius = -0.4\n", "6:15 size-range"},
	{good + "[[tool]]\nstation = 2\nnose_radius = 0\n", "6:15 size-range"},
	{good + "[[tool]]\nstation = 2\nnose_radius = inf\n", "6:15 not-finite"},
	{good + "[[tool]]\nstation = 2\nnose_radius = 8\nedge_length = 12\nincluded_angle = 55\n", "6:15 nose-too-large"},
	{good + "[[tool]]\nstation = 2\ninsert = \"XNMG120408\"\n", "6:10 insert-code"},
	{good + "[[tool]]\nstation = 2\ninsert = \"CNMG1204\"\n", "6:10 insert-code"},
	{good + "[[tool]]\nstation = 2\ninsert = 120408\n", "6:10 wrong-type"},
	{good + "[[tool]]\nstation = 2\ninsert = \"CNMG120408\"\nholder = \"PCLNR25\"\n", "7:10 holder-code"},
	{good + "[[tool]]\nstation = 2\ninsert = \"CNMG120408\"\nholder = \"PCKNR2525M12\"\n", "7:10 holder-code"},
	{good + "[[tool]]\nstation = 2\ninsert = \"DNMG150404\"\nholder = \"PCLNR2525M12\"\n", "6:10 insert-seat"},
	{good + "[[tool]]\nstation = 2\ninsert = \"CCMT120408\"\nholder = \"PCLNR2525M12\"\n", "6:10 insert-seat"},
	{good + "[[tool]]\nstation = 2\ninsert = \"CNMG160608\"\nholder = \"PCLNR2525M12\"\n", "6:10 insert-seat"},
	{good + "[[tool]]\nstation = 2\ninsert = \"CNMG120408\"\nincluded_angle = 55\n", "7:18 code-contradicted"},
	{good + "[[tool]]\nstation = 2\ninsert = \"CNMG120408\"\nedge_length = 9\n", "7:15 code-contradicted"},
	{good + "[[tool]]\nstation = 2\ninsert = \"CNMG120408\"\nholder = \"PCLNR2525M12\"\nhand = \"left\"\n", "8:8 code-contradicted"},
	{good + "[[tool]]\nstation = 2\ninsert = \"CNMG120408\"\nholder = \"PCLNR2525M12\"\ncutting_edge_angle = 93\n", "8:22 code-contradicted"},
	{good + "[[tool]]\nstation = 2\ninsert = \"CNMG120408\"\nholder = \"PCLNR2525M12\"\nshank = 20\n", "8:9 code-contradicted"},
	{good + "[[tool]]\nstation = 2\nside = \"inside\"\ninsert = \"CNMG120408\"\nholder = \"S25R-PCLNR12\"\nbar_diameter = 20\n", "9:16 code-contradicted"},
	{good + "[[tool]]\nstation = 2\ninsert = \"CNMG120408\"\nholder = \"PCLNR2525M12\"\nminor_edge_angle = 12\n", "8:20 code-contradicted"},
	{good + "[[tool]]\nstation = 2\nnose_radius = 0.8\ncutting_edge_angle = 107.5\nincluded_angle = 80\n", "7:22 edge-angles"},
	{good + "[[tool]]\nstation = 2\nnose_radius = 0.8\ncutting_edge_angle = 95\nincluded_angle = 80\nminor_edge_angle = 32\n", "9:20 edge-angles"},
	{good + "[[tool]]\nstation = 2\nnose_radius = 0.8\nincluded_angle = 180\n", "7:18 size-range"},
	{good + "[[tool]]\nstation = 2\nnose_radius = 0.8\nhand = \"neutral\"\n", "7:8 tip-point"},
	{good + "[[tool]]\nstation = 2\nnose_radius = 0.8\ntip = 12\n", "7:7 tip-point"},
	{good + "[[tool]]\nstation = 2\nnose_radius = 0.8\ntip = \"corner\"\n", "7:7 tip-point"},
	{good + "[[tool]]\nstation = 2\nnose_radius = 0.8\ntip = { x = \"-\" }\n", "7:7 key-missing"},
	{good + "[[tool]]\nstation = 2\nnose_radius = 0.8\ntip = { x = \"-\", z = \"*\" }\n", "7:22 unknown-value"},
	{good + "[[tool]]\nstation = 2\nnose_radius = 0.8\nspindle = \"M8\"\n", "7:11 malformed-word"},
	{good + "[[tool]]\nstation = 2\nnose_radius = 0.8\nsurface_speed = 180\nrpm = 900\n", "8:7 keys-conflict"},
	{"[machine]\ntop_speed = 800\n[[tool]]\nstation = 2\nnose_radius = 0.8\nrpm = 900\n", "6:7 keys-conflict"},
	{good + "[[tool]]\nstation = 2\nnose_radius = 0.8\nfeed = 250\n", "7:8 size-range"},
	{good + "[[tool]]\nstation = 2\nnose_radius = 0.8\ndepth = 1\nleast_depth = 2\n", "8:15 keys-conflict"},
	{good + "[[tool]]\nstation = 2\ninsert = \"CNMG120408\"\ndepth = 20\n", "7:9 keys-conflict"},
	{good + "[[tool]]\nstation = 2\nnose_radius = 0.8\nbar_diameter = 20\n", "7:16 keys-conflict"},
	{good + "[[tool]]\nstation = 2\nnose_radius = 0.8\nwidth = 3\n", "7:9 keys-conflict"},
	{good + "[[tool]]\nstation = 2\nnose_radius = 0.8\npurpose = \"finishing\"\n", "7:11 unknown-value"},
	{good + "[[tool]]\nstation = 2\nnose_radius = 0.8\nkind = \"turning\"\n", "7:8 unknown-value"},
	{"[tool]\nstation = 1\n", "1:1 wrong-type"},
	// [stock], [hand_lathe]
	{"[stock]\ndiameter = 50\n", "1:1 key-missing"},
	{"[stock]\ndiameter = 50\nlength = 100\nbore = 50\n", "4:8 keys-conflict"},
	{"[stock]\ndiameter = 50\nlength = 100\nfront = 100\n", "4:9 keys-conflict"},
	{"[stock]\ndiameter = 50\nlength = 100\nbore_depth = 10\n", "4:14 keys-conflict"},
	{"[stock]\ndiameter = 50\nlength = 100\nbore = 10\nbore_depth = 101\n", "5:14 keys-conflict"},
	{"[stock]\ndiameter = -50\nlength = 100\n", "2:12 size-range"},
	{"[hand_lathe]\nrest_travel = 0\n", "2:15 size-range"},
	{"[hand_lathe]\nattachment_rate = \"4\"\n", "2:19 size-range"},
	{"[hand_lathe]\nrest = 75\n", "2:1 unknown-key"},
}

const good = "[[tool]]\nstation = 1\nnose_radius = 0.8\n"

func TestWrongValues(t *testing.T) {
	raised := map[string]bool{}
	for _, c := range wrong {
		_, found := read(t, c.text)
		place, code, _ := strings.Cut(c.want, " ")
		raised[code] = true
		if assert.Len(t, found, 1, "%s\n%v", c.text, found) {
			assert.True(t, strings.HasPrefix(found[0], "shop.toml:"+place+": ") && strings.HasSuffix(found[0], " ["+code+"]"), "want %s: %s\n%s", c.want, found[0], c.text)
		}
	}
	for _, code := range []string{codeColumn, codePurpose, codeWord, codeWordTwice, codeHarmless, codeSize, codeMissing, codeConflict, codeTwice,
		codeInsert, codeHolder, codeSeat, codeContradicts, codeNose, codeNoNose, codeEdges, codeTip} {
		assert.True(t, raised[code], "%s is raised by no case", code)
	}
}

func TestMessagesSayUnitAndCure(t *testing.T) {
	for _, c := range []struct{ text, message, help string }{
		{"[machine]\nwords = \"g90-truns\"\n", `no starting column is named "g90-truns"`, "did you mean g90-turns? one of g90-turns, g77-turns, g20-turns, g80-turns, no-cycles"},
		{"unit = \"inch\"\n[[tool]]\nstation = 1\nnose_radius = 0.8\nfeed = -1\n", "tool[1].feed = -1 in/rev cannot be", "give a feed above 0 to 0.984 in/rev"},
		{"[machine]\nchange = { diameter = -300000, z = 1 }\n", "machine.change.diameter = -300000 mm cannot be", "give a diameter from -200000 to 200000 mm"},
		{"[machine]\nword = { speed_capp = \"G92\" }\n", `no purpose of a word is named "speed_capp"`, "did you mean speed_cap?"},
		{"[[tool]]\nstation = 1\nnose_radius = 8\nincluded_angle = 55\nedge_length = 12\n", "a nose radius of 8 mm is larger than the insert",
			"at most 4.915 mm fits edges of 12 mm at a corner of 55 deg"}, // 12 sin 55 deg / 2 = 4.914912
	} {
		var l finding.List
		table, ok := source.Parse(finding.NewText("shop.toml", []byte(c.text)), &l)
		require.True(t, ok)
		Read(table, &l)
		require.Len(t, l.Sorted(), 1, c.text)
		assert.Equal(t, c.message, l.Sorted()[0].Message)
		assert.Equal(t, c.help, l.Sorted()[0].Help)
	}
}

func TestPagesForm(t *testing.T) {
	names, err := Pages.ReadDir("codes")
	require.NoError(t, err)
	require.Len(t, names, 17)
	for _, n := range names {
		code := strings.TrimSuffix(n.Name(), ".md")
		page, ok := finding.Page(code, Pages)
		require.True(t, ok)
		assert.Regexp(t, fmt.Sprintf(`^# %s: .+ \((error|warning|note)\)\n`, code), page)
		// the example of a page gives its own finding and no other
		_, rest, ok := strings.Cut(page, "```toml\n")
		require.True(t, ok, code)
		example, _, _ := strings.Cut(rest, "```")
		_, found := read(t, example)
		require.Len(t, found, 1, "%s: %v", code, found)
		assert.True(t, strings.HasSuffix(found[0], " ["+code+"]"), "%s: %s", code, found[0])
	}
}
