package main

import (
	"math"
	"regexp"
	"strconv"
	"strings"

	"taperwright/profiles/shop"
)

// The sampler is a second proof, in test files only. It shares no line with
// verify: its own reader of G0 to G3, and instead of exact boundaries the
// height of the metal at stations every few hundredths of a millimetre. At
// each station the lowest point that the insert reaches during a move is
// searched for numerically along the path, so its formulation is another one:
// a minimum over positions of the tool, not a swept boundary.

// sampleMove is one movement of the programmed point, mm, radius.
type sampleMove struct {
	fromZ, fromR, toZ, toR float64
	centreZ, centreR       float64
	turn                   int // 0 line, +1 counterclockwise with Z right and R up, -1 clockwise
	rapid                  bool
	tool                   *shop.Tool
	line                   int // from 1
}

var sampleWord = regexp.MustCompile(`([A-Z])([-+]?[0-9]*\.?[0-9]*)`)

// sampleRead reads plain G0 to G3 programs, absolute or U and W. Everything
// else is passed over: it is a reader for programs that are known to be plain.
func sampleRead(program string, s *shop.Shop) []sampleMove {
	perMM, diameter := s.Machine.Unit.Value.PerMM(), s.Machine.XIsDiameter.Value
	var moves []sampleMove
	z, r, g := math.NaN(), math.NaN(), 0
	var tool *shop.Tool
	comment := regexp.MustCompile(`\([^)]*\)|;.*`)
	for n, text := range strings.Split(program, "\n") {
		text = strings.ToUpper(strings.ReplaceAll(comment.ReplaceAllString(text, ""), " ", ""))
		has, val := map[string]bool{}, map[string]float64{}
		other := false
		for _, w := range sampleWord.FindAllStringSubmatch(text, -1) {
			v, err := strconv.ParseFloat(w[2], 64)
			if err != nil {
				continue
			}
			switch {
			case w[1] == "G" && v >= 0 && v <= 3:
				g = int(v)
			case w[1] == "G" && v == 20:
				perMM = 25.4
			case w[1] == "G" && v == 21:
				perMM = 1
			case w[1] == "G" && (v == 4 || v == 28 || v == 50 || v == 92 || v == 53):
				other = true
			case w[1] == "T":
				tool = nil
				for i := range s.Tools {
					if s.Tools[i].Station == int(v)/100 && s.Tools[i].Offset == int(v)%100 {
						tool = &s.Tools[i]
					}
				}
			default:
				has[w[1]], val[w[1]] = true, v*perMM
			}
		}
		if other || !has["X"] && !has["Z"] && !has["U"] && !has["W"] {
			continue
		}
		half := 1.0
		if diameter {
			half = 0.5
		}
		m := sampleMove{fromZ: z, fromR: r, toZ: z, toR: r, rapid: g == 0, tool: tool, line: n + 1}
		if has["X"] {
			m.toR = val["X"] * half
		}
		if has["U"] {
			m.toR = r + val["U"]*half
		}
		if has["Z"] {
			m.toZ = val["Z"]
		}
		if has["W"] {
			m.toZ = z + val["W"]
		}
		if g >= 2 {
			m.turn = 2*g - 5
			if has["R"] {
				m.centreZ, m.centreR = sampleCentre(m, val["R"])
			} else {
				m.centreZ, m.centreR = z+val["K"], r+val["I"]
			}
		}
		z, r = m.toZ, m.toR
		moves = append(moves, m)
	}
	return moves
}

// sampleCentre returns the centre of an arc of radius R of at most 180
// degrees: on the left of the chord for a counterclockwise one.
func sampleCentre(m sampleMove, radius float64) (z, r float64) {
	dz, dr := m.toZ-m.fromZ, m.toR-m.fromR
	chord := math.Hypot(dz, dr)
	h := math.Sqrt(math.Max(radius*radius-chord*chord/4, 0)) * float64(m.turn)
	return (m.fromZ+m.toZ)/2 - h*dr/chord, (m.fromR+m.toR)/2 + h*dz/chord
}

