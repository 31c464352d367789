package antifoul_test

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"slices"
	"strings"
	"testing"
	"testing/fstest"
	"time"

	"github.com/shopspring/decimal"

	"boatyard.example/bottomwork/antifoul"
	"boatyard.example/bottomwork/antifoul/calendar"
	"boatyard.example/bottomwork/antifoul/wear"
	"boatyard.example/bottomwork/compat"
	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

// seasonal is a boat file of two parts; %s stand for the hull's material and what is said of it, for the keel's material, and for the work.
const seasonal = `
[boat]
name = "Test boat"
date = 2027-05-01
[hull]
kind = "fin-keel-yacht"
length = "9 m"
beam = "3 m"
draft = "1.6 m"
stand_pairs = 3
[[part]]
name = "hull"
zone = "hull"
%s
[[part.found]]
coating = "bare"
state = "sound"
[[part]]
name = "keel"
zone = "keel"
material = "%s"
area = "3 m2"
[[part.found]]
coating = "bare"
state = "sound"
[use]
haul_out_every = "24 months"
growth = "medium"
water = "salt"
under_way = "200 h"
[work]
hands = 2
days = ["Sat", "Sun"]
from = "08:00"
until = "18:00"
%s
[paint]
temperature = "20 degC"
[wishes]
coating = "ablative-cuprous-multi"
`

func inSeason(t *testing.T, hull, keel, work string) *antifoul.Job {
	t.Helper()
	j, err := plan(t, fmt.Sprintf(seasonal, hull, keel, work))
	if err != nil {
		t.Fatal(err)
	}
	return j
}

const barrierOnGRP = "material = \"grp\"\nlaminate = \"dry\"\nbarrier = true"

// Undercoats of all parts end together and coats above them begin together, so that the coat over each one is in the very next turn: that is what
// its window is held against.
func TestCoatsStandDirectlyOverEachOther(t *testing.T) {
	for _, hull := range []string{barrierOnGRP, "material = \"grp\"", "material = \"steel\"", "material = \"aluminium\"", "material = \"wood-carvel\""} {
		for _, keel := range []string{"cast-iron", "lead", "steel", "grp"} {
			j := inSeason(t, hull, keel, "launch_open = true")
			on := map[string][]int{} // part: the turns of its coats
			for i, turn := range j.Season.Turns {
				for _, k := range turn.Coats {
					if !turn.Patch {
						switch n := len(on[k.Part]); {
						case turn.Section > 1: // the same coat on another section
							on[k.Part][n-1] = i
						case k.Again && n > 0 && on[k.Part][n-1] < i-1: // it is abraded first, whatever its window
							on[k.Part] = append(on[k.Part], on[k.Part][n-1]+1)
							for m := range on[k.Part] {
								on[k.Part][m] += i - on[k.Part][n]
							}
						default:
							on[k.Part] = append(on[k.Part], i)
						}
					}
				}
			}
			for _, s := range j.Schemes {
				want := 0
				for _, k := range s.Coats {
					want += k.Layer.Coats
				}
				turns := on[s.Part]
				if len(turns) != want {
					t.Errorf("%s, %s: the %s has %d coats in the plan and %d in its scheme", hull, keel, s.Part, len(turns), want)
				}
				for n := 1; n < len(turns); n++ {
					if turns[n] != turns[n-1]+1 {
						t.Errorf("%s, %s: coat %d of the %s is in turn %d, the one below it in turn %d", hull, keel, n+1, s.Part, turns[n], turns[n-1])
					}
				}
			}
			if len(j.Season.Calendar.Items) == 0 {
				t.Errorf("%s, %s: no plan: %v", hull, keel, j.Season.Calendar.Findings)
			}
		}
	}
}

