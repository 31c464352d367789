package antifoul

import (
	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

// The rules of past results.
const (
	RulePastHeld   finding.ID = "past-held"
	RulePastSoFar  finding.ID = "past-held-so-far"
	RulePastFailed finding.ID = "past-failed"
)

// past is what own past results at the boat's berth tell of one type.
type past struct {
	findings finding.List
	held     bool // for the months wished, and nothing failed within them
	failed   bool // within the months wished, and nothing held for them
}

// pastOf gathers the past results of places in which the boat is kept, by the key of the coating; nil when the book has none. A result
// counts for the months wished: growth held off for at least so long, or growth that had taken hold by then. Results that
// contradict each other are told and decide nothing.
//
// Basis: the own table; what was seen where she lies outranks what a table says of growth anywhere.
func pastOf(b *tables.Book, boat Boat) map[string]past {
	var out map[string]past
	wished := boat.Months()
	for p := range b.PastResults() {
		if !kept(b, boat, p.Place) {
			continue
		}
		name, where := p.Coating, p.Place
		if c, err := b.Coating(p.Coating); err == nil {
			name = c.Name
		}
		if at, err := b.Place(p.Place); err == nil {
			where = at.Name
		}
		f := finding.Finding{
			Rule: RulePastSoFar, Verdict: finding.Fine, About: name, Basis: []finding.Basis{p.Basis("outcome")},
			Facts: facts(fact("months", p.Months), fact("place", where), fact("boats", p.Boats), fact("wished", months(wished))),
		}
		seen := out[p.Coating]
		switch after := p.Months.Float(quantity.Month); {
		case p.Outcome == tables.Failed:
			f.Rule, f.Verdict = RulePastFailed, finding.Caution
			seen.failed = seen.failed || after <= wished
		case after >= wished:
			f.Rule = RulePastHeld
			seen.held = true
		}
		seen.findings = append(seen.findings, f)
		if out == nil {
			out = map[string]past{}
		}
		out[p.Coating] = seen
	}
	for key, seen := range out {
		seen.held, seen.failed = seen.held && !seen.failed, seen.failed && !seen.held
		out[key] = seen
	}
	return out
}

// kept reports whether the boat is kept at the place or in it.
func kept(b *tables.Book, boat Boat, place string) bool {
	for _, x := range boat.Berths {
		if x.Role == "kept" && b.LiesIn(x.Place, place) {
			return true
		}
	}
	return false
}
