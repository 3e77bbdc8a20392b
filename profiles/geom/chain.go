package geom

import "strings"

// Reverse returns the chain run the other way.
func (c Chain) Reverse() Chain {
	out := make(Chain, len(c))
	for i, p := range c {
		out[len(c)-1-i] = p.Reverse()
	}
	return out
}

// Shift returns the chain moved by d.
func (c Chain) Shift(d Point) Chain {
	out := make(Chain, len(c))
	for i, p := range c {
		out[i] = p.Shift(d)
	}
	return out
}

// Bounds returns the corners of the smallest box round the chain; zero Points
// for an empty one.
func (c Chain) Bounds() (lo, hi Point) {
	for i, p := range c {
		a, b := p.Bounds()
		if i == 0 {
			lo, hi = a, b
			continue
		}
		lo = Point{min(lo.Z, a.Z), min(lo.R, a.R)}
		hi = Point{max(hi.Z, b.Z), max(hi.R, b.R)}
	}
	return lo, hi
}

// Length returns the sum of the lengths, mm.
func (c Chain) Length() float64 {
	var l float64
	for _, p := range c {
		l += p.Length()
	}
	return l
}

// Gap returns the largest distance between an end and the next start, mm.
func (c Chain) Gap() float64 {
	var gap float64
	for i := 1; i < len(c); i++ {
		gap = max(gap, c[i].From.Sub(c[i-1].To).Len())
	}
	return gap
}

// Distance returns how far q lies from the nearest piece, mm; of an empty
// chain, +Inf.
func (c Chain) Distance(q Point) float64 {
	d := infinity
	for _, p := range c {
		d = min(d, p.Distance(q))
	}
	return d
}

// String gives one piece a line, for a test to read.
func (c Chain) String() string {
	var b strings.Builder
	for _, p := range c {
		b.WriteString(p.String())
		b.WriteByte('\n')
	}
	return b.String()
}
