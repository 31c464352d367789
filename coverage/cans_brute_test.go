package coverage_test

import (
	"fmt"
	"math/big"
	"math/rand/v2"
	"strings"
	"testing"

	"boatyard.example/bottomwork/coverage"
	"boatyard.example/bottomwork/tables/quantity"
)

// The brute force below tries every number of every size and shares nothing with the search: it reckons in fractions.

type brute struct {
	size, price *big.Rat // price nil: not given
	most        int      // how many there are at most
	label       string
}

type tried struct {
	cost, volume *big.Rat
	cans         int
	counts       []int // largest size first
}

// better is the order of Cans: cost, volume, cans, larger cans first.
func better(a, b *tried) bool {
	if c := a.cost.Cmp(b.cost); c != 0 {
		return c < 0
	}
	if c := a.volume.Cmp(b.volume); c != 0 {
		return c < 0
	}
	if a.cans != b.cans {
		return a.cans < b.cans
	}
	for i := range a.counts {
		if a.counts[i] != b.counts[i] {
			return a.counts[i] > b.counts[i]
		}
	}
	return false
}

// all calls yield with every choice that holds the need, each with the fewest of the last size.
func all(sizes []brute, need *big.Rat, yield func(*tried)) {
	counts := make([]int, len(sizes))
	var rec func(i int, volume *big.Rat)
	rec = func(i int, volume *big.Rat) {
		if volume.Cmp(need) >= 0 || i == len(sizes) {
			if volume.Cmp(need) < 0 {
				return
			}
			t := &tried{cost: new(big.Rat), volume: new(big.Rat).Set(volume), counts: append([]int(nil), counts...)}
			for j, n := range counts {
				t.cans += n
				if sizes[j].price != nil {
					t.cost.Add(t.cost, new(big.Rat).Mul(sizes[j].price, big.NewRat(int64(n), 1)))
				}
			}
			yield(t)
			return
		}
		v := new(big.Rat).Set(volume)
		for n := 0; n <= sizes[i].most; n++ {
			counts[i] = n
			rec(i+1, v)
			if v.Cmp(need) >= 0 {
				break
			}
			v = new(big.Rat).Add(v, sizes[i].size)
		}
		counts[i] = 0
	}
	rec(0, new(big.Rat))
}

// bruteBuy is the best choice from sale, by the prices, or without them by the rule for cans without a price.
func bruteBuy(sale []brute, need *big.Rat, priced bool) *tried {
	var best *tried
	if priced {
		all(sale, need, func(t *tried) {
			if best == nil || better(t, best) {
				best = t
			}
		})
		return best
	}
	var least *big.Rat
	all(sale, need, func(t *tried) {
		if least == nil || t.volume.Cmp(least) < 0 {
			least = t.volume
		}
	})
	if least == nil {
		return nil
	}
	most := new(big.Rat).Add(least, sale[len(sale)-1].size)
	all(sale, need, func(t *tried) {
		t.cost = big.NewRat(int64(t.cans), 1)
		if t.volume.Cmp(most) <= 0 && (best == nil || better(t, best)) {
			best = t
		}
	})
	return best
}

// sizes of the random cases, the largest first, in nanolitres.
var bruteSizes = []struct {
	text string
	nl   int64
}{
	{"20 L", 20_000_000_000},
	{"5 US gal", 18_927_058_920},
	{"10 L", 10_000_000_000},
	{"5 L", 5_000_000_000},
	{"1 imp gal", 4_546_090_000},
	{"1 US gal", 3_785_411_784},
	{"2.5 L", 2_500_000_000},
	{"1 L", 1_000_000_000},
	{"1 US qt", 946_352_946},
	{"0.75 L", 750_000_000},
	{"375 mL", 375_000_000},
}

