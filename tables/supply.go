package tables

import (
	"slices"

	"boatyard.example/bottomwork/tables/entry"
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

// The drivers of a supply beside the kinds of work, whose driver is their area in m2.
const (
	PerCoat    = "coat"                 // each coat put on, on all parts together
	PerHand    = "hand and coat"        // each coat for each hand
	PerDay     = "hand and day"         // each day for each hand
	PerCoated  = "square metre coated"  // area × coats
	PerOutline = "metre of outline"     // length of the waterline's outline
	PerPlan    = "square metre of plan" // length × beam
	PerWaste   = "kilogram of waste"    // paint that comes off
)

// Drivers lists the words that a supply may be counted per.
func Drivers() []string {
	return append([]string{PerCoat, PerHand, PerDay, PerCoated, PerOutline, PerPlan, PerWaste}, actionWords...)
}

// Supply is something that is used up beside the paint.
type Supply struct {
	Row
	Unit     string                  // what is counted: piece, pair, m, m2, L, kg
	Per      string                  // the driver
	Rate     quantity.Range[float64] // units for one of the driver
	Packs    int                     // 2: counts coats of two-pack paint only; 0: all
	by       []string
	carriers []string
}

// With reports whether the supply is used with the way of application.
func (s Supply) With(by string) bool { return len(s.by) == 0 || slices.Contains(s.by, by) }

// Counts reports whether a coat of the coating counts for the supply.
func (s Supply) Counts(c Coating) bool {
	return (s.Packs == 0 || s.Packs == c.Packs) && (len(s.carriers) == 0 || slices.Contains(s.carriers, c.Carrier))
}

var supplyUnits = []string{"piece", "pair", "m", "m2", "L", "kg"}

func readSupply(r *entry.Row) Supply {
	s := Supply{Row: readRow(r), Unit: r.Word("unit", supplyUnits...), Per: r.Word("per", Drivers()...), by: r.Texts("by"), carriers: r.Words("carrier", "solvent", "water", "none")}
	s.Rate, _ = r.Floats("rate", 0, 1000)
	s.Packs, _ = r.Int("packs", 2, 2)
	r.Need("what is counted: piece, pair, m, m2, L or kg", "unit")
	r.Need("what it is counted per", "per")
	r.Need("units for one of the driver: [low, typical, high]", "rate")
	if (s.Packs != 0 || len(s.carriers) > 0) && s.Per != PerCoat && s.Per != PerHand && s.Per != PerCoated {
		r.Fault(finding.ErrImpossible, "per", s.Per, "coat, hand and coat or square metre coated, since the row asks what kind of paint it is")
	}
	return s
}
