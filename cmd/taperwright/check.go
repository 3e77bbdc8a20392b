package main

import (
	"errors"
	"fmt"
	"io"
	"path/filepath"
	"strings"

	"github.com/spf13/cobra"

	"taperwright/profiles/finding"
	"taperwright/verify"
)

func newCheck() *cobra.Command {
	var part, setup, format, target, root string
	var assume []string
	cmd := &cobra.Command{
		Use:   "check PROGRAM... --part PART",
		Short: "judge programs against a part file",
		Long: `Reads programs as a control would, cuts the part's stock with the real insert,
and judges every feature against the part file. Comments are never believed.

Exit code 0: good (warnings alone are good). 1: judged, and wrong. 2: cannot be
read or judged. 3: arguments, files or disk.`,
		Example: "  taperwright check shaft.1.nc --part shaft.toml",
		RunE: func(c *cobra.Command, args []string) error {
			if len(args) == 0 || part == "" {
				return needs("a program and the part file it is to make", "taperwright check shaft.1.nc --part shaft.toml")
			}
			var found finding.List
			var programs []*finding.Text
			for _, name := range args {
				text, err := readText(c, name)
				if err != nil {
					return err
				}
				programs = append(programs, text)
			}
			p, err := readPart(c, part, root, &found)
			if err != nil {
				return err
			}
			found.Order(programs...)
			if p != nil {
				for _, a := range assume {
					key, value, ok := strings.Cut(a, "=")
					if !ok {
						return fmt.Errorf("--assume %s: want KEY=VALUE, for example x=radius", a)
					}
					if err := p.Shop.Machine.Assume(key, value); err != nil {
						return fmt.Errorf("--assume %s: %w", a, err)
					}
				}
			}
			v := verify.Check(programs, p, verify.Options{Setup: setup}, &found)
			if err := deliver(c, target, func(w io.Writer) error { return writeVerdict(w, v, format) }); err != nil {
				return err
			}
			return exitOf(v.State)
		},
	}
	f := cmd.Flags()
	f.StringVar(&part, "part", "", "the part `FILE` (TOML)")
	f.StringVar(&setup, "setup", "", "the `NAME` of the set-up that the first program is for")
	f.StringArrayVar(&assume, "assume", nil, "read [machine] otherwise for this run: `KEY=VALUE` (repeatable)")
	f.StringVar(&root, "root", "", "files the part names must lie below this `FOLDER`")
	f.StringVarP(&target, "output", "o", "", "write to this `FILE` instead of standard output")
	choiceFlag(cmd, &format, "format", "how to print", "text", "json", "sarif")
	return cmd
}

// writeVerdict prints a verdict in one of its forms.
func writeVerdict(w io.Writer, v *verify.Verdict, format string) error {
	switch format {
	case "json":
		return v.JSON(w)
	case "sarif":
		return finding.SARIF(w, v.Findings)
	}
	if v.Part == nil {
		return finding.Write(w, v.Findings, finding.Window)
	}
	return v.Text(w)
}

// exitOf returns the exit code of a verdict.
func exitOf(s verify.State) error {
	switch s {
	case verify.Good:
		return nil
	case verify.Wrong:
		return exitWrong
	}
	return exitCannot
}

// deliver writes to standard output, or to a file: whole or not at all.
func deliver(c *cobra.Command, target string, write func(io.Writer) error) error {
	if target == "" || target == "-" {
		return write(c.OutOrStdout())
	}
	var text strings.Builder
	o := &output{path: filepath.FromSlash(target)}
	if err := errors.Join(write(&text), o.look()); err != nil {
		return err
	}
	o.bytes = []byte(text.String())
	return saveAll([]*output{o})
}
