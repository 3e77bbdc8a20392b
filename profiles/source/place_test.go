package source

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"taperwright/profiles/finding"
)

func parse(t *testing.T, src string) (*Table, *finding.List) {
	t.Helper()
	found := &finding.List{}
	root, ok := Parse(finding.NewText("part.toml", []byte(src)), found)
	require.True(t, ok, "%v", found.Sorted())
	return root, found
}

// where prints a place as line:column, and the text there.
func where(s finding.Span) string {
	from := s.From()
	return string(rune('0'+from.Line/10)) + string(rune('0'+from.Line%10)) + ":" + string(rune('0'+from.Column/10)) + string(rune('0'+from.Column%10)) + " " + s.String()
}

const shaft = `title = "Pümpenwelle" # [not.a.header]
list = [ 1.50, # one, [two]
  -2, [ "a,b", { k = +3_0 } ] ]

[stock]
diameter = 65
gauge.from = 0x1F

[[outside]]
name = 'cone "one"'
gauge = { diameter = 44, tolerance = [-0.02, 0] }
[outside.more.deep]
x = true

 [[ outside ]]
"key with blank" = """
line [
= {"""
day = 2030-01-02
`

// Places of each kind, line and column counted by hand.
func TestPlaces(t *testing.T) {
	root, found := parse(t, "\ufeff"+shaft)
	assert.Equal(t, []string{"title", "list", "stock", "outside"}, root.Keys())
	assert.Equal(t, "the file", root.Name())

	title, ok := root.Text("title")
	require.True(t, ok)
	assert.Equal(t, "Pümpenwelle", title.Value)
	assert.Equal(t, `01:10 "Pümpenwelle"`, where(title.Span)) // the byte order mark is one code point

	list, ok := root.Value("list")
	require.True(t, ok)
	assert.Equal(t, "02:08 [ 1.50, # one, [two]\n  -2, [ \"a,b\", { k = +3_0 } ] ]", where(list.Span))
	assert.Equal(t, "02:10 1.50", where(list.List[0].Span))
	assert.Equal(t, Number{1.5, "1.50", false, list.List[0].Span}, list.List[0].Number)
	assert.Equal(t, Number{-2, "-2", true, list.List[1].Span}, list.List[1].Number)
	assert.Equal(t, "03:03 -2", where(list.List[1].Span))
	assert.Equal(t, `03:07 [ "a,b", { k = +3_0 } ]`, where(list.List[2].Span))
	in := list.List[2].List[1].Table
	assert.Equal(t, "03:16 { k = +3_0 }", where(in.Span()))
	assert.Equal(t, "list[3][2]", in.Name())
	k, ok := in.Number("k")
	require.True(t, ok)
	assert.Equal(t, 30.0, k.Value)
	assert.Equal(t, "03:22 +3_0", where(k.Span))
	assert.Equal(t, "+3_0", k.Digits)

	stock, ok := root.Table("stock")
	require.True(t, ok)
	assert.Equal(t, "05:01 [stock]", where(stock.Span()))
	assert.Equal(t, "05:02 stock", where(root.KeySpan("stock")))
	assert.Equal(t, "06:01 diameter", where(stock.KeySpan("diameter")))
	assert.Equal(t, "05:01 [stock]", where(stock.KeySpan("length")), "absent: the table")
	gauge, ok := stock.Table("gauge")
	require.True(t, ok)
	assert.Equal(t, "07:01 gauge", where(gauge.Span()))
	assert.Equal(t, "stock.gauge", gauge.Name())
	assert.Equal(t, "07:07 from", where(gauge.KeySpan("from")))
	assert.Equal(t, "07:14 0x1F", where(gauge.ValueSpan("from")))

	outside := root.Tables("outside")
	require.Len(t, outside, 2)
	assert.Equal(t, "09:01 [[outside]]", where(outside[0].Span()))
	assert.Equal(t, "15:02 [[ outside ]]", where(outside[1].Span()))
	assert.Equal(t, "outside[2]", outside[1].Name())
	tol, ok := outside[0].entries["gauge"].value.Table.Numbers("tolerance")
	require.True(t, ok)
	assert.Equal(t, "11:39 -0.02", where(tol[0].Span))
	assert.Equal(t, "11:46 0", where(tol[1].Span))
	more, _ := outside[0].Table("more")
	deep, ok := more.Table("deep")
	require.True(t, ok)
	assert.Equal(t, "12:01 [outside.more.deep]", where(deep.Span()))
	assert.Equal(t, "12:10 more", where(more.Span()), "implied: the part of the key")
	assert.Equal(t, "outside[1].more.deep", deep.Name())
	assert.Equal(t, "16:01 \"key with blank\"", where(outside[1].KeySpan("key with blank")))
	assert.Equal(t, "16:20 \"\"\"\nline [\n= {\"\"\"", where(outside[1].ValueSpan("key with blank")))
	assert.Equal(t, "19:07 2030-01-02", where(outside[1].ValueSpan("day")))
	assert.Zero(t, found.Len())
}

