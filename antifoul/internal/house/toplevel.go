package house

import (
	"slices"
	"strings"
)

// TopLevel returns one sentence for each name that may not stand at the top
// level of the module, sorted. Names that begin with a dot may.
//
// Basis: common practice.
func TopLevel(names []string) []string {
	agreed := []string{"antifoul", "compat", "coverage", "tables", "examples", "go.mod", "go.sum", "README.md", "DEVELOPERS.md"}
	var breaches []string
	for _, n := range slices.Compact(slices.Sorted(slices.Values(names))) {
		if !strings.HasPrefix(n, ".") && !slices.Contains(agreed, n) {
			breaches = append(breaches, n+" is not among the names agreed for the top level")
		}
	}
	return breaches
}
