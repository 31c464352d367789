package antifoul_test

import (
	"fmt"
	"math"
	"strings"
	"testing"
	"testing/fstest"

	"boatyard.example/bottomwork/antifoul"
	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/finding"
)

// rankedHull ranks the hull of a boat by a book with own rows.
func rankedHull(t *testing.T, own, text string) antifoul.PartRanking {
	t.Helper()
	b := tables.Default()
	if own != "" {
		var err error
		if b, err = b.With(fstest.MapFS{"own.toml": {Data: []byte(own)}}); err != nil {
			t.Fatal(err)
		}
	}
	x, err := antifoul.ReadBoatWith(b, fstest.MapFS{"boat.toml": {Data: []byte(text)}}, "boat.toml")
	if err != nil {
		t.Fatal(err)
	}
	r, err := antifoul.Rank(b, x)
	if err != nil {
		t.Fatal(err)
	}
	return r.Hull()
}

// What each criterion is worth, by hand from its formula, on both sides of its bounds. The test boat lies afloat for 8 months of the year in medium growth, is painted every 24 months, so after 16 afloat, lies for 20 days at most and is
// under way for 120 hours a year at 6 kn and 15 degC, which are the references of wear.
func TestWorthByHand(t *testing.T) {
	wish := func(line string) []string { return []string{"[work]", "[wishes]\n" + line + "\n[work]"} }
	clean := func(tool, every string) []string {
		return []string{`growth = "medium"`, "growth = \"medium\"\ncleaning = \"" + tool + "\"\ncleaned_every = \"" + every + "\""}
	}
	idle := func(days string) []string {
		return []string{`longest_idle = "20 d"`, `longest_idle = "` + days + ` d"`}
	}
	grow := func(grade string) []string { return []string{`growth = "medium"`, `growth = "` + grade + `"`} }
	fast := func(kn string) []string { return []string{`speed = "6 kn"`, `speed = "` + kn + ` kn"`} }
	film := func(key, line string) string {
		return "[[coating]]\nkey = \"" + key + "\"\nbasis = \"own table\"\nsource = \"the tin\"\n" + line + "\n"
	}
	open := []string{"launch = 2027-05-20", "launch_open = true", "relaunched_unpainted = true", "relaunched_unpainted = false"}
	ashore := func(months, again string) []string {
		return []string{`ashore_each_year = "4 months"`, `ashore_each_year = "` + months + ` months"`, "relaunched_unpainted = true", again}
	}
	const unpainted, painted = "relaunched_unpainted = true", "relaunched_unpainted = false"
	for _, c := range []struct {
		criterion, coating string
		own                string
		pairs              []string
		value              float64
		bars               bool
	}{
		// The life of a film that stays, of months afloat: 18 of 16, 12 of 16; at most 15, which is as long as she is afloat within 19 months.
		{"lasting", "hard-cuprous", "", nil, 1, false},
		{"lasting", "hard-thiocyanate", "", nil, 0.75, false},
		{"lasting", "hard-copper-free", "", nil, 0, true},
		{"lasting", "hard-copper-free", "", []string{`haul_out_every = "24 months"`, `haul_out_every = "19 months"`}, 0.8, false},
		// Coats of a film that wears, 50 um each: one more than each begun year afloat, so three; at 9.375 um a month three, at 12.5 four, which is the most, at more five.
		{"lasting", "ablative-cuprous-multi", worn("1", "2", "9.375"), nil, 0.7, false},
		{"lasting", "ablative-cuprous-multi", worn("1", "2", "12.5"), nil, 0.4, false},
		{"lasting", "ablative-cuprous-multi", worn("1", "2", "12.6"), nil, 0.3, false},
		{"lasting", "ablative-cuprous-multi", worn("1", "12.5", "12.6"), nil, 0.3, false},
		{"lasting", "ablative-cuprous-multi", worn("1", "12.6", "12.7"), nil, 0, true},
		{"lasting", "ablative-cuprous-multi", worn("1", "2", "3"), []string{`haul_out_every = "24 months"`, `haul_out_every = "12 months"`}, 1, false},
		// Three coats of three, two of two.
		{"lasting", "ablative-cuprous-multi", film("ablative-cuprous-multi", "most_coats = 3"), nil, 0.4, false},
		{"lasting", "ablative-cuprous-multi", film("ablative-cuprous-multi", "most_coats = 2"), []string{`haul_out_every = "24 months"`, `haul_out_every = "12 months"`}, 1, false},
		// Half a month of life, of one afloat; of none that is as good as any.
		{"lasting", "hard-cuprous", film("hard-cuprous", "life = [\"0.5 months\", \"0.5 months\", \"1 months\"]"), append(ashore("11", unpainted), `haul_out_every = "24 months"`, `haul_out_every = "12 months"`), 0.5, false},
		{"lasting", "hard-cuprous", film("hard-cuprous", "life = [\"0 months\", \"0 months\", \"0 months\"]"), ashore("12", unpainted), 1, false},
		// Growth against what the type holds off.
		{"growth", "ablative-cuprous-multi", "", nil, 1, false},
		{"growth", "ablative-thiocyanate", "", nil, 0.75, false},
		{"growth", "ablative-thiocyanate", "", wish("biocide = \"less\""), 1, false},
		{"growth", "hard-copper-free", "", nil, 0.2, false},
		{"growth", "hard-copper-free", "", grow("heavy"), 0, true},
		{"growth", "ablative-thiocyanate", "", grow("heavy"), 0.2, false},
		{"growth", "ablative-thiocyanate", "", []string{"growth = \"medium\"\n", ""}, 0.5, false},
		{"growth", "hard-copper-free", "", []string{"growth = \"medium\"\n", ""}, 0.35, false},
		{"growth", "hard-copper-free", "", []string{`kept = "afloat"`, `kept = "trailer"`}, 1, false},
		// No stronger than need be.
		{"restraint", "ablative-cuprous-multi", "", nil, 2. / 3, false},
		{"restraint", "ablative-cuprous-multi", "", grow("light"), 1. / 3, false},
		{"restraint", "ablative-thiocyanate", "", grow("light"), 2. / 3, false},
		{"restraint", "ablative-thiocyanate", "", nil, 1, false},
		{"restraint", "hard-copper-free", "", nil, 1, false},
		{"restraint", "inert-epoxy", "", grow("light"), 1, false},
		{"restraint", "hard-copper-free", "", []string{`kept = "afloat"`, `kept = "trailer"`}, 2. / 3, false},
		{"restraint", "hard-thiocyanate", "", []string{`kept = "afloat"`, `kept = "trailer"`}, 0, true},
		{"restraint", "ablative-copper-free-water", "", []string{`kept = "afloat"`, `kept = "trailer"`}, 0, true},
		// Speed.
		{"speed", "foul-release-silicone", "", nil, 0, true},
		{"speed", "foul-release-silicone", "", clean("sponge", "30 d"), 0.3, false},
		{"speed", "foul-release-silicone", "", fast("7.9"), 0, true},
		{"speed", "foul-release-silicone", "", fast("8"), 1, false},
		{"speed", "hard-cuprous", "", fast("50"), 1, false},
		{"speed", "ablative-cuprous-multi", "", []string{"speed = \"6 kn\"\n", ""}, 0.5, false},
		{"speed", "hard-cuprous", "", []string{"speed = \"6 kn\"\n", ""}, 1, false},
		// Lying still, and hours under way of a film that polishes: 120 of 150.
		{"idle", "hybrid-copper-free", "", nil, 1, false},
		{"idle", "hybrid-copper-free", "", idle("21"), 1, false},
		{"idle", "hybrid-copper-free", "", idle("28"), 0.75, false},
		{"idle", "hybrid-copper-free", "", idle("42"), 0.5, false},
		{"idle", "hybrid-copper-free", "", idle("43"), 0, true},
		{"idle", "hybrid-copper-free", "", idle("0"), 1, false},
		{"idle", "hybrid-copper-free", film("hybrid-copper-free", "idle_max = \"12 h\""), idle("0.75"), 2. / 3, false},
		{"idle", "inert-epoxy", "", idle("29"), 0, true},
		{"idle", "inert-epoxy", "", append(idle("28"), grow("light")...), 0.5, false},
		{"idle", "inert-epoxy", "", append(idle("56"), grow("light")...), 0.25, false},
		{"idle", "hybrid-copper-free", "", append(idle("43"), grow("light")...), 0, true},
		{"idle", "self-polishing-cuprous", "", nil, 0.9, false},
		{"idle", "self-polishing-cuprous", "", []string{`under_way = "120 h"`, `under_way = "150 h"`}, 1, false},
		{"idle", "self-polishing-cuprous", "", []string{`under_way = "120 h"`, `under_way = "75 h"`}, 0.75, false},
		{"idle", "self-polishing-cuprous", "", []string{"under_way = \"120 h\"\n", ""}, 1, false},
		{"idle", "self-polishing-cuprous", "", idle("28"), 0.675, false}, // 21 of 28, of which 0.9
		{"idle", "self-polishing-cuprous", "", []string{"longest_idle = \"20 d\"\n", ""}, 0.5, false},
		{"idle", "self-polishing-cuprous", "", append(idle("28"), `under_way = "120 h"`, `under_way = "300 h"`), 0.75, false},
		{"idle", "self-polishing-cuprous", "", append(idle("28"), "under_way = \"120 h\"\n", ""), 0.75, false},
		{"idle", "hard-cuprous", "", idle("90"), 1, false},
		{"idle", "inert-epoxy", "", append(idle("90"), `kept = "afloat"`, `kept = "trailer"`), 1, false},
		// The air: a hard film is scuffed after 3 days and done with after 30; half a month is 15.2 days. An open launch is 60 days.
		{"air", "hard-cuprous", "", nil, 0, true},
		{"air", "hard-cuprous", "", ashore("0.5", unpainted), 0.5, false},
		{"air", "hard-cuprous", "", ashore("0.5", painted), 1, false},
		{"air", "hard-cuprous", "", ashore("0.09", unpainted), 1, false}, // 2.7 days
		{"air", "hard-cuprous", "", ashore("0.1", unpainted), 0.5, false},
		{"air", "hard-cuprous", "", ashore("0.98", unpainted), 0.5, false}, // 29.8 days
		{"air", "hard-cuprous", "", ashore("0.99", unpainted), 0, true},
		{"air", "hard-cuprous", film("hard-cuprous", "air_scuff = \"2922 h\"\nair_used = \"2923 h\""), nil, 1, false}, // 121.75 days, as long as four months
		{"air", "hard-cuprous", film("hard-cuprous", "air_scuff = \"2921 h\"\nair_used = \"2922 h\""), nil, 0.5, false},
		{"air", "hard-cuprous", film("hard-cuprous", "air_used = \"2921 h\""), nil, 0, true},
		{"air", "hybrid-cuprous", "", ashore("5", unpainted), 1, false}, // 152 of 180 days
		{"air", "hybrid-cuprous", "", ashore("6", unpainted), 0, true},
		{"air", "soft-cuprous", "", open, 0, true},
		{"air", "hard-cuprous", "", open, 0.2, false},
		{"air", "hybrid-cuprous", "", open, 1, false},
		{"air", "hybrid-cuprous", film("hybrid-cuprous", "air_new = \"60 d\""), open, 0.2, false},
		{"air", "hybrid-cuprous", film("hybrid-cuprous", "air_new = \"61 d\""), open, 1, false},
		{"air", "hybrid-cuprous", film("hybrid-cuprous", "air_new = \"7 d\""), open, 0.2, false},
		{"air", "hybrid-cuprous", film("hybrid-cuprous", "air_new = \"167 h\""), open, 0, true},
		// Cleaning: needed every 30 days, half as often is worth a half, less bars.
		{"cleaning", "foul-release-silicone", "", nil, 0, true},
		{"cleaning", "foul-release-silicone", "", clean("sponge", "30 d"), 1, false},
		{"cleaning", "foul-release-silicone", "", clean("sponge", "31 d"), 0.5, false},
		{"cleaning", "foul-release-silicone", "", clean("sponge", "60 d"), 0.5, false},
		{"cleaning", "foul-release-silicone", "", clean("sponge", "61 d"), 0, true},
		{"cleaning", "foul-release-silicone", "", fast("8"), 0.5, false},
		{"cleaning", "ablative-cuprous-multi", "", clean("sponge", "30 d"), 0.6, false},
		{"cleaning", "ablative-cuprous-multi", film("ablative-cuprous-multi", "scrub = \"medium\""), clean("sponge", "30 d"), 0.8, false},
		{"cleaning", "ablative-cuprous-multi", "", clean("brush", "30 d"), 0, true},
		{"cleaning", "hard-cuprous", "", clean("scrub", "30 d"), 1, false},
		{"cleaning", "hard-cuprous", "", nil, 0.5, false},
		{"cleaning", "self-polishing-cuprous", "", []string{`growth = "medium"`, "growth = \"medium\"\ncleaning = \"none\"", `place = "GB"`, `place = "US-WA"`}, 1, false}, // where it is asked whether it may be
		{"cleaning", "self-polishing-cuprous", "", append(clean("brush", "30 d"), `place = "GB"`, `place = "US-WA"`), 0, true},
		{"abrasion", "ablative-cuprous-multi", "", nil, 1, false},
		// What stays: hard-film-speed is 18 kn.
		{"stays", "hybrid-cuprous", "", nil, 0.5, false},
		{"stays", "ablative-cuprous-multi", "", nil, 0.7, false},
		{"stays", "hard-cuprous", "", nil, 0.2, false},
		{"stays", "hard-cuprous", "", fast("18"), 0.2, false},
		{"stays", "hard-cuprous", "", fast("18.1"), 1, false},
		{"stays", "hard-cuprous", "", clean("sponge", "30 d"), 0.2, false},
		{"stays", "hard-cuprous", "", clean("brush", "30 d"), 1, false},
		{"stays", "hard-cuprous", "", wish("racing_finish = true"), 1, false},
		{"stays", "hard-cuprous", "", []string{`dries_on = "none"`, `dries_on = "soft"`}, 0.2, false},
		{"stays", "hard-cuprous", "", []string{`dries_on = "none"`, `dries_on = "firm"`}, 1, false},
		{"stays", "hard-cuprous", "", []string{`kept = "afloat"`, `kept = "trailer"`}, 1, false},
		{"stays", "hard-cuprous", "", []string{`kept = "afloat"`, `kept = "lift"`}, 0.2, false},
		// Wishes.
		{"biocide", "foul-release-silicone", "", wish("biocide = \"less\""), 1, false},
		{"biocide", "hard-copper-free", "", wish("biocide = \"less\""), 0.7, false},
		{"biocide", "hard-thiocyanate", "", wish("biocide = \"less\""), 0.4, false},
		{"biocide", "hard-cuprous", "", wish("biocide = \"less\""), 0.1, false},
		{"biocide", "hard-copper-free", "", wish("biocide = \"none\""), 0, true},
		{"biocide", "foul-release-silicone", "", wish("biocide = \"none\""), 1, false},
		{"biocide", "hard-cuprous", "", nil, 0.5, false},
		{"racing", "hard-cuprous", "", wish("racing_finish = true"), 1, false},
		{"racing", "ablative-cuprous-multi", "", wish("racing_finish = true"), 0.1, false},
		{"racing", "ablative-cuprous-multi", "", wish("racing_finish = false"), 0.5, false},
		{"same", "ablative-cuprous-multi", "", nil, 1, false},
		{"same", "ablative-thiocyanate", "", nil, 0.7, false},
		{"same", "self-polishing-cuprous", "", nil, 0.3, false},
		{"same", "ablative-cuprous-multi", "", []string{`coating = "ablative-cuprous-multi"`, `coating = "bare"`}, 0.5, false},
		{"colour", "ablative-cuprous-multi", "", wish("top_colour = \"black\""), 1, false},
		{"colour", "ablative-cuprous-multi", "", wish("top_colour = \"white\""), 0, true},
		{"colour", "none", "", wish("top_colour = \"white\""), 0.5, false},
		// Work: washing is 0.025 h for a square metre, stripping 0.8, degreasing 0.04, abrading 0.15, and what is stripped is not washed for it; two hours are worth nothing. Trained hands that the owner has not are half of it.
		{"work", "ablative-cuprous-multi", "", nil, 1 - 0.025/2, false},
		{"work", "hard-cuprous", "", nil, 1 - (0.8+0.04+0.15)/2, false},
		{"work", "hard-cuprous", "", []string{"hands = 2", "hands = 2\ndone_by = \"owner\""}, 1 - (0.8+0.04+0.15)/2, false},
		{"work", "copper-loaded-epoxy", film("copper-loaded-epoxy", "skilled = false"), []string{"hands = 2", "hands = 2\ndone_by = \"owner\""}, 1 - (0.8+0.04+0.15)/2, false},
		{"work", "copper-loaded-epoxy", "", []string{"hands = 2", "hands = 2\ndone_by = \"owner\""}, (1 - (0.8+0.04+0.15)/2) / 2, false},
		{"work", "copper-loaded-epoxy", "", []string{"hands = 2", "hands = 2\ndone_by = \"yard\""}, 1 - (0.8+0.04+0.15)/2, false},
		{"water", "ablative-cuprous-multi", "", nil, 1, false},
		{"water", "blacking-bitumen", "", nil, 0, true},
		{"water", "blacking-bitumen", "", []string{"water = \"salt\"\n", "", "water = \"salt\"\n", ""}, 0.5, false},
	} {
		text := base
		for i := 0; i+1 < len(c.pairs); i += 2 {
			if !strings.Contains(text, c.pairs[i]) {
				t.Fatalf("%q is not in the boat file", c.pairs[i])
			}
			text = strings.Replace(text, c.pairs[i], c.pairs[i+1], 1)
		}
		k := criterionOf(t, rankedHull(t, c.own, text), c.coating, c.criterion)
		if !(math.Abs(k.Value-c.value) <= 1e-9) || k.Bars != c.bars { // also what is no number
			t.Errorf("%s of %s with %q: %v, bars %v by %q; want %v, %v", c.criterion, c.coating, c.pairs, k.Value, k.Bars, k.Finding.Rule, c.value, c.bars)
		}
		// What is worth less than a half speaks against the type.
		if want := c.value < 0.5-1e-9; k.Finding.Rule != "" && (k.Finding.Verdict == finding.Caution) != want {
			t.Errorf("%s of %s with %q is worth %v: %v", c.criterion, c.coating, c.pairs, c.value, k.Finding.Verdict)
		}
	}
}

