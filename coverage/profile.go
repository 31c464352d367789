package coverage

import (
	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/entry"
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

// Dead returns the film whose paint lies in the valleys of a blasted surface and counts for nothing above its peaks:
//
//	dead = void × depth      void: factor "profile-void"; depth: peak to valley of the profile's row
//
// It is a range: the low void with the low depth, the typical void with the middle of the two depths. Where the row has no depth, as one that only
// corrects gauge readings, and for an unknown key, the error is a finding.Faults. Each end is rounded up to 1 um.
//
// Basis: derived (symmetrical ridges leave half of their depth empty); the depths are those of the row.
func Dead(b *tables.Book, profile string) (quantity.Range[quantity.Film], error) {
	var none quantity.Range[quantity.Film]
	row, err := profileOf(b, profile)
	if err != nil {
		return none, err
	}
	void, err := b.Factor("profile-void")
	if err != nil {
		return none, err
	}
	low, high := row.Depth.Low, row.Depth.High
	middle := low.Add(high).Scale(number(0.5))
	end := func(depth quantity.Film, void float64) quantity.Film {
		return depth.Scale(number(void)).To(quantity.Micrometre, 0, quantity.Up)
	}
	return quantity.Range[quantity.Film]{Low: end(low, void.Value.Low), Typical: end(middle, void.Value.Typical), High: end(high, void.Value.High)}, nil
}

// profileOf returns the row of the key if it has a depth.
func profileOf(b *tables.Book, profile string) (tables.Profile, error) {
	var known []string
	for p := range b.Profiles() {
		switch {
		case !p.Depth.Low.Given():
		case p.Key == profile:
			return p, nil
		default:
			known = append(known, p.Key)
		}
	}
	return tables.Profile{}, finding.Faults{{Kind: finding.ErrUnknown, Key: "profile", Got: entry.Describe(profile), Want: finding.Suggest(profile, known)}}
}

// Fill returns the litres of unthinned paint that a blasted surface swallows before any film stands above its peaks. The first coat
// on it takes them beside those of Paint.
//
//	litres = 10 × area [m2] × dead [um] ÷ (solids [%] × (100 − loss [%]))
//
// The corners are those of Paint, with the low dead film at the low end. No residue is counted: the coat has it. Each end is rounded
// up to 0.01 L.
//
// Basis: derived (volume balance).
func Fill(b *tables.Book, area quantity.Range[quantity.Area], c tables.Coating, dead quantity.Range[quantity.Film], m Method) (quantity.Range[quantity.Volume], error) {
	return paint(b, area, c, dead, 1, m, false)
}
