package joblog

import (
	"time"

	"boatyard.example/bottomwork/tables/entry"
	"boatyard.example/bottomwork/tables/finding"
)

// A moment is written as ISO 8601 has it: "2027-04-17 09:30" or with a T, by the clock of the place, or with an offset from UTC,
// "2027-04-17T09:30+01:00". TOML's own dates with a time are taken too.
var (
	wallForms   = []string{"2006-01-02 15:04", "2006-01-02T15:04", "2006-01-02 15:04:05", "2006-01-02T15:04:05"}
	offsetForms = []string{"2006-01-02T15:04Z07:00", "2006-01-02 15:04Z07:00", time.RFC3339, "2006-01-02 15:04:05Z07:00"}
)

const momentWant = `a day and an hour such as "2027-04-17 09:30", or with the offset from UTC, "2027-04-17T09:30+01:00"`

// The years that a log may be of: those whose clocks are known.
const (
	firstYear = 1900
	lastYear  = 2200
)

// moments reads times by the clock of a zone; nil: as they stand.
type moments struct{ zone *time.Location }

func (m moments) place() *time.Location {
	if m.zone == nil {
		return time.UTC
	}
	return m.zone
}

func (m moments) span(r *entry.Row) Span { return Span{m.read(r, "begun"), m.read(r, "ended")} }

// read reads a moment; the zero time where there is none, or none that can be, which is noted.
func (m moments) read(r *entry.Row, key string) time.Time {
	var t time.Time
	wall := true
	switch v := r.Raw(key).(type) {
	case nil:
		return t
	case time.Time:
		switch v.Location().String() { // the parser marks what has no offset
		case "datetime-local":
			t = time.Date(v.Year(), v.Month(), v.Day(), v.Hour(), v.Minute(), v.Second(), 0, time.UTC)
		case "date-local", "time-local":
			r.Fault(finding.ErrValue, key, entry.Describe(v), momentWant)
			return t
		default:
			t, wall = v, false
		}
	case string:
		var ok bool
		if t, ok = parse(v, wallForms); !ok {
			wall = false
			if t, ok = parse(v, offsetForms); !ok {
				r.Fault(finding.ErrValue, key, entry.Describe(v), momentWant)
				return time.Time{}
			}
		}
	default:
		r.Fault(finding.ErrValue, key, entry.Describe(v), momentWant)
		return t
	}
	if t.Year() < firstYear || t.Year() > lastYear {
		r.Fault(finding.ErrImpossible, key, entry.Describe(r.Raw(key)), "a year from 1900 to 2200")
		return time.Time{}
	}
	if !wall {
		return t.In(m.place())
	}
	return m.wall(r, key, t)
}

func parse(s string, forms []string) (time.Time, bool) {
	for _, f := range forms {
		if t, err := time.Parse(f, s); err == nil {
			return t, true
		}
	}
	return time.Time{}, false
}

// wall finds the instant at which the clock of the place shows t, which is written as if it were UTC. An hour that the clock skips is no
// moment, and one that it shows twice is two: the offset tells which.
func (m moments) wall(r *entry.Row, key string, t time.Time) time.Time {
	loc := m.place()
	var at []time.Time
	for _, near := range []time.Duration{-26 * time.Hour, 26 * time.Hour} { // a change of the clock lies between the two
		_, offset := t.Add(near).In(loc).Zone()
		here := t.Add(-time.Duration(offset) * time.Second).In(loc)
		if _, shown := here.Zone(); shown == offset && (len(at) == 0 || !here.Equal(at[0])) {
			at = append(at, here)
		}
	}
	switch len(at) {
	case 0:
		r.Fault(finding.ErrImpossible, key, entry.Describe(r.Raw(key)), "an hour that the clock of "+loc.String()+" shows: it is put forward over this one")
		return time.Time{}
	case 1:
		return at[0]
	}
	r.Fault(finding.ErrValue, key, entry.Describe(r.Raw(key)), "the offset beside it, since the clock of "+loc.String()+" shows this hour twice: "+at[0].Format("2006-01-02T15:04-07:00")+" or "+at[1].Format("2006-01-02T15:04-07:00"))
	return time.Time{}
}
