package antifoul

import (
	"errors"

	"boatyard.example/bottomwork/antifoul/drag"
	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/finding"
)

// Growth is what each grade of fouling would cost the boat at her speed. Empty where her waterline or her speed is not given, or she
// does not move.
type Growth struct {
	Costs []drag.Cost    // the smoothest grade first
	Not   finding.Faults // why it could not be reckoned: so short and slow, or so long and fast, that no line holds
}

// grown asks what growth would cost. It says nothing of whether any will come.
func grown(b *tables.Book, x Boat) Growth {
	h := drag.Hull{Length: x.Hull.Length, Speed: x.Use.Speed, Water: x.Use.Water}
	if !h.Length.Given() || h.Speed.Sign() <= 0 {
		return Growth{}
	}
	costs, err := drag.Costs(b, h)
	if fs, ok := errors.AsType[finding.Faults](err); ok {
		return Growth{Not: fs}
	}
	return Growth{Costs: costs}
}
