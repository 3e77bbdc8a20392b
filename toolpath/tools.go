package toolpath

import (
	"math"

	"taperwright/profiles/finding"
	"taperwright/profiles/geom"
	"taperwright/profiles/shop"
)

// Defaults of common practice, mm.
const (
	defaultSkin  = 0.25
	defaultLeast = 0.3
)

func or(s shop.Setting[float64], otherwise float64) float64 {
	if s.Value > 0 {
		return s.Value
	}
	return otherwise
}

// cutsHere tells whether t turns outside toward the chuck.
func cutsHere(t *shop.Tool) bool {
	return t.Kind == "turn" && !t.Inside && t.Right && t.Nose > 0
}

// tools returns the tools for a purpose in the order of the file.
func (j *job) tools(purpose string) []*shop.Tool {
	var out []*shop.Tool
	for i := range j.part.Shop.Tools {
		t := &j.part.Shop.Tools[i]
		if cutsHere(t) && (t.Purpose == purpose || t.Purpose == "both") {
			out = append(out, t)
		}
	}
	return out
}

// ready refuses a tool whose edges, speed or feed are not known.
func (j *job) ready(t *shop.Tool, levels bool) bool {
	before := j.errors
	if !t.Round && !(t.CuttingAngle.Value > 0 && t.CuttingAngle.Value < math.Pi) {
		j.refuse(t.Span, CodeToolData, "give holder, or cutting_edge_angle (of the main edge, from the direction toward the chuck)",
			"%s: the angle of its main edge is not known, so its reach cannot be judged", t.Name)
	}
	if !(t.SurfaceSpeed.Value > 0) && !(t.RPM.Value > 0) {
		j.refuse(t.Span, CodeToolData, "give surface_speed (m/min) or rpm", "%s has no speed", t.Name)
	}
	if !(t.FeedRate.Value > 0) {
		j.refuse(t.Span, CodeToolData, "give feed (mm/rev)", "%s has no feed", t.Name)
	}
	if levels && !(t.Depth.Value > 0) {
		j.refuse(t.Span, CodeToolData, "give depth, the greatest depth of cut on radius", "%s has no depth of cut for roughing", t.Name)
	}
	if reach := t.MainReach.Value * geom.Sin(t.CuttingAngle.Value); levels && !t.Round && t.MainReach.Value > 0 && t.Depth.Value > reach {
		j.refuse(t.Span, CodeToolData, "give a depth within the edge: two thirds of its reach is common practice",
			"%s: a depth of %s is more than its main edge reaches, %s", t.Name, j.mm(t.Depth.Value), j.mm(reach))
	}
	if t.SurfaceSpeed.Value > 0 && !(j.cap(t) > 0) {
		j.refuse(j.part.Shop.Machine.Span, CodeNoTopSpeed, "give [machine] top_speed, or rpm at the tool, in rev/min",
			"%s cuts at a surface speed, and nothing caps the spindle: toward the axis it would run away", t.Name)
	}
	return j.errors == before
}

// cap is the spindle speed that t never passes: the least of the machine's
// and the tool's own. 0: none known.
func (j *job) cap(t *shop.Tool) float64 {
	a, b := j.part.Shop.Machine.TopSpeed.Value, t.RPM.Value
	if a > 0 && b > 0 {
		return min(a, b)
	}
	return max(a, b)
}

// operation begins an operation at the change point.
func (j *job) operation(t *shop.Tool, purpose string) *rider {
	op := &Operation{Tool: t, Purpose: purpose}
	op.Surface = t.SurfaceSpeed.Value > 0
	op.Cap = j.cap(t)
	op.Speed = t.SurfaceSpeed.Value
	if !op.Surface {
		op.Speed = op.Cap
	}
	r := &rider{op: op, feed: t.FeedRate.Value}
	tip := tipOf(t)
	r.toTip = tip.Add(geom.Point{Z: j.zero})
	r.change = geom.Point{Z: j.part.Shop.Machine.Change.Value.Z, R: j.part.Shop.Machine.Change.Value.R}.Sub(r.toTip)
	r.at = r.change
	r.safeR = j.part.Stock.Radius + j.part.Stock.Oversize + clearance + t.Nose
	return r
}

// done ends an operation at the change point and works out its peak speed.
func (j *job) done(r *rider) {
	r.home()
	op := r.op
	op.PeakRPM = op.Speed
	if op.Surface {
		least := math.Inf(1)
		for _, p := range op.Passes {
			for _, m := range p.Moves {
				if !m.Rapid {
					lo, _ := m.Path.Bounds()
					least = min(least, lo.R)
				}
			}
		}
		op.PeakRPM = op.Cap
		if least > 0 { // v = pi d n, d in mm and v in m
			op.PeakRPM = min(op.Cap, op.Speed*1000/(2*math.Pi*least))
		}
	}
	j.plan.Operations = append(j.plan.Operations, *op)
}

// refuse adds an error.
func (j *job) refuse(at finding.Span, code, help, format string, args ...any) {
	j.errors++
	if at.Text == nil {
		at.Text = j.part.Text
	}
	j.into.Error(at, code, help, format, args...)
}

// mm prints a length in the part's unit.
func (j *job) mm(x float64) string {
	if j.part.Unit == shop.Inch {
		return geom.Fixed(x/25.4, 4) + " in"
	}
	return geom.Fixed(x, 3) + " mm"
}

// degrees prints an angle.
func degrees(x float64) string { return geom.Fixed(geom.Degrees(x), 2) + " deg" }
