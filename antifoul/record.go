package antifoul

import (
	"fmt"
	"slices"
	"strconv"

	"github.com/shopspring/decimal"

	"boatyard.example/bottomwork/antifoul/wear"
	"boatyard.example/bottomwork/coverage"
	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

// Record is what was seen of an earlier film of this boat: a [[record]] section. Where nobody measured the film that was laid, the
// litres that went onto the hull stand for it.
type Record struct {
	wear.Record
	Litres quantity.Volume // of the working coats, all of them; not given where Film is
	Coats  int
}

// check returns the faults of the record, keys as in a boat file.
func (r Record) check(b *tables.Book) finding.Faults {
	fs := r.Check(b)
	bad := func(key, got, want string) {
		fs = append(fs, finding.Fault{Kind: finding.ErrImpossible, Key: key, Got: got, Want: want})
	}
	if !r.Litres.Given() {
		if r.Coats != 0 {
			bad("coats", strconv.Itoa(r.Coats), "litres beside it; the film that was laid says all coats together")
		}
		return fs
	}
	if r.Film.Low.Given() {
		bad("litres", r.Litres.String(), "the film or the litres, not both")
	}
	fs = slices.DeleteFunc(fs, func(f finding.Fault) bool { return f.Key == "film" })
	if r.Litres.Sign() <= 0 {
		bad("litres", r.Litres.String(), "more than zero")
	}
	if r.Coats < 1 || r.Coats > 50 {
		bad("coats", strconv.Itoa(r.Coats), "a count from 1 to 50")
	}
	return fs
}

// fitted returns the boat with the rates of wear that her own records give, and with a film in each of them. Litres become a film by coverage.Used over the whole hull.
// Where the use does not say the water, it is that of the berth where she is kept.
func (x Boat) fitted(b *tables.Book) (Boat, error) {
	x.Use.Water = x.water(b)
	if len(x.Records) == 0 {
		return x, nil
	}
	x.Records = slices.Clone(x.Records)
	for i, r := range x.Records {
		if !r.Litres.Given() {
			continue
		}
		_, wetted, err := partAreas(b, x.filled(b))
		if err != nil {
			return x, err
		}
		c, err := b.Coating(r.Coating)
		if err != nil {
			return x, err
		}
		used, err := coverage.Used(b, coverage.Spent{Litres: r.Litres, Area: wetted.Total, Coats: r.Coats, Coating: c, Method: x.byRoller()})
		if err != nil {
			return x, prefixed(err, fmt.Sprintf("record[%d]", i+1))
		}
		n := decimal.NewFromInt(int64(r.Coats))
		x.Records[i].Film = quantity.Range[quantity.Film]{Low: used.Coat.Low.Scale(n), Typical: used.Coat.Typical.Scale(n), High: used.Coat.High.Scale(n)}
	}
	x.Use.Fits = wear.FitRecords(b, x.Use, x.wearRecords())
	return x, nil
}

// wearRecords are the records as wear takes them, each with a film: those of a boat that was fitted.
func (x Boat) wearRecords() []wear.Record {
	var out []wear.Record
	for _, r := range x.Records {
		out = append(out, r.Record)
	}
	return out
}
