package weather_test

import (
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"
	"time"

	"boatyard.example/bottomwork/antifoul/weather"
	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/finding"
)

// Every rule id of rule.go is a row of rules_weather.toml, every row there is an id, and each is said here at least once, as a whole sentence whose
// bases name documents that the book holds.
func TestEveryRuleIsSaid(t *testing.T) {
	b := tables.Default()
	ids := func(file, pattern string) []string {
		text, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		var out []string
		for _, m := range regexp.MustCompile(pattern).FindAllStringSubmatch(string(text), -1) {
			out = append(out, m[1])
		}
		slices.Sort(out)
		return out
	}
	code, rows := ids("rule.go", `finding\.ID\s*= "([a-z-]+)"`), ids(filepath.Join("..", "..", "tables", "data", "rules_weather.toml"), `(?m)^key = "([a-z-]+)"`)
	if !slices.Equal(code, rows) {
		t.Errorf("in code %v\nin the registry %v", code, rows)
	}
	spray, err := b.Loss("air-spray")
	if err != nil {
		t.Fatal(err)
	}
	f, err := weather.Hourly(b, []weather.Day{{Date: date(t, 2027, 4, 10), LowC: 5, HighC: 10, HumidityPct: weather.Unknown()}}, time.UTC)
	if err != nil {
		t.Fatal(err)
	}
	all := f.Notes
	for _, hours := range [][]weather.Hour{mixed(8, 2000, 0.5), air(20, 20), air(34, 34), air(50, 50)} {
		k := at(t, b, hours, false).For(weather.Coat{Coating: coating(t, b, "ablative-cuprous-multi"), On: []tables.Material{material(t, b, "grp")}, By: spray, Falling: true})
		for i := range k.Len() {
			all = append(append(all, k.Why(i)...), k.WhyWets(i)...)
		}
	}
	said := map[finding.ID]bool{}
	for _, f := range all {
		said[f.Rule] = true
		for _, basis := range f.Basis {
			if basis.Source == "" {
				continue
			}
			if _, err := b.Source(basis.Source); err != nil {
				t.Fatalf("%s rests on %s: %v", f.Rule, basis.Source, err)
			}
		}
	}
	for _, id := range code {
		if !said[finding.ID(id)] {
			t.Errorf("nobody says %s", id)
		}
	}
	spoken(t, b, all)
}

func TestFactorsAreThere(t *testing.T) {
	_, errAt := weather.At(&tables.Book{}, nil, false)
	_, errDays := weather.Hourly(&tables.Book{}, nil, time.UTC)
	if errAt == nil || errDays == nil {
		t.Fatal("an empty book is enough")
	}
	for _, key := range weather.Factors() {
		if _, err := tables.Default().Factor(key); err != nil || !strings.Contains(errAt.Error()+errDays.Error(), key) {
			t.Errorf("%s: %v; nobody misses it in an empty book", key, err)
		}
	}
}
