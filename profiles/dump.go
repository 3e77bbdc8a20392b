package profiles

import (
	"fmt"
	"strings"

	"taperwright/profiles/geom"
)

// String writes the part as a test or a reader of plans wants it: a line for
// each row, radii, mm and degrees, z in the part's frame.
func (p *Part) String() string {
	var b strings.Builder
	mm := func(x float64) string { return geom.Fixed(x, 4) }
	deg := func(x float64) string { return geom.Fixed(geom.Degrees(x), 6) }
	size := func(name string, s Size, write func(float64) string) {
		fmt.Fprintf(&b, " %s %s [%s %s]", name, write(s.Aim), write(s.Low), write(s.High))
		if s.Class != "" {
			b.WriteString(" " + s.Class)
		}
	}
	fmt.Fprintf(&b, "part %q drawing %q unit %s length %s digest %s\n", p.Title, p.Drawing, p.Unit, mm(p.Length), p.Digest)
	s := p.Stock
	fmt.Fprintf(&b, "stock radius %s length %s front %s", mm(s.Radius), mm(s.Length), mm(s.Front))
	if s.Bore > 0 {
		fmt.Fprintf(&b, " bore %s deep %s", mm(s.Bore), mm(s.BoreDepth))
	}
	fmt.Fprintf(&b, " oversize %s\n", mm(s.Oversize))
	for _, u := range p.Setups {
		fmt.Fprintf(&b, "set-up %q held on %q grip %s zero %s\n", u.Name, u.Hold.On, mm(u.Hold.Grip), mm(u.Zero))
	}
	for i := range p.Features {
		f := &p.Features[i]
		fmt.Fprintf(&b, "%s %q", f.Kind, f.Name)
		if f.Setup < 0 {
			b.WriteString(" later")
		}
		switch f.Kind {
		case Journal:
			size("r", f.Radius, mm)
		case Taper:
			size("gauge r", f.Cone.Gauge, mm)
			fmt.Fprintf(&b, " at z %s", mm(f.Cone.GaugeZ))
			size("half angle", f.Cone.HalfAngle, deg)
			fmt.Fprintf(&b, " slope %s", geom.Fixed(f.Cone.Slope.Aim, 9))
		case Shoulder:
			size("z", f.Z, mm)
		case Chamfer:
			size("width", f.Width, mm)
			size("angle", f.Angle, deg)
		case Fillet, Corner:
			size("radius", f.Fillet, mm)
		}
		fmt.Fprintf(&b, "\n  piece %s\n", f.Piece)
		if f.Judged != f.Piece {
			fmt.Fprintf(&b, "  judged %s\n", f.Judged)
		}
	}
	for _, l := range p.Later {
		fmt.Fprintf(&b, "later %q on %q\n", l.What, l.On)
	}
	for _, a := range p.Assumed {
		fmt.Fprintf(&b, "assumed %s: %s (%s)\n", a.What, a.Value, place(a.From))
	}
	return b.String()
}
