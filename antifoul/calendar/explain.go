package calendar

import (
	"slices"
	"strconv"
	"time"

	"boatyard.example/bottomwork/tables/finding"
)

var derived = []finding.Basis{{Kind: finding.Derived}}

// explain says what decided the plan.
func (x *arranger) explain(out *Calendar, l *laid, way []placed) {
	say := func(rule finding.ID, v finding.Verdict, about string, facts ...finding.Fact) {
		out.Findings = append(out.Findings, finding.Finding{Rule: rule, Verdict: v, About: about, Facts: facts, Basis: derived})
	}
	launch := finding.Fact{Name: "launch", Value: x.days.Launch}
	switch {
	case !out.Fits && !out.Ready.After(x.days.Begins(x.days.Launch, x.conditions.Zone)):
		say(RuleStands, finding.Forbidden, "", launch, x.moment("ready", out.Ready))
	case !out.Fits:
		say(RuleLate, finding.Forbidden, "", launch, x.moment("ready", out.Ready))
	case !out.Reserve:
		say(RuleNoReserve, finding.Caution, "", launch, x.moment("ready", out.Ready), finding.Fact{Name: "reserve", Value: x.days.Reserve})
	}
	for k := range way {
		if len(way[k].again) > 0 {
			x.missed(out, l, way, k)
		}
	}
	out.fold(RuleNoFreeHour, RuleNoFreeHours)
	for _, run := range together(l, way) {
		first, last := run[0], run[len(run)-1]
		at := func(k int) time.Time { return l.grid.at(int(l.grid.slots[way[k].slots[0]].hour)) }
		out.Findings = append(out.Findings, finding.Finding{
			Rule: RuleTogether, Verdict: finding.Fine, About: x.tasks[l.tally[first]].Name, Against: x.tasks[l.tally[last]].Name, Basis: derived,
			Facts: []finding.Fact{{Name: "coats", Value: strconv.Itoa(len(run))}, x.moment("from", at(first)), x.moment("to", at(last))},
		})
	}
	out.fold(RuleTogether, RuleTogetherOften)
	if i, ok := out.tightest(); ok && out.Items[i].Slack() <= tight {
		it := out.Items[i]
		say(RuleTight, finding.Fine, x.tasks[it.Task].Name, x.moment("start", it.Start()), x.moment("last", it.Last))
	}
	for i := range x.tasks {
		if t := &x.tasks[i]; t.Yard && !t.On.Given() {
			say(RuleYardsDay, finding.Ask, t.Name)
		}
	}
	switch {
	case out.Measure == 0:
	case out.Known.IsZero():
		say(RuleNoForecast, finding.Ask, "", finding.Fact{Name: "coats", Value: strconv.Itoa(out.Measure)})
	default:
		say(RuleMeasure, finding.Ask, "", finding.Fact{Name: "coats", Value: strconv.Itoa(out.Measure)})
	}
	if n := len(out.Items); n > 0 && !out.Known.IsZero() && out.Items[n-1].End().After(out.Known) {
		say(RuleForecast, finding.Ask, "", x.moment("known", out.Known))
	}
}

// mostAlike is how often one rule is told in full; the table of days shows each case.
const mostAlike = 2

// fold tells a rule that speaks more often than that once, with the number of times.
func (c *Calendar) fold(each, all finding.ID) {
	var first *finding.Finding
	n := 0
	for i := range c.Findings {
		if c.Findings[i].Rule == each {
			if first == nil {
				first = &c.Findings[i]
			}
			n++
		}
	}
	if n <= mostAlike {
		return
	}
	whole := finding.Finding{Rule: all, Verdict: first.Verdict, First: first.First, Basis: first.Basis, Facts: []finding.Fact{{Name: "times", Value: strconv.Itoa(n)}}}
	c.Findings = append(slices.DeleteFunc(c.Findings, func(f finding.Finding) bool { return f.Rule == each }), whole)
}

// missed says of a coat that comes after its window what it missed and why.
func (x *arranger) missed(out *Calendar, l *laid, way []placed, k int) {
	g := l.grid
	before := way[k-1].slots
	end, start := int(g.slots[before[len(before)-1]].hour)+1, int(g.slots[before[0]].hour)
	opens, closes := l.opened(k-1, end), l.closed(k-1, start)
	free, may := 0, 0
	var why finding.List
	for s := g.slotFrom(opens); s < len(l.slots()) && int(g.slots[s].hour) <= closes; s++ {
		free++
		if l.links[k].may[s] != never {
			may++
		}
		for _, f := range l.refused(k, int(g.slots[s].hour)) {
			if !why.Has(f.Rule) {
				why = append(why, f)
			}
		}
	}
	f := finding.Finding{
		Rule: RuleWindowWeather, Verdict: finding.Needs, About: x.tasks[l.tally[k]].Name, Against: x.tasks[l.tally[k-1]].Name, Basis: derived, First: []finding.Step{{Do: finding.Abrade}},
		Facts: []finding.Fact{
			x.moment("opens", g.at(opens)), x.moment("closes", g.at(closes)), x.moment("start", g.at(int(g.slots[way[k].slots[0]].hour))), {Name: "hours", Value: strconv.Itoa(free)},
		},
	}
	switch {
	case closes < opens:
		f.Rule = RuleNoWindow
	case free == 0:
		f.Rule = RuleNoFreeHour
	case may > 0 || len(why) == 0: // the weather takes it; the launch, or the length of the day, does not
		f.Rule = RuleNoRoomLater
	}
	out.Findings = append(out.Findings, f)
	if f.Rule == RuleWindowWeather {
		out.Findings = append(out.Findings, why...)
	}
}

