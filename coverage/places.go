package coverage

import (
	"math"

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
	On       Support                       // what they are counted from
	Each     quantity.Range[quantity.Area] // of one place
	Area     quantity.Range[quantity.Area] // of all of them; not given when there are none, or none were reported
	Findings finding.List                  // never empty
}

// Places returns how many unpainted places the support leaves: each stand of a pair, each keel block and each chain contact is one.
//
//	places = 2 × pairs + blocks + chains
//
// Counts below zero count as none; Hull.Check refuses them.
//
// Basis: common practice.
func (s Support) Places() int {
	return 2*max(s.StandPairs, 0) + max(s.KeelBlocks, 0) + max(s.Chains, 0)
}

// Stands returns the support that a boat of the length is taken to stand on where nobody counted it:
//
//	pairs = length ÷ "stand-spacing", at least "stand-pairs-least"      blocks = length ÷ "block-spacing", at least 2
//
// each rounded up. Chains are not guessed. It is for counting paint, never for blocking a boat: that is the yard's.
//
// Basis: common practice; the factors are rows that a yard replaces by its own rule.
func Stands(b *tables.Book, length quantity.Length) (Support, error) {
	var faults finding.Faults
	if !length.Given() || length.Sign() <= 0 {
		faults = append(faults, finding.Fault{Kind: finding.ErrImpossible, Key: "length", Got: length.String(), Want: "a length above zero"})
	}
	number := func(key string) float64 {
		f, err := b.Factor(key)
		if err != nil { // a row is above zero
			faults = append(faults, finding.Fault{Kind: finding.ErrMissing, Key: "factor[" + key + "]", Want: "a number above zero"})
			return 1
		}
		return f.Value.Typical
	}
	pair, block, least := number("stand-spacing"), number("block-spacing"), number("stand-pairs-least")
	if err := faults.Err(); err != nil {
		return Support{}, err
	}
	m := length.Float(quantity.Metre)
	up := func(x float64) int { return int(math.Ceil(min(x, mostPlaces) - 1e-9)) }
	return Support{StandPairs: max(up(m/pair), up(least)), KeelBlocks: max(up(m/block), 2)}, nil
}

// Pads returns the places that the hull's support leaves unpainted and their area: the count times the book's area of one
// place (factor "pad-area"), a range. Nobody but the yard moves a stand: the places are counted when the paint is planned.
//
// A support that was not reported is no support of nought: it is taken from Stands, and the answer has the verdict Ask; without a length
// nothing is counted. A fault of the counts, and a book without the factor, is a finding.Faults. The area of one place is rounded up to
// 0.001 m2.
//
// Basis: assumption for the area of a place, common practice for the count.
func Pads(b *tables.Book, h Hull) (Patches, error) {
	var s Support
	switch {
	case h.Support != nil:
		s = *h.Support
	case !h.Length.Given():
		return Patches{Findings: finding.List{{Rule: padsNotReported, Verdict: finding.Ask}}}, nil
	default:
		var err error
		if s, err = Stands(b, h.Length); err != nil {
			return Patches{}, err
		}
	}
	if err := s.check().Err(); err != nil {
		return Patches{}, err
	}
	pad, err := b.Factor("pad-area")
	if err != nil {
		return Patches{}, err
	}
	out := Patches{Count: s.Places(), On: s}
	if out.Count == 0 {
		out.Findings = finding.List{{Rule: padsToPaint, Verdict: finding.Fine, Facts: []finding.Fact{{Name: "count", Value: 0}, {Name: "area", Value: quantity.SquareMetre.N(0)}}}}
		return out, nil
	}
	for _, end := range []struct {
		to, one *quantity.Area
		m2      float64
	}{{&out.Area.Low, &out.Each.Low, pad.Value.Low}, {&out.Area.Typical, &out.Each.Typical, pad.Value.Typical}, {&out.Area.High, &out.Each.High, pad.Value.High}} {
		each, err := quantity.SquareMetre.Near(end.m2, 3, quantity.Up)
		if err != nil {
			return Patches{}, outOfRange("factor[pad-area]", "", err)
		}
		*end.one = each
		*end.to = each.Scale(decimal.NewFromInt(int64(out.Count)))
	}
	f := finding.Finding{
		Rule: padsToPaint, Verdict: finding.Caution,
		Facts: []finding.Fact{{Name: "count", Value: out.Count}, {Name: "area", Value: out.Area.Typical.To(quantity.SquareMetre, 1, quantity.Up)}},
		Basis: []finding.Basis{pad.Basis("value")},
	}
	if h.Support == nil {
		f.Rule, f.Verdict = padsReckoned, finding.Ask
		f.Facts = append(f.Facts, finding.Fact{Name: "pairs", Value: s.StandPairs}, finding.Fact{Name: "blocks", Value: s.KeelBlocks})
	}
	out.Findings = finding.List{f}
	return out, nil
}

// Some returns so many of the places, with their area; none where the count is nought or the places have no area.
//
// Basis: derived.
func (p Patches) Some(count int) Patches {
	if count <= 0 || p.Count == 0 {
		return Patches{}
	}
	n := decimal.NewFromInt(int64(count))
	return Patches{
		Count: count, Each: p.Each,
		Area: quantity.Range[quantity.Area]{Low: p.Each.Low.Scale(n), Typical: p.Each.Typical.Scale(n), High: p.Each.High.Scale(n)},
	}
}
