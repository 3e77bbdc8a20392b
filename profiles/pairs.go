package profiles

import (
	"strconv"

	"taperwright/profiles/geom"
)

// meets says why one feature cannot follow another; "" when it can. Rows: the
// one before, the front face being a shoulder; columns: the one behind.
// Any may be the last. Chamfers and fillets are not in it: they stand between
// any two that meet in a corner, never beside one another.
var meets = map[Kind]map[Kind]string{
	Journal:  {Journal: "", Taper: "", Shoulder: ""},
	Taper:    {Journal: "", Taper: "", Shoulder: ""},
	Shoulder: {Journal: "", Taper: "", Shoulder: "two faces stand at one place"},
}

// mains returns the features that carry the contour, the front face first,
// and for each corner between two of them the feature that treats it. The
// last corner is that with the back face. What cannot stand where it stands
// is found, and left out.
func (r *reader) mains(list []*item) (mains, treats []*item) {
	face := &item{f: Feature{Name: FrontFace, Kind: Shoulder}, dir: geom.Point{R: 1}}
	mains, treats = []*item{face}, []*item{nil}
	for _, it := range list {
		last := len(mains) - 1
		switch {
		case !it.kind.main && treats[last] != nil:
			r.failAt(it.table.Span(), BadNeighbours, "one corner takes one of them: put the feature between them that they are on", "%s follows %s", it.f.Name, treats[last].f.Name)
		case !it.kind.main:
			treats[last] = it
		default:
			why, known := meets[mains[last].f.Kind][it.f.Kind]
			if !known && !mains[last].bad && !it.bad {
				why = "nothing is known of how they meet"
			}
			if why != "" {
				r.failAt(it.table.Span(), BadNeighbours, "put the journal or taper between them", "%s follows %s: %s", it.f.Name, mains[last].f.Name, why)
				continue
			}
			mains, treats = append(mains, it), append(treats, nil)
		}
	}
	last := mains[len(mains)-1]
	switch t := treats[len(mains)-1]; {
	case len(mains) == 1:
		r.missing(r.root, "outside", NoFeatures, "list the part from front to back: [[outside]] with kind = \"journal\", \"taper\" or \"shoulder\"", "the part has no outside feature")
	case t != nil && last.f.Kind == Shoulder && len(mains) > 1:
		r.failAt(t.table.Span(), BadNeighbours, "end the list with the journal or taper behind the shoulder", "%s stands behind the last shoulder, where there is no edge", t.f.Name)
	}
	return mains, treats
}

// FrontFace is the name of the row of the front face.
const FrontFace = "front face"

// names sees that every row has a name of its own.
func (r *reader) names() {
	first := map[string]int{}
	for i, f := range r.part.Features {
		j, twice := first[f.Name]
		if !twice {
			first[f.Name] = i
			continue
		}
		at := f.Span
		if other := r.part.Features[j].Span; !at.Valid() || other.Valid() && other.Start > at.Start {
			at = other
		}
		r.failAt(at, DuplicateName, "names are unique; unnamed features are called by kind and number", "two features are called %s", strconv.Quote(f.Name))
	}
}

// find returns the index of the row of a name, or -1.
func (p *Part) find(name string) int {
	for i, f := range p.Features {
		if f.Name == name {
			return i
		}
	}
	return -1
}
