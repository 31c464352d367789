package calendar_test

import (
	"errors"
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"
	"time"

	"boatyard.example/bottomwork/antifoul/calendar"
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

// Each limit by what lies on it, which is no fault, and by what lies just beyond, which is one, told by its key and with what was read.
func TestLimits(t *testing.T) {
	b := book(t, "")
	minutes := func(n int64) quantity.Duration { return quantity.Minute.N(n) }
	for name, c := range map[string]struct {
		change func(j *job)
		want   string // keys and what was read
	}{
		"nothing":                           {func(*job) {}, ""},
		"the hottest usual surface":         {func(j *job) { j.c.Usual = degC(100) }, ""},
		"hotter":                            {func(j *job) { j.c.Usual = degC(101) }, "usual 101 degC"},
		"the coldest":                       {func(j *job) { j.c.Usual = degC(-60) }, ""},
		"colder":                            {func(j *job) { j.c.Usual = degC(-61) }, "usual -61 degC"},
		"to midnight":                       {func(j *job) { j.d.Stop = 24 * 60 }, ""},
		"past midnight":                     {func(j *job) { j.d.Stop = 24*60 + 1 }, "until 24:01"},
		"from midnight on":                  {func(j *job) { j.d.Start, j.d.Stop = 0, 12*60 }, ""},
		"a start that no end bounds":        {func(j *job) { j.d.Start, j.d.Stop = 24*60, 0 }, ""},
		"a start past midnight":             {func(j *job) { j.d.Start, j.d.Stop = 24*60+1, 0 }, "until 00:00"},
		"over a minute after midnight":      {func(j *job) { j.d.Start, j.d.Stop = 60, 1 }, "until 00:01"},
		"over before it begins":             {func(j *job) { j.d.Start, j.d.Stop = 18*60, 8*60+30 }, "until 08:30"},
		"a year's reserve":                  {func(j *job) { j.d.Reserve = h(366 * 24) }, ""},
		"more":                              {func(j *job) { j.d.Reserve = h(366*24 + 1) }, "reserve 8785 h"},
		"a day less a minute of setting up": {func(j *job) { j.d.Start, j.d.Stop, j.d.SetUp = 0, 24*60, minutes(24*60-1) }, ""},
		"a day of it":                       {func(j *job) { j.d.SetUp = h(24) }, "set_up 24 h"},
		"nearly all of her day":             {func(j *job) { j.d.SetUp = minutes(10*60 - 1) }, ""},
		"all of her day":                    {func(j *job) { j.d.SetUp = h(10) }, "set_up 10 h"},
		"a day of no length":                {func(j *job) { j.d.Start, j.d.Stop = 8*60, 8*60 }, "until 08:00"},
		"no day, with setting up":           {func(j *job) { j.d.Start, j.d.Stop, j.d.SetUp = 8*60, 7*60, h(1) }, "until 07:00"},
		"a free day that is over":           {func(j *job) { j.d.Free = append(j.d.Free, day(t, "2027-04-16")) }, "free[2] 2027-04-16"},
		"the third day of her week":         {func(j *job) { j.d.Weekdays = append(j.d.Weekdays, 7) }, "days[3] 7"},
		"a day before Sunday":               {func(j *job) { j.d.Weekdays = append(j.d.Weekdays, -1) }, "days[3] -1"},
		"much other work":                   {func(j *job) { j.d.Other = []calendar.Other{{Hours: 0}, {Hours: 2000}} }, ""},
		"too much of it":                    {func(j *job) { j.d.Other = []calendar.Other{{Hours: 1}, {Hours: 2000.5}} }, "other[2].hours 2000.5"},
		"other work on the launch":          {func(j *job) { j.d.Other = []calendar.Other{{On: day(t, "2027-05-20")}} }, ""},
		"after it":                          {func(j *job) { j.d.Other = []calendar.Other{{On: day(t, "2027-05-21")}} }, "other[1].on 2027-05-21"},
		"after a launch that may slip": {func(j *job) {
			j.d.Other, j.d.LaunchOpen = []calendar.Other{{On: day(t, "2027-05-21")}}, quantity.Yes
		}, ""},
		"as many hours as a task may have": {func(j *job) { j.tasks[1].Hours = 2000 }, ""},
		"half an hour more":                {func(j *job) { j.tasks[1].Hours = 2000.5 }, "task[2].hours 2000.5"},
		"no hours":                         {func(j *job) { j.tasks[1].Hours = 0 }, ""},
		"a second layer that is abraded for ever": {func(j *job) {
			j.tasks[1].Layers = append(j.tasks[1].Layers, j.tasks[1].Layers[0])
			j.tasks[1].Layers[1].Again = 2001
		}, "task[2].layer[2].again 2001"},
		"a film that stands as long as it cures": {func(j *job) { j.tasks[0].Layers[0].Cures, j.tasks[0].Layers[0].Stands = h(48), h(48) }, "task[1].layer[1].stands 48 h"},
		"a little longer":                        {func(j *job) { j.tasks[0].Layers[0].Cures, j.tasks[0].Layers[0].Stands = h(48), minutes(48*60+1) }, ""},
		"five hundred tasks":                     {func(j *job) { j.tasks, j.d.Hands = make([]calendar.Task, 500), -1 }, "hands -1"},
		"one more":                               {func(j *job) { j.tasks, j.d.Hands = make([]calendar.Task, 501), -1 }, "hands -1, task 501 tasks"},
	} {
		j := soundJob(t)
		c.change(&j)
		_, err := calendar.Arrange(b, j.tasks, j.d, j.from, j.c)
		if got := read(err); got != c.want {
			t.Errorf("%s: %q, want %q", name, got, c.want)
		}
	}
}

// read is what faults were read, in the order of their keys.
func read(err error) string {
	fs, _ := errors.AsType[finding.Faults](err)
	var out []string
	for _, f := range fs {
		out = append(out, strings.TrimSpace(f.Key+" "+f.Got))
	}
	slices.Sort(out)
	return strings.Join(out, ", ")
}

// What is accepted is said beside what was read.
func TestLimitsAreNamed(t *testing.T) {
	const free = "not before the day of the question, 2027-04-17"
	for name, c := range map[string]struct {
		days calendar.Days
		want string
	}{
		"a day that ends too soon":     {calendar.Days{Start: 18 * 60, Stop: 8*60 + 30}, "later than from, 18:00"},
		"setting up all of the day":    {calendar.Days{Start: 8 * 60, Stop: 9*60 + 15, SetUp: h(2)}, "less than the day from 08:00 to 09:15"},
		"of the usual day":             {calendar.Days{SetUp: h(8)}, "less than the day from 09:00 to 17:00"},
		"setting up for day and night": {calendar.Days{SetUp: h(24)}, "0 h or more and less than 24 h"},
		"a free day that is over":      {calendar.Days{Free: []quantity.Date{day(t, "2027-04-16")}}, free},
		"other work":                   {calendar.Days{Other: []calendar.Other{{Hours: math.Inf(1)}}}, "0 to 2000 hours"},
	} {
		fs := c.days.Check(day(t, "2027-04-17"))
		if len(fs) != 1 || fs[0].Want != c.want || !errors.Is(fs[0], finding.ErrImpossible) {
			t.Errorf("%s: %v, want %q", name, fs, c.want)
		}
	}
}

// Without a first day nothing can be planned; both who asks and the section of the boat file are told.
func TestNoFirstDay(t *testing.T) {
	j := soundJob(t)
	_, err := calendar.Arrange(book(t, ""), j.tasks, j.d, quantity.Date{}, j.c)
	if got := read(err); got != "date, from" || !errors.Is(err, finding.ErrMissing) {
		t.Errorf("%q: %v", got, err)
	}
	if fs := (calendar.Days{}).Check(quantity.Date{}); len(fs) != 0 {
		t.Errorf("nothing is planned, and yet: %v", fs)
	}
}

// A day begins when hands are at work, half of the setting up after the crew has come, by the clock of the zone; nobody named one: UTC.
func TestWhenADayBegins(t *testing.T) {
	d := calendar.Days{Start: 8 * 60, Stop: 18 * 60, SetUp: quantity.Minute.N(90)}
	adelaide := zone(t, "Australia/Adelaide")
	for _, c := range []struct {
		zone *time.Location
		want string
	}{{nil, "2027-04-17T08:45:00Z"}, {time.UTC, "2027-04-17T08:45:00Z"}, {adelaide, "2027-04-17T08:45:00+09:30"}} {
		if got := d.Begins(day(t, "2027-04-17"), c.zone).Format(time.RFC3339Nano); got != c.want {
			t.Errorf("%v: %s, want %s", c.zone, got, c.want)
		}
	}
	// The usual day is from nine to five; one that ends at its first minute is a day all the same.
	for _, c := range []struct {
		days calendar.Days
		want string
	}{{calendar.Days{}, "09:00"}, {calendar.Days{Start: 7 * 60}, "09:00"}, {calendar.Days{Stop: 1}, "00:00"}} {
		if got := c.days.Begins(day(t, "2027-04-17"), nil).Format("15:04"); got != c.want {
			t.Errorf("%+v: %s, want %s", c.days, got, c.want)
		}
	}
	odd := calendar.Days{Start: 8*60 + 1, Stop: 18 * 60}
	half := calendar.Days{Start: 8 * 60, Stop: 8*60 + 30}
	if got := fmt.Sprint(calendar.Days{}.LongestDay(), d.LongestDay(), half.LongestDay(), odd.LongestDay()); got != "8 8 0 9" { // from 8:45 to 17:15 by whole hours
		t.Errorf("the longest days are %s", got)
	}
	for want, d := range map[bool]calendar.Days{false: {}, true: {Free: []quantity.Date{day(t, "2027-04-17")}}} {
		if d.Planned() != want {
			t.Errorf("%+v: planned %t", d, !want)
		}
	}
	if !(calendar.Days{Weekdays: []time.Weekday{time.Sunday}}).Planned() {
		t.Error("Sundays are no days to plan on")
	}
}
