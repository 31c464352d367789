package law

import "boatyard.example/bottomwork/tables/finding"

// The rule ids of this package. Each is a row of the book's registry.
const (
	RuleBars         finding.ID = "law-bars"          // a coating may not be used
	RuleAsks         finding.ID = "law-asks"          // somebody must be asked first
	RuleLimits       finding.ID = "law-limits"        // allowed, with a condition
	RuleNotes        finding.ID = "law-notes"         // a law that speaks and does not hinder
	RuleMayApply     finding.ID = "law-may-apply"     // something that the law asks about was not given
	RuleWhichPart    finding.ID = "law-which-part"    // parts of the place have laws of their own
	RuleSilent       finding.ID = "law-silent"        // no law of the book speaks of a biocide coating here
	RuleSilentFree   finding.ID = "law-silent-free"   // nor of a biocide-free one
	RuleUnknownPlace finding.ID = "law-unknown-place" // the book does not hold the place
	RuleNoPlace      finding.ID = "law-no-place"      // nobody said where she is painted or kept
	RuleOldFilm      finding.ID = "law-old-film"
	RuleOldSilent    finding.ID = "law-old-film-silent"
	RuleCleaning     finding.ID = "law-cleaning"
	RuleCleanSilent  finding.ID = "law-cleaning-silent"
	RulePaper        finding.ID = "law-paper"
	RulePaperSilent  finding.ID = "law-paper-silent"
)

// subject is what a law speaks of, as the tables write it.
type subject string

const (
	ofCoating  subject = "coating"
	ofOldFilm  subject = "old film"
	ofCleaning subject = "cleaning"
	ofPaper    subject = "paper"
)

// speaks returns the rule by which a law of the subject is told.
func (s subject) speaks(v finding.Verdict) finding.ID {
	switch s {
	case ofOldFilm:
		return RuleOldFilm
	case ofCleaning:
		return RuleCleaning
	case ofPaper:
		return RulePaper
	case ofCoating:
	}
	switch v {
	case finding.Forbidden:
		return RuleBars
	case finding.Ask:
		return RuleAsks
	case finding.Fine:
		return RuleNotes
	default:
		return RuleLimits
	}
}

// silence returns the rule and the verdict of a known place at which no law of the subject speaks. Only a coating or a film
// without biocide is fine then: a law unknown to the book may always speak of the others.
func (s subject) silence(free bool) (finding.ID, finding.Verdict) {
	switch {
	case s == ofOldFilm && free:
		return RuleOldSilent, finding.Fine
	case s == ofOldFilm:
		return RuleOldSilent, finding.Caution
	case s == ofCleaning:
		return RuleCleanSilent, finding.Caution
	case free:
		return RuleSilentFree, finding.Fine
	}
	return RuleSilent, finding.Caution
}
