package entry

import (
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

const moneyTaken = `an amount and a currency, "58.00 EUR"`

// Money reads a price of zero or more; not given when the key is absent.
func Money(r *Row, key string) quantity.Money {
	var none quantity.Money
	v := r.Raw(key)
	if v == nil {
		return none
	}
	s, ok := v.(string)
	m, err := quantity.ParseMoney(s)
	switch {
	case !ok || err != nil:
		r.Fault(finding.ErrValue, key, Describe(v), moneyTaken)
		return none
	case m.Sign() < 0:
		r.Fault(finding.ErrImpossible, key, Describe(v), "a price of zero or more")
		return none
	}
	return m
}

// MoneyRange reads a price as a range: one amount, or three of one currency, low, typical and high, rising; none is below zero.
func MoneyRange(r *Row, key string) quantity.Range[quantity.Money] {
	list, ok := r.Raw(key).([]any)
	if !ok {
		return quantity.Exactly(Money(r, key))
	}
	var m [3]quantity.Money
	good := len(list) == len(m)
	for i := 0; good && i < len(m); i++ {
		s, _ := list[i].(string) // anything else is no money either
		var err error
		m[i], err = quantity.ParseMoney(s)
		good = err == nil && m[i].Sign() >= 0
		if good && i > 0 {
			d, err := m[i-1].Cmp(m[i])
			good = err == nil && d <= 0
		}
	}
	if !good {
		r.Fault(finding.ErrValue, key, Describe(list), "three amounts of one currency, zero or more, rising: low, typical, high; each "+moneyTaken)
		return quantity.Range[quantity.Money]{}
	}
	return quantity.Range[quantity.Money]{Low: m[0], Typical: m[1], High: m[2]}
}
