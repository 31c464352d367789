package antifoul_test

import (
	"fmt"
	"math"
	"os"
	"strings"
	"testing"

	"boatyard.example/bottomwork/antifoul"
	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

func exampleBoat(tb testing.TB, name string) antifoul.Boat {
	tb.Helper()
	x, err := antifoul.ReadBoat(os.DirFS("../examples"), name)
	if err != nil {
		tb.Fatal(err)
	}
	return x
}

func hullOf(tb testing.TB, x antifoul.Boat) antifoul.PartRanking {
	tb.Helper()
	r, err := antifoul.Rank(tables.Default(), x)
	if err != nil {
		tb.Fatal(err)
	}
	return r.Hull()
}

// What is said to change the choice changes it: the boat with that one fact is ranked from the beginning.
func TestSwapsAndLiftsAreTrue(t *testing.T) {
	swaps, lifts := 0, 0
	eachBoat(t, 40, func(t *testing.T, n uint64, x antifoul.Boat) {
		t.Helper()
		p := hullOf(t, x)
		best, _ := p.Best()
		for _, c := range p.Swaps() {
			swaps++
			then, ok := hullOf(t, c.With).Best()
			if ok != (c.Type != "") || ok && (then.Key != c.Type || c.Type == best.Key) {
				t.Errorf("boat %d: %s %v instead of %v: %q first, said %q", n, c.Key, c.To, c.From, then.Key, c.Type)
			}
		}
		for _, c := range p.Lifts() {
			lifts++
			was, _ := p.Of(c.Type)
			then, _ := hullOf(t, c.With).Of(c.Type)
			if was.Tier != antifoul.Unsuited || then.Tier > antifoul.AskFirst {
				t.Errorf("boat %d: %s %v instead of %v: %s is %v and was %v", n, c.Key, c.To, c.From, c.Type, then.Tier, was.Tier)
			}
		}
	})
	if swaps < 20 || lifts < 20 {
		t.Errorf("%d swaps, %d lifts: too few to tell", swaps, lifts)
	}
}

// The sentences name what decided: without that fact in the boat file they are others.
func TestSentencesRestOnTheirFacts(t *testing.T) {
	b := tables.Default()
	words := func(x antifoul.Boat) string {
		var out []string
		for _, f := range hullOf(t, x).InWords() {
			out = append(out, b.Say(f, quantity.Metric))
		}
		return strings.Join(out, "\n")
	}
	for name, c := range map[string]struct {
		boat    string
		names   []string // that the sentences must name
		without func(*antifoul.Boat)
	}{
		"growth":       {"boats/sloop.toml", []string{"growth where she lies is heavy", "8.1 points behind"}, func(x *antifoul.Boat) { x.Use.Growth = 0 }},
		"what is on":   {"boats/sloop.toml", []string{"The same again"}, func(x *antifoul.Boat) { x.Parts[0].Found = nil }},
		"law":          {"boats/sloop.toml", []string{"Great Britain"}, func(x *antifoul.Boat) { x.Berths = nil }},
		"on a trailer": {"boats/trailer.toml", []string{"No antifouling"}, func(x *antifoul.Boat) { x.Use.Kept = "" }},
		"metal": {"boats/steel.toml", []string{"stripped or blasted first"}, func(x *antifoul.Boat) {
			x.Parts[0].Material = "grp"
			x.Parts[0].Found[0].State = tables.Sound
			x.Parts[0].Found[0].Coating, _ = b.Coating("ablative-cuprous-multi")
			x.Parts[0].Seen = nil
			x.Parts[0].Readings.Flaking = quantity.Share{}
		}},
	} {
		x := exampleBoat(t, c.boat)
		said := words(x)
		for _, want := range c.names {
			if !strings.Contains(said, want) {
				t.Errorf("%s: %q is not in:\n%s", name, want, said)
			}
		}
		x = exampleBoat(t, c.boat)
		c.without(&x)
		if then := words(x); strings.Contains(then, c.names[0]) {
			t.Errorf("%s: without the fact still %q in:\n%s", name, c.names[0], then)
		}
	}
}

// Every boat is answered in words, and each sentence is whole.
func TestEverythingIsSaidInWords(t *testing.T) {
	b := tables.Default()
	kinds := map[finding.ID]int{}
	eachBoat(t, 20, func(t *testing.T, n uint64, x antifoul.Boat) {
		t.Helper()
		r, err := antifoul.Rank(b, x)
		if err != nil {
			t.Fatal(err)
		}
		for _, p := range r.Parts {
			list := p.InWords()
			if len(list) == 0 {
				t.Errorf("boat %d, %s: not a word", n, p.Part)
			}
			for i, f := range list {
				if i == 0 {
					kinds[f.Rule]++
				}
				if i > 0 && list[0].Rule == antifoul.RuleSayBest && f.About == "" {
					t.Errorf("boat %d, %s: of what is %s said?", n, p.Part, f.Rule)
				}
				if text := b.Say(f, quantity.Metric); strings.Contains(text, "not stated") || strings.ContainsAny(text, "{}") || strings.Contains(text, "<nil>") {
					t.Errorf("boat %d, %s: %s", n, p.Part, text)
				}
			}
			for _, c := range append(p.Swaps(), p.Lifts()...) {
				if text := b.Say(c.Finding, quantity.Metric); strings.Contains(text, "not stated") || strings.Contains(text, "<nil>") {
					t.Errorf("boat %d, %s: %s", n, p.Part, text)
				}
			}
		}
	})
	for _, rule := range []finding.ID{antifoul.RuleSayBest, antifoul.RuleSayStrip, antifoul.RuleSayNone, antifoul.RuleSayAsk, antifoul.RuleSayBarred} {
		if kinds[rule] == 0 {
			t.Errorf("no boat is answered by %s: %v", rule, kinds)
		}
	}
}

// "Nothing in this book lasts that long" is an answer, with the months that were wished.
func TestNothingLastsThatLong(t *testing.T) {
	x := exampleBoat(t, "bottomjob/demo.toml")
	x.Wishes.RepaintAfter = quantity.Month.N(200)
	list := hullOf(t, x).InWords()
	if len(list) == 0 || list[0].Rule != antifoul.RuleSayNothing || !strings.Contains(tables.Default().Say(list[0], quantity.Metric), "200 months") {
		t.Errorf("%v", list)
	}
}

// Draws with the same seed agree, another seed does not move a clear lead, types of equal score are too close to call, and the share of a pair
// does not hang on how many others are asked about.
func TestCloseness(t *testing.T) {
	p := hullOf(t, exampleBoat(t, "boats/sloop.toml"))
	a, again, other := p.Closeness(500, 1, 4), p.Closeness(500, 1, 4), p.Closeness(500, 2, 4)
	if fmt.Sprint(a) != fmt.Sprint(again) || a.Draws != 500 || a.Seed != 1 || len(a.Rows) != 4 {
		t.Errorf("%v and %v", a, again)
	}
	for i := range a.Rows {
		if d := a.Rows[i].Share - other.Rows[i].Share; d > 0.1 || d < -0.1 {
			t.Errorf("%s: %.2f and %.2f with another seed", a.Rows[i].Coating.Key, a.Rows[i].Share, other.Rows[i].Share)
		}
	}
	tied := 0
	eachBoat(t, 25, func(t *testing.T, n uint64, x antifoul.Boat) {
		t.Helper()
		p := hullOf(t, x)
		best, ok := p.Best()
		if !ok {
			return
		}
		for _, l := range p.Closeness(200, n, 6).Rows {
			q, _ := p.Of(l.Coating.Key)
			if l.Share < 0 || l.Share > 1 || q.Tier != best.Tier || (l.Share > 0.2 && l.Share < 0.8) != l.Equal {
				t.Errorf("boat %d: %+v", n, l)
			}
			if q.Score == best.Score && q.Rank == best.Rank && (l.Share < 0.05 || l.Share > 0.95) && best.Coating().Wears() && q.Coating().Wears() {
				t.Logf("boat %d: %s and %s have equal points and one leads in %.2f", n, best.Key, q.Key, l.Share)
			}
			if l.Equal {
				tied++
			}
		}
	})
	if tied == 0 {
		t.Error("no two types are ever too close to call")
	}
}

// A draw in which neither of two leads counts half, and the share is told in whole per cent.
func TestDrawsThatNobodyWins(t *testing.T) {
	half := 0
	eachBoat(t, 20, func(t *testing.T, n uint64, x antifoul.Boat) {
		t.Helper()
		p := hullOf(t, x)
		for _, l := range p.Closeness(1, n, 6).Rows {
			if l.Share != 0 && l.Share != 0.5 && l.Share != 1 {
				t.Errorf("boat %d: %v of one draw", n, l.Share)
			}
			if l.Share == 0.5 {
				half++
			}
		}
		for _, l := range p.Closeness(3, n, 2).Rows {
			if got, want := fmt.Sprint(factOf(l.Finding, "share")), fmt.Sprintf("%.0f %%", math.Floor(l.Share*100+0.5)); got != want {
				t.Errorf("boat %d: told %s of %v", n, got, l.Share)
			}
		}
	})
	if half == 0 {
		t.Error("somebody wins every draw")
	}
}

// What is said of cleaning is said by the tool.
func TestSwapsOfCleaningNameTheTool(t *testing.T) {
	tools := map[tables.Grade]string{tables.None: "no cleaning", tables.Light: "a soft sponge", tables.Medium: "a brush", tables.Heavy: "hard scrubbing"}
	asked := 0
	eachBoat(t, 40, func(t *testing.T, n uint64, x antifoul.Boat) {
		t.Helper()
		for _, c := range hullOf(t, x).Swaps() {
			if c.Key == "use.cleaning" {
				asked++
				every := x.Use.CleanedEvery // who begins to clean does it once a month, who stops has no interval
				switch {
				case c.With.Use.Cleaning == tables.None:
					every = quantity.Duration{}
				case !every.Given():
					every = quantity.Day.N(30)
				}
				if c.With.Use.CleanedEvery.String() != every.String() {
					t.Errorf("boat %d: %v, every %v instead of %v", n, c.To, c.With.Use.CleanedEvery, every)
				}
				if c.From != tools[x.Use.Cleaning] || c.To != tools[c.With.Use.Cleaning] || c.From == c.To {
					t.Errorf("boat %d: %v instead of %v", n, c.To, c.From)
				}
			}
		}
	})
	if asked == 0 {
		t.Error("cleaning changes no choice")
	}
}

func BenchmarkWhatIf(b *testing.B) {
	p := hullOf(b, exampleBoat(b, "boats/sloop.toml"))
	b.ReportAllocs()
	for b.Loop() {
		p.Swaps()
		p.Lifts()
		p.Closeness(500, 1, 4)
	}
}
