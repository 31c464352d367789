package coverage_test

import (
	"fmt"
	"math/rand/v2"
	"slices"
	"testing"

	"boatyard.example/bottomwork/coverage"
	"boatyard.example/bottomwork/tables/quantity"
)

// tabled is the best way to one volume: what it costs, and how many cans of each size, the largest first.
type tabled struct {
	cost, cans int
	counts     [12]int
}

// ahead says whether a stands before b at the same volume.
func (a *tabled) ahead(b *tabled) bool {
	if b == nil || a.cost != b.cost {
		return b == nil || a.cost < b.cost
	}
	if a.cans != b.cans {
		return a.cans < b.cans
	}
	return slices.Compare(a.counts[:], b.counts[:]) > 0
}

// tableOf is the best way to each volume up to most, nil where there is none: size by size, with up to so many of each.
func tableOf(sizes, costs, limits []int, most int) []*tabled {
	table := make([]*tabled, most+1)
	table[0] = &tabled{}
	for i, size := range sizes {
		next := make([]*tabled, most+1)
		for v := range next {
			for n := 0; n <= limits[i] && n*size <= v; n++ {
				if from := table[v-n*size]; from != nil {
					with := tabled{from.cost + n*costs[i], from.cans + n, from.counts}
					with.counts[i] = n
					if with.ahead(next[v]) {
						next[v] = &with
					}
				}
			}
		}
		table = next
	}
	return table
}

// Sizes of whole litres can be put together in many ways that cost, hold and count alike. What is chosen is what a table of all volumes
// says, which is filled litre by litre and searches nothing.
func TestCansAgreeWithATable(t *testing.T) {
	rng := rand.New(rand.NewPCG(3, 5))
	ties := 0
	for n := range 1200 {
		mode := []string{"one price a litre", "one price a can", "any price", "no price", "store"}[n%5]
		var sizes, costs, limits []int
		for size := 12; size >= 1; size-- {
			if rng.IntN(5) < 2 {
				sizes = append(sizes, size)
			}
		}
		if len(sizes) == 0 {
			continue
		}
		held := 0
		var onSale, stock []coverage.Can
		for _, size := range sizes {
			cost, limit := 0, 100
			can := coverage.Can{Size: litre(t, fmt.Sprintf("%d L", size))}
			switch mode {
			case "one price a litre":
				cost = 7 * size
			case "one price a can":
				cost = 7
			case "any price":
				cost = size * (8 + rng.IntN(5))
			case "store":
				limit = 1 + rng.IntN(4)
				stock = append(stock, slices.Repeat([]coverage.Can{can}, limit)...)
			}
			if cost > 0 {
				can.Price = money(t, fmt.Sprintf("%d EUR", cost))
			}
			if mode != "store" {
				onSale = append(onSale, can)
			}
			held += size * limit
			costs, limits = append(costs, cost), append(limits, limit)
		}
		need := 1 + rng.IntN(min(held, 60))
		most := min(held, need+sizes[0]-1) // a can less would do of any choice that holds more
		if mode == "no price" {
			ways := tableOf(sizes, costs, limits, need+sizes[0])[need:]
			least := need + slices.IndexFunc(ways, func(w *tabled) bool { return w != nil })
			most = least + sizes[len(sizes)-1]
			for i := range costs {
				costs[i] = 1
			}
		}
		var want *tabled
		for _, c := range tableOf(sizes, costs, limits, most)[need:] {
			if c != nil && (want == nil || c.cost < want.cost) { // at one cost the smaller volume stays
				want = c
			}
		}
		got, err := coverage.Cans(litre(t, fmt.Sprintf("%d L", need)), onSale, stock)
		if err != nil {
			t.Fatal(err)
		}
		var is [12]int
		for _, it := range slices.Concat(got.Items, got.FromStock) {
			is[slices.Index(sizes, int(it.Can.Size.Float(quantity.Litre)))] += it.Count
		}
		if is != want.counts {
			t.Fatalf("case %d, %s: %d L of %v at %v, at most %v: %v, want %v", n, mode, need, sizes, costs, limits, is, want.counts)
		}
		if want.cans > 2 && len(sizes) > 3 {
			ties++
		}
	}
	if ties < 300 {
		t.Errorf("only %d cases of many ways", ties)
	}
}
