package verify

import (
	"bytes"
	"encoding/json"
	"fmt"
	"regexp"
	"strings"
	"testing"
	"unicode"
	"unicode/utf8"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"taperwright/profiles"
	"taperwright/profiles/finding"
)

// good cuts frontCone(10) with R0.8 as it should be. By hand: the nose leaves
// 2*0.8*0.05*(1 - 0.0249844) = 0.0780 when forgotten; Z2: 20 - 0.2 - 0.078 =
// 19.722, Z-20: 20 + 2 - 0.078 = 21.922.
const good = `%
O0001 (front cone)
N10 G21 G40 G99 (first)
N20 G97 S800
N30 T0101 (R0.8)
N40 M4
N50 G0 X64. Z2.
N60 X19.722
N70 G1 X21.922 Z-20. F0.1 (cone)
N80 X38.
N90 Z-32.
N100 X64.
N110 G0 X100. Z50. ; away
N120 M30
%
`

func text(t testing.TB, v *Verdict, as string) string {
	t.Helper()
	var b bytes.Buffer
	switch as {
	case "text":
		require.NoError(t, v.Text(&b))
	case "json":
		require.NoError(t, v.JSON(&b))
	default:
		require.NoError(t, finding.SARIF(&b, v.Findings))
	}
	return b.String()
}

var forms = []string{"text", "json", "sarif"}

func TestGoodIsGood(t *testing.T) {
	v := checkOf(t, partOf(t, 0.8, frontCone(10)), good)
	require.Equal(t, Good, v.State, page(t, v))
	assert.Empty(t, codesOf(v))
	assert.Empty(t, v.Slips)
	for _, r := range v.Rows {
		assert.Equal(t, In, r.Verdict, r.Name)
	}
	cone := rowOf(t, v, "cone")
	assert.InDelta(t, 0, off(t, cone, "diameter_mm"), 0.00005)
	assert.Equal(t, 9, cone.Blocks[0].Line)
}

// The verifier believes nothing that a comment says: blanking every comment
// (same length, so that places stay) gives the same verdict, byte for byte,
// in every form. Findings show the line they speak of, so those of the last
// program are compared without their windows.
func TestCommentsAreNoFacts(t *testing.T) {
	comment := regexp.MustCompile(`\([^)\n]*\)|;[^\n]*`)
	blank := func(s string) string {
		return comment.ReplaceAllStringFunc(s, func(c string) string { return strings.Repeat(" ", len(c)) })
	}
	lies := strings.NewReplacer("(cone)", "(X99)", "(first)", "(G20)", "(R0.8)", "(R0.4)").Replace(good)
	programs := map[string]string{
		"good": good, "lies": lies,
		"nose forgotten": strings.NewReplacer("X19.722", "X19.8", "X21.922", "X22.").Replace(lies),
		"stops":          strings.Replace(lies, "N80", "N80 G187 (G1)", 1),
	}
	part := partOf(t, 0.8, frontCone(10))
	for name, program := range programs {
		require.NotEqual(t, program, blank(program))
		for _, form := range forms[1:] {
			assert.Equal(t, text(t, checkOf(t, part, program), form), text(t, checkOf(t, part, blank(program)), form), "%s as %s", name, form)
		}
		window := regexp.MustCompile(`(?m)^ *\d* \|.*\n`)
		a, b := window.ReplaceAllString(page(t, checkOf(t, part, program)), ""), window.ReplaceAllString(page(t, checkOf(t, part, blank(program))), "")
		assert.Equal(t, a, b, name)
	}
}

