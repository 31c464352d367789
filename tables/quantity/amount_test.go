package quantity_test

import (
	"bytes"
	"encoding/json"
	"math"
	"testing"

	"github.com/BurntSushi/toml"
	"github.com/google/go-cmp/cmp"
	"github.com/shopspring/decimal"

	"boatyard.example/bottomwork/tables/quantity"
)

func num(s string) decimal.Decimal { return decimal.RequireFromString(s) }

func parse[Q quantity.Quantity](t *testing.T, s string) Q {
	t.Helper()
	q, err := quantity.Parse[Q](s)
	if err != nil {
		t.Fatal(err)
	}
	return q
}

// sweep holds every promise that is made for every unit of a dimension. files
// and prints are the forms, typed from the package's promise.
func sweep[D quantity.Dim](t *testing.T, units []quantity.Unit[D], files, prints []string) {
	t.Helper()
	for i, u := range units {
		if u.String() != files[i] || u.Symbol() != prints[i] {
			t.Errorf("unit %d is %q, %q, want %q, %q", u, u, u.Symbol(), files[i], prints[i])
		}
		for _, n := range []string{"0", "1", "-1", "15.20", "0.001", "-3.5", "123456789012345678", "0.00000000000000001"} {
			a := u.Of(num(n))
			roundTrip(t, a, n)
			var p quantity.Amount[D]
			if err := p.UnmarshalText([]byte(n + " " + prints[i])); err != nil || !same(a, p) {
				t.Errorf("the printed form of %s reads as %s, %v", a, p, err)
			}
			for _, v := range units {
				there := a.To(v, 40, quantity.Nearest)
				if back := there.To(u, 25, quantity.Nearest); !back.Equal(a) {
					t.Errorf("%s is %s, which is %s", a, there, back)
				}
				f, _ := a.In(v, 40, quantity.Nearest).Float64()
				// Four rounded steps; the offset of a temperature cancels digits.
				tolerance := 1e-15 * math.Abs(f)
				if files[0] == "degC" {
					tolerance = 1e-15 * (math.Abs(f) + 100)
				}
				if got := a.Float(v); math.Abs(got-f) > tolerance {
					t.Errorf("%s in %s as float is %v, as decimal %v", a, v, got, f)
				}
				for _, m := range []string{"1", "15.2", "-3.5"} {
					b := v.Of(num(m))
					want := a.In(units[0], 40, quantity.Nearest).Cmp(b.In(units[0], 40, quantity.Nearest))
					if got := a.Cmp(b); got != want || b.Cmp(a) != -want {
						t.Errorf("%s Cmp %s is %d, and %d the other way, want %d", a, b, got, b.Cmp(a), want)
					}
				}
			}
		}
	}
	beyond := units[len(units)-1] + 1
	if a := beyond.N(1); a.Given() || beyond.String() != "no unit" {
		t.Errorf("there is a unit %s after the last", beyond)
	}
}

func same[D quantity.Dim](a, b quantity.Amount[D]) bool {
	return a.Unit() == b.Unit() && a.String() == b.String() && a.Equal(b)
}

// roundTrip writes and reads a in every form; number and unit stay as written.
func roundTrip[D quantity.Dim](t *testing.T, a quantity.Amount[D], n string) {
	t.Helper()
	if want := n + " "; len(a.String()) <= len(want) || a.String()[:len(want)] != want {
		t.Errorf("%s is written %q", n, a)
	}
	type doc struct{ A quantity.Amount[D] }
	text, err := a.MarshalText()
	var fromText doc
	if err == nil {
		err = fromText.A.UnmarshalText(text)
	}
	if err != nil || !same(a, fromText.A) {
		t.Errorf("text: %s came back as %s, %v", a, fromText.A, err)
	}
	var buf bytes.Buffer
	var fromTOML doc
	err = toml.NewEncoder(&buf).Encode(doc{a})
	if err == nil {
		_, err = toml.Decode(buf.String(), &fromTOML)
	}
	if err != nil || !same(a, fromTOML.A) {
		t.Errorf("TOML: %s came back as %s, %v", a, fromTOML.A, err)
	}
	data, err := json.Marshal(doc{a})
	var fromJSON doc
	if err == nil {
		err = json.Unmarshal(data, &fromJSON)
	}
	if err != nil || !same(a, fromJSON.A) {
		t.Errorf("JSON: %s came back as %s, %v", a, fromJSON.A, err)
	}
}

