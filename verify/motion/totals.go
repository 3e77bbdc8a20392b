package motion

import (
	"math"

	"taperwright/profiles/geom"
)

// Totals are sums over the feed moves of the programmed point (definitions 21).
type Totals struct {
	Blocks    int     // blocks with words, up to the end or the stop
	Motions   int     // all motions, rapids too
	CutLength float64 // mm
	Time      float64 // s, of feed moves
	TimeKnown bool    // false: a feed move without feed or speed, or at no speed at all
	Dwell     float64 // s
	PeakRPM   float64 // rev/min, of feed moves
	PeakKnown bool    // false: no feed move turned, or the axis was reached at surface speed without a cap
	PeakBlock int     // index into Blocks of the first at the peak; where the peak has no bound, of the first of those; -1: none
	HasCuts   bool    // the two below mean something
	Radius    float64 // largest radius reached at feed, mm, X below the axis counted as its distance
	LeastZ    float64 // mm
}

// Totals sums the motions that keep tells to (nil: all). top is the machine's
// top speed in rev/min, 0 when not known; it bounds what the program's cap does not.
func (t *Trace) Totals(top float64, keep func(*Motion) bool) Totals {
	s := Totals{Blocks: len(t.Blocks), TimeKnown: true, PeakBlock: -1}
	for _, d := range t.Dwells {
		s.Dwell += d.Seconds
	}
	bounded := true
	for i := range t.Motions {
		m := &t.Motions[i]
		if keep != nil && !keep(m) {
			continue
		}
		s.Motions++
		if m.Kind != Cut {
			continue
		}
		lo, hi := m.Path.Bounds()
		reach := max(hi.R, -lo.R)
		if !s.HasCuts {
			s.Radius, s.LeastZ = reach, lo.Z
		}
		s.HasCuts = true
		s.Radius, s.LeastZ = max(s.Radius, reach), min(s.LeastZ, lo.Z)
		s.CutLength += m.Path.Length()
		least := max(0, lo.R, -hi.R) // the least distance from the axis
		if n, ok := m.Spin.RPM(least, top); m.Spin.Turning && m.Spin.SpeedSet {
			switch {
			case !ok && bounded:
				bounded, s.PeakBlock = false, m.Block
			case ok && bounded && n > s.PeakRPM:
				s.PeakRPM, s.PeakBlock = n, m.Block
			}
		}
		d, ok := m.time(top)
		s.Time += d
		s.TimeKnown = s.TimeKnown && ok
	}
	s.PeakKnown = bounded && s.PeakBlock >= 0
	if !bounded {
		s.PeakRPM = 0
	}
	return s
}

// RPM returns the speed in rev/min at a radius in mm; ok is false when it is
// not known or has no bound. top is the machine's top speed, 0 when not known.
func (s Spin) RPM(r, top float64) (n float64, ok bool) {
	if !s.Turning || !s.SpeedSet {
		return 0, false
	}
	limit := s.limit(top)
	if !s.Surface {
		if top > 0 {
			return min(s.Speed, top), true // the cap word holds for surface speed
		}
		return s.Speed, true
	}
	around := 2 * math.Pi * math.Abs(r)
	if limit > 0 && float64(limit*around) <= s.Speed*1000 {
		return limit, true
	}
	if around == 0 {
		return 0, false
	}
	return s.Speed * 1000 / around, true
}

// limit returns the lower of the program's cap and the machine's top speed, 0
// when neither is known.
func (s Spin) limit(top float64) float64 {
	switch {
	case s.Cap <= 0:
		return top
	case top <= 0:
		return s.Cap
	}
	return min(s.Cap, top)
}

// time returns the seconds that a feed move takes.
func (m *Motion) time(top float64) (seconds float64, ok bool) {
	if m.Feed <= 0 {
		return 0, false
	}
	length := m.Path.Length()
	if m.PerMin {
		return length / m.Feed * 60, true
	}
	s := m.Spin
	if !s.Turning || !s.SpeedSet {
		return 0, false
	}
	if !s.Surface {
		n, _ := s.RPM(0, top)
		return length / m.Feed / n * 60, true
	}
	// At surface speed n = v/(2 pi |r|) down to the radius where the limit
	// rules: the time is the integral of |r| ds over the path, and length
	// over the limit nearer the axis.
	speed := s.Speed * 1000 // mm/min
	limit := s.limit(top)
	capped := 0.0
	if limit > 0 {
		capped = speed / (2 * math.Pi * limit)
	}
	minutes := 0.0
	for _, p := range bands(m.Path, capped) {
		middle := math.Abs(p.From.R+p.To.R) / 2
		if p.Turn != geom.Straight {
			middle = math.Abs(aboveArc(p))
		}
		if limit > 0 && middle <= capped {
			minutes += p.Length() / m.Feed / limit
		} else if p.IsLine() {
			minutes += float64(p.Length()*middle) * 2 * math.Pi / (speed * m.Feed)
		} else {
			minutes += math.Abs(momentArc(p)) * 2 * math.Pi / (speed * m.Feed)
		}
	}
	return minutes * 60, true
}

// bands cuts a path where it crosses the axis and the radius r0 on both sides.
func bands(p geom.Piece, r0 float64) []geom.Piece {
	cuts := []float64{-r0, 0, r0}
	if r0 == 0 {
		cuts = cuts[:1]
	}
	lo, hi := p.Bounds()
	inside := false
	for _, r := range cuts {
		inside = inside || lo.R < r && r < hi.R
	}
	if !inside {
		return []geom.Piece{p}
	}
	var out []geom.Piece
	for _, part := range p.Monotone() {
		down := part.From.R > part.To.R
		for i := range cuts {
			r := cuts[i]
			if down {
				r = cuts[len(cuts)-1-i]
			}
			if min(part.From.R, part.To.R) < r && r < max(part.From.R, part.To.R) {
				var head geom.Piece
				head, part = part.Split(geom.Point{Z: part.ZAt(r), R: r})
				out = append(out, head)
			}
		}
		out = append(out, part)
	}
	return out
}

// momentArc returns the integral of r ds over an arc: with r = c + R sin w and
// ds = R dw it is c times the length, and R times the way in z against the turn.
func momentArc(p geom.Piece) float64 {
	way := p.From.Z - p.To.Z
	if p.Turn == geom.CW {
		way = -way
	}
	return float64(p.Center.R*p.Length()) + float64(p.Radius()*way)
}

// aboveArc returns the mean r of an arc.
func aboveArc(p geom.Piece) float64 { return momentArc(p) / p.Length() }
