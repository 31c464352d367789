package wear_test

import (
	"fmt"
	"math"
	"math/rand/v2"
	"slices"
	"testing"
	"testing/fstest"

	"boatyard.example/bottomwork/antifoul/wear"
	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/quantity"
)

func um(f float64) quantity.Film {
	a, err := quantity.Micrometre.Near(f, 3, quantity.Nearest)
	if err != nil {
		panic(err)
	}
	return a
}

// history is what a boat of the model is seen to do: a true rate drawn from the tables' range, a film and a zone factor from theirs, and
// looks with errors.
type history struct {
	rate   float64
	record wear.Record
}

func draw(tb testing.TB, rng *rand.Rand, b *tables.Book, u wear.Use, key string) history {
	tb.Helper()
	c, err := b.Coating(key)
	if err != nil {
		panic(err)
	}
	table := wear.Rate(b, c, u)
	z := rng.NormFloat64()
	sd := math.Log(table.High/table.Typical) / 1.6449
	if z < 0 {
		sd = math.Log(table.Typical/table.Low) / 1.6449
	}
	h := history{rate: table.Typical * math.Exp(z*sd)}
	laid := quantity.Range[float64]{Low: 100, Typical: 150, High: 200}
	launched := day(tb, "2024-04-01")
	h.record = wear.Record{Coating: key, Launched: launched, Film: quantity.Range[quantity.Film]{Low: um(laid.Low), Typical: um(laid.Typical), High: um(laid.High)}}
	normal := func(mean, low, high float64) float64 {
		for {
			if z := rng.NormFloat64(); math.Abs(z) <= 2.5 {
				return mean + z*(high-low)/(2*1.6449)
			}
		}
	}
	for _, zone := range []string{"flat", "edges"}[:1+rng.IntN(2)] {
		row, err := b.Zone(zone)
		if err != nil {
			panic(err)
		}
		k := row.Wear.Typical
		if row.Wear.High > row.Wear.Low {
			k = normal(row.Wear.Typical, row.Wear.Low, row.Wear.High)
		}
		film := normal(laid.Typical, laid.Low, laid.High)
		months := 0
		for range 1 + rng.IntN(3) {
			months += 2 + rng.IntN(8)
			on := launched.AddDays(int(float64(months) * 365.25 / 12))
			left := film - h.rate*k*float64(launched.DaysUntil(on))/(365.25/12)
			l := wear.Look{On: on, Zone: zone}
			if rng.IntN(2) == 0 && left > 0 {
				n := 1 + rng.IntN(20)
				l.Readings = n
				l.Film = um(max(0, left+rng.NormFloat64()*math.Hypot(6, 20/math.Sqrt(float64(n)))))
			} else if l.Signal = quantity.No; rng.NormFloat64() < -left/(0.06*film) {
				l.Signal = quantity.Yes
			}
			h.record.Looks = append(h.record.Looks, l)
			if l.Signal == quantity.Yes {
				break
			}
		}
	}
	return h
}

// Over 1,000 seeded histories the range holds the true rate nine times in ten, within three points, and is narrower than the tables' in the mean.
func TestRangeHoldsTheTruth(t *testing.T) {
	if underRace {
		t.Skip("one goroutine; .ci/run asks it without the race detector")
	}
	b := tables.Default()
	u := wear.Use{UnderWay: quantity.Hour.N(150), Speed: quantity.Knot.N(6), Water: "salt"}
	const n = 1000
	rng := rand.New(rand.NewPCG(11, 12))
	held, below, narrower := 0, 0, 0.0
	for range n {
		h := draw(t, rng, b, u, "ablative-cuprous-multi")
		fits := wear.FitRecords(b, u, []wear.Record{h.record})
		if len(fits) != 1 {
			t.Fatal("no fit")
		}
		f := fits[0]
		if !(f.Rate.Low < f.Rate.Typical && f.Rate.Typical < f.Rate.High) {
			t.Fatalf("a range without width: %+v of %+v", f.Rate, h.record)
		}
		if h.rate >= f.Rate.Low && h.rate <= f.Rate.High {
			held++
		} else if h.rate < f.Rate.Low {
			below++
		}
		narrower += math.Log(f.Rate.High/f.Rate.Low) / math.Log(f.Table.High/f.Table.Low)
	}
	t.Logf("held %d of %d, too high %d, too low %d; width %.2f of the tables'", held, n, below, n-held-below, narrower/n)
	if share := 100 * float64(held) / n; math.Abs(share-90) > 3 {
		t.Errorf("the range holds the truth in %.1f %% of %d histories, want 90 ± 3", share, n)
	}
	if narrower/n > 0.9 {
		t.Errorf("a record narrows the range to %.2f of the tables' only", narrower/n)
	}
}

