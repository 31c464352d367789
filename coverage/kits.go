package coverage

import (
	"fmt"

	"github.com/shopspring/decimal"

	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

// Kit is a pack of base and hardener that are sold together, or what is left of one in the store.
type Kit struct {
	Base, Hardener quantity.Volume
	Price          quantity.Money // of the kit; not given: not known
	Batch          string         // batch number printed on the kit; empty: not known
}

// mixPlaces are the decimal places of mixed paint and of what goes into it, in litres: a millilitre is what a cup shows.
const mixPlaces = 3

// KitCan returns the kit as a can of mixed paint, for Cans, and what is left over of it. The component that runs out first
// decides:
//
//	mixed = min(base ÷ a, hardener ÷ b) × (a + b)      a:b the ratio by volume
//
// The volume is in litres, rounded down to 0.001 L. The finding is Fine when the kit comes out even, and a Caution that names
// component and litres when 0.001 L or more of one is left over; those litres are rounded down to 0.001 L too.
//
// The parts of the ratio are above zero and so are base and hardener, each at most 1 000 000 L; the kit gives 1 mL to
// 1 000 000 L. Else the error is a finding.Faults. Price and batch are passed on as they are: Cans reads the price.
//
// Basis: derived (the mixing ratio by volume, and mixed paint that keeps the volumes of both).
func KitCan(r Ratio, k Kit) (Can, finding.List, error) {
	faults := r.Check().Under("", "ratio")
	checkComponent(&faults, "kit.base", k.Base)
	checkComponent(&faults, "kit.hardener", k.Hardener)
	if err := faults.Err(); err != nil {
		return Can{}, nil, err
	}
	base, hardener := k.Base.In(quantity.Litre, basePlaces, quantity.Down), k.Hardener.In(quantity.Litre, basePlaces, quantity.Down)
	// Crosswise: base ÷ a against hardener ÷ b without a division.
	byBase, byHardener := base.Mul(r.Hardener), hardener.Mul(r.Base)
	short, parts, surplus, name := base, r.Base, byHardener.Sub(byBase), "hardener"
	if surplus.Sign() < 0 {
		short, parts, surplus, name = hardener, r.Hardener, surplus.Neg(), "base"
	}
	mixed, err := quantity.Quotient(short.Mul(r.Base.Add(r.Hardener)), parts, mixPlaces, quantity.Down)
	if err != nil {
		return Can{}, nil, outOfRange("kit", "", err)
	}
	left, err := quantity.Quotient(surplus, parts, mixPlaces, quantity.Down)
	if err != nil {
		return Can{}, nil, outOfRange("kit", "", err)
	}
	can := Can{Size: quantity.Litre.Of(plain(mixed)), Price: k.Price, Batch: k.Batch}
	if can.Size.Cmp(quantity.Millilitre.N(leastCan)) < 0 || can.Size.Cmp(quantity.Litre.N(mostNeed)) > 0 {
		return Can{}, nil, finding.Faults{{
			Kind: finding.ErrImpossible, Key: "kit", Got: fmt.Sprintf("%s and %s at %s, which give %s", k.Base, k.Hardener, r, can.Size),
			Want: fmt.Sprintf("base and hardener that give %d mL to %d L", leastCan, int64(mostNeed)),
		}}
	}
	f := finding.Finding{Rule: kitEven, Verdict: finding.Fine, Facts: []finding.Fact{
		{Name: "base", Value: k.Base}, {Name: "hardener", Value: k.Hardener}, {Name: "ratio", Value: r.String()}, {Name: "mixed", Value: can.Size},
	}}
	if left.Sign() > 0 {
		f.Rule, f.Verdict = kitLeftOver, finding.Caution
		f.Facts = append(f.Facts, finding.Fact{Name: "component", Value: name}, finding.Fact{Name: "left", Value: quantity.Litre.Of(plain(left))})
	}
	return can, finding.List{f}, nil
}

func checkComponent(faults *finding.Faults, key string, v quantity.Volume) {
	switch {
	case !v.Given():
		*faults = append(*faults, finding.Fault{Kind: finding.ErrMissing, Key: key, Want: `a volume, such as "3 L"`})
	case v.Sign() <= 0 || v.Cmp(quantity.Litre.N(mostNeed)) > 0:
		*faults = append(*faults, finding.Fault{Kind: finding.ErrImpossible, Key: key, Got: v.String(), Want: fmt.Sprintf("more than zero and at most %d L", int64(mostNeed))})
	}
}

// plain is the number with as few decimal places as it has.
func plain(n decimal.Decimal) decimal.Decimal {
	for places := range int32(mixPlaces) {
		if r := n.Round(places); r.Equal(n) {
			return r
		}
	}
	return n
}
