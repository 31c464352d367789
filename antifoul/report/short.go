package report

import (
	"fmt"

	"boatyard.example/bottomwork/antifoul"
	"boatyard.example/bottomwork/compat"
	"boatyard.example/bottomwork/tables/finding"
)

// short composes one page: what, how much, when, what to watch for.
func (c *composer) short() {
	c.title()
	if sameAgain(c.job) {
		c.say("Same again on sound paint: wash, scuff where told, paint, back in.")
	}
	for _, p := range c.job.Ranking.Parts {
		c.say("%s", c.shortAnswer(p))
	}
	for _, f := range c.job.Findings {
		if f.Verdict > finding.Fine {
			c.say("%s", c.job.Book.Say(f, c.units))
		}
	}
	var work []string
	for _, t := range c.job.Order {
		work = append(work, c.shortTask(t))
	}
	if len(work) > 0 {
		c.head(2, "Do")
		c.blocks = append(c.blocks, bullets{items: append(work, c.closing()...), numbered: true})
	}
	if len(c.job.Buy) > 0 {
		c.head(2, "Buy")
		var rows [][]string
		for _, g := range c.job.Buy {
			rows = append(rows, []string{g.Coating.Name, c.colour(g.Colour), round2(g.Need, c.units), cans(g)})
		}
		c.table([]string{"Coating", "Colour", "Litres", "Cans"}, rows)
	}
	c.head(2, "Watch for")
	c.list(c.shortWatch())
	if len(c.job.Cautions) > 0 {
		var names []string
		for _, k := range c.job.Cautions {
			names = append(names, k.Name)
		}
		c.say("Cautions that apply, in full in the long report: %s. Local rules and the tin's data sheet come first.", and(names))
	}
	if n := len(c.job.Ranking.Assumed); n > 0 {
		c.say("%s not reported and assumed; the long report lists them.", plural(n, "thing was", "things were"))
	}
}

func (c *composer) shortAnswer(p antifoul.PartRanking) string {
	s, ok := c.job.Scheme(p.Part)
	switch {
	case len(p.Left) > 0:
		out := sentence(p.Part) + ":"
		for _, f := range p.Left {
			out += " " + c.job.Book.Say(f, c.units)
		}
		return out
	case !ok:
		return sentence(p.Part) + ": " + c.nothing(p)
	}
	place, _ := p.Of(s.Coating.Key)
	out := fmt.Sprintf("%s: %s%s.", sentence(p.Part), s.Coating.Name, tierWords(place))
	for i, f := range place.Reasons() {
		if i < 2 {
			out += " " + c.it(f)
		}
	}
	return out + c.asks(place)
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
		out += " on " + c.zones(t.Coat.Zones)
	}
	return out + "; next coat " + window(k, c.units) + "."
}

func (c *composer) shortWatch() []string {
	var out []string
	for _, s := range c.job.Schemes {
		for _, k := range s.Key {
			if k.Layer.For != compat.Working && k.Layer.Colour != "" {
				out = append(out, fmt.Sprintf("%s, %s showing: %s", sentence(s.Part), c.colour(k.Layer.Colour), c.job.Book.Say(k.Shows, c.units)))
			}
		}
		f := s.Lasts
		if f.Life.High <= 0 {
			continue
		}
		text := fmt.Sprintf("%s: good for %s", sentence(s.Part), monthsRange(f.Life))
		if z, ok := f.First(); ok {
			text += fmt.Sprintf("; look first at the %s, from %d months after launch", c.zone(z.Zone), int(z.Months.Low))
		}
		if f.NextHaul.Given() {
			text += "; next haul-out " + f.NextHaul.String()
		}
		out = append(out, text+".")
	}
	return out
}
