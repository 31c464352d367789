package coverage

import (
	"errors"
	"fmt"
	"strconv"

	"github.com/shopspring/decimal"

	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/entry"
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

// Method is how the paint goes on, and what the yard that does it sells.
type Method struct {
	By      string               // key of a way of application
	Thinner quantity.Share       // added thinner, by volume of the paint; not given: none
	Reserve quantity.Share       // what the yard adds to the typical litres; not given: none
	Sizes   []quantity.Volume    // cans that the boat's yard sells; empty: those of the book
	Profile string               // key of the profile that blasting leaves; empty: not known
	Today   quantity.Temperature // of the day's work, for pot lives; not given: as each is stated
}

const (
	litrePlaces = 2  // litres are rounded to 0.01 L
	mostCoats   = 50 // more is a slip of the pen
)

// Check returns every fault of the method. The keys are relative to it: "by", "thinner", "reserve", "sizes[1]" (counted from 1),
// "profile", "temperature".
//
// By is needed and known to the book. Thinner and reserve are from 0 to 100 %. Sizes are above zero. A profile is one that has a depth. The
// temperature is one at which a pot life can be reckoned.
func (m Method) Check(b *tables.Book) finding.Faults {
	var faults finding.Faults
	if _, err := b.Loss(m.By); err != nil {
		var keys []string
		for l := range b.Losses() {
			keys = append(keys, l.Key)
		}
		fault := finding.Fault{Kind: finding.ErrMissing, Key: "by", Want: finding.Suggest(m.By, keys)}
		if m.By != "" {
			fault.Kind, fault.Got = finding.ErrUnknown, entry.Describe(m.By)
		}
		faults = append(faults, fault)
	}
	checkPart(&faults, "thinner", m.Thinner)
	checkPart(&faults, "reserve", m.Reserve)
	if m.Profile != "" {
		if _, err := profileOf(b, m.Profile); err != nil {
			fs, _ := errors.AsType[finding.Faults](err) // it has no other errors
			faults = append(faults, fs...)
		}
	}
	if t := m.Today; t.Given() && (t.Cmp(coldest) < 0 || t.Cmp(hottest) > 0) {
		faults = append(faults, finding.Fault{Kind: finding.ErrImpossible, Key: "temperature", Got: t.String(), Want: fmt.Sprintf("from %s to %s", coldest, hottest)})
	}
	for i, s := range m.Sizes {
		if s.Sign() <= 0 {
			faults = append(faults, finding.Fault{Kind: finding.ErrImpossible, Key: fmt.Sprintf("sizes[%d]", i+1), Got: s.String(), Want: "more than zero"})
		}
	}
	return faults
}

// Paint returns the litres of unthinned paint for a number of coats of the dry film on the area.
//
//	litres = coats × (10 × area [m2] × film [um] ÷ (solids [%] × (100 − loss [%])) + residue)
//
// The low end takes the low area, the high solids, the low loss and the low residue; the high end the reverse; the typical
// value takes the typical ones. Solids are the coating's; loss and residue those of the way of application. The residue is
// counted once a coat, so zones that are painted in one go belong into one call; on a small part it is at most what the coat
// itself takes, since nobody fills a tray for a rudder stock (assumption). Thinner is not in the formula: it changes the
// wet film and the volume in the tray, never the paint to buy. The reserve is not in it either: see Need.
//
// The area rises from low to high and is above zero, the film is above zero, coats are 1 to 50, the coating has volume solids
// of at most 100 %; else the error is a finding.Faults. Each end is rounded up to 0.01 L.
//
// Basis: derived (volume balance); the loss and the residue are the book's.
func Paint(b *tables.Book, area quantity.Range[quantity.Area], c tables.Coating, film quantity.Film, coats int, m Method) (quantity.Range[quantity.Volume], error) {
	return paint(b, area, c, quantity.Exactly(film), coats, m, true)
}

// paint is Paint over a range of films, with the residue of each coat or without.
func paint(b *tables.Book, area quantity.Range[quantity.Area], c tables.Coating, film quantity.Range[quantity.Film], coats int, m Method, tray bool) (quantity.Range[quantity.Volume], error) {
	var none quantity.Range[quantity.Volume]
	faults := m.Check(b)
	checkAreas(&faults, area)
	checkFilm(&faults, "film", film.Low)
	if coats < 1 || coats > mostCoats {
		faults = append(faults, finding.Fault{Kind: finding.ErrImpossible, Key: "coats", Got: strconv.Itoa(coats), Want: fmt.Sprintf("a count from 1 to %d", mostCoats)})
	}
	var solids finding.Faults
	for _, s := range []quantity.Share{c.Solids.Low, c.Solids.Typical, c.Solids.High} {
		checkSolids(&solids, s)
	}
	if err := solids.Err(); err != nil {
		faults = append(faults, solids.Under("", "coating["+c.Key+"]")...)
	}
	if err := faults.Err(); err != nil {
		return none, err
	}
	loss, err := b.Loss(m.By)
	if err != nil {
		return none, err
	}
	out := quantity.Range[quantity.Volume]{}
	for _, end := range []struct {
		to           *quantity.Volume
		area         quantity.Area
		film         quantity.Film
		solids, loss quantity.Share
		residue      quantity.Volume
	}{
		{&out.Low, area.Low, film.Low, c.Solids.High, loss.Share.Low, loss.Residue.Low},
		{&out.Typical, area.Typical, film.Typical, c.Solids.Typical, loss.Share.Typical, loss.Residue.Typical},
		{&out.High, area.High, film.High, c.Solids.Low, loss.Share.High, loss.Residue.High},
	} {
		if !tray {
			end.residue = quantity.Litre.N(0)
		}
		*end.to, err = litres(end.area, end.film, coats, end.solids, end.loss, end.residue)
		if err != nil {
			return none, outOfRange("film", end.film.String(), err)
		}
	}
	return out, nil
}

// basePlaces are the places of an amount in a base unit on its way into a formula: more than any unit and any written number
// of up to 10 places needs, so the conversion is exact; a longer one is rounded up.
const basePlaces = 18

// litres is the formula of Paint at one corner, with one division and one rounding.
func litres(area quantity.Area, film quantity.Film, coats int, solids, loss quantity.Share, residue quantity.Volume) (quantity.Volume, error) {
	m2 := area.In(quantity.SquareMetre, basePlaces, quantity.Up)
	um := film.In(quantity.Micrometre, basePlaces, quantity.Up)
	left := residue.In(quantity.Litre, basePlaces, quantity.Up)
	den := solids.Number().Mul(hundred.Sub(loss.Number()))
	put := decimal.NewFromInt(10).Mul(m2).Mul(um)
	tray := decimal.Min(left.Mul(den), put)
	num := put.Add(tray).Mul(decimal.NewFromInt(int64(coats)))
	n, err := quantity.Quotient(num, den, litrePlaces, quantity.Up)
	if err != nil {
		return quantity.Volume{}, err
	}
	return quantity.Litre.Of(n), nil
}

func checkAreas(faults *finding.Faults, a quantity.Range[quantity.Area]) {
	fault := func(kind error, got, want string) {
		*faults = append(*faults, finding.Fault{Kind: kind, Key: "area", Got: got, Want: want})
	}
	switch {
	case !a.Low.Given() || !a.Typical.Given() || !a.High.Given():
		fault(finding.ErrMissing, "", "a low, a typical and a high area")
	case a.Low.Sign() <= 0:
		fault(finding.ErrImpossible, a.Low.String(), "more than zero")
	case a.Low.Cmp(a.Typical) > 0 || a.Typical.Cmp(a.High) > 0:
		fault(finding.ErrImpossible, fmt.Sprintf("%s, %s, %s", a.Low, a.Typical, a.High), "areas that rise: low, typical, high")
	}
}

// Need returns the litres to have in the yard: the typical litres with the yard's reserve on top.
//
//	need = typical × (100 + reserve [%]) ÷ 100
//
// The end that decides is the typical one; the reserve is the yard's answer to the high one, which is shown beside it. A
// reserve that is not given, or below zero, is none. The need is rounded up to 0.01 L; it is not given when the typical
// litres are not.
//
// Basis: derived; the size of the reserve is the yard's.
func Need(r quantity.Range[quantity.Volume], reserve quantity.Share) quantity.Volume {
	if !r.Typical.Given() {
		return quantity.Volume{}
	}
	k := hundred
	if reserve.Sign() > 0 {
		k = k.Add(reserve.Number())
	}
	return r.Typical.Scale(k.Shift(-2)).To(quantity.Litre, litrePlaces, quantity.Up)
}
