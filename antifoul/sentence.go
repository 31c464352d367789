package antifoul

import (
	"cmp"
	"math"
	"slices"

	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

// The rules of the choice in a few sentences.
const (
	RuleSayBest    finding.ID = "say-best"
	RuleSayAgain   finding.ID = "say-same-again"
	RuleSayNone    finding.ID = "say-no-antifouling"
	RuleSayStrip   finding.ID = "say-strip-first"
	RuleSayAsk     finding.ID = "say-ask-inspector"
	RuleSayNothing finding.ID = "say-nothing-lasts"
	RuleSayBarred  finding.ID = "say-nothing-may"
	RuleSayNext    finding.ID = "say-next"
	RuleSayMore    finding.ID = "say-next-more"
	RuleSayOnly    finding.ID = "say-only"
)

// InWords returns the choice for the part as three findings that a surveyor can sign, in this order: what comes first, with the criterion that decided
// it; what comes next, and what sets the two apart; what speaks most against the first, or must be asked. Each names the number of the boat that decided,
// so that without it the sentence is another or is missing. Where nothing may be used there is one finding, which says what rules most of
// the types out.
//
// The criterion that decided is the one in which the first leads the second by most points; where there is no second, the one that added most.
// Basis: derived.
func (p PartRanking) InWords() finding.List {
	best, ok := p.Best()
	if !ok {
		return p.nothing()
	}
	mine := best.Criteria()
	var out finding.List
	next, second := p.second()
	lead := func(i int) float64 { return mine[i].Points }
	var theirs []Criterion
	if second {
		theirs = next.Criteria()
		lead = func(i int) float64 { return mine[i].Points - theirs[i].Points }
	}
	out = append(out, p.opening(best))
	if at, found := strongest(mine, func(i int) float64 { return lead(i) }); found {
		out = append(out, mine[at].Finding)
	}
	switch at, found := apart(mine, theirs); {
	case second && found:
		out = append(out, p.next(best, next, mine[at], theirs[at]))
	case !second:
		out = append(out, finding.Finding{Rule: RuleSayOnly, Verdict: finding.Fine, About: best.Name, Against: p.Part, Basis: derivedBasis})
	}
	if asks := best.Asks(); len(asks) > 0 {
		out = append(out, asks[0])
	} else if at, found := strongest(mine, func(i int) float64 { return -mine[i].Points }); found && mine[at].Points < 0 {
		out = append(out, mine[at].Finding)
	}
	return out
}

var derivedBasis = []finding.Basis{{Kind: finding.Derived}}

// second is the first place of another type that may be used too.
func (p PartRanking) second() (Place, bool) {
	if len(p.Places) < 2 || p.Places[1].Tier > AskFirst {
		return Place{}, false
	}
	return p.Places[1], true
}

// opening says what kind of answer it is.
func (p PartRanking) opening(best Place) finding.Finding {
	may := 0
	for i := range p.Places {
		if p.Places[i].Tier <= AskFirst {
			may++
		}
	}
	f := finding.Finding{Rule: RuleSayBest, Verdict: finding.Fine, About: best.Name, Against: p.Part, Basis: derivedBasis, Facts: facts(fact("may", may), fact("of", len(p.Places)), fact("tier", best.Tier.String()))}
	switch old := best.q.old; {
	case best.Tier == AskFirst:
		f.Rule, f.Verdict = RuleSayAsk, finding.Ask
	case best.Coating().Role == tables.Bare:
		f.Rule = RuleSayNone
	case slices.ContainsFunc(best.Route().Steps, func(s finding.Step) bool { return s.Do == finding.Strip || s.Do == finding.Blast }):
		f.Rule, f.Verdict = RuleSayStrip, finding.Needs
	case old != nil && old.Key == best.Key:
		f.Rule = RuleSayAgain
	}
	return f
}

// next says what stands behind the first, how far, and what sets them apart.
func (p PartRanking) next(best, next Place, mine, theirs Criterion) finding.Finding {
	row, _ := best.q.b.Criterion(mine.Key)
	behind := math.Round((best.Score-next.Score)*10) / 10
	f := finding.Finding{
		Rule: RuleSayNext, Verdict: finding.Fine, About: next.Name, Against: best.Name, Basis: []finding.Basis{row.Basis("weight")},
		Facts: facts(fact("behind", math.Abs(behind)), fact("tier", next.Tier.String()), fact("criterion", row.Name),
			fact("boat", said(mine.Boat)), fact("first", film(best, mine)), fact("second", film(next, theirs))),
	}
	if behind < 0 {
		f.Rule = RuleSayMore
	}
	return f
}

// film is what a criterion shows of a type; where that is the type itself, whether it is what she carries.
func film(p Place, c Criterion) any {
	switch {
	case c.Type != p.Name:
		return said(c.Type)
	case c.Boat == c.Type:
		return "the same film"
	}
	return "another film"
}

// said is what a criterion shows, or that there is nothing to show.
func said(v any) any {
	if v == nil || v == "" {
		return "not given"
	}
	return v
}

// strongest is the criterion with a sentence for which the number is largest.
func strongest(list []Criterion, by func(int) float64) (at int, found bool) {
	for i := range list {
		if list[i].Finding.Rule != "" && list[i].Judged && (!found || by(i) > by(at)) {
			at, found = i, true
		}
	}
	return at, found
}

// apart is the criterion in which two types differ most.
func apart(a, b []Criterion) (at int, found bool) {
	for i := range min(len(a), len(b)) {
		if d := math.Abs(a[i].Points - b[i].Points); d > 0.05 && (!found || d > math.Abs(a[at].Points-b[at].Points)) {
			at, found = i, true
		}
	}
	return at, found
}

// nothing says what rules most types out.
func (p PartRanking) nothing() finding.List {
	if len(p.Places) == 0 {
		return p.Left
	}
	type reason struct {
		f finding.Finding
		n int
	}
	var reasons []reason
	for i := range p.Places {
		for _, f := range p.Places[i].Reasons() {
			at := slices.IndexFunc(reasons, func(r reason) bool { return r.f.Rule == f.Rule })
			if at < 0 {
				reasons = append(reasons, reason{f, 1})
				continue
			}
			reasons[at].n++
		}
	}
	if len(reasons) == 0 {
		return nil
	}
	most := slices.MaxFunc(reasons, func(a, b reason) int { return cmp.Compare(a.n, b.n) })
	rule := RuleSayBarred
	if most.f.Rule == RuleTooShort || most.f.Rule == RuleTooManyCoats {
		rule = RuleSayNothing
	}
	return finding.List{
		{
			Rule: rule, Verdict: finding.Forbidden, Against: p.Part, Basis: derivedBasis,
			Facts: facts(fact("of", len(p.Places)), fact("out", most.n), fact("wished", quantity.Month.N(int64(math.Round(p.Places[0].q.months))))),
		},
		most.f,
	}
}
