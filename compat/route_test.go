package compat_test

import (
	"math"
	"slices"
	"testing"
	"testing/fstest"

	"github.com/google/go-cmp/cmp"

	"boatyard.example/bottomwork/compat"
	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/finding"
)

// ways are the steps of each route.
func ways(rs []compat.Route) [][]string {
	var out [][]string
	for _, r := range rs {
		out = append(out, actions(r.Steps))
	}
	return out
}

func TestRoutes(t *testing.T) {
	b := book(t)
	flaking := sound(t, b, "ablative-cuprous-multi", 100)
	flaking.State = "flaking"
	spots := sound(t, b, "ablative-cuprous-multi", 100)
	spots.State = "flaking in places"
	barrier := sound(t, b, "epoxy-barrier", 400)
	toBare := []string{"strip", "degrease", "abrade"}
	suspect := []string{"identify", "strip", "degrease", "abrade"} // nobody scrapes what may hold tin or lead unknown
	for _, c := range []struct {
		name, material string
		found          compat.Stack
		want           string
		ways           [][]string // none: there is no way
	}{
		{"same again on sound paint", "grp", compat.Stack{sound(t, b, "ablative-cuprous-multi", 100)}, "ablative-cuprous-multi", [][]string{{"wash"}, toBare}},
		{"same again, loose in places", "grp", compat.Stack{spots}, "ablative-cuprous-multi", [][]string{{"wash", "spot repair"}, toBare}},
		{"same again on flaking paint", "grp", compat.Stack{flaking}, "ablative-cuprous-multi", [][]string{toBare}},
		{"flaking below sound paint", "grp", compat.Stack{flaking, sound(t, b, "ablative-cuprous-multi", 100)}, "ablative-cuprous-multi", [][]string{toBare}},
		{"loose places below sound paint", "grp", compat.Stack{spots, sound(t, b, "ablative-cuprous-multi", 100)}, "ablative-cuprous-multi", [][]string{{"wash", "spot repair"}, toBare}},
		{"wear layer over hard", "grp", compat.Stack{sound(t, b, "hard-cuprous", 100)}, "ablative-cuprous-multi", [][]string{{"wash", "abrade"}, toBare}},
		{"hard over a wear layer", "grp", compat.Stack{sound(t, b, "ablative-cuprous-multi", 100)}, "hard-cuprous", [][]string{toBare}},
		{"strip stops at sound epoxy", "grp", compat.Stack{barrier, sound(t, b, "ablative-cuprous-multi", 100)}, "hard-cuprous", [][]string{{"strip", "wash", "abrade"}}},
		{"self-polishing over ablative", "grp", compat.Stack{sound(t, b, "ablative-cuprous-multi", 100)}, "self-polishing-cuprous", [][]string{{"wash", "abrade", "tie coat tie-coat"}, toBare}},
		{"nothing reported", "grp", nil, "ablative-cuprous-multi", [][]string{{"identify", "test patch", "wash", "sealer sealer"}, suspect}},
		{"bare gelcoat", "grp", bare(t, b), "hard-cuprous", [][]string{{"degrease", "abrade"}}},
		{"silicone from antifouling", "grp", compat.Stack{barrier, sound(t, b, "hard-cuprous", 100)}, "foul-release-silicone", [][]string{{"strip", "wash", "abrade", "tie coat silicone-tie-coat"}}},
		{"silicone on bare gelcoat", "grp", bare(t, b), "foul-release-silicone", [][]string{{"degrease", "abrade", "prime epoxy-primer", "tie coat silicone-tie-coat"}}},
		{"organotin", "grp", compat.Stack{sound(t, b, "organotin-old", 100)}, "ablative-cuprous-multi", [][]string{{"identify", "wash", "test patch", "sealer sealer"}, suspect}},
		{"organotin left alone", "grp", compat.Stack{sound(t, b, "organotin-old", 100)}, "none", [][]string{{"identify", "strip"}}},
		{"old antifouling left alone", "grp", compat.Stack{sound(t, b, "hard-cuprous", 100)}, "none", [][]string{{"wash"}, {"strip"}}},
		{"vinyl, mild solvent", "grp", compat.Stack{sound(t, b, "vinyl-old", 100)}, "ablative-cuprous-multi", [][]string{{"wash", "abrade", "tie coat tie-coat"}, suspect}},
		{"vinyl, strong solvent", "grp", compat.Stack{sound(t, b, "vinyl-old", 100)}, "hard-cuprous", [][]string{suspect}},
		{"carvel planks take no epoxy", "wood-carvel", compat.Stack{sound(t, b, "soft-cuprous", 100)}, "inert-epoxy", nil},
		{"carvel planks, soft again", "wood-carvel", compat.Stack{sound(t, b, "soft-cuprous", 100)}, "soft-cuprous", [][]string{{"wash"}, {"strip", "abrade", "prime flexible-wood-primer"}}},
		{"bare steel", "steel", bare(t, b), "ablative-cuprous-multi", [][]string{{"degrease", "blast", "prime epoxy-primer", "barrier epoxy-barrier"}}},
		{"steel under a sound barrier", "steel", compat.Stack{barrier, sound(t, b, "ablative-cuprous-multi", 100)}, "ablative-cuprous-multi", [][]string{{"wash"}, {"strip", "wash", "abrade"}}},
		{"steel under a thin barrier", "steel", compat.Stack{sound(t, b, "epoxy-barrier", 200), sound(t, b, "ablative-copper-free", 100)}, "ablative-copper-free", [][]string{{"strip", "wash", "abrade", "barrier epoxy-barrier"}}},
		{"steel, bitumen again", "steel", compat.Stack{sound(t, b, "bitumen-old", 100)}, "blacking-bitumen", [][]string{{"wash"}, {"degrease", "blast", "prime epoxy-primer"}}},
		{"steel, metallic copper", "steel", bare(t, b), "copper-loaded-epoxy", nil},
		{"aluminium, cuprous oxide", "aluminium", compat.Stack{barrier}, "hard-cuprous", nil},
		{"aluminium, thiocyanate over a barrier", "aluminium", compat.Stack{barrier}, "ablative-thiocyanate", [][]string{{"wash", "abrade"}, {"degrease", "blast", "prime epoxy-primer", "barrier epoxy-barrier"}}},
		{"aluminium, thiocyanate on bare metal", "aluminium", bare(t, b), "ablative-thiocyanate", [][]string{{"degrease", "blast", "prime epoxy-primer", "barrier epoxy-barrier"}}},
		{"aluminium, copper-free on bare metal", "aluminium", bare(t, b), "ablative-copper-free", [][]string{{"degrease", "blast", "prime epoxy-primer"}}},
		{"aluminium, copper-free over unknown", "aluminium", compat.Stack{barrier, sound(t, b, "unknown-old", 100)}, "ablative-copper-free", [][]string{{"identify", "strip", "wash", "abrade"}}},
		{"aluminium, old copper left alone", "aluminium", compat.Stack{barrier, sound(t, b, "hard-cuprous", 100)}, "none", [][]string{{"strip"}}},
		{"copper-nickel under paint, to be left alone", "copper-nickel", compat.Stack{sound(t, b, "ablative-cuprous-multi", 100)}, "none", [][]string{{"strip"}}},
		{"bare copper-nickel, to be left alone", "copper-nickel", bare(t, b), "none", [][]string{{"wash"}}},
		{"anode", "zinc-anode", nil, "hard-cuprous", nil},
	} {
		t.Run(c.name, func(t *testing.T) {
			rs := compat.Routes(b, compat.Part{Name: "hull", Material: c.material, Zone: "hull", Found: c.found}, coating(t, b, c.want))
			if c.ways == nil {
				if len(rs) != 1 || len(rs[0].Steps) != 0 || rs[0].Findings.Worst() != finding.Forbidden {
					t.Errorf("a way where there is none: %v %v", ways(rs), rules(rs[0].Findings))
				}
				return
			}
			if diff := cmp.Diff(c.ways, ways(rs)); diff != "" {
				t.Errorf("ways (-want +got):\n%s\n%v", diff, rules(rs[0].Findings))
			}
		})
	}
}

