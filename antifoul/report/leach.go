package report

import (
	"fmt"
	"math"
	"slices"
	"strconv"

	"boatyard.example/bottomwork/antifoul"
	"boatyard.example/bottomwork/antifoul/leach"
	"boatyard.example/bottomwork/compat"
	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

// biocidal is what parts have in common whose working coats are one type, equally thick, with one life.
type biocidal struct {
	coating tables.Coating
	film    quantity.Range[quantity.Film] // of the working coats
	life    quantity.Range[float64]       // months afloat
	parts   []string
	area    quantity.Range[quantity.Area]
	law     finding.List
}

// leach tells what biocide is in the working coats, what leaves them by two methods side by side, and grams a season.
func (c *composer) leach() {
	groups := c.biocidal()
	if len(groups) == 0 {
		return
	}
	c.head(2, "Biocide in the film, and what leaves it")
	c.say("Worked out for generic types, from content, density and solids of the wet paint. Every mean is given twice, by the mass balance of ISO 10890 and the same divided by the factor of Finnie 2006; neither is a measurement. The life is the forecast's, at its low and high end (cut at ten years), in months afloat; grams a season end with the life where that is shorter. Extra coats on waterline and edges are not counted. Authorities approve products by the product's own figures, and nothing here stands in for them.")
	for i, g := range groups {
		c.leaves(g, slices.ContainsFunc(groups[:i], func(o biocidal) bool { return o.coating.Key == g.coating.Key }))
	}
}

// biocidal gathers the parts whose working coats hold a biocide.
func (c *composer) biocidal() []biocidal {
	var out []biocidal
	for _, s := range c.job.Schemes {
		film, ok := working(s)
		if !ok || s.Coating.Biocide == tables.NoBiocide {
			continue
		}
		use := c.job.Boat.Use
		life := quantity.Range[float64]{Low: use.AfloatMonths(s.Lasts.Life.Low), Typical: use.AfloatMonths(s.Lasts.Life.Typical), High: use.AfloatMonths(s.Lasts.Life.High)}
		same := func(g biocidal) bool {
			return g.coating.Key == s.Coating.Key && g.life == life && g.film.Low.Equal(film.Low) && g.film.Typical.Equal(film.Typical) && g.film.High.Equal(film.High)
		}
		i := slices.IndexFunc(out, same)
		if i < 0 {
			i = len(out)
			out = append(out, biocidal{coating: s.Coating, film: film, life: life})
		}
		g := &out[i]
		g.parts = append(g.parts, s.Part)
		for _, a := range c.job.Areas {
			if a.Part == s.Part {
				g.area = together(g.area, a.Total)
			}
		}
		for _, p := range c.job.Ranking.Parts {
			if place, found := p.Of(s.Coating.Key); found && p.Part == s.Part {
				g.law = append(g.law, place.Law()...)
			}
		}
	}
	return out
}

// working is the film of the working coats; false when there are none.
func working(s antifoul.Scheme) (quantity.Range[quantity.Film], bool) {
	var film quantity.Range[quantity.Film]
	found := false
	for _, l := range s.Stack {
		if l.For == compat.Working && l.Film.Typical.Given() {
			film, found = together(film, l.Film), true
		}
	}
	return film, found
}

// together adds two ranges; one that is not given adds nothing.
func together[D quantity.Dim](a, b quantity.Range[quantity.Amount[D]]) quantity.Range[quantity.Amount[D]] {
	switch {
	case !a.Typical.Given():
		return b
	case !b.Typical.Given():
		return a
	}
	return quantity.Range[quantity.Amount[D]]{Low: a.Low.Add(b.Low), Typical: a.Typical.Add(b.Typical), High: a.High.Add(b.High)}
}

// leaves tells one group: the film, both means at both ends of its life, and each limit that a law of its places sets. Of a type that
// was told before, in another film or with another life, it tells the film and the table.
func (c *composer) leaves(g biocidal, again bool) {
	c.head(3, sentence(and(g.parts))+": "+g.coating.Name)
	if g.life.Low <= 0 { // nothing is known to end it, or she is never afloat: there is no mean
		in, err := leach.Content(c.job.Book, g.coating, g.film)
		if err == nil {
			c.list(c.findings(in.Findings, finding.Fine))
		}
		return
	}
	short, err := leach.Mean(c.job.Book, g.coating, g.film, g.life.Low)
	if err != nil {
		c.say("Not worked out: %s.", err)
		return
	}
	long, err := leach.Mean(c.job.Book, g.coating, g.film, g.life.High)
	if err != nil {
		c.say("Not worked out: %s.", err)
		return
	}
	season := c.job.Boat.Use.AfloatMonths(12)
	var rows [][]string
	for i, x := range short.Releases {
		if x.Metal && !x.Element { // its copper is counted in all of it
			continue
		}
		rows = append(rows, c.released(short, i, g.area, season))
		if g.life.High > g.life.Low {
			rows = append(rows, c.released(long, i, g.area, season))
		}
	}
	if again {
		c.list(c.findings(short.In.Findings, finding.Fine))
	} else {
		c.list(c.findings(short.Findings, finding.Fine))
	}
	c.table([]string{
		"Substance", "Life, months afloat", "Mean by mass balance, µg/cm²/d", "The same divided, µg/cm²/d",
		"Grams a season of " + afloat(season) + " months, by mass balance", "The same divided, g",
	}, rows)
	c.limitsOfRelease(short, long, g.law)
}

// released is one row of the table: a substance over one life.
func (c *composer) released(r leach.Rate, i int, area quantity.Range[quantity.Area], season float64) []string {
	x := r.Releases[i]
	grams := func(rate quantity.Range[float64]) string {
		g, err := leach.Load(rate, area, min(season, r.Months)) // what is spent before the season ends leaves no more
		if err != nil {
			return "–"
		}
		return fromTo(g)
	}
	return []string{sentence(x.Name), afloat(r.Months), fromTo(x.Raw), fromTo(x.Corrected), grams(x.Raw), grams(x.Corrected)}
}

// limitsOfRelease holds the means beside each limit of the laws.
func (c *composer) limitsOfRelease(short, long leach.Rate, law finding.List) {
	var told []string
	for _, text := range c.findings(againstLimits(short, long, law), finding.Fine) {
		if !slices.Contains(told, text) {
			told = append(told, text)
			c.say("%s", text)
		}
	}
}

// againstLimits holds the means beside each limit of the laws, the longer life only where it says something else.
func againstLimits(short, long leach.Rate, law finding.List) finding.List {
	var out finding.List
	for _, f := range law {
		limit, ok := leach.CapOf(f)
		if !ok {
			continue
		}
		said := leach.Against(short, limit)
		if more := leach.Against(long, limit); more[0].Rule != said[0].Rule {
			said = append(said, more...)
		}
		out = append(out, said...)
	}
	return out
}

// afloat says months to a tenth.
func afloat(months float64) string {
	return strconv.FormatFloat(math.Round(10*months)/10, 'f', -1, 64)
}

// fromTo says a range to two digits, without an exponent.
func fromTo(r quantity.Range[float64]) string {
	say := func(x float64) string {
		y, err := strconv.ParseFloat(strconv.FormatFloat(x, 'e', 1, 64), 64)
		if err != nil {
			return fmt.Sprint(x)
		}
		return strconv.FormatFloat(y, 'f', -1, 64)
	}
	if say(r.Low) == say(r.High) {
		return say(r.Low)
	}
	return say(r.Low) + " to " + say(r.High)
}
