package coverage

import (
	"slices"

	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

// OnSale returns the cans in which the coating may be bought, for Cans. The first of these that holds any decides:
//
//  1. the sizes of the method: what the boat's yard sells
//  2. the book's cans of that very coating
//  3. the cans of an own table that name no coating
//  4. the book's cans that name no coating and are written in L or mL
//  5. the book's other cans that name no coating
//
// So a yard that sells US sizes says so by its sizes or by an own table. A size of the method takes its price from a can of
// the book of the same size, one of that very coating first.
//
// Basis: common practice for the sizes of the book.
func OnSale(b *tables.Book, c tables.Coating, m Method) []Can {
	var rows, ofCoating, own, metric, other []tables.Can
	for row := range b.Cans() {
		switch {
		case row.Coating != "" && row.Coating == c.Key:
			ofCoating = append(ofCoating, row)
		case row.Coating != "": // another's
		case isOwn(row):
			own = append(own, row)
		case row.Size.Unit() == quantity.Litre || row.Size.Unit() == quantity.Millilitre:
			metric = append(metric, row)
		default:
			other = append(other, row)
		}
	}
	if len(m.Sizes) > 0 {
		all := slices.Concat(ofCoating, own, metric, other)
		out := make([]Can, len(m.Sizes))
		for i, s := range m.Sizes {
			out[i] = Can{Size: s}
			if at := slices.IndexFunc(all, func(r tables.Can) bool { return r.Size.Equal(s) && r.Price.Given() }); at >= 0 {
				out[i].Price = all[at].Price
			}
		}
		return out
	}
	for _, rows = range [][]tables.Can{ofCoating, own, metric, other} {
		if len(rows) > 0 {
			break
		}
	}
	out := make([]Can, len(rows))
	for i, r := range rows {
		out[i] = Can{Size: r.Size, Price: r.Price}
	}
	return out
}

// isOwn reports whether an own table gave the can, its size or its price.
func isOwn(r tables.Can) bool {
	return r.Basis("size").Kind == finding.OwnTable || r.Basis("price").Kind == finding.OwnTable
}
