package rs274

import (
	"bytes"
	"fmt"

	"taperwright/profiles/finding"
)

// Parse reads a program. Faults go into the list; a block with one is marked
// and reading goes on with the next. Time and memory grow with the text's
// length only, and at most mostTold faults of a kind are told one by one.
func Parse(text *finding.Text, into *finding.List) *File {
	p := &parser{text: text, b: text.Bytes, into: into, file: &File{Text: text}}
	if p.isText() {
		p.lines()
		if !p.begun {
			into.Error(text.Span(0, 0), EmptyProgram, "a program holds at least a motion and an end word, such as M30", "no words in this program")
			p.file.Unreadable = true
		}
	}
	p.more()
	return p.file
}

// mostTold is how many faults of one code are told one by one; a text that is
// no program at all would drown the first, telling one otherwise.
const mostTold = 10

type parser struct {
	text  *finding.Text
	b     []byte
	into  *finding.List
	file  *File
	at    int // next character
	end   int // end of the line being read
	begun bool
	sum   int // operators in the expression being read

	words    []Word // of the block being read
	comments []Comment
	store    []Word    // where blocks' words are kept, a chunk at a time
	remarks  []Comment // and their comments
	told     []told
}

type told struct {
	code string
	n    int
	last finding.Span
}

// isText refuses what is no text, with one finding instead of one a line.
func (p *parser) isText() bool {
	b := p.b
	switch {
	case bytes.IndexByte(b, 0) >= 0 && (bytes.HasPrefix(b, []byte{0xff, 0xfe}) || bytes.HasPrefix(b, []byte{0xfe, 0xff})):
		p.into.Error(p.text.Span(0, 2), NotText, "save it as plain text in UTF-8 or ASCII", "this text is UTF-16")
	case bytes.IndexByte(b, 0) >= 0:
		at := bytes.IndexByte(b, 0)
		p.into.Error(p.text.Span(at, at+1), NotText, "give the program as plain text", "this is no text: it holds a zero byte")
	case controls(b) > mostControls:
		p.into.Error(p.text.Span(0, 0), NotText, "give the program as plain text", "this is no text: it holds more than %d control characters", mostControls)
	default:
		return true
	}
	p.file.Unreadable = true
	return false
}

// mostControls is how many control characters a text may hold. A count, not a
// share: leaving out blanks and empty lines must not turn a program into no text.
const mostControls = 100

func controls(b []byte) int {
	n := 0
	for _, c := range b {
		if c < ' ' && c != '\t' && c != '\n' && c != '\r' || c == 0x7f {
			n++
		}
	}
	return n
}

// lines reads block by block up to a closing %. A lone CR ends a block as LF
// and CR LF do: people see a new line there.
func (p *parser) lines() {
	b := p.b
	p.at = len(b) - len(bytes.TrimPrefix(b, []byte("\xef\xbb\xbf")))
	last := len(bytes.TrimRight(b, "\x1a \t\r\n")) // old editors end a text with ^Z
	p.file.Blocks = make([]Block, 0, full(b))
	for p.at < last && !p.file.Closed {
		p.end = last
		if i := bytes.IndexAny(b[p.at:last], "\r\n"); i >= 0 {
			p.end = p.at + i
		}
		next := p.end + 1
		p.line()
		if !p.file.Closed {
			p.at = next
		}
	}
	if p.file.Closed {
		behind := bytes.TrimLeft(b[p.at:max(last, p.at)], " \t\r\n")
		if len(behind) > 0 {
			p.file.Behind = p.text.Span(last-len(behind), last)
			p.into.Warn(p.text.Span(last-len(behind), last-len(behind)+1), BehindEnd, "one program a file; take out the % if this belongs to it",
				"what stands behind the closing %% is not read")
		}
	}
}

// full counts the lines with anything in them: no more blocks than that, but
// for one behind a closing %. Growing a long list of blocks costs more.
func full(b []byte) int {
	n, before := 2, byte('\n')
	for _, c := range b {
		if (c == '\n' || c == '\r') && before != '\n' && before != '\r' {
			n++
		}
		before = c
	}
	return n
}

