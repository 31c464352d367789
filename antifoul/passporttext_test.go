package antifoul_test

import (
	"fmt"
	"strings"
	"testing"
	"testing/fstest"
	"time"

	"boatyard.example/bottomwork/tables/quantity"
)

// plain is a boat file with remarks, keys of one season, and keys in an order of its own.
const plain = `# A boat of two parts # and two remarks
[use]
speed = "5 kn"
water = "salt"
haul_out_every = "18 months" # as ever
[boat]
date = 2027-04-03
name = "Plain"
[[part]]
name = "hull"
zone = "hull"
material = "grp"
[[part.found]]
coating = "ablative-cuprous-multi"
state = "sound"
[[part]]
name = "rudder"
zone = "rudder"
material = "grp"
area = "2 m2"
[[part.found]]
known_by = "her builder"
age = "9 d"
state = "sound"
coating = "epoxy-barrier"
[work]
hands = 2
launch = 2027-05-01
free = [2027-04-16, 2027-04-17]
[[work.other]]
name = "log"
hours = "2 h"
[[work.other]]
name = "shaft"
hours = "3 h"
[[tin]]
coating = "ablative-cuprous-multi"
[[tin.store]]
size = "2.5 L"
[hull]
kind = "fin-keel-yacht"
length = "9 m"
beam = "3 m"
draft = "1.6 m"
`

// plainLog is a wash, a signal coat and two working coats.
func plainLog(head string) string {
	return logHead + head + "[[task]]\npart = \"rudder\"\ndo = \"wash\"\nbegun = \"2027-04-09 10:00\"\nended = \"2027-04-09 12:00\"\n" +
		laid(`layer = "signal"`, `colour = "mid-green"`, `litres = "0.5 L"`, `batch = "S1"`, `begun = "2027-04-10 09:00"`, `ended = "2027-04-10 10:00"`) +
		laid(`colour = "black"`, `wet_film = ["100 um"]`, `batch = ["A1", "A2"]`, `begun = "2027-04-11 09:00"`, `ended = "2027-04-11 10:00"`) +
		laid(`coat = 2`, `wet_film = ["100 um"]`, `batch = "A2"`, `begun = "2027-04-12 09:00"`, `ended = "2027-04-12 10:00"`)
}

// The passport as a reader would write it: the old file in its own order, layers with their keys in one order, the job behind it, what is set aside and the
// remarks at the end. A litre on 2 m2 is as on sheet 1 of TestFilmsByHand, 42.5 to 71.25 um; a comb wetted at 100 um at 40 to 60 % solids is 40 to 60 um a coat.
func TestPassportAsAWhole(t *testing.T) {
	const want = `# Boat file for the haul-out of 2027-05-14, written from boat.toml and log.toml.
# A film whose known_by says forecast was reckoned, not read: look, measure, and write what you find in its place.
# Coat by coat, with air, comb, names and deviations, the job stands in log.toml alone: keep it.

[use]
speed = "5 kn"
water = "salt"
haul_out_every = "18 months"

[boat]
date = 2027-05-14
name = "Plain"

[passport]
version = 1

[[part]]
name = "hull"
zone = "hull"
material = "grp"
  [[part.found]]
  coating = "ablative-cuprous-multi"
  state = "sound"

[[part]]
name = "rudder"
zone = "rudder"
material = "grp"
area = "2 m2"
  [[part.found]]
  coating = "epoxy-barrier"
  state = "sound"
  known_by = "her builder"
  [[part.found]]
  coating = "ablative-cuprous-multi"
  colour = "mid-green"
  film = ["42 um", "56 um", "72 um"]
  state = "sound"
  age = "34 d"
  known_by = "job log of 2027-04-10 (log.toml), by litres"
  [[part.found]]
  coating = "ablative-cuprous-multi"
  colour = "black"
  film = ["80 um", "100 um", "120 um"]
  state = "sound"
  age = "32 d"
  known_by = "job log of 2027-04-12 (log.toml), by comb"

[work]
hands = 2

[[tin]]
coating = "ablative-cuprous-multi"

[hull]
kind = "fin-keel-yacht"
length = "9 m"
beam = "3 m"
draft = "1.6 m"

[[job]]
log = "log.toml"
begun = 2027-04-09
ended = 2027-04-12
  [[job.coat]]
  part = "rudder"
  layer = "signal"
  coating = "ablative-cuprous-multi"
  colour = "mid-green"
  coats = 1
  film = ["42 um", "56 um", "72 um"]
  litres = "0.5 L"
  batch = ["S1"]
  [[job.coat]]
  part = "rudder"
  layer = "working"
  coating = "ablative-cuprous-multi"
  colour = "black"
  coats = 2
  film = ["80 um", "100 um", "120 um"]
  batch = ["A1", "A2"]

# Set aside: what stood in boat.toml and is no longer so, or not known to be.
# part[rudder].found[1].age = "9 d"  (its age on the day of the last job; it is older now)
# work.launch = 2027-05-01  (the launch of the last job)
# work.free = [2027-04-16, 2027-04-17]  (days of the last job)
# work.other[1] = { hours = "2 h", name = "log" }  (work beside the last job)
# work.other[2] = { hours = "3 h", name = "shaft" }  (work beside the last job)
# tin[1].store[1] = { size = "2.5 L" }  (what was in store before the job; count it again)

# Remarks that stood in boat.toml.
# line 1: A boat of two parts # and two remarks
# line 5: as ever
`
	p, err := carried(t, plain, plainLog(""), "2027-05-14")
	if err != nil {
		t.Fatal(err)
	}
	sameText(t, string(p.Text), want)
	next(t, p, err)
}

