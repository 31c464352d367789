package gauge_test

import (
	"slices"
	"strings"
	"testing"
	"testing/fstest"

	"boatyard.example/bottomwork/coverage/gauge"
	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

// Nine in ten: two of twenty below are a tenth and stand, three do not; 90 % of 320 is 288 and stands, 287.9 does not. A low mean is no
// limit of it: twenty readings of which two are 288 and eighteen 320 have a mean of 316.8.
func TestNineInTenOnItsLimits(t *testing.T) {
	set := func(below int, low string) gauge.Survey {
		return survey(strings.Repeat(low+" ", below) + strings.Repeat("320 ", 20-below))
	}
	for name, c := range map[string]struct {
		s      gauge.Survey
		passes bool
		rule   finding.ID
	}{
		"a tenth on 90 %":     {set(2, "288"), true, gauge.RuleShare},
		"more than a tenth":   {set(3, "319.9"), false, gauge.RuleShareMany},
		"one just under 90 %": {set(1, "287.9"), false, gauge.RuleThin},
		"one on 90 %":         {set(1, "288"), true, gauge.RuleSingle},
		"none below":          {set(0, ""), true, gauge.RuleShare},
	} {
		v := accept(t, gauge.NinetyTen, c.s)
		if v.Passes != c.passes || !v.Findings.Has(c.rule) || v.Findings.Has(gauge.RuleMean) || v.Findings.Has(gauge.RuleMeanThin) {
			t.Errorf("%s: passes %t, %v", name, v.Passes, v.Findings)
		}
	}
}

// Where no greatest film was agreed, three times the nominal film is the guide of ISO 12944-5: 960 stands, 960.1 is asked about and does
// not fail. Where one was agreed, the guide is silent. Nine in ten has no guide.
func TestGuideWhereNoGreatestFilmWasAgreed(t *testing.T) {
	thick := func(f string) gauge.Survey { return survey(strings.Repeat("330 ", 19) + f) }
	if v := accept(t, gauge.ISO19840, thick("960")); !v.Passes || v.Findings.Has(gauge.RuleGuide) {
		t.Errorf("on the guide: %v", v.Findings)
	}
	if v := accept(t, gauge.ISO19840, thick("960.1")); !v.Passes || !v.Findings.Has(gauge.RuleGuide) || v.Findings.Worst() != finding.Caution {
		t.Errorf("over the guide: %v", v.Findings)
	}
	s := thick("1200")
	s.Most = quantity.Micrometre.N(1200)
	if v := accept(t, gauge.ISO19840, s); !v.Passes || v.Findings.Has(gauge.RuleGuide) {
		t.Errorf("on the most agreed: %v", v.Findings)
	}
	if v := accept(t, gauge.NinetyTen, thick("1200")); v.Findings.Has(gauge.RuleGuide) {
		t.Errorf("nine in ten: %v", v.Findings)
	}
}

// 1000 m2 are one inspection area, a little more are to be split; only ISO 19840 says so.
func TestSplit(t *testing.T) {
	for _, c := range []struct {
		standard, area string
		split          bool
	}{
		{gauge.ISO19840, "999.9 m2", false},
		{gauge.ISO19840, "1000 m2", false},
		{gauge.ISO19840, "1000.1 m2", true},
		{gauge.NinetyTen, "1000.1 m2", false},
	} {
		a, err := quantity.Parse[quantity.Area](c.area)
		if err != nil {
			t.Fatal(err)
		}
		s := survey(passes)
		s.Area = a
		if v := accept(t, c.standard, s); v.Findings.Has(gauge.RuleSplit) != c.split {
			t.Errorf("%s on %s: %v", c.standard, c.area, v.Findings)
		}
	}
}

// What is missing is told where the film is too thin, and only there. The second set by hand lacks 320 − 285 = 35 at its thinnest, and
// nothing in its mean of 321.5. The first has thin places too, and passes; too few readings lack readings, no film.
func TestMissing(t *testing.T) {
	if v := accept(t, gauge.ISO19840, survey(thin)); v.Missing.String() != "35 um" || v.MissingMean.Given() || !v.Findings.Has(gauge.RuleMissing) {
		t.Errorf("the second set: %s, %s", v.Missing, v.MissingMean)
	}
	if v := accept(t, gauge.ISO19840, survey(passes)); v.Missing.Given() || v.Findings.Has(gauge.RuleMissing) {
		t.Errorf("the first set: %s", v.Missing)
	}
	// 240 + 400 + 18 × 320 have the mean 320: only the place of 240 is too thin.
	if v := accept(t, gauge.ISO19840, survey("240 400 "+strings.Repeat("320 ", 18))); v.Missing.String() != "80 um" || v.MissingMean.Given() {
		t.Errorf("a mean on the nominal film: %s, %s", v.Missing, v.MissingMean)
	}
	// Three of 319.9 in twenty make the mean too thin and nothing else.
	if v := accept(t, gauge.ISO19840, survey("319.9 319.9 319.9 "+strings.Repeat("320 ", 17))); v.Missing.String() != "0.1 um" || !v.MissingMean.Given() || len(v.Findings.At(finding.Forbidden)) != 1 {
		t.Errorf("a mean just too thin: %s, %s, %v", v.Missing, v.MissingMean, v.Findings)
	}
	if v := accept(t, gauge.ISO19840, survey("330 330 330")); v.Passes || v.Missing.Given() {
		t.Errorf("too few readings: %s", v.Missing)
	}
	s := survey(strings.Repeat("330 ", 20))
	s.Most = quantity.Micrometre.N(325)
	if v := accept(t, gauge.ISO19840, s); v.Passes || v.Missing.Given() {
		t.Errorf("too thick: %s", v.Missing)
	}
}

// The sentences name what is judged and the limits as a person would write them.
func TestSentences(t *testing.T) {
	say := func(v gauge.Verdict) string {
		var out []string
		for _, f := range v.Findings {
			out = append(out, tables.Default().Say(f, quantity.Metric))
		}
		return strings.Join(out, "\n")
	}
	s := survey(passes)
	s.Nominal = quantity.Micrometre.N(310) // 300 and 298 lie below it, one reading lies on it
	text := say(accept(t, gauge.ISO19840, s))
	for _, want := range []string{"20 readings on 20 m²", "The mean of the readings is 338.7 µm", "the 310 µm", "no less than 248 µm", "2 of 20 readings lie below 310 µm"} {
		if !strings.Contains(text, want) {
			t.Errorf("%q is not said in\n%s", want, text)
		}
	}
	list := append(times(4, "120"), []string{"120", "120"})
	text = say(accept(t, gauge.SSPCPA2, gauge.Survey{Area: quantity.SquareMetre.N(5), Nominal: quantity.Micrometre.N(100), Readings: spots("um", list...)}))
	for _, want := range []string{"Whole areas of 5 spots on 5 m² (53.8 ft²): 0, too few", "1 of 5 spots have fewer than 3 readings", "The thinnest spot is 120"} {
		if !strings.Contains(text, want) {
			t.Errorf("%q is not said in\n%s", want, text)
		}
	}
	v := accept(t, gauge.SSPCPA2, gauge.Survey{Area: quantity.SquareMetre.N(5), Nominal: quantity.Micrometre.N(100), Readings: spots("um", times(5, "120")...)})
	if text := say(v); !strings.Contains(text, "The mean of the thinnest area is 120") || v.Findings.Has(gauge.RuleSpotsFew) {
		t.Errorf("not as it should be:\n%s", text)
	}
}

// A standard of one's own: spots of two readings, areas of two spots, a guide and no limit of single places above. One area to 1 m2, five beyond, which
// stands first among the rows.
const ownStandard = `[[sampling]]
key = "own-large"
name = "over 1 m2"
standard = "own"
over = "1 m2"
readings = 5
basis = "own table"
source = "her surveyor"
[[sampling]]
key = "own-small"
name = "to 1 m2"
standard = "own"
over = "0 m2"
up_to = "1 m2"
readings = 1
basis = "own table"
source = "her surveyor"
[[acceptance]]
key = "own"
name = "her own rule"
sampling = "own"
spot_readings = 2
area_spots = 2
least_mean = "100 %"
least_single = "80 %"
guide = "iso-12944-5-thickest"
basis = "own table"
source = "her surveyor"
`

func own(t *testing.T) *tables.Book {
	t.Helper()
	b, err := tables.Default().With(fstest.MapFS{"own.toml": {Data: []byte(ownStandard)}})
	if err != nil {
		t.Fatal(err)
	}
	return b
}

// Spots of two are means of two, whole or not; a spot of one reading is that reading. By hand: 100 and 140 are 120, 90 and 110 are 100, 95 alone.
func TestSpotsOfTwoReadings(t *testing.T) {
	s := gauge.Survey{Area: quantity.SquareMetre.N(1), Nominal: quantity.Micrometre.N(100), Readings: spots("um", []string{"100", "140"}, []string{"90", "110"}, []string{"95"})}
	v, err := gauge.Accept(own(t), "own", s)
	if err != nil || v.Singles != 3 || v.Areas != 1 || v.Highest.String() != "120.0 um" || v.Lowest.String() != "95 um" || v.Below != 1 || !v.Findings.Has(gauge.RuleSpotsFew) {
		t.Errorf("%+v, %v", v, err)
	}
	for _, f := range v.Findings {
		if got := fact(f, "single"); got != "spot" {
			t.Errorf("%s speaks of each %v", f.Rule, got)
		}
	}
	// Of a spot of three, two were read: 100 and 140 again.
	v = accept(t, gauge.SSPCPA2, gauge.Survey{Area: s.Area, Nominal: s.Nominal, Readings: spots("um", append(times(5, "110"), []string{"100", "140"})...)})
	if v.Highest.String() != "120.0 um" || v.Lowest.String() != "110.0 um" || v.Singles != 6 || v.Areas != 1 {
		t.Errorf("two of three: %+v", v)
	}
}

func fact(f finding.Finding, name string) any {
	for _, x := range f.Facts {
		if x.Name == name {
			return x.Value
		}
	}
	return nil
}

// A greatest film that was agreed silences the guide, though the standard has no limit by it.
func TestGuideIsSilentWhereAMostWasAgreed(t *testing.T) {
	s := gauge.Survey{Area: quantity.SquareMetre.N(1), Nominal: quantity.Micrometre.N(100), Readings: spots("um", []string{"400", "400"}, []string{"400", "400"})}
	for most, guided := range map[string]bool{"": true, "250 um": false} {
		if most != "" {
			s.Most = films("250")[0]
		}
		v, err := gauge.Accept(own(t), "own", s)
		if err != nil || v.Findings.Has(gauge.RuleGuide) != guided || v.Findings.Has(gauge.RuleThick) {
			t.Errorf("at most %q: %v, %v", most, v.Findings, err)
		}
		s.Most = quantity.Film{}
	}
}

// The bound of a line belongs to it, in whichever order the lines stand.
func TestLinesInAnyOrder(t *testing.T) {
	for area, want := range map[string]int{"0.9 m2": 1, "1 m2": 1, "1.1 m2": 5} {
		a, err := quantity.Parse[quantity.Area](area)
		if err != nil {
			t.Fatal(err)
		}
		if n, line, err := gauge.Needed(own(t), "own", a); err != nil || n != want {
			t.Errorf("%s: %d by %s, %v, want %d", area, n, line.Key, err, want)
		}
	}
}

// What says how many areas are wanted rests on the line of sampling and on how many spots make an area.
func TestAreasRestOnBothRows(t *testing.T) {
	b := tables.Default()
	row, err := b.Acceptance(gauge.SSPCPA2)
	if err != nil {
		t.Fatal(err)
	}
	_, line, err := gauge.Needed(b, row.Sampling, quantity.SquareMetre.N(5))
	if err != nil {
		t.Fatal(err)
	}
	v := accept(t, gauge.SSPCPA2, gauge.Survey{Area: quantity.SquareMetre.N(5), Nominal: quantity.Micrometre.N(100), Readings: spots("um", times(5, "120")...)})
	i := slices.IndexFunc(v.Findings, func(f finding.Finding) bool { return f.Rule == gauge.RuleAreas })
	if i < 0 || !slices.Equal(v.Findings[i].Basis, []finding.Basis{line.Basis("readings"), row.Basis("area_spots")}) {
		t.Errorf("%v", v.Findings)
	}
}

// The share of one is all or nothing; of none it is not given.
func TestShareOfFew(t *testing.T) {
	for _, c := range []struct {
		below, singles int
		want           string
	}{{0, 0, "not given"}, {0, 1, "0.0 %"}, {1, 1, "100.0 %"}, {1, 3, "33.4 %"}} {
		if got := (gauge.Verdict{Below: c.below, Singles: c.singles}).Share(); got.String() != c.want {
			t.Errorf("%d of %d: %s, want %s", c.below, c.singles, got, c.want)
		}
	}
}
