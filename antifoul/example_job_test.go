package antifoul_test

import (
	"fmt"
	"log"
	"os"
	"time"

	"boatyard.example/bottomwork/antifoul"
	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/quantity"
)

// The layers of a type that is not first, on one part.
func ExampleSpecify() {
	b := tables.Default()
	boat, err := antifoul.ReadBoat(os.DirFS("../examples/boats"), "planing.toml")
	if err != nil {
		log.Fatal(err)
	}
	c, err := b.Coating("ablative-cuprous-multi")
	if err != nil {
		log.Fatal(err)
	}
	s, err := antifoul.Specify(b, boat, "hull", c)
	if err != nil {
		log.Fatal(err)
	}
	fmt.Println("refused:", s.Refused())
	for _, step := range s.Route.Steps {
		fmt.Println(step)
	}
	for _, layer := range s.Stack {
		fmt.Println(layer)
	}
	// Output:
	// refused: false
	// wash
	// abrade, grit 80 to 120
	// hard, cuprous oxide, black, 80 to 130 µm (3.15 to 5.12 mil)
	// 1 coat ablative, cuprous oxide, multi-season, mid-green, 40 to 60 µm (1.57 to 2.36 mil)
	// 1 coat ablative, cuprous oxide, multi-season, black, 40 to 60 µm (1.57 to 2.36 mil)
	// 3 coats ablative, cuprous oxide, multi-season, black, 120 to 180 µm (4.72 to 7.09 mil)
}

// A log half way through the job: what each coat came to, and what is next.
func ExampleJob_Logged() {
	b, files := tables.Default(), os.DirFS("../examples/boats")
	boat, err := antifoul.ReadBoat(files, "steel.toml")
	if err != nil {
		log.Fatal(err)
	}
	job, err := antifoul.Plan(b, boat)
	if err != nil {
		log.Fatal(err)
	}
	done, err := antifoul.ReadLog(b, boat, files, "steel-log.toml", time.UTC)
	if err != nil {
		log.Fatal(err)
	}
	logged, err := job.Logged(done, time.Date(2027, 3, 17, 18, 0, 0, 0, time.UTC))
	if err != nil {
		log.Fatal(err)
	}
	for _, k := range logged.Coats {
		if k.By != "" {
			fmt.Println(k.Part, "–", k.Paint, "–", "film known by", k.By)
		}
	}
	for _, f := range logged.Due {
		fmt.Println(b.Say(f, quantity.Metric))
	}
	// Output:
	// hull – epoxy primer – film known by litres
	// hull – epoxy primer – film known by litres
	// rudder – epoxy primer – film known by litres
	// hull – epoxy barrier, solvent-borne – film known by litres and comb
	// Next is coat 3 of epoxy barrier, solvent-borne (undercoat): not before Thu 18 Mar 2027, 04:58, reckoned at the 12 °C (53.6 °F) noted with the coat below; then closes Tue 23 Mar 2027, 01:01.
	// Next is coat 1 of epoxy barrier, solvent-borne (undercoat): from Mon 15 Mar 2027, 23:15 on, reckoned at 20 °C (68.0 °F), since no temperature was noted; closes Thu 18 Mar 2027, 19:15.
}

// A condition note: nothing is planned, and the survey says what wants doing first.
func ExampleLook() {
	b := tables.Default()
	note, err := antifoul.ReadNote(b, os.DirFS("../examples/surveynote"), "note.toml")
	if err != nil {
		log.Fatal(err)
	}
	job, err := antifoul.Look(b, note)
	if err != nil {
		log.Fatal(err)
	}
	for _, x := range job.Survey.At(tables.BeforeLaunch) {
		fmt.Println(x.About, "–", x.Row)
	}
	fmt.Println(len(job.Schemes), "schemes")
	// Output:
	// drive leg – paint with copper too near this metal
	// drive leg – worn through to what is below, on metal
	// anode on the leg – anode wasted by more than half
	// bond from leg to engine – bonding wire or strap broken, corroded or without contact
	// 0 schemes
}
