// Package quantity answers: what is a length, an area, a film, a volume …, and
// how is each written and read?
//
//	film, err := quantity.Parse[quantity.Film]("5 mil")     // number and unit stay as written
//	um := film.In(quantity.Micrometre, 0, quantity.Nearest) // 127
//	need := quantity.Litre.N(2).Add(quantity.USQuart.N(1))  // 2.946352946 L, exact
//	line := film.Show(quantity.Metric)                      // "127 µm (5 mil)"
//	worn := quantity.Micrometre.N(130).Cmp(film)            // 1: compared exactly
//
// # How a quantity is written
//
// A quantity in a file is a quoted text: a number, a space and a unit, as in
// "15.2 m" or "5 mil". A bare number is refused with the units taken. The
// number is an optional sign and digits with at most one decimal point, at most
// 18 digits in all; no exponent, no comma, no thousands separator. Number and
// unit stay as written until a conversion is asked for.
//
//	dimension     units in a file            printed differently as
//	Length        m, ft, in, mm
//	Area          m2, ft2                    m², ft²
//	Film          um, mil                    µm
//	Volume        L, mL, US gal, US qt, imp gal
//	Spread        m2/L, ft2/US gal           m²/L, ft²/US gal
//	Share         %
//	Mass          kg, lb, t
//	Density       kg/L
//	Temperature   degC, degF                 °C, °F
//	Speed         kn, m/s
//	Duration      min, h, d
//	Months        months, years              1 month, 1 year
//	WorkRate      m2/h, ft2/h                m²/h, ft²/h
//	Potential     mV, V
//	Release       ug/cm2/d                   µg/cm²/d
//
// The printed form is read as well. "gal" alone is refused: it must say which.
//
// # Not given
//
// The zero Amount, Date, Money and YesNo mean "not given", which differs from
// nought of something. Sums with one that is not given are not given.
//
// # Where it is from
//
//	unit factors, all exact          NIST Special Publication 811 (2008), Appendix B; NIST Handbook 44, Appendix C
//	a month is not a duration        1 year = 12 months, and that is all; days follow from a Date
//	decimal division                 Quotient, the only one; always to stated places
//
// # What it does not cover
//
// No clock, no time zone, no exchange rates, no unit that is a product of two
// quantities of a formula: a formula belongs to the package that owns it.
package quantity
