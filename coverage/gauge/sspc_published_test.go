package gauge_test

import (
	"strconv"
	"testing"

	"boatyard.example/bottomwork/coverage/gauge"
	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

// spots makes readings of spots, each given by its readings in the unit.
func spots(unit string, list ...[]string) []gauge.Reading {
	var out []gauge.Reading
	for i, spot := range list {
		for _, r := range spot {
			f, err := quantity.Parse[quantity.Film](r + " " + unit)
			if err != nil {
				panic(err)
			}
			out = append(out, gauge.Reading{Spot: strconv.Itoa(i + 1), Film: f})
		}
	}
	return out
}

// times is so many spots of three like readings.
func times(n int, reading string) [][]string {
	var out [][]string
	for range n {
		out = append(out, []string{reading, reading, reading})
	}
	return out
}

func level(n int) string { return "sspc-pa2-level-" + strconv.Itoa(n) }

// W. Corbett, note of 25 November 2014: 12,500 ft2 are 15 areas, 75 spots, 225 readings. 3 + ceil((12500 − 1000)/1000) = 15.
func TestAreasSpotsAndReadings(t *testing.T) {
	t.Attr("source", "W. Corbett, 25 November 2014")
	s := gauge.Survey{Area: quantity.SquareFoot.N(12500), Nominal: quantity.Mil.N(8), Readings: spots("mil", times(75, "9")...)}
	v := accept(t, gauge.SSPCPA2, s)
	if !v.Passes || v.NeededAreas != 15 || v.Areas != 15 || v.Singles != 75 || v.Needed != 225 || v.Count != 225 {
		t.Errorf("%+v", v)
	}
	s.Readings = s.Readings[:224] // the last spot has two readings, so the last area four spots
	v = accept(t, gauge.SSPCPA2, s)
	if v.Passes || v.Areas != 14 || !v.Findings.Has(gauge.RuleAreasFew) || !v.Findings.Has(gauge.RuleSpotsFew) {
		t.Errorf("a reading less: %+v", v)
	}
	// Francis 2009, table 2: 500 m2 are 35 spots, which are 7 areas, 3 + ceil((500 − 100)/100); 105 readings.
	v = accept(t, gauge.SSPCPA2, gauge.Survey{Area: quantity.SquareMetre.N(500), Nominal: quantity.Mil.N(8), Readings: spots("mil", times(35, "9")...)})
	if !v.Passes || v.NeededAreas != 7 || v.Needed != 105 {
		t.Errorf("500 m2: %+v", v)
	}
}

// A specification of 8 to 12 mil at the level that holds where none is named: the lowest spot is 6.4, the highest 14.4 mil (training
// slides on the standard). One spot of each five is so thick or thin; the others keep the mean of the area inside 8 to 12.
func TestLowestAndHighestSpot(t *testing.T) {
	for _, c := range []struct {
		spot, others string
		passes       bool
		rule         finding.ID
	}{
		{"6.4", "9", true, gauge.RuleSingle},
		{"6.3", "9", false, gauge.RuleThin},
		{"6.5", "9", true, gauge.RuleSingle},
		{"14.4", "9", true, gauge.RuleMost},
		{"14.5", "9", false, gauge.RuleThick},
		{"14.3", "9", true, gauge.RuleMost},
	} {
		s := gauge.Survey{Area: quantity.SquareFoot.N(100), Nominal: quantity.Mil.N(8), Most: quantity.Mil.N(12)}
		s.Readings = spots("mil", append(times(4, c.others), times(1, c.spot)...)...)
		if v := accept(t, gauge.SSPCPA2, s); v.Passes != c.passes || !v.Findings.Has(c.rule) {
			t.Errorf("a spot of %s mil: passes %t, %v", c.spot, v.Passes, v.Findings)
		}
	}
}

// The readings 2.4, 2.6 and 2.9 mil make a spot of 7.9/3 = 2.6333 mil (Practical Math for the Protective Coatings Industry, as printed
// in a trade magazine, which gives 2.6).
func TestSpotOfThree(t *testing.T) {
	s := spots("mil", []string{"2.4", "2.6", "2.9"})
	if got := gauge.Mean([]quantity.Film{s[0].Film, s[1].Film, s[2].Film}).String(); got != "2.6333 mil" {
		t.Errorf("the spot is %s", got)
	}
	if got := gauge.Mean(nil); got.Given() {
		t.Errorf("no readings make %s", got)
	}
	if got := gauge.Mean([]quantity.Film{s[0].Film, {}}); got.Given() {
		t.Errorf("a reading that is not given makes %s", got)
	}
}

// A constructed set, worked by hand: spots of 150, 123, 193, 170 and 208 um, sum 844, mean 168.8; 150 to 250 um specified. Level 3 asks
// for spots from 0.8 × 150 = 120 to 1.2 × 250 = 300; levels 1 and 2 ask for spots from 150, and 123 is less.
func TestLevelsWorkedByHand(t *testing.T) {
	readings := spots("um", []string{"148", "152", "150"}, []string{"121", "125", "123"}, []string{"190", "196", "193"},
		[]string{"172", "168", "170"}, []string{"205", "211", "208"})
	for n, passes := range map[int]bool{1: false, 2: false, 3: true, 4: true, 5: true} {
		v := accept(t, level(n), gauge.Survey{Area: quantity.SquareMetre.N(10), Nominal: quantity.Micrometre.N(150), Most: quantity.Micrometre.N(250), Readings: readings})
		if v.Passes != passes || v.Mean.String() != "168.8 um" || v.Lowest.String() != "123.0 um" || v.Highest.String() != "208.0 um" || v.Below != 1 || v.Singles != 5 {
			t.Errorf("level %d: %+v", n, v)
		}
		if thin := v.Missing; passes == thin.Given() || !passes && thin.String() != "27.0 um" {
			t.Errorf("level %d: %s is missing", n, thin)
		}
	}
}

// Every level, on, under and over its limits: 100 to 200 um, five spots on one area. The limits are those of the table of levels.
func TestEveryLevelOnItsLimits(t *testing.T) {
	for n, limit := range map[int][2]string{1: {"100", "200"}, 2: {"100", "240"}, 3: {"80", "240"}, 4: {"80", "300"}, 5: {"80", ""}} {
		at := func(spot, others string) gauge.Verdict {
			return accept(t, level(n), gauge.Survey{
				Area: quantity.SquareMetre.N(5), Nominal: quantity.Micrometre.N(100), Most: quantity.Micrometre.N(200),
				Readings: spots("um", append(times(4, others), times(1, spot)...)...),
			})
		}
		step := func(f, by string) string {
			x, y := films(f)[0], films(by)[0]
			return x.Add(y).Number().String()
		}
		if v := at(limit[0], "150"); !v.Passes {
			t.Errorf("level %d: a spot of %s: %v", n, limit[0], v.Findings)
		}
		if v := at(step(limit[0], "-0.1"), "150"); v.Passes || !v.Findings.Has(gauge.RuleThin) {
			t.Errorf("level %d: a spot just under %s passes", n, limit[0])
		}
		if limit[1] == "" {
			if v := at("4000", "4000"); !v.Passes || v.Findings.Has(gauge.RuleMost) || v.Findings.Has(gauge.RuleMeanMost) {
				t.Errorf("level %d limits nothing above: %v", n, v.Findings)
			}
		} else {
			if v := at(limit[1], "150"); !v.Passes {
				t.Errorf("level %d: a spot of %s: %v", n, limit[1], v.Findings)
			}
			if v := at(step(limit[1], "0.1"), "150"); v.Passes || !v.Findings.Has(gauge.RuleThick) {
				t.Errorf("level %d: a spot just over %s passes", n, limit[1])
			}
			// The mean of the area: (4 × 200 + 200) ÷ 5 is 200 and stands; 0.5 more in one spot makes 200.1.
			if v := at("200", "200"); !v.Passes {
				t.Errorf("level %d: an area of 200: %v", n, v.Findings)
			}
			if v := at("200.5", "200"); !v.Findings.Has(gauge.RuleMeanThick) {
				t.Errorf("level %d: an area of 200.1 passes", n)
			}
		}
		// (4 × 104 + 84) ÷ 5 = 100 stands where a spot of 84 does; (4 × 104 + 83.5) ÷ 5 = 99.9 does not.
		if n >= 3 {
			if v := at("84", "104"); !v.Passes {
				t.Errorf("level %d: an area of 100: %v", n, v.Findings)
			}
			if v := at("83.5", "104"); v.Passes || !v.Findings.Has(gauge.RuleMeanThin) {
				t.Errorf("level %d: an area of 99.9 passes", n)
			}
		}
	}
}

// Single gauge readings are free at every level: 60, 100 and 140 make a spot of 100.
func TestSingleReadingsAreFree(t *testing.T) {
	for n := 1; n <= 5; n++ {
		var list [][]string
		for range 5 {
			list = append(list, []string{"60", "100", "140"})
		}
		v := accept(t, level(n), gauge.Survey{Area: quantity.SquareMetre.N(5), Nominal: quantity.Micrometre.N(100), Most: quantity.Micrometre.N(100), Readings: spots("um", list...)})
		if !v.Passes || v.Below != 0 {
			t.Errorf("level %d: %+v", n, v)
		}
	}
}

// A mean of thirds lies on its limit exactly: spots of 100.333… and 99.666… um have the mean 100.
func TestMeansAreExact(t *testing.T) {
	list := append(times(3, "100"), []string{"100", "100", "101"}, []string{"100", "100", "99"})
	v := accept(t, gauge.SSPCPA2, gauge.Survey{Area: quantity.SquareMetre.N(5), Nominal: quantity.Micrometre.N(100), Most: quantity.Micrometre.N(100), Readings: spots("um", list...)})
	if !v.Passes || v.Mean.String() != "100.0 um" || v.Lowest.String() != "99.6 um" || v.Highest.String() != "100.4 um" || v.Below != 1 {
		t.Errorf("%+v", v)
	}
}

// The US figures hold for an area in ft2: 100 ft2 and a little are two areas, though they are 9.29 m2, which is one.
func TestUSFiguresForSquareFeet(t *testing.T) {
	s := gauge.Survey{Area: quantity.SquareFoot.N(101), Nominal: quantity.Micrometre.N(100), Readings: spots("um", times(5, "120")...)}
	if v := accept(t, gauge.SSPCPA2, s); v.Passes || v.NeededAreas != 2 {
		t.Errorf("101 ft2: %+v", v)
	}
	s.Area = s.Area.To(quantity.SquareMetre, 4, quantity.Up)
	if v := accept(t, gauge.SSPCPA2, s); !v.Passes || v.NeededAreas != 1 {
		t.Errorf("%s: %+v", s.Area, v)
	}
	// ISO 19840 knows one count, and no spots: each reading is judged for itself.
	s.Area = quantity.SquareFoot.N(101)
	if v := accept(t, gauge.ISO19840, s); v.Needed != 15 || v.Singles != 15 {
		t.Errorf("ISO 19840 on 101 ft2: %d readings, %d singles, want 15 of each on 9.38 m2", v.Needed, v.Singles)
	}
}

// Readings without spots are spots of one reading: they make no area.
func TestReadingsWithoutSpots(t *testing.T) {
	v := accept(t, gauge.SSPCPA2, gauge.Survey{Area: quantity.SquareMetre.N(5), Nominal: quantity.Micrometre.N(100), Readings: gauge.Readings(films("120 120 120 120 120 120 120 120 120 120 120 120 120 120 120")...)})
	if v.Passes || v.Areas != 0 || v.Singles != 15 || !v.Findings.Has(gauge.RuleSpotsFew) || v.Findings.Has(gauge.RuleMean) {
		t.Errorf("%+v", v)
	}
}

// Spots of two zones never make one area, whatever their names.
func TestAreasLieInOneZone(t *testing.T) {
	readings := spots("um", times(5, "120")...)
	for i := range readings {
		readings[i].Zone = "flat"
		if i >= 6 {
			readings[i].Zone = "waterline"
		}
	}
	s := gauge.Survey{Area: quantity.SquareMetre.N(5), Nominal: quantity.Micrometre.N(100), Readings: readings}
	if v := accept(t, gauge.SSPCPA2, s); v.Areas != 0 || v.Singles != 5 {
		t.Errorf("two spots and three: %+v", v)
	}
}

// Every row of acceptance judges without a fault and says whole sentences, of a film right, too thin and too thick.
func TestEveryAcceptanceJudges(t *testing.T) {
	n := 0
	for a := range tables.Default().Acceptances() {
		n++
		for _, film := range []string{"120", "40", "900"} {
			accept(t, a.Key, gauge.Survey{Area: quantity.SquareMetre.N(1200), Nominal: quantity.Micrometre.N(100), Most: quantity.Micrometre.N(200), Readings: spots("um", times(5, film)...)})
		}
	}
	if n < 7 {
		t.Errorf("%d rows, want at least 7", n)
	}
}
