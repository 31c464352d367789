package report

import (
	"fmt"
	"slices"

	"boatyard.example/bottomwork/antifoul"
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

// buy tells what to buy: litres, cans and what is left.
func (c *composer) buy() {
	if len(c.job.Buy) == 0 {
		return
	}
	c.head(2, "What to buy")
	var rows [][]string
	for _, g := range c.job.Buy {
		cost := "no price known"
		if g.Cost.Given() {
			cost = g.Cost.String()
		}
		rows = append(rows, []string{g.Coating.Name, c.colour(g.Colour), and(g.Parts), litres(g.Range, c.units), round2(g.Need, c.units), cans(g), round2(g.Left, c.units), cost})
	}
	c.table([]string{"Coating", "Colour", "For", "Litres, typical and range", "To buy for", "Cans", "Left over", "Cost"}, rows)
	c.spreads()
	c.onTheTin()
	reserve := "no reserve, since none was stated"
	if c.job.Boat.Paint.Reserve.Given() {
		reserve = "the stated reserve of " + c.job.Boat.Paint.Reserve.Show(c.units)
	}
	c.say("The need is the typical litres with %s; the high end of the range shows what a wasteful day would take. Thinner, rollers, trays, tape and protective gear are not counted.", reserve)
}

// spreads tells the theoretical rates that the litres start from, so that they can be checked with a pencil.
func (c *composer) spreads() {
	var items []string
	for _, s := range c.job.Schemes {
		for _, k := range s.Coats {
			if k.Layer.Coating.Laid() {
				continue // bought by the area
			}
			text := fmt.Sprintf("%s: %s at the typical %s dry film and %s solids.", sentence(k.Layer.Coating.Name), k.Theoretical.To(quantity.SquareMetrePerLitre, 1, quantity.Down).Show(c.units),
				k.Film.Typical.Show(c.units), k.Layer.Coating.Solids.Typical.Show(c.units))
			if !slices.Contains(items, text) {
				items = append(items, text)
			}
		}
	}
	if len(items) > 0 {
		c.say("Theoretical spreading rates, before losses:")
		c.list(items)
	}
}

// onTheTin tells by which biocides a tin of the generic type is known.
func (c *composer) onTheTin() {
	var items, seen []string
	for _, g := range c.job.Buy {
		if slices.Contains(seen, g.Coating.Key) {
			continue
		}
		seen = append(seen, g.Coating.Key)
		var holds []string
		for a := range g.Coating.Actives() {
			row, err := c.job.Book.Active(a.Key)
			if err != nil {
				continue // a book has checked its references
			}
			name := row.Name
			if row.CAS != "" {
				name += " (CAS " + row.CAS + ")"
			}
			holds = append(holds, join(", ", name, suffix(quantity.ShowRange(a.Content, c.units), " by weight")))
		}
		if len(holds) > 0 {
			items = append(items, fmt.Sprintf("%s: %s%s", sentence(g.Coating.Name), and(holds), c.rests(finding.Finding{Basis: []finding.Basis{g.Coating.Basis("active")}})))
		}
	}
	if len(items) > 0 {
		c.say("The biocides that a tin of each type names; recipes differ, and its label decides:")
		c.list(items)
	}
}

func round2(v quantity.Volume, s quantity.System) string {
	if !v.Given() {
		return "–"
	}
	return v.To(quantity.Litre, 2, quantity.Up).Show(s)
}

func cans(g antifoul.Bought) string {
	var out []string
	for _, i := range g.Items {
		out = append(out, fmt.Sprintf("%d × %s", i.Count, i.Can.Size))
	}
	return and(out)
}
