package law

import (
	"slices"
	"strings"

	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

// Berth is one place in the boat's life and what it is to her.
type Berth struct {
	Place string // key of a place, "US-WA"; any other text is a place of which no rule is known
	Role  string // painted, kept, visited or cleaned; empty: any of them
	Water string // salt, brackish or fresh; empty: not given
}

// Check returns the faults of the berth, with keys relative to it. A place that the book does not hold is no fault: Screen
// answers it with Ask.
func (x Berth) Check(b *tables.Book) finding.Faults {
	var fs finding.Faults
	if strings.TrimSpace(x.Place) == "" {
		fs = append(fs, finding.Fault{Kind: finding.ErrMissing, Key: "place", Want: "a place; with rules known: " + strings.Join(placeKeys(b), ", ")})
	}
	word := func(key, got string, taken []string) {
		switch {
		case got == "" && key == "role":
			fs = append(fs, finding.Fault{Kind: finding.ErrMissing, Key: key, Want: "one of " + strings.Join(taken, ", ")})
		case got != "" && !slices.Contains(taken, got):
			fs = append(fs, finding.Fault{Kind: finding.ErrValue, Key: key, Got: `"` + got + `"`, Want: "one of " + strings.Join(taken, ", ")})
		}
	}
	word("role", x.Role, tables.BerthRoles())
	word("water", x.Water, tables.Waters())
	return fs
}

// Craft is what laws ask about the boat herself. A value that is not given is never taken as harmless: the finding then says
// that it is missing.
type Craft struct {
	Length   quantity.Length // length overall
	Mass     quantity.Mass
	Material string // key of the hull's material
}

func placeKeys(b *tables.Book) []string {
	var out []string
	for p := range b.Places() {
		if p.Within != "" {
			out = append(out, p.Key)
		}
	}
	return out
}
