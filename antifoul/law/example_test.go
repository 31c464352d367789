package law_test

import (
	"fmt"

	"boatyard.example/bottomwork/antifoul/law"
	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/quantity"
)

func ExampleScreen() {
	book := tables.Default()
	soft, err := book.Coating("ablative-cuprous-multi")
	if err != nil {
		fmt.Println(err)
		return
	}
	day, _ := quantity.NewDate(2026, 11, 25)
	at := []law.Berth{{Place: "US-WA", Role: "kept", Water: "salt"}}
	craft := law.Craft{Length: quantity.Metre.N(10), Mass: quantity.Tonne.N(4), Material: "grp"}

	fmt.Println("put on:", law.Screen(book, soft, craft, at, day).Worst())
	fmt.Println("cleaned afloat:", law.Cleaning(book, soft, craft, at, day).Worst())
	// Output:
	// put on: caution
	// cleaned afloat: forbidden
}

func ExampleAt() {
	book := tables.Default()
	day, _ := quantity.NewDate(2026, 11, 25)
	desk := law.At(book, law.Craft{Mass: quantity.Tonne.N(4)}, []law.Berth{{Place: "SE-fresh", Role: "kept"}}, day)
	for c := range book.Coatings() {
		if c.Key == "hard-cuprous" || c.Key == "inert-epoxy" {
			fmt.Println(c.Key, desk.Screen(c).Worst())
		}
	}
	// Output:
	// hard-cuprous forbidden
	// inert-epoxy fine
}
