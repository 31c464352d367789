package calendar_test

import (
	"testing"
	"time"

	"boatyard.example/bottomwork/antifoul/calendar"
	"boatyard.example/bottomwork/antifoul/weather"
	"boatyard.example/bottomwork/tables/quantity"
)

// A plan that is asked for days before its forecast begins is that of the forecast's first day, where nobody works before: what the hours are like is read at their
// own place. The cold of the second weekend moves its windows, so a shift of the forecast would show.
func TestPlanBeginsBeforeItsForecast(t *testing.T) {
	b := book(t, "")
	f := run(on(t, time.UTC, "2027-04-17 00:00"), 24*10, func(_ int, at time.Time) weather.Hour {
		w := fair()
		w.AirC, w.SurfaceC = float64(at.Day())-7, float64(at.Day())-7 // 10 degC on the 17th, 19 on the 26th
		return w
	})
	var first calendar.Calendar
	for i, from := range []string{"2027-04-17", "2027-04-16", "2027-04-12"} {
		p := arrange(t, b, weekendCoats(t, 3), weekendDays(), from, calendar.Conditions{Zone: time.UTC, Forecast: f})
		if i == 0 {
			first = p
			continue
		}
		if len(p.Items) != len(first.Items) || p.Again != first.Again {
			t.Fatalf("from %s: %d items, %d again, want %d, %d", from, len(p.Items), p.Again, len(first.Items), first.Again)
		}
		for k := range p.Items {
			if !p.Items[k].Start().Equal(first.Items[k].Start()) {
				t.Errorf("from %s: item %d begins %s, want %s", from, k+1, p.Items[k].Start(), first.Items[k].Start())
			}
		}
	}
}

// A coat that is laid in one go takes as long as one day at most; what was left of the day before does not help.
func TestCoatLongerThanADay(t *testing.T) {
	b := book(t, "")
	for hours, fits := range map[int]bool{10: true, 11: false} { // from eight to six
		tasks := weekendCoats(t, 1)
		tasks[0].Hours = float64(hours)
		p := arrange(t, b, tasks, weekendDays(), "2027-04-17", calendar.Conditions{Zone: time.UTC, Usual: quantity.Celsius.N(20)})
		if p.Fits != fits || p.Findings.Has(calendar.RuleLongCoat) == fits {
			t.Errorf("%d hours: fits %t, %v", hours, p.Fits, p.Findings)
			continue
		}
		for _, x := range p.Findings {
			if x.Rule == calendar.RuleLongCoat && (x.Facts[0].Value != "11" || x.Facts[1].Value != "10") {
				t.Errorf("told as %v", x.Facts)
			}
		}
	}
}

// The yard's work is over when its day is, at five, however many hours were written for it: the crew goes on the same evening.
func TestYardIsOverWithItsDay(t *testing.T) {
	b := book(t, "")
	for hours, want := range map[float64]string{1: "2027-04-19 09:00", 4: "2027-04-19 12:00", 9: "2027-04-19 17:00", 10: "2027-04-19 17:00", 20: "2027-04-19 17:00"} {
		coat := weekendCoats(t, 1)[0]
		coat.Hours = 1
		d := weekendDays()
		d.Weekdays = []time.Weekday{time.Monday, time.Tuesday}
		tasks := []calendar.Task{{Name: "lift", Yard: true, On: day(t, "2027-04-19"), Hours: hours}, coat}
		p := arrange(t, b, tasks, d, "2027-04-17", calendar.Conditions{Zone: time.UTC, Usual: quantity.Celsius.N(20)})
		if last := p.Items[len(p.Items)-1].Start(); !last.Equal(on(t, time.UTC, want)) {
			t.Errorf("after %g hours of the yard the coat begins %s, want %s", hours, last, want)
		}
	}
}
