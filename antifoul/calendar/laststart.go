package calendar

// lastStarts returns for each link the last slot in which it may begin so that all after it can still be placed, done again or not; -1 when
// there is none.
func lastStarts(slots []slot, links []link) []int {
	n := len(slots)
	out := make([]int, len(links))
	can := make([]bool, n) // the work may end in the slot
	for s := range can {
		can[s] = true
	}
	for i := len(links) - 1; i >= 0; i-- {
		l := &links[i]
		starts := l.starts(slots, can)
		out[i] = -1
		count := make([]int, n+1) // starts before the slot
		for s, ok := range starts {
			count[s+1] = count[s]
			if ok {
				count[s+1]++
				out[i] = s
			}
		}
		for e := range n {
			first, last := opensAt(l.opens, e), n-1
			if l.closes != nil {
				last = min(last, int(l.closes[e]))
			}
			can[e] = first <= last && count[last+1] > count[first] || l.redo() > 0 && out[i]-opensAt(l.ready(), e) >= l.redo()
		}
	}
	return out
}

// starts tells in which slots the work may begin so that it ends where it can.
func (l *link) starts(slots []slot, can []bool) []bool {
	n := len(slots)
	out := make([]bool, n)
	if l.whole {
		for s := range n {
			t := s + l.units - 1
			out[s] = t < n && l.may[s] != never && can[t] && slots[t].hour-slots[s].hour == int32(l.units-1) && slots[t].day == slots[s].day
		}
		return out
	}
	var open []int // slots in which it may be worked on
	last := -1     // index in open of the last in which it may end
	for s := range n {
		if l.may == nil || l.may[s] != never {
			if can[s] {
				last = len(open)
			}
			open = append(open, s)
		}
	}
	for i, s := range open {
		out[s] = i+l.units-1 <= last
	}
	return out
}