// What the strip is for is told beside it.
func TestStripSaysWhy(t *testing.T) {
	b := book(t)
	flaking := sound(t, b, "ablative-cuprous-multi", 100)
	flaking.State = "flaking"
	for _, c := range []struct {
		material, want string
		old            compat.Layer
		why            finding.ID
	}{
		{"grp", "hard-cuprous", sound(t, b, "ablative-cuprous-multi", 100), "over-hard-on-soft"},
		{"grp", "ablative-cuprous-multi", flaking, "state-off"},
		{"aluminium", "ablative-copper-free", sound(t, b, "hard-cuprous", 100), "old-copper-off"},
		{"steel", "hard-copper-free", sound(t, b, "hard-copper-free", 100), "barrier-needed"},
	} {
		rs := compat.Routes(b, compat.Part{Name: "hull", Material: c.material, Found: compat.Stack{c.old}}, coating(t, b, c.want))
		f := one(t, rs[0].Findings, c.why)
		if f.Verdict != finding.Needs || len(f.First) != 1 || f.First[0].Do != finding.Strip {
			t.Errorf("%s: %s %v, want needs strip", c.why, f.Verdict, actions(f.First))
		}
	}
}

// Hours of a way, with a pencil: degrease 0.04, blast 0.5, old paint and all, prime one coat 0.08, barrier of 425 um in coats of 80 um, which
// are six, 0.08 each.
func TestEffort(t *testing.T) {
	b := book(t)
	r := compat.Routes(b, compat.Part{Name: "hull", Material: "steel", Found: compat.Stack{sound(t, b, "hard-cuprous", 100)}}, coating(t, b, "ablative-cuprous-multi"))[0]
	if want := 0.04 + 0.5 + 0.08 + 6*0.08; math.Abs(r.Effort.Typical-want) > 1e-9 {
		t.Errorf("%v h/m2, want %v: %v", r.Effort.Typical, want, actions(r.Steps))
	}
	if n := r.Adds[1].Coats; n != 6 {
		t.Errorf("%d coats of barrier, want 6", n)
	}
	m, err := b.Material("steel")
	if err != nil {
		t.Fatal(err)
	}
	if !r.Adds[1].Film.Low.Equal(m.Film.Low) {
		t.Errorf("barrier of %v, want the material's %v", r.Adds[1].Film.Low, m.Film.Low)
	}
}

