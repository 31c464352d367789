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

// told writes the findings of a rule, one a line: whom they are about, against whom, and their facts.
func told(fs finding.List, rule finding.ID) string {
	var out []string
	for _, f := range fs {
		if f.Rule != rule {
			continue
		}
		words := []string{strings.Trim(f.About+" after "+f.Against, " ")}
		for _, x := range f.Facts {
			words = append(words, fmt.Sprintf("%s %v", x.Name, x.Value))
		}
		out = append(out, strings.Join(words, ", "))
	}
	return strings.Join(out, "\n")
}

// Coats of two hours whose window is open from 16 h after their end to 24 h after their beginning go on in pairs, on Saturday and Sunday at eight; the third of
// them misses the window that is open on Sunday night only. What begins a new run, because it is abraded or is no coat, ends the one before.
func TestRunsInOneWindow(t *testing.T) {
	const first, second = "coat 1 after coat 2, coats 2, from Sat 17 Apr 2027, 08:00, to Sun 18 Apr 2027, 08:00", "coat 3 after coat 4, coats 2, from Sat 24 Apr 2027, 10:00, to Sun 25 Apr 2027, 08:00"
	b := book(t, "")
	plan := func(tasks []calendar.Task) finding.List {
		return arrange(t, b, tasks, weekendDays(), "2027-04-17", calendar.Conditions{}).Findings
	}
	between := weekendCoats(t, 4)
	between = append(between[:2:2], calendar.Task{Name: "strip", Hours: 1}, between[2], between[3])
	hourly := weekendCoats(t, 4)
	for i := range hourly {
		hourly[i].Layers = []calendar.Layer{hourly[i].Layers[0]}
		hourly[i].Layers[0].Again = 1
	}
	for name, c := range map[string]struct {
		tasks            []calendar.Task
		runs, many, miss string
	}{
		"one":    {weekendCoats(t, 1), "", "", ""},
		"two":    {weekendCoats(t, 2), first, "", ""},
		"a pair": {weekendCoats(t, 4), first + "\n" + second, "", "coat 3 after coat 2, opens Mon 19 Apr 2027, 02:00, closes Mon 19 Apr 2027, 08:00, start Sat 24 Apr 2027, 10:00, hours 0"},
		"work between them": {
			between, first + "\ncoat 3 after coat 4, coats 2, from Sat 24 Apr 2027, 09:00, to Sun 25 Apr 2027, 08:00", "", "",
		},
		"three pairs":        {weekendCoats(t, 6), "", "times 3", "coat 3 after coat 2, opens Mon 19 Apr 2027, 02:00, closes Mon 19 Apr 2027, 08:00, start Sat 24 Apr 2027, 10:00, hours 0\ncoat 5 after coat 4, opens Mon 26 Apr 2027, 02:00, closes Mon 26 Apr 2027, 08:00, start Sat 1 May 2027, 10:00, hours 0"},
		"abraded in an hour": {hourly, first + "\ncoat 3 after coat 4, coats 2, from Sat 24 Apr 2027, 09:00, to Sun 25 Apr 2027, 08:00", "", "coat 3 after coat 2, opens Mon 19 Apr 2027, 02:00, closes Mon 19 Apr 2027, 08:00, start Sat 24 Apr 2027, 09:00, hours 0"},
	} {
		fs := plan(c.tasks)
		if got := told(fs, calendar.RuleTogether); got != c.runs {
			t.Errorf("%s: runs\n%s\nwant\n%s", name, got, c.runs)
		}
		if got := strings.TrimPrefix(told(fs, calendar.RuleTogetherOften), "after, "); got != c.many {
			t.Errorf("%s: many runs %s, want %s", name, got, c.many)
		}
		if got := told(fs, calendar.RuleNoFreeHour); got != c.miss {
			t.Errorf("%s: missed\n%s\nwant\n%s", name, got, c.miss)
		}
	}
	if got := told(plan(weekendCoats(t, 8)), calendar.RuleNoFreeHours); got != "after, times 3" {
		t.Errorf("eight coats miss three windows: %s", got)
	}
}

