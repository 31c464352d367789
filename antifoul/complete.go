package antifoul

import (
	"boatyard.example/bottomwork/antifoul/leach"
	"boatyard.example/bottomwork/antifoul/wear"
	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/finding"
)

// factors are the rows of the factor table that this package and compat ask for; wear.Factors are those of the wear, and leach.Values the numbers of the
// release that a report tells.
var factors = []string{"abraded-film", "day-hours", "idle-bar", "lightness-step", "lightness-step-clear", "open-launch-days", "work-hours-full", "comb-thick", "used-doubt"}

// complete returns a fault for each number and weight that the answer would need and the book does not hold; the module's own tables
// hold all. A whole other book must give them: nothing is taken in their place.
func complete(b *tables.Book) finding.Faults {
	var fs finding.Faults
	lacks := func(table, key string) {
		fs = append(fs, finding.Fault{Kind: finding.ErrMissing, File: "the tables", Key: table + "[" + key + "]", Want: "a row with this key, as the module's own tables have"})
	}
	for _, keys := range [][]string{factors, wear.Factors()} {
		for _, key := range keys {
			if _, err := b.Factor(key); err != nil {
				lacks("factor", key)
			}
		}
	}
	for _, keys := range [][]string{{"waste-density-least", "waste-density-most"}, leach.Values()} {
		for _, key := range keys {
			if _, err := b.Value(key); err != nil {
				lacks("value", key)
			}
		}
	}
	if _, err := b.Threshold("film"); err != nil {
		lacks("threshold", "film")
	}
	for _, k := range criterionFuncs {
		if _, err := b.Criterion(k.key); err != nil {
			lacks("criterion", k.key)
		}
	}
	return fs
}

// ready returns the faults of the boat and of the book together.
func ready(b *tables.Book, boat Boat) error {
	return append(complete(b), boat.Check(b)...).Err()
}
