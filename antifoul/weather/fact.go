package weather

import (
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

// between is a temperature that lies somewhere between two.
type between struct{ low, high quantity.Temperature }

// Show writes both ends for a reader of the system.
func (b between) Show(s quantity.System) string { return b.low.Show(s) + " to " + b.high.Show(s) }

// Ends are the two, for who wants them as values.
func (b between) Ends() (low, high quantity.Temperature) { return b.low, b.high }

// surface is the temperature of a surface: one number where it was measured, from where to where it lies where not.
func surface(s span) finding.Fact {
	if s.low == s.high {
		return degrees("surface", s.low)
	}
	low, errLow := quantity.Celsius.Near(s.low, 1, quantity.Down)
	high, errHigh := quantity.Celsius.Near(s.high, 1, quantity.Up)
	if errLow != nil || errHigh != nil {
		return finding.Fact{Name: "surface", Value: text(s.low) + " to " + text(s.high)}
	}
	return finding.Fact{Name: "surface", Value: between{low, high}}
}

// degrees is a temperature to 0.1 degC, up, as a report says it; for a dew point that is the careful side.
func degrees(name string, c float64) finding.Fact {
	t, err := quantity.Celsius.Near(c, 1, quantity.Up)
	if err != nil {
		return finding.Fact{Name: name, Value: text(c)}
	}
	return finding.Fact{Name: name, Value: t}
}

func percent(name string, p float64) finding.Fact {
	s, err := quantity.Percent.Near(p, 0, quantity.Nearest)
	if err != nil {
		return finding.Fact{Name: name, Value: text(p)}
	}
	return finding.Fact{Name: name, Value: s}
}

func speed(name string, ms float64) finding.Fact {
	v, err := quantity.MetrePerSecond.Near(ms, 1, quantity.Up)
	if err != nil {
		return finding.Fact{Name: name, Value: text(ms)}
	}
	return finding.Fact{Name: name, Value: v}
}
