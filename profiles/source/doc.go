// Package source reads TOML into tables whose every key and value knows its
// place in the text, also inside arrays of tables and inline tables.
//
// Limits are held before any library sees the text, because hostile TOML ends
// the process or takes minutes in them. Then one library judges the text and
// gives the places, the other gives the values; where they differ nothing is
// read. Typed getters collect findings instead of stopping at the first.
//
// It is the only importer of the TOML libraries.
package source
