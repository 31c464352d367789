package coverage_test

import (
	"errors"
	"strings"
	"testing"

	"github.com/shopspring/decimal"

	"boatyard.example/bottomwork/coverage"
	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

// What Cans and Mix would refuse later is a fault of the tin, under its own key.
func TestTinFaults(t *testing.T) {
	price := func(s string) quantity.Money {
		m, err := quantity.ParseMoney(s)
		if err != nil {
			t.Fatal(err)
		}
		return m
	}
	ratio, err := coverage.ParseRatio("3:1")
	if err != nil {
		t.Fatal(err)
	}
	kg := quantity.KilogramPerLitre.N
	kit := func(litres int64, p string) coverage.Kit {
		k := coverage.Kit{Base: quantity.Litre.N(3 * litres), Hardener: quantity.Litre.N(litres)}
		if p != "" {
			k.Price = price(p)
		}
		return k
	}
	var seventeen []coverage.Kit
	var cans []coverage.Stored
	for i := range int64(17) {
		seventeen, cans = append(seventeen, kit(i+1, "")), append(cans, coverage.Stored{Size: quantity.Litre.N(i + 1)})
	}
	for name, c := range map[string]struct {
		tin  coverage.Tin
		kind error
		key  string // none: no fault
	}{
		"right":                    {coverage.Tin{Ratio: ratio, Densities: [2]quantity.Density{kg(1), kg(5)}, Kits: []coverage.Kit{kit(1, "5 EUR"), kit(2, "9 EUR")}}, nil, ""},
		"two currencies":           {coverage.Tin{Ratio: ratio, Kits: []coverage.Kit{kit(1, "5 EUR"), kit(2, "9 USD")}}, finding.ErrValue, "kit[2].price"},
		"a price below nought":     {coverage.Tin{Ratio: ratio, Kits: []coverage.Kit{kit(1, "-5 EUR")}}, finding.ErrImpossible, "kit[1].price"},
		"sixteen sizes of kit":     {coverage.Tin{Ratio: ratio, Kits: seventeen[:16]}, nil, ""},
		"seventeen sizes of kit":   {coverage.Tin{Ratio: ratio, Kits: seventeen}, finding.ErrImpossible, "kit"},
		"seventeen sizes in store": {coverage.Tin{Store: cans}, finding.ErrImpossible, "store"},
		"a thousand cans":          {coverage.Tin{Store: []coverage.Stored{{Size: quantity.Litre.N(1), Count: 999}, {Size: quantity.Litre.N(2)}}}, nil, ""},
		"a thousand equal cans":    {coverage.Tin{Store: []coverage.Stored{{Size: quantity.Litre.N(1), Count: 1000}}}, nil, ""},
		"a can of one pack":        {coverage.Tin{Coating: "hard-cuprous", Store: []coverage.Stored{{Size: quantity.Litre.N(1)}}}, nil, ""},
		"too many, of any size":    {coverage.Tin{Store: append([]coverage.Stored{{Size: quantity.Litre.N(1), Count: 1000}}, cans...)}, finding.ErrImpossible, "store"},
		"a can too many":           {coverage.Tin{Store: []coverage.Stored{{Size: quantity.Litre.N(1), Count: 999}, {Size: quantity.Litre.N(2), Count: 2}}}, finding.ErrImpossible, "store"},
		"as light as any":          {coverage.Tin{Ratio: ratio, Densities: [2]quantity.Density{quantity.KilogramPerLitre.Of(decimal.New(5, -1)), kg(5)}}, nil, ""},
		"lighter than that":        {coverage.Tin{Ratio: ratio, Densities: [2]quantity.Density{quantity.KilogramPerLitre.Of(decimal.New(49, -2)), kg(5)}}, finding.ErrImpossible, "density_base"},
		"lighter than any paint":   {coverage.Tin{Ratio: ratio, Densities: [2]quantity.Density{quantity.KilogramPerLitre.N(0), kg(1)}}, finding.ErrImpossible, "density_base"},
		"heavier than any paint":   {coverage.Tin{Ratio: ratio, Densities: [2]quantity.Density{kg(1), kg(6)}}, finding.ErrImpossible, "density_hardener"},
		"one density":              {coverage.Tin{Ratio: ratio, Densities: [2]quantity.Density{kg(1)}}, finding.ErrMissing, "density_hardener"},
		"densities without ratio":  {coverage.Tin{Densities: [2]quantity.Density{kg(1), kg(1)}}, finding.ErrMissing, "ratio"},
		"densities of one pack":    {coverage.Tin{Coating: "hard-cuprous", Ratio: ratio, Densities: [2]quantity.Density{kg(1), kg(1)}}, finding.ErrImpossible, "coating"},
	} {
		if c.tin.Coating == "" {
			c.tin.Coating = "epoxy-barrier"
		}
		fs := c.tin.Check(tables.Default())
		if c.key == "" && len(fs) > 0 || c.key != "" && (len(fs) != 1 || fs[0].Key != c.key || !errors.Is(fs[0], c.kind)) {
			t.Errorf("%s: %v; want %q", name, fs, c.key)
		}
	}
}

// One density wants the other, and either of them the ratio.
func TestDensityAlone(t *testing.T) {
	for i, other := range []string{"density_hardener", "density_base"} {
		x := coverage.Tin{Coating: "epoxy-barrier"}
		x.Densities[i] = quantity.KilogramPerLitre.N(1)
		err := x.Check(tables.Default()).Err()
		hasFault(t, err, finding.ErrMissing, other)
		hasFault(t, err, finding.ErrMissing, "ratio")
	}
}

// Each thing that only a paint of two components has asks for one, whichever of them was written.
func TestTwoPackThings(t *testing.T) {
	b := tables.Default()
	for name, x := range map[string]coverage.Tin{
		"a pot life":       {Coating: "hard-cuprous", PotLife: quantity.Hour.N(2)},
		"a kit":            {Coating: "hard-cuprous", Kits: []coverage.Kit{{Base: quantity.Litre.N(3), Hardener: quantity.Litre.N(1)}}},
		"a base's density": {Coating: "hard-cuprous", Densities: [2]quantity.Density{quantity.KilogramPerLitre.N(1), {}}},
		"the hardener's":   {Coating: "hard-cuprous", Densities: [2]quantity.Density{{}, quantity.KilogramPerLitre.N(1)}},
		"a ratio":          {Coating: "hard-cuprous", Ratio: coverage.Ratio{Base: decimal.NewFromInt(3), Hardener: decimal.NewFromInt(1)}},
	} {
		told := func(x coverage.Tin) bool {
			for _, f := range x.Check(b) {
				if f.Key == "coating" && strings.Contains(f.Want, "two-pack") {
					return true
				}
			}
			return false
		}
		if !told(x) {
			t.Errorf("%s of a paint of one component is taken", name)
		}
		if x.Coating = "epoxy-barrier"; told(x) {
			t.Errorf("%s of a paint of two components is refused", name)
		}
	}
}