func TestCansAgreeWithBruteForce(t *testing.T) {
	rng := rand.New(rand.NewPCG(1, 2))
	litres := func(nl int64) *big.Rat { return big.NewRat(nl, 1_000_000_000) }
	kinds := map[string]int{}
	for n := range 4000 {
		var onSale, stock []coverage.Can
		var sale, store []brute
		mode := []string{"dear and cheap", "one price a litre", "no price", "some prices", "big ones dearer"}[n%5]
		perm := rng.Perm(len(bruteSizes))[:1+rng.IntN(4)]
		picked := map[int]bool{}
		for _, i := range perm {
			picked[i] = true
		}
		for i, s := range bruteSizes { // keeps the largest first
			if !picked[i] {
				continue
			}
			cents := int64(0)
			perLitre := s.nl / 10_000_000 // cents at 1.00 a litre, cut
			switch mode {
			case "dear and cheap", "some prices":
				cents = 1 + perLitre*(15+rng.Int64N(20))
			case "one price a litre":
				cents = s.nl / 1_000_000 // only even sizes come out exactly proportional
			case "big ones dearer":
				cents = perLitre * (10 + int64(len(bruteSizes)-i)*2)
			}
			can := coverage.Can{Size: litre(t, s.text)}
			b := brute{size: litres(s.nl), most: 1 << 30, label: s.text}
			if mode != "no price" && (mode != "some prices" || len(onSale) > 0) {
				can.Price = money(t, fmt.Sprintf("%d.%02d EUR", cents/100, cents%100))
				b.price = big.NewRat(cents, 100)
			}
			onSale, sale = append(onSale, can), append(sale, b)
		}
		priced := mode != "no price" && mode != "some prices"
		for _, s := range bruteSizes {
			if c := rng.IntN(12) - 9; c > 0 {
				for range c {
					stock = append(stock, coverage.Can{Size: litre(t, s.text)})
				}
				store = append(store, brute{size: litres(s.nl), most: c, label: s.text})
			}
		}
		if rng.IntN(3) == 0 {
			stock, store = nil, nil
		}
		rng.Shuffle(len(onSale), func(i, j int) { onSale[i], onSale[j] = onSale[j], onSale[i] })
		rng.Shuffle(len(stock), func(i, j int) { stock[i], stock[j] = stock[j], stock[i] })

		cl := 1 + rng.Int64N(1800) // hundredths of a litre
		need := litre(t, fmt.Sprintf("%d.%02d L", cl/100, cl%100))
		want := big.NewRat(cl, 100)

		held := new(big.Rat)
		for _, s := range store {
			held.Add(held, new(big.Rat).Mul(s.size, big.NewRat(int64(s.most), 1)))
		}
		var fromStock, bought *tried
		if held.Cmp(want) >= 0 {
			all(store, want, func(c *tried) {
				if fromStock == nil || better(c, fromStock) {
					fromStock = c
				}
			})
			kinds["store suffices"]++
		} else {
			fromStock = &tried{}
			for _, s := range store {
				fromStock.counts = append(fromStock.counts, s.most)
			}
			bought = bruteBuy(sale, new(big.Rat).Sub(want, held), priced)
			kinds[mode]++
		}

		got, err := coverage.Cans(need, onSale, stock)
		if err != nil {
			t.Fatalf("case %d, %s: %v", n, mode, err)
		}
		if g, w := list(got.FromStock), listTried(store, fromStock); g != w {
			t.Fatalf("case %d, %s, need %s, store %v: takes %s, want %s", n, mode, need, stock, g, w)
		}
		if g, w := list(got.Items), listTried(sale, bought); g != w {
			t.Fatalf("case %d, %s, need %s, on sale %v, store %v: buys %s, want %s", n, mode, need, onSale, stock, g, w)
		}
		if got.Left.Sign() < 0 || !got.Total.Equal(got.Need.Add(got.Left)) {
			t.Fatalf("case %d: total %s, need %s, left %s", n, got.Total, got.Need, got.Left)
		}
		if got.Cost.Given() != priced {
			t.Fatalf("case %d: cost %s, priced %t", n, got.Cost, priced)
		}
		if priced && bought != nil {
			if w, _ := new(big.Rat).SetString(got.Cost.Amount().String()); w.Cmp(bought.cost) != 0 {
				t.Fatalf("case %d: cost %s, want %s", n, got.Cost, bought.cost.FloatString(2))
			}
		}
	}
	for k, n := range kinds {
		if n < 200 {
			t.Errorf("only %d cases of %s", n, k)
		}
	}
	if len(kinds) != 6 {
		t.Errorf("kinds of cases %v, want six", kinds)
	}
}

func list(items []coverage.Item) string {
	var s strings.Builder
	for _, it := range items {
		fmt.Fprintf(&s, "%d × %s; ", it.Count, it.Can.Size)
	}
	return s.String()
}

func listTried(sizes []brute, c *tried) string {
	var s strings.Builder
	if c == nil {
		return ""
	}
	for i, n := range c.counts {
		if n > 0 {
			fmt.Fprintf(&s, "%d × %s; ", n, sizes[i].label)
		}
	}
	return s.String()
}

// tenSizes with prices a litre that differ by a few per cent, as in a catalogue.
func tenSizes(tb testing.TB, price func(litres float64) float64) []coverage.Can {
	tb.Helper()
	var out []coverage.Can
	for _, s := range []string{"0.375 L", "0.75 L", "1 L", "2.5 L", "5 L", "10 L", "20 L", "1 US qt", "1 US gal", "5 US gal"} {
		v := litre(tb, s)
		c := coverage.Can{Size: v}
		if price != nil {
			cents := int64(price(v.Float(quantity.Litre))*100 + 0.5)
			c.Price = money(tb, fmt.Sprintf("%d.%02d EUR", cents/100, cents%100))
		}
		out = append(out, c)
	}
	return out
}

func BenchmarkCans(b *testing.B) {
	for _, c := range []struct {
		name  string
		price func(float64) float64
	}{
		{"NoPrice", nil},
		{"BigCheaper", func(l float64) float64 { return l * (40 - l/2) }},
		{"BigDearer", func(l float64) float64 { return l * (30 + l/2) }},
		{"OnePrice", func(l float64) float64 { return 20 * l }},
	} {
		b.Run(c.name, func(b *testing.B) {
			cans := tenSizes(b, c.price)
			need := litre(b, "500.01 L")
			for b.Loop() {
				if _, err := coverage.Cans(need, cans, nil); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}
