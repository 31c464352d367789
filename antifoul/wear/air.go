package wear

import (
	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

// The rules of this package, rows of rules_wear.toml.
const (
	RuleAirScuff finding.ID = "air-used-scuff"
	RuleAirUsed  finding.ID = "air-used-recoat"
)

// daysAMonth is the mean length of a month.
const daysAMonth = 365.25 / 12

// Air judges a used film's second clock in the air: ashore and relaunched without paint for longer than the row's air_scuff it
// must be scuffed, longer than air_used recoated. A film without such clocks, or a boat that is painted before each launch,
// gets no finding.
// Basis: common practice.
func Air(c tables.Coating, u Use) finding.List {
	if !u.RelaunchedUnpainted.True() || !u.AshoreEachYear.Given() || !c.AirScuff.Given() && !c.AirUsed.Given() {
		return nil
	}
	days := u.AshoreEachYear.Float(quantity.Month) * daysAMonth
	facts := []finding.Fact{{Name: "ashore", Value: u.AshoreEachYear}, {Name: "limit", Value: c.AirScuff}}
	switch {
	case c.AirUsed.Given() && days > c.AirUsed.Float(quantity.Day):
		facts[1].Value = c.AirUsed
		return finding.List{{
			Rule: RuleAirUsed, Verdict: finding.Needs, About: c.Name, Facts: facts, First: []finding.Step{{Do: finding.Wash}, {Do: finding.Abrade}},
			Basis: []finding.Basis{c.Basis("air_used")},
		}}
	case c.AirScuff.Given() && days > c.AirScuff.Float(quantity.Day):
		return finding.List{{
			Rule: RuleAirScuff, Verdict: finding.Needs, About: c.Name, Facts: facts, First: []finding.Step{{Do: finding.Abrade}},
			Basis: []finding.Basis{c.Basis("air_scuff")},
		}}
	}
	return nil
}
