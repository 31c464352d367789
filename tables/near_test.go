package tables_test

import (
	"fmt"
	"maps"
	"slices"
	"testing"

	"boatyard.example/bottomwork/tables"
)

// The laws near some places are those of the book that lie in one of them, or in whose place one of them lies, in the order of the book.
func TestLawsNear(t *testing.T) {
	b := tables.Default()
	above := func(place string) []string {
		out := []string{tables.World}
		for {
			p, err := b.Place(place)
			if err != nil || slices.Contains(out, place) {
				return out
			}
			out, place = append(out, place), p.Within
		}
	}
	var keys []string
	for p := range b.Places() {
		keys = append(keys, p.Key)
	}
	far := 0
	for i, key := range keys {
		for _, places := range [][]string{{key}, {key, keys[(i*7+3)%len(keys)]}} {
			var got, want []string
			for l := range b.LawsNear(places) {
				got = append(got, l.Key)
			}
			all := 0
			for l := range b.Laws() {
				all++
				if slices.ContainsFunc(places, func(p string) bool { return l.LiesIn(p) || slices.Contains(above(p), l.Place) }) {
					want = append(want, l.Key)
				}
			}
			if !slices.Equal(got, want) {
				t.Errorf("near %v: %v, want %v", places, got, want)
			}
			far += all - len(got)
		}
	}
	if far == 0 {
		t.Error("every law is near every place")
	}
	n := 0
	for range b.LawsNear([]string{"GB", "no such place"}) {
		n++
	}
	for range b.Laws() {
		n--
	}
	if n != 0 {
		t.Errorf("near a place that nobody knows are %d laws more than there are", n)
	}
	for range b.LawsNear([]string{"GB"}) { // whoever has enough may stop
		break
	}
}

// A law tells what its row gives: of what it does not give there is no fact.
func TestFactsOfALaw(t *testing.T) {
	one := good()["law"]
	one["key"], one["basis"], one["source"] = `"x"`, `"own table"`, `"letter"`
	all := maps.Clone(one)
	maps.Copy(all, fields{
		"key": `"y"`, "name": `"Y"`, "doubt": `"a draft"`, "from": `2026-01-01`, "to": `2027-12-31`, "copper_max": `"0.5 %"`, "release_max": `"9.5 ug/cm2/d"`, "within": `"60 months"`,
	})
	b := with(t, row("law", one)+row("law", all))
	for l := range b.Laws() {
		want := map[string][]string{
			"x": {"law x", "says no", "place the world", "read 2026-11-25"},
			"y": {
				"law Y", "says no", "place the world", "from 2026-01-01", "to 2027-12-31", "content 0.5 %", "release 9.5 ug/cm2/d", "within 60 months", "read 2026-11-25",
				"doubt a draft",
			},
		}[l.Key]
		if want == nil {
			continue
		}
		var got []string
		for f := range l.Facts() {
			got = append(got, fmt.Sprintf("%s %v", f.Name, f.Value))
		}
		if !slices.Equal(got, want) {
			t.Errorf("law %s tells %q, want %q", l.Key, got, want)
		}
	}
}
