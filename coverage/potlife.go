package coverage

import (
	"fmt"
	"math"

	"github.com/shopspring/decimal"

	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

// Potful is how much of a two-pack paint to mix at once.
type Potful struct {
	Litres   quantity.Volume   // mixed paint, rounded down to 0.1 L
	Life     quantity.Duration // pot life today, whole minutes
	Findings finding.List      // one
	_        [0]func()
}

const potPlaces = 1 // decimal places of a batch, in litres

var (
	coldest, hottest = quantity.Celsius.N(-10), quantity.Celsius.N(60)
	leastPot         = decimal.New(25, -2) // litres: less is too small to measure out (assumption)
)

// PotLife returns the pot life at another temperature, in whole minutes.
//
//	life today = life ÷ 2^((today − at) ÷ span)      today warmer than at
//	life today = life                                else
//
// Cold does not lengthen it: paint that is stiff from cold is no longer workable for it. The span is the low end of the book's
// factor "pot-life-span".
//
// The life is above zero and stated at the first temperature; both temperatures are from -10 to 60 degC; else the error is a
// finding.Faults, as it is for a book without the factor. The answer is rounded down to 1 min.
//
// Basis: common practice for the span, assumption that cold gives nothing.
func PotLife(b *tables.Book, life quantity.Duration, at, today quantity.Temperature) (quantity.Duration, error) {
	if err := checkPotLife(life, at, today).Err(); err != nil {
		return quantity.Duration{}, err
	}
	span, err := b.Factor("pot-life-span")
	if err != nil {
		return quantity.Duration{}, err
	}
	warmer := today.Float(quantity.Celsius) - at.Float(quantity.Celsius)
	minutes := life.Float(quantity.Minute) * math.Exp2(-max(0, warmer)/span.Value.Low)
	out, err := quantity.Minute.Near(minutes, 0, quantity.Down)
	if err != nil {
		return quantity.Duration{}, outOfRange("life", life.String(), err)
	}
	return out, nil
}

func checkPotLife(life quantity.Duration, at, today quantity.Temperature) finding.Faults {
	var faults finding.Faults
	switch {
	case !life.Given():
		faults = append(faults, finding.Fault{Kind: finding.ErrMissing, Key: "life", Want: `a pot life, such as "90 min"`})
	case life.Sign() <= 0:
		faults = append(faults, finding.Fault{Kind: finding.ErrImpossible, Key: "life", Got: life.String(), Want: "more than zero"})
	}
	for _, t := range []struct {
		key   string
		value quantity.Temperature
	}{{"at", at}, {"today", today}} {
		switch {
		case !t.value.Given():
			faults = append(faults, finding.Fault{Kind: finding.ErrMissing, Key: t.key, Want: `a temperature, such as "20 degC"`})
		case t.value.Cmp(coldest) < 0 || t.value.Cmp(hottest) > 0:
			faults = append(faults, finding.Fault{Kind: finding.ErrImpossible, Key: t.key, Got: t.value.String(), Want: fmt.Sprintf("from %s to %s", coldest, hottest)})
		}
	}
	return faults
}

// Batch returns how much to mix at once, so that it is on the hull inside a share of the pot life today.
//
//	litres = rate [m2/h] × wet film [um] ÷ 1000 × pot life today [min] ÷ 60 × share
//
// The rate is that of all hands who put on the paint of this mix. The pot life today is that of PotLife, with its inputs. The
// share is the low end of the book's factor "pot-life-share". What stays in roller and tray is not in the formula, so the mix
// is used up a little sooner. The finding is a Caution when the litres are under 0.25 L before they are rounded.
//
// Rate and wet film are above zero; a share above 1 in an own table is refused; else the error is a finding.Faults. The litres
// are rounded down to 0.1 L, since pot life is a limit, and may be nought.
//
// Basis: derived; the share is an assumption.
func Batch(b *tables.Book, life quantity.Duration, at, today quantity.Temperature, perHour quantity.WorkRate, wet quantity.Film) (Potful, error) {
	faults := checkPotLife(life, at, today)
	switch {
	case !perHour.Given():
		faults = append(faults, finding.Fault{Kind: finding.ErrMissing, Key: "rate", Want: `a rate of work, such as "12 m2/h"`})
	case perHour.Sign() <= 0:
		faults = append(faults, finding.Fault{Kind: finding.ErrImpossible, Key: "rate", Got: perHour.String(), Want: "more than zero"})
	}
	checkFilm(&faults, "wet", wet)
	if err := faults.Err(); err != nil {
		return Potful{}, err
	}
	part, err := b.Factor("pot-life-share")
	if err != nil {
		return Potful{}, err
	}
	if part.Value.Low > 1 {
		return Potful{}, finding.Faults{{Kind: finding.ErrImpossible, Key: "factor[pot-life-share].value", Got: tables.Show(part.Value.Low, quantity.Metric), Want: "a share of at most 1"}}
	}
	out := Potful{}
	if out.Life, err = PotLife(b, life, at, today); err != nil {
		return Potful{}, err
	}
	span, err := b.Factor("pot-life-span")
	if err != nil {
		return Potful{}, err
	}
	share := number(part.Value.Low)
	rate, um := perHour.In(quantity.SquareMetrePerHour, basePlaces, quantity.Down), wet.In(quantity.Micrometre, basePlaces, quantity.Down)
	num, den := rate.Mul(um).Mul(out.Life.Number()).Mul(share), decimal.NewFromInt(1000*60)
	n, err := quantity.Quotient(num, den, potPlaces, quantity.Down)
	if err != nil {
		return Potful{}, outOfRange("rate", perHour.String(), err)
	}
	out.Litres = quantity.Litre.Of(n)
	f := finding.Finding{
		Rule: mixAtOnce, Verdict: finding.Fine, Basis: []finding.Basis{span.Basis("value"), part.Basis("value")},
		Facts: []finding.Fact{{Name: "litres", Value: out.Litres}, {Name: "today", Value: today}, {Name: "life", Value: out.Life}, {Name: "share", Value: percentOf(share, decimal.NewFromInt(1))}},
	}
	if num.Cmp(den.Mul(leastPot)) < 0 {
		f.Rule, f.Verdict = mixTooSmall, finding.Caution
	}
	out.Findings = finding.List{f}
	return out, nil
}
