package antifoul

import (
	"cmp"
	"fmt"
	"slices"
	"strings"
	"time"

	"boatyard.example/bottomwork/antifoul/calendar"
	"boatyard.example/bottomwork/antifoul/joblog"
	"boatyard.example/bottomwork/antifoul/wear"
	"boatyard.example/bottomwork/compat"
	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

// The rules of a job log as a whole, rows of rules_log.toml.
const (
	RuleLogBoat        finding.ID = "log-boat-other"
	RuleLogSteps       finding.ID = "log-steps-missing"
	RuleLogNotStripped finding.ID = "log-not-stripped"
	RuleLogAfloat      finding.ID = "log-afloat"
)

// Logged is a job log held against the plan of the job.
type Logged struct {
	Log      joblog.Log
	Now      time.Time // the moment asked about; zero: none, and nothing is said of what is due
	Coats    []LoggedCoat
	Layers   []LoggedLayer // of each part what lies there and what is planned, bottom to top as it was laid
	Due      finding.List
	Worn     []LoggedWear // what the looks tell of the wear of each film
	Findings finding.List // of the whole log
}

// LoggedCoat is one coat as it was laid, in the order in which they were begun.
type LoggedCoat struct {
	joblog.Coat
	Paint    tables.Coating
	Area     quantity.Range[quantity.Area] // that it went on
	Film     quantity.Range[quantity.Film] // dry; not given: nothing was noted that tells it
	By       string                        // what tells it: "litres", "comb", "litres and comb"; empty: nothing
	Findings finding.List
	on       []string // the zones that it went on
}

// On lists the zones that the coat went on.
func (k *LoggedCoat) On() []string { return slices.Clone(k.on) }

// Logged holds the log against the plan: the weather, the window and the film of each coat; the layers done, missing and extra; what is due
// next and by when, or must be abraded, as of the moment now. A log that lacks a coat is judged as far as it goes.
//
// The error is a finding.Faults: those of the log, as from ReadLog, and of the book.
//
// Basis: derived, from what Plan rests on; each finding names its own.
func (j *Job) Logged(l joblog.Log, now time.Time) (Logged, error) {
	b := j.Book
	if err := slices.Concat(complete(b), l.Check(b), logFaults(b, j.Boat, l), later(l, now)).Err(); err != nil {
		return Logged{}, err
	}
	boat, err := j.Boat.fitted(b)
	if err != nil {
		return Logged{}, err
	}
	boat = boat.filled(b)
	out := Logged{Log: l, Now: now}
	for _, k := range l.Coats {
		out.Coats = append(out.Coats, j.loggedCoat(b, boat, k, l))
	}
	slices.SortStableFunc(out.Coats, func(x, y LoggedCoat) int { return cmp.Or(x.Begun.Compare(y.Begun), x.Until().Compare(y.Until())) })
	for i := range out.Coats {
		out.Coats[i].Findings = append(out.Coats[i].Findings, j.windowKept(b, out, i)...)
	}
	out.Layers = j.loggedLayers(out)
	if l.Boat != "" && j.Boat.Name != "" && l.Boat != j.Boat.Name {
		out.Findings = append(out.Findings, finding.Finding{Rule: RuleLogBoat, Verdict: finding.Ask, About: j.Boat.Name, Facts: facts(fact("log", l.Boat))})
	}
	for _, s := range j.Schemes {
		out.Findings = append(out.Findings, stepsNoted(b, s, out)...)
	}
	if l.Launched.Given() {
		out.Due = finding.List{{Rule: RuleLogAfloat, Verdict: finding.Fine, Facts: facts(fact("date", l.Launched))}}
	} else {
		for _, s := range j.Schemes {
			out.Due = append(out.Due, j.due(b, s, out)...)
		}
	}
	out.Worn = j.worn(b, boat, out)
	return out, nil
}

// later are faults for what a log says was begun after the moment that is asked about.
func later(l joblog.Log, now time.Time) finding.Faults {
	var fs finding.Faults
	note := func(key string, n int, s joblog.Span) {
		if !now.IsZero() && s.Begun.After(now) {
			fs = append(fs, finding.Fault{
				Kind: finding.ErrImpossible, File: l.Name, Key: fmt.Sprintf("%s[%d].begun", key, n+1), Got: calendar.Moment(s.Begun), Want: "no later than the moment asked about, " + calendar.Moment(now),
			})
		}
	}
	for i, k := range l.Coats {
		note("coat", i, k.Span)
	}
	for i, t := range l.Tasks {
		note("task", i, t.Span)
	}
	return fs
}

// of returns the coats of a part, in the order in which they were begun.
func (l Logged) of(part string) []LoggedCoat {
	var out []LoggedCoat
	for _, k := range l.Coats {
		if k.Part == part {
			out = append(out, k)
		}
	}
	return out
}

// stripped returns the task by which the old film was taken off all of the part; false when the log says of none.
func (l Logged) stripped(part string) (joblog.Task, bool) {
	for _, t := range l.Log.Tasks {
		if t.Part == part && t.All() && (t.Do == finding.Strip || t.Do == finding.Blast) {
			return t, true
		}
	}
	return joblog.Task{}, false
}

// stepsNoted says which work of the plan the log is silent about, on a part that has coats in it.
func stepsNoted(b *tables.Book, s Scheme, l Logged) finding.List {
	if len(l.of(s.Part)) == 0 {
		return nil
	}
	var out finding.List
	var silent []string
	for _, step := range s.Route.Steps {
		row, err := b.Step(step.Do)
		if err != nil || step.Coating != "" || step.Do == finding.Wait {
			continue // what is put on is a coat
		}
		if slices.ContainsFunc(l.Log.Tasks, func(t joblog.Task) bool { return t.Part == s.Part && did(t.Do, step.Do) }) || slices.Contains(silent, row.Name) {
			continue
		}
		silent = append(silent, row.Name)
	}
	if _, off := l.stripped(s.Part); takesOff(s.Route.Steps) && !off {
		out = append(out, finding.Finding{Rule: RuleLogNotStripped, Verdict: finding.Ask, Against: s.Part})
	}
	if len(silent) > 0 {
		out = append(out, finding.Finding{Rule: RuleLogSteps, Verdict: finding.Caution, Against: s.Part, Facts: facts(fact("steps", strings.Join(silent, ", ")))})
	}
	return out
}

// did reports whether work that was done stands for work that was planned: blasting also strips, abrading also scuffs.
func did(done, planned finding.Action) bool {
	return done == planned || done == finding.Blast && planned == finding.Strip ||
		planned == finding.WetScuff && done == finding.Abrade
}

// LoggedWear is what the looks of the log tell of the wear of one film.
type LoggedWear struct {
	Part   string
	Record wear.Record             // as it goes into the next boat file
	Before quantity.Range[float64] // um a month afloat on the flat, by the boat file alone
	After  quantity.Range[float64] // likewise, with every record of this log beside those of the boat file
	Says   finding.List
}

// The rules of what the looks of a log tell.
const (
	RuleLogRecord finding.ID = "log-record"
	RuleLogWear   finding.ID = "log-wear"
)

// worn makes a record of each working film that wears, was launched and looked at, and fits the wear with and without them.
func (j *Job) worn(b *tables.Book, boat Boat, l Logged) []LoggedWear {
	var out []LoggedWear
	known := boat.wearRecords()
	for _, p := range boat.Parts {
		if r := recordOf(l, p); len(r.Check(b)) == 0 {
			out = append(out, LoggedWear{Part: p.Name, Record: r})
			known = append(known, r)
		}
	}
	after := boat.Use
	after.Fits = wear.FitRecords(b, boat.Use, known)
	var told []string
	for i := range out {
		w := &out[i]
		c, err := b.Coating(w.Record.Coating)
		if err != nil {
			continue // Check has seen to it
		}
		w.Before, w.After = wear.Rate(b, c, boat.Use), wear.Rate(b, c, after)
		say := func(rule finding.ID, fs ...finding.Fact) {
			w.Says = append(w.Says, finding.Finding{Rule: rule, Verdict: finding.Fine, About: c.Name, Against: w.Part, Facts: fs})
		}
		say(RuleLogRecord, fact("film", w.Record.Film), fact("date", w.Record.Launched), fact("looks", len(w.Record.Looks)))
		if !slices.Contains(told, c.Key) {
			told = append(told, c.Key)
			say(RuleLogWear, fact("low", perMonth(w.After.Low)), fact("high", perMonth(w.After.High)), fact("typical", perMonth(w.After.Typical)),
				fact("was_low", perMonth(w.Before.Low)), fact("was_high", perMonth(w.Before.High)), fact("was_typical", perMonth(w.Before.Typical)))
		}
	}
	return out
}

// recordOf is the record of the part's working film as far as the log tells it: what was not launched, has no film that is known, or was never
// looked at is no record yet, by its own Check.
func recordOf(l Logged, p compat.Part) wear.Record {
	r := wear.Record{Launched: l.Log.Launched}
	zone := mainZone(p)
	for _, k := range l.of(p.Name) {
		if k.Layer == compat.Working {
			r.Coating = k.Coating
		}
	}
	film, known := l.working(p.Name, zone, r.Coating)
	if known {
		r.Film = microns(film)
	}
	for _, k := range l.Log.Looks {
		if k.Part != p.Name || !k.Signal.Said() && !k.Film.Given() {
			continue
		}
		look := wear.Look{On: k.On, Zone: k.Zone, Signal: k.Signal, Film: k.Film, Readings: k.Readings}
		if laid, ok := l.working(p.Name, k.Zone, r.Coating); ok && !laid.Low.Equal(film.Low) {
			look.Laid = microns(laid)
		}
		r.Looks = append(r.Looks, look)
	}
	return r
}

// mainZone is the zone by which a part's film is told: the flat of a hull, else its own.
func mainZone(p compat.Part) string {
	if p.Zone == HullZone {
		return "flat"
	}
	return p.Zone
}

// working is the film of the working and extra coats in a zone, a layer that was gauged there as it was read; false where there are none, or nobody knows the film of one.
func (l Logged) working(part, zone, coating string) (quantity.Range[quantity.Film], bool) {
	var sum quantity.Range[quantity.Film]
	var read []compat.Purpose
	for _, layer := range []compat.Purpose{compat.Working, compat.Extra} {
		if s, ok := l.surveyed(part, layer, coating, zone); ok {
			read = append(read, layer)
			sum = quantity.Range[quantity.Film]{Low: plus(sum.Low, s.Film.Low), Typical: plus(sum.Typical, s.Film.Typical), High: plus(sum.High, s.Film.High)}
		}
	}
	for _, k := range l.of(part) {
		if slices.Contains(read, k.Layer) {
			continue
		}
		if k.Coating != coating || k.Layer != compat.Working && k.Layer != compat.Extra || !slices.Contains(k.on, zone) {
			continue
		}
		if !k.Film.Low.Given() {
			return sum, false
		}
		sum = quantity.Range[quantity.Film]{Low: plus(sum.Low, k.Film.Low), Typical: plus(sum.Typical, k.Film.Typical), High: plus(sum.High, k.Film.High)}
	}
	return sum, sum.Low.Given()
}

// microns rounds a film to whole micrometres: the low end down, the high end up.
func microns(f quantity.Range[quantity.Film]) quantity.Range[quantity.Film] {
	um := quantity.Micrometre
	return quantity.Range[quantity.Film]{Low: f.Low.To(um, 0, quantity.Down), Typical: f.Typical.To(um, 0, quantity.Nearest), High: f.High.To(um, 0, quantity.Up)}
}

// perMonth is a rate for the reader, um a month to one place.
func perMonth(um float64) quantity.Film {
	a, err := quantity.Micrometre.Near(um, 1, quantity.Nearest)
	if err != nil {
		return quantity.Film{}
	}
	return a
}
