package tables

import (
	"boatyard.example/bottomwork/tables/entry"
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

// PastResult is what was seen of a type on boats that lay at a place: own knowledge, of which the embedded tables hold none.
type PastResult struct {
	Row
	Coating string          // key of a coating
	Place   string          // key of the place where the boats lay; it holds for every place in it too
	Outcome Outcome         // whether it was still clean enough when it was looked at
	Months  quantity.Months // calendar months from the paint to that look
	Boats   int             // on how many boats it was seen
}

// Outcome is what a past result tells.
type Outcome string

// The outcomes.
const (
	Held   Outcome = "held"   // growth was still held off
	Failed Outcome = "failed" // growth had taken hold
)

func readPastResult(r *entry.Row) PastResult {
	p := PastResult{
		Row: readRow(r), Coating: r.Text("coating"), Place: r.Text("place"),
		Outcome: Outcome(r.Word("outcome", string(Held), string(Failed))),
		Months:  entry.Amount[quantity.Months](r, "months"),
		Boats:   1,
	}
	r.Need("what was seen of which type, where, and how long after the paint", "coating", "place", "outcome", "months")
	if p.Months.Given() && p.Months.Sign() <= 0 {
		r.Fault(finding.ErrImpossible, "months", p.Months.String(), "more than zero")
	}
	if n, ok := r.Int("boats", 1, 10000); ok {
		p.Boats = n
	}
	return p
}

// LiesIn reports whether the place of the key is the other place or lies in it; a key that the book does not hold lies only in
// itself.
func (b *Book) LiesIn(key, other string) bool {
	for key != other {
		p, err := b.places.get(key)
		if err != nil || p.Within == "" {
			return false
		}
		key = p.Within
	}
	return true
}
