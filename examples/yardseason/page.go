package main

import (
	"fmt"
	"io"
	"math"
	"strings"
	"text/tabwriter"

	"boatyard.example/bottomwork/antifoul"
	"boatyard.example/bottomwork/coverage"
	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

// page writes the season; the first error of the writer is kept.
type page struct {
	w     io.Writer
	book  *tables.Book
	units quantity.System
	err   error
}

func (p *page) say(format string, a ...any) {
	if p.err == nil {
		_, p.err = fmt.Fprintf(p.w, format+"\n", a...)
	}
}

// rows writes cells in columns, the first row as headings.
func (p *page) rows(rows [][]string) {
	if p.err != nil {
		return
	}
	t := tabwriter.NewWriter(p.w, 0, 8, 2, ' ', 0)
	for _, r := range rows {
		if _, err := fmt.Fprintln(t, strings.Join(r, "\t")); err != nil {
			p.err = err
			return
		}
	}
	p.err = t.Flush()
}

func (p *page) head(y yard, jobs []boatJob) {
	p.say("THE SEASON OF %s", strings.ToUpper(y.name))
	p.say("%d boats, %d hands, %g h a day. Generic types only: tins' own data sheets and labels decide where they say otherwise.", len(jobs), y.hands, y.hours)
}

// orders writes what to order, coating by coating, and what the store gives.
func (p *page) orders(list []order) {
	p.say("\nTo order, for all boats together, each boat's own reserve in it\n")
	rows := [][]string{{"Coating", "Colour", "Needed", "Order", "From the store", "Left over", "Cost", "For"}}
	for _, o := range list {
		cost := "no price known"
		if len(o.Items) == 0 {
			cost = "–"
		} else if o.Cost.Given() {
			cost = o.Cost.String()
		}
		rows = append(rows, []string{o.Coating.Name, p.colour(o.colour), litres(o.Need, p.units), cans(o.Items), cans(o.FromStock), litres(o.Left, p.units), cost, strings.Join(o.boats, ", ")})
	}
	p.rows(rows)
	if sum := money(list); sum.Given() {
		p.say("\nAll cans: %s", sum)
	}
}

func litres(v quantity.Volume, s quantity.System) string {
	return v.To(quantity.Litre, 1, quantity.Up).Show(s)
}

func cans(items []coverage.Item) string {
	var out []string
	for _, it := range items {
		out = append(out, fmt.Sprintf("%d × %s", it.Count, it.Can.Size))
	}
	if len(out) == 0 {
		return "–"
	}
	return strings.Join(out, ", ")
}

func (p *page) colour(key string) string {
	if k, err := p.book.Colour(key); err == nil {
		return k.Name
	}
	return "–"
}

// days writes when each boat is worked on, and each week's hours.
func (p *page) days(y yard, turns []turn) {
	p.say("\nDays, by launch\n")
	rows := [][]string{{"Boat", "Launch", "Hours", "From", "To", "Ready", ""}}
	week := map[quantity.Date]float64{}
	var first, last quantity.Date
	for _, t := range turns {
		launch := t.job.Boat.Work.Launch
		row := []string{t.name(), "open", "–", "–", "–", "–", ""}
		if launch.Given() && !t.job.Boat.Work.LaunchOpen.True() {
			row[1] = launch.String()
		}
		switch {
		case t.hours == 0:
			row[6] = "nothing to do on her bottom"
		case !t.first.Given():
			row[2], row[6] = fmt.Sprintf("%.0f", math.Ceil(t.hours)), "the owner does the work"
		default:
			row[2], row[3], row[4], row[5] = fmt.Sprintf("%.0f", math.Ceil(t.hours)), t.first.String(), t.last.String(), t.ready.String()
			if t.late > 0 {
				row[6] = fmt.Sprintf("%d days late", t.late)
			}
			for i, h := range t.load {
				d := t.first.AddDays(i)
				monday := d.AddDays(-(int(d.Weekday()) + 6) % 7)
				week[monday] += h
				if !first.Given() || monday.Before(first) {
					first = monday
				}
				if !last.Given() || monday.After(last) {
					last = monday
				}
			}
		}
		rows = append(rows, row)
	}
	p.rows(rows)
	if !first.Given() {
		return
	}
	p.say("\nThe crew, week by week\n")
	rows = [][]string{{"Week of", "Hours taken", "Hours there", "Boats"}}
	for d := first; !d.After(last); d = d.AddDays(7) {
		var boats []string
		for _, t := range turns {
			if t.first.Given() && !t.first.After(d.AddDays(6)) && !t.last.Before(d) {
				boats = append(boats, t.name())
			}
		}
		rows = append(rows, []string{d.String(), fmt.Sprintf("%.0f", week[d]), fmt.Sprintf("%.0f", float64(y.hands*len(y.days))*y.hours), strings.Join(boats, ", ")})
	}
	p.rows(rows)
	p.say("\nHours are typical, of one hand, without other work; drying days count as her coats take them. No weather is in it: each boat's own plan of days knows that.")
}

// doubts writes which boats may not get what was asked for, and why; what holds for several is said once.
func (p *page) doubts(jobs []boatJob) {
	p.say("\nBoats that may not get what was asked for\n")
	var order []string
	names := map[string][]string{}
	for _, x := range jobs {
		for _, why := range p.reasons(x) {
			if len(names[why]) == 0 {
				order = append(order, why)
			}
			names[why] = append(names[why], x.name())
		}
	}
	for _, why := range order {
		p.say("- %s: %s", strings.Join(names[why], ", "), why)
	}
	if len(order) == 0 {
		p.say("None.")
	}
}

// reasons are why the boat may not get what her owner asked for: parts for which nothing may be used, wishes that are refused or unwise, coats cut,
// questions that must be answered before anything is bought.
func (p *page) reasons(x boatJob) []string {
	var out []string
	for _, part := range x.job.Without() {
		r, _ := x.job.Ranking.Part(part)
		for _, f := range r.InWords() {
			out = append(out, p.book.Say(f, p.units))
		}
	}
	hull := x.job.Ranking.Hull()
	for _, f := range x.job.Findings {
		if f.Rule != antifoul.RuleWishRefused && f.Rule != antifoul.RuleWishUnsuited {
			continue
		}
		text := "the wished " + f.About + " is not used."
		if f.Rule == antifoul.RuleWishUnsuited {
			text = "the wished " + f.About + " is planned, though her use speaks against it."
		}
		if w, ok := hull.Of(x.job.Boat.Wishes.Coating); ok {
			text += " " + w.Why()
		}
		out = append(out, text)
	}
	for _, s := range x.job.Schemes {
		for _, f := range s.Findings {
			if f.Rule == antifoul.RuleCoatsCut || f.Rule == antifoul.RuleNoStep {
				out = append(out, p.book.Say(f, p.units))
			}
		}
	}
	if best, ok := hull.Best(); ok {
		for _, f := range best.Asks() {
			if f.Verdict == finding.Ask {
				out = append(out, p.book.Say(f, p.units))
			}
		}
	}
	return out
}
