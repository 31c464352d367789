package tables_test

import (
	"encoding/csv"
	"iter"
	"maps"
	"os"
	"slices"
	"strconv"
	"strings"
	"testing"

	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/quantity"
	"github.com/shopspring/decimal"
)

// The published tables are typed twice: once as rows of the book, once as the files of testdata/published, by someone who had
// not seen the rows. The tests of this file hold the two against each other, both ways.

// line is one line of a second reading: its cells by column, the column without its unit.
type line struct {
	file  string
	cells map[string]string
	units map[string]string
}

// printed reads a file of testdata/published: comment lines that say what was read, a header with units, the lines.
func printed(t *testing.T, name string) []line {
	t.Helper()
	text, err := os.ReadFile("testdata/published/" + name)
	if err != nil {
		t.Fatal(err)
	}
	if !strings.HasPrefix(string(text), "# ") {
		t.Errorf("%s does not begin with the document that it was read from", name)
	}
	r := csv.NewReader(strings.NewReader(string(text)))
	r.Comment = '#'
	all, err := r.ReadAll()
	if err != nil {
		t.Fatalf("%s: %v", name, err)
	}
	if len(all) < 2 {
		t.Fatalf("%s has no lines", name)
	}
	var out []line
	for _, cells := range all[1:] {
		l := line{file: name, cells: map[string]string{}, units: map[string]string{}}
		for i, head := range all[0] {
			column, unit, _ := strings.Cut(head, " (")
			l.cells[column] = cells[i]
			l.units[column] = strings.TrimSuffix(unit, ")")
		}
		out = append(out, l)
	}
	return out
}

// text is a cell of the line; a column that the file does not have ends the test.
func (l line) text(t *testing.T, column string) string {
	t.Helper()
	s, ok := l.cells[column]
	if !ok {
		t.Fatalf("%s has no column %q", l.file, column)
	}
	return s
}

// number is a cell of the line as a number.
func (l line) number(t *testing.T, column string) float64 {
	t.Helper()
	s := l.text(t, column)
	f, err := strconv.ParseFloat(s, 64)
	if err != nil {
		t.Fatalf("%s: %s is %q, want a number", l.file, column, s)
	}
	return f
}

// same compares an amount of a row with a cell of the line. An empty cell asks for an amount that is not given.
func same[D quantity.Dim](t *testing.T, l line, name, column string, got quantity.Amount[D], u quantity.Unit[D]) {
	t.Helper()
	s := l.text(t, column)
	if s == "" {
		if got.Given() {
			t.Errorf("%s: %s: %s: the row says %s, the second reading has none", l.file, name, column, got)
		}
		return
	}
	n, err := decimal.NewFromString(s)
	if err != nil {
		t.Fatalf("%s: %s: %s is %q, want a number", l.file, name, column, s)
	}
	if want := u.Of(n); !got.Given() || !got.Equal(want) {
		t.Errorf("%s: %s: %s: the row says %s, the second reading %s", l.file, name, column, got, want)
	}
}

// both pairs the rows with the lines by name, whatever the case, and reports what has no partner on either side. A line may
// speak of several rows (mild steel and cast iron); an alias gives the line's name for a row that says it otherwise.
func both[R any](t *testing.T, lines []line, lineName func(line) string, rows iter.Seq[R], rowName func(R) string,
	aliases map[string]string, check func(l line, name string, r R),
) {
	t.Helper()
	byName := map[string]line{}
	for _, l := range lines {
		name := strings.ToLower(lineName(l))
		if _, twice := byName[name]; twice {
			t.Errorf("%s has two lines of %q", l.file, name)
		}
		byName[name] = l
	}
	met, used := map[string]bool{}, map[string]bool{}
	for r := range rows {
		row := strings.ToLower(rowName(r))
		name := row
		if a, ok := aliases[row]; ok {
			name, used[row] = strings.ToLower(a), true
		}
		l, ok := byName[name]
		if !ok {
			t.Errorf("row %q has no line in %s", row, lines[0].file)
			continue
		}
		met[name] = true
		check(l, row, r)
	}
	for _, l := range lines {
		if name := strings.ToLower(lineName(l)); !met[name] {
			t.Errorf("%s: %q has no row", l.file, name)
		}
	}
	for _, a := range slices.Sorted(maps.Keys(aliases)) {
		if !used[a] {
			t.Errorf("alias %q names no row", a)
		}
	}
}

// only keeps the rows that the test speaks of.
func only[R any](rows iter.Seq[R], keep func(R) bool) iter.Seq[R] {
	return func(yield func(R) bool) {
		for r := range rows {
			if keep(r) && !yield(r) {
				return
			}
		}
	}
}

