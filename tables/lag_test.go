package tables_test

import (
	"math"
	"strings"
	"testing"

	"boatyard.example/bottomwork/tables"
)

// The lags worked again from density in kg/m3, heat capacity in J/kgK and the thickness that stores heat for each surface that meets the air, in mm: thin in
// the wind (25 W/m2K), usual (14) and thick in still air (8). Beside the table's own comments this is a second transcription. Agreement: half a unit of the
// last digit that the table keeps, one under an hour and two over it.
func TestLagsFollowFromTheFormula(t *testing.T) {
	b := book(t)
	skins := map[string]struct {
		density, heat float64
		mm            [3]float64
	}{
		"grp": {1550, 1150, [3]float64{6, 10, 15}}, "carbon": {1550, 1050, [3]float64{3, 6, 12}},
		"wood-carvel": {600, 1800, [3]float64{10, 30, 50}}, "wood-sheathed": {600, 1800, [3]float64{10, 18, 30}},
		"ferrocement": {2400, 900, [3]float64{15, 22, 35}},
		"steel":       {7850, 470, [3]float64{4, 6, 10}}, "galvanised-steel": {7850, 470, [3]float64{3, 5, 8}}, "stainless-steel": {7900, 500, [3]float64{3, 6, 12}},
		"aluminium": {2700, 900, [3]float64{4, 6, 10}}, "copper-nickel": {8900, 380, [3]float64{3, 6, 10}}, "bronze": {8800, 380, [3]float64{3, 8, 20}},
		"polyethylene": {950, 2200, [3]float64{6, 10, 15}}, "fabric-tube": {1200, 1500, [3]float64{0.8, 1, 1.5}}, "transducer": {1400, 1300, [3]float64{5, 10, 20}},
		"cast-iron": {7200, 500, [3]float64{40, 75, 150}}, "lead": {11340, 129, [3]float64{40, 75, 150}},
	}
	for m := range b.Materials() {
		s, ok := skins[m.Key]
		if painted := m.Painted != tables.Never; painted != ok || painted != (m.Lag.Low > 0) {
			t.Errorf("%s: painted %t, worked again %t, lag %v", m.Key, painted, ok, m.Lag)
			continue
		}
		if !ok {
			continue
		}
		if kind := m.Basis("lag").Kind; kind != "derived" {
			t.Errorf("%s: the lag is %s", m.Key, kind)
		}
		for i, got := range [3]float64{m.Lag.Low, m.Lag.Typical, m.Lag.High} {
			want := s.density * s.heat * s.mm[i] / 1000 / [3]float64{25, 14, 8}[i] / 3600
			place := math.Pow(10, math.Floor(math.Log10(want))) // of the first digit
			if want >= 1 {
				place /= 10
			}
			if math.Abs(got-want) > 0.5*place+1e-9 {
				t.Errorf("%s: %g h, worked again %.3f", m.Key, got, want)
			}
		}
	}
}

func TestLagsAndWindsThatCannotBe(t *testing.T) {
	for text, want := range map[string]string{
		"[[material]]\nkey = \"grp\"\nbasis = \"own table\"\nsource = \"thermometer\"\nlag = 0\n":         "material[grp].lag",
		"[[material]]\nkey = \"grp\"\nbasis = \"own table\"\nsource = \"thermometer\"\nlag = [2, 1, 3]\n": "material[grp].lag",
		"[[material]]\nkey = \"grp\"\nbasis = \"own table\"\nsource = \"thermometer\"\nlag = \"2 h\"\n":   "material[grp].lag",
		"[[loss]]\nkey = \"air-spray\"\nbasis = \"own table\"\nsource = \"yard\"\nwind_max = \"0 m/s\"\n": "loss[air-spray].wind_max",
		"[[loss]]\nkey = \"air-spray\"\nbasis = \"own table\"\nsource = \"yard\"\nwind_max = 5\n":         "loss[air-spray].wind_max",
		"[[loss]]\nkey = \"air-spray\"\nbasis = \"own table\"\nsource = \"yard\"\nwind_max = \"5 m\"\n":   "loss[air-spray].wind_max",
	} {
		if _, err := book(t).With(ownFile(text)); err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("no word of %s in %v", want, err)
		}
	}
	if l, err := with(t, "[[loss]]\nkey = \"air-spray\"\nbasis = \"own table\"\nsource = \"yard\"\nwind_max = \"8 kn\"\n").Loss("air-spray"); err != nil || l.WindMax.String() != "8 kn" {
		t.Errorf("an own limit is %s, %v", l.WindMax, err)
	}
}