// One primer in one go on two parts that get different types closes for each as the coat over it wants: 72 hours under the tie coat of a silicone, eight under
// a one-pack antifouling.
func TestPrimerClosesForEachTypeOverIt(t *testing.T) {
	text := strings.Replace(seasonal, `coating = "ablative-cuprous-multi"`, `coating = "foul-release-silicone"`, 1)
	j, err := plan(t, fmt.Sprintf(text, `material = "steel"`, "aluminium", "launch_open = true"))
	if err != nil {
		t.Fatal(err)
	}
	var closes []string
	for _, turn := range j.Season.Turns {
		if len(turn.Coats) == 2 && turn.Section == turn.Sections && turn.Coats[0].Layer.Coating.Key == "epoxy-primer" && turn.Coats[1].Layer.Coating.Key == "epoxy-primer" {
			for _, l := range turn.Layers {
				closes = append(closes, l.Closes.String())
			}
		}
	}
	if !slices.Equal(closes, []string{"72 h", "8 h"}) {
		t.Errorf("the primer closes after %v", closes)
	}
}

func hullCoats(turns []antifoul.Turn, role tables.Role, patch bool) int {
	n := 0
	for _, turn := range turns {
		for _, k := range turn.Coats {
			if turn.Patch == patch && k.Part == "hull" && k.Layer.Coating.Role == role {
				n++
			}
		}
	}
	return n
}

// What is given up when the launch is too near, in the trade's order (common practice): the whole barrier on sound GRP, then the third working
// coat; on metal never the barrier; on a wet laminate there is none to give up, only the wish for it.
func TestWhatIsGivenUp(t *testing.T) {
	for name, c := range map[string]struct {
		hull, keel, launch string
		rules              []finding.ID
		never              []finding.ID
		hullBarrier        int // coats that are left
		fits               bool
	}{
		"time enough":             {barrierOnGRP, "lead", "2027-09-15", nil, []finding.ID{antifoul.RuleLeaveBarrier, antifoul.RuleLeaveCoat}, -1, true},
		"no time for the barrier": {barrierOnGRP, "lead", "2027-06-05", []finding.ID{antifoul.RuleLeaveBarrier, antifoul.RuleFits}, []finding.ID{antifoul.RuleNotEven}, 0, true},
		"no time at all":          {barrierOnGRP, "lead", "2027-05-03", []finding.ID{antifoul.RuleNotEven}, []finding.ID{antifoul.RuleFits, antifoul.RuleLeaveBarrier}, -1, false},
		"steel":                   {"material = \"steel\"", "steel", "2027-05-17", []finding.ID{antifoul.RuleKeepBarrier, antifoul.RuleNotEven}, []finding.ID{antifoul.RuleLeaveBarrier}, -1, false},
		"aluminium":               {"material = \"aluminium\"", "aluminium", "2027-05-10", []finding.ID{antifoul.RuleNotEven}, []finding.ID{antifoul.RuleLeaveBarrier}, -1, false},
		"a wet laminate":          {"material = \"grp\"\nlaminate = \"wet\"\nbarrier = true", "lead", "2027-06-12", []finding.ID{antifoul.RuleWetBarrier, antifoul.RuleFits}, []finding.ID{antifoul.RuleLeaveBarrier}, 0, true},
	} {
		t.Run(name, func(t *testing.T) {
			j := inSeason(t, c.hull, c.keel, "launch = "+c.launch)
			s := j.Season
			for _, r := range c.rules {
				if !s.Findings.Has(r) {
					t.Errorf("no %s in %v", r, s.Findings)
				}
			}
			for _, r := range c.never {
				if s.Findings.Has(r) {
					t.Errorf("%s in %v", r, s.Findings)
				}
			}
			turns, shown := s.Shown()
			left := hullCoats(turns, tables.Barrier, false)
			if c.hullBarrier >= 0 && left != c.hullBarrier || c.hullBarrier < 0 && left != hullCoats(s.Turns, tables.Barrier, false) {
				t.Errorf("%d coats of barrier are left on the hull", left)
			}
			if hullCoats(s.Turns, tables.Barrier, false) == 0 && c.hullBarrier >= 0 {
				t.Error("there was no barrier to give up")
			}
			if patches := hullCoats(turns, tables.Barrier, true); (patches == 0) != (left == 0) {
				t.Errorf("%d coats of barrier on the places where she stood, %d on the hull", patches, left)
			}
			if shown.Fits != c.fits {
				t.Errorf("fits: %v, %v", shown.Fits, shown.Findings)
			}
			for _, f := range s.Findings {
				if said := j.Book.Say(f, 1); strings.Contains(said, "not stated") || strings.ContainsAny(said, "{}") {
					t.Error(said)
				}
			}
		})
	}
}

