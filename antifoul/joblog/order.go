package joblog

import (
	"fmt"
	"slices"
	"time"

	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

// order notes what cannot have been so together. Coats without a zone lie on the same place as every other coat of their part.
func (c *checker) order(l Log) {
	for i, k := range l.Coats {
		for j, o := range l.Coats[:i] {
			if k.Part == "" || k.Part != o.Part || k.Begun.IsZero() || o.Begun.IsZero() || !Meet(k.Zones, o.Zones) {
				continue
			}
			key := fmt.Sprintf("coat[%d].", i+1)
			same := k.Layer == o.Layer && k.Coating == o.Coating && k.Number > 0 && o.Number > 0
			// The second's beginning decides; an end that is not known is no end.
			first, second := o, k
			if k.Begun.Before(o.Begun) {
				first, second = k, o
			}
			switch {
			case same && k.Number == o.Number:
				c.bad(finding.ErrDuplicate, key+"coat", fmt.Sprintf("%d, as coat[%d]", k.Number, j+1), "each coat of a layer once on a place; a second piece of it has its zones")
			case same && first.Number > second.Number:
				c.bad(finding.ErrImpossible, key+"coat", fmt.Sprintf("coat %d, begun %s, before coat %d, begun %s (coat[%d])", first.Number, told(first.Begun), second.Number, told(second.Begun), j+1), "coats of a layer in the order of their numbers")
			case second.Begun.Before(first.Until()):
				c.bad(finding.ErrImpossible, key+"begun", fmt.Sprintf("%s, with coat[%d] from %s to %s on the same place", told(k.Begun), j+1, told(o.Begun), told(o.Until())), "one coat at a time on a place")
			}
		}
	}
}

// Meet reports whether two lists of zones have a place in common; an empty one is everywhere.
func Meet(a, b []string) bool {
	return len(a) == 0 || len(b) == 0 || slices.ContainsFunc(a, func(z string) bool { return slices.Contains(b, z) })
}

// ashore notes work on a boat that was afloat.
func (c *checker) ashore(key string, l Log, s Span) {
	if s.Begun.IsZero() || !l.Launched.Given() || day(s.Until()).Before(l.Launched) || day(s.Until()).Equal(l.Launched) {
		return
	}
	c.bad(finding.ErrImpossible, key+"begun", told(s.Begun), "before the launch, "+l.Launched.String()+"; a job after it has a log of its own")
}

// day is the civil day of a moment on its own clock.
func day(t time.Time) quantity.Date {
	d, err := quantity.NewDate(t.Year(), int(t.Month()), t.Day())
	if err != nil {
		return quantity.Date{}
	}
	return d
}
