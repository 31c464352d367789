package calendar_test

import (
	"math/rand/v2"
	"reflect"
	"slices"
	"testing"
	"time"

	"boatyard.example/bottomwork/antifoul/calendar"
	"boatyard.example/bottomwork/antifoul/weather"
	"boatyard.example/bottomwork/tables/quantity"
)

// value is what a plan is worth; a job without a plan is the worst.
func value(p calendar.Calendar) worth {
	w := worth{again: p.Again, days: p.Days, measure: p.Measure}
	if n := len(p.Items); n > 0 {
		w.done = p.Items[n-1].End()
	}
	if !p.Fits {
		w.late = 1
	}
	if !p.Reserve {
		w.noReserve = 1
	}
	if len(p.Items) == 0 {
		w.late = 2
	}
	if !p.Fits {
		return worth{late: w.late, noReserve: 1}
	}
	return w
}

// without makes the plan of a job that knows no freshness, whose measure is not part of a calendar.
func without(j job) job {
	for i := range j.tasks {
		for k := range j.tasks[i].Layers {
			j.tasks[i].Layers[k].Late = false
		}
	}
	return j
}

// Whatever only widens what may be done gives no worse plan: each change is tried on many jobs.
func TestMoreRoomIsNeverWorse(t *testing.T) {
	if testing.Short() {
		t.Skip("many plans")
	}
	if underRace {
		t.Skip("many times as slow with the race detector; .ci/run plans without it")
	}
	b := book(t, "")
	copied := func(f weather.Forecast) weather.Forecast {
		return weather.Forecast{Hours: append([]weather.Hour(nil), f.Hours...)}
	}
	for _, c := range []struct {
		name   string
		change func(r *rand.Rand, j *job) bool
	}{
		{"rain that does not fall", func(r *rand.Rand, j *job) bool {
			j.c.Forecast = copied(j.c.Forecast)
			for i := range j.c.Forecast.Hours {
				if r.IntN(2) == 0 {
					j.c.Forecast.Hours[i].RainMM = 0
				}
			}
			return len(j.c.Forecast.Hours) > 0
		}},
		{"drier air", func(_ *rand.Rand, j *job) bool {
			j.c.Forecast = copied(j.c.Forecast)
			for i := range j.c.Forecast.Hours {
				j.c.Forecast.Hours[i].HumidityPct = 30
			}
			return len(j.c.Forecast.Hours) > 0
		}},
		{"no wind", func(_ *rand.Rand, j *job) bool {
			j.c.Forecast = copied(j.c.Forecast)
			for i := range j.c.Forecast.Hours {
				j.c.Forecast.Hours[i].WindMS = 0
			}
			return len(j.c.Forecast.Hours) > 0
		}},
		{"a roof", func(_ *rand.Rand, j *job) bool {
			was := j.d.Roof
			j.d.Roof = quantity.Yes
			return was != quantity.Yes
		}},
		{"a free day", func(r *rand.Rand, j *job) bool {
			d := j.from.AddDays(6 + r.IntN(5))
			if slices.Contains(j.d.Free, d) || slices.Contains(j.d.Taken, d) {
				return false
			}
			j.d.Free = append(append([]quantity.Date(nil), j.d.Free...), d)
			return true
		}},
		{"no day lost", func(_ *rand.Rand, j *job) bool {
			some := len(j.d.Taken) > 0
			j.d.Taken = nil
			return some
		}},
		{"an hour more in the evening", func(_ *rand.Rand, j *job) bool {
			j.d.Stop += 60
			return true
		}},
		{"windows that close later", func(_ *rand.Rand, j *job) bool {
			return each(j, func(l *calendar.Layer) {
				if l.Closes.Given() {
					l.Closes = l.Closes.Add(h(12))
				}
			})
		}},
		{"windows that never close", func(_ *rand.Rand, j *job) bool {
			return each(j, func(l *calendar.Layer) { l.Closes = quantity.Duration{} })
		}},
		{"windows that open at once", func(_ *rand.Rand, j *job) bool {
			return each(j, func(l *calendar.Layer) { l.Opens = quantity.Duration{} })
		}},
		{"films that may stand", func(_ *rand.Rand, j *job) bool {
			return each(j, func(l *calendar.Layer) { l.Stands = quantity.Duration{} })
		}},
		{"films that need no curing", func(_ *rand.Rand, j *job) bool {
			return each(j, func(l *calendar.Layer) { l.Cures = quantity.Duration{} })
		}},
		{"an appointment less", func(_ *rand.Rand, j *job) bool {
			some := false
			j.tasks = append([]calendar.Task(nil), j.tasks...)
			for i := range j.tasks {
				some = some || j.tasks[i].On.Given()
				j.tasks[i].On = quantity.Date{}
			}
			return some
		}},
		{"no waiting", func(_ *rand.Rand, j *job) bool {
			some := false
			j.tasks = append([]calendar.Task(nil), j.tasks...)
			for i := range j.tasks {
				some = some || j.tasks[i].Wait.Given()
				j.tasks[i].Wait = quantity.Duration{}
			}
			return some
		}},
	} {
		t.Run(c.name, func(t *testing.T) {
			r := rand.New(rand.NewPCG(13, 17))
			better, tried := 0, 0
			for n := range 150 {
				j := without(randomJob(t, r, b))
				p, err := calendar.Arrange(b, j.tasks, j.d, j.from, j.c)
				if err != nil {
					continue
				}
				was := value(p)
				if !c.change(r, &j) {
					continue
				}
				q, err := calendar.Arrange(b, j.tasks, j.d, j.from, j.c)
				if err != nil {
					t.Errorf("job %d: %v", n, err)
					continue
				}
				tried++
				switch x := value(q).compare(was); {
				case x > 0:
					t.Errorf("job %d: worse:\nfrom %+v\nto   %+v", n, was, value(q))
				case x < 0:
					better++
				}
			}
			if tried < 20 || better == 0 {
				t.Errorf("%d of %d better: that tells nothing", better, tried)
			}
		})
	}
}

