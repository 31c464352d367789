package coverage

import (
	"fmt"
	"strconv"

	"github.com/shopspring/decimal"

	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

// The rules of the litres used, rows of rules_puton.toml.
const (
	RuleUsedFits  finding.ID = "used-fits"
	RuleUsedThin  finding.ID = "used-thin"
	RuleUsedThick finding.ID = "used-thick"
	RuleUsedDoubt finding.ID = "used-doubt"
)

// Spent is paint that is gone: the litres, as supplied, of a number of coats on an area.
type Spent struct {
	Litres  quantity.Volume
	Area    quantity.Range[quantity.Area]
	Coats   int
	Coating tables.Coating
	Method  Method
	Asked   quantity.Film // the dry film that each coat was to have; not given: the coating's typical one
}

// asked is the film that each coat was to have.
func (s Spent) asked() quantity.Film {
	if s.Asked.Given() {
		return s.Asked
	}
	return s.Coating.Film.Typical
}

// Check returns every fault: of the litres, the area, the coats, the coating's solids, the method and the film asked for.
func (s Spent) Check(b *tables.Book) finding.Faults {
	faults := s.Method.Check(b)
	switch {
	case !s.Litres.Given():
		faults = append(faults, finding.Fault{Kind: finding.ErrMissing, Key: "litres", Want: `a volume, such as "6.5 L"`})
	case s.Litres.Sign() <= 0:
		faults = append(faults, finding.Fault{Kind: finding.ErrImpossible, Key: "litres", Got: s.Litres.String(), Want: "more than zero"})
	}
	checkAreas(&faults, s.Area)
	if s.Coats < 1 || s.Coats > mostCoats {
		faults = append(faults, finding.Fault{Kind: finding.ErrImpossible, Key: "coats", Got: strconv.Itoa(s.Coats), Want: fmt.Sprintf("a count from 1 to %d", mostCoats)})
	}
	var solids finding.Faults
	for _, x := range []quantity.Share{s.Coating.Solids.Low, s.Coating.Solids.Typical, s.Coating.Solids.High} {
		checkSolids(&solids, x)
	}
	if len(solids) > 0 {
		faults = append(faults, solids[:1].Under("", "coating["+s.Coating.Key+"]")...)
	}
	checkFilm(&faults, "asked", s.asked())
	return faults
}

// UsedFilm is the mean dry film that the litres make.
type UsedFilm struct {
	Coat     quantity.Range[quantity.Film] // of one coat
	Findings finding.List
	_        [0]func()
}

// Used returns the mean dry film of one coat that the litres used make: Paint the other way round.
//
//	film [um] = (litres ÷ coats − residue) × solids [%] × (100 − loss [%]) ÷ (10 × area [m2])
//
// The low end takes the high area, the low solids, the high loss and the high residue; the high end the reverse; the typical film the
// typical ones. Where less than twice the residue was used for a coat, half of it counts as residue, as in Paint. The whole
// range decides: under what was asked it is too thin, over it too thick, else it fits. A high end below the share used-doubt of
// what was asked asks whether all litres were noted.
//
// The error is a finding.Faults: of Check, or of a book without the factor. Each end is rounded down to 0.0001 um.
//
// Basis: derived (volume balance); the loss and the residue are the book's.
func Used(b *tables.Book, s Spent) (UsedFilm, error) {
	if err := s.Check(b).Err(); err != nil {
		return UsedFilm{}, err
	}
	doubt, err := b.Factor("used-doubt")
	if err != nil {
		return UsedFilm{}, err
	}
	loss, err := b.Loss(s.Method.By)
	if err != nil {
		return UsedFilm{}, err
	}
	var out UsedFilm
	for _, end := range []struct {
		to           *quantity.Film
		area         quantity.Area
		solids, loss quantity.Share
		residue      quantity.Volume
	}{
		{&out.Coat.Low, s.Area.High, s.Coating.Solids.Low, loss.Share.High, loss.Residue.High},
		{&out.Coat.Typical, s.Area.Typical, s.Coating.Solids.Typical, loss.Share.Typical, loss.Residue.Typical},
		{&out.Coat.High, s.Area.Low, s.Coating.Solids.High, loss.Share.Low, loss.Residue.Low},
	} {
		*end.to, err = filmOf(s.Litres, s.Coats, end.area, end.solids, end.loss, end.residue)
		if err != nil {
			return UsedFilm{}, outOfRange("litres", s.Litres.String(), err)
		}
	}
	asked := s.asked()
	f := finding.Finding{
		Rule: RuleUsedFits, Verdict: finding.Fine, About: s.Coating.Name, Basis: []finding.Basis{loss.Basis("loss"), s.Coating.Basis("solids")},
		Facts: []finding.Fact{
			{Name: "litres", Value: s.Litres},
			{Name: "area", Value: s.Area},
			{Name: "coats", Value: s.Coats},
			{Name: "asked", Value: asked},
			{Name: "dry", Value: toldRange(out.Coat)},
			{Name: "typical", Value: told(out.Coat.Typical, quantity.Down)},
		},
	}
	switch {
	case out.Coat.High.Cmp(asked.Scale(number(doubt.Value.Typical))) < 0:
		f.Rule, f.Verdict, f.Basis = RuleUsedDoubt, finding.Ask, append(f.Basis, doubt.Basis("value"))
	case out.Coat.High.Cmp(asked) < 0:
		f.Rule, f.Verdict = RuleUsedThin, finding.Caution
	case out.Coat.Low.Cmp(asked) > 0:
		f.Rule, f.Verdict = RuleUsedThick, finding.Caution
	}
	out.Findings = finding.List{f}
	return out, nil
}

// filmOf is the formula of Used at one corner, with one division and one rounding.
func filmOf(used quantity.Volume, coats int, area quantity.Area, solids, loss quantity.Share, residue quantity.Volume) (quantity.Film, error) {
	l := used.In(quantity.Litre, basePlaces, quantity.Down)
	m2 := area.In(quantity.SquareMetre, basePlaces, quantity.Up)
	left := residue.In(quantity.Litre, basePlaces, quantity.Up)
	n := decimal.NewFromInt(int64(coats))
	put := decimal.Max(l.Sub(left.Mul(n)), l.Mul(decimal.New(5, -1)))
	um, err := quantity.Quotient(put.Mul(solids.Number()).Mul(hundred.Sub(loss.Number())), n.Mul(m2).Mul(decimal.NewFromInt(10)), ratePlaces, quantity.Down)
	if err != nil {
		return quantity.Film{}, err
	}
	return quantity.Micrometre.Of(um), nil
}
