package source

import (
	"encoding/json"
	"io/fs"
	"math"
	"strconv"
	"strings"
	"testing"

	gotoml "github.com/pelletier/go-toml/v2"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	tomltest "github.com/toml-lang/toml-test/v2"

	"taperwright/profiles/finding"
)

// suite calls do for every file of the TOML project's own test suite
// (github.com/toml-lang/toml-test) that the list of version 1.1.0 names.
func suite(t testing.TB, do func(name string, src []byte)) {
	t.Helper()
	list, err := fs.ReadFile(tomltest.TestCases(), "files-toml-1.1.0")
	require.NoError(t, err)
	n := 0
	for name := range strings.Lines(string(list)) {
		name = strings.TrimSpace(name)
		if !strings.HasSuffix(name, ".toml") {
			continue
		}
		src, err := fs.ReadFile(tomltest.TestCases(), name)
		require.NoError(t, err)
		do(name, src)
		n++
	}
	require.Greater(t, n, 500, "the suite is there")
}

// Every valid file reads as the values that the suite wants; every file that
// the judging library refuses is refused, at a place, with one finding.
func TestSuite(t *testing.T) {
	valid, refused, overLimit := 0, 0, map[string]string{}
	suite(t, func(name string, src []byte) {
		var ignored map[string]any
		verdict := gotoml.Unmarshal(src, &ignored)
		var found finding.List
		root, ok := Parse(finding.NewText(name, src), &found)
		if !ok {
			require.Equal(t, 1, found.Len(), name)
			require.True(t, found.Sorted()[0].Span.Valid(), name)
		}
		switch {
		case strings.HasPrefix(name, "valid/") && ok:
			require.NoError(t, verdict, name)
			raw, err := fs.ReadFile(tomltest.TestCases(), strings.TrimSuffix(name, ".toml")+".json")
			require.NoError(t, err)
			var want any
			require.NoError(t, json.Unmarshal(raw, &want))
			same(t, name, want, Value{Kind: KindTable, Table: root})
			valid++
		case strings.HasPrefix(name, "valid/"):
			overLimit[name] = found.Sorted()[0].Code
		case verdict != nil:
			require.False(t, ok, "%s: %v", name, verdict)
			refused++
		}
	})
	t.Logf("%d valid files read, %d invalid ones refused", valid, refused)
	assert.Greater(t, valid, 200)
	assert.Greater(t, refused, 400)
	assert.Equal(t, map[string]string{}, overLimit)
}

// same compares a value with the tagged JSON of the suite.
func same(t *testing.T, where string, want any, got Value) {
	switch w := want.(type) {
	case []any:
		require.Equal(t, KindList, got.Kind, where)
		require.Len(t, got.List, len(w), where)
		for i := range w {
			same(t, where, w[i], got.List[i])
		}
	case map[string]any:
		kind, tagged := w["type"].(string)
		text, also := w["value"].(string)
		if !tagged || !also || len(w) != 2 {
			require.Equal(t, KindTable, got.Kind, where)
			require.Len(t, got.Table.Keys(), len(w), where)
			for k, v := range w {
				require.True(t, got.Table.Has(k), "%s: %s", where, k)
				same(t, where+": "+k, v, got.Table.entries[k].value)
			}
			return
		}
		switch kind {
		case "string":
			require.Equal(t, Value{Kind: KindText, Text: Text{text, got.Span}, Span: got.Span}, got, where)
		case "bool":
			require.Equal(t, KindBool, got.Kind, where)
			require.Equal(t, text, strconv.FormatBool(got.Bool.Value), where)
		case "integer":
			n, err := strconv.ParseInt(text, 10, 64)
			require.NoError(t, err)
			require.Equal(t, KindNumber, got.Kind, where)
			require.True(t, got.Number.Whole, where)
			require.True(t, got.Number.Value == float64(n), "%s: %v", where, got.Number)
		case "float":
			f, err := strconv.ParseFloat(text, 64)
			require.NoError(t, err)
			require.Equal(t, KindNumber, got.Kind, where)
			require.False(t, got.Number.Whole, where)
			require.True(t, got.Number.Value == f || math.IsNaN(f) && math.IsNaN(got.Number.Value), "%s: %v", where, got.Number)
		default:
			require.Equal(t, KindDate, got.Kind, where)
		}
	default:
		t.Fatalf("%s: %T", where, want)
	}
}
