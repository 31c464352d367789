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
	if text := c.headline(); text != "" {
		c.say("%s", text)
	}
	for _, text := range c.findings(c.job.Findings, finding.Caution) {
		c.say("%s", text)
	}
}

// partAnswer is one part's answer in a few sentences.
func (c *composer) partAnswer(p antifoul.PartRanking) string {
	name := sentence(p.Part)
	if len(p.Left) > 0 {
		return name + ": left bare. " + c.left(p)
	}
	s, ok := c.job.Scheme(p.Part)
	if !ok {
		return name + ": " + c.nothing(p)
	}
	place, _ := p.Of(s.Coating.Key)
	why := c.because(p, place)
	out := fmt.Sprintf("%s: %s%s.", name, s.Coating.Name, tierWords(place))
	if hull, ok := c.job.Scheme(c.job.Ranking.Hull().Part); ok && p.Zone != antifoul.HullZone && hull.Coating.Key == s.Coating.Key {
		hullPlace, _ := c.job.Ranking.Hull().Of(s.Coating.Key)
		if c.because(c.job.Ranking.Hull(), hullPlace) == why {
			out, why = name+": as the hull.", ""
		}
	}
	return out + why + c.coatsWords(s) + c.lastsWords(s)
}

// left says why a part is left bare.
func (c *composer) left(p antifoul.PartRanking) string {
	var out []string
	for _, f := range p.Left {
		out = append(out, c.job.Book.Say(f, c.units))
	}
	return strings.Join(out, " ")
}

// because says what moved a place most, what it shares its place with, and what must be asked first.
func (c *composer) because(p antifoul.PartRanking, place antifoul.Place) string {
	var out strings.Builder
	for _, f := range place.Reasons() {
		out.WriteString(" " + c.it(f))
	}
	if place.Tied {
		out.WriteString(" It shares its place with " + and(c.tiedWith(p, place)) + "; choose among them by what the yard keeps.")
	}
	return out.String() + littleJudged(place) + c.asks(place)
}

// littleJudged warns of a ranking for which less than half of the criteria had anything to go by.
func littleJudged(p antifoul.Place) string {
	criteria, judged := p.Criteria(), 0
	for _, k := range criteria {
		if k.Judged {
			judged++
		}
	}
	if judged*2 >= len(criteria) {
		return ""
	}
	return fmt.Sprintf(" Only %d of %d criteria could be judged: do not rely on the order before more is reported.", judged, len(criteria))
}

// coatsWords says how many coats go on.
func (c *composer) coatsWords(s antifoul.Scheme) string {
	n := coats(s, compat.Working)
	if n == 0 {
		return ""
	}
	out := " " + sentence(plural(n, "working coat", "working coats"))
	if coats(s, compat.Extra) > 0 {
		out += ", one more on waterline and edges"
	}
	if i := slices.IndexFunc(s.Stack, func(l compat.Layer) bool { return l.For == compat.Signal }); i >= 0 {
		out += ", over one signal coat"
		if below := s.Stack[i].Coating; below.Key != s.Coating.Key {
			out += " of " + below.Name
		}
	}
	return out + "."
}

// lastsWords says how long the film lasts and where to look first.
func (c *composer) lastsWords(s antifoul.Scheme) string {
	f := s.Lasts
	switch {
	case f.Life.High <= 0:
		return ""
	case !f.Coating.Wears():
		out := " Its action lasts " + monthsRange(f.Life) + " from launch"
		if f.NextHaul.Given() {
			out += ", so the next paint is due from " + f.NextHaul.String()
		}
		return out + "."
	}
	out := " It is worn through after " + earliest(f.Life)
	if s.Zone == antifoul.HullZone {
		out = " The flat is worn through after " + earliest(f.Life)
	}
	if z, ok := f.First(); ok && s.Zone == antifoul.HullZone && z.Months.Low < f.Life.Low {
		out += "; look first at the " + c.zone(z.Zone)
		if z.First.Given() {
			out += ", from " + z.First.String()
		}
	} else if f.NextHaul.Given() {
		out += "; look from " + f.NextHaul.String()
	}
	return out + "."
}

func (c *composer) nothing(p antifoul.PartRanking) string {
	for _, x := range p.Places {
		if x.Tier == antifoul.Unsuited && x.Coating().Role != tables.Bare {
			return fmt.Sprintf("nothing in these tables suits as asked. Nearest is %s, but: %s Change what stands against it, a shorter time until the next paint first, and ask again.", x.Name, x.Why())
		}
	}
	return "nothing in these tables may be used. The reasons stand with each type below."
}

// asks names the open questions and the conditions of law of a place. Those of law are named by the law's name and said in full
// under Law. No coating has none that a reader needs.
func (c *composer) asks(p antifoul.Place) string {
	if p.Coating().Role == tables.Bare {
		return ""
	}
	var laws, conditions, others []string
	for _, f := range p.Asks() {
		if name := c.lawName(f); name == "" {
			others = append(others, c.it(f))
		} else if !slices.Contains(laws, name) {
			laws = append(laws, name)
		}
	}
	for _, f := range p.Law() {
		if name := c.lawName(f); f.Verdict == finding.Caution && name != "" && !slices.Contains(conditions, name) {
			conditions = append(conditions, name)
		}
	}
	out := ""
	if len(others)+len(laws) > 0 {
		out = " Ask first:"
		if len(others) > 0 {
			out += " " + strings.Join(others, " ")
		}
		if len(laws) > 0 {
			out += " " + strings.Join(laws, "; ") + " (see Law)."
		}
	}
	if len(conditions) > 0 {
		out += " Conditions of law: " + strings.Join(conditions, "; ") + " (see Law)."
	}
	return out
}

// lawName is the name of the law that a finding speaks of; empty when it speaks of none.
func (c *composer) lawName(f finding.Finding) string {
	for _, x := range f.Facts {
		if x.Name == "law" {
			return c.show(x.Value)
		}
	}
	return ""
}

func (c *composer) tiedWith(p antifoul.PartRanking, place antifoul.Place) []string {
	var out []string
	for _, o := range p.Places {
		if o.Rank == place.Rank && o.Key != place.Key {
			out = append(out, o.Name)
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
	default: // it suits, or nothing is done
		return ""
	}
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

// SameAgain reports whether the job is the commonest of all: the type that is on the hull already, over sound paint, and on every part that is painted no
// more than washing and abrading before it, while nothing that was noted of her asks for work or speaks against the file. The short report tells all that
// such a job asks for.
func SameAgain(j *antifoul.Job) bool {
	if a := j.Survey; a != nil && len(a.Differs)+len(a.Open)+len(a.At(tables.BeforeLaunch))+len(a.At(tables.ThisHaulOut)) > 0 {
		return false
	}
	same := false
	for _, s := range j.Schemes {
		for _, step := range s.Route.Steps {
			if step.Do != finding.Wash && step.Do != finding.Abrade && len(s.Coats) > 0 {
				return false // on any part
			}
		}
		if s.Zone != antifoul.HullZone {
			continue
		}
		n := len(s.Route.Keeps)
		same = n > 0 && s.Route.Keeps[n-1].Coating.Mechanism == s.Coating.Mechanism && s.Coating.Mechanism != tables.NoFilm
	}
	return same
}