// criterionOf is one criterion of a type on a part.
func criterionOf(t *testing.T, pr antifoul.PartRanking, coating, criterion string) antifoul.Criterion {
	t.Helper()
	for _, k := range place(t, pr, coating).Criteria() {
		if k.Key == criterion {
			return k
		}
	}
	t.Fatalf("no criterion %q", criterion)
	return antifoul.Criterion{}
}

// What a criterion says, and the two values that it shows, of the boat and of the type, on both sides of its bounds.
func TestWhatACriterionShows(t *testing.T) {
	const notGiven = "<nil>"
	gone := func(line string) []string { return []string{line + "\n", ""} }
	steel := []string{`material = "grp"`, `material = "steel"`}
	swap := func(line, with string) []string { return []string{line, with} }
	open := []string{"launch = 2027-05-20", "launch_open = true", "relaunched_unpainted = true", "relaunched_unpainted = false"}
	for _, c := range []struct {
		criterion, coating, own string
		pairs                   []string
		rule                    finding.ID
		boat, typ               string
	}{
		{"speed", "ablative-cuprous-multi", "", nil, antifoul.RuleSpeedFits, "6 kn", "22 kn"},
		{"speed", "ablative-cuprous-multi", "", gone(`speed = "6 kn"`), "", notGiven, "22 kn"},
		{"speed", "foul-release-silicone", "", swap(`speed = "6 kn"`, `speed = "10 kn"`), antifoul.RuleSpeedFits, "10 kn", "8 kn"},
		{"speed", "foul-release-silicone", "", nil, antifoul.RuleSpeedUnder, "6 kn", "8 kn"},
		{"speed", "foul-release-silicone", "", gone(`speed = "6 kn"`), "", notGiven, "8 kn"},
		{"speed", "hard-cuprous", "", nil, "", "6 kn", "no limit"},
		{"speed", "hard-cuprous", "", gone(`speed = "6 kn"`), "", notGiven, "no limit"},
		{"idle", "hybrid-copper-free", "", nil, antifoul.RuleIdleFits, "20 d", "21 d"},
		{"idle", "hybrid-copper-free", "", swap(`longest_idle = "20 d"`, `longest_idle = "21 d"`), antifoul.RuleIdleFits, "21 d", "21 d"},
		{"idle", "hybrid-copper-free", "", swap(`longest_idle = "20 d"`, `longest_idle = "22 d"`), antifoul.RuleIdleOver, "22 d", "21 d"},
		{"idle", "self-polishing-cuprous", "", nil, antifoul.RuleHoursUnder, "120 h", "150 h"},
		{"idle", "self-polishing-cuprous", "", swap(`under_way = "120 h"`, `under_way = "150 h"`), antifoul.RuleIdleFits, "20 d", "21 d"},
		{"idle", "self-polishing-cuprous", "", gone(`under_way = "120 h"`), antifoul.RuleIdleFits, "20 d", "21 d"},
		{"abrasion", "hard-cuprous", "", swap(`dries_on = "none"`, `dries_on = "firm"`), antifoul.RuleAbrasionFits, "heavy", "heavy"},
		{"abrasion", "hybrid-cuprous", "", swap(`dries_on = "none"`, `dries_on = "firm"`), antifoul.RuleAbrasionOver, "heavy", "medium"},
		{"abrasion", "ablative-cuprous-multi", "", swap(`dries_on = "none"`, `dries_on = "soft"`), antifoul.RuleAbrasionFits, "light", "light"},
		{"abrasion", "foul-release-silicone", "", swap(`dries_on = "none"`, `dries_on = "soft"`), antifoul.RuleAbrasionNone, "light", "none"},
		{"growth", "none", "", nil, antifoul.RuleBareGrowth, "medium", "none"},
		{"growth", "none", "", gone(`growth = "medium"`), antifoul.RuleBareAfloat, notGiven, "none"},
		{"growth", "none", "", steel, antifoul.RuleBareMetal, "medium", "none"},
		{"air", "hard-cuprous", "", nil, antifoul.RuleAirOver, "4 months", "30 d"},
		{"air", "hard-cuprous", "", swap(`ashore_each_year = "4 months"`, `ashore_each_year = "0.09 months"`), "", "0.09 months", "30 d"},
		{"air", "ablative-cuprous-multi", "", nil, "", "4 months", "no limit"},
		{"air", "ablative-cuprous-multi", "", gone(`ashore_each_year = "4 months"`), "", notGiven, "no limit"},
		{"air", "hybrid-cuprous", "", open, antifoul.RuleAirFits, "open", "120 d"},
		{"air", "hard-cuprous", "", open, antifoul.RuleAirOpen, "open", "60 d"},
		{"air", "hybrid-cuprous", "", append([]string{`ashore_each_year = "4 months"`, `ashore_each_year = "7 months"`, "launch = 2027-05-20", "launch_open = true"}, gone("relaunched_unpainted = true")...), antifoul.RuleAirUnsaid, "7 months", "180 d"},
		{"work", "ablative-cuprous-multi", "", nil, antifoul.RuleWorkLittle, notGiven, "0.03 h/m²"},
		{"work", "ablative-cuprous-multi", hoursOf("wash", 0.1, 0.1, 0.1), nil, antifoul.RuleWork, notGiven, "0.10 h/m²"},
		{"work", "ablative-cuprous-multi", hoursOf("wash", 0.099, 0.099, 0.099), nil, antifoul.RuleWorkLittle, notGiven, "0.10 h/m²"},
		{"work", "none", hoursOf("wash", 0.1, 0.1, 0.1), nil, antifoul.RuleWork, notGiven, "0.10 h/m²"},
		{"work", "none", hoursOf("wash", 0.099, 0.099, 0.099), nil, "", notGiven, "0.10 h/m²"},
		{"work", "copper-loaded-epoxy", "", swap("hands = 2", "hands = 2\ndone_by = \"owner\""), antifoul.RuleSkilled, "the owner", "trained hands"},
		{"work", "hard-cuprous", "", swap("hands = 2", "hands = 2\ndone_by = \"owner\""), antifoul.RuleWork, notGiven, "0.99 h/m²"},
	} {
		text := base
		for i := 0; i+1 < len(c.pairs); i += 2 {
			if !strings.Contains(text, c.pairs[i]) {
				t.Fatalf("%q is not in the boat file", c.pairs[i])
			}
			text = strings.Replace(text, c.pairs[i], c.pairs[i+1], 1)
		}
		k := criterionOf(t, rankedHull(t, c.own, text), c.coating, c.criterion)
		if boat, typ := fmt.Sprint(k.Boat), fmt.Sprint(k.Type); k.Finding.Rule != c.rule || boat != c.boat || typ != c.typ {
			t.Errorf("%s of %s with %q: %q, %s and %s; want %q, %s and %s", c.criterion, c.coating, c.pairs, k.Finding.Rule, boat, typ, c.rule, c.boat, c.typ)
		}
	}
}

