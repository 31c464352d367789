package quantity_test

import (
	"bytes"
	"encoding/json"
	"errors"
	"testing"

	"github.com/BurntSushi/toml"
	"github.com/shopspring/decimal"

	"boatyard.example/bottomwork/tables/quantity"
)

func money(t *testing.T, s string) quantity.Money {
	t.Helper()
	m, err := quantity.ParseMoney(s)
	if err != nil {
		t.Fatal(err)
	}
	return m
}

func TestMoney(t *testing.T) {
	m := money(t, "12.50 EUR")
	if m.String() != "12.50 EUR" || m.Currency() != "EUR" || !m.Amount().Equal(num("12.5")) || m.Sign() != 1 || !m.Given() {
		t.Errorf("12.50 EUR reads as %s", m)
	}
	if n, err := quantity.NewMoney(num("12.50"), "EUR"); err != nil || !n.Equal(m) || n.Equal(money(t, "12.50 USD")) {
		t.Errorf("%s, %v", n, err)
	}
	if sum, err := m.Add(money(t, "0.055 EUR")); err != nil || sum.String() != "12.555 EUR" || sum.Round(2, quantity.Up).String() != "12.56 EUR" {
		t.Errorf("%s, %v", sum, err)
	}
	if got := m.Scale(num("3")).String(); got != "37.50 EUR" {
		t.Errorf("three times: %s", got)
	}
	if c, err := m.Cmp(money(t, "12.5 EUR")); c != 0 || err != nil {
		t.Errorf("%d, %v", c, err)
	}
	if c, err := m.Cmp(money(t, "12.51 EUR")); c != -1 || err != nil {
		t.Errorf("%d, %v", c, err)
	}
	for _, o := range []quantity.Money{money(t, "12.50 USD"), {}} {
		var e *quantity.CurrencyError
		if sum, err := m.Add(o); !errors.As(err, &e) || sum.Given() {
			t.Errorf("%s + %s = %s, %v", m, o, sum, err)
		}
		if _, err := o.Cmp(m); !errors.As(err, &e) {
			t.Errorf("%s Cmp %s: %v", o, m, err)
		}
	}
	var none quantity.Money
	if _, err := none.Add(none); err == nil {
		t.Error("nothing and nothing were added")
	}
	if none.Scale(num("2")).Given() || none.Round(2, quantity.Up).Given() || none.String() != "not given" || none.Currency() != "" || !none.IsZero() {
		t.Error("something came from nothing")
	}
	for _, s := range []string{"", "12.50", "EUR", "EUR 12.50", "12,50 EUR", "12.50 eur", "12.50 EURO", "12.50 EU", "€12.50", "12.50 €", "1e3 EUR", "1 EUR EUR"} {
		var p *quantity.ParseError
		if got, err := quantity.ParseMoney(s); !errors.As(err, &p) || p.Got != s || got.Given() {
			t.Errorf("%q reads as %s, %v", s, got, err)
		}
	}
	if m.Scale(decimal.New(1, 403)).Given() || m.Scale(decimal.New(1, -399)).Given() { // 12.50 is 1250 hundredths
		t.Error("an absurd amount came of scaling")
	}
	if _, err := quantity.NewMoney(num("1"), "euro"); err == nil {
		t.Error("euro is a currency of three letters")
	}
	if _, err := quantity.NewMoney(decimal.New(1, 1<<30), "EUR"); err == nil {
		t.Error("an absurd exponent was taken")
	}
}

