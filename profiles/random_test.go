package profiles

import (
	"fmt"
	"math/rand/v2"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"taperwright/profiles/finding"
	"taperwright/profiles/geom"
)

// randomPart writes a part of a few mains with treatments where they may
// stand. Some have no room for all of it; most do.
func randomPart(r *rand.Rand) string {
	var b strings.Builder
	b.WriteString(strings.Replace(head, "length = 300", "length = 900", 1))
	if r.IntN(2) == 0 {
		fmt.Fprintf(&b, "[edges]\noutside = %.2f\ninside_at_most = %.2f\n", 0.1+r.Float64()*0.5, r.Float64())
	}
	treat := func() {
		switch r.IntN(4) {
		case 0:
			fmt.Fprintf(&b, "[[outside]]\nkind = \"fillet\"\nradius = %.2f\ntolerance = 0.05\n", 0.2+r.Float64()*2)
		case 1:
			fmt.Fprintf(&b, "[[outside]]\nkind = \"chamfer\"\nwidth = %.2f\ntolerance = 0.05\nangle = %d\n", 0.2+r.Float64()*1.5, 20+r.IntN(50))
		}
	}
	d := 20 + r.Float64()*20
	treat()
	for range 1 + r.IntN(5) {
		length := 6 + r.Float64()*20
		if r.IntN(2) == 0 {
			fmt.Fprintf(&b, "[[outside]]\nkind = \"journal\"\ndiameter = %.3f\nlength = %.2f\ntolerance = %.3f\n", d, length, r.Float64()*0.1)
		} else {
			rise := (r.Float64() - 0.35) * 12
			if rise < 0.5 && rise > -0.5 {
				rise = 1
			}
			large, at := d+rise, "back"
			small := d
			if rise < 0 {
				large, small, at = d, d+rise, "front"
			}
			fmt.Fprintf(&b, "[[outside]]\nkind = \"taper\"\nlarge_at = %q\nsmall = %.3f\nlarge = %.3f\nlength = %.2f\ntolerance = %.3f\nangle_tolerance = { half = %.1f, unit = \"sec\" }\n",
				at, small, large, length, r.Float64()*0.05, r.Float64()*30)
			d += rise
		}
		if r.IntN(3) > 0 {
			treat()
			up := (r.Float64() - 0.3) * 16
			if up < 0.5 && up > -0.5 {
				up = 4
			}
			d = max(d+up, 8)
			fmt.Fprintf(&b, "[[outside]]\nkind = \"shoulder\"\ndiameter = %.3f\n", d)
		}
		treat()
	}
	fmt.Fprintf(&b, "[[outside]]\nkind = \"journal\"\ndiameter = %.3f\nlength = 10\n", d)
	return b.String()
}

