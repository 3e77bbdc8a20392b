package rs274

import (
	"slices"

	"taperwright/profiles/finding"
)

// Expr is an expression as written, not worked out. Op is "" for a number, "#"
// for a variable (Args[0] tells which), "-" with one Arg for a sign, an operator
// with two Args (+ - * / ** MOD AND OR XOR EQ NE GT GE LT LE), or a function
// with one (ABS ACOS ASIN ATAN COS EXP FIX FUP LN ROUND SIN SQRT TAN; ATAN also
// with two).
type Expr struct {
	Op     string
	Number Decimal
	Args   []*Expr
	Span   finding.Span
}

// maxDepth bounds the nesting of brackets and signs, and with it every walk
// over an expression. Programs need four or five.
const maxDepth = 64

var functions = []string{"ABS", "ACOS", "ASIN", "ATAN", "COS", "EXP", "FIX", "FUP", "LN", "ROUND", "SIN", "SQRT", "TAN"}

// operators by how strongly they bind, weakest first.
var operators = [][]string{
	{"EQ", "NE", "GT", "GE", "LT", "LE"},
	{"+", "-", "AND", "OR", "XOR"},
	{"*", "/", "MOD"},
	{"**"},
}

// expr reads operators of at least the given strength and what they join.
func (p *parser) expr(strength, depth int) *Expr {
	if strength == len(operators) {
		return p.operand(depth)
	}
	left := p.expr(strength+1, depth)
	for left != nil {
		op := p.operator(strength)
		if op == "" {
			break
		}
		p.at += len(op)
		right := p.expr(strength+1, depth)
		if right == nil {
			return nil
		}
		left = &Expr{Op: op, Args: []*Expr{left, right}, Span: p.text.Span(left.Span.Start, p.at)}
		// A long sum leans to the left; every walk goes as deep as it is long.
		if p.sum++; p.sum > 4*maxDepth {
			return p.exprFault(left.Span.Start, "an expression of more than %d operators", 4*maxDepth)
		}
	}
	return left
}

// operator tells which operator of the given strength stands next, if any.
func (p *parser) operator(strength int) string {
	p.blanks()
	for _, op := range operators[strength] {
		if p.next(op) && !(op == "*" && p.next("**")) {
			return op
		}
	}
	return ""
}

// operand reads a number, a variable, a bracket, a function or a signed one of
// these. It returns nil after a fault.
func (p *parser) operand(depth int) *Expr {
	p.blanks()
	start := p.at
	if depth > maxDepth {
		return p.exprFault(start, "an expression nested deeper than %d", maxDepth)
	}
	if p.at == p.end {
		return p.exprFault(start, "an expression breaks off")
	}
	switch c := p.b[p.at]; {
	case c == '-' || c == '+':
		p.at++
		arg := p.operand(depth + 1)
		if arg == nil || c == '+' {
			return arg
		}
		return &Expr{Op: "-", Args: []*Expr{arg}, Span: p.text.Span(start, p.at)}
	case c == '.' || isDigit(c):
		n, ok := p.number()
		if !ok {
			return nil
		}
		return &Expr{Number: n, Span: p.text.Span(start, p.at)}
	case c == '#':
		return p.variable(depth)
	case c == '[':
		return p.bracket(depth)
	}
	if name := p.function(); name != "" {
		p.at += len(name)
		args := []*Expr{p.bracket(depth)}
		if args[0] == nil {
			return nil
		}
		if name == "ATAN" { // ATAN[rise]/[run]
			back := p.at
			if p.blanks(); p.next("/") {
				p.at++
				if p.blanks(); p.next("[") {
					run := p.bracket(depth)
					if run == nil {
						return nil
					}
					args, back = append(args, run), p.at
				}
			}
			p.at = back
		}
		return &Expr{Op: name, Args: args, Span: p.text.Span(start, p.at)}
	}
	return p.exprFault(start, "%s where a number, a # variable or a [ belongs in an expression", p.show(start))
}

// variable reads # and what tells which.
func (p *parser) variable(depth int) *Expr {
	start := p.at
	p.at++
	p.blanks()
	if p.at == p.end || p.b[p.at] != '#' && p.b[p.at] != '[' && !isDigit(p.b[p.at]) {
		return p.exprFault(start, "# without the number of a variable")
	}
	arg := p.operand(depth + 1)
	if arg == nil {
		return nil
	}
	return &Expr{Op: "#", Args: []*Expr{arg}, Span: p.text.Span(start, p.at)}
}

// bracket reads [ expression ].
func (p *parser) bracket(depth int) *Expr {
	p.blanks()
	start := p.at
	if !p.next("[") {
		return p.exprFault(start, "a [ is missing")
	}
	p.at++
	e := p.expr(0, depth+1)
	if e == nil {
		return nil
	}
	if p.blanks(); !p.next("]") {
		p.at = min(p.at, p.end)
		return p.exprFault(start, "a [ is not closed by ]")
	}
	p.at++
	inner := *e
	inner.Span = p.text.Span(start, p.at)
	return &inner
}

// function tells which function name followed by a bracket stands next.
func (p *parser) function() string {
	for _, name := range functions {
		if p.next(name) && p.opens(p.at+len(name)) {
			return name
		}
	}
	return ""
}

// opens tells whether the next character from i on, blanks aside, is [.
func (p *parser) opens(i int) bool {
	for i < p.end && isBlank(p.b[i]) {
		i++
	}
	return i < p.end && p.b[i] == '['
}

// exprFault reports a fault in an expression and returns nil.
func (p *parser) exprFault(start int, format string, args ...any) *Expr {
	p.fault(start, max(p.at, start+1), BadExpression, "write expressions in [ ] with + - * / and # variables, as in X[#1 + 2.5]", format, args...)
	return nil
}

// expressionNext tells whether a variable, a bracket or a function stands next,
// with or without signs, where a number could.
func (p *parser) expressionNext() bool {
	i := p.at
	for i < p.end && (isBlank(p.b[i]) || p.b[i] == '-' || p.b[i] == '+') {
		i++
	}
	if i == p.end {
		return false
	}
	if p.b[i] == '#' || p.b[i] == '[' {
		return true
	}
	back := p.at
	p.at = i
	name := p.function()
	p.at = back
	return name != ""
}

func isFunction(op string) bool { return slices.Contains(functions, op) }
