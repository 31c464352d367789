package quantity

import (
	"errors"
	"fmt"

	"github.com/shopspring/decimal"
)

// Rounding says what happens to the digits that are cut off. Paint rounds up,
// life rounds down.
type Rounding uint8

const (
	// Nearest rounds to the nearest, a half away from zero: 2.5 to 3, -2.5 to -3.
	// It is the default.
	Nearest Rounding = iota
	// Up rounds away from zero: 2.1 to 3, -2.1 to -3.
	Up
	// Down rounds toward zero: 2.9 to 2, -2.9 to -2.
	Down
)

// maxPlaces bounds places and exponents, so that no absurd one eats the memory.
const maxPlaces = 400

var one = decimal.NewFromInt(1)

// Quotient is num / den, rounded once to the given places. It is the one
// division of decimals: multiply first, divide last.
//
// The answer has exactly the places asked for: 1/2 to 3 places is 0.500.
// Negative places round to tens, hundreds and so on. A den of zero is an error;
// so are places or exponents outside -400 to 400 and an unknown rounding.
//
// Basis: derived (whole-number division with remainder, so the rounding is exact).
func Quotient(num, den decimal.Decimal, places int32, r Rounding) (decimal.Decimal, error) {
	switch {
	case den.Sign() == 0:
		return decimal.Decimal{}, errors.New("quantity: division by zero")
	case places < -maxPlaces || places > maxPlaces:
		return decimal.Decimal{}, fmt.Errorf("quantity: %d places, taken: -%d to %d", places, maxPlaces, maxPlaces)
	case far(num) || far(den):
		return decimal.Decimal{}, errors.New("quantity: a number too large or too small to divide")
	case r > Down:
		return decimal.Decimal{}, fmt.Errorf("quantity: rounding %d is unknown", r)
	}
	return quotient(num, den, places, r), nil
}

func far(n decimal.Decimal) bool {
	return n.Exponent() < -maxPlaces || n.Exponent() > maxPlaces
}

// quotient divides, after the caller has seen to den and places.
func quotient(num, den decimal.Decimal, places int32, r Rounding) decimal.Decimal {
	q, rest := num.QuoRem(den, places) // cut toward zero
	if rest.Sign() == 0 {
		return q
	}
	away := false
	switch r {
	case Up:
		away = true
	case Down:
	default:
		half := den.Abs().Shift(-places)
		away = rest.Abs().Mul(decimal.NewFromInt(2)).Cmp(half) >= 0
	}
	if !away {
		return q
	}
	return q.Add(decimal.New(int64(num.Sign()*den.Sign()), -places))
}

// clampPlaces clamps to the places that a conversion may have.
func clampPlaces(places int32) int32 { return min(max(places, -maxPlaces), maxPlaces) }
