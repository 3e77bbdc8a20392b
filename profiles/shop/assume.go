package shop

import (
	"errors"
	"fmt"
	"slices"
	"strings"

	"taperwright/profiles/finding"
	"taperwright/profiles/source"
)

// Assume sets one key of [machine] for one run, as if the shop file said so:
// key may have dots ("word.speed_cap"), value is a TOML value, or a bare word
// where that is no value ("radius" stands for "\"radius\""). Lengths are in
// m.Lengths. Nothing is changed when there is an error.
func (m *Machine) Assume(key, value string) error {
	first, _, _ := strings.Cut(key, ".")
	names := make([]string, len(machineKeys))
	for i, k := range machineKeys {
		names[i] = k.Name
	}
	if !plainKey(key) || !slices.Contains(names, first) {
		hint := ""
		if near, ok := finding.Nearest(strings.ToLower(first), names); ok {
			hint = "; did you mean " + near + "?"
		}
		return fmt.Errorf("--assume: [machine] has no key %q%s", finding.Clean(key), hint)
	}
	if strings.ContainsAny(value, "\r\n") {
		return fmt.Errorf("--assume %s: the value goes over several lines", key)
	}
	t, found := parseOne(key, value)
	if t == nil {
		t, found = parseOne(key, quote(strings.TrimSpace(value)))
	}
	if t == nil {
		return fail(key, value, found)
	}
	set := *m
	set.take(reader{set.Lengths, found}, t)
	set.settle()
	if found.Len() > 0 {
		return fail(key, value, found)
	}
	var before, after finding.List
	m.judge(&before)
	set.judge(&after)
	for _, f := range after.Sorted() { // only what this key breaks is its fault
		if !slices.ContainsFunc(before.Sorted(), func(b finding.Finding) bool { return b.Message == f.Message }) {
			found.Add(f)
			return fail(key, value, found)
		}
	}
	*m = set
	return nil
}

// plainKey tells whether key is lower-case names with dots between, so that
// it cannot be anything but one key of TOML. A work offset's word is a name.
func plainKey(key string) bool {
	for part := range strings.SplitSeq(key, ".") {
		if part == "" || strings.Trim(part, "abcdefghijklmnopqrstuvwxyz_ABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789") != "" {
			return false
		}
	}
	return len(key) <= 80
}

// parseOne parses "key = value" and returns nil when that is not one key with
// one value. Findings of reading it go to the list.
func parseOne(key, value string) (*source.Table, *finding.List) {
	into := &finding.List{}
	text := finding.NewText("--assume", []byte(key+" = "+value+"\n"))
	t, ok := source.Parse(text, into)
	if !ok {
		return nil, into
	}
	return t, into
}

// quote returns s as a TOML text.
func quote(s string) string {
	return `"` + strings.NewReplacer(`\`, `\\`, `"`, `\"`, "\t", `\t`).Replace(s) + `"`
}

// fail returns the first finding as an error of the command line.
func fail(key, value string, into *finding.List) error {
	if all := into.Sorted(); len(all) > 0 {
		f := all[0]
		message := finding.Clean(f.Message)
		if f.Help != "" {
			message += "; " + finding.Clean(f.Help)
		}
		return fmt.Errorf("--assume %s=%s: %s", key, finding.Clean(value), message)
	}
	return errors.New("--assume " + key + ": not understood")
}
