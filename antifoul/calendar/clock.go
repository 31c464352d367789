package calendar

import (
	"math"

	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

const (
	gasConstant = 8.314462618 // J/mol/K. Source: SI, Avogadro's constant times Boltzmann's
	zeroCelsius = 273.15      // K
)

// Clock tells how fast a coating dries or cures at a temperature, against the temperature at which its row states its times. Both its hands
// are careful: one for what must have passed, the other for what must not.
type Clock struct {
	at       float64 // degC, of the row
	energy   quantity.Range[float64]
	from, to float64
	points   []point
	own      float64 // the points' multiple at the row's own temperature
}

type point struct {
	at    float64
	times quantity.Range[float64]
}

// ClockOf returns the clock of the coating, by the row of dryings.toml that fits it. A book without such a row, and a coating that does not
// say at which temperature its times hold, are a finding.Faults.
//
// Basis: that of the row of dryings.toml, which the clock carries.
func ClockOf(b *tables.Book, c tables.Coating) (Clock, error) {
	d, ok := b.DryingOf(c)
	if !ok {
		return Clock{}, finding.Faults{{Kind: finding.ErrMissing, Key: "drying", Want: "a row for coatings like " + c.Key}}
	}
	if !c.At.Given() {
		return Clock{}, finding.Faults{{Kind: finding.ErrMissing, Key: "coating[" + c.Key + "].at", Want: "the temperature at which its times hold"}}
	}
	k := Clock{at: c.At.Float(quantity.Celsius), energy: d.Energy}
	if d.From.Given() {
		k.from, k.to = d.From.Float(quantity.Celsius), d.To.Float(quantity.Celsius)
	}
	for p := range d.Points() {
		k.points = append(k.points, point{p.At.Float(quantity.Celsius), p.Times})
	}
	k.own = k.multiple()
	return k, nil
}

// Slow returns the share of an hour at the row's temperature that surely passes in an hour at degC: by it a window opens and a film
// cures. Below the span, or the coldest point, nothing passes.
//
//	two-pack: exp(energy ÷ R × (1/T₀ − 1/T)), at the end of the energy's range that gives less; above the span no more than at its end
//	one-pack: times at the row's temperature ÷ most times at the next point that is no hotter
//
// Source: Arrhenius; energies and points are rows of dryings.toml. The zero Clock passes as stated.
func (k Clock) Slow(degC float64) float64 {
	switch {
	case len(k.points) > 0:
		i := len(k.points) - 1
		for i >= 0 && k.points[i].at > degC {
			i--
		}
		if i < 0 {
			return 0
		}
		return k.own / k.points[i].times.High
	case k.energy.High == 0:
		return 1
	case degC < k.from:
		return 0
	}
	t := min(degC, k.to)
	return min(k.pace(k.energy.Low, t), k.pace(k.energy.High, t))
}

// Fast returns the share of an hour at the row's temperature that may pass in an hour at degC: by it a window closes. It is no less than at
// the cold end of the span, and grows on above the hot one.
//
//	two-pack: as Slow, at the end of the energy's range that gives more
//	one-pack: times at the row's temperature ÷ least times at the next point that is no colder
//
// Source: as Slow.
func (k Clock) Fast(degC float64) float64 {
	if len(k.points) > 0 {
		i := 0
		for i < len(k.points)-1 && k.points[i].at < degC {
			i++
		}
		return k.own / k.points[i].times.Low
	}
	t := max(degC, k.from)
	return max(k.pace(k.energy.Low, t), k.pace(k.energy.High, t))
}

// pace is Arrhenius's ratio of speeds for an energy in kJ/mol.
func (k Clock) pace(energy, degC float64) float64 {
	return math.Exp(energy * 1000 / gasConstant * (1/(k.at+zeroCelsius) - 1/(degC+zeroCelsius)))
}

// multiple is that at the row's own temperature, 1 where there are no points; between two points it lies on the line, since only the row's times are set against it.
func (k Clock) multiple() float64 {
	if len(k.points) == 0 {
		return 1
	}
	last := k.points[0]
	at := max(k.at, last.at)
	for _, p := range k.points[1:] {
		if at <= p.at {
			return last.times.Typical + float64((p.times.Typical-last.times.Typical)*(at-last.at)/(p.at-last.at))
		}
		last = p
	}
	return last.times.Typical
}
