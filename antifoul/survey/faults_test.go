package survey_test

import (
	"errors"
	"strings"
	"testing"

	"boatyard.example/bottomwork/antifoul/survey"
	"boatyard.example/bottomwork/compat"
	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

// What is wrong is told as what it is, with what would be accepted; the ends of what is taken belong to it.
func TestWhatAFaultSays(t *testing.T) {
	mark := func(m survey.Mark) survey.Survey {
		return survey.Survey{Seen: []survey.Place{{Part: "part", Marks: []survey.Mark{m}}}}
	}
	meter := func(instrument string) survey.Survey {
		return survey.Survey{Moisture: []survey.Moisture{{Part: "part", Instrument: instrument, Meter: "m", Scale: "s"}}}
	}
	dry := func(reads float64) survey.Survey {
		return survey.Survey{Moisture: []survey.Moisture{{Part: "part", Instrument: "capacitance-meter", Meter: "m", Scale: "s", Reading: quantity.Exactly(3.0), HasDry: true, Dry: reads}}}
	}
	for name, c := range map[string]struct {
		s     survey.Survey
		kind  error // nil: it is taken
		says  string
		never string
	}{
		"ashore on the day looked at":       {survey.Survey{How: survey.How{On: day.AddDays(-3), Ashore: day.AddDays(-3)}}, nil, "", ""},
		"ashore after the day looked at":    {survey.Survey{How: survey.How{On: day.AddDays(-3), Ashore: day.AddDays(-2)}}, finding.ErrImpossible, "no later than " + day.AddDays(-3).String(), ""},
		"ashore on the day of the report":   {survey.Survey{How: survey.How{Ashore: day}}, nil, "", ""},
		"ashore after the report":           {survey.Survey{How: survey.How{Ashore: day.AddDays(1)}}, finding.ErrImpossible, "no later than " + day.String(), ""},
		"just washed, all and nothing seen": {survey.Survey{How: survey.How{On: day, Wash: quantity.Hour.N(0), Visible: percent(100)}}, nil, "", ""},
		"nothing visible":                   {survey.Survey{How: survey.How{Visible: percent(0)}}, nil, "", ""},
		"a mark of no size and share":       {mark(survey.Mark{What: "fouling", Size: mm(0), Share: percent(0)}), nil, "", ""},
		"a slip in a grade":                 {mark(survey.Mark{What: "fouling", Grades: []string{"nstm-081-1"}}), finding.ErrUnknown, "nstm-081-10", ""},
		"a grade of another scale":          {mark(survey.Mark{What: "fouling", Grades: []string{"iso-4628-3-ri-1"}}), finding.ErrUnknown, "grade", "iso-4628-3-ri-2"},
		"a grade where none is read":        {mark(survey.Mark{What: "chalking", Grades: []string{"nstm-081-10"}}), finding.ErrImpossible, "no grade", ""},
		"a grade of the one scale":          {mark(survey.Mark{What: "adhesion", Grades: []string{"astm-d3359-4a"}}), nil, "", ""},
		"two grades of two scales":          {mark(survey.Mark{What: "fouling", Grades: []string{"nstm-081-10", "nz-level-of-fouling-2"}}), nil, "", ""},
		"a dry place that reads nought":     {dry(0), nil, "", ""},
		"a dry place that reads a half":     {dry(0.5), nil, "", ""},
		"a dry place that reads below it":   {dry(-0.5), finding.ErrImpossible, "0 or more", ""},
		"no meter":                          {meter(""), finding.ErrMissing, "a moisture meter", "magnetic"},
		"a gauge of film for a meter":       {meter("magnetic"), finding.ErrUnknown, "a moisture meter", "ultrasonic"},
	} {
		fs := c.s.Check(book, []compat.Part{part("grp")}, day)
		switch {
		case c.kind == nil && len(fs) > 0:
			t.Errorf("%s: %v", name, fs)
		case c.kind != nil && (len(fs) != 1 || !errors.Is(fs[0], c.kind) || !strings.Contains(fs[0].Error(), c.says)):
			t.Errorf("%s: %v, want one that says %q", name, fs, c.says)
		case c.kind != nil && c.never != "" && strings.Contains(fs[0].Want, c.never):
			t.Errorf("%s: %v proposes %s", name, fs, c.never)
		}
	}
	// A meter that is not known is answered with those that there are, by their keys, and no gauge of film is among them.
	want := meter("no such meter").Check(book, []compat.Part{part("grp")}, day)[0].Want
	for x := range book.Instruments() {
		if strings.Contains(want, x.Key) != (x.Tells == tables.TellsMoist) {
			t.Errorf("%s: %t in %q", x.Key, strings.Contains(want, x.Key), want)
		}
	}
}

// One colour seen is held against the film's as well as two are.
func TestOneColourSeen(t *testing.T) {
	p := part("grp")
	p.Found[0].Colour = "red-oxide"
	for seen, want := range map[string]bool{"navy": true, "red-oxide": false} {
		a := judged(t, survey.Survey{Seen: []survey.Place{{Part: "part", Colours: []string{seen}}}}, p)
		if a.Differs.Has(survey.RuleColourDiffers) != want {
			t.Errorf("%s over red oxide: %v", seen, a.Differs)
		}
		for _, f := range a.Differs { // by the names of their rows
			x, _ := book.Colour("navy")
			y, _ := book.Colour("red-oxide")
			if len(f.Facts) != 2 || f.Facts[0].Value != x.Name || f.Facts[1].Value != y.Name {
				t.Errorf("told as %v", f.Facts)
			}
		}
	}
}
