package compat_test

import (
	"slices"
	"testing"
	"testing/fstest"

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

// That the surface stays bare is said of a bare layer alone, and rests on what the material says of paint.
func TestABareLayerAlone(t *testing.T) {
	b := book(t)
	m, err := b.Material("grp")
	if err != nil {
		t.Fatal(err)
	}
	if f := one(t, compat.CheckStack(b, grp, bare(t, b), -1), "bare-stays"); f.Verdict != finding.Fine || !slices.Equal(f.Basis, []finding.Basis{m.Basis("painted")}) {
		t.Errorf("%v", f)
	}
	if fs := compat.CheckStack(b, grp, append(bare(t, b), sound(t, b, "epoxy-barrier", 300)), -1); fs.Has("bare-stays") {
		t.Errorf("under a barrier: %v", rules(fs))
	}
	p := grp
	p.Found = append(bare(t, b), sound(t, b, "epoxy-barrier", 300))
	if fs := p.Check(b); len(fs) != 1 || fs[0].Key != "found[1].coating" {
		t.Errorf("a bare surface under a barrier: %v", fs)
	}
}

// What is fine, and what is only a caution, is said of the top of the new layers; what is forbidden of each.
func TestTheTopSpeaksForTheNewLayers(t *testing.T) {
	b := book(t)
	hull := compat.Part{Name: "hull", Zone: "hull", Material: "aluminium"}
	stack := func(um int64, low, high string) compat.Stack {
		return compat.Stack{sound(t, b, "epoxy-barrier", um), fresh(t, b, low, compat.Signal, ""), fresh(t, b, high, compat.Working, "")}
	}
	for _, c := range []struct {
		name  string
		s     compat.Stack
		rule  finding.ID
		about int // which layer
		want  finding.Verdict
	}{
		{"what the metal takes", stack(400, "hard-copper-free", "ablative-copper-free"), "metal-takes", 2, finding.Fine},
		{"no barrier yet", stack(100, "hard-copper-free", "ablative-copper-free"), "barrier-advised", 2, finding.Caution},
		{"copper over a barrier", stack(400, "hard-thiocyanate", "ablative-thiocyanate"), "metal-barrier-there", 2, finding.Fine},
		{"copper over no barrier, below", stack(100, "hard-thiocyanate", "ablative-copper-free"), "metal-over-barrier", 1, finding.Forbidden},
		{"copper over no barrier, on top", stack(100, "hard-copper-free", "ablative-thiocyanate"), "metal-over-barrier", 2, finding.Forbidden},
	} {
		if f := one(t, compat.CheckStack(b, hull, c.s, -1), c.rule); f.About != c.s[c.about].Coating.Name || f.Verdict != c.want {
			t.Errorf("%s: %s of %s", c.name, f.Verdict, f.About)
		}
	}
}

// A film that the metal does not bear comes off where it was found, and does not go on where it is new.
func TestAFilmThatTheMetalDoesNotBear(t *testing.T) {
	b := book(t)
	for why, rule := range map[compat.Purpose]finding.ID{compat.Found: "old-copper-off", "": "old-copper-off", compat.Working: "metal-never"} {
		s := compat.Stack{sound(t, b, "epoxy-barrier", 400), fresh(t, b, "hard-cuprous", why, "")}
		fs := compat.CheckStack(b, compat.Part{Name: "hull", Material: "aluminium"}, s, -1)
		if f := one(t, fs, rule); f.Verdict != finding.Forbidden || fs.Has("old-copper-off") && fs.Has("metal-never") {
			t.Errorf("%q: %v", why, rules(fs))
		}
	}
}

// What is never painted, and what stays bare, asks for no barrier, whatever copper the material would take over one.
func TestNoBarrierUnderNothing(t *testing.T) {
	row := func(key, painted string) string {
		return `
[[material]]
key = "` + key + `"
basis = "invented"
painted = "` + painted + `"
cuprous_oxide = "over barrier"
metallic_copper = "over barrier"
other_copper = "over barrier"
copper_free = "over barrier"
barrier = "over barrier"
barrier_film = "300 um"
barrier_with = "epoxy-barrier"
two_pack = true
old_copper_stays = true
prepare = ["abrade"]
`
	}
	b := ownBook(t, row("alloy", "fine")+row("seal", "never"))
	for _, c := range []struct {
		material, want string
		rule           finding.ID
	}{{"alloy", "none", "bare-stays"}, {"seal", "none", "bare-stays"}, {"seal", "hard-cuprous", "never-painted"}} {
		fs := compat.OnMaterial(b, coating(t, b, c.want), compat.Part{Name: "it", Material: c.material, Found: bare(t, b)})
		if len(fs) != 1 || fs[0].Rule != c.rule {
			t.Errorf("%s on %s: %v", c.want, c.material, rules(fs))
		}
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

// A new layer without an age is in time, also where its row names no earliest hour and a window of minutes.
func TestACoatWithoutAnEarliestHourIsInTime(t *testing.T) {
	b := book(t)
	low := fresh(t, b, "epoxy-primer", compat.Undercoat, "")
	low.Coating.OvercoatMin, low.Coating.OvercoatMax = quantity.Duration{}, quantity.Minute.N(30)
	if fs := compat.CheckStack(b, grp, compat.Stack{low, fresh(t, b, "inert-epoxy", compat.Working, "")}, -1); fs.Has("window-past") || fs.Has("window-early") {
		t.Errorf("%v", rules(fs))
	}
}

// An undercoat buries nothing, and neither does leaving it at what lies there: only a coat that works is held against what undercoats cover.
func TestOnlyACoatThatWorksBuries(t *testing.T) {
	b := book(t)
	s := compat.Stack{sound(t, b, "ablative-cuprous-multi", 80), fresh(t, b, "sealer", compat.Undercoat, ""), fresh(t, b, "one-pack-primer", compat.Undercoat, "")}
	if fs := compat.CheckStack(b, grp, s, -1); fs.Has("stack-buried") || fs.Has("stack-buried-ask") {
		t.Errorf("a primer over a sealed ablative: %v", rules(fs))
	}
	p := compat.Part{Name: "hull", Material: "grp", Found: compat.Stack{sound(t, b, "organotin-old", 80), sound(t, b, "sealer", 50)}}
	if r := compat.Routes(b, p, coating(t, b, "none"))[0]; !slices.Equal(actions(r.Steps), []string{"wash"}) || len(r.Keeps) != 2 {
		t.Errorf("sealed organotin, to be left alone: %v", actions(r.Steps))
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

// A barrier over old paint is none: what lies on a film that is no epoxy does not count, and that it lies adrift is told.
func TestABarrierOnPaintDoesNotCount(t *testing.T) {
	b := ownBook(t, "[[coating]]\nkey = \"hard-copper-free\"\nbasis = \"invented\"\nunder = \"epoxy-barrier\"\n[[coating]]\nkey = \"epoxy-barrier\"\nbasis = \"invented\"\ncoats = 6\n")
	p := compat.Part{Name: "hull", Zone: "hull", Material: "ferrocement", Found: compat.Stack{sound(t, b, "inert-epoxy", 100)}}
	want := coating(t, b, "hard-copper-free")
	r := compat.Routes(b, p, want)[0]
	if len(r.Keeps) != 1 || len(r.Adds) != 1 || r.Adds[0].Film.Low.Cmp(quantity.Micrometre.N(250)) < 0 {
		t.Fatalf("keeps %d, %v: this shows nothing", len(r.Keeps), actions(r.Steps))
	}
	if one(t, r.Findings, "barrier-advised").Verdict != finding.Caution || one(t, r.Findings, "barrier-adrift").Against != p.Found[0].Coating.Name {
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

// A patch is made new: whatever state the layer was found in, its like in the patch is sound. What does not go over itself, or nobody knows
// whether it does, does not lap.
func TestAPatchIsSoundAndLapsOnWhatItGoesOver(t *testing.T) {
	b := book(t)
	worn := fresh(t, b, "ablative-cuprous-multi", compat.Working, "")
	worn.State = "worn"
	if ps, _ := compat.Patch(b, compat.Stack{worn}); len(ps) != 1 || ps[0].Layer.State != tables.Sound || !ps[0].MayLap {
		t.Errorf("%+v", ps)
	}
	if ps, _ := compat.Patch(b, compat.Stack{fresh(t, b, "foul-release-film", compat.Working, "")}); len(ps) != 1 || ps[0].MayLap {
		t.Errorf("a film that is replaced as a whole laps: %+v", ps)
	}
	// The surface itself, and no coating, are no layers of a patch.
	ps, said := compat.Patch(b, compat.Stack{bare(t, b)[0], fresh(t, b, "epoxy-barrier", compat.Undercoat, ""), fresh(t, b, "none", compat.Working, "")})
	if len(ps) != 1 || ps[0].Layer.Coating.Key != "epoxy-barrier" || said.Has("patch-old-film") {
		t.Errorf("%+v, %v", ps, rules(said))
	}
	silent, err := tables.Load(fstest.MapFS{"r.toml": {Data: []byte("[[rule]]\nkey = \"over-unwritten\"\nsays = \"nobody knows\"\nbasis = \"assumption\"\n")}})
	if err != nil {
		t.Fatal(err)
	}
	if ps, _ := compat.Patch(silent, compat.Stack{worn}); len(ps) != 1 || ps[0].MayLap {
		t.Errorf("where no row speaks it laps: %+v", ps)
	}
}
