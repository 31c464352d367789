package tables

import (
	"slices"

	"boatyard.example/bottomwork/tables/entry"
)

// Season is one thing to do in the seasons after launch.
type Season struct {
	Row
	After      Span // calendar months after launch; not given: at haul-out
	Every      bool // again each season
	Cleaning   bool // it is cleaning in the water, which a port may forbid
	Says       string
	mechanisms []string
}

// For reports whether it is meant for films of the mechanism.
func (s Season) For(m Mechanism) bool {
	return len(s.mechanisms) == 0 || slices.Contains(s.mechanisms, string(m))
}

func readSeason(r *entry.Row) Season {
	s := Season{Row: readRow(r), After: readSpan(r, "after", 0, 120), Every: r.YesNo("every").True(), Cleaning: r.YesNo("cleaning").True(), Says: r.Text("says"), mechanisms: r.Words("mechanisms", mechanismWords...)}
	r.Need("what to do, in a sentence", "says")
	return s
}
