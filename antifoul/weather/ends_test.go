package weather_test

import (
	"fmt"
	"strings"
	"testing"
	"time"

	"boatyard.example/bottomwork/antifoul/weather"
	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/quantity"
)

// The coldest hour of a day comes before the warmest, and both lie in the day.
func TestHoursOfTheDaysEnds(t *testing.T) {
	days := []weather.Day{{Date: date(t, 2027, 4, 10), LowC: 5, HighC: 10, HumidityPct: 60}}
	for _, c := range []struct {
		low, high float64
		taken     bool
	}{{5, 14, true}, {13.9, 14, true}, {14, 14, false}, {14.1, 14, false}, {5, 23.9, true}, {5, 24, false}, {5, 24.5, false}} {
		b := own(t, fmt.Sprintf("[[factor]]\nkey = \"day-low-hour\"\nbasis = \"own table\"\nsource = \"a record\"\nvalue = %g\n[[factor]]\nkey = \"day-high-hour\"\nbasis = \"own table\"\nsource = \"a record\"\nvalue = %g\n", c.low, c.high))
		if _, err := weather.Hourly(b, days, time.UTC); (err == nil) != c.taken {
			t.Errorf("coldest at %g, warmest at %g: %v", c.low, c.high, err)
		}
	}
}

// What a day lacks is told together with what else is wrong with it.
func TestFaultsBesideWhatIsMissing(t *testing.T) {
	_, err := weather.Hourly(tables.Default(), []weather.Day{
		{LowC: 5, HighC: weather.Unknown(), HumidityPct: 60},
		{Date: date(t, 2027, 4, 11), LowC: 12, HighC: 10, HumidityPct: 101, RainMM: -1},
	}, time.UTC)
	for _, want := range []string{"days[0].date", "days[0].high", "days[1].low", "days[1].humidity", "days[1].rain"} {
		if err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("no word of %s in %v", want, err)
		}
	}
}

// A dew point is taken down to -90 degC and up to the air.
func TestEndsOfADewPoint(t *testing.T) {
	for dew, taken := range map[string]bool{"-90": true, "-90.1": false, "-134": false, "-40": true, "-39.9": false} {
		if _, err := read("time,air [degC],dew_point [degC]\n2027-01-10 09:00,-40,"+dew+"\n", time.UTC); (err == nil) != taken {
			t.Errorf("%s degC: %v", dew, err)
		}
	}
}

// Each thing that cannot be is found where it is the only one, and the ends of what can be are no fault.
func TestOneOddValue(t *testing.T) {
	for name, change := range map[string]func(h *weather.Hour, v float64){
		"air":      func(h *weather.Hour, v float64) { h.AirC = v },
		"surface":  func(h *weather.Hour, v float64) { h.SurfaceC = v },
		"humidity": func(h *weather.Hour, v float64) { h.HumidityPct = v },
		"rain":     func(h *weather.Hour, v float64) { h.RainMM = v },
		"wind":     func(h *weather.Hour, v float64) { h.WindMS = v },
	} {
		ends := map[string][4]float64{ // under, lowest, highest, over
			"air": {-45.1, -45, 60, 60.1}, "surface": {-60.1, -60, 100, 100.1}, "humidity": {0, 0.1, 100, 100.1}, "rain": {-0.1, 0, 2000, 2000.1}, "wind": {-0.1, 0, 120, 120.1},
		}[name]
		for i, v := range ends {
			hours := air(10, 10, 10)
			change(&hours[1], v)
			fs := weather.Forecast{Hours: hours}.Check()
			if odd := i == 0 || i == 3; odd != (len(fs) == 1 && fs[0].Key == "hours[1]."+name) || !odd && len(fs) > 0 {
				t.Errorf("%s of %g: %v", name, v, fs)
			}
		}
	}
}

// Shares and surfaces are told as amounts, which a reader of either system gets in his own units.
func TestFactsAreAmounts(t *testing.T) {
	b := tables.Default()
	hours := air(steady(2, 48)...) // too cold for any epoxy
	for i := range hours {
		hours[i].SurfaceC, hours[i].HumidityPct = weather.Unknown(), 97
	}
	sky := at(t, b, hours, false).For(weather.Coat{Coating: coating(t, b, "epoxy-barrier"), On: []tables.Material{material(t, b, "steel")}})
	surfaces := 0
	for _, f := range sky.Why(30) {
		for _, x := range f.Facts {
			if x.Name != "surface" {
				continue
			}
			surfaces++
			v, ok := x.Value.(interface {
				Show(s quantity.System) string
			})
			if !ok || !strings.Contains(v.Show(quantity.US), "°F") || !strings.Contains(v.Show(quantity.Metric), " to ") {
				t.Errorf("%s tells a surface of %v", f.Rule, x.Value)
			}
		}
	}
	if surfaces == 0 {
		t.Error("no surface is told")
	}
}
