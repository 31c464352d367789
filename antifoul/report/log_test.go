package report_test

import (
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"
	"testing/fstest"
	"time"

	"boatyard.example/bottomwork/antifoul"
	"boatyard.example/bottomwork/antifoul/report"
	"boatyard.example/bottomwork/tables/quantity"
)

// aLog is a log of the sloop in which every key can be made to matter.
const aLog = `
[log]
version = 1
boat = "Pintail"
launched = 2027-04-24
hauled = 2028-10-01
[[task]]
part = "hull"
zones = ["flat"]
do = "abrade"
begun = "2027-04-02 09:00"
ended = "2027-04-02 11:00"
who = "A. Reed"
deviations = "by hand"
[[task]]
part = "keel"
do = "strip"
down_to = "epoxy-barrier"
begun = "2027-04-02 13:00"
[[coat]]
part = "hull"
layer = "working"
coat = 1
coating = "ablative-cuprous-multi"
colour = "black"
zones = ["flat", "waterline"]
begun = "2027-04-03 09:00"
ended = "2027-04-03 11:00"
litres = "2.4 L"
batch = "B1"
thinner = "4 %"
air = "12 degC"
surface = "11 degC"
humidity = "64 %"
dew_point = "5.4 degC"
rain = false
wet_film = ["100 um"]
who = "M. Reed"
deviations = "dusk"
[[gauged]]
on = 2027-04-10
part = "hull"
zone = "flat"
layer = "working"
coating = "ablative-cuprous-multi"
film = "60 um"
readings = 9
by = "ultrasonic"
who = "a surveyor"
[[look]]
on = 2028-09-01
part = "hull"
zone = "waterline"
signal = false
film = "20 um"
readings = 3
state = "worn"
who = "a diver"
`

// logCases changes one key each.
var logCases = []struct{ key, old, new string }{
	{"log.boat", `boat = "Pintail"`, `boat = "Plover"`},
	{"log.launched", "launched = 2027-04-24", "launched = 2027-04-25"},
	{"coat.part", "part = \"hull\"\nlayer", "part = \"keel\"\nlayer"},
	{"coat.layer", "layer = \"working\"\ncoat = 1", "layer = \"extra\"\ncoat = 1"},
	{"coat.coat", "coat = 1", "coat = 2"},
	{"coat.coating", "coating = \"ablative-cuprous-multi\"\ncolour", "coating = \"hard-cuprous\"\ncolour"},
	{"coat.colour", `colour = "black"`, `colour = "navy"`},
	{"coat.zones", `zones = ["flat", "waterline"]`, `zones = ["flat"]`},
	{"coat.begun", `begun = "2027-04-03 09:00"`, `begun = "2027-04-03 09:30"`},
	{"coat.ended", `ended = "2027-04-03 11:00"`, `ended = "2027-04-03 11:30"`},
	{"coat.litres", `litres = "2.4 L"`, `litres = "2.2 L"`},
	{"coat.batch", `batch = "B1"`, `batch = "B2"`},
	{"coat.thinner", `thinner = "4 %"`, `thinner = "8 %"`},
	{"coat.air", `air = "12 degC"`, `air = "12.5 degC"`},
	{"coat.surface", `surface = "11 degC"`, `surface = "4 degC"`},
	{"coat.humidity", `humidity = "64 %"`, `humidity = "66 %"`},
	{"coat.dew_point", `dew_point = "5.4 degC"`, `dew_point = "5.8 degC"`},
	{"coat.rain", "rain = false", "rain = true"},
	{"coat.wet_film", `wet_film = ["100 um"]`, `wet_film = ["100 um to 125 um"]`},
	{"coat.who", `who = "M. Reed"`, `who = "T. Reed"`},
	{"coat.deviations", `deviations = "dusk"`, `deviations = "dawn"`},
	{"task.part", "part = \"keel\"\ndo", "part = \"drive leg\"\ndo"},
	{"task.do", `do = "abrade"`, `do = "wash"`},
	{"task.zones", `zones = ["flat"]`, `zones = ["edges"]`},
	{"task.down_to", `down_to = "epoxy-barrier"`, `down_to = "bare"`},
	{"task.begun", `begun = "2027-04-02 09:00"`, `begun = "2027-04-02 09:30"`},
	{"task.ended", `ended = "2027-04-02 11:00"`, `ended = "2027-04-02 11:30"`},
	{"task.who", `who = "A. Reed"`, `who = "B. Reed"`},
	{"task.deviations", `deviations = "by hand"`, `deviations = "by machine"`},
	{"gauged.on", "on = 2027-04-10", "on = 2027-04-11"},
	{"gauged.part", "part = \"hull\"\nzone = \"flat\"", "part = \"hull\"\nzone = \"waterline\""}, // it must be one that has the coat
	{"gauged.zone", "part = \"hull\"\nzone = \"flat\"", "part = \"hull\"\nzone = \"waterline\""},
	{"gauged.layer", "zone = \"flat\"\nlayer = \"working\"", "zone = \"flat\"\nlayer = \"extra\""},
	{"gauged.coating", "coating = \"ablative-cuprous-multi\"\nfilm", "coating = \"hard-cuprous\"\nfilm"},
	{"gauged.film", `film = "60 um"`, `film = "70 um"`},
	{"gauged.readings", "readings = 9", "readings = 10"},
	{"gauged.by", `by = "ultrasonic"`, `by = "a gauge"`},
	{"gauged.who", `who = "a surveyor"`, `who = "the yard"`},
	{"look.on", "on = 2028-09-01", "on = 2028-09-02"},
	{"look.part", "part = \"hull\"\nzone = \"waterline\"\nsignal", "part = \"keel\"\nzone = \"keel\"\nsignal"},
	{"look.zone", "zone = \"waterline\"\nsignal", "zone = \"edges\"\nsignal"},
	{"look.signal", "signal = false\nfilm = \"20 um\"", "signal = true\nfilm = \"0 um\""},
	{"look.film", `film = "20 um"`, `film = "25 um"`},
	{"look.readings", "readings = 3", "readings = 4"},
	{"look.state", `state = "worn"`, `state = "chalking"`},
	{"look.who", `who = "a diver"`, `who = "the owner"`},
}

