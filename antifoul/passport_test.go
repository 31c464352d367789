package antifoul_test

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"testing/fstest"
	"time"

	"github.com/BurntSushi/toml"
	"github.com/shopspring/decimal"

	"boatyard.example/bottomwork/antifoul"
	"boatyard.example/bottomwork/antifoul/joblog"
	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

// carried writes the passport of a boat file, held in memory, and a log.
func carried(t *testing.T, boat, log, on string) (antifoul.Passport, error) {
	t.Helper()
	j := plannedJob(t, boat)
	l := logged(t, j, log, "")
	d, err := quantity.ParseDate(on)
	if err != nil {
		t.Fatal(err)
	}
	return j.Passport(l, fstest.MapFS{"boat.toml": {Data: []byte(boat)}}, "boat.toml", d)
}

// next is the boat that the passport is read as.
func next(t *testing.T, p antifoul.Passport, err error) antifoul.Boat {
	t.Helper()
	if err != nil {
		t.Fatal(err)
	}
	j := plannedJob(t, string(p.Text))
	return j.Boat
}

// lies says the layers on a part, bottom to top.
func lies(x antifoul.Boat, part string) string {
	var out []string
	for _, p := range x.Parts {
		if p.Name != part {
			continue
		}
		for _, l := range p.Found {
			film := "?"
			if l.Film.Low.Given() {
				film = l.Film.Low.Number().String() + "-" + l.Film.High.Number().String()
			}
			out = append(out, fmt.Sprintf("%s/%s/%s/%s", l.Coating.Key, l.Colour, film, l.State))
		}
	}
	return strings.Join(out, " ")
}

// knownBy says how the top layer on the rudder is known.
func knownBy(x antifoul.Boat) string {
	for _, p := range x.Parts {
		if p.Name == "rudder" && len(p.Found) > 0 {
			return p.Found[len(p.Found)-1].KnownBy
		}
	}
	return ""
}

// values are all values of a TOML text by path.
func values(t *testing.T, text string) map[string]string {
	t.Helper()
	m := map[string]any{}
	if _, err := toml.Decode(text, &m); err != nil {
		t.Fatalf("%v in\n%s", err, text)
	}
	out := map[string]string{}
	var walk func(path string, v any)
	walk = func(path string, v any) {
		switch v := v.(type) {
		case map[string]any:
			for k, e := range v {
				walk(path+"."+k, e)
			}
		case []map[string]any:
			for i, e := range v {
				walk(fmt.Sprintf("%s[%d]", path, i+1), e)
			}
		case time.Time:
			out[path] = v.Format(time.RFC3339) + v.Location().String()
		default:
			out[path] = fmt.Sprint(v)
		}
	}
	walk("", m)
	return out
}

// wholeLog is a log of every coat of the plan on every part, an hour each, with litres as planned; launched and hauled where those are given.
func wholeLog(j *antifoul.Job, launched, hauled quantity.Date) joblog.Log {
	l := joblog.Log{Name: "log.toml", Version: joblog.Version, Boat: j.Boat.Name, Launched: launched, Hauled: hauled}
	at := time.Date(j.Boat.On.Year(), j.Boat.On.Month(), j.Boat.On.Day(), 8, 0, 0, 0, time.UTC)
	for _, p := range j.Ranking.Parts {
		if len(p.Places) > 0 {
			l.Tasks = append(l.Tasks, joblog.Task{Span: joblog.Span{Begun: at, Ended: at.Add(time.Hour)}, Part: p.Part, Do: finding.Wash})
		}
	}
	for _, s := range j.Schemes {
		for _, step := range s.Route.Steps {
			if step.Do == finding.Strip || step.Do == finding.Blast {
				l.Tasks = append(l.Tasks, joblog.Task{Span: joblog.Span{Begun: at, Ended: at.Add(time.Hour)}, Part: s.Part, Do: step.Do})
			}
		}
		for _, c := range s.Coats {
			for n := range c.Layer.Coats {
				at = at.Add(2 * time.Hour)
				k := joblog.Coat{
					Span: joblog.Span{Begun: at, Ended: at.Add(time.Hour)}, Part: s.Part, Layer: c.Layer.For, Number: n + 1, Coating: c.Layer.Coating.Key, Colour: c.Layer.Colour,
					Batches: []string{"B\"1\\"}, Zones: c.Zones,
				}
				if !c.Layer.Coating.Laid() {
					k.Litres = quantity.Litre.Of(c.Litres.Typical.In(quantity.Litre, 2, quantity.Up)).Scale(share(c.Layer.Coats))
				}
				l.Coats = append(l.Coats, k)
			}
		}
	}
	return l
}

