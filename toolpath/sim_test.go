package toolpath

import (
	"fmt"
	"math"
	"math/rand/v2"
	"os"
	"slices"
	"strconv"
	"testing"

	"github.com/stretchr/testify/require"

	"taperwright/profiles"
	"taperwright/profiles/finding"
	"taperwright/profiles/geom"
	"taperwright/profiles/shop"
)

// bar is a raw piece as heights at stations, cut by discs that are put down
// every few hundredths along the path: nothing of the planner's geometry.
type bar struct {
	z0, dz float64 // station i stands at z0 - i*dz
	top    []float64
}

func newBar(p *profiles.Part, end float64) *bar {
	b := &bar{z0: p.Stock.Front, dz: 0.02}
	for z := b.z0; z > end; z -= b.dz {
		b.top = append(b.top, p.Stock.Radius)
	}
	return b
}

func (b *bar) index(z float64) int { return int(math.Round((b.z0 - z) / b.dz)) }

// each calls f for every station within reach of z.
func (b *bar) each(z, reach float64, f func(i int, off float64)) {
	for i := max(b.index(z+reach), 0); i <= min(b.index(z-reach), len(b.top)-1); i++ {
		f(i, b.z0-float64(i)*b.dz-z)
	}
}

// under returns the lower side of the insert at off from its nose centre c.
func under(t *shop.Tool, c geom.Point, off float64) float64 {
	r := t.Nose
	minor, kappa := math.Pi-t.CuttingAngle.Value-t.Included.Value, t.CuttingAngle.Value
	switch {
	case off > r*math.Sin(minor) && off <= 12:
		return c.R + (off*math.Sin(minor)-r)/math.Cos(minor)
	case off < -r*math.Sin(kappa) && kappa < math.Pi/2-1e-9 && off >= -12:
		return c.R + (-off*math.Sin(kappa)-r)/math.Cos(kappa)
	case math.Abs(off) <= r:
		return c.R - math.Sqrt(r*r-off*off)
	}
	return math.Inf(1)
}

// wantedAt returns the height of the contour at z, the largest of its pieces.
func wantedAt(pieces []geom.Piece, z float64) float64 {
	w := math.Inf(-1) // beside the part there is nothing to hit
	for _, p := range pieces {
		for _, m := range p.Monotone() {
			if m.From.Z >= z && z >= m.To.Z {
				w = max(w, m.RAt(z), map[bool]float64{true: m.To.R}[m.From.Z == m.To.Z])
			}
		}
	}
	return w
}

