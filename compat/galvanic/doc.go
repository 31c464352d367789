// Package galvanic answers one question: which metals may share the water?
//
// Couple says what drives the current between two metals that touch in flowing seawater, and which of them goes; Of says it for two
// materials of a boat. Protected judges a potential that was read on a hull against the limits for its material.
//
//	p, err := galvanic.Couple(book, galvanic.Flowing, galvanic.Metal{Name: "mild steel"}, galvanic.Metal{Name: "copper"})
//	fmt.Println(p.Low, p.High, p.Anode) // 230 mV 420 mV mild steel
//	fs, err := galvanic.Protected(book, "aluminium", galvanic.Reading{Value: quantity.Millivolt.N(-650), Electrode: "silver-chloride"})
//
// Every number comes from rows: the lists of potentials (never mixed with each other), the protection potentials, the electrodes. An
// order of potentials says which metal goes and never how fast: area, paint, water and the metals' films decide that.
//
// Not covered: fresh and brackish water, stray current, sizing of anodes, and how long a metal lasts.
package galvanic

import "boatyard.example/bottomwork/tables/finding"

// The rules of this package, rows of rules_metal.toml.
const (
	RuleAnode      finding.ID = "couple-anode"
	RuleUndecided  finding.ID = "couple-undecided"
	RuleAlike      finding.ID = "couple-alike"
	RulePasses     finding.ID = "couple-passes-limit"
	RuleMayPass    finding.ID = "couple-may-pass-limit"
	RuleWithin     finding.ID = "couple-within-limit"
	RuleArea       finding.ID = "couple-area"
	RuleBothStates finding.ID = "couple-both-states"
	RulePassive    finding.ID = "couple-passive"
	RuleNoList     finding.ID = "couple-no-list"

	RuleUnder     finding.ID = "protect-under"
	RuleHeld      finding.ID = "protect-held"
	RuleOver      finding.ID = "protect-over"
	RuleNotOver   finding.ID = "protect-not-over"
	RuleOnly      finding.ID = "protect-only"
	RuleDisagree  finding.ID = "protect-disagree"
	RuleConverted finding.ID = "protect-converted"
	RuleNobler    finding.ID = "protect-nobler"
	RuleBeyond    finding.ID = "protect-beyond-zinc"
	RuleNoLimit   finding.ID = "protect-no-limit"
)
