package quantity

import (
	"encoding/json"
	"errors"
	"strings"

	"github.com/shopspring/decimal"
)

// Money is an amount of a currency, both as written. The zero Money is "not
// given", which differs from 0 EUR. There is no exchange: two currencies
// neither add nor compare.
type Money struct {
	_   [0]func() // no ==, no map key
	cur [3]byte
	n   decimal.Decimal
}

const moneyWant = "a number and a currency of three capital letters, such as 12.50 EUR"

// CurrencyError says which two amounts don't go together.
type CurrencyError struct{ A, B Money }

// Error names both amounts.
func (e *CurrencyError) Error() string {
	return "quantity: " + e.A.String() + " and " + e.B.String() + " are not of one currency"
}

// ParseMoney reads "12.50 EUR". The number is written as for any quantity. The
// error is a *ParseError.
func ParseMoney(s string) (Money, error) {
	if len(s) > maxText {
		return Money{}, refuse(s, moneyWant)
	}
	n, rest, bad := scanNumber(strings.Trim(s, " "))
	if bad != "" {
		return Money{}, refuse(s, bad+" and a currency of three capital letters, such as 12.50 EUR")
	}
	m, ok := money(n, strings.TrimLeft(rest, " "))
	if !ok {
		return Money{}, refuse(s, moneyWant)
	}
	return m, nil
}

// NewMoney is n of a currency: three capital letters A to Z, of which this
// package keeps no list. Other letters, and a number whose decimal exponent is
// outside -400 to 400, are errors.
func NewMoney(n decimal.Decimal, currency string) (Money, error) {
	if far(n) {
		return Money{}, errors.New("quantity: an amount of money too large or too small")
	}
	m, ok := money(n, currency)
	if !ok {
		return Money{}, refuse(currency, "a currency of three capital letters, such as EUR")
	}
	return m, nil
}

func money(n decimal.Decimal, currency string) (Money, bool) {
	m := Money{n: n}
	if len(currency) != len(m.cur) {
		return Money{}, false
	}
	for i := range m.cur {
		if c := currency[i]; c < 'A' || c > 'Z' {
			return Money{}, false
		}
		m.cur[i] = currency[i]
	}
	return m, true
}

// Given says whether there is an amount at all, be it 0 of a currency.
func (m Money) Given() bool { return m.cur[0] != 0 }

// IsZero is the opposite of Given, for omitzero.
func (m Money) IsZero() bool { return m.cur[0] == 0 }

// Amount is the number as written, 0 if not given.
func (m Money) Amount() decimal.Decimal { return m.n }

// Currency is the three letters of the currency, "" if not given.
func (m Money) Currency() string {
	if !m.Given() {
		return ""
	}
	return string(m.cur[:])
}

// Sign is -1, 0 or 1, 0 if not given.
func (m Money) Sign() int { return m.n.Sign() }

// Add is m + o, exact. Different currencies, and money not given, are a
// *CurrencyError: a price that is not known is not nought.
func (m Money) Add(o Money) (Money, error) {
	if !m.matches(o) {
		return Money{}, &CurrencyError{m, o}
	}
	return NewMoney(m.n.Add(o.n), m.Currency())
}

// Cmp is -1 if m is less than o, 0 if they are equal and 1 if m is more.
// Different currencies, and money not given, are a *CurrencyError.
func (m Money) Cmp(o Money) (int, error) {
	if !m.matches(o) {
		return 0, &CurrencyError{m, o}
	}
	return m.n.Cmp(o.n), nil
}

func (m Money) matches(o Money) bool { return m.Given() && m.cur == o.cur }

// Equal says whether m and o are the same amount of the same currency, be the
// digits written differently; two not given are equal.
func (m Money) Equal(o Money) bool { return m.cur == o.cur && m.n.Equal(o.n) }

// Scale is m times k, exact; see Round for the coins.
func (m Money) Scale(k decimal.Decimal) Money {
	n := m.n.Mul(k)
	if !m.Given() || far(n) {
		return Money{}
	}
	return Money{cur: m.cur, n: n}
}

// Round is m to the given places, which are -400 to 400.
func (m Money) Round(places int32, r Rounding) Money {
	if !m.Given() {
		return Money{}
	}
	return Money{cur: m.cur, n: quotient(m.n, one, clampPlaces(places), r)}
}

// String is "12.50 EUR", the number with the digits it has, or "not given".
func (m Money) String() string {
	if !m.Given() {
		return "not given"
	}
	return plain(m.n) + " " + m.Currency()
}

// MarshalText is String; money not given is an error.
func (m Money) MarshalText() ([]byte, error) {
	if !m.Given() {
		return nil, errNotGiven
	}
	return []byte(m.String()), nil
}

// UnmarshalText reads what ParseMoney reads.
func (m *Money) UnmarshalText(text []byte) error {
	money, err := ParseMoney(string(text))
	if err != nil {
		return err
	}
	*m = money
	return nil
}

// UnmarshalTOML takes a string that ParseMoney reads, nothing else.
func (m *Money) UnmarshalTOML(v any) error {
	s, ok := v.(string)
	if !ok {
		return refuse(bare(v), "a quoted text of "+moneyWant)
	}
	return m.UnmarshalText([]byte(s))
}

// MarshalJSON is the text as a JSON string, or null if not given.
func (m Money) MarshalJSON() ([]byte, error) {
	if !m.Given() {
		return []byte("null"), nil
	}
	return json.Marshal(m.String())
}

// UnmarshalJSON takes a string that ParseMoney reads, or null for not given.
func (m *Money) UnmarshalJSON(data []byte) error {
	s, null, ok := jsonText(data)
	switch {
	case null:
		*m = Money{}
		return nil
	case !ok:
		return refuse(string(data), "a quoted text of "+moneyWant)
	}
	return m.UnmarshalText([]byte(s))
}
