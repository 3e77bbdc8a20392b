package main

import (
	"fmt"
	"strings"

	"github.com/sergi/go-diff/diffmatchpatch"
)

// most lines that are compared line by line: above it the time grows with
// lines times differences (2 s at 20,000 lines that all differ).
const mostCompared = 20000

// difference returns a unified diff of two texts with ctx lines of context,
// "" when they are equal.
func difference(nameA, nameB, a, b string, ctx int) string {
	if a == b {
		return ""
	}
	if strings.Count(a, "\n") > mostCompared || strings.Count(b, "\n") > mostCompared {
		return fmt.Sprintf("--- %s\n+++ %s\n(more than %d lines: not compared line by line)\n", nameA, nameB, mostCompared)
	}
	lines := compare(a, b)
	var out strings.Builder
	fmt.Fprintf(&out, "--- %s\n+++ %s\n", nameA, nameB)
	n := len(lines) - 1 // the last is a sentinel that holds the end positions
	for i := 0; i < n; {
		if lines[i].op == diffmatchpatch.DiffEqual {
			i++
			continue
		}
		from, to := max(0, i-ctx), i
		for j := i; j < n && j-to <= 2*ctx; j++ {
			if lines[j].op != diffmatchpatch.DiffEqual {
				to = j + 1
			}
		}
		i = min(n, to+ctx)
		fmt.Fprintf(&out, "@@ -%s +%s @@\n", extent(lines[from].a, lines[i].a), extent(lines[from].b, lines[i].b))
		for _, l := range lines[from:i] {
			out.WriteString(mark(l.op) + l.text)
			if !strings.HasSuffix(l.text, "\n") {
				out.WriteString("\n\\ No newline at end of file\n")
			}
		}
	}
	return out.String()
}

// diffLine is a line of either text; a and b are its line numbers in both.
type diffLine struct {
	op   diffmatchpatch.Operation
	text string
	a, b int
}

// compare returns the lines of both texts in order, and a sentinel. No
// timeout: with one the result would depend on the machine's speed.
func compare(a, b string) []diffLine {
	d := diffmatchpatch.New()
	d.DiffTimeout = 0
	ca, cb, table := d.DiffLinesToChars(a, b)
	at := diffLine{a: 1, b: 1}
	var lines []diffLine
	for _, x := range d.DiffCharsToLines(d.DiffMain(ca, cb, false), table) {
		for s := range strings.Lines(x.Text) {
			lines = append(lines, diffLine{x.Type, s, at.a, at.b})
			if x.Type != diffmatchpatch.DiffInsert {
				at.a++
			}
			if x.Type != diffmatchpatch.DiffDelete {
				at.b++
			}
		}
	}
	return append(lines, at)
}

func mark(op diffmatchpatch.Operation) string {
	switch op {
	case diffmatchpatch.DiffDelete:
		return "-"
	case diffmatchpatch.DiffInsert:
		return "+"
	}
	return " "
}

// extent prints a range of lines as a unified diff does.
func extent(from, to int) string {
	if n := to - from; n > 0 {
		return fmt.Sprintf("%d,%d", from, n)
	}
	return fmt.Sprintf("%d,0", from-1)
}
