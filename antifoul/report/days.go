package report

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"time"

	"boatyard.example/bottomwork/antifoul"
	"boatyard.example/bottomwork/antifoul/calendar"
	"boatyard.example/bottomwork/compat"
	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

// days tells on which days the work is done, what the weather must be, and what is given up when the season is too short.
func (c *composer) days() {
	s := c.job.Season
	if !s.Planned() {
		return
	}
	c.head(2, "Days of work")
	turns, plan := s.Shown()
	c.say("%s", c.headline())
	if len(s.Kept) > 0 {
		c.list(c.findings(onlyLate(s.Calendar.Findings), finding.Fine))
		c.list(c.findings(s.Findings, finding.Fine))
		c.say("The days below are those of the job without what is given up. Layers, purchase, money and forecast elsewhere in this report are those of the whole job.")
	}
	c.morning()
	if len(s.Drying) > 0 {
		c.say("Every day after drying out stands only once two readings a month apart agree.")
	}
	c.table([]string{"Day", "Hours", "Work", "Weather", "Window and last start"}, append(c.dayRows(turns, plan), c.launchRow(plan)...))
	c.drawDays(turns, plan)
	c.list(c.findings(plan.Findings, finding.Fine))
	if len(s.Kept) == 0 {
		c.list(c.findings(s.Findings, finding.Fine))
	}
	c.list(c.findings(c.job.Boat.Weather.Forecast.Notes, finding.Fine))
	for _, d := range s.Drying {
		var days []string
		for _, r := range d.Readings {
			days = append(days, r.String())
		}
		c.say("Moisture of the %s is read on %s; the first coat not before %s.", d.Part, and(days), d.Earliest)
	}
	if len(plan.Items) > 0 {
		c.say("Work is laid on whole hours: that of neighbours is added up before it is rounded up, a coat is rounded up by itself. A planned hour is no leave to paint: surface, air and humidity are read on the spot before each coat and when the sun goes.")
	}
}

// headline is the plan in a sentence or two: what a reader must know first.
func (c *composer) headline() string {
	s := c.job.Season
	_, plan := s.Shown()
	launch := c.job.Boat.Work.Launch
	switch {
	case !s.Planned():
		return ""
	case len(plan.Items) == 0:
		return "There is no plan of days that keeps every rule: what stands in its way is told below it."
	case len(s.Kept) > 0:
		return fmt.Sprintf("The season is too short for all of it. %s Buy nothing for what is given up.", c.sum(plan))
	case plan.Findings.Has(calendar.RuleStands):
		return fmt.Sprintf("No plan keeps every film fresh until the launch on %s, see the days of work: without the launch it is %s", launch, c.sum(plan))
	case !plan.Fits:
		return fmt.Sprintf("The launch on %s cannot be met. %s", launch, c.sum(plan))
	}
	return c.sum(plan)
}

// launchRow ends the table.
func (c *composer) launchRow(p calendar.Calendar) [][]string {
	w := c.job.Boat.Work
	if !p.Fits || !w.Launch.Given() || w.LaunchOpen.True() {
		return nil
	}
	return [][]string{{w.Begins(w.Launch, c.job.Boat.Weather.Zone).Format("Mon 2 Jan"), "", "Launch", "", ""}}
}

// onlyLate are the findings that say why a plan does not fit.
func onlyLate(fs finding.List) finding.List {
	var out finding.List
	for _, f := range fs {
		if f.Verdict == finding.Forbidden {
			out = append(out, f)
		}
	}
	return out
}

