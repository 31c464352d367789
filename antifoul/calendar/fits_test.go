package calendar_test

import (
	"fmt"
	"strings"
	"testing"
	"time"

	"boatyard.example/bottomwork/antifoul/calendar"
	"boatyard.example/bottomwork/antifoul/weather"
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

// roundTheClock is a crew that is there day and night, so that a launch is at midnight.
func roundTheClock(tb testing.TB, launch string) calendar.Days {
	tb.Helper()
	d := calendar.Days{Start: 0, Stop: 24 * 60, SetUp: h(0), Launch: day(tb, launch)}
	for w := range 7 {
		d.Weekdays = append(d.Weekdays, time.Weekday(w))
	}
	return d
}

// raining is fair weather, in which it rains until an hour after the first midnight.
func raining(tb testing.TB, until int) calendar.Conditions {
	tb.Helper()
	return calendar.Conditions{Forecast: run(on(tb, time.UTC, "2027-04-17 00:00"), 24*4, func(i int, _ time.Time) weather.Hour {
		w := fair()
		if i < until {
			w.RainMM = 1
		}
		return w
	})}
}

// From one midnight to the launch at the next there are 24 hours: work, waits, coats that dry and cure, and appointments may fill them, and no hour more.
func TestJustInTime(t *testing.T) {
	b := book(t, "")
	coat := func(change func(*calendar.Task)) calendar.Task { // of a film that no water spoils
		c := weekendCoats(t, 1)[0]
		c.Layers[0].Coating.RainSafe, c.Layers[0].Coating.TouchDry = quantity.Duration{}, quantity.Duration{}
		change(&c)
		return c
	}
	waits := func(n int64) calendar.Task { return coat(func(c *calendar.Task) { c.Wait = h(n) }) }
	cures := func(n int64) calendar.Task { return coat(func(c *calendar.Task) { c.Layers[0].Cures = h(n) }) }
	for name, c := range map[string]struct {
		sky   calendar.Conditions
		tasks []calendar.Task
		fits  bool
	}{
		"24 hours of work":                      {calendar.Conditions{}, []calendar.Task{{Hours: 24}}, true},
		"25":                                    {calendar.Conditions{}, []calendar.Task{{Hours: 25}}, false},
		"20 and a wait of 4":                    {calendar.Conditions{}, []calendar.Task{{Hours: 20, Wait: h(4)}}, true},
		"of 5":                                  {calendar.Conditions{}, []calendar.Task{{Hours: 20, Wait: h(5)}}, false},
		"20, then a wait of its own":            {calendar.Conditions{}, []calendar.Task{{Hours: 20}, {Wait: h(4)}}, true},
		"a longer one":                          {calendar.Conditions{}, []calendar.Task{{Hours: 20}, {Wait: h(5)}}, false},
		"nothing but a wait of a day":           {calendar.Conditions{}, []calendar.Task{{Wait: h(24)}}, true},
		"and an hour":                           {calendar.Conditions{}, []calendar.Task{{Wait: h(25)}}, false},
		"a coat from 22:00":                     {raining(t, 22), []calendar.Task{coat(func(*calendar.Task) {})}, true},
		"from 23:00":                            {raining(t, 23), []calendar.Task{coat(func(*calendar.Task) {})}, false},
		"from 17:00, with a wait of 5 h":        {raining(t, 17), []calendar.Task{waits(5)}, true},
		"from 18:00":                            {raining(t, 18), []calendar.Task{waits(5)}, false},
		"that cures 5 h, from 17:00":            {raining(t, 17), []calendar.Task{cures(5)}, true},
		"from six":                              {raining(t, 18), []calendar.Task{cures(5)}, false},
		"from 17:00, and 5 h of cleaning":       {raining(t, 17), []calendar.Task{coat(func(c *calendar.Task) { c.Layers[0].Opens = h(0) }), {Hours: 5}}, true},
		"6 h":                                   {raining(t, 17), []calendar.Task{coat(func(c *calendar.Task) { c.Layers[0].Opens = h(0) }), {Hours: 6}}, false},
		"from midnight, open after 16 h, and 6": {raining(t, 0), []calendar.Task{coat(func(*calendar.Task) {}), {Hours: 6}}, true},
		"and 7":                                 {raining(t, 0), []calendar.Task{coat(func(*calendar.Task) {}), {Hours: 7}}, false},
		"a film that is dry in 6 h, from 16:00": {raining(t, 16), weekendCoats(t, 1), true},
		"from five":                             {raining(t, 17), weekendCoats(t, 1), false},
		"work that nobody's time is taken by waits for it": {raining(t, 6), []calendar.Task{coat(func(*calendar.Task) {}), {Name: "rest"}}, true},
		"and has no time": {raining(t, 7), []calendar.Task{coat(func(*calendar.Task) {}), {Name: "rest"}}, false},
	} {
		p := arrange(t, b, c.tasks, roundTheClock(t, "2027-04-18"), "2027-04-17", c.sky)
		if p.Fits != c.fits {
			t.Errorf("%s: fits %t: %v", name, p.Fits, p.Items)
		}
		if p.Fits && p.Ready.After(on(t, time.UTC, "2027-04-18 00:00")) {
			t.Errorf("%s: ready %s", name, p.Ready)
		}
	}
}

// She is ready when the last work, its wait and its cure are over, and what the yard does after it. A last start at the first hour is one.
func TestWhenSheIsReady(t *testing.T) {
	b := book(t, "")
	coat := weekendCoats(t, 1)[0]
	cured := coat
	cured.Layers = []calendar.Layer{coat.Layers[0]}
	cured.Layers[0].Cures = h(30)
	slow := coat
	slow.Layers = []calendar.Layer{coat.Layers[0]}
	slow.Layers[0].Cures = h(500 * 24)
	for name, c := range map[string]struct {
		tasks []calendar.Task
		want  string
	}{
		"work":               {[]calendar.Task{{Hours: 3}}, "2027-04-17 03:00"},
		"and a wait":         {[]calendar.Task{{Hours: 3, Wait: h(5)}}, "2027-04-17 08:00"},
		"that is not whole":  {[]calendar.Task{{Hours: 3, Wait: quantity.Minute.N(90)}}, "2027-04-17 05:00"},
		"a coat":             {[]calendar.Task{coat}, "2027-04-17 02:00"},
		"that cures":         {[]calendar.Task{cured}, "2027-04-18 08:00"},
		"past all planning":  {[]calendar.Task{slow}, "2028-04-17 01:00"},              // the first hour after a leap year's days
		"work below it":      {[]calendar.Task{cured, {Hours: 1}}, "2027-04-18 08:00"}, // from 18:00 to 19:00
		"the yard":           {[]calendar.Task{{Hours: 3}, {Yard: true, Hours: 4, On: day(t, "2027-04-19")}}, "2027-04-19 12:00"},
		"and what waits":     {[]calendar.Task{{Hours: 3}, {Yard: true, Hours: 4, On: day(t, "2027-04-19"), Wait: h(6)}}, "2027-04-19 18:00"},
		"nothing but a wait": {[]calendar.Task{{Wait: h(6)}}, "2027-04-17 06:00"},
	} {
		p := arrange(t, b, c.tasks, roundTheClock(t, ""), "2027-04-17", calendar.Conditions{})
		if !p.Ready.Equal(on(t, time.UTC, c.want)) {
			t.Errorf("%s: ready %s, want %s", name, p.Ready, c.want)
		}
		if !p.Items[0].Last.IsZero() {
			t.Errorf("%s: without a launch there is a last start, %s", name, p.Items[0].Last)
		}
	}
	p := arrange(t, b, []calendar.Task{{Hours: 14}, {Yard: true, Hours: 2, On: day(t, "2027-04-18")}}, roundTheClock(t, "2027-04-19"), "2027-04-17", calendar.Conditions{})
	if got := lastStarts(p); got != "18 01:00, none" { // the yard comes at three at the latest
		t.Errorf("last starts %s", got)
	}
	p = arrange(t, b, []calendar.Task{{Hours: 24}}, roundTheClock(t, "2027-04-18"), "2027-04-17", calendar.Conditions{})
	if got := lastStarts(p); got != "17 00:00" {
		t.Errorf("of a whole day's work: last start %s", got)
	}
}

func lastStarts(p calendar.Calendar) string {
	var out []string
	for _, it := range p.Items {
		if it.Last.IsZero() {
			out = append(out, "none")
			continue
		}
		out = append(out, it.Last.Format("2 15:04"))
	}
	return strings.Join(out, ", ")
}

// A coat that should be fresh goes on as near to the launch, at midnight before 26 April, as its quarters of the time that it may stand tell, and in the first hour of
// them; where it may stand for ever by days. Of 40 h a quarter is ten: it ends between 14:00, which is a quarter, and midnight, so the first that is nearer
// ends at 15:00. A day before the launch is a day; nearer is what ends after it.
func TestFreshForTheLaunch(t *testing.T) {
	b := book(t, "")
	for name, c := range map[string]struct {
		late   bool
		stands int64
		launch string
		want   string
	}{
		"soon":                     {false, 0, "2027-04-26", "17 00:00"},
		"within a day":             {true, 0, "2027-04-26", "25 00:00"},
		"within a quarter of 40 h": {true, 40, "2027-04-26", "25 13:00"},
		"of 96":                    {true, 96, "2027-04-26", "25 00:00"},
		"soon, and for 40 h":       {false, 40, "2027-04-26", "24 06:00"}, // ends at 08:00, forty hours before
		"no launch, so soon":       {true, 40, "", "17 00:00"},
	} {
		coat := weekendCoats(t, 1)[0]
		coat.Layers[0].Late = c.late
		if c.stands > 0 {
			coat.Layers[0].Stands = h(c.stands)
		}
		p := arrange(t, b, []calendar.Task{coat}, roundTheClock(t, c.launch), "2027-04-17", calendar.Conditions{})
		if got := p.Items[0].Start().Format("2 15:04"); got != c.want {
			t.Errorf("%s: %s, want %s", name, got, c.want)
		}
	}
}

// A reserve that is longer than the time there is cannot be kept, not even by work of the first hour.
func TestReserveLongerThanTheTime(t *testing.T) {
	b := book(t, "")
	for _, c := range []struct {
		hours   float64
		reserve int64
		kept    bool
	}{{1, 0, true}, {1, 1, true}, {1, 23, true}, {1, 24, false}, {1, 240, false}, {23, 1, true}, {24, 0, true}, {24, 1, false}} {
		d := roundTheClock(t, "2027-04-18")
		d.Reserve = h(c.reserve)
		p := arrange(t, b, []calendar.Task{{Hours: c.hours}}, d, "2027-04-17", calendar.Conditions{})
		if !p.Fits || p.Reserve != c.kept || p.Findings.Has(calendar.RuleNoReserve) == c.kept {
			t.Errorf("%g h of work and a reserve of %d h: fits %t, kept %t", c.hours, c.reserve, p.Fits, p.Reserve)
		}
	}
}

// Hours of work that may be parted are added up before they are rounded up, but not past a wait, an appointment or the yard.
func TestHoursAreAddedUp(t *testing.T) {
	b := book(t, "")
	half := calendar.Task{Hours: 0.5}
	longer := calendar.Task{Hours: 1.5}
	wait, visit, longVisit := half, half, longer
	wait.Wait = h(2)
	visit.On = day(t, "2027-04-18")
	longVisit.On = day(t, "2027-04-18")
	yard := calendar.Task{Hours: 1, Yard: true, On: day(t, "2027-04-19")}
	for name, c := range map[string]struct {
		tasks []calendar.Task
		want  string
	}{
		"two halves":                   {[]calendar.Task{half, half}, "17 00-01, 17 01-01"},
		"three":                        {[]calendar.Task{half, half, half}, "17 00-01, 17 01-01, 17 01-02"},
		"one and a half, and a half":   {[]calendar.Task{longer, half, half}, "17 00-02, 17 02-02, 17 02-03"},
		"a wait between":               {[]calendar.Task{wait, half}, "17 00-01, 17 03-04"},
		"a visit the next day":         {[]calendar.Task{half, visit}, "18 00-01, 18 01-02"},
		"a longer one":                 {[]calendar.Task{half, longVisit}, "18 00-01, 18 01-03"},
		"and work after it":            {[]calendar.Task{visit, half}, "18 00-01, 18 01-02"},
		"a wait after a shared hour":   {[]calendar.Task{half, wait, half}, "17 00-01, 17 01-02, 17 04-05"},
		"the yard between":             {[]calendar.Task{half, yard, half}, "19 00-01, 19 08-09, 19 09-10"},
		"a coat between":               {[]calendar.Task{half, weekendCoats(t, 1)[0], half}, "17 00-01, 17 01-03, 17 19-20"},
		"nothing, at the first moment": {[]calendar.Task{{}, half}, "17 00-00, 17 00-01"},
	} {
		p := arrange(t, b, c.tasks, roundTheClock(t, ""), "2027-04-17", calendar.Conditions{})
		var got []string
		for _, it := range p.Items {
			got = append(got, fmt.Sprintf("%s-%s", it.Start().Format("2 15"), it.End().Format("15")))
		}
		if strings.Join(got, ", ") != c.want {
			t.Errorf("%s: %s, want %s", name, strings.Join(got, ", "), c.want)
		}
	}
}

// The yard works from Monday to Friday, from eight to five, unless a day is booked; what is longer than its day fills one. Where the clock of the zone has
// been put by half an hour since the first midnight, its hours are counted from half past eight.
func TestTheYardsHours(t *testing.T) {
	b := book(t, "")
	island := zone(t, "Australia/Lord_Howe") // puts its clock back by half an hour on 4 April 2027
	for name, c := range map[string]struct {
		from  string
		zone  *time.Location
		tasks []calendar.Task
		want  string
	}{
		"not on Saturday":              {"2027-04-17", nil, []calendar.Task{{Yard: true, Hours: 2}}, "Mon 19 08:00-10:00"},
		"but when it is booked":        {"2027-04-17", nil, []calendar.Task{{Yard: true, Hours: 2, On: day(t, "2027-04-17")}}, "Sat 17 08:00-10:00"},
		"nor on Sunday":                {"2027-04-18", nil, []calendar.Task{{Yard: true, Hours: 2}}, "Mon 19 08:00-10:00"},
		"on Friday":                    {"2027-04-16", nil, []calendar.Task{{Yard: true, Hours: 2}}, "Fri 16 08:00-10:00"},
		"no hours are one":             {"2027-04-16", nil, []calendar.Task{{Yard: true}}, "Fri 16 08:00-09:00"},
		"a whole day":                  {"2027-04-16", nil, []calendar.Task{{Yard: true, Hours: 9}}, "Fri 16 08:00-17:00"},
		"more than a day":              {"2027-04-16", nil, []calendar.Task{{Yard: true, Hours: 30}}, "Fri 16 08:00-17:00"},
		"after nine there are eight":   {"2027-04-16", nil, []calendar.Task{{Hours: 9}, {Yard: true, Hours: 8}}, "Fri 16 09:00-17:00"},
		"and not nine":                 {"2027-04-16", nil, []calendar.Task{{Hours: 9}, {Yard: true, Hours: 9}}, "Mon 19 08:00-17:00"},
		"a visit that takes no time":   {"2027-04-16", nil, []calendar.Task{{On: day(t, "2027-04-18")}}, "Sun 18 08:00-09:00"},
		"an hour after the clock's":    {"2027-04-03", island, []calendar.Task{{Yard: true, Hours: 9}}, "Mon 5 08:30-17:30"},
		"eight hours after it, by six": {"2027-04-03", island, []calendar.Task{{Yard: true, Hours: 8}}, "Mon 5 08:30-16:30"},
	} {
		p := arrange(t, b, c.tasks, roundTheClock(t, ""), c.from, calendar.Conditions{Zone: c.zone})
		if len(p.Items) == 0 {
			t.Errorf("%s: no plan: %v", name, p.Findings)
			continue
		}
		it := p.Items[len(p.Items)-1]
		if got := it.Start().Format("Mon 2 15:04") + "-" + it.End().Format("15:04"); got != c.want {
			t.Errorf("%s: %s, want %s", name, got, c.want)
		}
	}
}

// A crew that is there from eight to six by the same clock finds its first whole hour at half past eight. A coat after work that is no coat has no
// window to hit.
func TestTheCrewsHours(t *testing.T) {
	b := book(t, "")
	d := weekendDays()
	d.Weekdays = []time.Weekday{time.Monday}
	p := arrange(t, b, append([]calendar.Task{{Hours: 5}}, weekendCoats(t, 1)...), d, "2027-04-03", calendar.Conditions{Zone: zone(t, "Australia/Lord_Howe")})
	if len(p.Items) != 2 || p.Items[0].Start().Format("2 15:04") != "5 08:30" || p.Items[1].End().Format("2 15:04") != "5 15:30" {
		t.Errorf("%+v", p.Items)
	}
	if it := p.Items[1]; !it.Opens.IsZero() || !it.Closes.IsZero() {
		t.Errorf("a window from %s to %s", it.Opens, it.Closes)
	}
	// The yard may work until she goes in: of a crew that comes at five in the afternoon, at five.
	d = roundTheClock(t, "2027-04-17")
	d.Start = 17 * 60
	for hours, fits := range map[float64]bool{9: true, 8: true} {
		p := arrange(t, b, []calendar.Task{{Yard: true, Hours: hours, On: day(t, "2027-04-17")}}, d, "2027-04-17", calendar.Conditions{})
		if p.Fits != fits {
			t.Errorf("%g hours of the yard: fits %t", hours, p.Fits)
		}
	}
	d.Start = 16 * 60
	if p := arrange(t, b, []calendar.Task{{Yard: true, Hours: 9, On: day(t, "2027-04-17")}}, d, "2027-04-17", calendar.Conditions{}); p.Fits {
		t.Errorf("in at four, and the yard works until five: %+v", p)
	}
}

// Two films that go on together are abraded when the one whose window closes is hard enough; how long the other takes to harden does not matter.
func TestWhatMustBeHard(t *testing.T) {
	b := book(t, "")
	for name, c := range map[string]struct {
		hard, other int64
		want        string
	}{
		"at once":                        {0, 0, "24 08:00"},
		"the other in a month":           {0, 24 * 30, "24 08:00"},
		"when it opens":                  {1, 0, "24 08:00"},
		"as she is worked on":            {166, 0, "24 08:00"}, // ends on Saturday at ten, and a week later less two hours it is eight
		"an hour later":                  {167, 0, "24 09:00"},
		"in nine days":                   {9 * 24, 0, "1 08:00"}, // Monday 26 at ten
		"in nine days, and the other in": {9 * 24, 24 * 30, "1 08:00"},
	} {
		tasks := weekendCoats(t, 2)
		closes, never := tasks[0].Layers[0], tasks[0].Layers[0]
		never.Closes = quantity.Duration{}
		if c.hard > 0 {
			closes.Hard = h(c.hard)
		}
		if c.other > 0 {
			never.Hard = h(c.other)
		}
		tasks[0].Layers = []calendar.Layer{closes, never}
		d := weekendDays()
		d.Weekdays, d.Free = nil, []quantity.Date{day(t, "2027-04-17"), day(t, "2027-04-24"), day(t, "2027-05-01")} // the window is open on Sunday morning only
		p := arrange(t, b, tasks, d, "2027-04-17", calendar.Conditions{})
		if len(p.Items) != 3 || !p.Items[1].Again || p.Items[1].Start().Format("2 15:04") != c.want {
			t.Errorf("%s: %+v", name, p.Items)
			continue
		}
		if p.Items[1].Opens.IsZero() || p.Items[1].Closes.IsZero() || !p.Items[2].Opens.IsZero() || !p.Items[2].Closes.IsZero() {
			t.Errorf("%s: the window missed belongs to the abrading, the coat after it has none: %+v", name, p.Items[1:])
		}
	}
}

// A forecast is believed for so many hours from the first midnight on. A coat from eight to ten dries until 16:00, so that its last hour begins at 15:00.
func TestHowFarAForecastIsBelieved(t *testing.T) {
	b := book(t, "")
	d := weekendDays()
	d.Weekdays, d.Free, d.Stop = nil, []quantity.Date{day(t, "2027-04-17")}, 10*60
	for hours, want := range map[int64]finding.Verdict{0: finding.Ask, 9: finding.Ask, 15: finding.Ask, 16: finding.Fine, 100: finding.Fine} {
		p := arrange(t, b, weekendCoats(t, 1), d, "2027-04-17", calendar.Conditions{Forecast: fairFor(t, 48), Trust: h(hours)})
		if got := p.Items[0].Verdict; got != want {
			t.Errorf("believed for %d h: %s, want %s", hours, got, want)
		}
	}
}

// A single day, an hour of which the strip takes: the coat finds none, since it rains from four o'clock on and a film is wetted within six hours. The
// hour that it lost to the strip has nothing against it, and the reason is found all the same.
func TestTheReasonIsFoundLater(t *testing.T) {
	b := book(t, "")
	d := weekendDays()
	d.Weekdays, d.Free = nil, []quantity.Date{day(t, "2027-04-17")}
	sky := calendar.Conditions{Forecast: run(on(t, time.UTC, "2027-04-17 00:00"), 48, func(i int, _ time.Time) weather.Hour {
		w := fair()
		if i >= 16 {
			w.RainMM = 1
		}
		return w
	})}
	p := arrange(t, b, []calendar.Task{{Name: "strip", Hours: 1}, weekendCoats(t, 1)[0]}, d, "2027-04-17", sky)
	if len(p.Items) != 0 || told(p.Findings, calendar.RuleNoHour) != "coat 1 after" || !p.Findings.Has(weather.RuleRain) {
		t.Errorf("%d items: %v", len(p.Items), p.Findings)
	}
}

// Work that rain stops waits until it is over, by a forecast that has begun a day before; other work does not.
func TestWorkInTheDry(t *testing.T) {
	sky := calendar.Conditions{Forecast: run(on(t, time.UTC, "2027-04-16 00:00"), 72, func(i int, _ time.Time) weather.Hour {
		w := fair()
		if i < 24+10 {
			w.RainMM = 1
		}
		return w
	})}
	for dry, want := range map[bool]string{true: "17 10:00", false: "17 08:00"} {
		p := arrange(t, book(t, ""), []calendar.Task{{Hours: 2, Dry: dry}}, weekendDays(), "2027-04-17", sky)
		if got := p.Items[0].Start().Format("2 15:04"); got != want {
			t.Errorf("stopped by rain %t: begins %s, want %s", dry, got, want)
		}
	}
}

// Nothing to do is done, whatever is forecast.
func TestNothingToDo(t *testing.T) {
	p := arrange(t, book(t, ""), nil, roundTheClock(t, "2027-04-18"), "2027-04-17", calendar.Conditions{Forecast: fairFor(t, 24)})
	if !p.Fits || len(p.Items) != 0 || p.Days != 0 {
		t.Errorf("%+v", p)
	}
	for _, minute := range []int{0, 60} { // she goes in at once, or in an hour
		d := roundTheClock(t, "2027-04-17")
		d.Start = minute
		if p := arrange(t, book(t, ""), nil, d, "2027-04-17", calendar.Conditions{}); !p.Fits || !p.Reserve {
			t.Errorf("launched %d minutes after midnight: %+v", minute, p)
		}
	}
}
