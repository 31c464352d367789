package antifoul

import (
	"cmp"
	"slices"

	"boatyard.example/bottomwork/tables"
)

// ColourPair is a signal under a top coat.
type ColourPair struct {
	Top, Signal tables.Colour
	Step        float64 // of CIE 1976 lightness between them
	Clear       bool    // a step that is seen from a dinghy, by the factor "lightness-step-clear"; else it is seen close by
}

// Apart reports how well two colours are told apart: not at all below the factor "lightness-step", close by from it on, from a dinghy from
// "lightness-step-clear" on.
func Apart(b *tables.Book, x, y tables.Colour) (told, clearly bool) {
	step := lightnessStep(x, y)
	return step >= leastStep(b), step >= factor(b, "lightness-step-clear")
}

// ColourPairs returns the colours that a coating may be had in and that stand out as a signal under the top colour, the clearest first, as far as they make
// the least step (factor "lightness-step"). Where two steps are equal, the order of the table decides.
//
//	step = |L* of the one − L* of the other|
//
// Basis: derived from the lightness of the colour rows; the least and the clear step are assumptions.
func ColourPairs(b *tables.Book, c tables.Coating, top tables.Colour) []ColourPair {
	var out []ColourPair
	seen := factor(b, "lightness-step-clear")
	for k := range b.Colours() {
		if step := lightnessStep(top, k); available(c, k) && step >= leastStep(b) { // a least step is more than nothing, so no colour stands under itself
			out = append(out, ColourPair{Top: top, Signal: k, Step: step, Clear: step >= seen})
		}
	}
	slices.SortStableFunc(out, func(x, y ColourPair) int { return cmp.Compare(y.Step, x.Step) })
	return out
}
