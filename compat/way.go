package compat

import (
	"math"
	"slices"

	"github.com/shopspring/decimal"

	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

// journey is what all ways of one question share.
type journey struct {
	b      *tables.Book
	m      *tables.Material
	part   *Part
	want   *tables.Coating
	found  Stack
	always finding.List // holds on every way
	naked  *Layer       // the surface itself, once it is asked for
}

// way is one route being built: work and undercoats on top of the layers kept.
type way struct {
	*journey
	keeps    Stack
	adds     Stack
	steps    []finding.Step
	findings finding.List
	barred   finding.List // what makes it no way
}

// deepest bounds undercoats below undercoats: primer, barrier, tie coat and one to spare.
const deepest = 4

func (j *journey) start(keeps Stack) *way { return &way{journey: j, keeps: keeps} }

// keep builds the way that leaves everything found in its place.
func (w *way) keep() bool {
	if f, thick := tooThick(w.b, w.found); thick && w.want.Role != tables.Bare {
		w.barred = append(w.barred, f)
	}
	for i := range w.found {
		w.stays(i)
	}
	if len(w.barred) > 0 {
		return false
	}
	if w.want.Role == tables.Bare {
		w.work(finding.Step{Do: finding.Wash})
		return w.ready(w.want, 0)
	}
	if epoxyDepth(w.found) < len(w.found) {
		if !w.lacksBarrier() {
			return w.ready(w.want, 0)
		}
		w.barred = append(w.barred, atLeast(aboveBarrier(nil, w.m, w.want, w.found), finding.Needs)...)
		return false
	}
	return w.buildBarrier() && w.ready(w.want, 0)
}

// stays judges whether the found layer may stay on the material, and in the state it is in.
func (w *way) stays(i int) {
	l := &w.found[i]
	if comesOff(w.m, &l.Coating) {
		w.barred = append(w.barred, offFinding(w.m, &l.Coating, finding.Forbidden))
		return
	}
	if holdsCopper(&l.Coating) && w.m.Takes(l.Coating.Biocide) == tables.OverBarrier && !barred(w.m, w.found[:i]) {
		w.barred = append(w.barred, atLeast(aboveBarrier(nil, w.m, &l.Coating, w.found[:i]), finding.Needs)...)
		return
	}
	if i == len(w.found)-1 || w.want.Role == tables.Bare {
		return // the top layer is judged with the coat over it
	}
	if f, ok := onState(w.b, &w.found[i+1].Coating, l); ok && l.State != "" && l.State != tables.NotReported {
		if f.Verdict == finding.Forbidden || f.Verdict == finding.Ask {
			w.barred = append(w.barred, f)
			return
		}
		w.findings = append(w.findings, f)
		for _, s := range f.First {
			w.work(s)
		}
	}
}

// strip builds the way over sound epoxy, or over the bare surface.
func (j *journey) strip(because finding.List) *way {
	depth := epoxyDepth(j.found)
	if depth == len(j.found) {
		depth = 0
	}
	w := j.start(j.found[:depth])
	if !j.found[0].bare() {
		if suspect(j.found[depth:]) {
			w.work(finding.Step{Do: finding.Identify})
		}
		w.work(finding.Step{Do: finding.Strip})
		for _, f := range because {
			f.Verdict, f.First = finding.Needs, []finding.Step{{Do: finding.Strip}}
			w.findings = append(w.findings, f)
		}
	}
	if depth > 0 {
		if w.buildBarrier() {
			w.ready(w.want, 0)
		}
		return w
	}
	w.keeps = nil
	bareWanted := w.want.Role == tables.Bare && w.m.Barrier != tables.OverBarrier
	if bareWanted {
		if j.found[0].bare() {
			w.work(finding.Step{Do: finding.Wash})
		}
		w.ready(w.want, 0)
		return w
	}
	for a := range w.m.Prepare() {
		w.work(finding.Step{Do: a})
	}
	if w.m.Primer != "" && !w.put(w.m.Primer, quantity.Range[quantity.Film]{}, 0) {
		return w
	}
	if w.buildBarrier() {
		w.ready(w.want, 0)
	}
	return w
}

// lacksBarrier reports whether the coating wanted, or the material, asks for a barrier that the layers so far do not make.
func (w *way) lacksBarrier() bool {
	asked := w.m.Takes(w.want.Biocide) == tables.OverBarrier || w.m.Barrier == tables.OverBarrier && w.want.Role != tables.Blacking
	if !asked {
		return false
	}
	if len(w.adds) == 0 {
		return !barred(w.m, w.keeps)
	}
	all := append(w.keeps[:len(w.keeps):len(w.keeps)], w.adds...)
	return !barred(w.m, all)
}

// buildBarrier puts the material's barrier on where one is asked for.
func (w *way) buildBarrier() bool {
	return !w.lacksBarrier() || w.put(w.m.With, w.m.Film, 0)
}

// work adds a step, unless the same work stands there since the last coat.
func (w *way) work(s finding.Step) {
	for i := len(w.steps) - 1; i >= 0; i-- {
		o := &w.steps[i]
		if lays(o.Do) {
			break
		}
		if o.Do == s.Do {
			if o.Grit == "" {
				o.Grit = s.Grit
			}
			return
		}
	}
	if w.steps == nil {
		w.steps = make([]finding.Step, 0, 4)
	}
	w.steps = append(w.steps, s)
}

// top is the layer that the next coat goes on.
func (w *way) top() *Layer {
	switch {
	case len(w.adds) > 0:
		return &w.adds[len(w.adds)-1]
	case len(w.keeps) > 0:
		return &w.keeps[len(w.keeps)-1]
	}
	if w.naked == nil {
		l := bareLayer(w.b)
		w.naked = &l
	}
	return w.naked
}

// ready adds the work, and the undercoats, that make the top layer take the next coat.
func (w *way) ready(next *tables.Coating, depth int) bool {
	top := w.top()
	fs := over(w.b, next, top)
	if bad := barring(fs); len(bad) > 0 {
		w.barred = append(w.barred, bad...)
		return false
	}
	w.findings = append(w.findings, fs...)
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
		w.barred = append(w.barred, finding.Finding{Rule: ruleUnwritten, Verdict: finding.Ask, About: next.Name, Against: top.Coating.Name})
		return false
	}
	return w.ready(next, depth+1)
}

