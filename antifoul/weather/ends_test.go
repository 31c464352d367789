package weather_test

import (
	"errors"
	"fmt"
	"slices"
	"strings"
	"testing"
	"time"

	"boatyard.example/bottomwork/antifoul/weather"
	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/finding"
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

// Temperatures are told to a tenth of a degree, an estimate from its low end down to its high end up; humidity to a whole per cent. Steady air of 2.04 degC with an error of
// 2 K is a surface from 0.04 to 4.04 degC.
func TestFactsAreRounded(t *testing.T) {
	b := tables.Default()
	hours := air(steady(2.04, 48)...)
	for i := range hours {
		hours[i].HumidityPct = 97.4
	}
	why := at(t, b, hours, false).For(weather.Coat{Coating: coating(t, b, "epoxy-barrier"), On: []tables.Material{material(t, b, "steel")}}).Why(30)
	ends, ok := told(why, weather.RuleCold, "surface").(interface {
		Ends() (low, high quantity.Temperature)
	})
	if !ok {
		t.Fatal(why)
	}
	if low, high := ends.Ends(); low.String() != "0.0 degC" || high.String() != "4.1 degC" {
		t.Errorf("from %s to %s", low, high)
	}
	if h, ok := told(why, weather.RuleHumid, "humidity").(quantity.Share); !ok || h.String() != "97 %" {
		t.Errorf("humidity of 97.4 %% is told as %v", h)
	}
	for i := range hours {
		hours[i].AirC = 2.16
	}
	why = at(t, b, hours, false).For(weather.Coat{Coating: coating(t, b, "epoxy-barrier"), On: []tables.Material{material(t, b, "steel")}}).Why(30)
	ends, ok = told(why, weather.RuleCold, "surface").(interface {
		Ends() (low, high quantity.Temperature)
	})
	if !ok {
		t.Fatal(why)
	}
	if low, high := ends.Ends(); low.String() != "0.1 degC" || high.String() != "4.2 degC" {
		t.Errorf("from %s to %s", low, high)
	}
}

// Humidity is asked of air from -45 to 60 degC and of dew points from -90 degC up to it; what cannot be comes to nought.
func TestBoundsOfHumidity(t *testing.T) {
	b := tables.Default()
	for _, x := range []struct {
		air, dew float64
		want     string
	}{{60, 20, ""}, {60.1, 20, "air"}, {-45, -60, ""}, {-45.1, -60, "air"}, {-40, -90, ""}, {-40, -90.1, "dew_point"}, {10, 10, ""}, {10, 10.1, "dew_point"}, {10, weather.Unknown(), "dew_point"}} {
		h, err := weather.Humidity(b, x.air, x.dew)
		fs, _ := errors.AsType[finding.Faults](err)
		if x.want == "" != (len(fs) == 0) || len(fs) > 0 && (len(fs) > 1 || fs[0].Key != x.want || h != 0) || len(fs) == 0 && !(h > 0 && h <= 100) {
			t.Errorf("a dew point of %g in air of %g: %g, %v", x.dew, x.air, h, err)
		}
	}
	if d, err := weather.DewPoint(b, 61, 50); err == nil || d != 0 {
		t.Errorf("%g, %v", d, err)
	}
	if d, err := weather.DewPoint(&tables.Book{}, 10, 50); err == nil || d != 0 {
		t.Errorf("%g, %v", d, err)
	}
	if h, err := weather.Humidity(&tables.Book{}, 10, 5); err == nil || h != 0 {
		t.Errorf("%g, %v", h, err)
	}
}

// A number that cannot be is told to six digits.
func TestOddValuesAreRounded(t *testing.T) {
	if _, err := weather.DewPoint(tables.Default(), 99.1234567, 50); err == nil || !strings.Contains(err.Error(), "read 99.1235;") {
		t.Error(err)
	}
}

// What a surface is estimated by rests on the lag: doubts of the material's row that are about paint are none of it.
func TestBasisOfAnEstimate(t *testing.T) {
	b := tables.Default()
	tried := 0
	for m := range b.Materials() {
		row := m.Basis("lag")
		if !(m.Lag.Low > 0) || row.Doubt == "" || row.Own {
			continue
		}
		tried++
		why := at(t, b, air(steady(2, 30)...), false).For(weather.Coat{Coating: coating(t, b, "epoxy-barrier"), On: []tables.Material{m}}).Why(29)
		for _, f := range why {
			if want := 3; len(f.Basis) != want && f.Rule == weather.RuleCold { // the limit, the error of an estimate, and the lag
				t.Errorf("%s: %d bases, want %d: %v", m.Key, len(f.Basis), want, f.Basis)
			}
			if off, _ := b.Factor("surface-error"); f.Rule == weather.RuleCold && !slices.Contains(f.Basis, off.Basis("value")) {
				t.Errorf("%s: nothing of the error of an estimate in %v", m.Key, f.Basis)
			}
			for _, x := range f.Basis {
				if x.Doubt == row.Doubt {
					t.Errorf("%s, %s: the surface is doubted since %q", m.Key, f.Rule, x.Doubt)
				}
			}
		}
	}
	if tried == 0 {
		t.Error("no material has a doubt")
	}
}

// A doubt of one's own row about the lag is one about the estimate.
func TestOwnDoubtOfALag(t *testing.T) {
	b := own(t, "[[material]]\nkey = \"grp\"\nbasis = \"own table\"\nsource = \"thermometer\"\nlag = 1\ndoubt = \"one night\"\n")
	found := false
	for _, f := range at(t, b, air(steady(2, 30)...), false).For(weather.Coat{Coating: coating(t, b, "epoxy-barrier"), On: []tables.Material{material(t, b, "grp")}}).Why(29) {
		found = found || f.Rule == weather.RuleCold && slices.ContainsFunc(f.Basis, func(x finding.Basis) bool { return x.Doubt == "one night" })
	}
	if !found {
		t.Error("nothing of the doubt")
	}
}

// Impossible measurements are asked for again, one at a time, and rain that nobody looked for.
func TestMeasureAgain(t *testing.T) {
	b := tables.Default()
	c := coating(t, b, "ablative-cuprous-multi")
	good := weather.Hour{At: start, AirC: 20, SurfaceC: 20, HumidityPct: 50}
	if fs := weather.Judge(b, c, good); fs.Worst() != finding.Fine {
		t.Fatal(fs)
	}
	for name, change := range map[string]func(h *weather.Hour){
		"air":      func(h *weather.Hour) { h.AirC = 60.1 },
		"humidity": func(h *weather.Hour) { h.HumidityPct = 100.1 },
		"rain":     func(h *weather.Hour) { h.RainMM = weather.Unknown() },
		"surface":  func(h *weather.Hour) { h.SurfaceC = weather.Unknown() },
	} {
		h := good
		change(&h)
		if fs := weather.Judge(b, c, h); len(fs) != 1 || fs[0].Rule != weather.RuleMeasure || fs[0].Verdict != finding.Ask {
			t.Errorf("%s: %v", name, fs)
		}
	}
}

// Days made in Go are held to the same: one thing that is missing, one that cannot be. A day without humidity is filled hour by hour, and so it is told.
func TestDaysMadeInGo(t *testing.T) {
	b := tables.Default()
	good := weather.Day{Date: date(t, 2027, 4, 10), LowC: 5, HighC: 10, HumidityPct: 60}
	for name, c := range map[string]struct {
		change func(d *weather.Day)
		want   string
	}{
		"as it should be": {func(*weather.Day) {}, ""},
		"no high":         {func(d *weather.Day) { d.HighC = weather.Unknown() }, "days[0].high"},
		"no date":         {func(d *weather.Day) { d.Date = quantity.Date{} }, "days[0].date"},
		"low over high":   {func(d *weather.Day) { d.LowC = 11 }, "days[0].low"},
		"too much rain":   {func(d *weather.Day) { d.RainMM = 2001 }, "days[0].rain"},
	} {
		d := good
		c.change(&d)
		_, err := weather.Hourly(b, []weather.Day{d}, time.UTC)
		fs, _ := errors.AsType[finding.Faults](err)
		if c.want == "" != (err == nil) || err != nil && (len(fs) != 1 || fs[0].Key != c.want) {
			t.Errorf("%s: %v", name, err)
		}
	}
	dim := good
	dim.Date, dim.HumidityPct = good.Date.AddDays(1), weather.Unknown()
	f, err := weather.Hourly(b, []weather.Day{good, dim}, time.UTC)
	if err != nil || told(f.Notes, weather.RuleDewFromLow, "hours") != 24 {
		t.Errorf("%v, %v", f.Notes, err)
	}
}
