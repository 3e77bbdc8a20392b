package source

import (
	"time"

	"taperwright/profiles/finding"
)

// fill puts the values that one library read into the places that the other
// found. Where the two do not hold the same things it returns the place and
// false: then neither is believed.
func fill(t *Table, values map[string]any) (finding.Span, bool) {
	if len(values) != len(t.keys) {
		return t.span, false
	}
	for _, k := range t.keys {
		v, ok := values[k]
		e := t.entries[k]
		if !ok {
			return e.key, false
		}
		if at, ok := fillValue(&e.value, v); !ok {
			return at, false
		}
	}
	return finding.Span{}, true
}

func fillValue(v *Value, from any) (finding.Span, bool) {
	at := v.Span
	switch x := from.(type) {
	case string:
		v.Text = Text{Value: x, Span: at}
		return at, v.Kind == KindText
	case bool:
		v.Bool = Bool{Value: x, Span: at}
		return at, v.Kind == KindBool
	case int64:
		v.Number = Number{Value: float64(x), Digits: at.String(), Whole: true, Span: at}
		return at, v.Kind == KindNumber
	case float64:
		v.Number = Number{Value: x, Digits: at.String(), Span: at}
		return at, v.Kind == KindNumber
	case time.Time:
		return at, v.Kind == KindDate
	case map[string]any:
		if v.Kind != KindTable {
			return at, false
		}
		return fill(v.Table, x)
	case []map[string]any:
		return fillList(v, len(x), func(i int) any { return x[i] })
	case []any:
		return fillList(v, len(x), func(i int) any { return x[i] })
	}
	return at, false
}

func fillList(v *Value, n int, item func(int) any) (finding.Span, bool) {
	if v.Kind != KindList || len(v.List) != n {
		return v.Span, false
	}
	for i := range v.List {
		if at, ok := fillValue(&v.List[i], item(i)); !ok {
			return at, false
		}
	}
	return v.Span, true
}
