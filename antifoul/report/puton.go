package report

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"boatyard.example/bottomwork/antifoul"
	"boatyard.example/bottomwork/coverage"
	"boatyard.example/bottomwork/coverage/gauge"
	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

// putOn tells whether the film that was asked for is there, by gauge, by comb and by the litres used.
func (c *composer) putOn() {
	p := c.job.PutOn
	if len(p.Gauged)+len(p.Combed)+len(p.Used) == 0 {
		return
	}
	c.head(2, "Was it put on")
	for _, g := range p.Gauged {
		c.gauged(g)
	}
	if len(p.Combed) > 0 {
		c.head(3, "While it was wet, by comb")
		for _, k := range p.Combed {
			c.combed(k)
		}
		c.cannot(tables.TellsWet)
	}
	if len(p.Used) > 0 {
		c.head(3, "By the litres used")
		for _, u := range p.Used {
			c.say("%s: %s", c.onPart(u.Part, u.Zone), strings.Join(c.findings(u.Result.Findings, finding.Fine), " "))
		}
		c.cannot(tables.TellsMean)
	}
}

// gauged is what a surveyor signs: what was read by what and how, zone by zone, the verdict, what to do, and what the readings cannot say.
func (c *composer) gauged(g antifoul.GaugedPart) {
	name, material := g.Instrument, ""
	x, err := c.job.Book.Instrument(g.Instrument)
	if err == nil {
		name = x.Name
	}
	for _, p := range c.job.Boat.Parts {
		if m, err := c.job.Book.Material(p.Material); err == nil && p.Name == g.Part {
			material = m.Name
		}
	}
	whole := g.Result.Whole
	c.head(3, sentence(g.Part)+", by "+name)
	from := ""
	if g.File != "" {
		from = " (" + g.File + ")"
	}
	c.say("%s on %s: %s by %s%s, judged by %s against %s%s.", sentence(g.Part), material, plural(whole.Count, "reading", "readings"), name, from,
		whole.Standard, g.Nominal.Show(c.units), agreed(g, c))
	for _, f := range g.Result.Reads {
		c.say("%s", c.finding(f))
	}
	c.say("%s", c.verdict(g))
	rows := [][]string{}
	for _, z := range g.Result.Zones {
		rows = append(rows, c.gaugedRow(c.zone(z.Zone.Zone), z.Verdict))
	}
	if len(rows) > 1 {
		row := c.gaugedRow("all together", whole)
		if !g.Result.Passes && slices.ContainsFunc(g.Result.Zones, func(z gauge.ZoneVerdict) bool { return !z.Passes }) {
			row[len(row)-1] = "as its zones"
		}
		rows = append(rows, row)
	}
	single := "Below nominal"
	if whole.NeededAreas > 0 {
		single = "Spots below nominal"
	}
	mean := "Mean"
	if g.Profile != "" {
		mean = "Mean, less the profile"
	}
	c.table([]string{"Zone", "Readings", "Wanted", mean, "Thinnest", "Thickest", single, "Verdict"}, rows)
	c.failures(g)
	c.toDo(g)
	if err == nil {
		c.say("What the readings cannot say: %s They hold for the places that were read, on the day that they were read.", x.Cannot)
	}
}

// agreed says which greatest film was agreed.
func agreed(g antifoul.GaugedPart, c *composer) string {
	if g.Most.Given() {
		return ", at most " + g.Most.Show(c.units)
	}
	return "; no greatest film was agreed"
}

// verdict is one sentence: accepted, or not and where.
func (c *composer) verdict(g antifoul.GaugedPart) string {
	if g.Result.Passes {
		return fmt.Sprintf("Accepted: every zone for itself, and all together, is as %s asks.", g.Result.Whole.Standard)
	}
	if w := g.Result.Reads.Worst(); w != finding.Fine && w != finding.Caution {
		return "Not accepted: whatever was read, nobody can rely on this gauge here without more than its readings."
	}
	var where []string
	for _, z := range g.Result.Zones {
		if !z.Passes {
			where = append(where, c.zone(z.Zone.Zone))
		}
	}
	if len(where) == 0 {
		return "Not accepted: every zone is right for itself, all together are not."
	}
	return "Not accepted on: " + and(where) + "."
}

