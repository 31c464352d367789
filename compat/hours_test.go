package compat_test

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"boatyard.example/bottomwork/compat"
	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

// hours sums the hours of the steps, each end by itself: those of a step for each of its coats, or once.
func hours(b *tables.Book, steps []finding.Step) (sum quantity.Range[float64]) {
	for _, s := range steps {
		h, _ := b.Hours(s.Do)
		for range max(1, s.Coats) {
			sum.Low, sum.Typical, sum.High = sum.Low+h.Low, sum.Typical+h.Typical, sum.High+h.High
		}
	}
	return sum
}

// spends fails unless the effort of a way is the sum of its steps, at each end.
func spends(t *testing.T, b *tables.Book, r compat.Route, what string) {
	t.Helper()
	sum := hours(b, r.Steps)
	for _, d := range []float64{sum.Low - r.Effort.Low, sum.Typical - r.Effort.Typical, sum.High - r.Effort.High} {
		if math.Abs(d) > 1e-9 {
			t.Errorf("%s: %v h/m2, the steps take %v: %v", what, r.Effort, sum, actions(r.Steps))
			return
		}
	}
}

// What the steps of a way take is its effort, low, typical and high; also where the first step comes in late, of an unknown film over one
// that is mended, and of a row that asks of a bare surface what it is.
func TestAWayTakesWhatItsStepsTake(t *testing.T) {
	b := book(t)
	loose := sound(t, b, "hard-cuprous", 80)
	loose.State = "flaking in places"
	grounds := append(grounds(t, b), compat.Stack{loose, sound(t, b, "unknown-old", 80)})
	for _, material := range []string{"grp", "steel", "aluminium", "zinc-anode"} {
		for i, found := range grounds {
			for _, laminate := range []string{"", "wet"} {
				for _, want := range wanted(b) {
					p := compat.Part{Name: "part", Zone: "hull", Material: material, Found: found, Laminate: laminate}
					for _, r := range compat.Routes(b, p, want) {
						spends(t, b, r, fmt.Sprintf("%s on %s, ground %d %s", want.Key, material, i, laminate))
					}
				}
			}
		}
	}
	asks := ownBook(t, `
[[rule]]
key = "own-rule"
says = "{about} over {against}."
basis = "invented"
[[overcoat]]
key = "own"
basis = "invented"
rule = "own-rule"
level = "pair"
new = "hard"
old = "none"
verdict = "needs"
steps = ["identify"]
`)
	r := compat.Routes(asks, compat.Part{Name: "hull", Material: "grp", Found: bare(t, asks)}, coating(t, asks, "hard-cuprous"))[0]
	if !slices.Equal(actions(r.Steps), []string{"identify", "degrease", "abrade"}) {
		t.Errorf("%v", actions(r.Steps))
	}
	spends(t, asks, r, "a bare surface that is identified")
}

// Of ways that take the same hours and coats the one whose steps come first by their words is the best, of all ways and alone.
func TestTheBestOfEqualWays(t *testing.T) {
	b := ownBook(t, "[[step]]\nkey = \"strip\"\nbasis = \"invented\"\nhours_m2 = [0.5, 0.5, 0.5]\n[[step]]\nkey = \"wash\"\nbasis = \"invented\"\nhours_m2 = [0.5, 0.5, 0.5]\n")
	p := compat.Part{Name: "hull", Zone: "hull", Material: "grp", Found: compat.Stack{sound(t, b, "hard-cuprous", 80)}}
	none := coating(t, b, "none")
	if got := ways(compat.Routes(b, p, none)); fmt.Sprint(got) != "[[strip] [wash]]" {
		t.Errorf("ways are %v", got)
	}
	if r, _ := compat.On(b, p).Best(&none); !slices.Equal(actions(r.Steps), []string{"strip"}) {
		t.Errorf("best is %v", actions(r.Steps))
	}
}

