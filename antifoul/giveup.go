package antifoul

import (
	"slices"
	"time"

	"boatyard.example/bottomwork/antifoul/calendar"
	"boatyard.example/bottomwork/antifoul/wear"
	"boatyard.example/bottomwork/compat"
	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/finding"
)

// giveUp finds what must be left for another season, in the trade's order: the whole barrier where nothing but prevention asks for it, then the
// third working coat. Metal keeps its barrier whatever the calendar says. Only what brings her into the water in time is given up, and on no part
// that has the time. It returns the schemes that are shown.
func (j *Job) giveUp(b *tables.Book, w crewing) ([]Scheme, error) {
	schemes := slices.Clone(j.Schemes)
	s := &j.Season
	var left []giving
	ready := s.Calendar.Ready
	for _, leave := range []func(*tables.Book, Boat, *Scheme) (finding.Finding, bool){leaveBarrier, leaveCoat} {
		before := len(left)
		for i := range schemes {
			was := schemes[i]
			f, gone := leave(b, j.Boat, &schemes[i])
			switch {
			case gone:
				left = append(left, giving{i, was, f})
			case f.Rule != "":
				s.Findings = append(s.Findings, f)
			}
		}
		if len(left) == before {
			continue // nothing else to try
		}
		turns, c, err := w.tried(j, schemes)
		if err != nil {
			return nil, err
		}
		if !c.Ready.IsZero() {
			ready = c.Ready
		}
		if !c.Fits {
			continue
		}
		s.Kept, s.Partial = turns, c
		for k := len(left) - 1; k >= 0; k-- { // give back what was not needed
			back := slices.Clone(schemes)
			back[left[k].scheme] = left[k].was
			if slices.ContainsFunc(left[k+1:], func(g giving) bool { return g.scheme == left[k].scheme && g.finding.Rule != "" }) {
				continue // its next coat is given up too
			}
			turns, c, err := w.tried(j, back)
			if err != nil {
				return nil, err
			}
			if c.Fits {
				schemes, s.Kept, s.Partial, left[k].finding = back, turns, c, finding.Finding{}
			}
		}
		for _, g := range left {
			if g.finding.Rule != "" {
				s.Findings = append(s.Findings, g.finding)
			}
		}
		s.Findings = append(s.Findings, finding.Finding{
			Rule: RuleFits, Verdict: finding.Fine, Basis: []finding.Basis{{Kind: finding.Derived}},
			Facts: []finding.Fact{fact("launch", j.Boat.Work.Launch), fact("ready", day(s.Partial.Ready).String())},
		})
		return schemes, nil
	}
	if !ready.IsZero() { // else the calendar has said which work finds no hour
		rule := RuleNotEven
		if len(left) == 0 {
			rule = RuleNothingLeft
		}
		s.Findings = append(s.Findings, finding.Finding{
			Rule: rule, Verdict: finding.Forbidden, Basis: []finding.Basis{{Kind: finding.CommonPractice}},
			Facts: []finding.Fact{fact("launch", j.Boat.Work.Launch), fact("ready", day(ready).String())},
		})
	}
	return j.Schemes, nil
}

// giving is one thing given up: in which scheme, what that was before, and what is said of it.
type giving struct {
	scheme  int
	was     Scheme
	finding finding.Finding
}

// tried lays schemes on days.
func (w crewing) tried(j *Job, schemes []Scheme) ([]Turn, calendar.Calendar, error) {
	turns := w.turns(j, schemes)
	c, err := w.arrange(turns)
	return turns, c, err
}

// moreHelp says what one more pair of hands, or every day of the week, would do for the whole job: cheaper than paint that is left out.
func (j *Job) moreHelp(w crewing) error {
	s := &j.Season
	for _, help := range []struct {
		rule finding.ID
		with func(*crewing)
	}{
		{RuleMoreHands, func(w *crewing) { w.boat.Work.Hands = max(1, w.boat.Work.Hands) + 1 }},
		{RuleMoreDays, func(w *crewing) { w.boat.Work.Weekdays, w.boat.Work.Taken = everyDay, nil }},
	} {
		more := w
		help.with(&more)
		_, c, err := more.tried(j, j.Schemes)
		if err != nil {
			return err
		}
		if !c.Ready.IsZero() && (s.Calendar.Ready.IsZero() || c.Fits || day(c.Ready).Before(day(s.Calendar.Ready))) {
			s.Findings = append(s.Findings, finding.Finding{
				Rule: help.rule, Verdict: finding.Fine, Basis: []finding.Basis{{Kind: finding.Derived}},
				Facts: []finding.Fact{fact("hands", more.boat.Work.Hands), fact("ready", day(c.Ready).String())},
			})
		}
	}
	return nil
}

