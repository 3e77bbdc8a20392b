package shop

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// The table of conventions found in real programs, row by row (from memory
// and common practice; see the head of columns.tsv). "": no word.
var conventions = []struct {
	purpose                  Purpose
	g90, g77, g20, g80, nist string
}{
	{Absolute, "", "G90", "G90", "G90", "G90"},
	{Incremental, "", "G91", "G91", "G91", "G91"},
	{CycleTurn, "G90", "G77", "G20", "G80", ""},
	{CycleFace, "G94", "G79", "G24", "G81", ""},
	{CycleThread, "G92", "G78", "G21", "G82", ""},
	{ThreadMove, "G32", "G33", "G33", "G32", ""},
	{SpeedCap, "G50", "G92", "G92", "", ""},
	{FramePreset, "", "", "", "G92", "G92"},
	{FeedPerMinute, "G98", "G94", "G94", "", "G94"},
	{FeedPerRev, "G99", "G95", "G95", "", "G95"},
	{UnitInch, "G20", "G20", "G70", "G20", "G20"},
	{UnitMM, "G21", "G21", "G71", "G21", "G21"},
	{CycleRough, "G71", "G71", "G73", "G71", ""},
	{CycleRoughFace, "G72", "G72", "G74", "G72", ""},
	{CycleRepeat, "G73", "G73", "G75", "G73", ""},
	{CycleFinish, "G70", "G70", "G72", "G70", ""},
	// what all columns share: NISTIR 6556, tables of G and M words, from memory
	{Rapid, "G0", "G0", "G0", "G0", "G0"},
	{Feed, "G1", "G1", "G1", "G1", "G1"},
	{ArcCW, "G2", "G2", "G2", "G2", "G2"},
	{ArcCCW, "G3", "G3", "G3", "G3", "G3"},
	{Dwell, "G4", "G4", "G4", "G4", "G4"},
	{PlaneZX, "G18", "G18", "G18", "G18", "G18"},
	{Home, "G28", "G28", "G28", "G28", "G28"},
	{NoseOff, "G40", "G40", "G40", "G40", "G40"},
	{NoseLeft, "G41", "G41", "G41", "G41", "G41"},
	{NoseRight, "G42", "G42", "G42", "G42", "G42"},
	{MachineFrame, "G53", "G53", "G53", "G53", "G53"},
	{WorkFrame, "G54", "G54", "G54", "G54", "G54"},
	{SpindleForward, "M3", "M3", "M3", "M3", "M3"},
	{SpindleReverse, "M4", "M4", "M4", "M4", "M4"},
	{SpindleStop, "M5", "M5", "M5", "M5", "M5"},
	{ToolChange, "M6", "M6", "M6", "M6", "M6"},
	{ProgramStop, "M0", "M0", "M0", "M0", "M0"},
	{OptionalStop, "M1", "M1", "M1", "M1", "M1"},
	{ProgramEnd, "M30", "M30", "M30", "M30", "M30"},
	{Coolant, "M8", "M8", "M8", "M8", "M8"},
	{CoolantOff, "M9", "M9", "M9", "M9", "M9"},
	// lathe words that report does not have
	{SurfaceSpeed, "G96", "G96", "G96", "G96", ""},
	{SpindleRPM, "G97", "G97", "G97", "G97", ""},
	{CallSub, "M98", "M98", "M98", "M98", ""},
	{ReturnFromSub, "M99", "M99", "M99", "M99", ""},
	{CycleThreadMany, "G76", "G76", "", "G76", ""},
	{CycleGroove, "G75", "G75", "", "", ""},
	{CycleFaceGroove, "G74", "G74", "", "", ""},
	{DiameterX, "", "", "", "G36", ""},
	{RadiusX, "", "", "", "G37", ""},
	{CycleCancel, "G80", "G80", "G80", "", "G80"},
	{PathMode, "G61", "G61", "G61", "G61", "G61"},
}

func TestColumnsAgainstTheConventions(t *testing.T) {
	require.Equal(t, []string{"g90-turns", "g77-turns", "g20-turns", "g80-turns", "no-cycles"}, Columns())
	seen := map[string]bool{}
	for _, c := range conventions {
		seen[string(c.purpose)] = true
		for i, want := range []string{c.g90, c.g77, c.g20, c.g80, c.nist} {
			m, ok := Default(Columns()[i])
			require.True(t, ok)
			assert.Equal(t, want, m.Words[c.purpose], "%s in %s", c.purpose, Columns()[i])
			if want != "" {
				p, ok := m.Meaning(want)
				assert.True(t, ok)
				assert.Equal(t, c.purpose, p, "%s in %s", want, Columns()[i])
			}
		}
	}
	for _, p := range purposes() {
		assert.True(t, seen[p], "the purpose %s stands in no row of this test", p)
	}
}

func TestEveryWordOfAColumnMeansOneThing(t *testing.T) {
	_, all := tables()
	for name, c := range all {
		of := map[string]Purpose{}
		for p, words := range c.words {
			for _, w := range words {
				norm, ok := Word(w)
				require.True(t, ok, w)
				require.Equal(t, w, norm, "the table holds words as they are compared")
				require.Empty(t, of[w], "%s in %s", w, name)
				of[w] = p
			}
		}
	}
}

