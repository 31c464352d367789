package entry

import (
	"bytes"
	"encoding/csv"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"slices"
	"strings"
	"unicode/utf8"

	"boatyard.example/bottomwork/tables/finding"
)

// maxLines is the most lines of a sheet that are read. A surveyor's day of readings is a few hundred.
// maxColumns is the most columns: no sheet of this module has more than five, and a surveyor's own may stand beside them.
const (
	maxLines   = 20_000
	maxColumns = 64
)

// Sheet reads the CSV file name of fsys, a Row for each line below the header, in order. The rows note their faults in the
// list given, and their path is the line: "line 3".
//
// The first line names the columns. A column whose numbers are all of one unit says so in brackets, "girth [m]": a cell "2.4" is then
// read as "2.4 m". A cell may also bring its own unit. Cells are parted by commas, or by semicolons where the header has
// them and no comma. An empty cell is not given. Spaces around a cell, a byte order mark and lines of empty cells are no matter.
// Lines may end as on any system.
//
// It is nil when the file cannot be read as lines of cells: the fault then says why. A line with more cells than the header, a
// column without a name and one that stands there twice are faults.
func Sheet(fsys fs.FS, name string, faults *finding.Faults) []*Row {
	bad := func(key, got, want string) {
		*faults = append(*faults, finding.Fault{Kind: finding.ErrSyntax, File: name, Key: key, Got: got, Want: want})
	}
	data, why, want := readText(fsys, name)
	if why != "" {
		bad("", why, want)
		return nil
	}
	data = bytes.TrimPrefix(data, []byte("\ufeff"))
	if !bytes.Contains(data, []byte("\n")) {
		data = bytes.ReplaceAll(data, []byte("\r"), []byte("\n"))
	}
	in := csv.NewReader(bytes.NewReader(data))
	in.FieldsPerRecord = -1
	in.TrimLeadingSpace = true
	if first, _, _ := bytes.Cut(data, []byte("\n")); bytes.Contains(first, []byte(";")) && !bytes.Contains(first, []byte(",")) {
		in.Comma = ';'
	}
	head, err := in.Read()
	if err != nil {
		bad("", "no header", "a first line that names the columns")
		return nil
	}
	if len(head) > maxColumns {
		bad("", fmt.Sprintf("%d columns", len(head)), fmt.Sprintf("at most %d", maxColumns))
		return nil
	}
	columns, units := headings(head, bad)
	var out []*Row
	for len(out) < maxLines {
		cells, err := in.Read()
		if errors.Is(err, io.EOF) {
			return out
		}
		if err != nil {
			bad("", err.Error(), "cells parted by commas, texts with commas in quotes")
			return nil
		}
		number, _ := in.FieldPos(0)
		line := fmt.Sprintf("line %d", number)
		m := map[string]any{}
		if n := len(columns); slices.ContainsFunc(cells[min(n, len(cells)):], func(c string) bool { return strings.TrimSpace(c) != "" }) {
			bad(line, fmt.Sprintf("%d cells", len(cells)), fmt.Sprintf("%d, as the header has", n))
		}
		for i, c := range cells[:min(len(columns), len(cells))] {
			if c = strings.TrimSpace(c); c != "" && columns[i] != "" {
				m[columns[i]] = withUnit(c, units[i])
			}
		}
		if len(m) > 0 {
			out = append(out, New(name, line, m, faults))
		}
	}
	bad("", fmt.Sprintf("more than %d lines", maxLines), "a shorter file")
	return nil
}

// Columns notes a fault for each column that is none of the known ones, once a sheet, at its first cell; Close is then silent about it.
func Columns(rows []*Row, known ...string) {
	told := map[string]bool{}
	for _, r := range rows {
		for _, k := range r.Keys() {
			if slices.Contains(known, k) {
				continue
			}
			r.read[k] = true
			if !told[k] {
				told[k] = true
				r.Fault(finding.ErrUnknownKey, k, Describe(k), finding.Suggest(k, known))
			}
		}
	}
}

// headings parts the names of the columns from their units.
func headings(head []string, bad func(key, got, want string)) (columns, units []string) {
	for i, h := range head {
		h = strings.TrimSpace(h)
		name, unit, _ := strings.Cut(strings.TrimSuffix(h, "]"), "[")
		name = strings.TrimSpace(name)
		key := fmt.Sprintf("column %d", i+1)
		switch {
		case name == "":
			bad(key, Describe(h), `a name, and the unit of its numbers in brackets: "girth [m]"`)
		case slices.Contains(columns, name):
			bad(key, Describe(name), "each column once")
			name = ""
		}
		columns, units = append(columns, name), append(units, strings.TrimSpace(unit))
	}
	return columns, units
}

// withUnit gives a bare number the unit of its column.
func withUnit(cell, unit string) string {
	if unit == "" || strings.Trim(cell, "+-.,0123456789") != "" {
		return cell
	}
	return cell + " " + unit
}

// readText reads a whole file of text, or says what is wrong with it and what would be taken.
func readText(fsys fs.FS, name string) (data []byte, why, want string) {
	f, err := fsys.Open(name)
	if err != nil {
		return nil, err.Error(), "a file that can be opened; its name is relative to the file that names it"
	}
	defer f.Close() //nolint:errcheck // read only
	data, err = io.ReadAll(io.LimitReader(f, maxBytes+1))
	switch {
	case err != nil:
		return nil, err.Error(), "a file that can be read"
	case len(data) > maxBytes:
		return nil, fmt.Sprintf("more than %d bytes", maxBytes), "a smaller file"
	case !utf8.Valid(data):
		return nil, "bytes that are not UTF-8", "text in UTF-8"
	case bytes.IndexByte(data, 0) >= 0:
		return nil, "a NUL byte", "text in UTF-8"
	}
	return data, "", ""
}
