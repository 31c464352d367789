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
//	spreading rates            down to 4 places
//	wet film                   up to 4 places
//	dry film of a wet reading  down to 4 places
//
// A formula over ranges is reckoned at its corners: the low litres go with the low area, the high solids and the low loss.
//
// # Where it is from
//
//	area = factor × L × (B + T)      Wetted; hullforms.toml. Factor 1: Nicholls's Seamanship, p. 482; others: common practice
//	10 × solids ÷ film               Spread, WetFilm, DryFilm; derived from the volume of the dry paint
//	loss and residue                 Practical, Paint; losses.toml, common practice
//	sizes of can                     OnSale; cans.toml, common practice
//	cheapest cans                    Cans; derived, an exact search
//	wet film to dry, by comb         Comb; derived, the multiple that is too thick is an assumption
//	film from the litres used        Used, Missing; Paint the other way round
//	places under stands              Places, Pads; common practice, the area of one place is an assumption
//
// # What it does not cover
//
// No hull lines; gauge readings are judged by coverage/gauge. No formula for two hulls: their areas are measured. No areas of legs, shafts and
// propellers: these stand with the part. No paint that fills a blasted profile. Which coats go where is not decided here.
package coverage
