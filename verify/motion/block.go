package motion

import (
	"fmt"

	"taperwright/profiles/finding"
	"taperwright/profiles/shop"
	"taperwright/verify/rs274"
)

// sort puts the words of the block where they can be asked for, and refuses
// what is not read and what stands twice. False: judgement has stopped.
func (r *reader) sort() bool {
	b := &r.b
	for i := range b.words {
		w := &b.words[i]
		if f, refused := r.refused(w, b.words); refused {
			return r.stopAt(f)
		}
		switch w.Letter {
		case ':':
			continue
		case 'O':
			if r.begun {
				return r.stop(w.Span, SecondProgram, "end the program before with "+r.m.Words[shop.ProgramEnd]+", or give each a file of its own",
					"another program begins here, and the one before it has not ended")
			}
		case 'G', 'M':
			m := r.meaning(w)
			if m.harmless {
				continue
			}
			if first := b.by[m.group]; first != nil {
				switch {
				case b.what[m.group] == m.purpose && (m.group == coolantGroup || first.String() == w.String()):
					continue
				case sameWord(first, w):
					continue
				}
				return r.twice(GroupTwice, first, w, "%s and %s exclude one another in a block", first, w)
			}
			b.by[m.group], b.what[m.group] = w, m.purpose
			continue
		}
		at := w.Letter - 'A'
		if first := b.letter[at]; first != nil {
			return r.twice(LetterTwice, first, w, "%c stands twice in a block", w.Letter)
		}
		b.letter[at] = w
	}
	return true
}

// sameWord tells whether a and b are one word written in two ways, as G1 and G01.
func sameWord(a, b *rs274.Word) bool {
	x, _ := shop.Word(a.String())
	y, _ := shop.Word(b.String())
	return x == y
}

func (r *reader) twice(code string, first, second *rs274.Word, format string, args ...any) bool {
	return r.stopAt(finding.Finding{Code: code, Span: second.Span, Message: fmt.Sprintf(format, args...), Help: "keep one of them, or use two blocks",
		Places: []finding.Place{{Span: first.Span, Message: "the other stands here"}}})
}

// letters is a set of word letters.
type letters uint32

func set(of string) (s letters) {
	for i := range len(of) {
		s |= 1 << (of[i] - 'A')
	}
	return s
}

func (s letters) has(letter byte) bool { return s>>(letter-'A')&1 == 1 }

// Letters that a block may hold, by what takes them.
var (
	always = set("NOFST")
	axial  = set("XZUW")
	byArc  = set("IKR")
	waits  = set("PXU")
	fixed  = set("XZ")
	corner = set("RCAIK")
)

// claims tells who takes the axis words and refuses letters that nobody takes.
func (r *reader) claims() bool {
	b := &r.b
	taken := always
	motion := b.what[motionGroup]
	mode := r.modeOf(b)
	axis := b.any("XZUW")
	switch one := b.what[oneShot]; one {
	case shop.Dwell:
		taken |= waits
		if axis != nil && (motion != "" || b.any("ZW") != nil || b.get('P') != nil || b.get('X') != nil && b.get('U') != nil) {
			return r.clash(axis, "a motion")
		}
	case shop.Home:
		taken |= axial
		if axis != nil && motion != "" && motion != shop.Rapid { // G28 G0 U0 W0 is common and harmless
			return r.clash(axis, b.by[motionGroup].String())
		}
	case shop.MachineFrame:
		taken |= fixed
		if motion == shop.ArcCW || motion == shop.ArcCCW {
			return r.stop(b.by[motionGroup].Span, AxisClaim, "use "+r.m.Words[shop.Rapid], "an arc in the machine's frame")
		}
	case shop.SpeedCap, shop.FramePreset:
		taken |= axial
		if axis != nil && motion != "" {
			return r.clash(axis, b.by[motionGroup].String())
		}
		if axis == nil && (one == shop.FramePreset || b.get('S') == nil) {
			f := finding.Finding{Code: UnknownWord, Span: b.by[oneShot].Span, Help: "give it axis words",
				Message: fmt.Sprintf("%s without axis words is not known here", b.by[oneShot])}
			if b.get('S') != nil {
				f.Help = fmt.Sprintf("elsewhere it caps the speed: say word = { speed_cap = %q }", b.by[oneShot])
			}
			return r.stopAt(f)
		}
	default:
		taken |= axial
		if mode == shop.ArcCW || mode == shop.ArcCCW {
			taken |= byArc
		}
	}
	for i := range b.letter {
		w := b.letter[i]
		switch {
		case w == nil:
		case !r.m.IncrementsUW.Value && (w.Letter == 'U' || w.Letter == 'W') && b.what[oneShot] != shop.Dwell:
			return r.stop(w.Span, UnknownWord, "if it is an increment here, say increments_u_w = true", "%s: %c is no word of this lathe", w, w.Letter)
		case taken.has(w.Letter):
		case corner.has(w.Letter) && (mode == shop.Feed || mode == shop.Rapid):
			return r.stop(w.Span, CornerWord, "write the corner or the arc as a block of its own", "%s with a straight move is a corner word, or belongs to an arc: corners are not read yet", w)
		default:
			return r.stop(w.Span, UnknownWord, "take it out, or say what takes it", "%s: nothing in this block is known to take %c", w, w.Letter)
		}
	}
	return true
}

// clash refuses a block in which two words take the axis words.
func (r *reader) clash(axis *rs274.Word, other string) bool {
	return r.stop(axis.Span, AxisClaim, "use two blocks", "%s and %s both take the axis words of this block", other, r.b.by[oneShot])
}

// modeOf returns the motion mode that b moves in.
func (r *reader) modeOf(b *block) shop.Purpose {
	if b.what[motionGroup] != "" {
		return b.what[motionGroup]
	}
	if b.by[cancelGroup] != nil {
		return ""
	}
	return r.mode
}

// after does what a control does behind the motion of the block.
func (r *reader) after() {
	b := &r.b
	if b.what[spindleGroup] == shop.SpindleStop {
		r.spin.Turning, r.spin.Word = false, ""
	}
	w := b.by[stopGroup]
	switch b.what[stopGroup] {
	case shop.ProgramEnd:
		r.t.Ended = true
	case shop.ReturnFromSub:
		r.t.Ended = true
		r.into.Note(w.Span, ProgramRepeats, "", "%s in a main program begins it anew: it was read once", w)
	}
}
