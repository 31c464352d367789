package joblog_test

import (
	"errors"
	"fmt"
	"slices"
	"strings"
	"testing"
	"testing/fstest"

	"boatyard.example/bottomwork/antifoul/joblog"
	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

// A log that a program made can hold what no file can: each is a fault under the key of a file.
func TestLogsThatNoFileHolds(t *testing.T) {
	b := tables.Default()
	films := func(low, typical, high int64) quantity.Range[quantity.Film] {
		return quantity.Range[quantity.Film]{Low: quantity.Micrometre.N(low), Typical: quantity.Micrometre.N(typical), High: quantity.Micrometre.N(high)}
	}
	read := func(text string) joblog.Log {
		l, err := joblog.Read(b, fstest.MapFS{"log.toml": {Data: []byte(text)}}, "log.toml", nil)
		if err != nil {
			t.Fatal(err)
		}
		return l
	}
	for name, c := range map[string]struct {
		text   string
		change func(*joblog.Log)
		key    string
		kind   error
	}{
		"a log":                   {head + coat(), func(*joblog.Log) {}, "", nil},
		"a layer without a word":  {head + coat(), func(l *joblog.Log) { l.Coats[0].Layer = "found" }, "coat[1].layer", finding.ErrValue},
		"a coat before the first": {head + coat(), func(l *joblog.Log) { l.Coats[0].Number = -1 }, "coat[1].coat", finding.ErrImpossible},
		"a coat after the last":   {head + coat(), func(l *joblog.Log) { l.Coats[0].Number = 51 }, "coat[1].coat", finding.ErrImpossible},
		"a film that falls":       {head + coat() + survey(), func(l *joblog.Log) { l.Surveys[0].Film = films(60, 59, 61) }, "gauged[1].film", finding.ErrImpossible},
		"one that falls later":    {head + coat() + survey(), func(l *joblog.Log) { l.Surveys[0].Film = films(59, 60, 59) }, "gauged[1].film", finding.ErrImpossible},
		"one that rises":          {head + coat() + survey(), func(l *joblog.Log) { l.Surveys[0].Film = films(59, 60, 61) }, "", nil},
		"a look on no day":        {afloat + look(), func(l *joblog.Log) { l.Looks[0].On = l.Hauled }, "look[1].on", finding.ErrMissing},
	} {
		l := read(c.text)
		c.change(&l)
		fs := l.Check(b)
		if c.key == "" && len(fs) > 0 || c.key != "" && (len(fs) != 1 || fs[0].Key != c.key || !errors.Is(fs[0], c.kind)) {
			t.Errorf("%s: %v; want %q", name, fs, c.key)
		}
	}
}

// A thousand sections of one kind are read, one more is one fault.
func TestLogsWithoutEnd(t *testing.T) {
	var text strings.Builder
	text.WriteString(head)
	for n := range 1000 {
		fmt.Fprintf(&text, "[[task]]\npart = \"part %d\"\ndo = \"wash\"\nbegun = \"2027-04-09 10:00\"\n", n)
	}
	read := func(text string) finding.Faults {
		_, err := joblog.Read(tables.Default(), fstest.MapFS{"log.toml": {Data: []byte(text)}}, "log.toml", nil)
		fs, _ := errors.AsType[finding.Faults](err)
		return fs
	}
	if fs := read(text.String()); len(fs) > 0 {
		t.Errorf("a thousand tasks: %v", fs)
	}
	fs := read(text.String() + task())
	if len(fs) == 0 || fs[0].Key != "task" || !errors.Is(fs[0], finding.ErrImpossible) || fs[0].Got != "1001 sections" {
		t.Errorf("one more: %v", fs)
	}
}

// Two readings of the comb that cannot be are told each at its own place, whether they cannot be read or cannot be so.
func TestEachReadingOfTheComb(t *testing.T) {
	for wet, want := range map[string][]string{
		`["100 um", "5 mil"]`:                               nil,
		`["thick", "125 um to 100 um"]`:                     {"coat[1].wet_film[1]", "coat[1].wet_film[2]"},
		`["125 um to 100 um", "thick"]`:                     {"coat[1].wet_film[1]", "coat[1].wet_film[2]"},
		`["thick", "100 um", "125 um to 100 um", "100 um"]`: {"coat[1].wet_film[1]", "coat[1].wet_film[3]"},
	} {
		_, faults := read(t, head+coat("wet_film = "+wet))
		var got []string
		for _, f := range faults {
			got = append(got, f.Key)
		}
		if !slices.Equal(got, want) {
			t.Errorf("%s: %v, want %v", wet, got, want)
		}
	}
}
