package antifoul_test

import (
	"errors"
	"slices"
	"testing"

	"boatyard.example/bottomwork/antifoul"
	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/finding"
)

const barrierJob = `
[[part]]
name = "seal"
zone = "fitting"
material = "rubber-seal"
[use]
water = "salt"
growth = "medium"
haul_out_every = "12 months"
[wishes]
coating = "hard-cuprous"
[work]
hands = 20
launch = `

// Steel blasted bare gets epoxy, which cures for days: the hard film over it dries in hours, and the launch waits for the epoxy.
func TestLaunchWaitsForTheEpoxy(t *testing.T) {
	for launch, soon := range map[string]bool{"2027-04-14": true, "2027-05-10": false} {
		j := planned(t, boatText(workingHull, "steel", film("bare", ""), barrierJob+launch))
		if got := j.Findings.Has(antifoul.RuleLaunchTooSoon); got != soon {
			t.Errorf("launch on %s: too soon %v, want %v", launch, got, soon)
		}
	}
}

// A seal is never painted, and it is no anode.
func TestOnlyAnodesTakeAMetalsOwnActionAway(t *testing.T) {
	for material, want := range map[string]bool{"rubber-seal": false, "reference-cell": false, "zinc-anode": true, "impressed-current-anode": true} {
		j := planned(t, boatText(workingHull, "copper-nickel", film("bare", ""), "[[part]]\nname = \"other\"\nzone = \"fitting\"\nmaterial = \""+material+"\""))
		if got := j.Findings.Has(antifoul.RuleMetalsKeepClean); got != want {
			t.Errorf("%s on copper-nickel: anodes said %v, want %v", material, got, want)
		}
	}
}

// Twin rudders can't both have the area that was measured for the rudder.
func TestTwoPartsOfOneMeasuredZoneWantTheirOwnAreas(t *testing.T) {
	rudder := func(name, area string) string {
		return "[[part]]\nname = \"" + name + "\"\nzone = \"rudder\"\nmaterial = \"grp\"\n" + area + film("bare", "")
	}
	hull := cruiserHull + "\n[hull.measured]\nrudder = \"0.8 m2\""
	fs := readWrong(t, boatText(hull, "grp", film("bare", ""), rudder("port rudder", "")+rudder("starboard rudder", "")))
	for _, key := range []string{"part[port rudder].area", "part[starboard rudder].area"} {
		if !slices.ContainsFunc(fs, func(f finding.Fault) bool { return f.Key == key && errors.Is(f, finding.ErrMissing) }) {
			t.Errorf("no fault at %s in %v", key, fs)
		}
	}
	planned(t, boatText(hull, "grp", film("bare", ""), rudder("port rudder", "area = \"0.4 m2\"\n")+rudder("starboard rudder", "area = \"0.4 m2\"\n")))
}

// A sound old barrier under the coats is as bare of antifouling as a new one.
func TestAnOldBarrierThatShowsIsBare(t *testing.T) {
	j := planned(t, boatText(cruiserHull, "grp", film("epoxy-barrier", `film = "300 um"`), "[use]\nwater = \"salt\"\ngrowth = \"medium\"\nhaul_out_every = \"12 months\"\n[wishes]\ncoating = \"ablative-cuprous-multi\""))
	s, _ := j.Scheme("hull")
	if len(s.Key) == 0 || s.Key[0].Layer.Coating.Role != tables.Barrier || s.Key[0].Shows.Rule != antifoul.RuleShowsBase {
		t.Errorf("%+v", s.Key)
	}
}
