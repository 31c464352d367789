package antifoul_test

import (
	"errors"
	"os"
	"strings"
	"testing"
	"testing/fstest"

	"boatyard.example/bottomwork/antifoul"
	"boatyard.example/bottomwork/antifoul/leach"
	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/finding"
)

// A whole other book that lacks the numbers and weights that the answer needs is refused with every one of them named.
func TestABookWithoutNumbers(t *testing.T) {
	whole := tables.Default()
	files := fstest.MapFS{}
	entries, err := os.ReadDir("../tables/data")
	if err != nil {
		t.Fatal(err)
	}
	for _, e := range entries {
		if e.IsDir() || strings.HasPrefix(e.Name(), "factors_") || e.Name() == "wear.toml" || e.Name() == "criteria.toml" || e.Name() == "acceptances.toml" || e.Name() == "observations.toml" || e.Name() == "thresholds.toml" { // the last two rest on rows of the folder below
			continue
		}
		text, err := os.ReadFile("../tables/data/" + e.Name())
		if err != nil {
			t.Fatal(err)
		}
		files[e.Name()] = &fstest.MapFile{Data: text}
	}
	bare, err := tables.Load(files)
	if err != nil {
		t.Fatal(err)
	}
	x, err := antifoul.ReadBoatWith(whole, fstest.MapFS{"boat.toml": {Data: []byte(base)}}, "boat.toml")
	if err != nil {
		t.Fatal(err)
	}
	coverageFactors, err := os.ReadFile("../tables/data/factors_coverage.toml")
	if err != nil {
		t.Fatal(err)
	}
	for name, ask := range map[string]func() error{
		"Rank":    func() error { _, err := antifoul.Rank(bare, x); return err },
		"Plan":    func() error { _, err := antifoul.Plan(bare, x); return err },
		"Specify": func() error { _, err := antifoul.Specify(bare, x, "hull", tables.Coating{}); return err },
	} {
		err := ask()
		if !errors.Is(err, finding.ErrMissing) {
			t.Errorf("%s with a bare book: %v", name, err)
			continue
		}
		for f := range whole.Factors() {
			ofCoverage := strings.Contains(string(coverageFactors), "key = \""+f.Key+"\"") // coverage asks for these itself
			if !ofCoverage && !strings.Contains(err.Error(), "factor["+f.Key+"]") {
				t.Errorf("%s does not name factor[%s]", name, f.Key)
			}
		}
		for _, key := range append(leach.Values(), "waste-density-least", "waste-density-most") {
			if !strings.Contains(err.Error(), "value["+key+"]") {
				t.Errorf("%s does not name value[%s]", name, key)
			}
		}
		if strings.Contains(err.Error(), "value[waste-density-least].value") {
			t.Errorf("%s: a number that is missing is no number that cannot be", name)
		}
		if !strings.Contains(err.Error(), "threshold[film]") {
			t.Errorf("%s does not name the threshold", name)
		}
		for c := range whole.Criteria() {
			if !strings.Contains(err.Error(), "criterion["+c.Key+"]") {
				t.Errorf("%s does not name criterion[%s]", name, c.Key)
			}
		}
	}
	if _, err := antifoul.Plan(&tables.Book{}, x); err == nil {
		t.Error("an empty book plans a boat")
	}
}

// An own number that cannot be is refused before it makes waste of less than nothing or days without an end.
func TestOwnNumbersThatCannotBe(t *testing.T) {
	boat, err := antifoul.ReadBoat(fstest.MapFS{"boat.toml": {Data: []byte(base)}}, "boat.toml")
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct{ table, key, value, fault string }{
		{"value", "waste-density-least", "0", "value[waste-density-least].value"},
		{"value", "waste-density-most", "-2", "value[waste-density-most].value"},
		{"value", "waste-density-most", "1", "value[waste-density-most].value"}, // below the least
		{"value", "waste-density-most", "3", ""},
		{"value", "waste-density-most", "1.8", ""}, // as the least
		{"value", "waste-density-least", "0.5", ""},
		{"factor", "day-hours", "24.5", "factor[day-hours].value"},
		{"factor", "day-hours", "24", ""},
		{"factor", "profile-void", "1.1", "factor[profile-void].value"},
	} {
		own := "[[" + c.table + "]]\nkey = \"" + c.key + "\"\nbasis = \"own table\"\nsource = \"yard\"\nvalue = " + c.value + "\n"
		b, err := tables.Default().With(fstest.MapFS{"own.toml": {Data: []byte(own)}})
		if err != nil {
			t.Fatal(err)
		}
		_, err = antifoul.Plan(b, boat)
		fs, _ := errors.AsType[finding.Faults](err)
		if c.fault == "" && err != nil || c.fault != "" && (len(fs) != 1 || fs[0].Key != c.fault || !errors.Is(err, finding.ErrImpossible)) {
			t.Errorf("%s = %s: %v", c.key, c.value, err)
		}
	}
	for a := range tables.Default().Acceptances() {
		if a.Guide == "" {
			continue
		}
		for value, good := range map[string]bool{"0.5": false, "0.99": false, "1": true, "1.5": true} {
			own := "[[value]]\nkey = \"" + a.Guide + "\"\nbasis = \"own table\"\nsource = \"yard\"\nvalue = " + value + "\n"
			b, err := tables.Default().With(fstest.MapFS{"own.toml": {Data: []byte(own)}})
			if err != nil {
				t.Fatal(err)
			}
			if _, err := antifoul.Plan(b, boat); (err == nil) != good || err != nil && !strings.Contains(err.Error(), "value["+a.Guide+"].value") {
				t.Errorf("%s = %s: %v", a.Guide, value, err)
			}
		}
	}
}
