package main

import (
	"encoding/json"
	"fmt"
	"io"
	"strconv"
	"strings"

	"github.com/spf13/cobra"

	"taperwright/profiles/finding"
	"taperwright/profiles/geom"
	"taperwright/profiles/taper"
)

// coneFlags are the facts as typed: the text of a flag is the user's text, and
// findings point into it.
type coneFlags struct {
	facts                map[taper.Kind]*string
	fromSmall, fromLarge string
	between              string
	unit, format         string
}

func newCone() *cobra.Command {
	f := coneFlags{facts: map[taper.Kind]*string{}}
	cmd := &cobra.Command{
		Use:   "cone",
		Short: "work out every figure of one cone from a few facts",
		Long: `Works out every figure of one cone: rate of taper, half and included angle,
taper per foot and per inch, compound rest, tailstock set-over, attachment,
stand-off, and the nearest published tapers.

Give what you know. One fact says how fast it tapers (--ratio, --series,
--taper-per-foot, --taper-per-inch, --half-angle, --included-angle), or two
diameters and the length between them do. More than enough is welcome: facts
that disagree are named, with the usual slip that explains them.`,
		Example: `  taperwright cone --ratio 1:10 --small 38 --length 70
  taperwright cone --large 0.938 --small 0.778 --length 3.1875 --unit inch
  taperwright cone --series "morse 3" --between-centres 300
  taperwright cone --half-angle "1°26'16\""`,
		Args: cobra.NoArgs,
		RunE: func(c *cobra.Command, _ []string) error { return f.run(c) },
	}
	for _, fl := range []struct {
		kind       taper.Kind
		name, help string
	}{
		{taper.Large, "large", "diameter of the large end"},
		{taper.Small, "small", "diameter of the small end"},
		{taper.Length, "length", "length along the axis"},
		{taper.Ratio, "ratio", `rate of taper on diameter: 1:10, 7:24, 7/24`},
		{taper.PerFoot, "taper-per-foot", "inches on diameter per foot"},
		{taper.PerInch, "taper-per-inch", "inches on diameter per inch"},
		{taper.HalfAngle, "half-angle", `degrees from the axis: 1.4377, or 1°26'16"`},
		{taper.IncludedAngle, "included-angle", "degrees from side to side, in the same forms"},
		{taper.RateOf, "series", `rate of a published taper: "morse 3", "metric 1:20 80", "7:24 40"`},
		{taper.Gauge, "gauge-diameter", `diameter at the gauge plane, or "series"`},
	} {
		f.facts[fl.kind] = cmd.Flags().String(fl.name, "", fl.help)
	}
	cmd.Flags().StringVar(&f.fromSmall, "from-small", "", "place of the gauge plane from the small end")
	cmd.Flags().StringVar(&f.fromLarge, "from-large", "", "place of the gauge plane from the large end")
	cmd.Flags().StringVar(&f.between, "between-centres", "", "length of the work between its centre points, for the set-over")
	choiceFlag(cmd, &f.unit, "unit", "unit of diameters and lengths", "mm", "inch")
	choiceFlag(cmd, &f.format, "format", "form of the answer", "text", "json", "sarif")
	cmd.MarkFlagsMutuallyExclusive("from-small", "from-large")
	var names []string
	for _, s := range taper.All() {
		names = append(names, s.Name)
	}
	_ = cmd.RegisterFlagCompletionFunc("series", cobra.FixedCompletions(names, cobra.ShellCompDirectiveNoFileComp)) // fails only for a flag that does not exist
	return cmd
}

