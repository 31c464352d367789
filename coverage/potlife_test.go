package coverage_test

import (
	"testing"

	"github.com/shopspring/decimal"

	"boatyard.example/bottomwork/coverage"
	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

func TestPotLife(t *testing.T) {
	b := book(t)
	for _, c := range []struct{ life, at, today, want string }{
		{"2 h", "20 degC", "20 degC", "120 min"},
		{"2 h", "20 degC", "30 degC", "60 min"},
		{"2 h", "20 degC", "40 degC", "30 min"},
		{"2 h", "68 degF", "86 degF", "60 min"}, // 20 and 30 degC
		{"2 h", "20 degC", "19.9 degC", "120 min"},
		{"2 h", "20 degC", "-10 degC", "120 min"},         // cold gives nothing
		{"90 min", "20 degC", "25 degC", "63 min"},        // 90 ÷ 1.41421 = 63.64
		{"2 h", "20 degC", "20.1 degC", "119 min"},        // 120 ÷ 1.00696 = 119.17
		{"30.9 min", "20 degC", "15 degC", "30 min"},      // rounded down
		{"1.9 min", "20 degC", "30 degC", "0 min"},        // 0.95 min
		{"1024 min", "-10 degC", "60 degC", "8 min"},      // seven halvings
		{"0.5 d", "23 degC", "33.00 degC", "360 min"},     // 720 ÷ 2
		{"240 min", "10 degC", "35 degC", "42 min"},       // 240 ÷ 5.65685 = 42.43
		{"0.01 min", "60 degC", "-10 degC", "0 min"},      // down to nought, and no error
		{"100000 d", "0 degC", "0 degC", "144000000 min"}, // a label's slip is not ours to see
	} {
		got, err := coverage.PotLife(b, parse[quantity.Duration](t, c.life), parse[quantity.Temperature](t, c.at), parse[quantity.Temperature](t, c.today))
		if err != nil || got.String() != c.want {
			t.Errorf("%s at %s, today %s: %s, %v; want %s", c.life, c.at, c.today, got, err, c.want)
		}
	}
	// The low end of a range decides: 8 degC, so 16 degC warmer is two halvings.
	own := with(t, b, "[[factor]]\nkey = \"pot-life-span\"\nvalue = [8, 10, 12]\nbasis = \"own table\"\nsource = \"yard record\"\n")
	got, err := coverage.PotLife(own, quantity.Hour.N(2), quantity.Celsius.N(20), quantity.Celsius.N(36))
	if err != nil || got.String() != "30 min" {
		t.Errorf("with an own span: %s, %v", got, err)
	}
}

func TestBatch(t *testing.T) {
	b := book(t)
	for _, c := range []struct {
		life, at, today, rate, wet string
		litres, minutes            string
		small                      bool
	}{
		// 20 × 200 ÷ 1000 = 4 L/h; 2 h; three quarters of it: 6 L.
		{"2 h", "20 degC", "20 degC", "20 m2/h", "200 um", "6.0 L", "120 min", false},
		{"2 h", "20 degC", "10 degC", "20 m2/h", "200 um", "6.0 L", "120 min", false},
		{"2 h", "20 degC", "30 degC", "20 m2/h", "200 um", "3.0 L", "60 min", false},
		// 63 min: 4 × 63 ÷ 60 × 0.75 = 3.15 L.
		{"90 min", "20 degC", "25 degC", "20 m2/h", "200 um", "3.1 L", "63 min", false},
		// 10 × 100 ÷ 1000 = 1 L/h; 20 min of it: 0.25 L, then just under and just over.
		{"20 min", "20 degC", "20 degC", "10 m2/h", "100 um", "0.2 L", "20 min", false},
		{"20 min", "20 degC", "20 degC", "9.9999 m2/h", "100 um", "0.2 L", "20 min", true},
		{"20 min", "20 degC", "20 degC", "10.0001 m2/h", "100 um", "0.2 L", "20 min", false},
		{"24 min", "20 degC", "20 degC", "10 m2/h", "100 um", "0.3 L", "24 min", false}, // 0.3 exactly
		{"1 min", "20 degC", "20 degC", "10 m2/h", "100 um", "0.0 L", "1 min", true},
		{"1 min", "20 degC", "40 degC", "10 m2/h", "100 um", "0.0 L", "0 min", true},
		// 100 ft2/h = 9.290304 m2/h, 10 mil = 254 um: 2.359737 L/h × 0.75 = 1.7698 L in an hour.
		{"1 h", "68 degF", "20 degC", "100 ft2/h", "10 mil", "1.7 L", "60 min", false},
	} {
		got, err := coverage.Batch(b, parse[quantity.Duration](t, c.life), parse[quantity.Temperature](t, c.at), parse[quantity.Temperature](t, c.today), parse[quantity.WorkRate](t, c.rate), film(t, c.wet))
		if err != nil || len(got.Findings) != 1 {
			t.Errorf("%+v: %v, %v", c, got.Findings, err)
			continue
		}
		f := got.Findings[0]
		verdict, rule := finding.Fine, finding.ID("mix-at-once")
		if c.small {
			verdict, rule = finding.Caution, "mix-too-small"
		}
		if got.Litres.String() != c.litres || got.Life.String() != c.minutes || f.Verdict != verdict || f.Rule != rule {
			t.Errorf("%+v: %s in %s, %+v", c, got.Litres, got.Life, f)
		}
		if fact(f, "share") != "75 %" || len(f.Basis) != 2 || f.Basis[0].Kind != finding.CommonPractice || f.Basis[1].Kind != finding.Assumption || f.Basis[0].Doubt == "" || f.Basis[1].Doubt == "" {
			t.Errorf("share %s, basis %v", fact(f, "share"), f.Basis)
		}
	}
}

// Warmer never allows more, and colder than stated never does either.
func TestBatchFallsWithWarmth(t *testing.T) {
	b := book(t)
	var before coverage.Potful
	for c := int64(-10); c <= 60; c++ {
		got, err := coverage.Batch(b, quantity.Hour.N(3), quantity.Celsius.N(23), quantity.Celsius.N(c), parse[quantity.WorkRate](t, "25 m2/h"), film(t, "220 um"))
		if err != nil {
			t.Fatal(err)
		}
		if c > -10 && (got.Litres.Cmp(before.Litres) > 0 || got.Life.Cmp(before.Life) > 0) {
			t.Errorf("at %d degC %s and %s, a degree cooler %s and %s", c, got.Litres, got.Life, before.Litres, before.Life)
		}
		if c > 23 && got.Life.Cmp(before.Life) >= 0 {
			t.Errorf("at %d degC the pot life is %s as before", c, got.Life)
		}
		before = got
	}
}

func TestBatchOwnShare(t *testing.T) {
	b := book(t)
	batch := func(b *tables.Book) (coverage.Potful, error) {
		return coverage.Batch(b, quantity.Hour.N(1), quantity.Celsius.N(20), quantity.Celsius.N(20), parse[quantity.WorkRate](t, "10 m2/h"), film(t, "100 um"))
	}
	share := func(value string) *tables.Book {
		return with(t, b, "[[factor]]\nkey = \"pot-life-share\"\nvalue = "+value+"\nbasis = \"own table\"\nsource = \"yard record\"\n")
	}
	for _, c := range []struct{ value, want string }{{"1", "1.0 L"}, {"[0.5, 0.75, 1.5]", "0.5 L"}} {
		got, err := batch(share(c.value))
		if err != nil || got.Litres.String() != c.want {
			t.Errorf("share %s: %s, %v; want %s", c.value, got.Litres, err, c.want)
		}
	}
	_, err := batch(share("1.001"))
	hasFault(t, err, finding.ErrImpossible, "factor[pot-life-share].value")

	bare, err := tables.Load(mapFS("factors.toml", "[[factor]]\nkey = \"pot-life-share\"\nvalue = 0.5\nbasis = \"assumption\"\n"))
	if err != nil {
		t.Fatal(err)
	}
	_, err = batch(bare)
	hasFault(t, err, finding.ErrUnknown, "factor") // no span
	bare, err = tables.Load(mapFS("factors.toml", "[[factor]]\nkey = \"pot-life-span\"\nvalue = 10\nbasis = \"assumption\"\n"))
	if err != nil {
		t.Fatal(err)
	}
	_, err = batch(bare)
	hasFault(t, err, finding.ErrUnknown, "factor") // no share
}

func TestBatchFaults(t *testing.T) {
	b := book(t)
	got, err := coverage.Batch(b, quantity.Duration{}, quantity.Temperature{}, quantity.Celsius.N(61), quantity.WorkRate{}, quantity.Film{})
	for _, f := range []struct {
		kind error
		key  string
	}{
		{finding.ErrMissing, "life"},
		{finding.ErrMissing, "at"},
		{finding.ErrImpossible, "today"},
		{finding.ErrMissing, "rate"},
		{finding.ErrMissing, "wet"},
	} {
		hasFault(t, err, f.kind, f.key)
	}
	if got.Litres.Given() || got.Findings != nil {
		t.Errorf("%+v beside an error", got)
	}
	for _, c := range []struct{ key, life, at, today, rate, wet string }{
		{"life", "0 min", "20 degC", "20 degC", "10 m2/h", "100 um"},
		{"life", "-1 min", "20 degC", "20 degC", "10 m2/h", "100 um"},
		{"at", "1 h", "-10.1 degC", "20 degC", "10 m2/h", "100 um"},
		{"at", "1 h", "60.1 degC", "20 degC", "10 m2/h", "100 um"},
		{"today", "1 h", "20 degC", "13.9 degF", "10 m2/h", "100 um"}, // -10 degC is 14 degF
		{"today", "1 h", "20 degC", "140.1 degF", "10 m2/h", "100 um"},
		{"rate", "1 h", "20 degC", "20 degC", "0 m2/h", "100 um"},
		{"rate", "1 h", "20 degC", "20 degC", "-1 m2/h", "100 um"},
		{"wet", "1 h", "20 degC", "20 degC", "10 m2/h", "0 um"},
	} {
		_, err := coverage.Batch(b, parse[quantity.Duration](t, c.life), parse[quantity.Temperature](t, c.at), parse[quantity.Temperature](t, c.today), parse[quantity.WorkRate](t, c.rate), film(t, c.wet))
		hasFault(t, err, finding.ErrImpossible, c.key)
	}
	// Beyond what can be reckoned with.
	_, err = coverage.Batch(b, quantity.Day.Of(decimal.New(1, 400)), quantity.Celsius.N(20), quantity.Celsius.N(20), quantity.SquareMetrePerHour.N(10), film(t, "100 um"))
	hasFault(t, err, finding.ErrImpossible, "life")
	for _, today := range []string{"-10 degC", "60 degC", "14 degF", "140 degF"} {
		if _, err := coverage.PotLife(b, quantity.Hour.N(1), quantity.Celsius.N(20), parse[quantity.Temperature](t, today)); err != nil {
			t.Errorf("%s: %v", today, err)
		}
	}
	_, err = coverage.PotLife(b, quantity.Hour.N(0), quantity.Celsius.N(-11), quantity.Temperature{})
	hasFault(t, err, finding.ErrImpossible, "life")
	hasFault(t, err, finding.ErrImpossible, "at")
	hasFault(t, err, finding.ErrMissing, "today")
}
