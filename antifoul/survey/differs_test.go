package survey_test

import (
	"slices"
	"testing"

	"boatyard.example/bottomwork/antifoul/survey"
	"boatyard.example/bottomwork/compat"
	"boatyard.example/bottomwork/compat/oldfilm"
	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

func rules(fs finding.List) []finding.ID {
	var out []finding.ID
	for _, f := range fs {
		out = append(out, f.Rule)
	}
	return out
}

// Where a look and what is said of the part do not agree it is told, and only there.
func TestContradictionsAreTold(t *testing.T) {
	found := func(key, colour string, state tables.Condition) compat.Part {
		p := part("grp")
		p.Found[0].Coating, _ = book.Coating(key)
		p.Found[0].Colour, p.Found[0].State = colour, state
		return p
	}
	read := found("ablative-old", "", tables.Sound)
	read.Readings = oldfilm.Readings{Flaking: percent(30)}
	marked := func(marks ...survey.Mark) survey.Place { return survey.Place{Part: "part", Marks: marks} }
	for name, c := range map[string]struct {
		part compat.Part
		seen survey.Place
		want []finding.ID
	}{
		"the same film":                     {found("ablative-old", "red-oxide", tables.Sound), survey.Place{Coating: "ablative-old", Colours: []string{"red-oxide"}, State: tables.Sound}, nil},
		"an old film of that kind":          {found("ablative-cuprous-multi", "", tables.Sound), survey.Place{Coating: "ablative-old"}, nil},
		"another film":                      {found("hard-old", "", tables.Sound), survey.Place{Coating: "ablative-old"}, []finding.ID{survey.RuleCoatingDiffers}},
		"a type where another was found":    {found("hard-cuprous", "", tables.Sound), survey.Place{Coating: "hard-copper-free"}, []finding.ID{survey.RuleCoatingDiffers}},
		"a film where none was reported":    {compat.Part{Name: "part", Zone: "hull", Material: "grp"}, survey.Place{Coating: "ablative-old"}, []finding.ID{survey.RuleCoatingDiffers}},
		"another colour on top":             {found("ablative-old", "red-oxide", tables.Sound), survey.Place{Colours: []string{"navy", "red-oxide"}}, []finding.ID{survey.RuleColourDiffers}},
		"no colour was reported":            {found("ablative-old", "", tables.Sound), survey.Place{Colours: []string{"navy"}}, nil},
		"no colour was seen":                {found("ablative-old", "red-oxide", tables.Sound), survey.Place{}, nil},
		"a worse state":                     {found("ablative-old", "", tables.Sound), survey.Place{State: "flaking"}, []finding.ID{survey.RuleStateWorse}},
		"a milder state":                    {found("ablative-old", "", "flaking"), survey.Place{State: tables.Sound}, []finding.ID{survey.RuleStateMilder}},
		"the same state":                    {found("ablative-old", "", "worn"), survey.Place{State: "worn"}, nil},
		"no state was reported":             {found("ablative-old", "", tables.NotReported), survey.Place{State: "worn"}, []finding.ID{survey.RuleStateNotReported}},
		"a worse state by what was seen":    {found("ablative-old", "", tables.Sound), marked(survey.Mark{What: "flaking", Share: percent(30)}), []finding.ID{survey.RuleStateWorse}},
		"the readings say it already":       {read, marked(survey.Mark{What: "flaking", Share: percent(30)}), nil},
		"the readings say more":             {read, survey.Place{State: tables.Sound}, []finding.ID{survey.RuleStateMilder}},
		"nothing was said of the state":     {found("ablative-old", "", "flaking"), survey.Place{}, nil},
		"a share that the grade has not":    {found("ablative-old", "", tables.Sound), marked(survey.Mark{What: "fouling", Grades: []string{"nz-level-of-fouling-2"}, Share: percent(6)}), []finding.ID{survey.RuleShareNotGrade}},
		"a share below the grade":           {found("ablative-old", "", tables.Sound), marked(survey.Mark{What: "fouling", Grades: []string{"nz-level-of-fouling-3"}, Share: percent(5)}), []finding.ID{survey.RuleShareNotGrade}},
		"the least share of the grade":      {found("ablative-old", "", tables.Sound), marked(survey.Mark{What: "fouling", Grades: []string{"nz-level-of-fouling-3"}, Share: percent(6)}), nil},
		"the greatest share of the grade":   {found("ablative-old", "", tables.Sound), marked(survey.Mark{What: "fouling", Grades: []string{"nz-level-of-fouling-3"}, Share: percent(15)}), nil},
		"a share between two whole numbers": {found("ablative-old", "", tables.Sound), marked(survey.Mark{What: "fouling", Grades: []string{"nz-level-of-fouling-2"}, Share: percent(5)}), nil},
	} {
		c.seen.Part = "part"
		a := judged(t, survey.Survey{Seen: []survey.Place{c.seen}}, c.part)
		if got := rules(a.Differs); !slices.Equal(got, c.want) {
			t.Errorf("%s: %v, want %v", name, got, c.want)
		}
	}
}

// The worst place of a part is held against its state: a sound place beside it takes nothing from that.
func TestTheWorstPlaceCounts(t *testing.T) {
	p := part("grp")
	p.Found[0].State = "flaking"
	sound, flaking := survey.Place{Part: "part", Zone: "flat", State: tables.Sound}, survey.Place{Part: "part", Zone: "edges", State: "flaking"}
	for _, seen := range [][]survey.Place{{sound, flaking}, {flaking, sound}, {sound, flaking, sound}} {
		if a := judged(t, survey.Survey{Seen: seen}, p); len(a.Differs) != 0 {
			t.Errorf("%v", rules(a.Differs))
		}
	}
}

// What is told of a difference: what was seen, what was taken, and the rows by which the two states are judged.
func TestWhatADifferenceTells(t *testing.T) {
	bare := compat.Part{Name: "part", Zone: "hull", Material: "grp"}
	a := judged(t, survey.Survey{Seen: []survey.Place{{Part: "part", Coating: "ablative-old"}}}, bare)
	old, err := book.Coating("ablative-old")
	if err != nil {
		t.Fatal(err)
	}
	if len(a.Differs) != 1 || a.Differs[0].Facts[0].Value != old.Name || a.Differs[0].Facts[1].Value != "not reported" {
		t.Errorf("a film where none was reported: %+v", a.Differs)
	}
	a = judged(t, survey.Survey{Seen: []survey.Place{{Part: "part", Coating: "ablative-old"}}}, part("grp"))
	if barrier, _ := book.Coating("epoxy-barrier"); len(a.Differs) != 1 || a.Differs[0].Facts[1].Value != barrier.Name {
		t.Errorf("another film than was reported: %+v", a.Differs)
	}
	a = judged(t, survey.Survey{Seen: []survey.Place{{Part: "part", State: "flaking"}}}, part("grp"))
	var want []finding.Basis
	for _, c := range []tables.Condition{"flaking", tables.Sound} {
		row, err := book.Condition(c)
		if err != nil {
			t.Fatal(err)
		}
		want = append(want, row.Basis("verdict"))
	}
	if len(a.Differs) != 1 || !slices.Equal(a.Differs[0].Basis, want) {
		t.Errorf("a state that differs: %+v, want the bases %+v", a.Differs, want)
	}
}

// A film that nobody has identified asks for a test, once for all such parts, and never for what carries no paint.
func TestUnknownFilms(t *testing.T) {
	old := part("grp")
	old.Found[0].Coating, _ = book.Coating(tables.UnknownOld)
	none, anode := part("steel"), part("zinc-anode")
	none.Name, none.Found = "keel", nil
	anode.Name, anode.Found = "anode", nil
	a := judged(t, survey.Survey{}, old, none, anode)
	if len(a.Advice) != 1 || a.Advice[0].About != "part, keel" || a.Advice[0].Finding.Rule != survey.RuleFilmUnknown || a.Advice[0].Urgency != tables.ThisHaulOut {
		t.Errorf("%+v", a.Advice)
	}
	if c, _ := book.Coating(tables.UnknownOld); len(a.Advice) == 1 && !slices.Equal(a.Advice[0].Finding.Basis, []finding.Basis{c.Basis("hazards")}) {
		t.Errorf("on the basis of %+v, not of what an unknown film may do", a.Advice[0].Finding.Basis)
	}
	if a := judged(t, survey.Survey{}, part("grp")); len(a.Advice) != 0 {
		t.Errorf("a known film asks for %+v", a.Advice)
	}
}

// What a meter reads is held against a dry place only where it reads on the material.
func TestMoisture(t *testing.T) {
	at := func(instrument string, low, typical, high, dry float64) survey.Moisture {
		return survey.Moisture{
			Part: "part", Instrument: instrument, Meter: "a meter", Scale: "0 to 100", Dry: dry, HasDry: dry >= 0,
			Reading: quantity.Range[float64]{Low: low, Typical: typical, High: high},
		}
	}
	how := survey.How{On: day, Ashore: date("2027-03-01"), Wash: quantity.Day.N(30)}
	for _, c := range []struct {
		material string
		m        survey.Moisture
		rules    []finding.ID
		advice   int
	}{
		{"grp", at("capacitance-meter", 10, 12, 15, 12), []finding.ID{survey.RuleMeterReads, survey.RuleMoistureAsDry}, 0},
		{"grp", at("capacitance-meter", 10, 12.1, 15, 12), []finding.ID{survey.RuleMeterReads, survey.RuleMoistureHigher}, 1},
		{"grp", at("capacitance-meter", 10, 12, 15, -1), []finding.ID{survey.RuleMeterReads, survey.RuleMoistureAlone}, 0},
		{"carbon", at("capacitance-meter", 10, 90, 95, 12), []finding.ID{survey.RuleMeterNot}, 0},
		{"grp", at("pin-meter", 10, 90, 95, 12), []finding.ID{survey.RuleMeterNot}, 0},
		{"wood-sheathed", at("pin-meter", 10, 90, 95, 12), []finding.ID{survey.RuleMeterBeware, survey.RuleMoistureHigher}, 1},
		{"wood-carvel", at("pin-meter", 10, 20, 25, 12), []finding.ID{survey.RuleMeterReads, survey.RuleMoistureHigher}, 0}, // a plank in the water is wet
	} {
		a := judged(t, survey.Survey{How: how, Moisture: []survey.Moisture{c.m}}, part(c.material))
		if got := rules(a.Moisture[0].Findings); !slices.Equal(got, c.rules) || len(a.Advice) != c.advice {
			t.Errorf("%s on %s: %v and %d answers, want %v and %d", c.m.Instrument, c.material, got, len(a.Advice), c.rules, c.advice)
		}
		if m, err := book.Material(c.material); err != nil || a.Moisture[0].Findings[0].Against != m.Name {
			t.Errorf("%s on %s is told against %q", c.m.Instrument, c.material, a.Moisture[0].Findings[0].Against)
		}
		if a.Limits.Has(survey.RuleMoistureSoon) || a.Limits.Has(survey.RuleMoistureWash) || a.Limits.Has(survey.RuleMoistureWhen) {
			t.Errorf("after a month: %v", rules(a.Limits))
		}
	}
	dry := part("grp")
	dry.Laminate = "dry"
	s := survey.Survey{How: how, Moisture: []survey.Moisture{at("capacitance-meter", 10, 20, 30, 12)}}
	if a := judged(t, s, dry); !a.Differs.Has(survey.RuleLaminateDiffers) {
		t.Error("a laminate said to be dry, and a reading that is not: nothing is said")
	}
	dry.Laminate = "wet"
	if a := judged(t, s, dry); len(a.Differs) != 0 {
		t.Error("a wet laminate that reads wet is no contradiction")
	}
}

// How long she was ashore, since the wash, and how much of her was visible: on each boundary.
func TestLimitsOfTheLook(t *testing.T) {
	m := []survey.Moisture{{Part: "part", Instrument: "capacitance-meter", Meter: "a meter", Scale: "0 to 100", Reading: quantity.Exactly(10.0), Dry: 10, HasDry: true}}
	ago := func(days int) quantity.Date { return day.AddDays(-days) }
	for name, c := range map[string]struct {
		how  survey.How
		m    []survey.Moisture
		want []finding.ID
	}{
		"no day":            {survey.How{}, nil, []finding.ID{survey.RuleDayUnknown}},
		"today":             {survey.How{On: day}, nil, nil},
		"yesterday":         {survey.How{On: ago(1)}, nil, []finding.ID{survey.RuleOld}},
		"all visible":       {survey.How{On: day, Visible: percent(100)}, nil, nil},
		"all but one":       {survey.How{On: day, Visible: percent(99)}, nil, []finding.ID{survey.RuleNotAllSeen}},
		"washed":            {survey.How{On: day, Wash: quantity.Hour.N(2)}, nil, []finding.ID{survey.RuleWashed}},
		"ashore, not known": {survey.How{On: day}, m, []finding.ID{survey.RuleMoistureWhen}},
		"seven days ashore": {survey.How{On: day, Ashore: ago(7)}, m, nil},
		"six days ashore":   {survey.How{On: day, Ashore: ago(6)}, m, []finding.ID{survey.RuleMoistureSoon}},
		"a day since":       {survey.How{On: day, Ashore: ago(9), Wash: quantity.Hour.N(24)}, m, []finding.ID{survey.RuleWashed}},
		"less than a day":   {survey.How{On: day, Ashore: ago(9), Wash: quantity.Hour.N(23)}, m, []finding.ID{survey.RuleMoistureWash, survey.RuleWashed}},
	} {
		a := judged(t, survey.Survey{How: c.how, Moisture: c.m}, part("grp"))
		if got := rules(a.Limits); !slices.Equal(slices.Sorted(slices.Values(got)), slices.Sorted(slices.Values(c.want))) {
			t.Errorf("%s: %v, want %v", name, got, c.want)
		}
		for _, f := range a.Limits { // what is asked of the days and the hours is a number of a row
			if key, ok := map[finding.ID]string{survey.RuleMoistureSoon: "survey-dry-days", survey.RuleMoistureWash: "survey-dry-hours"}[f.Rule]; ok {
				if row, err := book.Factor(key); err != nil || !slices.Equal(f.Basis, []finding.Basis{row.Basis("value")}) {
					t.Errorf("%s: %s on the basis of %+v", name, f.Rule, f.Basis)
				}
			}
		}
	}
}

// The days ashore are known where both days are, and are no number where one is not.
func TestDaysAshore(t *testing.T) {
	for _, c := range []struct {
		how  survey.How
		days int
		ok   bool
	}{
		{survey.How{On: day, Ashore: day}, 0, true},
		{survey.How{On: day, Ashore: day.AddDays(-9)}, 9, true},
		{survey.How{On: day}, 0, false},
		{survey.How{Ashore: day}, 0, false},
		{survey.How{}, 0, false},
	} {
		if days, ok := c.how.DaysAshore(); days != c.days || ok != c.ok {
			t.Errorf("%v to %v: %d, %t", c.how.Ashore, c.how.On, days, ok)
		}
	}
}
