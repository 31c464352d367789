package antifoul

import (
	"fmt"
	"io/fs"
	"slices"
	"strings"
	"time"

	"boatyard.example/bottomwork/antifoul/joblog"
	"boatyard.example/bottomwork/antifoul/wear"
	"boatyard.example/bottomwork/tables/entry"
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

// Passport is the boat file for the next haul-out.
type Passport struct {
	Text  []byte
	Aside []Aside // keys that stood in the old file and do not stand in the new one; they are comments at its end
}

// Aside is one value that a passport sets aside.
type Aside struct {
	Key   string // "work.launch", "part[hull].found[2].age"
	Value string // as TOML
	Why   string
}

// seasonal are the keys that were true of one job only, with what is to be done.
var seasonal = []struct{ section, key, why string }{
	{"work", "launch", "the launch of the last job"},
	{"work", "launch_open", "of the launch of the last job"},
	{"work", "free", "days of the last job"},
	{"work", "taken", "days of the last job"},
	{"work", "shift", "a day of the last job"},
	{"work", "forecast", "the weather of the last job"},
	{"work", "other", "work beside the last job"},
	{"", "gauge", "the film of an earlier job; what lies there now is in part.found"},
	{"", "comb", "coats of an earlier job; the log has those of the last"},
	{"", "used", "coats of an earlier job; the log has those of the last"},
	{"", "timed", "patches of a film that has been worked on since; time new ones"},
	{"", "survey", "how she was seen before the job; look again"},
	{"", "seen", "what was seen before the job; look again"},
	{"", "moisture", "read before the job; read again"},
	{"", "fitting", "as it was before the job; look again"},
}

// Passport writes the boat file for the haul-out on the day: the boat file name of fsys, from which the job was planned, with what the log says was laid in the
// place of what was found, what is left of it, a [[record]] of each working film that was looked at, and the job itself in [[job]].
//
// Every key of the file stays as it was written, but the day, the films of parts that were worked on, and what was true of the last job only; those are
// listed in Aside and stand as comments at the end, as do the remarks of the file. A film that was gauged no longer than log-look-fresh before she came out is
// told as read. One that was afloat and was not is told as laid less the forecast of wear, which its known_by says; where the forecast cannot rule out that it is
// gone, no film is told. Nothing is taken off her but by a [[task]] that says so.
//
// The error is a finding.Faults: of the boat file, of parts that it has not, of a day that lies before the log's last, of a stripping that does
// not say down to what.
//
// Basis: derived, as Logged; what wear took is as wear.Predict.
func (j *Job) Passport(l Logged, fsys fs.FS, name string, on quantity.Date) (Passport, error) {
	if root, faults := entry.Open(fsys, name); root == nil {
		return Passport{}, faults.Err()
	}
	text, err := fs.ReadFile(fsys, name)
	if err != nil {
		return Passport{}, err
	}
	t, err := parseTree(strings.TrimPrefix(string(text), "\ufeff"))
	if err != nil {
		return Passport{}, finding.Faults{{Kind: finding.ErrSyntax, File: name, Got: err.Error(), Want: "TOML 1.0"}}
	}
	w := &passport{job: j, log: l, on: on, tree: t}
	if w.check(name); len(w.faults) > 0 {
		return Passport{}, w.faults.Err()
	}
	if w.boat, err = j.Boat.fitted(j.Book); err != nil {
		return Passport{}, err
	}
	for _, x := range l.Worn { // the fit with this log's own looks
		w.records = append(w.records, x.Record)
	}
	w.boat.Use.Fits = wear.FitRecords(j.Book, w.boat.Use, append(w.boat.wearRecords(), w.records...))
	w.parts()
	w.looksLeft()
	w.setAside()
	w.append()
	if len(w.faults) > 0 {
		return Passport{}, w.faults.Err()
	}
	return Passport{Text: []byte(w.text(name, string(text))), Aside: w.aside}, nil
}

// passport is one passport in the making.
type passport struct {
	job     *Job
	boat    Boat // with its wear fitted
	log     Logged
	on      quantity.Date
	tree    tree
	records []wear.Record
	aside   []Aside
	notes   []string
	faults  finding.Faults
}

func (w *passport) bad(kind error, file, key, got, want string) {
	w.faults = append(w.faults, finding.Fault{Kind: kind, File: file, Key: key, Got: got, Want: want})
}

// check notes what speaks against writing one at all.
func (w *passport) check(name string) {
	log := w.log.Log
	last := w.job.Boat.On
	for _, d := range []quantity.Date{log.Launched, log.Hauled} {
		if d.After(last) {
			last = d
		}
	}
	for _, k := range w.log.Coats {
		if d := day(k.Until()); d.After(last) {
			last = d
		}
	}
	for _, t := range log.Tasks {
		if d := day(t.Until()); d.After(last) {
			last = d
		}
	}
	switch {
	case !w.on.Given():
		w.bad(finding.ErrMissing, log.Name, "log.hauled", "", "the day on which she came out again, or the moment asked about; the next boat file is dated by it")
	case w.on.Before(last):
		w.bad(finding.ErrImpossible, log.Name, "log.hauled", w.on.String(), "no earlier than the last day of boat file and log, "+last.String())
	}
	parts, _ := w.tree.m["part"].([]map[string]any)
	same := len(parts) == len(w.job.Boat.Parts)
	for i := 0; same && i < len(parts); i++ {
		same = parts[i]["name"] == w.job.Boat.Parts[i].Name
	}
	if !same {
		w.bad(finding.ErrImpossible, name, "part", fmt.Sprintf("%d parts", len(parts)), "the boat file from which the job was planned")
	}
}

// set puts a value aside and takes it out of the table.
func (w *passport) set(m map[string]any, path, key, why string) {
	v, ok := m[key]
	if !ok {
		return
	}
	delete(m, key)
	at := under(path, key)
	switch v := v.(type) {
	case []map[string]any:
		for i, e := range v {
			w.aside = append(w.aside, Aside{fmt.Sprintf("%s[%d]", at, i+1), valueText(inline(e)), why})
		}
	default:
		w.aside = append(w.aside, Aside{at, valueText(inline(v)), why})
	}
}

// inline turns sections inside a value into lists, so that it can be written on one line.
func inline(v any) any {
	switch v := v.(type) {
	case map[string]any:
		out := map[string]any{}
		for k, e := range v {
			out[k] = inline(e)
		}
		return out
	case []map[string]any:
		out := []any{}
		for _, e := range v {
			out = append(out, inline(e))
		}
		return out
	}
	return v
}

// looksLeft notes the looks that make no record, which stand in the log alone.
func (w *passport) looksLeft() {
	for _, p := range w.job.Boat.Parts {
		n := 0
		for _, k := range w.log.Log.Looks {
			if k.Part == p.Name && (k.Signal.Said() || k.Film.Given()) {
				n++
			}
		}
		if n > 0 && !slices.ContainsFunc(w.log.Worn, func(x LoggedWear) bool { return x.Part == p.Name }) {
			w.notes = append(w.notes, fmt.Sprintf("%s: %d of its looks make no record of wear and stand in %s alone, since no working film that wears and is known was laid on it.", p.Name, n, w.log.Log.Name))
		}
	}
}

// setAside takes out what was true of the last job only.
func (w *passport) setAside() {
	for _, s := range seasonal {
		m := w.tree.m
		if s.section != "" {
			m, _ = w.tree.m[s.section].(map[string]any)
		}
		if m != nil {
			w.set(m, s.section, s.key, s.why)
		}
	}
	if tins, ok := w.tree.m["tin"].([]map[string]any); ok && len(w.log.Coats) > 0 {
		for i, x := range tins {
			w.set(x, fmt.Sprintf("tin[%d]", i+1), "store", "what was in store before the job; count it again")
		}
	}
}

// dateValue is a date as the TOML parser gives one.
func dateValue(d quantity.Date) time.Time {
	return time.Date(d.Year(), d.Month(), d.Day(), 0, 0, 0, 0, time.FixedZone("date-local", 0))
}

func filmValue(f quantity.Range[quantity.Film]) any {
	f = microns(f)
	if f.Low.Equal(f.High) {
		return f.Low.String()
	}
	return []any{f.Low.String(), f.Typical.String(), f.High.String()}
}

func texts(list []string) []any {
	out := make([]any, len(list))
	for i, s := range list {
		out[i] = s
	}
	return out
}

// append dates the file, marks it as a passport and adds the job and its records.
func (w *passport) append() {
	if boat, ok := w.tree.m["boat"].(map[string]any); ok {
		boat["date"] = dateValue(w.on)
	}
	w.tree.m["passport"] = map[string]any{"version": int64(PassportVersion)}
	w.tree.follow("boat.date", "passport", "passport.version")
	w.tree.follow("", "record", "record.coating", "record.launched", "record.film", "record.look", "record.look.on", "record.look.zone", "record.look.signal", "record.look.film", "record.look.readings", "record.look.laid",
		"job", "job.log", "job.begun", "job.ended", "job.launched", "job.hauled", "job.coat", "job.coat.part", "job.coat.layer", "job.coat.coating", "job.coat.colour", "job.coat.coats", "job.coat.film", "job.coat.litres", "job.coat.batch")
	records, _ := w.tree.m["record"].([]map[string]any)
	for _, r := range w.records {
		records = append(records, recordValue(r))
	}
	if len(records) > 0 {
		w.tree.m["record"] = records
	}
	jobs, _ := w.tree.m["job"].([]map[string]any)
	if m := w.jobValue(); m != nil {
		w.tree.m["job"] = append(jobs, m)
	}
}

func recordValue(r wear.Record) map[string]any {
	out := map[string]any{"coating": r.Coating, "launched": dateValue(r.Launched), "film": filmValue(r.Film)}
	var looks []map[string]any
	for _, k := range r.Looks {
		look := map[string]any{"on": dateValue(k.On), "zone": k.Zone}
		if k.Signal.Said() {
			look["signal"] = k.Signal.True()
		}
		if k.Film.Given() {
			look["film"] = k.Film.String()
		}
		if k.Readings > 0 {
			look["readings"] = int64(k.Readings)
		}
		if k.Laid.Low.Given() {
			look["laid"] = filmValue(k.Laid)
		}
		looks = append(looks, look)
	}
	out["look"] = looks
	return out
}

// jobValue is the [[job]] of the log; nil where it says of no work.
func (w *passport) jobValue() map[string]any {
	var begun, ended time.Time
	take := func(s joblog.Span) {
		if begun.IsZero() || s.Begun.Before(begun) {
			begun = s.Begun
		}
		if s.Until().After(ended) {
			ended = s.Until()
		}
	}
	for _, k := range w.log.Coats {
		take(k.Span)
	}
	for _, t := range w.log.Log.Tasks {
		take(t.Span)
	}
	if begun.IsZero() {
		return nil
	}
	out := map[string]any{"begun": dateValue(day(begun)), "ended": dateValue(day(ended))}
	if w.log.Log.Name != "" {
		out["log"] = w.log.Log.Name
	}
	for key, d := range map[string]quantity.Date{"launched": w.log.Log.Launched, "hauled": w.log.Log.Hauled} {
		if d.Given() {
			out[key] = dateValue(d)
		}
	}
	var coats []map[string]any
	for _, x := range w.log.Layers {
		if len(x.Coats) == 0 {
			continue
		}
		c := map[string]any{"part": x.Part, "layer": string(x.Layer), "coating": x.Coating.Key, "coats": int64(max(1, x.Laid))}
		if x.Noted {
			c["colour"] = x.Colour
		}
		if x.Film.Low.Given() && microns(x.Film).Low.Sign() > 0 {
			c["film"] = filmValue(x.Film)
		}
		var litres quantity.Volume
		for _, k := range x.Coats {
			litres = plus(litres, k.Litres)
		}
		if litres.Given() {
			c["litres"] = litres.String()
		}
		if len(x.Batches) > 0 {
			c["batch"] = texts(x.Batches)
		}
		coats = append(coats, c)
	}
	if len(coats) > 0 {
		out["coat"] = coats
	}
	return out
}
