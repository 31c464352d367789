// Package gauge answers one question: is the film that was asked for there?
//
// Needed says how many readings a standard wants on an area; Accept judges the readings of one inspection area by a standard's rule;
// Inspect judges those of a boat zone by zone. Reads says whether an instrument reads on a material, For which do. ReadCSV
// reads a surveyor's sheet.
//
//	s := gauge.Survey{Area: quantity.SquareMetre.N(20), Nominal: quantity.Micrometre.N(320), Readings: readings}
//	v, err := gauge.Accept(book, gauge.ISO19840, s)
//	fmt.Println(v.Passes, v.Mean, v.Lowest, v.Below, "of", v.Singles)
//
// Counts, limits and what each instrument reads on are rows: sampling, acceptance, instrument. One code judges by all of them.
//
// # Where it is from
//
//	number of readings or areas     Needed; sampling rows: ISO 19840, SSPC-PA 2, MSC.215(82)
//	mean, spots, share below        Accept; acceptances.toml
//	correction for a blast profile  Accept; profile rows: ISO 19840
//	magnetic, eddy current, …       Reads, For; instruments.toml: ISO 2808, ASTM D7091, from memory
//
// Not covered: how a gauge is set up and verified, and which odd readings may be thrown away: both are the surveyor's.
package gauge

import "boatyard.example/bottomwork/tables/finding"

// Keys of rows of acceptance that code and tests name; the others are rows only.
const (
	ISO19840  = "iso-19840"        // mean, single readings and the share below
	NinetyTen = "nine-in-ten"      // nine in ten at the nominal film, none below nine tenths of it
	SSPCPA2   = "sspc-pa2-level-3" // spots of three readings, areas of five spots; the level that holds where none is named
)

// The rules of this package, rows of rules_gauge.toml.
const (
	RuleTooFew    finding.ID = "gauge-too-few"
	RuleEnough    finding.ID = "gauge-enough"
	RuleAreas     finding.ID = "gauge-areas"
	RuleAreasFew  finding.ID = "gauge-areas-few"
	RuleSpotsFew  finding.ID = "gauge-spots-few"
	RuleMean      finding.ID = "gauge-mean"
	RuleMeanThin  finding.ID = "gauge-mean-thin"
	RuleMeanMost  finding.ID = "gauge-mean-most"
	RuleMeanThick finding.ID = "gauge-mean-thick"
	RuleSingle    finding.ID = "gauge-single"
	RuleThin      finding.ID = "gauge-single-thin"
	RuleShare     finding.ID = "gauge-share"
	RuleShareMany finding.ID = "gauge-share-many"
	RuleMost      finding.ID = "gauge-most"
	RuleThick     finding.ID = "gauge-thick"
	RuleGuide     finding.ID = "gauge-guide"
	RuleSplit     finding.ID = "gauge-split"
	RuleCorrected finding.ID = "gauge-corrected"
	RuleMissing   finding.ID = "gauge-missing"
	RuleNotRead   finding.ID = "gauge-not-read"
	RuleReads     finding.ID = "gauge-reads"
	RuleBeware    finding.ID = "gauge-reads-beware"
	RuleAskMaker  finding.ID = "gauge-reads-ask"
	RuleReadsNot  finding.ID = "gauge-reads-not"
)