func TestEverySettingOfAColumnIsAKeyAndGoesIn(t *testing.T) {
	_, all := tables()
	for name, c := range all {
		for _, s := range c.settings {
			found := false
			for _, k := range machineKeys {
				found = found || k.Name == s.key && k.fill != nil
			}
			assert.True(t, found, "%s: %s", name, s.key)
		}
	}
	for _, c := range []struct {
		column    string
		feed      Purpose
		uw, after bool
		digits    int
		dwell     string
	}{
		{"g90-turns", FeedPerRev, true, true, 2, "ms"},
		{"g77-turns", FeedPerRev, false, true, 2, "ms"},
		{"g20-turns", FeedPerRev, false, true, 2, "ms"},
		{"g80-turns", FeedPerMinute, true, true, 2, "ms"},
		{"no-cycles", FeedPerMinute, false, false, 0, "s"},
	} {
		m, _ := Default(c.column)
		assert.Equal(t, []any{c.feed, c.uw, c.after, c.digits, c.dwell},
			[]any{m.Feed.Value, m.IncrementsUW.Value, m.StopsAfter.Value, m.OffsetDigits.Value, m.DwellP.Value}, c.column)
		// what nothing says is the same in all of them
		assert.Equal(t, []any{true, MM, Whole, SpindleRPM, "run", "diameter", "rear", "usual", 3, "tip-path", "ik", "straight", "both-axes", "negative-r", 10, "brackets"},
			[]any{m.XIsDiameter.Value, m.Unit.Value, m.MissingPoint.Value, m.Speed.Value, m.Slash.Value, m.IncrementX.Value, m.ToolSide.Value, m.ArcSense.Value, m.Decimals.Value,
				m.Compensation.Value, m.Arcs.Value, m.RapidPath.Value, m.BareHome.Value, m.LongArc.Value, m.BlockNumbers.Value, m.Comments.Value}, c.column)
		assert.False(t, m.Feed.Given || m.XIsDiameter.Given || m.Column.Given || m.Spindle.Given || m.HomeAt.Given, "a default is not given")
	}
	_, ok := Default("g91-turns")
	assert.False(t, ok)
}

func TestWord(t *testing.T) {
	for in, want := range map[string]string{
		"G0": "G0", "G00": "G0", "g01": "G1", "G54.0": "G54", "G59.10": "G59.1", "M030": "M30", "G5.": "G5", "G.5": "G0.5", "t0101": "T101",
	} {
		got, ok := Word(in)
		assert.True(t, ok, in)
		assert.Equal(t, want, got, in)
	}
	for _, in := range []string{"", "G", "96", "G-1", "G1.2.3", "GG1", "G1 ", "G1G2", "(G1", "G.", "Ä1", "G123456789"} {
		_, ok := Word(in)
		assert.False(t, ok, "%q", in)
	}
}

func TestMeaning(t *testing.T) {
	m, _ := Default("g90-turns")
	for w, want := range map[string]Purpose{"G00": Rapid, "g1": Feed, "G59": WorkFrame, "M02": ProgramEnd, "M7": Coolant, "G90": CycleTurn, "G64": PathMode} {
		got, ok := m.Meaning(w)
		assert.True(t, ok, w)
		assert.Equal(t, want, got, w)
	}
	for _, w := range []string{"G91", "G95", "M41", "X50", "", "junk"} {
		_, ok := m.Meaning(w)
		assert.False(t, ok, w)
	}
	by := Machine{Words: map[Purpose]string{Rapid: "G0"}}
	got, ok := by.Meaning("G00")
	assert.True(t, ok)
	assert.Equal(t, Rapid, got)
}

func TestSingleWordsBeatTheColumn(t *testing.T) {
	s, found := read(t, `[machine]
words = "g90-turns"
word = { feed_per_rev = "G95", feed_per_minute = "g094", coolant = ["M08", "M7", "M51"], end = "M2", frame_preset = "G50", x_radius = "" }
harmless = ["M041"]
`)
	require.Empty(t, found)
	m := &s.Machine
	for w, want := range map[string]Purpose{
		"G95": FeedPerRev, "G94": FeedPerMinute, // taken from facing_cycle
		"M51": Coolant, "M7": Coolant, "M2": ProgramEnd, "G50": SpeedCap, // shared: S caps, axis words preset
	} {
		got, ok := m.Meaning(w)
		assert.True(t, ok, w)
		assert.Equal(t, want, got, w)
	}
	for _, w := range []string{"G99", "G98", "M30"} {
		_, ok := m.Meaning(w)
		assert.False(t, ok, "%s has lost its meaning", w)
	}
	assert.Equal(t, "M8", m.Words[Coolant])
	assert.Empty(t, m.Words[CycleFace])
	assert.True(t, m.IsHarmless("M41"))
	assert.True(t, m.IsHarmless("m0041"))
	assert.False(t, m.IsHarmless("M42"))
}
