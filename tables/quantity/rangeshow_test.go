package quantity_test

import (
	"testing"

	"boatyard.example/bottomwork/tables/quantity"
)

func TestRangeShow(t *testing.T) {
	film := quantity.Range[quantity.Film]{Low: quantity.Micrometre.N(40), Typical: quantity.Micrometre.N(50), High: quantity.Micrometre.N(60)}
	for _, tt := range []struct{ got, want string }{
		{film.Show(quantity.Metric), "40 to 60 µm (1.57 to 2.36 mil)"},
		{film.Show(quantity.US), "1.57 to 2.36 mil (40 to 60 µm)"},
		{quantity.Exactly(quantity.Month.N(24)).Show(quantity.Metric), "24 months"},
		{quantity.Range[float64]{Low: 1.5, Typical: 1.75, High: 2}.Show(quantity.Metric), "1.5 to 2"},
		{quantity.Exactly(2.0).Show(quantity.Metric), "2"},
		{quantity.Exactly("x").Show(quantity.Metric), "not given"},
		{quantity.Range[quantity.Film]{}.Show(quantity.Metric), "not given"},
	} {
		if tt.got != tt.want {
			t.Errorf("got %q, want %q", tt.got, tt.want)
		}
	}
}
