package verify

import (
	"slices"

	"taperwright/profiles"
	"taperwright/profiles/finding"
	"taperwright/profiles/geom"
	"taperwright/verify/motion"
	"taperwright/verify/rs274"
)

// Options are what a check may be told. The zero value: programs follow the
// order of the set-ups.
type Options struct {
	Setup string // the set-up the (first) program belongs to
}

// Check reads the programs, cuts the part's stock with them and judges every
// feature. Findings about the user's texts are added to into. part may be nil
// when it could not be built: nothing can be judged then. Check does not
// change part.
func Check(programs []*finding.Text, part *profiles.Part, opt Options, into *finding.List) (v *Verdict) {
	v = &Verdict{State: CannotJudge, Part: part}
	for _, p := range programs {
		v.Programs = append(v.Programs, p.Name)
	}
	at := finding.Span{}
	defer func() {
		if fault := recover(); fault != nil { // a fault of ours is a finding, never a panic
			into.Error(at, CodeInternal, "this is a fault of the verifier: please report the program and the part file", "the verifier failed while judging this block")
			v.State = CannotJudge
		}
		v.Findings = into.Sorted()
	}()
	if part == nil {
		return v
	}
	v.PartName = part.Text.Name
	first, ok := firstSetup(part, len(programs), opt, into)
	if !ok {
		return v
	}
	read := make([]program, len(programs))
	reading := false // an error that leaves open what the program does
	for i, text := range programs {
		var found finding.List
		read[i] = readOne(part, text, &found)
		for _, f := range found.Sorted() {
			reading = reading || f.Severity == finding.Error && f.Code != motion.FeedMissing
			into.Add(f)
		}
	}
	b := newBench(part, first, into)
	for i, text := range programs {
		at = text.Span(0, 0)
		if !b.run(text, first+i, read[i]) {
			at = b.at
			break
		}
	}
	at = finding.Span{}
	v.Runs, v.Owners, v.Stock, v.NotJudged = b.runs, b.owners, b.stock, b.notJudged
	v.assume(read, b)
	v.Totals = v.total()
	rows := b.rows(part, first, len(programs), b.stopped || reading)
	wrong := b.judging > 0 || feedMissing(into)
	cannot := b.stopped || reading
	for i := range rows {
		r := &rows[i]
		v.Rows = append(v.Rows, r.row)
		wrong = wrong || r.row.Verdict == Out
		cannot = cannot || r.row.Verdict == CannotJudge
		if r.row.Verdict == Out {
			b.blame(r)
		}
	}
	switch {
	case wrong:
		v.State = Wrong
	case !cannot:
		v.State = Good
	}
	if !b.stopped && !reading && slices.ContainsFunc(v.Rows, func(r Row) bool { return r.Verdict == Out || r.Verdict == CannotJudge }) {
		var spent bool
		if v.Slips, spent = b.slips(read, first, rows); spent {
			v.NotJudged = append(v.NotJudged, "further likely slips: the program is long")
		}
	}
	return v
}

// readOne parses a program and interprets it as the part's lathe would.
func readOne(part *profiles.Part, text *finding.Text, into *finding.List) program {
	file := rs274.Parse(text, into)
	return program{file, motion.Interpret(file, part.Shop, into)}
}

// firstSetup returns the set-up of the first program.
func firstSetup(part *profiles.Part, programs int, opt Options, into *finding.List) (int, bool) {
	first := 0
	if opt.Setup != "" {
		first = slices.IndexFunc(part.Setups, func(s profiles.Setup) bool { return s.Name == opt.Setup })
		if first < 0 {
			var names []string
			for _, s := range part.Setups {
				names = append(names, s.Name)
			}
			into.Error(part.Text.Span(0, 0), CodeNoSetup, "the part has "+quoted(names), "the part has no set-up called %q", opt.Setup)
			return 0, false
		}
	}
	if n := len(part.Setups) - first; programs > n {
		into.Error(part.Text.Span(0, 0), CodeNoSetup, "give one program for each set-up, in their order", "%d programs are given for %d set-ups", programs, n)
		return 0, false
	}
	return first, true
}

func feedMissing(l *finding.List) bool {
	return slices.ContainsFunc(l.Sorted(), func(f finding.Finding) bool { return f.Code == motion.FeedMissing })
}

// rows judges the features of the set-ups that were cut. Where the judgement
// stopped, only what is gouged stays out: no later cut brings metal back.
func (b *bench) rows(part *profiles.Part, first, n int, stopped bool) []judged {
	var now []int
	for i, f := range part.Features {
		if f.Setup >= first && f.Setup < first+n && !f.Inside {
			now = append(now, i)
		}
	}
	var bits []bit
	for _, s := range b.stock.Outside() {
		bits = cutUp(bits, s.Piece, s.Owner)
	}
	done := map[int]judged{}
	for _, r := range judge(part, now, bits) {
		spoiled := slices.ContainsFunc(owners(r.bits), func(o int) bool { return b.spoiled[o] })
		for _, l := range b.loose {
			f := &part.Features[r.row.Feature]
			spoiled = spoiled || overlaps(f, l) // what fell off has said so itself: one finding a cause
		}
		if stopped && !r.gouged || spoiled {
			r.row.Verdict, r.faults = CannotJudge, nil
		}
		r.row.Blocks = b.places(owners(r.bits))
		done[r.row.Feature] = r
	}
	var out []judged
	for i, f := range part.Features {
		if r, ok := done[i]; ok {
			out = append(out, r)
			continue
		}
		row := Row{Name: f.Name, Kind: f.Kind, Inside: f.Inside, Feature: i, Verdict: Later}
		if f.Setup >= 0 && f.Setup < len(part.Setups) {
			row.Setup = part.Setups[f.Setup].Name
		}
		out = append(out, judged{row: row})
	}
	return out
}

