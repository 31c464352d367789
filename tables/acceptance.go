package tables

import (
	"iter"

	"boatyard.example/bottomwork/tables/entry"
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

// Acceptance says how a standard judges the film readings of an area. A limit that is not given is none of the standard's.
type Acceptance struct {
	Row
	Sampling    string         // the standard of the sampling rows that counts how many are needed
	SamplingUS  string         // the same for an area in ft2, where the standard keeps its US figures apart
	Readings    int            // readings that make a spot, at least; 1: each reading is judged for itself
	Spots       int            // spots that make an area: the sampling then counts areas; 1: it counts readings, and the mean is that of all
	LeastMean   quantity.Share // of the nominal film: least mean, of each area or of all readings
	LeastSingle quantity.Share // of the nominal film: least single reading, or spot
	Below       quantity.Share // of the readings, or spots: so many may lie below the nominal film
	Fewer       bool           // the share itself fails: fewer must lie below
	MostSingle  quantity.Share // of the greatest film agreed: greatest single reading, or spot
	MostMean    quantity.Share // of the greatest film agreed: greatest mean
	Guide       string         // key of a value: the multiple of the nominal film that is a guide where no greatest film was agreed
	Split       quantity.Area  // a larger area is split
}

func readAcceptance(r *entry.Row) Acceptance {
	share := func(key string) quantity.Share { return entry.Amount[quantity.Share](r, key) }
	a := Acceptance{
		Row: readRow(r), Sampling: r.Text("sampling"), SamplingUS: r.Text("sampling_us"),
		LeastMean: share("least_mean"), LeastSingle: share("least_single"), Below: share("below"), Fewer: r.YesNo("below_fewer").True(),
		MostSingle: share("most_single"), MostMean: share("most_mean"), Guide: r.Text("guide"), Split: entry.Amount[quantity.Area](r, "split"),
	}
	a.Readings, _ = r.Int("spot_readings", 1, 20)
	a.Spots, _ = r.Int("area_spots", 1, 100)
	r.Need("the standard of rows of sampling", "sampling")
	r.Need("a whole number", "spot_readings", "area_spots")
	r.Need("a share of the nominal film", "least_single")
	full := quantity.Percent.N(100)
	for key, s := range map[string]quantity.Share{"least_mean": a.LeastMean, "least_single": a.LeastSingle, "below": a.Below} {
		if s.Given() && (s.Sign() <= 0 || s.Cmp(full) > 0) {
			r.Fault(finding.ErrImpossible, key, s.String(), "more than 0 % and at most 100 %")
		}
	}
	for key, s := range map[string]quantity.Share{"most_single": a.MostSingle, "most_mean": a.MostMean} {
		if s.Given() && s.Cmp(full) < 0 {
			r.Fault(finding.ErrImpossible, key, s.String(), "100 % or more")
		}
	}
	if a.Fewer && !a.Below.Given() && !r.Has("below") {
		r.Fault(finding.ErrMissing, "below", "", "the share that fewer must lie below than")
	}
	if a.Split.Given() && a.Split.Sign() <= 0 {
		r.Fault(finding.ErrImpossible, "split", a.Split.String(), "an area above zero")
	}
	return a
}

// Acceptance returns the row of the key: how a standard judges film readings.
func (b *Book) Acceptance(key string) (Acceptance, error) { return b.acceptances.get(key) }

// Acceptances lists how standards judge film readings.
func (b *Book) Acceptances() iter.Seq[Acceptance] { return b.acceptances.all() }
