package report_test

import (
	"os"
	"strings"
	"testing"
	"testing/fstest"

	"boatyard.example/bottomwork/antifoul"
	"boatyard.example/bottomwork/antifoul/report"
	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

// A report without a job is an error, not a panic.
func TestNoJob(t *testing.T) {
	for _, j := range []*antifoul.Job{nil, {}} {
		var out strings.Builder
		if err := report.Write(&out, j, report.Options{}); err == nil || out.Len() > 0 {
			t.Errorf("%v: error %v, %d bytes written", j, err, out.Len())
		}
	}
}

// Names from outside may begin with any letter and hold any sign.
func TestNamesFromOutside(t *testing.T) {
	own := `[[coating]]
key = "ablative-cuprous-multi"
basis = "own table"
source = "the yard's list"
name = "élan 50 %d"
[[rule]]
key = "use-lasts-coats"
basis = "own table"
source = "the yard's log"
says = "{about} lasts as the log says."
`
	b, err := tables.Default().With(fstest.MapFS{"own.toml": {Data: []byte(own)}})
	if err != nil {
		t.Fatal(err)
	}
	boat, err := antifoul.ReadBoatWith(b, os.DirFS(boats), "sloop.toml")
	if err != nil {
		t.Fatal(err)
	}
	for i := range boat.Parts {
		if boat.Parts[i].Zone == antifoul.HullZone {
			boat.Parts[i].Name = "ölig"
		}
	}
	j, err := antifoul.Plan(b, boat)
	if err != nil {
		t.Fatal(err)
	}
	text := write(t, j, report.Options{})
	for _, bad := range []string{"\ufffd", "%!"} {
		if strings.Contains(text, bad) {
			t.Errorf("%q in the report", bad)
		}
	}
	for _, want := range []string{"Ölig: ", "Élan 50 %d", "own table: the yard's log"} {
		if !strings.Contains(text, want) {
			t.Errorf("no %q in the report", want)
		}
	}
}

// Nobody said what she stands on: that is a question, not a boat without places under stands.
func TestStandsNotReported(t *testing.T) {
	j := job(t, "sloop.toml", func(b *antifoul.Boat) { b.Hull.Support = nil })
	said := tables.Default().Say(j.Pads.Findings[0], quantity.Metric)
	if text := words(write(t, j, report.Options{})); j.Pads.Findings.Worst() != finding.Ask || !strings.Contains(text, words(said)) {
		t.Errorf("no %q in the report", said)
	}
}
