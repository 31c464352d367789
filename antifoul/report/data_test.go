package report_test

import (
	"bytes"
	"encoding/csv"
	"encoding/json"
	"errors"
	"math/big"
	"strings"
	"testing"
	"unicode"
	"unicode/utf8"

	"boatyard.example/bottomwork/antifoul"
	"boatyard.example/bottomwork/antifoul/report"
	"boatyard.example/bottomwork/tables/quantity"
)

var dataFormats = []report.Format{report.JSON, report.LayersCSV, report.ShoppingCSV}

// hostile are names that nobody should give a boat or a part.
var hostile = []string{
	`"><svg onload=alert(1)>`, "'};</style><script>x</script>", "]]> &amp; &lt; <!-- --> <?x?>", "שלום עולם", "line\nbreak\r\n## two", "bell\a\x00\x1b[31mend\ufffe\uffff", strings.Repeat("long ", 2000), "{{.}} ${x} `y`", "\\0022 \\3c",
	"<script>alert(1)</script>", `"quoted", 'twice'`, "line\nbreak\r\nand another", "\u202etxt.exe", "a\u200eb\u2066c\u2069", "tab\there", "\ufeffmark", "bell\a\x00end", "\xff\xfe not UTF-8 \xc3",
	strings.Repeat("x", 10000), `back\slash`, "a\u2028b\u2029c\u0085d", "=1+1", "+1", "-1", "@SUM(A1)", "=cmd|' /C calc'!A0", "\t=1+1", " =1+1", "\r\n=1+1", "\u202e=1+1", "＝1+1", `=HYPERLINK("http://x","y")`, "\U000E0041tag",
}

func named(t *testing.T, name string) *antifoul.Job {
	t.Helper()
	return job(t, "planing.toml", func(b *antifoul.Boat) {
		b.Name = name
		b.Parts[0].Name = name
		b.Parts[0].Found[0].KnownBy = name
		b.Berths[0].Place = name
	})
}

// Words from outside break neither the JSON nor the sheets. The JSON gives them back as they are, but for what is no UTF-8, and nothing in it turns the
// direction of a line or does not print.
func TestHostileNamesInData(t *testing.T) {
	notUnderRace(t)
	for _, name := range hostile {
		j := named(t, name)
		text := write(t, j, report.Options{Format: report.JSON})
		var doc struct {
			Boat struct {
				Name string `json:"name"`
				Part []struct {
					Name string `json:"name"`
				} `json:"part"`
			} `json:"boat"`
		}
		if err := json.Unmarshal([]byte(text), &doc); err != nil {
			t.Errorf("%.30q: %v", name, err)
			continue
		}
		want := strings.Map(func(r rune) rune { return r }, name) // each octet that is no UTF-8 is U+FFFD
		if doc.Boat.Name != want || doc.Boat.Part[0].Name != want {
			t.Errorf("%.30q came back as %.30q and %.30q", name, doc.Boat.Name, doc.Boat.Part[0].Name)
		}
		if bad := strings.IndexFunc(text, func(r rune) bool { return r != '\n' && (!unicode.IsPrint(r) || r == '<' || r == '>') }); bad >= 0 {
			t.Errorf("%.30q: %q stands in the JSON", name, []rune(text[bad:])[0])
		}
		for _, f := range []report.Format{report.LayersCSV, report.ShoppingCSV} {
			sheet := write(t, j, report.Options{Format: f})
			checkSheet(t, sheet)
			if strings.Count(sheet, "\r\n") != strings.Count(write(t, named(t, "Plain"), report.Options{Format: f}), "\r\n") {
				t.Errorf("%s, %.30q: the name made rows of its own", f, name)
			}
		}
	}
}

