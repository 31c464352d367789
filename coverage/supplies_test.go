package coverage_test

import (
	"math"
	"testing"

	"boatyard.example/bottomwork/coverage"
	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

// Each way of counting, worked by hand from rows of our own: 3 coats of one-pack on 20 m2 and 2 of two-pack on 10 m2, two hands, 4 days.
func TestSuppliesByHand(t *testing.T) {
	rows := ""
	row := func(key, unit, per, more, rate string) {
		rows += "[[supply]]\nkey = \"" + key + "\"\nname = \"" + key + "\"\nunit = \"" + unit + "\"\nper = \"" + per + "\"\nrate = " + rate + "\n" + more + "\nbasis = \"invented\"\n"
	}
	row("x-coat", "piece", "coat", "", "[1, 2, 3]")                        // 5 × 2 = 10
	row("x-two", "piece", "coat", "packs = 2", "2")                        // 2 × 2 = 4
	row("x-water", "piece", "coat", "carrier = [\"water\"]", "2")          // 0: left out
	row("x-hand", "piece", "hand and coat", "", "1")                       // 5 × 2 hands = 10
	row("x-day", "pair", "hand and day", "", "[2, 2.1, 3]")                // 2 × 4 × 2.1 = 16.8: 17
	row("x-coated", "L", "square metre coated", "", "0.01")                // 3 × 20 + 2 × 10 = 80: 0.8: 1
	row("x-outline", "m", "metre of outline", "", "[1, 2, 3]")             // 2 × 20 = 40
	row("x-plan", "m2", "square metre of plan", "", "1.5")                 // 30 × 1.5 = 45
	row("x-waste", "kg", "kilogram of waste", "", "0.1")                   // (10 + 31) ÷ 2 × 0.1 = 2.05: 3
	row("x-abrade", "piece", "abrade", "", "0.4")                          // 25 × 0.4 = 10: on the whole number
	row("x-strip", "piece", "strip", "", "1")                              // none stripped: left out
	row("x-brush-only", "piece", "coat", "by = [\"brush\"]", "1")          // by roller: left out
	row("x-roller-only", "piece", "coat", "by = [\"roller\"]", "0.200001") // 1.000005: 2
	b := with(t, book(t), rows)
	one, two := coating(t, "50 %"), coating(t, "50 %")
	one.Packs, one.Carrier, two.Packs, two.Carrier = 1, "solvent", 2, "solvent"
	exact := func(s string) quantity.Range[quantity.Area] { return quantity.Exactly(area(t, s)) }
	w := coverage.Work{
		Coats: []coverage.Coated{{one, 3, exact("20 m2")}, {two, 2, exact("10 m2")}},
		Areas: map[finding.Action]quantity.Range[quantity.Area]{finding.Abrade: exact("25 m2")},
		Hands: 2, Days: quantity.Range[float64]{Low: 3, Typical: 4, High: 6},
		Outline: quantity.Exactly(length(t, "20 m")), Plan: area(t, "30 m2"),
		Waste: quantity.Range[quantity.Mass]{Low: quantity.Kilogram.N(10), High: quantity.Kilogram.N(31)},
	}
	uses := map[string][3]float64{ // both ends, the low rate with the low driver
		"x-coat": {5, 10, 15}, "x-hand": {10, 10, 10}, "x-day": {2 * 2 * 3, 2 * 2.1 * 4, 2 * 3 * 6}, "x-coated": {0.8, 0.8, 0.8}, "x-waste": {1, 2.05, 3.1},
	}
	want := map[string]int{"x-coat": 10, "x-two": 4, "x-hand": 10, "x-day": 17, "x-coated": 1, "x-outline": 40, "x-plan": 45, "x-waste": 3, "x-abrade": 10, "x-roller-only": 2}
	got := map[string]int{}
	for _, s := range coverage.Supplies(b, w, coverage.Method{By: "roller"}) {
		if s.Supply.Key[:2] == "x-" {
			got[s.Supply.Key] = s.Buy
			if u, ok := uses[s.Supply.Key]; ok && math.Abs(s.Uses.Low-u[0])+math.Abs(s.Uses.Typical-u[1])+math.Abs(s.Uses.High-u[2]) > 1e-9 {
				t.Errorf("%s: uses %+v, want %v", s.Supply.Key, s.Uses, u)
			}
		}
		if s.Uses.Low > s.Uses.Typical || s.Uses.Typical > s.Uses.High || float64(s.Buy) < s.Uses.Typical-1e-6 {
			t.Errorf("%s: %+v buys %d", s.Supply.Key, s.Uses, s.Buy)
		}
	}
	for key, n := range want {
		if got[key] != n {
			t.Errorf("%s: %d, want %d", key, got[key], n)
		}
	}
	for key := range got {
		if want[key] == 0 {
			t.Errorf("%s is not wanted", key)
		}
	}
	// One hand and no hand said are one.
	for _, hands := range []int{0, 1} {
		w.Hands = hands
		for _, s := range coverage.Supplies(b, w, coverage.Method{By: "roller"}) {
			if s.Supply.Key == "x-hand" && s.Buy != 5 {
				t.Errorf("%d hands: %d, want 5", hands, s.Buy)
			}
		}
	}
	if all := coverage.Supplies(b, coverage.Work{}, coverage.Method{By: "roller"}); len(all) != 0 {
		t.Errorf("no work uses up %v", all)
	}
}

// 2 × 9.6 + 0.3, 0.6, 1.0 × 3.2 = 20.16, 21.12, 22.4, up: 20.2, 21.2, 22.4 m; two hulls twice that, before rounding.
func TestOutline(t *testing.T) {
	b := book(t)
	h := hull(t, "fin-keel-yacht", "9.6 m", "3.2 m", "1.75 m")
	got, err := coverage.Outline(b, h)
	if err != nil || rangeText(got) != "20.2 m, 21.2 m, 22.4 m" {
		t.Errorf("%s %v", rangeText(got), err)
	}
	h.Hulls = 2
	if got, _ = coverage.Outline(b, h); rangeText(got) != "40.4 m, 42.3 m, 44.8 m" {
		t.Errorf("two hulls: %s", rangeText(got))
	}
	h.Kind = "twin-hull" // of which somebody paints one
	for hulls, want := range map[int]string{0: "40.4 m, 42.3 m, 44.8 m", 1: "20.2 m, 21.2 m, 22.4 m", 2: "40.4 m, 42.3 m, 44.8 m"} {
		h.Hulls = hulls
		if got, err = coverage.Outline(b, h); rangeText(got) != want || err != nil {
			t.Errorf("%d hulls said of a boat of two: %s, %v; want %s", hulls, rangeText(got), err, want)
		}
	}
	if got, err = coverage.Outline(b, coverage.Hull{}); got.Typical.Given() || err != nil {
		t.Errorf("no lengths: %v %v", got, err)
	}
	for _, half := range []coverage.Hull{{Length: h.Length}, {Beam: h.Beam}} {
		if got, err = coverage.Outline(b, half); got.Typical.Given() || err != nil {
			t.Errorf("one length of the two: %v %v", got, err)
		}
	}
	if _, err = coverage.Outline(&tables.Book{}, h); err == nil {
		t.Error("a book without the factor")
	}
}
