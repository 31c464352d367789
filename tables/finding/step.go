package finding

import (
	"strconv"

	"boatyard.example/bottomwork/tables/quantity"
)

// Action is one kind of work on a surface. Each is a row of steps.toml with its hours and cautions.
type Action string

// The actions that rules ask for.
const (
	Wash       Action = "wash"
	Degrease   Action = "degrease"
	Abrade     Action = "abrade"
	WetScuff   Action = "wet scuff"   // matt by hand and wet, never through the film
	Identify   Action = "identify"    // find out what the old film is
	TestPatch  Action = "test patch"  // a trial square, left for days
	SpotRepair Action = "spot repair" // remove to a sound edge and feather
	DryOut     Action = "dry out"     // wait until the laminate or planking has dried
	Tie        Action = "tie coat"
	Seal       Action = "sealer"
	Strip      Action = "strip" // remove all old paint to the substrate or to sound barrier
	Blast      Action = "blast" // blast or power-tool to bright metal
	Prime      Action = "prime"
	Barrier    Action = "barrier"
	Polish     Action = "polish"
	Gap        Action = "gap" // keep a strip beside a leg free of copper
	Mask       Action = "mask"
	Shift      Action = "shift stands" // the yard's work, never anyone else's
	Wait       Action = "wait"         // until the coat below may be overcoated
)

// Step is work that must be done first. Coating and Film are set when the step puts something on.
type Step struct {
	Do      Action                        `json:"do"`
	Coating string                        `json:"coating,omitempty"` // key of the coating that the step applies
	Film    quantity.Range[quantity.Film] `json:"film,omitzero"`     // dry film that it must reach
	Grit    string                        `json:"grit,omitempty"`    // abrasive, "80 to 120"
	Coats   int                           `json:"coats,omitempty"`
	_       [0]func()
}

// String says the step in a few words, metric units first: "abrade, grit 80 to 120", "barrier, epoxy-barrier, 2 coats, 250 to 300 µm (9.84 to
// 11.8 mil)". What is not set is left out.
func (s Step) String() string {
	out := string(s.Do)
	add := func(set bool, words string) {
		if set {
			out += ", " + words
		}
	}
	add(s.Grit != "", "grit "+s.Grit)
	add(s.Coating != "", s.Coating)
	add(s.Coats == 1, "1 coat")
	add(s.Coats > 1, strconv.Itoa(s.Coats)+" coats")
	add(s.Film.Low.Given() || s.Film.High.Given(), s.Film.Show(quantity.Metric))
	return out
}

// Equal reports whether two steps ask for the same.
func (s Step) Equal(o Step) bool {
	return s.Do == o.Do && s.Coating == o.Coating && s.Grit == o.Grit && s.Coats == o.Coats &&
		s.Film.Low.Equal(o.Film.Low) && s.Film.Typical.Equal(o.Film.Typical) && s.Film.High.Equal(o.Film.High)
}
