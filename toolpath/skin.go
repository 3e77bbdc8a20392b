package toolpath

import (
	"math"

	"taperwright/profiles/geom"
)

// swept is where a nose has been: the lowest places of its centre.
type swept struct {
	path geom.Chain
	nose float64
}

// skinUnder returns the least and most metal, normal to the contour, that a
// nose of radius r meets along path. What a nose at f digs out reaches from f
// by r; where another nose has been, metal ends at its own radius from the
// nearest place of its centre; the raw cylinder and front face end it too.
func (j *job) skinUnder(path track, r, frontMetal float64, been []swept) Skin {
	s := Skin{Least: math.Inf(1)}
	for _, e := range path {
		if e.owner < 0 {
			continue
		}
		for _, f := range [...]geom.Point{e.From, e.Middle(), e.To} {
			n := airSide(e.DirAt(f))
			w := f.Along(n, -r)
			m := math.Inf(1)
			if n.R > 1e-9 {
				m = min(m, (j.part.Stock.Radius-w.R)/n.R)
			}
			if n.Z > 1e-9 {
				m = min(m, (frontMetal-w.Z)/n.Z)
			}
			for _, b := range been {
				m = min(m, b.path.Distance(f)-b.nose+r)
			}
			s.Least, s.Most = min(s.Least, m), max(s.Most, m)
		}
	}
	s.Least = max(s.Least, 0)
	if math.IsInf(s.Least, 1) {
		s.Least = 0
	}
	return s
}
