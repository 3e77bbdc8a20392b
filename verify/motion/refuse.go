package motion

import (
	"fmt"
	"slices"
	"strings"

	"taperwright/profiles/finding"
	"taperwright/profiles/shop"
	"taperwright/verify/rs274"
)

// meaning is what a G or M word does on this lathe.
type meaning struct {
	looked   bool
	known    bool
	harmless bool
	group    group // noGroup: known, and refused by name
	purpose  shop.Purpose
}

// meaning looks a G or M word up. What was found is kept, by tenths (G59.1).
func (r *reader) meaning(w *rs274.Word) meaning {
	n, set, d := -1, 0, w.Number
	switch {
	case d.Neg || d.Digits > 99_999:
	case d.Scale == 0:
		n = int(d.Digits) * 10
	case d.Scale == 1:
		n = int(d.Digits)
	}
	if w.Letter == 'M' {
		set = 1
	}
	if n < 0 || n >= len(r.cache[set]) {
		return r.look(w)
	}
	if !r.cache[set][n].looked {
		r.cache[set][n] = r.look(w)
	}
	return r.cache[set][n]
}

func (r *reader) look(w *rs274.Word) meaning {
	m := meaning{looked: true}
	name := w.String()
	if m.harmless = r.m.IsHarmless(name); m.harmless {
		return m
	}
	m.purpose, m.known = r.m.Meaning(name)
	m.group = groupOf[m.purpose]
	return m
}

// stop ends the judgement at the block being read, with an error.
func (r *reader) stop(at finding.Span, code, help, format string, args ...any) bool {
	return r.stopAt(finding.Finding{Code: code, Span: at, Help: help, Message: fmt.Sprintf(format, args...)})
}

func (r *reader) stopAt(f finding.Finding) bool {
	r.into.Add(f)
	r.t.Stopped, r.t.StoppedAt = true, r.b.in.Span
	return false
}

// readable tells whether w, taken alone, is something that is read here.
func (r *reader) readable(w *rs274.Word) bool {
	if w.Value != nil || w.Comma {
		return false
	}
	if w.Letter != 'G' && w.Letter != 'M' {
		return true
	}
	m := r.meaning(w)
	return m.harmless || m.group != noGroup
}

// refused tells what is to be said of a word that is refused whatever else
// stands in its block.
func (r *reader) refused(w *rs274.Word, words []rs274.Word) (f finding.Finding, refused bool) {
	if r.readable(w) {
		return f, false
	}
	f.Span = w.Span
	switch {
	case w.Letter == '?':
		f.Code, f.Message = FlowNotRead, "IF, WHILE, GOTO and the like steer the program: they are not read yet"
		f.Help = "give the program written out, without jumps and loops"
		return f, true
	case w.Letter == '#' || w.Value != nil:
		f.Code, f.Message = VariableNotRead, "variables and expressions are not worked out yet"
		f.Help = "give the program with plain numbers"
		return f, true
	case w.Comma:
		f.Code, f.Message = CornerWord, fmt.Sprintf("%s is a corner word: corners are not read yet", w)
		f.Help = "write the chamfer or the rounding as a block of its own"
		return f, true
	}
	m, name := r.meaning(w), w.String()
	switch {
	case !m.known:
		f.Code, f.Message = UnknownWord, fmt.Sprintf("%s means nothing known on this lathe: it may move an axis, change a mode or call another text", name)
		f.Help = r.otherColumns(name)
		if f.Help == "" {
			f.Help = fmt.Sprintf("if it moves nothing and changes no mode here, say [machine] harmless = [%q]", name)
		}
		return f, true
	case m.purpose == shop.CallSub:
		f.Code, f.Message = SubprogramNotRead, fmt.Sprintf("%s calls a subprogram: they are not read yet", name)
		f.Help = "give the program written out, with the subprogram in its place"
		return f, true
	default:
		f.Code, f.Message = CycleNotRead, fmt.Sprintf("%s is %s in the column %s: cycles and threads are not read yet", name, tradeName(m.purpose), r.m.Column.Value)
		f.Help = "give the program written out, in G0 to G3"
		if !slices.ContainsFunc(words, func(w rs274.Word) bool { return strings.IndexByte("XZUWPQRIKD", w.Letter) >= 0 }) { // no cycle without one of these
			if other := r.otherColumns(name); other != "" {
				f.Help = other
			}
		}
		return f, true
	}
}

// otherColumns tells what a word is in other starting columns, when it is
// something that is read there: programs mix columns.
func (r *reader) otherColumns(name string) string {
	var columns []string
	var purpose shop.Purpose
	for _, c := range shop.Columns() {
		m, ok := shop.Default(c)
		if !ok || c == r.m.Column.Value {
			continue
		}
		if p, ok := m.Meaning(name); ok && groupOf[p] != noGroup && (purpose == "" || p == purpose) {
			purpose = p
			columns = append(columns, c)
		}
	}
	if purpose == "" {
		return ""
	}
	word, _ := shop.Word(name)
	return fmt.Sprintf("in %s %s is %s: set words = %q, or word = { %s = %q } beside the column you have",
		strings.Join(columns, ", "), name, tradeName(purpose), columns[0], purpose, word)
}

// mostRefused bounds how many words behind the stop are named.
const mostRefused = 10

// scan names the words behind the stop that will be refused too, each once,
// so that the next run does not only find the next of them.
func (r *reader) scan(from int) {
	for i := range r.b.in.Words { // those of the stopping block have been told
		if w := &r.b.in.Words[i]; !r.readable(w) {
			r.said[refusedKey(w)] = true
			break
		}
	}
	told, more := 0, 0
	var last finding.Span
	for i := from; i < len(r.file.Blocks); i++ {
		b := &r.file.Blocks[i]
		for k := range b.Words {
			w := &b.Words[k]
			if r.readable(w) {
				if w.Letter == 'M' && r.meaning(w).purpose == shop.ProgramEnd && !b.Slash.Set {
					i = len(r.file.Blocks) // what follows are subprograms, or never reached
					break
				}
				continue
			}
			key := refusedKey(w)
			if r.said[key] {
				continue
			}
			r.said[key] = true
			f, _ := r.refused(w, b.Words)
			if told++; told > mostRefused {
				more++
				last = w.Span
				continue
			}
			r.into.Add(f)
		}
	}
	if more > 0 {
		r.into.Note(last, MoreWords, "", "%d more words that are not read, the last here", more)
	}
}

// refusedKey names the cause of a refusal: the word, or that variables or flow
// words are used at all.
func refusedKey(w *rs274.Word) string {
	switch {
	case w.Letter == '?':
		return FlowNotRead
	case w.Value != nil:
		return VariableNotRead
	}
	return "word " + w.String()
}