// of lets a list of units be typed without naming the dimension.
func of[D quantity.Dim](units ...quantity.Unit[D]) []quantity.Unit[D] { return units }

func TestEveryUnit(t *testing.T) {
	type l = []string
	sweep(t, of(quantity.Metre, quantity.Foot, quantity.Inch, quantity.Millimetre), l{"m", "ft", "in", "mm"}, l{"m", "ft", "in", "mm"})
	sweep(t, of(quantity.SquareMetre, quantity.SquareFoot), l{"m2", "ft2"}, l{"m²", "ft²"})
	sweep(t, of(quantity.Micrometre, quantity.Mil), l{"um", "mil"}, l{"µm", "mil"})
	sweep(t, of(quantity.Litre, quantity.Millilitre, quantity.USGallon, quantity.USQuart, quantity.ImperialGallon),
		l{"L", "mL", "US gal", "US qt", "imp gal"}, l{"L", "mL", "US gal", "US qt", "imp gal"})
	sweep(t, of(quantity.SquareMetrePerLitre, quantity.SquareFootPerUSGallon), l{"m2/L", "ft2/US gal"}, l{"m²/L", "ft²/US gal"})
	sweep(t, of(quantity.Percent), l{"%"}, l{"%"})
	sweep(t, of(quantity.Kilogram, quantity.Pound, quantity.Tonne), l{"kg", "lb", "t"}, l{"kg", "lb", "t"})
	sweep(t, of(quantity.KilogramPerLitre), l{"kg/L"}, l{"kg/L"})
	sweep(t, of(quantity.Celsius, quantity.Fahrenheit), l{"degC", "degF"}, l{"°C", "°F"})
	sweep(t, of(quantity.Knot, quantity.MetrePerSecond), l{"kn", "m/s"}, l{"kn", "m/s"})
	sweep(t, of(quantity.Minute, quantity.Hour, quantity.Day), l{"min", "h", "d"}, l{"min", "h", "d"})
	sweep(t, of(quantity.Month, quantity.Year), l{"months", "years"}, l{"months", "years"})
	sweep(t, of(quantity.SquareMetrePerHour, quantity.SquareFootPerHour), l{"m2/h", "ft2/h"}, l{"m²/h", "ft²/h"})
	sweep(t, of(quantity.Millivolt, quantity.Volt), l{"mV", "V"}, l{"mV", "V"})
	sweep(t, of(quantity.MicrogramPerSquareCentimetreDay), l{"ug/cm2/d"}, l{"µg/cm²/d"})
}

func TestCmpIsExact(t *testing.T) {
	for _, c := range []struct {
		a, b string
		want int
	}{
		{"1 ft", "0.3048 m", 0},
		{"1 ft", "0.30480000000000001 m", -1},
		{"1 ft", "0.30479999999999999 m", 1},
		{"1.00 m", "1 m", 0},
		{"0.00000000000000001 m", "0.00000000000000002 m", -1},
		{"-1 ft", "-0.3048 m", 0},
		{"-1 ft", "0 m", -1},
		{"999999999999999999 m", "999999999999999998 m", 1},
	} {
		a, b := parse[quantity.Length](t, c.a), parse[quantity.Length](t, c.b)
		if a.Cmp(b) != c.want || b.Cmp(a) != -c.want || a.Equal(b) != (c.want == 0) {
			t.Errorf("%s Cmp %s = %d, %d the other way, want %d", a, b, a.Cmp(b), b.Cmp(a), c.want)
		}
	}
	freezing := quantity.Celsius.N(0)
	if !freezing.Equal(quantity.Fahrenheit.N(32)) {
		t.Error("0 degC is not 32 degF")
	}
	if just := parse[quantity.Temperature](t, "32.00000000000001 degF"); freezing.Cmp(just) != -1 {
		t.Error("0 degC is not just under 32.00000000000001 degF")
	}
	var none quantity.Temperature
	if none.Cmp(quantity.Celsius.N(-300)) != -1 || quantity.Celsius.N(-300).Cmp(none) != 1 || !none.Equal(quantity.Temperature{}) {
		t.Error("not given is not less than every temperature")
	}
	if none.Cmp(quantity.Fahrenheit.N(-300)) != -1 || quantity.Fahrenheit.N(-300).Cmp(none) != 1 {
		t.Error("not given is not less by one in the second unit")
	}
	big := quantity.Metre.Of(decimal.New(1, 400))
	if big.Cmp(quantity.Foot.Of(decimal.New(3, 400))) != 1 || big.Cmp(quantity.Foot.Of(decimal.New(4, 400))) != -1 {
		t.Error("amounts beyond the range of float are compared wrongly")
	}
}

