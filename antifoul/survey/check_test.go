package survey_test

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"boatyard.example/bottomwork/antifoul/survey"
	"boatyard.example/bottomwork/compat"
	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

// Everything that cannot be is told at once, each at its own key.
func TestEveryFaultIsTold(t *testing.T) {
	s := survey.Survey{
		How: survey.How{On: day.AddDays(1), Ashore: day.AddDays(2), Wash: quantity.Hour.N(-1), Visible: percent(101)},
		Seen: []survey.Place{
			{Part: "", Coating: "no such", Colours: []string{"navy", "no such"}, State: "no such", Known: "guessed"},
			{Part: "no such"},
			{Part: "part", Zone: "keel", Marks: []survey.Mark{
				{What: "", Known: "guessed"},
				{What: "no such", Share: percent(-1), Size: mm(-1)},
				{What: "rust", Grades: []string{"iso-4628-3-ri-1"}},
				{What: "fouling", Grades: []string{"nstm-081-10", "nstm-081-20"}},
				{What: "fouling", Grades: []string{"no such"}},
				{What: "chalking", Grades: []string{"nstm-081-10"}},
			}},
		},
		Moisture: []survey.Moisture{
			{Part: "part", Instrument: "magnetic", Reading: quantity.Range[float64]{Low: -3, Typical: -4, High: 1}, Spots: -1},
			{Part: "part", Meter: "m", Scale: "s"},
		},
		Fittings: []survey.Fitting{{}, {Name: "a", Part: "no such"}, {Name: "a"}, {Name: "b", Marks: []survey.Mark{{What: "wasted"}}}},
	}
	want := []string{
		"fitting[1].name", "fitting[a].name", "fitting[a].part", "fitting[b].mark[1].what",
		"moisture[1].instrument", "moisture[1].meter", "moisture[1].reading", "moisture[1].reading", "moisture[1].scale", "moisture[1].spots", "moisture[2].instrument",
		"seen[1].coating", "seen[1].colours[2]", "seen[1].known", "seen[1].part", "seen[1].state", "seen[2].part",
		"seen[3].mark[1].known", "seen[3].mark[1].what", "seen[3].mark[2].share", "seen[3].mark[2].size", "seen[3].mark[2].what", "seen[3].mark[3].what",
		"seen[3].mark[4].grade", "seen[3].mark[5].grade", "seen[3].mark[6].grade", "seen[3].zone",
		"survey.ashore_since", "survey.on", "survey.since_wash", "survey.visible",
	}
	var got []string
	for _, f := range s.Check(book, []compat.Part{part("grp")}, day) {
		got = append(got, f.Key)
		if f.Kind == nil || f.Want == "" {
			t.Errorf("%s: no kind, or nothing that is accepted", f.Key)
		}
	}
	slices.Sort(got)
	if !slices.Equal(got, want) {
		t.Errorf("faults of\n%s\nwant\n%s", strings.Join(got, "\n"), strings.Join(want, "\n"))
	}
	if _, err := survey.Judge(book, s, []compat.Part{part("grp")}, day); err == nil {
		t.Error("judged all the same")
	}
}

// A strip of the hull is a zone of the hull, and the sole one of the keel; nobody has to name one.
func TestZonesOfAPart(t *testing.T) {
	for _, c := range []struct {
		part, zone string
		ok         bool
	}{
		{"hull", "", true},
		{"hull", "hull", true},
		{"hull", "flat", true},
		{"hull", "waterline", true},
		{"hull", "edges", true},
		{"hull", "chines", true},
		{"hull", "keel", false},
		{"hull", "sole", false},
		{"keel", "sole", true},
		{"keel", "keel", true},
		{"keel", "flat", false},
		{"rudder", "rudder", true},
		{"rudder", "sole", false},
	} {
		p := part("grp")
		p.Zone = c.part
		fs := survey.Survey{Seen: []survey.Place{{Part: "part", Zone: c.zone}}}.Check(book, []compat.Part{p}, day)
		if (len(fs) == 0) != c.ok {
			t.Errorf("%s of %s: %v", c.zone, c.part, fs)
		}
	}
}

