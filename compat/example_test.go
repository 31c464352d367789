package compat_test

import (
	"fmt"

	"boatyard.example/bottomwork/compat"
	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/quantity"
)

// Hard paint does not go over a wear layer.
func ExampleOver() {
	b := tables.Default()
	hard, _ := b.Coating("hard-cuprous")
	ablative, _ := b.Coating("ablative-cuprous-multi")
	for _, f := range compat.Over(b, hard, compat.Layer{Coating: ablative, State: tables.Sound}) {
		fmt.Printf("%s: %s\n", f.Verdict, b.Say(f, quantity.Metric))
	}
	// Output:
	// forbidden: Hard, cuprous oxide does not go over ablative, cuprous oxide, multi-season: the softer layer below lets go and takes it along.
}

// The commonest job of all: the same again on sound paint.
func ExampleRoutes() {
	b := tables.Default()
	ablative, _ := b.Coating("ablative-cuprous-multi")
	hull := compat.Part{Name: "hull", Zone: "hull", Material: "grp", Found: compat.Stack{{Coating: ablative, State: tables.Sound}}}
	for _, r := range compat.Routes(b, hull, ablative) {
		for _, s := range r.Steps {
			fmt.Printf("%s, ", s.Do)
		}
		fmt.Printf("keeps %d layer, %.2f hours a m2\n", len(r.Keeps), r.Effort.Typical)
	}
	// Output:
	// wash, keeps 1 layer, 0.03 hours a m2
	// strip, degrease, abrade, keeps 0 layer, 0.99 hours a m2
}

// Copper oxide never goes on aluminium, whatever lies between.
func ExampleOnMaterial() {
	b := tables.Default()
	hard, _ := b.Coating("hard-cuprous")
	barrier, _ := b.Coating("epoxy-barrier")
	hull := compat.Part{Name: "hull", Material: "aluminium", Found: compat.Stack{{Coating: barrier, State: tables.Sound, Film: quantity.Exactly(quantity.Micrometre.N(400))}}}
	fmt.Println(compat.OnMaterial(b, hard, hull).Worst())
	// Output: forbidden
}

// Where a stand stood, only the working coat laps onto its own.
func ExamplePatch() {
	b := tables.Default()
	barrier, _ := b.Coating("epoxy-barrier")
	ablative, _ := b.Coating("ablative-cuprous-multi")
	s := compat.Stack{
		{Coating: barrier, State: tables.Sound, For: compat.Undercoat},
		{Coating: ablative, State: tables.Sound, For: compat.Working},
	}
	layers, _ := compat.Patch(b, s)
	for _, l := range layers {
		fmt.Println(l.Layer.Coating, "may lap:", l.MayLap)
	}
	// Output:
	// epoxy barrier, solvent-borne may lap: false
	// ablative, cuprous oxide, multi-season may lap: true
}
