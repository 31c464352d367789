package antifoul

import (
	"strconv"

	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/finding"
)

// drying lays out the monthly readings of each part that must dry before its first coat.
func (j *Job) drying(b *tables.Book, boat Boat) {
	row, err := b.Step(finding.DryOut)
	if err != nil || !row.Wait.Given() {
		return
	}
	month := int(days(row.Wait))
	for _, s := range j.Schemes {
		if !does(s, finding.DryOut) {
			continue
		}
		start, there := boat.On, false
		turns, plan := j.Season.Shown()
		for _, it := range plan.Items {
			if turns[it.Task].Do == finding.DryOut {
				start, there = day(it.Start()), true
			}
		}
		if !there && len(plan.Items) > 0 {
			continue // it is not waited for: what shuts the laminate in was given up
		}
		d := Drying{Part: s.Part, Earliest: start.AddDays(month)}
		for n := range mostReadings {
			d.Readings = append(d.Readings, start.AddDays(n*month))
		}
		j.Season.Drying = append(j.Season.Drying, d)
		j.Season.Findings = append(j.Season.Findings, finding.Finding{
			Rule: RuleDryingOut, Verdict: finding.Caution, About: s.Part, Basis: []finding.Basis{row.Basis("wait")},
			Facts: []finding.Fact{fact("earliest", d.Earliest), fact("readings", strconv.Itoa(len(d.Readings)))},
		})
	}
}
