package hullform

import (
	"cmp"
	"math"
	"slices"
	"strconv"

	"github.com/shopspring/decimal"

	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

// Estimate is what one method says.
type Estimate struct {
	Method   string // key of a row of area_method
	Name     string // in words
	Area     quantity.Range[quantity.Area]
	Bare     bool // hull, and the pieces that were given or measured; else keel and rudder are in it whether they were given or not
	Decides  bool // it may decide; false: it is shown only, and Findings say why unless it never decides
	Findings finding.List
	Basis    []finding.Basis
}

// The methods that need more than dimensions.
const (
	byOffsets  = "offsets"
	byGirths   = "girths"
	shortRule  = "short-rule"
	byTextbook = "textbook"
)

// Reckon returns the area by every method that is meant for such a hull and for which the shape gives enough: those that may decide first, in the order of their rows,
// then those that are only shown. There may be none. The area is that of the whole boat: of all her hulls, with the pieces.
//
//	area = factor of the method × its hull × hulls + pieces − openings
//
// at its corners; the volume is the mass by the density of the water, shared among the hulls. Pieces that factor × L × (B + T) counts
// already are added to the bare methods only; a measured zone stands for the pieces of that zone. Areas come in ft2 where the
// length is in ft or in, else in m2, each end rounded up to 0.01 of it.
//
// The shape passes Check, and Kind names a hull form or is empty; else the error is a finding.Faults. So is a hull whose openings are
// larger than itself.
//
// Basis: that of each method's row of areamethods.toml, which the estimate carries.
func Reckon(b *tables.Book, s Shape) ([]Estimate, error) {
	if err := s.Check(b).Err(); err != nil {
		return nil, err
	}
	form := tables.HullForm{}
	if s.Kind != "" {
		var err error
		if form, err = b.HullForm(s.Kind); err != nil {
			return nil, err
		}
	}
	density, err := b.Factor("area-water-density")
	if err != nil {
		return nil, err
	}
	on := s.pieces(b)
	var may, shown []Estimate
	for m := range b.AreaMethods() {
		e, ok := s.by(b, m, form, density)
		if !ok || form.Key != "" && !m.For(form.Key) {
			continue
		}
		e.Method, e.Bare = m.Key, m.Bare
		if len(e.Basis) == 0 { // else it rests on the hull form's own factor
			e.Basis = []finding.Basis{m.Basis("name")}
		}
		if own := m.Basis("factor"); own.Kind != m.Basis("name").Kind {
			e.Basis = append(e.Basis, own)
		}
		add := on.always
		if m.Bare {
			add = on.all
		}
		n := float64(s.hulls(form))
		if e.Area, err = s.area(quantity.Range[float64]{
			Low: e.hull.Low*m.Factor.Low*n + add.Low, Typical: e.hull.Typical*m.Factor.Typical*n + add.Typical, High: e.hull.High*m.Factor.High*n + add.High,
		}); err != nil {
			return nil, err
		}
		if e.Area.Low.Sign() <= 0 {
			return nil, finding.Faults{{Kind: finding.ErrImpossible, Key: "piece", Got: "openings larger than the hull", Want: "openings that leave some of it"}}
		}
		e.Decides = m.Order > 0 && !e.Findings.Has(RuleOutside) && !e.Findings.Has(RuleWants)
		if e.Decides {
			may = append(may, e.Estimate)
		} else {
			shown = append(shown, e.Estimate)
		}
	}
	slices.SortStableFunc(may, func(a, c Estimate) int {
		x, _ := b.AreaMethod(a.Method)
		y, _ := b.AreaMethod(c.Method)
		return cmp.Compare(x.Order, y.Order)
	})
	return append(may, shown...), nil
}

// reckoned is an estimate with the area of one hull in m2, before its method's factor.
type reckoned struct {
	Estimate
	hull quantity.Range[float64]
}

// by reckons by one method; false when the shape does not give enough for it.
func (s Shape) by(b *tables.Book, m tables.AreaMethod, form tables.HullForm, density tables.Factor) (reckoned, bool) {
	e := reckoned{Estimate: Estimate{Name: m.Name}}
	typical := s.dimensions(density.Value.Typical, form)
	switch m.Key {
	case byOffsets:
		if len(s.Offsets) == 0 {
			return e, false
		}
		area, missed := Surface(s.Offsets)
		e.hull = quantity.Range[float64]{Low: area, Typical: area, High: area + math.Abs(missed)}
		if len(s.Offsets) < fewStations {
			e.Findings = append(e.Findings, few(len(s.Offsets)))
		} else if missed > 0 {
			e.hull.Typical, e.hull.High = area+missed, area+2*missed
		}
	case byGirths:
		if len(s.Girths) == 0 {
			return e, false
		}
		e.hull = quantity.Exactly(GirthArea(s.Girths))
		e.Findings = s.ends()
	case shortRule:
		if form.Key == "" || !s.dimensioned() {
			return e, false
		}
		e.Name = strconv.FormatFloat(form.Factor.Typical, 'f', -1, 64) + " × L × (B + T), " + form.Name
		e.hull, e.Basis = s.product(form.Factor), []finding.Basis{form.Basis("factor")}
	case byTextbook:
		if !s.dimensioned() {
			return e, false
		}
		e.hull = s.product(quantity.Exactly(1.0))
	default:
		formula := formulas[m.Key]
		if formula == nil || math.IsNaN(formula(typical)) {
			return e, false
		}
		e.hull = quantity.Range[float64]{
			Low: formula(s.dimensions(density.Value.High, form)), Typical: formula(typical), High: formula(s.dimensions(density.Value.Low, form)),
		}
	}
	if m.Order > 0 {
		e.Findings = append(e.Findings, s.outside(b, m, typical)...)
	}
	return e, true
}

// outside says which of her proportions lie outside what the method was made for, and what it wants that nobody gave.
func (s Shape) outside(b *tables.Book, m tables.AreaMethod, d dimensions) finding.List {
	var out finding.List
	t := d.under(m.Bare)
	for _, r := range []struct {
		name  string
		value float64
		span  tables.Span
		field string
	}{
		{"length by beam", d.length / d.waterlineBeam, m.LengthBeam, "length_beam"},
		{"beam by draught", d.waterlineBeam / t, m.BeamDraft, "beam_draft"},
		{"length by the side of a cube of her volume", d.length / math.Cbrt(d.volume), m.LengthVolume, "length_volume"},
		{"block coefficient", d.volume / (d.length * d.waterlineBeam * t), m.Block, "block"},
		{"midship section coefficient", d.midship, m.Midship, "midship"},
	} {
		if r.span.Given() && !r.span.Holds(r.value) {
			out = append(out, finding.Finding{
				Rule: RuleOutside, Verdict: finding.Caution, About: m.Name, Basis: []finding.Basis{m.Basis(r.field)},
				Facts: []finding.Fact{{Name: "ratio", Value: r.name}, {Name: "value", Value: round2(r.value)}, {Name: "low", Value: r.span.Low}, {Name: "high", Value: r.span.High}},
			})
		}
	}
	var missing []string
	for _, z := range m.Wants() {
		if !s.Known[z].Given() && !slices.ContainsFunc(s.Pieces, func(p Piece) bool {
			row, err := b.Piece(p.What)
			return err == nil && row.Zone == z
		}) {
			missing = append(missing, "the "+z)
		}
	}
	if len(missing) > 0 {
		out = append(out, finding.Finding{Rule: RuleWants, Verdict: finding.Caution, About: m.Name, Facts: []finding.Fact{{Name: "zones", Value: and(missing)}}})
	}
	return out
}

// fewStations is from how many sections on the sum over every second of them tells what was missed.
const fewStations = 5

func few(n int) finding.Finding {
	return finding.Finding{Rule: RuleStations, Verdict: finding.Caution, Facts: []finding.Fact{{Name: "count", Value: n}}}
}

// ends says which end of the tape's stations does not close, unless a transom was given, and that stations are few.
func (s Shape) ends() finding.List {
	var out finding.List
	if len(s.Girths) < fewStations {
		out = append(out, few(len(s.Girths)))
	}
	if slices.ContainsFunc(s.Pieces, func(p Piece) bool { return p.What == "transom" }) {
		return out
	}
	for _, e := range []struct {
		name string
		at   Station
	}{{"first", s.Girths[0]}, {"last", s.Girths[len(s.Girths)-1]}} {
		if e.at.Girth.Sign() > 0 {
			out = append(out, finding.Finding{Rule: RuleOpenEnd, Verdict: finding.Caution, Facts: []finding.Fact{{Name: "end", Value: e.name}, {Name: "girth", Value: e.at.Girth}}})
		}
	}
	return out
}

// onHull is the area of the pieces in m2: of all of them, and of those that no formula counts.
type onHull struct{ all, always quantity.Range[float64] }

// pieces adds up the pieces of the hull's zones, a measured zone standing for its own. Openings are taken away, the large ones at the
// low end.
func (s Shape) pieces(b *tables.Book) onHull {
	var out onHull
	for _, p := range s.Pieces {
		row, err := b.Piece(p.What)
		if err != nil || s.Known[row.Zone].Given() && !row.Off {
			continue
		}
		if z, err := b.Zone(row.Zone); err != nil || !z.InHull {
			continue
		}
		a := PieceArea(row, p)
		if row.Off {
			a = quantity.Range[float64]{Low: -a.High, Typical: -a.Typical, High: -a.Low}
		}
		out.all = sum(out.all, a)
		if !row.Counted {
			out.always = sum(out.always, a)
		}
	}
	for z := range b.Zones() {
		if known := s.Known[z.Key]; known.Given() && z.Part && z.InHull {
			out.all = sum(out.all, quantity.Exactly(known.Float(quantity.SquareMetre)))
		}
	}
	return out
}

func sum(a, b quantity.Range[float64]) quantity.Range[float64] {
	return quantity.Range[float64]{Low: a.Low + b.Low, Typical: a.Typical + b.Typical, High: a.High + b.High}
}

// Proportions says whether length, beam and draught are such as the hull form has; it is empty where they are, or are not known.
// The verdict is Ask: a beam over both hulls, or a draught with the leg down, gives a wrong area by any formula.
//
// Basis: that of the row of hullforms.toml, in the finding.
func Proportions(b *tables.Book, s Shape) finding.List {
	form, err := b.HullForm(s.Kind)
	if err != nil || !s.dimensioned() {
		return nil
	}
	d := s.dimensions(1, form)
	var out finding.List
	for _, r := range []struct {
		rule  finding.ID
		value float64
		span  tables.Span
		field string
	}{{RuleBeam, d.length / d.beam, form.LengthBeam, "length_beam"}, {RuleDraft, d.draft / d.beam, form.DraftBeam, "draft_beam"}} {
		if !r.span.Holds(r.value) {
			out = append(out, finding.Finding{
				Rule: r.rule, Verdict: finding.Ask, Against: form.Name, Basis: []finding.Basis{form.Basis(r.field)},
				Facts: []finding.Fact{{Name: "ratio", Value: round2(r.value)}, {Name: "low", Value: r.span.Low}, {Name: "high", Value: r.span.High}},
			})
		}
	}
	return out
}

func (s Shape) dimensioned() bool { return s.Length.Given() && s.Beam.Given() && s.Draft.Given() }

// dimensions are the numbers of one hull, its volume from the mass at the density in kg/m3.
func (s Shape) dimensions(density float64, form tables.HullForm) dimensions {
	metres := func(l quantity.Length) float64 {
		if !l.Given() {
			return math.NaN()
		}
		return l.Float(quantity.Metre)
	}
	d := dimensions{length: metres(s.Length), beam: metres(s.Beam), waterlineBeam: metres(s.WaterlineBeam), draft: metres(s.Draft), canoe: metres(s.CanoeDraft), midship: math.NaN(), volume: math.NaN()}
	if !s.WaterlineBeam.Given() {
		d.waterlineBeam = d.beam
	}
	if s.Midship.Given() {
		d.midship = s.Midship.Float(quantity.Percent) / 100
	}
	if s.Mass.Given() {
		d.volume = s.Mass.Float(quantity.Kilogram) / density / float64(s.hulls(form))
	}
	return d
}

// product is factor × L × (B + T) in m2.
func (s Shape) product(factor quantity.Range[float64]) quantity.Range[float64] {
	n := s.Length.Float(quantity.Metre) * (s.Beam.Float(quantity.Metre) + s.Draft.Float(quantity.Metre))
	return quantity.Range[float64]{Low: factor.Low * n, Typical: factor.Typical * n, High: factor.High * n}
}

const (
	cleanPlaces = 9 // of an area in m2 on its way out of float64: what lies beyond is the float's own noise
	areaPlaces  = 2 // of an area that is told
)

// area turns m2 into areas of the boat's own unit, each end rounded up to 0.01 of it.
func (s Shape) area(m2 quantity.Range[float64]) (out quantity.Range[quantity.Area], err error) {
	unit, per := quantity.SquareMetre, 1.0
	if s.feet() {
		unit, per = quantity.SquareFoot, 0.09290304
	}
	for _, e := range []struct {
		to *quantity.Area
		m2 float64
	}{{&out.Low, m2.Low}, {&out.Typical, m2.Typical}, {&out.High, m2.High}} {
		clean, err := unit.Near(e.m2/per, cleanPlaces, quantity.Nearest)
		if err != nil {
			return out, finding.Faults{{Kind: finding.ErrImpossible, Key: "length", Got: s.Length.String(), Want: "a hull to reckon with: " + err.Error()}}
		}
		if e.m2 > 0 && clean.Sign() == 0 {
			clean = unit.Of(decimal.New(1, -cleanPlaces)) // smaller than the float's noise of a boat is still more than nothing
		}
		*e.to = clean.To(unit, areaPlaces, quantity.Up)
	}
	return out, nil
}

func round2(x float64) float64 { return math.Round(x*100) / 100 }