func (f coneFlags) run(c *cobra.Command) error {
	if c.Flags().NFlag() == 0 {
		return needs("facts about one cone: how fast it tapers, or two diameters and the length between them", c.CommandPath()+" --ratio 1:10 --small 38 --length 70")
	}
	var texts []*finding.Text
	var facts []taper.Fact
	page := conePage{inch: f.unit == "inch"}
	for kind := taper.Large; kind <= taper.RateOf; kind++ {
		value, fl := *f.facts[kind], coneFlag[kind]
		if !c.Flags().Changed(fl) {
			continue
		}
		text := finding.NewText("--"+fl, []byte(value))
		texts = append(texts, text)
		fact := taper.Fact{Kind: kind, Label: "--" + fl, Span: text.Span(0, len(value))}
		n, err := plainNumber(value, false)
		switch {
		case kind == taper.Ratio, kind == taper.RateOf, kind == taper.Gauge && value == "series",
			err != nil && (kind == taper.HalfAngle || kind == taper.IncludedAngle):
			fact.Text = value
			if value == "" {
				return fmt.Errorf("--%s is empty", fl)
			}
		case err != nil:
			return fmt.Errorf("--%s %q: %w", fl, value, err)
		case n == 0 && kind != taper.Small: // a cone may come to a point
			return fmt.Errorf("--%s %q: want a number above 0", fl, value)
		default:
			fact.Value, fact.Digits = n, value
		}
		if kind == taper.Gauge {
			at, from := f.fromSmall, taper.FromSmall
			if c.Flags().Changed("from-large") {
				at, from = f.fromLarge, taper.FromLarge
			} else if !c.Flags().Changed("from-small") {
				return fmt.Errorf("--gauge-diameter needs its place: add --from-small or --from-large")
			}
			if n, err = plainNumber(at, true); err != nil {
				return fmt.Errorf("place of the gauge plane %q: %w", at, err)
			}
			fact.At, fact.From = n, from
			page.gauge = &fact
		}
		facts = append(facts, fact)
	}
	if *f.facts[taper.Gauge] == "" && (c.Flags().Changed("from-small") || c.Flags().Changed("from-large")) {
		return fmt.Errorf("--from-small and --from-large are places of --gauge-diameter, which is missing")
	}
	if c.Flags().Changed("between-centres") {
		n, err := plainNumber(f.between, false)
		if err != nil || n == 0 {
			return fmt.Errorf("--between-centres %q: want a length above 0", f.between)
		}
		page.between = n * page.scale()
	}
	var list finding.List
	list.Order(texts...)
	page.cone, page.known = taper.Solve(facts, taper.Ask{Inch: page.inch, Flags: true}, &list)
	page.findings = list.Sorted()
	for _, x := range page.findings {
		switch x.Code { // the call itself cannot be read, which is no finding about a cone
		case taper.BadRatio, taper.BadAngle, taper.UnknownSeries:
			if err := finding.Write(c.ErrOrStderr(), page.findings, finding.Window); err != nil {
				return err
			}
			return exitTheWorld
		}
	}
	if err := page.write(c.OutOrStdout(), f.format); err != nil {
		return err
	}
	if !page.known {
		return exitCannot
	}
	return nil
}

// coneFlag names the flag of each fact.
var coneFlag = map[taper.Kind]string{
	taper.Large: "large", taper.Small: "small", taper.Length: "length", taper.Gauge: "gauge-diameter",
	taper.Ratio: "ratio", taper.PerFoot: "taper-per-foot", taper.PerInch: "taper-per-inch",
	taper.HalfAngle: "half-angle", taper.IncludedAngle: "included-angle", taper.RateOf: "series",
}

// largestFlag is far beyond any lathe and keeps every sum exact to 1e-7 mm.
const largestFlag = 100_000

// plainNumber reads digits with at most one point, and a sign where it may
// have one.
func plainNumber(s string, signed bool) (float64, error) {
	digits := s
	if signed {
		digits = strings.TrimPrefix(s, "-")
	}
	if digits == "" || strings.Trim(digits, "0123456789.") != "" {
		return 0, fmt.Errorf("want a number like 44.5")
	}
	n, err := strconv.ParseFloat(s, 64)
	if err != nil {
		return 0, fmt.Errorf("want a number like 44.5")
	}
	if n > largestFlag || n < -largestFlag {
		return 0, fmt.Errorf("want no more than %d", largestFlag)
	}
	return n, nil
}

// conePage is the answer.
type conePage struct {
	cone     taper.Cone
	known    bool
	inch     bool
	gauge    *taper.Fact // nil: not given
	between  float64     // mm; 0: not given
	findings []finding.Finding
}

const mmPerInch = 25.4

func (p conePage) scale() float64 {
	if p.inch {
		return mmPerInch
	}
	return 1
}

func (p conePage) write(w io.Writer, format string) error {
	switch {
	case format == "json":
		return p.json(w)
	case format == "sarif":
		return finding.SARIF(w, p.findings)
	case !p.known:
		return finding.Write(w, p.findings, finding.Window)
	}
	_, err := io.WriteString(w, p.text())
	return err
}

