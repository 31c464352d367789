package quantity_test

import (
	"testing"

	"github.com/shopspring/decimal"

	"boatyard.example/bottomwork/tables/quantity"
)

const (
	sp811 = "NIST SP 811 (2008), App. B"
	hb44  = "NIST Handbook 44, App. C"
)

// published compares one conversion with a printed value, to the last digit
// that is printed.
func published[D quantity.Dim](t *testing.T, source string, n string, from quantity.Unit[D], want string, to quantity.Unit[D]) {
	t.Helper()
	w := decimal.RequireFromString(want)
	got := from.Of(decimal.RequireFromString(n)).In(to, max(0, -w.Exponent()), quantity.Nearest)
	if !got.Equal(w) {
		t.Errorf("%s %s = %s %s, %s prints %s", n, from, got, to, source, want)
	}
}

func TestPublishedFactors(t *testing.T) {
	published(t, sp811+".8, foot, exact", "1", quantity.Foot, "0.3048", quantity.Metre)
	published(t, sp811+".8, inch, exact", "1", quantity.Inch, "0.0254", quantity.Metre)
	published(t, sp811+".8, square foot, exact", "1", quantity.SquareFoot, "0.09290304", quantity.SquareMetre)
	published(t, sp811+".8, mil (0.001 in), exact", "1", quantity.Mil, "25.4", quantity.Micrometre)
	published(t, hb44+", gallon, exact", "1", quantity.USGallon, "3.785411784", quantity.Litre)
	published(t, hb44+", liquid quart, exact", "1", quantity.USQuart, "0.946352946", quantity.Litre)
	published(t, sp811+".8, gallon (Imperial), exact", "1", quantity.ImperialGallon, "4.54609", quantity.Litre)
	published(t, sp811+".8, pound (avoirdupois), exact", "1", quantity.Pound, "0.45359237", quantity.Kilogram)
	published(t, sp811+".8, metric ton, exact", "1", quantity.Tonne, "1000", quantity.Kilogram)
	published(t, sp811+".8, knot, 7 digits", "1", quantity.Knot, "0.5144444", quantity.MetrePerSecond)
	published(t, sp811+".8, day, exact", "1", quantity.Day, "1440", quantity.Minute)
	// The inverses, as printed to the digits given.
	published(t, hb44+", litre in gallons", "1", quantity.Litre, "0.2641720524", quantity.USGallon)
	published(t, hb44+", litre in quarts", "1", quantity.Litre, "1.056688209", quantity.USQuart)
	published(t, hb44+", kilogram in pounds", "1", quantity.Kilogram, "2.2046226218", quantity.Pound)
	published(t, hb44+", square metre in square feet", "1", quantity.SquareMetre, "10.7639104", quantity.SquareFoot)
	// The knot by its definition, 1852 m in 3600 s, without rounding.
	if quantity.Knot.N(3600).Cmp(quantity.MetrePerSecond.N(1852)) != 0 {
		t.Error("3600 kn are not 1852 m/s")
	}
}

func TestPublishedTemperatures(t *testing.T) {
	source := sp811 + ".8, t(°C) = (t(°F) - 32) / 1.8"
	published(t, source, "32", quantity.Fahrenheit, "0", quantity.Celsius)
	published(t, source, "212", quantity.Fahrenheit, "100", quantity.Celsius)
	published(t, source, "-40", quantity.Fahrenheit, "-40", quantity.Celsius)
	published(t, source, "100", quantity.Celsius, "212", quantity.Fahrenheit)
	published(t, source, "20", quantity.Celsius, "68", quantity.Fahrenheit)
	// A span of 5 °F, such as dew point rules have it, is 2.7778 °C: 5 / 1.8.
	warm := quantity.Fahrenheit.N(46).In(quantity.Celsius, 6, quantity.Nearest)
	cold := quantity.Fahrenheit.N(41).In(quantity.Celsius, 6, quantity.Nearest)
	if got := warm.Sub(cold).Round(4); !got.Equal(decimal.RequireFromString("2.7778")) {
		t.Errorf("5 degF span = %s degC span, want 2.7778", got)
	}
}

// A US gallon of 231 cubic inches on a square foot of 144 square inches stands
// 231/144 in = 1.6041667 in = 40.745833 mm high.
func TestPublishedSpread(t *testing.T) {
	source := hb44 + ", gallon of 231 cubic inches; derived"
	published(t, source, "1", quantity.SquareMetrePerLitre, "40.745833", quantity.SquareFootPerUSGallon)
	published(t, source, "40.745833333333", quantity.SquareFootPerUSGallon, "1.0000000000", quantity.SquareMetrePerLitre)
	// Solid paint 1 mil = 25.4 um thick: 1000/25.4 m2/L, 1604.1667 ft2/US gal.
	n, err := quantity.Quotient(decimal.NewFromInt(1000), decimal.RequireFromString("25.4"), 15, quantity.Nearest)
	if err != nil {
		t.Fatal(err)
	}
	published(t, source, n.String(), quantity.SquareMetrePerLitre, "1604.1667", quantity.SquareFootPerUSGallon)
}

// Weekdays and leap years of the Gregorian calendar.
func TestPublishedDates(t *testing.T) {
	for _, c := range []struct {
		from, to, source string
		days             int
	}{
		{"2000-01-01", "2001-01-01", "ISO 8601: 2000 is a leap year", 366},
		{"1900-01-01", "1901-01-01", "ISO 8601: 1900 is a common year", 365},
		{"1970-01-01", "2000-01-01", "POSIX: 946684800 s from 1970 to 2000", 10957},
		{"1858-11-17", "2000-01-01", "Modified Julian Date of 2000-01-01 is 51544", 51544},
	} {
		from, to := date(t, c.from), date(t, c.to)
		if got := from.DaysUntil(to); got != c.days {
			t.Errorf("%s to %s: %d days, want %d (%s)", c.from, c.to, got, c.days, c.source)
		}
		if got := to.AddDays(-c.days); got != from {
			t.Errorf("%s - %d days = %s, want %s (%s)", c.to, c.days, got, c.from, c.source)
		}
	}
}