// sum is the plan in one sentence.
func (c *composer) sum(p calendar.Calendar) string {
	text := fmt.Sprintf("%s of work, from %s to %s; she may go in from the morning of %s.", plural(p.Days, "day", "days"), date(p.Items[0].Start()), date(p.Items[len(p.Items)-1].End()), date(c.morningOf(p.Ready)))
	switch {
	case p.Again > 0:
		text += fmt.Sprintf(" %s be had inside %s, so %s abraded.", plural(p.Again, "coat cannot", "coats cannot"), pick(p.Again == 1, "its window", "their windows"), pick(p.Again == 1, "the film below is", "the films below are"))
	case slices.ContainsFunc(p.Items, func(i calendar.Item) bool { return !i.Closes.IsZero() }):
		text += " Every coat whose window closes is inside it."
	}
	return text
}

// morningOf is the first working morning at or after the moment.
func (c *composer) morningOf(t time.Time) time.Time {
	day, _ := quantity.NewDate(t.Year(), int(t.Month()), t.Day())
	if at := c.job.Boat.Work.Begins(day, t.Location()); !at.Before(t) {
		return at
	}
	return c.job.Boat.Work.Begins(day.AddDays(1), t.Location())
}

// morning tells whether the can of the next coat may be opened on the day of the question.
func (c *composer) morning() {
	w := c.job.Boat.Work
	if len(c.job.Boat.Weather.Forecast.Hours) == 0 {
		return
	}
	m, ok, err := c.job.Morning(w.Begins(c.job.Boat.On, c.job.Boat.Weather.Zone))
	if err != nil || !ok {
		return // the plan was made of the same input
	}
	c.say("On the morning of %s: %s", c.job.Boat.On, c.finding(m.Finding))
	if m.Verdict != finding.Forbidden || len(m.Why) > 0 {
		c.list(c.findings(m.Why, finding.Fine))
	}
}

// oneMorning is the answer for one moment, alone.
func (c *composer) oneMorning(at time.Time) error {
	if !c.job.Season.Planned() {
		return finding.Faults{{Kind: finding.ErrMissing, Key: "work.days", Want: "the days on which somebody works: without a plan no coat is next"}}
	}
	m, ok, err := c.job.Morning(at)
	if err != nil {
		return err
	}
	c.head(1, strings.TrimSpace(c.job.Boat.Name+", "+calendar.Moment(at)))
	if !ok {
		c.say("The plan has no coat left to put on.")
		return nil
	}
	c.say("%s", c.finding(m.Finding))
	c.list(c.findings(m.Why, finding.Fine))
	c.say("Taken as done: all that the plan has before it. If it is not, it comes first.")
	if !m.Next.IsZero() && m.Verdict < finding.Forbidden {
		c.say("If not today: %s%s.", calendar.Moment(m.Next), pick(m.Sure, "", ", if what is measured then allows it"))
	}
	c.say("Local rules, the paint's own data sheet and what is read on the spot come before any forecast.")
	return nil
}

func (c *composer) dayRows(turns []antifoul.Turn, p calendar.Calendar) [][]string {
	var rows [][]string
	last := ""
	for _, it := range p.Items {
		t := turns[it.Task]
		for i, s := range it.Spans {
			day := s.From.Format("Mon 2 Jan")
			row := []string{pick(day == last, "", day), s.From.Format("15:04") + "–" + s.To.Format("15:04"), c.turn(t, it), "", ""}
			if s.From.Equal(s.To) {
				row[1] = "then"
			}
			if i > 0 {
				row[2] = "goes on: " + row[2]
			}
			if len(t.Coats) > 0 && !it.Again {
				row[3] = c.outlook(it)
			}
			if i == 0 {
				row[4] = windowAndLast(it)
			}
			rows, last = append(rows, row), day
		}
	}
	return rows
}

