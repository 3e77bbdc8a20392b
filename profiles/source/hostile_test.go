package source

import (
	"fmt"
	"math/rand/v2"
	"runtime"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"taperwright/profiles/finding"
)

// Texts made to end a reader, or to make it slow or fat. Each is refused, or
// read, in far less time and memory than a person notices; the bounds are ten
// times what a slow machine needs, so that only another order of growth fails.
func TestHostile(t *testing.T) {
	many := func(n int, format string) string {
		var b strings.Builder
		for i := range n {
			fmt.Fprintf(&b, format, i)
		}
		return b.String()
	}
	deep := "a" + strings.Repeat(".b", 7)
	for name, c := range map[string]struct{ src, code string }{
		"brackets":                 {strings.Repeat("[", 10_000_000), TooLarge},
		"brackets below the limit": {"a = " + strings.Repeat("[", 900_000), TooDeep},
		"headers of brackets":      {strings.Repeat("[", 900_000), TooDeep},
		"inline tables":            {"a = " + strings.Repeat("{a = ", 100_000), TooDeep},
		"closed inline tables":     {"a = " + strings.Repeat("{a = ", 17) + "1" + strings.Repeat("}", 17), TooDeep},
		"sixteen levels":           {"a = " + strings.Repeat("{a = ", 16) + "1" + strings.Repeat("}", 16), ""},
		"dotted key":               {strings.Repeat("a.", 20_000) + "a = 1", LongKey},
		"dotted quoted key":        {strings.Repeat(`"a" . `, 20_000) + "a = 1", LongKey},
		"dotted header":            {"[" + strings.Repeat("a.", 20_000) + "a]", LongKey},
		"dotted key inline":        {"a = { b = 1, " + strings.Repeat("a.", 9) + "a = 1 }", LongKey},
		"nine parts":               {deep + ".c = 1", LongKey},
		"eight parts":              {deep + " = 1", ""},
		"long key":                 {strings.Repeat("k", 257) + " = 1", LongKey},
		"long quoted key":          {`"` + strings.Repeat("k", 600_000) + `" = 1`, LongKey},
		"long header":              {"[" + strings.Repeat("k", 500_000) + "]\n" + many(9_000, "k%d=1\n"), LongKey},
		"keys":                     {many(10_001, "k%d=1\n"), TooManyKeys},
		"keys inline":              {"a = {" + many(10_001, "k%d=1,") + "}", TooManyKeys},
		"headers":                  {many(10_001, "[[a]]#%d\n"), TooManyKeys},
		"as many keys as allowed":  {many(10_000, "k%d=1\n"), ""},
		"tables":                   {many(10_000, "[a%d]\n"), ""},
		"arrays of tables":         {many(5_000, "[[a]]\nk=%d\n"), ""},
		"deep headers":             {many(9_000, "["+strings.Repeat("kkkkkkk.", 7)+"k%d]\n"), ""},
		"deep keys":                {many(9_000, strings.Repeat("kkkkkkk.", 7)+"k%d=1\n"), ""},
		"long paths":               {"[" + strings.Repeat("k", 250) + "]\n" + strings.Repeat("i", 240) + "={" + many(9_000, "k%d=1,") + "}", ""},
		"list":                     {"a = [" + strings.Repeat("1,", 490_000) + "]", TooManyKeys},
		"longest paths":            {strings.Repeat(strings.Repeat("k", 250)+"={", 15) + many(9_000, "k%d=1,") + strings.Repeat("}", 15), ""},
		"allowed list":             {"a = [" + strings.Repeat("1,", 20_000) + "]", ""},
		"lists":                    {"a = [" + strings.Repeat("[],", 330_000) + "]", TooManyKeys},
		"one text":                 {"a = \"\"\"" + strings.Repeat("x\n", 490_000) + "\"\"\"", ""},
		"escapes":                  {"a = \"" + strings.Repeat(`\u00e9`, 160_000) + "\"", ""},
		"open texts":               {strings.Repeat("a = \"\\u0041\n", 80_000), TooManyKeys},
		"comments":                 {strings.Repeat("#\n", 490_000), ""},
		"digits":                   {"a = " + strings.Repeat("1", 900_000), Syntax},
		"fraction":                 {"a = 0." + strings.Repeat("1", 900_000), ""},
		"exponent":                 {"a = 1e" + strings.Repeat("9", 900_000), Syntax},
		"equals":                   {strings.Repeat("=", 900_000), TooManyKeys},
		"quotes":                   {strings.Repeat("'", 900_000), Syntax},
		"empty":                    {"", ""},
	} {
		var before, after runtime.MemStats
		runtime.ReadMemStats(&before)
		start := time.Now()
		found := &finding.List{}
		_, ok := Parse(finding.NewText("p.toml", []byte(c.src)), found)
		took := time.Since(start)
		runtime.ReadMemStats(&after)
		mb := float64(after.TotalAlloc-before.TotalAlloc) / 1e6
		t.Logf("%-26s %8.1f ms %7.1f MB", name, float64(took.Microseconds())/1000, mb)
		assert.Less(t, took, 10*time.Second, name)
		assert.Less(t, mb, 400.0, name)
		if assert.Equal(t, c.code == "", ok, "%s: %v", name, codesOf(found)) && !ok {
			assert.Equal(t, []string{c.code}, codesOf(found), name)
		}
	}
}

