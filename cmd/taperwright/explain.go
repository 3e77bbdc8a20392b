package main

import (
	"fmt"
	"io/fs"
	"slices"
	"strings"

	"github.com/spf13/cobra"

	"taperwright/post"
	"taperwright/profiles"
	"taperwright/profiles/finding"
	"taperwright/profiles/shop"
	"taperwright/profiles/source"
	"taperwright/profiles/taper"
	"taperwright/toolpath"
	"taperwright/verify"
	"taperwright/verify/motion"
	"taperwright/verify/rs274"
)

// pages are the rooms that raise findings; each keeps a page per code.
func pages() []fs.FS {
	return []fs.FS{source.Pages, taper.Pages, shop.Pages, profiles.Pages, toolpath.Pages, post.Pages, rs274.Pages, motion.Pages, verify.Pages}
}

// codes returns every code that has a page, in alphabetical order.
func codes() []string {
	var all []string
	for _, p := range pages() {
		names, _ := fs.Glob(p, "codes/*.md") // the pattern is well formed
		for _, n := range names {
			all = append(all, strings.TrimSuffix(strings.TrimPrefix(n, "codes/"), ".md"))
		}
	}
	slices.Sort(all)
	return slices.Compact(all)
}

func newExplain() *cobra.Command {
	return &cobra.Command{
		Use:     "explain CODE",
		Short:   "tell what a finding means and what to do",
		Long:    "Tells what a finding means, shows an example and says what to do.\nThe code of a finding stands in square brackets at its end. Without a code: lists them all.",
		Example: "  taperwright explain gouge",
		Args:    cobra.MaximumNArgs(1),
		ValidArgsFunction: func(_ *cobra.Command, args []string, _ string) ([]cobra.Completion, cobra.ShellCompDirective) {
			if len(args) > 0 {
				return nil, cobra.ShellCompDirectiveNoFileComp
			}
			return codes(), cobra.ShellCompDirectiveNoFileComp
		},
		RunE: func(c *cobra.Command, args []string) error {
			if len(args) == 0 {
				for _, code := range codes() {
					page, _ := finding.Page(code, pages()...)
					title, _, _ := strings.Cut(page, "\n")
					fmt.Fprintln(c.OutOrStdout(), strings.TrimPrefix(title, "# "))
				}
				return nil
			}
			page, ok := finding.Page(args[0], pages()...)
			if !ok {
				if near, ok := finding.Nearest(args[0], codes()); ok {
					return fmt.Errorf("no finding has the code %q; did you mean %q?", args[0], near)
				}
				return fmt.Errorf("no finding has the code %q; 'taperwright explain' lists them", args[0])
			}
			_, err := fmt.Fprint(c.OutOrStdout(), page)
			return err
		},
	}
}
