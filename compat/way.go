package compat

import (
	"math"
	"slices"

	"github.com/shopspring/decimal"

	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

// way is one route being built: work and undercoats on top of the layers kept.
type way struct {
	*Surface
	keeps    Stack
	adds     Stack
	steps    []finding.Step
	findings finding.List
	said     int                     // how many of the findings hold whatever was found
	barred   finding.List            // what makes it no way
	on       *Slate                  // where it is written without facts and bases; nil: it is told whole
	to       *draft                  // of the slate
	spent    quantity.Range[float64] // hours of the first steps
	fixed    int                     // how many these are; none of a way that keeps what was found
}

// deepest bounds undercoats below undercoats: primer, barrier, tie coat and one to spare.
const deepest = 4

// settle counts the hours of the steps of a prepared way, once for all that go on from it.
func (w *way) settle(b *tables.Book) {
	w.spent, w.fixed = effort(b, w.steps), len(w.steps)
}

// again returns a way that begins as w does and leaves w as it is.
func (w *way) again() way {
	return way{
		Surface: w.Surface, keeps: slices.Clip(w.keeps), adds: slices.Clip(w.adds), steps: slices.Clip(w.steps),
		findings: slices.Clip(w.findings), barred: slices.Clip(w.barred), spent: w.spent, fixed: w.fixed,
	}
}

// begin returns a way that goes on from the prepared one, for a coating of which the findings always hold on every way. A draft of a slate takes it.
func (w *way) begin(always, because finding.List, on *Slate, to *draft) way {
	if on != nil {
		to.findings = append(append(to.findings[:0], always...), w.findings...)
		to.steps, to.adds, to.barred = append(to.steps[:0], w.steps...), append(to.adds[:0], w.adds...), append(to.barred[:0], w.barred...)
		return way{Surface: w.Surface, keeps: slices.Clip(w.keeps), adds: to.adds, steps: to.steps, findings: to.findings, said: len(always), barred: to.barred, spent: w.spent, fixed: w.fixed, on: on, to: to}
	}
	next := w.again()
	all := make(finding.List, 0, len(always)+len(because)+len(w.findings)+2)
	all = append(all, always...)
	for _, f := range because {
		f.Verdict, f.First = finding.Needs, []finding.Step{{Do: finding.Strip}}
		all = append(all, f)
	}
	all = append(all, w.findings...)
	next.findings, next.said = all, len(always)
	return next
}

// keep builds the way that leaves everything found in its place; false when it is no way, with what bars it.
func (s *Surface) keep(want *tables.Coating, always finding.List, on *Slate, to *draft) (w way, ok bool) {
	start := &s.stays
	if want.Role == tables.Bare {
		start = &s.left
	}
	if len(start.barred) > 0 {
		return *start, false
	}
	w = start.begin(always, nil, on, to)
	switch {
	case want.Role == tables.Bare || s.sealed || !s.asksBarrier(want):
		ok = w.ready(want, 0)
	case s.depth < len(s.found):
		w.barred = atLeast(aboveBarrier(nil, &s.m, want, s.found), finding.Needs)
	default:
		ok = w.put(s.m.With, missing(&s.m, w.keeps), 0) && w.ready(want, 0)
	}
	if !ok {
		return w, ok
	}
	if bad := buried(nil, w.b, want, on, w.keeps, w.adds); len(bad) > 0 {
		w.barred, ok = append(w.barred, bad...), false
	}
	return w, ok
}

// start is the prepared way that a coating begins with once what was found is stripped.
func (s *Surface) start(want *tables.Coating) *way {
	switch {
	case len(s.primed.keeps) == 0 && want.Role == tables.Bare && s.m.Barrier != tables.OverBarrier:
		return &s.stripped
	case len(s.primed.keeps) == 0 && want.Key == s.m.Primer:
		return &s.prepared // the primer is the coat wanted
	case !s.sealedStripped && s.asksBarrier(want):
		return &s.barriered
	}
	return &s.primed
}

// strip builds the way over sound epoxy, or over the bare surface; because says why nothing else is a way.
func (s *Surface) strip(want *tables.Coating, start *way, always, because finding.List, on *Slate, to *draft) way {
	w := start.begin(always, because, on, to)
	if len(w.barred) == 0 {
		w.ready(want, 0)
	}
	return w
}

// asksBarrier reports whether the coating wanted, the material or the owner asks for a barrier below it. An undercoat is part of it, or goes below it.
func (s *Surface) asksBarrier(want *tables.Coating) bool {
	return s.m.Takes(want.Biocide) == tables.OverBarrier || s.m.Barrier == tables.OverBarrier && (want.Role == tables.Antifouling || want.Role == tables.Bare) ||
		s.m.Barrier == wanted && want.Role == tables.Antifouling
}

// work adds a step, unless the same work stands there since the last coat. What a film holds is found out before anything touches it, and
// what lies on a film with tin is scuffed wet.
func (w *way) work(s finding.Step) {
	if s.Do == finding.Abrade && len(w.adds) == 0 && w.keeps.mayHoldTin() {
		s.Do, s.Grit = finding.WetScuff, ""
	}
	for i := len(w.steps) - 1; i >= 0; i-- {
		o := &w.steps[i]
		if lays(o.Do) {
			break
		}
		if o.Do == s.Do {
			if o.Grit == "" && s.Grit != "" {
				w.steps = slices.Clone(w.steps) // they may be those of a prepared way
				w.steps[i].Grit = s.Grit
			}
			return
		}
	}
	if s.Do == finding.Identify {
		w.steps = slices.Insert(slices.Clone(w.steps), 0, s) // it is asked for what was found only, before anything is laid
		w.fixed, w.spent = 0, quantity.Range[float64]{}
		return
	}
	w.steps = append(w.steps, s)
}

// mayHoldTin reports whether a layer of the stack holds organotin, or nobody knows what it is.
func (s Stack) mayHoldTin() bool {
	return slices.ContainsFunc(s, func(l Layer) bool { return mayHoldTin(&l.Coating) })
}

// top is the layer that the next coat goes on.
func (w *way) top() *Layer {
	switch {
	case len(w.adds) > 0:
		return &w.adds[len(w.adds)-1]
	case len(w.keeps) > 0:
		return &w.keeps[len(w.keeps)-1]
	}
	return &w.naked
}

// ready adds the work, and the undercoats, that make the top layer take the next coat.
func (w *way) ready(next *tables.Coating, depth int) bool {
	top := w.top()
	before := len(w.findings)
	all := over(w.findings, w.b, next, top, w.on)
	fs := all[before:]
	free := len(w.barred)
	if w.barred = barring(w.barred, fs); len(w.barred) > free {
		return false
	}
	w.findings = all
	laid := false
	for i := range fs {
		for _, s := range fs[i].First {
			if !lays(s.Do) {
				w.work(s)
				continue
			}
			if !w.put(s.Coating, quantity.Range[quantity.Film]{}, depth+1) {
				return false
			}
			laid = true
		}
	}
	if !laid {
		return true
	}
	if depth >= deepest {
		w.barred = append(w.barred, finding.Finding{Rule: RuleUnwritten, Verdict: finding.Ask, About: next.Name, Against: top.Coating.Name})
		return false
	}
	return w.ready(next, depth+1)
}

// put lays an undercoat: to the film given, else in its own least number of coats.
func (w *way) put(key string, film quantity.Range[quantity.Film], depth int) bool {
	c, err := w.b.Coating(key)
	if err != nil {
		w.barred = append(w.barred, finding.Finding{Rule: RuleUnwritten, Verdict: finding.Ask, About: key, Against: w.m.Name})
		return false
	}
	if bad := onSurface(nil, finding.Forbidden, face{}, &w.m, &c, w.on); len(bad) > 0 {
		w.barred = append(w.barred, bad...)
		return false
	}
	if !w.ready(&c, depth) {
		return false
	}
	n := max(1, c.Coats)
	if film.Typical.Given() {
		if c.Role == tables.Barrier && barrierFilm(w.keeps).Given() {
			n = 1 // of a barrier that lies there only what is missing
		}
		if c.Film.Typical.Given() {
			n = max(n, int(math.Ceil(film.Typical.Float(quantity.Micrometre)/c.Film.Typical.Float(quantity.Micrometre))))
		}
	} else {
		film = times(c.Film, n)
	}
	w.steps = append(w.steps, finding.Step{Do: PutsOn(c.Role), Coating: c.Key, Film: film, Coats: n})
	w.adds = append(w.adds, Layer{Coating: c, Film: film, State: tables.Sound, Coats: n, Age: inTime(&c), For: Undercoat})
	if w.to != nil { // its room grew
		w.to.adds = w.adds
	}
	return true
}

// route closes the way to the coating wanted: laminate, metal, hours.
func (w *way) route(want *tables.Coating) Route {
	r := Route{Steps: slices.Clip(w.steps), Keeps: slices.Clip(w.keeps), Adds: slices.Clip(w.adds), Findings: w.findings}
	if w.on == nil { // none of the barrier's findings is forbidden or asked
		r.Findings = slices.Insert(r.Findings, w.said, aboveBarrier(nil, &w.m, want, w.keeps, w.adds)...)
	}
	if w.part.Laminate == "wet" {
		r.dryOut(&w.m, want)
		r.Effort = effort(w.b, r.Steps)
		return r
	}
	r.Effort = w.spent
	spend(&r.Effort, w.b, r.Steps[w.fixed:])
	return r
}

// dryOut puts the drying of a wet laminate before the first coat, where any coat is two-pack; after the weeks that it takes the surface is
// washed and abraded again.
func (r *Route) dryOut(m *tables.Material, want *tables.Coating) {
	var shuts *tables.Coating
	if want.Packs == 2 {
		shuts = want
	}
	for i := len(r.Adds) - 1; i >= 0; i-- {
		if r.Adds[i].Coating.Packs == 2 {
			shuts = &r.Adds[i].Coating
		}
	}
	if shuts == nil {
		return
	}
	at := 0
	for at < len(r.Steps) && !lays(r.Steps[at].Do) {
		at++
	}
	again := []finding.Step{{Do: finding.DryOut}, {Do: finding.Wash}, {Do: finding.Abrade}}
	for _, s := range r.Steps[:at] {
		if s.Do == finding.Abrade {
			again[2].Grit = s.Grit
		}
	}
	r.Steps = slices.Concat(r.Steps[:at], again, r.Steps[at:])
	r.Findings = closed(append(r.Findings, wet(shuts, m)), m, r.Keeps)
}

// inTime is an age inside the window of the coat: the earliest.
func inTime(c *tables.Coating) quantity.Duration {
	if c.OvercoatMin.Given() {
		return c.OvercoatMin
	}
	return quantity.Hour.N(0)
}

// times is the film of n coats.
func times(film quantity.Range[quantity.Film], n int) quantity.Range[quantity.Film] {
	if n == 1 {
		return film
	}
	k := decimal.NewFromInt(int64(n))
	return quantity.Range[quantity.Film]{Low: film.Low.Scale(k), Typical: film.Typical.Scale(k), High: film.High.Scale(k)}
}

// atLeast returns the findings with the verdict v or worse.
func atLeast(l finding.List, v finding.Verdict) finding.List {
	var out finding.List
	for i := range l {
		if l[i].Verdict >= v {
			out = append(out, l[i])
		}
	}
	return out
}

// barring adds the findings that make no way: what is forbidden, and what nobody knows.
func barring(out, l finding.List) finding.List {
	for i := range l {
		if l[i].Verdict == finding.Forbidden || l[i].Verdict == finding.Ask {
			out = append(out, l[i])
		}
	}
	return out
}
