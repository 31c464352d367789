package leach_test

import (
	"errors"
	"fmt"
	"testing"

	"boatyard.example/bottomwork/antifoul/leach"
	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

// fact is the value of a fact of the rule's finding, in words; "none" where the rule says nothing.
func fact(fs finding.List, rule finding.ID, name string) string {
	for _, f := range fs {
		if f.Rule != rule {
			continue
		}
		for _, x := range f.Facts {
			if x.Name == name {
				return fmt.Sprint(x.Value)
			}
		}
	}
	return "none"
}

// What is told, to three digits. By hand, of 120 um at 1.9 kg/L and 50 % solids: 456 ug/cm2 a percent of content. Cuprous oxide 40 %: 18 240, of it
// 0.8882 copper: 16 201. Zinc pyrithione 4 %: 1 824, of it 0.2058 zinc (65.38 / 317.7), 375, no copper. Means over 24 months of 30.4375 days, 0.9 of it: 16 201 is
// 19.96 a day, divided by 2.9 6.88; 1 824 is 2.25, divided 0.775.
func TestWhatIsTold(t *testing.T) {
	for _, c := range []struct {
		actives                    [][2]string
		held, raw, divided, beside string
	}{
		{
			[][2]string{{"cuprous-oxide", "40 %"}},
			"18200 µg/cm² of cuprous oxide and 16200 µg/cm² of copper in all", "20 µg/cm²/d of copper in all", "6.88 µg/cm²/d of copper in all", "none",
		},
		{
			[][2]string{{"cuprous-oxide", "40 %"}, {"zinc-pyrithione", "4 %"}},
			"18200 µg/cm² of cuprous oxide, 1820 µg/cm² of zinc pyrithione, 16200 µg/cm² of copper in all and 375 µg/cm² of zinc in all actives",
			"2.25 µg/cm²/d of zinc pyrithione and 20 µg/cm²/d of copper in all", "0.775 µg/cm²/d of zinc pyrithione and 6.88 µg/cm²/d of copper in all", "zinc pyrithione",
		},
	} {
		b, paint := recipe(t, "50 %", "1.90 kg/L", c.actives...)
		r := mean(t, b, paint, um(120), 24)
		for name, x := range map[string][2]string{
			"held":    {fact(r.Findings, leach.RuleContent, "held"), c.held},
			"raw":     {fact(r.Findings, leach.RuleRaw, "mean"), c.raw},
			"divided": {fact(r.Findings, leach.RuleCorrected, "mean"), c.divided},
			"carried": {fact(r.Findings, leach.RuleCarried, "carried"), c.beside},
		} {
			if x[0] != x[1] {
				t.Errorf("%s: %q, want %q", name, x[0], x[1])
			}
		}
	}
	// A range is told by its ends: 18 240 × (30 to 50) / 40.
	b, paint := recipe(t, "50 %", "1.90 kg/L", [2]string{"cuprous-oxide", "40 %"})
	n := quantity.Micrometre.N
	x := content(t, b, paint, quantity.Range[quantity.Film]{Low: n(90), Typical: n(120), High: n(150)})
	if got, want := fact(x.Findings, leach.RuleContent, "held"), "13700 to 22800 µg/cm² of cuprous oxide and 12200 to 20300 µg/cm² of copper in all"; got != want {
		t.Errorf("%q, want %q", got, want)
	}
}

// Lives are told to a tenth of a month.
func TestMonthsAsTold(t *testing.T) {
	b, paint := recipe(t, "50 %", "1.90 kg/L", [2]string{"cuprous-oxide", "40 %"})
	for life, want := range map[float64]string{1: "1 month", 1.04: "1 month", 1.06: "1.1 months", 7.46: "7.5 months", 7.44: "7.4 months", 24: "24 months", 0.5: "0.5 months"} {
		if got := fact(mean(t, b, paint, um(120), life).Findings, leach.RuleRaw, "months"); got != want {
			t.Errorf("%g months: %q, want %q", life, got, want)
		}
	}
}

// On and beyond the ends of what the rows may hold, and of a film and a life.
func TestEndsOfWhatIsTaken(t *testing.T) {
	for _, c := range []struct {
		key   string
		value string
		taken bool
	}{
		{"iso-10890-released", "0", false},
		{"iso-10890-released", "0.5", true},
		{"iso-10890-released", "100", true},
		{"iso-10890-released", "100.1", false},
		{"finnie-mass-balance", "0.999", false},
		{"finnie-mass-balance", "1", true},
		{"finnie-mass-balance", "1000", true},
		{"finnie-mass-balance", "1000.5", false},
		{"lagerstrom-2018-field", "0.999", false},
		{"lagerstrom-2018-field", "1", true},
		{"lagerstrom-2018-field", "1000", true},
		{"lagerstrom-2018-field", "1000.5", false},
	} {
		b := own(t, fmt.Sprintf("[[value]]\nkey = %q\nbasis = \"own table\"\nsource = \"typed\"\nvalue = %s\n", c.key, c.value))
		_, err := leach.Mean(b, coating(t, b, "hard-cuprous"), um(100), 12)
		if (err == nil) != c.taken || err != nil && !errors.Is(err, finding.ErrImpossible) {
			t.Errorf("%s = %s: %v", c.key, c.value, err)
		}
	}
	for stock, taken := range map[float64]bool{-0.001: false, 0: true, 0.5: true} {
		if _, _, err := leach.Balance(tables.Default(), quantity.Exactly(stock), 12); (err == nil) != taken {
			t.Errorf("a stock of %g: %v", stock, err)
		}
	}
	b, paint := recipe(t, "50 %", "1.90 kg/L", [2]string{"cuprous-oxide", "40 %"})
	if mean(t, b, paint, um(10000), 1200).Releases == nil {
		t.Error("the thickest film and the longest life hold nothing")
	}
}
