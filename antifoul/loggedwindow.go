package antifoul

import (
	"fmt"
	"math"
	"slices"
	"strconv"
	"time"

	"boatyard.example/bottomwork/antifoul/calendar"
	"boatyard.example/bottomwork/antifoul/joblog"
	"boatyard.example/bottomwork/compat"
	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

// The rules of the windows between the coats of a log.
const (
	RuleLogWindowKept    finding.ID = "log-window-kept"
	RuleLogWindowEarly   finding.ID = "log-window-early"
	RuleLogWindowLate    finding.ID = "log-window-late"
	RuleLogWindowAbraded finding.ID = "log-window-abraded"
)

// mostHours bounds how far a window is followed. Basis: assumption, a year and a month.
const mostHours = 400 * 24

// window is when the next coat may go on over a coat that was laid.
type window struct {
	opens, closes time.Time // zero: it does not open at this temperature; it does not close
	limited       bool      // it closes, though that may be farther away than is followed
	reckoned      reckoning // at which temperature
}

// reckoning says at which temperature a clock was run.
type reckoning struct {
	before string
	at     quantity.Temperature
	after  string
}

// Show writes it for a reader of the system.
func (r reckoning) Show(s quantity.System) string {
	if !r.at.Given() {
		return r.before + r.after
	}
	return r.before + r.at.Show(s) + r.after
}

// windowOver is the window of the coat below for the next one. Its clock goes by the forecast's air for the hours that it has, else by the surface, else the air
// that was noted with the coat, else as the row states it. Where the temperature is not known hour by hour, colder nights make it open later and close later
// than this.
func (j *Job) windowOver(b *tables.Book, below LoggedCoat, next tables.Coating) window {
	w := window{}
	at, noted := math.NaN(), below.Surface
	if !noted.Given() {
		noted = below.Air.Air
	}
	switch {
	case noted.Given():
		at, w.reckoned = noted.Float(quantity.Celsius), reckoning{"reckoned at the ", noted, " noted with the coat below"}
	case below.Paint.At.Given():
		at, w.reckoned = below.Paint.At.Float(quantity.Celsius), reckoning{"reckoned at ", below.Paint.At, ", since no temperature was noted"}
	default:
		w.reckoned.before = "as the table states it"
	}
	air := map[int64]float64{}
	for _, h := range j.Boat.Weather.Forecast.Hours {
		air[hourOf(h.At)] = h.AirC
	}
	temperature := func(t time.Time) float64 {
		if c, ok := air[hourOf(t)]; ok && !math.IsNaN(c) {
			return c
		}
		return at
	}
	if _, ok := air[hourOf(below.Until())]; ok {
		w.reckoned = reckoning{before: "reckoned by the forecast, and past its end at what was noted with the coat below"}
	}
	clock, _ := calendar.ClockOf(b, below.Paint) // of a paint without one the zero clock: time passes as stated
	from := below.Until()
	w.opens = from
	if least := below.Paint.OvercoatMin; least.Given() {
		w.opens = run(from, least, temperature, clock.Slow)
	}
	if most := compat.Closes(next, below.Paint); most.Given() {
		w.limited = true
		w.closes = run(from, most, temperature, clock.Fast)
	}
	return w
}

// hourOf is the full hour that a moment lies in.
func hourOf(t time.Time) int64 { return t.Truncate(time.Hour).Unix() }

// run is when so much of the row's time has passed on the clock; zero where it does not within mostHours.
func run(from time.Time, need quantity.Duration, at func(time.Time) float64, pace func(float64) float64) time.Time {
	left := need.Float(quantity.Hour)
	for i := range mostHours {
		t := from.Add(time.Duration(i) * time.Hour)
		p := pace(at(t))
		if p > 0 && left <= p {
			return t.Add(time.Duration(math.Round(left/p*60)) * time.Minute)
		}
		left -= p
	}
	return time.Time{}
}

// told says when the window opens and closes, for the words of a rule.
func (w window) told() []finding.Fact {
	opens, closes := "at no temperature that was noted", "stays open"
	if !w.opens.IsZero() {
		opens = calendar.Moment(w.opens)
	}
	if !w.closes.IsZero() {
		closes = "closes " + calendar.Moment(w.closes)
	} else if w.limited {
		closes = "closes in more than a year"
	}
	return facts(fact("opens", opens), fact("closes", closes), fact("reckoned", w.reckoned))
}

// windowKept judges when coat i went on against the newest coat below it on the same place; nothing for the first one there.
func (j *Job) windowKept(b *tables.Book, l Logged, i int) finding.List {
	k := l.Coats[i]
	var below LoggedCoat
	for _, o := range l.Coats[:i] {
		if o.Part == k.Part && joblog.Meet(o.on, k.on) && o.Until().After(below.Until()) {
			below = o
		}
	}
	if below.Part == "" {
		return nil
	}
	w := j.windowOver(b, below, k.Paint)
	f := finding.Finding{
		Rule: RuleLogWindowKept, Verdict: finding.Fine, About: k.Paint.Name, Against: below.Paint.Name, Basis: []finding.Basis{below.Paint.Basis("overcoat_min")},
		Facts: append(w.told(), fact("hours", strconv.FormatFloat(math.Round(k.Begun.Sub(below.Until()).Hours()*10)/10, 'f', -1, 64))),
	}
	switch {
	case w.opens.IsZero() || k.Begun.Before(w.opens):
		f.Rule, f.Verdict = RuleLogWindowEarly, finding.Caution
	case !w.closes.IsZero() && k.Begun.After(w.closes):
		f.Rule, f.Verdict, f.Facts[1] = RuleLogWindowLate, finding.Ask, fact("closes", calendar.Moment(w.closes))
		if l.abraded(k.Part, k.on, below.Until(), k.Begun) {
			f.Rule, f.Verdict = RuleLogWindowAbraded, finding.Fine
		}
	}
	return finding.List{f}
}

// abraded reports whether the log has all the zones of the part abraded between the two moments; a zero end is no end.
func (l Logged) abraded(part string, zones []string, after, before time.Time) bool {
	done := func(z string) bool {
		return slices.ContainsFunc(l.Log.Tasks, func(t joblog.Task) bool {
			return t.Part == part && (t.Do == finding.Abrade || t.Do == finding.WetScuff || t.Do == finding.Blast) && (t.All() || slices.Contains(t.Zones, z)) &&
				!t.Begun.Before(after) && (before.IsZero() || !t.Until().After(before))
		})
	}
	return len(zones) > 0 && !slices.ContainsFunc(zones, func(z string) bool { return !done(z) })
}

// The rules of what is due.
const (
	RuleLogNextFirst finding.ID = "log-next-first"
	RuleLogNextWait  finding.ID = "log-next-wait"
	RuleLogNextOpen  finding.ID = "log-next-open"
	RuleLogAbradeNow finding.ID = "log-abrade-now"
	RuleLogAbraded   finding.ID = "log-abraded"
	RuleLogAllLaid   finding.ID = "log-all-laid"
	RuleLogAirNew    finding.ID = "log-air-new"
)

// due says what goes on the part next, and from when to when, as of the log's moment; once all is laid, when she may go in.
func (j *Job) due(b *tables.Book, s Scheme, l Logged) finding.List {
	coats := l.of(s.Part)
	next, number, left := l.next(s)
	switch {
	case !left && len(coats) == 0:
		return nil
	case !left:
		return finding.List{l.toLaunch(b, j, coats[len(coats)-1])}
	case len(coats) == 0:
		return finding.List{{Rule: RuleLogNextFirst, Verdict: finding.Fine, About: next.Layer.Coating.Name, Against: s.Part, Facts: facts(fact("layer", string(next.Layer.For)))}}
	}
	var below LoggedCoat
	for _, k := range coats {
		if joblog.Meet(k.on, next.Zones) && !k.Until().Before(below.Until()) {
			below = k
		}
	}
	if below.Part == "" { // nothing lies there yet
		return finding.List{{Rule: RuleLogNextFirst, Verdict: finding.Fine, About: next.Layer.Coating.Name, Against: s.Part, Facts: facts(fact("layer", string(next.Layer.For)))}}
	}
	w := j.windowOver(b, below, next.Layer.Coating)
	f := finding.Finding{
		Rule: RuleLogNextOpen, Verdict: finding.Fine, About: next.Layer.Coating.Name, Against: s.Part, Basis: []finding.Basis{below.Paint.Basis("overcoat_min")},
		Facts: append(w.told(), fact("coat", number), fact("layer", string(next.Layer.For))),
	}
	switch {
	case l.Now.IsZero(): // only told
	case w.opens.IsZero() || l.Now.Before(w.opens):
		f.Rule, f.Verdict, f.First = RuleLogNextWait, finding.Needs, []finding.Step{{Do: finding.Wait}}
	case !w.closes.IsZero() && l.Now.After(w.closes):
		f.Rule, f.Verdict, f.First = RuleLogAbradeNow, finding.Needs, []finding.Step{{Do: finding.Abrade}}
		f.Facts[1] = fact("closes", calendar.Moment(w.closes))
		if l.abraded(s.Part, next.Zones, below.Until(), l.Now) {
			f.Rule, f.Verdict, f.First = RuleLogAbraded, finding.Fine, nil
		}
	}
	return finding.List{f}
}

// toLaunch says from when she may go in over the last coat of a part, and whether it has stood too long.
func (l Logged) toLaunch(b *tables.Book, j *Job, last LoggedCoat) finding.Finding {
	f := finding.Finding{Rule: RuleLogAllLaid, Verdict: finding.Fine, About: last.Paint.Name, Against: last.Part, Basis: []finding.Basis{last.Paint.Basis("launch_min")}}
	below := last
	below.Paint.OvercoatMin = last.Paint.LaunchMin // the same clock runs to the launch
	f.Facts = j.windowOver(b, below, last.Paint).told()
	// Where no moment is asked about, or the paint has no limit, none is passed.
	if stood := l.Now.Sub(last.Until()).Hours() / 24; stood > days(last.Paint.AirNew) {
		f.Rule, f.Verdict, f.First, f.Basis = RuleLogAirNew, finding.Needs, []finding.Step{{Do: finding.Abrade}}, []finding.Basis{last.Paint.Basis("air_new")}
		f.Facts = facts(fact("days", fmt.Sprintf("%.0f", math.Floor(stood))), fact("limit", last.Paint.AirNew))
	}
	return f
}