// A launch moved day by day from too near to far off goes through the trade's order and never back: nothing given up less with less time.
func TestGivingUpIsMonotone(t *testing.T) {
	was := -1
	for day := 3; day <= 150; day += 5 {
		launch := time.Date(2027, 5, day, 0, 0, 0, 0, time.UTC).Format("2006-01-02")
		s := inSeason(t, barrierOnGRP, "lead", "launch = "+launch).Season
		turns, shown := s.Shown()
		score := 0 // 0 not in time, 1 less a coat too, 2 less the barrier, 3 whole
		switch {
		case !shown.Fits:
		case len(turns) == len(s.Turns):
			score = 3
		case s.Findings.Has(antifoul.RuleLeaveCoat):
			score = 1
		default:
			score = 2
		}
		if score < was {
			t.Errorf("launch on %s: %d after %d", launch, score, was)
		}
		was = score
	}
	if was != 3 {
		t.Errorf("with five months the season is still too short: %d", was)
	}
}

// The third working coat is what is left out after the barrier, and the report says from when she is then painted again.
func TestThirdCoatIsLeft(t *testing.T) {
	var j *antifoul.Job
	for day := 4; day < 31 && (j == nil || !j.Season.Findings.Has(antifoul.RuleLeaveCoat)); day++ { // the launch at which a coat is just enough
		text := strings.Replace(fmt.Sprintf(seasonal, "material = \"grp\"", "grp", fmt.Sprintf("reserve = \"0 d\"\nlaunch = 2027-05-%02d", day)), `haul_out_every = "24 months"`, `haul_out_every = "36 months"`, 1)
		text = strings.Replace(text, `"20 degC"`, `"10 degC"`, 1) // one coat a day
		text = strings.Replace(text, `"Sat", "Sun"`, `"Sat", "Sun", "Mon", "Tue", "Wed", "Thu", "Fri"`, 1)
		var err error
		if j, err = plan(t, text); err != nil {
			t.Fatal(err)
		}
	}
	hull, ok := j.Scheme("hull")
	at := slices.IndexFunc(hull.Coats, func(k antifoul.Coat) bool { return k.Layer.For == compat.Working })
	if !ok || hull.Coats[at].Layer.Coats < 3 {
		t.Fatalf("the hull has %d working coats: too few to give one up", hull.Coats[at].Layer.Coats)
	}
	if j.Season.Calendar.Fits {
		t.Fatal("there is time for all of it")
	}
	i := slices.IndexFunc(j.Season.Findings, func(f finding.Finding) bool { return f.Rule == antifoul.RuleLeaveCoat && f.About == "hull" })
	if i < 0 {
		t.Fatalf("no coat is left out: %v", j.Season.Findings)
	}
	said := j.Book.Say(j.Season.Findings[i], 1)
	if !strings.Contains(said, fmt.Sprintf("%d instead of %d", hull.Coats[at].Layer.Coats-1, hull.Coats[at].Layer.Coats)) || strings.Contains(said, "not reckoned") {
		t.Error(said)
	}
	// What it costs: she is painted again when the zone that wears most is worn with a coat less.
	var zones []tables.Zone
	for _, key := range hull.Coats[at].Zones {
		z, err := j.Book.Zone(key)
		if err != nil {
			t.Fatal(err)
		}
		zones = append(zones, z)
	}
	fewer := slices.Clone(hull.Stack)
	for k := range fewer {
		if fewer[k].For == compat.Working {
			fewer[k].Coats--
			n := int64(fewer[k].Coats)
			f := fewer[k].Coating.Film
			fewer[k].Film = quantity.Range[quantity.Film]{Low: f.Low.Scale(decimal.NewFromInt(n)), Typical: f.Typical.Scale(decimal.NewFromInt(n)), High: f.High.Scale(decimal.NewFromInt(n))}
		}
	}
	then := wear.Predict(j.Book, fewer, j.Boat.Use, zones, j.Boat.Work.Launch)
	f := j.Season.Findings[i]
	if factOf(f, "before") != hull.Lasts.NextHaul.String() || factOf(f, "after") != then.NextHaul.String() || factOf(f, "before") == factOf(f, "after") {
		t.Errorf("painted again %v, with a coat less %v; want %s and %s", factOf(f, "before"), factOf(f, "after"), hull.Lasts.NextHaul, then.NextHaul)
	}
	if kept := hull.Coats[at].Layer.Coats; hullCoats(j.Season.Turns, tables.Antifouling, false)-hullCoats(j.Season.Kept, tables.Antifouling, false) != 1 {
		t.Errorf("of %d working coats not one was left out", kept)
	}
}