// machine cuts the plan out of the bar and holds what a plan must keep to.
func machine(t *testing.T, p *profiles.Part, plan *Plan, what string) *bar {
	t.Helper()
	var pieces geom.Chain
	for _, f := range p.Features {
		if f.Kind != profiles.Corner {
			pieces = append(pieces, f.Piece)
		}
	}
	end := pieces[len(pieces)-1].To.Z
	b := newBar(p, end-8)
	wanted := make([]float64, len(b.top))
	for i := range wanted {
		z := b.z0 - float64(i)*b.dz // beside a wall, not on it
		wanted[i] = min(wantedAt(pieces, z-0.005), wantedAt(pieces, z+0.005))
	}
	for _, op := range plan.Operations {
		tool := op.Tool
		tip := geom.Point{Z: tool.Nose * float64(tool.TipZ), R: tool.Nose * float64(tool.TipX)}
		var before *geom.Point
		for _, pass := range op.Passes {
			mostCut, old := 0.0, slices.Clone(b.top)
			level := false
			for _, m := range pass.Moves {
				say := fmt.Sprintf("%s\n%s: %s: %v\n%v", what, op.Purpose, pass.Name, m, pieces)
				require.Equal(t, m.Rapid, m.Feed == 0, say)
				if before != nil {
					require.LessOrEqual(t, m.Path.From.Sub(*before).Len(), 1e-9, "a jump: %s", say)
				}
				to := m.Path.To
				before = &to
				path := m.Path.Shift(tip.Times(-1))
				if m.Rapid {
					require.True(t, path.IsLine() && (path.From.Z == path.To.Z || path.From.R == path.To.R), "rapid askew: %s", say)
				}
				step := 0.01
				if m.Rapid {
					step = 0.1
				}
				flat := path.IsLine() && path.From.R == path.To.R && op.Purpose == "rough" && !m.Rapid
				level = level || flat && tool.Purpose == "rough" && min(path.From.Z, 0)-path.To.Z > 1 // shorter ones meet metal with the round only
				n := int(path.Length()/step) + 1
				for k := range n + 1 {
					c := along(path, float64(k)/float64(n))
					if m.Rapid {
						b.each(c.Z, 12, func(i int, off float64) {
							if u := under(tool, c, off); u < b.top[i]-0.02 {
								require.Failf(t, "rapid in metal", "at %v, station off %g, metal %g, insert %g: %s", c, off, b.top[i], u, say)
							}
						})
						continue
					}
					reach := tool.Nose
					if k%20 == 0 || k == n { // the edges, more coarsely
						reach = 12
					}
					b.each(c.Z, reach, func(i int, off float64) {
						u := under(tool, c, off)
						cut := old[i] - u
						if flat && math.Abs(off) < b.dz {
							mostCut = max(mostCut, cut)
							if cut > tool.Depth.Value+0.02+0.05*min(slope(wanted, i), 20) {
								require.Failf(t, "too deep", "%g at %v: %s", cut, c, say)
							}
						}
						b.top[i] = min(b.top[i], u)
						if u <= 0 { // what stands before a cut through the axis falls off
							for k := i; k >= 0 && b.top[k] > 0; k-- {
								b.top[k] = 0
							}
						}
					})
					if k%20 == 0 {
						b.each(c.Z, 12, func(i int, off float64) {
							z := c.Z + off
							if u := under(tool, c, off); z > end && u < wanted[i]-0.003-0.03*math.Abs(min(slope(wanted, i), 100)) {
								require.Failf(t, "insert in the part", "at %v, off %g, wanted %g, insert %g: %s", c, off, wanted[i], u, say)
							}
						})
					}
					// roughing keeps its distance
					if op.Purpose != "finish" && c.Z > end {
						skin := 0.25
						if d := pieces.Distance(c); d < tool.Nose+skin-1e-6 {
							require.Failf(t, "skin cut into", "%g < %g at %v: %s", d, tool.Nose+skin, c, say)
						}
					}
				}
			}
			if level {
				require.GreaterOrEqual(t, mostCut, 0.3-0.02, "%s\nlevel too thin: %s\n%v", what, pass.Name, pieces)
			}
		}
		require.Equal(t, op.Passes[0].Moves[0].Path.From, *before, "not back at the change point: %s %s", what, op.Purpose)
	}
	return b
}

func slope(w []float64, i int) float64 {
	s := 0.0
	if i > 0 {
		s = max(s, math.Abs(w[i]-w[i-1]))
	}
	if i < len(w)-1 {
		s = max(s, math.Abs(w[i]-w[i+1]))
	}
	return s / 0.02
}

// judge holds the finished bar against the contour.
func judge(t *testing.T, p *profiles.Part, b *bar, what string) {
	t.Helper()
	var pieces geom.Chain
	for _, f := range p.Features {
		if f.Kind != profiles.Corner {
			pieces = append(pieces, f.Piece)
		}
	}
	for _, f := range p.Features {
		j := f.Judged
		if f.Kind == profiles.Corner || j.From == j.To {
			continue
		}
		for k := range 41 {
			q := along(j, float64(k)/40)
			i := b.index(q.Z)
			d := j.DirAt(q)
			if i < 1 || i > len(b.top)-2 || d.Z > -0.2 { // walls stand between stations
				continue
			}
			z := b.z0 - float64(i)*b.dz
			want := wantedAt(pieces, z)
			lo := min(j.From.Z, j.To.Z)
			hi := max(j.From.Z, j.To.Z)
			if z < lo+0.02 || z > hi-0.02 {
				continue
			}
			if math.Abs(b.top[i]-want) > 0.001+0.012*math.Abs(d.R/d.Z) {
				require.Failf(t, "not as wanted", "%s: %s at z %g: left %g, wanted %g\n%v", what, f.Name, z, b.top[i], want, pieces)
			}
		}
	}
}

