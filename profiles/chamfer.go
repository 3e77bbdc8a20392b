package profiles

import (
	"taperwright/profiles/geom"
	"taperwright/profiles/source"
)

var chamferKind = kind{
	name: Chamfer,
	keys: []source.Key{
		{Name: "width", Type: "length", Help: "along the axis"},
		{Name: "tolerance", Type: "number or [low, high]", Help: "of the width; else the general class"},
		{Name: "aim", Type: "length", Help: "width to cut to; else the middle of the tolerance"},
		{Name: "angle", Type: "degrees or text", Help: "to the axis; 45 when not given"},
		{Name: "angle_tolerance", Type: "degrees or [low, high]", Help: "of the angle; else the general class"},
	},
	read: readChamfer,
}

func readChamfer(r *reader, t *source.Table, it *item) bool {
	w, okW := r.edgeSize(t, "width")
	a, okA := r.chamferAngle(t, w.Nominal)
	it.f.Width, it.f.Angle = w, a
	return okW && okA
}

// chamferAngle reads the angle to the axis, radians; short is the width, the
// shorter leg of ISO 2768-1.
func (r *reader) chamferAngle(t *source.Table, short float64) (Size, bool) {
	degrees := 45.0
	if t.Has("angle") {
		d, ok := r.degrees(t, "angle")
		if !ok {
			return Size{}, false
		}
		degrees = d
	}
	if degrees <= 0 || degrees >= 90 {
		r.fail(t, "angle", BadLength, "0 is along the axis, 90 is a face", "the angle of a chamfer lies between 0 and 90 degrees, both excluded")
		return Size{}, false
	}
	minutes := general(generalAngles, r.class, short)
	z := zone{-minutes / 60, minutes / 60, generalClasses[r.class], true, t.ValueSpan("angle")}
	if t.Has("angle_tolerance") {
		low, high, ok := r.pair(t, "angle_tolerance")
		if !ok {
			return Size{}, false
		}
		z = zone{low: low, high: high, span: t.ValueSpan("angle_tolerance")}
	}
	s := z.size(degrees)
	s.Nominal, s.Low, s.Aim, s.High = geom.Radians(s.Nominal), geom.Radians(max(s.Low, 0)), geom.Radians(s.Aim), geom.Radians(min(s.High, 90))
	if degrees+z.low >= 90 || degrees+z.high <= 0 || s.Aim <= 0 || s.Aim >= geom.Radians(90) {
		r.fail(t, "angle_tolerance", BadTolerance, "deviations in degrees: [-1, 1]", "the tolerance makes no chamfer of it")
		return Size{}, false
	}
	return s, true
}

// edgeSize reads a chamfer's width or a fillet's radius.
func (r *reader) edgeSize(t *source.Table, key string) (Size, bool) {
	x, ok := r.needed(t, key, "give the "+key)
	if !ok {
		return Size{}, false
	}
	z, ok := r.deviations(t, "tolerance", key, x, false, generalEdges)
	if !ok {
		return Size{}, false
	}
	s := z.size(x)
	s.Low = max(s.Low, 0) // a general tolerance may be wider than the edge
	if s.Aim <= 0 {
		r.fail(t, "tolerance", BadTolerance, "narrow it", "the tolerance leaves no %s", key)
		return Size{}, false
	}
	return s, r.aim(t, "aim", &s)
}