// Drying out is read once a month, and no coat stands before the reading that may match the one before.
func TestDryingOut(t *testing.T) {
	j := inSeason(t, "material = \"grp\"\nlaminate = \"wet\"\nbarrier = true", "lead", "launch_open = true")
	if len(j.Season.Drying) != 1 || j.Season.Drying[0].Part != "hull" || len(j.Season.Drying[0].Readings) < 3 {
		t.Fatalf("%+v", j.Season.Drying)
	}
	d := j.Season.Drying[0]
	if d.Readings[0].DaysUntil(d.Earliest) != 28 || !d.Readings[1].Equal(d.Earliest) {
		t.Errorf("read on %v, first coat from %s", d.Readings, d.Earliest)
	}
	for _, it := range j.Season.Calendar.Items {
		turn := j.Season.Turns[it.Task]
		for _, k := range turn.Coats {
			if k.Part == "hull" && !turn.Patch && it.Start().Format("2006-01-02") < d.Earliest.String() {
				t.Errorf("%s on %s, before %s", turn.Name, it.Start(), d.Earliest)
			}
		}
	}
}

// In the slings, the day before the launch, nothing but antifouling goes on.
func TestSlings(t *testing.T) {
	j := inSeason(t, barrierOnGRP, "lead", "slings = true\nlaunch = 2027-09-19")
	if !j.Season.Calendar.Fits {
		t.Fatalf("no plan: %v", j.Season.Calendar.Findings)
	}
	patches := 0
	for _, it := range j.Season.Calendar.Items {
		turn := j.Season.Turns[it.Task]
		if turn.Do == finding.Shift && it.Start().Format("2006-01-02") != "2027-09-18" {
			t.Errorf("she hangs from %s", it.Start())
		}
		if !turn.Patch || len(turn.Coats) == 0 {
			continue
		}
		patches++
		for _, k := range turn.Coats {
			if k.Layer.Coating.Role != tables.Antifouling {
				t.Errorf("%s in the slings", k.Layer.Coating.Name)
			}
		}
	}
	if patches == 0 {
		t.Error("nothing is painted in the slings")
	}
}

// One morning: the coat of the day, and only that.
func TestMorningOfThePlan(t *testing.T) {
	j := inSeason(t, "material = \"grp\"", "lead", "launch_open = true")
	first := slices.IndexFunc(j.Season.Calendar.Items, func(it calendar.Item) bool { return len(j.Season.Turns[it.Task].Coats) > 0 })
	start := j.Season.Calendar.Items[first].Start()
	for _, c := range []struct {
		now  time.Time
		want finding.Verdict
	}{
		{start, finding.Ask},                   // no forecast: measure
		{start.Add(-time.Hour), finding.Needs}, // masking comes first
		{start.AddDate(0, 0, -1), finding.Forbidden},
	} {
		m, ok, err := j.Morning(c.now)
		if err != nil || !ok || m.Verdict != c.want || (c.want == finding.Forbidden) != m.Next.Equal(start) || m.Sure || m.Turn.Name != j.Season.Turns[j.Season.Calendar.Items[first].Task].Name {
			t.Errorf("%s: %v, %v, %v, %s", c.now, m.Verdict, ok, err, m.Turn.Name)
		}
	}
	if _, ok, err := j.Morning(start.AddDate(2, 0, 0)); ok || err != nil {
		t.Errorf("two years later: %v, %v", ok, err)
	}
}

