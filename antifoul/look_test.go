package antifoul_test

import (
	"errors"
	"fmt"
	"slices"
	"strings"
	"testing"
	"testing/fstest"

	"boatyard.example/bottomwork/antifoul"
	"boatyard.example/bottomwork/antifoul/survey"
	"boatyard.example/bottomwork/coverage/hullform"
	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/finding"
)

// surveyed are the sections of a look, after the base boat.
const surveyed = `
[[part]]
name = "leg"
zone = "leg"
material = "aluminium"
area = "0.5 m2"
[[part.found]]
coating = "epoxy-barrier"
state = "sound"
[[part]]
name = "anode"
zone = "fitting"
material = "zinc-anode"
[survey]
by = "a surveyor"
on = 2027-04-01
ashore_since = 2027-03-28
since_wash = "20 h"
visible = "90 %"
hidden = "pads"
not_inspected = ["rudder stock"]
light = "lamp"
weather = "dry"
[[seen]]
part = "hull"
zone = "flat"
where = "port"
coating = "ablative-old"
colours = ["red-oxide", "navy"]
state = "worn"
known = "reported"
photo = "1"
note = "first note"
[[seen.mark]]
what = "fouling"
grade = "nz-level-of-fouling-2"
share = "4 %"
known = "measured"
photo = "2"
note = "second note"
[[seen.mark]]
what = "laminate blisters"
size = "20 mm"
[[moisture]]
part = "hull"
zone = "waterline"
instrument = "capacitance-meter"
meter = "number 3"
scale = "0 to 100"
reading = [10, 15, 20]
dry = 12
spots = 8
photo = "3"
[[fitting]]
name = "anode, shaft"
part = "anode"
photo = "4"
note = "third note"
[[fitting.mark]]
what = "wasted"
share = "60 %"
photo = "5"
note = "fourth note"
`

// surveyCases changes one key each, as keyCases does.
var surveyCases = []struct{ key, old, new string }{
	{"survey.on", "on = 2027-04-01", "on = 2027-04-02"},
	{"survey.ashore_since", "ashore_since = 2027-03-28", "ashore_since = 2027-02-28"},
	{"survey.since_wash", `since_wash = "20 h"`, `since_wash = "30 h"`},
	{"survey.visible", `visible = "90 %"`, `visible = "100 %"`},
	{"seen.part", "[[seen]]\npart = \"hull\"\nzone = \"flat\"", "[[seen]]\npart = \"rudder\""},
	{"seen.zone", `zone = "flat"`, `zone = "edges"`},
	{"seen.coating", "coating = \"ablative-old\"", "coating = \"hard-old\""},
	{"seen.colours", `["red-oxide", "navy"]`, `["navy", "red-oxide"]`},
	{"seen.state", "state = \"worn\"\nknown", "state = \"flaking\"\nknown"},
	{"seen.known", `known = "reported"`, `known = "seen"`},
	{"seen.mark.what", `what = "laminate blisters"`, `what = "high moisture"`},
	{"seen.mark.grade", `"nz-level-of-fouling-2"`, `"nz-level-of-fouling-5"`},
	{"seen.mark.share", `share = "4 %"`, `share = "40 %"`},
	{"seen.mark.size", `size = "20 mm"`, `size = "60 mm"`},
	{"seen.mark.known", `known = "measured"`, `known = "assumed"`},
	{"moisture.part", "[[moisture]]\npart = \"hull\"\nzone = \"waterline\"", "[[moisture]]\npart = \"rudder\""},
	{"moisture.zone", `zone = "waterline"`, `zone = "edges"`},
	{"moisture.instrument", `"capacitance-meter"`, `"pin-meter"`},
	{"moisture.scale", `scale = "0 to 100"`, `scale = "A"`},
	{"moisture.reading", "[10, 15, 20]", "[10, 11, 20]"},
	{"moisture.dry", "dry = 12", "dry = 18"},
	{"fitting.part", "part = \"anode\"\nphoto = \"4\"\nnote = \"third note\"\n[[fitting.mark]]\nwhat = \"wasted\"", "part = \"leg\"\nphoto = \"4\"\nnote = \"third note\"\n[[fitting.mark]]\nwhat = \"pits\""},
	{"fitting.mark.what", `what = "wasted"`, `what = "painted over"`},
	{"fitting.mark.grade", "what = \"wasted\"\n", "what = \"fouling\"\ngrade = \"nstm-081-90\"\n"},
	{"fitting.mark.share", `share = "60 %"`, `share = "20 %"`},
	{"fitting.mark.size", "what = \"wasted\"\n", "what = \"wasted\"\nsize = \"3 mm\"\n"},
	{"fitting.mark.known", "what = \"wasted\"\n", "what = \"wasted\"\nknown = \"assumed\"\n"},
}

