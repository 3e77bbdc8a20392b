package main

import (
	"errors"
	"os"
	"path/filepath"

	"github.com/spf13/cobra"

	"taperwright/profiles"
	"taperwright/profiles/shop"
)

func newNew() *cobra.Command {
	var target string
	cmd := &cobra.Command{
		Use:   "new part|shop",
		Short: "print a commented starter file",
		Long: `Prints a commented part file or shop file to begin from.

The part names its shop file, so a first program needs both:
a file that is there already is never overwritten.`,
		Example:   "  taperwright new shop -o shop.toml\n  taperwright new part -o shaft.toml",
		ValidArgs: []cobra.Completion{"part", "shop"},
		RunE: func(c *cobra.Command, args []string) error {
			var text []byte
			switch {
			case len(args) == 1 && args[0] == "part":
				text = profiles.Starter()
			case len(args) == 1 && args[0] == "shop":
				text = shop.Starter()
			default:
				return needs("one of the words part, shop", "taperwright new part -o shaft.toml")
			}
			if target == "" || target == "-" {
				_, err := c.OutOrStdout().Write(text)
				return err
			}
			o := &output{path: filepath.FromSlash(target), bytes: text}
			if _, err := os.Lstat(o.path); err == nil {
				return errors.New(target + " is there already; choose another name")
			}
			if err := o.look(); err != nil {
				return err
			}
			return saveAll([]*output{o})
		},
	}
	cmd.Flags().StringVarP(&target, "output", "o", "", "write to this new `FILE` instead of standard output")
	return cmd
}
