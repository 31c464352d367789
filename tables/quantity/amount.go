package quantity

import (
	"math"

	"github.com/shopspring/decimal"
)

// Amount is a number of a unit, both as written. Use its names: Length, Area,
// Film, Volume and so on.
//
// The zero Amount is "not given", which differs from 0 m. Amounts cannot be
// compared with ==, which would compare spellings: use Equal or Cmp.
type Amount[D Dim] struct {
	_ [0]func() // no ==, no map key
	f float64   // the number as float, for physics and for quick comparing
	n decimal.Decimal
	u Unit[D]
}

// mixedPlaces are the places of a sum of two units without a common decimal.
const mixedPlaces = 12

// Given says whether there is an amount at all, be it 0 of something.
func (a Amount[D]) Given() bool { return a.u != 0 }

// IsZero is the opposite of Given, for omitzero. For nought of something ask
// Sign.
func (a Amount[D]) IsZero() bool { return a.u == 0 }

// Number is the number as written, 0 if not given.
func (a Amount[D]) Number() decimal.Decimal { return a.n }

// Unit is the unit as written, the invalid unit if not given.
func (a Amount[D]) Unit() Unit[D] { return a.u }

// Sign is -1, 0 or 1 for the number as written, 0 if not given.
func (a Amount[D]) Sign() int { return a.n.Sign() }

// Add is a + b: in their unit if they share one, else in the dimension's base
// unit (see the constants).
//
// The sum is exact, but for two units of Spread or of Speed, which have no
// common decimal: it is then rounded to 12 places. Two temperatures in
// different units don't add, since a level on one scale is no step on the
// other: the sum is not given. A sum with an amount not given is not given.
func (a Amount[D]) Add(b Amount[D]) Amount[D] { return a.sum(b, decimal.Decimal.Add) }

// Sub is a - b, with unit, exactness and what is not given as in Add.
func (a Amount[D]) Sub(b Amount[D]) Amount[D] { return a.sum(b, decimal.Decimal.Sub) }

func (a Amount[D]) sum(b Amount[D], op func(x, y decimal.Decimal) decimal.Decimal) Amount[D] {
	if a.u == 0 || b.u == 0 {
		return Amount[D]{}
	}
	if a.u == b.u {
		return a.u.Of(op(a.n, b.n))
	}
	t := tableOf[D]()
	if t.affine {
		return Amount[D]{}
	}
	// a·fa + b·fb over the common denominator: one division at most.
	da, db := a.u.def(), b.u.def()
	x := scaled(a.n, da).Mul(decimal.NewFromInt(db.den))
	y := scaled(b.n, db).Mul(decimal.NewFromInt(da.den))
	n := op(x, y)
	if den := da.den * db.den; den != 1 {
		n = quotient(n, decimal.NewFromInt(den), mixedPlaces, Nearest)
	}
	return Unit[D](t.base).Of(n)
}

// scaled is (n - off) · num · 10^exp: the amount in the base unit, times den.
func scaled(n decimal.Decimal, d *unitDef) decimal.Decimal {
	if d.off != 0 {
		n = n.Sub(decimal.NewFromInt(d.off))
	}
	if d.num == 1 && d.exp == 0 {
		return n
	}
	return n.Mul(decimal.New(d.num, d.exp))
}

// Scale is a times k, in the unit of a, exact. For a temperature it multiplies
// the number as written.
func (a Amount[D]) Scale(k decimal.Decimal) Amount[D] { return a.u.Of(a.n.Mul(k)) }

