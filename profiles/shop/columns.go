package shop

import (
	_ "embed"
	"slices"
	"strings"
	"sync"
)

//go:embed columns.tsv
var columnsTSV string

// DefaultColumn is the column taken, and said as assumed, when none is named.
// Its G90 and G94 are cycles: a program written for another column then ends
// in "cannot judge", where the reverse mistake would read a cycle as a plain
// move.
const DefaultColumn = "g90-turns"

// column is one starting column: what a lathe of its kind is taken to be.
type column struct {
	words    map[Purpose][]string // first: the one posted
	settings []setting            // in the order of the table
}

// setting is a [machine] key with its value as TOML text.
type setting struct{ key, value string }

// tables returns the names of the columns in the order of the file, the
// columns, and all purposes in the order of the file.
var tables = sync.OnceValues(func() (names []string, all map[string]column) {
	all = map[string]column{}
	for line := range strings.Lines(columnsTSV) {
		cells := strings.Split(strings.TrimSuffix(line, "\n"), "\t")
		switch cells[0] {
		case "row":
			names = cells[2 : len(cells)-1]
			for _, n := range names {
				all[n] = column{words: map[Purpose][]string{}}
			}
		case "word":
			for i, n := range names {
				if w := strings.Fields(cells[2+i]); w[0] != "-" {
					all[n].words[Purpose(cells[1])] = w
				}
			}
		case "setting":
			for i, n := range names {
				c := all[n]
				c.settings = append(c.settings, setting{cells[1], cells[2+i]})
				all[n] = c
			}
		}
	}
	return names, all
})

// purposes returns every purpose in the order of the table.
var purposes = sync.OnceValue(func() (all []string) {
	for line := range strings.Lines(columnsTSV) {
		if cells := strings.Split(line, "\t"); cells[0] == "word" {
			all = append(all, cells[1])
		}
	}
	return all
})

// Columns returns the names of the starting columns.
func Columns() []string {
	names, _ := tables()
	return slices.Clone(names)
}

// Word returns w in the one way words are compared: capital letter, no
// needless zeros ("g00" is "G0", "G54.0" is "G54"), and whether w is a letter
// with a number without a sign.
func Word(w string) (string, bool) {
	if len(w) < 2 || len(w) > 8 {
		return "", false
	}
	letter := w[0] &^ 0x20
	whole, part, point := strings.Cut(w[1:], ".")
	if letter < 'A' || letter > 'Z' || !digits(whole) || point && !digits(part) || whole+part == "" {
		return "", false
	}
	whole, part = strings.TrimLeft(whole, "0"), strings.TrimRight(part, "0")
	if whole == "" {
		whole = "0"
	}
	if part != "" {
		whole += "." + part
	}
	return string(letter) + whole, true
}

func digits(s string) bool {
	return strings.Trim(s, "0123456789") == ""
}

// Meaning returns what a word does on this lathe. The word may be written
// with needless zeros.
func (m *Machine) Meaning(word string) (Purpose, bool) {
	if p, ok := m.means[word]; ok { // the usual case, without work
		return p, true
	}
	w, ok := Word(word)
	if !ok {
		return "", false
	}
	if m.means != nil {
		p, ok := m.means[w]
		return p, ok
	}
	for _, p := range purposes() { // a Machine put together by hand
		if m.Words[Purpose(p)] == w {
			return Purpose(p), true
		}
	}
	return "", false
}

// IsHarmless tells whether the shop file says that word moves nothing and
// changes no mode on this lathe.
func (m *Machine) IsHarmless(word string) bool {
	w, ok := Word(word)
	return ok && slices.Contains(m.Harmless, w)
}

// index fills Words and the reverse of it from the column's words and those
// set otherwise. A word set otherwise is taken away from the purpose that the
// column gave it: feed_per_rev = "G94" must not leave G94 a facing cycle.
func (m *Machine) index(c column) {
	m.Words, m.means = map[Purpose]string{}, map[string]Purpose{}
	for _, own := range []bool{true, false} {
		for _, name := range purposes() {
			p := Purpose(name)
			words, set := m.own[p]
			if set != own {
				continue
			}
			if !set {
				words = c.words[p]
			}
			for _, w := range words {
				switch q, taken := m.means[w]; {
				case !taken:
					m.means[w] = p
				case p != q && alike(p, q): // its one meaning covers both
					m.means[w] = SpeedCap
				default:
					continue
				}
				if m.Words[p] == "" {
					m.Words[p] = w
				}
			}
		}
	}
}
