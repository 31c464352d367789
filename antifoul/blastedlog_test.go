package antifoul_test

import (
	"strings"
	"testing"

	"boatyard.example/bottomwork/antifoul"
)

// What the profile of blasted metal swallows makes no film: of the first coat on it only, where the log has blasted it before, all of it or the piece that the coat lies on.
func TestTheProfileSwallowsOfTheFirstCoat(t *testing.T) {
	boat := strings.Replace(sheet, "name = \"rudder\"\nzone = \"rudder\"\nmaterial = \"grp\"", "name = \"rudder\"\nzone = \"rudder\"\nmaterial = \"steel\"", 1)
	j := plannedJob(t, strings.Replace(boat, "coating = \"epoxy-barrier\"", "coating = \"bare\"", 1))
	s, _ := j.Scheme("rudder")
	if !s.Coats[0].Fills.Low.Given() {
		t.Fatal("nothing is blasted")
	}
	primer := s.Coats[0].Layer.Coating.Key
	blast := func(part, day string) string {
		return "[[task]]\npart = \"" + part + "\"\ndo = \"blast\"\nbegun = \"2027-04-" + day + " 07:00\"\nended = \"2027-04-" + day + " 08:00\"\ndown_to = \"bare\"\n"
	}
	coat := func(n, day, coating string) string {
		return laid(`layer = "undercoat"`, "coat = "+n, "coating = \""+coating+"\"", "begun = \"2027-04-"+day+" 09:00\"", "ended = \"2027-04-"+day+" 10:00\"", `litres = "0.6 L"`)
	}
	of := func(log string, i int) antifoul.LoggedCoat { return logged(t, j, logHead+log, "").Coats[i] }
	plain := of(coat("1", "10", primer), 0)
	less := of(blast("rudder", "10")+coat("1", "10", primer), 0)
	if less.Film.Low.Cmp(plain.Film.Low) >= 0 || less.Film.Typical.Cmp(plain.Film.Typical) >= 0 || less.Film.High.Cmp(plain.Film.High) >= 0 {
		t.Errorf("over bright metal %s, over none %s", films(less.Film), films(plain.Film))
	}
	for name, k := range map[string]antifoul.LoggedCoat{
		"another part":         of(blast("hull", "10")+coat("1", "10", primer), 0),
		"blasted later":        of(coat("1", "10", primer)+blast("rudder", "11"), 0),
		"the second coat":      of(blast("rudder", "10")+coat("1", "10", primer)+coat("2", "11", primer), 1),
		"another thing before": of(blast("rudder", "10")+coat("1", "10", "epoxy-barrier")+coat("1", "11", primer), 1),
	} {
		if films(k.Film) != films(plain.Film) {
			t.Errorf("%s: %s, without blasting %s", name, films(k.Film), films(plain.Film))
		}
	}
	if first := of(blast("rudder", "10")+coat("1", "10", primer)+coat("2", "11", primer), 0); films(first.Film) != films(less.Film) {
		t.Errorf("with a second coat the first is %s, else %s", films(first.Film), films(less.Film))
	}
}
