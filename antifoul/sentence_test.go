package antifoul_test

import (
	"fmt"
	"math"
	"testing"

	"boatyard.example/bottomwork/antifoul"
	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/finding"
)

// factOf is a fact of a finding; nil where it has none of that name.
func factOf(f finding.Finding, name string) any {
	for _, x := range f.Facts {
		if x.Name == name {
			return x.Value
		}
	}
	return nil
}

// largest is the first of the criteria for which the number is largest among those taken; -1 where none is taken.
func largest(n int, taken func(int) bool, by func(int) float64) int {
	out := -1
	for i := range n {
		if !taken(i) {
			continue
		}
		beaten := false
		for k := range n {
			if taken(k) && (by(k) > by(i) || k < i && by(k) == by(i)) {
				beaten = true
			}
		}
		if !beaten {
			out = i
		}
	}
	return out
}

// orNotGiven is what a criterion shows, in words where it shows nothing.
func orNotGiven(v any) string {
	if s := fmt.Sprint(v); v != nil && s != "" {
		return s
	}
	return "not given"
}

// ofType is what a criterion shows of a type; its own name would say nothing, so that is told as the film that she carries, or another.
func ofType(p antifoul.Place, c antifoul.Criterion) string {
	switch show := orNotGiven(c.Type); {
	case show != p.Name:
		return show
	case orNotGiven(c.Boat) == show:
		return "the same film"
	}
	return "another film"
}

// The three sentences by their definitions: what comes first of how many; the criterion in which it leads the second by most points; the second, how far it is behind, and the criterion in which the two
// differ most, where they differ by more than half a tenth; then what must be asked, else what takes most points from the first. Each kind occurs among the boats.
func TestSentencesByTheirDefinitions(t *testing.T) {
	b := tables.Default()
	kinds := map[string]int{}
	eachBoat(t, 10, func(t *testing.T, n uint64, x antifoul.Boat) {
		t.Helper()
		r, err := antifoul.Rank(b, x)
		if err != nil {
			t.Fatal(err)
		}
		for _, p := range r.Parts {
			best, ok := p.Best()
			if !ok {
				continue
			}
			var want finding.List // rules; of what is said of the second the facts too
			may := 0
			for _, o := range p.Places {
				if o.Tier == antifoul.Suits || o.Tier == antifoul.AfterWork || o.Tier == antifoul.AskFirst {
					may++
				}
			}
			mine := best.Criteria()
			said := func(i int) bool { return mine[i].Finding.Rule != "" && mine[i].Judged }
			var theirs []antifoul.Criterion
			if may > 1 {
				theirs = p.Places[1].Criteria()
			}
			lead := func(i int) float64 {
				if may > 1 {
					return mine[i].Points - theirs[i].Points
				}
				return mine[i].Points
			}
			list := p.InWords()
			first := list[0]
			if factOf(first, "may") != may || factOf(first, "of") != len(p.Places) || first.About != best.Name || factOf(first, "tier") != best.Tier.String() {
				t.Errorf("boat %d, %s: %d of %d may be used: %v", n, p.Part, may, len(p.Places), first)
			}
			if i := largest(len(mine), said, lead); i >= 0 {
				want = append(want, mine[i].Finding)
			}
			apart := func(i int) float64 { return math.Abs(lead(i)) }
			if may > 1 {
				if i := largest(len(mine), func(i int) bool { return apart(i) > 0.05 }, apart); i >= 0 {
					row, err := b.Criterion(mine[i].Key)
					if err != nil {
						t.Fatal(err)
					}
					rule, behind := antifoul.RuleSayNext, math.Round((best.Score-p.Places[1].Score)*10)/10
					if behind < 0 {
						rule = antifoul.RuleSayMore
					}
					if behind == 0 {
						kinds["equal"]++
					}
					want = append(want, finding.Finding{Rule: rule, About: p.Places[1].Name, Facts: []finding.Fact{{Name: "behind", Value: math.Abs(behind)}, {Name: "criterion", Value: row.Name}, {Name: "boat", Value: orNotGiven(mine[i].Boat)}, {Name: "first", Value: ofType(best, mine[i])}, {Name: "second", Value: ofType(p.Places[1], theirs[i])}}})
				} else {
					kinds["alike"]++
				}
			} else {
				want = append(want, finding.Finding{Rule: antifoul.RuleSayOnly, About: best.Name})
			}
			if asks := best.Asks(); len(asks) > 0 {
				want = append(want, asks[0])
				kinds["asks"]++
			} else if i := largest(len(mine), said, func(i int) float64 { return -mine[i].Points }); i >= 0 && mine[i].Points < 0 {
				want = append(want, mine[i].Finding)
				kinds["against"]++
			} else {
				kinds["nothing against"]++
			}
			if len(list) != len(want)+1 {
				t.Errorf("boat %d, %s: %d sentences, want %d", n, p.Part, len(list), len(want)+1)
				continue
			}
			for i, w := range want {
				got := list[i+1]
				kinds[string(w.Rule)]++
				if got.Rule != w.Rule || got.About != w.About {
					t.Errorf("boat %d, %s: sentence %d is %s of %s, want %s of %s", n, p.Part, i+2, got.Rule, got.About, w.Rule, w.About)
				}
				for _, f := range w.Facts {
					if fmt.Sprint(factOf(got, f.Name)) != fmt.Sprint(f.Value) {
						t.Errorf("boat %d, %s: sentence %d, %s: %v, want %v", n, p.Part, i+2, f.Name, factOf(got, f.Name), f.Value)
					}
				}
			}
		}
	})
	for _, kind := range []string{"asks", "against", "nothing against", "alike", "equal", string(antifoul.RuleSayNext), string(antifoul.RuleSayMore), string(antifoul.RuleSayOnly)} {
		if kinds[kind] == 0 {
			t.Errorf("no boat for %s: %v", kind, kinds)
		}
	}
}

// Where nothing may be used, what rules most types out is counted: the first of those that rule out most.
func TestWhatRulesMostTypesOut(t *testing.T) {
	b := tables.Default()
	asked := 0
	eachBoat(t, 20, func(t *testing.T, n uint64, x antifoul.Boat) {
		t.Helper()
		r, err := antifoul.Rank(b, x)
		if err != nil {
			t.Fatal(err)
		}
		for _, p := range r.Parts {
			if _, ok := p.Best(); ok || len(p.Places) == 0 {
				continue
			}
			asked++
			counts := map[finding.ID]int{}
			var rules []finding.ID
			for i := range p.Places {
				for _, f := range p.Places[i].Reasons() {
					if counts[f.Rule]++; counts[f.Rule] == 1 {
						rules = append(rules, f.Rule)
					}
				}
			}
			most := rules[0]
			for _, rule := range rules {
				if counts[rule] > counts[most] {
					most = rule
				}
			}
			list := p.InWords()
			if len(list) != 2 || list[1].Rule != most || factOf(list[0], "out") != counts[most] || factOf(list[0], "of") != len(p.Places) {
				t.Errorf("boat %d, %s: %v, want %s by %d of %d", n, p.Part, list, most, counts[most], len(p.Places))
			}
		}
	})
	if asked == 0 {
		t.Error("no boat that nothing may be used on")
	}
}
