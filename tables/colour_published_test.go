package tables_test

import (
	"math"
	"strconv"
	"testing"
)

// lightness is CIE 1976 L* of an sRGB colour "#rrggbb", by the arithmetic of IEC 61966-2-1 and CIE 15, with Y = 1 for white.
func lightness(t *testing.T, srgb string) float64 {
	t.Helper()
	n, err := strconv.ParseUint(srgb[1:], 16, 24)
	if len(srgb) != 7 || srgb[0] != '#' || err != nil {
		t.Fatalf("%q is not a colour written #rrggbb", srgb)
	}
	linear := func(c uint64) float64 {
		v := float64(c&0xff) / 255
		if v <= 0.04045 {
			return v / 12.92
		}
		return math.Pow((v+0.055)/1.055, 2.4)
	}
	y := 0.2126*linear(n>>16) + 0.7152*linear(n>>8) + 0.0722*linear(n)
	if y <= 216.0/24389 {
		return y * 24389 / 27
	}
	return 116*math.Cbrt(y) - 16
}

// The lightness of the three primaries, of white and of black, as commonly tabulated to two places. Agreement: 0.01, since the
// tables rest on luminance weights of seven places and the standard prints four.
func TestLightnessOfPrimaries(t *testing.T) {
	t.Attr("source", "CIE 15 and IEC 61966-2-1, values as commonly tabulated")
	for _, c := range []struct {
		srgb string
		want float64
	}{
		{"#ff0000", 53.24},
		{"#00ff00", 87.73},
		{"#0000ff", 32.30},
		{"#ffffff", 100},
		{"#000000", 0},
	} {
		if got := lightness(t, c.srgb); math.Abs(got-c.want) > 0.01 {
			t.Errorf("%s has L* %.4f, tabulated %.2f", c.srgb, got, c.want)
		}
	}
}

func TestLightnessOfEveryColour(t *testing.T) {
	n := 0
	for c := range book(t).Colours() {
		n++
		if got := lightness(t, c.SRGB); math.Abs(got-c.Lightness) > 0.1 {
			t.Errorf("%s %s has L* %.2f, the row says %.2f", c.Key, c.SRGB, got, c.Lightness)
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
