package finding_test

import (
	"fmt"
	"strings"
	"testing"

	"boatyard.example/bottomwork/tables/finding"
)

func TestNear(t *testing.T) {
	known := []string{"hard-cuprous", "hard-thiocyanate", "hard-metallic", "hard-racing", "silicone", "none", ""}
	for _, c := range []struct {
		name string
		want []string
	}{
		{"silicon", []string{"silicone"}},                                  // one letter short
		{"Silicone", []string{"silicone"}},                                 // capital letters don't matter
		{" silicone ", []string{"silicone"}},                               // nor spaces around
		{"silicone-film", []string{"silicone"}},                            // it contains a known one
		{"nnoe", []string{"none"}},                                         // a swap of neighbours counts once
		{"nuoe", []string{}},                                               // two changes of four letters are too many
		{"none", []string{"none"}},                                         // the name itself
		{"noen", []string{"none"}},                                         // another swap
		{"non", []string{"none"}},                                          // one letter
		{"onne", []string{"none"}},                                         // a swap of the first two
		{"xsolicane", []string{"silicone"}},                                // one dropped in front and two changed of nine, a third
		{"xsolucane", []string{}},                                          // one more is too many
		{"silxixcxone", []string{"silicone"}},                              // three dropped within, of eleven
		{"cuprous", []string{"hard-cuprous"}},                              // a part of a known one
		{"xylophone-and-drum", []string{}},                                 // nothing like it
		{"", []string{}},                                                   // nothing
		{"   ", []string{}},                                                // nothing but spaces
		{"rac", []string{"hard-racing"}},                                   // three letters are a part
		{"ra", []string{}},                                                 // two are not
		{"asilicxone", []string{"silicone"}},                               // a letter too many in front, and one within
		{strings.Repeat("silicone", 25), []string{"silicone"}},             // 200 letters, which hold a known one
		{strings.Repeat("silicone", 25) + "s", []string{}},                 // one more is too long
		{"sixtco", []string{}},                                             // three of six are too many
		{"silcon", []string{"silicone"}},                                   // two dropped of eight, a third of six
		{"q", []string{}},                                                  // never the empty name
		{strings.Repeat("silicone", 50), []string{}},                       // far too long to be a slip
		{"hard", []string{"hard-racing", "hard-cuprous", "hard-metallic"}}, // at most three, nearest first
	} {
		want := "one of " + strings.Join(known, "; ")
		if len(c.want) > 0 {
			want = "did you mean " + strings.Join(c.want, ", or ") + "?"
		}
		if got := finding.Suggest(c.name, known); got != want {
			t.Errorf("near %.20q: %q, want %q", c.name, got, want)
		}
	}
}

// Ties are told in the order of the names, however the known names are ordered.
func TestNearDoesNotDependOnTheOrder(t *testing.T) {
	for _, known := range [][]string{{"keel", "feel", "reel", "peel"}, {"peel", "reel", "feel", "keel"}} {
		if got, want := finding.Suggest("heel", known), "did you mean feel, or keel, or peel?"; got != want {
			t.Errorf("near heel among %q: %q, want %q", known, got, want)
		}
	}
}

func TestSuggest(t *testing.T) {
	few := []string{"salt", "brackish", "fresh"}
	var many []string
	for i := range 41 {
		many = append(many, fmt.Sprintf("row-number-%02d", i))
	}
	for _, c := range []struct {
		name  string
		known []string
		want  string
	}{
		{"fresch", few, "did you mean fresh?"},
		{"wine", few, "one of salt; brackish; fresh"},
		{"beer", many[:40], "one of " + strings.Join(many[:40], "; ")},
		{"beer", many, "a name that the tables hold"},
		{"row-number-41", many, "did you mean row-number-01, or row-number-11, or row-number-14?"},
	} {
		if got := finding.Suggest(c.name, c.known); got != c.want {
			t.Errorf("for %q: %q, want %q", c.name, got, c.want)
		}
	}
}

// A name that is a slip of the pen away comes before one that only holds it.
func TestSlipsComeBeforeParts(t *testing.T) {
	if got, want := finding.Suggest("keel", []string{"keelbox", "heel"}), "did you mean heel, or keelbox?"; got != want {
		t.Errorf("near keel: %q, want %q", got, want)
	}
}
