package antifoul_test

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"boatyard.example/bottomwork/antifoul"
	"boatyard.example/bottomwork/tables/finding"
)

// alike is a type of its own that was seen to hold where the test boat lies, so that it is set against no others than its like; lines take the place of those
// of the same key. It is put on in 2 to 4 coats of 50 um.
func alike(key string, lines ...string) string {
	row := twin(key, "17 %", "18 %", "20 %")
	if len(lines) > 0 && strings.HasPrefix(lines[0], "life") {
		row = strings.NewReplacer("wear_rest = [\"0.5 um\", \"1.5 um\", \"3 um\"]\n", "", "wear_use = [\"3 um\", \"5 um\", \"8 um\"]\n", "").Replace(row)
	}
	for _, l := range lines {
		name, _, _ := strings.Cut(l, " = ")
		if at := strings.Index(row, "\n"+name+" = "); at >= 0 {
			end := at + 1 + strings.Index(row[at+1:], "\n")
			row = row[:at+1] + l + row[end:]
		} else {
			row = strings.Replace(row, "growth = ", l+"\ngrowth = ", 1)
		}
	}
	return row + pastRow("held-"+key, key, "GB", "held", "24")
}

func life(low, typical, high string) string {
	return fmt.Sprintf("life = [\"%s months\", \"%s months\", \"%s months\"]", low, typical, high)
}

func wearing(low, typical, high string) []string {
	rate := fmt.Sprintf(" = [\"%s um\", \"%s um\", \"%s um\"]", low, typical, high)
	return []string{"wear_rest" + rate, "wear_use" + rate}
}

// weighed are the weights of the criteria: those named weigh 1, the others nothing.
func weighed(keys ...string) string {
	var out strings.Builder
	for _, k := range []string{"lasting", "growth", "restraint", "speed", "idle", "air", "cleaning", "abrasion", "stays", "water", "metal", "work", "biocide", "colour", "racing", "same"} {
		weight := 0
		for _, x := range keys {
			if x == k {
				weight = 1
			}
		}
		fmt.Fprintf(&out, "[[criterion]]\nkey = %q\nweight = %d\nbasis = \"own table\"\nsource = \"ours\"\n", k, weight)
	}
	return out.String()
}

// How often one type leads another, with a pencil. The boat is afloat for 16 months of the 24 that are wished. Half of the draws lie below the typical value, spread evenly, half above.
func TestClosenessByHand(t *testing.T) {
	steady := alike("twin-a", life("16", "16", "16"))
	against := func(low, typical, high string) string { return steady + alike("twin-b", life(low, typical, high)) }
	four := wearing("12.5", "12.5", "12.5") // 200 um in 16 months: four coats, 0.4
	doubtful := wearing("5", "10", "20")    // three coats to 9.375 um a month, which 7/16 of the draws are, four to 12.5, which 10/16 are; beyond it has lost
	var rows []string
	for _, key := range []string{"ablative-cuprous-multi", "ablative-thiocyanate", "ablative-copper-free", "ablative-cuprous-water", "ablative-copper-free-water"} { // which need no more than washing
		rows = append(rows, pastRow("failed-"+key, key, "GB", "failed", "12"))
	}
	failed := strings.Join(rows, "")
	for name, c := range map[string]struct {
		own         string
		pairs       []string
		first, than string
		share       float64
	}{
		// A life of 16 months is all that is wished, and more is worth no more: a draw counts half where the other lasts as long, else the steady one leads.
		"half of the draws last":     {against("8", "16", "32"), nil, "twin-a", "twin-b", 0.75},
		"the upper quarter lasts":    {against("8", "12", "20"), nil, "twin-a", "twin-b", 0.875},
		"the upper sixth lasts":      {against("4", "8", "20"), nil, "twin-a", "twin-b", 11. / 12},
		"all but the lower quarter":  {against("8", "24", "40"), nil, "twin-a", "twin-b", 0.625},
		"all but the lower eighth":   {against("12", "28", "40"), nil, "twin-a", "twin-b", 0.5625},
		"all but the lower sixth":    {against("14", "20", "23"), nil, "twin-a", "twin-b", 0.5 + 1./12},
		"none lasts":                 {against("2", "8", "16"), nil, "twin-a", "twin-b", 1},
		"nothing to last":            {against("0", "0", "0") + weighed("lasting"), []string{`ashore_each_year = "4 months"`, `ashore_each_year = "12 months"`}, "twin-a", "twin-b", 0.5},
		"nothing to end or to last":  {alike("twin-b", life("8", "16", "32")) + pastRow("bare", "none", "GB", "held", "24") + weighed("lasting"), []string{`ashore_each_year = "4 months"`, `ashore_each_year = "12 months"`}, "none", "twin-b", 0.5},
		"nothing to end":             {alike("twin-b", life("8", "16", "32")) + pastRow("bare", "none", "GB", "held", "24") + weighed("lasting"), nil, "none", "twin-b", 0.75},
		"coats":                      {alike("twin-a", four...) + alike("twin-b", doubtful...), nil, "twin-a", "twin-b", 6./16 + 3./32},
		"coats, the other is slower": {alike("twin-a", append(four, `speed_max = "6.5 kn"`)...) + alike("twin-b", doubtful...), nil, "twin-b", "twin-a", 10. / 16},
		"coats and nothing else":     {alike("twin-a", four...) + alike("twin-b", doubtful...) + weighed("lasting"), nil, "twin-a", "twin-b", 6./16 + 3./32},
		"nothing weighs":             {against("2", "8", "16") + weighed(), nil, "twin-a", "twin-b", 0.5},
		// To strip and degrease is 0.1, 0.5, 0.7 h for a square metre and to wash and lay a tie coat 0.4: less in 5/8 of the draws. Both are abraded by the same hands.
		"work": {
			weighed("work") + hoursOf("strip", 0.08, 0.48, 0.68) + hoursOf("degrease", 0.02, 0.02, 0.02) + hoursOf("wash", 0.1, 0.1, 0.1) + hoursOf("tie coat", 0.3, 0.3, 0.3) +
				failed + pastRow("h", "hard-cuprous", "GB", "held", "24") + pastRow("s", "self-polishing-cuprous", "GB", "held", "24"),
			[]string{"relaunched_unpainted = true", "relaunched_unpainted = false"},
			"self-polishing-cuprous", "hard-cuprous", 0.625,
		},
	} {
		text := base
		for i := 0; i+1 < len(c.pairs); i += 2 {
			text = strings.Replace(text, c.pairs[i], c.pairs[i+1], 1)
		}
		p := rankedHull(t, c.own, text)
		if p.Places[0].Key != c.first {
			t.Errorf("%s: %s is first: the test asks something else", name, p.Places[0].Key)
			continue
		}
		rows := p.Closeness(3000, 1, 4).Rows
		if len(rows) != 1 || rows[0].Coating.Key != c.than {
			t.Errorf("%s: %v, want one of %s", name, rows, c.than)
			continue
		}
		if math.Abs(rows[0].Share-c.share) > 0.03 {
			t.Errorf("%s: leads in %.3f, want %.3f", name, rows[0].Share, c.share)
		}
	}
}

