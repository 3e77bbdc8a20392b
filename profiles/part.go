// Package profiles reads a part file into a Part: features, stock, set-ups,
// tolerances and the exact wanted contour. Radius everywhere; diameter exists
// only in the file and in messages. Lengths mm, angles radians.
//
// Part frame: Z0 at the finished front face, Z falling toward the back.
package profiles

import (
	"taperwright/profiles/finding"
	"taperwright/profiles/geom"
	"taperwright/profiles/shop"
)

// Size is a dimension with its limits. Aim is where the planner cuts to and
// the verdict measures from; the nominal is only printed.
type Size struct {
	Nominal, Low, Aim, High float64
	Class                   string // "k6", "medium", "+AT6": as written, for reports; "" for plain limits
	Assumed                 bool   // from the general tolerance, not its own
	Span                    finding.Span
}

// Kind is the kind of a feature.
type Kind string

const (
	Journal  Kind = "journal"
	Taper    Kind = "taper"
	Shoulder Kind = "shoulder" // any face square to the axis; also the step between two cylinders of one nominal
	Chamfer  Kind = "chamfer"
	Fillet   Kind = "fillet"
	Corner   Kind = "corner" // an untreated inside corner: no piece of its own
)

// Feature is one row of the part in contour order: what stands in the file,
// plus the front face, edge breaks ("edge N"), inside corners ("corner before
// NAME") and steps between cylinders of one nominal but not one aim ("step
// before NAME"). A ball end or a point has no front face.
type Feature struct {
	Name   string
	Kind   Kind
	Inside bool
	Span   finding.Span // where the file says it (a step: the feature behind it); the zero Span for what the file only implies
	Setup  int          // index of the set-up that cuts it; -1: later, as are treatments of the back edge

	// Piece is the feature as finally cut, along the contour (front face
	// outward from the axis, then toward the back), aim sizes, treatments
	// taken out. Missing (no length) for a Corner: Piece.From is the corner.
	Piece geom.Piece
	Arc   bool // Piece is an arc

	// Judged is the part of Piece that a verdict speaks of: corner zones of
	// its neighbours left out. No length: nothing left to judge. The front face
	// of a tube begins at its bore. The front face is the datum of all lengths:
	// its z has no tolerance.
	Judged geom.Piece

	Radius Size // journal: radius of the cylinder
	Z      Size // shoulder: z of the face
	ZFrom  Size // journal, taper: planes of its ends (aim and limits), nominal corners before treatments
	ZTo    Size
	RFrom  Size // shoulder: radii of its ends (aim)
	RTo    Size
	Cone   *Cone // taper
	Width  Size  // chamfer: axial width
	Angle  Size  // chamfer: to the axis
	Fillet Size  // fillet radius; corner: {0, _, most allowed}
}

// Cone is the wanted cone of a taper. Radius at z is
// Gauge.Aim + Slope.Aim*(z - GaugeZ); Slope is signed: above 0 the radius
// grows with z (large end in front).
type Cone struct {
	Gauge      Size    // radius at the gauge plane
	GaugeZ     float64 // aim z of the gauge plane, part frame
	Slope      Size    // tan of the half angle, signed; Low <= Aim <= High as numbers
	HalfAngle  Size    // magnitude, radians
	OffMetal   bool    // the gauge plane lies off the metal
	LargeFront bool
	Series     string // "Morse 3" when named
	Loose      bool   // judged by the general class only
}

// Stock is the raw piece, mm, radii, part frame.
type Stock struct {
	Span      finding.Span
	Radius    float64
	Length    float64
	Front     float64 // metal beyond Z0
	Bore      float64 // radius, 0: solid
	BoreDepth float64
	Oversize  float64 // on radius: clearance planning only
}

// Hold is how a set-up holds the part.
type Hold struct {
	By      string // "chuck"; "" not given
	On      string // feature name, or "stock"
	Grip    float64
	Support string // "centre" or ""
	Span    finding.Span
}

// Setup is one clamping.
type Setup struct {
	Name string
	Back bool // this set-up's face is the back face
	Upto string
	Hold Hold
	Zero float64 // z of the finished face in the program's frame (0 usually)
	Span finding.Span
}

// Later is work not cut and not judged here.
type Later struct{ What, On string }

// Part is one part file, read whole.
type Part struct {
	Text           *finding.Text
	Title, Drawing string
	Material       string
	Unit           shop.Unit
	Shop           *shop.Shop
	Stock          Stock
	Features       []Feature // outside, contour order, front face first
	Length         float64   // of the outside chain, aim
	Later          []Later
	Setups         []Setup // at least one
	Assumed        []Assumption
	Digest         string // of the values read: the same for another layout of the same values
}

// Assumption is a value taken because the file gave none.
type Assumption struct {
	What, Value string
	From        finding.Span // zero: a default of ours
}

// Contour returns the wanted outside contour of set-up n as one chain in the
// part's frame, from the axis at the front face to the end of the last
// feature of the set-up, with the index in p.Features of each piece.
func (p *Part) Contour(n int) (geom.Chain, []int) {
	var chain geom.Chain
	var owner []int
	for i, f := range p.Features {
		if f.Setup != n || f.Inside || f.Kind == Corner || f.Piece.From == f.Piece.To {
			continue
		}
		chain, owner = append(chain, f.Piece), append(owner, i)
	}
	return chain, owner
}