func sameText(t *testing.T, got, want string) {
	t.Helper()
	g, w := strings.Split(got, "\n"), strings.Split(want, "\n")
	for i := range max(len(g), len(w)) {
		if i >= len(g) || i >= len(w) || g[i] != w[i] {
			t.Fatalf("line %d differs; got\n%s\nwant\n%s", i+1, strings.Join(g[min(i, len(g)):], "\n"), strings.Join(w[min(i, len(w)):], "\n"))
		}
	}
}

// A passport of a passport has one heading, one list of each haul-out, and what was added below the lists is no part of them.
func TestPassportOfAPassport(t *testing.T) {
	first := must(carried(t, plain, plainLog(""), "2027-05-14"))
	list := string(first.Text[strings.Index(string(first.Text), "\n# Set aside"):])
	added := "[[seen]]\npart = \"rudder\"\nstate = \"flaking\" # at the foot\n"
	log := logHead + strings.ReplaceAll(laid(`colour = "black"`, `litres = "0.5 L"`), "2027-04-10", "2028-04-10")
	for name, c := range map[string]struct{ file, aside, remarks string }{
		"as it was written": {string(first.Text), "", ""},
		"with keys added below": {
			string(first.Text) + added,
			"\n# seen[1] = { part = \"rudder\", state = \"flaking\" }  (what was seen before the job; look again)\n",
			fmt.Sprintf("\n# line %d: at the foot\n", strings.Count(string(first.Text), "\n")+3),
		},
	} {
		p, err := carried(t, c.file, log, "2028-05-14")
		if err != nil {
			t.Fatalf("%s: %v", name, err)
		}
		text := string(p.Text)
		if x := next(t, p, err); len(x.Jobs) != 2 || len(x.Parts) != 2 || len(x.Survey.Seen) > 0 {
			t.Errorf("%s: %d jobs, %d parts", name, len(x.Jobs), len(x.Parts))
		}
		for _, once := range []string{"# Boat file for", "# A film whose", "# Coat by coat", "# line 5: as ever", "# work.launch = ", "[[tin]]", "batch = [\"S1\"]", "batch = [\"A1\", \"A2\"]"} {
			if n := strings.Count(text, once); n != 1 {
				t.Errorf("%s: %q stands %d times in\n%s", name, once, n, text)
			}
		}
		if n := strings.Count(text, "[[job.coat]]"); n != 3 || strings.Count(text, "batch") != 2 {
			t.Errorf("%s: %d layers of the jobs", name, n)
		}
		if !strings.HasSuffix(text, list) || !strings.Contains(text, c.aside) || !strings.Contains(text, c.remarks) {
			t.Errorf("%s: the lists are not carried on:\n%s", name, text)
		}
	}
}