func hoursOf(step string, low, typical, high float64) string {
	return fmt.Sprintf("[[step]]\nkey = %q\nhours_m2 = [%g, %g, %g]\nbasis = \"own table\"\nsource = \"the yard\"\n", step, low, typical, high)
}

// Four draws of five make it firm, for either; of five draws that is four or more.
func TestFirmFromFourDrawsOfFive(t *testing.T) {
	p := rankedHull(t, alike("twin-a", wearing("12.5", "12.5", "12.5")...)+alike("twin-b", wearing("5", "10", "20")...), base) // ahead in 6/16 of the draws, alike in 3/16
	seen := map[float64]bool{}
	for seed := range uint64(400) {
		l := p.Closeness(5, seed, 1).Rows[0]
		ahead := math.Round(l.Share * 10) // in halves of a draw
		seen[ahead] = true
		rule, v := antifoul.RuleTooClose, finding.Caution
		if ahead >= 8 || ahead <= 2 {
			rule, v = antifoul.RuleFirm, finding.Fine
		}
		if l.Equal != (rule == antifoul.RuleTooClose) || l.Finding.Rule != rule || l.Finding.Verdict != v {
			t.Fatalf("ahead in %v of 10 halves: equal %v, %s, %v", ahead, l.Equal, l.Finding.Rule, l.Finding.Verdict)
		}
	}
	for _, ahead := range []float64{2, 3, 7, 8} {
		if !seen[ahead] {
			t.Errorf("no five draws are led by %v of 10 halves: %v", ahead, seen)
		}
	}
}

// Set against the first are those of its tier, in their order, as many as are asked for; without draws, without any, and of places that no ranking made there are none.
func TestWhoIsSetAgainstTheFirst(t *testing.T) {
	p := rankedHull(t, alike("twin-a")+alike("twin-b")+alike("twin-c", `speed_max = "6.5 kn"`), base)
	for most, want := range []string{"", "twin-b", "twin-b twin-c", "twin-b twin-c"} {
		var got []string
		for _, l := range p.Closeness(1, 1, most).Rows {
			got = append(got, l.Coating.Key)
		}
		if strings.Join(got, " ") != want {
			t.Errorf("at most %d: %v, want %s", most, got, want)
		}
	}
	for name, c := range map[string]antifoul.Closeness{
		"no draw":             p.Closeness(0, 1, 4),
		"less than no draw":   p.Closeness(-1, 1, 4),
		"nothing ranked":      antifoul.PartRanking{}.Closeness(1, 1, 4),
		"places of no boat":   antifoul.PartRanking{Places: []antifoul.Place{{Key: "a", Tier: antifoul.Suits}, {Key: "b", Tier: antifoul.Suits}}}.Closeness(1, 1, 4),
		"nothing may be used": antifoul.PartRanking{Places: p.Places[len(p.Places)-1:]}.Closeness(1, 1, 4),
	} {
		if len(c.Rows) != 0 {
			t.Errorf("%s: %v", name, c.Rows)
		}
	}
}
