package main

import (
	"cmp"
	"slices"

	"boatyard.example/bottomwork/coverage"
	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/quantity"
)

// order is one coating in one colour for the whole season.
type order struct {
	coverage.Purchase
	colour string
	boats  []string
}

// orderList adds up what the boats need of each coating and colour and chooses cans once for all of them, the store first.
func orderList(book *tables.Book, y yard, jobs []boatJob) ([]order, error) {
	var out []order
	methods := map[string]coverage.Method{}
	for _, x := range jobs {
		for _, g := range x.job.Buy {
			at := slices.IndexFunc(out, func(o order) bool { return o.Coating.Key == g.Coating.Key && o.colour == g.Colour })
			if at < 0 {
				at = len(out)
				out = append(out, order{colour: g.Colour, Purchase: coverage.Purchase{Coating: g.Coating}})
				methods[g.Coating.Key] = x.job.Boat.Paint
			}
			o := &out[at]
			if o.Need.Given() {
				o.Need = o.Need.Add(g.Need)
			} else {
				o.Need = g.Need
			}
			o.boats = append(o.boats, x.name())
		}
	}
	for i := range out {
		o := &out[i]
		m := methods[o.Coating.Key]
		m.Sizes = nil // the yard buys, whatever one owner's shop sells
		p, err := coverage.Cans(o.Need, coverage.OnSale(book, o.Coating, m), y.stock(o.Coating.Key, o.colour))
		if err != nil {
			return nil, err
		}
		p.Coating = o.Coating
		o.Purchase = p
	}
	slices.SortStableFunc(out, func(a, b order) int {
		return cmp.Or(cmp.Compare(a.Coating.Name, b.Coating.Name), cmp.Compare(a.colour, b.colour))
	})
	return out, nil
}

// money is the whole list's, not given where a can has no price.
func money(list []order) quantity.Money {
	var sum quantity.Money
	for _, o := range list {
		if len(o.Items) == 0 {
			continue // from the store
		}
		switch s, err := sum.Add(o.Cost); {
		case !sum.Given() && o.Cost.Given():
			sum = o.Cost
		case err != nil:
			return quantity.Money{}
		default:
			sum = s
		}
	}
	return sum
}
