package compat

import (
	"strconv"

	"boatyard.example/bottomwork/tables/quantity"
)

// String says the layer in a few words: "2 coats ablative, cuprous oxide, multi-season, black, 80 to 120 µm (3.15 to 4.72 mil)".
// A found layer has no coats; what was not reported or measured is left out.
func (l Layer) String() string {
	out := l.Coating.Name
	switch {
	case l.Coats == 1:
		out = "1 coat " + out
	case l.Coats > 1:
		out = strconv.Itoa(l.Coats) + " coats " + out
	}
	if l.Colour != "" {
		out += ", " + l.Colour
	}
	if l.Film.Low.Given() {
		out += ", " + quantity.ShowRange(l.Film, quantity.Metric)
	}
	return out
}
