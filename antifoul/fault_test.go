package antifoul_test

import (
	"errors"
	"slices"
	"strings"
	"testing"
	"testing/fstest"

	"boatyard.example/bottomwork/antifoul"
	"boatyard.example/bottomwork/tables/finding"
)

// wrong is a boat file with a mistake on most of its lines.
const wrong = `
[boat]
name = "Wrong"
date = 2027-04-03
[hull]
kind = "fin-keel-yatch"
length = "9 m"
beam = 3
draft = "12 m"
mass = "4 L"
color = "white"
[[part]]
name = "hull"
zone = "hull"
material = "aluminum"
[[part.found]]
coating = "ablative-cuprous-mutli"
film = "100 m"
state = "soundd"
[[part]]
name = "second hull"
zone = "hull"
material = "grp"
[[part]]
name = "leg"
zone = "leg"
material = "grp"
[[part]]
name = "leg"
zone = "rudder"
material = "grp"
area = "0 m2"
[use]
under_way = "-20 h"
growth = "huge"
haul_out_every = "0 months"
cleaning = "sponge"
ashore_each_year = "14 months"
water = "salty"
[[berth]]
place = "GB"
role = "moored"
[work]
hands = 0
launch = 2027-03-01
[paint]
by = "roler"
reserve = "250 %"
[wishes]
top_colour = "navy"
signal_colour = "black"
coating = "epoxy-primer"
`

// wrongSays is the whole error of that file. A name that was read as text stands in quotes, as it was typed.
const wrongSays = `boat.toml: berth[1].role: not accepted: read "moored"; accepted: one of painted, kept, visited, cleaned
boat.toml: hull.beam: not accepted: read 3; accepted: a number and its unit in quotes, unit one of m, ft, in, mm
boat.toml: hull.color: unknown key: read color; accepted: one of beam; boot_top; canoe_draft; chains; draft; girths; hulls; keel_blocks; kind; length; mass; measured; midship; offsets; overall; piece; stand_pairs; waterline_beam
boat.toml: hull.draft: impossible: read 12 m; accepted: no more than the length, 9 m
boat.toml: hull.kind: not known: read "fin-keel-yatch"; accepted: did you mean fin-keel-yacht?
boat.toml: hull.mass: not accepted: read "4 L"; accepted: a number and its unit in quotes, unit one of kg, lb, t
boat.toml: paint.by: not known: read "roler"; accepted: did you mean roller?
boat.toml: paint.reserve: impossible: read 250 %; accepted: from 0 % to 100 %
boat.toml: part: given twice: read 2 parts with zone = "hull"; accepted: exactly one
boat.toml: part[hull].found[1].coating: not known: read "ablative-cuprous-mutli"; accepted: did you mean ablative-cuprous-multi, or ablative-cuprous-water, or ablative-cuprous-single?
boat.toml: part[hull].found[1].film: not accepted: read "100 m"; accepted: a number and its unit in quotes, unit one of um, mil
boat.toml: part[hull].found[1].state: not known: read "soundd"; accepted: did you mean sound?
boat.toml: part[hull].material: not known: read "aluminum"; accepted: did you mean aluminium?
boat.toml: part[leg].area: impossible: read 0 m2; accepted: an area above zero
boat.toml: part[leg].area: missing; accepted: its painted area, "0.7 m2", or its pieces in hull.piece
boat.toml: part[leg].name: given twice: read "leg"; accepted: a name that no other part has
boat.toml: use.ashore_each_year: impossible: read 14 months; accepted: 0 months to 12 months
boat.toml: use.cleaned_every: missing; accepted: how often, "30 d", since cleaning is given
boat.toml: use.growth: not accepted: read "huge"; accepted: one of light, medium, heavy
boat.toml: use.haul_out_every: impossible: read 0 months; accepted: an interval above zero, to 240 months
boat.toml: use.under_way: impossible: read -20 h; accepted: hours a year, 0 h to 8784 h
boat.toml: use.water: not accepted: read "salty"; accepted: one of salt, brackish, fresh
boat.toml: wishes.coating: not accepted: read "epoxy-primer"; accepted: an antifouling, a blacking or none
boat.toml: wishes.signal_colour: impossible: read black under navy blue, a step of 7 in lightness; accepted: a colour at least 20 lighter or darker than navy blue
boat.toml: work.hands: not accepted: read 0; accepted: a whole number from 1 to 100
boat.toml: work.launch: impossible: read 2027-03-01; accepted: not before the day of the question, 2027-04-03`

func readWrong(t *testing.T, text string) finding.Faults {
	t.Helper()
	_, err := antifoul.ReadBoat(fstest.MapFS{"boat.toml": {Data: []byte(text)}}, "boat.toml")
	if err == nil {
		t.Fatal("no error")
	}
	fs, ok := errors.AsType[finding.Faults](err)
	if !ok {
		t.Fatalf("the error is a %T: %v", err, err)
	}
	return fs
}

