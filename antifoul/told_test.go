package antifoul_test

import (
	"cmp"
	"slices"
	"strings"
	"testing"

	"boatyard.example/bottomwork/antifoul"
	"boatyard.example/bottomwork/compat"
	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/finding"
)

// A way of putting paint on calls for its own caution, where any goes on.
func TestCautionOfTheWayItGoesOn(t *testing.T) {
	b := tables.Default()
	asked := 0
	for _, by := range []string{"roller", "airless-open", "airless-sheltered", "air-spray"} {
		row, err := b.Loss(by)
		if err != nil {
			t.Fatal(err)
		}
		j := plannedJob(t, strings.Replace(sheet, "by = \"roller\"", "by = \""+by+"\"", 1))
		plain := plannedJob(t, sheet)
		of := func(j *antifoul.Job) bool {
			return slices.ContainsFunc(j.Cautions, func(c tables.Caution) bool { return c.Key == row.Caution })
		}
		if row.Caution != "" && !of(j) {
			t.Errorf("%s: no %s", by, row.Caution)
		}
		if row.Caution != "" && !of(plain) {
			asked++
		}
	}
	if asked == 0 {
		t.Error("no way has a caution that the roller has not")
	}
}

// Why a signal of another type is refused is told: the reason beside the refusal, with a verdict that forbids or asks.
func TestWhyASignalIsRefused(t *testing.T) {
	for signal, refused := range map[string]bool{"foul-release-silicone": true, "ablative-thiocyanate": false} {
		s, _ := plannedJob(t, strings.Replace(sheet, "[wishes]", "[wishes]\nsignal_type = \""+signal+"\"", 1)).Scheme("rudder")
		i := slices.IndexFunc(s.Findings, func(f finding.Finding) bool { return f.Rule == antifoul.RuleNotTwoTypes })
		if (i >= 0) != refused {
			t.Errorf("%s: %v", signal, s.Findings)
		}
		if refused && (i+1 >= len(s.Findings) || s.Findings[i+1].Verdict != finding.Forbidden && s.Findings[i+1].Verdict != finding.Ask) {
			t.Errorf("%s: no reason in %v", signal, s.Findings)
		}
		laid := slices.ContainsFunc(s.Coats, func(k antifoul.Coat) bool { return k.Layer.For == compat.Signal && k.Layer.Coating.Key == signal })
		if laid == refused {
			t.Errorf("%s is laid: %v", signal, laid)
		}
	}
}

// One sign is enough to be asked about, one reading too; without either a part is not.
func TestOneSignIsAskedAbout(t *testing.T) {
	for lines, want := range map[string][2]bool{"": {false, false}, "seen = [\"thumb-colours\"]\n": {true, true}, "readings = { film = \"200 um\" }\n": {true, false}} {
		j := plannedJob(t, strings.Replace(sheet, "area = \"2 m2\"\n", "area = \"2 m2\"\n"+lines, 1))
		asked := len(j.OldFilms) == 1 && j.OldFilms[0].Part == "rudder"
		if asked != want[0] || asked && (j.OldFilms[0].May != nil) != want[1] {
			t.Errorf("%q: %+v", lines, j.OldFilms)
		}
	}
}

// A reading of a gauge on a layer is told with the zone's name.
func TestGaugedZoneByName(t *testing.T) {
	j := plannedJob(t, sheet)
	zone, err := j.Book.Zone("flat")
	if err != nil || zone.Name == "flat" {
		t.Fatalf("the flat is called %q: the test asks too little", zone.Name)
	}
	l := logged(t, j, logHead+laid(`part = "hull"`, `litres = "5 L"`)+"[[gauged]]\non = 2027-04-20\npart = \"hull\"\nzone = \"flat\"\nlayer = \"working\"\ncoating = \"ablative-cuprous-multi\"\nfilm = \"60 um\"\nreadings = 20\n", "")
	for _, f := range l.Layers[0].Findings {
		if f.Rule == antifoul.RuleLogSurvey || f.Rule == antifoul.RuleLogSurveyOther {
			if factOf(f, "zone") != zone.Name {
				t.Errorf("gauged on %v", factOf(f, "zone"))
			}
			return
		}
	}
	t.Errorf("nothing is said of the gauge: %v", l.Layers[0].Findings)
}

// A key that nobody knows is answered with the nearest that may stand there.
func TestCoatingsThatCanBePutOn(t *testing.T) {
	_, err := plan(t, sheet+"[[used]]\npart = \"rudder\"\ncoating = \"ablative-cuprous-mult\"\ncoats = 1\nlitres = \"0.5 L\"\n")
	if err == nil || !strings.Contains(err.Error(), "did you mean ablative-cuprous-multi, ") {
		t.Errorf("%v", err)
	}
}

// So many coats as the high end of wear asks for, by hand: 50 um each, 18 months afloat; at least one more than each begun year, so three; no more than the type takes, which is told. A rudder gets one more.
func TestNumberOfWorkingCoats(t *testing.T) {
	for high, c := range map[string]struct {
		hull, rudder int
		asked        any // coats that are more than the type takes
	}{"3": {3, 4, nil}, "8.3": {3, 4, nil}, "8.4": {4, 5, nil}, "11.1": {4, 5, nil}, "11.2": {4, 5, 5}, "13.9": {4, 5, 6}} { // × 18 / 50: 2.99, 3.02, 4.00, 4.03, 5.004
		j := billed(t, worn("1", "2", high), still())
		for part, want := range map[string]int{"hull": c.hull, "rudder": c.rudder} {
			s, _ := j.Scheme(part)
			n := 0
			for _, k := range s.Coats {
				if k.Layer.For == compat.Working {
					n += k.Layer.Coats
				}
			}
			var asked, most any
			for _, f := range s.Findings {
				if f.Rule == antifoul.RuleCoatsCut {
					asked, most = factOf(f, "coats"), factOf(f, "most")
				}
			}
			if n != want || asked != c.asked || asked != nil && most != 4 {
				t.Errorf("%s um a month, %s: %d coats, asked %v of %v; want %d, %v", high, part, n, asked, most, want, c.asked)
			}
		}
	}
}

