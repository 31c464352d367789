package antifoul

import (
	"boatyard.example/bottomwork/coverage"
	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/quantity"
)

// Bought is one coating in one colour, for all parts together.
type Bought struct {
	coverage.Purchase
	Colour string // key of a colour; empty where the layer has none (primers, tie coats)
	Parts  []string
}

// buy adds up the litres of each coating and colour over all schemes, in the order in which they are put on, and chooses cans.
// The need is the typical litres and the stated reserve; the high end is shown beside it.
func buy(b *tables.Book, boat Boat, schemes []Scheme) ([]Bought, error) {
	var out []Bought
	at := map[string]int{}
	for _, s := range schemes {
		for _, k := range s.Coats {
			id := k.Layer.Coating.Key + "\x00" + k.Layer.Colour
			i, ok := at[id]
			if !ok {
				i = len(out)
				at[id] = i
				out = append(out, Bought{Colour: k.Layer.Colour, Purchase: coverage.Purchase{Coating: k.Layer.Coating}})
			}
			g := &out[i]
			g.Range = quantity.Range[quantity.Volume]{Low: plus(g.Range.Low, k.Litres.Low), Typical: plus(g.Range.Typical, k.Litres.Typical), High: plus(g.Range.High, k.Litres.High)}
			if n := len(g.Parts); n == 0 || g.Parts[n-1] != s.Part {
				g.Parts = append(g.Parts, s.Part)
			}
		}
	}
	for i := range out {
		g := &out[i]
		p, err := coverage.Cans(coverage.Need(g.Range, boat.Paint.Reserve), coverage.OnSale(b, g.Coating, boat.Paint), nil)
		if err != nil {
			return nil, prefixed(err, "paint")
		}
		p.Coating, p.Range = g.Coating, g.Range
		g.Purchase = p
	}
	return out, nil
}
