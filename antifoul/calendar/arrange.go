package calendar

import (
	"slices"
	"time"

	"boatyard.example/bottomwork/antifoul/weather"
	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

// Calendar is a plan of days.
type Calendar struct {
	Fits    bool // she is ready for her launch, or has none
	Reserve bool // and the days that should be left are left
	Items   []Item
	Days    int       // on which the crew works
	Again   int       // times that a film is abraded because its window has closed
	Measure int       // coats that rest on a measurement, or on weather that nobody knows yet
	Ready   time.Time // from when she may go in
	Known   time.Time // until when the forecast tells; zero: there is none

	Findings finding.List
	_        [0]func()
}

// Item is one piece of work with its hours.
type Item struct {
	Task    int  // its place in the list of tasks
	Again   bool // it is the abrading of the film below, whose window has closed; the coat is the item after it
	Spans   []Span
	Verdict finding.Verdict // of a coat: Fine, or Ask where a measurement decides in the morning
	Opens   time.Time       // the window that it had to hit, after the coat before, in whole hours: the first to begin in, and Closes the last; zero: none
	Closes  time.Time
	Outlook Outlook   // what is forecast for its hours
	Last    time.Time // the last moment at which it may begin inside its window and all still be done by the launch; zero: no launch, or it is not in time as it is
}

// Outlook is what the forecast tells of some hours, lowest and highest; spans that nobody knows are not given.
type Outlook struct {
	Air, Surface tables.Span // degC; the surface of all parts that are painted at once
	Humidity     tables.Span // %
}

// Span is a run of hours on one day.
type Span struct{ From, To time.Time }

// Start is when the work begins.
func (i Item) Start() time.Time {
	if len(i.Spans) == 0 {
		return time.Time{}
	}
	return i.Spans[0].From
}

// End is when it is over.
func (i Item) End() time.Time {
	if len(i.Spans) == 0 {
		return time.Time{}
	}
	return i.Spans[len(i.Spans)-1].To
}

// Arrange lays the tasks on the crew's hours, in the order of their list, from the day on. In this order it seeks: to break nothing, to be ready for
// the launch with the reserve and else without it, to abrade as few films as can be because their window has closed, to work on as few days, to rest as
// few coats on a measurement, to put a coat that should be fresh on as near to the launch (in quarters of the time that it may stand, else in days), and
// to be done soonest, each work before the last as well where no film is abraded. It weighs every way there is, so that no better one exists; the same
// input gives the same plan.
//
//	a coat goes on in one go on one day, in hours in which its weather lets it, and ends early enough to dry
//	the next begins when Opens has passed by the slow hand of its clock and no later than Closes by the fast one, or after abrading
//	launch − end ≥ Cures by the slow hand, and ≤ Stands; the launch is when the crew comes on its day
//
// Work is laid on whole hours: hours are rounded up, those of work that may be parted added up before. Where nobody knows the weather a coat may go on, and
// rests on a measurement. When she cannot be ready, Fits is false and the items are those of the best plan by the same
// aims as if there were no launch; when there is none within a year either, there are no items. Findings say why.
//
// The error is a finding.Faults: of Days.Check, of the tasks, of the forecast.
// Basis: derived; the order of aims is common practice.
func Arrange(b *tables.Book, tasks []Task, d Days, from quantity.Date, c Conditions) (Calendar, error) {
	faults := d.Check(from)
	if !from.Given() {
		faults = append(faults, finding.Fault{Kind: finding.ErrMissing, Key: "from", Want: "the first day"})
	}
	faults = append(faults, checkTasks(tasks, from, d.deadline())...)
	faults = append(faults, c.check()...)
	if err := faults.Err(); err != nil {
		return Calendar{}, err
	}
	if c.Zone == nil {
		c.Zone = time.UTC
	}
	x := arranger{book: b, tasks: tasks, days: d, from: from, conditions: c}
	if launch := d.deadline(); launch.Given() {
		out, done, err := x.before(launch)
		if err != nil || done {
			return out, err
		}
	}
	return x.soonest()
}

// arranger is one question.
type arranger struct {
	book       *tables.Book
	tasks      []Task
	days       Days
	from       quantity.Date
	conditions Conditions
}

// before plans for a launch: with the reserve, else without.
func (x *arranger) before(launch quantity.Date) (Calendar, bool, error) {
	start, _ := x.days.there()
	at := wallClock(launch, start, x.conditions.Zone)
	n := int(at.Sub(midnight(x.from, x.conditions.Zone)).Hours())
	most := min(n, mostHours) // of a launch that is more than a year away
	g := newGrid(x.days, x.from, x.conditions.Zone, most)
	c, err := newClimate(x.book, g, x.conditions, x.days.Roof.True())
	if err != nil {
		return Calendar{}, false, err
	}
	whole, err := lay(x.book, g, c, x.tasks, most, n)
	if err != nil {
		return Calendar{}, false, err
	}
	for _, keep := range []int{wholeHours(x.days.Reserve), 0} {
		l := whole
		if keep > 0 {
			if l, err = lay(x.book, g, c, x.tasks, min(most, max(0, n-keep)), n); err != nil {
				return Calendar{}, false, err
			}
		}
		if way, ok := l.best(); ok {
			out := x.told(l, way)
			out.Fits, out.Reserve = true, keep > 0 || !x.days.Reserve.Given() || x.days.Reserve.Sign() == 0
			out.lasts(whole)
			x.explain(&out, l, way)
			return out, true, nil
		}
	}
	return Calendar{}, false, nil
}

// soonest plans without a launch.
func (x *arranger) soonest() (Calendar, error) {
	g := newGrid(x.days, x.from, x.conditions.Zone, mostHours)
	c, err := newClimate(x.book, g, x.conditions, x.days.Roof.True())
	if err != nil {
		return Calendar{}, err
	}
	l, err := lay(x.book, g, c, x.tasks, mostHours, 0)
	if err != nil {
		return Calendar{}, err
	}
	way, ok := l.best()
	if !ok {
		out := Calendar{}
		x.nowhere(&out, l)
		return out, nil
	}
	out := x.told(l, way)
	out.Fits = !x.days.deadline().Given()
	out.Reserve = out.Fits
	x.explain(&out, l, way)
	return out, nil
}

// best is the best way of a job that is laid; one without work for the crew has one.
func (l *laid) best() ([]placed, bool) {
	if len(l.links) == 0 {
		return nil, l.through(0, l.first) <= l.limit
	}
	way, _, stuck := chain(l.slots(), l.links)
	return way, stuck < 0
}

// told turns slots into times.
func (x *arranger) told(l *laid, way []placed) Calendar {
	g := l.grid
	out := Calendar{}
	if n := len(x.conditions.Forecast.Hours); n > 0 {
		out.Known = x.conditions.Forecast.Hours[n-1].At.Add(time.Hour)
	}
	days := map[int32]bool{}
	var ready int
	cured := func(k, end int) { // when the layers of the link may be wet
		for _, s := range l.skies[l.tally[k]] {
			ready = max(ready, int(s.after(hours(s.layer.Cures))[end]))
		}
	}
	through := func(hour int, tasks []int) {
		for _, i := range tasks {
			item := Item{Task: i, Verdict: finding.Fine}
			from := hour
			if t := &x.tasks[i]; t.Yard || t.On.Given() {
				to := l.appointment(t, hour)
				from = to - t.takes()
				hour = to
			}
			item.Spans = []Span{{g.at(from), g.at(hour)}}
			hour += wholeHours(x.tasks[i].Wait)
			out.Items = append(out.Items, item)
			ready = max(ready, hour)
		}
	}
	through(0, l.first)
	for k, p := range way {
		item := Item{Task: l.tally[k], Verdict: finding.Fine}
		if k > 0 {
			before := way[k-1].slots
			end := int(g.slots[before[len(before)-1]].hour) + 1
			if skies := l.skies[l.tally[k-1]]; len(skies) > 0 && l.links[k].whole {
				item.Opens = g.at(min(l.opened(k-1, end), len(g.dates)))
				if l.links[k].closes != nil {
					item.Closes = g.at(l.closed(k-1, int(g.slots[before[0]].hour)))
				}
			}
		}
		if len(p.again) > 0 {
			again := item
			again.Again, again.Spans = true, g.spans(p.again)
			out.Items = append(out.Items, again)
			out.Again++
			item.Opens, item.Closes = time.Time{}, time.Time{}
		}
		item.Spans = g.spans(p.slots)
		item.Outlook = l.outlook(k, p.slots, x.conditions.Forecast.Hours)
		if l.links[k].whole && l.links[k].may[p.slots[0]] == measure {
			item.Verdict = finding.Ask
			out.Measure++
		}
		out.Items = append(out.Items, item)
		for _, s := range slices.Concat(p.again, p.slots) {
			days[g.slots[s].day] = true
		}
		end := int(g.slots[p.slots[len(p.slots)-1]].hour) + 1
		ready = max(ready, end+wholeHours(x.tasks[item.Task].Wait))
		cured(k, end)
		through(l.opened(k, end), l.after[k])
	}
	out.Days = len(days)
	out.Ready = g.at(ready)
	return out
}

// outlook is the weather of a coat's hours.
func (l *laid) outlook(k int, slots []int, forecast []weather.Hour) Outlook {
	var out Outlook
	wider := func(s *tables.Span, low, high float64) {
		switch {
		case low != low: // NaN, and so is the other
		case !s.Given():
			*s = tables.Span{Low: low, High: high}
		default:
			*s = tables.Span{Low: min(s.Low, low), High: max(s.High, high)}
		}
	}
	for _, s := range l.skies[l.tally[k]] {
		for _, at := range slots {
			h := int(l.grid.slots[at].hour) - s.offset
			if h < 0 || h >= len(forecast) {
				return Outlook{}
			}
			hour, surface := forecast[h], s.Surface(h)
			wider(&out.Air, hour.AirC, hour.AirC)
			wider(&out.Humidity, hour.HumidityPct, hour.HumidityPct)
			wider(&out.Surface, surface.Low, surface.High)
		}
	}
	return out
}

// spans joins slots that follow one another into runs.
func (g *grid) spans(slots []int) []Span {
	var out []Span
	for _, s := range slots {
		from, to := g.at(int(g.slots[s].hour)), g.at(int(g.slots[s].hour)+1)
		if n := len(out); n > 0 && out[n-1].To.Equal(from) {
			out[n-1].To = to
			continue
		}
		out = append(out, Span{from, to})
	}
	return out
}

// lasts notes the last start of each task.
func (c *Calendar) lasts(whole *laid) {
	if len(whole.links) == 0 {
		return
	}
	slots := whole.slots()
	last := map[int]int{}
	for k, s := range lastStarts(slots, whole.links) {
		last[whole.tally[k]] = s
	}
	for i := range c.Items {
		it := &c.Items[i]
		if s, ok := last[it.Task]; ok && s >= 0 && !it.Again {
			it.Last = whole.grid.at(int(slots[s].hour))
			if !it.Closes.IsZero() && it.Closes.Before(it.Last) {
				it.Last = it.Closes
			}
		}
	}
}
