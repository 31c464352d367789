package antifoul_test

import (
	"fmt"
	"strings"
	"testing"

	"boatyard.example/bottomwork/antifoul"
	"boatyard.example/bottomwork/compat"
)

// An old film is the signal itself where it is a sound antifouling of the same mechanism, of a known colour, and stays; else a signal coat is laid.
func TestWhenTheOldFilmIsTheSignal(t *testing.T) {
	for name, c := range map[string]struct {
		found, wish string
		own         bool
	}{
		"the same mechanism":   {"coating = \"ablative-cuprous-multi\"\ncolour = \"red-oxide\"\nstate = \"sound\"", "", true},
		"another, like it":     {"coating = \"ablative-thiocyanate\"\ncolour = \"red-oxide\"\nstate = \"sound\"", "", true},
		"no colour":            {"coating = \"ablative-cuprous-multi\"\nstate = \"sound\"", "", false},
		"worn":                 {"coating = \"ablative-cuprous-multi\"\ncolour = \"red-oxide\"\nstate = \"worn\"", "", false},
		"another mechanism":    {"coating = \"hard-cuprous\"\ncolour = \"red-oxide\"\nstate = \"sound\"", "", false},
		"the colour on top":    {"coating = \"ablative-cuprous-multi\"\ncolour = \"black\"\nstate = \"sound\"", "", false},
		"an epoxy":             {"coating = \"epoxy-barrier\"\ncolour = \"white\"\nstate = \"sound\"", "", false},
		"another signal asked": {"coating = \"ablative-cuprous-multi\"\ncolour = \"red-oxide\"\nstate = \"sound\"", "signal_colour = \"mid-green\"\n", false},
	} {
		boat := strings.Replace(sheet, "coating = \"ablative-cuprous-multi\"\ncolour = \"red-oxide\"\nfilm = \"100 um\"\nstate = \"sound\"", c.found, 1) + c.wish
		s, ok := plannedJob(t, boat).Scheme("hull")
		if !ok {
			t.Fatal("no scheme")
		}
		laid := false
		for _, k := range s.Coats {
			laid = laid || k.Layer.For == compat.Signal
		}
		if laid == c.own {
			t.Errorf("%s: a signal coat is laid: %v, %v", name, laid, s.Stack)
		}
	}
}

// The nearer she comes to a film's fastest speed the less it is worth: whole to four fifths of it, a half at it, nothing above, where it is barred. The ablative stands 22 kn.
func TestWorthOfASpeed(t *testing.T) {
	for speed, want := range map[string]struct {
		value float64
		bars  bool
	}{"17.6 kn": {1, false}, "18.7 kn": {0.875, false}, "19.8 kn": {0.75, false}, "22 kn": {0.5, false}, "22.1 kn": {0, true}, "4 kn": {1, false}} {
		v, bars, _ := worth(t, habit(t, "speed = \"6 kn\"", "speed = \""+speed+"\""), "ablative-cuprous-multi", "speed")
		if v < want.value-1e-9 || v > want.value+1e-9 || bars != want.bars {
			t.Errorf("%s: %v, bars %v", speed, v, bars)
		}
	}
}

// A colour that nobody wished is told with its part; one that was wished is not, be it to be had or not. Cuprous oxide is not to be had in bright colours.
func TestColourThatNobodyWished(t *testing.T) {
	for name, c := range map[string]struct{ part, wish, taken string }{
		"wished":                 {"rudder", "top_colour = \"black\"\n", ""},
		"no wish":                {"rudder", "", "black"},
		"a wish for the signal":  {"rudder", "signal_colour = \"mid-green\"\n", "black"},
		"wished over her film":   {"hull", "top_colour = \"black\"\n", ""},
		"no wish over her film":  {"hull", "", "black"},
		"too bright over a film": {"hull", "top_colour = \"yellow\"\n", ""},
	} {
		s, ok := plannedJob(t, strings.Replace(sheet, "top_colour = \"black\"\n", c.wish, 1)).Scheme(c.part)
		if !ok {
			t.Fatal("no scheme")
		}
		var got []string
		for _, f := range s.Findings {
			if f.Rule == antifoul.RuleColourTaken {
				got = append(got, fmt.Sprint(factOf(f, "colour")))
			}
		}
		if strings.Join(got, ", ") != c.taken {
			t.Errorf("%s: %q is taken, want %q", name, got, c.taken)
		}
	}
}

// The colour wished for the signal stays where the signal coat is of another type, which might be had in a lighter one.
func TestWishedColourOfAnotherType(t *testing.T) {
	j := plannedJob(t, sheet+"signal_type = \"ablative-copper-free\"\nsignal_colour = \"red-oxide\"\n")
	if l := signalOf(t, j, "rudder"); l.Coating.Key != "ablative-copper-free" || l.Colour != "red-oxide" {
		t.Errorf("%s in %s", l.Coating.Key, l.Colour)
	}
}
