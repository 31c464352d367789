package joblog_test

import (
	"strconv"
	"strings"
	"testing"
	"time"

	"boatyard.example/bottomwork/antifoul/joblog"
	"boatyard.example/bottomwork/compat"
	"boatyard.example/bottomwork/tables"
)

// entry is one section; each line given takes the place of the line of the same key, or is added. "key" alone takes it out.
func entry(kind string, base []string, lines ...string) string {
	base = append([]string{}, base...)
	for _, l := range lines {
		key, _, given := strings.Cut(l, " = ")
		found := false
		for i, b := range base {
			if strings.HasPrefix(b, key+" = ") {
				found = true
				if base[i] = l; !given {
					base[i] = ""
				}
			}
		}
		if !found {
			base = append(base, l)
		}
	}
	return "[[" + kind + "]]\n" + strings.Join(base, "\n") + "\n"
}

func coat(lines ...string) string {
	return entry("coat", []string{`part = "hull"`, `layer = "working"`, `coat = 1`, `coating = "hard-cuprous"`, `begun = "2027-04-11 10:00"`, `ended = "2027-04-11 11:00"`}, lines...)
}

func task(lines ...string) string {
	return entry("task", []string{`part = "hull"`, `do = "strip"`, `begun = "2027-04-09 10:00"`, `ended = "2027-04-09 11:00"`}, lines...)
}

func survey(lines ...string) string {
	return entry("gauged", []string{`on = 2027-04-12`, `part = "hull"`, `zone = "flat"`, `layer = "working"`, `coating = "hard-cuprous"`, `film = "60 um"`}, lines...)
}

func look(lines ...string) string {
	return entry("look", []string{`on = 2027-08-01`, `part = "hull"`, `zone = "flat"`, `signal = false`}, lines...)
}

const (
	head   = "[log]\nversion = 1\n"
	afloat = head + "launched = 2027-05-01\n"
)

