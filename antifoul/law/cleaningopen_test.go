package law_test

import (
	"testing"

	"boatyard.example/bottomwork/antifoul/law"
	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/quantity"
)

// Whether cleaning afloat is left open: by a law that asks of every coating with a biocide, by one that names the film, by none; a ban leaves nothing open.
func TestCleaningOpen(t *testing.T) {
	b := tables.Default()
	on, err := quantity.ParseDate("2027-04-03")
	if err != nil {
		t.Fatal(err)
	}
	for name, c := range map[string]struct {
		place, role, coating string
		asked, named         bool
	}{
		"a biocide, anywhere":          {"GB", "kept", "hard-cuprous", true, false},
		"no biocide":                   {"GB", "kept", "foul-release-silicone", false, false},
		"a wearing film that is named": {"US-WA", "kept", "self-polishing-cuprous", true, true},
		"a hard film beside it":        {"US-WA", "kept", "hard-cuprous", true, false},
		"a film that is barred":        {"US-WA", "kept", "ablative-cuprous-multi", true, false},
		"only painted there":           {"US-WA", "painted", "self-polishing-cuprous", false, false},
		"a place nobody knows":         {"Atlantis", "kept", "foul-release-silicone", false, false},
	} {
		d := law.At(b, law.Craft{}, []law.Berth{{Place: c.place, Role: c.role}}, on)
		if asked, named := d.CleaningOpen(coating(t, b, c.coating)); asked != c.asked || named != c.named {
			t.Errorf("%s: asked %t, named %t", name, asked, named)
		}
	}
}

// What few films hold is a caution where nobody listed their actives, and no question.
func TestCleaningOpenForUnlistedActives(t *testing.T) {
	rows := oldFilm("organotin") + ownLaw("NZ", "cleaning", "ask", "actives = [\"cybutryne\"]\nmechanisms = [\"ablative\"]")
	b := with(t, rows)
	d := law.At(b, sloop, kept("NZ", "salt"), day(t, "2026-11-25"))
	if _, named := d.CleaningOpen(coating(t, b, "own-old")); named {
		t.Error("an old film whose actives nobody listed is asked about by name")
	}
}

// One kind of film that a law names is named as well as two.
func TestCleaningOpenForOneKindOfFilm(t *testing.T) {
	for mechs, want := range map[string]bool{`mechanisms = ["hard"]`: true, `mechanisms = ["hard", "soft"]`: true, "": false} {
		b := with(t, ownLaw("NZ", "cleaning", "ask", mechs))
		d := law.At(b, sloop, kept("NZ", "salt"), day(t, "2026-11-25"))
		if asked, named := d.CleaningOpen(coating(t, b, "hard-cuprous")); !asked || named != want {
			t.Errorf("%s: asked %t, named %t", mechs, asked, named)
		}
	}
}
