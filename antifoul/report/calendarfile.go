package report

import (
	"fmt"
	"hash/fnv"
	"io"
	"time"

	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

// writeCalendar writes the plan of days as an iCalendar file: each run of hours an event, each reading of moisture and the launch a day. With a
// zone the hours are instants; without one they are wall clocks. The stamp is the day of the question, so the same job gives the same file.
func (c *composer) writeCalendar(w io.Writer) error {
	s := c.job.Season
	turns, plan := s.Shown()
	if len(plan.Items) == 0 {
		return finding.Faults{{Kind: finding.ErrMissing, Key: "work.days", Got: pick(s.Planned(), "days that hold no plan; the report says why", ""), Want: "the days on which somebody works, and hours among them that suit: else there is no calendar to write"}}
	}
	x := c.job.Boat
	var events []event
	add := func(e event) {
		h := fnv.New64a()
		fmt.Fprintf(h, "%s\n%s\n%d\n%s", x.Name, x.On, len(events), e.summary) //nolint:errcheck // a hash takes everything
		e.uid = fmt.Sprintf("%016x@boatyard.example", h.Sum64())
		e.summary, e.text = clean(e.summary), clean(e.text)
		events = append(events, e)
	}
	for _, it := range plan.Items {
		t := turns[it.Task]
		for _, span := range it.Spans {
			if !span.To.After(span.From) {
				continue // goes along with what comes before it
			}
			text := c.turn(t, it)
			if len(t.Coats) > 0 && !it.Again {
				text += ". Weather: " + c.outlook(it)
			}
			if wl := windowAndLast(it); wl != "" {
				text += ". " + sentence(wl)
			}
			add(event{start: span.From, end: span.To, floating: x.Weather.Zone == nil, summary: c.titled(c.turn(t, it)), text: text + "." + pick(len(t.Coats) > 0, " A planned hour is no leave to paint.", "")})
		}
	}
	for _, d := range s.Drying {
		for _, r := range d.Readings {
			add(event{day: r, summary: c.titled("read the moisture of the " + d.Part), text: "At the marked spots, after a rinse. The first coat not before " + d.Earliest.String() + "."})
		}
	}
	if l := x.Work.Launch; l.Given() && !x.Work.LaunchOpen.True() {
		add(event{day: l, summary: c.titled(pick(plan.Fits, "launch", "launch not possible on this day")), text: c.headline()})
	}
	return icalendar(w, midnightUTC(x.On), x.Name, events)
}

// titled puts the boat's name before what is done.
func (c *composer) titled(what string) string {
	if c.job.Boat.Name == "" {
		return what
	}
	return c.job.Boat.Name + ": " + what
}

func midnightUTC(d quantity.Date) time.Time {
	return time.Date(d.Year(), d.Month(), d.Day(), 0, 0, 0, 0, time.UTC)
}
