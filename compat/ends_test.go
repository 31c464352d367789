package compat_test

import (
	"slices"
	"testing"
	"testing/fstest"

	"boatyard.example/bottomwork/compat"
	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/finding"
)

// The zone asks for the film that meets the water, and for none below it.
func TestZoneJudgesTheTopOnly(t *testing.T) {
	b := book(t)
	p := compat.Part{Name: "propeller", Material: "bronze", Zone: "propeller"}
	s := compat.Stack{fresh(t, b, "hard-copper-free", compat.Signal, ""), fresh(t, b, "ablative-copper-free", compat.Working, "")}
	if f := one(t, compat.CheckStack(b, p, s, 14), "zone-mechanism"); f.Verdict != finding.Forbidden || f.About != s[1].Coating.Name {
		t.Errorf("%s of %s", f.Verdict, f.About)
	}
	p.Zone = "flat"
	if fs := compat.CheckStack(b, p, s, 14); fs.Has("zone-mechanism") {
		t.Errorf("on the flat: %v", rules(fs))
	}
}

// A coating that wants an undercoat of its own rests on the row that says so, not on the pair's.
func TestUndercoatNamesWhoWantsIt(t *testing.T) {
	b, err := book(t).With(fstest.MapFS{"own.toml": {Data: []byte("[[coating]]\nkey = \"foul-release-silicone\"\nbasis = \"own table\"\nsource = \"its sheet\"\nunder = \"silicone-tie-coat\"\n")}})
	if err != nil {
		t.Fatal(err)
	}
	next := coating(t, b, "foul-release-silicone")
	f := one(t, compat.Over(b, next, sound(t, b, "epoxy-barrier", 300)), "over-undercoat")
	if !slices.Equal(f.Basis, []finding.Basis{next.Basis("under")}) || f.Basis[0].Source != "its sheet" {
		t.Errorf("it rests on %v", f.Basis)
	}
}

// Where nothing was reported the film is taken for an unknown one: it comes off what bears no old copper, and stays on what does.
func TestNothingReported(t *testing.T) {
	b := book(t)
	for material, off := range map[string]bool{"aluminium": true, "grp": false} {
		fs := compat.OnMaterial(b, coating(t, b, "ablative-copper-free"), compat.Part{Name: "hull", Material: material, Zone: "hull"})
		if fs.Has("not-reported") != off || fs.Has("old-copper-off") != off {
			t.Errorf("%s: %v", material, rules(fs))
		}
		if off {
			if f := one(t, fs, "old-copper-off"); f.Verdict != finding.Needs || len(f.First) != 1 || f.First[0].Do != finding.Strip {
				t.Errorf("%s: %v", material, f)
			}
		}
	}
}

// Organotin that lies under another film is told as lying below; on top it is told by itself.
func TestTinBelow(t *testing.T) {
	b := book(t)
	tin, soft := sound(t, b, "organotin-old", 60), sound(t, b, "ablative-old", 60)
	for name, c := range map[string]struct {
		found compat.Stack
		below bool
	}{"on top": {compat.Stack{tin}, false}, "below": {compat.Stack{tin, soft}, true}, "above": {compat.Stack{soft, tin}, false}} {
		p := compat.Part{Name: "hull", Material: "grp", Zone: "hull", Found: c.found}
		told := false
		for _, r := range compat.Routes(b, p, coating(t, b, "ablative-cuprous-multi")) {
			if len(r.Keeps) == len(c.found) && r.Findings.Has("over-tin-below") {
				told = true
				if f := one(t, r.Findings, "over-tin-below"); f.About != soft.Coating.Name || f.Against != tin.Coating.Name {
					t.Errorf("%s: %s over %s", name, f.About, f.Against)
				}
			}
		}
		if told != c.below {
			t.Errorf("%s: told as below: %t", name, told)
		}
	}
}

// A laminate that is still wet asks for drying before two components go on, and before one not.
func TestWetLaminateUnderOneComponent(t *testing.T) {
	b := book(t)
	for key, want := range map[string]bool{"epoxy-barrier": true, "one-pack-primer": false} {
		for laminate, wet := range map[string]bool{"wet": true, "": false} {
			p := compat.Part{Name: "hull", Material: "grp", Zone: "hull", Laminate: laminate}
			fs := compat.CheckStack(b, p, compat.Stack{fresh(t, b, key, compat.Undercoat, "")}, -1)
			if got := fs.Has("wet-laminate"); got != (want && wet) {
				t.Errorf("%s on a laminate %q: %v", key, laminate, rules(fs))
			}
		}
	}
}

// Over undercoats alone nothing is buried: each is judged by its neighbour.
func TestUndercoatsBuryNothing(t *testing.T) {
	b := book(t)
	var under, over []string
	for c := range b.Coatings() {
		switch c.Role {
		case tables.Primer, tables.Barrier, tables.Sealer, tables.TieCoat:
			under = append(under, c.Key)
		case tables.Antifouling, tables.Blacking:
			over = append(over, c.Key)
		case tables.OldFilm, tables.Bare:
		}
	}
	for _, low := range under {
		for _, high := range under {
			for _, top := range over {
				s := compat.Stack{sound(t, b, low, 100), fresh(t, b, high, compat.Undercoat, ""), fresh(t, b, top, compat.Working, "")}
				if fs := compat.CheckStack(b, grp, s, -1); fs.Has("stack-buried") || fs.Has("stack-buried-ask") {
					t.Fatalf("%s over %s over %s: %v", top, high, low, rules(fs))
				}
			}
		}
	}
}

// A way tells that nothing was reported where nothing was, and only there.
func TestAWayTellsThatNothingWasReported(t *testing.T) {
	b := book(t)
	for name, found := range map[string]compat.Stack{"nothing": nil, "bare": bare(t, b), "one film": {sound(t, b, "ablative-cuprous-multi", 100)}} {
		p := grp
		p.Found = found
		for _, r := range compat.Routes(b, p, coating(t, b, "ablative-cuprous-multi")) {
			if r.Findings.Has(compat.RuleNotReported) != (found == nil) {
				t.Errorf("%s found: %v", name, rules(r.Findings))
			}
		}
	}
}
