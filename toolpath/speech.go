package toolpath

import (
	"taperwright/profiles/geom"
	"taperwright/profiles/shop"
)

// say adds what the header tells: assumptions, forecasts, cautions.
func (j *job) say(fin *shop.Tool) {
	p := j.plan
	note := func(s string) { p.Notes = append(p.Notes, s) }
	note("path of the programmed point, nose radius worked in: no G41 G42, and another nose radius makes another part")
	note("skin before finishing, normal to the contour: " + j.mm(p.Skin.Least) + " to " + j.mm(p.Skin.Most) +
		" (after roughing " + j.mm(p.Rough.Least) + " to " + j.mm(p.Rough.Most) + ")")
	f := fin.FeedRate.Value
	note("roughness forecast f2/(8R): " + geom.Fixed(1000*f*f/(8*fin.Nose), 1) + " um (R " + j.mm(fin.Nose) + ", feed " + j.mm(f) + "/rev)")
	for _, op := range p.Operations {
		if op.Surface {
			note(op.Purpose + ": at most " + geom.Fixed(op.PeakRPM, 0) + " rev/min, capped at " + geom.Fixed(op.Cap, 0))
		}
		// common practice: feed at most half the nose radius in roughing, a third in finishing
		most, share := op.Tool.Nose/2, "half"
		if op.Purpose == "finish" || op.Purpose == "semi-finish" {
			most, share = op.Tool.Nose/3, "a third of"
		}
		if op.Tool.FeedRate.Value > most+1e-9 {
			j.into.Note(op.Tool.Span, CodeFeedOverNose, "a feed of "+j.mm(most)+"/rev or less would do",
				"%s: a feed of %s/rev for a %s cut is more than %s the nose radius, %s", op.Tool.Name, j.mm(op.Tool.FeedRate.Value), op.Purpose, share, j.mm(op.Tool.Nose))
		}
	}
	if fin.MinorFree {
		note("minor edge of " + fin.Name + " not given: its clearance is not judged")
	}
	if !j.facing(contour{}) {
		note("front face not cut: the stock begins at it")
	}
	s := j.part.Setups[j.setup]
	if s.Hold.Support != "" {
		p.Cautions = append(p.Cautions, "held with a "+s.Hold.Support+": the path is not checked against it; keep the lead-in clear of it")
	}
	p.Cautions = append(p.Cautions,
		"chuck and jaws are not checked against the path: check the grip and the lowest z by hand",
		"this plan is arithmetic, not permission: the person at the machine decides")
}
