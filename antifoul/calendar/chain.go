package calendar

import (
	"math"
	"slices"
)

// What a slot is for a piece of work.
const (
	never   byte = iota
	measure      // only after a measurement, or nobody knows its weather
	fine
)

// link is one piece of work of a chain, as its slots know it. All slices have one entry a slot of the crew.
type link struct {
	units  int     // slots that it takes, one or more
	whole  bool    // on one day, one slot after another
	may    []byte  // for whole work: what beginning in the slot would be; else: what working in it is
	opens  []int32 // when the work before ended in the slot: the first slot in which this may begin; it never falls
	closes []int32 // of whole work: likewise the last one, without doing again; nil: any later one. It never falls
	again  int     // slots of work before it when it is later; 0: it may not be later
	hard   []int32 // the first slot in which that work may begin, no earlier than opens; nil: opens
	gap    []int32 // steps of time from an end in the slot to the launch, to be kept few; nil: no matter
}

// The order of aims in one number: the earlier aim outweighs all of the later ones.
const (
	aGap     = int64(1)
	aMeasure = int64(1) << 20
	aDay     = int64(1) << 32
	aAgain   = int64(1) << 44
	noWay    = int64(math.MaxInt64)
	begins   = int16(-1) // a parent: the chain begins here
	mostGap  = int32(aMeasure - 1)

	_ = uint(math.MaxInt16 - 2 - mostHours) // a slot is an int16, and so is what stands for it in layers of work done again
)

// placed is where one link of a chain was put.
type placed struct {
	again []int // slots in which the work before is done again
	slots []int
}

// layer is what the best way is to have done one unit of work by each slot.
type layer struct {
	cost []int64
	from []int16 // slot of the unit before; below begins: that slot, less 2 and negated, of the layer in which the work was done again
}

// chain puts the links one after another on the slots, so that their sum of aims is least: fewest done again, fewest days, fewest measured,
// least gap; among equals the soonest end, and where nothing is done again the soonest end of each one before it. It is exact: every way is weighed. The first link may
// begin in any slot. Where there is none, stuck is the first link that finds no slot; else it is -1.
func chain(slots []slot, links []link) (way []placed, cost int64, stuck int) {
	n := len(slots)
	spare := costs{n: n}
	var done []*layer // of the units of the links, one after another; before a coat those of doing again
	var prev *layer   // of the last unit
	for i := range links {
		l := &links[i]
		if prev != nil && !prev.reached() {
			return nil, noWay, i - 1
		}
		if !l.whole {
			for u := range l.units {
				next := unit(slots, prev, spare.take(), pick(u == 0, l.opens, nil), l.may, 0)
				spare.back(prev)
				prev, done = next, append(done, next)
			}
			continue
		}
		anew := prev
		for u := range l.redo() {
			next := unit(slots, anew, spare.take(), pick(u == 0, l.ready(), nil), nil, pick(u == 0, aAgain, 0))
			if anew != prev {
				spare.back(anew)
			}
			anew, done = next, append(done, next)
		}
		if l.redo() == 0 {
			anew = nil
		}
		next := coat(slots, prev, anew, spare.take(), l)
		spare.back(prev)
		spare.back(anew)
		prev, done = next, append(done, next)
	}
	end, best := -1, noWay
	for s, c := range prev.cost {
		if c < best {
			end, best = s, c
		}
	}
	if end < 0 {
		return nil, noWay, len(links) - 1
	}
	return trace(links, done, end), best, -1
}

// reached reports whether any way leads to the layer.
func (l *layer) reached() bool {
	return slices.ContainsFunc(l.cost, func(c int64) bool { return c < noWay })
}

// costs are rows of numbers, one a slot, that are used again: only those of the last layers are wanted at any time.
type costs struct {
	n    int
	rows [][]int64
}

func (c *costs) take() []int64 {
	k := len(c.rows)
	if k == 0 {
		return make([]int64, c.n)
	}
	row := c.rows[k-1]
	c.rows = c.rows[:k-1]
	return row
}

// back takes the layer's costs back; its parents stay.
func (c *costs) back(l *layer) {
	if l != nil {
		c.rows = append(c.rows, l.cost)
		l.cost = nil
	}
}

// redo is how many slots of work go before the link when its window has closed.
func (l *link) redo() int {
	if l.closes == nil {
		return 0
	}
	return l.again
}

// ready is hard, or opens where it is not given.
func (l *link) ready() []int32 {
	if l.hard != nil {
		return l.hard
	}
	return l.opens
}

// unit is one slot of work that may be parted. It begins no earlier than opens says; nil: in any later slot.
func unit(slots []slot, prev *layer, cost []int64, opens []int32, may []byte, extra int64) *layer {
	n := len(slots)
	out := &layer{cost, make([]int16, n)}
	add, best, today := 0, nowhere, nowhere
	for s := range n {
		out.cost[s] = noWay
		if s == 0 || slots[s].day != slots[s-1].day {
			today.cost = noWay
		}
		for prev != nil && opensAt(opens, add) <= s { // which it is for an earlier one only
			best.take(prev.cost[add], add)
			if slots[add].day == slots[s].day {
				today.take(prev.cost[add], add)
			}
			add++
		}
		if may != nil && may[s] == never {
			continue
		}
		c, from := noWay, begins
		switch {
		case prev == nil:
			c = aDay
		case best.cost < noWay:
			c, from = best.cost+aDay, int16(best.at)
			if today.cost < c {
				c, from = today.cost, int16(today.at)
			}
		}
		if c == noWay {
			continue
		}
		out.cost[s], out.from[s] = c+extra, from
	}
	return out
}

