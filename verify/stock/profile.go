package stock

import (
	"slices"
	"sort"
)

// sliver is the least width along z that a piece may have, mm. Two steps
// nearer than this are one step: by design many cuts end at one z, and reach
// it by different sums. A printed place is rounded to 0.0001 mm; a sliver
// moves it by less than a thousandth of a hundredth of that.
const sliver = 1e-9

// farAway bounds the axis on both sides, mm: no bar and no slide is 1000 km long.
const farAway = 1e9

// gone is the owner of a piece where no metal is left.
const gone = -2

// span is one piece of a boundary: it reaches to where the next one begins.
type span struct {
	z     float64 // where it begins
	c     curve
	owner int32
	wall  wall   // of the step where it begins
	under hidden // cuts that the metal hides
}

const (
	chunkFull  = 16 // a longer chunk is split
	chunkHalf  = 8
	chunkSmall = 3 // a shorter one joins its neighbour
)

// chunk is a run of spans.
type chunk struct{ s []span }

// profile is a boundary over the whole axis: spans ascending in z, in chunks.
// A cut changes the chunks in its z range and moves nothing else but the tables
// of chunks. Beyond the ends of the stock, and wherever no metal is left, spans
// are gone.
type profile struct {
	chunks  []*chunk
	first   []float64 // z of each chunk's first span
	tops    tops      // how high each chunk reaches
	courses []course
	hiding  []cutBelow
	crowded int // length of hiding that calls for tidying up
}

// place is span k of chunk i.
type place struct{ i, k int }

func newProfile(s []span) *profile {
	p := &profile{crowded: 1 << 12}
	p.insert(0, s)
	return p
}

func (p *profile) clone() *profile {
	q := *p
	q.first, q.tops = slices.Clone(p.first), p.tops.clone()
	q.courses, q.hiding = slices.Clone(p.courses), slices.Clone(p.hiding)
	q.chunks = make([]*chunk, len(p.chunks))
	for i, c := range p.chunks {
		q.chunks[i] = &chunk{slices.Clone(c.s)}
	}
	return &q
}

// insert adds spans as chunks of half size before chunk i.
func (p *profile) insert(i int, s []span) {
	n := (len(s) + chunkHalf - 1) / chunkHalf
	p.chunks = slices.Insert(p.chunks, i, make([]*chunk, n)...)
	p.first = slices.Insert(p.first, i, make([]float64, n)...)
	p.tops.insert(i, n)
	for k := range n {
		part := s[k*len(s)/n : (k+1)*len(s)/n]
		p.chunks[i+k] = &chunk{append(make([]span, 0, chunkFull+chunkSmall), part...)}
		p.first[i+k] = part[0].z
	}
	for k := range n {
		p.measure(i + k)
	}
}

// remove drops the chunks from i to j.
func (p *profile) remove(i, j int) {
	if i < j {
		p.chunks = slices.Delete(p.chunks, i, j)
		p.first = slices.Delete(p.first, i, j)
		p.tops.remove(i, j)
	}
}

// measure works out how high chunk i reaches.
func (p *profile) measure(i int) {
	s := p.chunks[i].s
	r := 0.0
	for k := range s {
		r = max(r, s[k].c.high(s[k].z, p.end(place{i, k})))
	}
	p.tops.set(i, r)
}

func (p *profile) at(q place) *span { return &p.chunks[q.i].s[q.k] }

// end returns where a span ends.
func (p *profile) end(q place) float64 {
	if s := p.chunks[q.i].s; q.k+1 < len(s) {
		return s[q.k+1].z
	}
	return p.chunkEnd(q.i)
}

func (p *profile) chunkEnd(i int) float64 {
	if i+1 < len(p.first) {
		return p.first[i+1]
	}
	return farAway
}

// find returns the span that holds z.
func (p *profile) find(z float64) place {
	i := max(sort.Search(len(p.first), func(i int) bool { return p.first[i] > z })-1, 0)
	s := p.chunks[i].s
	return place{i, max(sort.Search(len(s), func(k int) bool { return s[k].z > z })-1, 0)}
}

// clears tells whether nothing over [a, b] is higher than r, by the tops of
// the chunks alone.
func (p *profile) clears(a, b, r float64) bool {
	i := max(sort.SearchFloat64s(p.first, a)-1, 0)
	for l := 0; i < len(p.first) && p.first[i] <= b; {
		switch {
		case p.tops.of(l, i) <= r:
			i, l = past(l, i)
		case l > 0:
			l--
		default:
			return false
		}
	}
	return true
}

// next and prev step over the spans; ok is false beyond the ends.
func (p *profile) next(q place) (place, bool) {
	if q.k+1 < len(p.chunks[q.i].s) {
		return place{q.i, q.k + 1}, true
	}
	return place{q.i + 1, 0}, q.i+1 < len(p.chunks)
}

func (p *profile) prev(q place) (place, bool) {
	if q.k > 0 {
		return place{q.i, q.k - 1}, true
	}
	if q.i == 0 {
		return q, false
	}
	return place{q.i - 1, len(p.chunks[q.i-1].s) - 1}, true
}

// replace puts out in place of the spans from a up to b, b not included. more
// tells that chunk a.i is not finished: another edit ends in it.
func (p *profile) replace(a, b place, out []span, more bool) {
	c := p.chunks[a.i]
	if a.i == b.i {
		c.s = slices.Replace(c.s, a.k, b.k, out...)
	} else {
		c.s = append(c.s[:a.k], out...)
		d := p.chunks[b.i]
		if rest := d.s[b.k:]; len(rest) < chunkSmall {
			c.s = append(c.s, rest...)
			p.remove(a.i+1, b.i+1)
		} else {
			p.first[b.i] = rest[0].z
			d.s = slices.Delete(d.s, 0, b.k)
			p.fit(b.i)
			p.remove(a.i+1, b.i)
		}
	}
	if more {
		return
	}
	if len(c.s) == 0 { // the span before reaches over all of it
		p.remove(a.i, a.i+1)
	} else {
		p.first[a.i] = c.s[0].z
		p.fit(a.i)
		p.join(a.i)
	}
	if a.k == 0 && a.i > 0 {
		p.measure(a.i - 1) // its last span may reach farther now
	}
}

// fit splits a chunk that has grown too long, or measures it.
func (p *profile) fit(i int) {
	if s := p.chunks[i].s; len(s) > chunkFull {
		p.remove(i, i+1)
		p.insert(i, s)
	} else {
		p.measure(i)
	}
}

// join adds a small chunk to the one before it.
func (p *profile) join(i int) {
	if i == 0 || len(p.chunks[i].s) >= chunkSmall || len(p.chunks[i-1].s) > chunkHalf {
		return
	}
	b := p.chunks[i-1]
	b.s = append(b.s, p.chunks[i].s...)
	p.remove(i, i+1)
	p.measure(i - 1)
}