// Without a name the log is not named; without work in it there is no job, and what is in store stays.
func TestPassportOfALogWithoutWork(t *testing.T) {
	j := plannedJob(t, plain)
	l := logged(t, j, plainLog(""), "")
	l.Log.Name = ""
	day, _ := quantity.ParseDate("2027-05-14")
	files := fstest.MapFS{"boat.toml": {Data: []byte(plain)}}
	p, err := j.Passport(l, files, "boat.toml", day)
	if err != nil {
		t.Fatal(err)
	}
	text := string(p.Text)
	for said, want := range map[string]int{"written from boat.toml.\n": 1, "Coat by coat": 0, "log = ": 0, "log.toml": 0, "known_by = \"job log of 2027-04-12, by comb\"": 1, "[[job]]\nbegun = 2027-04-09\n": 1} {
		if n := strings.Count(text, said); n != want {
			t.Errorf("%q stands %d times in\n%s", said, n, text)
		}
	}
	for log, jobs := range map[string]int{
		"launched = 2027-05-01\n[[look]]\non = 2027-05-05\npart = \"rudder\"\nzone = \"rudder\"\nstate = \"sound\"\n": 0,
		"[[task]]\npart = \"rudder\"\ndo = \"wash\"\nbegun = \"2027-04-09 10:00\"\nended = \"2027-04-09 12:00\"\n":    1,
	} {
		p := must(carried(t, plain, logHead+log, "2027-05-14"))
		x := next(t, p, nil)
		if len(x.Jobs) != jobs || len(x.Tins) != 1 || len(x.Tins[0].Store) != 1 || strings.Contains(string(p.Text), "job.coat") {
			t.Errorf("%q: %d jobs, %+v in store\n%s", log, len(x.Jobs), x.Tins, p.Text)
		}
	}
}

// The job is dated from its first work to its last, whatever the order of the log and whether work was a task or a coat, and in the zone of the log.
func TestDaysOfAJob(t *testing.T) {
	task := func(day string) string {
		return "[[task]]\npart = \"rudder\"\ndo = \"wash\"\nbegun = \"2027-04-" + day + " 10:00\"\nended = \"2027-04-" + day + " 12:00\"\n"
	}
	coat := func(day string) string {
		return laid("begun = \"2027-04-"+day+" 09:00\"", "ended = \"2027-04-"+day+" 10:00\"")
	}
	for log, want := range map[string]string{
		coat("10"): "10 10", task("12") + task("08"): "08 12", coat("11") + task("09"): "09 11", task("14") + coat("11"): "11 14", task("12") + task("09") + task("14") + task("10"): "09 14",
	} {
		x := next(t, must(carried(t, plain, logHead+log, "2027-05-14")), nil)
		if got := x.Jobs[0].Begun.String()[8:] + " " + x.Jobs[0].Ended.String()[8:]; got != want {
			t.Errorf("%s, want %s, of\n%s", got, want, log)
		}
	}
	x := next(t, must(carried(t, plain, logHead+"launched = 2027-04-20\nhauled = 2027-05-10\n"+coat("10"), "2027-05-14")), nil)
	if k := x.Jobs[0]; k.Launched.String() != "2027-04-20" || k.Hauled.String() != "2027-05-10" {
		t.Errorf("afloat from %s to %s", k.Launched, k.Hauled)
	}
}

// No day before the last that boat file or log tell of: not before the file's, the launch's, the haul-out's, the last coat's, the last task's.
func TestPassportIsNotDatedBack(t *testing.T) {
	task := "[[task]]\npart = \"rudder\"\ndo = \"wash\"\nbegun = \"2027-04-20 22:00\"\nended = \"2027-04-21 02:00\"\n"
	early := "[[task]]\npart = \"rudder\"\ndo = \"wash\"\nbegun = \"2027-04-09 10:00\"\nended = \"2027-04-09 12:00\"\n"
	for last, log := range map[string]string{
		"2027-04-03": laid(`begun = "2027-04-01 09:00"`, `ended = "2027-04-01 10:00"`),
		"2027-05-01": "launched = 2027-05-01\n" + laid(),
		"2028-05-01": "launched = 2027-05-01\nhauled = 2028-05-01\n" + laid(),
		"2027-04-10": laid() + early,
		"2027-04-21": laid() + task + early,
	} {
		day, err := time.Parse(time.DateOnly, last)
		if err != nil {
			t.Fatal(err)
		}
		before := day.AddDate(0, 0, -1).Format(time.DateOnly)
		if _, err := carried(t, plain, logHead+log, last); err != nil {
			t.Errorf("on the day, %s: %v", last, err)
		}
		if _, err := carried(t, plain, logHead+log, before); err == nil || !strings.Contains(err.Error(), "log.hauled") || !strings.Contains(err.Error(), last) {
			t.Errorf("a day before %s: %v", last, err)
		}
	}
}