// One error says everything that is wrong with the file.
func TestEveryFaultAtOnce(t *testing.T) {
	fs := readWrong(t, wrong)
	got, want := strings.Split(fs.Error(), "\n"), strings.Split(wrongSays, "\n")
	for _, line := range want {
		if !slices.Contains(got, line) {
			t.Errorf("not said:\n%s", line)
		}
	}
	for _, line := range got {
		if !slices.Contains(want, line) {
			t.Errorf("said besides:\n%s", line)
		}
	}
	if len(fs) < 15 {
		t.Errorf("%d faults, expected at least 15", len(fs))
	}
	for _, f := range fs {
		if f.File != "boat.toml" || f.Key == "" || f.Kind == nil || f.Want == "" {
			t.Errorf("a fault without file, key, kind or what is accepted: %#v", f)
		}
		if f.Got == "" && !errors.Is(f, finding.ErrMissing) {
			t.Errorf("%s: does not say what was read", f.Key)
		}
	}
}

// The faults are sorted, none stands twice, and the same file gives the same text.
func TestFaultsAreSortedAndSaidOnce(t *testing.T) {
	fs := readWrong(t, wrong)
	keys := make([]string, len(fs))
	for i, f := range fs {
		keys[i] = f.Key
		if i > 0 && f == fs[i-1] {
			t.Errorf("twice: %v", f)
		}
	}
	if !slices.IsSorted(keys) {
		t.Errorf("not sorted: %q", keys)
	}
	for range 20 {
		if again := readWrong(t, wrong).Error(); again != fs.Error() {
			t.Fatalf("another text the second time:\n%s", again)
		}
	}
}

// Each mistake alone in a right file is one fault of its own kind, at its own key.
func TestEachFaultAlone(t *testing.T) {
	for _, k := range []struct {
		name, old, new string
		kind           error
		key            string
		says           string
	}{
		{"draught over length", `draft = "1.6 m"`, `draft = "16 m"`, finding.ErrImpossible, "hull.draft", "9 m"},
		{"beam over length", `beam = "3 m"`, `beam = "30 m"`, finding.ErrImpossible, "hull.beam", "9 m"},
		{"zero interval", `haul_out_every = "24 months"`, `haul_out_every = "0 months"`, finding.ErrImpossible, "use.haul_out_every", "above zero"},
		{"unknown material", `material = "grp"`, `material = "gpr"`, finding.ErrUnknown, "part[hull].material", "grp"},
		{"unknown zone", `zone = "rudder"`, `zone = "ruder"`, finding.ErrUnknown, "part[rudder].zone", "did you mean rudder?"},
		{"a strip as a part", `zone = "rudder"`, `zone = "waterline"`, finding.ErrImpossible, "part[rudder].zone", "zone of a part"},
		{"unknown coating", `coating = "ablative-cuprous-multi"`, `coating = "ablativ-cuprous-multi"`, finding.ErrUnknown, "part[hull].found[1].coating", "ablative-cuprous-multi"},
		{"unknown colour", `colour = "red-oxide"`, `colour = "red-oxid"`, finding.ErrUnknown, "part[hull].found[1].colour", "red-oxide"},
		{"negative hours", `under_way = "120 h"`, `under_way = "-1 h"`, finding.ErrImpossible, "use.under_way", "0 h to 8784 h"},
		{"more hours than a year", `under_way = "120 h"`, `under_way = "8785 h"`, finding.ErrImpossible, "use.under_way", "0 h to 8784 h"},
		{"no step in lightness", "[paint]", "[wishes]\ntop_colour = \"navy\"\nsignal_colour = \"black\"\n[paint]", finding.ErrImpossible, "wishes.signal_colour", "at least 20"},
		{"unknown key", "hands = 2", "hand = 2", finding.ErrUnknownKey, "work.hand", "hands"},
		{"unknown section", "[work]", "[weather]\nwind = \"4 kn\"\n[work]", finding.ErrUnknownKey, "weather", ""},
		{"bare number", `draft = "1.6 m"`, `draft = 1.6`, finding.ErrValue, "hull.draft", "m, ft"},
		{"wrong unit", `draft = "1.6 m"`, `draft = "1.6 kg"`, finding.ErrValue, "hull.draft", "m, ft"},
		{"no unit", `draft = "1.6 m"`, `draft = "1.6"`, finding.ErrValue, "hull.draft", "m, ft"},
		{"which gallon", `cans = ["0.75 L", "2.5 L"]`, `cans = ["1 gal"]`, finding.ErrValue, "paint.cans", "US gal"},
		{"missing date", "date = 2027-04-03", "", finding.ErrMissing, "boat.date", "2027-04-03"},
		{"date in quotes", "launch = 2027-05-20", `launch = "2027-05-20"`, finding.ErrValue, "work.launch", "without quotes"},
		{"launch before the day", "launch = 2027-05-20", "launch = 2027-04-02", finding.ErrImpossible, "work.launch", "2027-04-03"},
		{"two hulls", `zone = "rudder"`, `zone = "hull"`, finding.ErrDuplicate, "part", "exactly one"},
		{"no hull", `zone = "hull"`, "zone = \"keel\"\narea = \"3 m2\"", finding.ErrMissing, "part", "exactly one"},
		{"two parts of one name", `name = "rudder"`, `name = "hull"`, finding.ErrDuplicate, "part[hull].name", "no other part"},
		{"no area of a part", "area = \"1.2 m2\"\n", "", finding.ErrMissing, "part[rudder].area", "0.7 m2"},
		{"cleaning without how often", `kept = "afloat"`, "cleaning = \"brush\"\nkept = \"afloat\"", finding.ErrMissing, "use.cleaned_every", "30 d"},
		{"how often without cleaning", `kept = "afloat"`, "cleaned_every = \"30 d\"\nkept = \"afloat\"", finding.ErrMissing, "use.cleaning", "sponge"},
		{"bare below paint", "coating = \"bare\"\nstate = \"sound\"", "coating = \"bare\"\n[[part.found]]\ncoating = \"hard-old\"\nstate = \"sound\"", finding.ErrImpossible, "part[rudder].found[1].coating", "no other layer"},
		{"a film that falls", `film = "100 um"`, `film = ["200 um", "100 um", "50 um"]`, finding.ErrValue, "part[hull].found[1].film", "low, typical, high"},
		{"thinner over all", `by = "roller"`, "by = \"roller\"\nthinner = \"101 %\"", finding.ErrImpossible, "paint.thinner", "100 %"},
		{"a wish for a primer", "[paint]", "[wishes]\ncoating = \"epoxy-primer\"\n[paint]", finding.ErrValue, "wishes.coating", "antifouling"},
		{"a wish for what nobody knows", "[paint]", "[wishes]\ncoating = \"hard-cuprus\"\n[paint]", finding.ErrUnknown, "wishes.coating", "did you mean hard-cuprous"},
		{"a film of no paint", "[work]", "[[record]]\ncoating = \"ablative-cuprous-multi\"\nlaunched = 2025-04-01\nlitres = \"0 L\"\ncoats = 50\n[[record.look]]\non = 2026-03-01\nzone = \"flat\"\nsignal = false\n[work]", finding.ErrImpossible, "record[1].litres", "more than zero"},
		{"no such berth role", `role = "kept"`, `role = "moored"`, finding.ErrValue, "berth[1].role", "kept"},
		{"not TOML", "[boat]", "[boat", finding.ErrSyntax, "", "TOML"},
		{"a section given twice", "[work]", "[use]\n[work]", finding.ErrSyntax, "", ""},
	} {
		t.Run(k.name, func(t *testing.T) {
			if !strings.Contains(base, k.old) {
				t.Fatalf("the right file does not hold %q", k.old)
			}
			_, err := antifoul.ReadBoat(fstest.MapFS{"boat.toml": {Data: []byte(strings.Replace(base, k.old, k.new, 1))}}, "boat.toml")
			if err == nil {
				t.Fatal("read without a fault")
			}
			fs, ok := errors.AsType[finding.Faults](err)
			if !ok || len(fs) != 1 {
				t.Fatalf("expected one fault, got:\n%v", err)
			}
			if !errors.Is(err, k.kind) {
				t.Errorf("kind is %q, expected %q", fs[0].Kind, k.kind)
			}
			if fs[0].Key != k.key {
				t.Errorf("key is %q, expected %q", fs[0].Key, k.key)
			}
			if !strings.Contains(fs[0].Want, k.says) {
				t.Errorf("accepted is %q, expected it to say %q", fs[0].Want, k.says)
			}
		})
	}
}

