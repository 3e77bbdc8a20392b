package main

import (
	"go/parser"
	"go/token"
	"io/fs"
	"os"
	"path"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// house is the statement of policy: which room may import which. It is not a
// description of the code: when this test fails, mend the import, not the
// table. verify never imports toolpath or post, so the reader believes
// nothing the planner says; motion and stock cannot import profiles, so the
// reader does not peek at the wanted part.
const house = `
profiles/geom     ->
profiles/finding  ->
profiles/source   -> profiles/finding
profiles/taper    -> profiles/finding profiles/geom
profiles/shop     -> profiles/source profiles/finding profiles/geom
profiles          -> profiles/source profiles/shop profiles/taper profiles/geom profiles/finding
toolpath          -> profiles profiles/shop profiles/taper profiles/geom profiles/finding
post              -> toolpath profiles profiles/shop profiles/taper profiles/geom profiles/finding
verify/rs274      -> profiles/finding
verify/motion     -> verify/rs274 profiles/shop profiles/geom profiles/finding
verify/stock      -> verify/motion profiles/shop profiles/geom profiles/finding
verify            -> verify/rs274 verify/motion verify/stock profiles profiles/shop profiles/taper profiles/geom profiles/finding
cmd/taperwright   -> *
`

// only names the libraries that a single room may import.
var only = map[string][]string{
	"github.com/BurntSushi/toml":              {"profiles/source"},
	"github.com/pelletier/go-toml/v2":         {"profiles/source"},
	"github.com/spf13/cobra":                  {"cmd/taperwright"},
	"github.com/sergi/go-diff/diffmatchpatch": {"cmd/taperwright"},
}

func top(t *testing.T) string {
	t.Helper()
	wd, err := os.Getwd()
	require.NoError(t, err)
	return filepath.Join(wd, "..", "..")
}

// goFiles calls do for every Go file of the project with its room.
func goFiles(t *testing.T, do func(room, name string)) {
	t.Helper()
	root := top(t)
	require.NoError(t, filepath.WalkDir(root, func(p string, d fs.DirEntry, err error) error {
		if err != nil {
			return err
		}
		if d.IsDir() && strings.HasPrefix(d.Name(), ".") && p != root {
			return fs.SkipDir
		}
		if !d.IsDir() && strings.HasSuffix(p, ".go") {
			rel, err := filepath.Rel(root, p)
			if err != nil {
				return err
			}
			do(path.Dir(filepath.ToSlash(rel)), p)
		}
		return nil
	}))
}

func TestHouse(t *testing.T) {
	allowed := map[string][]string{}
	for line := range strings.Lines(house) {
		if room, imports, ok := strings.Cut(line, "->"); ok {
			allowed[strings.TrimSpace(room)] = append([]string{}, strings.Fields(imports)...)
		}
	}
	goFiles(t, func(room, name string) {
		if strings.HasSuffix(name, "_test.go") {
			return // tests compare rooms that must not know each other
		}
		may, known := allowed[room]
		if !known {
			t.Errorf("%s: the room %s is not in the house's table", name, room)
			return
		}
		f, err := parser.ParseFile(token.NewFileSet(), name, nil, parser.ImportsOnly)
		require.NoError(t, err)
		for _, spec := range f.Imports {
			p, err := strconv.Unquote(spec.Path.Value)
			require.NoError(t, err)
			if ours, ok := strings.CutPrefix(p, "taperwright/"); ok && !slices.Contains(may, ours) && !slices.Contains(may, "*") {
				t.Errorf("%s imports %s: data flows one way, %s may import only %v", name, ours, room, may)
			}
			for library, rooms := range only {
				if (p == library || strings.HasPrefix(p, library+"/")) && !slices.Contains(rooms, room) {
					t.Errorf("%s imports %s: only %v may", name, p, rooms)
				}
			}
		}
	})
}

// banned are calls whose last bits differ between CPUs, or that print behind
// the program's back. profiles/geom has its own trigonometry and rounding.
var banned = map[string]string{
	"math.Hypot(": "fused on some CPUs: use geom.Point.Len",
	"math.Sin(":   "other last bits on other CPUs: use geom.Sin",
	"math.Cos(":   "other last bits on other CPUs: use geom.Cos",
	"math.Tan(":   "other last bits on other CPUs: use geom.Tan",
	"math.Atan(":  "other last bits on other CPUs: use geom.Atan",
	"math.Atan2(": "other last bits on other CPUs: use geom.Atan2",
	"math.Asin(":  "other last bits on other CPUs: use geom.Asin",
	"math.Acos(":  "other last bits on other CPUs: use geom.Acos",
	"math.Pow(":   "other last bits on other CPUs",
	"math.Exp(":   "other last bits on other CPUs",
	"math.Log(":   "other last bits on other CPUs",
	"fmt.Print":   "rooms return text, commands write it to their own streams",
	"time.Now(":   "no output may depend on the clock",
	"os.Hostname": "no output may depend on the host",
}

func TestBannedCalls(t *testing.T) {
	goFiles(t, func(room, name string) {
		if strings.HasSuffix(name, "_test.go") {
			return
		}
		b, err := os.ReadFile(name)
		require.NoError(t, err)
		n := 0
		for line := range strings.Lines(string(b)) {
			n++
			code, _, _ := strings.Cut(line, "//")
			for call, why := range banned {
				if strings.Contains(code, call) {
					t.Errorf("%s:%d: %s: %s", name, n, strings.TrimSuffix(call, "("), why)
				}
			}
		}
	})
}

// Every code a room can raise has a page of the right form, and every page
// belongs to a code that some room's codes.go names.
func TestEveryCodeHasItsPage(t *testing.T) {
	named := map[string]bool{}
	goFiles(t, func(_, name string) {
		if filepath.Base(name) != "codes.go" {
			return
		}
		b, err := os.ReadFile(name)
		require.NoError(t, err)
		for line := range strings.Lines(string(b)) {
			if parts := strings.Split(line, `"`); strings.Contains(parts[0], "=") && len(parts) >= 3 && strings.ToLower(parts[1]) == parts[1] {
				named[parts[1]] = true
			}
		}
	})
	require.NotEmpty(t, named)
	for _, code := range codes() {
		require.True(t, named[code], "the page of %q belongs to no code", code)
	}
	for code := range named {
		require.Contains(t, codes(), code, "no page")
		page := explainPage(t, code)
		title, rest, _ := strings.Cut(page, "\n")
		require.Regexp(t, `^# `+code+`: .+ \((error|warning|note)(, (error|warning|note))*\)$`, title)
		require.Contains(t, rest, "```", "%s: a page shows an example", code)
	}
}
