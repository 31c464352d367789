package antifoul_test

import (
	"errors"
	"strings"
	"testing"

	"boatyard.example/bottomwork/antifoul"
	"boatyard.example/bottomwork/coverage"
	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/finding"
)

// Specify answers for any type of the ranking what Plan answers for the chosen one.
func TestSpecify(t *testing.T) {
	b := tables.Default()
	j := planned(t, boatText(cruiserHull, "aluminium", film("epoxy-barrier", `film = "350 um"`), "[use]\nwater = \"salt\"\ngrowth = \"medium\"\nhaul_out_every = \"12 months\"\nkept = \"afloat\""))
	want, ok := j.Scheme("hull")
	if !ok {
		t.Fatal("nothing may be used")
	}
	s, err := antifoul.Specify(b, j.Boat, "hull", want.Coating)
	if err != nil {
		t.Fatal(err)
	}
	if s.Refused() || len(s.Coats) != len(want.Coats) || len(s.Coats) == 0 {
		t.Fatalf("%d layers put on, refused %v; Plan has %d", len(s.Coats), s.Refused(), len(want.Coats))
	}
	for i, k := range s.Coats {
		w := want.Coats[i]
		if k.Layer.Coating.Key != w.Layer.Coating.Key || k.Layer.Coats != w.Layer.Coats || !k.Litres.Typical.Equal(w.Litres.Typical) {
			t.Errorf("layer %d: %d coats of %s, %s; Plan has %d of %s, %s", i, k.Layer.Coats, k.Layer.Coating.Key, k.Litres.Typical, w.Layer.Coats, w.Layer.Coating.Key, w.Litres.Typical)
		}
	}

	// Cuprous oxide on aluminium is refused with a reason, and there are no layers.
	s, err = antifoul.Specify(b, j.Boat, "hull", coating(t, b, "hard-cuprous"))
	if err != nil || !s.Refused() || len(s.Coats) > 0 || !s.Findings.Has(antifoul.RuleRefused) || !s.Findings.Has("metal-never") {
		t.Errorf("hard-cuprous on aluminium: %v, refused %v, %d layers, %v", err, s.Refused(), len(s.Coats), s.Findings)
	}

	// An unknown part, a coating that no bottom ends with, and a boat with faults are errors.
	if _, err = antifoul.Specify(b, j.Boat, "hul", want.Coating); !errors.Is(err, finding.ErrUnknown) {
		t.Errorf("unknown part: %v", err)
	}
	if _, err = antifoul.Specify(b, j.Boat, "hull", coating(t, b, "epoxy-primer")); !errors.Is(err, finding.ErrValue) {
		t.Errorf("a primer: %v", err)
	}
	if _, err = antifoul.Specify(b, antifoul.Boat{}, "hull", want.Coating); !errors.Is(err, finding.ErrMissing) {
		t.Errorf("no boat: %v", err)
	}
}

// A laminate that is still wet is said beside the layers, and a dry one is not.
func TestWetLaminateIsSaid(t *testing.T) {
	dry := boatText(cruiserHull, "grp", film("epoxy-barrier", `film = "350 um"`), "[use]\nwater = \"salt\"\ngrowth = \"medium\"\nhaul_out_every = \"12 months\"\nkept = \"afloat\"")
	for text, want := range map[string]bool{dry: false, strings.Replace(dry, `material = "grp"`, "material = \"grp\"\nlaminate = \"wet\"", 1): true} {
		s, ok := planned(t, text).Scheme("hull")
		if !ok || len(s.Coats) == 0 {
			t.Fatal("nothing may be used")
		}
		if s.Findings.Has(antifoul.RuleWet) != want {
			t.Errorf("wet %t: %v", want, s.Findings)
		}
	}
}

// said are the rules of a list that are of the given ones, in their order.
func said(fs finding.List, rules ...finding.ID) string {
	var out []string
	for _, r := range rules {
		if fs.Has(r) {
			out = append(out, string(r))
		}
	}
	return strings.Join(out, " ")
}

// A scheme says how its colours tell and how many coats it has: a step of 25 under black is weak, a hard film hides its signal to the end, silicone has none; the strips of a hull get an extra coat.
func TestWhatASchemeSays(t *testing.T) {
	for _, c := range []struct{ coating, part, want string }{
		{"ablative-cuprous-multi", "hull", "scheme-signal-weak scheme-extra scheme-coats"},
		{"ablative-cuprous-multi", "rudder", "scheme-coats"},
		{"hard-cuprous", "hull", "scheme-signal-hard scheme-extra scheme-coats"},
		{"foul-release-silicone", "hull", "scheme-no-signal scheme-coats"},
		{"foul-release-silicone\"\nsignal_colour = \"red-oxide", "hull", "scheme-no-signal scheme-coats"},
	} {
		s, ok := plannedJob(t, strings.Replace(sheet, "coating = \"ablative-cuprous-multi\"\ntop_colour", "coating = \""+c.coating+"\"\ntop_colour", 1)).Scheme(c.part)
		if got := said(s.Findings, antifoul.RuleNoSignal, antifoul.RuleSignalWeak, antifoul.RuleSignalHard, antifoul.RuleExtra, antifoul.RuleCoats); !ok || got != c.want {
			t.Errorf("%s on the %s says %q, want %q", s.Coating.Key, c.part, got, c.want)
		}
	}
}

// Launched on the day itself a film has not stood long enough; one that must not stand long is painted last, so that a late launch is no fault; of no launch nothing is said.
func TestLaunchAfterTheLastCoat(t *testing.T) {
	for launch, want := range map[string]string{"launch = 2027-04-03": "stack-launch-early", "launch = 2027-09-01": "", "launch_open = true": ""} {
		boat := strings.Replace(sheet, "coating = \"ablative-cuprous-multi\"\ntop_colour", "coating = \"hard-cuprous\"\ntop_colour", 1) + "[work]\n" + launch + "\n"
		s, ok := plannedJob(t, boat).Scheme("hull")
		if got := said(s.Findings, "stack-launch-early", "stack-air-new"); !ok || s.Coating.Key != "hard-cuprous" || got != want {
			t.Errorf("%s, %s: %q, want %q", launch, s.Coating.Key, got, want)
		}
	}
}

// A blasted profile swallows paint of the first coat alone; what was not blasted swallows none.
func TestFirstCoatFillsAProfile(t *testing.T) {
	j := plannedJob(t, measuredBoat("material = \"grp\"\nlaminate = \"dry\"", "cast-iron", "launch_open = true"))
	for _, s := range j.Schemes {
		for i, k := range s.Coats {
			if fills := k.Fills.Typical.Given(); fills != (s.Part == "keel" && i == 0) {
				t.Errorf("%s, coat %d: fills %v", s.Part, i+1, fills)
			} else if fills {
				plain, err := coverage.Paint(j.Book, k.Area, k.Layer.Coating, k.Film.Typical, k.Layer.Coats, coverage.Method{By: "roller"})
				if err != nil || !k.Litres.Typical.Equal(plain.Typical.Add(k.Fills.Typical)) {
					t.Errorf("%s of which the profile takes %s, and %s by the film, %v", k.Litres.Typical, k.Fills.Typical, plain.Typical, err)
				}
			}
		}
	}
}
