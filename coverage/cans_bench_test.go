package coverage_test

import (
	"testing"

	"boatyard.example/bottomwork/coverage"
)

// Cases beside those of BenchmarkCans: an even need, two sizes without a common measure, and cans in the store.
func BenchmarkCansCases(b *testing.B) {
	rising := func(l float64) float64 { return l * (30 + l/2) }
	var short, enough []coverage.Can // ten sizes in the store: 63 L, and six times as much
	for i := range 6 {
		for _, c := range tenSizes(b, nil) {
			if enough = append(enough, coverage.Can{Size: c.Size}); i < 1 {
				short = append(short, coverage.Can{Size: c.Size})
			}
		}
	}
	for _, c := range []struct {
		name, need    string
		onSale, stock []coverage.Can
	}{
		{"TenSizes", "500 L", tenSizes(b, nil), nil},
		{"TenSizesPriced", "500 L", tenSizes(b, func(l float64) float64 { return l * (40 - l/2) }), nil},
		{"TenSizesBigDearer", "500 L", tenSizes(b, rising), nil},
		{"OddPair", "500 L", cans(b, "0.75 L, 1 US gal"), nil},
		{"OddPairPriced", "500 L", cans(b, "0.75 L 25.90 EUR, 1 US gal 119.00 EUR"), nil},
		{"OddPairBigDearer", "500 L", cans(b, "0.75 L 20.00 EUR, 1 US gal 119.00 EUR"), nil},
		{"StoreShort", "500 L", tenSizes(b, nil), short},
		{"StoreShortBigDearer", "500 L", tenSizes(b, rising), short},
		{"StoreSuffices", "250 L", nil, enough},
		{"StoreSufficesOdd", "250.01 L", nil, enough},
	} {
		b.Run(c.name, func(b *testing.B) {
			need := litre(b, c.need)
			for b.Loop() {
				if _, err := coverage.Cans(need, c.onSale, c.stock); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}

func BenchmarkIfOut(b *testing.B) {
	for _, c := range []struct {
		name  string
		price func(float64) float64
	}{{"NoPrice", nil}, {"BigDearer", func(l float64) float64 { return l * (30 + l/2) }}} {
		b.Run(c.name, func(b *testing.B) {
			onSale := tenSizes(b, c.price)
			need := litre(b, "500.01 L")
			for b.Loop() {
				if _, err := coverage.IfOut(need, onSale, nil); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}