// With looks that say nothing the range is that of the tables, however slow a coating wears, and where it does not wear at all at rest.
func TestSlowCoatings(t *testing.T) {
	rest := wear.Use{UnderWay: quantity.Hour.N(0)}
	for _, table := range []quantity.Range[float64]{{Low: 0.1, Typical: 0.2, High: 0.4}, {Low: 0.0025, Typical: 0.005, High: 0.01}} {
		b := ownWear(t, table)
		r := record(t, wear.Look{On: day(t, "2025-04-02"), Zone: "flat", Signal: quantity.No})
		f := wear.FitRecords(b, rest, []wear.Record{r})[0]
		for i, want := range ends(table) {
			if math.Abs(ends(f.Table)[i]-want) > 1e-12 || math.Abs(ends(f.Rate)[i]/want-1) > 0.05 {
				t.Errorf("%v: %v, end %d, want %g", table, f.Rate, i, want)
			}
		}
	}
	// Nought is not on a logarithmic scale: a thousandth stands for it, and the low end lies about there.
	r := record(t, wear.Look{On: day(t, "2025-04-02"), Zone: "flat", Signal: quantity.No})
	if f := wear.FitRecords(ownWear(t, quantity.Range[float64]{Low: 0, Typical: 1, High: 2}), rest, []wear.Record{r})[0]; f.Rate.Low < 0.0005 || f.Rate.Low > 0.002 || f.Rate.Typical > 1 || f.Rate.High > 2 {
		t.Errorf("from nought: %v", f.Rate)
	}
}

// A rate that a row gives without a range is known to within a twentieth all the same (one standard deviation): exp(±1.6449 × 0.05) is 8 or 9 % to either side.
func TestRateWithoutARange(t *testing.T) {
	r := record(t, wear.Look{On: day(t, "2025-04-02"), Zone: "flat", Signal: quantity.No})
	f := wear.FitRecords(ownWear(t, quantity.Exactly(5.0)), wear.Use{UnderWay: quantity.Hour.N(0)}, []wear.Record{r})[0]
	for i, want := range [3]float64{5 * 0.921, 5, 5 * 1.086} {
		if math.Abs(ends(f.Rate)[i]/want-1) > 0.01 {
			t.Errorf("%v, want end %d at %.2f", f.Rate, i, want)
		}
	}
}

// ownWear is the book with a coating, of record, that wears so at rest and in use.
func ownWear(t *testing.T, r quantity.Range[float64]) *tables.Book {
	t.Helper()
	cell := fmt.Sprintf("[\"%g um\", \"%g um\", \"%g um\"]", r.Low, r.Typical, r.High)
	use := fmt.Sprintf("[\"%g um\", \"%g um\", \"%g um\"]", max(r.Low, 0.001), r.Typical, r.High)
	b, err := tables.Default().With(fstest.MapFS{"own.toml": {Data: []byte("[[coating]]\nkey = \"ablative-cuprous-multi\"\nbasis = \"own table\"\nsource = \"data sheet\"\nwear_rest = " + cell + "\nwear_use = " + use + "\n")}})
	if err != nil {
		t.Fatal(err)
	}
	return b
}

