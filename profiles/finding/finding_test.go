package finding

import (
	"bytes"
	"encoding/json"
	"os"
	"strings"
	"testing"
	"testing/fstest"

	"github.com/santhosh-tekuri/jsonschema/v6"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestPositionCountsCodePoints(t *testing.T) {
	// line 2 begins at byte 3; '⌀' is three bytes and one code point
	text := NewText("a.toml", []byte("ab\n⌀x=\r\n\nend"))
	for _, c := range []struct{ offset, line, column int }{
		{-5, 1, 1}, {0, 1, 1}, {2, 1, 3}, {3, 2, 1}, {6, 2, 2}, {7, 2, 3}, {10, 3, 1}, {11, 4, 1}, {14, 4, 4}, {99, 4, 4},
	} {
		assert.Equal(t, Position{c.line, c.column}, text.Position(c.offset), "offset %d", c.offset)
	}
	assert.Equal(t, "⌀x=", string(text.line(2)))
	assert.Nil(t, text.line(9))
}

func TestSortedByGivenOrderPlaceAndSeverity(t *testing.T) {
	first, second := NewText("z.nc", []byte("one\ntwo\n")), NewText("a.toml", []byte("three\n"))
	var l List
	l.Order(first)
	l.Note(second.Span(0, 1), "later-text", "", "d")
	l.Warn(first.Span(4, 5), "same-place", "", "c")
	l.Error(first.Span(4, 5), "same-place", "", "b")
	l.Error(first.Span(0, 1), "early", "", "a")
	l.Error(first.Span(0, 1), "early", "", "a")
	l.Error(Span{}, "nowhere", "", "e")
	var codes []string
	for _, f := range l.Sorted() {
		codes = append(codes, f.Severity.String()+" "+f.Message)
	}
	assert.Equal(t, []string{"error e", "error a", "error b", "warning c", "note d"}, codes)
	assert.True(t, l.HasErrors())
}

func TestWriteStyles(t *testing.T) {
	text := NewText("part.toml", []byte("unit = \"mm\"\n⌀\tlenght = 70\n"))
	other := NewText("shop.toml", []byte("x = 1\n"))
	at := bytes.Index(text.Bytes, []byte("lenght"))
	f := Finding{Code: "unknown-key", Span: text.Span(at, at+6), Message: "unknown key \"lenght\"", Help: "did you mean \"length\"?",
		Places: []Place{{other.Span(4, 5), "set here"}}}
	var b bytes.Buffer
	require.NoError(t, Write(&b, []Finding{f}, Window))
	assert.Equal(t, `part.toml:2:3: error: unknown key "lenght" [unknown-key]
    2 | ⌀ lenght = 70
      |   ^^^^^^
shop.toml:1:5: note: set here
    1 | x = 1
      |     ^
help: did you mean "length"?
`, b.String())
	b.Reset()
	require.NoError(t, Write(&b, []Finding{f}, Short))
	assert.Equal(t, "part.toml:2:3: error: unknown key \"lenght\" [unknown-key]\n", b.String())
}

// A place at the very end, a place that covers several lines, a line longer
// than the window and a zero-width place are all printed without a panic and
// with at least one mark.
func TestWindowAtTheEdges(t *testing.T) {
	long := strings.Repeat("x", 400) + "HERE" + strings.Repeat("y", 400)
	text := NewText("p.nc", []byte("G1\nG2\n"+long+"\nlast"))
	for _, s := range []Span{text.Span(0, 5), text.Span(406, 410), text.Span(len(text.Bytes), len(text.Bytes)), text.Span(1, 1), text.Span(6, 9)} {
		var b bytes.Buffer
		require.NoError(t, Write(&b, []Finding{{Span: s, Message: "m", Code: "c"}}, Window))
		assert.Contains(t, b.String(), "^", "%d-%d", s.Start, s.End)
		for _, line := range strings.Split(b.String(), "\n") {
			assert.Less(t, len(line), 130)
		}
	}
}

func TestCleanHidesNothing(t *testing.T) {
	assert.Equal(t, `a\u{1b}[31m b\u{202e}c\u{200b}\u{0}\u{a}`, Clean("a\x1b[31m\tb\u202ec\u200b\x00\n"))
	assert.Equal(t, "Überlänge ⌀44 °", Clean("Überlänge ⌀44 °"))
}

func TestNearest(t *testing.T) {
	words := []string{"length", "shoulder", "diameter", "unit"}
	for word, want := range map[string]string{"lenght": "length", "shoudler": "shoulder", "diametre": "diameter", "uint": "unit", "xy": "", "colour": ""} {
		got, ok := Nearest(word, words)
		assert.Equal(t, want, got, word)
		assert.Equal(t, want != "", ok, word)
	}
}

func FuzzClean(f *testing.F) {
	f.Add("plain")
	f.Add("\x1b]0;title\a\u2066")
	f.Fuzz(func(t *testing.T, s string) {
		once := Clean(s)
		for _, r := range once {
			if hidden(r) || r == '\t' {
				t.Fatalf("%q keeps %U", once, r)
			}
		}
		if again := Clean(once); again != once {
			t.Fatalf("not a fixed point: %q then %q", once, again)
		}
	})
}

func TestItemsUseNullForNowhere(t *testing.T) {
	text := NewText("p.toml", []byte("a = 1\n"))
	b, err := json.Marshal(Items([]Finding{{Code: "c", Severity: Warning, Message: "m"}, {Code: "d", Span: text.Span(4, 5), Message: "n", Help: "h",
		Places: []Place{{text.Span(0, 1), "first"}, {Span{}, "second"}}}}))
	require.NoError(t, err)
	assert.Equal(t, `[{"code":"c","severity":"warning","file":null,"line":null,"column":null,"end_line":null,"end_column":null,"message":"m","help":"","notes":[]},`+
		`{"code":"d","severity":"error","file":"p.toml","line":1,"column":5,"end_line":1,"end_column":6,"message":"n","help":"h",`+
		`"notes":[{"file":"p.toml","line":1,"column":1,"message":"first"},{"file":null,"line":null,"column":null,"message":"second"}]}]`, string(b))
	empty, err := json.Marshal(Items(nil))
	require.NoError(t, err)
	assert.Equal(t, "[]", string(empty))
}

// The log is held against the members of SARIF 2.1.0 (OASIS) that it uses:
// a schema of our own, written from memory of sections 3.13 to 3.30.
func TestSARIFShape(t *testing.T) {
	text := NewText("a b/p.toml", []byte("a = 1\n"))
	var b bytes.Buffer
	require.NoError(t, SARIF(&b, []Finding{{Code: "c", Severity: Note, Message: "m"}, {Code: "d", Span: text.Span(4, 5), Message: "n", Help: "h",
		Places: []Place{{text.Span(0, 1), "first"}}}}))
	raw, err := os.ReadFile("testdata/sarif-members.json")
	require.NoError(t, err)
	schema, err := jsonschema.UnmarshalJSON(bytes.NewReader(raw))
	require.NoError(t, err)
	c := jsonschema.NewCompiler()
	c.AssertFormat()
	require.NoError(t, c.AddResource("https://example.invalid/sarif-members.json", schema))
	sch, err := c.Compile("https://example.invalid/sarif-members.json")
	require.NoError(t, err)
	doc, err := jsonschema.UnmarshalJSON(&b)
	require.NoError(t, err)
	require.NoError(t, sch.Validate(doc))
	bad, err := jsonschema.UnmarshalJSON(strings.NewReader(`{"version":"2.1.0","runs":[{"tool":{"driver":{"name":"t"}},"results":[{"ruleId":"c","level":"high","message":{"text":"m"}}]}]}`))
	require.NoError(t, err)
	require.Error(t, sch.Validate(bad), "the schema must be able to fail")
}

func TestPage(t *testing.T) {
	pages := fstest.MapFS{"codes/gouge.md": {Data: []byte("# gouge")}}
	got, ok := Page("gouge", fstest.MapFS{}, pages)
	assert.True(t, ok)
	assert.Equal(t, "# gouge", got)
	for _, code := range []string{"", "none", "../gouge", "a/b"} {
		_, ok := Page(code, pages)
		assert.False(t, ok, code)
	}
}
