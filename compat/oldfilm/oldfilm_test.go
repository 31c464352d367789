package oldfilm_test

import (
	"errors"
	"fmt"
	"slices"
	"strconv"
	"strings"
	"testing"

	"boatyard.example/bottomwork/compat/oldfilm"
	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

// said fails unless each finding's sentence finds all of its values.
func said(t *testing.T, fs finding.List) {
	t.Helper()
	for _, f := range fs {
		s := tables.Default().Say(f, quantity.Metric)
		if strings.Contains(s, "(not stated)") || strings.Contains(s, "{") {
			t.Errorf("%s: %s", f.Rule, s)
		}
	}
}

func identify(t *testing.T, material string, seen ...string) oldfilm.Answer {
	t.Helper()
	a, err := oldfilm.Identify(tables.Default(), material, seen)
	if err != nil {
		t.Fatal(err)
	}
	return a
}

func of(a oldfilm.Answer, film string) oldfilm.Candidate {
	for _, c := range a.Films {
		if c.Film.Key == film {
			return c
		}
	}
	return oldfilm.Candidate{}
}

// What the trade tells apart by hand: common practice, no source.
func TestWhatTheTradeTellsApart(t *testing.T) {
	for _, c := range []struct {
		material string
		seen     []string
		first    string
		stands   map[string]oldfilm.Standing
	}{
		{"grp", []string{"thumb-colours"}, "ablative-old", map[string]oldfilm.Standing{"hard-old": oldfilm.Unlikely, "organotin-old": oldfilm.Possible}},
		{"grp", []string{"thumb-clean", "thinner-softens"}, "", map[string]oldfilm.Standing{"hard-old": oldfilm.Likely, "vinyl-old": oldfilm.Likely, "ablative-old": oldfilm.Unlikely, "epoxy-old": oldfilm.Unlikely}},
		{"grp", []string{"thumb-clean", "thinner-no-effect"}, "", map[string]oldfilm.Standing{"epoxy-old": oldfilm.Likely, "bare": oldfilm.Likely, "hard-old": oldfilm.Unlikely}},
		{"grp", []string{"thumb-clean", "rubbery"}, "silicone-old", nil},
		{"steel", []string{"white-spirit-dissolves"}, "bitumen-old", nil},
		{"grp", []string{"nothing-there"}, "bare", map[string]oldfilm.Standing{"ablative-old": oldfilm.RuledOut, "organotin-old": oldfilm.RuledOut}},
		{"grp", []string{"thumb-colours", "tin-found"}, "", map[string]oldfilm.Standing{"ablative-old": oldfilm.Likely, "organotin-old": oldfilm.Likely}},
		{"grp", []string{"thumb-colours", "tin-not-found"}, "", map[string]oldfilm.Standing{"ablative-old": oldfilm.Likely, "organotin-old": oldfilm.RuledOut}},
		{"grp", []string{"built-since-2008"}, "", map[string]oldfilm.Standing{"organotin-old": oldfilm.Unlikely}},
	} {
		a := identify(t, c.material, c.seen...)
		if c.first != "" && a.Films[0].Film.Key != c.first {
			t.Errorf("%v on %s: first %s, want %s", c.seen, c.material, a.Films[0].Film.Key, c.first)
		}
		for film, want := range c.stands {
			if got := of(a, film).Standing; got != want {
				t.Errorf("%v on %s: %s is %s, want %s", c.seen, c.material, film, got, want)
			}
		}
	}
}

// Whatever does not settle leaves every hazard standing: with no sign at all organotin, lead and chromate are bewared of where the material
// can carry them.
func TestHazardsStandUntilSettled(t *testing.T) {
	b := tables.Default()
	organotin, err := b.Coating("organotin-old")
	if err != nil {
		t.Fatal(err)
	}
	hazard := slices.Collect(organotin.Hazards())[0]
	for s := range b.Signs() {
		a := identify(t, "grp", s.Key)
		ruled := of(a, "organotin-old").Standing == oldfilm.RuledOut
		if got := slices.Contains(a.Hazards, hazard); got == ruled {
			t.Errorf("after %q organotin is ruled out: %t, and bewared of: %t", s.Says, ruled, got)
		}
		if ruled && !s.Settles {
			t.Errorf("%q rules organotin out and does not settle", s.Says)
		}
	}
	if a := identify(t, "aluminium"); !slices.Contains(a.Hazards, "chromate") && len(a.Hazards) < 3 {
		t.Errorf("on aluminium with nothing seen the hazards are %v", a.Hazards)
	}
}

// Over all pairs of signs: every film once, its standing follows from the signs, the order too, sentences find their values, and a test that
// was made is not asked for again.
func TestEveryTwoSigns(t *testing.T) {
	b := tables.Default()
	signs := slices.Collect(b.Signs())
	for i, x := range signs {
		for _, y := range signs[i:] {
			a := identify(t, "steel", x.Key, y.Key)
			for k, c := range a.Films {
				said(t, finding.List{c.Finding})
				if k > 0 && c.Standing < a.Films[k-1].Standing {
					t.Errorf("%s, %s: %s stands %s after %s", x.Key, y.Key, c.Film.Key, c.Standing, a.Films[k-1].Standing)
				}
				if (c.Standing == oldfilm.Likely) != (len(c.For) > 0 && len(c.Against) == 0) {
					t.Errorf("%s, %s: %s is %s with %d for and %d against", x.Key, y.Key, c.Film.Key, c.Standing, len(c.For), len(c.Against))
				}
			}
			if slices.Contains(a.Settle, x.Test) || slices.Contains(a.Settle, y.Test) {
				t.Errorf("%s, %s: asks again for %v", x.Key, y.Key, a.Settle)
			}
			said(t, a.Findings)
		}
	}
	// Every old film but the unidentified one has a sign that speaks for it.
	for c := range b.Coatings() {
		if c.Role != tables.OldFilm || c.Key == tables.UnknownOld {
			continue
		}
		if !slices.ContainsFunc(signs, func(s tables.Sign) bool { return slices.Contains(slices.Collect(s.For()), c.Key) }) {
			t.Errorf("no sign speaks for %s", c.Key)
		}
	}
}

func TestWhatWouldSettle(t *testing.T) {
	a := identify(t, "grp")
	if len(a.Settle) < 3 || !strings.Contains(a.Settle[0], "scrape") && !strings.Contains(a.Settle[0], "laboratory") {
		t.Errorf("with nothing seen the tests are %q", a.Settle)
	}
	if len(a.Findings) != 0 {
		t.Errorf("with nothing seen: %v", a.Findings)
	}
	torn := identify(t, "grp", "thumb-clean", "thumb-colours")
	if !torn.Findings.Has(oldfilm.RuleConflict) {
		t.Errorf("signs that contradict each other: %v", torn.Findings)
	}
}

func TestUnknownSignsAreNamed(t *testing.T) {
	_, err := oldfilm.Identify(tables.Default(), "gpr", []string{"thumb-colour", "tin-found"})
	if !errors.Is(err, finding.ErrUnknown) || !strings.Contains(err.Error(), "thumb-colours") || !strings.Contains(err.Error(), "grp") {
		t.Errorf("%v", err)
	}
}

func um(n int64) quantity.Film { return quantity.Micrometre.N(n) }

func film(low, typical, high int64) quantity.Range[quantity.Film] {
	return quantity.Range[quantity.Film]{Low: um(low), Typical: um(typical), High: um(high)}
}

var area = quantity.Range[quantity.Area]{Low: quantity.SquareMetre.N(10), Typical: quantity.SquareMetre.N(11), High: quantity.SquareMetre.N(12)}

// On, just under and just over each threshold: common practice of the trade, X-cut classes from memory of ASTM D3359.
func TestReadingsAtTheirThresholds(t *testing.T) {
	percent := func(s string) quantity.Share {
		v, err := quantity.Parse[quantity.Share](s)
		if err != nil {
			t.Fatal(err)
		}
		return v
	}
	for _, c := range []struct {
		r     oldfilm.Readings
		want  oldfilm.Do
		state tables.Condition
	}{
		{oldfilm.Readings{Flaking: percent("0 %")}, oldfilm.Keep, ""},
		{oldfilm.Readings{Flaking: percent("0.1 %")}, oldfilm.Repair, "flaking in places"},
		{oldfilm.Readings{Flaking: percent("10 %")}, oldfilm.Repair, "flaking in places"},
		{oldfilm.Readings{Flaking: percent("10.1 %")}, oldfilm.Either, "flaking in places"},
		{oldfilm.Readings{Flaking: percent("20 %")}, oldfilm.Either, "flaking in places"},
		{oldfilm.Readings{Flaking: percent("20.1 %")}, oldfilm.Strip, "flaking"},
		{oldfilm.Readings{Adhesion: "5A"}, oldfilm.Keep, ""},
		{oldfilm.Readings{Adhesion: "4A"}, oldfilm.Keep, ""},
		{oldfilm.Readings{Adhesion: "3A"}, oldfilm.Repair, "flaking in places"},
		{oldfilm.Readings{Adhesion: "2A"}, oldfilm.Strip, "poor adhesion"},
		{oldfilm.Readings{Adhesion: "0A"}, oldfilm.Strip, "poor adhesion"},
		{oldfilm.Readings{Film: film(400, 450, 500)}, oldfilm.Keep, ""},
		{oldfilm.Readings{Film: film(400, 450, 501)}, oldfilm.Either, "flaking in places"},
		{oldfilm.Readings{Film: film(750, 800, 900)}, oldfilm.Either, "flaking in places"},
		{oldfilm.Readings{Film: film(751, 800, 900)}, oldfilm.Strip, "too thick"},
		{oldfilm.Readings{Blisters: "0"}, oldfilm.Keep, ""},
		{oldfilm.Readings{Blisters: "2"}, oldfilm.Repair, "flaking in places"},
		{oldfilm.Readings{Blisters: "4"}, oldfilm.Strip, "blistered"},
		{oldfilm.Readings{Rust: "Ri 1"}, oldfilm.Repair, "flaking in places"},
		{oldfilm.Readings{Rust: "Ri 5"}, oldfilm.Strip, "rusted through"},
		{oldfilm.Readings{Alligatored: percent("30 %")}, oldfilm.Strip, "alligatored"},
		{oldfilm.Readings{Moisture: "rising"}, oldfilm.NotRead, ""},
		{oldfilm.Readings{}, oldfilm.NotRead, ""},
		{oldfilm.Readings{Flaking: percent("5 %"), Adhesion: "1A", Rust: "Ri 0"}, oldfilm.Strip, "poor adhesion"},
	} {
		d, err := oldfilm.Judge(tables.Default(), c.r, area)
		if err != nil {
			t.Errorf("%+v: %v", c.r, err)
			continue
		}
		want := c.state
		if want == "" && c.want == oldfilm.Keep {
			want = tables.Sound
		}
		if d.Do != c.want || d.State != want {
			t.Errorf("%+v: %s, state %q, want %s, %q", c.r, d.Do, d.State, c.want, want)
		}
		said(t, d.Findings)
		rule := map[oldfilm.Do]finding.ID{
			oldfilm.Keep: oldfilm.RuleReadingKeep, oldfilm.Repair: oldfilm.RuleReadingRepair, oldfilm.Either: oldfilm.RuleReadingEither, oldfilm.Strip: oldfilm.RuleReadingStrip,
		}[d.Do]
		if rule != "" && !d.Findings.Has(rule) {
			t.Errorf("%+v: no %s in %v", c.r, rule, d.Findings)
		}
		if len(d.Findings) == 0 || (d.Do > oldfilm.Keep) != (len(d.Decided) > 0) {
			t.Errorf("%+v: %d findings, decided by %v", c.r, len(d.Findings), d.Decided)
		}
	}
}

// Worse readings never ask for less.
func TestWorseReadingsAskForNoLess(t *testing.T) {
	last := oldfilm.NotRead
	for n := range int64(101) {
		d, err := oldfilm.Judge(tables.Default(), oldfilm.Readings{Flaking: quantity.Percent.N(n)}, area)
		if err != nil || d.Do < last {
			t.Errorf("%d %% asks for %s after %s, %v", n, d.Do, last, err)
		}
		last = d.Do
	}
	last = oldfilm.NotRead
	for n := int64(0); n < 1200; n += 10 {
		d, err := oldfilm.Judge(tables.Default(), oldfilm.Readings{Film: film(n, n, n+50)}, area)
		if err != nil || d.Do < last {
			t.Errorf("%d um asks for %s after %s, %v", n, d.Do, last, err)
		}
		last = d.Do
	}
}

// Ten to twelve square metres of 800 to 1000 um at 1.8 to 2.0 t/m3: 14.4 to 24 kg, worked by hand; the hours are those of the strip row.
func TestHoursAndWasteOfAStrip(t *testing.T) {
	b := tables.Default()
	d, err := oldfilm.Judge(b, oldfilm.Readings{Film: film(800, 900, 1000)}, area)
	if err != nil {
		t.Fatal(err)
	}
	if d.Waste.Low.String() != "14.4 kg" || d.Waste.High.String() != "24.0 kg" || d.Waste.Typical.Given() {
		t.Errorf("waste %s to %s, typical %s", d.Waste.Low, d.Waste.High, d.Waste.Typical)
	}
	row, _ := b.Hours(finding.Strip)
	if d.Hours.Low != row.Low*10 || d.Hours.Typical != row.Typical*11 || d.Hours.High != row.High*12 {
		t.Errorf("hours %v, a square metre %v", d.Hours, row)
	}
	spots, err := oldfilm.Judge(b, oldfilm.Readings{Flaking: quantity.Percent.N(10), Film: film(100, 100, 100)}, area)
	if err != nil || spots.Waste.Low.String() != "0.2 kg" || spots.Waste.High.String() != "0.3 kg" {
		t.Errorf("a tenth of 100 um: %s to %s, want 0.18 and 0.24 kg rounded up; %v", spots.Waste.Low, spots.Waste.High, err)
	}
}

func TestReadingsThatCannotBe(t *testing.T) {
	_, err := oldfilm.Judge(tables.Default(), oldfilm.Readings{
		Flaking: quantity.Percent.N(101), Adhesion: "6A", Film: film(300, 200, 100), Blisters: "many", Rust: "3", Moisture: "wet", Alligatored: quantity.Percent.N(-1),
	}, area)
	for _, word := range []string{"flaking", "adhesion", "film", "blisters", "rust", "moisture", "alligatored"} {
		if err == nil || !strings.Contains(err.Error(), word) {
			t.Errorf("%s is not named in %v", word, err)
		}
	}
	for _, f := range []quantity.Range[quantity.Film]{film(300, 200, 400), film(200, 300, 250)} {
		if _, err := oldfilm.Judge(tables.Default(), oldfilm.Readings{Film: f}, area); !errors.Is(err, finding.ErrImpossible) {
			t.Errorf("%s, %s, %s: %v", f.Low, f.Typical, f.High, err)
		}
	}
	_, err = oldfilm.Judge(&tables.Book{}, oldfilm.Readings{Adhesion: "3A"}, area)
	if fs, ok := errors.AsType[finding.Faults](err); !ok || len(fs) != 1 || !errors.Is(fs[0], finding.ErrMissing) || fs[0].Key != "adhesion" {
		t.Errorf("a book without thresholds: %v", err)
	}
}

// 300 um there, 50 to 100 um more from each job, stripped above 500 to 750 um. Worked by hand: recoating, soonest floor((500-320)/100) = 1 job,
// latest floor((750-280)/50) = 9; from bare, floor(500/100) = 5 and floor(750/50) = 15.
func TestRecoatOrStripWorkedByHand(t *testing.T) {
	now, bare, err := oldfilm.Weigh(tables.Default(), area, film(280, 300, 320), film(50, 75, 100), quantity.Range[float64]{Low: 1, Typical: 2, High: 3}, quantity.Month.N(24))
	if err != nil {
		t.Fatal(err)
	}
	if now.Jobs.Low != 1 || now.Jobs.High != 9 || bare.Jobs.Low != 5 || bare.Jobs.High != 15 {
		t.Errorf("jobs %v and %v", now.Jobs, bare.Jobs)
	}
	if now.Jobs.Typical != 4 || bare.Jobs.Typical != 8 || now.Months.Typical != 96 { // floor((600-300)/75), floor(600/75)
		t.Errorf("typical jobs %v and %v, months %v", now.Jobs, bare.Jobs, now.Months)
	}
	if row, _ := tables.Default().Hours(finding.Strip); bare.Hours.Low != row.Low*10 || bare.Hours.Typical != row.Typical*11 || bare.Hours.High != row.High*12 {
		t.Errorf("hours %v, a square metre %v", bare.Hours, row)
	}
	if now.Finding.Rule != oldfilm.RuleRecoatNow || bare.Finding.Rule != oldfilm.RuleStripNow {
		t.Errorf("told as %s and %s", now.Finding.Rule, bare.Finding.Rule)
	}
	if now.Months.Low != 24 || bare.Months.High != 360 || now.Hours.Typical != 2 {
		t.Errorf("months %v and %v, hours %v", now.Months, bare.Months, now.Hours)
	}
	said(t, finding.List{now.Finding, bare.Finding})
	full, _, err := oldfilm.Weigh(tables.Default(), area, film(800, 900, 1000), film(50, 75, 100), quantity.Range[float64]{}, quantity.Month.N(24))
	if err != nil || full.Jobs.High != 0 || full.Finding.Rule != oldfilm.RuleNoRoom {
		t.Errorf("a film that is built up already: %v, %v", full, err)
	}
	said(t, finding.List{full.Finding})
	if _, _, err := oldfilm.Weigh(tables.Default(), quantity.Range[quantity.Area]{}, film(1, 1, 1), film(1, 1, 1), quantity.Range[float64]{}, quantity.Months{}); !errors.Is(err, finding.ErrMissing) {
		t.Errorf("without area and interval: %v", err)
	}
}

// No more than twenty jobs are counted, and the sentence says so; a film that leaves nothing has room for ever, unless there is none now.
func TestJobsAheadAreBounded(t *testing.T) {
	one := quantity.Range[float64]{Low: 1, Typical: 1, High: 1}
	for _, c := range []struct {
		there, perJob int64
		recoat        quantity.Range[float64]
		jobs          int
		says          string
		rule          finding.ID
	}{
		{750 - 20*30, 30, one, 20, "20 or more", oldfilm.RuleRecoatNow},
		{750 - 20*30 + 1, 30, one, 19, "19", oldfilm.RuleRecoatNow},
		{0, 1, one, 20, "20 or more", oldfilm.RuleRecoatNow},
		{740, 1, one, 10, "10", oldfilm.RuleRecoatNow},
		{750, 0, one, 20, "20 or more", oldfilm.RuleRecoatNow},
		{751, 0, one, 0, "0", oldfilm.RuleNoRoom},
		{750 - 30, 30, one, 1, "1", oldfilm.RuleRecoatNow},
		{750 - 29, 30, one, 0, "0", oldfilm.RuleNoRoom},
		{300, 30, quantity.Range[float64]{}, 15, "15", oldfilm.RuleRecoatWash},
	} {
		there, per := film(c.there, c.there, c.there), film(c.perJob, c.perJob, c.perJob)
		now, bare, err := oldfilm.Weigh(tables.Default(), area, there, per, c.recoat, quantity.Month.N(12))
		if err != nil {
			t.Fatal(err)
		}
		if now.Jobs.High != c.jobs || now.Finding.Rule != c.rule {
			t.Errorf("%d um and %d a job: %d jobs, %s, want %d, %s", c.there, c.perJob, now.Jobs.High, now.Finding.Rule, c.jobs, c.rule)
		}
		if bare.Finding.Rule != oldfilm.RuleStripNow {
			t.Errorf("stripping is told as %s", bare.Finding.Rule)
		}
		facts := map[string]string{}
		for _, f := range now.Finding.Facts {
			facts[f.Name] = fmt.Sprint(f.Value)
		}
		months := strings.Replace(c.says, strconv.Itoa(c.jobs), strconv.Itoa(12*c.jobs), 1)
		if facts["jobs_high"] != c.says || facts["months_high"] != months {
			t.Errorf("%d um and %d a job: said as %q jobs, %q months", c.there, c.perJob, facts["jobs_high"], facts["months_high"])
		}
	}
}

// A job every so many months, so many must be more than none.
func TestWeighingNeedsAnInterval(t *testing.T) {
	for _, m := range []quantity.Months{{}, quantity.Month.N(0)} {
		if _, _, err := oldfilm.Weigh(tables.Default(), area, film(1, 1, 1), film(1, 1, 1), quantity.Range[float64]{}, m); !errors.Is(err, finding.ErrMissing) {
			t.Errorf("every %s: %v", m, err)
		}
	}
}

// What the moisture readings do is said beside the film, and decides nothing of it.
func TestMoistureIsSaidBeside(t *testing.T) {
	for trend, rule := range map[string]finding.ID{"falling": oldfilm.RuleFalling, "steady": oldfilm.RuleSteady, "rising": oldfilm.RuleRising} {
		d, err := oldfilm.Judge(tables.Default(), oldfilm.Readings{Moisture: trend, Adhesion: "5A"}, area)
		if err != nil || len(d.Findings) != 2 || !d.Findings.Has(rule) || d.Do != oldfilm.Keep {
			t.Errorf("%s: %s, %v, %v", trend, d.Do, d.Findings, err)
		}
		said(t, d.Findings)
		if !(oldfilm.Readings{Moisture: trend}).Given() {
			t.Errorf("%s alone counts as nothing read", trend)
		}
	}
	if (oldfilm.Readings{}).Given() {
		t.Error("nothing counts as read")
	}
}

func TestWhatAJobLeaves(t *testing.T) {
	b := tables.Default()
	hard, err := b.Coating("hard-cuprous")
	if err != nil {
		t.Fatal(err)
	}
	soft, err := b.Coating("ablative-cuprous-multi")
	if err != nil {
		t.Fatal(err)
	}
	if got := oldfilm.Stays(hard, 3); got.Typical.Cmp(hard.Film.Typical.Add(hard.Film.Typical).Add(hard.Film.Typical)) != 0 {
		t.Errorf("three coats of a hard film leave %s", got.Typical)
	}
	for _, coats := range []int{0, 1} { // a job is a coat at least
		if got := oldfilm.Stays(hard, coats); !got.Low.Equal(hard.Film.Low) || !got.High.Equal(hard.Film.High) {
			t.Errorf("%d coats of a hard film leave %s to %s", coats, got.Low, got.High)
		}
	}
	if got := oldfilm.Stays(soft, 3); !got.Low.Given() || got.Low.Sign() != 0 || !got.High.Equal(soft.Film.High) {
		t.Errorf("three coats of an ablative leave %s to %s", got.Low, got.High)
	}
}

func ExampleJudge() {
	book := tables.Default()
	area := quantity.Range[quantity.Area]{Low: quantity.SquareMetre.N(20), Typical: quantity.SquareMetre.N(20), High: quantity.SquareMetre.N(20)}
	d, err := oldfilm.Judge(book, oldfilm.Readings{Flaking: quantity.Percent.N(25), Adhesion: "4A"}, area)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(d.Do, "because of", d.Decided)
	// Output:
	// strip because of [flaking]
}

// Readings that ask for the same are named together, in their order, with the state that the first tells.
func TestReadingsThatAskForTheSame(t *testing.T) {
	d, err := oldfilm.Judge(tables.Default(), oldfilm.Readings{Flaking: quantity.Percent.N(25), Adhesion: "1A", Blisters: "2"}, area)
	if err != nil || d.Do != oldfilm.Strip || !slices.Equal(d.Decided, []string{"flaking", "adhesion"}) || d.State != "flaking" {
		t.Errorf("%s by %q, %q, %v", d.Do, d.Decided, d.State, err)
	}
}

// Ten thousand square metres of 400 um that flake on a tenth, at 1.8 to 2.0 t/m3: 720 to 800 kg by hand.
func TestWasteOfALargeArea(t *testing.T) {
	hectare := quantity.SquareMetre.N(10_000)
	d, err := oldfilm.Judge(tables.Default(), oldfilm.Readings{Flaking: quantity.Percent.N(10), Film: film(400, 400, 400)}, quantity.Exactly(hectare))
	if err != nil || d.Do != oldfilm.Repair || d.Waste.Low.String() != "720.0 kg" || d.Waste.High.String() != "800.0 kg" {
		t.Errorf("%s, %s to %s, %v", d.Do, d.Waste.Low, d.Waste.High, err)
	}
}

// Without an area nothing is said of hours and waste.
func TestNoAreaNoHours(t *testing.T) {
	d, err := oldfilm.Judge(tables.Default(), oldfilm.Readings{Film: film(800, 900, 1000)}, quantity.Range[quantity.Area]{})
	if err != nil || d.Do != oldfilm.Strip || d.Hours != (quantity.Range[float64]{}) || d.Waste.Low.Given() || d.Waste.High.Given() {
		t.Errorf("%s, %v hours, %s to %s, %v", d.Do, d.Hours, d.Waste.Low, d.Waste.High, err)
	}
}

// One reading of any kind is something read.
func TestAnyReadingIsGiven(t *testing.T) {
	for _, r := range []oldfilm.Readings{
		{Flaking: quantity.Percent.N(0)}, {Adhesion: "5A"}, {Alligatored: quantity.Percent.N(0)}, {Film: film(0, 0, 0)}, {Blisters: "0"}, {Rust: "Ri 0"}, {Moisture: "steady"},
	} {
		if !r.Given() {
			t.Errorf("%+v counts as nothing read", r)
		}
	}
}

func TestStandingInAWord(t *testing.T) {
	for s, want := range map[oldfilm.Standing]string{
		0: "not judged", oldfilm.Likely: "likely", oldfilm.Possible: "possible", oldfilm.Unlikely: "unlikely", oldfilm.RuledOut: "ruled out", oldfilm.RuledOut + 1: "not judged",
	} {
		if got := s.String(); got != want {
			t.Errorf("standing %d is %q, want %q", s, got, want)
		}
	}
}

// Each thing that weighing needs is named when it alone is missing.
func TestWeighingNamesWhatIsMissing(t *testing.T) {
	var none quantity.Range[quantity.Film]
	for key, c := range map[string]struct {
		area          quantity.Range[quantity.Area]
		there, perJob quantity.Range[quantity.Film]
		interval      quantity.Months
	}{
		"area":     {quantity.Range[quantity.Area]{}, film(1, 1, 1), film(1, 1, 1), quantity.Month.N(12)},
		"film":     {area, none, film(1, 1, 1), quantity.Month.N(12)},
		"per job":  {area, film(1, 1, 1), none, quantity.Month.N(12)},
		"interval": {area, film(1, 1, 1), film(1, 1, 1), quantity.Months{}},
	} {
		_, _, err := oldfilm.Weigh(tables.Default(), c.area, c.there, c.perJob, quantity.Range[float64]{}, c.interval)
		if fs, ok := errors.AsType[finding.Faults](err); !ok || len(fs) != 1 || fs[0].Key != key || !errors.Is(fs[0], finding.ErrMissing) {
			t.Errorf("without %s: %v", key, err)
		}
	}
	_, _, err := oldfilm.Weigh(&tables.Book{}, area, film(1, 1, 1), film(1, 1, 1), quantity.Range[float64]{}, quantity.Month.N(12))
	if fs, ok := errors.AsType[finding.Faults](err); !ok || len(fs) != 2 || fs[0].Key != "step[strip]" || fs[1].Key != "threshold[film]" {
		t.Errorf("without rows: %v", err)
	}
}