// Each example boat is carried on, twice: every value of the old file stands in the new one or is told as set aside, the new one is read and planned, and the
// same input gives the same bytes.
func TestEveryBoatIsCarriedOn(t *testing.T) {
	names, err := filepath.Glob("../examples/boats/*.toml")
	if err != nil || len(names) < 6 {
		t.Fatalf("%d boats: %v", len(names), err)
	}
	names = append(names, "../examples/bottomjob/demo.toml", "../examples/readme/boat.toml", "../examples/haulouts/boat-2027.toml")
	for _, name := range names {
		if strings.HasSuffix(name, "-log.toml") {
			continue
		}
		t.Run(filepath.Base(name), func(t *testing.T) {
			text, err := os.ReadFile(name)
			if err != nil {
				t.Fatal(err)
			}
			files := beside(t, filepath.Dir(name))
			for round := range 2 {
				files["boat.toml"] = &fstest.MapFile{Data: text}
				boat, err := antifoul.ReadBoat(files, "boat.toml")
				if err != nil {
					t.Fatalf("round %d: %v\n%s", round, err, text)
				}
				j, err := antifoul.Plan(tables.Default(), boat)
				if err != nil {
					t.Fatal(err)
				}
				launched := boat.On.AddMonths(2)
				l, err := j.Logged(wholeLog(j, launched, launched.AddMonths(17)), time.Time{})
				if err != nil {
					t.Fatal(err)
				}
				p, err := j.Passport(l, files, "boat.toml", launched.AddMonths(17))
				if err != nil {
					t.Fatal(err)
				}
				again, err := j.Passport(l, files, "boat.toml", launched.AddMonths(17))
				if err != nil || string(again.Text) != string(p.Text) {
					t.Error("the same input gives other bytes")
				}
				nothingLost(t, string(text), p)
				text = p.Text
			}
		})
	}
}

