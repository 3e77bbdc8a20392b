package rs274

// flows are the words that steer the flow of a program. They are known by
// name so that they are refused by name.
var flows = []string{"IF", "WHILE", "THEN", "GOTO", "DO", "END"}

// word reads a letter and what follows it. start is where the word begins: at
// its letter, or at the comma before it.
func (p *parser) word(start int, comma bool) bool {
	letter := upper(p.b[p.at])
	if !comma {
		if flow := p.flow(); flow != "" {
			return p.flowWord(flow)
		}
	}
	p.at++
	behind := p.at
	p.blanks()
	w := Word{Letter: letter, Comma: comma}
	switch {
	case p.at == p.end:
		return p.fault(start, behind, BadNumber, "", "%c without a number", letter)
	case p.b[p.at] == '.' || isDigit(p.b[p.at]) || (p.b[p.at] == '-' || p.b[p.at] == '+') && !p.expressionNext():
		n, ok := p.number()
		if !ok {
			return false
		}
		w.Number = n
	case p.expressionNext():
		p.sum = 0
		if w.Value = p.operand(0); w.Value == nil {
			return false
		}
	case p.b[p.at] == ',':
		return p.fault(start, p.at+1, BadNumber, "the decimal sign of a program is the point", "a comma where the number of %c belongs", letter)
	case p.b[p.at] == '=':
		return p.fault(start, p.at+1, BadExpression, "a number follows its letter at once; only a # variable is set with =", "= behind %c: this is another language", letter)
	case isLetter(p.b[p.at]):
		return p.fault(start, p.end, BareText, "remarks stand in ( )", "text outside a comment")
	default:
		return p.fault(p.at, p.at+1, BadNumber, "", "%s where the number of %c belongs", p.show(p.at), letter)
	}
	w.Span = p.text.Span(start, p.at)
	p.words = append(p.words, w)
	if p.at < p.end && p.b[p.at] == ',' && p.at+1 < p.end && isDigit(p.b[p.at+1]) {
		return p.fault(start, p.at+1, BadNumber, "the decimal sign of a program is the point", "a comma inside the number of %c", letter)
	}
	return true
}

// number reads digits with at most one point and, before them, at most one
// sign. Blanks may stand anywhere (NISTIR 6556); because many controls do not
// take them between digits, that is a warning.
func (p *parser) number() (Decimal, bool) {
	var d Decimal
	start := p.at
	if c := p.b[p.at]; c == '-' || c == '+' {
		d.Neg = c == '-'
		p.at++
		p.blanks()
	}
	first, any, gap, digits, whole := p.at, false, false, 0, 0
	end := p.at
scan:
	for ; p.at < p.end; p.at++ {
		switch c := p.b[p.at]; {
		case isDigit(c):
			any = true
			gap = gap || p.at > end && end > first
			if digits > 0 || c != '0' {
				digits++
			}
			if digits <= maxDigits {
				d.Digits = d.Digits*10 + int64(c-'0')
			}
			if d.Point {
				d.Scale = min(d.Scale+1, maxScale+1)
			} else {
				whole++
			}
		case c == '.':
			if d.Point {
				return d, p.fault(start, p.at+1, BadNumber, "a number has at most one decimal point", "a second decimal point in a number")
			}
			gap = gap || p.at > end && end > first
			d.Point = true
		case isBlank(c):
			continue
		default:
			break scan
		}
		end = p.at + 1
	}
	p.at = end
	switch {
	case !any && d.Point:
		return d, p.fault(start, end, BadNumber, "", "a decimal point without digits")
	case !any:
		return d, p.fault(start, max(end, start+1), BadNumber, "", "a sign without digits")
	case digits > maxDigits || d.Scale > maxScale || whole > maxWhole:
		return d, p.fault(start, end, BadNumber, "lengths need about 8 digits", "a number of more than %d digits", maxDigits)
	}
	d.Whole = uint8(whole)
	if gap {
		p.warn(start, end, BlankInNumber, "write "+d.String(), "blanks inside a number, read as %s: many controls do not take them", d)
	}
	return d, true
}

// setting reads # variable = value.
func (p *parser) setting() bool {
	start := p.at
	p.sum = 0
	target := p.variable(0)
	if target == nil {
		return false
	}
	if p.blanks(); !p.next("=") {
		return p.fault(start, max(p.at, start+1), BadExpression, "set a variable as in #1=5, use it as in X#1", "a variable that is neither set nor behind a letter")
	}
	p.at++
	value := p.expr(0, 0)
	if value == nil {
		return false
	}
	e := &Expr{Op: "=", Args: []*Expr{target, value}, Span: p.text.Span(start, value.Span.End)}
	p.at = value.Span.End
	p.words = append(p.words, Word{Letter: '#', Value: e, Span: e.Span})
	return true
}

// flow tells which flow word stands next. D and E are letters of words too,
// but never with another letter behind them.
func (p *parser) flow() string {
	for _, name := range flows {
		if !p.next(name) {
			continue
		}
		i := p.at + len(name)
		for i < p.end && isBlank(p.b[i]) {
			i++
		}
		var c byte
		if i < p.end {
			c = p.b[i]
		}
		switch name {
		case "IF", "WHILE":
			if c == '[' {
				return name
			}
		case "THEN":
			if !isLetter(c) || i > p.at+len(name) {
				return name
			}
		default:
			if isDigit(c) || c == '#' || c == '[' {
				return name
			}
		}
	}
	return ""
}

// flowWord reads a flow word and its condition or number.
func (p *parser) flowWord(name string) bool {
	start := p.at
	p.at += len(name)
	e := &Expr{Op: name}
	if name != "THEN" {
		p.blanks()
		p.sum = 0
		arg := p.operand(0)
		if arg == nil {
			return false
		}
		e.Args = []*Expr{arg}
	}
	e.Span = p.text.Span(start, p.at)
	p.words = append(p.words, Word{Letter: '?', Value: e, Span: e.Span})
	return true
}
