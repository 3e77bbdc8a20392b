package main

import (
	"bytes"
	"encoding/json"
	"fmt"
	"math"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Hand-written programs say themselves what they must be judged to be, in
// comments that the verifier never reads as facts:
//
//	(= part FILE)                   the part file beside it
//	(= arguments ...)               further arguments of check
//	(= twin PROGRAM)                the plain G0 to G3 program with the same cuts
//	(= verdict good|wrong|cannot-judge)
//	(= NAME: VERDICT KEY FIGURE ..) a feature's row; figures summed by hand
//	(= slip CODE)                   the likely slips, best first
//	(= assumed WHAT)                something that must be said as assumed
//	(~ SEVERITY CODE)               a finding at this very line
//
// Every error and warning must be expected, and every expected one must come.
var (
	wantLine = regexp.MustCompile(`\(= ([^)]*(?:\([^)]*\)[^)]*)*)\)`)
	wantHere = regexp.MustCompile(`\(~ (error|warning|note) ([a-z-]+)\)`)
)

// offKeys are the figures of a row as the programs name them.
var offKeys = map[string]string{
	"diameter": "diameter_mm", "half": "half_angle_deg", "standoff": "standoff_mm", "z": "z_mm", "left": "most_left_diameter_mm",
	"gouge": "deepest_gouge_diameter_mm", "left-z": "most_left_z_mm", "gouge-z": "deepest_gouge_z_mm", "straightness": "straightness_mm",
	"radius": "radius_mm", "width": "width_mm", "angle": "angle_deg",
}

// checkJSON is what the tests read of `check --format json`.
type checkJSON struct {
	Verdict string
	Assumed []struct{ What, Value string }
	Not     []string `json:"not_judged"`
	Rows    []struct {
		Name, Kind, Verdict string
		Cut, Off            map[string]*float64
		Blocks              []struct {
			File string
			Line int
		}
	} `json:"features"`
	Slips    []struct{ Code, Explains, Cure string }
	Findings []struct {
		Code, Severity, Message string
		File                    *string
		Line, Column            *int
	}
	Totals map[string]*float64
}

func runCheck(t testing.TB, args ...string) (checkJSON, int) {
	t.Helper()
	var out, errw bytes.Buffer
	code := run(append([]string{"check", "--format", "json"}, args...), strings.NewReader(""), &out, &errw)
	var v checkJSON
	require.NoError(t, json.Unmarshal(out.Bytes(), &v), "%v: %s%s", args, out.String(), errw.String())
	return v, code
}

func TestHandWrittenPrograms(t *testing.T) {
	names, err := filepath.Glob(filepath.Join(top(t), "testdata", "programs", "*.nc"))
	require.NoError(t, err)
	require.GreaterOrEqual(t, len(names), 25)
	for _, name := range names {
		t.Run(strings.TrimSuffix(filepath.Base(name), ".nc"), func(t *testing.T) { handWritten(t, name) })
	}
}

// wants is what a hand-written program says of itself.
type wants struct {
	part, twin, verdict        string
	args, rows, slips, assumed []string
}

func readWants(t testing.TB, name, text string) (w wants) {
	t.Helper()
	w.twin = name
	for _, m := range wantLine.FindAllStringSubmatch(text, -1) {
		word, rest, _ := strings.Cut(m[1], " ")
		switch word {
		case "part":
			w.part = filepath.Join(filepath.Dir(name), rest)
		case "twin":
			w.twin = filepath.Join(filepath.Dir(name), rest)
		case "verdict":
			w.verdict = rest
		case "arguments":
			w.args = strings.Fields(rest)
		case "slip":
			w.slips = append(w.slips, rest)
		case "assumed":
			w.assumed = append(w.assumed, rest)
		default:
			w.rows = append(w.rows, m[1])
		}
	}
	require.NotEmpty(t, w.part)
	require.NotEmpty(t, w.verdict)
	return w
}

func handWritten(t *testing.T, name string) {
	text, err := os.ReadFile(name)
	require.NoError(t, err)
	w := readWants(t, name, string(text))
	v, code := runCheck(t, append([]string{name, "--part", w.part}, w.args...)...)
	assert.Equal(t, w.verdict, v.Verdict)
	assert.Equal(t, map[string]int{"good": 0, "wrong": 1, "cannot-judge": 2}[w.verdict], code)

	var want, got []string
	n := 0
	for line := range strings.Lines(string(text)) {
		n++
		for _, m := range wantHere.FindAllStringSubmatch(line, -1) {
			want = append(want, fmt.Sprintf("%d: %s %s", n, m[1], m[2]))
		}
	}
	for _, f := range v.Findings {
		s := f.Severity + " " + f.Code
		switch {
		case f.File == nil || filepath.Base(*f.File) != filepath.Base(name):
			s = "elsewhere: " + s + " " + f.Message
		default:
			s = fmt.Sprintf("%d: %s", *f.Line, s)
		}
		if f.Severity != "note" || slices.Contains(want, s) {
			got = append(got, s)
		}
	}
	slices.Sort(want)
	slices.Sort(got)
	assert.Equal(t, want, got)

	var gotSlips []string
	for _, s := range v.Slips {
		gotSlips = append(gotSlips, s.Code)
	}
	assert.Equal(t, w.slips, gotSlips)
	for _, a := range w.assumed {
		assert.True(t, slices.ContainsFunc(v.Assumed, func(x struct{ What, Value string }) bool { return strings.Contains(x.What+" "+x.Value, a) }), "assumed %s: %v", a, v.Assumed)
	}
	for _, row := range w.rows {
		handWrittenRow(t, row, v)
	}
}

func handWrittenRow(t *testing.T, want string, v checkJSON) {
	name, rest, ok := strings.Cut(want, ": ")
	require.True(t, ok, want)
	fields := strings.Fields(rest)
	for _, r := range v.Rows {
		if r.Name != name {
			continue
		}
		assert.Equal(t, fields[0], r.Verdict, want)
		require.Zero(t, (len(fields)-1)%2, want)
		for i := 1; i < len(fields); i += 2 {
			key := offKeys[fields[i]]
			require.NotEmpty(t, key, fields[i])
			figure, err := strconv.ParseFloat(fields[i+1], 64)
			require.NoError(t, err)
			from := r.Off
			if slices.Contains([]string{"radius", "width", "angle"}, fields[i]) {
				from = r.Cut
			}
			got, known := from[key]
			if !known || got == nil {
				t.Errorf("%s: no figure %s: %v", name, key, r.Off)
				continue
			}
			// half of the last digit that the hand sum gives
			_, decimals, _ := strings.Cut(fields[i+1], ".")
			if tol := 0.5*math.Pow10(-len(decimals)) + 1e-9; !(math.Abs(*got-figure) <= tol) {
				t.Errorf("%s: %s is %v, by hand %s", name, key, *got, fields[i+1])
			}
		}
		return
	}
	t.Errorf("no row %q: %v", name, v.Rows)
}
