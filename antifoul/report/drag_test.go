package report_test

import (
	"strings"
	"testing"

	"boatyard.example/bottomwork/antifoul"
	"boatyard.example/bottomwork/antifoul/report"
	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/quantity"
)

// One line a grade but the smooth one, in both formats and systems of units, in the long report only.
func TestGrowthSection(t *testing.T) {
	for _, file := range []string{"sloop.toml", "planing.toml", "steel.toml", "trailer.toml"} {
		j := job(t, file, func(*antifoul.Boat) {})
		for _, o := range []report.Options{{}, {Format: report.Markdown, Units: quantity.US}} {
			got := words(write(t, j, o))
			_, section, found := strings.Cut(got, words("What growth would cost"))
			if !found {
				t.Fatalf("%s: what growth costs is not told", file)
			}
			for r := range tables.Default().Roughnesses() {
				line := words(strings.ToUpper(r.Name[:1]) + r.Name[1:] + " (fouling rating " + r.Rating + "): ")
				if n, want := strings.Count(section, strings.TrimSpace(line)), min(1, r.Ks.Sign()); n != want {
					t.Errorf("%s: %s stands there %d times, want %d", file, r.Key, n, want)
				}
			}
			for _, bad := range []string{"(not stated)", "NaN", "%!", "Not reckoned"} {
				if strings.Contains(section, bad) {
					t.Errorf("%s: %q in the report", file, bad)
				}
			}
			if planing := file == "planing.toml" || file == "trailer.toml"; strings.Contains(section, words("friction is not known")) != planing {
				t.Errorf("%s: said to be planing: %t", file, !planing)
			}
		}
		if strings.Contains(write(t, j, report.Options{Short: true}), "What growth would cost") {
			t.Errorf("%s: the short report tells what growth costs", file)
		}
	}
}

// Without a speed, or lying still, nothing is said. A tenth of a knot on 8.4 m is a Reynolds number of 364 thousand: too low for the lines,
// which is said, and the rest of the job stands.
func TestGrowthNotReckoned(t *testing.T) {
	for speed, want := range map[string]string{"": "", "0 kn": "", "0.1 kn": "Not reckoned for her: reynolds: impossible: read 3.64e+05"} {
		j := job(t, "sloop.toml", func(b *antifoul.Boat) {
			b.Use.Speed = quantity.Speed{}
			if speed != "" {
				var err error
				if b.Use.Speed, err = quantity.Parse[quantity.Speed](speed); err != nil {
					t.Fatal(err)
				}
			}
		})
		text := words(write(t, j, report.Options{}))
		if strings.Contains(text, words("What growth would cost")) != (want != "") || !strings.Contains(text, words(want)) {
			t.Errorf("speed %q: want %q", speed, want)
		}
	}
}
