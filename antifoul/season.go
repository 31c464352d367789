package antifoul

import (
	"errors"
	"slices"
	"strconv"
	"strings"
	"time"

	"boatyard.example/bottomwork/antifoul/calendar"
	"boatyard.example/bottomwork/antifoul/wear"
	"boatyard.example/bottomwork/compat"
	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

// The rules of a season that is too short, and of what a plan of days rests on.
const (
	RuleLeaveBarrier finding.ID = "season-leave-barrier"
	RuleLeaveCoat    finding.ID = "season-leave-coat"
	RuleKeepBarrier  finding.ID = "season-keep-barrier"
	RuleWetBarrier   finding.ID = "season-wet-barrier"
	RuleFits         finding.ID = "season-fits-then"
	RuleNotEven      finding.ID = "season-too-short"
	RuleNothingLeft  finding.ID = "season-nothing-to-leave"
	RuleMoreHands    finding.ID = "season-more-hands"
	RuleMoreDays     finding.ID = "season-more-days"
	RuleSlowRates    finding.ID = "season-slow-rates"
	RuleDryingOut    finding.ID = "season-drying-out"
	RuleSections     finding.ID = "season-blast-by-sections"
	RuleSlings       finding.ID = "season-slings"
	RuleSlingsDay    finding.ID = "season-slings-day"
	RuleUntilKnown   finding.ID = "season-until-known"
)

// Season is the plan of days. It is zero where the boat file names no days on which anybody works.
type Season struct {
	Turns    []Turn
	Calendar calendar.Calendar // of the whole job; its items count the turns
	Kept     []Turn            // when the season is too short: what is left of the turns when something is given up; else none
	Partial  calendar.Calendar // of these
	Drying   []Drying
	Findings finding.List
}

// Planned reports whether days were laid out.
func (s Season) Planned() bool { return len(s.Turns) > 0 }

// Shown is the plan to work by: the whole one where it fits, else what is left of it.
func (s Season) Shown() ([]Turn, calendar.Calendar) {
	if len(s.Kept) > 0 {
		return s.Kept, s.Partial
	}
	return s.Turns, s.Calendar
}

// Drying is the plan of drying out one part.
type Drying struct {
	Part     string
	Readings []quantity.Date // days on which the marked spots are read
	Earliest quantity.Date   // of the first coat on it: the reading at which the one a month before may first be matched
}

// mostReadings is how many monthly readings are laid out: twelve weeks, by when most laminates have stopped losing water once opened.
// Source: common practice, 4 to 12 weeks after opening.
const mostReadings = 4

// season lays the job on the crew's days.
func (j *Job) season(b *tables.Book, boat Boat) error {
	if !boat.Work.Planned() {
		return nil
	}
	w := crewing{book: b, boat: boat.inSeason(b), hours: typicalEnd, bare: breathing(b, boat, j.Schemes)}
	w.by, _ = b.Loss(boat.byRoller().By) // checked with the boat
	s := &j.Season
	turns := w.turns(j, j.Schemes)
	if len(turns) == 0 {
		return nil
	}
	s.Turns = turns
	var err error
	if s.Calendar, err = w.arrange(turns); err != nil {
		return err
	}
	shown := j.Schemes
	if !s.Calendar.Fits && !s.Calendar.Findings.Has(calendar.RuleBooked) && !s.Calendar.Findings.Has(calendar.RuleStands) {
		if shown, err = j.giveUp(b, w); err != nil {
			return err
		}
		if err := j.moreHelp(w); err != nil {
			return err
		}
	}
	if err := j.slow(w, shown); err != nil {
		return err
	}
	j.drying(b, boat)
	j.notes(w)
	return nil
}

// inSeason is the boat with what is taken where her file does not say it of the plan of days.
func (x Boat) inSeason(b *tables.Book) Boat {
	if !x.Work.Reserve.Given() {
		x.Work.Reserve, _ = quantity.Day.Near(factor(b, "launch-reserve"), 0, quantity.Up)
	}
	if !x.Work.SetUp.Given() {
		x.Work.SetUp, _ = quantity.Hour.Near(factor(b, "day-setup"), 2, quantity.Up)
	}
	x.Weather.Careful = true
	x.Weather.Trust, _ = quantity.Day.Near(factor(b, "forecast-trust"), 0, quantity.Up)
	if len(x.Weather.Forecast.Hours) == 0 { // a forecast's own mean is nearer
		x.Weather.Usual = x.Paint.Today
	}
	return x
}

// notes says what the plan rests on.
func (j *Job) notes(w crewing) {
	s := &j.Season
	turns, plan := s.Shown()
	has := func(of func(Turn) bool) bool { return slices.ContainsFunc(turns, of) }
	say := func(rule finding.ID, v finding.Verdict, k finding.Kind, facts ...finding.Fact) {
		s.Findings = append(s.Findings, finding.Finding{Rule: rule, Verdict: v, Facts: facts, Basis: []finding.Basis{{Kind: k}}})
	}
	if has(func(t Turn) bool { return t.Sections > 1 }) {
		say(RuleSections, finding.Caution, finding.CommonPractice)
	}
	if w.boat.Work.Slings.True() && len(j.Patches) > 0 {
		switch day := w.slingsDay(); {
		case has(func(t Turn) bool { return t.Patch }):
			say(RuleSlings, finding.Caution, finding.Assumption)
		case day.Given():
			say(RuleSlingsDay, finding.Ask, finding.Derived, fact("day", day))
		}
	}
	for _, it := range plan.Items {
		if turns[it.Task].Do == finding.Identify {
			say(RuleUntilKnown, finding.Ask, finding.CommonPractice, fact("day", day(it.End()).String()))
		}
	}
}

// arrange lays turns on days.
func (w crewing) arrange(turns []Turn) (calendar.Calendar, error) {
	var tasks []calendar.Task
	for _, t := range turns {
		tasks = append(tasks, t.Task)
	}
	c, err := calendar.Arrange(w.book, tasks, w.boat.Work, w.boat.On, w.boat.Weather)
	if err != nil {
		return c, prefixed(err, "work")
	}
	return c, nil
}

// slow says when she would be ready at the slow end of the rates of work, with the schemes that are shown.
func (j *Job) slow(w crewing, schemes []Scheme) error {
	_, plan := j.Season.Shown()
	if plan.Ready.IsZero() {
		return nil
	}
	w.hours = slowEnd
	c, err := w.arrange(w.turns(j, schemes))
	if err != nil {
		return err
	}
	if c.Ready.After(plan.Ready) { // else the longest coat is longer than a day: the calendar of typical rates says what it needs
		j.Season.Findings = append(j.Season.Findings, finding.Finding{
			Rule: RuleSlowRates, Verdict: finding.Caution, Basis: []finding.Basis{{Kind: finding.Derived}},
			Facts: []finding.Fact{fact("ready", day(c.Ready).String()), fact("planned", day(plan.Ready).String())},
		})
	}
	return nil
}

// day is the date on the clock of the zone; not given for the zero time.
func day(t time.Time) quantity.Date {
	if t.IsZero() {
		return quantity.Date{}
	}
	d, _ := quantity.NewDate(t.Year(), int(t.Month()), t.Day())
	return d
}

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
			continue
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
	part.Barrier = quantity.NotSaid
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
	then := wear.Predict(b, s.Stack, boat.Use, s.zones(b), boat.Work.Launch)
	f.Facts = append(f.Facts, fact("before", nextHaul(s.Lasts)), fact("after", nextHaul(then)))
	s.Lasts = then
	return f, true
}