// findings prints findings as "line:column code: message | help".
func findings(l *finding.List) (out []string) {
	for _, f := range l.Sorted() {
		s := where(f.Span)
		out = append(out, s[:5]+" "+f.Code+": "+f.Message+" | "+f.Help)
	}
	return out
}

func TestTypedReading(t *testing.T) {
	root, found := parse(t, `a = "70"
b = 1.5
c = [1, "x"]
d = nan
e = 0x10
f = 9007199254740993
g = 1e-400
h = { x = -inf }
i = [1, [2, inf]]
j = 12
[k]
[[l]]
[[l]]
`)
	h, _ := root.Table("h")
	_, absent := root.Number("absent")
	assert.False(t, absent)
	for range 2 { // the second asking adds nothing
		_, ok := root.Number("a")
		assert.False(t, ok)
		_, ok = root.Whole("b")
		assert.False(t, ok)
		_, ok = root.Text("b")
		assert.False(t, ok)
		_, ok = root.Numbers("c")
		assert.False(t, ok)
		_, ok = root.Number("d")
		assert.False(t, ok)
		_, ok = root.Number("e")
		assert.False(t, ok)
		_, ok = root.Number("f")
		assert.False(t, ok)
		_, ok = root.Value("g")
		assert.False(t, ok)
		_, ok = h.Value("x")
		assert.False(t, ok)
		_, ok = root.Value("i")
		assert.False(t, ok)
		_, ok = root.Texts("j")
		assert.False(t, ok)
		assert.Empty(t, root.Tables("k"))
		_, ok = root.Table("l")
		assert.False(t, ok)
	}
	assert.Equal(t, []string{
		`01:05 wrong-type: a must be a number, not text | write 70 without quotes`,
		`02:05 wrong-type: b must be a whole number, not 1.5 | write it without a point`,
		`03:09 wrong-type: c[2] must be a number, not text | `,
		`04:05 not-finite: d cannot be nan | write a number`,
		`05:05 not-decimal: e = 0x10 is not decimal | write it in decimal digits`,
		`06:05 number-range: f = 9007199254740993 has more digits than can be kept | no figure here needs more than 15 digits`,
		`07:05 number-range: g = 1e-400 is too near 0 to be kept | write 0, or a number that is meant`,
		`08:11 not-finite: h.x cannot be -inf | write a number`,
		`09:13 not-finite: i[2][2] cannot be inf | write a number`,
		`10:05 wrong-type: j must be a list, not a number | write it in brackets: [12]`,
		`11:01 wrong-type: k must be a list of tables, not one table | write [[k]]: there may be several`,
		`12:01 wrong-type: l must be a table, not a list | write it once, in single brackets`,
	}, findings(found))
}

func TestWrongTypeInsideAnArrayOfTablesIsOnItsOwnLine(t *testing.T) {
	root, found := parse(t, "[[o]]\nx = 1\n[[o]]\nx = \"1\"\n[[o]]\nx = 3\n")
	for _, o := range root.Tables("o") {
		o.Number("x")
	}
	assert.Equal(t, []string{`04:05 wrong-type: o[2].x must be a number, not text | write 1 without quotes`}, findings(found))
}

func TestOnly(t *testing.T) {
	root, found := parse(t, "[[outside]]\nkind = 1\nlenght = 2\nLength = 3\nxyzzy = 4\nread = 5\n")
	o := root.Tables("outside")[0]
	o.Number("read")
	o.Only([]Key{{Name: "kind"}, {Name: "length"}})
	root.Only(nil)
	assert.Equal(t, []string{
		`03:01 unknown-key: outside[1] has no key "lenght" | did you mean "length"?`,
		`04:01 case-key: outside[1].Length must be written "length" | write length`,
		`05:01 unknown-key: outside[1] has no key "xyzzy" | it may have kind, length`,
	}, findings(found))
}

