package antifoul

import (
	"boatyard.example/bottomwork/compat"
	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/finding"
)

// The rules of the colours that the coats get.
const (
	RuleColourTaken   finding.ID = "scheme-colour-taken"
	RuleColourNotHad  finding.ID = "scheme-colour-not-had"
	RuleSignalTooNear finding.ID = "scheme-signal-too-near"
)

// colours chooses the colour of the working coats and that of the signal coat, which is of the type below. old is true when the sound old film of the
// same family under the new coats is itself the signal. A wished colour is taken as wished, as far as its type is to be had in it and another stands
// out from it; else a finding says so. Check has refused wishes without a step between them.
func (s *Scheme) colours(b *tables.Book, w Wishes, below tables.Coating) (top, signal tables.Colour, old bool) {
	c := s.Coating
	top, okTop := s.wished(b, w.TopColour, c, "working coats")
	var okSignal bool
	if signals(c) {
		signal, okSignal = s.wished(b, w.SignalColour, below, "signal coat")
	}
	if okSignal && !okTop {
		top, okTop = farthest(b, c, signal)
		if !okTop {
			s.lost(RuleSignalTooNear, c, fact("wished", signal.Name))
			okSignal = false
		}
	}
	if under, ok := s.oldColour(b); ok && !okSignal && below.Key == c.Key {
		far, found := top, lightnessStep(top, under) >= leastStep(b)
		if !okTop {
			far, found = farthest(b, c, under)
		}
		if found {
			top, signal, okTop, old = far, under, true, true
		}
	}
	if !okTop {
		top = darkest(b, c)
	}
	if !okSignal && !old {
		signal, _ = farthest(b, below, top)
	}
	if w.TopColour == "" {
		s.Findings = append(s.Findings, finding.Finding{
			Rule: RuleColourTaken, Verdict: finding.Fine, About: c.Name, Against: s.Part,
			Facts: []finding.Fact{fact("colour", top.Name)}, Basis: []finding.Basis{top.Basis("lightness")},
		})
	}
	return top, signal, old
}

// wished is the colour that is wished for some coats, where their type is to be had in it.
func (s *Scheme) wished(b *tables.Book, key string, c tables.Coating, coats string) (tables.Colour, bool) {
	k, ok := wishedColour(b, "", key, new(finding.Faults))
	if ok && !available(c, k) {
		s.lost(RuleColourNotHad, c, fact("wished", k.Name), fact("coats", coats))
		return k, false
	}
	return k, ok
}

// lost says that a wish for a colour is not kept.
func (s *Scheme) lost(rule finding.ID, c tables.Coating, facts ...finding.Fact) {
	s.Findings = append(s.Findings, finding.Finding{
		Rule: rule, Verdict: finding.Caution, About: c.Name, Against: s.Part, Facts: facts, Basis: []finding.Basis{c.Basis("bright")},
	})
}

// oldColour is the colour of a sound old film of the same mechanism that stays right under the new coats.
func (s *Scheme) oldColour(b *tables.Book) (tables.Colour, bool) {
	if len(s.Stack) == 0 || !signals(s.Coating) {
		return tables.Colour{}, false
	}
	l := s.Stack[len(s.Stack)-1]
	if l.For != compat.Found || l.Colour == "" || l.State != tables.Sound || l.Coating.Mechanism != s.Coating.Mechanism || l.Coating.Role != tables.Antifouling {
		return tables.Colour{}, false
	}
	k, err := b.Colour(l.Colour)
	return k, err == nil
}

// darkest is the darkest colour that the coating is to be had in.
func darkest(b *tables.Book, c tables.Coating) (best tables.Colour) {
	for k := range b.Colours() {
		if available(c, k) && (best.Key == "" || k.Lightness < best.Lightness) {
			best = k
		}
	}
	return best
}
