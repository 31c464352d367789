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