// line reads the blocks of one line: one, or two when a % stands behind words.
func (p *parser) line() {
	p.blanks()
	if p.at == p.end {
		return
	}
	block := Block{Span: p.text.Span(p.at, p.at)}
	p.words, p.comments = p.words[:0], p.comments[:0]
	for p.at < p.end && !block.Fault && p.b[p.at] != '%' {
		block.Fault = !p.item(&block)
		p.blanks()
	}
	if block.Fault {
		p.at = p.end
	}
	if p.at > block.Span.Start {
		p.keep(block, p.at)
	}
	if p.at < p.end { // a %
		p.mark()
	}
}

// keep adds a block that ends before end, and its words and comments.
func (p *parser) keep(block Block, end int) {
	for isBlank(p.b[end-1]) {
		end--
	}
	block.Span.End = end
	if n := len(p.words); n > 0 {
		if cap(p.store)-len(p.store) < n {
			p.store = make([]Word, 0, max(2048, n))
		}
		from := len(p.store)
		p.store = append(p.store, p.words...)
		block.Words = p.store[from:len(p.store):len(p.store)]
	}
	if n := len(p.comments); n > 0 {
		if cap(p.remarks)-len(p.remarks) < n {
			p.remarks = make([]Comment, 0, max(256, n))
		}
		from := len(p.remarks)
		p.remarks = append(p.remarks, p.comments...)
		block.Comments = p.remarks[from:len(p.remarks):len(p.remarks)]
	}
	p.begun = p.begun || block.HasWords()
	p.file.Blocks = append(p.file.Blocks, block)
}

// mark reads a %: it opens a program while no words have come, and what stands
// behind it on its line is then a title; later it closes the program.
func (p *parser) mark() {
	block := Block{Mark: true, Span: p.text.Span(p.at, p.at+1)}
	p.at++
	p.words, p.comments = p.words[:0], p.comments[:0]
	if p.begun {
		p.file.Closed = true
	} else if p.blanks(); p.at < p.end {
		end := p.end
		for isBlank(p.b[end-1]) {
			end--
		}
		p.comments = append(p.comments, Comment{Span: p.text.Span(p.at, end)})
		p.at = p.end
	}
	p.keep(block, p.at)
}

// item reads one thing of a block; false after a fault.
func (p *parser) item(block *Block) bool {
	start := p.at
	switch c := p.b[start]; {
	case isLetter(c) || c == ':':
		return p.word(start, false)
	case c == '(':
		return p.comment()
	case c == ';':
		end := p.end
		for isBlank(p.b[end-1]) {
			end--
		}
		p.comments = append(p.comments, Comment{Span: p.text.Span(start, end)})
		p.at = p.end
		return true
	case c == '/':
		return p.slash(block)
	case c == '#':
		return p.setting()
	case c == ',':
		p.at++
		if p.blanks(); p.at < p.end && isLetter(p.b[p.at]) {
			return p.word(start, true)
		}
		return p.fault(start, start+1, BadCharacter, "", "a comma that belongs to no word")
	case c == '-' || c == '+' || c == '.' || isDigit(c):
		p.at++
		for p.at < p.end && (p.b[p.at] == '.' || isDigit(p.b[p.at])) {
			p.at++
		}
		return p.fault(start, p.at, BadNumber, "a number follows the letter of a word; remarks stand in ( )", "a number without a letter before it")
	case c == ')':
		return p.fault(start, start+1, BadCharacter, "a comment begins with ( and ends with the first ) behind it", "a ) without a ( before it")
	case c == '=':
		return p.fault(start, start+1, BadExpression, "only a # variable can be set, as in #1=5", "= behind something that cannot be set")
	case c == '[':
		return p.fault(start, start+1, BadExpression, "an expression follows the letter of a word", "a [ without a letter before it")
	}
	return p.fault(start, start+1, BadCharacter, "remarks stand in ( )", "%s begins no word", p.show(start))
}

// comment reads ( ... ). It ends at the first ), as most controls have it; when
// brackets are nested and closed another reading ends it later, so that is a fault.
func (p *parser) comment() bool {
	start := p.at
	length := bytes.IndexByte(p.b[start:p.end], ')')
	if length < 0 {
		return p.fault(start, p.end, OpenComment, "close the comment with ) in its own line", "a comment is not closed")
	}
	stop := start + length + 1
	p.at = stop
	if inner := bytes.IndexByte(p.b[start+1:stop], '('); inner >= 0 {
		inner += start + 1
		open := bytes.Count(p.b[start:stop], []byte{'('})
		if bytes.Count(p.b[stop:p.end], []byte{')'}) >= open-1 {
			return p.fault(inner, inner+1, NestedComment, "use other signs than ( ) inside a comment", "a ( inside a comment: where the comment ends is not the same on every control")
		}
		p.warn(inner, inner+1, NestedComment, "use other signs than ( inside a comment", "a ( inside a comment is refused by some controls")
	}
	p.comments = append(p.comments, Comment{Span: p.text.Span(start, stop)})
	return true
}

