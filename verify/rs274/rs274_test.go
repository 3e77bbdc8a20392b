package rs274

import (
	"fmt"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"taperwright/profiles/finding"
)

// read parses s, walks over every place in the result and checks that printing
// is a fixed point. Every test goes through it.
func read(t testing.TB, s string) (*File, []finding.Finding) {
	t.Helper()
	var found finding.List
	f := Parse(finding.NewText("p.nc", []byte(s)), &found)
	places(t, f)
	for _, x := range found.Sorted() {
		require.NotEmpty(t, x.Message)
		require.GreaterOrEqual(t, x.Span.Start, 0)
		require.LessOrEqual(t, x.Span.Start, x.Span.End)
		require.LessOrEqual(t, x.Span.End, len(s), x.Message)
	}
	once := f.String()
	var dropped finding.List
	again := Parse(finding.NewText("p.nc", []byte(once)), &dropped)
	require.Equal(t, once, again.String(), "printing is no fixed point for %q", s)
	require.Equal(t, dump(f), dump(again), "printing and parsing changed the program %q", s)
	return f, found.Sorted()
}

// places asserts that each place is the very text of its thing.
func places(t testing.TB, f *File) {
	t.Helper()
	at := 0
	for i := range f.Blocks {
		b := &f.Blocks[i]
		require.Less(t, b.Span.Start, b.Span.End)
		require.LessOrEqual(t, at, b.Span.Start, "blocks in order")
		at = b.Span.End
		require.Equal(t, strings.Trim(b.Span.String(), " \t"), b.Span.String())
		require.NotContains(t, b.Span.String(), "\n")
		if b.Mark {
			require.Equal(t, byte('%'), b.Span.String()[0])
		}
		if b.Slash.Set {
			text := bare(b.Slash.Span.String())
			require.True(t, text == "/" && b.Slash.Switch == 0 || text == fmt.Sprintf("/%d", b.Slash.Switch), text)
			require.LessOrEqual(t, b.Slash.From, len(b.Words))
		}
		in := b.Span.Start
		for k := range b.Words {
			w := &b.Words[k]
			require.LessOrEqual(t, in, w.Span.Start, "words in order")
			in = w.Span.End
			require.LessOrEqual(t, in, b.Span.End)
			if w.Value == nil {
				require.Equal(t, w.String(), strings.ReplaceAll(bare(w.Span.String()), "+", ""))
			} else {
				// the tree is printed with more brackets than were written
				strip := strings.NewReplacer("[", "", "]", "", "+", "", " ", "")
				require.Equal(t, strip.Replace(w.String()), strip.Replace(bare(w.Span.String())))
				exprPlaces(t, w.Value, w.Span)
			}
		}
		for _, c := range b.Comments {
			text := c.Span.String()
			require.True(t, b.Mark || text[0] == ';' || text[0] == '(' && text[len(text)-1] == ')', text)
		}
	}
}

func exprPlaces(t testing.TB, e *Expr, in finding.Span) {
	t.Helper()
	require.LessOrEqual(t, in.Start, e.Span.Start)
	require.LessOrEqual(t, e.Span.End, in.End)
	require.Less(t, e.Span.Start, e.Span.End)
	if e.Op == "" {
		require.Equal(t, e.Number.String(), strings.Trim(bare(e.Span.String()), "[]+"))
	}
	for _, a := range e.Args {
		exprPlaces(t, a, e.Span)
	}
}

func bare(s string) string {
	return strings.ToUpper(strings.NewReplacer(" ", "", "\t", "").Replace(s))
}

// dump prints the tree without its places.
func dump(f *File) string {
	var s strings.Builder
	for i := range f.Blocks {
		b := &f.Blocks[i]
		fmt.Fprintf(&s, "%v %v %v/%d@%d", b.Mark, b.Fault, b.Slash.Set, b.Slash.Switch, b.Slash.From)
		for k := range b.Words {
			w := &b.Words[k]
			if w.Value == nil {
				fmt.Fprintf(&s, " %v%c%v", w.Comma, w.Letter, w.Number)
			} else {
				fmt.Fprintf(&s, " %v%c{%s}", w.Comma, w.Letter, w.Value)
			}
		}
		for _, c := range b.Comments {
			s.WriteString(" " + c.Span.String())
		}
		s.WriteByte('\n')
	}
	return s.String()
}

