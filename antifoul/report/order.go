package report

import (
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"

	"boatyard.example/bottomwork/antifoul"
	"boatyard.example/bottomwork/compat"
	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

// lookFirst comes before the first task.
const lookFirst = "Look at what is not paint while she is dry: anodes, skin fittings, bearings, rudder and propeller."

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
	items = append([]string{lookFirst}, items...)
	items = append(items, c.closing()...)
	c.blocks = append(c.blocks, bullets{items: items, numbered: true})
	days := c.job.Boat.Work.Hours(c.job.Hours)
	rates := "Rates are from memory of practice: time an easy and a hard patch of your own before you trust them."
	if len(c.job.Timed) > 0 {
		rates = "Rates are from memory of practice, but for what was timed on her:"
	}
	c.say("Hours of one hand in all: %s, without setting up, other work and waiting; for %s at work %s. %s",
		hoursRange(c.job.Hours), plural(max(1, c.job.Boat.Work.Hands), "hand", "hands"), hoursRange(days), rates)
	c.timed()
	c.pads()
}

// timed tells what patches that were worked on by the clock say.
func (c *composer) timed() {
	var items []string
	for _, t := range c.job.Timed {
		items = append(items, c.findings(t.Findings, finding.Fine)...)
	}
	c.list(items)
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
		text += ", on the " + c.zones(t.Coat.Zones)
	}
	if w := window(k, c.units); w != "" {
		text += "; next coat " + w
	}
	text += "."
	if t.Says != "" {
		text += " " + t.Says
	}
	if t.Hold != "" {
		text += " Hold: " + t.Hold
	}
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
	for _, s := range c.job.Schemes {
		for _, k := range s.Coats {
			if k.Layer.For != compat.Undercoat || !k.Layer.Coating.LaunchMin.Given() {
				continue
			}
			text := fmt.Sprintf("New %s cures for at least %s before the water, longer when it is colder than %s.", k.Layer.Coating.Name, k.Layer.Coating.LaunchMin.Show(c.units), k.Layer.Coating.At.Show(c.units))
			if !slices.Contains(out, text) {
				out = append(out, text)
			}
		}
	}
	for _, s := range types {
		k := s.Coating
		text := fmt.Sprintf("%s: %s dries for at least %s before the water.", sentence(and(parts[k.Key])), k.Name, k.LaunchMin.Show(c.units))
		if k.AirNew.Given() {
			text += fmt.Sprintf(" It may stand dry for %s at most; later it is scuffed or recoated.", k.AirNew.Show(c.units))
		}
		if w := c.job.Boat.Work; w.Launch.Given() && !w.LaunchOpen.True() && !c.job.Season.Planned() { // else the days of work say it
			last := w.Launch.AddDays(-int(math.Ceil(k.LaunchMin.Float(quantity.Day))))
			text += fmt.Sprintf(" With the launch on %s the last coat goes on by %s", w.Launch, last)
			if first := w.Launch.AddDays(-int(k.AirNew.Float(quantity.Day))); k.AirNew.Given() && first.After(c.job.Boat.On) {
				text += " and not before " + first.String()
			}
			text += "."
		}
		out = append(out, text)
	}
	for i, p := range c.job.Ranking.Parts {
		if len(p.Left) == 0 {
			continue
		}
		text := sentence(p.Part) + ": no paint; masking off before launch."
		if m, err := c.job.Book.Material(c.job.Boat.Parts[i].Material); err == nil && m.Anode {
			text += " An anode that is half gone is renewed."
		}
		out = append(out, text)
	}
	return out
}

// pads tells how the places under stands, blocks and chains are finished.
func (c *composer) pads() {
	if c.job.Pads.Count == 0 {
		c.list(c.findings(c.job.Pads.Findings, finding.Ask)) // nobody said what she stands on
		return
	}
	c.list(c.findings(c.job.Pads.Findings, finding.Fine))
	c.say("Nobody but the yard moves a stand or a block.")
	var rows [][]string
	for _, p := range c.job.Patches {
		rows = append(rows, []string{p.Part, join(", ", p.Coating.Name, named(p.Colour, c.colour)), strconv.Itoa(p.Coats), area(p.Area, c.units), spanOf(p.Litres, quantity.Litre, 2, c.units)})
	}
	c.table([]string{"Places on", "Layer, lowest first", "Coats", "Area, with its lap", "Litres"}, rows)
	for _, s := range c.job.Schemes {
		if len(s.Patch) == 0 {
			continue
		}
		var items []string
		for _, l := range s.Patch {
			if text := c.finding(l.Finding); !slices.Contains(items, text) && (l.MayLap || l.Layer.Coating.Key != s.Coating.Key) {
				items = append(items, text)
			}
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
