package report

import (
	"slices"

	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

// areas tells the area of each part by zone, how the hull's was found, and what the other ways say.
func (c *composer) areas() {
	if len(c.job.Buy) == 0 {
		return
	}
	c.head(2, "Areas")
	var rows [][]string
	for _, a := range c.job.Areas {
		for _, z := range a.Zones {
			rows = append(rows, []string{a.Part, c.zone(z.Zone), area(z.Area, c.units)})
		}
		if len(a.Zones) > 1 {
			rows = append(rows, []string{a.Part, "all of it", area(a.Total, c.units)})
		}
	}
	c.table([]string{"Part", "Zone", "Area"}, rows)
	w := c.job.Wetted
	c.say("Whole bottom, with the keel and rudder that are counted in: %s, by: %s.", area(w.Total, c.units), w.Method)
	low, high := w.Total.Typical, w.Total.Typical
	var items []string
	for _, o := range w.Others {
		text := sentence(o.Name) + ": " + area(o.Area, c.units)
		if o.Bare != w.Bare {
			text += pick(o.Bare, ", with those keels and rudders only that were given", ", keel and rudder counted in")
		}
		items = append(items, text+"."+c.rests(finding.Finding{Basis: o.Basis}))
		items = append(items, c.findings(o.Findings, finding.Caution)...)
		if o.Area.Typical.Cmp(low) < 0 {
			low = o.Area.Typical
		}
		if o.Area.Typical.Cmp(high) > 0 {
			high = o.Area.Typical
		}
	}
	if len(items) > 0 {
		c.say("What the other ways say, all of them together from %s to %s:", low.To(quantity.SquareMetre, 1, quantity.Down).Show(c.units), high.To(quantity.SquareMetre, 1, quantity.Up).Show(c.units))
		c.list(items)
	}
	c.list(slices.Compact(c.findings(w.Findings, finding.Fine)))
	c.drawSide()
}

func pick[T any](yes bool, a, b T) T {
	if yes {
		return a
	}
	return b
}
