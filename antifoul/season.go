package antifoul

import (
	"slices"
	"time"

	"boatyard.example/bottomwork/antifoul/calendar"
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
	j.notes(w, shown)
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
func (j *Job) notes(w crewing, shown []Scheme) {
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
		case day.Given() && !w.boat.Work.Worked(day):
			say(RuleSlingsDay, finding.Ask, finding.Derived, fact("day", day))
		}
		s.Findings = append(s.Findings, w.inSlings(shown, j.Patches)...)
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
	return c, prefixed(err, "work")
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
