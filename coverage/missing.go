package coverage

import (
	"github.com/shopspring/decimal"

	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

// More is the paint that makes up a film that is missing.
type More struct {
	Coats  int
	Film   quantity.Film // dry film of each coat
	Litres quantity.Range[quantity.Volume]
	_      [0]func()
}

// Missing returns the coats and the litres, as supplied, that make up a missing dry film on the area.
//
//	coats  = missing ÷ the coating's thickest coat, rounded up; one where the coating has none
//	film   = missing ÷ coats, at least the coating's thinnest coat: nobody rolls 6 um
//	litres = coats × (10 × area [m2] × film [um] ÷ (solids [%] × (100 − loss [%])) + residue), as Paint has it
//
// The film is above zero and takes at most 50 coats; the other ranges are those of Paint. Other values are a finding.Faults. The
// film of a coat is rounded up to 4 places, the litres up to 0.01 L. They are for the whole area: the mean there rises by as much as
// its thinnest place lacks.
//
// Basis: derived (volume balance); the loss and the residue are the book's.
func Missing(b *tables.Book, area quantity.Range[quantity.Area], c tables.Coating, missing quantity.Film, m Method) (More, error) {
	var faults finding.Faults
	checkFilm(&faults, "missing", missing)
	if err := faults.Err(); err != nil {
		return More{}, err
	}
	coats := 1
	for thickest := c.Film.High; thickest.Sign() > 0 && coats <= mostCoats && missing.Cmp(thickest.Scale(decimal.NewFromInt(int64(coats)))) > 0; {
		coats++
	}
	least := c.Film.Low
	each, err := quantity.Quotient(missing.Number(), decimal.NewFromInt(int64(coats)), ratePlaces, quantity.Up)
	if err != nil {
		return More{}, outOfRange("missing", missing.String(), err)
	}
	out := More{Coats: coats, Film: missing.Unit().Of(each)}
	if least.Given() && out.Film.Cmp(least) < 0 {
		out.Film = least
	}
	out.Litres, err = Paint(b, area, c, out.Film, coats, m)
	return out, err
}