// Equal amounts are equal however their floats came out, and the next decimal
// beside them is not.
func TestCmpBesideEqual(t *testing.T) {
	hair := decimal.New(1, -30)
	for k := int64(-3000); k <= 3000; k++ {
		n := decimal.New(k, -2)
		ft, m := quantity.Foot.Of(n), n.Mul(num("0.3048"))
		gal, l := quantity.USGallon.Of(n), n.Mul(num("3.785411784"))
		degC, f := quantity.Celsius.Of(n), n.Mul(num("1.8")).Add(num("32"))
		for want, d := range map[int]decimal.Decimal{0: {}, 1: hair.Neg(), -1: hair} {
			if got := ft.Cmp(quantity.Metre.Of(m.Add(d))); got != want {
				t.Fatalf("%s Cmp %s m + %s = %d, want %d", ft, m, d, got, want)
			}
			if got := gal.Cmp(quantity.Litre.Of(l.Add(d))); got != want {
				t.Fatalf("%s Cmp %s L + %s = %d, want %d", gal, l, d, got, want)
			}
			if got := degC.Cmp(quantity.Fahrenheit.Of(f.Add(d))); got != want {
				t.Fatalf("%s Cmp %s degF + %s = %d, want %d", degC, f, d, got, want)
			}
		}
	}
}

func TestSums(t *testing.T) {
	for _, c := range []struct{ got, want interface{ String() string } }{
		{quantity.Foot.N(1).Add(quantity.Foot.N(2)), quantity.Foot.N(3)},
		{quantity.Metre.N(1).Add(quantity.Foot.N(1)), quantity.Metre.Of(num("1.3048"))},
		{quantity.Foot.N(1).Add(quantity.Inch.N(6)), quantity.Metre.Of(num("0.4572"))},
		{quantity.Litre.N(10).Sub(quantity.USGallon.N(1)), quantity.Litre.Of(num("6.214588216"))},
		{quantity.Hour.N(1).Add(quantity.Day.N(1)), quantity.Minute.N(1500)},
		{quantity.Year.N(1).Add(quantity.Month.N(6)), quantity.Month.N(18)},
		{quantity.Volt.N(-1).Add(quantity.Millivolt.N(50)), quantity.Millivolt.N(-950)},
		{quantity.Micrometre.N(100).Sub(quantity.Mil.N(1)), quantity.Micrometre.Of(num("74.6"))},
		// Derived: 1 + 1852/3600 = 1.514444…, without a finite decimal.
		{quantity.MetrePerSecond.N(1).Add(quantity.Knot.N(1)), quantity.MetrePerSecond.Of(num("1.514444444444"))},
		// Derived: 1 + 0.09290304/3.785411784 = 1 + 144/(231·25.4) = 1.02454238…
		{quantity.SquareMetrePerLitre.N(1).Add(quantity.SquareFootPerUSGallon.N(1)), quantity.SquareMetrePerLitre.Of(num("1.024542386747"))},
		// However many places: a sum is not rounded where it need not be.
		{quantity.Foot.N(1).Add(quantity.Metre.Of(num("0.0000000000000001"))), quantity.Metre.Of(num("0.3048000000000001"))},
		{quantity.Celsius.N(20).Sub(quantity.Celsius.N(15)), quantity.Celsius.N(5)},
		{quantity.Celsius.N(20).Sub(quantity.Fahrenheit.N(50)), quantity.Temperature{}},
		{quantity.Metre.N(1).Add(quantity.Length{}), quantity.Length{}},
		{quantity.Length{}.Sub(quantity.Metre.N(1)), quantity.Length{}},
		{quantity.Metre.Of(num("1.50")).Scale(num("2")), quantity.Metre.Of(num("3.00"))},
		{quantity.Length{}.Scale(num("2")), quantity.Length{}},
	} {
		if c.got.String() != c.want.String() {
			t.Errorf("got %s, want %s", c.got, c.want)
		}
	}
}

