package joblog_test

import (
	"errors"
	"flag"
	"os"
	"strings"
	"testing"
	"testing/fstest"
	"time"
	_ "time/tzdata" // the zones of these tests, where the system has none

	"github.com/google/go-cmp/cmp"

	"boatyard.example/bottomwork/antifoul/joblog"
	"boatyard.example/bottomwork/compat"
	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

var update = flag.Bool("update", false, "write the golden file; read it by eye before committing")

func london(t *testing.T) *time.Location {
	t.Helper()
	loc, err := time.LoadLocation("Europe/London")
	if err != nil {
		t.Fatal(err)
	}
	return loc
}

func read(t *testing.T, text string) (joblog.Log, finding.Faults) {
	t.Helper()
	l, err := joblog.Read(tables.Default(), fstest.MapFS{"log.toml": {Data: []byte(text)}}, "log.toml", london(t))
	faults, ok := errors.AsType[finding.Faults](err)
	if err != nil && !ok {
		t.Fatalf("the error is no Faults: %v", err)
	}
	return l, faults
}

func file(t *testing.T, name string) string {
	t.Helper()
	text, err := os.ReadFile("testdata/" + name)
	if err != nil {
		t.Fatal(err)
	}
	return string(text)
}

func TestReadAll(t *testing.T) {
	l, faults := read(t, file(t, "good.toml"))
	if len(faults) > 0 {
		t.Fatal(faults)
	}
	if l.Name != "log.toml" || l.Version != 1 || l.Boat != "Test boat" || l.Launched.String() != "2027-05-01" || l.Hauled.Given() {
		t.Errorf("the head: %+v", l)
	}
	k := l.Coats[0]
	// British Summer Time is an hour before UTC.
	if k.Begun.UTC().Format(time.RFC3339) != "2027-04-11T09:00:00Z" || k.Ended.UTC().Format(time.RFC3339) != "2027-04-11T10:45:00Z" || !k.Until().Equal(k.Ended) {
		t.Errorf("from %s to %s", k.Begun, k.Ended)
	}
	if k.Part != "hull" || k.Layer != compat.Working || k.Number != 1 || k.Coating != "ablative-cuprous-multi" || k.Colour != "black" || k.Zones[0] != "flat" ||
		k.Litres.String() != "2.4 L" || k.Batches[0] != "R17" || k.Thinner.String() != "5 %" || k.Air.Air.String() != "54 degF" || k.Surface.String() != "11 degC" ||
		k.Humidity.String() != "64 %" || k.DewPoint.String() != "5.4 degC" || k.Rain != quantity.No || len(k.Wet) != 2 || k.Wet[0].Dry.String() != "100 um" ||
		k.Wet[1].Wetted.String() != "5 mil" || k.Wet[1].Dry.Given() || len(k.Who) != 2 || k.Deviations[0] != "began late" {
		t.Errorf("the coat: %+v", k)
	}
	if x := l.Tasks[0]; x.Part != "hull" || x.Do != finding.Abrade || !x.All() || x.Who[0] != "A. Reed" || x.Ended.Sub(x.Begun) != 3*time.Hour {
		t.Errorf("the task: %+v", x)
	}
	if x := l.Surveys[0]; x.On.String() != "2027-04-20" || x.Part != "hull" || x.Zone != "flat" || x.Layer != compat.Working || x.Coating != "ablative-cuprous-multi" || x.Film.High.String() != "60 um" || x.Readings != 12 || x.By != "ultrasonic" || x.Who[0] != "a surveyor" {
		t.Errorf("the survey: %+v", x)
	}
	if x := l.Looks[0]; x.On.String() != "2027-09-12" || x.Zone != "flat" || x.Film.String() != "84 um" || x.Readings != 6 || x.State != "worn" || x.Signal.Said() {
		t.Errorf("the look: %+v", x)
	}
}

// Every fault of a bad log is told at once.
func TestAllFaults(t *testing.T) {
	_, faults := read(t, file(t, "bad.toml"))
	got := faults.Error() + "\n"
	if *update {
		if err := os.WriteFile("testdata/bad.golden", []byte(got), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	if diff := cmp.Diff(strings.Split(file(t, "bad.golden"), "\n"), strings.Split(got, "\n")); diff != "" {
		t.Errorf("testdata/bad.golden differs; read it by eye, then -update (-want +got):\n%s", diff)
	}
}

// What a later version wrote is refused with one fault, however little of it is understood.
func TestNewerVersion(t *testing.T) {
	_, faults := read(t, "[log]\nversion = 2\nphase_of_moon = \"full\"\n[[layer]]\nx = 1\n")
	if len(faults) != 1 || faults[0].Key != "log.version" || !strings.Contains(faults[0].Want, "a later one wrote this") {
		t.Errorf("%v", faults)
	}
	if _, faults := read(t, "[log]\nversion = 12\n"); len(faults) != 1 || faults[0].Got != "12" {
		t.Errorf("version 12: %v", faults)
	}
	if _, faults := read(t, "[log]\nboat = \"Merle\"\n"); len(faults) == 0 || !errors.Is(faults, finding.ErrMissing) || !strings.Contains(faults.Error(), "the form of the log, version = 1") {
		t.Errorf("no version: %v", faults)
	}
	for _, head := range []string{"[log]\n", "[log]\nversion = \"1\"\n", "[log]\nversion = 0\n", "[log]\nversion = -1\n"} {
		if _, faults := read(t, head+"[[task]]\npart = \"hull\"\ndo = \"wash\"\nbegun = \"2027-04-10 09:00\"\n"); len(faults) != 1 || faults[0].Key != "log.version" {
			t.Errorf("%q: %v", head, faults)
		}
	}
}

func TestNothingThere(t *testing.T) {
	if _, faults := read(t, "[log]\nversion = 1\n"); len(faults) != 1 || faults[0].Key != "coat" {
		t.Errorf("an empty log: %v", faults)
	}
	for _, text := range []string{"[[coat", "\x00", "coat = 1\n[log]\nversion = 1\n"} {
		if _, faults := read(t, text); len(faults) == 0 {
			t.Errorf("%q is read without a fault", text)
		}
	}
	if _, err := joblog.Read(tables.Default(), fstest.MapFS{}, "none.toml", nil); err == nil {
		t.Error("a file that is not there is read without a fault")
	}
}

// Moments are those of ISO 8601, in the extended form with a day of the month (ISO 8601-1:2019, 5.2.2.1 and 5.4.2.1; from memory), which TOML's own follow.
func TestMoments(t *testing.T) {
	at := func(begun string) string {
		l, faults := read(t, "[log]\nversion = 1\n[[task]]\npart = \"hull\"\ndo = \"wash\"\nbegun = "+begun+"\n")
		if len(faults) > 0 {
			return "fault: " + faults[0].Want
		}
		return l.Tasks[0].Begun.UTC().Format("2006-01-02T15:04:05Z")
	}
	for begun, want := range map[string]string{
		`"2027-01-17 09:30"`:          "2027-01-17T09:30:00Z",
		`"2027-01-17T09:30:15"`:       "2027-01-17T09:30:15Z",
		`"2027-07-17 09:30"`:          "2027-07-17T08:30:00Z", // summer time
		`2027-07-17T09:30:00`:         "2027-07-17T08:30:00Z",
		`2027-07-17 09:30:00`:         "2027-07-17T08:30:00Z",
		`2027-07-17T09:30:00Z`:        "2027-07-17T09:30:00Z",
		`"2027-07-17T09:30Z"`:         "2027-07-17T09:30:00Z",
		`"2027-07-17T09:30-05:00"`:    "2027-07-17T14:30:00Z",
		`"2027-07-17 09:30:00+05:30"`: "2027-07-17T04:00:00Z",
		`"2028-02-29 09:00"`:          "2028-02-29T09:00:00Z", // a leap year
		`"2027-12-31 23:59"`:          "2027-12-31T23:59:00Z",
		`"1900-01-01 00:00"`:          "1900-01-01T00:00:00Z", // the first year and the last
		`"2200-12-31 23:59"`:          "2200-12-31T23:59:00Z",
		// On 31 October 2027 the clock goes back from 2 to 1: half past one comes twice. On 28 March it goes forward from 1 to 2.
		`"2027-10-31 00:30"`:       "2027-10-30T23:30:00Z",
		`"2027-10-31 02:30"`:       "2027-10-31T02:30:00Z",
		`"2027-10-31T01:30+01:00"`: "2027-10-31T00:30:00Z",
		`"2027-10-31T01:30+00:00"`: "2027-10-31T01:30:00Z",
	} {
		if got := at(begun); got != want {
			t.Errorf("%s is read as %s, want %s", begun, got, want)
		}
	}
	for begun, word := range map[string]string{
		`"17.4.2027 9:30"`: "2027-04-17 09:30", `"2027-4-17 9:30"`: "2027-04-17 09:30", `"2027-02-29 09:00"`: "2027-04-17", `"2027-04-31 09:00"`: "2027-04-17",
		`"2027-04-17 24:30"`: "2027-04-17", `"2027-04-17"`: "an hour", `2027-04-17`: "an hour", `09:30:00`: "a day", `20270417`: "a day", `true`: "a day", `"2027-W15-6 09:30"`: "a day",
		`"1899-12-31 09:00"`: "1900", `"2201-01-01 09:00"`: "2200",
		`"2027-03-28 01:30"`: "put forward", `2027-03-28T01:30:00`: "put forward",
		`"2027-10-31 01:30"`: "twice: 2027-10-31T01:30+01:00 or 2027-10-31T01:30+00:00", `2027-10-31T01:30:00`: "twice",
	} {
		if got := at(begun); !strings.HasPrefix(got, "fault: ") || !strings.Contains(got, word) {
			t.Errorf("%s is read as %s, want a fault that says %q", begun, got, word)
		}
	}
}

// What is no moment is told as it was read: a number is not said to be missing.
func TestNoMoments(t *testing.T) {
	for begun, got := range map[string]string{`20270417`: "20270417", `true`: "true", `"soon"`: `"soon"`, `2027-04-17`: "2027-04-17"} {
		_, faults := read(t, head+task("begun = "+begun))
		if len(faults) != 1 || faults[0].Key != "task[1].begun" || !errors.Is(faults[0], finding.ErrValue) || faults[0].Got != got {
			t.Errorf("%s: %v", begun, faults)
		}
	}
}

// One moment is the same however it is written, and a log has no parts of a second.
func TestOneMoment(t *testing.T) {
	want := time.Date(2027, 7, 17, 8, 30, 0, 0, time.UTC)
	for _, begun := range []string{`"2027-07-17 09:30"`, `2027-07-17T09:30:00`, `2027-07-17T09:30:00.25`, `2027-07-17T08:30:00Z`} {
		l, faults := read(t, head+task("begun = "+begun, "ended"))
		if len(faults) > 0 || !l.Tasks[0].Begun.Equal(want) {
			t.Errorf("%s is %v, %v", begun, l.Tasks, faults)
		}
	}
}

// West and east of Greenwich the clock changes at other hours of UTC. New York goes from UTC-5 to UTC-4 on 14 March 2027 at 2, from 2 to 3, and back on 7 November from
// 2 to 1; Auckland from UTC+12 to UTC+13 on 26 September 2027, from 2 to 3, and back on 4 April from 3 to 2. Kiritimati keeps UTC+14 all the year, Pago Pago UTC-11.
// An empty moment is one that the clock does not show once.
func TestClocksOfOtherPlaces(t *testing.T) {
	for zone, moments := range map[string]map[string]string{
		"America/New_York": {
			"2027-03-14 01:59": "2027-03-14T06:59:00Z", "2027-03-14 02:30": "", "2027-03-14 03:00": "2027-03-14T07:00:00Z", "2027-03-14 08:00": "2027-03-14T12:00:00Z",
			"2027-11-07 00:59": "2027-11-07T04:59:00Z", "2027-11-07 01:30": "", "2027-11-07 02:00": "2027-11-07T07:00:00Z",
		},
		"Pacific/Auckland": {
			"2027-09-26 01:59": "2027-09-25T13:59:00Z", "2027-09-26 02:30": "", "2027-09-26 03:00": "2027-09-25T14:00:00Z",
			"2027-04-04 01:59": "2027-04-03T12:59:00Z", "2027-04-04 02:30": "", "2027-04-04 03:00": "2027-04-03T15:00:00Z",
		},
		"Pacific/Kiritimati": {"2027-04-04 03:00": "2027-04-03T13:00:00Z"},
		"Pacific/Pago_Pago":  {"2027-04-04 03:00": "2027-04-04T14:00:00Z"},
	} {
		loc, err := time.LoadLocation(zone)
		if err != nil {
			t.Fatal(err)
		}
		for begun, want := range moments {
			l, err := joblog.Read(tables.Default(), fstest.MapFS{"log.toml": {Data: []byte(head + task(`begun = "`+begun+`"`, "ended"))}}, "log.toml", loc)
			got := ""
			if err == nil {
				got = l.Tasks[0].Begun.UTC().Format("2006-01-02T15:04:05Z")
			}
			if got != want {
				t.Errorf("%s by the clock of %s is %q, want %q: %v", begun, zone, got, want, err)
			}
		}
	}
}

// Without a zone times are taken as they stand.
func TestNoZone(t *testing.T) {
	l, err := joblog.Read(tables.Default(), fstest.MapFS{"log.toml": {Data: []byte("[log]\nversion = 1\n[[task]]\npart = \"hull\"\ndo = \"wash\"\nbegun = \"2027-03-28 01:30\"\n")}}, "log.toml", nil)
	if err != nil || l.Tasks[0].Begun.Format("2006-01-02 15:04") != "2027-03-28 01:30" {
		t.Errorf("%v, %v", l.Tasks, err)
	}
}

// Whatever stands in a log, reading it answers with a log that passes its check, or with faults that say where.
func FuzzRead(f *testing.F) {
	for _, name := range []string{"testdata/good.toml", "testdata/bad.toml", "../../examples/haulouts/log-2027.toml", "../../examples/haulouts/log-2029.toml", "../../examples/boats/steel-log.toml"} {
		text, err := os.ReadFile(name)
		if err != nil {
			f.Fatal(err)
		}
		f.Add(string(text))
	}
	b := tables.Default()
	loc, err := time.LoadLocation("Europe/London")
	if err != nil {
		f.Fatal(err)
	}
	f.Fuzz(func(t *testing.T, text string) {
		l, err := joblog.Read(b, fstest.MapFS{"log.toml": {Data: []byte(text)}}, "log.toml", loc)
		if err == nil {
			if fs := l.Check(b); len(fs) > 0 {
				t.Errorf("read without a fault, and then: %v", fs)
			}
			return
		}
		faults, ok := errors.AsType[finding.Faults](err)
		if !ok {
			t.Fatalf("the error is no Faults: %v", err)
		}
		for _, x := range faults {
			if x.File != "log.toml" || x.Kind == nil || x.Key == "" && !errors.Is(x, finding.ErrSyntax) && !errors.Is(x, finding.ErrUnknownKey) { // a key may be empty: "" = 1
				t.Errorf("a fault that does not say where: %#v", x)
			}
		}
	})
}
