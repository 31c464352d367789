package gauge

import (
	"math/big"

	"github.com/shopspring/decimal"

	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

// Reading is one reading of a gauge.
type Reading struct {
	Zone string        // where on the boat; Accept makes areas of spots zone by zone
	Spot string        // the spot that it is of, for a standard that judges spots; empty: a spot of its own
	Film quantity.Film // as the gauge showed it
	Note string        // what the surveyor wrote beside it
	Line int           // line of the sheet that it was read from; 0: none
}

// Readings makes readings of films in one zone and without spots.
func Readings(films ...quantity.Film) []Reading {
	out := make([]Reading, len(films))
	for i, f := range films {
		out[i].Film = f
	}
	return out
}

// Mean returns the mean of the films in the unit of the first: that of a spot's readings, say.
//
//	mean = (film + film + …) ÷ their number
//
// It is reckoned exactly and rounded down once: to 0.1 um or to 0.0001 mil. It is not given when no film is, or one of them is not.
//
// Basis: derived.
func Mean(films []quantity.Film) quantity.Film {
	sum := new(big.Rat)
	for _, f := range films {
		if !f.Given() {
			return quantity.Film{}
		}
		sum.Add(sum, exact(f))
	}
	if len(films) == 0 {
		return quantity.Film{}
	}
	return shown(sum.Quo(sum, big.NewRat(int64(len(films)), 1)), films[0], quantity.Down)
}

// exactPlaces are the places of a film in um on its way into a mean: more than any film that a person writes in um or mil needs.
const exactPlaces = 18

// exact is the film in um as a fraction, so that a mean on a limit lies on it.
func exact(f quantity.Film) *big.Rat {
	return f.In(quantity.Micrometre, exactPlaces, quantity.Nearest).Rat()
}

// shown is a number of um as a film in the unit of like, rounded to 0.1 um or 0.0001 mil.
func shown(um *big.Rat, like quantity.Film, r quantity.Rounding) quantity.Film {
	unit, places := quantity.Micrometre, int32(1)
	den := decimal.NewFromBigInt(um.Denom(), 0)
	if like.Unit() == quantity.Mil {
		unit, places = quantity.Mil, 4
		den = den.Mul(decimal.New(254, -1)) // 1 mil is 25.4 um
	}
	n, err := quantity.Quotient(decimal.NewFromBigInt(um.Num(), 0), den, places, r)
	if err != nil { // a film of more than 400 digits: Check refuses it
		return quantity.Film{}
	}
	return unit.Of(n)
}

// single is what a limit of single places is held against: a reading, or a spot's mean.
type single struct {
	zone     string
	mean     *big.Rat // um; while the spots are gathered, the sum
	readings int
	film     quantity.Film // the first reading, for the unit and where it is the only one
}

// show is the single as a film: a reading as it is, a mean rounded.
func (s single) show(r quantity.Rounding) quantity.Film {
	if s.readings == 1 {
		return s.film
	}
	return shown(s.mean, s.film, r)
}

// singles are the readings one by one where a spot is one reading, else the spots in the order of their first readings. A
// reading without a spot is a spot of its own.
func singles(row tables.Acceptance, readings []Reading) []single {
	type place struct{ zone, spot string }
	at := map[place]int{}
	var out []single
	for _, r := range readings {
		if row.Readings > 1 && r.Spot != "" {
			if i, ok := at[place{r.Zone, r.Spot}]; ok {
				out[i].mean.Add(out[i].mean, exact(r.Film))
				out[i].readings++
				continue
			}
			at[place{r.Zone, r.Spot}] = len(out)
		}
		out = append(out, single{zone: r.Zone, mean: exact(r.Film), readings: 1, film: r.Film})
	}
	for i := range out {
		if n := out[i].readings; n > 1 {
			out[i].mean.Quo(out[i].mean, big.NewRat(int64(n), 1))
		}
	}
	return out
}

// areas are the means of the whole areas, in um: of all singles where an area is one spot; else, zone by zone, of each so many spots
// that have readings enough, in their order. What is left over makes no area.
func areas(row tables.Acceptance, all []single) []*big.Rat {
	if row.Spots == 1 {
		return []*big.Rat{meanOf(all)}
	}
	var order []string
	open := map[string][]single{}
	var out []*big.Rat
	for _, s := range all {
		if s.readings < row.Readings {
			continue
		}
		if len(open[s.zone]) == 0 {
			order = append(order, s.zone)
		}
		open[s.zone] = append(open[s.zone], s)
	}
	for _, zone := range order {
		for spots := open[zone]; len(spots) >= row.Spots; spots = spots[row.Spots:] {
			out = append(out, meanOf(spots[:row.Spots]))
		}
	}
	return out
}

// meanOf is the mean of the singles' means.
func meanOf(all []single) *big.Rat {
	sum := new(big.Rat)
	for _, s := range all {
		sum.Add(sum, s.mean)
	}
	return sum.Quo(sum, big.NewRat(int64(len(all)), 1))
}

// correct takes the profile's correction off the readings and says so. A reading below the correction is no film.
func correct(b *tables.Book, s Survey) ([]Reading, finding.List) {
	p, ok := correction(b, s.Profile)
	if !ok {
		return s.Readings, nil
	}
	out := make([]Reading, len(s.Readings))
	for i, r := range s.Readings {
		if r.Film = r.Film.Sub(p.Correction); r.Film.Sign() < 0 {
			r.Film = r.Film.Unit().N(0) // the peaks alone: there is no film less than none
		}
		out[i] = r
	}
	return out, finding.List{{
		Rule: RuleCorrected, Verdict: finding.Fine, Basis: []finding.Basis{p.Basis("correction")},
		Facts: []finding.Fact{{Name: "correction", Value: p.Correction}, {Name: "profile", Value: p.Name}},
	}}
}
