package wear_test

import (
	"fmt"
	"math"
	"testing"
	"testing/fstest"

	"boatyard.example/bottomwork/antifoul/wear"
	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/quantity"
)

// parse reads a quantity as a file writes it; "" is not given.
func parse[Q quantity.Quantity](tb testing.TB, s string) Q {
	tb.Helper()
	var none Q
	if s == "" {
		return none
	}
	q, err := quantity.Parse[Q](s)
	if err != nil {
		tb.Fatal(err)
	}
	return q
}

func day(tb testing.TB, s string) quantity.Date {
	tb.Helper()
	d, err := quantity.ParseDate(s)
	if err != nil {
		tb.Fatal(err)
	}
	return d
}

func coating(tb testing.TB, b *tables.Book, key string) tables.Coating {
	tb.Helper()
	c, err := b.Coating(key)
	if err != nil {
		tb.Fatal(err)
	}
	return c
}

// own is the embedded book with one coating's cells replaced.
func own(tb testing.TB, key, cells string) tables.Coating {
	tb.Helper()
	text := fmt.Sprintf("[[coating]]\nkey = %q\nbasis = \"own table\"\nsource = \"data sheet\"\n%s\n", key, cells)
	b, err := tables.Default().With(fstest.MapFS{"own.toml": {Data: []byte(text)}})
	if err != nil {
		tb.Fatal(err)
	}
	return coating(tb, b, key)
}

// wearing lists the coatings whose film wears away, and the others.
func wearing(tb testing.TB) (wears, stays []tables.Coating) {
	tb.Helper()
	for c := range tables.Default().Coatings() {
		if !c.Ranked() {
			continue
		}
		if c.Wears() {
			wears = append(wears, c)
		} else {
			stays = append(stays, c)
		}
	}
	if len(wears) < 5 || len(stays) < 5 {
		tb.Fatalf("%d types wear and %d stay: too few to prove anything", len(wears), len(stays))
	}
	return wears, stays
}

// The grid of uses: each field's values in rising order, "" first for not given.
var (
	hours   = []string{"", "0 h", "1 h", "60 h", "119 h", "120 h", "240 h", "1000 h", "8784 h"}
	speeds  = []string{"", "0 kn", "0.1 kn", "4 kn", "6 kn", "8 kn", "20 kn", "80 kn"}
	warmths = []string{"", "-2 degC", "0 degC", "14 degC", "15 degC", "16 degC", "30 degC", "40 degC"}
	waters  = []string{"", "salt", "brackish", "fresh"}
	ashores = []string{"", "0 months", "1 months", "6 months", "11 months", "12 months"}
)

// grid calls f for each combination of the values.
func grid(tb testing.TB, f func(u wear.Use)) {
	tb.Helper()
	for _, h := range hours {
		for _, s := range speeds {
			for _, w := range warmths {
				for _, water := range waters {
					for _, a := range ashores {
						f(wear.Use{
							UnderWay: parse[quantity.Duration](tb, h), Speed: parse[quantity.Speed](tb, s),
							WaterTemperature: parse[quantity.Temperature](tb, w), Water: water, AshoreEachYear: parse[quantity.Months](tb, a),
						})
					}
				}
			}
		}
	}
}

func ends(r quantity.Range[float64]) [3]float64 { return [3]float64{r.Low, r.Typical, r.High} }

// sound reports whether the range is made of numbers of zero or more that rise.
func sound(r quantity.Range[float64]) bool {
	for _, x := range ends(r) {
		if math.IsNaN(x) || math.IsInf(x, 0) || x < 0 {
			return false
		}
	}
	return r.Low <= r.Typical && r.Typical <= r.High
}

// noLess reports whether each end of a is at least that of b, but for rounding.
func noLess(a, b quantity.Range[float64]) bool {
	for i, x := range ends(a) {
		if x < ends(b)[i]*(1-1e-12) {
			return false
		}
	}
	return true
}
