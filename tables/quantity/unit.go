package quantity

import (
	"errors"
	"fmt"
	"math"
	"strconv"

	"github.com/shopspring/decimal"
)

// Unit is a unit of one dimension. Each dimension has its own type of unit, so
// litres cannot be asked for in square metres: it does not compile. The zero
// Unit is invalid.
type Unit[D Dim] uint8

// N is a whole number of the unit: Micrometre.N(50) is 50 um.
func (u Unit[D]) N(n int64) Amount[D] { return u.Of(decimal.NewFromInt(n)) }

// Of is n of the unit; n keeps its digits, so 15.20 stays 15.20.
//
// An invalid unit, or a number whose decimal exponent is outside -400 to 400,
// gives the amount that is not given.
func (u Unit[D]) Of(n decimal.Decimal) Amount[D] {
	if u.def() == nil || n.Exponent() < -maxPlaces || n.Exponent() > maxPlaces {
		return Amount[D]{}
	}
	f, _ := n.Float64()
	return Amount[D]{w: &written[D]{n: n, f: f, u: u}}
}

// Near is the border from physics: f of the unit, taken at 12 significant
// digits and then rounded to the given places, so that no binary noise such as
// 0.30000000000000004 becomes a quantity.
//
// Places are -400 to 400. NaN, an infinity, an invalid unit and places beyond
// the range are errors.
func (u Unit[D]) Near(f float64, places int32, r Rounding) (Amount[D], error) {
	switch {
	case u.def() == nil:
		return Amount[D]{}, errors.New("quantity: an invalid unit")
	case math.IsNaN(f), math.IsInf(f, 0):
		return Amount[D]{}, fmt.Errorf("quantity: %v %s is no number to round", f, u)
	}
	n, err := decimal.NewFromString(strconv.FormatFloat(f, 'e', 11, 64))
	if err != nil {
		return Amount[D]{}, fmt.Errorf("quantity: %v %s: %w", f, u, err)
	}
	n, err = Quotient(n, one, places, r)
	if err != nil {
		return Amount[D]{}, err
	}
	return u.Of(n), nil
}

// String is the unit as written in files: "um", "m2", "US gal". An invalid unit
// is "no unit".
func (u Unit[D]) String() string {
	if d := u.def(); d != nil {
		return d.file
	}
	return "no unit"
}

// Symbol is the unit as printed in reports: "µm", "m²", "°C".
func (u Unit[D]) Symbol() string {
	if d := u.def(); d != nil {
		return d.print
	}
	return "no unit"
}

// def is the unit's row in its dimension's table, nil for an invalid unit.
func (u Unit[D]) def() *unitDef {
	t := tableOf[D]()
	if u == 0 || int(u) > len(t.units) {
		return nil
	}
	return &t.units[u-1]
}
