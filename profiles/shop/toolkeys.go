package shop

import (
	"strconv"

	"taperwright/profiles/source"
)

func itoa(n int) string { return strconv.Itoa(n) }

// written is a [[tool]] as it stands in the file: lengths mm, radii where the
// key says diameter, angles degrees.
type written struct {
	station, offset                           Setting[int]
	purpose, kind, side, hand, reference      Setting[string]
	insert, holder, spindle                   Setting[string]
	nose, edge, included, cutting, minor      Setting[float64]
	shank, bar, reach, width                  Setting[float64]
	speed, rpm, feed, depth, leastDepth, skin Setting[float64]
	tip                                       Setting[[2]int]
	wear                                      Setting[Place]
}

// toolKeys are the keys of [[tool]].
var toolKeys = []row[written]{
	whole("station", "station of the tool post: 1 in T0101", func(w *written) *Setting[int] { return &w.station }, 1, 999),
	whole("offset", "number of the offset; else that of the station", func(w *written) *Setting[int] { return &w.offset }, 1, 999),
	choice("purpose", "what the planner uses it for; both when not given", func(w *written) *Setting[string] { return &w.purpose }, "rough", "finish", "both"),
	choice("kind", "turn when not given", func(w *written) *Setting[string] { return &w.kind }, "turn", "groove", "thread", "drill"),
	choice("side", "side of the work; outside when not given", func(w *written) *Setting[string] { return &w.side }, "outside", "inside"),
	text("insert", "designation of the insert, ISO 1832: \"CNMG120408\"", func(w *written) *Setting[string] { return &w.insert }),
	text("holder", "designation of the holder, ISO 5608: \"PCLNR2525M12\", or of the bar: \"S25R-PCLNR12\"", func(w *written) *Setting[string] { return &w.holder }),
	number("nose_radius", "nose radius, when it is not the insert's nominal one or there is no designation", small, func(w *written, v Setting[float64]) { w.nose = v }),
	number("edge_length", "length of main and minor edge from the sharp corner", length, func(w *written, v Setting[float64]) { w.edge = v }),
	number("included_angle", "angle of the insert's corner, deg", degrees, func(w *written, v Setting[float64]) { w.included = v }),
	number("cutting_edge_angle", "angle of the main edge from the direction of feed, deg", degrees, func(w *written, v Setting[float64]) { w.cutting = v }),
	number("minor_edge_angle", "angle of the minor edge from the other direction, deg", degrees, func(w *written, v Setting[float64]) { w.minor = v }),
	choice("hand", "right cuts toward the chuck; right when nothing says otherwise", func(w *written) *Setting[string] { return &w.hand }, "right", "left", "neutral"),
	number("shank", "width of a square shank", length, func(w *written, v Setting[float64]) { w.shank = v }),
	number("bar_diameter", "diameter of a bar that works inside", diameter, func(w *written, v Setting[float64]) { w.bar = v }),
	number("reach", "length from the tip that may enter the work", length, func(w *written, v Setting[float64]) { w.reach = v }),
	number("width", "width of a grooving blade", small, func(w *written, v Setting[float64]) { w.width = v }),
	choice("reference", "edge of a grooving blade that is programmed: front is away from the chuck", func(w *written) *Setting[string] { return &w.reference }, "front", "back"),
	{Key: source.Key{Name: "tip", Type: "{ x, z } of \"+\", \"-\" or \"0\"; \"centre\"; a number", Help: "the programmed point, seen from the nose centre: x + away from the axis, z + away from the chuck; \"0\" level with the centre"}, read: readTip},
	{Key: source.Key{Name: "spindle", Type: "word", Help: "the word that turns the spindle the cutting way for this tool; else that of the machine"}, read: func(_ reader, t *source.Table, w *written) {
		if v, ok := readWord(t, "spindle"); ok {
			w.spindle = given(t, "spindle", v)
		}
	}},
	number("surface_speed", "surface speed", surface, func(w *written, v Setting[float64]) { w.speed = v }),
	number("rpm", "spindle speed, in place of a surface speed", turns, func(w *written, v Setting[float64]) { w.rpm = v }),
	number("feed", "feed per revolution", perRev, func(w *written, v Setting[float64]) { w.feed = v }),
	number("depth", "greatest depth of cut, on radius", small, func(w *written, v Setting[float64]) { w.depth = v }),
	number("least_depth", "least depth of cut, on radius; 0.3 mm", skinDeep, func(w *written, v Setting[float64]) { w.leastDepth = v }),
	number("skin", "metal left for finishing, normal to the contour; 0.25 mm", skinDeep, func(w *written, v Setting[float64]) { w.skin = v }),
	spot("wear", "what the control's offset adds for this tool; 0", func(w *written) *Setting[Place] { return &w.wear }),
}

// readTip takes the programmed point by signs, by name or by a number of the
// table that prints the signs.
func readTip(r reader, t *source.Table, w *written) {
	v, ok := t.Value("tip")
	if !ok {
		return
	}
	const help = "write tip = { x = \"-\", z = \"-\" } for a right-hand outside tool, or tip = \"centre\""
	switch v.Kind {
	case source.KindText:
		if v.Text.Value == "centre" {
			w.tip = given(t, "tip", [2]int{0, 0})
			return
		}
	case source.KindNumber:
		key := v.Number.Digits
		if known("tip", key) {
			w.tip = given(t, "tip", [2]int{sign(look("tip", key, 0)), sign(look("tip", key, 1))})
			return
		}
		t.Error("tip", codeTip, "0 to 9, or better the signs: "+help, "there is no tip number %s", key)
		return
	case source.KindTable:
		x, okX := v.Table.OneOf("x", "+", "-", "0")
		z, okZ := v.Table.OneOf("z", "+", "-", "0")
		haveX, haveZ := needs(v.Table, "x"), needs(v.Table, "z")
		v.Table.Only([]source.Key{{Name: "x"}, {Name: "z"}})
		if okX && okZ && haveX && haveZ {
			w.tip = given(t, "tip", [2]int{sign(x), sign(z)})
		}
		return
	}
	t.Error("tip", codeTip, help, "%s is not a programmed point", full(t, "tip"))
}

func sign(s string) int {
	switch s {
	case "+":
		return 1
	case "-":
		return -1
	}
	return 0
}
