package shop

import (
	"fmt"
	"strconv"
	"strings"

	"taperwright/profiles/geom"
)

// Holder is what a holder's designation says, by ISO 5608 (square shanks) or
// ISO 6261 (bars): lengths mm, angles radians.
type Holder struct {
	Shape     byte    // letter of the insert it takes
	Clearance byte    // letter of the insert it takes
	Style     byte    // letter
	Angle     float64 // cutting edge angle, from the direction of feed
	Faces     bool    // the style feeds along the other direction: its angle says nothing of turning with this shank
	Hand      string  // "right", "left" or "neutral"
	Shank     float64 // width of a square shank; 0: a bar
	Bar       float64 // diameter of a bar; 0: a square shank
	Length    float64 // 0: special
	EdgeCode  int     // of the insert it takes; 0: not said
}

// HolderOf reads a designation such as "PCLNR2525M12" or, for a bar,
// "S25R-PCLNR12". The error says what in it is not understood.
//
// Source: ISO 5608 and ISO 6261, by the tables in testdata/values/inserts.toml;
// the order of the parts of a bar's designation is from memory.
func HolderOf(code string) (Holder, error) {
	s := strings.ToUpper(strings.NewReplacer(" ", "", "-", "").Replace(code))
	var h Holder
	bar := len(s) >= 4 && known("bar", s[:1]) && digits(s[1:3])
	if bar {
		d, _ := strconv.Atoi(s[1:3])
		if !known("length", s[3:4]) || d == 0 {
			return h, fmt.Errorf("a bar begins with kind, diameter and length, such as S25R")
		}
		h.Bar = float64(d)
		h.Length, _ = strconv.ParseFloat(look("length", s[3:4], 0), 64)
		s = s[4:]
	}
	if len(s) < 5 || strings.Trim(s[:5], "ABCDEFGHIJKLMNOPQRSTUVWXYZ") != "" {
		return h, fmt.Errorf("it has not the five letters of clamp, shape, style, clearance and hand")
	}
	h.Shape, h.Style, h.Clearance = s[1], s[2], s[3]
	h.Hand = map[byte]string{'R': "right", 'L': "left", 'N': "neutral"}[s[4]]
	switch {
	case !known("clamp", s[:1]):
		return h, fmt.Errorf("no clamp has the letter %c", s[0])
	case !known("shape", s[1:2]):
		return h, fmt.Errorf("no insert shape has the letter %c", s[1])
	case !known("style", s[2:3]):
		return h, fmt.Errorf("no style has the letter %c", s[2])
	case !known("clearance", s[3:4]):
		return h, fmt.Errorf("no clearance has the letter %c", s[3])
	case h.Hand == "":
		return h, fmt.Errorf("the hand is R, L or N, not %c", s[4])
	}
	deg, _ := strconv.ParseFloat(look("style", s[2:3], 0), 64)
	h.Angle = geom.Radians(deg)
	along := map[bool]string{false: "side", true: "end"}[bar]
	h.Faces = look("style", s[2:3], 1) != along && look("style", s[2:3], 1) != "both"
	s = s[5:]
	if !bar {
		if len(s) < 5 || !digits(s[:4]) || !known("length", s[4:5]) {
			return h, fmt.Errorf("the hand is not followed by shank height, width and length, such as 2525M")
		}
		w, _ := strconv.Atoi(s[2:4])
		if w == 0 {
			return h, fmt.Errorf("the shank is 0 mm wide")
		}
		h.Shank = float64(w)
		h.Length, _ = strconv.ParseFloat(look("length", s[4:5], 0), 64)
		s = s[5:]
	}
	switch {
	case len(s) >= 2 && digits(s[:2]):
		h.EdgeCode, _ = strconv.Atoi(s[:2])
	case s != "":
		return h, fmt.Errorf("the two digits of the insert's size do not follow")
	}
	return h, nil
}

// takes returns why the holder does not take the insert, or "".
func (h Holder) takes(in Insert) string {
	switch {
	case h.Shape != in.Shape:
		return fmt.Sprintf("the holder takes inserts of shape %c, this one is %c", h.Shape, in.Shape)
	case h.Clearance != in.Clearance:
		return fmt.Sprintf("the holder takes inserts with clearance %c, this one has %c", h.Clearance, in.Clearance)
	case h.EdgeCode > 0 && in.EdgeCode > 0 && h.EdgeCode != in.EdgeCode:
		return fmt.Sprintf("the holder takes inserts of size %02d, this one is %02d", h.EdgeCode, in.EdgeCode)
	case h.EdgeCode > 0 && in.Inch && in.Edge > 0 && h.EdgeCode != wholePart(in.Edge, 2):
		return fmt.Sprintf("the holder takes inserts of size %02d, this one has an edge of %s mm", h.EdgeCode, geom.Fixed(in.Edge, 2))
	}
	return ""
}