// places returns the lines of owners, each once, in program order.
func (b *bench) places(owners []int) []Place {
	var out []Place
	for _, o := range owners {
		own := b.owners[o]
		m := b.runs[own.Run].Trace.Motions[own.Motion]
		p := Place{m.Span.Text, m.Span.From().Line}
		if len(out) == 0 || out[len(out)-1] != p {
			out = append(out, p)
		}
	}
	return out
}

// blame adds a finding for each reason why a row is out, at the block that
// owns the deepest gouge or the highest metal; raw stock is blamed on the feed
// move that came nearest (definitions 12).
func (b *bench) blame(r *judged) {
	for _, f := range r.faults {
		at := finding.Span{}
		if f.at.owner >= 0 {
			own := b.owners[f.at.owner]
			at = b.runs[own.Run].Trace.Motions[own.Motion].Span
		} else {
			at = b.nearest(f.at.at)
		}
		b.into.Error(at, f.code, f.help, "%s %s", r.row.Name, f.text)
	}
}

// nearest returns the words of the feed move whose path came nearest to a
// place of the part.
func (b *bench) nearest(p geom.Point) finding.Span {
	at, best, found := finding.Span{}, 0.0, false
	for i := range b.runs {
		run := &b.runs[i]
		for j := range run.Trace.Motions {
			m := &run.Trace.Motions[j]
			if m.Kind != motion.Cut {
				continue
			}
			if d := toPart(b.part, run.Setup, m.Path).Distance(p); !found || d < best {
				at, best, found = m.Span, d, true
			}
		}
	}
	return at
}

// assume lists what nobody said: of the part, the programs and the cutting.
func (v *Verdict) assume(read []program, b *bench) {
	add := func(a Assumption) {
		if !slices.Contains(v.Assumed, a) {
			v.Assumed = append(v.Assumed, a)
		}
	}
	for _, a := range v.Part.Assumed {
		add(Assumption{a.What, a.Value, a.From})
	}
	for _, p := range read {
		for _, a := range p.trace.Assumed {
			add(Assumption{a.What, a.Value, a.From})
		}
		for _, what := range p.trace.NotJudged {
			if !slices.Contains(v.NotJudged, what) {
				v.NotJudged = append(v.NotJudged, what)
			}
		}
	}
	for _, a := range b.assumed {
		add(a)
	}
	m := &v.Part.Shop.Machine
	if m.Chuck == nil {
		v.NotJudged = append(v.NotJudged, "chuck and jaws: no sizes in the shop file")
	} else {
		v.NotJudged = append(v.NotJudged, "chuck and jaws as bodies")
	}
	if slices.ContainsFunc(b.runs, func(r Run) bool { return v.Part.Setups[r.Setup].Hold.Support != "" }) {
		v.NotJudged = append(v.NotJudged, "tailstock centre as a body")
	}
	if m.Travel.Given {
		v.NotJudged = append(v.NotJudged, "travel of the slides")
	}
}

// total sums the programs.
func (v *Verdict) total() Totals {
	length := func(key string, x float64, known bool) Figure {
		return Figure{key, geom.Round(x, lengthPlaces), known, lengthPlaces}
	}
	t := Totals{Time: Figure{Key: "time_s", Decimals: 1}, PeakRPM: Figure{Key: "peak_rpm"}, LargestDiameter: length("largest_diameter_mm", 0, false), LeastZ: length("least_z_mm", 0, false)}
	time, timeKnown, peakKnown, peak := 0.0, true, true, 0.0
	cuts, radius, least := false, 0.0, 0.0
	for _, run := range v.Runs {
		s := run.Trace.Totals(v.Part.Shop.Machine.TopSpeed.Value, nil)
		t.Blocks += s.Blocks
		t.Motions += s.Motions
		t.CutLength += s.CutLength
		time, timeKnown, peakKnown = time+s.Time, timeKnown && s.TimeKnown, peakKnown && s.PeakKnown
		if s.PeakBlock >= 0 && (s.PeakRPM > peak || !t.PeakAt.Valid()) {
			peak, t.PeakAt = s.PeakRPM, run.Trace.Blocks[s.PeakBlock].Span
		}
		if s.HasCuts {
			if !cuts || s.Radius > radius {
				radius = s.Radius
			}
			if !cuts || s.LeastZ < least {
				least = s.LeastZ
			}
			cuts = true
		}
	}
	t.CutLength = geom.Round(t.CutLength, lengthPlaces)
	t.Time = Figure{"time_s", geom.Round(time, 1), timeKnown && cuts, 1}
	t.PeakRPM = Figure{"peak_rpm", geom.Round(peak, 0), peakKnown && cuts, 0}
	t.LargestDiameter, t.LeastZ = length("largest_diameter_mm", 2*radius, cuts), length("least_z_mm", least, cuts)
	return t
}
