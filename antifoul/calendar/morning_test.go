package calendar_test

import (
	"testing"
	"time"

	"boatyard.example/bottomwork/antifoul/calendar"
	"boatyard.example/bottomwork/antifoul/weather"
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

// morningSky is fair but for rain in hours of Saturday 17 and of Sunday 18 April, and unknown humidity in others.
func morningSky(tb testing.TB, rain, damp func(at time.Time) bool) weather.Forecast {
	tb.Helper()
	return run(on(tb, time.UTC, "2027-04-17 00:00"), 72, func(_ int, at time.Time) weather.Hour {
		w := fair()
		if rain(at) {
			w.RainMM = 1
		}
		if damp(at) {
			w.HumidityPct = weather.Unknown()
		}
		return w
	})
}

// A coat of two hours in a shift from 08:00 to 18:00 on Saturday and Sunday; the film is safe from rain six hours after its end.
func TestToday(t *testing.T) {
	b := book(t, "")
	never := func(time.Time) bool { return false }
	until := func(d, hour int) func(time.Time) bool {
		return func(at time.Time) bool { return at.Day() == d && at.Hour() < hour }
	}
	all := func(d int) func(time.Time) bool { return func(at time.Time) bool { return at.Day() == d } }
	for _, c := range []struct {
		name       string
		now        string
		rain, damp func(time.Time) bool
		verdict    finding.Verdict
		rule       finding.ID
		from, next string
	}{
		{"go", "2027-04-17 09:00", never, never, finding.Fine, calendar.RuleGo, "2027-04-17 09:00", "2027-04-18 08:00"},
		{"within an hour: the next whole one", "2027-04-17 09:20", never, never, finding.Fine, calendar.RuleGo, "2027-04-17 10:00", "2027-04-18 08:00"},
		{"measure", "2027-04-17 09:00", never, all(17), finding.Ask, calendar.RuleRead, "2027-04-17 09:00", "2027-04-18 08:00"},
		{"wait for the rain to end", "2027-04-17 09:00", until(17, 11), never, finding.Needs, calendar.RuleUntil, "2027-04-17 11:00", "2027-04-18 08:00"},
		{"before the crew is there", "2027-04-17 06:00", never, never, finding.Needs, calendar.RuleUntil, "2027-04-17 08:00", "2027-04-18 08:00"},
		{"rain all day", "2027-04-17 09:00", all(17), never, finding.Forbidden, calendar.RuleNotToday, "", "2027-04-18 08:00"},
		{"too late to end it", "2027-04-17 17:00", never, never, finding.Forbidden, calendar.RuleNotToday, "", "2027-04-18 08:00"},
		{"the last hour", "2027-04-17 16:00", never, never, finding.Fine, calendar.RuleGo, "2027-04-17 16:00", "2027-04-18 08:00"},
		{"a day on which nobody works", "2027-04-19 09:00", never, never, finding.Forbidden, calendar.RuleNotToday, "", ""},
		{"rain on both days", "2027-04-17 09:00", func(at time.Time) bool { return at.Day() < 19 }, never, finding.Forbidden, calendar.RuleNotToday, "", ""},
	} {
		task := weekendCoats(t, 1)[0]
		m, err := calendar.Today(b, task, weekendDays(), on(t, time.UTC, c.now), calendar.Conditions{Zone: time.UTC, Forecast: morningSky(t, c.rain, c.damp)})
		if err != nil {
			t.Fatalf("%s: %v", c.name, err)
		}
		if m.Verdict != c.verdict || m.Finding.Rule != c.rule {
			t.Errorf("%s: %s by %s, want %s by %s", c.name, m.Verdict, m.Finding.Rule, c.verdict, c.rule)
		}
		for _, p := range []struct {
			what string
			got  time.Time
			want string
		}{{"from", m.From, c.from}, {"next", m.Next, c.next}} {
			if p.want == "" && !p.got.IsZero() || p.want != "" && !p.got.Equal(on(t, time.UTC, p.want)) {
				t.Errorf("%s: %s %s, want %q", c.name, p.what, p.got, p.want)
			}
		}
		if c.verdict != finding.Fine && c.now != "2027-04-19 09:00" && c.now != "2027-04-17 17:00" && c.now != "2027-04-17 06:00" && len(m.Why) == 0 {
			t.Errorf("%s: no reason", c.name)
		}
		if s := b.Say(m.Finding, quantity.Metric); s == "" {
			t.Errorf("%s: no words", c.name)
		}
	}
}

// Next is sure where no hour of the coat and of its drying needs a measurement.
func TestNextIsSure(t *testing.T) {
	b := book(t, "")
	task := weekendCoats(t, 1)[0]
	for _, sure := range []bool{true, false} {
		f := morningSky(t, func(at time.Time) bool { return at.Day() == 17 }, func(at time.Time) bool { return !sure && at.Day() == 18 })
		m, err := calendar.Today(b, task, weekendDays(), on(t, time.UTC, "2027-04-17 09:00"), calendar.Conditions{Zone: time.UTC, Forecast: f})
		if err != nil {
			t.Fatal(err)
		}
		if m.Sure != sure || !m.Next.Equal(on(t, time.UTC, "2027-04-18 08:00")) {
			t.Errorf("next %s, sure %t, want %t", m.Next, m.Sure, sure)
		}
	}
}

// Rain at 20:00 leaves a film of two hours until noon to begin: 14:00 + 6 h is 20:00. An hour later it is rained on.
func TestRainAfterTheCoat(t *testing.T) {
	b := book(t, "")
	rain := func(at time.Time) bool { return at.Day() == 17 && at.Hour() == 20 }
	f := morningSky(t, rain, func(time.Time) bool { return false })
	for now, want := range map[string]finding.Verdict{"2027-04-17 12:00": finding.Fine, "2027-04-17 13:00": finding.Forbidden} {
		m, err := calendar.Today(b, weekendCoats(t, 1)[0], weekendDays(), on(t, time.UTC, now), calendar.Conditions{Zone: time.UTC, Forecast: f})
		if err != nil {
			t.Fatal(err)
		}
		if m.Verdict != want {
			t.Errorf("%s: %s, want %s", now, m.Verdict, want)
		}
		if want == finding.Forbidden && !m.Why.Has(weather.RuleRain) {
			t.Errorf("%s: the rain is not among the reasons: %v", now, m.Why)
		}
	}
}

func TestNoMorningForWorkWithoutACoat(t *testing.T) {
	_, err := calendar.Today(book(t, ""), calendar.Task{Name: "sand", Hours: 2}, weekendDays(), on(t, time.UTC, "2027-04-17 09:00"), calendar.Conditions{Zone: time.UTC})
	if err == nil {
		t.Error("sanding is told a morning for its coat")
	}
}
