package shop

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"taperwright/profiles/finding"
)

// Assuming a key says what the same line of a file says.
func TestAssumeSaysWhatTheFileSays(t *testing.T) {
	for _, c := range machineCases {
		want, found := read(t, "[machine]\n"+c.line+"\n")
		require.Empty(t, found)
		m := mustDefault(t)
		key, value, _ := strings.Cut(c.line, " = ")
		require.NoError(t, m.Assume(key, value), c.line)
		got, wanted := c.got(m), c.got(&want.Machine)
		switch v := got.(type) {
		case Setting[bool]:
			w := wanted.(Setting[bool])
			v.From, w.From = finding.Span{}, finding.Span{}
			got, wanted = v, w
		case Setting[int]:
			w := wanted.(Setting[int])
			v.From, w.From = finding.Span{}, finding.Span{}
			got, wanted = v, w
		}
		assert.Equal(t, wanted, got, c.line)
	}
}

func TestAssumeOverAFile(t *testing.T) {
	s, found := read(t, `[machine]
words = "g90-turns"
word = { speed_cap = "G92" }
feed = "per-minute"
[machine.chuck]
diameter = 200
`)
	require.Empty(t, found)
	m := s.Machine
	require.NoError(t, m.Assume("x", "radius"), "a bare word is a text")
	assert.False(t, m.XIsDiameter.Value)
	assert.Equal(t, "--assume:1", m.XIsDiameter.From.Place())
	// another column: what was given stays, what was not follows
	require.NoError(t, m.Assume("words", "g80-turns"))
	assert.Equal(t, "G92", m.Words[SpeedCap])
	assert.Equal(t, "G90", m.Words[Absolute])
	assert.Equal(t, FeedPerMinute, m.Feed.Value)
	assert.True(t, m.Feed.Given)
	assert.False(t, m.XIsDiameter.Value)
	require.NoError(t, m.Assume("word.surface_speed", "\"G196\""))
	assert.Equal(t, "G196", m.Words[SurfaceSpeed])
	assert.Equal(t, "G92", m.Words[SpeedCap], "the words set before stay")
	assert.Equal(t, "G96", s.Machine.Words[SurfaceSpeed], "the machine copied from is as it was")
	require.NoError(t, m.Assume("chuck.through_hole", "52"))
	assert.Equal(t, 100.0, m.Chuck.Radius)
	assert.Equal(t, 26.0, m.Chuck.ThroughHole)
	assert.Equal(t, 0.0, s.Machine.Chuck.ThroughHole)
	require.NoError(t, m.Assume("unit", "inch"))
	assert.Equal(t, 4, m.Decimals.Value)
	require.NoError(t, m.Assume("decimals", "5"))
	assert.Equal(t, 5, m.Decimals.Value)
	m.Lengths = Inch
	require.NoError(t, m.Assume("home", "{ diameter = 2, z = 1 }"))
	near(t, 25.4, m.HomeAt.Value.R, 1e-12)
}

func TestAssumeRefuses(t *testing.T) {
	for _, c := range []struct{ key, value, says string }{
		{"y", "1", `[machine] has no key "y"`},
		{"deciamls", "4", "did you mean decimals?"},
		{"", "1", "has no key"},
		{"x = 1\n[tool]\ny", "1", "has no key"},
		{"a\x1b[31m", "1", `\\u{1b}`},
		{"x", "rad", "cannot be"},
		{"x", "1", "must be text"},
		{"decimals", "many", "must be a number"},
		{"top_speed", "-5", "above 0"},
		{"top_speed", "nan", "nan"},
		{"words", "g91-turns", "did you mean g90-turns"},
		{"word.spede_cap", "G92", "did you mean speed_cap"},
		{"word.feed", "G0", "left without one"},
		{"harmless", "[\"G0\"]", "is the word for rapid"},
		{"spindle", "M5", "does not turn the spindle"},
		{"x", "1\ny = 2", "several lines"},
		{"chuck.jaw_reach", "5", "has no diameter"},
		{"x", "\"\x00", ""},
	} {
		m := mustDefault(t)
		before := *m
		err := m.Assume(c.key, c.value)
		if assert.Error(t, err, "%s=%s", c.key, c.value) {
			assert.Contains(t, err.Error(), c.says)
			assert.NotContains(t, err.Error(), "\x1b")
			assert.NotContains(t, err.Error(), "\n")
		}
		assert.Equal(t, before, *m, "nothing changes with an error")
	}
}

// A file that is wrong already does not make every assumption wrong.
func TestAssumeBlamesOnlyItself(t *testing.T) {
	s, found := read(t, "[machine]\nharmless = [\"M3\"]\n")
	require.Len(t, found, 1)
	assert.NoError(t, s.Machine.Assume("x", "radius"))
	assert.Error(t, s.Machine.Assume("harmless", "[\"M4\"]"))
}
