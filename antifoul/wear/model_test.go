package wear_test

import (
	"math"
	"testing"
	"testing/fstest"

	"boatyard.example/bottomwork/antifoul/wear"
	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/quantity"
)

// model works the range of a rate out from the definitions alone, by sums far finer than those of the package: the tables' rate is spread on a logarithmic scale about
// its typical value, one in twenty beyond each end; the film laid and the zone's factor are spread normally about theirs; a reading errs by the error of a
// film and of its places; the signal shows where the film, patchy as it is, has ended.
func model(t *testing.T, b *tables.Book, f wear.Fit, r wear.Record) [3]float64 {
	t.Helper()
	number := func(key string) float64 {
		row, err := b.Factor(key)
		if err != nil {
			t.Fatal(err)
		}
		return row.Value.Typical
	}
	one, place, patchy := number("record-film-error"), number("record-place-error"), number("record-patchiness")
	zone, err := b.Zone(r.Looks[0].Zone)
	if err != nil {
		t.Fatal(err)
	}
	const beyond = 1.6449 // standard deviations of a normal spread with a twentieth beyond
	bell := func(z float64) float64 { return math.Exp(-z * z / 2) }
	um := func(f quantity.Film) float64 { return f.Float(quantity.Micrometre) }
	laid, laidSD := um(r.Film.Typical), (um(r.Film.High)-um(r.Film.Low))/2/beyond
	factor, factorSD := zone.Wear.Typical, max((zone.Wear.High-zone.Wear.Low)/2/beyond, 0.02*zone.Wear.Typical)
	middle := math.Log(f.Table.Typical)
	low, high := math.Log(f.Table.Low)-2, math.Log(f.Table.High)+2
	const steps = 600
	var sum [steps + 1]float64
	at := func(i int) float64 { return low + (high-low)*float64(i)/steps }
	for i := 1; i <= steps; i++ {
		x := (at(i) + at(i-1)) / 2
		sd := (math.Log(f.Table.High) - middle) / beyond
		if x < middle {
			sd = (middle - math.Log(f.Table.Low)) / beyond
		}
		like := 0.0
		for p := -2.5; p <= 2.5; p += 0.125 {
			for q := -2.5; q <= 2.5; q += 0.25 {
				film, all := laid+p*laidSD, bell(p)*bell(q)
				for _, l := range r.Looks {
					months := float64(r.Launched.DaysUntil(l.On)) * 12 / 365.25
					left := film - math.Exp(x)*(factor+q*factorSD)*months
					if l.Film.Given() {
						all *= bell((um(l.Film) - max(left, 0)) / math.Hypot(one, place/math.Sqrt(max(1, float64(l.Readings)))))
					}
					gone := 0.5 * math.Erfc(left/(patchy*film)/math.Sqrt2)
					switch l.Signal {
					case quantity.Yes:
						all *= gone
					case quantity.No:
						all *= 1 - gone
					case quantity.NotSaid:
					}
				}
				like += all
			}
		}
		sum[i] = sum[i-1] + bell((x-middle)/sd)*like
	}
	var out [3]float64
	for k, share := range []float64{0.05, 0.5, 0.95} {
		for i := 1; i <= steps; i++ {
			if sum[i] >= share*sum[steps] {
				out[k] = math.Exp(at(i))
				break
			}
		}
	}
	return out
}

// The package's sums come to what the definitions say, within two in a hundred.
func TestRangesAsDefined(t *testing.T) {
	for name, looks := range map[string][]wear.Look{
		"says nothing":      {{On: day(t, "2025-04-02"), Zone: "flat", Signal: quantity.No}},
		"shows early":       {{On: day(t, "2025-10-01"), Zone: "flat", Signal: quantity.Yes}},
		"not shown late":    {{On: day(t, "2027-04-01"), Zone: "flat", Signal: quantity.No}},
		"one reading":       {{On: day(t, "2026-04-01"), Zone: "flat", Film: um(60)}},
		"many readings":     {{On: day(t, "2026-04-01"), Zone: "flat", Film: um(60), Readings: 25}},
		"readings at edges": {{On: day(t, "2026-04-01"), Zone: "edges", Film: um(40), Readings: 4}},
		"then the signal":   {{On: day(t, "2026-04-01"), Zone: "flat", Film: um(50), Readings: 4}, {On: day(t, "2027-02-01"), Zone: "flat", Signal: quantity.Yes}},
	} {
		f := fit(t, looks...)
		want := model(t, tables.Default(), f, record(t, looks...))
		for k, got := range ends(f.Rate) {
			if math.Abs(got/want[k]-1) > 0.02 {
				t.Errorf("%s: %.3f um a month, end %d, want %.3f", name, got, k, want[k])
			}
		}
	}
	// A film laid that hardly anybody knows: what was read then says little of how much is gone.
	for _, left := range []float64{85, 110} {
		r := record(t, wear.Look{On: day(t, "2026-04-01"), Zone: "flat", Film: um(left), Readings: 25})
		r.Film = quantity.Range[quantity.Film]{Low: um(50), Typical: um(100), High: um(150)}
		f := wear.FitRecords(tables.Default(), wear.Use{UnderWay: quantity.Hour.N(150), Speed: quantity.Knot.N(6), Water: "salt"}, []wear.Record{r})[0]
		want := model(t, tables.Default(), f, r)
		for k, got := range ends(f.Rate) {
			if math.Abs(got/want[k]-1) > 0.01 {
				t.Errorf("%g um left of 50 to 150: %.3f um a month, end %d, want %.3f", left, got, k, want[k])
			}
		}
	}
	// A zone whose wear hardly anybody knows, and one that wears little, of which everything is known but for a fiftieth.
	for zone, looks := range map[string]wear.Look{
		"[0.75, 1.75, 2.75]": {On: day(t, "2026-04-01"), Zone: "edges", Film: um(40), Readings: 25},
		"0.1":                {On: day(t, "2035-04-01"), Zone: "edges", Film: um(40), Readings: 100000},
	} {
		b, err := tables.Default().With(fstest.MapFS{"own.toml": {Data: []byte("[[zone]]\nkey = \"edges\"\nbasis = \"own table\"\nsource = \"a boat\"\nwear = " + zone + "\n")}})
		if err != nil {
			t.Fatal(err)
		}
		r := record(t, looks)
		f := wear.FitRecords(b, wear.Use{UnderWay: quantity.Hour.N(150), Speed: quantity.Knot.N(6), Water: "salt"}, []wear.Record{r})[0]
		want := model(t, b, f, r)
		for k, got := range ends(f.Rate) {
			if math.Abs(got/want[k]-1) > 0.02 {
				t.Errorf("edges that wear %s times: %.3f um a month, end %d, want %.3f", zone, got, k, want[k])
			}
		}
	}
}