// Each piece of work that is not over by the moment is named before the coat of that day, whether it is one or are several, with the hour from which the coat may go on.
func TestWorkBeforeTheCoatOfAMorning(t *testing.T) {
	j := inSeason(t, "material = \"grp\"", "cast-iron", "launch_open = true")
	asked := map[int]bool{}
	over := time.Time{} // when the coat before is
	var work []calendar.Item
	for _, it := range j.Season.Calendar.Items {
		turn := j.Season.Turns[it.Task]
		if len(turn.Coats) == 0 || it.Again {
			work = append(work, it)
			continue
		}
		for now := it.Start().Add(-9 * time.Hour); now.Before(it.Start()); now = now.Add(15 * time.Minute) {
			var before []string
			for _, w := range work {
				switch {
				case !w.End().After(now):
				case w.Again:
					before = append(before, "abrading")
				default:
					before = append(before, j.Season.Turns[w.Task].Name)
				}
			}
			if len(before) == 0 || now.Before(over) || now.YearDay() != it.Start().YearDay() {
				continue
			}
			asked[len(before)] = true
			m, ok, err := j.Morning(now)
			if err != nil || !ok || m.Verdict != finding.Needs || !m.From.Equal(it.Start()) || factOf(m.Finding, "before") != strings.Join(before, ", then ") {
				t.Errorf("%s, before %v: %v, %v, %v", now, before, m.Finding, ok, err)
			}
		}
		over = it.End()
	}
	if !asked[1] || len(asked) < 2 {
		t.Errorf("so many pieces of work are left: %v; the test asks too little", asked)
	}
}

// A barrier that is wanted is built on the bare surface, and its wish is told.
func TestWantedBarrier(t *testing.T) {
	with := inSeason(t, barrierOnGRP, "lead", "launch_open = true")
	without := inSeason(t, "material = \"grp\"\nlaminate = \"dry\"", "lead", "launch_open = true")
	if hullCoats(with.Season.Turns, tables.Barrier, false) == 0 || hullCoats(without.Season.Turns, tables.Barrier, false) != 0 {
		t.Error("the barrier stands in the wrong scheme")
	}
	text := fmt.Sprintf(seasonal, "material = \"wood-carvel\"\nbarrier = true", "lead", "launch_open = true")
	_, err := antifoul.ReadBoat(fstest.MapFS{"boat.toml": {Data: []byte(text)}}, "boat.toml")
	if err == nil || !strings.Contains(err.Error(), "part[hull].barrier") {
		t.Errorf("a barrier on carvel planking: %v", err)
	}
}

// Faults of the work come all at once, with their keys and the sheet's own lines.
func TestFaultsOfTheWork(t *testing.T) {
	text := fmt.Sprintf(seasonal, "material = \"grp\"", "lead", `launch = 2027-04-01
shift = 2027-04-02
reserve = "-2 d"
set_up = "30 h"
free = [2027-04-01, "soon"]
forecast = "weather.csv"
[[work.other]]
name = "log"
hours = "-3 h"
on = 2027-04-01`)
	text = strings.Replace(strings.Replace(text, `from = "08:00"`, `from = "25:00"`, 1), `"Sat", "Sun"`, `"Sat", "Sunday"`, 1)
	sheet := "time,air [degC],humidity [%]\n2027-05-01 08:00,10,104\n2027-05-01 10:00,10,60\n2027-05-01 10:00,10,60\n"
	_, err := antifoul.ReadBoat(fstest.MapFS{"boat.toml": {Data: []byte(text)}, "weather.csv": {Data: []byte(sheet)}}, "boat.toml")
	if err == nil {
		t.Fatal("no fault")
	}
	for _, want := range []string{"work.launch", "work.shift", "work.reserve", "work.set_up", "work.free", "work.from", "work.days", "work.other[1].hours", "work.other[1].on", "weather.csv: line 2", "104", "weather.csv: line 3", "weather.csv: line 4"} {
		if !strings.Contains(err.Error(), want) {
			t.Errorf("%s is not told in:\n%v", want, err)
		}
	}
}

