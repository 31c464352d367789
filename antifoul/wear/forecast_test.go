package wear_test

import (
	"fmt"
	"math"
	"testing"

	"boatyard.example/bottomwork/antifoul/wear"
	"boatyard.example/bottomwork/compat"
	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/quantity"
)

// scheme is n working coats of the coating over a signal coat, and extra coats at edges and waterline.
func scheme(c tables.Coating, n, extra int) compat.Stack {
	film := func(n int) quantity.Range[quantity.Film] {
		of := func(f quantity.Film) quantity.Film {
			sum := f
			for range n - 1 {
				sum = sum.Add(f)
			}
			return sum
		}
		if n == 0 || !c.Film.Low.Given() {
			return quantity.Range[quantity.Film]{}
		}
		return quantity.Range[quantity.Film]{Low: of(c.Film.Low), Typical: of(c.Film.Typical), High: of(c.Film.High)}
	}
	s := compat.Stack{
		{Coating: c, Film: film(1), Coats: 1, State: tables.Sound, For: compat.Signal},
		{Coating: c, Film: film(n), Coats: n, State: tables.Sound, For: compat.Working},
	}
	if extra > 0 {
		s = append(s, compat.Layer{Coating: c, Film: film(extra), Coats: extra, State: tables.Sound, For: compat.Extra})
	}
	return s
}

func zones(tb testing.TB, keys ...string) []tables.Zone {
	tb.Helper()
	var out []tables.Zone
	for _, k := range keys {
		z, err := tables.Default().Zone(k)
		if err != nil {
			tb.Fatal(err)
		}
		out = append(out, z)
	}
	return out
}

// With the film of the flat, edges and waterline show first; with one more coat there over two or more, still no later.
func TestEdgesShowNoLaterThanTheFlat(t *testing.T) {
	b := tables.Default()
	wears, _ := wearing(t)
	strips := zones(t, "flat", "waterline", "edges")
	earlier := false
	for _, c := range wears {
		for _, s := range []struct{ coats, extra int }{{1, 0}, {2, 0}, {5, 0}, {2, 1}, {3, 1}, {6, 1}} {
			for _, a := range ashores[:5] {
				u := wear.Use{AshoreEachYear: parse[quantity.Months](t, a), UnderWay: quantity.Hour.N(300)}
				f := wear.Predict(b, scheme(c, s.coats, s.extra), u, strips, quantity.Date{})
				if len(f.Zones) != 3 {
					t.Fatalf("%s: %d zones", c.Key, len(f.Zones))
				}
				flat := f.Zones[0]
				for _, z := range f.Zones {
					if !sound(z.Months) || !noLess(flat.Months, z.Months) {
						t.Errorf("%s, %d coats and %d: %s shows after %v, the flat after %v", c.Key, s.coats, s.extra, z.Zone, z.Months, flat.Months)
					}
					earlier = earlier || z.Months.Low < flat.Months.Low
				}
				first, ok := f.First()
				if !ok || first.Months.Low > flat.Months.Low {
					t.Errorf("%s: first is %s after %g months, the flat shows after %g", c.Key, first.Zone, first.Months.Low, flat.Months.Low)
				}
			}
		}
	}
	if !earlier {
		t.Error("no strip ever shows earlier than the flat")
	}
}

// endless is a coating whose row neither wears nor states a life.
func endless() tables.Coating {
	return tables.Coating{Row: tables.Row{Key: "endless", Name: "endless"}, Role: tables.Antifouling, Mechanism: tables.Inert}
}

// exact wears 4, 5, 8 um a month whatever the use, from coats of 40, 50, 60 um.
func exact(tb testing.TB) tables.Coating {
	tb.Helper()
	return own(tb, "ablative-cuprous-multi", "film = [\"40 um\", \"50 um\", \"60 um\"]\nwear_rest = [\"4 um\", \"5 um\", \"8 um\"]\nwear_use = [\"4 um\", \"5 um\", \"8 um\"]")
}

