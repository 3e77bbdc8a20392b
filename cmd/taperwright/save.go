package main

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
)

// output is one file to be written.
type output struct {
	path   string
	bytes  []byte
	before []byte // what stood there; nil: nothing
	mode   fs.FileMode
	temp   string
}

// look reads what stands at the target of o. A target that is a link or no
// plain file is an error: links are not followed.
func (o *output) look() error {
	o.mode = 0o644
	info, err := os.Lstat(o.path)
	if errors.Is(err, fs.ErrNotExist) {
		return nil
	}
	if err != nil {
		return plain(err)
	}
	if !info.Mode().IsRegular() {
		return fmt.Errorf("%s is not a plain file (links are not followed)", filepath.ToSlash(o.path))
	}
	if info.Mode().Perm()&0o200 == 0 {
		return fmt.Errorf("%s is read-only", filepath.ToSlash(o.path))
	}
	o.mode = info.Mode().Perm()
	o.before, err = os.ReadFile(o.path)
	if o.before == nil {
		o.before = []byte{}
	}
	return plain(err)
}

// saveAll writes all outputs or none: each into a temporary file beside its
// target, flushed to disk, and only when all stand are they renamed into
// place. When a rename fails, those already done are put back.
func saveAll(outs []*output) (err error) {
	defer func() {
		for _, o := range outs {
			if o.temp != "" {
				os.Remove(o.temp)
			}
		}
	}()
	for _, o := range outs {
		if err := o.stage(); err != nil {
			return err
		}
	}
	for i, o := range outs {
		if err := os.Rename(o.temp, o.path); err != nil {
			err = plain(err)
			for _, done := range outs[:i] {
				err = errors.Join(err, done.putBack())
			}
			return err
		}
		o.temp = ""
	}
	return nil
}

// stage writes o into a temporary file beside its target.
func (o *output) stage() error {
	f, err := os.CreateTemp(filepath.Dir(o.path), "."+filepath.Base(o.path)+".*")
	if err != nil {
		return fmt.Errorf("cannot write %s: %w", filepath.ToSlash(o.path), cause(err))
	}
	o.temp = f.Name()
	_, err = f.Write(o.bytes)
	err = errors.Join(err, f.Chmod(o.mode), f.Sync(), f.Close())
	if err != nil {
		return fmt.Errorf("cannot write %s: %w", filepath.ToSlash(o.path), cause(err))
	}
	return nil
}

// putBack restores what stood at o's target before.
func (o *output) putBack() error {
	if o.before == nil {
		return os.Remove(o.path)
	}
	old := &output{path: o.path, bytes: o.before, mode: o.mode}
	if err := old.stage(); err != nil {
		return err
	}
	return os.Rename(old.temp, old.path)
}

// cause returns what lies under a path error, so that a message names the
// target and not a temporary file.
func cause(err error) error {
	var p *fs.PathError
	if errors.As(err, &p) {
		return p.Err
	}
	return err
}