// Text of the user goes through every form without acting on a terminal or
// breaking a document.
func TestHostileText(t *testing.T) {
	evil := "\x1b[31mred\u202eback\u200b</script><![CDATA[\""
	program := strings.Replace(good, "(cone)", "("+strings.ReplaceAll(evil, "]", "")+")", 1)
	program = strings.Replace(program, "Z-32.", "Z-12. ("+evil+")", 1) // the journal is cut short: a finding shows the line
	name := "a" + evil + ".nc"
	part := partOf(t, 0.8, frontCone(10))
	part.Title = evil
	for i := range part.Features {
		part.Features[i].Name += evil
	}
	var found finding.List
	v := Check([]*finding.Text{finding.NewText(name, []byte(program))}, part, Options{}, &found)
	require.NotEmpty(t, v.Findings)
	for _, r := range page(t, v) {
		assert.False(t, r != '\n' && (unicode.IsControl(r) || r == 0x202e || r == 0x200b), "%U on the page", r)
	}
	var obj map[string]any
	require.NoError(t, json.Unmarshal([]byte(text(t, v, "json")), &obj))
	assert.Equal(t, evil, strings.TrimPrefix(obj["features"].([]any)[1].(map[string]any)["name"].(string), "cone"))
	require.NoError(t, json.Unmarshal([]byte(text(t, v, "sarif")), &obj))
}

func TestPageIsNarrow(t *testing.T) {
	part := partOf(t, 0.8, frontCone(10))
	for _, program := range []string{good, strings.NewReplacer("X19.722", "X19.8", "X21.922", "X22.").Replace(good)} {
		p := page(t, checkOf(t, part, program))
		require.True(t, strings.HasSuffix(p, "\n"))
		for line := range strings.Lines(p) {
			if strings.Contains(line, ": error: ") {
				continue // a finding keeps to one line
			}
			assert.LessOrEqual(t, utf8.RuneCountInString(line), 112, line)
		}
	}
}

// JSON keys in the promised order, one final newline, the decimals promised.
func TestJSONPromise(t *testing.T) {
	v := checkOf(t, partOf(t, 0.8, frontCone(10)), strings.NewReplacer("X19.722", "X19.8", "X21.922", "X22.").Replace(good))
	s := text(t, v, "json")
	at := 0
	for _, key := range []string{"format", "part", "programs", "verdict", "assumed", "not_judged", "features", "name", "kind", "side", "setup", "verdict", "wanted", "limits", "cut", "off", "blocks",
		"slips", "code", "explains", "residual_mm", "cure", "findings", "totals", "blocks", "motions", "cut_length_mm", "time_s", "peak_rpm", "largest_diameter_mm", "least_z_mm"} {
		i := strings.Index(s[at:], `"`+key+`":`)
		require.GreaterOrEqual(t, i, 0, "%s after %d", key, at)
		at += i + 1
	}
	assert.True(t, strings.HasSuffix(s, "}\n") && !strings.HasSuffix(s, "\n\n"))
	assert.True(t, strings.HasPrefix(s, "{\n  \"format\": 1,"), s[:30])
	assert.Regexp(t, `"gauge_diameter_mm": 21\.0780`, s)
	assert.Regexp(t, `"half_angle_deg": 2\.862405`, s)
	assert.Regexp(t, `"ratio_1_to": 10\.000000`, s)
	assert.NotContains(t, s, "-0.0000")
}

