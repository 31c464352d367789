package compat_test

import (
	"fmt"
	"slices"
	"testing"
	"testing/fstest"

	"boatyard.example/bottomwork/compat"
	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/finding"
)

// grounds are what a part may carry: nothing reported, nothing at all, one film, a film on a barrier, a film too thick, a doubtful one.
func grounds(tb testing.TB, b *tables.Book) []compat.Stack {
	tb.Helper()
	loose := sound(tb, b, "hard-cuprous", 80)
	loose.State = "flaking in places"
	return []compat.Stack{
		nil,
		bare(tb, b),
		{sound(tb, b, "ablative-cuprous-multi", 100)},
		{sound(tb, b, "epoxy-barrier", 400), sound(tb, b, "hard-cuprous", 100)},
		{sound(tb, b, "epoxy-barrier", 400)},
		{loose, sound(tb, b, "ablative-cuprous-multi", 900)},
		{sound(tb, b, "organotin-old", 100)},
	}
}

// The best way of a surface is the first of all ways, and what is said with it is what the way and the material say, each once;
// and what was asked before changes nothing. In the embedded tables a way that keeps the old film is always the cheaper one; in
// the other book stripping costs next to nothing. A short run asks of three materials, and of the other book alone.
func TestBestIsTheFirstOfAllWays(t *testing.T) {
	if underRace {
		t.Skip("tries every way")
	}
	b := book(t)
	if !testing.Short() {
		bestOfAll(t, b)
	}
	quick, err := b.With(fstest.MapFS{"own.toml": {Data: []byte(`
[[step]]
key = "strip"
basis = "assumption"
hours_m2 = [0.01, 0.01, 0.01]
[[step]]
key = "degrease"
basis = "assumption"
hours_m2 = [0.01, 0.01, 0.01]
[[step]]
key = "abrade"
basis = "assumption"
hours_m2 = [0.06, 0.06, 0.06]
`)}})
	if err != nil {
		t.Fatal(err)
	}
	bestOfAll(t, quick)
}

func bestOfAll(t *testing.T, b *tables.Book) {
	t.Helper()
	types := wanted(b)
	for m := range b.Materials() {
		if testing.Short() && !slices.Contains([]string{"grp", "steel", "aluminium"}, m.Key) {
			continue
		}
		for _, laminate := range []string{"", "wet"} {
			for i, found := range grounds(t, b) {
				p := compat.Part{Name: "part", Zone: "hull", Material: m.Key, Found: found, Laminate: laminate}
				s := compat.On(b, p)
				for range 2 {
					for k := range types {
						want := &types[k]
						all := compat.Routes(b, p, *want)
						r, said := s.Best(want)
						if got, first := fmt.Sprintf("%+v", r), fmt.Sprintf("%+v", all[0]); got != first {
							t.Fatalf("%s, ground %d, %s: best is\n%s\nof the ways\n%s", m.Key, i, want.Key, got, first)
						}
						if got, both := fmt.Sprintf("%+v", s.Routes(want)), fmt.Sprintf("%+v", all); got != both {
							t.Fatalf("%s, ground %d, %s: ways are\n%s\nand alone\n%s", m.Key, i, want.Key, got, both)
						}
						onIt := compat.OnMaterial(b, *want, p)
						if got, alone := fmt.Sprintf("%+v", s.OnMaterial(want)), fmt.Sprintf("%+v", onIt); got != alone {
							t.Fatalf("%s, ground %d, %s: on the material\n%s\nand alone\n%s", m.Key, i, want.Key, got, alone)
						}
						if got, both := fmt.Sprintf("%+v", said), fmt.Sprintf("%+v", each(append(all[0].Findings, onIt...))); got != both {
							t.Fatalf("%s, ground %d, %s: said\n%s\nwant\n%s", m.Key, i, want.Key, got, both)
						}
					}
				}
			}
		}
	}
}

// each drops findings of the same rule and verdict about the same and against the same.
func each(l finding.List) finding.List {
	type id struct {
		rule           finding.ID
		verdict        finding.Verdict
		about, against string
	}
	seen := map[id]bool{}
	var out finding.List
	for _, f := range l {
		k := id{f.Rule, f.Verdict, f.About, f.Against}
		if !seen[k] {
			out = append(out, f)
		}
		seen[k] = true
	}
	return out
}

// A material that the book does not hold is asked about, and nothing leads to a coating on it.
func TestSurfaceOfUnknownMaterial(t *testing.T) {
	b := book(t)
	c := coating(t, b, "hard-cuprous")
	s := compat.On(b, compat.Part{Name: "part", Material: "moonstone"})
	r, said := s.Best(&c)
	if len(r.Steps) != 0 || r.Findings.Worst() != finding.Forbidden || !said.Has("material-unknown") {
		t.Errorf("best is %+v, said %s", r, rules(said))
	}
	if got := s.OnMaterial(&c); len(got) != 1 || got.Worst() != finding.Ask {
		t.Errorf("on the material: %s", rules(got))
	}
}