func TestPredictByHand(t *testing.T) {
	f := wear.Predict(tables.Default(), scheme(exact(t), 3, 1), wear.Use{AshoreEachYear: quantity.Month.N(6)}, zones(t, "flat", "edges"), day(t, "2027-04-30"))
	// Flat: 120, 150, 180 um; high wear 8, low 4: 15, 30, 45 months afloat in seasons of 6, so 24 + 3, 48 + 6, 84 + 3. Edges: one
	// coat more, 1.5 to 2 times the wear: 10, 22.86, 40 months afloat, so 12 + 4, 36 + 4.86, 72 + 4.
	for i, c := range []struct {
		got  quantity.Range[float64]
		want [3]float64
	}{
		{f.Rate, [3]float64{4, 5, 8}},
		{f.Life, [3]float64{27, 54, 87}},
		{f.Zones[0].Film, [3]float64{120, 150, 180}},
		{f.Zones[0].Months, [3]float64{27, 54, 87}},
		{f.Zones[1].Film, [3]float64{160, 200, 240}},
		{f.Zones[1].Months, [3]float64{16, 36 + 200/(5*1.75) - 18, 76}},
	} {
		for j, w := range c.want {
			if math.Abs(ends(c.got)[j]-w) > 1e-9 {
				t.Errorf("line %d: %v, want %v", i, c.got, c.want)
				break
			}
		}
	}
	if f.Coating.Key != "ablative-cuprous-multi" || f.Zones[0].Zone != "flat" || f.Zones[1].Zone != "edges" || f.Launch != day(t, "2027-04-30") {
		t.Errorf("%s launched on %s, zones %v", f.Coating.Key, f.Launch, f.Zones)
	}
	if got, want := f.NextHaul, day(t, "2029-07-30"); got != want {
		t.Errorf("next haul-out on %s, want 27 months later, %s", got, want)
	}
	if got, want := f.Zones[1].First, day(t, "2028-08-30"); got != want {
		t.Errorf("the edges show from %s, want 16 months later, %s", got, want)
	}
	first, ok := f.First()
	if !ok || first.Zone != "edges" {
		t.Errorf("the first to show is %q", first.Zone)
	}
}

// Life rounds down to whole months; a whole number of months that float arithmetic misses by a hair is not cut.
func TestNextHaulRoundsDown(t *testing.T) {
	b := tables.Default()
	launch := "2027-08-31"
	for _, c := range []struct{ life, ashore, want string }{
		{"12 months", "", "2028-08-31"},
		{"11.99 months", "", "2028-07-31"},
		{"12.01 months", "", "2028-08-31"},
		{"6 months", "", "2028-02-29"}, // the month has no 31st, and it is a leap year
		{"18 months", "", "2029-02-28"},
		{"1 month", "", "2027-09-30"},
		{"0.99 months", "", "2027-08-31"},
		{"7 months", "5 months", "2028-03-31"},  // one season of 7 months
		{"14 months", "5 months", "2029-03-31"}, // two seasons of 7: the end of the second is month 19
		{"6.99 months", "5 months", "2028-02-29"},
		{"11 months", "1 months", "2028-07-31"},
		{"5 months", "7 months", "2028-01-31"},
		{"1 month", "11 months", "2027-09-30"},
		{"119 months", "", "2037-07-31"},
		{"120 months", "", "2037-08-31"},
		{"500 months", "", "2037-08-31"}, // ten years are the most that is told
	} {
		silicone := own(t, "foul-release-silicone", fmt.Sprintf("life = %q\n", c.life))
		f := wear.Predict(b, scheme(silicone, 2, 0), wear.Use{AshoreEachYear: parse[quantity.Months](t, c.ashore)}, nil, day(t, launch))
		if f.NextHaul != day(t, c.want) {
			t.Errorf("life %s, ashore %q: next haul-out on %s after %v months, want %s", c.life, c.ashore, f.NextHaul, f.Life, c.want)
		}
	}
}