// near is how many published tapers are shown.
const near = 3

func (p conePage) json(w io.Writer) error {
	type nearest struct {
		Series     string  `json:"series"`
		Ratio      float64 `json:"ratio_1_to"`
		HalfAngle  float64 `json:"half_angle_deg"`
		Difference float64 `json:"difference_deg"`
	}
	out := struct {
		Format        int            `json:"format"`
		Large         *float64       `json:"large_diameter_mm"`
		Small         *float64       `json:"small_diameter_mm"`
		Length        *float64       `json:"length_mm"`
		Ratio         *float64       `json:"ratio_1_to"`
		HalfAngle     *float64       `json:"half_angle_deg"`
		IncludedAngle *float64       `json:"included_angle_deg"`
		PerFoot       *float64       `json:"taper_per_foot_in"`
		PerInch       *float64       `json:"taper_per_inch_in"`
		Rise          *float64       `json:"rise_on_radius_per_mm"`
		SetOver       *float64       `json:"setover_mm"`
		Handbook      *float64       `json:"setover_handbook_mm"`
		StandOff      *float64       `json:"standoff_per_0_01_mm"`
		Nearest       []nearest      `json:"nearest"`
		Findings      []finding.Item `json:"findings"`
	}{Format: 1, Nearest: []nearest{}, Findings: finding.Items(p.findings)}
	set := func(to **float64, known bool, x float64, decimals int) {
		if known && p.known {
			r := geom.Round(x, decimals)
			*to = &r
		}
	}
	c, t := p.cone, p.cone.Slope
	set(&out.Large, c.Knows(taper.Large), 2*c.Large, 4)
	set(&out.Small, c.Knows(taper.Small), 2*c.Small, 4)
	set(&out.Length, c.Knows(taper.Length), c.Length, 4)
	set(&out.Ratio, true, sharp(t.Ratio()), 6)
	set(&out.HalfAngle, true, sharp(geom.Degrees(t.HalfAngle())), 6)
	set(&out.IncludedAngle, true, sharp(geom.Degrees(t.IncludedAngle())), 6)
	set(&out.PerFoot, true, t.PerFoot(), 7)
	set(&out.PerInch, true, t.PerInch(), 7)
	set(&out.Rise, true, float64(t), 7)
	set(&out.SetOver, p.between > 0, t.SetOver(p.between), 4)
	set(&out.Handbook, p.between > 0, t.SetOverHandbook(p.between), 4)
	set(&out.StandOff, true, t.StandOff(0.01), 4)
	if p.known {
		for _, m := range taper.Nearest(t, near) {
			out.Nearest = append(out.Nearest, nearest{m.Series.Name, sharp(m.Series.Slope.Ratio()),
				sharp(geom.Degrees(m.Series.Slope.HalfAngle())), sharp(geom.Degrees(m.Difference))})
		}
	}
	b, err := json.MarshalIndent(out, "", "  ")
	if err != nil {
		return err
	}
	_, err = w.Write(append(b, '\n'))
	return err
}

