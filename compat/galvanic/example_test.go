package galvanic_test

import (
	"fmt"

	"boatyard.example/bottomwork/compat/galvanic"
	"boatyard.example/bottomwork/tables"
)

// Which of two metals goes, and what drives it.
func ExampleCouple() {
	p, err := galvanic.Couple(tables.Default(), galvanic.Flowing, galvanic.Metal{Name: "mild steel"}, galvanic.Metal{Name: "copper"})
	fmt.Println(p.Low, "to", p.High, "–", p.Anode, "goes", err)
	// Output: 230 mV to 420 mV – mild steel goes <nil>
}
