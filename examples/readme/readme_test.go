package readme_test

import (
	"os"
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"boatyard.example/bottomwork/tables"
)

func read(t *testing.T, name string) string {
	t.Helper()
	text, err := os.ReadFile(name)
	if err != nil {
		t.Fatal(err)
	}
	return string(text)
}

// block returns the first code block of the README in the language that holds the text.
func block(t *testing.T, language, holds string) string {
	t.Helper()
	for _, m := range regexp.MustCompile("(?s)```"+language+"\n(.*?)```").FindAllStringSubmatch(read(t, "../../README.md"), -1) {
		if strings.Contains(m[1], holds) {
			return m[1]
		}
	}
	t.Fatalf("README.md has no %s block with %q", language, holds)
	return ""
}

// The README's Go example is the body of write in example_test.go.
func TestExampleIsTheREADMEs(t *testing.T) {
	code := block(t, "go", "ReadBoat")
	indented := "\t" + strings.ReplaceAll(strings.TrimSpace(code), "\n", "\n\t")
	if !strings.Contains(read(t, "example_test.go"), strings.ReplaceAll(indented, "\n\t\n", "\n\n")) {
		t.Errorf("example_test.go does not hold the README's example:\n%s", code)
	}
}

// The README's smallest boat file is boat.toml.
func TestBoatFileIsTheREADMEs(t *testing.T) {
	if diff := cmp.Diff(block(t, "toml", "[boat]"), read(t, "boat.toml")); diff != "" {
		t.Errorf("boat.toml differs from the README (-README +file):\n%s", diff)
	}
}

// Each list of words in the README is that of the tables, in the same order.
func TestWordLists(t *testing.T) {
	b := tables.Default()
	lists := map[string][]string{"Loss methods": nil}
	add := func(list, key string) { lists[list] = append(lists[list], key) }
	for x := range b.HullForms() {
		add("Hull forms", x.Key)
	}
	for x := range b.Pieces() {
		add("Pieces", x.Key)
	}
	for x := range b.Profiles() {
		if x.Depth.High.Given() {
			add("Blast profiles", x.Key)
		}
	}
	for x := range b.Materials() {
		add("Materials", x.Key)
	}
	for x := range b.Zones() {
		add("Zones", x.Key)
	}
	for x := range b.Colours() {
		add("Colours", x.Key)
	}
	for x := range b.Conditions() {
		add("Conditions", x.Key)
	}
	for x := range b.Places() {
		add("Places", x.Key)
	}
	for x := range b.Signs() {
		add("Signs", x.Key)
	}
	for x := range b.Electrodes() {
		add("Electrodes", x.Key)
	}
	for x := range b.Instruments() {
		add("Instruments", x.Key)
	}
	for x := range b.Observations() {
		if !slices.Contains(lists["Things seen"], x.What) {
			add("Things seen", x.What)
		}
		for key := range x.From() {
			g, err := b.Grade(key)
			if err != nil {
				t.Fatal(err)
			}
			for o := range b.Grades() {
				if o.Scale == g.Scale && !slices.Contains(lists["Grades"], o.Key) {
					add("Grades", o.Key)
				}
			}
		}
	}
	for x := range b.Acceptances() {
		add("Acceptance standards", x.Key)
	}
	for x := range b.Profiles() {
		if x.Correction.Given() {
			add("Reading corrections", x.Key)
		}
	}
	for x := range b.Losses() {
		add("Loss methods", x.Key)
	}
	for c := range b.Coatings() {
		switch {
		case c.Ranked():
			add("Types", c.Key)
		case c.Role == tables.OldFilm:
			add("Old films", c.Key)
		default:
			add("Undercoats", c.Key)
		}
	}
	text := read(t, "../../README.md")
	for name, want := range lists {
		m := regexp.MustCompile(`(?s)\n` + name + `:\n(.*?)\n\n`).FindStringSubmatch(text)
		if m == nil {
			t.Errorf("README.md has no list %q", name)
			continue
		}
		var got []string
		for _, k := range regexp.MustCompile("`([^`]+)`").FindAllStringSubmatch(m[1], -1) {
			got = append(got, k[1])
		}
		slices.Sort(got)
		slices.Sort(want)
		if diff := cmp.Diff(want, got); diff != "" {
			t.Errorf("README.md, %s (-tables +README):\n%s", name, diff)
		}
	}
}
