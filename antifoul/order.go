package antifoul

import (
	"slices"

	"boatyard.example/bottomwork/compat"
	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

// Task is one piece of work, on the parts that want it at the same point of the order.
type Task struct {
	Parts []string
	Do    finding.Action // the work, or empty when the task puts a coat on
	Grit  string
	Area  quantity.Range[quantity.Area]
	Coat  *Coat  // the layer that the task puts on; zones and area are those of all its parts
	Says  string // what to do, in a painter's words
	Hold  string // what must be true before going on
	Hours quantity.Range[float64]
	Wait  quantity.Duration // that passes after each coat, or after the work, before the next; not given: none
}

// same reports whether two tasks are the same work on different parts.
func (t *Task) same(o *Task) bool {
	if t.Do != o.Do || t.Grit != o.Grit || (t.Coat == nil) != (o.Coat == nil) {
		return false
	}
	if t.Coat == nil {
		return true
	}
	a, b := t.Coat.Layer, o.Coat.Layer
	return a.Coating.Key == b.Coating.Key && a.Colour == b.Colour && a.For == b.For && a.Coats == b.Coats
}

// order lists the work of all parts: first what each surface needs, then masking, the coats from the bottom up, and the places
// where she stood. The same work on several parts is one task where each part's own order allows it.
func order(b *tables.Book, boat Boat, schemes []Scheme, areas []PartArea, pads int, gap bool) []Task {
	area := map[string]quantity.Range[quantity.Area]{}
	for _, a := range areas {
		area[a.Part] = a.Total
	}
	var prepare, paint []Task
	for i := range schemes {
		s := &schemes[i]
		prepare = merge(prepare, preparation(b, boat, s, area[s.Part]))
		paint = merge(paint, coating(b, s))
	}
	out := prepare
	if gap {
		out = append(out, plain(b, finding.Gap)...)
	}
	if len(paint) > 0 {
		out = append(out, plain(b, finding.Mask)...)
	}
	out = append(out, paint...)
	if pads > 0 { // nothing stands on a hull that gets no paint, see Plan
		out = append(out, plain(b, finding.Shift)...)
	}
	return out
}

// preparation lists the work on one part's surface. Every surface is washed first, but for a film that must be known, or
// tried on a spot, before water and dust carry it about.
func preparation(b *tables.Book, boat Boat, s *Scheme, area quantity.Range[quantity.Area]) []Task {
	steps := s.Route.Steps
	at := slices.IndexFunc(steps, func(x finding.Step) bool { return x.Do != finding.Identify && x.Do != finding.TestPatch })
	if at < 0 {
		at = len(steps)
	}
	steps = slices.Insert(slices.Clone(steps), at, finding.Step{Do: finding.Wash})
	var out []Task
	for i, step := range steps {
		if step.Coating != "" || step.Do == finding.Wash && i > at {
			continue // its layer is among the coats; another wash is this one, or part of the abrading
		}
		if row, err := b.Step(step.Do); err == nil {
			out = append(out, Task{Parts: []string{s.Part}, Area: area, Do: step.Do, Grit: step.Grit, Says: row.Says, Hold: row.Hold, Hours: hours(rateOf(boat, s.Part, &row), area, 1), Wait: row.Wait})
		}
	}
	return out
}

// coating lists the coats of a scheme in the order in which they go on.
func coating(b *tables.Book, s *Scheme) []Task {
	var out []Task
	for i := range s.Coats {
		k := s.Coats[i]
		row, _ := b.Step(compat.PutsOn(k.Layer.Coating.Role)) // without its row the work has no hours and no words
		t := Task{Parts: []string{s.Part}, Area: k.Area, Coat: &k, Wait: k.Layer.Coating.OvercoatMin, Hours: hours(row.Hours, k.Area, float64(k.Layer.Coats))}
		if k.Layer.For == compat.Undercoat {
			t.Says, t.Hold = row.Says, row.Hold
		}
		out = append(out, t)
	}
	return out
}

// plain is work that is not counted by the square metre.
func plain(b *tables.Book, do finding.Action) []Task {
	row, err := b.Step(do)
	if err != nil {
		return nil
	}
	t := Task{Do: do, Says: row.Says, Hold: row.Hold, Hours: row.Job}
	if do == finding.Shift {
		t.Hours = quantity.Range[float64]{} // the yard's, not the crew's
	}
	return []Task{t}
}

// merge puts one part's tasks into the list. A task joins the same one of another part if that stands behind the last task it
// joined, so that each part keeps its own order; else it stands before the first task that a later one of the part joins, or at
// the end.
func merge(list, part []Task) []Task {
	from := 0 // tasks before this one are done for the part
	for i := range part {
		at := find(list, from, part[i])
		if at < len(list) {
			list[at].join(part[i])
		} else {
			for _, later := range part[i+1:] {
				if j := find(list, from, later); j < len(list) {
					at = j
					break
				}
			}
			list = slices.Insert(list, at, part[i])
		}
		from = at + 1
	}
	return list
}

// find returns the place of the same work in the list, from the given place on; the list's length when it is not there.
func find(list []Task, from int, t Task) int {
	for from < len(list) && !list[from].same(&t) {
		from++
	}
	return from
}

// join adds another part's share of the same work.
func (t *Task) join(o Task) {
	t.Parts = append(t.Parts, o.Parts...)
	t.Area = plusArea(t.Area, o.Area)
	t.Hours = quantity.Range[float64]{Low: t.Hours.Low + o.Hours.Low, Typical: t.Hours.Typical + o.Hours.Typical, High: t.Hours.High + o.Hours.High}
	if t.Coat != nil {
		k := *t.Coat
		k.Zones = append(append([]string(nil), k.Zones...), o.Coat.Zones...)
		k.Area = plusArea(k.Area, o.Coat.Area)
		k.Litres, k.Fills = plusLitres(k.Litres, o.Coat.Litres), plusLitres(k.Fills, o.Coat.Fills)
		t.Coat = &k
	}
}

// hours is the time of one hand: hours a square metre × area, which must be given, × coats, end by end.
func hours(rate quantity.Range[float64], area quantity.Range[quantity.Area], coats float64) quantity.Range[float64] {
	m2 := func(a quantity.Area) float64 { return a.Float(quantity.SquareMetre) }
	return quantity.Range[float64]{Low: rate.Low * m2(area.Low) * coats, Typical: rate.Typical * m2(area.Typical) * coats, High: rate.High * m2(area.High) * coats}
}
