package entry_test

import (
	"errors"
	"fmt"
	"strings"
	"testing"
	"testing/fstest"

	"boatyard.example/bottomwork/tables/entry"
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

func sheet(text string) ([]*entry.Row, finding.Faults) {
	var faults finding.Faults
	return entry.Sheet(fstest.MapFS{"girths.csv": {Data: []byte(text)}}, "girths.csv", &faults), faults
}

func TestSheetsAreReadByTheirHeader(t *testing.T) {
	for name, text := range map[string]string{
		"a unit in the header": "at [m],girth [m],note\n0,1.2,stem\n2.5,3.4,\"by the mast, wet\"\n",
		"units in the cells":   "at,girth,note\n0 m,1.2 m,stem\n2.5 m,3.4 m,\"by the mast, wet\"\n",
		"both":                 "at [m],girth [ft],note\n0,1.2 m,stem\n2.5,3.4 m,\"by the mast, wet\"\n",
		"spaces before it":     "at [m], girth [m], note\n0, 1.2, stem\n2.5, 3.4, \"by the mast, wet\"\n",
		"semicolons":           "at [m];girth [m];note\n0;1.2;stem\n2.5;3.4;by the mast, wet\n",
		"carriage returns":     "at [m],girth [m],note\r0,1.2,stem\r2.5,3.4,\"by the mast, wet\"\r",
		"spaces and a mark":    "\ufeffat [ m ] , girth [m],note\r\n 0 ,1.2, stem\r\n,,\r\n2.5,3.4,\"by the mast, wet\"\r\n",
	} {
		t.Run(name, func(t *testing.T) {
			rows, faults := sheet(text)
			if len(faults) > 0 || len(rows) != 2 {
				t.Fatalf("%d rows, faults: %v", len(rows), faults)
			}
			at, girth := entry.Amount[quantity.Length](rows[1], "at"), entry.Amount[quantity.Length](rows[1], "girth")
			if at.String() != "2.5 m" || girth.String() != "3.4 m" || rows[1].Text("note") != "by the mast, wet" {
				t.Errorf("read %s, %s, %q", at, girth, rows[1].Text("note"))
			}
		})
	}
}

func TestEmptyCellIsNotGiven(t *testing.T) {
	rows, faults := sheet("at [m],girth [m]\n0,\n")
	if len(faults) > 0 || len(rows) != 1 || rows[0].Has("girth") || entry.Amount[quantity.Length](rows[0], "girth").Given() {
		t.Errorf("%v %v", rows, faults)
	}
}

func TestFaultsNameTheLine(t *testing.T) {
	var faults finding.Faults
	rows := entry.Sheet(fstest.MapFS{"girths.csv": {Data: []byte("at [m],girth\n0,1.2 m\n1,abc\n2,3.4\n")}}, "girths.csv", &faults)
	for _, r := range rows {
		entry.Amount[quantity.Length](r, "at")
		entry.Amount[quantity.Length](r, "girth")
	}
	if len(faults) != 2 || faults[0].Key != "line 3.girth" || !strings.Contains(faults[0].Got, "abc") || faults[1].Key != "line 4.girth" || faults[1].File != "girths.csv" {
		t.Errorf("%v", faults)
	}
}

func TestSheetsThatCannotBeRead(t *testing.T) {
	for name, c := range map[string]struct{ text, word string }{
		"nothing":          {"", "header"},
		"an open quote":    {"a,b\n\"1,2\n", "quotes"},
		"a NUL":            {"a\n\x00\n", "NUL"},
		"a NUL in front":   {"\x00a\n1\n", "NUL"},
		"65 columns":       {columns(65), "65 columns"},
		"not UTF-8":        {"a\n\xff\n", "UTF-8"},
		"too many cells":   {"a,b\n1,2,3,4,5\n", "5 cells"}, // said once, not for each cell
		"too many columns": {strings.Repeat("a,", 400_000) + "\n", "400001 columns"},
		"no name":          {"a,\n1,2\n", "a name"},
		"a name twice":     {"a,a\n1,2\n", "once"},
		"too long":         {"a\n" + strings.Repeat("1\n", 20_000), "20000 lines"},
	} {
		t.Run(name, func(t *testing.T) {
			_, faults := sheet(c.text)
			if len(faults) != 1 || !errors.Is(faults[0], finding.ErrSyntax) || faults[0].File != "girths.csv" || !strings.Contains(faults[0].Error(), c.word) {
				t.Errorf("%v, want one that says %q", faults, c.word)
			}
		})
	}
	for text, key := range map[string]string{"a,\n1,2\n": "column 2", "a,b,a\n1,2,3\n": "column 3"} {
		if _, faults := sheet(text); len(faults) != 1 || faults[0].Key != key {
			t.Errorf("%q: %v, want one about %s", text, faults, key)
		}
	}
	var faults finding.Faults
	if entry.Sheet(fstest.MapFS{}, "none.csv", &faults) != nil || len(faults) != 1 {
		t.Errorf("a file that is not there: %v", faults)
	}
}

func TestColumnsAreToldOnce(t *testing.T) {
	var faults finding.Faults
	rows := entry.Sheet(fstest.MapFS{"girths.csv": {Data: []byte("at [m],colour,gir\n0,,1\n1,red,2\n2,red,3\n")}}, "girths.csv", &faults)
	entry.Columns(rows, "at", "girth")
	for _, r := range rows {
		entry.Amount[quantity.Length](r, "at")
		r.Close()
	}
	if len(faults) != 2 || faults[0].Key != "line 2.gir" || faults[1].Key != "line 3.colour" || !errors.Is(faults[1], finding.ErrUnknownKey) {
		t.Errorf("%v", faults)
	}
}

// A decimal comma is the commonest slip of a sheet: the fault says so.
func TestDecimalComma(t *testing.T) {
	var faults finding.Faults
	rows := entry.Sheet(fstest.MapFS{"girths.csv": {Data: []byte("at [m];girth [m]\n0,9;1\n")}}, "girths.csv", &faults)
	if entry.Amount[quantity.Length](rows[0], "at").Given() || len(faults) != 1 || !strings.Contains(faults[0].Want, "decimal point, no comma") {
		t.Errorf("%v", faults)
	}
}

// columns is the header of a sheet of n columns.
func columns(n int) string {
	var names []string
	for i := range n {
		names = append(names, fmt.Sprintf("c%d", i+1))
	}
	return strings.Join(names, ",") + "\n"
}

// A sheet may have 64 columns, of which the last is read like the others.
func TestSheetOfMostColumns(t *testing.T) {
	rows, faults := sheet(columns(64) + strings.Repeat(",", 63) + "last\n")
	if len(faults) > 0 || len(rows) != 1 || rows[0].Text("c64") != "last" {
		t.Errorf("%d rows, faults: %v", len(rows), faults)
	}
}

// Semicolons part the cells only where the header has them and no comma.
func TestWhatPartsTheCells(t *testing.T) {
	for text, want := range map[string]string{
		"note\n\"by the mast\"\n":  "by the mast",
		"note\nwet; by the mast\n": "wet; by the mast", // one column, without either
		"note,a;b\nwet;dry,2\n":    "wet;dry",          // both: commas
		"note;a\nwet, dry;2\n":     "wet, dry",
	} {
		if rows, faults := sheet(text); len(faults) > 0 || len(rows) != 1 || rows[0].Text("note") != want {
			t.Errorf("%q: %d rows, %v", text, len(rows), faults)
		}
	}
	if _, faults := sheet("note\nwet, by the mast\n"); len(faults) != 1 || faults[0].Got != "2 cells" {
		t.Errorf("a comma under one column: %v", faults)
	}
}

// Of two columns of one name the first is read.
func TestColumnThatStandsTwice(t *testing.T) {
	rows, faults := sheet("a,b,a\n1,2,3\n")
	if len(faults) != 1 || len(rows) != 1 || rows[0].Text("a") != "1" || rows[0].Text("b") != "2" {
		t.Errorf("%d rows, %v", len(rows), faults)
	}
}