// nextHaul is when she is painted again, in words.
func nextHaul(f wear.Forecast) string {
	if !f.NextHaul.Given() {
		return "not reckoned"
	}
	return f.NextHaul.String()
}

// zones are the zone rows of the scheme's widest coat.
func (s *Scheme) zones(b *tables.Book) []tables.Zone {
	var out []tables.Zone
	for _, k := range s.Coats {
		if k.Layer.For != compat.Working {
			continue
		}
		for _, z := range k.Zones {
			if row, err := b.Zone(z); err == nil {
				out = append(out, row)
			}
		}
	}
	return out
}

// drying lays out the monthly readings of each part that must dry before its first coat.
func (j *Job) drying(b *tables.Book, boat Boat) {
	row, err := b.Step(finding.DryOut)
	if err != nil || !row.Wait.Given() {
		return
	}
	month := int(days(row.Wait))
	for _, s := range j.Schemes {
		if !does(s, finding.DryOut) {
			continue
		}
		start, there := boat.On, false
		turns, plan := j.Season.Shown()
		for _, it := range plan.Items {
			if turns[it.Task].Do == finding.DryOut {
				start, there = day(it.Start()), true
			}
		}
		if !there && len(plan.Items) > 0 {
			continue // it is not waited for: what shuts the laminate in was given up
		}
		d := Drying{Part: s.Part, Earliest: start.AddDays(month)}
		for n := range mostReadings {
			d.Readings = append(d.Readings, start.AddDays(n*month))
		}
		j.Season.Drying = append(j.Season.Drying, d)
		j.Season.Findings = append(j.Season.Findings, finding.Finding{
			Rule: RuleDryingOut, Verdict: finding.Caution, About: s.Part, Basis: []finding.Basis{row.Basis("wait")},
			Facts: []finding.Fact{fact("earliest", d.Earliest), fact("readings", strconv.Itoa(len(d.Readings)))},
		})
	}
}