// The file is the one from which the job was planned: so many parts, of these names.
func TestPassportIsOfThePlannedFile(t *testing.T) {
	j := plannedJob(t, sheet)
	l := logged(t, j, logHead+laid(), "")
	day, _ := quantity.ParseDate("2027-05-14")
	second := strings.Replace(sheet, "name = \"rudder\"", "name = \"blade\"", 1)
	first := strings.Replace(sheet, "name = \"hull\"", "name = \"body\"", 1)
	one, _, _ := strings.Cut(sheet, "[[part]]\nname = \"rudder\"")
	third := strings.Replace(sheet, "name = \"anode\"", "name = \"zinc\"", 1)
	for file, ok := range map[string]bool{sheet: true, first: false, second: false, one: false, third: false, sheet + "[[part]]\nname = \"leg\"\nzone = \"leg\"\nmaterial = \"grp\"\narea = \"1 m2\"\n": false} {
		_, err := j.Passport(l, fstest.MapFS{"boat.toml": {Data: []byte(file)}}, "boat.toml", day)
		if (err == nil) != ok || !ok && !strings.Contains(err.Error(), "the boat file from which the job was planned") {
			t.Errorf("taken: %v, %v", ok, err)
		}
	}
}

// Whatever a name holds, a remark stays one line.
func TestRemarksStayRemarks(t *testing.T) {
	boat := strings.Replace(sheet, `name = "rudder"`, `name = "a\u0007b\u001fc\u007fd\u2028e\u2029f\ng"`, 1)
	j := plannedJob(t, boat)
	l := logged(t, j, logHead+"launched = 2027-05-01\nhauled = 2028-05-01\n[[look]]\non = 2027-09-01\npart = \"hull\"\nzone = \"flat\"\nsignal = false\n", "")
	for i := range l.Log.Looks {
		l.Log.Looks[i].Part = j.Boat.Parts[1].Name
	}
	day, _ := quantity.ParseDate("2028-05-14")
	p, err := j.Passport(l, fstest.MapFS{"boat.toml": {Data: []byte(boat)}}, "boat.toml", day)
	if err != nil {
		t.Fatal(err)
	}
	if want := "\n# a b c d e f g: 1 of its looks make no record"; !strings.Contains(string(p.Text), want) {
		t.Errorf("no %q in\n%s", want, p.Text)
	}
}

// A list that would be empty has no heading, one of a single line has.
func TestEmptyListsHaveNoHeading(t *testing.T) {
	const aside, remarks = "# Set aside: what stood in", "# Remarks that stood in"
	for name, c := range map[string]struct {
		boat           string
		aside, remarks int
	}{
		"neither":      {sheet, 0, 0},
		"one key":      {strings.Replace(sheet, "coating = \"epoxy-barrier\"", "age = \"9 d\"\ncoating = \"epoxy-barrier\"", 1), 1, 0},
		"one remark":   {"# one\n" + sheet, 0, 1},
		"empty remark": {"#\n" + sheet, 0, 0},
	} {
		p := must(carried(t, c.boat, logHead+laid(), "2027-05-14"))
		if a, r := strings.Count(string(p.Text), aside), strings.Count(string(p.Text), remarks); a != c.aside || r != c.remarks {
			t.Errorf("%s: %d lists of keys, %d of remarks in\n%s", name, a, r, p.Text)
		}
	}
}

// Looks that make no record are counted part by part: those that tell of the film or of the colour below, not those that tell of its state alone.
func TestLooksAreCountedPartByPart(t *testing.T) {
	look := func(part, zone, said string) string {
		return fmt.Sprintf("[[look]]\non = 2027-09-01\npart = %q\nzone = %q\n%s\n", part, zone, said)
	}
	log := logHead + "launched = 2027-05-01\nhauled = 2028-05-01\n" + laid() + look("rudder", "rudder", "signal = false") + look("rudder", "rudder", "film = \"90 um\"") + look("rudder", "rudder", "state = \"worn\"") + look("hull", "flat", "signal = true")
	text := string(must(carried(t, sheet, log, "2028-05-14")).Text)
	for want, n := range map[string]int{"\n# rudder: 2 of its looks": 1, "\n# hull: 1 of its looks": 1, "of its looks": 2} {
		if got := strings.Count(text, want); got != n {
			t.Errorf("%q stands %d times in\n%s", want, got, text)
		}
	}
}
