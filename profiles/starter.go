package profiles

import (
	_ "embed"
	"slices"
)

//go:embed starter.toml
var starter []byte

// Starter returns the commented part file to begin from. It names the shop
// file "shop.toml", which shop.Starter gives.
func Starter() []byte { return slices.Clone(starter) }
