package calendar_test

import (
	"fmt"
	"math"
	"math/rand/v2"
	"slices"
	"testing"
	"time"

	"boatyard.example/bottomwork/antifoul/calendar"
	"boatyard.example/bottomwork/antifoul/weather"
	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/quantity"
)

// job is one question to Arrange.
type job struct {
	tasks []calendar.Task
	d     calendar.Days
	from  quantity.Date
	c     calendar.Conditions
}

// randomSky makes weather of three moods that last for hours: fair, damp and wet, on a day's wave of temperature.
func randomSky(r *rand.Rand, from time.Time, n int) weather.Forecast {
	mean, wave, mood, left := 8+10*r.Float64(), 8*r.Float64(), 0, 0
	measured, unknown := r.IntN(3) == 0, r.IntN(3) == 0
	return run(from, n, func(_ int, at time.Time) weather.Hour {
		if left == 0 {
			mood, left = r.IntN(4), 3+r.IntN(20)
		}
		left--
		air := mean - wave*math.Cos(2*math.Pi*(float64(at.Hour())-3)/24) + r.Float64()
		w := weather.Hour{AirC: air, SurfaceC: weather.Unknown(), HumidityPct: 40 + 30*r.Float64(), RainMM: 0, WindMS: 9 * r.Float64()}
		switch mood {
		case 1:
			w.HumidityPct = 70 + 25*r.Float64()
		case 2:
			w.HumidityPct, w.RainMM = 90, 2*r.Float64()
		}
		if measured {
			w.SurfaceC = air - r.Float64()
		}
		if unknown && r.IntN(12) == 0 {
			w.RainMM = weather.Unknown()
		}
		if unknown && r.IntN(12) == 0 {
			w.HumidityPct = weather.Unknown()
		}
		return w
	})
}

func randomLayer(r *rand.Rand, b *tables.Book, pool []tables.Coating, stuff []tables.Material) calendar.Layer {
	l := calendar.Layer{
		Coat:  weather.Coat{Coating: pool[r.IntN(len(pool))], On: []tables.Material{stuff[r.IntN(len(stuff))]}},
		Again: float64(1+r.IntN(4)) / 2, Late: r.IntN(6) == 0,
	}
	if r.IntN(3) == 0 {
		l.On = append(l.On, stuff[r.IntN(len(stuff))])
	}
	if r.IntN(4) == 0 {
		l.By, _ = b.Loss("airless-open")
	}
	l.Falling = r.IntN(12) == 0
	if r.IntN(4) > 0 {
		l.Opens = h(int64(r.IntN(24)))
	}
	if r.IntN(4) > 0 {
		l.Closes = h(int64(24 + r.IntN(96)))
	}
	if r.IntN(2) == 0 {
		l.Cures = h(int64(r.IntN(200)))
	}
	if r.IntN(8) == 0 {
		l.Stands = quantity.Hour.N(int64(24 * (20 + r.IntN(60))))
	}
	return l
}

