package tables_test

import (
	"testing"

	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

func TestSay(t *testing.T) {
	film := func(n int64) quantity.Film { return quantity.Micrometre.N(n) }
	day, err := quantity.NewDate(2027, 4, 3)
	if err != nil {
		t.Fatal(err)
	}
	b, err := tables.Load(folder(map[string]string{"rules.toml": `
[[rule]]
key = "over"
basis = "common practice"
says = "{about} goes over {against} with {film}, {n} coats, by {date}: {ratio}."
[[rule]]
key = "plain"
basis = "common practice"
says = "nothing to put in"
[[rule]]
key = "open"
basis = "common practice"
says = "a brace { that never closes, and {about"
[[rule]]
key = "close"
basis = "common practice"
says = "a brace } alone, then {about}{about}"
`}))
	if err != nil {
		t.Fatal(err)
	}
	for name, c := range map[string]struct {
		finding    finding.Finding
		metric, us string
	}{
		"all": {
			finding.Finding{Rule: "over", About: "hard film", Against: "epoxy", Facts: []finding.Fact{
				{Name: "film", Value: film(254)}, {Name: "n", Value: 3}, {Name: "date", Value: day}, {Name: "ratio", Value: 1.23456},
			}},
			"Hard film goes over epoxy with 254 µm (10.0 mil), 3 coats, by 2027-04-03: 1.23.",
			"Hard film goes over epoxy with 10.0 mil (254 µm), 3 coats, by 2027-04-03: 1.23.",
		},
		"range": {
			finding.Finding{Rule: "over", About: "x", Against: "y", Facts: []finding.Fact{
				{Name: "film", Value: quantity.Range[quantity.Film]{Low: film(127), Typical: film(200), High: film(254)}},
				{Name: "n", Value: quantity.Exactly(quantity.Month.N(1))},
				{Name: "date", Value: quantity.Range[float64]{Low: 1, Typical: 1.5, High: 2}},
				{Name: "ratio", Value: quantity.Exactly(0.5)},
			}},
			"X goes over y with 127 to 254 µm (5.00 to 10.0 mil), 1 month coats, by 1 to 2: 0.5.",
			"X goes over y with 5.00 to 10.0 mil (127 to 254 µm), 1 month coats, by 1 to 2: 0.5.",
		},
		"missing facts": {
			finding.Finding{Rule: "over", About: "x", Against: "y", Facts: []finding.Fact{{Name: "film", Value: quantity.Film{}}, {Name: "n", Value: 0}}},
			"X goes over y with not given, 0 coats, by (not stated): (not stated).",
			"X goes over y with not given, 0 coats, by (not stated): (not stated).",
		},
		"the first letter is no ASCII letter": {
			finding.Finding{Rule: "close", About: "ölfarbe"}, "A brace } alone, then ölfarbeölfarbe", "A brace } alone, then ölfarbeölfarbe",
		},
		"braces in a value stay": {
			finding.Finding{Rule: "over", About: "{against}", Against: "y"},
			"{against} goes over y with (not stated), (not stated) coats, by (not stated): (not stated).",
			"{against} goes over y with (not stated), (not stated) coats, by (not stated): (not stated).",
		},
		"plain":      {finding.Finding{Rule: "plain"}, "Nothing to put in", "Nothing to put in"},
		"open brace": {finding.Finding{Rule: "open", About: "x"}, "A brace { that never closes, and {about", "A brace { that never closes, and {about"},
		"unknown": {
			finding.Finding{Rule: "no-such-rule", Verdict: finding.Needs, About: "x"}, "no-such-rule: needs", "no-such-rule: needs",
		},
	} {
		if got := b.Say(c.finding, quantity.Metric); got != c.metric {
			t.Errorf("%s, metric:\n%s\nwant\n%s", name, got, c.metric)
		}
		if got := b.Say(c.finding, quantity.US); got != c.us {
			t.Errorf("%s, US:\n%s\nwant\n%s", name, got, c.us)
		}
	}
}

func TestSayBeginsWithAnyLetter(t *testing.T) {
	b, err := tables.Load(folder(map[string]string{"rules.toml": "[[rule]]\nkey = \"r\"\nbasis = \"assumption\"\nsays = \"{about} it is\"\n"}))
	if err != nil {
		t.Fatal(err)
	}
	for about, want := range map[string]string{"ölfarbe": "Ölfarbe it is", "élastique": "Élastique it is", "漆": "漆 it is", "": " it is", "2-pack": "2-pack it is"} {
		if got := b.Say(finding.Finding{Rule: "r", About: about}, quantity.Metric); got != want {
			t.Errorf("%q: %q, want %q", about, got, want)
		}
	}
}

func TestShow(t *testing.T) {
	for _, c := range []struct {
		v    any
		want string
	}{
		{"as it is", "as it is"},
		{-7, "-7"},
		{0.1 + 0.2, "0.3"},
		{1234567.0, "1.23e+06"},
		{quantity.Metre.N(10), "10 m (32.8 ft)"},
		{tables.Heavy, "heavy"},
		{finding.Wash, "wash"},
		{tables.Hard, "hard"},
		{true, "true"},
		{nil, "not given"},
		{quantity.Range[int]{Low: 2, Typical: 2, High: 4}, "2 to 4"},
		{quantity.Range[quantity.Length]{Low: quantity.Metre.N(1), High: quantity.Metre.N(2)}, "1 to 2 m (3.28 to 6.56 ft)"},
		{quantity.Range[quantity.Area]{}, "not given"},
		{quantity.Range[quantity.Volume]{High: quantity.Litre.N(2)}, "up to 2 L (0.528 US gal)"},
		{quantity.Exactly(quantity.Percent.N(5)), "5 %"},
		{quantity.Range[quantity.Duration]{Low: quantity.Hour.N(6)}, "6 h or more"},
	} {
		if got := tables.Show(c.v, quantity.Metric); got != c.want {
			t.Errorf("%v shows as %q, want %q", c.v, got, c.want)
		}
	}
}
