package wear

import (
	"math"

	"boatyard.example/bottomwork/compat"
	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

// longest is the most calendar months that a forecast speaks of; beyond it "ten years or more" is all that can be said.
const longest = 120

// Forecast is what one part's film is expected to do.
type Forecast struct {
	Coating  tables.Coating
	Rate     quantity.Range[float64] // um a month afloat on the flat; zero for a film that does not wear
	Zones    []ZoneForecast          // in the order asked for
	Life     quantity.Range[float64] // calendar months that the working film is good for, on the flat of a hull or on the part
	Launch   quantity.Date           // not given: dates are not given either
	NextHaul quantity.Date           // from the low life, rounded down to a whole month
	Findings finding.List            // what else ends it: the clocks in the air, the season; what her own record says
	Own      *Fit                    // the fit that the rate is from; nil: it is from the tables
	use      Use
}

// ZoneForecast is when the colour under the working coats shows in one zone.
type ZoneForecast struct {
	Zone   string
	Film   quantity.Range[float64] // um of working film
	Wear   quantity.Range[float64] // times the wear of the flat
	Months quantity.Range[float64] // calendar months until it is worn through
	First  quantity.Date           // from the low end, rounded down; when to begin to look
}

// Predict returns the forecast of the layers on one part, for the zones given, launched on the date given (which may be not
// given). Working film is that of the layers For Working everywhere, and of those For Extra in zones that take extra coats.
// Layers of which none is a working layer give a forecast without a coating, life or zones.
//
//	months of a zone, low = low film / (high rate × high zone factor), as calendar months; the high end the reverse
//
// Life and months are cut at 120. Dates are counted from the low end, rounded down to a whole month.
// Basis: derived from the rate, which is an assumption; see Rate.
func Predict(b *tables.Book, layers compat.Stack, u Use, zones []tables.Zone, launch quantity.Date) Forecast {
	f := Forecast{Launch: launch}
	var flat, extra quantity.Range[float64]
	for _, l := range layers {
		film := micrometres(l.Film)
		switch l.For {
		case compat.Working:
			f.Coating = l.Coating
			flat = sum(flat, film)
		case compat.Extra:
			extra = sum(extra, film)
		default: // what is under the working coats does not work
		}
	}
	if f.Coating.Key == "" {
		return f
	}
	f.Rate = Rate(b, f.Coating, u)
	f.Findings = Air(f.Coating, u)
	for _, own := range u.Fits {
		if own.Coating == f.Coating.Key {
			f.Own = &own
			f.Findings = append(f.Findings, own.Findings...)
		}
	}
	f.use = u
	if !f.Coating.Wears() {
		f.Life = clip(activeLife(f.Coating, u))
		if driesOut(f.Coating, u) { // it ends with the season, whatever its months of active life
			s := u.season()
			f.Life = quantity.Range[float64]{Low: min(f.Life.Low, s), Typical: min(f.Life.Typical, s), High: min(f.Life.High, s)}
		}
		if f.Life.High > 0 { // the zero range: nothing is known to end it
			f.NextHaul = after(launch, f.Life.Low)
		}
		return f
	}
	f.Life = clip(lasts(u, flat, f.Rate, mainWear(zones)))
	f.NextHaul = after(launch, f.Life.Low)
	for _, z := range zones {
		film := flat
		if z.ExtraCoats > 0 {
			film = sum(film, extra)
		}
		m := clip(lasts(u, film, f.Rate, z.Wear))
		f.Zones = append(f.Zones, ZoneForecast{Zone: z.Key, Film: film, Wear: z.Wear, Months: m, First: after(launch, m.Low)})
	}
	return f
}

// mainWear is the wear of the zone that the life is told for: the flat of a hull, or a part's own zone.
func mainWear(zones []tables.Zone) quantity.Range[float64] {
	for _, z := range zones {
		if z.Key == "flat" {
			return z.Wear
		}
	}
	switch {
	case len(zones) == 0:
	case len(zones) == 1 || zones[0].Part: // its own zone comes first, what goes with it, as the sole with the keel, behind it
		return zones[0].Wear
	}
	return quantity.Exactly(1.0)
}

// First returns the zone whose working film is worn through first, by the low end, of equal ones the first asked for; false when no zone wears.
func (f Forecast) First() (ZoneForecast, bool) {
	if len(f.Zones) == 0 {
		return ZoneForecast{}, false
	}
	first := f.Zones[0]
	for _, z := range f.Zones[1:] {
		if z.Months.Low < first.Months.Low {
			first = z
		}
	}
	return first, true
}

func micrometres(r quantity.Range[quantity.Film]) quantity.Range[float64] {
	um := func(f quantity.Film) float64 { return f.Float(quantity.Micrometre) }
	return quantity.Range[float64]{Low: um(r.Low), Typical: um(r.Typical), High: um(r.High)}
}

func sum(a, b quantity.Range[float64]) quantity.Range[float64] {
	return quantity.Range[float64]{Low: a.Low + b.Low, Typical: a.Typical + b.Typical, High: a.High + b.High}
}

func clip(r quantity.Range[float64]) quantity.Range[float64] {
	c := func(x float64) float64 { return min(longest, x) }
	return quantity.Range[float64]{Low: c(r.Low), Typical: c(r.Typical), High: c(r.High)}
}

// after returns the date whole months later: life rounds down. A month short by a rounding error counts as whole.
func after(launch quantity.Date, months float64) quantity.Date {
	if !launch.Given() {
		return quantity.Date{}
	}
	return launch.AddMonths(int(math.Floor(months + 1e-9)))
}
