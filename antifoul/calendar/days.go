package calendar

import (
	"strconv"

	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

// Days is what the calendar allows: the [work] section of a boat file.
type Days struct {
	Hands      int            // people at work; 0: not given
	Launch     quantity.Date  // day on which she goes in
	LaunchOpen quantity.YesNo // the launch may slip, or its date is not known
}

// Check returns every fault of the section for a job asked about on the day on, keys as in a boat file. On a day that is not given
// no launch is too early.
func (d Days) Check(on quantity.Date) finding.Faults {
	var fs finding.Faults
	if d.Hands < 0 || d.Hands > 100 {
		fs = append(fs, finding.Fault{Kind: finding.ErrImpossible, Key: "hands", Got: strconv.Itoa(d.Hands), Want: "1 to 100"})
	}
	if d.Launch.Before(on) {
		fs = append(fs, finding.Fault{Kind: finding.ErrImpossible, Key: "launch", Got: d.Launch.String(), Want: "not before the day of the question, " + on.String()})
	}
	return fs
}

// Dry returns the whole days from the given day to launch; known is false when either is not given or the launch may slip.
// Basis: derived.
func (d Days) Dry(from quantity.Date) (days int, known bool) {
	if d.LaunchOpen.True() || !d.Launch.Given() || !from.Given() {
		return 0, false
	}
	return from.DaysUntil(d.Launch), true
}

// Hours returns elapsed working hours for hours of one hand: divided by the hands at work, one hand when not given.
//
//	hours = hours of one hand / hands
//
// Basis: derived; that hands never wait for each other is an assumption.
func (d Days) Hours(oneHand quantity.Range[float64]) quantity.Range[float64] {
	n := float64(max(1, d.Hands))
	return quantity.Range[float64]{Low: oneHand.Low / n, Typical: oneHand.Typical / n, High: oneHand.High / n}
}
