package compat_test

import (
	"strings"
	"testing"

	"boatyard.example/bottomwork/compat"
	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

// shapes remembers which findings were judged, by rule, verdict and the numbers of their steps and facts.
type shapes map[string]bool

// answered fails when there is no finding, and judges each shape of a finding once.
func (s shapes) answered(t *testing.T, b *tables.Book, l finding.List, what string) {
	t.Helper()
	if len(l) == 0 {
		t.Errorf("%s: not judged", what)
	}
	for i := range l {
		f := &l[i]
		shape := string(f.Rule) + string(rune('0'+f.Verdict)) + string(rune('0'+len(f.First))) + string(rune('0'+len(f.Facts)))
		if !s[shape] {
			s[shape] = true
			answered(t, b, finding.List{*f}, what)
		}
	}
}

// answered fails unless every finding names a rule of the book with a basis, a valid verdict, steps where it needs some, and the
// words of the rule find every value.
func answered(t *testing.T, b *tables.Book, l finding.List, what string) {
	t.Helper()
	if len(l) == 0 {
		t.Errorf("%s: not judged", what)
	}
	for _, f := range l {
		r, err := b.Rule(f.Rule)
		if err != nil {
			t.Errorf("%s: rule %q is not in the book", what, f.Rule)
			continue
		}
		if r.Basis().Kind == "" {
			t.Errorf("%s: rule %s has no basis", what, f.Rule)
		}
		if !f.Verdict.Valid() {
			t.Errorf("%s: %s: invalid verdict", what, f.Rule)
		}
		if (f.Verdict == finding.Needs) != (len(f.First) > 0) {
			t.Errorf("%s: %s is %s with %d steps", what, f.Rule, f.Verdict, len(f.First))
		}
		for _, basis := range f.Basis {
			if basis.Kind == "" {
				t.Errorf("%s: %s rests on a row without a basis", what, f.Rule)
			}
		}
		for _, s := range f.First {
			if _, err := b.Step(s.Do); err != nil {
				t.Errorf("%s: %s: step %q has no row", what, f.Rule, s.Do)
			}
			lays := s.Do == finding.Tie || s.Do == finding.Seal || s.Do == finding.Prime || s.Do == finding.Barrier
			if _, err := b.Coating(s.Coating); lays && err != nil {
				t.Errorf("%s: %s: %s names the coating %q", what, f.Rule, s.Do, s.Coating)
			}
		}
		if said := b.Say(f, quantity.Metric); said == "" || strings.Contains(said, "(not stated)") {
			t.Errorf("%s: %s says %q", what, f.Rule, said)
		}
	}
}

func TestEveryCoatingOnEveryMaterialIsAnswered(t *testing.T) {
	b := book(t)
	zones := []string{""}
	for z := range b.Zones() {
		zones = append(zones, z.Key)
	}
	n, seen := 0, shapes{}
	for m := range b.Materials() {
		for c := range b.Coatings() {
			for _, z := range zones {
				for _, found := range []compat.Stack{nil, bare(t, b), {sound(t, b, "epoxy-barrier", 400)}, {sound(t, b, "ablative-old", 100)}} {
					for _, lam := range []string{"", "wet"} {
						seen.answered(t, b, compat.OnMaterial(b, c, compat.Part{Name: "part", Material: m.Key, Zone: z, Found: found, Laminate: lam}), c.Key+" on "+m.Key)
						n++
					}
				}
			}
		}
	}
	if n < 10000 {
		t.Errorf("only %d combinations", n)
	}
}

// ages are not given, before, in and after every window.
func ages(c tables.Coating) []quantity.Duration {
	out := []quantity.Duration{{}, quantity.Minute.N(0), quantity.Day.N(2), quantity.Day.N(400)}
	if c.OvercoatMin.Given() {
		out = append(out, c.OvercoatMin)
	}
	if c.OvercoatMax.Given() {
		out = append(out, c.OvercoatMax)
	}
	return out
}

func TestEveryCoatOverEveryLayerIsAnswered(t *testing.T) {
	b := book(t)
	states := []tables.Condition{"", "no such state"}
	for c := range b.Conditions() {
		states = append(states, tables.Condition(c.Key))
	}
	unwritten, seen := map[string]bool{}, shapes{}
	pairs := 0
	for _, c := range next(b) {
		for old := range b.Coatings() {
			pairs++
			for _, state := range states {
				for _, age := range ages(old) {
					l := compat.Over(b, c, compat.Layer{Coating: old, State: state, Age: age})
					seen.answered(t, b, l, c.Key+" over "+old.Key+", "+string(state))
					if l.Has("over-unwritten") {
						unwritten[c.Key+" over "+old.Key] = true
						if v := l.Worst(); v < finding.Ask {
							t.Errorf("%s over %s: nobody wrote it down, and it is %s", c.Key, old.Key, v)
						}
					}
				}
			}
		}
	}
	// A pair of two antifoulings, and an antifouling over any undercoat or old film, is always written down.
	for _, c := range wanted(b) {
		for old := range b.Coatings() {
			if unwritten[c.Key+" over "+old.Key] {
				t.Errorf("%s over %s: no row", c.Key, old.Key)
			}
		}
	}
	if 10*len(unwritten) > pairs {
		t.Errorf("%d of %d pairs are not written down: %v", len(unwritten), pairs, unwritten)
	}
}

// founds are bottoms as they are found: every coating alone; and one of each mechanism and biocide class over a barrier, flaking
// over a thin one, and in a state that nobody reported; and pairs, some of which do not last.
func founds(t *testing.T, b *tables.Book) map[string]compat.Stack {
	t.Helper()
	out, seen := map[string]compat.Stack{"nothing reported": nil}, map[string]bool{}
	for _, pair := range [][2]string{{"silicone-old", "tie-coat"}, {"ablative-old", "tie-coat"}, {"ablative-old", "hard-old"}, {"hard-old", "ablative-old"}, {"bitumen-old", "sealer"}, {"silicone-old", "hard-old"}, {"ablative-old", "epoxy-barrier"}} {
		out[pair[1]+" over "+pair[0]] = compat.Stack{sound(t, b, pair[0], 60), sound(t, b, pair[1], 60)}
	}
	for c := range b.Coatings() {
		if c.Role == tables.Bare {
			continue
		}
		out[c.Key] = compat.Stack{sound(t, b, c.Key, 120)}
		kind := c.Family() + string(c.Biocide)
		if c.Mechanism != tables.NoFilm && !seen[kind] {
			seen[kind] = true
			out["thick barrier, "+c.Key] = compat.Stack{sound(t, b, "epoxy-barrier", 400), sound(t, b, c.Key, 120)}
			flaking := sound(t, b, c.Key, 120)
			flaking.State = "flaking"
			out["thin barrier, flaking "+c.Key] = compat.Stack{sound(t, b, "epoxy-barrier", 100), flaking}
			unsaid := sound(t, b, c.Key, 120)
			unsaid.State, unsaid.Film = "", quantity.Range[quantity.Film]{}
			out[c.Key+", state not said"] = compat.Stack{unsaid}
		}
	}
	return out
}

// walk calls f with every route of every material, bottom as found, laminate and coating wanted.
func walk(t *testing.T, b *tables.Book, f func(m tables.Material, p compat.Part, want tables.Coating, r compat.Route, what string)) {
	t.Helper()
	var all map[string]compat.Stack
	for m := range b.Materials() {
		if m.Painted == tables.Never {
			all = map[string]compat.Stack{"nothing reported": nil, "bare": bare(t, b), "painted": {sound(t, b, "hard-cuprous", 50)}}
		} else {
			all = founds(t, b)
		}
		laminates := []string{""}
		if m.Key == "grp" || m.Key == "wood-carvel" || m.Key == "carbon" {
			laminates = append(laminates, "wet")
		}
		for name, found := range all {
			for _, lam := range laminates {
				p := compat.Part{Name: "hull", Material: m.Key, Zone: "hull", Found: found, Laminate: lam}
				for _, want := range wanted(b) {
					routes := compat.Routes(b, p, want)
					if len(routes) == 0 {
						t.Errorf("%s on %s, %s: no route at all", want.Key, m.Key, name)
					}
					for _, r := range routes {
						f(m, p, want, r, want.Key+" on "+m.Key+", "+name+" "+lam)
					}
				}
			}
		}
	}
}

// final is the stack as it lies when the route is done and the coating wanted is on.
func final(r compat.Route, want tables.Coating) compat.Stack {
	s := append(append(compat.Stack{}, r.Keeps...), r.Adds...)
	if want.Role == tables.Bare {
		return s
	}
	return append(s, compat.Layer{Coating: want, Film: want.Film, State: tables.Sound, Coats: max(1, want.Coats), For: compat.Working})
}

func TestEveryRoute(t *testing.T) {
	b := book(t)
	c := routeCheck{T: t, seen: shapes{}, metals: map[string]int{}}
	walk(t, b, func(m tables.Material, p compat.Part, want tables.Coating, r compat.Route, what string) {
		c.seen.answered(t, b, r.Findings, what)
		if r.Findings.Worst() == finding.Forbidden {
			c.deadEnds++
			if len(r.Steps) > 0 {
				t.Errorf("%s: forbidden, with steps %v", what, actions(r.Steps))
			}
			return
		}
		c.ways++
		s := final(r, want)
		for _, f := range compat.CheckStack(b, p, s, 7).At(finding.Forbidden) {
			t.Errorf("%s: route %v keeps %d and ends in %s: %s over %s", what, actions(r.Steps), len(r.Keeps), f.Rule, f.About, f.Against)
		}
		c.steps(r, what)
		c.driesFirst(p, want, r, what)
		if m.Key == "aluminium" || m.Key == "galvanised-steel" {
			c.metals[m.Key]++
			c.noCopper(s, what)
		}
	})
	if c.ways < 1000 || c.deadEnds < 1000 || c.dried < 100 || len(c.metals) != 2 {
		t.Errorf("%d ways, %d dead ends, %d dried out, metals %v: the walk is too small to mean anything", c.ways, c.deadEnds, c.dried, c.metals)
	}
}

// routeCheck holds what is counted over all routes.
type routeCheck struct {
	*testing.T
	seen                  shapes
	metals                map[string]int
	ways, deadEnds, dried int
}

// steps: hours rise, and each step that puts a coat on adds one layer, with its film.
func (c *routeCheck) steps(r compat.Route, what string) {
	if r.Effort.Low < 0 || r.Effort.Low > r.Effort.Typical || r.Effort.Typical > r.Effort.High {
		c.Errorf("%s: effort %v does not rise", what, r.Effort)
	}
	coats := 0
	for _, s := range r.Steps {
		if s.Coating == "" {
			continue
		}
		if s.Coats < 1 || !s.Film.Typical.Given() {
			c.Errorf("%s: %s without coats or film", what, s.Coating)
		}
		coats++
	}
	if coats != len(r.Adds) {
		c.Errorf("%s: %d steps put a coat on, %d layers are added", what, coats, len(r.Adds))
	}
}

// driesFirst: a wet laminate dries out before the first coat, exactly where a two-pack coat goes on.
func (c *routeCheck) driesFirst(p compat.Part, want tables.Coating, r compat.Route, what string) {
	if p.Laminate != "wet" {
		return
	}
	two := want.Packs == 2
	for _, l := range r.Adds {
		two = two || l.Coating.Packs == 2
	}
	dry := false
	for _, s := range r.Steps {
		switch {
		case s.Do == finding.DryOut:
			dry = true
		case s.Coating != "" && two && !dry:
			c.Errorf("%s: %v", what, actions(r.Steps))
		}
	}
	if two != dry {
		c.Errorf("%s: two-pack %v, dried out %v", what, two, dry)
	}
	if two {
		c.dried++
	}
}

// noCopper: no way on aluminium or zinc ends with copper oxide, with metallic copper, or with a film that may hold them; other
// copper lies over 300 um of sound epoxy, the least of the rows.
func (c *routeCheck) noCopper(s compat.Stack, what string) {
	um := 0.0
	for i, l := range s {
		switch l.Coating.Biocide {
		case tables.CuprousOxide, tables.MetallicCopper, tables.UnknownBiocide, tables.Organotin:
			c.Errorf("%s: layer %d is %s (%s)", what, i+1, l.Coating.Key, l.Coating.Biocide)
		case tables.CopperThiocyanate, tables.OtherCopper:
			if um < 300 {
				c.Errorf("%s: %s over %.0f um of epoxy", what, l.Coating.Key, um)
			}
		case tables.CopperFree, tables.NoBiocide:
			if l.Coating.Packs == 2 && (l.Coating.Role == tables.Primer || l.Coating.Role == tables.Barrier || l.Coating.Key == "epoxy-old") && l.Film.Low.Given() {
				um += l.Film.Low.Float(quantity.Micrometre)
			}
		}
	}
}

func TestRoutesAreCheapestFirst(t *testing.T) {
	b := book(t)
	two := 0
	for name, found := range founds(t, b) {
		for _, want := range wanted(b) {
			rs := compat.Routes(b, compat.Part{Name: "hull", Material: "grp", Found: found}, want)
			if len(rs) > 1 {
				two++
			}
			for i := 1; i < len(rs); i++ {
				if rs[i-1].Effort.Typical > rs[i].Effort.Typical {
					t.Errorf("%s on %s: %v h/m2 before %v h/m2", want.Key, name, rs[i-1].Effort.Typical, rs[i].Effort.Typical)
				}
			}
		}
	}
	if two == 0 {
		t.Error("no question has two ways")
	}
}

// The same for whole stacks: whatever is put together, copper oxide on aluminium is forbidden.
func TestNoStackBringsCopperToAluminium(t *testing.T) {
	b := book(t)
	for _, material := range []string{"aluminium", "galvanised-steel"} {
		p := compat.Part{Name: "hull", Material: material}
		for c := range b.Coatings() {
			bad := c.Mechanism != tables.NoFilm && (c.Biocide == tables.CuprousOxide || c.Biocide == tables.MetallicCopper || c.Biocide == tables.UnknownBiocide || c.Biocide == tables.Organotin)
			for _, why := range []compat.Purpose{compat.Found, compat.Working} {
				l := sound(t, b, c.Key, 100)
				l.For = why
				for _, s := range []compat.Stack{{l}, {sound(t, b, "epoxy-barrier", 500), l}, {sound(t, b, "epoxy-barrier", 500), l, fresh(t, b, "tie-coat", compat.Undercoat, ""), fresh(t, b, "ablative-copper-free", compat.Working, "")}} {
					if v := compat.CheckStack(b, p, s, 7).Worst(); bad && v != finding.Forbidden {
						t.Errorf("%s, %s on %s among %d layers: %s", c.Key, why, material, len(s), v)
					}
				}
			}
		}
	}
}

func TestTwoPackNeverOverOnePack(t *testing.T) {
	b := book(t)
	n := 0
	for _, c := range next(b) {
		for old := range b.Coatings() {
			if c.Packs != 2 || old.Packs != 1 || old.Mechanism == tables.NoFilm {
				continue
			}
			n++
			for _, age := range ages(old) {
				l := compat.Over(b, c, compat.Layer{Coating: old, State: tables.Sound, Age: age})
				if old.Key == "etch-primer" && (c.Role == tables.Primer || c.Role == tables.Barrier) { // the one film that the data sheets may allow
					if len(l.At(finding.Ask)) != 1 {
						t.Errorf("%s over %s: %v", c.Key, old.Key, rules(l))
					}
					continue
				}
				if l.Worst() != finding.Forbidden {
					t.Errorf("%s over %s: %v", c.Key, old.Key, rules(l))
				}
			}
		}
	}
	if n < 100 {
		t.Errorf("only %d pairs", n)
	}
}

func TestSameQuestionSameAnswer(t *testing.T) {
	b, again := book(t), book(t)
	p := compat.Part{Name: "hull", Material: "steel", Zone: "hull", Found: compat.Stack{sound(t, b, "epoxy-barrier", 200), sound(t, b, "ablative-old", 100)}}
	for _, want := range wanted(b) {
		x, y := compat.Routes(b, p, want), compat.Routes(again, p, want)
		if len(x) != len(y) {
			t.Fatalf("%s: %d and %d routes", want.Key, len(x), len(y))
		}
		for i := range x {
			if a, c := actions(x[i].Steps), actions(y[i].Steps); len(a) != len(c) || x[i].Effort != y[i].Effort {
				t.Errorf("%s: %v and %v", want.Key, a, c)
			}
		}
	}
}
