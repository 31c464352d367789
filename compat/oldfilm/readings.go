package oldfilm

import (
	"fmt"
	"slices"

	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/entry"
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

// Readings are what was read of the old film on one zone. Whatever is not given was not read.
type Readings struct {
	Flaking     quantity.Share // of the zone's area
	Adhesion    string         // class of the X-cut, "5A" whole to "0A" gone
	Alligatored quantity.Share // of the zone's area
	Film        quantity.Range[quantity.Film]
	Blisters    string // quantity class, "0" to "5"
	Rust        string // grade, "Ri 0" to "Ri 5"
	Moisture    string // how the readings at marked spots go: falling, steady or rising
}

// reading is one reading as a number of its threshold's unit, from its better end to its worse one.
type reading struct {
	key           string // row of the threshold table
	shown         any
	better, worse float64
}

// moistures are the words of Readings.Moisture.
var moistures = []string{"falling", "steady", "rising"}

// classes are the words of readings that are classes, by threshold, each in the order of the number that it stands for.
var classes = map[string][]string{
	"adhesion": {"0A", "1A", "2A", "3A", "4A", "5A"},
	"blisters": {"0", "1", "2", "3", "4", "5"},
	"rust":     {"Ri 0", "Ri 1", "Ri 2", "Ri 3", "Ri 4", "Ri 5"},
}

// Given reports whether anything was read.
func (r Readings) Given() bool { return len(r.all()) > 0 || r.Moisture != "" }

// all lists the readings that are given; a word that is no class is left out, see Check.
func (r Readings) all() []reading {
	var out []reading
	share := func(key string, s quantity.Share) {
		if s.Given() {
			p := s.Float(quantity.Percent)
			out = append(out, reading{key, s, p, p})
		}
	}
	class := func(key, word string) {
		if i := slices.Index(classes[key], word); i >= 0 {
			out = append(out, reading{key, word, float64(i), float64(i)})
		}
	}
	share("flaking", r.Flaking)
	class("adhesion", r.Adhesion)
	share("alligatored", r.Alligatored)
	if r.Film.Low.Given() {
		out = append(out, reading{"film", r.Film, r.Film.Low.Float(quantity.Micrometre), r.Film.High.Float(quantity.Micrometre)})
	}
	class("blisters", r.Blisters)
	class("rust", r.Rust)
	return out
}

// Check returns the faults of the readings, with keys relative to them.
func (r Readings) Check(b *tables.Book) finding.Faults {
	var fs finding.Faults
	bad := func(kind error, key, got, want string) {
		fs = append(fs, finding.Fault{Kind: kind, Key: key, Got: got, Want: want})
	}
	for key, word := range map[string]string{"adhesion": r.Adhesion, "blisters": r.Blisters, "rust": r.Rust} {
		if word != "" && !slices.Contains(classes[key], word) {
			bad(finding.ErrValue, key, entry.Describe(word), fmt.Sprintf("one of %v", classes[key]))
		}
	}
	if r.Moisture != "" && !slices.Contains(moistures, r.Moisture) {
		bad(finding.ErrValue, "moisture", entry.Describe(r.Moisture), "one of falling, steady, rising")
	}
	if f := r.Film; f.Low.Given() && (f.Low.Cmp(f.Typical) > 0 || f.Typical.Cmp(f.High) > 0) {
		bad(finding.ErrImpossible, "film", quantity.ShowRange(f, quantity.Metric), "low, typical and high in rising order")
	}
	for _, x := range r.all() {
		t, err := b.Threshold(x.key)
		if err != nil {
			bad(finding.ErrMissing, x.key, tables.Show(x.shown, quantity.Metric), "a row of the threshold table with this key")
			continue
		}
		if x.better < t.Least || x.worse > t.Most {
			bad(finding.ErrImpossible, x.key, tables.Show(x.shown, quantity.Metric), fmt.Sprintf("a reading from %g to %g %s", t.Least, t.Most, t.Unit))
		}
	}
	return fs
}
