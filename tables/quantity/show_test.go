package quantity_test

import (
	"strings"
	"testing"

	"github.com/shopspring/decimal"

	"boatyard.example/bottomwork/tables/quantity"
)

// Three significant digits on either side of a power of ten, of any size. By
// hand: 25.374/25.4 = 0.99898, 25.38/25.4 = 0.99921, 25.39/25.4 = 0.99961,
// 25.42/25.4 = 1.0008, 25.6/25.4 = 1.0079.
func TestShowDigits(t *testing.T) {
	for n, want := range map[string]string{
		"25.374": "0.999", "25.38": "0.999", "25.39": "1.00", "25.3999999999999999": "1.00", "25.4": "1.00",
		"25.4000000000000001": "1.00", "25.42": "1.00", "25.6": "1.01",
	} {
		if got := quantity.Micrometre.Of(num(n)).Show(quantity.US); !strings.HasPrefix(got, want+" mil (") {
			t.Errorf("%s um is shown as %s, want %s mil", n, got, want)
		}
		for exp := int32(-12); exp <= 12; exp++ {
			film := quantity.Micrometre.Of(num(n).Shift(exp))
			shown, err := quantity.Parse[quantity.Film](strings.SplitN(film.Show(quantity.US), " (", 2)[0])
			if w := num(want).Shift(exp); err != nil || !shown.Number().Equal(w) {
				t.Errorf("%s is shown as %s, %v, want %s mil", film, shown, err, w)
			}
		}
	}
}

// The converted numbers are worked out by hand from the exact factors.
func TestShow(t *testing.T) {
	for _, c := range []struct {
		a          interface{ Show(quantity.System) string }
		metric, us string
	}{
		{parse[quantity.Length](t, "9.80 m"), "9.80 m (32.2 ft)", "32.2 ft (9.80 m)"},
		{parse[quantity.Length](t, "50 ft"), "15.2 m (50 ft)", "50 ft (15.2 m)"},
		{parse[quantity.Length](t, "6 in"), "152 mm (6 in)", "6 in (152 mm)"},
		{parse[quantity.Length](t, "0 m"), "0 m (0 ft)", "0 ft (0 m)"},
		{parse[quantity.Length](t, "-2 m"), "-2 m (-6.56 ft)", "-6.56 ft (-2 m)"},
		{parse[quantity.Area](t, "1234 m2"), "1234 m² (13300 ft²)", "13300 ft² (1234 m²)"},
		{parse[quantity.Film](t, "125 um"), "125 µm (4.92 mil)", "4.92 mil (125 µm)"},
		{parse[quantity.Film](t, "25.4 um"), "25.4 µm (1.00 mil)", "1.00 mil (25.4 µm)"},
		{parse[quantity.Film](t, "253.9 um"), "253.9 µm (10.0 mil)", "10.0 mil (253.9 µm)"}, // 9.996
		{parse[quantity.Film](t, "253.8 um"), "253.8 µm (9.99 mil)", "9.99 mil (253.8 µm)"}, // 9.992
		{parse[quantity.Film](t, "0.01 um"), "0.01 µm (0.000394 mil)", "0.000394 mil (0.01 µm)"},
		{parse[quantity.Volume](t, "2.5 L"), "2.5 L (0.660 US gal)", "0.660 US gal (2.5 L)"},
		{parse[quantity.Volume](t, "750 mL"), "750 mL (0.198 US gal)", "0.198 US gal (750 mL)"},
		{parse[quantity.Volume](t, "0.5 US gal"), "1.89 L (0.5 US gal)", "0.5 US gal (1.89 L)"},
		{parse[quantity.Volume](t, "0.264 US gal"), "999 mL (0.264 US gal)", "0.264 US gal (999 mL)"},                                                 // 0.99935 L
		{parse[quantity.Volume](t, "0.265 US gal"), "1.00 L (0.265 US gal)", "0.265 US gal (1.00 L)"},                                                 // 1.00313 L
		{parse[quantity.Volume](t, "0.2199692482990878 imp gal"), "1.00 L (0.2199692482990878 imp gal)", "0.264 US gal (0.2199692482990878 imp gal)"}, // a litre: 1/4.54609
		{parse[quantity.Volume](t, "1 US gal"), "3.79 L (1 US gal)", "1 US gal (3.79 L)"},
		{parse[quantity.Volume](t, "0 US gal"), "0 L (0 US gal)", "0 US gal (0 L)"},
		{parse[quantity.Volume](t, "1 US qt"), "946 mL (1 US qt)", "1 US qt (946 mL)"},
		{parse[quantity.Volume](t, "1 imp gal"), "4.55 L (1 imp gal)", "1.20 US gal (1 imp gal)"},
		{parse[quantity.Spread](t, "9 m2/L"), "9 m²/L (367 ft²/US gal)", "367 ft²/US gal (9 m²/L)"},
		{parse[quantity.Mass](t, "2 t"), "2 t (4410 lb)", "4410 lb (2 t)"},
		{parse[quantity.Temperature](t, "10 degC"), "10 °C (50.0 °F)", "50.0 °F (10 °C)"},
		{parse[quantity.Temperature](t, "32 degF"), "0 °C (32 °F)", "32 °F (0 °C)"},
		{parse[quantity.WorkRate](t, "6 m2/h"), "6 m²/h (64.6 ft²/h)", "64.6 ft²/h (6 m²/h)"},
		{parse[quantity.Share](t, "45 %"), "45 %", "45 %"},
		{parse[quantity.Speed](t, "6 kn"), "6 kn", "6 kn"},
		{parse[quantity.Duration](t, "16 h"), "16 h", "16 h"},
		{parse[quantity.Months](t, "1 month"), "1 month", "1 month"},
		{parse[quantity.Months](t, "2 years"), "2 years", "2 years"},
		{parse[quantity.Potential](t, "-950 mV"), "-950 mV", "-950 mV"},
		{parse[quantity.Density](t, "1.4 kg/L"), "1.4 kg/L", "1.4 kg/L"},
		{parse[quantity.Release](t, "10 ug/cm2/d"), "10 µg/cm²/d", "10 µg/cm²/d"},
		{quantity.Film{}, "not given", "not given"},
	} {
		if got := c.a.Show(quantity.Metric); got != c.metric {
			t.Errorf("metric: %q, want %q", got, c.metric)
		}
		if got := c.a.Show(quantity.US); got != c.us {
			t.Errorf("us: %q, want %q", got, c.us)
		}
	}
	if got := quantity.Foot.N(50).Show(0); got != "50 ft (15.2 m)" {
		t.Errorf("unset: %q", got)
	}
}