// Cmp is -1 if a is less than b, 0 if they are equal and 1 if a is more.
//
// It is exact whatever the units: 1 ft equals 0.3048 m, 32 degF equals 0 degC.
// An amount not given is less than any that is given, and equal to another not
// given; ask Given where that matters.
func (a Amount[D]) Cmp(b Amount[D]) int {
	switch {
	case a.u == 0 || b.u == 0:
		return int(min(a.u, 1)) - int(min(b.u, 1))
	case a.u == b.u:
		if sure := apart(a.f, b.f, 0); sure != 0 {
			return sure
		}
		return a.n.Cmp(b.n)
	}
	da, db := a.u.def(), b.u.def()
	if sure := apart(convert(a.f, da, &unity), convert(b.f, db, &unity), float64(da.off+db.off)); sure != 0 {
		return sure
	}
	x := scaled(a.n, da).Mul(decimal.NewFromInt(db.den))
	y := scaled(b.n, db).Mul(decimal.NewFromInt(da.den))
	return x.Cmp(y)
}

// unity is a unit equal to the base, to convert to.
var unity = unitDef{num: 1, den: 1}

// apart is -1 or 1 if x and y differ by far more than floats err, else 0. off
// is what was subtracted on the way to either. Infinities are never apart.
func apart(x, y, off float64) int {
	const margin = 1e-12 // some thousand times the error of the conversion
	limit := margin * (math.Abs(x) + math.Abs(y) + off)
	switch {
	case x-y > limit:
		return 1
	case y-x > limit:
		return -1
	}
	return 0
}

// Equal says whether a and b are the same amount, be it written differently.
func (a Amount[D]) Equal(b Amount[D]) bool { return a.Cmp(b) == 0 }

// In is the number of units u in a, rounded once to the given places.
//
//	((n - offA) · factorA + offU · factorU) / factorU
//
// The answer has exactly the places asked for; places beyond -400 to 400 are
// taken as those. For an amount not given, or an invalid u, it is 0: ask Given
// first.
func (a Amount[D]) In(u Unit[D], places int32, r Rounding) decimal.Decimal {
	da, du := a.u.def(), u.def()
	if da == nil || du == nil {
		return decimal.Decimal{}
	}
	places = clampPlaces(places)
	if a.u == u {
		return quotient(a.n, one, places, r)
	}
	num := scaled(a.n, da)
	if du.den != 1 {
		num = num.Mul(decimal.NewFromInt(du.den))
	}
	den := decimal.New(du.num, du.exp)
	if da.den != 1 {
		den = den.Mul(decimal.NewFromInt(da.den))
	}
	if du.off != 0 {
		num = num.Add(den.Mul(decimal.NewFromInt(du.off)))
	}
	return quotient(num, den, places, r)
}

// To is a in unit u, rounded once to the given places, as In. An amount not
// given stays so; an invalid u gives an amount not given.
func (a Amount[D]) To(u Unit[D], places int32, r Rounding) Amount[D] {
	if a.u == 0 {
		return Amount[D]{}
	}
	return u.Of(a.In(u, places, r))
}

// Float is the number of units u in a as a float, for physics and scores. It is
// within some units in the last place; no decimal is touched. For an amount not
// given, or an invalid u, it is NaN.
func (a Amount[D]) Float(u Unit[D]) float64 {
	da, du := a.u.def(), u.def()
	if da == nil || du == nil {
		return math.NaN()
	}
	if a.u == u {
		return a.f
	}
	return convert(a.f, da, du)
}

// convert is f of unit a in unit b. Whole numbers are multiplied first and
// divided once, so that 50 ft are 15.24 m and not a neighbour of it.
func convert(f float64, a, b *unitDef) float64 {
	num := (f - float64(a.off)) * float64(a.num) * float64(b.den)
	den := float64(a.den) * float64(b.num)
	switch k := a.exp - b.exp; {
	case k > 0:
		num *= pow10[k]
	case k < 0:
		den *= pow10[-k]
	}
	return num/den + float64(b.off)
}

// pow10 covers every difference of exponents in the tables.
var pow10 = [...]float64{1, 1e1, 1e2, 1e3, 1e4, 1e5, 1e6, 1e7, 1e8, 1e9, 1e10, 1e11, 1e12}
