package verify

import (
	"bytes"
	"fmt"
	"io"
	"math"
	"strings"
	"unicode/utf8"

	"taperwright/profiles"
	"taperwright/profiles/finding"
	"taperwright/profiles/geom"
	"taperwright/profiles/taper"
	"taperwright/verify/motion"
)

// pageWidth is how wide the verdict page is, in code points.
const pageWidth = 100

// Text prints the verdict on one page.
func (v *Verdict) Text(w io.Writer) error {
	var b bytes.Buffer
	title := "Verdict"
	if v.Part != nil && v.Part.Title != "" {
		title = v.Part.Title
	}
	against := strings.Join(v.Programs, ", ")
	if v.PartName != "" {
		against += " against " + v.PartName
	}
	title, against = finding.Clean(title), finding.Clean(against)
	if utf8.RuneCountInString(title)+utf8.RuneCountInString(against)+2 <= pageWidth {
		b.WriteString(title + strings.Repeat(" ", pageWidth-utf8.RuneCountInString(title)-utf8.RuneCountInString(against)) + against + "\n")
	} else {
		b.WriteString(title + "\n" + against + "\n")
	}
	b.WriteByte('\n')
	var taken []string
	for _, a := range v.Assumed {
		s := a.What + ": " + a.Value
		if p := a.From.Place(); p != "" {
			s += " (" + p + ")"
		}
		taken = append(taken, s)
	}
	list(&b, "taken      ", taken)
	list(&b, "not judged ", v.NotJudged)
	if len(taken)+len(v.NotJudged) > 0 {
		b.WriteByte('\n')
	}
	v.table(&b)
	if len(v.Findings) > 0 {
		b.WriteByte('\n')
		if err := finding.Write(&b, v.Findings, finding.Window); err != nil {
			return err
		}
	}
	for _, s := range v.Slips {
		b.WriteByte('\n')
		wrap(&b, "likely slip:", s.Explains+" ["+s.Code+"]")
		wrap(&b, "cure:", s.Cure)
	}
	b.WriteByte('\n')
	b.WriteString(v.last() + "\n")
	_, err := w.Write(b.Bytes())
	return err
}

// wrap prints a paragraph, folded at the page's width.
func wrap(b *bytes.Buffer, head, text string) {
	line := head
	for _, word := range strings.Fields(finding.Clean(text)) {
		if utf8.RuneCountInString(line)+1+utf8.RuneCountInString(word) > pageWidth {
			b.WriteString(line + "\n")
			line = "   "
		}
		line += " " + word
	}
	b.WriteString(line + "\n")
}

// list prints a heading with one entry a line.
func list(b *bytes.Buffer, head string, entries []string) {
	for _, e := range entries {
		fmt.Fprintf(b, "%s %s\n", head, finding.Clean(e))
		head = strings.Repeat(" ", len(head))
	}
}

// table prints a row (or two, for a cone) a feature.
func (v *Verdict) table(b *bytes.Buffer) {
	rows := [][]string{{"feature", "wanted", "cut", "off", "stands off", "verdict", "lines"}}
	for i := range v.Rows {
		rows = append(rows, v.lines(&v.Rows[i])...)
	}
	width := make([]int, len(rows[0]))
	for _, r := range rows {
		for i, c := range r {
			width[i] = max(width[i], utf8.RuneCountInString(c))
		}
	}
	for _, r := range rows {
		line := ""
		for i, c := range r {
			line += c + strings.Repeat(" ", width[i]-utf8.RuneCountInString(c)+2)
		}
		b.WriteString(strings.TrimRight(line, " ") + "\n")
	}
}

