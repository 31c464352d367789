// Package gauge answers one question: is the film that was asked for there?
//
// Needed says how many readings a standard wants on an area; Accept judges the readings of one inspection area by a standard's rule.
//
//	s := gauge.Survey{Area: quantity.SquareMetre.N(20), Nominal: quantity.Micrometre.N(320), Readings: readings}
//	v, err := gauge.Accept(book, gauge.ISO19840, s)
//	fmt.Println(v.Passes, v.Mean, v.Lowest, v.Below, "of", v.Count)
//
// Counts and limits are rows. A magnetic gauge reads on steel, an eddy-current gauge on aluminium; neither reads on GRP or timber.
//
// Not covered: how a gauge is set up and verified, and readings by spots of three in areas of five.
package gauge

import "boatyard.example/bottomwork/tables/finding"

// The rules that a survey is accepted by.
const (
	ISO19840  = "ISO 19840"              // mean, single readings and the share below
	NinetyTen = "MSC.215(82), flat area" // nine in ten at the nominal film, none below nine tenths of it
)

// The rules of this package, rows of rules_gauge.toml.
const (
	RuleTooFew    finding.ID = "gauge-too-few"
	RuleEnough    finding.ID = "gauge-enough"
	RuleMean      finding.ID = "gauge-mean"
	RuleMeanThin  finding.ID = "gauge-mean-thin"
	RuleSingle    finding.ID = "gauge-single"
	RuleThin      finding.ID = "gauge-single-thin"
	RuleShare     finding.ID = "gauge-share"
	RuleShareMany finding.ID = "gauge-share-many"
	RuleMost      finding.ID = "gauge-most"
	RuleThick     finding.ID = "gauge-thick"
	RuleSplit     finding.ID = "gauge-split"
	RuleCorrected finding.ID = "gauge-corrected"
)
