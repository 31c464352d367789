package antifoul

import (
	"math"

	"boatyard.example/bottomwork/tables"
)

// lightnessStep returns the distance of two colours in CIE lightness L*, 0 to 100.
func lightnessStep(a, b tables.Colour) float64 { return math.Abs(a.Lightness - b.Lightness) }

// wholeStep is lightnessStep as a sentence says it.
func wholeStep(a, b tables.Colour) int { return int(math.Round(lightnessStep(a, b))) }

// leastStep is the least step between a signal colour and the working colour over it.
func leastStep(b *tables.Book) float64 { return factor(b, "lightness-step") }

// available reports whether the coating is to be had in the colour.
func available(c tables.Coating, k tables.Colour) bool { return c.Bright || !k.Bright }

// farthest returns the available colour with the largest lightness step from the given one; the first in the table's order of
// those that are equal. ok is false when no available colour keeps the least step.
func farthest(b *tables.Book, c tables.Coating, from tables.Colour) (tables.Colour, bool) {
	pairs := ColourPairs(b, c, from)
	if len(pairs) == 0 {
		return tables.Colour{}, false
	}
	return pairs[0].Signal, true
}
