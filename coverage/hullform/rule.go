package hullform

import "boatyard.example/bottomwork/tables/finding"

// The rules of this package, rows of rules_hullform.toml.
const (
	RuleBeam     finding.ID = "hull-length-beam"
	RuleDraft    finding.ID = "hull-draft-beam"
	RuleOutside  finding.ID = "area-method-outside"
	RuleWants    finding.ID = "area-method-wants"
	RuleOpenEnd  finding.ID = "station-end-open"
	RuleStations finding.ID = "stations-few"
)