// Every whole number of months comes out whole, for each share of the year afloat.
func TestWholeMonthsStayWhole(t *testing.T) {
	if underRace {
		t.Skip("one goroutine; .ci/run asks it without the race detector")
	}
	b := tables.Default()
	launch := day(t, "2027-01-01")
	for ashore := range int64(12) {
		for months := int64(1); months <= 10; months++ {
			// So many seasons afloat end with the last season, not with the year.
			c := own(t, "foul-release-silicone", fmt.Sprintf("life = \"%d months\"\n", (12-ashore)*months))
			f := wear.Predict(b, scheme(c, 2, 0), wear.Use{AshoreEachYear: quantity.Month.N(ashore)}, nil, launch)
			if want := launch.AddMonths(int(12*(months-1) + 12 - ashore)); f.NextHaul != want {
				t.Errorf("%d years with %d months ashore each: %s, want %s", months, ashore, f.NextHaul, want)
			}
		}
	}
}

// A film that stands ashore each year for longer than its clock ends with the season, whatever its months of active life.
func TestFilmsThatDryOutEndWithTheSeason(t *testing.T) {
	b := tables.Default()
	launch := day(t, "2027-04-01")
	// 4 months are 121.75 d.
	clock := "life = [\"6 months\", \"18 months\", \"24 months\"]\nair_scuff = \"60 d\"\nair_used = \"121.75 d\""
	hard := own(t, "hard-cuprous", clock)
	for _, c := range []struct {
		ashore string
		want   [3]float64
		haul   string
	}{
		{"", [3]float64{6, 18, 24}, "2027-10-01"}, // not given: no clock runs
		{"0 months", [3]float64{6, 18, 24}, "2027-10-01"},
		{"4 months", [3]float64{6, 26, 32}, "2027-10-01"}, // on the clock, and no longer
		{"4.0001 months", [3]float64{6, 7.9999, 7.9999}, "2027-10-01"},
		{"6 months", [3]float64{6, 6, 6}, "2027-10-01"},
		{"9 months", [3]float64{3, 3, 3}, "2027-07-01"}, // cut to the season
	} {
		f := wear.Predict(b, scheme(hard, 2, 0), wear.Use{AshoreEachYear: parse[quantity.Months](t, c.ashore)}, nil, launch)
		for i, w := range c.want {
			if math.Abs(ends(f.Life)[i]-w) > 0.001 {
				t.Errorf("ashore %q: life %v, want %v", c.ashore, f.Life, c.want)
				break
			}
		}
		if f.NextHaul != day(t, c.haul) {
			t.Errorf("ashore %q: next haul-out on %s, want %s", c.ashore, f.NextHaul, c.haul)
		}
	}
}

// The life is told for the flat where the flat is asked for, for a part's own zone where that is the only one, and else as
// for a flat.
func TestLifeIsThatOfTheMainZone(t *testing.T) {
	b := tables.Default()
	c := exact(t)
	life := func(keys ...string) quantity.Range[float64] {
		return wear.Predict(b, scheme(c, 3, 0), wear.Use{}, zones(t, keys...), quantity.Date{}).Life
	}
	flat := quantity.Range[float64]{Low: 15, Typical: 30, High: 45} // 120, 150, 180 um at 8, 5, 4 um a month
	edges := quantity.Range[float64]{Low: 7.5, Typical: 150 / (5 * 1.75), High: 30}
	for _, k := range []struct {
		keys []string
		want quantity.Range[float64]
	}{
		{[]string{"flat"}, flat},
		{[]string{"edges", "flat"}, flat},
		{[]string{"flat", "waterline", "edges"}, flat},
		{[]string{"edges"}, edges},
		{[]string{"waterline", "edges"}, flat},
		{nil, flat},
	} {
		if got := life(k.keys...); math.Abs(got.Low-k.want.Low)+math.Abs(got.Typical-k.want.Typical)+math.Abs(got.High-k.want.High) > 1e-9 {
			t.Errorf("of %q the life is %v, want %v", k.keys, got, k.want)
		}
	}
	// A flat that wears other than 1, beside another zone.
	own := tables.Zone{Row: tables.Row{Key: "flat"}, Wear: quantity.Exactly(1.5)}
	got := wear.Predict(b, scheme(c, 3, 0), wear.Use{}, append(zones(t, "edges"), own), quantity.Date{}).Life
	if want := 120 / (8 * 1.5); math.Abs(got.Low-want) > 1e-9 {
		t.Errorf("with a flat of its own wear the life is %v, want %g at the low end", got, want)
	}
}

