package cost_test

import (
	"fmt"
	"testing/fstest"

	"boatyard.example/bottomwork/antifoul/cost"
	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/quantity"
)

// A yard's own prices, a bill of two lines, and the bills of two boats added up.
func ExampleReckon() {
	book, err := tables.Default().With(fstest.MapFS{"prices.toml": {Data: []byte(`
[[price]]
key = "hand"
of = "labour"
per = "h"
price = "40.00 EUR"
basis = "own table"
source = "this year's price list"

[[price]]
key = "lift"
of = "lift"
per = "job"
price = "250.00 EUR"
basis = "own table"
source = "this year's price list"
`)}})
	if err != nil {
		fmt.Println(err)
		return
	}
	bill := cost.Reckon(book, tables.ByYard, []cost.Item{
		{Of: tables.PricedLabour, Name: "abrade", Unit: "h", Amount: cost.Amounts(6, 7.5, 9)},
		{Of: tables.PricedLift, Name: "out of the water and back", Unit: cost.Job, Amount: cost.Times(1)},
	}, cost.Boat{})
	for _, l := range bill.Lines {
		fmt.Println(l.Name, l.Money.Show(quantity.Metric))
	}
	fmt.Println("both boats", cost.Plus(bill.Net, bill.Net).Typical)
	// Output:
	// abrade 240.00 to 360.00 EUR
	// out of the water and back 250.00 EUR
	// both boats 1100.00 EUR
}
