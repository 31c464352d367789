package coverage_test

import (
	"fmt"
	"testing"

	"boatyard.example/bottomwork/coverage"
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

func density(tb testing.TB, s string) quantity.Density {
	tb.Helper()
	if s == "" {
		return quantity.Density{}
	}
	return parse[quantity.Density](tb, s)
}

func TestMixByHand(t *testing.T) {
	for _, c := range []struct{ total, ratio, dBase, dHardener, base, hardener, mBase, mHardener string }{
		{"4 L", "3:1", "", "", "3.000 L", "1.000 L", "not given", "not given"},
		// 1.25 and 0.25 L; 1.25 × 1.42 = 1.775 kg, 0.25 × 0.94 = 0.235 kg.
		{"1.5 L", "5:1", "1.42 kg/L", "0.94 kg/L", "1.250 L", "0.250 L", "1.775 kg", "0.235 kg"},
		// 1 ÷ 3 = 0.3333 L, the base takes the rest: 0.667 L × 1.5 = 1.0005 kg, a half up; 0.333 × 1 = 0.333 kg.
		{"1 L", "2:1", "1.5 kg/L", "1 kg/L", "0.667 L", "0.333 L", "1.001 kg", "0.333 kg"},
		// 2 ÷ 3 = 0.6667 L of hardener.
		{"1 L", "1:2", "", "", "0.333 L", "0.667 L", "not given", "not given"},
		{"1 L", "2:1", "1.5 kg/L", "", "0.667 L", "0.333 L", "not given", "not given"}, // one density only
		{"1 L", "2:1", "", "1.5 kg/L", "0.667 L", "0.333 L", "not given", "not given"},
		// 10.2 ÷ 4 = 2.55 mL rounds to 3, just under it 10 ÷ 4 = 2.5 mL to 3, 9.9 ÷ 4 = 2.475 mL to 2.
		{"10.2 mL", "3:1", "", "", "0.0072 L", "0.003 L", "not given", "not given"},
		{"10 mL", "3:1", "", "", "0.007 L", "0.003 L", "not given", "not given"},
		{"9.9 mL", "3:1", "", "", "0.0079 L", "0.002 L", "not given", "not given"},
		// 3.785411784 ÷ 5 = 0.7570823568 L; 3.785411784 − 0.757.
		{"1 US gal", "4:1", "", "", "3.028411784 L", "0.757 L", "not given", "not given"},
		{"2 mL", "1:1", "0.5 kg/L", "5 kg/L", "0.001 L", "0.001 L", "0.001 kg", "0.005 kg"}, // 0.5 g rounds to 1 g
	} {
		total := litre(t, c.total)
		got, err := coverage.Mix(total, ratio(t, c.ratio), [2]quantity.Density{density(t, c.dBase), density(t, c.dHardener)})
		if err != nil {
			t.Errorf("%s at %s: %v", c.total, c.ratio, err)
			continue
		}
		if !got.Base.Equal(litre(t, c.base)) || got.Hardener.String() != c.hardener || got.BaseMass.String() != c.mBase || got.HardenerMass.String() != c.mHardener {
			t.Errorf("%s at %s: %s and %s, %s and %s", c.total, c.ratio, got.Base, got.Hardener, got.BaseMass, got.HardenerMass)
		}
		if !got.Base.Add(got.Hardener).Equal(total) {
			t.Errorf("%s at %s: %s and %s do not make it", c.total, c.ratio, got.Base, got.Hardener)
		}
	}
}

// Whatever the total and the ratio, the components make the total, and the hardener is within half a millilitre of its part.
func TestMixAddsUp(t *testing.T) {
	half := litre(t, "0.5 mL").In(quantity.Litre, 4, quantity.Nearest)
	for ml := int64(40); ml < 6000; ml += 37 {
		for _, text := range []string{"1:1", "3:1", "4:1", "7:3", "2.5:1", "1:1.7", "9.9:1.1"} {
			total, r := quantity.Millilitre.N(ml), ratio(t, text)
			got, err := coverage.Mix(total, r, [2]quantity.Density{})
			if err != nil {
				t.Fatal(err)
			}
			if !got.Base.Add(got.Hardener).Equal(total) {
				t.Errorf("%s at %s: %s and %s", total, text, got.Base, got.Hardener)
			}
			// |hardener × (a + b) − total × b| ≤ half a millilitre × (a + b)
			parts := r.Base.Add(r.Hardener)
			off := got.Hardener.Number().Mul(parts).Sub(total.In(quantity.Litre, 3, quantity.Nearest).Mul(r.Hardener)).Abs()
			if off.Cmp(half.Mul(parts)) > 0 {
				t.Errorf("%s at %s: hardener %s", total, text, got.Hardener)
			}
		}
	}
}

func TestMixFaults(t *testing.T) {
	got, err := coverage.Mix(quantity.Volume{}, coverage.Ratio{}, [2]quantity.Density{density(t, "0.49 kg/L"), density(t, "5.01 kg/L")})
	for _, f := range []struct {
		kind error
		key  string
	}{
		{finding.ErrMissing, "total"},
		{finding.ErrImpossible, "ratio.base"},
		{finding.ErrImpossible, "ratio.hardener"},
		{finding.ErrImpossible, "densities.base"},
		{finding.ErrImpossible, "densities.hardener"},
	} {
		hasFault(t, err, f.kind, f.key)
	}
	if got.Base.Given() || got.Hardener.Given() {
		t.Errorf("%+v beside an error", got)
	}
	for _, c := range []struct{ total, ratio string }{
		{"0 L", "3:1"},
		{"-1 L", "3:1"},
		{"1000000.1 L", "3:1"},
		{"1.9 mL", "3:1"},   // 0.475 mL of hardener rounds to nought
		{"1.999 mL", "1:1"}, // 1 mL of hardener leaves 0.999 mL of base
		{"1.9 mL", "1:3"},   // 1.425 mL of hardener is told as 1 mL and leaves 0.9 mL of base
	} {
		_, err := coverage.Mix(litre(t, c.total), ratio(t, c.ratio), [2]quantity.Density{})
		hasFault(t, err, finding.ErrImpossible, "total")
	}
	for _, total := range []string{"1000000 L", "2 mL"} {
		if _, err := coverage.Mix(litre(t, total), ratio(t, "3:1"), [2]quantity.Density{}); err != nil {
			t.Errorf("%s: %v", total, err) // 2 ÷ 4 = 0.5 mL is told as 1 mL
		}
	}
}

func TestRatioByMass(t *testing.T) {
	for _, c := range []struct{ ratio, base, hardener, want string }{
		{"3:1", "1.4 kg/L", "1 kg/L", "4.2:1"},
		{"3:1", "1.2 kg/L", "0.9 kg/L", "3.6:0.9"}, // 4:1 by mass
		{"2.5:1", "0.5 kg/L", "5 kg/L", "1.25:5"},
		{"1:1", "1 kg/L", "1.0 kg/L", "1:1"},
	} {
		got, err := coverage.RatioByMass(ratio(t, c.ratio), [2]quantity.Density{density(t, c.base), density(t, c.hardener)})
		if err != nil || got.String() != c.want {
			t.Errorf("%s with %s and %s: %s, %v; want %s", c.ratio, c.base, c.hardener, got, err, c.want)
		}
		if err := got.Check().Err(); err != nil {
			t.Errorf("%s: %v", got, err)
		}
	}
	_, err := coverage.RatioByMass(coverage.Ratio{}, [2]quantity.Density{{}, density(t, "0.49 kg/L")})
	hasFault(t, err, finding.ErrImpossible, "ratio.base")
	hasFault(t, err, finding.ErrMissing, "densities.base")
	hasFault(t, err, finding.ErrImpossible, "densities.hardener")
}

// 2 L at 3:1 are 1.5 L of base at 2 kg/L and 0.5 L of hardener at 1 kg/L.
func ExampleMix() {
	r, err := coverage.ParseRatio("3:1")
	if err != nil {
		fmt.Println(err)
		return
	}
	got, err := coverage.Mix(quantity.Litre.N(2), r, [2]quantity.Density{quantity.KilogramPerLitre.N(2), quantity.KilogramPerLitre.N(1)})
	fmt.Println(got.Base, got.Hardener, got.BaseMass, got.HardenerMass, err)
	// Output: 1.500 L 0.500 L 3.000 kg 0.500 kg <nil>
}
