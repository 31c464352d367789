package main

import (
	"math"

	"boatyard.example/bottomwork/tables/quantity"
)

// turn is when one boat is worked on.
type turn struct {
	boatJob
	hours       float64 // of one hand
	least       int     // days that the coats take however many hands there are
	first, last quantity.Date
	ready       quantity.Date // the last coat has dried as long as it must before the water
	late        int           // days after her launch; 0: in time, or no launch
	load        []float64     // hours on each day from first on, days of rest included
}

// mostDays bounds the search: a yard that needs more has not the hands.
const mostDays = 3 * 366

// crewDays lays the hours of all boats on the yard's days, boat by boat in the order of their launches. On one day a boat takes no more hours than her
// hours shared over the least days that her coats take, and all boats together no more than the hands have. Boats of which the owner does the work
// himself take none.
func crewDays(y yard, jobs []boatJob) []turn {
	var out []turn
	from := y.from
	for _, x := range jobs {
		if on := x.job.Boat.On; !y.from.Given() && (!from.Given() || on.After(from)) {
			from = on
		}
	}
	used := map[quantity.Date]float64{}
	for _, x := range jobs {
		t := turn{boatJob: x, hours: x.job.Hours.Typical, least: max(1, int(math.Ceil(x.job.Days.Low)))}
		if x.job.Boat.Work.DoneBy == "owner" || t.hours == 0 {
			out = append(out, t)
			continue
		}
		left, most := t.hours, t.hours/float64(t.least)
		for d, n := from, 0; left > 1e-9 && n < mostDays; d, n = d.AddDays(1), n+1 {
			room := 0.0
			if y.works(d) {
				room = min(left, most, float64(y.hands)*y.hours-used[d])
			}
			if room <= 1e-9 {
				if t.first.Given() {
					t.load = append(t.load, 0)
				}
				continue
			}
			if !t.first.Given() {
				t.first = d
			}
			used[d] += room
			left -= room
			t.load = append(t.load, room)
			t.last = d
		}
		t.ready = t.last.AddDays(dryDays(x))
		if launch := x.job.Boat.Work.Launch; launch.Given() && t.ready.After(launch) {
			t.late = launch.DaysUntil(t.ready)
		}
		out = append(out, t)
	}
	return out
}

// dryDays is how many days the longest last coat dries before the water.
func dryDays(x boatJob) int {
	days := 0
	for _, s := range x.job.Schemes {
		if n := len(s.Coats); n > 0 && s.Coats[n-1].Layer.Coating.LaunchMin.Given() {
			days = max(days, int(math.Ceil(s.Coats[n-1].Layer.Coating.LaunchMin.Float(quantity.Day))))
		}
	}
	return days
}
