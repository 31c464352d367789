package report

import "boatyard.example/bottomwork/tables/finding"

// growth tells what each grade of fouling would cost at her speed, and what to do about it.
func (c *composer) growth() {
	g := c.job.Growth
	if len(g.Costs) == 0 && len(g.Not) == 0 {
		return
	}
	c.head(2, "What growth would cost")
	if len(g.Not) > 0 {
		c.say("Not reckoned for her: %s.", g.Not)
		return
	}
	told := finding.List{}
	var items []string
	for _, x := range g.Costs {
		if x.Grade.Ks.Sign() == 0 {
			continue // the measure of the others
		}
		told = x.Findings[:1]
		for _, f := range x.Findings[1:] {
			items = append(items, c.finding(f))
		}
	}
	for _, f := range told {
		c.say("%s", c.finding(f))
	}
	c.say("Each grade, against a bottom as smooth as glass, with all of the hull grown over alike:")
	c.list(items)
	c.say("The rise of friction is computed, from the sand roughness that a paper on a ship gives each grade. Power is for the same speed; a boat that has none to spare goes slower. How soon a grade comes is not said.")
}
