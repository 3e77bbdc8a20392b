package main

import (
	"github.com/spf13/cobra"
)

// newRoot builds the whole command tree anew: a cobra command that ran once
// keeps its flag values.
func newRoot() *cobra.Command {
	root := &cobra.Command{
		Use:   "taperwright",
		Short: "plan, write and check the turning of tapers",
		Long: `Plans, writes and checks the turning of tapers.

A part file (TOML) says what is wanted: journals, tapers, shoulders, chamfers,
fillets, with tolerances. 'program' plans the cuts, writes plain RS-274 words,
reads them back with a verifier of its own, and only then keeps them. 'check'
judges any program, ours or written by hand, against the part file.

The plan is arithmetic, not permission: the person at the machine decides.`,
		Example:           "  taperwright new part > shaft.toml\n  taperwright program shaft.toml\n  taperwright check shaft.1.nc --part shaft.toml",
		SilenceUsage:      true,
		SilenceErrors:     true,
		DisableAutoGenTag: true,
		Args:              cobra.NoArgs,
		RunE:              func(c *cobra.Command, _ []string) error { return c.Help() },
	}
	root.SetFlagErrorFunc(func(c *cobra.Command, err error) error {
		return usageError{err, c.CommandPath()}
	})
	root.AddCommand(newProgram(), newCheck(), newCone(), newNew(), newExplain())
	return root
}

// usageError is a call that cannot be understood.
type usageError struct {
	err     error
	command string
}

func (u usageError) Error() string { return u.err.Error() + " (see '" + u.command + " --help')" }
func (u usageError) Unwrap() error { return u.err }

// choice is a flag that takes one of a few words.
type choice struct {
	to      *string
	allowed []string
}

func (c choice) String() string {
	if c.to == nil {
		return ""
	}
	return *c.to
}

func (c choice) Type() string {
	out := ""
	for i, a := range c.allowed {
		if i > 0 {
			out += "|"
		}
		out += a
	}
	return out
}

func (c choice) Set(s string) error {
	for _, a := range c.allowed {
		if a == s {
			*c.to = s
			return nil
		}
	}
	return wantOneOf(c.allowed)
}

// choiceFlag adds a flag that takes one of a few words; the first is the default.
func choiceFlag(cmd *cobra.Command, to *string, name, help string, allowed ...string) {
	*to = allowed[0]
	cmd.Flags().Var(choice{to, allowed}, name, help)
	_ = cmd.RegisterFlagCompletionFunc(name, cobra.FixedCompletions(allowed, cobra.ShellCompDirectiveNoFileComp)) // fails only for a flag that does not exist
}

type wantOneOf []string

func (w wantOneOf) Error() string {
	out := "want one of"
	for i, a := range w {
		if i > 0 {
			out += ","
		}
		out += " " + a
	}
	return out
}

// needs is the answer of a command that got fewer arguments than it needs:
// what it needs and one real example.
func needs(what, example string) error {
	return needed{what, example}
}

type needed struct{ what, example string }

func (n needed) Error() string { return "needs " + n.what + ", for example:\n  " + n.example }