var everyDay = []time.Weekday{time.Sunday, time.Monday, time.Tuesday, time.Wednesday, time.Thursday, time.Friday, time.Saturday}

// leaveBarrier takes the whole barrier out of a scheme where nothing but prevention asks for it. What is kept is the barrier of a metal, and one over
// which alone the coating may lie; that is said too.
func leaveBarrier(b *tables.Book, boat Boat, s *Scheme) (f finding.Finding, gone bool) {
	isBarrier := func(l compat.Layer) bool { return l.For == compat.Undercoat && l.Coating.Role == tables.Barrier }
	coats := 0
	for _, k := range s.Coats {
		if isBarrier(k.Layer) {
			coats += k.Layer.Coats
		}
	}
	if coats == 0 {
		return f, false
	}
	at := slices.IndexFunc(boat.Parts, func(p compat.Part) bool { return p.Name == s.Part })
	part := boat.Parts[at]
	m, _ := b.Material(part.Material) // checked with the boat
	f = finding.Finding{About: s.Part, Against: m.Name, Basis: []finding.Basis{m.Basis("barrier")}}
	stack := slices.DeleteFunc(slices.Clone(s.Stack), isBarrier)
	if m.Metal || m.Barrier == tables.OverBarrier || m.Takes(s.Coating.Biocide) == tables.OverBarrier ||
		compat.CheckStack(b, part, stack, dryDays(boat, s.Coating)).Worst() == finding.Forbidden {
		f.Rule, f.Verdict = RuleKeepBarrier, finding.Caution
		return f, false
	}
	f.Rule, f.Verdict, f.Facts = RuleLeaveBarrier, finding.Needs, []finding.Fact{fact("coats", coats)}
	if part.Laminate == "wet" || does(*s, finding.DryOut) {
		f.Rule = RuleWetBarrier
	}
	s.Stack = stack
	s.Coats = slices.DeleteFunc(slices.Clone(s.Coats), func(k Coat) bool { return isBarrier(k.Layer) })
	return f, true
}

// leastWorking is how many working coats are left at least: the trade gives up the third. Basis: common practice.
const leastWorking = 2

// leaveCoat takes one working coat out of a scheme that has more than two, and says what that costs in months.
func leaveCoat(b *tables.Book, boat Boat, s *Scheme) (f finding.Finding, gone bool) {
	at := slices.IndexFunc(s.Coats, func(k Coat) bool { return k.Layer.For == compat.Working && k.Layer.Coats > leastWorking })
	if at < 0 {
		return f, false
	}
	fewer := func(l compat.Layer) compat.Layer {
		l.Coats--
		l.Film = times(l.Coating.Film, l.Coats)
		return l
	}
	s.Coats = slices.Clone(s.Coats)
	was := s.Coats[at].Layer.Coats
	s.Coats[at].Layer = fewer(s.Coats[at].Layer)
	s.Stack = slices.Clone(s.Stack)
	for i := range s.Stack {
		if s.Stack[i].For == compat.Working {
			s.Stack[i] = fewer(s.Stack[i])
		}
	}
	f = finding.Finding{
		Rule: RuleLeaveCoat, Verdict: finding.Needs, About: s.Part, Basis: []finding.Basis{s.Coating.Basis("film")},
		Facts: []finding.Fact{fact("was", was), fact("coats", was-1)},
	}
	var zones []tables.Zone
	for _, z := range s.Coats[at].Zones {
		row, _ := b.Zone(z) // of this book
		zones = append(zones, row)
	}
	then := wear.Predict(b, s.Stack, boat.Use, zones, boat.Work.Launch)
	f.Facts = append(f.Facts, fact("before", nextHaul(s.Lasts)), fact("after", nextHaul(then)))
	return f, true
}

// nextHaul is when she is painted again, in words.
func nextHaul(f wear.Forecast) string {
	if !f.NextHaul.Given() {
		return "not reckoned"
	}
	return f.NextHaul.String()
}
