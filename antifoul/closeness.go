package antifoul

import (
	"math"
	"math/rand/v2"

	"boatyard.example/bottomwork/antifoul/wear"
	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

// The rules of how firm the choice is.
const (
	RuleFirm     finding.ID = "choice-firm"
	RuleTooClose finding.ID = "choice-too-close"
)

// firmShare is the share of draws in which a type must lead another to be called the better one. Basis: assumption.
const firmShare = 0.8

// Closeness is how firm the first place of a part is against the types behind it in its tier.
type Closeness struct {
	Draws int
	Seed  uint64
	Rows  []Lead
}

// Lead is one type behind the first.
type Lead struct {
	Coating tables.Coating
	Share   float64 // of the draws in which the first leads; a draw in which neither does counts half
	Equal   bool    // neither leads in four draws of five: it is too close to call
	Finding finding.Finding
}

// Closeness draws the ranges of the tables anew and counts how often the first type stays before each of those that share its tier, at most so many of
// them. In one draw each type has one fortune: its wear and its life lie at the same place of their ranges; and all work takes its hours from one
// place of their ranges, since the same hands do it. The seed makes the draws; the same seed gives the same answer.
//
// Counted are the criteria that rest on ranges, time until the next paint and work on the way; the others keep their points. In the ranking the
// high end of wear decides; here the drawn wear does.
// Basis: derived; that a value lies as likely below its typical as above it is an assumption.
func (p PartRanking) Closeness(draws int, seed uint64, most int) Closeness {
	out := Closeness{Draws: draws, Seed: seed}
	best, _ := p.Best()
	if best.q == nil || draws <= 0 { // nothing may be used, or no ranking made the places
		return out
	}
	var rivals []*drawn
	first := newDrawn(&p.Places[0])
	for i := 1; i < len(p.Places) && len(rivals) < most; i++ {
		if x := &p.Places[i]; x.Tier == best.Tier && best.q.past[x.Key].held == best.q.past[best.Key].held {
			rivals = append(rivals, newDrawn(x))
		}
	}
	r := rand.New(rand.NewPCG(seed, uint64(draws)))
	lead := make([]float64, len(rivals))
	for range draws {
		work := r.Float64()
		mine := first.score(r.Float64(), work)
		for i, x := range rivals {
			switch theirs := x.score(r.Float64(), work); {
			case mine > theirs:
				lead[i]++
			case mine == theirs:
				lead[i] += 0.5
			}
		}
	}
	for i, x := range rivals {
		l := Lead{Coating: x.typ, Share: lead[i] / float64(draws)}
		l.Equal = l.Share < firmShare && l.Share > 1-firmShare
		rule, v := RuleFirm, finding.Fine
		if l.Equal {
			rule, v = RuleTooClose, finding.Caution
		}
		l.Finding = finding.Finding{
			Rule: rule, Verdict: v, About: best.Name, Against: l.Coating.Name, Basis: []finding.Basis{{Kind: finding.Derived}},
			Facts: []finding.Fact{fact("share", quantity.Percent.N(int64(l.Share*100+0.5))), fact("draws", draws), fact("seed", int(seed))},
		}
		out.Rows = append(out.Rows, l)
	}
	return out
}

// drawn is one type whose ranges are drawn.
type drawn struct {
	place *Place
	typ   tables.Coating
	kept  float64 // points of the criteria that rest on no range
	rate  quantity.Range[float64]
}

func newDrawn(p *Place) *drawn {
	d := &drawn{place: p, typ: p.Coating()}
	c := asked{Coating: &d.typ, way: p.way}
	for i, k := range criterionFuncs {
		if k.key != "lasting" && k.key != "work" {
			d.kept += p.q.points(i, k.f(p.q, &c).value)
		}
	}
	if d.typ.Wears() {
		d.rate = p.q.wear.Rate(&d.typ)
	}
	return d
}

// score is what the criteria come to in one draw, before they are scaled; a type that would need more coats than it takes has lost.
func (d *drawn) score(own, work float64) float64 {
	q, c := d.place.q, &d.typ
	lasts := 1.0
	switch {
	case c.Role == tables.Bare:
	case c.Wears():
		n := wear.CoatsAt(*c, q.boat.Use, q.months, at(d.rate, own))
		if n > c.Most {
			return math.Inf(-1)
		}
		lasts = coatsValue(n, c.Most)
	default:
		life := func(m quantity.Months) float64 { return m.Float(quantity.Month) }
		lasts = lifeValue(at(quantity.Range[float64]{Low: life(c.Life.Low), Typical: life(c.Life.Typical), High: life(c.Life.High)}, own), q.boat.Use.AfloatMonths(q.months))
	}
	h := at(d.place.way.effort, work)
	sum := d.kept
	for i, k := range criterionFuncs {
		switch k.key {
		case "lasting":
			sum += q.points(i, lasts)
		case "work":
			sum += q.points(i, q.workValue(c, h))
		}
	}
	return sum
}

// at is the value at a share of a range: half of them below the typical, spread evenly, half above.
func at(r quantity.Range[float64], share float64) float64 {
	if share < 0.5 {
		return r.Low + float64((r.Typical-r.Low)*2*share)
	}
	return r.Typical + float64((r.High-r.Typical)*(2*share-1))
}
