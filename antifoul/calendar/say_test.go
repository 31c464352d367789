package calendar_test

import (
	"strings"
	"testing"
	"time"

	"boatyard.example/bottomwork/antifoul/calendar"
	"boatyard.example/bottomwork/antifoul/weather"
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

// Each way in which a plan goes well or badly is said by its own rule, in a whole sentence.
func TestPlansSayWhy(t *testing.T) {
	const saturday = "2027-04-17"
	b := book(t, "")
	start := on(t, time.UTC, saturday+" 00:00")
	sunny := run(start, 24*60, func(int, time.Time) weather.Hour { return fair() })
	layered := func(n int, change func(i int, l *calendar.Layer)) []calendar.Task {
		tasks := weekendCoats(t, n)
		for i := range tasks {
			for k := range tasks[i].Layers {
				change(i, &tasks[i].Layers[k])
			}
		}
		return tasks
	}
	plus := func(tasks []calendar.Task, more ...calendar.Task) []calendar.Task { return append(tasks, more...) }
	booked := func(tasks []calendar.Task) []calendar.Task { tasks[0].On = day(t, saturday); return tasks }
	launched := func(day_ string) calendar.Days { d := weekendDays(); d.Launch = day(t, day_); return d }
	known := calendar.Conditions{Forecast: sunny}
	for name, c := range map[string]struct {
		tasks []calendar.Task
		days  calendar.Days
		sky   calendar.Conditions
		want  []finding.ID
		never []finding.ID
	}{
		"three coats": {weekendCoats(t, 3), weekendDays(), known, []finding.ID{calendar.RuleNoFreeHour, calendar.RuleTogether}, []finding.ID{calendar.RuleNoForecast, calendar.RuleMeasure, calendar.RuleLate}},
		"eight coats": {weekendCoats(t, 8), weekendDays(), known, []finding.ID{calendar.RuleNoFreeHours, calendar.RuleTogetherOften}, []finding.ID{calendar.RuleNoFreeHour, calendar.RuleTogether}},
		"cold": {
			layered(2, func(_ int, l *calendar.Layer) { l.Opens, l.Closes = h(23), h(24) }), weekendDays(),
			calendar.Conditions{Usual: degC(10)},
			[]finding.ID{calendar.RuleNoWindow, calendar.RuleNoForecast},
			nil,
		},
		"rain on Sundays": {booked(weekendCoats(t, 2)), weekendDays(), calendar.Conditions{Forecast: run(start, 24*60, func(_ int, at time.Time) weather.Hour {
			x := fair()
			if at.Weekday() == time.Sunday {
				x.RainMM = 1
			}
			return x
		})}, []finding.ID{calendar.RuleWindowWeather, weather.RuleRain}, nil},
		"fresh for the launch": {booked(layered(2, func(i int, l *calendar.Layer) {
			if i == 1 {
				l.Cures, l.Stands = quantity.Duration{}, h(60)
			}
		})), launched("2027-05-03"), known, []finding.ID{calendar.RuleNoRoomLater}, []finding.ID{calendar.RuleWindowWeather}},
		"stands too long": {
			plus(layered(1, func(_ int, l *calendar.Layer) { l.Cures, l.Stands = quantity.Duration{}, h(30) }), calendar.Task{Name: "shaft", Hours: 40}),
			launched("2027-06-21"), known,
			[]finding.ID{calendar.RuleStands},
			[]finding.ID{calendar.RuleLate},
		},
		"too few hours": {[]calendar.Task{{Name: "strip", Hours: 1900}}, weekendDays(), known, []finding.ID{calendar.RuleTooFew}, nil},
		"not in time":   {weekendCoats(t, 6), launched("2027-04-19"), known, []finding.ID{calendar.RuleLate}, []finding.ID{calendar.RuleStands, calendar.RuleNoReserve}},
		"without reserve": {
			weekendCoats(t, 1), func() calendar.Days { d := launched("2027-04-24"); d.Reserve = quantity.Day.N(7); return d }(), known,
			[]finding.ID{calendar.RuleNoReserve, calendar.RuleTight},
			[]finding.ID{calendar.RuleLate},
		},
		"never dries": {weekendCoats(t, 1), weekendDays(), calendar.Conditions{Usual: degC(0)}, []finding.ID{calendar.RuleNoHour, calendar.RuleNeverDry}, nil},
		"booked too early": {
			plus([]calendar.Task{{Name: "strip", Hours: 30}}, calendar.Task{Name: "shift", Hours: 1, Yard: true, On: day(t, "2027-04-19")}, calendar.Task{Name: "wash", Hours: 1}),
			weekendDays(), known,
			[]finding.ID{calendar.RuleBooked},
			[]finding.ID{calendar.RuleNoHour},
		},
		"the yard's day":    {plus(weekendCoats(t, 1), calendar.Task{Name: "shift", Hours: 1, Yard: true}), weekendDays(), known, []finding.ID{calendar.RuleYardsDay}, nil},
		"a long coat":       {layered(1, func(int, *calendar.Layer) {})[:1], func() calendar.Days { d := weekendDays(); d.Stop = d.Start + 60; return d }(), known, []finding.ID{calendar.RuleLongCoat}, nil},
		"the forecast ends": {weekendCoats(t, 3), weekendDays(), calendar.Conditions{Forecast: run(start, 24*3, func(int, time.Time) weather.Hour { return fair() })}, []finding.ID{calendar.RuleForecast, calendar.RuleMeasure}, []finding.ID{calendar.RuleNoForecast}},
	} {
		p := arrange(t, b, c.tasks, c.days, saturday, c.sky)
		for _, r := range c.want {
			if !p.Findings.Has(r) {
				t.Errorf("%s: no %s in %v", name, r, p.Findings)
			}
		}
		for _, r := range c.never {
			if p.Findings.Has(r) {
				t.Errorf("%s: %s in %v", name, r, p.Findings)
			}
		}
		for _, f := range p.Findings {
			if said := b.Say(f, quantity.Metric); strings.Contains(said, "not stated") || strings.ContainsAny(said, "{}") {
				t.Errorf("%s: %s", name, said)
			}
		}
	}
}
