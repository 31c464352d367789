package coverage

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"github.com/shopspring/decimal"

	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

// Can is a size of can: on sale, with its price where it is known, or one can in the store.
type Can struct {
	Size  quantity.Volume
	Price quantity.Money // not given: not known
	Batch string         // batch number printed on the can; empty: not known
}

// Item is a number of cans of one size.
type Item struct {
	Can   Can
	Count int
}

// Purchase is what to buy for a need, and what to take from the store. Cans fills all but Coating and Range, which are the
// caller's notes.
type Purchase struct {
	Coating   tables.Coating
	Need      quantity.Volume
	Range     quantity.Range[quantity.Volume]
	Items     []Item          // to buy, the largest first
	FromStock []Item          // from the store, the largest first; of one size, one item a batch
	Total     quantity.Volume // of both
	Left      quantity.Volume // Total less Need
	Cost      quantity.Money  // of Items; not given unless each can on sale has a price
}

const (
	nanolitre   = 9          // decimal places of a litre in which cans are counted: every unit of volume is whole in them
	mostNeed    = 1e6        // litres
	leastCan    = 1          // millilitres
	mostSizes   = 16         // different sizes on sale, and in the store
	mostStock   = 1000       // cans in the store
	pricePlaces = 4          // decimal places of a price
	mostPrice   = 1000000000 // of the last place that any price has
)

// Cans returns the cans to take from the store and to buy, so that they hold the need. It is exact: no other choice is better
// by the rules below, in this order.
//
//  1. The store comes first: it is free. If it holds the need, only cans of the store are taken: those with the least left
//     over, then the fewest, then the larger ones. Else all of them are taken, and the rest is bought. Each Can of stock is
//     one can; its price is not read. Of cans of one size, those of the batch with the most of them are taken first.
//  2. If every can on sale has a price: the least cost, then the least left over, then the fewest cans, then the larger cans.
//  3. If any has none: the least volume that holds the need is found; of all choices with at most one smallest can more than
//     that, the one with the fewest cans, then the least left over, then the larger cans. So nobody buys fourteen small cans
//     to save a cupful.
//
// A size that stands on sale twice counts with its lowest price. Volumes are compared in nanolitres, in which every unit of
// volume is a whole number; a need with more places is rounded up, a can down.
//
// The need is above zero and at most 1 000 000 L; cans hold from 1 mL to 1 000 000 L, in at most 16 sizes on sale and 16 in
// the store, which holds at most 1000 cans; prices are of one currency, not negative, with at most 4 decimal places. Other input is a finding.Faults. So is
// a choice with so many combinations that none can be shown to be the best, such as drums filled from thimbles.
//
// Basis: derived (a search of all combinations that leaves out only those that a bound proves worse).
func Cans(need quantity.Volume, onSale, stock []Can) (Purchase, error) {
	var faults finding.Faults
	switch {
	case !need.Given():
		faults = append(faults, finding.Fault{Kind: finding.ErrMissing, Key: "need", Want: `a volume, such as "7.4 L"`})
	case need.Sign() <= 0 || need.Cmp(quantity.Litre.N(mostNeed)) > 0:
		faults = append(faults, finding.Fault{Kind: finding.ErrImpossible, Key: "need", Got: need.String(), Want: fmt.Sprintf("more than zero and at most %d L", int64(mostNeed))})
	}
	sale := readKinds(&faults, "on_sale", onSale)
	store := readKinds(&faults, "stock", stock)
	if len(stock) > mostStock {
		faults = append(faults, finding.Fault{Kind: finding.ErrImpossible, Key: "stock", Got: fmt.Sprintf("%d cans", len(stock)), Want: fmt.Sprintf("at most %d cans", mostStock)})
	}
	priced := readPrices(&faults, onSale, sale)
	if err := faults.Err(); err != nil {
		return Purchase{}, err
	}
	out := Purchase{Need: need}
	want := nanolitres(need, quantity.Up)
	var held int64
	var all choice
	for i, k := range store {
		held += k.size * k.limit
		all[i] = int32(k.limit) // at most mostStock
	}
	if held >= want {
		counts, ok := search(store, want, math.MaxInt64)
		if !ok {
			return Purchase{}, tooMany("stock", len(store))
		}
		out.FromStock = byBatch(items(store, counts), stock)
		return out.finish(onSale, priced)
	}
	out.FromStock = byBatch(items(store, all), stock)
	if len(sale) == 0 {
		return Purchase{}, finding.Faults{{Kind: finding.ErrMissing, Key: "on_sale", Want: "sizes of can on sale, since the store does not hold " + need.String()}}
	}
	counts, ok := buy(sale, want-held, priced)
	if !ok {
		return Purchase{}, tooMany("on_sale", len(sale))
	}
	out.Items = items(sale, counts)
	return out.finish(onSale, priced)
}

// buy chooses by rule 2 or 3.
func buy(sale []kind, want int64, priced bool) (choice, bool) {
	if priced {
		return search(sale, want, math.MaxInt64)
	}
	least, ok := leastVolume(sale, want)
	if !ok {
		return choice{}, false
	}
	for i := range sale {
		sale[i].cost = 1
	}
	return search(sale, want, least+sale[len(sale)-1].size)
}

