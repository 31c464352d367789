package antifoul

import (
	"errors"
	"slices"
	"strconv"
	"time"

	"boatyard.example/bottomwork/antifoul/calendar"
	"boatyard.example/bottomwork/antifoul/wear"
	"boatyard.example/bottomwork/compat"
	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

// The rules of a season that is too short, and of a laminate that must dry.
const (
	RuleLeaveBarrier finding.ID = "season-leave-barrier"
	RuleLeaveCoat    finding.ID = "season-leave-coat"
	RuleKeepBarrier  finding.ID = "season-keep-barrier"
	RuleWetBarrier   finding.ID = "season-wet-barrier"
	RuleFits         finding.ID = "season-fits-then"
	RuleNotEven      finding.ID = "season-too-short"
	RuleSlowRates    finding.ID = "season-slow-rates"
	RuleDryingOut    finding.ID = "season-drying-out"
	RuleSections     finding.ID = "season-blast-by-sections"
	RuleSlings       finding.ID = "season-slings"
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
	if !boat.Work.Reserve.Given() {
		if d, err := quantity.Day.Near(factor(b, "launch-reserve"), 0, quantity.Up); err == nil {
			boat.Work.Reserve = d
		}
	}
	if !boat.Work.SetUp.Given() {
		if d, err := quantity.Hour.Near(factor(b, "day-setup"), 2, quantity.Up); err == nil {
			boat.Work.SetUp = d
		}
	}
	if boat.Weather.Usual = boat.Paint.Today; len(boat.Weather.Forecast.Hours) > 0 {
		boat.Weather.Usual = quantity.Temperature{} // the forecast's own mean is nearer
	}
	by, _ := b.Loss(boat.byRoller().By) // checked with the boat
	w := crewing{book: b, boat: boat, by: by, hours: typicalEnd, bare: breathing(b, boat, j.Schemes)}
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
	if err := j.slow(w); err != nil {
		return err
	}
	j.drying(b, boat)
	if slices.ContainsFunc(turns, func(t Turn) bool { return t.Do == finding.Blast }) {
		s.Findings = append(s.Findings, finding.Finding{Rule: RuleSections, Verdict: finding.Caution, Basis: []finding.Basis{{Kind: finding.CommonPractice}}})
	}
	if boat.Work.Slings.True() && slices.ContainsFunc(turns, func(t Turn) bool { return t.Patch && len(t.Coats) > 0 }) {
		s.Findings = append(s.Findings, finding.Finding{Rule: RuleSlings, Verdict: finding.Caution, Basis: []finding.Basis{{Kind: finding.Assumption}}})
	}
	if s.Calendar.Fits {
		return nil
	}
	return j.giveUp(b, w)
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

// slow says when she would be ready at the slow end of the rates of work.
func (j *Job) slow(w crewing) error {
	w.hours = slowEnd
	c, err := w.arrange(w.turns(j, j.Schemes))
	if err != nil {
		return err
	}
	f := finding.Finding{Rule: RuleSlowRates, Verdict: finding.Caution, Basis: []finding.Basis{{Kind: finding.Derived}}}
	if c.Ready.IsZero() {
		return nil // the longest coat is longer than a day then; the calendar of typical rates says what it needs
	}
	f.Facts = []finding.Fact{fact("ready", day(c.Ready).String()), fact("planned", day(j.Season.Calendar.Ready).String())}
	if !j.Season.Calendar.Ready.IsZero() && c.Ready.After(j.Season.Calendar.Ready) {
		j.Season.Findings = append(j.Season.Findings, f)
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
// third working coat. Metal keeps its barrier whatever the calendar says.
func (j *Job) giveUp(b *tables.Book, w crewing) error {
	schemes := slices.Clone(j.Schemes)
	for _, step := range []func(*tables.Book, Boat, *Scheme) finding.List{leaveBarrier, leaveCoat} {
		var left finding.List
		for i := range schemes {
			left = append(left, step(b, j.Boat, &schemes[i])...)
		}
		j.Season.Findings = append(j.Season.Findings, left...)
		if left.Worst() != finding.Needs {
			continue // nothing was left out: only why not
		}
		turns := w.turns(j, schemes)
		c, err := w.arrange(turns)
		if err != nil {
			return err
		}
		j.Season.Kept, j.Season.Partial = turns, c
		if c.Fits {
			j.Season.Findings = append(j.Season.Findings, finding.Finding{
				Rule: RuleFits, Verdict: finding.Fine, Basis: []finding.Basis{{Kind: finding.Derived}},
				Facts: []finding.Fact{fact("launch", j.Boat.Work.Launch), fact("ready", day(c.Ready).String())},
			})
			return nil
		}
	}
	ready := j.Season.Calendar.Ready
	if !j.Season.Partial.Ready.IsZero() {
		ready = j.Season.Partial.Ready
	}
	if ready.IsZero() {
		return nil // the calendar has said which work finds no hour
	}
	j.Season.Findings = append(j.Season.Findings, finding.Finding{
		Rule: RuleNotEven, Verdict: finding.Forbidden, Basis: []finding.Basis{{Kind: finding.CommonPractice}},
		Facts: []finding.Fact{fact("launch", j.Boat.Work.Launch), fact("ready", day(ready).String())},
	})
	return nil
}

// leaveBarrier takes the whole barrier out of a scheme where nothing but prevention asks for it; what it says with Needs was left out.
//
// What is kept open is the barrier of a metal, and one over which alone the coating may lie.
func leaveBarrier(b *tables.Book, boat Boat, s *Scheme) finding.List {
	isBarrier := func(l compat.Layer) bool { return l.For == compat.Undercoat && l.Coating.Role == tables.Barrier }
	if !slices.ContainsFunc(s.Coats, func(k Coat) bool { return isBarrier(k.Layer) }) {
		return nil
	}
	at := slices.IndexFunc(boat.Parts, func(p compat.Part) bool { return p.Name == s.Part })
	part := boat.Parts[at]
	m, _ := b.Material(part.Material) // checked with the boat
	f := finding.Finding{About: s.Part, Against: m.Name, Basis: []finding.Basis{m.Basis("barrier")}}
	if m.Metal || m.Barrier == tables.OverBarrier || m.Takes(s.Coating.Biocide) == tables.OverBarrier {
		f.Rule, f.Verdict = RuleKeepBarrier, finding.Caution
		return finding.List{f}
	}
	stack := slices.DeleteFunc(slices.Clone(s.Stack), isBarrier)
	part.Barrier = quantity.NotSaid
	if compat.CheckStack(b, part, stack, dryDays(boat, s.Coating)).Worst() == finding.Forbidden {
		f.Rule, f.Verdict = RuleKeepBarrier, finding.Caution
		return finding.List{f}
	}
	coats := 0
	for _, k := range s.Coats {
		if isBarrier(k.Layer) {
			coats += k.Layer.Coats
		}
	}
	f.Rule, f.Verdict, f.Facts = RuleLeaveBarrier, finding.Needs, []finding.Fact{fact("coats", coats)}
	if part.Laminate == "wet" || does(*s, finding.DryOut) {
		f.Rule = RuleWetBarrier
	}
	s.Stack = stack
	s.Coats = slices.DeleteFunc(slices.Clone(s.Coats), func(k Coat) bool { return isBarrier(k.Layer) })
	return finding.List{f}
}

// leastWorking is how many working coats are left: two are the least that a worn place shows nothing of the first brush mark through.
const leastWorking = 2

// leaveCoat takes one working coat out of a scheme that has more than two, and says what that costs in months.
func leaveCoat(b *tables.Book, boat Boat, s *Scheme) finding.List {
	at := slices.IndexFunc(s.Coats, func(k Coat) bool { return k.Layer.For == compat.Working && k.Layer.Coats > leastWorking })
	if at < 0 {
		return nil
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
	f := finding.Finding{
		Rule: RuleLeaveCoat, Verdict: finding.Needs, About: s.Part, Basis: []finding.Basis{s.Coating.Basis("film")},
		Facts: []finding.Fact{fact("was", was), fact("coats", was-1)},
	}
	then := wear.Predict(b, s.Stack, boat.Use, s.zones(b), boat.Work.Launch)
	f.Facts = append(f.Facts, fact("before", nextHaul(s.Lasts)), fact("after", nextHaul(then)))
	s.Lasts = then
	return finding.List{f}
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
		start := boat.On
		for _, it := range j.Season.Calendar.Items {
			if j.Season.Turns[it.Task].Do == finding.DryOut {
				start = day(it.Start())
			}
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
// planned hours are not over by then; one that is planned for a later day is not due.
// ok is false when no coat is left, or no plan was made.
// The error is a finding.Faults, as calendar.Today's.
func (j *Job) Morning(now time.Time) (m Morning, ok bool, err error) {
	turns, plan := j.Season.Shown()
	for _, it := range plan.Items {
		t := turns[it.Task]
		if len(t.Coats) == 0 || it.Again || !it.End().After(now) {
			continue
		}
		boat := j.Boat
		if !boat.Work.SetUp.Given() {
			if d, err := quantity.Hour.Near(factor(j.Book, "day-setup"), 2, quantity.Up); err == nil {
				boat.Work.SetUp = d
			}
		}
		m.Turn = t
		if start := it.Start().In(now.Location()); start.YearDay() != now.YearDay() || start.Year() != now.Year() {
			m.Verdict, m.Next, m.Sure = finding.Forbidden, it.Start(), it.Verdict == finding.Fine
			m.Finding = finding.Finding{
				Rule: calendar.RuleNoCoat, Verdict: finding.Forbidden, About: t.Name, Basis: []finding.Basis{{Kind: finding.Derived}},
				Facts: []finding.Fact{fact("next", calendar.Moment(it.Start()))},
			}
			return m, true, nil
		}
		m.Morning, err = calendar.Today(j.Book, t.Task, boat.Work, now, boat.Weather)
		var faults finding.Faults
		if errors.As(err, &faults) {
			err = faults.Under("", "work")
		}
		return m, err == nil, err
	}
	return Morning{}, false, nil
}