// A film of which nobody says how long it stands dry goes on after a winter ashore.
func TestFilmsWithoutAClockGoOn(t *testing.T) {
	c := own(t, "hard-cuprous", "life = \"18 months\"")
	c.AirUsed = quantity.Duration{}
	f := wear.Predict(tables.Default(), scheme(c, 2, 0), wear.Use{AshoreEachYear: quantity.Month.N(9)}, nil, day(t, "2027-04-01"))
	if want := 12*5 + 3.0; math.Abs(f.Life.Low-want) > 1e-9 { // six seasons of three months
		t.Errorf("%v, want %g months", f.Life, want)
	}
}

// A part's own zone stands before what goes with it, and its life is told for it, whatever wears beside it; a strip that stands first is no part. Of 120 um at 8 a month,
// twice as fast, 7.5 months are left.
func TestLifeOfAPartWithMoreZones(t *testing.T) {
	zone := func(key string, part bool, wear float64) tables.Zone {
		return tables.Zone{Row: tables.Row{Key: key}, Part: part, Wear: quantity.Exactly(wear)}
	}
	for _, k := range []struct {
		zones []tables.Zone
		want  float64
	}{
		{[]tables.Zone{zone("keel", true, 2), zone("sole", false, 3)}, 7.5},
		{[]tables.Zone{zone("sole", false, 3), zone("keel", true, 2)}, 15},
		{[]tables.Zone{zone("sole", false, 3), zone("waterline", false, 2)}, 15},
		{[]tables.Zone{zone("sole", false, 2)}, 7.5},
		{nil, 15},
	} {
		if got := wear.Predict(tables.Default(), scheme(exact(t), 3, 0), wear.Use{}, k.zones, quantity.Date{}).Life.Low; math.Abs(got-k.want) > 1e-9 {
			t.Errorf("%v: %g months, want %g", k.zones, got, k.want)
		}
	}
}

// The first to show is the one worn through first, wherever it stands among those asked for; of those that end together the first asked for.
func TestFirstToShow(t *testing.T) {
	zone := func(key string, wear float64) tables.Zone {
		return tables.Zone{Row: tables.Row{Key: key}, Wear: quantity.Exactly(wear)}
	}
	slow, quick, quicker := zone("slow", 1), zone("quick", 2), zone("quicker", 3)
	for _, k := range []struct {
		zones []tables.Zone
		want  string
	}{
		{[]tables.Zone{slow}, "slow"},
		{[]tables.Zone{quick, slow}, "quick"},
		{[]tables.Zone{slow, quick}, "quick"},
		{[]tables.Zone{quick, quicker, slow}, "quicker"},
		{[]tables.Zone{slow, quick, zone("as quick", 2)}, "quick"},
		{[]tables.Zone{slow, zone("as slow", 1)}, "slow"},
	} {
		if got, ok := wear.Predict(tables.Default(), scheme(exact(t), 3, 0), wear.Use{}, k.zones, quantity.Date{}).First(); !ok || got.Zone != k.want {
			t.Errorf("%q shows first, want %q", got.Zone, k.want)
		}
	}
}

// A forecast tells what the air does to the film, whether it wears or not.
func TestForecastTellsOfTheAir(t *testing.T) {
	c := own(t, "hard-cuprous", "air_used = \"30 d\"")
	for unpainted, want := range map[quantity.YesNo]bool{quantity.Yes: true, quantity.No: false} {
		u := wear.Use{AshoreEachYear: quantity.Month.N(5), RelaunchedUnpainted: unpainted}
		if f := wear.Predict(tables.Default(), scheme(c, 2, 0), u, zones(t, "flat"), quantity.Date{}); f.Findings.Has(wear.RuleAirUsed) != want {
			t.Errorf("five months ashore, relaunched unpainted %v: %v", unpainted, f.Findings)
		}
	}
}

