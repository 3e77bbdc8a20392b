package verify

import (
	"errors"
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"taperwright/profiles"
	"taperwright/profiles/finding"
)

// lathe is the shop of these tests, kept in the part file itself.
const lathe = `
[machine]
words         = "g90-turns"
x             = "diameter"
unit          = "mm"
missing_point = "whole"
feed          = "per-rev"
speed         = "rpm"
spindle       = "M4"
top_speed     = 3000

[[tool]]
station = 1
offset  = 1
purpose = "both"
kind    = "turn"
side    = "outside"
nose_radius        = %g
included_angle     = 55
cutting_edge_angle = 93
edge_length        = 15
hand               = "right"
`

// partOf reads a part whose shop is the lathe above with the nose given.
func partOf(t testing.TB, nose float64, text string) *profiles.Part {
	t.Helper()
	var found finding.List
	src := finding.NewText("part.toml", []byte(text+fmt.Sprintf(lathe, nose)))
	p := profiles.Read(src, func(string) (*finding.Text, error) { return nil, errors.New("no other file") }, &found)
	var said strings.Builder
	_ = finding.Write(&said, found.Sorted(), finding.Window)
	require.NotNil(t, p, said.String())
	require.False(t, found.HasErrors(), said.String())
	return p
}

// checkOf judges a program given as text.
func checkOf(t testing.TB, part *profiles.Part, program string) *Verdict {
	t.Helper()
	var found finding.List
	return Check([]*finding.Text{finding.NewText("program.nc", []byte(program))}, part, Options{}, &found)
}

// rowOf returns the row of a feature.
func rowOf(t testing.TB, v *Verdict, name string) *Row {
	t.Helper()
	for i := range v.Rows {
		if v.Rows[i].Name == name {
			return &v.Rows[i]
		}
	}
	require.Fail(t, "no row", name)
	return nil
}

func off(t testing.TB, r *Row, key string) float64 {
	t.Helper()
	x, known := r.Off.Get(key)
	require.True(t, known, "%s: %s: %v", r.Name, key, r.Off)
	return x
}

// page prints v as text.
func page(t testing.TB, v *Verdict) string {
	t.Helper()
	var b strings.Builder
	require.NoError(t, v.Text(&b))
	return b.String()
}

func codesOf(v *Verdict) (out []string) {
	for _, f := range v.Findings {
		if f.Severity != finding.Note {
			out = append(out, f.Code)
		}
	}
	return out
}
