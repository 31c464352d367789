package calendar_test

import (
	"math"
	"testing"
	"testing/fstest"
	"time"
	_ "time/tzdata" // the tests know every zone, whatever the machine has

	"boatyard.example/bottomwork/antifoul/calendar"
	"boatyard.example/bottomwork/antifoul/weather"
	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/quantity"
)

func book(tb testing.TB, rows string) *tables.Book {
	tb.Helper()
	if rows == "" {
		return tables.Default()
	}
	b, err := tables.Default().With(fstest.MapFS{"own.toml": {Data: []byte(rows)}})
	if err != nil {
		tb.Fatal(err)
	}
	return b
}

// oneEnergy makes two-pack coats cure by 55 kJ/mol and no other, so that both hands of their clocks agree inside the span.
const oneEnergy = `
[[drying]]
key = "two-pack"
basis = "own table"
source = "a test"
energy = 55
`

// many is how many of the jobs that are drawn are planned: an eighth of them in a short run.
func many(n int) int {
	if testing.Short() {
		return n / 8
	}
	return n
}

func coating(tb testing.TB, b *tables.Book, key string) tables.Coating {
	tb.Helper()
	c, err := b.Coating(key)
	if err != nil {
		tb.Fatal(err)
	}
	return c
}

func material(tb testing.TB, b *tables.Book, key string) tables.Material {
	tb.Helper()
	m, err := b.Material(key)
	if err != nil {
		tb.Fatal(err)
	}
	return m
}

func zone(tb testing.TB, name string) *time.Location {
	tb.Helper()
	loc, err := time.LoadLocation(name)
	if err != nil {
		tb.Fatal(err)
	}
	return loc
}

func h(n int64) quantity.Duration { return quantity.Hour.N(n) }

func degC(n int64) quantity.Temperature { return quantity.Celsius.N(n) }

// run makes a forecast of n hours from a moment on, each as the function tells by its number.
func run(from time.Time, n int, hour func(i int, t time.Time) weather.Hour) weather.Forecast {
	hours := make([]weather.Hour, n)
	for i := range hours {
		t := from.Add(time.Duration(i) * time.Hour)
		hours[i] = hour(i, t)
		hours[i].At = t
	}
	return weather.Forecast{Hours: hours}
}

// fair is an hour that takes every coat: 20 degC, measured; the dew point of half-dry air is 9.26 degC.
func fair() weather.Hour {
	return weather.Hour{AirC: 20, SurfaceC: 20, HumidityPct: 50, RainMM: 0, WindMS: 1}
}

// on is a moment on the wall of a zone.
func on(tb testing.TB, loc *time.Location, s string) time.Time {
	tb.Helper()
	t, err := time.ParseInLocation("2006-01-02 15:04", s, loc)
	if err != nil {
		tb.Fatal(err)
	}
	return t
}

func arrange(tb testing.TB, b *tables.Book, tasks []calendar.Task, d calendar.Days, from string, c calendar.Conditions) calendar.Calendar {
	tb.Helper()
	got, err := calendar.Arrange(b, tasks, d, day(tb, from), c)
	if err != nil {
		tb.Fatalf("Arrange: %v", err)
	}
	return got
}

func near(a, b, within float64) bool { return math.Abs(a-b) <= within }

// every lists n days from one on.
func every(tb testing.TB, from string, n int) []quantity.Date {
	tb.Helper()
	days := make([]quantity.Date, n)
	for i := range days {
		days[i] = day(tb, from).AddDays(i)
	}
	return days
}
