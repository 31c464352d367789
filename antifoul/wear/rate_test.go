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

func TestRateRisesOverTheWholeGrid(t *testing.T) {
	b := tables.Default()
	wears, stays := wearing(t)
	n := 0
	grid(t, func(u wear.Use) {
		for _, c := range wears {
			if r := wear.Rate(b, c, u); !sound(r) || r.Low <= 0 {
				t.Fatalf("%s in %+v wears %v", c.Key, u, r)
			}
			n++
		}
	})
	if n < 50_000 {
		t.Errorf("%d rates, want the whole grid", n)
	}
	for _, c := range stays {
		if r := wear.Rate(b, c, wear.Use{UnderWay: quantity.Hour.N(500)}); r != (quantity.Range[float64]{}) {
			t.Errorf("%s does not wear, and wears %v", c.Key, r)
		}
	}
}

// Along each field, with the others as they are, the next value never wears the film less.
func TestRateIsMonotone(t *testing.T) {
	b := tables.Default()
	wears, _ := wearing(t)
	for what, along := range map[string]struct {
		values []string
		free   func(u wear.Use) bool // the use of the grid that the field is put into
		set    func(u *wear.Use, v string)
	}{
		"hours": {hours[1:], func(u wear.Use) bool { return !u.UnderWay.Given() }, func(u *wear.Use, v string) { u.UnderWay = parse[quantity.Duration](t, v) }},
		"speed": {speeds[1:], func(u wear.Use) bool { return !u.Speed.Given() }, func(u *wear.Use, v string) { u.Speed = parse[quantity.Speed](t, v) }},
		"warmth": {warmths[1:], func(u wear.Use) bool { return !u.WaterTemperature.Given() }, func(u *wear.Use, v string) {
			u.WaterTemperature = parse[quantity.Temperature](t, v)
		}},
	} {
		rises := false
		grid(t, func(u wear.Use) {
			if !along.free(u) {
				return
			}
			for _, c := range wears {
				var last quantity.Range[float64]
				for _, v := range along.values {
					along.set(&u, v)
					r := wear.Rate(b, c, u)
					if !noLess(r, last) {
						t.Fatalf("%s, %s: %v at %s and %v one step before, in %+v", c.Key, what, r, v, last, u)
					}
					rises = rises || last.Typical > 0 && r.Typical > last.Typical
					last = r
				}
			}
		})
		if !rises {
			t.Errorf("%s never makes a difference", what)
		}
	}
}

func TestSaltWaterWearsMost(t *testing.T) {
	b := tables.Default()
	wears, _ := wearing(t)
	grid(t, func(u wear.Use) {
		if u.Water != "salt" {
			return
		}
		salt := wear.Rate(b, wears[0], u)
		for _, water := range []string{"brackish", "fresh"} {
			u.Water = water
			if r := wear.Rate(b, wears[0], u); !noLess(salt, r) {
				t.Fatalf("%s water wears %v, salt %v, in %+v", water, r, salt, u)
			}
		}
		u.Water = ""
		if r := wear.Rate(b, wears[0], u); r != salt {
			t.Fatalf("water not given wears %v, salt %v", r, salt)
		}
	})
}

// At the reference, the rate is the row's own: at rest without hours under way, in use with hours beyond the high end of what
// counts as regular use; without hours given, from the one to the other.
func TestRateAtTheReference(t *testing.T) {
	b := tables.Default()
	wears, _ := wearing(t)
	for _, c := range wears {
		um := func(f quantity.Film) float64 { return f.Float(quantity.Micrometre) }
		u := wear.Use{Speed: quantity.Knot.N(6), WaterTemperature: quantity.Celsius.N(15), Water: "salt"}
		near := func(what string, got quantity.Range[float64], low, typical, high float64) {
			t.Helper()
			for i, want := range [3]float64{low, typical, high} {
				if math.Abs(ends(got)[i]-want) > 1e-9 {
					t.Errorf("%s %s: %v, want %g, %g, %g", c.Key, what, got, low, typical, high)
					return
				}
			}
		}
		rest, use := c.WearRest, c.WearUse
		near("not given", wear.Rate(b, c, u), um(rest.Low), (um(rest.Typical)+um(use.Typical))/2, um(use.High))
		u.UnderWay = quantity.Hour.N(0)
		near("at rest", wear.Rate(b, c, u), um(rest.Low), um(rest.Typical), um(rest.High))
		u.UnderWay = quantity.Hour.N(12 * 40)
		near("in use", wear.Rate(b, c, u), um(use.Low), um(use.Typical), um(use.High))
		u.UnderWay = quantity.Hour.N(8784)
		near("always under way", wear.Rate(b, c, u), um(use.Low), um(use.Typical), um(use.High))
		u.UnderWay = quantity.Hour.N(12 * 10) // 10 h a month: a quarter of the high end, half of the typical, all of the low
		near("some use", wear.Rate(b, c, u), 0.75*um(rest.Low)+0.25*um(use.Low), 0.5*um(rest.Typical)+0.5*um(use.Typical), um(use.High))
	}
}

// The rate is one of the month afloat: the same hours in half the time are twice as many a month.
func TestRateIsOfTheMonthAfloat(t *testing.T) {
	b := tables.Default()
	c := coating(t, b, "ablative-cuprous-multi")
	whole := wear.Use{UnderWay: quantity.Hour.N(100)}
	half := wear.Use{UnderWay: quantity.Hour.N(50), AshoreEachYear: quantity.Month.N(6)}
	if r, s := wear.Rate(b, c, whole), wear.Rate(b, c, half); r != s {
		t.Errorf("100 h in 12 months wear %v, 50 h in 6 months %v", r, s)
	}
	never := wear.Use{UnderWay: quantity.Hour.N(50), AshoreEachYear: quantity.Month.N(12)}
	still := wear.Use{UnderWay: quantity.Hour.N(0)}
	if r, s := wear.Rate(b, c, never), wear.Rate(b, c, still); r != s {
		t.Errorf("ashore all year wears %v, at rest %v", r, s)
	}
}

