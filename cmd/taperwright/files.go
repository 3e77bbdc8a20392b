package main

import (
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path"
	"path/filepath"

	"github.com/spf13/cobra"

	"taperwright/profiles"
	"taperwright/profiles/finding"
)

// largestText is the most that is read of any file: a part file's own limit is
// 1 MB, a program of 100,000 moves has 4 MB.
const largestText = 64 << 20

// readText reads a file, or standard input for "-".
func readText(c *cobra.Command, name string) (*finding.Text, error) {
	var from io.Reader = c.InOrStdin()
	if name != "-" {
		f, err := os.Open(filepath.FromSlash(name))
		if err != nil {
			return nil, plain(err)
		}
		defer f.Close()
		if s, err := f.Stat(); err == nil && s.IsDir() {
			return nil, fmt.Errorf("%s is a folder, not a file", name)
		}
		from = f
	}
	b, err := io.ReadAll(io.LimitReader(from, largestText+1))
	if err != nil {
		return nil, fmt.Errorf("%s: %w", name, plain(err))
	}
	if len(b) > largestText {
		return nil, fmt.Errorf("%s is larger than %d MiB", name, largestText>>20)
	}
	return finding.NewText(filepath.ToSlash(name), b), nil
}

// plain says what went wrong with a path without the name of the system call.
func plain(err error) error {
	var p *fs.PathError
	if errors.As(err, &p) {
		return fmt.Errorf("%s: %w", filepath.ToSlash(p.Path), p.Err)
	}
	return err
}

// opener opens the files a part names: relative to the part's folder, and
// never outside root ("" chooses it: the deeper of the working folder and the
// top of the repository that holds the part, else the part's own folder).
func opener(part, root string) (profiles.Opener, error) {
	folder, err := filepath.Abs(filepath.Dir(filepath.FromSlash(part)))
	if err != nil {
		return nil, err
	}
	if part == "-" {
		if folder, err = os.Getwd(); err != nil {
			return nil, err
		}
	}
	if root == "" {
		root = rootFor(folder)
	}
	if root, err = filepath.Abs(root); err != nil {
		return nil, err
	}
	within, err := filepath.Rel(root, folder)
	if err != nil || !filepath.IsLocal(within) {
		return nil, fmt.Errorf("%s is not below the root %s", part, root)
	}
	shown := filepath.ToSlash(filepath.Dir(filepath.FromSlash(part)))
	return func(name string) (*finding.Text, error) {
		inside := filepath.Join(within, filepath.FromSlash(name))
		if filepath.IsAbs(filepath.FromSlash(name)) || !filepath.IsLocal(inside) {
			return nil, profiles.ErrOutsideRoot
		}
		top, err := os.OpenRoot(root) // refuses links that leave it
		if err != nil {
			return nil, plain(err)
		}
		defer top.Close()
		f, err := top.Open(inside)
		if err != nil {
			if info, lerr := os.Lstat(filepath.Join(root, inside)); lerr == nil && info.Mode()&fs.ModeSymlink != 0 {
				return nil, profiles.ErrOutsideRoot
			}
			return nil, plain(err)
		}
		defer f.Close()
		b, err := io.ReadAll(io.LimitReader(f, largestText))
		if err != nil {
			return nil, plain(err)
		}
		return finding.NewText(path.Join(shown, filepath.ToSlash(name)), b), nil
	}, nil
}

// rootFor returns the deeper of the working folder and the repository top, of
// those that hold folder; folder itself when neither does.
func rootFor(folder string) string {
	root := ""
	if wd, err := os.Getwd(); err == nil && holds(wd, folder) {
		root = wd
	}
	for top := folder; ; top = filepath.Dir(top) {
		if _, err := os.Lstat(filepath.Join(top, ".git")); err == nil {
			if len(top) > len(root) {
				root = top
			}
			break
		}
		if top == filepath.Dir(top) {
			break
		}
	}
	if root == "" {
		return folder
	}
	return root
}

// holds tells whether folder is top or lies below it.
func holds(top, folder string) bool {
	rel, err := filepath.Rel(top, folder)
	return err == nil && filepath.IsLocal(rel)
}
