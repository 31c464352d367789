package antifoul_test

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"boatyard.example/bottomwork/antifoul"
	"boatyard.example/bottomwork/antifoul/law"
	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/finding"
)

// Each criterion adds 100 × its weight × (value − 0.5) / the sum of all weights, and 50 with all of them is the score. Without a weight there is none.
func TestPointsMakeTheScore(t *testing.T) {
	for name, own := range map[string]string{"the tables' weights": "", "one weight": weighed("growth"), "two": weighed("growth", "work"), "no weight": weighed()} {
		p := rankedHull(t, own, base)
		weights := map[string]float64{}
		sum := 0.0
		for k := range tables.Default().Criteria() {
			w := k.Weight
			if own != "" {
				w = float64(strings.Count(own, fmt.Sprintf("key = %q\nweight = 1\n", k.Key)))
			}
			weights[k.Key] = w
			sum += w
		}
		for _, x := range p.Places {
			score := 50.0
			for _, k := range x.Criteria() {
				want := 0.0
				if sum > 0 {
					want = 100 * weights[k.Key] * (k.Value - 0.5) / sum
				}
				if !(math.Abs(k.Points-want) < 1e-9) { // also what is no number
					t.Errorf("%s: %s of %s: %v points, want %v", name, k.Key, x.Key, k.Points, want)
				}
				score += want
			}
			if sum == 0 {
				score = 0
			}
			if !(math.Abs(x.Score-score) < 0.0500001) {
				t.Errorf("%s: %s has %v, want %v", name, x.Key, x.Score, score)
			}
		}
	}
}

// The reasons for a type that may be used are the three that moved its score most, the strongest first; for one that the use rules out all that rule it out.
func TestReasonsAreTheStrongest(t *testing.T) {
	three := 0
	for _, p := range rankedHull(t, "", base).Places {
		var want finding.List
		said := p.Criteria()
		if p.Tier == antifoul.Barred {
			continue
		}
		if p.Tier == antifoul.Unsuited {
			said = slices.DeleteFunc(said, func(k antifoul.Criterion) bool { return !k.Bars })
		} else {
			said = slices.DeleteFunc(said, func(k antifoul.Criterion) bool { return k.Finding.Rule == "" })
			slices.SortStableFunc(said, func(a, b antifoul.Criterion) int { return cmp.Compare(math.Abs(b.Points), math.Abs(a.Points)) })
			if len(said) > 3 {
				said, three = said[:3], three+1
			}
		}
		for _, k := range said {
			want = append(want, k.Finding)
		}
		if got := p.Reasons(); rulesOf(got) != rulesOf(want) || len(got) == 0 {
			t.Errorf("%s, %v: %s, want %s", p.Key, p.Tier, rulesOf(got), rulesOf(want))
		}
	}
	if three < 3 {
		t.Error("no type has more than three reasons")
	}
}

// What is open about cleaning is told with the law where somebody cleans her afloat: questions and cautions. What is forbidden stands among the criteria, what is allowed nowhere.
func TestLawOfCleaningIsToldWhereSheIsCleaned(t *testing.T) {
	for name, c := range map[string]struct {
		place, kept, tool, coating string
		asks, cautions             int
	}{
		"a law that asks":              {"GB", "afloat", "sponge", "hard-cuprous", 1, 0},
		"a law that says nothing":      {"GB", "afloat", "sponge", "foul-release-silicone", 0, 1},
		"one that asks and cautions":   {"NZ", "afloat", "sponge", "hard-cuprous", 1, 1},
		"two that ask":                 {"US-WA", "afloat", "sponge", "self-polishing-cuprous", 2, 0},
		"one that asks and forbids":    {"US-WA", "afloat", "sponge", "ablative-cuprous-multi", 1, 0},
		"nobody cleans":                {"US-WA", "afloat", "none", "self-polishing-cuprous", 0, 0},
		"nobody says":                  {"US-WA", "afloat", "", "self-polishing-cuprous", 0, 0},
		"she lies out of the water":    {"US-WA", "trailer", "sponge", "self-polishing-cuprous", 0, 0},
		"a place that nobody has read": {"AU", "afloat", "sponge", "foul-release-silicone", 1, 0},
	} {
		said := "growth = \"medium\"\n"
		if c.tool != "" {
			said += "cleaning = \"" + c.tool + "\"\n"
		}
		if c.tool == "sponge" {
			said += "cleaned_every = \"30 d\"\n"
		}
		p := place(t, habit(t, "growth = \"medium\"\n", said, `place = "GB"`, `place = "`+c.place+`"`, `kept = "afloat"`, `kept = "`+c.kept+`"`), c.coating)
		plain := place(t, habit(t, `place = "GB"`, `place = "`+c.place+`"`, `kept = "afloat"`, `kept = "`+c.kept+`"`), c.coating)
		more := func(v finding.Verdict) int { return len(p.Law().At(v)) - len(plain.Law().At(v)) }
		if more(finding.Ask) != c.asks || more(finding.Caution) != c.cautions || len(p.Law())-len(plain.Law()) != c.asks+c.cautions {
			t.Errorf("%s: %d questions, %d cautions more of %d; want %d, %d", name, more(finding.Ask), more(finding.Caution), len(p.Law())-len(plain.Law()), c.asks, c.cautions)
		}
	}
}

