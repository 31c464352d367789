package report

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"boatyard.example/bottomwork/antifoul"
	"boatyard.example/bottomwork/antifoul/wear"
	"boatyard.example/bottomwork/tables/finding"
)

// wear tells what the colours mean and how long each film lasts.
func (c *composer) wear() {
	if len(c.job.Buy) == 0 {
		return
	}
	c.head(2, "What the colours will tell, and when")
	for _, s := range c.job.Schemes {
		if len(s.Coats) == 0 {
			continue
		}
		c.head(3, sentence(s.Part))
		if like, ok := c.keyedLike(s); ok {
			c.say("The colours, their steps and what they mean are those of the %s.", like)
		} else {
			c.colourKey(s)
		}
		c.rings(s)
		c.drawLife(s)
		c.forecast(s)
	}
}

func (c *composer) colourKey(s antifoul.Scheme) {
	var rows [][]string
	for i := len(s.Key) - 1; i >= 0; i-- {
		k := s.Key[i]
		rows = append(rows, []string{c.colour(k.Layer.Colour), k.Layer.Coating.Name, c.job.Book.Say(k.Shows, c.units)})
	}
	if len(rows) == 0 {
		return
	}
	c.say("Top to bottom, what it means when a colour shows:")
	c.table([]string{"Colour", "Layer", "When it shows"}, rows)
	c.steps(s)
}

// rings tells how the places where she stood show.
func (c *composer) rings(s antifoul.Scheme) {
	if len(s.Key) > 0 && s.Zone == antifoul.HullZone && c.job.Pads.Count > 0 {
		c.say("Where stands, blocks and chains stood the same colours lie in rings, the lowest layer innermost and smallest, each with its own edge: whoever sands her next reads them from the inside out.")
	}
}

// keyedLike is an earlier part of which the very same is to be said of its colours.
func (c *composer) keyedLike(s antifoul.Scheme) (part string, ok bool) {
	told := func(s antifoul.Scheme) string {
		k := composer{job: c.job, units: c.units}
		k.colourKey(s)
		return fmt.Sprint(k.blocks)
	}
	for _, o := range c.job.Schemes {
		if o.Part == s.Part {
			break
		}
		if len(o.Coats) > 0 && len(o.Key) > 0 && told(o) == told(s) {
			return o.Part, true
		}
	}
	return "", false
}

// steps tells how far in lightness the neighbouring colours are apart, and which other signals would stand out.
func (c *composer) steps(s antifoul.Scheme) {
	var items []string
	for i := len(s.Key) - 1; i > 0; i-- {
		top, errTop := c.job.Book.Colour(s.Key[i].Layer.Colour)
		below, errBelow := c.job.Book.Colour(s.Key[i-1].Layer.Colour)
		if errTop != nil || errBelow != nil {
			continue
		}
		told, clearly := antifoul.Apart(c.job.Book, top, below)
		grade := pick(clearly, "clear, seen from a dinghy", pick(told, "seen close by", "too little to be told apart"))
		items = append(items, fmt.Sprintf("%s over %s: a step of %.0f in lightness (CIE L*, 0 to 100), %s.", sentence(top.Name), below.Name, math.Abs(top.Lightness-below.Lightness), grade))
	}
	c.list(items)
	if len(s.Key) == 0 {
		return
	}
	if top, err := c.job.Book.Colour(s.Key[len(s.Key)-1].Layer.Colour); err == nil {
		var names []string
		for _, p := range antifoul.ColourPairs(c.job.Book, s.Coating, top) {
			if len(names) < 3 {
				names = append(names, fmt.Sprintf("%s (%.0f)", p.Signal.Name, p.Step))
			}
		}
		if len(names) > 0 {
			c.say("What stands out most under %s, with the step: %s.", top.Name, strings.Join(names, ", "))
		}
	}
}

func (c *composer) forecast(s antifoul.Scheme) {
	f := s.Lasts
	if f.Coating.Key == "" {
		return
	}
	if rate := fmt.Sprint(f.Coating.Key, f.Rate); f.Own != nil && !slices.Contains(c.rates, rate) {
		c.rates = append(c.rates, rate)
		for _, x := range f.Own.Findings {
			c.say("%s", c.finding(x))
		}
	}
	if f.Coating.Wears() {
		if rate := fmt.Sprint(f.Coating.Key, f.Rate); f.Own == nil && !slices.Contains(c.rates, rate) {
			c.rates = append(c.rates, rate)
			c.say("The wear of %s on the flat is taken as %.2g to %.2g µm a month afloat (%s). It is a working range, not a measurement: two gauge readings of this boat, or the month in which the signal first showed, would narrow it most.",
				f.Coating.Name, f.Rate.Low, f.Rate.High, f.Coating.Basis("wear_use").Kind)
		}
		var rows [][]string
		for _, z := range f.Zones {
			first := "–"
			if z.First.Given() {
				first = z.First.String()
			}
			rows = append(rows, []string{sentence(c.zone(z.Zone)), fmt.Sprintf("%.0f to %.0f µm", z.Film.Low, z.Film.High), earliest(z.Months), first})
		}
		c.table([]string{"Zone", "Working film", "Worn through after", "Begin to look from"}, rows)
		c.filmLeft(f)
		if z, ok := f.First(); ok {
			c.say("Look first at the %s. The low end of each range decides: it is when to begin to look.", c.zone(z.Zone))
		}
	} else if f.Life.High > 0 {
		c.say("Its action lasts %s from launch in this use (%s).", monthsRange(f.Life), f.Coating.Basis("life").Kind)
	}
	if f.NextHaul.Given() {
		c.say("Paint again from %s: the low end, rounded down, counted from the launch with her months ashore between the seasons.", f.NextHaul)
	} else if f.Life.High > 0 {
		c.say("The launch date is not fixed: count the months from the day she is wet.")
	}
	for _, x := range f.Findings {
		if f.Own == nil || !slices.ContainsFunc(f.Own.Findings, func(o finding.Finding) bool { return o.Rule == x.Rule }) {
			c.say("%s", c.finding(x))
		}
	}
}

// filmLeft tells the film left on the zone named first, at the end of each year until it may be gone.
func (c *composer) filmLeft(f wear.Forecast) {
	if len(f.Zones) == 0 {
		return
	}
	var items []string
	for months := 12; months <= 60; months += 12 {
		left, _ := f.Left(f.Zones[0].Zone, float64(months))
		items = append(items, fmt.Sprintf("%d months %.0f to %.0f µm", months, math.Floor(left.Low), math.Ceil(left.High)))
		if left.Low <= 0 {
			break
		}
	}
	c.say("Working film left on the %s, fast and slow wear: after %s.", c.zone(f.Zones[0].Zone), strings.Join(items, "; after "))
}