// Whatever is seen, the rate stays within twelve times beyond the tables' ends.
func TestRateStaysNearTheTables(t *testing.T) {
	u := wear.Use{UnderWay: quantity.Hour.N(150), Speed: quantity.Knot.N(6), Water: "salt"}
	r := record(t)
	at := func(on string, left float64) []wear.Look {
		return slices.Repeat([]wear.Look{{On: day(t, on), Zone: "flat", Film: um(left), Readings: 1000}}, 3)
	}
	r.Film = quantity.Range[quantity.Film]{Low: um(250), Typical: um(250), High: um(250)}
	r.Looks = at("2025-06-01", 0) // 125 um a month
	fast := wear.FitRecords(tables.Default(), u, []wear.Record{r})[0]
	if most := 12 * fast.Table.High; fast.Rate.High > most*(1+1e-9) || fast.Rate.High < 0.98*most {
		t.Errorf("worn off in two months: %v, no more than %g", fast.Rate, most)
	}
	if !fast.Findings.Has(wear.RuleRecordFar) {
		t.Errorf("worn off in two months: %v", fast.Findings)
	}
	r.Looks = at("2033-04-01", 350) // more than was laid, after eight years
	slow := wear.FitRecords(tables.Default(), u, []wear.Record{r})[0]
	if least := slow.Table.Low / 12; slow.Rate.Low < least*(1-1e-9) || slow.Rate.Low > 1.02*least {
		t.Errorf("nothing gone in eight years: %v, no less than %g", slow.Rate, least)
	}
	if !slow.Findings.Has(wear.RuleRecordFar) {
		t.Errorf("nothing gone in eight years: %v", slow.Findings)
	}
	if as := fit(t, wear.Look{On: day(t, "2025-04-02"), Zone: "flat", Signal: quantity.No}); as.Findings.Has(wear.RuleRecordFar) {
		t.Errorf("as the tables say: %v", as.Findings)
	}
}

// The patchier a film wears, the less a sighting says, whichever way it went.
func TestPatchyFilmsSayLess(t *testing.T) {
	rate := func(patchy, on string, signal quantity.YesNo) quantity.Range[float64] {
		b, err := tables.Default().With(fstest.MapFS{"own.toml": {Data: []byte("[[factor]]\nkey = \"record-patchiness\"\nbasis = \"own table\"\nsource = \"a boat\"\nvalue = " + patchy + "\n")}})
		if err != nil {
			t.Fatal(err)
		}
		return wear.FitRecords(b, wear.Use{UnderWay: quantity.Hour.N(150)}, []wear.Record{record(t, wear.Look{On: day(t, on), Zone: "flat", Signal: signal})})[0].Rate
	}
	if even, patchy := rate("0.02", "2028-04-01", quantity.No), rate("0.8", "2028-04-01", quantity.No); !(patchy.High > 1.3*even.High) {
		t.Errorf("not shown late: %v evenly, %v in patches", even, patchy)
	}
	if even, patchy := rate("0.02", "2025-10-01", quantity.Yes), rate("0.8", "2025-10-01", quantity.Yes); !(patchy.Low < even.Low/1.3) {
		t.Errorf("shown early: %v evenly, %v in patches", even, patchy)
	}
}

// The same of a coating that wears next to nothing: 4.8 um a month is twelve times beyond the 0.4 of its table.
func TestSlowRateStaysNearItsTable(t *testing.T) {
	r := record(t)
	r.Film = quantity.Range[quantity.Film]{Low: um(60), Typical: um(60), High: um(60)}
	r.Looks = slices.Repeat([]wear.Look{{On: day(t, "2025-06-01"), Zone: "flat", Film: um(0), Readings: 1000}}, 3)
	f := wear.FitRecords(ownWear(t, quantity.Range[float64]{Low: 0.1, Typical: 0.2, High: 0.4}), wear.Use{UnderWay: quantity.Hour.N(0)}, []wear.Record{r})[0]
	if most := 12 * 0.4; f.Rate.High > most*(1+1e-9) || f.Rate.High < 0.98*most {
		t.Errorf("worn off in two months: %v, no more than %g", f.Rate, most)
	}
}

