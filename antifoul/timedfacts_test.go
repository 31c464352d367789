package antifoul_test

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"boatyard.example/bottomwork/antifoul"
	"boatyard.example/bottomwork/tables/finding"
)

// patch is one section: so many minutes on a tenth of a square metre.
func patch(part, work string, minutes float64, goes string) string {
	out := fmt.Sprintf("[[timed]]\npart = %q\nwork = %q\narea = \"0.1 m2\"\ntook = \"%g min\"\n", part, work, minutes)
	if goes != "" {
		out += fmt.Sprintf("goes = %q\n", goes)
	}
	return out
}

// Six minutes on a tenth of a square metre are 1 h/m2. Each part and each work is told by its own patches, in the order of their first sections. The
// strip of the hull: easy 0.5 and 1 h/m2, hard 0.25, so typical ((0.5 + 1)/2 + 0.25)/2 = 0.5, from 0.25 to 1. The rudder was timed on one sort, 0.4 h/m2, so it has the
// spread of the tables, 0.5, 0.8 and 1.43 h/m2: low 0.4 × 0.5/0.8 = 0.25, high 0.4 × 1.43/0.8 = 0.715.
func TestEachPartByItsOwnPatches(t *testing.T) {
	sections := patch("hull", "strip", 3, "easy") + patch("rudder", "strip", 2.4, "") + patch("hull", "strip", 6, "easy") + patch("hull", "abrade", 12, "hard") + patch("hull", "strip", 1.5, "hard")
	j := costed(t, wages, "[paint]", sections+"[paint]")
	var got []string
	for _, x := range j.Timed {
		got = append(got, fmt.Sprintf("%s %s %d: %.3f %.3f %.3f", x.Part, x.Work, x.Patches, x.Rate.Low, x.Rate.Typical, x.Rate.High))
	}
	if len(got) != 3 || got[0] != "hull strip 3: 0.250 0.500 1.000" || got[1] != "rudder strip 1: 0.250 0.400 0.715" || !strings.HasPrefix(got[2], "hull abrade 1: ") {
		t.Errorf("%q", got)
	}
	// On the 1.2 m2 of the rudder: 0.3 h, 0.48 h and 0.858 h, told by whole hours, down, to the nearest and up.
	f := j.Timed[1].Findings[0]
	if f.Rule != antifoul.RuleTimedHours || fmt.Sprint(factOf(f, "patches"), factOf(f, "low"), factOf(f, "typical"), factOf(f, "high")) != "1 0 0 1" {
		t.Errorf("%+v", f)
	}
}

// A patch of what is never painted has no area to be reckoned for.
func TestPatchOfAnAnode(t *testing.T) {
	anode := "[[part]]\nname = \"anode\"\nzone = \"fitting\"\nmaterial = \"zinc-anode\"\n"
	j := costed(t, wages, "[use]", anode+patch("anode", "strip", 6, "")+patch("rudder", "strip", 6, "")+"[use]")
	if len(j.Timed) != 1 || j.Timed[0].Part != "rudder" {
		t.Errorf("%+v", j.Timed)
	}
}

// Far off is more than half as much again above, or below, the ends of the tables: of 0.75 to 1 h/m2 neither 1.5 nor 0.5 is, which are their ends by 1.5.
func TestJustNotFarOff(t *testing.T) {
	own := "[[step]]\nkey = \"strip\"\nbasis = \"own table\"\nsource = \"a test\"\nhours_m2 = [0.75, 0.9, 1]\n"
	for minutes, far := range map[float64]bool{9: false, 9.1: true, 3: false, 2.9: true, 6: false} {
		x := costed(t, wages+own, "[paint]", patch("rudder", "strip", minutes, "")+"[paint]").Timed[0]
		if has(x.Findings, antifoul.RuleTimedFar) != far {
			t.Errorf("%g minutes, %v h/m2: far off %t", minutes, x.Rate.Typical, !far)
		}
	}
}

// Blasting of a rudder of 1.234 m2, 1.23 to the nearest, at 48.55 a square metre is 59.7165, so 59.72; scraping at 1 h/m2 takes 1.23 h, so that it pays from
// 59.72/1.23 = 48.553 an hour on. It needs a price of blasting itself, and scraping that was timed; only metal surely takes it.
func TestWhatBlastingIsWorth(t *testing.T) {
	const blast = "[[price]]\nkey = \"blast\"\nof = \"work\"\nwhat = \"blast\"\nby = \"yard\"\nper = \"m2\"\nprice = \"48.55 EUR\"\nbasis = \"invented\"\n"
	for name, c := range map[string]struct{ price, work, material, want string }{
		"glass fibre": {blast, "strip", "grp", "59.72 EUR, 1.23, 48.55 EUR, ask the yard whether the surface takes it, and by which medium"},
		"steel":       {blast, "strip", "steel", "59.72 EUR, 1.23, 48.55 EUR, the material takes it"},
		"no price":    {"", "strip", "grp", ""},
		"abrading":    {blast, "abrade", "grp", ""},
	} {
		j := costed(t, wages+c.price, `area = "1.2 m2"`, `area = "1.234 m2"`, "zone = \"rudder\"\nmaterial = \"grp\"", "zone = \"rudder\"\nmaterial = \""+c.material+"\"", "[paint]", patch("rudder", c.work, 6, "")+"[paint]")
		var got string
		for _, f := range j.Timed[0].Findings {
			if f.Rule == antifoul.RuleTimedBlast {
				got = fmt.Sprintf("%v, %v, %v, %v", factOf(f, "money"), factOf(f, "hours"), factOf(f, "worth"), factOf(f, "takes"))
			}
		}
		if got != c.want {
			t.Errorf("%s: %q, want %q", name, got, c.want)
		}
	}
	// Typical is what is reckoned with.
	if x := costed(t, wages, "[paint]", patch("rudder", "strip", 6, "")+"[paint]").Timed[0]; math.Abs(x.Hours.Typical-1.2) > 1e-9 || x.Work != finding.Strip {
		t.Errorf("%+v", x)
	}
}