// A slip is named when the program is right under it, and only that one.
func TestSlips(t *testing.T) {
	cone := frontCone(10)
	t20 := 0.05 // the wanted slope
	// program cuts the cone at another slope, right at Z0 (20 on diameter),
	// its own nose allowance worked in
	sloped := func(slope, front float64) string {
		allowance, _ := ForgottenNose(0.8, slope, true)
		return strings.NewReplacer("X19.722", fmt.Sprintf("X%.3f", front-2*2*slope-allowance), "X21.922", fmt.Sprintf("X%.3f", front+2*20*slope-allowance)).Replace(good)
	}
	shifted := func(by float64) string { // every Z word moved
		z := regexp.MustCompile(`Z(-?\d+\.)`)
		return z.ReplaceAllStringFunc(good, func(w string) string {
			var x float64
			_, _ = fmt.Sscanf(w, "Z%f", &x)
			return fmt.Sprintf("Z%.3f", x+by)
		})
	}
	scaled := func(letters string, k float64) string { // words multiplied
		w := regexp.MustCompile(`([` + letters + `])(-?\d+\.\d*)`)
		return w.ReplaceAllStringFunc(good, func(s string) string {
			var x float64
			_, _ = fmt.Sscanf(s[1:], "%f", &x)
			return fmt.Sprintf("%c%.4f", s[0], x*k)
		})
	}
	centre := strings.NewReplacer("X64. Z2.", "X64. Z2.8", "X19.722", "X21.322", "X21.922", "X23.522", "Z-20.", "Z-19.2", "N80 X38.", "N80 X39.6", "Z-32.", "Z-31.2").Replace(good)
	faced := strings.Replace(cone, "length = 100", "length = 100\nfront = 1.5", 1)
	for _, c := range []struct {
		name, part, program string
		want                []string
	}{
		{"half for included", cone, sloped(0.0249844, 20), []string{SlipHalf, SlipOnDiameter}}, // tan(2.862405/2 deg); 0.025 is no further off over 20 mm
		{"included for half", cone, sloped(0.1002506, 20), []string{SlipIncluded}},
		{"per side, right at the gauge plane", cone, sloped(2*t20, 20+2*10*t20-2*10*2*t20), []string{SlipPerSide}},
		{"ratio halved, right at the front", cone, sloped(t20/2, 20), []string{SlipHalf, SlipOnDiameter}},
		{"per inch for per foot", cone, sloped(t20/12, 20), []string{SlipPerFoot}},
		// 2 deg 51' 45" typed as 2.5145: tan = 0.0439126
		{"minutes", cone, sloped(0.0439126, 20), []string{SlipMinutes}},
		{"nose wrong", cone, strings.NewReplacer("X19.722", "X19.761", "X21.922", "X21.961").Replace(good), []string{SlipNoseWrong}},
		{"nose forgotten", cone, strings.NewReplacer("X19.722", "X19.8", "X21.922", "X22.").Replace(good), []string{SlipNoseForgotten}},
		{"nose centre", cone, centre, []string{SlipTip}},
		{"X radius", cone, scaled("X", 0.5), []string{SlipX}},
		{"inch", cone, scaled("XZF", 1/25.4), []string{SlipUnit}},
		{"zero on the raw face", faced, strings.Replace(shifted(-1.5), "N60", "N55 Z0.5\nN56 Z-1.5\nN57 G1 X-1.6 F0.1\nN58 Z0.5\nN59 G0 X64.\nN60", 1), []string{SlipZero}},
	} {
		t.Run(c.name, func(t *testing.T) {
			v := checkOf(t, partOf(t, 0.8, c.part), c.program)
			require.Equal(t, Wrong, v.State, page(t, v))
			var codes []string
			for _, s := range v.Slips {
				codes = append(codes, s.Code)
				assert.LessOrEqual(t, s.Residual, 0.0026)
				assert.NotEmpty(t, s.Cure)
			}
			assert.ElementsMatch(t, c.want, codes, page(t, v))
		})
	}
}

// A program that nothing usual explains gets no slip.
func TestNoSlipWithoutReason(t *testing.T) {
	part := partOf(t, 0.8, frontCone(10))
	for _, program := range []string{
		strings.Replace(good, "X38.", "X38.07", 1),
		strings.NewReplacer("X19.722", "X19.9", "X21.922", "X22.31").Replace(good),
	} {
		v := checkOf(t, part, program)
		require.Equal(t, Wrong, v.State)
		assert.Empty(t, v.Slips)
	}
}

