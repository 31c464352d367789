package leach

import (
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

// Cap is a place's limit on the release of copper.
type Cap struct {
	Place string           // as the finding names it
	Law   string           // the law's name
	Max   quantity.Release // at most this
	Basis []finding.Basis  // what the limit rests on
}

// CapOf returns the limit that a finding of the law screen carries in its facts; false when it carries none.
func CapOf(f finding.Finding) (Cap, bool) {
	out := Cap{Place: f.Against, Basis: f.Basis}
	for _, fact := range f.Facts {
		switch v := fact.Value.(type) {
		case string:
			if fact.Name == "law" {
				out.Law = v
			}
		case quantity.Release:
			if fact.Name == "release" {
				out.Max = v
			}
		}
	}
	return out, out.Max.Given()
}

// Against holds the mean release of copper, raw and corrected, beside a place's limit. The list has one finding.
//
// Caution when no end of either lies above the limit; Ask when the limit lies between them, when all of both lie above it, and when there
// is no mean of copper. It is never Fine and never Forbidden: a limit is one for products, each by its own approved figure, and
// which figure is meant (calculated, divided, of the first days) differs by place. A mean that is on the limit is not above it.
// Basis: derived; the limit as its law's row says.
func Against(r Rate, c Cap) finding.List {
	f := finding.Finding{Verdict: finding.Ask, About: r.In.Coating.Name, Against: c.Place, Basis: c.Basis, Facts: []finding.Fact{{Name: "law", Value: c.Law}}}
	copper, ok := r.Copper()
	if !ok || !c.Max.Given() {
		f.Rule = RuleCapNothing
		return finding.List{f}
	}
	limit := c.Max.Float(quantity.MicrogramPerSquareCentimetreDay)
	switch {
	case copper.Raw.High <= limit:
		f.Rule, f.Verdict = RuleCapBelow, finding.Caution
	case copper.Corrected.Low > limit:
		f.Rule = RuleCapAbove
	default:
		f.Rule = RuleCapBetween
	}
	f.Facts = append(f.Facts, finding.Fact{Name: "limit", Value: c.Max}, finding.Fact{Name: "months", Value: months(r.Months)},
		finding.Fact{Name: "raw", Value: whole(copper.Raw)}, finding.Fact{Name: "corrected", Value: whole(copper.Corrected)})
	return finding.List{f}
}