// The cautions of a hull, all of them: what the steps, the paint, the old film and the metal call for. Without edges and waterline there is no extra coat.
func TestCautionsOfAJob(t *testing.T) {
	const found = "[[part.found]]\ncoating = \"ablative-cuprous-multi\"\ncolour = \"red-oxide\"\nfilm = \"100 um\"\nstate = \"sound\"\n"
	const rudder = "[[part]]\nname = \"rudder\"\nzone = \"rudder\"\nmaterial = \"grp\"\narea = \"2 m2\"\n[[part.found]]\ncoating = \"epoxy-barrier\"\nstate = \"sound\"\n"
	const blasted = "two-pack solvent blasting wet-tools confined stands waste"
	const airless, wiped = "[paint]\nby = \"airless-open\"", "cleaning = \"sponge\"\ncleaned_every = \"30 d\"\n"
	for _, c := range []struct{ material, found, change, coating, want string }{
		// Washed: the wash water of a film with biocide is waste, where paint follows; no dust, not of the metal's old primers either.
		{"grp", "ablative-cuprous-multi", "", "ablative-cuprous-multi", "solvent wet-tools stands waste"},
		{"grp", "ablative-cuprous-multi", "", "none", "wet-tools"},
		{"steel", "epoxy-barrier", "", "none", "wet-tools"},
		// Abraded, with biocide and without; spots repaired.
		{"grp", "hard-cuprous", "", "hard-cuprous", "antifouling-dust solvent abrading wet-tools stands waste"},
		{"grp", "epoxy-old", "", "ablative-cuprous-multi", "solvent abrading wet-tools stands"},
		{"grp", "silicone-old", "", "foul-release-silicone", "two-pack solvent abrading wet-tools stands"},
		// Washing is work on organotin already.
		{"grp", "organotin-old", "", "ablative-cuprous-multi", "organotin unknown-old-film antifouling-dust solvent wet-tools stands waste"},
		// Nobody reported a film: it is one where it is disturbed.
		{"grp", "", "", "hard-cuprous", "unknown-old-film antifouling-dust solvent stripping abrading wet-tools stands waste"},
		{"grp", "", "", "none", "wet-tools"},
		{"steel", "", "", "hard-cuprous", "lead unknown-old-film antifouling-dust " + blasted},
		{"steel", "red-lead-old", "", "hard-cuprous", "lead " + blasted},
		{"aluminium", "chromate-primer-old", "", "ablative-thiocyanate", "chromate " + blasted},
		// Cleaned afloat, a film with biocide.
		{"grp", "ablative-cuprous-multi", "[use]\n" + wiped, "ablative-cuprous-multi", "solvent wet-tools stands waste hull-cleaning"},
		{"grp", "ablative-cuprous-multi", "[use]\ncleaning = \"none\"\n", "ablative-cuprous-multi", "solvent wet-tools stands waste"},
		{"grp", "ablative-cuprous-multi", "[use]\nkept = \"lift\"\n" + wiped, "ablative-cuprous-multi", "solvent wet-tools stands waste"},
		{"grp", "silicone-old", "[use]\n" + wiped, "foul-release-silicone", "two-pack solvent abrading wet-tools stands"},
		// Sprayed, where anything is.
		{"grp", "ablative-cuprous-multi", airless, "ablative-cuprous-multi", "solvent spraying wet-tools stands waste"},
		{"grp", "ablative-cuprous-multi", airless, "none", "wet-tools"},
	} {
		old, section := "", "[use]\n"
		if c.found != "" {
			old = film(c.found, "colour = \"red-oxide\"")
		}
		if strings.HasPrefix(c.change, "[paint]") {
			section = "[paint]\nby = \"roller\""
		}
		j := plannedJob(t, strings.NewReplacer(
			found, old, rudder, "", "flat = \"20 m2\", waterline = \"2 m2\", edges = \"1 m2\"", "flat = \"23 m2\"", "material = \"grp\"", "material = \""+c.material+"\"",
			section, cmp.Or(c.change, section), "[wishes]\ncoating = \"ablative-cuprous-multi\"", "[wishes]\ncoating = \""+c.coating+"\"",
		).Replace(sheet))
		var got []string
		for _, k := range j.Cautions {
			got = append(got, k.Key)
		}
		if strings.Join(got, " ") != c.want {
			t.Errorf("%s over %q on %s, %q: %v, want %s", c.coating, c.found, c.material, c.change, got, c.want)
		}
	}
}

// The dust of a film with biocide is antifouling dust, whatever hazards an own row of it names.
func TestDustOfAnOwnFilm(t *testing.T) {
	own := "[[coating]]\nkey = \"hard-cuprous\"\nbasis = \"own table\"\nsource = \"the tin\"\nhazards = []\n"
	boat := strings.NewReplacer("coating = \"ablative-cuprous-multi\"", "coating = \"hard-cuprous\"").Replace(sheet)
	if !slices.ContainsFunc(billed(t, own, boat).Cautions, func(c tables.Caution) bool { return c.Key == "antifouling-dust" }) {
		t.Error("no caution of antifouling dust")
	}
}
