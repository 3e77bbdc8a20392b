package profiles

import (
	"crypto/sha256"
	"encoding/hex"
	"slices"
	"strconv"
	"strings"

	"taperwright/profiles/finding"
	"taperwright/profiles/source"
)

// digestOf returns a digest of the values of tables: the same whatever their
// layout, order of keys, comments, or way of writing a number. 16 hex digits:
// it tells two files apart, it is no seal.
func digestOf(tables ...*source.Table) string {
	h := sha256.New()
	for _, t := range tables {
		var b strings.Builder
		writeTable(&b, t)
		b.WriteByte('\n')
		h.Write([]byte(b.String()))
	}
	return hex.EncodeToString(h.Sum(nil))[:16]
}

func writeTable(b *strings.Builder, t *source.Table) {
	keys := t.Keys()
	slices.Sort(keys)
	b.WriteByte('{')
	for _, k := range keys {
		v, ok := t.Value(k)
		if !ok {
			continue
		}
		b.WriteString(strconv.Quote(k))
		b.WriteByte('=')
		writeValue(b, v)
		b.WriteByte(';')
	}
	b.WriteByte('}')
}

func writeValue(b *strings.Builder, v source.Value) {
	switch v.Kind {
	case source.KindText:
		b.WriteString(strconv.Quote(v.Text.Value))
	case source.KindNumber:
		b.WriteString(strconv.FormatFloat(v.Number.Value, 'g', -1, 64))
	case source.KindBool:
		b.WriteString(strconv.FormatBool(v.Bool.Value))
	case source.KindList:
		b.WriteByte('[')
		for _, w := range v.List {
			writeValue(b, w)
			b.WriteByte(',')
		}
		b.WriteByte(']')
	case source.KindTable:
		writeTable(b, v.Table)
	default:
		b.WriteString(v.Span.String())
	}
}

// place writes where an assumption comes from.
func place(s finding.Span) string {
	if p := s.Place(); p != "" {
		return p
	}
	return "default"
}
