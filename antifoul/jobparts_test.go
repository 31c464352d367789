package antifoul_test

import (
	"errors"
	"fmt"
	"strings"
	"testing"

	"boatyard.example/bottomwork/antifoul"
	"boatyard.example/bottomwork/compat"
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

// Work that two parts want alike is one task, with both areas: washing, abrading, the signal coat and the working coats; the hull's extra coat and the keel's primer stand alone.
func TestSameWorkIsOneTask(t *testing.T) {
	j := plannedJob(t, measuredBoat("material = \"grp\"\nlaminate = \"dry\"", "lead", "launch_open = true"))
	var got []string
	for _, task := range j.Order {
		name := string(task.Do)
		if says := task.Says != "" || task.Hold != ""; task.Coat != nil && says != (task.Coat.Layer.For == compat.Undercoat) {
			t.Errorf("%s: says %q", task.Coat.Layer.For, task.Says)
		}
		if task.Coat != nil {
			name = fmt.Sprintf("%s %d", task.Coat.Layer.For, task.Coat.Layer.Coats)
		}
		area := "-"
		if task.Area.Typical.Given() {
			area = task.Area.Typical.To(quantity.SquareMetre, 0, quantity.Nearest).String()
		}
		got = append(got, fmt.Sprintf("%s (%s) %s", name, strings.Join(task.Parts, ", "), area))
	}
	want := []string{
		"wash (hull, keel) 26 m2", "degrease (hull, keel) 26 m2", "abrade (hull, keel) 26 m2", "mask () -", "undercoat 1 (keel) 3 m2", "signal 1 (hull, keel) 26 m2", "extra 1 (hull) 3 m2", "working 4 (hull, keel) 26 m2", "shift stands () -",
	}
	if strings.Join(got, "\n") != strings.Join(want, "\n") {
		t.Errorf("got\n%s\nwant\n%s", strings.Join(got, "\n"), strings.Join(want, "\n"))
	}
	// Parts of other colours or other numbers of coats do not share a task.
	for _, task := range plannedJob(t, sheet).Order {
		if task.Coat != nil && len(task.Parts) != 1 {
			t.Errorf("%s on %v", task.Coat.Layer.For, task.Parts)
		}
	}
}

// The launch may not be sooner than the windows let, by hand: on the rudder a signal coat and four working ones, 4 h from each to the next, and 12 h from the last to the water are 28 h, two days begun. At 24 h from
// coat to coat they are four days and a half.
func TestLaunchNoSoonerThanTheWindows(t *testing.T) {
	day := "[[coating]]\nkey = \"ablative-cuprous-multi\"\nbasis = \"own table\"\nsource = \"the tin\"\novercoat_min = \"24 h\"\n"
	for _, c := range []struct {
		own, launch string
		least       any
		left        string
	}{{"", "2027-04-04", 2, "1 day"}, {"", "2027-04-05", nil, ""}, {day, "2027-04-07", 5, "4 days"}, {day, "2027-04-08", nil, ""}, {day, "2027-04-03", 5, "0 days"}} {
		j := billed(t, c.own, sheet+"[work]\nlaunch = "+c.launch+"\n")
		var f finding.Finding
		for _, x := range j.Findings {
			if x.Rule == antifoul.RuleLaunchTooSoon {
				f = x
			}
		}
		if factOf(f, "least") != c.least || c.least != nil && factOf(f, "left") != c.left {
			t.Errorf("launched on %s: %v", c.launch, f)
		}
	}
	// Many hands make the hours few, not the windows; few make the hours the longer: 60 h of a hull of 200 m2 are more days than the coats have.
	big := strings.Replace(sheet, "flat = \"20 m2\"", "flat = \"200 m2\"", 1)
	one := plannedJob(t, big+"[work]\nlaunch = 2027-04-05\n")
	if !one.Findings.Has(antifoul.RuleLaunchTooSoon) {
		t.Error("one hand paints 200 m2 in two days")
	}
	if plannedJob(t, big+"[work]\nhands = 8\nlaunch = 2027-04-05\n").Findings.Has(antifoul.RuleLaunchTooSoon) {
		t.Error("eight hands do not")
	}
}

// What the colours tell, layer by layer: epoxy is bare of antifouling, the signal warns, what lies between it and the epoxy is an older film.
func TestWhatTheColoursTell(t *testing.T) {
	shows := func(j *antifoul.Job, part string) string {
		s, _ := j.Scheme(part)
		var out []string
		for _, k := range s.Key {
			out = append(out, fmt.Sprintf("%s %s", k.Layer.Coating.Key, k.Shows.Rule))
		}
		return strings.Join(out, ", ")
	}
	const ours = "ablative-cuprous-multi "
	hard := strings.Replace(sheet, "[wishes]\ncoating = \"ablative-cuprous-multi\"", "[wishes]\ncoating = \"hard-cuprous\"", 1)
	old := strings.Replace(sheet, "coating = \"epoxy-barrier\"\nstate = \"sound\"", "coating = \"epoxy-barrier\"\nstate = \"sound\"\n[[part.found]]\ncoating = \"ablative-cuprous-multi\"\ncolour = \"black\"\nstate = \"sound\"", 1)
	for name, c := range map[string]struct {
		j    *antifoul.Job
		part string
		want string
	}{
		"the old film is the signal": {plannedJob(t, sheet), "hull", ours + "shows-signal, " + ours + "shows-working"},
		"over epoxy":                 {plannedJob(t, sheet), "rudder", "epoxy-barrier shows-base, " + ours + "shows-signal, " + ours + "shows-working"},
		"over an old film":           {plannedJob(t, old), "rudder", "epoxy-barrier shows-base, " + ours + "shows-old, " + ours + "shows-signal, " + ours + "shows-working"},
		"hard":                       {plannedJob(t, hard), "rudder", "epoxy-barrier shows-base, hard-cuprous shows-signal-hard, hard-cuprous shows-working"},
	} {
		if got := shows(c.j, c.part); got != c.want {
			t.Errorf("%s: %s, want %s", name, got, c.want)
		}
	}
}

// Two metals in one water are told, one is not; anodes beside a metal that keeps itself clean by its copper are told too.
func TestMetalsOfABoat(t *testing.T) {
	part := func(name, zone, material string) string {
		return fmt.Sprintf("[[part]]\nname = %q\nzone = %q\nmaterial = %q\narea = \"1 m2\"\n[[part.found]]\ncoating = \"bare\"\nstate = \"sound\"\n", name, zone, material)
	}
	noAnode := strings.Replace(sheet, "[[part]]\nname = \"anode\"\nzone = \"fitting\"\nmaterial = \"zinc-anode\"\n", "", 1)
	for name, c := range map[string]struct {
		boat   string
		metals string
	}{
		"an anode alone":  {sheet, ""},
		"one metal":       {noAnode + part("keel", "keel", "lead"), ""},
		"one metal twice": {noAnode + part("keel", "keel", "lead") + part("bulb", "keel", "lead"), ""},
		"two":             {noAnode + part("keel", "keel", "cast-iron") + part("leg", "leg", "aluminium"), "cast iron and aluminium"},
		"three":           {noAnode + part("keel", "keel", "cast-iron") + part("leg", "leg", "aluminium") + part("shoe", "fitting", "steel"), "cast iron, aluminium and mild steel"},
	} {
		got := ""
		for _, f := range plannedJob(t, c.boat).Findings {
			if f.Rule == antifoul.RuleMetalsTogether {
				got = fmt.Sprint(factOf(f, "metals"))
			}
		}
		if (got != "") != (c.metals != "") || strings.Count(got, ",") != strings.Count(c.metals, ",") || strings.Count(got, " and ") != strings.Count(c.metals, " and ") {
			t.Errorf("%s: %q, want %q", name, got, c.metals)
		}
	}
}

// A wish is above zero and to 240 months; what is said of the winter is assumed only where there is one.
func TestWishedMonthsAndWinters(t *testing.T) {
	for months, good := range map[string]bool{"0 months": false, "1 months": true, "240 months": true, "241 months": false, "-1 months": false} {
		_, err := plan(t, strings.Replace(sheet, "[wishes]", "[wishes]\nrepaint_after = \""+months+"\"", 1))
		if (err == nil) != good || err != nil && !errors.Is(err, finding.ErrImpossible) {
			t.Errorf("%s: %v", months, err)
		}
	}
	assumed := func(boat, key string) bool {
		for _, a := range plannedJob(t, boat).Ranking.Assumed {
			if a.Key == key {
				return true
			}
		}
		return false
	}
	for lines, want := range map[string]bool{
		"": false, "ashore_each_year = \"0 months\"\n": false, "ashore_each_year = \"0.5 months\"\n": true, "ashore_each_year = \"4 months\"\nrelaunched_unpainted = false\n": false,
	} {
		if got := assumed(strings.Replace(sheet, "[use]\n", "[use]\n"+lines, 1), "use.relaunched_unpainted"); got != want {
			t.Errorf("%q: assumed %v", lines, got)
		}
	}
}

// The months that paint is to last: as wished, else from haul-out to haul-out, else twelve.
func TestMonthsOfTheWish(t *testing.T) {
	var x antifoul.Boat
	if x.Months() != 12 {
		t.Errorf("nothing said: %v", x.Months())
	}
	if x.Use.HaulOutEvery = quantity.Month.N(18); x.Months() != 18 {
		t.Errorf("hauled every 18 months: %v", x.Months())
	}
	if x.Wishes.RepaintAfter = quantity.Month.N(30); x.Months() != 30 {
		t.Errorf("30 months wished: %v", x.Months())
	}
}

// A hull of which one strip alone takes an extra coat gets it there, and one of which none does gets none.
func TestExtraCoatOnOneStrip(t *testing.T) {
	for areas, want := range map[string]string{
		"flat = \"20 m2\"": "", "flat = \"20 m2\", edges = \"1 m2\"": "edges", "flat = \"20 m2\", waterline = \"2 m2\"": "waterline", "flat = \"20 m2\", waterline = \"2 m2\", edges = \"1 m2\"": "waterline edges",
	} {
		s, _ := plannedJob(t, strings.Replace(sheet, "flat = \"20 m2\", waterline = \"2 m2\", edges = \"1 m2\"", areas, 1)).Scheme("hull")
		got := ""
		for _, k := range s.Coats {
			if k.Layer.For == compat.Extra {
				got = strings.Join(k.Zones, " ")
			}
		}
		if got != want {
			t.Errorf("%s: an extra coat on %q, want %q", areas, got, want)
		}
	}
}

// One kit in another money than the first, or than the book's prices, is a fault; kits without a price are none.
func TestKitsInOneMoney(t *testing.T) {
	kit := func(prices ...string) string {
		var out strings.Builder
		out.WriteString("[[tin]]\ncoating = \"epoxy-barrier\"\nratio = \"3:1\"\n")
		for i, p := range prices {
			fmt.Fprintf(&out, "[[tin.kit]]\nbase = \"%d L\"\nhardener = \"%d L\"\n", 3*i+3, i+1)
			if p != "" {
				out.WriteString("price = \"" + p + "\"\n")
			}
		}
		return out.String()
	}
	for name, c := range map[string]struct {
		kits string
		key  string
	}{
		"one":           {kit("10.00 DKK"), ""},
		"alike":         {kit("10.00 DKK", "20.00 DKK"), ""},
		"not priced":    {kit("", "20.00 DKK", ""), ""},
		"another money": {kit("", "10.00 DKK", "20.00 EUR"), "tin[1].kit[3].price"},
	} {
		_, err := plan(t, sheet+c.kits)
		if (err == nil) != (c.key == "") || err != nil && !strings.Contains(err.Error(), c.key) {
			t.Errorf("%s: %v", name, err)
		}
	}
}

// A part without a name is called by its place.
func TestNamelessPart(t *testing.T) {
	for name, key := range map[string]string{"hull": "part[1].name", "rudder": "part[2].name"} {
		_, err := plan(t, strings.Replace(sheet, "name = \""+name+"\"\n", "", 1))
		if err == nil || !strings.Contains(err.Error(), key) {
			t.Errorf("no name of the %s: %v", name, err)
		}
	}
}
