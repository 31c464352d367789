package survey_test

import (
	"strings"
	"testing"

	"boatyard.example/bottomwork/antifoul/survey"
	"boatyard.example/bottomwork/compat"
	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

var (
	book = tables.Default()
	day  = date("2027-04-09")
)

func date(s string) quantity.Date {
	d, err := quantity.ParseDate(s)
	if err != nil {
		panic(err)
	}
	return d
}

func percent(n int64) quantity.Share { return quantity.Percent.N(n) }

func mm(n int64) quantity.Length { return quantity.Millimetre.N(n) }

// part is one sound part of the material with one known film, of which the rules of unknown films say nothing.
func part(material string) compat.Part {
	film, err := book.Coating("epoxy-barrier")
	if err != nil {
		panic(err)
	}
	return compat.Part{Name: "part", Zone: "hull", Material: material, Found: compat.Stack{{Coating: film, State: tables.Sound, For: compat.Found}}}
}

// seen judges one mark on the material, and fails where a sentence lacks a value.
func seen(t *testing.T, material string, m survey.Mark) survey.Answer {
	t.Helper()
	return judged(t, survey.Survey{Seen: []survey.Place{{Part: "part", Marks: []survey.Mark{m}}}}, part(material))
}

func judged(t *testing.T, s survey.Survey, parts ...compat.Part) survey.Answer {
	t.Helper()
	a, err := survey.Judge(book, s, parts, day)
	if err != nil {
		t.Fatalf("%+v: %v", s, err)
	}
	said := func(fs finding.List) {
		for _, f := range fs {
			for _, units := range []quantity.System{quantity.Metric, quantity.US} {
				text := book.Say(f, units)
				for _, bad := range []string{"(not stated)", "{", "not given", "%!", "  ", ": ."} {
					if strings.Contains(text, bad) {
						t.Errorf("%s says %q: %s", f.Rule, bad, text)
					}
				}
			}
			if !f.Verdict.Valid() {
				t.Errorf("%s without a verdict", f.Rule)
			}
		}
	}
	for _, x := range a.Advice {
		said(finding.List{x.Finding})
	}
	said(a.Open)
	said(a.Differs)
	said(a.Limits)
	for _, m := range a.Moisture {
		said(m.Findings)
	}
	return a
}

// urgency is the urgency of the one thing that was seen; 0 where nothing can be said.
func urgency(t *testing.T, material string, m survey.Mark) (tables.Urgency, string) {
	t.Helper()
	a := seen(t, material, m)
	switch len(a.Advice) {
	case 0:
		return 0, ""
	case 1:
		return a.Advice[0].Urgency, a.Advice[0].Row.Key
	}
	t.Fatalf("%+v on %s: %d answers", m, material, len(a.Advice))
	return 0, ""
}