func TestPrint(t *testing.T) {
	for _, c := range []struct{ name, text, want string }{
		{"plain", "N10 G01 X42. Z-20.5 F0.25", "N10 G01 X42. Z-20.5 F0.25\n"},
		{"no blanks", "N2G36G01X20W-44", "N2 G36 G01 X20 W-44\n"},
		{"lower case", "n10 g21g18g40 g95", "N10 G21 G18 G40 G95\n"},
		{"blanks inside numbers (NISTIR 6556)", "g0x +0. 12 34y 7", "G0 X0.1234 Y7\n"},
		{"tabs", "\tG0\tX\t4\t2 .\t", "G0 X42.\n"},
		{"plus sign, leading point, trailing point", "X+.5 Z5.", "X.5 Z5.\n"},
		{"number and comment without a blank", "O0001(shaft)", "O0001 (shaft)\n"},
		{"comment in the middle", "G0(a)X1(b)Z2", "G0 (a) X1 (b) Z2\n"},
		{"comment with signs", "G0 X1 (#1=[2];3:4 Ä)", "G0 X1 (#1=[2];3:4 Ä)\n"},
		{"semicolon ends the block", "G28;\nT0101; (two);three\n;;;", "G28 ;\nT0101 ; (two);three\n;;;\n"},
		{"semicolon comment", "G0 X1 ; back", "G0 X1 ; back\n"},
		{"empty lines", "\n\n G0 X1\n \t\n", "G0 X1\n"},
		{"CR LF and CR", "G0 X1\r\nZ2\rZ3\r\n", "G0 X1\nZ2\nZ3\n"},
		{"byte order mark, control Z", "\ufeffG0 X1\n\x1a", "G0 X1\n"},
		{"marks", "%\nO1\nM30\n%\n", "%\nO1\nM30\n%\n"},
		{"number behind the mark", "%2000 ( x\nM30\n%", "%2000 ( x\nM30\n%\n"},
		{"mark behind comments opens", "(a)\n%\nM30\n%", "(a)\n%\nM30\n%\n"},
		{"mark behind words", "M30 (end) %", "M30 (end)\n%\n"},
		{"block delete", "/n20 t0101\n/2 n70 x44.\n/ 3 X1\nN10/G0X1\n/", "/N20 T0101\n/2 N70 X44.\n/3 X1\nN10 /G0 X1\n/\n"},
		{"slash in mid-block", "G0 X1 /Z2", "G0 X1 /Z2\n"},
		{"alignment number", ":100 G0", ":100 G0\n"},
		{"label alone", "N01;", "N01 ;\n"},
		{"corner words", "G1 X10,R2.5 ,c1", "G1 X10 ,R2.5 ,C1\n"},
		{"variables", "#1=25.\n#105 = #107 * TAN[#100]\nX[2.*#5] Z-#3 F0.1", "#1=25.\n#105=[#107*TAN[#100]]\nX[2.*#5] Z-#3 F0.1\n"},
		{"precedence", "#5=#2*SQRT[#1*#1-#4*#4]/#1", "#5=[[#2*SQRT[[#1*#1]-[#4*#4]]]/#1]\n"},
		{"power, mod, words", "#1=2**3 mod 2 + 1 and 1", "#1=[[[[2**3] MOD 2]+1] AND 1]\n"},
		{"atan", "X ATAN[1]/[2] Z[atan[1]/2]", "XATAN[1]/[2] Z[[ATAN[1]]/2]\n"},
		{"indirect", "##1=#[#2+1]", "##1=#[#2+1]\n"},
		{"signs", "X-[-#1] Z-[5]", "X-[-#1] Z[-5]\n"},
		{"flow", "IF[#3 LE 25.] GOTO10\nwhile [#1 gt 0] do1\nEND 1\nIF[#1 EQ 0] THEN #2=3", "IF[#3 LE 25.] GOTO10\nWHILE[#1 GT 0] DO1\nEND1\nIF[#1 EQ 0] THEN #2=3\n"},
		{"goto an expression", "GOTO[#1+1]\nGOTO[-SIN[1]]", "GOTO[#1+1]\nGOTO[-SIN[1]]\n"},
	} {
		t.Run(c.name, func(t *testing.T) {
			f, _ := read(t, c.text)
			assert.Equal(t, c.want, f.String())
			for i := range f.Blocks {
				assert.False(t, f.Blocks[i].Fault)
			}
		})
	}
}

