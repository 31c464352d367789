package antifoul_test

import (
	"slices"
	"strings"
	"testing"

	"boatyard.example/bottomwork/antifoul"
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

// Air and surface of a logged coat are held against the coating's limits, 5 to 35 degC for the ablative, and the dew point; what was not noted is not known; and what was done is a caution, not forbidden any more.
func TestAirOfALoggedCoat(t *testing.T) {
	j := plannedJob(t, sheet)
	for name, c := range map[string]struct {
		lines []string
		rule  finding.ID
		v     finding.Verdict
	}{
		"fine":              {[]string{`air = "15 degC"`, `surface = "15 degC"`, `humidity = "50 %"`}, antifoul.RuleLogAirFine, finding.Fine},
		"nothing noted":     {nil, antifoul.RuleLogAirUnknown, finding.Ask},
		"as cold as may be": {[]string{`air = "5 degC"`, `surface = "5 degC"`, `humidity = "50 %"`}, antifoul.RuleLogAirFine, finding.Fine},
		"colder":            {[]string{`air = "4.9 degC"`, `surface = "4.9 degC"`, `humidity = "50 %"`}, antifoul.RuleLogCold, finding.Caution},
		"as hot as may be":  {[]string{`air = "35 degC"`, `surface = "35 degC"`, `humidity = "50 %"`}, antifoul.RuleLogAirFine, finding.Fine},
		"hotter":            {[]string{`air = "30 degC"`, `surface = "35.1 degC"`, `humidity = "50 %"`}, antifoul.RuleLogHot, finding.Caution},
		"rain":              {[]string{`air = "15 degC"`, `surface = "15 degC"`, `humidity = "50 %"`, `rain = true`}, antifoul.RuleLogRain, finding.Caution},
		"no rain":           {[]string{`air = "15 degC"`, `surface = "15 degC"`, `humidity = "50 %"`, `rain = false`}, antifoul.RuleLogAirFine, finding.Fine},
		"dew by humidity":   {[]string{`air = "15 degC"`, `surface = "7 degC"`, `humidity = "60 %"`}, antifoul.RuleLogDew, finding.Caution}, // dew point 7.3 degC
		"dew by dew point":  {[]string{`air = "15 degC"`, `surface = "8 degC"`, `dew_point = "7 degC"`}, antifoul.RuleLogDew, finding.Caution},
		"dry by dew point":  {[]string{`air = "15 degC"`, `surface = "15 degC"`, `dew_point = "4 degC"`}, antifoul.RuleLogAirFine, finding.Fine},
	} {
		k := logged(t, j, logHead+laid(c.lines...), "").Coats[0]
		i := slices.IndexFunc(k.Findings, func(f finding.Finding) bool { return f.Rule == c.rule })
		if i < 0 || k.Findings[i].Verdict != c.v {
			t.Errorf("%s: %s", name, rulesOf(k.Findings))
		}
		for _, f := range k.Findings {
			if said := j.Book.Say(f, quantity.Metric); f.Verdict == finding.Forbidden || strings.Contains(said, "(not stated)") {
				t.Errorf("%s: %v %s", name, f.Verdict, said)
			}
		}
	}
}

// Thinner that is not what was planned is told, with what was planned; none noted says nothing. Each deviation is told in its own words.
func TestThinnerAndDeviations(t *testing.T) {
	for _, c := range []struct {
		planned, noted string
		told           any // what was planned
	}{{"", "", nil}, {"", "0 %", nil}, {"", "5 %", "0 %"}, {"5 %", "5 %", nil}, {"5 %", "6 %", "5 %"}, {"5 %", "0 %", "5 %"}, {"5 %", "", nil}} {
		boat, lines := sheet, []string{`litres = "0.5 L"`}
		if c.planned != "" {
			boat = strings.Replace(boat, "by = \"roller\"", "by = \"roller\"\nthinner = \""+c.planned+"\"", 1)
		}
		if c.noted != "" {
			lines = append(lines, "thinner = \""+c.noted+"\"")
		}
		var told any
		for _, f := range logged(t, plannedJob(t, boat), logHead+laid(lines...), "").Coats[0].Findings {
			if f.Rule == antifoul.RuleLogThinner {
				told = factOf(f, "planned").(quantity.Share).String()
			}
		}
		if told != c.told {
			t.Errorf("planned %q, noted %q: told %v, want %v", c.planned, c.noted, told, c.told)
		}
	}
	var told []string
	for _, f := range logged(t, plannedJob(t, sheet), logHead+laid(`deviations = ["a run", "a fly"]`), "").Coats[0].Findings {
		if f.Rule == antifoul.RuleLogDeviation {
			told = append(told, factOf(f, "what").(string))
		}
	}
	if !slices.Equal(told, []string{"a run", "a fly"}) {
		t.Errorf("deviations told: %q", told)
	}
}
