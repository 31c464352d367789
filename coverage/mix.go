package coverage

import (
	"fmt"

	"github.com/shopspring/decimal"

	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

// Mixed is what to pour of each component. Base and Hardener make the total to the last digit.
type Mixed struct {
	Base, Hardener         quantity.Volume
	BaseMass, HardenerMass quantity.Mass // not given unless both densities are
	_                      [0]func()
}

// gramPlaces are the decimal places of a mass of paint, in kilograms.
const gramPlaces = 3

var leastDensity, mostDensity = quantity.KilogramPerLitre.Of(decimal.New(5, -1)), quantity.KilogramPerLitre.N(5)

// Mix returns how much base and hardener make the total of mixed paint.
//
//	hardener = total × b ÷ (a + b)      a:b the ratio by volume
//	base     = total − hardener
//	mass     = volume × density
//
// The hardener is in litres, rounded to the nearest 0.001 L, and the base is the rest, so both add up. It is not rounded up to
// be safe: too much hardener is a fault of the work as much as too little, and either leaves a film that does not cure as it
// should. Half a millilitre is 5 % of 10 mL: the smaller the mix, the less true the dose. Masses are those of the litres told, in kilograms,
// rounded to the nearest gram; with no density, or with one only, none is told.
//
// The total is above zero and at most 1 000 000 L, and so large that each component is told as a millilitre or more. Densities are those
// of base and hardener in this order, from 0.5 to 5 kg/L. Other input is a finding.Faults.
//
// Basis: derived (the mixing ratio by volume, and mixed paint that keeps the volumes of both).
func Mix(total quantity.Volume, r Ratio, densities [2]quantity.Density) (Mixed, error) {
	faults := r.Check().Under("", "ratio")
	checkComponent(&faults, "total", total)
	checkDensities(&faults, densities, false)
	if err := faults.Err(); err != nil {
		return Mixed{}, err
	}
	litres := total.In(quantity.Litre, basePlaces, quantity.Nearest)
	n, err := quantity.Quotient(litres.Mul(r.Hardener), r.Base.Add(r.Hardener), mixPlaces, quantity.Nearest)
	if err != nil {
		return Mixed{}, outOfRange("total", total.String(), err)
	}
	out := Mixed{Hardener: quantity.Litre.Of(n)}
	out.Base = total.Sub(out.Hardener)
	if ml := quantity.Millilitre.N(leastCan); out.Hardener.Cmp(ml) < 0 || out.Base.Cmp(ml) < 0 {
		return Mixed{}, finding.Faults{{
			Kind: finding.ErrImpossible, Key: "total", Got: fmt.Sprintf("%s at %s", total, r),
			Want: "so much that each component is a millilitre or more",
		}}
	}
	if densities[0].Given() && densities[1].Given() {
		out.BaseMass, out.HardenerMass = massOf(out.Base, densities[0]), massOf(out.Hardener, densities[1])
	}
	return out, nil
}

func massOf(v quantity.Volume, d quantity.Density) quantity.Mass {
	n := v.In(quantity.Litre, basePlaces, quantity.Nearest).Mul(d.Number()) // kg/L is the one unit of density
	return quantity.Kilogram.Of(n).To(quantity.Kilogram, gramPlaces, quantity.Nearest)
}

// RatioByMass returns the ratio in parts by mass, for scales.
//
//	base : hardener = a × density of base : b × density of hardener      a:b the ratio by volume
//
// The parts are exact products and are not rounded. Both densities are needed, from 0.5 to 5 kg/L, base first; else the error
// is a finding.Faults. A ratio by mass is never the ratio by volume unless the densities are equal.
//
// Basis: derived.
func RatioByMass(r Ratio, densities [2]quantity.Density) (Ratio, error) {
	faults := r.Check().Under("", "ratio")
	checkDensities(&faults, densities, true)
	if err := faults.Err(); err != nil {
		return Ratio{}, err
	}
	return Ratio{Base: r.Base.Mul(densities[0].Number()), Hardener: r.Hardener.Mul(densities[1].Number())}, nil
}

func checkDensities(faults *finding.Faults, densities [2]quantity.Density, needed bool) {
	want := fmt.Sprintf("a density from %s to %s", leastDensity, mostDensity)
	for i, key := range []string{"densities.base", "densities.hardener"} {
		switch d := densities[i]; {
		case !d.Given():
			if needed {
				*faults = append(*faults, finding.Fault{Kind: finding.ErrMissing, Key: key, Want: want})
			}
		case d.Cmp(leastDensity) < 0 || d.Cmp(mostDensity) > 0:
			*faults = append(*faults, finding.Fault{Kind: finding.ErrImpossible, Key: key, Got: d.String(), Want: want})
		}
	}
}
