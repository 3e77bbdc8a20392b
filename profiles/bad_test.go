package profiles

import (
	"errors"
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"taperwright/profiles/finding"
)

// base is a sound part; each case changes a line of it. Numbered for the
// places in the wants.
const base = `title = "test shaft"
unit = "mm"
shop = "shop.toml"
[stock]
diameter = 65
length = 300
front = 1
[[outside]]
name = "cone"
kind = "taper"
large_at = "back"
ratio = "1:10"
small = 38
length = 70
gauge = { diameter = 44, from_small = 60, tolerance = [-0.02, 0] }
angle_tolerance = "AT6/2"
[[outside]]
kind = "shoulder"
diameter = 50
[[outside]]
name = "seat"
kind = "journal"
diameter = 50
tolerance = "k6"
length = 40
[[outside]]
kind = "fillet"
radius = 1.6
[[outside]]
kind = "shoulder"
diameter = 60
[[outside]]
name = "collar"
kind = "journal"
diameter = 60
length = 20
`

func places(found []finding.Finding) string {
	var out []string
	for _, f := range found {
		p := f.Span.From()
		out = append(out, fmt.Sprintf("%d:%d %s", p.Line, p.Column, f.Code))
	}
	return strings.Join(out, ", ")
}

func TestBadInput(t *testing.T) {
	p, found := readText(base)
	require.NotNil(t, p)
	require.Empty(t, found)

	for _, c := range []struct{ name, old, new, want string }{
		{"unknown key", "tolerance = \"k6\"", "tolerence = \"k6\"", "24:1 unknown-key"},
		{"equal but for case", "length = 40", "Length = 40", "25:1 case-key"},
		{"a letter lost in a key that must be there", "length = 40", "lenth = 40", "25:1 unknown-key"},
		{"a table equal but for case", "[stock]", "[Stock]", "4:2 case-key"},
		{"no feature at all", base[strings.Index(base, "[[outside]]"):], "", "1:1 no-features"},
		{"unknown key at the top", "title", "titel", "1:1 unknown-key"},
		{"wrong type in the third table", "diameter = 50\ntolerance", "diameter = \"50\"\ntolerance", "23:12 wrong-type"},
		{"a table that is none", "[[outside]]\nkind = \"fillet\"\nradius = 1.6\n", "[[outside]]\nkind = 3\nradius = 1.6\n", "27:8 wrong-type"},
		{"nan", "length = 40", "length = nan", "25:10 not-finite"},
		{"inf", "radius = 1.6", "radius = inf", "28:10 not-finite"},
		{"negative", "length = 40", "length = -40", "25:10 bad-length"},
		{"zero", "length = 40", "length = 0", "25:10 bad-length"},
		{"huge", "length = 40", "length = 1e300", "25:10 bad-length"},
		{"large", "length = 40", "length = 10001", "25:10 bad-length"},
		{"all in one run", "title = \"test shaft\"\nunit = \"mm\"", "title = 3\nunit = \"cm\"", "1:9 wrong-type, 2:8 unknown-value"},
		{"unknown kind", "kind = \"journal\"\ndiameter = 50", "kind = \"jurnal\"\ndiameter = 50", "22:8 unknown-value"},
		{"no kind", "kind = \"fillet\"\n", "", "26:1 missing-key"},
		{"kind equal but for case", "kind = \"fillet\"", "Kind = \"fillet\"", "27:1 unknown-key"},
		{"a kind of a later release", "kind = \"fillet\"\nradius = 1.6", "kind = \"relief\"\nwidth = 2", "27:8 not-yet"},

		{"half for included", "ratio = \"1:10\"", "ratio = \"1:10\"\nhalf_angle = 5.7248", "13:14 over-defined"},
		{"ratio per side", "ratio = \"1:10\"", "ratio = \"1:20\"\nlarge = 45", "12:9 over-defined"},
		{"per foot for per inch", "ratio = \"1:10\"", "taper_per_inch = 1.2\nlarge = 45", "12:18 over-defined"},
		{"large smaller than small", "small = 38", "small = 38\nlarge = 30", "14:9 no-cone"},
		{"no large_at", "large_at = \"back\"\n", "", "8:1 missing-key"},
		{"bare angle", "ratio = \"1:10\"", "angle = 2.86", "12:1 bare-angle"},
		{"no rate", "ratio = \"1:10\"\nsmall = 38\n", "", "8:1 under-defined"},
		{"ratio unreadable", "ratio = \"1:10\"", "ratio = \"1:1o\"", "12:13 bad-ratio"},
		{"ratio as a number", "ratio = \"1:10\"", "ratio = 10", "12:9 wrong-type"},
		{"ratio empty", "ratio = \"1:10\"", "ratio = \"\"", "12:9 bad-ratio"},
		{"series unknown", "ratio = \"1:10\"", "series = \"morse 33\"", "12:10 unknown-series"},
		{"no gauge place", "from_small = 60, ", "", "15:9 gauge-place"},
		{"two gauge places", "from_small = 60", "from_small = 60, from_large = 10", "15:9 gauge-place"},
		{"no gauge diameter", "diameter = 44, from_small", "from_small", "15:9 missing-key"},
		{"gauge diameter a word", "diameter = 44", "diameter = \"large\"", "15:22 unknown-value"},
		{"tolerance beside gauge", "angle_tolerance = \"AT6/2\"", "angle_tolerance = \"AT6/2\"\ntolerance = 0.02", "17:13 gauge-place"},
		{"grade without a way", "\"AT6/2\"", "\"AT6\"", "16:19 bad-tolerance"},
		{"grade not in the table", "\"AT6/2\"", "\"AT12/2\"", "16:19 no-limits"},
		{"angle without unit", "\"AT6/2\"", "{ half = 10 }", "16:19 missing-key"},
		{"angle as a number", "\"AT6/2\"", "10", "16:19 bad-tolerance"},
		{"angle wider than the cone", "\"AT6/2\"", "{ half = 10, unit = \"deg\" }", "16:19 bad-tolerance"},
		{"half and included", "\"AT6/2\"", "{ half = 10, included = 20, unit = \"sec\" }", "16:43 bad-tolerance"},

		{"class not in the table", "\"k6\"", "\"p6\"", "24:13 no-limits"},
		{"class of a bore", "\"k6\"", "\"K6\"", "24:13 bad-tolerance"},
		{"deviations the wrong way round", "\"k6\"", "[0.02, -0.02]", "24:13 bad-tolerance"},
		{"three deviations", "\"k6\"", "[0, 1, 2]", "24:13 bad-tolerance"},
		{"text among deviations", "\"k6\"", "[0, \"1\"]", "24:17 wrong-type"},
		{"negative tolerance", "\"k6\"", "-0.02", "24:13 bad-tolerance"},
		{"tolerance true", "\"k6\"", "true", "24:13 bad-tolerance"},
		{"tolerance larger than the size", "\"k6\"", "[-60, 0]", "24:13 bad-tolerance"},
		{"aim a deviation", "tolerance = \"k6\"", "tolerance = \"k6\"\naim = 0.01", "25:7 aim-outside"},
		{"no general class", "title = \"test shaft\"\n", "title = \"test shaft\"\ngeneral_tolerance = \"rough\"\n", "2:21 unknown-value"},
		{"beyond the general class", "length = 40", "length = 4500", "25:10 no-limits"},
		{"end where it begins", "length = 40", "end_from_front = 70", "25:18 lengths-disagree"},
		{"length and end disagree", "length = 40", "length = 40\nend_from_front = 120", "26:18 lengths-disagree"},

		{"overlap in diameter", "diameter = 50\ntolerance", "diameter = 52\ntolerance", "20:1 diameter-step"},
		{"no shoulder", "[[outside]]\nkind = \"shoulder\"\ndiameter = 50\n", "", "17:1 diameter-step"},
		{"two shoulders", "[[outside]]\nkind = \"shoulder\"\ndiameter = 60\n", "[[outside]]\nkind = \"shoulder\"\ndiameter = 60\n[[outside]]\nkind = \"shoulder\"\ndiameter = 62\n", "32:1 bad-neighbours"},
		{"two treatments", "radius = 1.6\n", "radius = 1.6\n[[outside]]\nkind = \"chamfer\"\nwidth = 1\n", "29:1 bad-neighbours"},
		{"fillet too large", "radius = 1.6", "radius = 6", "26:1 no-room"},
		{"fillet takes all", "radius = 1.6", "radius = 5\naim = 4.995", "26:1 no-room"},
		{"a shoulder without height", "kind = \"shoulder\"\ndiameter = 60", "kind = \"shoulder\"\ndiameter = 50", "32:1 diameter-step"},

		{"same name twice", "name = \"collar\"", "name = \"seat\"", "32:1 duplicate-name"},
		{"a name of ours", "name = \"collar\"", "name = \"front face\"", "32:1 duplicate-name"},
		{"empty name", "name = \"collar\"", "name = \"\"", "33:8 bad-name"},

		{"outside the stock", "diameter = 65", "diameter = 58", "29:1 outside-stock"},
		{"stock too short", "length = 300", "length = 130", "4:1 stock-too-short"},
		{"no stock", "[stock]\ndiameter = 65\nlength = 300\nfront = 1\n", "", "1:1 no-stock"},
		{"front negative", "front = 1", "front = -1", "7:9 bad-length"},
		{"worn stock", "front = 1", "front = 1\nfrom = \"worn.toml\"", "8:1 not-yet"},
		{"bore larger than the part", "front = 1", "front = 1\nbore = 45", "9:1 outside-stock"},
		{"bore larger than the bar", "front = 1", "front = 1\nbore = 65", "8:8 outside-stock"},

		{"no shop", "shop = \"shop.toml\"\n", "", "1:1 no-shop"},
		{"shop missing", "shop = \"shop.toml\"", "shop = \"lost.toml\"", "3:8 cannot-open"},
		{"shop and machine", "[stock]", "[machine]\nname = \"x\"\n[stock]", "3:8 no-shop"},
		{"inside work", "[stock]", "[[inside]]\nkind = \"journal\"\n[stock]", "4:3 not-yet"},
		{"outside is no list", "[stock]", "edges = 3\n[stock]", "4:9 wrong-type"},
		{"edges the wrong way round", "[stock]", "[edges]\noutside = [0.3, 0.1]\n[stock]", "5:11 bad-length"},
		{"edges too large", "[stock]", "[edges]\noutside = 30\n[stock]", "5:11 no-room"},
	} {
		t.Run(c.name, func(t *testing.T) {
			require.Contains(t, base, c.old)
			text := strings.Replace(base, c.old, c.new, 1)
			p, found := readText(text)
			assert.True(t, p == nil)
			assert.Equal(t, c.want, places(found))
			for _, f := range found {
				t.Log(f.Code, "|", f.Message, "|", f.Help)
			}
		})
	}
}

