package stock

import (
	"encoding/binary"
	"math"
	"slices"
	"testing"

	"github.com/stretchr/testify/require"

	"taperwright/profiles/geom"
)

// movesOf reads moves from bytes: tool and kind, then places in hundredths and
// a shift as small as rounding. 12 bytes a move.
func movesOf(data []byte) []move {
	tools := allTools()
	var ms []move
	at := pt(5, 25)
	for len(data) >= 12 && len(ms) < 30 {
		tool, kind := tools[int(data[0])%len(tools)], data[1]
		n := func(i int) float64 { return float64(int16(binary.LittleEndian.Uint16(data[i:]))) / 100 }
		to := pt(math.Mod(n(2), 70)-25, math.Abs(math.Mod(n(4), 30))-2)
		centre := at.Add(pt(math.Mod(n(6), 15), math.Mod(n(8), 15)))
		tiny := math.Pow(10, -float64(data[10]%13)) * float64(int8(data[11])%3) / 10
		to.Z += tiny
		path := geom.Line(at, to)
		switch kind % 5 {
		case 1:
			path.To.R = at.R
		case 2:
			path.To.Z = at.Z
		case 3, 4:
			// round centre, to where the ray toward the end meets the circle
			r := at.Sub(centre).Len()
			if d := to.Sub(centre); r > 1e-3 && d.Len() > 1e-3 {
				end := centre.Along(d.Unit(), r)
				if end.Sub(at).Len() > 1e-6 {
					path = geom.Arc(at, end, centre, geom.Turn(1-2*int(kind%2)))
				}
			}
		}
		ms = append(ms, move{outlineOf(tool), path})
		at = path.To
		data = data[12:]
	}
	return ms
}

// Whatever the moves: the books balance, nothing is ever added, the order does
// not matter, and the same again cuts nothing.
func FuzzCut(f *testing.F) {
	f.Add([]byte("a line, then "))
	f.Add([]byte("\x00\x00\x10\x00\x80\x07\x00\x00\x00\x00\x00\x00\x00\x01\x00\xf8\x80\x07\x00\x00\x00\x00\x00\x00\x01\x03\x00\xf8\x80\x07\x10\x01\x10\x02\x0c\x01"))
	for i := range uint64(8) {
		r := seeded(f, i)
		b := make([]byte, 12*12)
		for j := range b {
			b[j] = byte(r.Uint32())
		}
		f.Add(b)
	}
	f.Fuzz(func(t *testing.T, data []byte) {
		ms := movesOf(data)
		s := New(bar(20, 60, 1), nil, Hold{})
		left := s.Area()
		var was []float64
		stations := []float64{-58.73, -41.1, -30.017, -20.5, -12.34, -7.77, -3.3, -1.05, 0.02, 0.73}
		for i, m := range ms {
			r := s.Cut(m.o, m.path, i)
			loose := 0.0
			for _, l := range r.Loose {
				loose += l.Area
			}
			require.False(t, math.IsNaN(r.Depth) || math.IsNaN(r.Body) || r.Depth < 0 || r.Body < 0)
			near(t, left, s.Area()+r.Area+loose, 1e-9)
			left = s.Area()
			sound(t, s)
			var now []float64
			for k, z := range stations {
				now = append(now, radiusAt(s, z))
				require.True(t, was == nil || now[k] <= was[k]+1e-9)
			}
			was = now
			again := s.Cut(m.o, m.path, 1000)
			require.LessOrEqual(t, again.Area, 1e-8)
		}
		back := New(bar(20, 60, 1), nil, Hold{})
		slices.Reverse(ms)
		cutAll(back, ms)
		near(t, s.Area(), back.Area(), 1e-6)
	})
}