// Every pair of neighbours is continuous; treatments end on both neighbours,
// fillets tangent to both; what is judged lies within what is cut; the whole
// runs from the axis to the end of the part with the metal on its left.
func TestContourProperty(t *testing.T) {
	const seed = 20260217
	t.Logf("seed %d", seed)
	r := rand.New(rand.NewPCG(seed, 1))
	made, treated := 0, 0
	for n := range 1500 {
		text := randomPart(r)
		p, found := readText(text)
		if p == nil {
			require.NotEmpty(t, found, "part %d: no part and no reason", n)
			continue
		}
		made++
		chain, owner := p.Contour(0)
		require.LessOrEqual(t, chain.Gap(), geom.Near, text)
		require.Zero(t, chain[0].From.R, text)
		require.InDelta(t, -p.Length, chain[len(chain)-1].To.Z, 1e-9, text)
		for i, c := range chain {
			f := p.Features[owner[i]]
			require.Greater(t, c.Length(), 0.0, text)
			if f.Kind == Chamfer || f.Kind == Fillet {
				treated++
				require.Greater(t, i, 0)
				before, behind := chain[i-1], chain[i+1]
				turn := before.EndDir().Cross(c.StartDir())
				if f.Kind == Fillet {
					// 1e-9 of place over the least radius, 0.2, is 5e-9 of direction
					require.InDelta(t, 0, turn, 1e-8, text)
					require.InDelta(t, 0, c.EndDir().Cross(behind.StartDir()), 1e-8, text)
					require.InDelta(t, f.Fillet.Aim, c.Radius(), 1e-9, text)
				} else {
					require.InDelta(t, f.Width.Aim, max(c.From.Z-c.To.Z, c.To.Z-c.From.Z), 1e-9, text)
					// it turns into the corner and out of it the same way
					require.Greater(t, turn*c.EndDir().Cross(behind.StartDir()), 0.0, text)
				}
			}
			if f.Judged.From != f.Judged.To {
				require.LessOrEqual(t, f.Piece.Distance(f.Judged.From), geom.Near, text)
				require.LessOrEqual(t, f.Piece.Distance(f.Judged.To), geom.Near, text)
			}
			switch f.Kind {
			case Journal:
				require.InDelta(t, f.Radius.Aim, c.From.R, 1e-9)
				require.Less(t, c.To.Z, c.From.Z)
			case Taper:
				require.InDelta(t, f.Cone.Gauge.Aim+f.Cone.Slope.Aim*(c.To.Z-f.Cone.GaugeZ), c.To.R, 1e-9)
				require.LessOrEqual(t, f.Cone.Slope.Low, f.Cone.Slope.Aim)
				require.LessOrEqual(t, f.Cone.Slope.Aim, f.Cone.Slope.High)
			case Shoulder:
				require.InDelta(t, f.Z.Aim, c.From.Z, 1e-9)
			}
		}
	}
	t.Logf("%d parts, %d treatments", made, treated)
	require.Greater(t, made, 500, "too many parts were refused for the test to mean anything")
	require.Greater(t, treated, 800)
}

func FuzzRead(f *testing.F) {
	f.Add(string(Starter()))
	f.Add(head + journal("50", "40", `tolerance = "k6"`) + fillet("1.6") + shoulder("60") + chamfer("1.5") + journal("60", "10"))
	f.Add(head + "[edges]\noutside = [0.1, 0.3]\n" + out(`kind = "taper"`, `large_at = "front"`, `half_angle = "2°51'45\""`, "large = 50", "length = 60", `aim = { half_angle = 2.86 }`))
	f.Add(head + out(`kind = "taper"`, `large_at = "back"`, `series = "morse 3"`, "length = 80", `gauge = { diameter = "series", from_front = 80 }`) + "[[setup]]\nface = \"back\"\n")
	f.Add(head + journal("1e300", "-0", "aim = nan") + "[[later]]\non = 3\n[[inside]]\n")
	f.Fuzz(func(t *testing.T, text string) {
		in := finding.NewText("part.toml", []byte(text))
		var l finding.List
		p := Read(in, starterShop, &l)
		errors := 0
		for _, x := range l.Sorted() {
			if x.Severity == finding.Error {
				errors++
			}
			s := x.Span
			if s.Text == nil || s.Start < 0 || s.End < s.Start || s.End > len(s.Text.Bytes) {
				t.Fatalf("%s %q: place %d to %d", x.Code, x.Message, s.Start, s.End)
			}
		}
		if (p == nil) != (errors > 0) {
			t.Fatalf("part %v with %d errors", p != nil, errors)
		}
		if p == nil {
			return
		}
		chain, _ := p.Contour(0)
		if gap := chain.Gap(); gap > 1e-6 || gap != gap {
			t.Fatalf("gap %v in\n%s", gap, p)
		}
		for _, x := range p.Features {
			for _, s := range []Size{x.Radius, x.Z, x.ZFrom, x.ZTo, x.Width, x.Angle} {
				if !(s.Low <= s.High+1e-9) {
					t.Fatalf("limits of %s: %+v", x.Name, s)
				}
			}
		}
		if again := Read(in, starterShop, &finding.List{}); again == nil || again.String() != p.String() {
			t.Fatal("read twice, two parts")
		}
	})
}
