package antifoul_test

import (
	"fmt"
	"strings"
	"testing"

	"boatyard.example/bottomwork/antifoul"
	"boatyard.example/bottomwork/tables/quantity"
)

// areasOf are the zones of each part with their areas, in whole hundredths.
func areasOf(j *antifoul.Job) string {
	var out []string
	for _, a := range j.Areas {
		var zones []string
		for _, z := range a.Zones {
			zones = append(zones, fmt.Sprintf("%s %s", z.Zone, z.Area.Typical.To(quantity.SquareMetre, 2, quantity.Nearest).Number()))
		}
		out = append(out, a.Part+": "+strings.Join(zones, ", "))
	}
	return strings.Join(out, "; ")
}

// Areas that were measured are shared out by hand: each zone goes to the part of its name, the hull has the rest; a part's own area stands before what was measured of its zone; what was measured with the hull is not
// taken off it again; anodes have none.
func TestAreasAreSharedOut(t *testing.T) {
	keel := "[[part]]\nname = \"keel\"\nzone = \"keel\"\nmaterial = \"lead\"\n"
	measured := func(areas string) string {
		return strings.Replace(sheet, "flat = \"20 m2\", waterline = \"2 m2\", edges = \"1 m2\"", areas, 1)
	}
	for name, c := range map[string]struct{ boat, want string }{
		"the sheet's boat":        {sheet, "hull: flat 20, waterline 2, edges 1; rudder: rudder 2; anode: "},
		"a keel that was taped":   {strings.Replace(measured("flat = \"20 m2\", keel = \"4 m2\""), "[use]", keel+"[use]", 1), "hull: flat 20; rudder: rudder 2; anode: ; keel: keel 4"},
		"and its sole with it":    {strings.Replace(measured("flat = \"20 m2\", keel = \"4 m2\", sole = \"1 m2\""), "[use]", keel+"[use]", 1), "hull: flat 20; rudder: rudder 2; anode: ; keel: keel 4, sole 1"},
		"and says its own":        {strings.Replace(measured("flat = \"20 m2\", keel = \"4 m2\""), "[use]", keel+"area = \"3 m2\"\n[use]", 1), "hull: flat 20; rudder: rudder 2; anode: ; keel: keel 3"},
		"a rudder that was taped": {strings.Replace(measured("flat = \"20 m2\", rudder = \"1.5 m2\""), "area = \"2 m2\"\n", "", 1), "hull: flat 20; rudder: rudder 1.5; anode: "},
	} {
		if got := areasOf(plannedJob(t, c.boat)); got != c.want {
			t.Errorf("%s: %s, want %s", name, got, c.want)
		}
	}
	// By a formula for the whole hull, rudder and keel with it, the parts that say their area are taken off the flat.
	form := strings.Replace(sheet, "measured = { flat = \"20 m2\", waterline = \"2 m2\", edges = \"1 m2\" }\n", "", 1)
	flat := func(boat string) float64 {
		for _, z := range plannedJob(t, boat).Areas[0].Zones {
			if z.Zone == "flat" {
				return z.Area.Typical.Float(quantity.SquareMetre)
			}
		}
		t.Fatal("no flat")
		return 0
	}
	two, three := flat(form), flat(strings.Replace(form, "area = \"2 m2\"", "area = \"3 m2\"", 1))
	with := flat(strings.Replace(form, "[use]", keel+"area = \"4 m2\"\n[use]", 1))
	if d := two - three; d < 0.99 || d > 1.01 {
		t.Errorf("a rudder of one square metre more leaves %.3f less of the flat", d)
	}
	legged := flat(strings.Replace(form, "[use]", "[[part]]\nname = \"leg\"\nzone = \"leg\"\nmaterial = \"aluminium\"\narea = \"1 m2\"\n[use]", 1))
	if d := two - legged; d != 0 { // no formula counts a leg in
		t.Errorf("a leg leaves %.3f less of the flat", d)
	}
	if d := two - with; d < 3.99 || d > 4.01 {
		t.Errorf("a keel of four square metres leaves %.3f less of the flat", d)
	}
	if _, err := plan(t, strings.Replace(form, "area = \"2 m2\"", "area = \"60 m2\"", 1)); err == nil || !strings.Contains(err.Error(), "parts that leave some of the hull's area") {
		t.Errorf("a rudder larger than the hull: %v", err)
	}
}

// A part whose area nobody says is asked for it, by all the ways in which it may be said; two parts of one zone each for their own.
func TestAreasThatAreMissing(t *testing.T) {
	part := func(name, zone, material, area string) string {
		return "[[part]]\nname = \"" + name + "\"\nzone = \"" + zone + "\"\nmaterial = \"" + material + "\"\n" + area
	}
	piece := func(what string) string {
		return "[[hull.piece]]\nwhat = \"" + what + "\"\nlength = \"1 m\"\nheight = \"1 m\"\n"
	}
	keels := strings.Replace(sheet, "flat = \"20 m2\", waterline", "flat = \"20 m2\", keel = \"4 m2\", waterline", 1)
	for name, c := range map[string]struct{ boat, want string }{
		"a keel":                 {strings.Replace(sheet, "[use]", part("keel", "keel", "lead", "")+"[use]", 1), "or hull.measured.keel, or its pieces in hull.piece"},
		"a propeller":            {strings.Replace(sheet, "[use]", part("screw", "propeller", "bronze", "")+"[use]", 1), "\"0.7 m2\", or its pieces in hull.piece"},
		"an anode":               {sheet, ""},
		"a rudder by its piece":  {strings.NewReplacer("area = \"2 m2\"\n", "", "[[part]]\nname = \"hull\"", piece("rudder")+"[[part]]\nname = \"hull\"").Replace(sheet), ""},
		"a rudder and a bulb":    {strings.NewReplacer("area = \"2 m2\"\n", "", "[[part]]\nname = \"hull\"", piece("bulb")+"[[part]]\nname = \"hull\"").Replace(strings.Replace(sheet, "[use]", part("keel", "keel", "lead", "area = \"3 m2\"\n")+"[use]", 1)), "or hull.measured.rudder, or its pieces in hull.piece"},
		"a keel that was taped":  {strings.Replace(keels, "[use]", part("keel", "keel", "lead", "")+"[use]", 1), ""},
		"two keels":              {strings.Replace(keels, "[use]", part("keel", "keel", "lead", "")+part("bulb", "keel", "lead", "area = \"1 m2\"\n")+"[use]", 1), "its own painted area, since more than one part is of the zone keel"},
		"a keel, and its anode":  {strings.Replace(keels, "[use]", part("keel", "keel", "lead", "")+part("zinc", "keel", "zinc-anode", "")+"[use]", 1), ""},
		"two keels of their own": {strings.Replace(keels, "[use]", part("keel", "keel", "lead", "area = \"3 m2\"\n")+part("bulb", "keel", "lead", "area = \"1 m2\"\n")+"[use]", 1), ""},
	} {
		_, err := plan(t, c.boat)
		if (err == nil) != (c.want == "") || err != nil && !strings.Contains(err.Error(), c.want) {
			t.Errorf("%s: %v", name, err)
		}
	}
}
