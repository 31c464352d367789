package finding

import (
	"cmp"
	"slices"
	"strings"
)

// near returns up to three of the known names that are closest to name, nearest first: names that contain it or that it
// contains, then those within a third of its length in single letters changed, added, dropped or swapped.
func near(name string, known []string) []string {
	type hit struct {
		name string
		far  int
	}
	var hits []hit
	low := strings.ToLower(strings.TrimSpace(name))
	if low == "" || len(low) > 200 {
		return nil
	}
	for _, k := range known {
		lk := strings.ToLower(k)
		if lk == "" {
			continue
		}
		d := distance(low, lk)
		switch {
		case d <= max(1, len(low)/3):
			hits = append(hits, hit{k, d})
		case len(low) >= 3 && (strings.Contains(lk, low) || strings.Contains(low, lk)):
			hits = append(hits, hit{k, d + len(low)})
		}
	}
	slices.SortStableFunc(hits, func(a, b hit) int {
		return cmp.Or(cmp.Compare(a.far, b.far), cmp.Compare(a.name, b.name))
	})
	var out []string
	for _, h := range hits[:min(3, len(hits))] {
		out = append(out, h.name)
	}
	return out
}

// Suggest returns what is accepted for an unknown name: the near names, or all of them when none is near and they are few.
func Suggest(name string, known []string) string {
	if names := near(name, known); len(names) > 0 {
		return "did you mean " + strings.Join(names, ", or ") + "?"
	}
	if len(known) <= 40 {
		return "one of " + strings.Join(known, "; ")
	}
	return "a name that the tables hold"
}

// distance is the number of single letters to change, add, drop or swap with their neighbour (optimal string alignment).
func distance(a, b string) int {
	rows := [3][]int{make([]int, len(b)+1), make([]int, len(b)+1), make([]int, len(b)+1)}
	for j := range rows[0] {
		rows[0][j] = j
	}
	for i := range len(a) {
		before, last, row := rows[(i+2)%3], rows[i%3], rows[(i+1)%3]
		row[0] = i + 1
		for j := range len(b) {
			change := last[j]
			if a[i] != b[j] {
				change++
			}
			row[j+1] = min(change, last[j+1]+1, row[j]+1)
			if i > 0 && j > 0 && a[i] == b[j-1] && a[i-1] == b[j] {
				row[j+1] = min(row[j+1], before[j-1]+1)
			}
		}
	}
	return rows[len(a)%3][len(b)]
}
