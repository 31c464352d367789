package antifoul_test

import (
	"errors"
	"strings"
	"testing"

	"boatyard.example/bottomwork/antifoul"
	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/finding"
)

// Specify answers for any type of the ranking what Plan answers for the chosen one.
func TestSpecify(t *testing.T) {
	b := tables.Default()
	j := planned(t, boatText(cruiserHull, "aluminium", film("epoxy-barrier", `film = "350 um"`), "[use]\nwater = \"salt\"\ngrowth = \"medium\"\nhaul_out_every = \"12 months\"\nkept = \"afloat\""))
	want, ok := j.Scheme("hull")
	if !ok {
		t.Fatal("nothing may be used")
	}
	s, err := antifoul.Specify(b, j.Boat, "hull", want.Coating)
	if err != nil {
		t.Fatal(err)
	}
	if s.Refused() || len(s.Coats) != len(want.Coats) || len(s.Coats) == 0 {
		t.Fatalf("%d layers put on, refused %v; Plan has %d", len(s.Coats), s.Refused(), len(want.Coats))
	}
	for i, k := range s.Coats {
		w := want.Coats[i]
		if k.Layer.Coating.Key != w.Layer.Coating.Key || k.Layer.Coats != w.Layer.Coats || !k.Litres.Typical.Equal(w.Litres.Typical) {
			t.Errorf("layer %d: %d coats of %s, %s; Plan has %d of %s, %s", i, k.Layer.Coats, k.Layer.Coating.Key, k.Litres.Typical, w.Layer.Coats, w.Layer.Coating.Key, w.Litres.Typical)
		}
	}

	// Cuprous oxide on aluminium is refused with a reason, and there are no layers.
	s, err = antifoul.Specify(b, j.Boat, "hull", coating(t, b, "hard-cuprous"))
	if err != nil || !s.Refused() || len(s.Coats) > 0 || !s.Findings.Has(antifoul.RuleRefused) {
		t.Errorf("hard-cuprous on aluminium: %v, refused %v, %d layers, %v", err, s.Refused(), len(s.Coats), s.Findings)
	}

	// An unknown part, a coating that no bottom ends with, and a boat with faults are errors.
	if _, err = antifoul.Specify(b, j.Boat, "hul", want.Coating); !errors.Is(err, finding.ErrUnknown) {
		t.Errorf("unknown part: %v", err)
	}
	if _, err = antifoul.Specify(b, j.Boat, "hull", coating(t, b, "epoxy-primer")); !errors.Is(err, finding.ErrValue) {
		t.Errorf("a primer: %v", err)
	}
	if _, err = antifoul.Specify(b, antifoul.Boat{}, "hull", want.Coating); !errors.Is(err, finding.ErrMissing) {
		t.Errorf("no boat: %v", err)
	}
}

// A laminate that is still wet is said beside the layers, and a dry one is not.
func TestWetLaminateIsSaid(t *testing.T) {
	dry := boatText(cruiserHull, "grp", film("epoxy-barrier", `film = "350 um"`), "[use]\nwater = \"salt\"\ngrowth = \"medium\"\nhaul_out_every = \"12 months\"\nkept = \"afloat\"")
	for text, want := range map[string]bool{dry: false, strings.Replace(dry, `material = "grp"`, "material = \"grp\"\nlaminate = \"wet\"", 1): true} {
		s, ok := planned(t, text).Scheme("hull")
		if !ok || len(s.Coats) == 0 {
			t.Fatal("nothing may be used")
		}
		if s.Findings.Has(antifoul.RuleWet) != want {
			t.Errorf("wet %t: %v", want, s.Findings)
		}
	}
}
