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
		parts = append(parts, g.Grade+" ("+g.Scale+": "+g.Says+")")
	}
	if e.Share.Given() {
		parts = append(parts, e.Share.Show(s))
	}
	if e.Size.Given() {
		parts = append(parts, e.Size.Show(s))
	}
	switch e.Known {
	case Measured:
		parts = append(parts, "measured")
	case Reported:
		parts = append(parts, "as reported, not seen")
	case Assumed:
		parts = append(parts, "assumed, not seen")
	}
	return strings.Join(parts, ", ")
}
