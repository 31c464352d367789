package coverage_test

import (
	"errors"
	"math/rand/v2"
	"os"
	"path/filepath"
	"slices"
	"testing"
	"testing/fstest"

	"github.com/shopspring/decimal"

	"boatyard.example/bottomwork/coverage"
	"boatyard.example/bottomwork/coverage/hullform"
	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

func wetted(tb testing.TB, b *tables.Book, h coverage.Hull) coverage.Areas {
	tb.Helper()
	got, err := coverage.Wetted(b, h)
	if err != nil {
		tb.Fatal(err)
	}
	addsUp(tb, got)
	return got
}

// addsUp fails unless the zones make the total at each end and every area is above zero and rises.
func addsUp(tb testing.TB, a coverage.Areas) {
	tb.Helper()
	var low, typical, high quantity.Area
	for i, z := range a.Zones {
		if z.Area.Low.Sign() <= 0 || z.Area.Low.Cmp(z.Area.Typical) > 0 || z.Area.Typical.Cmp(z.Area.High) > 0 {
			tb.Errorf("%s: %s", z.Zone, rangeText(z.Area))
		}
		if i == 0 {
			low, typical, high = z.Area.Low, z.Area.Typical, z.Area.High
			continue
		}
		low, typical, high = low.Add(z.Area.Low), typical.Add(z.Area.Typical), high.Add(z.Area.High)
	}
	if !low.Equal(a.Total.Low) || !typical.Equal(a.Total.Typical) || !high.Equal(a.Total.High) {
		tb.Errorf("zones add up to %s, %s, %s; total %s", low, typical, high, rangeText(a.Total))
	}
	if len(a.Findings) == 0 {
		tb.Error("no findings: not judged")
	}
}

func zone(tb testing.TB, a coverage.Areas, key string) string {
	tb.Helper()
	for _, z := range a.Zones {
		if z.Zone == key {
			return rangeText(z.Area)
		}
	}
	return "none"
}

func TestEveryFormOverTheDomain(t *testing.T) {
	b := book(t)
	rng := rand.New(rand.NewPCG(5, 6))
	m := func(low, high int64) quantity.Length {
		return quantity.Metre.Of(decimal.New(low+rng.Int64N(high-low+1), -2))
	}
	for f := range b.HullForms() {
		// The ends of the shares go with the ends of the factor and let the flat rise.
		if f.Factor.Low*(1-f.Waterline.Low-f.Edges.Low) > f.Factor.Typical*(1-f.Waterline.Typical-f.Edges.Typical) ||
			f.Factor.Typical*(1-f.Waterline.Typical-f.Edges.Typical) > f.Factor.High*(1-f.Waterline.High-f.Edges.High) {
			t.Errorf("%s: the flat does not rise", f.Key)
		}
		for range 200 {
			h := coverage.Hull{Kind: f.Key, Length: m(300, 4000)}
			h.Beam = h.Length.Scale(decimal.New(int64(1000/f.LengthBeam.High)+rng.Int64N(int64(900/f.LengthBeam.Low-1000/f.LengthBeam.High))+1, -3))
			h.Draft = h.Beam.Scale(decimal.New(int64(1000*f.DraftBeam.Low)+rng.Int64N(int64(1000*(f.DraftBeam.High-f.DraftBeam.Low)))+1, -3))
			got := wetted(t, b, h)
			longer := h
			longer.Length = h.Length.Scale(decimal.New(11, -1)) // the proportions may then be asked about
			if more := wetted(t, b, longer); more.Total.Typical.Cmp(got.Total.Typical) <= 0 {
				t.Errorf("%s: longer %s, not more than %s", f.Key, more.Total.Typical, got.Total.Typical)
			}
			if !got.Findings.Has("area-from-formula") || got.Findings.Has("area-out-of-proportion") || got.Findings.Worst() != finding.Caution {
				t.Errorf("%s: %v", f.Key, got.Findings)
			}
		}
	}
}

func TestFormulaSaysWhereItIsFrom(t *testing.T) {
	got := wetted(t, book(t), hull(t, "fin-keel-yacht", "10 m", "3.2 m", "1.8 m"))
	if got.Method != "0.5 × L × (B + T), fin keel yacht" {
		t.Errorf("method %q", got.Method)
	}
	f := got.Findings[0]
	if f.Rule != "area-from-formula" || len(f.Basis) != 1 || f.Basis[0].Kind != finding.CommonPractice || f.Against != "fin keel yacht" {
		t.Errorf("finding %+v", f)
	}
	if len(got.Others) != 1 || !got.Others[0].Area.Typical.Equal(area(t, "50 m2")) || got.Others[0].Basis[0].Source != "nicholls" {
		t.Errorf("others %+v", got.Others)
	}
}

func TestMeasuredZonesWin(t *testing.T) {
	b := book(t)
	h := hull(t, "fin-keel-yacht", "10 m", "3.2 m", "1.8 m") // formula 25 m2
	h.Measured = []coverage.ZoneArea{
		{Zone: "rudder", Area: area(t, "1.2 m2")},
		{Zone: "flat", Area: area(t, "19.5 m2")},
		{Zone: "edges", Area: area(t, "10 ft2")},
		{Zone: "keel", Area: area(t, "3.333 m2")},
		{Zone: "waterline", Area: area(t, "2.5 m2")},
	}
	got := wetted(t, b, h)
	// 19.5 + 10 ft2 (0.9290304 m2) + 1.2 + 3.333 + 2.5
	total := area(t, "27.4620304 m2")
	if !got.Total.Low.Equal(total) || !got.Total.Typical.Equal(total) || !got.Total.High.Equal(total) {
		t.Errorf("total %s, want %s", rangeText(got.Total), total)
	}
	if got.Method != "measured" || !got.Findings.Has("area-measured") || got.Findings.Worst() != finding.Fine {
		t.Errorf("method %q, findings %v", got.Method, got.Findings)
	}
	var order []string
	for _, z := range got.Zones {
		order = append(order, z.Zone)
	}
	if want := []string{"flat", "waterline", "edges", "keel", "rudder"}; !slices.Equal(order, want) {
		t.Errorf("zones %v, want %v", order, want)
	}
	if len(got.Others) != 2 || !got.Others[0].Area.Typical.Equal(area(t, "25 m2")) {
		t.Errorf("others %+v", got.Others)
	}
}

func TestMeasuredStripInAFormulaTotal(t *testing.T) {
	h := hull(t, "fin-keel-yacht", "10 m", "3.2 m", "1.8 m")
	h.Measured = []coverage.ZoneArea{{Zone: "waterline", Area: area(t, "2.005 m2")}}
	got := wetted(t, book(t), h)
	if g := zone(t, got, "waterline"); g != "2.005 m2, 2.005 m2, 2.005 m2" {
		t.Errorf("waterline %s", g)
	}
	if g := rangeText(got.Total); g != "22.50 m2, 25.00 m2, 30.00 m2" {
		t.Errorf("total %s", g)
	}
	// edges 0.04, 0.07, 0.12 of the total: 0.90, 1.75, 3.60
	if g := zone(t, got, "flat"); g != "19.595 m2, 21.245 m2, 24.395 m2" {
		t.Errorf("flat %s", g)
	}
	h.Measured = []coverage.ZoneArea{{Zone: "waterline", Area: area(t, "12 m2")}, {Zone: "keel", Area: area(t, "9.6 m2")}}
	_, err := coverage.Wetted(book(t), h) // 12 + 9.6 + 0.9 of 22.5 m2
	hasFault(t, err, finding.ErrImpossible, "measured")
}

func TestMeasuredHullIsShared(t *testing.T) {
	b := book(t)
	h := coverage.Hull{Kind: "motor-planing", Measured: []coverage.ZoneArea{{Zone: "hull", Area: area(t, "33.33 m2")}}}
	got := wetted(t, b, h)
	// The total is exact, so the typical shares stand for all ends: 3.333 up to 3.34, 2.6664 up to 2.67.
	for key, want := range map[string]string{
		"waterline": "3.34 m2, 3.34 m2, 3.34 m2", "edges": "2.67 m2, 2.67 m2, 2.67 m2", "flat": "27.32 m2, 27.32 m2, 27.32 m2",
	} {
		if g := zone(t, got, key); g != want {
			t.Errorf("%s %s, want %s", key, g, want)
		}
	}
	if got.Findings.Has("strips-not-measured") || len(got.Others) != 0 {
		t.Errorf("findings %v, others %v", got.Findings, got.Others)
	}
	h.Kind = ""
	got = wetted(t, b, h)
	if !got.Findings.Has("strips-not-measured") || len(got.Zones) != 1 {
		t.Errorf("without a kind: findings %v, zones %v", got.Findings, got.Zones)
	}
}

func TestStripsNotMeasured(t *testing.T) {
	b := book(t)
	flat := coverage.ZoneArea{Zone: "flat", Area: area(t, "20 m2")}
	edges := coverage.ZoneArea{Zone: "edges", Area: area(t, "2 m2")}
	waterline := coverage.ZoneArea{Zone: "waterline", Area: area(t, "3 m2")}
	for _, c := range []struct {
		measured []coverage.ZoneArea
		want     string
	}{
		{[]coverage.ZoneArea{flat}, "No area was measured for the waterline strip and the edges, so it counts with the flat and no extra coat is reckoned for it."},
		{[]coverage.ZoneArea{flat, edges}, "No area was measured for the waterline strip, so it counts with the flat and no extra coat is reckoned for it."},
		{[]coverage.ZoneArea{flat, edges, waterline}, ""},
	} {
		got := wetted(t, b, coverage.Hull{Measured: c.measured})
		var said string
		for _, f := range got.Findings {
			if f.Rule == "strips-not-measured" {
				said = b.Say(f, quantity.Metric)
			}
		}
		if said != c.want {
			t.Errorf("said %q, want %q", said, c.want)
		}
	}
}

// On, just under and just over 30 % away from the formula's 25 m2, both ways.
func TestMeasuredDiffersFromFormula(t *testing.T) {
	b := book(t)
	for _, c := range []struct {
		flat    string
		differs bool
	}{{"32.5 m2", false}, {"32.51 m2", true}, {"17.5 m2", false}, {"17.49 m2", true}, {"25 m2", false}} {
		h := hull(t, "fin-keel-yacht", "10 m", "3.2 m", "1.8 m")
		h.Measured = []coverage.ZoneArea{{Zone: "hull", Area: area(t, c.flat)}}
		got := wetted(t, b, h)
		if got.Findings.Has("area-differs") != c.differs {
			t.Errorf("%s: %v", c.flat, got.Findings)
		}
		if c.differs && got.Findings.Worst() < finding.Caution {
			t.Errorf("%s: %s", c.flat, got.Findings.Worst())
		}
	}
}

// On, just under and just over 0.5 and 1.0 times L(B + T) = 50 m2.
func TestAreaOutOfProportion(t *testing.T) {
	b := book(t)
	for _, c := range []struct {
		whole string
		ask   bool
	}{{"25 m2", false}, {"24.99 m2", true}, {"50 m2", false}, {"50.01 m2", true}} {
		h := hull(t, "", "10 m", "3.2 m", "1.8 m")
		h.Measured = []coverage.ZoneArea{{Zone: "hull", Area: area(t, c.whole)}}
		got := wetted(t, b, h)
		if got.Findings.Has("area-out-of-proportion") != c.ask || (got.Findings.Worst() == finding.Ask) != c.ask {
			t.Errorf("%s: %v", c.whole, got.Findings)
		}
	}
	odd := with(t, b, "[[hull_form]]\nkey = \"raft\"\nfactor = 1.5\nwaterline_share = 0\nedges_share = 0\nbasis = \"invented\"\n")
	got := wetted(t, odd, hull(t, "raft", "10 m", "3.2 m", "1.8 m"))
	if !got.Findings.Has("area-out-of-proportion") || len(got.Zones) != 1 {
		t.Errorf("formula: findings %v, zones %v", got.Findings, got.Zones)
	}
}

// What she may have is told in the unit of her length: 0.5 and 1.0 times 33 × (10 + 6) = 528 ft2; 528 ft2 are 49.0528 m2, half of it 24.5264.
func TestBelievedAreasInTheReadersUnit(t *testing.T) {
	b := book(t)
	for _, c := range []struct{ l, b, d, low, high string }{
		{"33 ft", "10 ft", "6 ft", "264.00 ft2", "528.00 ft2"},
		{"396 in", "120 in", "72 in", "264.00 ft2", "528.00 ft2"},
		{"10.0584 m", "3.048 m", "1.8288 m", "24.53 m2", "49.06 m2"},
	} {
		h := hull(t, "", c.l, c.b, c.d)
		h.Measured = []coverage.ZoneArea{{Zone: "hull", Area: area(t, "600 ft2")}}
		fs := wetted(t, b, h).Findings
		i := slices.IndexFunc(fs, func(f finding.Finding) bool { return f.Rule == "area-out-of-proportion" })
		if i < 0 {
			t.Errorf("%s × %s × %s: 600 ft2 are believed: %v", c.l, c.b, c.d, fs)
			continue
		}
		low, _ := factOf(fs[i], "low").(quantity.Area)
		high, _ := factOf(fs[i], "high").(quantity.Area)
		if low.String() != c.low || high.String() != c.high {
			t.Errorf("%s × %s × %s: believed from %s to %s, want %s to %s", c.l, c.b, c.d, low, high, c.low, c.high)
		}
	}
}

// A measured bottom is held against length, beam and draught only where all three are given.
func TestAreaIsNotHeldAgainstHalfOfHer(t *testing.T) {
	b := book(t)
	for given := range 8 {
		h := coverage.Hull{Measured: []coverage.ZoneArea{{Zone: "hull", Area: area(t, "500 m2")}}}
		for i, x := range []*quantity.Length{&h.Length, &h.Beam, &h.Draft} {
			if given>>i&1 == 1 {
				*x = quantity.Metre.N(int64(10 - 3*i))
			}
		}
		if got := wetted(t, b, h); got.Findings.Has("area-out-of-proportion") != (given == 7) {
			t.Errorf("length %s, beam %s, draught %s: %v", h.Length, h.Beam, h.Draft, got.Findings)
		}
	}
}

// A tape round her is no matter of doubt, a formula is.
func TestHowFarAMethodIsBelieved(t *testing.T) {
	h := hull(t, "fin-keel-yacht", "10 m", "3.2 m", "1.8 m")
	if f := wetted(t, book(t), h).Findings[0]; f.Rule != "area-from-formula" || f.Verdict != finding.Caution {
		t.Errorf("by a formula: %+v", f)
	}
	h.Girths = girths(t, "0 m", "1 m", "5 m", "4 m", "10 m", "2 m")
	if f := wetted(t, book(t), h).Findings[0]; f.Rule != "area-from-method" || f.Verdict != finding.Fine {
		t.Errorf("by a tape: %+v", f)
	}
}

// A flat that was measured alone is the whole of her: strips that nobody measured take nothing from it, whatever such hulls have.
func TestMeasuredFlatIsNotShared(t *testing.T) {
	h := hull(t, "fin-keel-yacht", "10 m", "3.2 m", "1.8 m")
	h.Measured = []coverage.ZoneArea{{Zone: "flat", Area: area(t, "20 m2")}}
	if got := wetted(t, book(t), h); len(got.Zones) != 1 || zone(t, got, "flat") != "20 m2, 20 m2, 20 m2" {
		t.Errorf("zones %v", got.Zones)
	}
}

// Where only the high shares would let the flat shrink, from 16 m2 to 8, or only the low ones from 17 to 16, the typical shares stand for all ends too: 2 m2 of each
// strip, of 20.
func TestFlatThatShrinksAtTheHighEnd(t *testing.T) {
	for _, shares := range []string{"[0.1, 0.1, 0.5]", "[0.05, 0.1, 0.1]"} {
		b := with(t, book(t), "[[hull_form]]\nkey = \"raft\"\nfactor = 0.7\nwaterline_share = "+shares+"\nedges_share = 0.1\nbasis = \"invented\"\n")
		got := wetted(t, b, coverage.Hull{Kind: "raft", Measured: []coverage.ZoneArea{{Zone: "hull", Area: area(t, "20 m2")}}})
		for key, want := range map[string]string{"flat": "16.00 m2, 16.00 m2, 16.00 m2", "waterline": "2.00 m2, 2.00 m2, 2.00 m2", "edges": "2.00 m2, 2.00 m2, 2.00 m2"} {
			if g := zone(t, got, key); g != want {
				t.Errorf("%s: %s %s, want %s", shares, key, g, want)
			}
		}
	}
}

func TestAreaUnitAndRounding(t *testing.T) {
	b := book(t)
	for _, c := range []struct{ l, b, d, want string }{
		{"10 m", "3.2 m", "1.8 m", "25.00 m2"},
		{"10.001 m", "3.2 m", "1.8 m", "25.01 m2"}, // 25.0025
		{"33 ft", "10 ft", "6 ft", "264.00 ft2"},
		{"396 in", "120 in", "72 in", "264.00 ft2"},
		{"33 ft", "3.048 m", "1.8288 m", "264.00 ft2"},
	} {
		if got := wetted(t, b, hull(t, "fin-keel-yacht", c.l, c.b, c.d)); got.Total.Typical.String() != c.want {
			t.Errorf("%s × %s × %s: %s, want %s", c.l, c.b, c.d, got.Total.Typical, c.want)
		}
	}
}

func TestWettedNeedsItsFactors(t *testing.T) {
	b, err := tables.Load(mapFS("zones.toml", zonesAlone))
	if err != nil {
		t.Fatal(err)
	}
	_, err = coverage.Wetted(b, coverage.Hull{Measured: []coverage.ZoneArea{{Zone: "flat", Area: area(t, "20 m2")}}})
	hasFault(t, err, finding.ErrUnknown, "factor")
	_, err = coverage.Pads(b, coverage.Hull{Support: &coverage.Support{Chains: 1}})
	hasFault(t, err, finding.ErrUnknown, "factor")
}

// Tables without a row by which the area of such a hull may be found are at fault, not the hull; what was measured needs none.
func TestWettedNeedsAMethod(t *testing.T) {
	files := fstest.MapFS{}
	for _, name := range own {
		data, err := os.ReadFile(filepath.Join("..", "tables", "data", name))
		if err != nil {
			t.Fatal(err)
		}
		if name != "areamethods.toml" {
			files[name] = &fstest.MapFile{Data: data}
		}
	}
	yacht := hull(t, "fin-keel-yacht", "10 m", "3.2 m", "1.8 m")
	for what, methods := range map[string]string{
		"no row":               "",
		"a row that is not it": "[[area_method]]\nkey = \"girths\"\norder = 1\nfactor = 1\nbasis = \"invented\"\n",
		"a row that is shown":  "[[area_method]]\nkey = \"short-rule\"\norder = 0\nfactor = 1\nbasis = \"invented\"\n",
	} {
		files["methods.toml"] = &fstest.MapFile{Data: []byte(methods)}
		b, err := tables.Load(files)
		if err != nil {
			t.Fatal(err)
		}
		_, err = coverage.Wetted(b, yacht)
		hasFault(t, err, finding.ErrMissing, "area_method")
		measured := yacht
		measured.Measured = []coverage.ZoneArea{{Zone: "hull", Area: area(t, "25 m2")}}
		if got := wetted(t, b, measured); !got.Total.Typical.Equal(area(t, "25 m2")) {
			t.Errorf("%s: measured %s", what, got.Total.Typical)
		}
	}
}

// A fault names what takes the flat away, or is too large: not always what was measured.
func TestFaultsNameWhatTakesTheFlat(t *testing.T) {
	yacht := func() coverage.Hull { return hull(t, "fin-keel-yacht", "10 m", "3.2 m", "1.8 m") }
	keel, top, huge, sheet, faired, flat, strip := yacht(), yacht(), yacht(), yacht(), yacht(), yacht(), yacht()
	keel.Measured = []coverage.ZoneArea{{Zone: "waterline", Area: area(t, "1 m2")}}
	keel.Pieces = []hullform.Piece{{What: "keel", Count: 100, Length: quantity.Metre.N(2), Height: quantity.Metre.N(1)}}
	top.BootTop = quantity.Metre.N(10)
	huge.Length, huge.Beam = quantity.Metre.N(9000), quantity.Metre.N(900)
	at := func(n int64) hullform.Station {
		return hullform.Station{At: quantity.Metre.N(n), Girth: quantity.Metre.N(n)}
	}
	sheet.Girths = []hullform.Station{at(0), at(900), at(1800)}
	flat.Measured = []coverage.ZoneArea{{Zone: "flat", Area: area(t, "100000.01 m2")}}
	section := func(x int64) hullform.Section {
		return hullform.Section{At: quantity.Metre.N(x), Points: []hullform.Point{{Half: quantity.Metre.N(0), Height: quantity.Metre.N(0)}, {Half: quantity.Metre.N(900), Height: quantity.Metre.N(1)}}}
	}
	faired.Girths, faired.Offsets = sheet.Girths, []hullform.Section{section(0), section(900), section(1800)}
	// Half of her at the waterline and half at the edges leave no flat: of her own making, and where she has no paint line above the water.
	strip.Kind = "raft"
	strips := strip
	strips.Measured = []coverage.ZoneArea{{Zone: "edges", Area: area(t, "17.5 m2")}} // half of 0.7 × 10 × (3.2 + 1.8)
	b := with(t, book(t), "[[hull_form]]\nkey = \"raft\"\nfactor = 0.7\nwaterline_share = 0.5\nedges_share = 0.5\nbasis = \"invented\"\n")
	for _, c := range []struct {
		key string
		h   coverage.Hull
	}{{"piece", keel}, {"boot_top", top}, {"length", huge}, {"girths", sheet}, {"offsets", faired}, {"measured", flat}, {"length", strip}, {"measured", strips}} {
		_, err := coverage.Wetted(b, c.h)
		if fs, _ := errors.AsType[finding.Faults](err); len(fs) != 1 || fs[0].Key != c.key || !errors.Is(err, finding.ErrImpossible) {
			t.Errorf("%s: %v", c.key, err)
		}
	}
}

const zonesAlone = "[[zone]]\nkey = \"flat\"\nin_hull_formula = true\nwear = 1\nbasis = \"invented\"\n"

func BenchmarkWetted(b *testing.B) {
	bk := book(b)
	h := hull(b, "fin-keel-yacht", "10 m", "3.2 m", "1.8 m")
	for b.Loop() {
		if _, err := coverage.Wetted(bk, h); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkPaint(b *testing.B) {
	bk, c, f := book(b), coating(b, "45 %", "50 %", "55 %"), film(b, "50 um")
	a := quantity.Exactly(area(b, "34.16 m2"))
	for b.Loop() {
		if _, err := coverage.Paint(bk, a, c, f, 2, coverage.Method{By: "roller"}); err != nil {
			b.Fatal(err)
		}
	}
}
