package report

import (
	"strconv"
	"strings"

	"boatyard.example/bottomwork/tables/quantity"
)

// jobs quotes what earlier job logs told, the oldest first.
func (c *composer) jobs() {
	var rows [][]string
	for _, p := range c.job.Boat.Jobs {
		when := p.Begun.String()
		if p.Ended.Given() && !p.Ended.Equal(p.Begun) {
			when += " to " + p.Ended.String()
		}
		afloat := pick(p.Launched.Given(), p.Launched.String()+pick(p.Hauled.Given(), " to "+p.Hauled.String(), ""), "–")
		if len(p.Coats) == 0 {
			rows = append(rows, []string{when, or(p.Log, "–"), afloat, "–", "no coat", "–", "–", "–", "–"})
		}
		for _, k := range p.Coats {
			name := k.Coating
			if x, err := c.job.Book.Coating(k.Coating); err == nil {
				name = x.Name
			}
			film := "not known"
			if k.Film.Low.Given() {
				film = quantity.ShowRange(k.Film, c.units)
			}
			rows = append(rows, []string{
				when, or(p.Log, "–"), afloat, k.Part, join(": ", k.Layer, name), c.colour(k.Colour), pick(k.Coats > 0, strconv.Itoa(k.Coats), "–"), film,
				or(join(", ", shown(k.Litres, c.units), pick(len(k.Batches) > 0, "batch "+strings.Join(k.Batches, ", "), "")), "–"),
			})
		}
	}
	if len(rows) > 0 {
		c.say("Her jobs so far, by their logs:")
		c.wideTable([]string{"Job", "Log", "Afloat", "Part", "Layer", "Colour", "Coats", "Film as laid", "Litres"}, once(rows, 3))
	}
}
