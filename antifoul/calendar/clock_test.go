package calendar_test

import (
	"fmt"
	"math"
	"testing"
	"time"

	"boatyard.example/bottomwork/antifoul/calendar"
	"boatyard.example/bottomwork/antifoul/weather"
	"boatyard.example/bottomwork/tables/quantity"
)

func clock(tb testing.TB, rows, key string) calendar.Clock {
	tb.Helper()
	b := book(tb, rows)
	k, err := calendar.ClockOf(b, coating(tb, b, key))
	if err != nil {
		tb.Fatal(err)
	}
	return k
}

// at makes an own table in which cures have one energy, or a range, and the epoxy primer states its times at a temperature.
func at(energy, degC string) string {
	return fmt.Sprintf(`
[[drying]]
key = "two-pack"
basis = "own table"
source = "a test"
energy = %s

[[coating]]
key = "epoxy-primer"
basis = "own table"
source = "a test"
at = "%s degC"
`, energy, degC)
}

// exp(energy ÷ R × (1/T₀ − 1/T)), R = 8.314462618 J/mol/K, worked outside of this module: how much faster a cure is at `to` than at
// `from`. At 5 degC the span begins, so that the last column is its end. Derived.
func TestCureRatios(t *testing.T) {
	for _, c := range []struct {
		energy   string
		from, to string
		toC      float64
		want     float64
	}{
		{"50", "10", "20", 20, 2.0637},
		{"50", "15", "25", 25, 2.0137},
		{"50", "20", "30", 30, 1.9674},
		{"50", "23", "10", 10, 0.3937},
		{"50", "23", "5", 5, 0.2687},
		{"55", "10", "20", 20, 2.2187},
		{"55", "15", "25", 25, 2.1597},
		{"55", "20", "30", 30, 2.1051},
		{"55", "23", "10", 10, 0.3586},
		{"55", "23", "5", 5, 0.2356},
		{"60", "10", "20", 20, 2.3854},
		{"60", "15", "25", 25, 2.3163},
		{"60", "20", "30", 30, 2.2525},
		{"60", "23", "10", 10, 0.3267},
		{"60", "23", "5", 5, 0.2066},
		// Exact doubling within ten degrees.
		{"47.84", "10", "20", 20, 2},
		{"49.51", "15", "25", 25, 2},
		{"51.22", "20", "30", 30, 2},
	} {
		k := clock(t, at(c.energy, c.from), "epoxy-primer")
		if got := k.Slow(c.toC); !near(got, c.want, 0.00011) {
			t.Errorf("%s kJ/mol, %s to %s degC: slow %.5f, want %.4f", c.energy, c.from, c.to, got, c.want)
		}
		if got := k.Fast(c.toC); !near(got, c.want, 0.00011) {
			t.Errorf("%s kJ/mol, %s to %s degC: fast %.5f, want %.4f", c.energy, c.from, c.to, got, c.want)
		}
	}
}

// With a range of energies each hand takes its careful end: of 50 and 60 kJ/mol, from 20 degC, 50 gives less in the heat and 60 in the cold.
func TestTheHandsTakeTheirEnds(t *testing.T) {
	k := clock(t, at("[50, 55, 60]", "20"), "epoxy-primer")
	for _, c := range []struct{ degC, slow, fast float64 }{
		{30, 1.9674, 2.2525},
		{20, 1, 1},
		{10, 1 / 2.3854, 1 / 2.0637},
	} {
		if !near(k.Slow(c.degC), c.slow, 0.0001) || !near(k.Fast(c.degC), c.fast, 0.0001) {
			t.Errorf("%g degC: slow %.5f, fast %.5f; want %.4f, %.4f", c.degC, k.Slow(c.degC), k.Fast(c.degC), c.slow, c.fast)
		}
	}
}