// Same boat, same plan; and the demonstration's plan is one that a reader of its file can follow: no coat outside the crew's hours.
func TestDemonstrationPlan(t *testing.T) {
	read := func() *antifoul.Job {
		x, err := antifoul.ReadBoat(os.DirFS("../examples/bottomjob"), "demo.toml")
		if err != nil {
			t.Fatal(err)
		}
		j, err := antifoul.Plan(tables.Default(), x)
		if err != nil {
			t.Fatal(err)
		}
		return j
	}
	a, b := read(), read()
	if fmt.Sprint(a.Season.Calendar.Items, a.Season.Findings) != fmt.Sprint(b.Season.Calendar.Items, b.Season.Findings) {
		t.Error("two plans of one boat differ")
	}
	for _, it := range a.Season.Calendar.Items {
		for _, s := range it.Spans {
			if turn := a.Season.Turns[it.Task]; !turn.Yard && s.To.After(s.From) && (s.From.Hour() < 9 || s.To.Hour() > 17) {
				t.Errorf("%s from %s to %s", turn.Name, s.From, s.To)
			}
		}
	}
}

// What a plan rests on is said, each by its own rule, and only where it is so.
func TestSeasonSaysWhatItRestsOn(t *testing.T) {
	unknown := func(s string) string {
		return strings.Replace(s, "coating = \"bare\"\nstate = \"sound\"", "coating = \"unknown-old\"\nstate = \"sound\"", 1)
	}
	oneSeason := func(s string) string { return strings.Replace(s, "24 months", "12 months", 1) }
	same := func(s string) string { return s }
	alone := func(s string) string { return strings.Replace(s, "hands = 2", "hands = 1", 1) } // more than a day of blasting
	for name, c := range map[string]struct {
		hull, work  string
		change      func(string) string
		want, never []finding.ID
	}{
		"steel":                   {"material = \"steel\"", "launch_open = true", alone, []finding.ID{antifoul.RuleSections, antifoul.RuleSlowRates}, []finding.ID{antifoul.RuleUntilKnown, antifoul.RuleSlings}},
		"slings on a working day": {"material = \"grp\"", "slings = true\nlaunch = 2027-09-19", same, []finding.ID{antifoul.RuleSlings}, []finding.ID{antifoul.RuleSlingsDay, antifoul.RuleSections}},
		"slings, nobody there":    {"material = \"grp\"", "slings = true\nlaunch = 2027-09-22", same, []finding.ID{antifoul.RuleSlingsDay}, []finding.ID{antifoul.RuleSlings}},
		"unknown film":            {"material = \"grp\"", "launch_open = true", unknown, []finding.ID{antifoul.RuleUntilKnown}, nil},
		"nothing to leave":        {"material = \"grp\"", "launch = 2027-05-03", oneSeason, []finding.ID{antifoul.RuleNothingLeft, antifoul.RuleMoreDays}, []finding.ID{antifoul.RuleNotEven, antifoul.RuleLeaveCoat}},
		"one hand":                {"material = \"steel\"", "launch = 2027-06-07", same, []finding.ID{antifoul.RuleMoreDays}, []finding.ID{antifoul.RuleLeaveBarrier}},
	} {
		j, err := plan(t, c.change(fmt.Sprintf(seasonal, c.hull, "lead", c.work)))
		if err != nil {
			t.Fatal(err)
		}
		for _, r := range c.want {
			if !j.Season.Findings.Has(r) {
				t.Errorf("%s: no %s in %v", name, r, j.Season.Findings)
			}
		}
		for _, r := range c.never {
			if j.Season.Findings.Has(r) {
				t.Errorf("%s: %s in %v", name, r, j.Season.Findings)
			}
		}
	}
}

