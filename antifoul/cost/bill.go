package cost

import (
	"math"

	"github.com/shopspring/decimal"

	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

// Job is the unit of what is done once, whatever the size of the boat.
const Job = "job"

// places are the decimals of money and of numbers of units.
const places = 2

// Item is so many units of something that is paid for.
type Item struct {
	Of     tables.Priced
	What   string // key of the coating, supply or work; empty where it has none
	Name   string // as a bill calls it
	Unit   string // in which Amount counts: L, h, m2, kg, day, a supply's unit; Job for what is done once or so many times
	Amount quantity.Range[decimal.Decimal]
	Known  quantity.Money // its money where that is known already, as of cans that were chosen by their prices; the book is not asked then
}

// Boat is what prices by the metre or the square metre are multiplied with.
type Boat struct {
	Length quantity.Length // overall, or on the waterline where that is not given
	Area   quantity.Range[quantity.Area]
}

// Line is an item with its money. Money is not given where the book has no price, or its price is by a measure of the boat that nobody gave.
type Line struct {
	Item
	Count quantity.Range[decimal.Decimal] // units of the price, two decimals
	Per   string                          // the unit of the price
	Each  quantity.Range[quantity.Money]  // of one; not given for money that was known
	Money quantity.Range[quantity.Money]
	Basis finding.Basis
	Why   finding.Finding // why there is no money; without a rule where there is
}

// Priced reports whether the line has money.
func (l Line) Priced() bool { return l.Money.Typical.Given() }

// Bill is what a job costs whoever pays.
type Bill struct {
	By          string
	Lines       []Line
	Net         quantity.Range[quantity.Money] // the sum of the lines; not given where none has money
	Share       quantity.Range[float64]        // of contingency, in per cent
	Contingency quantity.Range[quantity.Money]
	Total       quantity.Range[quantity.Money]
}

// The rules of a bill.
const (
	RuleNoPrice  finding.ID = "cost-no-price"
	RuleNoLength finding.ID = "cost-no-length"
)

// Factors lists the rows of the factor table that a bill asks for.
func Factors() []string { return []string{"contingency"} }

// Reckon makes the bill of the items for whoever pays.
//
//	money = count × price      the low count at the low price, and so on
//	contingency = net × share, the share to a hundredth of a per cent
//
// A price by the metre takes the count times the boat's length, one by the square metre the count times her area, one by metre and day
// the days times her length. Items of nought are left out.
//
// Basis: each line carries its price's; the share of contingency is a factor, an assumption.
func Reckon(b *tables.Book, by string, items []Item, boat Boat) Bill {
	out := Bill{By: by}
	for _, it := range items {
		if it.Amount.High.Sign() <= 0 {
			continue
		}
		l := line(b, by, it, boat)
		out.Lines = append(out.Lines, l)
		if l.Priced() {
			out.Net = Plus(out.Net, l.Money)
		}
	}
	if f, err := b.Factor("contingency"); err == nil && out.Net.Typical.Given() {
		out.Share = quantity.Range[float64]{Low: f.Value.Low * 100, Typical: f.Value.Typical * 100, High: f.Value.High * 100}
		out.Contingency = each3(out.Net, f.Value, func(m quantity.Money, share float64) quantity.Money {
			return m.Scale(decimal.New(int64(math.Round(share*1e4)), -4)).Round(places, quantity.Nearest)
		})
		out.Total = Plus(out.Net, out.Contingency)
	}
	return out
}

func line(b *tables.Book, by string, it Item, boat Boat) Line {
	l := Line{Item: it, Count: rounded(it.Amount), Per: it.Unit}
	if it.Known.Given() {
		l.Money = quantity.Exactly(it.Known.Round(places, quantity.Nearest))
		return l
	}
	p, ok := b.Price(it.Of, it.What, by)
	if !ok {
		l.Why = finding.Finding{Rule: RuleNoPrice, Verdict: finding.Caution, About: it.Name}
		return l
	}
	times, ok := boat.measure(p.Per)
	if !ok {
		l.Why = finding.Finding{Rule: RuleNoLength, Verdict: finding.Caution, About: it.Name, Facts: []finding.Fact{{Name: "per", Value: p.Per}}}
		return l
	}
	l.Per, l.Each, l.Basis = p.Per, p.Money, p.Basis("price")
	if times != nil && it.Unit != p.Per {
		l.Count = rounded(quantity.Range[decimal.Decimal]{Low: it.Amount.Low.Mul(times.Low), Typical: it.Amount.Typical.Mul(times.Typical), High: it.Amount.High.Mul(times.High)})
	}
	l.Money = quantity.Range[quantity.Money]{
		Low:     p.Money.Low.Scale(l.Count.Low).Round(places, quantity.Nearest),
		Typical: p.Money.Typical.Scale(l.Count.Typical).Round(places, quantity.Nearest),
		High:    p.Money.High.Scale(l.Count.High).Round(places, quantity.Nearest),
	}
	return l
}

// measure is what a count is multiplied with for a price by a measure of the boat; nil where the price is by the item's own unit. False: nobody gave
// the measure.
func (x Boat) measure(per string) (*quantity.Range[decimal.Decimal], bool) {
	switch per {
	case "m", "m and day":
		if !x.Length.Given() {
			return nil, false
		}
		n := quantity.Exactly(x.Length.In(quantity.Metre, places, quantity.Nearest))
		return &n, true
	case "m2":
		if !x.Area.Typical.Given() {
			return nil, false
		}
		in := func(a quantity.Area) decimal.Decimal { return a.In(quantity.SquareMetre, places, quantity.Nearest) }
		return &quantity.Range[decimal.Decimal]{Low: in(x.Area.Low), Typical: in(x.Area.Typical), High: in(x.Area.High)}, true
	}
	return nil, true
}

// Amounts makes a range of numbers of units, two decimals. Ends that are no number, below zero or beyond 1e9 count as nought.
//
// Basis: derived; rounded to the nearest.
func Amounts(low, typical, high float64) quantity.Range[decimal.Decimal] {
	n := func(f float64) decimal.Decimal {
		if !(f > 0 && f < 1e9) {
			return decimal.Decimal{}
		}
		return decimal.New(int64(math.Round(f*100)), -places)
	}
	return quantity.Range[decimal.Decimal]{Low: n(low), Typical: n(typical), High: n(high)}
}

// Times makes a number of units that is known.
func Times(n int) quantity.Range[decimal.Decimal] {
	return quantity.Exactly(decimal.NewFromInt(int64(n)))
}

func rounded(r quantity.Range[decimal.Decimal]) quantity.Range[decimal.Decimal] {
	return quantity.Range[decimal.Decimal]{Low: r.Low.Round(places), Typical: r.Typical.Round(places), High: r.High.Round(places)}
}

// Plus adds money end by end, taking "not given" as nothing. Both are of one currency, as all prices of a book are; else the sum is
// not given.
func Plus(a, b quantity.Range[quantity.Money]) quantity.Range[quantity.Money] {
	switch {
	case !a.Typical.Given():
		return b
	case !b.Typical.Given():
		return a
	}
	add := func(x, y quantity.Money) quantity.Money {
		s, err := x.Add(y)
		if err != nil {
			return quantity.Money{}
		}
		return s
	}
	return quantity.Range[quantity.Money]{Low: add(a.Low, b.Low), Typical: add(a.Typical, b.Typical), High: add(a.High, b.High)}
}

func each3(m quantity.Range[quantity.Money], f quantity.Range[float64], do func(quantity.Money, float64) quantity.Money) quantity.Range[quantity.Money] {
	return quantity.Range[quantity.Money]{Low: do(m.Low, f.Low), Typical: do(m.Typical, f.Typical), High: do(m.High, f.High)}
}
