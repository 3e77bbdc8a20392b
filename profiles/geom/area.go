package geom

import "math"

var infinity = math.Inf(1)

// segment returns the area between an arc of radius r and sweep s and its
// chord: r²/2 (s - sin s). For small s the difference loses its digits, so
// the series of s - sin s is taken; at s = 1 its first left-out factor is
// 1/272 of a term of 1e-14.
func segment(r, s float64) float64 {
	var d float64
	if s < 1 {
		q := s * s
		d = 1 - q/210
		for _, k := range [...]float64{156, 110, 72, 42, 20} {
			d = 1 - float64(q/k*d)
		}
		d *= s * q / 6
	} else {
		d = s - Sin(s)
	}
	return r * r / 2 * d
}

// AreaUnder returns the signed integral of r dz from From to To, mm²: above 0
// when z grows over positive r.
func (p Piece) AreaUnder() float64 {
	chord := float64((p.From.R + p.To.R) / 2 * (p.To.Z - p.From.Z))
	if p.IsLine() {
		return chord
	}
	// arc and chord back enclose the segment; counterclockwise, -integral of r dz is the area
	return chord - float64(float64(p.Turn)*float64(segment(p.Radius(), p.Sweep())))
}

// Moments are the integrals over dz, from From to To, that a least-squares
// line r = a + b z through a piece needs; all change sign when the piece is
// reversed. Add them up over pieces, then
//
//	b = (L*ZR - Z*R) / (L*ZZ - Z*Z),  a = (R - b*Z) / L
//
// and the mean square of what is left is (RR - a*R - b*ZR) / L. Take the
// origin near the pieces, or the squares eat the digits.
type Moments struct {
	L  float64 // of 1, mm
	Z  float64 // of z, mm²
	ZZ float64 // of z², mm³
	R  float64 // of r, mm²
	ZR float64 // of z r, mm³
	RR float64 // of r², mm³
}

// Add returns the sum.
func (m Moments) Add(n Moments) Moments {
	return Moments{m.L + n.L, m.Z + n.Z, m.ZZ + n.ZZ, m.R + n.R, m.ZR + n.ZR, m.RR + n.RR}
}

// Times returns m scaled by k (-1 for a piece run the other way).
func (m Moments) Times(k float64) Moments {
	return Moments{m.L * k, m.Z * k, m.ZZ * k, m.R * k, m.ZR * k, m.RR * k}
}

// Line returns a and b of the least-squares line; false when the pieces have
// no length along z.
func (m Moments) Line() (a, b float64, ok bool) {
	d := float64(m.L*m.ZZ) - float64(m.Z*m.Z)
	if !(d > 0) {
		return 0, 0, false
	}
	b = (float64(m.L*m.ZR) - float64(m.Z*m.R)) / d
	return (m.R - float64(b*m.Z)) / m.L, b, true
}

// Moments returns the integrals of p about origin.
func (p Piece) Moments(origin Point) Moments {
	p = p.Shift(Point{-origin.Z, -origin.R})
	z0, z1, r0, r1 := p.From.Z, p.To.Z, p.From.R, p.To.R
	l := z1 - z0
	m := Moments{
		L:  l,
		Z:  l * (z0 + z1) / 2,
		ZZ: l * (float64(z0*z0) + float64(z0*z1) + float64(z1*z1)) / 3,
	}
	if p.IsLine() {
		m.R = l * (r0 + r1) / 2
		m.ZR = l * (float64(z0*(2*r0+r1)) + float64(z1*(r0+2*r1))) / 6
		m.RR = l * (float64(r0*r0) + float64(r0*r1) + float64(r1*r1)) / 3
		return m
	}
	// z = cz + u, r = cr + v with u² + v² = q²: u du = -v dv closes every integral
	cz, cr, q := p.Center.Z, p.Center.R, p.Radius()
	u0, u1, v0, v1 := z0-cz, z1-cz, r0-cr, r1-cr
	m.R = p.AreaUnder()
	v := m.R - float64(cr*l) // integral of v du
	uv := (float64(v0*v0*v0) - float64(v1*v1*v1)) / 3
	m.ZR = float64(cr*m.Z) + float64(cz*v) + uv
	m.RR = float64(cr*cr*l) + float64(2*cr*v) + float64(q*q*l) - (float64(u1*u1*u1)-float64(u0*u0*u0))/3
	return m
}
