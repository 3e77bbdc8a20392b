package toolpath

import (
	"cmp"
	"errors"
	"math"
	"slices"

	"taperwright/profiles/geom"
)

// edge is a piece of a contour, or of the path of a nose centre beside it,
// and the feature it belongs to: an index into Part.Features, or one of the
// marks below 0.
type edge struct {
	geom.Piece
	owner int
}

const (
	lead  = -1 // before the first feature: cuts air
	tail  = -2 // past the last feature: cuts waste
	shade = -3 // what an insert leaves where its edges do not reach
)

// track is edges that follow one another from the front to the back, metal on
// the left, air on the right.
type track []edge

func (t track) chain() geom.Chain {
	c := make(geom.Chain, len(t))
	for i, e := range t {
		c[i] = e.Piece
	}
	return c
}

// kept is how much nearer than the radius the middle of a true piece of an
// offset may lie to the contour, mm. Rounding puts it off by 1e-11; a piece
// that is cut off by a loop runs nearer by at least its own turn at the
// crossing, save at crossings so flat that both ways are the path to within
// this much, a tenth of the first step of rounding.
const kept = 1e-8

var (
	errTorn    = errors.New("the offset of the contour does not hang together")
	errEndless = errors.New("the levels do not come to an end")
)

// offset returns the path of the centre of a nose of radius d that touches t
// from the air side (d below 0: from the metal side), exactly: lines and arcs beside those of t, arcs round its
// outside corners, cut at every crossing, with every loop removed wherever in
// t it comes from. The path starts and ends beside the ends of t.
//
// All pieces that could be part of the path are made and crossed with one
// another; then the path is walked: along a piece to the next crossing, and
// on where the way on keeps its distance from all of t. Contours here are
// functions over z (walls included), and so is the path, so that it visits
// the pieces in order and never turns back.
func (t track) offset(d float64) (track, error) {
	if d == 0 {
		return t, nil
	}
	raw := t.beside(d)
	d = math.Abs(d)
	if len(raw) == 0 {
		return nil, errTorn
	}
	stops := crossAll(raw)
	far := t.chain()
	clear := func(p geom.Piece) bool {
		if p.To.Sub(p.From).Len() <= geom.Near {
			return false
		}
		return !nearer(far, p.Middle(), d-kept)
	}

	// ahead is the run of piece i from a stop at place to the next one.
	ahead := func(i int, place float64, at geom.Point) edge {
		run := raw[i]
		run.From = at
		for _, s := range stops[i] {
			if s.place > place && s.at.Sub(at).Len() > geom.Near {
				run.To = s.at
				break
			}
		}
		return run
	}

	var out track
	last := len(raw) - 1
	i, run := 0, ahead(0, -1, raw[0].From)
	if !clear(run.Piece) {
		return nil, errTorn
	}
	for {
		out = append(out, run)
		at := run.To
		if i == last && at == raw[last].To {
			return join(out), nil
		}
		// Over to the first later piece that keeps its distance, else on along
		// i. Where both do, they meet so flatly that both are the path; the
		// later one leads on.
		place := raw[i].Progress(at)
		found := false
		for _, s := range stops[i] {
			if s.other > i && s.at.Sub(at).Len() <= geom.Near {
				next := ahead(s.other, raw[s.other].Progress(s.at), s.at)
				if clear(next.Piece) {
					i, run, found = s.other, next, true
					break
				}
			}
		}
		if !found {
			if run = ahead(i, place, at); !clear(run.Piece) {
				return nil, errTorn
			}
		}
	}
}