// What does not lap onto itself, or is mixed of two packs, is not laid in the slings, and the plan says so of each type.
func TestNotInTheSlings(t *testing.T) {
	for _, c := range []struct {
		coating string
		lays    bool
	}{
		{"ablative-cuprous-multi", true},
		{"hard-cuprous", true},
		{"foul-release-silicone", false}, // goes over itself after more than a wash
		{"inert-epoxy", false},           // two packs
	} {
		text := strings.Replace(fmt.Sprintf(seasonal, "material = \"grp\"", "lead", "slings = true\nlaunch = 2027-09-19"), "ablative-cuprous-multi", c.coating, 1)
		j, err := plan(t, text)
		if err != nil {
			t.Fatal(err)
		}
		s, _ := j.Scheme("hull")
		if s.Coating.Key != c.coating {
			t.Fatalf("the hull gets %s, not %s", s.Coating, c.coating)
		}
		lays := slices.ContainsFunc(j.Season.Turns, func(x antifoul.Turn) bool { return x.Patch && len(x.Coats) > 0 })
		if lays != c.lays {
			t.Errorf("%s in the slings: %t, want %t", c.coating, lays, c.lays)
		}
		fs := j.Season.Findings
		if !fs.Has("slings-bare") || fs.Has("slings-coat") != c.lays || fs.Has(antifoul.RuleSlingsDay) {
			t.Errorf("%s: %v", c.coating, fs)
		}
		for _, f := range fs {
			if f.Rule == "slings-waits" && f.About == s.Coating.Name && c.lays {
				t.Errorf("%s may go on and waits", c.coating)
			}
		}
		if !c.lays && !slices.ContainsFunc(fs, func(f finding.Finding) bool { return f.Rule == "slings-waits" && f.About == s.Coating.Name }) {
			t.Errorf("nobody says that %s waits: %v", c.coating, fs)
		}
	}
}

