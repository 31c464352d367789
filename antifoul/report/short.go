package report

import (
	"fmt"
	"strings"

	"boatyard.example/bottomwork/antifoul"
	"boatyard.example/bottomwork/compat"
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

// short composes one page: what, how much, when, what to watch for.
func (c *composer) short() {
	c.title()
	if SameAgain(c.job) {
		c.say("Same again on sound paint: wash, scuff where told, paint, back in.")
	}
	for _, p := range c.job.Ranking.Parts {
		c.say("%s", c.shortAnswer(p))
	}
	if text := c.headline(); text != "" {
		c.say("%s", text)
	}
	for _, f := range c.job.Findings {
		if f.Verdict > finding.Fine {
			c.say("%s", c.job.Book.Say(f, c.units))
		}
	}
	c.shortPutOn()
	c.shortSurvey()
	var work []string
	for _, t := range c.job.Order {
		work = append(work, c.shortTask(t))
	}
	if len(work) > 0 {
		c.head(2, "Do")
		c.blocks = append(c.blocks, bullets{items: append(work, c.closing()...), numbered: true})
	}
	c.shortDays()
	c.shortDrawings()
	if len(c.job.Buy) > 0 {
		c.head(2, "Buy")
		var rows [][]string
		for _, g := range c.job.Buy {
			cost := "–"
			if g.Cost.Given() {
				cost = g.Cost.String()
			}
			rows = append(rows, []string{g.Coating.Name, c.colour(g.Colour), round2(g.Need, c.units), cans(g), cost})
		}
		c.table([]string{"Coating", "Colour", "Need", "Cans", "Cost"}, rows)
		c.shortBeside()
		c.ownTables(true)
	}
	c.head(2, "Watch for")
	c.list(c.shortWatch())
	last := "The law stands in the long report."
	if len(c.job.Cautions) > 0 {
		var names []string
		for _, k := range c.job.Cautions {
			names = append(names, k.Name)
		}
		last = fmt.Sprintf("In the long report: the law, and in full the cautions that apply (%s). Local rules and the tin's data sheet come first.", and(names))
	}
	if n := len(c.job.Ranking.Assumed); n > 0 {
		last += fmt.Sprintf(" %s not reported and assumed, told there too.", plural(n, "thing was", "things were"))
	}
	c.say("%s", last)
}

func (c *composer) shortAnswer(p antifoul.PartRanking) string {
	s, ok := c.job.Scheme(p.Part)
	switch {
	case len(p.Left) > 0:
		return sentence(p.Part) + ": " + c.left(p)
	case !ok:
		return sentence(p.Part) + ": " + c.nothing(p)
	}
	place, _ := p.Of(s.Coating.Key)
	out := fmt.Sprintf("%s: %s%s.", sentence(p.Part), s.Coating.Name, tierWords(place))
	if hull, ok := c.job.Scheme(c.job.Ranking.Hull().Part); ok && hull.Part != s.Part && hull.Coating.Key == s.Coating.Key {
		return sentence(p.Part) + ": as the hull."
	}
	var why strings.Builder
	for i, f := range place.Reasons() {
		if i < 2 {
			why.WriteString(" " + c.it(f))
		}
	}
	return out + why.String() + littleJudged(place) + c.asks(place)
}

// shortDrawings shows the layers and the days.
func (c *composer) shortDrawings() {
	for _, s := range c.job.Schemes {
		c.drawSection(s)
	}
	c.drawDays(c.job.Season.Shown())
}

// shortDays tells the days in one paragraph.
func (c *composer) shortDays() {
	s := c.job.Season
	turns, plan := s.Shown()
	var days []string
	last := ""
	for _, it := range plan.Items {
		for _, span := range it.Spans {
			name := pick(it.Again, "abrade, the window has closed", turns[it.Task].Name)
			if name = strings.ReplaceAll(name, "places where she stood, ", ""); turns[it.Task].Patch {
				name += " where she stood"
			}
			if day := span.From.Format("Mon 2 Jan"); day != last {
				days, last = append(days, day+" "+name), day
			} else if n := len(days) - 1; !strings.HasSuffix(days[n], name) {
				days[n] += ", then " + name
			}
		}
	}
	for _, row := range c.launchRow(plan) {
		days = append(days, row[0]+" launch")
	}
	if len(days) > 0 {
		c.say("%s.", strings.Join(days, "; "))
	}
	for _, f := range s.Findings {
		if f.Verdict >= finding.Needs {
			c.say("%s", c.job.Book.Say(f, c.units))
		}
	}
}

func (c *composer) shortTask(t antifoul.Task) string {
	if t.Coat == nil {
		return c.parts(t) + t.Says
	}
	k := t.Coat.Layer
	out := fmt.Sprintf("%s%s of %s", c.parts(t), plural(k.Coats, "coat", "coats"), k.Coating.Name)
	if k.Colour != "" {
		out += " in " + c.colour(k.Colour)
	}
	if k.For == compat.Extra {
		out += " on the " + c.zones(t.Coat.Zones)
	}
	out += "; next coat " + window(k, c.units)
	if k.Coating.ApplyMin.Given() {
		hold := fmt.Sprintf("; wet film about %s; surface %s to %s, 3 °C above the dew point", wet(t.Coat.Wet, c.units), k.Coating.ApplyMin.Show(c.units), k.Coating.ApplyMax.Show(c.units))
		if hold == c.hold {
			hold = "; film and surface as before"
		} else {
			c.hold = hold
		}
		out += hold
	}
	return out + "."
}

// shortBeside tells in lines of their own what belongs to the cans: thinner, what is kept back, what else is used up.
func (c *composer) shortBeside() {
	var keep, beside []string
	thinner := quantity.Litre.N(0)
	for _, g := range c.job.Buy {
		if g.Thinner.Given() {
			thinner = thinner.Add(g.Thinner)
		}
		keep = append(keep, c.keepBack(g)...)
	}
	if thinner.Sign() > 0 {
		beside = append(beside, "thinner, "+round2(thinner, c.units)+" in all")
	}
	for _, s := range c.job.Supplies {
		beside = append(beside, pick(s.Supply.Unit == "piece", itoa(s.Buy)+" × ", c.amount(s.Buy, s.Supply.Unit)+" of ")+s.Supply.Name)
	}
	if len(beside) > 0 {
		c.say("Beside it: %s.", strings.Join(beside, "; "))
	}
	c.list(keep)
}

// keepBack says what is kept of a coating for the places under stands.
func (c *composer) keepBack(g antifoul.Bought) []string {
	var out []string
	for _, f := range g.Notes {
		if strings.HasPrefix(string(f.Rule), "patch-") {
			out = append(out, c.job.Book.Say(f, c.units))
		}
	}
	return out
}

func (c *composer) shortWatch() []string {
	var texts []string
	parts := map[string][]string{} // that the same is told of
	tell := func(part, text string) {
		if parts[text] == nil {
			texts = append(texts, text)
		}
		parts[text] = append(parts[text], part)
	}
	for _, s := range c.job.Schemes {
		for _, k := range s.Key {
			if k.Layer.For != compat.Working && k.Layer.Colour != "" {
				tell(s.Part, fmt.Sprintf(", %s showing: %s", c.colour(k.Layer.Colour), c.job.Book.Say(k.Shows, c.units)))
			}
		}
		if text := strings.TrimSpace(c.lastsWords(s)); text != "" {
			tell(s.Part, ": "+text)
		}
	}
	for i, text := range texts {
		texts[i] = sentence(and(parts[text])) + text
	}
	return texts
}
