package antifoul_test

import (
	"fmt"
	"math"
	"math/rand/v2"
	"slices"
	"testing"
	"time"

	"boatyard.example/bottomwork/antifoul"
	"boatyard.example/bottomwork/antifoul/calendar"
	"boatyard.example/bottomwork/antifoul/weather"
	"boatyard.example/bottomwork/compat"
	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

// inDays gives a random boat a crew with days and hours, work of other trades, and mostly weather. Its draws are its own, so that the boat stays as it is.
func inDays(t *testing.T, n uint64, x antifoul.Boat) antifoul.Boat {
	t.Helper()
	r := rand.New(rand.NewPCG(20270417, n))
	w := calendar.Days{Hands: 1 + r.IntN(4), Roof: quantity.YesNo(r.IntN(3)), Start: 60 * (6 + r.IntN(4)), Stop: 60*(15+r.IntN(5)) + 30*r.IntN(2)}
	for d := range 7 {
		if r.IntN(2) == 0 {
			w.Weekdays = append(w.Weekdays, time.Weekday(d))
		}
	}
	w.Free = []quantity.Date{x.On.AddDays(1 + r.IntN(9))}
	if lost := x.On.AddDays(10 + r.IntN(9)); r.IntN(2) == 0 {
		w.Taken = []quantity.Date{lost}
	}
	switch r.IntN(4) {
	case 0:
		w.Launch, w.LaunchOpen = x.On.AddDays(r.IntN(90)), quantity.Yes
	case 1, 2:
		w.Launch = x.On.AddDays(12 + r.IntN(60))
		if r.IntN(2) == 0 {
			w.Reserve = quantity.Day.N(int64(r.IntN(6)))
		}
	}
	if r.IntN(3) == 0 {
		w.SetUp = quantity.Hour.N(int64(r.IntN(3)))
	}
	if r.IntN(3) == 0 {
		w.Slings = quantity.YesNo(r.IntN(3))
	}
	for k := range r.IntN(3) {
		o := calendar.Other{Name: fmt.Sprintf("other work %d", k+1), Hours: float64(1+r.IntN(30)) / 2, After: quantity.YesNo(r.IntN(3))}
		w.Other = append(w.Other, o)
	}
	x.Work = w
	if r.IntN(3) == 0 {
		x.Paint.Today = quantity.Celsius.N(int64(8 + r.IntN(16)))
	}
	if r.IntN(3) > 0 {
		begins := time.Date(x.On.Year(), x.On.Month(), x.On.Day(), 0, 0, 0, 0, time.UTC)
		mean, wave := 9+9*r.Float64(), 6*r.Float64()
		wet := 0
		for h := range 24 * (4 + r.IntN(20)) {
			if wet--; wet < -12 && r.IntN(24) == 0 {
				wet = 3 + r.IntN(18)
			}
			k := weather.Hour{At: begins.Add(time.Duration(h) * time.Hour), SurfaceC: weather.Unknown(), HumidityPct: 45 + 25*r.Float64(), WindMS: 8 * r.Float64()}
			k.AirC = mean - wave*math.Cos(2*math.Pi*(float64(h%24)-3)/24)
			if wet > 0 {
				k.HumidityPct, k.RainMM = 88, r.Float64()
			}
			x.Weather.Forecast.Hours = append(x.Weather.Forecast.Hours, k)
		}
	}
	return x
}

// onDays knows of a plan of days what the boat, her schemes and the rows of the coatings say, and nothing of how it was found.
type onDays struct {
	*testing.T
	n      uint64
	b      *tables.Book
	x      antifoul.Boat
	j      *antifoul.Job
	turns  []antifoul.Turn
	plan   calendar.Calendar
	site   *weather.Site
	setUp  time.Duration
	counts map[string]int
}

func (v *onDays) bad(format string, args ...any) {
	v.Helper()
	v.Errorf("boat %d: %s", v.n, fmt.Sprintf(format, args...))
}

func elapsed(d quantity.Duration) time.Duration {
	if !d.Given() {
		return 0
	}
	return time.Duration(d.Float(quantity.Hour) * float64(time.Hour))
}

// hour is the hour of the forecast at a moment, -1 beyond.
func (v *onDays) hour(at time.Time) int {
	hours := v.x.Weather.Forecast.Hours
	if len(hours) == 0 || at.Before(hours[0].At) {
		return -1
	}
	if i := int(at.Sub(hours[0].At) / time.Hour); i < len(hours) {
		return i
	}
	return -1
}

// passed is how many hours of the coating's own temperature pass between two moments, by the slow hand and by the fast one; ok is false where nobody can
// tell without knowing how the plan was made: weather beyond the forecast.
func (v *onDays) passed(c weather.Coat, from, to time.Time) (slow, fast float64, ok bool) {
	clock, err := calendar.ClockOf(v.b, c.Coating)
	if err != nil {
		v.Fatal(err)
	}
	whole := to.Sub(from).Hours()
	switch today := v.x.Paint.Today; {
	case len(v.x.Weather.Forecast.Hours) > 0:
		sky := v.site.For(c)
		for at := from; at.Before(to); at = at.Add(time.Hour) {
			i := v.hour(at)
			if i < 0 {
				return 0, 0, false
			}
			step := min(1, to.Sub(at).Hours())
			surface := sky.Surface(i)
			slow, fast = slow+step*clock.Slow(surface.Low), fast+step*clock.Fast(surface.High)
		}
		return slow, fast, true
	case today.Given():
		t := today.Float(quantity.Celsius)
		return whole * clock.Slow(t), whole * clock.Fast(t), true
	}
	return whole, whole, true // as the row states its times: the plan is more careful at both ends
}

// crew holds each span of a turn against the days and hours of whoever does it.
func (v *onDays) crew(turn antifoul.Turn, it calendar.Item) {
	for _, s := range it.Spans {
		day := time.Date(s.From.Year(), s.From.Month(), s.From.Day(), 0, 0, 0, 0, time.UTC)
		date, err := quantity.NewDate(s.From.Year(), int(s.From.Month()), s.From.Day())
		if err != nil {
			v.Fatal(err)
		}
		if date.Before(v.x.On) || s.To.Before(s.From) || !s.To.Equal(s.From) && s.To.Sub(day) > 24*time.Hour {
			v.bad("%s: %s to %s", turn.Name, s.From, s.To)
		}
		if turn.On.Given() && !it.Again && date != turn.On {
			v.bad("%s: on %s, not on its day %s", turn.Name, date, turn.On)
		}
		if turn.Yard {
			if s.From.Sub(day) < 8*time.Hour || s.To.Sub(day) > 17*time.Hour || !turn.On.Given() && (s.From.Weekday() == time.Saturday || s.From.Weekday() == time.Sunday) {
				v.bad("%s: the yard from %s to %s", turn.Name, s.From, s.To)
			}
			continue
		}
		if s.From.Equal(s.To) {
			continue
		}
		w := v.x.Work
		here := slices.Contains(w.Free, date) || slices.Contains(w.Weekdays, s.From.Weekday()) && !slices.Contains(w.Taken, date)
		begin, end := time.Duration(w.Start)*time.Minute+v.setUp/2, time.Duration(w.Stop)*time.Minute-v.setUp/2
		if !here || s.From.Sub(day) < begin || s.To.Sub(day) > end {
			v.bad("%s: %s to %s, when nobody is there", turn.Name, s.From, s.To)
		}
		for at := s.From; at.Before(s.To); at = at.Add(time.Hour) {
			v.weather(turn, at, len(turn.Coats) > 0 && !it.Again)
		}
	}
}

// weather holds one hour of work against the forecast as long as one is believed, seven days: no coat in rain, in damp air or in cold, nothing that rain
// stops in rain.
func (v *onDays) weather(turn antifoul.Turn, at time.Time, coat bool) {
	i := v.hour(at)
	if i < 0 || i >= 7*24 {
		return
	}
	h := v.x.Weather.Forecast.Hours[i]
	rains := h.RainMM > 0 && !v.x.Work.Roof.True()
	if rains && (turn.Dry || coat) {
		v.bad("%s: in the rain at %s", turn.Name, at)
	}
	if !coat {
		return
	}
	if h.HumidityPct > 85 {
		v.bad("%s: in air of %.0f %% at %s", turn.Name, h.HumidityPct, at)
	}
	for _, l := range turn.Layers {
		if v.site.For(l.Coat).Verdict(i) == finding.Forbidden {
			v.bad("%s: %s at %s, when it may not go on", turn.Name, l.Coating.Key, at)
		}
	}
}

// laidCoat is where one coat of one part lies in the plan.
type laidCoat struct {
	antifoul.TurnCoat
	on       weather.Coat
	from, to time.Time
	abraded  bool // before it
}

// inOrder goes through the plan once: every turn in its order, one after another with what must pass between, and gives the coats of each part.
func (v *onDays) inOrder() map[string][]laidCoat {
	coats := map[string][]laidCoat{}
	next, abraded := 0, false
	var free time.Time
	for _, it := range v.plan.Items {
		if it.Task != next || it.Task >= len(v.turns) {
			v.bad("turn %d where %d should come", it.Task, next)
			return coats
		}
		turn := v.turns[it.Task]
		v.crew(turn, it)
		for _, s := range it.Spans {
			if s.From.Before(free) {
				v.bad("%s: begins %s, and what comes before is over at %s", turn.Name, s.From, free)
			}
			free = s.To
		}
		if it.Again {
			abraded = true
			v.counts["abraded"]++
			continue
		}
		next++
		free = free.Add(elapsed(turn.Wait))
		if len(turn.Coats) > 0 && len(it.Spans) != 1 {
			v.bad("%s: a coat in %d spans", turn.Name, len(it.Spans))
		}
		for _, k := range turn.Coats {
			at := slices.IndexFunc(v.x.Parts, func(p compat.Part) bool { return p.Name == k.Part })
			material, err := v.b.Material(v.x.Parts[at].Material)
			if err != nil {
				v.Fatal(err)
			}
			place := fmt.Sprintf("%s, patch %t, section %d", k.Part, turn.Patch, turn.Section)
			coats[place] = append(coats[place], laidCoat{k, weather.Coat{Coating: k.Layer.Coating, On: []tables.Material{material}}, it.Start(), it.End(), abraded})
		}
		abraded = false
	}
	if next != len(v.turns) {
		v.bad("%d turns laid of %d", next, len(v.turns))
	}
	if v.plan.Ready.Before(free) {
		v.bad("ready %s, and work until %s", v.plan.Ready, free)
	}
	return coats
}

// over holds a coat against the one it goes over: its window is open, or it was abraded.
func (v *onDays) over(below, k laidCoat) {
	c := below.Layer.Coating
	what := fmt.Sprintf("%s, %s over %s", k.Part, k.What(), below.What())
	if !below.to.Before(k.from) && !below.to.Equal(k.from) {
		v.bad("%s: begins %s, that one ends %s", what, k.from, below.to)
	}
	slow, _, ok := v.passed(below.on, below.to, k.from)
	if ok && c.OvercoatMin.Given() && slow < c.OvercoatMin.Float(quantity.Hour)-1e-6 {
		v.bad("%s: after %.2f hours of its clock, the window opens after %s", what, slow, c.OvercoatMin)
	}
	_, fast, ok := v.passed(below.on, below.from, k.from)
	closes := compat.Closes(k.Layer.Coating, c)
	if ok && closes.Given() && fast > closes.Float(quantity.Hour)+1e-6 && !k.abraded && !k.Again {
		v.bad("%s: after %.2f hours of its clock, the window closes after %s, and nothing is abraded", what, fast, closes)
	}
	if ok && closes.Given() {
		v.counts["windows"]++
	}
}

// lastSection is the primer of the section that was blasted last, which lies under the coat that follows inside its window. Those before it may be past theirs: that
// is said.
func (v *onDays) lastSection(coats map[string][]laidCoat, part string, last laidCoat) laidCoat {
	for n := 2; ; n++ {
		section := coats[fmt.Sprintf("%s, patch false, section %d", part, n)]
		switch {
		case len(section) == 1:
			last = section[0]
			v.counts["sections"]++
			continue
		case len(section) > 1:
			v.bad("%s: %d coats in section %d", part, len(section), n)
		}
		if n > 2 && !v.j.Season.Findings.Has(antifoul.RuleSections) {
			v.bad("%s: blasted in %d sections, and nothing says what that means", part, n-1)
		}
		return last
	}
}

// launched holds the last coat on a place against the water.
func (v *onDays) launched(k laidCoat) {
	c, w := k.Layer.Coating, v.x.Work
	if slow, _, ok := v.passed(k.on, k.to, v.plan.Ready); ok && c.LaunchMin.Given() && slow < c.LaunchMin.Float(quantity.Hour)-1e-6 {
		v.bad("%s: %.1f hours of its clock before the water, %s wanted", k.What(), slow, c.LaunchMin)
	}
	if !v.plan.Fits || !w.Launch.Given() || w.LaunchOpen.True() {
		return
	}
	launch := time.Date(w.Launch.Year(), w.Launch.Month(), w.Launch.Day(), 0, w.Start, 0, 0, time.UTC)
	if v.plan.Ready.After(launch) {
		v.bad("ready %s for a launch on %s", v.plan.Ready, w.Launch)
	}
	if c.AirNew.Given() && launch.Sub(k.to) > elapsed(c.AirNew) {
		v.bad("%s: stands %s, %s at most", k.What(), launch.Sub(k.to), c.AirNew)
	}
}

// legal holds the plan against the schemes, coat by coat.
func (v *onDays) legal(whole bool) {
	if len(v.plan.Items) == 0 {
		if v.plan.Fits || len(v.plan.Findings) == 0 {
			v.bad("nothing is laid, and nothing says why")
		}
		v.counts["none"]++
		return
	}
	coats := v.inOrder()
	for _, s := range v.j.Schemes {
		var want []string
		for _, k := range s.Coats {
			for range k.Layer.Coats {
				want = append(want, k.Layer.Coating.Key+" "+k.Layer.Colour+" "+string(k.Layer.For))
			}
		}
		first := coats[s.Part+", patch false, section 1"] // of a surface that is blasted
		list := slices.Concat(first, coats[s.Part+", patch false, section 0"])
		var got []string
		for _, k := range list {
			got = append(got, k.Layer.Coating.Key+" "+k.Layer.Colour+" "+string(k.Layer.For))
		}
		if whole && !slices.Equal(got, want) {
			v.bad("%s: coats %v, by the scheme %v", s.Part, got, want)
		}
		if len(first) > 0 {
			list[0] = v.lastSection(coats, s.Part, first[0])
		}
		for i := range list[min(1, len(list)):] {
			v.over(list[i], list[i+1])
		}
		if len(list) > 0 {
			v.launched(list[len(list)-1])
		}
		patch := slices.Concat(coats[s.Part+", patch true, section 1"], coats[s.Part+", patch true, section 0"])
		for i := range patch[min(1, len(patch)):] {
			v.over(patch[i], patch[i+1])
		}
		if len(patch) > 0 {
			v.counts["patches"]++
			v.launched(patch[len(patch)-1])
		}
	}
}

// leftMayLie judges what is left of each scheme when something was given up: it may lie there as well.
func (v *onDays) leftMayLie() {
	for _, s := range v.j.Schemes {
		coats := map[string]int{}
		for _, turn := range v.turns {
			for _, k := range turn.Coats {
				if k.Part == s.Part && !turn.Patch && turn.Section <= 1 {
					coats[k.Layer.Coating.Key+k.Layer.Colour+string(k.Layer.For)]++
				}
			}
		}
		var left compat.Stack
		for _, l := range s.Stack {
			n := coats[l.Coating.Key+l.Colour+string(l.For)]
			if l.For == compat.Found || n > 0 {
				left = append(left, l)
			}
			if n > l.Coats {
				v.bad("%s: %d coats of %s, and %d when nothing is given up", s.Part, n, l.Coating.Key, l.Coats)
			}
		}
		part := v.x.Parts[slices.IndexFunc(v.x.Parts, func(p compat.Part) bool { return p.Name == s.Part })]
		part.Barrier = quantity.NotSaid // a wish is what may be given up
		for _, f := range compat.CheckStack(v.b, part, left, -1).At(finding.Forbidden) {
			v.bad("%s: %s in what is left: %s", s.Part, f.Rule, v.b.Say(f, quantity.Metric))
		}
	}
}

// daysAreLegal plans a boat and holds her days, and those that are left when something is given up. It gives back when she is ready.
func daysAreLegal(t *testing.T, b *tables.Book, n uint64, x antifoul.Boat, counts map[string]int) time.Time {
	t.Helper()
	j, err := antifoul.Plan(b, x)
	if err != nil {
		t.Fatalf("boat %d: %v", n, err)
	}
	if !j.Season.Planned() {
		return time.Time{}
	}
	v := onDays{T: t, n: n, b: b, x: x, j: j, turns: j.Season.Turns, plan: j.Season.Calendar, setUp: time.Hour, counts: counts}
	if x.Work.SetUp.Given() {
		v.setUp = elapsed(x.Work.SetUp)
	}
	if v.site, err = weather.At(b, x.Weather.Forecast.Hours, x.Work.Roof.True()); err != nil {
		t.Fatal(err)
	}
	v.legal(true)
	counts[fmt.Sprintf("fits %t", j.Season.Calendar.Fits)]++
	if len(j.Season.Kept) > 0 {
		counts["given up"]++
		v.turns, v.plan = j.Season.Kept, j.Season.Partial
		v.legal(false)
		v.leftMayLie()
	}
	return j.Season.Calendar.Ready
}

// Whatever days a random boat has, her plan of days is legal: coats in the order of the stack and inside their windows, work in the hours of whoever does
// it, weather that allows it, cured for the water. So it is when she must go in a little before she would be ready.
func TestAnyBoatsDaysAreLegal(t *testing.T) {
	b := tables.Default()
	counts := map[string]int{}
	eachBoat(t, sparse(16), func(t *testing.T, n uint64, x antifoul.Boat) {
		t.Helper()
		x = inDays(t, n, x)
		ready := daysAreLegal(t, b, n, x, counts)
		soon, err := quantity.NewDate(ready.Year(), int(ready.Month()), ready.Day())
		if ready.IsZero() || err != nil {
			return
		}
		x.Work.Reserve = quantity.Day.N(0)
		if x.Work.Launch, x.Work.LaunchOpen = soon.AddDays(-int(n/16%4)), quantity.No; !x.Work.Launch.Before(x.On) {
			daysAreLegal(t, b, n, x, counts)
		}
	})
	for kind, least := range map[string]int{"fits true": 40, "fits false": 40, "none": 3, "given up": 3, "abraded": 20, "sections": 10, "patches": 20, "windows": 40} {
		if *anyBoats >= 2000 && !few() && counts[kind] < least {
			t.Errorf("%d of %q: %v", counts[kind], kind, counts)
		}
	}
}
