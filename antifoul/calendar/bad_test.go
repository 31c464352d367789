package calendar_test

import (
	"errors"
	"math"
	"slices"
	"strings"
	"testing"
	"time"

	"boatyard.example/bottomwork/antifoul/calendar"
	"boatyard.example/bottomwork/antifoul/weather"
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

// soundJob is one with nothing wrong.
func soundJob(tb testing.TB) job {
	tb.Helper()
	d := weekendDays()
	d.Launch = day(tb, "2027-05-20")
	d.Free = []quantity.Date{day(tb, "2027-04-19")}
	d.Reserve = h(24)
	return job{tasks: weekendCoats(tb, 2), d: d, from: day(tb, "2027-04-17"), c: calendar.Conditions{
		Zone:     time.UTC,
		Forecast: run(on(tb, time.UTC, "2027-04-17 00:00"), 48, func(int, time.Time) weather.Hour { return fair() }),
	}}
}

// Each change is one fault, told by a key that holds the word, with what was read and what is accepted.
var faults = []struct {
	name, key string
	change    func(j *job, day func(string) quantity.Date)
}{
	{"a window that closes before it opens", "closes", func(j *job, _ func(string) quantity.Date) { j.tasks[0].Layers[0].Closes = h(12) }},
	{"a window that closes as it opens", "closes", func(j *job, _ func(string) quantity.Date) { j.tasks[0].Layers[0].Closes = h(16) }},
	{"a window that opens before the coat", "opens", func(j *job, _ func(string) quantity.Date) { j.tasks[0].Layers[0].Opens = h(-1) }},
	{"a film that cures backwards", "cures", func(j *job, _ func(string) quantity.Date) { j.tasks[1].Layers[0].Cures = h(-5) }},
	{"a film that may not stand", "stands", func(j *job, _ func(string) quantity.Date) { j.tasks[1].Layers[0].Stands = h(-5) }},
	{"a film that stands no longer than it cures", "stands", func(j *job, _ func(string) quantity.Date) {
		j.tasks[1].Layers[0].Cures, j.tasks[1].Layers[0].Stands = h(48), h(24)
	}},
	{"abrading of no time at all", "again", func(j *job, _ func(string) quantity.Date) { j.tasks[0].Layers[0].Again = -1 }},
	{"abrading of NaN hours", "again", func(j *job, _ func(string) quantity.Date) { j.tasks[0].Layers[0].Again = math.NaN() }},
	{"negative hours", "hours", func(j *job, _ func(string) quantity.Date) { j.tasks[0].Hours = -2 }},
	{"NaN hours", "hours", func(j *job, _ func(string) quantity.Date) { j.tasks[0].Hours = math.NaN() }},
	{"endless hours", "hours", func(j *job, _ func(string) quantity.Date) { j.tasks[0].Hours = math.Inf(1) }},
	{"a million hours", "hours", func(j *job, _ func(string) quantity.Date) { j.tasks[0].Hours = 1e6 }},
	{"a wait that is negative", "wait", func(j *job, _ func(string) quantity.Date) { j.tasks[0].Wait = h(-1) }},
	{"an appointment before the first day", "on", func(j *job, day func(string) quantity.Date) { j.tasks[0].On = day("2027-04-16") }},
	{"an appointment after the launch", "on", func(j *job, day func(string) quantity.Date) { j.tasks[0].On = day("2027-05-21") }},
	{"a launch before the first day", "launch", func(j *job, day func(string) quantity.Date) { j.d.Launch = day("2027-04-16") }},
	{"no day to begin on", "", func(j *job, _ func(string) quantity.Date) { j.from = quantity.Date{} }},
	{"until before from", "", func(j *job, _ func(string) quantity.Date) { j.d.Start, j.d.Stop = 18*60, 8*60 }},
	{"a day of no length", "", func(j *job, _ func(string) quantity.Date) { j.d.Start, j.d.Stop = 8*60, 8*60 }},
	{"a day that begins before midnight", "", func(j *job, _ func(string) quantity.Date) { j.d.Start = -60 }},
	{"a day that ends after midnight", "", func(j *job, _ func(string) quantity.Date) { j.d.Stop = 25 * 60 }},
	{"a day both free and taken", "", func(j *job, _ func(string) quantity.Date) { j.d.Taken = []quantity.Date{j.d.Free[0]} }},
	{"a weekday that is none", "", func(j *job, _ func(string) quantity.Date) { j.d.Weekdays = append(j.d.Weekdays, 9) }},
	{"hands below none", "hands", func(j *job, _ func(string) quantity.Date) { j.d.Hands = -1 }},
	{"a negative reserve", "", func(j *job, _ func(string) quantity.Date) { j.d.Reserve = h(-24) }},
	{"a negative setting up", "", func(j *job, _ func(string) quantity.Date) { j.d.SetUp = h(-1) }},
	{"setting up all day", "", func(j *job, _ func(string) quantity.Date) { j.d.SetUp = h(12) }},
	{"a shift before the first day", "shift", func(j *job, day func(string) quantity.Date) { j.d.Shift = day("2027-04-10") }},
	{"a shift after the launch", "shift", func(j *job, day func(string) quantity.Date) { j.d.Shift = day("2027-05-21") }},
	{"other work of negative hours", "other", func(j *job, _ func(string) quantity.Date) { j.d.Other = []calendar.Other{{Name: "anode", Hours: -1}} }},
	{"other work of NaN hours", "other", func(j *job, _ func(string) quantity.Date) {
		j.d.Other = []calendar.Other{{Name: "anode", Hours: math.NaN()}}
	}},
	{"other work before the first day", "other", func(j *job, day func(string) quantity.Date) {
		j.d.Other = []calendar.Other{{Name: "anode", Hours: 1, On: day("2027-04-10")}}
	}},
	{"a gap in the forecast", "hours", func(j *job, _ func(string) quantity.Date) {
		j.c.Forecast.Hours = slices.Delete(j.c.Forecast.Hours, 20, 21)
	}},
	{"an hour given twice", "hours", func(j *job, _ func(string) quantity.Date) { j.c.Forecast.Hours[20].At = j.c.Forecast.Hours[19].At }},
	{"air of 104 %", "humidity", func(j *job, _ func(string) quantity.Date) { j.c.Forecast.Hours[3].HumidityPct = 104 }},
	{"negative rain", "rain", func(j *job, _ func(string) quantity.Date) { j.c.Forecast.Hours[3].RainMM = -1 }},
	{"air as hot as an oven", "air", func(j *job, _ func(string) quantity.Date) { j.c.Forecast.Hours[3].AirC = 200 }},
	{"a usual surface as hot as an oven", "usual", func(j *job, _ func(string) quantity.Date) { j.c.Usual = degC(500) }},
	{"a coating of seven packs", "", func(j *job, _ func(string) quantity.Date) { j.tasks[0].Layers[0].Coating.Packs = 7 }},
	{"a coating without a temperature", "", func(j *job, _ func(string) quantity.Date) { j.tasks[0].Layers[0].Coating.At = quantity.Temperature{} }},
	{"a coat that the yard puts on", "", func(j *job, _ func(string) quantity.Date) { j.tasks[0].Yard = true }},
}

func TestBadInputIsTold(t *testing.T) {
	b := book(t, "")
	if j := soundJob(t); true {
		if _, err := calendar.Arrange(b, j.tasks, j.d, j.from, j.c); err != nil {
			t.Fatalf("the sound job: %v", err)
		}
	}
	for _, c := range faults {
		j := soundJob(t)
		c.change(&j, func(s string) quantity.Date { return day(t, s) })
		_, err := calendar.Arrange(b, j.tasks, j.d, j.from, j.c)
		fs, ok := errors.AsType[finding.Faults](err)
		if !ok || len(fs) == 0 {
			t.Errorf("%s: no fault, %v", c.name, err)
			continue
		}
		if !slices.ContainsFunc(fs, func(f finding.Fault) bool { return strings.Contains(f.Key, c.key) && f.Want != "" && f.Kind != nil }) {
			t.Errorf("%s: no fault has %q in its key: %v", c.name, c.key, fs)
		}
	}
}

func TestTooMuchOfIt(t *testing.T) {
	b := book(t, "")
	j := soundJob(t)
	j.tasks = weekendCoats(t, 20000)
	if _, err := calendar.Arrange(b, j.tasks, j.d, j.from, j.c); err == nil {
		t.Error("twenty thousand coats are no fault")
	}
	j = soundJob(t)
	j.d.Launch = day(t, "2047-05-20")
	if _, err := calendar.Arrange(b, j.tasks, j.d, j.from, j.c); err == nil {
		t.Log("a launch in twenty years is no fault")
	}
}

// All faults come at once: of the tasks, of the days and of the forecast.
func TestAllFaultsAtOnce(t *testing.T) {
	b := book(t, "")
	j := soundJob(t)
	j.tasks[0].Hours = -2
	j.tasks[1].Layers[0].Closes = h(12)
	j.d.Hands = -1
	j.d.SetUp = h(-1)
	j.c.Forecast.Hours[3].HumidityPct = 104
	_, err := calendar.Arrange(b, j.tasks, j.d, j.from, j.c)
	fs, _ := errors.AsType[finding.Faults](err)
	if len(fs) != 5 {
		t.Errorf("%d faults, want five:\n%v", len(fs), err)
	}
}
