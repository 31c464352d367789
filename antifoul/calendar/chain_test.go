package calendar

import (
	"math/rand/v2"
	"slices"
	"testing"
)

// every tries each way of putting the links on the slots and returns the least sum of aims, and the slots of the way that has it: of several the one
// whose last slot is the soonest, and so on back to the first. It knows nothing of layers, windows or queues.
func every(slots []slot, links []link) (int64, []int, bool) {
	best := noWay
	var path, soonest []int
	backwards := func(a, b []int) int {
		for i := len(a) - 1; i >= 0; i-- {
			if a[i] != b[len(b)-len(a)+i] {
				return a[i] - b[len(b)-len(a)+i]
			}
		}
		return 0
	}
	var try func(i, unitsLeft, last int, cost int64, redone bool, redoLeft int)
	day := func(last, s int) int64 {
		if last < 0 || slots[last].day != slots[s].day {
			return aDay
		}
		return 0
	}
	try = func(i, left, last int, cost int64, redone bool, redoLeft int) {
		if i == len(links) {
			if cost < best || cost == best && backwards(path, soonest) < 0 {
				best, soonest = cost, slices.Clone(path)
			}
			return
		}
		n := len(path)
		put := func(slots ...int) { path = append(path[:n], slots...) }
		defer func() { path = path[:n] }()
		l := &links[i]
		fresh := left == l.units && !redone // nothing of this link was placed yet
		from := last + 1
		if fresh && last >= 0 {
			from = int(l.opens[last])
		}
		if redoLeft > 0 {
			for s := from; s < len(slots); s++ {
				put(s)
				try(i, left, s, cost+day(last, s), true, redoLeft-1)
			}
			return
		}
		if l.whole {
			if fresh && last >= 0 && l.closes != nil && l.again > 0 { // do the work before again
				for s := from; s < len(slots); s++ {
					if s < int(l.ready()[last]) {
						continue
					}
					put(s)
					try(i, left, s, cost+day(last, s)+aAgain, true, l.again-1)
				}
			}
			for s := from; s+l.units <= len(slots); s++ {
				if fresh && last >= 0 && l.closes != nil && s > int(l.closes[last]) {
					break
				}
				t := s + l.units - 1
				if l.may[s] == never || slots[t].day != slots[s].day || slots[t].hour != slots[s].hour+int32(l.units-1) {
					continue
				}
				c := cost + day(last, s)
				if l.may[s] == measure {
					c += aMeasure
				}
				if l.gap != nil {
					c += int64(l.gap[t])
				}
				next := 0
				if i+1 < len(links) {
					next = links[i+1].units
				}
				put()
				for u := s; u <= t; u++ {
					path = append(path, u)
				}
				try(i+1, next, t, c, false, 0)
			}
			return
		}
		for s := from; s < len(slots); s++ {
			if l.may[s] == never {
				continue
			}
			c := cost + day(last, s)
			put(s)
			if left > 1 {
				try(i, left-1, s, c, true, 0)
				continue
			}
			next := 0
			if i+1 < len(links) {
				next = links[i+1].units
			}
			try(i+1, next, s, c, false, 0)
		}
	}
	try(0, links[0].units, -1, 0, false, 0)
	return best, soonest, best < noWay
}