// A reading of moisture stands in a zone of its part; where the part is not known, nothing is said of the zone.
func TestZoneOfAReading(t *testing.T) {
	for _, c := range []struct {
		part, zone string
		want       []string
	}{
		{"part", "flat", nil},
		{"part", "", nil},
		{"part", "keel", []string{"moisture[1].zone"}},
		{"no such", "keel", []string{"moisture[1].part"}},
	} {
		var got []string
		for _, f := range (survey.Survey{Moisture: []survey.Moisture{{Part: c.part, Zone: c.zone, Instrument: "capacitance-meter", Meter: "m", Scale: "s"}}}).Check(book, []compat.Part{part("grp")}, day) {
			got = append(got, f.Key)
		}
		if !slices.Equal(got, c.want) {
			t.Errorf("%s of %s: %v, want %v", c.zone, c.part, got, c.want)
		}
	}
}

// What is seen on a fitting is asked of the material of its part; where the part is not known, that alone is the fault.
func TestMaterialOfAFitting(t *testing.T) {
	for _, c := range []struct {
		part, what string
		want       []string
	}{
		{"part", "laminate blisters", nil},
		{"part", "rust", []string{"fitting[a].mark[1].what"}},
		{"no such", "rust", []string{"fitting[a].part"}},
	} {
		var got []string
		for _, f := range (survey.Survey{Fittings: []survey.Fitting{{Name: "a", Part: c.part, Marks: []survey.Mark{{What: c.what}}}}}).Check(book, []compat.Part{part("grp")}, day) {
			got = append(got, f.Key)
		}
		if !slices.Equal(got, c.want) {
			t.Errorf("%s on %s: %v, want %v", c.what, c.part, got, c.want)
		}
	}
}

// A book without the rows gives faults or open answers, and no panic.
func TestAnEmptyBook(t *testing.T) {
	s := survey.Survey{Seen: []survey.Place{{Part: "part", Marks: []survey.Mark{{What: "rust"}}}}}
	if _, err := survey.Judge(&tables.Book{}, s, []compat.Part{part("grp")}, day); err == nil {
		t.Error("an empty book judges rust")
	}
	if _, err := survey.Judge(&tables.Book{}, survey.Survey{}, []compat.Part{part("grp")}, day); err != nil {
		t.Errorf("nothing was seen: %v", err)
	}
}

func BenchmarkJudge(b *testing.B) {
	var s survey.Survey
	for range 50 {
		s.Seen = append(s.Seen, survey.Place{Part: "part", State: "worn", Marks: []survey.Mark{{What: "fouling", Grades: []string{"nstm-081-50"}}, {What: "flaking", Share: percent(30)}}})
	}
	parts := []compat.Part{part("grp")}
	for b.Loop() {
		if _, err := survey.Judge(book, s, parts, day); err != nil {
			b.Fatal(err)
		}
	}
}

func ExampleJudge() {
	film, err := book.Coating("epoxy-barrier")
	if err != nil {
		fmt.Println(err)
		return
	}
	keel := compat.Part{Name: "keel", Zone: "keel", Material: "cast-iron", Found: compat.Stack{{Coating: film, State: tables.Sound}}}
	s := survey.Survey{
		How:  survey.How{By: "a surveyor", On: date("2027-04-09")},
		Seen: []survey.Place{{Part: "keel", Marks: []survey.Mark{{What: "rust", Grades: []string{"iso-4628-3-ri-2"}}}}},
	}
	a, err := survey.Judge(book, s, []compat.Part{keel}, date("2027-04-09"))
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, x := range a.Advice {
		fmt.Println(x.Urgency, x.Row.Key)
	}
	fmt.Println(a.Differs.Has(survey.RuleStateWorse), a.Differs.Worst() == finding.Ask)
	// Output:
	// this haul-out rust-spots
	// true true
}
