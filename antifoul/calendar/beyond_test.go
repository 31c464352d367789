package calendar_test

import (
	"fmt"
	"testing"
	"time"

	"boatyard.example/bottomwork/antifoul/calendar"
	"boatyard.example/bottomwork/antifoul/weather"
	"boatyard.example/bottomwork/tables/quantity"
)

// A coat from 14:00 to 16:00 on Saturday at hours that no forecast tells of, and the next opens four hours of 20 degC later. At 55 kJ/mol an hour at 10 degC
// passes 0.4507 of one at 20, at 15 degC exp(6615.0 × (0.00341122 − 0.00347041)) = 0.6760, at 7 degC
// exp(6615.0 × (0.00341122 − 0.00356951)) = 0.3510. So 4 h take 8.875 h at 10 degC: from 00:53 on; 5.917 h at 15: from 21:55 on; 11.40 h at 7: from 03:24 on.
func TestWarmthThatNoForecastTells(t *testing.T) {
	b := book(t, oneEnergy)
	friday := func(from, hours int, degC func(hour int) float64) weather.Forecast {
		return run(on(t, time.UTC, "2027-04-16 00:00").Add(time.Duration(from)*time.Hour), hours, func(_ int, at time.Time) weather.Hour {
			w := fair()
			w.AirC, w.SurfaceC = degC(at.Hour()), weather.Unknown()
			return w
		})
	}
	halves := func(hour int) float64 { // four hours at 10 degC, four at 20, one that nobody knows
		switch {
		case hour < 12:
			return 10
		case hour < 16:
			return 20
		}
		return weather.Unknown()
	}
	for name, c := range map[string]struct {
		sky   calendar.Conditions
		opens string
	}{
		"as stated where nothing is known":     {calendar.Conditions{}, "17 20:00"},
		"what is usual":                        {calendar.Conditions{Usual: degC(10)}, "18 01:00"},
		"that goes before the mean":            {calendar.Conditions{Usual: degC(10), Forecast: friday(0, 24, func(int) float64 { return 20 })}, "18 01:00"},
		"the mean of the hour of the day":      {calendar.Conditions{Forecast: friday(0, 24, func(h int) float64 { return map[bool]float64{true: 10, false: 20}[h >= 16] })}, "18 01:00"},
		"of two days":                          {calendar.Conditions{Forecast: twoDays(t, 16)}, "17 22:00"},
		"of an hour never told, that of all":   {calendar.Conditions{Forecast: friday(8, 9, halves)}, "17 22:00"},
		"a day of which nobody knows anything": {calendar.Conditions{Forecast: friday(0, 24, func(int) float64 { return weather.Unknown() })}, "17 20:00"},
		"colder than a coat goes on":           {calendar.Conditions{Forecast: friday(0, 24, func(int) float64 { return 7 })}, "18 04:00"},
		"careful: none goes on in the cold":    {calendar.Conditions{Careful: true, Forecast: friday(0, 24, func(int) float64 { return 7 })}, "18 01:00"},
		"careful, and it is warm":              {calendar.Conditions{Careful: true, Forecast: friday(0, 24, func(int) float64 { return 15 })}, "17 22:00"},
		"careful: what is usual stays":         {calendar.Conditions{Careful: true, Usual: degC(15)}, "17 22:00"},
		"careful without a forecast":           {calendar.Conditions{Careful: true}, "18 01:00"},
	} {
		tasks := weekendCoats(t, 2)
		for i := range tasks {
			tasks[i].Layers[0].Opens, tasks[i].Layers[0].Closes = h(4), h(24*30)
		}
		d := weekendDays()
		d.Start = 14 * 60
		d.Weekdays, d.Free = nil, []quantity.Date{day(t, "2027-04-17"), day(t, "2027-04-18")}
		from := "2027-04-16"
		p := arrange(t, b, tasks, d, from, c.sky)
		if len(p.Items) != 2 || p.Items[0].Start() != on(t, time.UTC, "2027-04-17 14:00") {
			t.Errorf("%s: %+v", name, p.Items)
			continue
		}
		if got := p.Items[1].Opens.Format("2 15:04"); got != c.opens {
			t.Errorf("%s: opens %s, want %s", name, got, c.opens)
		}
	}
}

// twoDays is Thursday at 10 degC and Friday at 20, from an hour of the day on: their mean is 15.
func twoDays(tb testing.TB, from int) weather.Forecast {
	tb.Helper()
	return run(on(tb, time.UTC, "2027-04-15 00:00").Add(time.Duration(from)*time.Hour), 48-from, func(_ int, at time.Time) weather.Hour {
		w := fair()
		w.AirC, w.SurfaceC = float64(10*(at.Day()-14)), weather.Unknown()
		return w
	})
}

// Without a forecast, and careful, windows open by the least temperature at which the coat goes on, 10 degC, and close by that of the row, 20 degC.
func TestCarefulWindowsCloseSoon(t *testing.T) {
	b := book(t, oneEnergy)
	tasks := weekendCoats(t, 2)
	tasks[0].Layers[0].Opens, tasks[0].Layers[0].Closes = h(4), h(24)
	p := arrange(t, b, tasks, weekendDays(), "2027-04-17", calendar.Conditions{Careful: true})
	it := p.Items[len(p.Items)-1]
	if got := fmt.Sprint(it.Opens.Format("2 15:04"), ", ", it.Closes.Format("2 15:04")); got != "17 19:00, 18 08:00" { // 10:00 + 8.875 h; 08:00 + 24 h
		t.Error(got)
	}
}

