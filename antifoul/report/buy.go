package report

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"boatyard.example/bottomwork/antifoul"
	"boatyard.example/bottomwork/coverage"
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
	c.table([]string{"Coating", "Colour", "For", "Litres, typical and range", "To have", "Cans", "Left over", "Cost"}, rows)
	c.ifOut()
	c.mixing()
	c.byZone()
	c.spreads()
	c.onTheTin()
	reserve := "no reserve, since none was stated"
	if c.job.Boat.Paint.Reserve.Given() {
		reserve = "the stated reserve of " + c.job.Boat.Paint.Reserve.Show(c.units)
	}
	c.say("The need is the typical litres with %s; the high end of the range shows what a wasteful day would take. Both hold the places under stands and blocks.", reserve)
	c.supplies()
}

// ifOut tells what to buy when the shop is out of a size, a coating a line.
func (c *composer) ifOut() {
	var items []string
	for _, g := range c.job.Buy {
		var ways []string
		for _, s := range g.IfOut {
			switch {
			case s.None:
				ways = append(ways, fmt.Sprintf("without %s nothing else on sale holds it", s.Out))
			case s.Instead.Cost.Given():
				ways = append(ways, fmt.Sprintf("without %s take %s, %s", s.Out, counted(s.Instead.Items), s.Instead.Cost))
			default:
				ways = append(ways, fmt.Sprintf("without %s take %s", s.Out, counted(s.Instead.Items)))
			}
		}
		if len(ways) > 0 {
			items = append(items, join(", ", sentence(g.Coating.Name), named(g.Colour, c.colour))+": "+strings.Join(ways, "; ")+".")
		}
	}
	if len(items) > 0 {
		c.say("If the shop is out of a size:")
		c.list(items)
	}
}

// mixing tells thinner, components, how much to mix at once, and what else belongs to the cans.
func (c *composer) mixing() {
	var items, thinner []string
	for _, g := range c.job.Buy {
		name := sentence(g.Coating.Name)
		if g.Thinner.Given() {
			thinner = append(thinner, fmt.Sprintf("%s for the %s", round2(g.Thinner, c.units), join(", ", g.Coating.Name, named(g.Colour, c.colour))))
		}
		if g.Mixed.Base.Given() {
			text := fmt.Sprintf("%s: %s of base and %s of hardener make %s", name, g.Mixed.Base.Show(c.units), g.Mixed.Hardener.Show(c.units), round2(g.Need, c.units))
			if g.Mixed.BaseMass.Given() {
				text += fmt.Sprintf("; by weight %s and %s", g.Mixed.BaseMass.Show(c.units), g.Mixed.HardenerMass.Show(c.units))
			}
			items = append(items, text+".")
		}
		for _, p := range g.Pots {
			for _, f := range p.Findings {
				items = append(items, name+" on the "+p.Part+". "+c.finding(f))
			}
		}
		for _, f := range g.Notes {
			text := c.finding(f)
			if !strings.Contains(strings.ToLower(text), strings.ToLower(g.Coating.Name)) {
				text = join(", ", name, named(g.Colour, c.colour)) + ". " + text
			}
			items = append(items, text)
		}
	}
	if len(thinner) > 0 {
		items = append(items, fmt.Sprintf("Thinner, each paint's own, for the planned %s: %s.", c.job.Boat.Paint.Thinner.Show(c.units), strings.Join(thinner, "; ")))
	}
	c.list(items)
}

