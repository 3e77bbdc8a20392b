package post

import "strings"

// longest is how many characters of a user's text, and of any comment, stand
// on one line of a program.
const longest = 60

// acting are the words that make a comment act where a control knows them, by
// what they begin with (NISTIR 6556 3.3.4 has the first; the rest common
// practice). A longer word that begins so is kept apart as well: harmless.
var acting = []string{"MSG", "DEBUG", "PRINT", "LOG", "PROBE", "ABORT", "PAUSE"}

// plain returns s as it may stand in a program: letters, digits, blank and
// .,:+-/=_ of ASCII, anything else as ?, at most longest characters, and never
// beginning with a word that makes a comment act. It is the only way by which
// text from a file enters a program; what it returns can neither end a comment
// nor be taken for a word.
func plain(s string) string {
	s = strings.TrimLeft(s, " \t\r\n")
	var b strings.Builder
	if acts(s) {
		b.WriteString("- ")
	}
	n := b.Len()
	for _, r := range s {
		if n++; n > longest {
			break
		}
		switch {
		case r >= 'a' && r <= 'z' || r >= 'A' && r <= 'Z' || r >= '0' && r <= '9' || strings.ContainsRune(" .,:+-/=_", r):
			b.WriteRune(r)
		default:
			b.WriteByte('?')
		}
	}
	return strings.TrimRight(b.String(), " ")
}

func acts(s string) bool {
	for _, w := range acting {
		if len(s) >= len(w) && strings.EqualFold(s[:len(w)], w) {
			return true
		}
	}
	return false
}

// ours rewrites the signs of our own sentences that plain would turn to ?.
var ours = strings.NewReplacer(" (", ", ", "(", "", ")", "", ";", ",", "'", "")

// wrapped breaks s at blanks into lines as plain makes them, the second and
// later ones moved in. What moves in, and what keeps a word from acting, takes
// four characters at most.
func wrapped(s string) []string {
	const room = longest - 4
	var lines []string
	line, in := "", ""
	end := func() {
		if t := plain(line); t != "" {
			lines = append(lines, in+t)
			in = "  "
		}
		line = ""
	}
	for _, word := range strings.Fields(s) {
		if line != "" && len([]rune(line))+1+len([]rune(word)) > room {
			end()
		}
		for r := []rune(word); len(r) > room; r = []rune(word) {
			line, word = string(r[:room]), string(r[room:])
			end()
		}
		if line != "" {
			line += " "
		}
		line += word
	}
	end()
	return lines
}
