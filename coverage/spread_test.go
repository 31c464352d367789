package coverage_test

import (
	"errors"
	"math/rand/v2"
	"testing"

	"github.com/shopspring/decimal"

	"boatyard.example/bottomwork/coverage"
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

// hasFault fails unless the error holds a fault of the kind at the key.
func hasFault(tb testing.TB, err error, kind error, key string) {
	tb.Helper()
	var fs finding.Faults
	if !errors.As(err, &fs) {
		tb.Fatalf("error %v, want finding.Faults", err)
	}
	for _, f := range fs {
		if errors.Is(f, kind) && f.Key == key && f.Want != "" {
			return
		}
	}
	tb.Errorf("no fault %v at %q in:\n%v", kind, key, err)
}

func TestSpreadRoundsDown(t *testing.T) {
	for _, c := range []struct{ solids, film, want string }{
		{"55 %", "60 um", "9.1666 m2/L"},           // 9.16666…
		{"50 %", "30 um", "16.6666 m2/L"},          // 16.66666…
		{"52 %", "1.5 mil", "556.1111 ft2/US gal"}, // 19250 × 52 ÷ 1200 ÷ 1.5 = 556.11111…
		{"100 %", "1 um", "1000.0000 m2/L"},
	} {
		got, err := coverage.Spread(share(t, c.solids), film(t, c.film))
		if err != nil || got.String() != c.want {
			t.Errorf("Spread(%s, %s) = %s, %v; want %s", c.solids, c.film, got, err, c.want)
		}
	}
}

func TestSpreadRange(t *testing.T) {
	for _, c := range []struct {
		solids, film string
		kind         error
		key          string
	}{
		{"0 %", "50 um", finding.ErrImpossible, "solids"},
		{"-1 %", "50 um", finding.ErrImpossible, "solids"},
		{"100.01 %", "50 um", finding.ErrImpossible, "solids"},
		{"", "50 um", finding.ErrMissing, "solids"},
		{"50 %", "0 um", finding.ErrImpossible, "dry"},
		{"50 %", "-1 um", finding.ErrImpossible, "dry"},
		{"50 %", "", finding.ErrMissing, "dry"},
	} {
		var s quantity.Share
		var f quantity.Film
		if c.solids != "" {
			s = share(t, c.solids)
		}
		if c.film != "" {
			f = film(t, c.film)
		}
		got, err := coverage.Spread(s, f)
		hasFault(t, err, c.kind, c.key)
		if got.Given() {
			t.Errorf("Spread(%q, %q) = %s beside an error", c.solids, c.film, got)
		}
	}
	_, err := coverage.Spread(quantity.Share{}, quantity.Film{})
	hasFault(t, err, finding.ErrMissing, "solids")
	hasFault(t, err, finding.ErrMissing, "dry")
	// A number too small to divide is a fault, no panic.
	tiny, err := coverage.WetFilm(quantity.Micrometre.Of(decimal.New(1, -400)), share(t, "50 %"), share(t, "0.1 %"))
	hasFault(t, err, finding.ErrImpossible, "dry")
	if tiny.Given() {
		t.Errorf("a film of %s beside an error", tiny)
	}
}

func TestPractical(t *testing.T) {
	rate := parse[quantity.Spread](t, "9 m2/L")
	for _, c := range []struct{ loss, want string }{
		{"0 %", "9.0000 m2/L"},
		{"10 %", "8.1000 m2/L"},
		{"50 %", "4.5000 m2/L"},
		{"99.9 %", "0.0090 m2/L"},
		{"33.333 %", "6.0000 m2/L"}, // 6.00003
	} {
		got, err := coverage.Practical(rate, share(t, c.loss))
		if err != nil || got.String() != c.want {
			t.Errorf("Practical(9, %s) = %s, %v; want %s", c.loss, got, err, c.want)
		}
	}
	for _, loss := range []string{"100 %", "101 %", "-0.1 %"} {
		_, err := coverage.Practical(rate, share(t, loss))
		hasFault(t, err, finding.ErrImpossible, "loss")
	}
	_, err := coverage.Practical(quantity.Spread{}, quantity.Share{})
	hasFault(t, err, finding.ErrMissing, "theoretical")
	hasFault(t, err, finding.ErrMissing, "loss")
	_, err = coverage.Practical(parse[quantity.Spread](t, "0 m2/L"), share(t, "10 %"))
	hasFault(t, err, finding.ErrImpossible, "theoretical")
}

func TestWetFilmRoundsUpAndDryFilmDown(t *testing.T) {
	wet, err := coverage.WetFilm(film(t, "4.0 mil"), share(t, "65 %"), quantity.Share{})
	if err != nil || wet.String() != "6.1539 mil" { // 6.15384…
		t.Errorf("wet %s, %v", wet, err)
	}
	dry, err := coverage.DryFilm(film(t, "100 um"), share(t, "55 %"), share(t, "7 %"))
	if err != nil || dry.String() != "51.4018 um" { // 51.40186…
		t.Errorf("dry %s, %v", dry, err)
	}
	for _, thinner := range []string{"-1 %", "100.1 %"} {
		_, err = coverage.WetFilm(film(t, "50 um"), share(t, "50 %"), share(t, thinner))
		hasFault(t, err, finding.ErrImpossible, "thinner")
		_, err = coverage.DryFilm(film(t, "50 um"), share(t, "50 %"), share(t, thinner))
		hasFault(t, err, finding.ErrImpossible, "thinner")
	}
	_, err = coverage.WetFilm(quantity.Film{}, share(t, "120 %"), quantity.Share{})
	hasFault(t, err, finding.ErrMissing, "dry")
	hasFault(t, err, finding.ErrImpossible, "solids")
	_, err = coverage.DryFilm(film(t, "0 um"), quantity.Share{}, quantity.Share{})
	hasFault(t, err, finding.ErrImpossible, "wet")
	hasFault(t, err, finding.ErrMissing, "solids")
}

// The wet film of a dry film dries to the same dry film or a hair more; more thinner makes a wetter film; more solids a thinner one.
func TestFilmProperties(t *testing.T) {
	rng := rand.New(rand.NewPCG(3, 4))
	hair := dec(t, "0.0002")
	for range 2000 {
		dry := quantity.Micrometre.Of(decimal.New(1+rng.Int64N(50000), -2))
		solids := quantity.Percent.Of(decimal.New(1000+rng.Int64N(9001), -2))
		thinner := quantity.Percent.Of(decimal.New(rng.Int64N(3001), -2))
		wet, err := coverage.WetFilm(dry, solids, thinner)
		if err != nil {
			t.Fatal(err)
		}
		back, err := coverage.DryFilm(wet, solids, thinner)
		if err != nil {
			t.Fatal(err)
		}
		if back.Cmp(dry) < 0 || back.Sub(dry).Number().Cmp(hair) > 0 {
			t.Fatalf("dry %s, solids %s, thinner %s: wet %s, back %s", dry, solids, thinner, wet, back)
		}
		if plain, err := coverage.WetFilm(dry, solids, quantity.Percent.N(0)); err != nil || plain.Cmp(wet) > 0 || plain.Cmp(dry) < 0 {
			t.Fatalf("unthinned %s, thinned %s, dry %s, %v", plain, wet, dry, err)
		}
	}
}