func TestOneOf(t *testing.T) {
	root, found := parse(t, "a = \"frnt\"\nb = \"Back\"\nc = \"back\"\nd = 7\n")
	for key, want := range map[string]string{"a": "", "b": "", "c": "back", "d": "", "none": ""} {
		got, ok := root.OneOf(key, "front", "back")
		assert.Equal(t, want, got, key)
		assert.Equal(t, want != "", ok, key)
	}
	assert.Equal(t, []string{
		`01:05 unknown-value: a cannot be "frnt" | did you mean "front"? one of "front", "back"`,
		`02:05 unknown-value: b cannot be "Back" | did you mean "back"? one of "front", "back"`,
		`04:05 wrong-type: d must be text, not a number | write "7" in quotes`,
	}, findings(found))
}

// What people write instead of TOML, and what they read then.
func TestSyntaxInPlainWords(t *testing.T) {
	for src, want := range map[string]string{
		"a = .5":                        `01:05 syntax: a number needs a digit before its point | write 0.5`,
		"a = 5.":                        `01:05 syntax: a number needs a digit behind its point | write 5.0`,
		"a = 1,5":                       `01:05 syntax: a comma is not a decimal point | write 1.5`,
		"a = -05":                       `01:05 syntax: a number cannot begin with 0 | write -5`,
		"b = 1\na = 1:10 # rate":        `02:05 syntax: a ratio is a text | write "1:10" in quotes`,
		"a = 7/24":                      `01:05 syntax: a ratio is a text | write "7/24" in quotes`,
		"a = 1°26'":                     `01:05 syntax: an angle in degrees, minutes and seconds is a text | write it in single quotes: '1°26''`,
		"a = 70 mm":                     `01:05 syntax: a number stands alone | write 70; units have keys of their own`,
		"a = mm":                        `01:05 syntax: a text stands in quotes | write "mm"`,
		"a = “mm”":                      `01:05 syntax: these are not the quotes of a text | write "mm"`,
		"a = True":                      `01:05 syntax: true and false have small letters | write true or false`,
		"a = \"open\nb = 1":             `01:05 syntax: the text has no end | close it with a quote`,
		"a = ":                          `01:05 syntax: the value is missing | write one behind =`,
		"  lenght 70":                   `01:03 syntax: this line is neither a key with its value nor a header | write key = value, [name] or [[name]]; # begins a remark`,
		"a = 1\n[a]\nb = 2":             `02:02 duplicate-key: a is written twice | remove one of the two`,
		"[[o]]\nx = 1\ny = 2\nx = 3":    `04:01 duplicate-key: o[1].x is written twice | remove one of the two`,
		"g = { x = 1 }\n[g.y]":          `02:02 duplicate-key: g is complete in its braces: nothing can be added | remove one of the two`,
		"g = { x = 1, x = 2 }":          `01:14 duplicate-key: g.x is written twice | remove one of the two`,
		"a = 1\x00":                     `01:06 not-utf8: the file is not text in UTF-8 | save it as plain text in UTF-8`,
		"a = \"\xe9\"":                  `01:06 not-utf8: the file is not text in UTF-8 | save it as plain text in UTF-8`,
		"\xff\xfea\x00":                 `01:01 not-utf8: the file is not text in UTF-8 | save it as plain text in UTF-8`,
		"x = 99999999999999999999":      `01:05 syntax: `,
		"[a\nb = 1":                     `01:03 syntax: `,
		"a = [1, 2\n\nb = 3":            `03:01 syntax: `,
		"a = { x = 1\n[b]\n[[c]]\nd= 1": `02:01 syntax: `,
	} {
		found := &finding.List{}
		_, ok := Parse(finding.NewText("p.toml", []byte(src)), found)
		assert.False(t, ok, src)
		require.Equal(t, 1, found.Len(), src)
		assert.Contains(t, findings(found)[0], want, src)
	}
}

func TestDuplicateNamesTheFirst(t *testing.T) {
	found := &finding.List{}
	_, ok := Parse(finding.NewText("p.toml", []byte("a.b = 1\n[c]\n[a]\n")), found)
	require.False(t, ok)
	f := found.Sorted()[0]
	require.Len(t, f.Places, 1)
	assert.Equal(t, "03:02 a", where(f.Span))
	assert.Equal(t, "01:01 a", where(f.Places[0].Span))
}
