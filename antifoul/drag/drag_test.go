package drag_test

import (
	"errors"
	"math"
	"strings"
	"testing"
	"testing/fstest"

	"github.com/shopspring/decimal"

	"boatyard.example/bottomwork/antifoul/drag"
	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

var ten = drag.Hull{Length: quantity.Metre.N(10), Speed: quantity.Knot.N(6), Water: "salt"}

func hull(metres, tenthKnots int64) drag.Hull {
	return drag.Hull{Length: quantity.Metre.N(metres), Speed: quantity.Knot.Of(decimal.New(tenthKnots, -1)), Water: "salt"}
}

// By hand. Re 2.5975e7; CF 0.00252425 smooth, with 300 um 0.0034136 by the sudden and 0.0034974 by the gradual onset: 0.3523 and 0.3855
// more. Fn = 3.0867/√98.1 = 0.3116, 0.5582 of the way from 0.2 to 0.4: shares 0.3767, 0.5267, 0.6767. Products 0.1327, 0.1856, 0.2609;
// power × 86/80: 0.1995, 0.2805.
func TestPenaltyByHand(t *testing.T) {
	c, err := drag.Penalty(tables.Default(), ten, "schultz-heavy-slime")
	if err != nil {
		t.Fatal(err)
	}
	check := func(what string, got quantity.Range[quantity.Share], want ...string) {
		for i, s := range []quantity.Share{got.Low, got.Typical, got.High} {
			if s.String() != want[i] {
				t.Errorf("%s: %s, want %s", what, s, want[i])
			}
		}
	}
	check("resistance", c.Resistance, "13.2 %", "18.6 %", "26.1 %")
	check("power", c.Power, "13.2 %", "19.9 %", "28.1 %")
	if f := c.Friction; math.Abs(f.Low-0.3523) > 5e-5 || f.Typical != f.Low || math.Abs(f.High-0.3855) > 5e-5 {
		t.Errorf("more friction %v, want 0.3523 twice and 0.3855", f)
	}
	if f := c.Findings[len(c.Findings)-1]; f.Rule != drag.RuleClean || f.Verdict != finding.Caution {
		t.Errorf("%s %s, want drag-clean and caution", f.Rule, f.Verdict)
	}
	if got, want := tables.Default().Say(c.Findings[1], quantity.Metric), "Heavy slime (fouling rating 30): 19 % more resistance, range 13 to 27 %; 20 % more power, range 13 to 29 %. Clean it off, as the type and the port allow."; got != want {
		t.Errorf("says\n%s\nwant\n%s", got, want)
	}
	if got, want := tables.Default().Say(c.Findings[0], quantity.Metric), "some 53 % of her resistance is taken to be friction, range 37 to 68 %."; !strings.Contains(got, want) {
		t.Errorf("says\n%s\nwant\n%s", got, want)
	}
}

// Light slime costs a slow boat 6 %: left. Shells are hard and lifted for.
func TestWhatToDo(t *testing.T) {
	b := tables.Default()
	for grade, want := range map[string]finding.ID{
		"schultz-smooth": drag.RuleLeave, "schultz-as-applied": drag.RuleLeave, "schultz-light-slime": drag.RuleLeave,
		"schultz-heavy-slime": drag.RuleClean, "schultz-small-calcareous": drag.RuleLift, "schultz-heavy-calcareous": drag.RuleLift,
	} {
		c, err := drag.Penalty(b, ten, grade)
		if err != nil {
			t.Fatal(err)
		}
		if got := c.Findings[1].Rule; got != want {
			t.Errorf("%s: %s, want %s", grade, got, want)
		}
		for _, f := range c.Findings {
			if len(f.Basis) == 0 || strings.Contains(b.Say(f, quantity.Metric), "(not stated)") {
				t.Errorf("%s: %s without basis or value: %s", grade, f.Rule, b.Say(f, quantity.Metric))
			}
		}
	}
}

// Over lengths and speeds of the domain: rougher never costs less, smooth costs nothing, ranges are ordered, everything is a number.
func TestCostsOverTheDomain(t *testing.T) {
	b := tables.Default()
	n, dearer, planing := 0, 0, 0
	for metres := int64(4); metres <= 60; metres += 4 {
		for knots := int64(30); knots <= 250; knots += 11 {
			for _, water := range []string{"salt", "fresh"} {
				h := hull(metres, knots)
				h.Water = water
				costs, err := drag.Costs(b, h)
				if err != nil {
					t.Fatalf("%d m, %d tenths of a knot: %v", metres, knots, err)
				}
				var last drag.Cost
				for i, c := range costs {
					n++
					for _, r := range []quantity.Range[float64]{c.Friction, c.Share, flat(c.Resistance), flat(c.Power)} {
						if !(r.Low >= 0 && r.Low <= r.Typical && r.Typical <= r.High && r.High < 100000) {
							t.Fatalf("%v: %s has the range %v", h, c.Grade.Key, r)
						}
					}
					if c.Grade.Ks.Sign() == 0 && (c.Friction.High != 0 || c.Resistance.High.Sign() != 0 || c.Power.High.Sign() != 0) {
						t.Fatalf("%v: a smooth bottom costs %v", h, c.Resistance)
					}
					if flat(c.Power).Typical < flat(c.Resistance).Typical {
						t.Fatalf("%v: %s needs less power than resistance", h, c.Grade.Key)
					}
					if i > 0 {
						for _, p := range [][2]quantity.Range[float64]{{last.Friction, c.Friction}, {flat(last.Resistance), flat(c.Resistance)}, {flat(last.Power), flat(c.Power)}} {
							if p[1].Low < p[0].Low || p[1].Typical < p[0].Typical || p[1].High < p[0].High {
								t.Fatalf("%v: %s costs %v, %s %v", h, last.Grade.Key, p[0], c.Grade.Key, p[1])
							}
						}
						if c.Friction.Typical > last.Friction.Typical {
							dearer++
						}
					}
					if c.Findings[0].Rule == drag.RulePlaning {
						planing++
					}
					last = c
				}
			}
		}
	}
	if n < 4000 || dearer < n/2 || planing == 0 || planing == n {
		t.Errorf("%d costs, %d dearer than the one before, %d near planing", n, dearer, planing)
	}
}

func flat(r quantity.Range[quantity.Share]) quantity.Range[float64] {
	f := func(s quantity.Share) float64 { return s.Float(quantity.Percent) }
	return quantity.Range[float64]{Low: f(r.Low), Typical: f(r.Typical), High: f(r.High)}
}

// A finer walk than the rows: roughness rises, friction rises; the gradual onset is never under the sudden one.
func TestRoughIsMonotone(t *testing.T) {
	for x := 6.0; x <= 10; x += 0.25 {
		re := min(math.Pow(10, x), drag.MostReynolds)
		last := [2]float64{}
		for y := -9.0; y <= -2; y += 0.05 {
			relative := min(math.Pow(10, y), drag.MostRelative)
			for i, onset := range []drag.Onset{drag.Sudden, drag.Gradual} {
				cf, err := drag.Rough(re, relative, onset)
				if err != nil || !(cf >= last[i]) || cf > 0.079 {
					t.Fatalf("Re %g, ks/L %g, onset %d: %v after %v, %v", re, relative, onset, cf, last[i], err)
				}
				last[i] = cf
			}
			if last[1] < last[0] {
				t.Fatalf("Re %g, ks/L %g: gradual %v under sudden %v", re, relative, last[1], last[0])
			}
		}
	}
}

// Fn = 0.5 at V = √(0.25 × 9.81 × L). On 10 m: √24.525 = 4.9523 m/s = 9.6266 kn.
func TestPlaningBegins(t *testing.T) {
	for knots, want := range map[int64]finding.ID{96: drag.RuleShare, 97: drag.RulePlaning} {
		c, err := drag.Penalty(tables.Default(), hull(10, knots), "schultz-heavy-slime")
		if err != nil {
			t.Fatal(err)
		}
		if got := c.Findings[0]; got.Rule != want || (got.Verdict == finding.Caution) != (want == drag.RulePlaning) {
			t.Errorf("%d tenths of a knot: %s %s, want %s", knots, got.Rule, got.Verdict, want)
		}
	}
}

// Slow share up to Fn 0.2, fast share from 0.4: on 10 m that is 3.85 and 7.70 kn.
func TestShareAtItsEnds(t *testing.T) {
	for knots, want := range map[int64]float64{38: 0.75, 78: 0.35, 96: 0.35, 97: 0.45} {
		c, err := drag.Penalty(tables.Default(), hull(10, knots), "schultz-heavy-slime")
		if err != nil || math.Abs(c.Share.Typical-want) > 1e-12 {
			t.Errorf("%d tenths of a knot: %v, %v; want %v", knots, c.Share.Typical, err, want)
		}
	}
}

func TestFaults(t *testing.T) {
	b := tables.Default()
	for _, c := range []struct {
		h     drag.Hull
		grade string
		kind  error
		say   string
	}{
		{drag.Hull{}, "schultz-smooth", finding.ErrMissing, "length: missing"},
		{drag.Hull{}, "schultz-smooth", finding.ErrMissing, "speed: missing"},
		{hull(0, 60), "schultz-smooth", finding.ErrImpossible, "length"},
		{hull(-10, 60), "schultz-smooth", finding.ErrImpossible, "length"},
		{hull(401, 60), "schultz-smooth", finding.ErrImpossible, "length"},
		{hull(10, 0), "schultz-smooth", finding.ErrImpossible, "speed"},
		{hull(10, 801), "schultz-smooth", finding.ErrImpossible, "speed"},
		{drag.Hull{Length: ten.Length, Speed: ten.Speed, Water: "sea"}, "schultz-smooth", finding.ErrValue, "water"},
		{ten, "schultz-heavyslime", finding.ErrUnknown, "schultz-heavy-slime"},
		{ten, "", finding.ErrUnknown, "grade"},
		{hull(3, 7), "schultz-smooth", finding.ErrImpossible, "reynolds"},     // 3 × 0.36 / 1.188e-6 = 9.1e5
		{hull(400, 600), "schultz-smooth", finding.ErrImpossible, "reynolds"}, // 400 × 30.9 / 1.188e-6 = 1.04e10
	} {
		_, err := drag.Penalty(b, c.h, c.grade)
		if !errors.Is(err, c.kind) || !strings.Contains(err.Error(), c.say) {
			t.Errorf("%v, %q: %v, want %q", c.h, c.grade, err, c.say)
		}
	}
	if _, err := drag.Penalty(b, hull(-1, 0), "x"); strings.Count(err.Error(), "\n") != 2 {
		t.Errorf("three faults at once, got %v", err)
	}
	if _, err := drag.Costs(&tables.Book{}, ten); !errors.Is(err, finding.ErrMissing) {
		t.Errorf("an empty book: %v", err)
	}
	if _, err := drag.Friction(&tables.Book{}, ten); !errors.Is(err, finding.ErrMissing) {
		t.Errorf("an empty book: %v", err)
	}
	for _, re := range []float64{0, -1, 999_999, 1.0001e10, math.NaN(), math.Inf(1)} {
		if cf, err := drag.ITTC57(re); err == nil || cf != 0 {
			t.Errorf("a line at Re %v: %v, %v", re, cf, err)
		}
		if cf, err := drag.Schoenherr(re); err == nil || cf != 0 {
			t.Errorf("a plate at Re %v: %v, %v", re, cf, err)
		}
	}
	for _, relative := range []float64{-1e-9, 0.0101, math.NaN()} {
		if _, err := drag.Rough(1e8, relative, drag.Sudden); err == nil {
			t.Errorf("a plate of roughness %v", relative)
		}
	}
	if _, err := drag.Rough(1e8, 0, 0); err == nil {
		t.Error("a plate of no onset")
	}
}

// An own share above the whole is refused; an own grade is told with the others, at its place.
func TestOwnRows(t *testing.T) {
	own := func(text string) *tables.Book {
		t.Helper()
		b, err := tables.Default().With(fstest.MapFS{"own.toml": {Data: []byte(text)}})
		if err != nil {
			t.Fatal(err)
		}
		return b
	}
	_, err := drag.Costs(own("[[factor]]\nkey = \"drag-share-slow\"\nvalue = [0.9, 1, 1.1]\nbasis = \"own table\"\nsource = \"her log\"\n"), ten)
	if !errors.Is(err, finding.ErrImpossible) || !strings.Contains(err.Error(), "factor[drag-share-slow].value") {
		t.Errorf("a share above the whole: %v", err)
	}
	b := own(`[[roughness]]
key = "weed"
name = "weed"
rating = "30"
ks = "500 um"
rt50 = "800 um"
resistance_15kn = "25 %"
resistance_30kn = "20 %"
basis = "own table"
source = "her log"
`)
	costs, err := drag.Costs(b, ten)
	if err != nil || len(costs) != 8 || costs[4].Grade.Key != "weed" || costs[4].Findings[1].Rule != drag.RuleClean {
		t.Errorf("an own grade: %v, %v", costs, err)
	}
}

func BenchmarkPenalty(b *testing.B) {
	book := tables.Default()
	b.ReportAllocs()
	for b.Loop() {
		if _, err := drag.Penalty(book, ten, "schultz-heavy-slime"); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkCosts(b *testing.B) {
	book := tables.Default()
	b.ReportAllocs()
	for b.Loop() {
		if _, err := drag.Costs(book, ten); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkRough(b *testing.B) {
	for b.Loop() {
		if _, err := drag.Rough(2.6e7, 3e-5, drag.Gradual); err != nil {
			b.Fatal(err)
		}
	}
}

// Schoenherr's line is met to better than 1e-12: what is left over of 0.242/√CF = log10(Re × CF), by the slope 0.121/√CF + 1/ln 10 in shares of CF.
func TestSchoenherrIsMet(t *testing.T) {
	t.Attr("source", "Schoenherr, Transactions SNAME 40, 1932")
	for x := 6.0; x <= 10; x += 0.01 {
		re := min(math.Pow(10, x), drag.MostReynolds)
		cf, err := drag.Schoenherr(re)
		if err != nil {
			t.Fatal(err)
		}
		left := 0.242/math.Sqrt(cf) - math.Log10(re*cf)
		if share := left / (0.121/math.Sqrt(cf) + 1/math.Ln10); math.Abs(share) > 1e-12 {
			t.Errorf("Re %g: %v is off by %g of itself", re, cf, share)
		}
	}
}
