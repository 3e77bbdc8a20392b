package rs274

import "slices"

// String prints the program in one spelling: capitals, one blank between
// words, no plus signs, comments as they stand. Blocks that could not be read
// are printed as they stand. Parsing the result and printing it again gives
// the same text.
func (f *File) String() string {
	var b []byte
	for i := range f.Blocks {
		b = append(f.Blocks[i].appendTo(b), '\n')
	}
	return string(b)
}

// String prints one block.
func (b *Block) String() string { return string(b.appendTo(nil)) }

func (b *Block) appendTo(out []byte) []byte {
	if b.Fault {
		return append(out, b.Span.String()...)
	}
	if b.Mark {
		out = append(out, '%')
	}
	start := len(out)
	space := func() {
		if len(out) > start && out[len(out)-1] != '/' {
			out = append(out, ' ')
		}
	}
	slash := func(words int) {
		if !b.Slash.Set || b.Slash.From != words {
			return
		}
		space()
		out = append(out, '/')
		if b.Slash.Switch > 0 || b.Slash.Span.End > b.Slash.Span.Start+1 {
			out = append(out, byte('0'+b.Slash.Switch))
		}
	}
	comments := b.Comments
	before := func(place int) { // comments that stand before place
		for len(comments) > 0 && comments[0].Span.Start < place {
			space()
			out = append(out, comments[0].Span.String()...)
			comments = comments[1:]
		}
	}
	for i := range b.Words {
		before(b.Words[i].Span.Start)
		slash(i)
		space()
		out = b.Words[i].Append(out)
	}
	slash(len(b.Words))
	before(b.Span.End + 1)
	return out
}

// String prints one word.
func (w *Word) String() string { return string(w.Append(nil)) }

// Append appends String to b.
func (w *Word) Append(b []byte) []byte {
	switch {
	case w.Letter == '#':
		b = w.Value.Args[0].appendTo(b)
		b = append(b, '=')
		return w.Value.Args[1].appendTo(b)
	case w.Letter == '?':
		b = append(b, w.Value.Op...)
		for _, arg := range w.Value.Args {
			if w.Value.Op != "IF" && w.Value.Op != "WHILE" && (arg.Op == "" || arg.Op == "#") {
				b = arg.appendTo(b)
			} else {
				b = arg.inBrackets(b)
			}
		}
		return b
	}
	if w.Comma {
		b = append(b, ',')
	}
	b = append(b, w.Letter)
	switch v := w.Value; {
	case v != nil && (v.Op == "" || v.Op == "-" && v.Args[0].Op == ""):
		return v.inBrackets(b) // X[5] is an expression, X5 is not
	case v != nil:
		return v.appendTo(b)
	}
	return w.Number.Append(b)
}

// String prints an expression with brackets round every operator.
func (e *Expr) String() string { return string(e.appendTo(nil)) }

func (e *Expr) appendTo(b []byte) []byte {
	switch {
	case e.Op == "":
		return e.Number.Append(b)
	case len(e.Args) == 0:
		return append(b, e.Op...)
	case e.Op == "#":
		return e.Args[0].operandTo(append(b, '#'))
	case len(e.Args) == 1 && !isFunction(e.Op):
		return e.Args[0].operandTo(append(b, e.Op...))
	case isFunction(e.Op):
		b = e.Args[0].inBrackets(append(b, e.Op...))
		if len(e.Args) == 2 {
			b = e.Args[1].inBrackets(append(b, '/'))
		}
		return b
	}
	return e.inBrackets(b)
}

// operandTo prints e so that it holds together behind a sign or an operator.
func (e *Expr) operandTo(b []byte) []byte {
	if e.Op == "-" && len(e.Args) == 1 {
		return e.inBrackets(b)
	}
	return e.appendTo(b)
}

// inBrackets prints [ e ].
func (e *Expr) inBrackets(b []byte) []byte {
	b = append(b, '[')
	if len(e.Args) == 2 && !isFunction(e.Op) {
		left, right := e.Args[0], e.Args[1]
		// [ATAN[1]]/[2] is a quotient, ATAN[1]/[2] one function
		if e.Op == "/" && left.Op == "ATAN" && len(left.Args) == 1 {
			b = left.inBrackets(b)
		} else {
			b = left.operandTo(b)
		}
		if wordy := slices.Contains(spaced, e.Op); wordy {
			b = append(append(append(b, ' '), e.Op...), ' ')
		} else {
			b = append(b, e.Op...)
		}
		b = right.operandTo(b)
	} else {
		b = e.appendTo(b)
	}
	return append(b, ']')
}

// spaced are the operators that are written with letters.
var spaced = []string{"EQ", "NE", "GT", "GE", "LT", "LE", "AND", "OR", "XOR", "MOD"}
