package antifoul

import (
	"fmt"
	"slices"
	"strings"

	"boatyard.example/bottomwork/antifoul/calendar"
	"boatyard.example/bottomwork/antifoul/weather"
	"boatyard.example/bottomwork/compat"
	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

// Turn is one task of the plan of days: work on surfaces, a coat on each part that gets one at the same time, other work, the shift.
type Turn struct {
	calendar.Task
	Do    finding.Action // the work; empty for a coat and for other work
	Coats []TurnCoat
	Patch bool // on the places where she stood
}

// TurnCoat is one coat of one part.
type TurnCoat struct {
	Part  string
	Layer compat.Layer
	Nth   int // of the coats of its layer
	area  quantity.Range[quantity.Area]
}

// crewing turns the job's work into turns, at the low, typical or high end of its hours.
type crewing struct {
	book  *tables.Book
	boat  Boat
	by    tables.Loss
	hours func(quantity.Range[float64]) float64 // of one hand, the end that is planned with
	bare  map[string]bool                       // parts whose first coat goes on a surface that gives off air
}

func typicalEnd(r quantity.Range[float64]) float64 { return r.Typical }
func slowEnd(r quantity.Range[float64]) float64    { return r.High }

// turns lists the work in the order in which one crew does it: surfaces part by part, other work before the paint, masking, the coats from the
// bottom up, the shift of stands and the places under them, other work after it.
//
// A turn puts one coat on every part that is ready for one. Undercoats are lined up so that all parts get their last one together, and the
// coats above so that all parts get their first one together: so each coat stands directly before the one that goes over it.
// Basis: derived.
func (w crewing) turns(j *Job, schemes []Scheme) []Turn {
	var out []Turn
	for _, t := range j.Order {
		if t.Coat != nil || t.Do == finding.Shift || t.Do == finding.Mask {
			continue
		}
		out = append(out, w.prepared(t))
	}
	other := func(after bool) {
		for _, o := range w.boat.Work.Other {
			if o.After.True() == after {
				out = append(out, Turn{Task: calendar.Task{Name: o.Name, Hours: w.crew(o.Hours), On: o.On}})
			}
		}
	}
	w.dry(out)
	other(false)
	for _, t := range j.Order {
		if t.Do == finding.Mask {
			out = append(out, w.prepared(t))
		}
	}
	out = append(out, w.coats(schemes)...)
	out = append(out, w.patches(j, schemes)...)
	other(true)
	return out
}

// dry lets the surface dry after the last work that leaves it wet.
func (w crewing) dry(turns []Turn) {
	for i := len(turns) - 1; i >= 0; i-- {
		row, _ := w.book.Step(turns[i].Do)
		if row.Dries.Given() {
			if !turns[i].Wait.Given() {
				turns[i].Wait = row.Dries
			}
			return
		}
	}
}

// crew is the time of the crew for hours of one hand.
func (w crewing) crew(oneHand float64) float64 { return oneHand / float64(max(1, w.boat.Work.Hands)) }

// prepared is work that puts nothing on.
func (w crewing) prepared(t Task) Turn {
	row, _ := w.book.Step(t.Do) // the task was made of it
	name := row.Name
	if len(t.Parts) > 0 {
		name += " (" + strings.Join(t.Parts, ", ") + ")"
	}
	return Turn{Do: t.Do, Task: calendar.Task{Name: name, Hours: w.crew(w.hours(t.Hours)), Wait: t.Wait, Dry: row.Dry}}
}

// coats are the turns of the coats of all parts.
func (w crewing) coats(schemes []Scheme) []Turn {
	var under, top [][]TurnCoat // of each scheme
	for _, s := range schemes {
		var u, t []TurnCoat
		for _, k := range s.Coats {
			for n := range k.Layer.Coats {
				c := TurnCoat{Part: s.Part, Layer: k.Layer, Nth: n + 1, area: k.Area}
				if k.Layer.For == compat.Undercoat {
					u = append(u, c)
				} else {
					t = append(t, c)
				}
			}
		}
		under, top = append(under, u), append(top, t)
	}
	var out []Turn
	for r := range deepest(under) {
		var on []TurnCoat
		var next []*TurnCoat
		for i := range schemes {
			if at := r - deepest(under) + len(under[i]); at >= 0 {
				on, next = append(on, under[i][at]), append(next, follower(under[i], top[i], at))
			}
		}
		out = append(out, w.coat(on, next))
	}
	for r := range deepest(top) {
		var on []TurnCoat
		var next []*TurnCoat
		for i := range schemes {
			if r < len(top[i]) {
				on, next = append(on, top[i][r]), append(next, follower(top[i], nil, r))
			}
		}
		out = append(out, w.coat(on, next))
	}
	return out
}

func deepest(lists [][]TurnCoat) int {
	n := 0
	for _, l := range lists {
		n = max(n, len(l))
	}
	return n
}

// follower is the coat that goes over the one at the place; nil when none does.
func follower(list, then []TurnCoat, at int) *TurnCoat {
	switch {
	case at+1 < len(list):
		return &list[at+1]
	case len(then) > 0:
		return &then[0]
	}
	return nil
}

// coat is one turn: what goes on, and over each of it what comes next.
func (w crewing) coat(on []TurnCoat, next []*TurnCoat) Turn {
	t := Turn{Coats: on}
	var what []string
	parts := map[string][]string{} // that get the same
	for i, c := range on {
		t.Hours += w.crew(w.hours(w.rolled(c)))
		l := w.layer(c, next[i])
		if at := slices.IndexFunc(t.Layers, func(o calendar.Layer) bool {
			return o.Coating.Key == l.Coating.Key && o.Closes.Given() == l.Closes.Given() && o.Stands.Given() == l.Stands.Given()
		}); at >= 0 {
			o := &t.Layers[at]
			o.On, o.Again, o.Falling = append(o.On, l.On...), o.Again+l.Again, o.Falling || l.Falling
		} else {
			t.Layers = append(t.Layers, l)
		}
		name := c.What()
		if parts[name] == nil {
			what = append(what, name)
		}
		parts[name] = append(parts[name], c.Part)
	}
	for i, name := range what {
		what[i] = strings.Join(parts[name], ", ") + ": " + name
	}
	t.Name = strings.Join(what, "; ")
	return t
}

// What names the coat: its layer's purpose, and which of its coats it is.
func (c TurnCoat) What() string {
	name := map[compat.Purpose]string{compat.Undercoat: c.Layer.Coating.Name, compat.Signal: "signal coat", compat.Extra: "extra coat", compat.Working: "working coat"}[c.Layer.For]
	if c.Layer.Coats > 1 {
		return fmt.Sprintf("%s %d of %d", name, c.Nth, c.Layer.Coats)
	}
	return name
}

// rolled is the time of one hand for one coat.
func (w crewing) rolled(c TurnCoat) quantity.Range[float64] {
	do := finding.Prime
	if c.Layer.Coating.Role == tables.Barrier {
		do = finding.Barrier
	}
	rate, _ := w.book.Hours(do) // without the row the work has no hours
	return hours(rate, c.area, 1)
}

// layer is what the calendar asks of the coat.
func (w crewing) layer(c TurnCoat, next *TurnCoat) calendar.Layer {
	k := c.Layer.Coating
	at := slices.IndexFunc(w.boat.Parts, func(p compat.Part) bool { return p.Name == c.Part })
	material, _ := w.book.Material(w.boat.Parts[at].Material) // checked with the boat
	l := calendar.Layer{
		Coat:  weather.Coat{Coating: k, On: []tables.Material{material}, By: w.by, Falling: w.bare[c.Part] && c.Layer.For == compat.Undercoat && c.Nth == 1},
		Opens: k.OvercoatMin,
		Cures: k.LaunchMin,
	}
	if next == nil {
		l.Stands = k.AirNew
		l.Late = k.AirNew.Given() && days(k.AirNew) <= factor(w.book, "late-coat")
		return l
	}
	if l.Closes = compat.Closes(next.Layer.Coating, k); l.Closes.Given() {
		rate, _ := w.book.Hours(finding.Abrade)
		l.Again = w.crew(w.hours(hours(rate, c.area, 1)))
	}
	return l
}

// breathing lists the parts whose first coat goes on a bare surface that gives off air when it grows warmer: timber, a laminate that was opened
// to dry.
func breathing(b *tables.Book, boat Boat, schemes []Scheme) map[string]bool {
	out := map[string]bool{}
	for _, s := range schemes {
		at := slices.IndexFunc(boat.Parts, func(p compat.Part) bool { return p.Name == s.Part })
		m, _ := b.Material(boat.Parts[at].Material) // checked with the boat
		out[s.Part] = len(s.Route.Keeps) == 0 && (m.Breathes || does(s, finding.DryOut))
	}
	return out
}

// patches are the turns on the places under stands, blocks and chains: after the yard has shifted them, or in the slings on the day before the
// launch, where one working coat of antifouling goes on and nothing else.
func (w crewing) patches(j *Job, schemes []Scheme) []Turn {
	if len(j.Patches) == 0 {
		return nil
	}
	row, _ := w.book.Step(finding.Shift)
	shift := Turn{Do: finding.Shift, Task: calendar.Task{Name: row.Name, Yard: true, Hours: w.hours(row.Job), On: w.boat.Work.Shift}}
	slings := w.boat.Work.Slings.True()
	if slings {
		if d := w.boat.Work.Launch; d.Given() && !w.boat.Work.LaunchOpen.True() && !shift.On.Given() {
			shift.On = d.AddDays(-1)
		}
	}
	out := []Turn{shift}
	var rounds [][]TurnCoat // of each part
	var parts []string
	for _, p := range j.Patches {
		if slings && (p.Coating.Role != tables.Antifouling || p.For != compat.Working) {
			continue
		}
		coats := laidOn(schemes, p)
		if coats == 0 {
			continue
		}
		if slings {
			coats = 1 // between the lift and the water there is time for one
		}
		i := slices.Index(parts, p.Part)
		if i < 0 {
			i, parts, rounds = len(parts), append(parts, p.Part), append(rounds, nil)
		}
		for n := range coats {
			rounds[i] = append(rounds[i], TurnCoat{Part: p.Part, Layer: compat.Layer{Coating: p.Coating, Colour: p.Colour, Coats: coats, For: p.For}, Nth: n + 1, area: p.Area})
		}
	}
	if rate, ok := w.book.Hours(finding.Abrade); ok {
		name, _ := w.book.Step(finding.Abrade)
		out = append(out, Turn{Do: finding.Abrade, Patch: true, Task: calendar.Task{Name: name.Name + " (places where she stood)", Wait: name.Dries, Hours: w.crew(w.hours(hours(rate, j.Pads.Area, 1)))}})
	}
	for r := range deepest(rounds) {
		var on []TurnCoat
		var next []*TurnCoat
		for i := range rounds {
			if at := r - deepest(rounds) + len(rounds[i]); at >= 0 {
				on, next = append(on, rounds[i][at]), append(next, follower(rounds[i], nil, at))
			}
		}
		t := w.coat(on, next)
		t.Patch, t.Name = true, "places where she stood, "+t.Name
		out = append(out, t)
	}
	return out
}

// laidOn is how many coats of the layer the schemes put on the part; 0 where it was left out.
func laidOn(schemes []Scheme, p Patched) int {
	for _, s := range schemes {
		for _, k := range s.Coats {
			if s.Part == p.Part && k.Layer.For == p.For && k.Layer.Coating.Key == p.Coating.Key {
				return k.Layer.Coats
			}
		}
	}
	return 0
}