// turn tells what is done, the same coat on several parts once.
func (c *composer) turn(t antifoul.Turn, it calendar.Item) string {
	if len(t.Coats) == 0 {
		return sentence(t.Name)
	}
	type same struct { // coats of one paint
		paint string
		what  []string
		on    [][]string
	}
	var paints []same
	for _, k := range t.Coats {
		paint := ""
		if k.Layer.For != compat.Undercoat {
			paint = ", " + k.Layer.Coating.Name
		}
		if k.Layer.Colour != "" {
			paint += " in " + c.colour(k.Layer.Colour)
		}
		i := slices.IndexFunc(paints, func(s same) bool { return s.paint == paint })
		if i < 0 {
			i, paints = len(paints), append(paints, same{paint: paint})
		}
		p := &paints[i]
		n := slices.Index(p.what, k.What())
		if n < 0 {
			n, p.what, p.on = len(p.what), append(p.what, k.What()), append(p.on, nil)
		}
		p.on[n] = append(p.on[n], k.Part)
	}
	var out []string
	for _, p := range paints {
		var coats []string
		for i, text := range p.what {
			coats = append(coats, pick(i == 0, sentence(and(p.on[i])), and(p.on[i]))+": "+text)
		}
		out = append(out, and(coats)+p.paint)
	}
	text := strings.Join(out, "; ")
	if t.Do == finding.Blast {
		text = "Blast and prime" + pick(t.Sections > 1, fmt.Sprintf(", section %d of %d", t.Section, t.Sections), "") + ". " + text
	}
	if t.Patch {
		text = "Places where she stood. " + text
	}
	if it.Again {
		text = "Abrade first, the window has closed. " + text
	}
	return text
}

// outlook tells the weather of a coat's hours and what follows from it.
func (c *composer) outlook(it calendar.Item) string {
	text := "measure first"
	switch {
	case it.Verdict == finding.Fine:
		text = "go"
	case !it.Outlook.Air.Given():
		return "weather not known yet"
	case c.farOff(it.Start()):
		text = "too far off to be believed"
	}
	if it.Outlook.Air.Given() {
		text += "; air " + c.span(it.Outlook.Air)
	}
	if it.Outlook.Surface.Given() {
		text += ", surface " + c.span(it.Outlook.Surface)
	}
	if it.Outlook.Humidity.Given() {
		text += ", humidity " + ends(it.Outlook.Humidity.Low, it.Outlook.Humidity.High, "%")
	}
	return text
}

// farOff reports whether a forecast for the moment is no longer believed.
func (c *composer) farOff(t time.Time) bool {
	trust, err := c.job.Book.Factor("forecast-trust")
	days := t.Sub(c.job.Boat.Work.Begins(c.job.Boat.On, t.Location())).Hours() / 24
	return err == nil && days >= trust.Value.Typical
}

// span is a span of temperature in the reader's unit, to whole degrees.
func (c *composer) span(s tables.Span) string {
	if c.units == quantity.US {
		return ends(s.Low*9/5+32, s.High*9/5+32, "°F")
	}
	return ends(s.Low, s.High, "°C")
}

func ends(low, high float64, unit string) string {
	a, b := math.Floor(low+1e-9), math.Ceil(high-1e-9)
	if a >= b {
		return fmt.Sprintf("%.0f %s", b, unit)
	}
	return fmt.Sprintf("%.0f to %.0f %s", a, b, unit)
}

func windowAndLast(it calendar.Item) string {
	var out []string
	inside := !it.Closes.IsZero() && !it.Again && !it.Closes.Before(it.Opens)
	if inside {
		out = append(out, "window "+it.Opens.Format("Mon 2 Jan 15:04")+" to "+it.Closes.Format("Mon 2 Jan 15:04"))
	}
	if windowDecides := inside && it.Last.Equal(it.Closes); !it.Last.IsZero() && !windowDecides {
		out = append(out, "by "+it.Last.Format("Mon 2 Jan 15:04")+", "+slack(it.Slack())+" of slack")
	}
	return strings.Join(out, "; ")
}

// slack is how much later work may begin, down.
func slack(d time.Duration) string {
	if h := int(d.Hours()); h < 24 {
		return fmt.Sprintf("%d h", h)
	}
	return plural(int(d.Hours())/24, "day", "days")
}

func date(t time.Time) string { return t.Format("Mon 2 Jan 2006") }
