package gauge

import (
	"io/fs"
	"slices"
	"strconv"
	"strings"

	"boatyard.example/bottomwork/tables/entry"
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

// columns are those of a sheet of readings.
var columns = []string{"zone", "reading", "spot", "note"}

// ReadCSV reads the sheet of readings name of fsys: a header, then one line for each reading.
//
//	zone     where it was read; needed
//	reading  the film, above zero, to 5000 um; its unit in the cell or, for all, in the header: "reading [um]"; needed
//	spot     the spot that it is of, for a standard that judges spots
//	note     what the surveyor wrote beside it
//
// The error is a finding.Faults with all faults at once, each with its line; then there are no readings. A column that is unknown or
// missing is told once. See entry.Sheet for what a sheet may look like.
func ReadCSV(fsys fs.FS, name string) ([]Reading, error) {
	var faults finding.Faults
	rows := entry.Sheet(fsys, name, &faults)
	if len(rows)+len(faults) == 0 {
		faults = append(faults, finding.Fault{Kind: finding.ErrMissing, File: name, Key: "readings", Want: "at least one line of zone and reading"})
	}
	var needed []string // the columns whose cells are missed line by line
	for _, c := range columns[:2] {
		if slices.ContainsFunc(rows, func(r *entry.Row) bool { return r.Has(c) }) {
			needed = append(needed, c)
		} else if len(rows) > 0 {
			faults = append(faults, finding.Fault{Kind: finding.ErrMissing, File: name, Key: "column " + c, Want: "a column " + c + " with a cell in each line"})
		}
	}
	var out []Reading
	entry.Columns(rows, columns...)
	for _, row := range rows {
		r := Reading{Zone: row.Text("zone"), Spot: row.Text("spot"), Note: row.Text("note"), Film: entry.Amount[quantity.Film](row, "reading")}
		r.Line, _ = strconv.Atoi(strings.TrimPrefix(row.Path(), "line "))
		row.Need("a cell in each line", needed...)
		if r.Film.Given() {
			if f := filmFault("reading", r.Film); f != nil {
				row.Fault(f.Kind, f.Key, f.Got, f.Want)
			}
		}
		out = append(out, r)
	}
	if err := faults.Err(); err != nil {
		return nil, err
	}
	return out, nil
}