func TestNotGiven(t *testing.T) {
	var none quantity.Film
	nought := quantity.Micrometre.N(0)
	if none.Given() || !none.IsZero() || !nought.Given() || nought.IsZero() || none.Equal(nought) {
		t.Error("not given and 0 um are mixed up")
	}
	if !math.IsNaN(none.Float(quantity.Mil)) || !math.IsNaN(nought.Float(0)) {
		t.Error("the float of nothing is a number")
	}
	if none.To(quantity.Mil, 1, quantity.Up).Given() || nought.To(0, 1, quantity.Up).Given() || none.In(quantity.Mil, 2, quantity.Up).Sign() != 0 {
		t.Error("nothing was converted to something")
	}
	if _, err := none.MarshalText(); err == nil {
		t.Error("nothing has a text")
	}
	type doc struct {
		A quantity.Film   `json:"a,omitzero"`
		B quantity.Film   `json:"b"`
		C quantity.Date   `json:"c,omitzero"`
		D quantity.Money  `json:"d,omitzero"`
		E quantity.YesNo  `json:"e,omitzero"`
		F quantity.Months `json:"f,omitzero"`
	}
	data, err := json.Marshal(doc{F: quantity.Month.N(0)})
	if string(data) != `{"b":null,"f":"0 months"}` || err != nil {
		t.Errorf("%s, %v", data, err)
	}
	d := doc{B: quantity.Mil.N(1)}
	if err := json.Unmarshal(data, &d); err != nil || d.B.Given() {
		t.Errorf("null left %s, %v", d.B, err)
	}
	if quantity.Metre.Of(decimal.New(1, 1<<30)).Given() {
		t.Error("an absurd exponent was taken")
	}
	// The TOML writer looks into structs for omitempty; it must not fall over.
	var buf bytes.Buffer
	omit := struct {
		A quantity.Film  `toml:"a,omitempty"`
		D quantity.Money `toml:"d,omitempty"`
	}{A: quantity.Mil.N(5)}
	if err := toml.NewEncoder(&buf).Encode(omit); err == nil {
		t.Errorf("money not given was written: %s", buf.String())
	}
	if diff := cmp.Diff(doc{A: quantity.Mil.N(5)}, doc{A: quantity.Micrometre.N(127)}); diff != "" {
		t.Errorf("go-cmp does not use Equal: %s", diff)
	}
}

func TestRounding(t *testing.T) {
	for _, c := range []struct {
		num, den, nearest, up, down string
		places                      int32
	}{
		{"1", "2", "0.500", "0.500", "0.500", 3},
		{"1", "3", "0.33", "0.34", "0.33", 2},
		{"2", "3", "0.67", "0.67", "0.66", 2},
		{"5", "2", "3", "3", "2", 0},
		{"-5", "2", "-3", "-3", "-2", 0},
		{"5", "-2", "-3", "-3", "-2", 0},
		{"-1", "-3", "0", "1", "0", 0},
		{"-1", "3", "0", "-1", "0", 0},
		{"2.4999999999999999999", "1", "2", "3", "2", 0},
		{"2.5000", "1", "3", "3", "2", 0},
		{"1250", "1", "1300", "1300", "1200", -2},
		{"1249", "1", "1200", "1300", "1200", -2},
		{"0", "7", "0.0", "0.0", "0.0", 1},
		{"1", "0.003", "333.33", "333.34", "333.33", 2},
	} {
		for r, want := range map[quantity.Rounding]string{quantity.Nearest: c.nearest, quantity.Up: c.up, quantity.Down: c.down} {
			got, err := quantity.Quotient(num(c.num), num(c.den), c.places, r)
			if err != nil || !got.Equal(num(want)) || got.Exponent() != -c.places {
				t.Errorf("%s / %s to %d places, rounding %d = %s, %v, want %s", c.num, c.den, c.places, r, got, err, want)
			}
		}
	}
	for _, c := range []struct {
		num, den decimal.Decimal
		places   int32
		r        quantity.Rounding
	}{
		{num("1"), num("0"), 2, quantity.Nearest},
		{num("1"), num("0.00"), 2, quantity.Nearest},
		{num("1"), num("3"), 401, quantity.Nearest},
		{num("1"), num("3"), -401, quantity.Nearest},
		{num("1"), num("3"), math.MinInt32, quantity.Nearest},
		{decimal.New(1, 401), num("3"), 2, quantity.Nearest},
		{decimal.New(1, -401), num("3"), 2, quantity.Nearest},
		{decimal.New(1, 1<<30), num("3"), 2, quantity.Nearest},
		{num("1"), decimal.New(1, -1<<30), 2, quantity.Nearest},
		{num("1"), num("3"), 2, 3},
	} {
		if got, err := quantity.Quotient(c.num, c.den, c.places, c.r); err == nil {
			t.Errorf("%d places, rounding %d gave %s", c.places, c.r, got)
		}
	}
	for _, n := range []int32{400, -400} { // as far as they are taken
		for _, c := range []struct {
			num    decimal.Decimal
			places int32
		}{{num("1"), n}, {decimal.New(1, n), 2}} {
			if _, err := quantity.Quotient(c.num, num("4"), c.places, quantity.Nearest); err != nil {
				t.Errorf("%s to %d places: %v", c.num, c.places, err)
			}
		}
		if !quantity.Metre.Of(decimal.New(1, n)).Given() {
			t.Errorf("an exponent of %d is refused", n)
		}
		beyond := n + n/400
		if quantity.Metre.Of(decimal.New(1, beyond)).Given() {
			t.Errorf("an exponent of %d is taken", beyond)
		}
	}
	// Places beyond those are taken as the last of them, in its own unit and in another.
	for asked, taken := range map[int32]int32{400: 400, 401: 400, math.MaxInt32: 400, -400: -400, -401: -400, math.MinInt32: -400} {
		for _, u := range of(quantity.Metre, quantity.Foot) {
			if got := quantity.Metre.N(1).In(u, asked, quantity.Nearest); got.Exponent() != -taken {
				t.Errorf("1 m in %s to %d places has %d, want %d", u, asked, -got.Exponent(), taken)
			}
		}
	}
	// Paint up, life down, and a conversion is rounded once.
	if got := quantity.USGallon.N(1).To(quantity.Litre, 1, quantity.Up).String(); got != "3.8 L" {
		t.Errorf("1 US gal up is %s", got)
	}
	if got := quantity.Month.N(23).To(quantity.Year, 0, quantity.Down).String(); got != "1 year" {
		t.Errorf("23 months down are %s", got)
	}
	if got := quantity.Metre.Of(num("15.25")).In(quantity.Metre, 1, quantity.Nearest); !got.Equal(num("15.3")) {
		t.Errorf("15.25 m to one place is %s", got)
	}
}

