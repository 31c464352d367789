package antifoul

import (
	"boatyard.example/bottomwork/antifoul/cost"
	"boatyard.example/bottomwork/antifoul/drag"
	"boatyard.example/bottomwork/antifoul/leach"
	"boatyard.example/bottomwork/antifoul/survey"
	"boatyard.example/bottomwork/antifoul/wear"
	"boatyard.example/bottomwork/antifoul/weather"
	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

// factors are the rows of the factor table that this package, compat and coverage ask for; wear.Factors and drag.Factors are those of
// the wear and of growth, weather.Factors those of an hour, cost.Factors that of a bill, survey.Factors those of a look at her, leach.Values the numbers of the release that a report tells.
var factors = []string{
	"abraded-film", "hard-film-speed", "day-hours", "day-setup", "launch-reserve", "late-coat", "stand-after", "abrade-after", "forecast-trust", "idle-bar", "lightness-step", "lightness-step-clear", "open-launch-days", "reckon-over", "work-hours-full", "comb-thick", "used-doubt", "log-dew-differs", "log-look-fresh",
	"area-guard", "area-differs", "area-outline-beams", "area-water-density", "pad-area", "patch-step", "profile-void", "pot-life-span", "pot-life-share", "stand-spacing", "block-spacing", "stand-pairs-least",
}

// tablesFile stands for the file in faults of the book.
const tablesFile = "the tables"

// complete returns a fault for each number and weight that the answer would need and the book does not hold, or that cannot be; the module's own tables
// hold all. A whole other book must give them: nothing is taken in their place.
func complete(b *tables.Book) finding.Faults {
	var fs finding.Faults
	lacks := func(table, key string) {
		fs = append(fs, finding.Fault{Kind: finding.ErrMissing, File: tablesFile, Key: table + "[" + key + "]", Want: "a row with this key, as the module's own tables have"})
	}
	for _, keys := range [][]string{factors, wear.Factors(), drag.Factors(), weather.Factors(), cost.Factors(), survey.Factors()} {
		for _, key := range keys {
			if !b.HasFactor(key) {
				lacks("factor", key)
			}
		}
	}
	for _, key := range leach.Values() {
		if _, err := b.Value(key); err != nil {
			lacks("value", key)
		}
	}
	cannot := func(key string, got float64, want string) {
		fs = append(fs, finding.Fault{Kind: finding.ErrImpossible, File: tablesFile, Key: key + ".value", Got: tables.Show(got, quantity.Metric), Want: want})
	}
	least := 0.0
	for _, key := range []string{"waste-density-least", "waste-density-most"} {
		v, err := b.Value(key)
		if err != nil {
			lacks("value", key)
			continue
		}
		if got := v.Value.Typical; got <= 0 || got < least {
			cannot("value["+key+"]", got, "more than zero, the most no less than the least")
		}
		least = max(least, v.Value.Typical)
	}
	for a := range b.Acceptances() {
		if a.Guide == "" { // a lookup that finds nothing costs more than all of this
			continue
		}
		if v, err := b.Value(a.Guide); err == nil && v.Value.Typical < 1 {
			cannot("value["+a.Guide+"]", v.Value.Typical, "1 or more: the multiple of the nominal film that a reading is held against")
		}
	}
	for _, most := range []struct {
		key   string
		value float64
	}{{"day-hours", 24}, {"profile-void", 1}} {
		if f, err := b.Factor(most.key); err == nil && f.Value.High > most.value {
			cannot("factor["+most.key+"]", f.Value.High, "at most "+tables.Show(most.value, quantity.Metric))
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
