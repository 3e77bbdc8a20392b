package profiles

import (
	"taperwright/profiles/geom"
	"taperwright/profiles/source"
)

var journalKind = kind{
	name: Journal, main: true,
	keys: append([]source.Key{
		{Name: "diameter", Type: "length", Help: "nominal diameter"},
		{Name: "tolerance", Type: "text, number or [low, high]", Help: `of the diameter: an ISO 286 class such as "k6", a plain number for both ways, or deviations; else the general class`},
		{Name: "aim", Type: "length", Help: "diameter to cut to; else the middle of the tolerance"},
	}, ends...),
	read: readJournal,
}

func readJournal(r *reader, t *source.Table, it *item) bool {
	d, ok := r.diameter(t, "diameter")
	if !r.sections(t, it, 0) || !ok {
		return false
	}
	it.f.Radius = d
	it.front, it.back, it.play = d.Nominal, d.Nominal, r.play()/2
	it.at, it.dir = geom.Point{Z: it.f.ZFrom.Aim, R: d.Aim}, geom.Point{Z: -1}
	return true
}
