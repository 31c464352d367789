package survey

import (
	"strings"

	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/quantity"
)

// Extent is what was seen, how bad it is and how that is known, as a value of a finding.
type Extent struct {
	Name   string
	Grades []tables.GradeRow
	Share  quantity.Share
	Size   quantity.Length
	Known  string
}

func extent(b *tables.Book, m Mark) Extent {
	e := Extent{Share: m.Share, Size: m.Size, Known: m.Known}
	for _, key := range m.Grades {
		if g, err := b.Grade(key); err == nil {
			e.Grades = append(e.Grades, g)
		}
	}
	return e
}

// Show returns it for a reader of the system: name, each grade with its scale, share, size, and how it is known unless it was seen.
func (e Extent) Show(s quantity.System) string {
	parts := []string{e.Name}
	for _, g := range e.Grades {
		parts = append(parts, g.Label()+" ("+g.Scale+")")
	}
	if e.Share.Given() {
		parts = append(parts, e.Share.Show(s)+" of it")
	}
	if e.Size.Given() {
		parts = append(parts, e.Size.Show(s))
	}
	switch e.Known {
	case Measured:
		parts = append(parts, "measured")
	case Reported:
		parts = append(parts, "as reported, to be confirmed by a look")
	case Assumed:
		parts = append(parts, "assumed, to be confirmed by a look")
	}
	return strings.Join(parts, ", ")
}

// Needle is what a moisture meter read, from its lowest spot to its highest, in numbers of its scale.
type Needle quantity.Range[float64]

// String returns the typical reading, and in brackets the lowest and the highest where they differ.
func (n Needle) String() string {
	text := tables.Show(n.Typical, quantity.Metric)
	if n.Low != n.High {
		text += " (" + tables.Show(quantity.Range[float64](n), quantity.Metric) + ")"
	}
	return text
}
