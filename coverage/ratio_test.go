package coverage_test

import (
	"errors"
	"strings"
	"testing"

	"github.com/shopspring/decimal"

	"boatyard.example/bottomwork/coverage"
	"boatyard.example/bottomwork/tables/finding"
)

func ratio(tb testing.TB, s string) coverage.Ratio {
	tb.Helper()
	r, err := coverage.ParseRatio(s)
	if err != nil {
		tb.Fatal(err)
	}
	return r
}

func TestParseRatio(t *testing.T) {
	for _, c := range []struct{ text, base, hardener, says string }{
		{"3:1", "3", "1", "3:1"},
		{" 2.5 : 1 ", "2.5", "1", "2.5:1"},
		{"100:2", "100", "2", "100:2"},
		{"1:1", "1", "1", "1:1"},
		{"0.000001:1000000", "0.000001", "1000000", "0.000001:1000000"},
	} {
		r, err := coverage.ParseRatio(c.text)
		if err != nil || !r.Base.Equal(dec(t, c.base)) || !r.Hardener.Equal(dec(t, c.hardener)) || r.String() != c.says {
			t.Errorf("%q: %s, %v", c.text, r, err)
		}
		if err := r.Check().Err(); err != nil {
			t.Errorf("%q: %v", c.text, err)
		}
	}
}

func TestParseRatioFaults(t *testing.T) {
	for _, c := range []struct {
		text string
		kind error
		keys string // of all faults
	}{
		{"", finding.ErrValue, "ratio"},
		{"3", finding.ErrValue, "ratio"},
		{"3:1:0.5", finding.ErrValue, "ratio"},
		{"3/1", finding.ErrValue, "ratio"},
		{":", finding.ErrValue, "ratio.base ratio.hardener"},
		{"three:one", finding.ErrValue, "ratio.base ratio.hardener"},
		{"3 L:1 L", finding.ErrValue, "ratio.base ratio.hardener"},
		{"75 %:25 %", finding.ErrValue, "ratio.base ratio.hardener"},
		{"3,5:1", finding.ErrValue, "ratio.base"},
		{"3:1e2", finding.ErrValue, "ratio.hardener"},
		{"0:-1", finding.ErrImpossible, "ratio.base ratio.hardener"},
		{"3:0", finding.ErrImpossible, "ratio.hardener"},
		{"1000000.1:1", finding.ErrImpossible, "ratio.base"},
	} {
		r, err := coverage.ParseRatio(c.text)
		var fs finding.Faults
		if !errors.As(err, &fs) {
			t.Errorf("%q: %s, %v, want faults", c.text, r, err)
			continue
		}
		var keys []string
		for _, f := range fs {
			keys = append(keys, f.Key)
			if !errors.Is(f, c.kind) || f.Want == "" || f.Got == "" {
				t.Errorf("%q: %v, want %v", c.text, f, c.kind)
			}
		}
		if got := strings.Join(keys, " "); got != c.keys || r.Base.Sign() != 0 || r.Hardener.Sign() != 0 {
			t.Errorf("%q: faults of %q, want %q; ratio %s", c.text, got, c.keys, r)
		}
	}
}

func TestRatioCheck(t *testing.T) {
	one := dec(t, "1")
	for _, c := range []struct {
		r    coverage.Ratio
		keys []string
	}{
		{coverage.Ratio{}, []string{"base", "hardener"}},
		{coverage.Ratio{Base: one, Hardener: dec(t, "-1")}, []string{"hardener"}},
		{coverage.Ratio{Base: decimal.New(1, -40), Hardener: one}, nil},
		{coverage.Ratio{Base: decimal.New(1, -41), Hardener: one}, []string{"base"}},
		{coverage.Ratio{Base: one, Hardener: dec(t, "1000000")}, nil},
		{coverage.Ratio{Base: one, Hardener: dec(t, "1000000.1")}, []string{"hardener"}},
		{coverage.Ratio{Base: one, Hardener: dec(t, "0")}, []string{"hardener"}},
		{coverage.Ratio{Base: one, Hardener: decimal.New(1, 1<<30)}, []string{"hardener"}}, // and no hang
	} {
		fs := c.r.Check()
		if len(fs) != len(c.keys) {
			t.Errorf("faults %v, want %v", fs, c.keys)
		}
		for _, k := range c.keys {
			hasFault(t, fs.Err(), finding.ErrImpossible, k)
		}
	}
}

// What is refused is told as it was read, unless it is too long to print: more than 40 noughts or decimal places.
func TestRatioTellsWhatItRefuses(t *testing.T) {
	for _, c := range []struct {
		base decimal.Decimal
		got  string
	}{
		{dec(t, "-2.5"), "-2.5"},
		{decimal.New(1, 40), "1" + strings.Repeat("0", 40)},
		{decimal.New(1, 41), ""},
		{decimal.New(-1, -40), "-0." + strings.Repeat("0", 39) + "1"},
		{decimal.New(-1, -41), ""},
	} {
		if fs := (coverage.Ratio{Base: c.base, Hardener: dec(t, "1")}).Check(); len(fs) != 1 || fs[0].Key != "base" || fs[0].Got != c.got {
			t.Errorf("%v, want it to tell %q", fs, c.got)
		}
	}
}

func TestRatioEqual(t *testing.T) {
	for _, c := range []struct {
		a, b string
		want bool
	}{{"3:1", "6:2", true}, {"3:1", "1.5:0.50", true}, {"3:1", "1:3", false}, {"3:1", "3:1.0001", false}} {
		if got := ratio(t, c.a).Equal(ratio(t, c.b)); got != c.want {
			t.Errorf("%s equals %s: %t", c.a, c.b, got)
		}
	}
}

// Whatever is written, it is a ratio that Check passes and that is read back, or it is refused.
func FuzzParseRatio(f *testing.F) {
	for _, text := range []string{"3:1", " 2.5 : 1 ", "1000000:0.000001", "0:1", "1:-1", "3:1:1", "3", ":", "1e6:1", "1,5:1", "\u0663:1"} {
		f.Add(text)
	}
	f.Fuzz(func(t *testing.T, text string) {
		r, err := coverage.ParseRatio(text)
		if err != nil {
			return
		}
		if fs := r.Check(); len(fs) > 0 {
			t.Fatalf("%q is read and then: %v", text, fs)
		}
		if again, err := coverage.ParseRatio(r.String()); err != nil || !again.Equal(r) {
			t.Fatalf("%q is %s, which is read as %s, %v", text, r, again, err)
		}
	})
}
