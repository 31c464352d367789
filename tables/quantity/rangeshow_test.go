package quantity_test

import (
	"testing"

	"github.com/shopspring/decimal"

	"boatyard.example/bottomwork/tables/quantity"
)

func TestRangeShow(t *testing.T) {
	film := quantity.Range[quantity.Film]{Low: quantity.Micrometre.N(40), Typical: quantity.Micrometre.N(50), High: quantity.Micrometre.N(60)}
	euro := func(s string) quantity.Money {
		m, err := quantity.ParseMoney(s)
		if err != nil {
			t.Fatal(err)
		}
		return m
	}
	day := func(s string) quantity.Date {
		d, err := quantity.ParseDate(s)
		if err != nil {
			t.Fatal(err)
		}
		return d
	}
	for _, tt := range []struct{ got, want string }{
		{film.Show(quantity.Metric), "40 to 60 µm (1.57 to 2.36 mil)"},
		{film.Show(quantity.US), "1.57 to 2.36 mil (40 to 60 µm)"},
		{quantity.Exactly(quantity.Month.N(24)).Show(quantity.Metric), "24 months"},
		{quantity.Range[float64]{Low: 1.5, Typical: 1.75, High: 2}.Show(quantity.Metric), "1.5 to 2"},
		{quantity.Exactly(2.0).Show(quantity.Metric), "2"},
		{quantity.Exactly("x").Show(quantity.Metric), "x"},
		{quantity.Range[int]{Low: 2, Typical: 3, High: 4}.Show(quantity.Metric), "2 to 4"},
		{quantity.Exactly(2).Show(quantity.US), "2"},
		{quantity.Range[quantity.Money]{Low: euro("10.00 EUR"), Typical: euro("11 EUR"), High: euro("12.50 EUR")}.Show(quantity.Metric), "10.00 to 12.50 EUR"},
		{quantity.Range[quantity.Money]{Low: euro("10.00 EUR"), High: euro("12.50 GBP")}.Show(quantity.Metric), "10.00 EUR to 12.50 GBP"},
		{quantity.Range[quantity.Money]{Low: euro("10 EUR"), High: euro("10.00 EUR")}.Show(quantity.Metric), "10 EUR"},
		{quantity.Exactly(euro("0 EUR")).Show(quantity.Metric), "0 EUR"},
		{quantity.Range[quantity.Money]{Low: euro("10 EUR")}.Show(quantity.Metric), "10 EUR or more"},
		{quantity.Range[quantity.Money]{High: euro("10 EUR")}.Show(quantity.Metric), "up to 10 EUR"},
		{quantity.Range[quantity.Money]{Typical: euro("10 EUR")}.Show(quantity.Metric), "not given"},
		{quantity.Range[quantity.Date]{Low: day("2027-04-03"), High: day("2027-05-01")}.Show(quantity.Metric), "2027-04-03 to 2027-05-01"},
		{quantity.Range[decimal.Decimal]{Low: decimal.New(25, -1), High: decimal.New(4, 0)}.Show(quantity.Metric), "2.5 to 4"},
		{quantity.Range[quantity.Film]{}.Show(quantity.Metric), "not given"},
	} {
		if tt.got != tt.want {
			t.Errorf("got %q, want %q", tt.got, tt.want)
		}
	}
}