// readKinds makes the different sizes of the cans, the largest first, and notes the faults of each can. The limit of a kind is
// how often it was listed: how many the store holds.
func readKinds(faults *finding.Faults, key string, cans []Can) []kind {
	var kinds []kind
	for i, c := range cans {
		if !c.Size.Given() || c.Size.Cmp(quantity.Millilitre.N(leastCan)) < 0 || c.Size.Cmp(quantity.Litre.N(mostNeed)) > 0 {
			*faults = append(*faults, finding.Fault{
				Kind: finding.ErrImpossible, Key: fmt.Sprintf("%s[%d]", key, i+1), Got: c.Size.String(),
				Want: fmt.Sprintf("a can of %d mL to %d L", leastCan, int64(mostNeed)),
			})
			continue
		}
		size := nanolitres(c.Size, quantity.Down)
		at := slices.IndexFunc(kinds, func(k kind) bool { return k.size == size })
		if at < 0 {
			kinds = append(kinds, kind{can: c, size: size, limit: 1})
			continue
		}
		kinds[at].limit++
	}
	if len(kinds) > mostSizes {
		*faults = append(*faults, finding.Fault{Kind: finding.ErrImpossible, Key: key, Got: fmt.Sprintf("%d sizes", len(kinds)), Want: fmt.Sprintf("at most %d sizes", mostSizes)})
	}
	slices.SortFunc(kinds, func(a, b kind) int { return cmp.Compare(b.size, a.size) })
	return kinds
}

// readPrices sets the cost of each kind on sale to its lowest price, in the last decimal place that any price has, and lifts
// its limit. It reports whether every can has a price.
func readPrices(faults *finding.Faults, onSale []Can, kinds []kind) bool {
	priced := true
	var first quantity.Money
	var places int32
	for i, c := range onSale {
		key := fmt.Sprintf("on_sale[%d].price", i+1)
		p := c.Price
		if !p.Given() {
			priced = false
			continue
		}
		if !first.Given() {
			first = p
		}
		for places < pricePlaces && !p.Equal(p.Round(places, quantity.Down)) {
			places++
		}
		switch {
		case p.Currency() != first.Currency():
			*faults = append(*faults, finding.Fault{Kind: finding.ErrValue, Key: key, Got: p.String(), Want: "one currency for all cans, " + first.Currency()})
		case p.Sign() < 0:
			*faults = append(*faults, finding.Fault{Kind: finding.ErrImpossible, Key: key, Got: p.String(), Want: "a price of nought or more"})
		case !p.Equal(p.Round(pricePlaces, quantity.Down)):
			*faults = append(*faults, finding.Fault{Kind: finding.ErrValue, Key: key, Got: p.String(), Want: fmt.Sprintf("a price with at most %d decimal places", pricePlaces)})
		}
	}
	for i := range kinds {
		kinds[i].limit = endless
		kinds[i].can.Price = quantity.Money{}
	}
	if len(*faults) > 0 {
		return false
	}
	for i, c := range onSale {
		if !c.Price.Given() {
			continue
		}
		cost := c.Price.Amount().Shift(places)
		if cost.Cmp(decimal.NewFromInt(mostPrice)) > 0 {
			*faults = append(*faults, finding.Fault{
				Kind: finding.ErrImpossible, Key: fmt.Sprintf("on_sale[%d].price", i+1), Got: c.Price.String(),
				Want: "at most " + decimal.New(mostPrice, -places).String() + " " + first.Currency(),
			})
		}
		size := nanolitres(c.Size, quantity.Down)
		k := &kinds[slices.IndexFunc(kinds, func(k kind) bool { return k.size == size })]
		if n := cost.BigInt().Int64(); !k.can.Price.Given() || n < k.cost {
			k.cost, k.can = n, c
		}
	}
	return priced
}

// finish adds up the cans and the cost.
func (p Purchase) finish(onSale []Can, priced bool) (Purchase, error) {
	all := slices.Concat(p.FromStock, p.Items) // one can at least: the need is above zero
	p.Total = volume(all[0])
	for _, it := range all[1:] {
		p.Total = p.Total.Add(volume(it))
	}
	p.Left = p.Total.Sub(p.Need)
	if !priced || len(onSale) == 0 {
		return p, nil
	}
	p.Cost = onSale[0].Price.Scale(decimal.Decimal{})
	for _, it := range p.Items {
		var err error
		if p.Cost, err = p.Cost.Add(it.Can.Price.Scale(decimal.NewFromInt(int64(it.Count)))); err != nil {
			return Purchase{}, outOfRange("on_sale", it.Can.Price.String(), err)
		}
	}
	return p, nil
}

func volume(it Item) quantity.Volume { return it.Can.Size.Scale(decimal.NewFromInt(int64(it.Count))) }

func items(kinds []kind, counts choice) []Item {
	var out []Item
	for i := range kinds {
		if n := counts[i]; n > 0 {
			out = append(out, Item{Can: kinds[i].can, Count: int(n)})
		}
	}
	return out
}

// nanolitres is the volume as a whole number; volumes up to the limits of Cans fit.
func nanolitres(v quantity.Volume, r quantity.Rounding) int64 {
	return v.In(quantity.Litre, nanolitre, r).Shift(nanolitre).BigInt().Int64()
}

func tooMany(key string, sizes int) finding.Faults {
	return finding.Faults{{
		Kind: finding.ErrImpossible, Key: key, Got: fmt.Sprintf("%d sizes with too many combinations", sizes),
		Want: "fewer sizes, or larger ones for such a need",
	}}
}
