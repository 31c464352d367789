package antifoul_test

import (
	"math"
	"strings"
	"testing"

	"boatyard.example/bottomwork/antifoul"
	"boatyard.example/bottomwork/tables/finding"
)

// habit plans the test boat with lines of hers replaced, pair by pair, and returns her hull.
func habit(t *testing.T, pairs ...string) antifoul.PartRanking {
	t.Helper()
	text := base
	for i := 0; i+1 < len(pairs); i += 2 {
		if !strings.Contains(text, pairs[i]) {
			t.Fatalf("%q is not in the boat file", pairs[i])
		}
		text = strings.Replace(text, pairs[i], pairs[i+1], 1)
	}
	return planned(t, text).Ranking.Hull()
}

// worth is what a criterion is worth for a type, whether it bars, and the rule that it names.
func worth(t *testing.T, pr antifoul.PartRanking, coating, criterion string) (value float64, bars bool, rule finding.ID) {
	t.Helper()
	p, ok := pr.Of(coating)
	if !ok {
		t.Fatalf("no type %q", coating)
	}
	for _, k := range p.Criteria() {
		if k.Key == criterion {
			return k.Value, k.Bars, k.Finding.Rule
		}
	}
	t.Fatalf("no criterion %q", criterion)
	return 0, false, ""
}

// Ice rubs though nobody said where she is kept and on what she dries.
func TestIceAloneIsJudged(t *testing.T) {
	const said = "kept = \"afloat\"\ndries_on = \"none\"\n"
	for lines, want := range map[string]struct {
		hard, ablative float64
		bars           bool
	}{
		"":              {0.5, 0.5, false},
		"ice = false\n": {0.5, 0.5, false},
		"ice = true\n":  {1, 0, true},
	} {
		pr := habit(t, said, lines)
		if v, bars, _ := worth(t, pr, "hard-cuprous", "abrasion"); v != want.hard || bars {
			t.Errorf("%q: hard %v, bars %v", lines, v, bars)
		}
		if v, bars, _ := worth(t, pr, "ablative-cuprous-multi", "abrasion"); v != want.ablative || bars != want.bars {
			t.Errorf("%q: ablative %v, bars %v", lines, v, bars)
		}
	}
}

// Mud rubs off neither eroding nor traditional soft paint, and silicone it does; firm ground takes all three. A semi-hard film falls one grade
// short there and stays above the middle.
func TestGroundAndSoftFilms(t *testing.T) {
	for _, c := range []struct {
		ground, coating string
		value           float64
		bars            bool
	}{
		{"soft", "soft-cuprous", 1, false},
		{"soft", "ablative-cuprous-single", 1, false},
		{"soft", "foul-release-silicone", 0, true},
		{"firm", "soft-cuprous", 0, true},
		{"firm", "ablative-cuprous-single", 0, true},
		{"firm", "hybrid-cuprous", 0.7, false},
		{"firm", "hard-cuprous", 1, false},
	} {
		pr := habit(t, `dries_on = "none"`, `dries_on = "`+c.ground+`"`)
		if v, bars, _ := worth(t, pr, c.coating, "abrasion"); v != c.value || bars != c.bars {
			t.Errorf("%s on %s ground: %v, bars %v", c.coating, c.ground, v, bars)
		}
	}
}

// A bare bottom stays clean in medium growth under a brush each week, not under a sponge and not a day later; heavy growth is not brushed off.
func TestBareUnderTheBrush(t *testing.T) {
	for _, c := range []struct {
		growth, tool, every string
		value               float64
		bars                bool
	}{
		{"medium", "brush", "7 d", 0.2, false},
		{"medium", "scrub", "6 d", 0.2, false},
		{"medium", "brush", "8 d", 0, true},
		{"medium", "sponge", "7 d", 0, true},
		{"heavy", "scrub", "3 d", 0, true},
		{"light", "sponge", "14 d", 0.5, false},
		{"light", "sponge", "15 d", 0, true},
	} {
		pr := habit(t, `growth = "medium"`, "growth = \""+c.growth+"\"\ncleaning = \""+c.tool+"\"\ncleaned_every = \""+c.every+"\"")
		if v, bars, _ := worth(t, pr, "none", "growth"); v != c.value || bars != c.bars {
			t.Errorf("%s growth, %s every %s: %v, bars %v", c.growth, c.tool, c.every, v, bars)
		}
	}
}

// A propeller is left bare by the trade, and a metal that keeps itself clean by itself.
func TestBareGear(t *testing.T) {
	j := planned(t, base+gear("propeller", "propeller", "bronze"))
	pr, _ := j.Ranking.Part("propeller")
	if v, bars, rule := worth(t, pr, "none", "growth"); v != 0.3 || bars || rule != antifoul.RuleBareUsual {
		t.Errorf("a propeller: %v, bars %v, %s", v, bars, rule)
	}
	if v, bars, rule := worth(t, habit(t, `material = "grp"`, `material = "copper-nickel"`), "none", "growth"); v != 1 || bars || rule != antifoul.RuleBareSelf {
		t.Errorf("copper-nickel: %v, bars %v, %s", v, bars, rule)
	}
}