// at returns the programmed point at share t of the move.
func (m sampleMove) at(t float64) (z, r float64) {
	if m.turn == 0 {
		return m.fromZ + t*(m.toZ-m.fromZ), m.fromR + t*(m.toR-m.fromR)
	}
	a := math.Atan2(m.fromR-m.centreR, m.fromZ-m.centreZ)
	sweep := m.sweep()
	radius := math.Hypot(m.fromR-m.centreR, m.fromZ-m.centreZ)
	end := math.Hypot(m.toR-m.centreR, m.toZ-m.centreZ)
	radius += t * (end - radius)
	return m.centreZ + radius*math.Cos(a+t*sweep), m.centreR + radius*math.Sin(a+t*sweep)
}

// sweep returns the signed angle of an arc.
func (m sampleMove) sweep() float64 {
	a := math.Atan2(m.fromR-m.centreR, m.fromZ-m.centreZ)
	b := math.Atan2(m.toR-m.centreR, m.toZ-m.centreZ)
	s := b - a
	if m.turn > 0 && s <= 0 {
		s += 2 * math.Pi
	}
	if m.turn < 0 && s >= 0 {
		s -= 2 * math.Pi
	}
	return s
}

// sampleTool is an insert as the sampler knows it: corners and nose about the
// nose centre.
type sampleTool struct {
	nose           float64
	shiftZ, shiftR float64 // nose centre minus programmed point
	edges          [][4]float64
	round          bool
}

func newSampleTool(t *shop.Tool) sampleTool {
	s := sampleTool{nose: t.Nose, shiftZ: -t.Nose * float64(t.TipZ), shiftR: -t.Nose * float64(t.TipX), round: t.Round}
	if t.Round {
		return s
	}
	k, e := t.CuttingAngle.Value, t.Included.Value
	minor := math.Pi - k - e
	d1z, d1r := -math.Cos(k), math.Sin(k)
	d2z, d2r := math.Cos(minor), math.Sin(minor)
	// sharp corner: on both edge lines, each a nose radius from the centre
	n1z, n1r, n2z, n2r := -math.Sin(k), -math.Cos(k), math.Sin(minor), -math.Cos(minor)
	det := n1z*n2r - n1r*n2z
	cz, cr := s.nose*(n2r-n1r)/det, s.nose*(n1z-n2z)/det
	a, b := t.MainReach.Value, t.MinorReach.Value
	m1z, m1r := cz+a*d1z, cr+a*d1r
	m2z, m2r := cz+b*d2z, cr+b*d2r
	fz, fr := m1z+b*d2z, m1r+b*d2r
	s.edges = [][4]float64{
		{s.nose * n1z, s.nose * n1r, m1z, m1r}, {s.nose * n2z, s.nose * n2r, m2z, m2r},
		{m1z, m1r, fz, fr}, {m2z, m2r, fz, fr},
	}
	if !t.Right {
		for i := range s.edges {
			s.edges[i][0], s.edges[i][2] = -s.edges[i][0], -s.edges[i][2]
		}
	}
	return s
}

// lowest returns the height of the insert's lower boundary at u from the nose
// centre, +Inf where there is none. The nose disc lies inside the rounded
// outline, so taking all of it adds nothing.
func (s sampleTool) lowest(u float64) float64 {
	low := math.Inf(1)
	if math.Abs(u) <= s.nose {
		low = -math.Sqrt(s.nose*s.nose - u*u)
	}
	for _, e := range s.edges {
		if (u-e[0])*(u-e[2]) <= 0 && e[0] != e[2] {
			low = math.Min(low, e[1]+(e[3]-e[1])*(u-e[0])/(e[2]-e[0]))
		}
	}
	return low
}

// reach returns how far the insert reaches in z on both sides of the nose centre.
func (s sampleTool) reach() (left, right float64) {
	left, right = -s.nose, s.nose
	for _, e := range s.edges {
		left, right = math.Min(left, math.Min(e[0], e[2])), math.Max(right, math.Max(e[0], e[2]))
	}
	return left, right
}

