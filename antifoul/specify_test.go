package antifoul_test

import (
	"errors"
	"fmt"
	"math"
	"strings"
	"testing"

	"boatyard.example/bottomwork/antifoul"
	"boatyard.example/bottomwork/coverage"
	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
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

// The layers of the hull and what is said of them: the colour under the working coats, where it comes from, and what it tells. The boat lies on an old film in red oxide or on bare glass fibre.
func TestWhatIsSaidOfTheLayers(t *testing.T) {
	const red = "coating = \"ablative-cuprous-multi\"\ncolour = \"red-oxide\""
	const hull = "name = \"hull\"\nzone = \"hull\"\nmaterial = \"grp\"\n[[part.found]]\n"
	steps := func(x, y string) string { // the step between two colours, as a number that is read back to the last bit
		a, errA := tables.Default().Colour(x)
		b, errB := tables.Default().Colour(y)
		if errA != nil || errB != nil {
			t.Fatal(errA, errB)
		}
		return fmt.Sprint(math.Abs(a.Lightness - b.Lightness))
	}
	more := func(step string) string { // a little more
		var f float64
		if _, err := fmt.Sscan(step, &f); err != nil {
			t.Fatal(err)
		}
		return fmt.Sprint(f + 0.001)
	}
	step := steps("black", "red-oxide")
	for name, c := range map[string]struct{ own, found, wishes, layers, says string }{
		"over its own kind":       {"", red, "", "extra black, working black", "colour-taken old-is-signal signal-weak extra coats"},
		"over bare glass fibre":   {"", `coating = "bare"`, "", "signal mid-green, extra black, working black", "colour-taken signal-under extra coats"},
		"a hard film":             {"", `coating = "bare"`, `coating = "hard-cuprous"`, "signal mid-green, extra black, working black", "colour-taken signal-under signal-hard extra coats"},
		"a film that stays clean": {"", `coating = "bare"`, `coating = "foul-release-silicone"`, "undercoat , undercoat , working black", "colour-taken no-signal coats"},
		"a wished top":            {"", `coating = "bare"`, `top_colour = "mid-green"`, "signal black, extra mid-green, working mid-green", "signal-under extra coats"},
		"a wished signal":         {"", `coating = "bare"`, `signal_colour = "red-oxide"`, "signal red-oxide, extra black, working black", "colour-taken signal-under signal-weak extra coats"},
		"a signal not to be had":  {"", `coating = "bare"`, `signal_colour = "white"`, "signal mid-green, extra black, working black", "colour-not-had colour-taken signal-under extra coats"},
		"a signal that nothing stands out from": {
			number("lightness-step", more(step)), `coating = "bare"`, `signal_colour = "red-oxide"`, "signal mid-green, extra black, working black", "signal-too-near colour-taken signal-under extra coats",
		},
		"a signal not to be had over her own kind": {"", red, `signal_colour = "white"`, "extra black, working black", "colour-not-had colour-taken old-is-signal signal-weak extra coats"},
		"no signal is used, so none is missed": {
			"", `coating = "bare"`, "signal_colour = \"yellow\"\ncoating = \"foul-release-silicone\"", "undercoat , undercoat , working black", "colour-taken no-signal coats",
		},
		"a bright signal of another type": {
			"", `coating = "bare"`, "signal_colour = \"white\"\nsignal_type = \"ablative-thiocyanate\"", "signal white, extra black, working black", "colour-taken signal-under two-types extra coats",
		},
		"a top not to be had": {
			"", `coating = "bare"`, "top_colour = \"white\"\ncoating = \"ablative-cuprous-multi\"", "signal mid-green, extra black, working black", "colour-not-had signal-under extra coats",
		},
		"the old step just told": {number("lightness-step", step), red, `top_colour = "black"`, "extra black, working black", "old-is-signal signal-weak extra coats"},
		"the old step too small": {number("lightness-step", more(step)), red, `top_colour = "black"`, "signal mid-green, extra black, working black", "signal-under extra coats"},
		"just seen from afar":    {number("lightness-step-clear", step), red, `top_colour = "black"`, "extra black, working black", "old-is-signal extra coats"},
		"not seen from afar":     {number("lightness-step-clear", more(step)), red, `top_colour = "black"`, "extra black, working black", "old-is-signal signal-weak extra coats"},
		"no step to be had":      {number("lightness-step", "99") + number("lightness-step-clear", "100"), `coating = "bare"`, "", "extra black, working black", "colour-taken no-step extra coats"},
		// Of two types: a colour that both may have stays as wished; another is chosen where the one below cannot have it, or where the old film would do.
		"two types": {
			"", `coating = "bare"`, "coating = \"ablative-thiocyanate\"\ntop_colour = \"black\"\nsignal_colour = \"red-oxide\"\nsignal_type = \"hard-cuprous\"", "signal red-oxide, extra black, working black",
			"signal-under two-types signal-weak extra coats",
		},
		"two types, one colour not to be had": {
			"", `coating = "bare"`, "coating = \"ablative-thiocyanate\"\ntop_colour = \"black\"\nsignal_colour = \"white\"\nsignal_type = \"hard-cuprous\"", "signal mid-green, extra black, working black",
			"colour-not-had signal-under two-types extra coats",
		},
		"two types over their kind": {
			"", red, "coating = \"ablative-thiocyanate\"\ntop_colour = \"black\"\nsignal_type = \"ablative-cuprous-multi\"", "signal mid-green, extra black, working black", "signal-under two-types extra coats",
		},
	} {
		wishes := c.wishes
		if !strings.Contains(wishes, "\ncoating") && !strings.HasPrefix(wishes, "coating") {
			wishes = "coating = \"ablative-cuprous-multi\"\n" + wishes
		}
		j := billed(t, c.own, strings.NewReplacer(hull+red, hull+c.found, "[paint]", "[wishes]\n"+wishes+"\n[paint]").Replace(base))
		s, _ := j.Scheme("hull")
		var layers, says []string
		for _, k := range s.Coats {
			layers = append(layers, string(k.Layer.For)+" "+k.Layer.Colour)
		}
		for _, f := range s.Findings {
			if rule, ok := strings.CutPrefix(string(f.Rule), "scheme-"); ok {
				says = append(says, rule)
			}
		}
		if got := strings.Join(layers, ", "); got != c.layers {
			t.Errorf("%s: %s, want %s", name, got, c.layers)
		}
		if got := strings.Join(says, " "); got != c.says {
			t.Errorf("%s: says %s, want %s", name, got, c.says)
		}
	}
}

// The coats are told with the months wished and those afloat.
func TestCoatsAreTold(t *testing.T) {
	s, _ := planned(t, base).Scheme("hull")
	for _, f := range s.Findings {
		if f.Rule == antifoul.RuleCoats {
			if got := fmt.Sprint(factOf(f, "coats"), ", ", factOf(f, "wished"), ", ", factOf(f, "afloat")); got != "3, 24 months, 16 months" {
				t.Error(got)
			}
			return
		}
	}
	t.Error("nothing is said of the coats")
}

// The last coat dries before a launch that is known, and may wait for one that is far off.
func TestLastCoatDriesBeforeTheLaunch(t *testing.T) {
	for name, c := range map[string]struct {
		launch string
		early  bool
	}{"today": {"launch = 2027-04-03", true}, "tomorrow": {"launch = 2027-04-04", false}, "a year on": {"launch = 2028-03-20", false}, "nobody knows": {"", false}, "it may slip": {"launch = 2027-04-03\nlaunch_open = true", false}} {
		text := strings.NewReplacer("launch = 2027-05-20", c.launch, "[paint]", "[wishes]\ncoating = \"hard-cuprous\"\n[paint]").Replace(base)
		s, _ := planned(t, text).Scheme("hull")
		if s.Coating.AirNew.Cmp(quantity.Day.N(300)) > 0 || s.Coating.LaunchMin.Cmp(quantity.Day.N(1)) > 0 {
			t.Fatal("the film may stand dry for long: the test asks too little")
		}
		if s.Findings.Has("stack-launch-early") != c.early || s.Findings.Has("stack-air-new") {
			t.Errorf("%s: %s", name, rulesOf(s.Findings))
		}
	}
}
