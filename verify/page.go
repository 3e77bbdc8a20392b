package verify

import (
	"bytes"
	"fmt"
	"io"
	"strings"
	"unicode/utf8"

	"taperwright/profiles"
	"taperwright/profiles/finding"
	"taperwright/profiles/geom"
	"taperwright/profiles/taper"
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
	for i, s := range v.Slips {
		if i == 0 {
			b.WriteByte('\n')
		}
		fmt.Fprintf(&b, "likely slip: %s; %s mm stay unexplained [%s]\ncure: %s\n", finding.Clean(s.Explains), geom.Fixed(s.Residual, lengthPlaces), s.Code, finding.Clean(s.Cure))
	}
	b.WriteByte('\n')
	b.WriteString(v.last() + "\n")
	_, err := w.Write(b.Bytes())
	return err
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
		s := geom.Fixed(x, 3)
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
			off = geom.Fixed(x*3600, 0) + "\""
		}
		return [][]string{
			{name, get(r.Wanted, "gauge_diameter_mm", "⌀", z, 3), get(r.Cut, "gauge_diameter_mm", "⌀", "", 3), signed("diameter_mm", " ⌀"), signed("standoff_mm", ""), verdict, at},
			{"", "half " + half(r.Wanted), half(r.Cut), off, "", "", ""},
		}
	case r.Kind == profiles.Journal:
		class := ""
		if f.Radius.Class != "" {
			class = " (" + finding.Clean(f.Radius.Class) + ")"
		}
		return [][]string{{name, get(r.Wanted, "diameter_mm", "⌀", class, 3), get(r.Cut, "diameter_mm", "⌀", "", 3), signed("diameter_mm", " ⌀"), "", verdict, at}}
	case r.Kind == profiles.Shoulder:
		return [][]string{{name, get(r.Wanted, "z_mm", "Z", "", 3), get(r.Cut, "z_mm", "Z", "", 3), signed("z_mm", ""), "", verdict, at}}
	case r.Kind == profiles.Chamfer:
		return [][]string{{name, get(r.Wanted, "width_mm", "width ", "", 3), get(r.Cut, "width_mm", "", "", 3), "", "", verdict, at}}
	}
	wanted := get(r.Wanted, "radius_mm", "R", "", 3)
	if r.Kind == profiles.Corner && len(r.Limits) > 0 {
		wanted = "at most R" + geom.Fixed(r.Limits[0].High, 3)
	}
	return [][]string{{name, wanted, get(r.Cut, "radius_mm", "R", "", 3), "", "", verdict, at}}
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
		if f.Severity == finding.Error {
			hazards++
		}
	}
	s := ""
	switch v.State {
	case Good:
		s = fmt.Sprintf("good: %d features in", judged)
	case Wrong:
		s = fmt.Sprintf("wrong: %d of %d features out, %d errors", out, judged, hazards)
	default:
		s = fmt.Sprintf("cannot judge: %d of %d features, %d errors", cannot, judged, hazards)
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
