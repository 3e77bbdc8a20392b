package shop

import (
	"maps"
	"slices"
	"strings"

	"taperwright/profiles/finding"
	"taperwright/profiles/source"
)

// readWord returns the word under key.
func readWord(t *source.Table, key string) (string, bool) {
	v, ok := t.Text(key)
	if !ok {
		return "", false
	}
	w, ok := Word(v.Value)
	if !ok {
		t.Error(key, codeWord, "write a letter and a number, such as M4", "%s = %q is not a word", full(t, key), v.Value)
	}
	return w, ok
}

// readWords takes the words that differ from the column.
func readWords(r reader, t *source.Table, m *Machine) {
	in, ok := t.Table("word")
	if !ok {
		return
	}
	own, at := map[Purpose][]string{}, map[Purpose]finding.Span{} // new maps: m may be a copy
	maps.Copy(own, m.own)
	maps.Copy(at, m.ownAt)
	for _, key := range in.Keys() {
		v, ok := in.Value(key)
		if !slices.Contains(purposes(), key) {
			help := "'taperwright schema shop' lists the purposes"
			if near, ok := finding.Nearest(strings.ToLower(key), purposes()); ok {
				help = "did you mean " + near + "?"
			}
			r.into.Error(in.KeySpan(key), codePurpose, help, "no purpose of a word is named %q", key)
			continue
		}
		if !ok {
			continue
		}
		if words, ok := wordsOf(r, in, key, v); ok {
			own[Purpose(key)], at[Purpose(key)] = words, v.Span
		}
	}
	m.own, m.ownAt = own, at
}

// wordsOf returns the words of a value: "G96", ["M8", "M7"], or "" for none.
func wordsOf(r reader, t *source.Table, key string, v source.Value) ([]string, bool) {
	list := []source.Value{v}
	if v.Kind == source.KindList {
		list = v.List
	} else if v.Kind == source.KindText && v.Text.Value == "" {
		return nil, true
	}
	words := make([]string, 0, len(list))
	for _, item := range list {
		w, ok := Word(item.Text.Value)
		if item.Kind != source.KindText || !ok {
			r.into.Error(item.Span, codeWord, "write a letter and a number, such as \"G96\", or \"\" when this lathe has no such word",
				"%s is not a word", full(t, key))
			return nil, false
		}
		words = append(words, w)
	}
	return words, true
}

// readHarmless takes the words that move nothing and change no mode.
func readHarmless(r reader, t *source.Table, m *Machine) {
	list, ok := t.Texts("harmless")
	if !ok {
		return
	}
	var words []string
	var at []finding.Span
	for _, v := range list {
		w, ok := Word(v.Value)
		if !ok {
			r.into.Error(v.Span, codeWord, "write a letter and a number, such as \"M41\"", "harmless %q is not a word", v.Value)
			continue
		}
		words, at = append(words, w), append(at, v.Span)
	}
	m.Harmless, m.harmlessAt = slices.Concat(m.Harmless, words), slices.Concat(m.harmlessAt, at)
}

// readSafeStart takes further words for the safe-start line; what they mean
// is asked when the words are known.
func readSafeStart(_ reader, t *source.Table, m *Machine) {
	v, ok := t.Text("safe_start")
	if !ok {
		return
	}
	words := strings.Fields(v.Value)
	for i, w := range words {
		if words[i], ok = Word(w); !ok {
			t.Error("safe_start", codeWord, "write words with a blank between, such as \"G40 G54\"", "safe_start holds %q, which is not a word", w)
			return
		}
	}
	m.SafeStart = given(t, "safe_start", strings.Join(words, " "))
}

// alike are purposes that may share a word: what it does is told by the words
// beside it.
func alike(a, b Purpose) bool {
	return a == b || a == SpeedCap && b == FramePreset || a == FramePreset && b == SpeedCap
}

// still tells whether a word of purpose p may stand in the safe-start line: it
// sets a mode and neither moves nor calls nor stops.
func still(p Purpose) bool {
	return slices.Contains([]Purpose{PlaneZX, UnitInch, UnitMM, NoseOff, SpindleRPM, FeedPerMinute, FeedPerRev, Absolute, WorkFrame,
		DiameterX, RadiusX, CycleCancel, PathMode, CoolantOff}, p)
}

// judgeWords adds findings on words that contradict each other.
func (m *Machine) judgeWords(into *finding.List) {
	of := map[string]Purpose{}
	for _, name := range purposes() {
		p := Purpose(name)
		for _, w := range m.own[p] {
			if q, twice := of[w]; twice && !alike(p, q) {
				into.Error(m.ownAt[p], codeWordTwice, "one word does one thing: set one of them otherwise", "%s is set for both %s and %s", w, q, p)
			}
			of[w] = p
		}
	}
	_, all := tables()
	c := all[m.Column.Value]
	for _, name := range purposes() {
		p := Purpose(name)
		words := c.words[p]
		if _, set := m.own[p]; set || len(words) == 0 || m.Words[p] != "" || cycle(p) {
			continue
		}
		for _, w := range words { // every word of p was taken: blame the first taker
			if taker, ok := of[w]; ok && !alike(p, taker) {
				into.Error(m.ownAt[taker], codeWordTwice, string(p)+" = \"\" says that this lathe has no such word; else name its word",
					"%s is the word of the column %s for %s, which is left without one", w, m.Column.Value, p)
				break
			}
		}
	}
	for i, w := range m.Harmless {
		if p, ok := m.means[w]; ok && i < len(m.harmlessAt) {
			into.Error(m.harmlessAt[i], codeHarmless, "take it from harmless, or set word = { "+string(p)+" = \"\" } when it does not do that here",
				"%s is named harmless, but it is the word for %s on this lathe", w, p)
		}
	}
	if m.Spindle.Given {
		m.judgeSpindle(m.Spindle, into)
	}
	for _, w := range strings.Fields(m.SafeStart.Value) {
		if p, ok := m.means[w]; ok && !still(p) || !ok && !slices.Contains(m.Harmless, w) {
			into.Error(m.SafeStart.From, codeHarmless, "name words that set a mode, or that harmless names", "%s in safe_start is not known to leave the machine still", w)
		}
	}
	if m.framesAt != nil {
		for _, key := range m.framesAt.Keys() {
			if w, ok := Word(key); ok && m.means[w] != WorkFrame {
				into.Error(m.framesAt.KeySpan(key), codeWord, "word = { work_frame = [..] } names the work offsets", "%s is not the word of a work offset on this lathe", w)
			}
		}
	}
}

// cycle tells whether p is a cycle's word: other lathes use such words
// otherwise, so a word taken from it is no slip.
func cycle(p Purpose) bool {
	return strings.HasSuffix(string(p), "_cycle") || p == CycleCancel || p == ThreadMove
}

// judgeSpindle adds a finding when s does not turn the spindle.
func (m *Machine) judgeSpindle(s Setting[string], into *finding.List) {
	if p := m.means[s.Value]; p != SpindleForward && p != SpindleReverse {
		into.Error(s.From, codeWord, "name "+m.Words[SpindleForward]+" or "+m.Words[SpindleReverse], "%s does not turn the spindle on this lathe", s.Value)
	}
}
