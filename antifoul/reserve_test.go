package antifoul_test

import (
	"fmt"
	"strings"
	"testing"
	"testing/fstest"
	"time"

	"boatyard.example/bottomwork/antifoul"
	"boatyard.example/bottomwork/antifoul/calendar"
	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/finding"
)

// number is an own row of the factor table.
func number(key, value string) string {
	return "[[factor]]\nkey = \"" + key + "\"\nbasis = \"own table\"\nsource = \"the yard\"\nvalue = " + value + "\n"
}

// Where nobody says otherwise a plan leaves two days before a fixed launch, the factor's value rounded up to whole days; what the boat file says stands before it.
func TestReserveBeforeALaunch(t *testing.T) {
	ready := inSeason(t, "material = \"grp\"", "lead", "launch_open = true").Season.Calendar.Ready
	if ready.IsZero() {
		t.Fatal("no plan")
	}
	morning := func(days int) string { // the first launch whose morning is so many days after she is ready
		d := time.Date(ready.Year(), ready.Month(), ready.Day(), 8, 30, 0, 0, ready.Location())
		for d.Before(ready) {
			d = d.AddDate(0, 0, 1)
		}
		return d.AddDate(0, 0, days).Format(time.DateOnly)
	}
	for name, c := range map[string]struct {
		own, work string
		days      int
		kept      bool
	}{
		"two days":             {"", "", 2, true},
		"a day":                {"", "", 1, false},
		"a day is asked":       {"", "reserve = \"1 d\"\n", 1, true},
		"none is asked":        {"", "reserve = \"0 d\"\n", 0, true},
		"not the day asked":    {"", "reserve = \"1 d\"\n", 0, false},
		"by the yard's number": {number("launch-reserve", "0.25"), "", 1, true},
		"which is rounded up":  {number("launch-reserve", "0.25"), "", 0, false},
	} {
		s := billed(t, c.own, fmt.Sprintf(seasonal, "material = \"grp\"", "lead", c.work+"launch = "+morning(c.days))).Season
		for _, f := range s.Calendar.Findings {
			if f.Rule == calendar.RuleNoReserve && c.own != "" && fmt.Sprint(factOf(f, "reserve")) != "1 d" {
				t.Errorf("%s: %v are left", name, factOf(f, "reserve"))
			}
		}
		if !s.Calendar.Fits || s.Calendar.Reserve != c.kept {
			t.Errorf("%s: fits %v, reserve kept %v: %v", name, s.Calendar.Fits, s.Calendar.Reserve, s.Calendar.Findings)
		}
	}
}

// A forecast is believed for seven days: a coat in its hours is fine, one beyond them is measured in the morning. The number is rounded up to whole days.
func TestForecastIsBelievedForAWeek(t *testing.T) {
	boat := strings.NewReplacer("launch = 2027-05-20", "launch_open = true\ndays = [\"Sat\", \"Sun\", \"Mon\", \"Tue\", \"Wed\", \"Thu\", \"Fri\"]\nfrom = \"11:00\"\nuntil = \"16:00\"\nforecast = \"weather.csv\"").Replace(base)
	boat = strings.Replace(boat, "draft = \"1.6 m\"", "draft = \"1.6 m\"\nstand_pairs = 3", 1)
	believed(t, "", boat, "2027-04-10")
	believed(t, number("forecast-trust", "4.25"), boat, "2027-04-08")
}

// believed holds that coats before the day are fine and those from it on are measured.
func believed(t *testing.T, own, boat, day string) {
	t.Helper()
	b, err := tables.Default().With(fstest.MapFS{"own.toml": {Data: []byte(own)}})
	if err != nil {
		t.Fatal(err)
	}
	x, err := antifoul.ReadBoatWith(b, fstest.MapFS{"boat.toml": {Data: []byte(boat)}, "weather.csv": {Data: []byte(weatherSheet)}}, "boat.toml")
	if err != nil {
		t.Fatal(err)
	}
	j, err := antifoul.Plan(b, x)
	if err != nil {
		t.Fatal(err)
	}
	said := map[finding.Verdict]int{}
	for _, it := range j.Season.Calendar.Items {
		turn := j.Season.Turns[it.Task]
		if len(turn.Coats) == 0 || it.Again {
			continue
		}
		said[it.Verdict]++
		if far := it.Start().Format(time.DateOnly) >= day; far != (it.Verdict == finding.Ask) {
			t.Errorf("%s on %s: %v", turn.Name, it.Start(), it.Verdict)
		}
	}
	if said[finding.Fine] < 2 || said[finding.Ask] < 2 {
		t.Errorf("verdicts %v: the test asks too little", said)
	}
}

