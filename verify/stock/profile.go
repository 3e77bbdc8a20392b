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
	under hidden // cuts that metal above hides
}

// wall tells who made a step: an owner, or (below gone) an index into a table
// of walls made in several goes. Where the step stands and how high it is
// follows from the spans on both sides.
type wall int32

// course is one part of a wall, from where the one below ends up to top.
type course struct {
	top   float64
	owner int32
	next  wall // the course above
}

const (
	chunkFull  = 24 // a chunk longer than this is split
	chunkHalf  = 12
	chunkSmall = 4 // a shorter one joins its neighbour
)

// chunk is a run of spans. A cut changes the chunks in its z range and moves
// nothing else but the table of chunks.
type chunk struct {
	s   []span
	top float64 // greatest r of its spans
}

// profile is a boundary over the whole axis: spans ascending in z, in chunks.
// Beyond the ends of the stock the spans are gone.
type profile struct {
	chunks  []*chunk
	first   []float64 // z of each chunk's first span
	tops    tops
	courses []course
	hiding  []cutBelow
	kept    int // how many of hiding were in use when last counted
}

func newProfile(s []span) *profile {
	p := &profile{}
	p.insert(0, s)
	return p
}

func (p *profile) clone() *profile {
	q := &profile{first: slices.Clone(p.first), courses: slices.Clone(p.courses), hiding: slices.Clone(p.hiding), kept: p.kept}
	q.chunks = make([]*chunk, len(p.chunks))
	for i, c := range p.chunks {
		q.chunks[i] = &chunk{s: slices.Clone(c.s), top: c.top}
	}
	q.tops.resize(0, len(q.chunks))
	return q
}

// insert adds spans as chunks of half size before chunk i.
func (p *profile) insert(i int, s []span) {
	n := (len(s) + chunkHalf - 1) / chunkHalf
	p.chunks = slices.Insert(p.chunks, i, make([]*chunk, n)...)
	p.first = slices.Insert(p.first, i, make([]float64, n)...)
	for k := range n {
		part := s[k*len(s)/n : (k+1)*len(s)/n]
		c := &chunk{s: make([]span, len(part), chunkFull+8)}
		copy(c.s, part)
		p.chunks[i+k], p.first[i+k] = c, part[0].z
	}
	p.tops.resize(i, len(p.chunks))
	for k := range n {
		p.measure(i + k)
	}
}

// end returns where span k of chunk i ends.
func (p *profile) end(i, k int) float64 {
	if c := p.chunks[i]; k+1 < len(c.s) {
		return c.s[k+1].z
	}
	if i+1 < len(p.first) {
		return p.first[i+1]
	}
	return farAway
}

// find returns the chunk and span that hold z.
func (p *profile) find(z float64) (i, k int) {
	i = max(sort.Search(len(p.first), func(i int) bool { return p.first[i] > z })-1, 0)
	s := p.chunks[i].s
	k = max(sort.Search(len(s), func(k int) bool { return s[k].z > z })-1, 0)
	return i, k
}

// clears tells whether nothing over [a, b] is higher than r, by the tops
// alone, and how many it looked at.
func (p *profile) clears(a, b, r float64) (looked int, ok bool) {
	i := max(sort.SearchFloat64s(p.first, a)-1, 0)
	for l := 0; i < len(p.first) && p.first[i] <= b; {
		looked++
		switch {
		case p.top(l, i) <= r:
			i, l = past(l, i)
		case l > 0:
			l--
		default:
			return looked, false
		}
	}
	return looked, true
}

// forget takes back what a scan that is not committed has written.
func (p *profile) forget(k *scan) {
	p.courses, p.hiding = p.courses[:k.courses], p.hiding[:k.hiding]
}

// next and prev step over the spans; ok is false beyond the ends.
func (p *profile) next(i, k int) (int, int, bool) {
	if k+1 < len(p.chunks[i].s) {
		return i, k + 1, true
	}
	return i + 1, 0, i+1 < len(p.chunks)
}

func (p *profile) prev(i, k int) (int, int, bool) {
	if k > 0 {
		return i, k - 1, true
	}
	if i == 0 {
		return 0, 0, false
	}
	return i - 1, len(p.chunks[i-1].s) - 1, true
}

// measure sets a chunk's top.
func (p *profile) measure(i int) {
	c := p.chunks[i]
	c.top = 0
	for k := range c.s {
		s := &c.s[k]
		c.top = max(c.top, s.c.high(s.z, p.end(i, k)))
	}
	p.tops.stale(i)
}

// replace puts out in place of spans lo to hi of chunk i and keeps the chunks
// in size.
func (p *profile) replace(i, lo, hi int, out []span) {
	c := p.chunks[i]
	was := len(c.s)
	c.s = slices.Replace(c.s, lo, hi, out...)
	switch n := len(c.s); {
	case n > chunkFull:
		p.cutOut(i)
		p.insert(i, c.s)
		return
	case n < chunkSmall && n < was && i > 0 && len(p.chunks[i-1].s) <= chunkHalf:
		b := p.chunks[i-1]
		b.s = append(b.s, c.s...)
		p.cutOut(i)
		p.tops.resize(i, len(p.chunks))
		i--
	}
	p.measure(i)
}

// cutOut takes chunk i out of the table; the tops are the caller's to resize.
func (p *profile) cutOut(i int) {
	p.chunks = slices.Delete(p.chunks, i, i+1)
	p.first = slices.Delete(p.first, i, i+1)
}
