package shop

import (
	"slices"

	"taperwright/profiles/finding"
	"taperwright/profiles/source"
)

// fileKeys are the keys of a shop file.
var fileKeys = []source.Key{
	{Name: "unit", Type: `"mm" or "inch"`, Help: "unit of this file's own lengths and feeds; surface speeds are then m/min or ft/min"},
	{Name: "machine", Type: "table", Help: "what each word means on this lathe"},
	{Name: "tool", Type: "tables", Help: "one cutting edge each"},
	{Name: "hand_lathe", Type: "table", Help: "a lathe turned by hand"},
	{Name: "stock", Type: "table", Help: "raw material, to read a program without a part"},
}

// List is one table of a shop file and its keys.
type List struct {
	Table string // "machine.chuck"; "" for the file
	Keys  []source.Key
}

// Keys returns the tables of a shop file with their keys, as the reader takes
// them, for the schema.
func Keys() []List {
	words := make([]source.Key, 0, len(purposes()))
	for _, p := range purposes() {
		words = append(words, source.Key{Name: p, Type: "word or list of words", Help: "word for " + p})
	}
	return []List{
		{"", fileKeys},
		{"machine", keysOf(machineKeys)},
		{"machine.word", words},
		{"machine.control", keysOf(controlKeys)},
		{"machine.chuck", keysOf(chuckKeys)},
		{"machine.centre", keysOf(centreKeys)},
		{"tool", keysOf(toolKeys)},
		{"hand_lathe", keysOf(handKeys)},
		{"stock", keysOf(stockKeys)},
	}
}

// Read reads the root table of a shop file.
func Read(t *source.Table, into *finding.List) *Shop {
	unit := MM
	if w, ok := t.OneOf("unit", "mm", "inch"); ok && w == "inch" {
		unit = Inch
	}
	t.Only(fileKeys)
	s := ReadIn(t, unit, into)
	if in, ok := readTable(t, "stock"); ok {
		s.Stock = readStock(reader{unit, into}, in)
	}
	return s
}

// ReadIn reads [machine], [[tool]] and [hand_lathe] of t and nothing else: t
// may be a part file's root table, unit is the part's then. The Shop is never
// nil: what is missing takes the defaults of the starting column. What is
// wrong is a finding, and the value concerned counts as not given.
func ReadIn(t *source.Table, unit Unit, into *finding.List) *Shop {
	r := reader{unit, into}
	s := &Shop{Text: t.Span().Text}
	s.Machine, _ = Default(DefaultColumn)
	s.Machine.Lengths = unit
	if in, ok := readTable(t, "machine"); ok {
		s.Machine.Span = in.Span()
		s.Machine.take(r, in)
	}
	s.Machine.settle()
	s.Machine.judge(into)
	s.Tools = readTools(r, t, &s.Machine)
	if in, ok := readTable(t, "hand_lathe"); ok {
		s.Hand = readHand(r, in)
	}
	return s
}

// readTable is Table for a key that may be absent.
func readTable(t *source.Table, key string) (*source.Table, bool) {
	if !t.Has(key) {
		return nil, false
	}
	return t.Table(key)
}

// take reads the keys of [machine] that t has over what m holds.
func (m *Machine) take(r reader, t *source.Table) {
	readRows(r, t, machineKeys, m)
}

// judge adds findings on what contradicts itself across keys.
func (m *Machine) judge(into *finding.List) {
	m.judgeWords(into)
	if m.Travel.Given {
		low, high := m.Travel.Value[0], m.Travel.Value[1]
		for _, p := range []struct {
			name string
			at   Setting[Place]
		}{{"change", m.Change}, {"home", m.HomeAt}} {
			if v := p.at.Value; p.at.Given && (v.Z < low.Z || v.Z > high.Z || v.R < low.R || v.R > high.R) {
				into.Error(p.at.From, codeConflict, "both are in the frame of the program", "%s lies outside the travel", p.name)
			}
		}
	}
}

// readTools reads the [[tool]] of t.
func readTools(r reader, t *source.Table, m *Machine) []Tool {
	if !t.Has("tool") {
		return nil
	}
	var tools []Tool
	for _, in := range t.Tables("tool") {
		tool, ok := readTool(r, in, m)
		if !ok {
			continue
		}
		if i := slices.IndexFunc(tools, func(o Tool) bool { return o.Station == tool.Station && o.Offset == tool.Offset }); i >= 0 {
			r.into.Add(finding.Finding{Code: codeTwice, Span: in.ValueSpan("station"),
				Message: "two tools have station " + itoa(tool.Station) + " and offset " + itoa(tool.Offset),
				Help:    "give one of them another station or offset",
				Places:  []finding.Place{{Span: tools[i].Span, Message: "the other is here"}}})
			continue
		}
		tools = append(tools, tool)
	}
	return tools
}

var stockKeys = []row[Stock]{
	number("diameter", "diameter of the bar", diameter, func(s *Stock, v Setting[float64]) { s.Radius = v.Value }),
	number("length", "axial length", length, func(s *Stock, v Setting[float64]) { s.Length = v.Value }),
	number("front", "metal on the front face beyond Z0", extent, func(s *Stock, v Setting[float64]) { s.Front = v.Value }),
	number("bore", "diameter of an existing bore", diameter, func(s *Stock, v Setting[float64]) { s.Bore = v.Value }),
	number("bore_depth", "depth of the bore from the front; else through", length, func(s *Stock, v Setting[float64]) { s.BoreDepth = v.Value }),
}

// readStock reads [stock] of a shop file; nil when it is of no use.
func readStock(r reader, t *source.Table) *Stock {
	s := &Stock{Span: t.Span()}
	readRows(r, t, stockKeys, s)
	if !needs(t, "diameter") || !needs(t, "length") || s.Radius == 0 || s.Length == 0 {
		return nil
	}
	switch {
	case s.Bore >= s.Radius:
		t.Error("bore", codeConflict, "both are diameters", "the bore of the stock is not smaller than the stock")
		return nil
	case s.Front >= s.Length:
		t.Error("front", codeConflict, "front is a part of length", "the metal on the front face is not shorter than the stock")
		return nil
	case s.BoreDepth > 0 && s.Bore == 0:
		t.Error("bore_depth", codeConflict, "add bore = ..., its diameter", "the stock has a bore_depth but no bore")
		return nil
	case s.BoreDepth > s.Length:
		t.Error("bore_depth", codeConflict, "leave bore_depth out for a bore right through", "the bore is deeper than the stock is long")
		return nil
	}
	return s
}
