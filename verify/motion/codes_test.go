package motion

import (
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"taperwright/profiles/finding"
)

// Every code has a page whose first line names it, and every page a code.
func TestPages(t *testing.T) {
	all := []string{AbsurdLength, ArcCentre, ArcMismatch, ArcNoLength, ArcRadiusShort, AxisClaim, BadValue, ControlCompensation, CornerWord,
		CycleNotRead, FeedMissing, FlowNotRead, FrameUnknown, GroupTwice, Internal, LetterTwice, MoreWords, NeverReached, NoEndWord, NoMotionWord,
		OffsetOff, ProgramRepeats, SecondProgram, SubprogramNotRead, ToolWord, UnitChange, UnknownStart, UnknownWord, VariableNotRead}
	for _, code := range all {
		page, ok := finding.Page(code, Pages)
		require.True(t, ok, code)
		assert.Regexp(t, "^# "+code+": .+ \\((error|warning|note)\\)\n", page)
		assert.Contains(t, page, "```")
	}
	files, err := filepath.Glob("codes/*.md")
	require.NoError(t, err)
	assert.Len(t, files, len(all))
}
