package drag

import "boatyard.example/bottomwork/tables/finding"

// The rule ids of this package. Each is a row of the book's registry.
const (
	RuleShare   finding.ID = "drag-share"   // how much of her resistance is taken to be friction
	RulePlaning finding.ID = "drag-planing" // so fast for her length that this is not known
	RuleLeave   finding.ID = "drag-leave"   // the grade costs little
	RuleClean   finding.ID = "drag-clean"   // it costs much and is soft
	RuleLift    finding.ID = "drag-lift"    // it costs much and is hard
)

// The keys of the published ratio of power to resistance: the worst condition's power, and the row with its resistance.
const (
	worstPower = "schultz-2007-power"
	worstGrade = "schultz-heavy-calcareous"
)
