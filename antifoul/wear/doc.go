// Package wear answers one question: how long does the film last, and when will the colours show it?
//
// A film that wears away (ablative, self-polishing, hybrid) lasts by thickness: its rate comes from the coating's row, the
// boat's use, the water and the zone. A film that stays (hard, thin, foul-release, inert) lasts by the months of its row, and a
// hard one also by its two clocks in the air. Every answer is a range; the end that decides is named: coats from the high wear,
// the next haul-out from the low life.
//
//	rate := wear.Rate(book, coating, use)               // um a month on the flat, low to high
//	n := wear.Coats(book, coating, use, 24)             // working coats for 24 months, from the high wear
//	u.Fits = wear.FitRecords(book, u, records)          // her own record, in place of the tables' rates
//	f := wear.Predict(book, layers, use, zones, launch) // when the signal shows, zone by zone
//
// The rates are working values of this module, not published figures: each paint's own data sheet, and the boat's own record,
// outrank them.
//
//	question                    file
//	what the boat does          use.go
//	rate on the flat            rate.go
//	coats for an interval       coats.go
//	signal and next haul-out    forecast.go
//	hard films in the air       air.go
//	film left on a day          left.go
//	what was seen of a film     record.go
//	the rate from it            fit.go
//
// Not covered: leaching of hard films, and growth.
package wear
