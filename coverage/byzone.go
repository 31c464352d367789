package coverage

import (
	"boatyard.example/bottomwork/tables/quantity"
)

// ZoneVolume is the share of one zone in the litres of a coat.
type ZoneVolume struct {
	Zone   string
	Litres quantity.Range[quantity.Volume]
}

// ByZone shares litres out among the zones by their areas, end by end:
//
//	litres of a zone = litres × area of the zone ÷ area of all
//
// rounded down to 0.01 L, but for the first zone, which takes the rest, so that the zones add up to the litres to the last digit. So the
// residue of tray and can is shared by area too. Zones without an area get nothing.
//
// Basis: derived.
func ByZone(litres quantity.Range[quantity.Volume], zones []ZoneRange) ([]ZoneVolume, error) {
	if len(zones) == 0 {
		return nil, nil
	}
	var all quantity.Range[quantity.Area]
	for i, z := range zones {
		if i == 0 {
			all = z.Area
			continue
		}
		all = added(all, z.Area)
	}
	out := make([]ZoneVolume, len(zones))
	rest := litres
	for i, z := range zones {
		out[i].Zone = z.Zone
		if i == 0 {
			continue
		}
		for _, end := range []struct {
			to, rest  *quantity.Volume
			of        quantity.Volume
			area, all quantity.Area
		}{
			{&out[i].Litres.Low, &rest.Low, litres.Low, z.Area.Low, all.Low},
			{&out[i].Litres.Typical, &rest.Typical, litres.Typical, z.Area.Typical, all.Typical},
			{&out[i].Litres.High, &rest.High, litres.High, z.Area.High, all.High},
		} {
			in := func(a quantity.Area) quantity.Area { return a.To(quantity.SquareMetre, basePlaces, quantity.Down) }
			n, err := quantity.Quotient(end.of.In(quantity.Litre, basePlaces, quantity.Down).Mul(in(end.area).Number()), in(end.all).Number(), litrePlaces, quantity.Down)
			if err != nil {
				return nil, outOfRange("area", end.all.String(), err)
			}
			*end.to = quantity.Litre.Of(n)
			*end.rest = end.rest.Sub(*end.to)
		}
	}
	out[0].Litres = rest
	return out, nil
}