// The first coat goes on on Saturday from eight to ten. Its window is open on Sunday for so many hours, in which it rains, or the coat would not be
// ended before the crew goes at six.
func TestWhatAWindowIsMissedFor(t *testing.T) {
	b := book(t, "")
	for name, c := range map[string]struct {
		opens, closes int64
		rain          func(hour int) bool // on Sunday
		rule          finding.ID
		hours         string
	}{
		"rain in its only hour":            {16, 24, func(h int) bool { return h == 8 }, calendar.RuleWindowWeather, "1"},
		"in all four":                      {16, 27, func(h int) bool { return h >= 8 && h <= 11 }, calendar.RuleWindowWeather, "4"},
		"too late to end":                  {31, 33, func(int) bool { return false }, calendar.RuleNoRoomLater, "1"},
		"rain, and then too late to end":   {30, 33, func(h int) bool { return h == 16 }, calendar.RuleNoRoomLater, "2"},
		"open while nobody works":          {16, 23, func(int) bool { return false }, calendar.RuleNoFreeHour, "0"},
		"closed before it opens, at 10 °C": {16, 17, nil, calendar.RuleNoWindow, "0"},
	} {
		tasks := weekendCoats(t, 2)
		tasks[0].On = day(t, "2027-04-17")
		tasks[0].Layers[0].Opens, tasks[0].Layers[0].Closes = h(c.opens), h(c.closes)
		sky := calendar.Conditions{Usual: degC(10)}
		if c.rain != nil {
			sky = calendar.Conditions{Forecast: run(on(t, time.UTC, "2027-04-17 00:00"), 24*10, func(_ int, at time.Time) weather.Hour {
				w := fair()
				if at.Day() == 17 && at.Hour() >= 16 || at.Day() == 18 && c.rain(at.Hour()) {
					w.RainMM = 1
				}
				return w
			})}
		}
		d := weekendDays()
		if c.closes > 24 {
			d.Stop = 18 * 60
		}
		p := arrange(t, b, tasks, d, "2027-04-17", sky)
		got := told(p.Findings, c.rule)
		if !strings.HasPrefix(got, "coat 2 after coat 1, opens ") || !strings.HasSuffix(got, ", hours "+c.hours) {
			t.Errorf("%s: %q of %v", name, got, p.Findings)
		}
		if rains := p.Findings.Has(weather.RuleRain); rains != (c.rule == calendar.RuleWindowWeather) {
			t.Errorf("%s: the rain is told: %t", name, rains)
		}
	}
}

// The work with the least time to spare is named where that is a week or less; of equals the first.
func TestTheTightestIsNamed(t *testing.T) {
	b := book(t, "")
	plan := func(launch string, tasks ...calendar.Task) finding.List {
		d := weekendDays()
		if launch != "" {
			d.Launch = day(t, launch)
		}
		return arrange(t, b, tasks, d, "2027-04-17", calendar.Conditions{}).Findings
	}
	sand, fill := calendar.Task{Name: "sand", Hours: 2}, calendar.Task{Name: "fill", Hours: 3}
	for name, c := range map[string]struct {
		launch, want string
		tasks        []calendar.Task
	}{
		"a week later":               {"2027-04-26", "sand, start Sat 17 Apr 2027, 08:00, last Sat 24 Apr 2027, 08:00", []calendar.Task{{Name: "sand", Hours: 20}}},
		"two together":               {"2027-04-19", "sand, start Sat 17 Apr 2027, 08:00, last Sun 18 Apr 2027, 13:00", []calendar.Task{sand, fill}},
		"the second in its window":   {"2027-06-01", "coat 2, start Sun 18 Apr 2027, 08:00, last Sun 18 Apr 2027, 08:00", weekendCoats(t, 2)},
		"eight days":                 {"2027-05-03", "", []calendar.Task{{Name: "sand", Hours: 11}}},
		"no launch, so no last hour": {"", "", []calendar.Task{sand}},
	} {
		if got := strings.Replace(told(plan(c.launch, c.tasks...), calendar.RuleTight), " after,", ",", 1); got != c.want {
			t.Errorf("%s: %q, want %q", name, got, c.want)
		}
	}
}