// sampler is what a program leaves of a bar.
type sampler struct {
	moves  []sampleMove
	tools  []sampleTool // of each move
	lo, hi []float64    // z range that each move's tool passes over
	bar    float64      // radius, mm
}

// newSampler keeps the moves of a program that can touch a bar.
func newSampler(program string, s *shop.Shop, bar float64) *sampler {
	out := &sampler{bar: bar}
	for _, m := range sampleRead(program, s) {
		if m.tool == nil || math.IsNaN(m.fromZ) || math.IsNaN(m.fromR) {
			continue
		}
		tool := newSampleTool(m.tool)
		left, right := tool.reach()
		lo, hi := math.Min(m.fromZ, m.toZ), math.Max(m.fromZ, m.toZ)
		if m.turn != 0 {
			rad := math.Hypot(m.fromZ-m.centreZ, m.fromR-m.centreR)
			lo, hi = math.Min(lo, m.centreZ-rad), math.Max(hi, m.centreZ+rad)
		}
		out.moves, out.tools = append(out.moves, m), append(out.tools, tool)
		out.lo, out.hi = append(out.lo, lo+tool.shiftZ+left), append(out.hi, hi+tool.shiftZ+right)
	}
	return out
}

// at returns the radius of the metal left at station z and the line of the
// program that left it (0: raw bar).
func (s *sampler) at(z float64) (r float64, line int) {
	r = s.bar
	for i, m := range s.moves {
		if z < s.lo[i] || z > s.hi[i] {
			continue
		}
		if low := math.Max(m.lowestAt(z, s.tools[i]), 0); low < r {
			r, line = low, m.line
		}
	}
	return r, line
}

// wall returns where, between a and b, the metal first reaches radius r, going
// from b toward a (from the front to the back when a < b): bisected to 1e-7 mm.
func (s *sampler) wall(r, a, b float64) float64 {
	for math.Abs(b-a) > 1e-7 {
		mid := (a + b) / 2
		if h, _ := s.at(mid); h >= r {
			a = mid
		} else {
			b = mid
		}
	}
	return (a + b) / 2
}

// lowestAt searches the least height that the tool reaches at station z during
// the move; +Inf when it never comes there. Along a line the height is convex
// on the one interval where the tool is over the station; along an arc each
// low place of a grid is searched as convex between its neighbours.
func (m sampleMove) lowestAt(z float64, tool sampleTool) float64 {
	height := func(t float64) float64 {
		pz, pr := m.at(t)
		return pr + tool.shiftR + tool.lowest(z-pz-tool.shiftZ)
	}
	if m.turn == 0 {
		a, b := 0.0, 1.0
		if dz := m.toZ - m.fromZ; dz != 0 {
			left, right := tool.reach()
			t1, t2 := (z-tool.shiftZ-right-m.fromZ)/dz, (z-tool.shiftZ-left-m.fromZ)/dz
			a, b = math.Max(math.Min(t1, t2), 0), math.Min(math.Max(t1, t2), 1)
			if a > b {
				return math.Inf(1)
			}
		}
		return leastBetween(height, a, b)
	}
	const grid = 200
	heights := make([]float64, grid+1)
	for i := range heights {
		heights[i] = height(float64(i) / grid)
	}
	best := math.Inf(1)
	for i, h := range heights {
		if (i == 0 || h <= heights[i-1]) && (i == grid || h <= heights[i+1]) && !math.IsInf(h, 1) {
			best = math.Min(best, leastBetween(height, math.Max(float64(i-1)/grid, 0), math.Min(float64(i+1)/grid, 1)))
		}
	}
	return best
}

// leastBetween returns the least value of a convex function over [a, b]
// (golden section), its ends included.
func leastBetween(f func(float64) float64, a, b float64) float64 {
	best := math.Min(f(a), f(b))
	for range 60 {
		t1, t2 := a+(b-a)*0.3819660112501051, a+(b-a)*0.6180339887498949
		f1, f2 := f(t1), f(t2)
		best = math.Min(best, math.Min(f1, f2))
		if f1 <= f2 {
			b = t2
		} else {
			a = t1
		}
	}
	return best
}
