package motion

import (
	"fmt"
	"strings"

	"taperwright/profiles/geom"
)

func (k Kind) String() string {
	switch k {
	case Rapid:
		return "rapid"
	case Cut:
		return "cut"
	case Jump:
		return "jump"
	}
	return fmt.Sprintf("kind %d", int(k))
}

func (c Comp) String() string {
	switch c {
	case -1:
		return "left"
	case 0:
		return "off"
	case 1:
		return "right"
	}
	return fmt.Sprintf("comp %d", int(c))
}

// String prints the trace, one line a fact: what tests read. Lengths in mm,
// X as radius r.
func (t *Trace) String() string {
	var b strings.Builder
	x := "radius"
	if t.XDiameter {
		x = "diameter"
	}
	fmt.Fprintf(&b, "blocks %d, motions %d, unit %v, x %s", len(t.Blocks), len(t.Motions), t.Unit, x)
	if t.Ended {
		b.WriteString(", ended")
	}
	b.WriteByte('\n')
	if t.Stopped {
		fmt.Fprintf(&b, "stopped at line %d\n", t.StoppedAt.From().Line)
	}
	for _, a := range t.Assumed {
		from := a.From.Place()
		if from == "" {
			from = "default"
		}
		fmt.Fprintf(&b, "assumed %s: %s (%s)\n", a.What, a.Value, from)
	}
	for _, n := range t.NotJudged {
		fmt.Fprintf(&b, "not judged: %s\n", n)
	}
	for i, u := range t.Tools {
		shop := "not in the shop"
		if u.Tool != nil {
			shop = u.Tool.Name
		}
		fmt.Fprintf(&b, "tool %d: station %d offset %d, line %d, %s\n", i, u.Station, u.Offset, u.Span.From().Line, shop)
	}
	for _, d := range t.Dwells {
		fmt.Fprintf(&b, "dwell %s s, %s\n", short(d.Seconds), t.where(d.Block))
	}
	for i := range t.Motions {
		m := &t.Motions[i]
		fmt.Fprintf(&b, "%s %s\n", t.where(m.Block), m)
	}
	return b.String()
}

func (t *Trace) where(block int) string {
	at := t.Blocks[block]
	if at.Label == "" {
		return fmt.Sprintf("line %d", at.Span.From().Line)
	}
	return fmt.Sprintf("line %d %s", at.Span.From().Line, at.Label)
}

// String prints the motion.
func (m *Motion) String() string {
	var b strings.Builder
	b.WriteString(m.Kind.String())
	p := m.Path
	switch {
	case m.Kind == Jump:
		fmt.Fprintf(&b, " to %s", place(p.To))
	case p.IsLine():
		fmt.Fprintf(&b, " %s to %s", place(p.From), place(p.To))
	default:
		turn := "cw"
		if p.Turn == geom.CCW {
			turn = "ccw"
		}
		fmt.Fprintf(&b, " %s %s to %s round %s", turn, place(p.From), place(p.To), place(p.Center))
	}
	if m.Straight {
		b.WriteString(", straight")
	}
	if m.Tool < 0 {
		b.WriteString(", no tool")
	} else {
		fmt.Fprintf(&b, ", tool %d", m.Tool)
	}
	if m.Kind == Cut {
		switch {
		case m.Feed == 0:
			b.WriteString(", no feed")
		case m.PerMin:
			fmt.Fprintf(&b, ", %s mm/min", short(m.Feed))
		default:
			fmt.Fprintf(&b, ", %s mm/rev", short(m.Feed))
		}
		b.WriteString(", " + m.Spin.String())
	}
	if m.Comp != 0 {
		b.WriteString(", comp " + m.Comp.String())
	}
	return b.String()
}

// String prints the spindle's state.
func (s Spin) String() string {
	if !s.Turning {
		return "spindle still"
	}
	speed := "no speed"
	switch {
	case s.SpeedSet && s.Surface:
		speed = short(s.Speed) + " m/min"
	case s.SpeedSet:
		speed = short(s.Speed) + " rev/min"
	}
	if s.Surface && s.Cap > 0 {
		speed += " cap " + short(s.Cap)
	}
	return s.Word + " " + speed
}

func place(p geom.Point) string { return "z" + short(p.Z) + " r" + short(p.R) }

// short prints a figure to 1e-6 without needless zeros.
func short(x float64) string {
	s := geom.Fixed(x, 6)
	return strings.TrimSuffix(strings.TrimRight(s, "0"), ".")
}