// each changes every layer of a copy of the tasks.
func each(j *job, change func(*calendar.Layer)) bool {
	j.tasks = append([]calendar.Task(nil), j.tasks...)
	some := false
	for i := range j.tasks {
		j.tasks[i].Layers = append([]calendar.Layer(nil), j.tasks[i].Layers...)
		for k := range j.tasks[i].Layers {
			change(&j.tasks[i].Layers[k])
			some = true
		}
	}
	return some
}

func TestSameJobSamePlan(t *testing.T) {
	r := rand.New(rand.NewPCG(19, 23))
	b := book(t, "")
	for n := range 100 {
		j := randomJob(t, r, b)
		p, err := calendar.Arrange(b, j.tasks, j.d, j.from, j.c)
		if err != nil {
			t.Fatal(err)
		}
		// Free days in another order, with a copy of everything, are the same job.
		k := j
		k.d.Free = []quantity.Date{j.d.Free[1], j.d.Free[0]}
		each(&k, func(*calendar.Layer) {})
		q, err := calendar.Arrange(b, k.tasks, k.d, k.from, k.c)
		if err != nil {
			t.Fatal(err)
		}
		if !reflect.DeepEqual(p.Items, q.Items) || p.Fits != q.Fits || !p.Ready.Equal(q.Ready) {
			t.Errorf("job %d: another plan of the same job", n)
		}
		for i, f := range p.Findings {
			if i < len(q.Findings) && b.Say(f, quantity.Metric) != b.Say(q.Findings[i], quantity.Metric) {
				t.Errorf("job %d: another finding: %q, %q", n, b.Say(f, quantity.Metric), b.Say(q.Findings[i], quantity.Metric))
			}
		}
		if len(p.Findings) != len(q.Findings) {
			t.Errorf("job %d: %d findings and %d", n, len(p.Findings), len(q.Findings))
		}
	}
}

// A forecast that says the same of every hour as is taken without one changes no hour of a plan, as long as it forbids nothing.
func TestFairForecastChangesNoHour(t *testing.T) {
	b := book(t, "")
	tasks := weekendCoats(t, 3)
	with := calendar.Conditions{Zone: time.UTC, Forecast: run(on(t, time.UTC, "2027-04-17 00:00"), 24*20, func(int, time.Time) weather.Hour { return fair() })}
	p := arrange(t, b, tasks, weekendDays(), "2027-04-17", with)
	q := arrange(t, b, tasks, weekendDays(), "2027-04-17", calendar.Conditions{Zone: time.UTC})
	if p.Measure != 0 || q.Measure != 3 || p.Again != q.Again || p.Days != q.Days || !p.Ready.Equal(q.Ready) {
		t.Errorf("with a fair forecast %+v; without %+v", p, q)
	}
}
