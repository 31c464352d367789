package report

import (
	"fmt"
	"strings"

	"boatyard.example/bottomwork/antifoul"
	"boatyard.example/bottomwork/compat"
	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/finding"
)

// order tells the work in its order, with the points at which it stops until something is right.
func (c *composer) order() {
	if len(c.job.Order) == 0 {
		return
	}
	c.head(2, "Order of work and hold points")
	var items []string
	for _, t := range c.job.Order {
		items = append(items, c.task(t))
	}
	items = append(items, c.closing()...)
	c.blocks = append(c.blocks, bullets{items: items, numbered: true})
	days := c.job.Boat.Work.Hours(c.job.Hours)
	c.say("Hours of one hand in all: %s, without setting up, masking and waiting; for %s at work %s. Rates are from memory of practice: time two patches of your own before you trust them.",
		hoursRange(c.job.Hours), plural(max(1, c.job.Boat.Work.Hands), "hand", "hands"), hoursRange(days))
	c.pads()
}

// parts names the parts of a task, where it is not for all of them.
func (c *composer) parts(t antifoul.Task) string {
	if len(t.Parts) == 0 || len(t.Parts) == len(c.job.Schemes) && len(t.Parts) > 1 {
		return ""
	}
	return sentence(and(t.Parts)) + ": "
}

func (c *composer) task(t antifoul.Task) string {
	text := c.parts(t)
	if t.Coat != nil {
		text += c.coat(t)
	} else {
		text += t.Says
		if t.Grit != "" {
			text += " Grit " + t.Grit + "."
		}
		if t.Hold != "" {
			text += " Hold: " + t.Hold
		}
	}
	if t.Hours.High == 0 {
		return text
	}
	return text + " (" + hoursRange(t.Hours) + ")"
}

// coat tells a task that puts paint on. Its hold point is told in full the first time and named after that.
func (c *composer) coat(t antifoul.Task) string {
	k := t.Coat.Layer
	text := plural(k.Coats, "coat", "coats") + " of " + k.Coating.Name
	if k.Colour != "" {
		text += " in " + c.colour(k.Colour)
	}
	text += purpose(k.For)
	if k.For == compat.Extra {
		text += ", on " + c.zones(t.Coat.Zones)
	}
	if w := window(k, c.units); w != "" {
		text += "; next coat " + w
	}
	text += "."
	if !k.Coating.ApplyMin.Given() {
		return text
	}
	hold := fmt.Sprintf("surface between %s and %s and at least 3 °C above the dew point, taken on the coldest part; wet film about %s.",
		k.Coating.ApplyMin.Show(c.units), k.Coating.ApplyMax.Show(c.units), wet(t.Coat.Wet, c.units))
	if hold == c.hold {
		return text + " Hold as for the coat before."
	}
	c.hold = hold
	return text + " Hold: " + hold
}

// closing is what comes after the last coat.
func (c *composer) closing() []string {
	var out []string
	parts := map[string][]string{}
	var types []antifoul.Scheme
	for _, s := range c.job.Schemes {
		if !s.Coating.LaunchMin.Given() {
			continue
		}
		if len(parts[s.Coating.Key]) == 0 {
			types = append(types, s)
		}
		parts[s.Coating.Key] = append(parts[s.Coating.Key], s.Part)
	}
	for _, s := range types {
		k := s.Coating
		text := fmt.Sprintf("%s: %s dries for at least %s before the water", sentence(and(parts[k.Key])), k.Name, k.LaunchMin.Show(c.units))
		if k.AirNew.Given() {
			text += fmt.Sprintf(" and may stand dry for %s at most; later it is scuffed or recoated", k.AirNew.Show(c.units))
		}
		out = append(out, text+".")
	}
	for _, p := range c.job.Ranking.Parts {
		if len(p.Left) > 0 {
			out = append(out, sentence(p.Part)+": keep paint off it, take the masking off before launch, renew it where it is a used-up anode.")
		}
	}
	return append(out, "While she is dry: anodes, seacocks, bearings, rudder play and propeller.")
}

// pads tells how the places under stands, blocks and chains are finished.
func (c *composer) pads() {
	if c.job.Pads.Count == 0 {
		return
	}
	c.list(c.findings(c.job.Pads.Findings, finding.Fine))
	c.say("Nobody but the yard moves a stand or a block.")
	for _, s := range c.job.Schemes {
		if len(s.Patch) == 0 {
			continue
		}
		var items []string
		for _, l := range s.Patch {
			items = append(items, c.finding(l.Finding))
		}
		c.say("Each of these places starts again from the beginning and is stepped, the lowest layer smallest:")
		c.list(items)
	}
}

// cautions prints the cautions that this job calls for.
func (c *composer) cautions() {
	if len(c.job.Cautions) == 0 {
		return
	}
	c.head(2, "Cautions for this job")
	var items []string
	for _, k := range c.job.Cautions {
		items = append(items, sentence(k.Name)+": "+strings.TrimSpace(k.Says)+c.cellBasis(k.Row))
	}
	c.list(items)
	c.say("Local rules, the paint's own data sheet and licensed practice come before anything said here.")
}

func (c *composer) cellBasis(r tables.Row) string {
	b := r.Basis("says")
	return c.rests(finding.Finding{Basis: []finding.Basis{b}})
}
