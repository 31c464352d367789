package report

import (
	"fmt"
	"slices"
	"strings"

	"boatyard.example/bottomwork/antifoul"
	"boatyard.example/bottomwork/compat"
	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/finding"
)

func (c *composer) title() {
	name := c.job.Boat.Name
	if name == "" {
		name = "a boat without a name"
	}
	c.head(1, "Bottom job for "+name)
	c.say("Asked on %s. Made from reference tables %s. Generic types only: the tin's own data sheet and label decide where they say otherwise.",
		c.job.Boat.On, c.job.Book.Fingerprint())
}

// answer is the whole job in a few lines.
func (c *composer) answer() {
	c.head(2, "The answer")
	for _, p := range c.job.Ranking.Parts {
		c.say("%s", c.partAnswer(p))
	}
	for _, text := range c.findings(c.job.Findings, finding.Caution) {
		c.say("%s", text)
	}
}

// partAnswer is one part's answer in a few sentences.
func (c *composer) partAnswer(p antifoul.PartRanking) string {
	name := sentence(p.Part)
	if len(p.Left) > 0 {
		out := name + ": left bare."
		for _, f := range p.Left {
			out += " " + c.job.Book.Say(f, c.units)
		}
		return out
	}
	s, ok := c.job.Scheme(p.Part)
	if !ok {
		return name + ": " + c.nothing(p)
	}
	place, _ := p.Of(s.Coating.Key)
	out := fmt.Sprintf("%s: %s%s.", name, s.Coating.Name, tierWords(place))
	if place.Tied {
		out += fmt.Sprintf(" It shares its place with %s.", and(c.tiedWith(p, place)))
	}
	for _, f := range place.Reasons() {
		out += " " + c.it(f)
	}
	out += c.asks(place)
	if n := coats(s, compat.Working); n > 0 {
		out += fmt.Sprintf(" %s of working paint", sentence(plural(n, "coat", "coats")))
		if coats(s, compat.Extra) > 0 {
			out += ", one more on waterline and edges"
		}
		if coats(s, compat.Signal) > 0 {
			out += ", over one signal coat"
		}
		out += "."
	}
	if s.Lasts.Life.High > 0 {
		out += " Good for " + monthsRange(s.Lasts.Life)
		if s.Zone == antifoul.HullZone && s.Coating.Wears() {
			out += " on the flat"
		}
		if s.Lasts.NextHaul.Given() {
			out += ", so the next bottom paint is due from " + s.Lasts.NextHaul.String()
		}
		out += "."
	}
	return out
}

// asks names the open questions of a place. Those of law are named by the law's name and said in full under Law.
func (c *composer) asks(p antifoul.Place) string {
	var laws []string
	out := ""
	for _, f := range p.Asks() {
		law := ""
		for _, x := range f.Facts {
			if x.Name == "law" {
				law = c.show(x.Value)
			}
		}
		switch {
		case law == "":
			out += " Ask first: " + c.it(f)
		case !slices.Contains(laws, law):
			laws = append(laws, law)
		}
	}
	if len(laws) > 0 {
		out += " Ask first (see Law): " + strings.Join(laws, "; ") + "."
	}
	return out
}

func (c *composer) nothing(p antifoul.PartRanking) string {
	if len(p.Places) > 0 && p.Places[0].Tier == antifoul.Unsuited {
		return fmt.Sprintf("nothing in these tables suits. Nearest is %s, but: %s", p.Places[0].Coating.Name, p.Places[0].Why())
	}
	return "nothing in these tables may be used. The reasons stand with each type below."
}

func (c *composer) tiedWith(p antifoul.PartRanking, place antifoul.Place) []string {
	var out []string
	for _, o := range p.Places {
		if o.Rank == place.Rank && o.Coating.Key != place.Coating.Key {
			out = append(out, o.Coating.Name)
		}
	}
	return out
}

func tierWords(p antifoul.Place) string {
	switch p.Tier {
	case antifoul.AfterWork:
		return ", after the work named below"
	case antifoul.AskFirst:
		return ", once the open question is answered"
	case antifoul.Unsuited:
		return ", as wished, though the use speaks against it"
	}
	return ""
}

func coats(s antifoul.Scheme, p compat.Purpose) int {
	n := 0
	for _, l := range s.Stack {
		if l.For == p {
			n += l.Coats
		}
	}
	return n
}

// sameAgain reports whether the hull's job is the commonest of all: the type that is there already, over sound paint, after no
// more than washing and scuffing.
func sameAgain(j *antifoul.Job) bool {
	for _, s := range j.Schemes {
		if s.Zone != antifoul.HullZone {
			continue
		}
		for _, step := range s.Route.Steps {
			if step.Do != finding.Wash && step.Do != finding.Abrade {
				return false
			}
		}
		n := len(s.Route.Keeps)
		return n > 0 && s.Route.Keeps[n-1].Coating.Mechanism == s.Coating.Mechanism && s.Coating.Mechanism != tables.NoFilm
	}
	return false
}