// On, just under and just over each boundary: "" is no fault, else the one fault has this key and says these words.
func TestBoundaries(t *testing.T) {
	for i, c := range []struct{ text, key, word string }{
		{head + coat(), "", ""},
		{head + coat(`air = "12 degC"`, `dew_point = "12 degC"`), "", ""},
		{head + coat(`air = "12 degC"`, `dew_point = "12.1 degC"`), "coat[1].dew_point", "no higher than the air, 12 degC"},
		{head + coat(`air = "12 degC"`, `dew_point = "53.7 degF"`), "coat[1].dew_point", "no higher than the air"}, // 53.6 degF is 12 degC
		{head + coat(`air = "12 degC"`, `dew_point = "53.6 degF"`), "", ""},
		{head + coat(`dew_point = "12 degC"`), "", ""},
		{head + coat(`dew_point = "-12 degC"`), "", ""},
		{head + coat(`air = "12 degC"`), "", ""},
		{head + coat(`air = "-12 degC"`), "", ""},
		{head + coat(`dew_point = "-90 degC"`), "", ""},
		{head + coat(`dew_point = "-90.1 degC"`), "coat[1].dew_point", "from -90 degC"},
		{head + coat(`dew_point = "60 degC"`), "", ""},
		{head + coat(`dew_point = "60.1 degC"`), "coat[1].dew_point", "to 60 degC"},
		{head + coat(`humidity = "100 %"`), "", ""},
		{head + coat(`humidity = "100.1 %"`), "coat[1].humidity", "at most 100 %"},
		{head + coat(`humidity = "0.1 %"`), "", ""},
		{head + coat(`humidity = "0 %"`), "coat[1].humidity", "more than 0 %"},
		{head + coat(`air = "60 degC"`), "", ""},
		{head + coat(`air = "61 degC"`), "coat[1].air", "to 60 degC"},
		{head + coat(`surface = "-45 degC"`), "", ""},
		{head + coat(`surface = "-46 degC"`), "coat[1].surface", "from -45 degC"},
		{head + coat(`thinner = "0 %"`), "", ""},
		{head + coat(`thinner = "100 %"`), "", ""},
		{head + coat(`thinner = "100.1 %"`), "coat[1].thinner", "to 100 %"},
		{head + coat(`thinner = "-1 %"`), "coat[1].thinner", "from 0 %"},
		{head + coat(`litres = "0 L"`), "coat[1].litres", "more than zero"},
		{head + coat(`litres = "5000 L"`), "", ""},
		{head + coat(`litres = "5001 L"`), "coat[1].litres", "5000 L"},
		{head + coat(`wet_film = ["10000 um"]`), "", ""},
		{head + coat(`wet_film = ["10001 um"]`), "coat[1].wet_film[1]", "10000 um"},
		{head + coat(`wet_film = ["100 um to 100 um"]`), "coat[1].wet_film[1]", "the longer last"},
		{head + coat(`ended`), "", ""},
		{head + coat(`ended = "2027-04-11 10:01"`), "", ""},
		{head + coat(`ended = "2027-04-11 10:00"`), "coat[1].ended", "after it was begun"},
		{head + coat(`ended = "2027-04-12 10:00"`), "", ""},
		{head + coat(`ended = "2027-04-12 10:01"`), "coat[1].ended", "24 hours"},
		{head + coat(`begun`), "coat[1].begun", "2027-04-17 09:30"},
		{head + coat(`part`), "coat[1].part", "a part"},
		{head + coat(`layer`), "coat[1].layer", "undercoat, signal, extra, working"},
		{head + coat(`coat`), "coat[1].coat", "from 1 to 50"},
		{head + coat(`coat = 50`), "", ""},
		{head + coat(`coat = 51`), "coat[1].coat", "from 1 to 50"},
		{head + coat(`coating`), "coat[1].coating", "coating"},
		{head + coat(`coating = "ablative-old"`), "coat[1].coating", ""}, // an old film is not laid
		{head + coat(`coating = "foul-release-film"`), "", ""},           // a sheet is

		// A key that no section has.
		{head + coat(`sun = true`), "coat[1].sun", "rain"},
		{head + task(`sun = true`), "task[1].sun", "down_to"},
		{head + coat() + survey(`sun = true`), "gauged[1].sun", "film"},
		{afloat + look(`sun = true`), "look[1].sun", "signal"},
		{head + coat() + "[[layer]]\nsun = true\n", "layer", "gauged"},

		// Two coats on one place.
		{head + coat() + coat(`coat = 2`, `begun = "2027-04-11 11:00"`, `ended = "2027-04-11 12:00"`), "", ""},
		{head + coat() + coat(`coat = 2`, `begun = "2027-04-11 10:59"`, `ended = "2027-04-11 12:00"`), "coat[2].begun", "one coat at a time"},
		{head + coat(`zones = ["flat"]`) + coat(`zones = ["edges"]`, `coat = 2`, `begun = "2027-04-11 10:30"`), "", ""},
		{head + coat(`zones = ["flat"]`) + coat(`coat = 2`, `begun = "2027-04-11 10:30"`), "coat[2].begun", "one coat at a time"},
		{head + coat() + coat(`part = "keel"`), "", ""},
		{head + coat() + coat(`begun = "2027-04-12 10:00"`, `ended = "2027-04-12 11:00"`), "coat[2].coat", "once on a place"},
		{head + coat(`zones = ["flat"]`) + coat(`zones = ["edges"]`), "", ""}, // the other half of the same coat
		{head + coat(`coat = 3`) + coat(`coat = 2`, `begun = "2027-04-12 10:00"`, `ended = "2027-04-12 11:00"`), "coat[2].coat", "coat 3, begun 2027-04-11 10:00, before coat 2"},
		{head + coat(`coat = 2`, `begun = "2027-04-12 10:00"`, `ended = "2027-04-12 11:00"`) + coat(`coat = 1`), "", ""}, // the file may say it in any order
		{head + coat() + coat(`coat = 2`, `begun = "2027-04-11 12:00"`, `ended = "2027-04-11 13:00"`) + coat(`coat = 3`, `begun = "2027-04-11 12:59"`, `ended = "2027-04-11 14:00"`), "coat[3].begun", "2027-04-11 12:59, with coat[2] from 2027-04-11 12:00 to 2027-04-11 13:00"},
		{head + coat() + coat(`coat`, `begun = "2027-04-12 10:00"`, `ended = "2027-04-12 11:00"`), "coat[2].coat", "missing"}, // of a coat without a number nobody knows
		{head + coat(`coat`, `begun = "2027-04-12 10:00"`, `ended = "2027-04-12 11:00"`) + coat(), "coat[1].coat", "missing"}, // whether it was the same or an earlier one
		{head + coat(`coat = 3`) + coat(`coat = 1`, `layer = "extra"`, `begun = "2027-04-12 10:00"`, `ended = "2027-04-12 11:00"`), "", ""},

		{head + task(), "", ""},
		{head + task(`down_to = "epoxy-barrier"`), "", ""},
		{head + task(`down_to = "bare"`, `zones = ["flat"]`), "task[1].down_to", "the whole part"},
		{head + task(`down_to = "bare"`, `do = "abrade"`), "task[1].down_to", "strip"},
		{head + task(`do`), "task[1].do", "wash"},
		{head + task(`part`), "task[1].part", "a part"},
		{head + task(`zones = ["flat", "edges"]`), "", ""},
		{head + task(`zones = ["bow"]`), "task[1].zones", "flat"},
		{head + task(`zones = ["flat", "flat"]`), "task[1].zones", "once"},
		{head + task(`begun`), "task[1].begun", "2027-04-17 09:30"},
		{head + task(`ended = "2027-04-09 10:00"`), "task[1].ended", "after it was begun"},
		{head + coat() + task(), "", ""},
		{afloat + coat() + look(), "", ""},

		// The launch.
		{afloat + coat(`begun = "2027-05-01 08:00"`, `ended = "2027-05-01 09:00"`), "", ""},
		{afloat + coat(`begun = "2027-05-02 08:00"`, `ended = "2027-05-02 09:00"`), "coat[1].begun", "before the launch"},
		{afloat + task(`begun = "2027-05-02 08:00"`, `ended`), "task[1].begun", "before the launch"},
		{afloat + "hauled = 2027-05-02\n" + coat(), "", ""},
		{afloat + "hauled = 2027-05-01\n" + coat(), "log.hauled", "after the launch"},
		{head + "hauled = 2027-05-02\n" + coat(), "log.launched", "the day of the launch"},
		{head + coat() + survey(), "", ""},
		{head + coat() + survey(`on = 2027-04-11`), "", ""},
		{head + coat() + survey(`on = 2027-04-10`), "gauged[1].coating", "laid by then"},
		{head + coat() + survey(`layer = "signal"`), "gauged[1].coating", "laid by then"},
		{head + coat() + survey(`coating = "hard-copper-free"`), "gauged[1].coating", "laid by then"},
		{head + coat(`zones = ["edges"]`) + survey(), "gauged[1].coating", "laid by then"},
		{head + coat() + survey(`film = "0 um"`), "gauged[1].film", "above zero"},
		{head + coat() + survey(`film = "10000 um"`), "", ""},
		{head + coat() + survey(`film = ["50 um", "50 um", "50 um"]`), "", ""},
		{head + coat() + survey(`film = "10001 um"`), "gauged[1].film", "10000 um"},
		{head + coat() + survey(`film`), "gauged[1].film", "of that layer alone"},
		{head + coat() + survey(`zone`), "gauged[1].zone", "a zone"},
		{head + coat() + survey(`zone = "bow"`), "gauged[1].zone", "flat"},
		{head + coat() + survey(`part`), "gauged[1].part", "a part"},
		{head + coat() + survey(`readings = 1`), "", ""},
		{head + coat() + survey(`readings = 0`), "gauged[1].readings", "from 1 to 100000"},
		{head + coat() + survey(`readings = 100000`), "", ""},
		{head + coat() + survey(`readings = 100001`), "gauged[1].readings", "from 1 to 100000"},
		{head + coat() + survey(`on`), "gauged[1].on", "2027-04-20"},
		{afloat + coat() + survey(`on = 2027-05-01`), "", ""},
		{afloat + coat() + survey(`on = 2027-05-02`), "gauged[1].on", "[[look]]"},
		{afloat + look(), "", ""},
		{afloat + look(`on = 2027-05-02`), "", ""},
		{afloat + look(`on = 2027-05-01`), "look[1].on", "after the launch"},
		{head + look(), "log.launched", "afloat"},
		{afloat + look(`signal`), "look[1].signal", "true or false"},
		{afloat + look(`signal`, `state = "worn"`), "", ""},
		{afloat + look(`signal`, `film = "0 um"`), "", ""},
		{afloat + look(`signal = true`, `film = "0 um"`), "", ""},
		{afloat + look(`signal = true`, `film = "1 um"`), "look[1].film", "worn through"},
		{afloat + look(`film = "-1 um"`), "look[1].film", "from 0"},
		{afloat + look(`film = "10000 um"`), "", ""},
		{afloat + look(`film = "10001 um"`), "look[1].film", "to 10000 um"},
		{afloat + look(`film = "60 um"`, `readings = 1`), "", ""},
		{afloat + look(`film = "60 um"`, `readings = 0`), "look[1].readings", "from 1 to 100000"},
		{afloat + look(`film = "60 um"`, `readings = 100000`), "", ""},
		{afloat + look(`film = "60 um"`, `readings = 100001`), "look[1].readings", "from 1 to 100000"},
		{afloat + look(`readings = 2`), "look[1].film", "the mean"},
		{afloat + look(`signal = true`) + look(`on = 2027-08-02`), "look[2].signal", "shows until she is painted"},
		{afloat + look(`signal = true`) + look(`on = 2027-08-02`, `zone = "edges"`), "", ""},
		{afloat + look(`signal = true`) + look(`on = 2027-08-02`, `signal`, `film = "1 um"`), "look[2].signal", "shows until she is painted"},
		{afloat + look(`signal = true`) + look(`on = 2027-08-02`, `signal`, `film = "0 um"`), "", ""},
		{afloat + look() + look(`on = 2027-07-31`), "look[2].on", "in order"},
		{afloat + look() + look(), "", ""},
	} {
		t.Run(strconv.Itoa(i), func(t *testing.T) {
			_, faults := read(t, c.text)
			switch {
			case c.key == "" && len(faults) > 0:
				t.Errorf("%s\nhas the faults\n%v", c.text, faults)
			case c.key != "" && (len(faults) != 1 || faults[0].Key != c.key || !strings.Contains(faults[0].Error(), c.word)):
				t.Errorf("%s\nhas the faults\n%v\nwant one of %s that says %q", c.text, faults, c.key, c.word)
			}
		})
	}
}

// A log made in Go needs no version; one of a version that cannot be is refused, a later one with a word of what to do.
func TestLogMadeInGo(t *testing.T) {
	l := joblog.Log{Coats: []joblog.Coat{{
		Span: joblog.Span{Begun: time.Date(2027, 4, 17, 9, 0, 0, 0, time.UTC)},
		Part: "hull", Layer: compat.Working, Number: 1, Coating: "ablative-cuprous-multi", Colour: "black",
	}}}
	for version, want := range map[int]string{0: "", 1: "", -1: "1, or 0 for a log made in Go", 2: "a later one wrote this"} {
		l.Version = version
		faults := l.Check(tables.Default())
		switch {
		case want == "" && len(faults) > 0:
			t.Errorf("version %d: %v", version, faults)
		case want != "" && (len(faults) != 1 || faults[0].Key != "log.version" || !strings.Contains(faults[0].Want, want)):
			t.Errorf("version %d: %v", version, faults)
		}
	}
}
