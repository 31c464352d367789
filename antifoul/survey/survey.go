package survey

import (
	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/quantity"
)

// Survey is what was seen of a boat ashore. Whatever is not given was not noted.
type Survey struct {
	How      How
	Seen     []Place
	Moisture []Moisture
	Fittings []Fitting
}

// Given reports whether anything was noted.
func (s Survey) Given() bool {
	return s.How.Given() || len(s.Seen)+len(s.Moisture)+len(s.Fittings) > 0
}

// How is how she was seen: the [survey] section of a boat file.
type How struct {
	By           string            // who looked
	On           quantity.Date     // the day
	Ashore       quantity.Date     // out of the water since
	Wash         quantity.Duration // since the wash
	Visible      quantity.Share    // of the bottom
	Hidden       []string          // what hid the rest: pads, blocks, a cradle
	NotInspected []string          // what was not looked at, in the surveyor's words
	Light        string
	Weather      string
}

// Given reports whether anything was said of how she was seen.
func (h How) Given() bool {
	return h.By != "" || h.On.Given() || h.Ashore.Given() || h.Wash.Given() || h.Visible.Given() || len(h.Hidden)+len(h.NotInspected) > 0 || h.Light != "" || h.Weather != ""
}

// DaysAshore is how long she had been out when she was seen; ok is false where one of the days is not known.
func (h How) DaysAshore() (days int, ok bool) {
	if !h.On.Given() || !h.Ashore.Given() {
		return 0, false
	}
	return h.Ashore.DaysUntil(h.On), true
}

// How something is known. Empty counts as Seen.
const (
	Seen     = "seen"
	Measured = "measured" // by a gauge, a meter or a cut
	Reported = "reported" // somebody said so; nobody looked
	Assumed  = "assumed"  // taken to be so
)

// Words lists the words of how something is known.
func Words() []string { return []string{Seen, Measured, Reported, Assumed} }

// Place is one place of a part: a [[seen]] section.
type Place struct {
	Part    string           // name of the part
	Zone    string           // zone of it; empty: all of it
	Where   string           // more closely, in the surveyor's words: "port, under the chain plates"
	Coating string           // key of the uppermost film seen; empty: not said
	Colours []string         // keys of the colours seen, from the top
	State   tables.Condition // of the film; empty: not said
	Known   string           // how that is known
	Photo   string
	Note    string
	Marks   []Mark
}

// Mark is one thing that was seen at a place or on a fitting.
type Mark struct {
	What   string          // as the rows of observations say it
	Grades []string        // keys of grades, at most one of each scale
	Share  quantity.Share  // of the place
	Size   quantity.Length // diameter, depth or gap
	Known  string          // how it is known
	Photo  string
	Note   string
}

// Moisture is one reading of a moisture meter: a [[moisture]] section. Numbers are those of the meter's scale.
type Moisture struct {
	Part       string
	Zone       string
	Instrument string // key of an instrument that tells moisture
	Meter      string // the meter, as the surveyor names it
	Scale      string // the scale that it was set to
	Reading    quantity.Range[float64]
	Dry        float64 // what it reads on a place known to be dry; see HasDry
	HasDry     bool
	Spots      int // number of spots read; 0: not said
	Photo      string
}

// Fitting is an anode, a bond, a leg, a seal, a transducer: a [[fitting]] section.
type Fitting struct {
	Name  string // which one
	Part  string // name of the part that it is or sits on; empty: none
	Photo string
	Note  string
	Marks []Mark
}
