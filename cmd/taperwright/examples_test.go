package main

import (
	"bytes"
	"flag"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"taperwright/profiles"
	"taperwright/profiles/finding"
	"taperwright/verify"
)

var update = flag.Bool("update", false, "rewrite the wanted files of testdata/parts from what the program gives now")

// example is one case of testdata/parts: a part file, beside it the program
// and the verdict that are wanted, and by-hand.txt with figures summed by hand.
type example struct {
	name, dir, part, program string
}

func examples(t testing.TB) []example {
	t.Helper()
	parts, err := filepath.Glob("testdata/parts/*/*.toml")
	require.NoError(t, err)
	require.NotEmpty(t, parts, "the working folder must be the top of the project")
	var out []example
	for _, p := range parts {
		dir := filepath.Dir(p)
		out = append(out, example{filepath.Base(dir), filepath.ToSlash(dir), filepath.ToSlash(p), filepath.ToSlash(strings.TrimSuffix(p, ".toml") + ".1.nc")})
	}
	return out
}

// call runs the program and returns what it printed and its exit code.
func call(args ...string) (out, errs string, code int) {
	var o, e bytes.Buffer
	code = run(args, strings.NewReader(""), &o, &e)
	return o.String(), e.String(), code
}

// wanted compares got with a wanted file, or rewrites the file under -update.
func wanted(t *testing.T, name, got string) {
	t.Helper()
	if *update {
		require.Empty(t, os.Getenv("CI"), "wanted files are not rewritten under CI")
		require.NoError(t, os.WriteFile(name, []byte(got), 0o644))
		return
	}
	want, err := os.ReadFile(name)
	require.NoError(t, err, "go test ./cmd/taperwright -run Golden -update writes it; read it before you keep it")
	if d := difference(name+" (wanted)", name+" (got)", string(want), got, 2); d != "" {
		t.Error(d)
	}
}

// The programs and verdicts of the examples are the same bytes everywhere,
// good, and hold the figures that were summed by hand.
func TestGoldenExamples(t *testing.T) {
	t.Chdir(top(t))
	for _, ex := range examples(t) {
		t.Run(ex.name, func(t *testing.T) {
			dir := t.TempDir()
			out, errs, code := call("program", ex.part, "-o", dir)
			require.Equal(t, 0, code, out+errs)
			program, err := os.ReadFile(filepath.Join(dir, filepath.Base(ex.program)))
			require.NoError(t, err)
			wanted(t, ex.program, string(program))
			verdict, errs, code := call("check", ex.program, "--part", ex.part)
			require.Equal(t, 0, code, verdict+errs)
			wanted(t, ex.dir+"/verdict.txt", verdict)
			byHand(t, ex, string(program))
		})
	}
}

// byHand holds an example against by-hand.txt: rows as in the hand-written
// programs, and (= block WORDS) for a block that must stand in the program.
func byHand(t *testing.T, ex example, program string) {
	text, err := os.ReadFile(ex.dir + "/by-hand.txt")
	require.NoError(t, err, "no golden without figures summed by hand")
	v, code := runCheck(t, ex.program, "--part", ex.part)
	assert.Equal(t, 0, code)
	rows, blocks := 0, 0
	for _, m := range wantLine.FindAllStringSubmatch(string(text), -1) {
		if words, ok := strings.CutPrefix(m[1], "block "); ok {
			assert.Contains(t, program, words)
			blocks++
			continue
		}
		handWrittenRow(t, m[1], v)
		rows++
	}
	require.NotZero(t, rows, "no row summed by hand")
	require.NotZero(t, blocks, "no block summed by hand")
}

// judged is a program judged in memory.
type judged struct {
	part    *profiles.Part
	program string
	verdict *verify.Verdict
}

// judge judges a program against a part file; assume holds KEY=VALUE pairs.
func judge(t testing.TB, partName, name, program string, assume ...string) judged {
	t.Helper()
	var found finding.List
	src, err := os.ReadFile(partName)
	require.NoError(t, err)
	open, err := opener(partName, "")
	require.NoError(t, err)
	part := profiles.Read(finding.NewText(partName, src), open, &found)
	require.NotNil(t, part, "%v", found.Sorted())
	for _, a := range assume {
		key, value, ok := strings.Cut(a, "=")
		require.True(t, ok, a)
		require.NoError(t, part.Shop.Machine.Assume(key, value))
	}
	v := verify.Check([]*finding.Text{finding.NewText(name, []byte(program))}, part, verify.Options{}, &found)
	return judged{part, program, v}
}

// judgeFile is judge on a program's file.
func judgeFile(t testing.TB, partName, name string, assume ...string) judged {
	t.Helper()
	text, err := os.ReadFile(name)
	require.NoError(t, err)
	return judge(t, partName, name, string(text), assume...)
}