// Where hardly anybody knows what was laid, no film is taken as thinner than a micrometre: a signal that shows after ten days, 0.3285 months, says that one went in them, 3.04 um a month at
// least, and hardly more where the table's rate lies below that.
func TestFilmThatIsHardlyThere(t *testing.T) {
	r := record(t, wear.Look{On: day(t, "2025-04-11"), Zone: "flat", Signal: quantity.Yes})
	r.Film = quantity.Range[quantity.Film]{Low: um(1), Typical: um(100), High: um(220)}
	f := wear.FitRecords(ownWear(t, quantity.Range[float64]{Low: 1, Typical: 2, High: 4}), wear.Use{UnderWay: quantity.Hour.N(0)}, []wear.Record{r})[0]
	if least := 1 / (10 / (365.25 / 12)); f.Rate.Low < 0.95*least || f.Rate.Low > 1.1*least {
		t.Errorf("%v, want %.2f at the low end", f.Rate, least)
	}
}

// A gauge that errs by half a micrometre and reads 2 um where 100 were laid says that the film is not gone yet: in a year, 12 months, it wore 98 um, 8.17 a month, and hardly more.
func TestALittleLeftIsNotNothing(t *testing.T) {
	b, err := ownWear(t, quantity.Range[float64]{Low: 4, Typical: 8, High: 16}).With(fstest.MapFS{"gauge.toml": {Data: []byte(
		"[[factor]]\nkey = \"record-film-error\"\nbasis = \"own table\"\nsource = \"a gauge\"\nvalue = 0.5\n[[factor]]\nkey = \"record-place-error\"\nbasis = \"own table\"\nsource = \"a gauge\"\nvalue = 0.5\n")}})
	if err != nil {
		t.Fatal(err)
	}
	r := record(t, wear.Look{On: day(t, "2026-04-01"), Zone: "flat", Film: um(2), Readings: 1000})
	r.Film = quantity.Range[quantity.Film]{Low: um(100), Typical: um(100), High: um(100)}
	f := wear.FitRecords(b, wear.Use{UnderWay: quantity.Hour.N(0)}, []wear.Record{r})[0]
	for i, x := range ends(f.Rate) {
		if math.Abs(x/(98.0/12)-1) > 0.07 { // the zone's factor is not known better than 2 %
			t.Errorf("end %d: %.2f um a month, want %.2f", i, x, 98.0/12)
		}
	}
}

// Two readings of one day, of a hundred thousand each, contradict each other where they lie D apart. Reckoned by hand with sums of no end: each errs by the 6 um of a film (its places come to
// nothing in so many readings), the film laid is not known better than 6 um either, so the best rate explains them as likely as
// exp(−D²/(4·6²)) ÷ √(1 + 2·6²/6²) = exp(−D²/144) · 0.577. That is exp(−18), nine for each look, at D = 50.1.
func TestWhenARecordIsOdd(t *testing.T) {
	u := wear.Use{UnderWay: quantity.Hour.N(150), Speed: quantity.Knot.N(6), Water: "salt"}
	r := record(t)
	r.Film = quantity.Range[quantity.Film]{Low: um(200), Typical: um(200), High: um(200)}
	for d, want := range map[float64]bool{0: false, 40: false, 49.8: false, 50.5: true, 60: true} {
		look := wear.Look{On: day(t, "2026-04-01"), Zone: "flat", Readings: 100000}
		low, high := look, look
		low.Film, high.Film = um(150-d/2), um(150+d/2)
		r.Looks = []wear.Look{low, high}
		if fs := r.Check(tables.Default()); len(fs) > 0 {
			t.Fatal(fs)
		}
		if f := wear.FitRecords(tables.Default(), u, []wear.Record{r})[0]; f.Findings.Has(wear.RuleRecordOdd) != want {
			t.Errorf("%g um apart: %v", d, f.Findings)
		}
	}
}

