package wear

import (
	"math"

	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/quantity"
)

// Left returns the working film that is left in the zone so many calendar months after the launch, in micrometres, low to high; false for
// a film that does not wear and for a zone that was not asked for.
//
//	left = film − rate × zone factor × months afloat, not below nought; the low end with the high wear
//
// Basis: derived from the rate; see Rate.
func (f Forecast) Left(zone string, months float64) (quantity.Range[float64], bool) {
	for _, z := range f.Zones {
		if z.Zone != zone {
			continue
		}
		afloat := f.use.AfloatMonths(max(0, months))
		left := func(film, rate, wear float64) float64 { return max(0, film-float64(rate*wear*afloat)) }
		return quantity.Range[float64]{
			Low:     left(z.Film.Low, f.Rate.High, z.Wear.High),
			Typical: left(z.Film.Typical, f.Rate.Typical, z.Wear.Typical),
			High:    left(z.Film.High, f.Rate.Low, z.Wear.Low),
		}, true
	}
	return quantity.Range[float64]{}, false
}

// On is Left on a day: the calendar months are the days since the launch by the mean month. It is false without a launch and before it.
func (f Forecast) On(zone string, day quantity.Date) (quantity.Range[float64], bool) {
	if !f.Launch.Given() || !day.Given() || day.Before(f.Launch) {
		return quantity.Range[float64]{}, false
	}
	return f.Left(zone, float64(f.Launch.DaysUntil(day))/daysAMonth)
}

// Film returns the working film that the flat wants for so many calendar months, in micrometres, and whole coats of the coating's typical
// film that hold its high end, which decides; see Coats for what else a count asks for. Nought for a film that does not wear.
//
//	film = rate × months afloat
//
// Basis: derived from the rate; see Rate.
func Film(b *tables.Book, c tables.Coating, u Use, months float64) (film quantity.Range[float64], coats int) {
	r := Rate(b, c, u)
	n := u.AfloatMonths(months)
	film = quantity.Range[float64]{Low: r.Low * n, Typical: r.Typical * n, High: r.High * n}
	if coat := c.Film.Typical; coat.Given() {
		coats = int(math.Ceil(film.High/coat.Float(quantity.Micrometre) - 1e-9))
	}
	return film, coats
}
