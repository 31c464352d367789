package coverage_test

import (
	"errors"
	"slices"
	"strings"
	"testing"
	"time"

	"boatyard.example/bottomwork/coverage"
	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

// cans reads "0.75 L 21.00 EUR, 2.5 L": sizes, each with or without a price.
func cans(tb testing.TB, text string) []coverage.Can {
	tb.Helper()
	if text == "" {
		return nil
	}
	var out []coverage.Can
	for _, s := range strings.Split(text, ", ") {
		c := coverage.Can{}
		words := strings.Fields(s)
		if n := len(words); n > 2 && len(words[n-1]) == 3 && words[n-1] != "gal" {
			c.Price = money(tb, strings.Join(words[n-2:], " "))
			words = words[:n-2]
		}
		c.Size = litre(tb, strings.Join(words, " "))
		out = append(out, c)
	}
	return out
}

func TestCansByHand(t *testing.T) {
	const trade = "0.75 L, 2.5 L, 5 L, 20 L"
	for _, c := range []struct {
		what, need, sale, stock string
		buys, takes, left, cost string
	}{
		{"big cans dearer a litre", "5 L", "2.5 L 40 EUR, 5 L 90 EUR", "", "2 × 2.5 L; ", "", "0.0 L", "80 EUR"},
		{"a larger can is cheaper than the need", "1.5 L", "0.75 L 30 EUR, 2.5 L 55 EUR", "", "1 × 2.5 L; ", "", "1.0 L", "55 EUR"},
		{"equal cost: least left over", "3 L", "1 L 10 EUR, 4 L 30 EUR", "", "3 × 1 L; ", "", "0 L", "30 EUR"},
		{"equal cost and volume: fewest cans", "2 L", "1 L 10 EUR, 2 L 20 EUR", "", "1 × 2 L; ", "", "0 L", "20 EUR"},
		{"equal in all: larger cans", "6 L", "1 L 10 EUR, 3 L 30 EUR, 5 L 50 EUR", "", "1 × 5 L; 1 × 1 L; ", "", "0 L", "60 EUR"},
		{"free cans", "2 L", "1 L 0 EUR, 2.5 L 0 EUR", "", "2 × 1 L; ", "", "0 L", "0 EUR"},
		{"two prices of one size", "2 L", "1 L 10 EUR, 1000 mL 9.50 EUR", "", "2 × 1000 mL; ", "", "0 mL", "19.00 EUR"},
		{"one price in two units: the first", "2 L", "1000 mL 10 EUR, 1 L 10 EUR", "", "2 × 1000 mL; ", "", "0 mL", "20 EUR"},
		{"metric and US", "4.5 L", "0.75 L 20 EUR, 1 US gal 80 EUR", "", "1 × 1 US gal; 1 × 0.75 L; ", "", "0.035411784 L", "100 EUR"},
		{"no price: not fourteen small cans", "10.5 L", trade, "", "2 × 5 L; 1 × 0.75 L; ", "", "0.25 L", ""},
		{"no price: one can for three", "2.2 L", trade, "", "1 × 2.5 L; ", "", "0.3 L", ""},
		// Least 2.25 L; up to 3 L is allowed, so the 2.5 L can; at a need of 1.45 L the least is 1.5 L, up to 2.25 L.
		{"no price: inside the window", "1.6 L", trade, "", "1 × 2.5 L; ", "", "0.9 L", ""},
		{"no price: outside the window", "1.45 L", trade, "", "2 × 0.75 L; ", "", "0.05 L", ""},
		// Least 27 L; a litre more is allowed, and two cans of 14 L are just that.
		{"no price: at the edge of the window", "27 L", "1 L, 14 L, 20 L", "", "2 × 14 L; ", "", "1 L", ""},
		{"no price: just beyond the edge", "27 L", "1 L, 14.001 L, 20 L", "", "1 × 20 L; 7 × 1 L; ", "", "0 L", ""},
		// Not quite a multiple of 1 L, so it is what makes the least, 4.000000002 L; 5.5 L is more than a litre beyond that.
		{"no price: twice another and a nanolitre", "4.000000002 L", "1 L, 2.000000001 L, 5.5 L", "", "2 × 2.000000001 L; ", "", "0 L", ""},
		{"no price on one can", "5 L", "2.5 L 40 EUR, 5 L", "", "1 × 5 L; ", "", "0 L", ""},
		{"store suffices: least left over", "3 L", "1 L 10 EUR", "5 L, 2.5 L, 0.75 L", "", "1 × 2.5 L; 1 × 0.75 L; ", "0.25 L", "0 EUR"},
		{"store first, the rest is bought", "8 L", "2.5 L 40 EUR, 5 L 75 EUR", "0.75 L, 0.75 L", "1 × 5 L; 1 × 2.5 L; ", "2 × 0.75 L; ", "1.0 L", "115 EUR"},
		{"store exactly, nothing on sale", "1.5 L", "", "0.75 L, 0.75 L", "", "2 × 0.75 L; ", "0.00 L", ""},
		{"no less than a nanolitre more", "3.785411785 L", "1 US gal 80 EUR", "", "2 × 1 US gal; ", "", "3.785411783 L", "160 EUR"},
		{"a nanolitre is missing and another size is left to try", "2.000000001 L", "1 L 10 EUR, 5 L 100 EUR", "", "3 × 1 L; ", "", "0.999999999 L", "30 EUR"},
		{"store suffices: one large can and all the small ones", "12 L", "1 L 10 EUR", "6 L, 5 L, 2 L, 2 L, 2 L", "", "1 × 6 L; 3 × 2 L; ", "0 L", "0 EUR"},
		{"the dearest price", "1 L", "1 L 1000000000 EUR", "", "1 × 1 L; ", "", "0 L", "1000000000 EUR"},
		// 18.446744073 L × 1e9 EUR, in nanolitres, and the size less one come to more than 64 bits hold.
		{"a long reckoning", "18.446744073 L", "1 L 1000000000 EUR, 1.000000001 L 1000000000 EUR", "", "19 × 1 L; ", "", "0.553255927 L", "19000000000 EUR"},
		{"the largest can", "1 L", "1000000 L 5 EUR", "", "1 × 1000000 L; ", "", "999999 L", "5 EUR"},
		{"no more than needed", "3.785411784 L", "1 US gal 80 EUR", "", "1 × 1 US gal; ", "", "0 L", "80 EUR"},
	} {
		t.Run(c.what, func(t *testing.T) {
			need := litre(t, c.need)
			got, err := coverage.Cans(need, cans(t, c.sale), cans(t, c.stock))
			if err != nil {
				t.Fatal(err)
			}
			if list(got.Items) != c.buys || list(got.FromStock) != c.takes {
				t.Errorf("buys %q, takes %q; want %q, %q", list(got.Items), list(got.FromStock), c.buys, c.takes)
			}
			if !got.Left.Equal(litre(t, c.left)) || !got.Total.Equal(need.Add(got.Left)) || !got.Need.Equal(need) {
				t.Errorf("need %s, total %s, left %s, want %s", got.Need, got.Total, got.Left, c.left)
			}
			if c.cost == "" {
				if got.Cost.Given() {
					t.Errorf("cost %s, want none", got.Cost)
				}
			} else if !got.Cost.Equal(money(t, c.cost)) {
				t.Errorf("cost %s, want %s", got.Cost, c.cost)
			}
		})
	}
}

func TestCansFaults(t *testing.T) {
	const many = "1 L, 2 L, 3 L, 4 L, 5 L, 6 L, 7 L, 8 L, 9 L, 10 L, 11 L, 12 L, 13 L, 14 L, 15 L, 16 L, 17 L"
	for _, c := range []struct {
		what, need, sale, stock string
		kind                    error
		key                     string
	}{
		{"need of nought", "0 L", "1 L", "", finding.ErrImpossible, "need"},
		{"need below nought", "-1 L", "1 L", "", finding.ErrImpossible, "need"},
		{"need of a lake", "1000000.1 L", "1 L", "", finding.ErrImpossible, "need"},
		{"nothing on sale", "1 L", "", "0.75 L", finding.ErrMissing, "on_sale"},
		{"a can of nought", "1 L", "1 L, 0 L", "", finding.ErrImpossible, "on_sale[2]"},
		{"a thimble", "1 L", "0.999 mL", "", finding.ErrImpossible, "on_sale[1]"},
		{"a can of nought with a price", "1 L", "1 L 5 EUR, 0 L 5 EUR", "", finding.ErrImpossible, "on_sale[2]"},
		{"a can larger than any", "1 L", "1000000.000001 L", "", finding.ErrImpossible, "on_sale[1]"},
		{"a stock can below nought", "1 L", "1 L", "1 L, -1 L", finding.ErrImpossible, "stock[2]"},
		{"two currencies", "1 L", "1 L 10 EUR, 2 L 20 USD", "", finding.ErrValue, "on_sale[2].price"},
		{"a price below nought", "1 L", "1 L -10 EUR", "", finding.ErrImpossible, "on_sale[1].price"},
		{"a price of five places", "1 L", "1 L 0.12345 EUR", "", finding.ErrValue, "on_sale[1].price"},
		{"a price out of range", "1 L", "1 L 10000000.01 EUR", "", finding.ErrImpossible, "on_sale[1].price"},
		{"a price out of range by one", "1 L", "1 L 1000000001 EUR", "", finding.ErrImpossible, "on_sale[1].price"},
		{"seventeen sizes", "1 L", many, "", finding.ErrImpossible, "on_sale"},
		{"seventeen sizes in the store", "1 L", "1 L", many, finding.ErrImpossible, "stock"},
	} {
		t.Run(c.what, func(t *testing.T) {
			got, err := coverage.Cans(litre(t, c.need), cans(t, c.sale), cans(t, c.stock))
			hasFault(t, err, c.kind, c.key)
			if len(got.Items) > 0 || got.Total.Given() {
				t.Errorf("%+v beside an error", got)
			}
		})
	}
	_, err := coverage.Cans(quantity.Volume{}, []coverage.Can{{}}, make([]coverage.Can, 1001))
	hasFault(t, err, finding.ErrMissing, "need")
	hasFault(t, err, finding.ErrImpossible, "on_sale[1]")
	hasFault(t, err, finding.ErrImpossible, "stock")
}

// What is no size does not count as one.
func TestSixteenSizesAndNone(t *testing.T) {
	var sale []coverage.Can
	for i := range int64(17) {
		sale = append(sale, coverage.Can{Size: quantity.Litre.N(i)})
	}
	_, err := coverage.Cans(litre(t, "1 L"), sale, nil)
	hasFault(t, err, finding.ErrImpossible, "on_sale[1]")
	if fs, ok := errors.AsType[finding.Faults](err); !ok || len(fs) != 1 {
		t.Errorf("%v, want one fault", err)
	}
}

func TestCansFromAFullStore(t *testing.T) {
	full := slices.Repeat(cans(t, "1 L"), 1000)
	if got, err := coverage.Cans(litre(t, "1000 L"), nil, full); err != nil || list(got.FromStock) != "1000 × 1 L; " {
		t.Errorf("a thousand cans: %s, %v", list(got.FromStock), err)
	}
	_, err := coverage.Cans(litre(t, "1000 L"), nil, append(full, full[0]))
	hasFault(t, err, finding.ErrImpossible, "stock")
}

// A size that stands on sale twice counts with the price that is known, whichever of the two is written first.
func TestCansTellTheKnownPrice(t *testing.T) {
	for _, sale := range []string{"1 L 10 EUR, 1 L", "1 L, 1 L 10 EUR", "1 L 12 EUR, 1 L, 1 L 10 EUR, 1 L 11 EUR"} {
		got, err := coverage.Cans(litre(t, "2 L"), cans(t, sale), nil)
		if err != nil || list(got.Items) != "2 × 1 L; " || !got.Items[0].Can.Price.Equal(money(t, "10 EUR")) {
			t.Errorf("%s: %+v, %v; want two of 10 EUR", sale, got.Items, err)
		}
	}
}

// Silly sizes come to an end: with the answer where it is simple, else with a fault.
func TestCansDoNotHang(t *testing.T) {
	for _, c := range []struct {
		need, sale string
		want       string // "" for a fault
	}{
		{"500 L", "0.001 L", "500000 × 0.001 L; "},
		{"500 L", "0.001 L 0.01 EUR, 0.002 L 0.02 EUR", "250000 × 0.002 L; "},
		{"1000000 L", "1 mL", "1000000000 × 1 mL; "},
		{"1000000 L", "1 mL, 1 US qt, 1.001 mL, 1.003 mL", ""},
		// 500 ÷ 0.013 × 1.31 = 50384.615, so no choice is below 50384.62; this one costs that and has 0.006 mL left.
		{"500 L", "13 mL 1.31 EUR, 17 mL 1.72 EUR, 19.01 mL 1.92 EUR, 23.003 mL 2.32 EUR, 29.0007 mL 2.93 EUR", "2 × 23.003 mL; 38458 × 13 mL; "},
		{"500.0001 L", "130.0003 mL, 170.0007 mL, 190.0013 mL, 230.0029 mL, 290.0031 mL, 310.0037 mL", ""},
	} {
		start := time.Now()
		got, err := coverage.Cans(litre(t, c.need), cans(t, c.sale), nil)
		if took := time.Since(start); took > 20*time.Second {
			t.Errorf("%s of %s took %s", c.need, c.sale, took)
		}
		if c.want == "" {
			hasFault(t, err, finding.ErrImpossible, "on_sale")
			continue
		}
		if err != nil || list(got.Items) != c.want {
			t.Errorf("%s of %s: %s, %v; want %s", c.need, c.sale, list(got.Items), err, c.want)
		}
	}
}

// So many choices are alike here that only one who leaves most of them aside comes to an end.
func TestCansOfManyWays(t *testing.T) {
	const ten = "20 L, 5 US gal, 10 L, 5 L, 1 US gal, 2.5 L, 1 L, 1 US qt, 0.75 L, 0.375 L"
	store := slices.Repeat(cans(t, "20 L, 10 L, 5 L, 4 L, 3 L, 2 L, 1 L, 0.75 L, 0.25 L"), 45) // 45 × 46 = 2070 L
	for _, c := range []struct {
		what, need, sale string
		stock            []coverage.Can
		buys, takes      string
	}{
		{"one price a litre", "100 L", "1 mL 0.01 EUR, 2 mL 0.02 EUR, 5 mL 0.05 EUR", nil, "20000 × 5 mL; ", ""},
		// 40.75 L stay, in as many cans as can be: 45 × 0.25 + 38 × 0.75 + 1.
		// 20 × 63.28382365 L, the sum of the ten sizes.
		{"all of the store", "1265.676473 L", "", slices.Repeat(cans(t, ten), 20), "", "20 × " + strings.ReplaceAll(ten, ", ", "; 20 × ") + "; "},
		{"nearly all of the store", "2029.25 L", "", store, "", "45 × 20 L; 45 × 10 L; 45 × 5 L; 45 × 4 L; 45 × 3 L; 45 × 2 L; 44 × 1 L; 7 × 0.75 L; "},
	} {
		got, err := coverage.Cans(litre(t, c.need), cans(t, c.sale), c.stock)
		if err != nil || list(got.Items) != c.buys || list(got.FromStock) != c.takes || got.Left.Sign() != 0 {
			t.Errorf("%s: buys %s, takes %s, %s left, %v; want %s, %s", c.what, list(got.Items), list(got.FromStock), got.Left, err, c.buys, c.takes)
		}
	}
}

// Ten sizes of two systems that have no common measure are never too many, and what is bought is no dearer than cans of any one size.
func TestCansOfTwoSystems(t *testing.T) {
	for name, price := range map[string]func(litres float64) float64{
		"one price a litre": func(l float64) float64 { return 20 * l },
		"big ones cheaper":  func(l float64) float64 { return l * (40 - l/2) },
		"big ones dearer":   func(l float64) float64 { return l * (30 + l/2) },
	} {
		sale := tenSizes(t, price)
		for _, need := range []string{"37.01 L", "500 L", "600 L", "2000 L"} {
			want := litre(t, need)
			got, err := coverage.Cans(want, sale, nil)
			if err != nil || got.Total.Cmp(want) < 0 {
				t.Errorf("%s, %s: %s, %v", name, need, got.Total, err)
				continue
			}
			for _, c := range sale {
				n, err := quantity.Quotient(want.In(quantity.Litre, 9, quantity.Up), c.Size.In(quantity.Litre, 9, quantity.Down), 0, quantity.Up)
				if err != nil {
					t.Fatal(err)
				}
				if alone := c.Price.Scale(n); got.Cost.Amount().Cmp(alone.Amount()) > 0 {
					t.Errorf("%s, %s: %s, but %s × %s are %s", name, need, got.Cost, n, c.Size, alone)
				}
			}
		}
	}
}

func TestOnSale(t *testing.T) {
	b := book(t)
	sizes := func(cs []coverage.Can) string {
		var s []string
		for _, c := range cs {
			text := c.Size.String()
			if c.Price.Given() {
				text += " " + c.Price.String()
			}
			s = append(s, text)
		}
		return strings.Join(s, ", ")
	}
	c := tables.Coating{Row: tables.Row{Key: "hard"}}
	yard := coverage.Method{Sizes: []quantity.Volume{litre(t, "1 US qt"), litre(t, "2500 mL")}}
	if got := sizes(coverage.OnSale(b, c, coverage.Method{})); got != "0.75 L, 2.5 L, 5 L, 20 L" {
		t.Errorf("the book's: %s", got)
	}
	if got := sizes(coverage.OnSale(b, c, yard)); got != "1 US qt, 2500 mL" {
		t.Errorf("the yard's: %s", got)
	}
	own := with(t, b, `
[[can]]
key = "own-quart"
size = "1 US qt"
price = "39.00 USD"
basis = "own table"
source = "price list"

[[can]]
key = "can-2.5-l"
price = "70.00 USD"
basis = "own table"
source = "price list"
`)
	if got := sizes(coverage.OnSale(own, c, coverage.Method{})); got != "2.5 L 70.00 USD, 1 US qt 39.00 USD" {
		t.Errorf("the own table's: %s", got)
	}
	if got := sizes(coverage.OnSale(own, c, yard)); got != "1 US qt 39.00 USD, 2500 mL 70.00 USD" {
		t.Errorf("the yard's with prices: %s", got)
	}
	special := with(t, own, `
[[coating]]
key = "hard"
role = "primer"
packs = 1
carrier = "solvent"
solids = "50 %"
film = "50 um"
coats = 1
most_coats = 2
at = "20 degC"
overcoat_min = "4 h"
apply_min = "5 degC"
apply_max = "35 degC"
basis = "invented"

[[can]]
key = "hard-2.5"
size = "2.5 L"
coating = "hard"
price = "99.00 USD"
basis = "own table"
source = "price list"
`)
	if got := sizes(coverage.OnSale(special, c, coverage.Method{})); got != "2.5 L 99.00 USD" {
		t.Errorf("of the coating: %s", got)
	}
	if got := sizes(coverage.OnSale(special, c, yard)); got != "1 US qt 39.00 USD, 2500 mL 99.00 USD" {
		t.Errorf("the yard's, priced by the coating: %s", got)
	}
	if got := sizes(coverage.OnSale(special, tables.Coating{Row: tables.Row{Key: "other"}}, coverage.Method{})); got != "2.5 L 70.00 USD, 1 US qt 39.00 USD" {
		t.Errorf("of another coating: %s", got)
	}
	imperial, err := tables.Load(mapFS("cans.toml", "[[can]]\nkey = \"gallon\"\nsize = \"1 imp gal\"\nbasis = \"invented\"\n"))
	if err != nil {
		t.Fatal(err)
	}
	if got := sizes(coverage.OnSale(imperial, c, coverage.Method{})); got != "1 imp gal" {
		t.Errorf("a book without litres: %s", got)
	}
}
