package house

import (
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
)

func TestFloors(t *testing.T) {
	for _, c := range []struct {
		name    string
		imports map[string][]string
		want    []string
	}{
		{name: "nothing is imported", imports: map[string][]string{"tables": nil, "compat": nil}},
		{name: "down by one and by many", imports: map[string][]string{
			"tables":          {"tables/entry", "tables/finding", "tables/quantity"},
			"antifoul/report": {"antifoul", "tables/quantity"},
			"examples/demo":   {"antifoul/report", "antifoul", "tables"},
		}},
		{name: "named sideways imports", imports: map[string][]string{
			"tables/finding":    {"tables/quantity"},
			"tables/entry":      {"tables/quantity", "tables/finding"},
			"coverage":          {"coverage/hullform"},
			"compat":            {"compat/galvanic"},
			"antifoul/calendar": {"antifoul/weather"},
		}},
		{name: "up by one floor", imports: map[string][]string{"tables": {"compat"}}, want: []string{
			"tables (floor 1) imports compat (floor 2): imports only point down",
		}},
		{name: "a leaf takes its own parent", imports: map[string][]string{"antifoul/wear": {"antifoul"}}, want: []string{
			"antifoul/wear (floor 3) imports antifoul (floor 4): imports only point down",
		}},
		{name: "sideways imports without a name, and a named one backwards", imports: map[string][]string{
			"antifoul/weather": {"antifoul/calendar"},
			"antifoul/law":     {"antifoul/leach"},
			"coverage":         {"coverage/gauge", "compat"},
			"coverage/gauge":   {"coverage/hullform"},
		}, want: []string{
			"antifoul/law imports antifoul/leach, both on floor 3: this sideways import is not named",
			"antifoul/weather imports antifoul/calendar, both on floor 3: this sideways import is not named",
			"coverage imports compat, both on floor 2: this sideways import is not named",
			"coverage imports coverage/gauge, both on floor 2: this sideways import is not named",
			"coverage/gauge imports coverage/hullform, both on floor 2: this sideways import is not named",
		}},
		{name: "on no floor", imports: map[string][]string{
			"": nil, "antifoul/extra": {"tables"}, "antifouling": nil, "internal/x": nil, "antifoul": {"tables/extra"},
		}, want: []string{
			"the module's root package stands on no floor",
			"antifoul (floor 4) imports tables/extra, which stands on no floor",
			"antifoul/extra stands on no floor",
			"antifouling stands on no floor",
			"internal/x stands on no floor",
		}},
		{name: "helpers stand with their owner", imports: map[string][]string{
			"tables":                 {"tables/internal/text"},
			"tables/internal/text":   {"tables/internal/words", "tables/quantity"},
			"antifoul/report":        {"antifoul/internal/score", "antifoul/report/internal/svg"},
			"antifoul/wear":          {"antifoul/wear/internal/fit"},
			"antifoul/internal/fold": {"antifoul/wear"},
		}},
		{name: "helpers may not be taken from below, or take their owner", imports: map[string][]string{
			"tables/quantity":            {"tables/internal/text"},
			"antifoul/wear":              {"antifoul/internal/score"},
			"tables/internal/text":       {"tables"},
			"antifoul/drag/internal/fit": {"antifoul/wear/internal/fit"},
		}, want: []string{
			"antifoul/drag/internal/fit imports antifoul/wear/internal/fit, both on floor 3: this sideways import is not named",
			"antifoul/wear (floor 3) imports antifoul/internal/score (floor 4): imports only point down",
			"tables/internal/text imports tables, both on floor 1: this sideways import is not named",
			"tables/quantity (floor 0) imports tables/internal/text (floor 1): imports only point down",
		}},
		{name: "examples stand alone", imports: map[string][]string{
			"examples/a":          {"examples/b"},
			"examples/internal/c": nil,
			"antifoul/report":     {"examples/a"},
		}, want: []string{
			"antifoul/report (floor 5) imports examples/a (floor 6): imports only point down",
			"examples/a imports examples/b, both on floor 6: this sideways import is not named",
			"examples/internal/c stands on no floor",
		}},
		{name: "nothing leans on the checks", imports: map[string][]string{
			"antifoul":      {self},
			self:            {"antifoul/report"},
			"antifoul/wear": {"antifoul/wear/internal/fit", "antifoul/wear/internal/fit"},
		}, want: []string{
			"antifoul (floor 4) imports antifoul/internal/house (floor 6): imports only point down",
		}},
	} {
		t.Run(c.name, func(t *testing.T) {
			if diff := cmp.Diff(c.want, Floors(c.imports)); diff != "" {
				t.Errorf("breaches (-want +got):\n%s", diff)
			}
		})
	}
}

// A sideways import is only worth naming between two rooms of one floor.
func TestRoomsNameTheirNeighbours(t *testing.T) {
	seen := map[string]bool{}
	for _, r := range rooms() {
		if seen[r.path] {
			t.Errorf("%s has two rooms", r.path)
		}
		seen[r.path] = true
		for _, n := range r.next {
			i := slices.IndexFunc(rooms(), func(o room) bool { return o.path == n })
			if i < 0 {
				t.Errorf("%s names %s, which has no room", r.path, n)
			} else if rooms()[i].floor != r.floor {
				t.Errorf("%s names %s, which is on another floor", r.path, n)
			}
		}
	}
}

func TestTopLevel(t *testing.T) {
	agreed := strings.Fields("antifoul compat coverage tables examples go.mod go.sum README.md DEVELOPERS.md .ci .gitignore")
	if got := TopLevel(agreed); len(got) > 0 {
		t.Errorf("the agreed names are refused: %q", got)
	}
	want := []string{
		"main.go is not among the names agreed for the top level",
		"readme.md is not among the names agreed for the top level",
	}
	if diff := cmp.Diff(want, TopLevel([]string{"readme.md", "tables", "main.go", "main.go"})); diff != "" {
		t.Errorf("breaches (-want +got):\n%s", diff)
	}
}
