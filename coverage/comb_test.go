package coverage_test

import (
	"errors"
	"strings"
	"testing"

	"boatyard.example/bottomwork/coverage"
	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

// whole holds all tables: the words and the factors of this file stand beside those of the package's own.
func whole(tb testing.TB) *tables.Book { tb.Helper(); return tables.Default() }

// wet is a coat of a paint with 50 % solids and 10 % thinner, asked for at 50 um: the comb must read 50 × 110 ÷ 50 = 110 um.
func wet(t *testing.T, teeth ...string) coverage.WetCoat {
	t.Helper()
	w := coverage.WetCoat{Paint: "test paint", Solids: quantity.Exactly(share(t, "50 %")), Thinner: share(t, "10 %"), Asked: film(t, "50 um")}
	for _, s := range teeth {
		low, high, both := strings.Cut(s, " to ")
		x := coverage.Tooth{Wetted: film(t, low)}
		if both {
			x.Dry = film(t, high)
		}
		w.Teeth = append(w.Teeth, x)
	}
	return w
}

func comb(t *testing.T, w coverage.WetCoat) coverage.Combed {
	t.Helper()
	got, err := coverage.Comb(whole(t), w)
	if err != nil {
		t.Fatal(err)
	}
	sentences(t, got.Findings)
	return got
}

func sentences(t *testing.T, fs finding.List) {
	t.Helper()
	if len(fs) == 0 {
		t.Error("nothing is judged")
	}
	for _, f := range fs {
		for _, s := range []quantity.System{quantity.Metric, quantity.US} {
			if text := whole(t).Say(f, s); strings.ContainsAny(text, "{}") || strings.Contains(text, "not stated") || strings.Contains(text, "not given") || !strings.HasSuffix(text, ".") && !strings.HasSuffix(text, "?") {
				t.Errorf("%s: %q", f.Rule, text)
			}
		}
	}
}

// On the film asked for is enough, just under it is thin. The multiple comb-thick is 1.75: 1.75 × 50 × 110 ÷ 50 = 192.5 um is right,
// more is too thick.
func TestCombOnItsLimits(t *testing.T) {
	for _, c := range []struct {
		teeth string
		rule  finding.ID
		thin  int
	}{
		{"110 um", coverage.RuleCombEnough, 0},
		{"109.9 um", coverage.RuleCombThin, 1},
		{"100 um to 120 um", coverage.RuleCombEnough, 0}, // the middle is 110
		{"100 um to 119 um", coverage.RuleCombThin, 1},
		{"192.5 um", coverage.RuleCombEnough, 0},
		{"192.6 um", coverage.RuleCombThick, 0},
		{"180 um to 205 um", coverage.RuleCombEnough, 0}, // 192.5
		{"100 um,120 um", coverage.RuleCombEnough, 1},    // the mean is 110
		{"100 um,119 um", coverage.RuleCombThin, 1},
		{"100 um,300 um", coverage.RuleCombThick, 1},
	} {
		got := comb(t, wet(t, strings.Split(c.teeth, ",")...))
		if got.Findings[0].Rule != c.rule || got.Thin != c.thin {
			t.Errorf("%s: %v, %d thin; want %s, %d", c.teeth, got.Findings[0].Rule, got.Thin, c.rule, c.thin)
		}
		if places := got.Findings.Has(coverage.RuleCombThinPlaces); places != (c.thin > 0 && c.rule != coverage.RuleCombThin) {
			t.Errorf("%s: thin places told: %t", c.teeth, places)
		}
	}
}

// Solids of 45, 50, 55 %, no thinner, the film between the teeth of 100 and 120 um: 100 × 0.45 = 45, 110 × 0.5 = 55, 120 × 0.55 = 66 um.
// With a second reading of 80 um, 36, 40 and 44, the mean is 40.5, 47.5 and 55.
func TestCombRange(t *testing.T) {
	w := wet(t, "100 um to 120 um", "80 um")
	w.Solids, w.Thinner = coating(t, "45 %", "50 %", "55 %").Solids, quantity.Share{}
	got := comb(t, w)
	if r := rangeText(got.Dry[0]); r != "45.0000 um, 55.0000 um, 66.0000 um" {
		t.Errorf("the first reading dries to %s", r)
	}
	if r := rangeText(got.Mean); r != "40.5000 um, 47.5000 um, 55.0000 um" || got.Thin != 1 {
		t.Errorf("the mean dries to %s, %d thin", r, got.Thin)
	}
	// 65 % solids, 4.0 mil asked for: the comb must read 6.153846 mil, printed as 6.15 (SSPC, Practical Math for the Protective Coatings
	// Industry, in a trade magazine). 6.2 mil dry to 4.03, 6.1 to 3.965.
	w = coverage.WetCoat{Paint: "test paint", Solids: quantity.Exactly(share(t, "65 %")), Asked: film(t, "4 mil"), Teeth: []coverage.Tooth{{Wetted: film(t, "6.2 mil")}}}
	if got := comb(t, w); got.Mean.Typical.String() != "4.0300 mil" || !got.Findings.Has(coverage.RuleCombEnough) {
		t.Errorf("6.2 mil: %s", got.Mean.Typical)
	}
	w.Teeth[0].Wetted = film(t, "6.1 mil")
	got = comb(t, w)
	if got.Mean.Typical.String() != "3.9650 mil" || !got.Findings.Has(coverage.RuleCombThin) {
		t.Errorf("6.1 mil: %s", got.Mean.Typical)
	}
	if text := whole(t).Say(got.Findings[0], quantity.US); !strings.Contains(text, "6.2 mil") { // 6.15 rounded up, as paint is
		t.Errorf("it does not say what the comb must read: %s", text)
	}
}

// One reading of one tooth says what DryFilm says.
func TestCombIsDryFilm(t *testing.T) {
	for _, tooth := range []string{"25 um", "110 um", "333.3 um", "5.5 mil"} {
		w := wet(t, tooth)
		want, err := coverage.DryFilm(w.Teeth[0].Wetted.To(quantity.Micrometre, 6, quantity.Nearest), w.Solids.Typical, w.Thinner)
		if err != nil {
			t.Fatal(err)
		}
		if got := comb(t, w); !got.Mean.Typical.Equal(want) || !got.Dry[0].Low.Equal(want) {
			t.Errorf("%s: %s, want %s", tooth, got.Mean.Typical, want)
		}
	}
}

func TestEveryFaultOfAWetCoat(t *testing.T) {
	w := wet(t, "100 um to 100 um", "0 um", "10001 um")
	w.Solids, w.Thinner, w.Asked = quantity.Exactly(share(t, "101 %")), share(t, "-1 %"), quantity.Film{}
	_, err := coverage.Comb(whole(t), w)
	for _, word := range []string{"readings[1]", "readings[2]", "readings[3]", "solids", "thinner", "asked"} {
		if err == nil || !strings.Contains(err.Error(), word) {
			t.Errorf("%s is not named in\n%v", word, err)
		}
	}
	if _, err := coverage.Comb(whole(t), coverage.WetCoat{}); err == nil || !strings.Contains(err.Error(), "readings: missing") {
		t.Errorf("no readings: %v", err)
	}
	if _, err := coverage.Comb(book(t), wet(t, "100 um")); err == nil || !strings.Contains(err.Error(), "comb-thick") {
		t.Errorf("a book without the factor: %v", err)
	}
}

// On its bounds nothing of a wet coat is a fault; of solids one is told, however many of the three cannot be.
func TestBoundsOfAWetCoat(t *testing.T) {
	for name, c := range map[string]struct {
		w    coverage.WetCoat
		want string
	}{
		"the longest teeth":       {wet(t, "9999 um to 10000 um", "10000 um"), ""},
		"a longer dry tooth":      {wet(t, "9999 um to 10001 um"), "readings[1]"},
		"one end of the solids":   {coverage.WetCoat{Solids: quantity.Range[quantity.Share]{Low: share(t, "0 %"), Typical: share(t, "50 %"), High: share(t, "60 %")}}, "solids"},
		"the other end":           {coverage.WetCoat{Solids: quantity.Range[quantity.Share]{Low: share(t, "40 %"), Typical: share(t, "50 %"), High: share(t, "101 %")}}, "solids"},
		"all three of the solids": {coverage.WetCoat{Solids: quantity.Exactly(share(t, "0 %"))}, "solids"},
	} {
		good := wet(t, "100 um")
		if c.w.Teeth == nil {
			good.Solids = c.w.Solids
		} else {
			good.Teeth = c.w.Teeth
		}
		var got []string
		for _, f := range good.Check() {
			got = append(got, f.Key)
		}
		if strings.Join(got, " ") != c.want {
			t.Errorf("%s: %v, want %q", name, got, c.want)
		}
	}
}

// What is no tooth is refused with how one is written, also where only the second of two is not.
func TestParseTooth(t *testing.T) {
	for _, text := range []string{"120 um", "4 mil to 5 mil"} {
		if got, err := coverage.ParseTooth(text); err != nil || got.String() != text {
			t.Errorf("%q prints as %q: %v", text, got, err)
		}
	}
	if got, err := coverage.ParseTooth("120 um"); err != nil || got.Wetted.String() != "120 um" || got.Dry.Given() {
		t.Errorf("one tooth: %v, %v", got, err)
	}
	if got, err := coverage.ParseTooth("4 mil to 5 mil"); err != nil || got.Wetted.String() != "4 mil" || got.Dry.String() != "5 mil" {
		t.Errorf("two teeth: %v, %v", got, err)
	}
	for text, read := range map[string]string{"120": "120", "": "", "thick to 120 um": "thick", "100 um to 120": "120", "100 um to ": ""} {
		got, err := coverage.ParseTooth(text)
		if bad, ok := errors.AsType[*quantity.ParseError](err); !ok || bad.Got != read || !strings.Contains(bad.Want, "100 um to 120 um") || got.Wetted.Given() || got.Dry.Given() {
			t.Errorf("%q: %v, %v", text, got, err)
		}
	}
}
