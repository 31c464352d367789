package tables

import (
	"iter"
	"slices"

	"boatyard.example/bottomwork/tables/entry"
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

// Drying is how temperature changes the time in which a coating dries or cures: by an activation energy inside a span of temperatures,
// or by points of a table between which nothing is reckoned.
type Drying struct {
	Row
	Packs    int                     // components of the coatings that it is for
	Energy   quantity.Range[float64] // activation energy, kJ/mol; not given: by points
	From, To quantity.Temperature    // the span in which the energy is believed; both are needed with it
	points   []DryingPoint
	carriers []string
}

// DryingPoint is one temperature of a table of drying times.
type DryingPoint struct {
	At    quantity.Temperature
	Times quantity.Range[float64] // the time there as a multiple of the time at 20 degC
}

// Points lists the points, the coldest first.
func (d Drying) Points() iter.Seq[DryingPoint] { return slices.Values(d.points) }

// For reports whether the row tells of coatings of so many components and the carrier.
func (d Drying) For(packs int, carrier string) bool {
	return d.Packs == packs && (len(d.carriers) == 0 || slices.Contains(d.carriers, carrier))
}

func readDrying(r *entry.Row) Drying {
	d := Drying{
		Row: readRow(r), From: entry.Amount[quantity.Temperature](r, "from"), To: entry.Amount[quantity.Temperature](r, "to"),
		carriers: r.Words("carriers", "solvent", "water", "none"),
	}
	d.Packs, _ = r.Int("packs", 1, 2)
	d.Energy, _ = r.Floats("energy", 1, 500)
	r.Need("1 or 2 components", "packs")
	rising(r, "to", d.From, d.To, "hotter than from")
	for _, k := range r.Tables("point") {
		p := DryingPoint{At: entry.Amount[quantity.Temperature](k, "at")}
		p.Times, _ = k.Floats("times", 0.01, 100)
		k.Need("a temperature and [low, typical, high] multiples of the time at 20 degC", "at", "times")
		if n := len(d.points); n > 0 {
			rising(k, "at", d.points[n-1].At, p.At, "hotter than the point before: the coldest first")
		}
		d.points = append(d.points, p)
		k.Close()
	}
	switch byEnergy := r.Has("energy"); {
	case byEnergy == (len(d.points) > 0):
		r.Fault(finding.ErrMissing, "energy", "", "energy with from and to, or points; one of the two")
	case byEnergy:
		r.Need("the span of temperatures in which the energy is believed", "from", "to")
	}
	return d
}

// DryingOf returns the first row that tells of the coating; false when none does.
func (b *Book) DryingOf(c Coating) (Drying, bool) {
	for _, d := range b.dryings.rows {
		if d.For(c.Packs, c.Carrier) {
			return d, true
		}
	}
	return Drying{}, false
}

// Dryings lists how temperature changes drying times.
func (b *Book) Dryings() iter.Seq[Drying] { return b.dryings.all() }
