package leach

import "boatyard.example/bottomwork/tables/finding"

// The rules of this package, rows of rules_leach.toml.
const (
	RuleNone       finding.ID = "leach-none"        // the coating holds no biocide
	RuleAsk        finding.ID = "leach-ask"         // something that the sum needs is not known
	RuleContent    finding.ID = "leach-content"     // what is in the film, and how it was worked out
	RuleRaw        finding.ID = "leach-raw"         // the mean by mass balance
	RuleCorrected  finding.ID = "leach-corrected"   // the same mean, divided
	RuleCarried    finding.ID = "leach-carried"     // the divisor is one of copper, and this is not copper
	RuleCapBelow   finding.ID = "leach-cap-below"   // raw and corrected lie no higher than a place's limit
	RuleCapBetween finding.ID = "leach-cap-between" // the limit lies inside of what the two give
	RuleCapAbove   finding.ID = "leach-cap-above"   // raw and corrected lie above it
	RuleCapNothing finding.ID = "leach-cap-nothing" // there is no mean of copper to hold against it
)