// Random parts, planned and cut, or refused with a finding. TAPERWRIGHT_PARTS
// sets how many.
func TestRandomParts(t *testing.T) {
	n := 25
	if s := os.Getenv("TAPERWRIGHT_PARTS"); s != "" {
		n, _ = strconv.Atoi(s)
	}
	seed := uint64(5)
	if s := os.Getenv("TAPERWRIGHT_SEED"); s != "" {
		seed, _ = strconv.ParseUint(s, 10, 64)
	}
	t.Logf("seed %d", seed)
	refused := map[string]int{}
	for k := range n {
		r := rand.New(rand.NewPCG(seed, uint64(k)))
		p, what := randomPart(r)
		what = fmt.Sprintf("part %d: %s", k, what)
		var l finding.List
		plan := New(p, 0, &l)
		if plan == nil {
			require.True(t, l.HasErrors(), what)
			for _, f := range l.Sorted() {
				refused[f.Code]++
				require.NotEqual(t, CodeInternal, f.Code, "%s: %s", what, f.Message)
			}
			continue
		}
		require.False(t, l.HasErrors(), what)
		b := machine(t, p, plan, what)
		judge(t, p, b, what)
	}
	t.Logf("%d parts, findings that refused: %v", n, refused)
}

func randomPart(r *rand.Rand) (*profiles.Part, string) {
	fall := 0.1 + 0.7*r.Float64()
	finNose := []float64{0.2, 0.4, 0.8}[r.IntN(3)]
	pieces := randomContour(r, fall, finNose)
	if last := pieces[len(pieces)-1]; last.IsLine() && last.StartDir().Z > -0.1 && r.IntN(2) == 0 {
		pieces = append(pieces, geom.Line(last.To, last.To.Add(at(-8, 0))))
	}
	_, hi := geom.Chain(pieces).Bounds()
	rough := insert("T1", "rough", []float64{0.4, 0.8, 1.2}[r.IntN(3)], []float64{95, 95, 75, 90}[r.IntN(4)], []float64{80, 60, 55}[r.IntN(3)])
	rough.Depth.Value = 0.5 + 2.5*r.Float64()
	fin := insert("T3", "finish", finNose, []float64{93, 107}[r.IntN(2)], 35)
	s := lathe(rough, fin)
	front := []float64{0, 0.3, 1, 4}[r.IntN(4)]
	stock := hi.R + []float64{0, 0.1, 0.4, 2, 10}[r.IntN(5)]
	return shaft(stock, front, s, pieces...), fmt.Sprintf("rough R%g %g/%g depth %g, finish R%g, stock %g, front %g", rough.Nose,
		geom.Degrees(rough.CuttingAngle.Value), geom.Degrees(rough.Included.Value), rough.Depth.Value, fin.Nose, stock, front)
}

// Many more random parts, planned only: a plan or a reason, never a fault of
// ours.
func TestRandomPartsArePlannedOrRefused(t *testing.T) {
	n := 2000
	if s := os.Getenv("TAPERWRIGHT_PARTS"); s != "" {
		n, _ = strconv.Atoi(s)
	}
	faults, plans := 0, 0
	for k := range n {
		p, what := randomPart(rand.New(rand.NewPCG(9, uint64(k))))
		var l finding.List
		if New(p, 0, &l) != nil {
			plans++
			continue
		}
		require.True(t, l.HasErrors(), what)
		for _, f := range l.Sorted() {
			if f.Code == CodeInternal {
				faults++
				t.Errorf("part %d: %s: %s", k, what, f.Message)
			}
		}
	}
	t.Logf("%d parts, %d planned", n, plans)
}
