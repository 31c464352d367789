package weather

import (
	"time"

	"boatyard.example/bottomwork/tables/entry"
	"boatyard.example/bottomwork/tables/finding"
)

// The years that a forecast may be of: those whose clocks are known.
const (
	firstYear = 1900
	lastYear  = 2200
	yearWant  = "a year from 1900 to 2200"
	timeWant  = `a time such as "2027-04-10 09:00", or with its offset, "2027-04-10T09:00+02:00"`
)

var (
	wallForms   = []string{"2006-01-02 15:04", "2006-01-02T15:04", "2006-01-02 15:04:05", "2006-01-02T15:04:05"}
	offsetForms = []string{"2006-01-02T15:04Z07:00", "2006-01-02 15:04Z07:00", time.RFC3339, "2006-01-02 15:04:05Z07:00"}
)

// dial reads times of one sheet, line after line.
type dial struct {
	loc     *time.Location
	seen    map[time.Time]int // how often the clock's hand was there
	sort    int               // of the first time: wall clock, or with an offset
	toldMix bool
}

const (
	byWall = iota + 1
	byOffset
)

func clockOf(loc *time.Location) *dial { return &dial{loc: loc, seen: map[time.Time]int{}} }

// read reads the start of the hour; the zero time where there is none, with a fault noted.
func (d *dial) read(r *entry.Row) time.Time {
	s := r.Text("time")
	if s == "" {
		return time.Time{}
	}
	sort := byWall
	t, ok := parseTime(s, wallForms)
	if !ok {
		sort = byOffset
		t, ok = parseTime(s, offsetForms)
	}
	switch {
	case !ok:
		r.Fault(finding.ErrValue, "time", entry.Describe(s), timeWant)
		return time.Time{}
	case t.Year() < firstYear || t.Year() > lastYear:
		r.Fault(finding.ErrImpossible, "time", entry.Describe(s), yearWant)
		return time.Time{}
	case d.sort == 0:
		d.sort = sort
	case d.sort != sort && !d.toldMix:
		d.toldMix = true
		r.Fault(finding.ErrValue, "time", entry.Describe(s), "times that are all with an offset, or all without one as the clock of "+d.loc.String()+" shows them")
	}
	if sort == byOffset {
		return d.instant(r, s, t)
	}
	return d.wall(r, s, t)
}

func parseTime(s string, forms []string) (time.Time, bool) {
	for _, f := range forms {
		if t, err := time.Parse(f, s); err == nil {
			return t, true
		}
	}
	return time.Time{}, false
}

// instant takes a time with an offset, which must be that of the place.
func (d *dial) instant(r *entry.Row, s string, t time.Time) time.Time {
	here := t.In(d.loc)
	_, offset := here.Zone()
	if _, read := t.Zone(); read != offset {
		r.Fault(finding.ErrValue, "time", entry.Describe(s), "the offset of "+d.loc.String()+" at that time, "+here.Format("-07:00"))
	}
	return here
}

// wall finds the instant at which the clock of the place shows t, which is written as if it were UTC: the second one the second time, where there are two.
func (d *dial) wall(r *entry.Row, s string, t time.Time) time.Time {
	var at []time.Time
	for _, near := range []time.Duration{-26 * time.Hour, 26 * time.Hour} { // a change of the clock lies between the two
		_, offset := t.Add(near).In(d.loc).Zone()
		here := t.Add(-time.Duration(offset) * time.Second).In(d.loc)
		if _, shown := here.Zone(); shown == offset && (len(at) == 0 || here.After(at[0])) {
			at = append(at, here)
		}
	}
	if len(at) == 0 {
		r.Fault(finding.ErrImpossible, "time", entry.Describe(s), "an hour that the clock of "+d.loc.String()+" shows: it is put forward over this one")
		return time.Time{}
	}
	n := d.seen[t]
	d.seen[t]++
	return at[min(n, len(at)-1)]
}