// A judging error before the judgement stops wins over what could not be read.
func TestWhatStopsAndWhatWins(t *testing.T) {
	part := partOf(t, 0.8, frontCone(10))
	stop := strings.Replace(good, "N80", "N75 G187\nN80", 1)
	v := checkOf(t, part, stop)
	assert.Equal(t, CannotJudge, v.State)
	for _, r := range v.Rows {
		assert.Equal(t, CannotJudge, r.Verdict, r.Name)
	}
	// gouged before the stop: no later cut brings the metal back
	v = checkOf(t, part, strings.Replace(stop, "X21.922", "X21.722", 1))
	assert.Equal(t, Wrong, v.State)
	assert.Equal(t, Out, rowOf(t, v, "cone").Verdict)
	assert.Equal(t, CannotJudge, rowOf(t, v, "journal").Verdict)
	// a hazard before the stop
	v = checkOf(t, part, strings.Replace(stop, "N70 G1", "N70 G0", 1))
	assert.Equal(t, Wrong, v.State)
	assert.Contains(t, codesOf(v), CodeRapidIn)
	// a tool that the shop does not have
	v = checkOf(t, part, strings.Replace(good, "T0101", "T0505", 1))
	assert.Equal(t, CannotJudge, v.State)
	assert.Equal(t, []string{CodeUnknownTool}, codesOf(v))
	// text cut short
	v = checkOf(t, part, good[:strings.Index(good, "N80")])
	assert.Equal(t, CannotJudge, v.State)
	// no part, no set-up, no program
	var found finding.List
	assert.Equal(t, CannotJudge, Check(nil, nil, Options{}, &found).State)
	v = Check([]*finding.Text{finding.NewText("p.nc", []byte(good))}, part, Options{Setup: "nowhere"}, &found)
	assert.Equal(t, CannotJudge, v.State)
	assert.Equal(t, []string{CodeNoSetup}, codesOf(v))
}

// Check changes neither the part nor, run twice, its answer.
func TestCheckTwice(t *testing.T) {
	part := partOf(t, 0.8, frontCone(10))
	program := strings.NewReplacer("X19.722", "X19.8", "X21.922", "X22.").Replace(good)
	before := fmt.Sprintf("%+v", part.Features)
	a, b := text(t, checkOf(t, part, program), "json"), text(t, checkOf(t, part, program), "json")
	assert.Equal(t, a, b)
	assert.Equal(t, before, fmt.Sprintf("%+v", part.Features))
}

// Within the length tolerance of a plane that a cylinder and a cone share the
// boundary may follow either; beyond it the one that lost its metal is out.
func TestSharedPlane(t *testing.T) {
	part := func() *profiles.Part {
		return partOf(t, 0.4, `
title = "collar"
[stock]
diameter = 50
length = 120
[[outside]]
name = "collar"
kind = "journal"
diameter = 40
tolerance = 0.01
length = 20
[[outside]]
name = "cone"
kind = "taper"
large_at = "front"
ratio = "1:4"
large = 40
length = 20
gauge = { diameter = 37.5, from_large = 10, tolerance = 0.1 }
angle_tolerance = { half = [-1, 1], unit = "min" }
`)
	}
	// by hand: a forgotten R0.4 gouges 2*0.4*0.125*(1 + 0.0622577) = 0.1062;
	// the corner stands 0.1062*4 = 0.425 early. dz more metal is dz/4 on diameter.
	program := func(dz float64) string {
		return fmt.Sprintf(`G21 G99
G97 S800
T0101
M4
G0 X54. Z2.
X40.
G1 Z%.3f F0.1
X34. Z%.3f
X54.
G0 X100. Z50.
M30
`, -20.425+dz, -44.425+dz)
	}
	v := checkOf(t, part(), program(0))
	require.Equal(t, Good, v.State, page(t, v))
	// 0.15 early: within the medium class' 0.2 at 20; the cone is 0.0375 small, allowed 0.1
	v = checkOf(t, part(), program(0.15))
	assert.Equal(t, Good, v.State, page(t, v))
	assert.InDelta(t, 0.0375, off(t, rowOf(t, v, "collar"), "deepest_gouge_diameter_mm"), 0.0003)
	assert.InDelta(t, 0, off(t, rowOf(t, v, "collar"), "diameter_mm"), 0.00005)
	// 0.35 early: the cone is 0.0875 small, still allowed, but the collar ends too soon
	v = checkOf(t, part(), program(0.35))
	assert.Equal(t, Wrong, v.State)
	assert.Equal(t, Out, rowOf(t, v, "collar").Verdict)
	assert.Equal(t, In, rowOf(t, v, "cone").Verdict, page(t, v))
	assert.InDelta(t, 0.0875, off(t, rowOf(t, v, "collar"), "deepest_gouge_diameter_mm"), 0.0003)
}

