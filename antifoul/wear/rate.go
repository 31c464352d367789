package wear

import (
	"math"

	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/quantity"
)

// Rate returns the film lost a month afloat on the flat of the hull, in micrometres, low to high; zero for a film that does
// not wear.
//
//	rate = (rest + share × (use × (speed / 6 kn)^n − rest)) × temperature × water, never below rest × temperature × water
//
// share is the hours under way a month over the hours that count as regular use, at most 1; n, the temperature factor
// Q10^((T − 15 °C)/10) and the water factor for brackish and fresh water are rows of the factor table. Each end takes the
// factors' ends that make it extreme. What is not given is taken at its whole width: hours under way from none to regular use;
// speed, temperature and water at the reference.
// Where Use.Fits has the coating, its rate stands in place of all this.
// Basis: assumption; the rows of wear.toml say where the literature gives a hint.
func Rate(b *tables.Book, c tables.Coating, u Use) quantity.Range[float64] {
	if !c.Wears() {
		return quantity.Range[float64]{}
	}
	k := In(b, u)
	return k.Rate(&c)
}

// Conditions are what wears the films of one boat, whichever they are. Make them once with In and ask about many coatings.
type Conditions struct {
	use               Use
	share, speed, env quantity.Range[float64]
}

// In returns the conditions of a boat in her use.
//
// Basis: as Rate.
func In(b *tables.Book, u Use) Conditions {
	return Conditions{u, shareUnderWay(b, u), speedFactor(b, u), product(temperatureFactor(b, u), waterFactor(b, u))}
}

// Rate returns micrometres a month afloat, low to high; see the function Rate.
//
// Basis: as of the function Rate.
func (k *Conditions) Rate(c *tables.Coating) quantity.Range[float64] {
	if !c.Wears() {
		return quantity.Range[float64]{}
	}
	for i := range k.use.Fits {
		if k.use.Fits[i].Coating == c.Key {
			return k.use.Fits[i].Rate
		}
	}
	um := func(f quantity.Film) float64 { return f.Float(quantity.Micrometre) }
	share, speed, env := k.share, k.speed, k.env
	end := func(rest, use, share, speed, env float64) float64 {
		moving := max(rest, float64(use*speed))
		return (rest + float64(share*(moving-rest))) * env
	}
	return quantity.Range[float64]{
		Low:     end(um(c.WearRest.Low), um(c.WearUse.Low), share.Low, speed.Low, env.Low),
		Typical: end(um(c.WearRest.Typical), um(c.WearUse.Typical), share.Typical, speed.Typical, env.Typical),
		High:    end(um(c.WearRest.High), um(c.WearUse.High), share.High, speed.High, env.High),
	}
}

// Factors lists the keys of the rows of the factor table that the rate of wear asks for.
func Factors() []string {
	return []string{"q10", "speed-exponent", "speed-reference", "temperature-reference", "use-hours-full", "wear-brackish", "wear-fresh", "record-film-error", "record-place-error", "record-patchiness", "record-far"}
}

// factor returns the value of a factor row. A row that the book does not hold counts as 1: the packages above refuse such a book
// before they ask, see Factors.
func factor(b *tables.Book, key string) quantity.Range[float64] {
	f, err := b.Factor(key)
	if err != nil {
		return quantity.Exactly(1.0)
	}
	return f.Value
}

func shareUnderWay(b *tables.Book, u Use) quantity.Range[float64] {
	if !u.UnderWay.Given() {
		return quantity.Range[float64]{Low: 0, Typical: 0.5, High: 1}
	}
	afloat := u.AfloatMonths(12)
	if afloat <= 0 {
		return quantity.Range[float64]{}
	}
	full := factor(b, "use-hours-full")
	share := func(full float64) float64 { return min(1, u.UnderWay.Float(quantity.Hour)/afloat/full) }
	return quantity.Range[float64]{Low: share(full.High), Typical: share(full.Typical), High: share(full.Low)}
}

func speedFactor(b *tables.Book, u Use) quantity.Range[float64] {
	if !u.Speed.Given() {
		return quantity.Exactly(1.0)
	}
	n := factor(b, "speed-exponent")
	ratio := u.Speed.Float(quantity.Knot) / factor(b, "speed-reference").Typical
	return power(ratio, n)
}

func temperatureFactor(b *tables.Book, u Use) quantity.Range[float64] {
	if !u.WaterTemperature.Given() {
		return quantity.Exactly(1.0)
	}
	exponent := (u.WaterTemperature.Float(quantity.Celsius) - factor(b, "temperature-reference").Typical) / 10
	q := factor(b, "q10")
	v := quantity.Range[float64]{Low: math.Pow(q.Low, exponent), Typical: math.Pow(q.Typical, exponent), High: math.Pow(q.High, exponent)}
	return ordered(v)
}

func waterFactor(b *tables.Book, u Use) quantity.Range[float64] {
	switch u.Water {
	case "brackish":
		return factor(b, "wear-brackish")
	case "fresh":
		return factor(b, "wear-fresh")
	}
	return quantity.Exactly(1.0)
}

// power returns ratio^n for a range of n, in rising order.
func power(ratio float64, n quantity.Range[float64]) quantity.Range[float64] {
	return ordered(quantity.Range[float64]{Low: math.Pow(ratio, n.Low), Typical: math.Pow(ratio, n.Typical), High: math.Pow(ratio, n.High)})
}

func ordered(r quantity.Range[float64]) quantity.Range[float64] {
	r.Low, r.High = min(r.Low, r.High), max(r.Low, r.High)
	return r
}

func product(a, b quantity.Range[float64]) quantity.Range[float64] {
	return quantity.Range[float64]{Low: a.Low * b.Low, Typical: a.Typical * b.Typical, High: a.High * b.High}
}
