package hullform

import "math"

// The formulas take metres and cubic metres and return square metres. They hold for salt and fresh water alike.

// dennyMumford is 1.7 L T + V ÷ T. Source: Nicholls's Seamanship, p. 482, in the form L(1.7 T + Cb B).
func dennyMumford(d dimensions) float64 { return 1.7*d.length*d.draft + d.volume/d.draft }

// taylor is 2.6 √(V L). Basis: from memory.
func taylor(d dimensions) float64 { return 2.6 * math.Sqrt(d.volume*d.length) }

// froude is V^(2/3) (3.4 + L ÷ (2 V^(1/3))). Basis: from memory.
func froude(d dimensions) float64 {
	side := math.Cbrt(d.volume)
	return side * side * (3.4 + 0.5*d.length/side)
}

// delft is the wetted area of a sailing yacht's canoe body, (1.97 + 0.171 B ÷ T)(0.65 ÷ Cm)^(1/3) √(V L), with B on the waterline
// and T without the keel. Source: the Delft systematic yacht hull series.
func delft(d dimensions) float64 {
	return (1.97 + float64(0.171*d.waterlineBeam/d.canoe)) * math.Cbrt(0.65/d.midship) * math.Sqrt(d.volume*d.length)
}

// dimensions are the numbers of one hull in metres, NaN where not known.
type dimensions struct {
	length, beam, waterlineBeam, draft, canoe, midship float64
	volume                                             float64 // cubic metres
}

// under is the draught of what the method is about: of the hull without its keel for a method that gives the hull alone.
func (d dimensions) under(bare bool) float64 {
	if bare {
		return d.canoe
	}
	return d.draft
}

// formulas are the methods that need nothing but dimensions, by the key of their row.
var formulas = map[string]func(dimensions) float64{
	"delft": delft, "denny-mumford": dennyMumford, "taylor": taylor, "froude": froude,
}
