package post

import (
	"bytes"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
)

func TestUntouched(t *testing.T) {
	p, _ := written(t, lathe(t, "g90-turns"))
	text := string(p.Bytes)
	for name, c := range map[string]struct {
		program    string
		ours, same bool
	}{
		"as written":             {text, true, true},
		"other line ends":        {strings.ReplaceAll(text, "\n", "\r\n"), true, true},
		"a remark in the header": {strings.Replace(text, "(drawing", "(cut twice on Monday)\n(drawing", 1), true, true},
		"a word":                 {strings.Replace(text, "X22.961", "X22.951", 1), true, false},
		"a block more":           {strings.Replace(text, "N150 M30", "M9\nN150 M30", 1), true, false},
		"a block less":           {strings.Replace(text, "N140 M5\n", "", 1), true, false},
		"a remark among blocks":  {strings.Replace(text, "(round)", "(round, slowly)", 1), true, false},
		"cut short":              {text[:len(text)-20], true, false},
		"a remark below":         {strings.Replace(text, "(tool 3, finish", "(mine)\n(tool 3, finish", 1), true, false},
		"no digest":              {strings.Replace(text, label, "digest: ", 1), false, false},
		"the digest too late":    {"%\nG21\n" + text, false, false},
		"empty":                  {"", false, false},
		"another's":              {"%\n(shaft)\nG21\nM30\n%\n", false, false},
	} {
		ours, same := Untouched([]byte(c.program))
		assert.Equal(t, [2]bool{c.ours, c.same}, [2]bool{ours, same}, name)
	}
}

// Every byte below the header counts.
func TestEveryByteCounts(t *testing.T) {
	p, _ := written(t, lathe(t, "g90-turns"))
	at := bytes.Index(p.Bytes, []byte("(tool 3, finish"))
	for i := at; i < len(p.Bytes); i++ {
		edited := bytes.Clone(p.Bytes)
		edited[i] ^= 1
		if ours, same := Untouched(edited); !ours || same {
			t.Fatalf("byte %d changed %q to %q unseen", i, p.Bytes[i], edited[i])
		}
	}
}
