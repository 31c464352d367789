package cost_test

import (
	"math"
	"math/rand/v2"
	"testing"
	"testing/fstest"

	"github.com/shopspring/decimal"

	"boatyard.example/bottomwork/antifoul/cost"
	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

const prices = `
[[price]]
key = "wage"
of = "labour"
per = "h"
price = ["40.00 EUR", "45.50 EUR", "52.00 EUR"]
basis = "invented"
[[price]]
key = "wage-owner"
of = "labour"
by = "owner"
per = "h"
price = "0 EUR"
basis = "invented"
[[price]]
key = "paint"
of = "paint"
per = "L"
price = "33.335 EUR"
basis = "invented"
[[price]]
key = "one-paint"
of = "paint"
what = "hard-cuprous"
per = "L"
price = "41 EUR"
basis = "invented"
[[price]]
key = "lift"
of = "lift"
per = "m"
price = "34.10 EUR"
basis = "invented"
[[price]]
key = "wash"
of = "wash"
per = "m2"
price = "2.50 EUR"
basis = "invented"
[[price]]
key = "day"
of = "lay-day"
per = "m and day"
price = "0.85 EUR"
basis = "invented"
`

func book(t *testing.T) *tables.Book {
	t.Helper()
	b, err := tables.Default().With(fstest.MapFS{"prices.toml": {Data: []byte(prices)}})
	if err != nil {
		t.Fatal(err)
	}
	return b
}

func boat() cost.Boat {
	return cost.Boat{
		Length: quantity.Metre.Of(decimal.RequireFromString("8.45")),
		Area:   quantity.Range[quantity.Area]{Low: quantity.SquareMetre.N(18), Typical: quantity.SquareMetre.N(20), High: quantity.SquareMetre.N(23)},
	}
}

// Worked by hand:
//
//	labour  6, 7.25, 9 h × 40.00, 45.50, 52.00         = 240.00, 329.875 → 329.88, 468.00
//	paint   3.2 L × 33.335                             = 106.672 → 106.67
//	hard    2.5 L × 41                                 = 102.50
//	lift    1 × 8.45 m × 34.10                         = 288.145 → 288.15 (half away from zero)
//	wash    18, 20, 23 m2 × 2.50                       = 45.00, 50.00, 57.50
//	days    28 × 8.45 m = 236.6 × 0.85                 = 201.11
//	cans    known                                      = 312.00
//	sum     1295.43, 1390.31, 1535.93
//	10 % (5 to 20)  64.7715 → 64.77, 139.03, 307.19 (1535.93 × 0.2 = 307.186)
func TestBillByHand(t *testing.T) {
	known, err := quantity.ParseMoney("312 EUR")
	if err != nil {
		t.Fatal(err)
	}
	items := []cost.Item{
		{Of: tables.PricedLabour, Name: "abrade", Unit: "h", Amount: cost.Amounts(6, 7.25, 9)},
		{Of: tables.PricedPaint, What: "ablative-copper-free", Name: "paint", Unit: "L", Amount: cost.Amounts(3.2, 3.2, 3.2)},
		{Of: tables.PricedPaint, What: "hard-cuprous", Name: "hard", Unit: "L", Amount: cost.Amounts(2.5, 2.5, 2.5)},
		{Of: tables.PricedLift, Name: "lift", Unit: cost.Job, Amount: cost.Times(1)},
		{Of: tables.PricedWash, Name: "wash", Unit: cost.Job, Amount: cost.Times(1)},
		{Of: tables.PricedDay, Name: "days", Unit: "days", Amount: cost.Times(28)},
		{Of: tables.PricedPaint, Name: "cans", Unit: "L", Amount: cost.Times(8), Known: known},
		{Of: tables.PricedShift, Name: "shift", Unit: cost.Job, Amount: cost.Times(1)},       // no price
		{Of: tables.PricedWaste, Name: "nothing", Unit: "kg", Amount: cost.Amounts(0, 0, 0)}, // nought is left out
	}
	got := cost.Reckon(book(t), tables.ByYard, items, boat())
	want := [][3]string{{"240", "329.88", "468"}, {"106.67", "106.67", "106.67"}, {"102.5", "102.5", "102.5"}, {"288.15", "288.15", "288.15"}, {"45", "50", "57.5"}, {"201.11", "201.11", "201.11"}, {"312", "312", "312"}}
	if len(got.Lines) != len(want)+1 {
		t.Fatalf("%d lines", len(got.Lines))
	}
	for i, w := range want {
		same(t, got.Lines[i].Name, got.Lines[i].Money, w)
	}
	if shift := got.Lines[len(want)]; shift.Priced() || shift.Why.Rule != cost.RuleNoPrice {
		t.Errorf("shift: %v", shift.Why.Rule)
	}
	same(t, "net", got.Net, [3]string{"1295.43", "1390.31", "1535.93"})
	if got.Share != (quantity.Range[float64]{Low: 5, Typical: 10, High: 20}) {
		t.Errorf("set aside %v", got.Share)
	}
	same(t, "contingency", got.Contingency, [3]string{"64.77", "139.03", "307.19"})
	same(t, "total", got.Total, [3]string{"1360.2", "1529.34", "1843.12"})

	own := cost.Reckon(book(t), tables.ByOwner, items[:1], boat())
	same(t, "the owner's row names him", own.Lines[0].Money, [3]string{"0", "0", "0"})
}

// A line names the price that it was made with, and what that is per.
func TestLinesNameTheirPrice(t *testing.T) {
	for _, c := range []struct {
		item             cost.Item
		per, each, count string
	}{
		{cost.Item{Of: tables.PricedLabour, Unit: "h", Amount: cost.Amounts(2, 2, 2)}, "h", "45.50 EUR", "2"},
		{cost.Item{Of: tables.PricedLift, Unit: cost.Job, Amount: cost.Times(1)}, "m", "34.10 EUR", "8.45"},
		{cost.Item{Of: tables.PricedWash, Unit: cost.Job, Amount: cost.Times(1)}, "m2", "2.50 EUR", "20"},
		{cost.Item{Of: tables.PricedDay, Unit: "days", Amount: cost.Times(28)}, "m and day", "0.85 EUR", "236.6"},
	} {
		l := cost.Reckon(book(t), tables.ByYard, []cost.Item{c.item}, boat()).Lines[0]
		if l.Per != c.per || l.Each.Typical.String() != c.each || !l.Count.Typical.Equal(decimal.RequireFromString(c.count)) || l.Basis.Kind != finding.Invented {
			t.Errorf("%s: %s of %s, each %s, %v", c.item.Of, l.Count.Typical, l.Per, l.Each.Typical, l.Basis.Kind)
		}
	}
}

// Ends that are no number count as nought; the largest that does not is just under 1e9.
func TestEndsOfAmounts(t *testing.T) {
	for f, want := range map[float64]string{
		0: "0", -1: "0", 0.004: "0", 0.006: "0.01", 0.5: "0.5", 1: "1", 1.25: "1.25", 999999999: "999999999", 1e9: "0", 1e9 + 0.5: "0", 2e9: "0", math.Inf(1): "0",
	} {
		if got := cost.Amounts(f, f, f); !got.Low.Equal(decimal.RequireFromString(want)) || !got.High.Equal(got.Low) || !got.Typical.Equal(got.Low) {
			t.Errorf("%v is %s, want %s", f, got.Low, want)
		}
	}
	if got := cost.Amounts(math.NaN(), 1, 2); got.Low.Sign() != 0 || got.High.String() != "2" {
		t.Errorf("no number is %s", got.Low)
	}
}

// What is set aside, by hand of 91.00 EUR: 0.5 is 45.50, 0.8765 is 79.76, all of it 91.00. A book without the share sets nothing aside and has no total.
func TestWhatIsSetAside(t *testing.T) {
	hours := []cost.Item{{Of: tables.PricedLabour, Unit: "h", Amount: cost.Amounts(2, 2, 2)}}
	wage := "[[price]]\nkey = \"wage\"\nof = \"labour\"\nper = \"h\"\nprice = \"45.50 EUR\"\nbasis = \"invented\"\n"
	own, err := tables.Default().With(fstest.MapFS{"own.toml": {Data: []byte(wage + "[[factor]]\nkey = \"contingency\"\nvalue = [0.5, 0.8765, 1]\nbasis = \"own table\"\nsource = \"the owner\"\n")}})
	if err != nil {
		t.Fatal(err)
	}
	same(t, "set aside", cost.Reckon(own, tables.ByYard, hours, boat()).Contingency, [3]string{"45.5", "79.76", "91"})
	bare, err := tables.Load(fstest.MapFS{"own.toml": {Data: []byte(wage)}})
	if err != nil {
		t.Fatal(err)
	}
	got := cost.Reckon(bare, tables.ByYard, hours, boat())
	if !got.Net.Typical.Given() || got.Contingency.Typical.Given() || got.Total.Typical.Given() || got.Share != (quantity.Range[float64]{}) {
		t.Errorf("without a share: %v", got)
	}
}

func same(t *testing.T, name string, got quantity.Range[quantity.Money], want [3]string) {
	t.Helper()
	for i, m := range []quantity.Money{got.Low, got.Typical, got.High} {
		w, err := quantity.ParseMoney(want[i] + " EUR")
		if err != nil {
			t.Fatal(err)
		}
		if !m.Equal(w) {
			t.Errorf("%s, end %d: %v, want %v", name, i, m, w)
		}
	}
}

func TestMeasureThatNobodyGave(t *testing.T) {
	items := []cost.Item{{Of: tables.PricedLift, Name: "lift", Unit: cost.Job, Amount: cost.Times(1)}, {Of: tables.PricedWash, Name: "wash", Unit: cost.Job, Amount: cost.Times(1)}}
	got := cost.Reckon(book(t), tables.ByYard, items, cost.Boat{})
	for _, l := range got.Lines {
		if l.Priced() || l.Why.Rule != cost.RuleNoLength {
			t.Errorf("%s: %v, %v", l.Name, l.Money, l.Why.Rule)
		}
	}
	if got.Net.Typical.Given() || got.Total.Typical.Given() {
		t.Error("a sum of nothing is not nought")
	}
}

// Over random bills: low ≤ typical ≤ high everywhere, and the sums are those of the lines to the cent.
func TestSumsAgree(t *testing.T) {
	b := book(t)
	r := rand.New(rand.NewPCG(1, 2))
	of := tables.AllPriced()
	for range 2000 {
		var items []cost.Item
		for range r.IntN(12) {
			low := r.Float64() * 50
			items = append(items, cost.Item{Of: of[r.IntN(len(of))], Name: "x", Unit: "h", Amount: cost.Amounts(low, low*1.3, low*2)})
		}
		got := cost.Reckon(b, tables.ByYard, items, boat())
		var net quantity.Range[quantity.Money]
		for _, l := range got.Lines {
			if l.Priced() {
				net = cost.Plus(net, l.Money)
				rising(t, l.Money)
			}
		}
		if !net.Typical.Given() {
			continue
		}
		rising(t, got.Total)
		total := cost.Plus(net, got.Contingency)
		if !net.Low.Equal(got.Net.Low) || !net.Typical.Equal(got.Net.Typical) || !net.High.Equal(got.Net.High) || !total.Typical.Equal(got.Total.Typical) {
			t.Fatalf("sums: %v and %v", net, got.Net)
		}
		if got.Total.Typical.Amount().Exponent() < -2 {
			t.Fatalf("%v is no whole cent", got.Total.Typical)
		}
	}
}

func rising(t *testing.T, m quantity.Range[quantity.Money]) {
	t.Helper()
	if a, err := m.Low.Cmp(m.Typical); err != nil || a > 0 {
		t.Fatalf("low %v, typical %v", m.Low, m.Typical)
	}
	if a, err := m.Typical.Cmp(m.High); err != nil || a > 0 {
		t.Fatalf("typical %v, high %v", m.Typical, m.High)
	}
}