// A row whose temperature lies between two points counts its times from the line between them. One-pack coats in solvent take 1.25 times as long at 15 degC as
// at 20 and 1.5 times at 10: of a row that states its times at 17.5 degC an hour is 1.125 of one at 20, of one at 12.5 degC 1.375. Beyond the points it is
// as at their ends: 2 at 5 degC, 0.75 at 30.
func TestARowBetweenTwoPoints(t *testing.T) {
	for degC, times := range map[string]float64{"17.5": 1.125, "12.5": 1.375, "10": 1.5, "7.5": 1.75, "5": 2, "2": 2, "20": 1, "25": 0.875, "30": 0.75, "40": 0.75} {
		k := clock(t, fmt.Sprintf("[[coating]]\nkey = \"hard-cuprous\"\nbasis = \"own table\"\nsource = \"a test\"\nat = \"%s degC\"\n", degC), "hard-cuprous")
		if got := k.Slow(20); !near(got, times, 1e-9) {
			t.Errorf("a row at %s degC: %.4f at 20 degC, want %.4f", degC, got, times)
		}
	}
}

// The slow hand goes by the most times of the hottest point that is not hotter: of own points 1 at 20 degC and 0.4 to 0.6 at 30.
func TestTheHottestPoint(t *testing.T) {
	const at20 = `
[[drying]]
key = "one-pack-solvent"
basis = "own table"
source = "a test"
packs = 1
carriers = ["solvent"]
  [[drying.point]]
  at = "20 degC"
`
	k := clock(t, at20+`  times = 1
  [[drying.point]]
  at = "30 degC"
  times = [0.4, 0.5, 0.6]
`, "hard-cuprous")
	for degC, want := range map[float64]float64{29: 1, 30: 1 / 0.6, 40: 1 / 0.6} {
		if got := k.Slow(degC); !near(got, want, 1e-9) {
			t.Errorf("%g degC: %.4f, want %.4f", degC, got, want)
		}
	}
	// A single point is one all the same: nothing passes for sure where it is colder.
	k = clock(t, at20+`  times = [0.8, 1, 1.25]
`, "hard-cuprous")
	if got := fmt.Sprint(k.Slow(19), k.Slow(20), k.Fast(10), k.Fast(30)); got != "0 0.8 1.25 1.25" {
		t.Error(got)
	}
}

// The outlook of a coat is the span of its hours, and none where one of them is not told; what is unknown within them is left out.
func TestOutlookOfACoat(t *testing.T) {
	b := book(t, "")
	sky := func(hours int) calendar.Conditions {
		return calendar.Conditions{Forecast: run(on(t, time.UTC, "2027-04-16 12:00"), hours, func(_ int, at time.Time) weather.Hour {
			w := fair()
			if at.Day() == 17 && at.Hour() >= 8 {
				n := float64(min(at.Hour()-8, 3))
				w.AirC, w.SurfaceC, w.HumidityPct = 20+2*n, 22-n, 40+5*n
			}
			if at.Day() == 17 && at.Hour() == 9 {
				w.HumidityPct = weather.Unknown()
			}
			return w
		})}
	}
	tasks := weekendCoats(t, 1)
	tasks[0].Hours = 3
	d := weekendDays()
	d.Weekdays, d.Free, d.Stop = nil, []quantity.Date{day(t, "2027-04-17")}, 11*60 // one way only
	for hours, want := range map[int]string{
		12 + 24: "20 to 24, 20 to 22, 40 to 50",
		12 + 11: "20 to 24, 20 to 22, 40 to 50", // the forecast ends with the coat
		12 + 10: "none, none, none",
	} {
		p := arrange(t, b, tasks, d, "2027-04-17", sky(hours))
		o := p.Items[0].Outlook
		if got := fmt.Sprintf("%s, %s, %s", spanText(o.Air.Given(), o.Air.Low, o.Air.High), spanText(o.Surface.Given(), o.Surface.Low, o.Surface.High), spanText(o.Humidity.Given(), o.Humidity.Low, o.Humidity.High)); got != want || !p.Items[0].Start().Equal(on(t, time.UTC, "2027-04-17 08:00")) {
			t.Errorf("%d hours are told: %s, want %s", hours, got, want)
		}
	}
	// A forecast that begins with its first hour does, one that begins with its second does not.
	first := sky(24)
	first.Forecast.Hours = first.Forecast.Hours[12+8:]
	if p := arrange(t, b, tasks, d, "2027-04-17", first); !p.Items[0].Outlook.Air.Given() {
		t.Errorf("not told of the hours of the forecast: %+v", p.Items[0])
	}
	late := sky(24)
	late.Forecast.Hours = late.Forecast.Hours[12+9:]
	if p := arrange(t, b, tasks, d, "2027-04-17", late); p.Items[0].Outlook.Air.Given() {
		t.Errorf("told of hours before the forecast: %+v", p.Items[0])
	}
}

// A forecast of a single hour is one: the coat that takes it up, on the day after the first, rests on it.
func TestAForecastOfAnHour(t *testing.T) {
	sky := calendar.Conditions{Forecast: run(on(t, time.UTC, "2027-04-17 08:00"), 1, func(int, time.Time) weather.Hour { return fair() })}
	tasks := weekendCoats(t, 1)
	tasks[0].Hours = 1
	p := arrange(t, book(t, ""), tasks, weekendDays(), "2027-04-16", sky)
	if it := p.Items[0]; !p.Known.Equal(on(t, time.UTC, "2027-04-17 09:00")) || !it.Outlook.Air.Given() {
		t.Errorf("known until %s: %+v", p.Known, it)
	}
}

func spanText(given bool, low, high float64) string {
	if !given {
		return "none"
	}
	return fmt.Sprintf("%g to %g", low, high)
}