// beside are the files of a folder, for the sheets that a boat file names.
func beside(t *testing.T, dir string) fstest.MapFS {
	t.Helper()
	out := fstest.MapFS{}
	err := fs.WalkDir(os.DirFS(dir), ".", func(name string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() || !strings.HasSuffix(name, ".csv") {
			return err
		}
		data, err := os.ReadFile(filepath.Join(dir, name))
		out[name] = &fstest.MapFile{Data: data}
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
	return out
}

// nothingLost holds the passport against the file that it was made from.
func nothingLost(t *testing.T, old string, p antifoul.Passport) {
	t.Helper()
	was, is := values(t, old), values(t, string(p.Text))
	var list strings.Builder
	for _, a := range p.Aside {
		list.WriteString(a.Key + " = " + a.Value + "\n")
		if a.Why == "" {
			t.Errorf("%s is set aside without a reason", a.Key)
		}
	}
	aside := list.String()
	for path, v := range was {
		if path == ".boat.date" || is[path] == v {
			continue
		}
		leaf := path[strings.LastIndexAny(path, ".")+1:]
		if !strings.Contains(aside, leaf) || !strings.Contains(aside, strings.TrimSuffix(v, "T00:00:00Zdate-local")) && !strings.HasPrefix(v, "[") {
			t.Errorf("%s was %s, is %q and is not set aside:\n%s", path, v, is[path], aside)
		}
	}
	for i, line := range strings.Split(old, "\n") {
		if head, said, is := strings.Cut(line, "#"); is && strings.Count(head, `"`)%2 == 0 && !strings.Contains(said, "Boat file for") && !strings.Contains(said, "known_by says") && !strings.Contains(said, "rule out") && !strings.Contains(said, "alone") {
			if words := strings.TrimSpace(said); !strings.Contains(strings.ReplaceAll(string(p.Text), "\n# ", ""), words) { // a long one is broken
				t.Errorf("the remark of line %d is lost: %s", i+1, words)
			}
		}
	}
}

// What lies on the rudder afterwards, by hand. Laid are a signal coat and four working coats of 0.5 L on 2 m2: 42.5, 56.25 and 71.25 um each (sheet 1 of
// TestFilmsByHand), so 170, 225 and 285 um of working film.
//
// Without a launch all of it is there, and 30 days old. After the launch it is as the gauge says, or as the forecast does, or gone.
func TestWhatLiesOnTheRudder(t *testing.T) {
	j := plannedJob(t, sheet)
	s, _ := j.Scheme("rudder")
	if n := s.Coats[1].Layer.Coats; n != 4 {
		t.Fatalf("%d working coats: the sheet is for four", n)
	}
	ashore := wholeRudder(t, j, nil)
	afloat := strings.Replace(ashore, logHead, logHead+"launched = 2027-05-01\nhauled = 2028-10-07\n", 1)
	const below = "epoxy-barrier//?/sound ablative-cuprous-multi/"
	signal := s.Coats[0].Layer.Colour
	look := func(lines string) string {
		return afloat + "[[look]]\non = 2028-10-01\npart = \"rudder\"\nzone = \"rudder\"\n" + lines + "\n"
	}
	for name, c := range map[string]struct{ log, on, lies, known string }{
		"ashore":  {ashore, "2027-05-14", below + signal + "/42-72/sound ablative-cuprous-multi/black/170-285/sound", "job log of 2027-04-14 (log.toml), by litres"},
		"gauged":  {look("film = \"90 um\"\nreadings = 5\nstate = \"worn\""), "2028-10-07", below + signal + "/42-72/sound ablative-cuprous-multi/black/90-90/worn", "gauge, 5 readings on 2028-10-01; laid 170 to 285 um by job log"},
		"shows":   {look("signal = true"), "2028-10-07", below + signal + "/?/sound ablative-cuprous-multi/black/?/spent", "look: the colour below shows"},
		"to zero": {look("film = \"0 um\""), "2028-10-07", below + signal + "/42-72/sound ablative-cuprous-multi/black/?/spent", "gauge"},
	} {
		x := next(t, must(carried(t, sheet, c.log, c.on)), nil)
		got := lies(x, "rudder")
		if name == "shows" {
			got = strings.Replace(got, signal+"/42-72/", signal+"/?/", 1) // what is left of it the next test asks
		}
		if got != c.lies || !strings.Contains(knownBy(x), c.known) {
			t.Errorf("%s: %s, known by %q\nwant %s, %q", name, got, knownBy(x), c.lies, c.known)
		}
		if age := x.Parts[1].Found[2].Age; name == "ashore" && age.String() != "30 d" || name != "ashore" && age.Given() {
			t.Errorf("%s: aged %s", name, age)
		}
	}
}

func must(p antifoul.Passport, err error) antifoul.Passport {
	if err != nil {
		panic(err)
	}
	return p
}

// The forecast is never told as a fact: known_by says so, a longer time afloat leaves no more, and where the low end is gone no film is told.
func TestForecastIsNotAFact(t *testing.T) {
	j := plannedJob(t, sheet)
	log := wholeRudder(t, j, nil)
	last, told, gone := 1e9, 0, 0
	for months := 1; months <= 36; months += 5 {
		day, _ := quantity.ParseDate("2027-05-01")
		on := day.AddMonths(months).String()
		x := next(t, must(carried(t, sheet, strings.Replace(log, logHead, logHead+"launched = 2027-05-01\nhauled = "+on+"\n", 1), on)), nil)
		top := x.Parts[1].Found[2]
		if !strings.Contains(top.KnownBy, "wear forecast, not measured") || !strings.Contains(top.KnownBy, "of 170 to 285 um laid") || top.State != tables.NotReported {
			t.Errorf("%d months: %s, %q", months, top.State, top.KnownBy)
		}
		if !top.Film.Low.Given() {
			gone++
			if !strings.Contains(top.KnownBy, "it may be gone") {
				t.Errorf("%d months: no film, known by %q", months, top.KnownBy)
			}
			continue
		}
		told++
		if gone > 0 || top.Film.High.Float(quantity.Micrometre) > last || top.Film.Low.Cmp(top.Film.High) >= 0 {
			t.Errorf("%d months: %s left, before it was %g", months, quantity.ShowRange(top.Film, quantity.Metric), last)
		}
		last = top.Film.High.Float(quantity.Micrometre)
	}
	if told < 2 || gone < 2 {
		t.Errorf("told %d times, gone %d times: the test asks too little", told, gone)
	}
}

// An old gauging is no fact of today: beyond log-look-fresh, 31 days, the forecast speaks.
func TestOldGauging(t *testing.T) {
	j := plannedJob(t, sheet)
	log := strings.Replace(wholeRudder(t, j, nil), logHead, logHead+"launched = 2027-05-01\nhauled = 2027-10-07\n", 1)
	for on, fact := range map[string]bool{"2027-10-07": true, "2027-09-06": true, "2027-09-05": false} {
		x := next(t, must(carried(t, sheet, log+"[[look]]\non = "+on+"\npart = \"rudder\"\nzone = \"rudder\"\nfilm = \"150 um\"\n", "2027-10-07")), nil)
		if got := strings.HasPrefix(knownBy(x), "gauge"); got != fact {
			t.Errorf("gauged on %s: %q", on, knownBy(x))
		}
		if len(x.Records) != 1 || x.Records[0].Looks[0].On.String() != on {
			t.Errorf("gauged on %s: records %v", on, x.Records)
		}
	}
}

// Nothing is taken off her but by a task that says so; and nothing that nobody knew is forgotten under new paint.
func TestNothingLeavesHerInSilence(t *testing.T) {
	silicone := strings.Replace(sheet, "coating = \"epoxy-barrier\"\nstate = \"sound\"", "coating = \"silicone-old\"\nstate = \"sound\"\nage = \"9 d\"", 1)
	unknown := strings.Replace(sheet, "[[part.found]]\ncoating = \"epoxy-barrier\"\nstate = \"sound\"\n", "", 1)
	bare := strings.Replace(sheet, "coating = \"epoxy-barrier\"", "coating = \"bare\"", 1)
	two := strings.Replace(sheet, "coating = \"epoxy-barrier\"\nstate = \"sound\"", "coating = \"epoxy-barrier\"\nstate = \"sound\"\n[[part.found]]\ncoating = \"ablative-old\"\nstate = \"sound\"", 1)
	coats := laid(`layer = "undercoat"`, `coating = "epoxy-barrier"`, `litres = "0.7 L"`)
	task := func(lines string) string {
		return "[[task]]\npart = \"rudder\"\nbegun = \"2027-04-09 10:00\"\nended = \"2027-04-09 12:00\"\n" + lines + "\n"
	}
	strip := "do = \"strip\""
	for name, c := range map[string]struct{ boat, log, want, fault string }{
		"not stripped":             {silicone, coats, "silicone-old epoxy-barrier", ""},
		"stripped as planned":      {silicone, coats + task(strip), "epoxy-barrier", ""},
		"stripped and left":        {silicone, task(strip), "bare", ""},
		"only a piece stripped":    {silicone, coats + task(strip+"\nzones = [\"rudder\"]"), "silicone-old epoxy-barrier", ""},
		"down to the barrier":      {two, coats + task(strip+"\ndown_to = \"epoxy-barrier\""), "epoxy-barrier epoxy-barrier", ""},
		"down to bare":             {two, coats + task(strip+"\ndown_to = \"bare\""), "epoxy-barrier", ""},
		"nobody says down to what": {two, coats + task(strip), "", "task[1].down_to"},
		"down to what is not":      {two, coats + task(strip+"\ndown_to = \"sealer\""), "", "task[1].down_to"},
		"unknown":                  {unknown, coats, "unknown-old epoxy-barrier", ""},
		"bare":                     {bare, coats, "epoxy-barrier", ""},
		"washed only":              {two, task("do = \"wash\""), "epoxy-barrier ablative-old", ""},
	} {
		p, err := carried(t, c.boat, logHead+c.log, "2027-05-14")
		if c.fault != "" {
			if fs, _ := errors.AsType[finding.Faults](err); len(fs) != 1 || fs[0].Key != c.fault || fs[0].File != "log.toml" {
				t.Errorf("%s: %v", name, err)
			}
			continue
		}
		x := next(t, p, err)
		var got []string
		for _, l := range x.Parts[1].Found {
			got = append(got, l.Coating.Key)
		}
		if strings.Join(got, " ") != c.want {
			t.Errorf("%s: %v, want %s", name, got, c.want)
		}
		nothingLost(t, c.boat, p)
	}
	// A part that got nothing and was afloat is not said to be as it was.
	x := next(t, must(carried(t, sheet, logHead+"launched = 2027-05-01\n"+coats, "2028-05-14")), nil)
	if got := lies(x, "hull"); got != "ablative-cuprous-multi/red-oxide/?/not reported" {
		t.Errorf("the hull: %s", got)
	}
}

// What a later version wrote is refused with one fault.
func TestNewerPassport(t *testing.T) {
	_, err := plan(t, "[passport]\nversion = 2\nstars = \"many\"\n[keelson]\nx = 1\n"+sheet)
	fs, _ := errors.AsType[finding.Faults](err)
	if len(fs) != 1 || fs[0].Key != "passport.version" || !strings.Contains(fs[0].Want, "a later one wrote this") {
		t.Errorf("%v", err)
	}
	_, err = plan(t, "[passport]\nversion = 120\n"+sheet)
	if fs, _ = errors.AsType[finding.Faults](err); len(fs) != 1 || fs[0].Got != "120" {
		t.Errorf("%v", err)
	}
	for _, v := range []string{"[passport]\n", "[passport]\nversion = 0\n", "[passport]\nversion = \"1\"\n"} {
		_, err := plan(t, v+sheet)
		if fs, _ := errors.AsType[finding.Faults](err); len(fs) != 1 || fs[0].Key != "passport.version" {
			t.Errorf("%q: %v", v, err)
		}
	}
	if x := plannedJob(t, "[passport]\nversion = 1\n"+sheet).Boat; x.Passport != 1 {
		t.Errorf("version %d", x.Passport)
	}
}

// Faults of earlier jobs are told like any other.
func TestFaultsOfEarlierJobs(t *testing.T) {
	_, err := plan(t, sheet+`
[[job]]
log = "log.toml"
ended = 2027-04-01
[[job.coat]]
layer = "working"
coating = "hard"
colour = "blak"
coats = 0
film = "0 um"
litres = "0 L"
[[job]]
begun = 2027-04-10
ended = 2027-04-09
launched = 2027-05-01
hauled = 2027-04-30
`)
	fs, _ := errors.AsType[finding.Faults](err)
	var keys []string
	for _, f := range fs {
		keys = append(keys, f.Key)
	}
	want := []string{"job[1].begun", "job[1].coat[1].coating", "job[1].coat[1].coats", "job[1].coat[1].colour", "job[1].coat[1].film", "job[1].coat[1].litres", "job[1].coat[1].part", "job[2].ended", "job[2].hauled"}
	if !slices.Equal(keys, want) {
		t.Errorf("%v\nwant %v\n%v", keys, want, err)
	}
}

// Looks that make no record are told to stand in the log alone: here nobody noted the litres, and then the film is known.
func TestLooksThatMakeNoRecord(t *testing.T) {
	for litres, told := range map[string]bool{"": true, `litres = "0.5 L"`: false} {
		p := must(carried(t, sheet, logHead+"launched = 2027-05-01\nhauled = 2028-05-01\n"+laid(litres)+"[[look]]\non = 2027-09-01\npart = \"rudder\"\nzone = \"rudder\"\nsignal = false\n", "2028-05-01"))
		if got := strings.Contains(string(p.Text), "# rudder: 1 of its looks"); got != told {
			t.Errorf("%q: told %t\n%s", litres, got, p.Text)
		}
		if n := len(next(t, p, nil).Records); n != map[bool]int{true: 0, false: 1}[told] {
			t.Errorf("%q: %d records", litres, n)
		}
		nothingLost(t, sheet, p)
	}
}

// A passport is not dated before what happened, and is of the file that was planned.
func TestPassportsThatAreRefused(t *testing.T) {
	j := plannedJob(t, sheet)
	log := logHead + laid()
	for on, ok := range map[string]bool{"2027-04-09": false, "2027-04-10": true} {
		if _, err := carried(t, sheet, log, on); (err == nil) != ok {
			t.Errorf("dated %s: %v", on, err)
		}
	}
	l := logged(t, j, log, "")
	day, _ := quantity.ParseDate("2027-05-14")
	for name, files := range map[string]fstest.MapFS{
		"another boat": {"boat.toml": {Data: []byte(base)}}, "no file": {}, "no TOML": {"boat.toml": {Data: []byte("[[part")}},
	} {
		if _, err := j.Passport(l, files, "boat.toml", day); err == nil {
			t.Errorf("%s: no fault", name)
		}
	}
	if _, err := j.Passport(l, fstest.MapFS{"boat.toml": {Data: []byte(sheet)}}, "boat.toml", quantity.Date{}); err == nil {
		t.Error("no day: no fault")
	}
}

// The season's own keys and the stock are set aside; texts of every sort come through as they were.
func TestKeysOfOneSeason(t *testing.T) {
	boat := strings.Replace(sheet, `name = "Sheet"`, `name = "Ba\"r\\ge\u0007 é 漆 1.2.3.4.5.6.7.8.9.10.11.12.13.14.15.16.17.18.19.20.21.22.23.24.25.26.27.28.29.30"`, 1) + `
[work]
hands = 2
launch = 2027-05-01
days = ["Sat", "Sun"]
free = [2027-04-16]
[[work.other]]
name = "the log # not a remark"
hours = "2 h"
[[tin]]
coating = "ablative-cuprous-multi"
[[tin.store]]
size = "2.5 L"
[[used]]
part = "rudder"
coating = "ablative-cuprous-multi"
coats = 1
litres = "0.5 L"
# a remark = 1.2.3.4.5.6.7.8.9.10.11.12.13.14.15.16.17.18.19.20.21.22.23.24.25.26.27.28.29.30.31.32
`
	p, err := carried(t, boat, logHead+laid(), "2027-05-14")
	x := next(t, p, err)
	if want := plannedJob(t, boat).Boat.Name; x.Name != want {
		t.Errorf("named %q, was %q", x.Name, want)
	}
	if x.Work.Launch.Given() || len(x.Work.Free) > 0 || len(x.Work.Other) > 0 || len(x.Tins) != 1 || len(x.Tins[0].Store) > 0 || len(x.Used) > 0 || x.Work.Hands != 2 || len(x.Work.Weekdays) != 2 {
		t.Errorf("what was of one season: %+v %+v %+v", x.Work, x.Tins, x.Used)
	}
	nothingLost(t, strings.Replace(boat, "# not a remark", "", 1), must(carried(t, strings.Replace(boat, "# not a remark", "", 1), logHead+laid(), "2027-05-14")))
	if !strings.Contains(string(p.Text), "work.launch = 2027-05-01  (") {
		t.Error("the launch is not among what was set aside")
	}
}

// A look is of one haul-out: what was flaking or wasted then is not judged at the next as if it had just been seen, and nothing of it is lost.
func TestALookIsOfOneHaulOut(t *testing.T) {
	boat := sheet + `
[survey]
by = "a surveyor"
on = 2027-03-20
[[seen]]
part = "hull"
state = "flaking"
[[moisture]]
part = "hull"
instrument = "capacitance-meter"
meter = "a hand meter"
scale = "0 to 30"
reading = 14
[[fitting]]
name = "shaft anode"
`
	if !plannedJob(t, boat).Boat.Survey.Given() {
		t.Fatal("nothing was seen of the boat before")
	}
	p, err := carried(t, boat, logHead+laid(), "2028-05-14")
	if x := next(t, p, err); x.Survey.Given() {
		t.Errorf("the next boat file still says %+v", x.Survey)
	}
	nothingLost(t, boat, p)
}

// Whatever boat can be planned is carried on to one that can.
func FuzzPassport(f *testing.F) {
	f.Add(sheet)
	f.Add(base)
	f.Add(base + putOn)
	for _, name := range []string{"haulouts/boat-2028.toml", "haulouts/boat-2030.toml", "boats/steel.toml", "boats/planing.toml", "boats/trailer.toml"} {
		text, err := os.ReadFile("../examples/" + name)
		if err != nil {
			f.Fatal(err)
		}
		f.Add(string(text))
	}
	b := tables.Default()
	f.Fuzz(func(t *testing.T, text string) {
		files := sheets(text)
		boat, err := antifoul.ReadBoat(files, "boat.toml")
		if err != nil || boat.On.Year() > 9000 || boat.On.Year() < 1900 || boat.On.Year() > 2190 {
			return
		}
		j, err := antifoul.Plan(b, boat)
		if err != nil {
			return
		}
		on := boat.On.AddMonths(20)
		l, err := j.Logged(wholeLog(j, boat.On.AddMonths(3), on), time.Time{})
		if err != nil {
			return // more coats than a day has hours
		}
		p, err := j.Passport(l, files, "boat.toml", on)
		if err != nil {
			if _, ok := errors.AsType[finding.Faults](err); !ok {
				t.Fatal(err)
			}
			return
		}
		files["boat.toml"] = &fstest.MapFile{Data: p.Text}
		again, err := antifoul.ReadBoat(files, "boat.toml")
		if err == nil {
			_, err = antifoul.Plan(b, again)
		}
		if err != nil {
			t.Errorf("carried on, and then: %v\n%s", err, p.Text)
		}
	})
}

// Whatever log can be read is held against the plan, and gives a boat file that can be read and planned, or faults.
func FuzzLog(f *testing.F) {
	boat, err := antifoul.ReadBoat(fstest.MapFS{"boat.toml": {Data: []byte(sheet)}}, "boat.toml")
	if err != nil {
		f.Fatal(err)
	}
	b := tables.Default()
	j, err := antifoul.Plan(b, boat)
	if err != nil {
		f.Fatal(err)
	}
	on, _ := quantity.ParseDate("2029-04-10")
	files := fstest.MapFS{"boat.toml": {Data: []byte(sheet)}}
	f.Add(logHead + laid(`litres = "0.5 L"`, `wet_film = ["4 mil to 5 mil"]`, `thinner = "5 %"`, `air = "12 degC"`, `humidity = "64 %"`, `zones = ["rudder"]`))
	f.Add(logHead + "launched = 2027-05-01\nhauled = 2028-05-01\n" + laid(`part = "hull"`, `litres = "5 L"`, `colour = "black"`) + laid(`part = "hull"`, `layer = "extra"`, `zones = ["edges"]`, `begun = "2027-04-11 09:00"`, `ended = "2027-04-11 10:00"`, `litres = "1 L"`) +
		"[[gauged]]\non = 2027-04-12\npart = \"hull\"\nzone = \"flat\"\nlayer = \"working\"\ncoating = \"ablative-cuprous-multi\"\nfilm = [\"2 mil\", \"60 um\", \"90 um\"]\n" +
		"[[look]]\non = 2028-04-20\npart = \"hull\"\nzone = \"flat\"\nfilm = \"1.5 mil\"\nstate = \"worn\"\n[[look]]\non = 2028-04-20\npart = \"hull\"\nzone = \"edges\"\nsignal = true\n")
	f.Add(logHead + laid(`part = "hull"`, `layer = "undercoat"`, `coating = "silicone-tie-coat"`) + "[[task]]\npart = \"hull\"\ndo = \"strip\"\ndown_to = \"bare\"\nbegun = 2027-04-09T09:00:00Z\n")
	f.Fuzz(func(t *testing.T, text string) {
		l, err := readLog(j, text)
		if err != nil {
			return
		}
		k, err := j.Logged(l, time.Time{})
		if err != nil {
			t.Fatalf("read without a fault, and then: %v", err)
		}
		p, err := j.Passport(k, files, "boat.toml", on)
		if err != nil {
			if _, ok := errors.AsType[finding.Faults](err); !ok {
				t.Fatal(err)
			}
			return
		}
		again, err := antifoul.ReadBoat(fstest.MapFS{"boat.toml": {Data: p.Text}}, "boat.toml")
		if err == nil {
			_, err = antifoul.Plan(b, again)
		}
		if err != nil {
			t.Errorf("carried on, and then: %v\n%s", err, p.Text)
		}
	})
}

// share is one part of so many.
func share(n int) decimal.Decimal {
	return decimal.NewFromInt(1).DivRound(decimal.NewFromInt(int64(n)), 6)
}

// A gauge outranks litres and comb: in the layers, in what lies there, and in the record by which wear is fitted, which it narrows. Laid on the rudder are 170 to
// 285 um by litres (see TestWhatLiesOnTheRudder).
func TestGaugedBeforeTheLaunch(t *testing.T) {
	j := plannedJob(t, sheet)
	log := wholeRudder(t, j, nil)
	read := func(film string) string {
		return log + "[[gauged]]\non = 2027-04-20\npart = \"rudder\"\nzone = \"rudder\"\nlayer = \"working\"\ncoating = \"ablative-cuprous-multi\"\nfilm = " + film + "\nreadings = 20\n"
	}
	for film, want := range map[string]finding.ID{`["190 um", "200 um", "210 um"]`: antifoul.RuleLogSurvey, `"285 um"`: antifoul.RuleLogSurvey, `"286 um"`: antifoul.RuleLogSurveyOther, `"170 um"`: antifoul.RuleLogSurvey, `"169 um"`: antifoul.RuleLogSurveyOther} {
		l := logged(t, j, read(film), "")
		i := slices.IndexFunc(l.Layers, func(x antifoul.LoggedLayer) bool { return x.Part == "rudder" && x.Layer == "working" })
		if !l.Layers[i].Findings.Has(want) {
			t.Errorf("%s: %s", film, rulesOf(l.Layers[i].Findings))
		}
		for _, f := range l.Layers[i].Findings {
			if said := j.Book.Say(f, quantity.Metric); strings.Contains(said, "(not stated)") {
				t.Error(said)
			}
		}
	}
	x := next(t, must(carried(t, sheet, read(`["190 um", "200 um", "210 um"]`), "2027-05-14")), nil)
	if got := knownBy(x); !strings.HasSuffix(lies(x, "rudder"), "/190-210/sound") || !strings.Contains(got, "by gauge, 20 readings on 2027-04-20") {
		t.Errorf("%s, known by %q", lies(x, "rudder"), got)
	}
	afloat := func(text string) antifoul.LoggedWear {
		text = strings.Replace(text, logHead, logHead+"launched = 2027-05-01\nhauled = 2028-10-07\n", 1)
		l := logged(t, j, text+"[[look]]\non = 2028-10-01\npart = \"rudder\"\nzone = \"rudder\"\nfilm = \"90 um\"\nreadings = 20\n", "")
		return l.Worn[0]
	}
	by, without := afloat(read(`["190 um", "200 um", "210 um"]`)), afloat(log)
	if by.Record.Film.High.String() != "210 um" || by.After.High/by.After.Low >= without.After.High/without.After.Low {
		t.Errorf("laid %v: wear from %v; without a gauge %v", by.Record.Film, by.After, without.After)
	}
}
