package profiles

import (
	"taperwright/profiles/geom"
	"taperwright/profiles/source"
)

var shoulderKind = kind{
	name: Shoulder, main: true,
	keys: []source.Key{
		{Name: "diameter", Type: "length", Help: "diameter that the face reaches, from where the last feature ends"},
	},
	read: readShoulder,
}

// readShoulder reads a face square to the axis. It stands where the feature
// before ends; how far it is from there is that feature's tolerance.
func readShoulder(r *reader, t *source.Table, it *item) bool {
	d, ok := r.needed(t, "diameter", "give the diameter that the face reaches")
	if !ok {
		return false
	}
	it.f.Z = r.at
	it.back, it.play = d/2, r.play()/2
	it.at = geom.Point{Z: r.at.Aim}
	return true
}
