package coverage

import (
	"github.com/shopspring/decimal"

	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/quantity"
)

// Outline returns the length of the outline of the waterline, of all hulls:
//
//	outline = (2 × L + k × B) × hulls      k: factor "area-outline-beams"
//
// at its corners, rounded up to 0.1 m. It is not given where length or beam are not.
//
// Basis: derived; see the factor.
func Outline(b *tables.Book, h Hull) (quantity.Range[quantity.Length], error) {
	return outline(b, h, 1)
}

// outline is Outline rounded up to the places.
func outline(b *tables.Book, h Hull, places int32) (out quantity.Range[quantity.Length], err error) {
	k, err := b.Factor("area-outline-beams")
	if err != nil || !h.Length.Given() || !h.Beam.Given() {
		return out, err
	}
	form, _ := b.HullForm(h.Kind) // of a kind that is not known there is one hull
	in := func(l quantity.Length) decimal.Decimal { return l.In(quantity.Metre, basePlaces, quantity.Up) }
	end := func(beams float64) quantity.Length {
		n := decimal.NewFromInt(2).Mul(in(h.Length)).Add(number(beams).Mul(in(h.Beam)))
		return quantity.Metre.Of(n.Mul(decimal.NewFromInt(int64(h.hulls(form))))).To(quantity.Metre, places, quantity.Up)
	}
	return quantity.Range[quantity.Length]{Low: end(k.Value.Low), Typical: end(k.Value.Typical), High: end(k.Value.High)}, nil
}
