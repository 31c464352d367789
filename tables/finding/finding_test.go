package finding_test

import (
	"testing"

	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

var five = []finding.Verdict{finding.Fine, finding.Caution, finding.Ask, finding.Needs, finding.Forbidden}

// For every pair of verdicts, in both orders, the worst is the one that stands later in the rising list.
func TestWorst(t *testing.T) {
	for i, a := range five {
		for j, b := range five {
			want := five[max(i, j)]
			if got := (finding.List{{Verdict: a}, {Verdict: b}}).Worst(); got != want {
				t.Errorf("worst of %s and %s is %s, want %s", a, b, got, want)
			}
		}
	}
}

func TestEmptyListIsNotJudged(t *testing.T) {
	for _, l := range []finding.List{nil, {}, finding.List{{Verdict: finding.Needs}}.At(finding.Fine)} {
		w := l.Worst()
		if w.Valid() {
			t.Errorf("an empty list is judged %s", w)
		}
		for _, v := range five {
			if w == v {
				t.Errorf("an empty list counts as %s", v)
			}
			if len(l.At(v)) != 0 {
				t.Errorf("an empty list holds a finding at %s", v)
			}
		}
		if l.Has("") {
			t.Error("an empty list has a rule")
		}
	}
}

func TestAtKeepsTheOrderAndHas(t *testing.T) {
	l := finding.List{
		{Rule: "a", Verdict: finding.Caution},
		{Rule: "b", Verdict: finding.Needs},
		{Rule: "c", Verdict: finding.Caution},
		{Rule: "d", Verdict: finding.Fine},
	}
	at := l.At(finding.Caution)
	if len(at) != 2 || at[0].Rule != "a" || at[1].Rule != "c" {
		t.Errorf("at caution: %v, want a and c in this order", at)
	}
	if n := len(l.At(finding.Forbidden)); n != 0 {
		t.Errorf("%d findings at forbidden, want none", n)
	}
	for id, want := range map[finding.ID]bool{"a": true, "d": true, "e": false, "": false, "A": false} {
		if got := l.Has(id); got != want {
			t.Errorf("has %q: %t, want %t", id, got, want)
		}
	}
	if len(l) != 4 || l[1].Rule != "b" {
		t.Error("asking changed the list")
	}
}

func TestVerdictTextThereAndBack(t *testing.T) {
	words := map[finding.Verdict]string{
		finding.Fine: "fine", finding.Caution: "caution", finding.Ask: "ask", finding.Needs: "needs", finding.Forbidden: "forbidden",
	}
	for _, v := range five {
		text, err := v.MarshalText()
		if err != nil || string(text) != words[v] || v.String() != words[v] || !v.Valid() {
			t.Errorf("verdict %d writes %q and %q, %v; want %q", v, text, v, err, words[v])
		}
		var back finding.Verdict
		if err := back.UnmarshalText(text); err != nil || back != v {
			t.Errorf("%q reads as %s, %v", text, back, err)
		}
	}
}

func TestInvalidVerdicts(t *testing.T) {
	for _, v := range []finding.Verdict{0, 6, 255} {
		if v.Valid() {
			t.Errorf("verdict %d is valid", v)
		}
		if text, err := v.MarshalText(); err == nil {
			t.Errorf("verdict %d writes %q, want an error", v, text)
		}
		var back finding.Verdict
		if err := back.UnmarshalText([]byte(v.String())); err == nil {
			t.Errorf("the words %q of verdict %d read as %s", v, v, back)
		}
	}
	for _, text := range []string{"", "Fine", "fine ", "ok", "0", "1", "not judged"} {
		back := finding.Needs
		if err := back.UnmarshalText([]byte(text)); err == nil || back != finding.Needs {
			t.Errorf("%q reads as %s, %v; want an error and no change", text, back, err)
		}
	}
}

func TestStepEqual(t *testing.T) {
	film := func(n int64) quantity.Range[quantity.Film] { return quantity.Exactly(quantity.Micrometre.N(n)) }
	base := func() finding.Step {
		return finding.Step{Do: finding.Barrier, Coating: "epoxy-barrier", Film: film(254), Grit: "80 to 120", Coats: 3}
	}
	same := base()
	same.Film = quantity.Exactly(quantity.Mil.N(10)) // 10 mil are 254 um
	if !base().Equal(same) || !same.Equal(base()) {
		t.Error("the same film in another unit makes another step")
	}
	for what, change := range map[string]func(*finding.Step){
		"do":      func(s *finding.Step) { s.Do = finding.Prime },
		"coating": func(s *finding.Step) { s.Coating = "" },
		"low":     func(s *finding.Step) { s.Film.Low = quantity.Micrometre.N(253) },
		"typical": func(s *finding.Step) { s.Film.Typical = quantity.Micrometre.N(255) },
		"high":    func(s *finding.Step) { s.Film.High = quantity.Film{} },
		"grit":    func(s *finding.Step) { s.Grit = "80" },
		"coats":   func(s *finding.Step) { s.Coats = 2 },
	} {
		s := base()
		change(&s)
		if base().Equal(s) || s.Equal(base()) {
			t.Errorf("steps that differ in %s are equal", what)
		}
	}
}

func TestKindsAreWordsOfTables(t *testing.T) {
	seen := map[finding.Kind]bool{}
	for _, k := range finding.Kinds() {
		if k == "" || k == finding.OwnTable || seen[k] {
			t.Errorf("kind %q: empty, own table, or twice", k)
		}
		seen[k] = true
	}
	for _, k := range []finding.Kind{finding.Published, finding.Derived, finding.CommonPractice, finding.FromMemory, finding.Assumption, finding.Invented} {
		if !seen[k] {
			t.Errorf("%q is not listed", k)
		}
	}
	finding.Kinds()[0] = "changed"
	if finding.Kinds()[0] == "changed" {
		t.Error("a change of the list that Kinds returned shows in the next one")
	}
}
