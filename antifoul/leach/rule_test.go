package leach

import (
	"slices"
	"strings"
	"testing"

	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

// Every rule says a whole sentence in both systems, over every coating of the tables and limits on every side.
func TestEveryRuleSaysASentence(t *testing.T) {
	b := tables.Default()
	said := map[finding.ID]bool{}
	for c := range b.Coatings() {
		r, err := Mean(b, c, quantity.Exactly(quantity.Micrometre.N(100)), 12)
		if err != nil {
			t.Fatal(err)
		}
		all := slices.Clone(r.Findings)
		for _, n := range []int64{1, 15, 100} {
			all = append(all, Against(r, Cap{Place: "a place", Law: "a law", Max: quantity.MicrogramPerSquareCentimetreDay.N(n)})...)
		}
		for _, f := range all {
			said[f.Rule] = true
			for _, s := range []quantity.System{quantity.Metric, quantity.US} {
				text := b.Say(f, s)
				if strings.ContainsAny(text, "{}") || strings.Contains(text, "not stated") || strings.Contains(text, "not given") || strings.Contains(text, "e+") || !strings.HasSuffix(text, ".") {
					t.Errorf("%s: %q", f.Rule, text)
				}
			}
		}
	}
	for r := range b.Rules() {
		if strings.HasPrefix(string(r.ID), "leach-") && !said[r.ID] {
			t.Errorf("no finding of %s", r.ID)
		}
	}
}
