package report

import (
	"encoding/csv"
	"io"
	"strconv"
	"strings"

	"boatyard.example/bottomwork/tables/quantity"
)

// sheet is a CSV file as RFC 4180 (2005) has it: one header row, commas, CRLF after every row, cells in double quotes where they must be. It is UTF-8
// without a byte order mark. The unit stands in the heading in square brackets, as in the sheets that a boat file names; numbers have a decimal
// point and no separator. An empty cell is not known, or has no meaning for its row.
type sheet struct {
	head []string
	rows [][]string
}

// write writes the sheet, whole or with an error of w.
func (s *sheet) write(w io.Writer) error {
	var text strings.Builder
	out := csv.NewWriter(&text)
	out.UseCRLF = true
	if err := out.WriteAll(append([][]string{s.head}, s.rows...)); err != nil {
		return err
	}
	_, err := io.WriteString(w, text.String())
	return err
}

// word is a text as a cell. Control and direction characters go, so that a row is one line. A text that a spreadsheet may run as a formula gets an
// apostrophe before it, by which spreadsheets know a text: one that begins with = + - or @, or with their wide forms, spaces before them or not.
// A cell with a number is left as it is.
func word(s string) string {
	s = strings.ToValidUTF8(strings.TrimSpace(clean(s)), "\ufffd")
	if strings.HasPrefix(s, "=") || strings.IndexAny(s, "+-@＝＋－＠") == 0 {
		return "'" + s
	}
	return s
}

// number is an amount in the unit, to the places given; empty where it is not given.
func number[D quantity.Dim](a quantity.Amount[D], u quantity.Unit[D], places int32, r quantity.Rounding) string {
	if !a.Given() {
		return ""
	}
	return a.In(u, places, r).String()
}

// count is a whole number; empty for nought.
func count(n int) string {
	if n == 0 {
		return ""
	}
	return strconv.Itoa(n)
}

// heading is a column's name with its unit.
func headed[D quantity.Dim](name string, u quantity.Unit[D]) string {
	return name + " [" + u.String() + "]"
}

// either is the unit of the reader's system.
func either[D quantity.Dim](s quantity.System, metric, us quantity.Unit[D]) quantity.Unit[D] {
	if s == quantity.US {
		return us
	}
	return metric
}
