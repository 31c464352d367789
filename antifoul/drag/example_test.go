package drag_test

import (
	"fmt"

	"boatyard.example/bottomwork/antifoul/drag"
	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/quantity"
)

// A friction of 0.003414 with 300 um over 0.002524 is 0.352 more; 0.527 of her resistance is friction.
func ExamplePenalty() {
	hull := drag.Hull{Length: quantity.Metre.N(10), Speed: quantity.Knot.N(6), Water: "salt"}
	c, err := drag.Penalty(tables.Default(), hull, "schultz-heavy-slime")
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(c.Resistance.Low, c.Resistance.Typical, c.Resistance.High, c.Findings[1].Rule)
	// Output: 13.2 % 18.6 % 26.1 % drag-clean
}
