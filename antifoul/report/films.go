package report

import (
	"fmt"

	"boatyard.example/bottomwork/antifoul"
	"boatyard.example/bottomwork/compat/oldfilm"
	"boatyard.example/bottomwork/tables/quantity"
)

// films tells what the signs and the readings say of the old films.
func (c *composer) films() {
	if len(c.job.OldFilms) == 0 {
		return
	}
	c.head(2, "What is on her, and may it stay")
	for _, f := range c.job.OldFilms {
		c.head(3, sentence(f.Part))
		c.mayBe(f)
		c.mayStay(f)
	}
}

// mayBe lists the films by how they stand: the likely ones with what speaks for them, the others by name.
func (c *composer) mayBe(f antifoul.OldFilm) {
	if f.May == nil {
		return
	}
	var likely []string
	names := map[oldfilm.Standing][]string{}
	for _, x := range f.May.Films {
		if x.Standing == oldfilm.Likely {
			likely = append(likely, c.finding(x.Finding))
		}
		names[x.Standing] = append(names[x.Standing], x.Film.Name)
	}
	c.list(likely)
	for _, s := range []struct {
		standing oldfilm.Standing
		words    string
	}{
		{oldfilm.Possible, "Nothing was seen either way of: %s."},
		{oldfilm.Unlikely, "What is noted speaks against these, and rules none of them out: %s."},
		{oldfilm.RuledOut, "Ruled out: %s."},
	} {
		if n := names[s.standing]; len(n) > 0 {
			c.say(s.words, and(n))
		}
	}
	for _, x := range f.May.Findings {
		c.say("%s", c.finding(x))
	}
	if len(f.May.Settle) > 0 {
		c.say("What would settle it, the most telling first:")
		c.list(each(f.May.Settle, sentence))
	}
	c.say("Until it is settled, beware of all that is not ruled out: see the cautions.")
}

// mayStay tells the decision with the readings, hours, waste, and recoating against stripping.
func (c *composer) mayStay(f antifoul.OldFilm) {
	d := f.Decision
	if len(d.Findings) == 0 {
		return
	}
	if d.Do != oldfilm.NotRead {
		text := sentence(d.Do.String())
		if len(d.Decided) > 0 {
			text += ", decided by " + and(each(d.Decided, c.threshold))
		}
		text += "."
		if d.Hours.High > 0 {
			what := "Stripping it"
			if d.Do == oldfilm.Repair {
				what = "That"
			}
			text += " " + what + " is " + hoursRange(d.Hours) + " of one hand."
		}
		if d.Waste.High.Given() {
			text += fmt.Sprintf(" Some %s to %s of paint come off, to be disposed of as the yard and the law say.", d.Waste.Low.Show(c.units), d.Waste.High.Show(c.units))
		}
		c.say("%s", text)
	}
	var items []string
	for _, x := range d.Findings {
		items = append(items, c.finding(x))
	}
	c.list(items)
	if f.Recoat != nil {
		c.say("Recoat now, or strip now:")
		c.list([]string{c.finding(f.Recoat.Finding), c.finding(f.Strip.Finding)})
	}
}

func (c *composer) threshold(key string) string {
	if t, err := c.job.Book.Threshold(key); err == nil {
		return t.Name
	}
	return key
}

// metals tells how the metals of the boat stand to each other, and whether those that were read are protected.
func (c *composer) metals() {
	var rows [][]string
	var items, potentials []string
	add := func(list *[]string, text string) {
		for _, t := range *list {
			if t == text {
				return
			}
		}
		*list = append(*list, text)
	}
	for _, m := range c.job.Metals {
		if m.Parts[1] == "" {
			for _, f := range m.Findings {
				add(&potentials, c.finding(f))
			}
			continue
		}
		goes, by := "not settled", "–"
		if m.Pair.Anode != "" {
			goes = m.Pair.Anode
		}
		if m.Pair.High.Given() {
			by = quantity.ShowRange(quantity.Range[quantity.Potential]{Low: m.Pair.Low, High: m.Pair.High}, c.units)
		}
		rows = append(rows, []string{m.Pair.A, m.Pair.B, goes, by})
		for _, f := range m.Findings {
			if f.Rule != "couple-anode" && f.Rule != "couple-undecided" && f.Rule != "couple-within-limit" {
				add(&items, c.finding(f))
			}
		}
	}
	if len(rows) == 0 && len(potentials) == 0 {
		return
	}
	c.head(2, "Metals in the water")
	if len(rows) > 0 {
		c.say("Where two of them touch, or are bonded, in seawater. Paint on them changes how fast, not which one goes.")
		c.table([]string{"Metal", "With", "Which goes", "Driven by"}, rows)
		if w := c.job.Boat.Use.Water; w != "" && w != "salt" {
			c.say("The list was made in flowing seawater. She lies in %s water: the order is much the same there, the voltages are not.", w)
		}
		c.list(items)
	}
	if len(potentials) > 0 {
		c.say("Potentials read:")
		c.list(potentials)
	}
}