// numbers is which value rows a file of single numbers was typed for: all rows whose keys begin so, and the line of each.
var numbers = []struct {
	file     string
	prefixes []string
	lines    map[string]string
}{
	{"magnus.csv", []string{"wmo-no-8-", "alduchov-eskridge-", "fao-56-"}, map[string]string{
		"wmo-no-8-a": "WMO-No. 8: A", "wmo-no-8-b": "WMO-No. 8: B", "wmo-no-8-c": "WMO-No. 8: C",
		"alduchov-eskridge-a": "Alduchov and Eskridge: A", "alduchov-eskridge-b": "Alduchov and Eskridge: B",
		"alduchov-eskridge-c": "Alduchov and Eskridge: C",
		"fao-56-a":            "FAO-56: A", "fao-56-b": "FAO-56: B", "fao-56-c": "FAO-56: C",
		"fao-56-arid-least": "FAO-56: arid places, least", "fao-56-arid-most": "FAO-56: arid places, most",
	}},
	{"afs_thresholds.csv", []string{"mepc-356-78-"}, map[string]string{
		"mepc-356-78-tin":           "organotin: tin of a specimen",
		"mepc-356-78-tin-single":    "organotin: tin of any single specimen",
		"mepc-356-78-tin-share":     "organotin: specimens above the threshold",
		"mepc-356-78-cybutryne":     "cybutryne: average of samples from the hull",
		"mepc-356-78-cybutryne-can": "cybutryne: wet paint from the container",
	}},
	{"tin_elsewhere.csv", []string{"us-40cfr1700-27-", "sodertalje-", "eklund-tin-"}, map[string]string{
		"us-40cfr1700-27-tin": "40 CFR 1700.27: tin of the dry film",
		"sodertalje-tin":      "Södertälje: tin of a hull",
		"eklund-tin-coat":     "Eklund: tin of one old TBT coat",
		"eklund-tin-dk":       "Eklund: Denmark", "eklund-tin-fi": "Eklund: Finland", "eklund-tin-de": "Eklund: Germany",
	}},
	{"film_sspc_pa2_circle.csv", []string{"sspc-pa2-"}, map[string]string{
		"sspc-pa2-circle": "circle of a spot, metric", "sspc-pa2-circle-us": "circle of a spot, US",
	}},
	{"film_iso_19840_repeats.csv", []string{"iso-19840-"}, map[string]string{
		"iso-19840-repeats-share": "readings that may be repeated beyond 100 m2",
	}},
	{"mil_hdbk_1004_10.csv", []string{"mil-hdbk-1004-10-"}, map[string]string{
		"mil-hdbk-1004-10-aluminium-shift": "aluminium: shift of polarisation",
	}},
	{"schultz_2007_power.csv", []string{"schultz-2007-"}, map[string]string{"schultz-2007-power": "heavy calcareous fouling"}},
	{"westlawn_values.csv", []string{"westlawn-scatter-", "westlawn-shift-"}, map[string]string{
		"westlawn-scatter-iron-nickel": "scatter of alloys with iron or nickel",
		"westlawn-scatter-copper":      "scatter of copper alloys without nickel",
		"westlawn-shift-least":         "more negative than the free potential, least",
		"westlawn-shift-most":          "more negative than the free potential, most",
	}},
}

func TestNumbersReadTwice(t *testing.T) {
	for _, n := range numbers {
		rows := only(tables.Default().Values(), func(v tables.Value) bool {
			return slices.ContainsFunc(n.prefixes, func(p string) bool { return strings.HasPrefix(v.Key, p) })
		})
		both(t, printed(t, n.file), func(l line) string { return l.text(t, "what") }, rows,
			func(v tables.Value) string { return v.Key }, n.lines,
			func(l line, name string, v tables.Value) {
				want := l.number(t, "value")
				if v.Value.Low != want || v.Value.Typical != want || v.Value.High != want {
					t.Errorf("%s: %s: the row says %g to %g to %g, the second reading %g", l.file, name, v.Value.Low, v.Value.Typical, v.Value.High, want)
				}
				// A row may say more of the unit: "mg/kg dry paint".
				if unit := l.text(t, "unit"); !strings.HasPrefix(v.Unit+" ", unit+" ") {
					t.Errorf("%s: %s: the row is in %s, the second reading in %s", l.file, name, v.Unit, unit)
				}
				if bound := l.text(t, "bound"); v.Bound != bound {
					t.Errorf("%s: %s: the row is bound %q, the second reading %q", l.file, name, v.Bound, bound)
				}
			})
	}
}