// lines returns the printed lines of one row.
func (v *Verdict) lines(r *Row) [][]string {
	verdict := map[State]string{In: "in", Out: "OUT", CannotJudge: "cannot judge", Later: "later"}[r.Verdict]
	name := finding.Clean(r.Name)
	at := blockWords(r.Blocks)
	get := func(f Figures, key, before, after string, decimals int) string {
		x, known := f.Get(key)
		if !known {
			return "-"
		}
		return before + geom.Fixed(x, decimals) + after
	}
	signed := func(key, after string) string {
		x, known := r.Off.Get(key)
		if !known {
			return ""
		}
		s := geom.Fixed(x, lengthPlaces)
		if x > 0 && strings.Trim(s, "0.") != "" {
			s = "+" + s
		}
		return s + after
	}
	f := &v.Part.Features[r.Feature]
	switch {
	case r.Verdict == Later:
		return [][]string{{name, "", "", "", "", verdict, ""}}
	case r.Kind == profiles.Taper:
		z := " at Z" + geom.Fixed(ToProgram(v.Part, f.Setup, geom.Point{Z: f.Cone.GaugeZ}).Z, 3)
		if f.Cone.OffMetal {
			z += " (off the metal)"
		}
		half := func(fs Figures) string {
			x, known := fs.Get("half_angle_deg")
			if !known {
				return "-"
			}
			return taper.DegMinSec(geom.Radians(x), 0)
		}
		off := ""
		if x, known := r.Off.Get("half_angle_deg"); known {
			off = angleOff(x)
		}
		return append([][]string{
			{name, get(r.Wanted, "gauge_diameter_mm", "⌀", z, lengthPlaces), get(r.Cut, "gauge_diameter_mm", "⌀", "", lengthPlaces), signed("diameter_mm", " ⌀"), signed("standoff_mm", ""), verdict, at},
			{"", "half " + half(r.Wanted), half(r.Cut), off, "", "", ""},
		}, worst(r)...)
	case r.Kind == profiles.Journal:
		class := ""
		if f.Radius.Class != "" {
			class = " (" + finding.Clean(f.Radius.Class) + ")"
		}
		return append([][]string{{name, get(r.Wanted, "diameter_mm", "⌀", class, lengthPlaces), get(r.Cut, "diameter_mm", "⌀", "", lengthPlaces), signed("diameter_mm", " ⌀"), "", verdict, at}}, worst(r)...)
	case r.Kind == profiles.Shoulder:
		return [][]string{{name, get(r.Wanted, "z_mm", "Z", "", lengthPlaces), get(r.Cut, "z_mm", "Z", "", lengthPlaces), signed("z_mm", ""), "", verdict, at}}
	case r.Kind == profiles.Chamfer:
		return [][]string{{name, get(r.Wanted, "width_mm", "width ", "", lengthPlaces), get(r.Cut, "width_mm", "", "", lengthPlaces), "", "", verdict, at}}
	}
	wanted := get(r.Wanted, "radius_mm", "R", "", lengthPlaces)
	if r.Kind == profiles.Corner && len(r.Limits) > 0 {
		wanted = "at most R" + geom.Fixed(r.Limits[0].High, lengthPlaces)
	}
	return [][]string{{name, wanted, get(r.Cut, "radius_mm", "R", "", lengthPlaces), "", "", verdict, at}}
}

// angleOff prints how far a half angle is off: in seconds of arc, or in
// degrees where that is many.
func angleOff(deg float64) string {
	s := geom.Fixed(deg*3600, 1) + "\""
	if math.Abs(deg) >= 0.1 {
		s = geom.Fixed(deg, 4) + "°"
	}
	if deg > 0 && strings.Trim(s, "0.\"") != "" {
		s = "+" + s
	}
	return s
}

// worst returns a line with the worst place of a journal or taper that is out,
// where that is worse than its mean or its gauge plane says.
func worst(r *Row) [][]string {
	mean, _ := r.Off.Get("diameter_mm")
	left, _ := r.Off.Get("most_left_diameter_mm")
	gone, known := r.Off.Get("deepest_gouge_diameter_mm")
	most := max(left, gone)
	if !known || r.Verdict != Out || geom.Count(most-math.Abs(mean), lengthPlaces) <= 0 {
		return nil
	}
	s := "+" + geom.Fixed(most, lengthPlaces)
	if gone > left {
		s = "-" + geom.Fixed(most, lengthPlaces)
	}
	return [][]string{{"", "", "at worst", s + " ⌀", "", "", ""}}
}

// blockWords names at most three lines of a program.
func blockWords(places []Place) string {
	var out []string
	for i, p := range places {
		if i == 3 {
			out = append(out, "..")
			break
		}
		out = append(out, fmt.Sprint(p.Line))
	}
	return strings.Join(out, " ")
}

// hazard holds the codes of what is wrong with the cutting, not with a feature.
var hazard = map[string]bool{CodeRapidIn: true, CodeDogLegIn: true, CodeBodyIn: true, CodeParted: true, CodeNoCap: true,
	CodeNoSpindle: true, CodeWrongSpin: true, motion.FeedMissing: true}

// last is the last line of the page.
func (v *Verdict) last() string {
	out, cannot, judged := 0, 0, 0
	for _, r := range v.Rows {
		switch r.Verdict {
		case Out:
			out++
		case CannotJudge:
			cannot++
		}
		if r.Verdict != Later {
			judged++
		}
	}
	hazards := 0
	for _, f := range v.Findings {
		if hazard[f.Code] && f.Severity != finding.Note {
			hazards++
		}
	}
	s := ""
	switch v.State {
	case Good:
		s = fmt.Sprintf("good: %d features in", judged)
	case Wrong:
		s = fmt.Sprintf("wrong: %d of %d features out", out, judged)
	default:
		s = "cannot judge"
	}
	if cannot > 0 {
		s += fmt.Sprintf(", %d of %d cannot be judged", cannot, judged)
	}
	switch hazards {
	case 0:
		s += ", no hazard found"
	case 1:
		s += ", 1 hazard"
	default:
		s += fmt.Sprintf(", %d hazards", hazards)
	}
	if t := v.Totals; t.Time.Known {
		n := int(geom.Count(t.Time.Value, 0))
		s += fmt.Sprintf(".  cutting %d min %d s", n/60, n%60)
		if t.PeakRPM.Known {
			s += fmt.Sprintf(", at most %s rev/min (line %d)", geom.Fixed(t.PeakRPM.Value, 0), t.PeakAt.From().Line)
		}
	}
	return s
}