func TestBadTail(t *testing.T) {
	for _, c := range []struct{ name, tail, want string }{
		{"later on nothing", "[[later]]\nwhat = \"thread\"\non = \"seet\"\n", "39:6 unknown-name"},
		{"later without what", "[[later]]\non = \"seat\"\n", "37:1 missing-key"},
		{"back first", "[[setup]]\nface = \"back\"\n", "38:8 not-yet"},
		{"two whole set-ups", "[[setup]]\nface = \"front\"\n[[setup]]\nface = \"back\"\n", "39:1 not-yet"},
		{"upto nothing", "[[setup]]\nupto = \"saet\"\n", "38:8 unknown-name"},
		{"jaws on a cone", "[[setup]]\nhold = { on = \"cone\", grip = 20 }\n", "38:15 bad-grip"},
		{"jaws on what is cut", "[[setup]]\nhold = { on = \"seat\", grip = 20 }\n", "38:15 bad-grip"},
		{"jaws over the contour", "[[setup]]\nhold = { on = \"stock\", grip = 200 }\n", "38:31 bad-grip"},
		{"held by magic", "[[setup]]\nhold = { by = \"magnet\" }\n", "38:15 unknown-value"},
		{"a centre", "[[setup]]\nhold = { support = \"centre\" }\n", "38:10 not-yet"},
		{"zero nowhere", "[[setup]]\nzero = \"there\"\n", "38:8 unknown-value"},
		{"zero at the chuck without a grip", "[[setup]]\nzero = \"chuck\"\n", "38:8 missing-key"},
		{"chamfer behind the last shoulder", "[[outside]]\nkind = \"shoulder\"\ndiameter = 40\n[[outside]]\nkind = \"chamfer\"\nwidth = 1\n", "40:1 bad-neighbours"},
		{"fillet in no corner", "[[outside]]\nkind = \"fillet\"\nradius = 1\n[[outside]]\nkind = \"journal\"\ndiameter = 60\nlength = 20\n", "37:1 no-corner"},
		{"aims meet too far off", "[[outside]]\nkind = \"taper\"\nlarge_at = \"front\"\nratio = \"1:50\"\nlength = 50\nlarge = 60\ntolerance = [0.1, 0.2]\nangle_tolerance = \"AT6/2\"\n", "37:1 plane-moves"},
		{"wrong end large", "[[outside]]\nkind = \"taper\"\nlarge_at = \"back\"\nratio = \"1:10\"\nlength = 20\nlarge = 60\nangle_tolerance = \"AT6/2\"\n", "37:1 diameter-step"},
		{"an angle no chamfer has there", "[[outside]]\nkind = \"chamfer\"\nwidth = 1\n[[outside]]\nkind = \"taper\"\nlarge_at = \"front\"\nratio = \"1:5\"\nlength = 20\nlarge = 60\ntolerance = 0.01\nangle_tolerance = \"AT6/2\"\n", "37:1 no-room"},
	} {
		t.Run(c.name, func(t *testing.T) {
			p, found := readText(base + c.tail)
			assert.True(t, p == nil)
			assert.Equal(t, c.want, places(found))
			for _, f := range found {
				t.Log(f.Code, "|", f.Message, "|", f.Help)
			}
		})
	}
}