// checkSheet holds a sheet against RFC 4180: CRLF after each row, as many cells in each as the header row has, nothing that a spreadsheet would run, UTF-8
// without a mark, and no character that does not print.
func checkSheet(t *testing.T, sheet string) [][]string {
	t.Helper()
	if !utf8.ValidString(sheet) || strings.HasPrefix(sheet, "\ufeff") || !strings.HasSuffix(sheet, "\r\n") {
		t.Errorf("no UTF-8, a mark at its beginning, or no CRLF at its end: %.60q", sheet)
	}
	if strings.Count(sheet, "\n") != strings.Count(sheet, "\r\n") || strings.Count(sheet, "\r") != strings.Count(sheet, "\r\n") {
		t.Errorf("a line break that is not CRLF: %.60q", sheet)
	}
	rows, err := csv.NewReader(strings.NewReader(sheet)).ReadAll() // refuses rows of another length
	if err != nil {
		t.Fatal(err)
	}
	for _, r := range rows {
		for i, cell := range r {
			if _, isNumber := new(big.Rat).SetString(cell); isNumber {
				continue
			}
			if strings.IndexAny(strings.TrimSpace(cell), "=+-@＝＋－＠") == 0 {
				t.Errorf("column %s: a spreadsheet may run %.40q", rows[0][i], cell)
			}
			if strings.ContainsFunc(cell, func(r rune) bool { return !unicode.IsPrint(r) }) {
				t.Errorf("column %s: %.40q does not print", rows[0][i], cell)
			}
		}
	}
	return rows
}

// A name that a spreadsheet may run as a formula has an apostrophe before it, and no other name has.
func TestFormulasAreTexts(t *testing.T) {
	for name, want := range map[string]string{
		"=1+1": "'=1+1", "+1": "'+1", "-1": "'-1", "@SUM(A1)": "'@SUM(A1)", "\t=1+1": "'=1+1", " =1+1": "'=1+1", "\u202e=1+1": "'=1+1", "＝1+1": "'＝1+1", "a=b": "a=b", "1-2": "1-2", "keel, aft": "keel, aft",
	} {
		rows := checkSheet(t, write(t, named(t, name), report.Options{Format: report.LayersCSV}))
		if rows[1][0] != want {
			t.Errorf("%q is the cell %q, expected %q", name, rows[1][0], want)
		}
	}
}

// column is the numbers of a column, in the rows that keep.
func column(t *testing.T, rows [][]string, head string, keep func(row map[string]string) bool) *big.Rat {
	t.Helper()
	sum := new(big.Rat)
	for _, r := range rows[1:] {
		row := map[string]string{}
		for i, cell := range r {
			row[rows[0][i]] = cell
		}
		if _, ok := row[head]; !ok {
			t.Fatalf("no column %q in %v", head, rows[0])
		}
		if x, ok := new(big.Rat).SetString(row[head]); ok && keep(row) {
			sum.Add(sum, x)
		}
	}
	return sum
}

