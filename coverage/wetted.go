package coverage

import (
	"strings"

	"github.com/shopspring/decimal"

	"boatyard.example/bottomwork/coverage/hullform"
	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

// Areas is the answer of Wetted.
type Areas struct {
	Total    quantity.Range[quantity.Area]
	Zones    []ZoneRange         // they add up to Total at each end, to the last digit
	Apart    []ZoneRange         // of pieces that are no part of the hull's area, such as a drive leg
	Bare     bool                // the total holds only those keels and rudders that were given as pieces or measured
	Method   string              // how the total was found, in words
	Others   []hullform.Estimate // what the other methods say
	Findings finding.List        // never empty
}

// ZoneRange is the area of one zone.
type ZoneRange = hullform.ZoneRange

// areaPlaces are the decimal places of a reckoned area, in its unit.
const areaPlaces = 2

// mostArea bounds a bottom in m2: three times that of the largest ship.
const mostArea = 100_000

// Wetted returns the area of the bottom below the paint line, by zone.
//
// The first of these that is there decides: the measured hull; the measured flat with all other measured zones and the pieces; the
// methods of hullform.Reckon in their order, from offsets and girths to
//
//	area = factor × L × (B + T)
//
// with the factor of the hull form, a range. A zone that was measured keeps its area, low, typical and high alike; a zone of
// pieces takes theirs. Where a formula from main dimensions decides, the strip from the waterline up to the paint line is added:
//
//	strip = height × (2 × L + k × B) × hulls      k is the factor "area-outline-beams"
//
// A strip that nobody measured takes its share of the total, the low share at the low end and the high share at the high end.
// Where that would let the flat shrink from low to high, the typical share stands for all three: the total is then known
// better than the shares are. The flat is the total less all other zones.
//
// Areas come in ft2 when the length is in ft or in, else in m2. Each reckoned area is rounded up to 0.01 of it, but for the
// flat, which takes the rest. Bad input is a finding.Faults, see Hull.Check; so are measured zones that leave no flat, and a bottom of
// more than 100 000 m2.
//
// The findings say how the total was found; that a measured total is more than the factor "area-differs" away from the
// formula; with the verdict Ask that a total is outside the factor "area-guard" times L × (B + T), or that the proportions are not
// those of such a hull; which strips were not measured; and what the deciding method has to say.
//
// Source: Nicholls's Seamanship and Nautical Knowledge, p. 482, for the factor 1; the other factors are common practice; those of the
// other methods stand in their rows.
func Wetted(b *tables.Book, h Hull) (Areas, error) {
	if err := h.Check(b).Err(); err != nil {
		return Areas{}, err
	}
	guard, err := b.Factor("area-guard")
	if err != nil {
		return Areas{}, err
	}
	differs, err := b.Factor("area-differs")
	if err != nil {
		return Areas{}, err
	}
	var form tables.HullForm
	if h.Kind != "" {
		if form, err = b.HullForm(h.Kind); err != nil {
			return Areas{}, err
		}
	}
	estimates, err := hullform.Reckon(b, h.shape())
	if err != nil {
		return Areas{}, err
	}
	pieces, apart, err := hullform.Zones(b, h.shape())
	if err != nil {
		return Areas{}, err
	}
	out := Areas{Method: "measured", Apart: apart, Others: estimates}
	var strip quantity.Range[quantity.Area]
	sized := "measured" // the key of what the size of the bottom follows from first
	switch {
	case h.measuredEnough():
		out.measured(h, pieces)
	case len(estimates) == 0 || !estimates[0].Decides:
		// Check has seen to it that something can be reckoned with.
		return Areas{}, finding.Faults{{Kind: finding.ErrMissing, File: "the tables", Key: "area_method", Want: "a row that may decide for such a hull, as the module's own tables have"}}
	default:
		e := estimates[0]
		sized = "length"
		if h.taped(e) {
			sized = e.Method
		}
		out.Total, out.Method, out.Bare, out.Others = e.Area, e.Name, e.Bare, estimates[1:]
		out.Findings = append(finding.List{h.found(e, form)}, e.Findings...)
		if strip, err = h.strip(b, e); err != nil {
			return Areas{}, err
		}
		if strip.Typical.Given() {
			out.Total = added(out.Total, strip)
		}
	}
	if most := quantity.SquareMetre.N(mostArea); out.Total.High.Cmp(most) > 0 {
		return Areas{}, finding.Faults{{Kind: finding.ErrImpossible, Key: sized, Got: out.Total.High.String() + " of bottom", Want: "a boat: at most " + most.String()}}
	}
	if out.Zones, err = h.zones(b, out.Total, form, pieces, strip); err != nil {
		return Areas{}, err
	}
	out.Findings = append(out.Findings, h.strips(b, form)...)
	out.Findings = append(out.Findings, hullform.Proportions(b, h.shape())...)
	out.compare(h, form, guard, differs)
	return out, nil
}

// measured takes the measured hull, or else all measured zones and the pieces.
func (a *Areas) measured(h Hull, pieces []ZoneRange) {
	if whole := h.measured(hullZone); whole.Given() {
		a.Total = quantity.Exactly(whole)
	} else {
		a.Total, a.Bare = quantity.Exactly(h.sum(func(string) bool { return true })), true
		for _, p := range pieces {
			if !h.measured(p.Zone).Given() {
				a.Total = added(a.Total, p.Area)
			}
		}
	}
	a.Findings = finding.List{{Rule: areaMeasured, Verdict: finding.Fine, Facts: []finding.Fact{{Name: "area", Value: a.Total.Typical}}}}
}

// found says by which method the total was found.
func (h Hull) found(e hullform.Estimate, form tables.HullForm) finding.Finding {
	f := finding.Finding{
		Rule: areaFromFormula, Verdict: finding.Caution, Against: form.Name, Basis: e.Basis,
		Facts: []finding.Fact{{Name: "low", Value: e.Area.Low}, {Name: "high", Value: e.Area.High}},
	}
	if e.Method != "short-rule" {
		f.Rule, f.About = areaFromMethod, e.Name
	}
	if h.taped(e) {
		f.Verdict = finding.Fine
	}
	return f
}

// taped reports whether the method was laid on the boat herself, up to the paint line.
func (h Hull) taped(e hullform.Estimate) bool { return e.Method == "girths" || e.Method == "offsets" }

// strip is the area between the waterline and the paint line, for a total that ends at the waterline; not given for others.
func (h Hull) strip(b *tables.Book, e hullform.Estimate) (out quantity.Range[quantity.Area], err error) {
	if !h.BootTop.Given() || h.taped(e) || !h.dimensioned() {
		return out, nil
	}
	outline, err := outline(b, h, 3)
	if err != nil {
		return out, err
	}
	end := func(l quantity.Length) quantity.Area {
		n := l.In(quantity.Metre, basePlaces, quantity.Up).Mul(h.BootTop.In(quantity.Metre, basePlaces, quantity.Up))
		return quantity.SquareMetre.Of(n).To(e.Area.Typical.Unit(), areaPlaces, quantity.Up)
	}
	return quantity.Range[quantity.Area]{Low: end(outline.Low), Typical: end(outline.Typical), High: end(outline.High)}, nil
}

// compare says what the formula makes of a total that was measured or taped, and whether the total is one to believe.
func (a *Areas) compare(h Hull, form tables.HullForm, guard, differs tables.Factor) {
	if !h.dimensioned() {
		return
	}
	for _, e := range a.Others {
		if e.Method != "short-rule" {
			continue
		}
		typical := e.Area.Typical.In(quantity.SquareMetre, basePlaces, quantity.Nearest)
		apart := a.Total.Typical.In(quantity.SquareMetre, basePlaces, quantity.Nearest).Sub(typical).Abs()
		if apart.Cmp(typical.Mul(number(differs.Value.Typical))) > 0 {
			a.Findings = append(a.Findings, finding.Finding{
				Rule: areaDiffers, Verdict: finding.Caution, Against: form.Name, Basis: append(e.Basis[:len(e.Basis):len(e.Basis)], differs.Basis("value")),
				Facts: []finding.Fact{{Name: "area", Value: a.Total.Typical}, {Name: "percent", Value: percentOf(apart, typical)}, {Name: "formula", Value: e.Area.Typical}},
			})
		}
	}
	believed := h.product(guard.Value, form)
	if a.Total.Typical.Cmp(believed.Low) < 0 || a.Total.Typical.Cmp(believed.High) > 0 {
		a.Findings = append(a.Findings, finding.Finding{
			Rule: areaOutOfProportion, Verdict: finding.Ask, Basis: []finding.Basis{guard.Basis("value")},
			Facts: []finding.Fact{{Name: "area", Value: a.Total.Typical}, {Name: "low", Value: believed.Low}, {Name: "high", Value: believed.High}},
		})
	}
}

// product is factor × L × (B + T) × hulls, each end rounded up.
func (h Hull) product(factor quantity.Range[float64], form tables.HullForm) quantity.Range[quantity.Area] {
	unit, of := quantity.Metre, quantity.SquareMetre
	if u := h.Length.Unit(); u == quantity.Foot || u == quantity.Inch {
		unit, of = quantity.Foot, quantity.SquareFoot
	}
	in := func(l quantity.Length) decimal.Decimal { return l.In(unit, basePlaces, quantity.Up) }
	n := in(h.Length).Mul(in(h.Beam).Add(in(h.Draft))).Mul(decimal.NewFromInt(int64(h.hulls(form))))
	end := func(f float64) quantity.Area { return of.Of(n.Mul(number(f))).To(of, areaPlaces, quantity.Up) }
	return quantity.Range[quantity.Area]{Low: end(factor.Low), Typical: end(factor.Typical), High: end(factor.High)}
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

func added(a, b quantity.Range[quantity.Area]) quantity.Range[quantity.Area] {
	return quantity.Range[quantity.Area]{Low: a.Low.Add(b.Low), Typical: a.Typical.Add(b.Typical), High: a.High.Add(b.High)}
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
