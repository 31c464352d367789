package coverage

import (
	"slices"

	"boatyard.example/bottomwork/tables/quantity"
)

// Substitute is what to buy when the shop is out of one size of can.
type Substitute struct {
	Out     quantity.Volume // the size that is out of stock
	Instead Purchase        // the best purchase without it; the zero Purchase when there is None
	None    bool            // nothing else is on sale
}

// IfOut returns, for each size that the best purchase buys, what to buy when the shop is out of that size. The sizes stand in
// the order of the purchase, the largest first.
//
// Need, sale and stock are those of Cans, and so are its rules, faults and limits: Instead is Cans of the other sizes on sale.
// So the others are bought by price when each of them has one, even where the missing size has none. The store stays as it is.
// Cans of the same size in another unit are out with it. A purchase that buys nothing gives an empty list.
//
// Basis: derived (Cans, once for each size).
func IfOut(need quantity.Volume, onSale, stock []Can) ([]Substitute, error) {
	best, err := Cans(need, onSale, stock)
	if err != nil {
		return nil, err
	}
	out := make([]Substitute, 0, len(best.Items))
	for _, it := range best.Items {
		missing := nanolitres(it.Can.Size, quantity.Down)
		others := slices.DeleteFunc(slices.Clone(onSale), func(c Can) bool { return nanolitres(c.Size, quantity.Down) == missing })
		s := Substitute{Out: it.Can.Size, None: len(others) == 0}
		if !s.None {
			if s.Instead, err = Cans(need, others, stock); err != nil {
				return nil, err
			}
		}
		out = append(out, s)
	}
	return out, nil
}
