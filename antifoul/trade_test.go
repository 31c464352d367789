package antifoul_test

import (
	"slices"
	"strings"
	"testing"
	"testing/fstest"

	"boatyard.example/bottomwork/antifoul"
	"boatyard.example/bottomwork/antifoul/wear"
	"boatyard.example/bottomwork/compat"
	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

// What every boatyard knows, one test for each. That the copper share of antifouling runs from about 17 to 65 % is held where
// the table of coatings is tested.

func coating(t *testing.T, b *tables.Book, key string) tables.Coating {
	t.Helper()
	c, err := b.Coating(key)
	if err != nil {
		t.Fatal(err)
	}
	return c
}

func planned(t *testing.T, text string) *antifoul.Job {
	t.Helper()
	j, err := plan(t, text)
	if err != nil {
		t.Fatal(err)
	}
	return j
}

func does(steps []finding.Step, a finding.Action) bool {
	return slices.ContainsFunc(steps, func(s finding.Step) bool { return s.Do == a })
}

// Basis: common practice, no source.
func TestHardFeelsLikePaintAndAblativeComesOffOnTheHand(t *testing.T) {
	for _, k := range []struct{ old, feels, not string }{
		{"hard-old", "ordinary paint", "comes off on the hand"},
		{"ablative-old", "comes off on the hand", "ordinary paint"},
	} {
		j := planned(t, strings.Replace(base, `coating = "ablative-cuprous-multi"`, `coating = "`+k.old+`"`, 1))
		says := j.Boat.Parts[0].Found[0].Coating.Recognised
		if !strings.Contains(says, k.feels) || strings.Contains(says, k.not) {
			t.Errorf("%s is recognised so: %q", k.old, says)
		}
		hard, _ := j.Ranking.Hull().Of("hard-copper-free")
		if off := does(hard.Route().Steps, finding.Strip); off != (k.old == "ablative-old") {
			t.Errorf("a hard film over %s: strip is %v", k.old, off)
		}
	}
}

// Basis: common practice, no source.
func TestCuprousOxideNeverGoesOnAluminium(t *testing.T) {
	for _, found := range []string{film("bare", ""), film("epoxy-barrier", `film = "500 um"`)} {
		j := planned(t, boatText(cruiserHull, "aluminium", found, ""))
		n := 0
		for _, p := range j.Ranking.Hull().Places {
			if p.Coating().Biocide != tables.CuprousOxide {
				continue
			}
			n++
			if p.Tier != antifoul.Barred || !p.Findings().Has("metal-never") {
				t.Errorf("%s on aluminium is %v", p.Key, p.Tier)
			}
		}
		if n < 5 {
			t.Errorf("%d types with cuprous oxide, expected at least 5", n)
		}
	}
}

// Basis: common practice, no source.
func TestCopperThiocyanateGoesOnAluminiumOverABarrier(t *testing.T) {
	bare := planned(t, boatText(cruiserHull, "aluminium", film("bare", ""), "")).Ranking.Hull()
	sealed := planned(t, boatText(cruiserHull, "aluminium", film("epoxy-barrier", `film = "350 um"`), "")).Ranking.Hull()
	for _, key := range []string{"hard-thiocyanate", "ablative-thiocyanate", "self-polishing-thiocyanate", "hybrid-thiocyanate"} {
		p, _ := bare.Of(key)
		if p.Tier == antifoul.Barred || !does(p.Route().Steps, finding.Barrier) {
			t.Errorf("%s on bare aluminium is %v, steps %v", key, p.Tier, p.Route().Steps)
		}
		p, _ = sealed.Of(key)
		if p.Tier == antifoul.Barred || does(p.Route().Steps, finding.Barrier) || !p.Findings().Has("metal-barrier-there") {
			t.Errorf("%s over a sound barrier is %v, steps %v", key, p.Tier, p.Route().Steps)
		}
	}
}

// Basis: common practice, no source.
func TestCopperFreeGoesOnAnyHullThatIsPainted(t *testing.T) {
	b := tables.Default()
	n := 0
	for m := range b.Materials() {
		if m.Painted != tables.Allowed {
			continue
		}
		n++
		j := planned(t, boatText(cruiserHull, m.Key, film("bare", ""), ""))
		for _, key := range []string{"hard-copper-free", "ablative-copper-free", "self-polishing-copper-free", "hybrid-copper-free"} {
			if p, ok := j.Ranking.Hull().Of(key); !ok || p.Tier == antifoul.Barred {
				t.Errorf("%s on %s is %v: %s", key, m.Key, p.Tier, p.Why())
			}
		}
	}
	if n < 8 {
		t.Errorf("%d materials that are painted, expected at least 8", n)
	}
}

// Basis: common practice, no source.
func TestHybridsOfAllThreeBiocidesExist(t *testing.T) {
	for _, biocide := range []tables.Biocide{tables.CuprousOxide, tables.CopperThiocyanate, tables.CopperFree} {
		found := false
		for c := range tables.Default().Coatings() {
			found = found || c.Mechanism == tables.Hybrid && c.Biocide == biocide && c.Ranked()
		}
		if !found {
			t.Errorf("no hybrid with %s", biocide)
		}
	}
}

// Basis: common practice, no source.
func TestSingleSeasonAndMultiSeasonPaintsExist(t *testing.T) {
	b := tables.Default()
	use := wear.Use{UnderWay: quantity.Hour.N(120), AshoreEachYear: quantity.Month.N(5)}
	single, multi := coating(t, b, "ablative-cuprous-single"), coating(t, b, "ablative-cuprous-multi")
	if !strings.Contains(single.Name, "single-season") || !strings.Contains(multi.Name, "multi-season") {
		t.Errorf("names: %q, %q", single.Name, multi.Name)
	}
	if s, m := wear.Life(b, single, use, single.Most), wear.Life(b, multi, use, multi.Most); s.Typical < 7 || m.Typical < 1.5*s.Typical || m.Typical < 24 {
		t.Errorf("the single-season film lasts %.0f months, the multi-season one %.0f", s.Typical, m.Typical)
	}
	single, multi = coating(t, b, "hard-cuprous-single"), coating(t, b, "hard-cuprous")
	if single.Life.High.Cmp(quantity.Month.N(12)) > 0 || multi.Life.High.Cmp(quantity.Month.N(12)) <= 0 {
		t.Errorf("hard: single-season to %v, the other to %v", single.Life.High, multi.Life.High)
	}
}

// Basis: common practice, no source.
func TestHardMustNotStayInTheAirAndAblativeOverItSolvesThat(t *testing.T) {
	b := tables.Default()
	hull := compat.Part{Name: "hull", Zone: antifoul.HullZone, Material: "grp"}
	layer := func(key string, p compat.Purpose) compat.Layer {
		c := coating(t, b, key)
		return compat.Layer{Coating: c, State: tables.Sound, Coats: 2, Film: c.Film, For: p}
	}
	primer, hard := layer("epoxy-primer", compat.Undercoat), layer("hard-cuprous", compat.Working)
	ablative := layer("ablative-cuprous-multi", compat.Working)
	const stands, months = 60, 150 // days: as long as the hard film may wait, and a winter ashore
	if fs := compat.CheckStack(b, hull, compat.Stack{primer, hard}, stands); fs.Has("stack-air-new") {
		t.Errorf("%d days dry are too many for a hard film", stands)
	}
	for _, days := range []int{stands + 1, months} {
		fs := compat.CheckStack(b, hull, compat.Stack{primer, hard}, days)
		i := slices.IndexFunc(fs, func(f finding.Finding) bool { return f.Rule == "stack-air-new" })
		if i < 0 || fs[i].Verdict != finding.Needs || !does(fs[i].First, finding.Abrade) {
			t.Errorf("a hard film that stands dry for %d days: %v", days, fs)
		}
		fs = compat.CheckStack(b, hull, compat.Stack{primer, hard, ablative}, days)
		if fs.Has("stack-air-new") || fs.Worst() > finding.Caution {
			t.Errorf("an ablative over it, %d days: %v", days, fs)
		}
	}
}

// Basis: common practice, no source.
func TestAnotherColourBelowIsTheSignToRecoat(t *testing.T) {
	for _, found := range []string{film("bare", ""), film("epoxy-barrier", `film = "300 um"`), film("ablative-cuprous-multi", `colour = "black"`)} {
		j := planned(t, boatText(cruiserHull, "grp", found, "[use]\ngrowth = \"medium\"\n[wishes]\ncoating = \"ablative-cuprous-multi\"\ntop_colour = \"mid-blue\""))
		s, ok := j.Scheme("hull")
		if !ok || len(s.Key) < 2 {
			t.Fatalf("no scheme, or no key to its colours: %+v", s.Key)
		}
		top, below := s.Key[len(s.Key)-1], s.Key[len(s.Key)-2]
		if top.Shows.Rule != antifoul.RuleShowsWorking || below.Shows.Rule != antifoul.RuleShowsSignal {
			t.Fatalf("colours from the top say %s, %s", top.Shows.Rule, below.Shows.Rule)
		}
		if top.Layer.Colour != "mid-blue" || top.Layer.Colour == below.Layer.Colour {
			t.Errorf("%s over %s", top.Layer.Colour, below.Layer.Colour)
		}
		over, errO := j.Book.Colour(top.Layer.Colour)
		under, errU := j.Book.Colour(below.Layer.Colour)
		if errO != nil || errU != nil || max(over.Lightness-under.Lightness, under.Lightness-over.Lightness) < 20 {
			t.Errorf("%s over %s is no step in lightness", top.Layer.Colour, below.Layer.Colour)
		}
		if says := j.Book.Say(below.Shows, quantity.Metric); !strings.Contains(says, "paint") {
			t.Errorf("the signal says: %s", says)
		}
	}
}

// fourByFour stands on four pairs of stands, four keel blocks and four chains, with a hard film under the new ablative one.
func fourByFour() string {
	return boatText(cruiserHull+"\nstand_pairs = 4\nkeel_blocks = 4\nchains = 4", "grp",
		film("epoxy-primer", `film = "60 um"`)+film("hard-cuprous", `film = "100 um"`), "[use]\ngrowth = \"medium\"\n[wishes]\ncoating = \"ablative-cuprous-multi\"")
}

// Basis: common practice, no source.
func TestFourPairsOfStandsFourBlocksAndFourChainsLeaveSixteenPlaces(t *testing.T) {
	if n := planned(t, fourByFour()).Pads.Count; n != 16 {
		t.Errorf("%d places", n)
	}
}

// Basis: common practice, no source.
func TestPlacesStartFromSandingAndPrimerAndNothingLapsOntoTheAblative(t *testing.T) {
	s, ok := planned(t, fourByFour()).Scheme("hull")
	if !ok || s.Coating.Key != "ablative-cuprous-multi" || len(s.Patch) < 3 {
		t.Fatalf("the scheme is %s, a place gets %d layers", s.Coating.Key, len(s.Patch))
	}
	i := slices.IndexFunc(s.Findings, func(f finding.Finding) bool { return f.Rule == "patch-start" })
	if i < 0 || len(s.Findings[i].First) == 0 || s.Findings[i].First[0].Do != finding.Abrade {
		t.Error("nothing says that a place begins with sanding")
	}
	if first := s.Patch[0].Layer.Coating; first.Role != tables.Primer {
		t.Errorf("the first layer of a place is %s", first.Key)
	}
	hard, ablative := false, false
	for _, p := range s.Patch {
		c := p.Layer.Coating
		switch {
		case c.Role == tables.Primer, c.Mechanism == tables.Hard:
			hard = hard || c.Mechanism == tables.Hard
			if p.MayLap {
				t.Errorf("%s may lap", c.Key)
			}
		case c.Mechanism == tables.Ablative:
			ablative = ablative || p.MayLap
		}
	}
	if !hard || !ablative {
		t.Errorf("hard among the layers: %v; the working coat may lap onto itself: %v", hard, ablative)
	}
}

// Basis: common practice, no source.
func TestAWeekIsPastAWindowOfSixteenToTwentyFourHours(t *testing.T) {
	b, err := tables.Default().With(fstest.MapFS{"own.toml": {Data: []byte(`
[[coating]]
key = "epoxy-primer"
basis = "own table"
source = "the tin"
overcoat_min = "16 h"
overcoat_max = "24 h"
antifouling_max = "24 h"
`)}})
	if err != nil {
		t.Fatal(err)
	}
	primer := coating(t, b, "epoxy-primer")
	for _, next := range []string{"epoxy-barrier", "epoxy-primer", "hard-cuprous", "ablative-copper-free"} {
		for _, k := range []struct {
			hours int64
			does  finding.Action // "" is nothing
		}{{15, finding.Wait}, {16, ""}, {24, ""}, {25, finding.Abrade}, {7 * 24, finding.Abrade}} {
			var steps []finding.Step
			for _, f := range compat.Over(b, coating(t, b, next), compat.Layer{Coating: primer, State: tables.Sound, Age: quantity.Hour.N(k.hours)}) {
				steps = append(steps, f.First...)
			}
			if does(steps, finding.Abrade) != (k.does == finding.Abrade) || does(steps, finding.Wait) != (k.does == finding.Wait) {
				t.Errorf("%s over it after %d h: %v, expected %q", next, k.hours, steps, k.does)
			}
		}
	}
}

// twin is a row of a coating whose copper content is all that its twins differ in.
func twin(key, low, typical, high string) string {
	return `
[[coating]]
key = "` + key + `"
name = "` + key + `"
basis = "assumption"
role = "antifouling"
mechanism = "ablative"
packs = 1
carrier = "solvent"
solids = ["40 %", "50 %", "60 %"]
film = ["40 um", "50 um", "60 um"]
coats = 2
most_coats = 4
at = "20 degC"
overcoat_min = "4 h"
launch_min = "12 h"
air_new = "365 d"
apply_min = "5 degC"
apply_max = "35 degC"
speed_max = "25 kn"
scrub = "light"
abrasion = "light"
growth = "heavy"
waters = ["salt", "brackish"]
wear_rest = ["0.5 um", "1.5 um", "3 um"]
wear_use = ["3 um", "5 um", "8 um"]
  [[coating.active]]
  key = "cuprous-oxide"
  content = ["` + low + `", "` + typical + `", "` + high + `"]
`
}

// Basis: common practice, no source.
func TestMoreCopperIsNotBetter(t *testing.T) {
	b, err := tables.Default().With(fstest.MapFS{"own.toml": {Data: []byte(twin("twin-little", "17 %", "18 %", "20 %") + twin("twin-much", "60 %", "62 %", "65 %"))}})
	if err != nil {
		t.Fatal(err)
	}
	texts := []string{base}
	for _, p := range panel {
		texts = append(texts, p.text)
	}
	for i, text := range texts {
		boat, err := antifoul.ReadBoatWith(b, fstest.MapFS{"boat.toml": {Data: []byte(text)}}, "boat.toml")
		if err != nil {
			t.Fatal(err)
		}
		r, err := antifoul.Rank(b, boat)
		if err != nil {
			t.Fatal(err)
		}
		for _, pr := range r.Parts {
			little, okLittle := pr.Of("twin-little")
			much, okMuch := pr.Of("twin-much")
			if !okLittle || !okMuch {
				t.Fatalf("boat %d, %s: a twin is not ranked", i, pr.Part)
			}
			if little.Tier != much.Tier || little.Score != much.Score || little.Rank != much.Rank || !little.Tied || !much.Tied {
				t.Errorf("boat %d, %s: little copper %v %.1f, rank %d; much copper %v %.1f, rank %d", i, pr.Part,
					little.Tier, little.Score, little.Rank, much.Tier, much.Score, much.Rank)
			}
		}
	}
}
