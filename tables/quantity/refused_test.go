package quantity_test

import (
	"errors"
	"math"
	"strings"
	"testing"

	"github.com/shopspring/decimal"

	"boatyard.example/bottomwork/tables/quantity"
)

// What is not given is written as null in JSON and nowhere else; what cannot be a quantity is an error that says what was read.
func TestWhatIsNotGivenIsNull(t *testing.T) {
	var none struct {
		date   quantity.Date
		money  quantity.Money
		film   quantity.Film
		system quantity.System
	}
	for name, marshal := range map[string]func() ([]byte, error){"date": none.date.MarshalJSON, "money": none.money.MarshalJSON, "film": none.film.MarshalJSON} {
		if text, err := marshal(); string(text) != "null" || err != nil {
			t.Errorf("%s: %s, %v", name, text, err)
		}
	}
	for name, marshal := range map[string]func() ([]byte, error){
		"date": none.date.MarshalText, "date in TOML": none.date.MarshalTOML, "money": none.money.MarshalText, "film": none.film.MarshalText, "system": none.system.MarshalText,
	} {
		if text, err := marshal(); err == nil || len(text) > 0 {
			t.Errorf("%s is written as %q", name, text)
		}
	}
	if s := none.system.String(); s != "unset" {
		t.Errorf("no system is %q", s)
	}
	system := quantity.US
	if err := system.UnmarshalText([]byte("imperial")); err == nil || system != quantity.US {
		t.Errorf("read as %s, %v", system, err)
	}
	date := quantity.Date{}
	if err := date.UnmarshalTOML("2027-04-03"); err == nil || date.Given() {
		t.Errorf("a text as a TOML date: %s, %v", date, err)
	}
	if n, want := date.Weekday().String(), "Monday"; n != want {
		t.Errorf("the weekday of no date is %s", n)
	}
}

// A text too long to be an amount is refused whatever it says, and the error does not repeat all of it.
func TestTextsWithoutEnd(t *testing.T) {
	long := strings.Repeat("9", 5000)
	_, money := quantity.ParseMoney(long + " EUR")
	_, film := quantity.Parse[quantity.Film](long + " µm")
	_, odd := quantity.Parse[quantity.Film](strings.Repeat("µ", 5000))
	_, within := quantity.Parse[quantity.Film]("a" + strings.Repeat("µ", 5000))
	for name, err := range map[string]error{"money": money, "film": film, "letters of two bytes": odd, "cut within a letter": within} {
		var parse *quantity.ParseError
		if !errors.As(err, &parse) || len(err.Error()) > 1000 || strings.ContainsRune(err.Error(), '\uFFFD') {
			t.Errorf("%s: %.200v", name, err)
		}
	}
}

// Money of two currencies, and money that is not given, neither add nor compare, and the error names both.
func TestMoneyThatDoesNotAdd(t *testing.T) {
	m := func(s string) quantity.Money {
		x, err := quantity.ParseMoney(s)
		if err != nil {
			t.Fatal(err)
		}
		return x
	}
	for _, pair := range [][2]quantity.Money{{m("5 EUR"), m("5 DKK")}, {m("5 EUR"), {}}, {{}, m("5 DKK")}, {{}, {}}} {
		_, added := pair[0].Add(pair[1])
		order, compared := pair[0].Cmp(pair[1])
		if order != 0 {
			t.Errorf("%s and %s are not compared and yet ordered: %d", pair[0], pair[1], order)
		}
		for _, err := range []error{added, compared} {
			var currency *quantity.CurrencyError
			if !errors.As(err, &currency) || !strings.Contains(err.Error(), pair[0].String()) || !strings.Contains(err.Error(), pair[1].String()) {
				t.Errorf("%s and %s: %v", pair[0], pair[1], err)
			}
		}
	}
	for _, currency := range []string{"", "eur", "EURO", "EU", "E R"} {
		if x, err := quantity.NewMoney(decimal.NewFromInt(5), currency); err == nil || x.Given() {
			t.Errorf("5 of %q: %s", currency, x)
		}
	}
}

// Floats and units that make no quantity.
func TestNearRefuses(t *testing.T) {
	for _, f := range []float64{math.NaN(), math.Inf(1), math.Inf(-1)} {
		if a, err := quantity.Litre.Near(f, 2, quantity.Up); err == nil || a.Given() {
			t.Errorf("%g L: %s", f, a)
		}
	}
	for _, places := range []int32{-401, 401} {
		if a, err := quantity.Litre.Near(1, places, quantity.Up); err == nil || a.Given() {
			t.Errorf("1 L to %d places: %s", places, a)
		}
	}
	none := quantity.Volume{}.Unit()
	if a, err := none.Near(1, 2, quantity.Up); err == nil || a.Given() || none.String() != "no unit" {
		t.Errorf("1 of %s: %s, %v", none, a, err)
	}
	if a := none.Of(decimal.NewFromInt(1)); a.Given() {
		t.Errorf("1 of no unit: %s", a)
	}
	if f := (quantity.Volume{}).Float(quantity.Litre); f == f {
		t.Errorf("nothing is %g L", f)
	}
	if f := quantity.Litre.N(1).Float(none); f == f {
		t.Errorf("1 L is %g of no unit", f)
	}
}

// A text of 64 bytes is still read; one of 65 is too long to be an amount.
func TestTextsAtTheirLimit(t *testing.T) {
	for length, taken := range map[int]bool{63: true, 64: true, 65: false} {
		film := "5 mil" + strings.Repeat(" ", length-len("5 mil"))
		if got, err := quantity.Parse[quantity.Film](film); (err == nil) != taken || taken && got.String() != "5 mil" {
			t.Errorf("%d bytes of film: %s, %v", length, got, err)
		}
		price := "5 EUR" + strings.Repeat(" ", length-len("5 EUR"))
		if got, err := quantity.ParseMoney(price); (err == nil) != taken || taken && got.String() != "5 EUR" {
			t.Errorf("%d bytes of money: %s, %v", length, got, err)
		}
	}
}

// What was read is repeated whole up to 64 bytes, beyond them cut before a letter that does not fit.
func TestWhatWasReadIsCutBetweenLetters(t *testing.T) {
	for text, want := range map[string]string{
		strings.Repeat("x", 64):         strings.Repeat("x", 64),
		strings.Repeat("x", 65):         strings.Repeat("x", 64) + "…",
		strings.Repeat("x", 62) + "µµ":  strings.Repeat("x", 62) + "µ…",
		strings.Repeat("x", 63) + "µ":   strings.Repeat("x", 63) + "…",
		strings.Repeat("x", 62) + "µmm": strings.Repeat("x", 62) + "µ…",
		strings.Repeat("\x80", 65):      "…", // no letter at all
	} {
		_, err := quantity.Parse[quantity.Film](text)
		if p, ok := errors.AsType[*quantity.ParseError](err); !ok || p.Got != want {
			t.Errorf("%q: %v, want %q told", text, err, want)
		}
	}
}