// pointed is a cost and the slot that it belongs to; of equal ones the first stays.
type pointed struct {
	cost int64
	at   int
}

// nowhere is the cost of what no way leads to.
var nowhere = pointed{cost: noWay}

func (p *pointed) take(cost int64, at int) {
	if cost < p.cost {
		p.cost, p.at = cost, at
	}
}

func opensAt(opens []int32, e int) int {
	if opens == nil {
		return e + 1
	}
	return int(opens[e])
}

func marked(mark byte) int64 {
	if mark == measure {
		return aMeasure
	}
	return 0
}

// coat is whole work. It follows prev inside its window, or what was done again in any later slot.
func coat(slots []slot, prev, anew *layer, cost []int64, l *link) *layer {
	n := len(slots)
	out := &layer{cost, make([]int16, n)}
	for s := range n {
		out.cost[s] = noWay
	}
	inside := window{slots: slots, prev: prev, opens: l.opens, closes: l.closes}
	later := window{slots: slots, prev: anew}
	for s := range n {
		inside.move(s)
		later.move(s)
		t := s + l.units - 1
		if l.may[s] == never || t >= n || slots[t].hour-slots[s].hour != int32(l.units-1) || slots[t].day != slots[s].day {
			continue
		}
		c, from := aDay, begins
		if prev != nil {
			w := inside.best()
			c, from = w.cost, int16(w.at)
		}
		if anew != nil {
			if w := later.best(); w.cost < c {
				c, from = w.cost, int16(-w.at-2)
			}
		}
		if c == noWay {
			continue
		}
		c += marked(l.may[s])
		if l.gap != nil {
			c += aGap * int64(min(l.gap[t], mostGap))
		}
		out.cost[t], out.from[t] = c, from
	}
	return out
}

// window slides over the ends of the work before that let a slot follow: those that have opened and not closed.
type window struct {
	slots  []slot
	prev   *layer
	opens  []int32
	closes []int32
	add    int   // the first end that has not opened
	queue  []int // ends of earlier days, costs rising, the oldest first
	today  []int // ends of this day, in order
}

// move brings the window to the slot; slots come in order.
func (w *window) move(s int) {
	if w.prev == nil {
		return
	}
	if s > 0 && w.slots[s].day != w.slots[s-1].day {
		for _, e := range w.today {
			w.enqueue(e)
		}
		w.today = w.today[:0]
	}
	for opensAt(w.opens, w.add) <= s {
		if w.prev.cost[w.add] < noWay {
			if w.slots[w.add].day == w.slots[s].day {
				w.today = append(w.today, w.add)
			} else {
				w.enqueue(w.add)
			}
		}
		w.add++
	}
	if w.closes == nil {
		return
	}
	for len(w.queue) > 0 && int(w.closes[w.queue[0]]) < s {
		w.queue = w.queue[1:]
	}
	for len(w.today) > 0 && int(w.closes[w.today[0]]) < s {
		w.today = w.today[1:]
	}
}

func (w *window) enqueue(e int) {
	for len(w.queue) > 0 && w.prev.cost[w.queue[len(w.queue)-1]] > w.prev.cost[e] {
		w.queue = w.queue[:len(w.queue)-1]
	}
	w.queue = append(w.queue, e)
}

// best is the cheapest end to follow, with the day that it costs.
func (w *window) best() pointed {
	out := nowhere
	for _, e := range w.today {
		out.take(w.prev.cost[e], e)
	}
	if len(w.queue) > 0 && w.prev.cost[w.queue[0]]+aDay <= out.cost { // of equals the sooner
		out = pointed{w.prev.cost[w.queue[0]] + aDay, w.queue[0]}
	}
	return out
}

// trace walks from the last slot of the chain back to its first.
func trace(links []link, done []*layer, end int) []placed {
	out := make([]placed, len(links))
	at, s := len(done)-1, end
	for i := len(links) - 1; i >= 0; i-- {
		l := &links[i]
		var from int16
		if l.whole {
			from = done[at].from[s]
			for u := range l.units {
				out[i].slots = append(out[i].slots, s-l.units+1+u)
			}
			at--
		} else {
			for range l.units {
				out[i].slots = append(out[i].slots, s)
				from = done[at].from[s]
				s, at = int(from), at-1
			}
			slices.Reverse(out[i].slots)
		}
		if from < begins { // the work before was done again
			s = -int(from) - 2
			for range l.redo() {
				out[i].again = append(out[i].again, s)
				from = done[at].from[s]
				s, at = int(from), at-1
			}
			slices.Reverse(out[i].again)
		} else {
			at -= l.redo()
			s = int(from)
		}
	}
	return out
}

func pick[T any](yes bool, a, b T) T {
	if yes {
		return a
	}
	return b
}
