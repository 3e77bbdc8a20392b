package post

import (
	"math"

	"taperwright/profiles"
	"taperwright/profiles/geom"
	"taperwright/toolpath"
)

// Cone is what rounding the words did to one cone.
type Cone struct {
	Feature   int     // index into Part.Features
	HalfAngle float64 // change of the half angle, rad; above 0: steeper
	Diameter  float64 // change at the gauge plane, mm on diameter; above 0: thicker
	Allowance float64 // greatest change of the half angle that these words can make, rad
	Share     float64 // of the tolerance, the larger of both; 0 when there is none
}

// cut is a straight feed move as planned and as the words say it.
type cut struct {
	op      *toolpath.Operation
	feature int
	exact   geom.Piece
	rounded geom.Piece
}

// biteShare is the share of a tolerance from which rounding is worth a word.
const biteShare = 0.25

// cones judges the longest segment that cuts each cone last, and notes where
// rounding eats much of a tolerance.
func (w *writer) cones() []Cone {
	var out []Cone
	for i := range w.part.Features {
		f := &w.part.Features[i]
		if f.Cone == nil {
			continue
		}
		var last *cut
		for k := range w.cut {
			c := &w.cut[k]
			if c.feature != i {
				continue
			}
			if last == nil || c.op != last.op || c.exact.Length() > last.exact.Length() {
				last = c
			}
		}
		if last == nil {
			continue
		}
		c := w.rounding(i, f, last)
		out = append(out, c)
		if geom.Count(c.Share, 7) >= geom.Count(biteShare, 7) {
			w.into.Note(f.Span, RoundingEats, "post with more decimals, or in the finer unit",
				"%s: rounding to %d decimals turns the half angle by %s sec and changes the gauge diameter by %s mm, %s %% of the tolerance",
				f.Name, w.format.decimals, seconds(c.HalfAngle), geom.Fixed(c.Diameter, 5), geom.Fixed(100*c.Share, 0))
		}
	}
	return out
}

func (w *writer) rounding(i int, f *profiles.Feature, s *cut) Cone {
	c := Cone{Feature: i}
	// Half angles from 0 to 90 degrees, whichever way the segment runs.
	half := func(p geom.Piece) float64 {
		d := p.To.Sub(p.From)
		return geom.Atan2(math.Abs(d.R), math.Abs(d.Z))
	}
	c.HalfAngle = half(s.rounded) - half(s.exact)
	t := math.Abs(f.Cone.Slope.Aim)
	if l := s.exact.Length(); l > 0 {
		c.Allowance = (w.format.step() + float64(t*w.format.one)) / l
	}
	// The path runs beside the cone at a fixed distance; where it stands when
	// the gauge plane is cut, the two lines are compared along r.
	dir := s.exact.StartDir()
	side := dir.Left()
	setup := w.part.Setups[w.plan.Setup]
	gauge := geom.Point{Z: f.Cone.GaugeZ + setup.Zero, R: f.Cone.Gauge.Aim}
	if setup.Back {
		gauge.Z = -w.part.Length - f.Cone.GaugeZ + setup.Zero
	}
	at := gauge.Along(side, s.exact.From.Sub(gauge).Dot(side))
	if near := s.rounded.StartDir(); math.Abs(near.Z) > 1e-9 {
		r := s.rounded.From.R + float64(near.R*((at.Z-s.rounded.From.Z)/near.Z))
		c.Diameter = 2 * (r - at.R)
	}
	if band := f.Cone.HalfAngle.High - f.Cone.HalfAngle.Low; band > 0 {
		c.Share = math.Abs(c.HalfAngle) / band
	}
	if band := 2 * (f.Cone.Gauge.High - f.Cone.Gauge.Low); band > 0 {
		c.Share = max(c.Share, math.Abs(c.Diameter)/band)
	}
	return c
}

// seconds prints an angle in seconds of arc.
func seconds(rad float64) string { return geom.Fixed(3600*geom.Degrees(rad), 2) }
