package stock

import "math/bits"

// tops holds, over the chunks of a profile, the greatest r of every aligned run
// of 2, 4, 8 ... of them: most of what lies below a long edge is skipped
// unread. Tops are worked out when asked for; unknown ones are negative. One
// that is known has only known ones below it.
type tops [][]float64

const unknown = -1

// top returns the greatest r of the run of 2^l chunks that holds chunk i.
func (p *profile) top(l, i int) float64 {
	if l == 0 {
		return p.chunks[i].top
	}
	t := p.tops[l-1]
	n := i >> l
	if t[n] < 0 {
		half := n << l
		t[n] = p.top(l-1, half)
		if half += 1 << (l - 1); half < len(p.chunks) {
			t[n] = max(t[n], p.top(l-1, half))
		}
	}
	return t[n]
}

// past returns the first chunk after the run of 2^l that holds chunk i, and
// the size of run to try there: twice as large where one begins.
func past(l, i int) (int, int) {
	i = (i>>l + 1) << l
	return i, min(l+1, bits.TrailingZeros(uint(i)))
}

// stale forgets what stands over chunk i.
func (t tops) stale(i int) {
	for l := range t {
		i >>= 1
		if t[l][i] < 0 {
			return
		}
		t[l][i] = unknown
	}
}

// resize makes room for n chunks and forgets what stands over those from i on.
func (t *tops) resize(i, n int) {
	l := 0
	for ; n > 1; l++ {
		i, n = i>>1, (n+1)>>1
		if l == len(*t) {
			*t = append(*t, nil)
		}
		s := (*t)[l]
		s = append(s[:min(i, len(s))], make([]float64, n-min(i, len(s)))...)
		for k := i; k < n; k++ {
			s[k] = unknown
		}
		(*t)[l] = s
	}
	*t = (*t)[:l]
}
