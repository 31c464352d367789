// Package leach answers one question: how much biocide is in the film, and how much of it leaves?
//
// What is in a dry film follows from the wet paint by an identity. What leaves it is reckoned by mass balance, as ISO 10890 does: a
// share of all that is there, spread evenly over the life. That is a mean, by the standard's words a worst case, and never a
// measurement. Beside it stands the same mean divided by the factor that Finnie (2006) found against ships in service; the two are always given together, since field
// readings of leisure paints (Lagerström, 2018) lay above the calculated figures and not below them.
//
//	in, err := leach.Content(book, coating, film)         // ug/cm2 of each active, and of copper and zinc in all
//	rate, err := leach.Mean(book, coating, film, 12)      // ug/cm2 a day over 12 months, raw and corrected
//	grams, err := leach.Load(copper.Raw, area, 6)         // grams on an area in 6 months
//	fs := leach.Against(rate, leach.Cap{Place: "California", Law: "its rule", Max: max}) // beside a place's limit
//
// A coating of which the actives, their content, the solids or the density are not known gives Ask, never nought.
//
//	source                             what was taken        where
//	atomic weights (IUPAC)             shares of metal       actives.toml, content.go
//	ISO 10890:2010                     mass balance, share   mean.go, published/iso-10890-2010.toml
//	Finnie 2006, abstract              the divisor           mean.go, published/finnie-2006.toml
//	Lagerström 2018, abstract          what is against it    mean.go, published/lagerstrom-2018.toml
//	a place's law                      the limit             cap.go, laws.toml
//
// Not covered: how release changes over the life, with salt, warmth and speed; the first weeks, which release more; what a cleaning
// takes off; zinc oxide, which is no biocide and is in most of these paints. An authority approves a product by the product's own
// figures, and nothing here stands in for them.
package leach
