package wear_test

import (
	"math"
	"slices"
	"strings"
	"testing"

	"boatyard.example/bottomwork/antifoul/wear"
	"boatyard.example/bottomwork/compat"
	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

func forecast(tb testing.TB, u wear.Use, launch quantity.Date) wear.Forecast {
	tb.Helper()
	b := tables.Default()
	c := coating(tb, b, "ablative-cuprous-multi")
	var zones []tables.Zone
	for _, key := range []string{"flat", "waterline", "edges"} {
		z, err := b.Zone(key)
		if err != nil {
			tb.Fatal(err)
		}
		zones = append(zones, z)
	}
	film := quantity.Range[quantity.Film]{Low: um(80), Typical: um(100), High: um(120)}
	return wear.Predict(b, compat.Stack{{Coating: c, For: compat.Working, Coats: 2, Film: film}}, u, zones, launch)
}

// The film left falls to nought when the zone is worn through, never rises, and its ends keep their order; on the day of the launch all of it is there.
func TestLeft(t *testing.T) {
	for _, ashore := range []string{"", "5 months"} {
		u := wear.Use{UnderWay: quantity.Hour.N(150), Speed: quantity.Knot.N(6), AshoreEachYear: parse[quantity.Months](t, ashore)}
		f := forecast(t, u, day(t, "2027-04-24"))
		for _, z := range f.Zones {
			last, _ := f.Left(z.Zone, 0)
			if last != z.Film {
				t.Errorf("%s at launch: %v, want %v", z.Zone, last, z.Film)
			}
			for m := 0.5; m <= 130; m += 0.5 {
				left, ok := f.Left(z.Zone, m)
				if !ok || left.Low > left.Typical || left.Typical > left.High || left.Low > last.Low || left.High > last.High || left.Low < 0 {
					t.Fatalf("%s after %g months: %v after %v", z.Zone, m, left, last)
				}
				if worn := m >= z.Months.Low-1e-9; m < 120 && worn != (left.Low <= 1e-6) {
					t.Errorf("%s after %g months: %v, worn through after %g", z.Zone, m, left, z.Months.Low)
				}
				last = left
			}
		}
		if _, ok := f.Left("leg", 3); ok {
			t.Error("a zone that was not asked for")
		}
		if _, ok := f.On("flat", day(t, "2027-04-23")); ok {
			t.Error("before the launch")
		}
		if left, ok := f.On("flat", quantity.Date{}); ok {
			t.Errorf("on no day: %v", left)
		}
		if left, ok := forecast(t, u, quantity.Date{}).On("flat", day(t, "2028-04-23")); ok {
			t.Errorf("without a launch: %v", left)
		}
		at, ok := f.On("flat", day(t, "2028-04-23")) // 365 days: 11.99 months
		by, _ := f.Left("flat", 365/(365.25/12))
		if !ok || at != by {
			t.Errorf("on a day %v, after as many months %v", at, by)
		}
	}
}

// 4 um a month for 20 months are 80 um: two coats of 50; 100 um are two, a hair more are three.
func TestFilmForAnInterval(t *testing.T) {
	c := own(t, "ablative-cuprous-multi", "wear_rest = \"4 um\"\nwear_use = \"4 um\"\nfilm = \"50 um\"")
	for _, x := range []struct {
		months float64
		film   float64
		coats  int
	}{{20, 80, 2}, {25, 100, 2}, {25.1, 100.4, 3}, {0, 0, 0}} {
		film, coats := wear.Film(tables.Default(), c, wear.Use{UnderWay: quantity.Hour.N(100)}, x.months)
		if math.Abs(film.High-x.film) > 1e-9 || coats != x.coats {
			t.Errorf("%g months: %v, %d coats", x.months, film, coats)
		}
	}
	if film, _ := wear.Film(tables.Default(), own(t, "ablative-cuprous-multi", "wear_rest = [\"2 um\", \"3 um\", \"4 um\"]\nwear_use = [\"2 um\", \"3 um\", \"4 um\"]"), wear.Use{}, 24); film != (quantity.Range[float64]{Low: 48, Typical: 72, High: 96}) {
		t.Errorf("24 months at 2, 3 and 4 um: %v", film)
	}
	thin := c
	thin.Film = quantity.Range[quantity.Film]{}
	if film, coats := wear.Film(tables.Default(), thin, wear.Use{}, 20); film.High != 80 || coats != 0 {
		t.Errorf("a coating whose film nobody gave: %v, %d coats", film, coats)
	}
	hard := coating(t, tables.Default(), "hard-cuprous")
	if film, coats := wear.Film(tables.Default(), hard, wear.Use{}, 12); film.High != 0 || coats != 0 {
		t.Errorf("a hard film: %v %d", film, coats)
	}
}

func record(tb testing.TB, looks ...wear.Look) wear.Record {
	tb.Helper()
	return wear.Record{Coating: "ablative-cuprous-multi", Launched: day(tb, "2025-04-01"), Film: quantity.Range[quantity.Film]{Low: um(80), Typical: um(100), High: um(120)}, Looks: looks}
}

func fit(tb testing.TB, looks ...wear.Look) wear.Fit {
	tb.Helper()
	b := tables.Default()
	r := record(tb, looks...)
	if fs := r.Check(b); len(fs) > 0 {
		tb.Fatal(fs)
	}
	u := wear.Use{UnderWay: quantity.Hour.N(150), Speed: quantity.Knot.N(6), Water: "salt"}
	return wear.FitRecords(b, u, []wear.Record{r})[0]
}

// Readings that agree with each other and with the rate found so far never widen the range, and however many there are it keeps a width; each
// is said. Twelve months afloat at r um leave 100 − 12 r.
func TestConsistentReadingsNarrow(t *testing.T) {
	table := fit(t, wear.Look{On: day(t, "2025-04-08"), Zone: "flat", Signal: quantity.No}) // after a week nobody expects it
	width := func(f wear.Fit) float64 { return math.Log(f.Rate.High / f.Rate.Low) }
	if w := width(table); math.Abs(w-math.Log(table.Table.High/table.Table.Low)) > 0.05*w {
		t.Errorf("a look that says nothing: %v of %v", table.Rate, table.Table)
	}
	rate := table.Table.Typical
	var looks []wear.Look
	last := width(table)
	for i := range 8 {
		on := day(t, "2025-04-01").AddMonths(3 + i)
		months := float64(day(t, "2025-04-01").DaysUntil(on)) / (365.25 / 12)
		looks = append(looks, wear.Look{On: on, Zone: "flat", Film: um(100 - rate*months), Readings: 9})
		f := fit(t, looks...)
		if w := width(f); w > last+1e-9 || w < 0.02 {
			t.Errorf("%d readings: width %.4f after %.4f", i+1, w, last)
		}
		last = width(f)
		if math.Abs(f.Rate.Typical/rate-1) > 0.15 {
			t.Errorf("%d readings of %.2f um a month: %v", i+1, rate, f.Rate)
		}
	}
	if last > 0.6*width(table) {
		t.Errorf("eight readings narrow to %.2f of %.2f", last, width(table))
	}
}

// A signal that shows early means a faster wear, one that does not show late a slower one; the same film gone at twice the rate is said to be
// far off.
func TestSightings(t *testing.T) {
	none := fit(t, wear.Look{On: day(t, "2025-04-08"), Zone: "flat", Signal: quantity.No})
	early := fit(t, wear.Look{On: day(t, "2025-10-01"), Zone: "flat", Signal: quantity.Yes})
	late := fit(t, wear.Look{On: day(t, "2028-04-01"), Zone: "flat", Signal: quantity.No})
	if !(late.Rate.Typical < none.Rate.Typical && none.Rate.Typical < early.Rate.Typical) {
		t.Errorf("late %v, none %v, early %v", late.Rate, none.Rate, early.Rate)
	}
	if late.Rate.High > 120.0/36*1.4 {
		t.Errorf("120 um not gone after 36 months: %v", late.Rate)
	}
	if !early.Findings.Has(wear.RuleRecord) || !early.Findings.Has(wear.RuleRecordFar) || early.Findings.Has(wear.RuleRecordOdd) {
		t.Errorf("early: %v", early.Findings)
	}
	edge := fit(t, wear.Look{On: day(t, "2025-10-01"), Zone: "edges", Signal: quantity.Yes})
	if edge.Rate.Typical >= early.Rate.Typical {
		t.Errorf("at the edge %v, on the flat %v: the edge wears faster", edge.Rate, early.Rate)
	}
	odd := fit(t,
		wear.Look{On: day(t, "2025-06-01"), Zone: "flat", Film: um(20), Readings: 30},
		wear.Look{On: day(t, "2027-06-01"), Zone: "flat", Film: um(110), Readings: 30})
	if !odd.Findings.Has(wear.RuleRecordOdd) || odd.Findings.Worst() != finding.Ask {
		t.Errorf("a film that grows: %v", odd.Findings)
	}
}

// A forecast uses the record, and says so; another coating's forecast does not.
func TestForecastUsesTheRecord(t *testing.T) {
	u := wear.Use{UnderWay: quantity.Hour.N(150), Speed: quantity.Knot.N(6), Water: "salt"}
	before := forecast(t, u, day(t, "2027-04-24"))
	f := fit(t, wear.Look{On: day(t, "2025-10-01"), Zone: "flat", Signal: quantity.Yes})
	u.Fits = []wear.Fit{f}
	after := forecast(t, u, day(t, "2027-04-24"))
	if after.Rate != f.Rate || after.Own == nil || !after.Findings.Has(wear.RuleRecord) || !(after.Life.Low < before.Life.Low) {
		t.Errorf("before %v, after %v, %v", before.Life, after.Life, after.Findings)
	}
	b := tables.Default()
	other := coating(t, b, "self-polishing-cuprous")
	if wear.Rate(b, other, u) != wear.Rate(b, other, wear.Use{UnderWay: u.UnderWay, Speed: u.Speed, Water: u.Water}) {
		t.Error("another coating's rate changes")
	}
	for _, x := range f.Findings {
		if text := b.Say(x, quantity.Metric); strings.Contains(text, "not stated") || strings.ContainsAny(text, "{}") {
			t.Error(text)
		}
	}
}

func TestRecordFaultsAllAtOnce(t *testing.T) {
	b := tables.Default()
	r := record(t,
		wear.Look{On: day(t, "2025-03-01"), Zone: "flaat", Signal: quantity.Yes},
		wear.Look{Zone: "flat"},
		wear.Look{On: day(t, "2025-09-01"), Zone: "flat", Film: um(300), Readings: -1},
		wear.Look{On: day(t, "2025-08-01"), Zone: "edges", Signal: quantity.Yes, Film: um(5)},
		wear.Look{On: day(t, "2025-10-01"), Zone: "edges", Signal: quantity.No},
		wear.Look{On: day(t, "2025-11-01"), Zone: "flat", Film: um(-1)})
	r.Film = quantity.Range[quantity.Film]{Low: um(100), Typical: um(90), High: um(120)}
	r.Coating = "hard-cuprous"
	text := r.Check(b).Error()
	for _, w := range []string{"coating:", "film: impossible", "look[1].on", "look[1].zone", "look[2].on", "look[2].signal", "look[3].film", "look[3].readings", "look[4].on", "look[4].film", "look[5].signal", "look[6].film"} {
		if !strings.Contains(text, w) {
			t.Errorf("%q is not named in\n%s", w, text)
		}
	}
	text = wear.Record{Coating: "ablativ"}.Check(b).Error()
	for _, w := range []string{"coating", "did you mean ablative-", "launched", "film: missing", "look: missing"} {
		if !strings.Contains(text, w) {
			t.Errorf("%q is not named in\n%s", w, text)
		}
	}
}

// Each thing that a record cannot say, on its bound and beyond it; the launch was on 2025-04-01, and 120 um were laid at most.
func TestBoundsOfARecord(t *testing.T) {
	b := tables.Default()
	on := day(t, "2025-10-01")
	no := wear.Look{On: on, Zone: "flat", Signal: quantity.No}
	yes := wear.Look{On: on, Zone: "flat", Signal: quantity.Yes}
	later := func(l wear.Look) wear.Look { l.On = on.AddDays(1); return l }
	film := func(l wear.Look, f float64) wear.Look { l.Film = um(f); return l }
	readings := func(n int) wear.Look { l := film(wear.Look{On: on, Zone: "flat"}, 50); l.Readings = n; return l }
	laid := func(low, typical, high float64) wear.Look {
		l := no
		l.Laid = quantity.Range[quantity.Film]{Low: um(low), Typical: um(typical), High: um(high)}
		return l
	}
	for name, c := range map[string]struct {
		looks []wear.Look
		want  string
	}{
		"a look":                             {[]wear.Look{no}, ""},
		"two on one day":                     {[]wear.Look{no, no}, ""},
		"the second before the first":        {[]wear.Look{later(no), no}, "look[2].on"},
		"as many looks as are taken":         {slices.Repeat([]wear.Look{no}, 200), ""},
		"one look more":                      {slices.Repeat([]wear.Look{no}, 201), "look"},
		"films that are one":                 {[]wear.Look{laid(100, 100, 100)}, ""},
		"no film at the low end":             {[]wear.Look{laid(0, 100, 120)}, "look[1].laid"},
		"a low end above the typical":        {[]wear.Look{laid(101, 100, 120)}, "look[1].laid"},
		"a high end below the typical":       {[]wear.Look{laid(90, 100, 99)}, "look[1].laid"},
		"twice what was laid":                {[]wear.Look{film(wear.Look{On: on, Zone: "flat"}, 240)}, ""},
		"more than twice":                    {[]wear.Look{film(wear.Look{On: on, Zone: "flat"}, 240.1)}, "look[1].film"},
		"nothing left":                       {[]wear.Look{film(wear.Look{On: on, Zone: "flat"}, 0)}, ""},
		"less than nothing left":             {[]wear.Look{film(wear.Look{On: on, Zone: "flat"}, -0.1)}, "look[1].film"},
		"no readings said":                   {[]wear.Look{readings(0)}, ""},
		"fewer than none":                    {[]wear.Look{readings(-1)}, "look[1].readings"},
		"the most readings":                  {[]wear.Look{readings(100000)}, ""},
		"one reading more":                   {[]wear.Look{readings(100001)}, "look[1].readings"},
		"it shows, and still does":           {[]wear.Look{yes, later(yes)}, ""},
		"it shows, and then does not":        {[]wear.Look{yes, later(no)}, "look[2].signal"},
		"it shows, and then there is film":   {[]wear.Look{yes, later(film(wear.Look{Zone: "flat", On: on}, 1))}, "look[2].signal"},
		"it shows, and then there is none":   {[]wear.Look{yes, later(film(wear.Look{Zone: "flat", On: on}, 0))}, ""},
		"no film beside a signal that shows": {[]wear.Look{film(yes, 0)}, "look[1].film"},
	} {
		var got []string
		for _, f := range record(t, c.looks...).Check(b) {
			got = append(got, f.Key)
		}
		if strings.Join(got, " ") != c.want {
			t.Errorf("%s: %v, want %q", name, got, c.want)
		}
	}
	r := record(t, readings(1))
	r.Film = quantity.Range[quantity.Film]{}
	if fs := r.Check(b); len(fs) != 1 || fs[0].Key != "film" { // what was laid is asked for, and nothing is said of what is left
		t.Errorf("no film laid: %v", fs)
	}
}

func BenchmarkFit(b *testing.B) {
	r := record(b, wear.Look{On: day(b, "2025-10-01"), Zone: "flat", Film: um(60), Readings: 5}, wear.Look{On: day(b, "2025-10-01"), Zone: "edges", Signal: quantity.No})
	u := wear.Use{UnderWay: quantity.Hour.N(150)}
	for b.Loop() {
		wear.FitRecords(tables.Default(), u, []wear.Record{r})
	}
}

func BenchmarkTenYearsAllZones(b *testing.B) {
	f := forecast(b, wear.Use{UnderWay: quantity.Hour.N(150)}, day(b, "2027-04-24"))
	for b.Loop() {
		for m := range 121 {
			for _, z := range f.Zones {
				f.Left(z.Zone, float64(m))
			}
		}
	}
}
