package calendar

import (
	"time"

	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

// Morning is the answer whether to open the can.
type Morning struct {
	Verdict finding.Verdict // Fine: go; Ask: measure first; Needs: wait until From; Forbidden: not today
	From    time.Time       // when the coat may begin today; zero: not today
	Next    time.Time       // the next good hour after today, or the next that a measurement decides; zero: none that the forecast tells of
	Sure    bool            // Next needs no measurement by what is forecast
	Finding finding.Finding // the answer
	Why     finding.List    // what speaks against the hour that was asked about, or what must be measured
	_       [0]func()
}

// Today answers whether the coat of the task may be begun now, from now on: on whole hours in which the crew is there, with its drying in mind.
//
// The error is a finding.Faults: of Days.Check, of the task, of the forecast; a task that puts nothing on.
// Basis: derived, by the same rules as Arrange.
func Today(b *tables.Book, task Task, d Days, now time.Time, c Conditions) (Morning, error) {
	if c.Zone == nil {
		c.Zone = time.UTC
	}
	now = now.In(c.Zone)
	from, err := quantity.NewDate(now.Year(), int(now.Month()), now.Day())
	if err != nil {
		return Morning{}, err
	}
	d.Launch, d.Shift, d.Free = quantity.Date{}, quantity.Date{}, after(d.Free, from) // of the days before today nothing is asked
	task.On = quantity.Date{}
	faults := d.Check(from)
	faults = append(faults, checkTasks([]Task{task}, from, quantity.Date{})...)
	faults = append(faults, c.check()...)
	if len(task.Layers) == 0 {
		faults = append(faults, finding.Fault{Kind: finding.ErrMissing, Key: "layers", Want: "a task that puts a coat on"})
	}
	if err := faults.Err(); err != nil {
		return Morning{}, err
	}
	n := 24 * 2
	if k := len(c.Forecast.Hours); k > 0 {
		n = max(n, int(c.Forecast.Hours[k-1].At.Sub(midnight(from, c.Zone)).Hours())+1)
	}
	n = min(n, mostHours)
	g := newGrid(d, from, c.Zone, n)
	sky, err := newClimate(b, g, c, d.Roof.True())
	if err != nil {
		return Morning{}, err
	}
	l, err := lay(b, g, sky, []Task{task}, n, 0)
	if err != nil {
		return Morning{}, err
	}
	return l.morning(now, c.Zone), nil
}

// after are the days that are not before the day.
func after(days []quantity.Date, from quantity.Date) []quantity.Date {
	var out []quantity.Date
	for _, d := range days {
		if !d.Before(from) {
			out = append(out, d)
		}
	}
	return out
}

// morning looks along the hours from now on.
func (l *laid) morning(now time.Time, zone *time.Location) Morning {
	g, may := l.grid, l.links[0].may
	name := l.tasks[0].Name
	first := g.slotFrom(g.hourOf(now))
	out := Morning{}
	at := func(s int) time.Time { return g.at(int(g.slots[s].hour)).In(zone) }
	asked := g.hourOf(now)
	for s := first; s < len(g.slots); s++ {
		today := g.slots[s].day == 0
		fits := may[s] != never && s+l.links[0].units <= len(g.slots) && g.slots[s+l.links[0].units-1].day == g.slots[s].day
		switch {
		case !fits:
		case today && out.From.IsZero():
			out.From = at(s)
			out.Verdict = finding.Needs
			if s == first && int(g.slots[s].hour) == asked {
				out.Verdict = pick(may[s] == fine, finding.Fine, finding.Ask)
			}
		case !today && !out.Sure && (may[s] == fine || out.Next.IsZero()):
			out.Next, out.Sure = at(s), may[s] == fine
		}
	}
	if out.From.IsZero() {
		out.Verdict = finding.Forbidden
	}
	f := finding.Finding{Verdict: out.Verdict, About: name, Basis: derived}
	next := "none that the forecast tells of"
	if !out.Next.IsZero() {
		next = Moment(out.Next) + pick(out.Sure, "", ", if what is measured then allows it")
	}
	switch out.Verdict {
	case finding.Fine:
		f.Rule = RuleGo
	case finding.Ask:
		f.Rule = RuleRead
	case finding.Needs:
		f.Rule = RuleUntil
		f.Facts = []finding.Fact{{Name: "from", Value: Moment(out.From)}}
	case finding.Caution, finding.Forbidden:
		f.Rule = RuleNotToday
		f.Facts = []finding.Fact{{Name: "next", Value: next}}
	}
	out.Finding = f
	switch out.Verdict {
	case finding.Ask:
		out.Why = l.doubts(asked)
	case finding.Needs, finding.Forbidden:
		out.Why = l.refused(0, asked)
	case finding.Fine, finding.Caution:
	}
	return out
}

// doubts gives what must be measured before the coat begins in the hour.
func (l *laid) doubts(h int) finding.List {
	end := h + l.links[0].units
	for _, s := range l.skies[0] {
		for i := h; i < end; i++ {
			if s.paints(i) == measure {
				return s.Why(i - s.offset)
			}
		}
		for i, is := range s.soft(end) {
			if is == measure {
				return s.WhyWets(i - s.offset)
			}
		}
	}
	return nil
}