// What nobody said is not judged: a criterion is where the boat file says one thing that it asks for.
func TestWhatIsJudged(t *testing.T) {
	judged := func(text, coating, criterion string) bool {
		p, _ := rankedHull(t, "", text).Of(coating)
		for _, k := range p.Criteria() {
			if k.Key == criterion {
				return k.Judged
			}
		}
		t.Fatalf("no criterion %s", criterion)
		return false
	}
	const ours, hard = "ablative-cuprous-multi", "hard-cuprous"
	for _, c := range []struct {
		add, coating, criterion string
		want                    bool
	}{
		{"", ours, "air", false},
		{"[use]\nashore_each_year = \"0 months\"\n", ours, "air", true},
		{"[work]\nlaunch_open = false\n", ours, "air", true},
		{"[work]\nlaunch = 2027-05-20\n", ours, "air", false},
		{"", ours, "speed", false},
		{"[use]\nspeed = \"5 kn\"\n", ours, "speed", true},
		{"", hard, "speed", false},
		{"", "hybrid-cuprous", "idle", false},
		{"[use]\nlongest_idle = \"5 d\"\n", "hybrid-cuprous", "idle", true},
		{"[use]\nlongest_idle = \"5 d\"\n", ours, "idle", true},
		{"", ours, "idle", false},
		{"", ours, "growth", false},
		{"[use]\ngrowth = \"light\"\n", ours, "growth", true},
		{"", ours, "restraint", false},
		{"", ours, "cleaning", false},
		{"[use]\ncleaning = \"none\"\n", ours, "cleaning", true},
		{"", ours, "abrasion", false},
		{"[use]\nice = false\n", ours, "abrasion", false},
		{"[use]\nice = true\n", ours, "abrasion", true},
		{"[use]\nkept = \"afloat\"\n", ours, "abrasion", true},
		{"", ours, "water", false},
		{"[use]\nwater = \"salt\"\n", ours, "water", true},
		{"", ours, "biocide", false},
		{"[wishes]\nbiocide = \"less\"\n", ours, "biocide", true},
		{"", ours, "colour", false},
		{"[wishes]\ntop_colour = \"black\"\n", ours, "colour", true},
		{"", ours, "racing", false},
		{"[wishes]\nracing_finish = false\n", ours, "racing", true},
		{"", ours, "same", false},
		{"[[part.found]]\ncoating = \"ablative-old\"\nstate = \"sound\"\n", ours, "same", true},
		{"", ours, "stays", true},
		{"", ours, "lasting", true},
	} {
		if got := judged(smallestPlan+c.add, c.coating, c.criterion); got != c.want {
			t.Errorf("%q: %s of %s judged %v", c.add, c.criterion, c.coating, got)
		}
	}
}