// A file that a part names is never quoted when it is not TOML: it may be any
// file of this computer.
func TestOtherFiles(t *testing.T) {
	for _, c := range []struct {
		name string
		open Opener
		want string
	}{
		{"no opener", nil, "3:8 cannot-open"},
		{"outside the root", func(string) (*finding.Text, error) { return nil, ErrOutsideRoot }, "3:8 outside-root"},
		{"cannot be read", func(string) (*finding.Text, error) { return nil, errors.New("permission denied") }, "3:8 cannot-open"},
		{"not TOML", func(n string) (*finding.Text, error) { return finding.NewText(n, []byte("root:secret:0:0\n")), nil }, "3:8 cannot-open"},
	} {
		t.Run(c.name, func(t *testing.T) {
			var l finding.List
			assert.Nil(t, Read(finding.NewText("part.toml", []byte(base)), c.open, &l))
			assert.Equal(t, c.want, places(l.Sorted()))
			for _, f := range l.Sorted() {
				assert.NotContains(t, f.Message+f.Help, "secret")
			}
		})
	}
}

// Every code has its page, in the form that the command prints.
func TestPages(t *testing.T) {
	for _, code := range []string{NotYet, LeftForLater, MissingKey, BadLength, BadTolerance, NoLimits, AimOutside, LengthsDisagree, ChainedTolerances,
		GaugePlace, BareAngle, LooseCone, BadName, DuplicateName, UnknownName, NoFeatures, BadNeighbours, DiameterStep, PlaneMoves, NoCorner, NoRoom,
		NoStock, OutsideStock, StockTooShort, BadGrip, NoShop, CannotOpen, OutsideRoot} {
		page, ok := finding.Page(code, Pages)
		require.True(t, ok, code)
		assert.Regexp(t, `^# `+code+`: .+ \((error|warning|note)\)\n`, page)
	}
}

// Every kind that carries the contour has its row and its column in meets.
func TestMeets(t *testing.T) {
	var mains []Kind
	for _, k := range kinds() {
		if k.main {
			mains = append(mains, k.name)
		}
	}
	assert.Len(t, meets, len(mains))
	for _, a := range mains {
		for _, b := range mains {
			_, known := meets[a][b]
			assert.True(t, known, "%s, then %s", a, b)
		}
	}
}