// beside returns, in order, the pieces at distance d on the air side: lines
// moved, arcs with another radius, and an arc round each outside corner. An
// inside arc smaller than d has no piece: its neighbours cross. Seen from the
// metal side inside is outside.
func (t track) beside(d float64) track {
	var raw track
	for i, e := range t {
		if i > 0 {
			a, b := airSide(t[i-1].EndDir()), airSide(e.StartDir())
			p, q := e.From.Along(a, d), e.From.Along(b, d)
			switch {
			case q.Sub(p).Len() <= geom.Near: // runs on: closed to the bit
				if n := len(raw) - 1; n >= 0 && raw[n].To.Sub(p).Len() <= geom.Near {
					raw[n].To = q
				}
			case (a.Cross(b) > 0) == (d > 0):
				owner, turn := t[i-1].owner, geom.CCW
				if owner < 0 {
					owner = e.owner
				}
				if d < 0 {
					turn = geom.CW
				}
				raw = append(raw, edge{geom.Arc(p, q, e.From, turn), owner})
			}
		}
		switch {
		case e.IsLine():
			n := airSide(e.StartDir())
			raw = append(raw, edge{geom.Line(e.From.Along(n, d), e.To.Along(n, d)), e.owner})
		default:
			r := e.Radius()
			s := r + float64(float64(e.Turn)*d)
			if s <= geom.Near {
				continue
			}
			grow := func(q geom.Point) geom.Point { return e.Center.Along(q.Sub(e.Center).Unit(), s) }
			raw = append(raw, edge{geom.Arc(grow(e.From), grow(e.To), e.Center, e.Turn), e.owner})
		}
	}
	return raw
}

// airSide returns the unit normal on the right of a direction.
func airSide(d geom.Point) geom.Point { return geom.Point{Z: d.R, R: -d.Z} }

// stop is a crossing on a piece: its place along it and the other piece.
type stop struct {
	place float64
	at    geom.Point
	other int
}

// crossAll crosses every two pieces and returns the stops of each in order
// along it. Both pieces get the same point, to the bit.
func crossAll(raw track) [][]stop {
	stops := make([][]stop, len(raw))
	type box struct{ lo, hi geom.Point }
	boxes := make([]box, len(raw))
	for i, e := range raw {
		lo, hi := e.Bounds()
		boxes[i] = box{geom.Point{Z: lo.Z - geom.Near, R: lo.R - geom.Near}, geom.Point{Z: hi.Z + geom.Near, R: hi.R + geom.Near}}
	}
	var pts [4]geom.Point
	for i := range raw {
		for j := i + 1; j < len(raw); j++ {
			a, b := boxes[i], boxes[j]
			if a.hi.Z < b.lo.Z || b.hi.Z < a.lo.Z || a.hi.R < b.lo.R || b.hi.R < a.lo.R {
				continue
			}
			for _, q := range pts[:geom.Cross(raw[i].Piece, raw[j].Piece, &pts)] {
				stops[i] = append(stops[i], stop{raw[i].Progress(q), q, j})
				stops[j] = append(stops[j], stop{raw[j].Progress(q), q, i})
			}
		}
	}
	for _, list := range stops {
		slices.SortStableFunc(list, func(a, b stop) int {
			return cmp.Or(cmp.Compare(a.place, b.place), cmp.Compare(a.other, b.other))
		})
	}
	return stops
}

// nearer tells whether any piece of c comes nearer to q than d.
func nearer(c geom.Chain, q geom.Point, d float64) bool {
	for _, p := range c {
		// a box test first: most pieces are far away
		if p.IsLine() {
			if q.Z+d < min(p.From.Z, p.To.Z) || q.Z-d > max(p.From.Z, p.To.Z) ||
				q.R+d < min(p.From.R, p.To.R) || q.R-d > max(p.From.R, p.To.R) {
				continue
			}
		}
		if p.Distance(q) < d {
			return true
		}
	}
	return false
}

// join makes one edge of neighbours that were cut apart at stops the path
// ran straight through, and closes the joints to the bit.
func join(t track) track {
	var out track
	for _, e := range t {
		if n := len(out) - 1; n >= 0 {
			last := &out[n]
			e.From = last.To
			if last.owner == e.owner && last.Turn == e.Turn && last.Center == e.Center &&
				(!e.IsLine() || last.EndDir().Sub(e.StartDir()).Len() <= geom.Near) {
				last.To = e.To
				continue
			}
		}
		out = append(out, e)
	}
	return out
}
