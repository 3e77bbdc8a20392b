package post

import (
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/require"

	"taperwright/profiles"
	"taperwright/profiles/finding"
	"taperwright/profiles/geom"
	"taperwright/profiles/shop"
	"taperwright/toolpath"
	"taperwright/verify/motion"
	"taperwright/verify/rs274"
)

// Every example, posted for lathes of several kinds and read back by the room
// that knows nothing of plans: the same moves, ends within half a unit of the
// words, arcs within the arc tolerance, feeds and tools as planned, no finding
// and no unknown state.
func TestReadBack(t *testing.T) {
	files, err := filepath.Glob("../testdata/parts/*/*.toml")
	require.NoError(t, err)
	require.NotEmpty(t, files)
	read := 0
	for _, file := range files {
		for name, change := range map[string]func(*shop.Machine){
			"as it is":  func(*shop.Machine) {},
			"inch":      func(m *shop.Machine) { m.Unit, m.Decimals = given(shop.Inch), given(4) },
			"mm":        func(m *shop.Machine) { m.Unit, m.Decimals = given(shop.MM), given(3) },
			"by R":      func(m *shop.Machine) { m.Arcs = given("r") },
			"radius":    func(m *shop.Machine) { m.XIsDiameter = given(false) },
			"mirrored":  func(m *shop.Machine) { m.ArcSense = given("mirrored") },
			"semicolon": func(m *shop.Machine) { m.Comments = given("semicolon") },
		} {
			if readBack(t, file, name, change) {
				read++
			}
		}
	}
	t.Logf("%d programs read back", read)
	require.Greater(t, read, 20)
}

func readBack(t *testing.T, file, name string, change func(*shop.Machine)) bool {
	t.Helper()
	src, err := os.ReadFile(file)
	require.NoError(t, err)
	var l finding.List
	part := profiles.Read(finding.NewText(file, src), func(other string) (*finding.Text, error) {
		b, err := os.ReadFile(filepath.Join(filepath.Dir(file), other))
		return finding.NewText(other, b), err
	}, &l)
	if part == nil || part.Shop == nil {
		return false // whether a part can be read is another room's test
	}
	change(&part.Shop.Machine)
	plan := toolpath.New(part, 0, &l)
	if plan == nil {
		return false
	}
	var posting finding.List
	program := Write(plan, part, &posting)
	require.NotNil(t, program, "%s %s: %v", file, name, posting.Sorted())

	var reading finding.List
	trace := motion.Interpret(rs274.Parse(finding.NewText("p.nc", program.Bytes), &reading), part.Shop, &reading)
	require.Empty(t, reading.Sorted(), "%s %s", file, name)
	require.True(t, trace.Ended && !trace.Stopped, "%s %s", file, name)

	// the moves of the plan that the words can show
	f := formatOf(&part.Shop.Machine)
	half := f.one/2 + 1e-9
	var got []motion.Motion
	for _, m := range trace.Motions {
		if m.Kind == motion.Jump {
			continue // to the first change point, from wherever the slides stood
		}
		got = append(got, m)
	}
	at := 0
	for i := range plan.Operations {
		op := &plan.Operations[i]
		for _, p := range op.Passes {
			for _, m := range p.Moves {
				if f.spot(m.Path.From) == f.spot(m.Path.To) {
					continue
				}
				for {
					require.Less(t, at, len(got), "%s %s", file, name)
					g := got[at]
					at++
					require.Equal(t, m.Rapid, g.Kind == motion.Rapid, "%s %s: %v for %v", file, name, g.Path, m.Path)
					require.Equal(t, op.Tool.Station, trace.Tools[g.Tool].Station)
					if !m.Rapid {
						require.InEpsilon(t, m.Feed, g.Feed, 0.011, "%s %s", file, name)
						require.True(t, g.Spin.Turning)
						require.Equal(t, op.Surface, g.Spin.Surface)
					}
					if g.Path.Turn != 0 {
						require.Equal(t, m.Path.Turn, g.Path.Turn)
						near(t, 0, off(m.Path, g.Path), part.Shop.Machine.ArcToleranceIn(f.unit)+1e-9, file, name)
					}
					if e := g.Path.To.Sub(m.Path.To); e.Z <= half && -e.Z <= half && e.R <= half && -e.R <= half {
						break // the end of the move; by R an arc may take several blocks
					}
					require.NotZero(t, g.Path.Turn, "%s %s: %v for %v", file, name, g.Path, m.Path)
					require.LessOrEqual(t, m.Path.Distance(g.Path.To), f.one, "%s %s", file, name)
				}
			}
		}
	}
	require.Equal(t, len(got), at, "%s %s", file, name)
	for _, c := range program.Cones {
		s := part.Features[c.Feature].Cone
		require.Less(t, c.HalfAngle, c.Allowance+1e-12)
		require.Less(t, -c.HalfAngle, c.Allowance+1e-12)
		near(t, 0, c.Diameter, 2*f.step()+2*geom.Point{Z: s.Slope.Aim}.Len()*f.one, file, name)
	}
	return true
}