// A reading and a sighting of one day contradict each other where the reading is high. Reckoned apart from the package, by sums of the film laid (200 um ± 6), of the zone's factor
// (1 ± 0.02), of the reading (± 6) and of the patches (± 6 % of the film): the best rate explains 74 um with exp(−17.9) and 76 um with exp(−18.7); exp(−18) is nine for each look.
func TestWhenASightingIsOdd(t *testing.T) {
	u := wear.Use{UnderWay: quantity.Hour.N(150), Speed: quantity.Knot.N(6), Water: "salt"}
	r := record(t)
	r.Film = quantity.Range[quantity.Film]{Low: um(200), Typical: um(200), High: um(200)}
	on := day(t, "2026-04-01")
	for left, want := range map[float64]bool{0: false, 40: false, 73: false, 76: true, 100: true} {
		r.Looks = []wear.Look{{On: on, Zone: "flat", Film: um(left), Readings: 100000}, {On: on, Zone: "flat", Signal: quantity.Yes}}
		if f := wear.FitRecords(tables.Default(), u, []wear.Record{r})[0]; f.Findings.Has(wear.RuleRecordOdd) != want {
			t.Errorf("%g um: %v", left, f.Findings)
		}
	}
}

func um10(f quantity.Film) float64 { return 10 * f.Float(quantity.Micrometre) }

// What does not wear, and what the book does not hold, has no fit.
func TestNoFit(t *testing.T) {
	for _, key := range []string{"hard-cuprous", "no such coating"} {
		r := record(t, wear.Look{On: day(t, "2025-10-01"), Zone: "flat", Signal: quantity.Yes})
		r.Coating = key
		if fits := wear.FitRecords(tables.Default(), wear.Use{}, []wear.Record{r}); len(fits) != 0 {
			t.Errorf("%s: %+v", key, fits)
		}
	}
}

// What a fit tells: how many looks of all records, the rates to a tenth of a micrometre, and how often faster than the tables, to a tenth. A coating is told once, in the order of the records.
func TestWhatAFitTells(t *testing.T) {
	b := tables.Default()
	u := wear.Use{UnderWay: quantity.Hour.N(150), Speed: quantity.Knot.N(6), Water: "salt"}
	early := record(t, wear.Look{On: day(t, "2025-10-01"), Zone: "flat", Signal: quantity.Yes})
	more := record(t, wear.Look{On: day(t, "2025-07-01"), Zone: "flat", Signal: quantity.No}, wear.Look{On: day(t, "2025-08-01"), Zone: "flat", Signal: quantity.No})
	other := early
	other.Coating = "self-polishing-cuprous"
	fits := wear.FitRecords(b, u, []wear.Record{early, other, more})
	if len(fits) != 2 || fits[0].Coating != early.Coating || fits[1].Coating != other.Coating || fits[0].Looks != 3 || fits[1].Looks != 1 {
		t.Fatalf("%+v", fits)
	}
	u.Fits = fits // what was made of a record before is no table
	if again := wear.FitRecords(b, u, []wear.Record{early, other, more}); len(again) != 2 || again[0].Table != fits[0].Table || again[0].Rate != fits[0].Rate || again[1].Rate != fits[1].Rate {
		t.Errorf("made again of a fit: %+v, want %+v", again, fits)
	}
	for _, f := range fits {
		for _, x := range f.Findings[0].Facts {
			switch x.Name {
			case "looks":
				if x.Value != f.Looks {
					t.Errorf("%s: %v looks are told, not %d", f.Coating, x.Value, f.Looks)
				}
			case "low", "typical", "high", "table", "table_low", "table_high":
				um := map[string]float64{"low": f.Rate.Low, "typical": f.Rate.Typical, "high": f.Rate.High, "table": f.Table.Typical, "table_low": f.Table.Low, "table_high": f.Table.High}[x.Name]
				if film, ok := x.Value.(quantity.Film); !ok || !film.Given() || math.Abs(film.Float(quantity.Micrometre)-um) > 0.05+1e-9 || math.Abs(um10(film)-math.Round(um10(film))) > 1e-9 {
					t.Errorf("%s: %s is told as %v, it is %g um", f.Coating, x.Name, x.Value, um)
				}
			case "times":
				if got, _ := x.Value.(float64); math.Abs(got-f.Rate.Typical/f.Table.Typical) > 0.05+1e-9 || math.Abs(got*10-math.Round(got*10)) > 1e-9 {
					t.Errorf("%s: %v times the tables' is told, it is %g", f.Coating, x.Value, f.Rate.Typical/f.Table.Typical)
				}
			}
		}
	}
}
