package oldfilm_test

import (
	"fmt"

	"boatyard.example/bottomwork/compat/oldfilm"
	"boatyard.example/bottomwork/tables"
)

// A wet thumb colours, and she was painted before 2003: what it may be, the film that both speak for first.
func ExampleIdentify() {
	a, err := oldfilm.Identify(tables.Default(), "grp", []string{"thumb-colours", "painted-before-2003"})
	for _, c := range a.Films[:3] {
		fmt.Println(c.Film, "–", c.Standing)
	}
	fmt.Println(err)
	// Output:
	// old antifouling with organotin – likely
	// old ablative antifouling, biocide not known – likely
	// old traditional soft antifouling – likely
	// <nil>
}
