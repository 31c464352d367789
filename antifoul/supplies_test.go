package antifoul_test

import (
	"fmt"
	"strings"
	"testing"

	"boatyard.example/bottomwork/antifoul"
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

// Days of painting, by hand: 7.169, 9.485, 13.425 hours of one hand on the sheet's boat (TestWorkIsBilledByHand) at eight a day, and five coats on the rudder, of which so many go on in a day as their windows let: the next
// begins when the one before has stood for its window, and no later than the eighth hour; no coat is closer to the one before than an hour.
func TestDaysOfPainting(t *testing.T) {
	for window, want := range map[string]string{
		"4 h": "3 3 3", "3 h": "2 2 2", "160 min": "2 2 2", "8 h": "5 5 5", "9 h": "5 5 5", "7 h": "3 3 3", "159 min": "2 2 2", "2 h": "2 2 2", "96 min": "1 1.19 1.68", "1 min": "1 1.19 1.68",
	} {
		own := "[[coating]]\nkey = \"ablative-cuprous-multi\"\nbasis = \"own table\"\nsource = \"the tin\"\novercoat_min = \"" + window + "\"\n"
		d := billed(t, own, sheet).Days
		if got := fmt.Sprintf("%.4g %.3g %.3g", d.Low, d.Typical, d.High); got != want {
			t.Errorf("%s: %s days, want %s", window, got, want)
		}
	}
	// The hull alone has three coats, and one more on its strips: each on its own day.
	slow := "[[coating]]\nkey = \"ablative-cuprous-multi\"\nbasis = \"own table\"\nsource = \"the tin\"\novercoat_min = \"9 h\"\n"
	alone := strings.Replace(foundOn(sheet, "rudder"), "[[part]]\nname = \"rudder\"\nzone = \"rudder\"\nmaterial = \"grp\"\narea = \"2 m2\"\n", "", 1)
	if d := billed(t, slow, alone).Days; d != quantity.Exactly(4.0) {
		t.Errorf("a hull alone: %v days", d)
	}
	// Two hands take half the hours, and as many days for the coats.
	if d := billed(t, "", sheet+"[work]\nhands = 2\n").Days; d != quantity.Exactly(3.0) {
		t.Errorf("two hands: %v days", d)
	}
}

// What comes off, by hand. Stripped is the hull's old film, 100 um on 23 m2, 2.3 L; abraded is the rudder, 5 to 30 um on 2 m2, 0.01 to 0.06 L. At 1.8 to 2 kg a litre these are 4.158 to 4.72 kg, told as 4 to 5.
func TestWasteByHand(t *testing.T) {
	hard := strings.Replace(sheet, "[wishes]\ncoating = \"ablative-cuprous-multi\"", "[wishes]\ncoating = \"hard-cuprous\"", 1)
	for name, c := range map[string]struct {
		boat      string
		low, high string
		holds     bool // what comes off can harm: a film with biocide, or an epoxy
		unread    bool
	}{
		"stripped":                   {hard, "4 kg", "5 kg", true, false},
		"a range":                    {strings.Replace(hard, "film = \"100 um\"", "film = [\"50 um\", \"100 um\", \"200 um\"]", 1), "2 kg", "10 kg", true, false},      // 2.088 to 9.32
		"a hair over three and nine": {strings.Replace(hard, "film = \"100 um\"", "film = [\"72.06 um\", \"100 um\", \"193.1 um\"]", 1), "3 kg", "10 kg", true, false}, // 3.0013 to 9.0026
		"nobody measured":            {strings.Replace(hard, "film = \"100 um\"\n", "", 1), "0 kg", "1 kg", true, true},
		"abraded":                    {sheet, "0 kg", "1 kg", true, false},
		"and washed alone":           {strings.Replace(sheet, "[[part.found]]\ncoating = \"epoxy-barrier\"\nstate = \"sound\"\n", "[[part.found]]\ncoating = \"ablative-cuprous-multi\"\nstate = \"sound\"\n", 1), "", "", false, false},
	} {
		j := plannedJob(t, c.boat)
		low, high := "", ""
		if j.Waste.High.Given() {
			low, high = j.Waste.Low.String(), j.Waste.High.String()
		}
		if low != c.low || high != c.high || j.OfWaste.Has(antifoul.RuleWasteHazard) != c.holds || j.OfWaste.Has(antifoul.RuleWasteUnknown) != c.unread || j.OfWaste.Has(antifoul.RuleWaste) != (c.low != "") {
			t.Errorf("%s: %s to %s, %v", name, low, high, j.OfWaste)
		}
	}
}

// foundOn is the sheet's boat with other layers on her hull, or on her rudder.
func foundOn(boat, part string, layers ...string) string {
	old := map[string]string{
		"hull":   "[[part.found]]\ncoating = \"ablative-cuprous-multi\"\ncolour = \"red-oxide\"\nfilm = \"100 um\"\nstate = \"sound\"\n",
		"rudder": "[[part.found]]\ncoating = \"epoxy-barrier\"\nstate = \"sound\"\n",
	}[part]
	var now strings.Builder
	for _, l := range layers {
		fmt.Fprintf(&now, "[[part.found]]\ncoating = %q\nstate = \"sound\"\n", l)
	}
	return strings.Replace(boat, old, now.String(), 1)
}

// wasteFilms are the films that a finding of what comes off names; empty where there is none.
func wasteFilms(j *antifoul.Job, rule finding.ID) string {
	for _, f := range j.OfWaste {
		if f.Rule == rule {
			return fmt.Sprint(factOf(f, "films"))
		}
	}
	return ""
}

// What can harm is a film with a biocide, or one that is a hazard without; what nobody measured is named with its part. Each is named once, by the alphabet.
func TestFilmsThatComeOff(t *testing.T) {
	const ablative, barrier = "ablative, cuprous oxide, multi-season", "epoxy barrier, solvent-borne"
	hard := strings.Replace(sheet, "[wishes]\ncoating = \"ablative-cuprous-multi\"", "[wishes]\ncoating = \"hard-cuprous\"", 1)
	for name, c := range map[string]struct{ own, boat, harmful, unread string }{
		"nobody says what is there":       {"", foundOn(hard, "hull"), "an unknown old film, " + barrier, "an unknown film on the hull"},
		"twice the same":                  {"", foundOn(hard, "hull", "silicone-old", "ablative-cuprous-multi", "silicone-old"), ablative + ", " + barrier, ablative + " on the hull and old silicone on the hull"},
		"a film over a barrier":           {"", foundOn(hard, "hull", "epoxy-barrier", "ablative-cuprous-multi"), ablative + ", " + barrier, ablative + " on the hull and " + barrier + " on the hull"},
		"a plain epoxy is abraded":        {"", foundOn(sheet, "rudder", "epoxy-old"), "", ""},
		"an own recipe without a caution": {"[[coating]]\nkey = \"ablative-cuprous-multi\"\nbasis = \"own table\"\nsource = \"the tin\"\nhazards = []\n", hard, ablative + ", " + barrier, ""},
	} {
		j := billed(t, c.own, c.boat)
		if got := wasteFilms(j, antifoul.RuleWasteHazard); got != c.harmful {
			t.Errorf("%s: harmful is %q, want %q", name, got, c.harmful)
		}
		if got := wasteFilms(j, antifoul.RuleWasteUnknown); got != c.unread {
			t.Errorf("%s: not measured is %q, want %q", name, got, c.unread)
		}
	}
}

// Three square metres of blasted keel at 35 kg make 105 kg of grit, told and put into the bags with the paint; where nothing is blasted nothing is said of grit.
func TestGritIsWaste(t *testing.T) {
	for keel, want := range map[string]any{"cast-iron": quantity.Kilogram.N(105), "lead": nil} {
		j := plannedJob(t, measuredBoat("material = \"grp\"\nlaminate = \"dry\"", keel, "launch_open = true"))
		var got any
		for _, f := range j.OfWaste {
			if f.Rule == antifoul.RuleWasteGrit {
				got = factOf(f, "grit")
			}
		}
		for _, s := range j.Supplies {
			if kg := s.Uses.Typical / s.Supply.Rate.Typical; s.Supply.Key == "waste-bag" && (kg >= 105) != (want != nil) {
				t.Errorf("%s: bags for %.1f kg", keel, kg)
			}
		}
		if fmt.Sprint(got) != fmt.Sprint(want) {
			t.Errorf("%s: %v of grit, want %v", keel, got, want)
		}
	}
}

// The plan of a boat is taken up to the next tenth of a square metre: 9.05 × 3.05 m are 27.7 m2, and 1.6 times as much sheeting lies under her.
func TestSheetingUnderABoat(t *testing.T) {
	j := plannedJob(t, strings.NewReplacer("length = \"9 m\"", "length = \"9.05 m\"", "beam = \"3 m\"", "beam = \"3.05 m\"").Replace(sheet))
	for _, s := range j.Supplies {
		if s.Supply.Key == "sheeting" {
			if got := fmt.Sprintf("%.3f", s.Uses.Typical); got != "44.320" || s.Buy != 45 {
				t.Errorf("%s m2 are used, %d bought", got, s.Buy)
			}
			return
		}
	}
	t.Error("no sheeting")
}

// Just so much that a part in a thousand is seen: 25 m2 of 200.1 um are 5.0025 L, 9.0045 to 10.005 kg.
func TestWasteToTheKilogram(t *testing.T) {
	rudder := sheet[strings.Index(sheet, "[[part]]\nname = \"rudder\""):strings.Index(sheet, "[[part]]\nname = \"anode\"")]
	w := plannedJob(t, strings.NewReplacer(rudder, "", "coating = \"ablative-cuprous-multi\"\ntop_colour", "coating = \"hard-cuprous\"\ntop_colour", "film = \"100 um\"", "film = \"200.1 um\"", "flat = \"20 m2\"", "flat = \"22 m2\"").Replace(sheet)).Waste
	if w.Low.String() != "9 kg" || w.High.String() != "11 kg" {
		t.Errorf("%s to %s", w.Low, w.High)
	}
}

// What is in it and what nobody measured is named, each film once and in order: films with a biocide and those that can harm otherwise; an epoxy and a bare surface can't.
func TestWhatIsInTheWaste(t *testing.T) {
	const hull, rudder = "coating = \"ablative-cuprous-multi\"\ncolour = \"red-oxide\"\nfilm = \"100 um\"\nstate = \"sound\"\n", "coating = \"epoxy-barrier\"\nstate = \"sound\"\n"
	layer := func(key, film string) string {
		if film != "" {
			film = "film = \"" + film + "\"\n"
		}
		return "coating = \"" + key + "\"\nstate = \"sound\"\n" + film
	}
	for name, c := range map[string]struct{ hull, rudder, holds, unread string }{
		"bare":                            {layer("bare", ""), layer("bare", ""), "<nil>", "<nil>"},
		"an epoxy that is abraded, twice": {layer("epoxy-old", ""), layer("epoxy-old", ""), "<nil>", "<nil>"},
		"silicone that is stripped":       {layer("silicone-old", "100 um"), layer("bare", ""), "<nil>", "<nil>"},
		"bitumen":                         {layer("bitumen-old", "100 um"), layer("bare", ""), "old bitumen or tar", "<nil>"},
		"two films":                       {layer("vinyl-old", "100 um"), layer("soft-old", "100 um"), "old traditional soft antifouling, old vinyl or chlorinated rubber", "<nil>"},
		"two that nobody measured": {
			layer("vinyl-old", ""), layer("soft-old", ""), "old traditional soft antifouling, old vinyl or chlorinated rubber",
			"old traditional soft antifouling on the rudder and old vinyl or chlorinated rubber on the hull",
		},
		"one film on both":     {layer("soft-old", ""), layer("soft-old", ""), "old traditional soft antifouling", "old traditional soft antifouling on the hull and old traditional soft antifouling on the rudder"},
		"nobody reported any":  {"", "", "an unknown old film", "an unknown film on the hull and an unknown film on the rudder"},
		"one was not reported": {"", layer("soft-old", "100 um"), "an unknown old film, old traditional soft antifouling", "an unknown film on the hull"},
	} {
		put := func(text, was, now string) string {
			if now == "" {
				return strings.Replace(text, "[[part.found]]\n"+was, "", 1)
			}
			return strings.Replace(text, was, now, 1)
		}
		text := strings.Replace(put(put(sheet, hull, c.hull), rudder, c.rudder), "[wishes]\ncoating = \"ablative-cuprous-multi\"", "[wishes]\ncoating = \"hard-cuprous\"", 1)
		var holds, unread any
		for _, f := range plannedJob(t, text).OfWaste {
			switch f.Rule {
			case antifoul.RuleWasteHazard:
				holds = factOf(f, "films")
			case antifoul.RuleWasteUnknown:
				unread = factOf(f, "films")
			}
		}
		if fmt.Sprint(holds) != c.holds || fmt.Sprint(unread) != c.unread {
			t.Errorf("%s: %v; %v", name, holds, unread)
		}
	}
}

// A film with a biocide is named whatever hazards an own row of it names; what is bought by the kilogram is no grit where nothing is blasted.
func TestWasteOfOwnRows(t *testing.T) {
	own := "[[coating]]\nkey = \"hard-cuprous\"\nbasis = \"own table\"\nsource = \"the tin\"\nhazards = []\n" +
		"[[supply]]\nkey = \"rags\"\nname = \"rags\"\nunit = \"kg\"\nper = \"coat\"\nrate = [1, 1, 1]\nbasis = \"own table\"\nsource = \"the yard\"\n"
	waste := billed(t, own, strings.ReplaceAll(sheet, "coating = \"ablative-cuprous-multi\"", "coating = \"hard-cuprous\"")).OfWaste
	if waste.Has(antifoul.RuleWasteGrit) {
		t.Error("rags are told as grit")
	}
	for _, f := range waste {
		if f.Rule == antifoul.RuleWasteHazard && strings.Contains(fmt.Sprint(factOf(f, "films")), "hard, cuprous oxide") {
			return
		}
	}
	t.Errorf("the hard film is not named: %v", waste)
}

// Grit is waste with the paint in it: 35 kg for each of 23 m2 are told, and go into the bags; sheeting goes over length times beam, and is left out where nobody says them. One coat in all asks for supplies too.
func TestSuppliesByHand(t *testing.T) {
	uses := func(j *antifoul.Job, key string) float64 {
		for _, s := range j.Supplies {
			if s.Supply.Key == key {
				return s.Uses.Typical
			}
		}
		return 0
	}
	near := func(name string, got, want float64) {
		t.Helper()
		if !(got-want < 1e-6 && want-got < 1e-6) {
			t.Errorf("%s: %g, want %g", name, got, want)
		}
	}
	rudder := sheet[strings.Index(sheet, "[[part]]\nname = \"rudder\""):strings.Index(sheet, "[[part]]\nname = \"anode\"")]
	hull := strings.Replace(sheet, rudder, "", 1)
	steel := strings.NewReplacer("material = \"grp\"", "material = \"steel\"", "coating = \"ablative-cuprous-multi\"\ncolour = \"red-oxide\"\nfilm = \"100 um\"", "coating = \"bare\"").Replace(hull)
	j := plannedJob(t, steel)
	var grit any
	for _, f := range j.OfWaste {
		if f.Rule == antifoul.RuleWasteGrit {
			grit = factOf(f, "grit")
		}
	}
	if fmt.Sprint(grit) != "805 kg" || plannedJob(t, hull).OfWaste.Has(antifoul.RuleWasteGrit) {
		t.Errorf("grit %v", grit)
	}
	near("bags of grit", uses(j, "waste-bag"), 805*0.07)
	near("abrasive", uses(j, "blast-abrasive"), 805)
	near("no abrasive", uses(plannedJob(t, hull), "blast-abrasive"), 0)
	near("sheeting", uses(plannedJob(t, hull), "sheeting"), 27*1.6)
	near("sheeting of 27.4215 m2", uses(plannedJob(t, strings.NewReplacer("length = \"9 m\"", "length = \"9.05 m\"", "beam = \"3 m\"", "beam = \"3.03 m\"").Replace(hull)), "sheeting"), 27.5*1.6)
	near("nobody says how wide", uses(plannedJob(t, strings.NewReplacer("beam = \"3 m\"\n", "", "draft = \"1.6 m\"\n", "").Replace(hull)), "sheeting"), 0)
	near("nobody says how long", uses(plannedJob(t, strings.NewReplacer("length = \"9 m\"\n", "", "draft = \"1.6 m\"\n", "").Replace(hull)), "sheeting"), 0)
	one := plannedJob(t, strings.Replace(hull, "flat = \"20 m2\", waterline = \"2 m2\", edges = \"1 m2\"", "flat = \"23 m2\"", 1))
	if s, _ := one.Scheme("hull"); len(s.Coats) != 1 || uses(one, "sheeting") == 0 || one.Days.Low == 0 {
		t.Errorf("%d layers, %v days, supplies %v", len(s.Coats), one.Days, one.Supplies)
	}
	if none := plannedJob(t, strings.Replace(hull, "[wishes]\ncoating = \"ablative-cuprous-multi\"", "[wishes]\ncoating = \"none\"", 1)); len(none.Supplies) != 0 {
		t.Errorf("nothing is painted, with %v", none.Supplies)
	}
}
