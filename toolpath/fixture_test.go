package toolpath

import (
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"taperwright/profiles"
	"taperwright/profiles/finding"
	"taperwright/profiles/geom"
	"taperwright/profiles/shop"
)

// near refuses NaN and infinities, which InDelta lets through.
func near(t testing.TB, want, got, tol float64, msg ...any) {
	t.Helper()
	require.Greater(t, tol, 0.0)
	if !(math.Abs(want-got) <= tol) {
		require.Failf(t, "not near", "want %.12g, got %.12g, off by %g > %g: %v", want, got, got-want, tol, msg)
	}
}

func nearPoint(t testing.TB, want, got geom.Point, tol float64, msg ...any) {
	t.Helper()
	near(t, want.Z, got.Z, tol, append(msg, "z")...)
	near(t, want.R, got.R, tol, append(msg, "r")...)
}

func at(z, r float64) geom.Point { return geom.Point{Z: z, R: r} }

func given[T any](v T) shop.Setting[T] { return shop.Setting[T]{Value: v, Given: true} }

// insert makes a turning tool for the outside: kappa and corner in degrees.
func insert(name, purpose string, nose, kappa, corner float64) shop.Tool {
	return shop.Tool{
		Name: name, Purpose: purpose, Kind: "turn", Right: true, Nose: nose, TipX: -1, TipZ: -1,
		CuttingAngle: given(geom.Radians(kappa)), Included: given(geom.Radians(corner)),
		MainReach: given(12.9), MinorReach: given(12.9),
		SurfaceSpeed: given(180.0), FeedRate: given(0.1), Depth: given(2.5),
	}
}

func lathe(tools ...shop.Tool) *shop.Shop {
	s := &shop.Shop{Tools: tools}
	s.Machine.TopSpeed = given(3000.0)
	s.Machine.Change = given(shop.Place{Z: 150, R: 100})
	s.Machine.Compensation.Value = "tip-path"
	return s
}

// shaft makes a part from stock and the pieces of its contour, the front face
// first where there is one. An inside corner between two lines gets a corner
// row that may keep 0.8.
func shaft(radius, front float64, s *shop.Shop, pieces ...geom.Piece) *profiles.Part {
	p := &profiles.Part{Text: finding.NewText("part.toml", nil), Shop: s, Setups: []profiles.Setup{{Name: "first"}}}
	p.Stock = profiles.Stock{Radius: radius, Length: 400, Front: front, Oversize: 0.25}
	for i, e := range pieces {
		f := profiles.Feature{Name: "piece " + geom.Fixed(float64(i), 0), Kind: profiles.Taper, Piece: e, Judged: e}
		d := e.StartDir()
		switch {
		case !e.IsLine():
			f.Kind, f.Arc = profiles.Fillet, true
		case d.Z == 0:
			f.Kind = profiles.Shoulder
		case d.R == 0:
			f.Kind = profiles.Journal
		}
		if i > 0 && pieces[i-1].EndDir().Cross(d) < -1e-9 {
			p.Features = append(p.Features, profiles.Feature{Name: "corner before " + f.Name, Kind: profiles.Corner,
				Piece: geom.Line(e.From, e.From), Fillet: profiles.Size{High: 0.8}})
			// the corner zone on both
			in, out := pieces[i-1].EndDir(), d
			zone := 0.8 * math.Abs(in.Cross(out)) / (1 + in.Dot(out))
			before := &p.Features[len(p.Features)-2]
			if before.Arc || f.Arc {
				before.Judged, f.Judged = geom.Piece{}, geom.Piece{}
			} else {
				before.Judged = shorten(before.Judged, 0, zone)
				f.Judged = shorten(f.Judged, zone, 0)
			}
		}
		p.Features = append(p.Features, f)
	}
	p.Length = -pieces[len(pieces)-1].To.Z
	return p
}

func shorten(p geom.Piece, from, to float64) geom.Piece {
	d := p.StartDir()
	if p.Length() <= from+to {
		return geom.Piece{}
	}
	return geom.Line(p.From.Along(d, from), p.To.Along(d, -to))
}

// lines joins points by lines.
func lines(pts ...geom.Point) []geom.Piece {
	var out []geom.Piece
	for i := 1; i < len(pts); i++ {
		out = append(out, geom.Line(pts[i-1], pts[i]))
	}
	return out
}

func plan(t testing.TB, p *profiles.Part) *Plan {
	t.Helper()
	var l finding.List
	got := New(p, 0, &l)
	var b strings.Builder
	for _, f := range l.Sorted() {
		if f.Severity == finding.Error {
			b.WriteString(f.Code + ": " + f.Message + "\n")
		}
	}
	require.Empty(t, b.String())
	require.NotNil(t, got)
	return got
}

// pump is the coupling end of a pump shaft: face, 0.5 chamfer, cone 1:10 from
// 38 to 45 over 70, shoulder to 50, journal of 40.
func pump() *profiles.Part {
	return shaft(32.5, 2, lathe(insert("T1", "rough", 0.8, 95, 80), insert("T3", "finish", 0.4, 93, 55)),
		lines(at(0, 0), at(0, 18.525), at(-0.5, 19.025), at(-70, 22.5), at(-70, 25), at(-110, 25))...)
}