// With time enough nothing is given up and nothing is said of it.
func TestTimeEnough(t *testing.T) {
	for _, work := range []string{"launch_open = true", "launch = 2027-09-15"} {
		s := inSeason(t, barrierOnGRP, "lead", work).Season
		if len(s.Kept) > 0 || !s.Calendar.Fits {
			t.Errorf("%s: %d turns are kept, fits %v", work, len(s.Kept), s.Calendar.Fits)
		}
		for _, r := range []finding.ID{antifoul.RuleFits, antifoul.RuleNotEven, antifoul.RuleNothingLeft, antifoul.RuleMoreHands, antifoul.RuleMoreDays, antifoul.RuleLeaveBarrier, antifoul.RuleKeepBarrier, antifoul.RuleWetBarrier, antifoul.RuleSections} {
			if s.Findings.Has(r) {
				t.Errorf("%s: %s", work, r)
			}
		}
	}
}

// What a plan rests on is said beside what is given up.
func TestNotesOfASeasonThatIsTooShort(t *testing.T) {
	text := strings.Replace(fmt.Sprintf(seasonal, "material = \"steel\"", "lead", "launch = 2027-06-07"), "hands = 2", "hands = 1", 1)
	s := plannedJob(t, text).Season
	if s.Calendar.Fits {
		t.Fatal("there is time enough")
	}
	for _, r := range []finding.ID{antifoul.RuleMoreDays, antifoul.RuleSections, antifoul.RuleSlowRates} {
		if !s.Findings.Has(r) {
			t.Errorf("no %s in %v", r, s.Findings)
		}
	}
}

// Drying out begins when the laminate has been opened; it is read four times, 28 days apart. What is not waited for any more is not read.
func TestReadingsOfALaminate(t *testing.T) {
	const wet = "material = \"grp\"\nlaminate = \"wet\"\nbarrier = true"
	j := inSeason(t, wet, "lead", "launch_open = true")
	if len(j.Season.Drying) != 1 {
		t.Fatalf("%d parts dry out", len(j.Season.Drying))
	}
	d := j.Season.Drying[0]
	var begun time.Time
	for _, it := range j.Season.Calendar.Items {
		if j.Season.Turns[it.Task].Do == finding.DryOut {
			begun = it.Start()
		}
	}
	if len(d.Readings) != 4 || d.Readings[0].String() != begun.Format(time.DateOnly) {
		t.Errorf("read on %v, opened on %s", d.Readings, begun)
	}
	for i := 1; i < len(d.Readings); i++ {
		if d.Readings[i-1].DaysUntil(d.Readings[i]) != 28 {
			t.Errorf("read on %v", d.Readings)
		}
	}
	said := ""
	for _, f := range j.Season.Findings {
		if f.Rule == antifoul.RuleDryingOut {
			said = fmt.Sprint(f.About, " ", factOf(f, "readings"), " ", factOf(f, "earliest"))
		}
	}
	if said != "hull 4 "+d.Readings[1].String() {
		t.Errorf("said of drying out: %q", said)
	}
	given := inSeason(t, wet, "lead", "launch = 2027-06-12").Season
	if len(given.Kept) == 0 || len(given.Drying) > 0 || given.Findings.Has(antifoul.RuleDryingOut) {
		t.Errorf("%d turns are kept, and %v is read", len(given.Kept), given.Drying)
	}
	// Without a plan of days nobody knows when she is opened, so it is from the day of the question on.
	none := plannedJob(t, strings.Replace(fmt.Sprintf(seasonal, wet, "lead", "launch_open = true"), "until = \"18:00\"", "until = \"10:00\"", 1)).Season
	if len(none.Calendar.Items) > 0 || len(none.Drying) != 1 || none.Drying[0].Readings[0].String() != "2027-05-01" {
		t.Errorf("%d items, read %v", len(none.Calendar.Items), none.Drying)
	}
}

// Of slings it is said what is done in them, or that nobody is there; without a place that bore her nothing is.
func TestNotesOfSlings(t *testing.T) {
	oneLayer := strings.Replace(sheet, "draft = \"1.6 m\"", "draft = \"1.6 m\"\nstand_pairs = 3", 1)
	for name, c := range map[string]struct {
		boat   string
		slings bool
		day    bool
	}{
		"there":                {fmt.Sprintf(seasonal, "material = \"grp\"", "lead", "slings = true\nlaunch = 2027-09-19"), true, false},
		"not there":            {fmt.Sprintf(seasonal, "material = \"grp\"", "lead", "slings = true\nlaunch = 2027-09-22"), false, true},
		"no stands":            {strings.Replace(fmt.Sprintf(seasonal, "material = \"grp\"", "lead", "slings = true\nlaunch = 2027-09-22"), "stand_pairs = 3", "stand_pairs = 0", 1), false, false},
		"one layer":            {oneLayer + "[work]\ndays = [\"Sat\", \"Sun\"]\nslings = true\nlaunch = 2027-09-19\n", true, false},
		"one layer, not there": {oneLayer + "[work]\ndays = [\"Sat\", \"Sun\"]\nslings = true\nlaunch = 2027-09-22\n", false, true},
	} {
		j := plannedJob(t, c.boat)
		if s := j.Season.Findings; s.Has(antifoul.RuleSlings) != c.slings || s.Has(antifoul.RuleSlingsDay) != c.day {
			t.Errorf("%s: %v", name, s)
		}
		if strings.HasPrefix(name, "one layer") && len(j.Patches) != 1 {
			t.Errorf("%s: %d layers on the places", name, len(j.Patches))
		}
	}
}

