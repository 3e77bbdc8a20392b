package shop

import (
	"strconv"
	"strings"

	"taperwright/profiles/source"
)

// HandLathe is a lathe turned by hand: lengths mm. What is not given is not
// known.
type HandLathe struct {
	RestTravel       Setting[float64] // of the compound rest
	AttachmentLength Setting[float64] // of the taper attachment
	AttachmentRate   Setting[float64] // greatest rate of taper it sets, on diameter per length
	SetOver          Setting[float64] // greatest set-over of the tailstock
	CrossDial        Setting[string]  // the cross slide's dial reads "diameter" or "radius"
	CrossDivision    Setting[float64] // one division of it, as it reads
	RestDivision     Setting[float64] // one division of the compound rest's dial: travel
	Backlash         Setting[float64] // of the cross slide, on radius
}

var handKeys = []row[HandLathe]{
	number("rest_travel", "travel of the compound rest", length, func(h *HandLathe, v Setting[float64]) { h.RestTravel = v }),
	number("attachment_length", "length that the taper attachment turns", length, func(h *HandLathe, v Setting[float64]) { h.AttachmentLength = v }),
	{Key: source.Key{Name: "attachment_rate", Type: "ratio", Help: "greatest rate of taper of the attachment, on diameter: \"1:4\""}, read: readRate},
	number("set_over", "greatest set-over of the tailstock", length, func(h *HandLathe, v Setting[float64]) { h.SetOver = v }),
	choice("cross_dial", "the cross slide's dial reads diameter or radius", func(h *HandLathe) *Setting[string] { return &h.CrossDial }, "diameter", "radius"),
	number("cross_division", "one division of the cross slide's dial, as it reads", fine, func(h *HandLathe, v Setting[float64]) { h.CrossDivision = v }),
	number("rest_division", "one division of the compound rest's dial", fine, func(h *HandLathe, v Setting[float64]) { h.RestDivision = v }),
	number("backlash", "backlash of the cross slide, on radius", small, func(h *HandLathe, v Setting[float64]) { h.Backlash = v }),
}

func readHand(r reader, t *source.Table) *HandLathe {
	h := &HandLathe{}
	readRows(r, t, handKeys, h)
	return h
}

// readRate takes a rate of taper on diameter written "1:4".
func readRate(_ reader, t *source.Table, h *HandLathe) {
	v, ok := t.Text("attachment_rate")
	if !ok {
		return
	}
	a, b, _ := strings.Cut(v.Value, ":")
	over, err1 := strconv.ParseFloat(strings.TrimSpace(a), 64)
	under, err2 := strconv.ParseFloat(strings.TrimSpace(b), 64)
	if err1 != nil || err2 != nil || !(over > 0 && under > 0 && over <= 2*under && under < 1e6) {
		t.Error("attachment_rate", codeSize, "write it on diameter, as \"1:4\"", "%s = %q is not a rate of taper", full(t, "attachment_rate"), v.Value)
		return
	}
	h.AttachmentRate = given(t, "attachment_rate", over/under)
}
