package weather_test

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"boatyard.example/bottomwork/antifoul/weather"
	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

// Dew points by the WMO's coefficients, worked apart from this code, and by the ASHRAE formulation in a general-purpose library of
// psychrometrics; the two differ by up to 0.02 degC. Agreement: 0.01 and 0.03 degC.
func TestDewPoints(t *testing.T) {
	b := tables.Default()
	for _, c := range []struct{ air, humidity, wmo, ashrae float64 }{
		{10, 50, 0.04, 0.06},
		{10, 70, 4.78, 4.79},
		{10, 90, 8.43, 8.44},
		{15, 50, 4.65, 4.67},
		{15, 80, 11.58, 11.58},
		{15, 85, 12.50, 12.50},
		{20, 50, 9.26, 9.27},
		{20, 60, 12.00, 12.01},
		{20, 80, 16.44, 16.45},
		{25, 70, 19.15, 19.15},
		{25, 90, 23.24, 23.24},
		{30, 50, 18.44, 18.45},
		{30, 85, 27.20, 27.20},
	} {
		got, err := weather.DewPoint(b, c.air, c.humidity)
		if err != nil || math.Abs(got-c.wmo) > 0.01 || math.Abs(got-c.ashrae) > 0.03 {
			t.Errorf("%g degC, %g %%: %.3f, want %.2f; %v", c.air, c.humidity, got, c.wmo, err)
		}
	}
	// Single published points: 22 degC and 70 % give 16.3, 24 and 60 give 15.8, 30 and 55 give 20. Agreement: 0.06 degC.
	for _, c := range [][3]float64{{22, 70, 16.3}, {24, 60, 15.8}, {30, 55, 20}} {
		if got, err := weather.DewPoint(b, c[0], c[1]); err != nil || math.Abs(got-c[2]) > 0.06 {
			t.Errorf("%g degC, %g %%: %.3f, want %.1f; %v", c[0], c[1], got, c[2], err)
		}
	}
}

// The humidity of the film of air on a surface 3 degC above the dew point, worked apart: 80.95 % at 5 degC, 82.88 at 20, 84.01 at 30.
func TestHumidityAtThreeDegrees(t *testing.T) {
	b := tables.Default()
	for surface, want := range map[float64]float64{5: 80.95, 10: 81.63, 15: 82.27, 20: 82.88, 25: 83.46, 30: 84.01} {
		if got, err := weather.Humidity(b, surface, surface-3); err != nil || math.Abs(got-want) > 0.01 {
			t.Errorf("%g degC: %.3f, want %.2f; %v", surface, got, want, err)
		}
	}
}

// Over the domain the dew point rises with the air and with its moisture, is no higher than the air, and comes back as the humidity.
func TestDewPointOverTheDomain(t *testing.T) {
	b := tables.Default()
	for air := -45.0; air <= 60; air += 2.5 {
		last := math.Inf(-1)
		for humidity := 1.0; humidity <= 100; humidity += 3 {
			dew, err := weather.DewPoint(b, air, humidity)
			if err != nil || dew <= last || dew > air+1e-9 {
				t.Fatalf("%g degC, %g %%: %g after %g, %v", air, humidity, dew, last, err)
			}
			last = dew
			if dew < -90 {
				continue
			}
			if back, err := weather.Humidity(b, air, min(dew, air)); err != nil || math.Abs(back-humidity) > 1e-6 {
				t.Fatalf("%g degC, %g %%: comes back as %g, %v", air, humidity, back, err)
			}
		}
	}
	for _, bad := range [][2]float64{{-45.1, 50}, {60.1, 50}, {20, 0}, {20, 100.1}, {math.NaN(), 50}, {20, math.NaN()}, {math.Inf(1), 50}} {
		if _, err := weather.DewPoint(b, bad[0], bad[1]); err == nil {
			t.Errorf("%v without a fault", bad)
		}
	}
	_, err := weather.DewPoint(b, 99, 0)
	if err == nil || !strings.Contains(err.Error(), "air") || !strings.Contains(err.Error(), "humidity") {
		t.Errorf("both at once: %v", err)
	}
	if _, err := weather.Humidity(b, 20, 20.1); err == nil {
		t.Error("a dew point above the air")
	}
	if _, err := weather.DewPoint(&tables.Book{}, 20, 50); err == nil {
		t.Error("a book without coefficients")
	}
}

