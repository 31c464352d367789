package report_test

import (
	"bytes"
	"os"
	"strings"
	"testing"
	"testing/fstest"

	"boatyard.example/bottomwork/antifoul"
	"boatyard.example/bottomwork/antifoul/report"
	"boatyard.example/bottomwork/antifoul/survey"
	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/quantity"
)

// look reads a note of the example, changed, and looks at it.
func look(t *testing.T, change func(*antifoul.Boat)) *antifoul.Job {
	t.Helper()
	boat, err := antifoul.ReadNote(tables.Default(), os.DirFS("../../examples/surveynote"), "note.toml")
	if err != nil {
		t.Fatal(err)
	}
	if change != nil {
		change(&boat)
	}
	j, err := antifoul.Look(tables.Default(), boat)
	if err != nil {
		t.Fatal(err)
	}
	return j
}

func found(t *testing.T, j *antifoul.Job, o report.Options) string {
	t.Helper()
	var out bytes.Buffer
	if err := report.Survey(&out, j, o); err != nil {
		t.Fatal(err)
	}
	return out.String()
}

// Every word of a note that only the reader needs stands in the report, in both formats, and nothing in it stays open.
func TestWordsOfANote(t *testing.T) {
	texts := []string{"who looked", "a hidden thing", "a thing not inspected", "the light", "the weather", "a certain place", "P1", "note one", "P2", "note two", "the meter", "the scale", "17", "P3", "the fitting", "P4", "note three", "P5", "note four"}
	j := look(t, func(b *antifoul.Boat) {
		s := survey.Survey{
			How:      survey.How{By: texts[0], Hidden: texts[1:2], NotInspected: texts[2:3], Light: texts[3], Weather: texts[4]},
			Seen:     []survey.Place{{Part: "hull", Where: texts[5], Photo: texts[6], Note: texts[7], Marks: []survey.Mark{{What: "chalking", Photo: texts[8], Note: texts[9]}}}},
			Moisture: []survey.Moisture{{Part: "hull", Instrument: "capacitance-meter", Meter: texts[10], Scale: texts[11], Spots: 17, Photo: texts[13], Reading: quantity.Exactly(4.0)}},
			Fittings: []survey.Fitting{{Name: texts[14], Photo: texts[15], Note: texts[16], Marks: []survey.Mark{{What: "bonding broken", Photo: texts[17], Note: texts[18]}}}},
		}
		b.Survey = s
	})
	for _, o := range []report.Options{{}, {Format: report.Markdown, Units: quantity.US}} {
		text := found(t, j, o)
		for _, bad := range []string{"(not stated)", "{", "}", "not given", "%!", "<nil>"} {
			if strings.Contains(text, bad) {
				t.Errorf("%v: %q in the report", o, bad)
			}
		}
		for _, want := range texts {
			if o.Format == report.Markdown && !strings.Contains(words(text), words(want)) {
				t.Errorf("%q is not said", want)
			}
		}
	}
}

// Seen, measured, reported and assumed are kept apart in the table and in what is asked for.
func TestHowItIsKnown(t *testing.T) {
	for word, want := range map[string][]string{
		"": {"rust ri 4 8"}, survey.Seen: {"rust ri 4 8"}, survey.Measured: {"8 measured", "8 of it measured"},
		survey.Reported: {"8 reported", "as reported to be confirmed by a look"}, survey.Assumed: {"8 assumed", "assumed to be confirmed by a look"},
	} {
		text := words(found(t, look(t, func(b *antifoul.Boat) { b.Survey.Seen[2].Marks[0].Known = word }), report.Options{Format: report.Markdown}))
		for _, w := range want {
			if !strings.Contains(text, w) {
				t.Errorf("known %q: %q is not said", word, w)
			}
		}
		if (word == "" || word == survey.Seen) && strings.Contains(text, "ri 4 8 seen") {
			t.Error("what was seen is marked")
		}
	}
}

