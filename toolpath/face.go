package toolpath

import (
	"math"

	"taperwright/profiles/geom"
	"taperwright/profiles/shop"
)

// faceRough cuts the front metal down to the skin, in passes from outside
// in, and returns where metal begins in front afterwards.
func (j *job) faceRough(rougher, fin *shop.Tool, c contour, skin float64) (front float64, ok bool) {
	front = max(j.part.Stock.Front, 0)
	if !j.facing(c) {
		return front, true
	}
	thick := front - skin
	least := or(rougher.LeastDepth, defaultLeast)
	if geom.Count(thick, 6) < geom.Count(least, 6) {
		return front, true // the finishing pass takes it whole
	}
	t := rougher
	if reachOf(t).rise < math.Pi/2-steepBy {
		t = fin // its main edge stands at 90 degrees or more, or fits would have refused it
	}
	if !j.ready(t, true) {
		return front, false
	}
	n := math.Ceil(thick/t.Depth.Value - 1e-9)
	if n > maxLevels {
		j.refuse(t.Span, CodeToolData, "give a greater depth", "%s: a depth of %s would take more than %d passes", t.Name, j.mm(t.Depth.Value), maxLevels)
		return front, false
	}
	r := j.operation(t, "face")
	for k := 1.0; k <= n; k++ {
		z := front - float64(k*(thick/n))
		if k == n {
			z = skin
		}
		r.pass("face, z " + j.mm(z+j.zero))
		j.facePass(r, z, r.safeR, t.Nose, lead)
	}
	j.done(r)
	return skin, true
}

// facePass cuts a face at z from the nose centre's radius outer in to the
// axis: the programmed point then stands at X = -2R (as a diameter), the
// lowest place of the nose at the axis's height has passed it, and no pip is
// left. A bored piece is faced to just inside its bore.
func (j *job) facePass(r *rider, z, outer, nose float64, owner int) {
	start := geom.Point{Z: z + nose, R: outer}
	r.over(geom.Point{Z: start.Z + clearance, R: outer})
	r.cut(start, lead)
	inner := 0.0
	if b := j.part.Stock.Bore; b > pastEnd {
		inner = b - pastEnd
	}
	r.cut(geom.Point{Z: start.Z, R: inner}, owner)
	r.cut(geom.Point{Z: start.Z + retract, R: inner}, lead)
}

// faceFinish cuts the front face with the finishing tool, or the skin before
// a round end. Whatever stands beyond the first flank and its skin has been
// roughed away, so the pass begins just outside it.
func (j *job) faceFinish(r *rider, t *shop.Tool, c contour, skin float64) {
	r.pass("front face")
	z, outer, owner := c.sides[0].From.Z, c.sides[0].From.R, lead
	if c.face != nil {
		z, outer, owner = c.face.From.Z, c.face.To.R, c.face.owner
	}
	j.facePass(r, z, min(r.safeR, outer+skin+j.part.Stock.Oversize+clearance+t.Nose), t.Nose, owner)
}