// randomJob makes work of a few tasks in one of several zones, round the changes of their clocks.
func randomJob(tb testing.TB, r *rand.Rand, b *tables.Book) job {
	tb.Helper()
	var pool []tables.Coating
	for _, key := range []string{"epoxy-primer", "epoxy-barrier", "one-pack-primer", "tie-coat", "hard-cuprous", "ablative-cuprous-water", "foul-release-silicone", "thin-film-thiocyanate"} {
		pool = append(pool, coating(tb, b, key))
	}
	var stuff []tables.Material
	for m := range b.Materials() {
		stuff = append(stuff, m)
	}
	zones := []string{"Europe/Copenhagen", "America/New_York", "Australia/Adelaide", "Asia/Kolkata", "UTC", "Atlantic/Azores"}
	starts := []string{"2027-03-20", "2027-03-10", "2027-10-25", "2027-04-01", "2027-05-10"}
	var j job
	j.c.Zone = zone(tb, zones[r.IntN(len(zones))])
	if r.IntN(10) == 0 {
		j.c.Zone = nil
	}
	loc := j.c.Zone
	if loc == nil {
		loc = time.UTC
	}
	j.from = day(tb, starts[r.IntN(len(starts))]).AddDays(r.IntN(7))
	for w := range 7 {
		if r.IntN(2) == 0 {
			j.d.Weekdays = append(j.d.Weekdays, time.Weekday(w))
		}
	}
	j.d.Free = []quantity.Date{j.from.AddDays(r.IntN(5)), j.from.AddDays(5 + r.IntN(20))}
	if lost := j.from.AddDays(1 + r.IntN(9)); !slices.Contains(j.d.Free, lost) {
		j.d.Taken = []quantity.Date{lost}
	}
	j.d.Start, j.d.Stop = 60*(6+r.IntN(5))+30*r.IntN(2), 60*(15+r.IntN(6))
	j.d.Hands = 1 + r.IntN(2)
	switch r.IntN(3) {
	case 0:
		j.d.SetUp = h(0)
	case 1:
		j.d.SetUp = h(2)
	}
	if r.IntN(2) == 0 {
		j.d.Launch = j.from.AddDays(15 + r.IntN(40))
		j.d.LaunchOpen = quantity.YesNo(r.IntN(3))
		if r.IntN(2) == 0 {
			j.d.Reserve = h(24 * int64(r.IntN(6)))
		}
	}
	if r.IntN(4) == 0 {
		j.d.Roof = quantity.Yes
	}
	if r.IntN(4) > 0 {
		y, m, d := j.from.AddDays(-r.IntN(3)).Year(), j.from.Month(), j.from.Day()
		j.c.Forecast = randomSky(r, time.Date(y, m, d, 0, 0, 0, 0, loc), 24*(3+r.IntN(18)))
	}
	if r.IntN(3) > 0 || len(j.c.Forecast.Hours) > 0 {
		j.c.Usual = degC(int64(6 + r.IntN(20)))
	}
	for n := range 1 + r.IntN(5) {
		t := calendar.Task{Name: fmt.Sprintf("task %d", n), Hours: float64(1+r.IntN(10)) / 2}
		if r.IntN(4) > 0 {
			for range 1 + r.IntN(2) {
				t.Layers = append(t.Layers, randomLayer(r, b, pool, stuff))
			}
			t.Hours = float64(1+r.IntN(7)) / 2
		} else {
			t.Dry = r.IntN(2) == 0
			t.Yard = r.IntN(5) == 0
		}
		if r.IntN(12) == 0 {
			t.On = j.from.AddDays(n + r.IntN(10))
		}
		if r.IntN(6) == 0 {
			t.Wait = h(int64(r.IntN(40)))
		}
		j.tasks = append(j.tasks, t)
	}
	return j
}

// Of thousands of plans none breaks anything, as far as somebody can tell who did not make them.
func TestNoPlanBreaksAnything(t *testing.T) {
	if underRace {
		t.Skip("many times as slow with the race detector; .ci/run plans without it")
	}
	r := rand.New(rand.NewPCG(7, 11))
	b := book(t, "")
	fits, again, measured, none, faults, bad := 0, 0, 0, 0, 0, 0
	for n := range many(3200) {
		j := randomJob(t, r, b)
		p, err := calendar.Arrange(b, j.tasks, j.d, j.from, j.c)
		if err != nil {
			faults++
			if faults < 3 {
				t.Logf("job %d: %v", n, err)
			}
			continue
		}
		v := newVerifier(t, b, j.tasks, j.d, j.from, j.c)
		for _, s := range v.breaches(t, p) {
			bad++
			if bad < 40 {
				t.Errorf("job %d (%s): %s", n, j.c.Zone, s)
			}
		}
		switch {
		case len(p.Items) == 0:
			none++
		case p.Fits:
			fits++
		}
		again += p.Again
		measured += p.Measure
	}
	t.Logf("%d fit, %d abradings, %d measurements, %d without items, %d faulty, %d breaches", fits, again, measured, none, faults, bad)
	if fits < many(1000) || again < many(200) || measured < many(500) || none > many(1500) || faults > many(400) {
		t.Error("too few plans of each kind to tell anything")
	}
}
