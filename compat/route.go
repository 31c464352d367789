package compat

import (
	"cmp"
	"slices"
	"strings"

	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

// Route is one way from what was found on a part to a surface that takes the coating wanted.
//
// Findings tells all that was judged on the way; what barred another way is told as needs, with strip as its step.
type Route struct {
	Steps    []finding.Step
	Keeps    Stack                   // layers found that stay, bottom to top
	Adds     Stack                   // undercoats that the route puts on, bottom to top
	Effort   quantity.Range[float64] // hours of one hand for a square metre
	Findings finding.List
}

// Routes returns the ways from what was found on the part to a surface that takes the coating wanted, cheapest first: by typical
// hours, then fewer coats put on, then by their steps. There is always at least one; when nothing leads there it has no steps and
// its findings are forbidden. Where a coat asks for an undercoat, and that for another below it, four of them are a way and five are none.
//
// Considered are to keep what is there, where each layer's state, the material and the coat over coat allow it; and to strip, down to
// sound two-pack epoxy where that lies on the surface, else to the bare surface, with primer and barrier as the material and the
// coating ask; the barrier is the one that the row of the material names, and over sound two-pack film that was measured only what is
// missing of it. No way lifts a rule of metal, none lays the coating wanted as an undercoat, and none puts a barrier on that nothing
// asks for. A pair that nobody has written down is no way. For "no coating" the old film may stay and nothing is claimed for it,
// but on a material that keeps growth off by itself, which works bare only.
//
//	effort = Σ hours of the step × coats of the step
//
// Basis: common practice; hours by memory of practice.
func Routes(b *tables.Book, p Part, want tables.Coating) []Route { return On(b, p).Routes(&want) }

// before reports whether the route is better than the other: by typical hours, then fewer coats put on, then by its steps.
func (r *Route) before(o *Route) bool {
	return cmp.Or(cmp.Compare(r.Effort.Typical, o.Effort.Typical), cmp.Compare(r.Adds.coats(), o.Adds.coats()), strings.Compare(r.words(), o.words())) < 0
}

// unpainted is the way of a part that never takes paint: what is on it comes off.
func unpainted(b *tables.Book, p *Part, findings finding.List) Route {
	r := Route{Findings: findings}
	if slices.ContainsFunc(p.Found, func(l Layer) bool { return !l.bare() }) {
		r.Steps = []finding.Step{{Do: finding.Strip}}
		r.Effort = effort(b, r.Steps)
	}
	return r
}

// coats counts the coats of the stack.
func (s Stack) coats() (n int) {
	for i := range s {
		n += s[i].Coats
	}
	return n
}

// words are the keys of the route's steps, for a stable order.
func (r *Route) words() string {
	var w strings.Builder
	for _, s := range r.Steps {
		w.WriteString(string(s.Do) + " " + s.Coating + ";")
	}
	return w.String()
}

// effort sums the hours of the steps.
func effort(b *tables.Book, steps []finding.Step) quantity.Range[float64] {
	var sum quantity.Range[float64]
	spend(&sum, b, steps)
	return sum
}

// spend adds the hours of the steps.
func spend(sum *quantity.Range[float64], b *tables.Book, steps []finding.Step) {
	for i := range steps {
		s := &steps[i]
		hours, ok := b.Hours(s.Do)
		if !ok {
			continue // a book of one's own without the row: the work has no hours
		}
		n := float64(max(1, s.Coats))
		sum.Low += float64(hours.Low * n)
		sum.Typical += float64(hours.Typical * n)
		sum.High += float64(hours.High * n)
	}
}
