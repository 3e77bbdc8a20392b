package main

import (
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"taperwright/profiles"
)

func TestOpenerStaysBelowItsRoot(t *testing.T) {
	root := t.TempDir()
	parts := filepath.Join(root, "repo", "parts")
	require.NoError(t, os.MkdirAll(parts, 0o755))
	require.NoError(t, os.Mkdir(filepath.Join(root, "repo", ".git"), 0o755))
	for name, text := range map[string]string{"repo/shop.toml": "in the repo", "secret.toml": "outside", "repo/parts/near.toml": "near"} {
		require.NoError(t, os.WriteFile(filepath.Join(root, filepath.FromSlash(name)), []byte(text), 0o644))
	}
	require.NoError(t, os.Symlink(filepath.Join(root, "secret.toml"), filepath.Join(parts, "link.toml")))
	open, err := opener(filepath.Join(parts, "part.toml"), "")
	require.NoError(t, err)
	for name, want := range map[string]string{"../shop.toml": "in the repo", "near.toml": "near", "./near.toml": "near"} {
		text, err := open(name)
		require.NoError(t, err, name)
		assert.Equal(t, want, string(text.Bytes))
	}
	for _, name := range []string{"../../secret.toml", "link.toml", filepath.Join(root, "secret.toml"), "../../../etc/passwd"} {
		_, err := open(name)
		assert.ErrorIs(t, err, profiles.ErrOutsideRoot, name)
	}
	_, err = open("none.toml")
	assert.ErrorIs(t, err, os.ErrNotExist)

	narrow, err := opener(filepath.Join(parts, "part.toml"), parts)
	require.NoError(t, err)
	_, err = narrow("../shop.toml")
	assert.ErrorIs(t, err, profiles.ErrOutsideRoot)
	_, err = opener(filepath.Join(root, "elsewhere.toml"), parts)
	assert.ErrorContains(t, err, "not below the root")
}
