package tables_test

import (
	"math"
	"testing"

	"boatyard.example/bottomwork/tables/finding"
)

// The lightness of the three primaries, of white, of black, of a grey near it and of the grey halfway, as commonly tabulated to two places.
// Agreement: half of the last decimal kept, and 0.01, since the tables rest on luminance weights of seven places and the standard
// prints four.
func TestLightnessOfPrimaries(t *testing.T) {
	t.Attr("source", "CIE 15 and IEC 61966-2-1, values as commonly tabulated")
	for _, c := range []struct {
		srgb string
		want float64
	}{
		{"#ff0000", 53.24},
		{"#00ff00", 87.73},
		{"#0000FF", 32.30},
		{"#ffffff", 100},
		{"#000000", 0},
		{"#777777", 50.03},
		{"#0a0a0a", 2.74}, // on the straight foot of both curves: 10 ÷ 255 ÷ 12.92 × 24389 ÷ 27
	} {
		b := with(t, row("colour", fields{"key": `"own"`, "basis": `"own table"`, "source": `"fan deck"`, "srgb": `"` + c.srgb + `"`}))
		own, err := b.Colour("own")
		if err != nil || math.Abs(own.Lightness-c.want) > 0.06 {
			t.Errorf("%s has L* %.2f, tabulated %.2f; %v", c.srgb, own.Lightness, c.want, err)
		}
	}
}

// In the dark the lightness is a straight line in the three channels, which a pencil can follow: of 6, 5 and 1,
// (0.2126 × 6 + 0.7152 × 5 + 0.0722) ÷ 255 ÷ 12.92 × 24389 ÷ 27 = 1.34998, a hair under the half that is rounded up.
func TestLightnessInTheDark(t *testing.T) {
	t.Attr("source", "CIE 15 and IEC 61966-2-1, the formulas worked by hand")
	b := with(t, row("colour", fields{"key": `"own"`, "basis": `"own table"`, "source": `"fan deck"`, "srgb": `"#060501"`}))
	if own, err := b.Colour("own"); err != nil || own.Lightness != 1.3 {
		t.Errorf("L* is %g, want 1.3; %v", own.Lightness, err)
	}
}

func TestFourteenColours(t *testing.T) {
	n := 0
	for c := range book(t).Colours() {
		n++
		if k := c.Basis("lightness"); k.Kind != finding.Derived || c.Basis("srgb").Kind != finding.Assumption {
			t.Errorf("%s: the lightness rests on %q, the shade on %q", c.Key, k.Kind, c.Basis("srgb").Kind)
		}
	}
	if n < 14 {
		t.Errorf("%d colours, want at least 14", n)
	}
}

// A wear signal must be possible in dark paint too: two colours that cuprous oxide can have, far enough apart.
func TestDarkColoursGiveASignal(t *testing.T) {
	b := book(t)
	for _, key := range []string{"lightness-step", "lightness-step-clear"} {
		step, err := b.Factor(key)
		if err != nil {
			t.Fatal(err)
		}
		low, high := math.Inf(1), math.Inf(-1)
		for c := range b.Colours() {
			if !c.Bright {
				low, high = min(low, c.Lightness), max(high, c.Lightness)
			}
		}
		if high-low < step.Value.Typical {
			t.Errorf("the dark colours lie %.1f apart at most, less than the %s of %.0f", high-low, key, step.Value.Typical)
		}
	}
	white, err := b.Colour("white")
	if err != nil || !white.Bright {
		t.Errorf("white: bright %t, %v; want a colour that cuprous oxide cannot have", white.Bright, err)
	}
}
