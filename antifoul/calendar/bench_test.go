package calendar_test

import (
	"fmt"
	"math"
	"testing"
	"time"

	"boatyard.example/bottomwork/antifoul/calendar"
	"boatyard.example/bottomwork/antifoul/weather"
	"boatyard.example/bottomwork/tables"
)

// yearJob is a year of hourly weather, twenty tasks of the hull and of her keel, and five coats and a shift on the places where she stood.
func yearJob(tb testing.TB) job {
	tb.Helper()
	b := book(tb, "")
	f := run(on(tb, time.UTC, "2027-01-01 00:00"), 365*24, func(i int, at time.Time) weather.Hour {
		day := float64(at.YearDay())
		return weather.Hour{
			AirC:        9 - 9*math.Cos(2*math.Pi*(day-20)/365) - 5*math.Cos(2*math.Pi*(float64(at.Hour())-3)/24),
			SurfaceC:    weather.Unknown(),
			HumidityPct: 65 + 20*math.Sin(float64(i)/31),
			RainMM:      math.Max(0, math.Sin(float64(i)/17)-0.85),
			WindMS:      4 + 4*math.Sin(float64(i)/13),
		}
	})
	j := job{from: day(tb, "2027-01-02"), c: calendar.Conditions{Zone: time.UTC, Forecast: f}}
	j.d = weekendDays()
	j.d.SetUp = h(1)
	j.d.Launch = day(tb, "2027-06-01")
	j.d.Reserve = h(48)
	layer := func(key string, opens, closes int64) calendar.Layer {
		return calendar.Layer{
			Coat:  weather.Coat{Coating: coating(tb, b, key), On: []tables.Material{material(tb, b, "grp"), material(tb, b, "lead")}},
			Opens: h(opens), Closes: h(closes), Cures: h(24), Again: 3,
		}
	}
	add := func(where string, coats int) {
		for i := range coats {
			l := layer("epoxy-barrier", 6, 72)
			if i >= coats/2 {
				l = layer("hard-cuprous", 12, 24*60)
			}
			j.tasks = append(j.tasks, calendar.Task{Name: fmt.Sprintf("%s, coat %d", where, i+1), Hours: 2.5, Layers: []calendar.Layer{l}})
		}
	}
	for i := range 10 {
		j.tasks = append(j.tasks, calendar.Task{Name: fmt.Sprintf("sand %d", i), Hours: 3.5, Dry: i%2 == 0})
	}
	add("hull", 10)
	j.tasks = append(j.tasks, calendar.Task{Name: "shift", Hours: 2, Yard: true})
	add("where she stood", 16)
	return j
}

// A year is planned well within the patience of a person: less than half a second on a slow machine, a bound that a plan of all ways one by
// one would never meet.
func TestAYearIsQuick(t *testing.T) {
	b := book(t, "")
	j := yearJob(t)
	start := time.Now()
	p, err := calendar.Arrange(b, j.tasks, j.d, j.from, j.c)
	if err != nil {
		t.Fatal(err)
	}
	if took := time.Since(start); took > 2*time.Second {
		t.Errorf("a year took %s", took)
	}
	if len(p.Items) < len(j.tasks) {
		t.Errorf("%d items of %d tasks: %v", len(p.Items), len(j.tasks), p.Findings)
	}
}

func BenchmarkArrangeYear(b *testing.B) {
	bk := book(b, "")
	j := yearJob(b)
	b.ReportAllocs()
	for b.Loop() {
		if _, err := calendar.Arrange(bk, j.tasks, j.d, j.from, j.c); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkToday(b *testing.B) {
	bk := book(b, "")
	j := yearJob(b)
	now := on(b, time.UTC, "2027-04-17 09:00")
	b.ReportAllocs()
	for b.Loop() {
		if _, err := calendar.Today(bk, j.tasks[12], j.d, now, j.c); err != nil {
			b.Fatal(err)
		}
	}
}
