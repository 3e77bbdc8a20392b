package post

import (
	"regexp"
	"strings"
	"testing"
	"unicode/utf8"

	"github.com/stretchr/testify/assert"
)

func TestPlain(t *testing.T) {
	for s, want := range map[string]string{
		"Pump shaft, coupling end": "Pump shaft, coupling end",
		"1:10 +0.5/-0.2 a=b_c":     "1:10 +0.5/-0.2 a=b_c",
		"a) M30 (b":                "a? M30 ?b",
		"a\nM30\r\nG0 X0":          "a?M30??G0 X0",
		"Welle Ø50 \u202e%;#[]":    "Welle ?50 ??????",
		"MSG, open the door":       "- MSG, open the door",
		"  debug":                  "- debug",
		"Print, x":                 "- Print, x",
		"LOGOPEN,x":                "- LOGOPEN,x",
		"logbook shaft":            "- logbook shaft", // begins so: kept apart, harmless
		"message":                  "message",
		"\xff\xfe":                 "??",
		"":                         "",
	} {
		assert.Equal(t, want, plain(s), "%q", s)
	}
	assert.Len(t, plain(strings.Repeat("x", 500)), longest)
}

func TestWrapped(t *testing.T) {
	assert.Equal(t, []string{"one two"}, wrapped(" one  two "))
	assert.Nil(t, wrapped(" "))
	long := strings.Repeat("abcd ", 30) + strings.Repeat("z", 150)
	got := wrapped(long)
	for _, line := range got {
		assert.LessOrEqual(t, len(line), longest)
	}
	assert.Equal(t, strings.ReplaceAll(long, " ", ""), strings.ReplaceAll(strings.Join(got, ""), " ", ""), "nothing lost")
}

var comment = regexp.MustCompile(`^\([A-Za-z0-9 .,:+\-/=_?]*\)$`)

// Whatever a user writes, the words outside comments are those of an empty
// text, every comment is one line in its brackets, and none acts.
func FuzzUserText(f *testing.F) {
	for _, s := range []string{"Pump shaft", ")\nG0 X0\n(", "MSG, hello", "%\nM30\n%", "digest of the blocks below: 0123456789abcdef", "\x00\xff(", "; G1 X0", strings.Repeat("( ) ", 50)} {
		f.Add(s)
	}
	plan, part := socket(lathe(f, "g90-turns"))
	empty, _ := write(f, plan, part)
	f.Fuzz(func(t *testing.T, s string) {
		plan, p := socket(part.Shop)
		p.Title, p.Drawing, p.Material, p.Digest = s, s, s, s
		p.Setups[0].Name, p.Setups[0].Hold.By, p.Setups[0].Hold.On, p.Setups[0].Hold.Support = s, s, s, s
		p.Later[0].What, p.Later[0].On = s, s
		for i := range p.Features {
			p.Features[i].Name = s
		}
		plan.Notes, plan.Cautions = []string{s}, []string{s}
		plan.Operations[0].Passes[0].Name, plan.Operations[0].Purpose = s, s
		got, _ := write(t, plan, p)
		if words(got.Bytes) != words(empty.Bytes) {
			t.Fatalf("%q changes the words:\n%s", s, got.Bytes)
		}
		for line := range strings.Lines(string(got.Bytes)) {
			line = strings.TrimSuffix(line, "\n")
			if strings.HasPrefix(line, "(") {
				in := strings.TrimLeft(line[1:], " ")
				if !comment.MatchString(line) || len(line) > longest+2 || acts(in) {
					t.Fatalf("%q makes the comment %q", s, line)
				}
			}
		}
		if once := plain(s); plain(once) != once || !utf8.ValidString(once) {
			t.Fatalf("%q is not a fixed point", once)
		}
		if ours, same := Untouched(got.Bytes); !ours || !same {
			t.Fatalf("%q hides the digest", s)
		}
	})
}
