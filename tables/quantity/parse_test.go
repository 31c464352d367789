package quantity_test

import (
	"encoding/json"
	"errors"
	"slices"
	"strings"
	"testing"

	"github.com/BurntSushi/toml"

	"boatyard.example/bottomwork/tables/quantity"
)

func TestParseTakes(t *testing.T) {
	for in, want := range map[string]string{
		"15.20 m": "15.20 m", "+3 ft": "3 ft", "-0.5 in": "-0.5 in", "7m": "7 m", "7   m": "7 m", " 7 m ": "7 m",
		"007 m": "7 m", "0.0 m": "0.0 m", "123456789012345678 m": "123456789012345678 m",
	} {
		if got := parse[quantity.Length](t, in).String(); got != want {
			t.Errorf("%q reads as %q, want %q", in, got, want)
		}
	}
	for in, want := range map[string]string{"5 µm": "5 um", "5 μm": "5 um", "5 mil": "5 mil"} {
		if got := parse[quantity.Film](t, in).String(); got != want {
			t.Errorf("%q reads as %q, want %q", in, got, want)
		}
	}
	for in, want := range map[string]string{
		"1 month": "1 month", "1 months": "1 month", "24 months": "24 months", "2 years": "2 years", "1 year": "1 year",
		"2 year": "2 years", "1.5 years": "1.5 years", "0 months": "0 months", "1.0 month": "1.0 month",
	} {
		if got := parse[quantity.Months](t, in).String(); got != want {
			t.Errorf("%q reads as %q, want %q", in, got, want)
		}
	}
	if got := parse[quantity.Share](t, "45%").String(); got != "45 %" {
		t.Errorf("45%% reads as %q", got)
	}
	if got := quantity.Units[quantity.Volume](); !slices.Equal(got, []string{"L", "mL", "US gal", "US qt", "imp gal"}) {
		t.Errorf("units of volume: %q", got)
	}
}

func TestParseRefuses(t *testing.T) {
	for _, in := range []string{
		"", " ", "m", "15", "15.2", "15,2 m", "1,500 m", "1.5.2 m", "1e3 m", "1E3 m", ".5 m", "5. m", "- 5 m", "--5 m", "+-5 m",
		"5 M", "5 meter", "5 m m", "5 m2", "5\tm", "5\u00a0m", "5 m\x00", "\x005 m", "\xff", "0x10 m", "NaN m", "Inf m", "½ m",
		"٣ m", "1234567890123456789 m", "0.123456789012345678 m", "1_000 m", "5 ft 6 in", strings.Repeat(" ", 80) + "5 m",
		"−5 m", // a Unicode minus
	} {
		l := quantity.Metre.N(3)
		err := l.UnmarshalText([]byte(in))
		var p *quantity.ParseError
		if !errors.As(err, &p) || !strings.Contains(p.Want, "m, ft, in") {
			t.Errorf("%q: %v", in, err)
		}
		if l.String() != "3 m" {
			t.Errorf("%q left %s behind", in, l)
		}
		if _, err := quantity.Parse[quantity.Length](in); err == nil {
			t.Errorf("Parse took %q", in)
		}
	}
}

func TestParseSays(t *testing.T) {
	for _, c := range []struct {
		err  error
		want string
	}{
		{failure[quantity.Film]("125"), `read "125", taken: a number and one of um, mil`},
		{failure[quantity.Film]("12,5 um"), `read "12,5 um", taken: a number with a decimal point, no comma, and one of um, mil`},
		{failure[quantity.Share]("45"), `read "45", taken: a number and %`},
		{failure[quantity.Volume]("5 gal"), `read "5 gal", taken: a number and one of L, mL, US gal, US qt, imp gal; say which gallon: "US gal" or "imp gal"`},
		{failure[quantity.Share]("5 gal"), `read "5 gal", taken: a number and %`},
		{failure[quantity.Spread]("400 ft2/gal"), `read "400 ft2/gal", taken: a number and one of m2/L, ft2/US gal; say which gallon: "ft2/US gal"`},
		{failure[quantity.Length]("1234567890123456789 m"), `read "1234567890123456789 m", taken: a number of at most 18 digits and one of m, ft, in, mm`},
		{failure[quantity.Length]("1.2.3 m"), `read "1.2.3 m", taken: a number with one decimal point and one of m, ft, in, mm`},
		{failure[quantity.Length](strings.Repeat("é", 40)), `read "` + strings.Repeat("é", 32) + `…", taken: a number and one of m, ft, in, mm`},
		{new(quantity.Film).UnmarshalTOML(int64(125)), `read "125", taken: a quoted text of a number and one of um, mil`},
		{new(quantity.Film).UnmarshalTOML(12.5), `read "12.5", taken: a quoted text of a number and one of um, mil`},
		{new(quantity.Film).UnmarshalTOML(true), `read "true", taken: a quoted text of a number and one of um, mil`},
		{new(quantity.Film).UnmarshalTOML([]any{}), `read "a list", taken: a quoted text of a number and one of um, mil`},
		{new(quantity.Film).UnmarshalTOML(map[string]any{}), `read "a table", taken: a quoted text of a number and one of um, mil`},
		{new(quantity.Film).UnmarshalJSON([]byte("125")), `read "125", taken: a quoted text of a number and one of um, mil`},
	} {
		if c.err == nil || c.err.Error() != c.want {
			t.Errorf("said %v\nwant %s", c.err, c.want)
		}
	}
	var doc struct{ A quantity.Film }
	if _, err := toml.Decode("a = 125", &doc); err == nil || !strings.Contains(err.Error(), "one of um, mil") {
		t.Errorf("a bare TOML number: %v", err)
	}
	if err := json.Unmarshal([]byte(`{"A": "125"}`), &doc); err == nil || doc.A.Given() {
		t.Errorf("a JSON number without a unit: %s, %v", doc.A, err)
	}
}

func failure[Q quantity.Quantity](s string) error {
	_, err := quantity.Parse[Q](s)
	return err
}

// Whatever is read is written, read again and the same; nothing else is taken.
func FuzzParse(f *testing.F) {
	for _, s := range []string{"15.20 m", "5 gal", "1,5 L", "-0.001 US gal", "5 imp gal", "\x00", "1e5 L", "999999999999999999 mL", " 7mL "} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		v, err := quantity.Parse[quantity.Volume](s)
		if err != nil {
			var p *quantity.ParseError
			if !errors.As(err, &p) || len(p.Got) > 70 || v.Given() {
				t.Errorf("%q: %v, %s", s, err, v)
			}
			return
		}
		again, err := quantity.Parse[quantity.Volume](v.String())
		if err != nil || again.String() != v.String() || !again.Equal(v) {
			t.Errorf("%q reads as %s, then as %s, %v", s, v, again, err)
		}
		if strings.ContainsAny(s, ",eE\x00") {
			t.Errorf("%q was taken as %s", s, v)
		}
		v.Show(quantity.US)
		v.Show(quantity.Metric)
	})
}

func BenchmarkParse(b *testing.B) {
	text := []byte("125.5 um")
	b.Run("text", func(b *testing.B) {
		b.ReportAllocs()
		for b.Loop() {
			var f quantity.Film
			if err := f.UnmarshalText(text); err != nil {
				b.Fatal(err)
			}
		}
	})
	b.Run("string", func(b *testing.B) {
		b.ReportAllocs()
		for b.Loop() {
			if _, err := quantity.Parse[quantity.Film]("125.5 um"); err != nil {
				b.Fatal(err)
			}
		}
	})
}
