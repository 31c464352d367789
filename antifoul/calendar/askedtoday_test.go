package calendar_test

import (
	"slices"
	"testing"
	"time"

	"boatyard.example/bottomwork/antifoul/calendar"
	"boatyard.example/bottomwork/antifoul/weather"
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

// today asks for one coat of two hours on the weekend, which rain may not touch for six hours after its end.
func today(tb testing.TB, d calendar.Days, now time.Time, c calendar.Conditions) calendar.Morning {
	tb.Helper()
	m, err := calendar.Today(book(tb, ""), weekendCoats(tb, 1)[0], d, now, c)
	if err != nil {
		tb.Fatal(err)
	}
	return m
}

// fairFor is so many hours at 20 degC from the Saturday's midnight on.
func fairFor(tb testing.TB, n int) weather.Forecast {
	tb.Helper()
	return run(on(tb, time.UTC, "2027-04-17 00:00"), n, func(int, time.Time) weather.Hour { return fair() })
}

// The day and its hours are those of the wall where she stands, however the moment is written; without a zone they are UTC.
func TestTodayIsWhereSheStands(t *testing.T) {
	adelaide := zone(t, "Australia/Adelaide")  // UTC + 9:30 on this day
	now := on(t, time.UTC, "2027-04-16 23:30") // 09:00 on Saturday there
	sky := run(on(t, adelaide, "2027-04-17 00:00"), 72, func(int, time.Time) weather.Hour { return fair() })
	if m := today(t, weekendDays(), now, calendar.Conditions{Zone: adelaide, Forecast: sky}); m.Verdict != finding.Fine || !m.From.Equal(now) {
		t.Errorf("at nine in Adelaide: %s from %s", m.Verdict, m.From)
	}
	if m := today(t, weekendDays(), now, calendar.Conditions{Forecast: fairFor(t, 72)}); m.Verdict != finding.Forbidden || !m.Next.Equal(on(t, time.UTC, "2027-04-17 08:00")) {
		t.Errorf("on Friday night by UTC: %s, next %s", m.Verdict, m.Next)
	}
	if m := today(t, weekendDays(), on(t, time.UTC, "2027-04-17 09:00"), calendar.Conditions{Forecast: fairFor(t, 72)}); m.Verdict != finding.Fine {
		t.Errorf("on Saturday morning by UTC: %s", m.Verdict)
	}
}

// A crew that is there by night may begin at midnight.
func TestTodayAtMidnight(t *testing.T) {
	d := weekendDays()
	d.Start, d.Stop = 0, 24*60
	m := today(t, d, on(t, time.UTC, "2027-04-17 00:00"), calendar.Conditions{Forecast: fairFor(t, 48)})
	if m.Verdict != finding.Fine || !m.From.Equal(on(t, time.UTC, "2027-04-17 00:00")) {
		t.Errorf("%s from %s", m.Verdict, m.From)
	}
}

// Launch, shift and free days that are over are no faults of a question asked later.
func TestTodayForgetsDaysThatAreOver(t *testing.T) {
	d := weekendDays()
	d.Launch, d.Shift, d.Free = day(t, "2027-04-10"), day(t, "2027-04-01"), []quantity.Date{day(t, "2027-04-03"), day(t, "2027-04-17"), day(t, "2027-04-19")}
	d.Weekdays = nil
	task := weekendCoats(t, 1)[0]
	task.On = day(t, "2027-04-05")
	m, err := calendar.Today(book(t, ""), task, d, on(t, time.UTC, "2027-04-17 09:00"), calendar.Conditions{Forecast: fairFor(t, 72)})
	if err != nil || m.Verdict != finding.Fine || !m.Next.Equal(on(t, time.UTC, "2027-04-19 08:00")) {
		t.Errorf("%v: %s, next %s", err, m.Verdict, m.Next)
	}
}

// Every fault of the question is told at once, with that of a task that puts nothing on.
func TestFaultsOfToday(t *testing.T) {
	f := fairFor(t, 24)
	f.Hours[3].HumidityPct = 104
	d := weekendDays()
	d.Hands = -1
	_, err := calendar.Today(book(t, ""), calendar.Task{Name: "sand", Hours: -2}, d, on(t, time.UTC, "2027-04-17 09:00"), calendar.Conditions{Forecast: f})
	if got := read(err); got != "hands -1, hours[3].humidity 104, layers, task[1].hours -2" {
		t.Error(got)
	}
}

// The next good hour is looked for until the forecast ends: a coat of two hours from 08:00 on Monday and its six hours without rain are over at 16:00,
// 64 hours after Saturday's midnight. Without a forecast today and tomorrow are looked at.
func TestHowFarTheNextHourIsLookedFor(t *testing.T) {
	d := weekendDays()
	d.Weekdays = []time.Weekday{time.Saturday, time.Monday}
	evening := on(t, time.UTC, "2027-04-17 17:00")
	lone := fairFor(t, 64)
	lone.Hours = lone.Hours[63:]
	monday := on(t, time.UTC, "2027-04-19 08:00")
	for name, c := range map[string]struct {
		forecast weather.Forecast
		next     time.Time
		sure     bool
	}{
		"an hour too short":   {fairFor(t, 63), time.Time{}, false},
		"just to its end":     {fairFor(t, 64), monday, true},
		"the last hour alone": {lone, monday, false},
		"none":                {weather.Forecast{}, time.Time{}, false},
	} {
		m := today(t, d, evening, calendar.Conditions{Forecast: c.forecast})
		if !m.Next.Equal(c.next) || m.Sure != c.sure {
			t.Errorf("%s: next %s, sure %t", name, m.Next, m.Sure)
		}
	}
	// No further than a year, whatever a forecast pretends.
	far := fairFor(t, 1)
	far.Hours[0].At = far.Hours[0].At.AddDate(2, 0, 0)
	for free, want := range map[string]bool{"2028-04-16": true, "2028-04-18": false} {
		d.Weekdays, d.Free = nil, []quantity.Date{day(t, free)}
		if m := today(t, d, evening, calendar.Conditions{Forecast: far}); m.Next.IsZero() == want {
			t.Errorf("free on %s: next %s", free, m.Next)
		}
	}
	// Tomorrow is looked at to its end, and no further.
	d.Start, d.Stop = 0, 24*60
	for free, want := range map[string]string{"2027-04-18": "2027-04-18 00:00", "2027-04-19": ""} {
		d.Weekdays, d.Free = nil, []quantity.Date{day(t, free)}
		task := weekendCoats(t, 1)[0]
		task.Layers[0].Coating.RainSafe, task.Layers[0].Coating.TouchDry = quantity.Duration{}, quantity.Duration{} // its hours alone count
		m, err := calendar.Today(book(t, ""), task, d, evening, calendar.Conditions{})
		if err != nil {
			t.Fatal(err)
		}
		if want == "" && !m.Next.IsZero() || want != "" && !m.Next.Equal(on(t, time.UTC, want)) {
			t.Errorf("free on %s: next %s", free, m.Next)
		}
	}
}

// The answer names the hour to wait for, or the next one and whether it rests on a measurement.
func TestTheHourIsNamed(t *testing.T) {
	rainy := func(until int, damp bool) weather.Forecast {
		return run(on(t, time.UTC, "2027-04-17 00:00"), 72, func(_ int, at time.Time) weather.Hour {
			w := fair()
			if at.Day() == 17 && at.Hour() < until {
				w.RainMM = 1
			}
			if at.Day() == 18 && damp {
				w.HumidityPct = weather.Unknown()
			}
			return w
		})
	}
	for name, c := range map[string]struct {
		forecast   weather.Forecast
		rule       finding.ID
		fact, want string
	}{
		"rain until eleven":           {rainy(11, false), calendar.RuleUntil, "from", "Sat 17 Apr 2027, 11:00"},
		"rain all day":                {rainy(24, false), calendar.RuleNotToday, "next", "Sun 18 Apr 2027, 08:00"},
		"and nobody knows of Sunday":  {rainy(24, true), calendar.RuleNotToday, "next", "Sun 18 Apr 2027, 08:00, if what is measured then allows it"},
		"and nothing is told of it":   {weather.Forecast{Hours: rainy(24, false).Hours[:24]}, calendar.RuleNotToday, "next", "Sun 18 Apr 2027, 08:00, if what is measured then allows it"},
		"rain as long as it is known": {run(on(t, time.UTC, "2027-04-17 00:00"), 72, func(int, time.Time) weather.Hour { w := fair(); w.RainMM = 1; return w }), calendar.RuleNotToday, "next", "none that the forecast tells of"},
	} {
		m := today(t, weekendDays(), on(t, time.UTC, "2027-04-17 09:00"), calendar.Conditions{Forecast: c.forecast})
		if m.Finding.Rule != c.rule || len(m.Finding.Facts) != 1 || m.Finding.Facts[0] != (finding.Fact{Name: c.fact, Value: c.want}) || m.Finding.About != "coat 1" {
			t.Errorf("%s: %+v", name, m.Finding)
		}
	}
}

// How long a film cures, and stands, is no matter of this morning.
func TestTodayKnowsNoLaunch(t *testing.T) {
	task := weekendCoats(t, 1)[0]
	task.Layers[0].Cures, task.Layers[0].Stands = h(1000), h(1001)
	m, err := calendar.Today(book(t, ""), task, weekendDays(), on(t, time.UTC, "2027-04-17 09:00"), calendar.Conditions{Forecast: fairFor(t, 48)})
	if err != nil || m.Verdict != finding.Fine {
		t.Errorf("%v: %s", err, m.Verdict)
	}
}

// A film from nine to eleven is rain-safe and touch-dry at times of its own: rain after the one and dew after the other do no harm.
func TestRainAndDewHaveTheirOwnTimes(t *testing.T) {
	d := weekendDays()
	d.Weekdays, d.Free, d.Start, d.Stop = nil, []quantity.Date{day(t, "2027-04-17")}, 9*60, 11*60
	for name, c := range map[string]struct {
		rainSafe, touchDry int64
		rain, dew          int // hours of the day
		verdict            finding.Verdict
	}{
		"rain as it is safe":        {6, 8, 17, 0, finding.Fine},
		"an hour before":            {6, 8, 16, 0, finding.Forbidden},
		"dew as it is touch-dry":    {8, 6, 0, 17, finding.Fine},
		"an hour before that":       {8, 6, 0, 16, finding.Forbidden},
		"dew on a film safe before": {6, 8, 0, 18, finding.Forbidden},
		"and as that is dry":        {6, 8, 0, 19, finding.Fine},
	} {
		task := weekendCoats(t, 1)[0]
		task.Layers[0].Coating.RainSafe, task.Layers[0].Coating.TouchDry = h(c.rainSafe), h(c.touchDry)
		f := fairFor(t, 48)
		if c.rain > 0 {
			f.Hours[c.rain].RainMM = 1
		}
		if c.dew > 0 {
			f.Hours[c.dew].SurfaceC = 5 // the dew point is 9.26 degC
		}
		m, err := calendar.Today(book(t, ""), task, d, on(t, time.UTC, "2027-04-17 09:00"), calendar.Conditions{Forecast: f})
		if err != nil || m.Verdict != c.verdict {
			t.Errorf("%s: %v, %s, want %s", name, err, m.Verdict, c.verdict)
		}
	}
}

// What must be measured, and what speaks against the hour, is told once, of the first hour that is in doubt: of the two of the coat, then of the
// six in which it dries. What nobody knows of the evening does not matter to a coat that is dry by then.
func TestWhyItMustBeMeasured(t *testing.T) {
	const nine = "2027-04-17 09:00"
	at := func(hour int, change func(*weather.Hour)) weather.Forecast { // which begins a day before
		f := run(on(t, time.UTC, "2027-04-16 00:00"), 72, func(int, time.Time) weather.Hour { return fair() })
		change(&f.Hours[24+hour])
		return f
	}
	damp := func(w *weather.Hour) { w.HumidityPct = weather.Unknown() }
	doubtful := func(w *weather.Hour) { w.RainMM = weather.Unknown() }
	wet := func(w *weather.Hour) { w.RainMM = 1 }
	dampThenRain := at(16, wet)
	dampThenRain.Hours[24+11].HumidityPct = 95 // no coat goes on, and nothing condenses
	for name, c := range map[string]struct {
		forecast weather.Forecast
		verdict  finding.Verdict
		why      []finding.ID
	}{
		"in the hour before":             {at(8, damp), finding.Fine, nil},
		"in its first hour":              {at(9, damp), finding.Ask, []finding.ID{weather.RuleMeasure}},
		"in its second":                  {at(10, damp), finding.Ask, []finding.ID{weather.RuleMeasure}},
		"after it":                       {at(11, damp), finding.Ask, []finding.ID{weather.RuleWetUnknown}},
		"rain that nobody knows":         {at(16, doubtful), finding.Ask, []finding.ID{weather.RuleWetUnknown}},
		"later":                          {at(17, doubtful), finding.Fine, nil},
		"rain in both hours":             {weather.Forecast{Hours: append(at(9, wet).Hours[:34:34], at(10, wet).Hours[34:]...)}, finding.Needs, []finding.ID{weather.RuleRain}},
		"damp after it, and then rain":   {dampThenRain, finding.Forbidden, []finding.ID{weather.RuleRain}},
		"rain as it dries, all day":      {at(16, wet), finding.Forbidden, []finding.ID{weather.RuleRain}},
		"a forecast that ends before it": {fairFor(t, 9), finding.Ask, []finding.ID{weather.RuleMeasure, weather.RuleMeasure, weather.RuleMeasure}},
		"that ends with it":              {fairFor(t, 11), finding.Ask, []finding.ID{weather.RuleWetUnknown, weather.RuleWetUnknown}},
	} {
		m := today(t, weekendDays(), on(t, time.UTC, nine), calendar.Conditions{Forecast: c.forecast})
		var why []finding.ID
		for _, f := range m.Why {
			why = append(why, f.Rule)
		}
		if m.Verdict != c.verdict || !slices.Equal(why, c.why) {
			t.Errorf("%s: %s for %v, want %s for %v", name, m.Verdict, why, c.verdict, c.why)
		}
	}
}
