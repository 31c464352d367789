package report

import (
	"io"
	"strings"

	"boatyard.example/bottomwork/tables/quantity"
)

// writeShoppingCSV writes one row for each size of can of each coating and colour, first to buy and then from the store, then one row for each thing
// that is used up beside the paint. What is said of the coating as a whole (need, thinner, cost, left over) stands in its first row alone, so that
// a column can be added up.
func (c *composer) writeShoppingCSV(w io.Writer) error {
	volume, places := either(c.units, quantity.Litre, quantity.USGallon), int32(2)
	if c.units == quantity.US {
		places = 3
	}
	s := sheet{head: []string{
		"kind", "what", "key", "colour", "parts", headed("need", volume), headed("high end of the range", volume), "from", "count", "unit", headed("size", volume), "batch",
		headed("left over", volume), headed("thinner", volume), "cost", "currency",
	}}
	for _, g := range c.outPurchases() {
		colour := ""
		if g.Colour != nil {
			colour = g.Colour.Name
		}
		var rows [][]string
		add := func(from string, cans []outCans) {
			for _, k := range cans {
				rows = append(rows, []string{
					"paint", word(g.Coating.Name), word(g.Coating.Key), word(colour), word(strings.Join(g.Parts, "; ")), "", "", from, count(k.Count), "can", number(k.Size, volume, 3, quantity.Nearest), word(k.Batch),
					"", "", "", "",
				})
			}
		}
		add("shop", g.Buy)
		add("store", g.Store)
		if len(rows) == 0 {
			continue // nothing is needed
		}
		rows[0][5], rows[0][6] = number(g.Need, volume, places, quantity.Up), number(g.Litres.High, volume, places, quantity.Up)
		rows[0][12], rows[0][13] = number(g.Left, volume, places, quantity.Up), number(g.Thinner, volume, places, quantity.Up)
		if g.Cost.Given() {
			rows[0][14], rows[0][15] = g.Cost.Amount().String(), g.Cost.Currency()
		}
		s.rows = append(s.rows, rows...)
	}
	for _, x := range c.outSupplies() {
		s.rows = append(s.rows, []string{"beside the paint", word(x.Name), word(x.Key), "", "", "", "", "shop", count(x.Count), x.Unit, "", "", "", "", "", ""})
	}
	return s.write(w)
}