// Columns can be added up: the litres of a layer's zones to the layer's, within the rounding up of each; needs, costs and cans to what is bought. So in both units.
func TestSheetsAddUp(t *testing.T) {
	jobs := allJobs(t)
	for name, j := range rareJobs(t) {
		jobs[name] = j
	}
	priced := 0
	for name, j := range jobs {
		rows := checkSheet(t, write(t, j, report.Options{Format: report.LayersCSV}))
		for _, s := range j.Schemes {
			for _, k := range s.Coats {
				got := column(t, rows, "paint typical [L]", func(r map[string]string) bool {
					return r["part"] == s.Part && r["role"] == string(k.Layer.For) && r["coating key"] == k.Layer.Coating.Key
				})
				want := new(big.Rat)
				for _, o := range s.Coats {
					if o.Layer.For == k.Layer.For && o.Layer.Coating.Key == k.Layer.Coating.Key {
						want.Add(want, o.Litres.Typical.In(quantity.Litre, 6, quantity.Nearest).Rat())
					}
				}
				if more := new(big.Rat).Sub(got, want); more.Sign() < 0 || more.Cmp(big.NewRat(10, 100)) > 0 {
					t.Errorf("%s, %s, %s: the zones take %s L, the layer %s", name, s.Part, k.Layer.Coating.Key, got.FloatString(3), want.FloatString(3))
				}
			}
		}
		rows = checkSheet(t, write(t, j, report.Options{Format: report.ShoppingCSV}))
		us := checkSheet(t, write(t, j, report.Options{Format: report.ShoppingCSV, Units: quantity.US}))
		if len(us) != len(rows) {
			t.Errorf("%s: %d rows in US units, %d in metric", name, len(us), len(rows))
		}
		for _, g := range j.Buy {
			mine := func(r map[string]string) bool {
				colour := ""
				if c, err := j.Book.Colour(g.Colour); err == nil {
					colour = c.Name
				}
				return r["kind"] == "paint" && r["key"] == g.Coating.Key && r["colour"] == colour
			}
			if got, want := column(t, rows, "need [L]", mine), g.Need.In(quantity.Litre, 2, quantity.Up).Rat(); got.Cmp(want) != 0 {
				t.Errorf("%s, %s: the need is %s L, expected %s", name, g.Coating.Key, got.FloatString(2), want.FloatString(2))
			}
			if got, want := column(t, us, "need [US gal]", mine), g.Need.In(quantity.USGallon, 3, quantity.Up).Rat(); got.Cmp(want) < 0 || new(big.Rat).Sub(got, want).Cmp(big.NewRat(1, 100)) > 0 {
				t.Errorf("%s, %s: the need is %s US gal, expected %s", name, g.Coating.Key, got.FloatString(3), want.FloatString(3))
			}
			cans := 0
			for _, i := range append(g.Items, g.FromStock...) {
				cans += i.Count
			}
			if got := column(t, rows, "count", mine); got.Cmp(big.NewRat(int64(cans), 1)) != 0 {
				t.Errorf("%s, %s: %s cans, expected %d", name, g.Coating.Key, got, cans)
			}
			if g.Cost.Given() {
				priced++
				if got := column(t, rows, "cost", mine); got.Cmp(g.Cost.Amount().Rat()) != 0 {
					t.Errorf("%s, %s: the cost is %s, expected %s", name, g.Coating.Key, got, g.Cost)
				}
			}
		}
	}
	if priced == 0 {
		t.Error("no purchase has a price: the column of costs was not looked at")
	}
}

// The same job gives the same bytes, in either length.
func TestSameData(t *testing.T) {
	for _, f := range dataFormats {
		first := write(t, job(t, "steel.toml", nil), report.Options{Format: f})
		for range 3 {
			if write(t, job(t, "steel.toml", nil), report.Options{Format: f, Short: true}) != first {
				t.Fatalf("%s: two of one boat differ", f)
			}
		}
	}
}

// A format for programs is written whole or with the writer's error, and is none for one morning.
func TestDataErrors(t *testing.T) {
	j := job(t, "trailer.toml", nil)
	for _, f := range dataFormats {
		if err := report.Write(broken{}, j, report.Options{Format: f}); !errors.Is(err, errBroken) {
			t.Errorf("%s: the writer's error is lost: %v", f, err)
		}
		var out bytes.Buffer
		if err := report.Morning(&out, j, j.Boat.Work.Begins(j.Boat.On, nil), report.Options{Format: f}); err == nil || out.Len() > 0 {
			t.Errorf("%s for a morning: %v, %d bytes", f, err, out.Len())
		}
	}
}

// Units turn the sentences of the JSON and nothing else in it.
func TestUnitsOfJSON(t *testing.T) {
	sentences := map[string]int{"says": 0, "before_launch": 0, "units": 0}
	var compare func(path, key string, a, b any)
	compare = func(path, key string, a, b any) {
		switch a := a.(type) {
		case map[string]any:
			for k, e := range a {
				compare(path+"."+k, k, e, b.(map[string]any)[k])
			}
		case []any:
			for i, e := range a {
				compare(path, key, e, b.([]any)[i])
			}
		default:
			if a == b {
				return
			}
			if _, ok := sentences[key]; !ok {
				t.Errorf("%s is %v in metric and %v in US units", path, a, b)
			}
			sentences[key]++
		}
	}
	for name, j := range allJobs(t) {
		compare(name, "", decoded(t, j, quantity.Metric), decoded(t, j, quantity.US))
	}
	for key, n := range sentences {
		if n == 0 {
			t.Errorf("no %s differs between the units", key)
		}
	}
}
