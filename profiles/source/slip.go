package source

import (
	"regexp"
	"strings"

	"taperwright/profiles/finding"
)

// slip is a way in which values are often miswritten. value must match the
// whole of what stands behind '='; help may use its groups.
type slip struct {
	value         *regexp.Regexp
	message, help string
}

var slips = []slip{
	{regexp.MustCompile(`^([+-]?)(\.[0-9]+)$`), "a number needs a digit before its point", "write ${1}0$2"},
	{regexp.MustCompile(`^([+-]?[0-9]+)\.$`), "a number needs a digit behind its point", "write $1.0"},
	{regexp.MustCompile(`^([+-]?[0-9]+),([0-9]+)$`), "a comma is not a decimal point", "write $1.$2"},
	{regexp.MustCompile(`^([+-]?)0+([1-9][0-9]*(?:\.[0-9]+)?)$`), "a number cannot begin with 0", "write $1$2"},
	{regexp.MustCompile(`^([0-9.]+ *[:/] *[0-9.]+)$`), "a ratio is a text", `write "$1" in quotes`},
	{regexp.MustCompile(`^([0-9.]+ *°.*)$`), "an angle in degrees, minutes and seconds is a text", "write it in single quotes: '$1'"},
	{regexp.MustCompile(`^([+-]?[0-9][0-9.]*) *(mm|in|inch|"|deg|°|sec|min|m/min|mm/rev)$`), "a number stands alone", "write $1; units have keys of their own"},
	{regexp.MustCompile(`^[“”„‘’](.*)[“”‘’]$`), "these are not the quotes of a text", `write "$1"`},
	{regexp.MustCompile(`^(?i)(true|false)$`), "true and false have small letters", "write true or false"},
	{regexp.MustCompile(`^"[^"]*$`), "the text has no end", "close it with a quote"},
	{regexp.MustCompile(`^\+-? *[0-9.]+|^±.*$`), "this is neither a number nor a text", "a tolerance both ways is one number without sign, or [low, high]"},
	{regexp.MustCompile(`^([^\s"'\[\]{}=#,]+)$`), "a text stands in quotes", `write "$1"`},
	{regexp.MustCompile(`^$`), "the value is missing", "write one behind ="},
}

var keyLine = regexp.MustCompile(`^\s*[^=\["'{#]+$`)

// refuseSyntax adds the finding for a fault that a library found at a byte:
// in our words when the line shows a usual slip, else in the library's.
func refuseSyntax(text *finding.Text, into *finding.List, at int, message string) {
	at = max(0, min(at, len(text.Bytes)))
	from, to := at, at
	for from > 0 && text.Bytes[from-1] != '\n' {
		from--
	}
	for to < len(text.Bytes) && text.Bytes[to] != '\n' && text.Bytes[to] != '\r' {
		to++
	}
	line := string(text.Bytes[from:to])
	if len(line) > 400 {
		line = ""
	}
	if eq := strings.IndexByte(line, '='); eq >= 0 && from+eq <= at && !strings.ContainsAny(line[:eq], `"'{[`) {
		value, _, _ := strings.Cut(line[eq+1:], "#")
		lead := len(value) - len(strings.TrimLeft(value, " \t"))
		value = strings.TrimSpace(value)
		for _, s := range slips {
			if m := s.value.FindStringSubmatchIndex(value); m != nil {
				start := from + eq + 1 + lead
				into.Error(text.Span(start, start+len(value)), Syntax, string(s.value.ExpandString(nil, s.help, value, m)), "%s", s.message)
				return
			}
		}
	} else if eq < 0 && strings.TrimSpace(line) != "" && keyLine.MatchString(line) {
		lead := len(line) - len(strings.TrimLeft(line, " \t"))
		into.Error(text.Span(from+lead, from+len(strings.TrimRight(line, " \t"))), Syntax, "write key = value, [name] or [[name]]; # begins a remark",
			"this line is neither a key with its value nor a header")
		return
	}
	end := at
	if at < len(text.Bytes) && text.Bytes[at] != '\n' && text.Bytes[at] != '\r' {
		for end = at + 1; end < len(text.Bytes) && text.Bytes[end]&0xC0 == 0x80; end++ {
		}
	}
	into.Error(text.Span(at, end), Syntax, "", "%s", strings.ToLower(message[:min(1, len(message))])+message[min(1, len(message)):])
}
