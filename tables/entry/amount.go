package entry

import (
	"strings"

	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

// ordered is a quantity that compares with its own kind.
type ordered[Q any] interface {
	quantity.Quantity
	Cmp(o Q) int
}

func taken[Q quantity.Quantity]() string {
	return "a number and its unit in quotes, unit one of " + strings.Join(quantity.Units[Q](), ", ")
}

// Amount reads a quantity written with its unit; the zero quantity, "not given", when the key is absent.
func Amount[Q quantity.Quantity](r *Row, key string) Q {
	var q Q
	v := r.Raw(key)
	if v == nil {
		return q
	}
	s, ok := v.(string)
	if ok {
		var err error
		if q, err = quantity.Parse[Q](s); err == nil {
			return q
		}
	}
	want := taken[Q]()
	if ok && strings.Contains(s, ",") {
		want = "a decimal point, no comma: " + want
	}
	r.Fault(finding.ErrValue, key, Describe(v), want)
	var none Q
	return none
}

// Range reads a range of quantities: a list of three, low, typical and high, rising; or one quantity for all three.
func Range[Q ordered[Q]](r *Row, key string) quantity.Range[Q] {
	var none quantity.Range[Q]
	list, ok := r.Raw(key).([]any)
	if !ok {
		q := Amount[Q](r, key)
		return quantity.Exactly(q)
	}
	want := "three quantities, rising: low, typical, high; each " + taken[Q]()
	var v [3]Q
	if len(list) != 3 {
		r.Fault(finding.ErrValue, key, Describe(list), want)
		return none
	}
	for i, e := range list {
		s, ok := e.(string)
		if ok {
			var err error
			if v[i], err = quantity.Parse[Q](s); err == nil {
				continue
			}
		}
		r.Fault(finding.ErrValue, key, Describe(list), want)
		return none
	}
	if v[0].Cmp(v[1]) > 0 || v[1].Cmp(v[2]) > 0 {
		r.Fault(finding.ErrValue, key, Describe(list), want)
		return none
	}
	return quantity.Range[Q]{Low: v[0], Typical: v[1], High: v[2]}
}
