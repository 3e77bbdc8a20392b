// Package rs274 reads the blocks of a part program: words, comments, settings
// and expressions, each with its exact place in the text. It knows syntax only.
// What a word does on a lathe is for the room above (motion) to say, so more is
// accepted here than any control would take, and a number stays the digits that
// were written until someone knows what they count.
//
// A block that cannot be read is marked and the next one is tried, so one run
// shows every fault. Text is never evaluated and comments are never looked into.
package rs274

import "taperwright/profiles/finding"

// File is a program as it was read.
type File struct {
	Text   *finding.Text
	Blocks []Block
	// Closed tells that a closing % was met. What stands behind it is no
	// program; Behind is its place, the zero Span when only blanks follow.
	Closed bool
	Behind finding.Span
	// Unreadable tells that the text is no program at all (empty, or no text).
	Unreadable bool
}

// Block is one block: a line, or a % mark. Lines with nothing in them are no
// blocks.
type Block struct {
	Span     finding.Span // from its first to its last character, comments included, blanks around it not
	Mark     bool         // a % mark; text behind an opening one stands in Comments
	Slash    Slash
	Words    []Word    // in the order written
	Comments []Comment // in the order written
	Fault    bool      // something here could not be read (a finding says what); Words holds what stands before it
}

// Slash is a block delete sign.
type Slash struct {
	Set    bool
	Switch int          // the digit behind it, 0 when there is none
	From   int          // index in Words of the first word behind it
	Span   finding.Span // the sign and its digit
}

// Word is a letter and what follows it.
type Word struct {
	Letter byte    // 'A' to 'Z' whatever the case in the text; ':' an alignment number; '#' a setting of a variable; '?' a flow word
	Comma  bool    // ",R5": a comma stands before the letter
	Number Decimal // what follows when Value is nil
	// Value is an expression or a variable instead of a number. Of a setting
	// its Op is "=" and its Args are the variable and the value. Of a flow word
	// its Op is IF, THEN, GOTO, WHILE, DO or END and its Args (at most one) the
	// condition or the number behind it.
	Value *Expr
	Span  finding.Span // from its first to its last character
}

// Comment is text that is no program: in round brackets, behind a semicolon,
// or behind an opening %.
type Comment struct {
	Span finding.Span // with the signs that bound it
}

// HasWords tells whether anything but comments and marks stands in b.
func (b *Block) HasWords() bool { return len(b.Words) > 0 || b.Fault }

// Is tells whether w is the letter with a plain number: Is('G', 1) for G1, G01
// and G1.0.
func (w *Word) Is(letter byte, whole int) bool {
	n, ok := w.Number.Int()
	return w.Letter == letter && w.Value == nil && !w.Comma && ok && n == whole
}
