package tables

import (
	"iter"
	"slices"

	"boatyard.example/bottomwork/tables/entry"
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

// Urgency is when something that was seen wants to be dealt with.
type Urgency uint8

// The urgencies, rising. The zero Urgency is invalid.
const (
	NoWork       Urgency = iota + 1 // it is noted, and asks for nothing
	Monitor                         // look again, at the same place
	ThisHaulOut                     // while she is ashore this time
	BeforeLaunch                    // before she goes back into the water, or is relied on
)

var urgencyWords = []string{"no work", "monitor", "this haul-out", "before launch"}

// String returns the urgency's words.
func (u Urgency) String() string {
	if u < NoWork || u > BeforeLaunch {
		return "not judged"
	}
	return urgencyWords[u-1]
}

// Observation is something that may be seen on a bottom, from which grade, share or size it speaks, and what it then asks for. Rows
// of the same What are one ladder: of those that speak, the most urgent decides.
type Observation struct {
	Row
	What    string // what was seen, as a boat file says it; rows may share it
	Urgency Urgency
	Over    quantity.Share  // it speaks of more than this share; not given: of any
	Size    quantity.Length // it speaks of this size and above
	Under   quantity.Length // it speaks of less than this
	State   Condition       // the state of the film that it tells of; empty: none
	Do      string          // what to do, in sentences; empty where nothing is
	Why     string          // why, in a sentence

	on, from, cautions []string
}

// On lists the materials that it is seen on; none: any.
func (o Observation) On() iter.Seq[string] { return slices.Values(o.on) }

// From lists the mildest grades of which it speaks, one for each scale; none: no grade is asked for.
func (o Observation) From() iter.Seq[string] { return slices.Values(o.from) }

// Cautions lists the keys of the cautions that its work calls for.
func (o Observation) Cautions() iter.Seq[string] { return slices.Values(o.cautions) }

// SeenOn reports whether it may be seen on the material.
func (o Observation) SeenOn(material string) bool {
	return len(o.on) == 0 || slices.Contains(o.on, material)
}

// Measured reports whether it wants a grade, a share or a size before it speaks.
func (o Observation) Measured() bool {
	return len(o.from) > 0 || o.Over.Given() || o.Size.Given() || o.Under.Given()
}

func readObservation(r *entry.Row) Observation {
	o := Observation{
		Row: readRow(r), What: r.Text("what"), Over: entry.Amount[quantity.Share](r, "over"), Size: entry.Amount[quantity.Length](r, "size"),
		Under: entry.Amount[quantity.Length](r, "under"), State: Condition(r.Text("state")), Do: r.Text("do"), Why: r.Text("why"),
		on: r.Texts("on"), from: r.Texts("from"), cautions: r.Texts("cautions"),
	}
	o.Urgency = Urgency(slices.Index(urgencyWords, r.Word("urgency", urgencyWords...)) + 1)
	r.Need("text", "what", "why")
	r.Need("one of no work, monitor, this haul-out, before launch", "urgency")
	if o.Urgency > NoWork {
		r.Need("what to do, in a sentence", "do")
	}
	if o.Over.Given() && (o.Over.Sign() < 0 || o.Over.Cmp(quantity.Percent.N(100)) >= 0) {
		r.Fault(finding.ErrImpossible, "over", o.Over.String(), "a share from 0 % to less than 100 %")
	}
	for field, size := range map[string]quantity.Length{"size": o.Size, "under": o.Under} {
		if size.Given() && size.Sign() <= 0 {
			r.Fault(finding.ErrImpossible, field, size.String(), "a length above zero")
		}
	}
	if o.Size.Given() && o.Under.Given() {
		r.Fault(finding.ErrImpossible, "under", o.Under.String(), "size or under, not both: the larger is worse, or the smaller")
	}
	return o
}

// checkObservations notes a fault for each row that names what does not exist, or two grades of one scale.
func (b *Book) checkObservations(miss func(rec *record, table, field, got string, known []string), faults *finding.Faults) {
	materials, grades, cautions, conditions := b.materials.keys(), b.grades.keys(), b.cautions.keys(), b.conditions.keys()
	for i, o := range b.observations.rows {
		rec := b.observations.from[i]
		miss(rec, "observation", "state", string(o.State), conditions)
		for _, m := range o.on {
			miss(rec, "observation", "on", m, materials)
		}
		for _, c := range o.cautions {
			miss(rec, "observation", "cautions", c, cautions)
		}
		var scales []string
		for _, g := range o.from {
			miss(rec, "observation", "from", g, grades)
			row, err := b.grades.get(g)
			if err != nil {
				continue
			}
			if slices.Contains(scales, row.Scale) {
				*faults = append(*faults, finding.Fault{
					Kind: finding.ErrDuplicate, File: rec.file, Key: "observation[" + rec.key() + "].from", Got: entry.Describe(g), Want: "one grade of each scale, the mildest",
				})
			}
			scales = append(scales, row.Scale)
		}
	}
}

// Observation returns the row of the key.
func (b *Book) Observation(key string) (Observation, error) { return b.observations.get(key) }

// Observations lists what may be seen on a bottom, in file order.
func (b *Book) Observations() iter.Seq[Observation] { return b.observations.all() }

// Grade returns the grade of the key.
func (b *Book) Grade(key string) (GradeRow, error) { return b.grades.get(key) }

// Severity returns the place of the grade in its scale, 1 for the mildest: scales are written mildest first. It is 0 for a key that the
// book does not hold.
func (b *Book) Severity(key string) int {
	g, err := b.grades.get(key)
	if err != nil {
		return 0
	}
	n := 0
	for i := range b.grades.rows {
		o := &b.grades.rows[i]
		if o.Scale == g.Scale {
			n++
		}
		if o.Key == key {
			break
		}
	}
	return n
}
