package shop

// Default returns the lathe of a starting column with nothing given, and
// whether there is such a column. The lengths of its Assume are mm.
func Default(name string) (Machine, bool) {
	if _, all := tables(); all[name].words == nil {
		return Machine{}, false
	}
	m := Machine{Column: Setting[string]{Value: name}}
	m.settle()
	return m, true
}

// settle gives every setting that is not given what the column, or another
// setting, says of it, and makes the words anew.
func (m *Machine) settle() {
	_, all := tables()
	c := all[m.Column.Value]
	for _, s := range c.settings {
		for i := range machineKeys {
			if r := &machineKeys[i]; r.Name == s.key {
				r.fill(m, s.value)
			}
		}
	}
	if !m.Unit.Given {
		m.Unit.Value = m.Lengths
	}
	if !m.Decimals.Given { // definitions: 3 in mm, 4 in inch
		m.Decimals.Value = 3
		if m.Unit.Value == Inch {
			m.Decimals.Value = 4
		}
	}
	if !m.ArcTolerance.Given {
		m.ArcTolerance.Value = m.ArcToleranceIn(m.Unit.Value)
	}
	m.index(c)
}
