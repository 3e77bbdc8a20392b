package post

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"taperwright/profiles/geom"
)

// The cone 1:10 with its path moved so that rounding moves both ends. Begin
// z 2, r 9.8612 is X19.7224, written 19.722: -0.0004 on diameter; end z -30.39,
// r 11.4807 is X22.9614 (22.961): -0.0004 as well. So the angle keeps and the
// diameter is 0.0004 less. Moving only the end to r 11.48075 + ... turns it.
func TestRoundingOfACone(t *testing.T) {
	s := lathe(t, "g90-turns")
	plan, part := socket(s)
	moves := plan.Operations[0].Passes[0].Moves
	moves[1].Path.To.R, moves[2].Path.From.R = 9.8612, 9.8612
	moves[2].Path.To.R, moves[3].Path.From.R = 11.4807, 11.4807
	p, found := write(t, plan, part)
	require.Empty(t, found)
	require.Len(t, p.Cones, 1)
	c := p.Cones[0]
	assert.Equal(t, 1, c.Feature)
	near(t, -0.0004, c.Diameter, 1e-7)
	near(t, 0, c.HalfAngle, 1e-9)
	// 0.0004 of a band of 0.020 on diameter
	near(t, 0.02, c.Share, 1e-5)
	// (q/2 + t q_z)/L = (0.0005 + 0.05*0.001)/sqrt(32.39^2 + 1.6195^2)
	near(t, 0.00055/geom.Point{Z: 32.39, R: 1.6195}.Len(), c.Allowance, 1e-9)

	// the begin 0.0004 thinner, the end 0.0004 thicker on diameter: over 32.39
	// the half angle grows by 0.0004/32.39/(1 + 0.05^2), of a band of 2e-4
	moves[2].Path.To.R, moves[3].Path.From.R = 11.4803, 11.4803
	p, _ = write(t, plan, part)
	c = p.Cones[0]
	near(t, 0.0004/32.39/1.0025, c.HalfAngle, 2e-9)
	// at the gauge plane, z -10, cut when the programmed point stands at about
	// z -10.4 (the nose leads by R(1 - tan..)): 12.4 of 32.39 along
	near(t, -0.0004+0.0008*12.4/32.39, c.Diameter, 2e-5)
	assert.Empty(t, found)
}

// The same words on a cone with a narrow tolerance are worth a note.
func TestRoundingEatsTolerance(t *testing.T) {
	s := lathe(t, "g90-turns")
	plan, part := socket(s)
	moves := plan.Operations[0].Passes[0].Moves
	moves[1].Path.To.R, moves[2].Path.From.R = 9.8612, 9.8612
	moves[2].Path.To.R, moves[3].Path.From.R = 11.4807, 11.4807
	cone := part.Features[1].Cone
	cone.Gauge.Low, cone.Gauge.High = 10.4996, 10.5004 // a band of 0.0016: 0.0004 is a quarter
	p, found := write(t, plan, part)
	require.NotNil(t, p)
	require.Len(t, found, 1)
	assert.Equal(t, RoundingEats, found[0].Code)
	assert.Contains(t, found[0].Message, "seat cone: rounding to 3 decimals turns the half angle by 0.00 sec and changes the gauge diameter by -0.00040 mm, 25 % of the tolerance")
	cone.Gauge.Low, cone.Gauge.High = 10.4995, 10.5005
	_, found = write(t, plan, part)
	assert.Empty(t, found)
}

// The last operation that cuts a cone counts, not the first.
func TestTheLastCutCounts(t *testing.T) {
	s := lathe(t, "g90-turns")
	plan, part := socket(s)
	rough, _ := socket(s)
	m := rough.Operations[0].Passes[0].Moves
	m[1].Path.To.R, m[2].Path.From.R = 9.8612, 9.8612
	plan.Operations = append(rough.Operations, plan.Operations...)
	p, _ := write(t, plan, part)
	near(t, 0, p.Cones[0].Diameter, 1e-9)
}
