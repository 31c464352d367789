package tables_test

import (
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