// cost reckons the sum of aims of a way from the way itself, and finds what it breaks.
func costOf(t *testing.T, slots []slot, links []link, way []placed) int64 {
	t.Helper()
	var cost int64
	last := -1
	step := func(s int) {
		if s <= last {
			t.Errorf("slot %d after slot %d", s, last)
		}
		if last < 0 || slots[last].day != slots[s].day {
			cost += aDay
		}
		last = s
	}
	for i, p := range way {
		l := &links[i]
		before := last
		if before >= 0 {
			first := append(slices.Clone(p.again), p.slots...)[0]
			if first < int(l.opens[before]) || len(p.again) > 0 && first < int(l.ready()[before]) {
				t.Errorf("link %d begins in slot %d and opens in %d", i, first, l.opens[before])
			}
		}
		if len(p.again) > 0 {
			cost += aAgain
			if len(p.again) != l.again {
				t.Errorf("link %d: done again in %d slots, not %d", i, len(p.again), l.again)
			}
		} else if l.closes != nil && before >= 0 && p.slots[0] > int(l.closes[before]) {
			t.Errorf("link %d begins in slot %d, after %d, and nothing was done again", i, p.slots[0], l.closes[before])
		}
		for _, s := range p.again {
			step(s)
		}
		if len(p.slots) != l.units {
			t.Errorf("link %d: %d slots, not %d", i, len(p.slots), l.units)
		}
		for k, s := range p.slots {
			step(s)
			if (k == 0 || !l.whole) && l.may[s] == never {
				t.Errorf("link %d in slot %d, where it may not be", i, s)
			}
			if l.whole && k > 0 && (slots[s].hour != slots[p.slots[k-1]].hour+1 || slots[s].day != slots[p.slots[k-1]].day) {
				t.Errorf("link %d is torn", i)
			}
		}
		if l.whole && l.may[p.slots[0]] == measure {
			cost += aMeasure
		}
		if l.gap != nil {
			cost += int64(l.gap[p.slots[len(p.slots)-1]])
		}
	}
	return cost
}

func randomSlots(r *rand.Rand, days, most int) []slot {
	var out []slot
	for d := range days {
		from := d*24 + 8 + r.IntN(3)
		for h := range r.IntN(most + 1) {
			out = append(out, slot{int32(from + h), int32(d)})
		}
	}
	return out
}

func randomLinks(r *rand.Rand, slots []slot, count int) []link {
	n := len(slots)
	at := func(hour int32) int32 {
		i, _ := slices.BinarySearchFunc(slots, hour, func(s slot, h int32) int { return int(s.hour - h) })
		return int32(i)
	}
	var out []link
	for range count {
		l := link{units: 1 + r.IntN(3), whole: r.IntN(3) > 0, may: make([]byte, n), opens: make([]int32, n)}
		wait, shut := int32(r.IntN(30)), int32(0)
		long := int32(30)
		if r.IntN(3) == 0 { // a window that opens and closes on one day
			wait, long = int32(r.IntN(2)), 2
		}
		if l.whole && r.IntN(2) == 0 {
			shut = wait + 1 + r.Int32N(long)
			l.again = r.IntN(3)
			l.closes = make([]int32, n)
			if r.IntN(2) == 0 {
				l.hard = make([]int32, n)
			}
		}
		set := wait + int32(r.IntN(20))
		if l.whole && r.IntN(4) == 0 {
			l.gap = make([]int32, n)
		}
		for s := range n {
			l.may[s] = byte(r.IntN(5))
			if l.may[s] > fine {
				l.may[s] = fine
			}
			if !l.whole && l.may[s] == measure {
				l.may[s] = fine
			}
			l.opens[s] = max(at(slots[s].hour+1+wait), int32(s)+1)
			if l.hard != nil {
				l.hard[s] = max(at(slots[s].hour+1+set), int32(s)+1)
			}
			if l.closes != nil {
				l.closes[s] = at(slots[s].hour+1+shut+1) - 1
			}
			if l.gap != nil {
				l.gap[s] = slots[n-1].hour - slots[s].hour
			}
		}
		out = append(out, l)
	}
	return out
}

// slotsOf lists the slots of a way, one after another.
func slotsOf(way []placed) []int {
	var out []int
	for _, p := range way {
		out = append(append(out, p.again...), p.slots...)
	}
	return out
}

