package antifoul_test

import (
	"slices"
	"strings"
	"testing"

	"boatyard.example/bottomwork/antifoul"
	"boatyard.example/bottomwork/compat"
	"boatyard.example/bottomwork/tables/finding"
)

// wishing plans the test boat with a wish for the signal coat, and other changes.
func wishing(t *testing.T, signal string, changes ...string) *antifoul.Job {
	t.Helper()
	j, err := plan(t, strings.NewReplacer(append(changes, "[paint]", "[wishes]\nsignal_type = \""+signal+"\"\n[paint]")...).Replace(base))
	if err != nil {
		t.Fatal(err)
	}
	return j
}

// bareHull has nothing on her but sound epoxy.
var bareHull = []string{`coating = "ablative-cuprous-multi"`, `coating = "epoxy-barrier"`, "colour = \"red-oxide\"\n", ""}

func signalOf(t *testing.T, j *antifoul.Job, part string) compat.Layer {
	t.Helper()
	s, ok := j.Scheme(part)
	if !ok {
		t.Fatalf("no scheme for the %s", part)
	}
	for _, l := range s.Stack {
		if l.For == compat.Signal {
			return l
		}
	}
	t.Fatalf("no signal coat on the %s", part)
	return compat.Layer{}
}

// A hard signal coat under a film that wears: it is laid, bought and lawful, one clear step in lightness from the top, and the working coats stay.
func TestHardSignalCoat(t *testing.T) {
	j := wishing(t, "hard-cuprous", bareHull...)
	s, _ := j.Scheme("hull")
	if !s.Coating.Wears() {
		t.Fatalf("the hull gets %s", s.Coating.Key)
	}
	l := signalOf(t, j, "hull")
	if l.Coating.Key != "hard-cuprous" || !s.Findings.Has(antifoul.RuleTwoTypes) {
		t.Errorf("the signal coat is %s", l.Coating.Key)
	}
	if s.Findings.Worst() == finding.Forbidden {
		t.Errorf("%v", s.Findings)
	}
	asked := false // in Great Britain the approval of cuprous oxide is to be asked about after January 2027, also for a coat below another
	for _, f := range s.Findings.At(finding.Ask) {
		asked = asked || f.About == l.Coating.Name && f.Against == "Great Britain"
	}
	if !asked {
		t.Error("what the law leaves open of the signal coat is not told")
	}
	bought := false
	for _, g := range j.Buy {
		bought = bought || g.Coating.Key == "hard-cuprous" && g.Colour == l.Colour
	}
	if !bought {
		t.Error("it is not bought")
	}
	plain, err := plan(t, strings.NewReplacer(bareHull...).Replace(base))
	if err != nil {
		t.Fatal(err)
	}
	old, _ := plain.Scheme("hull")
	working := func(s antifoul.Scheme) (n int) {
		for _, l := range s.Stack {
			if l.For == compat.Working {
				n += l.Coats
			}
		}
		return n
	}
	if working(s) != working(old) {
		t.Errorf("%d working coats, %d without the wish", working(s), working(old))
	}
}

// Where it cannot be built the report says why, and the signal coat is of the type above it.
func TestHardSignalCoatRefused(t *testing.T) {
	for name, c := range map[string]struct {
		wish    string
		changes []string
	}{
		"over a film that wears":     {`signal_type = "hard-cuprous"`, nil},
		"cuprous oxide on aluminium": {`signal_type = "hard-cuprous"`, append([]string{`material = "grp"`, `material = "aluminium"`}, bareHull...)},
		"over an unknown film, through an undercoat": {
			"coating = \"ablative-copper-free\"\nsignal_type = \"hard-copper-free\"",
			[]string{"[[part.found]]\ncoating = \"ablative-cuprous-multi\"\ncolour = \"red-oxide\"\nfilm = \"100 um\"\nstate = \"sound\"\nknown_by = \"log\"\n", "", `material = "grp"`, `material = "wood-carvel"`},
		},
		"under a hard film": {"coating = \"hard-cuprous\"\nsignal_type = \"hard-copper-free\"", bareHull},
	} {
		j, err := plan(t, strings.NewReplacer(append(slices.Clone(c.changes), "[paint]", "[wishes]\n"+c.wish+"\n[paint]")...).Replace(base))
		if err != nil {
			t.Fatal(err)
		}
		s, _ := j.Scheme("hull")
		if !s.Findings.Has(antifoul.RuleNotTwoTypes) || s.Findings.Has(antifoul.RuleTwoTypes) {
			t.Errorf("%s: not refused", name)
		}
		for _, l := range s.Stack {
			if l.For == compat.Signal && l.Coating.Key != s.Coating.Key {
				t.Errorf("%s: the signal coat is %s", name, l.Coating.Key)
			}
		}
	}
}

// What the law says of the type below is heard too: where it forbids the type it is not laid, and says so; a condition is told beside the scheme. The type of the hull itself is no other type.
func TestLawOfTheSignalCoat(t *testing.T) {
	const ban = "[[law]]\nkey = \"harbour\"\nname = \"the harbour\"\nbasis = \"own table\"\nsource = \"its rules\"\nplace = \"GB\"\nsubject = \"coating\"\nverdict = \"forbidden\"\nbiocides = [\"cuprous oxide\"]\nroles = [\"kept\"]\nsays = \"no cuprous oxide\"\nread_on = 2026-11-25\n"
	for name, c := range map[string]struct {
		own, signal, place string
		rule               finding.ID
		told               finding.Verdict // of law, about the type below
	}{
		"allowed":      {"", "hard-copper-free", "GB", antifoul.RuleTwoTypes, 0},
		"forbidden":    {ban, "hard-cuprous", "GB", antifoul.RuleNotTwoTypes, finding.Forbidden},
		"on condition": {"", "hard-cuprous", "US", antifoul.RuleTwoTypes, finding.Caution},
		"its own type": {"", "ablative-copper-free", "GB", "", 0},
	} {
		text := strings.NewReplacer(append(slices.Clone(bareHull), "[paint]", "[wishes]\ncoating = \"ablative-copper-free\"\nsignal_type = \""+c.signal+"\"\n[paint]", `place = "GB"`, `place = "`+c.place+`"`)...).Replace(base)
		j := billed(t, c.own, text)
		s, _ := j.Scheme("hull")
		var got finding.ID
		for _, r := range []finding.ID{antifoul.RuleTwoTypes, antifoul.RuleNotTwoTypes} {
			if s.Findings.Has(r) {
				got += r
			}
		}
		below, _ := j.Book.Coating(c.signal)
		place, _ := j.Book.Place(c.place)
		told := c.told == 0 || slices.ContainsFunc(s.Findings.At(c.told), func(f finding.Finding) bool { return f.About == below.Name && f.Against == place.Name })
		if got != c.rule || !told {
			t.Errorf("%s: %q, want %q; the law is told %v: %v", name, got, c.rule, told, s.Findings)
		}
	}
}

func TestSignalTypeFaults(t *testing.T) {
	for _, key := range []string{"hard-cupros", "epoxy-barrier", "none", "ablative-old"} {
		if _, err := plan(t, strings.Replace(base, "[paint]", "[wishes]\nsignal_type = \""+key+"\"\n[paint]", 1)); err == nil || !strings.Contains(err.Error(), "wishes.signal_type") {
			t.Errorf("%s: %v", key, err)
		}
	}
}