// A chamfer or rounding that a gouge parts in two is still judged as a whole.
func TestGougeInsideAnEdge(t *testing.T) {
	part := func(edge string) *profiles.Part {
		return partOf(t, 0.4, `
title = "edge"
[stock]
diameter = 40
length = 100
[[outside]]
`+edge+`
[[outside]]
name = "stem"
kind = "journal"
diameter = 30
tolerance = 0.05
length = 20
`)
	}
	chamfer := part("name = \"edge\"\nkind = \"chamfer\"\nwidth = 4\n")
	// 45 degrees with R0.4: 2*0.4*(1 - tan 22.5) = 0.4686 when forgotten, so
	// X30 is met at Z-4.2343; from X21.5314 at Z0 (30 - 8 - 0.4686)
	program := func(middle string) string {
		return "G21 G99\nG97 S800\nT0101\nM4\nG0 X44. Z2.\nX19.5314\nG1 Z1. F0.1\n" + middle + "X30. Z-4.2343\nZ-21.\nX44.\nG0 X100. Z50.\nM30\n"
	}
	v := checkOf(t, chamfer, program(""))
	require.Equal(t, Good, v.State, page(t, v))
	assert.InDelta(t, 4, rowOf(t, v, "edge").Cut[0].Value, 0.0002)
	// dips 1 deep on radius in the middle: 0.72 square to the flat; width 4 may be 0.5 more (ISO 2768-1 m), 0.35 square
	v = checkOf(t, chamfer, program("X25.5314 Z-2.\nX23.5 Z-2.\nX26. Z-2.2343\n"))
	require.Equal(t, Wrong, v.State, page(t, v))
	assert.Equal(t, Out, rowOf(t, v, "edge").Verdict, page(t, v))
}

// Whatever a program says, Check answers: no panic, every place inside its
// text, every form printable, never good by what it could not read.
func FuzzCheck(f *testing.F) {
	for _, s := range []string{good, "", "%", "G1 X", "T0101 G1 X-5 Z-300 F1", strings.Replace(good, "N70 G1", "N70 G3 R3000.", 1), strings.Repeat("G2 X1 Z1 R1\n", 20)} {
		f.Add(s)
	}
	part := partOf(f, 0.8, frontCone(10))
	f.Fuzz(func(t *testing.T, program string) {
		v := checkOf(t, part, program)
		for _, x := range v.Findings {
			if x.Code == CodeInternal {
				t.Fatalf("%q: %s", program, x.Message)
			}
			if s := x.Span; s.Valid() && (s.Start < 0 || s.End > len(s.Text.Bytes) || s.Start > s.End) {
				t.Fatalf("%q: %s stands at %d to %d", program, x.Code, s.Start, s.End)
			}
			if x.Severity == finding.Error && v.State == Good {
				t.Fatalf("%q: good in spite of %s", program, x.Code)
			}
		}
		if len(v.Rows) > 0 && v.State == Good {
			for _, r := range v.Rows {
				if r.Verdict != In {
					t.Fatalf("%q: good, and %s is %s", program, r.Name, r.Verdict)
				}
			}
		}
		for _, form := range forms {
			text(t, v, form)
		}
	})
}