// refused gives the reasons why a coat may not begin in the hour; none where the day is too short or the launch too near for it.
func (l *laid) refused(k, h int) finding.List {
	var out finding.List
	end := h + l.links[k].units
	for _, s := range l.skies[l.tally[k]] {
		for i := h; i < end; i++ {
			if s.paints(i) == never {
				out = append(out, s.Why(i-s.offset)...)
				break
			}
		}
		if len(out) == 0 && s.dries(end) == never {
			out = append(out, s.wetted(end)...)
		}
	}
	return out
}

// wetted gives the reason why a film that ends at the beginning of the hour does not dry in time.
func (c *sky) wetted(end int) finding.List {
	for h, is := range c.soft(end) {
		if is == never {
			return c.WhyWets(h - c.offset)
		}
	}
	return finding.List{{Rule: RuleNeverDry, Verdict: finding.Forbidden, About: c.layer.Coating.Name, Basis: derived}}
}

// together lists the runs of coats that follow one another inside windows that close.
func together(l *laid, way []placed) [][]int {
	var out [][]int
	var run []int
	flush := func() {
		if len(run) > 1 {
			out = append(out, slices.Clone(run))
		}
		run = run[:0]
	}
	for k := range way {
		if !l.links[k].whole || len(way[k].again) > 0 || l.links[k].closes == nil {
			flush()
		}
		if l.links[k].whole {
			run = append(run, k)
		}
	}
	flush()
	return out
}

// tight is how little slack is worth a warning: a week, since a week of rain is no rare thing.
const tight = 7 * 24 * time.Hour

// tightest is the item with the least time between its start and its last start.
func (c *Calendar) tightest() (int, bool) {
	var at int
	found := false
	for i, it := range c.Items {
		if !it.Last.IsZero() && (!found || it.Slack() < c.Items[at].Slack()) {
			at, found = i, true
		}
	}
	return at, found
}

// Slack is how much later the work may begin and all still be done by the launch; zero where there is no last start.
//
// Basis: derived.
func (i Item) Slack() time.Duration {
	if i.Last.IsZero() {
		return 0
	}
	return i.Last.Sub(i.Start())
}

// nowhere says which work finds no hour at all.
func (x *arranger) nowhere(out *Calendar, l *laid) {
	say := func(rule finding.ID, about string, facts ...finding.Fact) {
		out.Findings = append(out.Findings, finding.Finding{Rule: rule, Verdict: finding.Forbidden, About: about, Facts: facts, Basis: derived})
	}
	slots := l.slots()
	longest := l.grid.longest()
	for k := range l.links {
		if u := l.links[k].units; l.links[k].whole && u > longest {
			say(RuleLongCoat, x.tasks[l.tally[k]].Name, finding.Fact{Name: "hours", Value: strconv.Itoa(u)}, finding.Fact{Name: "longest", Value: strconv.Itoa(longest)})
		}
	}
	need := 0
	for k := range l.links {
		need += l.links[k].units
	}
	if need > len(slots) {
		say(RuleTooFew, "", finding.Fact{Name: "need", Value: strconv.Itoa(need)}, finding.Fact{Name: "have", Value: strconv.Itoa(len(slots))})
	}
	if len(out.Findings) > 0 {
		return
	}
	if _, _, k := chain(slots, l.links); k >= 0 {
		for _, i := range slices.Concat(l.before(k), []int{l.tally[k]}) {
			if t := &x.tasks[i]; t.On.Given() {
				say(RuleBooked, t.Name, finding.Fact{Name: "day", Value: t.On})
				return
			}
		}
		say(RuleNoHour, x.tasks[l.tally[k]].Name)
		for s := range slots {
			if why := l.refused(k, int(slots[s].hour)); len(why) > 0 {
				out.Findings = append(out.Findings, why...)
				return
			}
		}
		return
	}
	if len(out.Findings) == 0 {
		say(RuleNoHour, "the work of the yard")
	}
}

// before lists the tasks without time of the crew that stand before the link.
func (l *laid) before(k int) []int {
	if k == 0 {
		return l.first
	}
	return l.after[k-1]
}

// longest is the longest run of the crew's hours on one day.
func (g *grid) longest() int {
	var longest, run int
	for i, s := range g.slots {
		if i > 0 && s.day == g.slots[i-1].day && s.hour == g.slots[i-1].hour+1 {
			run++
		} else {
			run = 1
		}
		longest = max(longest, run)
	}
	return longest
}

// moment is a point of time as a fact.
func (x *arranger) moment(name string, t time.Time) finding.Fact {
	return finding.Fact{Name: name, Value: Moment(t.In(x.conditions.Zone))}
}

// Moment writes a point of time on the clock of its zone: "Sat 17 Apr 2027, 10:00".
func Moment(t time.Time) string { return t.Format("Mon 2 Jan 2006, 15:04") }
