package coverage

import (
	"strconv"
	"strings"

	"github.com/shopspring/decimal"

	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

// Areas is the answer of Wetted.
type Areas struct {
	Total    quantity.Range[quantity.Area]
	Zones    []ZoneRange  // they add up to Total at each end, to the last digit
	Method   string       // how the total was found, in words
	Others   []Estimate   // what the other methods say
	Findings finding.List // never empty
}

// ZoneRange is the area of one zone.
type ZoneRange struct {
	Zone string // key of a zone
	Area quantity.Range[quantity.Area]
}

// Estimate is what a method that did not decide says about the total.
type Estimate struct {
	Method string
	Area   quantity.Range[quantity.Area]
	Basis  finding.Basis
}

// areaPlaces are the decimal places of a reckoned area, in its unit.
const areaPlaces = 2

// Wetted returns the area of the bottom below the paint line, by zone.
//
//	area = factor × L × (B + T)
//
// The factor is the hull form's, a range. Measured areas win: a measured hull is the total; where the flat was measured, the
// total is the sum of all measured zones; else the formula gives the total, and the zones that were measured keep their area.
// A measured area is taken as it is, low, typical and high alike.
//
// A strip that nobody measured takes its share of the total, the low share at the low end and the high share at the high end.
// Where that would let the flat shrink from low to high, the typical share stands for all three: the total is then known
// better than the shares are. The flat is the total less all other zones.
//
// Areas come in ft2 when the length is in ft or in, else in m2. Each reckoned area is rounded up to 0.01 of it, but for the
// flat, which takes the rest. Bad input is a finding.Faults, see Hull.Check; so are measured zones that leave no flat.
//
// The findings say how the total was found; that a measured total is more than the factor "area-differs" away from the
// formula; with the verdict Ask that a total is outside the factor "area-guard" times L × (B + T); and which strips were not
// measured.
//
// Source: Nicholls's Seamanship and Nautical Knowledge, p. 482, for the factor 1; the other factors are common practice.
func Wetted(b *tables.Book, h Hull) (Areas, error) {
	if err := h.Check(b).Err(); err != nil {
		return Areas{}, err
	}
	limits, err := readLimits(b)
	if err != nil {
		return Areas{}, err
	}
	var form tables.HullForm
	if h.Kind != "" {
		if form, err = b.HullForm(h.Kind); err != nil {
			return Areas{}, err
		}
	}
	out := Areas{Method: "measured"}
	if h.measuredEnough() {
		out.Total = quantity.Exactly(h.measuredTotal())
		out.Findings = finding.List{{Rule: areaMeasured, Verdict: finding.Fine, Facts: []finding.Fact{{Name: "area", Value: out.Total.Typical}}}}
	} else {
		e := h.estimate(form)
		out.Total, out.Method = e.Area, e.Method
		out.Findings = finding.List{{
			Rule: areaFromFormula, Verdict: finding.Caution, Against: form.Name, Basis: []finding.Basis{e.Basis},
			Facts: []finding.Fact{{Name: "low", Value: e.Area.Low}, {Name: "high", Value: e.Area.High}},
		}}
	}
	if out.Zones, err = h.zones(b, out.Total, form); err != nil {
		return Areas{}, err
	}
	out.Findings = append(out.Findings, h.strips(b, form)...)
	if h.dimensioned() {
		out.compare(h, form, limits)
	}
	return out, nil
}

// limits are the book's numbers that an area is compared with.
type limits struct {
	guard, textbook, differs tables.Factor
}

func readLimits(b *tables.Book) (l limits, err error) {
	for _, f := range []struct {
		to  *tables.Factor
		key string
	}{{&l.guard, "area-guard"}, {&l.textbook, "area-textbook"}, {&l.differs, "area-differs"}} {
		if *f.to, err = b.Factor(f.key); err != nil {
			return limits{}, err
		}
	}
	return l, nil
}

// compare adds what the other methods say, and what that says about the total.
func (a *Areas) compare(h Hull, form tables.HullForm, l limits) {
	if h.measuredEnough() && form.Key != "" {
		e := h.estimate(form)
		a.Others = append(a.Others, e)
		typical := e.Area.Typical.In(quantity.SquareMetre, basePlaces, quantity.Nearest)
		apart := a.Total.Typical.In(quantity.SquareMetre, basePlaces, quantity.Nearest).Sub(typical).Abs()
		if apart.Cmp(typical.Mul(number(l.differs.Value.Typical))) > 0 {
			a.Findings = append(a.Findings, finding.Finding{
				Rule: areaDiffers, Verdict: finding.Caution, Against: form.Name, Basis: []finding.Basis{e.Basis, l.differs.Basis("value")},
				Facts: []finding.Fact{{Name: "area", Value: a.Total.Typical}, {Name: "percent", Value: percentOf(apart, typical)}, {Name: "formula", Value: e.Area.Typical}},
			})
		}
	}
	a.Others = append(a.Others, Estimate{Method: methodName(l.textbook.Value.Typical, l.textbook.Name), Area: h.product(l.textbook.Value), Basis: l.textbook.Basis("value")})
	believed := h.product(l.guard.Value)
	if a.Total.Typical.Cmp(believed.Low) < 0 || a.Total.Typical.Cmp(believed.High) > 0 {
		a.Findings = append(a.Findings, finding.Finding{
			Rule: areaOutOfProportion, Verdict: finding.Ask, Basis: []finding.Basis{l.guard.Basis("value")},
			Facts: []finding.Fact{{Name: "area", Value: a.Total.Typical}, {Name: "low", Value: believed.Low}, {Name: "high", Value: believed.High}},
		})
	}
}

// estimate is the formula with the form's factor.
func (h Hull) estimate(form tables.HullForm) Estimate {
	return Estimate{Method: methodName(form.Factor.Typical, form.Name), Area: h.product(form.Factor), Basis: form.Basis("factor")}
}

// product is factor × L × (B + T), each end rounded up.
func (h Hull) product(factor quantity.Range[float64]) quantity.Range[quantity.Area] {
	unit, of := quantity.Metre, quantity.SquareMetre
	if u := h.Length.Unit(); u == quantity.Foot || u == quantity.Inch {
		unit, of = quantity.Foot, quantity.SquareFoot
	}
	in := func(l quantity.Length) decimal.Decimal { return l.In(unit, basePlaces, quantity.Up) }
	n := in(h.Length).Mul(in(h.Beam).Add(in(h.Draft)))
	end := func(f float64) quantity.Area { return of.Of(n.Mul(number(f))).To(of, areaPlaces, quantity.Up) }
	return quantity.Range[quantity.Area]{Low: end(factor.Low), Typical: end(factor.Typical), High: end(factor.High)}
}

func methodName(factor float64, name string) string {
	return strconv.FormatFloat(factor, 'f', -1, 64) + " × L × (B + T), " + name
}

// measuredTotal is the measured hull, or else the sum of the measured zones.
func (h Hull) measuredTotal() quantity.Area {
	if whole := h.measured(hullZone); whole.Given() {
		return whole
	}
	return h.sum(func(string) bool { return true })
}

// sum adds up the measured zones that are taken; not given when there are none.
func (h Hull) sum(take func(zone string) bool) quantity.Area {
	var sum quantity.Area
	for _, m := range h.Measured {
		switch {
		case !take(m.Zone):
		case !sum.Given():
			sum = m.Area
		default:
			sum = sum.Add(m.Area)
		}
	}
	return sum
}

// strips says which strips have no area of their own: not measured, and no share of the total either.
func (h Hull) strips(b *tables.Book, form tables.HullForm) finding.List {
	if !h.measured(flatZone).Given() && form.Key != "" {
		return nil
	}
	var missing []string
	for _, key := range []string{waterlineZone, edgesZone} {
		if h.measured(key).Given() {
			continue
		}
		name := key
		if z, err := b.Zone(key); err == nil {
			name = z.Name
		}
		missing = append(missing, "the "+name)
	}
	if len(missing) == 0 {
		return nil
	}
	return finding.List{{Rule: stripsNotMeasured, Verdict: finding.Caution, Facts: []finding.Fact{{Name: "zones", Value: strings.Join(missing, " and ")}}}}
}

// number is f as a decimal, at 12 significant digits, as a table wrote it.
func number(f float64) decimal.Decimal {
	a, err := quantity.Percent.Near(f, 12, quantity.Nearest)
	if err != nil {
		return decimal.Decimal{} // tables hold finite numbers only
	}
	return a.Number()
}

// percentOf is part ÷ whole in whole per cent, to the nearest.
func percentOf(part, whole decimal.Decimal) quantity.Share {
	n, err := quantity.Quotient(part.Mul(hundred), whole, 0, quantity.Nearest)
	if err != nil {
		return quantity.Share{} // a reckoned area is above zero
	}
	return quantity.Percent.Of(n)
}
