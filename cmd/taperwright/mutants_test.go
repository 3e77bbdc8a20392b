package main

import (
	"fmt"
	"regexp"
	"strconv"
	"strings"
)

// A mutant is a good program with one fault. Each kind says, for one line of
// the program, what the faulty line (or lines) would be; "" with ok drops the
// line. Where a kind does not apply to a line it returns ok false.
type mutantKind struct {
	name   string
	hazard string // the finding that it must raise when no feature moves; "" none
	fault  func(l mutantLine) (faulty string, ok bool)
}

// mutantLine is one line of a program with what a reader needs to know of it.
type mutantLine struct {
	text, before, after string
	motion              int  // modal G0..G3 in force in this line
	cutting             bool // a feed move that moves
}

var mutantWord = regexp.MustCompile(`([A-Z])([-+]?[0-9]*\.?[0-9]*)`)

// withWord returns text with the value of the first word of a letter changed
// by f, keeping its decimals; false when there is no such word.
func withWord(text, letter string, f func(v float64) float64) (string, bool) {
	code, comment, _ := strings.Cut(text, "(")
	for _, at := range mutantWord.FindAllStringSubmatchIndex(code, -1) {
		if code[at[2]:at[3]] != letter {
			continue
		}
		digits := code[at[4]:at[5]]
		v, err := strconv.ParseFloat(digits, 64)
		if err != nil {
			return "", false
		}
		decimals := 0
		if _, after, ok := strings.Cut(digits, "."); ok {
			decimals = len(after)
		}
		next := strconv.FormatFloat(f(v), 'f', decimals, 64)
		if next == digits {
			return "", false
		}
		out := code[:at[4]] + next + code[at[5]:]
		if comment != "" {
			out += "(" + comment
		}
		return out, true
	}
	return "", false
}

// wordOf returns the value of the first word of a letter.
func wordOf(text, letter string) (float64, bool) {
	code, _, _ := strings.Cut(text, "(")
	for _, m := range mutantWord.FindAllStringSubmatch(code, -1) {
		if m[1] == letter {
			v, err := strconv.ParseFloat(m[2], 64)
			return v, err == nil
		}
	}
	return 0, false
}

func onWord(letter string, cutting bool, f func(l mutantLine, v float64) float64) func(mutantLine) (string, bool) {
	return func(l mutantLine) (string, bool) {
		if l.cutting != cutting {
			return "", false
		}
		return withWord(l.text, letter, func(v float64) float64 { return f(l, v) })
	}
}

func replaced(old, new string, applies func(mutantLine) bool) func(mutantLine) (string, bool) {
	re := regexp.MustCompile(`\b` + old + `\b`)
	return func(l mutantLine) (string, bool) {
		if !re.MatchString(l.text) || strings.HasPrefix(strings.TrimSpace(l.text), "(") || applies != nil && !applies(l) {
			return "", false
		}
		return re.ReplaceAllString(l.text, new), true
	}
}

// transposed swaps the last two different neighbouring digits of a number.
func transposed(v float64) float64 {
	s := []byte(strconv.FormatFloat(v, 'f', 3, 64))
	for i := len(s) - 1; i > 0; i-- {
		if a, b := s[i-1], s[i]; a != b && a != '.' && b != '.' && a != '-' {
			s[i-1], s[i] = b, a
			break
		}
	}
	out, _ := strconv.ParseFloat(string(s), 64) // made of the digits of a number
	return out
}

