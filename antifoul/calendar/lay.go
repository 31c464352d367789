package calendar

import (
	"math"
	"slices"
	"time"

	"boatyard.example/bottomwork/antifoul/weather"
	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/quantity"
)

// laid is a job laid on the hours of a grid: what takes the crew's time as links of a chain, and the rest between them.
type laid struct {
	grid   *grid
	tasks  []Task
	skies  [][]*sky // of each task's layers
	open   *sky     // of what is no coat
	links  []link
	tally  []int   // of each link: its task
	after  [][]int // of each link: the tasks after it that take no time of the crew
	first  []int   // likewise before the first link
	limit  int     // the hour by which all is done; the end of the grid when there is none
	launch int     // hour of the launch; 0: none
}

// lay lays the tasks on the slots before the limit.
func lay(b *tables.Book, g *grid, c *climate, tasks []Task, limit, launch int) (*laid, error) {
	l := &laid{grid: g, tasks: tasks, limit: limit, launch: launch}
	for i := range tasks {
		var own []*sky
		for _, k := range tasks[i].Layers {
			s, err := c.of(b, k)
			if err != nil {
				return nil, err
			}
			own = append(own, s)
		}
		l.skies = append(l.skies, own)
	}
	l.count()
	slots := l.slots()
	l.open = &sky{climate: c, view: &view{Sky: c.site.For(weather.Coat{})}}
	for k := range l.links {
		l.permit(k, slots)
		l.join(k, slots)
	}
	return l, nil
}

// slots are those that end by the limit.
func (l *laid) slots() []slot {
	return l.grid.slots[:l.grid.slotFrom(l.limit)]
}

// count makes a link of each task that takes whole hours. Work that may be parted shares the hour in which the one before it ends: of several, one
// after another, the hours are added up before they are rounded up.
func (l *laid) count() {
	sum, used := 0.0, 0
	for i := range l.tasks {
		t := &l.tasks[i]
		n := 0
		switch {
		case t.Yard:
			sum, used = 0, 0
		case len(t.Layers) > 0:
			n, sum, used = max(1, units(t.Hours)), 0, 0
		default:
			if t.On.Given() {
				sum, used = 0, 0 // the hour before may be days ago
			}
			sum += t.Hours
			n = units(sum) - used
			used += n
			if t.Wait.Given() || t.On.Given() {
				sum, used = 0, 0
				n = max(n, units(min(t.Hours, 1)))
			}
		}
		if n == 0 {
			if len(l.links) == 0 {
				l.first = append(l.first, i)
			} else {
				l.after[len(l.after)-1] = append(l.after[len(l.after)-1], i)
			}
			continue
		}
		l.links = append(l.links, link{units: n, whole: len(t.Layers) > 0})
		l.tally = append(l.tally, i)
		l.after = append(l.after, nil)
	}
}

// permit says in which slots the link may be worked on or begun.
func (l *laid) permit(k int, slots []slot) {
	t := &l.tasks[l.tally[k]]
	may := make([]byte, len(slots))
	var start int
	if k == 0 {
		start = l.through(0, l.first)
	}
	for s, at := range slots {
		h := int(at.hour)
		if h < start || t.On.Given() && !l.grid.dates[h].Equal(t.On) {
			continue
		}
		may[s] = l.hour(k, h)
	}
	l.links[k].may = may
	for _, sky := range l.skies[l.tally[k]] {
		if !sky.layer.Late {
			continue
		}
		step := 24.0
		if sky.layer.Stands.Given() {
			step = hours(sky.layer.Stands) / 4
		}
		if l.links[k].gap == nil {
			l.links[k].gap = make([]int32, len(slots))
		}
		for s, at := range slots {
			l.links[k].gap[s] = max(l.links[k].gap[s], int32(float64(l.launch-int(at.hour)-1)/step)) // nought where there is no launch
		}
	}
}

// hour says what work on the link that begins in the hour would be: for a coat, the whole of it and its drying.
func (l *laid) hour(k, h int) byte {
	i, n := l.tally[k], l.links[k].units
	out := fine
	if !l.links[k].whole {
		if l.tasks[i].Dry {
			if s := l.open; mark(s.Rains(h-s.offset)) == never {
				return never
			}
		}
		if k == len(l.links)-1 && l.over(k, h+1) > l.limit {
			return never
		}
		return out
	}
	end := h + n
	if end > l.limit || k == len(l.links)-1 && l.over(k, end) > l.limit {
		return never
	}
	for _, s := range l.skies[i] {
		for x := h; x < end; x++ {
			if out = min(out, s.paints(x)); out == never {
				return never
			}
		}
		if out = min(out, s.dries(end)); out == never {
			return never
		}
		if l.launch > 0 && (s.slow[l.limit]-s.slow[end] < hours(s.layer.Cures)-1e-9 || s.layer.Stands.Given() && float64(l.launch-end) > hours(s.layer.Stands)+1e-9) {
			return never
		}
	}
	return out
}

