package coverage_test

import (
	"fmt"
	"testing"

	"boatyard.example/bottomwork/coverage"
	"boatyard.example/bottomwork/tables/finding"
)

func kit(tb testing.TB, base, hardener string) coverage.Kit {
	tb.Helper()
	return coverage.Kit{Base: litre(tb, base), Hardener: litre(tb, hardener)}
}

// fact is the value of a finding's fact as text, "" where it has none.
func fact(f finding.Finding, name string) string {
	for _, x := range f.Facts {
		if x.Name == name {
			return fmt.Sprint(x.Value)
		}
	}
	return ""
}

func TestKitCanByHand(t *testing.T) {
	for _, c := range []struct{ ratio, base, hardener, mixed, left, of string }{
		{"3:1", "3 L", "1 L", "4 L", "", ""},
		// 0.75 ÷ 3 = 0.25 and 0.3 ÷ 1 = 0.3: base runs out, 0.25 × 4 = 1 L; 0.3 − 0.25 = 0.05 L of hardener.
		{"3:1", "0.75 L", "0.3 L", "1 L", "0.05 L", "hardener"},
		// 2 ÷ 3 = 0.667 and 0.5 ÷ 1 = 0.5: hardener runs out, 0.5 × 4 = 2 L; 2 − 1.5 = 0.5 L of base.
		{"3:1", "2 L", "0.5 L", "2 L", "0.5 L", "base"},
		{"6:2", "2 L", "0.5 L", "2 L", "0.5 L", "base"},
		// 1 ÷ 3 × 4 = 1.3333 L; 0.4 − 0.33333 = 0.06666 L.
		{"3:1", "1 L", "400 mL", "1.333 L", "0.066 L", "hardener"},
		{"2.5:1", "2.5 L", "1 L", "3.5 L", "", ""},
		// A US gallon and a US quart are 4:1 exactly: 3.785411784 + 0.946352946 = 4.73176473 L.
		{"4:1", "1 US gal", "1 US qt", "4.731 L", "", ""},
		// Hardener of 1 L wants 3 L: a millilitre more is left over, less than that is not told.
		{"3:1", "3.001 L", "1 L", "4 L", "0.001 L", "base"},
		{"3:1", "3.0009 L", "1 L", "4 L", "", ""},
		// 3 L want 1 L: with 0.999 L it is 3.996 L and 3 − 2.997 = 0.003 L.
		{"3:1", "3 L", "0.999 L", "3.996 L", "0.003 L", "base"},
		{"1:1", "0.5 mL", "0.5 mL", "0.001 L", "", ""},
	} {
		can, fs, err := coverage.KitCan(ratio(t, c.ratio), kit(t, c.base, c.hardener))
		if err != nil || len(fs) != 1 {
			t.Errorf("%s of %s and %s: %v, %v", c.ratio, c.base, c.hardener, fs, err)
			continue
		}
		verdict, rule := finding.Fine, finding.ID("kit-even")
		if c.left != "" {
			verdict, rule = finding.Caution, "kit-left-over"
		}
		if can.Size.String() != c.mixed || fs[0].Verdict != verdict || fs[0].Rule != rule || fact(fs[0], "left") != c.left || fact(fs[0], "component") != c.of {
			t.Errorf("%s of %s and %s: %s, %+v; want %s and %s of %s left", c.ratio, c.base, c.hardener, can.Size, fs[0], c.mixed, c.left, c.of)
		}
	}
}

// Kits go through Cans as cans of mixed paint, part-used ones in the store.
func TestKitsAsCans(t *testing.T) {
	r := ratio(t, "3:1")
	read := func(k coverage.Kit, price, batch string) coverage.Can {
		if price != "" {
			k.Price = money(t, price)
		}
		k.Batch = batch
		can, _, err := coverage.KitCan(r, k)
		if err != nil {
			t.Fatal(err)
		}
		return can
	}
	onSale := []coverage.Can{read(kit(t, "3 L", "1 L"), "120 EUR", ""), read(kit(t, "0.75 L", "0.25 L"), "40 EUR", "")}
	part := read(kit(t, "0.75 L", "0.3 L"), "", "K7")
	if part.Batch != "K7" || part.Price.Given() || !onSale[0].Price.Equal(money(t, "120 EUR")) {
		t.Errorf("part-used %+v, on sale %+v", part, onSale)
	}
	// 5.5 L less 1 L of the store: 4 L for 120 and 1 L for 40, against two of 4 L for 240.
	got, err := coverage.Cans(litre(t, "5.5 L"), onSale, []coverage.Can{part})
	if err != nil || list(got.Items) != "1 × 4 L; 1 × 1 L; " || list(got.FromStock) != "1 × 1 L; " || !got.Cost.Equal(money(t, "160 EUR")) {
		t.Errorf("%+v, %v", got, err)
	}
}

func TestKitCanFaults(t *testing.T) {
	can, fs, err := coverage.KitCan(coverage.Ratio{}, coverage.Kit{Hardener: litre(t, "-1 L")})
	for _, f := range []struct {
		kind error
		key  string
	}{{finding.ErrImpossible, "ratio.base"}, {finding.ErrImpossible, "ratio.hardener"}, {finding.ErrMissing, "kit.base"}, {finding.ErrImpossible, "kit.hardener"}} {
		hasFault(t, err, f.kind, f.key)
	}
	if can.Size.Given() || fs != nil {
		t.Errorf("%v, %v beside an error", can, fs)
	}
	for _, c := range []struct{ ratio, base, hardener, key string }{
		{"3:1", "0 L", "1 L", "kit.base"},
		{"3:1", "3 L", "0 L", "kit.hardener"},
		{"3:1", "1000000.1 L", "1 L", "kit.base"},
		{"1:1", "0.49 mL", "0.5 mL", "kit"}, // 0.98 mL
		{"1:1", "500001 L", "500001 L", "kit"},
	} {
		_, _, err := coverage.KitCan(ratio(t, c.ratio), kit(t, c.base, c.hardener))
		hasFault(t, err, finding.ErrImpossible, c.key)
	}
	if _, _, err := coverage.KitCan(ratio(t, "1:1"), kit(t, "500000 L", "500000 L")); err != nil {
		t.Error(err)
	}
}
