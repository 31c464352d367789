package report

import (
	"slices"
	"strings"

	"boatyard.example/bottomwork/antifoul/survey"
	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/finding"
)

// differences says where look and report do not agree, and what cannot be judged as noted.
func (c *composer) differences(a survey.Answer) {
	if len(a.Differs) > 0 {
		c.head(3, "Does not agree")
		c.say("What was seen or measured and what is reported do not agree here. Nothing was settled in silence: what follows from the old film rests on what is reported of the part.")
		c.list(c.findings(a.Differs, finding.Fine))
	}
	if len(a.Open) > 0 {
		c.head(3, "Still to be graded")
		c.list(c.findings(a.Open, finding.Fine))
	}
}

// advice tells what the condition asks for, the most urgent first.
func (c *composer) advice(a survey.Answer) {
	if len(a.Advice) > 0 {
		c.head(3, "What it asks for")
		c.say("Each with its reason, and in brackets the row or rule that decided and what that rests on.")
		if slices.ContainsFunc(a.Advice, func(x survey.Advice) bool { return x.Finding.Rule == survey.RuleFilmUnknown }) {
			c.say("Where the old paint has not been identified, no work that makes dust or chips of it begins before it has been tested, whatever is asked for below.")
		}
	}
	for u := tables.BeforeLaunch; u >= tables.NoWork; u-- {
		var items []string
		for _, x := range a.At(u) {
			key := x.Row.Key
			if key == "" {
				key = string(x.Finding.Rule)
			}
			photo := before(" Photo ", x.Photo)
			if photo != "" {
				photo += "."
			}
			items = append(items, c.job.Book.Say(x.Finding, c.units)+photo+strings.Replace(c.rests(x.Finding), "(", "("+key+"; ", 1))
		}
		if len(items) > 0 {
			c.say("%s:", urgencyHeads[u])
			c.blocks = append(c.blocks, bullets{items: items, numbered: true})
		}
	}
}

// looked are the limits of a report that tells of a look.
func (c *composer) looked() []string {
	h := c.job.Boat.Survey.How
	by := "What was seen is told as it was noted"
	if h.By != "" {
		by += " by " + h.By
	}
	if h.On.Given() {
		by += " on " + h.On.String()
	}
	items := []string{by + ", readings and all. The report was worked out from the " + pick(c.alone, "note", "boat file") + ", by a program that has not seen the boat."}
	if !c.alone {
		items = append(items, "What the boat file reports of her films, her use and her berths nobody looked at for this report, and it is taken as reported.")
	}
	if len(h.Hidden) > 0 {
		items = append(items, "Not seen: what was hidden by "+strings.Join(h.Hidden, "; ")+".")
	}
	for _, n := range h.NotInspected {
		items = append(items, "Not inspected: "+strings.TrimSuffix(n, ".")+".")
	}
	items = append(items, c.findings(c.job.Survey.Limits, finding.Fine)...)
	items = append(items, "Nothing was opened, drawn or tested but what is told above. Structure, fastenings, corrosion under paint that was left on, running gear and everything above the paint line were not looked at, and nothing is said of strength or of fitness for sea.")
	if c.alone {
		return append(items, "No opinion is given on how long anything will last. What is told held on the day of the look.")
	}
	return append(items, "No opinion is given on how long anything lasts beyond the ranges stated. What was seen held on the day of the look; the rest holds for the day on which it was asked and for the tables named at the top.")
}

// shortSurvey tells what has to be done before launch, and how much more this haul-out.
func (c *composer) shortSurvey() {
	if c.job.Survey == nil {
		return
	}
	var items []string
	for _, x := range c.job.Survey.At(tables.BeforeLaunch) {
		items = append(items, c.job.Book.Say(x.Finding, c.units))
	}
	if len(items) > 0 {
		c.say("Before launch, by what was noted of her:")
		c.list(items)
	}
	if n := len(c.job.Survey.At(tables.ThisHaulOut)); n > 0 {
		c.say("%s for this haul-out: see “Condition as found” in the long report.", plural(n, "more thing is asked", "more things are asked"))
	}
}