// Each key of a look, changed alone, changes an answer.
func TestEverySurveyKeyMatters(t *testing.T) {
	job, err := plan(t, base+surveyed)
	if err != nil {
		t.Fatal(err)
	}
	before := digest(job)
	for _, k := range surveyCases {
		t.Run(k.key, func(t *testing.T) {
			if !strings.Contains(surveyed, k.old) {
				t.Fatalf("the sections do not hold %q", k.old)
			}
			job, err := plan(t, base+strings.Replace(surveyed, k.old, k.new, 1))
			if err != nil {
				t.Fatal(err)
			}
			if digest(job) == before {
				t.Errorf("%s changes nothing", k.key)
			}
		})
	}
}

// A look changes no rank, no layer and no litre: what is planned with stays part.found.state, and the answer says where it does not agree.
func TestALookPlansNothing(t *testing.T) {
	parts, _, _ := strings.Cut(surveyed, "[survey]")
	plain, err := plan(t, base+parts)
	if err != nil {
		t.Fatal(err)
	}
	seen, err := plan(t, base+surveyed)
	if err != nil {
		t.Fatal(err)
	}
	if plain.Survey != nil || seen.Survey == nil {
		t.Fatalf("surveys %v and %v", plain.Survey, seen.Survey)
	}
	if !seen.Findings.Has(antifoul.RuleSurveyDiffers) || !seen.Findings.Has(antifoul.RuleSurveyFirst) || plain.Findings.Has(antifoul.RuleSurveyDiffers) {
		t.Error("the answer does not say that look and report differ, and what wants doing first")
	}
	if !seen.Survey.Differs.Has(survey.RuleStateWorse) {
		t.Errorf("%v", seen.Survey.Differs)
	}
	seen.Survey, seen.Cautions = nil, plain.Cautions
	seen.Findings = slices.DeleteFunc(seen.Findings, func(f finding.Finding) bool { return strings.HasPrefix(string(f.Rule), "survey-") })
	if digest(seen) != digest(plain) {
		t.Error("a look changed the plan")
	}
}

func readNote(text string) (antifoul.Boat, error) {
	return antifoul.ReadNote(tables.Default(), fstest.MapFS{"note.toml": {Data: []byte(text)}, "gauge.csv": {Data: []byte("zone,reading [um]\nkeel,300\n")}}, "note.toml")
}

const (
	smallest = "[boat]\ndate = 2027-04-09\n[[part]]\nname = \"keel\"\nzone = \"keel\"\nmaterial = \"cast-iron\"\n"
	gauged   = "[[gauge]]\npart = \"keel\"\ninstrument = \"magnetic\"\nstandard = \"iso-19840\"\nnominal = \"300 um\"\nfile = \"gauge.csv\"\n"
)

// A note needs a day and one part: no hull, no use, no wishes.
func TestSmallestNote(t *testing.T) {
	boat, err := readNote(smallest)
	if err != nil {
		t.Fatal(err)
	}
	j, err := antifoul.Look(tables.Default(), boat)
	if err != nil {
		t.Fatal(err)
	}
	if len(j.Survey.Advice) != 1 || j.Survey.Advice[0].Finding.Rule != survey.RuleFilmUnknown {
		t.Errorf("%+v", j.Survey.Advice)
	}
	if !slices.ContainsFunc(j.Cautions, func(c tables.Caution) bool { return c.Key == "unknown-old-film" }) {
		t.Error("no caution of an unknown old film")
	}
	if _, err := antifoul.Plan(tables.Default(), boat); err == nil {
		t.Error("a boat without a hull was planned")
	}
	if _, err := antifoul.Look(tables.Default(), antifoul.Boat{}); err == nil {
		t.Error("no day, and no fault")
	}
}

