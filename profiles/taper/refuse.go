package taper

import (
	"slices"
	"strings"

	"taperwright/profiles/finding"
	"taperwright/profiles/geom"
)

// contradicted adds the finding about the first two claims that disagree:
// both values, their difference on diameter and as stand-off, and the slips
// that explain it.
func contradicted(items []item, all []claim, ask Ask, into *finding.List) bool {
	a, b, found := quarrel(all)
	if !found {
		return false
	}
	if back := backwards(a, b); len(back.of) > 0 {
		into.Add(refusal(NoCone, items, back, back, back.of[0], ask, phrase(items, back, ask)+": "+turn(back), cureTurn(items, back, ask)))
		return true
	}
	blame, help := b.of[0], "measure or look up again, and leave out what is not sure: fewer facts suffice"
	if b.level {
		blame = b.of[1]
	}
	if why := explain(items, ask); len(why) > 0 {
		blame, help = why[0].item, why[0].text
		if len(why) > 1 {
			help += "; or " + why[1].text
		}
		if x, y, ok := involving(all, blame); ok {
			a, b = x, y
		}
	}
	message := ""
	if b.level {
		t := a.slope.at
		if a.level {
			t = 0
		}
		message = phrase(items, b, ask) + " stand at one place and disagree: " + apart(2*b.slope.at, "", t, ask)
	} else {
		base := reference(items, a, b, ask)
		message = phrase(items, a, ask) + " and " + phrase(items, b, ask) + " disagree: " + rate(a) + " and " + rate(b) + ", " +
			apart(2*base*(a.slope.at-b.slope.at), " over "+ask.say(base), a.slope.at, ask)
	}
	into.Add(refusal(OverDefined, items, a, b, blame, ask, message, help))
	return true
}

// refusal is a finding at the fact to blame, with the others beside it.
func refusal(code string, items []item, a, b claim, blame int, ask Ask, message, help string) finding.Finding {
	f := finding.Finding{Code: code, Span: items[blame].Span, Message: message, Help: help}
	for _, i := range append(slices.Clone(a.of), b.of...) {
		p := finding.Place{Span: items[i].Span, Message: items[i].say(ask)}
		if i != blame && p.Span.Valid() && !slices.Contains(f.Places, p) {
			f.Places = append(f.Places, p)
		}
	}
	return f
}

// backwards returns the one of two claims whose diameters make no taper toward
// the small end; no claim where both do.
func backwards(a, b claim) claim {
	for _, c := range []claim{a, b} {
		if !c.level && len(c.of) > 1 && c.slope.at < flattest {
			return c
		}
	}
	return claim{}
}

// turn says why two diameters make no taper toward the small end.
func turn(c claim) string {
	if c.slope.at > -flattest {
		return "equal diameters are no taper"
	}
	return "the diameter grows toward the small end"
}

// cureTurn says what would make them one.
func cureTurn(items []item, c claim, ask Ask) string {
	switch {
	case c.slope.at > -flattest:
		return "equal diameters are a journal; for a taper give two that differ"
	case swapped(items, ask):
		return "exchange " + ask.call(Large) + " and " + ask.call(Small) + ": the large end is the thicker one"
	}
	if len(claims(items, ask)) > 1 { // else any other diameter would "fit"
		if why := explain(items, ask); len(why) > 0 {
			return why[0].text
		}
	}
	return "the large end is the thicker one: look at the diameters, and at the end the gauge plane is counted from"
}

// reference returns the length over which two slopes are compared: that of the
// diameters one of them rests on, else the cone's, else 100 mm or 10 in.
func reference(items []item, a, b claim, ask Ask) float64 {
	length, ok := find(items, Length)
	switch {
	case b.base > 0:
		return b.base
	case a.base > 0:
		return a.base
	case ok:
		return length.reach.at
	case ask.Inch:
		return 10 * inch
	}
	return 100
}

// involving returns the first two claims that disagree and of which one rests
// on item i.
func involving(all []claim, i int) (claim, claim, bool) {
	for j, c := range all {
		for _, d := range all[:j] {
			if (slices.Contains(c.of, i) || slices.Contains(d.of, i)) && !agree(d, c) {
				return d, c, true
			}
		}
	}
	return claim{}, claim{}, false
}

// phrase returns the facts of a claim as the user wrote them.
func phrase(items []item, c claim, ask Ask) string {
	var words []string
	for _, i := range c.of {
		words = append(words, items[i].say(ask))
	}
	if n := len(words); n > 1 {
		return strings.Join(words[:n-1], ", ") + " with " + words[n-1]
	}
	return words[0]
}

func rate(c claim) string {
	if c.slope.at <= 0 {
		return "no taper"
	}
	return "1:" + trimmed(Slope(c.slope.at).Ratio(), 4)
}

// apart writes a difference on diameter, and as stand-off on a slope of t
// where there is one.
func apart(diameter float64, over string, t float64, ask Ask) string {
	diameter = max(diameter, -diameter)
	s := ask.say(diameter) + " on diameter" + over
	if t > 0 {
		s += ", " + ask.say(Slope(t).StandOff(diameter)) + " as stand-off"
	}
	return s
}

// missingSlope adds the finding that nothing tells how fast the cone grows.
func missingSlope(items []item, ask Ask, into *finding.List) {
	into.Error(ask.Span, UnderDefined, "add "+rates(ask)+", or a second diameter and the length between the two",
		"nothing tells how fast the diameter changes%s", given(items, ask))
}

// rates lists the facts that give a slope.
func rates(ask Ask) string {
	var names []string
	for k := Ratio; k <= RateOf; k++ {
		names = append(names, ask.call(k))
	}
	return "one of " + strings.Join(names, ", ")
}

func given(items []item, ask Ask) string {
	var words []string
	for _, it := range items {
		words = append(words, it.say(ask))
	}
	if len(words) == 0 {
		return ""
	}
	return ": only " + strings.Join(words, ", ")
}

// sound tells whether the cone can be, and is whole where that was asked for.
func sound(c Cone, items []item, ask Ask, into *finding.List) bool {
	switch {
	case c.known[Length] && c.Length <= 0:
		into.Error(ask.Span, NoCone, "look at the place of the gauge plane", "the facts make its length %s", ask.say(c.Length))
	case c.known[Large] && c.Large <= 0:
		into.Error(ask.Span, NoCone, "look at the place of the gauge plane", "the facts make the large diameter %s", ask.say(2*c.Large))
	case c.known[Small] && geom.Count(c.Small, 7) < 0:
		help := "make it shorter, thicker or slower"
		if c.known[Large] {
			help = "from " + ask.say(2*c.Large) + " on diameter it comes to a point after " + ask.say(c.Large/float64(c.Slope))
		}
		into.Error(ask.Span, NoCone, help, "the cone comes to a point before its small end")
	case ask.Whole && !c.known[Large] && !c.known[Small]:
		into.Error(ask.Span, UnderDefined, "add "+ask.call(Small)+", "+ask.call(Large)+" or "+ask.call(Gauge), "no diameter is given")
	case ask.Whole && !c.known[Length]:
		into.Error(ask.Span, UnderDefined, "add "+ask.call(Length)+", or a diameter at the other end", "nothing tells how long the cone is%s", given(items, ask))
	default:
		return true
	}
	return false
}
