package wear_test

import (
	"errors"
	"math"
	"slices"
	"testing"

	"boatyard.example/bottomwork/antifoul/wear"
	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

func TestMonthsAfloatAndBack(t *testing.T) {
	for _, a := range append([]string{"0.5 months", "11.9 months", "1 year"}, ashores...) {
		u := wear.Use{AshoreEachYear: parse[quantity.Months](t, a)}
		for _, m := range []float64{0, 0.5, 1, 7, 12, 24, 119.5, 1e6} {
			afloat := u.AfloatMonths(m)
			if afloat < 0 || afloat > m || math.IsNaN(afloat) {
				t.Errorf("ashore %q: %g of %g months afloat", a, afloat, m)
			}
			if a == "12 months" || a == "1 year" {
				if afloat != 0 || u.CalendarMonths(m) != m {
					t.Errorf("ashore all year: %g of %g months afloat, and %g back", afloat, m, u.CalendarMonths(m))
				}
				continue
			}
			if back := u.CalendarMonths(afloat); back > m+1e-9*(1+m) { // reached before she is hauled, or just then
				t.Errorf("ashore %q: %g months are %g afloat, which are %g", a, m, afloat, back)
			}
			if back := u.AfloatMonths(u.CalendarMonths(m)); math.Abs(back-m) > 1e-9*(1+m) {
				t.Errorf("ashore %q: %g months afloat come back as %g", a, m, back)
			}
		}
	}
	// Hand-worked: 5 months ashore leave 7 afloat. In 10 months she has her 7; in 14 months 7 and 2; the eighth month afloat is the
	// first of the second season, month 13.
	u := wear.Use{AshoreEachYear: quantity.Month.N(5)}
	for _, tt := range [][2]float64{{24, 14}, {7, 7}, {10, 7}, {12, 7}, {14, 9}} {
		if got := u.AfloatMonths(tt[0]); got != tt[1] {
			t.Errorf("5 of 12 months ashore: %g of %g months afloat, want %g", got, tt[0], tt[1])
		}
	}
	for _, tt := range [][2]float64{{6.5, 6.5}, {7, 7}, {8, 13}, {14, 19}, {14.5, 24.5}} {
		if got := u.CalendarMonths(tt[0]); math.Abs(got-tt[1]) > 1e-9 {
			t.Errorf("5 of 12 months ashore: %g months afloat are reached in month %g, want %g", tt[0], got, tt[1])
		}
	}
}

// bad is one use with one thing wrong.
var bad = []struct {
	key  string
	kind error
	use  wear.Use
}{
	{"water", finding.ErrValue, wear.Use{Water: "Salt"}},
	{"kept", finding.ErrValue, wear.Use{Kept: "garage"}},
	{"dries_on", finding.ErrValue, wear.Use{DriesOn: "rocks"}},
	{"growth", finding.ErrValue, wear.Use{Growth: tables.None}},
	{"growth", finding.ErrValue, wear.Use{Growth: tables.Heavy + 1}},
	{"cleaning", finding.ErrValue, wear.Use{Cleaning: tables.Heavy + 1, CleanedEvery: quantity.Day.N(30)}},
	{"under_way", finding.ErrImpossible, wear.Use{UnderWay: quantity.Hour.N(-1)}},
	{"under_way", finding.ErrImpossible, wear.Use{UnderWay: quantity.Hour.N(8785)}},
	{"speed", finding.ErrImpossible, wear.Use{Speed: quantity.Knot.N(-1)}},
	{"speed", finding.ErrImpossible, wear.Use{Speed: quantity.Knot.N(81)}},
	{"longest_idle", finding.ErrImpossible, wear.Use{LongestIdle: quantity.Day.N(-1)}},
	{"longest_idle", finding.ErrImpossible, wear.Use{LongestIdle: quantity.Day.N(3661)}},
	{"haul_out_every", finding.ErrImpossible, wear.Use{HaulOutEvery: quantity.Month.N(0)}},
	{"haul_out_every", finding.ErrImpossible, wear.Use{HaulOutEvery: quantity.Month.N(241)}},
	{"ashore_each_year", finding.ErrImpossible, wear.Use{AshoreEachYear: quantity.Month.N(-1)}},
	{"ashore_each_year", finding.ErrImpossible, wear.Use{AshoreEachYear: quantity.Month.N(13)}},
	{"water_temperature", finding.ErrImpossible, wear.Use{WaterTemperature: quantity.Celsius.N(-3)}},
	{"water_temperature", finding.ErrImpossible, wear.Use{WaterTemperature: quantity.Celsius.N(41)}},
	{"cleaned_every", finding.ErrImpossible, wear.Use{CleanedEvery: quantity.Day.N(0), Cleaning: tables.Light}},
	{"cleaning", finding.ErrMissing, wear.Use{CleanedEvery: quantity.Day.N(30)}},
	{"cleaning", finding.ErrMissing, wear.Use{CleanedEvery: quantity.Day.N(30), Cleaning: tables.None}},
	{"cleaned_every", finding.ErrMissing, wear.Use{Cleaning: tables.Heavy}},
}

func TestCheckOneByOne(t *testing.T) {
	for _, c := range bad {
		fs := c.use.Check()
		if len(fs) != 1 || fs[0].Key != c.key || !errors.Is(fs[0], c.kind) || fs[0].Want == "" {
			t.Errorf("%s: faults\n%v\nwant one, %v", c.key, fs, c.kind)
		}
	}
}

// On the boundary, and with nothing given, there is no fault.
func TestCheckOnTheBoundary(t *testing.T) {
	for _, u := range []wear.Use{
		{},
		{
			UnderWay: quantity.Hour.N(0), Speed: quantity.Knot.N(0), LongestIdle: quantity.Day.N(0), HaulOutEvery: quantity.Month.N(1),
			AshoreEachYear: quantity.Month.N(0), WaterTemperature: quantity.Celsius.N(-2), Water: "brackish", Kept: "lift", DriesOn: "none", Cleaning: tables.None,
		},
		{
			UnderWay: quantity.Hour.N(8784), Speed: quantity.Knot.N(80), LongestIdle: quantity.Day.N(3660), HaulOutEvery: quantity.Year.N(20),
			AshoreEachYear: quantity.Year.N(1), WaterTemperature: quantity.Fahrenheit.N(104), Water: "fresh", Kept: "trailer", DriesOn: "firm",
			Cleaning: tables.Heavy, CleanedEvery: quantity.Minute.N(1), Growth: tables.Heavy,
		},
	} {
		if fs := u.Check(); len(fs) != 0 {
			t.Errorf("faults of %+v:\n%v", u, fs)
		}
	}
}

// A growth that cannot be is answered with the words of those that can.
func TestGrowthThatCannotBe(t *testing.T) {
	for _, g := range []tables.Grade{tables.None, tables.Heavy + 1} {
		if fs := (wear.Use{Growth: g}).Check(); len(fs) != 1 || fs[0].Want != "one of light, medium, heavy" {
			t.Errorf("growth %d: %v", g, fs)
		}
	}
}

func TestCheckAllAtOnce(t *testing.T) {
	u := wear.Use{
		Water: "beer", Kept: "x", DriesOn: "y", UnderWay: quantity.Hour.N(-1), Speed: quantity.Knot.N(100), LongestIdle: quantity.Day.N(-5),
		HaulOutEvery: quantity.Month.N(-1), AshoreEachYear: quantity.Month.N(14), WaterTemperature: quantity.Celsius.N(99), CleanedEvery: quantity.Day.N(-1),
	}
	var keys []string
	for _, f := range u.Check() {
		keys = append(keys, f.Key)
	}
	slices.Sort(keys)
	want := []string{
		"ashore_each_year", "cleaned_every", "cleaning", "dries_on", "haul_out_every", "kept", "longest_idle", "speed", "under_way", "water", "water_temperature",
	}
	if !slices.Equal(keys, want) {
		t.Errorf("faults of %q, want %q", keys, want)
	}
}

func TestCleaningWords(t *testing.T) {
	for i, w := range []string{"none", "sponge", "brush", "scrub"} {
		if g, err := wear.ParseCleaning(w); err != nil || g != tables.Grade(i+1) {
			t.Errorf("%q is grade %s: %v", w, g, err)
		}
	}
	for _, w := range []string{"", "Brush", "heavy"} {
		if g, err := wear.ParseCleaning(w); g != 0 || !errors.Is(err, finding.ErrValue) {
			t.Errorf("%q is grade %s, want none: %v", w, g, err)
		}
	}
	wear.CleaningWords()[0] = "changed"
	if wear.CleaningWords()[0] != "none" {
		t.Error("a change of the list that CleaningWords returned stays")
	}
}

func TestPressureAndAbrasion(t *testing.T) {
	for _, c := range []struct {
		kept, dries        string
		pressure, abrasion tables.Grade
	}{
		{"", "", tables.Heavy, tables.None},
		{"afloat", "none", tables.Heavy, tables.None},
		{"afloat", "soft", tables.Heavy, tables.Light},
		{"afloat", "firm", tables.Heavy, tables.Heavy},
		{"trailer", "", tables.None, tables.Medium},
		{"trailer", "soft", tables.None, tables.Medium},
		{"trailer", "firm", tables.None, tables.Heavy},
		{"lift", "", tables.None, tables.Light},
		{"lift", "soft", tables.None, tables.Light},
	} {
		u := wear.Use{Kept: c.kept, DriesOn: c.dries, Growth: tables.Heavy}
		if p, a := u.Pressure(), u.Abrasion(); p != c.pressure || a != c.abrasion {
			t.Errorf("kept %q, dries on %q: pressure %s, abrasion %s; want %s, %s", c.kept, c.dries, p, a, c.pressure, c.abrasion)
		}
	}
	if p := (wear.Use{}).Pressure(); p != 0 {
		t.Errorf("a pressure that was not given is %s", p)
	}
}
