package antifoul

import (
	"fmt"
	"math"
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

	Section, Sections int // of a metal surface that is blasted and primed piece by piece, each within its day; 0: the whole surface
}

// TurnCoat is one coat of one part.
type TurnCoat struct {
	Part  string
	Layer compat.Layer
	Nth   int  // of the coats of its layer
	Again bool // what it goes over was primed long before, so it is abraded first
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

// turns lists the work in the order in which one crew does it: surfaces part by part, other work before the paint, masking, blasting with its
// primer, the coats from the bottom up, the shift of stands and the places under them, other work after it.
//
// A turn puts one coat on every part that is ready for one. Undercoats are lined up so that all parts get their last one together, and the
// coats above so that all parts get their first one together: so each coat stands directly before the one that goes over it. What is blasted is
// primed on the same day, in sections that a day holds; nothing wet is done after it.
// Basis: derived.
func (w crewing) turns(j *Job, schemes []Scheme) []Turn {
	var out, masks []Turn
	blast := Task{Do: finding.Blast}
	for _, t := range j.Order {
		switch {
		case t.Coat != nil || t.Do == finding.Shift || t.Do == finding.DryOut && w.leftOpen(t, schemes):
		case t.Do == finding.Mask:
			masks = append(masks, w.prepared(t))
		case t.Do == finding.Blast:
			blast.join(t)
		default:
			out = append(out, w.prepared(t))
		}
	}
	w.dry(out)
	other := func(after bool) {
		for _, o := range w.boat.Work.Other {
			if o.After.True() == after {
				out = append(out, Turn{Task: calendar.Task{Name: o.Name, Hours: w.crew(o.Hours), On: o.On}})
			}
		}
	}
	other(false)
	out = append(out, masks...)
	under, top := coatsOf(schemes)
	if len(blast.Parts) > 0 {
		out = append(out, w.blasted(blast, schemes, under, top)...)
	}
	out = append(out, w.coats(under, top)...)
	if patches := w.patches(j, schemes); len(patches) > 0 {
		for i := len(out) - 1; i >= 0; i-- { // a fresh film carries a pad badly
			if len(out[i].Coats) > 0 {
				out[i].Wait, _ = quantity.Hour.Near(factor(w.book, "stand-after"), 0, quantity.Up)
				break
			}
		}
		out = append(out, patches...)
	}
	other(true)
	return out
}

// leftOpen reports whether no part of the task has a two-pack coat in the schemes any more, so that its laminate may go on drying under what goes on.
func (w crewing) leftOpen(t Task, schemes []Scheme) bool {
	return !slices.ContainsFunc(schemes, func(s Scheme) bool {
		return slices.Contains(t.Parts, s.Part) && slices.ContainsFunc(s.Coats, func(k Coat) bool { return k.Layer.Coating.Packs == 2 })
	})
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

// coatsOf lists the single coats of each scheme: undercoats, and what goes over them.
func coatsOf(schemes []Scheme) (under, top [][]TurnCoat) {
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
	return under, top
}

// blasted is blasting with the first undercoat, in as many sections as days are needed. That coat is taken out of the undercoats.
func (w crewing) blasted(t Task, schemes []Scheme, under, top [][]TurnCoat) []Turn {
	var on []TurnCoat
	var next []*TurnCoat
	for i, s := range schemes {
		if slices.Contains(t.Parts, s.Part) && len(under[i]) > 0 {
			on, next = append(on, under[i][0]), append(next, follower(under[i], top[i], 0))
			under[i] = under[i][1:]
		}
	}
	for i, s := range schemes { // the first coats go on at once; who has fewer waits, and is past his window by then
		if !slices.Contains(t.Parts, s.Part) || len(under[i]) == deepest(under) {
			continue
		}
		if len(under[i]) > 0 {
			under[i] = slices.Clone(under[i])
			under[i][0].Again = true
		} else if len(top[i]) > 0 {
			top[i] = slices.Clone(top[i])
			top[i][0].Again = true
		}
	}
	if len(on) == 0 {
		return []Turn{w.prepared(t)}
	}
	whole := w.coat(on, next)
	hours := whole.Hours + w.crew(w.hours(t.Hours))
	n := max(1, int(math.Ceil(hours/max(1, w.boat.Work.LongestDay())-1e-9)))
	row, _ := w.book.Step(t.Do) // the task was made of it
	var out []Turn
	for i := range n {
		x := whole
		x.Do, x.Section, x.Sections = t.Do, i+1, n
		x.Hours, x.Dry = hours/float64(n), row.Dry
		x.Name = row.Name + " and prime: " + whole.Name
		if n > 1 {
			x.Name = fmt.Sprintf("%s, section %d of %d", x.Name, i+1, n)
		}
		if i+1 < n { // the next section lies beside it, not over it
			x.Layers = slices.Clone(whole.Layers)
			for k := range x.Layers {
				x.Layers[k].Opens, x.Layers[k].Closes = quantity.Duration{}, quantity.Duration{}
			}
		}
		out = append(out, x)
	}
	return out
}

// coats are the turns of the coats of all parts, each part's in its order.
func (w crewing) coats(under, top [][]TurnCoat) []Turn {
	var out []Turn
	for r := range deepest(under) {
		var on []TurnCoat
		var next []*TurnCoat
		for i := range under {
			if at := r - deepest(under) + len(under[i]); at >= 0 {
				on, next = append(on, under[i][at]), append(next, follower(under[i], top[i], at))
			}
		}
		out = append(out, w.coat(on, next))
	}
	for r := range deepest(top) {
		var on []TurnCoat
		var next []*TurnCoat
		for i := range top {
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
		if c.Again {
			rate, _ := w.book.Hours(finding.Abrade)
			t.Hours += w.crew(w.hours(hours(rate, c.area, 1)))
		}
		l := w.layer(c, next[i])
		if at := slices.IndexFunc(t.Layers, func(o calendar.Layer) bool {
			return o.Coating.Key == l.Coating.Key && o.Closes.Equal(l.Closes) && o.Stands.Equal(l.Stands) // what goes over it decides when it closes
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
		name = fmt.Sprintf("%s %d of %d", name, c.Nth, c.Layer.Coats)
	}
	if c.Again {
		name += ", after abrading"
	}
	return name
}

// rolled is the time of one hand for one coat.
func (w crewing) rolled(c TurnCoat) quantity.Range[float64] {
	rate, _ := w.book.Hours(compat.PutsOn(c.Layer.Coating.Role)) // without the row the work has no hours
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
		l.Hard, _ = quantity.Hour.Near(factor(w.book, "abrade-after"), 0, quantity.Up)
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
