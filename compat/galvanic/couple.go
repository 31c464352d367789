package galvanic

import (
	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

// Pair is two metals that touch in seawater.
type Pair struct {
	A, B     string
	Low      quantity.Potential // driving voltage: between the nearer ends of their ranges, 0 where these overlap or meet
	High     quantity.Potential // and between the farther ends
	Anode    string             // the metal that goes; empty where their ranges overlap or meet: either may
	Findings finding.List       // never empty
}

// limits are the value rows that a driving voltage under water is held against, in mV or V; both are printed as at most.
var limits = []string{"difference-harsh", "westlawn-difference"}

// Couple returns the pair of two metals of one list of potentials in flowing seawater.
//
//	low  = distance of the nearer ends of their ranges, 0 where these overlap or meet
//	high = the larger of noble end of one − active end of the other
//
// A metal that knows a passive and an active state and is given without one is taken over both. The error is a finding.Faults for a list,
// a metal or a state that the book does not hold.
//
// Basis: the list's row; the limits are rows too, and both are widely quoted rather than laid down.
func Couple(b *tables.Book, series string, x, y Metal) (Pair, error) {
	ex, fs := listed(b, series, x, "a")
	ey, more := listed(b, series, y, "b")
	if err := append(fs, more...).Err(); err != nil {
		return Pair{}, err
	}
	return couple(b, ex, ey), nil
}

// Of returns the pairs of two materials of the book, over everything that the list Flowing gives for each (a bronze of any kind); a
// material that knows a passive and an active state gives a pair for each. There is at least one: where the list does not hold one
// of the materials, or both are the same, it has no voltage and its finding says so.
//
// Basis: as of Couple.
func Of(b *tables.Book, x, y *tables.Material) []Pair {
	ex, ey := made(b, x), made(b, y)
	f := finding.Finding{Rule: RuleNoList, Verdict: finding.Ask, About: x.Name, Against: y.Name}
	switch {
	case x.Key == y.Key:
		f.Rule, f.Verdict = RuleAlike, finding.Fine
	case len(ex) == 0:
	case len(ey) == 0:
		f.About, f.Against = y.Name, x.Name
	default:
		var out []Pair
		for _, one := range ex {
			for _, other := range ey {
				out = append(out, couple(b, one, other))
			}
		}
		return out
	}
	return []Pair{{A: x.Name, B: y.Name, Findings: finding.List{f}}}
}

func couple(b *tables.Book, x, y ends) Pair {
	p := Pair{A: x.name, B: y.name, Low: quantity.Millivolt.N(0)}
	p.High = x.noble.Sub(y.active)
	if other := y.noble.Sub(x.active); other.Cmp(p.High) > 0 {
		p.High = other
	}
	anode, cathode := &x, &y
	switch {
	case x.noble.Cmp(y.active) < 0:
		p.Anode, p.Low = x.name, y.active.Sub(x.noble)
	case y.noble.Cmp(x.active) < 0:
		anode, cathode = &y, &x
		p.Anode, p.Low = y.name, x.active.Sub(y.noble)
	}
	said := func(rule finding.ID, v finding.Verdict, facts ...finding.Fact) {
		f := finding.Finding{Rule: rule, Verdict: v, About: anode.name, Against: cathode.name, Facts: facts}
		for _, e := range []*ends{anode, cathode} {
			f.Basis = append(f.Basis, e.basis...)
		}
		p.Findings = append(p.Findings, f)
	}
	low, high := finding.Fact{Name: "low", Value: p.Low}, finding.Fact{Name: "high", Value: p.High}
	if p.Anode == "" {
		said(RuleUndecided, finding.Ask, high)
	} else {
		said(RuleAnode, finding.Fine, low, high)
	}
	p.hold(b)
	if p.Anode != "" {
		p.Findings = append(p.Findings, finding.Finding{Rule: RuleArea, Verdict: finding.Caution, About: anode.name, Against: cathode.name})
	}
	for _, e := range []*ends{&x, &y} {
		switch {
		case len(e.states) > 1:
			p.Findings = append(p.Findings, finding.Finding{Rule: RuleBothStates, Verdict: finding.Caution, About: e.name, Basis: e.basis})
		case len(e.states) == 1 && e.states[0] == Passive:
			p.Findings = append(p.Findings, finding.Finding{Rule: RulePassive, Verdict: finding.Caution, About: e.name, Basis: e.basis})
		}
	}
	return p
}

// hold holds the driving voltage against the limits.
func (p *Pair) hold(b *tables.Book) {
	for v := range b.Values() {
		limit, ok := limitOf(&v)
		if !ok {
			continue
		}
		f := finding.Finding{
			Rule: RuleWithin, Verdict: finding.Fine, About: p.A, Against: p.B, Basis: []finding.Basis{v.Basis("value")},
			Facts: []finding.Fact{{Name: "limit", Value: limit}, {Name: "what", Value: v.Name}, {Name: "low", Value: p.Low}, {Name: "high", Value: p.High}},
		}
		switch {
		case p.Low.Cmp(limit) > 0:
			f.Rule, f.Verdict = RulePasses, finding.Caution
		case p.High.Cmp(limit) > 0:
			f.Rule, f.Verdict = RuleMayPass, finding.Caution
		}
		p.Findings = append(p.Findings, f)
	}
}

// limitOf returns the limit that a value row states; false when it is none of limits.
func limitOf(v *tables.Value) (quantity.Potential, bool) {
	for _, key := range limits {
		if v.Key != key {
			continue
		}
		mv := v.Value.Typical
		if v.Unit == "V" {
			mv *= 1000
		}
		limit, err := quantity.Millivolt.Near(mv, 0, quantity.Nearest)
		return limit, err == nil
	}
	return quantity.Potential{}, false
}