// Ten degrees are one power of the row's factor, twenty two; below the reference the ends change places.
func TestRateInWarmWater(t *testing.T) {
	b := tables.Default()
	c := coating(t, b, "ablative-cuprous-multi")
	q, err := b.Factor("q10")
	if err != nil {
		t.Fatal(err)
	}
	at := wear.Rate(b, c, wear.Use{})
	for _, k := range []struct {
		degrees int64
		power   float64
		turned  bool
	}{{15, 0, false}, {25, 1, false}, {35, 2, false}, {5, -1, true}} {
		r := wear.Rate(b, c, wear.Use{WaterTemperature: quantity.Celsius.N(k.degrees)})
		low, high := math.Pow(q.Value.Low, k.power), math.Pow(q.Value.High, k.power)
		if k.turned {
			low, high = high, low
		}
		if math.Abs(r.Low-at.Low*low) > 1e-9 || math.Abs(r.Typical-at.Typical*math.Pow(q.Value.Typical, k.power)) > 1e-9 || math.Abs(r.High-at.High*high) > 1e-9 {
			t.Errorf("at %d °C it wears %v, at the reference %v", k.degrees, r, at)
		}
	}
}

// A book without the factor rows counts each as 1, and nothing breaks.
func TestRateWithoutFactors(t *testing.T) {
	c := coating(t, tables.Default(), "ablative-cuprous-multi")
	grid(t, func(u wear.Use) {
		if r := wear.Rate(new(tables.Book), c, u); !sound(r) {
			t.Fatalf("%+v wears %v", u, r)
		}
	})
	// One hour a month is all the regular use that such a book knows of: half an hour is half way from rest to use.
	um := func(f quantity.Film) float64 { return f.Float(quantity.Micrometre) }
	r := wear.Rate(new(tables.Book), c, wear.Use{UnderWay: quantity.Hour.N(6)})
	if want := (um(c.WearRest.Typical) + um(c.WearUse.Typical)) / 2; math.Abs(r.Typical-want) > 1e-9 {
		t.Errorf("half an hour a month wears %v, want %g", r, want)
	}
}

// Of a boat that is afloat for a month or less the hours count as those of any other.
func TestRateOfAShortSeason(t *testing.T) {
	b := tables.Default()
	c := coating(t, b, "ablative-cuprous-multi")
	whole := wear.Rate(b, c, wear.Use{UnderWay: quantity.Hour.N(12 * 10)})
	for _, s := range []struct{ ashore, hours string }{{"11 months", "10 h"}, {"11.5 months", "5 h"}} {
		got := wear.Rate(b, c, wear.Use{UnderWay: parse[quantity.Duration](t, s.hours), AshoreEachYear: parse[quantity.Months](t, s.ashore)})
		for i, want := range ends(whole) {
			if math.Abs(ends(got)[i]-want) > 1e-9 {
				t.Errorf("%s, %s ashore: %v, want %v", s.hours, s.ashore, got, whole)
			}
		}
	}
}

// The two factors of the water are multiplied at each end: of water at 25 °C, ten degrees above the reference, the row q10 itself.
func TestRateInWarmBrackishWater(t *testing.T) {
	b, err := tables.Default().With(fstest.MapFS{"own.toml": {Data: []byte("[[factor]]\nkey = \"wear-brackish\"\nbasis = \"own table\"\nsource = \"a boat\"\nvalue = [0.4, 0.5, 0.8]\n")}})
	if err != nil {
		t.Fatal(err)
	}
	q, err := b.Factor("q10")
	if err != nil {
		t.Fatal(err)
	}
	c := coating(t, b, "ablative-cuprous-multi")
	still := wear.Use{UnderWay: quantity.Hour.N(0)}
	at := wear.Rate(b, c, still)
	still.Water, still.WaterTemperature = "brackish", quantity.Celsius.N(25)
	got := wear.Rate(b, c, still)
	for i, brackish := range [3]float64{0.4, 0.5, 0.8} {
		if want := ends(at)[i] * ends(q.Value)[i] * brackish; math.Abs(ends(got)[i]-want) > 1e-9 {
			t.Errorf("warm and brackish %v, end %d, want %g", got, i, want)
		}
	}
}

func ExampleRate() {
	book := tables.Default()
	c, err := book.Coating("ablative-cuprous-multi")
	if err != nil {
		fmt.Println(err)
		return
	}
	still := wear.Rate(book, c, wear.Use{UnderWay: quantity.Hour.N(0)})
	moving := wear.Rate(book, c, wear.Use{UnderWay: quantity.Hour.N(480), Speed: quantity.Knot.N(6)})
	fmt.Printf("at rest %g to %g um a month, in use %g to %g\n", still.Low, still.High, moving.Low, moving.High)
	fmt.Println("rests on:", c.Basis("wear_use").Kind)
	// Output:
	// at rest 0.5 to 3 um a month, in use 3 to 8
	// rests on: assumption
}

func BenchmarkRate(b *testing.B) {
	book := tables.Default()
	c := coating(b, book, "ablative-cuprous-multi")
	u := wear.Use{UnderWay: quantity.Hour.N(200), Speed: quantity.Knot.N(7), WaterTemperature: quantity.Celsius.N(18), Water: "brackish"}
	b.ReportAllocs()
	for b.Loop() {
		wear.Rate(book, c, u)
	}
}
