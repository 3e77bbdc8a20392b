package source

import (
	"strconv"
	"strings"

	"taperwright/profiles/finding"
)

// Key is one row of a table's key list: what may stand there, for reading and
// for the schema.
type Key struct{ Name, Type, Help string }

// Only refuses the keys that neither stand in keys nor were asked for by a
// getter: with the likely one, and as such when only the case differs.
func (t *Table) Only(keys []Key) {
	names := make([]string, 0, len(keys))
	for _, k := range keys {
		t.known[k.Name] = true
		names = append(names, k.Name)
	}
	for _, key := range t.keys {
		if t.known[key] {
			continue
		}
		at := t.entries[key].key
		near, ok := nearest(key, names)
		switch {
		case ok && strings.EqualFold(near, key):
			t.into.Error(at, CaseKey, "write "+near, "%s must be written %q", t.join(key), near)
		case ok:
			t.into.Error(at, UnknownKey, "did you mean "+strconv.Quote(near)+"?", "%s has no key %q", t.Name(), key)
		case len(names) > 0 && len(names) <= 12:
			t.into.Error(at, UnknownKey, "it may have "+strings.Join(names, ", "), "%s has no key %q", t.Name(), key)
		default:
			t.into.Error(at, UnknownKey, "", "%s has no key %q", t.Name(), key)
		}
	}
}

// nearest is finding.Nearest, but a word equal but for case comes first.
func nearest(word string, among []string) (string, bool) {
	for _, w := range among {
		if strings.EqualFold(w, word) {
			return w, true
		}
	}
	return finding.Nearest(word, among)
}