func TestShowRange(t *testing.T) {
	um := quantity.Micrometre
	for _, c := range []struct {
		r          quantity.Range[quantity.Film]
		metric, us string
	}{
		{quantity.Range[quantity.Film]{Low: um.N(40), Typical: um.N(50), High: um.N(60)}, "40 to 60 µm (1.57 to 2.36 mil)", "1.57 to 2.36 mil (40 to 60 µm)"},
		{quantity.Range[quantity.Film]{Low: quantity.Mil.N(2), High: um.N(100)}, "50.8 to 100 µm (2 to 3.94 mil)", "2 to 3.94 mil (50.8 to 100 µm)"},
		{quantity.Exactly(um.N(127)), "127 µm (5.00 mil)", "5.00 mil (127 µm)"},
		{quantity.Range[quantity.Film]{Low: um.N(127), High: quantity.Mil.N(5)}, "127 µm (5.00 mil)", "5.00 mil (127 µm)"},
		{quantity.Range[quantity.Film]{Low: um.N(40)}, "40 µm or more (1.57 mil or more)", "1.57 mil or more (40 µm or more)"},
		{quantity.Range[quantity.Film]{High: um.N(60)}, "up to 60 µm (2.36 mil)", "up to 2.36 mil (60 µm)"},
		{quantity.Range[quantity.Film]{Typical: um.N(50)}, "not given", "not given"},
	} {
		if got := quantity.ShowRange(c.r, quantity.Metric); got != c.metric {
			t.Errorf("metric: %q, want %q", got, c.metric)
		}
		if got := quantity.ShowRange(c.r, quantity.US); got != c.us {
			t.Errorf("us: %q, want %q", got, c.us)
		}
	}
	life := quantity.Range[quantity.Months]{Low: quantity.Month.N(18), High: quantity.Year.N(2)}
	if got := quantity.ShowRange(life, quantity.US); got != "18 to 24.0 months" {
		t.Errorf("life: %q", got)
	}
}

func TestSystem(t *testing.T) {
	for _, s := range []quantity.System{quantity.Metric, quantity.US} {
		if got, err := quantity.ParseSystem(s.String()); got != s || err != nil {
			t.Errorf("%s reads as %s, %v", s, got, err)
		}
		var again quantity.System
		text, err := s.MarshalText()
		if err != nil || again.UnmarshalText(text) != nil || again != s {
			t.Errorf("%s is written %q and read as %s, %v", s, text, again, err)
		}
	}
	for _, s := range []string{"", "Metric", "imperial", "unset"} {
		if got, err := quantity.ParseSystem(s); got != 0 || err == nil {
			t.Errorf("%q reads as %s, %v", s, got, err)
		}
	}
}

// Beyond the range of floats a converted number is whole: by hand 10^400 m are 3.2808…·10^400 ft, of 401 digits, and 10^-310 m are none.
func TestShowBeyondFloats(t *testing.T) {
	feet, _, _ := strings.Cut(quantity.Metre.Of(decimal.New(1, 400)).Show(quantity.US), " (")
	if digits := strings.TrimSuffix(feet, " ft"); len(digits) != 401 || !strings.HasPrefix(digits, "328083989501312335958005249343832") {
		t.Errorf("10^400 m are %s", feet)
	}
	if feet := quantity.Metre.Of(decimal.New(1, -310)).Show(quantity.US); !strings.HasPrefix(feet, "0 ft (") {
		t.Errorf("10^-310 m are %s", feet)
	}
	// 3.048·10^-301 m are 10^-300 ft, the least that still has three digits.
	feet, _, _ = strings.Cut(quantity.Metre.Of(decimal.New(3048, -304)).Show(quantity.US), " ft (")
	if n, err := decimal.NewFromString(feet); err != nil || !n.Equal(decimal.New(1, -300)) {
		t.Errorf("3.048·10^-301 m are %s ft, %v", feet, err)
	}
}
