package post

import (
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"taperwright/profiles"
	"taperwright/profiles/finding"
	"taperwright/profiles/geom"
	"taperwright/profiles/shop"
	"taperwright/toolpath"
)

func near(t testing.TB, want, got, tol float64, msg ...any) {
	t.Helper()
	require.Greater(t, tol, 0.0)
	if !(math.Abs(want-got) <= tol) {
		require.Failf(t, "not near", "want %.12g, got %.12g, off by %g > %g: %v", want, got, got-want, tol, msg)
	}
}

func given[T any](v T) shop.Setting[T] { return shop.Setting[T]{Value: v, Given: true} }

func at(z, r float64) geom.Point { return geom.Point{Z: z, R: r} }

// lathe returns the lathe of a column with what posting needs.
func lathe(t testing.TB, column string) *shop.Shop {
	m, ok := shop.Default(column)
	require.True(t, ok)
	m.Spindle, m.TopSpeed, m.Change = given("M4"), given(3000.0), given(shop.Place{Z: 150, R: 100})
	return &shop.Shop{Text: finding.NewText("shop.toml", nil), Machine: m, Tools: []shop.Tool{{
		Name: "T3", Station: 3, Offset: 13, Kind: "turn", Purpose: "both", Nose: 0.4, TipX: -1, TipZ: -1,
		SurfaceSpeed: given(180.0), FeedRate: given(0.1),
	}}}
}

// socket is a plan by hand: a cone 1:10 from diameter 20 over 30 mm with a
// quarter round of radius 2 behind it. The path stands beside it by made-up
// figures; posting does not ask how it came about.
func socket(s *shop.Shop) (*toolpath.Plan, *profiles.Part) {
	line := func(a, b geom.Point, feature int) toolpath.Move {
		return toolpath.Move{Path: geom.Line(a, b), Feed: 0.1, Feature: feature}
	}
	rapid := func(a, b geom.Point) toolpath.Move {
		return toolpath.Move{Path: geom.Line(a, b), Rapid: true, Feature: -1}
	}
	p := &profiles.Part{
		Text: finding.NewText("part.toml", nil), Title: "Valve spindle", Drawing: "WW-0300", Material: "steel", Digest: "00ff", Shop: s,
		Length: 40, Setups: []profiles.Setup{{Name: "first end", Hold: profiles.Hold{By: "chuck", On: "stock", Grip: 30}}},
		Stock: profiles.Stock{Radius: 15, Length: 120, Front: 1},
		Later: []profiles.Later{{What: "thread M8 (6g)", On: "back"}},
		Features: []profiles.Feature{
			{Name: "front face", Kind: profiles.Shoulder},
			{Name: "seat cone", Kind: profiles.Taper, Piece: geom.Line(at(0, 10), at(-30, 11.5)), Cone: &profiles.Cone{
				Gauge: profiles.Size{Low: 10.495, Aim: 10.5, High: 10.505}, GaugeZ: -10, Slope: profiles.Size{Aim: -0.05},
				HalfAngle: profiles.Size{Low: geom.Atan(0.05) - 1e-4, Aim: geom.Atan(0.05), High: geom.Atan(0.05) + 1e-4},
			}},
			{Name: "round", Kind: profiles.Fillet},
		},
	}
	change := at(s.Machine.Change.Value.Z, s.Machine.Change.Value.R)
	a, b, c, d := at(2, 9.8610), at(-30.39, 11.4805), at(-32.39, 13.4805), at(-32.39, 17)
	plan := &toolpath.Plan{
		Notes: []string{"made by hand (for a test)"}, Cautions: []string{"look twice"},
		Operations: []toolpath.Operation{{
			Tool: &s.Tools[0], Purpose: "finish", Surface: true, Speed: 180, Cap: 2500.7, PeakRPM: 2500,
			Passes: []toolpath.Pass{{Name: "contour", Moves: []toolpath.Move{
				rapid(change, at(2, 100)), rapid(at(2, 100), a),
				line(a, b, 1),
				{Path: geom.Arc(b, c, at(-30.39, 13.4805), geom.CW), Feed: 0.05, Feature: 2},
				line(c, d, -1), rapid(d, at(150, 17)), rapid(at(150, 17), change),
			}}},
		}},
	}
	return plan, p
}

func write(t testing.TB, plan *toolpath.Plan, part *profiles.Part) (*Program, []finding.Finding) {
	t.Helper()
	var l finding.List
	p := Write(plan, part, &l)
	return p, l.Sorted()
}

// body returns the lines below the header's last.
func body(p *Program) string {
	_, after, _ := strings.Cut(string(p.Bytes), label)
	_, after, _ = strings.Cut(after, "\n")
	return after
}

// words returns a program without its comments, as a control reads it.
func words(program []byte) string {
	var out []string
	for line := range strings.Lines(string(program)) {
		line = strings.TrimSuffix(line, "\n")
		if !strings.HasPrefix(line, "(") && !strings.HasPrefix(line, ";") {
			out = append(out, line)
		}
	}
	return strings.Join(out, "\n")
}

// written posts the plan by hand for s.
func written(t testing.TB, s *shop.Shop) (*Program, []finding.Finding) {
	t.Helper()
	plan, part := socket(s)
	return write(t, plan, part)
}