// Paint is sprayed in less wind than it is rolled: 6 m/s in the open are too many for the spray.
func TestWindOfThePlan(t *testing.T) {
	boat := func(by string) string {
		return strings.NewReplacer("launch = 2027-05-20", "launch_open = true\ndays = [\"Sat\", \"Sun\"]\nfrom = \"11:00\"\nuntil = \"16:00\"\nforecast = \"weather.csv\"", "by = \"roller\"", "by = \""+by+"\"").Replace(base)
	}
	first := func(by, wind string) string {
		files := fstest.MapFS{"boat.toml": {Data: []byte(boat(by))}, "weather.csv": {Data: []byte(strings.ReplaceAll(weatherSheet, ",3\n", ","+wind+"\n"))}}
		x, err := antifoul.ReadBoat(files, "boat.toml")
		if err != nil {
			t.Fatal(err)
		}
		j, err := antifoul.Plan(tables.Default(), x)
		if err != nil {
			t.Fatal(err)
		}
		for _, it := range j.Season.Calendar.Items {
			if len(j.Season.Turns[it.Task].Coats) > 0 {
				return it.Start().Format(time.DateOnly)
			}
		}
		return ""
	}
	for _, c := range []struct {
		by, wind string
		soon     bool
	}{{"roller", "3", true}, {"roller", "7", true}, {"airless-open", "3", true}, {"airless-open", "7", false}} {
		if got := first(c.by, c.wind); (got < "2027-04-10") != c.soon {
			t.Errorf("%s at %s m/s: first on %s", c.by, c.wind, got)
		}
	}
}

// Places that two parts share are done together where both want it, each with its own first coat: under the pads 0.6 m2 of the hull, under two blocks 0.2 m2 of the keel, a little more for each layer above.
func TestPlacesOnTwoParts(t *testing.T) {
	for keel, want := range map[string]string{
		"lead": `degrease (hull, keel) | degrease {0.8×0.04} h dry patch
abrade (hull, keel) | abrade {0.8×0.15} h patch wait 2 h
keel: epoxy primer |  {0.2×0.08} h patch | epoxy-primer on 1 ` + bridge + ` again {0.2×0.15}
hull, keel: signal coat |  {0.6×0.08 + 0.29×0.08} h patch
hull, keel: working coat 1 of 4 |  {0.85×0.08 + 0.39×0.08} h patch`,
		"cast-iron": `degrease (hull, keel) | degrease {0.8×0.04} h dry patch
abrade (hull) | abrade {0.6×0.15} h patch wait 2 h
blast or grind to bright metal and prime: keel: epoxy primer | blast {0.2×0.58} h dry patch | epoxy-primer on 1 ` + primed + ` again {0.2×0.15}
keel: epoxy barrier, solvent-borne 1 of 4 |  {0.29×0.08} h patch`,
	} {
		j := plannedJob(t, strings.Replace(measuredBoat("material = \"grp\"\nlaminate = \"dry\"", keel, "launch_open = true"), "stand_pairs = 3", "stand_pairs = 3\nkeel_blocks = 2", 1))
		var got []string
		for _, l := range turnLines(j.Season.Turns) {
			if at, is := strings.CutPrefix(l, "places where she stood, "); is {
				got = append(got, at)
			}
		}
		for i, w := range byHand(t, want, 2) {
			if !strings.HasPrefix(got[i], w) {
				t.Errorf("%s: got %s\nwant %s", keel, got[i], w)
			}
		}
	}
}

// A job of one piece of work is planned too: a boat that is better left bare is washed.
func TestAPlanOfOneTurn(t *testing.T) {
	boat := strings.NewReplacer("[use]\n", "[use]\nkept = \"trailer\"\n", "[wishes]\ncoating = \"ablative-cuprous-multi\"\n", "", "launch_open = true", "launch_open = true").Replace(fmt.Sprintf(seasonal, "material = \"grp\"", "grp", "launch_open = true"))
	j := plannedJob(t, boat)
	if len(j.Season.Turns) != 1 || j.Season.Turns[0].Do != finding.Wash || len(j.Season.Calendar.Items) != 1 {
		t.Errorf("%v, %v", turnLines(j.Season.Turns), j.Season.Calendar.Items)
	}
}

// The hours to set up are rounded up to hundredths: 0.133 h are 0.14 h, 8.4 minutes, four of which are gone before hands are at work.
func TestHoursToSetUpAreRoundedUp(t *testing.T) {
	for from, hour := range map[string]int{"08:56": 9, "08:57": 10} {
		text := strings.Replace(fmt.Sprintf(seasonal, "material = \"grp\"", "lead", "launch_open = true"), "from = \"08:00\"", "from = \""+from+"\"", 1)
		j := billed(t, number("day-setup", "0.133"), text)
		if got := j.Season.Calendar.Items[0].Start().Hour(); got != hour {
			t.Errorf("from %s at work at %d, want %d", from, got, hour)
		}
	}
}