// The span of the row is 5 to 35 degC. At 55 kJ/mol, from 20 degC: 5 degC gives exp(55000/8.314462618 × (1/293.15 − 1/278.15)) =
// exp(6615.0 × (0.00341122 − 0.00359518)) = exp(−1.21689) = 0.29615; 35 degC gives exp(6615.0 × (0.00341122 − 0.00324517)) = exp(1.09843) = 2.9994.
func TestTheEndsOfTheSpan(t *testing.T) {
	k := clock(t, oneEnergy, "epoxy-primer")
	const cold, hot = 0.29615, 2.9994
	for _, c := range []struct{ degC, slow, fast float64 }{
		{-10, 0, cold}, {4.999, 0, cold}, {5, cold, cold}, {35, hot, hot}, {35.001, hot, hot}, {60, hot, math.NaN()},
	} {
		if got := k.Slow(c.degC); !near(got, c.slow, 0.0008) {
			t.Errorf("slow at %g degC: %.5f, want %.5f", c.degC, got, c.slow)
		}
		if got := k.Fast(c.degC); !math.IsNaN(c.fast) && !near(got, c.fast, 0.0008) {
			t.Errorf("fast at %g degC: %.5f, want %.5f", c.degC, got, c.fast)
		}
	}
	// Heat above the span still shortens the window: 40 degC gives exp(6615.0 × (1/293.15 − 1/313.15)) = exp(1.44119) = 4.2258.
	if got := k.Fast(40); !near(got, 4.2258, 0.003) {
		t.Errorf("fast at 40 degC: %.4f, want 4.2258", got)
	}
	if k.Slow(40) > k.Slow(35) {
		t.Errorf("slow at 40 degC: %.4f is more than at the end of the span, %.4f", k.Slow(40), k.Slow(35))
	}
}

// Points of one-pack coats in solvent, [low, typical, high] multiples of the time at 20 degC: 5: 1.5, 2, 3 · 10: 1.25, 1.5, 2 ·
// 15: 1, 1.25, 1.5 · 20: 1 · 30: 0.5, 0.75, 1. The slow hand goes by the most times of the point below, the fast one by the least of that above.
func TestPoints(t *testing.T) {
	k := clock(t, "", "hard-cuprous")
	for _, c := range []struct{ degC, slow, fast float64 }{
		{-5, 0, 1 / 1.5}, // no less than at the coldest point
		{4.99, 0, 1 / 1.5},
		{5, 1.0 / 3, 1 / 1.5},
		{5.01, 1.0 / 3, 1 / 1.25},
		{9.99, 1.0 / 3, 1 / 1.25},
		{10, 1.0 / 2, 1 / 1.25},
		{12.5, 1.0 / 2, 1},
		{15, 1 / 1.5, 1},
		{19.99, 1 / 1.5, 1},
		{20, 1, 1},
		{20.01, 1, 2},
		{29.99, 1, 2},
		{30, 1, 2},
	} {
		if got := k.Slow(c.degC); !near(got, c.slow, 1e-9) {
			t.Errorf("slow at %g degC: %.5f, want %.5f", c.degC, got, c.slow)
		}
		if got := k.Fast(c.degC); !near(got, c.fast, 1e-9) {
			t.Errorf("fast at %g degC: %.5f, want %.5f", c.degC, got, c.fast)
		}
	}
	if k.Slow(45) > 1 {
		t.Errorf("slow at 45 degC: %g; nothing is known of it, so no more than at the hottest point", k.Slow(45))
	}
	if k.Fast(45) < 2 {
		t.Errorf("fast at 45 degC: %g; no less than at the hottest point", k.Fast(45))
	}
}

