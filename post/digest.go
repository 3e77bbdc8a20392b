package post

import (
	"bytes"
	"crypto/sha256"
	"encoding/hex"
	"strings"
)

// label begins the last line of the header.
const label = "digest of the blocks below: "

// digest is that of everything behind the header's last line. Line ends may be
// LF or CR LF: a transfer that changes them edits nothing.
func digest(body []byte) string {
	sum := sha256.Sum256(bytes.ReplaceAll(body, []byte("\r\n"), []byte("\n")))
	return hex.EncodeToString(sum[:])[:16]
}

// Untouched tells whether program carries a digest of ours, and whether its
// blocks are still those that were written under it.
func Untouched(program []byte) (ours, untouched bool) {
	rest := program
	for len(rest) > 0 {
		line, after, _ := bytes.Cut(rest, []byte("\n"))
		text := strings.TrimSpace(string(line))
		if comment, ok := uncommented(text); ok {
			if said, ok := strings.CutPrefix(comment, label); ok {
				ours, untouched = true, said == digest(after)
			}
		} else if text != "%" && text != "" {
			break
		}
		rest = after
	}
	return ours, untouched
}

// uncommented returns what stands in a comment line.
func uncommented(line string) (string, bool) {
	if in, ok := strings.CutPrefix(line, "("); ok && strings.HasSuffix(in, ")") {
		return in[:len(in)-1], true
	}
	in, ok := strings.CutPrefix(line, ";")
	return strings.TrimPrefix(in, " "), ok
}

// assemble joins header and body and fills Lines. Style is "brackets",
// "semicolon" or "none": then there is no header and no digest, and an edit
// cannot be told.
func (p *Program) assemble(style string, header []string, blocks []block) {
	var body, all bytes.Buffer
	lines := []Line{{Feature: -1}}
	all.WriteString("%\n")
	comment := func(to *bytes.Buffer, text string) bool {
		switch style {
		case "none":
			return false
		case "semicolon":
			to.WriteString("; " + text + "\n")
		default:
			to.WriteString("(" + text + ")\n")
		}
		return true
	}
	for _, h := range header {
		if comment(&all, h) {
			lines = append(lines, Line{Feature: -1})
		}
	}
	at := len(lines)
	for _, b := range blocks {
		l := Line{Block: b.number, Feature: b.feature, Name: b.name}
		switch {
		case len(b.words) == 0:
			if !comment(&body, b.comment) {
				continue
			}
		case b.number != "":
			body.WriteString(b.number + " " + strings.Join(b.words, " ") + "\n")
		default:
			body.WriteString(strings.Join(b.words, " ") + "\n")
		}
		lines = append(lines, l)
	}
	body.WriteString("%\n")
	lines = append(lines, Line{Feature: -1})
	if comment(&all, label+digest(body.Bytes())) {
		lines = append(lines[:at], append([]Line{{Feature: -1}}, lines[at:]...)...)
	}
	all.Write(body.Bytes())
	p.Bytes, p.Lines = all.Bytes(), lines
}
