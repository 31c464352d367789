package coverage

import (
	"math"

	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

// Coated is a layer that is put on: so many coats of the coating on the area.
type Coated struct {
	Coating tables.Coating
	Coats   int
	Area    quantity.Range[quantity.Area]
}

// Work is what a job does, as far as it uses up more than paint.
type Work struct {
	Coats   []Coated
	Areas   map[finding.Action]quantity.Range[quantity.Area] // area that gets each kind of work; a second time counts again
	Hands   int                                              // 0: one
	Days    quantity.Range[float64]                          // of the whole job, all hands at work
	Outline quantity.Range[quantity.Length]                  // of the waterline; not given: nothing is counted by it
	Plan    quantity.Area                                    // length × beam; not given likewise
	Waste   quantity.Range[quantity.Mass]                    // paint that comes off, its two ends; not given likewise
}

// Supplied is one line of the shopping list beside the paint.
type Supplied struct {
	Supply tables.Supply
	Uses   quantity.Range[float64] // in the supply's unit
	Buy    int                     // whole units: Uses at the typical end, rounded up
}

// Supplies returns what the work uses up, in the order of the rows; those that it has no use for are left out.
//
//	uses = rate × driver      the low rate with the low driver, and so on
//
// The typical end decides, rounded up to a whole piece, pair, metre, m2, litre or kilogram.
//
// Basis: that of the rows, mostly assumption; a yard replaces them by its own.
func Supplies(b *tables.Book, w Work, m Method) []Supplied {
	var out []Supplied
	for s := range b.Supplies() {
		if !s.With(m.By) {
			continue
		}
		d := w.driver(s)
		uses := quantity.Range[float64]{Low: d.Low * s.Rate.Low, Typical: d.Typical * s.Rate.Typical, High: d.High * s.Rate.High}
		if n := int(math.Ceil(math.Min(uses.Typical, mostSupplied) - 1e-9)); n > 0 {
			out = append(out, Supplied{Supply: s, Uses: uses, Buy: n})
		}
	}
	return out
}

// mostSupplied bounds a count, far above that of any job.
const mostSupplied = 1e9

// driver is how much there is of what the supply is counted per.
func (w Work) driver(s tables.Supply) quantity.Range[float64] {
	hands := float64(max(w.Hands, 1))
	switch s.Per {
	case tables.PerCoat, tables.PerHand, tables.PerCoated:
		var coats, m2 quantity.Range[float64]
		for _, k := range w.Coats {
			if !s.Counts(k.Coating) {
				continue
			}
			n := float64(k.Coats)
			coats = plusRange(coats, quantity.Exactly(n))
			m2 = plusRange(m2, times(squareMetres(k.Area), n))
		}
		switch s.Per {
		case tables.PerHand:
			return times(coats, hands)
		case tables.PerCoated:
			return m2
		}
		return coats
	case tables.PerDay:
		return times(w.Days, hands)
	case tables.PerOutline:
		if !w.Outline.High.Given() {
			return quantity.Range[float64]{}
		}
		return quantity.Range[float64]{Low: w.Outline.Low.Float(quantity.Metre), Typical: w.Outline.Typical.Float(quantity.Metre), High: w.Outline.High.Float(quantity.Metre)}
	case tables.PerPlan:
		return squareMetres(quantity.Exactly(w.Plan))
	case tables.PerWaste:
		if !w.Waste.High.Given() {
			return quantity.Range[float64]{}
		}
		low, high := w.Waste.Low.Float(quantity.Kilogram), w.Waste.High.Float(quantity.Kilogram)
		return quantity.Range[float64]{Low: low, Typical: (low + high) / 2, High: high}
	}
	return squareMetres(w.Areas[finding.Action(s.Per)])
}

func squareMetres(a quantity.Range[quantity.Area]) quantity.Range[float64] {
	if !a.High.Given() {
		return quantity.Range[float64]{}
	}
	return quantity.Range[float64]{Low: a.Low.Float(quantity.SquareMetre), Typical: a.Typical.Float(quantity.SquareMetre), High: a.High.Float(quantity.SquareMetre)}
}

func times(r quantity.Range[float64], n float64) quantity.Range[float64] {
	return quantity.Range[float64]{Low: r.Low * n, Typical: r.Typical * n, High: r.High * n}
}

func plusRange(a, b quantity.Range[float64]) quantity.Range[float64] {
	return quantity.Range[float64]{Low: a.Low + b.Low, Typical: a.Typical + b.Typical, High: a.High + b.High}
}
