package calendar_test

import (
	"fmt"
	"math"
	"math/rand/v2"
	"slices"
	"testing"
	"time"

	"boatyard.example/bottomwork/antifoul/calendar"
	"boatyard.example/bottomwork/antifoul/weather"
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

// worth is what a plan is weighed by, the first thing that differs deciding; less is better.
type worth struct {
	late, noReserve, again, days, measure int
	gap                                   time.Duration // of fresh coats, whole days from their end to the launch
	done                                  time.Time     // end of the last work
}

func (w worth) compare(o worth) int {
	for _, p := range [][2]int{{w.late, o.late}, {w.noReserve, o.noReserve}, {w.again, o.again}, {w.days, o.days}, {w.measure, o.measure}} {
		if p[0] != p[1] {
			return p[0] - p[1]
		}
	}
	if w.gap != o.gap {
		return int((w.gap - o.gap) / time.Hour)
	}
	return w.done.Compare(o.done)
}

// search tries every way to lay the tasks on the free hours, one after another.
type search struct {
	*verifier
	tb    testing.TB
	slots []time.Time
	sky   map[coat]finding.Verdict
	found []worth
	laid  []coat
	days  map[quantity.Date]int
	again int
}

func newSearch(tb testing.TB, v *verifier) *search {
	tb.Helper()
	s := &search{verifier: v, tb: tb, sky: map[coat]finding.Verdict{}, days: map[quantity.Date]int{}}
	for i := range 3 {
		d := v.from.AddDays(i)
		for at := wall(d, v.d.Start, v.loc); at.Before(wall(d, v.d.Stop, v.loc)); at = at.Add(time.Hour) {
			if v.works(d) {
				s.slots = append(s.slots, at)
			}
		}
	}
	return s
}

// hours lays n hours from slot i on, in every way, and goes on with the number of the slot after the last one.
func (s *search) hours(n, i int, free time.Time, ok func(time.Time) bool, then func(i int, end time.Time)) {
	if n == 0 {
		then(i, free)
		return
	}
	for ; i < len(s.slots); i++ {
		at := s.slots[i]
		if at.Before(free) || !ok(at) {
			continue
		}
		d := dateOf(s.tb, at, s.loc)
		s.days[d]++
		s.hours(n-1, i+1, at.Add(time.Hour), ok, then)
		if s.days[d]--; s.days[d] == 0 {
			delete(s.days, d)
		}
	}
}

func (s *search) next(task, i int, free time.Time, last *coat) {
	if task == len(s.tasks) {
		s.judge(free)
		return
	}
	t := s.tasks[task]
	wait := time.Duration(given(t.Wait) * float64(time.Hour))
	today := func(at time.Time) bool { return !t.On.Given() || dateOf(s.tb, at, s.loc) == t.On }
	open := func(at time.Time) bool { early, _, _ := s.window(last, at); return !early }
	if len(t.Layers) == 0 {
		s.hours(int(t.Hours), i, free, func(at time.Time) bool {
			return today(at) && open(at) && (!t.Dry || !rains(s.c.Forecast, s.hour(at), s.d.Roof))
		}, func(i int, end time.Time) { s.next(task+1, i, end.Add(wait), nil) })
		return
	}
	put := func(i int, free time.Time, abraded bool) {
		n := int(t.Hours)
		for k := i; k+n <= len(s.slots); k++ {
			c := coat{task, s.slots[k], s.slots[k].Add(time.Duration(n) * time.Hour)}
			if c.from.Before(free) || !today(c.from) || !s.slots[k+n-1].Equal(c.to.Add(-time.Hour)) {
				continue
			}
			early, past, _ := s.window(last, c.from)
			if early || (past > 0) != abraded || s.verdict(c) == finding.Forbidden {
				continue
			}
			d := dateOf(s.tb, c.from, s.loc)
			s.days[d]++
			s.laid = append(s.laid, c)
			s.next(task+1, k+n, c.to.Add(wait), &c)
			s.laid = s.laid[:len(s.laid)-1]
			if s.days[d]--; s.days[d] == 0 {
				delete(s.days, d)
			}
		}
	}
	put(i, free, false)
	if last == nil {
		return
	}
	need := 0.0
	for _, l := range s.tasks[last.task].Layers {
		if l.Closes.Given() {
			need += l.Again
		}
	}
	s.again++
	s.hours(int(math.Ceil(need)), i, free, open, func(i int, end time.Time) { put(i, end, true) })
	s.again--
}

func (s *search) verdict(c coat) finding.Verdict {
	if v, ok := s.sky[c]; ok {
		return v
	}
	v, _ := s.verifier.sky(c)
	s.sky[c] = v
	return v
}

// judge weighs a whole plan that is over at a moment. She is ready at the first whole hour at which every coat has cured.
func (s *search) judge(free time.Time) {
	wait := given(s.tasks[len(s.tasks)-1].Wait)
	w := worth{again: s.again, days: len(s.days), done: free.Add(-time.Duration(wait * float64(time.Hour)))}
	ready := free
	for _, c := range s.laid {
		if s.verdict(c) == finding.Ask {
			w.measure++
		}
		for i, l := range s.tasks[c.task].Layers {
			at := c.to
			for s.passed(c.task, i, false, c.to, at) < given(l.Cures)-1e-9 && at.Sub(c.to) < 2000*time.Hour {
				at = at.Add(time.Hour)
			}
			if at.After(ready) {
				ready = at
			}
		}
	}
	if s.d.Launch.Given() {
		launch := wall(s.d.Launch, s.d.Start, s.loc)
		for _, c := range s.laid {
			for _, l := range s.tasks[c.task].Layers {
				if l.Stands.Given() && launch.Sub(c.to).Hours() > given(l.Stands) {
					w.late = 1
				}
				if l.Late {
					w.gap = launch.Sub(c.to).Truncate(24 * time.Hour)
				}
			}
		}
		if ready.After(launch) {
			w.late = 1
		}
		if w.late == 1 || ready.After(wall(s.d.Launch.AddDays(-int(given(s.d.Reserve)/24)), s.d.Start, s.loc)) {
			w.noReserve = 1
		}
	}
	s.found = append(s.found, w)
}

// smallJob has at most four tasks, on at most three days of at most four hours.
func smallJob(tb testing.TB, r *rand.Rand) job {
	tb.Helper()
	b := book(tb, "")
	keys := []string{"epoxy-primer", "one-pack-primer", "hard-cuprous", "thin-film-thiocyanate"}
	var j job
	j.c.Zone = time.UTC
	j.from = day(tb, "2027-04-12")
	j.d = calendar.Days{Free: every(tb, "2027-04-12", 2+r.IntN(2)), Start: 60 * (7 + r.IntN(4)), SetUp: h(0)}
	j.d.Stop = j.d.Start + 60*(3+r.IntN(2))
	if r.IntN(2) == 0 {
		j.d.Launch = j.from.AddDays(2 + r.IntN(3))
		j.d.Reserve = h(24 * int64(r.IntN(2)))
	}
	if r.IntN(4) > 0 {
		wet := r.IntN(3)
		j.c.Forecast = run(on(tb, time.UTC, "2027-04-12 00:00"), 24*(1+r.IntN(4)), func(_ int, at time.Time) weather.Hour {
			w := weather.Hour{AirC: float64(10 + r.IntN(18)), SurfaceC: weather.Unknown(), HumidityPct: float64(40 + r.IntN(25)), WindMS: 1}
			w.SurfaceC = w.AirC
			if at.Hour() > 6 && r.IntN(30) < wet {
				w.RainMM = 1
			}
			if r.IntN(12) == 0 {
				w.RainMM = weather.Unknown()
			}
			return w
		})
		j.c.Usual = degC(int64(12 + r.IntN(12)))
	}
	late := r.IntN(8) // one coat at most should be fresh
	for n := range 2 + r.IntN(3) {
		t := calendar.Task{Name: fmt.Sprintf("task %d", n), Hours: float64(1 + r.IntN(5)/4)}
		if r.IntN(5) > 0 || n == 0 {
			l := calendar.Layer{Coat: weather.Coat{Coating: coating(tb, b, keys[r.IntN(len(keys))])}, Again: 1, Late: n == late}
			l.Opens = h(int64(r.IntN(6)))
			if r.IntN(3) > 0 {
				l.Closes = h(int64(6 + r.IntN(30)))
			}
			if r.IntN(2) == 0 {
				l.Cures = h(int64(r.IntN(60)))
			}
			if j.d.Launch.Given() && r.IntN(6) == 0 {
				l.Stands = h(int64(given(l.Cures)) + int64(20+r.IntN(60)))
			}
			t.Layers = []calendar.Layer{l}
		} else {
			t.Dry = r.IntN(2) == 0
		}
		if r.IntN(10) == 0 {
			t.On = j.d.Free[r.IntN(len(j.d.Free))]
		}
		if r.IntN(10) == 0 {
			t.Wait = h(int64(r.IntN(10)))
		}
		j.tasks = append(j.tasks, t)
	}
	return j
}

// No way of laying small jobs is better than the plan that is given, and where there is none there is no plan.
func TestNoPlanIsBetter(t *testing.T) {
	if underRace {
		t.Skip("many times as slow with the race detector; .ci/run plans without it")
	}
	r := rand.New(rand.NewPCG(3, 5))
	b := book(t, "")
	none, late, again, reserve, bad := 0, 0, 0, 0, 0
	for n := range many(800) {
		j := smallJob(t, r)
		p, err := calendar.Arrange(b, j.tasks, j.d, j.from, j.c)
		if err != nil {
			t.Fatalf("job %d: %v", n, err)
		}
		s := newSearch(t, newVerifier(t, b, j.tasks, j.d, j.from, j.c))
		s.next(0, 0, time.Time{}, nil)
		if len(s.found) == 0 || len(p.Items) == 0 {
			none++
			if len(s.found) != len(p.Items) {
				t.Errorf("job %d: %d ways found, %d items", n, len(s.found), len(p.Items))
			}
			continue
		}
		best := slices.MinFunc(s.found, worth.compare)
		got := worth{again: p.Again, days: p.Days, measure: p.Measure, done: p.Items[len(p.Items)-1].End()}
		if best.late == 1 { // the best as if there were no launch
			late++
			for i := range s.found {
				s.found[i].late, s.found[i].noReserve, s.found[i].gap = 0, 0, 0
			}
			if best := slices.MinFunc(s.found, worth.compare); p.Fits || p.Reserve || got.compare(best) != 0 {
				bad++
				t.Errorf("job %d: late, fits %t:\ngot  %+v\nbest %+v", n, p.Fits, got, best)
			}
			continue
		}
		if !p.Fits {
			got.late = 1
		}
		if !p.Reserve {
			got.noReserve = 1
		}
		for _, it := range p.Items {
			for _, l := range j.tasks[it.Task].Layers {
				if l.Late && !it.Again && j.d.Launch.Given() {
					got.gap = wall(j.d.Launch, j.d.Start, time.UTC).Sub(it.End()).Truncate(24 * time.Hour)
				}
			}
		}
		again += best.again
		reserve += 1 - best.noReserve
		if got.compare(best) != 0 {
			bad++
			if bad < 20 {
				t.Errorf("job %d of %d ways:\ngot  %+v\nbest %+v", n, len(s.found), got, best)
			}
		}
	}
	t.Logf("%d without a way, %d late, %d abradings, %d with reserve; %d wrong", none, late, again, reserve, bad)
	if none < many(30) || late < many(30) || again < many(50) || reserve < many(200) || none+late > many(450) {
		t.Error("too few jobs of each kind to tell anything")
	}
}