// Morning is the answer for one morning: the coat that is next, and whether its can may be opened.
type Morning struct {
	Turn Turn
	calendar.Morning
}

// Morning says whether the next coat of the plan may be begun at the moment, on the clock that the moment carries. The next coat is the first whose
// planned hours are not over by then, and all that the plan has before the moment is taken as done. A coat that is planned for a later day is not due; one
// before which other work is planned waits for that, whatever the weather.
// ok is false when no coat is left, or no plan was made.
// The error is a finding.Faults, as calendar.Today's.
func (j *Job) Morning(now time.Time) (m Morning, ok bool, err error) {
	turns, plan := j.Season.Shown()
	var before []string
	for _, it := range plan.Items {
		t := turns[it.Task]
		if !it.End().After(now) {
			continue
		}
		if len(t.Coats) == 0 || it.Again {
			name := t.Name
			if it.Again {
				name = "abrading"
			}
			before = append(before, name)
			continue
		}
		boat := j.Boat.inSeason(j.Book)
		m.Turn = t
		start := it.Start().In(now.Location())
		say := func(rule finding.ID, v finding.Verdict, facts ...finding.Fact) {
			m.Verdict = v
			m.Finding = finding.Finding{Rule: rule, Verdict: v, About: t.Name, Basis: []finding.Basis{{Kind: finding.Derived}}, Facts: facts}
		}
		if day(start) != day(now) {
			m.Next, m.Sure = it.Start(), it.Verdict == finding.Fine
			say(calendar.RuleNoCoat, finding.Forbidden, fact("next", calendar.Moment(start)))
			return m, true, nil
		}
		at := now
		if len(before) > 0 {
			at = start
		}
		m.Morning, err = calendar.Today(j.Book, t.Task, boat.Work, at, boat.Weather)
		var faults finding.Faults
		if errors.As(err, &faults) {
			err = faults.Under("", "work")
		}
		if err == nil && len(before) > 0 {
			m.From = start
			say(calendar.RuleBefore, finding.Needs, fact("before", strings.Join(before, ", then ")), fact("from", calendar.Moment(start)))
		}
		return m, err == nil, err
	}
	return Morning{}, false, nil
}
