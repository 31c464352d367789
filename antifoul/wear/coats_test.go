package wear_test

import (
	"fmt"
	"math"
	"testing"

	"github.com/shopspring/decimal"

	"boatyard.example/bottomwork/antifoul/wear"
	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/quantity"
)

func TestCoatsAreMonotoneInMonths(t *testing.T) {
	b := tables.Default()
	wears, stays := wearing(t)
	for _, a := range ashores {
		for _, h := range hours {
			u := wear.Use{AshoreEachYear: parse[quantity.Months](t, a), UnderWay: parse[quantity.Duration](t, h), Speed: quantity.Knot.N(8)}
			for _, c := range wears {
				var last quantity.Range[int]
				for m := 0.0; m <= 60; m += 0.5 {
					n := wear.Coats(b, c, u, m)
					if n.Low < last.Low || n.Typical < last.Typical || n.High < last.High || n.Low < c.Coats || n.Low < 1 || n.Low > n.Typical || n.Typical > n.High {
						t.Fatalf("%s, ashore %q, under way %q: %d coats for %g months, %d for half a month less", c.Key, a, h, n, m, last)
					}
					last = n
				}
				if last.Low <= c.Coats && a == "" {
					t.Errorf("%s: %d coats last five years as well as none", c.Key, last)
				}
			}
			for _, c := range stays {
				if n := wear.Coats(b, c, u, 60); n != quantity.Exactly(c.Coats) {
					t.Errorf("%s does not wear and gets %d coats for five years, want its %d", c.Key, n, c.Coats)
				}
			}
		}
	}
}

// slow wears next to nothing, so that only the trade's count is left: one coat and one more for each 12 months begun.
func TestCoatsByTheTradesCount(t *testing.T) {
	b := tables.Default()
	slow := own(t, "ablative-cuprous-multi", "coats = 1\nwear_rest = \"0.001 um\"\nwear_use = \"0.001 um\"")
	for _, c := range []struct {
		ashore string
		months float64
		want   int
	}{
		{"", 0, 1},
		{"", 0.1, 2},
		{"", 11.99, 2},
		{"", 12, 2},
		{"", 12.01, 3},
		{"", 24, 3},
		{"", 24.01, 4},
		{"6 months", 24, 2}, // 12 months afloat
		{"6 months", 24.1, 3},
		{"12 months", 24, 1},
	} {
		u := wear.Use{AshoreEachYear: parse[quantity.Months](t, c.ashore)}
		if n := wear.Coats(b, slow, u, c.months); n != quantity.Exactly(c.want) {
			t.Errorf("ashore %q, %g months: %d coats, want %d", c.ashore, c.months, n, c.want)
		}
	}
}

// fast wears 25 um a month at the high end, half of a coat of typical film, 6 um at the typical and 1 um at the low end.
func TestCoatsFromTheWear(t *testing.T) {
	b := tables.Default()
	fast := own(t, "ablative-cuprous-multi", "coats = 2\nfilm = [\"40 um\", \"50 um\", \"60 um\"]\nwear_rest = [\"1 um\", \"2 um\", \"3 um\"]\nwear_use = [\"5 um\", \"10 um\", \"25 um\"]")
	for _, c := range []struct {
		months             float64
		low, typical, high int
	}{
		{1, 2, 2, 2},   // the type's least number
		{4, 2, 2, 2},   // 100 um at the high wear: two coats to the last micrometre
		{4.1, 2, 2, 3}, // a little more
		{6, 2, 2, 3},
		{6.1, 2, 2, 4},
		{20, 3, 3, 10}, // 120 um at the typical wear, 20 um at the low: the trade's count, three
		{26, 4, 4, 13}, // 156 um: four coats, and four by the count
		{34, 4, 5, 17}, // 204 um: five coats; the low wear stays with the count
	} {
		if n, want := wear.Coats(b, fast, wear.Use{}, c.months), (quantity.Range[int]{Low: c.low, Typical: c.typical, High: c.high}); n != want {
			t.Errorf("%g months: %d coats, want %d", c.months, n, want)
		}
	}
}