// slash reads a block delete sign and the digit of its switch. In the middle
// of a block it counts only when a word follows, so that X1/2 is not read as X1.
func (p *parser) slash(block *Block) bool {
	start := p.at
	p.at++
	if p.next("/") {
		return p.fault(start, p.end, BareText, "remarks stand in ( )", "// begins no comment here")
	}
	if block.Slash.Set {
		return p.fault(start, p.at, BadCharacter, "one / a block", "a second / in one block")
	}
	slash := Slash{Set: true, From: len(p.words), Span: p.text.Span(start, p.at)}
	p.blanks()
	if p.at < p.end && isDigit(p.b[p.at]) {
		slash.Switch = int(p.b[p.at] - '0')
		p.at++
		slash.Span.End = p.at
		p.blanks()
	}
	first := len(p.words) == 0 || len(p.words) == 1 && p.words[0].Letter == 'N'
	tight := start > 0 && (isDigit(p.b[start-1]) || p.b[start-1] == '.')
	word := p.at < p.end && (isLetter(p.b[p.at]) || p.b[p.at] == '#' || p.b[p.at] == ',' || p.b[p.at] == ':')
	if p.at < p.end && isDigit(p.b[p.at]) || !first && (!word || tight && slash.Switch > 0) {
		return p.fault(start, slash.Span.End, BadNumber, "write the decimal number; a / at the head of a block makes it one that can be skipped", "a / here divides nothing and skips nothing")
	}
	block.Slash = slash
	return true
}

// fault reports what is wrong with the block being read and returns false.
func (p *parser) fault(start, end int, code, help, format string, args ...any) bool {
	p.tell(finding.Error, start, end, code, help, format, args...)
	return false
}

func (p *parser) warn(start, end int, code, help, format string, args ...any) {
	p.tell(finding.Warning, start, end, code, help, format, args...)
}

func (p *parser) tell(severity finding.Severity, start, end int, code, help, format string, args ...any) {
	span := p.text.Span(start, min(end, len(p.b)))
	at := -1
	for i := range p.told {
		if p.told[i].code == code {
			at = i
		}
	}
	if at < 0 {
		p.told = append(p.told, told{code: code})
		at = len(p.told) - 1
	}
	p.told[at].n++
	p.told[at].last = span
	if p.told[at].n <= mostTold {
		p.into.Add(finding.Finding{Code: code, Severity: severity, Span: span, Help: help, Message: fmt.Sprintf(format, args...)})
	}
}

// more says how many faults of each code were not told one by one.
func (p *parser) more() {
	for _, t := range p.told {
		if n := t.n - mostTold; n > 0 {
			p.into.Note(t.last, MoreFaults, "", "%d more blocks with %s, the last here", n, t.code)
		}
	}
}

// show quotes the character at i for a message.
func (p *parser) show(i int) string {
	if i >= p.end {
		return "the end of the line"
	}
	r := bytes.Runes(p.b[i:min(i+4, p.end)])
	return fmt.Sprintf("%q", string(r[0]))
}

func (p *parser) blanks() {
	for p.at < p.end && isBlank(p.b[p.at]) {
		p.at++
	}
}

// next tells whether word, in capitals, stands at p.at whatever its case.
func (p *parser) next(word string) bool {
	if p.end-p.at < len(word) {
		return false
	}
	for i := range len(word) {
		if upper(p.b[p.at+i]) != word[i] {
			return false
		}
	}
	return true
}

func isBlank(c byte) bool  { return c == ' ' || c == '\t' }
func isDigit(c byte) bool  { return c-'0' < 10 }
func isLetter(c byte) bool { return (c|0x20)-'a' < 26 }

func upper(c byte) byte {
	if c-'a' < 26 {
		return c - 0x20
	}
	return c
}
