package compat_test

import (
	"slices"
	"strings"
	"testing"

	"boatyard.example/bottomwork/compat"
	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

// What a surveyor looks for in a way. Source of every expectation in this file: common practice, no source.

// An antifouling goes over fresh epoxy for hours, while a thumb leaves a print; epoxy takes epoxy for days.
func TestAntifoulingWindowOverEpoxy(t *testing.T) {
	b := book(t)
	minutes := quantity.Minute.N
	for _, c := range []struct {
		next string
		age  quantity.Duration
		rule finding.ID
		want finding.Verdict
	}{
		{"hard-cuprous", minutes(6*60 - 1), "window-early", finding.Needs},
		{"hard-cuprous", minutes(6 * 60), "over-epoxy-tacky", finding.Caution},
		{"hard-cuprous", minutes(10 * 60), "over-epoxy-tacky", finding.Caution},
		{"hard-cuprous", minutes(10*60 + 1), "window-antifouling", finding.Needs},
		{"ablative-copper-free", quantity.Hour.N(20), "window-antifouling", finding.Needs},
		{"epoxy-barrier", quantity.Hour.N(20), "over-epoxy-fresh", finding.Fine},
		{"inert-epoxy", quantity.Hour.N(20), "over-epoxy-fresh", finding.Fine},
		{"epoxy-barrier", quantity.Hour.N(73), "window-past", finding.Needs},
	} {
		l := sound(t, b, "epoxy-barrier", 300)
		l.Age = c.age
		fs := compat.Over(b, coating(t, b, c.next), l)
		f := one(t, fs, c.rule)
		if fs.Worst() != c.want || f.Verdict != c.want {
			t.Errorf("%s after %s: %v, want %s", c.next, c.age, rules(fs), c.want)
		}
		if c.rule == "window-antifouling" && !slices.Equal(actions(f.First), []string{"wash", "abrade"}) {
			t.Errorf("%s after %s: %v", c.next, c.age, actions(f.First))
		}
		if said := b.Say(f, quantity.Metric); (c.rule == "window-antifouling" || c.rule == "over-epoxy-tacky") && (!strings.Contains(said, "data sheet") || !strings.Contains(said, "tie coat")) {
			t.Errorf("who decides, and what after it, is not said: %s", said)
		}
	}
}

// Nothing above a film with tin, or one that may hold tin, is abraded dry or through, whatever state asks for it.
func TestTinIsNeverAbraded(t *testing.T) {
	b := book(t)
	n := 0
	for _, tin := range []string{"organotin-old", "unknown-old"} {
		for _, above := range [][]string{nil, {"sealer"}, {"ablative-old"}, {"sealer", "ablative-old"}} {
			for state := range b.Conditions() {
				found := compat.Stack{sound(t, b, tin, 100)}
				for _, key := range above {
					found = append(found, sound(t, b, key, 50))
				}
				for i := range found {
					for _, want := range wanted(b) {
						s := slices.Clone(found)
						s[i].State = tables.Condition(state.Key)
						for _, r := range compat.Routes(b, compat.Part{Name: "hull", Material: "grp", Found: s}, want) {
							if len(r.Keeps) == 0 || len(r.Steps) == 0 {
								continue
							}
							n++
							if got := actions(r.Steps); slices.Contains(got, "abrade") {
								t.Errorf("%s over %v above %s, %s: %v", want.Key, above, tin, state.Key, got)
							}
							if len(above) > 0 && want.Role != tables.Bare && !r.Findings.Has("over-tin-below") {
								t.Errorf("%s over %v: that %s lies below is not said", want.Key, above, tin)
							}
						}
					}
				}
			}
		}
	}
	if n < 100 {
		t.Errorf("only %d ways", n)
	}
	r := compat.Routes(b, compat.Part{Name: "hull", Material: "grp", Found: compat.Stack{sound(t, b, "organotin-old", 100), sound(t, b, "sealer", 50)}}, coating(t, b, "ablative-cuprous-multi"))[0]
	if got := actions(r.Steps); !slices.Equal(got, []string{"wash", "wet scuff"}) {
		t.Errorf("over a sealer over tin: %v", got)
	}
	for _, tin := range []string{"organotin-old", "unknown-old"} {
		l := sound(t, b, tin, 100)
		l.State = "chalking"
		if f := one(t, compat.Over(b, coating(t, b, "ablative-cuprous-multi"), l), "state-work"); !slices.Equal(actions(f.First), []string{"wash", "wet scuff"}) {
			t.Errorf("chalking %s: %v", tin, actions(f.First))
		}
	}
	if strip, err := b.Step(finding.Strip); err != nil || !strings.Contains(strip.Says, "organotin by a licensed firm") {
		t.Errorf("who strips tin is not said: %s", strip.Says)
	}
}

// A wet laminate that carries epoxy dries through it slowly or not at all; on a bare one nothing of the kind is said.
func TestWetLaminateUnderEpoxy(t *testing.T) {
	b := book(t)
	next := coating(t, b, "epoxy-barrier")
	for _, c := range []struct {
		found  compat.Stack
		closed bool
	}{
		{bare(t, b), false},
		{compat.Stack{sound(t, b, "epoxy-barrier", 300)}, true},
		{compat.Stack{sound(t, b, "epoxy-old", 300)}, true},
	} {
		p := compat.Part{Name: "hull", Material: "grp", Found: c.found, Laminate: "wet"}
		if got := compat.OnMaterial(b, next, p).Has("wet-laminate-closed"); got != c.closed {
			t.Errorf("over %s: said %v", c.found[0].Coating.Key, got)
		}
		r := compat.Routes(b, p, next)[0]
		if got := r.Findings.Has("wet-laminate-closed"); got != c.closed {
			t.Errorf("way over %s: said %v", c.found[0].Coating.Key, got)
		}
		if got := actions(r.Steps); len(got) < 3 || !slices.Equal(got[len(got)-3:], []string{"dry out", "wash", "abrade"}) {
			t.Errorf("after drying nothing is washed and abraded: %v", got)
		}
	}
	blistered := sound(t, b, "ablative-old", 100)
	blistered.State = "blistered"
	f := one(t, compat.Over(b, coating(t, b, "ablative-cuprous-multi"), blistered), "state-blistered")
	if said := b.Say(f, quantity.Metric); f.Verdict != finding.Forbidden || !strings.Contains(said, "first be known whether the paint blisters or the laminate") {
		t.Errorf("%s: %s", f.Verdict, said)
	}
}

// The film is named and tried before water carries it about, and before anything seals it.
func TestUnknownFilmIsTriedFirst(t *testing.T) {
	b := book(t)
	unsaid := sound(t, b, "unknown-old", 100)
	unsaid.State = ""
	for name, found := range map[string]compat.Stack{"sound": {sound(t, b, "unknown-old", 100)}, "state not said": {unsaid}, "nothing reported": nil} {
		r := compat.Routes(b, compat.Part{Name: "hull", Material: "grp", Found: found}, coating(t, b, "ablative-cuprous-multi"))[0]
		if want := []string{"identify", "test patch", "wash", "sealer sealer"}; !slices.Equal(actions(r.Steps), want) {
			t.Errorf("%s: %v, want %v", name, actions(r.Steps), want)
		}
	}
	if row, err := b.Step(finding.TestPatch); err != nil || !strings.Contains(row.Says, "thinner") || !strings.Contains(row.Says, "X cut") {
		t.Errorf("the patch tries solvent and adhesion: %s", row.Says)
	}
}

// No way puts on, as its last undercoat, the coat that was asked for.
func TestNoWayHoldsTheCoatAskedFor(t *testing.T) {
	if underRace {
		t.Skip("one goroutine; .ci/run asks it without the race detector")
	}
	if testing.Short() {
		t.Skip("tries every way")
	}
	b := book(t)
	n := 0
	for m := range b.Materials() {
		for name, found := range founds(t, b) {
			for _, want := range next(b) {
				for _, r := range compat.Routes(b, compat.Part{Name: "part", Material: m.Key, Found: found}, want) {
					for _, l := range r.Adds {
						if n++; l.Coating.Key == want.Key {
							t.Errorf("%s on %s, %s: %v", want.Key, m.Key, name, actions(r.Steps))
						}
					}
				}
			}
		}
	}
	if n < 1000 {
		t.Errorf("only %d undercoats", n)
	}
	for want, steps := range map[string][]string{"epoxy-primer": {"degrease", "blast"}, "epoxy-barrier": {"degrease", "blast", "prime epoxy-primer"}} {
		r := compat.Routes(b, compat.Part{Name: "hull", Material: "steel", Found: bare(t, b)}, coating(t, b, want))[0]
		if !slices.Equal(actions(r.Steps), steps) {
			t.Errorf("%s on bare steel: %v, want %v", want, actions(r.Steps), steps)
		}
	}
}

// A thin barrier gets what is missing. Steel asks for 350, 425, 500 um in coats of 80 um. Of 200 um found, 150, 225 and 300 are
// missing: three coats, for 225/80 is 2.8. Of 349 um, 1, 76 and 151: one coat. Nobody measured: the whole, six coats.
func TestThinBarrierGetsWhatIsMissing(t *testing.T) {
	b := book(t)
	unmeasured := sound(t, b, "epoxy-barrier", 1)
	unmeasured.Film = quantity.Range[quantity.Film]{}
	for _, c := range []struct {
		found          compat.Stack
		low, typ, high int64
		coats          int
	}{
		{compat.Stack{sound(t, b, "epoxy-barrier", 200)}, 150, 225, 300, 3},
		{compat.Stack{sound(t, b, "epoxy-primer", 60), sound(t, b, "epoxy-barrier", 289)}, 1, 76, 151, 1},
		{compat.Stack{unmeasured}, 350, 425, 500, 6},
	} {
		for _, above := range []compat.Stack{nil, {sound(t, b, "ablative-old", 80)}} { // kept, and stripped down to it
			p := compat.Part{Name: "hull", Material: "steel", Found: append(slices.Clone(c.found), above...)}
			r := compat.Routes(b, p, coating(t, b, "hard-cuprous"))[0]
			if len(r.Adds) != 1 || len(r.Keeps) != len(c.found) {
				t.Fatalf("%d layers added, %d kept: %v", len(r.Adds), len(r.Keeps), actions(r.Steps))
			}
			um, l := quantity.Micrometre.N, r.Adds[0]
			if l.Coats != c.coats || !l.Film.Low.Equal(um(c.low)) || !l.Film.Typical.Equal(um(c.typ)) || !l.Film.High.Equal(um(c.high)) {
				t.Errorf("%d coats of %v, want %d of %d, %d, %d", l.Coats, l.Film, c.coats, c.low, c.typ, c.high)
			}
			if step := one(t, compat.OnMaterial(b, coating(t, b, "hard-cuprous"), p), "barrier-needed").First[0]; !step.Film.Typical.Equal(um(c.typ)) {
				t.Errorf("the rule asks for %v, want %d", step.Film.Typical, c.typ)
			}
			if bad := compat.CheckStack(b, p, final(r, coating(t, b, "hard-cuprous")), -1).At(finding.Forbidden); len(bad) > 0 {
				t.Errorf("%v", rules(bad))
			}
		}
	}
}

// A barrier on a film that wears is there, and holds no better than that film: it is said so, and it still counts as none.
func TestBarrierOnWhatDoesNotHoldIt(t *testing.T) {
	b := book(t)
	next := coating(t, b, "ablative-cuprous-multi")
	on := func(s ...compat.Layer) finding.List {
		return compat.OnMaterial(b, next, compat.Part{Name: "hull", Material: "steel", Found: s})
	}
	adrift := on(sound(t, b, "ablative-old", 100), sound(t, b, "epoxy-barrier", 400))
	f := one(t, adrift, "barrier-adrift")
	if f.About != "epoxy barrier, solvent-borne" || f.Against != coating(t, b, "ablative-old").Name || adrift.Worst() != finding.Needs {
		t.Errorf("%s on %s, %v", f.About, f.Against, rules(adrift))
	}
	for name, fs := range map[string]finding.List{
		"none": on(bare(t, b)...), "thin": on(sound(t, b, "epoxy-barrier", 200)), "enough": on(sound(t, b, "epoxy-barrier", 400)), "enough below another": on(sound(t, b, "epoxy-barrier", 400), sound(t, b, "ablative-old", 100), sound(t, b, "epoxy-barrier", 200)),
		"on its primer": on(sound(t, b, "epoxy-primer", 60), sound(t, b, "epoxy-barrier", 100)),
	} {
		if fs.Has("barrier-adrift") {
			t.Errorf("%s: %v", name, rules(fs))
		}
	}
}

// No rule of epoxy speaks of a film in one pack.
func TestEpoxyRulesSpeakOfTwoPack(t *testing.T) {
	b := book(t)
	for _, c := range next(b) {
		for old := range b.Coatings() {
			for _, past := range []bool{false, true} {
				if row, ok := b.OvercoatOf(&c, &old, past); ok && old.Packs == 1 && strings.HasPrefix(string(row.Rule), "over-epoxy-") {
					t.Errorf("%s over %s: %s", c.Key, old.Key, row.Rule)
				}
			}
		}
	}
}

// Before a blast oil goes with detergent where paint lies: solvent smears bitumen. No rule says own kind.
func TestTradeWords(t *testing.T) {
	b := book(t)
	if row, err := b.Step(finding.Degrease); err != nil || !strings.Contains(row.Says, "bitumen with detergent") || !strings.Contains(row.Says, "solvent smears them") {
		t.Errorf("%s", row.Says)
	}
	for _, rule := range []finding.ID{"over-same-fresh", "over-same-again"} {
		if said := b.Say(finding.Finding{Rule: rule, About: "a", Against: "b"}, quantity.Metric); strings.Contains(said, "own kind") || !strings.Contains(said, "same type") {
			t.Errorf("%s", said)
		}
	}
}
