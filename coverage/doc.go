// Package coverage answers: how much is there to paint, and how much paint, in how many cans, does it take?
//
//	areas, err := coverage.Wetted(book, hull)                                    // by zone, as ranges
//	litres, err := coverage.Paint(book, areas.Total, coating, film, 2, method)   // low, typical, high
//	need := coverage.Need(litres, method.Reserve)                                // the typical with the yard's reserve
//	bought, err := coverage.Cans(need, coverage.OnSale(book, coating, method), nil)
//	pads, err := coverage.Pads(book, hull)                                       // what stands and blocks leave unpainted
//	dry, err := coverage.Comb(book, coat)                                        // what a fresh coat dries to, while it is wet
//	film, err := coverage.Used(book, spent)                                      // the mean film that the litres used made
//
// Areas, films, litres and money are decimals. A formula is multiplied out first, divided once and rounded once:
//
//	area, zone                 up to 0.01 of its unit; the flat takes what the others leave, so that zones add up
//	litres, need               up to 0.01 L
//	litres of a zone           down to 0.01 L; the first zone takes the rest
//	dead film, outline         up to 1 um, up to 0.1 m
//	spreading rates            down to 4 places
//	wet film                   up to 4 places
//	dry film of a wet reading  down to 4 places
//	mixed paint of a kit       down to 0.001 L
//	hardener of a mix          nearest 0.001 L; the base takes the rest
//	pot life, batch            down to 1 min, down to 0.1 L
//
// A formula over ranges is reckoned at its corners: the low litres go with the low area, the high solids and the low loss.
//
// # Where it is from
//
//	areas                            Wetted over coverage/hullform; areamethods.toml, hullforms.toml, pieces.toml
//	10 × solids ÷ film               Spread, WetFilm, DryFilm; derived from the volume of the dry paint
//	loss and residue                 Practical, Paint; losses.toml, common practice
//	sizes of can                     OnSale; cans.toml, common practice
//	cheapest cans                    Cans, IfOut; derived, an exact search
//	two packs                        KitCan, Mix, RatioByMass; derived from the mixing ratio by volume
//	pot life, batch                  PotLife, Batch; factors_coverage.toml, common practice and an assumption
//	shades                           Batches; common practice
//	wet film to dry, by comb         Comb; derived, the multiple that is too thick is an assumption
//	film from the litres used        Used, Missing; Paint the other way round
//	blast profile                    Dead, Fill; derived, the depths are those of the profile's row
//	places under stands              Support.Places, Stands, Pads, Patch; common practice, area and lap of one place are assumptions
//	what else is used up             Supplies; supplies.toml, mostly assumptions
//
// # What it does not cover
//
// No gauge readings: those are coverage/gauge's. No areas of shafts and propellers: these stand with the part. Which coats go where is
// not decided here.
package coverage