func codesOf(l *finding.List) (out []string) {
	for _, f := range l.Sorted() {
		out = append(out, f.Code)
	}
	return out
}

// The limits are about keys and brackets, not about what stands in texts,
// comments and numbers.
func TestLimitsRespectTextsAndComments(t *testing.T) {
	dots, open := strings.Repeat(".x", 30), strings.Repeat("[{", 30)
	for _, src := range []string{
		`a = "` + dots + open + `"`,
		`a = '` + dots + open + `'`,
		"a = \"\"\"\n" + dots + "\n" + open + "\n\"\"\"\"\"\nb = '''\n" + open + dots + "'''",
		"# " + dots + open + "\na = 1 # " + open,
		`a = "\"[[[[[[[[[[[[[[[[[[[[["`,
		`a = """ \""" [[[[[[[[[[[[[[[[[[[[["""`,
		`"` + dots + `" = 1`,
		"a = [" + strings.Repeat("1.5, ", 50) + "]",
		"a = [\n" + strings.Repeat("1.5\n,", 50) + "]",
		`a = ["` + strings.Repeat("x", 5000) + `"]`,
		"a = '" + strings.Repeat("x", 5000) + "'",
		"a = 2030-01-02T03:04:05.678901Z",
	} {
		found := &finding.List{}
		_, ok := Parse(finding.NewText("p.toml", []byte(src)), found)
		assert.True(t, ok, "%.60s: %v", src, findings(found))
	}
}

// A limit's finding points at what breaks it.
func TestLimitsHavePlaces(t *testing.T) {
	found := &finding.List{}
	_, ok := Parse(finding.NewText("p.toml", []byte("x = 1\ny = "+strings.Repeat("[", 40))), found)
	require.False(t, ok)
	assert.Equal(t, []string{"02:21 too-deep: brackets may be nested 16 deep | nothing here needs more than four levels"}, findings(found))
}

// Texts of the letters that matter, without any rhyme: never a panic, always
// an answer. The seed is logged.
func TestRandomTexts(t *testing.T) {
	seed := rand.Uint64()
	t.Logf("seed %d", seed)
	r := rand.New(rand.NewPCG(seed, 0))
	words := []string{"a", "b", ".", "=", "[", "]", "{", "}", ",", "\n", " ", `"`, "'", `"""`, "'''", "#", "1", "-", "0x", "e", `\`, "é", "nan", "1.5", "\r\n", "true"}
	for range 20_000 {
		var b strings.Builder
		for range 1 + r.IntN(25) {
			b.WriteString(words[r.IntN(len(words))])
		}
		check(t, []byte(b.String()))
	}
}