func TestWetLaminate(t *testing.T) {
	b := book(t)
	p := compat.Part{Name: "hull", Material: "grp", Found: bare(t, b), Laminate: "wet"}
	r := compat.Routes(b, p, coating(t, b, "foul-release-silicone"))[0]
	if want := []string{"degrease", "abrade", "dry out", "wash", "abrade", "prime epoxy-primer", "tie coat silicone-tie-coat"}; !slices.Equal(actions(r.Steps), want) {
		t.Errorf("%v, want %v", actions(r.Steps), want)
	}
	if f := one(t, r.Findings, "wet-laminate"); f.Verdict != finding.Needs || f.First[0].Do != finding.DryOut {
		t.Errorf("%s %v", f.Verdict, actions(f.First))
	}
	// Abrading again after the drying is done with the grit of the first time.
	p.Found = compat.Stack{sound(t, b, "epoxy-barrier", 400)}
	r = compat.Routes(b, p, coating(t, b, "foul-release-silicone"))[0]
	var grits []string
	for _, s := range r.Steps {
		if s.Do == finding.Abrade {
			grits = append(grits, s.Grit)
		}
	}
	if len(grits) != 2 || grits[0] == "" || grits[0] != grits[1] {
		t.Errorf("abraded with %q before and after drying out: %v", grits, actions(r.Steps))
	}
	p.Found = bare(t, b)
	for _, lam := range []string{"", "dry"} {
		p.Laminate = lam
		if r := compat.Routes(b, p, coating(t, b, "foul-release-silicone"))[0]; r.Findings.Has("wet-laminate") {
			t.Errorf("laminate %q: dried out", lam)
		}
	}
	p.Laminate = "wet"
	if r := compat.Routes(b, p, coating(t, b, "hard-cuprous"))[0]; r.Findings.Has("wet-laminate") {
		t.Error("one-pack on a wet laminate shuts nothing in")
	}
	if fs := compat.OnMaterial(b, coating(t, b, "epoxy-barrier"), p); one(t, fs, "wet-laminate").Verdict != finding.Needs {
		t.Errorf("a barrier on a wet laminate: %v", rules(fs))
	}
}

