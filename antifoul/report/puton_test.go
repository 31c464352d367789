package report_test

import (
	"strings"
	"testing"

	"boatyard.example/bottomwork/antifoul"
	"boatyard.example/bottomwork/antifoul/report"
	"boatyard.example/bottomwork/coverage/gauge"
	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/quantity"
)

// Each standard, by each gauge of dry film, gives an acceptance paragraph with a verdict, in both formats and systems of units, and
// nothing in it stays open.
func TestAcceptanceParagraph(t *testing.T) {
	for a := range tables.Default().Acceptances() {
		for _, instrument := range []string{"magnetic", "eddy-current", "ultrasonic"} {
			j := job(t, "steel-measured.toml", func(b *antifoul.Boat) {
				b.Gauged[0].Standard, b.Gauged[0].Instrument = a.Key, instrument
			})
			for _, o := range []report.Options{{}, {Format: report.Markdown, Units: quantity.US}} {
				text := write(t, j, o)
				for _, bad := range []string{"(not stated)", "{", "}", "not given", "%!", "<nil>"} {
					if strings.Contains(text, bad) {
						t.Errorf("%s by %s: %q in the report", a.Key, instrument, bad)
					}
				}
				got := words(text)
				for _, want := range []string{"judged by " + a.Name, "Not accepted", "steel-gauge.csv", "42 readings", "All together", "cannot say"} {
					if !strings.Contains(got, words(want)) {
						t.Errorf("%s by %s: %q is not said", a.Key, instrument, want)
					}
				}
				if wrong := strings.Contains(got, words("nobody can rely on this gauge here")); wrong != (instrument != "magnetic") {
					t.Errorf("%s by %s: the gauge is called no good: %t", a.Key, instrument, wrong)
				}
			}
		}
	}
}

// What can be accepted is said to be, with nothing to do; without a coating the micrometres are told and the litres are not.
func TestAcceptedAndWithoutACoating(t *testing.T) {
	j := job(t, "steel-measured.toml", func(b *antifoul.Boat) {
		for i := range b.Gauged[0].Readings {
			b.Gauged[0].Readings[i].Film = quantity.Micrometre.N(440)
		}
	})
	if text := words(write(t, j, report.Options{})); !strings.Contains(text, words("Accepted: every zone for itself")) || strings.Contains(text, words("What to do:")) || strings.Contains(text, "cannot be accepted") {
		t.Error("it is not said to be accepted, or something is left to do")
	}
	j = job(t, "steel-measured.toml", func(b *antifoul.Boat) { b.Gauged[0].Coating = "" })
	if text := words(write(t, j, report.Options{})); !strings.Contains(text, words("57 um (2.24 mil) more")) && !strings.Contains(text, words("57 µm (2.24 mil) more")) || !strings.Contains(text, words("the litres are not reckoned")) {
		t.Error("the missing film is not told without its litres")
	}
}

// A zone of which nothing was read is named, and asked for on the short page too.
func TestZoneWithoutReadings(t *testing.T) {
	j := job(t, "steel-measured.toml", func(b *antifoul.Boat) {
		var kept []gauge.Reading
		for _, r := range b.Gauged[0].Readings {
			if r.Zone != "edges" {
				kept = append(kept, r)
			}
		}
		b.Gauged[0].Readings = kept
	})
	if text := words(write(t, j, report.Options{})); !strings.Contains(text, words("Nothing was read on the 1.8 m²")) || !strings.Contains(text, "not read") {
		t.Error("the zone that was not read is not named")
	}
	if text := words(write(t, j, report.Options{Short: true})); !strings.Contains(text, words("Was it put on: still to do")) || !strings.Contains(text, words("Hull, Waterline strip: put on 57")) {
		t.Error("the short page does not say what is still to put on")
	}
}
