package report

import (
	"fmt"
	"math"
	"slices"

	"boatyard.example/bottomwork/antifoul"
	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/finding"
)

// season tells what is looked at and done after launch, in its order, with dates where the launch has one.
func (c *composer) season() {
	var films []tables.Mechanism
	var names []string
	for _, s := range c.job.Schemes {
		if s.Coating.Role == tables.Antifouling && !slices.Contains(films, s.Coating.Mechanism) {
			films = append(films, s.Coating.Mechanism)
		}
		if s.Coating.Role == tables.Antifouling {
			names = append(names, s.Part)
		}
	}
	if len(films) == 0 {
		return
	}
	c.head(2, "After launch")
	var rows [][]string
	for r := range c.job.Book.Seasons() {
		on := ""
		for _, s := range c.job.Schemes {
			if s.Coating.Role == tables.Antifouling && r.For(s.Coating.Mechanism) {
				on = join(", ", on, s.Part)
			}
		}
		if on == "" {
			continue
		}
		if on == join(", ", names...) {
			on = "all"
		}
		says := r.Says
		if r.Cleaning {
			says += " Only where the port and the law allow cleaning afloat" + pick(c.job.Boat.Use.Cleaning > tables.None, ", see Law.", ".")
		}
		rows = append(rows, []string{c.when(r), sentence(r.Name), on, says + c.rests(finding.Finding{Basis: []finding.Basis{r.Basis("says")}})})
	}
	c.table([]string{"When", "What", "On", "Do"}, rows)
	for _, s := range c.job.Schemes {
		if s.Zone == antifoul.HullZone && s.Lasts.NextHaul.Given() {
			c.say("By the low end of her forecast she is painted again from %s; a look that shows less wear moves that, once it stands in her record.", s.Lasts.NextHaul)
		}
	}
}

// when is the span of months, and its dates where the launch is fixed.
func (c *composer) when(r tables.Season) string {
	if !r.After.Given() {
		return "at haul-out"
	}
	low, high := int(math.Floor(r.After.Low)), int(math.Ceil(r.After.High))
	text := fmt.Sprintf("%d to %d months", low, high)
	if high >= 24 {
		text = fmt.Sprintf("from %d months", low)
	}
	if w := c.job.Boat.Work; w.Launch.Given() && !w.LaunchOpen.True() {
		text += ", from " + w.Launch.AddMonths(low).String()
	}
	return text + pick(r.Every, ", each season", "")
}