func TestFaults(t *testing.T) {
	for _, c := range []struct {
		name, text string
		want       []string // code line:column-column, in order
	}{
		{"sound", "G0 X1\nM30", nil},
		{"two points", "G76 X23.05 F.1.5", []string{"bad-number 1:13-16"}},
		{"two points again", "X1.5.", []string{"bad-number 1:2-6"}},
		{"comma for a point", "G00 Z,15", []string{"bad-number 1:5-7"}},
		{"comma inside", "G00 Z1,5", []string{"bad-number 1:5-8"}},
		{"letter alone", "G1 X", []string{"bad-number 1:4-5"}},
		{"sign alone", "X-", []string{"bad-number 1:2-3"}},
		{"two signs", "X--5", []string{"bad-number 1:2-3"}},
		{"point alone", "X.", []string{"bad-number 1:2-3"}},
		{"number without a letter", "G1 X5-3", []string{"bad-number 1:6-8"}},
		{"fraction", "G1 X1/2", []string{"bad-number 1:6-8"}},
		{"fraction and a word", "G1 X1/2 Z5", []string{"bad-number 1:6-8"}},
		{"exponent reads as a word", "X1e3", nil},
		{"long number", "X1234567890123456789", []string{"bad-number 1:2-21"}},
		{"18 digits", "X123456789012345678", nil},
		{"bare text", "roughing pass", []string{"bare-text 1:1-14"}},
		{"two slashes", "G00 X26 Z2   // REPETITION", []string{"bare-text 1:14-27"}},
		{"open comment", "G0 (open\nG0 X1", []string{"open-comment 1:4-9"}},
		{"stray )", "G0 X1)", []string{"bad-character 1:6-7"}},
		{"nested", "(a (b) c)", []string{"nested-comment 1:4-5"}},
		{"nested, same end", "(a (b) G0", []string{"nested-comment 1:4-5"}},
		{"other signs", "G0 X1 é Z2\nX2 @", []string{"bad-character 1:7-8", "bad-character 2:4-5"}},
		{"comma alone", "G0 , 5", []string{"bad-character 1:4-5"}},
		{"second slash", "/N10 /G0", []string{"bad-character 1:6-7"}},
		{"slash of two digits", "/20 X1", []string{"bad-number 1:1-3"}},
		{"another language", "R1=5\nX=R1", []string{"bad-expression 1:3-4", "bad-expression 2:1-3"}},
		{"open bracket", "X[1+2", []string{"bad-expression 1:2-6"}},
		{"breaks off", "X[1+", []string{"bad-expression 1:5-5"}},
		{"bracket alone", "[1]", []string{"bad-expression 1:1-2"}},
		{"no variable number", "#=5", []string{"bad-expression 1:1-2"}},
		{"neither set nor used", "#5", []string{"bad-expression 1:1-3"}},
		{"deep", "X" + strings.Repeat("[", 100) + "1" + strings.Repeat("]", 100), []string{"bad-expression 1:67-68"}},
		{"all in one run", "G0 X,1\nZ1.1.\nhello\nG1 X1", []string{"bad-number 1:4-6", "bad-number 2:2-6", "bare-text 3:1-6"}},
		{"blank in a number", "S1 000 F 40", []string{"blank-in-number 1:2-7"}},
		{"behind the end", "M30\n%\nG0 X1\n", []string{"behind-end 3:1-2"}},
		{"empty", "", []string{"empty-program 1:1-1"}},
		{"comments only", "%\n(nothing)\n%", []string{"empty-program 1:1-1"}},
		{"zero byte", "G0 X1\x00", []string{"not-text 1:6-7"}},
		{"UTF-16", "\xff\xfeG\x000\x00", []string{"not-text 1:1-3"}},
		{"control characters", strings.Repeat("\x01", 101) + "G0", []string{"not-text 1:1-1"}},
	} {
		t.Run(c.name, func(t *testing.T) {
			_, found := read(t, c.text)
			var got []string
			for _, x := range found {
				got = append(got, fmt.Sprintf("%s %d:%d-%d", x.Code, x.Span.From().Line, x.Span.From().Column, x.Span.To().Column))
			}
			assert.Equal(t, c.want, got)
		})
	}
}

func TestFaultKeepsWhatStandsBefore(t *testing.T) {
	f, _ := read(t, "N5 G1 X2 Z,15 F3")
	require.Len(t, f.Blocks, 1)
	require.True(t, f.Blocks[0].Fault)
	require.Len(t, f.Blocks[0].Words, 3)
	assert.Equal(t, "N5 G1 X2 Z,15 F3\n", f.String())
}

func TestManyFaultsAreCounted(t *testing.T) {
	_, found := read(t, strings.Repeat("hello\n", 1000))
	require.Len(t, found, mostTold+1)
	last := found[mostTold]
	assert.Equal(t, MoreFaults, last.Code)
	assert.Equal(t, "990 more blocks with bare-text, the last here", last.Message)
	assert.Equal(t, 1000, last.Span.From().Line)
}