// A boat on a trailer or a lift stands dry between her days afloat: a hard film is scuffed each time, whatever her winter. Nobody's silence
// makes it worse.
func TestHardFilmOutOfTheWater(t *testing.T) {
	const winter = "ashore_each_year = \"4 months\"\nrelaunched_unpainted = true\n"
	for _, c := range []struct {
		kept, winter string
		value        float64
		bars         bool
		rule         finding.ID
	}{
		{"afloat", "", 1, false, ""},
		{"lift", "", 0.5, false, antifoul.RuleAirBetween},
		{"trailer", "ashore_each_year = \"4 months\"\nrelaunched_unpainted = false\n", 0.5, false, antifoul.RuleAirBetween},
		{"trailer", "ashore_each_year = \"4 months\"\n", 0.5, false, antifoul.RuleAirBetween},
		{"afloat", "ashore_each_year = \"4 months\"\n", 0.6, false, antifoul.RuleAirUnsaid},
		{"trailer", winter, 0, true, antifoul.RuleAirOver},
	} {
		pr := habit(t, winter, c.winter, `kept = "afloat"`, `kept = "`+c.kept+`"`)
		if v, bars, rule := worth(t, pr, "hard-copper-free", "air"); v != c.value || bars != c.bars || rule != c.rule {
			t.Errorf("%s, %q: %v, bars %v, %s", c.kept, c.winter, v, bars, rule)
		}
		if v, _, _ := worth(t, pr, "ablative-cuprous-multi", "air"); v != 1 {
			t.Errorf("%s, %q: an eroding film is worth %v", c.kept, c.winter, v)
		}
	}
}

// Eroding films are given up between 20 and 25 kn. The face of a transducer takes nothing else, and gets its thin coat all the same.
func TestErodingFilmsAtSpeed(t *testing.T) {
	for knots, bars := range map[string]bool{"21.9 kn": false, "22 kn": false, "22.1 kn": true} {
		for _, c := range []string{"ablative-cuprous-multi", "ablative-thiocyanate"} {
			if _, got, _ := worth(t, habit(t, `speed = "6 kn"`, `speed = "`+knots+`"`), c, "speed"); got != bars {
				t.Errorf("%s at %s: bars %v", c, knots, got)
			}
		}
	}
	j := planned(t, strings.Replace(base, `speed = "6 kn"`, `speed = "30 kn"`, 1)+gear("sounder", "fitting", "transducer"))
	pr, _ := j.Ranking.Part("sounder")
	best, ok := pr.Best()
	if !ok || best.Coating().Carrier != "water" {
		t.Errorf("a transducer at 30 kn gets %q", best.Key)
	}
	if v, bars, rule := worth(t, pr, best.Key, "speed"); v != 0 || bars || rule != antifoul.RuleSpeedOver {
		t.Errorf("its speed is worth %v, bars %v, %s", v, bars, rule)
	}
	pr, _ = planned(t, strings.Replace(base, `speed = "6 kn"`, `speed = "22 kn"`, 1)+gear("sounder", "fitting", "transducer")).Ranking.Part("sounder")
	if v, bars, rule := worth(t, pr, "ablative-cuprous-water", "speed"); math.Abs(v-0.5) > 1e-9 || bars || rule != antifoul.RuleSpeedFits {
		t.Errorf("at its limit: %v, bars %v, %s", v, bars, rule)
	}
}

// To strip a sound film is against a type as soon as somebody knows what kind the film is; the film that nobody knows is better off her.
func TestSoundFilmOfAKnownKindStays(t *testing.T) {
	const found = `coating = "ablative-cuprous-multi"`
	for old, want := range map[string]float64{"ablative-cuprous-multi": 0, "ablative-old": 0, "unknown-old": 0.3, "organotin-old": 0.3} {
		pr := habit(t, found, `coating = "`+old+`"`)
		hard, _ := pr.Of("hard-cuprous")
		if !does(hard.Route().Steps, finding.Strip) {
			t.Fatalf("hard over %s does not strip", old)
		}
		if v, _, _ := worth(t, pr, "hard-cuprous", "same"); v != want {
			t.Errorf("hard over %s: %v, want %v", old, v, want)
		}
	}
	if v, _, _ := worth(t, habit(t, found, `coating = "ablative-old"`, `state = "sound"`, `state = "flaking"`), "hard-cuprous", "same"); v != 0.3 {
		t.Errorf("over a film that flakes: %v", v)
	}
}

