package tables

import (
	"iter"
	"slices"

	"boatyard.example/bottomwork/tables/entry"
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

// Price is what one unit of something costs: own knowledge, of which the embedded tables hold none. All prices of a book, those of
// cans too, are of one currency.
type Price struct {
	Row
	Of    Priced                         // what kind of thing
	What  string                         // key of a coating, a supply or a kind of work; empty: every such thing that has no row of its own
	By    string                         // who is paid it: owner, yard; empty: it is the same for both
	Per   string                         // the unit
	Money quantity.Range[quantity.Money] // of one unit; the key price of a file
}

// Priced is a kind of thing that has a price.
type Priced string

// The kinds of thing that have a price.
const (
	PricedPaint    Priced = "paint"    // a litre of a coating, where its cans have no prices; what: its key
	PricedThinner  Priced = "thinner"  // a litre
	PricedSupply   Priced = "supply"   // a unit of something used up; what: its key
	PricedLabour   Priced = "labour"   // an hour of one hand
	PricedWork     Priced = "work"     // a square metre of a kind of work, all in, instead of hours; what: its key
	PricedLift     Priced = "lift"     // out of the water and back
	PricedWash     Priced = "wash"     // by the yard, at the lift-out, instead of hours
	PricedBlocking Priced = "blocking" // set up on stands or in a cradle
	PricedShift    Priced = "shift"    // of the stands
	PricedDay      Priced = "lay-day"  // ashore
	PricedWaste    Priced = "waste"    // taken away
	PricedCleaning Priced = "cleaning" // afloat, once
)

// pricedIn is a kind of thing with the units in which it may be priced, the usual one first.
type pricedIn struct {
	of  Priced
	per []string
}

var pricedPer = []pricedIn{
	{PricedPaint, []string{"L"}},
	{PricedThinner, []string{"L"}},
	{PricedSupply, supplyUnits},
	{PricedLabour, []string{"h"}},
	{PricedWork, []string{"m2"}},
	{PricedLift, []string{"job", "m"}},
	{PricedWash, []string{"job", "m", "m2"}},
	{PricedBlocking, []string{"job", "m"}},
	{PricedShift, []string{"job", "m"}},
	{PricedDay, []string{"day", "m and day"}},
	{PricedWaste, []string{"kg"}},
	{PricedCleaning, []string{"job", "m", "m2"}},
}

// AllPriced lists the kinds of thing that have a price, in the order of a bill.
func AllPriced() []Priced {
	var out []Priced
	for _, x := range pricedPer {
		out = append(out, x.of)
	}
	return out
}

// Who does the work, and whose prices it has.
const (
	ByOwner = "owner"
	ByYard  = "yard"
)

func readPrice(r *entry.Row) Price {
	var words []string
	for _, x := range AllPriced() {
		words = append(words, string(x))
	}
	p := Price{Row: readRow(r), Of: Priced(r.Word("of", words...)), What: r.Text("what"), By: r.Word("by", ByOwner, ByYard), Money: entry.MoneyRange(r, "price")}
	at := slices.IndexFunc(pricedPer, func(x pricedIn) bool { return x.of == p.Of })
	if at >= 0 {
		p.Per = r.Word("per", pricedPer[at].per...)
	} else {
		p.Per = r.Text("per")
	}
	r.Need("what has the price, per what, and the price", "of", "per", "price")
	if p.What != "" && p.Of != "" && p.Of != PricedPaint && p.Of != PricedSupply && p.Of != PricedWork {
		r.Fault(finding.ErrImpossible, "what", p.What, "no such key here: paint, supply and work have one")
	}
	if p.Of == PricedWork && p.What == "" {
		r.Need("the kind of work", "what")
	}
	if p.Of == PricedSupply && p.What == "" {
		r.Need("the supply", "what")
	}
	return p
}

// Prices lists what things cost; the embedded tables hold none.
func (b *Book) Prices() iter.Seq[Price] { return b.prices.all() }

// Price returns what a thing costs for whoever pays: the row that names it and him, else the one that names it, else the one that names him, else the
// one for every such thing. False when the book has none.
func (b *Book) Price(of Priced, what, by string) (Price, bool) {
	for _, named := range [...]struct{ what, by string }{{what, by}, {what, ""}, {"", by}, {"", ""}} {
		for i := range b.prices.rows {
			if p := &b.prices.rows[i]; p.Of == of && p.What == named.what && p.By == named.by {
				return *p, true
			}
		}
	}
	return Price{}, false
}

// Currency is that of the book's prices and of its cans; empty when it has none.
func (b *Book) Currency() string {
	for i := range b.prices.rows {
		return b.prices.rows[i].Money.Typical.Currency()
	}
	for i := range b.cans.rows {
		if m := b.cans.rows[i].Price; m.Given() {
			return m.Currency()
		}
	}
	return ""
}

// oneCurrency notes the prices that are not of the book's currency, and two rows for the same thing. Rows with other faults come first.
func (b *Book) oneCurrency(faults *finding.Faults) {
	if len(*faults) > 0 {
		return
	}
	want := b.Currency()
	note := func(rec *record, kind error, key, got, want string) {
		*faults = append(*faults, finding.Fault{Kind: kind, File: rec.file, Key: key, Got: got, Want: want})
	}
	for i := range b.prices.rows {
		p := &b.prices.rows[i]
		if c := p.Money.Typical.Currency(); c != "" && c != want {
			note(b.prices.from[i], finding.ErrImpossible, "price["+p.Key+"].price", p.Money.Typical.String(), "money in "+want+", as the other prices: nothing is exchanged")
		}
		for j := range i {
			if o := &b.prices.rows[j]; o.Of == p.Of && o.What == p.What && o.By == p.By {
				note(b.prices.from[i], finding.ErrDuplicate, "price["+p.Key+"].of", string(p.Of), "one row for it; price["+o.Key+"] is of the same")
			}
		}
	}
	for i := range b.cans.rows {
		if m := b.cans.rows[i].Price; m.Given() && m.Currency() != want {
			note(b.cans.from[i], finding.ErrImpossible, "can["+b.cans.rows[i].Key+"].price", m.String(), "money in "+want+", as the other prices: nothing is exchanged")
		}
	}
}
