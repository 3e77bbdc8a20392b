package toolpath

import (
	"fmt"
	"strings"

	"taperwright/profiles/geom"
)

// String gives the plan as text for tests: a line for each operation, pass
// and move, mm on radius at 1e-4.
func (p *Plan) String() string {
	var b strings.Builder
	at := func(q geom.Point) string { return "z " + geom.Fixed(q.Z, 4) + " r " + geom.Fixed(q.R, 4) }
	for _, op := range p.Operations {
		mode := "rev/min"
		if op.Surface {
			mode = "m/min"
		}
		fmt.Fprintf(&b, "%s: %s, %s %s, cap %s, peak %s rev/min\n", op.Purpose, op.Tool.Name,
			geom.Fixed(op.Speed, 1), mode, geom.Fixed(op.Cap, 0), geom.Fixed(op.PeakRPM, 0))
		for _, s := range op.Passes {
			fmt.Fprintf(&b, "  %s\n", s.Name)
			for i, m := range s.Moves {
				if i == 0 {
					fmt.Fprintf(&b, "    from   %s\n", at(m.Path.From))
				}
				kind := "line"
				switch {
				case m.Rapid:
					kind = "rapid"
				case m.Path.Turn > 0:
					kind = "ccw"
				case m.Path.Turn < 0:
					kind = "cw"
				}
				fmt.Fprintf(&b, "    %-6s %s", kind, at(m.Path.To))
				if m.Path.Turn != 0 {
					fmt.Fprintf(&b, " round %s", at(m.Path.Center))
				}
				if !m.Rapid {
					fmt.Fprintf(&b, " feed %s", geom.Fixed(m.Feed, 3))
				}
				if m.Feature >= 0 {
					fmt.Fprintf(&b, " [%d]", m.Feature)
				}
				b.WriteByte('\n')
			}
		}
	}
	fmt.Fprintf(&b, "skin %s to %s mm, after roughing %s to %s mm\n", geom.Fixed(p.Skin.Least, 4), geom.Fixed(p.Skin.Most, 4),
		geom.Fixed(p.Rough.Least, 4), geom.Fixed(p.Rough.Most, 4))
	return b.String()
}
