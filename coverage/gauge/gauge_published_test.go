package gauge_test

import (
	"errors"
	"fmt"
	"strings"
	"testing"

	"boatyard.example/bottomwork/coverage/gauge"
	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

// Counts of readings: R. A. Francis, JPCL December 2009, tables 1 and 2 (the first line from memory); MSC.215(82), annex 3.
func TestReadingsNeeded(t *testing.T) {
	t.Attr("source", "ISO 19840 in Francis 2009; MSC.215(82)")
	for _, c := range []struct {
		standard string
		area     string
		want     int
	}{
		{"ISO 19840", "0.1 m2", 5},
		{"ISO 19840", "1 m2", 5},
		{"ISO 19840", "1.01 m2", 10},
		{"ISO 19840", "3 m2", 10},
		{"ISO 19840", "3.01 m2", 15},
		{"ISO 19840", "10 m2", 15},
		{"ISO 19840", "10.01 m2", 20},
		{"ISO 19840", "30 m2", 20},
		{"ISO 19840", "30.1 m2", 30},
		{"ISO 19840", "100 m2", 30},
		{"ISO 19840", "100.1 m2", 40},
		{"ISO 19840", "200 m2", 40},
		{"ISO 19840", "200.1 m2", 50},
		{"ISO 19840", "500 m2", 70},
		{"MSC.215(82), flat area", "5 m2", 1},
		{"MSC.215(82), flat area", "5.1 m2", 2},
		{"MSC.215(82), flat area", "500 m2", 100},
		{"SSPC-PA 2, metric", "10 m2", 1},
		{"SSPC-PA 2, metric", "10.1 m2", 2},
		{"SSPC-PA 2, metric", "30 m2", 3},
		{"SSPC-PA 2, metric", "100 m2", 3},
		{"SSPC-PA 2, metric", "500 m2", 7},
		{"SSPC-PA 2, US", "12500 ft2", 15},
	} {
		a, err := quantity.Parse[quantity.Area](c.area)
		if err != nil {
			t.Fatal(err)
		}
		n, line, err := gauge.Needed(tables.Default(), c.standard, a)
		if err != nil || n != c.want || line.Standard != c.standard {
			t.Errorf("%s on %s: %d, want %d; %v", c.standard, c.area, n, c.want, err)
		}
	}
}

func films(text string) []quantity.Film {
	var out []quantity.Film
	for _, f := range strings.Fields(text) {
		v, err := quantity.Parse[quantity.Film](f + " um")
		if err != nil {
			panic(err)
		}
		out = append(out, v)
	}
	return out
}

func survey(readings string) gauge.Survey {
	return gauge.Survey{Area: quantity.SquareMetre.N(20), Nominal: quantity.Micrometre.N(320), Readings: gauge.Readings(films(readings)...)}
}

const (
	passes = "330 345 352 310 300 338 361 325 340 372 355 329 298 341 366 350 333 327 344 358"
	thin   = "310 295 340 322 300 285 360 330 345 318 305 298 352 326 338 315 290 333 347 321"
)

func accept(t *testing.T, standard string, s gauge.Survey) gauge.Verdict {
	t.Helper()
	v, err := gauge.Accept(tables.Default(), standard, s)
	if err != nil {
		t.Fatal(err)
	}
	for _, f := range v.Findings {
		if text := tables.Default().Say(f, quantity.Metric); strings.Contains(text, "(not stated)") {
			t.Errorf("%s: %s", f.Rule, text)
		}
	}
	return v
}

// Two constructed sets, worked by hand: mean 338.7, lowest 298, 3 of 20 below 320, which ISO 19840 passes and nine in ten does not;
// mean 321.5, lowest 285, 9 of 20 below, which fails on the share alone.
func TestSetsWorkedByHand(t *testing.T) {
	v := accept(t, gauge.ISO19840, survey(passes))
	if !v.Passes || v.Mean.String() != "338.7 um" || v.Lowest.String() != "298 um" || v.Below != 3 || v.Needed != 20 {
		t.Errorf("the first set: %+v", v)
	}
	if v := accept(t, gauge.NinetyTen, survey(passes)); v.Passes || !v.Findings.Has(gauge.RuleShareMany) || v.Findings.Has(gauge.RuleThin) {
		t.Errorf("the first set by nine in ten: %v", v.Findings)
	}
	v = accept(t, gauge.ISO19840, survey(thin))
	if v.Passes || v.Mean.String() != "321.5 um" || v.Below != 9 || !v.Findings.Has(gauge.RuleShareMany) || len(v.Findings.At(finding.Forbidden)) != 1 {
		t.Errorf("the second set: %+v", v)
	}
}

// Exactly a fifth below fails, one fewer passes; on 80 % passes, under it fails; on the nominal mean passes, a tenth under it fails.
func TestOnAndUnderEachLimit(t *testing.T) {
	set := func(below, of int, low, high string) gauge.Survey {
		return survey(strings.Repeat(low+" ", below) + strings.Repeat(high+" ", of-below))
	}
	for name, c := range map[string]struct {
		s      gauge.Survey
		passes bool
		rule   finding.ID
	}{
		"a fifth below":       {set(4, 20, "310", "330"), false, gauge.RuleShareMany},
		"fewer than a fifth":  {set(3, 20, "310", "330"), true, gauge.RuleShare},
		"one on 80 %":         {set(1, 20, "256", "330"), true, gauge.RuleSingle},
		"one under 80 %":      {set(1, 20, "255.9", "330"), false, gauge.RuleThin},
		"mean on the nominal": {set(0, 20, "", "320"), true, gauge.RuleMean},
		"mean just under":     {set(3, 20, "319.9", "320"), false, gauge.RuleMeanThin},
		"one reading too few": {set(0, 19, "", "330"), false, gauge.RuleTooFew},
		"just enough":         {set(0, 20, "", "330"), true, gauge.RuleEnough},
	} {
		if v := accept(t, gauge.ISO19840, c.s); v.Passes != c.passes || !v.Findings.Has(c.rule) {
			t.Errorf("%s: passes %t, %v", name, v.Passes, v.Findings)
		}
	}
	tenth := set(2, 20, "288", "330")
	if v := accept(t, gauge.NinetyTen, tenth); !v.Passes {
		t.Errorf("a tenth on 90 %%: %v", v.Findings)
	}
	tenth.Most = quantity.Micrometre.N(330)
	if v := accept(t, gauge.ISO19840, tenth); !v.Passes || !v.Findings.Has(gauge.RuleMost) {
		t.Errorf("on the most agreed: %v", v.Findings)
	}
	tenth.Most = quantity.Micrometre.N(329)
	if v := accept(t, gauge.ISO19840, tenth); v.Passes || !v.Findings.Has(gauge.RuleThick) {
		t.Errorf("over the most agreed: %v", v.Findings)
	}
}

// The correction of ISO 19840 for a medium profile is 25 um a reading, from memory: 345 becomes 320.
func TestProfileIsTakenOff(t *testing.T) {
	s := survey(strings.Repeat("345 ", 20))
	s.Profile = "iso-19840-medium"
	if v := accept(t, gauge.ISO19840, s); !v.Passes || v.Mean.String() != "320.0 um" || !v.Findings.Has(gauge.RuleCorrected) {
		t.Errorf("%+v", v)
	}
	s.Readings[0].Film = quantity.Micrometre.N(344)
	if v := accept(t, gauge.ISO19840, s); v.Passes {
		t.Error("one reading less passes")
	}
}

func TestAllMistakesAtOnce(t *testing.T) {
	s := gauge.Survey{Readings: gauge.Readings(films("300 9999 -5")...), Nominal: quantity.Micrometre.N(320), Most: quantity.Micrometre.N(300), Profile: "rough"}
	_, err := gauge.Accept(tables.Default(), "ISO 1984", s)
	for _, word := range []string{"area", "readings[2]", "readings[3]", "most", "profile", "standard"} {
		if err == nil || !strings.Contains(err.Error(), word) {
			t.Errorf("%s is not named in\n%v", word, err)
		}
	}
	// A profile that has no correction is none to name here: those that have one are proposed.
	near := survey(passes)
	near.Profile = "iso-19840-mediun"
	if _, err := gauge.Accept(tables.Default(), gauge.ISO19840, near); err == nil || !strings.Contains(err.Error(), "did you mean iso-19840-medium") {
		t.Errorf("a slip in a profile: %v", err)
	}
	if _, err := gauge.Accept(&tables.Book{}, gauge.ISO19840, survey(passes)); !errors.Is(err, finding.ErrUnknown) {
		t.Errorf("an empty book: %v", err)
	}
	if _, _, err := gauge.Needed(tables.Default(), "ISO 19840", quantity.Area{}); !errors.Is(err, finding.ErrImpossible) {
		t.Errorf("no area: %v", err)
	}
}

func ExampleAccept() {
	book := tables.Default()
	v, err := gauge.Accept(book, gauge.ISO19840, survey(thin))
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println("passes:", v.Passes)
	for _, f := range v.Findings.At(finding.Forbidden) {
		fmt.Println(book.Say(f, quantity.Metric))
	}
	// Output:
	// passes: false
	// 9 of 20 readings lie below 320 µm (12.6 mil), too many: the rule allows fewer than 20 %.
}