// A fault in one section hides no fault of another.
func TestNoFaultHidesAnother(t *testing.T) {
	for _, line := range []struct{ old, new, key string }{
		{`zone = "rudder"`, `zone = "hull"`, "part"},
		{"area = \"1.2 m2\"\n", "", "part[rudder].area"},
		{`draft = "1.6 m"`, `draft = "16 m"`, "hull.draft"},
	} {
		text := strings.Replace(base, line.old, line.new, 1)
		text = strings.Replace(text, `state = "sound"`, `state = 7`, 1)
		fs := readWrong(t, text)
		if !slices.ContainsFunc(fs, func(f finding.Fault) bool { return f.Key == line.key }) {
			t.Errorf("%s is not said beside another fault:\n%v", line.key, fs)
		}
	}
}

// What Plan refuses, ReadBoat has refused already: a file that was read without a fault gets an answer.
func TestWhatWasReadGetsAnAnswer(t *testing.T) {
	for _, c := range []struct{ old, new string }{
		{"", ""},
		{"area = \"1.2 m2\"\n", ""},
		{`area = "1.2 m2"`, `area = "90 m2"`},
		{`mass = "4 t"`, "mass = \"4 t\"\nmeasured = { flat = \"20 m2\", rudder = \"1 m2\" }"},
		{`mass = "4 t"`, "mass = \"4 t\"\nmeasured = { waterline = \"60 m2\" }"},
	} {
		text := strings.Replace(base, c.old, c.new, 1)
		if _, err := antifoul.ReadBoat(fstest.MapFS{"boat.toml": {Data: []byte(text)}}, "boat.toml"); err != nil {
			continue
		}
		if _, err := plan(t, text); err != nil {
			t.Errorf("with %q in place of %q: read without a fault, and then: %v", c.new, c.old, err)
		}
	}
}
