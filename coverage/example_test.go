package coverage_test

import (
	"fmt"

	"github.com/shopspring/decimal"

	"boatyard.example/bottomwork/coverage"
	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/quantity"
)

// 50 % solids in 50 um: 10 × 50 ÷ 50; a roller loses a tenth.
func ExampleSpread() {
	rate, err := coverage.Spread(quantity.Percent.N(50), quantity.Micrometre.N(50))
	if err != nil {
		fmt.Println(err)
		return
	}
	practical, err := coverage.Practical(rate, quantity.Percent.N(10))
	fmt.Println(rate, practical, err)
	// Output: 10.0000 m2/L 9.0000 m2/L <nil>
}

// 50 um dry from 50 % solids, thinned by a tenth: 50 × 110 ÷ 50.
func ExampleWetFilm() {
	fmt.Println(coverage.WetFilm(quantity.Micrometre.N(50), quantity.Percent.N(50), quantity.Percent.N(10)))
	// Output: 110.0000 um <nil>
}

func ExampleWetted() {
	hull := coverage.Hull{Kind: "working-boat", Length: quantity.Foot.N(40), Beam: quantity.Foot.N(12), Draft: quantity.Foot.N(5)}
	areas, err := coverage.Wetted(tables.Default(), hull)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(areas.Total.Typical, "by", areas.Method) // 40 × (12 + 5)
	for _, z := range areas.Zones {
		fmt.Println(z.Zone, z.Area.Typical)
	}
	// Output:
	// 680.00 ft2 by 1 × L × (B + T), full-bodied working boat
	// flat 591.60 ft2
	// waterline 54.40 ft2
	// edges 34.00 ft2
}

// The 5 L can is dearer than two of 2.5 L, and one can of 0.75 L stands in the store.
func ExampleCans() {
	price := func(s string) quantity.Money {
		m, err := quantity.ParseMoney(s)
		if err != nil {
			fmt.Println(err)
		}
		return m
	}
	ml := quantity.Millilitre
	onSale := []coverage.Can{{Size: ml.N(750), Price: price("28.00 EUR")}, {Size: ml.N(2500), Price: price("79.00 EUR")}, {Size: ml.N(5000), Price: price("165.00 EUR")}}
	bought, err := coverage.Cans(ml.N(5700), onSale, []coverage.Can{{Size: ml.N(750)}})
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, it := range bought.Items {
		fmt.Println(it.Count, "of", it.Can.Size)
	}
	fmt.Println(bought.Cost, "left", bought.Left)
	// Output:
	// 2 of 2500 mL
	// 158.00 EUR left 50 mL
}

func ExampleSupport_Places() {
	fmt.Println(coverage.Support{StandPairs: 4, KeelBlocks: 4, Chains: 4}.Places())
	// Output: 16
}

// 50 % solids: 80 um wet dry to 40 um, and 50 um ask for 100 um wet.
func ExampleComb() {
	book := tables.Default()
	um := quantity.Micrometre
	got, err := coverage.Comb(book, coverage.WetCoat{
		Paint: "the barrier", Solids: quantity.Exactly(quantity.Percent.N(50)), Asked: um.N(50),
		Teeth: []coverage.Tooth{{Wetted: um.N(75), Dry: um.N(85)}, {Wetted: um.N(80)}},
	})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(book.Say(got.Findings[0], quantity.Metric))
	// Output: By 2 readings of the comb the fresh coat of the barrier dries to 40 µm (1.57 mil) in the mean (38 to 42 µm (1.50 to 1.65 mil)), less than the 50 µm (1.97 mil) asked for. As long as it is wet, put more on, until the comb reads 100 µm (3.94 mil); once it has dried, a gauge on the dry film decides where one reads, and what lacks is another coat.
}

// 2.1 L by brush in one coat on 10 m2, 50 % solids; the brush loses 3, 5 or 10 %, and 0.10, 0.15 or 0.25 L stay behind:
// 1.85 × 50 × 90 ÷ 100 = 83.25, 1.95 × 50 × 95 ÷ 100 = 92.625, 2.00 × 50 × 97 ÷ 100 = 97.
func ExampleUsed() {
	got, err := coverage.Used(tables.Default(), coverage.Spent{
		Litres: quantity.Litre.Of(decimal.New(21, -1)), Area: quantity.Exactly(quantity.SquareMetre.N(10)), Coats: 1,
		Coating: tables.Coating{Solids: quantity.Exactly(quantity.Percent.N(50))}, Method: coverage.Method{By: "brush"}, Asked: quantity.Micrometre.N(90),
	})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(got.Coat.Low, got.Coat.Typical, got.Coat.High, got.Findings.Worst())
	// Output: 83.2500 um 92.6250 um 97.0000 um fine
}