func TestHandsOverTheWholeRange(t *testing.T) {
	b := book(t, "")
	n := 0
	for c := range b.Coatings() {
		if !c.At.Given() {
			continue
		}
		n++
		k, err := calendar.ClockOf(b, c)
		if err != nil {
			t.Errorf("%s: %v", c.Key, err)
			continue
		}
		var slow, fast float64
		for i := -400; i <= 700; i++ {
			degC := float64(i) / 10
			s, f := k.Slow(degC), k.Fast(degC)
			if s > f+1e-12 || s < 0 || f <= 0 || math.IsNaN(s) || math.IsNaN(f) || math.IsInf(f, 0) {
				t.Errorf("%s at %g degC: slow %g, fast %g", c.Key, degC, s, f)
			}
			if s < slow || f < fast {
				t.Errorf("%s at %g degC: a hand goes slower than where it is colder: %g after %g, %g after %g", c.Key, degC, s, slow, f, fast)
			}
			slow, fast = s, f
		}
		own := c.At.Float(degC(0).Unit())
		if k.Slow(own) > 1+1e-12 || k.Fast(own) < 1-1e-12 {
			t.Errorf("%s at its own %g degC: slow %g, fast %g, want 1 between them", c.Key, own, k.Slow(own), k.Fast(own))
		}
	}
	if n < 20 {
		t.Errorf("only %d coatings have a temperature", n)
	}
	var zero calendar.Clock
	if zero.Slow(-3) != 1 || zero.Slow(3) != 1 || zero.Fast(33) != 1 {
		t.Errorf("the zero clock passes %g and %g, want as stated", zero.Slow(3), zero.Fast(33))
	}
}

func TestNoClock(t *testing.T) {
	b := book(t, "")
	c := coating(t, b, "epoxy-primer")
	c.Packs = 7
	if _, err := calendar.ClockOf(b, c); err == nil {
		t.Error("a coating of seven packs has a clock")
	}
	c = coating(t, b, "epoxy-primer")
	c.At = degC(0)
	if _, err := calendar.ClockOf(b, c); err != nil {
		t.Errorf("a row that states its times at 0 degC has a temperature: %v", err)
	}
	c.At = quantity.Temperature{}
	if _, err := calendar.ClockOf(b, c); err == nil {
		t.Error("a coating that does not say at which temperature its times hold has a clock")
	}
}

// One coat from 08:00 to 09:00 and the next. At 55 kJ/mol an hour at 10 degC is 1/2.2187 = 0.45072 of one at 20, an hour at 30 is 2.1051.
// Opens 4 h after 09:00: 2 h at 20 give 2, then 2/0.45072 = 4.4374 h at 10 are missing: 15:26:14, so 16:00 is
// the first whole hour that lies in the window.
// Closes 24 h after 08:00: to 11:00 are 3, ten hours at 10 give 4.5072, to 21:00; the rest, 16.4928, passes at 30: 7.8347 h, to 04:50:05, so 04:00
// is the last.
func TestWindowOverChangingTemperature(t *testing.T) {
	b := book(t, oneEnergy)
	loc := time.UTC
	f := run(on(t, loc, "2027-04-12 00:00"), 96, func(_ int, at time.Time) weather.Hour {
		w := fair()
		w.HumidityPct = 20
		switch since := at.Sub(on(t, loc, "2027-04-12 08:00")).Hours(); {
		case since >= 13:
			w.SurfaceC = 30
		case since >= 3:
			w.SurfaceC = 10
		}
		return w
	})
	l := calendar.Layer{Coat: weather.Coat{Coating: coating(t, b, "epoxy-primer")}, Opens: h(4), Closes: h(24), Again: 1}
	tasks := []calendar.Task{
		{Name: "first", Hours: 1, Layers: []calendar.Layer{l}},
		{Name: "second", Hours: 1, Layers: []calendar.Layer{l}},
	}
	d := calendar.Days{Free: every(t, "2027-04-12", 3), Start: 8 * 60, Stop: 18 * 60, SetUp: h(0)}
	p := arrange(t, b, tasks, d, "2027-04-12", calendar.Conditions{Zone: loc, Forecast: f})
	if len(p.Items) != 2 {
		t.Fatalf("%d items: %v", len(p.Items), p.Findings)
	}
	second := p.Items[1]
	if opens, want := second.Opens, on(t, loc, "2027-04-12 16:00"); !opens.Equal(want) {
		t.Errorf("opens %s, want %s", opens, want)
	}
	if closes, want := second.Closes, on(t, loc, "2027-04-13 04:00"); !closes.Equal(want) {
		t.Errorf("closes %s, want %s", closes, want)
	}
	if want := on(t, loc, "2027-04-12 16:00"); !second.Start().Equal(want) || second.Again {
		t.Errorf("the second begins %s, again %t; want %s, the first whole hour in the window", second.Start(), second.Again, want)
	}
}
