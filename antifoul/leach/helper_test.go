package leach_test

import (
	"fmt"
	"math"
	"strings"
	"testing"
	"testing/fstest"

	"boatyard.example/bottomwork/antifoul/leach"
	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/quantity"
)

// own is the embedded book with rows on top.
func own(tb testing.TB, rows string) *tables.Book {
	tb.Helper()
	b, err := tables.Default().With(fstest.MapFS{"own.toml": {Data: []byte(rows)}})
	if err != nil {
		tb.Fatal(err)
	}
	return b
}

// recipe is a hard paint of one or more actives, with exact content, density and solids.
func recipe(tb testing.TB, solids, density string, actives ...[2]string) (*tables.Book, tables.Coating) {
	tb.Helper()
	var text strings.Builder
	fmt.Fprintf(&text, `[[coating]]
key = "recipe"
basis = "own table"
source = "worked by hand"
role = "antifouling"
mechanism = "hard"
packs = 1
carrier = "solvent"
solids = %q
density = %q
film = "50 um"
coats = 2
most_coats = 3
at = "20 degC"
overcoat_min = "6 h"
launch_min = "12 h"
apply_min = "5 degC"
apply_max = "35 degC"
scrub = "light"
abrasion = "light"
growth = "light"
waters = ["salt"]
life = "12 months"
`, solids, density)
	for _, a := range actives {
		fmt.Fprintf(&text, "[[coating.active]]\nkey = %q\ncontent = %q\n", a[0], a[1])
	}
	b := own(tb, text.String())
	return b, coating(tb, b, "recipe")
}

func coating(tb testing.TB, b *tables.Book, key string) tables.Coating {
	tb.Helper()
	c, err := b.Coating(key)
	if err != nil {
		tb.Fatal(err)
	}
	return c
}

func um(n int64) quantity.Range[quantity.Film] { return quantity.Exactly(quantity.Micrometre.N(n)) }

func parse[Q quantity.Quantity](tb testing.TB, s string) Q {
	tb.Helper()
	q, err := quantity.Parse[Q](s)
	if err != nil {
		tb.Fatal(err)
	}
	return q
}

func content(tb testing.TB, b *tables.Book, c tables.Coating, film quantity.Range[quantity.Film]) leach.Contents {
	tb.Helper()
	x, err := leach.Content(b, c, film)
	if err != nil {
		tb.Fatal(err)
	}
	return x
}

func mean(tb testing.TB, b *tables.Book, c tables.Coating, film quantity.Range[quantity.Film], months float64) leach.Rate {
	tb.Helper()
	r, err := leach.Mean(b, c, film, months)
	if err != nil {
		tb.Fatal(err)
	}
	return r
}

// near fails when got is not the wanted number, which is right to the last digit typed.
func near(tb testing.TB, what string, got, want, half float64) {
	tb.Helper()
	if !(math.Abs(got-want) <= half) {
		tb.Errorf("%s: %.5g, want %g to within %g", what, got, want, half)
	}
}

func ends(r quantity.Range[float64]) [3]float64 { return [3]float64{r.Low, r.Typical, r.High} }

// sound reports whether the range is made of finite numbers above zero that rise.
func sound(r quantity.Range[float64]) bool {
	return r.Low > 0 && r.Low <= r.Typical && r.Typical <= r.High && !math.IsInf(r.High, 0)
}
