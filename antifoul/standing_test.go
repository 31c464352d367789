package antifoul_test

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/finding"
)

// What she stands on: any place that bears her is shifted away from and called dangerous, one alone too; without one neither is.
func TestWhatSheStandsOn(t *testing.T) {
	for _, c := range []struct{ pairs, blocks, chains, places int }{{0, 0, 0, 0}, {0, 1, 0, 1}, {0, 0, 1, 1}, {1, 0, 0, 2}, {3, 2, 1, 9}} {
		stands := fmt.Sprintf("draft = \"1.6 m\"\nstand_pairs = %d\nkeel_blocks = %d\nchains = %d", c.pairs, c.blocks, c.chains)
		j := plannedJob(t, strings.Replace(sheet, "draft = \"1.6 m\"", stands, 1))
		shifted := 0
		for _, task := range j.Order {
			if task.Do == finding.Shift {
				shifted++
			}
		}
		caution := slices.ContainsFunc(j.Cautions, func(c tables.Caution) bool { return c.Key == "stands" })
		if j.Pads.Count != c.places || shifted != min(1, c.places) || caution != (c.places > 0) {
			t.Errorf("%+v: %d places, shifted %d times, caution %v", c, j.Pads.Count, shifted, caution)
		}
	}
}