// A last coat that may stand dry until the launch may go on now; one day less, and it must wait. Without a day, or a limit, nothing waits.
func TestLastCoatWaitsForTheLaunch(t *testing.T) {
	for name, c := range map[string]struct {
		limit, launch string
		want          bool
	}{
		"47 days of 47":        {"air_new = \"47 d\"\n", "launch = 2027-05-20", false},
		"47 days of 46":        {"air_new = \"46 d\"\n", "launch = 2027-05-20", true},
		"46 days of 46":        {"air_new = \"46 d\"\n", "launch = 2027-05-19", false},
		"no day":               {"air_new = \"1 d\"\n", "", false},
		"a day that may slip":  {"air_new = \"1 d\"\n", "launch = 2027-05-20\nlaunch_open = true", false},
		"today":                {"air_new = \"1 d\"\n", "launch = 2027-04-03", false},
		"no limit of the type": {"", "launch = 2027-05-20", false},
	} {
		own, key := "[[coating]]\nkey = \"hybrid-cuprous\"\nbasis = \"own table\"\nsource = \"the tin\"\n"+c.limit, "hybrid-cuprous"
		if c.limit == "" {
			own, key = "", "foul-release-film"
			if x, err := tables.Default().Coating(key); err != nil || x.AirNew.Given() {
				t.Fatal("the film has a limit: the test asks too little")
			}
		}
		p := place(t, rankedHull(t, own, strings.Replace(base, "launch = 2027-05-20", c.launch, 1)), key)
		if got := p.Findings().Has(antifoul.RuleFilmWait); got != c.want {
			t.Errorf("%s: waits %v", name, got)
		}
	}
}

// Parts are found by name, the first like the others.
func TestRankedPartByName(t *testing.T) {
	r, err := antifoul.Rank(tables.Default(), planned(t, base).Boat)
	if err != nil {
		t.Fatal(err)
	}
	for name, want := range map[string]bool{"hull": true, "rudder": true, "keel": false, "": false} {
		if p, ok := r.Part(name); ok != want || ok && p.Part != name {
			t.Errorf("%q: %v, %q", name, ok, p.Part)
		}
	}
}

// Types alike in all, their names too, stand in the order of the tables.
func TestTypesOfOneNameStandInOrder(t *testing.T) {
	same := func(key string) string {
		return strings.Replace(twin(key, "17 %", "18 %", "20 %"), "name = \""+key+"\"", "name = \"the twin\"", 1)
	}
	var got []string
	for _, p := range rankedHull(t, same("twin-c")+same("twin-a")+same("twin-b"), base).Places {
		if p.Name == "the twin" {
			got = append(got, p.Key)
		}
	}
	if strings.Join(got, " ") != "twin-c twin-a twin-b" {
		t.Errorf("%v", got)
	}
}

