package antifoul

import (
	"slices"

	"boatyard.example/bottomwork/antifoul/law"
	"boatyard.example/bottomwork/compat"
	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/finding"
)

// signalType is the type of the signal coat: another that the owner wishes, where it can be built, else that of the working coats: a hard coat under a film that wears is not worn
// through as soon as its colour shows. Where it cannot, a finding says so, with every reason, and the signal coat is of the type above it.
//
// Asked are the film above, which must wear; the pair; what the coat would lie on, also through an undercoat; the material; and the law, whose open questions and conditions stand among the
// findings of the scheme.
// Basis: common practice.
func (s *Scheme) signalType(b *tables.Book, boat Boat, part compat.Part) tables.Coating {
	key := boat.Wishes.SignalType
	if key == "" || key == s.Coating.Key || s.Coating.Role != tables.Antifouling {
		return s.Coating
	}
	below, err := b.Coating(key)
	if err != nil {
		return s.Coating // a fault of the boat
	}
	var against finding.List
	bars := func(fs finding.List) {
		for _, f := range fs {
			if f.Verdict == finding.Forbidden || f.Verdict == finding.Ask {
				against = append(against, f)
			}
		}
	}
	fresh := compat.Layer{Coating: below, State: tables.Sound, Age: below.OvercoatMin, For: compat.Signal}
	bars(compat.Over(b, s.Coating, fresh))
	for _, f := range compat.CheckStack(b, part, append(slices.Clone(s.Stack), fresh), -1) {
		if f.About == below.Name {
			bars(finding.List{f})
		}
	}
	var conditions finding.List // of law, on a type that no ranking of the part was asked about
	for _, f := range law.Screen(b, below, boat.Craft(), boat.berths(), boat.On) {
		switch {
		case f.Verdict == finding.Forbidden:
			against = append(against, f)
		case f.Verdict >= finding.Caution:
			conditions = append(conditions, f)
		}
	}
	if !s.Coating.Wears() || len(against) > 0 {
		s.Findings = append(s.Findings, finding.Finding{
			Rule: RuleNotTwoTypes, Verdict: finding.Caution, About: below.Name, Against: s.Coating.Name, Facts: facts(fact("part", s.Part)), Basis: []finding.Basis{s.Coating.Basis("mechanism")},
		})
		s.Findings = append(s.Findings, against...)
		return s.Coating
	}
	s.Findings = append(s.Findings, conditions...)
	return below
}
