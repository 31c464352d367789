package coverage

import (
	"fmt"
	"strings"

	"github.com/shopspring/decimal"

	"boatyard.example/bottomwork/tables/entry"
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

// Ratio is how a two-pack paint is mixed: so many parts of base to so many parts of hardener, by volume unless it is said
// otherwise. The zero Ratio is none.
type Ratio struct {
	Base, Hardener decimal.Decimal
	_              [0]func()
}

const (
	mostParts  = 1_000_000 // more is a slip of the pen
	partPlaces = 40        // decimal places of a part: those of a written number times those of a written density fit
	wantRatio  = `parts of base and of hardener, such as "3:1"`
)

// ParseRatio reads "3:1" or "2.5 : 1": the parts of base, a colon, the parts of hardener.
//
// Parts are numbers as in any quantity, above zero and at most 1 000 000. The error is a finding.Faults with the key "ratio", or
// "ratio.base" and "ratio.hardener" where it is one part that is not accepted.
func ParseRatio(s string) (Ratio, error) {
	text := strings.Split(s, ":")
	if len(text) != 2 {
		return Ratio{}, finding.Faults{{Kind: finding.ErrValue, Key: "ratio", Got: entry.Describe(s), Want: wantRatio}}
	}
	var out Ratio
	var faults finding.Faults
	for i, p := range []struct {
		key string
		to  *decimal.Decimal
	}{{"ratio.base", &out.Base}, {"ratio.hardener", &out.Hardener}} {
		n, err := quantity.Parse[quantity.Share](text[i] + quantity.Percent.String()) // so a part is written as any number is
		if err != nil {
			faults = append(faults, finding.Fault{Kind: finding.ErrValue, Key: p.key, Got: entry.Describe(text[i]), Want: "a number of parts above zero"})
			continue
		}
		*p.to = n.Number()
		checkParts(&faults, p.key, *p.to)
	}
	if err := faults.Err(); err != nil {
		return Ratio{}, err
	}
	return out, nil
}

// String is the ratio as ParseRatio reads it: "3:1".
func (r Ratio) String() string { return r.Base.String() + ":" + r.Hardener.String() }

// Equal reports whether both are the same proportion: 3:1 equals 6:2.
func (r Ratio) Equal(o Ratio) bool { return r.Base.Mul(o.Hardener).Equal(o.Base.Mul(r.Hardener)) }

// Check returns every fault of the ratio, with the keys "base" and "hardener". Each part is above zero and at most 1 000 000,
// with at most 40 decimal places.
func (r Ratio) Check() finding.Faults {
	var faults finding.Faults
	checkParts(&faults, "base", r.Base)
	checkParts(&faults, "hardener", r.Hardener)
	return faults
}

func checkParts(faults *finding.Faults, key string, n decimal.Decimal) {
	const want = "a number of parts above zero"
	switch e := n.Exponent(); {
	case e < -partPlaces || e > partPlaces: // too long to print
		*faults = append(*faults, finding.Fault{Kind: finding.ErrImpossible, Key: key, Want: fmt.Sprintf("%s with at most %d decimal places", want, partPlaces)})
	case n.Sign() <= 0 || n.Cmp(decimal.NewFromInt(mostParts)) > 0:
		*faults = append(*faults, finding.Fault{Kind: finding.ErrImpossible, Key: key, Got: n.String(), Want: fmt.Sprintf("%s and at most %d", want, mostParts)})
	}
}
