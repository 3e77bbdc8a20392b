// Package geom holds points, straight and circular pieces and chains of them
// in the half plane of a turned part: Z along the spindle, R the radius.
//
// Everything is exact: an arc stays an arc, nothing is flattened, and every
// question is answered in closed form with + - * / and Sqrt. Every product
// that is then summed stands in float64(): the language allows a CPU to fuse
// x*y + z otherwise, and the same part would print other digits on another
// machine. Lengths are millimetres, angles radians.
package geom

import "math"

// Point is a place in the half plane, in mm. It doubles as a vector.
type Point struct{ Z, R float64 }

// Add returns p + q.
func (p Point) Add(q Point) Point { return Point{p.Z + q.Z, p.R + q.R} }

// Sub returns p - q.
func (p Point) Sub(q Point) Point { return Point{p.Z - q.Z, p.R - q.R} }

// Times returns p scaled by k.
func (p Point) Times(k float64) Point { return Point{float64(p.Z * k), float64(p.R * k)} }

// Along returns p + d*k.
func (p Point) Along(d Point, k float64) Point {
	return Point{p.Z + float64(d.Z*k), p.R + float64(d.R*k)}
}

// Dot returns the scalar product of p and q.
func (p Point) Dot(q Point) float64 { return float64(p.Z*q.Z) + float64(p.R*q.R) }

// Cross returns the z component of p x q: above 0 when q lies counterclockwise of p.
func (p Point) Cross(q Point) float64 { return float64(p.Z*q.R) - float64(p.R*q.Z) }

// Len returns the length of p.
func (p Point) Len() float64 { return math.Sqrt(float64(p.Z*p.Z) + float64(p.R*p.R)) }

// Unit returns p at length 1, or p itself when it has no length.
func (p Point) Unit() Point {
	if l := p.Len(); l > 0 {
		return Point{p.Z / l, p.R / l}
	}
	return p
}

// Left returns p turned a quarter counterclockwise (Z to the right, R up).
func (p Point) Left() Point { return Point{-p.R, p.Z} }

// Turn tells how a piece bends on the picture with Z to the right and R up.
type Turn int8

const (
	Straight Turn = 0
	CCW      Turn = 1  // counterclockwise: G3 on that picture
	CW       Turn = -1 // clockwise: G2 on that picture
)

// Piece is a line or a circular arc from From to To. Center means something
// only when Turn is not Straight. An arc is less than a full circle.
type Piece struct {
	From, To Point
	Center   Point
	Turn     Turn
}

// Line returns the straight piece from a to b.
func Line(a, b Point) Piece { return Piece{From: a, To: b} }

// Arc returns the arc from a to b round c.
func Arc(a, b, c Point, turn Turn) Piece { return Piece{From: a, To: b, Center: c, Turn: turn} }

// Chain is pieces that follow one another, each beginning where the last ended.
type Chain []Piece
