package source

import (
	"bytes"
	"slices"

	"taperwright/profiles/finding"
)

// What a file may hold. The libraries recurse once a bracket (10^7 of them
// end the process) and keep the whole path of every key as text, so that time
// and memory go with keys times the length of their paths: 10,000 keys below
// 16 levels of 8 parts in 256 bytes are at most 40 MB of it.
const (
	maxBytes    = 1_000_000
	maxNesting  = 16
	maxParts    = 8
	maxKeyBytes = 256
	maxKeys     = 10_000
	maxItems    = 20_000 // commas: a list of 490,000 numbers takes 600 MB
)

// bracket is a pair of brackets or braces outside texts and comments.
type bracket struct{ open, close int }

// scan is one pass over a text before it is decoded. It knows texts, comments
// and brackets, nothing else of TOML. In a text that is not TOML it may
// mistake what stands behind the first fault; the libraries stop there.
type scan struct {
	src      []byte
	at       int
	pairs    []bracket // in the order in which they open
	open     []int     // indexes into pairs
	runStart int       // where a key, or a value, may have begun
	dots     int       // in that run, outside texts
	keys     int
	items    int
	header   bool // inside the brackets of a table header
	fresh    bool // only blanks since the line began
}

// within holds the limits, one finding for the first that is broken, and
// returns the pairs of brackets by where they open.
func within(text *finding.Text, into *finding.List) ([]bracket, bool) {
	src := text.Bytes
	if len(src) > maxBytes {
		into.Error(text.Span(0, 0), TooLarge, "split it, or remove what is not needed",
			"the file has %d bytes, more than %d", len(src), maxBytes)
		return nil, false
	}
	s := scan{src: src, fresh: true}
	for s.at < len(src) {
		if code, help, message := s.step(); code != "" {
			into.Error(text.Span(s.at, s.at+1), code, help, "%s", message)
			return nil, false
		}
	}
	return s.pairs, true
}

// step takes one byte, text or comment. A limit that breaks leaves at on the
// byte that breaks it.
func (s *scan) step() (code, help, message string) {
	c, fresh := s.src[s.at], s.fresh
	if c != ' ' && c != '\t' && c != '\r' {
		s.fresh = false
	}
	switch c {
	case '"', '\'':
		s.at = s.textEnd()
		return
	case '#':
		if n := bytes.IndexByte(s.src[s.at:], '\n'); n >= 0 {
			s.at += n
		} else {
			s.at = len(s.src)
		}
		return
	case '\n':
		s.fresh, s.header = true, false
		s.begin()
	case ',':
		if s.items++; s.items > maxItems {
			return TooManyKeys, "split the file", "the lists of a file may have 20000 items"
		}
		s.begin()
	case '.':
		if s.dots++; s.dots >= maxParts {
			return LongKey, "name it in fewer parts", "a key may have 8 parts"
		}
	case '[', '{':
		if len(s.open) == maxNesting {
			return TooDeep, "nothing here needs more than four levels", "brackets may be nested 16 deep"
		}
		if c == '[' && fresh && len(s.open) == 0 {
			s.header = true
			if code, help, message = s.key(0); code != "" {
				return
			}
		}
		s.pairs = append(s.pairs, bracket{s.at, -1})
		s.open = append(s.open, len(s.pairs)-1)
		s.begin()
	case ']', '}':
		if c == ']' && s.header && s.at-s.runStart > maxKeyBytes {
			return longKey()
		}
		if n := len(s.open) - 1; n >= 0 {
			s.pairs[s.open[n]].close = s.at
			s.open = s.open[:n]
		}
		s.begin()
	case '=':
		if code, help, message = s.key(s.at - s.runStart); code != "" {
			return
		}
		s.begin()
	}
	s.at++
	return
}

// key counts a key of length bytes.
func (s *scan) key(length int) (code, help, message string) {
	if length > maxKeyBytes {
		return longKey()
	}
	if s.keys++; s.keys > maxKeys {
		return TooManyKeys, "split the file", "a file may have 10000 keys"
	}
	return
}

func longKey() (code, help, message string) {
	return LongKey, "name it in fewer letters", "a key may have 256 bytes"
}

// begin starts a run at the next byte.
func (s *scan) begin() { s.runStart, s.dots = s.at+1, 0 }

// textEnd returns where the text that begins at s.at ends: behind its closing
// quotes, at the end of the line for a text of one line that is not closed.
func (s *scan) textEnd() int {
	q := s.src[s.at]
	long := []byte{q, q, q}
	if !bytes.HasPrefix(s.src[s.at:], long) {
		for i := s.at + 1; i < len(s.src); i++ {
			switch c := s.src[i]; {
			case c == q:
				return i + 1
			case c == '\n':
				return i
			case c == '\\' && q == '"' && i+1 < len(s.src) && s.src[i+1] != '\n':
				i++
			}
		}
		return len(s.src)
	}
	for i := s.at + 3; i < len(s.src); i++ {
		switch {
		case s.src[i] == '\\' && q == '"':
			i++
		case bytes.HasPrefix(s.src[i:], long):
			// one or two quotes may stand before the closing three
			for i += 3; i < len(s.src) && s.src[i] == q; i++ {
			}
			return i
		}
	}
	return len(s.src)
}

// endOf returns the place behind the bracket that closes the one at open, or
// behind open itself when none does.
func endOf(pairs []bracket, open int) int {
	i, ok := slices.BinarySearchFunc(pairs, open, func(b bracket, at int) int { return b.open - at })
	if !ok || pairs[i].close < 0 {
		return open + 1
	}
	return pairs[i].close + 1
}
