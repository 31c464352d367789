package tables

import (
	"iter"
	"maps"
	"slices"
	"strings"

	"boatyard.example/bottomwork/tables/entry"
	"boatyard.example/bottomwork/tables/finding"
)

// Row is what every row of every table has.
type Row struct {
	Key   string                   // unique in its table
	Name  string                   // as a painter says it; the key where no name is given
	basis *finding.Basis           // its own, never changed once the row is made; nil in a row that no table holds
	cells map[string]finding.Basis // where a cell's basis differs from the row's
}

// String returns the row's name, so that a row of any table prints as it.
func (r Row) String() string { return r.Name }

// Basis returns what the field of the row rests on: the cell's own basis where one was stated, else the row's. Field is as a file writes it:
// "overcoat_min".
func (r Row) Basis(field string) finding.Basis {
	if b, ok := r.cells[field]; ok {
		return b
	}
	if r.basis == nil {
		return finding.Basis{}
	}
	return *r.basis
}

// Own lists the fields that an own table replaced in a row of the book below, sorted, with what they rest on; of a row that stands in
// an own table only every basis is marked Own instead.
func (r Row) Own() iter.Seq2[string, finding.Basis] {
	return func(yield func(string, finding.Basis) bool) {
		for _, field := range slices.Sorted(maps.Keys(r.cells)) {
			if b := r.cells[field]; b.Own && !yield(field, b) {
				return
			}
		}
	}
}

// readRow reads what every row has, and notes a fault for a row without key or basis.
func readRow(r *entry.Row) Row {
	r.Need("a key, unique in its table", "key")
	out := Row{Key: r.Text("key"), Name: r.Text("name")}
	if out.Name == "" {
		out.Name = out.Key
	}
	if !r.Has("basis") {
		r.Fault(finding.ErrBasis, "basis", "", "one of "+strings.Join(kinds(), ", "))
	}
	out.basis = &finding.Basis{
		Kind:   finding.Kind(r.Word("basis", kinds()...)),
		Source: r.Text("source"),
		Place:  r.Text("where"),
		Read:   r.Word("read", "second-hand", "original"),
		Doubt:  r.Text("doubt"),
	}
	if (out.basis.Kind == finding.Published || out.basis.Kind == finding.OwnTable) && out.basis.Source == "" {
		r.Fault(finding.ErrBasis, "source", "", "what it was read in: the key of a row in sources, or for an own table the data sheet or record")
	}
	cells := r.Table("basis_of")
	for _, field := range cells.Keys() {
		k := finding.Kind(cells.Word(field, kinds()...))
		if !r.Has(field) {
			cells.Fault(finding.ErrUnknownKey, field, field, "a field that this row gives")
		}
		if out.cells == nil {
			out.cells = map[string]finding.Basis{}
		}
		b := *out.basis
		b.Kind = k
		if k != finding.Published && k != finding.OwnTable {
			b.Source, b.Place, b.Read = "", "", ""
		}
		out.cells[field] = b
	}
	return out
}

func kinds() []string {
	out := []string{string(finding.OwnTable)}
	for _, k := range finding.Kinds() {
		out = append(out, string(k))
	}
	return out
}