// join says when the link may begin after the one before it.
func (l *laid) join(k int, slots []slot) {
	if k == 0 {
		return
	}
	before, n := k-1, l.links[k-1].units
	skies := l.skies[l.tally[before]]
	opens := make([]int32, len(slots))
	var closes, hard []int32
	if l.links[k].whole && slices.ContainsFunc(skies, func(s *sky) bool { return s.layer.Closes.Given() }) {
		closes, hard = make([]int32, len(slots)), make([]int32, len(slots))
		l.links[k].again = max(1, units(l.again(before)))
	}
	first := func(hour int) int32 { return int32(min(l.grid.slotFrom(hour), len(slots))) }
	for e, at := range slots {
		opens[e] = first(l.through(l.opened(before, int(at.hour)+1), l.after[before]))
		if closes != nil {
			closes[e] = first(l.closed(before, int(at.hour)+1-n)+1) - 1
			hard[e] = max(opens[e], first(l.hardened(before, int(at.hour)+1)))
		}
	}
	l.links[k].opens, l.links[k].closes, l.links[k].hard = opens, closes, hard
}

// again is the hours of the crew for abrading the link's film; 0: its window never closes.
func (l *laid) again(k int) float64 {
	sum := 0.0
	for _, s := range l.skies[l.tally[k]] {
		if s.layer.Closes.Given() {
			sum += s.layer.Again
		}
	}
	return sum
}

// noHour is past the end of every grid.
const noHour = math.MaxInt32 / 2

// opened is the hour from which the next work may begin when the link ends at the beginning of the hour; past the grid when it never may.
func (l *laid) opened(k, end int) int {
	out := end + wholeHours(l.tasks[l.tally[k]].Wait)
	for _, s := range l.skies[l.tally[k]] {
		out = max(out, int(s.open[end]))
	}
	return out
}

// hardened is the hour from which the link's film may be abraded when it ends at the beginning of the hour.
func (l *laid) hardened(k, end int) int {
	out := end
	for _, s := range l.skies[l.tally[k]] {
		if s.layer.Closes.Given() && s.layer.Hard.Given() {
			out = max(out, int(s.after(hours(s.layer.Hard))[end]))
		}
	}
	return out
}

// over is the hour at which all is done when the last link ends at the beginning of the hour: after its wait, and after what follows it, which
// begins no earlier than another coat might.
func (l *laid) over(k, end int) int {
	return max(end+wholeHours(l.tasks[l.tally[k]].Wait), l.through(pick(len(l.after[k]) > 0, l.opened(k, end), end), l.after[k]))
}

// closed is the last hour in which the next coat may begin when the link began in the hour.
func (l *laid) closed(k, start int) int {
	out := noHour
	for _, s := range l.skies[l.tally[k]] {
		if s.layer.Closes.Given() {
			out = min(out, int(s.shut[max(start, 0)]))
		}
	}
	return out
}

// through is the hour at which the tasks that take no time of the crew are over, when they may begin at the hour: an appointment is waited for, the
// yard comes on its next day of work. Past the grid when they never are.
func (l *laid) through(hour int, tasks []int) int {
	for _, i := range tasks {
		t := &l.tasks[i]
		if t.Yard || t.On.Given() {
			hour = l.appointment(t, hour)
		}
		hour += wholeHours(t.Wait)
	}
	return hour
}

// The yard's own hours, where nobody says: its working days from Monday to Friday, at most from eight to five.
const (
	yardStart = 8 * 60
	yardStop  = 17 * 60
)

// appointment is the hour at which the yard's work, or an appointment, is over.
func (l *laid) appointment(t *Task, hour int) int {
	n := t.takes()
	for h := hour; h+n <= len(l.grid.dates); h++ {
		if t.On.Given() && !l.grid.dates[h].Equal(t.On) {
			if l.grid.dates[h].After(t.On) {
				break
			}
			continue
		}
		if w := l.grid.dates[h].Weekday(); t.Yard && !t.On.Given() && (w == time.Saturday || w == time.Sunday) {
			continue
		}
		if m := int(l.grid.local[h]); m >= yardStart && (m < yardStart+60 || m+60*n <= yardStop) { // from the first hour on a whole day will do, be it half past
			return h + n
		}
	}
	return noHour
}

// takes is how many hours an appointment takes: what takes longer than the yard's day is over when the day is.
func (t *Task) takes() int { return min(max(1, units(t.Hours)), (yardStop-yardStart)/60) }

// wholeHours is a wait in hours, up.
func wholeHours(d quantity.Duration) int { return units(hours(d)) }
