package antifoul_test

import (
	"strings"
	"testing"

	"boatyard.example/bottomwork/antifoul"
	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/quantity"
)

// The ends of the spans that an owner may wish for belong to them.
func TestWishesOnTheirEnds(t *testing.T) {
	month := quantity.Month.N
	for _, c := range []struct {
		key    string
		set    func(w *antifoul.Wishes, m quantity.Months)
		months map[int64]bool // taken or not
	}{
		{"repaint_after", func(w *antifoul.Wishes, m quantity.Months) { w.RepaintAfter = m }, map[int64]bool{-1: false, 0: false, 1: true, 240: true, 241: false}},
		{"reckon_over", func(w *antifoul.Wishes, m quantity.Months) { w.ReckonOver = m }, map[int64]bool{0: false, 11: false, 12: true, 600: true, 601: false}},
	} {
		for n, taken := range c.months {
			var x antifoul.Boat
			c.set(&x.Wishes, month(n))
			told := false
			for _, f := range x.Check(tables.Default()) {
				told = told || strings.HasSuffix(f.Key, c.key)
			}
			if told == taken {
				t.Errorf("%s of %d months: refused %t", c.key, n, told)
			}
		}
	}
}
