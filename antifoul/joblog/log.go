package joblog

import (
	"time"

	"boatyard.example/bottomwork/compat"
	"boatyard.example/bottomwork/coverage"
	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

// Version is the form of log that this package reads. A log of a later one is refused.
const Version = 1

// Log is what was done in one job, and what was seen of it afterwards.
type Log struct {
	Name     string        // the file that it was read from; empty for one made in Go
	Version  int           // the form of the file that it was read from; 0: it was made in Go
	Boat     string        // her name
	Launched quantity.Date // not given: she is still ashore
	Hauled   quantity.Date // the day on which she came out again; not given: she has not
	Coats    []Coat        // in the order of the file
	Tasks    []Task
	Surveys  []Survey
	Looks    []Look
}

// Span is from when to when something was done. Ended may be not known: the zero time.
type Span struct{ Begun, Ended time.Time }

// Until is the end, or the beginning where the end is not known.
func (s Span) Until() time.Time {
	if s.Ended.IsZero() {
		return s.Begun
	}
	return s.Ended
}

// Air is what was measured at the place of work; what was not is not given.
type Air struct {
	Air      quantity.Temperature
	Surface  quantity.Temperature // on the coldest part that was painted
	DewPoint quantity.Temperature
	Humidity quantity.Share // relative, of the air
	Rain     quantity.YesNo // whether rain reached the work
}

// Coat is one coat laid on one part: a [[coat]] section.
type Coat struct {
	Span
	Air
	Part       string         // name of the part
	Zones      []string       // keys of zones; none: everywhere that the layer goes
	Layer      compat.Purpose // Undercoat, Signal, Working or Extra
	Number     int            // which coat of its layer, from 1
	Coating    string         // key of a coating
	Colour     string         // key of a colour; empty when not said
	Batches    []string
	Litres     quantity.Volume // as supplied, without thinner
	Thinner    quantity.Share  // of the paint's volume; not given: not said
	Wet        []coverage.Tooth
	Who        []string
	Deviations []string // what was not done as planned or as the tin asks, in words
}

// Task is work that is no coat: a [[task]] section.
type Task struct {
	Span
	Part       string         // name of the part
	Zones      []string       // none: all of the part
	Do         finding.Action // wash, abrade, strip …
	DownTo     string         // key of the film that was left below; empty: as planned
	Who        []string
	Deviations []string
}

// All reports whether the task was done on all of its part.
func (t Task) All() bool { return len(t.Zones) == 0 }

// Survey is the dry film of one layer, read by a gauge before the launch: a [[gauged]] section. It outranks litres and comb.
type Survey struct {
	On       quantity.Date
	Part     string
	Zone     string                        // key of a zone
	Layer    compat.Purpose                // as Coat.Layer
	Coating  string                        // as Coat.Coating
	Film     quantity.Range[quantity.Film] // of that layer's coats alone: what was read less what lies below; one value is the mean
	Readings int                           // 0: one
	By       string                        // the gauge, in words
	Who      []string
}

// Look is one look at the film after the launch, afloat or ashore: a [[look]] section.
type Look struct {
	On       quantity.Date
	Part     string
	Zone     string           // key of a zone
	Signal   quantity.YesNo   // whether the colour below the working coats shows; not said: nobody looked for it
	Film     quantity.Film    // mean working film left, by gauge; not given: not measured
	Readings int              // gauge readings in the mean; 0: one
	State    tables.Condition // of the film, as found; empty: not said
	Who      []string
}

// Layers lists the words of Coat.Layer, bottom to top.
func Layers() []compat.Purpose {
	return []compat.Purpose{compat.Undercoat, compat.Signal, compat.Extra, compat.Working}
}
