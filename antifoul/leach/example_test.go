package leach_test

import (
	"fmt"

	"boatyard.example/bottomwork/antifoul/leach"
	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/quantity"
)

// Three coats that are known by X-ray to hold 6 000 ug of copper in a square centimetre, and are to last two seasons of seven months:
// 0.9 × 6 000 / (14 × 30.4375) = 12.67 ug/cm2 a day, divided by 2.9 it is 4.37; on 25 m2 in one season 12.67 × 25 × 213.06 / 100 = 675 g.
func ExampleBalance() {
	raw, corrected, err := leach.Balance(tables.Default(), quantity.Exactly(6000.0), 14)
	if err != nil {
		fmt.Println(err)
		return
	}
	grams, err := leach.Load(raw, quantity.Exactly(quantity.SquareMetre.N(25)), 7)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("by mass balance %.2f µg/cm²/d, divided %.2f µg/cm²/d\n", raw.Typical, corrected.Typical)
	fmt.Printf("%.0f g a season by mass balance\n", grams.Typical)
	// Output:
	// by mass balance 12.67 µg/cm²/d, divided 4.37 µg/cm²/d
	// 675 g a season by mass balance
}

func ExampleContent() {
	book := tables.Default()
	silicone, err := book.Coating("foul-release-silicone")
	if err != nil {
		fmt.Println(err)
		return
	}
	in, err := leach.Content(book, silicone, quantity.Exactly(quantity.Micrometre.N(150)))
	fmt.Println(len(in.Held), book.Say(in.Findings[0], quantity.Metric), err)
	// Output:
	// 0 Foul-release, silicone holds no biocide by these tables: nothing is counted. <nil>
}