// What is not known is not told: without a launch no dates, without a working layer nothing, without a life no end.
func TestPredictWithoutAnswers(t *testing.T) {
	b := tables.Default()
	strips := zones(t, "flat", "edges")
	f := wear.Predict(b, scheme(exact(t), 2, 0), wear.Use{}, strips, quantity.Date{})
	if f.NextHaul.Given() || f.Zones[0].First.Given() || f.Zones[1].First.Given() || f.Life.Low <= 0 {
		t.Errorf("without a launch: %+v", f)
	}
	found := scheme(exact(t), 2, 0)[:1]
	found[0].For = compat.Found
	for _, s := range []compat.Stack{nil, {}, found} {
		f := wear.Predict(b, s, wear.Use{}, strips, day(t, "2027-04-01"))
		if f.Coating.Key != "" || len(f.Zones) != 0 || f.Life != (quantity.Range[float64]{}) || f.NextHaul.Given() || len(f.Findings) != 0 {
			t.Errorf("without a working layer: %+v", f)
		}
		if z, ok := f.First(); ok {
			t.Errorf("without a working layer %q shows first", z.Zone)
		}
	}
	f = wear.Predict(b, scheme(endless(), 1, 0), wear.Use{}, strips, day(t, "2027-04-01"))
	if f.NextHaul.Given() || f.Life != (quantity.Range[float64]{}) || len(f.Zones) != 0 {
		t.Errorf("a coating without a life: next haul-out on %s, life %v; nothing is known to end it", f.NextHaul, f.Life)
	}
}

// No use gives a forecast that is no number, and none speaks of more than ten years.
func TestPredictOverTheWholeGrid(t *testing.T) {
	b := tables.Default()
	c := coating(t, b, "hybrid-cuprous")
	strips := zones(t, "flat", "edges")
	stack := scheme(c, 3, 1)
	launch := day(t, "2027-04-01")
	grid(t, func(u wear.Use) {
		f := wear.Predict(b, stack, u, strips, launch)
		for _, r := range []quantity.Range[float64]{f.Life, f.Zones[0].Months, f.Zones[1].Months} {
			if !sound(r) || r.High > 120 || r.Low <= 0 {
				t.Fatalf("%+v gives %v", u, r)
			}
		}
		if f.NextHaul.Before(launch) || f.NextHaul.After(launch.AddMonths(120)) || !f.NextHaul.Given() {
			t.Fatalf("%+v: next haul-out on %s", u, f.NextHaul)
		}
	})
}

func ExamplePredict() {
	book := tables.Default()
	c, err := book.Coating("self-polishing-cuprous")
	if err != nil {
		fmt.Println(err)
		return
	}
	um := func(n int64) quantity.Film { return quantity.Micrometre.N(n) }
	layers := compat.Stack{{Coating: c, Coats: 3, Film: quantity.Range[quantity.Film]{Low: um(120), Typical: um(150), High: um(180)}, For: compat.Working}}
	flat, err := book.Zone("flat")
	if err != nil {
		fmt.Println(err)
		return
	}
	launch, err := quantity.NewDate(2027, 4, 15)
	if err != nil {
		fmt.Println(err)
		return
	}
	always := wear.Use{UnderWay: quantity.Hour.N(1000), Speed: quantity.Knot.N(6)}
	f := wear.Predict(book, layers, always, []tables.Zone{flat}, launch)
	// 120 um at 6 um a month are 20 months, 180 um at 2 um a month are 90.
	fmt.Printf("%.0f to %.0f months; haul out by %s\n", f.Life.Low, f.Life.High, f.NextHaul)
	// Output:
	// 20 to 90 months; haul out by 2028-12-15
}

func BenchmarkPredict(b *testing.B) {
	book := tables.Default()
	stack := scheme(coating(b, book, "self-polishing-cuprous"), 3, 1)
	strips, launch := zones(b, "flat", "waterline", "edges"), day(b, "2027-04-01")
	u := wear.Use{UnderWay: quantity.Hour.N(200), Speed: quantity.Knot.N(7), AshoreEachYear: quantity.Month.N(6)}
	b.ReportAllocs()
	for b.Loop() {
		wear.Predict(book, stack, u, strips, launch)
	}
}