// Where a section hangs on areas the hull is asked for, once; and a hull that is given is checked as ever.
func TestANoteWithAreas(t *testing.T) {
	for name, c := range map[string]struct {
		text string
		keys []string
	}{
		"a gauge, no hull":            {smallest + gauged, []string{"hull"}},
		"a gauge and the areas":       {smallest + gauged + "[hull]\nmeasured = { flat = \"20 m2\", keel = \"4 m2\" }\n", []string{"part"}},
		"half a hull":                 {smallest + "[hull]\nlength = \"9 m\"\n", []string{"hull.beam", "hull.draft", "hull.kind", "part", "part[keel].area"}},
		"a length that is no length":  {smallest + "[hull]\nlength = 9\n", []string{"hull.beam", "hull.draft", "hull.kind", "hull.length", "part", "part[keel].area"}},
		"no part":                     {"[boat]\ndate = 2027-04-09\n", []string{"part"}},
		"no day":                      {strings.Replace(smallest, "date = 2027-04-09\n", "", 1), []string{"boat.date"}},
		"a section nobody knows":      {smallest + "[sea]\n", []string{"sea"}},
		"a use that cannot be":        {smallest + "[use]\nunder_way = \"-3 h\"\n", []string{"use.under_way"}},
		"a unit that is no unit":      {smallest + "[survey]\nvisible = \"9 m\"\nsince_wash = 3\n", []string{"survey.since_wash", "survey.visible"}},
		"a reading that is no number": {smallest + "[[moisture]]\npart = \"keel\"\ninstrument = \"pin-meter\"\nmeter = \"m\"\nscale = \"s\"\nreading = \"wet\"\n", []string{"moisture[1].reading"}},
		"no reading":                  {smallest + "[[moisture]]\npart = \"keel\"\ninstrument = \"pin-meter\"\nmeter = \"m\"\nscale = \"s\"\n", []string{"moisture[1].reading"}},
	} {
		_, err := readNote(c.text)
		fs, _ := errors.AsType[finding.Faults](err)
		var keys []string
		for _, f := range fs {
			keys = append(keys, f.Key)
		}
		if !slices.Equal(keys, c.keys) {
			t.Errorf("%s: faults of %v, want %v\n%v", name, keys, c.keys, err)
		}
	}
}

// Whatever a note says of the hull's size, the rest of it is asked for; of a boat that was put together in code too.
func TestANoteWithAPieceOfAHull(t *testing.T) {
	boat, err := readNote(smallest)
	if err != nil {
		t.Fatal(err)
	}
	for _, line := range []string{
		"kind = \"fin-keel-yacht\"", "length = \"9 m\"", "beam = \"3 m\"", "draft = \"1.6 m\"", "measured = { flat = \"20 m2\" }", "[[hull.piece]]\nwhat = \"keel\"\nlength = \"1.2 m\"\nheight = \"1 m\"",
	} {
		if _, err := readNote(smallest + "[hull]\n" + line + "\n"); err == nil {
			t.Errorf("%s: nothing is asked for", line)
		}
	}
	whole := exampleBoat(t, "boats/sloop.toml").Hull
	whole.Measured, whole.Pieces = plannedJob(t, sheet).Boat.Hull.Measured, nil
	for name, piece := range map[string]func(x *antifoul.Boat){
		"kind": func(x *antifoul.Boat) { x.Hull.Kind = whole.Kind }, "length": func(x *antifoul.Boat) { x.Hull.Length = whole.Length }, "beam": func(x *antifoul.Boat) { x.Hull.Beam = whole.Beam },
		"draft": func(x *antifoul.Boat) { x.Hull.Draft = whole.Draft }, "measured": func(x *antifoul.Boat) { x.Hull.Measured = whole.Measured[:1] },
		"a girth": func(x *antifoul.Boat) { x.Hull.Girths = make([]hullform.Station, 1) }, "an offset": func(x *antifoul.Boat) { x.Hull.Offsets = make([]hullform.Section, 1) },
		"a piece": func(x *antifoul.Boat) { x.Hull.Pieces = make([]hullform.Piece, 1) },
	} {
		x := boat
		piece(&x)
		if _, err := antifoul.Look(tables.Default(), x); err == nil {
			t.Errorf("%s alone: nothing is asked for", name)
		}
	}
}