func (c *composer) gaugedRow(name string, v gauge.Verdict) []string {
	if v.Count == 0 {
		return []string{sentence(name), "0", "–", "–", "–", "–", "–", "not read"}
	}
	verdict := "fails"
	if v.Passes {
		verdict = "passes"
	}
	return []string{
		sentence(name), strconv.Itoa(v.Count), strconv.Itoa(v.Needed), v.Mean.Show(c.units), v.Lowest.Show(c.units), v.Highest.Show(c.units),
		fmt.Sprintf("%d of %d, %s", v.Below, v.Singles, v.Share().Show(c.units)), verdict,
	}
}

// failures says, zone by zone, what fails and what must be known; of all together only where no zone for itself said as much.
func (c *composer) failures(g antifoul.GaugedPart) {
	var items []string
	failed := false
	for _, z := range g.Result.Zones {
		failed = failed || !z.Passes
		for _, f := range z.Findings {
			if f.Verdict > finding.Fine {
				items = append(items, sentence(c.zone(z.Zone.Zone))+": "+c.finding(f))
			} else if f.Rule == gauge.RuleCorrected && len(items) == 0 {
				items = append(items, c.finding(f))
			}
		}
	}
	for _, f := range g.Result.Whole.Findings {
		if f.Verdict == finding.Forbidden && !failed || f.Rule == gauge.RuleSplit {
			items = append(items, "All together: "+c.finding(f))
		}
	}
	c.list(items)
	if len(items) == 0 {
		for _, f := range g.Result.Whole.Findings {
			items = append(items, c.finding(f))
		}
		c.list(items)
	}
}

// toDo says what puts each zone right.
func (c *composer) toDo(g antifoul.GaugedPart) {
	if items := c.toDoItems(g); len(items) > 0 {
		c.say("What to do:")
		c.list(each(items, sentence))
		if !c.alone {
			c.say("Litres that make up what is missing are not in what is bought for the new coats.")
		}
	}
}

// shortPutOn says what is still to put on and to read, part by part.
func (c *composer) shortPutOn() {
	var items []string
	for _, g := range c.job.PutOn.Gauged {
		for _, text := range c.toDoItems(g) {
			items = append(items, sentence(g.Part)+", "+text)
		}
	}
	if len(items) > 0 {
		c.head(2, "Was it put on: still to do")
		c.list(items)
	}
}

func (c *composer) toDoItems(g antifoul.GaugedPart) []string {
	var items []string
	for _, m := range g.More {
		zone := c.zone(m.Zone)
		if m.Readings > 0 {
			items = append(items, fmt.Sprintf("%s: take at least %s.", zone, plural(m.Readings, "more reading", "more readings")))
		}
		switch {
		case m.Paint != nil:
			items = append(items, fmt.Sprintf("%s: put on %s more: %s. Abraded first where its window has passed; then read again, before any antifouling.", zone, m.Film.Show(c.units), c.more(*m.Paint, g.Coating)))
		case m.Film.Given() && g.Coating != "":
			items = append(items, fmt.Sprintf("%s: %s are missing, more than any number of coats makes up. Ask what was meant.", zone, m.Film.Show(c.units)))
		case m.Film.Given():
			items = append(items, fmt.Sprintf("%s: put on %s more, then read again. The file does not say with which coating (gauge.coating), so the litres are not reckoned.", zone, m.Film.Show(c.units)))
		}
	}
	return items
}

// more says the coats and the litres of a film that is missing.
func (c *composer) more(m coverage.More, coating string) string {
	name := coating
	if k, err := c.job.Book.Coating(coating); err == nil {
		name = k.Name
	}
	return fmt.Sprintf("%s of %s, %s dry each, in all %s", plural(m.Coats, "coat", "coats"), name, m.Film.To(quantity.Micrometre, 0, quantity.Up).Show(c.units), spanOf(m.Litres, quantity.Litre, 2, c.units))
}

func (c *composer) combed(k antifoul.CombedCoat) {
	text := c.onPart(k.Part, k.Zone) + ": " + strings.Join(c.findings(k.Result.Findings, finding.Fine), " ")
	if k.More != nil {
		text += fmt.Sprintf(" Made up once it has dried, what the mean lacks takes %s.", c.more(*k.More, k.Coating))
	}
	c.say("%s", text)
}

// onPart names a part, and a zone of it.
func (c *composer) onPart(part, zone string) string {
	if zone == "" || c.zone(zone) == part {
		return sentence(part)
	}
	return sentence(part) + ", " + c.zone(zone)
}

// cannot says what the way that tells so cannot say.
func (c *composer) cannot(tells string) {
	for x := range c.job.Book.Instruments() {
		if x.Tells == tells {
			c.say("What the %s cannot say: %s", x.Name, x.Cannot)
			return
		}
	}
}
