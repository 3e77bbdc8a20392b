package taper

import (
	"fmt"
	"strconv"
	"strings"
	"unicode/utf8"

	"taperwright/profiles/geom"
)

// Malformed tells where a ratio or an angle cannot be read: the bytes
// [From, To) of the text given.
type Malformed struct {
	From, To      int
	Message, Help string
}

func (m *Malformed) Error() string { return m.Message + "; " + m.Help }

const (
	ratioHelp = `write the rise on diameter to the run along the axis, like "1:19.922", "7:24" or "7/24"`
	angleHelp = `write decimal degrees like 1.4377, or degrees, minutes and seconds like 1°26'16"`
)

// mostDigits is how many digits a number may have: more than 15 do not fit a
// float64, and nobody measured them.
const mostDigits = 15

// decimal is a number as written: its digits without leading zeros, and how
// many of them stand behind the point.
type decimal struct {
	digits string
	scale  int
}

func (d decimal) value() float64 {
	v, _ := strconv.ParseFloat(d.digits+"e-"+strconv.Itoa(d.scale), 64) // digits only: cannot fail
	return v
}

// half returns half a unit of the last written digit.
func (d decimal) half() float64 {
	v, _ := strconv.ParseFloat("5e-"+strconv.Itoa(d.scale+1), 64)
	return v
}

func (d decimal) String() string {
	if d.scale == 0 {
		return d.digits
	}
	s := d.digits
	for len(s) <= d.scale {
		s = "0" + s
	}
	return s[:len(s)-d.scale] + "." + s[len(s)-d.scale:]
}

// reader walks through one short text.
type reader struct {
	text string
	at   int
	help string
}

func (r *reader) blanks() {
	for r.at < len(r.text) && (r.text[r.at] == ' ' || r.text[r.at] == '\t') {
		r.at++
	}
}

func (r *reader) take(s string) bool {
	if strings.HasPrefix(r.text[r.at:], s) {
		r.at += len(s)
		return true
	}
	return false
}

// fail returns an error about the next character.
func (r *reader) fail(format string, args ...any) error {
	to := r.at
	if r.at < len(r.text) {
		_, n := utf8.DecodeRuneInString(r.text[r.at:])
		to += n
	}
	return &Malformed{From: r.at, To: to, Message: fmt.Sprintf(format, args...), Help: r.help}
}

// next returns the next character for a message.
func (r *reader) next() string {
	if r.at >= len(r.text) {
		return "here the text stops"
	}
	c, _ := utf8.DecodeRuneInString(r.text[r.at:])
	return "here stands " + strconv.QuoteRune(c)
}

// number reads digits with at most one point. None of it may be a sign, an
// exponent or a decimal comma.
func (r *reader) number(what string) (decimal, error) {
	from, scale, points, count := r.at, 0, 0, 0
	for r.at < len(r.text) {
		switch c := r.text[r.at]; {
		case c >= '0' && c <= '9':
			count++
			if points > 0 {
				scale++
			}
		case c == '.' && points == 0:
			points++
		default:
			goto end
		}
		r.at++
	}
end:
	if count == 0 {
		r.at = from
		return decimal{}, r.fail("%s: a number is wanted, %s", what, r.next())
	}
	if r.at < len(r.text) && r.text[r.at] == ',' {
		return decimal{}, &Malformed{From: r.at, To: r.at + 1, Message: what + ": the decimal sign is a point", Help: r.help}
	}
	digits := strings.TrimLeft(strings.ReplaceAll(r.text[from:r.at], ".", ""), "0")
	if digits == "" {
		digits = "0"
	}
	if len(digits) > mostDigits || scale > mostDigits {
		return decimal{}, &Malformed{From: from, To: r.at, Message: fmt.Sprintf("%s: more than %d digits", what, mostDigits), Help: r.help}
	}
	return decimal{digits, scale}, nil
}

// Rate is a rate of taper as written: rise on diameter to run along the axis.
type Rate struct{ rise, run decimal }

// ParseRatio reads "1:19.922", "7:24" or "7/24"; blanks round the numbers do
// not matter. Its error is a *Malformed.
func ParseRatio(text string) (Rate, error) {
	r := reader{text: text, help: ratioHelp}
	r.blanks()
	from := r.at
	rise, err := r.number("rise on diameter")
	if err != nil {
		return Rate{}, err
	}
	if rise.value() == 0 {
		return Rate{}, &Malformed{From: from, To: r.at, Message: "a rise of 0 is no taper", Help: r.help}
	}
	r.blanks()
	if !r.take(":") && !r.take("/") {
		return Rate{}, r.fail("between rise and run stands ':' or '/', %s", r.next())
	}
	r.blanks()
	from = r.at
	run, err := r.number("run along the axis")
	if err != nil {
		return Rate{}, err
	}
	if run.value() == 0 {
		return Rate{}, &Malformed{From: from, To: r.at, Message: "a run of 0 is a face, not a taper", Help: r.help}
	}
	r.blanks()
	if r.at < len(r.text) {
		return Rate{}, r.fail("behind the run %s", r.next())
	}
	return Rate{rise, run}, nil
}