// mutantKinds are the faults people make with a program at hand.
var mutantKinds = []mutantKind{
	{"x-up", "", onWord("X", true, func(_ mutantLine, v float64) float64 { return v + 0.05 })},
	{"x-down", "", onWord("X", true, func(_ mutantLine, v float64) float64 { return v - 0.05 })},
	{"z-on", "", onWord("Z", true, func(_ mutantLine, v float64) float64 { return v - 0.1 })},
	{"z-short", "", onWord("Z", true, func(_ mutantLine, v float64) float64 { return v + 0.1 })},
	{"x-halved", "", onWord("X", true, func(_ mutantLine, v float64) float64 { return v / 2 })},
	{"x-doubled", "", onWord("X", true, func(_ mutantLine, v float64) float64 { return v * 2 })},
	{"x-transposed", "", onWord("X", true, func(_ mutantLine, v float64) float64 { return transposed(v) })},
	{"z-transposed", "", onWord("Z", true, func(_ mutantLine, v float64) float64 { return transposed(v) })},
	{"z-sign", "", onWord("Z", true, func(_ mutantLine, v float64) float64 { return -v })},
	{"x-point", "", onWord("X", true, func(_ mutantLine, v float64) float64 { return v / 10 })},
	{"z-point", "", onWord("Z", true, func(_ mutantLine, v float64) float64 { return v * 10 })},
	{"i-changed", "", onWord("I", true, func(_ mutantLine, v float64) float64 { return v + 0.1 })},
	{"k-changed", "", onWord("K", true, func(_ mutantLine, v float64) float64 { return v + 0.1 })},
	{"x-lost", "", func(l mutantLine) (string, bool) {
		out := regexp.MustCompile(`X[-+0-9.]+ ?`).ReplaceAllString(l.text, "")
		return out, l.cutting && out != l.text && strings.Contains(l.text, "Z")
	}},
	{"z-lost", "", func(l mutantLine) (string, bool) {
		out := regexp.MustCompile(`Z[-+0-9.]+ ?`).ReplaceAllString(l.text, "")
		return out, l.cutting && out != l.text && strings.Contains(l.text, "X")
	}},
	{"block-lost", "", func(l mutantLine) (string, bool) { return "", l.cutting }},
	{"rapid-lost", "", func(l mutantLine) (string, bool) {
		_, x := wordOf(l.text, "X")
		_, z := wordOf(l.text, "Z")
		return "", !l.cutting && l.motion == 0 && (x || z)
	}},
	{"blocks-swapped", "", func(l mutantLine) (string, bool) {
		return l.after + "\n" + l.text, l.cutting && strings.Contains(l.after, "X") && l.after != l.text
	}},
	{"arc-turned", "", func(l mutantLine) (string, bool) {
		if out, ok := replaced("G2", "G3", nil)(l); ok {
			return out, true
		}
		return replaced("G3", "G2", nil)(l)
	}},
	{"arc-straight", "", func(l mutantLine) (string, bool) {
		out := regexp.MustCompile(`G[23]\b`).ReplaceAllString(l.text, "G1")
		out = regexp.MustCompile(` [IKR][-+0-9.]+`).ReplaceAllString(out, "")
		return out, l.motion >= 2 && l.cutting && out != l.text
	}},
	{"cut-at-rapid", "rapid-in-metal", replaced("G1", "G0", func(l mutantLine) bool { return l.cutting })},
	{"x-radius", "", onWord("X", true, func(l mutantLine, v float64) float64 {
		before, ok := wordOf(l.before, "X")
		if !ok {
			return v
		}
		return before + (v-before)/2 // half the step: a radius read for a diameter
	})},
	{"tool-other", "", func(l mutantLine) (string, bool) {
		if out, ok := replaced("T0101", "T0303", nil)(l); ok {
			return out, true
		}
		return replaced("T0303", "T0101", nil)(l)
	}},
	{"unit-other", "", func(l mutantLine) (string, bool) {
		if out, ok := replaced("G21", "G20", nil)(l); ok {
			return out, true
		}
		return replaced("G20", "G21", nil)(l)
	}},
	{"cap-lost", "no-speed-cap", func(l mutantLine) (string, bool) {
		return "", strings.Contains(l.text, "G50")
	}},
	{"spindle-lost", "no-spindle", func(l mutantLine) (string, bool) {
		out := regexp.MustCompile(`\bM[34]\b ?`).ReplaceAllString(l.text, "")
		return out, out != l.text && !strings.HasPrefix(l.text, "(")
	}},
	{"spindle-other-way", "wrong-spindle", func(l mutantLine) (string, bool) {
		if out, ok := replaced("M4", "M3", nil)(l); ok {
			return out, true
		}
		return replaced("M3", "M4", nil)(l)
	}},
}

// mutant is one faulty program.
type mutant struct {
	kind    mutantKind
	line    int // from 1, of the good program
	program string
}

// mutants returns every mutant of a kind, in the order of the program.
func (k mutantKind) mutants(program string) []mutant {
	lines := strings.Split(program, "\n")
	var out []mutant
	motion := 0
	modal := regexp.MustCompile(`\bG0?([0123])\b`)
	bare := func(s string) string { code, _, _ := strings.Cut(s, "("); return strings.TrimSpace(code) }
	for i, text := range lines {
		code := bare(text)
		if m := modal.FindStringSubmatch(code); m != nil {
			motion, _ = strconv.Atoi(m[1])
		}
		_, x := wordOf(code, "X")
		_, z := wordOf(code, "Z")
		l := mutantLine{text: text, motion: motion, cutting: motion > 0 && (x || z) && !strings.Contains(code, "G28") && !strings.Contains(code, "G53")}
		if i > 0 {
			l.before = bare(lines[i-1])
		}
		if i+1 < len(lines) {
			l.after = bare(lines[i+1])
		}
		if code == "" {
			continue
		}
		faulty, ok := k.fault(l)
		if !ok || faulty == text {
			continue
		}
		mutated := append([]string{}, lines[:i]...)
		if k.name == "blocks-swapped" {
			mutated = append(append(mutated, strings.Split(faulty, "\n")...), lines[i+2:]...)
		} else {
			mutated = append(append(mutated, faulty), lines[i+1:]...) // a dropped line stays as an empty one: line numbers keep
		}
		out = append(out, mutant{k, i + 1, strings.Join(mutated, "\n")})
	}
	return out
}

func (m mutant) String() string { return fmt.Sprintf("%s at line %d", m.kind.name, m.line) }
