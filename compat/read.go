package compat

import (
	"slices"

	"boatyard.example/bottomwork/compat/oldfilm"
	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

// AsRead returns the part as its readings show it: the top layer that was found takes the state that oldfilm.Judge gives it, unless a
// worse one was reported; a laminate whose moisture still falls or rises counts as wet where nobody said. What was not read stays as
// reported.
//
// Basis: as of oldfilm.Judge.
func (p Part) AsRead(b *tables.Book) Part {
	if !p.Readings.Given() {
		return p
	}
	d, err := oldfilm.Judge(b, p.Readings, quantity.Range[quantity.Area]{})
	if err != nil {
		return p // noted by Check
	}
	if n := len(p.Found); n > 0 && d.State != "" && !p.Found[n-1].bare() && worse(b, d.State, p.Found[n-1].State) {
		p.Found = slices.Clone(p.Found)
		p.Found[n-1].State = d.State
	}
	if p.Laminate == "" && (p.Readings.Moisture == "falling" || p.Readings.Moisture == "rising") {
		p.Laminate = "wet"
	}
	return p
}

// worse reports whether a state that was read asks for more than the one reported; a state that nobody reported asks for least.
func worse(b *tables.Book, read, reported tables.Condition) bool {
	if reported == "" || reported == tables.NotReported {
		return true
	}
	rank := func(c tables.Condition) finding.Verdict {
		row, err := b.Condition(c)
		if err != nil {
			return finding.Ask
		}
		return row.Verdict
	}
	return rank(read) > rank(reported)
}
