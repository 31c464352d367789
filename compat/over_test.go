package compat_test

import (
	"slices"
	"strings"
	"testing"
	"testing/fstest"

	"boatyard.example/bottomwork/compat"
	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

// slow is a coating whose window is 16 to 24 hours.
func slow(t *testing.T) (*tables.Book, tables.Coating) {
	t.Helper()
	b, err := book(t).With(fstest.MapFS{"own.toml": {Data: []byte(`
[[coating]]
key = "slow"
basis = "invented"
role = "antifouling"
mechanism = "hard"
packs = 1
carrier = "solvent"
solids = "50 %"
film = "50 um"
coats = 2
most_coats = 4
at = "20 degC"
overcoat_min = "16 h"
overcoat_max = "24 h"
launch_min = "24 h"
apply_min = "5 degC"
apply_max = "35 degC"
life = "24 months"
scrub = "heavy"
abrasion = "heavy"
growth = "heavy"
waters = ["salt"]
`)}})
	if err != nil {
		t.Fatal(err)
	}
	c, err := b.Coating("slow")
	if err != nil {
		t.Fatal(err)
	}
	return b, c
}

// A coat that takes the next no sooner than after 16 hours and no later than after 24: the next comes a week later, and the film
// below must be scuffed.
func TestWindow(t *testing.T) {
	b, c := slow(t)
	minutes := quantity.Minute.N
	for _, w := range []struct {
		name string
		age  quantity.Duration
		rule finding.ID
		step finding.Action
	}{
		{"at once", minutes(0), "window-early", finding.Wait},
		{"a minute too early", minutes(16*60 - 1), "window-early", finding.Wait},
		{"as it opens", quantity.Hour.N(16), "", ""},
		{"a minute after it opens", minutes(16*60 + 1), "", ""},
		{"a minute before it closes", minutes(24*60 - 1), "", ""},
		{"as it closes", quantity.Day.N(1), "", ""},
		{"a minute too late", minutes(24*60 + 1), "window-past", finding.Abrade},
		{"a week later", quantity.Day.N(7), "window-past", finding.Abrade},
	} {
		t.Run(w.name, func(t *testing.T) {
			fs := compat.Over(b, c, compat.Layer{Coating: c, State: tables.Sound, Age: w.age})
			if w.rule == "" {
				if fs.Worst() != finding.Fine {
					t.Errorf("inside the window, but %v", rules(fs))
				}
				return
			}
			f := one(t, fs, w.rule)
			if f.Verdict != finding.Needs || len(f.First) == 0 || f.First[len(f.First)-1].Do != w.step || w.step == finding.Abrade && f.First[0].Do != finding.Wash {
				t.Errorf("%s, %v, want needs %s", f.Verdict, actions(f.First), w.step)
			}
			if fs.Worst() == finding.Forbidden {
				t.Errorf("a window never forbids: %v", rules(fs))
			}
		})
	}
}

func TestStateComesBeforeThePair(t *testing.T) {
	b := book(t)
	next := coating(t, b, "ablative-cuprous-multi")
	for state := range b.Conditions() {
		l := sound(t, b, "ablative-cuprous-multi", 100)
		l.State = tables.Condition(state.Key)
		fs := compat.Over(b, next, l)
		if got := fs.Worst() == finding.Forbidden; got != (state.Verdict == finding.Forbidden) {
			t.Errorf("%s: %v", state.Key, rules(fs))
		}
		if state.Verdict == finding.Forbidden && len(fs) != 1 {
			t.Errorf("%s: a state that forbids answers alone, got %v", state.Key, rules(fs))
		}
	}
	unsaid := sound(t, b, "ablative-cuprous-multi", 100)
	unsaid.State = ""
	if fs := compat.Over(b, next, unsaid); !fs.Has("state-not-reported") {
		t.Errorf("a state nobody reported is not sound: %v", rules(fs))
	}
}

func TestTheMoreSpecificRowAnswers(t *testing.T) {
	own := `
[[rule]]
key = "own-rule"
says = "{about} over {against}."
basis = "invented"
`
	row := func(key, fields string) string {
		return "[[overcoat]]\nkey = \"" + key + "\"\nbasis = \"invented\"\nrule = \"own-rule\"\n" + fields + "\n"
	}
	for _, c := range []struct {
		name, rows string
		want       finding.Verdict // of hard-cuprous over ablative-cuprous-multi, where the book says forbidden by a pair of two fields
		own        bool
	}{
		{"a bar outranks a pair", row("x", `level = "bar"`+"\nverdict = \"ask\""), finding.Ask, true},
		{"a class does not", row("x", `level = "class"`+"\nnew = \"hard\"\nold = \"ablative\"\nnew_packs = 1\nold_packs = 1\nverdict = \"fine\""), finding.Forbidden, false},
		{"a pair with fewer fields does not", row("x", `level = "pair"`+"\nold = \"ablative\"\nverdict = \"ask\""), finding.Forbidden, false},
		{"a pair with more fields does", row("x", `level = "pair"`+"\nnew = \"hard\"\nold = \"ablative\"\nold_packs = 1\nverdict = \"ask\""), finding.Ask, true},
		{"a pair that names the key does", row("x", `level = "pair"`+"\nnew = \"hard-cuprous\"\nold = \"ablative\"\nverdict = \"ask\""), finding.Ask, true},
		{"a pair as close and milder does not", row("x", `level = "pair"`+"\nnew = \"hard\"\nold = \"ablative\"\nverdict = \"ask\""), finding.Forbidden, false},
		{"a same row speaks of one mechanism only", row("x", `level = "same"`+"\nverdict = \"fine\""), finding.Forbidden, false},
		{"a row with an exception leaves it out", row("x", `level = "bar"`+"\nexcept = \"hard\"\nverdict = \"fine\""), finding.Forbidden, false},
		{"a row of the other solvent leaves it out", row("x", `level = "bar"`+"\nnew_solvent = \"mild\"\nverdict = \"fine\""), finding.Forbidden, false},
		{"a row inside the window leaves an old film out", row("x", `level = "bar"`+"\nwindow = \"inside\"\nverdict = \"fine\""), finding.Forbidden, false},
		{"a row of another biocide leaves it out", row("x", `level = "bar"`+"\nold_biocide = \"none\"\nverdict = \"fine\""), finding.Forbidden, false},
	} {
		t.Run(c.name, func(t *testing.T) {
			b, err := book(t).With(fstest.MapFS{"own.toml": {Data: []byte(own + c.rows)}})
			if err != nil {
				t.Fatal(err)
			}
			fs := compat.Over(b, coating(t, b, "hard-cuprous"), sound(t, b, "ablative-cuprous-multi", 100))
			if fs.Worst() != c.want || fs.Has("own-rule") != c.own {
				t.Errorf("%v, want %s, own row %v", rules(fs), c.want, c.own)
			}
		})
	}
}

func TestSiliconeNeedsItsOwnTieCoat(t *testing.T) {
	b := book(t)
	next := coating(t, b, "foul-release-silicone")
	for key, want := range map[string]finding.Verdict{"epoxy-primer": finding.Needs, "epoxy-barrier": finding.Needs, "epoxy-old": finding.Needs, "bare": finding.Needs, "tie-coat": finding.Forbidden, "hard-cuprous": finding.Forbidden, "sealer": finding.Forbidden} {
		fs := compat.Over(b, next, sound(t, b, key, 100))
		if fs.Worst() != want {
			t.Errorf("silicone over %s: %v, want %s", key, rules(fs), want)
		}
		if want == finding.Needs && !slices.Contains(actions(one(t, fs, "over-undercoat").First), "tie coat silicone-tie-coat") {
			t.Errorf("silicone over %s does not ask for its tie coat: %v", key, rules(fs))
		}
	}
	tie := sound(t, b, "silicone-tie-coat", 75)
	tie.Age = quantity.Hour.N(12)
	if fs := compat.Over(b, next, tie); fs.Worst() != finding.Fine {
		t.Errorf("silicone over its fresh tie coat: %v", rules(fs))
	}
}

func TestCopperFreeOverCopperSaysSo(t *testing.T) {
	b := book(t)
	old := sound(t, b, "ablative-cuprous-multi", 100)
	fs := compat.Over(b, coating(t, b, "ablative-copper-free"), old)
	if fs.Worst() != finding.Needs || one(t, fs, "over-copper-below").Verdict != finding.Caution {
		t.Errorf("copper-free over copper: %v", rules(fs))
	}
	if got, want := one(t, fs, "over-copper-below").Basis, old.Coating.Basis("biocide"); len(got) != 1 || got[0] != want {
		t.Errorf("it rests on %v, want %v", got, want)
	}
	if fs := compat.Over(b, coating(t, b, "ablative-cuprous-single"), old); fs.Has("over-copper-below") {
		t.Errorf("copper over copper: %v", rules(fs))
	}
}

// A pair that no row speaks of is asked, never allowed.
func TestUnwrittenPairIsAsked(t *testing.T) {
	b, err := tables.Load(fstest.MapFS{"r.toml": {Data: []byte("[[rule]]\nkey = \"over-unwritten\"\nsays = \"nobody wrote down {about} over {against}\"\nbasis = \"assumption\"\n")}})
	if err != nil {
		t.Fatal(err)
	}
	full := book(t)
	fs := compat.Over(b, coating(t, full, "hard-cuprous"), sound(t, full, "hard-cuprous", 50))
	f := one(t, fs, "over-unwritten")
	if f.Verdict != finding.Ask || !strings.Contains(strings.ToLower(b.Say(f, quantity.Metric)), "nobody wrote down hard, cuprous oxide over") {
		t.Errorf("%s: %s", f.Verdict, b.Say(f, quantity.Metric))
	}
}