// String returns the rate as ParseRatio reads it, with ':'.
func (r Rate) String() string { return r.rise.String() + ":" + r.run.String() }

// Slope returns the slope of the rate.
func (r Rate) Slope() Slope { return FromRatio(r.rise.value(), r.run.value()) }

// reach returns the slopes that the rate stands for: half a unit of the last
// digit behind a point; whole numbers are exact.
func (r Rate) reach() reach {
	var a, b float64
	if r.rise.scale > 0 {
		a = r.rise.half()
	}
	if r.run.scale > 0 {
		b = r.run.half()
	}
	rise, run := r.rise.value(), r.run.value()
	hi := inf
	if run > b {
		hi = (rise + a) / (2 * (run - b))
	}
	return reach{float64(r.Slope()), (rise - a) / (2 * (run + b)), hi}
}

// Angle is an angle as written: decimal degrees, or degrees with minutes and
// perhaps seconds, of which only the last may have a point.
type Angle struct {
	parts []decimal // degrees, minutes, seconds
	mark  bool      // written with the degree sign
}

// ParseAngle reads decimal degrees ("1.4377", "1.4377°") or degrees, minutes
// and seconds (1°26', 1°26'16"); the last part may have decimals. Its error is
// a *Malformed.
func ParseAngle(text string) (Angle, error) {
	r := reader{text: text, help: angleHelp}
	var a Angle
	r.blanks()
	for i, unit := range []struct{ name, mark string }{{"degrees", "°"}, {"minutes", "'"}, {"seconds", `"`}} {
		from := r.at
		d, err := r.number(unit.name)
		if err != nil {
			return Angle{}, err
		}
		if i > 0 && d.value() >= 60 {
			return Angle{}, &Malformed{From: from, To: r.at, Message: unit.name + " are below 60", Help: r.help}
		}
		to := r.at
		a.parts = append(a.parts, d)
		marked := r.take(unit.mark)
		if i == 0 {
			if a.mark = marked; !marked {
				break // plain decimal degrees
			}
		}
		if !marked {
			return Angle{}, r.fail("%s end with %s, %s", unit.name, unit.mark, r.next())
		}
		r.blanks()
		if r.at == len(r.text) {
			break
		}
		if d.scale > 0 {
			return Angle{}, &Malformed{From: from, To: to, Message: "only the last part has a decimal point", Help: r.help}
		}
		if i == 2 {
			return Angle{}, r.fail("behind the seconds %s", r.next())
		}
	}
	r.blanks()
	if r.at < len(r.text) {
		return Angle{}, r.fail("behind the degrees %s", r.next())
	}
	return a, nil
}

// String returns the angle as ParseAngle reads it.
func (a Angle) String() string {
	var b strings.Builder
	for i, p := range a.parts {
		b.WriteString(p.String())
		if a.mark {
			b.WriteString([]string{"°", "'", `"`}[i])
		}
	}
	return b.String()
}

// Degrees returns the angle in decimal degrees.
func (a Angle) Degrees() float64 {
	seconds, unit := 0.0, 3600.0
	for _, p := range a.parts {
		seconds += float64(p.value() * unit)
		unit /= 60
	}
	return seconds / 3600
}

// half returns half a unit of the last written digit, in degrees.
func (a Angle) half() float64 {
	h := a.parts[len(a.parts)-1].half()
	for range a.parts[1:] {
		h /= 60
	}
	return h
}

// DegMinSec writes an angle in radians as degrees, minutes and seconds with
// so many decimals of a second, as ParseAngle reads it: 1°26'15.8". Below 0 it
// begins with '-', which ParseAngle does not read: a half angle has no sign.
func DegMinSec(rad float64, decimals int) string {
	sign := ""
	if rad < 0 {
		sign, rad = "-", -rad
	}
	unit := int64(1)
	for range decimals {
		unit *= 10
	}
	n := geom.Count(float64(geom.Degrees(rad)*3600), decimals)
	if n == 0 {
		sign = ""
	}
	s := fmt.Sprintf("%s%d°%02d'%02d", sign, n/(3600*unit), n/(60*unit)%60, n/unit%60)
	if decimals > 0 {
		s += fmt.Sprintf(".%0*d", decimals, n%unit)
	}
	return s + `"`
}

// halfUnit returns half a unit of the last digit of a TOML number as written:
// 0.0005 for "1.234", 0.05 for "12.3e0", 0.5 for "10".
func halfUnit(digits string) float64 {
	mantissa, exponent, _ := strings.Cut(strings.ToLower(strings.ReplaceAll(digits, "_", "")), "e")
	_, behind, _ := strings.Cut(mantissa, ".")
	e, err := strconv.Atoi(exponent)
	if err != nil {
		e = 0
	}
	v, err := strconv.ParseFloat("5e"+strconv.Itoa(e-len(behind)-1), 64)
	if err != nil {
		return 0 // an exponent beyond float64: the number itself is refused elsewhere
	}
	return v
}
