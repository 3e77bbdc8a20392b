package shop

import (
	_ "embed"
	"slices"
)

//go:embed starter.toml
var starter []byte

// Starter returns the commented shop file to begin from.
func Starter() []byte { return slices.Clone(starter) }
