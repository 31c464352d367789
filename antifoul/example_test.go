package antifoul_test

import (
	"fmt"
	"log"
	"os"

	"boatyard.example/bottomwork/antifoul"
	"boatyard.example/bottomwork/antifoul/report"
	"boatyard.example/bottomwork/coverage"
	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/quantity"
)

// The example of the README, on a boat file of examples/.
func Example() {
	boat, err := antifoul.ReadBoat(os.DirFS("../examples/boats"), "planing.toml")
	if err != nil {
		log.Fatal(err) // every fault of the file, one a line
	}
	job, err := antifoul.Plan(tables.Default(), boat)
	if err != nil {
		log.Fatal(err)
	}
	if best, ok := job.Ranking.Hull().Best(); ok {
		fmt.Println(best.Name)
	}
	for part, layer := range job.Layers() {
		fmt.Println(part+":", layer)
	}
	spread, err := coverage.Spread(quantity.Percent.N(45), quantity.Micrometre.N(50))
	fmt.Println(spread, err)
	// Output:
	// hard, cuprous oxide
	// hull: hard, cuprous oxide, black, 80 to 130 µm (3.15 to 5.12 mil)
	// hull: 1 coat hard, cuprous oxide, mid-green, 40 to 60 µm (1.57 to 2.36 mil)
	// hull: 2 coats hard, cuprous oxide, mid-green, 80 to 120 µm (3.15 to 4.72 mil)
	// trim tabs: hard, cuprous oxide, black
	// trim tabs: 2 coats hard, cuprous oxide, mid-green, 80 to 120 µm (3.15 to 4.72 mil)
	// 9.0000 m2/L <nil>
}

// A report goes to any writer, in text or Markdown.
func ExamplePlan() {
	boat, err := antifoul.ReadBoat(os.DirFS("../examples/boats"), "trailer.toml")
	if err != nil {
		log.Fatal(err)
	}
	job, err := antifoul.Plan(tables.Default(), boat)
	if err != nil {
		log.Fatal(err)
	}
	best, _ := job.Ranking.Hull().Best()
	fmt.Println(best.Name, "because:", best.Why())
	_ = report.Write // report.Write(os.Stdout, job, report.Options{Format: report.Markdown})
	// Output:
	// no coating because: She lives out of the water, so it meets no growth to speak of.
}
