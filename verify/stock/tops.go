package stock

import (
	"math/bits"
	"slices"
)

// tops holds how high the chunks of a profile reach, tops[0], and every aligned
// run of 2, 4, 8 ... of them, tops[1] and on: most of what lies below a long
// edge is passed over unread. The runs are worked out when asked for; unknown
// ones are negative. One that is known has only known ones below it.
type tops [][]float64

const unknown = -1

// of returns how high the run of 2^l chunks reaches that holds chunk i.
func (t tops) of(l, i int) float64 {
	n := i >> l
	if t[l][n] < 0 {
		below := n * 2
		r := t.of(l-1, below<<(l-1))
		if below+1 < len(t[l-1]) {
			r = max(r, t.of(l-1, (below+1)<<(l-1)))
		}
		t[l][n] = r
	}
	return t[l][n]
}

// past returns the first chunk after the run of 2^l that holds chunk i, and
// the size of run to try there: twice as large where one begins.
func past(l, i int) (int, int) {
	i = (i>>l + 1) << l
	return i, min(l+1, bits.TrailingZeros(uint(i)))
}

// set says how high chunk i reaches.
func (t tops) set(i int, r float64) {
	if t[0][i] == r {
		return
	}
	t[0][i] = r
	for l := 1; l < len(t); l++ {
		i >>= 1
		if t[l][i] < 0 {
			return
		}
		t[l][i] = unknown
	}
}

// insert makes room for n chunks before chunk i; they must be set.
func (t *tops) insert(i, n int) {
	if len(*t) == 0 {
		*t = append(*t, nil)
	}
	(*t)[0] = slices.Insert((*t)[0], i, make([]float64, n)...)
	t.forget(i)
}

func (t *tops) remove(i, j int) {
	(*t)[0] = slices.Delete((*t)[0], i, j)
	t.forget(i)
}

// forget fits the runs to the chunks and forgets those from chunk i on.
func (t *tops) forget(i int) {
	l, n := 1, len((*t)[0])
	for ; n > 1; l++ {
		i, n = i>>1, (n+1)>>1
		if l == len(*t) {
			*t = append(*t, nil)
		}
		s := (*t)[l]
		s = s[:min(i, len(s))]
		s = slices.Grow(s, n-len(s))[:n]
		for k := i; k < n; k++ {
			s[k] = unknown
		}
		(*t)[l] = s
	}
	*t = (*t)[:l]
}

func (t tops) clone() tops {
	u := make(tops, len(t))
	for l := range t {
		u[l] = slices.Clone(t[l])
	}
	return u
}