// The yard is asked for its day where none is booked, and nobody else is.
func TestWhoIsAskedForADay(t *testing.T) {
	b := book(t, "")
	lift, weld := calendar.Task{Name: "lift", Hours: 1, Yard: true}, calendar.Task{Name: "weld", Hours: 1, Yard: true, On: day(t, "2027-04-19")}
	visit := calendar.Task{Name: "rigger", Hours: 1, On: day(t, "2027-05-01")}
	p := arrange(t, b, []calendar.Task{weld, {Name: "sand", Hours: 2}, lift, visit}, weekendDays(), "2027-04-17", calendar.Conditions{})
	if got := told(p.Findings, calendar.RuleYardsDay); got != "lift after" {
		t.Errorf("%q", got)
	}
}

// A single piece of work, too, may go on after the forecast has ended; one that ends with it does not.
func TestWorkAfterTheForecast(t *testing.T) {
	b := book(t, "")
	for hours, want := range map[float64]string{2: "", 3: "after, known Sat 17 Apr 2027, 10:00"} {
		p := arrange(t, b, []calendar.Task{{Name: "sand", Hours: hours}}, weekendDays(), "2027-04-17", calendar.Conditions{Forecast: fairFor(t, 10)})
		if got := told(p.Findings, calendar.RuleForecast); got != want {
			t.Errorf("%g hours: %q, want %q", hours, got, want)
		}
	}
}

// A coat from eight to ten on Saturday, and frost from then on, in which it never dries; that is told, and rain where it comes within the four days for which
// a wet film is watched.
func TestFrostAfterTheCoat(t *testing.T) {
	d := weekendDays()
	d.Weekdays, d.Free, d.Stop = nil, []quantity.Date{day(t, "2027-04-17")}, 10*60
	for rain, want := range map[int]finding.ID{10: weather.RuleRain, 10 + 95: weather.RuleRain, 10 + 96: calendar.RuleNeverDry} {
		sky := calendar.Conditions{Forecast: run(on(t, time.UTC, "2027-04-17 00:00"), 24*7, func(i int, _ time.Time) weather.Hour {
			w := fair()
			if i >= 10 {
				w.AirC, w.SurfaceC = 0, 0
			}
			if i == rain {
				w.RainMM = 1
			}
			return w
		})}
		p := arrange(t, book(t, ""), weekendCoats(t, 1), d, "2027-04-17", sky)
		if len(p.Findings) != 2 || p.Findings[0].Rule != calendar.RuleNoHour || p.Findings[1].Rule != want {
			t.Errorf("rain after %d h: %v", rain, p.Findings)
		}
	}
}

// What there is no room for is told by what it lacks: hours in all, or hours on one day. A coat as long as the day and a job as long as all
// days lack neither, but in the frost no coat dries.
func TestWhatThereIsNoRoomFor(t *testing.T) {
	b := book(t, "")
	d := weekendDays()
	d.Weekdays, d.Free = nil, []quantity.Date{day(t, "2027-04-17"), day(t, "2027-04-18")}
	for name, c := range map[string]struct {
		strip, coat    float64
		few, long, say string
	}{
		"all of it":         {10, 10, "", "", "coat 1 after"},
		"an hour too many":  {11, 10, "after, need 21, have 20", "", ""},
		"too long a coat":   {9, 11, "", "coat 1 after, hours 11, longest 10", ""},
		"on a single day":   {0, 11, "after, need 11, have 10", "coat 1 after, hours 11, longest 10", ""},
		"too much and long": {10, 11, "after, need 21, have 20", "coat 1 after, hours 11, longest 10", ""},
	} {
		coat := weekendCoats(t, 1)[0]
		coat.Hours = c.coat
		d.Free = d.Free[:2]
		if c.strip == 0 {
			d.Free = d.Free[:1]
		}
		p := arrange(t, b, []calendar.Task{{Name: "strip", Hours: c.strip}, coat}, d, "2027-04-17", calendar.Conditions{Usual: degC(0)})
		for rule, want := range map[finding.ID]string{calendar.RuleTooFew: c.few, calendar.RuleLongCoat: c.long, calendar.RuleNoHour: c.say} {
			if got := told(p.Findings, rule); got != want {
				t.Errorf("%s: %s: %q, want %q", name, rule, got, want)
			}
		}
		if len(p.Items) != 0 || p.Fits {
			t.Errorf("%s: %v", name, p.Items)
		}
	}
}
