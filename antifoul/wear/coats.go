package wear

import (
	"math"

	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/quantity"
)

// Coats returns the number of working coats for the wished calendar months until the next paint: low, typical and high, by the
// low, typical and high wear. The high end decides.
//
// Each is the largest of three: the type's least number; for a film that wears, the trade's count by months afloat (one coat and
// one more for each 12 months begun); and the coats that the wear uses up:
//
//	coats = ceil(rate × months afloat / typical film a coat)
//
// The count is not cut at the type's most coats; the caller judges that.
// Basis: common practice for the count by months; the rate is an assumption, see Rate.
func Coats(b *tables.Book, c tables.Coating, u Use, months float64) quantity.Range[int] {
	k := In(b, u)
	return k.Coats(&c, months)
}

// Coats returns the number of working coats for the wished calendar months; see the function Coats.
//
// Basis: as of the function Coats.
func (k *Conditions) Coats(c *tables.Coating, months float64) quantity.Range[int] {
	if !c.Wears() {
		return quantity.Exactly(c.Coats)
	}
	rate, afloat, film := k.Rate(c), k.use.AfloatMonths(months), c.Film.Typical.Float(quantity.Micrometre)
	n := func(rate float64) int { return coatsFor(c.Coats, afloat, rate, film) }
	return quantity.Range[int]{Low: n(rate.Low), Typical: n(rate.Typical), High: n(rate.High)}
}

// CoatsAt is Coats of a film that wears for one rate of wear, in micrometres a month afloat.
//
// Basis: as Coats.
func CoatsAt(c tables.Coating, u Use, months, rate float64) int {
	return coatsFor(c.Coats, u.AfloatMonths(months), rate, c.Film.Typical.Float(quantity.Micrometre))
}

// coatsFor counts the coats for so many months afloat, of a type with a least number of them and a film a coat.
func coatsFor(least int, afloat, rate, film float64) int {
	least = max(least, 1+int(math.Ceil(afloat/12-1e-9)))
	return max(least, int(math.Ceil(rate*afloat/film-1e-9)))
}

// Life returns the calendar months that n working coats last on the flat: for a film that wears, the film over the rate; else
// the months of active life of the coating's row, as calendar months of this boat. The zero range means that nothing is known
// to end it (no coating).
//
//	low life = n × low film / high rate; high life the reverse
//
// A rate of zero gives an infinite life.
// Basis: derived from the rate, which is an assumption; the months of a row, common practice or assumption as the row says.
func Life(b *tables.Book, c tables.Coating, u Use, n int) quantity.Range[float64] {
	if !c.Wears() {
		return activeLife(c, u)
	}
	um := func(f quantity.Film) float64 { return f.Float(quantity.Micrometre) * float64(n) }
	return lasts(u, quantity.Range[float64]{Low: um(c.Film.Low), Typical: um(c.Film.Typical), High: um(c.Film.High)}, Rate(b, c, u), quantity.Exactly(1.0))
}

// activeLife is the months of active life of the coating's row, as calendar months of this boat; zero where it has none.
func activeLife(c tables.Coating, u Use) quantity.Range[float64] {
	if !c.Life.Low.Given() {
		return quantity.Range[float64]{}
	}
	m := func(x quantity.Months) float64 { return u.CalendarMonths(x.Float(quantity.Month)) }
	return quantity.Range[float64]{Low: m(c.Life.Low), Typical: m(c.Life.Typical), High: m(c.Life.High)}
}

// driesOut reports whether her yearly time ashore is longer than a used film of the type stands dry, so that it ends with the
// season whatever its months of active life. Of two times one of which nobody said, neither is the longer.
func driesOut(c tables.Coating, u Use) bool {
	return u.AshoreEachYear.Float(quantity.Month)*daysAMonth > c.AirUsed.Float(quantity.Day)
}

// lasts divides a film by a rate and a zone's factor, and turns months afloat into calendar months.
func lasts(u Use, film, rate, zone quantity.Range[float64]) quantity.Range[float64] {
	div := func(film, rate float64) float64 {
		if rate <= 0 {
			return math.Inf(1)
		}
		return u.CalendarMonths(film / rate)
	}
	return quantity.Range[float64]{
		Low:     div(film.Low, rate.High*zone.High),
		Typical: div(film.Typical, rate.Typical*zone.Typical),
		High:    div(film.High, rate.Low*zone.Low),
	}
}
