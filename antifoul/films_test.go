package antifoul_test

import (
	"fmt"
	"strings"
	"testing"

	"boatyard.example/bottomwork/antifoul"
	"boatyard.example/bottomwork/compat/oldfilm"
	"boatyard.example/bottomwork/tables"
)

// hardRudder is the sheet's boat with hard films, of which that on the rudder was read.
func hardRudder(readings string) string {
	const found = "coating = \"hard-cuprous\"\ncolour = \"red-oxide\"\nstate = \"sound\""
	return strings.NewReplacer(
		"coating = \"ablative-cuprous-multi\"\ncolour = \"red-oxide\"\nfilm = \"100 um\"\nstate = \"sound\"", found,
		"area = \"2 m2\"\n[[part.found]]\ncoating = \"epoxy-barrier\"\nstate = \"sound\"", "area = \"2 m2\"\nreadings = { "+readings+" }\n[[part.found]]\n"+found,
		"[wishes]\ncoating = \"ablative-cuprous-multi\"", "[wishes]\ncoating = \"hard-cuprous\"",
	).Replace(sheet)
}

// course is hours, jobs and months of one way to go on.
func course(c *oldfilm.Course) string {
	if c == nil {
		return "none"
	}
	h := c.Hours
	return fmt.Sprintf("%.2f %.2f %.2f h, %d %d %d jobs, %.0f %.0f %.0f months", h.Low, h.Typical, h.High, c.Jobs.Low, c.Jobs.Typical, c.Jobs.High, c.Months.Low, c.Months.Typical, c.Months.High)
}

// Recoating the rudder against stripping it, by hand. Old paint comes off at 500, 600, 750 um; 200 um lie there, and each job of three coats leaves 120, 150, 180 um, every 18 months.
//
//	recoated  (500 − 200) / 180 = 1.7, (600 − 200) / 150 = 2.7, (750 − 200) / 120 = 4.6 jobs
//	stripped  500 / 180 = 2.8, 600 / 150 = 4, 750 / 120 = 6.3 jobs, and 2 m2 of stripping at 0.5, 0.8, 1.43 h
//
// Spots of 2 m2 at 0.05, 0.1, 0.2 h are repaired where it flakes. It is not weighed where it comes off anyway, or no film was read.
func TestRecoatOrStripByHand(t *testing.T) {
	const (
		jobs  = ", 1 2 4 jobs, 18 36 72 months"
		kept  = "0.00 0.00 0.00 h" + jobs
		spots = "0.10 0.20 0.40 h" + jobs
		strip = "1.00 1.60 2.86 h, 2 4 6 jobs, 36 72 108 months"
	)
	film := "film = \"200 um\""
	hull := func(wish string) string { // read on the hull, which gets what is wished for
		return strings.NewReplacer("[[part.found]]\ncoating = \"ablative-cuprous-multi\"", "readings = { "+film+" }\n[[part.found]]\ncoating = \"ablative-cuprous-multi\"", "[wishes]\ncoating = \"ablative-cuprous-multi\"", "[wishes]\ncoating = \""+wish+"\"").Replace(sheet)
	}
	for name, c := range map[string]struct {
		boat          string
		recoat, strip string
	}{
		"kept":                  {hardRudder(film), kept, strip},
		"repaired":              {hardRudder(film + ", flaking = \"5 %\""), spots, strip},
		"either":                {hardRudder(film + ", flaking = \"15 %\""), spots, strip},
		"stripped":              {hardRudder(film + ", flaking = \"25 %\""), "none", "none"},
		"no film read":          {hardRudder("flaking = \"5 %\""), "none", "none"},
		"stripped for the type": {hull("hard-cuprous"), "none", "none"},
		"left bare":             {hull("none"), "none", "none"},
	} {
		j := plannedJob(t, c.boat)
		if len(j.OldFilms) != 1 {
			t.Fatalf("%s: %d films", name, len(j.OldFilms))
		}
		if f := j.OldFilms[0]; course(f.Recoat) != c.recoat || course(f.Strip) != c.strip {
			t.Errorf("%s: recoated %s, stripped %s", name, course(f.Recoat), course(f.Strip))
		}
	}
}

// In a note a film is judged with the area where the hull's size is given, and without it where not: nothing is weighed, since nothing is planned.
func TestANoteOfAFilm(t *testing.T) {
	const read = "readings = { film = \"900 um\" }\n"
	for name, c := range map[string]struct {
		hull  string
		hours float64
	}{"no hull": {"", 0}, "measured": {"[hull]\nkind = \"fin-keel-yacht\"\nlength = \"9 m\"\nbeam = \"3 m\"\ndraft = \"1.6 m\"\nmeasured = { flat = \"20 m2\", keel = \"4 m2\" }\n", 3.2}} {
		boat, err := readNote(smallest + read + c.hull + "[[part]]\nname = \"hull\"\nzone = \"hull\"\nmaterial = \"grp\"\n")
		if err != nil {
			t.Fatal(err)
		}
		j, err := antifoul.Look(tables.Default(), boat)
		if err != nil {
			t.Fatal(err)
		}
		if len(j.OldFilms) != 1 || j.OldFilms[0].Decision.Do != oldfilm.Strip || j.OldFilms[0].Recoat != nil || j.OldFilms[0].Decision.Hours.Typical != c.hours {
			t.Errorf("%s: %+v", name, j.OldFilms)
		}
	}
}

// Each two metals are told once, whichever way round they stand and on however many parts; what is no metal, an anode, or the same metal is not.
func TestPairsOfMetals(t *testing.T) {
	for materials, want := range map[string]string{
		"lead cast-iron":                       "1-2",
		"cast-iron lead":                       "1-2",
		"lead lead":                            "",
		"lead grp":                             "",
		"grp lead":                             "",
		"grp wood-carvel":                      "",
		"lead zinc-anode":                      "",
		"zinc-anode lead":                      "",
		"lead cast-iron lead":                  "1-2",
		"lead cast-iron cast-iron lead":        "1-2",
		"lead cast-iron bronze":                "1-2 1-3 2-3",
		"stainless-steel lead stainless-steel": "1-2 1-2",
		"lead stainless-steel grp bronze lead": "1-2 1-2 1-4 2-4 2-4",
		"lead cast-iron zinc-anode steel":      "1-2 1-4 2-4",
	} {
		text := new(strings.Builder)
		text.WriteString("[boat]\ndate = 2027-04-09\n")
		for i, m := range strings.Fields(materials) {
			fmt.Fprintf(text, "[[part]]\nname = \"%d\"\nzone = \"fitting\"\nmaterial = %q\n", i+1, m)
		}
		boat, err := readNote(text.String())
		if err != nil {
			t.Fatal(err)
		}
		j, err := antifoul.Look(tables.Default(), boat)
		if err != nil {
			t.Fatal(err)
		}
		var got []string
		for _, m := range j.Metals {
			got = append(got, m.Parts[0]+"-"+m.Parts[1])
		}
		if strings.Join(got, " ") != want {
			t.Errorf("%s: %v, want %s", materials, got, want)
		}
	}
}
