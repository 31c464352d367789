package tables

import (
	"iter"
	"slices"

	"boatyard.example/bottomwork/tables/entry"
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

// Sign is one thing that somebody may see of an old film, and which old films it speaks for and against.
type Sign struct {
	Row
	Test    string // what is done to see it: wet thumb, cloth with thinner …
	Says    string // what is seen
	Settles bool   // it rules out what it speaks against; else it only makes that unlikely

	speaks, against []string
}

// For lists the keys of the old films that it speaks for.
func (s Sign) For() iter.Seq[string] { return slices.Values(s.speaks) }

// Against lists the keys of the old films that it speaks against.
func (s Sign) Against() iter.Seq[string] { return slices.Values(s.against) }

func readSign(r *entry.Row) Sign {
	s := Sign{Row: readRow(r), Test: r.Text("test"), Says: r.Text("says"), Settles: r.YesNo("settles").True(), speaks: r.Texts("for"), against: r.Texts("against")}
	r.Need("text", "test", "says")
	if len(s.speaks)+len(s.against) == 0 {
		r.Fault(finding.ErrMissing, "for", "", "keys of old films that it speaks for, or against")
	}
	for _, key := range s.speaks {
		if slices.Contains(s.against, key) {
			r.Fault(finding.ErrImpossible, "against", entry.Describe(key), "a film that it does not speak for")
		}
	}
	return s
}

// Threshold says what a reading of an old film asks for. A reading on a threshold is still inside it.
type Threshold struct {
	Row
	Unit   string
	Lower  bool                    // the lower the reading the worse, as a class of adhesion; else the higher
	Repair float64                 // worse than this: spots are repaired
	Strip  quantity.Range[float64] // worse than the far end: it comes off; between the two ends the trade differs
	Least  float64                 // readings from
	Most   float64                 // to
	State  Condition               // the state that a film beyond the far end is in
}

func readThreshold(r *entry.Row) Threshold {
	t := Threshold{Row: readRow(r), Unit: r.Text("unit"), Lower: r.Word("worse", "higher", "lower") == "lower", State: Condition(r.Text("state"))}
	t.Least, _ = r.Float("least", -1e6, 1e6)
	t.Most, _ = r.Float("most", -1e6, 1e6)
	t.Repair, _ = r.Float("repair", -1e6, 1e6)
	t.Strip, _ = r.Floats("strip", -1e6, 1e6)
	r.Need("what a reading is, from where to where, and what it asks for", "unit", "worse", "least", "most", "repair", "strip", "state")
	if t.Least >= t.Most {
		r.Fault(finding.ErrImpossible, "most", entry.Describe(t.Most), "more than least")
	}
	if t.Lower && t.Repair < t.Strip.High || !t.Lower && t.Repair > t.Strip.Low {
		r.Fault(finding.ErrImpossible, "repair", entry.Describe(t.Repair), "a reading no worse than strip")
	}
	return t
}
