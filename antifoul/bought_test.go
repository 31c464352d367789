package antifoul_test

import (
	"fmt"
	"strings"
	"testing"

	"boatyard.example/bottomwork/antifoul"
	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

// supported is the sheet's boat on stands, and with a keel of its own where one is named; first puts it before the hull.
func supported(stands, keel string, first bool) string {
	text := strings.Replace(sheet, "draft = \"1.6 m\"", "draft = \"1.6 m\"\n"+stands, 1)
	if keel == "" {
		return text
	}
	part := "[[part]]\nname = \"keel\"\nzone = \"keel\"\nmaterial = \"" + keel + "\"\narea = \"4 m2\"\n" + film("epoxy-barrier", "")
	switch keel {
	case "copper-nickel": // which is left bare
		part = strings.Replace(part, "epoxy-barrier", "bare", 1)
	case "lead": // over its own kind, which shows below the new coats
		part = strings.Replace(part, "coating = \"epoxy-barrier\"", "coating = \"ablative-cuprous-multi\"\ncolour = \"red-oxide\"", 1)
	}
	at := "[[part]]\nname = \"anode\""
	if first {
		at = "[[part]]\nname = \"hull\""
	}
	return strings.Replace(text, at, part+at, 1)
}

// The places are shared out: those under stands are the hull's, those under blocks and chains the keel's, where she has one that is painted; else all are the hull's. A place is a tenth of a
// square metre, which the lowest layer covers as it is.
func TestPlacesAreSharedOut(t *testing.T) {
	const nine = "stand_pairs = 3\nkeel_blocks = 2\nchains = 1"
	for name, c := range map[string]struct{ boat, hull, keel string }{
		"no keel of its own":  {supported(nine, "", false), "0.90 m2", ""},
		"a keel":              {supported(nine, "grp", false), "0.60 m2", "0.30 m2"},
		"a keel named first":  {supported(nine, "grp", true), "0.60 m2", "0.30 m2"},
		"a keel of one layer": {supported(nine, "lead", false), "0.60 m2", "0.30 m2"},
		"a keel left bare":    {supported(nine, "copper-nickel", false), "0.90 m2", ""},
		"blocks alone":        {supported("keel_blocks = 2", "grp", false), "", "0.20 m2"},
		"one block":           {supported("keel_blocks = 1", "grp", false), "", "0.10 m2"},
		"one block, no keel":  {supported("keel_blocks = 1", "", false), "0.10 m2", ""},
		"one chain":           {supported("chains = 1", "grp", false), "", "0.10 m2"},
		"nothing bears her":   {supported("stand_pairs = 0", "grp", false), "", ""},
		"nothing goes on her": {strings.Replace(supported(nine, "", false), "[wishes]\ncoating = \"ablative-cuprous-multi\"", "[wishes]\ncoating = \"none\"", 1), "", ""},
	} {
		j := plannedJob(t, c.boat)
		lowest := map[string]string{}
		for _, p := range j.Patches {
			if lowest[p.Part] == "" {
				lowest[p.Part] = p.Area.Typical.String()
			}
		}
		if lowest["hull"] != c.hull || lowest["keel"] != c.keel || len(lowest["hull"])+len(lowest["keel"]) == 0 && j.Pads.Count != 0 {
			t.Errorf("%s: %v, %d places; want %q and %q", name, lowest, j.Pads.Count, c.hull, c.keel)
		}
	}
}

// What the places take is bought with the coats, for each coating and colour by itself, and kept back; a part stands once beside what is bought for it.
func TestPlacesAreBoughtWithTheCoats(t *testing.T) {
	litres := func(v quantity.Volume) float64 {
		if !v.Given() {
			return 0
		}
		return v.Float(quantity.Litre)
	}
	plain, stands := plannedJob(t, supported("stand_pairs = 0", "grp", false)), plannedJob(t, supported("stand_pairs = 3\nkeel_blocks = 2", "grp", false))
	if len(plain.Buy) < 2 || len(plain.Buy) != len(stands.Buy) {
		t.Fatalf("%d and %d coatings are bought", len(plain.Buy), len(stands.Buy))
	}
	for i, g := range stands.Buy {
		beside := 0.0
		for _, p := range stands.Patches {
			if p.Coating.Key == g.Coating.Key && p.Colour == g.Colour {
				beside += litres(p.Beside.Typical)
			}
		}
		if d := litres(g.Patches.Typical) - beside; d > 1e-9 || d < -1e-9 || beside == 0 {
			t.Errorf("%s, %s: %s for the places, of which %.2f L are beside the coats", g.Coating.Key, g.Colour, g.Patches.Typical, beside)
		}
		if d := litres(g.Range.Typical) - litres(plain.Buy[i].Range.Typical) - beside; d > 1e-9 || d < -1e-9 {
			t.Errorf("%s, %s: %s, without stands %s, for the places %.2f L", g.Coating.Key, g.Colour, g.Range.Typical, plain.Buy[i].Range.Typical, beside)
		}
		if !g.Notes.Has("patch-kept") && !g.Notes.Has("patch-can") || plain.Buy[i].Notes.Has("patch-kept") || plain.Buy[i].Notes.Has("patch-can") {
			t.Errorf("%s, %s: %s; without stands %s", g.Coating.Key, g.Colour, rulesOf(g.Notes), rulesOf(plain.Buy[i].Notes))
		}
		seen := map[string]bool{}
		for _, p := range g.Parts {
			if seen[p] {
				t.Errorf("%s, %s is bought for %v", g.Coating.Key, g.Colour, g.Parts)
			}
			seen[p] = true
		}
		if !seen["keel"] || !seen["rudder"] || seen["hull"] != (g.Colour == "black") {
			t.Errorf("%s, %s is bought for %v", g.Coating.Key, g.Colour, g.Parts)
		}
	}
}

// Of a colour in two cans and more it is said that they may differ; one can agrees with itself, and a coat without a colour with any.
func TestBatchesOfAColour(t *testing.T) {
	batch := func(g antifoul.Bought) bool {
		return g.Notes.Has("batch-to-buy") || g.Notes.Has("batch-mixed") || g.Notes.Has("batch-one") || g.Notes.Has("batch-no-matter")
	}
	kinds := map[string]int{}
	for _, text := range []string{sheet, supported("stand_pairs = 0", "grp", false), strings.Replace(sheet, "material = \"grp\"", "material = \"steel\"", 1)} {
		for _, g := range plannedJob(t, text).Buy {
			cans := 0
			for _, it := range g.Items {
				cans += it.Count
			}
			want := g.Colour != "" && cans > 1
			kinds[fmt.Sprint(g.Colour != "", min(cans, 3))]++
			if batch(g) != want {
				t.Errorf("%s, %q, %d cans: %s", g.Coating.Key, g.Colour, cans, rulesOf(g.Notes))
			}
		}
	}
	if kinds["true 1"] == 0 || kinds["true 2"] == 0 || kinds["false 2"] == 0 {
		t.Errorf("the test asks too little: %v", kinds)
	}
}

// Thinner is a share of the need, and none where nobody thins.
func TestThinnerOfTheNeed(t *testing.T) {
	for share, want := range map[string]bool{"": false, "thinner = \"0 %\"\n": false, "thinner = \"10 %\"\n": true} {
		for _, g := range plannedJob(t, strings.Replace(sheet, "by = \"roller\"\n", "by = \"roller\"\n"+share, 1)).Buy {
			if g.Thinner.Given() != want {
				t.Errorf("%q: %s", share, g.Thinner)
			}
			if d := 10*g.Thinner.Float(quantity.Litre) - g.Need.Float(quantity.Litre); want && (d < 0 || d > 0.1) {
				t.Errorf("%s of %s", g.Thinner, g.Need)
			}
		}
	}
}

// How much of the epoxy is mixed at once, by hand: 0.08 h for a square metre make 12.5 m2 an hour for each hand, at a wet film as the coat says, for the share of the hours that the tin gives, rounded down to a tenth
// of a litre. A coat that is smaller is mixed as one, and one pot is told once.
func TestPotsByHand(t *testing.T) {
	boat := func(hands, area string) string {
		return strings.NewReplacer("material = \"grp\"", "material = \"steel\"", "coating = \"ablative-cuprous-multi\"\ncolour = \"red-oxide\"\nfilm = \"100 um\"", "coating = \"bare\"", "flat = \"20 m2\", waterline = \"2 m2\", edges = \"1 m2\"",
			"flat = \""+area+"\"").Replace(sheet) + hands + "[[tin]]\ncoating = \"epoxy-barrier\"\npot_life = \"2 h\"\npot_life_at = \"20 degC\"\n"
	}
	const rate = 12.5
	for name, c := range map[string]struct {
		own, hands, area string
		by               float64 // hands
		pots             int
	}{
		"nobody says how many": {"", "", "23 m2", 1, 1},
		"one":                  {"", "[work]\nhands = 1\n", "23 m2", 1, 1},
		"two":                  {"", "[work]\nhands = 2\n", "23 m2", 2, 1},
		"a small hull":         {"", "[work]\nhands = 2\n", "0.2 m2", 2, 0},
		"no time":              {hoursOf("prime", 0, 0, 0), "[work]\nhands = 2\n", "23 m2", 2, 0},
	} {
		j := billed(t, c.own, boat(c.hands, c.area))
		share, err := tables.Default().Factor("pot-life-share")
		if err != nil {
			t.Fatal(err)
		}
		found := false
		for _, g := range j.Buy {
			if g.Coating.Key != "epoxy-barrier" {
				continue
			}
			found = true
			if len(g.Pots) != c.pots {
				t.Errorf("%s: %d pots", name, len(g.Pots))
				continue
			}
			for _, p := range g.Pots {
				wet := 0.0
				for _, s := range j.Schemes {
					for _, k := range s.Coats {
						if s.Part == p.Part && k.Layer.Coating.Key == "epoxy-barrier" {
							wet = k.Wet.Float(quantity.Micrometre)
						}
					}
				}
				want := rate * c.by * wet / 1000 * 2 * share.Value.Low
				if got := p.Litres.Float(quantity.Litre); got > want || got < want-0.1 || got == 0 {
					t.Errorf("%s: %s, want %.3f L", name, p.Litres, want)
				}
			}
		}
		if !found {
			t.Fatalf("%s: no epoxy is bought", name)
		}
	}
}

// The rate of work is rounded down to the hundredth: at 0.07 h for a square metre 14.28 m2 an hour, of which a pot that lasts for 2521 minutes gets to 29.999 L at 100 um and half of that time, told as 29.9. A coat that
// takes just what a pot holds is mixed as one.
func TestPotsToTheTenthOfALitre(t *testing.T) {
	own := hoursOf("prime", 0.07, 0.07, 0.07) + number("pot-life-share", "0.5") +
		"[[coating]]\nkey = \"epoxy-barrier\"\nbasis = \"own table\"\nsource = \"the tin\"\nsolids = [\"100 %\", \"100 %\", \"100 %\"]\nfilm = [\"100 um\", \"100 um\", \"100 um\"]\n"
	before, rest, _ := strings.Cut(sheet, "[[part]]\nname = \"rudder\"")
	_, after, _ := strings.Cut(rest, "[[part]]\nname = \"anode\"")
	withoutRudder := before + "[[part]]\nname = \"anode\"" + after
	pots := func(area float64) (coat quantity.Volume, pots []antifoul.Pot) {
		text := strings.NewReplacer("material = \"grp\"", "material = \"steel\"", "coating = \"ablative-cuprous-multi\"\ncolour = \"red-oxide\"\nfilm = \"100 um\"", "coating = \"bare\"", "flat = \"20 m2\", waterline = \"2 m2\", edges = \"1 m2\"",
			fmt.Sprintf("flat = \"%.2f m2\"", area)).Replace(withoutRudder) +
			"[[tin]]\ncoating = \"epoxy-barrier\"\npot_life = \"2521 min\"\npot_life_at = \"20 degC\"\n"
		j := billed(t, own, text)
		for _, g := range j.Buy {
			if g.Coating.Key == "epoxy-barrier" {
				pots = g.Pots
			}
		}
		s, _ := j.Scheme("hull")
		for _, k := range s.Coats {
			if k.Layer.Coating.Key == "epoxy-barrier" {
				coat = k.Litres.Typical
			}
		}
		return coat, pots
	}
	_, many := pots(400)
	if len(many) != 1 || many[0].Litres.Float(quantity.Litre) != 29.9 {
		t.Fatalf("%v", many)
	}
	low, high := 1, 40000 // hundredths of a square metre
	for high-low > 1 {
		middle := (low + high) / 2
		if coat, _ := pots(float64(middle) / 100); coat.Cmp(many[0].Litres) <= 0 {
			low = middle
		} else {
			high = middle
		}
	}
	coat, one := pots(float64(low) / 100)
	if !coat.Equal(many[0].Litres) || len(one) != 0 {
		t.Errorf("%.2f m2 take %s of a pot of %s: %d pots", float64(low)/100, coat, many[0].Litres, len(one))
	}
	if _, two := pots(float64(high) / 100); len(two) != 1 {
		t.Errorf("%.2f m2: %d pots", float64(high)/100, len(two))
	}
}

// What a blasted surface swallows is counted with the first coat on it, and with no other.
func TestBlastedSurfaceFillsOnce(t *testing.T) {
	s, _ := plannedJob(t, strings.NewReplacer("material = \"grp\"", "material = \"steel\"", "coating = \"ablative-cuprous-multi\"\ncolour = \"red-oxide\"\nfilm = \"100 um\"", "coating = \"bare\"").Replace(sheet)).Scheme("hull")
	if !does(s.Route.Steps, finding.Blast) || len(s.Coats) < 3 {
		t.Fatalf("%v, %d coats: the test asks too little", s.Route.Steps, len(s.Coats))
	}
	told := 0
	for _, f := range s.Findings {
		if f.Rule == antifoul.RuleFillsBlast {
			told++
		}
	}
	if told != 1 {
		t.Errorf("told %d times", told)
	}
	for i, k := range s.Coats {
		if k.Fills.Typical.Given() != (i == 0) {
			t.Errorf("coat %d swallows %s", i+1, k.Fills.Typical)
		}
		// Litres without what is swallowed: a coat of the same coating on a surface that was not blasted.
		if i == 0 {
			dry := k.Area.Typical.Float(quantity.SquareMetre) * k.Film.Typical.Float(quantity.Micrometre) / 1000
			least := dry/(k.Layer.Coating.Solids.Typical.Float(quantity.Percent)/100) + k.Fills.Typical.Float(quantity.Litre)
			if got := k.Litres.Typical.Float(quantity.Litre); got < least || got < 1.2*k.Fills.Typical.Float(quantity.Litre) {
				t.Errorf("the first coat takes %.2f L, its film and what is swallowed %.2f L", got, least)
			}
		}
	}
	plain, _ := plannedJob(t, strings.Replace(sheet, "coating = \"ablative-cuprous-multi\"\ncolour = \"red-oxide\"\nfilm = \"100 um\"", "coating = \"bare\"", 1)).Scheme("hull")
	for _, k := range plain.Coats {
		if k.Fills.Typical.Given() {
			t.Error("a surface that was not blasted swallows paint")
		}
	}
}
