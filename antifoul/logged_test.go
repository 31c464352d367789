package antifoul_test

import (
	"errors"
	"fmt"
	"os"
	"slices"
	"strings"
	"testing"
	"testing/fstest"
	"time"

	"boatyard.example/bottomwork/antifoul"
	"boatyard.example/bottomwork/antifoul/joblog"
	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

// sheet is an invented boat whose sums can be done with a pencil: a rudder of 2 m2, a hull of 20, 2 and 1 m2. It is painted by roller.
const sheet = `
[boat]
name = "Sheet"
date = 2027-04-03
[hull]
kind = "fin-keel-yacht"
length = "9 m"
beam = "3 m"
draft = "1.6 m"
measured = { flat = "20 m2", waterline = "2 m2", edges = "1 m2" }
[[part]]
name = "hull"
zone = "hull"
material = "grp"
[[part.found]]
coating = "ablative-cuprous-multi"
colour = "red-oxide"
film = "100 um"
state = "sound"
[[part]]
name = "rudder"
zone = "rudder"
material = "grp"
area = "2 m2"
[[part.found]]
coating = "epoxy-barrier"
state = "sound"
[[part]]
name = "anode"
zone = "fitting"
material = "zinc-anode"
[use]
under_way = "100 h"
speed = "5 kn"
haul_out_every = "18 months"
water = "salt"
[[berth]]
place = "GB"
role = "kept"
[paint]
by = "roller"
[wishes]
coating = "ablative-cuprous-multi"
top_colour = "black"
`

// laid is one coat of a log on the rudder; lines take the place of those of the same key, or are added.
func laid(lines ...string) string {
	base := []string{`part = "rudder"`, `layer = "working"`, `coat = 1`, `coating = "ablative-cuprous-multi"`, `begun = "2027-04-10 09:00"`, `ended = "2027-04-10 10:00"`}
	for _, l := range lines {
		key, _, _ := strings.Cut(l, " = ")
		i := slices.IndexFunc(base, func(b string) bool { return strings.HasPrefix(b, key+" = ") })
		if i < 0 {
			base = append(base, l)
		} else {
			base[i] = l
		}
	}
	return "[[coat]]\n" + strings.Join(base, "\n") + "\n"
}

const logHead = "[log]\nversion = 1\n"

func plannedJob(t *testing.T, boat string) *antifoul.Job {
	t.Helper()
	j, err := plan(t, boat)
	if err != nil {
		t.Fatal(err)
	}
	return j
}

func readLog(j *antifoul.Job, text string) (joblog.Log, error) {
	return antifoul.ReadLog(j.Book, j.Boat, fstest.MapFS{"log.toml": {Data: []byte(text)}}, "log.toml", nil)
}

func logged(t *testing.T, j *antifoul.Job, text, now string) antifoul.Logged {
	t.Helper()
	l, err := readLog(j, text)
	if err != nil {
		t.Fatal(err)
	}
	var at time.Time
	if now != "" {
		if at, err = time.Parse("2006-01-02 15:04", now); err != nil {
			t.Fatal(err)
		}
	}
	out, err := j.Logged(l, at)
	if err != nil {
		t.Fatal(err)
	}
	return out
}

func rulesOf(fs finding.List) string {
	var out []string
	for _, f := range fs {
		out = append(out, string(f.Rule))
	}
	return strings.Join(out, " ")
}

func films(f quantity.Range[quantity.Film]) string {
	if !f.Low.Given() {
		return "not known"
	}
	um := func(a quantity.Film) string { return a.To(quantity.Micrometre, 2, quantity.Nearest).Number().String() }
	return um(f.Low) + " " + um(f.Typical) + " " + um(f.High)
}

// Films by hand. The paint has 40, 50 and 60 % solids and 50 um asked for; the roller loses 5, 10 and 15 % and leaves 0.25, 0.35 and 0.5 L in tray and
// can, but no more than half of what was used.
//
// Sheet 1, 0.5 L on 2 m2. Left in the tray is half, 0.25 L, at each end.
//
//	low      0.25 L × 40 × (100 − 15) ÷ (10 × 2) = 42.5 um
//	typical  0.25 L × 50 × (100 − 10) ÷ (10 × 2) = 56.25 um
//	high     0.25 L × 60 × (100 −  5) ÷ (10 × 2) = 71.25 um
//
// Sheet 2, the comb wetted at 100 and dry at 125 um, 5 % thinner: 100 × 40 ÷ 105 = 38.10; 112.5 × 50 ÷ 105 = 53.57; 125 × 60 ÷ 105 = 71.43.
//
// Sheet 3, both: from 42.5 to 71.25, in the middle (56.25 + 53.57) ÷ 2 = 54.91.
//
// Sheet 4, 0.5 L and a comb wetted at 200 and dry at 225 um: 80, 106.25, 135, which is more than 71.25. All of 42.5 to 135, middle 81.25.
//
// Sheet 5, what is likelier missing in the log: the high end is 142.5 um a litre, half of it left, and 0.33 × 50 = 16.5 um the least believed:
// 0.1157 L make 16.49, 0.1159 L 16.52. 0.028 L would make 3.99 um.
//
// Sheet 6, 1.2 L on 2 m2: low 0.7 × 40 × 85 ÷ 20 = 119; typical 0.85 × 50 × 90 ÷ 20 = 191.25; high 0.95 × 60 × 95 ÷ 20 = 270.75.
//
// Sheet 7, a comb on the edge: 100 um with 20 % thinner dry to 100 × 60 ÷ 120 = 50 um at the most, which may be what was asked for, 99 to 49.5. 125 um dry to 50 um
// at the least, 126 to 50.4.
func TestFilmsByHand(t *testing.T) {
	j := plannedJob(t, sheet)
	for _, c := range []struct {
		lines []string
		film  string
		rule  finding.ID
		v     finding.Verdict
	}{
		{[]string{`litres = "0.5 L"`}, "42.5 56.25 71.25", antifoul.RuleLogByLitres, finding.Fine},
		{[]string{`wet_film = ["100 um to 125 um"]`, `thinner = "5 %"`}, "38.1 53.57 71.43", antifoul.RuleLogByComb, finding.Fine},
		{[]string{`litres = "0.5 L"`, `wet_film = ["100 um to 125 um"]`, `thinner = "5 %"`}, "42.5 54.91 71.25", antifoul.RuleLogByBoth, finding.Fine},
		{[]string{`litres = "0.5 L"`, `wet_film = ["200 um to 225 um"]`}, "42.5 81.25 135", antifoul.RuleLogFilmDiffers, finding.Ask},
		{[]string{`litres = "0.1157 L"`}, "not known", antifoul.RuleLogFilmLittle, finding.Ask},
		{[]string{`litres = "0.1159 L"`}, "9.85 13.04 16.52", antifoul.RuleLogByLitres, finding.Caution},
		{[]string{`litres = "0.028 L"`}, "not known", antifoul.RuleLogFilmLittle, finding.Ask},
		{[]string{`litres = "0.028 L"`, `wet_film = ["100 um"]`}, "40 50 60", antifoul.RuleLogByComb, finding.Fine}, // the comb still tells
		{[]string{`litres = "1.2 L"`}, "119 191.25 270.75", antifoul.RuleLogByLitres, finding.Caution},
		{[]string{`wet_film = ["100 um"]`, `thinner = "20 %"`}, "33.33 41.67 50", antifoul.RuleLogByComb, finding.Fine},
		{[]string{`wet_film = ["99 um"]`, `thinner = "20 %"`}, "33 41.25 49.5", antifoul.RuleLogByComb, finding.Caution},
		{[]string{`wet_film = ["125 um"]`}, "50 62.5 75", antifoul.RuleLogByComb, finding.Fine},
		{[]string{`wet_film = ["126 um"]`}, "50.4 63 75.6", antifoul.RuleLogByComb, finding.Caution},
		{nil, "not known", antifoul.RuleLogNoFilm, finding.Ask},
	} {
		k := logged(t, j, logHead+laid(c.lines...), "").Coats[0]
		if films(k.Film) != c.film || !slices.ContainsFunc(k.Findings, func(f finding.Finding) bool { return f.Rule == c.rule && f.Verdict == c.v }) {
			t.Errorf("%v: film %s, findings %s; want %s, %s", c.lines, films(k.Film), rulesOf(k.Findings), c.film, c.rule)
		}
		by := map[finding.ID]string{antifoul.RuleLogByLitres: "litres", antifoul.RuleLogByComb: "comb", antifoul.RuleLogByBoth: "litres and comb", antifoul.RuleLogFilmDiffers: "litres and comb"}[c.rule]
		if k.By != by {
			t.Errorf("%v: told by %q, want %q", c.lines, k.By, by)
		}
	}
	// A coat whose thinner was not noted is thinned as the boat file says.
	thinned := plannedJob(t, strings.Replace(sheet, `by = "roller"`, "by = \"roller\"\nthinner = \"20 %\"", 1))
	if got := films(logged(t, thinned, logHead+laid(`wet_film = ["100 um"]`), "").Coats[0].Film); got != "33.33 41.67 50" {
		t.Errorf("with the boat's thinner %s", got)
	}
	// A reader is told how little it would have been.
	k := logged(t, j, logHead+laid(`litres = "0.028 L"`), "").Coats[0]
	if said := j.Book.Say(k.Findings[0], quantity.Metric); !strings.Contains(said, "4 µm") || !strings.Contains(said, "50 µm") {
		t.Error(said)
	}
	// The area is told to a tenth of a square metre.
	wide := plannedJob(t, strings.Replace(sheet, `area = "2 m2"`, `area = "2.04 m2"`, 1))
	if got := fmt.Sprint(factOf(logged(t, wide, logHead+laid(`litres = "0.028 L"`), "").Coats[0].Findings[0], "area")); strings.Contains(got, "2.04") || !strings.Contains(got, "2") {
		t.Errorf("an area of %s", got)
	}
}

// A coat in two pieces is one coat where both lie: a layer's film is told on its first zone, and a coat that lies on one of two is not laid.
func TestCoatInPieces(t *testing.T) {
	j := plannedJob(t, sheet)
	s, _ := j.Scheme("hull")
	planned := s.Coats[len(s.Coats)-1].Layer.Coats
	piece := func(zone, begun string) string {
		return laid(`part = "hull"`, fmt.Sprintf("zones = [%q]", zone), fmt.Sprintf(`begun = "2027-04-10 %s"`, begun), fmt.Sprintf(`ended = "2027-04-10 %s"`, begun[:4]+"9"), `litres = "2 L"`)
	}
	two := logged(t, j, logHead+piece("flat", "09:00")+piece("waterline", "10:00"), "")
	three := logged(t, j, logHead+piece("flat", "09:00")+piece("waterline", "10:00")+piece("edges", "11:00"), "")
	for _, c := range []struct {
		l    antifoul.Logged
		laid int
	}{{two, 0}, {three, 1}} {
		x := c.l.Layers[0]
		if x.Part != "hull" || x.Laid != c.laid || x.Planned != planned {
			t.Errorf("laid %d of %d, want %d of %d", x.Laid, x.Planned, c.laid, planned)
		}
	}
	// 2 L on 20 m2 of flat: low (2 − 0.5) × 40 × 85 ÷ 200 = 25.5; typical 1.65 × 50 × 90 ÷ 200 = 37.125; high 1.75 × 60 × 95 ÷ 200 = 49.875.
	if got := films(three.Layers[0].Film); got != "25.5 37.13 49.88" {
		t.Errorf("film on the flat: %s", got)
	}
}

// What was noted of the air, on and just over each limit. The paint goes on from 5 to 35 degC; the surface stays 3 K above the dew point and the air
// at 85 % at most. Air of 12 degC with 64 % has its dew point at 5.395 degC (WMO-No. 8, annex 4.B, worked with a pencil: g = ln 0.64 +
// 17.62 × 12 ÷ 255.12 = 0.38250; 243.12 × g ÷ (17.62 − g) = 5.395), so the surface is right from 8.395 degC on.
func TestAirOfACoat(t *testing.T) {
	j := plannedJob(t, sheet)
	for _, c := range []struct {
		air  []string
		want string
	}{
		{[]string{`air = "12 degC"`, `surface = "11 degC"`, `humidity = "64 %"`}, "log-air-fine"},
		{[]string{`air = "12 degC"`, `surface = "8.4 degC"`, `humidity = "64 %"`}, "log-air-fine"},
		{[]string{`air = "12 degC"`, `surface = "8.39 degC"`, `humidity = "64 %"`}, "log-air-dew"},
		{[]string{`air = "12 degC"`, `surface = "8.4 degC"`, `dew_point = "5.39 degC"`}, "log-air-fine"}, // the dew point alone will do
		{[]string{`air = "12 degC"`, `surface = "8.4 degC"`, `dew_point = "5.41 degC"`}, "log-air-dew"},
		{[]string{`air = "12 degC"`, `surface = "8.4 degC"`, `humidity = "64 %"`, `dew_point = "6 degC"`}, "log-air-fine"}, // the humidity outranks it
		{[]string{`air = "20 degC"`, `surface = "20 degC"`, `humidity = "85 %"`}, "log-air-dew"},                           // 2.6 K only
		{[]string{`air = "20 degC"`, `surface = "24 degC"`, `humidity = "85 %"`}, "log-air-fine"},
		{[]string{`air = "20 degC"`, `surface = "24 degC"`, `humidity = "85.1 %"`}, "log-air-humid"},
		{[]string{`air = "8 degC"`, `surface = "5 degC"`, `humidity = "50 %"`}, "log-air-fine"},
		{[]string{`air = "8 degC"`, `surface = "4.9 degC"`, `humidity = "50 %"`}, "log-air-cold"},
		{[]string{`air = "30 degC"`, `surface = "35 degC"`, `humidity = "50 %"`}, "log-air-fine"},
		{[]string{`air = "30 degC"`, `surface = "35.1 degC"`, `humidity = "50 %"`}, "log-air-hot"},
		{[]string{`air = "12 degC"`, `surface = "11 degC"`, `humidity = "64 %"`, `rain = true`}, "log-air-rain"},
		{[]string{`air = "12 degC"`, `surface = "11 degC"`, `humidity = "64 %"`, `rain = false`}, "log-air-fine"},
		{[]string{`surface = "11 degC"`}, "log-air-unknown"},
		{[]string{`air = "12 degC"`, `humidity = "64 %"`}, "log-air-unknown"},
		{nil, "log-air-unknown log-air-unknown"},
	} {
		k := logged(t, j, logHead+laid(append([]string{`litres = "0.5 L"`}, c.air...)...), "").Coats[0]
		if got := strings.TrimPrefix(rulesOf(k.Findings), "log-film-litres "); got != c.want {
			t.Errorf("%v: %s, want %s", c.air, got, c.want)
		}
		for _, f := range k.Findings {
			if said := j.Book.Say(f, quantity.Metric); strings.Contains(said, "(not stated)") || strings.Contains(said, "{") {
				t.Errorf("%s says %q", f.Rule, said)
			}
			if f.Verdict == finding.Forbidden {
				t.Errorf("%s forbids what is done", f.Rule)
			}
		}
	}
}

// A dew point may differ from that of air and humidity by the factor log-dew-differs, 1.5 K: 5.395 degC by the sheet above, so from 3.895 to 6.895.
func TestDewPointContradicts(t *testing.T) {
	j := plannedJob(t, sheet)
	for dew, ok := range map[string]bool{"3.89 degC": false, "3.9 degC": true, "5.4 degC": true, "6.89 degC": true, "6.9 degC": false, "44.4 degF": true, "44.5 degF": false} {
		_, err := readLog(j, logHead+laid(`air = "12 degC"`, `humidity = "64 %"`, fmt.Sprintf("dew_point = %q", dew)))
		if (err == nil) != ok {
			t.Errorf("dew point %s: %v", dew, err)
		}
		if faults, _ := errors.AsType[finding.Faults](err); !ok && (len(faults) != 1 || faults[0].Key != "coat[1].dew_point" || faults[0].File != "log.toml" || !strings.Contains(faults[0].Want, "5.4 degC")) {
			t.Errorf("dew point %s: %v", dew, err)
		}
	}
}

// What the boat has not is a fault, told together with the log's own.
func TestLogOfAnotherBoat(t *testing.T) {
	j := plannedJob(t, sheet)
	_, err := readLog(j, logHead+"launched = 2027-05-01\n"+laid(`part = "ruder"`)+laid(`part = "anode"`)+laid(`zones = ["flat"]`)+laid(`part = "hull"`, `zones = ["keel"]`, `humidity = "120 %"`)+
		"[[task]]\npart = \"keel\"\ndo = \"wash\"\nbegun = \"2027-04-09 10:00\"\n[[task]]\npart = \"anode\"\ndo = \"wash\"\nbegun = \"2027-04-09 10:00\"\n[[look]]\non = 2027-06-01\npart = \"hull\"\nzone = \"rudder\"\nsignal = false\n")
	faults, _ := errors.AsType[finding.Faults](err)
	var keys []string
	for _, f := range faults {
		keys = append(keys, f.Key)
	}
	if got := strings.Join(keys, " "); got != "coat[1].part coat[2].part coat[3].zones coat[4].humidity coat[4].zones look[1].zone task[1].part" {
		t.Errorf("%s\n%v", got, err)
	}
	named := logged(t, j, logHead+"boat = \"Plover\"\n"+laid(), "")
	if !named.Findings.Has(antifoul.RuleLogBoat) {
		t.Error("a log of another boat's name is not asked about")
	}
}

// Windows on the minute. Epoxy primer opens after 4 h and closes after 72 h, to a one-pack antifouling after 8 h, all at 20 degC, which was noted: the
// clock of its row runs one to one.
func TestWindowsOnTheMinute(t *testing.T) {
	j := plannedJob(t, sheet)
	primer := laid(`layer = "undercoat"`, `coating = "epoxy-primer"`, `surface = "20 degC"`) // ended on 10 April at 10:00
	barrier := []string{`layer = "undercoat"`, `coating = "epoxy-barrier"`}
	const abraded = "[[task]]\npart = \"rudder\"\ndo = \"abrade\"\n"
	for _, c := range []struct {
		begun, ended string
		next         []string
		task         string
		want         finding.ID
	}{
		{"2027-04-10 13:59", "2027-04-10 15:00", barrier, "", antifoul.RuleLogWindowEarly},
		{"2027-04-10 14:00", "2027-04-10 15:00", barrier, "", antifoul.RuleLogWindowKept},
		{"2027-04-13 10:00", "2027-04-13 15:00", barrier, "", antifoul.RuleLogWindowKept},
		{"2027-04-13 10:01", "2027-04-13 15:00", barrier, "", antifoul.RuleLogWindowLate},
		{"2027-04-13 10:01", "2027-04-13 15:00", barrier, abraded + "begun = \"2027-04-12 09:00\"\nended = \"2027-04-12 10:00\"\n", antifoul.RuleLogWindowAbraded},
		{"2027-04-13 10:01", "2027-04-13 15:00", barrier, abraded + "begun = \"2027-04-10 08:00\"\nended = \"2027-04-10 09:00\"\n", antifoul.RuleLogWindowLate}, // before the primer
		{"2027-04-13 10:01", "2027-04-13 15:00", barrier, abraded + "begun = \"2027-04-14 08:00\"\nended = \"2027-04-14 09:00\"\n", antifoul.RuleLogWindowLate}, // after the barrier
		{"2027-04-13 10:01", "2027-04-13 15:00", barrier, strings.Replace(abraded, "abrade", "wash", 1) + "begun = \"2027-04-12 09:00\"\n", antifoul.RuleLogWindowLate},
		{"2027-04-10 18:00", "2027-04-10 19:00", nil, "", antifoul.RuleLogWindowKept},
		{"2027-04-10 18:01", "2027-04-10 19:00", nil, "", antifoul.RuleLogWindowLate},
	} {
		next := laid(append(c.next, `begun = "`+c.begun+`"`, `ended = "`+c.ended+`"`)...)
		l := logged(t, j, logHead+primer+next+c.task, "")
		if k := l.Coats[1]; !k.Findings.Has(c.want) {
			t.Errorf("begun %s: %s, want %s", c.begun, rulesOf(k.Findings), c.want)
		}
		if rulesOf(l.Coats[0].Findings) == "" || strings.Contains(rulesOf(l.Coats[0].Findings), "window") {
			t.Errorf("the first coat has a window: %s", rulesOf(l.Coats[0].Findings))
		}
	}
	// Colder, it opens and closes later: what was late in the warm is kept in the cold, and what was kept is early.
	cold := strings.Replace(primer, "20 degC", "10 degC", 1)
	for begun, want := range map[string]finding.ID{"2027-04-10 14:00": antifoul.RuleLogWindowEarly, "2027-04-13 10:01": antifoul.RuleLogWindowKept} {
		l := logged(t, j, logHead+cold+laid(append(barrier, `begun = "`+begun+`"`, `ended = "`+begun[:11]+`15:00"`)...), "")
		if !l.Coats[1].Findings.Has(want) {
			t.Errorf("in the cold, begun %s: %s", begun, rulesOf(l.Coats[1].Findings))
		}
	}
}

// What is due on the steel boat, whose rudder is blasted and primed at 20 degC on 16 March at 10:00, as of each minute that matters.
func TestDueOnTheMinute(t *testing.T) {
	text, err := os.ReadFile("../examples/boats/steel.toml")
	if err != nil {
		t.Fatal(err)
	}
	j := plannedJob(t, string(text))
	primer := logHead + laid(`layer = "undercoat"`, `coating = "epoxy-primer"`, `surface = "20 degC"`, `begun = "2027-03-16 09:00"`, `ended = "2027-03-16 10:00"`)
	due := func(text, now string) finding.Finding {
		for _, f := range logged(t, j, text, now).Due {
			if f.Against == "rudder" {
				if said := j.Book.Say(f, quantity.Metric); strings.Contains(said, "(not stated)") {
					t.Error(said)
				}
				return f
			}
		}
		t.Fatal("nothing is due on the rudder")
		return finding.Finding{}
	}
	for _, c := range []struct {
		text, now string
		want      finding.ID
	}{
		{primer, "", antifoul.RuleLogNextOpen},
		{primer, "2027-03-16 13:59", antifoul.RuleLogNextWait},
		{primer, "2027-03-16 14:00", antifoul.RuleLogNextOpen},
		{primer, "2027-03-19 10:00", antifoul.RuleLogNextOpen},
		{primer, "2027-03-19 10:01", antifoul.RuleLogAbradeNow},
		{primer + "[[task]]\npart = \"rudder\"\ndo = \"abrade\"\nbegun = \"2027-03-19 09:00\"\nended = \"2027-03-19 10:00\"\n", "2027-03-19 10:01", antifoul.RuleLogAbraded},
		{logHead + "[[task]]\npart = \"rudder\"\ndo = \"blast\"\nbegun = \"2027-03-15 09:00\"\n", "2027-03-16 08:00", antifoul.RuleLogNextFirst},
	} {
		f := due(c.text, c.now)
		if f.Rule != c.want {
			t.Errorf("as of %q: %s, want %s", c.now, f.Rule, c.want)
		}
		if needs := c.want == antifoul.RuleLogNextWait || c.want == antifoul.RuleLogAbradeNow; needs != (f.Verdict == finding.Needs && len(f.First) == 1) {
			t.Errorf("as of %q: %s with steps %v", c.now, f.Verdict, f.First)
		}
	}
	if _, err := j.Logged(logged(t, j, primer, "").Log, time.Date(2027, 3, 16, 8, 59, 0, 0, time.UTC)); err == nil {
		t.Error("a coat of after the moment asked about is taken")
	}
}

// wholeRudder is every planned coat of the rudder, at 20 degC, one a day from 10 April at 10:00 on.
func wholeRudder(t *testing.T, j *antifoul.Job, change func(i int) []string) string {
	t.Helper()
	s, ok := j.Scheme("rudder")
	if !ok {
		t.Fatal("no scheme for the rudder")
	}
	var out strings.Builder
	out.WriteString(logHead)
	n := 0
	for _, c := range s.Coats {
		for i := range c.Layer.Coats {
			lines := []string{
				fmt.Sprintf("layer = %q", c.Layer.For), fmt.Sprintf("coat = %d", i+1), fmt.Sprintf("coating = %q", c.Layer.Coating.Key), `litres = "0.5 L"`, `surface = "20 degC"`, `batch = "B1"`,
				fmt.Sprintf(`begun = "2027-04-%d 10:00"`, 10+n), fmt.Sprintf(`ended = "2027-04-%d 11:00"`, 10+n),
			}
			if c.Layer.Colour != "" {
				lines = append(lines, fmt.Sprintf("colour = %q", c.Layer.Colour))
			}
			if change != nil {
				lines = append(lines, change(n)...)
			}
			n++
			out.WriteString(laid(merge(lines)...))
		}
	}
	return out.String()
}

// merge keeps the last line of each key, and drops a key whose last line is empty.
func merge(lines []string) []string {
	var out []string
	for i, l := range lines {
		key, _, _ := strings.Cut(l, " = ")
		if !slices.ContainsFunc(lines[i+1:], func(o string) bool { return strings.HasPrefix(o, key+" = ") }) {
			out = append(out, l)
		}
	}
	return out
}

func layersOf(l antifoul.Logged, part string) string {
	var out []string
	for _, x := range l.Layers {
		if x.Part == part {
			out = append(out, fmt.Sprintf("%s %d/%d %s", x.Layer, x.Laid, x.Planned, rulesOf(x.Findings)))
		}
	}
	return strings.Join(out, "; ")
}

// Layers done, missing, more than planned, not planned; another colour, another order, another batch.
func TestLayersAgainstThePlan(t *testing.T) {
	j := plannedJob(t, sheet)
	s, _ := j.Scheme("rudder")
	if len(s.Coats) != 2 || s.Coats[0].Layer.For != "signal" || s.Coats[1].Layer.Coats < 2 {
		t.Fatalf("the plan of the rudder has changed: %v", s.Stack)
	}
	n := s.Coats[1].Layer.Coats
	whole := wholeRudder(t, j, nil)
	done := fmt.Sprintf("signal 1/1 log-layer-done; working %d/%d log-layer-done", n, n)
	more := laid(fmt.Sprintf("coat = %d", n+1), `colour = "black"`, `begun = "2027-04-25 10:00"`, `ended = "2027-04-25 11:00"`, `batch = "B1"`)
	for name, c := range map[string]struct{ text, want string }{
		"done":             {whole, done},
		"nothing but hull": {logHead + laid(`part = "hull"`), fmt.Sprintf("signal 0/1 log-layer-missing; working 0/%d log-layer-missing", n)},
		"one more":         {whole + more, fmt.Sprintf("signal 1/1 log-layer-done; working %d/%d log-layer-more", n+1, n)},
		"another batch":    {whole + strings.Replace(more, "B1", "B2", 1), fmt.Sprintf("signal 1/1 log-layer-done; working %d/%d log-batches log-layer-more", n+1, n)},
		"another type": {
			whole + laid(`coating = "hard-cuprous"`, `begun = "2027-04-25 10:00"`, `ended = "2027-04-25 11:00"`),
			done + "; working 1/0 log-layer-unplanned",
		},
		"another colour": {
			wholeRudder(t, j, func(i int) []string {
				if i == 0 {
					return []string{`colour = "white"`}
				}
				return nil
			}),
			fmt.Sprintf("signal 1/1 log-colour-other log-layer-done; working %d/%d log-layer-done", n, n),
		},
		"signal last": {
			wholeRudder(t, j, func(i int) []string {
				if i == 0 {
					return []string{`begun = "2027-04-25 10:00"`, `ended = "2027-04-25 11:00"`}
				}
				return nil
			}),
			fmt.Sprintf("working %d/%d log-layer-done; signal 1/1 log-layer-done log-order", n, n),
		},
	} {
		if got := layersOf(logged(t, j, c.text, ""), "rudder"); got != c.want {
			t.Errorf("%s: %s\nwant %s", name, got, c.want)
		}
	}
	for _, x := range logged(t, j, strings.Replace(whole, `batch = "B1"`, `batch = "B2"`, 1)+more, "").Layers {
		for _, f := range x.Findings {
			if said := j.Book.Say(f, quantity.Metric); strings.Contains(said, "(not stated)") {
				t.Error(said)
			}
		}
	}
}

// All laid: not into the water before 12 h at 20 degC; and after 365 days dry it is abraded.
func TestAllLaid(t *testing.T) {
	j := plannedJob(t, sheet)
	text := wholeRudder(t, j, nil)
	last := logged(t, j, text, "").Coats
	end := last[len(last)-1].Ended
	for _, c := range []struct {
		now  time.Time
		want finding.ID
	}{{end, antifoul.RuleLogAllLaid}, {end.AddDate(0, 0, 365), antifoul.RuleLogAllLaid}, {end.AddDate(0, 0, 365).Add(time.Minute), antifoul.RuleLogAirNew}} {
		l := logged(t, j, text, c.now.Format("2006-01-02 15:04"))
		i := slices.IndexFunc(l.Due, func(f finding.Finding) bool { return f.Against == "rudder" })
		said := j.Book.Say(l.Due[i], quantity.Metric)
		if l.Due[i].Rule != c.want || strings.Contains(said, "(not stated)") {
			t.Errorf("%s: %s", c.now, said)
		}
		if c.want == antifoul.RuleLogAllLaid && !strings.Contains(said, end.Add(12*time.Hour).Format("15:04")) {
			t.Errorf("%s: %s", c.now, said)
		}
	}
	afloat := logged(t, j, strings.Replace(text, logHead, logHead+"launched = 2027-05-01\n", 1), "")
	if len(afloat.Due) != 1 || afloat.Due[0].Rule != antifoul.RuleLogAfloat {
		t.Errorf("afloat: %v", afloat.Due)
	}
}

// Thinner and deviations are told, and what the log is silent about.
func TestToldBeside(t *testing.T) {
	j := plannedJob(t, sheet)
	l := logged(t, j, logHead+laid(`thinner = "5 %"`, `deviations = ["rain at noon", "one roller"]`), "")
	if got := rulesOf(l.Coats[0].Findings); strings.Count(got, "log-deviation") != 2 || !strings.Contains(got, "log-thinner") {
		t.Error(got)
	}
	if !l.Findings.Has(antifoul.RuleLogSteps) {
		t.Errorf("the plan's work that the log is silent about is not told: %s", rulesOf(l.Findings))
	}
	same := plannedJob(t, strings.Replace(sheet, `by = "roller"`, "by = \"roller\"\nthinner = \"5 %\"", 1))
	if got := rulesOf(logged(t, same, logHead+laid(`thinner = "5 %"`), "").Coats[0].Findings); strings.Contains(got, "log-thinner") {
		t.Error("thinned as planned is told as a difference")
	}
	strip := plannedJob(t, strings.Replace(sheet, "coating = \"epoxy-barrier\"\nstate = \"sound\"", "coating = \"silicone-old\"\nstate = \"sound\"", 1))
	for task, want := range map[string]bool{"": true, "[[task]]\npart = \"rudder\"\ndo = \"strip\"\nbegun = \"2027-04-09 10:00\"\n": false} {
		l := logged(t, strip, logHead+laid()+task, "")
		if l.Findings.Has(antifoul.RuleLogNotStripped) != want {
			t.Errorf("%q: %s", task, rulesOf(l.Findings))
		}
	}
	if _, err := tables.Default().Rule(antifoul.RuleLogNotStripped); err != nil {
		t.Error(err)
	}
}

// Where the boat file has a forecast, the window goes by its hours: in air of 4 to 14 degC primer that was noted at 20 opens and closes later than its row says,
// and the report says by what it was reckoned.
func TestWindowByForecast(t *testing.T) {
	primer := logHead + laid(`layer = "undercoat"`, `coating = "epoxy-primer"`, `surface = "20 degC"`)
	barrier := laid(`layer = "undercoat"`, `coating = "epoxy-barrier"`, `begun = "2027-04-10 14:00"`, `ended = "2027-04-10 15:00"`)
	late := strings.NewReplacer("04-10 14:00", "04-13 10:01", "04-10 15:00", "04-13 11:00").Replace(barrier)
	for boat, want := range map[string][2]finding.ID{
		sheet: {antifoul.RuleLogWindowKept, antifoul.RuleLogWindowLate},
		sheet + "[work]\ndays = [\"Sat\"]\nlaunch = 2027-05-20\nforecast = \"weather.csv\"\n": {antifoul.RuleLogWindowEarly, antifoul.RuleLogWindowKept},
	} {
		j := plannedJob(t, boat)
		for i, text := range []string{primer + barrier, primer + late} {
			k := logged(t, j, text, "").Coats[1]
			if !k.Findings.Has(want[i]) {
				t.Errorf("%d hours of forecast: %s, want %s", len(j.Boat.Weather.Forecast.Hours), rulesOf(k.Findings), want[i])
			}
		}
	}
}

// Coats of one purpose and coating are one layer where their colours are the same, or were not noted of one; undercoats are, whatever their colours, of the colour on top.
func TestCoatsOfOneLayer(t *testing.T) {
	j := plannedJob(t, sheet)
	coats := func(layer, coating string, colours ...string) string {
		var out strings.Builder
		for i, c := range colours {
			lines := []string{fmt.Sprintf("layer = %q", layer), fmt.Sprintf("coating = %q", coating), fmt.Sprintf("coat = %d", i+1), fmt.Sprintf(`begun = "2027-04-1%d 09:00"`, i), fmt.Sprintf(`ended = "2027-04-1%d 10:00"`, i)}
			if c != "" {
				lines = append(lines, fmt.Sprintf("colour = %q", c))
			}
			out.WriteString(laid(lines...))
		}
		return out.String()
	}
	for name, c := range map[string]struct{ log, want string }{
		"one colour":        {coats("working", "ablative-cuprous-multi", "black", "black"), "black 2"},
		"then noted":        {coats("working", "ablative-cuprous-multi", "", "black"), "black 2"},
		"noted once":        {coats("working", "ablative-cuprous-multi", "black", ""), "black 2"},
		"two colours":       {coats("working", "ablative-cuprous-multi", "black", "red-oxide"), "black 1, red-oxide 1"},
		"and one not noted": {coats("working", "ablative-cuprous-multi", "black", "red-oxide", ""), "black 2, red-oxide 1"},
		"undercoats":        {coats("undercoat", "epoxy-barrier", "white", "dove-grey"), "dove-grey 2"},
		"two coatings":      {coats("working", "ablative-cuprous-multi", "black") + strings.Replace(coats("working", "hard-cuprous", "black"), "2027-04-10", "2027-04-12", 2), "black 1, black 1"},
		"two purposes":      {coats("working", "ablative-cuprous-multi", "black") + strings.Replace(coats("signal", "ablative-cuprous-multi", "black"), "2027-04-10", "2027-04-12", 2), "black 1, black 1"},
	} {
		var got []string
		for _, x := range logged(t, j, logHead+c.log, "").Layers {
			if len(x.Coats) > 0 {
				got = append(got, fmt.Sprintf("%s %d", x.Colour, len(x.Coats)))
			}
		}
		if strings.Join(got, ", ") != c.want {
			t.Errorf("%s: %v, want %s", name, got, c.want)
		}
	}
}

// A layer is of more than one batch where two coats of it were noted with other numbers; of two packs each coat has two, in any order, and a coat without numbers tells nothing.
func TestBatchesOfALayer(t *testing.T) {
	j := plannedJob(t, sheet)
	for _, c := range []struct {
		layer, coating string
		batches        []string
		mixed          bool
	}{
		{"working", "ablative-cuprous-multi", []string{`"A"`, `"A"`}, false},
		{"working", "ablative-cuprous-multi", []string{`"A"`, ""}, false},
		{"working", "ablative-cuprous-multi", []string{`"A"`, `"B"`}, true},
		{"working", "ablative-cuprous-multi", []string{`["A", "B"]`, ""}, true},
		{"undercoat", "epoxy-barrier", []string{`["A", "B"]`, ""}, false},
		{"undercoat", "epoxy-barrier", []string{"", `["A", "B"]`}, false},
		{"undercoat", "epoxy-barrier", []string{`["A", "B"]`, `["B", "A"]`}, false},
		{"undercoat", "epoxy-barrier", []string{`["A", "B"]`, "", `["A", "C"]`}, true},
		{"undercoat", "epoxy-barrier", []string{"", ""}, false},
		{"undercoat", "epoxy-barrier", []string{`"A"`, `"A"`}, false},
		{"undercoat", "epoxy-barrier", []string{`"A"`, `"B"`}, true},
		{"undercoat", "epoxy-barrier", []string{`"A"`, `["A", "B"]`}, true},
		{"undercoat", "epoxy-barrier", []string{`["A", "B"]`, `"B"`}, true},
	} {
		var log strings.Builder
		for i, batch := range c.batches {
			lines := []string{fmt.Sprintf("layer = %q", c.layer), fmt.Sprintf("coating = %q", c.coating), fmt.Sprintf("coat = %d", i+1), fmt.Sprintf(`begun = "2027-04-1%d 09:00"`, i), fmt.Sprintf(`ended = "2027-04-1%d 10:00"`, i)}
			if batch != "" {
				lines = append(lines, "batch = "+batch)
			}
			log.WriteString(laid(lines...))
		}
		layers := logged(t, j, logHead+log.String(), "").Layers
		i := slices.IndexFunc(layers, func(x antifoul.LoggedLayer) bool { return x.Part == "rudder" && len(x.Coats) > 0 })
		if got := layers[i].Findings.Has(antifoul.RuleLogBatches); got != c.mixed {
			t.Errorf("%s of batches %q: mixed %v", c.coating, c.batches, got)
		}
	}
}