func TestPaintedAnodeIsStripped(t *testing.T) {
	b := book(t)
	none := coating(t, b, "none")
	p := compat.Part{Name: "anode", Material: "zinc-anode", Zone: "fitting"}
	if r := compat.Routes(b, p, none)[0]; len(r.Steps) != 0 || r.Findings.Worst() != finding.Fine {
		t.Errorf("an anode as it should be: %v %v", actions(r.Steps), rules(r.Findings))
	}
	p.Found = compat.Stack{sound(t, b, "hard-cuprous", 50)}
	if r := compat.Routes(b, p, none)[0]; !slices.Equal(actions(r.Steps), []string{"strip"}) {
		t.Errorf("a painted anode: %v", actions(r.Steps))
	}
}

// What holds organotin may hold copper oxide too: a metal that takes copper oxide new, and no unknown old film, sends it off.
func TestOrganotinCountsAsUnknown(t *testing.T) {
	b, err := book(t).With(fstest.MapFS{"own.toml": {Data: []byte(`
[[material]]
key = "alloy"
basis = "invented"
painted = "fine"
cuprous_oxide = "fine"
metallic_copper = "fine"
other_copper = "fine"
copper_free = "fine"
barrier = "fine"
two_pack = true
old_copper_stays = false
prepare = ["abrade"]
`)}})
	if err != nil {
		t.Fatal(err)
	}
	for old, off := range map[string]bool{"organotin-old": true, "unknown-old": true, "hard-cuprous": false} {
		p := compat.Part{Name: "hull", Material: "alloy", Found: compat.Stack{sound(t, b, old, 100)}}
		if got := compat.OnMaterial(b, coating(t, b, "ablative-cuprous-multi"), p).Has("old-copper-off"); got != off {
			t.Errorf("%s comes off: %v, want %v", old, got, off)
		}
	}
}

func TestUnknownMaterialHasNoRoute(t *testing.T) {
	b := book(t)
	rs := compat.Routes(b, compat.Part{Name: "hull", Material: "unobtainium"}, coating(t, b, "hard-cuprous"))
	if len(rs) != 1 || len(rs[0].Steps) != 0 || rs[0].Findings.Worst() != finding.Forbidden {
		t.Errorf("%v", rules(rs[0].Findings))
	}
}

// What a route keeps are the caller's layers, and adding to it must not write into them.
func TestRoutesLeaveTheInputAlone(t *testing.T) {
	b := book(t)
	found := make(compat.Stack, 2, 8)
	found[0], found[1] = sound(t, b, "epoxy-barrier", 200), sound(t, b, "ablative-old", 100)
	spare := found[:8]
	for _, want := range wanted(b) {
		for _, r := range compat.Routes(b, compat.Part{Name: "hull", Material: "steel", Found: found}, want) {
			_ = append(r.Keeps, compat.Layer{Coating: tables.Coating{Row: tables.Row{Name: "spilled"}}})
		}
	}
	if found[1].Coating.Key != "ablative-old" || spare[2].Coating.Name != "" {
		t.Errorf("the found layers were written to: %s, %q", found[1].Coating.Key, spare[2].Coating.Name)
	}
}
