package tables

import (
	"iter"
	"maps"
	"slices"
	"strings"

	"boatyard.example/bottomwork/tables/entry"
	"boatyard.example/bottomwork/tables/finding"
)

// Cell is one value of one row, as its file writes it.
type Cell struct {
	Table, Key, Field string
	Value             string
	Basis             finding.Basis // Basis.Own marks what an own table replaced or added
	New               bool          // its whole row stands in an own table only
}

// Cells lists every cell of the book with what it rests on: tables and rows in the book's order, fields by name. What a row says of
// itself (its key, its basis, its doubt) is no cell.
func (b *Book) Cells() iter.Seq[Cell] { return b.cells(func(*record) bool { return true }) }

// OwnCells lists those of Cells that an own table replaced or added.
func (b *Book) OwnCells() iter.Seq[Cell] {
	return func(yield func(Cell) bool) {
		for c := range b.cells(func(r *record) bool { return r.fresh || r.own != nil }) {
			if c.Basis.Own && !yield(c) {
				return
			}
		}
	}
}

// cells lists the cells of the records that are asked for.
func (b *Book) cells(of func(*record) bool) iter.Seq[Cell] {
	return func(yield func(Cell) bool) {
		for _, table := range tableNames {
			for _, rec := range b.records[table] {
				if !of(rec) {
					continue // not asked for
				}
				row := readRow(entry.New(rec.file, table, rec.m, new(finding.Faults))) // its faults were told when the book was made
				row.heir(rec)
				if table == "source" { // a document rests on itself
					row.basis = &finding.Basis{Kind: finding.Published, Source: rec.key(), Own: rec.fresh}
				}
				for _, field := range slices.Sorted(maps.Keys(rec.m)) {
					if slices.Contains(heading, field) {
						continue
					}
					if !yield(Cell{Table: table, Key: rec.key(), Field: field, Value: written(rec.m[field]), Basis: row.Basis(field), New: rec.fresh}) {
						return
					}
				}
			}
		}
	}
}

// written is a value as a reader would write it: texts without quotes, lists with semicolons, the values of a section by name.
func written(v any) string {
	var parts []string
	switch v := v.(type) {
	case string:
		return v
	case []any:
		for _, e := range v {
			parts = append(parts, written(e))
		}
	case []map[string]any:
		for _, e := range v {
			parts = append(parts, written(e))
		}
	case map[string]any:
		for _, k := range slices.Sorted(maps.Keys(v)) {
			parts = append(parts, k+" "+written(v[k]))
		}
		return strings.Join(parts, ", ")
	default:
		return entry.Describe(v)
	}
	return strings.Join(parts, "; ")
}