// byZone tells coats and typical litres by zone, part by part, then what the places under stands take beside, what is saved where parts
// are painted in one go, and all of it, which is what was bought for.
func (c *composer) byZone() {
	var rows [][]string
	all := quantity.Litre.N(0)
	for _, s := range c.job.Schemes {
		at := slices.IndexFunc(c.job.Areas, func(a antifoul.PartArea) bool { return a.Part == s.Part })
		if at < 0 || len(s.Coats) == 0 {
			continue
		}
		for _, z := range c.job.Areas[at].Zones {
			coats, litres, ok := c.inZone(s, c.job.Areas[at].Zones, z.Zone)
			if !ok {
				return // the areas of a job are above zero
			}
			all = all.Add(litres)
			rows = append(rows, []string{s.Part, c.zone(z.Zone), strconv.Itoa(coats), round2(litres, c.units)})
		}
	}
	bought, patches := quantity.Litre.N(0), quantity.Litre.N(0)
	for _, g := range c.job.Buy {
		bought = bought.Add(g.Range.Typical)
		if g.Patches.Typical.Given() {
			patches = patches.Add(g.Patches.Typical)
		}
	}
	if patches.Sign() > 0 {
		rows = append(rows, []string{"places under stands", "laps and trays", "", round2(patches, c.units)})
	}
	if saved := all.Add(patches).Sub(bought); saved.Sign() > 0 {
		rows = append(rows, []string{"less", "parts in one go share a tray", "", round2(saved, c.units)})
	}
	rows = append(rows, []string{"in all", "", "", round2(bought, c.units)})
	c.say("Coats of every kind and typical litres by zone; what stays in tray and can is shared by area:")
	c.table([]string{"Part", "Zone", "Coats", "Litres"}, rows)
}

// inZone is how many coats of every kind the zone of a scheme gets, and their typical litres.
func (c *composer) inZone(s antifoul.Scheme, zones []coverage.ZoneRange, zone string) (coats int, litres quantity.Volume, ok bool) {
	litres = quantity.Litre.N(0)
	for _, k := range s.Coats {
		var in []coverage.ZoneRange
		for _, o := range zones {
			if slices.Contains(k.Zones, o.Zone) {
				in = append(in, o)
			}
		}
		shares, err := coverage.ByZone(k.Litres, in)
		if err != nil {
			return 0, litres, false
		}
		for _, v := range shares {
			if v.Zone == zone {
				coats, litres = coats+k.Layer.Coats, litres.Add(v.Litres.Typical)
			}
		}
	}
	return coats, litres, true
}

// supplies tells what is used up beside the paint, and what comes off.
func (c *composer) supplies() {
	var rows [][]string
	for _, s := range c.job.Supplies {
		per := s.Supply.Per
		if _, err := c.job.Book.Step(finding.Action(per)); err == nil {
			per = "m², " + per
		}
		rate := strconv.FormatFloat(s.Supply.Rate.Typical, 'g', -1, 64)
		if s.Supply.Unit != "piece" && s.Supply.Unit != "pair" {
			rate += " " + strings.Replace(s.Supply.Unit, "m2", "m²", 1)
		}
		rows = append(rows, []string{sentence(s.Supply.Name), c.amount(s.Buy, s.Supply.Unit), rate + " per " + per, string(s.Supply.Basis("rate").Kind)})
		if d := s.Supply.Basis("rate").Doubt; d != "" {
			c.doubt(sentence(s.Supply.Name) + ": " + d)
		}
	}
	if len(rows) > 0 {
		c.say("Beside the paint, at the typical end and rounded up:")
		c.table([]string{"What", "How much", "Reckoned", "Rests on"}, rows)
	}
	c.list(c.findings(c.job.OfWaste, finding.Fine))
}

// amount writes a count in its unit.
func (c *composer) amount(n int, unit string) string {
	switch unit {
	case "m":
		return quantity.Metre.N(int64(n)).Show(c.units)
	case "m2":
		return quantity.SquareMetre.N(int64(n)).Show(c.units)
	case "L":
		return quantity.Litre.N(int64(n)).Show(c.units)
	case "kg":
		return quantity.Kilogram.N(int64(n)).Show(c.units)
	}
	return plural(n, unit, unit+"s")
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

// cans names the cans to buy and those that the store holds.
func cans(g antifoul.Bought) string {
	bought := counted(g.Items)
	if len(g.FromStock) == 0 {
		return bought
	}
	return join("; ", bought, "from the store "+counted(g.FromStock))
}

func counted(items []coverage.Item) string {
	var out []string
	for _, i := range items {
		text := fmt.Sprintf("%d × %s", i.Count, i.Can.Size)
		if i.Can.Batch != "" {
			text += " (batch " + i.Can.Batch + ")"
		}
		out = append(out, text)
	}
	return and(out)
}