// What the law says of the films on her is told once for each film and law, however many parts it lies on: of a film that nobody knows the ban of organotin and that of cybutryne.
func TestLawOfOldFilmsIsToldOnce(t *testing.T) {
	text := strings.NewReplacer("coating = \"ablative-cuprous-multi\"\ncolour", "coating = \"organotin-old\"\ncolour", "coating = \"epoxy-barrier\"\nstate = \"sound\"", "coating = \"organotin-old\"\nstate = \"sound\"\n"+film("ablative-old", ""),
		"[[berth]]\nplace = \"GB\"", "[[berth]]\nplace = \"NZ\"\nrole = \"visited\"\n[[berth]]\nplace = \"GB\"").Replace(sheet)
	j := plannedJob(t, text)
	desk := law.At(j.Book, j.Boat.Craft(), j.Boat.Berths, j.Boat.On)
	key := func(f finding.Finding) string {
		return fmt.Sprint(f.Rule, "|", f.Verdict, "|", f.About, "|", f.Against, "|", factOf(f, "law"))
	}
	want := map[string]int{}
	note := func(fs finding.List) {
		for _, f := range fs {
			want[key(f)] = 1
		}
	}
	for _, p := range j.Boat.Parts {
		for _, l := range p.Found {
			note(desk.OldFilm(l.Coating))
		}
	}
	note(law.Papers(j.Book, j.Boat.Craft(), j.Boat.On))
	got := map[string]int{}
	about, against := map[string]bool{}, map[string]bool{}
	for _, f := range j.Legal {
		got[key(f)]++
		about[f.About], against[f.Against] = true, true
	}
	bans := 0
	for _, f := range j.Legal {
		if f.Rule == "law-may-apply" && strings.HasPrefix(f.About, "old ablative") {
			bans++
		}
	}
	if fmt.Sprint(got) != fmt.Sprint(want) || bans != 2 || len(about) < 3 || len(against) < 2 {
		t.Errorf("got  %v\nwant %v", got, want)
	}
}

// A tier that is none says so.
func TestTierThatIsNone(t *testing.T) {
	for tier, want := range map[antifoul.Tier]string{0: "invalid tier 0", antifoul.Suits: "fine", antifoul.Barred: "forbidden", antifoul.Barred + 1: "invalid tier 6"} {
		if tier.String() != want {
			t.Errorf("%d: %s, want %s", tier, tier, want)
		}
	}
}

// A hull beside a leg is told once, whatever lies on her other parts; metals are named one after the other; a metal that keeps itself clean is
// named beside an anode, and no other is.
func TestWhatPartsDoToEachOther(t *testing.T) {
	count := func(fs finding.List, rule finding.ID) (n int, f finding.Finding) {
		for _, x := range fs {
			if x.Rule == rule {
				n, f = n+1, x
			}
		}
		return n, f
	}
	name := func(key string) string {
		m, err := tables.Default().Material(key)
		if err != nil {
			t.Fatal(err)
		}
		return m.Name
	}
	j := planned(t, base+gear("leg", "leg", "aluminium"))
	for _, part := range []string{"hull", "rudder"} {
		if s, _ := j.Scheme(part); s.Coating.Biocide != tables.CuprousOxide {
			t.Fatalf("the %s gets %s: the test asks too little", part, s.Coating.Key)
		}
	}
	if n, _ := count(j.Findings, "beside-strip"); n != 1 {
		t.Errorf("told %d times of the leg", n)
	}
	for want, parts := range map[string]string{
		"": gear("leg", "leg", "aluminium"),
		name("aluminium") + " and " + name("bronze"):                                  gear("leg", "leg", "aluminium") + gear("propeller", "propeller", "bronze"),
		name("aluminium") + ", " + name("bronze") + " and " + name("stainless-steel"): gear("leg", "leg", "aluminium") + gear("propeller", "propeller", "bronze") + gear("shaft", "fitting", "stainless-steel"),
	} {
		n, f := count(planned(t, base+parts).Findings, antifoul.RuleMetalsTogether)
		if n != min(1, len(want)) || n > 0 && factOf(f, "metals") != want {
			t.Errorf("%d times %v, want %s", n, factOf(f, "metals"), want)
		}
	}
	for material, want := range map[string]int{"copper-nickel": 1, "steel": 0} {
		j := planned(t, boatText(workingHull, material, film("bare", ""), gear("anode", "fitting", "zinc-anode")))
		n, f := count(j.Findings, antifoul.RuleMetalsKeepClean)
		if n != want || n > 0 && factOf(f, "material") != name(material) {
			t.Errorf("an anode on %s: %d times, %v", material, n, factOf(f, "material"))
		}
	}
}

