package antifoul_test

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"boatyard.example/bottomwork/antifoul"
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

// A coat lies where it says; else an extra coat on the strips of the hull that take one, and any other on the whole part. The flat has 20 m2, the waterline 2, the edges 1, the rudder 2.
func TestWhereACoatLies(t *testing.T) {
	j := plannedJob(t, sheet)
	for _, c := range []struct {
		lines []string
		on    string
		area  string
	}{
		{[]string{`part = "hull"`}, "flat waterline edges", "23 m2"},
		{[]string{`part = "hull"`, `zones = ["edges"]`}, "edges", "1 m2"},
		{[]string{`part = "hull"`, `layer = "signal"`}, "flat waterline edges", "23 m2"},
		{[]string{`part = "hull"`, `layer = "extra"`}, "waterline edges", "3 m2"},
		{[]string{`part = "hull"`, `layer = "extra"`, `coating = "hard-cuprous"`}, "waterline edges", "3 m2"},
		{[]string{`part = "hull"`, `layer = "extra"`, `zones = ["flat"]`}, "flat", "20 m2"},
		{[]string{`part = "hull"`, `layer = "extra"`, `zones = ["flat", "edges"]`}, "flat edges", "21 m2"},
		{[]string{`layer = "extra"`}, "rudder", "2 m2"},
	} {
		k := logged(t, j, logHead+laid(c.lines...), "").Coats[0]
		if got := strings.Join(k.On(), " "); got != c.on || k.Area.Typical.String() != c.area {
			t.Errorf("%v: on %s, %s; want %s, %s", c.lines, got, k.Area.Typical, c.on, c.area)
		}
	}
}

// coatsOf are coats, one a day from 10 April on; each is a part, a layer and, where it has a third word, one zone; after an = a colour.
func coatsOf(words ...string) string {
	var out strings.Builder
	out.WriteString(logHead)
	for i, w := range words {
		said, colour, _ := strings.Cut(w, "=")
		f := strings.Fields(said)
		lines := []string{fmt.Sprintf("coat = %d", i+1), fmt.Sprintf("part = %q", f[0]), fmt.Sprintf("layer = %q", f[1]), fmt.Sprintf(`begun = "2027-04-%d 09:00"`, 10+i), fmt.Sprintf(`ended = "2027-04-%d 10:00"`, 10+i)}
		if len(f) > 2 {
			lines = append(lines, fmt.Sprintf("zones = [%q]", f[2]))
		}
		if colour != "" {
			lines = append(lines, fmt.Sprintf("colour = %q", colour))
		}
		out.WriteString(laid(lines...))
	}
	return out.String()
}

// A planned layer has as many coats as lie on each of its zones; what is said of it counts these. The hull has one extra coat and three working coats planned.
func TestCoatsAreCountedWhereTheyLieEverywhere(t *testing.T) {
	j := plannedJob(t, sheet)
	for _, c := range []struct {
		coats []string
		laid  int
		rule  finding.ID
	}{
		{[]string{"hull extra"}, 0, antifoul.RuleLogLayerMissing},
		{[]string{"hull working edges"}, 0, antifoul.RuleLogLayerMissing},
		{[]string{"hull working flat", "hull working waterline"}, 0, antifoul.RuleLogLayerMissing},
		{[]string{"hull working flat", "hull working waterline", "hull working edges", "hull working edges"}, 1, antifoul.RuleLogLayerMissing},
		{[]string{"hull working", "hull working"}, 2, antifoul.RuleLogLayerMissing},
		{[]string{"hull working", "hull working", "hull working"}, 3, antifoul.RuleLogLayerDone},
		{[]string{"hull working", "hull working", "hull working", "hull working flat"}, 3, antifoul.RuleLogLayerDone},
		{[]string{"hull working", "hull working", "hull working", "hull working"}, 4, antifoul.RuleLogLayerMore},
	} {
		layers := logged(t, j, coatsOf(c.coats...), "").Layers
		i := slices.IndexFunc(layers, func(x antifoul.LoggedLayer) bool { return x.Part == "hull" && x.Layer == "working" })
		x := layers[i]
		n := slices.IndexFunc(x.Findings, func(f finding.Finding) bool { return f.Rule == c.rule })
		if x.Laid != c.laid || x.Planned != 3 || n < 0 {
			t.Errorf("%v: %d of %d, %s", c.coats, x.Laid, x.Planned, rulesOf(x.Findings))
			continue
		}
		f := x.Findings[n]
		if said := factOf(f, "laid"); factOf(f, "planned") != any(3) || c.rule != antifoul.RuleLogLayerDone && said != any(c.laid) || c.rule == antifoul.RuleLogLayerMissing && factOf(f, "missing") != any(3-c.laid) {
			t.Errorf("%v: %v", c.coats, f.Facts)
		}
	}
}

// A layer whose colour nobody noted has the planned one, and no difference is told; another colour is told by its name, and so is the planned one. The rudder is black over mid-green.
func TestColourOfALayer(t *testing.T) {
	j := plannedJob(t, sheet)
	for noted, c := range map[string]struct {
		colour       string
		noted, other bool
	}{"": {"black", false, false}, "black": {"black", true, false}, "red-oxide": {"red-oxide", true, true}} {
		layers := logged(t, j, coatsOf("rudder working="+noted), "").Layers
		x := layers[slices.IndexFunc(layers, func(x antifoul.LoggedLayer) bool { return x.Part == "rudder" && x.Layer == "working" })]
		if x.Colour != c.colour || x.Noted != c.noted || x.Findings.Has(antifoul.RuleLogColour) != c.other {
			t.Errorf("noted %q: %s, noted %v, %s", noted, x.Colour, x.Noted, rulesOf(x.Findings))
		}
		for _, f := range x.Findings {
			if f.Rule == antifoul.RuleLogColour && (factOf(f, "colour") != any("red oxide") || factOf(f, "planned") != any("black")) {
				t.Errorf("%v", f.Facts)
			}
		}
	}
}

// What is due next is the lowest planned layer that lacks a coat, by the coats of that part, layer and coating alone. Planned are one extra and three working coats on
// the hull, one signal and four working coats on the rudder.
func TestNumberOfTheNextCoat(t *testing.T) {
	j := plannedJob(t, sheet)
	for _, c := range []struct {
		part  string
		coats []string
		want  string
	}{
		{"rudder", []string{"rudder signal"}, "working 1"},
		{"rudder", []string{"rudder signal", "rudder working"}, "working 2"},
		{"rudder", []string{"rudder working", "rudder working"}, "signal 1"},
		{"rudder", []string{"rudder signal", "rudder working=black", "rudder working=black", "rudder working=red-oxide"}, "working 3"},
		{"hull", []string{"hull extra", "hull working", "rudder working", "rudder working"}, "working 2"},
		{"hull", []string{"hull working", "rudder signal"}, "extra 1"},
		{"hull", []string{"hull extra", "rudder signal"}, "working 1"},
	} {
		l := logged(t, j, coatsOf(c.coats...), "")
		i := slices.IndexFunc(l.Due, func(f finding.Finding) bool { return f.Against == c.part })
		if got := fmt.Sprint(factOf(l.Due[i], "layer"), " ", factOf(l.Due[i], "coat")); got != c.want {
			t.Errorf("after %v: %s of the %s, want %s", c.coats, got, c.part, c.want)
		}
		if said := j.Book.Say(l.Due[i], quantity.Metric); strings.Contains(said, "(not stated)") {
			t.Error(said)
		}
	}
}
