package compat_test

import (
	"flag"
	"fmt"
	"os"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"boatyard.example/bottomwork/compat"
	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/finding"
)

var update = flag.Bool("update", false, "write the golden file from what is judged; read it by eye before committing")

// The pairs of which no row speaks by name or mechanism, only by class, with what the class says. They stand in a file that is read by eye:
// a pair that the trade knows better deserves a row of its own.
func TestPairsAnsweredByClass(t *testing.T) {
	b := book(t)
	var lines []string
	for _, past := range []bool{false, true} {
		for next := range b.Coatings() {
			if next.Role == tables.OldFilm {
				continue
			}
			by := map[string][]string{} // old films by what is said
			for old := range b.Coatings() {
				row, ok := b.OvercoatOf(&next, &old, past)
				if !ok {
					t.Errorf("%s over %s: no row speaks", next.Key, old.Key)
					continue
				}
				if row.Level != tables.Class {
					continue
				}
				var steps []string
				for s := range row.Steps() {
					steps = append(steps, string(s))
				}
				said := strings.TrimSpace(fmt.Sprintf("%s %s (%s)", row.Verdict, strings.Join(steps, ", "), row.Rule))
				by[said] = append(by[said], old.Key)
			}
			window := map[bool]string{false: "in time", true: "past its window"}[past]
			for said, olds := range by {
				lines = append(lines, fmt.Sprintf("%s, %s: %s: %s", next.Key, window, said, strings.Join(olds, " ")))
			}
		}
	}
	slices.Sort(lines)
	got := strings.Join(lines, "\n") + "\n"
	const file = "testdata/class_pairs.golden"
	if *update {
		if err := os.MkdirAll("testdata", 0o755); err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(file, []byte(got), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	want, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	if diff := cmp.Diff(strings.Split(string(want), "\n"), strings.Split(got, "\n")); diff != "" {
		t.Errorf("%s differs; read it by eye, then go test ./compat -update (-want +got):\n%s", file, diff)
	}
}

// The whole product of coating, old film, state and window: none without an answer, each with a rule of the book and what it rests on.
func TestEveryAnswerNamesRuleAndBasis(t *testing.T) {
	b := book(t)
	n := 0
	for next := range b.Coatings() {
		if next.Role == tables.OldFilm {
			continue
		}
		for old := range b.Coatings() {
			for state := range b.Conditions() {
				for _, age := range ages(old) {
					fs := compat.Over(b, next, compat.Layer{Coating: old, State: tables.Condition(state.Key), Age: age})
					n++
					if len(fs) == 0 {
						t.Fatalf("%s over %s, %s, %s: no answer", next.Key, old.Key, state.Key, age)
					}
					for _, f := range fs {
						rule, err := b.Rule(f.Rule)
						if err != nil || len(f.Basis) == 0 && rule.Basis().Kind == "" || f.Verdict == finding.Needs && len(f.First) == 0 {
							t.Errorf("%s over %s, %s, %s: %v rests on nothing or needs nothing; %v", next.Key, old.Key, state.Key, age, f, err)
						}
					}
				}
			}
		}
	}
	t.Logf("%d answers", n)
}