// The fewest days by hand: a hard film that is coated over after five days and dries for half a day before the launch goes on as signal, extra and two working coats, which is 15.5 days, and as
// signal and three coats on the rudder, which is as long. The longer of the two counts, in days begun. A launch on the last of them is not too soon.
func TestFewestDaysByHand(t *testing.T) {
	own := "[[coating]]\nkey = \"hard-cuprous\"\nbasis = \"own table\"\nsource = \"the tin\"\novercoat_min = \"120 h\"\nlaunch_min = \"12 h\"\n"
	boat := strings.NewReplacer("[wishes]\ncoating = \"ablative-cuprous-multi\"", "[work]\nhands = 20\nlaunch = 2027-04-10\n[wishes]\ncoating = \"hard-cuprous\"",
		"coating = \"ablative-cuprous-multi\"\ncolour = \"red-oxide\"\nfilm = \"100 um\"", "coating = \"epoxy-barrier\"").Replace(sheet)
	rudder := boat[strings.Index(boat, "[[part]]\nname = \"rudder\""):strings.Index(boat, "[[part]]\nname = \"anode\"")]
	for name, text := range map[string]string{"hull and rudder": boat, "hull": strings.Replace(boat, rudder, "", 1)} {
		for launch, want := range map[string]any{"2027-04-10": 16, "2027-04-18": 16, "2027-04-19": nil} {
			var least any
			for _, f := range billed(t, own, strings.Replace(text, "launch = 2027-04-10", "launch = "+launch, 1)).Findings {
				if f.Rule == antifoul.RuleLaunchTooSoon {
					least = factOf(f, "least")
				}
			}
			if least != want {
				t.Errorf("%s, launched on %s: %v days, want %v", name, launch, least, want)
			}
		}
	}
}

// A launch that nobody knows is not too soon.
func TestNoLaunchIsNotTooSoon(t *testing.T) {
	for launch, want := range map[string]bool{"launch = 2027-04-03\n": true, "": false, "launch = 2027-04-03\nlaunch_open = true\n": false} {
		if got := planned(t, strings.Replace(base, "launch = 2027-05-20\n", launch, 1)).Findings.Has(antifoul.RuleLaunchTooSoon); got != want {
			t.Errorf("%q: too soon %v", launch, got)
		}
	}
}

// What growth would cost is reckoned of a boat of known length that moves; where no line holds for her it is said why.
func TestGrowthThatCanBeReckoned(t *testing.T) {
	length := "length = \"9 m\"\n"
	for name, c := range map[string]struct {
		text       string
		costs, not bool
	}{
		"known":            {sheet, true, false},
		"at rest":          {strings.Replace(sheet, `speed = "5 kn"`, `speed = "0 kn"`, 1), false, false},
		"a knot":           {strings.Replace(sheet, `speed = "5 kn"`, `speed = "1 kn"`, 1), true, false},
		"no speed":         {strings.Replace(sheet, "speed = \"5 kn\"\n", "", 1), false, false},
		"no length":        {strings.NewReplacer(length, "", "beam = \"3 m\"\n", "", "draft = \"1.6 m\"\n", "").Replace(sheet), false, false},
		"slower than slow": {strings.Replace(sheet, `speed = "5 kn"`, `speed = "0.01 kn"`, 1), false, true},
	} {
		g := plannedJob(t, c.text).Growth
		if len(g.Costs) > 0 != c.costs || len(g.Not) > 0 != c.not {
			t.Errorf("%s: %d costs, not: %v", name, len(g.Costs), g.Not)
		}
	}
}
