package calendar_test

import (
	"math/rand/v2"
	"slices"
	"testing"
	"time"

	"boatyard.example/bottomwork/antifoul/calendar"
	"boatyard.example/bottomwork/tables/finding"
)

// Each mutation spoils a plan in a way that must be seen; false where the plan has nothing of the kind.
var mutations = []struct {
	name  string
	spoil func(p *calendar.Calendar, j *job) bool
}{
	{"an item less", func(p *calendar.Calendar, _ *job) bool {
		p.Items = p.Items[:len(p.Items)-1]
		return true
	}},
	{"two items in the wrong order", func(p *calendar.Calendar, _ *job) bool {
		if len(p.Items) < 2 {
			return false
		}
		p.Items[0], p.Items[1] = p.Items[1], p.Items[0]
		return true
	}},
	{"an abrading less", func(p *calendar.Calendar, _ *job) bool {
		i := slices.IndexFunc(p.Items, func(it calendar.Item) bool { return it.Again })
		if i < 0 {
			return false
		}
		p.Items = slices.Delete(p.Items, i, i+1)
		p.Again--
		return true
	}},
	{"a coat a year earlier", func(p *calendar.Calendar, j *job) bool { return shift(p, j, -365*24*time.Hour) }},
	{"a coat twelve hours later", func(p *calendar.Calendar, j *job) bool { return shift(p, j, 12*time.Hour) }},
	{"a coat of an hour more", func(p *calendar.Calendar, j *job) bool {
		for i, it := range p.Items {
			if len(j.tasks[it.Task].Layers) > 0 && !it.Again {
				p.Items[i].Spans[0].To = it.Spans[0].To.Add(time.Hour)
				return true
			}
		}
		return false
	}},
	{"work of an hour less", func(p *calendar.Calendar, j *job) bool {
		for i, it := range p.Items {
			if s := it.Spans[0]; len(j.tasks[it.Task].Layers) == 0 && s.To.Sub(s.From) > time.Hour && !j.tasks[it.Task].Yard {
				p.Items[i].Spans[0].From = s.From.Add(time.Hour)
				return true
			}
		}
		return false
	}},
	{"another verdict", func(p *calendar.Calendar, j *job) bool {
		for i, it := range p.Items {
			if len(j.tasks[it.Task].Layers) > 0 && !it.Again {
				p.Items[i].Verdict = finding.Fine + finding.Ask - it.Verdict
				return true
			}
		}
		return false
	}},
	{"a day less", func(p *calendar.Calendar, _ *job) bool { p.Days--; return true }},
	{"an abrading more counted", func(p *calendar.Calendar, _ *job) bool { p.Again++; return true }},
	{"a measurement less", func(p *calendar.Calendar, _ *job) bool { p.Measure--; return p.Measure >= 0 }},
	{"ready before the end", func(p *calendar.Calendar, _ *job) bool {
		p.Ready = p.Items[len(p.Items)-1].End().Add(-time.Hour)
		return true
	}},
	{"reserve that is not kept", func(p *calendar.Calendar, j *job) bool {
		p.Reserve = !p.Reserve
		return p.Fits && j.d.Launch.Given() && !j.d.LaunchOpen.True()
	}},
	{"a longer cure", func(p *calendar.Calendar, j *job) bool {
		last := p.Items[len(p.Items)-1]
		if len(j.tasks[last.Task].Layers) == 0 {
			return false
		}
		return each(j, func(l *calendar.Layer) { l.Cures = h(24 * 365) })
	}},
	{"a window that opens later", func(_ *calendar.Calendar, j *job) bool {
		if len(j.tasks) < 2 || len(j.tasks[0].Layers) == 0 || len(j.tasks[1].Layers) == 0 {
			return false
		}
		return each(j, func(l *calendar.Layer) { l.Opens = h(24 * 365) })
	}},
	{"a window that closes at once", func(p *calendar.Calendar, j *job) bool {
		if p.Again > 0 || len(j.tasks) < 2 || len(j.tasks[0].Layers) == 0 || len(j.tasks[1].Layers) == 0 {
			return false
		}
		return each(j, func(l *calendar.Layer) { l.Closes, l.Again = h(0), 1 })
	}},
	{"rain on a coat that was sure", func(p *calendar.Calendar, j *job) bool {
		for _, it := range p.Items {
			if len(j.tasks[it.Task].Layers) == 0 || it.Again || it.Verdict != finding.Fine || j.d.Roof.True() {
				continue
			}
			for i := range j.c.Forecast.Hours {
				if j.c.Forecast.Hours[i].At.Equal(it.Start()) {
					j.c.Forecast.Hours[i].RainMM = 3
					return true
				}
			}
		}
		return false
	}},
	{"a day that is lost", func(p *calendar.Calendar, j *job) bool {
		it := p.Items[0]
		if j.tasks[it.Task].Yard || j.tasks[it.Task].Hours == 0 {
			return false
		}
		loc := j.c.Zone
		if loc == nil {
			loc = time.UTC
		}
		for d := range 366 {
			if s := j.from.AddDays(d); wall(s, 0, loc).YearDay() == it.Start().In(loc).YearDay() {
				j.d.Taken = append(slices.Clone(j.d.Taken), s)
			}
		}
		return true
	}},
}

// shift moves the first coat.
func shift(p *calendar.Calendar, j *job, by time.Duration) bool {
	for i, it := range p.Items {
		if len(j.tasks[it.Task].Layers) > 0 && !it.Again {
			s := it.Spans[0]
			p.Items[i].Spans = []calendar.Span{{From: s.From.Add(by), To: s.To.Add(by)}}
			return true
		}
	}
	return false
}

// The verifier sees every plan that was spoilt: one that cannot fail would prove nothing.
func TestTheVerifierSees(t *testing.T) {
	if underRace {
		t.Skip("one goroutine; .ci/run asks it without the race detector")
	}
	b := book(t, "")
	for _, m := range mutations {
		r := rand.New(rand.NewPCG(29, 31))
		tried, seen := 0, 0
		for range 400 {
			j := randomJob(t, r, b)
			p, err := calendar.Arrange(b, j.tasks, j.d, j.from, j.c)
			if err != nil || len(p.Items) == 0 {
				continue
			}
			if tried == 15 {
				break
			}
			if !m.spoil(&p, &j) {
				continue
			}
			tried++
			if len(newVerifier(t, b, j.tasks, j.d, j.from, j.c).breaches(t, p)) > 0 {
				seen++
			} else {
				t.Logf("%s: not seen: %+v", m.name, p.Items)
			}
		}
		if tried < 5 || seen < tried {
			t.Errorf("%s: %d of %d seen", m.name, seen, tried)
		}
	}
}

// A coat moved by one hour either breaks something or leaves a plan that is no better: most of them are seen.
func TestAnHourMatters(t *testing.T) {
	b := book(t, "")
	r := rand.New(rand.NewPCG(37, 41))
	tried, seen := 0, 0
	for range 300 {
		j := randomJob(t, r, b)
		p, err := calendar.Arrange(b, j.tasks, j.d, j.from, j.c)
		if err != nil || len(p.Items) == 0 || !shift(&p, &j, -time.Hour) {
			continue
		}
		tried++
		if len(newVerifier(t, b, j.tasks, j.d, j.from, j.c).breaches(t, p)) > 0 {
			seen++
		}
	}
	if seen*2 < tried || tried < 100 {
		t.Errorf("%d of %d seen", seen, tried)
	}
}
