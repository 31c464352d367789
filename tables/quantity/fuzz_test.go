package quantity_test

import (
	"testing"

	"boatyard.example/bottomwork/tables/quantity"
)

// Whatever is read as money or as a day is written, read again and the same. Nothing else is taken.
func FuzzParseMoneyAndDate(f *testing.F) {
	for _, s := range []string{"95.00 EUR", "-1 USD", "1,5 GBP", "EUR", "1e9 EUR", "95.00 eur", "2027-04-03", "2028-02-29", "2027-02-29", "0000-01-01", "9999-12-31", " 2027-04-03", "2027-4-3", "\x00"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		if m, err := quantity.ParseMoney(s); err == nil {
			again, err := quantity.ParseMoney(m.String())
			if err != nil || !again.Equal(m) || again.String() != m.String() {
				t.Errorf("%q reads as %s, then as %s, %v", s, m, again, err)
			}
		} else if m.Given() {
			t.Errorf("%q: %s and %v", s, m, err)
		}
		if d, err := quantity.ParseDate(s); err == nil {
			again, err := quantity.ParseDate(d.String())
			if err != nil || again != d || !d.Given() || d.Year() < 9999 && d.AddDays(1).DaysUntil(d) != -1 {
				t.Errorf("%q reads as %s, then as %s, %v", s, d, again, err)
			}
		} else if d.Given() {
			t.Errorf("%q: %s and %v", s, d, err)
		}
	})
}

// Each kind of quantity is written as it is read.
func FuzzParseEach(f *testing.F) {
	for _, s := range []string{"5 mil", "125 um", "45 degF", "-2 degC", "273.15 K", "50 ft", "3 in", "12 kn", "5 m/s", "14 months", "20 h", "70 %", "1.4 kg/L", "-850 mV", "12 m2/L", "400 sq ft", "5"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		writtenAgain[quantity.Length](t, s)
		writtenAgain[quantity.Film](t, s)
		writtenAgain[quantity.Area](t, s)
		writtenAgain[quantity.Temperature](t, s)
		writtenAgain[quantity.Speed](t, s)
		writtenAgain[quantity.Duration](t, s)
		writtenAgain[quantity.Months](t, s)
		writtenAgain[quantity.Share](t, s)
		writtenAgain[quantity.Mass](t, s)
		writtenAgain[quantity.Density](t, s)
		writtenAgain[quantity.Spread](t, s)
		writtenAgain[quantity.Potential](t, s)
	})
}

func writtenAgain[Q interface {
	quantity.Quantity
	Given() bool
	Equal(Q) bool
	Show(quantity.System) string
	String() string
}](t *testing.T, s string,
) {
	t.Helper()
	v, err := quantity.Parse[Q](s)
	if err != nil {
		if v.Given() {
			t.Errorf("%q: %s and %v", s, v, err)
		}
		return
	}
	again, err := quantity.Parse[Q](v.String())
	if err != nil || !again.Equal(v) || again.String() != v.String() {
		t.Errorf("%q reads as %s, then as %s, %v", s, v, again, err)
	}
	if v.Show(quantity.Metric) == "" || v.Show(quantity.US) == "" {
		t.Errorf("%q is shown as nothing", s)
	}
}
