package compat_test

import (
	"slices"
	"testing"

	"boatyard.example/bottomwork/compat"
	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

// What a pair is told by rests on the row that answers it, and only abrading has a grit.
func TestAPairRestsOnItsRow(t *testing.T) {
	b := book(t)
	n, grits := 0, 0
	for _, c := range next(b) {
		for old := range b.Coatings() {
			row, ok := b.OvercoatOf(&c, &old, true)
			if !ok {
				continue
			}
			for _, f := range compat.Over(b, c, compat.Layer{Coating: old, State: tables.Sound}) {
				if f.Rule != row.Rule {
					continue
				}
				n++
				if !slices.Equal(f.Basis, []finding.Basis{row.Basis("verdict")}) {
					t.Errorf("%s over %s: it rests on %v", c.Key, old.Key, f.Basis)
				}
				for _, s := range f.First {
					switch abrades := s.Do == finding.Abrade || s.Do == finding.WetScuff; {
					case s.Grit == "":
					case abrades:
						grits++
					default:
						t.Errorf("%s over %s: %s with %s", c.Key, old.Key, s.Do, s.Grit)
					}
				}
			}
		}
	}
	if n < 500 || grits < 50 {
		t.Errorf("%d pairs and %d grits: too few to mean anything", n, grits)
	}
}

// Where nothing lies, or nothing goes on, neither state nor window is judged.
func TestNothingHasNoStateAndNoWindow(t *testing.T) {
	b := book(t)
	surface := bare(t, b)[0]
	surface.State = "dirty"
	if fs := compat.Over(b, coating(t, b, "hard-cuprous"), surface); len(fs) != 1 || fs[0].Rule != "over-bare" {
		t.Errorf("on a bare surface: %v", rules(fs))
	}
	flaking := sound(t, b, "hard-cuprous", 100)
	flaking.State, flaking.Age = "flaking", quantity.Minute.N(1)
	if fs := compat.Over(b, coating(t, b, "none"), flaking); len(fs) != 1 || fs[0].Rule != "over-none" {
		t.Errorf("nothing over flaking paint: %v", rules(fs))
	}
}

// That copper lies below is told with every pair that may be, fresh or old, and with none that may not.
func TestCopperBelowIsTold(t *testing.T) {
	b := ownBook(t, `
[[rule]]
key = "own-rule"
says = "{about} over {against}."
basis = "invented"
[[overcoat]]
key = "own"
basis = "invented"
rule = "own-rule"
level = "bar"
new = "hard-copper-free"
old = "hard-cuprous"
verdict = "ask"
`)
	for _, c := range []struct {
		next, old string
		age       quantity.Duration
		pair      finding.Verdict
		told      bool
	}{
		{"ablative-copper-free", "hard-cuprous", quantity.Day.N(2), finding.Fine, true},
		{"ablative-copper-free", "hard-cuprous", quantity.Duration{}, finding.Needs, true},
		{"hard-copper-free", "ablative-cuprous-multi", quantity.Duration{}, finding.Forbidden, false},
		{"hard-copper-free", "hard-cuprous", quantity.Duration{}, finding.Ask, false},
	} {
		l := sound(t, b, c.old, 100)
		l.Age = c.age
		fs := compat.Over(b, coating(t, b, c.next), l)
		if fs[0].Verdict != c.pair || fs.Has("over-copper-below") != c.told {
			t.Errorf("%s over %s: %v, want %s, told %t", c.next, c.old, rules(fs), c.pair, c.told)
		}
	}
}

// The bare surface, and the film that nobody reported, have the names of the book.
func TestWhatIsNotThereHasTheNameOfTheBook(t *testing.T) {
	b := ownBook(t, "[[coating]]\nkey = \"bare\"\nbasis = \"invented\"\nname = \"naked bottom\"\n[[coating]]\nkey = \"unknown-old\"\nbasis = \"invented\"\nname = \"who knows what\"\noverride = true\nreason = \"a test\"\n")
	r := compat.Routes(b, compat.Part{Name: "hull", Material: "grp", Found: bare(t, b)}, coating(t, b, "hard-cuprous"))[0]
	if f := one(t, r.Findings, "over-bare"); f.Against != "naked bottom" {
		t.Errorf("over %q", f.Against)
	}
	fs := compat.OnMaterial(b, coating(t, b, "ablative-copper-free"), compat.Part{Name: "hull", Material: "aluminium"})
	if f := one(t, fs, "old-copper-off"); f.About != "who knows what" {
		t.Errorf("%q comes off", f.About)
	}
}

// Whoever adds to the findings of the best way adds nothing to what is said.
func TestAddingToAWayAddsNothingToWhatIsSaid(t *testing.T) {
	b := book(t)
	for _, material := range []string{"grp", "steel", "aluminium"} {
		for _, found := range grounds(t, b) {
			s := compat.On(b, compat.Part{Name: "part", Zone: "hull", Material: material, Found: found, Laminate: "wet"})
			for _, want := range wanted(b) {
				r, said := s.Best(&want)
				_ = append(r.Findings, finding.Finding{Rule: "spilled"})
				if said.Has("spilled") {
					t.Fatalf("%s on %s: what is said was written to: %v", want.Key, material, rules(said))
				}
			}
		}
	}
}

// A neighbour asks something of the hull where its zone keeps a gap and its metal never takes copper oxide; what is asked rests on both.
func TestBesideRestsOnZoneAndMetal(t *testing.T) {
	b := book(t)
	zone, err := b.Zone("leg")
	if err != nil {
		t.Fatal(err)
	}
	metal, err := b.Material("aluminium")
	if err != nil {
		t.Fatal(err)
	}
	both := []finding.Basis{zone.Basis("gap"), metal.Basis("cuprous_oxide")}
	for _, c := range []struct {
		hull, zone, material string
		rule                 finding.ID
		basis                []finding.Basis
	}{
		{"hard-cuprous", "leg", "aluminium", "beside-strip", both},
		{"copper-loaded-epoxy", "leg", "aluminium", "beside-metallic", both},
		{"hard-thiocyanate", "leg", "aluminium", "beside-fine", nil},
		{"hard-copper-free", "leg", "aluminium", "beside-fine", nil},
		{"hard-cuprous", "keel", "aluminium", "beside-fine", nil},
		{"hard-cuprous", "leg", "bronze", "beside-fine", nil},
		{"hard-cuprous", "leg", "zinc-anode", "beside-fine", nil},
		{"hard-cuprous", "", "aluminium", "beside-fine", nil},
	} {
		f := compat.Beside(b, coating(t, b, c.hull), []compat.Part{{Name: "it", Zone: c.zone, Material: c.material}})[0]
		if f.Rule != c.rule || !slices.Equal(f.Basis, c.basis) {
			t.Errorf("%s beside %s in zone %q: %s, rests on %v", c.hull, c.material, c.zone, f.Rule, f.Basis)
		}
	}
}

// A way tells what the pair is, and that the barrier is there which it puts on; nothing more is asked of it.
func TestAWayTellsItsPairAndItsBarrier(t *testing.T) {
	b := book(t)
	p := compat.Part{Name: "hull", Material: "grp", Found: compat.Stack{sound(t, b, "hard-cuprous", 100)}}
	if f := one(t, compat.Routes(b, p, coating(t, b, "ablative-cuprous-multi"))[0].Findings, "over-wear-on-hard"); f.Verdict != finding.Needs {
		t.Errorf("%v", f)
	}
	loose, top := sound(t, b, "hard-cuprous", 80), sound(t, b, "ablative-old", 80)
	loose.State = "flaking in places"
	p.Found = compat.Stack{loose, top}
	if f := one(t, compat.Routes(b, p, coating(t, b, "ablative-cuprous-multi"))[0].Findings, "state-spots"); f.About != top.Coating.Name || f.Against != loose.Coating.Name {
		t.Errorf("the state below: %s against %s", f.About, f.Against)
	}
	p = compat.Part{Name: "hull", Material: "steel", Found: bare(t, b)}
	r := compat.Routes(b, p, coating(t, b, "hard-cuprous"))[0]
	if f := one(t, r.Findings, "metal-barrier-there"); f.Verdict != finding.Fine || r.Findings.Has("barrier-needed") || r.Findings.Has("metal-over-barrier") {
		t.Errorf("%v", rules(r.Findings))
	}
}

// Of two old films that the metal does not bear each is told to come off, once, with the best way too; so is each thing that one film asks.
func TestTheBestWayTellsOfEachFilm(t *testing.T) {
	b := book(t)
	p := compat.Part{Name: "hull", Zone: "hull", Material: "aluminium", Found: compat.Stack{sound(t, b, "epoxy-barrier", 400), sound(t, b, "hard-old", 60), sound(t, b, "ablative-old", 60)}}
	want := coating(t, b, "ablative-copper-free")
	_, said := compat.On(b, p).Best(&want)
	var off []string
	for _, f := range said {
		if f.Rule == "old-copper-off" {
			off = append(off, f.About)
		}
	}
	if !slices.Equal(off, []string{p.Found[1].Coating.Name, p.Found[2].Coating.Name}) {
		t.Errorf("told to come off: %v", off)
	}
	want = coating(t, b, "hard-cuprous")
	_, said = compat.On(b, compat.Part{Name: "hull", Zone: "hull", Material: "steel", Found: bare(t, b)}).Best(&want)
	one(t, said, "metal-over-barrier")
	one(t, said, "barrier-needed")
	// The same film twice is told once, and what comes after it all the same.
	want = coating(t, b, "ablative-cuprous-multi")
	tin := sound(t, b, "organotin-old", 60)
	_, said = compat.On(b, compat.Part{Name: "hull", Zone: "hull", Material: "grp", Found: compat.Stack{tin, tin, sound(t, b, "ablative-old", 60)}}).Best(&want)
	one(t, said, "over-tin-below")
	one(t, said, "over-same-again")
}
