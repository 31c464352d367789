package law

import "boatyard.example/bottomwork/tables/finding"

// The rule ids of this package. Each is a row of the book's registry.
const (
	ruleBars         finding.ID = "law-bars"          // a coating may not be used
	ruleAsks         finding.ID = "law-asks"          // somebody must be asked first
	ruleLimits       finding.ID = "law-limits"        // allowed, with a condition
	ruleNotes        finding.ID = "law-notes"         // a law that speaks and does not hinder
	ruleMayApply     finding.ID = "law-may-apply"     // something that the law asks about was not given
	ruleWhichPart    finding.ID = "law-which-part"    // parts of the place have laws of their own
	ruleSilent       finding.ID = "law-silent"        // no law of the book speaks of a biocide coating here
	ruleSilentFree   finding.ID = "law-silent-free"   // nor of a biocide-free one
	ruleUnknownPlace finding.ID = "law-unknown-place" // the book does not hold the place
	ruleNoPlace      finding.ID = "law-no-place"      // nobody said where she is painted or kept
	ruleOldFilm      finding.ID = "law-old-film"
	ruleOldSilent    finding.ID = "law-old-film-silent"
	ruleCleaning     finding.ID = "law-cleaning"
	ruleCleanSilent  finding.ID = "law-cleaning-silent"
	rulePaper        finding.ID = "law-paper"
	rulePaperSilent  finding.ID = "law-paper-silent"
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
		return ruleOldFilm
	case ofCleaning:
		return ruleCleaning
	case ofPaper:
		return rulePaper
	case ofCoating:
	}
	switch v {
	case finding.Forbidden:
		return ruleBars
	case finding.Ask:
		return ruleAsks
	case finding.Fine:
		return ruleNotes
	default:
		return ruleLimits
	}
}

// silence returns the rule and the verdict of a known place at which no law of the subject speaks. Only a coating or a film
// without biocide is fine then: a law unknown to the book may always speak of the others.
func (s subject) silence(free bool) (finding.ID, finding.Verdict) {
	switch {
	case s == ofOldFilm && free:
		return ruleOldSilent, finding.Fine
	case s == ofOldFilm:
		return ruleOldSilent, finding.Caution
	case s == ofCleaning:
		return ruleCleanSilent, finding.Caution
	case free:
		return ruleSilentFree, finding.Fine
	}
	return ruleSilent, finding.Caution
}
