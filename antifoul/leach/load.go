package leach

import (
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

// Load returns the grams that leave an area in so many months afloat at a mean release.
//
//	grams = release (ug/cm2/d) × 10 000 cm2/m2 / 1 000 000 ug/g × area (m2) × months × 365.25 / 12
//
// Release and area rise from zero or more; the months are above 0 to 1200, and no more than the life that the mean is one of, which is
// the caller's to see to. Load of a raw mean is a raw load: name the method beside it. The error is a finding.Faults.
// Basis: derived.
func Load(ugCm2Day quantity.Range[float64], area quantity.Range[quantity.Area], monthsAfloat float64) (quantity.Range[float64], error) {
	fs := rangeFaults("release", "ug/cm2/d", ugCm2Day)
	fs = append(fs, monthFaults("months", monthsAfloat)...)
	low, typical, high := area.Low, area.Typical, area.High
	if !low.Given() || !typical.Given() || !high.Given() {
		fs = append(fs, finding.Fault{Kind: finding.ErrMissing, Key: "area", Want: "an area: low, typical and high"})
	} else if low.Sign() < 0 || low.Cmp(typical) > 0 || typical.Cmp(high) > 0 {
		fs = append(fs, finding.Fault{Kind: finding.ErrImpossible, Key: "area", Got: low.String() + ", " + typical.String() + ", " + high.String(), Want: "zero or more, rising"})
	}
	if len(fs) > 0 {
		return quantity.Range[float64]{}, fs.Err()
	}
	days := monthsAfloat * daysAMonth
	grams := func(rate float64, a quantity.Area) float64 { return rate / 100 * a.Float(quantity.SquareMetre) * days }
	return quantity.Range[float64]{Low: grams(ugCm2Day.Low, low), Typical: grams(ugCm2Day.Typical, typical), High: grams(ugCm2Day.High, high)}, nil
}
