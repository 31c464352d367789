package coverage

import (
	"github.com/shopspring/decimal"

	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

// mostPlaces bounds each count of stands, blocks and chains.
const mostPlaces = 1000

// Patches are the unpainted places that stands, blocks and chains leave.
type Patches struct {
	Count    int                           // 0 when the support was not reported
	Area     quantity.Range[quantity.Area] // of all of them; not given when there are none, or none were reported
	Findings finding.List                  // never empty
}

// Places returns how many unpainted places the pairs of stands, the keel blocks and the chains leave: each stand of a pair,
// each block and each chain contact is one.
//
//	places = 2 × pairs + blocks + chains
//
// Counts below zero count as none; Hull.Check refuses them.
//
// Basis: common practice.
func Places(pairs, blocks, chains int) int {
	return 2*max(pairs, 0) + max(blocks, 0) + max(chains, 0)
}

// Pads returns the places that the hull's support leaves unpainted and their area: the count times the book's area of one
// place (factor "pad-area"), a range. Nobody but the yard moves a stand: the places are counted when the paint is planned.
//
// A support that was not reported is no support of nought: the answer then has the verdict Ask. A fault of the counts, and a
// book without the factor, is a finding.Faults. The area of one place is rounded up to 0.001 m2.
//
// Basis: assumption for the area of a place, common practice for the count.
func Pads(b *tables.Book, h Hull) (Patches, error) {
	if h.Support == nil {
		return Patches{Findings: finding.List{{Rule: padsNotReported, Verdict: finding.Ask}}}, nil
	}
	s := *h.Support
	if err := s.check().Err(); err != nil {
		return Patches{}, err
	}
	pad, err := b.Factor("pad-area")
	if err != nil {
		return Patches{}, err
	}
	out := Patches{Count: Places(s.StandPairs, s.KeelBlocks, s.Chains)}
	if out.Count == 0 {
		out.Findings = finding.List{{Rule: padsToPaint, Verdict: finding.Fine, Facts: []finding.Fact{{Name: "count", Value: 0}, {Name: "area", Value: quantity.SquareMetre.N(0)}}}}
		return out, nil
	}
	for _, end := range []struct {
		to *quantity.Area
		m2 float64
	}{{&out.Area.Low, pad.Value.Low}, {&out.Area.Typical, pad.Value.Typical}, {&out.Area.High, pad.Value.High}} {
		each, err := quantity.SquareMetre.Near(end.m2, 3, quantity.Up)
		if err != nil {
			return Patches{}, outOfRange("factor[pad-area]", "", err)
		}
		*end.to = each.Scale(decimal.NewFromInt(int64(out.Count)))
	}
	out.Findings = finding.List{{
		Rule: padsToPaint, Verdict: finding.Caution,
		Facts: []finding.Fact{{Name: "count", Value: out.Count}, {Name: "area", Value: out.Area.Typical.To(quantity.SquareMetre, 1, quantity.Up)}},
		Basis: []finding.Basis{pad.Basis("value")},
	}}
	return out, nil
}
