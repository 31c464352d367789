package gauge

import (
	"math"

	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

// Needed returns the least number of readings that the standard wants on the area, by its rows of sampling:
//
//	readings of the line over which the area lies, and beyond the last line so many more for each further area of its size or part of it
//
// A line's upper bound belongs to it. The error is a finding.Faults for an area that is not above zero and for a standard without lines.
func Needed(b *tables.Book, standard string, area quantity.Area) (int, tables.Sampling, error) {
	var known []string
	if !area.Given() || area.Sign() <= 0 {
		return 0, tables.Sampling{}, finding.Faults{{Kind: finding.ErrImpossible, Key: "area", Got: area.String(), Want: "an area above zero"}}
	}
	for s := range b.Samplings() {
		known = append(known, s.Standard)
		if s.Standard != standard || area.Cmp(s.Over) <= 0 || s.UpTo.Given() && area.Cmp(s.UpTo) > 0 {
			continue
		}
		n := s.Readings
		if s.Each.Given() {
			n += s.More * int(math.Ceil(area.Sub(s.Over).Float(quantity.SquareMetre)/s.Each.Float(quantity.SquareMetre)-1e-9))
		}
		return n, s, nil
	}
	return 0, tables.Sampling{}, finding.Faults{{Kind: finding.ErrUnknown, Key: "standard", Got: standard, Want: finding.Suggest(standard, known)}}
}
