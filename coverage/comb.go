package coverage

import (
	"errors"
	"fmt"
	"strings"

	"github.com/shopspring/decimal"

	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

// The rules of a comb in the fresh coat, rows of rules_puton.toml.
const (
	RuleCombEnough     finding.ID = "comb-enough"
	RuleCombThin       finding.ID = "comb-thin"
	RuleCombThinPlaces finding.ID = "comb-thin-places"
	RuleCombThick      finding.ID = "comb-thick"
)

// Tooth is one reading of a wet-film comb: the film lies between the last tooth that was wetted and the first that stayed dry.
type Tooth struct {
	Wetted quantity.Film
	Dry    quantity.Film // not given: only the wetted tooth was noted, and the film is taken to end there
}

// toothWant says how a tooth is written.
const toothWant = "a tooth in um or mil, or the last wetted and the first dry one: \"100 um to 120 um\""

// String returns the reading as ParseTooth reads it.
func (t Tooth) String() string {
	if !t.Dry.Given() {
		return t.Wetted.String()
	}
	return t.Wetted.String() + " to " + t.Dry.String()
}

// ParseTooth reads one reading of a comb: the last wetted tooth, "120 um", or that and the first dry one, "100 um to 120 um". The error is a
// *quantity.ParseError.
func ParseTooth(s string) (Tooth, error) {
	var t Tooth
	low, high, both := strings.Cut(s, " to ")
	err := t.Wetted.UnmarshalText([]byte(strings.TrimSpace(low)))
	if both && err == nil {
		err = t.Dry.UnmarshalText([]byte(strings.TrimSpace(high)))
	}
	if bad, isBad := errors.AsType[*quantity.ParseError](err); isBad {
		return Tooth{}, &quantity.ParseError{Got: bad.Got, Want: toothWant}
	}
	return t, err
}

// WetCoat is a fresh coat as a comb read it.
type WetCoat struct {
	Paint   string // its name, for the words
	Teeth   []Tooth
	Solids  quantity.Range[quantity.Share] // of the paint as supplied, by volume
	Thinner quantity.Share                 // added, by volume of the paint; not given: none
	Asked   quantity.Film                  // the dry film that the coat was to have
}

// mostWet bounds a tooth: no comb has longer ones.
const mostWet = 10_000

// Check returns every fault of the coat, readings counted from 1: "readings[2]".
func (w WetCoat) Check() finding.Faults {
	var faults finding.Faults
	if len(w.Teeth) == 0 {
		faults = append(faults, finding.Fault{Kind: finding.ErrMissing, Key: "readings", Want: "at least one reading of the comb"})
	}
	most := quantity.Micrometre.N(mostWet)
	for i, t := range w.Teeth {
		key := fmt.Sprintf("readings[%d]", i+1)
		want := fmt.Sprintf("a tooth above zero, to %d um; or the last wetted and the first dry one, the longer last", mostWet)
		if t.Wetted.Sign() <= 0 || t.Wetted.Cmp(most) > 0 || t.Dry.Cmp(most) > 0 {
			faults = append(faults, finding.Fault{Kind: finding.ErrImpossible, Key: key, Got: t.Wetted.String(), Want: want})
		} else if t.Dry.Given() && t.Dry.Cmp(t.Wetted) <= 0 {
			faults = append(faults, finding.Fault{Kind: finding.ErrImpossible, Key: key, Got: t.Wetted.String() + " to " + t.Dry.String(), Want: want})
		}
	}
	var solids finding.Faults
	for _, s := range []quantity.Share{w.Solids.Low, w.Solids.Typical, w.Solids.High} {
		checkSolids(&solids, s)
	}
	if len(solids) > 0 {
		faults = append(faults, solids[0])
	}
	checkPart(&faults, "thinner", w.Thinner)
	checkFilm(&faults, "asked", w.Asked)
	return faults
}

// Combed is what a fresh coat is expected to dry to.
type Combed struct {
	Dry      []quantity.Range[quantity.Film] // of each reading
	Mean     quantity.Range[quantity.Film]   // of all of them
	Thin     int                             // readings whose typical dry film is less than was asked for
	Findings finding.List
	_        [0]func()
}

// Comb returns the dry film that each reading of the comb dries to and the mean of all, and warns while the coat is wet.
//
//	dry = tooth × solids ÷ (100 + thinner)      solids and thinner in per cent
//
// The low end takes the tooth that was wetted and the low solids, the high end the tooth that stayed dry and the high solids, the typical
// film the middle of the two and the typical solids. The typical mean decides: below what was asked it is too thin, and more goes
// on now; above the multiple comb-thick of it, it sags or stays soft. A mean on either limit is right. Single readings that dry
// to less than was asked are counted.
//
// The ranges are those of DryFilm; other values are a finding.Faults, and so is a book without the factor. Films are in the unit
// of the film asked for, rounded down to 4 places; they hold as far as paint and thinner keep their volumes when mixed, and as far as no
// solvent had left when the comb was read.
//
// Basis: derived (the volume of the solids stays); the multiple is the factor's.
func Comb(b *tables.Book, w WetCoat) (Combed, error) {
	if err := w.Check().Err(); err != nil {
		return Combed{}, err
	}
	thick, err := b.Factor("comb-thick")
	if err != nil {
		return Combed{}, err
	}
	out := Combed{}
	var sum quantity.Range[quantity.Film] // wet
	for i, t := range w.Teeth {
		wet := between(t)
		dry, err := w.dries(wet, 1)
		if err != nil {
			return Combed{}, err
		}
		out.Dry = append(out.Dry, dry)
		if w.less(wet.Typical, 1, decimal.NewFromInt(1)) {
			out.Thin++
		}
		if i == 0 {
			sum = wet
		} else {
			sum = quantity.Range[quantity.Film]{Low: sum.Low.Add(wet.Low), Typical: sum.Typical.Add(wet.Typical), High: sum.High.Add(wet.High)}
		}
	}
	n := int64(len(w.Teeth))
	if out.Mean, err = w.dries(sum, n); err != nil {
		return Combed{}, err
	}
	must, err := WetFilm(w.Asked, w.Solids.Typical, w.Thinner)
	if err != nil {
		return Combed{}, err
	}
	add := func(rule finding.ID, v finding.Verdict, basis ...finding.Basis) {
		out.Findings = append(out.Findings, finding.Finding{Rule: rule, Verdict: v, About: w.Paint, Basis: append(basis, finding.Basis{Kind: finding.Derived}), Facts: []finding.Fact{
			{Name: "count", Value: len(w.Teeth)},
			{Name: "thin", Value: out.Thin},
			{Name: "typical", Value: told(out.Mean.Typical, quantity.Down)},
			{Name: "dry", Value: toldRange(out.Mean)},
			{Name: "asked", Value: w.Asked},
			{Name: "wet", Value: told(must, quantity.Up)},
			{Name: "times", Value: thick.Value.Typical},
		}})
	}
	over := w.more(sum.Typical, n, number(thick.Value.Typical))
	switch {
	case w.less(sum.Typical, n, decimal.NewFromInt(1)):
		add(RuleCombThin, finding.Caution)
	case over:
		add(RuleCombThick, finding.Caution, thick.Basis("value"))
	default:
		add(RuleCombEnough, finding.Fine)
	}
	if out.Thin > 0 && !out.Findings.Has(RuleCombThin) {
		add(RuleCombThinPlaces, finding.Caution)
	}
	return out, nil
}

// between is the wet film of a reading.
func between(t Tooth) quantity.Range[quantity.Film] {
	if !t.Dry.Given() {
		return quantity.Exactly(t.Wetted)
	}
	return quantity.Range[quantity.Film]{Low: t.Wetted, Typical: t.Wetted.Add(t.Dry).Scale(decimal.New(5, -1)), High: t.Dry}
}

// dries is the dry film of a sum of n wet films, in the unit of the film asked for.
func (w WetCoat) dries(sum quantity.Range[quantity.Film], n int64) (quantity.Range[quantity.Film], error) {
	var out quantity.Range[quantity.Film]
	u := w.Asked.Unit()
	for _, end := range []struct {
		to     *quantity.Film
		wet    quantity.Film
		solids quantity.Share
	}{{&out.Low, sum.Low, w.Solids.Low}, {&out.Typical, sum.Typical, w.Solids.Typical}, {&out.High, sum.High, w.Solids.High}} {
		den := hundred.Add(w.Thinner.Number()).Mul(decimal.NewFromInt(n))
		x, err := quantity.Quotient(end.wet.In(u, basePlaces, quantity.Down).Mul(end.solids.Number()), den, ratePlaces, quantity.Down)
		if err != nil {
			return out, outOfRange("readings", end.wet.String(), err)
		}
		*end.to = u.Of(x)
	}
	return out, nil
}

// less reports whether a sum of n wet films dries, by the typical solids, to less than k times the film asked for; exactly.
func (w WetCoat) less(sum quantity.Film, n int64, k decimal.Decimal) bool {
	return w.against(sum, n, k) < 0
}

// more is less, the other way round.
func (w WetCoat) more(sum quantity.Film, n int64, k decimal.Decimal) bool {
	return w.against(sum, n, k) > 0
}

func (w WetCoat) against(sum quantity.Film, n int64, k decimal.Decimal) int {
	return sum.Scale(w.Solids.Typical.Number()).Cmp(w.Asked.Scale(k.Mul(hundred.Add(w.Thinner.Number())).Mul(decimal.NewFromInt(n))))
}

// told is a film as a person would say it: to 1 um or 0.1 mil.
func told(f quantity.Film, r quantity.Rounding) quantity.Film {
	if f.Unit() == quantity.Mil {
		return f.To(quantity.Mil, 1, r)
	}
	return f.To(f.Unit(), 0, r)
}

func toldRange(f quantity.Range[quantity.Film]) quantity.Range[quantity.Film] {
	return quantity.Range[quantity.Film]{Low: told(f.Low, quantity.Down), Typical: told(f.Typical, quantity.Nearest), High: told(f.High, quantity.Up)}
}
