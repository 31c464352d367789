package compat_test

import (
	"fmt"
	"maps"
	"math"
	"slices"
	"testing"

	"boatyard.example/bottomwork/compat"
	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

// brute finds the cheapest way by trying: keep everything or strip to sound epoxy or to the bare surface; prepare the surface as the
// material asks; then every chain of up to three undercoats (of barriers the one that the material's row names), each junction judged by Over with its work added up, and the whole stack by
// CheckStack. It knows nothing of how Routes builds a way.
type brute struct {
	b     *tables.Book
	p     compat.Part
	m     tables.Material
	under []tables.Coating
	best  float64
	way   string
	why   []finding.ID // what barred a whole stack, for whoever reads a failure
}

// tries is how many undercoats are tried on each other.
const tries = 3

// hours sums the typical hours of work, each kind once since the last coat.
func (x *brute) hours(steps []finding.Step) float64 {
	sum := 0.0
	var done []finding.Action
	for _, s := range steps {
		switch {
		case s.Do == finding.Prime || s.Do == finding.Barrier || s.Do == finding.Tie || s.Do == finding.Seal:
			done = nil
		case slices.Contains(done, s.Do):
			continue
		default:
			done = append(done, s.Do)
		}
		h, ok := x.b.Hours(s.Do)
		if ok {
			sum += h.Typical * float64(max(1, s.Coats))
		}
	}
	return sum
}

// lay is the step that puts an undercoat on, in its least coats or to the film that the material asks of its barrier, less the two-pack film
// that was found sound on the surface.
func (x *brute) lay(c tables.Coating, s compat.Stack) (finding.Step, compat.Layer) {
	do := map[tables.Role]finding.Action{tables.Primer: finding.Prime, tables.Barrier: finding.Barrier, tables.TieCoat: finding.Tie, tables.Sealer: finding.Seal}[c.Role]
	n := max(1, c.Coats)
	film := c.Film
	if c.Role == tables.Barrier && x.m.Film.Low.Given() {
		film = x.m.Film
		um := film.Typical.Float(quantity.Micrometre)
		for _, l := range s {
			if l.For == compat.Undercoat || l.Coating.Packs != 2 || l.Coating.Ranked() || l.Coating.Mechanism == tables.FoulRelease || l.Coating.Role == tables.TieCoat || l.State != tables.Sound {
				break
			}
			if l.Film.Low.Given() {
				n = 1
				um -= l.Film.Low.Float(quantity.Micrometre)
				film.Low, film.Typical, film.High = film.Low.Sub(l.Film.Low), film.Typical.Sub(l.Film.Low), film.High.Sub(l.Film.Low)
			}
		}
		n = max(n, int(math.Ceil(um/c.Film.Typical.Float(quantity.Micrometre))))
	}
	return finding.Step{Do: do, Coating: c.Key, Coats: n}, compat.Layer{Coating: c, Film: film, State: tables.Sound, Coats: n, Age: c.OvercoatMin, For: compat.Undercoat}
}

// over returns the work of a junction; false when it is forbidden or nobody knows.
func (x *brute) over(next tables.Coating, top compat.Layer) ([]finding.Step, bool) {
	var steps []finding.Step
	for _, f := range compat.Over(x.b, next, top) {
		if f.Verdict == finding.Forbidden || f.Verdict == finding.Ask {
			return nil, false
		}
		for _, s := range f.First {
			if s.Coating != "" && s.Do != finding.Abrade {
				return nil, false // it wants an undercoat between; the chain with it is tried by itself
			}
			steps = append(steps, s)
		}
	}
	return steps, true
}

// try goes on from a stack with some work done: the coating wanted, or one more undercoat.
func (x *brute) try(s compat.Stack, steps []finding.Step, want tables.Coating, depth int) {
	top := s[len(s)-1]
	if more, ok := x.over(want, top); ok {
		all := append(slices.Clone(steps), more...)
		stack := append(slices.Clone(s), compat.Layer{Coating: want, Film: want.Film, State: tables.Sound, Coats: max(1, want.Coats), For: compat.Working})
		if h := x.hours(all); h < x.best-1e-9 && x.holds(stack) {
			x.best, x.way = h, fmt.Sprint(all)
		}
	}
	if depth == 0 || x.hours(steps) >= x.best {
		return
	}
	for _, c := range x.under {
		more, ok := x.over(c, top)
		if !ok || top.For == compat.Undercoat && top.Coating.Key == c.Key { // nobody lays one undercoat on itself to make a barrier of it
			continue
		}
		step, layer := x.lay(c, s)
		x.try(append(slices.Clone(s), layer), append(append(slices.Clone(steps), more...), step), want, depth-1)
	}
}

// holds reports whether nothing in the whole stack is forbidden or unknown, and nothing is missing below.
func (x *brute) holds(s compat.Stack) bool {
	for _, f := range compat.CheckStack(x.b, x.p, s, -1) {
		switch f.Verdict {
		case finding.Forbidden:
			x.why = append(x.why, f.Rule)
			return false
		case finding.Ask:
			if f.Rule != "ask-part-maker" && f.Rule != "metal-ask" && f.Rule != "stack-lightness-ask" {
				x.why = append(x.why, f.Rule)
				return false
			}
		case finding.Fine, finding.Caution, finding.Needs:
		}
	}
	return true
}

// search tries all ways.
func (x *brute) search(want tables.Coating) {
	x.best = math.Inf(1)
	found := x.p.Found
	if found[0].Coating.Key != tables.BareSurface && !tooThickFor(x.b, found) {
		x.try(found, nil, want, tries)
	}
	depth := 0
	for depth < len(found) && found[depth].State == tables.Sound && found[depth].Coating.Packs == 2 &&
		(found[depth].Coating.Role == tables.Primer || found[depth].Coating.Role == tables.Barrier || found[depth].Coating.Key == "epoxy-old") {
		depth++
	}
	if depth == len(found) {
		depth = 0
	}
	var steps []finding.Step
	if found[0].Coating.Key != tables.BareSurface {
		for _, l := range found[depth:] {
			if l.Coating.Biocide == tables.UnknownBiocide || l.Coating.Biocide == tables.Organotin {
				steps = append(steps, finding.Step{Do: finding.Identify})
				break
			}
		}
		steps = append(steps, finding.Step{Do: finding.Strip})
		if slices.ContainsFunc(found[depth:], func(l compat.Layer) bool { return l.Coating.Mechanism == tables.FoulRelease }) {
			steps = append(steps, finding.Step{Do: finding.Degrease}) // silicone leaves traces
		}
	}
	if depth > 0 {
		x.try(slices.Clone(found[:depth]), steps, want, tries)
		return
	}
	for a := range x.m.Prepare() {
		if a == finding.Blast {
			steps = slices.DeleteFunc(steps, func(s finding.Step) bool { return s.Do == finding.Strip })
		}
		steps = append(steps, finding.Step{Do: a})
	}
	bare, _ := x.b.Coating(tables.BareSurface)
	s := compat.Stack{{Coating: bare, State: tables.Sound, For: compat.Found}}
	if x.m.Primer != "" { // the material asks for it under whatever comes
		primer, _ := x.b.Coating(x.m.Primer)
		more, ok := x.over(primer, s[0])
		if !ok {
			return
		}
		step, layer := x.lay(primer, s)
		s, steps = append(s, layer), append(append(steps, more...), step)
	}
	x.try(s, steps, want, tries)
}

func tooThickFor(b *tables.Book, s compat.Stack) bool {
	limit, _ := b.Threshold("film")
	sum := 0.0
	for _, l := range s {
		if l.Film.Typical.Given() && l.Coating.Packs != 2 {
			sum += l.Film.Typical.Float(quantity.Micrometre)
		}
	}
	return sum > limit.Strip.Typical
}

// Whatever is found, the first route costs what the cheapest way costs that anyone can put together from the rules; where a way exists at
// all there is a route, and where none does there is none.
func TestRoutesAgainstTrying(t *testing.T) {
	if underRace {
		t.Skip("one goroutine; .ci/run asks it without the race detector")
	}
	if testing.Short() {
		t.Skip("tries every way")
	}
	b := book(t)
	n, cheaper := 0, 0
	for m := range b.Materials() {
		if m.Painted == tables.Never {
			continue
		}
		every := 17 // of the other materials every so many cases
		if slices.Contains([]string{"grp", "steel", "aluminium"}, m.Key) {
			every = 1
		}
		bareOf := compat.Part{Material: m.Key, Found: bare(t, b)}
		var under []tables.Coating
		for c := range b.Coatings() {
			undercoat := c.Role == tables.Primer || c.Role == tables.Barrier && c.Key == m.With || c.Role == tables.TieCoat || c.Role == tables.Sealer
			if undercoat && compat.OnMaterial(b, c, bareOf).Worst() != finding.Forbidden {
				under = append(under, c)
			}
		}
		all := founds(t, b)
		for _, name := range slices.Sorted(maps.Keys(all)) {
			found := all[name]
			if len(found) == 0 {
				continue // counts as an unknown film, which is tried
			}
			p := compat.Part{Name: "part", Material: m.Key, Found: found}
			for want := range b.Ranked() {
				if want.Role == tables.Bare {
					continue
				}
				if n++; n%every != 0 {
					continue
				}
				x := brute{b: b, p: p, m: m, under: under}
				x.search(want)
				r := compat.Routes(b, p, want)[0]
				got := r.Effort.Typical
				if len(r.Findings.At(finding.Forbidden)) > 0 {
					got = math.Inf(1)
				}
				if math.Abs(x.best-got) > 1e-9 && (!math.IsInf(x.best, 1) || !math.IsInf(got, 1)) {
					cheaper++
					if cheaper < 40 {
						t.Errorf("%s on %s, %s found: route %.3f h %v, by trying %.3f h %s, barred by %v", want.Key, m.Key, name, got, r.Steps, x.best, x.way, x.why)
					}
				}
			}
		}
	}
	t.Logf("%d cases, %d otherwise by trying", n, cheaper)
}
