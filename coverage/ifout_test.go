package coverage_test

import (
	"fmt"
	"math/big"
	"math/rand/v2"
	"strings"
	"testing"

	"boatyard.example/bottomwork/coverage"
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

// substitutes says "2.5 L: 2 × 1 L; 20 EUR left 0 L | 1 L: none".
func substitutes(subs []coverage.Substitute) string {
	var out []string
	for _, s := range subs {
		text := s.Out.String() + ": none"
		if !s.None {
			text = fmt.Sprintf("%s: %s%s left %s", s.Out, list(s.Instead.Items), s.Instead.Cost, s.Instead.Left)
		}
		out = append(out, text)
	}
	return strings.Join(out, " | ")
}

func TestIfOutByHand(t *testing.T) {
	for _, c := range []struct{ what, need, sale, stock, want string }{
		// Best: 5 + 2.5 L for 115. Without 5 L: 3 × 2.5 L for 120 holds 7.5 L. Without 2.5 L: 2 × 5 L for 150 leaves 2.5 L.
		{"two sizes bought", "7.5 L", "2.5 L 40 EUR, 5 L 75 EUR", "", "5 L: 3 × 2.5 L; 120 EUR left 0.0 L | 2.5 L: 2 × 5 L; 150 EUR left 2.5 L"},
		{"one size on sale", "7.5 L", "2.5 L 40 EUR", "", "2.5 L: none"},
		{"the same size in two units is out together", "2 L", "1 L 10 EUR, 1000 mL 9 EUR", "", "1000 mL: none"},
		// 3 L are missing: the least is 4 × 0.75 L, and up to 3.75 L is allowed, so 2.5 + 0.75 L in two cans. Without 2.5 L only
		// 4 × 0.75 L, without 0.75 L only 2 × 2.5 L.
		{"no prices, store counts", "4 L", "0.75 L, 2.5 L", "1 L", "2.5 L: 4 × 0.75 L; not given left 0.00 L | 0.75 L: 2 × 2.5 L; not given left 2.0 L"},
		// Not all have a price, so the fewest cans: 1 × 5 L. Without it all have one: 2 × 2.5 L for 80.
		{"the others have prices", "5 L", "2.5 L 40 EUR, 5 L", "", "5 L: 2 × 2.5 L; 80 EUR left 0.0 L"},
		{"the store suffices", "1 L", "2.5 L 40 EUR", "1 L", ""},
		{"the store suffices, nothing on sale", "1 L", "", "1 L", ""},
	} {
		t.Run(c.what, func(t *testing.T) {
			got, err := coverage.IfOut(litre(t, c.need), cans(t, c.sale), cans(t, c.stock))
			if err != nil {
				t.Fatal(err)
			}
			if g := substitutes(got); g != c.want {
				t.Errorf("%s\nwant %s", g, c.want)
			}
		})
	}
}

func TestIfOutFaults(t *testing.T) {
	got, err := coverage.IfOut(quantity.Volume{}, cans(t, "1 L, 0 L"), cans(t, "-1 L"))
	hasFault(t, err, finding.ErrMissing, "need")
	hasFault(t, err, finding.ErrImpossible, "on_sale[2]")
	hasFault(t, err, finding.ErrImpossible, "stock[1]")
	if got != nil {
		t.Errorf("%v beside an error", got)
	}
	_, err = coverage.IfOut(litre(t, "1 L"), nil, nil)
	hasFault(t, err, finding.ErrMissing, "on_sale")
	// With the even can the answer is simple; without it the odd ones have too many combinations, and that is said.
	odd := cans(t, "500 L, 130.0003 mL, 170.0007 mL, 190.0013 mL, 230.0029 mL, 290.0031 mL, 310.0037 mL")
	if _, err := coverage.Cans(litre(t, "500 L"), odd, nil); err != nil {
		t.Errorf("with the even can: %v", err)
	}
	_, err = coverage.IfOut(litre(t, "500 L"), odd, nil)
	hasFault(t, err, finding.ErrImpossible, "on_sale")
}

// The brute force tries everything for the best purchase, and again without each size that it buys.
func TestIfOutAgreesWithBruteForce(t *testing.T) {
	rng := rand.New(rand.NewPCG(3, 5))
	kinds := map[string]int{}
	for n := range 3000 {
		priced := n%3 > 0
		var onSale, stock []coverage.Can
		var sale []brute
		for _, s := range bruteSizes {
			if rng.IntN(3) > 0 {
				continue
			}
			can := coverage.Can{Size: litre(t, s.text)}
			b := brute{size: big.NewRat(s.nl, 1_000_000_000), most: 1 << 30, label: s.text}
			if priced {
				cents := 1 + s.nl/10_000_000*(10+rng.Int64N(15))
				can.Price, b.price = money(t, fmt.Sprintf("%d.%02d EUR", cents/100, cents%100)), big.NewRat(cents, 100)
			}
			onSale, sale = append(onSale, can), append(sale, b)
		}
		if len(onSale) == 0 {
			continue
		}
		cl := 1 + rng.Int64N(1200)
		missing := big.NewRat(cl, 100)
		if rng.IntN(3) == 0 {
			stock = cans(t, "0.75 L")
			missing.Sub(missing, big.NewRat(3, 4))
		}
		rng.Shuffle(len(onSale), func(i, j int) { onSale[i], onSale[j] = onSale[j], onSale[i] })

		var want []string
		if missing.Sign() > 0 {
			for i, count := range bruteBuy(sale, missing, priced).counts {
				if count == 0 {
					continue
				}
				var others []brute
				for j, o := range sale {
					if j != i {
						others = append(others, o)
					}
				}
				if len(others) == 0 {
					want = append(want, sale[i].label+": none")
					kinds["none"]++
					continue
				}
				want = append(want, sale[i].label+": "+listTried(others, bruteBuy(others, missing, priced)))
				kinds[fmt.Sprint("priced ", priced)]++
			}
		} else {
			kinds["store"]++
		}
		subs, err := coverage.IfOut(litre(t, fmt.Sprintf("%d.%02d L", cl/100, cl%100)), onSale, stock)
		if err != nil {
			t.Fatalf("case %d: %v", n, err)
		}
		var got []string
		for _, s := range subs {
			if s.None {
				got = append(got, s.Out.String()+": none")
				continue
			}
			got = append(got, s.Out.String()+": "+list(s.Instead.Items))
		}
		if g, w := strings.Join(got, " | "), strings.Join(want, " | "); g != w {
			t.Fatalf("case %d, need %d.%02d L, on sale %v, store %v:\n%s\nwant %s", n, cl/100, cl%100, onSale, stock, g, w)
		}
	}
	for kind, least := range map[string]int{"priced true": 1000, "priced false": 500, "none": 100, "store": 30} {
		if kinds[kind] < least {
			t.Errorf("%d cases of %q, want %d", kinds[kind], kind, least)
		}
	}
}
