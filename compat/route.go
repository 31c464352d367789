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
// its findings are forbidden.
//
// Considered are to keep what is there, where each layer's state, the material and the coat over coat allow it; and to strip, down to
// sound two-pack epoxy where that lies on the surface, else to the bare surface, with primer and barrier as the material and the
// coating ask. No way lifts a rule of metal, and none puts a barrier on that nothing asks for. A pair that nobody has written
// down is no way. For "no coating" the old film may stay and nothing is claimed for it.
//
//	effort = Σ hours of the step × coats of the step
//
// Basis: common practice; hours by memory of practice.
func Routes(b *tables.Book, p Part, want tables.Coating) []Route {
	m, err := b.Material(p.Material)
	if err != nil {
		return []Route{{Findings: finding.List{
			{Rule: ruleMaterialUnknown, Verdict: finding.Ask, About: want.Name, Against: p.Material},
			{Rule: ruleRouteNone, Verdict: finding.Forbidden, About: want.Name, Against: p.Name},
		}}}
	}
	always := onSurface(b, &m, &want, p.Zone)
	if always.Worst() == finding.Forbidden {
		return []Route{{Keeps: slices.Clip(p.Found), Findings: always}}
	}
	if m.Painted == tables.Never {
		return []Route{unpainted(b, &p, always)}
	}
	found := p.Found
	if len(found) == 0 {
		found = Stack{unknownLayer(b)}
		always = append(always, notReported(&p))
	}
	j := journey{b: b, m: &m, part: &p, want: &want, found: found, always: always}
	var out []Route
	var barred finding.List
	if !found[0].bare() {
		w := j.start(found)
		if w.keep() {
			out = append(out, w.route())
		} else {
			barred = w.barred
		}
	}
	if w := j.strip(barred); len(w.barred) == 0 {
		out = append(out, w.route())
	} else {
		barred = append(barred, w.barred...)
	}
	if len(out) == 0 {
		none := finding.Finding{Rule: ruleRouteNone, Verdict: finding.Forbidden, About: want.Name, Against: p.Name}
		return []Route{{Keeps: slices.Clip(p.Found), Findings: slices.Concat(always, barred, finding.List{none})}}
	}
	slices.SortStableFunc(out, func(a, b Route) int {
		return cmp.Or(cmp.Compare(a.Effort.Typical, b.Effort.Typical), cmp.Compare(a.Adds.coats(), b.Adds.coats()), strings.Compare(a.words(), b.words()))
	})
	return out
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
func (s Stack) coats() int {
	n := 0
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
	for _, s := range steps {
		row, err := b.Step(s.Do)
		if err != nil {
			continue // a book of one's own without the row: the work has no hours
		}
		n := float64(max(1, s.Coats))
		sum.Low += float64(row.Hours.Low * n)
		sum.Typical += float64(row.Hours.Typical * n)
		sum.High += float64(row.Hours.High * n)
	}
	return sum
}
