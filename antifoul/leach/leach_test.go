package leach_test

import (
	"errors"
	"math"
	"strings"
	"testing"

	"boatyard.example/bottomwork/antifoul/leach"
	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

// Every coating of the tables, over films and lives: what is held rises with the film, the raw mean falls with the life and is never
// below the corrected one, ranges rise, and no answer is empty.
func TestEveryCoating(t *testing.T) {
	b := tables.Default()
	sums := 0
	for c := range b.Coatings() {
		before := map[string]leach.Held{}
		for _, film := range []int64{1, 40, 120, 1000, 10000} {
			x := content(t, b, c, um(film))
			if len(x.Findings) == 0 || !x.Findings.Worst().Valid() {
				t.Fatalf("%s: no finding", c.Key)
			}
			if len(x.Held) == 0 {
				want := finding.Ask
				if c.Biocide == tables.NoBiocide {
					want = finding.Fine
				}
				if x.Findings.Worst() != want || len(mean(t, b, c, um(film), 12).Releases) > 0 {
					t.Errorf("%s, which holds nothing: %v", c.Key, x.Findings)
				}
				continue
			}
			sums++
			if x.Findings.Worst() < finding.Caution || c.Biocide == tables.NoBiocide {
				t.Errorf("%s: %v", c.Key, x.Findings)
			}
			for _, h := range x.Held {
				if old, ok := before[h.Of]; ok && (old.UgCm2.Low >= h.UgCm2.Low || old.UgCm2.High >= h.UgCm2.High || old.UgCm2.Typical >= h.UgCm2.Typical) || !sound(h.UgCm2) {
					t.Errorf("%s in %d um of %s: %v after %v", h.Name, film, c.Key, h.UgCm2, old.UgCm2)
				}
				before[h.Of] = h
			}
			lives(t, b, c, um(film))
		}
	}
	if sums < 80 {
		t.Errorf("only %d sums were made", sums)
	}
}

func lives(t *testing.T, b *tables.Book, c tables.Coating, film quantity.Range[quantity.Film]) {
	t.Helper()
	var before leach.Rate
	for _, months := range []float64{1e-6, 0.5, 1, 12, 24, 120, 1200} {
		r := mean(t, b, c, film, months)
		if len(r.Releases) != len(r.In.Held) {
			t.Fatalf("%s: %d means of %d substances", c.Key, len(r.Releases), len(r.In.Held))
		}
		for i, x := range r.Releases {
			for k, raw := range ends(x.Raw) {
				if raw < ends(x.Corrected)[k] {
					t.Errorf("%s: raw %v below corrected %v", c.Key, x.Raw, x.Corrected)
				}
				if before.Releases != nil && raw >= ends(before.Releases[i].Raw)[k] {
					t.Errorf("%s over %g months: %v, no less than %v", c.Key, months, x.Raw, before.Releases[i].Raw)
				}
			}
			if !sound(x.Raw) || !sound(x.Corrected) {
				t.Errorf("%s over %g months: %v, %v", c.Key, months, x.Raw, x.Corrected)
			}
			if all := x.Raw.High * months * 365.25 / 12; all > x.UgCm2.High*(1+1e-12) {
				t.Errorf("%s: %g leaves, %g is there", c.Key, all, x.UgCm2.High)
			}
		}
		before = r
	}
}

// Each type of the tables that holds actives has a density, which is an assumption.
func TestEveryBiocidalTypeHasADensity(t *testing.T) {
	n := 0
	for c := range tables.Default().Ranked() {
		if c.Biocide == tables.NoBiocide {
			continue
		}
		n++
		if !c.Density.Low.Given() || c.Basis("density").Kind != finding.Assumption {
			t.Errorf("%s: density %v, %s", c.Key, c.Density.Typical, c.Basis("density").Kind)
		}
	}
	if n < 15 {
		t.Errorf("%d types with biocide", n)
	}
}

// The ends are corners: the low one of low content, density and film and high solids. By hand, of the tables' hard cuprous type with two
// coats: low 100 × 0.8882 × 30 × 1.6 × 80 / 60 = 5 684, high 100 × 0.8882 × 55 × 2.0 × 120 / 45 = 26 054.
func TestCorners(t *testing.T) {
	b := own(t, "[[coating]]\nkey = \"hard-cuprous\"\nbasis = \"own table\"\nsource = \"typed\"\nsolids = [\"45 %\", \"50 %\", \"60 %\"]\ndensity = [\"1.6 kg/L\", \"1.8 kg/L\", \"2.0 kg/L\"]\n"+
		"[[coating.active]]\nkey = \"cuprous-oxide\"\ncontent = [\"30 %\", \"42 %\", \"55 %\"]\n")
	n := quantity.Micrometre.N
	h, _ := content(t, b, coating(t, b, "hard-cuprous"), quantity.Range[quantity.Film]{Low: n(80), Typical: n(100), High: n(120)}).Of(leach.Copper)
	near(t, "low", h.UgCm2.Low, 5684.5, 0.5)
	near(t, "typical", h.UgCm2.Typical, 13429.6, 0.5) // 100 × 0.8882 × 42 × 1.8 × 100 / 50
	near(t, "high", h.UgCm2.High, 26053.9, 0.5)
}

// What is not known is asked for by name, and is never nought.
func TestWhatIsMissing(t *testing.T) {
	row := "[[coating]]\nkey = \"tin\"\nname = \"the tin\"\nbasis = \"own table\"\nsource = \"label\"\nrole = \"old film\"\nmechanism = \"hard\"\nbiocide = \"cuprous oxide\"\npacks = 1\nrecognised = \"by the tin\"\n"
	for want, more := range map[string]string{
		"which actives it holds, the volume solids and the density of the wet paint must be known": "",
		"which actives it holds and the density of the wet paint must be known":                    "solids = \"50 %\"\n",
		"the density of the wet paint must be known":                                               "solids = \"50 %\"\n[[coating.active]]\nkey = \"cuprous-oxide\"\ncontent = \"40 %\"\n",
		"the content of cuprous oxide must be known":                                               "solids = \"50 %\"\ndensity = \"1.8 kg/L\"\n[[coating.active]]\nkey = \"cuprous-oxide\"\n",
	} {
		b := own(t, row+more)
		x := content(t, b, coating(t, b, "tin"), um(100))
		if len(x.Held) > 0 || x.Findings.Worst() != finding.Ask || !x.Findings.Has(leach.RuleAsk) {
			t.Fatalf("%v %v", x.Held, x.Findings)
		}
		if said := b.Say(x.Findings[0], quantity.Metric); !strings.Contains(said, want) {
			t.Errorf("%q, want %q", said, want)
		}
		if fs := leach.Against(mean(t, b, x.Coating, um(100), 12), leach.Cap{Place: "here", Law: "a law", Max: quantity.MicrogramPerSquareCentimetreDay.N(9)}); fs.Worst() != finding.Ask || !fs.Has(leach.RuleCapNothing) {
			t.Errorf("%v", fs)
		}
	}
}

func TestFaults(t *testing.T) {
	b := tables.Default()
	c := coating(t, b, "hard-cuprous")
	n := quantity.Micrometre.N
	for _, tc := range []struct {
		film quantity.Range[quantity.Film]
		kind error
	}{
		{quantity.Range[quantity.Film]{}, finding.ErrMissing},
		{quantity.Range[quantity.Film]{Low: n(1), High: n(2)}, finding.ErrMissing},
		{um(0), finding.ErrImpossible},
		{um(-1), finding.ErrImpossible},
		{um(10001), finding.ErrImpossible},
		{quantity.Range[quantity.Film]{Low: n(3), Typical: n(2), High: n(4)}, finding.ErrImpossible},
		{quantity.Range[quantity.Film]{Low: n(1), Typical: n(3), High: n(2)}, finding.ErrImpossible},
	} {
		if _, err := leach.Content(b, c, tc.film); !errors.Is(err, tc.kind) {
			t.Errorf("%v: %v", tc.film, err)
		}
	}
	for _, months := range []float64{0, -1, 1200.1, math.NaN(), math.Inf(1)} {
		_, err := leach.Mean(b, c, um(0), months)
		fs, ok := errors.AsType[finding.Faults](err)
		if !ok || len(fs) != 2 || fs[0].Key != "film" || fs[1].Key != "life" {
			t.Errorf("%g months and no film: %v", months, err)
		}
	}
	for _, stock := range []quantity.Range[float64]{quantity.Exactly(-1.0), {Low: 2, Typical: 1, High: 3}, quantity.Exactly(math.NaN()), quantity.Exactly(math.Inf(1))} {
		if _, _, err := leach.Balance(b, stock, 12); !errors.Is(err, finding.ErrImpossible) {
			t.Errorf("%v: %v", stock, err)
		}
		_, err := leach.Load(stock, quantity.Range[quantity.Area]{}, 0)
		if fs, ok := errors.AsType[finding.Faults](err); !ok || len(fs) != 3 {
			t.Errorf("%v: %v", stock, err)
		}
	}
	if _, err := leach.Load(quantity.Exactly(1.0), quantity.Exactly(quantity.SquareMetre.N(-1)), 1); !errors.Is(err, finding.ErrImpossible) {
		t.Error(err)
	}
	if _, err := leach.Mean(&tables.Book{}, c, um(100), 12); !errors.Is(err, finding.ErrMissing) || !strings.Contains(err.Error(), "iso-10890-released") || !strings.Contains(err.Error(), "finnie-mass-balance") {
		t.Errorf("a book without the rows: %v", err)
	}
	row := "[[value]]\nkey = %q\nbasis = \"own table\"\nsource = \"typed\"\nvalue = %s\n"
	for key, bad := range map[string]string{"iso-10890-released": "101", "finnie-mass-balance": "0.9"} {
		b := own(t, strings.NewReplacer("%q", `"`+key+`"`, "%s", bad).Replace(row))
		if _, err := leach.Mean(b, c, um(100), 12); !errors.Is(err, finding.ErrImpossible) {
			t.Errorf("%s = %s: %v", key, bad, err)
		}
	}
}

// The paint of the first published example has 19.96 raw and 6.88 corrected: the limit on either side of each, and on it. On the limit is
// not above it. Never fine, never forbidden.
func TestAgainst(t *testing.T) {
	b, c := recipe(t, "50 %", "1.90 kg/L", [2]string{"cuprous-oxide", "40 %"})
	r := mean(t, b, c, um(120), 24)
	for _, tc := range []struct {
		limit string
		rule  finding.ID
		want  finding.Verdict
	}{
		{"100 ug/cm2/d", leach.RuleCapBelow, finding.Caution},
		{"19.97 ug/cm2/d", leach.RuleCapBelow, finding.Caution},
		{"19.95 ug/cm2/d", leach.RuleCapBetween, finding.Ask},
		{"9.5 ug/cm2/d", leach.RuleCapBetween, finding.Ask}, // raw fails, corrected passes: the method must be named
		{"6.89 ug/cm2/d", leach.RuleCapBetween, finding.Ask},
		{"6.87 ug/cm2/d", leach.RuleCapAbove, finding.Ask},
		{"", leach.RuleCapNothing, finding.Ask},
	} {
		limit := leach.Cap{Place: "the place", Law: "the law"}
		if tc.limit != "" {
			limit.Max = parse[quantity.Release](t, tc.limit)
		}
		fs := leach.Against(r, limit)
		if len(fs) != 1 || fs[0].Rule != tc.rule || fs[0].Verdict != tc.want {
			t.Errorf("%s: %v", tc.limit, fs)
		}
		if said := b.Say(fs[0], quantity.Metric); !strings.Contains(said, "approved figure") && !strings.Contains(said, "no approval") || !strings.HasPrefix(said, "The place: ") {
			t.Errorf("%s: %s", tc.limit, said)
		}
	}
	between := leach.Rate{Releases: []leach.Release{{Held: leach.Held{Of: leach.Copper}, Raw: quantity.Exactly(29.0), Corrected: quantity.Exactly(10.0)}}}
	if fs := leach.Against(between, leach.Cap{Max: quantity.MicrogramPerSquareCentimetreDay.N(10)}); fs[0].Rule != leach.RuleCapBetween {
		t.Errorf("the divided one on the limit: %v", fs)
	}
	exact := leach.Rate{Releases: []leach.Release{{Held: leach.Held{Of: leach.Copper}, Raw: quantity.Exactly(10.0), Corrected: quantity.Exactly(10 / 2.9)}}}
	if fs := leach.Against(exact, leach.Cap{Max: quantity.MicrogramPerSquareCentimetreDay.N(10)}); fs[0].Rule != leach.RuleCapBelow {
		t.Errorf("on the limit: %v", fs)
	}
}

// A limit is read off the law's finding, with its place and basis.
func TestCapOf(t *testing.T) {
	limit := parse[quantity.Release](t, "9.5 ug/cm2/d")
	f := finding.Finding{Against: "California", Facts: []finding.Fact{{Name: "law", Value: "a law"}, {Name: "says", Value: "words"}, {Name: "release", Value: limit}}, Basis: []finding.Basis{{Kind: finding.Published}}}
	c, ok := leach.CapOf(f)
	if !ok || c.Place != "California" || c.Law != "a law" || !c.Max.Equal(limit) || len(c.Basis) != 1 {
		t.Errorf("%v %v", c, ok)
	}
	f.Facts = f.Facts[:2]
	if c, ok := leach.CapOf(f); ok {
		t.Errorf("a limit of nothing: %v", c)
	}
}

// An area is given whole, from nought, and rises; nothing leaves an area of nought.
func TestAreasThatAreTaken(t *testing.T) {
	m2 := quantity.SquareMetre.N
	for _, c := range []struct {
		area quantity.Range[quantity.Area]
		kind error
	}{
		{quantity.Exactly(m2(0)), nil},
		{quantity.Range[quantity.Area]{Low: m2(0), Typical: m2(1), High: m2(1)}, nil},
		{quantity.Range[quantity.Area]{Low: m2(2), Typical: m2(1), High: m2(3)}, finding.ErrImpossible},
		{quantity.Range[quantity.Area]{Low: m2(1), Typical: m2(3), High: m2(2)}, finding.ErrImpossible},
		{quantity.Range[quantity.Area]{Low: m2(-1), Typical: m2(1), High: m2(2)}, finding.ErrImpossible},
		{quantity.Range[quantity.Area]{Typical: m2(1), High: m2(2)}, finding.ErrMissing},
		{quantity.Range[quantity.Area]{Low: m2(1), High: m2(2)}, finding.ErrMissing},
		{quantity.Range[quantity.Area]{Low: m2(1), Typical: m2(2)}, finding.ErrMissing},
	} {
		grams, err := leach.Load(quantity.Exactly(100.0), c.area, 12)
		fs, _ := errors.AsType[finding.Faults](err)
		switch {
		case c.kind == nil && err == nil: // 100 ug/cm2/d of a square metre over a year of 365.25 days: 365.25 g
			near(t, "low", grams.Low, 365.25*c.area.Low.Float(quantity.SquareMetre), 1e-9)
			near(t, "high", grams.High, 365.25*c.area.High.Float(quantity.SquareMetre), 1e-9)
		case len(fs) != 1 || fs[0].Key != "area" || !errors.Is(fs[0], c.kind):
			t.Errorf("%s, %s, %s: %v, want %v", c.area.Low, c.area.Typical, c.area.High, err, c.kind)
		}
	}
}

// A stock is spread over a life, which must be one.
func TestBalanceNeedsALife(t *testing.T) {
	for _, months := range []float64{0, -1, 1200.5, math.NaN()} {
		_, _, err := leach.Balance(tables.Default(), quantity.Exactly(100.0), months)
		if fs, ok := errors.AsType[finding.Faults](err); !ok || len(fs) != 1 || fs[0].Key != "life" {
			t.Errorf("%g months: %v", months, err)
		}
	}
}

// One substance alone has its means, and a trace of zinc is zinc. By hand: 1 um at 1.9 kg/L and 50 % solids is 3.8 ug/cm2 a percent, of zinc pyrithione
// 1 %, of which 0.2058 is zinc: 0.782.
func TestOneSubstanceAndATrace(t *testing.T) {
	b, paint := recipe(t, "50 %", "1.90 kg/L", [2]string{"tralopyril", "4 %"})
	if r := mean(t, b, paint, um(120), 24); len(r.Releases) != 1 || r.Releases[0].Of != "tralopyril" || !r.Findings.Has(leach.RuleRaw) {
		t.Errorf("%d means, %v", len(r.Releases), r.Findings)
	}
	b, paint = recipe(t, "50 %", "1.90 kg/L", [2]string{"zinc-pyrithione", "1 %"})
	zinc, ok := content(t, b, paint, um(1)).Of(leach.Zinc)
	if !ok {
		t.Fatal("a trace of zinc is left out")
	}
	near(t, "zinc", zinc.UgCm2.Typical, 0.782, 0.0005)
}
