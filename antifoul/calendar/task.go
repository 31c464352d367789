package calendar

import (
	"fmt"
	"math"

	"boatyard.example/bottomwork/antifoul/weather"
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

// Task is one piece of work. Tasks are done one after another, in the order of their list, by one crew.
type Task struct {
	Name   string
	Hours  float64           // of the crew together, from beginning to end; 0: it goes along with what comes before it
	Layers []Layer           // what it puts on, in one go; none: work that may be parted over hours and days
	Dry    bool              // rain stops it
	Yard   bool              // the yard does it, on one day between Monday and Friday from eight to five, or on On, in none of the crew's hours
	On     quantity.Date     // an appointment: on that day and no other
	Wait   quantity.Duration // that passes after it whatever the weather, before the next begins
}

// Layer is one coat on the parts that get it at the same time.
type Layer struct {
	weather.Coat
	Opens  quantity.Duration // from the end of the coat to the beginning of the next, at the temperature of its row; not given: at once
	Closes quantity.Duration // from the beginning of the coat to the beginning of the next, where the next task of the crew is a coat; not given: never
	Cures  quantity.Duration // from the end of the coat to the water; not given: at once
	Stands quantity.Duration // from the end of the coat to the water at most, whatever the temperature; not given: as long as you like
	Hard   quantity.Duration // from the end of the coat until it may be abraded; not given, or shorter: when it opens
	Again  float64           // hours of the crew for abrading it when its window, or that of a layer that went on with it, has closed; without Closes: never
	Late   bool              // the nearer to the launch the better, in quarters of Stands, else in days
}

// mostTasks bounds a plan. A big job has some sixty.
const mostTasks = 500

// checkTasks returns every fault of the tasks, keys as "task[3].hours".
func checkTasks(tasks []Task, from, launch quantity.Date) finding.Faults {
	var fs finding.Faults
	bad := func(key, got, want string) {
		fs = append(fs, finding.Fault{Kind: finding.ErrImpossible, Key: key, Got: got, Want: want})
	}
	if len(tasks) > mostTasks {
		bad("task", fmt.Sprintf("%d tasks", len(tasks)), fmt.Sprintf("at most %d", mostTasks))
		return fs
	}
	hours := func(key string, h float64) {
		if !(h >= 0 && h <= mostOther) {
			bad(key, fmt.Sprint(h), fmt.Sprintf("0 to %d hours", mostOther))
		}
	}
	for i, t := range tasks {
		key := fmt.Sprintf("task[%d].", i+1)
		hours(key+"hours", t.Hours)
		if t.On.Before(from) {
			bad(key+"on", t.On.String(), "not before the first day, "+from.String())
		}
		if t.On.After(launch) {
			bad(key+"on", t.On.String(), "not after the launch, "+launch.String())
		}
		if t.Wait.Sign() < 0 {
			bad(key+"wait", t.Wait.String(), "zero or more")
		}
		if t.Yard && len(t.Layers) > 0 {
			bad(key+"yard", "a coat", "work of the yard without one")
		}
		for k, l := range t.Layers {
			key := fmt.Sprintf("%slayer[%d].", key, k+1)
			hours(key+"again", l.Again)
			for _, d := range []struct {
				key string
				v   quantity.Duration
			}{{"opens", l.Opens}, {"closes", l.Closes}, {"cures", l.Cures}, {"stands", l.Stands}, {"hard", l.Hard}} {
				if d.v.Sign() < 0 {
					bad(key+d.key, d.v.String(), "zero or more")
				}
			}
			if l.Opens.Given() && l.Closes.Given() && l.Closes.Cmp(l.Opens) <= 0 {
				bad(key+"closes", l.Closes.String(), "a window that closes after it opens: more than "+l.Opens.String())
			}
			if l.Cures.Given() && l.Stands.Given() && l.Stands.Cmp(l.Cures) <= 0 {
				bad(key+"stands", l.Stands.String(), "more than it cures, "+l.Cures.String())
			}
		}
	}
	return fs
}

// units are whole hours, up.
func units(hours float64) int { return int(math.Ceil(hours - 1e-9)) }