// What must be done before the launch, and what differs from what was reported, is counted where there is any.
func TestNothingToDoBeforeTheLaunch(t *testing.T) {
	for name, c := range map[string]struct {
		seen          string
		first, differ any
	}{
		"nothing":        {"", nil, nil},
		"wasted":         {"[[part]]\nname = \"anode\"\nzone = \"fitting\"\nmaterial = \"zinc-anode\"\n[[fitting]]\nname = \"anode, shaft\"\npart = \"anode\"\n[[fitting.mark]]\nwhat = \"wasted\"\nshare = \"60 %\"\n", 1, nil},
		"another film":   {"[[seen]]\npart = \"hull\"\ncoating = \"hard-old\"\nstate = \"sound\"\nknown = \"seen\"\n", nil, 1},
		"what was there": {"[[seen]]\npart = \"hull\"\ncoating = \"ablative-cuprous-multi\"\nstate = \"sound\"\nknown = \"seen\"\n", nil, nil},
	} {
		j := planned(t, base+"[survey]\nby = \"a surveyor\"\non = 2027-04-01\n"+c.seen)
		var first, differ any
		for _, f := range j.Findings {
			switch f.Rule {
			case antifoul.RuleSurveyFirst:
				first = factOf(f, "count")
			case antifoul.RuleSurveyDiffers:
				differ = factOf(f, "count")
			}
		}
		if slices.ContainsFunc(j.Cautions, func(k tables.Caution) bool { return k.Key == "unknown-old-film" }) {
			t.Errorf("%s: a caution of a film that nobody knows", name)
		}
		if first != c.first || differ != c.differ {
			t.Errorf("%s: %v first, %v differ; want %v, %v", name, first, differ, c.first, c.differ)
		}
	}
}

// Litres and combs hang on areas as gauges do, each alone and all together.
func TestANoteOfPaintNeedsAHull(t *testing.T) {
	const used = "[[used]]\npart = \"keel\"\ncoating = \"epoxy-barrier\"\ncoats = 1\nlitres = \"0.5 L\"\n"
	const comb = "[[comb]]\npart = \"keel\"\ncoating = \"epoxy-barrier\"\nteeth = [\"100 um to 125 um\"]\n"
	for name, text := range map[string]string{"litres": used, "a comb": comb, "both": used + comb, "all": gauged + used + comb, "gauge and comb": gauged + comb, "gauge and litres": gauged + used} {
		_, err := readNote(smallest + text)
		if err == nil || !strings.Contains(err.Error(), "hull: missing") {
			t.Errorf("%s: %v", name, err)
		}
	}
}

// Where nobody says how paint went on, a look takes the roller too, and what readings say of a part.
func TestALookTakesTheRoller(t *testing.T) {
	const used = "[[used]]\npart = \"rudder\"\ncoating = \"epoxy-barrier\"\ncoats = 1\nlitres = \"0.5 L\"\n"
	rolled := sheet + used
	look := func(text string) string {
		boat, err := readNote(text)
		if err != nil {
			t.Fatal(err)
		}
		j, err := antifoul.Look(tables.Default(), boat)
		if err != nil {
			t.Fatal(err)
		}
		return fmt.Sprintf("%v", j.PutOn)
	}
	if got, want := look(strings.Replace(rolled, "by = \"roller\"\n", "", 1)), look(rolled); got != want {
		t.Errorf("%s, by roller %s", got, want)
	}
	if sprayed := look(strings.Replace(rolled, "by = \"roller\"", "by = \"airless-open\"", 1)); sprayed == look(rolled) {
		t.Error("how it went on says nothing: the test asks too little")
	}
}