// Whole years afloat, and films used up to the last micrometre, ask for no coat more because float arithmetic misses by a hair.
func TestWholeCoatsStayWhole(t *testing.T) {
	if underRace {
		t.Skip("one goroutine; .ci/run asks it without the race detector")
	}
	b := tables.Default()
	slow := own(t, "ablative-cuprous-multi", "coats = 1\nwear_rest = \"0.001 um\"\nwear_use = \"0.001 um\"")
	for tenths := int64(1); tenths < 120; tenths++ {
		u := wear.Use{AshoreEachYear: quantity.Month.Of(decimal.New(tenths, -1))}
		for years := 1; years <= 10; years++ {
			if n := wear.Coats(b, slow, u, u.CalendarMonths(12*float64(years))); n != quantity.Exactly(1+years) {
				t.Errorf("%d years afloat, %s ashore each: %d coats, want %d", years, u.AshoreEachYear, n, 1+years)
			}
		}
	}
	for tenths := 60; tenths < 200; tenths++ { // from 6 um a month the wear asks for more than the trade's count
		fast := own(t, "ablative-cuprous-multi", fmt.Sprintf("coats = 1\nwear_rest = \"%[1]d.%[2]d um\"\nwear_use = \"%[1]d.%[2]d um\"", tenths/10, tenths%10))
		for coats := 8; coats <= 12; coats++ {
			months := float64(coats) * 50 / (float64(tenths) / 10)
			if n := wear.Coats(b, fast, wear.Use{}, months); n != quantity.Exactly(coats) {
				t.Errorf("%d.%d um a month for %g months: %d coats of 50 um, want %d", tenths/10, tenths%10, months, n, coats)
			}
		}
	}
}

func TestLifeIsMonotoneInCoats(t *testing.T) {
	b := tables.Default()
	wears, stays := wearing(t)
	for _, a := range ashores {
		u := wear.Use{AshoreEachYear: parse[quantity.Months](t, a), UnderWay: quantity.Hour.N(100)}
		for _, c := range wears {
			var last quantity.Range[float64]
			for n := 1; n <= 10; n++ {
				l := wear.Life(b, c, u, n)
				if !sound(l) || !noLess(l, last) || l.Low <= last.Low {
					t.Fatalf("%s, ashore %q: %d coats last %v, one less %v", c.Key, a, n, l, last)
				}
				last = l
			}
		}
		for _, c := range stays {
			if one, four := wear.Life(b, c, u, 1), wear.Life(b, c, u, 4); one != four || !sound(one) {
				t.Errorf("%s does not wear; one coat lasts %v, four %v", c.Key, one, four)
			}
		}
	}
}

// As many coats as Coats asks for outlast, at typical film and high wear, the months that were asked for.
func TestCoatsLastAsLongAsAskedFor(t *testing.T) {
	b := tables.Default()
	wears, _ := wearing(t)
	for _, c := range wears {
		for _, a := range ashores[:5] {
			for _, months := range []float64{6, 12, 18, 24, 36, 60} {
				u := wear.Use{AshoreEachYear: parse[quantity.Months](t, a), UnderWay: quantity.Hour.N(300), Speed: quantity.Knot.N(9)}
				n := wear.Coats(b, c, u, months).High
				film := float64(n) * c.Film.Typical.Float(quantity.Micrometre)
				if lasts := u.CalendarMonths(film / wear.Rate(b, c, u).High); lasts < months*(1-1e-9) {
					t.Errorf("%s, ashore %q: %d coats for %g months last %g at the high wear", c.Key, a, n, months, lasts)
				}
			}
		}
	}
}

func TestLifeOfFilms(t *testing.T) {
	b := tables.Default()
	// 2 coats of 40, 50, 60 um; 2, 4, 8 um a month; ashore half of the year.
	c := own(t, "ablative-cuprous-multi", "film = [\"40 um\", \"50 um\", \"60 um\"]\nwear_rest = [\"1 um\", \"1 um\", \"1 um\"]\nwear_use = [\"2 um\", \"4 um\", \"8 um\"]")
	u := wear.Use{UnderWay: quantity.Hour.N(8784)}
	near := func(what string, got quantity.Range[float64], want [3]float64) {
		t.Helper()
		for i, w := range want {
			if math.Abs(ends(got)[i]-w) > 1e-9 {
				t.Errorf("%s: %v, want %v", what, got, want)
				return
			}
		}
	}
	near("afloat all year", wear.Life(b, c, u, 2), [3]float64{10, 25, 60})
	u.AshoreEachYear = quantity.Month.N(6)
	// Seasons of 6: month 10 afloat is the fourth of the second season, 12 + 4; 25 the first of the fifth; 60 the last of the tenth.
	near("afloat half of the year", wear.Life(b, c, u, 2), [3]float64{16, 49, 114})
	hard := own(t, "hard-cuprous", "life = [\"12 months\", \"18 months\", \"2 years\"]")
	near("hard, afloat half of the year", wear.Life(b, hard, u, 2), [3]float64{18, 30, 42})
	if l := wear.Life(b, endless(), u, 1); l != (quantity.Range[float64]{}) {
		t.Errorf("a coating without a life lasts %v, want the zero range", l)
	}
}

// What does not wear lasts for ever, and no coat of it does as well.
func TestLifeWithoutWear(t *testing.T) {
	b := ownWear(t, quantity.Range[float64]{Low: 0, Typical: 1, High: 2})
	c := coating(t, b, "ablative-cuprous-multi")
	for n := range 3 {
		if life := wear.Life(b, c, wear.Use{UnderWay: quantity.Hour.N(0)}, n); !math.IsInf(life.High, 1) {
			t.Errorf("%d coats: %v", n, life)
		}
	}
}