// logElsewhere are keys that decide in the passport or in reading, and have their tests there.
var logElsewhere = []string{"log.version", "log.hauled"}

// told writes the report of a log, or its faults.
func toldLog(t *testing.T, j *antifoul.Job, text string) string {
	t.Helper()
	l, err := antifoul.ReadLog(j.Book, j.Boat, fstest.MapFS{"log.toml": {Data: []byte(text)}}, "log.toml", nil)
	if err != nil {
		return err.Error()
	}
	k, err := j.Logged(l, time.Time{})
	if err != nil {
		t.Fatal(err)
	}
	var out strings.Builder
	if err := report.Log(&out, j, k, report.Options{}); err != nil {
		t.Fatal(err)
	}
	return out.String()
}

// Nothing of a log is dropped: each key, changed alone, changes the report of the log, or is refused beside what else stands there.
func TestEveryLogKeyMatters(t *testing.T) {
	j := job(t, "sloop.toml", func(*antifoul.Boat) {})
	before := toldLog(t, j, aLog)
	if !strings.HasPrefix(before, "JOB LOG OF PINTAIL") {
		t.Fatal(before)
	}
	for _, word := range []string{"(not stated)", "%!", "log-"} {
		if strings.Contains(strings.ReplaceAll(before, "log.toml", ""), word) {
			t.Errorf("%q in the report", word)
		}
	}
	for _, c := range logCases {
		if n := strings.Count(aLog, c.old); n != 1 && !strings.HasPrefix(c.key, "gauged") {
			t.Errorf("%s: the log holds %q %d times", c.key, c.old, n)
		}
		if after := toldLog(t, j, strings.Replace(aLog, c.old, c.new, 1)); after == before {
			t.Errorf("%s changes nothing", c.key)
		}
	}
}

var keyInLog = regexp.MustCompile(`(?:Text|Word|Texts|Int|YesNo|Date|Raw|Amount\[[a-z.A-Z]+\]|Range\[[a-z.A-Z]+\]|read)\((?:r, )?"([a-z_]+)"`)

// Every key that the reader of logs reads stands in the list above and in the README, and the other way round.
func TestLogKeysAreAllListed(t *testing.T) {
	all := slices.Clone(logElsewhere)
	for _, c := range logCases {
		all = append(all, c.key)
	}
	read := 0
	for _, file := range []string{"read.go", "moment.go"} {
		src, err := os.ReadFile(filepath.Join("..", "joblog", file))
		if err != nil {
			t.Fatal(err)
		}
		for _, m := range keyInLog.FindAllStringSubmatch(string(src), -1) {
			read++
			if !slices.ContainsFunc(all, func(k string) bool { return strings.HasSuffix(k, "."+m[1]) }) {
				t.Errorf("%s reads %q, and no test shows that it matters", file, m[1])
			}
		}
	}
	if read < 35 {
		t.Fatalf("found %d keys, expected at least 35: does the pattern still fit?", read)
	}
	readme, err := os.ReadFile("../../README.md")
	if err != nil {
		t.Fatal(err)
	}
	for _, k := range all {
		if !strings.Contains(string(readme), "`"+k+"`") {
			t.Errorf("README.md does not list the log key `%s`", k)
		}
	}
	for _, m := range regexp.MustCompile("\\| `((?:log|coat|task|gauged|look)\\.[a-z_]+)`").FindAllStringSubmatch(string(readme), -1) {
		if !slices.Contains(all, m[1]) {
			t.Errorf("README.md lists `%s`, which nobody reads", m[1])
		}
	}
}

// A log is told in text, Markdown or HTML, and needs a job.
func TestLogFormats(t *testing.T) {
	j := job(t, "sloop.toml", func(*antifoul.Boat) {})
	var out strings.Builder
	for _, o := range []report.Options{{Format: report.Calendar}, {Format: "papyrus"}} {
		if err := report.Log(&out, j, antifoul.Logged{}, o); err == nil || out.Len() > 0 {
			t.Errorf("%s: error %v, %d bytes", o.Format, err, out.Len())
		}
	}
	if err := report.Log(&out, &antifoul.Job{}, antifoul.Logged{}, report.Options{}); err == nil || out.Len() > 0 {
		t.Error("an empty job is told")
	}
	if err := report.Log(&out, j, antifoul.Logged{}, report.Options{Format: report.Markdown, Units: quantity.US}); err != nil || !strings.HasPrefix(out.String(), "# Job log of") {
		t.Errorf("%v: %s", err, out.String())
	}
}
