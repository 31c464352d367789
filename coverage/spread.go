package coverage

import (
	"github.com/shopspring/decimal"

	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

// ratePlaces are the decimal places of a spreading rate and of a film, in its own unit.
const ratePlaces = 4

var (
	hundred = decimal.NewFromInt(100)

	// One litre spread at one micrometre covers 1000 m2: 10 for each per cent of solids.
	metricSpread = [2]decimal.Decimal{decimal.NewFromInt(10), decimal.NewFromInt(1)}
	// One US gallon, 231 cubic inches, at 0.001 inch covers 231000/144 = 1604.1667 square feet: 19250/1200 for each per cent.
	usSpread = [2]decimal.Decimal{decimal.NewFromInt(19250), decimal.NewFromInt(1200)}
)

// Spread returns the theoretical spreading rate of a paint with the volume solids at the dry film: in m2/L for a film in um,
// in ft2/US gal for a film in mil.
//
//	rate = 10 × solids [%] ÷ dry [um]   m2/L   =   1604.1667 × solids [%] ÷ 100 ÷ dry [mil]   ft2/US gal
//
// Solids are above 0 and at most 100 %, the film is above zero; else the error is a finding.Faults. The rate is rounded down
// to 4 places, so that it never promises more.
//
// Basis: derived (a volume of dry paint is area times film); exact before rounding.
func Spread(solids quantity.Share, dry quantity.Film) (quantity.Spread, error) {
	var faults finding.Faults
	checkSolids(&faults, solids)
	checkFilm(&faults, "dry", dry)
	if err := faults.Err(); err != nil {
		return quantity.Spread{}, err
	}
	k, unit := metricSpread, quantity.SquareMetrePerLitre
	if dry.Unit() == quantity.Mil {
		k, unit = usSpread, quantity.SquareFootPerUSGallon
	}
	n, err := quantity.Quotient(k[0].Mul(solids.Number()), k[1].Mul(dry.Number()), ratePlaces, quantity.Down)
	if err != nil {
		return quantity.Spread{}, outOfRange("dry", dry.String(), err)
	}
	return unit.Of(n), nil
}

// Practical returns the spreading rate that is left after the loss, in the unit of the theoretical rate.
//
//	practical = theoretical × (1 − loss)
//
// It is not theoretical ÷ (1 + loss), which some use for the same words. The rate is above zero, the loss from 0 to less than
// 100 %; else the error is a finding.Faults. The answer is rounded down to 4 places.
//
// Basis: derived (the definition of the loss: the share of the paint that does not end on the bottom).
func Practical(theoretical quantity.Spread, loss quantity.Share) (quantity.Spread, error) {
	var faults finding.Faults
	switch {
	case !theoretical.Given():
		faults = append(faults, finding.Fault{Kind: finding.ErrMissing, Key: "theoretical", Want: `a spreading rate, such as "9 m2/L"`})
	case theoretical.Sign() <= 0:
		faults = append(faults, finding.Fault{Kind: finding.ErrImpossible, Key: "theoretical", Got: theoretical.String(), Want: "more than zero"})
	}
	switch {
	case !loss.Given():
		faults = append(faults, finding.Fault{Kind: finding.ErrMissing, Key: "loss", Want: `a share, such as "10 %"`})
	case loss.Sign() < 0 || loss.Number().Cmp(hundred) >= 0:
		faults = append(faults, finding.Fault{Kind: finding.ErrImpossible, Key: "loss", Got: loss.String(), Want: "0 % or more and less than 100 %"})
	}
	if err := faults.Err(); err != nil {
		return quantity.Spread{}, err
	}
	n, err := quantity.Quotient(theoretical.Number().Mul(hundred.Sub(loss.Number())), hundred, ratePlaces, quantity.Down)
	if err != nil {
		return quantity.Spread{}, outOfRange("theoretical", theoretical.String(), err)
	}
	return theoretical.Unit().Of(n), nil
}

// WetFilm returns the wet film that dries to the dry film, in its unit: what a comb in the fresh coat must read.
//
//	wet = dry × (100 + thinner) ÷ solids      thinner and solids in per cent
//
// Solids are those of the paint as supplied, above 0 and at most 100 %; thinner is added volume in per cent of the paint,
// from 0 to 100 %, none when not given. Other values are a finding.Faults. The film is rounded up to 4 places. It holds as far
// as paint and thinner keep their volumes when mixed.
//
// Basis: derived (the volume of the solids stays).
func WetFilm(dry quantity.Film, solids, thinner quantity.Share) (quantity.Film, error) {
	return convertFilm("dry", dry, solids, thinner, func(t decimal.Decimal) (num, den decimal.Decimal, r quantity.Rounding) {
		return t, solids.Number(), quantity.Up
	})
}

// DryFilm returns the dry film that a wet reading dries to, in its unit. It is the inverse of WetFilm, with the same ranges.
//
//	dry = wet × solids ÷ (100 + thinner)      thinner and solids in per cent
//
// The film is rounded down to 4 places.
//
// Basis: derived (the volume of the solids stays).
func DryFilm(wet quantity.Film, solids, thinner quantity.Share) (quantity.Film, error) {
	return convertFilm("wet", wet, solids, thinner, func(t decimal.Decimal) (num, den decimal.Decimal, r quantity.Rounding) {
		return solids.Number(), t, quantity.Down
	})
}

// convertFilm is film × num ÷ den, where the ratio is made from 100 + thinner.
func convertFilm(key string, film quantity.Film, solids, thinner quantity.Share, ratio func(thinned decimal.Decimal) (num, den decimal.Decimal, r quantity.Rounding)) (quantity.Film, error) {
	var faults finding.Faults
	checkFilm(&faults, key, film)
	checkSolids(&faults, solids)
	checkPart(&faults, "thinner", thinner)
	if err := faults.Err(); err != nil {
		return quantity.Film{}, err
	}
	num, den, r := ratio(hundred.Add(thinner.Number()))
	n, err := quantity.Quotient(film.Number().Mul(num), den, ratePlaces, r)
	if err != nil {
		return quantity.Film{}, outOfRange(key, film.String(), err)
	}
	return film.Unit().Of(n), nil
}

func checkSolids(faults *finding.Faults, solids quantity.Share) {
	const want = "more than 0 % and at most 100 %, by volume"
	switch {
	case !solids.Given():
		*faults = append(*faults, finding.Fault{Kind: finding.ErrMissing, Key: "solids", Want: want})
	case solids.Sign() <= 0 || solids.Number().Cmp(hundred) > 0:
		*faults = append(*faults, finding.Fault{Kind: finding.ErrImpossible, Key: "solids", Got: solids.String(), Want: want})
	}
}

func checkFilm(faults *finding.Faults, key string, film quantity.Film) {
	switch {
	case !film.Given():
		*faults = append(*faults, finding.Fault{Kind: finding.ErrMissing, Key: key, Want: `a film, such as "50 um"`})
	case film.Sign() <= 0:
		*faults = append(*faults, finding.Fault{Kind: finding.ErrImpossible, Key: key, Got: film.String(), Want: "more than zero"})
	}
}

// checkPart notes a fault for a share outside 0 to 100 %. A share that is not given is fine.
func checkPart(faults *finding.Faults, key string, s quantity.Share) {
	if s.Given() && (s.Sign() < 0 || s.Number().Cmp(hundred) > 0) {
		*faults = append(*faults, finding.Fault{Kind: finding.ErrImpossible, Key: key, Got: s.String(), Want: "from 0 % to 100 %"})
	}
}

// outOfRange is the fault of a number that is too large or too small to reckon with.
func outOfRange(key, got string, err error) finding.Faults {
	return finding.Faults{{Kind: finding.ErrImpossible, Key: key, Got: got, Want: "a number to reckon with: " + err.Error()}}
}