func TestDecimal(t *testing.T) {
	for _, c := range []struct {
		text  string
		want  Decimal
		float float64
		whole int
		ok    bool
	}{
		{"0", Decimal{Whole: 1}, 0, 0, true},
		{"-0", Decimal{Whole: 1, Neg: true}, 0, 0, true},
		{"0101", Decimal{Digits: 101, Whole: 4}, 101, 101, true},
		{"101", Decimal{Digits: 101, Whole: 3}, 101, 101, true},
		{"5.", Decimal{Digits: 5, Whole: 1, Point: true}, 5, 5, true},
		{"1.0", Decimal{Digits: 10, Scale: 1, Whole: 1, Point: true}, 1, 1, true},
		{".5", Decimal{Digits: 5, Scale: 1, Point: true}, 0.5, 0, false},
		{"-20.125", Decimal{Digits: 20125, Scale: 3, Whole: 2, Neg: true, Point: true}, -20.125, 0, false},
		{"0.083333", Decimal{Digits: 83333, Scale: 6, Whole: 1, Point: true}, 0.083333, 0, false},
		{"123456789012345678", Decimal{Digits: 123456789012345678, Whole: 18}, 123456789012345678, 0, false},
		{"0.000000000000000001", Decimal{Digits: 1, Scale: 18, Whole: 1, Point: true}, 1e-18, 0, false},
	} {
		f, found := read(t, "X"+c.text)
		require.Empty(t, found)
		d := f.Blocks[0].Words[0].Number
		assert.Equal(t, c.want, d, c.text)
		assert.Equal(t, c.text, d.String())
		assert.Equal(t, c.float, d.Float(), c.text)
		n, ok := d.Int()
		assert.Equal(t, c.ok, ok, c.text)
		assert.Equal(t, c.whole, n, c.text)
	}
	// exactly one rounding: 1.25 in = 31.75 mm, 0.1 in = 2.54 mm
	for text, want := range map[string]float64{"1.25": 31.75, "0.1": 2.54, "-.0787": -1.99898, "3.9370078": 99.99999812} {
		f, _ := read(t, "X"+text)
		assert.Equal(t, want, f.Blocks[0].Words[0].Number.Times(254, 1), text)
	}
}

func TestWordIs(t *testing.T) {
	f, _ := read(t, "G01 G1.0 G1.1 M1 ,C1 G[1]")
	w := f.Blocks[0].Words
	assert.True(t, w[0].Is('G', 1))
	assert.True(t, w[1].Is('G', 1))
	assert.False(t, w[2].Is('G', 1))
	assert.False(t, w[3].Is('G', 1))
	assert.False(t, w[4].Is('C', 1))
	assert.False(t, w[5].Is('G', 1))
}

// Every code has a page whose first line names it, and every page a code.
func TestPages(t *testing.T) {
	codes := []string{BadCharacter, BadExpression, BadNumber, BareText, BehindEnd, BlankInNumber, EmptyProgram, MoreFaults, NestedComment, NotText, OpenComment}
	for _, code := range codes {
		page, ok := finding.Page(code, Pages)
		require.True(t, ok, code)
		assert.Regexp(t, "^# "+code+": .+ \\((error|warning|note)\\)\n", page)
		assert.Contains(t, page, "```")
	}
	files, err := filepath.Glob("codes/*.md")
	require.NoError(t, err)
	assert.Len(t, files, len(codes))
}

func FuzzParse(f *testing.F) {
	for _, s := range []string{
		"%\nO1 (a)\nN10 G0 X42. Z-2;\n/2 M30\n%", "g0x +0. 12 34y 7", "#1=[2*#3]/SIN[4]\nIF[#1 LE 2] GOTO10", "X1/2", "(a (b) c)", "X,1",
		"X[ATAN[1]/[2]]", "X[[ATAN[1]]/[2]]", "%%", "G1 X10 ,R2 /3 Z1", "THEN WHILE[1]DO2", "X\x00", "N10\r/5", "X-[-[-1]]", "(\n%(", "#[#1]=-ABS[-1]",
	} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		_, found := read(t, s)
		if len(found) > 200 {
			t.Fatalf("%d findings", len(found))
		}
	})
}

func BenchmarkParse(b *testing.B) {
	var s strings.Builder
	for i := range 100_000 {
		fmt.Fprintf(&s, "N%d G1 X%d.%03d Z-%d.%03d F0.25\n", i+1, 40+i%20, i%1000, i%300, (i*7)%1000)
	}
	text := finding.NewText("p.nc", []byte(s.String()))
	b.SetBytes(int64(s.Len()))
	b.ReportAllocs()
	for b.Loop() {
		var found finding.List
		Parse(text, &found)
	}
	b.ReportMetric(float64(b.N)*100_000/b.Elapsed().Seconds(), "blocks/s")
}
