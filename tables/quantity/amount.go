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
	_ [0]func()   // no ==, no map key
	w *written[D] // nil if not given; never changed, so copies share it: rows are full of amounts
}

// written is an amount as written.
type written[D Dim] struct {
	n decimal.Decimal
	f float64 // the number as float, for physics and for quick comparing
	u Unit[D]
}

// mixedPlaces are the places of a sum of two units without a common decimal.
const mixedPlaces = 12

// Given says whether there is an amount at all, be it 0 of something.
func (a Amount[D]) Given() bool { return a.w != nil }

// IsZero is the opposite of Given, for omitzero. For nought of something ask
// Sign.
func (a Amount[D]) IsZero() bool { return a.w == nil }

// Number is the number as written, 0 if not given.
func (a Amount[D]) Number() decimal.Decimal {
	if a.w == nil {
		return decimal.Decimal{}
	}
	return a.w.n
}

// Unit is the unit as written, the invalid unit if not given.
func (a Amount[D]) Unit() Unit[D] {
	if a.w == nil {
		return 0
	}
	return a.w.u
}

// Sign is -1, 0 or 1 for the number as written, 0 if not given.
func (a Amount[D]) Sign() int { return a.Number().Sign() }

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
	if a.w == nil || b.w == nil {
		return Amount[D]{}
	}
	if a.Unit() == b.Unit() {
		return a.Unit().Of(op(a.Number(), b.Number()))
	}
	t := tableOf[D]()
	if t.affine {
		return Amount[D]{}
	}
	// a·fa + b·fb over the common denominator: one division at most.
	da, db := a.Unit().def(), b.Unit().def()
	x := scaled(a.Number(), da).Mul(decimal.NewFromInt(db.den))
	y := scaled(b.Number(), db).Mul(decimal.NewFromInt(da.den))
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
func (a Amount[D]) Scale(k decimal.Decimal) Amount[D] { return a.Unit().Of(a.Number().Mul(k)) }

// Cmp is -1 if a is less than b, 0 if they are equal and 1 if a is more.
//
// It is exact whatever the units: 1 ft equals 0.3048 m, 32 degF equals 0 degC.
// An amount not given is less than any that is given, and equal to another not
// given; ask Given where that matters.
func (a Amount[D]) Cmp(b Amount[D]) int {
	switch {
	case a.w == nil || b.w == nil:
		return int(min(a.Unit(), 1)) - int(min(b.Unit(), 1))
	case a.Unit() == b.Unit():
		if sure := apart(a.w.f, b.w.f, 0); sure != 0 {
			return sure
		}
		return a.Number().Cmp(b.Number())
	}
	da, db := a.Unit().def(), b.Unit().def()
	if sure := apart(convert(a.w.f, da, &unity), convert(b.w.f, db, &unity), float64(da.off+db.off)); sure != 0 {
		return sure
	}
	x := scaled(a.Number(), da).Mul(decimal.NewFromInt(db.den))
	y := scaled(b.Number(), db).Mul(decimal.NewFromInt(da.den))
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
	da, du := a.Unit().def(), u.def()
	if da == nil || du == nil {
		return decimal.Decimal{}
	}
	places = clampPlaces(places)
	if a.Unit() == u {
		return quotient(a.Number(), one, places, r)
	}
	num := scaled(a.Number(), da)
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
	if a.w == nil {
		return Amount[D]{}
	}
	return u.Of(a.In(u, places, r))
}

// Float is the number of units u in a as a float, for physics and scores. It is
// within some units in the last place; no decimal is touched. For an amount not
// given, or an invalid u, it is NaN.
func (a Amount[D]) Float(u Unit[D]) float64 {
	if a.w != nil && a.w.u == u {
		return a.w.f
	}
	da, du := a.Unit().def(), u.def()
	if da == nil || du == nil {
		return math.NaN()
	}
	return convert(a.w.f, da, du)
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