func TestNear(t *testing.T) {
	for _, c := range []struct {
		f      float64
		places int32
		r      quantity.Rounding
		want   string
	}{
		{0.1 + 0.2, 3, quantity.Up, "0.300 m"}, // no binary noise rounded up
		{15.2, 2, quantity.Nearest, "15.20 m"},
		{-2.5, 0, quantity.Nearest, "-3 m"},
		{1e-300, 2, quantity.Up, "0.01 m"},
		{123456.7, -3, quantity.Down, "123000 m"},
		{0, 1, quantity.Up, "0.0 m"},
		// Twelve significant digits are taken: the thirteenth rounds the twelfth.
		{1.000000000004, 12, quantity.Up, "1.000000000000 m"},
		{1.00000000001, 12, quantity.Down, "1.000000000010 m"},
	} {
		got, err := quantity.Metre.Near(c.f, c.places, c.r)
		if err != nil || got.String() != c.want {
			t.Errorf("%v to %d places = %s, %v, want %s", c.f, c.places, got, err, c.want)
		}
	}
	for _, f := range []float64{math.NaN(), math.Inf(1), math.Inf(-1)} {
		if got, err := quantity.Metre.Near(f, 2, quantity.Nearest); err == nil || got.Given() {
			t.Errorf("%v became %s", f, got)
		}
	}
	if _, err := (quantity.Metre + 9).Near(1, 2, quantity.Nearest); err == nil {
		t.Error("an invalid unit was taken")
	}
	if _, err := quantity.Metre.Near(1, 1000, quantity.Nearest); err == nil {
		t.Error("1000 places were taken")
	}
}

// What was written in feet comes back from physics as the nearest float.
func TestFloatIsClean(t *testing.T) {
	if got := quantity.Foot.N(50).Float(quantity.Metre); got != 15.24 {
		t.Errorf("50 ft are %v m", got)
	}
	if got := quantity.Foot.N(50).Float(quantity.Foot); got != 50 {
		t.Errorf("50 ft are %v ft", got)
	}
	if got := quantity.Fahrenheit.N(212).Float(quantity.Celsius); got != 100 {
		t.Errorf("212 degF are %v degC", got)
	}
}

func BenchmarkCmp(b *testing.B) {
	x, y, z := quantity.Metre.N(1), quantity.Foot.N(3), quantity.Metre.Of(num("0.9144"))
	b.Run("far", func(b *testing.B) {
		b.ReportAllocs()
		for b.Loop() {
			x.Cmp(y)
		}
	})
	b.Run("equal", func(b *testing.B) {
		b.ReportAllocs()
		for b.Loop() {
			z.Cmp(y)
		}
	})
}
