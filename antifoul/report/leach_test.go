package report_test

import (
	"strings"
	"testing"

	"boatyard.example/bottomwork/antifoul"
	"boatyard.example/bottomwork/antifoul/report"
)

const leachHead = "Biocide in the film, and what leaves it"

// The long report of a boat with a biocidal type tells both means with their methods, in each format; the short one says nothing of it.
// A film without biocide is not told there.
func TestWhatLeavesTheFilm(t *testing.T) {
	copper := job(t, "sloop.toml", func(b *antifoul.Boat) { b.Wishes.Coating = "hard-cuprous" })
	for _, format := range []report.Format{report.Text, report.Markdown} {
		got := words(write(t, copper, report.Options{Format: format}))
		for _, want := range []string{leachHead, "ISO 10890", "divided by 2.9", "Finnie 2006", "up to 8 times", "Copper in all", "Grams a season", "Authorities approve products"} {
			if !strings.Contains(got, words(want)) {
				t.Errorf("%s: no %q", format, want)
			}
		}
		if short := words(write(t, copper, report.Options{Format: format, Short: true})); strings.Contains(short, words(leachHead)) {
			t.Errorf("%s: it stands in the short report", format)
		}
	}
	free := job(t, "sloop.toml", func(b *antifoul.Boat) { b.Wishes.Coating = "inert-epoxy" })
	hull, ok := free.Scheme("hull")
	if !ok || hull.Coating.Key != "inert-epoxy" {
		t.Fatal("the wish was not taken")
	}
	_, section, _ := strings.Cut(write(t, free, report.Options{}), leachHead)
	section, _, _ = strings.Cut(section, "What this rests on")
	if strings.Contains(words(section), words(hull.Coating.Name)) {
		t.Error("an inert film is told among the biocidal ones")
	}
}
