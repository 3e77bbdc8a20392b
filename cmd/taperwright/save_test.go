package main

import (
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// folder returns the names in dir, so that a test sees forgotten temporary files.
func folder(t *testing.T, dir string) []string {
	t.Helper()
	entries, err := os.ReadDir(dir)
	require.NoError(t, err)
	var names []string
	for _, e := range entries {
		names = append(names, e.Name())
	}
	return names
}

func save(t *testing.T, outs ...*output) error {
	t.Helper()
	for _, o := range outs {
		if err := o.look(); err != nil {
			return err
		}
	}
	return saveAll(outs)
}

func TestSaveKeepsModeAndLeavesNothingBehind(t *testing.T) {
	dir := t.TempDir()
	a := filepath.Join(dir, "a.nc")
	require.NoError(t, os.WriteFile(a, []byte("old"), 0o600))
	require.NoError(t, save(t, &output{path: a, bytes: []byte("new")}, &output{path: filepath.Join(dir, "b.nc"), bytes: []byte("other")}))
	assert.Equal(t, []string{"a.nc", "b.nc"}, folder(t, dir))
	b, err := os.ReadFile(a)
	require.NoError(t, err)
	assert.Equal(t, "new", string(b))
	info, err := os.Stat(a)
	require.NoError(t, err)
	assert.Equal(t, fs.FileMode(0o600), info.Mode().Perm())
}

// The second file cannot be put in place: the first is put back as it was.
func TestSaveAllOrNone(t *testing.T) {
	dir := t.TempDir()
	a, b, fresh := filepath.Join(dir, "a.nc"), filepath.Join(dir, "b.nc"), filepath.Join(dir, "c.nc")
	require.NoError(t, os.WriteFile(a, []byte("old"), 0o644))
	outs := []*output{{path: a, bytes: []byte("new")}, {path: fresh, bytes: []byte("new")}, {path: b, bytes: []byte("new")}}
	for _, o := range outs {
		require.NoError(t, o.look())
	}
	require.NoError(t, os.MkdirAll(filepath.Join(b, "in the way"), 0o755)) // a folder cannot be renamed over
	err := saveAll(outs)
	require.Error(t, err)
	got, err := os.ReadFile(a)
	require.NoError(t, err)
	assert.Equal(t, "old", string(got))
	assert.Equal(t, []string{"a.nc", "b.nc"}, folder(t, dir))
}

func TestSaveRefuses(t *testing.T) {
	dir := t.TempDir()
	file := filepath.Join(dir, "file.nc")
	require.NoError(t, os.WriteFile(file, []byte("old"), 0o444))
	link := filepath.Join(dir, "link.nc")
	require.NoError(t, os.Symlink(file, link))
	assert.ErrorContains(t, save(t, &output{path: file, bytes: []byte("new")}), "read-only")
	assert.ErrorContains(t, save(t, &output{path: link, bytes: []byte("new")}), "links are not followed")
	assert.ErrorContains(t, save(t, &output{path: dir, bytes: []byte("new")}), "not a plain file")
	assert.ErrorContains(t, save(t, &output{path: filepath.Join(dir, "none", "x.nc"), bytes: []byte("new")}), "no such file")
	got, err := os.ReadFile(file)
	require.NoError(t, err)
	assert.Equal(t, "old", string(got))
	assert.Equal(t, []string{"file.nc", "link.nc"}, folder(t, dir))
}

// A disk without room: a device of Linux that says so at every write.
func TestSaveOnAFullDisk(t *testing.T) {
	if _, err := os.Stat("/dev/full"); err != nil {
		t.Skip("this system has no /dev/full")
	}
	var out, errw strings.Builder
	assert.Equal(t, 3, run([]string{"new", "part", "-o", "/dev/full"}, strings.NewReader(""), &out, &errw))
	full, err := os.OpenFile("/dev/full", os.O_WRONLY, 0)
	require.NoError(t, err)
	defer full.Close()
	assert.Equal(t, 3, run([]string{"new", "part"}, strings.NewReader(""), full, &errw))
	assert.Contains(t, errw.String(), "no space left")
}

func TestDifference(t *testing.T) {
	assert.Empty(t, difference("a", "b", "same\n", "same\n", 2))
	assert.Equal(t, `--- a
+++ b
@@ -2,3 +2,3 @@
 two
-three
+THREE
 four
@@ -7,1 +7,2 @@
 seven
+eight
\ No newline at end of file
`, difference("a", "b", "one\ntwo\nthree\nfour\nfive\nsix\nseven\n", "one\ntwo\nTHREE\nfour\nfive\nsix\nseven\neight", 1))
	assert.Equal(t, "--- a\n+++ b\n@@ -0,0 +1,1 @@\n+x\n", difference("a", "b", "", "x\n", 3))
	many := strings.Repeat("x\n", mostCompared+2)
	assert.Contains(t, difference("a", "b", many, "y\n", 3), "not compared line by line")
}
