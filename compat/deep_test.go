package compat_test

import (
	"fmt"
	"slices"
	"strings"
	"testing"
	"testing/fstest"

	"boatyard.example/bottomwork/compat"
	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

// ownBook is the book with own tables.
func ownBook(t *testing.T, text string) *tables.Book {
	t.Helper()
	return with(t, book(t), text)
}

func with(t *testing.T, full *tables.Book, text string) *tables.Book {
	t.Helper()
	b, err := full.With(fstest.MapFS{"own.toml": {Data: []byte(text)}})
	if err != nil {
		t.Fatal(err)
	}
	return b
}

// primers are n two-pack primers, u1 to un; each asks for the next one below it, where chained.
func primers(n int, chained bool) string {
	var w strings.Builder
	for i := 1; i <= n; i++ {
		fmt.Fprintf(&w, `
[[coating]]
key = "u%d"
basis = "invented"
role = "primer"
packs = 2
carrier = "solvent"
solids = "50 %%"
film = "50 um"
coats = 1
most_coats = 1
at = "20 degC"
overcoat_min = "4 h"
overcoat_max = "72 h"
apply_min = "10 degC"
apply_max = "35 degC"
`, i)
		if chained && i < n {
			fmt.Fprintf(&w, "under = \"u%d\"\n", i+1)
		}
	}
	return w.String()
}

// above are rows by which hard asks for u1 over old epoxy, for u2 over u1, and so on up to un.
func above(n int) string {
	var w strings.Builder
	w.WriteString("[[rule]]\nkey = \"own-rule\"\nsays = \"{about} over {against}.\"\nbasis = \"invented\"\n")
	old := "epoxy-barrier"
	for i := 1; i <= n; i++ {
		fmt.Fprintf(&w, "[[overcoat]]\nkey = \"above-%d\"\nbasis = \"invented\"\nrule = \"own-rule\"\nlevel = \"bar\"\nnew = \"hard-cuprous\"\nold = %q\nverdict = \"needs\"\nsteps = [\"prime\"]\nwith = \"u%d\"\n", i, old, i)
		old = fmt.Sprintf("u%d", i)
	}
	return w.String()
}

// Four undercoats that ask for each other are a way and five are none, wherever they come: under the coat wanted, over what was found
// and over the bare surface; under the material's primer; under the barrier that is wanted, and over it.
func TestHowDeepUndercoatsLie(t *testing.T) {
	full := book(t)
	under := func(key string) string {
		return "[[coating]]\nkey = \"" + key + "\"\nbasis = \"invented\"\nunder = \"u1\"\n"
	}
	for _, c := range []struct {
		name, asks, material string
		found                string
		barrier              quantity.YesNo
		up                   bool // the undercoats are asked for one above the other
		adds                 []string
	}{
		{"under the coat, over old epoxy", under("hard-cuprous"), "grp", "epoxy-barrier", quantity.No, false, []string{"u4", "u3", "u2", "u1"}},
		{"under the coat, over the bare surface", under("hard-cuprous"), "grp", "", quantity.No, false, []string{"u4", "u3", "u2", "u1"}},
		{"under the primer", under("epoxy-primer"), "bronze", "", quantity.No, false, []string{"u4", "u3", "u2", "u1", "epoxy-primer"}},
		{"under the barrier, over old epoxy", under("epoxy-barrier"), "grp", "epoxy-primer", quantity.Yes, false, []string{"u4", "u3", "u2", "u1", "epoxy-barrier"}},
		{"under the barrier, over the bare surface", under("epoxy-barrier"), "grp", "", quantity.Yes, false, []string{"u4", "u3", "u2", "u1", "epoxy-barrier"}},
		{"over the barrier", under("hard-cuprous"), "grp", "epoxy-primer", quantity.Yes, false, []string{"epoxy-barrier", "u4", "u3", "u2", "u1"}},
		{"one above the other", "", "grp", "epoxy-barrier", quantity.No, true, []string{"u1", "u2", "u3", "u4"}},
	} {
		for _, n := range []int{4, 5} {
			rows := primers(n, !c.up) + c.asks
			if c.up {
				rows += above(n)
			}
			b := with(t, full, rows)
			p := compat.Part{Name: "part", Zone: "hull", Material: c.material, Found: bare(t, b), Barrier: c.barrier}
			if c.found != "" {
				p.Found = compat.Stack{sound(t, b, c.found, 60)}
			}
			r := compat.Routes(b, p, coating(t, b, "hard-cuprous"))[0]
			var adds []string
			for _, l := range r.Adds {
				adds = append(adds, l.Coating.Key)
			}
			if n == 4 {
				if !slices.Equal(adds, c.adds) || len(r.Keeps) != len(c.found)/max(1, len(c.found)) {
					t.Errorf("%s, four deep: keeps %d, adds %v, want %v: %v", c.name, len(r.Keeps), adds, c.adds, rules(r.Findings))
				}
				continue
			}
			if len(r.Adds) > 0 || !r.Findings.Has("over-unwritten") || !c.up && r.Findings.Worst() != finding.Forbidden {
				t.Errorf("%s, five deep: %v, %v", c.name, actions(r.Steps), rules(r.Findings))
			}
		}
	}
}

// An undercoat that the material does not stand bars the way that asks for it; and it is the undercoat that is told of.
func TestAnUndercoatThatTheMaterialDoesNotStand(t *testing.T) {
	b := ownBook(t, "[[coating]]\nkey = \"hard-cuprous\"\nbasis = \"invented\"\nunder = \"epoxy-primer\"\n")
	for name, found := range map[string]compat.Stack{"bare": bare(t, b), "hard on an ablative": {sound(t, b, "ablative-old", 60), sound(t, b, "hard-old", 60)}} {
		p := compat.Part{Name: "hull", Zone: "hull", Material: "wood-carvel", Found: found}
		rs := compat.Routes(b, p, coating(t, b, "hard-cuprous"))
		if len(rs) != 1 || len(rs[0].Steps) > 0 {
			t.Errorf("%s: a way: %v", name, ways(rs))
		}
		if f := one(t, rs[0].Findings, "one-pack-only"); f.Verdict != finding.Forbidden || f.About != coating(t, b, "epoxy-primer").Name {
			t.Errorf("%s: %s of %s", name, f.Verdict, f.About)
		}
		if len(found) > 1 { // and what was found bars the other way
			if f := one(t, rs[0].Findings, "stack-found-pair"); f.Verdict != finding.Forbidden {
				t.Errorf("%s: the pair below is %s", name, f.Verdict)
			}
		}
	}
}

// A found primer in its window takes the next coat as it is: the laminate below dries before the first coat all the same.
func TestDryingOutComesFirst(t *testing.T) {
	b := book(t)
	l := sound(t, b, "epoxy-barrier", 300)
	l.Age = quantity.Hour.N(12)
	p := compat.Part{Name: "hull", Material: "grp", Found: compat.Stack{l}, Laminate: "wet"}
	for want, steps := range map[string][]string{
		"inert-epoxy":           {"dry out", "wash", "abrade"},
		"foul-release-silicone": {"dry out", "wash", "abrade", "tie coat silicone-tie-coat"},
	} {
		if got := actions(compat.Routes(b, p, coating(t, b, want))[0].Steps); !slices.Equal(got, steps) {
			t.Errorf("%s: %v, want %v", want, got, steps)
		}
	}
}
