package calendar_test

import (
	"fmt"
	"math"
	"slices"
	"testing"
	"time"

	"boatyard.example/bottomwork/antifoul/calendar"
	"boatyard.example/bottomwork/antifoul/weather"
	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

// A verifier knows of a plan what the comments of the exported names say, and nothing of how it was found.
type verifier struct {
	b     *tables.Book
	tasks []calendar.Task
	d     calendar.Days
	from  quantity.Date
	c     calendar.Conditions
	loc   *time.Location
	usual float64 // of the surface beyond the forecast; NaN: that of the coating's row
	skies [][]*weather.Sky
	clock [][]calendar.Clock
}

// coat is where one coat stands in a plan.
type coat struct {
	task     int
	from, to time.Time
}

func newVerifier(tb testing.TB, b *tables.Book, tasks []calendar.Task, d calendar.Days, from quantity.Date, c calendar.Conditions) *verifier {
	tb.Helper()
	v := &verifier{b: b, tasks: tasks, d: d, from: from, c: c, loc: c.Zone, usual: math.NaN()}
	if v.loc == nil {
		v.loc = time.UTC
	}
	switch {
	case c.Usual.Given():
		v.usual = c.Usual.Float(quantity.Celsius)
	case len(c.Forecast.Hours) > 0:
		v.usual = 0
		for _, w := range c.Forecast.Hours {
			v.usual += w.AirC / float64(len(c.Forecast.Hours))
		}
	}
	site, err := weather.At(b, c.Forecast.Hours, d.Roof == quantity.Yes)
	if err != nil {
		tb.Fatal(err)
	}
	for _, t := range tasks {
		var skies []*weather.Sky
		var clocks []calendar.Clock
		for _, l := range t.Layers {
			skies = append(skies, site.For(l.Coat))
			k, err := calendar.ClockOf(b, l.Coating)
			if err != nil {
				tb.Fatal(err)
			}
			clocks = append(clocks, k)
		}
		v.skies, v.clock = append(v.skies, skies), append(v.clock, clocks)
	}
	return v
}

// hour is the number of the forecast's hour at a moment, -1 beyond.
func (v *verifier) hour(at time.Time) int {
	hours := v.c.Forecast.Hours
	if len(hours) == 0 || at.Before(hours[0].At) {
		return -1
	}
	if i := int(at.Sub(hours[0].At) / time.Hour); i < len(hours) {
		return i
	}
	return -1
}

// passed is how many hours of the row's temperature pass between two moments, by the slow hand or the fast one.
func (v *verifier) passed(task, layer int, fast bool, from, to time.Time) float64 {
	sum := 0.0
	for at := from; at.Before(to); {
		end := at.Truncate(time.Minute * 15).Add(time.Minute * 15)
		if end.After(to) {
			end = to
		}
		sum += end.Sub(at).Hours() * v.rate(task, layer, fast, at)
		at = end
	}
	return sum
}

func (v *verifier) rate(task, layer int, fast bool, at time.Time) float64 {
	degC := v.usual
	if i := v.hour(at); i >= 0 {
		s := v.skies[task][layer].Surface(i)
		if fast && !math.IsNaN(s.High) {
			degC = s.High
		} else if !fast && !math.IsNaN(s.Low) {
			degC = s.Low
		}
	}
	if math.IsNaN(degC) {
		degC = v.tasks[task].Layers[layer].Coating.At.Float(quantity.Celsius)
	}
	if fast {
		return v.clock[task][layer].Fast(degC)
	}
	return v.clock[task][layer].Slow(degC)
}

// dries is when so many hours of the row's temperature have surely passed; ok is false when that takes more than four days.
func (v *verifier) dries(task, layer int, from time.Time, need float64) (time.Time, bool) {
	for at := from; ; at = at.Add(15 * time.Minute) {
		if need <= 1e-9 {
			return at, true
		}
		if at.Sub(from) > 96*time.Hour {
			return at, false
		}
		need -= 0.25 * v.rate(task, layer, false, at)
	}
}

func (v *verifier) works(d quantity.Date) bool {
	switch {
	case slices.Contains(v.d.Taken, d):
		return false
	case slices.Contains(v.d.Free, d):
		return true
	}
	return slices.Contains(v.d.Weekdays, d.Weekday())
}

func wall(d quantity.Date, minutes int, loc *time.Location) time.Time {
	return time.Date(d.Year(), d.Month(), d.Day(), 0, minutes, 0, 0, loc)
}

func dateOf(tb testing.TB, t time.Time, loc *time.Location) quantity.Date {
	tb.Helper()
	y, m, d := t.In(loc).Date()
	q, err := quantity.NewDate(y, int(m), d)
	if err != nil {
		tb.Fatal(err)
	}
	return q
}

// there tells whether the crew works from one moment to another, without what setting up and clearing away takes.
func (v *verifier) there(tb testing.TB, s calendar.Span) bool {
	tb.Helper()
	d := dateOf(tb, s.From, v.loc)
	half := int(given(v.d.SetUp) * 30)
	return v.works(d) && !s.From.Before(wall(d, v.d.Start+half, v.loc)) && !s.To.After(wall(d, v.d.Stop-half, v.loc))
}

// sky is the verdict on one coat: on each of its hours, and on those in which it dries.
func (v *verifier) sky(p coat) (verdict finding.Verdict, why string) {
	verdict = finding.Fine
	worse := func(x finding.Verdict, what string, at time.Time) {
		if x == finding.Caution {
			x = finding.Fine
		}
		if x > verdict {
			verdict, why = x, fmt.Sprintf("%s at %s", what, at)
		}
	}
	for i, l := range v.tasks[p.task].Layers {
		k := v.skies[p.task][i]
		for at := p.from; at.Before(p.to); at = at.Add(time.Hour) {
			worse(k.Verdict(v.hour(at)), "painted", at)
		}
		for _, q := range []struct {
			need quantity.Duration
			wets func(int) finding.Verdict
			what string
		}{{l.Coating.TouchDry, k.Condenses, "dew"}, {l.Coating.RainSafe, k.Rains, "rain"}} {
			if !q.need.Given() {
				continue
			}
			end, ok := v.dries(p.task, i, p.to, q.need.Float(quantity.Hour))
			if !ok {
				worse(finding.Forbidden, "never dry", end)
			}
			for at := p.to; at.Before(end); at = at.Add(time.Hour) {
				worse(q.wets(v.hour(at)), q.what, at)
			}
		}
	}
	return verdict, why
}

func given(d quantity.Duration) float64 {
	if !d.Given() {
		return 0
	}
	return d.Float(quantity.Hour)
}

// window is how the window of the coat before stands at a start: too early, or the films whose windows have closed and the hours that
// abrading them takes.
func (v *verifier) window(before *coat, start time.Time) (early bool, past int, again float64) {
	if before == nil {
		return false, 0, 0
	}
	for i, l := range v.tasks[before.task].Layers {
		if l.Opens.Given() && v.passed(before.task, i, false, before.to, start) < given(l.Opens)-1e-9 {
			early = true
		}
		if l.Closes.Given() && v.passed(before.task, i, true, before.from, start) > given(l.Closes)+1e-9 {
			past++
		}
		if l.Closes.Given() {
			again += l.Again // what went on at once is abraded at once, as far as it ever closes
		}
	}
	if past == 0 {
		again = 0
	}
	return early, past, again
}

// breaches lists everything that is wrong with a plan.
func (v *verifier) breaches(tb testing.TB, p calendar.Calendar) []string {
	tb.Helper()
	var out []string
	bad := func(format string, args ...any) { out = append(out, fmt.Sprintf(format, args...)) }
	if len(p.Items) == 0 {
		if p.Fits || p.Reserve || len(p.Findings) == 0 {
			bad("no items: fits %t, reserve %t, %d findings", p.Fits, p.Reserve, len(p.Findings))
		}
		return out
	}
	days := map[quantity.Date]bool{}
	var coats []coat
	var last *coat      // the coat before, where nothing else was done since
	var free time.Time  // from when the next may begin
	var abraded float64 // hours of abrading that were laid for the coat that follows
	var done, laid float64
	again, measure, next := 0, 0, 0
	for _, it := range p.Items {
		if it.Task != next || it.Task >= len(v.tasks) {
			bad("task %d where %d should come", it.Task, next)
			return out
		}
		t := v.tasks[it.Task]
		hours := v.spans(tb, it, free, days, bad)
		free = it.End()
		if it.Again {
			again++
			if last == nil || len(t.Layers) == 0 || hours == 0 || abraded > 0 {
				bad("%s: abraded, and there is nothing to abrade for", t.Name)
			}
			abraded = hours
			continue
		}
		next++
		if t.Wait.Given() {
			free = free.Add(time.Duration(given(t.Wait) * float64(time.Hour)))
		}
		if len(t.Layers) == 0 {
			if t.Yard {
				if hours < t.Hours {
					bad("%s: %g hours for %g", t.Name, hours, t.Hours)
				}
				done, laid = 0, 0
				continue
			}
			last = nil // the crew has worked on the film
			if t.On.Given() {
				done, laid = 0, 0
			}
			done, laid = done+t.Hours, laid+hours
			if laid != math.Ceil(done) {
				bad("%s: %g hours laid so far for %g", t.Name, laid, done)
			}
			if t.Wait.Given() || t.On.Given() {
				done, laid = 0, 0
			}
			continue
		}
		done, laid = 0, 0
		if hours != math.Ceil(t.Hours) || len(it.Spans) != 1 {
			bad("%s: %d spans of %g hours for a coat of %g", t.Name, len(it.Spans), hours, t.Hours)
		}
		c := coat{it.Task, it.Start(), it.End()}
		early, past, need := v.window(last, c.from)
		if early {
			bad("%s: begins %s, before the window of the coat before opens", t.Name, c.from)
		}
		if (past > 0) != (abraded > 0) || abraded != math.Ceil(need) {
			bad("%s: begins %s, %d windows past: %g hours of abrading for %g", t.Name, c.from, past, abraded, need)
		}
		verdict, why := v.sky(c)
		if verdict == finding.Forbidden {
			bad("%s: %s to %s: %s", t.Name, c.from, c.to, why)
		}
		if verdict == finding.Ask {
			measure++
		}
		if verdict != it.Verdict {
			bad("%s: verdict %s, want %s (%s)", t.Name, it.Verdict, verdict, why)
		}
		last, abraded = &c, 0
		coats = append(coats, c)
	}
	if next != len(v.tasks) {
		bad("%d tasks done of %d", next, len(v.tasks))
	}
	v.launched(p, coats, free, bad)
	if p.Days != len(days) || p.Again != again || p.Measure != measure {
		bad("%d days, %d abradings, %d measurements counted; %d, %d, %d found", p.Days, p.Again, p.Measure, len(days), again, measure)
	}
	return out
}

// spans holds the hours of one piece of work against the crew's, the yard's and its appointment, and adds them up.
func (v *verifier) spans(tb testing.TB, it calendar.Item, free time.Time, days map[quantity.Date]bool, bad func(string, ...any)) (hours float64) {
	tb.Helper()
	t := v.tasks[it.Task]
	if len(it.Spans) == 0 {
		bad("%s: no hours", t.Name)
	}
	for _, s := range it.Spans {
		d := dateOf(tb, s.From, v.loc)
		hours += s.To.Sub(s.From).Hours()
		if s.To.Before(s.From) || s.From.Before(free) || d.Before(v.from) {
			bad("%s: %s to %s, and what comes before is over at %s", t.Name, s.From, s.To, free)
		}
		if t.On.Given() && d != t.On && !it.Again {
			bad("%s: on %s, not on its day %s", t.Name, d, t.On)
		}
		free = s.To
		if t.Yard {
			continue
		}
		if s.From.Before(s.To) {
			days[d] = true
			if !v.there(tb, s) {
				bad("%s: %s to %s, when nobody is there", t.Name, s.From, s.To)
			}
		}
		for at := s.From; t.Dry && at.Before(s.To); at = at.Add(time.Hour) {
			if rains(v.c.Forecast, v.hour(at), v.d.Roof) {
				bad("%s: in the rain at %s", t.Name, at)
			}
		}
	}
	return hours
}

// launched holds the end of the plan against the launch: the hour at which the crew begins on that day.
func (v *verifier) launched(p calendar.Calendar, coats []coat, free time.Time, bad func(string, ...any)) {
	if p.Ready.Before(free) {
		bad("ready %s, before the work is done, %s", p.Ready, free)
	}
	launch := wall(v.d.Launch, v.d.Start, v.loc)
	fixed := v.d.Launch.Given() && v.d.LaunchOpen != quantity.Yes
	for _, c := range coats {
		for i, l := range v.tasks[c.task].Layers {
			if v.passed(c.task, i, false, c.to, p.Ready) < given(l.Cures)-1e-9 {
				bad("%s: not cured when she is ready, %s", v.tasks[c.task].Name, p.Ready)
			}
			if fixed && p.Fits && l.Stands.Given() && launch.Sub(c.to).Hours() > given(l.Stands) {
				bad("%s: stands longer than it may", v.tasks[c.task].Name)
			}
		}
	}
	if !fixed {
		if !p.Fits {
			bad("has no launch, and does not fit")
		}
		return
	}
	if p.Fits && p.Ready.After(launch) {
		bad("fits, and is ready %s for a launch on %s", p.Ready, launch)
	}
	kept := v.d.Launch.AddDays(-int(given(v.d.Reserve) / 24))
	if p.Fits && p.Reserve != !p.Ready.After(wall(kept, v.d.Start, v.loc)) {
		bad("reserve %t, ready %s, launch %s, reserve %s", p.Reserve, p.Ready, launch, v.d.Reserve)
	}
}

// rains tells whether rain falls on the work in an hour of the forecast.
func rains(f weather.Forecast, i int, roof quantity.YesNo) bool {
	return i >= 0 && roof != quantity.Yes && f.Hours[i].RainMM > 0
}