// The found half tells nothing that was planned, also of a whole job; the long report tells both.
func TestFoundHalfAlone(t *testing.T) {
	j := job(t, "steel-measured.toml", func(b *antifoul.Boat) {
		b.Survey = survey.Survey{Seen: []survey.Place{{Part: "hull", Zone: "edges", State: "flaking", Marks: []survey.Mark{{What: "rust", Grades: []string{"iso-4628-3-ri-5"}}}}}}
	})
	text := found(t, j, report.Options{})
	for _, planned := range []string{"What to buy", "Order of work", "The answer", "Not reported, and what was taken instead", "bought for the new coats"} {
		if strings.Contains(text, planned) {
			t.Errorf("the found half says %q", planned)
		}
	}
	long := write(t, j, report.Options{})
	for _, both := range []string{"Condition as found", "The answer", "Was it put on", "rust-over", "want doing before she is launched: 1", "do not agree: 1"} {
		if !strings.Contains(words(long), words(both)) {
			t.Errorf("the long report does not say %q", both)
		}
	}
	if short := write(t, j, report.Options{Short: true}); !strings.Contains(words(short), words("Before launch, by what was noted of her")) {
		t.Error("the short report does not say what wants doing before launch")
	}
	plain := write(t, job(t, "steel-measured.toml", nil), report.Options{})
	if strings.Contains(plain, "Condition as found") {
		t.Error("nothing was seen, and it is told")
	}
}

func TestSurveyRefuses(t *testing.T) {
	var out bytes.Buffer
	for _, err := range []error{
		report.Survey(&out, nil, report.Options{}),
		report.Survey(&out, &antifoul.Job{}, report.Options{}),
		report.Survey(&out, look(t, nil), report.Options{Format: report.Calendar}),
		report.Survey(&out, look(t, nil), report.Options{Format: "papyrus"}),
	} {
		if err == nil || out.Len() > 0 {
			t.Errorf("%v, %d bytes", err, out.Len())
		}
	}
}

// The text keeps its width, and hostile words neither break the layout nor become markup.
func TestHostileNote(t *testing.T) {
	for _, name := range []string{"<script>x</script>", "a | b", "# no heading", "line\nbreak", "bell\a\u202e", strings.Repeat("x", 3000), strings.Repeat("long ", 500)} {
		j := look(t, func(b *antifoul.Boat) {
			b.Survey.How.By, b.Survey.How.Light = name, name
			b.Survey.How.Hidden = []string{name}
			b.Survey.Seen[0].Where, b.Survey.Seen[0].Note, b.Survey.Seen[0].Photo = name, name, name
			b.Survey.Fittings[0].Name = name
			b.Survey.Moisture[0].Meter = name
		})
		md := found(t, j, report.Options{Format: report.Markdown})
		if strings.Contains(strings.ReplaceAll(md, `\<`, ""), "<") || strings.ContainsAny(md, "\a\u202e") {
			t.Errorf("%.20q comes through", name)
		}
		for _, l := range strings.Split(found(t, j, report.Options{}), "\n") {
			if len([]rune(l)) > 100 {
				t.Errorf("%.20q: a line of %d", name, len([]rune(l)))
			}
		}
	}
}

// The same note, the same bytes.
func TestSameNoteSameBytes(t *testing.T) {
	first := found(t, look(t, nil), report.Options{})
	for range 5 {
		if found(t, look(t, nil), report.Options{}) != first {
			t.Fatal("another text the second time")
		}
	}
}

// A note of one line of condition is a report, and says what it does not know.
func TestASmallNote(t *testing.T) {
	boat, err := antifoul.ReadNote(tables.Default(), fstest.MapFS{"n.toml": {Data: []byte("[boat]\ndate = 2027-04-09\n[[part]]\nname = \"hull\"\nzone = \"hull\"\nmaterial = \"grp\"\n")}}, "n.toml")
	if err != nil {
		t.Fatal(err)
	}
	j, err := antifoul.Look(tables.Default(), boat)
	if err != nil {
		t.Fatal(err)
	}
	text := words(found(t, j, report.Options{}))
	for _, want := range []string{"treated as containing organotin and lead", "the day on which she was seen is not stated", "not noted", "a boat without a name"} {
		if !strings.Contains(text, words(want)) {
			t.Errorf("%q is not said", want)
		}
	}
}

// A film is told to be not read only where nobody told it: not beside a sheet of readings, and not beside a measured old film.
func TestDryFilmIsToldOnce(t *testing.T) {
	text := words(found(t, look(t, nil), report.Options{}))
	for _, want := range []string{"not read on hull no gauge is sure", "not read on drive leg"} {
		if !strings.Contains(text, want) {
			t.Errorf("%q is not said", want)
		}
	}
	if strings.Contains(text, "not read on keel") {
		t.Error("the keel was read by a gauge, and is told to be not read")
	}
	text = words(found(t, look(t, func(b *antifoul.Boat) {
		b.Parts[0].Found[0].Film = quantity.Exactly(quantity.Micrometre.N(200))
	}), report.Options{}))
	if !strings.Contains(text, "without a sheet of readings hull") || strings.Contains(text, "not read on hull") {
		t.Error("the film of the hull was told with the old film, and is told to be not read")
	}
}