// put lays an undercoat: to the film given, else in its own least number of coats.
func (w *way) put(key string, film quantity.Range[quantity.Film], depth int) bool {
	c, err := w.b.Coating(key)
	if err != nil {
		w.barred = append(w.barred, finding.Finding{Rule: ruleUnwritten, Verdict: finding.Ask, About: key, Against: w.m.Name})
		return false
	}
	if bad := onSurface(w.b, w.m, &c, ""); bad.Worst() == finding.Forbidden {
		w.barred = append(w.barred, bad.At(finding.Forbidden)...)
		return false
	}
	if !w.ready(&c, depth) {
		return false
	}
	n := max(1, c.Coats)
	if film.Typical.Given() {
		if one := c.Film.Typical.Float(quantity.Micrometre); one > 0 {
			n = max(n, int(math.Ceil(film.Typical.Float(quantity.Micrometre)/one)))
		}
	} else {
		film = times(c.Film, n)
	}
	w.steps = append(w.steps, finding.Step{Do: putsOn(c.Role), Coating: c.Key, Film: film, Coats: n})
	w.adds = append(w.adds, Layer{Coating: c, Film: film, State: tables.Sound, Coats: n, Age: inTime(&c), For: Undercoat})
	return true
}

// route closes the way: laminate, metal, hours.
func (w *way) route() Route {
	r := Route{Steps: w.steps, Keeps: slices.Clip(w.keeps), Adds: w.adds}
	r.Findings = append(make(finding.List, 0, len(w.always)+len(w.findings)+2), w.always...)
	below := w.keeps
	if len(w.adds) > 0 {
		below = append(w.keeps[:len(w.keeps):len(w.keeps)], w.adds...)
	}
	r.Findings = aboveBarrier(r.Findings, w.m, w.want, below)
	r.Findings = append(r.Findings, w.findings...)
	if w.part.Laminate == "wet" {
		r.dryOut(w.m, w.want)
	}
	r.Effort = effort(w.b, r.Steps)
	return r
}

// dryOut puts the drying of a wet laminate before the first coat, where any coat is two-pack.
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
	steps := append(make([]finding.Step, 0, len(r.Steps)+1), r.Steps[:at]...)
	r.Steps = append(append(steps, finding.Step{Do: finding.DryOut}), r.Steps[at:]...)
	r.Findings = append(r.Findings, wet(shuts, m))
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

// barring returns the findings that make no way: what is forbidden, and what nobody knows.
func barring(l finding.List) finding.List {
	var out finding.List
	for i := range l {
		if l[i].Verdict == finding.Forbidden || l[i].Verdict == finding.Ask {
			out = append(out, l[i])
		}
	}
	return out
}
