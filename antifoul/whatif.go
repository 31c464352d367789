package antifoul

import (
	"cmp"
	"slices"

	"boatyard.example/bottomwork/antifoul/wear"
	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/finding"
)

// The rules of what would change the choice.
const (
	RuleWouldSwap  finding.ID = "if-other-first"
	RuleWouldAllow finding.ID = "if-allowed"
	RuleWouldNone  finding.ID = "if-none"
)

// Change is one fact of her use with which the answer would be another.
type Change struct {
	Key      string // of the boat file
	From, To any    // what she has, and the nearest value that changes the answer
	Type     string // key of the type that then comes first, or may then be used; empty when none may
	With     Boat   // she, with that fact changed
	Finding  finding.Finding
}

// Swaps returns for each fact of her use the nearest value, up and down, with which another type would come first on the part, everything else
// as it is: in the order of the boat file. A fact that her file does not give is not turned; metal, law and old film are not hers to turn.
//
// Basis: derived, by the ranking itself; values tried are whole steps.
func (p PartRanking) Swaps() []Change {
	best, ok := p.Best()
	if !ok || best.q == nil {
		return nil
	}
	var out []Change
	for _, d := range dials() {
		done := map[bool]bool{} // above what she has, below it
		for _, t := range d.turn(best.q.boat) {
			if done[t.up] {
				continue
			}
			first, name, rule := "", "", RuleWouldNone
			if x := p.first(p.stand(best.q, t.boat)); x != nil {
				first, name, rule = x.Key, x.Name, RuleWouldSwap
			}
			if first == best.Key {
				continue
			}
			done[t.up] = true
			out = append(out, Change{d.key, t.from, t.to, first, t.boat, turnedFinding(rule, d.name, t, name, best.Name)})
		}
	}
	return out
}

// Lifts returns for each type that her use speaks against the nearest single change of it with which it might be used, in the order of their
// places. A type that is missing there is ruled out by more than one fact, by metal, law or what lies below, or by a wish.
//
// Basis: as Swaps.
func (p PartRanking) Lifts() []Change {
	if len(p.Places) == 0 {
		return nil
	}
	q := p.Places[0].q
	if q == nil {
		return nil
	}
	found := make([]*Change, len(p.Places))
	far := make([]int, len(p.Places))
	for _, d := range dials() {
		for n, t := range d.turn(q.boat) {
			for i, s := range p.stand(q, t.boat) {
				x := &p.Places[i]
				if x.Tier == Unsuited && s.tier <= AskFirst && (found[i] == nil || n < far[i]) {
					far[i] = n
					found[i] = &Change{d.key, t.from, t.to, x.Key, t.boat, turnedFinding(RuleWouldAllow, d.name, t, x.Name, "")}
				}
			}
		}
	}
	var out []Change
	for _, c := range found {
		if c != nil {
			out = append(out, *c)
		}
	}
	return out
}

func turnedFinding(rule finding.ID, what string, t turned, about, against string) finding.Finding {
	return finding.Finding{
		Rule: rule, Verdict: finding.Fine, About: about, Against: against, Basis: []finding.Basis{{Kind: finding.Derived}},
		Facts: []finding.Fact{fact("what", what), fact("from", t.from), fact("to", t.to)},
	}
}

// stand judges the part's types again for a boat that differs in its use and wishes only: metal, old film, way and law stay as they are.
func (p PartRanking) stand(was *question, boat Boat) []standing {
	q := *was
	q.boat, q.months = boat, boat.Months() // what is only told, and not judged, is not asked again
	q.past, q.wear = pastOf(q.b, boat), wear.In(q.b, boat.Use)
	out := make([]standing, len(p.Places))
	var c tables.Coating // one for all: it is large
	a := asked{Coating: &c}
	for i := range p.Places {
		c, a.way = p.Places[i].Coating(), p.Places[i].way
		out[i] = q.stands(&a)
	}
	return out
}

// first is the type that would come first; nil when none may be used.
func (p PartRanking) first(standings []standing) *Place {
	order := make([]int, 0, len(standings))
	for i, s := range standings {
		if s.tier <= AskFirst {
			order = append(order, i)
		}
	}
	if len(order) == 0 {
		return nil
	}
	return &p.Places[slices.MinFunc(order, func(i, j int) int {
		return cmp.Or(standings[i].compare(&standings[j]), cmp.Compare(p.Places[i].Name, p.Places[j].Name))
	})]
}