// On, under and over each limit: 20 degC and 50 % have their dew point at 9.26 degC, so 12.26 is the least for the surface.
func TestHours(t *testing.T) {
	b := tables.Default()
	c, err := b.Coating("ablative-cuprous-multi") // 5 to 35 degC
	if err != nil {
		t.Fatal(err)
	}
	no := weather.Unknown()
	dew, err := weather.DewPoint(b, 20, 50)
	if err != nil {
		t.Fatal(err)
	}
	for name, x := range map[string]struct {
		h     weather.Hour
		rules []finding.ID
		worst finding.Verdict
	}{
		"a good hour":           {weather.Hour{AirC: 20, SurfaceC: 18, HumidityPct: 50, WindMS: no}, []finding.ID{weather.RuleMayPaint}, finding.Fine},
		"on the dew limit":      {weather.Hour{AirC: 20, SurfaceC: dew + 3, HumidityPct: 50}, []finding.ID{weather.RuleMayPaint}, finding.Fine},
		"just under it":         {weather.Hour{AirC: 20, SurfaceC: dew + 2.99, HumidityPct: 50}, []finding.ID{weather.RuleDew}, finding.Forbidden},
		"85 % on the limit":     {weather.Hour{AirC: 20, SurfaceC: 25, HumidityPct: 85}, []finding.ID{weather.RuleMayPaint}, finding.Fine},
		"damp":                  {weather.Hour{AirC: 20, SurfaceC: 25, HumidityPct: 85.1}, []finding.ID{weather.RuleHumid}, finding.Forbidden},
		"coldest that it takes": {weather.Hour{AirC: 6, SurfaceC: 5, HumidityPct: 50}, []finding.ID{weather.RuleMayPaint}, finding.Fine},
		"too cold":              {weather.Hour{AirC: 6, SurfaceC: 4.9, HumidityPct: 50}, []finding.ID{weather.RuleCold}, finding.Forbidden},
		"hottest that it takes": {weather.Hour{AirC: 30, SurfaceC: 35, HumidityPct: 50}, []finding.ID{weather.RuleMayPaint}, finding.Fine},
		"too hot":               {weather.Hour{AirC: 30, SurfaceC: 35.1, HumidityPct: 50}, []finding.ID{weather.RuleHot}, finding.Forbidden},
		"rain":                  {weather.Hour{AirC: 20, SurfaceC: 18, HumidityPct: 50, RainMM: 0.1}, []finding.ID{weather.RuleRain}, finding.Forbidden},
		"everything":            {weather.Hour{AirC: 2, SurfaceC: 1, HumidityPct: 99, RainMM: 3}, []finding.ID{weather.RuleCold, weather.RuleHumid, weather.RuleDew, weather.RuleRain}, finding.Forbidden},
		"nothing measured":      {weather.Hour{AirC: no, SurfaceC: no, HumidityPct: no, RainMM: no, WindMS: no}, []finding.ID{weather.RuleMeasure}, finding.Ask},
		"no surface":            {weather.Hour{AirC: 20, SurfaceC: no, HumidityPct: 50}, []finding.ID{weather.RuleMeasure}, finding.Ask},
		"a humidity of 150 %":   {weather.Hour{AirC: 20, SurfaceC: 20, HumidityPct: 150}, []finding.ID{weather.RuleMeasure}, finding.Ask},
	} {
		got := weather.Judge(b, c, x.h)
		for _, r := range x.rules {
			if !got.Has(r) {
				t.Errorf("%s: no %s in %v", name, r, got)
			}
		}
		if got.Worst() != x.worst || got.Has(weather.RuleMayPaint) != (x.worst == finding.Fine) {
			t.Errorf("%s: %v", name, got)
		}
		for _, f := range got {
			if text := b.Say(f, quantity.Metric); strings.Contains(text, "not stated") || strings.ContainsAny(text, "{}") {
				t.Errorf("%s: %s", name, text)
			}
		}
	}
}

func ExampleJudge() {
	b := tables.Default()
	c, err := b.Coating("ablative-cuprous-multi")
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, f := range weather.Judge(b, c, weather.Hour{AirC: 15, SurfaceC: 13, HumidityPct: 80}) {
		fmt.Println(b.Say(f, quantity.Metric))
	}
	// Output: The surface is at 13.0 °C (55.4 °F) and the dew point at 11.6 °C (52.9 °F): wait until the surface is at 14.6 °C (58.3 °F) or more, or it grows wet under the paint.
}

func BenchmarkJudge(b *testing.B) {
	book := tables.Default()
	c, err := book.Coating("ablative-cuprous-multi")
	if err != nil {
		b.Fatal(err)
	}
	for b.Loop() {
		weather.Judge(book, c, weather.Hour{AirC: 15, SurfaceC: 13, HumidityPct: 80})
	}
}
