package main

import (
	"fmt"
	"strconv"
	"strings"

	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

// sheet is one table as a reader sees it. Its last two columns, which head does not name, are what a row rests on and the doubt.
type sheet struct {
	Title string
	Says  string // what the table is
	Head  []string
	Rows  []line
}

// line is one row: the cells under head, then the basis and the doubt.
type line struct {
	Key   string
	Cells []string
	Basis string
	Doubt string
}

// writer collects sheets.
type writer struct {
	book  *tables.Book
	units quantity.System
	out   []sheet
}

func (w *writer) sheet(title, says string, head ...string) {
	w.out = append(w.out, sheet{Title: title, Says: says, Head: head})
}

func (w *writer) row(r tables.Row, cells ...string) {
	w.line(r.Key, r.Basis("key"), cells)
}

func (w *writer) line(key string, b finding.Basis, cells []string) {
	s := &w.out[len(w.out)-1]
	s.Rows = append(s.Rows, line{key, cells, rests(b), b.Doubt})
}

// rests says what a row rests on, with the source's key and the place in it.
func rests(b finding.Basis) string {
	var parts []string
	for _, p := range []string{string(b.Kind), b.Source, b.Place, b.Read} {
		if p != "" {
			parts = append(parts, p)
		}
	}
	return strings.Join(parts, ", ")
}

// show writes a value for the reader; nothing for one that is not given.
func (w *writer) show(v any) string {
	if g, ok := v.(interface{ Given() bool }); ok && !g.Given() {
		return ""
	}
	text := tables.Show(v, w.units)
	if text == "not given" {
		return ""
	}
	return text
}

func yes(b bool) string {
	if b {
		return "yes"
	}
	return ""
}

func number(f float64) string { return strconv.FormatFloat(f, 'g', -1, 64) }

// numbers writes a range of plain numbers with its typical value.
func numbers(r quantity.Range[float64]) string {
	if r.Low == r.High {
		return number(r.Low)
	}
	return fmt.Sprintf("%s to %s, typically %s", number(r.Low), number(r.High), number(r.Typical))
}
