package quantity

import "math"

// System is the reader's system of units. The zero System is unset.
type System uint8

const (
	// Metric is metres, micrometres, litres, degrees Celsius.
	Metric System = iota + 1
	// US is feet, mils, US gallons, degrees Fahrenheit.
	US
)

// shownDigits are the significant digits of a converted number.
const shownDigits = 3

// ParseSystem reads "metric" or "us". The error is a *ParseError.
func ParseSystem(s string) (System, error) {
	switch s {
	case "metric":
		return Metric, nil
	case "us":
		return US, nil
	}
	return 0, refuse(s, "one of metric, us")
}

// String is "metric" or "us", or "unset".
func (s System) String() string {
	switch s {
	case Metric:
		return "metric"
	case US:
		return "us"
	}
	return "unset"
}

// MarshalText is String; the unset system is an error.
func (s System) MarshalText() ([]byte, error) {
	if s != Metric && s != US {
		return nil, errNotGiven
	}
	return []byte(s.String()), nil
}

// UnmarshalText reads what ParseSystem reads.
func (s *System) UnmarshalText(text []byte) error {
	system, err := ParseSystem(string(text))
	if err != nil {
		return err
	}
	*s = system
	return nil
}

// Show is the amount as printed for a reader: in the reader's system first, in
// the other in brackets, as in "9.80 m (32.2 ft)".
//
// A number stays as written in its own system; converted, it is rounded to 3
// significant digits. A unit of neither system (imp gal) comes in the brackets.
// A dimension without counterparts prints once; an unset system prints the
// amount as written first. An amount not given is "not given".
func (a Amount[D]) Show(s System) string {
	if !a.Given() {
		return "not given"
	}
	first, second := a.shown(s)
	out := a.printed(first)
	if second != 0 {
		out += " (" + a.printed(second) + ")"
	}
	return out
}

// shown are the units to print a in: the reader's first, then the other, 0 if
// there is none.
func (a Amount[D]) shown(s System) (first, second Unit[D]) {
	d := a.Unit().def()
	metric, us := Unit[D](d.metric), Unit[D](d.us)
	switch {
	case s == Metric && metric != 0:
		return a.small(metric), a.Unit()
	case s == US && us != 0:
		return a.small(us), a.Unit()
	case metric != 0:
		return a.Unit(), a.small(metric)
	}
	return a.Unit(), a.small(us)
}

// small is millilitres in place of litres below one litre, else u.
func (a Amount[D]) small(u Unit[D]) Unit[D] {
	if tableOf[D]() == &volumes && u == Unit[D](Litre) && a.Sign() != 0 && math.Abs(a.Float(u)) < 1 {
		return Unit[D](Millilitre)
	}
	return u
}

// printed is the number in unit u and the unit's symbol.
func (a Amount[D]) printed(u Unit[D]) string {
	n, d := a.in3(u), u.def()
	if d.single != "" && isOne(n.Number()) {
		return plain(n.Number()) + " " + d.single
	}
	return plain(n.Number()) + " " + d.print
}

// in3 is a in unit u: as written if that is its unit, else rounded to 3
// significant digits.
func (a Amount[D]) in3(u Unit[D]) Amount[D] {
	if u == a.Unit() {
		return a
	}
	f := math.Abs(a.Float(u))
	if math.IsInf(f, 0) || f < 1e-300 {
		return a.To(u, 0, Nearest)
	}
	places := int32(shownDigits-1) - int32(math.Floor(math.Log10(f)))
	n := a.In(u, places, Nearest)
	if n.NumDigits() > shownDigits { // rounded up to a power of ten: 9.996 is 10.0
		n = a.In(u, places-1, Nearest)
	}
	return u.Of(n)
}