// An open question of law costs what depends on its answer: a film of a kind that the law names, and one that works only if it is cleaned. Where
// nobody cleans her, or the law asks the same of every film with biocide, it costs nothing.
func TestCleaningThatTheLawLeavesOpen(t *testing.T) {
	const growth, cleaned = `growth = "medium"`, "growth = \"medium\"\ncleaning = \"sponge\"\ncleaned_every = \"30 d\""
	washington, half := []string{`place = "GB"`, `place = "US-WA"`}, antifoul.RuleCleanOpen
	for _, c := range []struct {
		coating string
		pairs   []string
		value   float64
		rule    finding.ID
	}{
		{"self-polishing-cuprous", []string{growth, cleaned}, 0.6, antifoul.RuleCleanWears},
		{"self-polishing-cuprous", append([]string{growth, cleaned}, washington...), 0.3, half},
		{"self-polishing-cuprous", washington, 0.5, ""},
		{"hard-cuprous", append([]string{growth, cleaned}, washington...), 1, antifoul.RuleCleanFits},
		{"copper-loaded-epoxy", []string{growth, cleaned}, 0.5, half},
		{"foul-release-silicone", append([]string{growth, cleaned}, washington...), 1, antifoul.RuleCleanFits},
	} {
		if v, _, rule := worth(t, habit(t, c.pairs...), c.coating, "cleaning"); v != c.value || rule != c.rule {
			t.Errorf("%s, %q: %v by %q, want %v by %q", c.coating, c.pairs, v, rule, c.value, c.rule)
		}
	}
	if _, bars, rule := worth(t, habit(t, append([]string{growth, cleaned}, washington...)...), "ablative-cuprous-multi", "cleaning"); !bars || rule == half {
		t.Error("what is forbidden is no open question")
	}
}

// What the owner wants less of gains nothing by being on her already; without the wish, and without copper, the same again is worth most.
func TestSameAgainHearsTheWish(t *testing.T) {
	const wish, at = "[wishes]\nbiocide = \"less\"\n[work]", "[work]"
	for _, c := range []struct {
		found string
		wish  bool
		want  float64
	}{
		{"ablative-cuprous-multi", false, 1},
		{"ablative-cuprous-multi", true, 0.5},
		{"ablative-thiocyanate", true, 0.5},
		{"self-polishing-pyrithione", true, 0.5},
		{"ablative-copper-free", true, 1},
	} {
		pairs := []string{`coating = "ablative-cuprous-multi"`, `coating = "` + c.found + `"`}
		if c.wish {
			pairs = append(pairs, at, wish)
		}
		if v, _, _ := worth(t, habit(t, pairs...), c.found, "same"); v != c.want {
			t.Errorf("%s, wish %v: %v, want %v", c.found, c.wish, v, c.want)
		}
	}
}

// Nothing but its like goes over traditional soft: it is worth less than other films where it is new to her, but on planks that work.
func TestSoftFilmBinds(t *testing.T) {
	const found, material = `coating = "ablative-cuprous-multi"`, `material = "grp"`
	for _, c := range []struct {
		pairs []string
		value float64
		rule  finding.ID
	}{
		{nil, 0.4, antifoul.RuleSoftBinds},
		{[]string{found, `coating = "bare"`}, 0.4, antifoul.RuleSoftBinds},
		{[]string{found, `coating = "soft-old"`}, 0.7, ""},
		{[]string{material, `material = "wood-carvel"`}, 0.7, ""},
		{[]string{material, `material = "wood-sheathed"`}, 0.4, antifoul.RuleSoftBinds},
	} {
		if v, _, rule := worth(t, habit(t, c.pairs...), "soft-cuprous", "stays"); v != c.value || rule != c.rule {
			t.Errorf("%q: %v by %q, want %v by %q", c.pairs, v, rule, c.value, c.rule)
		}
	}
	over := habit(t, found, `coating = "self-polishing-cuprous"`)
	if p, _ := over.Of("soft-cuprous"); !does(p.Route().Steps, finding.Tie) {
		t.Error("soft goes over a polishing film without the tie coat that an eroding one gets")
	}
}

// A coat that holds off nothing at all is told so; one that holds too little, by how much.
func TestHoldsNothingOrTooLittle(t *testing.T) {
	for coating, want := range map[string]finding.ID{"blacking-bitumen": antifoul.RuleBareGrowth, "blacking-vinyl-tar": antifoul.RuleBareGrowth, "hard-copper-free": antifoul.RuleGrowthOver} {
		for _, growth := range []string{"medium", "heavy"} {
			if _, _, rule := worth(t, habit(t, `growth = "medium"`, `growth = "`+growth+`"`), coating, "growth"); rule != want {
				t.Errorf("%s in %s growth: %s, want %s", coating, growth, rule, want)
			}
		}
	}
}

// Cleaning that a law forbids is told with that law and its place.
func TestCleaningThatTheLawForbids(t *testing.T) {
	pr := habit(t, `growth = "medium"`, "growth = \"medium\"\ncleaning = \"sponge\"\ncleaned_every = \"30 d\"", `place = "GB"`, `place = "US-WA"`)
	k := criterionOf(t, pr, "ablative-cuprous-multi", "cleaning")
	if !k.Bars || k.Finding.Rule != antifoul.RuleCleanBanned || factOf(k.Finding, "place") != "Washington State" {
		t.Fatalf("%+v", k)
	}
	if len(k.Finding.Basis) != 1 || k.Finding.Basis[0].Kind != finding.Published {
		t.Errorf("it rests on %+v", k.Finding.Basis)
	}
}