// Abrading that is asked for twice is done once, with the grit that either names, the first before the second; and what one coat asks for
// stays with it, whatever is asked of the same surface next.
func TestAbradingOnceWithTheGritThatIsNamed(t *testing.T) {
	b := book(t)
	chalking := func(key string) compat.Layer {
		l := sound(t, b, key, 80)
		l.State = "chalking"
		return l
	}
	grit := func(s *compat.Surface, want string) string {
		c := coating(t, b, want)
		var grits []string
		for _, r := range s.Routes(&c) {
			if len(r.Keeps) == 0 {
				continue
			}
			for _, step := range r.Steps {
				if step.Do == finding.Abrade {
					grits = append(grits, step.Grit)
				}
			}
		}
		if len(grits) != 1 {
			t.Fatalf("%s: abraded with %q", want, grits)
		}
		return grits[0]
	}
	// The state names no grit, the row of the pair does: 80 to 120.
	s := compat.On(b, compat.Part{Name: "hull", Material: "grp", Found: compat.Stack{chalking("hard-cuprous")}})
	if got := grit(s, "ablative-cuprous-multi"); got != "80 to 120" {
		t.Errorf("over chalking hard: %q", got)
	}
	// The layer below is abraded before anything is known of the next coat; one coat names a grit, the other none.
	s = compat.On(b, compat.Part{Name: "hull", Material: "grp", Found: compat.Stack{chalking("ablative-old"), sound(t, b, "ablative-old", 80)}})
	for _, c := range [][2]string{{"ablative-cuprous-multi", ""}, {"self-polishing-cuprous", "80 to 120"}, {"ablative-cuprous-multi", ""}} {
		if got := grit(s, c[0]); got != c[1] {
			t.Errorf("%s: %q, want %q", c[0], got, c[1])
		}
	}
	// The row of the coat names one grit and the row of its tie coat another.
	b = ownBook(t, "[[overcoat]]\nkey = \"tie-coat-on-antifouling\"\nbasis = \"invented\"\ngrit = \"320\"\n")
	s = compat.On(b, compat.Part{Name: "hull", Material: "grp", Found: compat.Stack{sound(t, b, "ablative-old", 80)}})
	if got := grit(s, "self-polishing-cuprous"); got != "80 to 120" {
		t.Errorf("under a tie coat: %q", got)
	}
}

// An undercoat has as many coats as its row says at least, and their film; a barrier as many as its film asks for on top of that; one of which some
// lies there, what is missing.
func TestHowManyCoatsAnUndercoatHas(t *testing.T) {
	b := ownBook(t, "[[coating]]\nkey = \"epoxy-primer\"\nbasis = \"invented\"\ncoats = 3\n[[coating]]\nkey = \"epoxy-barrier\"\nbasis = \"invented\"\ncoats = 6\n")
	um := quantity.Micrometre.N
	for _, c := range []struct {
		name, material string
		found          compat.Stack
		barrier        quantity.YesNo
		coats          int
		film           quantity.Range[quantity.Film]
	}{
		{"primer of 50, 60, 75 um in three coats", "bronze", bare(t, b), quantity.No, 3, quantity.Range[quantity.Film]{Low: um(150), Typical: um(180), High: um(225)}},
		{"barrier of 275 um in coats of 80, of which six are the least", "grp", bare(t, b), quantity.Yes, 6, quantity.Range[quantity.Film]{Low: um(250), Typical: um(275), High: um(300)}},
		{"215 um more of it over 60 um of epoxy", "grp", compat.Stack{sound(t, b, "epoxy-primer", 60)}, quantity.Yes, 3, quantity.Range[quantity.Film]{Low: um(190), Typical: um(215), High: um(240)}},
	} {
		p := compat.Part{Name: "part", Material: c.material, Found: c.found, Barrier: c.barrier}
		l := compat.Routes(b, p, coating(t, b, "hard-copper-free"))[0].Adds
		if len(l) != 1 || l[0].Coats != c.coats || !l[0].Film.Low.Equal(c.film.Low) || !l[0].Film.Typical.Equal(c.film.Typical) || !l[0].Film.High.Equal(c.film.High) {
			t.Errorf("%s: %+v", c.name, l)
		}
	}
}

// However many steps a state asks for, a glance tells those of the best way, in order; also where they and those of the pair come to just the
// sixteen that a slate has room for.
func TestAGlanceAtManySteps(t *testing.T) {
	full := book(t)
	all := []string{"wash", "degrease", "abrade", "wet scuff", "test patch", "spot repair", "dry out", "wait", "mask", "shift stands", "gap", "identify", "polish"}
	for n := 11; n <= len(all); n++ {
		b := with(t, full, `
[[rule]]
key = "own-rule"
says = "{about} over {against}."
basis = "invented"
[[condition]]
key = "worn"
basis = "invented"
steps = ["`+strings.Join(all[:n], `", "`)+`"]
[[overcoat]]
key = "own"
basis = "invented"
rule = "own-rule"
level = "pair"
new = "self-polishing"
old = "ablative"
old_packs = 1
verdict = "needs"
steps = ["tie coat", "spot repair", "polish", "wash"]
with = "tie-coat"
[[step]]
key = "strip"
basis = "invented"
hours_m2 = [9, 9, 9]
`)
		worn := sound(t, b, "ablative-old", 80)
		worn.State = "worn"
		p := compat.Part{Name: "hull", Material: "grp", Found: compat.Stack{worn}}
		want := coating(t, b, "self-polishing-cuprous")
		s := compat.On(b, p)
		var slate compat.Slate
		r, _ := s.Best(&want)
		if got := actions(r.Steps); !slices.Equal(got[len(got)-4:], []string{"tie coat tie-coat", "spot repair", "polish", "wash"}) {
			t.Errorf("%d steps of a state: %v", n, got)
		}
		if g := s.Glance(&want, &slate); !slices.EqualFunc(g.Steps, r.Steps, alike) {
			t.Errorf("%d steps of a state: %v, at a glance %v", n, actions(r.Steps), actions(g.Steps))
		}
	}
}