func TestMoneyForms(t *testing.T) {
	type doc struct{ M quantity.Money }
	want := doc{money(t, "12.50 EUR")}
	var buf bytes.Buffer
	var got doc
	err := toml.NewEncoder(&buf).Encode(want)
	if err == nil {
		_, err = toml.Decode(buf.String(), &got)
	}
	if err != nil || got.M.String() != "12.50 EUR" {
		t.Errorf("TOML: %s, %v", got.M, err)
	}
	data, err := json.Marshal(want)
	if string(data) != `{"M":"12.50 EUR"}` || err != nil {
		t.Errorf("JSON: %s, %v", data, err)
	}
	if err := json.Unmarshal(data, &got); err != nil || got.M.String() != "12.50 EUR" {
		t.Errorf("JSON: %s, %v", got.M, err)
	}
	for _, in := range []string{"12.5", "12", "true", `"12.5"`} {
		if _, err := toml.Decode("M = "+in, &got); err == nil {
			t.Errorf("TOML took %s as %s", in, got.M)
		}
		if err := json.Unmarshal([]byte(`{"M":`+in+`}`), &got); err == nil {
			t.Errorf("JSON took %s as %s", in, got.M)
		}
	}
	if err := json.Unmarshal([]byte(`{"M":null}`), &got); err != nil || got.M.Given() {
		t.Errorf("JSON null: %s, %v", got.M, err)
	}
}

func TestYesNo(t *testing.T) {
	type doc struct {
		Y quantity.YesNo `toml:",omitzero"`
	}
	for _, c := range []struct {
		y                quantity.YesNo
		word, toml, json string
		said, yes        bool
	}{
		{quantity.Yes, "yes", "Y = true\n", `{"Y":true}`, true, true},
		{quantity.No, "no", "Y = false\n", `{"Y":false}`, true, false},
		{quantity.NotSaid, "not said", "", `{"Y":null}`, false, false},
	} {
		if c.y.String() != c.word || c.y.Said() != c.said || c.y.True() != c.yes || c.y.IsZero() == c.said {
			t.Errorf("%s: said %t, true %t", c.y, c.y.Said(), c.y.True())
		}
		var buf bytes.Buffer
		if err := toml.NewEncoder(&buf).Encode(doc{c.y}); err != nil || buf.String() != c.toml {
			t.Errorf("TOML: %q, %v", buf.String(), err)
		}
		var got doc
		if _, err := toml.Decode(buf.String(), &got); err != nil || got.Y != c.y {
			t.Errorf("TOML: %s, %v", got.Y, err)
		}
		data, err := json.Marshal(doc{c.y})
		if string(data) != c.json || err != nil {
			t.Errorf("JSON: %s, %v", data, err)
		}
		got.Y = quantity.Yes
		if err := json.Unmarshal(data, &got); err != nil || got.Y != c.y {
			t.Errorf("JSON: %s, %v", got.Y, err)
		}
	}
	for _, in := range []string{`"yes"`, `"true"`, "1", "0"} {
		var got doc
		if _, err := toml.Decode("Y = "+in, &got); err == nil || got.Y.Said() {
			t.Errorf("TOML took %s as %s", in, got.Y)
		}
		if err := json.Unmarshal([]byte(`{"Y":`+in+`}`), &got); err == nil || got.Y.Said() {
			t.Errorf("JSON took %s as %s", in, got.Y)
		}
	}
	if _, err := quantity.NotSaid.MarshalText(); err == nil || quantity.YesNo(7).Said() {
		t.Error("no answer was written, or an unknown one said")
	}
}

// A currency is three capital letters from A to Z, the first and the last of them too.
func TestLettersOfACurrency(t *testing.T) {
	for currency, taken := range map[string]bool{"AAA": true, "ZZZ": true, "ZAR": true, "EU@": false, "EU[": false, "eur": false, "EU": false, "EURO": false} {
		if m, err := quantity.ParseMoney("1 " + currency); (err == nil) != taken || taken && m.String() != "1 "+currency {
			t.Errorf("%s: %s, %v", currency, m, err)
		}
	}
}

// Yes and no are read from the text that they are written as, and nothing else is.
func TestYesNoAsText(t *testing.T) {
	for text, want := range map[string]quantity.YesNo{"true": quantity.Yes, "false": quantity.No} {
		var y quantity.YesNo
		if err := y.UnmarshalText([]byte(text)); err != nil || y != want {
			t.Errorf("%s reads as %v, %v", text, y, err)
		}
		if back, err := want.MarshalText(); err != nil || string(back) != text {
			t.Errorf("%v is written %q, %v", want, back, err)
		}
	}
	var y quantity.YesNo
	if err := y.UnmarshalText([]byte("yes")); err == nil || y.Said() {
		t.Errorf("yes reads as %v", y)
	}
}
