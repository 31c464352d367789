package antifoul

import (
	"boatyard.example/bottomwork/compat"
	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/finding"
)

// The rules of the colour key.
const (
	RuleShowsBase       finding.ID = "shows-base"
	RuleShowsOld        finding.ID = "shows-old"
	RuleShowsSignal     finding.ID = "shows-signal"
	RuleShowsSignalHard finding.ID = "shows-signal-hard"
	RuleShowsWorking    finding.ID = "shows-working"
)

// colourKey says, layer by layer from the bottom, what it means when that colour shows; nothing where colours tell nothing.
func (s *Scheme) colourKey() []ColourKey {
	if !signals(s.Coating) {
		return nil
	}
	var out []ColourKey
	oldIsSignal := s.Findings.Has(RuleOldIsSignal)
	var lastFound int // where nothing was found no old film is the signal
	for i, l := range s.Stack {
		if l.For == compat.Found {
			lastFound = i
		}
	}
	for i, l := range s.Stack {
		rule, v := RuleShowsOld, finding.Caution
		switch {
		case l.For == compat.Extra || l.Coating.Mechanism == tables.NoFilm:
			continue
		case l.For == compat.Undercoat, undercoat(l.Coating.Role):
			rule = RuleShowsBase // a sound old barrier under the coats is as bare of antifouling as a new one
		case l.For == compat.Signal, oldIsSignal && i == lastFound:
			rule = RuleShowsSignal
			if s.Coating.Mechanism == tables.Hard {
				rule = RuleShowsSignalHard
			}
		case l.For == compat.Working:
			rule, v = RuleShowsWorking, finding.Fine
		}
		out = append(out, ColourKey{Layer: l, Shows: finding.Finding{Rule: rule, Verdict: v, About: l.Coating.Name, Against: s.Part}})
	}
	return out
}

func undercoat(r tables.Role) bool {
	switch r {
	case tables.Primer, tables.Barrier, tables.TieCoat, tables.Sealer:
		return true
	case tables.Antifouling, tables.Blacking, tables.Bare, tables.OldFilm:
	}
	return false
}
