package calendar

import (
	"math"
	"time"

	"boatyard.example/bottomwork/tables/quantity"
)

// The longest time that is planned: a season and the winter after it.
const mostHours = 366 * 24

// grid is the hours from the first midnight on, one after another as a clock in a box counts them, and those of them in which the crew works.
// Hours of a day that the zone skips or repeats are as they are: a day may have 23 or 25.
type grid struct {
	start time.Time
	dates []quantity.Date // of each hour
	local []int16         // minutes after midnight on the wall, at its start
	slots []slot
	next  []int32 // of each hour: the first slot that begins no earlier
}

// slot is one hour of the crew.
type slot struct {
	hour int32 // of the grid
	day  int32 // counted from the first
}

// newGrid lays out hours from the day on, n of them.
func newGrid(d Days, from quantity.Date, zone *time.Location, n int) *grid {
	g := &grid{start: midnight(from, zone), dates: make([]quantity.Date, n), local: make([]int16, n), next: make([]int32, n)}
	date, day := from, int32(0)
	next := midnight(date.AddDays(1), zone)
	for i := range n {
		at := g.at(i)
		for !at.Before(next) {
			date, day = date.AddDays(1), day+1
			next = midnight(date.AddDays(1), zone)
		}
		h, m, _ := at.In(zone).Clock()
		g.dates[i], g.local[i], g.next[i] = date, int16(h*60+m), int32(len(g.slots))
		if d.works(date, h*60+m) {
			g.slots = append(g.slots, slot{int32(i), day})
		}
	}
	return g
}

// midnight is the first moment of the day in the zone; where the zone skips midnight, what comes in its place.
func midnight(d quantity.Date, zone *time.Location) time.Time { return wallClock(d, 0, zone) }

// at is the moment at which the hour begins.
func (g *grid) at(hour int) time.Time { return g.start.Add(time.Duration(hour) * time.Hour) }

// hourOf is the first hour that begins at or after the moment.
func (g *grid) hourOf(t time.Time) int {
	return max(0, int(math.Ceil(t.Sub(g.start).Hours())))
}

// slotFrom is the first slot that begins no earlier than the hour; the number of slots when there is none.
func (g *grid) slotFrom(hour int) int {
	if hour >= len(g.next) {
		return len(g.slots)
	}
	return int(g.next[max(hour, 0)])
}