// Against every way there is, on small random jobs.
func TestChainIsBest(t *testing.T) {
	r := rand.New(rand.NewPCG(7, 1))
	tried, possible, redone := 0, 0, 0
	for tried < 20000 {
		slots := randomSlots(r, 2+r.IntN(4), 4)
		if len(slots) == 0 || len(slots) > 13 {
			continue
		}
		tried++
		links := randomLinks(r, slots, 1+r.IntN(4))
		want, soonest, ok := every(slots, links)
		way, cost, stuck := chain(slots, links)
		found := stuck < 0
		if before := links[:max(stuck, 0)]; !found && len(before) > 0 {
			if _, _, ok := every(slots, before); !ok {
				t.Fatalf("job %d: stuck at link %d, and already before it", tried, stuck)
			}
		}
		if found {
			stuck = 0
		}
		if _, _, ok := every(slots, links[:stuck+1]); !found && ok {
			t.Fatalf("job %d: link %d is said to be stuck", tried, stuck)
		}
		if ok != found || ok && cost != want {
			t.Fatalf("job %d: %x, %v; every way: %x, %v\n%v\n%+v", tried, cost, found, want, ok, slots, links)
		}
		if !ok {
			continue
		}
		possible++
		if got := costOf(t, slots, links, way); got != cost {
			t.Fatalf("job %d: the way costs %x and is said to cost %x\n%v\n%+v\n%+v", tried, got, cost, slots, links, way)
		}
		if got := slotsOf(way); cost < aAgain && !slices.Equal(got, soonest) {
			t.Fatalf("job %d: %v, and the soonest that is as good is %v\n%v\n%+v", tried, got, soonest, slots, links)
		}
		redone += int(cost / aAgain)
	}
	if possible < 4000 || redone < 200 {
		t.Errorf("%d of %d jobs were possible, %d times work was done again: too few to tell", possible, tried, redone)
	}
}

// The window of the first work closes with slot 2 of four on one day, and the second may only go on in slot 3: it is stuck, or done again in slot 2.
func TestAWindowClosesOnItsDay(t *testing.T) {
	slots := []slot{{8, 0}, {9, 0}, {10, 0}, {11, 0}}
	first := link{units: 1, may: []byte{fine, never, never, never}, opens: make([]int32, 4)}
	second := link{units: 1, whole: true, may: []byte{never, never, never, fine}, opens: []int32{1, 2, 3, 4}, closes: []int32{2, 3, 3, 3}}
	if way, _, stuck := chain(slots, []link{first, second}); stuck != 1 {
		t.Errorf("stuck at %d: %v", stuck, way)
	}
	second.again, second.hard = 1, []int32{2, 3, 4, 4}
	if way, cost, stuck := chain(slots, []link{first, second}); stuck >= 0 || cost != aDay+aAgain || !slices.Equal(slotsOf(way), []int{0, 2, 3}) {
		t.Errorf("stuck at %d: %v, %x", stuck, way, cost)
	}
	second.closes[0] = 3
	if way, _, stuck := chain(slots, []link{first, second}); stuck >= 0 || !slices.Equal(slotsOf(way), []int{0, 3}) {
		t.Errorf("stuck at %d: %v", stuck, way)
	}
}

// A later last start is impossible and the last start itself is not, by every way there is.
func TestLastStarts(t *testing.T) {
	r := rand.New(rand.NewPCG(7, 2))
	tried := 0
	for tried < 1000 {
		slots := randomSlots(r, 2+r.IntN(3), 4)
		if len(slots) == 0 || len(slots) > 11 {
			continue
		}
		tried++
		links := randomLinks(r, slots, 1+r.IntN(3))
		for i, last := range lastStarts(slots, links) {
			rest := slices.Clone(links[i:])
			for s := range slots {
				only := rest[0]
				only.closes, only.opens, only.hard = nil, nil, nil // nothing stands before it
				only.may = make([]byte, len(slots))
				for k := s; k < len(slots); k++ {
					if only.whole && k > s {
						break
					}
					only.may[k] = links[i].may[k]
				}
				rest[0] = only
				_, _, ok := every(slots, rest)
				if ok && s > last || s == last && !ok {
					t.Fatalf("job %d, link %d: from slot %d possible %v, last start %d\n%v\n%+v", tried, i, s, ok, last, slots, links)
				}
			}
		}
	}
}
