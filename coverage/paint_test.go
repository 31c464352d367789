package coverage_test

import (
	"testing"

	"boatyard.example/bottomwork/coverage"
	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

// coating has the volume solids: one for all ends, or low, typical and high.
func coating(tb testing.TB, solids ...string) tables.Coating {
	tb.Helper()
	c := tables.Coating{Row: tables.Row{Key: "test", Name: "test paint"}, Solids: quantity.Exactly(share(tb, solids[0]))}
	if len(solids) == 3 {
		c.Solids = quantity.Range[quantity.Share]{Low: share(tb, solids[0]), Typical: share(tb, solids[1]), High: share(tb, solids[2])}
	}
	return c
}

func rangeText[D quantity.Dim](r quantity.Range[quantity.Amount[D]]) string {
	return r.Low.String() + ", " + r.Typical.String() + ", " + r.High.String()
}

// A planing boat of 9.8 m on the waterline, beam 3.2 m, draught 0.9 m; two coats of 50 um by roller; solids 45, 50, 55 %.
//
//	L(B + T)          9.8 × (3.2 + 0.9)                         = 40.18
//	area              40.18 × 0.75, 0.85, 0.95                  = 30.135, 34.153, 38.171   up: 30.14, 34.16, 38.18 m2
//	waterline         30.14 × 0.06, 34.16 × 0.10, 38.18 × 0.15  = 1.8084, 3.416, 5.727     up: 1.81, 3.42, 5.73 m2
//	edges             30.14 × 0.05, 34.16 × 0.08, 38.18 × 0.11  = 1.507, 2.7328, 4.1998    up: 1.51, 2.74, 4.20 m2
//	flat              the rest                                  = 26.82, 28.00, 28.25 m2
//	low litres        2 × (10 × 30.14 × 50 ÷ (55 × 95) + 0.25)  = 2 × (2.884211 + 0.25)    = 6.268421, up: 6.27 L
//	typical litres    2 × (10 × 34.16 × 50 ÷ (50 × 90) + 0.35)  = 2 × (3.795556 + 0.35)    = 8.291111, up: 8.30 L
//	high litres       2 × (10 × 38.18 × 50 ÷ (45 × 85) + 0.50)  = 2 × (4.990850 + 0.50)    = 10.981699, up: 10.99 L
//	need              8.30 × 1.10                               = 9.13 L
//	cans              least volume 9.25 L (2.5 L and 9 × 0.75 L); up to 10 L allowed: two cans of 5 L, 0.87 L left
func TestPlaningBoatByHand(t *testing.T) {
	b := book(t)
	got, err := coverage.Wetted(b, hull(t, "motor-planing", "9.8 m", "3.2 m", "0.9 m"))
	if err != nil {
		t.Fatal(err)
	}
	if g, w := rangeText(got.Total), "30.14 m2, 34.16 m2, 38.18 m2"; g != w {
		t.Errorf("total %s, want %s", g, w)
	}
	want := map[string]string{
		"flat": "26.82 m2, 28.00 m2, 28.25 m2", "waterline": "1.81 m2, 3.42 m2, 5.73 m2", "edges": "1.51 m2, 2.74 m2, 4.20 m2",
	}
	for _, z := range got.Zones {
		if g := rangeText(z.Area); g != want[z.Zone] {
			t.Errorf("%s %s, want %s", z.Zone, g, want[z.Zone])
		}
	}
	if len(got.Zones) != 3 || got.Zones[0].Zone != "flat" {
		t.Errorf("zones %v", got.Zones)
	}
	m := coverage.Method{By: "roller", Reserve: share(t, "10 %")}
	litres, err := coverage.Paint(b, got.Total, coating(t, "45 %", "50 %", "55 %"), film(t, "50 um"), 2, m)
	if err != nil {
		t.Fatal(err)
	}
	if g, w := rangeText(litres), "6.27 L, 8.30 L, 10.99 L"; g != w {
		t.Errorf("litres %s, want %s", g, w)
	}
	need := coverage.Need(litres, m.Reserve)
	if need.String() != "9.13 L" {
		t.Errorf("need %s, want 9.13 L", need)
	}
	bought, err := coverage.Cans(need, coverage.OnSale(b, coating(t, "50 %"), m), nil)
	if err != nil {
		t.Fatal(err)
	}
	if g := list(bought.Items); g != "2 × 5 L; " || bought.Left.String() != "0.87 L" || bought.Cost.Given() {
		t.Errorf("buys %s left %s cost %s", g, bought.Left, bought.Cost)
	}
}

func TestThinnerChangesNoLitres(t *testing.T) {
	b := book(t)
	a := quantity.Exactly(area(t, "30 m2"))
	plain, err := coverage.Paint(b, a, coating(t, "50 %"), film(t, "50 um"), 2, coverage.Method{By: "roller"})
	if err != nil {
		t.Fatal(err)
	}
	thinned, err := coverage.Paint(b, a, coating(t, "50 %"), film(t, "50 um"), 2, coverage.Method{By: "roller", Thinner: share(t, "10 %"), Reserve: share(t, "20 %")})
	if err != nil {
		t.Fatal(err)
	}
	if rangeText(plain) != rangeText(thinned) {
		t.Errorf("%s, thinned %s", rangeText(plain), rangeText(thinned))
	}
}

// A film in mil and an area in ft2 give the same litres as their metric equals.
func TestPaintTakesBothSystems(t *testing.T) {
	b := book(t)
	m := coverage.Method{By: "brush"}
	us, err := coverage.Paint(b, quantity.Exactly(area(t, "300 ft2")), coating(t, "50 %"), film(t, "2 mil"), 3, m)
	if err != nil {
		t.Fatal(err)
	}
	metric, err := coverage.Paint(b, quantity.Exactly(area(t, "27.870912 m2")), coating(t, "50 %"), film(t, "50.8 um"), 3, m)
	if err != nil {
		t.Fatal(err)
	}
	if rangeText(us) != rangeText(metric) {
		t.Errorf("%s, want %s", rangeText(us), rangeText(metric))
	}
}

func TestPaintRisesWithItsInputs(t *testing.T) {
	b := book(t)
	base := func(a, f string, coats int, by string, solids ...string) quantity.Range[quantity.Volume] {
		t.Helper()
		r, err := coverage.Paint(b, quantity.Exactly(area(t, a)), coating(t, solids...), film(t, f), coats, coverage.Method{By: by})
		if err != nil {
			t.Fatal(err)
		}
		if r.Low.Cmp(r.Typical) > 0 || r.Typical.Cmp(r.High) > 0 {
			t.Errorf("litres do not rise: %s", rangeText(r))
		}
		return r
	}
	start := base("30 m2", "50 um", 2, "roller", "50 %")
	for what, more := range map[string]quantity.Range[quantity.Volume]{
		"area":         base("30.1 m2", "50 um", 2, "roller", "50 %"),
		"film":         base("30 m2", "50.2 um", 2, "roller", "50 %"),
		"coats":        base("30 m2", "50 um", 3, "roller", "50 %"),
		"fewer solids": base("30 m2", "50 um", 2, "roller", "49.8 %"),
		"loss":         base("30 m2", "50 um", 2, "airless-open", "50 %"),
	} {
		if more.Low.Cmp(start.Low) <= 0 || more.Typical.Cmp(start.Typical) <= 0 || more.High.Cmp(start.High) <= 0 {
			t.Errorf("more %s: %s, not more than %s", what, rangeText(more), rangeText(start))
		}
	}
}

func TestPaintFaults(t *testing.T) {
	b := book(t)
	ok := quantity.Exactly(area(t, "30 m2"))
	for what, c := range map[string]struct {
		area    quantity.Range[quantity.Area]
		coating tables.Coating
		film    string
		coats   int
		m       coverage.Method
		kind    error
		key     string
	}{
		"no area":        {quantity.Range[quantity.Area]{}, coating(t, "50 %"), "50 um", 1, coverage.Method{By: "roller"}, finding.ErrMissing, "area"},
		"no low area":    {quantity.Range[quantity.Area]{Typical: ok.Typical, High: ok.High}, coating(t, "50 %"), "50 um", 1, coverage.Method{By: "roller"}, finding.ErrMissing, "area"},
		"no typical":     {quantity.Range[quantity.Area]{Low: ok.Low, High: ok.High}, coating(t, "50 %"), "50 um", 1, coverage.Method{By: "roller"}, finding.ErrMissing, "area"},
		"no high area":   {quantity.Range[quantity.Area]{Low: ok.Low, Typical: ok.Typical}, coating(t, "50 %"), "50 um", 1, coverage.Method{By: "roller"}, finding.ErrMissing, "area"},
		"area of 0":      {quantity.Exactly(area(t, "0 m2")), coating(t, "50 %"), "50 um", 1, coverage.Method{By: "roller"}, finding.ErrImpossible, "area"},
		"falling area":   {quantity.Range[quantity.Area]{Low: area(t, "2 m2"), Typical: area(t, "3 m2"), High: area(t, "29 ft2")}, coating(t, "50 %"), "50 um", 1, coverage.Method{By: "roller"}, finding.ErrImpossible, "area"},
		"film of 0":      {ok, coating(t, "50 %"), "0 um", 1, coverage.Method{By: "roller"}, finding.ErrImpossible, "film"},
		"no coats":       {ok, coating(t, "50 %"), "50 um", 0, coverage.Method{By: "roller"}, finding.ErrImpossible, "coats"},
		"51 coats":       {ok, coating(t, "50 %"), "50 um", 51, coverage.Method{By: "roller"}, finding.ErrImpossible, "coats"},
		"no solids":      {ok, tables.Coating{Row: tables.Row{Key: "test"}}, "50 um", 1, coverage.Method{By: "roller"}, finding.ErrMissing, "coating[test].solids"},
		"solids > 100":   {ok, coating(t, "50 %", "60 %", "101 %"), "50 um", 1, coverage.Method{By: "roller"}, finding.ErrImpossible, "coating[test].solids"},
		"no method":      {ok, coating(t, "50 %"), "50 um", 1, coverage.Method{}, finding.ErrMissing, "by"},
		"other method":   {ok, coating(t, "50 %"), "50 um", 1, coverage.Method{By: "rollers"}, finding.ErrUnknown, "by"},
		"thinner":        {ok, coating(t, "50 %"), "50 um", 1, coverage.Method{By: "roller", Thinner: share(t, "101 %")}, finding.ErrImpossible, "thinner"},
		"reserve":        {ok, coating(t, "50 %"), "50 um", 1, coverage.Method{By: "roller", Reserve: share(t, "-1 %")}, finding.ErrImpossible, "reserve"},
		"size of nought": {ok, coating(t, "50 %"), "50 um", 1, coverage.Method{By: "roller", Sizes: []quantity.Volume{litre(t, "1 L"), litre(t, "0 L")}}, finding.ErrImpossible, "sizes[2]"},
	} {
		t.Run(what, func(t *testing.T) {
			got, err := coverage.Paint(b, c.area, c.coating, film(t, c.film), c.coats, c.m)
			hasFault(t, err, c.kind, c.key)
			if got.Low.Given() || got.Typical.Given() || got.High.Given() {
				t.Errorf("%s beside an error", rangeText(got))
			}
		})
	}
}

func TestNeedRoundsUp(t *testing.T) {
	for _, c := range []struct{ typical, reserve, want string }{
		{"8.30 L", "10 %", "9.13 L"},
		{"8.31 L", "10 %", "9.15 L"}, // 9.141
		{"8.30 L", "0 %", "8.30 L"},
		{"8.30 L", "-5 %", "8.30 L"},
		{"1 US gal", "0 %", "3.79 L"}, // 3.785411784
	} {
		r := quantity.Range[quantity.Volume]{Low: litre(t, "1 L"), Typical: litre(t, c.typical), High: litre(t, "99 L")}
		if got := coverage.Need(r, share(t, c.reserve)); got.String() != c.want {
			t.Errorf("Need(%s, %s) = %s, want %s", c.typical, c.reserve, got, c.want)
		}
	}
	r := quantity.Exactly(litre(t, "8.301 L"))
	if got := coverage.Need(r, quantity.Share{}); got.String() != "8.31 L" {
		t.Errorf("without a reserve %s, want 8.31 L", got)
	}
	if got := coverage.Need(quantity.Range[quantity.Volume]{}, quantity.Share{}); got.Given() {
		t.Errorf("of nothing %s", got)
	}
}
