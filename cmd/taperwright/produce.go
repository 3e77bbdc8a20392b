package main

import (
	"bytes"
	"fmt"
	"path/filepath"
	"strings"

	"github.com/spf13/cobra"

	"taperwright/post"
	"taperwright/profiles"
	"taperwright/profiles/finding"
	"taperwright/toolpath"
	"taperwright/verify"
)

// product is one set-up planned, written and judged.
type product struct {
	setup   int
	plan    *toolpath.Plan
	program *post.Program
	text    *finding.Text // the program under the name it is kept by
	path    string
}

// produce is where plan, post and verify meet: it plans every set-up of part,
// posts the plans, and reads the very bytes back through the verifier. The
// products are fit to be kept only when the verdict is good. A nil verdict
// means that something could not be planned; into says what.
func produce(part *profiles.Part, names []string, into *finding.List) ([]product, *verify.Verdict) {
	var made []product
	var texts []*finding.Text
	for n := range part.Setups {
		p := product{setup: n, plan: toolpath.New(part, n, into), path: names[n]}
		if p.plan == nil {
			continue
		}
		if p.program = post.Write(p.plan, part, into); p.program == nil {
			continue
		}
		p.text = finding.NewText(filepath.ToSlash(p.path), p.program.Bytes)
		made, texts = append(made, p), append(texts, p.text)
	}
	if into.HasErrors() || len(made) < len(part.Setups) {
		return made, nil
	}
	return made, verify.Check(texts, part, verify.Options{}, into)
}

// readPart reads a part file and all it names. nil: into says why.
func readPart(c *cobra.Command, name, root string, into *finding.List) (*profiles.Part, error) {
	text, err := readText(c, name)
	if err != nil {
		return nil, err
	}
	open, err := opener(name, root)
	if err != nil {
		return nil, err
	}
	into.Order(text)
	return profiles.Read(text, open, into), nil
}

// keep writes the programs beside each other, all or none. A program that
// someone changed by hand, or that is not ours, is not overwritten without
// replace: the error shows the difference.
func keep(made []product, replace bool) (written []string, err error) {
	var outs []*output
	for _, p := range made {
		o := &output{path: p.path, bytes: p.program.Bytes}
		if err := o.look(); err != nil {
			return nil, err
		}
		if bytes.Equal(o.before, o.bytes) && o.before != nil {
			continue
		}
		if o.before != nil && !replace {
			if ours, untouched := post.Untouched(o.before); !ours || !untouched {
				return nil, edited(o, ours)
			}
		}
		outs = append(outs, o)
	}
	if err := saveAll(outs); err != nil {
		return nil, err
	}
	for _, o := range outs {
		written = append(written, filepath.ToSlash(o.path))
	}
	return written, nil
}

// edited says that a program in the way was changed by hand, and how.
func edited(o *output, ours bool) error {
	name := filepath.ToSlash(o.path)
	why := "was edited by hand since it was written"
	if !ours {
		why = "was not written by this program"
	}
	var diff strings.Builder
	for line := range strings.Lines(difference(name+" (as it stands)", name+" (as planned)", string(o.before), string(o.bytes), 2)) {
		diff.WriteString(finding.Clean(strings.TrimSuffix(line, "\n")) + "\n")
	}
	return fmt.Errorf("%s %s: not overwritten; --replace overwrites it\n%s", name, why, strings.TrimSuffix(diff.String(), "\n"))
}

// programNames returns the file of each set-up's program: the part file's name
// without its ending, the set-up's number, .nc; in folder, or beside the part.
func programNames(partName, folder string, setups int) []string {
	path := filepath.FromSlash(partName)
	stem := strings.TrimSuffix(filepath.Base(path), filepath.Ext(path))
	if folder == "" {
		folder = filepath.Dir(path)
	}
	names := make([]string, setups)
	for n := range names {
		names[n] = filepath.Join(folder, fmt.Sprintf("%s.%d.nc", stem, n+1))
	}
	return names
}