// What a morning says beside its verdict: the next coat where none is due today, and what the plan has before the coat, in order; a coat that is abraded once more waits for that.
func TestMorningSaysWhatComesBefore(t *testing.T) {
	for name, c := range map[string]struct {
		hull, now string
		rule      finding.ID
		says      string
	}{
		"none today":        {"material = \"grp\"", "2027-05-01 14:30", calendar.RuleNoCoat, "Sun 2 May 2027, 09:00"},
		"two works before":  {"material = \"grp\"", "2027-05-22 08:00", calendar.RuleBefore, "places where she stood, degrease (hull), then places where she stood, abrade (hull)"},
		"one work before":   {"material = \"grp\"", "2027-05-22 10:30", calendar.RuleBefore, "places where she stood, abrade (hull)"},
		"nothing before it": {"material = \"grp\"", "2027-05-22 12:30", calendar.RuleRead, ""},
		"abraded once more": {barrierOnGRP, "2027-05-15 08:00", calendar.RuleBefore, "abrading"},
	} {
		j := inSeason(t, c.hull, "lead", "launch_open = true")
		now, err := time.Parse("2006-01-02 15:04", c.now)
		if err != nil {
			t.Fatal(err)
		}
		m, ok, err := j.Morning(now)
		if err != nil || !ok {
			t.Fatalf("%s: %v, %v", name, ok, err)
		}
		i := slices.IndexFunc(j.Season.Calendar.Items, func(it calendar.Item) bool {
			return j.Season.Turns[it.Task].Name == m.Turn.Name && !it.Again
		})
		it := j.Season.Calendar.Items[i]
		says := ""
		switch c.rule {
		case calendar.RuleNoCoat:
			says = fmt.Sprint(factOf(m.Finding, "next"))
			if !m.Next.Equal(it.Start()) || m.Sure != (it.Verdict == finding.Fine) {
				t.Errorf("%s: next %v, sure %v; planned %v, %v", name, m.Next, m.Sure, it.Start(), it.Verdict)
			}
		case calendar.RuleBefore:
			says = fmt.Sprint(factOf(m.Finding, "before"))
			if !m.From.Equal(it.Start()) {
				t.Errorf("%s: from %v, planned %v", name, m.From, it.Start())
			}
		}
		if m.Finding.Rule != c.rule || says != c.says || c.rule != calendar.RuleRead && m.Finding.About != m.Turn.Name {
			t.Errorf("%s: %s of %s, %q; want %s, %q", name, m.Finding.Rule, m.Finding.About, says, c.rule, c.says)
		}
	}
	// A coat in the hours of a good forecast is sure.
	j, err := plan(t, strings.NewReplacer("launch = 2027-05-20", "launch_open = true\ndays = [\"Sat\", \"Sun\", \"Mon\", \"Tue\", \"Wed\", \"Thu\", \"Fri\"]\nfrom = \"11:00\"\nuntil = \"16:00\"\nforecast = \"weather.csv\"").Replace(base))
	if err != nil {
		t.Fatal(err)
	}
	m, ok, err := j.Morning(time.Date(2027, time.April, 3, 0, 0, 0, 0, time.UTC).Add(-24 * time.Hour))
	if err != nil || !ok || !m.Sure {
		t.Errorf("%v, %v: next %v, sure %v", ok, err, m.Next, m.Sure)
	}
}

// What can be blasted and primed in a day is one piece, of which nothing is said.
func TestOneSectionIsNone(t *testing.T) {
	j := inSeason(t, "material = \"grp\"", "cast-iron", "launch_open = true")
	if !slices.ContainsFunc(j.Season.Turns, func(x antifoul.Turn) bool { return x.Sections == 1 }) || j.Season.Findings.Has(antifoul.RuleSections) {
		t.Errorf("%v", j.Season.Findings)
	}
}

// Where nobody says how warm it is a plan is careful: it is ready no sooner than at the temperature at which the times of the paint hold, and an epoxy later.
func TestAPlanWithoutATemperatureIsCareful(t *testing.T) {
	text := fmt.Sprintf(seasonal, barrierOnGRP, "lead", "launch_open = true")
	warm := plannedJob(t, text).Season.Calendar.Ready
	if careful := plannedJob(t, strings.Replace(text, "[paint]\ntemperature = \"20 degC\"\n", "", 1)).Season.Calendar.Ready; warm.IsZero() || !careful.After(warm) {
		t.Errorf("ready %v at 20 degC, %v at what nobody says", warm, careful)
	}
}

// A book that doesn't say how paint dries plans no days, and says what it lacks, under the work.
func TestABookWithoutDrying(t *testing.T) {
	files := fstest.MapFS{}
	err := fs.WalkDir(os.DirFS("../tables/data"), ".", func(path string, e fs.DirEntry, err error) error {
		if err != nil || e.IsDir() || path == "dryings.toml" {
			return err
		}
		text, err := fs.ReadFile(os.DirFS("../tables/data"), path)
		files[path] = &fstest.MapFile{Data: text}
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
	b, err := tables.Load(files)
	if err != nil {
		t.Fatal(err)
	}
	boat, err := antifoul.ReadBoatWith(b, fstest.MapFS{"boat.toml": {Data: []byte(fmt.Sprintf(seasonal, "material = \"grp\"", "lead", "launch_open = true"))}}, "boat.toml")
	if err != nil {
		t.Fatal(err)
	}
	_, err = antifoul.Plan(b, boat)
	var faults finding.Faults
	if !errors.As(err, &faults) || len(faults) == 0 || faults[0].Key != "work.drying" {
		t.Errorf("%v", err)
	}
}
