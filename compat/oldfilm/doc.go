// Package oldfilm answers one question: what is on her, and may it stay?
//
// Identify goes from what an owner or a surveyor can see to the old films that it may be, with what would settle it and what to beware of
// meanwhile. Judge goes from readings of one zone to keep, repair spots or strip, with the reading that decided. Weigh sets recoating
// now against stripping now, in hours and in months bought.
//
//	a, err := oldfilm.Identify(book, "steel", []string{"thumb-colours", "painted-before-2003"})
//	fmt.Println(a.Films[0].Film, a.Films[0].Standing, a.Settle)
//	d, err := oldfilm.Judge(book, oldfilm.Readings{Flaking: quantity.Percent.N(12)}, area)
//	fmt.Println(d.Do, d.Decided)
//
// Every sign and every threshold is a row. A sign that does not settle rules nothing out, and what is not ruled out is bewared of.
//
// Not covered: reading a moisture meter as a number (it compares, it does not measure), and the structure under the film.
package oldfilm

import "boatyard.example/bottomwork/tables/finding"

// The rules of this package, rows of rules_oldfilm.toml.
const (
	RuleLooksLike finding.ID = "film-looks-like"
	RuleMayBe     finding.ID = "film-may-be"
	RuleUnlikely  finding.ID = "film-unlikely"
	RuleRuledOut  finding.ID = "film-ruled-out"
	RuleConflict  finding.ID = "film-signs-conflict"

	RuleReadingKeep   finding.ID = "reading-keep"
	RuleReadingRepair finding.ID = "reading-repair"
	RuleReadingEither finding.ID = "reading-either"
	RuleReadingStrip  finding.ID = "reading-strip"
	RuleNoReading     finding.ID = "reading-none"
	RuleFalling       finding.ID = "moisture-falling"
	RuleSteady        finding.ID = "moisture-steady"
	RuleRising        finding.ID = "moisture-rising"
)
