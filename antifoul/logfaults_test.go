package antifoul_test

import (
	"errors"
	"strings"
	"testing"

	"boatyard.example/bottomwork/tables/finding"
)

// Each fault of a log stands at its own section and key, and only once.
func TestLogFaultsOnceAndInTheirPlace(t *testing.T) {
	gauged := func(part, zone string) string {
		return "[[gauged]]\non = 2027-04-20\npart = \"" + part + "\"\nzone = \"" + zone + "\"\nlayer = \"working\"\ncoating = \"ablative-cuprous-multi\"\nfilm = \"60 um\"\n"
	}
	j := plannedJob(t, sheet)
	for name, c := range map[string]struct{ log, want string }{
		"gauged where the hull is not":      {laid(`part = "hull"`) + gauged("hull", "flat") + gauged("hull", "rudder"), "gauged[2].zone"},
		"a dew point above the air":         {laid(`air = "12 degC"`, `humidity = "64 %"`, `dew_point = "13 degC"`), "coat[1].dew_point"},
		"a zone that nobody has":            {laid(`zones = ["ruder"]`), "coat[1].zones"},
		"a zone of hers that is not there":  {laid(`zones = ["flat"]`), "coat[1].zones"},
		"one that is no text, and that one": {laid(`zones = ["flat", 7]`), "coat[1].zones coat[1].zones[2]"},
		"a log of nothing":                  {"", "coat"},
	} {
		_, err := readLog(j, logHead+c.log)
		faults, _ := errors.AsType[finding.Faults](err)
		var keys []string
		for _, f := range faults {
			keys = append(keys, f.Key)
			if f.File != "log.toml" {
				t.Errorf("%s: %v is of the file %q", name, f, f.File)
			}
		}
		if got := strings.Join(keys, " "); got != c.want {
			t.Errorf("%s: %q, want %q\n%v", name, got, c.want, err)
		}
	}
}

// Of dew point, air and humidity any two are no contradiction; in air of 100 % the dew point is that of the air, and one that lies off by all that the
// factor log-dew-differs allows, 1.5 K, is taken, one a hundredth beyond is not.
func TestDewPointOnItsEnds(t *testing.T) {
	j := plannedJob(t, sheet)
	for _, c := range []struct {
		lines []string
		ok    bool
	}{
		{[]string{`dew_point = "-20 degC"`}, true},
		{[]string{`dew_point = "-20 degC"`, `air = "12 degC"`}, true},
		{[]string{`dew_point = "-20 degC"`, `humidity = "64 %"`}, true},
		{[]string{`air = "12 degC"`, `humidity = "64 %"`}, true},
		{[]string{`dew_point = "10.5 degC"`, `air = "12 degC"`, `humidity = "100 %"`}, true},
		{[]string{`dew_point = "10.49 degC"`, `air = "12 degC"`, `humidity = "100 %"`}, false},
	} {
		if _, err := readLog(j, logHead+laid(c.lines...)); (err == nil) != c.ok {
			t.Errorf("%v: %v", c.lines, err)
		}
	}
}
