package report

import (
	"fmt"

	"boatyard.example/bottomwork/antifoul"
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
	reserve := "no reserve, since none was stated"
	if c.job.Boat.Paint.Reserve.Given() {
		reserve = "the stated reserve of " + c.job.Boat.Paint.Reserve.Show(c.units)
	}
	c.say("The need is the typical litres with %s; the high end of the range shows what a wasteful day would take. Thinner, rollers, trays, tape and protective gear are not counted.", reserve)
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