// text is the answer on one page: what the figure is, the figure in the
// user's unit, the same in other terms.
func (p conePage) text() string {
	var b strings.Builder
	c, t := p.cone, p.cone.Slope
	row := func(what, figure, other string) {
		fmt.Fprintln(&b, strings.TrimRight(fmt.Sprintf("  %-32s %-18s %s", what, figure, other), " "))
	}
	both := func(mm float64) (string, string) {
		m, i := geom.Fixed(mm, 4)+" mm", geom.Fixed(mm/mmPerInch, 5)+" in"
		if p.inch {
			return i, m
		}
		return m, i
	}
	length := func(what string, known bool, mm float64) {
		if known {
			figure, other := both(mm)
			row(what, figure, other)
		}
	}
	fmt.Fprintf(&b, "cone 1:%s on diameter", short(sharp(t.Ratio()), 6))
	if c.Series != nil {
		fmt.Fprintf(&b, ", %s (published as %s)", c.Series.Name, c.Series.Rate)
		if !c.Series.Seen {
			b.WriteString(", from memory: check it against the standard")
		}
	}
	b.WriteString("\n\n")
	length("large diameter", c.Knows(taper.Large), 2*c.Large)
	length("small diameter", c.Knows(taper.Small), 2*c.Small)
	length("length along the axis", c.Knows(taper.Length), c.Length)
	if p.gauge != nil {
		length("gauge diameter", true, 2*c.Gauge)
		at, end, other := float64(p.gauge.At*p.scale()), "large", "small"
		if p.gauge.From == taper.FromSmall {
			end, other = other, end
		}
		figure, _ := both(at)
		row("gauge plane", figure, "from the "+end+" end")
		if c.Knows(taper.Length) {
			figure, _ = both(c.Length - at)
			row("", figure, "from the "+other+" end")
		}
	}
	if c.Knows(taper.Large) || c.Knows(taper.Small) || c.Knows(taper.Length) {
		b.WriteString("\n")
	}
	half, included := t.HalfAngle(), t.IncludedAngle()
	row("half angle", degrees(half), taper.DegMinSec(half, 1)+"   compound rest, from the axis")
	row("included angle", degrees(included), taper.DegMinSec(included, 1))
	row("taper on diameter", geom.Fixed(t.PerFoot(), 5)+" in/ft", geom.Fixed(t.PerInch(), 6)+" in/in")
	row("", geom.Fixed(100*t.PerInch(), 4)+" mm/100 mm", geom.Fixed(t.PerInch(), 6)+" mm/mm")
	row("attachment, rise on radius", geom.Fixed(float64(t), 6)+" mm/mm", geom.Fixed(25*float64(t), 4)+" mm/25 mm   "+geom.Fixed(float64(t), 6)+" in/in")
	row("attachment, rise on diameter", geom.Fixed(t.PerInch(), 6)+" mm/mm", geom.Fixed(25*t.PerInch(), 4)+" mm/25 mm   "+geom.Fixed(t.PerInch(), 6)+" in/in")
	if p.between > 0 {
		figure, other := both(t.SetOver(p.between))
		at, _ := both(p.between)
		row("set-over, L sin a", figure, other+"   L = "+at+" between the centre points")
		figure, other = both(t.SetOverHandbook(p.between))
		row("set-over, handbook t L", figure, other)
	}
	row("stand-off per 0.01 mm diameter", geom.Fixed(t.StandOff(0.01), 4)+" mm", "")
	row("stand-off per 0.001 in diameter", geom.Fixed(t.StandOff(0.001), 4)+" in", "")
	b.WriteString("\n")
	fmt.Fprintf(&b, "  %-32s %-18s %s\n", "nearest published taper", "half angle", "this cone less that one, half angle")
	for _, m := range taper.Nearest(t, near) {
		sign := ""
		if sharp(geom.Degrees(m.Difference)) > 0 {
			sign = "+"
		}
		name := m.Series.Name
		if !strings.Contains(name, m.Series.Rate) {
			name += " (" + m.Series.Rate + ")"
		}
		row(name, degrees(m.Series.Slope.HalfAngle()), sign+degrees(m.Difference))
	}
	var more []string
	if !c.Knows(taper.Large) || !c.Knows(taper.Small) {
		more = append(more, "a diameter and --length give both ends")
	}
	if p.between == 0 {
		more = append(more, "--between-centres gives the set-over")
	}
	if len(more) > 0 {
		fmt.Fprintf(&b, "\n  %s\n", strings.Join(more, "; "))
	}
	return b.String()
}

// sharp rounds x to 6 decimals in one step, half away from zero. By way of the
// seventh, as lengths are rounded, one angle in twenty would end in a digit
// that no table prints: 1:10 is 5.72481045°, not 5.724811.
func sharp(x float64) float64 {
	if x > 1e8 || x < -1e8 {
		return geom.Round(x, 6) // beyond what ten decimals of it fit in a count
	}
	n, half := geom.Count(x, 10), int64(5000)
	if n < 0 {
		half = -half
	}
	return float64((n+half)/10000) / 1e6
}

// degrees writes an angle in radians in decimal degrees.
func degrees(rad float64) string { return geom.Fixed(sharp(geom.Degrees(rad)), 6) + "°" }

// short writes x with at most so many decimals.
func short(x float64, decimals int) string {
	return strings.TrimRight(strings.TrimRight(geom.Fixed(x, decimals), "0"), ".")
}
