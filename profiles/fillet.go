package profiles

import (
	"taperwright/profiles/source"
)

var filletKind = kind{
	name: Fillet,
	keys: []source.Key{
		{Name: "radius", Type: "length", Help: "of the arc tangent to both neighbours, in an inside corner or on an outside edge"},
		{Name: "tolerance", Type: "number or [low, high]", Help: "of the radius; else the general class"},
		{Name: "aim", Type: "length", Help: "radius to cut to; else the middle of the tolerance"},
	},
	read: readFillet,
}

func readFillet(r *reader, t *source.Table, it *item) bool {
	s, ok := r.edgeSize(t, "radius")
	it.f.Fillet = s
	return ok
}
