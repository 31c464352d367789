package weather_test

import (
	"fmt"
	"math"
	"strings"
	"testing"
	"testing/fstest"
	"time"

	"boatyard.example/bottomwork/antifoul/weather"
	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

var start = time.Date(2027, time.April, 10, 0, 0, 0, 0, time.UTC)

// air makes hours of still dry air at the temperatures given.
func air(celsius ...float64) []weather.Hour {
	var out []weather.Hour
	for i, c := range celsius {
		out = append(out, weather.Hour{At: start.Add(time.Duration(i) * time.Hour), AirC: c, SurfaceC: weather.Unknown(), HumidityPct: 30, WindMS: 2})
	}
	return out
}

func steady(c float64, n int) []float64 {
	var out []float64
	for range n {
		out = append(out, c)
	}
	return out
}

func at(tb testing.TB, b *tables.Book, hours []weather.Hour, covered bool) *weather.Site {
	tb.Helper()
	s, err := weather.At(b, hours, covered)
	if err != nil {
		tb.Fatal(err)
	}
	return s
}

func own(tb testing.TB, text string) *tables.Book {
	tb.Helper()
	b, err := tables.Default().With(fstest.MapFS{"own.toml": {Data: []byte(text)}})
	if err != nil {
		tb.Fatal(err)
	}
	return b
}

func lagged(tb testing.TB, lag string) *tables.Book {
	tb.Helper()
	return own(tb, "[[material]]\nkey = \"grp\"\nbasis = \"own table\"\nsource = \"thermometer\"\nlag = "+lag+"\n")
}

// A day at 10 degC, then 20: with a lag of one hour the air rises to 20 in the hour before the first of those, on a straight line. Worked by hand, with
// k = exp(−1) = 0.367879: 20 − 10 × 1 × (1 − k) = 13.67879; an hour later 20 − 6.32121 × k = 17.67456. The error is 2 K on both sides.
func TestSurfaceFollowsTheAir(t *testing.T) {
	b := lagged(t, "1")
	hours := air(append(steady(10, 24), 20, 20)...)
	k := at(t, b, hours, false).For(weather.Coat{Coating: coating(t, b, "ablative-cuprous-multi"), On: []tables.Material{material(t, b, "grp")}})
	for i, want := range map[int]float64{0: 10, 23: 10, 24: 13.67879, 25: 17.67456} {
		got := k.Surface(i)
		if math.Abs(got.Typical-want) > 1e-5 || math.Abs(got.Low-want+2) > 1e-5 || math.Abs(got.High-want-2) > 1e-5 {
			t.Errorf("hour %d: %v, want %.5f and 2 K on both sides", i, got, want)
		}
	}
	// Three lags: after the rise the slowest skin is the coldest. With 0.5 h it is at 20 − 10 × 0.5 × (1 − exp(−2)) = 15.67668, with 4 h at
	// 20 − 10 × 4 × (1 − exp(−0.25)) = 11.15203.
	b = lagged(t, "[0.5, 1, 4]")
	k = at(t, b, hours, false).For(weather.Coat{Coating: coating(t, b, "ablative-cuprous-multi"), On: []tables.Material{material(t, b, "grp")}})
	if got := k.Surface(24); math.Abs(got.Low-9.15203) > 1e-5 || math.Abs(got.Typical-13.67879) > 1e-5 || math.Abs(got.High-17.67668) > 1e-5 {
		t.Errorf("three lags: %v", got)
	}
	// After a fall the fastest skin is the coldest: 10 + 10 × 0.5 × (1 − exp(−2)) = 14.32332.
	k = at(t, b, air(append(steady(20, 24), 10)...), false).For(weather.Coat{Coating: coating(t, b, "ablative-cuprous-multi"), On: []tables.Material{material(t, b, "grp")}})
	if got := k.Surface(24); math.Abs(got.Low-12.32332) > 1e-5 {
		t.Errorf("three lags, after a fall: %v", got)
	}
	// After an hour of warm air the fast skin is cool again, the slow one hardly felt it, and the one between is the warmest; after one of cold air it is the coldest.
	for _, gust := range []float64{0, 20} {
		k = at(t, b, air(append(steady(10, 24), gust, 10)...), false).For(weather.Coat{Coating: coating(t, b, "ablative-cuprous-multi"), On: []tables.Material{material(t, b, "grp")}})
		got := k.Surface(25)
		if low := got.Typical-got.Low <= 2+1e-9; low != (gust == 0) || (got.High-got.Typical <= 2+1e-9) == low || got.Typical-got.Low < 2-1e-9 || got.High-got.Typical < 2-1e-9 {
			t.Errorf("after an hour of %g degC: %v", gust, got)
		}
	}
	// A measurement is exact, and the estimate goes on from it: 20 + (8 − 20) × k = 15.58545 after an hour of 20 degC.
	b = lagged(t, "1")
	hours[24].SurfaceC = 8
	k = at(t, b, hours, false).For(weather.Coat{Coating: coating(t, b, "ablative-cuprous-multi"), On: []tables.Material{material(t, b, "grp")}})
	if got := k.Surface(24); got != quantity.Exactly(8.0) {
		t.Errorf("measured: %v", got)
	}
	if got := k.Surface(25); math.Abs(got.Typical-15.58545) > 1e-5 {
		t.Errorf("an hour after it was measured: %v", got)
	}
	// It goes on from a measurement in an hour of unknown air too, as if the air had been the next hour's: 20 + (10 − 20) × k = 16.32121.
	blind := air(weather.Unknown(), 20)
	blind[0].SurfaceC = 10
	k = at(t, b, blind, false).For(weather.Coat{Coating: coating(t, b, "ablative-cuprous-multi"), On: []tables.Material{material(t, b, "grp")}})
	if got := k.Surface(1).Typical; !(math.Abs(got-16.32121) <= 1e-5) {
		t.Errorf("an hour after it was measured in unknown air: %g", got)
	}
	// No air, no surface; and after that the history begins again, at the mean of what follows.
	hours = air(append(steady(10, 24), 20, 20)...)
	hours[5].AirC = weather.Unknown()
	k = at(t, b, hours, false).For(weather.Coat{Coating: coating(t, b, "ablative-cuprous-multi"), On: []tables.Material{material(t, b, "grp")}})
	if got := k.Surface(5); !math.IsNaN(got.Low) || !math.IsNaN(got.Typical) || k.Verdict(5) != finding.Ask || !k.Why(5).Has(weather.RuleMeasure) {
		t.Errorf("without air: %v, %v", got, k.Why(5))
	}
	if got := k.Surface(6).Typical; math.Abs(got-(18*10+2*20)/20.0) > 1e-9 {
		t.Errorf("after it: %g", got)
	}
}

// On, just under and just over each limit, with an estimate that is 2 K to both sides: steady air is the typical surface. The row goes on from 5 to 35 degC.
func TestEstimateAtTheLimits(t *testing.T) {
	b := tables.Default()
	damp := func(dew float64) float64 { // humidity of air of 20 degC
		h, err := weather.Humidity(b, 20, dew)
		if err != nil {
			t.Fatal(err)
		}
		return h
	}
	for name, x := range map[string]struct {
		air, humidity float64
		worst         finding.Verdict
		rule          finding.ID
	}{
		"all of it on the cold limit":       {7, 30, finding.Fine, weather.RuleMayPaint},
		"a part under it":                   {6.99, 30, finding.Ask, weather.RuleNearCold},
		"its warmest end on it":             {3, 30, finding.Ask, weather.RuleNearCold},
		"all of it under":                   {2.99, 30, finding.Forbidden, weather.RuleCold},
		"all of it on the hot limit":        {33, 30, finding.Fine, weather.RuleMayPaint},
		"a part over it":                    {33.01, 30, finding.Ask, weather.RuleNearHot},
		"its coldest end on it":             {37, 30, finding.Ask, weather.RuleNearHot},
		"all of it over":                    {37.01, 30, finding.Forbidden, weather.RuleHot},
		"3 K over the dew point, all of it": {20, damp(15), finding.Fine, weather.RuleMayPaint},
		"a part less":                       {20, damp(15.01), finding.Ask, weather.RuleNearDew},
		"all of it less":                    {20, damp(19.01), finding.Forbidden, weather.RuleDew},
	} {
		hours := air(steady(x.air, 3)...)
		for i := range hours {
			hours[i].HumidityPct = x.humidity
		}
		k := at(t, b, hours, false).For(weather.Coat{Coating: coating(t, b, "ablative-cuprous-multi"), On: []tables.Material{material(t, b, "grp")}})
		for i := range k.Len() {
			if why := k.Why(i); k.Verdict(i) != x.worst || why.Worst() != x.worst || !why.Has(x.rule) {
				t.Errorf("%s: %v, %v", name, k.Verdict(i), why)
			}
		}
		spoken(t, b, k.Why(0))
	}
}

// spoken holds every finding to a sentence that says all it means.
func spoken(tb testing.TB, b *tables.Book, fs finding.List) {
	tb.Helper()
	for _, f := range fs {
		text := b.Say(f, quantity.Metric)
		if strings.Contains(text, "not stated") || strings.ContainsAny(text, "{}") || strings.Contains(text, "NaN") || len(f.Basis) == 0 || strings.HasPrefix(text, string(f.Rule)) {
			tb.Errorf("%s: %s, %v", f.Rule, text, f.Basis)
		}
	}
}

// Conventional air spray goes on in up to 5 m/s; a roller does not mind.
func TestWindEndsSpraying(t *testing.T) {
	b := tables.Default()
	by := func(key string) tables.Loss {
		l, err := b.Loss(key)
		if err != nil {
			t.Fatal(err)
		}
		return l
	}
	for _, x := range []struct {
		by      string
		wind    float64
		covered bool
		worst   finding.Verdict
		rule    finding.ID
	}{
		{"air-spray", 4.9, false, finding.Fine, weather.RuleMayPaint},
		{"air-spray", 5, false, finding.Fine, weather.RuleMayPaint},
		{"air-spray", 5.1, false, finding.Forbidden, weather.RuleWind},
		{"air-spray", 5.14, false, finding.Forbidden, weather.RuleWind}, // told as 5.2
		{"air-spray", 5.1, true, finding.Fine, weather.RuleMayPaint},
		{"air-spray", weather.Unknown(), false, finding.Ask, weather.RuleMeasure},
		{"air-spray", weather.Unknown(), true, finding.Fine, weather.RuleMayPaint},
		{"airless-open", 6, false, finding.Fine, weather.RuleMayPaint},
		{"airless-open", 6.1, false, finding.Forbidden, weather.RuleWind},
		{"airless-sheltered", 7, false, finding.Fine, weather.RuleMayPaint},
		{"airless-sheltered", 7.1, false, finding.Forbidden, weather.RuleWind},
		{"roller", 25, false, finding.Fine, weather.RuleMayPaint},
		{"brush", weather.Unknown(), false, finding.Fine, weather.RuleMayPaint},
	} {
		hours := air(20, 20)
		hours[0].WindMS = x.wind
		k := at(t, b, hours, x.covered).For(weather.Coat{Coating: coating(t, b, "ablative-cuprous-multi"), On: []tables.Material{material(t, b, "grp")}, By: by(x.by)})
		if why := k.Why(0); k.Verdict(0) != x.worst || len(why) != 1 || !why.Has(x.rule) {
			t.Errorf("%s in %g m/s, covered %t: %v", x.by, x.wind, x.covered, why)
		}
		if x.rule == weather.RuleWind { // as an amount, to a tenth
			if v, ok := told(k.Why(0), x.rule, "wind").(quantity.Speed); !ok || math.Abs(v.Float(quantity.MetrePerSecond)-math.Ceil(x.wind*10-1e-9)/10) > 1e-9 {
				t.Errorf("%s in %g m/s: %v is told", x.by, x.wind, v)
			}
		}
		spoken(t, b, k.Why(0))
	}
}

// told is what a finding of the rule tells under the name.
func told(fs finding.List, rule finding.ID, name string) any {
	for _, f := range fs {
		for _, x := range f.Facts {
			if f.Rule == rule && x.Name == name {
				return x.Value
			}
		}
	}
	return nil
}

func TestBareTimberOnlyWhileItCools(t *testing.T) {
	b := tables.Default()
	// A day at 15 degC, up to 20 within three hours, then down.
	hours := air(append(steady(15, 24), 16, 18, 20, 20, 15, 10, 10)...)
	coat := weather.Coat{Coating: coating(t, b, "flexible-wood-primer"), On: []tables.Material{material(t, b, "wood-carvel")}, Falling: true}
	k := at(t, b, hours, false).For(coat)
	for i, rising := range map[int]bool{0: false, 10: false, 22: false, 23: true, 24: true, 25: true, 26: true, 27: false, 28: false, 29: false} {
		if why := k.Why(i); why.Has(weather.RuleWarming) != rising || (k.Verdict(i) == finding.Forbidden) != rising {
			t.Errorf("hour %d: %v", i, why)
		}
		spoken(t, b, k.Why(i))
	}
	coat.Falling = false
	if k := at(t, b, hours, false).For(coat); k.Why(24).Has(weather.RuleWarming) {
		t.Error("a coat that does not ask for it waits for the air to cool")
	}
	// After the last hour the air stays: a surface of 12 degC in air of 10 cools, one of 8 warms, and one of 10 does neither.
	for surface, rising := range map[float64]bool{12: false, 10: false, 8: true} {
		coat.Falling = true
		last := air(10, 10)
		last[1].SurfaceC = surface
		if why := at(t, b, last, false).For(coat).Why(1); why.Has(weather.RuleWarming) != rising {
			t.Errorf("%g degC in air of 10: %v", surface, why)
		}
	}
	// In the last hour but one it is known what the air does.
	if k := at(t, b, air(append(steady(10, 24), 20)...), false).For(weather.Coat{Coating: coat.Coating, On: []tables.Material{material(t, b, "wood-carvel")}, Falling: true}); !k.Why(23).Has(weather.RuleWarming) || k.Why(22).Has(weather.RuleWarming) {
		t.Errorf("before the last hour: %v, %v", k.Why(22), k.Why(23))
	}
	// By how much is told: of the 2 K to the air a skin with a lag of two hours makes 2 × (1 − exp(−0.5)) = 0.78694 in an hour.
	quick := lagged(t, "2")
	last := air(10, 10)
	last[1].SurfaceC = 8
	plastic := weather.Coat{Coating: coating(t, quick, "flexible-wood-primer"), On: []tables.Material{material(t, quick, "grp")}, Falling: true}
	if rise, ok := told(at(t, quick, last, false).For(plastic).Why(1), weather.RuleWarming, "rise").(float64); !ok || math.Abs(rise-0.78694) > 1e-5 {
		t.Errorf("from 8 degC in air of 10 it warms by %g K", rise)
	}
	// Of two parts the one that still warms counts: on the way down a skin of plastic cools at once, a keel of lead is behind.
	coat.On = []tables.Material{material(t, b, "grp"), material(t, b, "lead")}
	two := at(t, b, air(append(steady(10, 24), 14, 18, 22, 21, 20)...), false)
	if k := two.For(coat); !k.Why(27).Has(weather.RuleWarming) {
		t.Errorf("lead in falling air: %v", k.Why(27))
	}
	coat.On = coat.On[:1]
	if k := two.For(coat); k.Why(27).Has(weather.RuleWarming) {
		t.Errorf("plastic in falling air: %v", k.Why(27))
	}
	// A surface that is measured hour by hour needs no material; what it does after the last is not known.
	coat.On = nil
	measured := air(10, 10, 10)
	measured[0].SurfaceC, measured[1].SurfaceC, measured[2].SurfaceC = 10, 8, 9
	if k := at(t, b, measured, false).For(coat); k.Why(0).Has(weather.RuleWarming) || !k.Why(1).Has(weather.RuleWarming) || k.Verdict(2) != finding.Ask {
		t.Errorf("measured: %v, %v, %v", k.Why(0), k.Why(1), k.Why(2))
	}
	// Nobody knows whether a surface warms that nobody knows.
	coat.On = []tables.Material{material(t, b, "wood-carvel")}
	blind := air(10, weather.Unknown())
	blind[1].SurfaceC = 10
	if k := at(t, b, blind, false).For(coat); k.Verdict(1) != finding.Ask || !k.Why(1).Has(weather.RuleMeasure) {
		t.Errorf("without air in the last hour: %v", k.Why(1))
	}
}

// A film is wetted by rain, and by dew where the surface is at the dew point or below it.
func TestWets(t *testing.T) {
	b := tables.Default()
	for name, x := range map[string]struct {
		surface, over, rain float64 // over: K by which the surface is over the dew point; surface Unknown: steady air
		covered             bool
		want                finding.Verdict
		rule                finding.ID
	}{
		"dry":                        {15, 5, 0, false, finding.Fine, weather.RuleStaysDry},
		"rain":                       {15, 5, 0.1, false, finding.Forbidden, weather.RuleRain},
		"rain on the roof":           {15, 5, 0.1, true, finding.Fine, weather.RuleStaysDry},
		"rain or not":                {15, 5, weather.Unknown(), false, finding.Ask, weather.RuleWetUnknown},
		"rain or not, on the roof":   {15, 5, weather.Unknown(), true, finding.Fine, weather.RuleStaysDry},
		"just over the dew point":    {15, 0.01, 0, false, finding.Fine, weather.RuleStaysDry},
		"just under":                 {15, -0.01, 0, false, finding.Forbidden, weather.RuleCondenses},
		"dew under a roof":           {15, -0.01, 0, true, finding.Forbidden, weather.RuleCondenses},
		"an estimate over it":        {weather.Unknown(), 2.01, 0, false, finding.Fine, weather.RuleStaysDry},
		"an estimate that straddles": {weather.Unknown(), 1.99, 0, false, finding.Ask, weather.RuleNearCondenses},
	} {
		surface := x.surface
		if math.IsNaN(surface) {
			surface = 20
		}
		hours := air(20, 20)
		hours[0].SurfaceC, hours[0].RainMM = x.surface, x.rain
		h, err := weather.Humidity(b, 20, surface-x.over)
		if err != nil {
			t.Fatal(err)
		}
		hours[0].HumidityPct = h
		k := at(t, b, hours, x.covered).For(weather.Coat{Coating: coating(t, b, "ablative-cuprous-multi"), On: []tables.Material{material(t, b, "grp")}})
		if why := k.WhyWets(0); k.Wets(0) != x.want || why.Worst() != x.want || !why.Has(x.rule) || len(why) != 1 {
			t.Errorf("%s: %v, %v", name, k.Wets(0), why)
		}
		rains, condenses := k.Rains(0), k.Condenses(0)
		if max(rains, condenses) != x.want || x.covered && rains != finding.Fine || (condenses != finding.Fine) != (x.rule == weather.RuleCondenses || x.rule == weather.RuleNearCondenses) {
			t.Errorf("%s: rain %v, dew %v", name, rains, condenses)
		}
		spoken(t, b, k.WhyWets(0))
	}
	// At the dew point itself it does; the surface is set to what the package reckons for the air.
	exact := air(20)
	dew, err := weather.DewPoint(b, exact[0].AirC, exact[0].HumidityPct)
	if err != nil {
		t.Fatal(err)
	}
	exact[0].SurfaceC = dew
	if got := at(t, b, exact, false).For(weather.Coat{Coating: coating(t, b, "ablative-cuprous-multi")}).Condenses(0); got != finding.Forbidden {
		t.Errorf("a surface at the dew point: %v", got)
	}
	dark := air(20)
	dark[0].HumidityPct, dark[0].RainMM = weather.Unknown(), weather.Unknown()
	k := at(t, b, dark, false).For(weather.Coat{Coating: coating(t, b, "ablative-cuprous-multi"), On: []tables.Material{material(t, b, "grp")}})
	if why := k.WhyWets(0); k.Wets(0) != finding.Ask || len(why) != 2 {
		t.Errorf("nothing known: %v", why)
	}
}

// Of parts that are painted at once the keel of cast iron is the coldest when the air warms, and the skin the warmest: both decide.
func TestColdestAndWarmestPart(t *testing.T) {
	b := tables.Default()
	grp, iron := material(t, b, "grp"), material(t, b, "cast-iron")
	c := coating(t, b, "ablative-cuprous-multi") // 5 to 35 degC
	hours := air(append(steady(3, 24), 8, 14, 20, 26, 32, 38, 44, 44, 44)...)
	site := at(t, b, hours, false)
	skin, keel, both := site.For(weather.Coat{Coating: c, On: []tables.Material{grp}}), site.For(weather.Coat{Coating: c, On: []tables.Material{iron}}), site.For(weather.Coat{Coating: c, On: []tables.Material{grp, iron}})
	for i := range hours {
		s, k, a := skin.Surface(i), keel.Surface(i), both.Surface(i)
		if a.Low != min(s.Low, k.Low) || a.High != max(s.High, k.High) || a.Typical != min(s.Typical, k.Typical) {
			t.Errorf("hour %d: %v of %v and %v", i, a, s, k)
		}
	}
	// At 20 degC the skin of plastic is warm enough by itself, and the keel is not yet.
	if skin.Verdict(26) != finding.Fine || both.Verdict(26) != finding.Ask || !both.Why(26).Has(weather.RuleNearCold) {
		t.Errorf("at 20 degC: %v and %v", skin.Why(26), both.Why(26))
	}
	if last := len(hours) - 1; !both.Why(last).Has(weather.RuleHot) || keel.Why(last).Has(weather.RuleHot) {
		t.Errorf("at 44 degC: %v and %v", both.Why(last), keel.Why(last))
	}
}

func TestWhatIsNotThere(t *testing.T) {
	b := tables.Default()
	c := coating(t, b, "ablative-cuprous-multi")
	k := at(t, b, air(20, 20), false).For(weather.Coat{Coating: c})
	if k.Verdict(0) != finding.Ask || !k.Why(0).Has(weather.RuleMeasure) || !math.IsNaN(k.Surface(0).Typical) {
		t.Errorf("without a material: %v", k.Why(0))
	}
	anode := material(t, b, "zinc-anode") // a row without a lag
	if k := at(t, b, air(20, 20), false).For(weather.Coat{Coating: c, On: []tables.Material{anode}}); k.Verdict(1) != finding.Ask {
		t.Errorf("a material without a lag: %v", k.Why(1))
	}
	measured := air(20, 20)
	measured[0].SurfaceC, measured[1].SurfaceC = 18, 18
	if k := at(t, b, measured, false).For(weather.Coat{Coating: c}); k.Verdict(0) != finding.Fine || k.Surface(1) != quantity.Exactly(18.0) {
		t.Errorf("measured, without a material: %v", k.Why(0))
	}
	for _, i := range []int{-1, 2} {
		if k.Verdict(i) != finding.Ask || k.Wets(i) != finding.Ask || k.Rains(i) != finding.Ask || k.Condenses(i) != finding.Ask || k.Why(i).Worst() != finding.Ask || k.WhyWets(i).Worst() != finding.Ask || !math.IsNaN(k.Surface(i).Low) {
			t.Errorf("hour %d of 2 is known", i)
		}
	}
	if k := at(t, b, nil, false).For(weather.Coat{Coating: c}); k.Len() != 0 {
		t.Errorf("%d hours of none", k.Len())
	}
	_, err := weather.At(&tables.Book{}, append(air(20), weather.Hour{AirC: 99}), false)
	for _, want := range []string{"hours[1].at", "hours[1].air", "surface-error", "wmo-no-8-b", "iso-8502-4-spread", "iso-12944-7-humidity"} {
		if err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("no word of %s in %v", want, err)
		}
	}
}

func ExampleSky() {
	b := tables.Default()
	c, err := b.Coating("ablative-cuprous-multi")
	if err != nil {
		fmt.Println(err)
		return
	}
	grp, err := b.Material("grp")
	if err != nil {
		fmt.Println(err)
		return
	}
	nine := time.Date(2027, time.April, 10, 9, 0, 0, 0, time.UTC)
	site, err := weather.At(b, []weather.Hour{
		{At: nine, AirC: 15, SurfaceC: 13, HumidityPct: 80},
		{At: nine.Add(time.Hour), AirC: 18, SurfaceC: 17, HumidityPct: 60},
	}, false)
	if err != nil {
		fmt.Println(err)
		return
	}
	sky := site.For(weather.Coat{Coating: c, On: []tables.Material{grp}})
	for i := range sky.Len() {
		fmt.Println(sky.Verdict(i))
	}
	// Output:
	// forbidden
	// fine
}
